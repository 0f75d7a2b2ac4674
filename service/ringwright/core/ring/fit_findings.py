"""Whether the ring suits its cylinder, groove, piston and steam, cold and hot, in words."""

from collections import namedtuple

from .. import clearances
from ..properties.materials import pairing
from ..records import GOOD, STOP, WATCH, Quantity, finding
from ..wording import fine_length, in_a_sentence, length, steam_pressure, temperature

# Gap of a plain ring over its bore, hot: twice the most of 0.002 to 0.004 (Khurmi and Gupta) is
# wide; three times that most is past use.
WIDE_GAP = 0.008
LOST_GAP = 0.012
# Short of the gap that practice leaves by no more than this, no feeler tells [mm]; common practice,
# no source.
FEELER_READING = 0.005
# More than reciprocating engines are built for, flash steam apart [MPa]; common practice, no
# source. Most who ask for it meant another unit: 8 is 8 MPa and not 8 bar.
MOST_PRESSURE = 3.0


# A gap, judged. outcome: GOOD, WATCH, STOP. short, wide: whether it is too little or too much.
# hot: what is left in the case that the gap is filed for; margin: what practice leaves there; need:
# the cold gap that leaves it; most: the cold gap beyond which it is wide, None for a double-turn
# ring [mm].
JudgedGap = namedtuple("JudgedGap", ("outcome", "short", "wide", "hot", "margin", "need", "most"))


def judge_gap(design, gap, bore=None):
    """The JudgedGap of a ring: the one rule by which survey, sizing, inspection and spread go.

    Ends that butt in a half-warm cylinder stop it; less than practice leaves is to be watched; so
    is a plain ring's gap over 0.008 of the bore, hot, and over 0.012 stops it. design: a Design.
    gap: cold, along the circumference [mm]. bore: where the ring stands [mm], the design's when
    None.
    """
    d = design
    if bore is None:
        bore = d.bore
    hot = gap_left(d, gap, d.wall_temperature, bore)
    margin = clearances.running_gap(bore)
    need = gap - hot + margin
    outcome = GOOD
    short = wide = False
    most = gap - hot + WIDE_GAP * bore if d.turns == 1 else None
    if gap_left(d, gap, d.warming_wall_temperature, bore) <= 0.0:
        outcome, short = STOP, True
    elif hot < margin - FEELER_READING:
        outcome, short = WATCH, True
    elif d.turns == 1 and hot > WIDE_GAP * bore:
        outcome, wide = STOP if hot > LOST_GAP * bore else WATCH, True
    return JudgedGap(
        outcome=outcome, short=short, wide=wide, hot=hot, margin=margin, need=need, most=most
    )


def gap_left(design, gap, wall_temperature, bore=None):
    """What a cold gap becomes with the ring at steam heat [mm]; nought or less: the ends butt.

    design: a Design. gap: cold, in the bore [mm]. wall_temperature: of the cylinder [degC]. bore:
    where the ring stands [mm], the design's when None.
    """
    return clearances.hot_closed_gap(
        bore=design.bore if bore is None else bore,
        gap=gap,
        ring_expansion=design.ring_material.expansion,
        cylinder_expansion=design.cylinder_material.expansion,
        ring_temperature=design.steam_temperature,
        cylinder_temperature=wall_temperature,
        shop_temperature=design.shop_temperature,
    )


def side_left(design, width):
    """Clearance of a ring at the sides of its groove, cold or hot, whichever is less [mm].

    design: a Design, which has groove and heat. width: of the ring as made [mm].
    """
    d = design
    cold = d.groove_width - width
    hot = clearances.hot_side_clearance(
        ring_width=width,
        clearance=cold,
        ring_expansion=d.ring_material.expansion,
        piston_expansion=d.piston_material.expansion,
        ring_temperature=d.steam_temperature,
        piston_temperature=d.steam_temperature,
        shop_temperature=d.shop_temperature,
    )
    return min(cold, hot)


def findings(design):
    """List of Finding for the materials and clearances of a Design."""
    rows = []
    _materials(rows, design)
    _end_gap(rows, design)
    _clearances(rows, design)
    return rows


