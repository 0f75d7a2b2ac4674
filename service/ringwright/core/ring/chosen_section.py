"""Which section a ring gets, and which wall pressure where none is asked for."""

import math
from collections import namedtuple

from .. import shop_sizes
from ..catalogue.inputs_ring import IN_GROOVE, PRACTICE_PRESSURE, RING, WEAK_METAL
from ..fields import taken
from ..problems import unworkable
from ..records import Method
from ..wording import in_a_sentence, length
from . import section
from .duty import side_clearance
from .spring_back import TARGETS

# Of the pressure that a metal just carries: room for a thickness rounded to what is turned.
ROUNDING_SHARE = 0.97

# thickness, width [mm]. window: a section.Window. pressure: where none is asked for [MPa], and why.
Section = namedtuple("Section", ("thickness", "width", "window", "pressure", "why"))

METHODS = (
    Method(
        "ring-width",
        "Width of the ring and of a turn",
        "plain 1.25 a1; double-turn 2 a1, each turn h1/2",
        "width of a turn at most 1.5 thicknesses (Blake)",
        ("practice", "blake"),
    ),
)


def section_of(take, duty, allowances, piston_diameter):
    """The Section of a ring. take: an inputs.Chooser. duty: a Duty. allowances: Allowances.

    piston_diameter: cold [mm]. Raises InputProblem for a thickness that would not spring, or a
    groove too narrow for any ring.
    """
    bore, values = duty.bore, take.values
    inch = values.get("inch_sizes")
    width = values.get("ring_width")
    if width is None and values.get("groove_width") is not None:
        width = _width_in_groove(duty, values["groove_width"])
        take.note("ring_width", width, take.why("ring_width", IN_GROOVE))
    ratio = taken(RING["ring_width"], duty.ring_type, (1.0,))[0]
    task = section.Task(
        bore=bore,
        modulus=duty.modulus,
        poisson=duty.ring_material.poisson,
        strength=duty.ring_material.bending_strength,
        brittle=duty.ring_material.family == "iron",
        pressure=values.get("wall_pressure") or PRACTICE_PRESSURE,
        turns=duty.turns,
        setting=duty.setting,
        uniform=duty.bearing.uniform,
        width=width,
        width_ratio=ratio,
        slit=allowances.slit,
        facing=allowances.facing,
        finishing=allowances.finishing,
        piston_clearance=0.5 * (bore - piston_diameter),
    )
    pressure, why, window = _usual_pressure(task, duty.ring_material, take)
    thickness = take(
        "radial_thickness",
        shop_sizes.thickness(window.best, inch),
    )
    if thickness > bore / 6.0:
        raise unworkable(
            "radial_thickness",
            "the ring is thicker than a sixth of its bore, and would not spring at all",
            "give at most " + length(bore / 6.0),
            value=thickness,
            highest=bore / 6.0,
        )
    if width is None:
        width = shop_sizes.width(ratio * thickness, inch)
        take.note("ring_width", width, take.why("ring_width", duty.ring_type))
    return Section(thickness=thickness, width=width, window=window, pressure=pressure, why=why)


def _usual_pressure(task, ring_material, take):
    """(wall pressure where none is asked for [MPa], why, Window): what the metal can carry."""
    found = section.window(task)
    usual_why = take.why("wall_pressure")
    for name in TARGETS + ("radial_thickness",):
        if take.values.get(name) is not None:
            return task.pressure, usual_why, found
    if found.lowest is not None:
        return task.pressure, usual_why, found
    most = ROUNDING_SHARE * section.bearable_pressure(task)
    usual = math.floor(1000.0 * most) / 1000.0 or most
    why = take.why("wall_pressure", WEAK_METAL) % in_a_sentence(ring_material.title)
    return usual, why, section.window(section.at_pressure(task, usual))


def _width_in_groove(duty, groove):
    """The ring width whose side clearance fills the groove [mm]."""
    width = groove - side_clearance(duty, groove)
    if width <= 0.0:
        raise unworkable(
            "groove_width",
            "the groove is narrower than the clearance a ring needs in it",
            "give the width of the groove itself, measured with slips or a ground blade",
        )
    return groove - side_clearance(duty, width)
