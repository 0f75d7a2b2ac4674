"""Pictures of what is done to the bar in the chuck, each worked here from the card's figures."""

import pytest
from shapely.geometry import Polygon, box

from drawing.pictures import (
    axis,
    both,
    lines,
    metal,
    plain_outlines,
    same,
    same_arrows,
    same_lines,
    same_measures,
    same_shapes,
    tool,
    tool_size,
    tools,
)
from drawing.views import JOBS, ROUND, cut_faces, settled_among, views

CASES = {name: (name, {}) for name in JOBS}
# Solid although a cored bar is less metal; none made so large; of another metal; a wide ring; a
# stick that is slit with a finer saw.
CASES["solid"] = ("double", {"bar_form": "solid", "bar_sizes": "metric"})
CASES["casting"] = ("square", {"bore": 450.0})
CASES["wide"] = ("square", {"bore": 30.0, "ring_width": 14.0})
CASES["fine stick"] = ("stick", {"bore": 40.0})
CASES["bronze"] = ("square", {"bore": 94.0, "ring_material": "phosphor-bronze"})
NEVER = 1e5


job = settled_among(CASES)


def size(name, key, figure):
    """The value of a size of the card."""
    return next(one.value for one in job(name).operations[key].sizes if one.name == figure)


def bar(name):
    """(radius over the skin, of the hole as cast, how far it is shown to stand out)."""
    d, found = job(name).design, job(name).bar
    if found is None:
        skin, hole = d.blank.rough_outside / 2 + 3.0, d.blank.bored_inside / 2 - 3.0
    else:
        skin, hole = found.as_cast / 2, found.as_cast_bore / 2
    # At least a blank with what is faced off its two sides, and more than half as much again.
    return skin, hole, max(0.9 * skin, 1.6 * (d.blank.length + 2 * d.allowances.facing))


def drilled(name):
    """Radius of the hole in the bar when it is turned."""
    if "drill" in job(name).operations:
        return size(name, "drill", "drill_diameter") / 2
    return bar(name)[1]


def made(long, outer, hole, turned=None, bored=None, point=0.0):
    """The upper half of a bar whose right part, from 0.45 of it on, is turned or bored."""
    half = 0.45 * long
    shape = box(0.0, hole, long, outer)
    if turned is not None:
        shape = shape.difference(box(half, turned, NEVER, NEVER))
    if bored is not None:
        shape = shape.difference(box(half, 0.0, NEVER, bored))
    if point:
        shape = shape.difference(Polygon([(half - point, 0.0), (half, 0.0), (half, bored)]))
    return shape


def holds(view, long, outer, shape, edges, more=()):
    """The bar in its chuck: nothing else is drawn with wide lines but `more`.

    outer: radius that the jaws hold. edges: (x, radius) of what is seen in the hole.
    """
    assert same(metal(view), both(shape))
    assert {one.angle for one in view.shapes if hasattr(one, "angle")} == {45.0}
    # No edge runs along the axis of a bar without a hole through it.
    assert len(cut_faces(view)) == (1 if shape.bounds[1] == 0.0 else 2)
    assert same_lines(lines(view, "outline"), [(x, -y, x, y) for x, y in edges])
    # The jaws hold a quarter of it, and go past its end to the chuck, which is a jaw deep.
    jaw = 0.32 * outer
    back = -0.1 * outer
    upper = box(back, outer, 0.25 * long, outer + jaw)
    under = box(back, -outer - jaw, 0.25 * long, -outer)
    face = box(back - jaw, -outer - 1.3 * jaw, back, outer + 1.3 * jaw)
    assert same_shapes(plain_outlines(view), [upper, under, face, *more])
    assert same_lines(lines(view, "centre"), [axis(-jaw, long)])


def picture(name, key):
    (view,) = views(job(name), "operation " + key).values()
    return view


