"""From what was asked to a whole ring: every default taken by a stated rule, every size settled.

`settle` is where sizing, tooling, the route card and the drawings all begin, so that they cannot
disagree. It only settles sizes; what they mean for the ring is sizing.py's work.
"""

from collections import namedtuple

from ..catalogue.inputs import Chooser
from ..catalogue.inputs_blank import BLANK
from ..catalogue.inputs_ring import RING
from ..fields import at_most_one
from ..properties.materials import material, mean_expansion
from ..records import Method
from . import blank, heat_set
from .allowances import allowances_of, soak_of
from .chosen_section import section_of
from .duty import duty_of, groove_depth, piston_diameter, side_clearance
from .spring_back import TARGETS, Ring, spring_of

Design = namedtuple(
    "Design",
    (
        # what it is for
        "bore", "ring_type", "turns", "rings", "ring_material", "modulus", "cylinder_material",
        "piston_material", "steam_pressure", "steam_temperature", "saturation_temperature",
        "wall_temperature", "warming_wall_temperature", "shop_temperature", "end_cut",
        "setting", "finishing", "bearing",
        # the finished ring
        "radial_thickness", "ring_width", "turn_width", "inside_diameter", "closed_gap",
        "gap_change", "curvature_change", "wall_pressure", "contact_pressure", "window",
        # what a spring behind it adds [MPa]
        "expander_pressure",
        # groove and piston; `groove_there`: whether it has its width, or is yet to be cut to it
        "side_clearance", "groove_width", "groove_there", "groove_depth", "piston_diameter",
        # the blank and its setting
        "relief", "relief_low", "relief_high", "end_kerf", "gap_kerf", "slit_width",
        "facing_allowance", "finishing_allowance", "inside_allowance",
        "clamped_gap", "band_width", "blank_length", "finish_outside", "bored_inside",
        "rough_outside", "set_thickness", "bored_radius", "former_material", "soak_temperature",
        "soak_time", "former_growth", "former_radius", "former_diameter", "spacer_width",
    ),
)  # fmt: skip


def settle_section(take, place=""):
    """(Duty, Allowances, piston diameter [mm], Section): the one rule of what section a ring gets.

    take: an inputs.Chooser over RING and BLANK. place: as of duty_of. Raises InputProblem.
    """
    duty = duty_of(take, place)
    allow = allowances_of(take, duty)
    piston = piston_diameter(take, duty)
    return duty, allow, piston, section_of(take, duty, allow, piston)


def settle(values):
    """(Design, list of Choice) for checked values of the inputs RING and BLANK.

    values: a plain dict in core units; names that are absent or None take their default.
    Raises InputProblem where the values cannot be worked together.
    """
    at_most_one(values, TARGETS)
    take = Chooser(values, RING, BLANK)
    duty, allow, piston, section = settle_section(take)
    bore, turns, metal = duty.bore, duty.turns, duty.ring_material
    soak = soak_of(take, metal.family)
    former_material = material(take("former_material"))
    thickness, width = section.thickness, section.width

    band = width + 2.0 * allow.facing
    blank_length = band
    if turns == 2:
        cut = {"ring_width": width, "slit": allow.slit, "facing_allowance": allow.facing}
        band, blank_length = blank.band_width(**cut), blank.blank_length(**cut)
    sizes = blank.diameters(
        bore=bore,
        thickness=thickness,
        closed_gap=duty.closed_gap,
        clamped_gap=allow.clamped_gap,
        kerf=allow.gap_kerf,
        finishing_allowance=allow.finishing,
    )
    bored_inside = sizes.bored_inside - 2.0 * allow.inside
    set_thickness = thickness + 0.5 * allow.finishing + allow.inside
    bored_radius = 0.5 * (bored_inside + set_thickness)
    growth = heat_set.hot_growth(
        mean_expansion(former_material.key, soak.temperature),
        mean_expansion(metal.key, soak.temperature),
        soak.temperature - duty.shop,
    )
    ring = Ring(
        bore=bore,
        thickness=thickness,
        modulus=duty.modulus,
        turns=turns,
        setting=duty.setting,
        bearing=duty.bearing,
        closed_gap=duty.closed_gap,
        kerf=allow.gap_kerf,
        relief=soak.relief.likely,
        set_thickness=set_thickness,
        inside_allowance=allow.inside,
        bored_radius=bored_radius,
        growth=growth,
    )
    spring = spring_of(ring, take, values, section.pressure, section.why)

    groove = take("groove_width", width + side_clearance(duty, width))
    measured = values.get("measured_groove_width")
    there = measured is not None or values.get("groove_width") is not None
    if measured is not None:
        groove = measured
    depth = take("groove_depth", groove_depth(duty, thickness))
    design = Design(
        bore=bore,
        ring_type=duty.ring_type,
        turns=turns,
        rings=duty.rings,
        ring_material=metal,
        modulus=duty.modulus,
        cylinder_material=duty.cylinder,
        piston_material=duty.piston,
        steam_pressure=duty.steam_pressure,
        steam_temperature=duty.temperature,
        saturation_temperature=duty.saturation,
        wall_temperature=duty.wall_temperature,
        warming_wall_temperature=duty.warming_wall_temperature,
        shop_temperature=duty.shop,
        end_cut=duty.end_cut,
        setting=duty.setting,
        finishing=duty.finishing,
        bearing=duty.bearing,
        radial_thickness=thickness,
        ring_width=width,
        turn_width=width / turns,
        inside_diameter=bore - 2.0 * thickness,
        closed_gap=duty.closed_gap,
        gap_change=spring.gap_change,
        curvature_change=spring.curvature_change,
        wall_pressure=spring.wall_pressure,
        contact_pressure=spring.contact_pressure,
        window=section.window,
        expander_pressure=values.get("expander_pressure") or 0.0,
        side_clearance=groove - width,
        groove_width=groove,
        groove_there=there,
        groove_depth=depth,
        piston_diameter=piston,
        relief=soak.relief.likely,
        relief_low=soak.relief.low,
        relief_high=soak.relief.high,
        end_kerf=allow.kerf,
        gap_kerf=allow.gap_kerf,
        slit_width=allow.slit,
        facing_allowance=allow.facing,
        finishing_allowance=allow.finishing,
        inside_allowance=allow.inside,
        clamped_gap=allow.clamped_gap,
        band_width=band,
        blank_length=blank_length,
        finish_outside=sizes.finish_outside,
        bored_inside=bored_inside,
        rough_outside=sizes.rough_outside,
        set_thickness=set_thickness,
        bored_radius=bored_radius,
        former_material=former_material,
        soak_temperature=soak.temperature,
        soak_time=soak.hours,
        former_growth=growth,
        former_radius=spring.former_radius,
        former_diameter=spring.former_diameter,
        spacer_width=spring.spacer_width,
    )
    return design, take.chosen


METHODS = (
    Method(
        "geometry", "Plain geometry", "inside diameter = d1 - 2 a1", "always", ("neutral-line",)
    ),
    Method(
        "steam-temperature",
        "Steam temperature",
        "saturation at the steam pressure unless a temperature is given",
        "saturated or superheated steam",
        ("iapws-if97",),
    ),
)
