"""The limits of a card by hand: what a lathe, a saw and a feeler hold, and what the ring allows.

Tolerances are those of ISO 286-1, table 1.
"""

import math

import pytest

from ringwright.core.ring.design import settle
from ringwright.core.walk import limits, states
from ringwright.core.walk.finished import finished_limits
from ringwright.core.walk.plan import plan_of, walk

EXACT = {"abs": 1e-9}
SINE = math.sqrt(0.75)
PI = math.pi


def ring(*, thickness=2.93, gap=0.35, closing=0.42, kerf=0.9, bore=90.0, finish=90.1, more=0.0,
         slit=0.7, allowance=0.9, facing=0.25, former=None, spacer=9.3, inside=0.0,
         **asked):  # fmt: skip
    """A ring of those figures with ends at 60 degrees, that presses as its sizes make it.

    more: how much further than its thickness asks it is bored [mm].
    """
    d = settle({"bore": bore, "ring_type": "plain", "end_cut": "angled-60", **asked})[0]
    bored = finish - 2.0 * thickness + (kerf / SINE - closing) / PI + more
    if inside:
        bored = finish - 2.0 * thickness - 2.0 * inside
    d = d._replace(
        duty=d.duty._replace(closed_gap=gap),
        section=d.section._replace(thickness=thickness, width=3.7),
        spring=d.spring._replace(
            former_diameter=former, spacer_width=None if former else spacer, curvature_change=None
        ),
        allowances=d.allowances._replace(
            kerf=kerf, clamped_gap=closing, slit=slit, finishing=allowance, facing=facing,
            inside=inside,
        ),
        blank=d.blank._replace(
            length=4.6, finish_outside=finish, bored_inside=bored,
            rough_outside=bored + 2.0 * thickness + 0.74,
        ),
    )  # fmt: skip
    made = walk(plan_of(d))
    curvature = states.curvature_change(made.state)
    spring = d.spring._replace(wall_pressure=made.wall_pressure, curvature_change=curvature)
    return d._replace(spring=spring)


def leans(closing=0.42, kerf=0.9, thickness=2.93, bore=90.0):
    """How far the ends of the rough wall lean [mm, along the ring]."""
    wall = thickness + 0.37
    return wall * (kerf / SINE - closing) / (bore - wall)


@pytest.mark.parametrize(
    ("size", "grade", "expected"),
    [(0.4, 7, 0.010), (5.0, 7, 0.012), (84.6, 8, 0.054), (90.1, 7, 0.035), (1500.0, 7, 0.090)],
)
def test_a_size_outside_the_standard_has_the_tolerance_of_its_nearest(size, grade, expected):
    assert limits.it(size, grade) == expected


# What a light lathe holds over 80 to 120 mm, bore IT8 and outside IT7; the saw a tenth over, here
# along the ring; the feeler 0.02 and 0.0004 of 90 mm, both ways.
BORE, OUTSIDE = 0.054, 0.035
SAW = 0.09 / SINE
FEELER = 2.0 * 0.056 / SINE
# A ring of 2.93 may be 0.0586 out either way.
ROOM = 0.1172


def thickness_share(room=ROOM, saw=SAW, bore=BORE, feeler=FEELER, lean=None):
    """What the thickness allows of all that makes it, and of all that thickens the nominal bore."""
    lean = (leans() if lean is None else lean) / PI
    whole = 2.0 * (room - lean) / (bore + OUTSIDE + (saw + feeler) / PI)
    return min(whole, (room - lean) / (OUTSIDE + (saw + 0.5 * feeler) / PI))


def test_limits_are_shared_out_by_what_each_operation_can_hold():
    found = limits.card_limits(ring())
    assert found.share == pytest.approx(thickness_share(), **EXACT)
    assert found.share == pytest.approx(1.2373, abs=1e-4)


def test_a_fine_saw_leaves_the_bore_to_say_how_much_there_is():
    """Saw 0.4: 0.04 over. Bore and outside then count for more than what thickens."""
    d = ring(kerf=0.4, closing=0.3)
    lean = leans(closing=0.3, kerf=0.4)
    found = limits.card_limits(d)
    saw = 0.04 / SINE
    expected = 2.0 * (ROOM - lean / PI) / (BORE + OUTSIDE + (saw + FEELER) / PI)
    assert expected < (ROOM - lean / PI) / (OUTSIDE + (saw + 0.5 * FEELER) / PI)
    assert found.share == pytest.approx(expected, **EXACT)


