"""Dimensions on their rails: against shapely for many at once, and by hand for each rule."""

import random

import pytest
from shapely.geometry import LineString, Point, box

from ringwright.core.drawing import blocks, letters, rails, style, view
from ringwright.core.drawing.entities import Fill, Line, Text
from ringwright.core.drawing.words import Words

SIDES = {"top": (0, 1, 1), "bottom": (0, 1, -1), "right": (1, 0, 1), "left": (1, 0, -1)}
SIZE = 3.5
# A digit of the face is 0.556 of the letter size wide, and that is a capital over 0.716.
DIGIT = 0.556 * SIZE / 0.716
# The style: arrows 3.5 long and 0.6 to each side, extension lines from 1 off the shape to 2 past
# the dimension line, words 1 off it, 8 to the first line, 2 between whatever stands side by side.
ARROW, HALF, CLEAR_OF, PAST, OFF, FIRST, BETWEEN = 3.5, 0.6, 1.0, 2.0, 1.0, 8.0, 2.0


def uv(side, x, y):
    """Along the dimension line, and outwards."""
    along, across, way = SIDES[side]
    return ((x, y)[along], way * (x, y)[across])


def measure(low, high, side="top", words="1", name="", begin=(0.0, 0.0)):
    along, across, way = SIDES[side]
    points = []
    for at, out in zip((low, high), begin, strict=True):
        point = [0.0, 0.0]
        point[along], point[across] = at, way * out
        points.append(tuple(point))
    lines = words if type(words) is tuple else (words,)
    return rails.Measure(name, high - low, side, *points, Words("", lines))


def flat(side, part):
    """A part of a dimension as a shape along and outwards."""
    if type(part) is Line:
        return LineString([uv(side, part.x1, part.y1), uv(side, part.x2, part.y2)])
    return [uv(side, *point) for point in part.points]


class Seen:
    """One dimension as it was drawn, along and outwards."""

    def __init__(self, side, dimension, corners):
        lines = [flat(side, one) for one in dimension.parts if type(one) is Line]
        self.name = dimension.name
        self.ends = sorted(uv(side, *one) for one in dimension.points)
        self.level = self.ends[0][1]
        self.level_lines = [
            one for one in lines if one.coords[0][1] == one.coords[1][1] == self.level
        ]
        self.extensions = [one for one in lines if one not in self.level_lines]
        self.heads = [flat(side, one) for one in dimension.parts if type(one) is Fill]
        (u1, v1), (u2, v2) = uv(side, *corners[:2]), uv(side, *corners[2:])
        self.words = box(min(u1, u2), min(v1, v2), max(u1, u2), max(v1, v2))
        self.texts = [one for one in dimension.parts if type(one) is Text]
        self.corners = corners

    def used(self):
        """From where to where it takes up its line."""
        xs = [x for one in self.level_lines for x, _ in one.coords]
        return min(xs), max(xs)


def set_out(measures, side="top", edge=0.0, scale=1.0):
    found, corners = rails.placed(measures, side, scale, edge, SIZE)
    seen = [Seen(side, *each) for each in zip(found, corners, strict=True)]
    return {one.name: one for one in seen}


def many(side, seed):
    chance = random.Random(seed)
    measures = []
    for at in range(9):
        low = round(chance.uniform(-40.0, 30.0), 2)
        high = round(low + chance.choice((2.0, 6.0, 12.0, 30.0, 60.0)) * chance.random() + 0.5, 2)
        words = ["%.2f" % chance.uniform(1.0, 999.0) for _ in range(chance.choice((1, 1, 2)))]
        begin = (round(chance.uniform(-30.0, 3.0), 2), round(chance.uniform(-30.0, 3.0), 2))
        measures.append(measure(low, high, side, tuple(words), "m%d" % at, begin))
    return measures


