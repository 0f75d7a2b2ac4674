"""Small wrongs are looked for in all of the core: every module stands in a room of
tests/mutation/rooms.py, once; and each is put in as it says."""

import functools
import gc
import sys
import types
from collections import Counter

import pytest


def test_every_module_of_the_core_is_in_one_room(root, monkeypatch):
    monkeypatch.setattr(sys, "path", [str(root / "tests" / "mutation"), *sys.path])
    from mutants import mutants_of, swaps_of
    from rooms import ROOMS

    core = root / "service" / "ringwright" / "core"
    given = Counter(name for modules in ROOMS.values() for name in modules)
    assert [name for name, count in given.items() if count > 1] == []
    missing = []
    for path in core.rglob("*.py"):
        parts = path.relative_to(core).with_suffix("").parts
        name = ".".join(part for part in parts if part != "__init__")
        if name not in given:
            source = path.read_text(encoding="utf-8")
            missing += [name] * bool(mutants_of(source) or swaps_of(source))
    assert missing == []


SOURCE = """
LIMIT = 2.0


def twice(value, times=3):
    return value * LIMIT + times


class Ring:
    @property
    def gap(self):
        return self.left - 1
"""


@pytest.fixture
def module(monkeypatch, root, tmp_path):
    """A module of ours that is read, and one that took a limit of it by name."""
    monkeypatch.setattr(sys, "path", [str(root / "tests" / "mutation"), *sys.path])
    path = tmp_path / "small.py"
    path.write_text(SOURCE, encoding="utf-8")
    read = types.ModuleType("small")
    exec(compile(SOURCE, str(path), "exec"), read.__dict__)
    other = types.ModuleType("took")
    other.LIMIT = read.LIMIT
    monkeypatch.setitem(sys.modules, "small", read)
    monkeypatch.setitem(sys.modules, "took", other)
    return read, other, path


def test_a_small_wrong_is_in_force_once_it_is_put_in(module):
    from mutants import NOTHING, mutants_of
    from trial import put_in

    read, other, path = module
    ring = read.Ring()
    ring.left = 5
    told = {}
    for mutant in mutants_of(SOURCE):
        put_in("small", path, mutant)
        told[mutant.was, mutant.now] = (read.twice(10.0), ring.gap, other.LIMIT)
        put_in("small", path, NOTHING)
        put_in("small", path, NOTHING._replace(function="twice"))
        put_in("small", path, NOTHING._replace(function="Ring.gap"))
        assert (read.twice(10.0), ring.gap, other.LIMIT) == (23.0, 4, 2.0)
    assert told == {
        ("2.0", "2.02"): (23.2, 4, 2.02),
        ("3", "4"): (24.0, 4, 2.0),
        ("value * LIMIT + times", "value * LIMIT - times"): (17.0, 4, 2.0),
        ("value * LIMIT", "value / LIMIT"): (8.0, 4, 2.0),
        ("self.left - 1", "self.left + 1"): (23.0, 6, 2.0),
        ("1", "2"): (23.0, 3, 2.0),
    }


def test_what_tests_keep_of_the_core_is_forgotten_once_a_wrong_is_put_in(module, monkeypatch):
    from mutants import mutants_of
    from trial import put_in

    read, _, path = module
    kept = functools.cache(lambda value: read.twice(value))
    assert kept(10.0) == 23.0
    own = types.ModuleType("ringwright.core.of_this_test")
    own._kept_speeds, own._kept = {"turn": 18.0}, [1, 2]
    monkeypatch.setitem(sys.modules, own.__name__, own)
    # As mutation/run.py does once it has run the tests.
    gc.freeze()
    try:
        (wrong,) = [one for one in mutants_of(SOURCE) if one.now == "value / LIMIT"]
        put_in("small", path, wrong)
        assert kept(10.0) == 8.0
        assert (own._kept_speeds, own._kept) == ({}, [])
    finally:
        gc.unfreeze()
