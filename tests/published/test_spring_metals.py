"""Metals of springs behind a ring against makers' tables (all read)."""

import pytest

from ringwright.core.catalogue.inputs_expander import METALS
from ringwright.core.running.coil_expander import SHEAR

PSI = 6894.757293168361e-6  # N/mm2

# A wire mill's table: music wire and 302, E and G [million psi], design stress in twist as share of
# the least tensile strength, least and greatest tensile strength [ksi], hottest [degF].
WIRE_MILL = {
    "carbon-spring-steel": (30.0, 11.5, 0.45, (230.0, 399.0), 250.0),
    "stainless-spring": (28.0, 10.0, 0.30, (125.0, 325.0), 550.0),
}
# A table of moduli of spring metals notes 2 million psi less for stainless not fully hard.
NOT_HARD = 2.0
# The help of a drawing programme, metric: G [N/mm2] of patented wire and of drawn stainless.
METRIC_SHEAR = {"carbon-spring-steel": 80500.0, "stainless-spring": 68500.0}


@pytest.mark.parametrize("metal", METALS)
def test_modulus_and_heat_are_those_printed(metal):
    modulus, _, hottest = METALS[metal]
    printed, *_, fahrenheit = WIRE_MILL[metal]
    slack = NOT_HARD if metal == "stainless-spring" else 0.5
    assert printed - slack <= modulus / (1e6 * PSI) <= printed
    limit = (fahrenheit - 32.0) / 1.8
    assert limit - 40.0 < hottest <= limit


@pytest.mark.parametrize("metal", METALS)
def test_shear_modulus_is_near_what_two_tables_print(metal):
    shear = SHEAR * METALS[metal][0]
    assert shear == pytest.approx(1e6 * WIRE_MILL[metal][1] * PSI, rel=0.04)
    assert shear == pytest.approx(METRIC_SHEAR[metal], rel=0.04)


@pytest.mark.parametrize("metal", METALS)
def test_wire_bears_no_more_than_it_is_designed_for(metal):
    """What strip bears bent lies under the printed share of the strongest wire's strength."""
    _, _, share, (_, most), _ = WIRE_MILL[metal]
    assert METALS[metal][1] < share * most * 1000.0 * PSI
