"""What a ring is for: its metals, heat, gap, piston and groove by hand figures.

Thermal expansion: an aluminium piston and a bronze ring in iron, each from its own 1 + alpha rise.
"""

import math

import pytest

from ringwright.core import clearances
from ringwright.core.catalogue.inputs import Chooser
from ringwright.core.catalogue.inputs_blank import BLANK
from ringwright.core.catalogue.inputs_ring import RING
from ringwright.core.problems import InputProblem
from ringwright.core.properties.materials import material
from ringwright.core.ring import duty

ALPHA = {key: material(key).expansion for key in ("phosphor-bronze", "grey-iron", "aluminium")}
RISE = 165.0
GIVEN = {
    "bore": 80.0,
    "ring_type": "plain",
    "ring_material": "phosphor-bronze",
    "cylinder_material": "grey-iron",
    "piston_material": "aluminium",
    "steam_pressure": 0.7,
    "steam_temperature": 180.0,
    "shop_temperature": 15.0,
}


def asked(**more):
    take = Chooser({**GIVEN, **more}, RING, BLANK)
    return take, duty.duty_of(take)


def grown(key, rise=RISE):
    return 1.0 + ALPHA[key] * rise


@pytest.mark.parametrize(
    ("ring_type", "turns", "wall"), [("plain", 1, 97.5), ("double-turn", 2, 15.0)]
)
def test_a_gap_is_filed_half_warm_or_stone_cold(ring_type, turns, wall):
    _, found = asked(ring_type=ring_type)
    assert (found.turns, found.rings) == (turns, 2)
    assert (found.wall_temperature, found.warming_wall_temperature) == (wall, 97.5)
    ring, bore = grown("phosphor-bronze"), grown("grey-iron", wall - 15.0)
    # The ends meet, and 0.0005 of the bore more.
    gap = math.pi * 80.0 * (1.0 - bore / ring) + 0.04 / ring
    assert found.closed_gap == pytest.approx(gap, rel=1e-9)
    assert found.heat == {
        "ring_temperature": 180.0,
        "shop_temperature": 15.0,
        "ring_expansion": ALPHA["phosphor-bronze"],
    }
    assert (found.temperature, found.shop, found.steam_pressure) == (180.0, 15.0, 0.7)
    # Steam of 7 bar above the air boils at 170.4 C: steam tables, 0.8013 MPa.
    assert found.saturation == pytest.approx(170.5, abs=0.2)


def piston(**more):
    take, found = asked(**more)
    return duty.piston_diameter(take, found)


def test_a_piston_does_not_seize_half_warm():
    """0.001 of the bore is left between them: d_p = (80 cylinder - 0.08)/piston."""
    left = (80.0 * grown("grey-iron", 82.5) - 0.08) / grown("aluminium")
    assert piston() == pytest.approx(left, rel=1e-9)
    # Nothing grows so little that less is left cold: an iron piston in an iron bore of 10 mm.
    assert piston(piston_diameter=79.7) == 79.7


@pytest.mark.parametrize(
    ("diameter", "fits"),
    [(63.99, False), (64.0, False), (64.01, True), (79.999, True), (80.0, False)],
)
def test_a_piston_belongs_to_its_bore_from_four_fifths_of_it(diameter, fits):
    if fits:
        assert piston(piston_diameter=diameter) == diameter
        return
    with pytest.raises(InputProblem) as caught:
        piston(piston_diameter=diameter)
    (fault,) = caught.value.faults
    assert fault.path == ("piston_diameter",)
    assert (fault.value, fault.lowest, fault.highest) == (diameter, pytest.approx(64.0), 80.0)


def test_play_at_the_sides_is_left_hot():
    """At 80 mm, 30/250 of the way from 0.001 and 0.003 in to 0.002 and 0.005: a quarter up."""
    least, most = 0.0254 + 0.12 * 0.0254, 0.0762 + 0.12 * 0.0508
    aim = least + 0.25 * (most - least)
    _, found = asked()
    # The aluminium groove outgrows the ring: nearest when cold.
    assert duty.side_clearance(found, 4.0) == pytest.approx(aim, rel=1e-9)
    _, found = asked(piston_material="grey-iron")
    hot = (aim + 4.0 * grown("phosphor-bronze")) / grown("grey-iron") - 4.0
    assert hot > aim
    assert duty.side_clearance(found, 4.0) == pytest.approx(hot, rel=1e-9)


def test_a_groove_is_deeper_than_its_ring():
    """By 0.4 mm (Khurmi and Gupta), cold or hot, whichever asks for more."""
    _, found = asked()
    assert duty.groove_depth(found, 2.6) == pytest.approx(2.6 + clearances.DEPTH_ALLOWANCE)
    _, found = asked(piston_material="grey-iron")
    hot = (2.6 * grown("phosphor-bronze") + 0.4) / grown("grey-iron")
    assert duty.groove_depth(found, 2.6) == pytest.approx(max(hot, 3.0), rel=1e-9)
