"""All that stands in a picture of an operation, sorted, to be held against what was worked by hand.

In real millimetres, by shapely.
"""

import math

from shapely.affinity import scale
from shapely.geometry import Polygon
from shapely.ops import unary_union

from drawing.views import closed, cut_faces, of_layer
from ringwright.core.drawing.entities import Circle, Fill, Line, Polyline

# Corners of the turning tools over their size, the edge at (0, 0): a bar tool that leans away from
# what it has cut, a facing tool that is ground back behind its edge, a boring bar with its bit.
TOOLS = {
    "turn": [(0, 0), (0.8, 0.2), (0.8, 2.6), (0, 2.6)],
    "face": [(0, 0), (0.3, 0.8), (2.6, 0.8), (2.6, -0.2), (0.6, -0.2)],
    "bore": [(0, 0), (0.6, 0), (0.6, -0.5), (4.5, -0.5), (4.5, -1.3), (0, -1.3)],
}


def tool_size(work):
    """How large a tool is drawn for work of that radius: 0.16 of it, at least 1 mm."""
    return max(0.16 * work, 1.0)


def tool(kind, x, y, work):
    size = tool_size(work)
    return Polygon([(x + size * right, y + size * up) for right, up in TOOLS[kind]])


def both(shape):
    """A shape above the axis and its mirror image below."""
    return unary_union([shape, scale(shape, 1.0, -1.0, origin=(0.0, 0.0))])


def same(one, other):
    return one.symmetric_difference(other).area < 1e-6


def metal(view):
    return unary_union(cut_faces(view))


def lines(view, layer):
    """(x1, y1, x2, y2) of the straight lines of a layer."""
    return [tuple(one[1:]) for one in of_layer(view, layer) if type(one) is Line]


def _alike(one, other):
    back = other[2:] + other[:2]
    return math.dist(one, other) < 1e-6 or math.dist(one, back) < 1e-6


def same_lines(found, wanted):
    """Whether the lines are just those, either way about, each as often."""
    rest = list(found)
    for line in wanted:
        match = next((one for one in rest if _alike(one, line)), None)
        if match is None:
            return False
        rest.remove(match)
    return not rest


def arrows(view):
    """((x, y) of the start, (x, y) of the tip) of each line that ends in a head."""
    heads = [one.points[0] for one in view.shapes if type(one) is Fill and len(one.points) == 3]
    shafts = [(one[:2], one[2:]) for one in lines(view, "thin")]
    assert [tip for _, tip in shafts] == heads
    return shafts


def same_arrows(view, wanted):
    found = [start + tip for start, tip in arrows(view)]
    return len(found) == len(wanted) and all(
        math.dist(one, (*start, *tip)) < 1e-6
        for one, (start, tip) in zip(found, wanted, strict=True)
    )


def tools(view):
    """Solid shapes that are no heads of arrows."""
    return [Polygon(one.points) for one in view.shapes if type(one) is Fill and len(one.points) > 3]


def same_shapes(found, wanted):
    """Whether the polygons are just those, whatever their order."""
    rest = list(found)
    for shape in wanted:
        match = next((one for one in rest if same(one, shape)), None)
        if match is None:
            return False
        rest.remove(match)
    return not rest


def plain_outlines(view):
    """Closed outlines that are not those of a cut face."""
    faces = cut_faces(view)
    return [one for one in closed(view, "outline") if not any(same(one, face) for face in faces)]


def circles(view, layer):
    return [(one.x, one.y, one.radius) for one in of_layer(view, layer) if type(one) is Circle]


def axis(left, right):
    """The axis of work between those: 0.06 of it and 2 mm beyond either end."""
    beyond = 0.06 * (right - left) + 2.0
    return (left - beyond, 0.0, right + beyond, 0.0)


def measures(view):
    """Name, side and the two points of each size, its diameter sign before it."""
    return [
        (one.words.prefix, one.name, one.side, *one.first, *one.second) for one in view.measures
    ]


def same_measures(view, wanted):
    found = measures(view)
    return len(found) == len(wanted) and all(
        one[:3] == other[:3] and math.dist(one[3:], other[3:]) < 1e-6
        for one, other in zip(found, wanted, strict=True)
    )


def open_lines(view, layer):
    return [one.points for one in of_layer(view, layer) if type(one) is Polyline and not one.closed]
