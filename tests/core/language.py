"""Reads Python source and says where it leaves the part of the language that the core keeps to.

The phone runs the core under MicroPython. Some of Python fails there loudly, some differs in
silence; both are named here with the reason, each as one check of the syntax tree. A
line whose sum is of whole numbers, or that walks a plain dict where the order does not matter, says
so in a comment: see EXCUSES.
"""

import ast
import builtins
import re

from core import phone_python

ALLOWED_IMPORTS = tuple(phone_python.MODULES)
ANY_METHOD = {name for names in phone_python.METHODS.values() for name in names}
# Methods of Python's own types that the phone lacks: ljust, zfill, title, is_integer ...
ABSENT_METHODS = {
    name
    for kind in (str, list, tuple, dict, set, int, float)
    for name in dir(kind)
    if not name.startswith("__")
} - ANY_METHOD
# Of named tuples, which have none of their helpers there.
ABSENT_HELPERS = {"_replace", "_asdict", "_make", "_fields", "_field_defaults"}

FORBIDDEN_NODES = {
    "Match": "match",
    "With": "with: parenthesised forms fail, and the core holds no resources",
    "AsyncFor": "async",
    "AsyncFunctionDef": "async",
    "AsyncWith": "async",
    "Await": "async",
    "Global": "global: the core keeps no state",
    "TryStar": "except*",
    "TypeAlias": "type",
    "MatMult": "@",
    "AnnAssign": "annotated assignment of a class body needs dataclasses; write a plain one",
}
# A percent format that prints a fraction, or format spec that does, rounds exact ties differently.
FRACTION = re.compile(r"%[-+ #0]*\d*(\.\d+)?[eEfFgG]")
PERCENT_NAME = re.compile(r"%\(")
# What a line may say for itself, where the syntax cannot show that it is harmless.
EXCUSES = {
    "sum adds": "# whole numbers",
    "walking a plain dict": "# any order",
}
COMMA_SPEC = re.compile(r",")
FRACTION_SPEC = re.compile(r"[eEfFgG%]$")


def faults(source, fractions_allowed=False, depth=0):
    """[(line, what)] for a module's source.

    fractions_allowed: True for the one or two files that own the printing of numbers.
    depth: how many folders below the core the module lies.
    """
    tree = ast.parse(source)
    found = []
    unordered = _names_of_plain_dicts(tree)
    annotations = _annotation_nodes(tree)
    for node in ast.walk(tree):
        if id(node) in annotations:
            continue
        if isinstance(node, ast.ImportFrom) and node.level > depth + 1:
            found.append((node.lineno, "an import from outside the core"))
        for what in _checks(node, fractions_allowed, unordered):
            found.append((_line(node), what))
    found.extend(_unknown_builtins(tree, annotations))
    lines = source.splitlines()
    return sorted({fault for fault in found if not _excused(lines[fault[0] - 1], fault[1])})


def _line(node):
    """The line of a node; a comprehension's own part has none but that of what it walks."""
    return getattr(node, "lineno", None) or getattr(getattr(node, "iter", None), "lineno", 1)


def _excused(line, what):
    return any(what.startswith(key) and excuse in line for key, excuse in EXCUSES.items())


def _checks(node, fractions_allowed, unordered):
    kind = type(node).__name__
    if kind in FORBIDDEN_NODES:
        yield FORBIDDEN_NODES[kind]
    check = CHECKS.get(kind)
    if check is not None:
        yield from check(node)
    if kind in ("BinOp", "JoinedStr", "Call") and not fractions_allowed:
        yield from _fractions(node)
    yield from _order(node, unordered)


def _import(node):
    for alias in node.names:
        if alias.name not in ALLOWED_IMPORTS:
            yield "import %s: not on the phone" % alias.name


def _import_from(node):
    if node.level:
        return
    if node.module not in ALLOWED_IMPORTS:
        yield "from %s import: not on the phone" % node.module
        return
    for alias in node.names:
        if alias.name not in phone_python.MODULES[node.module]:
            yield "%s.%s: not on the phone" % (node.module, alias.name)


