"""Rings where they break: turned through themselves, sprung over a plug, wound on like a key ring.

Each turn of a double-turn ring, seen sideways, is a circular cantilever of 360 degrees with its
root at the bridge. An axial force P at the free end bends it out of plane, M = P*r*sin(psi), and
twists it, T = P*r*(1 - cos psi), psi from the free end.
"""

import math
from collections import namedtuple

from ..records import Method

# Moment a quarter turn behind the tip over the even one, of a round ring on a larger round plug.
_PEAK = 1.1866
# Stress of winding on over that of the plug, by the length over which the ring crosses the piston's
# edge: 60 degrees or more, 40, 20. In the first the worst moment is that of the half turn
# (1.273/1.187); a few per cent are bending sideways, for turns up to as wide as thick.
_WOUND = (1.1, 1.25, 1.8)

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
    longer, shorter: sides, above 0, in either order [mm]. Source: Timoshenko and Goodier,
    torsion of rectangular bars, whose table (0.1406 for a square) it gives to every digit.
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
    shorter. torque [N mm]; longer, shorter: sides, above 0, in either order [mm]. Saint-Venant's
    series. Source: Timoshenko and Goodier, as torsion_constant (0.208 for a square).
    """
    return _edge_stress(torque / torsion_constant(longer, shorter), longer, shorter)


def _edge_stress(rate, longer, shorter):
    """torsion_stress, by G*theta: the torque over the torsion constant [MPa/mm]."""
    b, t = (longer, shorter) if longer >= shorter else (shorter, longer)
    twist = rate * t
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
    one turn [mm]. modulus [MPa]. poisson [1]. Source: derived; frame finite elements within 0.1 %.
    """
    return _stiffness(
        radius, thickness, width, modulus, poisson, torsion_constant(width, thickness)
    )


def _stiffness(radius, thickness, width, modulus, poisson, constant):
    """axial_stiffness, the torsion constant J of the turn known [mm4]."""
    bending = modulus * thickness * width * width * width / 12.0
    twisting = 0.5 * modulus / (1.0 + poisson) * constant
    cube = radius * radius * radius
    return 1.0 / (cube * math.pi * (1.0 / bending + 3.0 / twisting))


def turning_through(blank_width, radius, thickness, turn_width, modulus, poisson, brittle):
    """What turning a double-turn blank inside out does to it: TurningThrough(N, MPa, MPa, MPa).

    Each free end must move the full blank width; bending P*r*sin psi, twist P*r*(1 - cos psi), as
    if P acted at the end alone. In fact the turns also bear on one another opposite the bridge,
    which changes both peaks by -8 to +2 % for turns half to once and a half as wide as thick.
    `equivalent` is the worst along the turn: the largest principal stress for a brittle metal, the
    shear-energy stress for a tough one. Left out: the curvature of the bar, 3 % on the twist at
    d1/a1 = 25. Measured against the strength in bending, which is about that in torsion: grey iron
    shears at 1.3 to 1.4 times its tensile strength (a published table, ASTM classes 25 to 40).
    blank_width, radius (neutral), thickness, turn_width: of the blank as sawn, above 0 [mm].
    modulus [MPa]. poisson [1]. brittle: True for grey iron. Source: derived; frame elements and a
    quadratic programme agree.
    """
    constant = torsion_constant(thickness, turn_width)
    stiffness = _stiffness(radius, thickness, turn_width, modulus, poisson, constant)
    force = blank_width * stiffness
    bending = 6.0 * force * radius / (thickness * turn_width * turn_width)
    long_side, short_side = _edge_stress(force * radius / constant, thickness, turn_width)
    # The bending is largest along the two faces that look sideways; where those are the long
    # sides of the section the larger shear meets it there, else the smaller.
    sideways, radial = (
        (long_side, short_side) if thickness >= turn_width else (short_side, long_side)
    )
    worst = _worst_together(bending, sideways, brittle)
    opposite = 2.0 * radial if brittle else 2.0 * math.sqrt(3.0) * radial
    return TurningThrough(
        force=force, bending=bending, twist=2.0 * long_side, equivalent=max(worst, opposite)
    )


def _worst_together(bending, shear, brittle):
    """Largest over psi of the equivalent of bending*sin(psi) with shear*(1 - cos(psi)) [MPa].

    Brittle: s/2 + sqrt(s^2/4 + t^2). With x = tan(psi/2), u = sqrt(A^2 + 4 B^2 x^2) it is
    x*(A + u)/(1 + x^2), stationary where A*u^2 - 8*B^2*u + A*(4*B^2 - A^2) = 0. Tough: the
    square is A^2*(1 - c^2) + 3*B^2*(1 - c)^2 in c = cos(psi), largest at c = -1 while A^2 is at
    most 6*B^2; of a rectangle A is never above 2*B.
    """
    if not brittle:
        return 2.0 * math.sqrt(3.0) * shear
    a2 = bending * bending
    b2 = shear * shear
    root = math.sqrt(16.0 * b2 * b2 - 4.0 * a2 * b2 + a2 * a2)
    u = (4.0 * b2 + root) / bending
    x2 = (u * u - a2) / (4.0 * b2)
    return math.sqrt(x2) * (bending + u) / (1.0 + x2)


