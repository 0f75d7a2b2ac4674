"""What is sawn away, what is left to turn, and how hot and long the ring is set."""

import math
from collections import namedtuple

from ..problems import unworkable
from . import blank, heat_set
from . import soak as soaking

DEFAULT_SOAK_TIME = 1.0
FACING = 0.25
# Below this share a former would have to be far larger than the ring; relief's field starts here.
SMALLEST_RELIEF = 0.1
# Angle of the cut to the side of the ring [deg]; a stepped joint is cut square.
CUT_ANGLES = {"angled-45": 45.0, "angled-60": 60.0, "square": 90.0, "stepped": 90.0}
# Saws to choose an end kerf from [mm]: ISO 2296 thicknesses.
SAWS = (0.3, 0.4, 0.5, 0.6, 0.8, 1.0, 1.2, 1.6, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0)

# Of a blank [mm]. kerf: thickness of the saw; gap_kerf: what it takes along the ring; slit: 0 for a
# plain ring; facing: on each side; finishing: on the outside diameter; inside: on the radius.
Allowances = namedtuple(
    "Allowances", ("kerf", "gap_kerf", "slit", "facing", "finishing", "inside", "clamped_gap")
)

# temperature [degC], hours [h], relief: a soak.Relief.
Soak = namedtuple("Soak", ("temperature", "hours", "relief"))


def allowances_of(take, duty):
    """The Allowances of a blank. take: a duty.Chooser. duty: a Duty.

    Raises InputProblem where clamping would close nothing.
    """
    bore, closed_gap = duty.bore, duty.closed_gap
    kerf = take(
        "end_kerf",
        _saw(2.0 * closed_gap, bore),
        "mm",
        "a standard saw, a hundredth of the bore up to 1 mm, not less than twice the closed gap",
    )
    gap_kerf = blank.end_kerf(saw_thickness=kerf, angle=CUT_ANGLES[duty.end_cut])
    slit = 0.0
    if duty.turns == 2:
        slit = take("slit_width", _slit(bore), "mm", "a saw stiff enough for the bore")
    facing = take("facing_allowance", FACING, "mm", "cleans up each side")
    banded = duty.finishing == heat_set.BAND and duty.setting != heat_set.SPREAD
    finishing = take(
        "finishing_allowance",
        _tenths(0.5 + (0.012 if banded else 0.004) * bore),
        "mm",
        "0.5 mm and 1.2 % of the bore: a banded ring is far from round"
        if banded
        else "0.5 mm and 0.4 % of the bore, for a ring that is not quite round yet",
    )
    # A ring held by a band is turned inside as well, and needs metal there too.
    inside = 0.5 * finishing if banded else 0.0
    clamped_gap = take(
        "clamped_gap", closed_gap, "mm", "the closed gap, so it is turned to the bore"
    )
    if clamped_gap >= gap_kerf:
        raise unworkable(
            "clamped_gap",
            "the gap when clamped is not less than the saw cut, so nothing would be closed",
            "give less than the end kerf, or a wider end_kerf",
        )
    return Allowances(kerf, gap_kerf, slit, facing, finishing, inside, clamped_gap)


def soak_of(take, family):
    """The Soak of the heat set; a given relief is taken as known.

    take: a duty.Chooser. family: of the ring's material. Raises InputProblem where a soak relaxes
    next to nothing.
    """
    window = soaking.soak_range(family)
    usual = window.usual if window is not None else 100.0
    temperature = take("soak_temperature", usual, "degC", "relieves the metal without spoiling it")
    hours = take("soak_time", DEFAULT_SOAK_TIME, "h", "the first hour does most")
    given = take.values.get("relief")
    if given is not None:
        return Soak(temperature, hours, soaking.Relief(given, given, given))
    if window is None:
        expected = soaking.Relief(1.0, 1.0, 1.0)
    else:
        expected = soaking.expected_relief(family, temperature, hours)
    if expected.likely < SMALLEST_RELIEF:
        raise unworkable(
            "soak_temperature",
            "so cold or short a soak relaxes next to nothing: the ring would spring shut again",
            "soak at %s degC for an hour, or give the relief your last ring showed" % int(usual),
        )
    take("relief", expected.likely, "1", "what that soak relaxes; from memory of published figures")
    return Soak(temperature, hours, expected)


def _saw(least, bore):
    wanted = max(least, min(0.01 * bore, 1.0))
    for saw in SAWS:
        if saw >= wanted:
            return saw
    return _tenths(wanted + 0.1)


def _slit(bore):
    return 0.4 if bore < 30.0 else 0.8 if bore < 60.0 else 1.0 if bore < 150.0 else 1.6


def _tenths(value):
    return math.floor(value * 10.0 + 0.5) / 10.0
