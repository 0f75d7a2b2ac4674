"""What a ring's card asks for next, worked by hand from what was measured before."""

import math

import pytest

from core.follow_by_hand import MADE, PLAN, ring, settled
from ringwright.core import calculations
from ringwright.core.catalogue.inputs_rings import NAMES
from ringwright.core.ring.design import settle
from ringwright.core.walk import follow, plan

CUT = 1.5
EXACT = {"abs": 1e-9}


def leaning(gap, cut=CUT, wall=3.3):
    """Ends sawn parallel lean by wall (cut - gap)/(2 r), r in the bore of 90."""
    return wall * (cut - gap) / (90.0 - wall)


def test_a_feeler_s_reading_in_the_closing_ring_is_square_to_the_cut_and_at_the_outer_edge():
    one = ring(clamped_gap_reading=0.3)
    ranges = {}
    found = one.closed(PLAN, ranges)
    assert found.clamped_gap == pytest.approx(0.375 + leaning(0.375), **EXACT)
    assert ranges == {}


def test_a_closing_ring_of_known_bore_leaves_what_it_is_smaller_than_the_rough_outside():
    """Circle less gap is the metal: pi (90.85 - 91.2) and the cut again."""
    found = ring(closing_ring_bore=90.85).closed(PLAN, {})
    assert found.clamped_gap == pytest.approx(CUT - 0.35 * math.pi, **EXACT)


def thick(outside, thickness, bored=84.6):
    """Gap in the closing ring that leaves that thickness: t = (D - bored + (s - g)/pi)/2."""
    return CUT + math.pi * (outside - bored - 2.0 * thickness)


def test_the_closing_gap_is_held_to_what_keeps_the_thickness_for_every_last_cut():
    one, ranges = ring(), {}
    found = one.closed(PLAN, ranges)
    lean = leaning(0.25)
    low = max(0.25, thick(90.14, 2.96))
    high = min(0.5 + lean, thick(90.1, 2.905))
    # Both are the thickness's, not the card's.
    assert (low, high) == (thick(90.14, 2.96), thick(90.1, 2.905))
    expected = (low * 0.8, (high - lean) * 0.8)
    assert ranges["clamped_gap_reading"] == pytest.approx(expected, **EXACT)
    # The middle of the thickness lies within.
    assert found.clamped_gap == pytest.approx(thick(90.1, 2.93), **EXACT)


def test_the_closing_gap_s_own_limits_hold_where_the_thickness_has_room():
    one, ranges = ring(), {}
    one.own = one.own._replace(thickness=(2.5, 3.5))
    one.closed(PLAN, ranges)
    assert ranges["clamped_gap_reading"] == pytest.approx((0.2, 0.4), **EXACT)


@pytest.mark.parametrize(
    ("bored", "gap"),
    [
        # Bored small the ring comes thick: closed as little as may be. Large: as far as may be.
        (84.5, 0.5 + leaning(0.25)),
        (84.64, 0.25 + leaning(0.25)),
    ],
)
def test_a_blank_bored_out_of_true_size_is_closed_as_far_as_the_card_lets(bored, gap):
    one = ring()
    one.own = one.own._replace(thickness=(2.5, 3.5))
    # The lean goes with the wall.
    wall = 0.5 * (91.2 - bored)
    gap += leaning(0.25, wall=wall) - leaning(0.25)
    found = one.closed(PLAN._replace(bored=bored), {})
    assert found.clamped_gap == pytest.approx(gap, **EXACT)


def test_an_outside_already_turned_leaves_the_closing_gap_its_own_limits():
    one, ranges = ring(finish_outside_diameter=90.16), {}
    one.closed(PLAN, ranges)
    expected = (thick(90.16, 2.96) * 0.8, 0.4)
    assert ranges["clamped_gap_reading"] == pytest.approx(expected, **EXACT)


# The second could be kept by ends that leaned the other way.
@pytest.mark.parametrize("thickness", [(2.93, 2.93), (2.92, 2.935)])
@pytest.mark.parametrize(("wanted", "gap"), [(0.21, 0.25), (0.42, 0.42), (0.53, 0.5)])
def test_where_no_closing_gap_keeps_the_thickness_the_card_s_own_is_kept(wanted, gap, thickness):
    one, ranges = ring(), {}
    one.own = one.own._replace(thickness=thickness)
    found = one.closed(PLAN._replace(clamped_gap=wanted), ranges)
    assert found.clamped_gap == pytest.approx(gap, **EXACT)
    assert ranges == {}


