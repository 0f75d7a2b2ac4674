"""Each operation on a ring by hand: circle less gap is the metal, whatever the ring is held in."""

import math

import pytest

from core.follow_by_hand import PLAN
from ringwright.core.problems import OutOfRange
from ringwright.core.ring.design import settle
from ringwright.core.walk import plan as planned
from ringwright.core.walk import states

EXACT = {"abs": 1e-9}
TUBE = states.bore_and_turn(84.6, 91.2, 4.6)
SAWN = states.saw(TUBE, 1.5)
# A wall of 3.3 about a neutral line of 87.9.
METAL = 87.9 * math.pi - 1.5


def same(state, **sizes):
    for name, value in sizes.items():
        found = getattr(state, name)
        assert found is None if value is None else found == pytest.approx(value, **EXACT), name


def test_a_tube_is_closed_and_keeps_its_shape_when_it_is_sawn():
    round_ = {"thickness": 3.3, "width": 4.6, "outside": 91.2}
    same(TUBE, metal=87.9 * math.pi, gap=0.0, free_radius=None, free_gap=None, **round_)
    same(SAWN, metal=METAL, gap=1.5, free_radius=43.95, free_gap=1.5, **round_)


def test_a_former_bends_the_ring_by_the_share_that_the_heat_relaxes():
    """Cold 86.2, hot 1.004 times that: its neutral line at 43.2724 + 1.65."""
    found = states.set_on_former(SAWN, 86.2, 1.004, 0.85)
    radius = 1.0 / (0.15 / 43.95 + 0.85 / 44.9224)
    same(found, free_radius=radius, free_gap=None, metal=METAL, gap=1.5, thickness=3.3)


def test_a_spacer_leaves_its_share_of_what_it_opens():
    found = states.set_with_spacer(SAWN, 9.3, 0.85)
    same(found, free_gap=1.5 + 0.85 * 7.8, free_radius=None, metal=METAL, thickness=3.3)


def test_faced_it_is_narrower_and_nothing_else():
    assert states.face(SAWN, 3.7) == SAWN._replace(width=3.7)


def test_pushed_into_a_hole_its_gap_is_the_circle_s_less_the_metal():
    found = states.close(SAWN, 90.85)
    same(found, outside=90.85, gap=87.55 * math.pi - METAL, metal=METAL, thickness=3.3)
    # And the hole that leaves a gap is that one.
    same(states.close_to_gap(SAWN, found.gap), outside=90.85, gap=found.gap, metal=METAL)


def held():
    """Open on its former, then closed to 0.42."""
    return states.close_to_gap(SAWN._replace(free_radius=45.0, free_gap=None), 0.42)


def test_turned_outside_the_neutral_line_moves_in_by_half_of_what_comes_off():
    closed = held()
    outside = 91.2 - 1.08 / math.pi
    same(closed, outside=outside, gap=0.42)
    thickness = 3.3 - 0.5 * (outside - 90.1)
    found = states.turn(closed, 90.1)
    moved = 45.0 - 0.5 * (3.3 - thickness)
    same(found, outside=90.1, thickness=thickness, gap=0.42, free_radius=moved)
    same(found, metal=math.pi * (90.1 - thickness) - 0.42, width=4.6)


def test_bored_inside_the_neutral_line_moves_out_by_half_of_what_comes_off():
    closed = held()
    outside = 91.2 - 1.08 / math.pi
    thickness = 0.5 * (outside - 84.9)
    found = states.bore(closed, 84.9)
    moved = 45.0 + 0.5 * (3.3 - thickness)
    same(found, outside=outside, thickness=thickness, gap=0.42, free_radius=moved)
    same(found, metal=math.pi * (outside - thickness) - 0.42)


def test_what_is_filed_off_the_ends_is_gap_held_or_free():
    found = states.dress(held(), 0.07)
    same(found, metal=METAL - 0.07, gap=0.49, free_gap=None)
    same(states.dress(SAWN, 0.07), free_gap=1.57, gap=1.57)


def test_the_gap_opens_from_the_bore_to_free_by_the_radius_or_by_what_the_spacer_left():
    bored = states.close(SAWN._replace(free_radius=45.0), 90.0)
    curvature = 2.0 / 86.7 - 1.0 / 45.0
    assert states.curvature_change(bored) == pytest.approx(curvature, **EXACT)
    # The circles of 45 and 43.35.
    opened = 2.0 * math.pi * (45.0 - 43.35)
    assert states.gap_change(bored, "bound", 1) == pytest.approx(opened, **EXACT)
    spread = bored._replace(free_radius=None, free_gap=9.3)
    assert states.gap_change(spread, "spread", 1) == pytest.approx(9.3 - bored.gap, **EXACT)
    assert states.curvature_change(spread) is None


