"""Views set out on a sheet: rectangles, whose largest scale and whose places can be worked by hand
or by trying every way."""

import itertools
import random

import pytest

from ringwright.core.drawing import setting
from ringwright.core.drawing.entities import Text
from ringwright.core.drawing.paper import Title
from ringwright.core.drawing.view import View

# Free for views on A4: 210 less 20 and 10 mm of border, 297 less 10 below, 10 above and a title
# block of 38; 8 mm of that stay free.
WIDE, HIGH = 172.0, 231.0
BETWEEN = 8.0
# ISO 5455, as two open lists have it.
SERIES = [50.0, 20.0, 10.0, 5.0, 2.0, 1.0, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01]
TITLE = Title("Launch", "", "", "Plate", "", "mm", "1", "")


def plate(wide, high, name="plate", **more):
    """A View of a rectangle: without words it takes as much of the paper as it is large.

    Its origin lies a quarter of its width to the left of it, and 0.4 of its height above its foot.
    """
    view = View(name, **more)
    left, low = 0.25 * wide, -0.4 * high
    corners = [(left, low), (left + wide, low), (left + wide, low + high), (left, low + high)]
    view.outline("outline", corners)
    return view


def sheet(views, paper="A4", notes=(), **more):
    return setting.composed("plate", TITLE, "A plate.", views, list(notes), paper, **more)


def scales(views, paper="A4"):
    return [one.scale for one in sheet(views, paper).views]


def ways(count):
    """Where new rows begin: side by side first, then each way, the earliest row break first."""
    for breaks in itertools.product((False, True), repeat=count - 1):
        yield breaks[::-1]


def room_taken(sizes, breaks):
    """(width, height) of (width, height) in rows, 8 mm between neighbours and rows."""
    rows = [[sizes[0]]]
    for size, new in zip(sizes[1:], breaks, strict=True):
        if new:
            rows.append([])
        rows[-1].append(size)
    across = [sum(x for x, _ in row) + BETWEEN * (len(row) - 1) for row in rows]
    up = [max(y for _, y in row) for row in rows]
    return max(across), sum(up) + BETWEEN * (len(rows) - 1)


def largest(sizes, second=()):
    """Scale of each rectangle: the largest first, those named second up to three steps smaller."""
    for at, scale in enumerate(SERIES):
        for other in SERIES[at : at + 4] if second else [scale]:
            own = [other if i in second else scale for i in range(len(sizes))]
            drawn = [(x * one, y * one) for (x, y), one in zip(sizes, own, strict=True)]
            for breaks in ways(len(sizes)):
                wide, high = room_taken(drawn, breaks)
                if wide <= WIDE and high <= HIGH:
                    return own
    return None


def test_views_stand_at_the_largest_scale_at_which_all_fit():
    """Against every scale and every way to break them into rows."""
    chance = random.Random(5455)
    seen = set()
    for _ in range(60):
        sizes = [
            (10.0 ** chance.uniform(0.5, 2.6), 10.0 ** chance.uniform(0.5, 2.6))
            for _ in range(chance.randint(1, 4))
        ]
        count = len(sizes)
        second = {count - 1} if count > 1 and chance.random() < 0.5 else set()
        views = [plate(*size, second=i in second) for i, size in enumerate(sizes)]
        found = scales(views)
        assert found == largest(sizes, second), (sizes, second)
        assert sheet(views).scale == found[0]
        seen.add((found[0], len(set(found))))
    assert len(seen) > 6 and any(kinds == 2 for _, kinds in seen)


@pytest.mark.parametrize(
    ("wide", "high", "scale"),
    [
        (172.0, 50.0, 1.0), (172.1, 50.0, 0.5), (50.0, 231.0, 1.0), (50.0, 231.1, 0.5),
        (3.44, 1.0, 50.0), (3.5, 1.0, 20.0), (17200.0, 1.0, 0.01), (1.0, 4620.0, 0.05),
    ],
)  # fmt: skip
def test_a_view_may_fill_the_sheet(wide, high, scale):
    assert scales([plate(wide, high)]) == [scale]


def test_two_views_may_fill_the_sheet_with_eight_between_them():
    assert scales([plate(100.0, 20.0), plate(64.0, 20.0)]) == [1.0, 1.0]
    assert scales([plate(100.0, 200.0), plate(64.1, 200.0)]) == [0.5, 0.5]
    assert scales([plate(172.0, 150.0), plate(172.0, 73.0)]) == [1.0, 1.0]
    assert scales([plate(172.0, 150.0), plate(172.0, 73.1)]) == [0.5, 0.5]


