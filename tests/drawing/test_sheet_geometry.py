"""Dimensions, charts, sheets, templates and SVG as they are set out, reckoned here by hand."""

import math
from types import SimpleNamespace

import pytest
from shapely.geometry import LineString, Polygon, box
from svgelements import Path

from ringwright.core.drawing import (
    axes,
    entities,
    letters,
    paper,
    rails,
    setting,
    style,
    svg,
    template,
    view,
)
from ringwright.core.drawing.entities import Arc, Circle, Fill, Line, Polyline, Text
from ringwright.core.drawing.words import Words

SIDES = {"top": (0, 1, 1), "bottom": (0, 1, -1), "right": (1, 0, 1), "left": (1, 0, -1)}


def measure(low, high, side, name="a", words="12.5", off=2.0):
    along, across, way = SIDES[side]
    points = []
    for at in (low, high):
        point = [0.0, 0.0]
        point[along], point[across] = at, way * off
        points.append(tuple(point))
    return rails.Measure(name, high - low, side, points[0], points[1], Words("", (words,)))


def uv(side, x, y):
    along, across, way = SIDES[side]
    return ((x, y)[along], way * (x, y)[across])


@pytest.mark.parametrize("side", SIDES)
def test_arrows_end_at_what_is_measured(side):
    """Scale 2: from 3 to 21 mm the arrows' tips stand at 6 and 42, both between the lines."""
    (found,), boxes = rails.placed([measure(3.0, 21.0, side)], side, 2.0, 9.0, 3.5)
    arrows = [one for one in found.parts if type(one) is Fill]
    tips = sorted(uv(side, *one.points[0]) for one in arrows)
    level = tips[0][1]
    assert [u for u, _ in tips] == pytest.approx([6.0, 42.0]) and tips[1][1] == level
    for one, tip in zip(sorted(uv(side, *one) for one in found.points), tips, strict=True):
        assert one == pytest.approx(tip)
    arrows.sort(key=lambda one: uv(side, *one.points[0]))
    for one, sign in zip(arrows, (1, -1), strict=True):
        ends = [uv(side, *point) for point in one.points[1:]]
        assert [u for u, _ in ends] == pytest.approx([uv(side, *one.points[0])[0] + sign * 3.5] * 2)
        assert sorted(v - level for _, v in ends) == pytest.approx([-0.6, 0.6])
    lines = [one for one in found.parts if type(one) is Line]
    ends = [(uv(side, one.x1, one.y1), uv(side, one.x2, one.y2)) for one in lines]
    # The dimension line from tip to tip; extension lines clear of the shape and past the line.
    along = [(one[0][0], one[1][0]) for one in ends if one[0][1] == one[1][1]]
    assert along == [pytest.approx((6.0, 42.0))]
    extensions = [one for one in ends if one[0][0] == one[1][0]]
    assert sorted(one[0][0] for one in extensions) == pytest.approx([6.0, 42.0])
    for one in extensions:
        assert one[0][1] == pytest.approx(2.0 * 2.0 + 1.0) and one[1][1] == pytest.approx(level + 2)
    # Words in the middle, a millimetre off the line, on the side from which they are read.
    wide = letters.width("12.5", 3.5)
    (corner,) = boxes
    (low, one), (high, other) = uv(side, *corner[:2]), uv(side, *corner[2:])
    assert (low + high) / 2 == pytest.approx(24.0) and abs(high - low) == pytest.approx(wide)
    near, far = sorted((one, other))
    assert far - near == pytest.approx(3.5)
    if side in ("top", "left"):
        assert level == pytest.approx(9.0 + 8.0) and near == pytest.approx(level + 1.0)
    else:
        assert level == pytest.approx(9.0 + 8.0) and far == pytest.approx(level - 1.0)


def test_a_short_size_has_its_arrows_outside_and_its_words_beyond():
    (found,), boxes = rails.placed([measure(3.0, 6.0, "top")], "top", 1.0, 0.0, 3.5)
    arrows = sorted(
        (one for one in found.parts if type(one) is Fill), key=lambda one: one.points[0]
    )
    assert [one.points[0][0] for one in arrows] == [3.0, 6.0]
    # Bodies outwards, tails as long as two arrows.
    assert [one.points[1][0] for one in arrows] == pytest.approx([-0.5, 9.5])
    level = [one for one in found.parts if type(one) is Line and one.y1 == one.y2]
    reach = [(one.x1, one.x2) for one in level]
    assert (3.0 - 7.0, 3.0 - 3.5) in reach and (3.0, 6.0) in reach
    # Beyond the upper end, past its tail: from 6 + 7.
    assert boxes[0][0] == pytest.approx(13.0)
    assert max(x for _, x in reach) == pytest.approx(13.0 + letters.width("12.5", 3.5))


