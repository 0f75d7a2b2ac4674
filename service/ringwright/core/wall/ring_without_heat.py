"""Calculation "ring-without-heat": turned oversize, cut, closed, turned again; how it bears."""

import math
from collections import OrderedDict, namedtuple

from ..catalogue import figures_of
from ..catalogue.inputs import Chooser, listed, names
from ..catalogue.inputs_blank import BANDED, BLANK, COLD
from ..catalogue.inputs_ring import BAND, BOUND, CLOSING_RING, FORCED_ROUND, PLAIN, RING
from ..catalogue.inputs_without_heat import AGAIN
from ..catalogue.without_heat import ANSWER
from ..cautions import cautions
from ..problems import NotConverged, OutOfRange, unworkable
from ..records import Quantity, Series
from ..ring import heat_set, judging, spring, without_heat
from ..ring.design import settle
from ..ring.spring_back import past_straight
from ..shop_sizes import up
from . import free_shape, large_deflection, wall_contact, without_heat_findings, without_heat_steps

FIELDS = listed(
    (RING, BLANK, AGAIN),
    "bore", "radial_thickness", "ring_width", "ring_material", "modulus", "wall_pressure",
    "free_gap", "closed_gap", "end_cut", "finishing", "bored_again", "finishing_allowance",
    "facing_allowance", "clamped_gap", "piston_diameter", "cylinder_material", "piston_material",
    "steam_pressure", "steam_temperature", "shop_temperature", "inch_sizes",
)  # fmt: skip
_TOLD = [name for name in names(FIELDS) if name not in ("finishing_allowance", "clamped_gap")]
# What the settling of a ring is not to know: it belongs to this way of making one.
_OWN = ("bored_again", "finishing_allowance", "clamped_gap", "free_gap")

# Steps round the ring, and round those it is put beside, which then are right to 0.1 %.
STEPS = 180
WAYS_STEPS = 96
# A band of a ring is left so far from meeting, on the closed ring [mm]; common practice.
BAND_OPENING = 10.0

# A ring as it is made. finishing, bored_again, clamped_gap, allowance, inside_allowance: of the
# second turning. sizes: without_heat.Sizes. borne: wall_contact.Bearing. thicknesses: round the
# ring [mm]. springiness: the share of its curvature that the bore takes [1].
Made = namedtuple(
    "Made",
    (
        "design", "finishing", "bored_again", "clamped_gap", "allowance", "inside_allowance",
        "sizes", "borne", "thicknesses", "springiness",
    ),
)  # fmt: skip


def held_moment(curvature, radius, finishing, steps):
    """Conforming moment of a ring made true while it was held so, at `steps` + 1 places [mm].

    curvature: kappa0 [1/mm]. radius: neutral, in the bore [mm]. finishing: closing-ring, band or
    forced-round.
    """
    step = 2.0 * math.pi / steps
    if finishing == BAND:
        share = heat_set.band_share(BOUND, 1) * curvature * radius
        return free_shape.uniform(share, radius, steps + 1, step)
    if finishing == CLOSING_RING:
        return free_shape.light_tight(curvature, radius, steps + 1, step)
    return free_shape.round_arc(curvature, radius, steps + 1)


def bears(design, curvature, finishing, bored_again, steps=STEPS):
    """(Bearing, thicknesses round it [mm], largest share of curvature) of a ring made so.

    design: a Design. curvature: kappa0 [1/mm]. finishing: closing-ring, band or forced-round.
    bored_again: whether the inside is turned again too. steps: round the ring. Raises NotConverged.
    """
    thickness = design.section.thickness
    r = spring.neutral_radius(design.duty.bore, thickness)
    moment = held_moment(curvature, r, finishing, steps)
    even = bored_again or finishing == FORCED_ROUND
    thick = [thickness] * (steps + 1)
    if not even:
        thick = without_heat.thicknesses(thickness, curvature * r * r, finishing, steps + 1)
    ring = wall_contact.Ring(
        bore=design.duty.bore,
        thickness=design.section.thickness,
        turn_width=design.section.width,
        modulus=design.duty.modulus,
        turns=1,
        back_pressure=0.0,
        face_pressure=0.0,
    )
    borne = wall_contact.bear(ring, moment, None if even else thick)
    return borne, thick, max(moment) / r


def lowest_pressure(borne):
    """Least pressure round the ring [MPa]; a tip's own node stands for half a step."""
    return min(borne.pressure[1:-1])


