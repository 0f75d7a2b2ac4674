"""The bore as lobes about a circle: read back from radii, and what it asks of a ring, by hand."""

import math

import numpy as np
import pytest

from ringwright.core.problems import InputProblem
from ringwright.core.wall import bore_shape
from ringwright.core.wall.bore_shape import Harmonic, Shape

BORE = 96.0
# An oval and three lobes, 0.2 mm over size.
LOBES = {2: (0.11, 35.0), 3: (0.04, 20.0)}


def radius(angle):
    theta = math.radians(angle)
    found = 48.2
    for order, (size, phase) in LOBES.items():
        found += size * math.cos(order * (theta - math.radians(phase)))
    return found


def readings(count, of=radius):
    angles = [360.0 * i / count for i in range(count)]
    return angles, [of(angle) for angle in angles]


def read(count):
    return bore_shape.shape_of_readings(*readings(count), BORE)


def fault(given, bore=BORE):
    with pytest.raises(InputProblem) as refused:
        bore_shape.shape_of(given, bore)
    (found,) = refused.value.faults
    return found


def rows(angles, radii):
    return [{"angle": a, "radius": r} for a, r in zip(angles, radii, strict=True)]


@pytest.mark.parametrize("count", [12, 18, 40])
def test_lobes_are_read_back_from_radii(count):
    shape = read(count)
    assert shape.larger == pytest.approx(0.2, abs=1e-9)
    found = {h.order: h for h in shape.harmonics}
    for order, (size, phase) in LOBES.items():
        assert found[order].amplitude == pytest.approx(size, abs=1e-9)
        assert found[order].phase == pytest.approx(phase, abs=5e-6)
    assert all(h.amplitude < 1e-9 for h in shape.harmonics if h.order > 3)
    assert shape.misfit == pytest.approx(0.0, abs=1e-9)


@pytest.mark.parametrize(
    ("count", "orders"),
    # Three readings for two unknowns: 1 + 2 for the middle, and two more for each order.
    [(6, 0), (7, 0), (8, 1), (10, 1), (11, 2), (13, 2), (14, 3), (37, 10), (38, 11), (90, 11)],
)
def test_as_many_orders_as_two_unknowns_for_three_readings(count, orders):
    assert [h.order for h in read(count).harmonics] == list(range(2, 2 + orders))


@pytest.mark.parametrize("count", [8, 12, 40])
def test_a_round_bore_is_round_wherever_it_was_gauged_from(count):
    """A circle of 48.2 mm gauged from 1.5 mm off its middle, each radius by the cosine rule.

    As radii about that place it would look oval by 1.5^2/(4*48) = 0.012 mm.
    """
    off, way = 1.5, 25.0

    def seen(angle):
        theta = math.radians(angle - way)
        return off * math.cos(theta) + math.sqrt(48.2**2 - (off * math.sin(theta)) ** 2)

    shape = bore_shape.shape_of_readings(*readings(count, seen), BORE)
    assert shape.larger == pytest.approx(0.2, abs=1e-5)
    assert all(h.amplitude < 1e-5 for h in shape.harmonics)
    assert shape.misfit < 1e-5


def test_what_no_lobe_follows_is_told_as_misfit():
    """Sixteen readings by turns 0.03 out and in: order 8, beyond the three or four that are fitted.

    All of it is left, 0.03 root mean square.
    """
    shape = bore_shape.shape_of_readings(
        [22.5 * i for i in range(16)], [48.0 + 0.03 * (-1) ** i for i in range(16)], BORE
    )
    assert shape.misfit == pytest.approx(0.03, rel=1e-9)
    assert shape.larger == pytest.approx(0.0, abs=1e-12)


def test_uneven_angles_are_fitted_by_least_squares():
    """Against numpy's, with noise that no lobe follows; a micrometre off the middle is nothing."""
    angles = [0.0, 17.0, 44.0, 81.0, 100.0, 139.0, 170.0, 204.0, 233.0, 260.0, 291.0, 338.0]
    noise = [0.01, -0.02, 0.03, 0.0, -0.01, 0.02, -0.03, 0.01, 0.0, 0.02, -0.02, 0.01]
    radii = [radius(a) + n for a, n in zip(angles, noise, strict=True)]
    theta = np.radians(angles)
    columns = [np.ones(12)]
    for n in (1, 2, 3):
        columns += [np.cos(n * theta), np.sin(n * theta)]
    matrix = np.array(columns).T
    wanted = np.linalg.lstsq(matrix, np.array(radii) - 48.0, rcond=None)[0]
    left = np.array(radii) - 48.0 - matrix @ wanted
    shape = bore_shape.shape_of_readings(angles, radii, BORE)
    assert shape.larger == pytest.approx(wanted[0], abs=5e-6)
    for h in shape.harmonics:
        a, b = wanted[2 * h.order - 1], wanted[2 * h.order]
        assert h.amplitude == pytest.approx(math.hypot(a, b), abs=5e-6)
        assert h.order * h.phase == pytest.approx(math.degrees(math.atan2(b, a)), abs=0.01)
    assert shape.misfit == pytest.approx(math.sqrt((left**2).mean()), abs=5e-6)


