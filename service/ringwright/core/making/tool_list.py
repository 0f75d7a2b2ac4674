"""The tools of a ring, each with its sizes, limits, material, work, and why it is wanted.

An operation that needs a tool made for this ring names it in NAMED_BY; no tool stands here that no
operation takes up.
"""

import math
from collections import OrderedDict, namedtuple

from ..catalogue.inputs_ring import GREY_IRON
from ..properties import fits
from ..records import Quantity
from ..ring.allowances import CUT_ANGLES
from ..walk.limits import card_limits
from .part_sizes import (
    INSIDE,
    LARGEST_NOMINAL,
    MICROMETER,
    RULE,
    SET,
    SMALLEST_NOMINAL,
    bare,
    between,
    limited,
)
from .part_sizes import tree as size_tree
from .tool_work import Shape, work

# sizes: list of part_sizes.Size. metal: key of the material it is reckoned in. shape: a
# tool_work.Shape.
Tool = namedtuple("Tool", ("tool", "title", "material", "why", "sizes", "metal", "shape"))

STEEL = "Mild steel"
IRON = "Grey cast iron or mild steel"
# What a tool stands outside the ring, over its bore, and at least [mm]; its length behind the ring
# to be held by [mm]. Common practice, no source.
WALL_SHARE = 0.1
LEAST_WALL = 6.0
TO_HOLD = 25.0

# Key of an operation -> the tools it takes up, in the order of their use.
NAMED_BY = {
    "face-blank": ("blank-jaws",),
    "slit": ("slitting-mandrel",),
    "put-on-former": ("former",),
    "put-on-former-bound": ("former",),
    "spread": ("spacer",),
    "face-step": ("pot",),
    "face-sides": ("pot",),
    "clamp": ("closing-ring", "clamp-mandrel", "end-plate"),
    "clamp-forced": ("closing-ring", "clamp-mandrel", "end-plate"),
    "clamp-band": ("closing-band", "clamp-mandrel", "end-plate"),
    "bore-clamped": ("outer-clamp",),
    "dress-ends": ("bore-gauge",),
    "inspect": ("bore-gauge",),
}


def tools(design, tooling):
    """List of Tool for a Design and its Tooling, in the order they are used."""
    d, t = design, tooling
    listing = [_blank_jaws(d, t)]
    if d.turns == 2:
        listing.append(_slitting_mandrel(d, t))
    listing.append(_former(d, t) if t.former_diameter is not None else _spacer(d, t))
    listing.append(_pot(d, t))
    listing.append(_closing_ring(d, t) if t.band_length is None else _closing_band(d, t))
    listing.append(_clamp_mandrel(d, t))
    listing.append(_end_plate(d, t))
    if t.outer_clamp_bore is not None:
        listing.append(_outer_clamp(d, t))
    listing.append(_bore_gauge(d))
    return listing


def _round(inner):
    """Outside of a tool round a hole [mm]."""
    return inner + 2.0 * max(LEAST_WALL, WALL_SHARE * inner)


def _blank_jaws(d, t):
    return Tool(
        "blank-jaws",
        "Soft jaws for the blank",
        "Soft jaws, or a split ring of mild steel in the ordinary ones",
        "Hold the blank, not yet sawn, by its outside while its sides are faced: it is larger than "
        "the pot. Bore them in place, with a shoulder.",
        [
            limited("blank_jaws_bore", "bore", t.blank_jaws_bore, "H8", INSIDE),
            bare("blank_jaws_depth", "depth to the shoulder", 0.6 * d.blank_length),
        ],
        "steel",
        Shape(_round(t.blank_jaws_bore), t.blank_jaws_bore, d.blank_length, 1, 0.0),
    )