def test_a_thick_saw_wanders_no_more_than_0_12():
    found = limits.card_limits(ring(kerf=1.5))
    lean = leans(kerf=1.5)
    assert found.share == pytest.approx(thickness_share(saw=0.12 / SINE, lean=lean), **EXACT)
    assert found.kerf == pytest.approx((1.5, 1.5 + 0.12 * found.share), **EXACT)


def test_a_feeler_fits_within_0_06_on_a_large_ring():
    """0.02 + 0.0004 x 118 is 0.0672."""
    d = ring(bore=118.0, finish=118.1, thickness=3.4)
    lean = leans(thickness=3.4, bore=118.0)
    expected = thickness_share(room=0.136, feeler=0.12 / SINE, lean=lean)
    assert limits.card_limits(d).share == pytest.approx(expected, **EXACT)


def test_no_limit_is_wider_than_twice_what_the_machine_holds():
    assert limits.card_limits(ring(thickness=5.6)).share == 2.0
    assert limits.card_limits(banded()).share == 2.0


def test_a_rigid_lathe_bores_to_it7():
    d = ring(kerf=0.4, closing=0.3)
    found = limits.card_limits(d, "rigid")
    expected = thickness_share(saw=0.04 / SINE, bore=0.035, lean=leans(closing=0.3, kerf=0.4))
    assert found.share == pytest.approx(expected, **EXACT)


def banded(thickness=2.93, former=88.0, **more):
    return ring(thickness=thickness, inside=0.4, former=former, setting="bound", **more)


def test_a_ring_bored_while_held_has_all_its_thickness_for_bore_and_outside():
    """1.7 thick: 0.068 to share between 0.054 and 0.035, twice as each counts for half."""
    found = limits.card_limits(banded(1.7))
    share = 2.0 * 0.068 / (0.054 + 0.035)
    assert found.share == pytest.approx(share, **EXACT)
    range_ = 0.054 * share
    # The outside may come 0.035 large: the middle of the bore makes the middle of the thickness.
    low = 90.1 - 3.4 + 0.5 * (0.035 - range_)
    assert found.bored_clamped == pytest.approx((low, low + range_), **EXACT)
    bored = 90.1 - 3.4 - 0.8
    expected = (bored - 0.5 * range_, bored + 0.5 * range_)
    assert found.bored == pytest.approx(expected, **EXACT)


def test_a_bore_held_closer_than_the_outside_begins_at_its_nominal():
    """Bored at 119.5 IT7 is 0.035, outside 122.1 it is 0.04: 0.08 of room for both."""
    d = banded(1.0, bore=122.0, finish=122.1, former=122.0)
    found = limits.card_limits(d, "rigid")
    share = 0.08 / 0.075
    assert found.share == pytest.approx(share, **EXACT)
    inside = 122.1 - 2.0
    assert found.bored_clamped == pytest.approx((inside, inside + 0.035 * share), **EXACT)


def test_the_last_cut_is_over_and_never_under_by_it7_or_by_its_share():
    assert limits.card_limits(ring()).finish == pytest.approx((90.1, 90.135), **EXACT)
    thin = limits.card_limits(ring(thickness=1.4))
    assert thin.share < 0.7
    expected = (90.1, 90.1 + 0.035 * thin.share)
    assert thin.finish == pytest.approx(expected, **EXACT)


def test_a_saw_cuts_over_and_never_under():
    found = limits.card_limits(ring())
    assert found.kerf == pytest.approx((0.9, 0.9 + 0.09 * found.share), **EXACT)


def test_the_gap_in_the_bore_is_read_in_a_trial_bore_that_is_the_smaller():
    """IT6 of 90 mm is 0.022, pi times that of gap. A quarter of 0.35 and 0.02 more may be."""
    found = limits.card_limits(ring())
    largest = 0.35 + 0.1075 - PI * 0.022
    expected = (0.35 * SINE, largest * SINE)
    assert found.closed_gap == pytest.approx(expected, **EXACT)


@pytest.mark.parametrize(
    ("gap", "room"),
    [
        # 0.25 + 0.1 and 0.35 + 0.1075 before the trial bore: a hundredth is left, or what there is.
        (0.25, 0.01),
        (0.35, 0.1075 - PI * 0.022 - leans()),
        # 0.72: what the feeler holds, and the lean that it does not see.
        (0.72, None),
    ],
)
def test_the_gap_in_the_closing_ring_is_held_by_feeler_within_what_the_finished_gap_leaves(
    gap, room
):
    found = limits.card_limits(ring(gap=gap))
    fits = 0.5 * FEELER * found.share + leans()
    up = fits if room is None else room
    assert up <= fits
    expected = ((0.42 - fits) * SINE, (0.42 + up - leans()) * SINE)
    assert found.clamped_gap == pytest.approx(expected, **EXACT)


