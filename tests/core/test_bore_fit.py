"""Readings of a gauge as size, ovality and lobes, against numpy's least squares on drawn bores.

A two-point gauge reads D_0 + 2 U_2 cos 2(theta - p_2) + 2 U_4 cos 4(theta - p_4), a three-point one
D_0 + 2 U_3 cos 3(theta - p_3): the readings here are made from these sums as written, the answers
come out of numpy.linalg with cosines and sines about direction 0.
"""

import math

import numpy as np
import pytest

from ringwright.core.measuring import bore_fit
from ringwright.core.measuring.bore_fit import THREE_POINT, TWO_POINT, Reading


def reads(theta, gauge, lobes, size=80.0):
    """What a gauge reads at theta [deg]. lobes: order -> (amplitude of the radius, phase)."""
    seen = (2, 4) if gauge == TWO_POINT else (3,)
    return size + sum(
        2.0 * u * math.cos(math.radians(n * (theta - phase)))
        for n, (u, phase) in lobes.items()
        if n in seen
    )


def taken(directions, lobes, gauge=TWO_POINT, height=10.0, off=None):
    off = [0.0] * len(directions) if off is None else off
    return [
        Reading(height, theta, reads(theta, gauge, lobes) + more, gauge)
        for theta, more in zip(directions, off, strict=True)
    ]


def by_numpy(readings, orders):
    """(unknowns, covariance of them for unit variance, root mean square left): D_0, then cosine and
    sine of each order, about direction 0."""
    theta = np.radians([r.direction for r in readings])
    two = np.array([r.gauge == TWO_POINT for r in readings])
    columns = [np.ones(len(readings))]
    for n in orders:
        sees = two if n != 3 else ~two
        columns += [np.cos(n * theta) * sees, np.sin(n * theta) * sees]
    rows = np.array(columns).T
    values = np.array([r.diameter for r in readings])
    found = np.linalg.lstsq(rows, values, rcond=None)[0]
    left = values - rows @ found
    return found, np.linalg.inv(rows.T @ rows), math.sqrt(np.mean(left**2))


def only(readings):
    (section,) = bore_fit.sections(readings)
    return section


LOBES = {2: (0.03, 25.0), 3: (0.02, 50.0), 4: (0.015, 70.0)}
SIX = (0.0, 30.0, 60.0, 90.0, 120.0, 150.0)
# Unlike each other, so that no sum of them is nought.
OFF = (0.004, -0.003, 0.001, 0.006, -0.005, 0.002, -0.001, 0.003)


def test_six_directions_of_a_two_point_gauge_settle_four_lobes():
    found = {h.order: h for h in only(taken(SIX, LOBES)).harmonics}
    assert sorted(found) == [2, 4]
    for order in (2, 4):
        assert found[order].amplitude == pytest.approx(LOBES[order][0], abs=1e-12)
        assert found[order].phase == pytest.approx(LOBES[order][1], abs=1e-6)


@pytest.mark.parametrize("directions", [SIX[:5], (0.0, 36.0, 72.0, 108.0, 144.0), SIX[:3]])
def test_fewer_than_six_are_fitted_by_an_oval_alone(directions):
    section = only(taken(directions, LOBES))
    expected, _, left = by_numpy(taken(directions, LOBES), (2,))
    assert [h.order for h in section.harmonics] == [2]
    assert section.diameter == pytest.approx(expected[0], abs=1e-10)
    assert section.ovality == pytest.approx(2.0 * math.hypot(*expected[1:]), abs=1e-10)
    assert section.misfit == pytest.approx(left, abs=1e-10)


@pytest.mark.parametrize("turned", [0.0, 7.0, 22.5, 100.0])
def test_noisy_readings_of_both_gauges_as_numpy_fits_them(turned):
    two = taken([turned + a for a in (*SIX, 75.0, 165.0)], LOBES, off=OFF)
    three = taken((0.0, 30.0, 60.0, 90.0, 200.0), LOBES, THREE_POINT, off=OFF[:5])
    section = only(two + three)
    found, inverse, left = by_numpy(two + three, (2, 3, 4))
    assert section.readings == 13
    assert section.diameter == pytest.approx(found[0], abs=1e-10)
    assert section.mean_factor == pytest.approx(math.sqrt(inverse[0, 0]), rel=1e-9)
    assert section.misfit == pytest.approx(left, rel=1e-8)
    for at, lobe in enumerate(section.harmonics):
        n = lobe.order
        c = complex(found[2 * at + 1], found[2 * at + 2])
        assert n == 2 + at
        assert lobe.amplitude == pytest.approx(0.5 * abs(c), abs=1e-10)
        # The same crest, whichever of them is named.
        away = math.degrees(math.atan2(c.imag, c.real)) - n * lobe.phase
        assert math.cos(math.radians(away)) == pytest.approx(1.0, abs=1e-12)
        assert 0.0 <= lobe.phase < 360.0 / n
    oval = complex(found[1], found[2])
    assert section.ovality == pytest.approx(2.0 * abs(oval), abs=1e-10)
    assert 0.0 <= section.direction < 180.0
    worst = 2.0 * math.sqrt(max(inverse[1, 1], inverse[2, 2]))
    assert section.ovality_factor == pytest.approx(worst, rel=1e-9)
    assert not section.aligned


