"""Free shapes told as a moment, by hand; the curve behind radii, curved by its differences."""

import math

import numpy as np
import pytest
from scipy.optimize import brentq

from ringwright.core.problems import InputProblem
from ringwright.core.wall import free_shape

RADIUS, THICKNESS = 47.0, 4.4
MEAN = 51.3


def test_even_pressure_is_nothing_at_the_ends_and_twice_at_the_back():
    """0.031*47 = 1.457: half of it at 60 degrees, all at 90, twice at 180."""
    found = free_shape.uniform(0.031, RADIUS, 13, math.pi / 6.0)
    wanted = {0: 0.0, 2: 0.7285, 3: 1.457, 6: 2.914, 9: 1.457, 10: 0.7285, 12: 0.0}
    assert len(found) == 13
    for at, moment in wanted.items():
        assert found[at] == pytest.approx(moment, abs=1e-12)


def test_a_round_arc_gives_up_the_same_everywhere():
    """1/47 - 1/48.41 = 6.197e-4, over 47^2: 1.369 mm."""
    found = free_shape.round_arc(1.0 / 47.0 - 1.0 / 48.41, RADIUS, 5)
    assert found == pytest.approx([47.0 - 47.0**2 / 48.41] * 5, rel=1e-12)


@pytest.mark.parametrize("turns", [1, 2])
def test_light_tight_it_falls_to_nothing_over_the_slack_length(turns):
    """The slack length is the root of sin b - sin(2 b)/4 - b/2."""
    slack = brentq(lambda b: math.sin(b) - 0.25 * math.sin(2.0 * b) - 0.5 * b, 1.5, 2.5)
    count = 360 * turns
    step = 2.0 * math.pi / 360.0
    found = free_shape.light_tight(6e-4, RADIUS, count + 1, step)
    size = 6e-4 * 47.0 * 47.0
    assert len(found) == count + 1
    for i, moment in enumerate(found):
        psi = min(i, count - i) * step
        share = 1.0 if psi >= slack else math.sin(psi) / math.sin(slack)
        assert moment == pytest.approx(size * share, rel=1e-9, abs=1e-12)


# --- radii ---


def wave(order, span, phi):
    """w with w'' + w = cos(order pi phi/span), nil and flat where that is 1 is added to cosines."""
    nu = order * math.pi / span
    if abs(nu - 1.0) < 1e-9:
        return 0.5 * phi * np.sin(phi)
    return np.cos(nu * phi) / (1.0 - nu * nu)


def rho(phi, span, sizes, shift=(0.0, 0.0)):
    found = MEAN + shift[0] * np.cos(phi) + shift[1] * np.sin(phi)
    for order, size in sizes.items():
        found = found + size * wave(order, span, phi)
    return found


def moment_of(span, sizes, shift, nodes):
    """r - r^2*curvature at equal lengths, from the curve's points and their differences."""
    phi = np.linspace(0.0, span, 8001)
    h = 1e-3

    def point(at):
        return rho(at, span, sizes, shift) * np.exp(1j * at)

    here, before, after = point(phi), point(phi - h), point(phi + h)
    speed = (after - before) / (2.0 * h)
    bend = (after - 2.0 * here + before) / h**2
    curvature = (np.conj(speed) * bend).imag / np.abs(speed) ** 3
    pieces = 0.5 * (np.abs(speed[1:]) + np.abs(speed[:-1])) * (phi[1] - phi[0])
    length = np.concatenate(([0.0], np.cumsum(pieces)))
    places = np.linspace(0.0, length[-1], nodes)
    return RADIUS - RADIUS**2 * np.interp(places, length, curvature)


def read(count, span, sizes, shift=(0.0, 0.0), turns=1, nodes=181, begin=0.0):
    angles = np.linspace(0.0, span, count)
    radii = rho(angles, span, sizes, shift) + 0.5 * THICKNESS
    rows = [(begin + math.degrees(a), float(r)) for a, r in zip(angles, radii, strict=True)]
    return free_shape.measured(rows, THICKNESS, RADIUS, turns, nodes)