def test_a_second_view_is_three_steps_smaller_at_the_most():
    """Above 200 at 1:1 there are 23 mm left: 220 at 1:10 goes there, 450 not before 1:20.

    At 1:2 both stand side by side, 86 and 50 wide, 225 high.
    """
    assert scales([plate(172.0, 200.0), plate(100.0, 220.0, second=True)]) == [1.0, 0.1]
    assert scales([plate(172.0, 200.0), plate(100.0, 450.0, second=True)]) == [0.5, 0.5]


def test_what_fits_at_no_scale_is_drawn_at_the_smallest():
    assert list(setting.SCALES) == SERIES
    found = sheet([plate(30000.0, 10.0), plate(10.0, 10.0)])
    assert found.scale == 0.01 and [one.scale for one in found.views] == [0.01, 0.01]


def test_a_view_stands_in_the_middle_of_the_room():
    """100 by 80 on A4: 180 across from 20, 239 up from 48."""
    (one,) = sheet([plate(100.0, 80.0)]).views
    assert one.box == pytest.approx((60.0, 127.5, 160.0, 207.5))
    assert (one.x, one.y) == pytest.approx((60.0 - 25.0, 127.5 + 32.0))
    (outline,) = one.entities
    assert outline.points[0] == pytest.approx((60.0, 127.5))
    # Three lines of notes and what parts them from the views: 4 mm and 4 more for each.
    (one,) = sheet([plate(100.0, 80.0)], notes=["One.", "Two.", "Three."]).views
    assert one.box == pytest.approx((60.0, 135.5, 160.0, 215.5))


def test_rows_are_spread_evenly_and_share_their_middle():
    """Two rows: 60 and 30 high side by side, 70 below: 239 - 60 - 70 - 8 = 101 to spare."""
    views = [plate(90.0, 60.0), plate(60.0, 30.0), plate(120.0, 70.0)]
    found = sheet(views)
    assert found.scale == 1.0
    step = 101.0 / 3.0
    top = 48.0 + 239.0 - step
    gap = (180.0 - 90.0 - 60.0 - 8.0) / 3.0
    a, b, c = [one.box for one in found.views]
    assert a == pytest.approx((20.0 + gap, top - 60.0, 20.0 + gap + 90.0, top))
    assert b == pytest.approx((a[2] + gap + 8.0, top - 45.0, a[2] + gap + 68.0, top - 15.0))
    low = top - 60.0 - step - 8.0
    assert c == pytest.approx((50.0, low - 70.0, 170.0, low))
    assert low - 70.0 - step == pytest.approx(48.0)


def test_a_screen_takes_what_scale_fills_its_width():
    """124 mm wide, shapes up to 120 high, by steps of preferred numbers (ISO 3, series R 10)."""
    preferred = (1.0, 1.25, 1.6, 2.0, 2.5, 3.15, 4.0, 5.0, 6.3, 8.0)
    found = sorted(setting.SCREEN_SCALES, reverse=True)
    assert list(setting.SCREEN_SCALES) == found and found[0] == 100.0
    wanted = sorted(ten * one for ten in (0.01, 0.1, 1.0, 10.0) for one in preferred)[::-1]
    assert found[1:] == pytest.approx([one for one in wanted if one > 0.0124])
    for wide, high, scale in (
        (100.0, 50.0, 1.0), (124.0, 10.0, 1.0), (124.1, 10.0, 0.8), (50.0, 200.0, 0.5),
        (60.0, 120.0, 1.0), (60.0, 120.1, 0.8), (1.0, 1.0, 100.0), (500.0, 10.0, 0.2),
    ):  # fmt: skip
        assert scales([plate(wide, high)], "screen") == pytest.approx([scale])
    # It grows downwards: two of 100 stand one above the other, as large as either alone, and one
    # that would give way on paper does not.
    for second in (False, True):
        found = scales([plate(100.0, 100.0), plate(100.0, 100.0, second=second)], "screen")
        assert found == [1.0, 1.0]


def test_a_screen_is_as_long_as_what_stands_on_it():
    """3 mm, the notes, the views with 2 mm above and below, 2.2 letters of title, 3 mm."""
    found = sheet([plate(100.0, 50.0)], "screen")
    assert (found.width, found.height) == pytest.approx((130.0, 3.0 + 54.0 + 7.7 + 3.0))
    assert found.scale is None
    (one,) = found.views
    assert one.box == pytest.approx((15.0, 5.0, 115.0, 55.0))
    (title,) = found.frame
    assert (title.text, title.align, title.turn, title.bold) == ("Plate", "start", 0, True)
    assert (title.x, title.y, title.size) == pytest.approx((3.0, found.height - 6.5, 3.5))
    found = sheet([plate(100.0, 50.0)], "screen", ["Mind.", "Your step."])
    # Two lines of 3.5 mm letters at 1.6, and 4 mm.
    assert found.height == pytest.approx(67.7 + 15.2)
    assert found.views[0].box == pytest.approx((15.0, 20.2, 115.0, 70.2))
    lines = [one for one in found.frame if not one.bold]
    assert [(one.text, one.x, one.size) for one in lines] == [
        ("Mind.", 6.0, 3.5), ("Your step.", 6.0, 3.5)
    ]  # fmt: skip
    assert [one.y for one in lines] == pytest.approx([3.0 + 15.2 - 5.6, 3.0 + 15.2 - 11.2])
    assert {(one.align, one.turn) for one in lines} == {("start", 0)}


