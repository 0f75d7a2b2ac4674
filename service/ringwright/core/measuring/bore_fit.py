"""Gauge readings of a worn bore as a shape: size, ovality and lobes at each height, taper and
bell-mouth.

A two-point gauge reads D(theta) = D_0 + sum of 2*U_n*cos(n*(theta - phase_n)) over even n: of an
oval it sees everything, of three lobes nothing. A three-point gauge with its feet 120 degrees
apart reads D_0 + 2*U_3*cos(3*(theta - phase_3)): of three lobes everything, of an oval nothing.
"""

import math
from collections import namedtuple

from ..catalogue.inputs_measuring import THREE_POINT, TWO_POINT
from ..least_squares import fit
from ..problems import OutOfRange
from ..records import Method
from ..wall.bore_shape import Harmonic

# Heights closer than this are one section [mm].
SAME_HEIGHT = 0.5
# Directions closer than this are one direction [deg]: a gauge is turned by eye.
SAME_DIRECTION = 10.0
# A term that would carry more errors of one reading than this is not settled by them: taken too
# close together they make an oval of the gauge's error.
MOST_ERRORS = 5.0

Reading = namedtuple("Reading", ("height", "direction", "diameter", "gauge"))

# diameter: D_0 [mm]. harmonics: tuple of Harmonic, amplitudes of the radius. ovality: largest
# less smallest diameter of the oval [mm], None where nothing read could show one; its factor is
# how many times the random error of one reading it carries, mean_factor likewise of D_0. misfit:
# root mean square [mm].
Section = namedtuple(
    "Section",
    (
        "height", "readings", "diameter", "mean_factor", "harmonics", "ovality", "ovality_factor",
        "direction", "aligned", "misfit",
    ),
)  # fmt: skip

# diameter: in the middle of the heights [mm]. taper: how much larger at the greatest height than
# at the least [mm]. bell_mouth: how much larger at the ends than the line between middle and ends
# would have it [mm], None with fewer than three heights. factors as in Section. misfit [mm].
Barrel = namedtuple(
    "Barrel", ("diameter", "taper", "taper_factor", "bell_mouth", "bell_factor", "misfit")
)


def sections(readings):
    """List of Section, from the least height up.

    readings: list of Reading: height along the bore [mm], direction [deg], diameter [mm], gauge.
    """
    heights = []
    for reading in sorted([entry.height for entry in readings]):
        if not heights or reading - heights[-1] > SAME_HEIGHT:
            heights.append(reading)
    found = []
    for height in heights:
        here = [r for r in readings if abs(r.height - height) <= SAME_HEIGHT]
        found.append(_section(height, here))
    return found


def _section(height, readings):
    """What the readings at one height tell: as many terms as they settle, no more."""
    even = _directions(readings, TWO_POINT, 180.0)
    odd = _directions(readings, THREE_POINT, 120.0)
    first = min([r.direction for r in readings if r.gauge == TWO_POINT] or [0.0])
    aligned = len(even) == 2 and 80.0 <= abs(even[1] - even[0]) <= 100.0
    terms = [(0, 0.0, None)]
    if aligned:
        # Two directions square to each other: the oval is taken to lie along one of them.
        terms.append((2, first, TWO_POINT))
    elif len(even) >= 3:
        terms.extend([(2, 0.0, TWO_POINT), (2, 45.0, TWO_POINT)])
        if len(even) >= 6:
            terms.extend([(4, 0.0, TWO_POINT), (4, 22.5, TWO_POINT)])
    if len(odd) >= 3:
        terms.extend([(3, 0.0, THREE_POINT), (3, 30.0, THREE_POINT)])
    found, inverse, misfit = _solved(terms, readings)
    harmonics = []
    ovality = factor = None
    direction = first
    for order in (2, 3, 4):
        places = [i for i, term in enumerate(terms) if term[0] == order]
        if not places:
            continue
        a = found[places[0]]
        b = found[places[1]] if len(places) == 2 else 0.0
        size = math.sqrt(a * a + b * b)
        phase = terms[places[0]][1] + math.degrees(math.atan2(b, a)) / order
        harmonics.append(Harmonic(order, 0.5 * size, phase % (360.0 / order)))
        if order == 2:
            ovality = 2.0 * size
            factor = 2.0 * math.sqrt(max([inverse[i][i] for i in places]))
            direction = phase % 180.0
    return Section(
        height=height,
        readings=len(readings),
        diameter=found[0],
        mean_factor=math.sqrt(inverse[0][0]),
        harmonics=tuple(harmonics),
        ovality=ovality,
        ovality_factor=factor,
        direction=direction,
        aligned=aligned,
        misfit=misfit,
    )


