"""Whole designs against what the trade does: rules that nobody derived from one another.

Walshaw, An essay on piston rings, part 2 (read): 6 to 8 lbf/in2 in model, stationary, marine and
road engines. Blake, text on curved members, p. 318 (read): section about D/32 not to break when
sprung open. A design reported by Walshaw (read): D/25 to D/30. Common practice, no source: round
former for a double-turn ring about 1.022 times the ring's inside diameter. Khurmi and Gupta 32.9
(read): closed gap 0.002 to 0.004 D, groove depth t + 0.4 mm.
"""

import pytest

from ringwright.core.ring.design import settle

PSI = 6894.757293168361e-6


@pytest.mark.parametrize("bore", [50.0, 80.0, 150.0, 250.0])
def test_the_practice_former_on_a_usual_section_gives_the_practice_pressure(bore):
    """Two rules that share no derivation meet: D/30 on a 1.022 former presses 6 to 8 psi."""
    design, _ = settle({"bore": bore, "radial_thickness": bore / 30, "former_ratio": 1.022})
    assert 6.0 <= design.spring.wall_pressure / PSI <= 8.0


@pytest.mark.parametrize("bore", [40.0, 80.0, 150.0, 300.0])
def test_a_plain_ring_is_as_thick_as_blake_says(bore):
    design, _ = settle({"bore": bore, "ring_type": "plain"})
    assert bore / design.section.thickness == pytest.approx(32, abs=1.5)


@pytest.mark.parametrize("bore", [50.0, 100.0, 200.0])
def test_gap_and_groove_lie_within_the_textbook(bore):
    design, _ = settle({"bore": bore, "ring_type": "plain"})
    assert 0.002 * bore <= design.duty.closed_gap <= 0.004 * bore
    assert design.groove_depth == pytest.approx(design.section.thickness + 0.4, abs=0.02)


def test_default_pressure_is_within_practice():
    design, _ = settle({"bore": 80.0})
    assert 6.0 <= design.spring.wall_pressure / PSI <= 8.0
