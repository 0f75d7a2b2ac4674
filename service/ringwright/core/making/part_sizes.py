"""One size of a part or a tool, with its limits and how it is taken, as tools, card and drawings
show it."""

from collections import OrderedDict, namedtuple

from ..properties import fits
from ..records import Quantity, plain

# Limits of ISO 286 are given for these nominal sizes [mm].
SMALLEST_NOMINAL = 1.0
LARGEST_NOMINAL = 1000.0

# How a size is taken in the hand; limits are in that reading.
MICROMETER = "micrometer, at shop temperature, in three places"
INSIDE = "inside micrometer or bore gauge, at shop temperature"
CALIPER = "caliper"
RULE = "rule or dividers, along the outside"
RULE_INSIDE = "rule, along the inside"
RULE_ENDWISE = "rule, along the axis of the ring"
DEPTH = "depth gauge"
DRILLED = "the size that is marked on the drill"
FITTED = "feeler between ring and groove, all round"
SCALE = "kitchen scale"
FEELER = "feeler between the ends, square to the cut"
ALONG = "caliper across the gap, half-way through the thickness, ring free on a plate"
ACROSS_CUT = "thickness of the saw, or a feeler in the cut, square to it"
SET = "set, not measured"

# name: as in the figures. label: in words. lower, upper: limits in the same unit, or None.
# reading: how it is taken, one of the above or words of its own.
Size = namedtuple("Size", ("name", "label", "value", "unit", "lower", "upper", "reading"))


def bare(name, label, value, unit="mm", reading=CALIPER):
    """A Size without limits. name, label, reading: text. value: in `unit`."""
    return Size(
        name=name, label=label, value=value, unit=unit, lower=None, upper=None, reading=reading
    )


def between(name, label, value, limits, reading=MICROMETER):
    """A Size between two limits. limits: (lower, upper) [mm]."""
    return Size(
        name=name,
        label=label,
        value=value,
        unit="mm",
        lower=limits[0],
        upper=limits[1],
        reading=reading,
    )


def limited(name, label, value, tolerance, reading=MICROMETER):
    """A Size with limits of ISO 286, without them where the standard has none.

    name, label, reading: text. value: nominal size [mm]. tolerance: class such as "H7", added to
    the label.
    """
    if not SMALLEST_NOMINAL <= value <= LARGEST_NOMINAL:
        return bare(name, label, value, reading=reading)
    limits = fits.limits(value, tolerance)
    label = "%s %s" % (label, tolerance)
    return Size(
        name=name,
        label=label,
        value=value,
        unit="mm",
        lower=limits.lower,
        upper=limits.upper,
        reading=reading,
    )


def suited(name, label, value, worst, tolerance, reading=MICROMETER):
    """A Size of a tool whose limits are those of the part at its worst.

    name, label, value, reading: as of `bare`. worst: size of the part that the tool must still go
    with [mm]. tolerance: of ISO 286, added to the label.
    """
    found = limited(name, label, worst, tolerance, reading)
    return between(name, found.label, value, (found.lower, found.upper), reading)


def tree(size):
    """A Size as an OrderedDict for an answer. size: a Size."""
    row = OrderedDict(
        (
            ("name", size.name),
            ("label", size.label),
            ("value", plain(size.value)),
            ("unit", size.unit),
        )
    )
    if size.lower is not None:
        row["limits"] = {
            "lower": Quantity(size.lower, size.unit),
            "upper": Quantity(size.upper, size.unit),
        }
    row["reading"] = size.reading
    return row
