"""Calculation "sizing": ring, groove and piston; how hard it presses and what breaks it."""

import math
from collections import OrderedDict, namedtuple

from .. import clearances
from ..catalogue import figures_of
from ..catalogue.inputs_blank import BLANK
from ..catalogue.inputs_ring import AS_CUT, RING
from ..catalogue.ring import SIZING
from ..cautions import cautions
from ..records import STOP
from . import heat_set, ring_findings, ring_remedies, section, spring, winding
from .design import settle
from .judging import gap_left, pressing

FIELDS = tuple(RING.values()) + tuple(BLANK.values()) + tuple(AS_CUT.values())

# What the ring of a Design does: stresses [MPa], forces [N], light [mm].
Behaviour = namedtuple(
    "Behaviour",
    (
        "closed_nominal", "closed_tension", "closed_compression", "opening", "sprung_on",
        "wound_on", "let_down", "through", "grip", "forming", "tangential", "to_close_gap",
        "to_bore_size", "light", "slack_angle",
    ),
)  # fmt: skip

# Diametral force that brings the diameter of one turn at 90 degrees to the bore, over p0*h1*r_o.
# The radius there has grown by r^2 times the integral of cos(phi) over the curvature left, phi from
# the back: kappa0*r^2 when bound, (s + 1/s)/2 of it when sprung, s = sin(psi0). pi*F*r^3/(2*E*I)
# takes out twice that.
_TO_BORE = {
    heat_set.BOUND: 4.0 / math.pi,
    heat_set.SPRUNG: 2.0 / math.pi * (heat_set.PEAK_MOMENT + 1.0 / heat_set.PEAK_MOMENT),
}


def behaviour(design):
    """The Behaviour of a Design."""
    d = design
    bore, thickness, modulus = d.duty.bore, d.section.thickness, d.duty.modulus
    ratio = bore / thickness
    round_set = d.spring.curvature_change is not None
    if round_set:
        peak = section.round_set_factors(d.duty.setting, d.duty.turns, d.duty.bearing.uniform)[1]
        peak *= 0.5 * modulus * thickness * d.spring.curvature_change
        closed = spring.ClosedStress(
            peak, peak * (ratio - 2.0) / (ratio - 1.0), peak * ratio / (ratio - 1.0)
        )
        # What a band or two plates need to close it depends on its gap alone, not on its finishing.
        contact = heat_set.contact_pressure(d.spring.curvature_change, bore, thickness, modulus)
        pull = contact * heat_set.band_share(d.duty.setting, d.duty.turns)
        tangential = spring.tangential_force(pull, bore, d.section.width)
        across = heat_set.closing_force(
            contact, bore, d.section.width, d.duty.setting, d.duty.turns
        )
        to_bore = None
        if d.duty.turns == 1:
            to_bore = 0.5 * _TO_BORE[d.duty.setting] * contact * d.section.width * bore
    else:
        closed = spring.closed_stress(d.spring.wall_pressure, bore, thickness)
        tangential = spring.tangential_force(d.spring.wall_pressure, bore, d.section.width)
        across, to_bore = spring.diametral_force(tangential)
    opening = through = None
    grip = held = 0.0
    poisson = d.duty.ring_material.poisson
    plug = _plug(d)
    if d.duty.turns == 1:
        clearance = 0.5 * (bore - d.piston_diameter)
        opening = spring.opening_to_clear(thickness, bore, d.spring.gap_change, clearance)
        sprung_on = spring.opening_stress(opening, d.spring.gap_change, bore, thickness, modulus)
    else:
        sprung_on = plug
        brittle = d.duty.ring_material.family == "iron"
        held = max(d.soak.relief.likely * d.blank.length - d.allowances.slit, 0.0)
        through = winding.turning_through(
            d.blank.length,
            d.blank.bored_radius,
            d.blank.set_thickness,
            d.blank.band_width,
            modulus,
            poisson,
            brittle,
        )
        grip = winding.grip_force(
            d.blank.length, d.allowances.slit, d.soak.relief.likely, 0.5 * (bore - thickness),
            thickness, d.turn_width, modulus, poisson,
        )  # fmt: skip
    strip = plug, bore, thickness, d.turn_width, held, modulus, poisson
    wound_on = winding.wound_on_stress(*strip)
    let_down = winding.wound_on_stress(*strip, let_down=2.0 * d.turn_width)
    if d.duty.setting == heat_set.SPREAD:
        forming = spring.opening_stress(
            d.spring.spacer_width - d.allowances.gap_kerf, 0.0,
            2.0 * d.blank.bored_radius + d.blank.set_thickness, d.blank.set_thickness, modulus,
        )  # fmt: skip
    else:
        forming = heat_set.forming_stress(
            d.blank.bored_radius, d.spring.former_radius, d.blank.set_thickness, modulus
        )
    light = 0.0
    if d.duty.bearing.light:
        light = heat_set.widest_light(d.spring.curvature_change, bore, thickness)
    slack = 0.0 if d.duty.bearing.uniform else heat_set.SLACK_ANGLE
    return Behaviour(
        closed_nominal=closed.nominal,
        closed_tension=closed.tension,
        closed_compression=closed.compression,
        opening=opening,
        sprung_on=sprung_on,
        wound_on=wound_on,
        let_down=let_down,
        through=through,
        grip=grip,
        forming=forming,
        tangential=tangential,
        to_close_gap=across,
        to_bore_size=to_bore,
        light=light,
        slack_angle=slack,
    )


