"""Every input declared once, with one meaning and one default, whose words are made from it."""

import ast
import importlib
from collections import Counter
from pathlib import Path

import pytest

from ringwright.core import calculations
from ringwright.core.catalogue import inputs
from ringwright.core.catalogue.inputs_blank import BLANK
from ringwright.core.catalogue.inputs_drawing import OPERATIONS, PARTS
from ringwright.core.catalogue.inputs_ring import GREY_IRON, RING
from ringwright.core.drawing import catalogue as drawings
from ringwright.core.fields import Field, checked, field, taken, with_usual
from ringwright.core.making.route_text import TEXT
from ringwright.core.properties.materials import for_use, material

CORE = Path(__file__).parents[2] / "service" / "ringwright" / "core"
FILES = sorted((CORE / "catalogue").glob("inputs_*.py"))
ENGINE = {"bore": 80.0, "stroke": 100.0, "steam_pressure": 0.7, "speed": 250.0}


def declared():
    """Every Field of every table, list entries left out."""
    found = []
    for path in FILES:
        module = importlib.import_module("ringwright.core.catalogue." + path.stem)
        for name, table in vars(module).items():
            if name.isupper() and hasattr(table, "values"):
                found += [one for one in table.values() if isinstance(one, Field)]
    # A file that uses the table of another holds the same Field.
    return list({id(one): one for one in found}.values())


def everywhere():
    return [one for calculation in calculations.CALCULATIONS.values() for one in calculation.fields]


def test_no_name_is_declared_twice():
    names = Counter(one.name for one in declared())
    assert len(names) > 125
    assert [name for name, count in names.items() if count > 1] == []


def test_every_calculation_takes_its_inputs_from_there():
    known = {id(one) for one in declared()}
    assert [one.name for one in everywhere() if id(one) not in known] == []
    assert {one.name for one in everywhere()} == {one.name for one in declared()}


def test_no_calculation_declares_an_input_of_its_own():
    for path in CORE.rglob("*.py"):
        if path.parent.name == "catalogue" or path.name == "fields.py":
            continue
        tree = ast.parse(path.read_text(encoding="utf-8"))
        calls = [node.func for node in ast.walk(tree) if isinstance(node, ast.Call)]
        assert "field" not in [call.id for call in calls if isinstance(call, ast.Name)], path


def test_a_file_of_the_catalogue_stays_short():
    assert all(len(path.read_text(encoding="utf-8").splitlines()) < 400 for path in FILES)


def test_every_input_is_needed_or_says_what_happens_without_it():
    for one in declared():
        assert one.required != bool(one.default), one.name
        assert one.required or one.default.words, one.name


def rules(entry):
    return list(entry.default.cases.values()) if entry.default.cases else [entry.default]


@pytest.mark.parametrize("entry", [one for one in declared() if one.default], ids=lambda e: e.name)
def test_a_default_that_is_a_value_is_allowed_where_it_stands(entry):
    for default in rules(entry):
        if default.value is not None:
            assert checked((entry,), {entry.name: default.value})[entry.name] == default.value


def test_words_are_made_from_the_value():
    for value, words in ((0.3, "0.300 mm (0.0118 in)"), (2.5, "2.50 mm (0.098 in)")):
        assert field("x", "length", "m", inputs.fixed(value)).default.words == words
    one = inputs.share("the bore", 0.012, plus=0.5)
    assert one.words == "0.5 mm and 1.2 % of the bore"
    assert one.rule(100.0) == pytest.approx(1.7)
    steps = inputs.steps("the bore", ((30.0, 0.4), (None, 1.6)), "stiff enough")
    assert steps.words == "mm by the bore: 0.4 below 30, 1.6 beyond"
    assert [steps.rule(bore) for bore in (29.9, 30.0, 500.0)] == [0.4, 1.6, 1.6]


def test_the_allowance_told_is_the_allowance_taken():
    """The words of a band said 0.4 % while 1.2 % was taken."""
    request = {"bore": 100.0, "finishing": "band", "setting": "sprung"}
    chosen = calculations.run("sizing", request)["chosen"]
    told = [one for one in chosen if one["input"] == "finishing_allowance"][0]
    assert told["value"] == pytest.approx(1.7)
    assert "1.2 %" in told["why"]
    assert "1.2 %" in BLANK["finishing_allowance"].default.words


def test_every_ring_metal_has_a_usual_soak():
    for key in for_use("ring"):
        value, why = taken(BLANK["soak_temperature"], material(key).family, ())
        assert value >= 100.0 and why


def test_no_other_file_takes_a_metal_by_its_key():
    for path in CORE.rglob("*.py"):
        if path.parent.name in ("catalogue", "properties") or path.name == "machining_table.py":
            continue
        assert '"%s"' % GREY_IRON not in path.read_text(encoding="utf-8"), path


def test_an_entry_of_a_list_takes_its_usual_values():
    items = (field("count", "count", "m", inputs.fixed(1)), field("name", "text", "m"))
    assert with_usual(items, {"count": None, "name": None}) == {"count": 1, "name": None}
    assert with_usual(items, {"count": 7, "name": "a"}) == {"count": 7, "name": "a"}


def test_a_chooser_notes_what_it_took_and_only_that():
    take = inputs.Chooser({"bore": 80.0, "shop_temperature": 15.0}, RING)
    assert take("shop_temperature") == 15.0
    assert take("modulus", 100000.0, of="some iron") == 100000.0
    assert take.chosen == [("modulus", 100000.0, "MPa", "of some iron")]
    with pytest.raises(KeyError):
        take("no_such_name")


@pytest.mark.parametrize(
    ("calculation", "request_"),
    [
        ("running", ENGINE),
        ("piston-valve", {"bore": 80.0, "steam_pressure": 0.7, "port_width": 9.0}),
        ("wall-pressure", {"bore": 80.0}),
    ],
)
@pytest.mark.parametrize("ring_type", ["plain", "double-turn"])
@pytest.mark.parametrize("metal", ["grey-iron", "phosphor-bronze"])
def test_one_sizing_rule_decides_the_ring(calculation, request_, ring_type, metal):
    """`running` and `piston-valve` took bore/28 where sizing takes about bore/32."""
    ring = {"ring_type": ring_type, "ring_material": metal}
    sized = calculations.run("sizing", {"bore": 80.0, "steam_pressure": 0.7, **ring})["figures"]
    chosen = calculations.run(calculation, {**request_, **ring})["chosen"]
    taken_here = {one["input"]: one["value"] for one in chosen}
    for name in ("radial_thickness", "ring_width", "wall_pressure", "closed_gap"):
        assert taken_here[name] == pytest.approx(sized[name]["value"], rel=1e-9), name


def test_parts_and_operations_are_those_that_are_drawn():
    assert tuple(drawings.PARTS) == PARTS
    assert tuple(TEXT) == OPERATIONS


def test_what_a_name_meant_twice_is_two_names():
    by_calculation = {
        name: {one.name for one in calculations.CALCULATIONS[name].fields}
        for name in ("sizing", "running", "piston-valve", "wall-pressure", "stock")
    }
    assert "rings" in by_calculation["sizing"] and "rings" not in by_calculation["running"]
    assert "rings_on_piston" in by_calculation["running"] & by_calculation["piston-valve"]
    assert "back_pressure" in by_calculation["running"] & by_calculation["piston-valve"]
    assert "back_pressure" not in by_calculation["wall-pressure"]
    assert "bars" in by_calculation["stock"] and "bars" not in by_calculation["piston-valve"]
