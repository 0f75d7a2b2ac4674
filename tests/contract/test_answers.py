"""Answers as they leave: the same as the core's own plain tree, and convertible without loss."""

import json
from collections import OrderedDict

import pytest

from ringwright.api import answers, examples
from ringwright.api.calculations import is_table
from ringwright.core import calculations
from ringwright.core.fields import checked
from ringwright.core.records import Choice, Figure, Quantity, Series, finding, plain
from ringwright.units import SHOWN_IN_INCHES

# Core units that an inch answer shows as they are.
SAME_IN_INCHES = frozenset(("1", "deg", "min", "h", "s", "1/min", "money"))

EXAMPLES = [
    pytest.param(name, shown["value"], id="%s: %s" % (name, title))
    for name, found in examples.read_all().items()
    for title, shown in found.items()
    if name in calculations.CALCULATIONS
]
LISTS = [
    pytest.param(name, {}, id=name)
    for name, calculation in calculations.CALCULATIONS.items()
    if is_table(calculation)
]


def answer_of(client_or_none, name, request):
    """The core's records for a request in core units."""
    calculation = calculations.CALCULATIONS[name]
    return calculation.run(checked(calculation.fields, request))


def figure(value, unit, symbol, method, working=(), low=None, high=None):
    """A Figure. working: what is shown, as (symbol, value, unit)."""
    shown = tuple((name, unit_) for name, _, unit_ in working)
    given = {name: number for name, number, _ in working}
    return Figure(value, unit, symbol, method, (shown, given) if working else (), low, high)


SMALL = OrderedDict(
    figures=OrderedDict(
        bore=figure(80.0, "mm", "d1", "given", working=(("d", 3.0, "in"), ("n", "two", ""))),
        low=figure(1, "MPa", "p", "x", low=0.5, high=2.0),
    ),
    findings=[
        finding("a", "good", "why"),
        finding("b", "stop", "why", "do", Quantity(25.4, "mm"), Quantity(100.0, "degC")),
    ],
    chosen=[Choice("rings", 2, "1", "usual"), Choice("setting", "bound", "", "usual")],
    cautions=[OrderedDict(key="a", text="b")],
    series=OrderedDict(light=Series((0.0, 25.4), "mm", "u")),
    rows=[
        {"size": {"value": 25.4, "unit": "mm", "low": 12.7, "limits": [0.0, 25.4]}, "n": 3},
        {"value": 25.4, "unit": "mm", "limits": {"lower": {"value": 0.0, "unit": "degC"}}},
    ],
)


def test_the_metric_answer_is_the_plain_tree():
    assert answers.shown(SMALL) == plain(SMALL)
    assert json.loads(answers.to_json(SMALL)) == json.loads(json.dumps(plain(SMALL)))


def test_working_is_left_out_unless_asked_for():
    shown = json.loads(answers.to_json(SMALL, working=False))
    assert "working" not in shown["figures"]["bore"]
    assert shown == json.loads(json.dumps(answers.shown(SMALL, working=False)))


def test_every_shape_is_converted():
    shown = answers.shown(SMALL, "inch")
    assert shown["figures"]["bore"]["value"] == pytest.approx(80 / 25.4, rel=1e-12)
    assert shown["figures"]["bore"]["unit"] == "in"
    assert shown["figures"]["low"]["high"] == pytest.approx(2 / 6894.757293168361e-6, rel=1e-12)
    assert shown["findings"][1]["value"] == {"value": 1.0, "unit": "in"}
    assert shown["findings"][1]["limit"] == {"value": 212.0, "unit": "degF"}
    assert shown["series"]["light"] == {"values": [0.0, 1.0], "unit": "in", "symbol": "u"}
    size = shown["rows"][0]["size"]
    assert size == {"value": 1.0, "unit": "in", "low": 0.5, "limits": [0.0, 1.0]}
    assert shown["rows"][0]["n"] == 3
    limits = {"lower": {"value": 32.0, "unit": "degF"}}
    assert shown["rows"][1] == {"value": 1.0, "unit": "in", "limits": limits}


@pytest.mark.parametrize("flaw", [float("inf"), float("-inf"), float("nan")])
@pytest.mark.parametrize("system", answers.SYSTEMS)
@pytest.mark.parametrize(
    "make",
    [
        lambda x: {"figures": {"a": figure(x, "mm", "a", "m")}},
        lambda x: {"figures": {"a": figure(1.0, "mm", "a", "m", low=x)}},
        lambda x: {"findings": [finding("a", "good", "w", value=Quantity(x, "mm"))]},
        lambda x: {"chosen": [Choice("a", x, "mm", "w")]},
        lambda x: {"series": Series([1.0, x], "mm", "a")},
        lambda x: {"rows": [{"value": x, "unit": "mm"}]},
        lambda x: {"rows": [[1.0, x]]},
        lambda x: {"figures": {"a": figure(1.0, "mm", "a", "m", working=(("b", x, "mm"),))}},
    ],
)
def test_no_number_is_never_sent(make, system, flaw):
    with pytest.raises(answers.NotFinite):
        answers.to_json(make(flaw), system, working=True)


# A drawing's words are in those units too: tests/export/test_units_of_files.py.
@pytest.mark.parametrize(
    ("name", "request_"), [one for one in EXAMPLES if one.values[0] != "drawing"]
)
def test_examples_in_inches_and_back(client, name, request_):
    metric = client.post("/v1/%s?working=true" % name, json=request_).get_json()
    inch = client.post("/v1/%s?working=true&units=inch" % name, json=request_).get_json()
    _compare(metric, inch)


@pytest.mark.parametrize(("name", "request_"), LISTS)
def test_lists_in_inches_and_back(client, name, request_):
    _compare(
        client.get("/v1/%s" % name).get_json(), client.get("/v1/%s?units=inch" % name).get_json()
    )


def _compare(metric, inch):
    """The same tree, each number with a unit on its own scale, everything else untouched."""
    if isinstance(metric, dict):
        assert list(metric) == list(inch)
        unit = metric.get("unit")
        scale = SHOWN_IN_INCHES.get(unit) if isinstance(unit, str) else None
        if isinstance(unit, str) and unit not in ("", *SAME_IN_INCHES):
            assert scale is not None, "an inch answer cannot show %s" % unit
        for key, value in metric.items():
            if scale is not None and key == "unit":
                assert inch[key] == scale.unit
            elif scale is not None and key in answers.LEAF_KEYS and not isinstance(value, dict):
                _same_size(value, inch[key], scale)
            else:
                _compare(value, inch[key])
    elif isinstance(metric, list):
        assert len(metric) == len(inch)
        for one, other in zip(metric, inch, strict=True):
            _compare(one, other)
    else:
        assert metric == inch


def _same_size(value, shown, scale):
    if isinstance(value, list):
        for one, other in zip(value, shown, strict=True):
            _same_size(one, other, scale)
    elif isinstance(value, (int, float)) and not isinstance(value, bool):
        back = (shown - scale.offset) * scale.denominator / scale.numerator
        assert back == pytest.approx(value, rel=2e-12, abs=1e-12)
    else:
        assert value == shown
