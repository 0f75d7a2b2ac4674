"""What drawings are made of: lines of a ring, arcs, hatching, leaders, words. By hand, shapely."""

import math

import pytest
from shapely.geometry import LineString, Polygon

from ringwright.core.drawing import curve, entities, leaders, letters, shapes, style, view, words
from ringwright.core.drawing.entities import (
    Arc,
    Circle,
    Dimension,
    Fill,
    Hatch,
    Line,
    Polyline,
    Text,
)


def test_a_line_that_gives_up_no_curvature_is_the_circle_of_the_bore():
    # Three quarters of a turn of radius 31: it ends a quarter short of its start.
    line = curve.walked(31.0, lambda psi: 0.0, 1.5 * math.pi * 31.0, 0.0, 1.0)
    assert len(line) == curve.STEPS + 1
    x, y, heading = line[-1]
    assert (x, y) == (pytest.approx(-31.0, abs=0.002), pytest.approx(31.0, abs=0.002))
    assert heading == pytest.approx(1.5 * math.pi)
    for x, y, _ in line:
        assert math.hypot(x, y - 31.0) == pytest.approx(31.0, abs=0.002)


def test_curvature_is_taken_off_at_the_angle_that_it_is_of():
    # Taken off in the last third alone, all of it: a straight end.
    line = curve.walked(20.0, lambda psi: 0.05 if psi > 2.0 else 0.0, 60.0, 0.0, 3.0, 300)
    assert line[-1][2] == pytest.approx(40.0 / 20.0)
    assert line[200][2] == pytest.approx(line[-1][2])
    assert math.dist(line[200][:2], line[-1][:2]) == pytest.approx(20.0)


def test_a_free_plain_ring_of_one_curvature_has_the_gap_of_its_arc():
    # Radius 40 opened to 44: the line is as long as before, the gap the rest of the circle.
    change = 1.0 / 40.0 - 1.0 / 44.0
    line = curve.plain_turn(40.0, lambda psi: change, 0.6)
    length = 2.0 * math.pi * 40.0 - 0.6
    assert LineString([one[:2] for one in line]).length == pytest.approx(length, rel=1e-4)
    angle = math.pi - 0.5 * length / 44.0
    right, left = line[-1], line[0]
    assert math.dist(right[:2], left[:2]) == pytest.approx(88.0 * math.sin(angle), rel=1e-3)
    xs, ys = [one[0] for one in line], [one[1] for one in line]
    # The gap at the top, the middle of its box at the origin, the same right and left.
    assert max(xs) == pytest.approx(-min(xs)) and max(ys) == pytest.approx(-min(ys))
    assert max(ys) > 0.0 and left[1] == pytest.approx(right[1]) == pytest.approx(max(ys), abs=0.9)
    assert left[0] == pytest.approx(-right[0])


def test_a_turn_of_a_double_turn_ring_begins_at_its_shoulder():
    # Nothing given up: the circle itself, from 12 degrees clockwise of the top once round.
    line = curve.double_turn(33.0, lambda psi: 0.0, 2.2, 12.0)
    first, last = line[0], line[-1]
    at = math.radians(90.0 - 12.0)
    middle = 0.5 * (min(x for x, _, _ in line) + max(x for x, _, _ in line))
    assert middle == pytest.approx(0.0, abs=1e-9)
    assert math.dist(first[:2], last[:2]) == pytest.approx(
        2.0 * 33.0 * math.sin(1.1 / 33.0), rel=1e-3
    )
    centre = (first[0] - 33.0 * math.cos(at), first[1] - 33.0 * math.sin(at))
    for x, y, _ in line[::20]:
        assert math.dist((x, y), centre) == pytest.approx(33.0, abs=0.01)
    # Counter-clockwise seen: the heading there points left and up.
    assert first[2] == pytest.approx(math.radians(180.0 - 12.0))


