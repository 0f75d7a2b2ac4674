"""Writes the specification: python -m ringwright.api.write_spec openapi/openapi.json"""

import json
import sys
from pathlib import Path
from typing import Any

from .app import create_app, specification


def text() -> str:
    """The specification as it is committed: a line for each component and operation."""
    return _lines(specification(create_app()), _DEPTH) + "\n"


# Levels that are broken into lines: document, "components", "schemas"; "paths", address.
_DEPTH = 3


def _lines(node: Any, depth: int) -> str:
    if not depth or not isinstance(node, dict) or not node:
        return json.dumps(node, ensure_ascii=False, separators=(",", ":"))
    # Lines are for those who compare two versions; an indent would only make it larger.
    entries = ["%s:%s" % (json.dumps(key), _lines(value, depth - 1)) for key, value in node.items()]
    return "{\n" + ",\n".join(entries) + "\n}"


if __name__ == "__main__":
    Path(sys.argv[1]).write_text(text(), encoding="utf-8")