def test_a_small_gap_in_the_closing_ring_is_not_closed_by_more_than_seven_tenths():
    found = limits.card_limits(ring(closing=0.1))
    assert found.clamped_gap[0] == pytest.approx(0.03 * SINE, **EXACT)


def bored(found, d, closing=0.42):
    """(thin, thick): thickness at the two ends of the bore, all else at its worst, by hand."""
    lean = leans()
    up = found.clamped_gap[1] / SINE + lean - closing
    down = closing - found.clamped_gap[0] / SINE
    thickness = 0.5 * (90.1 - d.blank.bored_inside + (0.9 / SINE - closing) / PI)
    low, high = [each - d.blank.bored_inside for each in found.bored]
    last = found.finish[1] - 90.1
    saw = (found.kerf[1] - 0.9) / SINE
    return thickness - 0.5 * (high + up / PI), thickness + 0.5 * (last - low + (saw + down) / PI)


def test_the_bore_puts_the_worst_thickness_in_the_middle():
    """Room to spare: as much out either way."""
    d = ring(kerf=0.4, closing=0.3, thickness=5.6, gap=0.8)
    found = limits.card_limits(d)
    wall = 5.97
    lean = wall * (0.4 / SINE - 0.3) / (90.0 - wall)
    up = found.clamped_gap[1] / SINE + lean - 0.3
    down = 0.3 - found.clamped_gap[0] / SINE
    wide = 2.0 * 0.046
    # Bored at 78.9: IT8 of over 50 to 80 mm. Outside 0.035 over, saw 0.08 over its 0.4.
    low = 0.5 * (0.035 - wide + (0.08 / SINE + down - up) / PI)
    assert low < 0.0
    start = d.blank.bored_inside
    assert found.bored == pytest.approx((start + low, start + low + wide), **EXACT)


def test_a_bore_that_would_have_to_be_over_size_begins_at_its_nominal():
    """The thickness ends it: 2.9886 and 2.8714 are not passed, all else at its worst."""
    d = ring()
    found = limits.card_limits(d)
    assert found.bored[0] == pytest.approx(d.blank.bored_inside, **EXACT)
    thin, thick = bored(found, d)
    assert thin == pytest.approx(2.93 - 0.0586, **EXACT) or found.bored[1] == pytest.approx(
        d.blank.bored_inside + 0.054 * found.share, **EXACT
    )
    assert thick <= 2.93 + 0.0586 + 1e-9
    assert found.worst.thickness == pytest.approx((thin, thick), **EXACT)


@pytest.mark.parametrize("more", [-0.03, -0.0235, 0.0, 0.03, 0.06])
def test_a_blank_drawn_off_its_middle_is_bored_to_suit_the_thickness(more):
    """The bore's limits move with it, but the nominal bore is always within them."""
    d = ring(thickness=2.93, more=more, kerf=0.4, closing=0.3)
    found = limits.card_limits(d)
    start = d.blank.bored_inside
    lean = leans(closing=0.3, kerf=0.4)
    up = found.clamped_gap[1] / SINE + lean - 0.3
    down = 0.3 - found.clamped_gap[0] / SINE
    last = found.finish[1] - 90.1
    saw = (found.kerf[1] - 0.4) / SINE
    wide = 0.054 * found.share
    room = 2.0 * (0.0586 + 0.5 * more)
    middle = 0.5 * (last - wide + (saw + down - up) / PI)
    low = min(max(middle, last + (saw + down) / PI - room), 0.0)
    high = max(low, min(low + wide, room - up / PI))
    assert found.bored == pytest.approx((start + low, start + high), **EXACT)


@pytest.mark.parametrize(("allowance", "off"), [(0.9, 0.07), (0.36, 0.07), (0.3, 0.06)])
def test_the_rough_outside_takes_half_of_it10_or_a_fifth_of_the_allowance(allowance, off):
    d = ring(allowance=allowance)
    rough = d.blank.rough_outside
    expected = (rough - off, rough + off)
    assert limits.card_limits(d).rough == pytest.approx(expected, **EXACT)


@pytest.mark.parametrize(("facing", "off", "slit"), [(0.25, 0.03, 0.075), (0.08, 0.024, 0.024)])
def test_a_blank_may_be_short_by_it9_or_by_three_tenths_of_what_is_faced(facing, off, slit):
    found = limits.card_limits(ring(facing=facing))
    assert found.length == pytest.approx((4.6 - off, 4.6), **EXACT)
    assert found.slit is None
    double = limits.card_limits(ring(facing=facing, ring_type="double-turn", setting="spread"))
    assert double.slit == pytest.approx((0.7, 0.7 + slit), **EXACT)


