"""What a section is tried on: each size of the ring, its metal and its making in its own place."""

import pytest

from ringwright.core.properties.materials import material
from ringwright.core.ring import section
from ringwright.core.ring.design import settle

# A double-turn ring with every size given, no two alike.
GIVEN = {
    "bore": 80.0,
    "ring_type": "double-turn",
    "ring_material": "grey-iron",
    "modulus": 101000.0,
    "setting": "bound",
    "finishing": "band",
    "radial_thickness": 2.6,
    "ring_width": 5.0,
    "slit_width": 0.9,
    "facing_allowance": 0.25,
    "finishing_allowance": 0.7,
    "piston_diameter": 79.6,
}


def test_the_pictures_try_other_sections_on_the_ring_as_it_is():
    design, _ = settle(GIVEN)
    task = section.task_of(design, pressure=0.06, width=4.0)
    metal = material("grey-iron")
    assert (task.bore, task.modulus) == (80.0, 101000.0)
    assert (task.poisson, task.strength) == (metal.poisson, metal.bending_strength)
    assert (task.brittle, task.turns, task.setting) == (True, 2, "bound")
    # A band bears on it all round while it is turned.
    assert task.uniform is True
    assert (task.pressure, task.width) == (0.06, 4.0)
    assert task.width_ratio == pytest.approx(4.0 / 2.6)
    assert (task.slit, task.facing, task.finishing) == (0.9, 0.25, 0.7)
    # On a side, the piston in the middle.
    assert task.piston_clearance == pytest.approx(0.2)
