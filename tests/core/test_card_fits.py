"""Whoever keeps to the card finds that part goes on tool: at the worst of both their limits."""

import itertools
import math

import pytest

from core.test_card_limits import JOBS
from core.test_route import row
from ringwright.core import calculations
from ringwright.core.properties import fits
from ringwright.core.walk import limits
from ringwright.core.walk import plan as planned

DOUBLE = [request for request, design in JOBS if design.duty.turns == 2][::9]


def limits_of(sizes, name):
    one = next(size for size in sizes if size["name"] == name)
    return one["limits"]["lower"]["value"], one["limits"]["upper"]["value"]


@pytest.mark.parametrize("request_", DOUBLE, ids=lambda request: "%.0f" % request["bore"])
def test_every_blank_within_its_limits_goes_on_the_slitting_mandrel(request_):
    """g6 of the smallest bore: a few micrometres of play on it, and no more than both limits add
    to on the largest. Tool and operation say the same."""
    card = calculations.run("route", request_)
    least, most = limits_of(row(card, "bore")["sizes"], "bored_inside_diameter")
    low, high = limits_of(row(card, "slit")["sizes"], "slit_mandrel_diameter")
    assert high < least
    # ISO 286-1: fundamental deviation of g and tolerance of grade 6, as fits gives them.
    g6 = fits.limits(least, "g6")
    assert (low, high) == pytest.approx((g6.lower, g6.upper), abs=1e-6)
    tools = {tool["tool"]: tool for tool in calculations.run("tooling", request_)["tools"]}
    mandrel = limits_of(tools["slitting-mandrel"]["sizes"], "slit_mandrel_diameter")
    assert mandrel == pytest.approx((low, high), abs=1e-9)
    assert most - low < 0.5


def smallest_inside(plan, held):
    """Of the ring closed to its gap: neutral line as long as the metal and the gap, less a wall."""
    found = []
    for bored, rough, kerf, read in itertools.product(
        held.bored, held.rough, held.kerf, held.clamped_gap
    ):
        wall = 0.5 * (rough - bored)
        metal = math.pi * (bored + wall) - kerf / plan.sine
        found.append((metal + read / plan.sine) / math.pi - wall)
    return min(found)


@pytest.mark.parametrize("bore", [40.0, 150.0, 600.0])
def test_every_turned_ring_within_its_limits_goes_into_the_outer_clamp(bore):
    """H7 of the largest outside that the last cut may leave."""
    request = {"bore": bore, "finishing": "band"}
    card = calculations.run("route", request)
    _, most = limits_of(row(card, "turn-finish")["sizes"], "finish_outside_diameter")
    low, high = limits_of(row(card, "bore-clamped")["sizes"], "outer_clamp_bore")
    assert most <= low + 1e-9
    h7 = fits.limits(most, "H7")
    assert (low, high) == pytest.approx((h7.lower, h7.upper), abs=1e-6)
    tools = {tool["tool"]: tool for tool in calculations.run("tooling", request)["tools"]}
    assert limits_of(tools["outer-clamp"]["sizes"], "outer_clamp_bore") == pytest.approx(
        (low, high), abs=1e-9
    )


@pytest.mark.parametrize(
    ("finishing", "key"), [("closing-ring", "clamp"), ("forced-round", "clamp-forced")]
)
def test_a_thick_ring_may_be_too_small_for_the_spigot_and_the_card_says_what_then(finishing, key):
    """0.1 mm of play is for the ring as designed; two hundredths of a 5 mm wall are as much. A
    smaller spigot for all would leave the others eccentric, so it is turned down where needed."""
    tight = 0
    for _, design in JOBS:
        plan = planned.plan_of(design)
        if plan.bored_clamped is None:
            spigot = plan.finish - 2.0 * design.section.thickness - 0.1
            tight += smallest_inside(plan, limits.card_limits(design)) < spigot
    assert tight > 20
    card = calculations.run("route", {"bore": 150.0, "finishing": finishing, "setting": "bound"})
    assert "does not go on the spigot, turn that down a little" in row(card, key)["text"]
