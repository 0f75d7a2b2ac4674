"""Every figure, list and check that an answer holds is declared, and the reverse."""

import ast
import json
from functools import cache
from pathlib import Path

import pytest

from ringwright.api.schemas import Schemas, load
from ringwright.core import calculations, reference
from ringwright.core.catalogue import NESTED, UNIT, all_figures
from ringwright.core.catalogue.checks import CHECKS, all_checks
from ringwright.core.problems import CoreProblem

TESTS = Path(__file__).parents[1]
EXAMPLES = TESTS.parent / "openapi" / "examples"
ANSWERS = {name: one.answer for name, one in calculations.CALCULATIONS.items()}
# What every answer holds, whatever its calculation.
EVERYWHERE = {"figures", "findings", "chosen", "cautions"}


def requests():
    """(calculation, request) of the vectors, the examples and the reference lists."""
    for row in json.loads((TESTS / "vectors" / "requests.json").read_text(encoding="utf-8")):
        yield row["calculation"], row["request"]
    for path in sorted(EXAMPLES.glob("*.json")):
        for example in json.loads(path.read_text(encoding="utf-8")).values():
            yield path.stem, example["value"]
    # A joint, readings and a valve that neither vectors nor examples have.
    yield "tooling", {"bore": 80, "ring_type": "plain", "end_cut": "stepped"}
    yield "tooling", {"bore": 150, "setting": "spread", "finishing": "band"}
    yield "tooling", {"bore": 80, "ring_type": "plain", "setting": "bound", "finishing": "band"}
    yield "running", {"bore": 80, "stroke": 100, "speed": 200, "steam_pressure": 0.7,
                      "steam_measured": 60, "hours_per_season": 200}  # fmt: skip
    yield "inspection", {"bore": 80, "ring_type": "plain", "setting": "bound",
                         "finishing": "forced-round", "measured_light": 0.02,
                         "measured_across": 85.0,
                         "measured_along": 84.0, "measured_free_gap": 9.0}  # fmt: skip
    yield "stock", {"sets": [{"outside_diameter": 83, "inside_diameter": 74, "part_length": 8,
                              "count": 3}], "bar_price": 4.0}  # fmt: skip
    for name, calculation in calculations.CALCULATIONS.items():
        if not calculation.fields:
            yield name, {}


@cache
def answers():
    """(calculation, Answer, plain answer) of every request that is answered, parts apart."""
    schemas = Schemas()
    found = []
    for name, request in requests():
        calculation = calculations.CALCULATIONS[name]
        fields = tuple(calculation.fields)
        try:
            values = load(schemas.schema(name, fields)(), fields, request)
            answer = calculations.plain(calculation.run(values))
        except CoreProblem:
            continue
        found.append((name, ANSWERS[name], answer))
        for part, declared in ANSWERS[name].parts.items():
            found.append((name + "." + part, declared, answer[part]))
    assert len(found) > 100
    return found


def figures_of(answer):
    """The figures of an answer; the list of methods has figures of another kind."""
    return answer.get("figures", {}) if "methods" not in answer else {}


@pytest.mark.parametrize("name", ANSWERS)
def test_a_name_is_declared_one_way(name):
    """Whatever calculation tells it, a figure of one name is one figure."""
    everything = all_figures(ANSWERS.values())
    for figure, declared in all_figures([ANSWERS[name]]).items():
        assert declared == everything[figure], figure


def test_a_figure_is_declared_whole():
    methods = {one.key for module in reference.modules() for one in module.METHODS}
    for name, declared in all_figures(ANSWERS.values()).items():
        assert name == declared.name == name.lower().replace("-", "_")
        assert declared.label[0].isupper() and len(declared.label) <= 36, name
        assert declared.group, name
        assert declared.unit == UNIT[declared.kind]
        assert declared.methods and set(declared.methods) <= methods, name


def test_every_figure_of_an_answer_is_declared():
    for name, declared, answer in answers():
        told = {one.declared.name: one.declared for one in declared.figures}
        for figure, shown in figures_of(answer).items():
            assert figure in told, (name, figure)
            assert shown["unit"] == told[figure].unit, figure
            assert shown["symbol"] == told[figure].symbol, figure
            assert shown["method"] in told[figure].methods, figure
        always = {one.declared.name for one in declared.figures if one.always}
        assert always <= set(figures_of(answer)), name
        shown = list(figures_of(answer))
        assert shown == [one for one in told if one in shown], "in the order declared"


def test_every_declared_figure_is_told_somewhere():
    seen = set()
    for name, declared, answer in answers():
        seen |= {(name, figure) for figure in figures_of(answer)}
        seen |= set(_figures_in_rows(declared.lists, answer))
    for name, declared, _ in answers():
        for one in declared.figures:
            assert (name, one.declared.name) in seen or "." in name, (name, one.declared.name)
    for figure in all_figures(ANSWERS.values()):
        assert figure in seen or any(figure == one[1] for one in seen), figure


