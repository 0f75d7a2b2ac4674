"""Calculation "tooling": the blank, and every tool that has to be turned for a ring."""

import math
from collections import OrderedDict, namedtuple

from ..catalogue.inputs import Chooser
from ..catalogue.inputs_blank import BLANK, SHELF_RING
from ..catalogue.inputs_ring import RING
from ..catalogue.inputs_rings import RINGS
from ..catalogue.inputs_tools import TOOLING
from ..cautions import cautions
from ..problems import unworkable
from ..records import Method
from ..ring import blank, heat_set
from ..ring.allowances import CUT_ANGLES
from ..ring.design import settle
from ..ring.soak import can_be_set
from ..walk import rings
from ..wording import length
from . import slitting, stepped_end, tool_list, tooling_findings, tooling_remedies
from .tooling_figures import figures
from .tooling_findings import SPIGOT_PLAY

# How far the pot's gap stands open beyond the clamped one, so that the ends cannot butt in it [mm].
POT_EASE = 0.1
# How far in from the outside shoulder and end plate stay, over the thickness; half of it where the
# rest must be left for the clamp that holds the ring by its outside.
PLATE_SHARE = 0.3
BAND_PLATE_SHARE = 0.5
# The former beyond the ring at each end, and play between the cheeks of a spacer [mm].
FORMER_BEYOND = 1.0
SEAT_PLAY = 0.1
# Left open between the lugs of a closing band, on the closed ring; play of the clamp ring round the
# end plate, on the diameter [mm]. Common practice, no source, like all of these.
BAND_OPENING = 10.0
CLAMP_RING_PLAY = 0.2

FIELDS = (
    tuple(RING.values()) + tuple(BLANK.values()) + tuple(TOOLING.values()) + tuple(RINGS.values())
)

