"""Which room of the core may use which: the table of core/README.md, held."""

import ast
from pathlib import Path

import pytest

CORE = Path(__file__).parents[2] / "service" / "ringwright" / "core"
MAY_USE = {
    "properties": set(),
    "catalogue": {"properties"},
    "clearances": {"catalogue", "properties"},
    "ring": {"catalogue", "properties", "clearances"},
    "wall": {"catalogue", "properties", "clearances", "ring"},
    "walk": {"catalogue", "properties", "clearances", "ring"},
    "measuring": {"catalogue", "properties", "clearances", "ring", "wall", "walk"},
    "cutting": set(),
    "making": {"catalogue", "properties", "clearances", "ring", "walk", "cutting"},
    "running": {"catalogue", "properties", "clearances", "ring", "wall"},
    "fitting": {
        "catalogue",
        "properties",
        "clearances",
        "ring",
        "walk",
        "making",
        "running",
    },
    "drawing": {"catalogue", "properties", "clearances", "ring", "walk", "making"},
}


def rooms_used(path):
    """Rooms that a module imports from, its own left out."""
    here = path.relative_to(CORE).parent.parts
    used = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.level:
            base = here[: len(here) - node.level + 1]
            module = (*base, *(node.module or "").split("."))
            used |= {module[0]} if module[0] else {alias.name for alias in node.names}
    return (used & MAY_USE.keys()) - set(here)


def test_every_folder_is_a_known_room():
    folders = {path.parent.name for path in CORE.glob("*/__init__.py")}
    assert folders == MAY_USE.keys()
    readme = (CORE / "README.md").read_text(encoding="utf-8")
    assert [room for room in MAY_USE if "| `%s/` |" % room not in readme] == []


@pytest.mark.parametrize("room", MAY_USE)
def test_a_room_uses_only_what_it_may(room):
    modules = sorted((CORE / room).glob("*.py"))
    assert len(modules) > 1
    for path in modules:
        assert rooms_used(path) <= MAY_USE[room], path.name
