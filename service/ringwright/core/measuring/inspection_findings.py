"""Accept, rework or scrap a finished ring, and why."""

import math

from .. import clearances
from ..records import GOOD, STOP, WATCH, Choice, Quantity, finding
from ..ring import blank, heat_set, soak
from ..ring.allowances import CUT_ANGLES
from ..ring.judging import SLACK_SIDE, judge_gap, judge_light, judge_pressure, side_left
from ..ring.sizing import stops
from ..walk.finished import PRESSURE_SHARE, THICKNESS_STOP, finished_limits, groove_limits
from ..wording import decimal, fine_length, length, percent, temperature, wall_pressure
from .ring_witness import gap_by_feeler

ACCEPT = "accept"
REWORK = "rework"
SCRAP = "scrap"

# How far wider across than along a free ring may be from what is due, over m.
OVALITY_OFF = 0.08
# Relief worth having: below, the metal never got hot enough.
LEAST_RELIEF = 0.5
# A size at its very limit is within it [mm].
NOISE = 1e-9

# Checks of sizing: of the blank; of a measure that inspection judges itself; of a pressure that
# was found; of the ring as made.
_BLANK = ("sawn-open", "forming", "turning-through", "setting")
_JUDGED = (
    ("measured_closed_gap", ("end-gap", "gap-wide")),
    ("measured_width", ("side-clearance",)),
    ("measured_light", ("light",)),
)
_PRESSURE = ("too-slack", "too-stiff")
_MADE = ("closed-stress", "sprung-on", "wound-on", "light")

# Checks that no more work on the ring can mend.
_PAST_MENDING = ("thickness", "width-lost", "closed-gap-wide")


def verdict(rows):
    """accept, rework or scrap, from a list of Finding.

    rows: as findings gives. What stops the ring and cannot be mended scraps it.
    """
    word = ACCEPT
    for row in rows:
        if row.outcome == STOP:
            if row.check in _PAST_MENDING:
                return SCRAP
            word = REWORK
    return word


def findings(values, found):
    """List of Finding for a ring.

    values: checked inputs of inspection. found: inspection.Inspected.
    """
    rows = []
    _pressure(rows, found)
    _agreement(rows, found)
    _thickness(rows, values, found)
    _width(rows, values, found)
    _closed_gap(rows, values, found)
    _light(rows, values, found)
    _shape(rows, found)
    _relief(rows, found)
    return rows + _stopped(values, found)


def _stopped(values, found):
    """List of Finding: what sizing stops of the ring as made, or of its groove, piston and steam.

    What was measured is judged above; what the blank went through is past.
    """
    judged = list(_BLANK)
    for measured, checks in _JUDGED:
        if values.get(measured) is not None:
            judged.extend(checks)
    if found.pressure is not None:
        judged.extend(_PRESSURE)
    rows = []
    for row in stops(found.made):
        if row.check in _MADE and row.check not in judged:
            again = "Make it again, by what sizing says of this check."
            rows.append(finding(row.check, STOP, row.why, again, row.value, row.limit))
    for row in stops(found.intended):
        if row.check not in _MADE and row.check not in judged:
            mend = "Mend it before the ring runs; sizing says how."
            rows.append(finding(row.check, STOP, row.why, mend, row.value, row.limit))
    return rows


def _pressure(rows, found):
    if found.pressure is None:
        return
    wanted = found.intended.spring.wall_pressure
    low, high = (1.0 - PRESSURE_SHARE) * wanted, (1.0 + PRESSURE_SHARE) * wanted
    said = wall_pressure(found.pressure)
    value = Quantity(found.pressure, "MPa")
    added = found.intended.expander_pressure
    judged = judge_pressure(found.pressure + added)
    # What the expander leaves of it to the ring.
    bound = judged.limit - added
    if low <= found.pressure <= high and judged.outcome != STOP:
        why = "The ring presses with %s; %s was intended." % (said, wall_pressure(wanted))
        rows.append(finding("pressure", GOOD, why, "", value, Quantity(wanted, "MPa")))
        return
    useful = judged.outcome == GOOD
    if found.pressure < low or found.pressure < bound <= high:
        why = "The ring presses with only %s; %s was intended." % (said, wall_pressure(wanted))
        remedy = "Set it again on a larger former, or hotter."
        limit = max(low, bound) if judged.outcome == STOP else low
    else:
        why = "The ring presses with %s; %s was intended." % (said, wall_pressure(wanted))
        remedy = "Set it again on a smaller former, or take a little off its inside."
        limit = min(high, bound) if judged.outcome == STOP else high
    if found.intended.duty.setting == heat_set.SPREAD:
        remedy = remedy.replace("on a larger former", "with a wider spacer")
        remedy = remedy.replace("on a smaller former", "with a narrower spacer")
    if useful:
        remedy = "Within what practice uses, so it may run; or: " + remedy[0].lower() + remedy[1:]
    if added:
        why += " The expander behind it adds %s." % wall_pressure(added)
    outcome = WATCH if useful else STOP
    rows.append(finding("pressure", outcome, why, remedy, value, Quantity(limit, "MPa")))