def test_the_sides_of_a_ring_lie_half_its_thickness_to_either_side():
    line = curve.walked(30.0, lambda psi: 0.0, math.pi * 30.0, 0.0, 1.0)
    for offset, radius in ((1.7, 31.7), (-1.7, 28.3)):
        for x, y in curve.beside(line, offset)[::17]:
            assert math.hypot(x, y - 30.0) == pytest.approx(radius, abs=0.002)


def test_points_of_an_arc():
    assert shapes.polar(5.0, 30.0, 1.0, 2.0) == pytest.approx((1.0 + 5.0 * 0.75**0.5, 4.5))
    there = shapes.arc_points(7.0, 20.0, 95.0, 1.5, -2.5)
    back = shapes.arc_points(7.0, 95.0, 20.0, 1.5, -2.5)
    assert there[0] == pytest.approx(shapes.polar(7.0, 20.0, 1.5, -2.5))
    assert there[-1] == pytest.approx(shapes.polar(7.0, 95.0, 1.5, -2.5))
    assert [pytest.approx(one) for one in reversed(there)] == back
    # One in two degrees: 75 degrees are 38 steps; the shortest has two.
    assert len(there) == 39
    assert len(shapes.arc_points(7.0, 20.0, 20.5)) == 3
    assert all(math.dist(one, (1.5, -2.5)) == pytest.approx(7.0) for one in there)


def test_a_freehand_break_is_one_wave_from_end_to_end():
    line = shapes.wavy(3.0, -1.0, 7.0, 0.4)
    assert line[0] == pytest.approx((3.0, -1.0)) and line[-1] == pytest.approx((3.0, 7.0))
    assert line[4] == pytest.approx((3.4, 1.0)) and line[12] == pytest.approx((2.6, 5.0))
    assert line[8] == pytest.approx((3.0, 3.0)) and len(line) == 17


def test_small_shapes():
    across, up = shapes.centre_cross("centre", 2.0, 3.0, 5.0)
    assert tuple(across) == ("centre", -3.0, 3.0, 7.0, 3.0)
    assert tuple(up) == ("centre", 2.0, -2.0, 2.0, 8.0)
    assert shapes.mirrored_points([(1.0, 2.0), (3.0, -4.0)]) == [(1.0, -2.0), (3.0, 4.0)]
    assert Polygon(shapes.box(1.0, 2.0, 4.0, 7.0)).exterior.is_ccw
    assert Polygon(shapes.box(1.0, 2.0, 4.0, 7.0)).bounds == (1.0, 2.0, 4.0, 7.0)


@pytest.mark.parametrize("angle", [45.0, 135.0, 30.0])
def test_hatching_fills_the_cut_face_and_leaves_its_holes(angle):
    outer = shapes.box(1.3, 2.1, 31.7, 22.4)
    hole = shapes.box(8.2, 7.7, 15.9, 13.3)
    face = Polygon(outer, [hole])
    lines = [
        LineString((one[:2], one[2:])) for one in shapes.hatch_lines([outer, hole], angle, 2.3)
    ]
    assert all(face.buffer(1e-6).covers(one) for one in lines)
    # Lines 2.3 apart cover area/2.3 of length, to what the edges cut off.
    assert sum(one.length for one in lines) == pytest.approx(face.area / 2.3, rel=0.05)
    turn = math.radians(angle)
    for one in lines:
        (x1, y1), (x2, y2) = one.coords
        assert math.atan2(y2 - y1, x2 - x1) % math.pi == pytest.approx(turn % math.pi)
        # On one grid over the whole sheet.
        off = (y1 * math.cos(turn) - x1 * math.sin(turn)) / 2.3
        assert off == pytest.approx(round(off), abs=1e-6)
    middles = {round((one.coords[0][1] * math.cos(turn) - one.coords[0][0] * math.sin(turn)) / 2.3)
               for one in lines}  # fmt: skip
    assert middles == set(range(min(middles), max(middles) + 1))
    # A sliver of 0.05 mm is not drawn.
    assert shapes.hatch_lines([shapes.box(0.0, 0.0, 0.04, 9.0)], 0.0, 2.0) == []