def _slitting_mandrel(d, t):
    return Tool(
        "slitting-mandrel",
        "Slitting mandrel",
        STEEL,
        "Holds the blank on the rotary table by its bore; a nut and washer pinch it by its sides. "
        "The groove at the slit lets the saw break through into air.",
        [
            limited("slit_mandrel_diameter", "diameter", t.slit_mandrel_diameter, "g6"),
            bare("slit_mandrel_length", "length, less than the blank", t.slit_mandrel_length),
            bare("slit_relief_width", "groove at the middle, wide", t.slit_relief_width),
            bare("slit_relief_depth", "groove, deep", t.slit_relief_depth),
        ],
        "steel",
        Shape(t.slit_mandrel_diameter, 0.0, t.slit_mandrel_length + TO_HOLD, 1, 15.0),
    )


def _former(d, t):
    why = "Holds the ring open and round while the heat relaxes it; a hole or a web keeps it from "
    why += "holding heat too long."
    if d.turns == 2:
        why += " Inside out the ring is nearly twice as long as the blank: the former carries it "
        why += "from tip to tip."
    return Tool(
        "former",
        "Set former",
        d.former_material.title,
        why,
        [
            between("former_diameter", "diameter", t.former_diameter, card_limits(d).former),
            bare("former_length", "length", t.former_length),
        ],
        d.former_material.key,
        Shape(t.former_diameter, 0.35 * t.former_diameter, t.former_length, 1, 0.0),
    )


def _spacer(d, t):
    sizes = [
        between("spacer_width", "opening, along the ring", t.spacer_width, card_limits(d).spacer),
        bare("spacer_taper", "its faces open outwards by", t.spacer_taper, "deg", SET),
        bare("spacer_seat", "between its cheeks", t.spacer_seat),
    ]
    angle = CUT_ANGLES[d.end_cut]
    if angle < 90.0:
        sizes[1:1] = [
            bare("spacer_across", "square across its faces", t.spacer_across, "mm", MICROMETER),
            bare("spacer_angle", "faces to the cheeks", angle, "deg", "bevel protractor"),
        ]
    return Tool(
        "spacer",
        "Spacer",
        d.former_material.title,
        "Holds the gap open while the heat relaxes the ring, with nothing else touching it. Its "
        "faces lie along the sawn ends; two cheeks beside the ring keep the ends level, which "
        "angled ends would not stay by themselves.",
        sizes,
        d.former_material.key,
        Shape(1.5 * t.spacer_width + 10.0, 0.0, d.blank_length + 10.0, 1, 30.0),
    )


def _pot(d, t):
    return Tool(
        "pot",
        "Facing pot",
        IRON,
        "Grips the sawn ring by its outside, by the ring's own spring, while its sides are faced; "
        "the shoulder must be true.",
        [
            limited("pot_bore", "bore", t.pot_bore, "H8", INSIDE),
            bare("pot_depth", "depth to the shoulder", t.pot_depth),
        ],
        "steel",
        Shape(_round(t.pot_bore), t.pot_bore - 1.6 * d.set_thickness, t.pot_depth + TO_HOLD, 1, 0),
    )


def _closing_ring(d, t):
    return Tool(
        "closing-ring",
        "Closing ring",
        STEEL,
        "Squeezes the ring shut, round, to the clamped gap, so that the mandrel can take hold of "
        "it. Bore it last, to suit the sawn rings: a little at a time, until the gap in it is "
        "right by feeler.",
        [
            bare("closing_ring_bore", "bore, to suit the ring", t.closing_ring_bore, "mm", INSIDE),
            bare("closing_ring_width", "width", t.closing_ring_width),
        ],
        "steel",
        Shape(_round(t.closing_ring_bore), t.closing_ring_bore, t.closing_ring_width, 1, 0.0),
    )


def _closing_band(d, t):
    return Tool(
        "closing-band",
        "Closing band",
        "Spring or hoop-iron strip, about a tenth of the ring's thickness",
        "Draws the ring shut from outside by a screw through its two lugs, and bends with it: a "
        "stiff band would force it round.",
        [
            bare("band_length", "length between the lugs", t.band_length, "mm", RULE),
            bare("closing_band_width", "width, less than the ring", 0.8 * d.ring_width),
        ],
        "steel",
        Shape(20.0, 0.0, 20.0, 0, 30.0),
    )


