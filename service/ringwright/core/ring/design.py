"""From what was asked to a whole ring: every default taken by a stated rule, every size settled.

`settle` is where sizing, tooling, the route card and the drawings all begin, so that they cannot
disagree. It only settles sizes; what they mean for the ring is sizing.py's work.
"""

from collections import namedtuple

from ..catalogue.inputs import Chooser
from ..catalogue.inputs_blank import BLANK
from ..catalogue.inputs_ring import RING
from ..fields import at_most_one
from ..problems import OutOfRange, unworkable
from ..properties.materials import material, mean_expansion
from ..records import Method
from ..wording import length
from . import blank, heat_set
from .allowances import allowances_of, soak_of
from .chosen_section import section_of
from .duty import duty_of, groove_depth, piston_diameter, side_clearance
from .spring_back import TARGETS, Ring, spring_of

# A ring as it is settled. duty: a Duty, what it is for. section: a chosen_section.Section;
# turn_width, inside_diameter: what follows from it [mm]. spring: a SpringBack. expander_pressure:
# what a spring behind it adds [MPa]. side_clearance, groove_width, groove_depth, piston_diameter
# [mm]; groove_there: whether the groove has its width, or is yet to be cut to it. allowances, soak:
# what is sawn, left and heated, see allowances.py. blank: a Blank. former_material: of the former
# or spacer; former_growth: how much more it grows than the ring on the way to the soak [1].
Design = namedtuple(
    "Design",
    (
        "duty", "section", "turn_width", "inside_diameter", "spring", "expander_pressure",
        "side_clearance", "groove_width", "groove_there", "groove_depth", "piston_diameter",
        "allowances", "soak", "blank", "former_material", "former_growth",
    ),
)  # fmt: skip

# A blank as sawn and slit [mm]. band_width: what is left of a double-turn ring between its slits,
# and its length along the axis. finish_outside: turned to, clamped. bored_inside, rough_outside: as
# bored and turned before. set_thickness: on the former; bored_radius: of its neutral line.
Blank = namedtuple(
    "Blank",
    (
        "band_width", "length", "finish_outside", "bored_inside", "rough_outside",
        "set_thickness", "bored_radius",
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
    metal = duty.ring_material
    soak = soak_of(take, metal.family)
    former_material = material(take("former_material"))
    sawn = _blank_of(duty, allow, section)
    growth = heat_set.hot_growth(
        mean_expansion(former_material.key, soak.temperature),
        mean_expansion(metal.key, soak.temperature),
        soak.temperature - duty.shop,
    )
    ring = Ring(
        duty=duty,
        thickness=section.thickness,
        allowances=allow,
        relief=soak.relief.likely,
        set_thickness=sawn.set_thickness,
        bored_radius=sawn.bored_radius,
        growth=growth,
    )
    spring = spring_of(ring, take, values, section.pressure, section.why)
    thickness, width = section.thickness, section.width
    groove = take("groove_width", width + side_clearance(duty, width))
    measured = values.get("measured_groove_width")
    there = measured is not None or values.get("groove_width") is not None
    if measured is not None:
        groove = measured
    design = Design(
        duty=duty,
        section=section,
        turn_width=width / duty.turns,
        inside_diameter=duty.bore - 2.0 * thickness,
        spring=spring,
        expander_pressure=values.get("expander_pressure") or 0.0,
        side_clearance=groove - width,
        groove_width=groove,
        groove_there=there,
        groove_depth=take("groove_depth", groove_depth(duty, thickness)),
        piston_diameter=piston,
        allowances=allow,
        soak=soak,
        blank=sawn,
        former_material=former_material,
        former_growth=growth,
    )
    return design, take.chosen


def _blank_of(duty, allow, section):
    """The Blank. duty: a Duty. allow: Allowances. section: a Section. Raises InputProblem where it
    would have no bore."""
    width = section.width
    band = long = width + 2.0 * allow.facing
    if duty.turns == 2:
        cut = {"ring_width": width, "slit": allow.slit, "facing_allowance": allow.facing}
        band, long = blank.band_width(**cut), blank.blank_length(**cut)
    try:
        sizes = blank.diameters(
            bore=duty.bore,
            thickness=section.thickness,
            closed_gap=duty.closed_gap,
            clamped_gap=allow.clamped_gap,
            kerf=allow.gap_kerf,
            finishing_allowance=allow.finishing,
        )
    except OutOfRange:
        # A section is never so thick that this is not the gap's doing.
        raise unworkable(
            "closed_gap",
            "with so wide a gap there is nothing left to bore the blank out of",
            "give less than %s" % length(duty.closed_gap),
            value=duty.closed_gap,
        )
    bored_inside = sizes.bored_inside - 2.0 * allow.inside
    set_thickness = section.thickness + 0.5 * allow.finishing + allow.inside
    return Blank(
        band_width=band,
        length=long,
        finish_outside=sizes.finish_outside,
        bored_inside=bored_inside,
        rough_outside=sizes.rough_outside,
        set_thickness=set_thickness,
        bored_radius=0.5 * (bored_inside + set_thickness),
    )


def as_inputs(design):
    """What a Design settled, by the names of the inputs that would ask for it: a dict.

    Given back to `settle` in place of what was given it is the same ring, set as it was.
    design: a Design. Lengths [mm], pressure [MPa]; None where it has no former or no spacer.
    """
    duty, spring = design.duty, design.spring
    return {
        "radial_thickness": design.section.thickness,
        "ring_width": design.section.width,
        "closed_gap": duty.closed_gap,
        "wall_pressure": spring.wall_pressure,
        "former_diameter": spring.former_diameter,
        "spacer_width": spring.spacer_width,
        "groove_width": design.groove_width,
        "groove_depth": design.groove_depth,
        "piston_diameter": design.piston_diameter,
        "end_kerf": design.allowances.kerf,
    }


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
