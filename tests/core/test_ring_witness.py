"""What gap, force, light and shape of a finished ring witness, by hand, down to no reading at all.

Ends turn by the bending along the ring: the gap on the outer edge reads more than on the neutral
line by a1/(3 r) where it was spread, a1/(2 r) bound round, and by the mean of the bending over that
of the gap where it was sprung on its former (integrals by scipy).
"""

import math

import pytest
from scipy.integrate import quad

from core.test_inspection import inspection, outcome, value
from core.test_inspection_limits import PLAIN, relieved
from core.test_ring_sample import RING, START, on_former
from ringwright.core.measuring import ring_witness
from ringwright.core.measuring.ring_witness import Estimate
from ringwright.core.ring.design import settle

LEFT = {"ring_type": "plain", "setting": "bound", "finishing": "forced-round"}


def excess(design):
    """Turning of the ends times half of the thickness, over the gap that it makes."""
    d = design
    r = 0.5 * (d.duty.bore - d.section.thickness)
    a = d.section.thickness
    if d.duty.setting == "spread":
        return a / (3.0 * r)
    if d.duty.setting == "bound":
        return a / (2.0 * r)
    whole = d.duty.turns * math.pi
    bent = (whole - START) + (1.0 - math.cos(START)) / math.sin(START)
    slack = quad(lambda x: math.sin(x) * (1.0 - math.cos(x)) / math.sin(START), 0.0, START)[0]
    rest = quad(lambda x: 1.0 - math.cos(x), START, whole)[0]
    return a / (2.0 * r) * bent / (slack + rest)


@pytest.mark.parametrize(
    ("ring_type", "setting"),
    [("plain", "spread"), ("plain", "bound"), ("plain", "sprung"), ("double-turn", "sprung")],
)
@pytest.mark.parametrize(("place", "side"), [("outer-edge", 1.0), ("inner-edge", -1.0)])
def test_a_gap_read_at_an_edge_is_brought_to_the_neutral_line(ring_type, setting, place, side):
    ring = {"bore": 80.0, "ring_type": ring_type, "setting": setting, "radial_thickness": 2.7}
    design, _ = settle(ring)
    answer = inspection(**ring, measured_free_gap=7.3, gap_measured_at=place)
    m = (7.3 - design.duty.closed_gap) / (1.0 + side * excess(design))
    assert value(answer, "gap_change") == pytest.approx(m, rel=1e-9)


def test_a_ring_that_springs_no_further_than_its_gap_presses_with_nothing():
    """Nothing to weigh: no spread, no modulus of it and the force, no relief but none."""
    ring = {**PLAIN, "setting": "bound", "closed_gap": 0.4}
    shut = {"measured_free_gap": 0.4, "gap_measured_at": "neutral-line"}
    figure = inspection(**ring, **shut)["figures"]["wall_pressure_by_free_gap"]
    assert (figure["low"], figure["value"], figure["high"]) == (0.0, 0.0, 0.0)
    both = inspection(**ring, **shut, measured_force=3.0)
    assert "modulus_shown" not in both["figures"]
    assert value(both, "wall_pressure_by_free_gap") == 0.0


def test_the_least_spring_is_still_a_spring():
    """0.005 mm: it presses by the proportion of its gap, known from nought up, and shows with a
    force the modulus that makes the two agree."""
    ring = {**PLAIN, "setting": "bound", "closed_gap": 0.4}
    design, _ = settle(ring)
    answer = inspection(
        **ring, measured_free_gap=0.405, gap_measured_at="neutral-line", measured_force=3.0
    )
    row = answer["figures"]["wall_pressure_by_free_gap"]
    due = design.spring.wall_pressure * 0.005 / design.spring.gap_change
    assert row["value"] == pytest.approx(due, rel=0.05)
    assert row["low"] == 0.0
    assert row["high"] > row["value"]
    force = value(answer, "wall_pressure_by_closing_force")
    shown = design.duty.modulus * force / row["value"]
    assert value(answer, "modulus_shown") == pytest.approx(shown, rel=1e-9)


def test_no_light_witnesses_nothing_and_the_least_light_something():
    """0.01 mm is what a feeler misses: of 0.005 read it may be all, and as much again."""
    ring = {"bore": 80.0, **LEFT, "radial_thickness": 2.7, "modulus": 100000.0}
    none = inspection(**ring, measured_light=0.0)
    assert "wall_pressure_by_light" not in none["figures"]
    row = inspection(**ring, measured_light=0.005)["figures"]["wall_pressure_by_light"]
    assert row["low"] == 0.0
    # The reading's whole and 3 % of the modulus given.
    assert row["high"] == pytest.approx(2.03 * row["value"], rel=1e-9)
    twice = value(inspection(**ring, measured_light=0.01), "wall_pressure_by_light")
    assert twice == pytest.approx(2.0 * row["value"], rel=1e-9)


