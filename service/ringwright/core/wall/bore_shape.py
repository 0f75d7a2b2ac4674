"""The shape of one ring of bore: how far its wall departs from a true circle, as harmonics.

    u(theta) = u_0 + sum of U_n*cos(n*(theta - phase_n))        n = 2, 3, ...

outwards from bore/2. n = 1 would only shift the circle, so it is left out. A wall like this asks
of a ring the extra moment (n^2 - 1)*U_n*cos(n*(theta - phase_n)) - u_0, in the units of strip.py.
"""

import math
from collections import namedtuple

from ..catalogue.inputs_wall import HARMONIC_ENTRY, LARGEST_ORDER
from ..fields import with_usual
from ..least_squares import fit
from ..problems import Fault, InputProblem, OutOfRange
from ..records import Method

# Readings asked for each unknown of the fit, so that the noise of single readings stays small.
READINGS_PER_UNKNOWN = 1.5

# order n; amplitude U_n [mm], half of the difference of the largest and smallest radius; phase:
# direction of a largest radius [deg].
Harmonic = namedtuple("Harmonic", ("order", "amplitude", "phase"))

# larger: u_0 [mm]. harmonics: tuple of Harmonic. misfit: root mean square of what the fit leaves
# [mm], None where the harmonics were given.
Shape = namedtuple("Shape", ("larger", "harmonics", "misfit"))

ROUND = Shape(0.0, (), None)


def shape_of(given, bore):
    """The Shape behind the input `bore_shape`.

    given: checked values of inputs_wall.SHAPE_ENTRY, or None for a round bore. bore: its nominal
    size [mm]. Raises InputProblem where both ways are given, or readings lie too unevenly, or
    depart by more than a twentieth of the bore.
    """
    if given is None:
        return ROUND
    harmonics = given.get("harmonics")
    readings = given.get("readings")
    if harmonics and readings:
        raise InputProblem(
            [
                Fault(
                    ("bore_shape", "readings"),
                    "one-of",
                    "harmonics and readings cannot be given together: each settles the same thing",
                    "keep one of harmonics, readings and leave the other out",
                )
            ]
        )
    if readings:
        return shape_of_readings(
            [entry["angle"] for entry in readings], [entry["radius"] for entry in readings], bore
        )
    found = []
    for lobe in harmonics or ():
        entry = with_usual(HARMONIC_ENTRY, lobe)
        found.append(Harmonic(entry["order"], entry["amplitude"], entry["phase"]))
    shape = Shape(0.0, tuple(found), None)
    departure = 0.0
    for h in found:
        departure += abs(h.amplitude)
    _check_size(departure, bore, "harmonics")
    return shape


def shape_of_readings(angles, radii, bore):
    """The Shape fitted to radii all the way round.

    angles [deg] and radii [mm]: one each a reading, six or more. bore: nominal size [mm].
    As many orders are fitted as two readings in three allow, at most LARGEST_ORDER. Raises
    InputProblem.
    """
    count = len(radii)
    top = int((count / READINGS_PER_UNKNOWN - 1.0) / 2.0)
    top = max(1, min(top, LARGEST_ORDER))
    _check_size(max([abs(radius - 0.5 * bore) for radius in radii]), bore, "readings")
    x = y = 0.0
    # Seen from its middle: from elsewhere a circle looks oval by the square of how far off that is.
    for _ in range(2):
        rows = []
        values = []
        for angle, radius in zip(angles, radii):
            theta = math.radians(angle)
            a, b = radius * math.cos(theta) - x, radius * math.sin(theta) - y
            theta = math.atan2(b, a)
            row = [1.0]
            for n in range(1, top + 1):
                row.append(math.cos(n * theta))
                row.append(math.sin(n * theta))
            rows.append(row)
            values.append(math.sqrt(a * a + b * b) - 0.5 * bore)
        found = _fitted(rows, values)
        x += found[1]
        y += found[2]
    left = 0.0
    for row, value in zip(rows, values):
        for a, b in zip(row, found):
            value -= a * b
        left += value * value
    harmonics = []
    for n in range(2, top + 1):
        a, b = found[2 * n - 1], found[2 * n]
        harmonics.append(Harmonic(n, math.sqrt(a * a + b * b), math.degrees(math.atan2(b, a)) / n))
    return Shape(found[0], tuple(harmonics), math.sqrt(left / count))


def _fitted(rows, values):
    try:
        return fit(rows, values)[0]
    except OutOfRange:
        raise InputProblem(
            [
                Fault(
                    ("bore_shape", "readings"),
                    "spread",
                    "the readings leave part of the bore unmeasured",
                    "space them evenly all the way round",
                )
            ]
        ) from None


def _check_size(departure, bore, name):
    if departure > bore / 20.0:
        raise InputProblem(
            [
                Fault(
                    ("bore_shape", name),
                    "range",
                    "the bore departs by more than a twentieth of its size from a circle",
                    "check the figures and their unit; radii are asked for, not diameters",
                )
            ]
        )


def wall_moment(shape, angles):
    """What the wall's shape adds to the moment that would press a ring to it, at each angle [mm].

    r^2 times its extra curvature: sum of (n^2 - 1)*U_n*cos(n*(theta - phase)) - u_0.
    shape: Shape. angles: directions in the bore [rad].
    """
    added = [-shape.larger] * len(angles)
    for n, amplitude, phase in shape.harmonics:
        size = (n * n - 1.0) * amplitude
        shift = n * math.radians(phase)
        added = [a + size * math.cos(n * theta - shift) for a, theta in zip(added, angles)]
    return added


def pressure_to_follow(order, amplitude, bore, thickness, modulus):
    """Least uniform wall pressure that follows one harmonic of the bore everywhere, first order
    [MPa].

    p = E*I*(n^2 - 1)^2*U_n/(h*r_o*r^3) = E*a^3*(n^2 - 1)^2*U_n/(12*r_o*r^3)
    order: n, 2 or more. amplitude: U_n [mm]. bore, thickness [mm]. modulus [MPa].
    Source: derived; holds away from the free ends.
    """
    r = 0.5 * (bore - thickness)
    lobes = (order * order - 1.0) * (order * order - 1.0)
    cube = thickness * thickness * thickness
    return modulus * cube * lobes * abs(amplitude) / (6.0 * bore * r * r * r)


METHODS = (
    Method(
        "bore-harmonics",
        "The bore as lobes about a circle",
        "u = u_0 + sum U_n cos(n (theta - phase)), least squares on the readings",
        "orders 2 to 12, two unknowns for every three readings at most",
        ("beam",),
    ),
    Method(
        "pressure-to-follow",
        "Pressure that follows an out-of-round bore",
        "p_f = E I (n^2 - 1)^2 U_n/(h r_o r^3)",
        "first order, one harmonic, away from the free ends",
        ("contact",),
    ),
)
