"""Steam through small openings: Napier's rule and the formula against libraries and Rateau."""

import math

import CoolProp.CoolProp as coolprop
import numpy as np
import pytest
from fluids import P_critical_flow
from fluids.safety_valve import API520_A_g, API520_A_steam

from ringwright.core.properties import steam_properties
from ringwright.core.running import leak

PSI = 6894.757293168361e-6  # MPa
ATMOSPHERE = 14.695948775513  # psi
POUND = 0.45359237
SQUARE_INCH = 645.16


def flow_through(area, pressure, volume, back, k):
    """kg/s through one opening [mm2] by the number that the rings' leak is reckoned with."""
    return 1e-3 * area * leak.flow_number(back / pressure, k) * math.sqrt(pressure / volume)


def isentropic_flow(pressure, back, superheat):
    """kg/s per mm2 of real steam expanding at constant entropy to the throat that passes most."""
    pascal = pressure * 1e6
    if superheat:
        boiling = coolprop.PropsSI("T", "P", pascal, "Q", 1, "Water")
        at = ("P", pascal, "T", boiling + superheat, "Water")
    else:
        at = ("P", pascal, "Q", 1, "Water")
    enthalpy, entropy = coolprop.PropsSI("H", *at), coolprop.PropsSI("S", *at)
    lowest = max(back, 0.5 * pressure) * 1e6
    throats = np.linspace(lowest, pascal, 100, endpoint=False)
    drop = enthalpy - coolprop.PropsSI("H", "P", throats, "S", entropy, "Water")
    density = coolprop.PropsSI("D", "P", throats, "S", entropy, "Water")
    return float(np.max(density * np.sqrt(2.0 * np.maximum(drop, 0.0)))) * 1e-6


@pytest.mark.parametrize("pressure", [0.3, 0.8, 1.5, 3.0])
@pytest.mark.parametrize("superheat", [0.0, 20.0, 100.0])
@pytest.mark.parametrize("ratio", [0.2, 0.7, 0.9])
def test_flow_agrees_with_isentropic_steam(pressure, superheat, ratio):
    boiling = steam_properties.saturation_temperature(pressure)
    state = steam_properties.steam_state(pressure, boiling + superheat if superheat else None)
    found = flow_through(1.0, pressure, state.volume, ratio * pressure, leak.exponent(superheat))
    assert found == pytest.approx(isentropic_flow(pressure, ratio * pressure, superheat), rel=0.015)


# Isentropic steam, run with CoolProp for 100 and 180 psi gauge: lb/h through a square inch.
@pytest.mark.parametrize(
    ("gauge", "napier", "isentropic"), [(100.0, 5898.6, 5882.0), (180.0, 10012.9, 9856.8)]
)
def test_both_rules_give_the_figures_known_beforehand(gauge, napier, isentropic):
    pressure = (gauge + ATMOSPHERE) * PSI
    by_rule = leak.napier_flow(SQUARE_INCH, pressure, 0.1) * 3600.0 / POUND
    assert by_rule == pytest.approx(napier, abs=0.06)
    volume = steam_properties.steam_state(pressure).volume
    by_formula = flow_through(SQUARE_INCH, pressure, volume, 0.1, 1.135) * 3600.0 / POUND
    assert by_formula == pytest.approx(isentropic, rel=0.003)


def test_exponents_of_expansion_as_printed():
    """Zeuner: 1.035 + 0.1 dryness (Lineham, Text-book of Mechanical Engineering, appendix T); a
    page on nozzles: 1.135 and 0.577 dry, 1.30 and 0.546 superheated. Both read."""
    dry, hot = leak.exponent(0.0), leak.exponent(leak.FULL_SUPERHEAT)
    assert (dry, hot) == (pytest.approx(1.035 + 0.1 * 1.0), 1.30)
    assert leak.critical_ratio(dry) == pytest.approx(0.577, abs=6e-4)
    assert leak.critical_ratio(hot) == pytest.approx(0.546, abs=6e-4)


def test_napiers_rule_joins_its_continuation_at_three_fifths():
    below, above = (leak.napier_flow(100.0, 1.0, 0.6 + step) for step in (-1e-9, 1e-9))
    assert above == pytest.approx(below, rel=1e-7)


@pytest.mark.parametrize("gauge", [30.0, 60.0, 120.0, 180.0])
def test_formula_agrees_with_rateau(gauge):
    # Rateau's rule for well-rounded orifices, as a technical dictionary prints it:
    # m = A p (16.367 - 0.96 log10 p)/1000 [lb/s, in2, psi absolute].
    psi = gauge + ATMOSPHERE
    rateau = psi * (16.367 - 0.96 * math.log10(psi)) / 1000.0
    volume = steam_properties.steam_state(psi * PSI).volume
    found = flow_through(SQUARE_INCH, psi * PSI, volume, 0.02, 1.135) / POUND
    assert found == pytest.approx(rateau, rel=0.015)


@pytest.mark.parametrize("pressure", [0.4, 0.8, 1.6])
def test_napier_agrees_with_the_rule_for_safety_valves(pressure):
    # API 520 part I sizes saturated-steam valves by Napier's rule; its constant 190.5 is rounded.
    flow = leak.napier_flow(100.0, pressure, 0.1)
    boiling = steam_properties.saturation_temperature(pressure) + 273.15
    area = API520_A_steam(m=flow, T=boiling, P1=pressure * 1e6, Kd=1.0)
    assert area * 1e6 == pytest.approx(100.0, rel=2e-3)


@pytest.mark.parametrize("k", [1.135, 1.2, 1.3])
def test_choked_perfect_gas_agrees_with_fluids(k):
    assert leak.critical_ratio(k) == pytest.approx(P_critical_flow(1.0, k), rel=1e-12)
    pressure, kelvin, weight = 0.8, 443.6, 18.01528
    volume = 8.31446261815324 / (weight * 1e-3) * kelvin / (pressure * 1e6)
    flow = flow_through(50.0, pressure, volume, 0.1, k)
    area = API520_A_g(m=flow, T=kelvin, Z=1.0, MW=weight, k=k, P1=pressure * 1e6, P2=1e5, Kd=1.0)
    assert area * 1e6 == pytest.approx(50.0, rel=1e-3)


def test_napier_runs_on_without_a_step_where_the_flow_leaves_choking():
    below = leak.napier_flow(1.0, 1.0, 0.6 - 1e-9)
    above = leak.napier_flow(1.0, 1.0, 0.6 + 1e-9)
    assert below == pytest.approx(above, rel=1e-6)


@pytest.mark.parametrize("ratio", [0.3, 0.65, 0.75, 0.85])
def test_napier_and_formula_agree_for_dry_steam(ratio):
    pressure = 0.8
    volume = steam_properties.steam_state(pressure).volume
    formula = flow_through(1.0, pressure, volume, ratio * pressure, 1.135)
    assert leak.napier_flow(1.0, pressure, ratio * pressure) == pytest.approx(formula, rel=0.06)
