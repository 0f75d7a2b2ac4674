"""Volume, enthalpy and viscosity of steam: IAPWS tables, two libraries, book steam tables."""

import CoolProp.CoolProp as coolprop
import iapws
import pytest
from iapws._iapws import _Viscosity
from iapws.iapws97 import _Region1, _Region2

from ringwright.core.problems import OutOfRange
from ringwright.core.properties import steam_properties

PSI = 6894.757293168361e-6  # MPa
ATMOSPHERE = 0.101325
CUBIC_FEET_PER_POUND = 0.028316846592 / 0.45359237  # m3/kg, exact


# IAPWS-IF97, table 15: (K, MPa, m3/kg, kJ/kg). Read in the reference library's own examples, and
# from memory of the release for the rest.
@pytest.mark.parametrize(
    ("kelvin", "pressure", "volume", "enthalpy"),
    [
        (300.0, 0.0035, 0.394913866e2, 0.254991145e4),
        (700.0, 0.0035, 0.923015898e2, 0.333568375e4),
    ],
)
def test_steam_matches_if97_table_15(kelvin, pressure, volume, enthalpy):
    state = steam_properties.steam_state(pressure, kelvin - 273.15)
    assert state.volume == pytest.approx(volume, rel=2e-9)
    assert state.enthalpy == pytest.approx(enthalpy, rel=2e-9)


def test_steam_matches_if97_table_15_where_pressure_is_highest():
    """700 K and 30 MPa, beyond these engines: there the terms of high order weigh most."""
    volume, enthalpy = steam_properties._region_2(700.0, 30.0)
    assert volume == pytest.approx(0.542946619e-2, rel=2e-9)
    assert enthalpy == pytest.approx(0.263149474e4, rel=2e-9)


# A term that is lost in the sum of one state rules another, some of them states that no water
# has (and of which the library can give no speed of sound). It has the tables by another hand.
@pytest.mark.filterwarnings("ignore::RuntimeWarning")
@pytest.mark.parametrize(
    ("kelvin", "pressure"), [(584.0, 10.0), (400.0, 15.0), (623.15, 16.5), (350.0, 12.0)]
)
def test_every_term_of_steam_is_the_library_s(kelvin, pressure):
    library = _Region2(kelvin, pressure)
    assert steam_properties._region_2(kelvin, pressure) == (
        pytest.approx(library["v"], rel=1e-13, abs=1e-15),
        pytest.approx(library["h"], rel=1e-13),
    )


@pytest.mark.filterwarnings("ignore::RuntimeWarning")
@pytest.mark.parametrize(
    ("kelvin", "pressure"), [(273.15, 80.0), (623.15, 0.1), (300.0, 3.0), (610.0, 1.0)]
)
def test_every_term_of_water_is_the_library_s(kelvin, pressure):
    library = _Region1(kelvin, pressure)
    found = steam_properties._region_1_enthalpy(kelvin, pressure)
    assert found == pytest.approx(library["h"], rel=1e-12)


# IAPWS-IF97, table 5: (K, MPa, kJ/kg).
@pytest.mark.parametrize(
    ("kelvin", "pressure", "enthalpy"),
    [(300.0, 3.0, 0.115331273e3), (300.0, 80.0, 0.184142828e3), (500.0, 3.0, 0.975542239e3)],
)
def test_water_matches_if97_table_5(kelvin, pressure, enthalpy):
    found = steam_properties.water_enthalpy(kelvin - 273.15, pressure)
    assert found == pytest.approx(enthalpy, rel=2e-9)


@pytest.mark.parametrize("pressure", [0.01, 0.1, 0.5, 1.0, 2.0, 5.0, 10.2])
def test_dry_steam_agrees_with_iapws_and_coolprop(pressure):
    state = steam_properties.steam_state(pressure)
    library = iapws.IAPWS97(P=pressure, x=1)
    assert state.volume == pytest.approx(library.v, rel=1e-9)
    assert state.enthalpy == pytest.approx(library.h, rel=1e-9)
    # IAPWS-95, the scientific formulation: IF97 keeps within these of it.
    density = coolprop.PropsSI("D", "P", pressure * 1e6, "Q", 1, "Water")
    enthalpy = coolprop.PropsSI("H", "P", pressure * 1e6, "Q", 1, "Water")
    assert state.volume == pytest.approx(1.0 / density, rel=5e-4)
    assert 1000.0 * state.enthalpy == pytest.approx(enthalpy, rel=3e-4)


