"""One ring made with some inputs off, worked by hand; and what the sample of many counts.

The sums are those of a strip whose neutral line keeps its length: a spacer holds it open and the
heat keeps its share; a former gives it a radius, and what is turned off moves the neutral line.
Integrals and roots by scipy. The normal deviate: Abramowitz and Stegun, 26.2.23.
"""

import math
from collections import OrderedDict

import numpy as np
import pytest
from scipy.integrate import quad
from scipy.optimize import brentq
from scipy.stats import norm

from ringwright.core.measuring import ring_sample
from ringwright.core.measuring.ring_sample import Limits, outcome, sample
from ringwright.core.ring.design import settle

RING = {
    "bore": 80.0,
    "ring_type": "plain",
    "radial_thickness": 2.6,
    "modulus": 100000.0,
    "wall_pressure": 0.045,
    "closed_gap": 0.35,
    "end_kerf": 0.8,
    "relief": 0.85,
}
SINES = {"square": 1.0, "angled-45": 0.5**0.5}


def spread_ring(**more):
    return settle({**RING, **more})[0]


def change_of_gap(pressure, bore, thickness, modulus):
    """Free less closed: 2 r integral of cos(phi - K (phi + sin phi)), K = 6 p d1 r^2/(E a1^3)."""
    r = 0.5 * (bore - thickness)
    k = 6.0 * pressure * bore * r * r / (modulus * thickness**3)
    return 2.0 * r * quad(lambda phi: math.cos(phi - k * (phi + math.sin(phi))), 0.0, math.pi)[0]


def by_hand(design, sine, shift):
    """(pressure, closed gap, free gap) of a ring spread by a spacer."""
    bore = 80.0 + shift.get("bore", 0.0)
    turned = shift.get("outside", 0.0)
    thickness = 2.6 + shift.get("radial_thickness", 0.0) + turned / 2.0
    modulus = 100000.0 + shift.get("modulus", 0.0)
    relief = 0.85 + shift.get("relief", 0.0)
    sawn = (0.8 + shift.get("end_kerf", 0.0)) / sine
    more = shift.get("end_kerf", 0.0) / sine
    closed = 0.35 + more + math.pi * (shift.get("bore", 0.0) - turned)
    opened = design.spring.spacer_width + shift.get("tool", 0.0) - sawn
    gap = (sawn - closed) + relief * opened
    r = 0.5 * (bore - thickness)
    straight = 0.45 * modulus * thickness**3 / (6.0 * bore * r * r)
    pressure = brentq(lambda p: change_of_gap(p, bore, thickness, modulus) - gap, 0.0, straight)
    return pressure, closed, closed + gap


SHIFTS = [
    {},
    {"bore": 0.13},
    {"bore": -0.07},
    {"radial_thickness": 0.09},
    {"outside": 0.06},
    {"outside": -0.05},
    {"modulus": -7000.0},
    {"relief": 0.11},
    {"relief": -0.2},
    {"end_kerf": 0.17},
    {"tool": -0.3},
    {
        "bore": 0.05,
        "radial_thickness": -0.08,
        "outside": 0.04,
        "modulus": 9000.0,
        "relief": -0.06,
        "end_kerf": -0.11,
        "tool": 0.2,
    },
]


@pytest.mark.parametrize("shift", SHIFTS)
@pytest.mark.parametrize("end_cut", ["square", "angled-45"])
def test_a_ring_spread_by_a_spacer_comes_out_as_worked_by_hand(end_cut, shift):
    design = spread_ring(end_cut=end_cut)
    found = outcome(design, shift)
    pressure, closed, free = by_hand(design, SINES[end_cut], shift)
    assert found.wall_pressure == pytest.approx(pressure, rel=1e-8)
    assert found.closed_gap == pytest.approx(closed, rel=1e-12)
    assert found.free_gap == pytest.approx(free, rel=1e-10)


# From the tip to where the ring touches again: root of sin b - sin(2b)/4 - b/2.
START = brentq(lambda b: math.sin(b) - math.sin(2.0 * b) / 4.0 - b / 2.0, 1.5, 2.5)


