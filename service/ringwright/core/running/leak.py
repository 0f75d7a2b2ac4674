"""Steam that passes a ring: how much flows through a small opening, and how large the opening is.

Two ways lead past a ring that lies true against the bore. The gap: steam reaches it straight along
the bore from the high side, and also from behind the ring, where the steam stands that presses the
ring out; either way it must leave between the land and the bore, so that the opening is the gap
times the radial clearance of the land. A square cut is open to both. A stepped joint, and the two
turns of a double-turn ring, close the straight way; the way round the back stays open at the turn
that lies on the low side, as far as oil and a close fit do not seal it. And the side face: a film
between the ring and the worn side of its groove.

Rings in series are throttles in series. Pressure times volume is taken as constant along the way.
"""

import math
from collections import namedtuple

from ..problems import OutOfRange
from ..records import Method

# Discharge of a small rough opening, low, usual, high: 0.6 a sharp orifice, near 1 a nozzle.
DISCHARGE = (0.60, 0.75, 0.90)
# Land clearance at the gap over its mean: a piston resting on the bore has none below and twice the
# mean above, and the gap wanders.
LAND_PLACE = (0.5, 1.0, 1.5)
# Share of the gap's opening that steam from behind still finds where the straight way is closed.
# Nil is what the trade claims of such joints; all of it is what an unsealed back allows; no
# measurement is known, so the figure is the middle and its spread the whole.
ROUND_THE_BACK = (0.0, 0.5, 1.0)
# Mean distance between lapped faces that touch, low, usual, high [mm]; an estimate from roughness.
FACE_FILM = (0.001, 0.002, 0.004)

SATURATED_EXPONENT = 1.135  # Zeuner, dry saturated steam
SUPERHEATED_EXPONENT = 1.30
FULL_SUPERHEAT = 50.0  # [K] from which steam stays dry through the throat

MPA_PER_PSI = 6894.757293168361e-6
NAPIER_CHOKED = 70.0  # W [lb/s] = A [in2] p1 [psi abs]/70, p2 at most 3/5 p1
NAPIER_OPEN = 42.0  # W = A p2/42 sqrt(3 (p1 - p2)/(2 p2)) above that
# lb/s per in2 and psi abs, in kg/s per mm2 and MPa abs.
NAPIER_UNIT = 0.45359237 / (645.16 * MPA_PER_PSI)

ANGLES = {"angled-45": 45.0, "angled-60": 60.0}  # of the cut to the ring's side [deg]

# Flow of n like throttles in series as a table: ratios of pressure, falling, and the flow at each.
Series = namedtuple("Series", ("ratios", "flows"))

METHODS = (
    Method(
        "napier-flow",
        "Flow of steam by Napier's rule",
        "W = A p1/70 where p2 <= 3/5 p1, else A p2/42 sqrt(3 (p1 - p2)/(2 p2)); lb/s, in2, psi "
        "absolute",
        "dry saturated steam, small openings",
        ("napier",),
    ),
    Method(
        "choked-flow",
        "Flow of steam through an opening",
        "W = A sqrt(p1/v1) sqrt(2k/(k - 1) (x^(2/k) - x^((k + 1)/k))), x = p2/p1, not less than "
        "the critical (2/(k + 1))^(k/(k - 1))",
        "k 1.135 dry saturated to 1.30 from 50 K of superheat; within 1.5 % of isentropic steam",
        ("zeuner", "orifice"),
    ),
    Method(
        "throttles-in-series",
        "Flow past several rings",
        "one flow through n like openings, p v constant between them",
        "equal openings, nothing lost between rings",
        ("orifice",),
    ),
    Method(
        "gap-opening",
        "Opening of the gap",
        "A = gap * (d1 - d_p)/2 * share * discharge; share 1 square, sin A to 1 angled, 0 to 1 "
        "stepped and double-turn",
        "ring true to the bore",
        ("leak-paths", "practice"),
    ),
    Method(
        "side-face-leak",
        "Leak past the side face",
        "W = pi d1 h^3 (p1^2 - p2^2)/(24 mu L p v), h^3 = 2 h1^2 h2^2/(h1 + h2) for a worn, "
        "tapered side",
        "a thin film of steam, laminar; not more than the same opening choked",
        ("film",),
    ),
    Method(
        "light-leak",
        "Leak past a light between ring and bore",
        "A = 2/3 * widest light * its length * discharge",
        "a light shaped like a flat arch",
        ("orifice",),
    ),
)


