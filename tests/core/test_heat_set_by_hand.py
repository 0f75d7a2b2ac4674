"""Heat setting by pencil and by scipy: every formula once more, with figures of no symmetry.

The ring: bore 83, wall 3.4, width 5.7, iron of 107 000 N/mm2; its neutral radius is 39.8.
"""

import math

import numpy as np
import pytest
from scipy.integrate import quad
from scipy.optimize import brentq, minimize_scalar

from ringwright.core.catalogue.inputs_ring import BAND, BOUND, FORCED_ROUND, SPREAD, SPRUNG
from ringwright.core.ring import heat_set

BORE, WALL, WIDTH, IRON, RADIUS = 83.0, 3.4, 5.7, 107000.0, 39.8
BENT = 4.1e-4
PENCIL = {"rel": 1e-11}
# Where a ring set round begins to bear, by the light and the slope that end there.
END = brentq(lambda b: math.sin(b) - math.sin(2.0 * b) / 4.0 - b / 2.0, 1.5, 2.5, xtol=1e-15)
SINE, COSINE = math.sin(END), math.cos(END)


def over(work, start, end):
    return quad(work, start, end, epsabs=1e-13, epsrel=1e-13)[0]


def moment(a):
    """Over the even one: what a ring set sprung was bent by on its former, from its tip."""
    return math.sin(a) / SINE if a < END else 1.0


def light(a):
    """Solves w'' + w = sin a/sin b - 1, none at the tip and none at b."""
    free = 1.0 - math.cos(a) + a * math.cos(a) / (2.0 * SINE)
    return free - math.sin(a) / SINE * (1.0 - COSINE + END * COSINE / (2.0 * SINE))


def test_slack_length_and_peak():
    assert pytest.approx(END, rel=1e-14) == heat_set.SLACK_RADIANS
    assert pytest.approx(END * 180.0 / math.pi, rel=1e-13) == heat_set.SLACK_ANGLE
    assert pytest.approx(1.0 / SINE, **PENCIL) == heat_set.PEAK_MOMENT


def test_widest_light_and_where_it_stands():
    widest = minimize_scalar(lambda a: -abs(light(a)), bounds=(0.2, 1.2), method="bounded")
    assert pytest.approx(-widest.fun, rel=1e-9) == heat_set.LIGHT_FACTOR
    assert pytest.approx(math.degrees(widest.x), abs=2e-3) == heat_set.LIGHT_ANGLE
    expected = -widest.fun * BENT * 39.8 * 39.8
    assert heat_set.widest_light(BENT, BORE, WALL) == pytest.approx(expected, rel=1e-8)


@pytest.mark.parametrize("turns", [1, 2])
def test_mean_pressure_by_what_parts_the_ring(turns):
    """The even part, two tips of r_o/sin b each, and two lines that take their lean away."""
    whole = turns * math.pi
    share = (whole - END + 1.0 / SINE - COSINE / SINE) / whole
    assert heat_set.mean_share(turns) == pytest.approx(share, **PENCIL)
    found = heat_set.mean_pressure(BENT, BORE, WALL, IRON, turns)
    even = IRON * 3.4**3 * BENT / (12.0 * 39.8 * 41.5)
    assert found == pytest.approx(share * even, **PENCIL)


@pytest.mark.parametrize("turns", [1, 2])
def test_gap_of_a_ring_set_sprung_by_its_moment(turns):
    whole = turns * math.pi
    opened = over(lambda a: moment(a) * (1.0 - math.cos(a)), 0.0, END)
    opened += over(lambda a: 1.0 - math.cos(a), END, whole)
    assert heat_set.sprung_gap_factor(turns) == pytest.approx(opened / whole, rel=1e-10)


def test_contact_pressure_and_the_curvature_behind_it():
    """p0 = E a^3 kappa/(12 r r_o), r_o = 41.5."""
    pressure = IRON * 3.4**3 * BENT / (12.0 * 39.8 * 41.5)
    assert heat_set.contact_pressure(BENT, BORE, WALL, IRON) == pytest.approx(pressure, **PENCIL)
    found = heat_set.curvature_for_contact(0.071, BORE, WALL, IRON)
    assert found == pytest.approx(0.071 * 12.0 * 39.8 * 41.5 / (IRON * 3.4**3), **PENCIL)


def test_force_of_a_tip():
    """p0 h r_o/sin b."""
    expected = 0.071 * 5.7 * 41.5 / SINE
    assert heat_set.tip_force(0.071, BORE, WIDTH) == pytest.approx(expected, **PENCIL)


