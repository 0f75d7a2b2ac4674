"""What is to be said of a ring made without heat, as findings in words."""

import math

from ..catalogue.inputs_ring import BAND
from ..records import GOOD, STOP, WATCH, Quantity, finding
from ..ring import fit_findings, judging, section, spring, without_heat
from ..ring.ring_findings import in_bending, pressure, section_findings
from ..wording import angle, fine_length, length, percent
from . import large_deflection

# Shares by which the thickness may vary round a ring, over a1: beyond the first its spring is felt
# to be uneven, beyond the second it no longer bears as it was held. Common practice, no source.
UNEVEN_WATCH = 0.1
UNEVEN_STOP = 0.2
# Share of the way round that must bear.
BEARS_WATCH = 0.995


def findings(made):
    """List of Finding for a ring_without_heat.Made, in the order of the work."""
    d = made.design
    rows = [_cleans(made), _even(made)]
    _stresses(rows, made)
    # Its pressure is not even: what is judged is the mean.
    rows += pressure(d, made.borne.mean_pressure)
    rows.append(_bears(made))
    rows.append(_light(made))
    remedy = "Make the ring thicker so that it springs less, or ask for less pressure."
    rows += large_deflection.findings(made.springiness, remedy)
    section_findings(rows, d)
    fit_findings.end_gap(rows, d)
    return rows


def _cleans(made):
    d = made.design
    r = spring.neutral_radius(d.duty.bore, d.section.thickness)
    needed = without_heat.needed_outside(d.spring.curvature_change, r, made.finishing)
    good = made.allowance >= needed - 1e-9
    return finding(
        "cleans-up",
        GOOD if good else STOP,
        "%s are left on the diameter for the second turning; held so, the ring needs %s."
        % (length(made.allowance), length(needed)),
        "" if good else "Leave at least %s." % length(math.ceil(100.0 * needed) / 100.0),
        Quantity(made.allowance, "mm"),
        Quantity(needed, "mm"),
    )


def _even(made):
    thick = made.design.section.thickness
    varies = max(made.thicknesses) - min(made.thicknesses)
    share = varies / thick
    outcome = GOOD if share <= UNEVEN_WATCH else WATCH if share <= UNEVEN_STOP else STOP
    limit = UNEVEN_STOP if outcome == STOP else UNEVEN_WATCH
    return finding(
        "even-thickness",
        outcome,
        "Round the ring the thickness varies by %s, %s of it."
        % (fine_length(varies), percent(share)),
        "" if outcome == GOOD else "Turn the inside again too while it is held closed.",
        Quantity(varies, "mm"),
        Quantity(limit * thick, "mm"),
    )


def _stresses(rows, made):
    d = made.design
    strength = d.duty.ring_material.bending_strength
    word = "break" if d.duty.ring_material.family == "iron" else "take a set"
    opening = spring.opening_to_clear(
        d.section.thickness,
        d.duty.bore,
        d.spring.gap_change,
        0.5 * (d.duty.bore - d.piston_diameter),
    )
    in_bending(
        rows, "drawn-closed",
        without_heat.closing_stress(d, made.finishing, made.sizes.thickness), strength,
        section.ONCE_WATCH, section.ONCE_STOP,
        "drawn closed for its second turning", word,
        "Make the ring thinner, leave less to turn, or ask for less pressure.",
    )  # fmt: skip
    in_bending(
        rows, "closed-stress", made.borne.tension, strength, section.PERMANENT_WATCH,
        section.PERMANENT_STOP, "closed in the bore", word,
        "Make the ring thicker at the same wall pressure, or ask for less pressure.",
    )  # fmt: skip
    in_bending(
        rows, "sprung-on",
        spring.opening_stress(
            opening, d.spring.gap_change, d.duty.bore, d.section.thickness, d.duty.modulus
        ),
        strength, section.ONCE_WATCH, section.ONCE_STOP,
        "pulled open by its ends to pass over the piston", word,
        "Make the ring thinner, slide it on over strips so that it opens evenly, or build up "
        "the piston.",
    )  # fmt: skip


def _bears(made):
    share = made.borne.contact_share
    value, limit = Quantity(share, "1"), Quantity(BEARS_WATCH, "1")
    if share >= BEARS_WATCH:
        return finding("seals", GOOD, "The ring presses on the wall all round.", "", value, limit)
    return finding(
        "seals",
        WATCH,
        "The ring presses on %s of the way round; %s behind each tip bear nothing."
        % (percent(share), angle(math.degrees(max(made.borne.slack)))),
        "Turn the inside again too."
        if made.finishing == BAND
        else "Hold it by a flexible band and turn it outside and inside; or make a double-turn "
        "ring. Steam behind the ring closes part of it.",
        value,
        limit,
    )


def _light(made):
    light = made.borne.widest_light
    outcome = judging.judge_light(light).outcome
    if outcome == GOOD:
        why = "Light of no more than %s will bed in." % fine_length(judging.LIGHT_WATCH)
    else:
        why = "Light of %s shows at %s from the gap." % (
            fine_length(light),
            angle(math.degrees(made.borne.light_place) % 360.0),
        )
    return finding(
        "light",
        outcome,
        why,
        ""
        if outcome == GOOD
        else "Hold it in a closing ring or by a band, and turn the inside again too.",
        Quantity(light, "mm"),
        Quantity(judging.LIGHT_STOP if outcome == STOP else judging.LIGHT_WATCH, "mm"),
    )
