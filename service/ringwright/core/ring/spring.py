"""A plain ring set for uniform wall pressure: how far it springs, how hard it presses, its stress.

Thin curved beam. The load per unit length pressure * width acts at the outside radius, the bending
is reckoned at the neutral radius, so that

    M(psi) = p * h * r_o * r * (1 - cos psi)            psi from the free end

r_o = bore/2, r = (bore - thickness)/2. K = p*h*r_o*r^2/(E*I) measures how springy the ring is: the
share of its curvature that the wall takes up at the neutral axis, half the share at the back.
"""

import math
from collections import namedtuple

from ..problems import OutOfRange
from ..records import Method

# Where the back of the free ring would be straight (2*K = 1) none can be made; a little before.
LARGEST_SPRINGINESS = 0.45
# Checked against nonlinear solid finite elements up to here (mechanics: d1/a1 = 15..40).
CHECKED_SPRINGINESS = 0.055

# 12-point Gauss-Legendre rule on (-1, 1), positive half (Abramowitz and Stegun, table 25.4).
_GAUSS_12 = (
    (0.1252334085114689, 0.2491470458134028),
    (0.3678314989981802, 0.2334925365383548),
    (0.5873179542866175, 0.2031674267230659),
    (0.7699026741943047, 0.1600783285433462),
    (0.9041172563704749, 0.1069393259953184),
    (0.9815606342467193, 0.0471753363865118),
)


def _half_turn_rule():
    """(phi, phi + sin phi, weight) over 0..pi from the back of the ring to its free end."""
    rows = []
    for node, weight in _GAUSS_12:
        for sign in (-1.0, 1.0):
            phi = (1.0 + sign * node) * math.pi / 2.0
            rows.append((phi, phi + math.sin(phi), weight * math.pi / 2.0))
    return tuple(rows)


_HALF_TURN = _half_turn_rule()

ClosedStress = namedtuple("ClosedStress", ("nominal", "tension", "compression"))
DiametralForce = namedtuple("DiametralForce", ("to_close_gap", "to_bore_size"))


def neutral_radius(bore, thickness):
    """Radius of the neutral line of the closed ring, r = (d1 - a1)/2 [mm].

    bore: closed outside diameter [mm]. thickness: radial thickness [mm].
    """
    return 0.5 * (bore - thickness)


def springiness(pressure, bore, thickness, modulus):
    """K = p*h*r_o*r^2/(E*I) = 12*p*r_o*r^2/(E*a1^3) [1]; the width cancels.

    pressure: uniform wall pressure, 0 up [MPa]. bore: above thickness [mm]. thickness: radial,
    above 0 [mm]. modulus: above 0 [MPa]. Raises ZeroDivisionError for no thickness or modulus.
    Source: derived (thin curved beam).
    """
    r = 0.5 * (bore - thickness)
    return 6.0 * pressure * bore * r * r / (modulus * thickness * thickness * thickness)


def gap_of_springiness(k, radius):
    """Change of gap from bore to free for springiness `k`, with large deflection [mm].

    m = 2*r * integral over 0..pi of cos(phi - K*(phi + sin phi)) d phi

    exact for an inextensible thin strip whose gap in the bore is small, because the closed shape
    is the known circle and the moment on it is known; the series is
    3*pi*r*K*(1 + 5*K/6 - 1.159*K^2 ...). The straight line between the ends.
    k: 0 to 0.45 [1]. radius: neutral radius in the bore [mm].
    Raises OutOfRange beyond, where the back of the free ring would bend past straight.
    Source: derived; nonlinear solid finite elements within 0.05 % for k <= 0.055, d1/a1 from 20 up,
    and 0.1 % at d1/a1 = 15.
    """
    if not 0.0 <= k <= LARGEST_SPRINGINESS:
        raise OutOfRange("springiness", k, "0 to 0.45", "beam")
    total = 0.0
    for phi, lever, weight in _HALF_TURN:
        total += weight * math.cos(phi - k * lever)
    return 2.0 * radius * total


def springiness_of_gap(gap_change, radius):
    """The springiness whose free gap is larger than the closed one by `gap_change` [1].

    gap_change: 0 to 4.64 times the radius [mm]. radius: neutral radius in the bore [mm].
    Newton on gap_of_springiness to the last digit. Raises OutOfRange for a gap no ring can have.
    """
    wanted = gap_change / (2.0 * radius)
    k = gap_change / (3.0 * math.pi * radius)
    k = min(k / (1.0 + 5.0 * k / 6.0), LARGEST_SPRINGINESS)
    for _ in range(20):
        value = -wanted
        slope = 0.0
        for phi, lever, weight in _HALF_TURN:
            angle = phi - k * lever
            value += weight * math.cos(angle)
            slope += weight * lever * math.sin(angle)
        step = value / slope
        k -= step
        if not -1e-9 <= k <= LARGEST_SPRINGINESS:
            limit = "what a ring of this radius can open to"
            raise OutOfRange("gap_change", gap_change, limit, "beam")
        if abs(step) <= 1e-15:
            break
    return k


