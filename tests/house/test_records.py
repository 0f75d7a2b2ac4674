"""Records are filled by keyword: two neighbours that change places would go unseen by position."""

import ast
from pathlib import Path

SERVICE = Path(__file__).parents[2] / "service" / "ringwright"
# Four and more; a pair or a triple reads by position as well.
LEAST = 4
# Rows of tables and what is drawn, written by the hundred in the order of their comment; and a
# figure and a choice, which one function each makes: the busiest lines of the core.
BY_POSITION = {
    *("Method", "Source", "Sealing", "Fit", "Field", "Figure", "Choice"),
    *("Line", "Arc", "Circle", "Text", "Polyline", "Hatch", "Fill", "LineType", "Part"),
}


def records():
    """Names of named tuples with that many fields or more, wherever a name is one; what is also the
    name of a class or of a smaller record is left to the reader."""
    least, classes = {}, set()
    for path in SERVICE.rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.ClassDef):
                if "NamedTuple" in (getattr(base, "id", "") for base in node.bases):
                    count = sum(isinstance(entry, ast.AnnAssign) for entry in node.body)
                    least[node.name] = min(count, least.get(node.name, count))
                else:
                    classes.add(node.name)
            elif (
                isinstance(node, ast.Assign)
                and isinstance(node.value, ast.Call)
                and getattr(node.value.func, "id", "") == "namedtuple"
                and isinstance(node.targets[0], ast.Name)
                and isinstance(node.value.args[1], ast.Tuple)
            ):
                name = node.targets[0].id
                count = len(node.value.args[1].elts)
                least[name] = min(count, least.get(name, count))
    return {name for name, count in least.items() if count >= LEAST} - classes - BY_POSITION


def test_records_are_filled_by_keyword():
    wide = records()
    assert len(wide) > 40
    wrong = []
    for path in SERVICE.rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call):
                name = getattr(node.func, "id", getattr(node.func, "attr", ""))
                plain = [one for one in node.args if not isinstance(one, ast.Starred)]
                if name in wide and plain:
                    wrong.append("%s:%d %s" % (path.relative_to(SERVICE), node.lineno, name))
    assert wrong == []