def test_a_shape_reaches_as_far_as_its_lines_and_arcs():
    found = shapes.extent(
        [
            Line("thin", 1.0, 2.0, -3.0, 4.0),
            Circle("thin", 5.0, -6.0, 2.5),
            Arc("thin", 0.0, 0.0, 9.0, 80.0, 100.0),
            Polyline("thin", [(0.0, 0.0), (8.5, 1.0)], False),
            Hatch("hatching", [[(0.0, 0.0), (-4.5, 0.0)]], 45.0, 2.0),
            Text("text", 50.0, 60.0, 3.5, "words", "start", 0, False),
        ]
    )
    assert found == pytest.approx((-4.5, -8.5, 8.5, 9.0))


def test_what_is_moved_keeps_its_form():
    fit = (2.0, 10.0, -3.0)
    assert tuple(entities.moved(Line("thin", 1.0, 2.0, 3.0, 5.0), *fit)) == ("thin", 12, 1, 16, 7)
    assert tuple(entities.moved(Circle("thin", 1.0, 2.0, 3.0), *fit)) == ("thin", 12, 1, 6)
    arc = entities.moved(Arc("thin", 1.0, 2.0, 3.0, 40.0, 50.0), *fit)
    assert tuple(arc) == ("thin", 12, 1, 6, 40, 50)
    assert entities.moved(Fill("thin", [(1.0, 4.0)]), *fit).points == [(12.0, 5.0)]
    assert entities.moved(Polyline("thin", [(1.0, 4.0)], True), *fit).points == [(12.0, 5.0)]
    assert entities.moved(Hatch("thin", [[(1.0, 4.0)]], 45.0, 2.0), *fit).loops == [[(12.0, 5.0)]]
    text = entities.moved(Text("text", 1.0, 2.0, 3.5, "a", "end", 90, True), *fit)
    assert tuple(text) == ("text", 12.0, 1.0, 3.5, "a", "end", 90, True)
    part = Line("thin", 1.0, 2.0, 3.0, 5.0)
    whole = Dimension("bore", 7.0, "mm", "linear", 0.5, [(1.0, 4.0)], (), [part])
    moved = entities.moved(whole, *fit)
    assert moved.points == [(12.0, 5.0)] and moved.value == 7.0
    assert moved.parts == [entities.moved(part, *fit)]


def test_labels_stand_by_their_places_and_never_closer_than_three_millimetres():
    # Two far apart stand where they are wanted; three that crowd stand about their mean.
    heights = [4.0, 6.0, 5.0, 7.0]
    assert leaders._spread([40.0, 10.0], [4.0, 6.0]) == [40.0, 10.0]
    # Just clear: 40 - 2 - 3 = 35 = 32 + 3; a tenth nearer they part by a tenth.
    assert leaders._spread([40.0, 32.0], [4.0, 6.0]) == [40.0, 32.0]
    near = leaders._spread([40.0, 32.1], [4.0, 6.0])
    assert near[0] - near[1] == pytest.approx(8.0)
    found = leaders._spread([30.0, 29.0, 28.5, 2.0], heights)
    for at in range(3):
        gap = (found[at] - 0.5 * heights[at]) - (found[at + 1] + 0.5 * heights[at + 1])
        assert gap == pytest.approx(3.0) if at < 2 else gap > 3.0
    top, bottom = found[0] + 2.0, found[2] - 2.5
    assert 0.5 * (top + bottom) == pytest.approx((30.0 + 29.0 + 28.5) / 3.0)
    assert found[3] == 2.0


