"""A view as it is laid out, and the words of sizes, by hand."""

import pytest
from shapely.geometry import LineString
from shapely.geometry import box as rectangle
from shapely.ops import unary_union

from ringwright.core.drawing import letters, view, words
from ringwright.core.drawing.entities import Dimension, Line, Polyline, Text
from ringwright.core.drawing.words import Words

SIZE = 3.5
CORNERS = [(10.0, 20.0), (50.0, 20.0), (50.0, 60.0), (10.0, 60.0)]


def plate(title=""):
    found = view.View("a", title)
    found.add(Polyline("outline", CORNERS, True))
    return found


def measured(found, side, text="40"):
    ends = {
        "top": (CORNERS[3], CORNERS[2]), "bottom": (CORNERS[0], CORNERS[1]),
        "left": (CORNERS[0], CORNERS[3]), "right": (CORNERS[1], CORNERS[2]),
    }[side]  # fmt: skip
    found.measure(side, 40.0, side, *ends, Words("", (text,)))


def parts_of(drawn):
    for one in drawn.entities:
        yield from one.parts if type(one) is Dimension else [one]


def taken_up(drawn):
    """The box of all lines, outlines and words that are drawn, by shapely."""
    shapes = []
    for one in parts_of(drawn):
        if type(one) is Text:
            shapes.append(rectangle(*view.text_box(one)))
        elif type(one) is Line:
            shapes.append(LineString([(one.x1, one.y1), (one.x2, one.y2)]))
        elif type(one) is Polyline:
            shapes.append(LineString(one.points))
    return unary_union(shapes).bounds


@pytest.mark.parametrize("scale", [1.0, 0.5])
@pytest.mark.parametrize("side", ["top", "bottom", "left", "right"])
def test_dimensions_stand_outside_the_shape_on_their_own_side(side, scale):
    found = plate()
    measured(found, side)
    drawn = found.drawn(scale, 46.0, 180.0, False)
    (one,) = [each for each in drawn.entities if type(each) is Dimension]
    (x1, y1), (x2, y2) = one.points
    # The first line stands 8 mm of paper off the shape.
    away = {"top": 60.0 * scale + 8.0, "bottom": 20.0 * scale - 8.0,
            "left": 10.0 * scale - 8.0, "right": 50.0 * scale + 8.0}[side]  # fmt: skip
    if side in ("top", "bottom"):
        assert (y1, y2) == pytest.approx((away, away))
        assert (x1, x2) == pytest.approx((10.0 * scale, 50.0 * scale))
    else:
        assert (x1, x2) == pytest.approx((away, away))
        assert (y1, y2) == pytest.approx((20.0 * scale, 60.0 * scale))


ALL = ("top", "bottom", "left", "right")


@pytest.mark.parametrize("sides", [("top",), ("left", "bottom"), ("right",), ALL])
def test_the_box_of_a_view_holds_all_that_is_drawn_and_no_more(sides):
    found = plate("Plate")
    for side in sides:
        measured(found, side, "a size with many words")
        found.measure("more", 3.0, side, (12.0, 22.0), (15.0, 25.0), Words("", ("3",)))
    for side in {"left", "right"} & set(sides):
        found.label(side, (30.0, 40.0), "Of the middle, " + side)
        found.label(side, (30.0, 90.0), "High up")
    drawn = found.drawn(1.0, 46.0, 180.0, True)
    bounds = taken_up(drawn)
    # Labels keep room for tails of letters in their boxes, as texts do.
    assert drawn.box == pytest.approx(bounds, abs=SIZE * letters.DESCENT + 1e-9)
    for one in drawn.texts:
        assert rectangle(*drawn.box).buffer(1e-9).covers(rectangle(*one))


@pytest.mark.parametrize("side", ["top", "bottom", "left", "right"])
def test_lines_of_a_dimension_count_for_the_box(side):
    """A square of 3 mm: arrows outside, a tail of 7 mm below or left of it; extension lines end
    2 mm past the line, which stands 8 off."""
    found = view.View("a")
    found.add(Polyline("outline", [(0.0, 0.0), (3.0, 0.0), (3.0, 3.0), (0.0, 3.0)], True))
    found.measure("", 3.0, side, (0.0, 0.0), (3.0, 3.0), Words("", ("3",)))
    box = found.drawn(1.0, 46.0, 180.0, False).box
    wide = 3.0 + 7.0 + letters.width("3", SIZE)
    if side in ("top", "bottom"):
        assert (box[0], box[2]) == pytest.approx((-7.0, wide))
        assert (box[1], box[3]) == pytest.approx(
            (0.0, 3.0 + 8.0 + 1.0 + SIZE) if side == "top" else (-8.0 - 2.0, 3.0)
        )
    else:
        assert (box[1], box[3]) == pytest.approx((-7.0, wide))
        assert (box[0], box[2]) == pytest.approx(
            (-8.0 - 1.0 - SIZE, 3.0) if side == "left" else (0.0, 3.0 + 8.0 + 2.0)
        )


def test_labels_stand_on_their_own_side():
    found = plate()
    found.label("right", (30.0, 40.0), "Right")
    drawn = found.drawn(1.0, 46.0, 180.0, False)
    (text,) = [one for one in parts_of(drawn) if type(one) is Text]
    assert text.x == pytest.approx(57.0)
    wide = letters.width("Right", SIZE)
    assert found.beside(46.0) == pytest.approx(7.0 + wide)
    other = plate()
    other.label("left", (30.0, 40.0), "Left")
    other.label("left", (30.0, 10.0), "Left and longer")
    drawn = other.drawn(1.0, 46.0, 180.0, False)
    assert {one.x for one in parts_of(drawn) if type(one) is Text} == {3.0}
    assert other.beside(46.0) == pytest.approx(7.0 + letters.width("Left and longer", SIZE))
    # In a narrower column it is broken, and the column is as wide as what is left.
    other._beside = None
    assert other.beside(20.0) == pytest.approx(7.0 + letters.width("Left and", SIZE))


