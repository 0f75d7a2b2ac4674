"""Wear of a ring from its gap: as the outside wears, the gap opens by 2 pi times as much."""

import math
from collections import namedtuple

from ..problems import Fault, InputProblem
from ..records import Method

# How far a feeler gauge reading of a gap may be out [mm]; common practice.
READING_ERROR = 0.02
HUNDRED_HOURS = 100.0

# growth: of the gap in 100 hours, least, likely, most [mm]; hours and gap of the last reading.
Wear = namedtuple("Wear", ("growth", "last_hours", "last_gap"))

METHODS = (
    Method(
        "spring-left",
        "Wall pressure left in a worn ring",
        "(1 - g/m)(1 - g/(2 pi a1))^3, g the growth of the gap",
        "wear of the ring alone; with a worn bore the ring has more spring left than this",
        ("wear", "beam"),
    ),
    Method(
        "gap-growth",
        "Growth of the gap in 100 hours",
        "100 (s_2 - s_1)/(t_2 - t_1), straight line of least squares through more readings; each "
        "reading within 0.02 mm",
        "steady wear, after running in; ring and bore together",
        ("wear", "practice"),
    ),
    Method(
        "ring-wear",
        "Wear of the ring's outside in 100 hours",
        "growth of the gap/(2 pi)",
        "bore wear left out: with a worn bore it is ring and bore together",
        ("wear",),
    ),
    Method(
        "next-look",
        "Running hours until the next look",
        "half the hours that the fastest likely growth takes to the largest gap allowed",
        "no sudden change of oil, water or load",
        ("wear", "practice"),
    ),
)


def wear_from_readings(readings):
    """Growth of the gap from readings at known hours: a Wear.

    readings: sequence of (hours run [h], gap [mm]), two or more, at different hours.
    The line is of least squares; its spread is what READING_ERROR in the first and last can make.
    Raises InputProblem when all readings are at one time.
    """
    rows = sorted(readings)
    if len(rows) < 2 or rows[-1][0] <= rows[0][0]:
        raise InputProblem(
            [
                Fault(
                    ("gap_readings",),
                    "readings",
                    "the gap readings are all at one time",
                    "give the gap at two or more different running hours",
                )
            ]
        )
    mean_hours = 0.0
    for hours, _ in rows:
        mean_hours += hours / len(rows)
    above = below = 0.0
    for hours, gap in rows:
        above += (hours - mean_hours) * gap
        below += (hours - mean_hours) * hours
    likely = HUNDRED_HOURS * above / below
    doubt = HUNDRED_HOURS * 2.0 * READING_ERROR / (rows[-1][0] - rows[0][0])
    return Wear((likely - doubt, likely, likely + doubt), rows[-1][0], rows[-1][1])


def ring_wear(gap_growth):
    """Radial wear for a growth of the gap [same unit]: gap_growth/(2 pi)."""
    return gap_growth / (2.0 * math.pi)


def spring_left(gap_growth, gap_change, thickness):
    """Share of its wall pressure that a ring has left when its gap has grown by wear [1].

    (1 - g/m)(1 - g/(2 pi a1))^3: the gap it springs from shrinks, and so does its section.

    gap_growth: g, of the gap in the bore, all of it wear of the ring [mm]. gap_change: m of the new
    ring, bore to free [mm]. thickness: a1 of the new ring [mm]. Nought once the spring is gone.
    Source: first order of uniform-gap, derived.
    """
    section = 1.0 - ring_wear(gap_growth) / thickness
    spring = 1.0 - gap_growth / gap_change
    if section <= 0.0 or spring <= 0.0:
        return 0.0
    return spring * section * section * section


def growth_to(share, gap_change, thickness):
    """Growth of the gap at which that share of the wall pressure is left [mm].

    share: 0 to 1 [1]. gap_change, thickness: as in spring_left [mm]. Halving of the interval.
    """
    low, high = 0.0, gap_change
    for _ in range(40):
        middle = 0.5 * (low + high)
        if spring_left(middle, gap_change, thickness) > share:
            low = middle
        else:
            high = middle
    return low


def hours_to(gap, largest, growth):
    """Running hours for a gap to reach `largest` [h], None when it does not grow.

    gap, largest [mm]. growth: in 100 hours [mm].
    """
    if growth <= 0.0:
        return None
    return max(0.0, HUNDRED_HOURS * (largest - gap) / growth)
