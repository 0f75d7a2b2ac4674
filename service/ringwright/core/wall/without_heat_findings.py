"""What is to be said of a ring made without heat, as findings in words."""

import math

from ..catalogue.inputs_ring import BAND
from ..records import GOOD, STOP, WATCH, Quantity, finding
from ..ring import fit_findings, judging, ring_findings, section, spring, without_heat
from ..wording import angle, fine_length, length, percent, stress, wall_pressure
from . import wall_contact

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
    rows.append(_pressure(made))
    rows.append(_bears(made))
    rows.append(_light(made))
    if made.springiness > wall_contact.LARGEST_CHECKED:
        rows.append(
            finding(
                "large-deflection",
                WATCH,
                "The bore takes %s of the ring's curvature; beyond %s these sums of small movement "
                "drift from the truth by more than 1 %%."
                % (percent(made.springiness), percent(wall_contact.LARGEST_CHECKED)),
                "Make the ring thicker so that it springs less, or ask for less pressure.",
                Quantity(made.springiness, "1"),
                Quantity(wall_contact.LARGEST_CHECKED, "1"),
            )
        )
    ring_findings.section_findings(rows, d)
    fit_findings.end_gap(rows, d)
    return rows


def _cleans(made):
    d = made.design
    r = spring.neutral_radius(d.bore, d.radial_thickness)
    needed = without_heat.needed_outside(d.curvature_change, r, made.finishing)
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
    thick = made.design.radial_thickness
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
    strength = d.ring_material.bending_strength
    word = "break" if d.ring_material.family == "iron" else "take a set"
    once = (section.ONCE_WATCH, section.ONCE_STOP)
    years = (section.PERMANENT_WATCH, section.PERMANENT_STOP)
    opening = spring.opening_to_clear(
        d.radial_thickness, d.bore, d.gap_change, 0.5 * (d.bore - d.piston_diameter)
    )
    for check, value, limits, doing, remedy in (
        (
            "drawn-closed",
            without_heat.closing_stress(d, made.finishing, made.sizes.thickness),
            once,
            "drawn closed for its second turning",
            "Make the ring thinner, leave less to turn, or ask for less pressure.",
        ),
        (
            "closed-stress",
            made.borne.tension,
            years,
            "closed in the bore",
            "Make the ring thicker at the same wall pressure, or ask for less pressure.",
        ),
        (
            "sprung-on",
            spring.opening_stress(opening, d.gap_change, d.bore, d.radial_thickness, d.modulus),
            once,
            "pulled open by its ends to pass over the piston",
            "Make the ring thinner, slide it on over strips so that it opens evenly, or build up "
            "the piston.",
        ),
    ):
        share = value / strength
        outcome = GOOD if share <= limits[0] else WATCH if share <= limits[1] else STOP
        why = "%s, it sees %s, %s of its strength in bending" % (
            doing[:1].upper() + doing[1:],
            stress(value),
            percent(share),
        )
        if outcome != GOOD:
            why += "; it %s %s" % ("may" if outcome == WATCH else "will", word)
        rows.append(
            finding(
                check,
                outcome,
                why + ".",
                "" if outcome == GOOD else remedy,
                Quantity(value, "MPa"),
                Quantity(strength * limits[1 if outcome == STOP else 0], "MPa"),
            )
        )


def _pressure(made):
    pressure = made.borne.mean_pressure
    said = wall_pressure(pressure)
    value = Quantity(pressure, "MPa")
    if pressure > judging.STIFF_WATCH:
        stop = pressure > judging.STIFF_STOP
        limit = judging.STIFF_STOP if stop else judging.STIFF_WATCH
        return finding(
            "too-stiff",
            STOP if stop else WATCH,
            "The ring presses with %s; above %s it wears the bore and takes power."
            % (said, wall_pressure(limit)),
            "Ask for less wall pressure, or make the ring thinner.",
            value,
            Quantity(limit, "MPa"),
        )
    if pressure < judging.SLACK_WATCH:
        stop = pressure < judging.SLACK_STOP
        limit = judging.SLACK_STOP if stop else judging.SLACK_WATCH
        return finding(
            "too-slack",
            STOP if stop else WATCH,
            "The ring presses with only %s; below %s it lifts off the wall and leaks."
            % (said, wall_pressure(limit)),
            "Ask for more wall pressure or a larger free gap, or make the ring thicker.",
            value,
            Quantity(limit, "MPa"),
        )
    return finding(
        "wall-pressure",
        GOOD,
        "The ring presses with %s, within what practice uses." % said,
        "",
        value,
        Quantity(judging.STIFF_WATCH, "MPa"),
    )


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
    watch, stop = judging.LIGHT_WATCH, judging.LIGHT_STOP
    outcome = GOOD if light <= watch else WATCH if light <= stop else STOP
    if outcome == GOOD:
        why = "Light of no more than %s will bed in." % fine_length(watch)
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
        Quantity(watch if outcome != STOP else stop, "mm"),
    )
