"""Calculation "tooling": the blank, and every tool that has to be turned for a ring."""

import math
from collections import OrderedDict, namedtuple

from ..cautions import cautions
from ..fields import field
from ..problems import OutOfRange, unworkable
from ..records import Choice, Method, figure
from ..ring import blank, heat_set
from ..ring.allowances import CUT_ANGLES
from ..ring.design import settle
from ..ring.ring_inputs import BLANK_FIELDS, RING_FIELDS
from ..wording import length
from . import stepped_end, tool_list, tooling_findings

BREAKTHROUGH = 0.5
# Left beside the scarfs for the hand that saws them [mm].
BRIDGE_MARGIN = 2.0
# Side play of the spigot in the closed ring, which is not quite round [mm].
SPIGOT_PLAY = 0.1
# How far the pot's gap stands open beyond the clamped one, so that the ends cannot butt in it [mm].
POT_EASE = 0.1
PLATE_SHARE = 0.3

FIELDS = (
    RING_FIELDS
    + BLANK_FIELDS
    + (
        field(
            "cutter_diameter",
            "length",
            "diameter of the slitting saw",
            "the smallest standard saw that reaches through the wall",
            lowest=10.0,
            highest=400.0,
            symbol="Dc",
        ),
        field(
            "cutter_collar",
            "length",
            "diameter of the collar beside the saw",
            "of the standard saw",
            lowest=2.0,
            highest=200.0,
        ),
        field(
            "bridge_length",
            "length",
            "length of the solid bridge along the outside",
            "room for both scarfs and stout enough",
            lowest=1.0,
            highest=500.0,
        ),
        stepped_end.FIELD,
        field("shelf_pot", "length", "bore of a pot you have", "none", lowest=8.0, highest=1000.0),
        field(
            "shelf_closing_ring",
            "length",
            "bore of a closing ring you have: it settles the clamped gap",
            "none",
            lowest=8.0,
            highest=1000.0,
        ),
        field(
            "shelf_clamp_mandrel",
            "length",
            "spigot diameter of a clamp mandrel you have",
            "none",
            lowest=5.0,
            highest=1000.0,
        ),
    )
)

# What the tools of a Design measure [mm], angles [deg]. Absent ones are None.
Tooling = namedtuple(
    "Tooling",
    (
        "former_diameter",
        "former_length",
        "spacer_width",
        "pot_bore",
        "pot_depth",
        "pot_gap",
        "closing_ring_bore",
        "closing_ring_width",
        "clamp_mandrel_diameter",
        "spigot_length",
        "end_plate_diameter",
        "inside_clamped",
        "bridge_length",
        "bridge_angle",
        "cutter_diameter",
        "cutter_collar",
        "slit",
        "scarf_length",
        "step",
        "feeler_gap",
        "joint",
    ),
)


def settle_tooling(values):
    """(Design, Tooling, list of Choice) for checked values of FIELDS, a plain dict in core units.

    Raises InputProblem where the values cannot be worked together.
    """
    shelf = values.get("shelf_closing_ring")
    design, chosen = settle(values)
    if shelf is not None:
        values = dict(values)
        values["clamped_gap"] = _gap_in_closing_ring(design, shelf)
        design, chosen = settle(values)
        chosen.append(
            Choice(
                "clamped_gap", design.clamped_gap, "mm", "what the closing ring on the shelf leaves"
            )
        )
    return design, measure(design, values, chosen), chosen


def measure(design, values, chosen):
    """The Tooling of a Design.

    design: a Design. values: checked values of FIELDS. chosen: list of Choice, added to.
    """
    d = design
    closing = d.finish_outside + d.finishing_allowance
    pot = values.get("shelf_pot")
    if pot is None:
        pot = closing + POT_EASE / math.pi
    inside_clamped = d.finish_outside - 2.0 * d.radial_thickness
    mandrel = values.get("shelf_clamp_mandrel")
    if mandrel is None:
        mandrel = inside_clamped - SPIGOT_PLAY
    plate = d.finish_outside - 2.0 * PLATE_SHARE * d.radial_thickness
    former = former_length = None
    if d.former_diameter is not None:
        former = d.former_diameter
        former_length = d.blank_length + 2.0
    bridge = angle = cutter = collar = slit = scarf = step = None
    cut_angle = CUT_ANGLES[d.end_cut]
    if d.turns == 2:
        bridge, angle, cutter, collar, slit = _slit(d, values, cut_angle, chosen)
        scarf = blank.scarf_length(band=d.band_width, angle=cut_angle)
        step = d.slit_width
    elif cut_angle < 90.0:
        scarf = blank.scarf_length(band=d.ring_width, angle=cut_angle)
    feeler = blank.gap_at_edge(
        gap=d.closed_gap,
        kerf=d.gap_kerf,
        thickness=d.radial_thickness,
        neutral_radius=0.5 * (d.bore - d.radial_thickness),
    )
    return Tooling(
        former, former_length, d.spacer_width, pot, 0.75 * d.ring_width,
        d.gap_kerf - math.pi * (d.rough_outside - pot),
        closing, d.blank_length, mandrel, d.ring_width - 0.3 * min(1.0, 0.2 * d.ring_width),
        plate, inside_clamped, bridge, angle, cutter,
        collar, slit, scarf, step, feeler, stepped_end.joint_of(d, values, chosen),
    )  # fmt: skip