@pytest.mark.parametrize(("side", "sign"), [("right", 1.0), ("left", -1.0)])
def test_a_leader_ends_at_the_place_it_speaks_of(side, sign):
    label = leaders.Label("bore", 5.0, "mm", side, (4.0 * sign, 3.0), "Bore", False)
    dot = label._replace(point=(2.0 * sign, -9.0), dot=True, text="Two words")
    found, boxes = leaders.placed([dot, label], side, 2.5, sign * 20.0, 3.5, 10.0)
    first, second = found
    assert (first.name, first.value, first.kind) == ("bore", 5.0, "label")
    # The arrow's tip is the place at that scale; it is 2.8 long and points along its line.
    (arrow,) = [one for one in first.parts if type(one) is Fill]
    tip, one, other = arrow.points
    assert tip == pytest.approx((10.0 * sign, 7.5))
    back = (0.5 * (one[0] + other[0]), 0.5 * (one[1] + other[1]))
    assert math.dist(tip, back) == pytest.approx(0.8 * style.ARROW_LENGTH)
    assert math.dist(one, other) == pytest.approx(1.6 * style.ARROW_HALF_WIDTH)
    level, slant = [each for each in first.parts if type(each) is Line]
    assert (slant.x2, slant.y2) == pytest.approx(tip)
    assert (slant.x1, slant.y1) == (level.x2, level.y2) and level.y1 == level.y2
    assert LineString([(slant.x1, slant.y1), tip]).distance(
        LineString([back, back])
    ) == pytest.approx(0.0, abs=1e-9)
    # Words begin a reach beyond the edge; the level piece ends a millimetre before them.
    (text,) = [each for each in first.parts if type(each) is Text]
    assert text.x == pytest.approx(sign * (20.0 + style.LEADER_REACH))
    assert level.x1 == pytest.approx(text.x - sign) and level.x2 == pytest.approx(
        text.x - sign * 3.5
    )
    # Its middle stands at half the height of the letters.
    assert text.y + 1.75 == pytest.approx(level.y1) == pytest.approx(7.5)
    (circle,) = [each for each in second.parts if type(each) is Circle]
    assert (circle.x, circle.y, circle.radius) == pytest.approx((5.0 * sign, -22.5, 0.3))
    lines = [each for each in second.parts if type(each) is Text]
    assert [each.text for each in lines] == ["Two", "words"]
    assert lines[0].y - lines[1].y == pytest.approx(1.5 * 3.5)
    # Boxes hold the words, tails of letters too.
    for box, words_of in zip(boxes, ([text], lines), strict=True):
        for each in words_of:
            left, low, right, high = view.text_box(each)
            assert box[0] - 1e-9 <= left and right <= box[2] + 1e-9
            assert box[1] == pytest.approx(low) or low > box[1]
            assert box[3] == pytest.approx(high) or high < box[3]
        assert box[3] - box[1] == pytest.approx(
            3.5 + 5.25 * (len(words_of) - 1) + 3.5 * letters.DESCENT
        )


def test_no_arrow_where_the_place_is_nearer_than_an_arrow_is_long():
    bare = leaders._leader(0.0, 0.0, 5.9, 0.0, 1.0, False)
    assert not [one for one in bare if type(one) is Fill]
    longer = leaders._leader(0.0, 0.0, 6.1, 0.0, 1.0, False)
    assert [one for one in longer if type(one) is Fill]


def test_a_text_takes_up_what_its_letters_do():
    # "Bore": 667 + 556 + 333 + 556 thousandths of the size, which is capitals over 0.716.
    wide = 2.112 * 3.5 / 0.716
    text = Text("text", 10.0, 20.0, 3.5, "Bore", "start", 0, False)
    assert view.text_box(text) == pytest.approx((10.0, 20.0 - 1.015, 10.0 + wide, 23.5))
    middle = view.text_box(text._replace(align="middle", bold=True))
    assert middle[0] == pytest.approx(10.0 - 0.54 * wide) and middle[2] == pytest.approx(
        10.0 + 0.54 * wide
    )
    assert view.text_box(text._replace(align="end"))[0] == pytest.approx(10.0 - wide)
    # Turned by a quarter it reads upwards, its letters to the left of its line.
    turned = view.text_box(text._replace(turn=90, align="end"))
    assert turned == pytest.approx((6.5, 20.0 - wide, 11.015, 20.0))


