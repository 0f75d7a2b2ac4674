"""What a view must show, laid beside what it shows: lines, rounds, cut faces, sizes and labels."""

import math
from decimal import ROUND_HALF_UP, Decimal

import pytest
from shapely.geometry import LineString, Polygon
from shapely.ops import unary_union

from drawing.views import of_layer
from ringwright.core.drawing import catalogue
from ringwright.core.drawing.entities import Arc, Circle, Hatch, Line, Polyline
from ringwright.core.ring.allowances import CUT_ANGLES

HATCHED = 2.5
NEAR = 1e-5


def lean(design, height):
    """How far a cut at the angle of the ends goes along the ring."""
    angle = CUT_ANGLES[design.duty.end_cut]
    return 0.0 if angle == 90.0 else height / math.tan(math.radians(angle))


def rectangle(left, low, right, high):
    return [(left, low), (right, low), (right, high), (left, high)]


def ring_of(corners):
    """A closed line."""
    return [*corners, corners[0]]


def turned_over(corners):
    return [(x, -y) for x, y in corners]


def broken(x, low, high, depth):
    """A line where the picture is broken off: one wave, as deep as that either way."""
    steps = [at / 16.0 for at in range(17)]
    return [(x + depth * math.sin(math.tau * share), low + (high - low) * share) for share in steps]


def cross(reach):
    return [[(-reach, 0.0), (reach, 0.0)], [(0.0, -reach), (0.0, reach)]]


def axis(left, right):
    """The centre line of a turned part: past it by 0.06 of its length and 2 mm."""
    past = 0.06 * (right - left) + 2.0
    return [[(left - past, 0.0), (right + past, 0.0)]]


def _drawn(view, layer):
    rows = []
    for one in of_layer(view, layer):
        if type(one) is Line:
            rows.append([(one.x1, one.y1), (one.x2, one.y2)])
        elif type(one) is Polyline:
            rows.append(ring_of(one.points) if one.closed else one.points)
    return rows


def _ink(rows):
    return unary_union([LineString(each) for each in rows])


def lines(view, **layers):
    """Holds the straight lines of each layer to those given: no more, no less, nowhere else."""
    kinds = {one.layer for one in view.shapes if type(one) in (Line, Polyline)}
    assert kinds == set(layers), (view.name, kinds)
    for layer, rows in layers.items():
        found, wanted = _ink(_drawn(view, layer)), _ink(rows)
        more, less = found.difference(wanted.buffer(NEAR)), wanted.difference(found.buffer(NEAR))
        assert more.is_empty and less.is_empty, (view.name, layer, more.wkt, less.wkt)


def rounds(view, *wanted):
    """Holds circles and arcs to (layer, x, y, radius, and start and end of an arc)."""
    found = [tuple(one) for one in view.shapes if type(one) in (Circle, Arc)]
    assert len(found) == len(wanted), view.name
    for one, other in zip(sorted(found), sorted(wanted), strict=True):
        assert one[0] == other[0] and one[1:] == pytest.approx(other[1:], abs=1e-7), view.name


def cuts(view, *wanted):
    """Holds hatched faces to (corners or polygon, angle, spacing), in whatever order."""
    found = [one for one in view.shapes if type(one) is Hatch]
    assert len(found) == len(wanted), view.name
    for shape, angle, spacing in wanted:
        shape = Polygon(shape)
        fits = [
            one
            for one in found
            if (one.angle, one.spacing) == (angle, spacing)
            and Polygon(one.loops[0]).symmetric_difference(shape).area < 1e-6
        ]
        assert fits, (view.name, shape.wkt)
        found.remove(fits[0])


def halves(upper, angle=45.0, spacing=HATCHED):
    """Both cut faces of what turns about its axis."""
    return (upper, angle, spacing), (turned_over(upper), angle, spacing)


def figure(mm, job, places=None):
    """Digits of a length: 2 decimals, 3 below 1 mm; inches one more, and thou at the least."""
    if places is None or abs(mm) < 1.0:
        places = 3 if abs(mm) < 1.0 and mm else 2
    if job.system == "inch":
        return digits(mm / 25.4, max(3, places + 1))
    return digits(mm, places)


def digits(value, places):
    """Ties away from zero, as a workshop rounds."""
    step = Decimal(1).scaleb(-places)
    return str(Decimal("%.9f" % value).quantize(step, ROUND_HALF_UP))


def length(mm, job, places=None):
    return figure(mm, job, places) + (" in" if job.system == "inch" else " mm")


def across(mm, job, places=None):
    return "\u00d8" + figure(mm, job, places)


def plain(mm, job, places=None):
    return "", (figure(mm, job, places),)


def round_size(mm, job, places=None):
    return "\u00d8", (figure(mm, job, places),)


def between(size, job, prefix=""):
    """Words of a size: its limits, the upper first, to 0.001 mm or 0.0001 in, rounded inwards."""
    if size.lower is None:
        return prefix, (figure(size.value, job),)
    step, places = (25.4e-4, 4) if job.system == "inch" else (1e-3, 3)
    high, low = math.floor(size.upper / step + 1e-6), math.ceil(size.lower / step - 1e-6)
    return prefix, tuple("%.*f" % (places, each * 10.0**-places) for each in (high, low))


def of_tool(job, tool, name, prefix=""):
    return between(job.sizes[tool][name], job, prefix)


def of_work(job, name, value, prefix=""):
    """Words of a size of ring or blank: with the limits of the route card where it has any."""
    if name in job.worked:
        return between(job.worked[name], job, prefix)
    return prefix, (figure(value, job),)


def notes(job, part):
    return catalogue.PARTS[part].draw(job)[1]


def headed(view, title, target=None, second=False):
    """Holds the words under a view, and what room on paper an enlarged one takes."""
    assert (view.title, view.target, view.second) == (title, target, second)


def sizes(view, *wanted):
    """Holds sizes to (name, side, first, second, (prefix, lines)), each as long as it says."""
    found = view.measures
    assert [one.name for one in found] == [one[0] for one in wanted], view.name
    for one, (name, side, first, second, said) in zip(found, wanted, strict=True):
        assert one.side == side, (view.name, name)
        assert one.first == pytest.approx(first, abs=1e-7), (view.name, name)
        assert one.second == pytest.approx(second, abs=1e-7), (view.name, name)
        along = 0 if side in ("top", "bottom") else 1
        assert one.value == pytest.approx(abs(first[along] - second[along]), abs=1e-7), name
        assert tuple(one.words) == said, (view.name, name)


def labels(view, *wanted):
    """Holds labels to (side, point, text, dot, and the name and value of a figure)."""
    assert len(view.labels) == len(wanted), view.name
    for one, (side, point, text, dot, *of) in zip(view.labels, wanted, strict=True):
        assert (one.side, one.text, one.dot) == (side, text, dot), view.name
        assert one.point == pytest.approx(point, abs=1e-7), (view.name, text)
        if of:
            assert (one.name, one.unit) == (of[0], "mm")
            assert one.value == pytest.approx(of[1], abs=1e-9), (view.name, text)
        else:
            assert (one.name, one.value, one.unit) == ("", None, "")