@pytest.mark.parametrize(("turns", "printed"), [(1, 1.0342), (2, 1.0171)])
def test_gap_by_how_much_longer_the_larger_circle_is(turns, printed):
    free = 1.0 / (1.0 / 39.8 - BENT)
    bound = 2.0 * math.pi * (free - 39.8)
    found = heat_set.gap_of_curvature(BENT, BORE, WALL, BOUND, turns)
    assert found == pytest.approx(bound, **PENCIL)
    sprung = heat_set.gap_of_curvature(BENT, BORE, WALL, SPRUNG, turns)
    assert sprung / bound == pytest.approx(printed, abs=5e-5)
    # Back again: a gap of 4.7 is an arc of radius r + 4.7/(2 pi).
    change = 1.0 / 39.8 - 1.0 / (39.8 + 4.7 / (2.0 * math.pi))
    found = heat_set.curvature_of_gap(4.7, BORE, WALL, BOUND, turns)
    assert found == pytest.approx(change, **PENCIL)
    change = 1.0 / 39.8 - 1.0 / (39.8 + 4.7 / (printed * 2.0 * math.pi))
    found = heat_set.curvature_of_gap(4.7, BORE, WALL, SPRUNG, turns)
    assert found == pytest.approx(change, rel=1e-4)


def out_of_round(needed):
    """(pull of a band, how far from round) of one turn that such a moment would close, by scipy.

    The band bends it by c (1 - cos); c closes the gap. w'' + w is what is left; of all ways to lay
    it on the middle, the one that looks roundest.
    """
    close = over(lambda a: needed(a) * (1.0 - math.cos(a)), 0.0, END)
    close += over(lambda a: needed(a) * (1.0 - math.cos(a)), END, math.pi)
    pull = close / (1.5 * math.pi)
    # From the back (0) to the tip (pi), by parts of the integral of sin(t - s) f(s).
    place = np.linspace(0.0, math.pi, 20001)
    left = pull * (1.0 + np.cos(place)) - np.array([needed(math.pi - t) for t in place])
    step = place[1]

    def summed(values):
        return np.concatenate(((0.0,), np.cumsum(0.5 * step * (values[1:] + values[:-1]))))

    lies = np.sin(place) * summed(np.cos(place) * left)
    lies -= np.cos(place) * summed(np.sin(place) * left)
    best = minimize_scalar(
        lambda s: np.ptp(lies + s * np.cos(place)), bounds=(-2.0, 2.0), method="bounded",
        options={"xatol": 1e-9},
    )  # fmt: skip
    return pull, best.fun


@pytest.mark.parametrize(("setting", "needed"), [(BOUND, lambda a: 1.0), (SPRUNG, moment)])
def test_one_turn_closed_by_a_band(setting, needed):
    pull, lies = out_of_round(needed)
    assert heat_set.band_share(setting, 1) == pytest.approx(pull, rel=1e-5)
    found = heat_set.band_allowance(BENT, BORE, WALL, setting, 1)
    assert found == pytest.approx(lies * BENT * 39.8**2, rel=2e-3)


@pytest.mark.parametrize(
    ("setting", "pull", "lies"), [(BOUND, 0.878, 0.338), (SPRUNG, 0.894, 0.259)]
)
def test_two_turns_closed_by_a_band_as_the_method_prints_it(setting, pull, lies):
    assert heat_set.band_share(setting, 2) == pytest.approx(pull, abs=6e-4)
    found = heat_set.band_allowance(BENT, BORE, WALL, setting, 2)
    assert found == pytest.approx(lies * BENT * 39.8**2, rel=2e-3)


def across(needed):
    """Force that closes two turns between plates, by unit loads; over p0 h r_o of the whole ring.

    From a tip (0) to the bridge (2 pi): a plate bears at a quarter turn, and on the other turn at
    three quarters. Both lie on it, and the gap is closed.
    """
    quarter, three, bridge = 0.5 * math.pi, 1.5 * math.pi, 2.0 * math.pi
    edges = (0.0, quarter, END, three, bridge)

    def work(one, other):
        pieces = zip(edges[:-1], edges[1:], strict=True)
        return sum(over(lambda a: one(a) * other(a), *piece) for piece in pieces)

    def early(a):
        return -math.cos(a) if a > quarter else 0.0

    def late(a):
        return math.cos(a) if a > three else 0.0

    def gap(a):
        return 1.0 - math.cos(a)

    # Unknown: loads at a quarter, at three quarters, and how far both yield.
    rows = [
        [work(early, early), work(early, late), -1.0],
        [work(late, early), work(late, late), -1.0],
        [work(gap, early), work(gap, late), 0.0],
    ]
    wanted = [work(early, needed), work(late, needed), work(gap, needed)]
    loads = np.linalg.solve(rows, wanted)
    # p0 acts on the width of one turn, half the ring's.
    return 0.5 * (loads[0] + loads[1]), loads[0] / loads[1]