def test_a_shape_takes_both_diameters_and_a_ring_set_round_is_due_none():
    for one in ({"measured_across": 81.5}, {"measured_along": 81.0}):
        answer = inspection(**PLAIN, setting="bound", measured_width=3.1, **one)
        assert "free_ovality" not in answer["figures"]
        assert outcome(answer, "free-shape") is None
    both = inspection(**PLAIN, setting="bound", measured_across=81.5, measured_along=81.2)
    assert value(both, "free_ovality") == pytest.approx(0.3)
    assert value(both, "free_ovality_due") == 0.0


def test_a_spacer_no_wider_than_the_saw_cut_opened_nothing():
    ring = {**PLAIN, "end_cut": "square", "end_kerf": 0.8, "measured_force": 8.0}
    assert "relief_given" not in inspection(**ring, spacer_used=0.8)["figures"]
    assert "relief_given" not in inspection(**ring, spacer_used=0.5)["figures"]
    assert "relief_given" in inspection(**ring, spacer_used=6.0)["figures"]


def test_a_former_no_larger_than_the_ring_as_bored_opened_nothing():
    ring = {**PLAIN, "setting": "bound", "measured_force": 8.0}
    bored = settle(ring)[0].blank.bored_inside
    assert "relief_given" not in inspection(**ring, former_used=bored - 0.5)["figures"]
    assert "relief_given" in inspection(**ring, former_used=bored + 0.8)["figures"]


@pytest.mark.parametrize("finishing", ["closing-ring", "band"])
@pytest.mark.parametrize("setting", ["bound", "sprung"])
@pytest.mark.parametrize("shift", [{}, {"relief": -0.13}, {"tool": 0.7}])
def test_the_relief_behind_a_ring_that_was_set_on_a_former(setting, finishing, shift):
    """Made by hand with a relief and a former of that size, bored or not after it was set, its free
    gap gives the relief back."""
    ring = {**RING, "setting": setting, "finishing": finishing, "end_cut": "angled-45"}
    design = settle(ring)[0]
    _, _, free = on_former(design, 1, setting, shift)
    answer = inspection(
        **ring,
        measured_free_gap=free,
        gap_measured_at="neutral-line",
        former_used=design.spring.former_diameter + shift.get("tool", 0.0),
    )
    relief = 0.85 + shift.get("relief", 0.0)
    assert value(answer, "relief_given") == pytest.approx(relief, rel=1e-9)


@pytest.mark.parametrize(
    ("relief", "next_one"), [(0.0995, False), (0.1005, True), (0.999, True), (1.005, False)]
)
def test_a_next_ring_is_told_where_the_relief_is_one(relief, next_one):
    answer = relieved(relief, **PLAIN, relief=0.9)
    assert value(answer, "relief_given") == pytest.approx(relief, rel=1e-9)
    assert ("next_spacer_width" in answer["figures"]) is next_one


def together(*spans):
    return ring_witness._together(
        [Estimate("force", value, low, high, "m") for value, low, high in spans]
    )


def test_one_witness_stands_as_it_is_and_none_says_nothing():
    assert together() == (None, None, None, True)
    pressure, low, high, agree = together((0.04, 0.03, 0.055))
    assert (low, high, agree) == (0.03, 0.055, True)
    assert pressure == pytest.approx(0.04, rel=1e-12)


@pytest.mark.parametrize(
    ("other", "agree"),
    [((0.045, 0.04, 0.05), True), ((0.0451, 0.0401, 0.0501), False), ((0.03, 0.02, 0.036), True)],
)
def test_witnesses_agree_where_their_spreads_meet(other, agree):
    """Halves of 0.005 and h weigh as 1/h^2; the mean of both is known within 1/sqrt of the sum."""
    pressure, low, high, found = together((0.035, 0.03, 0.04), other)
    assert found is agree
    half = 0.5 * (other[2] - other[1])
    weights = 1.0 / 0.005**2, 1.0 / half**2
    mean = (0.035 * weights[0] + other[0] * weights[1]) / sum(weights)
    assert pressure == pytest.approx(mean, rel=1e-12)
    assert (low, high) == pytest.approx((mean - sum(weights) ** -0.5, mean + sum(weights) ** -0.5))


def test_weak_witnesses_agree_as_well_and_no_pressure_is_less_than_none():
    """0.001 known from 0 to 0.005, twice: half is 0.0025, of both 0.00177, more than the mean."""
    pressure, low, high, agree = together((0.001, 0.0, 0.005), (0.001, 0.0, 0.005))
    assert agree
    assert (pressure, low) == (pytest.approx(0.001), 0.0)
    assert high == pytest.approx(0.001 + 0.0025 / 2**0.5)
    assert together((0.002, 0.001, 0.003), (0.003, 0.0025, 0.0035))[3] is True


def test_no_witness_is_trusted_beyond_a_ten_thousandth():
    """0.04 without any spread counts as 0.000004 either way, the other as its 0.005."""
    pressure, _, high, _ = together((0.04, 0.04, 0.04), (0.045, 0.04, 0.05))
    weights = 1.0 / 4e-6**2, 1.0 / 0.005**2
    assert high - pressure == pytest.approx(sum(weights) ** -0.5, rel=1e-6)