def on_former(design, turns, setting, shift):
    """(pressure, closed gap, free gap) of a ring set on a round former.

    As bored, bent on the former and let go: the heat keeps its share of the bending. Turning takes
    metal off: what comes off the outside moves the neutral line inwards by half of that.
    """
    d = design
    bore = 80.0 + shift.get("bore", 0.0)
    extra, turned = shift.get("radial_thickness", 0.0), shift.get("outside", 0.0)
    thickness = d.section.thickness + extra + turned / 2.0
    modulus = 100000.0 + shift.get("modulus", 0.0)
    relief = 0.85 + shift.get("relief", 0.0)
    more = shift.get("end_kerf", 0.0) * 2**0.5
    closed = 0.35 + more + math.pi * (shift.get("bore", 0.0) - turned)
    # Thicker by so much: bored smaller, and its neutral line stands half of that further in.
    set_thickness = d.blank.set_thickness + extra
    bored = 0.5 * (d.blank.bored_inside - 2.0 * extra + set_thickness)
    bent = 0.5 * (d.spring.former_diameter + shift.get("tool", 0.0)) * d.former_growth
    bent += 0.5 * set_thickness
    curvature = (1.0 - relief) / bored + relief / bent
    off_outside = 0.5 * d.allowances.finishing - 0.5 * turned
    free = 1.0 / curvature - 0.5 * off_outside + 0.5 * d.allowances.inside
    r = 0.5 * (bore - thickness)
    bending = 1.0 / r - 1.0 / free
    contact = modulus * thickness**3 * bending / (6.0 * r * bore)
    whole = turns * math.pi
    borne = ((whole - START) + (1.0 - math.cos(START)) / math.sin(START)) / whole
    gap = 2.0 * math.pi * (free - r)
    if setting == "sprung":
        slack = quad(lambda x: math.sin(x) * (1.0 - math.cos(x)) / math.sin(START), 0.0, START)[0]
        rest = quad(lambda x: 1.0 - math.cos(x), START, whole)[0]
        gap *= (slack + rest) / whole
    return borne * contact, closed, closed + gap


@pytest.mark.parametrize("shift", SHIFTS)
@pytest.mark.parametrize(
    ("ring_type", "setting"), [("plain", "bound"), ("plain", "sprung"), ("double-turn", "sprung")]
)
def test_a_ring_set_on_a_former_comes_out_as_worked_by_hand(ring_type, setting, shift):
    ring = {**RING, "ring_type": ring_type, "setting": setting, "end_cut": "angled-45"}
    design = settle({**ring, "finishing": "closing-ring"})[0]
    found = outcome(design, shift)
    turns = 2 if ring_type == "double-turn" else 1
    pressure, closed, free = on_former(design, turns, setting, shift)
    assert found.wall_pressure == pytest.approx(pressure, rel=1e-8)
    assert found.closed_gap == pytest.approx(closed, rel=1e-12)
    assert found.free_gap == pytest.approx(free, rel=1e-9)


@pytest.mark.parametrize("shift", [{"outside": 0.05}, {"radial_thickness": 0.09}, {"tool": 0.4}])
def test_a_ring_turned_inside_as_well_keeps_its_neutral_line_further_out(shift):
    """Held by a band it is turned inside too: that moves its neutral line out again."""
    ring = {**RING, "setting": "bound", "finishing": "band", "end_cut": "angled-45"}
    design = settle(ring)[0]
    assert design.allowances.inside > 0.0
    _, closed, free = on_former(design, 1, "bound", shift)
    found = outcome(design, shift)
    assert found.closed_gap == pytest.approx(closed, rel=1e-12)
    assert found.free_gap == pytest.approx(free, rel=1e-9)
    # A band presses evenly: two thirds of the contact pressure of a ring bound round.
    contact, _, _ = on_former(design, 1, "bound", shift)
    borne = ((math.pi - START) + (1.0 - math.cos(START)) / math.sin(START)) / math.pi
    assert found.wall_pressure == pytest.approx(contact / borne * 2.0 / 3.0, rel=1e-8)


def test_no_input_is_taken_further_off_than_a_ring_can_be():
    """At least a fifth of thickness and modulus are left, and the heat keeps 0.01 to all."""
    design = spread_ring(end_cut="square")
    for shift, limit in (
        ({"radial_thickness": -2.5}, {"radial_thickness": 0.2 * 2.6 - 2.6}),
        ({"modulus": -95000.0}, {"modulus": -80000.0}),
        ({"relief": 0.4}, {"relief": 0.15}),
        ({"relief": -1.0}, {"relief": -0.84}),
    ):
        pressure, closed, free = by_hand(design, 1.0, limit)
        found = outcome(design, shift)
        assert found.wall_pressure == pytest.approx(pressure, rel=1e-7), shift
        assert found.free_gap == pytest.approx(free, rel=1e-10), shift


