"""Closed forms against nonlinear solid finite elements: data/ring_finite_elements.csv."""

import csv
import math
from pathlib import Path

import pytest

from ringwright.core.ring import heat_set, spring


def rows():
    with (Path(__file__).parent / "data" / "ring_finite_elements.csv").open() as lines:
        table = csv.DictReader(line for line in lines if not line.startswith("#"))
        return {row["case_id"]: row for row in table}


ROWS = rows()


def number(case, name):
    return float(ROWS[case][name])


def section(case):
    """bore, thickness, modulus."""
    return number(case, "d_mm"), number(case, "a_mm"), number(case, "E_MPa")


CLOSED = [case for case in ROWS if case.startswith("C")]
assert len(CLOSED) == 6


@pytest.mark.parametrize("case", CLOSED)
def test_free_gap_and_closed_stress(case):
    bore, thickness, modulus = section(case)
    pressure = number(case, "p_in_MPa")
    gap = number(case, "free_gap_m_chord_mm") - number(case, "closed_gap_residual_mm")
    found = spring.gap_change(pressure, bore, thickness, modulus)
    close = 1e-3 if bore / thickness < 16.0 else 5e-4  # shear counts in the stoutest
    assert found == pytest.approx(gap, rel=close)
    back = spring.pressure_from_gap(gap, bore, thickness, modulus)
    assert back == pytest.approx(pressure, rel=close)
    stress = spring.closed_stress(pressure, bore, thickness)
    assert stress.tension == pytest.approx(number(case, "sigma_outer_phi0_MPa"), rel=1.3e-2)
    assert stress.compression == pytest.approx(-number(case, "sigma_inner_phi0_MPa"), rel=1.3e-2)
    force = spring.tangential_force(pressure, bore, number(case, "h_mm"))
    assert force == pytest.approx(number(case, "Ft_phd2_N"))


@pytest.mark.parametrize("case", ["O25_6", "O30_6"])
def test_opening_stress_and_the_circle_that_passes(case):
    bore, thickness, modulus = section(case)
    gap, opening = number(case, "free_gap_m_chord_mm"), number(case, "g_open_in_mm")
    found = spring.opening_stress(opening, gap, bore, thickness, modulus)
    assert found == pytest.approx(number(case, "sigma_inner_phi0_MPa"), rel=4e-3)
    # A piston as large as the circle that passes at this opening needs this opening.
    spared = 0.5 * (bore - number(case, "bore_inscribed_diam_mm"))
    needed = spring.opening_to_clear(thickness, bore, gap, spared)
    assert needed == pytest.approx(opening, rel=5e-3)


def test_diametral_force_closes_the_gap():
    tangential = number("F30_6", "Ft_phd2_N")
    found = spring.diametral_force(tangential).to_close_gap
    assert found == pytest.approx(number("F30_6", "Fd_at_closed_N"), rel=5e-3)


def given_up(case):
    """kappa0 of a ring of which the inside was k_in times as large before it was closed."""
    bore, thickness, _ = section(case)
    radius = 0.5 * (bore - thickness)
    free = number(case, "k_in") * (0.5 * bore - thickness) + 0.5 * thickness
    return 1.0 / radius - 1.0 / free


def test_bound_ring_in_its_bore():
    case = "A25_k1.022"
    bore, thickness, modulus = section(case)
    curvature = given_up(case)
    arc = heat_set.gap_of_curvature(curvature, bore, thickness, heat_set.BOUND, 1)
    free = 1.0 / (2.0 / (bore - thickness) - curvature)
    chord = 2.0 * free * math.sin(arc / (2.0 * free))
    assert chord == pytest.approx(number(case, "free_gap_m_chord_mm"), rel=1e-5)
    mean = heat_set.mean_pressure(curvature, bore, thickness, modulus, 1)
    assert mean == pytest.approx(number(case, "p_mean_contact_MPa"), rel=6e-3)
    light = heat_set.widest_light(curvature, bore, thickness)
    assert light == pytest.approx(number(case, "max_light_gap_um") / 1000.0, rel=5e-3)
    from_back = number(case, "light_gap_angle_deg")
    assert from_back == pytest.approx(180.0 - heat_set.LIGHT_ANGLE, abs=0.5)
    # Bending at the back and, 1.187 times it, a quarter turn from the tip; outside of a curved bar.
    ratio = bore / thickness
    bending = 0.5 * modulus * thickness * curvature
    outside = bending * (ratio - 2.0) / (ratio - 1.0)
    assert outside == pytest.approx(number(case, "sigma_outer_phi0_MPa"), rel=6e-3)
    assert outside * heat_set.PEAK_MOMENT == pytest.approx(
        number(case, "sigma_peak_outer_MPa"), rel=6e-3
    )
    inside = bending * ratio / (ratio - 1.0)
    assert inside == pytest.approx(-number(case, "sigma_inner_phi0_MPa"), rel=6e-3)
    # Shares of all the force: both tips, and the four lines where the slack lengths end.
    contact = heat_set.contact_pressure(curvature, bore, thickness, modulus)
    whole = mean * math.pi * bore
    tips = 2.0 * heat_set.tip_force(contact, bore, 1.0) / whole
    assert tips == pytest.approx(number(case, "share_tips"), abs=4e-3)


def test_ring_relieved_as_it_lay_sprung():
    case, bound = "B25_k1.022", "A25_k1.022"
    bore, thickness, modulus = section(case)
    curvature = given_up(case)
    larger = number(case, "free_gap_m_chord_mm") / number(bound, "free_gap_m_chord_mm")
    assert heat_set.sprung_gap_factor(1) == pytest.approx(larger, rel=1.5e-3)
    assert heat_set.sprung_gap_factor(1) < 1.04  # not 1.055
    mean = heat_set.mean_pressure(curvature, bore, thickness, modulus, 1)
    assert mean == pytest.approx(number(case, "p_mean_contact_MPa"), rel=3e-3)
    # Light-tight: what is left is the elements' own, a thirtieth of the bound ring's.
    assert number(case, "max_light_gap_um") < number(bound, "max_light_gap_um") / 25.0
    assert not heat_set.bearing(heat_set.SPRUNG, heat_set.FORCED_ROUND).light


@pytest.mark.parametrize("case", ["D25", "D30"])
def test_each_turn_of_a_double_turn_ring_is_a_plain_ring(case):
    bore, thickness, modulus = section(case)
    pressure = number(case, "p_in_MPa")
    found = spring.first_order_gap_change(pressure, bore, thickness, modulus)
    assert found == pytest.approx(number(case, "free_gap_m_chord_mm"), rel=2e-4)
    stress = spring.closed_stress(pressure, bore, thickness).tension
    assert stress == pytest.approx(number(case, "sigma_peak_outer_MPa"), rel=1e-2)
