"""The requests shown in the specification: openapi/examples/<calculation>.json.

Each file is an OpenAPI `examples` object: {"name": {"summary": ..., "value": request}}. The tests
run every one of them.
"""

import json
from collections.abc import Mapping
from pathlib import Path

from ..named_types import Document

# In an installed package the folder lies beside this file (see pyproject.toml); in a checkout it
# is the openapi/ folder of the project.
_FOLDERS = (
    Path(__file__).parent / "examples",
    Path(__file__).parents[3] / "openapi" / "examples",
)


def read_all() -> dict[str, Document]:
    """Calculation name -> OpenAPI examples object, for every file there is."""
    folder = next((folder for folder in _FOLDERS if folder.is_dir()), None)
    if folder is None:
        return {}
    return {
        path.stem: json.loads(path.read_text(encoding="utf-8"))
        for path in sorted(folder.glob("*.json"))
    }


def put_into(spec: Document, found: Mapping[str, Document]) -> None:
    """Adds the examples to an OpenAPI document (a dict), in the body and in the query."""
    for name, shown in found.items():
        operations = spec["paths"].get("/v1/" + name, {})
        if "post" in operations:
            operations["post"]["requestBody"]["content"]["application/json"]["examples"] = shown
        if "get" in operations:
            value = next(iter(shown.values()))["value"]
            for parameter in operations["get"].get("parameters", []):
                if parameter.get("required") and parameter["name"] in value:
                    parameter["example"] = value[parameter["name"]]
