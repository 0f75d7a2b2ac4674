"""What a ring's card asks for, size by size, worked by hand; and what a wrong size costs."""

import math

import pytest

from core.follow_by_hand import PLAN, ring, settled
from ringwright.core.ring.design import settle
from ringwright.core.walk import ring_card
from ringwright.core.walk.plan import changed

EXACT = {"abs": 1e-9}
# Across a cut of 1.2 at sine 0.8.
CUT = 1.5


def leaning(gap):
    """Ends sawn parallel lean by wall (cut - gap)/(2 r), r in the bore of 90, wall 3.3."""
    return 3.3 * (CUT - gap) / (90.0 - 3.3)


def asked(one, plan=PLAN, **ranges):
    return {step.name: step for step in ring_card.steps(one, plan, ranges)}


def test_a_plain_ring_s_sizes_in_the_order_of_the_work_and_no_slit():
    found = [
        step.name for step in ring_card.steps(ring(settled(finishing="closing-ring")), PLAN, {})
    ]
    assert found[:3] == ["bored_inside_diameter", "rough_outside_diameter", "blank_length"]
    assert "slit_width" not in found
    assert "cut_off_step" not in found
    assert found.index("free_gap") < found.index("closing_ring_bore")
    assert found[-1] == "radial_thickness"


def test_a_double_turn_ring_s_slit_and_how_far_the_saw_is_moved_on_its_stick():
    d = settle({"bore": 90.0, "ring_type": "double-turn"})[0]
    one = ring(d, on_stick=True)
    found = asked(one, changed(PLAN, slit=1.13))
    assert found["slit_width"].value == PLAN.slit
    # Half of what the saw cut too wide comes off the band before it.
    more = 0.5 * (1.13 - d.allowances.slit)
    expected = d.blank.band_width + d.allowances.slit + more
    assert d.allowances.slit not in (0.0, 1.13)
    assert found["cut_off_step"].value == pytest.approx(expected, **EXACT)
    assert "cut_off_step" not in asked(ring(d))


def test_free_gap_is_what_it_springs_and_the_gap_in_the_bore():
    d = settled()
    d = d._replace(duty=d.duty._replace(closed_gap=0.37))
    assert asked(ring(d))["free_gap"].value == pytest.approx(8.77, **EXACT)


def test_closing_ring_is_bored_to_leave_the_gap_and_a_band_has_no_bore():
    """Circle less gap is the metal: 91.2 less (1.5 - 0.42)/pi."""
    one = ring(settled(finishing="closing-ring"))
    expected = 91.2 - (CUT - 0.42) / math.pi
    assert asked(one)["closing_ring_bore"].value == pytest.approx(expected, **EXACT)
    one.design = one.design._replace(duty=one.design.duty._replace(finishing="band"))
    assert "closing_ring_bore" not in asked(one)


def test_feeler_in_the_closing_ring_square_to_the_cut_and_within_what_is_to_be_kept():
    one, name = ring(), "clamped_gap_reading"
    expected = (0.42 - leaning(0.42)) * 0.8
    found = asked(one)[name]
    assert found.value == pytest.approx(expected, **EXACT)
    assert (found.lower, found.upper) == (0.2, 0.4)
    assert asked(one, changed(PLAN, clamped_gap=0.9))[name].value == 0.4
    assert asked(one, changed(PLAN, clamped_gap=0.1))[name].value == 0.2
    # Ends that lean by more than the gap touch: a feeler reads nothing.
    wide = {name: (-1.0, 1.0)}
    assert asked(one, changed(PLAN, clamped_gap=0.02), **wide)[name].value == 0.0
    # Once it was read it is not drawn within.
    read = asked(ring(clamped_gap_reading=0.3), changed(PLAN, clamped_gap=0.9))[name]
    assert read.value == pytest.approx((0.9 - leaning(0.9)) * 0.8, **EXACT)
    # Nor is any other size, whatever its limits.
    narrow = {"finish_outside_diameter": (89.0, 89.5)}
    assert asked(one, **narrow)["finish_outside_diameter"].value == PLAN.finish


def test_feeler_in_the_bore():
    assert asked(ring())["closed_gap_reading"].value == pytest.approx(0.35 * 0.8, **EXACT)


@pytest.mark.parametrize(
    ("read", "within"),
    [
        (0.28 - 2e-9, False),
        (0.28 - 1.005e-9, False),
        (0.28 - 1e-9, True),
        (0.28 - 5e-10, True),
        (0.28, True),
        (0.37, True),
        (0.48 + 5e-10, True),
        (0.48 + 2e-9, False),
    ],
)
def test_a_size_at_its_very_limit_is_within(read, within):
    found = asked(ring(closed_gap_reading=read))["closed_gap_reading"]
    assert found.within is within
    assert (found.measured, found.lower, found.upper) == (read, 0.28, 0.48)


def test_a_size_not_measured_is_neither_within_nor_without():
    found = asked(ring())["closed_gap_reading"]
    assert (found.measured, found.within) == (None, None)


def test_a_former_or_spacer_is_asked_for_at_its_largest_with_the_card_s_room_below():
    one, name = ring(), "spacer_width"
    value, limits = ring_card._tool_limits(one, name, 9.7, (8.9, 9.2))
    assert value == 9.7
    assert limits == pytest.approx((9.4, 9.7), **EXACT)
    # Measured: against the card.
    made = ring(spacer_width=9.1)
    assert ring_card._tool_limits(made, name, 9.7, (8.9, 9.2)) == (9.2, (8.9, 9.2))
    assert ring_card._tool_limits(one, name, None, (8.9, 9.2)) == (None, None)
    assert ring_card._tool_limits(one, name, 9.7, None) == (None, None)


def test_spacer_of_a_card_and_no_former():
    one = ring()
    one.held = one.held._replace(spacer=(8.9, 9.2), former=None)
    found = asked(one)
    assert "former_diameter" not in found
    assert (found["spacer_width"].value, found["spacer_width"].upper) == (9.3, 9.3)
    assert found["spacer_width"].lower == pytest.approx(9.0, **EXACT)


def test_what_each_measured_size_alone_makes_of_the_ring():
    """Cut 1.4 at 0.8 is 1.75; a feeler's 0.3 is 0.375 and the lean as planned."""
    found = ring_card.costs(ring(end_kerf=1.4, clamped_gap_reading=0.3))
    assert list(found) == ["end_kerf", "clamped_gap_reading"]
    sawn = 91.2 - (1.75 - 0.42) / math.pi
    assert found["end_kerf"].closing_bore == pytest.approx(sawn, **EXACT)
    gap = 0.375 + leaning(0.42)
    closed = 91.2 - (CUT - gap) / math.pi
    assert found["clamped_gap_reading"].closing_bore == pytest.approx(closed, **EXACT)