def _plug(d):
    """Largest stress on a taper plug of the piston's size [MPa]."""
    if d.spring.curvature_change is None:
        work, eased = winding.plug_stress, d.spring.wall_pressure
    else:
        work, eased = winding.plug_stress_round, d.spring.curvature_change
    return work(eased, d.duty.bore, d.section.thickness, d.duty.modulus)


def calculate(values):
    """The sizing of one ring: figures, findings, what was chosen, cautions.

    values: checked values of FIELDS, a plain dict in core units. Raises InputProblem.
    """
    design, chosen = settle(values)
    return answer(design, chosen, values)


def answer(design, chosen, values):
    """As `calculate`, for a Design already settled.

    design: a Design. chosen: list of Choice. values: the checked inputs that it was settled from.
    """
    acts = behaviour(design)
    rows = ring_findings.findings(design, acts)
    return OrderedDict(
        (
            ("figures", figures(design, acts)),
            ("findings", ring_remedies.told(values, design, rows, _judged)),
            ("chosen", chosen),
            ("cautions", cautions("figures", "pressure-system", "stored-spring")),
        )
    )


def stops(design, values=None):
    """List of Finding: what stops the ring of a Design, by every check of sizing.

    design: a Design. values: checked inputs, for remedies that were tried; None for words alone.
    """
    rows = ring_findings.findings(design, behaviour(design))
    rows = [row for row in rows if row.outcome == STOP]
    if values is None or not rows:
        return rows
    return ring_remedies.told(values, design, rows, _judged)


def _judged(values):
    design, _ = settle(values)
    return ring_findings.findings(design, behaviour(design)), design


def figures(design, acts):
    """OrderedDict of Figure for a Design and its Behaviour."""
    d = design
    values = _ring_values(d, acts)
    values.update(_clearance_values(d))
    round_set = d.spring.curvature_change is not None
    pressure = "round-set-pressure"
    if d.duty.bearing.uniform:
        pressure = "band-pressure" if round_set else "uniform-pressure"
    closed = "round-set-stress" if round_set else "closed-stress"
    methods = {
        "free_gap": "round-set-gap" if round_set else "uniform-gap",
        "wall_pressure": pressure,
        "contact_pressure": pressure,
        "closed_stress": closed,
        "closed_stress_nominal": closed,
        "closed_compression": closed,
        "sprung_on_stress": "opening-stress"
        if d.duty.turns == 1
        else "round-set-plug"
        if round_set
        else "plug-stress",
        "forming_stress": "opening-stress"
        if d.spring.former_diameter is None
        else "forming-stress",
    }
    return figures_of(SIZING, values, _given(d, acts, values), methods)


def _given(d, acts, placed):
    """symbol -> number, for the workings. placed: name -> number of the clearances."""
    steam = d.duty.temperature
    double = d.duty.turns == 2
    return {
        "d1": d.duty.bore,
        "a1": d.section.thickness,
        "h1": d.section.width,
        "E": d.duty.modulus,
        "nu": d.duty.ring_material.poisson,
        "p": d.spring.wall_pressure,
        "p_x": d.expander_pressure,
        "m": d.spring.gap_change,
        "s1": d.duty.closed_gap,
        "g": acts.opening,
        "kappa0": d.spring.curvature_change,
        "Ft": acts.tangential,
        "Df": d.spring.former_diameter,
        "r_b": d.blank.bored_radius,
        "a": d.blank.set_thickness,
        "b": d.blank.band_width,
        "L": d.blank.length if double else None,
        "k": d.allowances.slit if double else None,
        "eta": d.soak.relief.likely if double else None,
        "h": d.turn_width,
        "sigma_p": _plug(d),
        "alpha_r": d.duty.ring_material.expansion,
        "alpha_p": d.duty.piston.expansion,
        "alpha_c": d.duty.cylinder.expansion,
        "p_s": d.duty.steam_pressure,
        "T_r": steam,
        "T_p": steam,
        "T_c": d.duty.wall_temperature,
        "T_w": d.duty.warming_wall_temperature,
        "T_0": d.duty.shop,
        "c": d.side_clearance,
        "depth": d.groove_depth,
        "d_p": d.piston_diameter,
        "r": 0.5 * (d.duty.bore - d.section.thickness),
        "r_o": 0.5 * d.duty.bore,
        "p_c": 2.0 * acts.tangential / (d.section.width * d.duty.bore),
        "c_hot": placed["side_clearance_hot"],
    }