def test_force_across_one_turn():
    """Bound pi/(1 + pi/4); sprung the more that its gap is larger."""
    line = 0.071 * 5.7 * 41.5
    bound = math.pi / (1.0 + math.pi / 4.0)
    found = heat_set.closing_force(0.071, BORE, WIDTH, BOUND, 1)
    assert found == pytest.approx(bound * line, rel=1e-5)
    more = over(lambda a: moment(a) * (1.0 - math.cos(a)), 0.0, END)
    more += over(lambda a: 1.0 - math.cos(a), END, math.pi)
    found = heat_set.closing_force(0.071, BORE, WIDTH, SPRUNG, 1)
    assert found == pytest.approx(more / (1.0 + math.pi / 4.0) * line, rel=1e-5)


def test_force_across_two_turns_between_plates():
    line = 0.071 * 5.7 * 41.5
    bound, share = across(lambda a: 1.0)
    assert share == pytest.approx(0.5, rel=1e-9)
    assert bound == pytest.approx(math.pi / (1.0 + math.pi / 12.0), rel=1e-9)
    found = heat_set.closing_force(0.071, BORE, WIDTH, BOUND, 2)
    assert found == pytest.approx(bound * line, rel=1e-5)
    found = heat_set.closing_force(0.071, BORE, WIDTH, SPRUNG, 2)
    assert found == pytest.approx(across(moment)[0] * line, rel=1e-4)


def test_how_a_ring_bears_by_how_it_was_set_and_held():
    table = {
        (SPREAD, BAND): (True, False), (SPREAD, FORCED_ROUND): (True, False),
        (SPREAD, "closing-ring"): (True, False),
        (BOUND, BAND): (True, False), (SPRUNG, BAND): (True, False),
        (BOUND, FORCED_ROUND): (False, True), (SPRUNG, FORCED_ROUND): (False, False),
        (BOUND, "closing-ring"): (False, False), (SPRUNG, "closing-ring"): (False, False),
    }  # fmt: skip
    for way, expected in table.items():
        found = heat_set.bearing(*way)
        assert (found.uniform, found.light) == expected


def test_former_and_ring_in_the_heat():
    """A steel former of 12.1e-6 and iron of 10.7e-6, 530 K up: 1.006413 over 1.005671."""
    expected = 1.006413 / 1.005671
    assert heat_set.hot_growth(12.1e-6, 10.7e-6, 530.0) == pytest.approx(expected, **PENCIL)


def test_radius_as_set_the_former_for_it_and_the_relief_that_it_shows():
    """Bored to 40.1, former 42.3, relief 0.83."""
    free = 1.0 / (1.0 / 40.1 - 0.83 * (1.0 / 40.1 - 1.0 / 42.3))
    assert heat_set.set_radius(40.1, 42.3, 0.83) == pytest.approx(free, **PENCIL)
    assert heat_set.former_radius_for(40.1, free, 0.83) == pytest.approx(42.3, rel=1e-10)
    assert heat_set.relief_given(40.1, 42.3, free) == pytest.approx(0.83, rel=1e-10)


@pytest.mark.parametrize(("skin", "power"), [(0.1, 8.0), (0.32, 4.7), (0.55, 3.0)])
def test_moment_left_by_creep_by_integration(skin, power):
    """Norton: 1/s^(n-1) of a fibre at y grows by what the skin's did, times y^(n-1)."""
    grown = skin ** (1.0 - power) - 1.0

    def fibre(y):
        return y * y * (1.0 + grown * y ** (power - 1.0)) ** (-1.0 / (power - 1.0))

    kept = 3.0 * over(fibre, 0.0, 1.0)
    assert heat_set.moment_kept(skin, power) == pytest.approx(kept, rel=1e-6)


def test_spacer_gap_and_the_taper_of_its_seats():
    """Sawn 1.6, closed 0.45: 1.15 is open already; of the other 7.35 the heat keeps 0.83."""
    spacer = 1.6 + 7.35 / 0.83
    assert heat_set.spacer_for(8.5, 1.6, 0.45, 0.83) == pytest.approx(spacer, **PENCIL)
    assert heat_set.gap_from_spacer(spacer, 1.6, 0.45, 0.83) == pytest.approx(8.5, **PENCIL)
    # 2 pi of turn while it opens by 3 pi r: 9.7 and 40.1.
    expected = 9.7 * 2.0 / (3.0 * 40.1) * 180.0 / math.pi
    assert heat_set.spacer_taper(9.7, 40.1) == pytest.approx(expected, **PENCIL)


def test_stress_on_the_former():
    """E a/2 of the change of curvature, at the peak, and the pull of the former inside."""
    even = IRON * 3.4 / 2.0 * (1.0 / 40.1 - 1.0 / 42.3)
    expected = even / SINE * (1.0 + 3.4 / (2.0 * 42.3))
    assert heat_set.forming_stress(40.1, 42.3, WALL, IRON) == pytest.approx(expected, **PENCIL)
