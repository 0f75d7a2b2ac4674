"""Inputs of the tools to make, those on the shelf, and the lathe."""

import math

from ..fields import field
from .inputs import fixed, nothing, rule, table, worked

HSS = "hss"
CARBIDE = "carbide"
TOOLS = (HSS, CARBIDE)
LIGHT = "light"
MACHINES = (LIGHT, "rigid")
# A tongue is as long as the ring is wide, and no less than so many closed gaps; common practice, no
# source.
GAPS_IN_A_TONGUE = 3


# The saw pulls sideways at the stick: held by a third of its diameter; common practice, no source.
def _grip(diameter):
    return max(25.0, math.ceil(diameter / 15.0) * 5.0)


def _tongue(ring_width, closed_gap):
    return max(ring_width, GAPS_IN_A_TONGUE * closed_gap)


TOOLING = table(
    field(
        "slit_on_stick",
        "flag",
        "true where double-turn blanks are slit on the stick and the saw then cuts them off; false "
        "where each is parted off and slit on its mandrel",
        fixed(False),
    ),
    field(
        "table_grip",
        "length",
        "held in the chuck of the rotary table when blanks are slit on the stick",
        rule("a third of the diameter, at least 25 mm", _grip),
        lowest=5.0,
        highest=400.0,
    ),
    field(
        "cutter_diameter",
        "length",
        "diameter of the slitting saw",
        worked(
            "the smallest standard saw that reaches through the wall",
            "the smallest that reaches through",
        ),
        lowest=10.0,
        highest=400.0,
        symbol="Dc",
    ),
    field(
        "cutter_collar",
        "length",
        "diameter of the collar beside the saw",
        worked("of the standard saw", "usual for that saw"),
        lowest=2.0,
        highest=200.0,
    ),
    field(
        "bridge_length",
        "length",
        "length of the solid bridge along the outside",
        worked("room for both scarfs and stout enough", "both scarfs, and 2 mm for the saw"),
        lowest=1.0,
        highest=500.0,
    ),
    field(
        "tongue_length",
        "length",
        "length of each tongue of a stepped end, along the ring",
        rule("as long as the ring is wide, at least %d closed gaps" % GAPS_IN_A_TONGUE, _tongue),
        lowest=0.2,
        highest=200.0,
        symbol="lt",
    ),
    field(
        "shelf_pot", "length", "bore of a pot you have", nothing("none"), lowest=8.0, highest=1000.0
    ),
    field(
        "shelf_closing_ring",
        "length",
        "bore of a closing ring you have: it settles the clamped gap",
        nothing("none"),
        lowest=8.0,
        highest=1000.0,
    ),
    field(
        "shelf_clamp_mandrel",
        "length",
        "spigot diameter of a clamp mandrel you have",
        nothing("none"),
        lowest=5.0,
        highest=1000.0,
    ),
)

LATHE = table(
    field(
        "tool_material", "choice", "what the turning tools are made of", fixed(HSS), choices=TOOLS
    ),
    field(
        "machine",
        "choice",
        "a bench lathe with tools ground by hand, or a rigid lathe",
        fixed(LIGHT),
        choices=MACHINES,
    ),
    field(
        "spindle_speeds",
        "records",
        "the speeds your lathe has, if only certain ones",
        nothing("any speed"),
        lowest=1,
        highest=60,
        items=(field("", "speed", "a spindle speed", lowest=1.0, highest=20000.0),),
    ),
)
