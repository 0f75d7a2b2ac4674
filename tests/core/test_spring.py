"""Spring of a plain ring: inverses, scale and monotony over the range, and what is refused."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from ringwright.core.problems import OutOfRange
from ringwright.core.ring import spring

bores = st.floats(10.0, 1500.0)
ratios = st.floats(12.0, 60.0)
moduli = st.floats(5e4, 2.1e5)
springs = st.floats(1e-6, spring.LARGEST_SPRINGINESS * 0.999)
sizes = st.floats(0.05, 20.0)


def pressure_of(k, bore, thickness, modulus):
    return k / spring.springiness(1.0, bore, thickness, modulus)


@given(springs, bores, ratios, moduli)
def test_pressure_and_gap_are_each_other_s_inverse(k, bore, ratio, modulus):
    thickness = bore / ratio
    pressure = pressure_of(k, bore, thickness, modulus)
    gap = spring.gap_change(pressure, bore, thickness, modulus)
    back = spring.pressure_from_gap(gap, bore, thickness, modulus)
    assert back == pytest.approx(pressure, rel=1e-9)


@given(springs, bores, ratios, moduli, sizes)
def test_a_ring_twice_the_size_springs_twice_as_far_at_the_same_pressure_and_stress(
    k, bore, ratio, modulus, size
):
    thickness = bore / ratio
    pressure = pressure_of(k, bore, thickness, modulus)
    gap = spring.gap_change(pressure, bore, thickness, modulus)
    larger = spring.gap_change(pressure, bore * size, thickness * size, modulus)
    assert larger == pytest.approx(gap * size, rel=1e-12)
    assert spring.closed_stress(pressure, bore * size, thickness * size) == pytest.approx(
        spring.closed_stress(pressure, bore, thickness), rel=1e-12
    )
    opened = 8.0 * thickness
    assert spring.opening_stress(
        opened * size, gap * size, bore * size, thickness * size, modulus
    ) == pytest.approx(spring.opening_stress(opened, gap, bore, thickness, modulus), rel=1e-9)
    assert spring.opening_to_clear(
        thickness * size, bore * size, 0.1 * bore * size, 0.1 * thickness * size
    ) == pytest.approx(
        size * spring.opening_to_clear(thickness, bore, 0.1 * bore, 0.1 * thickness), rel=1e-12
    )


@given(springs, springs, st.floats(1.0, 500.0))
def test_more_spring_more_gap_and_more_than_the_first_order(one, other, radius):
    less, more = sorted((one, other))
    small = spring.gap_of_springiness(less, radius)
    assert small <= spring.gap_of_springiness(more, radius)
    if less <= 0.3:
        assert small >= 3.0 * math.pi * radius * less * (1.0 - 1e-12)


@given(springs)
def test_gap_by_another_quadrature(k):
    """The core's 12-point Gauss rule against scipy's adaptive one."""
    exact = quad(lambda phi: math.cos(phi - k * (phi + math.sin(phi))), 0.0, math.pi, epsabs=1e-12)
    found = spring.gap_of_springiness(k, 0.5)
    assert found == pytest.approx(exact[0], abs=1e-11)


@given(st.floats(0.0, 0.2), ratios, st.floats(0.0, 0.3))
def test_opening_grows_with_gap_and_shrinks_with_clearance(share, ratio, spared):
    bore = 100.0
    thickness = bore / ratio
    gap, clearance = share * bore, spared * thickness
    found = spring.opening_to_clear(thickness, bore, gap, clearance)
    assert found <= spring.opening_to_clear(thickness, bore, gap + 1.0, clearance)
    assert found >= spring.opening_to_clear(thickness, bore, gap, clearance + 0.01 * thickness)
    stress = spring.opening_stress(found, gap, bore, thickness, 1e5)
    assert stress < spring.opening_stress(found + 1.0, gap, bore, thickness, 1e5)
    assert stress > spring.opening_stress(found, gap + 1.0, bore, thickness, 1e5)


@pytest.mark.parametrize("k", [-1e-6, 0.4501, 2.0])
def test_springiness_that_no_ring_has_is_refused(k):
    with pytest.raises(OutOfRange) as caught:
        spring.gap_of_springiness(k, 48.0)
    assert caught.value.name == "springiness"
    assert caught.value.value == k
    assert "0.45" in caught.value.limit


@pytest.mark.parametrize("gap", [-1.0, 4.66 * 48.0, 1e6])
def test_gap_that_no_ring_has_is_refused(gap):
    with pytest.raises(OutOfRange) as caught:
        spring.pressure_from_gap(gap, 100.0, 4.0, 1e5)
    assert caught.value.name == "gap_change"
    assert caught.value.value == gap


def test_largest_gap_is_still_worked():
    largest = spring.gap_of_springiness(spring.LARGEST_SPRINGINESS, 48.0)
    assert largest / 48.0 == pytest.approx(4.64, abs=0.005)
    assert spring.springiness_of_gap(largest * (1.0 - 1e-12), 48.0) == pytest.approx(0.45, rel=1e-9)


@given(st.floats(1e-3, 1.0), bores, ratios)
def test_edges_of_the_gap_by_the_turn_of_the_ends(share, bore, ratio):
    """First order: each end face turns by K*pi, so the gap is wider at the outside."""
    thickness = bore / ratio
    radius = 0.5 * (bore - thickness)
    k = share * 1e-4
    gap = 3.0 * math.pi * radius * k
    # Tangent of the free end: pi - K*pi; the faces, square to it, spread by 2*K*pi.
    spread = 2.0 * math.pi * k * 0.5 * thickness
    factor = spring.outer_edge_gap_factor(bore, thickness)
    assert gap * factor == pytest.approx(gap + spread, rel=1e-9)
