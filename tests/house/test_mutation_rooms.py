"""Small wrongs are looked for in all of the core: every module stands in a room of
tests/mutation/rooms.py, once, with tests that are there."""

import sys
from collections import Counter


def test_every_module_of_the_core_is_in_one_room(root, monkeypatch):
    monkeypatch.setattr(sys, "path", [str(root / "tests" / "mutation"), *sys.path])
    from mutants import mutants_of, swaps_of
    from rooms import ROOMS

    core = root / "service" / "ringwright" / "core"
    for _modules, tests in ROOMS.values():
        for name in tests:
            assert (root / "tests" / name).is_file(), name
    given = Counter(name for modules, _ in ROOMS.values() for name in modules)
    assert [name for name, count in given.items() if count > 1] == []
    missing = []
    for path in core.rglob("*.py"):
        parts = path.relative_to(core).with_suffix("").parts
        name = ".".join(part for part in parts if part != "__init__")
        if name not in given:
            source = path.read_text(encoding="utf-8")
            missing += [name] * bool(mutants_of(source) or swaps_of(source))
    assert missing == []
