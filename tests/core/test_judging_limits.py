"""What a ring is judged by, at each limit and on either side of it, by hand figures.

Where nothing grows (no expansion) what is filed is what is left, so that a limit is met to the last
digit. Growth: thermal expansion, a bronze ring in iron, steam at 170 C and a shop at 15 C.
"""

import math
from types import SimpleNamespace as Record

import pytest

from ringwright.core.ring import judging

# 1 + alpha * rise: ring by 155 K, cylinder half warm by 77.5 K, piston by 155 K.
RING = 1.0 + 18e-6 * 155.0
WARM = 1.0 + 11e-6 * 77.5
PISTON = 1.0 + 23e-6 * 155.0


def design(turns=1, alphas=(18e-6, 11e-6, 23e-6), bore=80.0, groove=4.05):
    ring, cylinder, piston = [Record(expansion=alpha) for alpha in alphas]
    duty = Record(
        bore=bore,
        turns=turns,
        ring_material=ring,
        cylinder=cylinder,
        piston=piston,
        temperature=170.0,
        shop=15.0,
        warming_wall_temperature=92.5,
        wall_temperature=92.5 if turns == 1 else 15.0,
    )
    return Record(duty=duty, groove_width=groove)


def still(turns=1, **more):
    return design(turns, (0.0, 0.0, 0.0), **more)


@pytest.mark.parametrize(
    ("gap", "turns", "expected"),
    [
        # 0.0005 of an 80 mm bore is 0.04 mm; a feeler tells no 0.005 mm.
        (-0.001, 1, ("stop", True, False)),
        (0.0, 1, ("stop", True, False)),
        (0.0001, 1, ("watch", True, False)),
        (0.03497, 1, ("watch", True, False)),
        (0.0005 * 80.0 - 0.005, 1, ("good", False, False)),
        # 0.008 of the bore is 0.64 mm, 0.012 is 0.96 mm.
        (0.008 * 80.0, 1, ("good", False, False)),
        (0.642, 1, ("watch", False, True)),
        (0.012 * 80.0, 1, ("watch", False, True)),
        (0.962, 1, ("stop", False, True)),
        # The other turn covers the gap of a double-turn ring, however wide.
        (0.962, 2, ("good", False, False)),
        (0.03497, 2, ("watch", True, False)),
    ],
)
def test_a_gap_stops_where_its_ends_butt_and_is_wide_past_a_hundredth(gap, turns, expected):
    judged = judging.judge_gap(still(turns), gap)
    assert (judged.outcome, judged.short, judged.wide) == expected
    assert judged.hot == gap
    assert judged.margin == pytest.approx(0.04, rel=1e-12)
    assert judged.need == pytest.approx(0.04, rel=1e-9)
    assert judged.most == (pytest.approx(0.64, rel=1e-9) if turns == 1 else None)


@pytest.mark.parametrize(("bore", "there"), [(None, 80.0), (90.0, 90.0)])
def test_a_gap_is_judged_where_the_ring_stands(bore, there):
    """The ring outgrows the bore by pi * bore * (ring - cylinder); its gap grows with it."""
    closes = math.pi * there * (RING - WARM)
    judged = judging.judge_gap(design(), 0.7, bore)
    assert judged.hot == pytest.approx(0.7 * RING - closes, rel=1e-12)
    assert judged.margin == pytest.approx(0.0005 * there, rel=1e-12)
    assert judged.need == pytest.approx((0.0005 * there + closes) / RING, rel=1e-12)
    assert judged.most == pytest.approx((0.008 * there + closes) / RING, rel=1e-12)
    assert judging.judge_gap(design(), closes / RING - 1e-6, bore).outcome == "stop"
    assert judging.judge_gap(design(), closes / RING + 1e-6, bore).outcome == "watch"


