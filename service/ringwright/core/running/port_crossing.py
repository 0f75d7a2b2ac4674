"""A ring that crosses ports: how far it springs into an opening between two bars, or at its ends.

Over an opening nothing holds the ring but the bars. Between bars it is a beam that runs on over
many supports; its free end, if the joint stands over an opening, is a beam that overhangs. The
supports are radial, so that no hoop force is carried and straight-beam forms hold.
"""

import math

from ..records import Method

# Deflections over q L^4/(E I), q outward pressure times width, L the opening:
# between bars, both ends held straight by the next spans (1/384); at a free end that overhangs a
# whole opening on like spans: 1/8 + (1/2 - 1/12)/(2 sqrt 3).
BETWEEN_BARS = 1.0 / 384.0
FREE_END = 0.125 + (5.0 / 12.0) / (2.0 * math.sqrt(3.0))

METHODS = (
    Method(
        "port-opening",
        "Opening between bars",
        "L = pi d1/n_b - b",
        "bars alike and evenly spaced",
        ("geometry",),
    ),
    Method(
        "bulge",
        "How far the ring springs out between bars",
        "w = q L^4/(32 E a1^3), q the outward pressure",
        "ring narrower than the port; nought for a wider ring, which the port's edges carry",
        ("beam",),
    ),
    Method(
        "free-end",
        "How far a free end springs into an opening",
        "w = 12 (1/8 + 5/(24 sqrt 3)) q L^4/(E a1^3)",
        "joint not pinned, end overhanging a whole opening",
        ("beam",),
    ),
    Method(
        "longest-opening",
        "Longest opening that is safe",
        "L at which the bulge is half of the rounding of the edges",
        "as bulge",
        ("beam", "practice"),
    ),
    Method(
        "bar-pressure",
        "Pressure on the bars while crossing",
        "q h1/(h1 - min(h1, port)(1 - n_b b/(pi d1)))",
        "ring square over the port",
        ("geometry",),
    ),
    Method(
        "outward-pressure",
        "Outward pressure over an open port",
        "p + share * (p1 - p2); share 0.25, 0.5, 1: live steam behind, exhaust in the port",
        "worst part of the travel",
        ("ring-load",),
    ),
)


def opening(bore, bars, bar_width):
    """Opening between two bars along the bore, L = pi d1/n - b [mm].

    bore: of the valve liner [mm]. bars: n, 1 or more. bar_width: b [mm].
    """
    return math.pi * bore / bars - bar_width


def bulge(pressure, span, thickness, modulus):
    """How far the ring springs out between bars [mm], w = q L^4/(32 E a1^3).

    pressure: outward, q [MPa]. span: L [mm]. thickness: a1 [mm]. modulus: E [MPa].
    Source: continuous beam, derived; checked by a frame of finite elements.
    """
    return 12.0 * BETWEEN_BARS * _flexure(pressure, span, thickness, modulus)


def free_end(pressure, span, thickness, modulus):
    """How far a free end that overhangs the whole opening springs out [mm].

    pressure: outward, q [MPa]. span: L [mm]. thickness: a1 [mm]. modulus: E [MPa].
    Source: overhanging continuous beam, derived; checked by a frame of finite elements.
    """
    return 12.0 * FREE_END * _flexure(pressure, span, thickness, modulus)


def longest_opening(pressure, allowed, thickness, modulus):
    """Opening at which the ring springs out by `allowed` between bars [mm].

    pressure: outward, q [MPa]. allowed [mm]. thickness: a1 [mm]. modulus: E [MPa].
    """
    fourth = allowed * modulus * thickness * thickness * thickness
    return math.sqrt(math.sqrt(fourth / (12.0 * BETWEEN_BARS * pressure)))


def crossing_factor(width, port_width, covered):
    """Pressure on what still carries the ring over that of a whole bore [1].

    width: of the ring, h1 [mm]. port_width: along the bore's axis [mm]. covered: share of the
    circumference that is bars, n_b b/(pi d1) [1], more than 0.
    """
    return width / (width - min(width, port_width) * (1.0 - covered))


def _flexure(pressure, span, thickness, modulus):
    square = span * span
    return pressure * square * square / (modulus * thickness * thickness * thickness)
