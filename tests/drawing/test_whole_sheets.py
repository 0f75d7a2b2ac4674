"""Templates, halves of turned parts and views as a whole: what lies where on paper, by hand."""

import math

import pytest
from shapely.geometry import Polygon, box

from drawing.views import settled_job
from ringwright.core.drawing import setting, template, view
from ringwright.core.drawing.entities import Line, Polyline
from ringwright.core.drawing.paper import Title
from ringwright.core.drawing.turned_part import axis_of, turned

TITLE = Title(*["t"] * 8)


@pytest.mark.parametrize("name", ["double", "small", "plain", "screen"])
def test_a_strip_lies_at_full_size_with_its_cuts_where_the_blank_is_sawn(name):
    job = settled_job(name)
    d, t = job.design, job.tooling
    around = math.pi * d.blank.rough_outside
    pages = template.sheets(job, TITLE)
    strips = [one for page in pages for one in page.views if one.name != "rules"]
    (rules,) = {tuple(one for one in page.views if one.name == "rules")[0].scale for page in pages}
    assert rules == 1.0 and all(one.scale == 1.0 for one in strips)
    at = None
    for strip in strips:
        (edge,) = [one for one in strip.entities if one.layer == "edge"]
        left, low, right, high = Polygon(edge.points).bounds
        assert high - low == pytest.approx(d.blank.length)
        if at is None:
            piece = around if len(strips) == 1 else right - left - 9.0
            at = -piece / 2
        # Nothing hangs over the border of its sheet.
        page = next(page for page in pages if strip in page.views)
        assert left >= 3.0 and right <= page.width - 3.0 and low > 0.0 and high < page.height
        # Slit: two lines a band from either edge, none across the bridge.
        for one in strip.entities:
            if type(one) is Line and one.layer == "outline" and one.y1 == one.y2:
                level = one.y1 - low
                bands = (d.blank.band_width, d.blank.band_width + d.allowances.slit)
                assert min(abs(level - each) for each in bands) < 1e-9
                for x in (one.x1, one.x2):
                    assert left - 1e-9 <= x <= right + 1e-9
                start, end = one.x1 - left + at, one.x2 - left + at
                assert end <= -t.bridge_length / 2 + 1e-9 or start >= t.bridge_length / 2 - 1e-9
        for one in strip.entities:
            if type(one) is Polyline and one.layer == "cut":
                assert box(left, low, right, high).buffer(1e-6).covers(Polygon(one.points))
        at += right - left - (9.0 if strip is not strips[-1] else 0.0)
    # From the bridge's middle once round: the whole outside, and half a piece before it.
    assert at == pytest.approx(around - (around if len(strips) == 1 else piece) / 2)
    for page in pages:
        boxes = [
            Polygon(one.points).bounds
            for each in page.views
            for one in each.entities
            if one.layer == "edge"
        ]
        for upper, lower in zip(boxes, boxes[1:], strict=False):
            # Room below for degrees, above for letters.
            assert upper[1] - lower[3] == pytest.approx(6.0 + 8.5 + 3.0)


def test_both_halves_of_a_turned_part_are_cut_and_its_faces_seen():
    found = view.View("a")
    turned(found, box(0.0, 4.0, 9.0, 11.0).exterior.coords[:-1], (0.0, 9.0), 4.0)
    axis_of(found, 1.0, 9.0)
    outlines = [one for one in found.shapes if type(one) is Polyline]
    assert [Polygon(one.points).bounds for one in outlines] == [(0, 4, 9, 11), (0, -11, 9, -4)]
    lines = [tuple(one) for one in found.shapes if type(one) is Line]
    assert lines[:2] == [("outline", 0.0, -4.0, 0.0, 4.0), ("outline", 9.0, -4.0, 9.0, 4.0)]
    # 6 % of its length and 2 mm beyond both ends.
    assert lines[2] == ("centre", pytest.approx(-1.48), 0.0, pytest.approx(11.48), 0.0)


def test_a_view_takes_the_room_of_its_shape_its_sizes_and_its_words():
    found = view.View("a", "Plate")
    found.add(Polyline("outline", [(-10.0, 5.0), (30.0, 5.0), (30.0, 25.0), (-10.0, 25.0)], True))
    assert found.extent() == (-10.0, 5.0, 30.0, 25.0) and found.size() == (40.0, 20.0)
    bare = found.drawn(0.5, 46.0, 180.0, False)
    left, low, right, high = bare.box
    assert (left, right, high) == pytest.approx((-5.0, 15.0, 12.5))
    # Its title 2 mm and two heights of letters below, the tails of its letters below that.
    assert low == pytest.approx(2.5 - 2.0 - 7.0 - 3.5 * 0.29)
    (title,) = bare.texts
    assert 0.5 * (title[0] + title[2]) == pytest.approx(5.0)
    assert found.beside(46.0) == 0.0
    other = view.View("b")
    other.add(*found.shapes)
    other.label("right", (30.0, 15.0), "Bore")
    other.label("left", (-10.0, 15.0), "Bore Bore")
    # "Bore" is 2.112 letter sizes wide, a blank 0.278; each column begins 7 mm off.
    letter = 3.5 / 0.716
    assert other.beside(46.0) == pytest.approx(14.0 + (3 * 2.112 + 0.278) * letter)
    wide = other.drawn(1.0, 46.0, 180.0, True).box
    assert wide[2] == pytest.approx(30.0 + 7.0 + 2.112 * letter)
    assert wide[0] == pytest.approx(-10.0 - 7.0 - (2 * 2.112 + 0.278) * letter)


def test_only_what_may_fit_is_drawn():
    one = view.View("a")
    one.add(Polyline("outline", [(0.0, 0.0), (40.0, 20.0)], False))
    assert setting._may_fit([one], 2.0, 80.0, 40.0, 46.0)
    assert not setting._may_fit([one], 2.0, 79.9, 40.0, 46.0)
    assert not setting._may_fit([one], 2.0, 80.0, 39.9, 46.0)


def test_steps_of_a_screen_are_a_quarter_apart():
    scales = setting.SCREEN_SCALES
    assert scales[0] == 100.0 and scales[-1] == pytest.approx(0.0125)
    assert all(1.2 < one / other < 1.3 for one, other in zip(scales, scales[1:], strict=False))
    assert len(scales) == 40