@pytest.mark.parametrize("pressure", [0.1, 0.8, 2.0, 6.0])
@pytest.mark.parametrize("temperature", [280.0, 350.0, 450.0, 590.0])
def test_superheated_steam_agrees_with_iapws(pressure, temperature):
    state = steam_properties.steam_state(pressure, temperature)
    library = iapws.IAPWS97(P=pressure, T=temperature + 273.15)
    assert state.volume == pytest.approx(library.v, rel=1e-9)
    assert state.enthalpy == pytest.approx(library.h, rel=1e-9)
    assert state.superheat == pytest.approx(
        temperature + 273.15 - iapws.IAPWS97(P=pressure, x=1).T, abs=1e-6
    )


@pytest.mark.parametrize("dryness", [0.6, 0.9, 0.99])
def test_wet_steam_agrees_with_iapws(dryness):
    state = steam_properties.steam_state(1.0, dryness=dryness)
    library = iapws.IAPWS97(P=1.0, x=dryness)
    assert state.enthalpy == pytest.approx(library.h, rel=1e-9)
    # The water's own volume is left out: a thousandth of the steam's.
    assert state.volume == pytest.approx(library.v, rel=5e-3)


# Steam tables printed in Singh, Applied Thermodynamics, chapter 12 (bar abs, m3/kg dry): older
# tables than IF97, which they meet within a thousandth.
@pytest.mark.parametrize(
    ("bar", "volume"),
    [(1.0, 1.6940), (3.0, 0.6058), (4.0, 0.4625), (5.0, 0.3749), (12.0, 0.16333), (15.0, 0.13177)],
)
def test_dry_volume_agrees_with_a_textbook_table(bar, volume):
    assert steam_properties.steam_state(bar / 10.0).volume == pytest.approx(volume, rel=1e-3)


def test_enthalpies_agree_with_a_textbook_table():
    # Joel, Basic Engineering Thermodynamics, example 11.3: at 1 MPa hf 762.6, hfg 2013.6 kJ/kg.
    boiling = steam_properties.saturation_temperature(1.0)
    water = steam_properties.water_enthalpy(boiling)
    assert water == pytest.approx(762.6, rel=1e-3)
    assert steam_properties.steam_state(1.0).enthalpy - water == pytest.approx(2013.6, rel=1e-3)


# An imperial steam table (psi gauge, ft3/lb), three printed digits.
@pytest.mark.parametrize(("gauge", "volume"), [(80.0, 4.67), (100.0, 3.89), (120.0, 3.34)])
def test_dry_volume_agrees_with_an_imperial_table(gauge, volume):
    found = steam_properties.steam_state(gauge * PSI + ATMOSPHERE).volume
    assert found / CUBIC_FEET_PER_POUND == pytest.approx(volume, abs=0.006)


@pytest.mark.parametrize("temperature", [20.0, 120.0, 170.0, 250.0, 400.0])
def test_viscosity_is_the_dilute_gas_of_iapws_2008(temperature):
    assert steam_properties.viscosity(temperature) == pytest.approx(
        _Viscosity(1e-9, temperature + 273.15), rel=1e-8
    )


@pytest.mark.parametrize("pressure", [0.1, 0.5, 1.0, 2.0])
def test_viscosity_is_within_five_per_cent_of_real_dry_steam(pressure):
    found = steam_properties.viscosity(steam_properties.saturation_temperature(pressure))
    assert found == pytest.approx(
        coolprop.PropsSI("V", "P", pressure * 1e6, "Q", 1, "Water"), rel=0.05
    )


