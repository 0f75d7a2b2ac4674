"""Calculation "inspection": what a finished ring really is, and what to do about it."""

from collections import OrderedDict

from ..cautions import cautions
from ..problems import Fault, InputProblem
from ..records import Choice, Method, figure
from ..ring.design import settle
from . import inspection_findings
from .inspection_fields import ACROSS_TO_CLOSE, EVIDENCE, OUTER_EDGE
from .ring_witness import inspect


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
    for name, default in (
        ("gap_measured_at", OUTER_EDGE if values.get("measured_free_gap") is not None else None),
        ("force_applied", ACROSS_TO_CLOSE if values.get("measured_force") is not None else None),
    ):
        if default is not None and values.get(name) is None:
            chosen.append(Choice(name, default, "", "the usual way"))
    found = inspect(values, intended)
    rows = inspection_findings.findings(values, found)
    return OrderedDict(
        (
            ("verdict", inspection_findings.verdict(rows)),
            ("figures", _figures(found)),
            ("findings", rows),
            ("chosen", chosen),
            ("cautions", cautions("figures", "stored-spring", "hot-work", "iron-dust")),
        )
    )


def _figures(found):
    d, made = found.intended, found.made
    out = OrderedDict()
    given = (
        ("d1", made.bore, "mm"),
        ("a1", made.radial_thickness, "mm"),
        ("E", made.modulus, "MPa"),
    )
    if found.pressure is not None:
        out["wall_pressure"] = figure(
            found.pressure, "MPa", "p", "pressure-together", given, found.low, found.high
        )
    for e in found.estimates:
        name = "wall_pressure_by_" + e.name.replace("-", "_")
        out[name] = figure(e.pressure, "MPa", "p", e.method, given, e.low, e.high)
    out["wall_pressure_intended"] = figure(d.wall_pressure, "MPa", "p", "pressure-together")
    if found.gap_change is not None:
        out["gap_change"] = figure(found.gap_change, "mm", "m", "gap-on-neutral-line", given)
        out["free_gap_intended"] = figure(
            d.gap_change + d.closed_gap, "mm", "m + s1", "gap-on-neutral-line", given
        )
    if found.modulus is not None:
        out["modulus_shown"] = figure(found.modulus, "MPa", "E", "modulus-shown", given)
    if found.relief is not None:
        out["relief_given"] = figure(found.relief, "1", "eta", "relief-given", given)
    if found.ovality is not None:
        out["free_ovality"] = figure(found.ovality, "mm", "", "free-ovality", given)
        out["free_ovality_due"] = figure(found.ovality_due, "mm", "", "free-ovality", given)
    after = found.next_design
    if after is not None:
        eta = (("eta", found.relief, "1"), ("p", d.wall_pressure, "MPa"))
        if after.former_diameter is not None:
            out["next_former_diameter"] = figure(
                after.former_diameter, "mm", "former", "next-former", eta
            )
        else:
            out["next_spacer_width"] = figure(
                after.spacer_width, "mm", "spacer", "next-former", eta
            )
    return out


METHODS = (
    Method(
        "pressure-by-gap",
        "Wall pressure from the free gap",
        "m = (gap - s1)/(1 +/- e), then as the ring was set; spread from the modulus, the gap "
        "within 0.1 mm, the thickness within 0.01 mm",
        "the modulus as published, or as given within 3 %",
        ("beam", "contact", "practice"),
    ),
    Method(
        "pressure-by-force",
        "Wall pressure from the closing force",
        "p = p design * F/F design; the modulus does not enter",
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
        "E = E design * p by force/p by gap",
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