def gap_change(pressure, bore, thickness, modulus):
    """Change of gap from the bore to free for a uniform wall pressure, m [mm].

    First order 9*pi/4 * p*d1*(d1 - a1)^3/(E*a1^3); worked here with large deflection, along the
    neutral line (see outer_edge_gap_factor). pressure: 0 up [MPa]. bore, thickness [mm]. modulus
    [MPa]. Raises OutOfRange (see gap_of_springiness). Source: derived; Walshaw's point, and
    solid finite elements (see gap_of_springiness).
    """
    k = springiness(pressure, bore, thickness, modulus)
    return gap_of_springiness(k, neutral_radius(bore, thickness))


def first_order_gap_change(pressure, bore, thickness, modulus):
    """The book form m = 9*pi/4 * p*d1*(d1 - a1)^3/(E*a1^3) [mm].

    The large deflection is 1 to 4 % more at d1/a1 = 25..40 and 0.06 MPa. pressure [MPa]. bore,
    thickness [mm]. modulus [MPa]. Source: Khurmi and Gupta and others print it.
    """
    ratio = (bore - thickness) / thickness
    return 2.25 * math.pi * pressure * bore * ratio * ratio * ratio / modulus


def pressure_from_gap(gap, bore, thickness, modulus):
    """The uniform wall pressure of a ring whose gap grows by `gap` from bore to free [MPa].

    gap: change of gap m along the neutral line [mm]. bore, thickness [mm], modulus [MPa].
    Inverse of gap_change, to the last digit. Raises OutOfRange for a gap no ring can have.
    """
    r = neutral_radius(bore, thickness)
    k = springiness_of_gap(gap, r)
    return k * modulus * thickness * thickness * thickness / (6.0 * bore * r * r)


def closed_stress(pressure, bore, thickness):
    """Bending stress at the back of the ring in the bore, as three numbers [MPa].

    nominal 3*p*(d1/a1)*(d1/a1 - 1), as books print it; with bar curvature and hoop thrust the
    outside carries tension 3*p*(d1/a1)*(d1/a1 - 2) and the inside compression 3*p*(d1/a1)^2.
    pressure [MPa], bore and thickness [mm]. Within 1.3 % of finite elements at d1/a1 = 15..40.
    """
    ratio = bore / thickness
    p = 3.0 * pressure * ratio
    return ClosedStress(p * (ratio - 1.0), p * (ratio - 2.0), p * ratio)


def tangential_force(pressure, bore, width):
    """Ft = p*h1*d1/2, the pull of a flexible band that closes the ring [N], without friction.

    pressure: the band's own, the same all round [MPa]. bore, width of the ring [mm].
    """
    return 0.5 * pressure * width * bore


def diametral_force(tangential):
    """Two thumbs across the ring at 90 degrees to the gap [N], without friction, small deflection.

    to_close_gap = 6*pi/(4 + pi) * Ft closes the gap of any plain ring; to_bore_size =
    (1 + 4/pi) * Ft brings that diameter of a uniform ring down to the bore. Large deflection takes
    0.4 % off at a springiness of 0.055. Ring makers print 2.05 to 2.21 Ft. tangential: Ft [N].
    Source: derived; large-deflection beam and nonlinear solid finite elements (2.628) agree.
    """
    return DiametralForce(
        6.0 * math.pi / (4.0 + math.pi) * tangential, (1.0 + 4.0 / math.pi) * tangential
    )


def opening_to_clear(thickness, bore, gap, clearance):
    """Gap between the ends pulled apart that lets the ring pass over the piston [mm].

    g = (3*pi - 14.1*D^-0.729)*(a1 - c)*(1 + 1.17*D^-0.7*c/a1)*(1 + 0.021*sqrt(D)*m/d1), D = d1/a1
    The books say 8*a1. thickness: radial [mm]. bore [mm]. gap: change of gap m, 0 to 0.2*d1 [mm].
    clearance: radial piston clearance c, 0 to 0.3*a1 [mm].
    Source: fitted to a large-deflection beam with the largest circle that fits in its bore, within
    0.5 % for d1/a1 = 15..50 and 0.8 % at 12; solid finite elements clear within 0.01 % of the bore.
    """
    ratio = bore / thickness
    size = math.log(ratio)
    factor = 3.0 * math.pi - 14.1 * math.exp(-0.729 * size)
    spared = clearance / thickness
    factor = factor * (1.0 - spared) * (1.0 + 1.17 * math.exp(-0.7 * size) * spared)
    return factor * thickness * (1.0 + 0.021 * math.sqrt(ratio) * gap / bore)


