"""Rings where they break: turned through themselves, sprung over a plug, wound on like a key ring.

Each turn of a double-turn ring, seen sideways, is a circular cantilever of 360 degrees with its root
at the bridge. An axial force P at the free end bends it out of plane, M = P*r*sin(psi), and twists it,
T = P*r*(1 - cos psi), psi from the free end.
"""

import math
from collections import namedtuple

from .records import Method

# Moment a quarter turn behind the tip, over the even one, of a ring that rides on its tips and its back.
_PEAK = 1.1866
# The same with only half a turn on the piston yet, the worst moment of winding a ring on, and the
# share of it that bending sideways over the piston's edge adds for turns up to as wide as thick.
_WOUND = 1.273 * 1.04

TurningThrough = namedtuple("TurningThrough", ("force", "bending", "twist", "equivalent"))
WoundOn = namedtuple("WoundOn", ("spread_out", "hurried_low", "hurried_high"))


# Sums over odd n of 1/n^5 (31/32 zeta(5)) and of (-1)^((n-1)/2)/n^2 (Catalan's constant).
_ODD_FIFTH = 1.0045237627951382
_CATALAN = 0.915965594177219
_PI_5 = math.pi * math.pi * math.pi * math.pi * math.pi


def torsion_constant(longer, shorter):
    """J of a rectangle [mm4], by the series of Saint-Venant's solution.

    J = b*t^3*(1/3 - 64/pi^5 * t/b * sum over odd n of tanh(n*pi*b/(2*t))/n^5), b >= t, summed
    as its limit less 2/(1 + exp(n*pi*b/t)) in place of each 1 - tanh.
    longer, shorter: sides in either order [mm].
    """
    b, t = (longer, shorter) if longer >= shorter else (shorter, longer)
    q = math.exp(-math.pi * b / t)
    q3 = q * q * q
    total = _ODD_FIFTH - 2.0 * q / (1.0 + q) - 2.0 * q3 / (243.0 * (1.0 + q3))
    return b * t * t * t * (1.0 / 3.0 - 64.0 / _PI_5 * t / b * total)


def torsion_stress(torque, longer, shorter):
    """Largest shear stress on the longer sides and on the shorter, of a twisted rectangle [MPa].

    G*theta*t*(1 - 8/pi^2 * sum over odd n of 1/(n^2*cosh(n*pi*b/(2*t)))) at the middle of a
    longer side; G*theta*t*8/pi^2 * alternating sum of tanh(n*pi*b/(2*t))/n^2 at that of a
    shorter. torque [N mm]; longer, shorter: sides, in either order [mm]. Saint-Venant's series;
    Timoshenko and Goodier print its values.
    """
    b, t = (longer, shorter) if longer >= shorter else (shorter, longer)
    twist = torque / torsion_constant(b, t) * t
    s = math.exp(-0.5 * math.pi * b / t)
    q = s * s
    across = along = 0.0
    power, square, sign = s, q, 1.0
    for n in (1, 3, 5, 7, 9, 11):
        across += 2.0 * power / (n * n * (1.0 + square))
        along += sign * 2.0 * square / (n * n * (1.0 + square))
        power *= q
        square *= q * q
        sign = -sign
    eight = 8.0 / (math.pi * math.pi)
    return twist * (1.0 - eight * across), twist * eight * (_CATALAN - along)


def axial_stiffness(radius, thickness, width, modulus, poisson):
    """Axial force at the free end for each mm it moves, one turn [N/mm].

    1/(r^3*(pi/(E*Ix) + 3*pi/(G*J))), Ix = a*h^3/12. radius: neutral [mm]. thickness a, width h of
    one turn [mm]. modulus [MPa]. poisson [1]. Within 0.1 % of frame finite elements.
    """
    bending = modulus * thickness * width * width * width / 12.0
    shear_modulus = 0.5 * modulus / (1.0 + poisson)
    twisting = shear_modulus * torsion_constant(width, thickness)
    cube = radius * radius * radius
    return 1.0 / (cube * math.pi * (1.0 / bending + 3.0 / twisting))


def turning_through(blank_width, radius, thickness, turn_width, modulus, poisson, brittle):
    """What turning a double-turn blank inside out does to it: TurningThrough(N, MPa, MPa, MPa).

    Each free end must move the full blank width. `equivalent` is the worst along the turn: the
    largest principal stress for a brittle metal, the shear-energy stress for a tough one.
    blank_width, radius (neutral), thickness, turn_width: of the blank as sawn [mm]. modulus
    [MPa]. poisson [1]. brittle: True for grey iron.
    """
    force = blank_width * axial_stiffness(radius, thickness, turn_width, modulus, poisson)
    bending = 6.0 * force * radius / (thickness * turn_width * turn_width)
    long_side, short_side = torsion_stress(force * radius, thickness, turn_width)
    # The bending is largest along the two faces that look sideways; where those are the long
    # sides of the section the larger shear meets it there, else the smaller.
    sideways, radial = (
        (long_side, short_side) if thickness >= turn_width else (short_side, long_side)
    )
    worst = _worst_together(bending, sideways, brittle)
    opposite = 2.0 * radial if brittle else 2.0 * math.sqrt(3.0) * radial
    return TurningThrough(force, bending, 2.0 * long_side, max(worst, opposite))


