"""Calculation "wall-pressure": the ring's pressure and light round the real bore, by turns."""

import math
from collections import OrderedDict

from ..catalogue import figures_of
from ..catalogue.inputs import Chooser, listed, names
from ..catalogue.inputs_ring import RING
from ..catalogue.inputs_wall import WALL
from ..catalogue.wall import WALL_PRESSURE
from ..cautions import cautions
from ..problems import NotConverged, unworkable
from ..records import GOOD, STOP, WATCH, Quantity, Series, finding
from ..ring import section, spring
from ..ring.design import settle
from ..ring.judging import judge_light
from ..wording import angle, fine_length, percent, stress, wall_pressure
from . import bore_shape, free_shape, large_deflection, wall_contact

FIELDS = listed(
    (RING, WALL),
    "bore", "ring_type", "radial_thickness", "ring_width", "ring_material", "modulus", "setting",
    "finishing", "relief", "wall_pressure", "free_gap", "former_ratio", "closed_gap",
    "pressure_behind", "face_pressure", "bore_shape", "gap_direction", "free_shape",
    "steps_per_turn", "inch_sizes",
)  # fmt: skip
_TOLD = names(FIELDS)

# Sealed share of the circumference below which a ring is called leaky, and useless.
SEALED_WATCH = 0.995
SEALED_STOP = 0.25
# What may ask for more than settles, the likeliest first.
_MAY_ASK = ("bore_shape", "free_shape", "free_gap", "former_ratio", "wall_pressure")
# Light that no lamp shows [mm].
LIGHT_TIGHT = 0.002


def spring_moment(design, steps):
    """Conforming moment of a Design in a round bore at `steps` + 1 equal places along its strip
    [mm].

    design: design.Design. steps: in all, over both turns of a double-turn ring.
    """
    r = spring.neutral_radius(design.duty.bore, design.section.thickness)
    nodes = steps + 1
    step = 2.0 * math.pi * design.duty.turns / steps
    if design.duty.bearing.uniform:
        k = spring.springiness(
            design.spring.wall_pressure,
            design.duty.bore,
            design.section.thickness,
            design.duty.modulus,
        )
        return free_shape.uniform(k, r, nodes, step)
    if design.duty.bearing.light:
        return free_shape.round_arc(design.spring.curvature_change, r, nodes)
    return free_shape.light_tight(design.spring.curvature_change, r, nodes, step)


def on_wall(design, moment, shape, direction, back_pressure, face_pressure):
    """The wall_contact.Bearing of a Design in a bore of that shape.

    moment: conforming moment in a round bore, as spring_moment gives [mm]. shape: bore_shape.Shape.
    direction: of the gap in the bore [deg]. back_pressure, face_pressure: gauge [MPa].
    Raises NotConverged.
    """
    if shape.harmonics or shape.larger:
        step = 2.0 * math.pi * design.duty.turns / (len(moment) - 1)
        start = math.radians(direction)
        added = bore_shape.wall_moment(shape, [start + i * step for i in range(len(moment))])
        moment = [a + b for a, b in zip(moment, added)]
    ring = wall_contact.Ring(
        bore=design.duty.bore,
        thickness=design.section.thickness,
        turn_width=design.turn_width,
        modulus=design.duty.modulus,
        turns=design.duty.turns,
        back_pressure=back_pressure,
        face_pressure=face_pressure,
    )
    return wall_contact.bear(ring, moment)


# Figures that a ring by itself has too, worked otherwise.
ON_WALL = {
    "contact_pressure": "wall-contact",
    "widest_light": "wall-contact",
    "slack_angle": "wall-contact",
}


