"""How much of the bending a soak relaxes, and which soaks the metal stands.

Published figures agree only roughly: 600 F useless and very slow below 1000 F, the first hour does
most (DTIC AD0620556); 500 to 550 degC for 2 to 8 h removes 90 to 95 % (a foundry); 950 F for 1.5 h
not enough, 1100 F for 3 to 4 h (a metallurgist). The curve between them is from memory, so it comes
with a wide spread, and the relief measured on the last ring beats it.
"""

import math
from collections import namedtuple

from ..catalogue.inputs_blank import USUAL_SOAK
from ..problems import OutOfRange
from ..records import Method

# A spread of the relief that is too wide to make a batch by.
WIDE_RELIEF = 0.25

# Share of moment relaxed by one hour at each temperature [degC], grey iron; from memory, anchored
# as above.
_IRON_HOUR = (
    (100.0, 0.0),
    (300.0, 0.03),
    (350.0, 0.08),
    (400.0, 0.18),
    (450.0, 0.37),
    (500.0, 0.66),
    (550.0, 0.90),
    (600.0, 0.96),
    (650.0, 0.99),
    (900.0, 0.99),
)
# Tin bronze and gunmetal; from memory, about what is printed: castings relieved at 260 degC (two
# sheets), strip at 163 to 177, no spring for use above 107.
_BRONZE_HOUR = (
    (100.0, 0.05),
    (150.0, 0.15),
    (200.0, 0.35),
    (250.0, 0.60),
    (300.0, 0.82),
    (350.0, 0.93),
    (400.0, 0.97),
    (900.0, 0.97),
)
# Time counts as temperature does: T (20 + log10 t) stays the same (Larson and Miller; 20 is usual).
_TIME_CONSTANT = 20.0
ABSOLUTE_ZERO = 273.15

# What to aim at [degC]: coldest that does much, usual, hottest before the metal suffers.
Range = namedtuple("Range", ("coldest", "usual", "hottest"))
USUAL = dict(USUAL_SOAK)
RANGES = {
    "iron": Range(500.0, USUAL["iron"], 565.0),
    "bronze": Range(250.0, USUAL["bronze"], 350.0),
}

Relief = namedtuple("Relief", ("low", "likely", "high"))


def soak_range(family):
    """The Range of soak temperatures for a family of metals [degC], None where there is none.

    family: of materials.Material, such as "iron". Plastics cannot be heat-set.
    """
    return RANGES.get(family)


def can_be_set(family):
    """Whether heat sets rings of a family of metals. family: as of soak_range."""
    return family in RANGES


def expected_relief(family, temperature, hours):
    """Relief of the moment to expect of a soak, with its spread (shares of 1).

    family: "iron" or "bronze". temperature: of the ring, not of the hearth [degC], 100 to 900.
    hours: held at it, 0 to 48. The spread is a fifth of what lies between relaxed and not, at
    least 0.05. Raises OutOfRange. Source: see the head of this file; from memory.
    """
    curve = {"iron": _IRON_HOUR, "bronze": _BRONZE_HOUR}.get(family)
    if curve is None:
        raise OutOfRange("family", family, "iron or bronze", "stress relief")
    if not 100.0 <= temperature <= 900.0:
        raise OutOfRange("temperature", temperature, "100 to 900 degC", "stress relief")
    if hours <= 0.0:
        return Relief(0.0, 0.0, 0.0)
    kelvin = temperature + ABSOLUTE_ZERO
    same = kelvin * (_TIME_CONSTANT + math.log10(max(hours, 1.0 / 60.0))) / _TIME_CONSTANT
    likely = _between(curve, same - ABSOLUTE_ZERO)
    spread = max(0.05, 0.8 * likely * (1.0 - likely))
    return Relief(max(likely - spread, 0.0), likely, min(likely + spread, 1.0))


def _between(curve, temperature):
    if temperature <= curve[0][0]:
        return curve[0][1]
    for (low, below), (high, above) in zip(curve, curve[1:]):
        if temperature <= high:
            return below + (above - below) * (temperature - low) / (high - low)
    return curve[-1][1]


METHODS = (
    Method(
        "expected-relief",
        "Relief to expect of a soak",
        "table at one hour; other times by T (20 + log10 t)",
        "the ring itself at that temperature; a brazing hearth is uncertain",
        ("stress-relief-reports", "memory"),
    ),
)