def _worst_together(bending, shear, brittle):
    """Largest over psi of the equivalent of bending*sin(psi) with shear*(1 - cos(psi)) [MPa].

    Brittle: s/2 + sqrt(s^2/4 + t^2). With x = tan(psi/2), u = sqrt(A^2 + 4 B^2 x^2) it is
    x*(A + u)/(1 + x^2), stationary where A*u^2 - 8*B^2*u + A*(4*B^2 - A^2) = 0. Tough: the
    square is A^2*(1 - c^2) + 3*B^2*(1 - c)^2 in c = cos(psi), stationary or at c = -1.
    """
    a2 = bending * bending
    b2 = shear * shear
    if brittle:
        root = math.sqrt(16.0 * b2 * b2 - 4.0 * a2 * b2 + a2 * a2)
        u = (4.0 * b2 + root) / bending
        x2 = (u * u - a2) / (4.0 * b2)
        return math.sqrt(x2) * (bending + u) / (1.0 + x2)
    if a2 <= 6.0 * b2:
        return 2.0 * math.sqrt(3.0 * b2)
    cosine = 3.0 * b2 / (3.0 * b2 - a2)
    return math.sqrt(a2 * (1.0 - cosine * cosine) + 3.0 * b2 * (1.0 - cosine) * (1.0 - cosine))


def grip_force(blank_width, slit, relief, radius, thickness, turn_width, modulus, poisson):
    """Axial force at each free end that presses the turns together once turned back [N].

    The heat relaxes the share eta of the sideways deflection while the ring is inside out, so that
    turned back each end is held eta*(blank width) - slit from where it now wants to be; 0 where
    that is negative. blank_width, slit, radius, thickness, turn_width [mm]. relief 0 to 1.
    modulus [MPa]. poisson [1].
    """
    held = relief * blank_width - slit
    if held <= 0.0:
        return 0.0
    return held * axial_stiffness(radius, thickness, turn_width, modulus, poisson)


def even_opening_stress(bore, thickness, modulus):
    """S = 2*E*a1^2/(d1^2 - a1^2): opened evenly from the bore to the piston's size [MPa].

    bore, thickness [mm], modulus [MPa].
    """
    square = thickness * thickness
    return 2.0 * modulus * square / (bore * bore - square)


def plug_stress(pressure, bore, thickness, modulus):
    """Largest stress when opened over a taper plug of the piston's size [MPa].

    max(1.187*S - 1.5*p*(d1/a1)*(d1/a1 - 1), S) * (1 + 5/(6*(d1/a1 - 1)))
    pressure: mean wall pressure [MPa]. bore, thickness [mm], modulus [MPa].
    """
    ratio = bore / thickness
    even = even_opening_stress(bore, thickness, modulus)
    nominal = max(_PEAK * even - 1.5 * pressure * ratio * (ratio - 1.0), even)
    return nominal * (1.0 + 5.0 / (6.0 * (ratio - 1.0)))


def wound_on_stress(bore, thickness, modulus):
    """WoundOn stresses of a ring wound on like a key ring [MPa], an estimate good to 20 %.

    1.1*S with the crossing spread over a third of a turn; 1.6 to 2.2*S hurried over 60 degrees.
    bore, thickness [mm], modulus [MPa].
    """
    even = even_opening_stress(bore, thickness, modulus)
    return WoundOn(1.1 * even, 1.6 * even, 2.2 * even)


METHODS = (
    Method(
        "turning-through",
        "Turning a double-turn ring inside out",
        "P = width/(r^3 (pi/(E Ix) + 3 pi/(G J))); bending P r sin psi, twist P r (1 - cos psi), largest together along the turn",
        "thin ring; each free end moves the full blank width",
        ("beam",),
    ),
    Method(
        "grip-force",
        "Grip of the two turns on one another",
        "P = (eta width - slit)/(r^3 (pi/(E Ix) + 3 pi/(G J)))",
        "after one heat set with the turns passed through one another",
        ("beam",),
    ),
    Method(
        "plug-stress",
        "Stress opened over a taper plug",
        "max(1.187 S - 1.5 p (d1/a1)(d1/a1 - 1), S)(1 + 5/(6 (d1/a1 - 1))), S = 2 E a1^2/(d1^2 - a1^2)",
        "taper plug of the piston's size; steady hands",
        ("beam", "contact"),
    ),
    Method(
        "wound-on-stress",
        "Stress wound on like a key ring",
        "1.1 S with the crossing spread over a third of a turn; 1.6 to 2.2 S hurried over 60 deg",
        "an estimate, 20 %",
        ("beam",),
    ),
)