def _agreement(rows, found):
    if len(found.estimates) < 2:
        return
    said = "; ".join(
        [
            "by %s %s" % (e.name.replace("-", " "), wall_pressure(e.pressure))
            for e in found.estimates
        ]
    )
    if found.agree:
        rows.append(finding("agreement", GOOD, "The measurements agree: %s." % said))
        return
    why = "The measurements do not agree: %s." % said
    remedy = "Measure both again."
    if modulus_offered(found):
        remedy = (
            "Measure both again; if they stand, the metal has a modulus of about %s GPa: give "
            "it as modulus for the next ring." % decimal(found.modulus / 1000.0, 0)
        )
    rows.append(finding("agreement", WATCH, why, remedy))


def modulus_offered(found):
    """Whether gap and force disagree in a way that a modulus which the metal may have explains."""
    metal = found.intended.duty.ring_material
    if found.agree or found.modulus is None:
        return False
    return 0.75 * metal.modulus_low <= found.modulus <= 1.25 * metal.modulus_high


def _thickness(rows, values, found):
    measured = values.get("measured_thickness")
    if measured is None:
        return
    wanted = found.intended.section.thickness
    off = measured / wanted - 1.0
    size = abs(off)
    low, high = finished_limits(found.intended).thickness
    outcome = GOOD if low <= measured <= high else WATCH if size <= THICKNESS_STOP else STOP
    why = "The ring is %s thick; %s was designed." % (fine_length(measured), fine_length(wanted))
    remedy = ""
    if outcome != GOOD:
        remedy = (
            "The pressure goes with the cube of the thickness: judge it by the pressure found."
            if outcome == WATCH
            else "Turn its inside to size."
            if off > 0.0
            else "Make it again."
        )
    check = "thickness" if off < 0.0 else "thickness-over"
    rows.append(
        finding(check, outcome, why, remedy, Quantity(measured, "mm"), Quantity(wanted, "mm"))
    )


def _width(rows, values, found):
    measured = values.get("measured_width")
    if measured is None:
        return
    d = found.intended
    clear = d.groove_width - measured
    side = side_left(d, measured)
    least_groove, most_groove = groove_limits(d)
    room = most_groove - least_groove
    most = side + room
    _, least, greatest = clearances.running_side_clearance(d.duty.bore)
    value = Quantity(side, "mm")
    said = "The ring stands %s in its groove of %s." % (
        fine_length(abs(clear)) + (" clear" if clear >= 0.0 else " proud"),
        fine_length(d.groove_width),
    )
    measure = ""
    if room > 0.0:
        said += " At its upper limit the groove leaves %s." % fine_length(clear + room)
        measure = " Or measure the groove: what it has counts."
    if side < least - NOISE:
        narrow = math.floor(1000.0 * (measured + side - least)) / 1000.0
        remedy = "Face it to %s." % fine_length(narrow) + measure
        faced = (Choice("measured_width", narrow, "mm", "clears it"),)
        rows.append(finding("width", STOP, said, remedy, value, Quantity(least, "mm"), faced))
    elif most > SLACK_SIDE * greatest + NOISE:
        stop = side > 3.0 * greatest
        remedy = "Make a wider ring; a slack one hammers its groove." + measure
        value = Quantity(most, "mm")
        rows.append(
            finding(
                "width-lost", STOP if stop else WATCH, said, remedy, value, Quantity(greatest, "mm")
            )
        )
    else:
        rows.append(finding("width", GOOD, said, "", value, Quantity(greatest, "mm")))