def test_a_ring_that_springs_shut_presses_with_nothing():
    """A spacer narrower by m/0.85 leaves nothing of m; by 0.2 mm more, 0.17 mm less than that."""
    design = spread_ring(end_cut="square")
    short = (design.spring.gap_change / 0.85) + 0.2
    found = outcome(design, {"tool": -short})
    assert found.wall_pressure == 0.0
    # 0.85 times 0.2 mm are lacking to the gap in the bore.
    assert found.free_gap == pytest.approx(0.35 - 0.17, abs=1e-9)
    # 0.0034 mm beyond the gap in the bore it begins to press.
    little = outcome(design, {"tool": -(short - 0.204)})
    assert little.free_gap == pytest.approx(0.3534, abs=1e-9)
    assert 0.0 < little.wall_pressure < 1e-4


def test_a_ring_opened_past_straight_is_stiffer_than_any_limit():
    design = spread_ring(end_cut="square")
    assert outcome(design, {"tool": 400.0}).wall_pressure == 100000.0


def test_a_ring_set_smaller_than_the_bore_presses_with_nothing():
    ring = settle({**RING, "setting": "bound"})[0]
    found = outcome(ring, {"tool": -6.0})
    assert found.free_gap < found.closed_gap
    assert found.wall_pressure == 0.0


def places(count, dimension, of):
    """Where the points of a Kronecker sequence stand, from the middle on: i/g^n, g the root of
    g^(of + 1) = g + 1."""
    g = brentq(lambda x: x ** (of + 1) - x - 1.0, 1.0, 2.0, xtol=1e-15)
    return np.mod(0.5 + np.arange(1, count + 1) * g**-dimension, 1.0)


def test_the_steps_are_those_of_the_generalised_golden_ratio():
    assert ring_sample._golden_steps(1) == pytest.approx([0.6180339887498949], abs=1e-14)
    plastic = 1.324717957244746
    assert ring_sample._golden_steps(2) == pytest.approx([1 / plastic, plastic**-2], abs=1e-14)
    seven = ring_sample._golden_steps(7)
    assert len(seven) == 7
    g = 1.0 / seven[0]
    assert g**8 == pytest.approx(g + 1.0, rel=1e-13)
    assert seven == pytest.approx([g**-n for n in range(1, 8)], rel=1e-13)


WIDE = Limits(0.0, 9.0, -9.0, 60.0)


def test_a_bore_that_is_off_spreads_the_gap_by_pi_times_as_much():
    """1200 bores, 95 % within 0.03 mm: their gaps by hand; 30 of them below low, 30 above high."""
    design = spread_ring(end_cut="square")
    tried = sample(design, OrderedDict((("bore", 0.03),)), WIDE)
    gaps = np.sort(0.35 + math.pi * 0.03 / norm.ppf(0.975) * norm.ppf(places(1200, 1, 1)))
    assert tried.low.closed_gap == pytest.approx(gaps[30], abs=1e-4)
    assert tried.high.closed_gap == pytest.approx(gaps[-31], abs=1e-4)
    assert tried.low.closed_gap == pytest.approx(0.35 - math.pi * 0.03, abs=1e-3)
    assert tried.high.closed_gap == pytest.approx(0.35 + math.pi * 0.03, abs=1e-3)
    # The free gap stays but for what the spacer keeps: 0.15 of it is sprung from the bore's gap.
    assert tried.low.wall_pressure < 0.045 < tried.high.wall_pressure
    assert tried.low.free_gap == pytest.approx(tried.high.free_gap, abs=1e-9)