@pytest.mark.parametrize(
    ("first", "turn"), [(0.0, 90.0), (20.0, 80.5), (20.0, 99.5), (200.0, 90.0)]
)
def test_two_directions_nearly_square_give_an_oval_along_the_first(first, turn):
    """D_0 + v cos 2 (theta - first) through two readings: v = (D_a - D_b)/(1 - cos 2 turn)."""
    readings = [Reading(0.0, first, 80.07, TWO_POINT), Reading(0.0, first + turn, 80.01, TWO_POINT)]
    section = only(readings)
    assert section.aligned
    v = 0.06 / (1.0 - math.cos(math.radians(2.0 * turn)))
    assert section.ovality == pytest.approx(2.0 * v, rel=1e-9)
    assert section.direction == pytest.approx(first % 180.0)
    assert section.diameter == pytest.approx(80.07 - v, abs=1e-10)
    # Of v, for unit errors of both readings.
    own = math.sqrt(2.0) / (1.0 - math.cos(math.radians(2.0 * turn)))
    assert section.ovality_factor == pytest.approx(2.0 * own, rel=1e-9)


@pytest.mark.parametrize("turn", [30.0, 79.0, 101.0])
def test_two_directions_far_from_square_tell_a_size_and_no_oval(turn):
    readings = [Reading(0.0, 20.0, 80.07, TWO_POINT), Reading(0.0, 20.0 + turn, 80.01, TWO_POINT)]
    section = only(readings)
    assert section.ovality is None
    assert section.ovality_factor is None
    assert not section.harmonics
    assert not section.aligned
    assert section.diameter == pytest.approx(80.04)
    assert section.misfit == pytest.approx(0.03)


@pytest.mark.parametrize(
    ("directions", "ovals"),
    [
        # A two-point gauge turned by half a turn reads the same chord.
        ((0.0, 1.0, 179.5, 180.5, 90.0), 1),
        # 8 degrees apart is the same place by eye, 12 degrees is another.
        ((0.0, 8.0, 90.0), 1),
        ((0.0, 12.0, 90.0), 1),
        ((3.0, 9.0, 93.0), 1),
        ((170.5, 45.0, 0.0), 0),
        ((169.5, 45.0, 0.0), 1),
        ((172.0, 0.0), 0),
        ((168.0, 40.0, 0.0), 1),
        ((0.0, 0.0, 180.0), 0),
    ],
)
def test_readings_at_one_place_are_one_direction(directions, ovals):
    section = only(taken(directions, LOBES))
    assert len(section.harmonics) == ovals
    square = 90.0 in directions or 93.0 in directions
    assert section.aligned == (square and 12.0 not in directions)


def test_three_directions_of_a_three_point_gauge_within_120_degrees_settle_three_lobes():
    three = taken((0.0, 40.0, 80.0), LOBES, THREE_POINT)
    (lobe,) = only(three).harmonics
    assert (lobe.order, lobe.amplitude) == (3, pytest.approx(0.02, abs=1e-12))
    assert lobe.phase == pytest.approx(50.0, abs=1e-6)
    assert only(three).ovality is None
    assert only(three).direction == 0.0
    # 120 degrees on, its feet stand where they stood; two places are too few.
    assert not only(taken((0.0, 120.0, 240.0, 40.0), LOBES, THREE_POINT)).harmonics
    # So does 9 degrees short of it, by eye; 11 degrees short is another.
    assert not only(taken((0.0, 50.0, 111.0), LOBES, THREE_POINT)).harmonics
    assert only(taken((0.0, 50.0, 109.0), LOBES, THREE_POINT)).harmonics


def test_heights_less_than_half_a_millimetre_apart_are_one():
    readings = [
        row._replace(height=height)
        for height in (50.0, 10.0, 10.4, 10.6, 50.5)
        for row in taken((0.0, 90.0), LOBES)
    ]
    found = bore_fit.sections(readings)
    assert [section.height for section in found] == [10.0, 10.6, 50.0]
    assert [section.readings for section in found][2] == 4