def exponent(superheat):
    """Exponent k of expansion through a throat [1]: 1.135 dry, rising to 1.30 at 50 K of superheat.

    superheat [K], 0 or more. The flow is within 1.5 % of isentropic steam, 0.3 to 3 MPa.
    Source: Zeuner, 1.135 and 1.30; the line between fitted to isentropic steam.
    """
    share = min(max(superheat, 0.0) / FULL_SUPERHEAT, 1.0)
    return SATURATED_EXPONENT + share * (SUPERHEATED_EXPONENT - SATURATED_EXPONENT)


def critical_ratio(k):
    """Ratio of pressures at and below which the flow is choked, (2/(k + 1))^(k/(k - 1)) [1].

    k: exponent [1], more than 1.
    """
    return (2.0 / (k + 1.0)) ** (k / (k - 1.0))


def flow_number(ratio, k):
    """W/(A sqrt(p1/v1)) of one opening [1].

    sqrt(2k/(k - 1) (x^(2/k) - x^((k + 1)/k))), x the greater of p2/p1 and the critical ratio

    ratio: p2/p1 [1], 0 to 1. k: exponent [1]. Raises OutOfRange for a ratio outside that.
    """
    if not 0.0 <= ratio <= 1.0:
        raise OutOfRange("ratio", ratio, "0 to 1", "flow through an opening")
    x = max(ratio, critical_ratio(k))
    square = x ** (2.0 / k)
    return math.sqrt(max(0.0, 2.0 * k / (k - 1.0) * square * (1.0 - x ** (1.0 - 1.0 / k))))


def napier_flow(area, pressure, back_pressure):
    """Steam through one opening by Napier's rule [kg/s], without a discharge factor.

    W = A p1/70 where p2 <= 3/5 p1, else A p2/42 sqrt(3 (p1 - p2)/(2 p2)) [lb/s, in2, psi absolute]

    area [mm2]. pressure, back_pressure: absolute [MPa]. Dry saturated steam.
    Example: 100 psi gauge, 1 in2, 5899 lb/h. Source: Napier.
    """
    if back_pressure >= pressure:
        return 0.0
    if back_pressure <= 0.6 * pressure:
        return NAPIER_UNIT * area * pressure / NAPIER_CHOKED
    head = 1.5 * (pressure - back_pressure) / back_pressure
    return NAPIER_UNIT * area * back_pressure / NAPIER_OPEN * math.sqrt(head)


def throttles_in_series(number, k, points=12):
    """Flow of `number` like openings one after another, as a table: a Series.

    Marched from the last opening back to the first: with z the pressure before an opening over
    the flow, z * flow_number(z_next/z) = 1. Each flow is W sqrt(p1 v1)/(A p1), as flow_number.
    number: of openings, 1 to 12. k: exponent [1]. points: rows of the table.
    Raises OutOfRange for another number.
    """
    if not 1 <= number <= 12:
        raise OutOfRange("number", number, "1 to 12 rings", "throttles in series")
    critical = critical_ratio(k)
    choked = flow_number(critical, k)
    ratios = []
    flows = []
    for row in range(points, 0, -1):
        # z after the last opening: choked to begin with, then rising towards no flow at all.
        after = critical / choked * points / row
        z = after
        for _ in range(number):
            z = _before(z, k, critical, choked)
        ratios.append(after / z)
        flows.append(1.0 / z)
    ratios.append(1.0)
    flows.append(0.0)
    return Series(ratios, flows)


