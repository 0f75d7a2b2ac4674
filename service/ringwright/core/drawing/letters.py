"""How wide text is, so that a layout can keep texts apart without a font at hand.

Widths of the sans serif face that every PDF reader must have, in thousandths of the letter size,
from its published metrics (a test compares them; a capital is 0.718 there).
Where text is drawn with another face, the drawing tells it to fill the same width.
"""

# Height of a capital over the letter size.
CAPITAL = 0.716
# Bold letters are wider by about this.
BOLD = 1.08
# How far letters such as g reach below the base line, over the height of a capital.
DESCENT = 0.29

_FIRST = 32
_WIDTHS = (
    278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278,
    556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556,
    1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778,
    667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556,
    333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556,
    556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
)  # fmt: skip
# Code of other letters in use, and their widths.
_OTHERS = ((0xB0, 400), (0xB1, 584), (0xD7, 584), (0xD8, 778), (0x2013, 556), (0x2026, 1000))
_LATIN = 667
_WIDEST = 1000
_LAST_LATIN = 0x24F

# Diameter (a capital O with stroke stands for it: every face has one), degree, dash.
DIAMETER = "\u00d8"
DEGREE = "\u00b0"
ELLIPSIS = "\u2026"


def _table():
    table = {}
    for i, wide in enumerate(_WIDTHS):
        table[chr(_FIRST + i)] = wide
    for code, wide in _OTHERS:
        table[chr(code)] = wide
    return table


_TABLE = _table()


def width(text, size, bold=False):
    """Width of a line of text [mm]; size: height of its capitals [mm]."""
    total = 0
    for letter in text:
        wide = _TABLE.get(letter)
        if wide is None:
            wide = _LATIN if ord(letter) <= _LAST_LATIN else _WIDEST
        total += wide
    return total * size * (BOLD if bold else 1.0) / (1000.0 * CAPITAL)


def fitted(text, size, room, least):
    """(text, size) that fit in `room` mm: smaller down to `least`, then cut short with an
    ellipsis.
    """
    wide = width(text, size)
    if wide <= room:
        return text, size
    size = max(least, size * room / wide)
    if width(text, size) <= room * 1.0001:
        return text, size
    while text and width(text + ELLIPSIS, size) > room:
        text = text[:-1]
    return text + ELLIPSIS, size


def wrapped(text, size, room):
    """The text as a list of lines, each at most `room` mm wide; a longer word stands alone."""
    lines = []
    line = ""
    for word in text.split(" "):
        longer = line + " " + word if line else word
        if line and width(longer, size) > room:
            lines.append(line)
            line = word
        else:
            line = longer
    lines.append(line)
    return lines