@pytest.mark.parametrize(
    "directions",
    [(0.0, 15.0, 30.0), (0.0, 20.0, 40.0), (0.0, 12.0, 24.0, 36.0, 48.0, 60.0), (0.0, 11.0, 90.0)],
)
def test_an_oval_that_would_be_the_gauge_s_error_is_not_told(directions):
    """Taken too close together three readings make any oval, ten times the error of one of them.

    numpy's covariance of the fit says what errors of one reading each term would carry: up to five
    it stands, beyond it the readings tell a size, or an oval and no more.
    """
    orders = (2, 4) if len(directions) > 5 else (2,)
    readings = taken(directions, LOBES, off=OFF[: len(directions)])
    while orders:
        found, inverse, left = by_numpy(readings, orders)
        errors = np.sqrt(np.diag(inverse))
        if errors.max() <= 5.0:
            break
        orders = orders[:-1]
    else:
        found, left = (
            [np.mean([r.diameter for r in readings])],
            np.std([r.diameter for r in readings]),
        )
    section = only(readings)
    assert tuple(h.order for h in section.harmonics) == orders
    assert section.diameter == pytest.approx(found[0], abs=1e-9)
    assert section.misfit == pytest.approx(left, rel=1e-6, abs=1e-9)


def test_with_the_size_known_from_the_other_gauge_fewer_directions_serve():
    """Three two-point readings within 40 degrees alone tell no oval; the same beside a three-point
    gauge's do, for that tells the size: numpy's errors are below two then."""
    close = taken((0.0, 20.0, 30.0), LOBES)
    three = taken((0.0, 30.0, 60.0, 90.0), LOBES, THREE_POINT)
    assert not only(close).harmonics
    found, inverse, _ = by_numpy(close + three, (2, 3))
    assert np.sqrt(np.diag(inverse)).max() < 2.0
    section = only(close + three)
    assert [h.order for h in section.harmonics] == [2, 3]
    assert section.ovality == pytest.approx(2.0 * math.hypot(*found[1:3]), rel=1e-9)


HEIGHTS = (5.0, 30.0, 62.0, 100.0, 140.0)
SIZES = (80.02, 80.005, 80.0, 80.011, 80.04)


@pytest.mark.parametrize("count", [2, 3, 4, 5])
def test_taper_and_bell_mouth_as_numpy_fits_them(count):
    """Through the mean sizes at each height; t goes from -1 at the least to 1 at the greatest."""
    readings = [
        row._replace(height=height, diameter=row.diameter + size - 80.0)
        for height, size in zip(HEIGHTS[:count], SIZES, strict=False)
        for row in taken((0.0, 45.0, 90.0, 135.0), {2: (0.03, 25.0)})
    ]
    # Where fewer are read, the mean is less sure; its factor is 1/sqrt(readings): one of the middle
    # heights is read in two directions.
    if count > 3:
        readings = [r for r in readings if r.height != 30.0 or r.direction in (0.0, 90.0)]
    sections = bore_fit.sections(readings)
    sizes = [section.diameter for section in sections]
    worst = max(1.0 / math.sqrt(section.readings) for section in sections)
    places = np.array(HEIGHTS[:count])
    t = (2.0 * places - places[0] - places[-1]) / (places[-1] - places[0])
    rows = np.vander(t, min(count, 3), increasing=True)
    found = np.linalg.lstsq(rows, sizes, rcond=None)[0]
    inverse = np.linalg.inv(rows.T @ rows)
    left = np.array(sizes) - rows @ found
    barrel = bore_fit.barrel(sections)
    assert barrel.diameter == pytest.approx(found[0], abs=1e-10)
    assert barrel.taper == pytest.approx(2.0 * found[1], abs=1e-10)
    assert barrel.taper_factor == pytest.approx(2.0 * worst * math.sqrt(inverse[1, 1]), rel=1e-9)
    assert barrel.misfit == pytest.approx(math.sqrt(np.mean(left**2)), abs=1e-10)
    if count == 2:
        assert (barrel.bell_mouth, barrel.bell_factor) == (None, None)
    else:
        assert barrel.bell_mouth == pytest.approx(found[2], abs=1e-10)
        assert barrel.bell_factor == pytest.approx(worst * math.sqrt(inverse[2, 2]), rel=1e-9)


def test_one_height_tells_its_size_and_no_more():
    """Four lobes read the same in four directions 45 degrees apart but for their sign, square to
    an oval: the size is the middle of the four."""
    readings = taken((0.0, 45.0, 90.0, 135.0), LOBES)
    barrel = bore_fit.barrel(bore_fit.sections(readings))
    assert barrel.diameter == pytest.approx(np.mean([r.diameter for r in readings]), abs=1e-10)
    assert barrel[1:] == (None, None, None, None, 0.0)
