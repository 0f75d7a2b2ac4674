"""Small wrongs of a module: one operator, comparison, limit or number changed at a time."""

import ast
import copy
from collections import namedtuple
from itertools import pairwise

# line, column: where. was, now: in words. place: which node of ast.walk. which: which of its
# changes. lines: first and last of its statement, without what is inside. function: dotted name of
# the outermost function that it is in, "" where none is.
Mutant = namedtuple(
    "Mutant", ("line", "column", "was", "now", "place", "which", "lines", "function")
)
# Changes nothing.
NOTHING = Mutant(line=0, column=0, was="", now="", place=-1, which=0, lines=(0, 0), function="")

_OPERATORS = {
    ast.Add: ast.Sub,
    ast.Sub: ast.Add,
    ast.Mult: ast.Div,
    ast.Div: ast.Mult,
    ast.FloorDiv: ast.Mult,
}
_COMPARISONS = {
    ast.Lt: (ast.LtE, ast.GtE),
    ast.LtE: (ast.Lt, ast.Gt),
    ast.Gt: (ast.GtE, ast.LtE),
    ast.GtE: (ast.Gt, ast.Lt),
    ast.Eq: (ast.NotEq,),
    ast.NotEq: (ast.Eq,),
}
_NAMES = {"min": "max", "max": "min", "sin": "cos", "cos": "sin"}
# What says which names there are, or is told to a reader: nothing that is reckoned with.
_SAID = ("Method", "namedtuple")
# A number is made so much larger; a whole one by one.
_LARGER = 1.01


def mutants_of(source):
    """List of Mutant of a module's source, in order. Texts, docstrings and Method(...) are left:
    what they say is held by other tests."""
    return _found(source, _changes)


def swaps_of(source):
    """List of Mutant: two neighbours that a call gives by keyword, each given the other's value."""
    return _found(source, _swaps)


def changed(source, mutant):
    """The tree of a module's source with that mutant in it."""
    tree = ast.parse(source)
    if mutant.place == NOTHING.place:
        return tree
    for place, node in enumerate(ast.walk(tree)):
        if place == mutant.place:
            changes = _swaps(node) if mutant.now == "swapped" else _changes(node)
            changes[mutant.which](node)
            return tree
    raise ValueError("no such place in the source")


def _found(source, changes_of):
    tree = ast.parse(source)
    skipped = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Call) and _name(node.func) in _SAID:
            skipped.update(map(id, ast.walk(node)))
    inside = dict(_places(tree, (1, 1), ""))
    found = []
    for place, node in enumerate(ast.walk(tree)):
        if id(node) in skipped:
            continue
        for which, change in enumerate(changes_of(node)):
            target = copy.deepcopy(node)
            was = ast.unparse(target)
            told = change(target)
            was, now = told if isinstance(told, tuple) else (was, told)
            lines, function = inside[id(node)]
            found.append(
                Mutant(node.lineno, node.col_offset, was, now, place, which, lines, function)
            )
    return sorted(found, key=lambda one: (one.line, one.column, one.was, one.now))


def _places(node, lines, function, outer=""):
    """Yields the id of each node within, the lines of its statement and its outermost function."""
    for field, value in ast.iter_fields(node):
        for child in value if isinstance(value, list) else [value]:
            if not isinstance(child, ast.AST):
                continue
            held, name, within = lines, function, outer
            if isinstance(child, ast.stmt):
                body = getattr(child, "body", None)
                last = body[0].lineno - 1 if body else child.end_lineno
                held = (child.lineno, max(child.lineno, last))
            if isinstance(node, ast.FunctionDef) and not function and field == "body":
                name = outer + node.name
            if isinstance(node, ast.ClassDef) and not function:
                within = outer + node.name + "."
            yield id(child), (held, name)
            yield from _places(child, held, name, within)


def _swaps(node):
    """Functions that swap what a call gives to two neighbours, and say which."""
    if not isinstance(node, ast.Call) or _name(node.func) in _SAID:
        return []
    return [
        _swapped(place)
        for place, (one, other) in enumerate(pairwise(node.keywords))
        if one.arg and other.arg and ast.dump(one.value) != ast.dump(other.value)
    ]


def _swapped(place):
    def change(node):
        one, other = node.keywords[place : place + 2]
        one.value, other.value = other.value, one.value
        return "%s(%s=, %s=)" % (_name(node.func), one.arg, other.arg), "swapped"

    return change


def _changes(node):
    """Functions that change a node of that kind in place and say what it is then."""
    if isinstance(node, ast.BinOp | ast.AugAssign) and type(node.op) in _OPERATORS:
        return [_with("op", _OPERATORS[type(node.op)]())]
    if isinstance(node, ast.Compare):
        return [
            _with("ops", [other(), *node.ops[1:]])
            for other in _COMPARISONS.get(type(node.ops[0]), ())
        ]
    if isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.USub):
        return [_with("op", ast.UAdd())]
    if isinstance(node, ast.BoolOp):
        return [_with("op", ast.Or() if isinstance(node.op, ast.And) else ast.And())]
    if isinstance(node, ast.Constant) and type(node.value) in (int, float):
        return [_with("value", node.value + 1 if type(node.value) is int else _grown(node.value))]
    if isinstance(node, ast.Constant) and type(node.value) is bool:
        return [_with("value", not node.value)]
    if isinstance(node, ast.Call) and _name(node.func) in _NAMES:
        return [_renamed]
    return []


def _grown(value):
    return _LARGER * value if value else 0.01


def _with(field, value):
    def change(node):
        setattr(node, field, value)
        return ast.unparse(node)

    return change


def _renamed(node):
    if isinstance(node.func, ast.Name):
        node.func.id = _NAMES[node.func.id]
    else:
        node.func.attr = _NAMES[node.func.attr]
    return ast.unparse(node)


def _name(function):
    return getattr(function, "id", None) or getattr(function, "attr", "")
