"""Calculation "inspection": what a finished ring really is, and what to do about it."""

from collections import OrderedDict

from ..catalogue import figures_of
from ..catalogue.inputs import Chooser
from ..catalogue.inputs_blank import BLANK
from ..catalogue.inputs_measuring import MEASURED
from ..catalogue.inputs_ring import AS_CUT, RING
from ..catalogue.inputs_rings import RINGS
from ..catalogue.measuring import INSPECTION
from ..cautions import DUST_OF, cautions
from ..problems import Fault, InputProblem
from ..records import Choice, Method
from ..ring.design import settle
from ..ring.soak import can_be_set
from ..walk import rings
from . import inspection_findings
from .ring_witness import inspect

FIELDS = (
    tuple(RING.values())
    + tuple(BLANK.values())
    + tuple(AS_CUT.values())
    + tuple(MEASURED.values())
    + tuple(RINGS.values())
)
# What says something of the ring: one of them is needed.
EVIDENCE = (
    "measured_free_gap",
    "measured_thickness",
    "measured_width",
    "measured_closed_gap",
    "measured_force",
    "measured_light",
    "measured_across",
)


def calculate(values):
    """What a finished ring really is: figures, findings, chosen, cautions and "verdict".

    values: checked values of FIELDS, a plain dict in core units. "verdict" is accept, rework or
    scrap. Raises InputProblem where nothing was measured or a measure cannot be true.
    """
    if all([values.get(name) is None for name in EVIDENCE]):
        raise InputProblem(
            [
                Fault(
                    ("measured_free_gap",),
                    "required",
                    "nothing was measured yet",
                    "give at least one of " + ", ".join(EVIDENCE),
                )
            ]
        )
    intended, chosen = settle(values)
    take = Chooser(values, MEASURED)
    if values.get("measured_free_gap") is not None:
        take("gap_measured_at")
    if values.get("measured_force") is not None:
        take("force_applied")
    chosen.extend(take.chosen)
    found = inspect(values, intended)
    rows = inspection_findings.findings(values, found)
    made, of_rings = rings.answer(intended, values)
    answer = OrderedDict()
    answer["verdict"] = inspection_findings.verdict(rows)
    answer["figures"] = _figures(found)
    answer["next_ring"] = _next_ring(found)
    if made:
        answer["rings"] = made
    answer["findings"] = rows + of_rings
    answer["chosen"] = chosen
    family = intended.duty.ring_material.family
    keys = ["figures", "stored-spring"] + (["hot-work"] if can_be_set(family) else [])
    answer["cautions"] = cautions(*keys + [DUST_OF[family]])
    return answer


def _next_ring(found):
    """Inputs that make the next ring's card what this ring has shown: a list of Choice."""
    listing = []
    if found.next_design is not None:
        listing.append(
            Choice(input="relief", value=found.relief, unit="1", why="what this ring's heat gave")
        )
    if inspection_findings.modulus_offered(found):
        why = "what this ring's gap and force agree upon"
        listing.append(Choice(input="modulus", value=found.modulus, unit="MPa", why=why))
    return listing


def _figures(found):
    d, made, after = found.intended, found.made, found.next_design
    values = {
        "wall_pressure_intended": d.spring.wall_pressure,
        "gap_change": found.gap_change,
        "modulus_shown": found.modulus,
        "relief_given": found.relief,
    }
    if found.pressure is not None:
        values["wall_pressure"] = _within(found.low, found.pressure, found.high)
    for e in found.estimates:
        name = "wall_pressure_by_" + e.name.replace("-", "_")
        values[name] = _within(e.low, e.pressure, e.high)
    if found.gap_change is not None:
        values["free_gap_intended"] = d.spring.gap_change + d.duty.closed_gap
    if found.ovality is not None:
        values["free_ovality"] = found.ovality
        values["free_ovality_due"] = found.ovality_due
    if after is not None:
        values["next_former_diameter"] = after.spring.former_diameter
        if after.spring.former_diameter is None:
            values["next_spacer_width"] = after.spring.spacer_width
    given = {
        "d1": made.duty.bore,
        "a1": made.section.thickness,
        "E": made.duty.modulus,
        "eta": found.relief,
        "p_wanted": d.spring.wall_pressure,
    }
    return figures_of(INSPECTION, values, given, {"wall_pressure": "pressure-together"})


def _within(low, usual, high):
    """What `figures_of` takes: three numbers where both bounds are known, else the one."""
    return usual if low is None else (low, usual, high)


METHODS = (
    Method(
        "pressure-by-gap",
        "Wall pressure from the free gap",
        "m = (gap - s1)/(1 +/- e), then p_gap as the ring was set; spread from the modulus, the "
        "gap within 0.1 mm, the thickness within 0.01 mm",
        "the modulus as published, or as given within 3 %",
        ("beam", "contact", "practice"),
    ),
    Method(
        "pressure-by-force",
        "Wall pressure from the closing force",
        "p_force = p_wanted F/F wanted; the modulus does not enter",
        "force within 10 %: scale and friction",
        ("beam", "contact", "practice"),
    ),
    Method(
        "pressure-by-light",
        "Wall pressure from the light",
        "kappa0 = light/(0.1047 r^2), p = 0.900 or 0.950 p0",
        "rings bound to a round former and forced round for turning; new, in a round bore",
        ("contact", "practice"),
    ),
    Method(
        "pressure-together",
        "Wall pressure from all that was measured",
        "mean weighted by the inverse squares of the spreads",
        "witnesses that agree",
        ("definition",),
    ),
    Method(
        "gap-on-neutral-line",
        "Free gap along the neutral line",
        "m = (gap - s1)/(1 +/- e), e = a1/(3 r) spread, a1/(2 r) bound, 0.870 or 0.934 of that "
        "sprung",
        "ends square to the ring",
        ("beam",),
    ),
    Method(
        "modulus-shown",
        "Modulus that gap and force agree upon",
        "E shown = E p_force/p_gap",
        "both measured well",
        ("definition",),
    ),
    Method(
        "relief-given",
        "Relief that the heat gave",
        "eta = (1/r_b - 1/R)/(1/r_b - 1/r_m); with a spacer (m - (s - s1))/(spacer - s)",
        "of the moment, evenly heated",
        ("beam",),
    ),
    Method(
        "free-ovality",
        "Wider across than along the gap",
        "spread m/6 (1 + 0.66 m/r); set round none",
        "free ring on a flat plate",
        ("beam",),
    ),
    Method(
        "next-former",
        "Former or spacer for the next ring",
        "as former-size and spacer-size with the relief given",
        "the same metal, heat and time",
        ("beam", "practice"),
    ),
)
