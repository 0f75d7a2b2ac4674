"""Small wrongs of a module: one operator, comparison, limit or number changed at a time."""

import ast
import copy
from collections import namedtuple
from itertools import pairwise

# line, column: where. was, now: in words. tree: of the whole changed module.
Mutant = namedtuple("Mutant", ("line", "column", "was", "now", "tree"))

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
# A number is made so much larger; a whole one by one.
_LARGER = 1.01


def mutants_of(source):
    """List of Mutant of a module's source, in order. Texts, docstrings and Method(...) are left:
    what they say is held by other tests."""
    tree = ast.parse(source)
    skipped = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Call) and _name(node.func) in ("Method", "namedtuple"):
            skipped.update(map(id, ast.walk(node)))
    found = []
    for at, node in enumerate(ast.walk(tree)):
        if id(node) in skipped:
            continue
        for change in _changes(node):
            made = copy.deepcopy(tree)
            target = next(each for place, each in enumerate(ast.walk(made)) if place == at)
            was = ast.unparse(target)
            now = change(target)
            found.append(Mutant(node.lineno, node.col_offset, was, now, made))
    return sorted(found, key=lambda one: (one.line, one.column, one.now))


def swaps_of(source):
    """List of Mutant: two neighbours that a call gives by keyword, each given the other's value."""
    tree = ast.parse(source)
    found = []
    for at, node in enumerate(ast.walk(tree)):
        if not isinstance(node, ast.Call) or _name(node.func) in ("Method", "namedtuple"):
            continue
        for place, (one, next_one) in enumerate(pairwise(node.keywords)):
            if ast.dump(one.value) == ast.dump(next_one.value) or not (one.arg and next_one.arg):
                continue
            made = copy.deepcopy(tree)
            target = next(each for number, each in enumerate(ast.walk(made)) if number == at)
            first, second = target.keywords[place : place + 2]
            first.value, second.value = second.value, first.value
            was = "%s(%s=, %s=)" % (_name(node.func), one.arg, next_one.arg)
            found.append(Mutant(node.lineno, node.col_offset, was, "swapped", made))
    return sorted(found, key=lambda mutant: (mutant.line, mutant.column, mutant.was))


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