def _attribute(node):
    if isinstance(node.value, ast.Name) and node.value.id in ALLOWED_IMPORTS:
        if node.attr not in phone_python.MODULES[node.value.id]:
            yield "%s.%s: not on the phone" % (node.value.id, node.attr)
    elif node.attr in ABSENT_HELPERS:
        yield ".%s: not on the phone" % node.attr


def _call(node):
    name = node.func.id if isinstance(node.func, ast.Name) else None
    keywords = {keyword.arg for keyword in node.keywords}
    if isinstance(node.func, ast.Attribute) and node.func.attr in ABSENT_METHODS:
        yield ".%s(): not on the phone" % node.func.attr
    if name == "round" and len(node.args) + len(node.keywords) > 1:
        yield "round(x, n) differs in one value of eleven: use wording.decimal"
    if name == "zip" and "strict" in keywords:
        yield "zip(strict=): not on the phone"
    if name == "namedtuple" and keywords:
        yield "namedtuple with defaults: not on the phone"
    if name == "isinstance" and len(node.args) == 2 and isinstance(node.args[1], ast.BinOp):
        yield "int | None at run time: not on the phone"
    is_sort = name == "sorted" or (
        isinstance(node.func, ast.Attribute) and node.func.attr == "sort"
    )
    for keyword in node.keywords:
        if is_sort and keyword.arg == "key" and not _total(keyword.value):
            yield "sorting by a key is not stable there: let the key be a tuple that settles ties"


def _total(key):
    """Whether a sort key says how ties fall: a lambda giving a tuple."""
    return isinstance(key, ast.Lambda) and isinstance(key.body, ast.Tuple)


def _arguments(node):
    if node.posonlyargs:
        yield "positional-only /: not on the phone"


def _dict(node):
    if None in node.keys:
        yield "{**a}: not on the phone"


def _display(node):
    loads = not isinstance(getattr(node, "ctx", ast.Load()), ast.Store)
    if loads and any(isinstance(entry, ast.Starred) for entry in node.elts):
        yield "[*a]: not on the phone"


def _class(node):
    for base in node.bases:
        text = ast.unparse(base)
        if "namedtuple" in text.lower():
            yield "a class of a named tuple: not on the phone"


def _binary(node):
    if isinstance(node.op, ast.BitOr):
        yield "a | b: dicts and types cannot be joined so there"
    right = node.right.value if isinstance(node.right, ast.Constant) else None
    if isinstance(node.op, ast.Pow) and right in (2, 0.5):
        yield "** 2 or ** 0.5: a product or math.sqrt is quicker and the same everywhere"
    left = node.left.value if isinstance(node.left, ast.Constant) else None
    if isinstance(node.op, ast.Mod) and isinstance(left, str) and PERCENT_NAME.search(left):
        yield "%(name)s: not on the phone"


def _name(node):
    if node.id == "sum":
        yield "sum adds floats differently from Python 3.12 on: use a plain loop"


CHECKS = {
    "Import": _import,
    "ImportFrom": _import_from,
    "Attribute": _attribute,
    "Call": _call,
    "arguments": _arguments,
    "Dict": _dict,
    "List": _display,
    "Tuple": _display,
    "Set": _display,
    "ClassDef": _class,
    "BinOp": _binary,
    "Name": _name,
}


