"""Whether the tests notice small wrongs of the core: python tests/mutation/run.py [ROOM ...]

Changes one operator, comparison or number of a module at a time, runs the tests of its room on it,
and prints what share was noticed. By hand, not by tests/run: a room of
rings takes ten minutes, one of cutting an hour.

    --sample N   N mutants of each module, spread evenly; all by default
    --jobs N     so many at once, 2 by default
    --swaps      swaps what calls give to neighbouring names, instead
    --list       prints those that lived, for survivors.md
"""

import argparse
import importlib.abc
import importlib.util
import json
import os
import signal
import sys
import time
from pathlib import Path

sys.path[:0] = [str(Path(__file__).parents[at]) for at in (0, 1)]

from mutants import mutants_of, swaps_of  # noqa: E402
from rooms import ROOMS, UNRECORDED  # noqa: E402

ROOT = Path(__file__).parents[2]
CORE = ROOT / "service" / "ringwright" / "core"
# A mutant that does not come to an end is noticed as well: so many times as long as none takes, and
# at least so long [s].
TIMES_AS_LONG = 10
LONGEST = 30
# Every so-manieth recorded answer is looked at before the next to it, and so many at first: they
# stand for all.
EARLY = 16
AT_FIRST = 48
EXPLAINED = Path(__file__).parent / "survivors.md"


class Wrong(importlib.abc.MetaPathFinder, importlib.abc.Loader):
    """Loads one module of the core from a changed tree."""

    def __init__(self, name, path, tree):
        self.name, self.path, self.tree = name, path, tree

    def find_spec(self, name, path=None, target=None):
        if name != self.name:
            return None
        whole = self.path.name == "__init__.py"
        spec = importlib.util.spec_from_loader(name, self, origin=str(self.path), is_package=whole)
        if whole:
            spec.submodule_search_locations.append(str(self.path.parent))
        return spec

    def exec_module(self, module):
        module.__file__ = str(self.path)
        exec(compile(self.tree, str(self.path), "exec"), module.__dict__)


def path_of(module):
    path = CORE / module.replace(".", "/")
    return path / "__init__.py" if path.is_dir() else path.with_suffix(".py")


def steady():
    """Numbers of recorded answers (core/test_answers_stay.py) that are what they were, a few."""
    told, tell = os.pipe()
    child = os.fork()
    if not child:
        from core import test_answers_stay as recorded

        found = [at for at, row in enumerate(recorded.ROWS) if not recorded.differences(row)]
        os.write(tell, json.dumps(found).encode())
        os._exit(0)
    os.waitpid(child, 0)
    found = json.loads(os.read(told, 1 << 16))
    # Of every calculation some come early.
    return [each for first in range(EARLY) for each in found[first::EARLY]][:AT_FIRST]


def answers_stay(numbers):
    """Whether the recorded answers of those numbers are still what they were."""
    from core import test_answers_stay as recorded

    try:
        return not any(recorded.differences(recorded.ROWS[at]) for at in numbers)
    except Exception:
        return False


def noticed(module, tree, tests, longest, numbers=()):
    """Starts the tests on a changed module in a process of its own; returns its id.

    It ends with 0 when they passed: nothing was noticed. longest: the most that it may take [s].
    numbers: of recorded answers that are looked at first, for they tell most of it at once.
    """
    child = os.fork()
    if child:
        return child
    silent = os.open(os.devnull, os.O_WRONLY)
    os.dup2(silent, 1)
    os.dup2(silent, 2)
    signal.alarm(longest)
    if tree is not None:
        sys.meta_path.insert(0, Wrong("ringwright.core." + module, path_of(module), tree))
    if not answers_stay(numbers):
        os._exit(1)
    import pytest

    quiet = ["-q", "-x", "-n", "0", "-p", "no:cacheprovider"]
    # Loaded before pytest could look at it, on purpose.
    quiet += ["-W", "ignore::pytest.PytestAssertRewriteWarning"]
    os.chdir(ROOT)
    code = pytest.main([*quiet, "-m", "not slow", *["tests/" + name for name in tests]])
    os._exit(int(code))


def judged(module, mutants, tests, jobs, longest, numbers):
    """List of the mutants that nobody noticed."""
    running, lived = {}, []
    waiting = list(mutants)
    while waiting or running:
        while waiting and len(running) < jobs:
            mutant = waiting.pop(0)
            running[noticed(module, mutant.tree, tests, longest, numbers)] = mutant
        child, status = os.wait()
        mutant = running.pop(child)
        if status == 0:
            lived.append(mutant)
    return sorted(lived, key=lambda one: (one.line, one.column))


def spread(mutants, most):
    if not most or len(mutants) <= most:
        return mutants
    return [mutants[at * len(mutants) // most] for at in range(most)]


def key(module, mutant):
    """How a survivor is written down: it holds while the words of its line do."""
    return "`%s`: `%s` -> `%s`" % (module, mutant.was, mutant.now)


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("rooms", nargs="*", help="of: " + ", ".join(ROOMS))
    parser.add_argument("--sample", type=int, default=0)
    parser.add_argument("--jobs", type=int, default=2)
    parser.add_argument("--list", action="store_true")
    parser.add_argument("--swaps", action="store_true")
    asked = parser.parse_args()
    explained = EXPLAINED.read_text(encoding="utf-8") if EXPLAINED.exists() else ""
    worst = 0
    # Read once, so that each process has them already.
    import hypothesis  # noqa: F401
    import marshmallow  # noqa: F401
    import numpy  # noqa: F401
    import pytest  # noqa: F401
    import requests  # noqa: F401
    import scipy.integrate  # noqa: F401
    import scipy.optimize  # noqa: F401
    import shapely.strtree  # noqa: F401

    recorded = steady()
    for room in asked.rooms or ROOMS:
        numbers = () if room in UNRECORDED else recorded
        modules, tests = ROOMS[room]
        before = time.monotonic()
        child = noticed(modules[0], None, tests, 3600)
        if os.waitpid(child, 0)[1] != 0:
            sys.exit("the tests of %s do not pass as it is" % room)
        longest = max(LONGEST, int(TIMES_AS_LONG * asked.jobs * (time.monotonic() - before)))
        for module in modules:
            source = path_of(module).read_text(encoding="utf-8")
            mutants = spread((swaps_of if asked.swaps else mutants_of)(source), asked.sample)
            if not mutants:
                continue
            before = time.monotonic()
            lived = judged(module, mutants, tests, asked.jobs, longest, numbers)
            known = [one for one in lived if key(module, one) in explained]
            worst = max(worst, len(lived) - len(known))
            print(
                "%-9s %-26s %4d mutants, %3d noticed (%.0f %%), %d lived: %d explained; %.0f s"
                % (
                    room, module, len(mutants), len(mutants) - len(lived),
                    100.0 * (1.0 - len(lived) / len(mutants)), len(lived), len(known),
                    time.monotonic() - before,
                ),
                flush=True,
            )  # fmt: skip
            for one in lived:
                if asked.list or one not in known:
                    print("    line %d: %s" % (one.line, key(module, one)), flush=True)
    sys.exit(1 if worst else 0)


if __name__ == "__main__":
    main()
