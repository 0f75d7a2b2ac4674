"""Free shapes: a ring drawn by exact integration of its curvature is read back from its radii."""

import math

import numpy as np
import pytest
from scipy.integrate import cumulative_trapezoid

from ringwright.core import calculations
from ringwright.core.problems import InputProblem
from ringwright.core.ring import spring
from ringwright.core.wall import free_shape
from ringwright.core.wall.wall_contact import Ring, bear

BORE, THICKNESS, MODULUS = 100.0, 4.0, 100000.0
RADIUS = 48.0


def drawn(given_up, turns, count, off_centre=(0.0, 0.0)):
    """(angle, outside radius) of a free ring whose curvature is (1 - given_up(psi))/r."""
    s = np.linspace(0.0, 2.0 * math.pi * turns * RADIUS, 40001)
    psi = s / RADIUS
    slope = cumulative_trapezoid((1.0 - given_up(psi)) / RADIUS, s, initial=0.0)
    x = cumulative_trapezoid(np.cos(slope), s, initial=0.0)
    y = cumulative_trapezoid(np.sin(slope), s, initial=0.0)
    x += 0.5 * THICKNESS * np.sin(slope)
    y -= 0.5 * THICKNESS * np.cos(slope)
    x -= 0.5 * (x.min() + x.max()) + off_centre[0]
    y -= 0.5 * (y.min() + y.max()) + off_centre[1]
    angles = np.unwrap(np.arctan2(y, x))
    angles -= angles[0]
    taken = np.linspace(0.0, angles[-1], count)
    radii = np.interp(taken, angles, np.hypot(x, y))
    return [(math.degrees(a), float(r)) for a, r in zip(taken, radii, strict=True)]


@pytest.mark.parametrize("turns", [1, 2])
@pytest.mark.parametrize("off_centre", [(0.0, 0.0), (0.6, -0.4)])
def test_a_round_free_ring_is_read_back(turns, off_centre):
    readings = drawn(lambda psi: 0.02 + 0.0 * psi, turns, 24 * turns, off_centre)
    moment = free_shape.measured(readings, THICKNESS, RADIUS, turns, 181)
    assert moment == pytest.approx([0.02 * RADIUS] * 181, abs=0.03 * 0.02 * RADIUS)


def test_a_ring_drawn_for_uniform_pressure_presses_uniformly():
    pressure = 0.06
    k = spring.springiness(pressure, BORE, THICKNESS, MODULUS)
    readings = drawn(lambda psi: k * (1.0 - np.cos(psi)), 1, 36)
    moment = free_shape.measured(readings, THICKNESS, RADIUS, 1, 361)
    borne = bear(Ring(BORE, THICKNESS, 4.0, MODULUS, 1, 0.0, 0.0), moment)
    assert borne.mean_pressure == pytest.approx(pressure, rel=0.02)
    assert borne.contact_share > 0.9
    assert borne.widest_light < 0.002


@pytest.mark.parametrize(
    ("span", "wave"),
    [
        (350.0, lambda phi, nu: np.cos(nu * phi) / (1.0 - nu * nu)),
        # Over a full turn the second wave is the one that the circle answers with phi sin(phi)/2.
        (360.0, lambda phi, nu: 0.5 * phi * np.sin(phi)),
    ],
)
@pytest.mark.parametrize("size", [0.5, 4.0])
def test_the_curvature_is_that_of_the_curve_itself(span, wave, size):
    """Against the curvature of the drawn curve by numpy's differences, slope and all."""

    def rho(phi):
        return 50.0 + size * wave(phi, 3.0 * math.pi / math.radians(span))

    taken = np.radians(np.linspace(0.0, span, 61))
    readings = [(math.degrees(p), float(rho(p)) + 0.5 * THICKNESS) for p in taken]
    found = free_shape.measured(readings, THICKNESS, RADIUS, 1, 181)

    phi = np.linspace(0.0, math.radians(span), 20001)
    x, y = rho(phi) * np.cos(phi), rho(phi) * np.sin(phi)
    x1, y1 = np.gradient(x, phi), np.gradient(y, phi)
    x2, y2 = np.gradient(x1, phi), np.gradient(y1, phi)
    curvature = (x1 * y2 - y1 * x2) / (x1**2 + y1**2) ** 1.5
    length = cumulative_trapezoid(np.hypot(x1, y1), phi, initial=0.0)
    wanted = np.interp(np.linspace(0.0, length[-1], 181), length, curvature)
    expected = RADIUS - RADIUS * RADIUS * wanted
    # The ends of the drawn curve have no differences on both sides.
    assert found[2:-2] == pytest.approx(expected[2:-2], abs=2e-3 * size)


def test_errors_of_reading_do_little():
    """Radii within 0.01 mm give pressures within a tenth."""
    chance = np.random.default_rng(5)
    readings = [
        (angle, radius + chance.normal(0.0, 0.005))
        for angle, radius in drawn(lambda psi: 0.02 + 0.0 * psi, 1, 36)
    ]
    moment = free_shape.measured(readings, THICKNESS, RADIUS, 1, 361)
    borne = bear(Ring(BORE, THICKNESS, 4.0, MODULUS, 1, 0.0, 0.0), moment)
    exact = bear(Ring(BORE, THICKNESS, 4.0, MODULUS, 1, 0.0, 0.0), [0.02 * RADIUS] * 361)
    assert borne.mean_pressure == pytest.approx(exact.mean_pressure, rel=0.1)


def test_the_table_stands_in_for_a_way_of_setting():
    rows = [{"angle": a, "radius": r} for a, r in drawn(lambda psi: 0.02 + 0.0 * psi, 1, 24)]
    request = {
        "bore": BORE,
        "ring_type": "plain",
        "radial_thickness": THICKNESS,
        "ring_width": 4.0,
        "modulus": MODULUS,
        "free_shape": rows,
    }
    answer = calculations.run("wall-pressure", request)
    contact = MODULUS * THICKNESS**3 * 0.02 / RADIUS / (12.0 * RADIUS * 50.0)
    assert answer["figures"]["mean_wall_pressure"]["value"] == pytest.approx(
        0.9 * contact, rel=0.04
    )
    assert not [row for row in answer["chosen"] if row["input"] == "setting"]
    with pytest.raises(InputProblem) as refused:
        calculations.run("wall-pressure", dict(request, setting="bound"))
    assert refused.value.faults[0].path == ("setting",)


def test_a_table_that_does_not_go_round_is_refused():
    rows = [{"angle": 10.0 * i, "radius": 52.0} for i in range(12)]
    with pytest.raises(InputProblem) as refused:
        calculations.run("wall-pressure", {"bore": BORE, "ring_type": "plain", "free_shape": rows})
    assert refused.value.faults[0].path == ("free_shape",)