@pytest.mark.parametrize(("wanted", "gap"), [(0.21, 0.25), (0.42, 0.42), (0.58, 0.5)])
def test_a_ring_bored_clamped_is_closed_to_its_own_gap_within_the_card_s_limits(wanted, gap):
    """Its thickness is bored, and hangs on no gap."""
    one, ranges = ring(), {}
    one.own = one.own._replace(thickness=(2.93, 2.93))
    found = one.closed(PLAN._replace(clamped_gap=wanted, bored_clamped=84.2), ranges)
    lean = leaning(0.25)
    assert found.clamped_gap == pytest.approx(gap + lean if wanted != 0.42 else gap, **EXACT)
    assert ranges["clamped_gap_reading"] == pytest.approx((0.2, 0.4), **EXACT)


def test_a_closing_gap_without_room_is_still_told():
    """Between limits that meet, with ends that do not lean, the gap is that one."""
    one, ranges = ring(), {}
    one.held = one.held._replace(clamped_gap=(0.25, 0.25))
    flat = PLAN._replace(bored_clamped=84.2, rough=84.6, sine=1.0, clamped_gap=0.3)
    assert one.closed(flat, ranges).clamped_gap == 0.25
    assert ranges["clamped_gap_reading"] == (0.25, 0.25)


def test_the_outside_is_turned_as_it_was_measured():
    one, ranges = ring(finish_outside_diameter=90.17, inside_diameter=84.3), {}
    found = one.last_cut(PLAN, ranges)
    assert (found.finish, found.bored_clamped, ranges) == (90.17, None, {})
    banded = one.last_cut(PLAN._replace(bored_clamped=84.2), ranges)
    assert banded.bored_clamped == 84.3
    kept = ring(finish_outside_diameter=90.17).last_cut(PLAN._replace(bored_clamped=84.2), ranges)
    assert kept.bored_clamped == 84.2


@pytest.mark.parametrize(
    ("gap", "least"),
    [
        (0.42, 90.1),
        # Turned to 90.1 the gap in the bore would be 1.1 less pi 0.1: over the 0.6 that may be.
        (1.1, 90.0 + 0.5 / math.pi),
    ],
)
def test_the_outside_is_turned_so_large_that_the_gap_does_not_come_out_too_wide(gap, least):
    ranges = {}
    found = ring().last_cut(PLAN._replace(clamped_gap=gap), ranges)
    assert found.finish == pytest.approx(least, **EXACT)
    assert ranges["finish_outside_diameter"] == pytest.approx((least, least + 0.04), **EXACT)


@pytest.mark.parametrize(
    ("thickest", "most"),
    [
        (3.2, 90.14),
        # D = 2 t + bored - (s - g)/pi.
        (2.935, 2.0 * 2.935 + 84.6 - (CUT - 0.42) / math.pi),
        (2.90, 90.1),
    ],
)
def test_once_the_gap_is_read_the_last_cut_keeps_the_thickness(thickest, most):
    one, ranges = ring(clamped_gap_reading=0.3), {}
    one.own = one.own._replace(thickness=(2.8, thickest))
    one.last_cut(PLAN, ranges)
    assert ranges["finish_outside_diameter"] == pytest.approx((90.1, most), **EXACT)
    # Not of a ring whose inside is bored.
    one.last_cut(PLAN._replace(bored_clamped=84.2), ranges)
    assert ranges["finish_outside_diameter"] == pytest.approx((90.1, 90.14), **EXACT)


def test_the_largest_gap_and_the_last_cut_s_room_are_the_card_s():
    d = settled()
    one = follow.Ring(d, dict.fromkeys(NAMES), 1, "light", None)
    assert one.largest == pytest.approx(one.held.closed_gap[1] / math.sqrt(0.75))
    # Off the stick unless it is said.
    assert one.on_stick is False
    # IT7 of over 80 to 120 mm, at the most.
    assert 0.0 < one.last <= 0.035 + 1e-9
    assert one.last == pytest.approx(one.held.finish[1] - 90.0, abs=1e-9)


def test_a_former_that_was_measured_is_the_one_that_the_ring_goes_on():
    banded = PLAN._replace(former=88.0, spacer=None)
    assert ring(former_diameter=87.3).tool(banded).former == 87.3
    found = ring(spacer_width=9.9).tool(PLAN)
    assert (found.spacer, found.former) == (9.9, None)


def sized(**row):
    return {**dict.fromkeys((*NAMES, "ring")), **row}


