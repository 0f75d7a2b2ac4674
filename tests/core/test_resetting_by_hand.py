"""Former and spacer for a ring as it was sawn, and what its heat then gave: worked by hand."""

import math

import pytest

from core.follow_by_hand import PLAN, settled
from ringwright.core.walk import resetting

EXACT = {"abs": 1e-9}
# Bored 84.6 and turned 91.2: a wall of 3.3 about a radius of 43.95. The cut is 1.5 along the ring.
CUT, WALL, SAWN = 1.5, 3.3, 43.95
FORMED = PLAN._replace(former=86.2, spacer=None, setting="bound", mean_share=0.9, growth=1.004)
# Closed from the cut to 0.42 the circle is smaller by the difference over pi.
CLOSED = 91.2 - (CUT - 0.42) / math.pi


def former(plan=FORMED, start=SAWN, pressure=0.055, relief=0.85):
    """Pressure wanted to curvature, to the free radius in the bore and as set, to the former."""
    turned = WALL - 0.5 * (CLOSED - plan.finish)
    a = turned
    if plan.bored_clamped is not None:
        a = 0.5 * (plan.finish - plan.bored_clamped)
    curvature = 3.0 * (pressure / 0.9) * (90.0 - a) * 90.0 / (98000.0 * a**3)
    free = 1.0 / (2.0 / (90.0 - a) - curvature)
    # Turned outside its neutral line moves in by half, bored inside out by half.
    free += 0.5 * (WALL - turned) - 0.5 * (turned - a)
    on_former = 1.0 / (1.0 / start + (1.0 / free - 1.0 / start) / relief)
    return (2.0 * on_former - WALL) / 1.004


@pytest.mark.parametrize("inside", [None, 84.43])
@pytest.mark.parametrize("start", [None, 44.6])
@pytest.mark.parametrize("relief", [0.85, 0.6, 1.0])
def test_the_former_that_gives_the_pressure(inside, start, relief):
    plan = FORMED._replace(bored_clamped=inside)
    found = resetting.former_for(settled(), plan, relief, start)
    expected = former(plan, SAWN if start is None else start, relief=relief)
    assert found == pytest.approx(expected, abs=1e-6)


def test_where_no_former_is_large_enough_the_card_s_own_stands():
    """At a relief of 0.02 the ring would have to be bent past straight; at none, by nothing."""
    assert former(relief=0.02) < 0.0
    assert resetting.former_for(settled(), FORMED, 0.02, None) == 86.2
    assert resetting.former_for(settled(), FORMED, 0.0, None) == 86.2


@pytest.mark.parametrize(("closing", "relief"), [(0.42, 0.85), (0.31, 0.7)])
def test_the_spacer_that_gives_the_pressure(closing, relief):
    """Free gap: what the ring is to open by, 8.4, and its gap in the bore of 90 from 90.1."""
    found = resetting.spacer_for(settled(), PLAN._replace(clamped_gap=closing, relief=relief))
    free = 8.4 + closing - 0.1 * math.pi
    assert found == pytest.approx(CUT + (free - CUT) / relief, **EXACT)


def test_a_spacer_s_heat_gave_the_share_of_what_it_opened():
    assert resetting.relief_shown(PLAN, 7.2) == pytest.approx(5.7 / 7.8, **EXACT)
    assert resetting.relief_shown(PLAN, 1.1) == pytest.approx(-0.4 / 7.8, **EXACT)
    # Opened by nothing it tells nothing.
    even = PLAN._replace(sine=1.0, kerf=1.25, spacer=1.25)
    assert resetting.relief_shown(even, 5.0) is None


@pytest.mark.parametrize(
    ("setting", "turns", "sprung"),
    # A ring set sprung opens by so much more, by integral: 1.0342 of one turn, 1.0171 of two.
    [("bound", 1, 1.0), ("bound", 2, 1.0), ("sprung", 1, 1.0342), ("sprung", 2, 1.0171)],
)
def test_a_former_s_heat_gave_the_share_of_the_bending_that_stayed(setting, turns, sprung):
    """Closed to 0.42 and opened to 8.1: a circle as much longer than the neutral line of 43.78."""
    plan = FORMED._replace(setting=setting, turns=turns)
    free = 0.5 * (CLOSED - WALL) + (8.1 - 0.42) / sprung / (2.0 * math.pi)
    on_former = 0.5 * 86.2 * 1.004 + 0.5 * WALL
    share = (1.0 / SAWN - 1.0 / free) / (1.0 / SAWN - 1.0 / on_former)
    assert resetting.relief_shown(plan, 8.1) == pytest.approx(
        share, abs=1e-9 if sprung == 1 else 1e-4
    )


def test_a_former_of_the_ring_s_own_radius_tells_nothing():
    """Bored 84.5 and turned 91: 43.875, as on a former of 84.5."""
    plan = FORMED._replace(bored=84.5, rough=91.0, former=84.5, growth=1.0)
    assert resetting.relief_shown(plan, 8.1) is None