@pytest.mark.parametrize("side", SIDES)
@pytest.mark.parametrize("seed", range(5))
def test_many_sizes_stand_clear_of_each_other_and_end_where_they_should(side, seed):
    measures, edge = many(side, seed), 4.0
    seen = set_out(measures, side, edge)
    assert len(seen) == len(measures)
    for entry in measures:
        one = seen[entry.name]
        # Arrows' tips are the two points, 3.5 mm long and 1.2 wide along the line.
        ends = [uv(side, *entry.first), uv(side, *entry.second)]
        assert [u for u, _ in one.ends] == pytest.approx([ends[0][0], ends[1][0]])
        assert one.level >= edge + FIRST - 1e-9
        inside = one.ends[1][0] - one.ends[0][0] >= 2.0 * ARROW + 1.5
        for tip, way, corners in zip(one.ends, (1, -1), sorted(one.heads), strict=True):
            body = way if inside else -way
            assert corners[0] == pytest.approx(tip)
            assert sorted(corners[1:]) == [
                pytest.approx((tip[0] + body * ARROW, tip[1] - HALF)),
                pytest.approx((tip[0] + body * ARROW, tip[1] + HALF)),
            ]
        # Extension lines: what shapely leaves of them beside the words of the others.
        others = [each.words for each in seen.values() if each is not one]
        wanted = []
        for u, start in ends:
            if start + CLEAR_OF < one.level + PAST:
                wanted.append(LineString([(u, start + CLEAR_OF), (u, one.level + PAST)]))
        drawn = sum(each.length for each in one.extensions)
        left = 0.0
        for line in wanted:
            for each in others:
                low, bottom, high, top = each.bounds
                line = line.difference(box(low - 0.6, bottom - 0.6, high + 0.6, top + 0.6))
            left += line.length
            pieces = [each for each in one.extensions if each.coords[0][0] == line.bounds[0]] if (
                not line.is_empty) else []  # fmt: skip
            assert all(line.buffer(1e-6).covers(each) for each in pieces)
        assert drawn == pytest.approx(left, abs=1e-6)
        # Words lie a millimetre off the line, where they are read from.
        low, bottom, high, top = one.words.bounds
        if side in ("top", "left"):
            assert bottom == pytest.approx(one.level + OFF)
        else:
            assert top == pytest.approx(one.level - OFF)
        for each in one.texts:
            assert each.turn == (90 if side in ("left", "right") else 0)
            left_, low_, right_, high_ = view.text_box(each)
            tail = SIZE * letters.DESCENT
            assert one.corners[0] - 1e-9 <= left_ and high_ <= one.corners[3] + 1e-9
            assert right_ <= one.corners[2] + tail + 1e-9 and low_ >= one.corners[1] - tail - 1e-9
    rows = list(seen.values())
    for at, one in enumerate(rows):
        for other in rows[:at]:
            assert one.words.distance(other.words) > 0.5
            assert all(one.words.distance(line) > 0.5 for line in other.level_lines)
            assert all(other.words.distance(line) > 0.5 for line in one.level_lines)
            if one.level == other.level:
                first, second = sorted((one.used(), other.used()))
                assert second[0] - first[1] >= -1e-9
            # What spans another whole stands farther out.
            (a, b), (c, d) = [[u for u, _ in each.ends] for each in (one, other)]
            if a <= c and d <= b and b - a > d - c + 0.02:
                assert one.level > other.level
            if c <= a and b <= d and d - c > b - a + 0.02:
                assert other.level > one.level


def test_words_stand_between_the_arrows_where_they_have_a_millimetre_to_spare():
    wide = blocks.block(Words("", ("12345",)), SIZE).width
    assert wide == pytest.approx(5 * DIGIT)
    for span, inside in ((wide + 1.0, True), (wide + 0.999, False), (wide - 0.5, False)):
        one = set_out([measure(0.0, span, words="12345")])[""]
        low, _, high, _ = one.words.bounds
        if inside:
            assert (low + high) / 2 == pytest.approx(span / 2)
            assert one.used() == (0.0, span)
        else:
            # Beyond the upper end, a millimetre and a half from it; the line runs on below them.
            assert low == pytest.approx(span + 1.5)
            assert one.used() == pytest.approx((0.0, span + 1.5 + wide))
        assert [sorted(head)[0][0] for head in one.heads] == pytest.approx([0.0, span - ARROW])


def test_arrows_stand_outside_where_two_of_them_and_a_little_have_no_room():
    for span, inside in ((8.5, True), (8.49, False)):
        one = set_out([measure(0.0, span)])[""]
        backs = sorted(head[1][0] for head in one.heads)
        if inside:
            assert backs == pytest.approx([3.5, span - 3.5])
            assert one.used() == (0.0, span)
            continue
        assert backs == pytest.approx([-3.5, span + 3.5])
        # A tail of two arrows' length on either side; words begin at the end of the upper one.
        assert one.words.bounds[0] == pytest.approx(span + 7.0)
        assert one.used() == pytest.approx((-7.0, span + 7.0 + DIGIT))
        # Between its tips it is drawn, within the arrows' bodies it is not.
        pieces = sorted((line.bounds[0], line.bounds[2]) for line in one.level_lines)
        assert pieces == [
            pytest.approx((-7.0, -3.5)), pytest.approx((0.0, span)),
            pytest.approx((span + 3.5, span + 7.0 + DIGIT)),
        ]  # fmt: skip