def calculate(values):
    """A ring without heat: figures, findings, "turns", "point_forces", "ways", "steps" and more.

    values: checked values of FIELDS, a plain dict in core units. Raises InputProblem.
    """
    try:
        made, chosen = _made(values)
        ways = _ways(made)
    except OutOfRange:
        raise past_straight("wall_pressure" if values.get("free_gap") is None else "free_gap")
    except NotConverged:
        raise large_deflection.unsettled(values, ("free_gap", "wall_pressure"))
    return OrderedDict(
        (
            ("figures", _figures(made)),
            ("findings", without_heat_findings.findings(made)),
            ("turns", _turns(made.borne)),
            ("point_forces", _points(made.borne)),
            ("ways", ways),
            ("steps", without_heat_steps.steps(made)),
            ("chosen", chosen),
            (
                "cautions",
                cautions(
                    "figures",
                    "pressure-system",
                    "stored-spring",
                    "sharp-edges",
                    "rotating-work",
                    "iron-dust",
                ),
            ),
        )
    )


def _made(values):
    """(Made, list of Choice)."""
    asked = dict([(name, values.get(name)) for name in _TOLD if name not in _OWN])
    asked.update({"ring_type": PLAIN, "setting": BOUND, "relief": 1.0})
    piece = values.get("free_gap")
    if piece is not None:
        if values.get("wall_pressure") is not None:
            asked["free_gap"] = piece
        else:
            asked = _of_gap(asked, piece)
    design, ring_chosen = settle(asked)
    told = [one for one in ring_chosen if one.input in _TOLD]
    take = Chooser(values, BLANK, AGAIN)
    finishing = design.duty.finishing
    again = take("bored_again", case=BANDED if finishing == BAND else "")
    r = spring.neutral_radius(design.duty.bore, design.section.thickness)
    inch = values.get("inch_sizes")
    needed = without_heat.needed_outside(design.spring.curvature_change, r, finishing)
    allowance = values.get("finishing_allowance")
    if allowance is None:
        # Not rounded to a fraction of an inch: that may be less than what cleans it.
        allowance = up(needed, 0.1, 0.005, inch)
        take.note("finishing_allowance", allowance, take.why("finishing_allowance", COLD))
    inside = (
        up(
            without_heat.needed_inside(design.spring.curvature_change, r, finishing),
            0.1,
            0.005,
            inch,
        )
        if again
        else 0.0
    )
    clamped = take("clamped_gap", design.duty.closed_gap)
    sizes = without_heat.sizes(design, finishing, clamped, allowance, inside)
    if clamped >= sizes.piece:
        raise unworkable(
            "clamped_gap",
            "the gap when clamped is not less than the piece cut out, so nothing would be closed",
            "give less than the free gap, or leave it out",
            value=clamped,
            highest=sizes.piece,
        )
    if sizes.spigot <= 0.0:
        raise unworkable(
            "radial_thickness",
            "so thick a ring leaves no room for the spigot that clamps it",
            "make the ring thinner, or ask for less pressure",
        )
    borne, thick, springiness = bears(design, design.spring.curvature_change, finishing, again)
    made = Made(
        design=design,
        finishing=finishing,
        bored_again=again,
        clamped_gap=clamped,
        allowance=allowance,
        inside_allowance=inside,
        sizes=sizes,
        borne=borne,
        thicknesses=thick,
        springiness=springiness,
    )
    return made, told + take.chosen


def _of_gap(asked, piece):
    """The request with the free gap that `settle` reckons by: less what its hold takes up."""
    design, _ = settle(asked)
    if piece <= design.duty.closed_gap:
        return dict(asked, free_gap=piece)
    r = spring.neutral_radius(design.duty.bore, design.section.thickness)
    curvature = without_heat.curvature_for(piece, r, design.duty.closed_gap, design.duty.finishing)
    opened = without_heat.piece_for(curvature, r, design.duty.closed_gap, FORCED_ROUND)
    return dict(asked, free_gap=opened)


