"""The tools of a ring, each with its sizes, limits, material, work, and why it is wanted.

An operation that needs a tool made for this ring names it in NAMED_BY; no tool stands here that no
operation takes up.
"""

from collections import OrderedDict, namedtuple

from ..catalogue.inputs_ring import GREY_IRON
from ..catalogue.inputs_tools import MACHINES
from ..properties import fits
from ..records import Quantity
from ..ring.allowances import CUT_ANGLES
from ..ring.blank import feeler_reading
from ..ring.soak import can_be_set
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
    suited,
)
from .part_sizes import tree as size_tree
from .tool_work import Shape, piece, work

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
    listing = []
    if t.blank_jaws_bore is not None:
        listing.append(_blank_jaws(d, t))
    if t.slit_mandrel_diameter is not None:
        listing.append(_slitting_mandrel(d, t))
    if can_be_set(d.duty.ring_material.family):
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
        tool="blank-jaws",
        title="Soft jaws for the blank",
        material="Soft jaws, or a split steel ring in hard ones",
        why=(
            "Hold the blank, not yet sawn, by its outside while its sides are faced: it is "
            "larger than the pot. Bore them in place, with a shoulder."
        ),
        sizes=[
            limited("blank_jaws_bore", "bore", t.blank_jaws_bore, "H8", INSIDE),
            bare("blank_jaws_depth", "depth to the shoulder", 0.6 * d.blank.length),
        ],
        metal="steel",
        shape=Shape(
            outside=_round(t.blank_jaws_bore),
            hole=t.blank_jaws_bore,
            length=d.blank.length,
            fitted=1,
            beside=0.0,
        ),
    )


def _slitting_mandrel(d, t):
    return Tool(
        tool="slitting-mandrel",
        title="Slitting mandrel",
        material=STEEL,
        why=(
            "Holds the blank on the rotary table by its bore; a nut and washer pinch it by its "
            "sides. The groove at the slit lets the saw break through into air."
        ),
        sizes=[
            slit_mandrel(d, t, "diameter"),
            bare("slit_mandrel_length", "length, less than the blank", t.slit_mandrel_length),
            bare("slit_relief_width", "groove at the middle, wide", t.slit_relief_width),
            bare("slit_relief_depth", "groove, deep", t.slit_relief_depth),
        ],
        metal="steel",
        shape=Shape(
            outside=t.slit_mandrel_diameter,
            hole=0.0,
            length=t.slit_mandrel_length + TO_HOLD,
            fitted=1,
            beside=15.0,
        ),
    )


def _held(d):
    """CardLimits of every lathe: a tool serves whatever the ring is turned on."""
    return [card_limits(d, machine) for machine in MACHINES]


def _within(d, name):
    """(lower, upper) of a tool's size that every card allows [mm]. name: former or spacer."""
    limits = [getattr(held, name) for held in _held(d)]
    return max([one[0] for one in limits]), min([one[1] for one in limits])


def slit_mandrel(d, t, label):
    """Size of the slitting mandrel: g6 of the smallest bore that the card allows.

    d: a Design. t: its Tooling. label: text.
    """
    least = min([held.bored[0] for held in _held(d)])
    return suited("slit_mandrel_diameter", label, t.slit_mandrel_diameter, least, "g6")


def outer_clamp(d, t, label):
    """Size of the outer clamp: H7 of the largest outside that the card allows.

    d, t, label: as of slit_mandrel.
    """
    largest = max([held.finish[1] for held in _held(d)])
    return suited("outer_clamp_bore", label, t.outer_clamp_bore, largest, "H7", INSIDE)


