"""The tests that may notice a small wrong of the core, and which of them gets to which line.

Everything is done in the process that calls it, so that a process forked from it has the tests and
the core at hand and begins with the test.
"""

import hashlib
import json
import sys
import time
from pathlib import Path

import coverage
import hypothesis
import pytest
from trial import forget_kept

ROOT = Path(__file__).parents[2]
CORE = ROOT / "service" / "ringwright" / "core"
# Where those tests are that call the core in their own process.
FOLDERS = ("core", "published", "drawing")
# Without what tells of failures, which takes longer than most tests; and of a failure that
# hypothesis finds, no smaller case is looked for.
QUIET = (
    "-q", "-n", "0", "--tb", "no", "-p", "no:cacheprovider",
    "-p", "no:rerunfailures", "--hypothesis-profile", "noticing",
    "-W", "ignore::pytest.PytestAssertRewriteWarning",
    "-W", "ignore::coverage.exceptions.CoverageWarning",
)  # fmt: skip
hypothesis.settings.register_profile(
    "noticing",
    derandomize=True,
    deadline=None,
    database=None,
    phases=(hypothesis.Phase.explicit, hypothesis.Phase.generate),
    suppress_health_check=list(hypothesis.HealthCheck),
)


class Suite:
    """Tests by number, with what each took [s] and the lines of the core that it gets to.

    names: of tests; recorded answers (core/test_answers_stay.py) come first, each for itself.
    reached: path of a module within the core -> line -> set of numbers.
    """

    def __init__(self, items, recorded):
        self.items = items
        self.recorded = recorded
        self.names = ["recorded answer %d" % at for at in range(len(recorded))]
        self.names += [item.nodeid for item in items]
        self.took = [0.0] * len(self.names)
        self.passed = [False] * len(self.names)
        self.reached = {}

    def passes(self, number, rest=()):
        """Whether that test passes now. rest: the numbers of those that are to be run after it."""
        first = len(self.recorded)
        if number < first:
            return self._stays(self.recorded[number])
        item = self.items[number - first]
        after = [self.items[each - first] for each in rest if each >= first][:1]
        reports = []
        item.config.pluginmanager.register(noted := _Noted(reports))
        try:
            item.config.hook.pytest_runtest_protocol(
                item=item, nextitem=after[0] if after else None
            )
        finally:
            item.config.pluginmanager.unregister(noted)
        return not any(report.failed for report in reports)

    @staticmethod
    def _stays(row):
        from core import test_answers_stay as recorded

        try:
            return not recorded.differences(row)
        except Exception:
            return False

    def look(self, measured, stored):
        """Runs every test once and notes what it took and the lines that it gets to.

        measured: a coverage.Coverage. stored: name of a file where that is kept for the next time;
        a test is run again when its file or the core has changed.
        """
        keys = self._keys()
        before = json.loads(stored.read_text(encoding="utf-8")) if stored.exists() else {}
        fresh = [number for number, key in enumerate(keys) if key not in before]
        measured.start()
        for number in fresh:
            measured.switch_context(str(number))
            # Else only the first that asks would be seen to get to the sum.
            forget_kept()
            began = time.process_time()
            passed = self.passes(number)
            before[keys[number]] = [time.process_time() - began, passed, {}]
        measured.stop()
        data = measured.get_data()
        for path in data.measured_files():
            for line, numbers in data.contexts_by_lineno(path).items():
                for each in filter(None, numbers):
                    before[keys[int(each)]][2].setdefault(_short(path), []).append(line)
        stored.parent.mkdir(exist_ok=True)
        stored.write_text(json.dumps(before), encoding="utf-8")
        for number, key in enumerate(keys):
            self.took[number], self.passed[number], reached = before[key]
            for path, lines in reached.items():
                of_path = self.reached.setdefault(path, {})
                for line in lines:
                    of_path.setdefault(line, set()).add(number)
            if not self.passed[number] and number >= len(self.recorded):
                print("does not pass as it is: " + self.names[number], file=sys.stderr)

    def _keys(self):
        """What each test is stored by: its name, and what its file and the core are."""
        core = hashlib.sha256()
        for path in sorted(CORE.rglob("*.py")):
            core.update(path.read_bytes())
        files = {str(item.path) for item in self.items}
        known = {each: hashlib.sha256(Path(each).read_bytes()).hexdigest()[:12] for each in files}
        of_files = [""] * len(self.recorded) + [known[str(item.path)] for item in self.items]
        core = core.hexdigest()[:12]
        return [
            " ".join(each)
            for each in zip(self.names, of_files, [core] * len(of_files), strict=True)
        ]

    def that_reach(self, path, lines=None):
        """Set of the numbers of passing tests that get to one of those lines, first to last; to any
        line of a module when None, and all tests where none does."""
        reached = self.reached.get(_short(path), {})
        if lines is None:
            found = set().union(*reached.values()) or range(len(self.names))
        else:
            found = set().union(*[reached.get(at, ()) for at in range(lines[0], lines[1] + 1)])
        return {number for number in found if self.passed[number]}


def _short(path):
    """As a path is stored: the same in every checkout."""
    return Path(path).relative_to(CORE).as_posix()


class _Noted:
    def __init__(self, reports):
        self.reports = reports

    def pytest_runtest_logreport(self, report):
        self.reports.append(report)


class _Runs:
    """Takes pytest's place once the tests are collected."""

    def __init__(self, then):
        self.then = then

    @pytest.hookimpl(tryfirst=True)
    def pytest_runtestloop(self, session):
        session.config.pluginmanager.unregister(name="terminalreporter")
        self.then(session.items)
        return True


def with_tests(then, asked, long=False):
    """Collects tests and calls then(suite, names of functions called while all was read).

    asked: names of files below tests/; empty for all folders. long: those that take long as well.
    """
    stored = ROOT / "tests" / "vectors" / "answered_before_1.0.0.jsonl"
    rows = [json.loads(line) for line in stored.read_text(encoding="utf-8").splitlines()]
    called = set()
    begin = str(CORE)

    def note(frame, event, _):
        if event == "call" and frame.f_code.co_filename.startswith(begin):
            called.add((frame.f_code.co_filename, frame.f_code.co_qualname))

    measured = coverage.Coverage(
        data_file=None, config_file=False, include=[begin + "/*"], messages=False
    )

    def collected(items):
        sys.setprofile(None)
        suite = Suite(items, [] if asked else rows)
        suite.look(measured, ROOT / "tests" / "out" / "reached.json")
        then(suite, called)

    sys.setprofile(note)
    files = ["tests/" + name for name in asked or FOLDERS]
    marks = [] if long else ["-m", "not slow and not lengthy"]
    code = pytest.main([*QUIET, *marks, *files], plugins=[_Runs(collected)])
    if code not in (0, 5):
        sys.exit("the tests could not be collected: %s" % code)
