"""Calculation "bore-survey": what the gauge says of a bore, and what to do about it."""

import math
from collections import OrderedDict

from ..catalogue import figures_of
from ..catalogue.inputs import Chooser, listed
from ..catalogue.inputs_measuring import READING_ENTRY, SURVEY
from ..catalogue.inputs_ring import RING, SURVEYED
from ..catalogue.measuring import BORE_SURVEY
from ..cautions import cautions
from ..fields import with_usual
from ..problems import Fault, InputProblem
from ..records import Quantity
from ..ring.design import settle
from ..wall import bore_shape
from ..wall.wall_pressure import on_wall, spring_moment
from . import bore_fit, survey_findings, survey_places

_FROM_RING = (
    "ring_type", "radial_thickness", "ring_width", "groove_width", "groove_depth",
    "piston_diameter", "ring_material", "modulus", "cylinder_material", "piston_material",
    "steam_pressure", "steam_temperature", "shop_temperature", "setting", "finishing", "relief",
    "wall_pressure", "expander_pressure", "free_gap", "former_ratio", "closed_gap",
    "inch_sizes",
)  # fmt: skip
# Steps of the strip when the ring is tried in the bore; light to a micrometre, in a fraction of
# the time.
SAW_OF_TRIAL = 0.1
TRIAL_STEPS = 184
# Directions of the gap tried, since a ring may creep round: half of them, the rest being alike.
TRIALS = 4
# Readings that depart further from their mean are slips of a decimal or a unit.
WILD = 0.1

FIELDS = tuple(SURVEY.values()) + listed((RING,), *_FROM_RING)
_BY_NAME = dict([(entry.name, entry) for entry in FIELDS])


def calculate(values):
    """What a survey of the bore means: figures, findings, chosen, cautions, "sections" and
    "bore_shape".

    values: checked values of FIELDS, a plain dict in core units. "verdict" is run, hone, bore-out
    or sleeve. "bore_shape" is the shape at the worst height, fit to be given to wall-pressure.
    Raises InputProblem.
    """
    readings = [
        bore_fit.Reading(
            height=entry["height"],
            direction=entry["direction"],
            diameter=entry["diameter"],
            gauge=entry["gauge"],
        )
        for entry in [with_usual(READING_ENTRY, given) for given in values["readings"]]
    ]
    _check_wild(readings)
    take = Chooser(values, SURVEY, RING)
    uncertainty = take("gauge_uncertainty")
    found = bore_fit.sections(readings)
    barrel = bore_fit.barrel(found)
    worst = _worst(found)
    means = [s.diameter for s in found]
    size = 0.5 * (max(means) + min(means))
    seen = survey_findings.Seen(
        sections=found,
        barrel=barrel,
        worst=worst,
        uncertainty=uncertainty,
        largest=max(_largest(found), max([r.diameter for r in readings])),
        smallest=min(_smallest(found), min([r.diameter for r in readings])),
        tight=min(means),
        slack=max(means),
        size=size,
    )
    ring_values = dict(values)
    ring_values["bore"] = size
    asked = values.get("closed_gap") is not None
    design, ring_chosen = _settled(ring_values)
    chosen = take.chosen
    chosen.extend([choice for choice in ring_chosen if choice.input in _FROM_RING])
    if not asked:
        design = _with_room(seen, ring_values, design)
    trial = _trial(design, worst, size)
    most, inch = values.get("largest_bore"), values.get("inch_sizes")
    verdict = survey_findings.verdict(seen, trial, most, inch)
    made = design
    if verdict.ring_diameter != size:
        # The bore will be true: its ring needs no room for taper.
        ring_values["bore"] = verdict.ring_diameter
        ring_values["closed_gap"] = values.get("closed_gap")
        made, _ = _settled(ring_values)
    if not asked:
        take.chosen = [choice for choice in chosen if choice.input != "closed_gap"]
        case = SURVEYED if made is design else made.duty.ring_type
        take.note("closed_gap", made.duty.closed_gap, take.why("closed_gap", case))
        chosen = take.chosen
    rows = survey_findings.findings(seen, design, trial, verdict, asked)
    running = verdict.word == survey_findings.RUN

    def again(changed):
        other = dict(changed)
        found, _ = _settled(other)
        same = changed["closed_gap"] == ring_values["closed_gap"]
        return found if asked or not running or not same else _with_room(seen, other, found)

    rows += survey_places.stopped(seen, made, ring_values, _BY_NAME, running, asked, again)
    return OrderedDict(
        (
            ("verdict", verdict.word),
            ("figures", _figures(seen, made, trial, verdict)),
            ("findings", rows),
            ("sections", _section_rows(found)),
            ("bore_shape", _shape_rows(worst)),
            ("chosen", chosen),
            ("cautions", cautions("figures", "pressure-system", "isolate")),
        )
    )


def _with_room(seen, values, design):
    """The Design with the gap that the bore asks for, which is put into its values."""
    values["closed_gap"] = survey_findings.gap_for(seen, design)
    return _settled(values)[0]