def _clamp_mandrel(d, t):
    why = "Centres the closed ring and, with the end plate, grips it by its sides while its "
    why += "outside is turned; turn the spigot in place."
    if t.band_length is not None:
        why = "Grips the banded ring by its sides, with the end plate, while its outside is "
        why += "turned. Its spigot clears the ring, which is far from round: true the ring by its "
        why += "outside."
    return Tool(
        "clamp-mandrel",
        "Clamp mandrel",
        STEEL,
        why,
        [
            limited("clamp_mandrel_diameter", "spigot", t.clamp_mandrel_diameter, "g6"),
            bare("spigot_length", "spigot length, less than the ring", t.spigot_length),
            bare(
                "end_plate_diameter", "shoulder, relieved to clear the tool", t.end_plate_diameter
            ),
        ],
        "steel",
        Shape(t.end_plate_diameter, 0.0, t.spigot_length + TO_HOLD, 1, 10.0),
    )


def _end_plate(d, t):
    return Tool(
        "end-plate",
        "End plate",
        STEEL,
        "Bears on the ring alone, faced flat, smaller than the finished outside so that the tool "
        "runs out.",
        [bare("end_plate_diameter", "outside", t.end_plate_diameter)],
        "steel",
        Shape(t.end_plate_diameter, 12.0, 8.0, 0, 0.0),
    )


def _outer_clamp(d, t):
    return Tool(
        "outer-clamp",
        "Outer clamp",
        STEEL,
        "A cup over the turned outside, with a ring screwed to it that grips the ring by its side "
        "outside the end plate, before the mandrel is drawn: so the ring does not move between "
        "turning and boring.",
        [
            limited("outer_clamp_bore", "bore", t.outer_clamp_bore, "H7", INSIDE),
            bare("outer_clamp_depth", "depth, less than the ring", 0.9 * d.ring_width),
            bare("clamp_ring_bore", "hole of cup and clamp ring", t.clamp_ring_bore, "mm", INSIDE),
        ],
        "steel",
        Shape(_round(t.outer_clamp_bore) + 20.0, t.clamp_ring_bore, d.ring_width + 20.0, 1, 30.0),
    )


def trial_limits(bore):
    """(lower, upper) of a trial bore [mm]: IT6 under the cylinder's size and never over it.

    A ring filed in it has no less gap in the cylinder than the feeler said. bore [mm].
    """
    if not SMALLEST_NOMINAL <= bore <= LARGEST_NOMINAL:
        return bore, bore
    return bore - fits.tolerance(bore, 6), bore


def _bore_gauge(d):
    return Tool(
        "bore-gauge",
        "Trial bore",
        "Grey cast iron",
        "A ring bored to the cylinder's size to try light and gap in, where the cylinder itself is "
        "not at hand.",
        [between("trial_bore", "bore", d.bore, trial_limits(d.bore), INSIDE)],
        GREY_IRON,
        Shape(_round(d.bore), d.bore, 2.0 * d.ring_width, 1, 0.0),
    )


def tree(tool):
    """A Tool as an OrderedDict for an answer. tool: a Tool."""
    needed = work(tool.shape, tool.metal)
    return OrderedDict(
        (
            ("tool", tool.tool),
            ("title", tool.title),
            ("material", tool.material),
            ("why", tool.why),
            ("sizes", [size_tree(size) for size in tool.sizes]),
            (
                "piece",
                OrderedDict(
                    (
                        ("diameter", Quantity(math.ceil(needed.diameter), "mm")),
                        ("hole", Quantity(math.floor(needed.hole), "mm")),
                        ("length", Quantity(math.ceil(needed.length), "mm")),
                    )
                ),
            ),
            ("time", Quantity(needed.minutes, "min")),
        )
    )
