"""The sheet's frame and title block: margins of ISO 5457, boxes that line up, words that fit."""

import pytest
from shapely.geometry import LineString, Point, Polygon, box

from ringwright.core.drawing import letters, paper, view
from ringwright.core.drawing.entities import Circle, Line, Polyline, Text

FRAMED = ["A4", "Letter"]
SHORT = paper.Title("Job", "Owner", "3 May", "Plate", "Iron", "mm", "80-1", "Ra 3.2")
LONG = paper.Title(*["Marigold and Fernhollow " * 4] * 8)


def block(name, title=SHORT, scale=0.5):
    sheet = paper.PAPERS[name]
    return sheet, paper.title_block(sheet, title, scale, 3, 7)


def of_kind(found, kind):
    return [one for one in found if type(one) is kind]


def rows_of(found):
    """y of the upper edges of the rows, highest first, and the dividers of each."""
    lines = of_kind(found, Line)
    tops = sorted({one.y1 for one in lines if one.layer == "frame"}, reverse=True)
    dividers = [sorted(one.x1 for one in lines if one.layer == "thin" and one.y1 == top
                       and one.x1 == one.x2) for top in tops]  # fmt: skip
    return tops, dividers


@pytest.mark.parametrize("name", paper.PAPERS)
def test_margins_are_to_bind_and_to_hold(name):
    """ISO 5457: 20 mm at the left, 10 mm elsewhere; a screen and a card need a strip of air."""
    sheet = paper.PAPERS[name]
    size = {"A4": (210.0, 297.0), "Letter": (8.5 * 25.4, 11.0 * 25.4), "screen": (130.0, 200.0),
            "card": (100.0, 100.0)}[name]  # fmt: skip
    assert (sheet.width, sheet.height) == pytest.approx(size)
    assert sheet.framed is (name in FRAMED)
    if sheet.framed:
        assert (sheet.left, sheet.others) == (20.0, 10.0)
    else:
        assert 2.0 < sheet.left == sheet.others < 3.5
    assert paper.block_height(sheet) == (38.0 if sheet.framed else 0.0)
    # Notes of 2.5 mm; on a screen as large as all else.
    assert paper.note_letters(sheet) == (2.5 if sheet.framed else 3.5)


@pytest.mark.parametrize("name", paper.PAPERS)
def test_notes_fill_their_lines_between_the_margins(name):
    """Three millimetres off either margin; a line is broken where the next word has no room."""
    sheet = paper.PAPERS[name]
    notes = ["a note of several words that goes on and on and on until it is broken " * 4, "b"]
    lines = paper.note_lines(notes, sheet)
    assert " ".join(lines[:-1]).split() == notes[0].split() and lines[-1] == "b"
    room = sheet.width - sheet.left - sheet.others - 6.0
    size = paper.note_letters(sheet)
    for one, after in zip(lines[:-2], lines[1:-1], strict=True):
        assert letters.width(one, size) <= room
        assert letters.width(one + " " + after.split()[0], size) > room
    # Exactly as much room as a line needs is enough.
    for share, count in ((1.0001, 1), (0.9999, 2)):
        wide = letters.width("two words", size) * share
        fitted = sheet._replace(width=wide + sheet.left + sheet.others + 6.0)
        assert len(paper.note_lines(["two words"], fitted)) == count


@pytest.mark.parametrize("name", FRAMED)
def test_the_border_is_one_closed_line_with_centring_marks(name):
    sheet = paper.PAPERS[name]
    frame, *marks = paper.border(sheet)
    assert frame.closed is True
    assert Polygon(frame.points).bounds == pytest.approx(
        (20.0, 10.0, sheet.width - 10.0, sheet.height - 10.0)
    )
    for one in marks:
        # ISO 5457: in the middle of the sheet, 5 mm outwards.
        line = LineString([(one.x1, one.y1), (one.x2, one.y2)])
        assert line.length == pytest.approx(5.0)
        middle = one.x1 == sheet.width / 2 or one.y1 == sheet.height / 2
        assert middle and line.distance(Polygon(frame.points)) < 1e-9
        assert line.intersection(Polygon(frame.points)).length == 0.0


