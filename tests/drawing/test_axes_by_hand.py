"""Axes of charts: numbers, frame and words, read back and by hand."""

import random

import numpy
import pytest
from shapely.geometry import LineString, MultiLineString, box

from drawing.chart_reading import Chart, number
from ringwright.core.drawing import axes, letters, view
from ringwright.core.drawing.entities import Circle, Line, Polyline, Text

SIZE = 3.5


def chart(wide, high, across, up):
    return axes.Axes("a", "A", wide, high, (*across, "size [mm]"), (*up, "share [%]"))


def rounds():
    """1, 2, 5 times a power of ten."""
    return [factor * 10.0**power for power in range(-7, 7) for factor in (1, 2, 5)]


@pytest.mark.parametrize("seed", range(40))
def test_numbers_are_the_closest_round_ones_that_have_room(seed):
    chance = random.Random(seed)
    span = 10.0 ** chance.uniform(-4.0, 5.0)
    low = chance.choice((0.0, span * chance.uniform(-3.0, 30.0)))
    length, room = chance.uniform(50.0, 120.0), chance.choice((12.0, 22.0))
    high = low + span
    found = axes.marks(low, high, length, room)
    step = min(one for one in rounds() if one >= span * room / length * (1.0 - 1e-12))
    # All multiples of the step from end to end, by numpy.
    first, last = numpy.ceil(low / step - 1e-9), numpy.floor(high / step + 1e-9)
    wanted = numpy.arange(first, last + 0.5) * step
    assert [value for value, _ in found] == pytest.approx(list(wanted), rel=1e-9, abs=1e-9 * step)
    for value, words in found:
        assert number(words) == pytest.approx(value, rel=1e-9, abs=1e-9 * step)
        # No more decimals than the step needs.
        places = len(words.partition(".")[2])
        assert places == (0 if step >= 1.0 else -int(numpy.floor(numpy.log10(step * 1.0001))))


def test_steps_that_just_fit_are_taken():
    tens = ["%d" % at for at in range(11)]
    assert [words for _, words in axes.marks(0.0, 10.0, 220.0, 22.0)] == tens
    twos = ["%d" % (2 * at) for at in range(11)]
    assert [words for _, words in axes.marks(0.0, 20.0, 220.0, 22.0)] == twos
    fives = ["%d" % (5 * at) for at in range(11)]
    assert [words for _, words in axes.marks(0.0, 50.0, 220.0, 22.0)] == fives
    assert [words for _, words in axes.marks(0.0, 100.0, 220.0, 22.0)] == [
        "%d" % (10 * at) for at in range(11)
    ]
    # Nothing beyond the end, however small the step.
    small = axes.marks(0.0, 5e-5, 100.0, 22.0)
    assert [value for value, _ in small] == pytest.approx([0.0, 2e-5, 4e-5])
    assert [words for _, words in axes.marks(100.0, 101.0, 100.0, 22.0)] == [
        "100.0", "100.5", "101.0",
    ]  # fmt: skip


def test_numbers_stand_22_mm_apart_across_and_12_up():
    found = Chart(chart(220.0, 120.0, (0.0, 10.0), (0.0, 10.0)).view)
    assert [value for _, value in found.marks_across] == list(range(11))
    assert [value for _, value in found.marks_up] == list(range(11))
    assert [x for x, _ in found.marks_across] == pytest.approx([22.0 * at for at in range(11)])
    assert [y for y, _ in found.marks_up] == pytest.approx([12.0 * at for at in range(11)])
    # Every number has its line.
    across, up = found.scale_lines()
    assert across == [x for x, _ in found.marks_across]
    assert up == [y for y, _ in found.marks_up]


