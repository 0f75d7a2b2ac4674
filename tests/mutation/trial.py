"""One small wrong tried in a process of its own: put into the core, and the tests run on it."""

import gc
import importlib
import importlib.abc
import importlib.util
import mmap
import os
import resource
import struct
import sys
import types
from functools import _lru_cache_wrapper

from mutants import changed

# A test that a wrong makes ten times as long, and longer than this [s of the processor], fails.
TIMES_AS_LONG = 10
LONGEST = 2.0
# What a wrong that never ends may take [bytes].
MOST_MEMORY = 8 << 30


class Wrong(importlib.abc.MetaPathFinder, importlib.abc.Loader):
    """Loads one module from a changed tree."""

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


def put_in(name, path, mutant):
    """Changes the loaded module of that name: a function by its code, else by what it now names."""
    tree = changed(path.read_text(encoding="utf-8"), mutant)
    # Some are read only when they are first asked for.
    module = importlib.import_module(name)
    code = compile(tree, str(path), "exec")
    if mutant.function:
        target = module
        for part in mutant.function.split("."):
            target = target.__dict__[part]
        _bare(target).__code__ = _code_of(code, mutant.function)
    else:
        _renew(module, code)
    # What tests keep of the core from before, frozen with them, would hide the wrong.
    gc.unfreeze()
    for each in gc.get_objects():
        if isinstance(each, _lru_cache_wrapper):
            each.cache_clear()
    forget_kept()


def forget_kept():
    """Empties what the core keeps of its own sums, by the names that it gives to that."""
    for other in list(sys.modules.values()):
        if getattr(other, "__name__", "").startswith("ringwright.core"):
            for kept in [held for key, held in vars(other).items() if key.startswith("_kept")]:
                if isinstance(kept, list | dict):
                    kept.clear()


def _bare(target):
    target = getattr(target, "fget", None) or target
    return getattr(target, "__func__", None) or getattr(target, "__wrapped__", target)


def _code_of(code, qualname):
    for each in code.co_consts:
        if isinstance(each, types.CodeType):
            if each.co_qualname == qualname:
                return each
            if found := _code_of(each, qualname):
                return found
    return None


def _renew(module, code):
    """Gives what a module names its new values, here and where others took them by name."""
    fresh = types.ModuleType(module.__name__)
    fresh.__dict__.update(
        {key: module.__dict__.get(key) for key in ("__file__", "__package__", "__path__")}
    )
    exec(code, fresh.__dict__)
    for name, new in fresh.__dict__.items():
        old = module.__dict__.get(name)
        if name.startswith("__") or old is new:
            continue
        if isinstance(new, types.FunctionType):
            old = _bare(old)
            if isinstance(old, types.FunctionType):
                old.__defaults__, old.__kwdefaults__ = new.__defaults__, new.__kwdefaults__
        elif not isinstance(new, type | types.ModuleType) and repr(old) != repr(new):
            for other in list(sys.modules.values()):
                if getattr(other, "__dict__", {}).get(name) is old:
                    setattr(other, name, new)


class Tries:
    """Processes that each try one small wrong, so many at once."""

    def __init__(self, jobs):
        self.jobs = jobs
        self.running = {}
        self.slots = list(range(jobs))
        self.at = mmap.mmap(-1, 8 * jobs)

    def start(self, mutant, steps):
        """Forks a process that goes through steps, and yields what ended while it waited for room.

        steps: (s that it takes, number of a test, function that says whether all is well), in
        order; what raises, is not well or takes far too long is a mutant noticed.
        """
        while len(self.running) >= self.jobs:
            yield self.wait()
        slot = self.slots.pop()
        child = os.fork()
        if child:
            self.running[child] = (mutant, slot)
            return
        code = 1
        try:
            silent = os.open(os.devnull, os.O_WRONLY)
            os.dup2(silent, 1)
            os.dup2(silent, 2)
            resource.setrlimit(resource.RLIMIT_AS, (MOST_MEMORY, MOST_MEMORY))
            code = int(not all(self._well(slot, *step) for step in steps))
        finally:
            os._exit(code)

    def _well(self, slot, took, number, well):
        struct.pack_into("q", self.at, 8 * slot, number)
        spent = resource.getrusage(resource.RUSAGE_SELF)
        most = spent.ru_utime + spent.ru_stime + max(LONGEST, TIMES_AS_LONG * took)
        resource.setrlimit(resource.RLIMIT_CPU, (int(most) + 1, resource.RLIM_INFINITY))
        return well()

    def wait(self):
        """The next that ends: (mutant, number of the step that it ended at, None if at none)."""
        child, status = os.wait()
        mutant, slot = self.running.pop(child)
        self.slots.append(slot)
        ended_at = struct.unpack_from("q", self.at, 8 * slot)[0]
        return mutant, None if status == 0 else ended_at

    def rest(self):
        """Yields what is still running as it ends."""
        while self.running:
            yield self.wait()
