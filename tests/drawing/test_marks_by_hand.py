"""Tools and arrows by themselves, as every picture of an operation has them."""

import math
from types import SimpleNamespace

import pytest
from shapely.geometry import Polygon

from drawing.pictures import TOOLS, arrows, same, tool, tools
from drawing.views import closed, of_layer
from ringwright.core.drawing.entities import Fill
from ringwright.core.drawing.operation_marks import arrow, cutting_tool, size_in
from ringwright.core.drawing.turned_part import axis_of, cut_loops
from ringwright.core.drawing.view import View


@pytest.mark.parametrize("kind", TOOLS)
@pytest.mark.parametrize(("work", "size"), [(50.0, 8.0), (2.0, 1.0), (6.5, 1.04)])
def test_a_tool_is_a_sixth_of_its_work_and_never_too_small_to_see(kind, work, size):
    view = View("bar")
    assert cutting_tool(view, (30.0, 20.0), kind, work) == pytest.approx(size)
    (solid,) = tools(view)
    assert same(solid, tool(kind, 30.0, 20.0, work))
    # Its edge is at the tip, and its outline goes round it, so that the view has room for it.
    assert (30.0, 20.0) in solid.exterior.coords
    (outline,) = closed(view, "thin")
    assert same(outline, solid)
    assert view.extent() == pytest.approx(solid.bounds)


@pytest.mark.parametrize("turn", range(0, 360, 40))
def test_the_head_of_an_arrow_is_where_it_points(turn):
    """A third of it long and two thirds of that wide, about its shaft; worked in its own frame."""
    along = (math.cos(math.radians(turn)), math.sin(math.radians(turn)))
    view = View("bar")
    arrow(view, (3.0, 4.0), (3.0 + 10.0 * along[0], 4.0 + 10.0 * along[1]))
    (((x, y), tip),) = arrows(view)
    assert (x, y) == (3.0, 4.0) and math.dist(tip, (x, y)) == pytest.approx(10.0)
    (head,) = [one for one in view.shapes if type(one) is Fill]
    turned = [
        ((a - x) * along[0] + (b - y) * along[1], (b - y) * along[0] - (a - x) * along[1])
        for a, b in head.points
    ]
    for found, wanted in zip(turned, [(10.0, 0.0), (7.0, 1.05), (7.0, -1.05)], strict=True):
        assert found == pytest.approx(wanted, abs=1e-9)


def test_an_arrow_of_no_length_is_none():
    view = View("bar")
    arrow(view, (3.0, 4.0), (3.0, 4.0))
    assert view.shapes == []


def test_a_size_is_found_by_its_name_or_is_the_first():
    row = SimpleNamespace(sizes=[SimpleNamespace(name=name) for name in ("width", "bore", "gap")])
    assert size_in(row, "bore").name == "bore"
    assert size_in(row, "gap").name == "gap"
    assert size_in(row, "length").name == "width"


def test_the_axis_goes_past_both_ends():
    """By 0.06 of the length and 2 mm."""
    view = View("bar")
    axis_of(view, -10.0, 40.0)
    (line,) = of_layer(view, "centre")
    assert tuple(line[1:]) == pytest.approx((-15.0, 0.0, 45.0, 0.0))


def test_cut_faces_are_two_halves_or_one_without_an_edge_on_the_axis():
    tube = [(0.0, 2.0), (5.0, 2.0), (5.0, 3.0), (0.0, 3.0)]
    assert cut_loops(tube) == [tube, [(x, -y) for x, y in tube]]
    # A pin that is bored from its right end to a point: (2, 0) stays a corner.
    bored = [(0.0, 0.0), (2.0, 0.0), (3.0, 1.0), (5.0, 1.0), (5.0, 3.0), (0.0, 3.0)]
    (loop,) = cut_loops(bored)
    whole = [(0.0, -3.0), (5.0, -3.0), (5.0, -1.0), (3.0, -1.0), (2.0, 0.0), (3.0, 1.0), (5.0, 1.0),
             (5.0, 3.0), (0.0, 3.0)]  # fmt: skip
    assert same(Polygon(loop), Polygon(whole))
    along = [pair for pair in zip(loop, loop[1:] + loop[:1], strict=True)
             if pair[0][1] == pair[1][1] == 0.0]  # fmt: skip
    assert along == []