def test_scales_are_written_as_the_standard_writes_them():
    """ISO 5455: 1:2, 5:1; a screen's own steps with a decimal or two."""
    found = {5.0: "5:1", 1.0: "1:1", 0.5: "1:2", 0.05: "1:20", 0.8: "1:1.25", 0.63: "1:1.59"}
    found.update({0.4: "1:2.5", 3.15: "3.15:1", 2.5: "2.5:1"})
    assert {scale: view.scale_words(scale) for scale in found} == found


def test_words_grow_smaller_to_fit_and_are_then_cut_short():
    full = letters.width("Marigold", 3.5)
    assert letters.fitted("Marigold", 3.5, full, 2.0) == ("Marigold", 3.5)
    text, size = letters.fitted("Marigold", 3.5, 0.8 * full, 2.0)
    assert (text, size) == ("Marigold", pytest.approx(2.8))
    text, size = letters.fitted("Marigold", 3.5, 0.4 * full, 2.0)
    assert size == 2.0 and text.endswith(letters.ELLIPSIS) and "Marigold".startswith(text[:-1])
    room = 0.4 * full
    longer = "Marigold"[: len(text)] + letters.ELLIPSIS
    assert letters.width(text, 2.0) <= room < letters.width(longer, 2.0)
    # A letter of the Latin blocks is as wide as an A, any other a whole letter's size.
    assert letters.width("\u017d", 0.716) == pytest.approx(0.667)
    assert letters.width("\u024f", 0.716) == pytest.approx(0.667)
    assert letters.width("\u0250", 0.716) == pytest.approx(1.0)
    assert letters.width("\u7a92", 0.716) == pytest.approx(1.0)


def test_lines_break_between_words_where_there_is_no_room():
    room = letters.width("one two", 3.5)
    assert letters.wrapped("one two three", 3.5, room) == ["one two", "three"]
    assert letters.wrapped("one two three", 3.5, 0.99 * room) == ["one", "two", "three"]
    assert letters.wrapped("unbreakable a", 3.5, 1.0) == ["unbreakable", "a"]


def test_limits_are_lettered_inside_the_tolerance():
    # 24.9996 to 25.0214: a part at 25.021 and at 25.000 is still good.
    assert words.limits(24.9996, 25.0214, "metric", True) == ("\u00d8", ("25.021", "25.000"))
    assert words.limits(24.9996, 25.0214, "metric").lines == ("25.021", "25.000")
    # Whole steps stay what they are in spite of their last bit.
    assert words.limits(0.1 + 0.2, 1.1 * 3.0, "metric").lines == ("3.300", "0.300")
    # 0.98424 and 0.98509 in.
    assert words.limits(24.9996, 25.0214, "inch").lines == ("0.9850", "0.9843")


def test_sizes_are_lettered_in_their_unit():
    assert words.number(25.4, "inch", 1) == "1.000"
    assert words.number(12.3456, "metric", 1) == "12.3"
    # Below a millimetre places are those of wording: to the micrometre.
    assert words.number(0.2468, "metric", 1) == "0.247"
    assert words.number(1.0, "metric", 1) == "1.0"
    assert words.number(0.5, "inch", 1) == "0.0197"
    assert words.length(12.3456, "metric", 1) == "12.3 mm"
    assert words.length(25.4, "inch", 1) == "1.000 in"
    assert words.angle(12.345) == ("", ("12.3\u00b0",))
    assert words.pressure(0.048, "metric") == "0.048 N/mm2"
    # One lbf/in2 is 0.0068948 N/mm2, one lbf 4.44822 N.
    assert words.pressure(0.068948, "inch") == "10.0 psi"
    assert words.stress(123.4, "metric") == "123 N/mm2"
    assert words.stress(68.948, "inch").replace("\u202f", " ") == "10 000 psi"
    assert words.force(44.4822, "inch") == "10.0 lbf"
    assert words.force(44.4822, "metric") == "44.5 N"
    assert (words.hours(1.99), words.hours(2.0), words.hours(0.5)) == ("119 min", "2.0 h", "30 min")
    assert words.size(80.0, "metric", True).prefix == "\u00d8"
    assert words.auxiliary(80.0, "metric", False).lines[0].startswith("(8")
