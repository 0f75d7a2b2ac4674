"""Labels and their leaders: order, room and arrows, by hand."""

import math

import pytest

from ringwright.core.drawing import leaders, view
from ringwright.core.drawing.entities import Circle, Fill, Line, Text

SIZE = 3.5
# Lines 1.5 letters apart; letters such as g reach 0.29 of a capital below their line.
PITCH, TAIL = 1.5 * SIZE, 0.29 * SIZE


def label(text, x, y, side="right", dot=False):
    return leaders.Label(text, None, "", side, (x, y), text, dot)


def set_out(labels, side="right", edge=20.0, scale=1.0, room=46.0):
    """Name of each label -> (Dimension, box), from top to bottom."""
    found, boxes = leaders.placed(labels, side, scale, edge, SIZE, room)
    return {one.name: (one, box) for one, box in zip(found, boxes, strict=True)}


def of_kind(dimension, kind):
    return [one for one in dimension.parts if type(one) is kind]


@pytest.mark.parametrize(("side", "sign"), [("right", 1), ("left", -1)])
def test_labels_stand_in_the_order_of_their_places(side, sign):
    """Higher places have higher words; of two alike the one nearer the words stands above."""
    rows = [
        label("low", 0.0, -30.0), label("near", 9.0 * sign, 5.0), label("high", 0.0, 40.0),
        label("far", -9.0 * sign, 5.0), label("same", -9.0 * sign, 5.0),
    ]  # fmt: skip
    found = set_out([one._replace(side=side) for one in rows], side, 20.0 * sign)
    assert list(found) == ["high", "near", "far", "same", "low"]
    tops = [box[3] for _, box in found.values()]
    assert tops == sorted(tops, reverse=True)


@pytest.mark.parametrize(("side", "sign"), [("right", 1), ("left", -1)])
def test_crowded_labels_stand_three_millimetres_apart_whatever_their_lines(side, sign):
    texts = ["one two three", "four", "five six seven eight", "nine"]
    rows = [label(text, 0.0, 10.0 - at, side) for at, text in enumerate(texts)]
    found = set_out(rows, side, 20.0 * sign, 1.0, 12.0)
    boxes = [box for _, box in found.values()]
    for upper, lower in zip(boxes, boxes[1:], strict=False):
        assert upper[1] - lower[3] == pytest.approx(3.0)
    # Together, the last one's tails left out, they stand about the mean of 10, 9, 8 and 7.
    assert (boxes[0][3] + boxes[-1][1] + TAIL) / 2 == pytest.approx(8.5)
    for (one, box), text in zip(found.values(), texts, strict=True):
        lines = of_kind(one, Text)
        assert " ".join(each.text for each in lines) == text
        # As high as its lines and the tails of the last.
        assert box[3] - box[1] == pytest.approx(SIZE + PITCH * (len(lines) - 1) + TAIL)
        assert box[3] == pytest.approx(lines[0].y + SIZE)
        for upper, lower in zip(lines, lines[1:], strict=False):
            assert upper.y - lower.y == pytest.approx(PITCH)
        texts_in = [view.text_box(each) for each in lines]
        wide = max(each[2] - each[0] for each in texts_in)
        near, far = 20.0 + 7.0, 20.0 + 7.0 + wide
        assert (box[0], box[2]) == pytest.approx((near, far) if sign > 0 else (-far, -near))
        for each in lines:
            assert (each.align, each.turn, each.bold) == (
                "start" if sign > 0 else "end", 0, False,
            )  # fmt: skip
            assert each.x == pytest.approx(27.0 * sign)


@pytest.mark.parametrize("where", [(-8.0, 21.0), (5.0, -17.0), (11.0, 3.0), (-30.0, 3.5)])
@pytest.mark.parametrize(("side", "sign"), [("right", 1), ("left", -1)])
def test_the_arrow_of_a_slanting_leader_lies_along_it(side, sign, where):
    """Two labels at one place: their words cannot both stand level with it, so leaders slant."""
    x, y = where[0] * sign, where[1]
    rows = [label("first", x, y, side), label("second", x, y, side)]
    for one, _ in set_out(rows, side, 20.0 * sign).values():
        level, slant = of_kind(one, Line)
        (arrow,) = of_kind(one, Fill)
        # A level piece of 2.5 mm that ends a millimetre before the words, 7 off the edge.
        assert (level.x1, level.x2) == pytest.approx((26.0 * sign, 23.5 * sign))
        assert level.y1 == level.y2 and (slant.x1, slant.y1) == (level.x2, level.y2)
        assert (slant.x2, slant.y2) == pytest.approx((x, y))
        assert abs(level.y1 - y) > 1.0
        tip, left, right = arrow.points
        back = ((left[0] + right[0]) / 2, (left[1] + right[1]) / 2)
        # Four fifths of an arrow of 3.5 by 1.2 mm.
        assert tip == pytest.approx((x, y))
        assert math.dist(tip, back) == pytest.approx(2.8)
        assert math.dist(left, right) == pytest.approx(0.96)
        assert math.dist(tip, left) == pytest.approx(math.dist(tip, right))
        away = math.atan2(slant.y1 - y, slant.x1 - x)
        assert math.atan2(back[1] - y, back[0] - x) == pytest.approx(away)


def test_a_slanting_leader_has_an_arrow_where_it_is_longer_than_one():
    """From the bend at (0, 0) to (2.8, 2.8) are 3.96 mm, to (2.4, 2.4) 3.39."""
    for side, heads in ((2.8, 1), (2.4, 0)):
        for way in (1.0, -1.0):
            parts = leaders._leader(side, way * side, 2.5, 0.0, 1.0, False)
            assert len([one for one in parts if type(one) is Fill]) == heads
    parts = leaders._leader(2.8, 2.8, 2.5, 0.0, 1.0, True)
    (dot,) = [one for one in parts if type(one) is Circle]
    assert (dot.x, dot.y, dot.radius) == (2.8, 2.8, 0.3)
    assert not [one for one in parts if type(one) is Fill]


def test_labels_far_apart_stand_level_with_their_places():
    rows = [label(name, 0.0, y) for name, y in (("a", 60.0), ("b", 30.0), ("c", 29.0), ("d", 0.0))]
    found = set_out(rows)
    levels = {name: of_kind(one, Line)[0].y1 for name, (one, _) in found.items()}
    assert (levels["a"], levels["d"]) == (60.0, 0.0)
    # One line of words and its tails, and 3 mm, about 29.5.
    step = SIZE + TAIL + 3.0
    assert (levels["b"], levels["c"]) == pytest.approx((29.5 + step / 2, 29.5 - step / 2))


def test_a_group_that_grows_into_the_one_above_is_joined_to_it():
    """40 is clear of 30 alone; with 29 below, 30 is pushed up against it, and all three stand about
    their mean, 33."""
    heights = [6.0, 6.0, 6.0]
    assert leaders._spread([40.0, 30.0], heights[:2]) == [40.0, 30.0]
    assert leaders._spread([40.0, 30.0, 29.0], heights) == pytest.approx([42.0, 33.0, 24.0])
    assert leaders._spread([90.0, 60.0, 30.0, 0.0], [6.0] * 4) == [90.0, 60.0, 30.0, 0.0]
    assert leaders._spread([90.0, 60.0, 59.0, 0.0], [6.0] * 4) == pytest.approx(
        [90.0, 64.0, 55.0, 0.0]
    )