def test_notes_stand_on_paper_above_the_title_block():
    found = sheet([plate(100.0, 50.0)], notes=["Mind.", "Your step."])
    lines = [
        one for one in found.frame if type(one) is Text and one.text in ("Mind.", "Your step.")
    ]
    # Two lines of 2.5 mm letters at 1.6, and 4 mm, above 48.
    assert [(one.x, one.size) for one in lines] == [(23.0, 2.5)] * 2
    assert [one.y for one in lines] == pytest.approx([48.0 + 12.0 - 4.0, 48.0 + 12.0 - 8.0])
    assert {(one.align, one.turn, one.bold) for one in lines} == {("start", 0, False)}
    assert (found.width, found.height, found.number, found.count) == (210.0, 297.0, 1, 1)
    told = (found.part, found.title, found.about, found.paper)
    assert told == ("plate", "Plate", "A plate.", "A4")


def test_a_sheet_of_several_says_which_it_is():
    more = setting.sheet_of("plate", TITLE, "A plate.", [], [], "screen", 1.0, 50.0, 2, 3)
    assert more.frame[0].text == "Plate 2/3" and (more.number, more.count) == (2, 3)
    alone = setting.sheet_of("plate", TITLE, "A plate.", [], [], "screen", 1.0, 50.0)
    assert alone.frame[0].text == "Plate" and (alone.number, alone.count) == (1, 1)
    assert alone.height == pytest.approx(3.0 + 50.0 + 7.7 + 3.0)


@pytest.mark.parametrize("paper", ["A4", "screen"])
def test_charts_have_no_scale(paper):
    found = sheet([plate(40.0, 30.0)], paper, full_size=True)
    assert found.scale is None and found.views[0].scale == 1.0
    assert sheet([plate(40.0, 30.0)], paper).views[0].scale > 1.0


@pytest.mark.parametrize(
    ("size", "target", "scale"),
    [
        ((30.0, 10.0), 60.0, 2.0), ((10.0, 30.0), 60.0, 2.0), ((30.1, 10.0), 60.0, 1.0),
        ((60.3, 10.0), 60.0, 0.5), ((100.0, 10.0), 400.0, 1.0), ((172.0, 10.0), 900.0, 1.0),
        ((30000.0, 10.0), 50.0, 0.01),
    ],
)  # fmt: skip
def test_a_detail_is_as_large_as_its_target_lets_it_be(size, target, scale):
    """And no wider than the sheet; alone, its scale is the sheet's."""
    found = sheet([plate(*size, target=target)])
    assert found.views[0].scale == scale and found.scale == scale
    # Beside a view at the scale of the sheet it keeps its own.
    if size[0] < 200.0:
        found = sheet([plate(200.0, 20.0), plate(*size, name="detail", target=target)])
        assert [one.scale for one in found.views] == [0.5, scale] and found.scale == 0.5


def test_details_give_way_where_a_sheet_is_crowded():
    """Five squares of 80.4 with a target of 200.

    At 2:1, 160.8, one fits beside none; at 1:1 two stand side by side, three rows are 257 high. Of
    0.4 of the target, 80, they take 1:2.
    """
    views = [plate(80.4, 80.4, name=str(i), target=200.0) for i in range(5)]
    assert scales(views) == [0.5] * 5
    # Four go at 1:1, in two rows, at three quarters of it.
    assert scales(views[:4]) == [1.0] * 4


def test_a_scale_of_its_own_is_stated_on_paper():
    def words(paper, **more):
        views = [plate(150.0, 150.0), plate(100.0, 100.0, name="face", title="Face", **more)]
        found = sheet(views, paper)
        face = found.views[1]
        assert (face.name, face.title) == ("face", "Face")
        (text,) = [one.text for one in face.entities if type(one) is Text]
        return face.scale, text

    # 150 and 100 above one another do not go; one of 50 and its words do.
    assert words("A4", second=True) == (0.5, "Face  1:2")
    assert words("A4") == (0.5, "Face")
    assert words("A4", target=60.0) == (0.5, "Face  1:2")
    assert words("screen", target=60.0) == (0.5, "Face")
    assert words("screen", second=True)[1] == "Face"
    (lone,) = sheet([plate(30000.0, 10.0, target=50.0, title="Face")]).views
    (text,) = [one.text for one in lone.entities if type(one) is Text]
    assert text == "Face  1:100"
