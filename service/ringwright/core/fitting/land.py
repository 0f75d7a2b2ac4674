"""The land beside a groove, as a ring plate built in at the groove's bottom.

Steam behind the ring presses on the land from the bottom of the groove to the ring, and the ring
hands on what presses on itself, out to the bore: full pressure on one side, none on the other.
"""

import math

from ..problems import OutOfRange
from ..properties.expansion import require_positive
from ..records import Method

# Fatigue limit over the least tensile strength: White, of grey iron; others by an encyclopaedia,
# which has 0.4.
FATIGUE = 0.35
# A load put on at once counts twice; a corner in a metal of little notch sensitivity 1.25, judged.
CORNER_AND_KNOCK = 2.5

METHODS = (
    Method(
        "least-land",
        "Least land by strength",
        "t = max(sqrt(6 M/s), sqrt(3) 3 q (a^2 - b^2)/(4 b s)), M at the root of a ring plate, "
        "a = d1/2, b = d_p/2 - depth, s 0.14 of the least tensile strength",
        "full steam on one side; as wide as deep within 2 %",
        ("land-plate", "iron-fatigue", "endurance-page", "practice"),
    ),
)


def root_moment(pressure, outer, inner, poisson):
    """Bending moment of the land at its root, a unit of length round [N].

    M = q a^2/2 (c^2/2 - 1/2 - ln c + 2 A), c = b/a,
    A = (1 - nu)(1/8 + c^2 ln(c)/2 - c^4/8)/(1 + nu + (1 - nu) c^2).

    pressure: q over the whole land [MPa]. outer: a [mm]. inner: b, where it is built in [mm].
    poisson: nu [1].
    Raises OutOfRange unless 0 < b < a.
    Source: thin plates, derived; the table of a handbook and finite elements in tests/published.
    """
    require_positive("inner", inner)
    if not inner < outer:
        raise OutOfRange("inner", inner, "less than the outer radius", "land as a ring plate")
    c = inner / outer
    square, log = c * c, math.log(c)
    held = (1.0 - poisson) * (0.125 + 0.5 * square * log - 0.125 * square * square)
    held /= 1.0 + poisson + (1.0 - poisson) * square
    return 0.5 * pressure * outer * outer * (0.5 * square - 0.5 - log + 2.0 * held)


def root_stresses(pressure, outer, inner, poisson, width):
    """(bending, shear) of a land at its root [MPa]: 6 M/t^2, 3 q (a^2 - b^2)/(4 b t).

    pressure, outer, inner, poisson: as in root_moment. width: of the land, t [mm], more than 0.
    Raises OutOfRange as root_moment. Source: as root_moment.
    """
    require_positive("width", width)
    bent = 6.0 * root_moment(pressure, outer, inner, poisson) / (width * width)
    return bent, 0.75 * pressure * (outer * outer - inner * inner) / (inner * width)


def telling(bent, shear):
    """The stress by which a land is judged [MPa]: bending, or sqrt(3) times shear where more.

    bent, shear: as of root_stresses [MPa].
    """
    return max(bent, math.sqrt(3.0) * shear)


def least_width(pressure, outer, inner, poisson, stress):
    """Width of a land that sees just that stress [mm].

    pressure, outer, inner, poisson: as in root_moment. stress [MPa].
    """
    bent, shear = root_stresses(pressure, outer, inner, poisson, 1.0)
    return max(math.sqrt(bent / stress), math.sqrt(3.0) * shear / stress)


def least_of(design):
    """Least width of a land of the piston [mm]. design: a Design."""
    d = design
    return least_width(
        pressure=d.duty.steam_pressure,
        outer=0.5 * d.duty.bore,
        inner=0.5 * d.piston_diameter - d.groove_depth,
        poisson=d.duty.piston.poisson,
        stress=FATIGUE * d.duty.piston.tensile_low / CORNER_AND_KNOCK,
    )
