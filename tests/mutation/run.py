"""Whether the tests notice small wrongs of the core: python tests/mutation/run.py [ROOM ...]

Changes one operator, comparison or number of a module at a time, runs the tests that get to its
line, quickest first, until one fails, and prints what share was noticed. By hand, not by tests/run.
All tests are run once before, to see what they get to (five minutes); that is kept in tests/out.

    --only M     only this module of the rooms, as in rooms.py
    --tests F    only these files below tests/, so that a new test is tried at once
    --long       tests that are slow or lengthy as well
    --sample N   N mutants of each module, spread evenly; all by default
    --jobs N     so many at once, 2 by default
    --seconds N  of tests for one mutant at the most, 20 by default
    --swaps      swaps what calls give to neighbouring names, instead
    --file F     keeps what is found, a line a mutant; one that is noticed there is not tried again
"""

import argparse
import gc
import json
import os
import sys
import tempfile
import time
from collections import Counter
from functools import partial
from pathlib import Path

# Read once, so that every process has them already.
import marshmallow  # noqa: F401
import numpy  # noqa: F401
import pytest
import requests  # noqa: F401
import scipy.integrate  # noqa: F401
import scipy.optimize  # noqa: F401
import shapely.strtree  # noqa: F401

sys.path[:0] = [str(Path(__file__).parents[at]) for at in (0, 1)]

from mutants import NOTHING, changed, mutants_of, swaps_of  # noqa: E402
from rooms import ROOMS  # noqa: E402
from suite import CORE, QUIET, ROOT, with_tests  # noqa: E402
from trial import Tries, Wrong, put_in  # noqa: E402

EXPLAINED = Path(__file__).parent / "survivors.md"
PACKAGE = "ringwright.core"
# What the reading of a module makes: tried on so many files of tests at the most, for so long [s].
FRESH_FILES = 8
AFRESH_LONGEST = 6.0


def path_of(module):
    path = CORE / module.replace(".", "/")
    return path / "__init__.py" if path.is_dir() else path.with_suffix(".py")


