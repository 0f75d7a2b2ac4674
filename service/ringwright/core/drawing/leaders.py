"""Labels with leader lines: a column of words beside a view, each joined to the place it speaks
of.
"""

import math
from collections import namedtuple

from . import letters, style
from .entities import DIMENSIONS, Circle, Dimension, Fill, Line, Text

# point: the place meant (real mm of the part). side: left or right. text: what is said, wrapped to
# fit. name, value, unit: of the figure shown, "" and None where there is none. dot: ends in a dot
# within a face, else in an arrow on an edge.
Label = namedtuple("Label", ("name", "value", "unit", "side", "point", "text", "dot"))

_GAP = 3.0
_DOT = 0.6


def placed(labels, side, scale, edge, size, room):
    """(Dimensions, boxes) of the labels of one side, in mm of paper about the part's own origin.

    labels: list of Label. scale: paper over part. edge: x beyond which the column stands. size: of
    letters. room: width of the column [mm]. boxes: (left, bottom, right, top) of every label.
    """
    rows = []
    for label in labels:
        lines = letters.wrapped(label.text, size, room)
        x, y = label.point[0] * scale, label.point[1] * scale
        # Lines of a label stand wider apart than limits do: they have letters that hang below the
        # line.
        rows.append((y, x, label, lines, size * (1.0 + style.PITCH * (len(lines) - 1)), len(rows)))
    rows.sort(key=lambda row: (-row[0], row[1] if side == "left" else -row[1], row[5]))
    heights = [row[4] + size * letters.DESCENT for row in rows]
    middles = _spread([row[0] for row in rows], heights)
    sign = 1.0 if side == "right" else -1.0
    dimensions = []
    boxes = []
    start = edge + sign * style.LEADER_REACH
    for i, row in enumerate(rows):
        y, x, label, lines, height, _ = row
        top = middles[i] + 0.5 * height
        wide = 0.0
        parts = []
        align = "start" if side == "right" else "end"
        for k, line in enumerate(lines):
            wide = max(wide, letters.width(line, size))
            base = top - size - k * size * style.PITCH
            parts.append(Text(DIMENSIONS, start, base, size, line, align, 0, False))
        elbow = start - sign * 1.0
        parts += _leader(x, y, elbow, middles[i], sign, label.dot)
        left, right = (start, start + wide) if sign > 0 else (start - wide, start)
        boxes.append((left, top - height - size * letters.DESCENT, right, top))
        dimensions.append(
            Dimension(
                name=label.name,
                value=label.value,
                unit=label.unit,
                kind="label",
                scale=scale,
                points=[],
                words=(label.text,),
                parts=parts,
            )
        )
    return dimensions, boxes


def _leader(x, y, elbow, level, sign, dot):
    """A slanting line from the place to the words, with a short level piece before them."""
    bend = elbow - sign * 2.5
    dx, dy = x - bend, y - level
    distance = math.sqrt(dx * dx + dy * dy)
    parts = [Line(DIMENSIONS, elbow, level, bend, level), Line(DIMENSIONS, bend, level, x, y)]
    if dot:
        parts.append(Circle(DIMENSIONS, x, y, 0.5 * _DOT))
        return parts
    if distance > style.ARROW_LENGTH:
        ux, uy = -dx / distance, -dy / distance
        length, half = style.ARROW_LENGTH * 0.8, style.ARROW_HALF_WIDTH * 0.8
        bx, by = x + ux * length, y + uy * length
        parts.append(
            Fill(
                DIMENSIONS,
                [(x, y), (bx - uy * half, by + ux * half), (bx + uy * half, by - ux * half)],
            )
        )
    return parts


def _spread(wanted, heights):
    """Middles as near to those wanted as can be, top to bottom, without overlap.

    Neighbours that would overlap are joined to one group, which stands about its mean.
    """
    groups = []
    for i, middle in enumerate(wanted):
        groups.append([[i], middle])
        while len(groups) > 1 and _overlap(groups[-2], groups[-1], heights):
            last = groups.pop()
            before = groups.pop()
            members = before[0] + last[0]
            total = 0.0
            for k in members:
                total += wanted[k]
            groups.append([members, total / len(members)])
    middles = [0.0] * len(wanted)
    for members, centre in groups:
        at = centre + 0.5 * _stack(members, heights)
        for k in members:
            middles[k] = at - 0.5 * heights[k]
            at -= heights[k] + _GAP
    return middles


def _stack(members, heights):
    total = _GAP * (len(members) - 1)
    for k in members:
        total += heights[k]
    return total


def _overlap(upper, lower, heights):
    bottom = upper[1] - 0.5 * _stack(upper[0], heights)
    top = lower[1] + 0.5 * _stack(lower[0], heights)
    return top + _GAP > bottom + 1e-9
