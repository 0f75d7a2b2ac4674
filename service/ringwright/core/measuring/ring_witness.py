"""What the measures of a finished ring say of its pressure, and what its heat gave.

Three independent witnesses: the free gap (needs the modulus), the closing force (does not), the
light of a ring left as it was set. From the gap and the tool used follows the relief.
"""

import math
from collections import namedtuple

from ..catalogue.inputs import Chooser
from ..catalogue.inputs_measuring import (
    ACROSS_TO_CLOSE,
    BAND,
    INNER_EDGE,
    MEASURED,
    NEUTRAL_LINE,
)
from ..problems import Fault, InputProblem
from ..ring import blank, heat_set, spring
from ..ring.allowances import CUT_ANGLES
from ..ring.design import settle
from ..ring.sizing import behaviour

# How far off each reading may be (95 %): gap and light by rule and feeler [mm], thickness by
# micrometer [mm], the scale with the friction of the loading [share]. Common practice, no source.
GAP_READING = 0.1
LIGHT_READING = 0.01
THICKNESS_READING = 0.01
FORCE_READING = 0.10

_TARGETS = ("wall_pressure", "free_gap", "former_ratio", "shelf_former")

# A size of the ring -> what it is called once it is measured.
_MEASURED_AS = {
    "radial_thickness": "measured_thickness",
    "ring_width": "measured_width",
    "closed_gap": "measured_closed_gap",
}

# What one witness says of the mean wall pressure [MPa], with its 95 % spread.
Estimate = namedtuple("Estimate", ("name", "pressure", "low", "high", "method"))

# estimates: list of Estimate; pressure, low, high: of them all [MPa], None without any.
# gap_change: m of the ring as made [mm], None. relief: given by the heat [1], None. modulus: that
# gap and force agree upon [MPa], None. ovality: across less along, and what is due [mm], None.
# next_*: for the next ring.
Inspected = namedtuple(
    "Inspected",
    (
        "intended", "made", "estimates", "pressure", "low", "high", "agree", "gap_change",
        "relief", "modulus", "ovality", "ovality_due", "next_design", "modulus_spread",
    ),
)  # fmt: skip


def _as_made(values, intended):
    """Dict: the inputs of the ring as it was measured, as designed where it was not."""
    made_values = dict(values)
    for name in _TARGETS:
        made_values[name] = None
    made_values["groove_width"] = None
    for name, designed in (
        ("radial_thickness", intended.section.thickness),
        ("ring_width", intended.section.width),
        ("closed_gap", intended.duty.closed_gap),
    ):
        taken = values.get(_MEASURED_AS[name])
        if taken is not None and name == "closed_gap":
            taken = gap_by_feeler(intended, taken)
        made_values[name] = designed if taken is None else taken
    made_values["clamped_gap"] = intended.allowances.clamped_gap
    made_values["end_kerf"] = intended.allowances.kerf
    made_values["wall_pressure"] = intended.spring.wall_pressure
    return made_values


def _settled(made_values):
    """The Design of the ring as made. Raises InputProblem that names what was measured."""
    try:
        return settle(made_values)[0]
    except InputProblem as problem:
        for fault in problem.faults:
            # As designed it was settled before: what is at fault now was measured.
            fault.path = (_MEASURED_AS.get(fault.path[0], fault.path[0]),)
        raise