def test_sizes_that_would_meet_stand_on_lines_of_their_own():
    whole = measure(0.0, 60.0, "top", "whole")
    parts = [measure(0.0, 25.0, "top", "left"), measure(25.0, 60.0, "top", "right")]
    found, boxes = rails.placed([whole, *parts], "top", 1.0, 0.0, 3.5)
    level = {one.name: one.points[0][1] for one in found}
    # Chained sizes share a line; what spans them both stands farther out by a line of words.
    assert level["left"] == level["right"] == 8.0
    assert level["whole"] == pytest.approx(8.0 + 3.5 + style.ABOVE_LINE + style.RAIL_GAP)
    shapes = [box(*one) for one in boxes]
    for at, one in enumerate(shapes):
        assert all(one.distance(other) > 0.5 for other in shapes[:at])
    # From below words stand between line and view: the first line leaves room for them.
    below = [one._replace(side="bottom") for one in (whole, *parts)]
    lows, boxes = rails.placed(below, "bottom", 1.0, 0.0, 3.5)
    depth = {one.name: -one.points[0][1] for one in lows}
    assert depth["left"] == 8.0 and depth["whole"] == pytest.approx(15.0)
    assert all(one[3] <= 0.0 for one in boxes)


def test_an_extension_line_breaks_where_it_would_cross_words():
    inner = measure(0.0, 4.0, "top", "inner", "123.45")
    outer = measure(-30.0, 14.0, "top", "outer")
    found, boxes = rails.placed([inner, outer], "top", 1.0, 0.0, 3.5)
    words = dict(zip((one.name for one in found), boxes, strict=True))["inner"]
    assert words[0] < 14.0 < words[2]
    (one,) = [each for each in found if each.name == "outer"]
    pieces = [each for each in one.parts if type(each) is Line and each.x1 == each.x2 == 14.0]
    assert len(pieces) == 2
    for piece in pieces:
        assert LineString([(14.0, piece.y1), (14.0, piece.y2)]).distance(box(*words)) >= 0.599
    assert sum(each.y2 - each.y1 for each in pieces) == pytest.approx(
        pieces[-1].y2 - pieces[0].y1 - (words[3] - words[1] + 1.2)
    )


def chart():
    return axes.Axes("a", "A", 80.0, 40.0, (10.0, 50.0, "size [mm]"), (-5.0, 15.0, "share [%]"))


def test_a_value_stands_at_its_place_of_a_chart():
    one = chart()
    assert one.place(10.0, -5.0) == (0.0, 0.0) and one.place(50.0, 15.0) == (80.0, 40.0)
    assert one.place(20.0, 0.0) == (20.0, 10.0)
    one.view.shapes = []
    one.curve("outline", [(0.0, 0.0), (20.0, 0.0), (30.0, 5.0), (30.0, 25.0), (40.0, 5.0)])
    first, second = one.view.shapes
    # It comes in over the left edge and goes out over the top, half-way up its way.
    assert [pytest.approx(each, abs=1e-4) for each in first.points] == [
        (0.0, 10.0), (20.0, 10.0), (40.0, 20.0), (40.0, 40.0)
    ]  # fmt: skip
    # Back from 25 to 5 it passes 15 half-way along: at 35.
    assert [pytest.approx(each, abs=1e-4) for each in second.points] == [(50.0, 40.0), (60.0, 20.0)]
    one.view.shapes = []
    one.region([(10.0, -5.0), (20.0, 0.0)])
    one.point(20.0, 0.0)
    fill, ring, dot = one.view.shapes
    assert fill.points == [(0.0, 0.0), (20.0, 10.0)] and fill.layer == "region"
    assert (ring.x, ring.y) == (dot.x, dot.y) == (20.0, 10.0) and ring.radius > dot.radius