@pytest.mark.parametrize("name", FRAMED)
def test_boxes_of_the_title_block_stand_under_one_another(name):
    """Three tenths for the owner and what stands below, a good third for the material, and the rest
    in eighths or so: dividers of lower rows go on where those above end."""
    sheet, found = block(name)
    tops, dividers = rows_of(found)
    assert tops == [48.0, 37.0, 28.0, 19.0]
    wide = sheet.width - 30.0
    shares = [[(x - 20.0) / wide for x in row] for row in dividers]
    assert [len(row) for row in shares] == [1, 4, 2, 3]
    for row in shares[2:]:
        assert all(min(abs(one - other) for other in shares[1]) < 1e-9 for one in row)
    assert shares[1] == pytest.approx([0.30, 0.64, 0.76, 0.88])
    assert shares[0] == pytest.approx([0.42])
    lines = of_kind(found, Line)
    for top, height in zip(tops, (11.0, 9.0, 9.0, 9.0), strict=True):
        (edge,) = [one for one in lines if one.layer == "frame" and one.y1 == top]
        assert (edge.x1, edge.y1, edge.x2, edge.y2) == (20.0, top, sheet.width - 10.0, top)
        for one in lines:
            if one.layer == "thin" and one.x1 == one.x2 and one.y1 == top:
                assert one.y2 == pytest.approx(top - height)


def cells(found, right):
    """(left, right, top, texts) of every box, texts from the top down."""
    tops, dividers = rows_of(found)
    for top, row, height in zip(tops, dividers, (11.0, 9.0, 9.0, 9.0), strict=True):
        edges = [20.0, *row, right]
        for low, high in zip(edges, edges[1:], strict=False):
            texts = [one for one in of_kind(found, Text)
                     if low <= one.x < high and top - height < one.y < top]  # fmt: skip
            yield low, high, top, height, sorted(texts, key=lambda one: -one.y)


@pytest.mark.parametrize("title", [SHORT, LONG], ids=["short", "long"])
@pytest.mark.parametrize("name", FRAMED)
def test_each_box_has_its_name_above_and_its_words_below(name, title):
    sheet, found = block(name, title)
    seen = 0
    for low, high, top, height, texts in cells(found, sheet.width - 10.0):
        seen += 1
        first, *rest = texts
        # Its name small in the upper left corner, a millimetre and a half in.
        assert (first.x, first.y, first.size) == pytest.approx((low + 1.5, top - 3.0, 1.8))
        assert (first.align, first.turn, first.bold) == ("start", 0, False)
        for one in rest:
            assert one.x == pytest.approx(low + 1.5)
            assert one.y == pytest.approx(top - height + 1.8)
            # Bold and as large as sizes in the first row, else a little smaller.
            bold = height == 11.0
            assert (one.align, one.turn, one.bold) == ("start", 0, bold)
            assert 2.0 <= one.size <= (3.5 if bold else 2.8)
            if title is SHORT:
                assert one.size == (3.5 if bold else 2.8)
            # Words keep as far from the right edge as from the left.
            wide = letters.width(one.text, one.size, bold)
            assert wide <= high - low - 3.0 + 0.02
            if one.text.endswith(letters.ELLIPSIS):
                assert one.size == 2.0
                longer = letters.width(one.text[:-1] + "MM" + letters.ELLIPSIS, 2.0, bold)
                assert longer > high - low - 3.0
    assert seen == 14


BOXES = {
    "job": 0.42, "title": 0.58, "owner": 0.30, "material": 0.34, "measures": 0.12,
    "texture": 0.46, "number": 0.24, "date": 0.24, "sheet": 0.12,
}  # fmt: skip