def inspect(values, intended):
    """The Inspected of a ring.

    values: checked values of FIELDS. intended: design.Design of the ring as designed.
    Raises InputProblem where a measure cannot be true.
    """
    made_values = _as_made(values, intended)
    nominal = _settled(made_values)
    spread = _modulus_spread(values, nominal)

    estimates = []
    made = nominal
    gap = _gap_change(values, nominal)
    if gap is not None and gap > 0.0:
        made = _sprung_so_far(made_values, gap, nominal)
        estimates.append(_by_gap(made, gap, spread))
    elif gap is not None:
        estimates.append(
            Estimate(name="free-gap", pressure=0.0, low=0.0, high=0.0, method="pressure-by-gap")
        )
    force = values.get("measured_force")
    if force is not None:
        estimates.append(_by_force(nominal, force, Chooser(values, MEASURED)("force_applied")))
    light = values.get("measured_light")
    if light is not None and light > 0.0 and nominal.duty.bearing.light:
        estimates.append(_by_light(nominal, light, spread))
    pressure, low, high, agree = _together(estimates)
    modulus = None
    if force is not None and gap is not None and gap > 0.0:
        modulus = nominal.duty.modulus * estimates[1].pressure / estimates[0].pressure

    ovality = due = None
    if values.get("measured_across") is not None and values.get("measured_along") is not None:
        ovality = values["measured_across"] - values["measured_along"]
        due = 0.0
        if nominal.duty.setting == heat_set.SPREAD:
            due = spring.free_ovality(
                made.spring.gap_change, made.duty.bore, made.section.thickness
            )
    relief = None
    sprung = gap
    if sprung is None and pressure is not None:
        sprung = nominal.spring.gap_change * pressure / nominal.spring.wall_pressure
    if sprung is not None:
        relief = _relief(values, intended, nominal, sprung)
    return Inspected(
        intended=intended,
        made=made,
        estimates=estimates,
        pressure=pressure,
        low=low,
        high=high,
        agree=agree,
        gap_change=gap,
        relief=relief,
        modulus=modulus,
        ovality=ovality,
        ovality_due=due,
        next_design=_next(values, intended, relief),
        modulus_spread=spread,
    )


def gap_by_feeler(design, reading):
    """Closed gap along the circumference of a feeler's reading square to the cut [mm].

    design: a Design, for the angle of its ends. reading [mm].
    """
    return blank.gap_of_reading(reading=reading, angle=CUT_ANGLES[design.duty.end_cut])


def _gap_change(values, nominal):
    """m along the neutral line, from the gap measured on the bench; None where it was not."""
    measured = values.get("measured_free_gap")
    if measured is None:
        return None
    change = measured - nominal.duty.closed_gap
    place = Chooser(values, MEASURED)("gap_measured_at")
    if place == NEUTRAL_LINE:
        return change
    excess = edge_excess(nominal)
    return change / (1.0 - excess if place == INNER_EDGE else 1.0 + excess)


def edge_excess(design):
    """How much larger the free gap reads on the outer edge than on the neutral line, as a share.

    a1/2 times the turning of the ends over m: a1/(3 r) for a ring spread, a1/(2 r) for one bound
    round, times 0.900/1.034 (one turn) or 0.950/1.017 (double-turn) for one sprung. design:
    design.Design.
    """
    if design.duty.setting == heat_set.SPREAD:
        return spring.outer_edge_gap_factor(design.duty.bore, design.section.thickness) - 1.0
    tilt = design.section.thickness / (design.duty.bore - design.section.thickness)
    if design.duty.setting == heat_set.BOUND:
        return tilt
    return (
        tilt
        * heat_set.mean_share(design.duty.turns)
        / heat_set.sprung_gap_factor(design.duty.turns)
    )


def _sprung_so_far(made_values, gap, nominal):
    """The Design of the ring as made, sprung by its measured gap."""
    asked = dict(made_values)
    asked["wall_pressure"] = None
    asked["free_gap"] = gap + nominal.duty.closed_gap
    try:
        return settle(asked)[0]
    except InputProblem as problem:
        raise InputProblem(
            [
                Fault(("measured_free_gap",), f.code, f.message, "measure the gap again")
                if f.path in (("free_gap",), ("end_kerf",))
                else f
                for f in problem.faults
            ]
        )


def _modulus_spread(values, design):
    """(low, high) of the modulus over the one reckoned with."""
    if values.get("modulus") is not None:
        return (0.97, 1.03)
    metal = design.duty.ring_material
    return (metal.modulus_low / design.duty.modulus, metal.modulus_high / design.duty.modulus)