def test_marks_of_a_chart_stand_at_their_numbers_and_clear_of_each_other():
    one = chart()
    texts = [each for each in one.view.shapes if type(each) is Text]
    lines = [each for each in one.view.shapes if type(each) is Line]
    across = [each for each in texts if each.align == "middle" and each.y == -3.0 - style.LETTERS]
    assert [each.text for each in across] == ["20", "40"]
    assert [each.x for each in across] == pytest.approx([20.0, 60.0])
    up = [each for each in texts if each.align == "end"]
    # 12 mm of 40 for 20 %: steps of 10.
    assert [each.text for each in up] == ["0", "10"]
    assert [each.y + 0.5 * style.LETTERS for each in up] == pytest.approx([10.0, 30.0])
    assert {each.x for each in up} == {-2.5}
    for x in (20.0, 60.0):
        assert Line("thin", x, 0.0, x, 40.0) in lines and Line("outline", x, 0.0, x, -1.5) in lines
    for y in (10.0, 30.0):
        assert Line("thin", 0.0, y, 80.0, y) in lines and Line("outline", 0.0, y, -1.5, y) in lines
    title, name = texts[2], texts[-1]
    assert (title.text, title.x) == ("size [mm]", 40.0)
    assert title.y + title.size < across[0].y
    assert (name.text, name.x, name.y) == ("share [%]", 0.0, 43.5)
    boxes = [box(*view.text_box(each)) for each in texts]
    assert all(not one.intersects(other) for at, one in enumerate(boxes) for other in boxes[:at])


def test_numbers_of_a_scale_are_round_and_have_room():
    for low, high, length, room, wanted in (
        (0.0, 1.0, 100.0, 22.0, ["0.0", "0.5", "1.0"]),
        (0.0, 200.0, 110.0, 12.0, ["0", "50", "100", "150", "200"]),
        (3.0, 47.0, 100.0, 22.0, ["10", "20", "30", "40"]),
        (0.0, 7300.0, 100.0, 22.0, ["0", "2000", "4000", "6000"]),
        (0.0011, 0.0089, 100.0, 22.0, ["0.002", "0.004", "0.006", "0.008"]),
        (-3.0, 9.0, 60.0, 12.0, ["0", "5"]),
    ):
        found = axes.marks(low, high, length, room)
        assert [words.replace("\u202f", "").replace(" ", "") for _, words in found] == wanted
        for value, words in found:
            assert value == pytest.approx(float(words.replace("\u202f", "").replace(" ", "")))
        assert (found[1][0] - found[0][0]) * length / (high - low) >= room - 1e-9


def test_svg_numbers_are_micrometres_written_short():
    small = ((-0.0124, "-0.012"), (0.0005, "0.001"), (0.0004, "0"), (0.07, "0.07"))
    for value, text in ((12.0, "12"), (12.5, "12.5"), (-3.25, "-3.25"), (1000.0, "1000"), *small):
        assert svg._number(value) == text
    assert svg._fine(0.315) == "0.315" and svg._fine(2.0 / 3.0) == "0.666667"
    assert svg._fine(20.0) == "20"


@pytest.mark.parametrize(("start", "end"), [(20.0, 95.0), (-40.0, 200.0), (10.0, 190.0)])
def test_an_arc_in_svg_runs_through_the_same_points(start, end):
    """Read by another library, upside down as SVG is."""
    found = Path(svg._arc(Arc("thin", 30.0, 40.0, 12.0, start, end), 100.0))
    for share in (0.0, 0.25, 0.6, 1.0):
        angle = math.radians(start + share * (end - start))
        wanted = (30.0 + 12.0 * math.cos(angle), 60.0 - 12.0 * math.sin(angle))
        there = min(math.dist((point.x, point.y), wanted)
                    for point in (found.point(at / 400.0) for at in range(401)))  # fmt: skip
        assert there < 0.15
    assert found.length() == pytest.approx(math.radians(end - start) * 12.0, rel=1e-3)


def test_marked_letters_are_replaced_and_forbidden_ones_left_out():
    assert svg.escaped('a<b>&"c') == "a&lt;b&gt;&amp;&quot;c"
    for code in (31, 0x7F, 0x9F, 0xD800, 0xDFFF, 0xFFFE, 0xFFFF, 0x1FFFF):
        assert svg.escaped(chr(code)) == " ", hex(code)
    for code in (32, 0x7E, 0xA0, 0xD7FF, 0xE000, 0xFFFD):
        assert svg.escaped(chr(code)) == chr(code), hex(code)


def test_shapes_in_svg_are_turned_upside_down_and_keep_their_places():
    assert svg._entity(Line("thin", 1.0, 2.0, 3.0, 5.0), 100.0) == (
        '<line class="rw-thin" x1="1" y1="98" x2="3" y2="95"/>'
    )
    assert 'cx="1" cy="98" r="3"' in svg._entity(Circle("thin", 1.0, 2.0, 3.0), 100.0)
    assert 'd="M1 98L3 95"' in svg._entity(Polyline("thin", [(1.0, 2.0), (3.0, 5.0)], False), 100.0)
    text = svg._entity(Text("text", 1.0, 2.0, 3.58, "O\u00d8", "end", 90, True), 100.0)
    for part in ('x="1" y="98"', 'font-size="5"', 'text-anchor="end"', "rotate(-90 1 98)"):
        assert part in text
    # 778 thousandths twice, bold.
    assert 'textLength="%s"' % svg._number(2 * 0.778 * 5.0 * letters.BOLD) in text