def _figures(made):
    d, borne, sizes = made.design, made.borne, made.sizes
    opening = spring.opening_to_clear(
        d.section.thickness,
        d.duty.bore,
        d.spring.gap_change,
        0.5 * (d.duty.bore - d.piston_diameter),
    )
    closing = made.finishing == CLOSING_RING
    values = {
        "radial_thickness": d.section.thickness,
        "ring_width": d.section.width,
        "first_outside_diameter": sizes.first_outside,
        "first_inside_diameter": sizes.first_inside,
        "piece_cut_out": sizes.piece,
        "outside_allowance": made.allowance,
        "inside_allowance": made.inside_allowance,
        "closing_ring_bore": sizes.held_outside if closing else None,
        "band_length": math.pi * sizes.held_outside - BAND_OPENING
        if made.finishing == BAND
        else None,
        "clamp_mandrel_diameter": sizes.spigot,
        "end_plate_diameter": sizes.plate,
        "outer_clamp_bore": sizes.outside if made.bored_again else None,
        "clamped_gap": made.clamped_gap,
        "finish_outside_diameter": sizes.outside,
        "second_inside_diameter": sizes.inside,
        "thinnest": min(made.thicknesses),
        "thickest": max(made.thicknesses),
        "closed_gap": d.duty.closed_gap,
        "closed_gap_hot": judging.gap_left(d, d.duty.closed_gap, d.duty.wall_temperature),
        "mean_wall_pressure": borne.mean_pressure,
        "lowest_pressure": lowest_pressure(borne),
        "largest_pressure": borne.largest_pressure,
        "tip_force": max(borne.tip_forces),
        "widest_light": borne.widest_light,
        "light_angle": math.degrees(borne.light_place) % 360.0 if borne.widest_light else 0.0,
        "contact_share": borne.contact_share,
        "closing_stress": without_heat.closing_stress(d, made.finishing, sizes.thickness),
        "peak_stress": borne.tension,
        "peak_compression": borne.compression,
        "sprung_on_opening": opening,
        "sprung_on_stress": spring.opening_stress(
            opening, d.spring.gap_change, d.duty.bore, d.section.thickness, d.duty.modulus
        ),
    }
    given = {
        "d1": d.duty.bore,
        "a1": d.section.thickness,
        "h": d.section.width,
        "E": d.duty.modulus,
        "kappa0": d.spring.curvature_change,
        "R": sizes.free_radius,
        "c": sizes.piece,
        "s1": d.duty.closed_gap,
        "s_c": made.clamped_gap,
        "s": sizes.piece,
        "m": d.spring.gap_change,
        "g": opening,
        "f": made.allowance,
        "i": made.inside_allowance,
        "a": sizes.thickness,
        "D": sizes.outside,
        "allowance": made.allowance,
        "alpha_r": d.duty.ring_material.expansion,
        "alpha_c": d.duty.cylinder.expansion,
        "T_r": d.duty.temperature,
        "T_c": d.duty.wall_temperature,
        "T_0": d.duty.shop,
    }
    return figures_of(ANSWER, values, given, {"widest_light": "wall-contact"})


def _turns(borne):
    angles = [math.degrees(i * borne.step) for i in range(len(borne.pressure))]
    row = OrderedDict((("turn", 1), ("angle", Series(angles, "deg", "psi"))))
    row["pressure"] = Series(borne.pressure, "MPa", "p")
    row["light"] = Series(borne.light, "mm", "w")
    row["moment"] = Series(borne.moment, "N mm", "M")
    return [row]


def _points(borne):
    rows = []
    for place, force in borne.points:
        row = OrderedDict((("turn", 1), ("angle", Quantity(math.degrees(place), "deg"))))
        row["force"] = Quantity(force, "N")
        rows.append(row)
    return rows


def _ways(made):
    """The same section and free gap made in other ways, this one among them."""
    d = made.design
    bore, thickness, modulus = d.duty.bore, d.section.thickness, d.duty.modulus
    r = spring.neutral_radius(bore, thickness)
    gap = made.sizes.piece - d.duty.closed_gap
    even = spring.pressure_from_gap(gap, bore, thickness, modulus)
    curvature = heat_set.curvature_of_gap(gap, bore, thickness, BOUND, 1)
    contact = heat_set.contact_pressure(curvature, bore, thickness, modulus)
    tip = heat_set.tip_force(contact, bore, d.section.width)
    mean = contact * heat_set.mean_share(1)
    rows = [
        _way("heated, spread by a spacer", even, even, even, 0.0, 0.0),
        _way("heated on a round former, turned in a closing ring", mean, 0.0, contact, tip, 0.0),
    ]
    for finishing, words in without_heat_steps.HELD:
        for again in (False, True):
            if again and finishing == FORCED_ROUND:
                continue
            here = finishing == made.finishing and again == made.bored_again
            borne = made.borne
            if not here:
                kappa = without_heat.curvature_for(
                    made.sizes.piece, r, d.duty.closed_gap, finishing
                )
                borne = bears(d, kappa, finishing, again, WAYS_STEPS)[0]
            turned = "outside and inside" if again else "outside"
            said = "without heat, %s, %s turned again" % (words, turned)
            rows.append(
                _way(
                    said,
                    borne.mean_pressure,
                    lowest_pressure(borne),
                    borne.largest_pressure,
                    max(borne.tip_forces),
                    borne.widest_light,
                )
            )
    return rows


def _way(words, mean, lowest, largest, tip, light):
    return OrderedDict(
        (
            ("way", words),
            ("mean_wall_pressure", Quantity(mean, "MPa")),
            ("lowest_pressure", Quantity(lowest, "MPa")),
            ("largest_pressure", Quantity(largest, "MPa")),
            ("tip_force", Quantity(tip, "N")),
            ("widest_light", Quantity(light, "mm")),
        )
    )