@pytest.mark.parametrize("title", ["share [%]", "a title that is a good deal wider than 40 mm"])
def test_frame_and_words_of_a_chart(title):
    one = axes.Axes("a", "A", 40.0, 60.0, (3.0, 9.0, "size"), (-2.0, 7.0, title)).view
    frame = one.shapes[0]
    assert type(frame) is Polyline and frame.closed is False
    assert frame.points == [(0.0, 60.0), (0.0, 0.0), (40.0, 0.0)]
    texts = [each for each in one.shapes if type(each) is Text]
    assert all((each.turn, each.bold, each.size) == (0, False, SIZE) for each in texts)
    boxes = [box(*view.text_box(each)) for each in texts]
    assert all(not one.intersects(other) for at, one in enumerate(boxes) for other in boxes[:at])
    plot = box(0.0, 0.0, 40.0, 60.0)
    assert all(not plot.intersects(each) for each in boxes)
    above = max(texts, key=lambda each: each.y)
    wide = letters.width(title, SIZE)
    # From the left edge; where it is wider than the chart it ends at the right one.
    assert above.text == title and above.align == "start"
    assert above.x == pytest.approx(0.0 if wide < 40.0 else 40.0 - wide)
    lowest = min(texts, key=lambda each: each.y)
    assert (lowest.text, lowest.x, lowest.align) == ("size", 20.0, "middle")
    ticks = [each for each in one.shapes if type(each) is Line and each.layer == "outline"]
    for each in ticks:
        # Outwards from the frame.
        assert (each.x1 == each.x2 and (each.y1, each.y2) == (0.0, -1.5)) or (
            each.y1 == each.y2 and (each.x1, each.x2) == (0.0, -1.5)
        )


def test_a_curve_along_the_border_is_drawn_and_a_touch_is_not():
    one = chart(80.0, 40.0, (10.0, 50.0), (-5.0, 15.0))

    def drawn(*pairs):
        one.view.shapes = []
        one.curve("outline", list(pairs))
        return [each.points for each in one.view.shapes]

    assert drawn((10.0, -5.0), (10.0, 15.0)) == [[(0.0, 0.0), (0.0, 40.0)]]
    assert drawn((50.0, -5.0), (50.0, 15.0)) == [[(80.0, 0.0), (80.0, 40.0)]]
    assert drawn((10.0, 15.0), (50.0, 15.0)) == [[(0.0, 40.0), (80.0, 40.0)]]
    assert drawn((10.0, -5.0), (50.0, -5.0)) == [[(0.0, 0.0), (80.0, 0.0)]]
    assert drawn((20.0, 0.0)) == []
    assert drawn((60.0, 0.0), (70.0, 0.0)) == []
    assert all(each.closed is False for each in one.view.shapes)
    drawn((20.0, 0.0), (30.0, 0.0), (30.0, 5.0))
    assert one.view.shapes[0].closed is False


@pytest.mark.parametrize("seed", range(10))
def test_a_curve_is_cut_where_shapely_cuts_it(seed):
    chance = random.Random(seed)
    one = chart(80.0, 40.0, (0.0, 80.0), (0.0, 40.0))
    one.view.shapes = []
    # Points inside and outside in turn or together; none of its pieces is all outside and crosses.
    pairs = [(8.0 * at, chance.uniform(-30.0, 70.0)) for at in range(11)]
    one.curve("outline", pairs)
    inside = [0.0 <= y <= 40.0 for _, y in pairs]
    whole = MultiLineString([
        [pairs[at], pairs[at + 1]] for at in range(10) if inside[at] or inside[at + 1]
    ]).intersection(box(0.0, 0.0, 80.0, 40.0))  # fmt: skip
    drawn = MultiLineString([each.points for each in one.view.shapes])
    assert drawn.length == pytest.approx(whole.length, abs=1e-4)
    assert whole.buffer(1e-4).covers(drawn)
    assert all(LineString(each.points).is_simple for each in one.view.shapes)


def test_words_and_ringed_points_stand_at_their_values():
    one = chart(80.0, 40.0, (10.0, 50.0), (-5.0, 15.0))
    one.label(30.0, 5.0, "Middle")
    one.point(30.0, 5.0)
    (label,) = one.view.labels
    assert (label.side, label.point, label.text) == ("right", (40.0, 20.0), "Middle")
    ring, dot = [each for each in one.view.shapes if type(each) is Circle]
    assert (ring.x, ring.y) == (dot.x, dot.y) == (40.0, 20.0)
    assert 0.25 < dot.radius < 0.5 and 1.25 < ring.radius < 2.0