@pytest.mark.parametrize(
    ("arguments", "name"),
    [
        ({"absolute_pressure": 1.0, "temperature": 170.0}, "temperature"),
        ({"absolute_pressure": 1.0, "temperature": 601.0}, "temperature"),
        ({"absolute_pressure": 10.3}, "absolute_pressure"),
        ({"absolute_pressure": 1e-4}, "absolute_pressure"),
        ({"absolute_pressure": 1.0, "dryness": 0.4}, "dryness"),
    ],
)
def test_steam_outside_its_range_is_refused_by_name(arguments, name):
    with pytest.raises(OutOfRange) as refused:
        steam_properties.steam_state(**arguments)
    assert refused.value.name == name


@pytest.mark.parametrize("temperature", [-1.0, 351.0])
def test_water_outside_its_range_is_refused(temperature):
    with pytest.raises(OutOfRange):
        steam_properties.water_enthalpy(temperature, 20.0)


def test_viscosity_outside_its_range_is_refused():
    with pytest.raises(OutOfRange):
        steam_properties.viscosity(901.0)


def test_a_state_says_what_it_is_of():
    """Steam of 0.8 MPa absolute boils at 170.4 degC (steam tables)."""
    hot = steam_properties.steam_state(0.8, 250.0)
    assert (hot.pressure, hot.temperature, hot.dryness) == (0.8, 250.0, 1.0)
    assert hot.superheat == pytest.approx(250.0 - 170.4, abs=0.1)
    wet = steam_properties.steam_state(0.8, None, 0.9)
    assert (wet.pressure, wet.dryness) == (0.8, 0.9)
    assert wet.temperature == pytest.approx(170.4, abs=0.1) and wet.superheat == 0.0


def test_limits_belong_to_what_is_answered():
    """At each printed end of the range there is an answer, just beyond it none."""
    hottest = steam_properties.steam_state(0.3, 600.0)
    assert hottest.volume == pytest.approx(iapws.IAPWS97(P=0.3, T=873.15).v, rel=1e-9)
    assert steam_properties.steam_state(10.2).temperature == pytest.approx(
        iapws.IAPWS97(P=10.2, x=1).T - 273.15, abs=1e-6
    )
    assert steam_properties.steam_state(611.213e-6).temperature == pytest.approx(0.0, abs=1e-4)
    assert steam_properties.steam_state(0.7, dryness=0.5).dryness == 0.5
    for pressure, dryness in ((10.25, 1.0), (610.9e-6, 1.0), (0.7, 0.499), (0.7, 1.005)):
        with pytest.raises(OutOfRange):
            steam_properties.steam_state(pressure, dryness=dryness)
    with pytest.raises(OutOfRange):
        steam_properties.steam_state(0.3, 602.0)


def test_a_thermometer_a_degree_under_the_boil_is_taken_to_boil():
    boiling = steam_properties.saturation_temperature(0.6)
    for under in (0.0, 0.3, 0.999):
        state = steam_properties.steam_state(0.6, boiling - under)
        assert state == steam_properties.steam_state(0.6)
    with pytest.raises(OutOfRange):
        steam_properties.steam_state(0.6, boiling - 1.005)


@pytest.mark.parametrize(("temperature", "kelvin"), [(0.0, 273.15), (350.0, 623.15)])
def test_water_from_ice_to_the_end_of_region_1(temperature, kelvin):
    found = steam_properties.water_enthalpy(temperature, 20.0)
    assert found == pytest.approx(iapws.IAPWS97(P=20.0, T=kelvin).h, rel=1e-9)


@pytest.mark.parametrize("temperature", [-0.005, 350.005])
def test_water_just_beyond_is_refused(temperature):
    with pytest.raises(OutOfRange):
        steam_properties.water_enthalpy(temperature, 20.0)


@pytest.mark.parametrize("temperature", [0.0, 900.0])
def test_viscosity_to_the_very_ends(temperature):
    found = steam_properties.viscosity(temperature)
    assert found == pytest.approx(_Viscosity(1e-9, temperature + 273.15), rel=1e-8)
    with pytest.raises(OutOfRange):
        steam_properties.viscosity(temperature + (0.005 if temperature else -0.005))


@pytest.mark.parametrize("temperature", [30.0, 150.0, 300.0])
def test_water_about_to_boil_is_the_library_s(temperature):
    library = iapws.IAPWS97(T=temperature + 273.15, x=0)
    assert steam_properties.water_enthalpy(temperature) == pytest.approx(library.h, rel=1e-9)