def opening_stress(opening, gap, bore, thickness, modulus):
    """Largest stress, tension inside the back, when the ends are pulled apart to `opening` [MPa].

    4*E*a1*(g - m)/(3*pi*(d1 - a1)^2) * (1 + 5/(6*(d1/a1 - 1))) / (1 + 0.30*(g + m/2)/d1)
    opening: gap g between the ends, m to 9*a1 [mm]; below m the stress is negative, the ring is
    being closed. gap: change of gap m, bore to free [mm]. bore, thickness [mm]. modulus [MPa].
    Source: derived; within 0.5 % of a large-deflection beam at d1/a1 = 12..50 and of nonlinear
    solid finite elements.
    """
    span = bore - thickness
    nominal = nominal_opening_stress(opening, gap, bore, thickness, modulus)
    curvature = 1.0 + 5.0 * thickness / (6.0 * span)
    return nominal * curvature / (1.0 + 0.30 * (opening + 0.5 * gap) / bore)


def nominal_opening_stress(opening, gap, bore, thickness, modulus):
    """The book form 4*E*a1*(g - m)/(3*pi*(d1 - a1)^2) [MPa], 6 to 9 % high at g = 8*a1.

    opening g, gap m, bore, thickness [mm], modulus [MPa].
    """
    span = bore - thickness
    return 4.0 * modulus * thickness * (opening - gap) / (3.0 * math.pi * span * span)


def free_ovality(gap, bore, thickness):
    """How much wider across than along the gap a free ring for uniform pressure is [mm].

    m/6 * (1 + 0.66*m/r), r = (d1 - a1)/2; a ring set round shows about none. The bench check of
    the free shape. gap: change of gap m, 0 to 0.5*r [mm]. bore, thickness [mm].
    Source: derived (m/6 first order), the bracket fitted to the exact thin strip, within 1 %.
    """
    radius = 0.5 * (bore - thickness)
    return gap / 6.0 * (1.0 + 0.66 * gap / radius)


def outer_edge_gap_factor(bore, thickness):
    """How much larger a free gap reads on the outer edge than on the neutral line [1].

    1 + 2/(3*(d1/a1 - 1)); as much smaller on the inner edge. bore, thickness [mm].
    """
    return 1.0 + 2.0 * thickness / (3.0 * (bore - thickness))


METHODS = (
    Method(
        "uniform-gap",
        "Free gap of a ring of uniform wall pressure",
        "m = 2 r integral(0..pi) cos(phi - K (phi + sin phi)) dphi, K = 6 p d1 r^2/(E a1^3); "
        "first order 9 pi/4 p d1 (d1 - a1)^3/(E a1^3)",
        "thin ring, d1/a1 from 15 to 40, K up to 0.055 within 0.1 % of solid finite elements",
        ("beam", "walshaw", "khurmi"),
    ),
    Method(
        "uniform-pressure",
        "Wall pressure from the free gap",
        "inverse of uniform-gap",
        "as uniform-gap",
        ("beam", "walshaw"),
    ),
    Method(
        "closed-stress",
        "Stress in the bore",
        "nominal 3 p (d1/a1)(d1/a1 - 1); outside 3 p (d1/a1)(d1/a1 - 2), inside 3 p (d1/a1)^2",
        "uniform pressure, d1/a1 from 15 to 40, within 1.3 % of solid finite elements",
        ("beam", "khurmi"),
    ),
    Method(
        "tangential-force",
        "Tangential force",
        "Ft = p_c h1 d1/2, p_c the even pressure of a flexible band that closes the ring",
        "a band without friction",
        ("beam",),
    ),
    Method(
        "diametral-force",
        "Diametral force",
        "Fd = 6 pi/(4 + pi) Ft to close the gap; to bring that diameter to the bore (1 + 4/pi) Ft, "
        "set round 1.910 Ft (bound), 1.874 Ft (sprung)",
        "one turn, without friction; makers print 2.05 to 2.21 Ft",
        ("beam",),
    ),
    Method(
        "opening-stress",
        "Stress with the ends pulled apart",
        "4 E a1 (g - m)/(3 pi (d1 - a1)^2) (1 + 5/(6 (d1/a1 - 1)))/(1 + 0.30 (g + m/2)/d1)",
        "d1/a1 from 12 to 50, within 0.5 % of a large-deflection beam and of finite elements",
        ("beam", "blake"),
    ),
    Method(
        "opening-to-clear",
        "Opening that clears the piston",
        "g = (3 pi - 14.1 D^-0.729)(a1 - c)(1 + 1.17 D^-0.7 c/a1)(1 + 0.021 sqrt(D) m/d1), "
        "D = d1/a1, c = (d1 - d_p)/2",
        "d1/a1 from 15 to 50, within 0.5 % of a large-deflection beam",
        ("beam",),
    ),
)
