"""Small geometry: arcs as points, closed outlines, hatching lines, broken ends. Real mm,
degrees.
"""

import math

from .entities import Arc, Circle, Hatch, Line, Text

# Segments to a full turn where an arc becomes points: the sagitta is 1/3300 of the radius.
SEGMENTS = 180


def polar(radius, degrees, x=0.0, y=0.0):
    """The point at `radius` and angle from (x, y)."""
    angle = math.radians(degrees)
    return x + radius * math.cos(angle), y + radius * math.sin(angle)


def arc_points(radius, start, end, x=0.0, y=0.0):
    """Points along an arc, both ends included; end may be smaller than start (clockwise)."""
    steps = max(2, int(math.ceil(abs(end - start) * SEGMENTS / 360.0)))
    return [polar(radius, start + (end - start) * i / steps, x, y) for i in range(steps + 1)]


def box(left, bottom, right, top):
    """The corners of a rectangle, counter-clockwise."""
    return [(left, bottom), (right, bottom), (right, top), (left, top)]


def wavy(x, bottom, top, depth):
    """Points of a freehand break line from (x, bottom) to (x, top), bulging by `depth`."""
    steps = 16
    points = []
    for i in range(steps + 1):
        share = i / steps
        points.append(
            (x + depth * math.sin(2.0 * math.pi * share), bottom + (top - bottom) * share)
        )
    return points


def centre_cross(layer, x, y, reach):
    """Centre lines through (x, y), each reaching that far either way."""
    return [Line(layer, x - reach, y, x + reach, y), Line(layer, x, y - reach, x, y + reach)]


def mirrored_points(points):
    """Points mirrored in the x axis."""
    return [(x, -y) for x, y in points]


def hatch_lines(loops, angle, spacing):
    """Lines (x1, y1, x2, y2) at `angle`, `spacing` apart, inside the loops by the even-odd rule."""
    turn = math.radians(angle)
    cosine, sine = math.cos(turn), math.sin(turn)
    edges = []
    low = high = None
    for loop in loops:
        last = None
        for x, y in [loop[-1]] + loop:
            u, v = x * cosine + y * sine, y * cosine - x * sine
            if last is not None and last[1] != v:
                edges.append((last[0], last[1], u, v))
            last = (u, v)
            low = v if low is None or v < low else low
            high = v if high is None or v > high else high
    lines = []
    # Lines stand on one grid over the whole sheet, so that cut faces of one part agree.
    step = math.floor(low / spacing) + 1
    while step * spacing < high:
        v = step * spacing
        crossings = []
        for u1, v1, u2, v2 in edges:
            if (v1 <= v) != (v2 <= v):
                crossings.append(u1 + (u2 - u1) * (v - v1) / (v2 - v1))
        crossings.sort()
        for i in range(0, len(crossings) - 1, 2):
            u1, u2 = crossings[i], crossings[i + 1]
            if u2 - u1 > 0.05:
                lines.append(
                    (
                        u1 * cosine - v * sine,
                        u1 * sine + v * cosine,
                        u2 * cosine - v * sine,
                        u2 * sine + v * cosine,
                    )
                )
        step += 1
    return lines


def extent(entities):
    """(left, bottom, right, top) of entities; text is left out, as it does not grow with the
    scale.
    """
    xs, ys = [], []
    for entity in entities:
        kind = type(entity)
        if kind is Line:
            xs += [entity.x1, entity.x2]
            ys += [entity.y1, entity.y2]
        elif kind is Circle:
            xs += [entity.x - entity.radius, entity.x + entity.radius]
            ys += [entity.y - entity.radius, entity.y + entity.radius]
        else:
            for loop in _loops(entity):
                for x, y in loop:
                    xs.append(x)
                    ys.append(y)
    return min(xs), min(ys), max(xs), max(ys)


def _loops(entity):
    kind = type(entity)
    if kind is Arc:
        return [arc_points(entity.radius, entity.start, entity.end, entity.x, entity.y)]
    if kind is Hatch:
        return entity.loops
    return [] if kind is Text else [entity.points]
