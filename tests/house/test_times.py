"""The list of what tests take; its promise: the daily tests take a minute on two cores at most."""

import re
from types import SimpleNamespace

import times


def test_the_daily_run_is_left_with_less_than_a_minute_of_two_cores(root):
    """Two workers share it, and each takes twenty seconds to read the tests first."""
    # Less than a few seconds would be of a run that tells of no others.
    assert 10.0 < times.noted()[times.DAILY] < 2 * 40.0
    text = (root / "tests/run").read_text(encoding="utf-8")
    left_out = re.search(r"-m '(not slow[^']*)'", text).group(1)
    assert left_out == "not slow and not lengthy and not browser and not bench"
    for folder in times.APART:
        assert "--ignore " + folder.removesuffix("/") in text


def test_what_is_listed_is_there(root):
    for name in times.noted():
        if name != times.DAILY:
            assert (root / name.split("::")[0]).is_file(), name


def test_the_longest_go_first_and_what_is_lengthy_is_marked():
    class Item(SimpleNamespace):
        def add_marker(self, mark):
            self.marks.append(mark.name)

    ids = ["a.py::one", "b.py::two[x]", "b.py::three", "c.py::four", "d.py::five"]
    items = [Item(nodeid=each, marks=[]) for each in ids]
    seconds = {"b.py": 9.0, "c.py": 20.0, "b.py::two": 1.0, "d.py::*": 2.0}
    times.order(items, seconds)
    assert [each.nodeid for each in items] == [ids[3], ids[1], ids[2], ids[0], ids[4]]
    times.mark_lengthy(items, seconds)
    assert [each.nodeid for each in items if each.marks] == [ids[1], ids[4]]


def test_what_was_run_is_noted_and_the_rest_kept(tmp_path, monkeypatch):
    path = tmp_path / "times.txt"
    path.write_text("7.0 kept.py\n3.0 old.py::gone\n", encoding="utf-8")
    monkeypatch.setattr(times, "NOTED", path)
    monkeypatch.setattr(times, "noted", lambda: {"kept.py": 7.0, "old.py::gone": 3.0})
    notes = times.Notes()
    for name, when, took, marks in (
        ("old.py::quick[1]", "call", 0.1, ()),
        ("old.py::quick[2]", "call", 0.1, ()),
        ("old.py::long", "call", 4.0, ()),
        ("old.py::server", "setup", 0.1, ("slow",)),
        ("web.py::begins", "setup", 1.9, ()),
        ("old.py::waits", "call", 0.2, ("waits",)),
        ("tests/client/a.py::reads", "call", 0.2, ()),
    ):
        notes.pytest_runtest_logreport(
            SimpleNamespace(nodeid=name, when=when, duration=took, keywords=dict.fromkeys(marks, 1))
        )
    notes.pytest_sessionfinish()
    assert path.read_text(encoding="utf-8").splitlines() == [
        "0.2 daily",
        "7.0 kept.py",
        "4.5 old.py",
        "4.0 old.py::long",
        "1.9 web.py::*",
        "1.9 web.py::begins",
    ]


def test_a_run_of_what_stands_apart_leaves_the_daily_run_as_it_was_noted(tmp_path, monkeypatch):
    """The last of the runs had written its own tenth of a second over it."""
    monkeypatch.setattr(times, "NOTED", tmp_path / "times.txt")
    monkeypatch.setattr(times, "noted", lambda: {times.DAILY: 46.4})
    notes = times.Notes()
    for name, marks in (("a.py::waits", {"waits": 1}), ("tests/client/b.py::reads", {})):
        notes.pytest_runtest_logreport(
            SimpleNamespace(nodeid=name, when="call", duration=0.1, keywords=marks)
        )
    notes.pytest_sessionfinish()
    assert times.NOTED.read_text(encoding="utf-8") == "46.4 daily\n"