def _ring_values(d, acts):
    """name -> number: how the ring is, bears and is strained."""
    wound = acts.wound_on
    double = d.duty.turns == 2
    return {
        "radial_thickness": d.section.thickness,
        "ring_width": d.section.width,
        "turn_width": d.turn_width,
        "inside_diameter": d.inside_diameter,
        "free_gap": d.spring.gap_change + d.duty.closed_gap,
        "closed_gap": d.duty.closed_gap,
        "closed_gap_thumb_rule": clearances.thumb_rule_gap(d.duty.bore),
        "wall_pressure": d.spring.wall_pressure,
        "total_wall_pressure": pressing(d) if d.expander_pressure else None,
        "contact_pressure": d.spring.contact_pressure,
        "closed_stress": acts.closed_tension,
        "closed_stress_nominal": acts.closed_nominal,
        "closed_compression": acts.closed_compression,
        "sprung_on_opening": acts.opening,
        "sprung_on_stress": acts.sprung_on,
        "wound_on_stress": (
            0.95 * wound.spread_out,
            wound.spread_out,
            # In haste, and from the groove.
            acts.let_down.hurried_high,
        ),
        "turning_through_stress": acts.through.equivalent if double else None,
        "turning_through_force": acts.through.force if double else None,
        "grip_force": acts.grip if double else None,
        "forming_stress": acts.forming,
        "tangential_force": acts.tangential,
        "diametral_force": acts.to_close_gap,
        "diametral_force_to_bore": acts.to_bore_size,
        "widest_light": acts.light,
        "slack_angle": acts.slack_angle,
        "former_ratio": d.spring.former_diameter and d.spring.former_diameter / d.inside_diameter,
    }


def _clearance_values(d):
    """name -> number: groove, piston, and both when they are hot."""
    ring, piston, cylinder = d.duty.ring_material, d.duty.piston, d.duty.cylinder
    steam, shop = d.duty.temperature, d.duty.shop
    heat = {"ring_temperature": steam, "shop_temperature": shop, "ring_expansion": ring.expansion}
    in_groove = {"piston_expansion": piston.expansion, "piston_temperature": steam}
    placed = {
        "bore": d.duty.bore,
        "piston_diameter": d.piston_diameter,
        "radial_thickness": d.section.thickness,
        "depth": d.groove_depth,
    }
    return {
        "saturation_temperature": d.duty.saturation,
        "steam_temperature": steam,
        "closed_gap_hot": gap_left(d, d.duty.closed_gap, d.duty.wall_temperature),
        "side_clearance": d.side_clearance,
        "side_clearance_hot": clearances.hot_side_clearance(
            ring_width=d.section.width, clearance=d.side_clearance, **in_groove, **heat
        ),
        "groove_width": d.groove_width,
        "groove_depth": d.groove_depth,
        "back_clearance": clearances.back_clearance(**placed),
        "back_clearance_hot": clearances.hot_back_clearance(
            cylinder_expansion=cylinder.expansion,
            cylinder_temperature=d.duty.warming_wall_temperature,
            **placed,
            **in_groove,
            **heat,
        ),
        "piston_diameter": d.piston_diameter,
        "piston_diameter_hot": d.piston_diameter * clearances.growth(piston.expansion, steam, shop),
        "piston_clearance": d.duty.bore - d.piston_diameter,
        "piston_clearance_hot": clearances.hot_piston_clearance(
            bore=d.duty.bore,
            piston_diameter=d.piston_diameter,
            piston_expansion=piston.expansion,
            cylinder_expansion=cylinder.expansion,
            piston_temperature=steam,
            cylinder_temperature=d.duty.warming_wall_temperature,
            shop_temperature=shop,
        ),
    }
