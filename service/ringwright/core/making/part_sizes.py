"""One size of a part or a tool, with its limits, as tools, route card and drawings show it."""

from collections import OrderedDict, namedtuple

from ..properties import fits
from ..records import Quantity

# Limits of ISO 286 are given for these nominal sizes [mm].
SMALLEST_NOMINAL = 1.0
LARGEST_NOMINAL = 1000.0

# name: as in the figures. label: in words. lower, upper: limits in the same unit, or None.
Size = namedtuple("Size", ("name", "label", "value", "unit", "lower", "upper"))


def bare(name, label, value, unit="mm"):
    """A Size without limits. name, label: text. value: in `unit`."""
    return Size(name, label, value, unit, None, None)


def limited(name, label, value, tolerance):
    """A Size with limits of ISO 286, without them where the standard has none.

    name, label: text. value: nominal size [mm]. tolerance: class such as "H7", added to the label.
    """
    if not SMALLEST_NOMINAL <= value <= LARGEST_NOMINAL:
        return bare(name, label, value)
    limits = fits.limits(value, tolerance)
    return Size(name, "%s %s" % (label, tolerance), value, "mm", limits.lower, limits.upper)


def tree(size):
    """A Size as an OrderedDict for an answer. size: a Size."""
    row = OrderedDict(
        (("name", size.name), ("label", size.label), ("value", size.value), ("unit", size.unit))
    )
    if size.lower is not None:
        row["limits"] = {
            "lower": Quantity(size.lower, size.unit),
            "upper": Quantity(size.upper, size.unit),
        }
    return row
