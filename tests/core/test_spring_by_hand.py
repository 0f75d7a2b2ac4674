"""A plain ring's spring by pencil and by scipy: each formula again, with figures of no symmetry.

The ring: bore 83, wall 3.4, width 5.7, iron of 107 000 N/mm2; its neutral radius is 39.8.
"""

import math

import numpy as np
import pytest
from scipy.integrate import quad, solve_ivp
from scipy.optimize import brentq

from ringwright.core.problems import OutOfRange
from ringwright.core.ring import spring

BORE, WALL, WIDTH, IRON, RADIUS = 83.0, 3.4, 5.7, 107000.0, 39.8
PENCIL = {"rel": 1e-11}


def k_of(pressure):
    """K = p h r_o r^2/(E I): what the wall takes up of the ring's curvature."""
    inertia = WIDTH * WALL**3 / 12.0
    return pressure * WIDTH * (BORE / 2.0) * RADIUS**2 / (IRON * inertia)


def opened(k, radius):
    """Both ends away from the middle, by adaptive integration of the bent strip's direction."""
    path = quad(
        lambda a: math.cos(a - k * (a + math.sin(a))), 0.0, math.pi, epsabs=1e-12, epsrel=1e-12
    )
    return 2.0 * radius * path[0]


def pulled_to(gap, radius):
    return brentq(lambda k: opened(k, radius) - gap, -0.001, 0.4501, xtol=1e-15, rtol=1e-14)


def test_the_points_that_the_gap_is_summed_at_are_gauss_and_legendre_s():
    """numpy's rule, laid over half a turn; the lever is what the angle itself gives."""
    nodes, weights = np.polynomial.legendre.leggauss(12)
    half = math.pi / 2.0
    wanted = sorted(zip(half * (1.0 + nodes), half * weights, strict=True))
    found = sorted((angle, weight) for angle, _, weight in spring._half_turn_rule())
    assert np.array(found) == pytest.approx(np.array(wanted), rel=1e-13)
    assert sorted(spring._HALF_TURN) == sorted(spring._half_turn_rule())
    for angle, lever, _ in spring._HALF_TURN:
        assert lever == pytest.approx(angle + math.sin(angle), rel=1e-15)


def test_neutral_line_lies_in_the_middle_of_the_wall():
    """Outside 41.5, inside 38.1."""
    assert spring.neutral_radius(BORE, WALL) == pytest.approx((41.5 + 38.1) / 2.0, **PENCIL)


def test_springiness_is_the_moment_s_share_of_the_curvature():
    assert spring.springiness(0.063, BORE, WALL, IRON) == pytest.approx(k_of(0.063), **PENCIL)


@pytest.mark.parametrize("k", [0.0, 0.013, 0.21, 0.45])
def test_gap_of_a_springiness_up_to_the_very_limit(k):
    assert spring.gap_of_springiness(k, 37.3) == pytest.approx(opened(k, 37.3), abs=1e-9)


def test_a_back_bent_past_straight_is_refused_from_just_above():
    for k in (-1e-12, 0.4500001):
        with pytest.raises(OutOfRange):
            spring.gap_of_springiness(k, 37.3)


@pytest.mark.parametrize("gap", [0.0, 0.4, 13.7, 96.0, 172.0])
def test_springiness_behind_a_gap_by_bisection(gap):
    found = spring.springiness_of_gap(gap, 37.3)
    assert found == pytest.approx(pulled_to(gap, 37.3), abs=1e-13)


def test_a_gap_is_worked_just_under_the_largest_and_refused_just_above():
    largest = opened(0.45, 37.3)
    assert spring.springiness_of_gap(largest * (1.0 - 1e-7), 37.3) == pytest.approx(0.45, abs=1e-6)
    with pytest.raises(OutOfRange):
        spring.springiness_of_gap(largest * (1.0 + 1e-7), 37.3)
    with pytest.raises(OutOfRange):
        spring.springiness_of_gap(-1e-5, 37.3)
    # A rounding below none is none: 3 pi r K, with K of 5e-10.
    rounding = 3.0 * math.pi * 37.3 * -5e-10
    assert spring.springiness_of_gap(rounding, 37.3) == pytest.approx(-5e-10, rel=1e-3)


def test_gap_and_pressure_of_a_ring_by_its_moment():
    gap = opened(k_of(0.063), RADIUS)
    assert spring.gap_change(0.063, BORE, WALL, IRON) == pytest.approx(gap, rel=1e-10)
    assert spring.pressure_from_gap(gap, BORE, WALL, IRON) == pytest.approx(0.063, rel=1e-9)
    # 12.8 mm: K by bisection, then p = K E I/(h r_o r^2).
    pressure = pulled_to(12.8, RADIUS) / k_of(1.0)
    assert spring.pressure_from_gap(12.8, BORE, WALL, IRON) == pytest.approx(pressure, rel=1e-9)


