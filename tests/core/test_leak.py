"""Leak of steam past rings: independent solutions, limits, and what must always hold."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.optimize import brentq

from ringwright.core.problems import OutOfRange
from ringwright.core.running import leak

STEADY = settings(derandomize=True, deadline=None, max_examples=60)
EXPONENT = st.floats(1.135, 1.3)
RATIO = st.floats(0.0, 0.999)


def nozzle(high, low, k):
    """Flow of unit area at p v = 1, from the equation of the isentropic nozzle."""
    x = max(low / high, (2.0 / (k + 1.0)) ** (k / (k - 1.0)))
    return high * math.sqrt(2.0 * k / (k - 1.0) * (x ** (2.0 / k) - x ** ((k + 1.0) / k)))


def chain(number, last, k):
    """Flow through `number` nozzles in series from pressure 1 to `last`, by a bracketing solver."""

    def arrives(flow):
        pressure = 1.0
        for _ in range(number):
            if nozzle(pressure, 0.0, k) < flow:
                return -1.0
            critical = pressure * (2.0 / (k + 1.0)) ** (k / (k - 1.0))
            if nozzle(pressure, critical, k) <= flow:
                pressure = critical
            else:
                pressure = brentq(
                    lambda low, high=pressure: nozzle(high, low, k) - flow,
                    critical,
                    pressure,
                    xtol=1e-15,
                )
        return pressure - last

    most = nozzle(1.0, 0.0, k)
    if arrives(most * (1.0 - 1e-12)) >= 0.0:
        return most
    return brentq(arrives, 1e-9, most, xtol=1e-13)


@pytest.mark.parametrize("k", [1.135, 1.3])
@pytest.mark.parametrize("number", [1, 2, 3, 6])
@pytest.mark.parametrize("last", [0.1, 0.5, 0.7, 0.9, 0.99])
def test_rings_in_series_agree_with_a_chain_of_nozzles(number, last, k):
    found = leak.series_flow(leak.throttles_in_series(number, k), last)
    assert found == pytest.approx(chain(number, last, k), rel=7e-3)


@pytest.mark.parametrize("number", [2, 3, 5])
def test_a_small_difference_is_shared_alike(number):
    # Then steam flows like water, and n throttles pass 1/sqrt(n) of one.
    one = leak.flow_number(0.9999, 1.135)
    found = leak.series_flow(leak.throttles_in_series(number, 1.135, points=400), 0.9999)
    assert found / one == pytest.approx(1.0 / math.sqrt(number), rel=2e-3)


@STEADY
@given(EXPONENT, RATIO, RATIO)
def test_more_back_pressure_never_passes_more(k, one, other):
    low, high = sorted((one, other))
    assert leak.flow_number(low, k) >= leak.flow_number(high, k)
    series = leak.throttles_in_series(2, k)
    assert leak.series_flow(series, low) >= leak.series_flow(series, high)


@STEADY
@given(EXPONENT, RATIO)
def test_more_rings_pass_less(k, ratio):
    flows = [leak.series_flow(leak.throttles_in_series(n, k), ratio) for n in (1, 2, 3, 4)]
    assert flows == sorted(flows, reverse=True)
    assert flows[0] > flows[3]


def test_nothing_flows_against_the_pressure_or_with_none():
    assert leak.flow_number(1.0, 1.135) == 0.0
    assert leak.napier_flow(1.0, 0.4, 0.5) == 0.0
    assert leak.series_flow(leak.throttles_in_series(2, 1.135), 1.0) == 0.0


@STEADY
@given(st.floats(0.0, 20.0), st.floats(0.0, 2.0), st.floats(0.0, 20.0))
def test_opening_grows_with_the_gap_and_is_nothing_without_one(gap, land, more):
    assert leak.gap_opening(gap + more, land) >= leak.gap_opening(gap, land)
    assert leak.gap_opening(0.0, land) == 0.0
    assert leak.gap_opening(-0.1, land) == 0.0


@pytest.mark.parametrize("ring_type", ["plain", "double-turn"])
@pytest.mark.parametrize("end_cut", ["square", "angled-45", "angled-60", "stepped"])
def test_share_of_the_gap_is_a_spread_within_the_whole_gap(ring_type, end_cut):
    low, usual, high = leak.gap_share(ring_type, end_cut)
    assert 0.0 <= low <= usual <= high <= 1.0


def test_an_angled_cut_is_as_narrow_as_its_sine_and_a_square_one_wide_open():
    assert leak.gap_share("plain", "square") == (1.0, 1.0, 1.0)
    assert leak.gap_share("plain", "angled-60")[0] == pytest.approx(math.sqrt(3.0) / 2.0)
    assert leak.gap_share("double-turn", "square")[0] == 0.0


@pytest.mark.parametrize(("film", "wear"), [(0.002, 0.0), (0.002, 0.03), (0.004, 0.2)])
def test_tapered_film_agrees_with_integration_along_it(film, wear):
    # Flow through a film of height h(x) goes with 1/integral(dx/h^3) over the seat.
    resistance, _ = quad(lambda x: (film + wear * x) ** -3, 0.0, 1.0, limit=200)
    assert leak.film_cubed(film, wear) == pytest.approx(1.0 / resistance, rel=1e-6)


def test_side_face_agrees_with_plane_flow_integrated():
    # dp/dx = -12 mu W v/(width h^3) with p v constant, from p1 to p2 over the seat; SI units.
    bore, film, seat, mu, pv = 0.1, 3e-6, 3e-3, 15e-6, 0.19e6
    p1, p2 = 0.8e6, 0.1e6
    flow = math.pi * bore * film**3 / (12.0 * mu * pv * seat) * quad(lambda p: p, p2, p1)[0]
    found = leak.face_flow(
        bore=100.0,
        cube=leak.film_cubed(0.003, 0.0),
        seat=3.0,
        squares=0.8**2 - 0.1**2,
        pressure_volume=0.19,
        viscosity=mu,
    )
    assert found == pytest.approx(flow, rel=1e-12)


def test_a_light_is_two_thirds_of_its_box():
    area, _ = quad(lambda x: 0.05 * (1.0 - (x / 20.0) ** 2), -20.0, 20.0)
    assert leak.light_opening(0.05, 40.0) == pytest.approx(area, rel=1e-12)


@pytest.mark.parametrize("ratio", [-0.1, 1.1])
def test_a_ratio_that_cannot_be_is_refused(ratio):
    with pytest.raises(OutOfRange) as refused:
        leak.flow_number(ratio, 1.135)
    assert refused.value.name == "ratio"


@pytest.mark.parametrize("number", [0, 13])
def test_a_number_of_rings_that_cannot_be_is_refused(number):
    with pytest.raises(OutOfRange):
        leak.throttles_in_series(number, 1.135)