def series_flow(series, ratio):
    """Flow number of throttles in series at a ratio of the last pressure to the first [1].

    series: from throttles_in_series. ratio: 0 to 1. Between rows the square of the flow runs
    straight, which is right at both ends; within 0.6 % with a dozen rows.
    """
    ratios, flows = series
    if ratio <= ratios[0]:
        return flows[0]
    low, high = 0, len(ratios) - 1
    while high - low > 1:
        middle = (low + high) // 2
        if ratios[middle] <= ratio:
            low = middle
        else:
            high = middle
    share = (ratio - ratios[low]) / (ratios[high] - ratios[low])
    first, second = flows[low] * flows[low], flows[high] * flows[high]
    return math.sqrt(max(0.0, first + share * (second - first)))


def gap_share(ring_type, end_cut):
    """Share of gap times land clearance that is open to steam: (low, usual, high) [1].

    ring_type: "plain" or "double-turn". end_cut: "square", "angled-45", "angled-60" or "stepped".
    Square 1. Angled: the passage is sin A of the gap wide, its mouth the whole gap. Stepped and
    double-turn: no straight way, only the way round the back.
    Source: geometry of the paths; the double-turn ring's share common practice against geometry.
    """
    if ring_type == "double-turn" or end_cut == "stepped":
        return ROUND_THE_BACK
    if end_cut in ANGLES:
        narrow = math.sin(math.radians(ANGLES[end_cut]))
        return narrow, 0.5 * (1.0 + narrow), 1.0
    return 1.0, 1.0, 1.0


def gap_opening(gap, land_clearance):
    """Area by which steam leaves the gap [mm2]: gap times radial clearance of the land.

    gap: closed gap as it runs [mm]. land_clearance: radial, as it runs [mm]. Nothing below nought.
    """
    return max(gap, 0.0) * max(land_clearance, 0.0)


def light_opening(light, length):
    """Area of a light between ring and bore [mm2]: two thirds of widest times length.

    light: widest radial light [mm]. length: along the circumference [mm].
    """
    return 2.0 / 3.0 * light * length


def film_cubed(film, wear):
    """Cube of the even film that leaks as much as one tapering from `film` to film + wear [mm3].

    h^3 = 2 h1^2 h2^2/(h1 + h2). film, wear [mm], 0 or more. Source: laminar film, derived.
    """
    wide = film + wear
    if wide <= 0.0:
        return 0.0
    return 2.0 * film * film * wide * wide / (film + wide)


def face_flow(*, bore, cube, seat, squares, pressure_volume, viscosity, number=1):
    """Steam past the side faces of `number` rings in series, laminar [kg/s].

    W = pi d1 h^3 (p1^2 - p2^2)/(24 mu L p v n)

    bore: d1 [mm]. cube: h^3 of the film, see film_cubed [mm3]. seat: L, radial breadth that bears
    [mm]. squares: p1^2 - p2^2 of the absolute pressures, or its mean over time [MPa2].
    pressure_volume: p v [MPa m3/kg]. viscosity: mu [Pa s].
    Source: laminar flow of a gas between flat plates.
    """
    # (mm mm3 / mm) is 1e-9 m3; MPa2 over MPa m3/kg is 1e6.
    return (
        1e-3
        * math.pi
        * bore
        * cube
        * squares
        / (24.0 * viscosity * seat * pressure_volume * number)
    )


def _before(after, k, critical, choked):
    """z before an opening with z `after` it, where z * flow_number(after/z) = 1; Newton."""
    z = 1.0 / choked
    if after <= critical * z:
        return z
    # Start from the ellipse that the flow number nearly is: (after - critical z)^2 in q^2 z^2 - g.
    q = 1.0 - critical
    g = q * q / (choked * choked)
    a = q * q - critical * critical
    b = critical * after
    c = after * after + g
    root = math.sqrt(max(0.0, b * b + a * c))
    z = c / (b + root)
    for _ in range(4):
        x = after / z
        low = x ** (2.0 / k)
        high = x ** (1.0 + 1.0 / k)
        inside = 2.0 * k / (k - 1.0) * (low - high)
        if inside <= 0.0:
            break
        number = math.sqrt(inside)
        slope = (2.0 * low - (k + 1.0) * high) / ((k - 1.0) * x * number)
        step = (z * number - 1.0) / (number - x * slope)
        z -= step
        if abs(step) <= 1e-14 * z:
            break
    return z