def test_a_slit_is_no_more_than_a_tenth_too_wide():
    found = limits.card_limits(ring(facing=0.5, ring_type="double-turn", setting="spread"))
    assert found.slit == pytest.approx((0.7, 0.8), **EXACT)


@pytest.mark.parametrize("thickness", [2.93, 1.4])
def test_former_and_spacer_are_made_to_it9_or_closer(thickness):
    """IT9 is 0.087 at 88 mm and 0.036 at 8.6 mm; a former is never over, a spacer either way."""
    found = limits.card_limits(ring(former=88.0, thickness=thickness, setting="bound"))
    part = min(found.share, 1.0)
    assert (part < 0.7) is (thickness == 1.4)
    assert found.former == pytest.approx((88.0 - 0.087 * part, 88.0), **EXACT)
    assert found.spacer is None
    found = limits.card_limits(ring(spacer=8.6, thickness=thickness))
    part = min(found.share, 1.0)
    assert found.spacer == pytest.approx((8.6 - 0.018 * part, 8.6 + 0.018 * part), **EXACT)
    assert found.former is None


def test_a_width_is_never_over_and_under_by_it7_or_by_what_the_groove_lets():
    d = ring()
    d = d._replace(groove_width=3.745, groove_there=True)
    assert limits.card_limits(d).width == pytest.approx((3.688, 3.7), **EXACT)
    wide = d._replace(groove_width=3.85)
    # Slack already: not a bit narrower.
    assert limits.card_limits(wide).width == pytest.approx((3.7, 3.7), **EXACT)


def test_the_worst_ring_is_thin_with_bore_and_gap_large_and_the_tool_small():
    d = ring()
    plan, found = plan_of(d), limits.card_limits(d)
    thin, thick = limits.corners(plan, found)
    at = {"rough": 0, "bored": 1, "kerf": 0, "spacer": 0, "finish": 0, "width": 0}
    for name, end in at.items():
        assert getattr(thin, name) == getattr(found, name)[end], name
        assert getattr(thick, name) == getattr(found, name)[1 - end], name
    # The feeler may see the lean of the ends or not.
    assert thin.clamped_gap == pytest.approx(found.clamped_gap[1] / SINE + leans(), **EXACT)
    assert thick.clamped_gap == pytest.approx(found.clamped_gap[0] / SINE, **EXACT)
    assert thin.former is thick.former is thin.bored_clamped is thick.bored_clamped is None
    held = banded(1.7)
    found = limits.card_limits(held)
    thin, thick = limits.corners(plan_of(held), found)
    assert (thin.bored_clamped, thick.bored_clamped) == found.bored_clamped[::-1]
    assert (thin.former, thick.former) == found.former


def test_the_thickness_of_a_closing_ring_bored_to_suit():
    """(90.1 - 84.6 + (1.0392 - 0.42)/pi)/2, or half of what stands between turned and bored."""
    plan = plan_of(ring())._replace(bored=84.6)
    expected = 0.5 * (5.5 + (0.9 / SINE - 0.42) / PI)
    assert limits.plan_thickness(plan) == pytest.approx(expected, **EXACT)
    held = plan._replace(bored_clamped=84.36)
    assert limits.plan_thickness(held) == pytest.approx(2.87, **EXACT)


SMALL = [
    {"bore": 12.0, "ring_type": "plain"},
    {"bore": 12.0, "ring_type": "plain", "wall_pressure": 0.03},
    {"bore": 12.0, "ring_type": "double-turn"},
    {"bore": 12.0, "ring_type": "plain", "setting": "bound"},
    {"bore": 90.0, "ring_type": "plain", "free_gap": 1.5},
    {"bore": 90.0, "ring_type": "plain", "free_gap": 1.5, "setting": "sprung"},
    # Here the slack side is the nearer.
    {"bore": 300.0, "ring_type": "plain", "free_gap": 2.0, "setting": "bound"},
]


@pytest.mark.parametrize("asked", SMALL, ids=str)
def test_a_small_ring_is_held_closer_until_it_presses_within_its_own_limits_and_no_closer(asked):
    """The thickness alone would let it press more, or less, than a quarter off."""
    d = settle(asked)[0]
    found = limits.card_limits(d)
    low, high = finished_limits(d).wall_pressure
    aim = d.spring.wall_pressure
    least, most = found.worst.wall_pressure
    assert low <= least < aim < most <= high
    assert max((most - aim) / (high - aim), (aim - least) / (aim - low)) > 0.95
