"""Opening, freeing and pinching a plain ring against the elastica, a beam that bends without limit.

The half ring is integrated exactly as it lies by scipy's boundary value solver; its free curvature
is that of a ring of uniform wall pressure, 1/r*(1 - K*(1 + cos phi)). Radius 1, E*I 1, no stretch.
"""

import math

import numpy as np
import pytest
from scipy.integrate import quad, solve_bvp, solve_ivp
from scipy.optimize import brentq, minimize_scalar

from ringwright.core.ring import spring

BORE = 100.0


def free_curvature(arc, k):
    return 1.0 - k * (1.0 + np.cos(arc))


def pulled(k, gap):
    """The half ring, its ends pulled apart to `gap`, in radii: solution of x, y, slope, moment."""

    def along(arc, state, force):
        x, y, slope, moment = state
        bent = free_curvature(arc, k) - moment
        return np.vstack([np.cos(slope), np.sin(slope), bent, -force[0] * np.sin(slope)])

    def ends(back, tip, force):
        return np.array([back[0], back[1], back[2], tip[3], tip[0] - 0.5 * gap])

    arc = np.linspace(0.0, math.pi, 200)
    guess = np.vstack([np.sin(arc), 1.0 - np.cos(arc), arc, 0.0 * arc])
    found = solve_bvp(along, ends, arc, guess, p=[0.0], tol=1e-8, max_nodes=20000)
    assert found.success
    return found


def clears(found, thickness):
    """Radius of the largest circle that fits in the bore of the pulled ring, both in radii."""
    x, y, slope, _ = found.sol(np.linspace(0.0, math.pi, 1001))
    x, y = x - 0.5 * thickness * np.sin(slope), y + 0.5 * thickness * np.cos(slope)
    best = minimize_scalar(
        lambda height: -np.hypot(x, y - height).min(), bounds=(0.3, 1.7), method="bounded"
    )
    return -best.fun


@pytest.mark.parametrize("k", [1e-3, 0.02, 0.055, 0.2, 0.45])
def test_free_gap_is_the_distance_between_the_ends_of_the_free_strip(k):
    """Walk the free strip from its back, by its curvature alone."""

    def along(arc, state):
        return [math.cos(state[2]), math.sin(state[2]), free_curvature(arc, k)]

    walked = solve_ivp(along, (0.0, math.pi), [0.0, 0.0, 0.0], rtol=1e-12, atol=1e-13).y
    assert spring.gap_of_springiness(k, 48.0) == pytest.approx(96.0 * walked[0, -1], rel=1e-10)
    series = 3.0 * math.pi * k * (1.0 + 5.0 * k / 6.0 - 1.15882 * k * k)
    if k <= 0.055:
        assert series == pytest.approx(2.0 * walked[0, -1], rel=1.5e-4)


def test_third_term_of_the_series():
    """The mechanics prints 1.2 for it."""
    term = quad(lambda phi: math.sin(phi) * (phi + math.sin(phi)) ** 3, 0.0, math.pi)[0]
    assert term / 6.0 / (1.5 * math.pi) == pytest.approx(1.159, abs=0.0005)


# Ratio d1/a1, gap m over bore, radial piston clearance over thickness.
OPENINGS = [
    (15.0, 0.06, 0.0), (15.0, 0.12, 0.3), (20.0, 0.0, 0.1), (25.0, 0.0, 0.0), (25.0, 0.06, 0.05),
    (25.0, 0.12, 0.1), (30.0, 0.2, 0.3), (40.0, 0.0, 0.0), (40.0, 0.12, 0.1), (50.0, 0.06, 0.0),
]  # fmt: skip


