"""What is sawn away, what is left to turn, and how hot and long the ring is set."""

from collections import namedtuple

from ..catalogue.inputs_blank import BANDED
from ..problems import unworkable
from . import blank, heat_set
from . import soak as soaking

# Below this share a former would have to be far larger than the ring; relief's field starts here.
SMALLEST_RELIEF = 0.1
# Angle of the cut to the side of the ring [deg]; a stepped joint is cut square.
CUT_ANGLES = {"angled-45": 45.0, "angled-60": 60.0, "square": 90.0, "stepped": 90.0}

# Of a blank [mm]. kerf: thickness of the saw; gap_kerf: what it takes along the ring; slit: 0 for a
# plain ring; facing: on each side; finishing: on the outside diameter; inside: on the radius.
Allowances = namedtuple(
    "Allowances", ("kerf", "gap_kerf", "slit", "facing", "finishing", "inside", "clamped_gap")
)

# temperature [degC], hours [h], relief: a soak.Relief.
Soak = namedtuple("Soak", ("temperature", "hours", "relief"))


def allowances_of(take, duty):
    """The Allowances of a blank. take: an inputs.Chooser. duty: a Duty.

    Raises InputProblem where clamping would close nothing.
    """
    bore, closed_gap = duty.bore, duty.closed_gap
    kerf = take("end_kerf", closed_gap, bore)
    gap_kerf = blank.end_kerf(saw_thickness=kerf, angle=CUT_ANGLES[duty.end_cut])
    slit = 0.0
    if duty.turns == 2:
        slit = take("slit_width", bore)
    facing = take("facing_allowance")
    banded = duty.finishing == heat_set.BAND and duty.setting != heat_set.SPREAD
    finishing = take("finishing_allowance", bore, case=BANDED if banded else "")
    # A ring held by a band is turned inside as well, and needs metal there too.
    inside = 0.5 * finishing if banded else 0.0
    clamped_gap = take("clamped_gap", closed_gap)
    if clamped_gap >= gap_kerf:
        raise unworkable(
            "clamped_gap",
            "the gap when clamped is not less than the saw cut, so nothing would be closed",
            "give less than the end kerf, or a wider end_kerf",
            value=clamped_gap,
            highest=gap_kerf,
        )
    return Allowances(
        kerf=kerf,
        gap_kerf=gap_kerf,
        slit=slit,
        facing=facing,
        finishing=finishing,
        inside=inside,
        clamped_gap=clamped_gap,
    )


def soak_of(take, family):
    """The Soak of the heat set; a given relief is taken as known.

    take: an inputs.Chooser. family: of the ring's material. Raises InputProblem where a soak
    relaxes next to nothing.
    """
    window = soaking.soak_range(family)
    temperature = take("soak_temperature", case=family)
    hours = take("soak_time")
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
            "soak at %s degC for an hour, or give the relief your last ring showed"
            % int(soaking.USUAL[family]),
        )
    take("relief", expected.likely)
    return Soak(temperature, hours, expected)
