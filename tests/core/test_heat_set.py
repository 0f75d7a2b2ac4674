"""Heat setting: every forward formula against its inverse, limits, and creep fibre by fibre."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from ringwright.core.catalogue import inputs_ring
from ringwright.core.ring import heat_set

bores = st.floats(10.0, 1500.0)
ratios = st.floats(12.0, 60.0)
moduli = st.floats(5e4, 2.1e5)
turns = st.sampled_from([1, 2])
settings = st.sampled_from([heat_set.BOUND, heat_set.SPRUNG])
reliefs = st.floats(0.05, 1.0)
shares = st.floats(1e-4, 0.3)  # of its curvature that the ring gives up


@given(shares, bores, ratios, moduli, turns)
def test_pressure_and_curvature_are_inverse(share, bore, ratio, modulus, count):
    thickness = bore / ratio
    curvature = 2.0 * share / (bore - thickness)
    mean = heat_set.mean_pressure(curvature, bore, thickness, modulus, count)
    contact = heat_set.contact_pressure(curvature, bore, thickness, modulus)
    again = heat_set.curvature_for_contact(contact, bore, thickness, modulus)
    assert again == pytest.approx(curvature, rel=1e-12)
    assert 0.0 < mean < contact


@given(shares, bores, ratios, turns, settings)
def test_gap_and_curvature_are_inverse(share, bore, ratio, count, setting):
    thickness = bore / ratio
    curvature = 2.0 * share / (bore - thickness)
    gap = heat_set.gap_of_curvature(curvature, bore, thickness, setting, count)
    back = heat_set.curvature_of_gap(gap, bore, thickness, setting, count)
    assert back == pytest.approx(curvature, rel=1e-9)


@given(shares, bores, ratios, moduli, turns, settings, st.floats(0.05, 20.0))
def test_scale(share, bore, ratio, modulus, count, setting, size):
    thickness = bore / ratio
    curvature = 2.0 * share / (bore - thickness)
    pressed = heat_set.mean_pressure(curvature, bore, thickness, modulus, count)
    scaled = (curvature / size, bore * size, thickness * size)
    assert heat_set.mean_pressure(*scaled, modulus, count) == pytest.approx(pressed, rel=1e-12)
    for length in (
        lambda c, d, a: heat_set.gap_of_curvature(c, d, a, setting, count),
        lambda c, d, a: heat_set.band_allowance(c, d, a, setting, count),
        heat_set.widest_light,
    ):
        assert length(*scaled) == pytest.approx(size * length(curvature, bore, thickness), rel=1e-9)


@given(st.floats(5.0, 700.0), st.floats(1.0005, 1.2), reliefs)
def test_former_relief_and_free_radius(bored, larger, relief):
    former = bored * larger
    free = heat_set.set_radius(bored, former, relief)
    assert bored < free <= former * (1.0 + 1e-12)
    assert heat_set.former_radius_for(bored, free, relief) == pytest.approx(former, rel=1e-9)
    found = heat_set.relief_given(bored, former, free)
    # The radii differ little, so that their difference carries fewer digits.
    assert found == pytest.approx(relief, abs=1e-11 / (larger - 1.0))
    assert heat_set.set_radius(bored, former, relief * 0.9) < free


@pytest.mark.parametrize(("relief", "expected"), [(0.0, 48.0), (1.0, 49.0)])
def test_no_heat_sets_nothing_and_full_relief_sets_the_former(relief, expected):
    assert heat_set.set_radius(48.0, 49.0, relief) == pytest.approx(expected, rel=1e-15)


def test_former_of_the_ring_s_own_radius_tells_no_relief():
    with pytest.raises(ZeroDivisionError):
        heat_set.relief_given(48.0, 48.0, 48.0)
    assert heat_set.former_radius_for(48.0, 400.0, 0.3) < 0.0  # no former is large enough


@given(st.floats(0.5, 60.0), st.floats(0.1, 3.0), st.floats(0.0, 2.0), reliefs)
def test_spacer_and_gap(gap, kerf, closed, relief):
    spacer = heat_set.spacer_for(gap, kerf, closed, relief)
    assert heat_set.gap_from_spacer(spacer, kerf, closed, relief) == pytest.approx(gap, rel=1e-9)
    # Fully relieved, the ends stay where the spacer held them.
    whole = heat_set.spacer_for(gap, kerf, closed, 1.0)
    assert whole == pytest.approx(gap + closed, rel=1e-12)


def test_hot_steel_former_outgrows_an_iron_ring():
    """Lengths by expansion of each alone: 100 mm of steel (12e-6) and of iron (11e-6), 520 K up."""
    former, ring = 100.0 * (1.0 + 12e-6 * 520.0), 100.0 * (1.0 + 11e-6 * 520.0)
    assert heat_set.hot_growth(12e-6, 11e-6, 520.0) == pytest.approx(former / ring, rel=1e-15)
    assert heat_set.hot_growth(11e-6, 11e-6, 520.0) == 1.0
    assert heat_set.hot_growth(12e-6, 11e-6, 0.0) == 1.0


@given(st.floats(5.0, 700.0), st.floats(1.0005, 1.1), ratios)
def test_forming_stress_grows_with_the_former_and_the_thickness(bored, larger, ratio):
    thickness = 2.0 * bored / ratio
    stress = heat_set.forming_stress(bored, bored * larger, thickness, 1e5)
    assert stress < heat_set.forming_stress(bored, bored * larger * 1.01, thickness, 1e5)
    assert stress < heat_set.forming_stress(bored, bored * larger, thickness * 1.01, 1e5)


def crept(exponent, skin_kept):
    """Moment kept when the skin keeps so much: 200 fibres, each d(stress)/dt = -stress^n."""
    depth = (np.arange(200) + 0.5) / 200

    def rate(_, stress):
        return -(np.abs(stress) ** exponent)

    def skin(_, stress):
        return stress[-1] - skin_kept

    skin.terminal = True
    fibres = np.append(depth, 1.0)
    end = solve_ivp(rate, (0.0, 1e9), fibres, events=skin, rtol=1e-9, atol=1e-12, method="LSODA")
    stress = end.y[:-1, -1]
    return (stress @ depth) / (depth @ depth)


@pytest.mark.parametrize("exponent", [3.0, 5.0, 8.0])
@pytest.mark.parametrize("skin", [0.1, 0.3, 0.5])
def test_moment_kept_under_creep(exponent, skin):
    found = heat_set.moment_kept(skin, exponent)
    assert found == pytest.approx(crept(exponent, skin), rel=1e-3)
    # The mechanics prints 1.24 to 1.48 times as much as the skin (section 3).
    assert 1.235 <= found / skin <= 1.495


@given(st.floats(0.02, 1.0), st.floats(1.5, 12.0))
def test_moment_keeps_more_than_the_skin_and_at_most_half_as_much_again(skin, exponent):
    kept = heat_set.moment_kept(skin, exponent)
    assert skin * (1.0 - 1e-9) <= kept <= min(1.0, 1.5 * skin) * (1.0 + 1e-9)


def test_linear_creep_relaxes_skin_and_moment_alike():
    assert heat_set.moment_kept(0.4, 1.0 + 1e-6) == pytest.approx(0.4, rel=1e-4)


def test_finishing_in_every_combination():
    """What each way of setting leaves in the bore, by each way of holding it for turning."""
    table = {
        (setting, finishing): heat_set.bearing(setting, finishing)
        for setting in inputs_ring.SETTINGS
        for finishing in inputs_ring.FINISHINGS
    }
    assert len(table) == 9
    uniform = {pair for pair, found in table.items() if found.uniform}
    assert uniform == {
        (setting, finishing)
        for setting, finishing in table
        if setting == heat_set.SPREAD or finishing == heat_set.BAND
    }
    light = [pair for pair, found in table.items() if found.light]
    assert light == [(heat_set.BOUND, heat_set.FORCED_ROUND)]


@given(st.floats(0.001, 1.0), bores, st.floats(1.0, 20.0))
def test_forces_of_the_tips_and_lines_and_the_even_part_add_up(contact, bore, width):
    """Mean pressure by summing: two tips, two lines of -F*cos psi0, and p0 between the lines."""
    tip = heat_set.tip_force(contact, bore, width)
    line = -tip * math.cos(heat_set.SLACK_RADIANS)
    even = contact * width * 0.5 * bore * 2.0 * (math.pi - heat_set.SLACK_RADIANS)
    mean = (2.0 * tip + 2.0 * line + even) / (math.pi * bore * width)
    assert mean == pytest.approx(contact * heat_set.mean_share(1), rel=1e-12)