# What the tools of a Design measure [mm], angles [deg]. Absent ones are None.
# table_grip: of a blank that is slit on the stick, whose jaws and mandrel are absent: the saw cuts
# it off at part_length, elsewhere the parting tool. spacer_width: along the ring; spacer_across:
# square to its faces; spacer_taper: between its faces, outwards; spacer_seat: between its cheeks.
# inside_at_clamp: the least inside of the ring as the spigot takes it; inside_clamped: of the
# finished ring. slit_mandrel, slit_relief: what the blank is slit on, and the groove in it.
# outer_clamp_bore, clamp_ring_bore: what holds a ring by its outside while it is bored.
Tooling = namedtuple(
    "Tooling",
    (
        "blank_jaws_bore",
        "part_length",
        "table_grip",
        "slit_mandrel_diameter",
        "slit_mandrel_length",
        "slit_relief_width",
        "slit_relief_depth",
        "former_diameter",
        "former_length",
        "spacer_width",
        "spacer_across",
        "spacer_taper",
        "spacer_seat",
        "pot_bore",
        "pot_depth",
        "pot_gap",
        "closing_ring_bore",
        "closing_ring_width",
        "band_length",
        "clamp_mandrel_diameter",
        "spigot_length",
        "end_plate_diameter",
        "outer_clamp_bore",
        "clamp_ring_bore",
        "inside_clamped",
        "inside_at_clamp",
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
        take = Chooser(values, BLANK)
        take.note("clamped_gap", design.allowances.clamped_gap, take.why("clamped_gap", SHELF_RING))
        chosen.extend(take.chosen)
    return design, measure(design, values, chosen), chosen


def measure(design, values, chosen):
    """The Tooling of a Design.

    design: a Design. values: checked values of FIELDS. chosen: list of Choice, added to.
    """
    d = design
    banded = d.duty.finishing == heat_set.BAND
    bored = d.allowances.inside > 0.0
    closing = d.blank.finish_outside + d.allowances.finishing
    pot = values.get("shelf_pot")
    if pot is None:
        pot = closing + POT_EASE / math.pi
    inside_clamped = d.blank.finish_outside - 2.0 * d.section.thickness
    at_clamp = inside_clamped
    if bored:
        # Not bored yet, and as far from round as its band leaves it.
        at_clamp -= 2.0 * (
            d.allowances.inside
            + heat_set.band_allowance(
                d.spring.curvature_change,
                d.duty.bore,
                d.section.thickness,
                d.duty.setting,
                d.duty.turns,
            )
        )
    mandrel = values.get("shelf_clamp_mandrel")
    if mandrel is None:
        mandrel = at_clamp - SPIGOT_PLAY
    plate = d.blank.finish_outside - 2.0 * (BAND_PLATE_SHARE if bored else PLATE_SHARE) * (
        d.section.thickness
    )
    cut_angle = CUT_ANGLES[d.duty.end_cut]
    scarf = None
    if d.duty.turns == 2:
        scarf = blank.scarf_length(band=d.blank.band_width, angle=cut_angle)
    elif cut_angle < 90.0:
        scarf = blank.scarf_length(band=d.section.width, angle=cut_angle)
    feeler = blank.gap_at_edge(
        gap=d.duty.closed_gap,
        kerf=d.allowances.gap_kerf,
        thickness=d.section.thickness,
        neutral_radius=0.5 * (d.duty.bore - d.section.thickness),
    )
    slit = slitting.settle(d, values, cut_angle, chosen) if d.duty.turns == 2 else slitting.NONE
    on_stick = slit.table_grip is not None
    former_length = across = taper = seat = None
    if d.spring.former_diameter is not None:
        span = d.blank.length
        if d.duty.turns == 2:
            span = blank.inside_out_length(blank_length=span, slit=d.allowances.slit)
        former_length = span + 2.0 * FORMER_BEYOND
    else:
        across = blank.feeler_reading(gap=d.spring.spacer_width, angle=cut_angle)
        taper = heat_set.spacer_taper(
            d.spring.spacer_width - d.allowances.gap_kerf, d.blank.bored_radius
        )
        seat = d.blank.length + SEAT_PLAY
    return Tooling(
        blank_jaws_bore=None if on_stick else d.blank.rough_outside,
        part_length=d.blank.length
        if on_stick
        else blank.part_length(d.blank.length, d.allowances.facing),
        table_grip=slit.table_grip,
        slit_mandrel_diameter=slit.mandrel_diameter,
        slit_mandrel_length=slit.mandrel_length,
        slit_relief_width=slit.relief_width,
        slit_relief_depth=slit.relief_depth,
        former_diameter=d.spring.former_diameter,
        former_length=former_length,
        spacer_width=d.spring.spacer_width,
        spacer_across=across,
        spacer_taper=taper,
        spacer_seat=seat,
        pot_bore=pot,
        pot_depth=0.75 * d.section.width,
        pot_gap=d.allowances.gap_kerf - math.pi * (d.blank.rough_outside - pot),
        closing_ring_bore=None if banded else closing,
        closing_ring_width=None if banded else d.blank.length,
        band_length=math.pi * closing - BAND_OPENING if banded else None,
        clamp_mandrel_diameter=mandrel,
        spigot_length=d.section.width - 0.3 * min(1.0, 0.2 * d.section.width),
        end_plate_diameter=plate,
        outer_clamp_bore=d.blank.finish_outside if bored else None,
        clamp_ring_bore=plate + CLAMP_RING_PLAY if bored else None,
        inside_clamped=inside_clamped,
        inside_at_clamp=at_clamp,
        bridge_length=slit.bridge_length,
        bridge_angle=slit.bridge_angle,
        cutter_diameter=slit.cutter_diameter,
        cutter_collar=slit.cutter_collar,
        slit=slit.cut,
        scarf_length=scarf,
        step=d.allowances.slit if d.duty.turns == 2 else None,
        feeler_gap=blank.feeler_reading(gap=feeler, angle=cut_angle),
        joint=stepped_end.joint_of(d, values, chosen),
    )


def _gap_in_closing_ring(design, bore):
    if design.duty.finishing == heat_set.BAND:
        raise unworkable(
            "shelf_closing_ring",
            "a ring that a band closes goes into no closing ring",
            "leave shelf_closing_ring out, or finish the ring in a closing ring",
            "conflict",
        )
    gap = design.allowances.gap_kerf - math.pi * (design.blank.rough_outside - bore)
    if gap < 0.0:
        raise unworkable(
            "shelf_closing_ring",
            "the closing ring is too small: the ends butt before the ring is in",
            "bore it to %s, or leave less for finishing"
            % length(design.blank.rough_outside - design.allowances.gap_kerf / math.pi),
        )
    if gap >= design.allowances.gap_kerf:
        raise unworkable(
            "shelf_closing_ring",
            "the closing ring is larger than the blank: it would close nothing",
            "use one of %s, or a larger finishing_allowance"
            % length(design.blank.finish_outside + design.allowances.finishing),
        )
    return gap


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
    found = OrderedDict(
        (
            ("figures", figures(design, tooling)),
            (
                "tools",
                [
                    tool_list.tree(tool, values.get("inch_sizes"))
                    for tool in tool_list.tools(design, tooling)
                ],
            ),
        )
    )
    said = tooling_findings.findings(design, tooling, values)
    said = tooling_remedies.told(values, design, tooling, said, _judged)
    made, of_rings = rings.answer(design, values)
    if made:
        found["rings"] = made
    found["findings"] = said + of_rings
    found["chosen"] = chosen
    keys = ["figures"]
    if can_be_set(design.duty.ring_material.family):
        keys.append("hot-work")
    if design.duty.turns == 2:
        keys.append("slitting-saw")
    found["cautions"] = cautions(*keys + ["sharp-edges", "stored-spring", "rotating-work"])
    return found


def _judged(values):
    design, tooling, _ = settle_tooling(values)
    return tooling_findings.findings(design, tooling, values), (design, tooling)


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