def _former(d, t):
    why = "Holds the ring open and round while the heat relaxes it; a hole or a web keeps it from "
    why += "holding heat too long."
    if d.duty.turns == 2:
        why += " Inside out the ring is nearly twice as long as the blank: the former carries it "
        why += "from tip to tip."
    return Tool(
        tool="former",
        title="Set former",
        material=d.former_material.title,
        why=why,
        sizes=[
            between("former_diameter", "diameter", t.former_diameter, _within(d, "former")),
            bare("former_length", "length", t.former_length),
        ],
        metal=d.former_material.key,
        shape=Shape(
            outside=t.former_diameter,
            hole=0.35 * t.former_diameter,
            length=t.former_length,
            fitted=1,
            beside=0.0,
        ),
    )


def spacer_sizes(d, t):
    """List of Size that settle how far a spacer holds the ends open.

    d: a Design. t: its Tooling. At an angle the opening along the ring cannot be taken with a
    micrometer; square across the faces it can, and that carries the limits as well.
    """
    held = _within(d, "spacer")
    angle = CUT_ANGLES[d.duty.end_cut]
    along = MICROMETER if angle == 90.0 else "caliper, along a cheek"
    sizes = [between("spacer_width", "opening, along the ring", t.spacer_width, held, along)]
    if angle < 90.0:
        across = [feeler_reading(gap=one, angle=angle) for one in held]
        sizes.append(between("spacer_across", "square across its faces", t.spacer_across, across))
    return sizes


def _spacer(d, t):
    sizes = spacer_sizes(d, t) + [
        bare("spacer_taper", "its faces open outwards by", t.spacer_taper, "deg", SET),
        bare("spacer_seat", "between its cheeks", t.spacer_seat),
    ]
    angle = CUT_ANGLES[d.duty.end_cut]
    if angle < 90.0:
        sizes[2:2] = [
            bare("spacer_angle", "faces to the cheeks", angle, "deg", "bevel protractor"),
        ]
    return Tool(
        tool="spacer",
        title="Spacer",
        material=d.former_material.title,
        why=(
            "Holds the gap open while the heat relaxes the ring, with nothing else touching it. "
            "Its "
            "faces lie along the sawn ends; two cheeks beside the ring keep the ends level, which "
            "angled ends would not stay by themselves."
        ),
        sizes=sizes,
        metal=d.former_material.key,
        shape=Shape(
            outside=1.5 * t.spacer_width + 10.0,
            hole=0.0,
            length=d.blank.length + 10.0,
            fitted=1,
            beside=30.0,
        ),
    )


def _pot(d, t):
    return Tool(
        tool="pot",
        title="Facing pot",
        material=IRON,
        why=(
            "Grips the sawn ring by its outside, by the ring's own spring, while its sides are "
            "faced; the shoulder must be true."
        ),
        sizes=[
            limited("pot_bore", "bore", t.pot_bore, "H8", INSIDE),
            bare("pot_depth", "depth to the shoulder", t.pot_depth),
        ],
        metal="steel",
        shape=Shape(
            outside=_round(t.pot_bore),
            hole=t.pot_bore - 1.6 * d.blank.set_thickness,
            length=t.pot_depth + TO_HOLD,
            fitted=1,
            beside=0,
        ),
    )


def _closing_ring(d, t):
    return Tool(
        tool="closing-ring",
        title="Closing ring",
        material=STEEL,
        why=(
            "Squeezes the ring shut, round, to the clamped gap, so that the mandrel can take "
            "hold of "
            "it. Bore it last, to suit the sawn rings: a little at a time, until the gap in it is "
            "right by feeler."
        ),
        sizes=[
            bare("closing_ring_bore", "bore, to suit the ring", t.closing_ring_bore, "mm", INSIDE),
            bare("closing_ring_width", "width", t.closing_ring_width),
        ],
        metal="steel",
        shape=Shape(
            outside=_round(t.closing_ring_bore),
            hole=t.closing_ring_bore,
            length=t.closing_ring_width,
            fitted=1,
            beside=0.0,
        ),
    )