def _closed_gap(rows, values, found):
    measured = values.get("measured_closed_gap")
    if measured is None:
        return
    d = found.intended
    angle = CUT_ANGLES[d.duty.end_cut]
    judged = judge_gap(d, gap_by_feeler(d, measured))
    value = Quantity(measured, "mm")
    wanted = blank.feeler_reading(gap=d.duty.closed_gap, angle=angle)
    need = blank.feeler_reading(gap=judged.need, angle=angle)
    said = "A feeler reads %s in the bore; %s was designed, and %s is left when started hot." % (
        fine_length(measured),
        fine_length(wanted),
        fine_length(max(blank.feeler_reading(gap=judged.hot, angle=angle), 0.0)),
    )
    if judged.short:
        reads = math.ceil(1000.0 * need) / 1000.0
        remedy = "File the ends until a feeler square to the cut reads %s." % fine_length(reads)
        filed = [Choice("measured_closed_gap", reads, "mm", "clears it")]
        free = values.get("measured_free_gap")
        if free is not None:
            # What is filed off opens the free gap as well.
            free += gap_by_feeler(d, reads - measured)
            filed.append(Choice("measured_free_gap", free, "mm", "clears it"))
        rows.append(
            finding(
                "closed-gap",
                judged.outcome,
                said,
                remedy,
                value,
                Quantity(need, "mm"),
                tuple(filed),
            )
        )
    elif judged.wide:
        remedy = "Make it again: a plain ring leaks through its gap."
        rows.append(
            finding(
                "closed-gap-wide",
                judged.outcome,
                said,
                remedy,
                value,
                Quantity(blank.feeler_reading(gap=judged.most, angle=angle), "mm"),
            )
        )
    else:
        rows.append(finding("closed-gap", GOOD, said, "", value, Quantity(need, "mm")))


def _light(rows, values, found):
    light = values.get("measured_light")
    if light is None:
        return
    value = Quantity(light, "mm")
    judged = judge_light(light)
    limit = Quantity(judged.limit, "mm")
    if judged.outcome == GOOD:
        why = "Light-tight." if light == 0.0 else "Light of %s will bed in." % fine_length(light)
        rows.append(finding("light", GOOD, why, "", value, limit))
        return
    due = "; a ring set and turned this way shows some" if found.made.duty.bearing.light else ""
    rows.append(
        finding(
            "light",
            judged.outcome,
            "Light of %s shows%s." % (fine_length(light), due),
            "Turn the outside true with the ring held closed in a round closing ring.",
            value,
            limit,
        )
    )


def _shape(rows, found):
    if found.ovality is None:
        return
    off = found.ovality - found.ovality_due
    value, limit = Quantity(found.ovality, "mm"), Quantity(found.ovality_due, "mm")
    said = (
        "Free, the ring is %s wider across than along its gap; %s is due for the way it was set."
        % (
            fine_length(found.ovality),
            fine_length(found.ovality_due),
        )
    )
    if abs(off) <= OVALITY_OFF * found.made.spring.gap_change + 0.02:
        rows.append(finding("free-shape", GOOD, said, "", value, limit))
    else:
        remedy = (
            "See that it was held and heated evenly; look for light all the way round before it "
            "runs."
        )
        rows.append(finding("free-shape", WATCH, said, remedy, value, limit))


def _relief(rows, found):
    d = found.intended
    if found.relief is None:
        return
    value = Quantity(found.relief, "1")
    limit = Quantity(d.soak.relief.likely, "1")
    said = "The soak took out %s of the stress; %s was taken, %s to %s expected." % (
        percent(found.relief),
        percent(d.soak.relief.likely),
        percent(d.soak.relief.low),
        percent(d.soak.relief.high),
    )
    if found.relief > 1.02 or found.relief < 0.0:
        rows.append(
            finding(
                "relief",
                WATCH,
                "The gap asks for a relief of %s, which no heat gives." % percent(found.relief),
                "Check the former or spacer used, the kerf and the free gap.",
                value,
                limit,
            )
        )
        return
    if abs(found.relief - d.soak.relief.likely) <= 0.05:
        rows.append(finding("relief", GOOD, said, "", value, limit))
        return
    remedy = _next_former(found)
    if found.relief < LEAST_RELIEF:
        window = soak.soak_range(d.duty.ring_material.family)
        if window is not None:
            remedy = (
                "Soak at %s for an hour or more, the ring itself and not only the hearth at that "
                "heat. %s"
                % (
                    temperature(max(window.usual, d.soak.temperature)),
                    remedy,
                )
            )
    rows.append(finding("relief", WATCH, said, remedy, value, limit))


def _next_former(found):
    after = found.next_design
    if after is None:
        return "No former serves with so little relief."
    if after.spring.former_diameter is not None:
        return "With the same heat, set the next ring on a former of %s." % length(
            after.spring.former_diameter
        )
    return "With the same heat, set the next ring with a spacer of %s." % length(
        after.spring.spacer_width
    )