def test_words_go_to_the_lower_end_where_the_upper_one_is_taken():
    """The longer one beside 0 to 4 lies in its way above; below there is room."""
    found = set_out([measure(0.0, 4.0, name="short"), measure(18.0, 22.5, name="next")])
    # First come the words of the shorter one: from 4 + 7 to 13.7.
    assert found["short"].words.bounds[0] == pytest.approx(11.0)
    # The other's tail would begin at 11: it stands on the next line.
    assert found["next"].level > found["short"].level
    wall = measure(20.0, 40.0, name="wall", words="1")
    short = measure(0.0, 21.0, words="1234567890", name="short")
    found = set_out([wall, short])
    assert found["short"].level > found["wall"].level
    # Arrows inside, words too wide: below, a millimetre and a half from the end.
    free = measure(0.0, 20.0, words="1234567890", name="free")
    found = set_out([measure(22.1, 32.0, name="wall"), free])
    assert found["free"].level == found["wall"].level
    assert found["free"].words.bounds[2] == pytest.approx(-1.5)
    assert found["free"].used() == pytest.approx((-1.5 - 10 * DIGIT, 20.0))
    # Arrows outside: below the lower tail.
    tight = measure(0.0, 8.0, words="1", name="tight")
    found = set_out([measure(17.0, 18.0, name="wall"), tight])
    assert found["wall"].used()[0] == 10.0 and found["tight"].level > found["wall"].level
    found = set_out([measure(24.5, 25.5, name="wall"), tight])
    assert found["tight"].level == found["wall"].level
    assert found["tight"].words.bounds[2] == pytest.approx(-7.0)
    assert found["tight"].used() == pytest.approx((-7.0 - DIGIT, 15.0))


def test_neighbours_share_a_line_two_millimetres_apart_and_chains_end_to_end():
    first = measure(0.0, 10.0, name="a")
    assert_level(first, measure(10.0, 22.0, name="b"), True)
    assert_level(first, measure(9.9, 22.0, name="b"), False)
    # Words beyond an end are no chain: 10 + 1.5 and five digits, and 2 mm to what comes next.
    wide = measure(0.0, 10.0, words="12345", name="a")
    end = 11.5 + 5 * DIGIT
    blocked = measure(-30.0, -1.9, name="c")
    for start, level in ((end + 2.0, True), (end + 1.98, False), (end, False)):
        assert_level(wide, measure(start, start + 12.0, name="b"), level, blocked)
    # Nor are words beyond the lower end, where a chain of sizes bars the upper one.
    barred = measure(12.1, 21.6, name="c")
    end = -1.5 - 5 * DIGIT
    for stop, level in ((end - 2.0, True), (end - 1.98, False), (end, False)):
        assert_level(wide, measure(stop - 12.0, stop, name="b"), level, barred)
    # Arrows outside are none either: tails of 7, and 2 mm.
    short = measure(0.0, 8.0, name="a")
    end = 15.0 + DIGIT
    for start, level in ((end + 2.0, True), (end + 1.98, False), (end, False)):
        assert_level(short, measure(start, start + 8.5, name="b"), level)
    # And from the other side: what is set first stands to the right.
    end = -7.0
    for start, level in ((end - 2.0, True), (end - 1.98, False), (end, False)):
        assert_level(short, measure(start - 8.5, start, name="b"), level)


def assert_level(first, second, same, *others):
    found = set_out([first, second, *others])
    assert (found["a"].level == found["b"].level) is same


@pytest.mark.parametrize(("low", "high"), [(-1.0, 11.9), (3.0, 11.9), (-1.0, 9.0)])
def test_what_spans_another_never_stands_nearer(low, high):
    """3 to 9 has its words blocked on both sides, and goes to the second line; what spans it would
    have room on the first, but its extension lines would then be crossed."""
    found = set_out([
        measure(21.0, 24.0, name="upper"), measure(-20.0, -17.0, name="lower"),
        measure(3.0, 9.0, name="inner", words="12345"), measure(low, high, name="outer"),
        measure(-60.0, -45.0, name="far"),
    ])  # fmt: skip
    assert found["upper"].level == found["lower"].level == found["far"].level == FIRST
    # A line of words and its surroundings farther out each.
    assert found["inner"].level == pytest.approx(FIRST + SIZE + 3.5)
    assert found["outer"].level == pytest.approx(FIRST + 2 * (SIZE + 3.5))


