"""Whether the ring suits its cylinder, groove, piston and steam, cold and hot, in words."""

from .. import clearances
from ..properties.materials import pairing
from ..records import GOOD, STOP, WATCH, Quantity, finding
from ..wording import fine_length, in_a_sentence, length, said_up, steam_pressure, temperature
from .judging import WIDE_GAP, gap_left, judge_gap, judge_side, least_piston_clearance

# More than reciprocating engines are built for, flash steam apart [MPa]; common practice, no
# source. Most who ask for it meant another unit: 8 is 8 MPa and not 8 bar.
MOST_PRESSURE = 3.0


def findings(design):
    """List of Finding for the materials and clearances of a Design."""
    rows = []
    _materials(rows, design)
    end_gap(rows, design)
    _clearances(rows, design)
    return rows


def _materials(rows, d):
    outcome, why, remedy = pairing(d.duty.ring_material.key, d.duty.cylinder.key)
    rows.append(finding("pairing", outcome, why, remedy))
    if d.duty.piston.family == "aluminium" and d.duty.ring_material.family != "plastic":
        rows.append(
            finding(
                "piston-metal",
                WATCH,
                "A metal ring hammers out its groove in a soft aluminium piston.",
                "Gauge the groove whenever the piston is out, or make an iron piston.",
            )
        )
    if d.duty.steam_pressure > MOST_PRESSURE:
        rows.append(
            finding(
                "steam-pressure",
                WATCH,
                "Few engines are built for steam at %s." % steam_pressure(d.duty.steam_pressure),
                "Check the gauge and the unit.",
                Quantity(d.duty.steam_pressure, "MPa"),
                Quantity(MOST_PRESSURE, "MPa"),
            )
        )
    if d.duty.temperature > d.duty.ring_material.hottest:
        rows.append(
            finding(
                "ring-heat",
                STOP,
                "Steam at %s is hotter than %s stands, %s."
                % (
                    temperature(d.duty.temperature),
                    in_a_sentence(d.duty.ring_material.title),
                    temperature(d.duty.ring_material.hottest),
                ),
                "Choose a ring material for the heat.",
                Quantity(d.duty.temperature, "degC"),
                Quantity(d.duty.ring_material.hottest, "degC"),
            )
        )
    if d.duty.temperature < d.duty.saturation - 0.5:
        rows.append(
            finding(
                "steam",
                WATCH,
                "Steam at this pressure is never cooler than %s, yet %s is given."
                % (temperature(d.duty.saturation), temperature(d.duty.temperature)),
                "Leave steam_temperature out for saturated steam, or check the gauge.",
                Quantity(d.duty.temperature, "degC"),
                Quantity(d.duty.saturation, "degC"),
            )
        )
    metal = d.duty.ring_material
    if not metal.modulus_low <= d.duty.modulus <= metal.modulus_high:
        rows.append(
            finding(
                "modulus",
                WATCH,
                "The modulus given lies outside what is published for %s."
                % in_a_sentence(metal.title),
                "Check the certificate of the bar, or leave modulus out.",
                Quantity(d.duty.modulus, "MPa"),
                Quantity(
                    metal.modulus_low if d.duty.modulus < metal.modulus_low else metal.modulus_high,
                    "MPa",
                ),
            )
        )


def end_gap(rows, d):
    """Adds what is to be said of the closed gap of a Design. rows: list of Finding."""
    # What is said is the case that the gap is filed for; butting in a half-warm cylinder stops.
    judged = judge_gap(d, d.duty.closed_gap)
    hot = judged.hot
    outcome = judged.outcome if judged.short else GOOD
    said = "%s is left between the ends" % fine_length(hot)
    if hot <= 0.0:
        said = "the ends butt and the ring %s" % ("seizes" if outcome == STOP else "may seize")
    elif outcome == WATCH:
        said += ", less than practice leaves"
    remedy = ""
    if outcome != GOOD:
        remedy = "Give a closed gap of at least %s." % length(judged.need)
    rows.append(
        finding(
            "end-gap",
            outcome,
            "Started hot in a %s cylinder, %s."
            % ("half-warm" if d.duty.turns == 1 else "stone-cold", said),
            remedy,
            Quantity(hot, "mm"),
            Quantity(judged.margin, "mm"),
        )
    )
    if judged.wide:
        rows.append(
            finding(
                "gap-wide",
                judged.outcome,
                "Hot, the gap is still %s wide: a plain ring leaks through it." % fine_length(hot),
                "Leave closed_gap out, or make a double-turn ring.",
                Quantity(hot, "mm"),
                Quantity(WIDE_GAP * d.duty.bore, "mm"),
            )
        )
    cold = gap_left(d, d.duty.closed_gap, d.duty.shop)
    if outcome != STOP and cold < 0.0:
        rows.append(
            finding(
                "cold-start",
                WATCH,
                "In a stone-cold cylinder full steam would close the gap before the bore has "
                "grown.",
                "Warm the cylinder through slowly with the drains open, or give a closed gap of "
                "%s." % length(said_up(d.duty.closed_gap - cold)),
                Quantity(cold, "mm"),
                Quantity(0.0, "mm"),
            )
        )


def _clearances(rows, d):
    _, least, greatest = clearances.running_side_clearance(d.duty.bore)
    outcome, side, limit = judge_side(d, d.section.width)
    rows.append(
        finding(
            "side-clearance",
            outcome,
            "The ring %s %s groove; practice leaves %s to %s."
            % (
                "has %s at its sides in" % fine_length(side)
                if side > 0.0
                else "is %s too wide for" % fine_length(-side),
                "the hot" if side < d.side_clearance else "its",
                fine_length(least),
                fine_length(greatest),
            ),
            ""
            if outcome == GOOD
            else "Make the ring narrower or open the groove."
            if side < least
            else "True up the groove, and make the ring wider to suit.",
            Quantity(side, "mm"),
            Quantity(limit, "mm"),
        )
    )
    back = None if d.groove_depth is None else d.groove_depth - d.section.thickness
    if back is not None and back < clearances.LEAST_DEPTH_ALLOWANCE:
        rows.append(
            finding(
                "groove-depth",
                STOP if back <= 0.0 else WATCH,
                "The groove is only %s deeper than the ring is thick; the piston may ride on its "
                "ring." % fine_length(back),
                "Deepen the groove to %s, or make the ring thinner."
                % length(d.section.thickness + clearances.DEPTH_ALLOWANCE),
                Quantity(back, "mm"),
                Quantity(clearances.LEAST_DEPTH_ALLOWANCE, "mm"),
            )
        )
    clearance = d.duty.bore - d.piston_diameter
    limit = clearances.piston_clearance_limit(d.section.thickness)
    if clearance > limit:
        rows.append(
            finding(
                "piston-clearance",
                WATCH,
                "The piston is %s smaller than the bore, so its lands back less than two thirds "
                "of the ring." % fine_length(clearance),
                "Build up or renew the piston, or make the ring thicker.",
                Quantity(clearance, "mm"),
                Quantity(limit, "mm"),
            )
        )
    least_piston = least_piston_clearance(d)
    if clearance < least_piston:
        rows.append(
            finding(
                "piston-seizes",
                STOP,
                "Hot, the piston grows by more than its clearance of %s." % fine_length(clearance),
                "Turn the piston down to leave at least %s." % fine_length(least_piston),
                Quantity(clearance, "mm"),
                Quantity(least_piston, "mm"),
            )
        )