def test_the_bar_is_the_one_of_the_card():
    """As cast, by the producers' tables of stock over the size that is asked for.

    A 3 1/4 in iron bar has 0.110 in over it, cored 2 1/4 in with 0.250 in less in its bore; one of
    85 mm, to 4 in, 0.125 in; a 7/8 in bar 0.085 in; bronze to 4 in between 0.034 and 0.044 in.
    """
    for name, outside, inside in (
        ("double", 25.4 * (3.25 + 0.110), 25.4 * (2.25 - 0.250)),
        ("small", 25.4 * (0.875 + 0.085), 0.0),
        ("solid", 85.0 + 25.4 * 0.125, 0.0),
    ):
        view = picture(name, "face-bar")
        shape = made(bar(name)[2], outside / 2, inside / 2)
        assert same(metal(view), both(shape)), name
    wide = 2 * metal(picture("bronze", "face-bar")).bounds[3]
    d = job("bronze").design
    assert d.blank.rough_outside < wide - 25.4 * 0.039 < d.blank.rough_outside + 25.4 * 0.25
    assert job("casting").bar is None


@pytest.mark.parametrize("name", CASES)
def test_the_cylinder_is_gauged_across_at_three_heights(name):
    bore = job(name).design.duty.bore
    radius, long = bore / 2, 1.6 * bore
    view = picture(name, "survey")
    wall = both(box(0.0, radius, long, radius + max(6.0, 0.22 * radius)))
    assert same(metal(view), wall) and len(cut_faces(view)) == 2
    ends = [(x, -radius, x, radius) for x in (0.0, long)]
    assert same_lines(lines(view, "outline"), ends)
    assert same_lines(lines(view, "centre"), [axis(0.0, long)])
    places = [(share * long, way) for share in (0.15, 0.5, 0.85) for way in (1, -1)]
    assert same_arrows(view, [((x, 0.1 * way * radius), (x, way * radius)) for x, way in places])
    assert same_measures(view, [(ROUND, "bore", "left", 0.0, -radius, 0.0, radius)])
    # As fine as a bore is gauged.
    text = "%.4f" % (bore / 25.4) if job(name).system == "inch" else "%.3f" % bore
    assert view.measures[0].words.lines == (text,)
    assert not plain_outlines(view) and not tools(view)


@pytest.mark.parametrize("name", CASES)
def test_the_end_of_the_bar_is_faced_inwards(name):
    skin, hole, long = bar(name)
    view = picture(name, "face-bar")
    edges = [(0.0, hole), (long, hole)] if hole else []
    holds(view, long, skin, made(long, skin, hole), edges)
    wall, s = skin - hole, tool_size(skin)
    assert same_shapes(tools(view), [tool("face", long, hole + 0.72 * wall, skin)])
    down = ((long + s, hole + 0.6 * wall), (long + s, hole + 0.2 * wall))
    assert same_arrows(view, [down]) and not view.measures


@pytest.mark.parametrize("name", ["small", "solid"])
def test_the_drill_stands_at_the_bottom_of_its_hole(name):
    """Its point, of 118 degrees, is 0.3 of it long."""
    skin, _, long = bar(name)
    view = picture(name, "drill")
    across = size(name, "drill", "drill_diameter")
    radius, point, half = across / 2, 0.3 * across, 0.45 * long
    reach = long + 1.2 * skin
    tip = [(half - point, 0.0), (half, radius), (reach, radius), (reach, -radius), (half, -radius)]
    shape = made(long, skin, 0.0, bored=radius, point=point)
    holds(view, long, skin, shape, [(long, radius), (half, radius)], [Polygon(tip)])
    assert same_arrows(view, [((reach, 1.8 * radius), (long, 1.8 * radius))])
    wanted = (ROUND, "drill_diameter", "right", reach, -radius, reach, radius)
    assert same_measures(view, [wanted]) and not tools(view)


@pytest.mark.parametrize("name", CASES)
def test_the_outside_is_turned_towards_the_chuck(name):
    skin, _, long = bar(name)
    hole, half = drilled(name), 0.45 * long
    view = picture(name, "turn-rough")
    radius = size(name, "turn-rough", "rough_outside_diameter") / 2
    edges = [(0.0, hole), (long, hole)]
    holds(view, long, skin, made(long, skin, hole, turned=radius), edges)
    assert same_shapes(tools(view), [tool("turn", half, radius, skin)])
    s = tool_size(skin)
    assert same_arrows(view, [((half + 2.6 * s, skin + s), (half + s, skin + s))])
    wanted = (ROUND, "rough_outside_diameter", "right", long, -radius, long, radius)
    assert same_measures(view, [wanted])


