"""Rings where they break: turned through themselves, sprung over a plug, wound on like a key ring.

Each turn of a double-turn ring, seen sideways, is a circular cantilever of 360 degrees with its
root at the bridge. An axial force P at the free end bends it out of plane, M = P*r*sin(psi), and
twists it, T = P*r*(1 - cos psi), psi from the free end; a force Q opposite the bridge likewise
from there.
"""

import math
from collections import namedtuple

from ..records import Method

# Moment a quarter turn behind the tip over the even one, of a round ring on a larger round plug.
_PEAK = 1.1866
# Winding on, fitted to a rod of large displacement on its piston: over the plug, and what the
# crossing adds at nil, with the degrees in which it falls to 1/e; sideways, the shares of turn's
# width and grip that move the end, and of how far it lies in from the edge; the twist's lever where
# it is worst, in radii.
_OVER_PLUG, _CROSSED, _FALLS = 1.037, 2.21, 16.5
_LIFTED, _GRIPPED, _LET_DOWN, _LEVER = 0.95, 0.9, 1.5, 1.76
# Crossings: a third of a turn, 40 degrees and 20.
_CROSSINGS = (120.0, 40.0, 20.0)

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
    bending = modulus * thickness * width * width * width / 12.0
    twisting = 0.5 * modulus / (1.0 + poisson) * torsion_constant(width, thickness)
    cube = radius * radius * radius
    return 1.0 / (cube * math.pi * (1.0 / bending + 3.0 / twisting))


def turning_through(blank_width, radius, thickness, turn_width, modulus, poisson, brittle):
    """What turning a double-turn blank inside out does to it: TurningThrough(N, MPa, MPa, MPa).

    Each free end must move the full blank width, and opposite the bridge the turns must pass one
    another too: P at the end, Q there (passing_forces). Bending P*r*sin psi and twist
    P*r*(1 - cos psi) half way round, from there twist up to 2*Q*r at the bridge.
    `equivalent` is the worst along the turn: the largest principal stress for a brittle metal, the
    shear-energy stress for a tough one. On the inner face the bar's curvature and the force across
    it add (0.9 + 0.32*a/b)*a/(2*r) to the shear, b the width of the turn.
    Measured against the strength in bending, which is about that in torsion: grey iron
    shears at 1.3 to 1.4 times its tensile strength (a published table, ASTM classes 25 to 40).
    blank_width, radius (neutral), thickness, turn_width: of the blank as sawn, above 0 [mm].
    modulus [MPa]. poisson [1]. brittle: True for grey iron. Source: derived; frame elements, a
    quadratic programme and a rod of large displacement agree within 1 %, the solution of a twisted
    ring sector by finite elements within 0.2 %.
    """
    constant = torsion_constant(thickness, turn_width)
    force, opposite = passing_forces(
        blank_width, radius, thickness, turn_width, modulus, poisson, constant
    )
    bending = 6.0 * force * radius / (thickness * turn_width * turn_width)
    rate = radius / constant
    long_side, short_side = _edge_stress(rate, thickness, turn_width)
    # The bending is largest along the two faces that look sideways; where those are the long
    # sides of the section the larger shear meets it there, else the smaller.
    sideways, radial = (
        (long_side, short_side) if thickness >= turn_width else (short_side, long_side)
    )
    most = 2.0 * max(force, opposite)
    inner = radial * (1.0 + (0.9 + 0.32 * thickness / turn_width) * thickness / (2.0 * radius))
    twist = most * max(sideways, inner)
    whole = twist if brittle else math.sqrt(3.0) * twist
    return TurningThrough(
        force=force,
        bending=bending,
        twist=twist,
        equivalent=max(_worst_together(bending, sideways * force, brittle), whole),
    )


