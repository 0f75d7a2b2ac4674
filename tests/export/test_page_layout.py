"""Lines of a text beside those of another layout, and what stands on which page."""

import random

import pytest
from reportlab.lib.styles import ParagraphStyle
from reportlab.platypus import Paragraph

from ringwright.export import page_text
from ringwright.export.page_layout import Cell, NewPage, Pages, Row, Space, Stack, Table
from ringwright.export.page_text import Bold, Style, Text

WORDS = (
    "bore ring Turn the outside parallel; Hold: closing-ring, 80.537 mm \u00d8 79.38\u00b0 (oiled) "
    "W.......... iiii a \u2013 swarf na\u00efve Fa\u00dfring"
)


def lines_of(parts, style, wide):
    """Words of every line, as this service breaks them."""
    lines = page_text._broken(Text(parts, style).parts, style.size, wide)
    return ["".join(letters for _, letters, _ in runs) for runs, _, _ in lines]


def reference(parts, style, wide):
    """The same by reportlab's own paragraphs."""
    face = "Helvetica-Bold" if style.bold else "Helvetica"
    there = ParagraphStyle("there", fontName=face, fontSize=style.size, leading=style.leading)
    marked = "".join("<b>%s</b>" % part if type(part) is Bold else part for part in parts)
    paragraph = Paragraph(marked, there)
    paragraph.wrap(wide, 1e6)
    if paragraph.blPara.kind == 0:
        return [" ".join(words) for _, words in paragraph.blPara.lines]
    lines = [line.words for line in paragraph.blPara.lines]
    return ["".join(word.text for word in words).strip() for words in lines]


@pytest.mark.parametrize("bold", [False, True])
def test_lines_are_those_of_another_layout(bold):
    dice = random.Random(7)
    for _ in range(400):
        size = dice.choice([8.5, 10.0, 11.5, 13.0])
        style = Style(bold=bold, size=size, leading=1.2 * size, base=size)
        some = [" ".join(dice.choices(WORDS.split(), k=dice.randint(1, 25))) for _ in range(3)]
        parts = [some[0]]
        if not bold and dice.random() < 0.7:
            # Glued to its neighbour as often as not.
            parts = [some[0] + " ", Bold(some[1]), dice.choice([" ", "; ", ". "]) + some[2]]
        # Wide enough for the longest word: what is cut within a word is our own affair.
        wide = dice.uniform(8.0 * size, 45.0 * size)
        assert lines_of(parts, style, wide) == reference(parts, style, wide), (parts, size, wide)


def test_a_word_longer_than_its_line_is_cut_and_whole():
    style = page_text.BODY
    lines = lines_of(["x" * 200 + " and on"], style, 100.0)
    assert "".join("".join(lines).split()) == "x" * 200 + "andon"
    for runs, length, _ in page_text._broken((("x" * 200, False),), style.size, 100.0):
        assert runs and length <= 100.0 + 1e-6


def placed(blocks, high):
    """Blocks of every page, and a check that none lies beyond its page or on another."""
    found = Pages(blocks, 100.0, high).pages
    for page in found:
        foot = 0.0
        for block, down in page:
            assert down >= foot - 1e-6
            foot = down + block.height(100.0)
            assert foot <= high + 1e-6
    return [[block for block, _ in page] for page in found]


def test_a_block_that_has_no_room_goes_to_the_next_page_whole():
    blocks = [Space(60.0), Stack([Space(20.0), Space(30.0)]), Space(40.0), NewPage(), Space(1.0)]
    pages = placed(blocks, 100.0)
    assert [len(page) for page in pages] == [1, 2, 2]
    assert pages[1] == blocks[1:3] and pages[2][-1] is blocks[4]


def test_what_no_page_can_hold_is_divided():
    parts = [Space(40.0) for _ in range(5)]
    pages = placed([Space(10.0), Stack(parts)], 100.0)
    assert [len(page) for page in pages] == [1, 2, 2, 1]
    assert [block for page in pages[1:] for block in page] == parts


def test_a_table_begins_where_there_is_room_and_says_its_heads_on_each_page():
    head, rows = Space(10.0), [Space(20.0) for _ in range(9)]
    pages = placed([Space(30.0), Table(head, rows)], 100.0)
    assert [block for page in pages for block in page if block in rows] == rows[1:]
    first = pages[0][-3]
    assert type(first) is Stack and list(first.blocks) == [head, rows[0]]
    for page in pages[1:]:
        assert page[0] is head and len(page) > 1


def test_a_row_is_as_high_as_its_highest_cell_and_no_lower_than_asked():
    cells = [Cell(blocks=[Space(5.0), Space(7.0)]), Cell(blocks=[Space(9.0)])]
    assert Row([50.0, 50.0], cells).height(100.0) == pytest.approx(12.0)
    assert Row([50.0, 50.0], cells, 30.0).height(100.0) == pytest.approx(30.0)


def test_a_figure_too_long_for_its_box_stands_in_one_line_of_smaller_letters():
    text = page_text.fitted("1234.567", page_text.SIZE, 33.0)
    assert text.style.size < page_text.SIZE.size
    assert text.height(33.0) == page_text.SIZE.leading
    assert page_text.fitted("4.5", page_text.SIZE, 33.0).style == page_text.SIZE
