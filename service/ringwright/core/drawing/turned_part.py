"""What every cut drawing of a turned part is made of: halves, edges, axis, sizes."""

from . import words
from .entities import CENTRE, OUTLINE
from .shapes import mirrored_points

# Wall that the figures leave to the maker, over the bore, and at least [mm].
WALL = 0.1
LEAST_WALL = 6.0


def size_of(view, job, tool, name, side, first, second, diameter=False):
    """A dimension of a tool, with its limits where it has any."""
    size = job.sizes[tool][name]
    if size.lower is None:
        text = words.size(size.value, job.system, diameter)
    else:
        text = words.limits(size.lower, size.upper, job.system, diameter)
    view.measure(name, size.value, side, first, second, text)


def cut_loops(upper):
    """Loops of the cut faces of what turns about the axis: two halves, or one where no hole parts
    them.

    upper: corners of the half above; those on the axis follow one another.
    """
    solid = [point for point in upper if point[1] == 0.0]
    if not solid:
        return [upper, mirrored_points(upper)]
    # No edge runs along the axis.
    side = [solid[-1]] + [point for point in upper if point[1] != 0.0] + [solid[0]]
    return [side + list(reversed(mirrored_points(side[1:-1])))]


def turned(view, upper, faces, hole):
    """The cut faces of a turned part. faces: x of end faces whose whole height is seen. hole: its
    radius.
    """
    for loop in cut_loops(upper):
        view.outline(OUTLINE, loop)
        view.hatch([loop])
    if hole is not None:
        for x in faces:
            view.line(OUTLINE, x, -hole, x, hole)


def edges(view, corners):
    """The edges of a bore that are seen behind the cut: a line across at each corner (x,
    radius).
    """
    for x, radius in corners:
        view.line(OUTLINE, x, -radius, x, radius)


def axis_of(view, left, right):
    reach = 0.06 * (right - left) + 2.0
    view.line(CENTRE, left - reach, 0.0, right + reach, 0.0)