def _by_gap(made, gap, spread):
    thickness = 3.0 * THICKNESS_READING / made.section.thickness
    reading = GAP_READING / gap
    other = math.sqrt(reading * reading + thickness * thickness)
    low = math.sqrt((1.0 - spread[0]) * (1.0 - spread[0]) + other * other)
    high = math.sqrt((spread[1] - 1.0) * (spread[1] - 1.0) + other * other)
    p = made.spring.wall_pressure
    return Estimate(
        name="free-gap",
        pressure=p,
        low=p * max(1.0 - low, 0.0),
        high=p * (1.0 + high),
        method="pressure-by-gap",
    )


def _by_force(nominal, force, applied):
    acts = behaviour(nominal)
    due = {BAND: acts.tangential, ACROSS_TO_CLOSE: acts.to_close_gap}.get(
        applied, acts.to_bore_size
    )
    if due is None:
        raise InputProblem(
            [
                Fault(
                    ("force_applied",),
                    "conflict",
                    "a double-turn ring has no one diameter to bring to the bore",
                    "use across-to-close or band",
                )
            ]
        )
    p = nominal.spring.wall_pressure * force / due
    off = p * FORCE_READING
    return Estimate(
        name="closing-force", pressure=p, low=p - off, high=p + off, method="pressure-by-force"
    )


def _by_light(nominal, light, spread):
    r = spring.neutral_radius(nominal.duty.bore, nominal.section.thickness)
    change = light / (heat_set.LIGHT_FACTOR * r * r)
    p = heat_set.mean_pressure(
        change,
        nominal.duty.bore,
        nominal.section.thickness,
        nominal.duty.modulus,
        nominal.duty.turns,
    )
    reading = min(LIGHT_READING / light, 1.0)
    return Estimate(
        name="light",
        pressure=p,
        low=p * max(spread[0] - reading, 0.0),
        high=p * (spread[1] + reading),
        method="pressure-by-light",
    )


def _together(estimates):
    """(pressure, low, high, agree): mean weighted by the spreads; whether the spreads meet."""
    if not estimates:
        return None, None, None, True
    weight = total = 0.0
    low, high = 0.0, 1e30
    for e in estimates:
        half = max(0.5 * (e.high - e.low), 1e-4 * e.pressure, 1e-9)
        weight += 1.0 / (half * half)
        total += e.pressure / (half * half)
        low, high = max(low, e.low), min(high, e.high)
    mean = total / weight
    half = 1.0 / math.sqrt(weight)
    if len(estimates) == 1:
        return mean, estimates[0].low, estimates[0].high, True
    return mean, max(mean - half, 0.0), mean + half, low <= high


def _relief(values, intended, nominal, gap):
    """The share of moment that the heat relaxed, from the gap and the former or spacer used."""
    d = intended
    if d.duty.setting == heat_set.SPREAD:
        spacer = values.get("spacer_used") or d.spring.spacer_width
        if spacer <= d.allowances.gap_kerf:
            return None
        return (gap - (d.allowances.gap_kerf - nominal.duty.closed_gap)) / (
            spacer - d.allowances.gap_kerf
        )
    former = values.get("former_used") or d.spring.former_diameter
    former_radius = 0.5 * former * d.former_growth + 0.5 * d.blank.set_thickness
    if former_radius <= d.blank.bored_radius:
        return None
    change = heat_set.curvature_of_gap(
        gap, nominal.duty.bore, nominal.section.thickness, d.duty.setting, d.duty.turns
    )
    r = spring.neutral_radius(nominal.duty.bore, nominal.section.thickness)
    inwards = 0.5 * (d.blank.set_thickness - nominal.section.thickness) - d.allowances.inside
    free = 1.0 / (1.0 / r - change) + inwards
    return heat_set.relief_given(d.blank.bored_radius, former_radius, free)


def _next(values, intended, relief):
    """The Design of the next ring: the same pressure, the relief that this heat gives."""
    if relief is None or not 0.1 <= relief <= 1.0:
        return None
    asked = dict(values)
    for name in _TARGETS:
        asked[name] = None
    asked["wall_pressure"] = intended.spring.wall_pressure
    asked["radial_thickness"] = intended.section.thickness
    asked["relief"] = relief
    try:
        return settle(asked)[0]
    except InputProblem:
        # So little relief that no former serves: the findings say to soak hotter.
        return None