@pytest.mark.parametrize(
    ("turns", "span"),
    # At the whole turn the second wave, at two the fourth is the one that grows with the angle.
    [(1, 5.9), (1, 2.0 * math.pi), (2, 12.3), (2, 4.0 * math.pi)],
)
def test_the_curvature_is_that_of_the_curve_through_the_radii(turns, span):
    sizes = {0: 0.31, 1: -0.23, 2: 0.17, 3: 0.13, 4: -0.11, 5: 0.07}
    shift = (0.4, -0.7)
    found = read(61 * turns, span, sizes, shift, turns, 181, begin=20.0)
    assert found == pytest.approx(moment_of(span, sizes, shift, 181).tolist(), abs=2e-3)
    found = read(61 * turns, span, {0: 0.9, 2: 0.2, 4: 0.1}, shift, turns, 721)
    wanted = moment_of(span, {0: 0.9, 2: 0.2, 4: 0.1}, shift, 721)
    assert found == pytest.approx(wanted.tolist(), abs=1e-4)


@pytest.mark.parametrize("nu", [0.0, 0.3, 0.9999, 1.0, 1.00002, 1.7, 3.2])
def test_a_wave_of_curvature_bulges_so_that_bending_gives_it_back(nu):
    """w'' + w = cos(nu phi), and w' is the slope of w."""
    for phi in (0.4, 1.9, 3.3, 5.8):
        w, slope, bend = free_shape._bulge(nu, phi)
        size = 1.0 + abs(w)
        assert bend + w == pytest.approx(math.cos(nu * phi), abs=1e-9 * size)
        before, after = (free_shape._bulge(nu, phi + d) for d in (-1e-5, 1e-5))
        assert slope == pytest.approx((after[0] - before[0]) / 2e-5, abs=1e-8 * size)
        assert bend == pytest.approx((after[1] - before[1]) / 2e-5, abs=1e-8 * size)


@pytest.mark.parametrize(
    ("count", "terms"),
    # One term for every three readings, less one, and six at the most.
    [(9, 2), (11, 2), (12, 3), (15, 4), (18, 5), (20, 5), (21, 6), (40, 6)],
)
def test_as_many_waves_as_readings_allow(count, terms):
    span = 6.1
    last, beyond = {terms - 1: 0.3}, {terms: 0.3}
    assert read(count, span, last) == pytest.approx(
        moment_of(span, last, (0.0, 0.0), 181).tolist(), abs=1e-3
    )
    off = np.array(read(count, span, beyond)) - moment_of(span, beyond, (0.0, 0.0), 181)
    assert np.abs(off).max() > 0.1


def ring(count, span, turns=1, begin=0.0):
    rows = [(begin + span * i / (count - 1), 52.0) for i in range(count)]
    return free_shape.measured(rows, THICKNESS, RADIUS, turns, 25)


@pytest.mark.parametrize("turns", [1, 2])
def test_radii_go_round_from_end_to_end(turns):
    """Three quarters of the way at least, and a thousandth beyond all of it at most."""
    whole = 360.0 * turns
    for span in (0.7501 * whole, whole, 1.0009 * whole):
        assert len(ring(9 * turns, span, turns)) == 25
    for span in (0.7499 * whole, 1.0011 * whole):
        with pytest.raises(InputProblem) as refused:
            ring(9 * turns, span, turns, begin=40.0)
        (fault,) = refused.value.faults
        assert (fault.path, fault.code) == (("free_shape",), "spread")
        assert "%d degrees" % whole in fault.remedy


def test_eight_radii_or_one_angle_twice_are_refused():
    assert ring(9, 350.0)
    with pytest.raises(InputProblem):
        ring(8, 350.0)
    rows = [(40.0 * i, 52.0) for i in range(10)]
    assert free_shape.measured(rows, THICKNESS, RADIUS, 1, 25)
    for at in (1, 5, 9):
        twice = list(rows)
        twice[at] = (rows[at - 1][0], 52.0)
        with pytest.raises(InputProblem) as refused:
            free_shape.measured(twice, THICKNESS, RADIUS, 1, 25)
        assert "larger than the last" in refused.value.faults[0].message


def test_radii_that_leave_most_of_the_ring_out_are_refused():
    """Many near the ends, none between: the waves cannot be told from one another."""
    angles = [0.002 * i for i in range(20)] + [350.0 + 0.002 * i for i in range(20)]
    with pytest.raises(InputProblem) as refused:
        free_shape.measured([(a, 52.0) for a in angles], THICKNESS, RADIUS, 1, 25)
    (fault,) = refused.value.faults
    assert "unevenly spaced" in fault.message
