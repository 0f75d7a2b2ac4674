"""Limits and fits by ISO 286: the tolerance classes that turned tooling needs.

Tables in micrometres, as the standard prints them: its own rounding cannot be had from its
formulas. All were compared with published copies.
"""

from collections import namedtuple

from ..problems import OutOfRange
from ..records import Method

SOURCE = "ISO 286-1 and 286-2"
LOWEST_NOMINAL = 1.0  # [mm]
HIGHEST_NOMINAL = 1000.0  # [mm]

# A band runs from over the entry before to and including its own [mm].
BANDS = (3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500, 630, 800, 1000)

# Standard tolerances [micrometre] by grade, one for each band.
GRADES = {
    6: (6, 8, 9, 11, 13, 16, 19, 22, 25, 29, 32, 36, 40, 44, 50, 56),
    7: (10, 12, 15, 18, 21, 25, 30, 35, 40, 46, 52, 57, 63, 70, 80, 90),
    8: (14, 18, 22, 27, 33, 39, 46, 54, 63, 72, 81, 89, 97, 110, 125, 140),
    9: (25, 30, 36, 43, 52, 62, 74, 87, 100, 115, 130, 140, 155, 175, 200, 230),
    10: (40, 48, 58, 70, 84, 100, 120, 140, 160, 185, 210, 230, 250, 280, 320, 360),
    11: (60, 75, 90, 110, 130, 160, 190, 220, 250, 290, 320, 360, 400, 440, 500, 560),
}

# Upper deviation of shafts [micrometre below nominal].
BELOW = {
    "d": (20, 30, 40, 50, 65, 80, 100, 120, 145, 170, 190, 210, 230, 260, 290, 320),
    "e": (14, 20, 25, 32, 40, 50, 60, 72, 85, 100, 110, 125, 135, 145, 160, 170),
    "f": (6, 10, 13, 16, 20, 25, 30, 36, 43, 50, 56, 62, 68, 76, 80, 86),
    "g": (2, 4, 5, 6, 7, 9, 10, 12, 14, 15, 17, 18, 20, 22, 24, 26),
}

# Lower deviation of shafts [micrometre above nominal]. k stands for grades 6 and 7 here; from
# grade 8 on the standard makes it nought.
ABOVE = {
    "k": (0, 1, 1, 1, 2, 2, 2, 3, 3, 4, 4, 4, 5, 0, 0, 0),
    "n": (4, 8, 10, 12, 15, 17, 20, 23, 27, 31, 34, 37, 40, 44, 50, 56),
    "p": (6, 12, 15, 18, 22, 26, 32, 37, 43, 50, 56, 62, 68, 78, 88, 100),
}

# Every tolerance class, such as "H7": its letters and grade.
CLASSES = {}
for _letters in ("H", "JS", "d", "e", "f", "g", "h", "js", "k", "n", "p"):
    for _grade in (6, 7, 8, 9, 10, 11):
        CLASSES[_letters + str(_grade)] = (_letters, _grade)

# Limits of size [mm] and the deviations from nominal [mm] that make them.
Limits = namedtuple(
    "Limits", ("tolerance_class", "nominal", "lower", "upper", "lower_deviation", "upper_deviation")
)

# Least and greatest clearance [mm], negative where it is interference, and both parts' Limits.
Fit = namedtuple("Fit", ("name", "least_clearance", "greatest_clearance", "hole", "shaft"))

METHODS = (
    Method(
        "limits-of-size",
        "Limits of size of a tolerance class",
        "hole H: 0 to +IT; JS and js: -IT/2 to +IT/2; shafts d e f g h: es - IT to es; "
        "shafts k n p: ei to ei + IT",
        "nominal 1 to 1000 mm, grades 6 to 11",
        ("iso286",),
    ),
    Method(
        "fit",
        "Clearance of a hole and a shaft",
        "least = lower limit of hole - upper limit of shaft; greatest = upper - lower",
        "nominal 1 to 1000 mm",
        ("iso286",),
    ),
)


def limits(nominal, tolerance_class):
    """Limits of size for a nominal and a tolerance class, a Limits.

    lower = nominal + lower deviation; upper = nominal + upper deviation.

    nominal: nominal size [mm], 1 to 1000. tolerance_class: letters and grade, capitals for holes:
    H or JS, grades 6 to 11, such as "H7"; shafts d e f g h js k n p, such as "g6".
    Returns limits of size and deviations [mm].
    Raises OutOfRange for another size, letter or grade.
    Example: 25 H7 is 25.000 to 25.021; 25 g6 is 24.980 to 24.993.
    Source: ISO 286-1 tables 1 to 5 and 286-2.
    """
    band = _band(nominal)
    letters, grade = _parsed(tolerance_class)
    tolerance = GRADES[grade][band]
    if letters == "H":
        low, high = 0, tolerance
    elif letters == "JS" or letters == "js":
        low, high = -0.5 * tolerance, 0.5 * tolerance
    elif letters == "h":
        low, high = -tolerance, 0
    elif letters in BELOW:
        high = -BELOW[letters][band]
        low = high - tolerance
    else:
        low = 0 if letters == "k" and grade > 7 else ABOVE[letters][band]
        high = low + tolerance
    return Limits(
        tolerance_class=tolerance_class,
        nominal=nominal,
        lower=nominal + low / 1000.0,
        upper=nominal + high / 1000.0,
        lower_deviation=low / 1000.0,
        upper_deviation=high / 1000.0,
    )


def fit(nominal, name):
    """Clearance of a hole and a shaft of one nominal size, a Fit.

    least = EI - es; greatest = ES - ei.

    nominal: nominal size [mm], 1 to 1000. name: hole and shaft, such as "H7/g6".
    Returns clearances [mm], negative for interference, and both limits.
    Raises OutOfRange for another size or class, or a name that is not hole/shaft.
    Example: 25 H7/g6 has a clearance of 0.007 to 0.041.
    Source: ISO 286-1.
    """
    parts = name.split("/")
    if len(parts) != 2 or parts[0][:1] not in ("H", "J") or parts[1][:1] in ("H", "J"):
        raise OutOfRange("fit", name, "hole/shaft, such as H7/g6", SOURCE)
    hole = limits(nominal, parts[0])
    shaft = limits(nominal, parts[1])
    return Fit(
        name,
        hole.lower_deviation - shaft.upper_deviation,
        hole.upper_deviation - shaft.lower_deviation,
        hole,
        shaft,
    )


def tolerance(nominal, grade):
    """Standard tolerance of a grade [mm].

    nominal: nominal size [mm], 1 to 1000. grade: 6 to 11.
    Raises OutOfRange for another size or grade.
    Source: ISO 286-1 table 1.
    """
    if grade not in GRADES:
        raise OutOfRange("grade", grade, "6 to 11", SOURCE)
    return GRADES[grade][_band(nominal)] / 1000.0


def _band(nominal):
    if not LOWEST_NOMINAL <= nominal <= HIGHEST_NOMINAL:
        raise OutOfRange("nominal", nominal, "1 to 1000 mm", SOURCE)
    band = 0
    while nominal > BANDS[band]:
        band += 1
    return band


def _parsed(tolerance_class):
    found = CLASSES.get(tolerance_class)
    if found is None:
        raise OutOfRange(
            "tolerance_class",
            tolerance_class,
            "H or JS, or d e f g h js k n p, with grade 6 to 11",
            SOURCE,
        )
    return found