def _closing_band(d, t):
    return Tool(
        tool="closing-band",
        title="Closing band",
        material="Spring or hoop-iron strip, about a tenth of the ring's thickness",
        why=(
            "Draws the ring shut from outside by a screw through its two lugs, and bends with "
            "it: a stiff band would force it round."
        ),
        sizes=[
            bare("band_length", "length between the lugs", t.band_length, "mm", RULE),
            bare("closing_band_width", "width, less than the ring", 0.8 * d.section.width),
        ],
        metal="steel",
        shape=Shape(outside=20.0, hole=0.0, length=20.0, fitted=0, beside=30.0),
    )


def _clamp_mandrel(d, t):
    why = "Centres the closed ring and, with the end plate, grips it by its sides while its "
    why += "outside is turned; turn the spigot in place."
    if t.band_length is not None:
        why = "Grips the banded ring by its sides, with the end plate, while its outside is "
        why += "turned. Its spigot clears the ring, which is far from round: true the ring by its "
        why += "outside."
    return Tool(
        tool="clamp-mandrel",
        title="Clamp mandrel",
        material=STEEL,
        why=why,
        sizes=[
            limited("clamp_mandrel_diameter", "spigot", t.clamp_mandrel_diameter, "g6"),
            bare("spigot_length", "spigot length, less than the ring", t.spigot_length),
            bare(
                "end_plate_diameter", "shoulder, relieved to clear the tool", t.end_plate_diameter
            ),
        ],
        metal="steel",
        shape=Shape(
            outside=t.end_plate_diameter,
            hole=0.0,
            length=t.spigot_length + TO_HOLD,
            fitted=1,
            beside=10.0,
        ),
    )


def _end_plate(d, t):
    return Tool(
        tool="end-plate",
        title="End plate",
        material=STEEL,
        why=(
            "Bears on the ring alone, faced flat, smaller than the finished outside so that the "
            "tool runs out."
        ),
        sizes=[bare("end_plate_diameter", "outside", t.end_plate_diameter)],
        metal="steel",
        shape=Shape(outside=t.end_plate_diameter, hole=12.0, length=8.0, fitted=0, beside=0),
    )


def _outer_clamp(d, t):
    return Tool(
        tool="outer-clamp",
        title="Outer clamp",
        material=STEEL,
        why=(
            "A cup over the turned outside, with a ring screwed to it that grips the ring by its "
            "side "
            "outside the end plate, before the mandrel is drawn: so the ring does not move between "
            "turning and boring."
        ),
        sizes=[
            outer_clamp(d, t, "bore"),
            bare("outer_clamp_depth", "depth, less than the ring", 0.9 * d.section.width),
            bare("clamp_ring_bore", "hole of cup and clamp ring", t.clamp_ring_bore, "mm", INSIDE),
        ],
        metal="steel",
        shape=Shape(
            outside=_round(t.outer_clamp_bore) + 20.0,
            hole=t.clamp_ring_bore,
            length=d.section.width + 20.0,
            fitted=1,
            beside=30.0,
        ),
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
        tool="bore-gauge",
        title="Trial bore",
        material="Grey cast iron",
        why=(
            "A ring bored to the cylinder's size to try light and gap in, where the cylinder "
            "itself is not at hand."
        ),
        sizes=[between("trial_bore", "bore", d.duty.bore, trial_limits(d.duty.bore), INSIDE)],
        metal=GREY_IRON,
        shape=Shape(
            outside=_round(d.duty.bore),
            hole=d.duty.bore,
            length=2.0 * d.section.width,
            fitted=1,
            beside=0.0,
        ),
    )


def tree(tool, inch=False):
    """A Tool as an OrderedDict for an answer. tool: a Tool. inch: True for pieces in inches."""
    needed = work(tool.shape, tool.metal)
    return OrderedDict(
        (
            ("tool", tool.tool),
            ("title", tool.title),
            ("material", tool.material),
            ("why", tool.why),
            ("sizes", [size_tree(size) for size in tool.sizes]),
            ("piece", piece(needed, inch)),
            ("time", Quantity(needed.minutes, "min")),
        )
    )