# A saw cut of 1 and a spacer of 101: the free gap less 1 is per cent of relief.
def soaked(per_cent):
    return sized(end_kerf=1.0, spacer_width=101.0, free_gap=1.0 + per_cent)


@pytest.mark.parametrize(
    ("shown", "expected"),
    [
        ((80.0, 60.0), 0.7),
        ((80.0, 60.0, 55.0), 0.65),
        # What no heat gives is not learned from, a little over all of it is all.
        ((103.0, 60.0), 0.6),
        ((102.0, 60.0), 0.8),
        ((101.0, 60.0), 0.8),
        ((9.5, 60.0), 0.6),
        ((10.0, 60.0), 0.35),
        ((-20.0, 60.0), 0.6),
    ],
)
def test_the_next_ring_goes_by_the_mean_of_what_the_heat_gave_before(shown, expected):
    d = settle({"bore": 90.0, "ring_type": "plain", "end_cut": "square"})[0]
    rows = [soaked(each) for each in shown]
    found = follow.follow(d, [*rows, sized(ring=9), sized()])
    assert [each.ring for each in found] == [*range(1, len(rows) + 1), 9, len(rows) + 2]
    assert found[-1].plan.relief == pytest.approx(expected, **EXACT)
    assert found[0].relief == pytest.approx(shown[0] / 100.0, **EXACT)
    assert follow.follow(d, None) == []


def test_a_ring_is_off_the_stick_unless_it_is_said():
    d = settle({"bore": 90.0, "ring_type": "double-turn"})[0]
    for stick, there in (((), False), ((True,), True)):
        (found,) = follow.follow(d, [sized()], "light", *stick)
        assert ("cut_off_step" in [step.name for step in found.steps]) is there


@pytest.mark.parametrize(
    ("per_cent", "expected"), [(-5.0, 0.0), (0.5, 0.005), (140.0, 1.4), (170.0, 1.5)]
)
def test_a_ring_is_walked_by_what_its_own_heat_gave_within_reason(per_cent, expected):
    d = settle({"bore": 90.0, "ring_type": "plain", "end_cut": "square"})[0]
    (found,) = follow.follow(d, [soaked(per_cent)])
    assert found.plan.relief == pytest.approx(expected, **EXACT)


def test_a_size_that_was_measured_stands_for_the_one_that_was_planned():
    row = {
        "bored_inside_diameter": 84.7, "rough_outside_diameter": 91.4, "blank_length": 4.55,
        "slit_width": 0.73, "end_kerf": 1.27, "ring_width": 3.66,
    }  # fmt: skip
    found, relief, _ = ring(**row).worked(PLAN)
    assert relief is None
    taken = (found.bored, found.rough, found.length, found.slit, found.kerf, found.width)
    assert taken == tuple(row.values())
    assert found.relief == 0.85


@pytest.mark.parametrize("undone", ["", "radial_thickness", "closed_gap_reading"])
def test_the_finished_ring_is_as_it_was_measured_but_for_what_is_worked_anew(undone):
    found = ring(radial_thickness=2.88, closed_gap_reading=0.36).as_measured(PLAN, MADE, undone)
    thickness = 2.93 if undone == "radial_thickness" else 2.88
    gap = 0.37 if undone == "closed_gap_reading" else 0.45
    assert (found.thickness, found.closed_gap) == pytest.approx((thickness, gap), **EXACT)
    assert found[3:] == MADE[3:] and found.width == 3.7
    assert ring().as_measured(PLAN, MADE) == MADE


@pytest.mark.parametrize(
    ("free", "said"),
    [
        # A free gap as wide as the cut: the heat gave nothing.
        ({"free_gap": 1.0}, "hotter or longer"),
        ({"free_gap": 1.6}, "hotter or longer"),
        # A spacer as wide as the cut opened nothing, so nothing is known of the heat.
        ({"free_gap": 5.0, "spacer_width": 1.0}, "Set it again with a former or spacer of"),
        ({"free_gap": 0.5}, "one of them is not as measured"),
    ],
)
def test_a_ring_that_took_no_set_is_told_of_and_not_an_error(free, said):
    asked = {"bore": 90.0, "ring_type": "plain", "end_cut": "square"}
    answer = calculations.run("route", {**asked, "measured": [{"end_kerf": 1.0, **free}]})
    (found,) = answer["rings"]
    assert "it presses with" in found["why"] and said in found["remedy"]


def test_lean_by_hand_is_the_lean_that_the_card_takes_off():
    assert plan.lean(PLAN) == pytest.approx(leaning(0.42), **EXACT)