def test_book_form_of_the_gap():
    """9 pi/4 p d (d - a)^3/(E a^3)."""
    book = 9.0 * math.pi / 4.0 * 0.063 * 83.0 * 79.6**3 / (107000.0 * 3.4**3)
    assert spring.first_order_gap_change(0.063, BORE, WALL, IRON) == pytest.approx(book, **PENCIL)


def test_stress_in_the_bore_outside_and_inside():
    """d/a = 25, p = 0.06: 3 p d/a = 4.5, times 24, 23 and 25."""
    found = spring.closed_stress(0.06, 90.0, 3.6)
    assert found == pytest.approx((108.0, 103.5, 112.5), **PENCIL)
    assert (found.nominal, found.tension, found.compression) == tuple(found)


def test_forces_of_band_and_thumbs():
    """Band: 0.07 x 4.2 x 83/2. Thumbs: 6 pi/(4 + pi) and 1 + 4/pi of it: 2.6394 and 2.2732."""
    assert spring.tangential_force(0.07, 83.0, 4.2) == pytest.approx(12.201, **PENCIL)
    thumbs = spring.diametral_force(12.201)
    assert thumbs.to_close_gap == pytest.approx(12.201 * 2.6394, rel=2e-5)
    assert thumbs.to_bore_size == pytest.approx(12.201 * 2.2732, rel=2e-5)


def test_opening_that_clears_the_piston_is_worked_as_its_method_prints_it():
    """D = 25, a = 3.6, c = 0.27, m = 9.5."""
    size = 25.0
    clear = (3.0 * math.pi - 14.1 * size**-0.729) * (3.6 - 0.27)
    clear *= (1.0 + 1.17 * size**-0.7 * 0.27 / 3.6) * (1.0 + 0.021 * 5.0 * 9.5 / 90.0)
    assert spring.opening_to_clear(3.6, 90.0, 9.5, 0.27) == pytest.approx(clear, **PENCIL)


def test_stress_pulled_open_is_worked_as_its_method_prints_it():
    """4 E a (g - m)/(3 pi (d - a)^2); the bar's curvature adds 5/6 of a/(d - a); the deflection."""
    book = 4.0 * IRON * 3.4 * (27.1 - 9.5) / (3.0 * math.pi * 79.6**2)
    found = spring.nominal_opening_stress(27.1, 9.5, BORE, WALL, IRON)
    assert found == pytest.approx(book, **PENCIL)
    whole = book * (1.0 + 5.0 / 6.0 * 3.4 / 79.6) / (1.0 + 0.30 * (27.1 + 9.5 / 2.0) / 83.0)
    found = spring.opening_stress(27.1, 9.5, BORE, WALL, IRON)
    assert found == pytest.approx(whole, **PENCIL)
    assert found > 0.0 > spring.opening_stress(9.4, 9.5, BORE, WALL, IRON)


def turned_and_walked(k):
    """Places of the free strip of radius 1, from its back to a tip, by scipy's solver."""

    def step(a, _):
        direction = a - k * (a + math.sin(a))
        return (math.sin(direction), math.cos(direction))

    places = np.linspace(0.0, math.pi, 4001)
    return solve_ivp(step, (0.0, math.pi), (0.0, 0.0), t_eval=places, rtol=1e-10, atol=1e-12).y


@pytest.mark.parametrize("k", [0.004, 0.02, 0.05])
def test_a_free_ring_is_wider_across_than_along_within_a_hundredth(k):
    along, across = turned_and_walked(k)
    wider = 2.0 * across.max() - (along.max() - along.min())
    gap = opened(k, 1.0)
    # m/6 and two thirds of m/r more in the bracket: a wall as thin as paper on a radius of 1.
    assert spring.free_ovality(gap, 2.0001, 0.0001) == pytest.approx(wider, rel=0.0101)


def test_ovality_of_a_ring():
    """m = 11, r = 39.8: 11/6 (1 + 0.66 x 11/39.8)."""
    expected = 11.0 / 6.0 * (1.0 + 7.26 / 39.8)
    assert spring.free_ovality(11.0, BORE, WALL) == pytest.approx(expected, **PENCIL)


def test_a_gap_read_at_the_outer_edge():
    """1 + 2/3 a/(d - a): 2 x 3.4/(3 x 79.6) more."""
    expected = 1.0 + 6.8 / 238.8
    assert spring.outer_edge_gap_factor(BORE, WALL) == pytest.approx(expected, **PENCIL)
