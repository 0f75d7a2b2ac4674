"""Writes the specification: python -m ringwright.api.write_spec openapi/openapi.json"""

import json
import sys
from pathlib import Path

from .app import create_app, specification


def text():
    """The specification as it is committed: indented, one final newline."""
    return json.dumps(specification(create_app()), indent=1, ensure_ascii=False) + "\n"


if __name__ == "__main__":
    Path(sys.argv[1]).write_text(text(), encoding="utf-8")