def _figures_in_rows(columns, answer):
    for column in columns:
        for row in answer.get(column.name, ()) if column.kind == "records" else ():
            yield from (
                one.name for one in column.items if one.kind == "figure" and one.name in row
            )


def test_a_symbol_means_one_thing_in_an_answer():
    """The symbol of a figure and the same symbol in any working stand for one number."""
    for name, _, answer in answers():
        known = {}
        for figure, shown in figures_of(answer).items():
            if shown["symbol"]:
                known.setdefault(shown["symbol"], []).append(
                    (shown["value"], shown["unit"], figure)
                )
            for put in shown.get("working", ()):
                known.setdefault(put["symbol"], []).append((put["value"], put["unit"], figure))
        for symbol, places in known.items():
            value, unit, _ = places[0]
            for other in places[1:]:
                assert other[0] == pytest.approx(value, rel=1e-9, abs=1e-12), (name, symbol, places)
                assert other[1] == unit, (name, symbol, places)


def test_every_list_of_an_answer_is_declared():
    for name, declared, answer in answers():
        columns = {column.name: column for column in declared.lists}
        held = set(answer) - EVERYWHERE - set(declared.parts)
        if name != "methods":
            assert held <= set(columns), name
        for column in columns.values():
            _check_entry(column, answer, name)


def _check_entry(column, entry, where):
    where = "%s.%s" % (where, column.name)
    if column.name not in entry:
        assert not column.always, where
        return
    value, kind = entry[column.name], column.kind
    if kind == "records":
        assert isinstance(value, list), where
        for row in value:
            _check_row(column.items, row, where)
    elif kind == "object":
        _check_row(column.items, value, where)
    elif kind == "map":
        for row in value.values():
            _check_row(column.items, row, where)
    elif kind == "series":
        assert set(value) == {"values", "unit", "symbol"} and value["unit"] == UNIT[column.items]
    elif kind == "figure":
        assert value["unit"] == column.items.unit and value["symbol"] == column.items.symbol, where
    elif kind == "any_quantity":
        assert set(value) == {"value", "unit"}, where
    elif kind in ("text", "texts", "flag", "count", "plain", "plain_or_none", "anything"):
        kinds = {
            "text": str,
            "texts": list,
            "flag": bool,
            "count": int,
            "plain": (int, float),
            "plain_or_none": (int, float, type(None)),
            "anything": object,
        }
        assert isinstance(value, kinds[kind]), where
        assert isinstance(value, bool) == (kind == "flag") or kind == "anything", where
    else:
        assert set(value) == {"value", "unit"} and value["unit"] == UNIT[kind], where


def _check_row(columns, row, where):
    assert set(row) <= {column.name for column in columns}, where
    for column in columns:
        _check_entry(column, row, where)


def test_every_column_is_filled_somewhere():
    seen, declared = set(), {}

    # A column that several answers share is filled where one of them fills it.
    def walk(where, columns, entry):
        for column in columns:
            here = "%s.%s" % (where, column.name)
            declared[here] = id(column)
            if not isinstance(entry, dict) or column.name not in entry:
                continue
            seen.add(id(column))
            if column.kind in NESTED:
                value = entry[column.name]
                rows = value if column.kind == "records" else [value]
                if column.kind == "map":
                    rows = value.values()
                for row in rows:
                    walk(here, column.items, row)

    for name, one, answer in answers():
        walk(name, one.lists, answer)
    # Told only when the geometry of a drawing is asked for: tests/drawing.
    missing = {here for here, column in declared.items() if column not in seen}
    assert missing <= {"drawing.sheets.views"}


def test_every_check_of_an_answer_is_declared():
    declared = all_checks(ANSWERS.values())
    for name, _, answer in answers():
        for finding in answer.get("findings", ()):
            assert finding["check"] in declared, name


def test_every_check_in_the_code_is_declared():
    declared = all_checks(ANSWERS.values())
    made = set()
    for path in Path(calculations.__file__).parent.rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            called = isinstance(node, ast.Call) and getattr(node.func, "id", "") == "finding"
            if called and isinstance(node.args[0], ast.Constant):
                made.add(node.args[0].value)
    assert len(made) > 60
    assert made <= set(declared)


def test_every_declared_check_is_made_in_its_room():
    """The key stands in the code of the room that is said to make it."""
    core = Path(calculations.__file__).parent
    code = {}
    for path in core.rglob("*.py"):
        room = path.relative_to(core).parts[0]
        code[room] = code.get(room, "") + path.read_text(encoding="utf-8")
    for check in CHECKS.values():
        assert '"%s"' % check.key in code[check.room], check.key
        assert check.judges[0].islower() and not check.judges.endswith("."), check.key


def test_methods_lists_figures_and_checks():
    listing = calculations.run("methods", {})
    figures = {row["name"]: row for row in listing["figures"]}
    assert figures["free_gap"]["unit"] == "mm"
    assert "wound-on" in [row["check"] for row in listing["checks"]]
    by_key = {row["key"]: row for row in listing["methods"]}
    assert "free_gap" in by_key["uniform-gap"]["figures"]