def test_a_double_turn_ring_is_filed_stone_cold_and_stops_half_warm():
    cold, warm = math.pi * 80.0 * (RING - 1.0), math.pi * 80.0 * (RING - WARM)
    # Its ends would butt on a stone-cold wall, and clear a half-warm one by 0.11 mm.
    between = (warm + 0.11) / RING
    judged = judging.judge_gap(design(2), between)
    assert judged.outcome == "watch"
    assert judged.hot == pytest.approx(warm + 0.11 - cold, rel=1e-9)
    assert judged.hot < 0.0
    assert judging.judge_gap(design(2), warm / RING - 1e-6).outcome == "stop"
    assert judged.need == pytest.approx((0.04 + cold) / RING, rel=1e-12)


def test_the_least_gap_leaves_nothing_and_no_more():
    least = judging.least_gap(design())
    assert least == pytest.approx(math.pi * 80.0 * (1.0 - WARM / RING), rel=1e-12)
    assert judging.gap_left(design(), 0.3, 15.0, 90.0) == pytest.approx(
        math.pi * 90.0 * (1.0 - RING) + 0.3 * RING, rel=1e-12
    )


@pytest.mark.parametrize(
    ("alphas", "grown"),
    [
        # The ring grows more than its groove: least when hot.
        ((18e-6, 11e-6, 12e-6), 4.05 * (1.0 + 12e-6 * 155.0) - 4.0 * RING),
        # The groove grows more: least when cold.
        ((18e-6, 11e-6, 23e-6), 4.05 - 4.0),
    ],
)
def test_sides_are_judged_where_they_are_nearest(alphas, grown):
    assert judging.side_left(design(alphas=alphas), 4.0) == pytest.approx(grown, rel=1e-9)


# In a 50 mm bore practice leaves 0.001 to 0.003 in, and half as much again is slack.
LEAST, MOST = 0.001 * 25.4, 0.003 * 25.4


@pytest.mark.parametrize(
    ("side", "outcome", "limit"),
    [
        (-0.01, "stop", LEAST),
        (0.0, "stop", LEAST),
        (0.0002, "watch", LEAST),
        (0.0252, "watch", LEAST),
        (LEAST, "good", MOST),
        (MOST * 1.5, "good", MOST),
        (0.1148, "watch", MOST),
    ],
)
def test_sides_bind_at_nought_and_are_slack_past_half_as_much_again(side, outcome, limit):
    # A groove of twice the clearance and a ring of as much: the difference is exact.
    width = abs(side) or 3.0
    d = still(bore=50.0, groove=width + side)
    assert judging.judge_side(d, width) == (outcome, side, limit)


@pytest.mark.parametrize(
    ("pressure", "outcome", "limit"),
    [
        (0.0149, "stop", 0.015),
        (0.015, "watch", 0.034),
        (0.0151, "watch", 0.034),
        (0.0339, "watch", 0.034),
        (0.034, "good", 0.085),
        (0.0341, "good", 0.085),
        (0.085, "good", 0.085),
        (0.0855, "watch", 0.085),
        (0.2, "watch", 0.085),
        (0.2005, "stop", 0.2),
    ],
)
def test_pressure_at_its_limits_is_still_good(pressure, outcome, limit):
    assert judging.judge_pressure(pressure) == (outcome, pressure, limit)


def test_the_expander_presses_as_well():
    d = Record(spring=Record(wall_pressure=0.031), expander_pressure=0.022)
    assert judging.pressing(d) == pytest.approx(0.053, rel=1e-12)


@pytest.mark.parametrize(
    ("light", "outcome"),
    [(0.0499, "good"), (0.05, "good"), (0.0502, "watch"), (0.25, "watch"), (0.251, "stop")],
)
def test_light_of_a_twentieth_beds_in_and_of_a_quarter_does_not(light, outcome):
    assert judging.judge_light(light) == (outcome, light, 0.05)


@pytest.mark.parametrize(("bore", "there"), [(None, 80.0), (81.0, 81.0)])
def test_a_piston_needs_what_it_outgrows_a_half_warm_bore_by(bore, there):
    """Its own growth back to the shop: bore - bore * cylinder / piston."""
    found = judging.least_piston_clearance(design(), bore)
    assert found == pytest.approx(there * (1.0 - WARM / PISTON), rel=1e-9)