def _fractions(node):
    """Numbers with a fraction printed outside the file that owns it."""
    if isinstance(node, ast.BinOp):
        left = node.left
        text = left.value if isinstance(left, ast.Constant) else None
        text = text.replace("%%", "") if isinstance(text, str) else ""
        if isinstance(node.op, ast.Mod) and FRACTION.search(text):
            yield "a fraction printed outside wording.py: exact ties differ"
    elif isinstance(node, ast.JoinedStr):
        for value in node.values:
            if isinstance(value, ast.FormattedValue) and value.format_spec is not None:
                parts = [p.value for p in value.format_spec.values if isinstance(p, ast.Constant)]
                yield from _spec("".join(parts))
    elif isinstance(node.func, ast.Attribute) and node.func.attr == "format":
        if isinstance(node.func.value, ast.Constant):
            for spec in re.findall(r"{[^{}:]*:([^{}]*)}", str(node.func.value.value)):
                yield from _spec(spec)
    elif isinstance(node.func, ast.Name) and node.func.id == "format":
        yield "format(): say it with wording.py"


def _spec(spec):
    if COMMA_SPEC.search(spec):
        yield "a comma in a format: dropped there"
    if FRACTION_SPEC.search(spec):
        yield "a fraction printed outside wording.py: exact ties differ"


def _names_of_plain_dicts(tree):
    """Names that are only ever given a plain dict, or a function's **kwargs."""
    names = set()
    others = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Assign):
            for target in node.targets:
                if isinstance(target, ast.Name):
                    (names if _is_plain_dict(node.value) else others).add(target.id)
        elif isinstance(node, ast.arguments) and node.kwarg is not None:
            names.add(node.kwarg.arg)
    return names - others


def _is_plain_dict(node):
    if isinstance(node, (ast.Dict, ast.DictComp)):
        return True
    if not isinstance(node, ast.Call):
        return False
    if isinstance(node.func, ast.Name):
        return node.func.id == "dict"
    return isinstance(node.func, ast.Attribute) and ast.unparse(node.func) == "json.loads"


def _order(node, unordered):
    """Walking a plain dict, whose order is chance on the phone."""
    walked = []
    if isinstance(node, (ast.For, ast.comprehension)):
        walked.append(node.iter)
    elif isinstance(node, ast.Call):
        name = node.func.id if isinstance(node.func, ast.Name) else ""
        joins = isinstance(node.func, ast.Attribute) and node.func.attr == "join"
        if joins or name in ("list", "tuple", "enumerate", "OrderedDict", "next", "iter", "zip"):
            walked.extend(node.args)
    for entry in walked:
        inner = entry
        method = entry.func if isinstance(entry, ast.Call) else None
        if isinstance(method, ast.Attribute) and method.attr in ("items", "keys", "values"):
            inner = method.value
        plain = _is_plain_dict(inner)
        if plain or (isinstance(inner, ast.Name) and inner.id in unordered):
            yield "walking a plain dict: its order is lost there; use an OrderedDict or a list"


def _annotation_nodes(tree):
    """Every node inside an annotation: they are not run."""
    inside = set()
    for node in ast.walk(tree):
        notes = []
        if isinstance(node, ast.arg):
            notes.append(node.annotation)
        elif isinstance(node, ast.FunctionDef):
            notes.append(node.returns)
        for note in notes:
            if note is not None:
                inside.update(id(entry) for entry in ast.walk(note))
    return inside


def _unknown_builtins(tree, annotations):
    """Built-in names that the phone lacks or that the core has no business with."""
    known = {*phone_python.BUILTINS, *phone_python.CONSTANTS, "sum"}
    forbidden = {name for name in dir(builtins) if not name.startswith("__")} - known
    bound = {node.id for node in ast.walk(tree) if isinstance(node, ast.Name) and _stores(node)}
    bound |= {node.arg for node in ast.walk(tree) if isinstance(node, ast.arg)}
    bound |= {
        node.name for node in ast.walk(tree) if isinstance(node, (ast.FunctionDef, ast.ClassDef))
    }
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom):
            bound |= {alias.asname or alias.name for alias in node.names}
    for node in ast.walk(tree):
        read = isinstance(node, ast.Name) and not _stores(node) and id(node) not in annotations
        if read and node.id in forbidden - bound:
            yield node.lineno, "%s: not for the core" % node.id


def _stores(node):
    return isinstance(node.ctx, (ast.Store, ast.Del))
