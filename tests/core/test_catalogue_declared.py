"""What an input is declared with stands in its own place: texts, bounds, entries and defaults; and
bounds, kind and choices are those that version 1.0.0 promised."""

import json
from pathlib import Path

from core.test_catalogue_inputs import everywhere, rules
from ringwright.core.calculations import CALCULATIONS
from ringwright.core.catalogue import figure, told
from ringwright.core.fields import UNIT_OF_KIND, Field

PROMISED = Path(__file__).parents[1] / "vectors" / "promised_1.0.0.json"
# Bounds of these count entries or letters.
COUNTED = ("count", "text", "records")
KINDS = {*UNIT_OF_KIND, *COUNTED, "choice", "flag", "object"}
NUMBER = (int, float)


def within(fields, before=""):
    """(where, Field) of all, entries of lists included."""
    for one in fields:
        yield before + one.name, one
        yield from within(one.items, before + one.name + ".")


FIELDS = dict(within(everywhere()))


def promised(inputs, before=""):
    for name, one in inputs.items():
        yield before + name, one
        yield from promised(one["items"], before + name + ".")


STORED = dict(promised(json.loads(PROMISED.read_text(encoding="utf-8"))["inputs"]))


def texts(*values):
    return all(type(one) is str for one in values)


def test_each_part_of_an_input_is_what_it_is_declared_to_be():
    assert len(FIELDS) > 200
    for where, one in FIELDS.items():
        assert texts(one.name, one.meaning, one.symbol), where
        assert one.kind in KINDS, where
        assert type(one.required) is type(one.above_lowest) is bool, where
        assert texts(*one.choices) and bool(one.choices) == (one.kind == "choice"), where
        assert all(type(entry) is Field for entry in one.items), where
        assert bool(one.items) == (one.kind in ("records", "object")), where
        numbers = (int,) if one.kind in COUNTED else NUMBER
        bounds = [bound for bound in (one.lowest, one.highest) if bound is not None]
        assert all(type(bound) in numbers for bound in bounds), where
        assert len(bounds) < 2 or one.lowest < one.highest, where


def test_each_part_of_a_default_is_what_it_is_declared_to_be():
    for where, one in FIELDS.items():
        for default in [one.default, *rules(one)] if one.default else []:
            assert texts(default.words, default.why), where
            assert default.rule is None or callable(default.rule), where
            assert default.value is None or type(default.value) in values_of(one.kind), where
            assert default.value is None or default.rule is None, where
            assert default.cases is None or default is one.default, where
            # What is taken by a rule, or in one case of several, is told with its reason.
            if default.rule or (default is not one.default and default.value is not None):
                assert default.why, where
        if one.default and one.default.cases:
            assert texts(*one.default.cases), where
            assert one.default.value is one.default.rule is None, where


def values_of(kind):
    return (str,) if kind in ("choice", "text") else (bool,) if kind == "flag" else NUMBER


def test_kind_bounds_and_choices_are_those_promised():
    """Bounds may be drawn wider than promised, never narrower; tests/contract holds the rest."""
    assert len(STORED) > 150
    for where, stored in STORED.items():
        one = FIELDS[where]
        assert one.kind == stored["kind"], where
        assert set(stored["choices"]) <= set(one.choices), where
        assert stored["required"] or not one.required, where
        assert one.lowest is None or one.lowest <= stored["lowest"], where
        assert one.highest is None or one.highest >= stored["highest"], where


def test_a_calculation_is_called_by_its_name_and_summed_up_in_words():
    for name, one in CALCULATIONS.items():
        assert one.name == name == name.lower() and " " not in name
        assert " " in one.summary and one.summary[0].isupper(), name


def test_a_figure_of_a_row_has_its_least_its_usual_and_its_most():
    declared = figure("lost", "force", "F", "Lost", "gap", "", "losses", "", {})
    found = told(declared, (1.0, 2.0, 3.0), {})
    assert (found.low, found.value, found.high) == (1.0, 2.0, 3.0)
    assert (found.unit, found.symbol, found.method) == ("N", "F", "gap")
