"""What holds blank and ring, each part worked here from the card's figures: soft jaws, slitting
mandrel, closing band, outer clamp."""

import math

import pytest
from shapely.geometry import LineString, Polygon, box
from shapely.ops import unary_union

from drawing.pictures import (
    axis,
    both,
    circles,
    lines,
    measures,
    metal,
    plain_outlines,
    same,
    same_lines,
    same_measures,
    same_shapes,
)
from drawing.views import JOBS, ROUND, closed, cut_faces, drawn, of_layer, settled_among, views
from ringwright.core.drawing.entities import Arc, Hatch, Line

CASES = {name: (name, {}) for name in JOBS}
# So large and so wide that walls and lugs follow the work, and so small that they do not.
CASES["large"] = ("double", {"bore": 260.0, "ring_width": 24.0})
CASES["wide band"] = ("screen", {"bore": 90.0, "ring_width": 14.0})
CASES["small band"] = ("band", {"bore": 24.0})
CASES["large band"] = ("band", {"bore": 300.0})


job = settled_among(CASES)


def first(name, part):
    """The main View of a part, None where the job has none of it."""
    if part not in {key for key, _ in drawn(job(name))}:
        return None
    return next(iter(views(job(name), part).values()))


def stout(bore):
    """A wall left to the maker: a tenth of the bore, at least 6 mm."""
    return max(6.0, 0.1 * bore)


def across(edges):
    return [(x, -radius, x, radius) for x, radius in edges]


@pytest.mark.parametrize("name", CASES)
def test_soft_jaws_are_bored_for_the_blank_with_a_shoulder(name):
    view = first(name, "blank-jaws")
    if view is None:
        return
    d, t = job(name).design, job(name).tooling
    bore, wall = t.blank_jaws_bore / 2, stout(t.blank_jaws_bore)
    depth = job(name).sizes["blank-jaws"]["blank_jaws_depth"].value
    # The shoulder holds four fifths of the wall that the blank has.
    thick = d.blank.set_thickness
    assert thick == pytest.approx((d.blank.rough_outside - d.blank.bored_inside) / 2)
    hole = bore - 0.8 * thick
    jaws = box(-wall, hole, depth, bore + wall).difference(box(0.0, 0.0, 1e4, bore))
    assert same(metal(view), both(jaws)) and len(cut_faces(view)) == 2
    edges = [(-wall, hole), (0.0, hole), (0.0, bore), (depth, bore)]
    assert same_lines(lines(view, "outline"), across(edges))
    blank = box(0.0, d.blank.bored_inside / 2, d.blank.length, bore)
    assert same_shapes(closed(view, "adjacent"), [blank, Polygon(
        [(x, -y) for x, y in blank.exterior.coords]
    )])  # fmt: skip
    assert same_lines(lines(view, "centre"), [axis(-wall, max(depth, d.blank.length))])
    assert not plain_outlines(view)
    wanted = [
        (ROUND, "blank_jaws_bore", "right", depth, -bore, depth, bore),
        ("", "blank_jaws_depth", "top", 0.0, bore, depth, bore + wall),
    ]
    assert same_measures(view, wanted)


@pytest.mark.parametrize("name", CASES)
def test_the_slitting_mandrel_has_its_groove_below_the_slit(name):
    view = first(name, "slitting-mandrel")
    if view is None:
        return
    d, t = job(name).design, job(name).tooling
    radius, long, deep = t.slit_mandrel_diameter / 2, t.slit_mandrel_length, t.slit_relief_depth
    shoulder = max(6.0, 0.3 * long)
    left, right = (long - t.slit_relief_width) / 2, (long + t.slit_relief_width) / 2
    groove = box(left, radius - deep, right, radius + 1.0)
    solid = box(0.0, 0.0, long, radius).difference(groove)
    foot = box(-shoulder, 0.0, 0.0, radius + 0.8 * d.blank.set_thickness)
    assert same(metal(view), both(unary_union([foot, solid])))
    # Solid: one face, and no edge along its axis.
    assert len(cut_faces(view)) == 1 and not lines(view, "outline") and not plain_outlines(view)
    blank = box(0.0, radius, d.blank.length, d.blank.rough_outside / 2)
    found = closed(view, "adjacent")
    assert len(found) == 2 and same(unary_union(found), both(blank))
    # The blank stands against the foot and reaches beyond the end, so that a washer bears on it.
    assert d.blank.length > long
    assert foot.intersection(blank).length == pytest.approx(0.8 * d.blank.set_thickness)
    assert same_lines(lines(view, "centre"), [axis(-shoulder, d.blank.length)])
    wanted = [
        (ROUND, "slit_mandrel_diameter", "right", long, -radius, long, radius),
        ("", "slit_relief_width", "top", left, radius, right, radius),
        ("", "slit_mandrel_length", "bottom", 0.0, -radius, long, -radius),
    ]
    assert same_measures(view, wanted)
    # The words of the groove point at its floor, in the middle.
    (label,) = view.labels
    assert label.point == pytest.approx((long / 2, radius - deep))
    assert (label.name, label.value, label.unit) == ("slit_relief_depth", deep, "mm")
    assert label.text.startswith("Groove ")