def grip_force(blank_width, slit, relief, radius, thickness, turn_width, modulus, poisson):
    """Axial force at each free end that presses the turns together once turned back [N].

    The heat relaxes the share eta of the sideways deflection while the ring is inside out, so that
    turned back each end is held eta*(blank width) - slit from where it now wants to be; 0 where
    that is negative: a ring that was not heated has no grip, only its slit open. About as much
    again presses the turns together opposite the bridge. blank_width, slit, radius, thickness,
    turn_width [mm]. relief 0 to 1. modulus [MPa]. poisson [1]. Source: derived.
    """
    held = relief * blank_width - slit
    if held <= 0.0:
        return 0.0
    return held * axial_stiffness(radius, thickness, turn_width, modulus, poisson)


def even_opening_stress(bore, thickness, modulus):
    """S = 2*E*a1^2/(d1^2 - a1^2): opened evenly from the bore to the piston's size [MPa].

    E*a1/2*(1/r - 1/R), r = (d1 - a1)/2, R = (d1 + a1)/2: the piston taken as large as the bore.
    bore: above thickness [mm]. thickness [mm]. modulus [MPa]. Source: derived.
    """
    square = thickness * thickness
    return 2.0 * modulus * square / (bore * bore - square)


def plug_stress(pressure, bore, thickness, modulus):
    """Largest stress of a ring of uniform pressure opened over a plug of the piston's size [MPa].

    It touches the plug at its tips and over its back; a quarter turn behind each tip, inside,
        S*(1.1866 - 0.91*u - 0.38*u^2)*(1 + 1/(d1/a1 - 1)),  u = 1.5*p*(d1/a1)*(d1/a1 - 1)/S
    below u = 0.5; beyond, where its back touches along one line, S*4/pi*(1 - u) in place of the
    first two; nil from u = 1, a ring that drops over the plug. pressure: mean wall pressure, 0 up
    [MPa]. bore, thickness [mm]. modulus [MPa]. Source: derived, small displacement; fitted to the
    exact solution within 0.2 %, which a quadratic programme confirms. The safe side, by a few per
    cent, for a ring set round.
    """
    ratio = bore / thickness
    even = even_opening_stress(bore, thickness, modulus)
    own = 1.5 * pressure * ratio * (ratio - 1.0) / even
    if own >= 1.0:
        return 0.0
    if own >= 0.5:
        share = 4.0 / math.pi * (1.0 - own)
    else:
        share = _PEAK - own * (0.91 + 0.38 * own)
    return share * even * ratio / (ratio - 1.0)


def plug_stress_round(curvature_change, bore, thickness, modulus):
    """Largest stress of a round-set ring opened over a taper plug of the piston's size [MPa].

    1.1866*(S - E*a1*kappa0/2)*(1 + 1/(d1/a1 - 1)), a quarter turn behind each tip, inside; nil
    where the ring drops over the plug. curvature_change: kappa0, 0 up [1/mm]. bore, thickness [mm].
    modulus [MPa]. Source: derived; on the plug it is the ring in the bore turned inside out.
    """
    ratio = bore / thickness
    even = even_opening_stress(bore, thickness, modulus)
    left = even - 0.5 * modulus * thickness * curvature_change
    return max(_PEAK * left * ratio / (ratio - 1.0), 0.0)


def wound_on_stress(bore, thickness, modulus, pressure=0.0):
    """WoundOn stresses of a ring wound on like a key ring [MPa], estimates good to 20 %.

    1.1 times plug_stress with the crossing of the piston's edge spread over 60 degrees or more (the
    worst moment comes with half a turn on); 1.25 times over 40 degrees; 1.8 times over 20.
    bore, thickness [mm]. modulus [MPa]. pressure: mean wall pressure, 0 takes no credit for the
    ring's own spring [MPa]. Source: quadratic programmes of a strip, in its plane and out of it,
    part held on the piston and the rest concentric before it; what hands do is not known.
    """
    plug = plug_stress(pressure, bore, thickness, modulus)
    return WoundOn(_WOUND[0] * plug, _WOUND[1] * plug, _WOUND[2] * plug)


METHODS = (
    Method(
        "turning-through",
        "Turning a double-turn ring inside out",
        "P = width/(r^3 (pi/(E Ix) + 3 pi/(G J))); bending P r sin psi, twist P r (1 - cos psi), "
        "largest together along the turn",
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
        "S (1.1866 - 0.91 u - 0.38 u^2)(1 + 1/(d1/a1 - 1)), S = 2 E a1^2/(d1^2 - a1^2), "
        "u = 1.5 p (d1/a1)(d1/a1 - 1)/S; from u = 0.5 on S 4/pi (1 - u)(1 + 1/(d1/a1 - 1)); "
        "set round 1.1866 (S - E a1 kappa0/2)(1 + 1/(d1/a1 - 1))",
        "taper plug as large as the bore; small displacement",
        ("beam", "contact"),
    ),
    Method(
        "wound-on-stress",
        "Stress wound on like a key ring",
        "1.1 times the plug's stress with the crossing spread over 60 deg or more, "
        "1.25 times over 40 deg, 1.8 times over 20 deg",
        "an estimate, 20 %; turns up to as wide as thick",
        ("beam", "contact"),
    ),
)