def _materials(rows, d):
    outcome, why, remedy = pairing(d.ring_material.key, d.cylinder_material.key)
    rows.append(finding("pairing", outcome, why, remedy))
    if d.piston_material.family == "aluminium" and d.ring_material.family != "plastic":
        rows.append(
            finding(
                "piston-metal",
                WATCH,
                "A metal ring hammers out its groove in a soft aluminium piston.",
                "Gauge the groove whenever the piston is out, or make an iron piston.",
            )
        )
    if d.steam_pressure > MOST_PRESSURE:
        rows.append(
            finding(
                "steam-pressure",
                WATCH,
                "Few engines are built for steam at %s." % steam_pressure(d.steam_pressure),
                "Check the gauge and the unit.",
                Quantity(d.steam_pressure, "MPa"),
                Quantity(MOST_PRESSURE, "MPa"),
            )
        )
    if d.steam_temperature > d.ring_material.hottest:
        rows.append(
            finding(
                "ring-heat",
                STOP,
                "Steam at %s is hotter than %s stands, %s."
                % (
                    temperature(d.steam_temperature),
                    in_a_sentence(d.ring_material.title),
                    temperature(d.ring_material.hottest),
                ),
                "Choose a ring material for the heat.",
                Quantity(d.steam_temperature, "degC"),
                Quantity(d.ring_material.hottest, "degC"),
            )
        )
    if d.steam_temperature < d.saturation_temperature - 0.5:
        rows.append(
            finding(
                "steam",
                WATCH,
                "Steam at this pressure is never cooler than %s, yet %s is given."
                % (temperature(d.saturation_temperature), temperature(d.steam_temperature)),
                "Leave steam_temperature out for saturated steam, or check the gauge.",
                Quantity(d.steam_temperature, "degC"),
                Quantity(d.saturation_temperature, "degC"),
            )
        )
    metal = d.ring_material
    if not metal.modulus_low <= d.modulus <= metal.modulus_high:
        rows.append(
            finding(
                "modulus",
                WATCH,
                "The modulus given lies outside what is published for %s."
                % in_a_sentence(metal.title),
                "Check the certificate of the bar, or leave modulus out.",
                Quantity(d.modulus, "MPa"),
                Quantity(
                    metal.modulus_low if d.modulus < metal.modulus_low else metal.modulus_high,
                    "MPa",
                ),
            )
        )


def _end_gap(rows, d):
    # What is said is the case that the gap is filed for; butting in a half-warm cylinder stops.
    judged = judge_gap(d, d.closed_gap)
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
            % ("half-warm" if d.turns == 1 else "stone-cold", said),
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
                Quantity(WIDE_GAP * d.bore, "mm"),
            )
        )
    cold = gap_left(d, d.closed_gap, d.shop_temperature)
    if outcome != STOP and cold < 0.0:
        rows.append(
            finding(
                "cold-start",
                WATCH,
                "In a stone-cold cylinder full steam would close the gap before the bore has "
                "grown.",
                "Warm the cylinder through slowly with the drains open, or give a closed gap of "
                "%s." % length(d.closed_gap - cold),
                Quantity(cold, "mm"),
                Quantity(0.0, "mm"),
            )
        )


def _clearances(rows, d):
    _, least, greatest = clearances.running_side_clearance(d.bore)
    side = side_left(d, d.ring_width)
    outcome = STOP if side <= 0.0 else GOOD if least <= side <= greatest * 1.5 else WATCH
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
            Quantity(least if side < least else greatest, "mm"),
        )
    )
    back = d.groove_depth - d.radial_thickness
    if back < clearances.LEAST_DEPTH_ALLOWANCE:
        rows.append(
            finding(
                "groove-depth",
                STOP if back <= 0.0 else WATCH,
                "The groove is only %s deeper than the ring is thick; the piston may ride on its "
                "ring." % fine_length(back),
                "Deepen the groove to %s, or make the ring thinner."
                % length(d.radial_thickness + clearances.DEPTH_ALLOWANCE),
                Quantity(back, "mm"),
                Quantity(clearances.LEAST_DEPTH_ALLOWANCE, "mm"),
            )
        )
    clearance = d.bore - d.piston_diameter
    limit = clearances.piston_clearance_limit(d.radial_thickness)
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
    least_piston = clearances.piston_clearance(
        bore=d.bore,
        piston_expansion=d.piston_material.expansion,
        cylinder_expansion=d.cylinder_material.expansion,
        piston_temperature=d.steam_temperature,
        cylinder_temperature=d.warming_wall_temperature,
        shop_temperature=d.shop_temperature,
        margin=0.0,
    )
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
