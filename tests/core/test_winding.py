"""Turning through, grip, plugs and winding on: search against closed form, scale and monotony."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from ringwright.core.ring import winding

sides = st.floats(0.5, 20.0)


@given(sides, st.floats(0.2, 3.0), st.floats(10.0, 40.0), st.booleans())
def test_worst_of_bending_and_twist_along_the_turn(thickness, share, ratio, brittle):
    """Against a search over 20 001 places: principal stress s/2 + sqrt(s^2/4 + t^2), or Mises."""
    width, radius = share * thickness, 0.5 * ratio * thickness
    acts = winding.turning_through(3.0, radius, thickness, width, 1e5, 0.26, brittle)
    constant = winding.torsion_constant(thickness, width)
    end, middle = winding.passing_forces(3.0, radius, thickness, width, 1e5, 0.26, constant)
    stresses = winding.torsion_stress(radius, thickness, width)
    # The faces that look sideways are as long as the ring is thick; bending is largest there.
    sideways, radial = stresses if thickness >= width else stresses[::-1]
    inner = radial * (1.0 + (0.9 + 0.32 / share) / ratio)
    psi = np.linspace(0.0, 2.0 * math.pi, 20001)
    beyond = np.where(psi > math.pi, middle, 0.0)
    bending = 6.0 * radius * (end - beyond) * np.sin(psi) / (thickness * width**2)
    twist = end * (1.0 - np.cos(psi)) + beyond * (1.0 + np.cos(psi))
    worst = 0.0
    for s, shear in ((bending, sideways), (0.0 * psi, inner)):
        t = shear * twist
        principal = np.abs(s) / 2.0 + np.sqrt(s * s / 4.0 + t * t)
        worst = max(worst, (principal if brittle else np.sqrt(s * s + 3.0 * t * t)).max())
    assert acts.equivalent == pytest.approx(worst, rel=2e-4)


@given(sides, sides)
def test_torsion_does_not_mind_which_side_comes_first(one, other):
    assert winding.torsion_constant(one, other) == pytest.approx(
        winding.torsion_constant(other, one), rel=1e-12
    )
    long_side, short_side = winding.torsion_stress(1.0, one, other)
    assert long_side >= short_side * (1.0 - 1e-6)
    assert (long_side, short_side) == pytest.approx(winding.torsion_stress(1.0, other, one))


@given(sides, sides, st.floats(0.2, 5.0))
def test_torsion_scales(one, other, size):
    constant = winding.torsion_constant(one, other)
    assert winding.torsion_constant(size * one, size * other) == pytest.approx(
        constant * size**4, rel=1e-12
    )
    stress = winding.torsion_stress(7.0, one, other)[0]
    larger = winding.torsion_stress(7.0, size * one, size * other)[0]
    assert larger == pytest.approx(stress / size**3, rel=1e-12)


@given(st.floats(10.0, 500.0), st.floats(15.0, 50.0), st.floats(0.4, 1.5), st.booleans())
def test_turning_through_scales_and_a_tighter_ring_suffers_more(radius, ratio, share, brittle):
    thickness = 2.0 * radius / ratio
    width = share * thickness
    blank = 2.2 * width
    acts = winding.turning_through(blank, radius, thickness, width, 1e5, 0.26, brittle)
    twice = winding.turning_through(
        2 * blank, 2 * radius, 2 * thickness, 2 * width, 1e5, 0.26, brittle
    )
    assert twice.force == pytest.approx(4.0 * acts.force, rel=1e-9)
    assert twice.equivalent == pytest.approx(acts.equivalent, rel=1e-9)
    wider = winding.turning_through(blank, 1.1 * radius, thickness, width, 1e5, 0.26, brittle)
    assert wider.equivalent < acts.equivalent
    assert acts.equivalent >= acts.bending * (1.0 - 1e-12)


@given(st.floats(0.0, 1.0), st.floats(0.0, 1.0))
def test_grip_grows_with_the_relief_and_starts_where_the_slit_is_used_up(one, other):
    less, more = sorted((one, other))

    def grip(relief):
        return winding.grip_force(9.0, 1.0, relief, 48.0, 4.0, 4.0, 1e5, 0.26)

    assert grip(less) <= grip(more)
    assert grip(1.0 / 9.0 - 1e-9) == 0.0
    assert grip(0.0) == 0.0
    # Fully relieved, each end is held a blank's width less the slit from where it would go.
    constant = winding.torsion_constant(4.0, 4.0)
    force = winding.passing_forces(8.0, 48.0, 4.0, 4.0, 1e5, 0.26, constant)[0]
    assert grip(1.0) == pytest.approx(force, rel=1e-12)


@given(st.floats(0.0, 0.4), st.floats(0.0, 0.4), st.floats(12.0, 60.0), st.floats(10.0, 900.0))
def test_more_spring_of_its_own_less_stress_on_the_plug(one, other, ratio, bore):
    less, more = sorted((one, other))
    thickness = bore / ratio
    slack = winding.plug_stress(less, bore, thickness, 1e5)
    stiff = winding.plug_stress(more, bore, thickness, 1e5)
    assert slack >= stiff >= 0.0
    larger = winding.plug_stress(less, 3.0 * bore, 3.0 * thickness, 1e5)
    assert larger == pytest.approx(slack, rel=1e-9)
    wound = [
        winding.wound_on_stress(plug, bore, thickness, thickness, held, 1e5, 0.26)
        for plug, held in ((slack, 0.0), (slack, thickness), (stiff, 0.0))
    ]
    assert wound[0].spread_out <= wound[0].hurried_low <= wound[0].hurried_high
    down = winding.wound_on_stress(
        slack, bore, thickness, thickness, 0.0, 1e5, 0.26, let_down=thickness
    )
    assert all(let_down > at_edge for let_down, at_edge in zip(down, wound[0], strict=True))
    # More grip asks for more, more spring of its own for less.
    assert wound[1].spread_out > wound[0].spread_out >= wound[2].spread_out


def test_the_two_branches_of_the_plug_meet():
    bore, thickness, modulus = 100.0, 4.0, 1e5
    even = winding.even_opening_stress(bore, thickness, modulus)
    half = 0.5 * even / (1.5 * 25.0 * 24.0)
    below = winding.plug_stress(half * (1.0 - 1e-9), bore, thickness, modulus)
    above = winding.plug_stress(half * (1.0 + 1e-9), bore, thickness, modulus)
    assert below == pytest.approx(above, rel=1e-3)