def _settled(values):
    """As `settle`; where the usual saw takes too much, sawn with a fine one, for it is a trial."""
    try:
        return settle(values)
    except InputProblem:
        values["end_kerf"] = SAW_OF_TRIAL
        values["clamped_gap"] = 0.0
        return settle(values)


def _check_wild(readings):
    mean = 0.0
    for r in readings:
        mean += r.diameter
    mean = mean / len(readings)
    faults = []
    for i, r in enumerate(readings):
        if abs(r.diameter - mean) > WILD * mean:
            faults.append(
                Fault(
                    ("readings", i, "diameter"),
                    "range",
                    "this reading is more than a tenth away from the mean of them all",
                    "check the figure and its unit",
                )
            )
    if faults:
        raise InputProblem(faults)


def _worst(found):
    """The section that departs most from a circle."""
    worst = found[0]
    for section in found:
        if _lobes(section) > _lobes(worst):
            worst = section
    return worst


def _lobes(section):
    total = 0.0
    for harmonic in section.harmonics:
        total += harmonic.amplitude
    return total


def _largest(found):
    return max([s.diameter + 2.0 * _lobes(s) for s in found])


def _smallest(found):
    return min([s.diameter - 2.0 * _lobes(s) for s in found])


def _trial(design, section, size):
    """survey_findings.Trial of a Design in a section of the bore, its gap where it is worst."""
    steps = TRIAL_STEPS * design.duty.turns
    moment = spring_moment(design, steps)
    shape = bore_shape.Shape(0.5 * (section.diameter - size), section.harmonics, None)
    in_round = on_wall(design, moment, bore_shape.ROUND, 0.0, 0.0, 0.0)
    worst = None
    for i in range(TRIALS if section.harmonics else 1):
        direction = section.direction + 180.0 * i / TRIALS
        borne = on_wall(design, moment, shape, direction, 0.0, 0.0)
        if worst is None or borne.widest_light > worst.widest_light:
            worst = borne
            at = direction
    needed = 0.0
    for n, amplitude, _ in section.harmonics:
        needed += bore_shape.pressure_to_follow(
            n, amplitude, design.duty.bore, design.section.thickness, design.duty.modulus
        )
    return survey_findings.Trial(
        worst=worst, in_round=in_round, needed=needed, direction=at % 360.0
    )


def _figures(seen, design, trial, verdict):
    barrel, worst = seen.barrel, seen.worst
    error = seen.uncertainty
    mean = barrel.diameter
    misfit = 0.0
    for section in seen.sections:
        misfit = max(misfit, section.misfit)
    breathing = math.pi * (seen.slack - seen.tight)
    values = {
        "mean_diameter": _about(mean, error),
        "largest_diameter": _about(seen.largest, error),
        "smallest_diameter": _about(seen.smallest, error),
        "misfit": max(misfit, barrel.misfit),
        "ring_diameter": verdict.ring_diameter,
        "clean_up_diameter": verdict.clean_up,
        "closed_gap": design.duty.closed_gap,
        "gap_breathing": breathing,
        "wall_pressure": design.spring.wall_pressure,
        "pressure_to_follow": trial.needed,
        "sealed_share": trial.worst.sealed_share,
        "widest_light": trial.worst.widest_light,
        "gap_direction": trial.direction,
    }
    if barrel.taper is not None:
        values["taper"] = _about(barrel.taper, error * barrel.taper_factor)
    if barrel.bell_mouth is not None:
        values["bell_mouth"] = _about(barrel.bell_mouth, error * barrel.bell_factor)
    if worst.ovality is not None:
        values["ovality"] = _about(worst.ovality, error * worst.ovality_factor)
        values["oval_direction"] = worst.direction
    given = {
        "U": error,
        "D_0": mean,
        "D_max": seen.largest,
        "D_tight": seen.tight,
        "dD": breathing / math.pi,
        "d1": design.duty.bore,
        "a1": design.section.thickness,
        "E": design.duty.modulus,
    }
    methods = {
        "closed_gap": "gap-breathing",
        "wall_pressure": "wall-contact",
        "widest_light": "wall-contact",
    }
    return figures_of(BORE_SURVEY, values, given, methods)


def _about(value, spread):
    """(low, usual, high) of a value known within a spread either way."""
    return value - spread, value, value + spread


def _section_rows(found):
    rows = []
    for s in found:
        row = OrderedDict()
        row["height"] = Quantity(s.height, "mm")
        row["readings"] = s.readings
        row["mean_diameter"] = Quantity(s.diameter, "mm")
        if s.ovality is not None:
            row["ovality"] = Quantity(s.ovality, "mm")
            row["oval_direction"] = Quantity(s.direction, "deg")
        row["misfit"] = Quantity(s.misfit, "mm")
        rows.append(row)
    return rows


def _shape_rows(section):
    return OrderedDict(
        (
            (
                "harmonics",
                [
                    OrderedDict(
                        (
                            ("order", n),
                            ("amplitude", Quantity(amplitude, "mm")),
                            ("phase", Quantity(phase, "deg")),
                        )
                    )
                    for n, amplitude, phase in section.harmonics
                ],
            ),
        )
    )
