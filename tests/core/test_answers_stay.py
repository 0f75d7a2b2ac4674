"""Requests that were answered before inputs had one name and one default each, and their answers.

The figures are those of the code as it was then: they prove nothing right, they show what changed.
Every difference stands below with its reason. Answers have 12 digits since (records.short); seven
are compared here, so that none is hidden by that. Thickness, width, slit and what is left to turn
have finer steps on small rings since: with the steps of then, the figures are those of then.
"""

import json
import math
from pathlib import Path

import pytest

from ringwright.core import calculations, shop_sizes
from ringwright.core.catalogue import inputs
from ringwright.core.catalogue.inputs_blank import BLANK

STORED = Path(__file__).parents[1] / "vectors" / "answered_before_1.0.0.jsonl"
ROWS = [json.loads(line) for line in STORED.read_text(encoding="utf-8").splitlines()]

# Figures that were put right since, by calculation.
MENDED = {
    # The ends as sawn lean towards each other when they are closed: a feeler finds less.
    "tooling": ("clamped_gap_reading",),
    # A bore that is made true needs no room for its taper.
    "bore-survey": ("closed_gap",),
    # The turns meet opposite the bridge, and the bar's curvature counts; the grip likewise, and
    # winding on works against it.
    "sizing": (
        "turning_through_stress",
        "turning_through_force",
        "grip_force",
        "wound_on_stress",
    ),
    # A ring that sizing stops is counted as wrong.
    "spread": ("yield_share",),
}
# One rule settles the section in every calculation. These took bore/28 and 0.048 MPa for a ring
# whose thickness was not given, where sizing takes what its window of sections says.
ONE_SIZING_RULE = ("running", "piston-valve")


def winding_asks_less(row):
    """Winding on counts what bends turns sideways, where it says how thick a ring may be or how
    hard it may press: a weak metal presses 5 % less, a ring of wide turns is thinner.
    """
    request = row["request"]
    given = request.keys() & {"wall_pressure", "radial_thickness", "free_gap", "former_diameter"}
    bronze = request.get("ring_material") == "phosphor-bronze"
    wide = request.get("groove_width") == 3 and request["bore"] == 24
    return (bronze or wide) and request.get("ring_type") != "plain" and not given


def gauged_from_beside_its_middle(row):
    """A bore is read from its own middle since: from beside it a circle looks oval."""
    return "readings" in (row["request"].get("bore_shape") or {})


def to(step, value):
    return math.floor(value / step + 0.5) * step


def slit_then(bore):
    return 0.4 if bore < 30.0 else 0.8 if bore < 60.0 else 1.0 if bore < 150.0 else 1.6


@pytest.fixture
def steps_of_then(monkeypatch):
    """Thickness to 0.05 and from 5 mm to 0.1, width to 0.5, left to turn to 0.1 mm; four slits."""
    monkeypatch.setattr(inputs, "_MADE", [])
    monkeypatch.setattr(shop_sizes, "thickness", lambda a, _: to(0.05 if a < 5.0 else 0.1, a))
    monkeypatch.setattr(shop_sizes, "width", lambda h, _: to(0.5, h) if h >= 1.0 else h)
    slit = BLANK["slit_width"].default._replace(rule=slit_then)
    monkeypatch.setitem(BLANK, "slit_width", BLANK["slit_width"]._replace(default=slit))
    left = BLANK["finishing_allowance"].default
    rules = dict(left.cases)
    for case, share in (("", 0.004), ("held by a band", 0.012)):
        rules[case] = left.cases[case]._replace(rule=lambda d, part=share: to(0.1, 0.5 + part * d))
    field = BLANK["finishing_allowance"]._replace(default=left._replace(cases=rules))
    monkeypatch.setitem(BLANK, "finishing_allowance", field)


def settled_otherwise(row):
    return row["calculation"] in ONE_SIZING_RULE and "radial_thickness" not in row["request"]


def figures(answer, before=""):
    """Name -> value of every figure, those of parts under the name of their part."""
    found = {}
    for name, part in answer.items():
        if name == "figures":
            found.update({before + key: one["value"] for key, one in part.items()})
        elif isinstance(part, dict):
            found.update(figures(part, before + name + "."))
    return found


def differences(row):
    """Names of the figures that are not what they were, to seven digits."""
    now = figures(calculations.run(row["calculation"], row["request"], working=False))
    mended = MENDED.get(row["calculation"], ())
    return [
        name
        for name, value in row["figures"].items()
        if name not in mended and now.get(name) != pytest.approx(value, rel=1e-7, abs=1e-9)
    ]


@pytest.mark.usefixtures("steps_of_then")
def test_some_hundred_requests_answer_as_before():
    left_out = (settled_otherwise, winding_asks_less, gauged_from_beside_its_middle)
    kept = [row for row in ROWS if not any(one(row) for one in left_out)]
    assert len(kept) > 210
    changed = {json.dumps(row["request"]): names for row in kept if (names := differences(row))}
    assert changed == {}


def test_rings_of_round_sizes_keep_their_steps():
    """What was near enough to what is worked out is what it was: nothing moves without need."""
    plain = [row for row in ROWS if row["calculation"] == "sizing" and not differences(row)]
    assert len(plain) > 15


def test_what_differs_differs_by_the_one_sizing_rule_alone():
    """With the section that sizing settles given outright, the figures are the same."""
    others = [row for row in ROWS if settled_otherwise(row)]
    assert len(others) > 60
    for row in others[::5]:
        request = row["request"]
        whole = calculations.run(row["calculation"], request)
        taken = {one["input"]: one["value"] for one in whole["chosen"]}
        section = {
            name: taken[name]
            for name in ("radial_thickness", "ring_width", "wall_pressure")
            if name in taken
        }
        told = calculations.run(row["calculation"], {**request, **section})
        for name, figure in whole["figures"].items():
            assert told["figures"][name]["value"] == pytest.approx(figure["value"], rel=1e-9), name