@pytest.mark.parametrize("name", ["A4", "Letter"])
def test_the_title_block_stands_in_the_corner_of_its_border(name):
    sheet = paper.PAPERS[name]
    title = paper.Title(*["w" * 30] * 8)
    found = paper.title_block(sheet, title, 0.5, 3, 7)
    block = box(20.0, 10.0, sheet.width - 10.0, 10.0 + 11.0 + 27.0)
    cells = [one for one in found if type(one) is Line]
    level = sorted({one.y1 for one in cells if one.layer == "frame"})
    assert level == [19.0, 28.0, 37.0, 48.0] and paper.block_height(sheet) == 38.0
    dividers = [one for one in cells if one.layer == "thin"]
    for one in dividers:
        assert abs(one.y1 - one.y2) in (9.0, 11.0) and 20.0 < one.x1 < sheet.width - 10.0
    # 2, 5, 3 and 4 boxes: one line less each.
    assert len(dividers) == 1 + 4 + 2 + 3
    texts = [one for one in found if type(one) is Text]
    said = [one.text for one in texts]
    assert "1:2" in said and "3 of 7" in said
    for one in texts:
        wide = box(*view.text_box(one))
        assert block.covers(wide), one
        for line in dividers:
            assert not wide.intersects(LineString([(line.x1, line.y1), (line.x2, line.y2)])), one
    boxes = [box(*view.text_box(each)) for each in texts]
    assert all(not one.intersects(other) for at, one in enumerate(boxes) for other in boxes[:at])
    # First-angle projection: the cone's small end is away from its circles (ISO 5456-2).
    (cone,) = [one for one in found if type(one) is Polyline]
    circles = sorted((one for one in found if type(one) is Circle), key=lambda one: one.radius)
    small, large = [one.radius for one in circles]
    xs = sorted({x for x, _ in cone.points})
    heights = [[y for x, y in cone.points if x == side] for side in xs]
    assert [max(one) - min(one) for one in heights] == pytest.approx([2 * small, 2 * large])
    assert xs[1] < circles[0].x - large and circles[0].y == circles[1].y
    assert 0.5 * (max(heights[0]) + min(heights[0])) == pytest.approx(circles[0].y)


def test_the_border_has_its_centring_marks():
    """ISO 5457: at the middle of the sheet's edges, 5 mm outwards from the border."""
    frame, *marks = paper.border(paper.PAPERS["A4"])
    assert Polygon(frame.points).bounds == (20.0, 10.0, 200.0, 287.0)
    assert {(one.x1, one.y1, one.x2, one.y2) for one in marks} == {
        (105.0, 287.0, 105.0, 292.0), (105.0, 10.0, 105.0, 5.0),
        (20.0, 148.5, 15.0, 148.5), (200.0, 148.5, 205.0, 148.5),
    }  # fmt: skip


def test_room_for_views_is_what_block_and_notes_leave():
    left, bottom, wide, high = setting.room("A4", ["one", "two"])
    # 10 + 38 for the block; two notes of 2.5 mm letters at 1.6, and 4 mm.
    assert (left, wide) == (20.0, 180.0)
    assert bottom == pytest.approx(48.0 + 2 * 2.5 * 1.6 + 4.0)
    assert bottom + high == pytest.approx(287.0)
    left, bottom, wide, high = setting.room("screen", [])
    assert (left, wide, bottom) == (3.0, 124.0, 3.0)
    assert bottom + high == pytest.approx(200.0 - 3.0 - 3.5 * 2.2)


def drawn(wide, high):
    return view.Drawn(1.0, [Line("thin", 0.0, 0.0, wide, high)], (0.0, 0.0, wide, high), [])


def test_views_are_set_out_side_by_side_or_below_one_another():
    one, two, three = (SimpleNamespace(name=name, title=name) for name in "abc")
    sizes = ((one, drawn(30.0, 20.0)), (two, drawn(50.0, 10.0)), (three, drawn(40.0, 35.0)))
    ways = setting._arrangements(list(sizes))
    rows = [[[each[0].name for each in row] for row in way] for way in ways]
    assert rows[0] == [["a", "b", "c"]] and len(rows) == 4
    assert [["a"], ["b"], ["c"]] in rows and [["a", "b"], ["c"]] in rows
    two_rows = [list(sizes[:2]), [sizes[2]]]
    assert setting._width(two_rows) == 88.0 and setting._height(two_rows) == 20.0 + 8.0 + 35.0
    placed = setting._placed(two_rows, 20.0, 50.0, 100.0, 90.0)
    # 27 mm to spare above, between and below: 9 each; 12 across in three: 4 each.
    assert placed[0].box == pytest.approx((24.0, 50.0 + 90.0 - 9.0 - 20.0, 54.0, 131.0))
    assert placed[1].box == pytest.approx((66.0, 116.0, 116.0, 126.0))
    assert placed[2].box == pytest.approx((50.0, 59.0, 90.0, 94.0))
    for each in placed:
        (line,) = each.entities
        assert (line.x1, line.y1, line.x2, line.y2) == pytest.approx(each.box)