def spread(mutants, most):
    if not most or len(mutants) <= most:
        return mutants
    return [mutants[at * len(mutants) // most] for at in range(most)]


def key(row):
    """How a survivor is written down: it holds while the words of its line do."""
    return "`%s`: `%s` -> `%s`" % (row["module"], row["was"], row["now"])


class Judge:
    """Tries the mutants of one module after another on a Suite.

    called: (path, name) of functions that were called while the modules were read.
    """

    def __init__(self, suite, called, asked):
        self.suite, self.called, self.asked = suite, called, asked
        self.tries = Tries(asked.jobs)

    def tests_of(self, path, mutant, kills):
        """Numbers of tests that get there: those that noticed most before and the quickest first,
        as many as there is time for."""
        lines = mutant.lines if mutant.function else None
        took = self.suite.took
        chosen, spent = [], 0.0
        reached = self.suite.that_reach(path, lines)
        for number in sorted(reached, key=lambda each: (-kills[each], took[each], each)):
            if spent + took[number] <= self.asked.seconds:
                chosen.append(number)
                spent += took[number]
        return chosen

    def steps(self, module, mutant, numbers):
        path = path_of(module)
        name = PACKAGE + "." * bool(module) + module
        yield 5.0, -1, lambda: put_in(name, path, mutant) or True
        for at, number in enumerate(numbers):
            rest = numbers[at + 1 :]
            well = partial(self.suite.passes, number, rest)
            yield self.suite.took[number], number, well

    def sound(self, module):
        """Ends it all if tests notice a wrong that is none: then they would notice anything."""
        numbers = self.tests_of(path_of(module), NOTHING, Counter())
        list(self.tries.start(NOTHING, self.steps(module, NOTHING, numbers)))
        failed = self.tries.wait()[1]
        if failed is not None:
            sys.exit("fails where nothing is wrong: " + self.suite.names[failed])

    def judged(self, module, mutants):
        """Yields a dict of each mutant: what it is, by which test it was noticed (empty: by none),
        in which files there are tests that get there, and whether it has to be read afresh."""
        kills, chosen = Counter(), {}
        path = path_of(module)
        for mutant in mutants:
            chosen[mutant] = self.tests_of(path, mutant, kills)
            if not chosen[mutant]:
                yield self.row(module, mutant, None, ())
                continue
            for ended in self.tries.start(mutant, self.steps(module, mutant, chosen[mutant])):
                kills[ended[1]] += 1
                yield self.row(module, *ended, chosen[ended[0]])
        for ended in self.tries.rest():
            yield self.row(module, *ended, chosen[ended[0]])

    def row(self, module, mutant, ended_at, numbers):
        names = [self.suite.names[each] for each in numbers if each >= len(self.suite.recorded)]
        made = not mutant.function or (str(path_of(module)), mutant.function) in self.called
        by = "" if ended_at is None else "reading" if ended_at < 0 else self.suite.names[ended_at]
        return {
            "module": module,
            "line": mutant.line,
            "column": mutant.column,
            "place": mutant.place,
            "which": mutant.which,
            "was": mutant.was,
            "now": mutant.now,
            "by": by,
            "files": [] if by else list(dict.fromkeys(name.split("::")[0] for name in names)),
            "afresh": bool(made and numbers and not by),
        }


def tried_afresh(rows, jobs):
    """Tries what is made when a module is read: in processes that have read none, whole files.

    rows: of Judge.judged, with "mutant" besides; changes "by" of those that were noticed.
    """
    tries = Tries(jobs)

    def ended(row, at):
        row["by"] = "" if at is None else "read afresh"

    for row in rows:
        steps = [(AFRESH_LONGEST, 0, lambda row=row: passes_afresh(row))]
        for each in tries.start(row, steps):
            ended(*each)
    for each in tries.rest():
        ended(*each)


def passes_afresh(row):
    path = path_of(row["module"])
    name = PACKAGE + "." * bool(row["module"]) + row["module"]
    tree = changed(path.read_text(encoding="utf-8"), row["mutant"])
    sys.meta_path.insert(0, Wrong(name, path, tree))
    return pytest.main([*QUIET, "-m", "not slow", "-x", *row["files"][:FRESH_FILES]]) in (0, 5)


def asked_for():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("rooms", nargs="*", help="of: " + ", ".join(ROOMS))
    parser.add_argument("--only", nargs="*", default=[])
    parser.add_argument("--tests", nargs="*", default=[])
    parser.add_argument("--long", action="store_true")
    parser.add_argument("--sample", type=int, default=0)
    parser.add_argument("--jobs", type=int, default=2)
    parser.add_argument("--seconds", type=float, default=20.0)
    parser.add_argument("--swaps", action="store_true")
    parser.add_argument("--file")
    return parser.parse_args()


def _same(module, row):
    """What a mutant is known by in the file, until its module changes."""
    return (module, *[row[name] for name in ("line", "column", "place", "which", "was", "now")])


def sorted_out(asked):
    """The mutants to try: module -> list, without those that the file says are noticed."""
    noticed = set()
    if asked.file and Path(asked.file).exists():
        for line in Path(asked.file).read_text(encoding="utf-8").splitlines():
            row = json.loads(line)
            if row["by"]:
                noticed.add(_same(row["module"], row))
    found = {}
    for room in asked.rooms or ROOMS:
        for module in ROOMS[room]:
            if asked.only and module not in asked.only:
                continue
            source = path_of(module).read_text(encoding="utf-8")
            mutants = spread((swaps_of if asked.swaps else mutants_of)(source), asked.sample)
            found[module] = [
                each for each in mutants if _same(module, each._asdict()) not in noticed
            ]
    return found


def told(module, rows, explained, seconds):
    lived = [row for row in rows if not row["by"]]
    known = [row for row in lived if key(row) in explained]
    print(
        "%-26s %4d tried, %4d noticed (%.0f %%), %d lived: %d explained; %.0f s"
        % (
            module, len(rows), len(rows) - len(lived), 100.0 * (1.0 - len(lived) / len(rows)),
            len(lived), len(known), seconds,
        ),
        flush=True,
    )  # fmt: skip
    for row in lived:
        if row not in known:
            print("    line %d: %s" % (row["line"], key(row)), flush=True)
    return len(lived) - len(known)


def warm(asked, mutants, path):
    """Judges in this process, which reads the core and the tests once; writes rows to path."""

    def judge(suite, called):
        gc.freeze()
        one = Judge(suite, called, asked)
        with open(path, "w", encoding="utf-8") as out:
            one.sound(next(iter(mutants)))
            for module, some in mutants.items():
                before = time.monotonic()
                rows = list(one.judged(module, some))
                for row in rows:
                    print(json.dumps({**row, "seconds": time.monotonic() - before}), file=out)
                out.flush()
                print("%s: %d tried" % (module, len(rows)), file=sys.stderr, flush=True)

    with_tests(judge, asked.tests, asked.long)


def main():
    asked = asked_for()
    mutants = sorted_out(asked)
    os.chdir(ROOT)
    handle, path = tempfile.mkstemp()
    os.close(handle)
    child = os.fork()
    if not child:
        warm(asked, mutants, path)
        os._exit(0)
    if os.waitpid(child, 0)[1] != 0:
        sys.exit("the tests could not be run as it is")
    rows = [json.loads(line) for line in Path(path).read_text(encoding="utf-8").splitlines()]
    os.unlink(path)
    by_place = {
        (module, each.place, each.which): each for module, some in mutants.items() for each in some
    }
    afresh = [row for row in rows if row["afresh"]]
    for row in afresh:
        row["mutant"] = by_place[row["module"], row["place"], row["which"]]
    tried_afresh(afresh, asked.jobs)
    for row in afresh:
        del row["mutant"]
    if asked.file:
        with open(asked.file, "a", encoding="utf-8") as out:
            out.writelines(json.dumps(row) + "\n" for row in rows)
    explained = EXPLAINED.read_text(encoding="utf-8") if EXPLAINED.exists() else ""
    unexplained = 0
    for module in mutants:
        its = sorted(
            (row for row in rows if row["module"] == module),
            key=lambda row: (row["line"], row["column"]),
        )
        if its:
            unexplained += told(module, its, explained, its[-1]["seconds"])
    sys.exit(1 if unexplained else 0)


if __name__ == "__main__":
    main()
