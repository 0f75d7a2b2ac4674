"""What pictures of operations have in common: chuck, tools, arrows, and a size at its place."""

import math

from . import words
from .entities import OUTLINE, THIN, Fill, Line
from .shapes import box, mirrored_points
from .turned_part import cut_loops

# What the picture gives to things that have no size in the job, over the radius of the work.
JAW = 0.32
_TOOL = 0.16


def size_in(row, name):
    """The Size of a row by its name; the first one where the row has none of that name."""
    for size in row.sizes:
        if size.name == name:
            return size
    return row.sizes[0]


def measured(view, job, size, side, first, second, diameter=False):
    if size.lower is None:
        text = words.size(size.value, job.system, diameter)
    else:
        text = words.limits(size.lower, size.upper, job.system, diameter)
    view.measure(size.name, size.value, side, first, second, text)


def cut_part(view, upper, angle=45.0):
    """The cut faces of what turns about the axis."""
    for loop in cut_loops(upper):
        view.outline(OUTLINE, loop)
        view.hatch([loop], angle)


def chuck(view, grip, x):
    """Jaws that hold the work by its outside up to x, and the chuck's face a little behind its end.

    grip: radius that they hold [mm].
    """
    deep, back = JAW * grip, -0.1 * grip
    jaw = box(back, grip, x, grip + deep)
    view.outline(OUTLINE, jaw)
    view.outline(OUTLINE, mirrored_points(jaw))
    view.outline(OUTLINE, box(back - deep, -grip - 1.3 * deep, back, grip + 1.3 * deep))


def cutting_tool(view, tip, way, radius):
    """A turning tool with its edge at `tip`, as a solid shape; returns the size it is drawn with.

    way: turn, face or bore. radius: of the work [mm].
    """
    x, y = tip
    s = max(_TOOL * radius, 1.0)
    shapes = {
        "turn": [(0, 0), (0.8, 0.2), (0.8, 2.6), (0, 2.6)],
        "face": [(0, 0), (0.3, 0.8), (2.6, 0.8), (2.6, -0.2), (0.6, -0.2)],
        "bore": [(0, 0), (0.6, 0), (0.6, -0.5), (4.5, -0.5), (4.5, -1.3), (0, -1.3)],
    }
    view.add(Fill(THIN, [(x + s * right, y + s * up) for right, up in shapes[way]]))
    # A Fill has no extent of its own for the view: its outline has.
    view.outline(THIN, [(x + s * right, y + s * up) for right, up in shapes[way]])
    return s


def arrow(view, start, end):
    """A line from start to end with a head at its end."""
    x1, y1 = start
    x2, y2 = end
    far = math.sqrt((x2 - x1) * (x2 - x1) + (y2 - y1) * (y2 - y1))
    if far == 0.0:
        return
    across, up = (x2 - x1) / far, (y2 - y1) / far
    head = 0.3 * far
    view.add(Line(THIN, x1, y1, x2, y2))
    left = (x2 - head * across - 0.35 * head * up, y2 - head * up + 0.35 * head * across)
    right = (x2 - head * across + 0.35 * head * up, y2 - head * up - 0.35 * head * across)
    view.add(Fill(THIN, [(x2, y2), left, right]))
