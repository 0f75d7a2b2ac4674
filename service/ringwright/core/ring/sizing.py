"""Calculation "sizing": ring, groove and piston; how hard it presses and what breaks it."""

import math
from collections import OrderedDict, namedtuple

from .. import clearances
from ..cautions import cautions
from ..records import figure
from . import heat_set, ring_findings, section, spring, winding
from .design import settle
from .fit_findings import gap_left
from .ring_inputs import BLANK_FIELDS, RING_FIELDS

FIELDS = RING_FIELDS + BLANK_FIELDS

# What the ring of a Design does: stresses [MPa], forces [N], light [mm].
Behaviour = namedtuple(
    "Behaviour",
    (
        "closed_nominal", "closed_tension", "closed_compression", "opening", "sprung_on",
        "wound_on", "through", "grip", "forming", "tangential", "to_close_gap", "to_bore_size",
        "light", "slack_angle",
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
    bore, thickness, modulus = d.bore, d.radial_thickness, d.modulus
    ratio = bore / thickness
    round_set = d.curvature_change is not None
    if round_set:
        peak = section.round_set_factors(d.setting, d.turns, d.bearing.uniform)[1]
        peak *= 0.5 * modulus * thickness * d.curvature_change
        closed = spring.ClosedStress(
            peak, peak * (ratio - 2.0) / (ratio - 1.0), peak * ratio / (ratio - 1.0)
        )
        # What a band or two plates need to close it depends on its gap alone, not on its finishing.
        contact = heat_set.contact_pressure(d.curvature_change, bore, thickness, modulus)
        pull = contact * heat_set.band_share(d.setting, d.turns)
        tangential = spring.tangential_force(pull, bore, d.ring_width)
        across = heat_set.closing_force(contact, bore, d.ring_width, d.setting, d.turns)
        to_bore = None
        if d.turns == 1:
            to_bore = 0.5 * _TO_BORE[d.setting] * contact * d.ring_width * bore
    else:
        closed = spring.closed_stress(d.wall_pressure, bore, thickness)
        tangential = spring.tangential_force(d.wall_pressure, bore, d.ring_width)
        across, to_bore = spring.diametral_force(tangential)
    even = winding.wound_on_stress(bore, thickness, modulus, d.wall_pressure)
    opening = through = None
    grip = 0.0
    if d.turns == 1:
        clearance = 0.5 * (bore - d.piston_diameter)
        opening = spring.opening_to_clear(thickness, bore, d.gap_change, clearance)
        sprung_on = spring.opening_stress(opening, d.gap_change, bore, thickness, modulus)
    else:
        sprung_on = winding.plug_stress(d.wall_pressure, bore, thickness, modulus)
        if round_set:
            sprung_on = winding.plug_stress_round(d.curvature_change, bore, thickness, modulus)
        brittle = d.ring_material.family == "iron"
        poisson = d.ring_material.poisson
        through = winding.turning_through(
            d.blank_length, d.bored_radius, d.set_thickness, d.band_width, modulus, poisson, brittle
        )
        grip = winding.grip_force(
            d.blank_length, d.slit_width, d.relief, 0.5 * (bore - thickness), thickness,
            d.turn_width, modulus, poisson,
        )  # fmt: skip
    if d.setting == heat_set.SPREAD:
        forming = spring.opening_stress(
            d.spacer_width - d.gap_kerf, 0.0, 2.0 * d.bored_radius + d.set_thickness,
            d.set_thickness, modulus,
        )  # fmt: skip
    else:
        forming = heat_set.forming_stress(d.bored_radius, d.former_radius, d.set_thickness, modulus)
    light = 0.0
    if d.bearing.light:
        light = heat_set.widest_light(d.curvature_change, bore, thickness)
    slack = 0.0 if d.bearing.uniform else heat_set.SLACK_ANGLE
    return Behaviour(
        closed.nominal, closed.tension, closed.compression, opening, sprung_on,
        even, through, grip, forming, tangential, across, to_bore,
        light, slack,
    )  # fmt: skip


def calculate(values):
    """The sizing of one ring: figures, findings, what was chosen, cautions.

    values: checked values of FIELDS, a plain dict in core units. Raises InputProblem.
    """
    design, chosen = settle(values)
    return answer(design, chosen)


def answer(design, chosen):
    """As `calculate`, for a Design already settled. design: a Design. chosen: list of Choice."""
    acts = behaviour(design)
    return OrderedDict(
        (
            ("figures", figures(design, acts)),
            ("findings", ring_findings.findings(design, acts)),
            ("chosen", chosen),
            ("cautions", cautions("figures", "pressure-system", "stored-spring")),
        )
    )


def figures(design, acts):
    """OrderedDict of Figure for a Design and its Behaviour."""
    d = design
    bore, thickness, modulus = d.bore, d.radial_thickness, d.modulus
    sized = (("d1", bore, "mm"), ("a1", thickness, "mm"))
    elastic = sized + (("E", modulus, "MPa"),)
    pressed = sized + (("p", d.wall_pressure, "MPa"),)
    sprung = elastic + (("m", d.gap_change, "mm"),)
    pressure_method = "round-set-pressure"
    if d.bearing.uniform:
        pressure_method = "uniform-pressure" if d.curvature_change is None else "band-pressure"
    out = OrderedDict()
    out["radial_thickness"] = figure(thickness, "mm", "a1", "section-window", elastic)
    out["ring_width"] = figure(d.ring_width, "mm", "h1", "ring-width", sized)
    out["turn_width"] = figure(d.turn_width, "mm", "h", "ring-width", (("h1", d.ring_width, "mm"),))
    out["inside_diameter"] = figure(d.inside_diameter, "mm", "d1 - 2 a1", "geometry", sized)
    out["free_gap"] = figure(
        d.gap_change + d.closed_gap,
        "mm",
        "m + s1",
        "uniform-gap" if d.curvature_change is None else "round-set-gap",
        elastic + (("p", d.wall_pressure, "MPa"), ("s1", d.closed_gap, "mm")),
    )
    out["closed_gap"] = figure(
        d.closed_gap,
        "mm",
        "s1",
        "closed-gap",
        (
            ("d1", bore, "mm"),
            ("alpha_r", d.ring_material.expansion, "1/K"),
            ("alpha_c", d.cylinder_material.expansion, "1/K"),
            ("T_r", d.steam_temperature, "degC"),
            ("T_c", d.wall_temperature, "degC"),
            ("T_0", d.shop_temperature, "degC"),
        ),
    )
    out["closed_gap_thumb_rule"] = figure(
        clearances.thumb_rule_gap(bore), "mm", "s1", "thumb-rule-gap", (("d1", bore, "mm"),)
    )
    out["wall_pressure"] = figure(d.wall_pressure, "MPa", "p", pressure_method, sprung)
    out["contact_pressure"] = figure(
        d.contact_pressure,
        "MPa",
        "p0",
        pressure_method,
        sprung,
    )
    closed_method = "closed-stress" if d.curvature_change is None else "round-set-stress"
    out["closed_stress"] = figure(acts.closed_tension, "MPa", "sigma", closed_method, pressed)
    out["closed_stress_nominal"] = figure(
        acts.closed_nominal, "MPa", "sigma", closed_method, pressed
    )
    out["closed_compression"] = figure(
        acts.closed_compression, "MPa", "sigma", closed_method, pressed
    )
    _fitting_figures(out, d, acts, elastic, sprung)
    pull = (("m", d.gap_change, "mm"), ("h1", d.ring_width, "mm")) + elastic
    out["tangential_force"] = figure(acts.tangential, "N", "Ft", "tangential-force", pull)
    ft = (("Ft", acts.tangential, "N"),)
    out["diametral_force"] = figure(acts.to_close_gap, "N", "Fd", "diametral-force", ft)
    if acts.to_bore_size is not None:
        out["diametral_force_to_bore"] = figure(acts.to_bore_size, "N", "Fd", "diametral-force", ft)
    curved = sized
    if d.curvature_change is not None:
        curved = sized + (("kappa0", d.curvature_change, "1/mm"),)
    out["widest_light"] = figure(acts.light, "mm", "w", "round-set-light", curved)
    out["slack_angle"] = figure(acts.slack_angle, "deg", "psi0", "round-set-light")
    if d.former_diameter is not None:
        out["former_ratio"] = figure(
            d.former_diameter / d.inside_diameter,
            "1",
            "former/(d1 - 2 a1)",
            "former-size",
            (("former", d.former_diameter, "mm"), ("d1 - 2 a1", d.inside_diameter, "mm")),
        )
    _clearance_figures(out, d)
    return out


def _fitting_figures(out, d, acts, elastic, sprung):
    if d.turns == 1:
        out["sprung_on_opening"] = figure(acts.opening, "mm", "g", "opening-to-clear", sprung)
        out["sprung_on_stress"] = figure(
            acts.sprung_on, "MPa", "sigma", "opening-stress", sprung + (("g", acts.opening, "mm"),)
        )
    else:
        out["sprung_on_stress"] = figure(acts.sprung_on, "MPa", "sigma", "plug-stress", elastic)
    wound = acts.wound_on
    out["wound_on_stress"] = figure(
        wound.spread_out,
        "MPa",
        "sigma",
        "wound-on-stress",
        elastic,
        low=0.8 * wound.spread_out,
        high=wound.hurried_high,
    )
    if d.turns == 2:
        blank = (
            ("r_b", d.bored_radius, "mm"),
            ("a", d.set_thickness, "mm"),
            ("b", d.band_width, "mm"),
            ("E", d.modulus, "MPa"),
            ("nu", d.ring_material.poisson, "1"),
        )
        moved = blank + (("width", d.blank_length, "mm"),)
        out["turning_through_stress"] = figure(
            acts.through.equivalent, "MPa", "sigma", "turning-through", moved
        )
        out["turning_through_force"] = figure(
            acts.through.force, "N", "P", "turning-through", moved
        )
        grip = moved + (("eta", d.relief, "1"), ("k", d.slit_width, "mm"))
        out["grip_force"] = figure(acts.grip, "N", "P", "grip-force", grip)
    out["forming_stress"] = figure(
        acts.forming,
        "MPa",
        "sigma",
        "forming-stress" if d.former_diameter is not None else "opening-stress",
        (("r_b", d.bored_radius, "mm"), ("a", d.set_thickness, "mm"), ("E", d.modulus, "MPa")),
    )


def _clearance_figures(out, d):
    ring, piston, cylinder = d.ring_material, d.piston_material, d.cylinder_material
    steam, wall, shop = d.steam_temperature, d.wall_temperature, d.shop_temperature
    grow = (("T", steam, "degC"), ("T_0", shop, "degC"), ("alpha_r", ring.expansion, "1/K"))
    grow_piston = grow + (("alpha_p", piston.expansion, "1/K"),)
    out["saturation_temperature"] = figure(
        d.saturation_temperature,
        "degC",
        "Ts",
        "saturation-temperature",
        (("p", d.steam_pressure, "MPa"),),
    )
    out["steam_temperature"] = figure(steam, "degC", "T", "steam-temperature")
    heat = {"ring_temperature": steam, "shop_temperature": shop, "ring_expansion": ring.expansion}
    out["closed_gap_hot"] = figure(
        gap_left(d, d.closed_gap, wall),
        "mm",
        "s1 hot",
        "hot-closed-gap",
        grow + (("alpha_c", cylinder.expansion, "1/K"), ("T_c", wall, "degC")),
    )
    in_groove = {"piston_expansion": piston.expansion, "piston_temperature": steam}
    out["side_clearance"] = figure(
        d.side_clearance, "mm", "c", "side-clearance", grow_piston + (("h1", d.ring_width, "mm"),)
    )
    out["side_clearance_hot"] = figure(
        clearances.hot_side_clearance(
            ring_width=d.ring_width, clearance=d.side_clearance, **in_groove, **heat
        ),
        "mm",
        "c hot",
        "hot-side-clearance",
        grow_piston + (("h1", d.ring_width, "mm"), ("c", d.side_clearance, "mm")),
    )
    out["groove_width"] = figure(
        d.groove_width, "mm", "h1 + c", "side-clearance", (("h1", d.ring_width, "mm"),)
    )
    out["groove_depth"] = figure(d.groove_depth, "mm", "depth", "groove-depth", grow_piston)
    placed = {
        "bore": d.bore,
        "piston_diameter": d.piston_diameter,
        "radial_thickness": d.radial_thickness,
        "depth": d.groove_depth,
    }
    sizes = (
        ("d1", d.bore, "mm"),
        ("d_p", d.piston_diameter, "mm"),
        ("a1", d.radial_thickness, "mm"),
        ("depth", d.groove_depth, "mm"),
    )
    out["back_clearance"] = figure(
        clearances.back_clearance(**placed), "mm", "c_b", "back-clearance", sizes
    )
    out["back_clearance_hot"] = figure(
        clearances.hot_back_clearance(
            cylinder_expansion=cylinder.expansion,
            cylinder_temperature=d.warming_wall_temperature,
            **placed,
            **in_groove,
            **heat,
        ),
        "mm",
        "c_b hot",
        "back-clearance",
        sizes + grow_piston,
    )
    piston_heat = (
        ("d1", d.bore, "mm"),
        ("alpha_p", piston.expansion, "1/K"),
        ("alpha_c", cylinder.expansion, "1/K"),
        ("T_p", steam, "degC"),
        ("T_c", d.warming_wall_temperature, "degC"),
        ("T_0", shop, "degC"),
    )
    out["piston_diameter"] = figure(d.piston_diameter, "mm", "d_p", "piston-clearance", piston_heat)
    out["piston_diameter_hot"] = figure(
        d.piston_diameter * clearances.growth(piston.expansion, steam, shop),
        "mm",
        "d_p hot",
        "hot-piston-clearance",
        piston_heat,
    )
    out["piston_clearance"] = figure(
        d.bore - d.piston_diameter, "mm", "d1 - d_p", "piston-clearance", piston_heat
    )
    out["piston_clearance_hot"] = figure(
        clearances.hot_piston_clearance(
            bore=d.bore,
            piston_diameter=d.piston_diameter,
            piston_expansion=piston.expansion,
            cylinder_expansion=cylinder.expansion,
            piston_temperature=steam,
            cylinder_temperature=d.warming_wall_temperature,
            shop_temperature=shop,
        ),
        "mm",
        "d1 - d_p hot",
        "hot-piston-clearance",
        piston_heat,
    )
