"""Saturated steam against the tables of IAPWS-IF97, two libraries and an old steam table."""

import CoolProp.CoolProp as coolprop
import iapws
import pytest

from ringwright.core.problems import OutOfRange
from ringwright.core.properties import steam

PSI = 6894.757293168361e-6  # MPa


@pytest.mark.parametrize(
    ("absolute", "kelvin"),
    [(0.1, 0.372755919e3), (1.0, 0.453035632e3), (10.0, 0.584149488e3)],
)
def test_saturation_temperature_matches_if97_table_36(absolute, kelvin):
    found = steam.saturation_temperature(absolute - steam.ATMOSPHERE) + 273.15
    assert found == pytest.approx(kelvin, abs=0.5e-6)


@pytest.mark.parametrize(
    ("kelvin", "absolute"),
    [(300.0, 0.353658941e-2), (500.0, 0.263889776e1), (600.0, 0.123443146e2)],
)
def test_saturation_pressure_matches_if97_table_35(kelvin, absolute):
    found = steam.saturation_pressure(kelvin - 273.15) + steam.ATMOSPHERE
    assert found == pytest.approx(absolute, rel=2e-9)


@pytest.mark.parametrize("gauge", [-0.09, -0.05, 0.0, 0.1, 0.3, 0.8, 1.4, 2.5, 6.0, 15.0, 21.9])
def test_saturation_temperature_agrees_with_iapws_library(gauge):
    kelvin = iapws.iapws97._TSat_P(gauge + 0.101325)
    assert steam.saturation_temperature(gauge) == pytest.approx(kelvin - 273.15, abs=1e-9)


@pytest.mark.parametrize("temperature", [0.0, 20.0, 100.0, 165.0, 220.0, 300.0, 373.0])
def test_saturation_pressure_agrees_with_iapws_library(temperature):
    absolute = iapws.iapws97._PSat_T(temperature + 273.15)
    assert steam.saturation_pressure(temperature) + 0.101325 == pytest.approx(absolute, rel=1e-11)


@pytest.mark.parametrize("gauge", [0.0, 0.2, 0.5, 0.8, 1.0, 1.5, 2.0, 5.0])
def test_saturation_temperature_agrees_with_the_scientific_formulation(gauge):
    """CoolProp's Water is IAPWS-95, an independent formulation; IF97 follows it within 0.02 K."""
    kelvin = coolprop.PropsSI("T", "P", (gauge + 0.101325) * 1e6, "Q", 1, "Water")
    assert steam.saturation_temperature(gauge) == pytest.approx(kelvin - 273.15, abs=0.02)


@pytest.mark.parametrize(("psi", "fahrenheit"), [(80, 324), (100, 338), (120, 350)])
def test_saturation_temperature_matches_an_imperial_steam_table(psi, fahrenheit):
    """An imperial steam table prints whole degrees Fahrenheit by gauge pressure."""
    assert steam.saturation_temperature(psi * PSI) * 1.8 + 32 == pytest.approx(fahrenheit, abs=0.6)


def test_boiling_at_the_atmosphere_is_near_a_hundred_degrees():
    """The ITS-90 boiling point of water at 101 325 Pa is 99.974 degC; IF97 agrees within 0.01 K."""
    assert steam.saturation_temperature(0.0) == pytest.approx(99.974, abs=0.01)


def test_the_two_directions_undo_each_other():
    for step in range(200):
        gauge = -0.1 + 0.0005 + step * 0.1
        found = steam.saturation_pressure(steam.saturation_temperature(gauge))
        assert found + steam.ATMOSPHERE == pytest.approx(gauge + steam.ATMOSPHERE, rel=1e-10)


def test_hotter_with_every_step_of_pressure():
    rising = [steam.saturation_temperature(-0.1 + 0.02 * step) for step in range(1100)]
    assert all(low < high for low, high in zip(rising, rising[1:], strict=False))


def test_a_high_workshop_boils_cooler():
    """At 80 kPa of air water boils near 93.5 degC (IF97 by the iapws library)."""
    kelvin = iapws.iapws97._TSat_P(0.080)
    found = steam.saturation_temperature(0.0, atmosphere=0.080)
    assert found == pytest.approx(kelvin - 273.15, abs=1e-9)


@pytest.mark.parametrize("gauge", [-0.101, -5.0, 22.0, 1e9, float("nan"), float("inf")])
def test_pressure_outside_the_region_is_refused(gauge):
    with pytest.raises(OutOfRange) as caught:
        steam.saturation_temperature(gauge)
    assert caught.value.name == "gauge_pressure"


@pytest.mark.parametrize("temperature", [-0.01, 374.0, float("nan")])
def test_temperature_outside_the_region_is_refused(temperature):
    with pytest.raises(OutOfRange) as caught:
        steam.saturation_pressure(temperature)
    assert caught.value.name == "temperature"


def test_the_ends_of_the_saturation_line_are_answered():
    """Least pressure 611.213 Pa at 273.15 K; critical point 22.064 MPa and 647.096 K, IF97."""
    assert steam.saturation_temperature(611.213e-6, 0.0) == pytest.approx(0.0, abs=1e-5)
    assert steam.saturation_temperature(22.064, 0.0) == pytest.approx(373.946, abs=1e-3)
    assert steam.saturation_pressure(0.0, 0.0) == pytest.approx(611.213e-6, rel=1e-6)
    hottest = 647.096 - 273.15
    assert steam.saturation_pressure(hottest - 1e-9, 0.0) == pytest.approx(22.064, rel=1e-6)
    for absolute in (611.2e-6, 22.065):
        with pytest.raises(OutOfRange):
            steam.saturation_temperature(absolute, 0.0)
    for temperature in (-1e-4, hottest + 1e-4):
        with pytest.raises(OutOfRange):
            steam.saturation_pressure(temperature, 0.0)
