"""The sheet: its size, border, notes and title block.

Sizes of ISO 216; border and title block after ISO 5457 and ISO 7200, as an open sheet has them.
A "screen" sheet has neither border nor title block, is narrow, and takes what scale fills it; a
"card" is smaller still, to stand beside the text of a route card.
"""

from collections import OrderedDict, namedtuple

from . import letters, style
from .entities import FRAME, TEXT, THIN, Circle, Line, Polyline, Text
from .shapes import box, centre_cross
from .view import scale_words

# left, others: margins to the border. framed: whether it has border and title block. tallest: a
# shape may be. labels: width of a column of labels. All mm.
Paper = namedtuple(
    "Paper", ("title", "width", "height", "left", "others", "framed", "tallest", "labels")
)

PAPERS = OrderedDict(
    (
        (
            "A4",
            Paper(
                title="A4",
                width=210.0,
                height=297.0,
                left=20.0,
                others=10.0,
                framed=True,
                tallest=250.0,
                labels=46.0,
            ),
        ),
        (
            "Letter",
            Paper(
                title="Letter",
                width=215.9,
                height=279.4,
                left=20.0,
                others=10.0,
                framed=True,
                tallest=250.0,
                labels=46.0,
            ),
        ),
        (
            "screen",
            Paper(
                title="Screen",
                width=130.0,
                height=200.0,
                left=3.0,
                others=3.0,
                framed=False,
                tallest=120.0,
                labels=40.0,
            ),
        ),
        (
            "card",
            Paper(
                title="Card",
                width=100.0,
                height=100.0,
                left=2.5,
                others=2.5,
                framed=False,
                tallest=46.0,
                labels=33.0,
            ),
        ),
    )
)


BLOCK_ROWS = (11.0, 9.0, 9.0, 9.0)
_LEAST_LETTERS = 2.0

# What the title block says; each may be "". number: of the drawing. texture: of the surfaces, for
# what is made from the sheet.
Title = namedtuple(
    "Title", ("job", "owner", "date", "title", "material", "measures", "number", "texture")
)
# For sizes without limits of their own: ISO 2768-1, class m; the standard that
# replaced its second part, ISO 22081, leaves the class to the drawing. Common practice.
GENERAL = "ISO 2768-m"
# ISO 21920-1 by name; the values are common practice, no source [micrometres].
TEXTURE = "Ra 3.2 turned; Ra 1.6 where limits stand"


def sum_of(numbers):
    """Plain sum, the same in both Pythons."""
    total = 0.0
    for one in numbers:
        total += one
    return total


def note_letters(paper):
    """Height of the letters of notes on a Paper [mm]: on a narrow screen as large as any."""
    return style.SMALL if paper.framed else style.LETTERS


def note_lines(notes, paper):
    """The notes of a Paper as lines that fit between its margins."""
    lines = []
    for note in notes:
        lines += letters.wrapped(
            note, note_letters(paper), paper.width - paper.left - paper.others - 6.0
        )
    return lines


def block_height(paper):
    """Height of the title block of a Paper [mm]."""
    return sum_of(BLOCK_ROWS) if paper.framed else 0.0


def border(paper):
    """Border and centring marks."""
    left, bottom = paper.left, paper.others
    right, top = paper.width - paper.others, paper.height - paper.others
    middle_x, middle_y = 0.5 * paper.width, 0.5 * paper.height
    return [
        Polyline(FRAME, box(left, bottom, right, top), True),
        Line(FRAME, middle_x, top, middle_x, top + 5.0),
        Line(FRAME, middle_x, bottom, middle_x, bottom - 5.0),
        Line(FRAME, left, middle_y, left - 5.0, middle_y),
        Line(FRAME, right, middle_y, right + 5.0, middle_y),
    ]


def title_block(paper, title, scale, number, count):
    """The title block along the lower border, with the sign of first-angle projection."""
    left, right = paper.left, paper.width - paper.others
    wide = right - left
    rows = (
        (("Engine or job", title.job, 0.42), ("Title", title.title, 0.58)),
        (
            ("Owner", title.owner, 0.30),
            ("Material", title.material, 0.34),
            ("Scale", "" if scale is None else scale_words(scale), 0.12),
            ("Projection", "", 0.12),
            ("Sizes in", title.measures, 0.12),
        ),
        (
            ("Sizes without limits", GENERAL if title.texture else "", 0.30),
            ("Surface texture (ISO 21920-1)", title.texture, 0.46),
            ("Drawing", title.number, 0.24),
        ),
        (
            ("Made by", "", 0.30),
            ("Checked by", "", 0.34),
            ("Date", title.date, 0.24),
            ("Sheet", "%d of %d" % (number, count), 0.12),
        ),
    )
    entities = []
    top = paper.others + sum_of(BLOCK_ROWS)
    for height, row in zip(BLOCK_ROWS, rows):
        entities.append(Line(FRAME, left, top, right, top))
        x = left
        for name, value, share in row:
            room = share * wide
            entities.append(Text(TEXT, x + 1.5, top - 3.0, 1.8, name, "start", 0, False))
            if value:
                # The first row is bold, and so wider than it is measured.
                bold = height > 10.0
                large = style.LETTERS if bold else 2.8
                space = (room - 3.0) / (letters.BOLD if bold else 1.0)
                text, size = letters.fitted(value, large, space, _LEAST_LETTERS)
                base = top - height + 1.8
                entities.append(Text(TEXT, x + 1.5, base, size, text, "start", 0, bold))
            if name == "Projection":
                entities += _projection_sign(x + 0.5 * room, top - 5.8)
            x += room
            if x < right - 0.1:
                entities.append(Line(THIN, x, top, x, top - height))
        top -= height
    return entities


def _projection_sign(x, y):
    """First-angle projection (ISO 5456-2): a cone from the side on the left of its end view."""
    small, large = 1.1, 2.0
    cone = [(x - 6.0, y - small), (x - 1.5, y - large), (x - 1.5, y + large), (x - 6.0, y + small)]
    return [
        Polyline(THIN, cone, True),
        Circle(THIN, x + 3.5, y, small),
        Circle(THIN, x + 3.5, y, large),
    ] + centre_cross("centre", x + 3.5, y, 2.6)
