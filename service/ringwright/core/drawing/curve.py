"""The shape of a ring's neutral line, from how much of its curvature the wall takes up.

Closed in the bore the line is a circle of radius r carrying the moment M(psi); let go, its
curvature is 1/r - M/(E*I). Walking along it with that curvature draws the free ring exactly,
however far it springs. psi: angle from the free end, as everywhere in the core.
"""

import math

from ..ring import heat_set, spring

STEPS = 240


def free_change(design):
    """Function of psi [rad]: the curvature that the wall takes from the free ring there [1/mm]."""
    d = design
    radius = spring.neutral_radius(d.duty.bore, d.section.thickness)
    if d.duty.bearing.uniform:
        # From the gap, so that a ring finished in a band shows the gap it has.
        springy = spring.springiness_of_gap(d.spring.gap_change, radius)
        return lambda psi: springy / radius * (1.0 - math.cos(psi))
    kappa = d.spring.curvature_change
    if d.duty.setting == heat_set.BOUND:
        return lambda psi: kappa
    peak = kappa * heat_set.PEAK_MOMENT
    return lambda psi: kappa if psi >= heat_set.SLACK_RADIANS else peak * math.sin(psi)


def walked(radius, change, length, start_psi, end_psi, steps=STEPS):
    """Points (x, y, heading [rad]) along a line that begins at the origin heading along +x, turning
    left.

    radius: of the closed neutral line [mm]. change: function of psi, curvature taken off. length:
    of the line [mm]. psi runs evenly from start_psi to end_psi [rad]. Midpoint rule in heading and
    place.
    """
    step = length / steps
    x = y = heading = 0.0
    points = [(x, y, heading)]
    for i in range(steps):
        psi = start_psi + (end_psi - start_psi) * (i + 0.5) / steps
        turn = step * (1.0 / radius - change(psi))
        middle = heading + 0.5 * turn
        # A chord of a small arc: shorter than the arc by turn^2/24.
        chord = step * (1.0 - turn * turn / 24.0)
        x += chord * math.cos(middle)
        y += chord * math.sin(middle)
        heading += turn
        points.append((x, y, heading))
    return points


def plain_turn(radius, change, gap):
    """Neutral line of a plain ring, back at the bottom and gap at the top, tip to tip.

    radius: closed neutral radius, gap: in the bore [mm]. change: function of psi [1/mm]. Returns
    points (x, y, heading [rad]) from the right-hand tip round to the left-hand one, turning left:
    clockwise seen; centred on the box that holds them.
    """
    half = math.pi * radius - 0.5 * gap
    end = 0.5 * gap / radius
    right = walked(radius, change, half, math.pi, end)
    line = [(-x, y, -heading) for x, y, heading in right]
    line.reverse()
    return _centred(line[:-1] + right)


def double_turn(radius, change, gap, shoulder):
    """Neutral line of one turn of a double-turn ring, from the shoulder at the bridge to its tip.

    radius: closed neutral radius, gap: in the bore [mm]. change: function of psi [1/mm]. shoulder:
    angle of the shoulder from the middle of the bridge, which is at the top, clockwise [deg].
    Returns points (x, y, heading [rad]) turning left, centred on the box that holds them.
    """
    length = 2.0 * math.pi * radius - gap
    line = walked(radius, change, length, length / radius, 0.0)
    turn = math.radians(180.0 - shoulder)
    cosine, sine = math.cos(turn), math.sin(turn)
    turned = [(x * cosine - y * sine, x * sine + y * cosine, h + turn) for x, y, h in line]
    return _centred(turned)


def _centred(line):
    xs = [point[0] for point in line]
    ys = [point[1] for point in line]
    dx = 0.5 * (min(xs) + max(xs))
    dy = 0.5 * (min(ys) + max(ys))
    return [(x - dx, y - dy, heading) for x, y, heading in line]


def beside(line, offset):
    """Points of the line shifted by `offset` to the right of its heading: outwards for a left
    turn.
    """
    return [
        (x + offset * math.sin(heading), y - offset * math.cos(heading)) for x, y, heading in line
    ]