@pytest.mark.parametrize(("below", "above"), [(-0.5, 1.3), (-1.7, 0.2)])
def test_rings_outside_the_gap_s_limits_are_counted(below, above):
    design = spread_ring(end_cut="square")
    one = math.pi * 0.03 / norm.ppf(0.975)
    limits = Limits(0.0, 9.0, 0.35 + below * one, 0.35 + above * one)
    tried = sample(design, OrderedDict((("bore", 0.03),)), limits)
    deviates = norm.ppf(places(1200, 1, 1))
    within = np.count_nonzero((deviates >= below) & (deviates <= above))
    assert tried.share * 1200 == pytest.approx(within, abs=1.01)
    assert (tried.pressure_lost, tried.gap_lost) == (0.0, pytest.approx(1.0 - tried.share))


def test_two_inputs_are_off_each_by_its_own():
    """Bore and saw cut: gaps add; the pressure's limits are passed by stiff metal alone."""
    design = spread_ring(end_cut="square")
    spreads = OrderedDict((("bore", 0.03), ("end_kerf", 0.2), ("modulus", 9000.0)))
    stiff = Limits(0.0, 0.045 * 1.03, -9.0, 9.0)
    tried = sample(design, spreads, stiff)
    deviates = [norm.ppf(places(1200, at, 3)) / norm.ppf(0.975) for at in (1, 2, 3)]
    gaps = 0.35 + math.pi * 0.03 * deviates[0] + 0.2 * deviates[1]
    assert tried.low.closed_gap == pytest.approx(np.sort(gaps)[30], abs=2e-4)
    assert tried.high.closed_gap == pytest.approx(np.sort(gaps)[-31], abs=2e-4)
    pressures = [
        outcome(design, {"bore": 0.03 * a, "end_kerf": 0.2 * b, "modulus": 9000.0 * c})
        for a, b, c in np.array(deviates).T.tolist()
    ]
    over = sum(ring.wall_pressure > 0.045 * 1.03 for ring in pressures)
    assert tried.pressure_lost * 1200 == pytest.approx(over, abs=2.01)
    assert tried.gap_lost == 0.0
    assert tried.share == pytest.approx(1.0 - tried.pressure_lost)


def test_a_ring_lost_on_both_is_lost_once():
    design = spread_ring(end_cut="square")
    tried = sample(design, OrderedDict((("bore", 0.03),)), Limits(8.0, 9.0, 8.0, 9.0))
    assert (tried.share, tried.pressure_lost, tried.gap_lost) == (0.0, 1.0, 1.0)


def test_a_ring_at_its_very_limit_is_within_it():
    design = spread_ring(end_cut="square")
    drawn = outcome(design, {})
    at = (drawn.wall_pressure, drawn.wall_pressure, drawn.closed_gap, drawn.closed_gap)
    tried = sample(design, OrderedDict((("bore", 0.0),)), Limits(*at))
    assert (tried.share, tried.pressure_lost, tried.gap_lost) == (1.0, 0.0, 0.0)
    assert tried.low == tried.high == drawn


def test_95_in_a_hundred_lie_within_1_96_deviations():
    assert pytest.approx(norm.ppf(0.975), abs=1e-6) == ring_sample.WITHIN_95
    assert ring_sample.SAMPLE == 1200


@pytest.mark.parametrize("share", [4e-7, 1e-4, 0.02, 0.3, 0.49])
def test_the_normal_deviate_is_the_handbook_s(share):
    """26.2.23, its coefficients as printed."""
    t = math.sqrt(-2.0 * math.log(share))
    top = np.polyval([0.010328, 0.802853, 2.515517], t)
    expected = t - top / np.polyval([0.001308, 0.189269, 1.432788, 1.0], t)
    assert ring_sample.normal_deviate(share) == pytest.approx(-expected, abs=1e-12)
    assert ring_sample.normal_deviate(1.0 - share) == pytest.approx(expected, abs=1e-8)
    assert -norm.ppf(share) == pytest.approx(expected, abs=4.5e-4)


@pytest.mark.parametrize("share", [1e-12, 2.99e-7])
def test_a_deviate_stays_at_five_at_either_end(share):
    assert ring_sample.normal_deviate(share) == -5.0
    assert ring_sample.normal_deviate(1.0 - share) == 5.0
    assert ring_sample.normal_deviate(3.01e-7) != -5.0


@pytest.mark.parametrize("share", [0.4985, 0.5, 0.502, 0.504])
def test_a_deviate_is_on_its_own_side_of_the_middle(share):
    assert ring_sample.normal_deviate(share) == pytest.approx(norm.ppf(share), abs=4.5e-4)