def test_the_part_of_a_cut_that_lies_on_a_piece_is_what_shapely_cuts_off():
    corners = [(0.0, 0.0), (2.0, 0.0), (8.0, 6.0), (6.0, 6.0)]
    for left, right in ((1.0, 5.0), (-3.0, 4.0), (3.5, 30.0), (0.5, 0.9), (7.0, 7.5)):
        found = template._between(corners, left, right)
        wanted = Polygon(corners).intersection(box(left, -1.0, right, 7.0))
        assert Polygon(found).symmetric_difference(wanted).area < 1e-9
    assert template._between(corners, 9.0, 12.0) == []
    assert template._between(corners, -5.0, -1.0) == []


def test_joins_are_lettered_a_to_z_and_on():
    assert [template._join(at) for at in (0, 25, 26, 27, 52)] == ["A", "Z", "AA", "AB", "BA"]


def test_degrees_of_a_template_stand_where_the_rotary_table_has_them():
    # 360 mm round: a degree a millimetre.
    found = template._degrees(-45.0, 131.0, 360.0)
    lines = [one for one in found if type(one) is Line]
    assert [one.x1 for one in lines] == pytest.approx([10.0 * at for at in range(-4, 14)])
    assert all(one.x1 == one.x2 and one.y1 == 0.0 for one in lines)
    texts = [one for one in found if type(one) is Text]
    assert [(one.text, one.x) for one in texts] == [
        ("330\u00b0", -30.0), ("0\u00b0", 0.0), ("30\u00b0", 30.0), ("60\u00b0", 60.0),
        ("90\u00b0", 90.0), ("120\u00b0", 120.0),
    ]  # fmt: skip
    assert {one.x1: one.y2 for one in lines}[30.0] == -2.2 and lines[0].y2 == -1.2
    # A number nearer than 3 mm to an edge of the paper is left out.
    near = [one.text for one in template._degrees(-32.9, 122.9, 360.0) if type(one) is Text]
    assert near == ["0\u00b0", "30\u00b0", "60\u00b0", "90\u00b0"]
    # On a small blank only every 60 or 90 degrees has room: 11.9 mm for 90, 7.9 for 60.
    few = [one.text for one in template._degrees(0.0, 47.6, 47.6) if type(one) is Text]
    assert few == ["90\u00b0", "180\u00b0", "270\u00b0"]


def test_the_rules_to_check_a_print_by_are_four_inches_and_a_hundred_millimetres():
    found = template._ruler_view(7.0, 90.0)
    lines = [one for one in found.entities if type(one) is Line]
    level = {one.y1: one for one in lines if one.y1 == one.y2}
    assert {y: (one.x1, one.x2) for y, one in level.items()} == {
        90.0: (7.0, 107.0), 79.0: (7.0, 7.0 + 101.6)
    }  # fmt: skip
    ticks = sorted((one.y1, round(one.x1, 6), one.y2 - one.y1) for one in lines if one.x1 == one.x2)
    inches = [one for one in ticks if one[0] == 79.0]
    tens = [one for one in ticks if one[0] == 90.0]
    assert [one[1] for one in inches] == pytest.approx([7.0 + 25.4 * at for at in range(5)])
    assert [one[1] for one in tens] == pytest.approx([7.0 + 10.0 * at for at in range(11)])
    for row in (inches, tens):
        assert [one[2] for one in row] == pytest.approx([3.0] + [1.8] * (len(row) - 2) + [3.0])
    names = [one for one in found.entities if type(one) is Text]
    assert [(one.text, one.x) for one in names] == [("100 mm", 57.0), ("4 in", 7.0 + 50.8)]


def test_layers_have_the_lines_of_the_standard():
    assert entities.LAYERS["hidden"].dashes == (3.0, 0.75)
    assert entities.LAYERS["limit"].dashes == (6.0, 1.5)
    assert entities.LAYERS["centre"].dashes == (6.0, 0.75, 0.125, 0.75)