@pytest.mark.parametrize("key", ["bore-rough", "bore"])
@pytest.mark.parametrize("name", CASES)
def test_the_bore_is_opened_from_the_end(name, key):
    if key not in job(name).operations:
        return
    outer, long = job(name).design.blank.rough_outside / 2, bar(name)[2]
    figure = {"bore-rough": "roughed_bore", "bore": "bored_inside_diameter"}[key]
    radius, half = size(name, key, figure) / 2, 0.45 * long
    # So that it can be told from the bore, the hole is shown at four fifths of it at the most.
    hole = min(drilled(name), 0.8 * radius)
    view = picture(name, key)
    shape = made(long, outer, hole, bored=radius)
    holds(view, long, outer, shape, [(0.0, hole), (half, radius), (long, radius)])
    assert same_shapes(tools(view), [tool("bore", half, radius, radius)])
    s = tool_size(radius)
    assert same_arrows(view, [((long + 3 * s, radius / 2), (long + s, radius / 2))])
    assert same_measures(view, [(ROUND, figure, "left", 0.0, -radius, 0.0, radius)])


@pytest.mark.parametrize("name", CASES)
def test_the_parting_tool_goes_in_behind_the_blank(name):
    if "part-off" not in job(name).operations:
        return
    d, long = job(name).design, bar(name)[2]
    outer, inner = d.blank.rough_outside / 2, d.blank.bored_inside / 2
    view = picture(name, "part-off")
    holds(view, long, outer, made(long, outer, inner), [(0.0, inner), (long, inner)])
    left, wide = long - size(name, "part-off", "part_length"), max(2.0, 0.03 * outer)
    # A blade that has gone through 0.7 of the wall, in a holder three times as wide.
    blade = box(left - wide, inner + 0.3 * (outer - inner), left, outer + 3 * wide)
    holder = box(left - 3 * wide, outer + 3 * wide, left, outer + 9 * wide)
    assert same_shapes(tools(view), [blade, holder])
    x = left + 2 * wide
    assert same_arrows(view, [((x, outer + 9 * wide), (x, outer + 3 * wide))])
    assert same_measures(view, [("", "part_length", "bottom", left, -outer, long, -outer)])


@pytest.mark.parametrize("name", ["stick", "fine stick"])
def test_the_stick_is_clocked_on_the_rotary_table(name):
    """At both its ends, and along it."""
    d, long = job(name).design, bar(name)[2]
    outer, inner = d.blank.rough_outside / 2, d.blank.bored_inside / 2
    view = picture(name, "hold-stick")
    holds(view, long, outer, made(long, outer, inner), [(0.0, inner), (long, inner)])
    down = [((x * long, 1.5 * outer), (x * long, outer)) for x in (0.3, 0.9)]
    along = ((0.45 * long, 1.5 * outer), (0.75 * long, 1.5 * outer))
    assert same_arrows(view, [*down, along])
    assert not view.measures and not tools(view)


@pytest.mark.parametrize("name", ["stick", "fine stick"])
def test_a_blank_is_sawn_off_its_stick_behind_the_slit(name):
    """Free end, band, slit, band, cut: a blank is two bands and a slit long."""
    d, t, long = job(name).design, job(name).tooling, bar(name)[2]
    outer, inner = d.blank.rough_outside / 2, d.blank.bored_inside / 2
    view = picture(name, "saw-off")
    holds(view, long, outer, made(long, outer, inner), [(0.0, inner), (long, inner)])
    kerf, band = d.allowances.slit, d.blank.band_width
    low = t.slit.centre_distance - t.cutter_diameter / 2
    slit = box(long - band - kerf, low, long - band, 1.5 * outer)
    blank = 2 * band + kerf
    assert blank == pytest.approx(d.blank.length)
    cut = box(long - blank - kerf, low, long - blank, 1.5 * outer)
    assert same_shapes(tools(view), [slit, cut])
    # The saw is deeper than the wall.
    assert low < inner
    middles = [(one.bounds[0] + one.bounds[2]) / 2 for one in (slit, cut)]
    high = 1.7 * outer
    assert same_arrows(view, [((middles[0], high), (middles[1], high))])
    assert same_measures(
        view,
        [
            ("", "cut_off_step", "top", middles[1], high, middles[0], high),
            ("", "blank_length", "bottom", long - blank, -outer, long, -outer),
        ],
    )