def passing_forces(moved, radius, thickness, width, modulus, poisson, constant):
    """Forces that hold two turns passed by one another: at the end, and opposite the bridge [N].

    P = moved*E*Ix/(pi*r^3)*(3 + 5*q)/D, Q = moved*E*Ix/(pi*r^3)*4*(1 + q)/D,
    q = E*Ix/(G*J), D = 2*(1 + 3*q)^2 - (q - 1)^2: a circular cantilever whose end moves by `moved`
    and whose middle by half of it. moved, radius (neutral), thickness, width of one turn [mm].
    modulus [MPa]. poisson [1]. constant: J of the turn [mm4]. Source: derived; a quadratic
    programme of the contact everywhere agrees within 0.6 %.
    """
    inertia = thickness * width * width * width / 12.0
    q = 2.0 * (1.0 + poisson) * inertia / constant
    lean = 1.0 + 3.0 * q
    unit = moved * modulus * inertia / (math.pi * radius * radius * radius)
    unit /= 2.0 * lean * lean - (q - 1.0) * (q - 1.0)
    return unit * (3.0 + 5.0 * q), unit * 4.0 * (1.0 + q)


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
    again presses the turns together opposite the bridge (passing_forces). blank_width, slit,
    radius, thickness, turn_width [mm]. relief 0 to 1. modulus [MPa]. poisson [1]. Source: derived.
    """
    held = relief * blank_width - slit
    if held <= 0.0:
        return 0.0
    constant = torsion_constant(thickness, turn_width)
    return passing_forces(held, radius, thickness, turn_width, modulus, poisson, constant)[0]


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


def wound_on_stress(plug, bore, thickness, turn_width, held, modulus, poisson, let_down=0.0):
    """WoundOn stresses of a ring wound on like a key ring [MPa], as a rod within 4 %.

    In its plane K*plug, K = 1.037 + 2.21*exp(-crossing/16.5 degrees): the strip leaves the piston
    as from its plug, and hands that hold the rest to its own size within the crossing lever it off.
    Sideways the end moves 0.95 of its turn's width, 0.9 of the grip `held` and 1.5 times what it
    lies in from the edge; this bends it P*r and twists it 1.76*P*r at the worst. The larger of both
    bendings together at the inner corner, and of bending and twist on the inner face: for a
    crossing of 120, 40 and 20 degrees.
    plug: stress on the plug, 0 up [MPa]. bore, thickness, turn_width [mm]. held: as in grip_force,
    0 up [mm]. modulus [MPa]. poisson [1]. let_down: how far in from the edge of the piston the
    first end lies while the rest is wound on, 0 to three turns' widths [mm]. Source: fitted to a
    geometrically exact rod that meets piston, edge and its other turn, d1/a1 20 to 40, turns half
    to twice as wide as thick; at 20 degrees within 5.4 %, let down within 11 %.
    What hands do is not known.
    """
    radius = 0.5 * (bore - thickness)
    force = axial_stiffness(radius, thickness, turn_width, modulus, poisson)
    force *= _LIFTED * turn_width + _GRIPPED * held + _LET_DOWN * let_down
    sideways = 6.0 * force * radius / (thickness * turn_width * turn_width)
    stresses = torsion_stress(_LEVER * force * radius, thickness, turn_width)
    twist = stresses[1 if thickness > turn_width else 0]
    found = []
    for crossing in _CROSSINGS:
        plane = plug * (_OVER_PLUG + _CROSSED * math.exp(-crossing / _FALLS))
        face = 0.5 * plane + math.sqrt(0.25 * plane * plane + twist * twist)
        found.append(max(plane + sideways, face))
    return WoundOn(found[0], found[1], found[2])


METHODS = (
    Method(
        "turning-through",
        "Turning a double-turn ring inside out",
        "P = width E Ix/(pi r^3) (3 + 5 q)/D, Q = P (4 + 4 q)/(3 + 5 q), q = E Ix/(G J), "
        "D = 2 (1 + 3 q)^2 - (q - 1)^2; bending P r sin psi, twist P r (1 - cos psi) and "
        "2 Q r; inside the shear (1 + (0.9 + 0.32 a/b) a/(2 r)) times",
        "each free end moves the full blank width; the turns meet opposite the bridge",
        ("beam", "contact"),
    ),
    Method(
        "grip-force",
        "Grip of the two turns on one another",
        "P of turning through of the finished turn, eta L - k in place of the width",
        "after one heat set with the turns passed through one another",
        ("beam", "contact"),
    ),
    Method(
        "plug-stress",
        "Stress opened over a taper plug",
        "S (1.1866 - 0.91 u - 0.38 u^2)(1 + 1/(d1/a1 - 1)), S = 2 E a1^2/(d1^2 - a1^2), "
        "u = 1.5 p (d1/a1)(d1/a1 - 1)/S; from u = 0.5 on S 4/pi (1 - u)(1 + 1/(d1/a1 - 1))",
        "taper plug as large as the bore; small displacement",
        ("beam", "contact"),
    ),
    Method(
        "round-set-plug",
        "Stress of a round-set ring opened over a taper plug",
        "1.1866 (S - E a1 kappa0/2)(1 + 1/(d1/a1 - 1)), S = 2 E a1^2/(d1^2 - a1^2)",
        "taper plug as large as the bore; small displacement",
        ("beam", "contact"),
    ),
    Method(
        "wound-on-stress",
        "Stress wound on like a key ring",
        "sigma_p of the plug times 1.037 + 2.21 exp(-crossing/16.5 deg), with bending P r or twist "
        "1.76 P r from P = (0.95 h + 0.9 (eta L - k)) E Ix/(pi r^3 (1 + 3 E Ix/(G J)))",
        "fitted within 4 %, at 20 deg 5.4 %; d1/a1 20 to 40, turns half to twice as wide as "
        "thick, the first end at the piston's edge; let down from there 1.5 times its way more in "
        "the bracket, within 11 %; what hands do is not known",
        ("beam", "contact"),
    ),
)
