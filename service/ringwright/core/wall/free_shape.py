"""The shape of the free ring, told as the moment that would press it to a round wall everywhere.

conforming moment = r^2*(1/r - free curvature) at every node of the strip, in mm (see strip.py).
"""

import math

from ..least_squares import fit
from ..problems import Fault, InputProblem, OutOfRange
from ..records import Method
from ..ring import heat_set

# Terms of the curvature fitted to measured radii: enough for any way of setting, few enough for a
# rule.
MOST_TERMS = 6
RADII_PER_TERM = 3
LARGEST_TURN = 2.0 * math.pi


def uniform(springiness, radius, nodes, step):
    """Conforming moment of a ring that presses alike everywhere, K*r*(1 - cos psi) [mm].

    springiness: K (see spring.springiness). radius: r [mm]. nodes, step: of the strip.
    """
    size = springiness * radius
    return [size * (1.0 - math.cos(i * step)) for i in range(nodes)]


def round_arc(curvature_change, radius, nodes):
    """Conforming moment of a free ring that is one round arc, kappa0*r^2 [mm].

    curvature_change: kappa0 = 1/r - 1/R [1/mm]. radius: r [mm]. nodes: of the strip.
    """
    return [curvature_change * radius * radius] * nodes


def light_tight(curvature_change, radius, nodes, step):
    """Conforming moment of a round-set ring that closes light-tight [mm].

    That of `round_arc` pressed into a round wall: kappa0*r^2 over the back, falling as
    sin psi/sin psi0 to nil over the slack length behind each free end.
    curvature_change: kappa0 [1/mm]. radius: r [mm]. nodes, step: of the strip.
    """
    size = curvature_change * radius * radius
    peak = size * heat_set.PEAK_MOMENT
    last = nodes - 1
    moment = []
    for i in range(nodes):
        psi = step * (i if 2 * i <= last else last - i)
        moment.append(size if psi >= heat_set.SLACK_RADIANS else peak * math.sin(psi))
    return moment


def measured(readings, thickness, radius, turns, nodes):
    """Conforming moment of a free ring given by radii of its outside [mm].

    readings: list of (angle [deg], radius [mm]) from one free end to the other. thickness [mm].
    radius: neutral radius in the bore, r [mm]. turns: 1 or 2. nodes: of the strip.
    A smooth shape is fitted first (its curvature a few cosines along the strip, its centre free),
    since curvature taken from single readings would be noise; then its curvature is reckoned
    exactly.
    Raises InputProblem where there are too few readings or they do not span the ring.
    """
    first = readings[0][0]
    span = math.radians(readings[-1][0] - first)
    _check_span(readings, span, turns)
    terms = min(MOST_TERMS, len(readings) // RADII_PER_TERM - 1)
    # The fit tells how far the ring lies from a circle through its first end.
    circle = readings[0][1] - 0.5 * thickness
    rows = []
    values = []
    for angle, outside in readings:
        phi = math.radians(angle - first)
        row = [math.cos(phi), math.sin(phi)]
        row.extend([_bulge(j * math.pi / span, phi)[0] for j in range(terms)])
        rows.append(row)
        values.append(outside - readings[0][1])
    try:
        found, _ = fit(rows, values)
    except OutOfRange:
        raise InputProblem(
            [
                Fault(
                    ("free_shape",),
                    "spread",
                    "the radii are too unevenly spaced to tell the shape between them",
                    "give at least nine, evenly spaced from one free end to the other",
                )
            ]
        ) from None
    return _conforming(found, circle, span, terms, radius, nodes)


def _check_span(readings, span, turns):
    rising = True
    for (before, _), (after, _) in zip(readings, readings[1:]):
        rising = rising and after > before
    wanted = turns * LARGEST_TURN
    if len(readings) < 9 or not rising or not 0.75 * wanted <= span <= wanted * 1.001:
        raise InputProblem(
            [
                Fault(
                    ("free_shape",),
                    "spread",
                    "the radii must run from one free end to the other, each angle larger than "
                    "the last",
                    "give nine or more, the first and last at the free ends, %d degrees or a "
                    "little less apart" % (360 * turns),
                )
            ]
        )


def _bulge(nu, phi):
    """(w, w', w'') with w'' + w = cos(nu*phi): the shape that a curvature of that wave gives."""
    if abs(nu - 1.0) < 1e-6:
        s, c = math.sin(phi), math.cos(phi)
        return 0.5 * phi * s, 0.5 * (s + phi * c), c - 0.5 * phi * s
    scale = 1.0 / (1.0 - nu * nu)
    c, s = scale * math.cos(nu * phi), scale * math.sin(nu * phi)
    return c, -nu * s, -nu * nu * c


def _conforming(found, circle, span, terms, radius, nodes):
    """The exact curvature of the fitted shape, taken at equal steps of length along it."""
    count = 2 * nodes
    lengths = [0.0]
    curvatures = []
    speed_before = None
    for i in range(count + 1):
        phi = span * i / count
        c, s = math.cos(phi), math.sin(phi)
        rho = circle + found[0] * c + found[1] * s
        slope = found[1] * c - found[0] * s
        second = circle - rho
        for j in range(terms):
            w, w_1, w_2 = _bulge(j * math.pi / span, phi)
            size = found[2 + j]
            rho += size * w
            slope += size * w_1
            second += size * w_2
        square = rho * rho + slope * slope
        speed = math.sqrt(square)
        curvatures.append((square + slope * slope - rho * second) / (square * speed))
        if speed_before is not None:
            # In steps of half an angle: only shares of the whole are asked.
            lengths.append(lengths[-1] + speed + speed_before)
        speed_before = speed
    moment = []
    k = 0
    for i in range(nodes):
        place = lengths[-1] * i / (nodes - 1)
        while k < count - 1 and lengths[k + 1] < place:
            k += 1
        part = (place - lengths[k]) / (lengths[k + 1] - lengths[k])
        curvature = curvatures[k] + part * (curvatures[k + 1] - curvatures[k])
        moment.append(radius - radius * radius * curvature)
    return moment


METHODS = (
    Method(
        "free-curvature",
        "Free shape as curvature",
        "spread: K r (1 - cos psi); round: kappa0 r^2; round and light-tight: kappa0 r^2, and "
        "kappa0 r^2 sin psi/sin psi0 behind each tip",
        "set evenly all the way round",
        ("contact",),
    ),
    Method(
        "measured-shape",
        "Free shape from measured radii",
        "rho(phi) = circle + shift + sum c_j w_j, w_j'' + w_j = cos(j pi phi/span); curvature "
        "(rho^2 + 2 rho'^2 - rho rho'')/(rho^2 + rho'^2)^(3/2)",
        "smooth shapes; at most six terms, one for every three readings",
        ("contact",),
    ),
)