def calculate(values):
    """How the ring bears: figures, findings, "turns", "point_forces", chosen and cautions.

    values: checked values of FIELDS, a plain dict in core units. "turns" is a list, one entry a
    turn: angle from the gap, pressure, light, moment, each a Series of as many values.
    Raises InputProblem.
    """
    design, chosen = settle(values)
    chosen = [choice for choice in chosen if choice.input in _TOLD]
    readings = values.get("free_shape")
    if readings:
        _check_one_source(values)
        told = ("wall_pressure", "setting", "finishing", "relief")
        chosen = [choice for choice in chosen if choice.input not in told]
    take = Chooser(values, WALL)
    back, face = take("pressure_behind"), take("face_pressure")
    direction = take("gap_direction")
    per_turn = values.get("steps_per_turn") or WALL["steps_per_turn"].default.value
    per_turn = 8 * ((per_turn + 7) // 8)
    if face > back:
        raise unworkable(
            "face_pressure",
            "more steam on the face than behind would push the ring off the wall, into its groove",
            "give a pressure_behind of at least the face_pressure",
            "conflict",
        )
    chosen.extend(take.chosen)
    shape = bore_shape.shape_of(values.get("bore_shape"), design.duty.bore)
    steps = per_turn * design.duty.turns
    if readings:
        moment = free_shape.measured(
            [(entry["angle"], entry["radius"]) for entry in readings],
            design.section.thickness,
            spring.neutral_radius(design.duty.bore, design.section.thickness),
            design.duty.turns,
            steps + 1,
        )
    else:
        moment = spring_moment(design, steps)
    try:
        borne = on_wall(design, moment, shape, direction, back, face)
    except NotConverged:
        raise large_deflection.unsettled(values, _MAY_ASK)
    springiness = max(max(moment), -min(moment)) / spring.neutral_radius(
        design.duty.bore, design.section.thickness
    )
    return OrderedDict(
        (
            ("figures", _figures(design, borne, shape, back, face)),
            ("findings", _findings(design, borne, shape, springiness)),
            ("turns", _turns(design, borne, per_turn)),
            ("point_forces", _points(borne)),
            ("chosen", chosen),
            ("cautions", cautions("figures", "pressure-system")),
        )
    )


def _check_one_source(values):
    for name in ("wall_pressure", "free_gap", "former_ratio", "setting", "finishing"):
        if values.get(name) is not None:
            raise unworkable(
                name,
                "%s cannot be given together with measured radii, which settle the same thing"
                % name,
                "keep free_shape and leave %s out, or the other way round" % name,
                "one-of",
            )


def _figures(design, borne, shape, back, face):
    values = {
        "mean_wall_pressure": borne.mean_pressure,
        "contact_pressure": borne.contact_pressure,
        "largest_pressure": borne.largest_pressure,
        "wall_force": borne.total,
        "tip_force": max(borne.tip_forces),
        "widest_light": borne.widest_light,
        "light_angle": math.degrees(borne.light_place) % 360.0 if borne.widest_light else 0.0,
        "slack_angle": math.degrees(max(borne.slack)),
        "contact_share": borne.contact_share,
        "sealed_share": borne.sealed_share,
        "peak_stress": borne.tension,
        "peak_compression": borne.compression,
        "bore_misfit": shape.misfit,
    }
    given = {
        "d1": design.duty.bore,
        "a1": design.section.thickness,
        "E": design.duty.modulus,
        "q": back - face,
        "h": design.turn_width,
    }
    if shape.harmonics:
        worst = 0.0
        for n, amplitude, _ in shape.harmonics:
            worst += bore_shape.pressure_to_follow(
                n, amplitude, design.duty.bore, design.section.thickness, design.duty.modulus
            )
            given["U_%d" % n] = amplitude
        values["pressure_to_follow"] = worst
    return figures_of(WALL_PRESSURE, values, given, ON_WALL)


def _turns(design, borne, per_turn):
    turns = []
    angles = [360.0 * i / per_turn for i in range(per_turn + 1)]
    for turn in range(design.duty.turns):
        a, b = turn * per_turn, (turn + 1) * per_turn + 1
        turns.append(
            OrderedDict(
                (
                    ("turn", turn + 1),
                    ("angle", Series(angles, "deg", "psi")),
                    ("pressure", Series(borne.pressure[a:b], "MPa", "p")),
                    ("light", Series(borne.light[a:b], "mm", "w")),
                    ("moment", Series(borne.moment[a:b], "N mm", "M")),
                )
            )
        )
    return turns


def _points(borne):
    whole = 2.0 * math.pi
    rows = []
    for place, force in borne.points:
        turn = int(place / whole * (1.0 - 1e-12))
        rows.append(
            OrderedDict(
                (
                    ("turn", turn + 1),
                    ("angle", Quantity(math.degrees(place - turn * whole), "deg")),
                    ("force", Quantity(force, "N")),
                )
            )
        )
    return rows


def _findings(design, borne, shape, springiness):
    rows = []
    if borne.total <= 1e-6 * borne.step:
        rows.append(
            finding(
                "no-contact",
                STOP,
                "The free ring is no larger than the bore here: it lies loose and does not press "
                "at all.",
                "Set it on a larger former, make it to the measured size of the bore, or bore "
                "the cylinder true.",
            )
        )
        return rows
    _sealed(rows, design, borne, shape)
    _light(rows, borne, shape)
    _stress(rows, design, borne)
    remedy = "Take the pressures as a guide, or make the ring thicker so that it springs less."
    return rows + large_deflection.findings(springiness, remedy)


def _sealed(rows, design, borne, shape):
    share = borne.sealed_share
    value, limit = Quantity(share, "1"), Quantity(SEALED_WATCH, "1")
    if share >= SEALED_WATCH:
        if borne.contact_share < SEALED_WATCH:
            why = "Where one turn is slack the other presses: the ring seals all the way round."
        else:
            why = "The ring presses on the wall all the way round."
        rows.append(finding("seals", GOOD, why, "", value, limit))
        return
    if design.duty.turns == 1 and not design.duty.bearing.uniform:
        remedy = (
            "Set a plain ring with a spacer in its gap, or make a double-turn ring; steam behind "
            "the ring closes part of it."
        )
    elif shape.harmonics:
        remedy = "Hone or bore the cylinder round, or ask for more wall pressure."
    else:
        remedy = "Ask for more wall pressure, or make the ring thinner so that it follows the bore."
    rows.append(
        finding(
            "seals",
            STOP if share < SEALED_STOP else WATCH,
            "The ring presses on only %s of the way round; the longest slack length behind a "
            "free end is %s." % (percent(share), angle(math.degrees(max(borne.slack)))),
            remedy,
            value,
            limit,
        )
    )


def _light(rows, borne, shape):
    widest = borne.widest_light
    said = fine_length(widest)
    judged = judge_light(widest)
    value, limit = Quantity(widest, "mm"), Quantity(judged.limit, "mm")
    if judged.outcome == GOOD:
        why = "Light-tight." if widest < LIGHT_TIGHT else "Light of %s will bed in." % said
        rows.append(finding("light", GOOD, why, "", value, limit))
        return
    why = (
        "Light of %s stands %s from the gap; a light of 0.1 mm is about what bedding-in removes."
        % (
            said,
            angle(math.degrees(borne.light_place) % 360.0),
        )
    )
    if shape.harmonics:
        remedy = "Hone or bore the cylinder round, or make the ring thinner and springier."
    else:
        remedy = (
            "Finish-turn the ring held closed in a round closing ring, which makes it light-tight."
        )
    rows.append(finding("light", judged.outcome, why, remedy, value, limit))


def _stress(rows, design, borne):
    strength = design.duty.ring_material.bending_strength
    peak = borne.tension
    share = peak / strength
    watch, stop = section.PERMANENT_WATCH, section.PERMANENT_STOP
    outcome = GOOD if share <= watch else WATCH if share <= stop else STOP
    limit = stop if outcome == STOP else watch
    rows.append(
        finding(
            "closed-stress",
            outcome,
            "Closed in this bore the ring carries %s, %s of its bending strength, at a wall "
            "pressure of %s." % (stress(peak), percent(share), wall_pressure(borne.mean_pressure)),
            ""
            if outcome == GOOD
            else "Make the ring thicker at the same wall pressure, or ask for less pressure.",
            Quantity(peak, "MPa"),
            Quantity(limit * strength, "MPa"),
        )
    )