@pytest.mark.parametrize(("ratio", "gap_share", "spared"), OPENINGS)
def test_opening_that_clears_the_piston_and_its_stress(ratio, gap_share, spared):
    thickness, modulus = BORE / ratio, 1e5
    radius = 0.5 * (BORE - thickness)
    gap, clearance = gap_share * BORE, spared * thickness
    k = spring.springiness_of_gap(gap, radius)
    piston = 0.5 * BORE - clearance
    need = brentq(
        lambda g: clears(pulled(k, g / radius), thickness / radius) * radius - piston,
        max(gap, 3.0 * thickness),
        14.0 * thickness,
        xtol=1e-3,
    )
    found = spring.opening_to_clear(thickness, BORE, gap, clearance)
    assert found == pytest.approx(need, rel=5e-3)
    # Bending at the back, the bar's curvature there and the pull along it: tension inside.
    path = pulled(k, need / radius)
    skin = 0.5 * modulus * thickness / radius * abs(path.sol(0.0)[3])
    inside = skin * (1.0 + 2.0 * thickness / (3.0 * (BORE - thickness)))
    inside += abs(path.p[0]) * modulus * thickness**2 / (12.0 * radius**2)
    stress = spring.opening_stress(need, gap, BORE, thickness, modulus)
    assert abs(stress) == pytest.approx(inside, rel=5e-3)


@pytest.mark.parametrize(("ratio", "books"), [(15.0, 7.5), (25.0, 8.1), (40.0, 8.5)])
def test_opening_without_clearance_is_about_the_eight_thicknesses_of_the_books(ratio, books):
    found = spring.opening_to_clear(BORE / ratio, BORE, 0.0, 0.0) * ratio / BORE
    assert found == pytest.approx(books, abs=0.05)


@pytest.mark.parametrize("k", [1e-4, 0.02, 0.055])
def test_two_thumbs_close_the_gap(k):
    """Forces where the ring is widest; its part beyond stays as free."""

    def along(part, state, unknown):
        force, place = unknown
        x, y, slope, moment, far_x, far_slope = state
        near = np.vstack(
            [
                np.cos(slope),
                np.sin(slope),
                free_curvature(part * place, k) + moment,
                -force * np.sin(slope),
            ]
        )
        rest = math.pi - place
        far = np.vstack([np.cos(far_slope), free_curvature(place + part * rest, k)])
        return np.vstack([near * place, far * rest])

    def ends(back, end, unknown):
        return np.array(
            [back[0], back[1], back[2], end[3], end[2] - math.pi / 2.0]
            + [back[4] - end[0], back[5] - end[2], end[4]]
        )

    part = np.linspace(0.0, 1.0, 100)
    quarter = part * math.pi / 2.0
    guess = np.vstack(
        [np.sin(quarter), 1.0 - np.cos(quarter), quarter, 2.64 * k * np.cos(quarter)]
        + [np.cos(quarter), math.pi / 2.0 + quarter]
    )
    found = solve_bvp(along, ends, part, guess, p=[2.64 * k, math.pi / 2.0], tol=1e-9)
    assert found.success
    # K = p*h*r_o*r^2/(E*I) is Ft in these units.
    closing = spring.diametral_force(k).to_close_gap
    assert closing == pytest.approx(found.p[0], rel=5e-3)
    if k == 1e-4:
        assert closing == pytest.approx(found.p[0], rel=2e-5)


@pytest.mark.parametrize("gap_share", [0.01, 0.05, 0.1, 0.2])
def test_free_ring_is_wider_across_its_gap(gap_share):
    thickness = 4.0
    radius = 0.5 * (BORE - thickness)
    gap = gap_share * BORE
    k = spring.springiness_of_gap(gap, radius)
    arc = np.linspace(0.0, math.pi, 20001)
    slope = arc - k * (arc + np.sin(arc))
    step = arc[1] * radius
    x = np.concatenate([[0.0], np.cumsum(np.cos(0.5 * (slope[1:] + slope[:-1])))]) * step
    y = np.concatenate([[0.0], np.cumsum(np.sin(0.5 * (slope[1:] + slope[:-1])))]) * step
    wider = 2.0 * x.max() - y[-1]
    assert spring.free_ovality(gap, BORE, thickness) == pytest.approx(wider, rel=0.015)
    assert spring.free_ovality(1e-6, BORE, thickness) == pytest.approx(1e-6 / 6.0, rel=1e-6)
