"""A whole ring as it is settled and what it does: each size and force from its own formula.

The blank: the neutral line keeps its metal. Forces and stresses: thin rings, as books print them.
"""

import math

import pytest

from ringwright.core.properties.materials import mean_expansion
from ringwright.core.ring import heat_set, spring, winding
from ringwright.core.ring.design import as_inputs, settle
from ringwright.core.ring.sizing import behaviour, figures

GIVEN = {
    "bore": 80.0,
    "radial_thickness": 2.6,
    "ring_width": 5.0,
    "closed_gap": 0.4,
    "clamped_gap": 0.3,
    "end_kerf": 0.9,
    "end_cut": "angled-60",
    "slit_width": 0.7,
    "facing_allowance": 0.35,
    "finishing_allowance": 0.6,
    "piston_diameter": 79.6,
    "modulus": 104000.0,
    "relief": 0.83,
    "groove_width": 5.06,
    "groove_depth": 3.1,
    "steam_temperature": 180.0,
    "shop_temperature": 15.0,
    "wall_pressure": 0.047,
}
E = 104000.0
KERF = 0.9 * 2.0 / math.sqrt(3.0)


def ring(ring_type="double-turn", **more):
    return settle({**GIVEN, "ring_type": ring_type, **more})[0]


@pytest.mark.parametrize(
    ("ring_type", "finishing", "inside", "band", "length", "turn"),
    [
        ("plain", "closing-ring", 0.0, 5.7, 5.7, 5.0),
        ("double-turn", "closing-ring", 0.0, 3.2, 7.1, 2.5),
        # Held by a band 0.3 mm is left inside as well.
        ("double-turn", "band", 0.3, 3.2, 7.1, 2.5),
    ],
)
def test_a_blank_as_it_is_bored_and_turned(ring_type, finishing, inside, band, length, turn):
    d = ring(ring_type, finishing=finishing)
    grown = (KERF - 0.3) / math.pi
    turned = 80.0 - 0.1 / math.pi
    bored = turned - 5.2 + grown - 2.0 * inside
    assert d.blank.band_width == pytest.approx(band, rel=1e-12)
    assert d.blank.length == pytest.approx(length, rel=1e-12)
    assert d.blank.finish_outside == pytest.approx(turned, rel=1e-12)
    assert d.blank.rough_outside == pytest.approx(turned + grown + 0.6, rel=1e-12)
    assert d.blank.bored_inside == pytest.approx(bored, rel=1e-12)
    # 2.6, half of what is left outside, and what is left inside.
    assert d.blank.set_thickness == pytest.approx(2.9 + inside, rel=1e-12)
    assert d.blank.bored_radius == pytest.approx(0.5 * (bored + 2.9 + inside), rel=1e-12)
    assert (d.turn_width, d.inside_diameter) == (turn, pytest.approx(74.8, rel=1e-12))


def test_a_groove_that_is_there_was_measured_or_is_yet_to_be_cut():
    d = ring()
    assert (d.groove_width, d.groove_there) == (5.06, True)
    assert d.side_clearance == pytest.approx(0.06, abs=1e-12)
    d = ring(measured_groove_width=5.09)
    assert (d.groove_width, d.groove_there) == (5.09, True)
    assert d.side_clearance == pytest.approx(0.09, abs=1e-12)
    assert ring(groove_width=None, measured_groove_width=5.09).groove_there is True
    d = ring(groove_width=None)
    assert d.groove_there is False
    assert 5.0 < d.groove_width < 5.1
    assert (d.expander_pressure, ring(expander_pressure=0.02).expander_pressure) == (0.0, 0.02)


def test_a_former_grows_on_its_way_to_the_soak():
    """(1 + alpha_f rise)/(1 + alpha_r rise), from the shop to 500 C."""
    d = ring(soak_temperature=500.0, former_material="steel")
    former, metal = mean_expansion("steel", 500.0), mean_expansion("grey-iron", 500.0)
    grown = (1.0 + former * 485.0) / (1.0 + metal * 485.0)
    assert d.former_growth == pytest.approx(grown, rel=1e-12)


