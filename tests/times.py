"""What the tests took when it was last noted: which are left out of the daily run, which go first.

`tests/times.txt` holds a line for every file of more than a few seconds, for every file that takes
long to set up (its name and "::*"), and for every test of more than LENGTHY: seconds, and what took
them; and one for all that the daily run is left with. `tests/run` writes it anew when it is given
`--note-times`. It is a guide to order and choice and no more: a test that is not in it runs.
"""

from collections import defaultdict
from pathlib import Path

import pytest

NOTED = Path(__file__).with_name("times.txt")
# Longer than this is lengthy, for a test and for what a file sets up once; a file of less need not
# be put in its place [s].
LENGTHY = 0.3
SET_UP = 1.5
SHORT_FILE = 3.0
WHOLE = "::*"
DAILY = "daily"
# Folders that the daily run leaves out.
APART = ("tests/client/", "tests/bench/")


def noted(path=NOTED):
    """Seconds by file, and by test without its parameters: a dict. path: of the list."""
    found = {}
    if path.is_file():
        for line in path.read_text(encoding="utf-8").splitlines():
            seconds, name = line.split(" ", 1)
            found[name] = float(seconds)
    return found


def order(items, seconds):
    """The items, those of the longest file first. seconds: as of `noted`.

    Files go to the workers whole: the longest begun last would be waited for by itself.
    """
    items.sort(key=lambda item: -seconds.get(item.nodeid.split("::")[0], 0.0))


def mark_lengthy(items, seconds):
    """Marks the items that took more than LENGTHY. seconds: as of `noted`."""
    for item in items:
        name = item.nodeid.split("[")[0]
        if name in seconds or name.split("::")[0] + WHOLE in seconds:
            item.add_marker(pytest.mark.lengthy)


def all_lengthy(path):
    """Whether the file takes long to set up, so that all its tests are lengthy. path: of a file."""
    return "tests/" + path.relative_to(NOTED.parent).as_posix() + WHOLE in noted()


class Notes:
    """Adds up what each test took, and writes the list when all have run."""

    def __init__(self):
        self.took = defaultdict(float)
        self.set_up = defaultdict(float)
        self.left_out = set()

    def pytest_runtest_logreport(self, report):
        name = report.nodeid.split("[")[0]
        self.took[name] += report.duration
        # What the daily run never has, and what has a run of its own, which tells of no other.
        apart = {"slow", "browser", "bench", "waits"} & set(report.keywords)
        if apart or name.startswith(APART):
            self.left_out.add(name)
        if report.when == "setup":
            self.set_up[report.nodeid.split("::")[0]] += report.duration

    def pytest_sessionfinish(self):
        files = defaultdict(float)
        for name, seconds in self.took.items():
            files[name.split("::")[0]] += seconds
        found = {name: each for name, each in files.items() if each >= SHORT_FILE}
        found.update((name, each) for name, each in self.took.items() if each >= LENGTHY)
        found.update((name + WHOLE, each) for name, each in self.set_up.items() if each >= SET_UP)
        if not all(name in self.left_out for name in self.took):
            found[DAILY] = sum(
                seconds
                for name, seconds in self.took.items()
                if name not in self.left_out
                and name not in found
                and name.split("::")[0] + WHOLE not in found
            )
        # What was not run this time stays as it was noted.
        for name, seconds in noted().items():
            if name.split("::")[0] not in files and name not in found:
                found[name] = seconds
        lines = ["%.1f %s\n" % (found[name], name) for name in sorted(found)]
        NOTED.write_text("".join(lines), encoding="utf-8")