def test_words_in_the_way_of_a_dimension_push_it_out():
    """Words of the view itself stand where those of the dimension would: it goes 16 mm farther, as
    often as it has to, four times at the most."""
    for count in (0, 1, 2, 3, 4, 5):
        found = plate()
        for at in range(count):
            found.add(Text("text", 30.0, 60.0 + 8.0 + 1.5 + 16.0 * at, SIZE, "here", "middle", 0,
                           False))  # fmt: skip
        measured(found, "top")
        drawn = found.drawn(1.0, 46.0, 180.0, False)
        (one,) = [each for each in drawn.entities if type(each) is Dimension]
        assert one.points[0][1] == pytest.approx(60.0 + 8.0 + 16.0 * min(count, 4))
        assert len(drawn.texts) == count + 1


def test_boxes_nearer_than_half_a_millimetre_are_in_each_other_s_way():
    mine = (10.0, 20.0, 15.0, 24.0)
    for dx, dy, near in (
        (5.4, 0.0, True), (5.5, 0.0, False), (5.503, 0.0, False), (-5.4, 0.0, True),
        (-5.5, 0.0, False), (0.0, 4.4, True), (0.0, 4.5, False), (0.0, 4.503, False),
        (0.0, -4.4, True), (0.0, -4.5, False), (0.0, -4.503, False), (-5.503, 0.0, False),
        (5.4, 4.4, True), (5.4, 4.6, False), (5.6, 4.4, False), (-5.4, -4.4, True),
        (5.4, -4.6, False), (-5.6, 4.4, False), (30.0, 0.0, False), (0.0, 30.0, False),
    ):  # fmt: skip
        other = (10.0 + dx, 20.0 + dy, 15.0 + dx, 24.0 + dy)
        assert view._any_overlap([mine], [other]) is near, (dx, dy)
        assert view._any_overlap([other], [(500.0, 0.0, 501.0, 1.0), mine]) is near
    assert view._any_overlap([], [mine]) is False and view._any_overlap([mine], []) is False


def test_a_title_is_broken_where_its_bold_letters_leave_its_room():
    title = "A plate of many words"
    plain = letters.width(title, SIZE)
    # Bold is 1.08 as wide: one line has room in 1.09 of it, not in 1.05.
    one = plate(title).drawn(1.0, 46.0, 1.09 * plain, False)
    assert len(one.texts) == 1
    two = plate(title).drawn(1.0, 46.0, 1.05 * plain, False)
    lines = [each for each in two.entities if type(each) is Text]
    assert " ".join(each.text for each in lines) == title and len(lines) == 2
    # 2 mm and two letters below the shape, a pitch of 1.5 letters on.
    assert [each.y for each in lines] == pytest.approx([11.0, 11.0 - 5.25])
    for each in lines:
        assert (each.x, each.align, each.turn, each.bold) == (30.0, "middle", 0, True)
    assert two.box[1] == pytest.approx(11.0 - 5.25 - SIZE * letters.DESCENT)
    stated = plate("Plate").drawn(0.5, 46.0, 180.0, True)
    assert [each.text for each in stated.entities if type(each) is Text] == ["Plate  1:2"]


def test_shapes_are_drawn_to_scale_about_the_origin_of_the_part():
    found = plate()
    found.extend([Line("thin", 10.0, 20.0, 30.0, 40.0), Line("thin", 10.0, 60.0, 10.0, 20.0)])
    outline, first, second = found.drawn(0.5, 46.0, 180.0, False).entities
    assert outline.points == [(5.0, 10.0), (25.0, 10.0), (25.0, 30.0), (5.0, 30.0)]
    assert tuple(first) == ("thin", 5.0, 10.0, 15.0, 20.0)
    assert tuple(second) == ("thin", 5.0, 30.0, 5.0, 10.0)


def test_what_is_not_said_of_a_view_is_plain():
    found = view.View("a")
    assert (found.title, found.target, found.second) == ("", None, False)
    found.circle("thin", 5.0)
    found.arc("thin", 5.0, 10.0, 20.0)
    found.hatch([CORNERS])
    found.outline("thin", CORNERS)
    found.label("right", (1.0, 2.0), "word")
    circle, arc, hatch, outline = found.shapes
    assert tuple(circle) == ("thin", 0.0, 0.0, 5.0)
    assert tuple(arc) == ("thin", 0.0, 0.0, 5.0, 10.0, 20.0)
    assert (hatch.angle, hatch.spacing, outline.closed) == (45.0, 2.5, True)
    (label,) = found.labels
    assert (label.name, label.value, label.unit, label.dot) == ("", None, "", False)


def test_scales_and_numbers_are_rounded_where_a_half_is():
    assert view.scale_words(1.23496) == "1.23:1"
    assert view.scale_words(1.23502) == "1.24:1"
    assert words.number(79.37551, "metric", words.GAUGED) == "79.376"
    assert words.size(80.0, "metric").prefix == "" and words.size(8.0, "metric", True).prefix
    assert words.auxiliary(80.0, "metric").lines == ("(\u00d880.00)",)
    assert words.limits(24.0, 25.0, "metric").prefix == ""
    # 123.9 N/mm2 are 17 970.2 lbf/in2.
    assert words.stress(123.9, "inch").replace("\u202f", " ") == "18 000 psi"
    assert words.whole(12.6) == "13" and words.whole(12.4) == "12"