def _gap_in_closing_ring(design, bore):
    gap = design.gap_kerf - math.pi * (design.rough_outside - bore)
    if gap < 0.0:
        raise unworkable(
            "shelf_closing_ring",
            "the closing ring is too small: the ends butt before the ring is in",
            "bore it to %s, or leave less for finishing"
            % length(design.rough_outside - design.gap_kerf / math.pi),
        )
    if gap >= design.gap_kerf:
        raise unworkable(
            "shelf_closing_ring",
            "the closing ring is larger than the blank: it would close nothing",
            "use one of %s, or a larger finishing_allowance"
            % length(design.finish_outside + design.finishing_allowance),
        )
    return gap


def _slit(d, values, cut_angle, chosen):
    """(bridge length, bridge angle, cutter, collar, blank.Slit) of a double-turn blank."""
    wall = 0.5 * (d.rough_outside - d.bored_inside)
    bridge = values.get("bridge_length")
    if bridge is None:
        bridge = blank.shortest_bridge(band=d.band_width, angle=cut_angle, margin=BRIDGE_MARGIN)
        chosen.append(Choice("bridge_length", bridge, "mm", "both scarfs, and 2 mm for the saw"))
    cutter = values.get("cutter_diameter")
    collar = values.get("cutter_collar")
    if cutter is None:
        try:
            saw = blank.smallest_cutter(wall=wall, breakthrough=BREAKTHROUGH)
        except OutOfRange:
            saw = blank.SAWS[-1]
        cutter = saw.diameter
        chosen.append(Choice("cutter_diameter", cutter, "mm", "the smallest that reaches through"))
    if collar is None:
        collar = _collar(cutter)
        chosen.append(Choice("cutter_collar", collar, "mm", "usual for that saw"))
    if collar >= cutter:
        raise unworkable(
            "cutter_collar",
            "the collar is as large as the saw",
            "give the collar's diameter, smaller than the saw's",
        )
    angle = blank.bridge_angle(bridge_length=bridge, outside_radius=0.5 * d.rough_outside)
    try:
        cut = blank.slit(
            inside_radius=0.5 * d.bored_inside,
            outside_radius=0.5 * d.rough_outside,
            cutter_diameter=cutter,
            breakthrough=BREAKTHROUGH,
            bridge_angle=angle,
            collar_diameter=collar,
        )
    except OutOfRange as problem:
        name = "bridge_length" if problem.name == "bridge_angle" else "cutter_diameter"
        raise unworkable(
            name,
            "with this cutter and bridge there is no slit left to cut",
            "use a smaller cutter or a shorter bridge",
        )
    return bridge, angle, cutter, collar, cut


def _collar(cutter):
    """Collar of the standard saw of that size, or of the next smaller [mm]."""
    collar = 0.5 * cutter
    for saw in blank.SAWS:
        if saw.diameter <= cutter:
            collar = saw.collar
    return collar


def calculate(values):
    """The tooling of one ring: figures, tools, findings, what was chosen, cautions.

    values: checked values of FIELDS, a plain dict in core units. Raises InputProblem.
    """
    design, tooling, chosen = settle_tooling(values)
    return answer(design, tooling, chosen, values)


def answer(design, tooling, chosen, values):
    """As `calculate`, for what is settled already.

    design: a Design. tooling: its Tooling. chosen: list of Choice. values: the checked inputs.
    """
    return OrderedDict(
        (
            ("figures", figures(design, tooling)),
            ("tools", [tool_list.tree(tool) for tool in tool_list.tools(design, tooling)]),
            ("findings", tooling_findings.findings(design, tooling, values)),
            ("chosen", chosen),
            (
                "cautions",
                cautions(
                    "figures",
                    "hot-work",
                    "slitting-saw",
                    "sharp-edges",
                    "stored-spring",
                    "rotating-work",
                ),
            ),
        )
    )