def _directions(readings, gauge, period):
    """The different directions of one gauge's readings, within the period that repeats."""
    different = []
    for angle in sorted([r.direction % period for r in readings if r.gauge == gauge]):
        near_first = different and different[0] + period - angle < SAME_DIRECTION
        if not different or (angle - different[-1] >= SAME_DIRECTION and not near_first):
            different.append(angle)
    return different


def _solved(terms, readings):
    """(unknowns, inverse, misfit); lobes go from the end until the readings settle the rest."""
    values = [r.diameter for r in readings]
    while True:
        rows = []
        for r in readings:
            row = []
            for order, shift, gauge in terms:
                sees = gauge is None or gauge == r.gauge
                angle = order * math.radians(r.direction - shift)
                row.append(math.cos(angle) if sees else 0.0)
            rows.append(row)
        try:
            found, inverse = fit(rows, values)
            if max([inverse[i][i] for i in range(len(terms))]) <= MOST_ERRORS * MOST_ERRORS:
                break
        except OutOfRange:
            # The size alone is always settled: there is a lobe to leave out.
            pass
        terms[:] = [term for term in terms if term[0] != terms[-1][0]]
    left = 0.0
    for row, value in zip(rows, values):
        for a, b in zip(row, found):
            value -= a * b
        left += value * value
    return found, inverse, math.sqrt(left / len(values))


def barrel(found):
    """The Barrel of the sections: one height, two, or a parabola through three and more.

    found: list of Section, from the least height up.
    """
    count = len(found)
    low, high = found[0].height, found[-1].height
    if count == 1:
        return Barrel(
            diameter=found[0].diameter,
            taper=None,
            taper_factor=None,
            bell_mouth=None,
            bell_factor=None,
            misfit=0.0,
        )
    middle, half = 0.5 * (low + high), 0.5 * (high - low)
    rows = []
    values = []
    for section in found:
        t = (section.height - middle) / half
        rows.append([1.0, t, t * t] if count > 2 else [1.0, t])
        values.append(section.diameter)
    unknowns, inverse = fit(rows, values)
    left = 0.0
    noise = 0.0
    for row, value, section in zip(rows, values, found):
        for a, b in zip(row, unknowns):
            value -= a * b
        left += value * value
        noise = max(noise, section.mean_factor)
    bell = factor = None
    if count > 2:
        bell = unknowns[2]
        factor = noise * math.sqrt(inverse[2][2])
    return Barrel(
        diameter=unknowns[0],
        taper=2.0 * unknowns[1],
        taper_factor=2.0 * noise * math.sqrt(inverse[1][1]),
        bell_mouth=bell,
        bell_factor=factor,
        misfit=math.sqrt(left / count),
    )


METHODS = (
    Method(
        "bore-section",
        "Size and shape of the bore at one height",
        "two-point: D = D_0 + 2 U_2 cos 2(theta - phase) + 2 U_4 cos 4(theta - phase); "
        "three-point: D = D_0 + 2 U_3 cos 3(theta - phase); least squares",
        "two directions square to each other: oval taken along one of them; three: free; six: "
        "fourth order too; no lobes that would carry over five errors of one reading",
        ("beam",),
    ),
    Method(
        "bore-barrel",
        "Taper and bell-mouth",
        "D_0(t) = c_0 + c_1 t + c_2 t^2, t from -1 to 1 along the bore; taper 2 c_1, bell-mouth "
        "c_2",
        "two heights: taper alone; three and more: both",
        ("beam",),
    ),
)