def test_a_design_asked_for_again_is_the_same():
    d = ring()
    again = as_inputs(d)
    assert again["former_diameter"] == d.spring.former_diameter
    for name in ("radial_thickness", "ring_width", "closed_gap", "wall_pressure", "groove_width"):
        assert again[name] == pytest.approx(GIVEN[name], rel=1e-12)
    assert (again["end_kerf"], again["piston_diameter"]) == (0.9, 79.6)


@pytest.mark.parametrize(
    ("setting", "to_bore"),
    [
        # Bound: the radius grows by kappa0 r^2; pi F r^3/(2 E I) takes out twice that: 4/pi.
        ("bound", 4.0 / math.pi),
        # Sprung: (s + 1/s)/2 of it, s the sine of the slack angle.
        ("sprung", 2.0 / math.pi * (math.sin(2.139182173773113) + 1 / math.sin(2.139182173773113))),
    ],
)
@pytest.mark.parametrize("ring_type", ["plain", "double-turn"])
def test_what_a_round_set_ring_does(setting, to_bore, ring_type):
    d = ring(ring_type, setting=setting, finishing="forced-round")
    acts = behaviour(d)
    turns = d.duty.turns
    kappa = d.spring.curvature_change
    x = 80.0 / 2.6
    # 1.187 of the even moment, E a1 kappa0/2; outside (x - 2)/(x - 1), inside x/(x - 1).
    nominal = 0.5 * E * 2.6 * kappa / math.sin(2.139182173773113)
    assert acts.closed_nominal == pytest.approx(nominal, rel=1e-9)
    assert acts.closed_tension == pytest.approx(nominal * (x - 2.0) / (x - 1.0), rel=1e-9)
    assert acts.closed_compression == pytest.approx(nominal * x / (x - 1.0), rel=1e-9)
    p0 = E * 2.6**3 * kappa / (3.0 * 77.4 * 80.0)
    share = {
        ("bound", 1): 2 / 3,
        ("sprung", 1): 0.68947,
        ("bound", 2): 0.8782,
        ("sprung", 2): 0.8936,
    }
    pull = 0.5 * p0 * share[setting, turns] * 5.0 * 80.0
    assert acts.tangential == pytest.approx(pull, rel=1e-9)
    assert acts.to_close_gap == pytest.approx(
        heat_set.closing_force(p0, 80.0, 5.0, setting, turns), rel=1e-9
    )
    if turns == 1:
        assert acts.to_bore_size == pytest.approx(to_bore * p0 * 5.0 * 40.0, rel=1e-9)
    else:
        assert acts.to_bore_size is None
    # 0.1047 kappa0 r^2 of light, but sprung none.
    light = 0.10475 * kappa * 38.7**2 if setting == "bound" else 0.0
    assert acts.light == pytest.approx(light, rel=1e-4)
    assert acts.slack_angle == pytest.approx(122.57, abs=0.01)
    assert behaviour(ring(ring_type, setting=setting, finishing="band")).slack_angle == 0.0
    a, on, bored = d.blank.set_thickness, d.spring.former_radius, d.blank.bored_radius
    forming = 0.5 * E * a * (1.0 / bored - 1.0 / on) * (1.0 + 0.5 * a / on)
    assert acts.forming == pytest.approx(forming / math.sin(2.139182173773113), rel=1e-9)


def test_what_a_spread_ring_does():
    d = ring("plain", setting="spread")
    acts = behaviour(d)
    x = 80.0 / 2.6
    assert acts.closed_nominal == pytest.approx(3.0 * 0.047 * x * (x - 1.0), rel=1e-9)
    assert acts.closed_tension == pytest.approx(3.0 * 0.047 * x * (x - 2.0), rel=1e-9)
    assert acts.tangential == pytest.approx(0.5 * 0.047 * 5.0 * 80.0, rel=1e-9)
    assert acts.to_close_gap == pytest.approx(6.0 * math.pi / (4.0 + math.pi) * 9.4, rel=1e-9)
    assert acts.to_bore_size == pytest.approx((1.0 + 4.0 / math.pi) * 9.4, rel=1e-9)
    m = d.spring.gap_change
    # The piston stands 0.2 mm clear on a side.
    assert acts.opening == pytest.approx(spring.opening_to_clear(2.6, 80.0, m, 0.2), rel=1e-9)
    assert acts.sprung_on == pytest.approx(
        spring.opening_stress(acts.opening, m, 80.0, 2.6, E), rel=1e-9
    )
    # Spread on its spacer from as it was sawn, at the bored ring's outside, 2.9 mm thick.
    outside = 2.0 * d.blank.bored_radius + 2.9
    opened = spring.opening_stress(d.spring.spacer_width - KERF, 0.0, outside, 2.9, E)
    assert acts.forming == pytest.approx(opened, rel=1e-9)
    assert (acts.light, acts.slack_angle, acts.grip, acts.through) == (0.0, 0.0, 0.0, None)