@pytest.mark.parametrize(("gap", "dressed"), [(0.42, 0.244159265), (0.7, 0.0)])
def test_the_whole_walk_of_a_ring_that_is_spread(gap, dressed):
    """Turned to 90.1 and let into 90 the gap is pi 0.1 less; filed to 0.35 if it is less still."""
    found = planned.walk(PLAN._replace(clamped_gap=gap))
    before = gap - 0.1 * math.pi
    thickness = 0.5 * (90.1 - 84.6 + (1.5 - gap) / math.pi)
    assert found.before_dressing == pytest.approx(before, **EXACT)
    assert found.dressed == pytest.approx(dressed, **EXACT)
    assert found.closed_gap == pytest.approx(before + dressed, **EXACT)
    assert found.thickness == pytest.approx(thickness, **EXACT)
    assert found.width == 3.7
    # The spacer left 0.85 of 7.8 beyond the cut.
    assert found.free_gap == pytest.approx(1.5 + 6.63 + dressed, **EXACT)
    closing = 91.2 - (1.5 - gap) / math.pi
    assert found.closing_bore == pytest.approx(closing, **EXACT)
    assert found.clean_up == pytest.approx(closing - 90.1, **EXACT)
    # First order, 4 E a^3 m/(9 pi d (d - a)^3); large deflection takes some per cent.
    ratio = thickness / (90.0 - thickness)
    change = found.free_gap - found.closed_gap
    pressure = 4.0 * 98000.0 * ratio**3 * change / (9.0 * math.pi * 90.0)
    assert found.wall_pressure == pytest.approx(pressure, rel=0.04)


def barely(change):
    """A ring that a spacer left so much more open than it is in the bore."""
    free = 0.35 + change
    return PLAN._replace(clamped_gap=0.7, closed_gap=0.1, relief=1.0, spacer=free + 0.035841)


def test_a_ring_that_hardly_opens_hardly_presses_and_one_that_would_close_does_not():
    # In the bore its gap is 0.7 less pi 0.1, which is 0.385841.
    found = planned.walk(barely(0.005))
    thickness = 0.5 * (5.5 + 0.8 / math.pi)
    ratio = thickness / (90.0 - thickness)
    pressure = 4.0 * 98000.0 * ratio**3 * 0.005 / (9.0 * math.pi * 90.0)
    assert found.wall_pressure == pytest.approx(pressure, rel=2e-3)
    assert planned.walk(barely(-0.005)).wall_pressure == 0.0


def thick(inside):
    """Turned to 90, and bored clamped out of a stout tube."""
    return PLAN._replace(bored=20.0, finish=90.0, bored_clamped=inside, spacer=2.0)


@pytest.mark.parametrize(("inside", "is_one"), [(45.0, False), (44.9, False), (45.1, True)])
def test_a_wall_of_a_quarter_of_the_bore_is_no_ring_s(inside, is_one):
    assert (planned.walked(thick(inside)) is not None) is is_one
    if not is_one:
        with pytest.raises(OutOfRange, match="thickness"):
            planned.walk(thick(inside))


@pytest.mark.parametrize(("inside", "is_one"), [(89.99, True), (90.0, False), (90.1, False)])
def test_a_wall_that_is_not_there_is_no_ring_s(inside, is_one):
    assert (planned.walked(thick(inside)) is not None) is is_one


def test_a_ring_held_by_a_band_is_bored_to_its_thickness_and_presses_by_its_mean():
    design = settle(
        {"bore": 90.0, "ring_type": "plain", "finishing": "band", "setting": "bound",
         "end_cut": "angled-60", "radial_thickness": 2.9}
    )[0]  # fmt: skip
    found = planned.plan_of(design)
    assert found.bored_clamped == pytest.approx(design.blank.finish_outside - 5.8, **EXACT)
    assert found.sine == pytest.approx(math.sqrt(0.75), **EXACT)
    # Held by a band two thirds of the pressure at the contact.
    assert found.mean_share == pytest.approx(2.0 / 3.0, rel=1e-6)
    made = planned.walk(found)
    curvature = 2.0 / 87.1 - 1.0 / made.state.free_radius
    pressure = found.modulus * 2.9**3 * curvature / (3.0 * 87.1 * 90.0)
    assert made.wall_pressure == pytest.approx(pressure * 2.0 / 3.0, rel=1e-6)


def test_what_a_feeler_reads_is_square_to_the_cut_and_at_the_edges_that_lean():
    """The wall of 3.3 leans by 3.3 (1.5 - 0.42)/86.7."""
    lean = 3.3 * 1.08 / 86.7
    assert planned.lean(PLAN) == pytest.approx(lean, **EXACT)
    assert planned.feeler(PLAN, 0.35) == pytest.approx(0.28, **EXACT)
    design = settle({"bore": 90.0, "ring_type": "plain", "clamped_gap": 0.31})[0]
    plan = planned.plan_of(design)
    wall = 0.5 * (design.blank.rough_outside - design.blank.bored_inside)
    lean = wall * (design.allowances.gap_kerf - 0.31) / (90.0 - wall)
    # Angled ends are cut at 45 degrees by itself.
    assert planned.clamped_reading(design) == pytest.approx((0.31 - lean) / math.sqrt(2.0), **EXACT)
    assert planned.lean(plan) == pytest.approx(lean, **EXACT)
    shut = settle({"bore": 90.0, "ring_type": "plain", "clamped_gap": 0.01})[0]
    assert planned.clamped_reading(shut) == 0.0
