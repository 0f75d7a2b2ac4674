"""The words of a dimension: sizes to the places a workshop reads, limits rounded inwards."""

import math
from collections import namedtuple

from ..catalogue.inputs_drawing import INCH, METRIC
from ..wording import MM_PER_INCH, MPA_PER_PSI, N_PER_LBF, decimal, length_places, significant
from .letters import DEGREE, DIAMETER

# Decimals of a bore in millimetres: as fine as its gauge reads.
GAUGED = 3
# What stands at a dimension. prefix: before the lines, half way up; lines: tuple of one or two
# texts.
Words = namedtuple("Words", ("prefix", "lines"))


def number(mm, system, places=None):
    """A length as digits alone: mm with `places`, inches with one place more, at least thou.

    places: None for those of wording.length_places, which what is below 1 mm has always.
    """
    if places is None or abs(mm) < 1.0:
        places = length_places(mm)
    if system == INCH:
        return decimal(mm / MM_PER_INCH, max(3, places + 1))
    return decimal(mm, places)


def length(mm, system, places=None):
    """A length with its unit, for notes and labels."""
    return number(mm, system, places) + (" in" if system == INCH else " mm")


def size(mm, system, diameter=False, places=None):
    """Words of a size without limits."""
    return Words(DIAMETER if diameter else "", (number(mm, system, places),))


def auxiliary(mm, system, round_=True):
    """Words of a size that follows from other sizes: in brackets, as ISO 129-1 has it."""
    return Words("", ("(%s)" % (diameter if round_ else number)(mm, system),))


def limits(lower, upper, system, diameter=False):
    """Words of the limits of a size, the upper above the lower, both rounded into the tolerance.

    lower, upper [mm]; printed to 0.001 mm or 0.0001 in, so that a part made to what is printed
    is never outside what was reckoned.
    """
    scale, places = (1000.0, 3) if system == METRIC else (10000.0 / MM_PER_INCH, 4)
    # A limit that is a whole number of steps must not move for the sake of its last bit.
    high = math.floor(upper * scale + 1e-6)
    low = math.ceil(lower * scale - 1e-6)
    step = 1000.0 if system == METRIC else 10000.0
    return Words(
        DIAMETER if diameter else "",
        (decimal(high / step, places), decimal(low / step, places)),
    )


def angle(degrees, places=1):
    """Words of an angle."""
    return Words("", (decimal(degrees, places) + DEGREE,))


def diameter(mm, system, places=None):
    """A diameter within a sentence."""
    return DIAMETER + number(mm, system, places)


def pressure(mpa, system):
    """A wall pressure with its unit."""
    if system == INCH:
        return decimal(mpa / MPA_PER_PSI, 1) + " psi"
    return decimal(mpa, 3) + " N/mm2"


def stress(mpa, system):
    """A stress with its unit."""
    if system == INCH:
        return significant(mpa / MPA_PER_PSI, 3) + " psi"
    return decimal(mpa, 0) + " N/mm2"


def force(newton, system):
    """A force with its unit."""
    if system == INCH:
        return decimal(newton / N_PER_LBF, 1) + " lbf"
    return decimal(newton, 1) + " N"


def whole(value):
    """A number without decimals."""
    return decimal(value, 0)


def hours(value):
    """A time in hours, or in minutes below two hours."""
    if value < 2.0:
        return decimal(value * 60.0, 0) + " min"
    return decimal(value, 1) + " h"
