"""The core keeps to the Python that the phone runs, to its own company, and explains itself."""

import ast
import json
import re
import subprocess
import sys
from pathlib import Path

import pytest

import ringwright.core
from core import language

CORE = Path(ringwright.core.__file__).parent
FILES = sorted(CORE.rglob("*.py"))
NAMES = [path.relative_to(CORE).as_posix() for path in FILES]

# wording.py owns the printing of numbers; fields.py prints bounds and what was asked for, to six
# significant figures, in messages about input.
PRINTS_FRACTIONS = ("wording.py", "fields.py")


@pytest.mark.parametrize("path", FILES, ids=NAMES)
def test_core_keeps_to_the_phone_s_python(path):
    depth = len(path.relative_to(CORE).parts) - 1
    found = language.faults(path.read_text("utf-8"), path.name in PRINTS_FRACTIONS, depth)
    assert not found, "\n".join("%s:%d: %s" % (path.name, line, what) for line, what in found)


@pytest.mark.parametrize(
    "source",
    [
        "import dataclasses",
        "import re",
        "from typing import Any",
        "from __future__ import annotations",
        "from itertools import product",
        "from .. import units",
        "import math\nx = math.hypot(1, 2)",
        "import math\nx = math.prod([1])",
        "import math\nx = math.log1p(1)",
        "import functools\nx = functools.lru_cache",
        "def f(a, /): return a",
        "x = [*range(3)]",
        "x = (*range(3), 1)",
        "x = {*range(3)}",
        "x = {**{}}",
        "with open('x') as y: pass",
        "match 1:\n case 1: pass",
        "x = isinstance(1, int | None)",
        "x = {} | {}",
        "x = sum([0.1])",
        "x = round(1.23, 1)",
        "x = round(1.23, ndigits=1)",
        "x = list(zip([1], [2], strict=True))",
        "x = 'a'.ljust(3)",
        "x = 'a'.zfill(3)",
        "x = 'a'.title()",
        "x = 'a'.removeprefix('a')",
        "x = (1.0).is_integer()",
        "x = (5).bit_length()",
        "from collections import namedtuple\nP = namedtuple('P', ('a',), defaults=(1,))",
        "from collections import namedtuple\nclass P(namedtuple('P', ('a',))): pass",
        "def f(p): return p._replace(a=1)",
        "def f(p): return p._asdict()",
        "x = '%.2f' % 1.5",
        "x = '%5.1e' % 1.5",
        "x = f'{1.5:.2f}'",
        "x = f'{1500:,}'",
        "x = '{:,.2f}'.format(1.5)",
        "x = '%(a)s' % {'a': 1}",
        "for key in {'a': 1}: pass",
        "D = {'a': 1}\nfor key in D: pass",
        "D = {'a': 1}\nx = [v for v in D.values()]",
        "D = dict(a=1)\nx = list(D)",
        "import json\nd = json.loads('{}')\nx = ', '.join(d)",
        "def f(**given):\n for key in given: pass",
        "x = sorted([(1, 2)], key=lambda pair: pair[0])",
        "x = [1]\nx.sort(key=len)",
        "x = 3 ** 2",
        "x = 3 ** 0.5",
        "print('hello')",
        "x = open('file')",
        "x = eval('1')",
        "x = vars",
        "def f():\n global G",
        "class A:\n b: int = 1",
        "async def f(): pass",
    ],
)
def test_what_the_phone_lacks_is_found(source):
    assert language.faults(source)


@pytest.mark.parametrize(
    "source",
    [
        "from collections import OrderedDict, namedtuple\nP = namedtuple('P', ('a', 'b'))",
        "import math\nx = math.sqrt(2.0) ** 3",
        "def f(a, *rest, key=None, **more): return more.get('a')",
        "def f(a: int | None = None) -> float | None: return a",
        "from . import records\nfrom .problems import Fault",
        "x = sorted([(1, 2)], key=lambda pair: (pair[0], pair[1]))",
        "D = {'a': 1}\nx = sorted(D)\ny = D['a']\nz = D.get('b')\nw = 'a' in D",
        "from collections import OrderedDict\nD = OrderedDict()\nfor key in D: pass",
        "x = round(1.5)",
        "x = '%s of %d' % ('a', 3)",
        "x = '%d %% finished' % 3",
        "x = sum([1, 2])  # whole numbers",
        "D = {'a': 1}\nE = {v: k for k, v in D.items()}  # any order",
        "x = f'{3} pieces'",
        "first, *rest = [1, 2, 3]",
        "if (n := 3) > 2: pass",
        "def f(*, a, b=1):\n try:\n  return a\n except ValueError:\n  raise",
    ],
)
def test_what_the_phone_has_is_let_through(source):
    assert language.faults(source) == []


def test_core_comes_alone():
    """Importing every file of the core loads none of the service's packages."""
    modules = [
        "ringwright.core." + name[:-3].replace("/", ".")
        for name in NAMES
        if not name.endswith("__init__.py")
    ]
    code = (
        "import importlib, json, sys\n"
        "sys.path.insert(0, %r)\n"
        "before = set(sys.modules)\n"
        "for name in %r: importlib.import_module(name)\n"
        "print(json.dumps(sorted({n.split('.')[0] for n in set(sys.modules) - before})))\n"
    ) % (str(CORE.parents[1]), modules)
    done = subprocess.run(
        [sys.executable, "-I", "-c", code],
        capture_output=True,
        text=True,
        check=True,
    )
    loaded = set(json.loads(done.stdout))
    assert "ringwright" in loaded
    assert loaded.isdisjoint({"flask", "marshmallow", "pint", "ezdxf", "numpy", "scipy"})
    assert loaded - {"ringwright"} <= set(sys.stdlib_module_names)


def public_functions():
    """(file, function) for every public function at the top of a module that owns formulas."""
    for path in FILES:
        tree = ast.parse(path.read_text("utf-8"))
        owns = any(
            isinstance(node, ast.Assign) and ast.unparse(node.targets[0]) == "METHODS"
            for node in tree.body
        )
        for node in tree.body:
            if owns and isinstance(node, ast.FunctionDef) and not node.name.startswith("_"):
                yield path, node


FUNCTIONS = list(public_functions())


@pytest.mark.parametrize(
    ("path", "node"), FUNCTIONS, ids=["%s:%s" % (path.stem, node.name) for path, node in FUNCTIONS]
)
def test_docstring_names_every_parameter(path, node):
    text = ast.get_docstring(node) or ""
    assert text, "%s.%s has no docstring" % (path.stem, node.name)
    arguments = node.args.args + node.args.kwonlyargs
    missing = [a.arg for a in arguments if not re.search(r"\b%s\b" % a.arg, text)]
    assert not missing, "%s.%s does not explain %s" % (path.stem, node.name, ", ".join(missing))


def test_files_stay_readable():
    """About 400 lines and one purpose each; longer, it is due to be split."""
    long = {
        name: len(path.read_text("utf-8").splitlines())
        for name, path in zip(NAMES, FILES, strict=True)
    }
    assert {name: lines for name, lines in long.items() if lines > 450} == {}
