"""The one set of checks: whoever judges a ring, drawn, made, running or worn, goes by these.

A ring is judged by the place where it stands: pass the bore where it is tightest, or slackest. What
is judged is a Design, or a record with the fields of its name that a check reads.
"""

from collections import namedtuple

from .. import clearances
from ..records import GOOD, STOP, WATCH, short

# Gap of a plain ring over its bore, hot: twice the most of 0.002 to 0.004 (Khurmi and Gupta) is
# wide; three times that most is past use.
WIDE_GAP = 0.008
LOST_GAP = 0.012
# Short of the gap that practice leaves by no more than this, no feeler tells [mm]; common practice,
# no source.
FEELER_READING = 0.005
# Wall pressure [MPa]: practice is 0.041 to 0.055 (Walshaw), locomotives slightly higher.
SLACK_STOP = 0.015
SLACK_WATCH = 0.034
STIFF_WATCH = 0.085
STIFF_STOP = 0.2
# Light that bedding-in removes [mm].
LIGHT_WATCH = 0.05
LIGHT_STOP = 0.25
# Side clearance may be so much more than the greatest of practice before a groove is called slack;
# common practice, no source.
SLACK_SIDE = 1.5

# What was judged, and the limit that it was judged by, in the core's units.
Judged = namedtuple("Judged", ("outcome", "value", "limit"))
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
        bore = d.duty.bore
    hot = gap_left(d, gap, d.duty.wall_temperature, bore)
    margin = clearances.running_gap(bore)
    # The gap itself grows with the ring.
    grown = clearances.growth(d.duty.ring_material.expansion, d.duty.temperature, d.duty.shop)
    need = gap + (margin - hot) / grown
    outcome = GOOD
    short = wide = False
    most = gap + (WIDE_GAP * bore - hot) / grown if d.duty.turns == 1 else None
    if gap_left(d, gap, d.duty.warming_wall_temperature, bore) <= 0.0:
        outcome, short = STOP, True
    elif hot < margin - FEELER_READING:
        outcome, short = WATCH, True
    elif d.duty.turns == 1 and hot > WIDE_GAP * bore:
        outcome, wide = STOP if hot > LOST_GAP * bore else WATCH, True
    return JudgedGap(
        outcome=outcome, short=short, wide=wide, hot=hot, margin=margin, need=need, most=most
    )


def least_gap(design):
    """Cold gap of a ring whose ends just meet, started in a half-warm cylinder [mm]: less stops it.

    design: a Design.
    """
    return clearances.closed_gap(
        bore=design.duty.bore,
        ring_expansion=design.duty.ring_material.expansion,
        cylinder_expansion=design.duty.cylinder.expansion,
        ring_temperature=design.duty.temperature,
        cylinder_temperature=design.duty.warming_wall_temperature,
        shop_temperature=design.duty.shop,
        margin=0.0,
    )


def gap_left(design, gap, wall_temperature, bore=None):
    """What a cold gap becomes with the ring at steam heat [mm]; nought or less: the ends butt.

    design: a Design. gap: cold, in the bore [mm]. wall_temperature: of the cylinder [degC]. bore:
    where the ring stands [mm], the design's when None.
    """
    return clearances.hot_closed_gap(
        bore=design.duty.bore if bore is None else bore,
        gap=gap,
        ring_expansion=design.duty.ring_material.expansion,
        cylinder_expansion=design.duty.cylinder.expansion,
        ring_temperature=design.duty.temperature,
        cylinder_temperature=wall_temperature,
        shop_temperature=design.duty.shop,
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
        ring_expansion=d.duty.ring_material.expansion,
        piston_expansion=d.duty.piston.expansion,
        ring_temperature=d.duty.temperature,
        piston_temperature=d.duty.temperature,
        shop_temperature=d.duty.shop,
    )
    return min(cold, hot)


def judge_side(design, width):
    """The Judged of the clearance at a ring's sides [mm], by what practice leaves.

    design: a Design, which has groove and heat. width: of the ring as made [mm].
    """
    side = side_left(design, width)
    _, least, greatest = clearances.running_side_clearance(design.duty.bore)
    outcome = STOP if side <= 0.0 else GOOD if least <= side <= greatest * SLACK_SIDE else WATCH
    return Judged(outcome=outcome, value=side, limit=least if side < least else greatest)


def pressing(design):
    """Mean pressure on the wall of ring and expander together [MPa]. design: a Design."""
    return design.spring.wall_pressure + design.expander_pressure


def judge_pressure(pressure):
    """The Judged of a mean pressure on the wall, the expander's included [MPa].

    Too little lifts off the wall, too much wears it. pressure [MPa].
    """
    # As it is told: worked from a ring, what was asked for comes back with the noise of a float.
    pressure = short(pressure)
    if pressure > STIFF_WATCH:
        stop = pressure > STIFF_STOP
        limit = STIFF_STOP if stop else STIFF_WATCH
    elif pressure < SLACK_WATCH:
        stop = pressure < SLACK_STOP
        limit = SLACK_STOP if stop else SLACK_WATCH
    else:
        return Judged(outcome=GOOD, value=pressure, limit=STIFF_WATCH)
    return Judged(outcome=STOP if stop else WATCH, value=pressure, limit=limit)


def judge_light(light):
    """The Judged of the widest light between ring and bore [mm]: bedding-in takes out a little.

    light [mm].
    """
    outcome = GOOD if light <= LIGHT_WATCH else WATCH if light <= LIGHT_STOP else STOP
    return Judged(outcome=outcome, value=light, limit=LIGHT_WATCH)


def least_piston_clearance(design, bore=None):
    """Clearance of the piston on the diameter, cold, that is just used up hot [mm].

    In a half-warm cylinder, the piston at steam heat. design: a Design. bore: as in judge_gap.
    """
    d = design
    return clearances.piston_clearance(
        bore=d.duty.bore if bore is None else bore,
        piston_expansion=d.duty.piston.expansion,
        cylinder_expansion=d.duty.cylinder.expansion,
        piston_temperature=d.duty.temperature,
        cylinder_temperature=d.duty.warming_wall_temperature,
        shop_temperature=d.duty.shop,
        margin=0.0,
    )
