"""A plain ring made without heat: turned oversize, a piece cut out, closed, and turned again.

Nothing is set: what the second turning leaves would still lie as the arc of the first one, of
neutral radius R, so the piece cut out is the free gap. Held closed it bends by its curvature kappa0
= 1/r - 1/R at most places, and lies off a circle as its holding leaves it (over kappa0*r^2):

* closing ring: in over the slack length behind each tip, by w'' + w = sin psi/sin psi0 - 1;
* flexible band: it pulls evenly, so w'' + w = 1/3 + 2/3 cos psi, out at back and tips, in between;
* forced round: nowhere.

The second turning makes the outside true there. Where the ring lay in it stays thicker, unless its
inside is turned as well.
"""

import math
from collections import namedtuple

from ..catalogue.inputs_ring import BAND, CLOSING_RING
from ..records import Method
from . import heat_set

# Taken off where the ring lies deepest, so that no first skin is left, on the radius [mm]; play of
# the spigot on the diameter [mm]; how far in plates stay, over the thickness, and where the ring is
# bored as well. Common practice, no source.
CLEAN = 0.2
SPIGOT_PLAY = 0.1
PLATE_SHARE = 0.3
BORED_PLATE_SHARE = 0.5

# Greatest of phi*sin(phi).
_OVAL = 1.8197057411596
_PSI0 = heat_set.SLACK_RADIANS
_SIN0, _COS0 = math.sin(_PSI0), math.cos(_PSI0)
_SHIFT = (1.0 + _PSI0 * _COS0 / (2.0 * _SIN0) - _COS0) / _SIN0

# How far a held ring lies off its circle over kappa0*r^2 at the deepest and farthest, and what all
# of it takes of the circumference.
Held = namedtuple("Held", ("deepest", "farthest", "taken"))
_ROUND = Held(0.0, 0.0, 0.0)
_HELD = {
    BAND: Held((_OVAL - 1.0) / 3.0, 1.0 / 3.0, 0.0),
    CLOSING_RING: Held(
        heat_set.LIGHT_FACTOR,
        0.0,
        2.0 * (_SIN0 + _SHIFT * (1.0 - _COS0) - _PSI0) - (_PSI0 * _SIN0 + _COS0 - 1.0) / _SIN0,
    ),
}
# Peak moment of the closed ring over that of kappa0.
_PEAK = {BAND: 4.0 / 3.0, CLOSING_RING: heat_set.PEAK_MOMENT}

# All [mm]. free_radius: neutral, of the arc. piece: cut out, along the neutral line. held_outside,
# held_inside: of the ring held for the second turning. outside, inside: after it. thickness: as
# held. spigot, plate: of what clamps it.
Sizes = namedtuple(
    "Sizes",
    (
        "free_radius", "piece", "first_outside", "first_inside", "held_outside", "outside",
        "inside", "thickness", "spigot", "plate",
    ),
)  # fmt: skip


def held(finishing):
    """The Held of a way of holding. finishing: closing-ring, band or forced-round."""
    return _HELD.get(finishing, _ROUND)


def lies_off(finishing, angle):
    """How far out of its circle the held ring lies, over kappa0*r^2 [1]; below 0 is inwards.

    finishing: closing-ring, band or forced-round. angle: psi from the nearer tip, 0 to pi [rad].
    Source: derived.
    """
    if finishing == BAND:
        phi = math.pi - angle
        return (1.0 - phi * math.sin(phi)) / 3.0
    if finishing == CLOSING_RING and angle < _PSI0:
        c, s = math.cos(angle), math.sin(angle)
        return 1.0 + angle * c / (2.0 * _SIN0) - c - _SHIFT * s
    return 0.0


def piece_for(curvature, radius, closed_gap, finishing):
    """The piece to cut out, which is the free gap, c [mm].

    c = 2*pi*(R - r) + s1 + t*kappa0*r^2, t = 0.215 in a closing ring, whose slack lengths take up
    so much of the circumference, else 0. curvature: kappa0, below 1/r [1/mm]. radius: neutral, in
    the bore, r [mm]. closed_gap: s1 [mm]. finishing: closing-ring, band or forced-round.
    """
    share = curvature * radius
    opened = 2.0 * math.pi * radius * share / (1.0 - share)
    return opened + closed_gap + held(finishing).taken * share * radius


def curvature_for(piece, radius, closed_gap, finishing):
    """The kappa0 that a piece cut out leaves [1/mm]; inverse of piece_for.

    piece: c, over closed_gap [mm]. radius: r [mm]. closed_gap: s1 [mm]. finishing: as piece_for.
    """
    taken = held(finishing).taken
    opened = (piece - closed_gap) / radius
    both = 2.0 * math.pi + taken + opened
    root = math.sqrt(both * both - 4.0 * taken * opened)
    return 2.0 * opened / (both + root) / radius


