"""The ring on the piston as sizing's checks are to see it: each size in its own place."""

import pytest

from ringwright.core.properties.materials import material
from ringwright.core.running import ring_at_hand

GIVEN = {
    "bore": 80.0,
    "ring_type": "plain",
    "ring_material": "phosphor-bronze",
    "cylinder_material": "grey-iron",
    "piston_material": "aluminium",
    "radial_thickness": 2.6,
    "ring_width": 3.9,
    "steam_pressure": 0.7,
    "steam_temperature": 180.0,
    "shop_temperature": 15.0,
    "worn_gap": 0.6,
    "wall_pressure": 0.041,
    "expander_pressure": 0.013,
    "side_clearance": 0.052,
    "piston_diameter": 79.3,
}


def standing(**more):
    return ring_at_hand.standing({**GIVEN, **more})


@pytest.mark.parametrize(
    ("ring_type", "turns", "wall"), [("plain", 1, 97.5), ("double-turn", 2, 15.0)]
)
def test_a_ring_as_it_stands(ring_type, turns, wall):
    found = standing(ring_type=ring_type)
    duty = found.duty
    assert (duty.bore, duty.turns, duty.closed_gap) == (80.0, turns, 0.6)
    metals = [each.key for each in (duty.ring_material, duty.cylinder, duty.piston)]
    assert metals == ["phosphor-bronze", "grey-iron", "aluminium"]
    assert duty.modulus == material("phosphor-bronze").modulus
    # Steam of 7 bar above the air boils at 170.5 C (steam tables).
    assert duty.saturation == pytest.approx(170.5, abs=0.2)
    assert (duty.steam_pressure, duty.temperature, duty.shop) == (0.7, 180.0, 15.0)
    # Half warm; a double-turn ring is filed stone cold.
    assert (duty.warming_wall_temperature, duty.wall_temperature) == (97.5, wall)
    assert (found.section.thickness, found.section.width) == (2.6, 3.9)
    assert (found.spring.wall_pressure, found.expander_pressure) == (0.041, 0.013)
    assert standing(expander_pressure=None).expander_pressure == 0.0
    assert found.groove_width == pytest.approx(3.952, rel=1e-12)
    assert (found.side_clearance, found.groove_depth) == (0.052, None)
    assert found.piston_diameter == 79.3


def test_what_is_not_good_of_it_is_said_and_no_more():
    said = {row.check: row for row in ring_at_hand.findings({**GIVEN, "steam_temperature": 350.0})}
    # Hotter than bronze stands and closed in a cold cylinder: the running engine says so itself.
    assert "ring-heat" not in said and "cold-start" not in said
    assert all(row.outcome != "good" for row in said.values())
    assert "piston-metal" in said
    slack = {row.check for row in ring_at_hand.findings({**GIVEN, "wall_pressure": 0.005})}
    assert "too-slack" in slack