@pytest.mark.parametrize("field", BOXES)
def test_words_that_just_have_room_keep_their_size(field):
    """A millimetre and a half off the dividers on either side, on paper as wide as that takes."""
    bold = field in ("job", "title")
    text = "12345 of 123456" if field == "sheet" else "Fernhollow Marigold"
    size = 3.5 if bold else 2.8
    for share, full in ((1.0005, True), (0.9995, False)):
        room = letters.width(text, size, bold) * share + 3.0
        sheet = paper.PAPERS["A4"]._replace(width=room / BOXES[field] + 30.0)
        title = SHORT if field == "sheet" else SHORT._replace(**{field: text})
        found = paper.title_block(sheet, title, 0.5, 12345, 123456)
        (one,) = [each for each in of_kind(found, Text) if each.text == text]
        assert (one.size == size) is full


@pytest.mark.parametrize("name", FRAMED)
def test_the_sign_of_projection_stands_in_the_middle_of_its_box(name):
    """First angle (ISO 5456-2): the cone seen from its side, to the right of it its small end as it
    is seen from the left."""
    sheet, found = block(name)
    (cell,) = [one for one in cells(found, sheet.width - 10.0) if one[4][0].text == "Projection"]
    low, high, top, height, texts = cell
    (cone,) = of_kind(found, Polyline)
    circles = sorted(of_kind(found, Circle), key=lambda one: one.radius)
    assert cone.closed is True
    level = circles[0].y
    assert {one.x for one in circles} == {circles[0].x} and {one.y for one in circles} == {level}
    left, bottom, right, upper = Polygon(cone.points).bounds
    assert (bottom + upper) / 2 == pytest.approx(level)
    crosses = [one for one in of_kind(found, Line) if one.layer == "centre"]
    (across,) = [one for one in crosses if one.y1 == one.y2]
    (along,) = [one for one in crosses if one.x1 == one.x2]
    # Centre lines through the circles, beyond the larger one.
    assert across.y1 == level and along.x1 == circles[0].x
    assert (across.x1 + across.x2) / 2 == pytest.approx(circles[0].x)
    assert (along.y1 + along.y2) / 2 == pytest.approx(level)
    large = circles[1].radius
    assert large < across.x2 - circles[0].x == pytest.approx(along.y2 - level)
    assert across.x2 - circles[0].x < 1.5 * large
    # Between the edges of its box, as far from the one as from the other, below its name.
    room = box(low, top - height, high, top)
    whole = box(left, along.y1, across.x2, along.y2)
    assert room.covers(whole)
    assert left - low == pytest.approx(high - across.x2, abs=0.2)
    words = box(*view.text_box(texts[0]))
    assert not words.intersects(Polygon(cone.points))
    assert not words.intersects(Point(circles[0].x, level).buffer(large))
    for one in crosses:
        assert not words.intersects(LineString([(one.x1, one.y1), (one.x2, one.y2)]))
    assert right < circles[0].x - large and large > circles[0].radius
    assert right - left > large


def test_what_has_no_scale_or_texture_says_none():
    _, found = block("A4", SHORT._replace(texture=""), None)
    said = [one.text for one in of_kind(found, Text)]
    assert "Scale" in said and not [one for one in said if ":" in one or one.startswith("Ra")]
    assert paper.GENERAL not in said
    _, found = block("A4", SHORT, 2.0)
    said = [one.text for one in of_kind(found, Text)]
    assert "2:1" in said and "3 of 7" in said and paper.GENERAL in said and "Ra 3.2" in said


def test_words_cut_short_keep_as_many_letters_as_have_room():
    word = "Marigold and Fernhollow"
    for count in range(1, 20):
        kept = word[:count] + letters.ELLIPSIS
        room = letters.width(kept, 2.0)
        assert letters.fitted(word, 3.5, room, 2.0) == (kept, 2.0)
        assert letters.fitted(word, 3.5, 0.999 * room, 2.0)[0] == word[: count - 1] + (
            letters.ELLIPSIS
        )