def test_a_bore_is_round_as_given_as_lobes_or_as_readings():
    assert bore_shape.shape_of(None, BORE) == Shape(0.0, (), None)
    assert bore_shape.shape_of({}, BORE) == Shape(0.0, (), None)
    lobes = [{"order": 2, "amplitude": 0.03, "phase": 40.0}, {"order": 5, "amplitude": -0.01}]
    shape = bore_shape.shape_of({"harmonics": lobes}, BORE)
    assert shape == Shape(0.0, (Harmonic(2, 0.03, 40.0), Harmonic(5, -0.01, 0.0)), None)
    assert bore_shape.shape_of({"readings": rows(*readings(12))}, BORE) == read(12)
    both = fault({"harmonics": lobes, "readings": rows(*readings(12))})
    assert (both.path, both.code) == (("bore_shape", "readings"), "one-of")
    # An empty list is as good as none.
    assert bore_shape.shape_of({"harmonics": [], "readings": rows(*readings(12))}, BORE)


def test_lobes_of_more_than_a_twentieth_of_the_bore_are_a_slip():
    """4.8 of 96 mm: 2.5 and 2.3 together, the one of them inwards."""
    at_most = [{"order": 2, "amplitude": 2.5}, {"order": 3, "amplitude": -2.3}]
    assert len(bore_shape.shape_of({"harmonics": at_most}, BORE).harmonics) == 2
    more = [{"order": 2, "amplitude": 2.5}, {"order": 3, "amplitude": -2.31}]
    refused = fault({"harmonics": more})
    assert (refused.path, refused.code) == (("bore_shape", "harmonics"), "range")


@pytest.mark.parametrize("sign", [1.0, -1.0])
def test_readings_that_lie_a_twentieth_of_the_bore_off_are_a_slip(sign):
    angles, radii = readings(12)
    radii[7] = 48.0 + sign * 4.799
    assert bore_shape.shape_of({"readings": rows(angles, radii)}, BORE)
    radii[7] = 48.0 + sign * 4.801
    refused = fault({"readings": rows(angles, radii)})
    assert (refused.path, refused.code) == (("bore_shape", "readings"), "range")


def test_readings_of_part_of_the_bore_are_refused():
    angles = [2.0 * i for i in range(20)]
    refused = fault({"readings": rows(angles, [48.0] * 20)})
    assert (refused.path, refused.code) == (("bore_shape", "readings"), "spread")


def test_what_the_wall_asks_of_a_ring():
    """An oval of 0.11 with its length at 35 degrees asks 3*0.11 = 0.33 there and -0.33 across it;

    three lobes of 0.04, 8*0.04 = 0.32 at 20 degrees; a bore 0.2 over size 0.2 less everywhere.
    """
    shape = Shape(0.2, (Harmonic(2, 0.11, 35.0), Harmonic(3, 0.04, 20.0)), None)
    found = bore_shape.wall_moment(shape, [math.radians(a) for a in (35.0, 125.0, 80.0, 20.0)])
    assert found[0] == pytest.approx(0.33 + 0.32 * math.cos(math.radians(45.0)) - 0.2, rel=1e-9)
    assert found[1] == pytest.approx(-0.33 + 0.32 * math.cos(math.radians(315.0)) - 0.2, rel=1e-9)
    assert found[2] == pytest.approx(-0.32 - 0.2, rel=1e-9)
    assert found[3] == pytest.approx(0.33 * math.cos(math.radians(30.0)) + 0.32 - 0.2, rel=1e-9)
    assert bore_shape.wall_moment(Shape(0.0, (), None), [0.3, 0.4]) == [0.0, 0.0]


def test_pressure_that_follows_an_oval_or_three_lobes():
    """E a^3 (n^2 - 1)^2 U/(12 r_o r^3), 12*50*48^3 = 66 355 200: bore 100, ring 4, E 104 000.

    104000*64*9*0.03/66355200 = 0.0270833; three lobes 64/9 of that, inwards or outwards.
    """
    found = bore_shape.pressure_to_follow(2, 0.03, 100.0, 4.0, 104000.0)
    assert found == pytest.approx(0.0270833, rel=1e-5)
    three = bore_shape.pressure_to_follow(3, -0.03, 100.0, 4.0, 104000.0)
    assert three == pytest.approx(0.0270833 * 64.0 / 9.0, rel=1e-5)