def test_of_sizes_alike_the_lower_one_is_set_first():
    found = set_out([measure(5.0, 25.0, name="b"), measure(0.0, 20.0, name="a")])
    assert found["a"].level < found["b"].level
    found = set_out([measure(0.0, 20.0, name="a"), measure(0.0, 20.0, name="b")])
    assert found["a"].level < found["b"].level


@pytest.mark.parametrize("side", SIDES)
def test_lines_leave_room_for_the_tallest_words_between_them(side):
    """Limits are two lines of words: 3.5 mm and 1.5 times that below; 1 + 2.5 mm about them."""
    tall, low = SIZE * 2.5 + 3.5, SIZE + 3.5
    rows = [
        measure(0.0, 12.0, side, "1", "one"), measure(0.0, 40.0, side, ("11", "12"), "two"),
        measure(0.0, 70.0, side, "3", "three"),
    ]  # fmt: skip
    found = set_out(rows, side, 5.0)
    levels = [found[name].level for name in ("one", "two", "three")]
    if side in ("top", "left"):
        assert levels == pytest.approx([13.0, 13.0 + low, 13.0 + low + tall])
    else:
        assert levels == pytest.approx([13.0, 13.0 + tall, 13.0 + tall + low])
    # Nearest the view, below or right of it, they push the first line out.
    (only,) = set_out([measure(0.0, 40.0, side, ("11", "12"), "two")], side, 5.0).values()
    assert only.level == pytest.approx(13.0 if side in ("top", "left") else 5.0 + tall)


def test_no_extension_line_where_the_point_lies_beyond_the_dimension_line():
    (one,) = set_out([measure(0.0, 20.0, begin=(9.0, 9.1))]).values()
    # The line stands at 8, its extension lines would end at 10 and begin at 10 and 10.1.
    assert one.extensions == []
    (one,) = set_out([measure(0.0, 20.0, begin=(8.9, 0.0))]).values()
    assert sorted(line.length for line in one.extensions) == pytest.approx([0.1, 9.0])


def test_a_dimension_says_what_it_measures():
    entry = measure(3.0, 9.0, "right", name="width")
    (found,), _ = rails.placed([entry], "right", 0.5, 0.0, SIZE)
    assert found[:5] == ("width", 6.0, "mm", "linear", 0.5) and found.words == entry.words
    assert {Point(one) for one in found.points} == {Point(8.0, 1.5), Point(8.0, 4.5)}


def test_a_block_of_limits_lies_above_its_corner_with_its_sign_half_way_up():
    sign = 0.778 * SIZE / 0.716 + 0.3
    entry = blocks.block(Words("\u00d8", ("80", "79.95")), SIZE)
    first, upper, lower = blocks.laid(entry, "dimensions", 10.0, 20.0)
    assert (first.text, upper.text, lower.text) == ("\u00d8", "80", "79.95")
    assert (first.x, upper.x, lower.x) == pytest.approx((10.0, 10.0 + sign, 10.0 + sign))
    # A pitch of 1.5 letters from line to line, the sign's middle half-way up all of it.
    assert (lower.y, upper.y) == pytest.approx((20.0, 25.25))
    assert first.y + SIZE / 2 == pytest.approx((20.0 + upper.y + SIZE) / 2)
    assert entry.height == pytest.approx(upper.y + SIZE - lower.y)
    for one in (first, upper, lower):
        assert (one.layer, one.size, one.align, one.turn, one.bold) == (
            "dimensions", SIZE, "start", 0, False,
        )  # fmt: skip
    # Turned left by a quarter: (x, y) goes to (-y, x) about the lower right corner.
    for one, other in zip(
        blocks.laid_upright(entry, "dimensions", 30.0, 40.0),
        blocks.laid(entry, "dimensions", 0.0, 0.0),
        strict=True,
    ):
        assert (one.x, one.y) == pytest.approx((30.0 - other.y, 40.0 + other.x))
        assert (one.text, one.size, one.turn, one.bold) == (other.text, SIZE, 90, False)
        assert one.align == "start"
    assert blocks.laid_upright(entry, "text", 0.0, 0.0)[0].x < 0.0
    assert blocks.block(Words("", ("",)), SIZE).width == 0.0
    assert blocks.block(Words("", ("8",))).size == style.LETTERS