def figures(design, tooling):
    """OrderedDict of Figure. design: a Design. tooling: its Tooling."""
    d, t = design, tooling
    gaps = (
        ("d1", d.bore, "mm"),
        ("a1", d.radial_thickness, "mm"),
        ("s1", d.closed_gap, "mm"),
        ("sc", d.clamped_gap, "mm"),
        ("s", d.gap_kerf, "mm"),
    )
    width = (("w", d.ring_width, "mm"), ("k", d.slit_width, "mm"), ("f", d.facing_allowance, "mm"))
    out = OrderedDict()

    def put(name, value, unit, symbol, method, working=(), low=None, high=None):
        if value is not None:
            out[name] = figure(value, unit, symbol, method, working, low, high)

    allowance = (("allowance", d.finishing_allowance, "mm"),)
    put(
        "rough_outside_diameter",
        d.rough_outside,
        "mm",
        "rough",
        "blank-diameters",
        gaps + allowance,
    )
    put("bored_inside_diameter", d.bored_inside, "mm", "bored", "blank-diameters", gaps)
    put("blank_length", d.blank_length, "mm", "L", "blank-width", width)
    part = blank.part_length(d.blank_length, d.facing_allowance)
    put("part_length", part, "mm", "part", "blank-width", width)
    put("band_width", d.band_width, "mm", "b", "blank-width", width)
    put("finish_outside_diameter", d.finish_outside, "mm", "D", "blank-diameters", gaps)
    put("clamped_gap", d.clamped_gap, "mm", "sc", "blank-diameters", gaps)
    put("feeler_gap", t.feeler_gap, "mm", "s1 at the edge", "edge-gap", gaps)
    set_on = (
        ("r_b", d.bored_radius, "mm"),
        ("r", 0.5 * (d.bore - d.radial_thickness), "mm"),
        ("eta", d.relief, "1"),
        ("hot/cold", d.former_growth, "1"),
    )
    if t.former_diameter is not None:
        small, large = _former_spread(d)
        put("former_diameter", t.former_diameter, "mm", "Df", "former-size", set_on, small, large)
        put("former_length", t.former_length, "mm", "Lf", "tool-size", width)
    else:
        spacer = (
            ("m", d.gap_change, "mm"),
            ("s", d.gap_kerf, "mm"),
            ("s1", d.closed_gap, "mm"),
            ("eta", d.relief, "1"),
        )
        put("spacer_width", t.spacer_width, "mm", "spacer", "spacer-size", spacer)
    closed = (("D", d.finish_outside, "mm"),) + allowance
    put("pot_bore", t.pot_bore, "mm", "pot", "tool-size", closed)
    put("pot_gap", t.pot_gap, "mm", "gap in the pot", "tool-size", closed)
    put("closing_ring_bore", t.closing_ring_bore, "mm", "closing", "tool-size", closed)
    spigot = (("D", d.finish_outside, "mm"), ("a1", d.radial_thickness, "mm"))
    put("clamp_mandrel_diameter", t.clamp_mandrel_diameter, "mm", "spigot", "tool-size", spigot)
    put("end_plate_diameter", t.end_plate_diameter, "mm", "plate", "tool-size", spigot)
    if t.slit is not None:
        cut = (
            ("ri", 0.5 * d.bored_inside, "mm"),
            ("ro", 0.5 * d.rough_outside, "mm"),
            ("Dc", t.cutter_diameter, "mm"),
            ("e", BREAKTHROUGH, "mm"),
        )
        put(
            "bridge_length", t.bridge_length, "mm", "bridge", "bridge", (("b", d.band_width, "mm"),)
        )
        put("cutter_diameter", t.cutter_diameter, "mm", "Dc", "slit", cut)
        put("cutter_centre_distance", t.slit.centre_distance, "mm", "C", "slit", cut)
        put(
            "table_travel",
            t.slit.table_travel,
            "deg",
            "travel",
            "slit",
            cut + (("bridge", t.bridge_angle, "deg"),),
        )
        put("hand_wedge", t.slit.hand_wedge, "deg", "wedge", "slit", cut)
        put("hand_wedge_length", t.slit.hand_wedge_length, "mm", "wedge", "slit", cut)
        put("step", t.step, "mm", "k", "blank-width", width)
    put(
        "scarf_length",
        t.scarf_length,
        "mm",
        "b/tan A",
        "scarf",
        (("b", d.band_width, "mm"), ("A", CUT_ANGLES[d.end_cut], "deg")),
    )
    if t.joint is not None:
        stepped_end.put_figures(out, d, t.joint)
    return out


def _former_spread(d):
    """The former sizes that would suit the best and the poorest relief the soak may give [mm]."""
    inwards = 0.5 * (d.set_thickness - d.radial_thickness) - d.inside_allowance
    free = 1.0 / (2.0 / (d.bore - d.radial_thickness) - d.curvature_change) + inwards
    sizes = []
    for relief in (d.relief_high, d.relief_low):
        radius = heat_set.former_radius_for(d.bored_radius, free, relief)
        sizes.append(2.0 * (radius - 0.5 * d.set_thickness) / d.former_growth)
    return sizes[0], sizes[1]


METHODS = (
    Method(
        "tool-size",
        "Size of a tool from the ring it holds",
        "closing ring = D + allowance; pot a little larger; spigot = D - 2 a1 - 0.1 mm; plate = D "
        "- 0.6 a1",
        "limits by ISO 286: holes H7 and H8, spigot g6, former h9",
        ("practice", "iso286"),
    ),
)