def test_what_winding_on_and_turning_through_do():
    d = ring(setting="bound", finishing="forced-round")
    acts = behaviour(d)
    poisson = d.duty.ring_material.poisson
    plug = winding.plug_stress_round(d.spring.curvature_change, 80.0, 2.6, E)
    assert acts.sprung_on == pytest.approx(plug, rel=1e-9)
    # 0.83 of 7.1 mm is set, less the slit of 0.7.
    held = 0.83 * 7.1 - 0.7
    on = winding.wound_on_stress(plug, 80.0, 2.6, 2.5, held, E, poisson)
    assert acts.wound_on == pytest.approx(on, rel=1e-9)
    down = winding.wound_on_stress(plug, 80.0, 2.6, 2.5, held, E, poisson, let_down=5.0)
    assert acts.let_down == pytest.approx(down, rel=1e-9)
    grip = winding.grip_force(7.1, 0.7, 0.83, 38.7, 2.6, 2.5, E, poisson)
    assert acts.grip == pytest.approx(grip, rel=1e-9)
    through = winding.turning_through(7.1, d.blank.bored_radius, 2.9, 3.2, E, poisson, True)
    assert acts.through == pytest.approx(through, rel=1e-9)
    # So little is set that the slit stays open: none of it is held.
    loose = ring(setting="bound", slit_width=4.0, relief=0.2)
    curvature = loose.spring.curvature_change
    plug = winding.plug_stress_round(curvature, 80.0, 2.6, E)
    on = winding.wound_on_stress(plug, 80.0, 2.6, 2.5, 0.0, E, poisson)
    assert behaviour(loose).wound_on == pytest.approx(on, rel=1e-9)


def shown(d):
    acts = behaviour(d)
    return {name: figure.value for name, figure in figures(d, acts).items()}


def test_figures_of_a_ring():
    d = ring(setting="bound", finishing="forced-round", expander_pressure=0.013)
    found = shown(d)
    assert found["free_gap"] == pytest.approx(d.spring.gap_change + 0.4)
    assert found["total_wall_pressure"] == pytest.approx(0.06)
    assert found["former_ratio"] == pytest.approx(d.spring.former_diameter / 74.8)
    assert found["piston_clearance"] == pytest.approx(0.4)
    assert found["closed_gap_thumb_rule"] == pytest.approx(0.16)
    # Concentric: 0.5 below the ring and 0.2 of the piston's clearance.
    assert found["back_clearance"] == pytest.approx(0.7)
    ring_alpha = d.duty.ring_material.expansion
    grown = 1.0 + ring_alpha * 165.0
    piston = 1.0 + d.duty.piston.expansion * 165.0
    wall = 1.0 + d.duty.cylinder.expansion * 82.5
    assert found["side_clearance_hot"] == pytest.approx(5.06 * piston - 5.0 * grown, rel=1e-9)
    assert found["piston_diameter_hot"] == pytest.approx(79.6 * piston, rel=1e-12)
    assert found["piston_clearance_hot"] == pytest.approx(80.0 * wall - 79.6 * piston, rel=1e-9)
    back = 40.0 * wall - 2.6 * grown - (39.8 - 3.1) * piston
    assert found["back_clearance_hot"] == pytest.approx(back, rel=1e-9)
    assert "total_wall_pressure" not in shown(ring())