@pytest.mark.parametrize("name", CASES)
def test_the_closing_band_is_open_between_lugs_that_stand_on_it(name):
    view = first(name, "closing-band")
    if view is None:
        return
    d, t = job(name).design, job(name).tooling
    ring = (d.blank.finish_outside + d.allowances.finishing) / 2
    thick = max(0.3, 0.1 * d.blank.set_thickness)
    assert circles(view, "adjacent") == [pytest.approx((0.0, 0.0, ring))]
    (band,) = [one for one in view.shapes if type(one) is Arc]
    assert band[:4] == ("outline", 0.0, 0.0, pytest.approx(ring + thick))
    # As much of the turn, along the ring, as is said between its lugs; the rest is at the top.
    assert ring * math.radians(band.end - band.start) == pytest.approx(t.band_length)
    assert (band.start + band.end) / 2 == pytest.approx(270.0)
    assert 0.0 < band.start - 90.0 < 30.0
    # A lug's inner face is the radius through the band's end; it stands out by `high`.
    high, wide = max(4.0, 0.12 * ring), 0.3 * max(4.0, 0.12 * ring)
    turn = math.radians(band.start)
    out, away = (math.cos(turn), math.sin(turn)), (-math.sin(turn), math.cos(turn))
    corners = [(ring, 0.0), (ring + high, 0.0), (ring + high, wide), (ring, wide)]
    lug = Polygon([(r * out[0] + w * away[0], r * out[1] + w * away[1]) for r, w in corners])
    other = Polygon([(-x, y) for x, y in lug.exterior.coords])
    lugs = closed(view, "outline")
    assert same_shapes(lugs, [lug, other])
    # They stand on the band and not in the ring.
    for one in lugs:
        foot = [math.hypot(x, y) for x, y in one.exterior.coords]
        assert ring - 1e-9 < min(foot) and sorted(foot)[2] < ring + thick
    between = lugs[0].distance(lugs[1])
    opening = 2.0 * math.pi * ring - t.band_length
    assert between == pytest.approx(2.0 * ring * math.sin(opening / ring / 2.0))
    reach = 1.12 * ring
    cross = [(-reach, 0.0, reach, 0.0), (0.0, -reach, 0.0, reach)]
    assert same_lines(lines(view, "centre"), cross)
    # The words point at the band.
    (label,) = view.labels
    assert math.hypot(*label.point) == pytest.approx(ring + thick, rel=1e-4)
    assert math.atan2(label.point[1], label.point[0]) == pytest.approx(math.pi / 4)
    assert (label.name, label.value, label.unit) == ("band_length", t.band_length, "mm")
    assert not view.measures and not cut_faces(view)


@pytest.mark.parametrize("name", CASES)
def test_the_outer_clamp_grips_the_ring_by_its_sides(name):
    view = first(name, "outer-clamp")
    if view is None:
        return
    d, t = job(name).design, job(name).tooling
    bore, hole, width = t.outer_clamp_bore / 2, t.clamp_ring_bore / 2, d.section.width
    depth = job(name).sizes["outer-clamp"]["outer_clamp_depth"].value
    outer, back = bore + stout(t.outer_clamp_bore), max(4.0, width / 2)
    cup = box(-back, hole, depth, outer).difference(box(0.0, 0.0, 1e4, bore))
    cover = box(width, hole, width + back, outer)
    faces = cut_faces(view)
    assert same(unary_union(faces), both(unary_union([cup, cover]))) and len(faces) == 4
    # The clamp ring is hatched the other way: it is another part.
    assert {one.angle for one in view.shapes if type(one) is Hatch} == {45.0, 135.0}
    for one in view.shapes:
        if type(one) is Hatch:
            other = one.angle == 135.0
            assert other == (min(x for x, _ in one.loops[0]) == width)
    # It stands clear of the cup, so that it bears on the ring.
    assert depth < width
    ring = box(0.0, t.inside_clamped / 2, width, bore)
    found = closed(view, "adjacent")
    assert len(found) == 2 and same(unary_union(found), both(ring))
    for part in (cup, cover):
        held = part.intersection(ring)
        assert held.area == 0.0 and held.length >= bore - hole - 1e-9
    assert same_lines(lines(view, "outline"), across([(-back, hole), (width + back, hole)]))
    assert same_lines(lines(view, "centre"), [axis(-back, width + back)])
    wanted = [
        (ROUND, "outer_clamp_bore", "right", depth, -bore, depth, bore),
        (ROUND, "clamp_ring_bore", "left", -back, -hole, -back, hole),
        ("", "outer_clamp_depth", "top", 0.0, bore, depth, outer),
    ]
    assert same_measures(view, wanted)
    assert LineString([(0, hole), (0, bore)]).within(cup.boundary.buffer(1e-9))


def test_each_part_is_drawn_for_some_job():
    """So that none of the tests above is passed by having nothing to look at."""
    for part in ("blank-jaws", "slitting-mandrel", "closing-band", "outer-clamp"):
        seen = [name for name in CASES if first(name, part) is not None]
        assert len(seen) >= 3, part
    assert len(measures(first("double", "slitting-mandrel"))) == 3


@pytest.mark.parametrize("name", ["double", "stick"])
def test_hatching_is_at_45_degrees(name):
    """ISO 128-50: at 45 degrees to the axis; neighbours the other way, or closer."""
    for key, view in drawn(job(name)):
        for one in of_layer(view, "hatching"):
            assert one.angle in (45.0, 135.0), (key, view.name)
            assert 1.0 < one.spacing <= 2.5


@pytest.mark.parametrize("name", JOBS)
def test_no_line_is_a_point(name):
    """The edges of a hole are as long as it is wide."""
    for key, view in drawn(job(name)):
        for one in view.shapes:
            if type(one) is Line:
                assert math.dist(one[1:3], one[3:5]) > 1e-3, (key, view.name)
