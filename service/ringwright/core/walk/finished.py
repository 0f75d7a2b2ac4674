"""What the finished ring may be: the one set of limits by which card, inspection and spread go."""

from collections import namedtuple

from .. import clearances
from ..properties import fits
from ..ring.judging import SLACK_SIDE, judge_gap, side_left

# Thickness may be out by this share of itself, and by so much at least, which a lathe can hold
# [mm]: the pressure goes with its cube and the spring with it. Common practice, no source.
THICKNESS_SHARE = 0.02
LEAST_THICKNESS = 0.02
# A ring thinner or thicker by more than this share is another ring; common practice, no source.
THICKNESS_STOP = 0.10
# The gap may be larger than wanted by a quarter and 0.02 mm, and by so much at least [mm]; common
# practice, no source.
GAP_SHARE = 0.25
GAP_BEYOND = 0.02
LEAST_GAP_BEYOND = 0.10
# Share of the intended wall pressure within which a ring is accepted; common practice, no source.
PRESSURE_SHARE = 0.25

# A groove that is to be cut; common practice, no source.
GROOVE_CLASS = "H8"

# Each (lower, upper): thickness, width, closed gap along the circumference [mm], pressure [MPa].
Finished = namedtuple("Finished", ("thickness", "width", "closed_gap", "wall_pressure"))


def free_gap_limits(design):
    """(lower, upper) of the free gap that presses within the limits, by the proportion of gap and
    pressure [mm]. design: a Design.
    """
    d = design
    low, high = finished_limits(d).wall_pressure
    return (
        d.duty.closed_gap + d.spring.gap_change * low / d.spring.wall_pressure,
        d.duty.closed_gap + d.spring.gap_change * high / d.spring.wall_pressure,
    )


def groove_limits(design):
    """(least, greatest) width of the groove [mm]: alike for one that is there, or that is narrower
    than the standard's smallest. design: a Design.
    """
    width = design.groove_width
    if design.groove_there or width < fits.LOWEST_NOMINAL:
        return width, width
    return width, fits.limits(width, GROOVE_CLASS).upper


def side_limits(design):
    """(least, greatest) side clearance, cold, of rings and grooves within their limits [mm].

    design: a Design.
    """
    narrow, wide = finished_limits(design).width
    least, most = groove_limits(design)
    return least - wide, most - narrow


def finished_limits(design):
    """The Finished limits of the ring of a Design."""
    d = design
    off = max(LEAST_THICKNESS, THICKNESS_SHARE * d.section.thickness)
    beyond = max(GAP_SHARE * d.duty.closed_gap + GAP_BEYOND, LEAST_GAP_BEYOND)
    most = judge_gap(d, d.duty.closed_gap).most
    largest = d.duty.closed_gap + beyond
    if most is not None:
        largest = min(largest, max(most, d.duty.closed_gap + LEAST_GAP_BEYOND))
    _, least, greatest = clearances.running_side_clearance(d.duty.bore)
    side = side_left(d, d.section.width)
    # The narrowest ring in the widest groove still has what practice leaves, and the reverse.
    least_groove, most_groove = groove_limits(d)
    loose = side + most_groove - least_groove
    return Finished(
        thickness=(d.section.thickness - off, d.section.thickness + off),
        width=(
            d.section.width - max(SLACK_SIDE * greatest - loose, 0.0),
            d.section.width + max(side - least, 0.0),
        ),
        closed_gap=(d.duty.closed_gap, largest),
        wall_pressure=(
            (1.0 - PRESSURE_SHARE) * d.spring.wall_pressure,
            (1.0 + PRESSURE_SHARE) * d.spring.wall_pressure,
        ),
    )