def sizes(design, finishing, clamped_gap, allowance, inside_allowance):
    """The Sizes of both turnings.

    design: a Design, set bound. finishing: how it is held. clamped_gap: s_c [mm]. allowance: left
    on the outside diameter, inside_allowance: on the radius inside, 0 where only the outside is
    turned again [mm]. Source: derived; without closed gap and allowance, and held round, the first
    outside is bore + cut/pi, the rule of American Engineer, vol. 86 no. 12.
    """
    d = design
    r = 0.5 * (d.duty.bore - d.section.thickness)
    free = r / (1.0 - d.spring.curvature_change * r)
    outside = d.duty.bore - (d.duty.closed_gap - clamped_gap) / math.pi
    inside = outside - 2.0 * d.section.thickness
    way = held(finishing)
    share = BORED_PLATE_SHARE if inside_allowance else PLATE_SHARE
    deep = way.deepest * d.spring.curvature_change * r * r
    return Sizes(
        free_radius=free,
        piece=piece_for(d.spring.curvature_change, r, d.duty.closed_gap, finishing),
        first_outside=2.0 * free + d.section.thickness + allowance,
        first_inside=2.0 * free - d.section.thickness - 2.0 * inside_allowance,
        held_outside=outside + allowance,
        outside=outside,
        inside=inside,
        thickness=d.section.thickness + 0.5 * allowance + inside_allowance,
        spigot=inside - 2.0 * (inside_allowance + deep) - SPIGOT_PLAY,
        plate=outside - 2.0 * share * d.section.thickness,
    )


def needed_outside(curvature, radius, finishing):
    """Least to leave on the outside diameter so that the second turning cleans it [mm].

    curvature: kappa0 [1/mm]. radius: r [mm]. finishing: closing-ring, band or forced-round.
    """
    return 2.0 * (held(finishing).deepest * curvature * radius * radius + CLEAN)


def needed_inside(curvature, radius, finishing):
    """Least to leave inside, on the radius, where the inside is turned again too [mm].

    curvature: kappa0 [1/mm]. radius: r [mm]. finishing: closing-ring, band or forced-round.
    """
    return held(finishing).farthest * curvature * radius * radius + CLEAN


def thicknesses(thickness, size, finishing, nodes):
    """Radial thickness at so many equal places from tip to tip, the inside not turned again [mm].

    a1 where the ring lay on its circle, more where it lay in, less where it lay out; never less
    than a tenth of it, where there would be nothing left to reckon with.
    thickness: a1 [mm]. size: kappa0*r^2 [mm]. finishing: closing-ring, band or forced-round.
    nodes: how many places, 2 or more.
    """
    step = 2.0 * math.pi / (nodes - 1)
    found = []
    for i in range(nodes):
        angle = min(step * min(i, nodes - 1 - i), math.pi)
        found.append(max(thickness - size * lies_off(finishing, angle), 0.1 * thickness))
    return found


def closing_stress(design, finishing, thickness):
    """Greatest tension when the blank is drawn closed for the second turning [MPa].

    peak*E*a*kappa0/2*(d1 - 2*a)/(d1 - a), peak 1.187 in a closing ring, 4/3 in a band, 1 forced
    round. design: a Design. finishing: how it is held. thickness: a, of the blank [mm].
    Source: derived.
    """
    d = design
    nominal = 0.5 * d.duty.modulus * thickness * d.spring.curvature_change
    outside = (d.duty.bore - 2.0 * thickness) / (d.duty.bore - thickness)
    return _PEAK.get(finishing, 1.0) * nominal * outside


METHODS = (
    Method(
        "without-heat",
        "Sizes of a ring made without heat",
        "c = 2 pi (R - r) + s1 + t kappa0 r^2, kappa0 = 1/r - 1/R; first outside 2 R + a1 + f, "
        "first inside 2 R - a1 - 2 i; t = 0.215 in a closing ring, else 0",
        "thin ring, no heat and no set: the free ring lies as the arc of its first turning",
        ("bourne", "american-engineer", "contact"),
    ),
    Method(
        "held-closed",
        "How a ring lies that is held closed for turning",
        "off its circle by kappa0 r^2 times: closing ring 0.105 in; band 0.273 in, 0.333 out; "
        "forced round 0; f = 2 (in + 0.2 mm), i = out + 0.2 mm",
        "thin ring, small movement from the circle",
        ("contact", "practice"),
    ),
    Method(
        "closing-stress",
        "Stress when drawn closed for turning",
        "peak E a kappa0/2 (d1 - 2 a)/(d1 - a); peak 1.187 in a closing ring, 1.333 in a "
        "band, 1 forced round",
        "thin ring, before its second turning",
        ("beam", "contact"),
    ),
)
