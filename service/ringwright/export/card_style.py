"""The letters of the route card: black on white, to be read at arm's length."""

from functools import lru_cache
from typing import Any

from reportlab.lib.enums import TA_CENTER
from reportlab.lib.styles import ParagraphStyle
from reportlab.platypus import Paragraph, Table

from . import faces

# 10 point letters have capitals of 2.5 mm, the least of ISO 3098 for a shop.
BODY = ParagraphStyle("body", fontName=faces.STANDARD, fontSize=10, leading=12)
CELL = ParagraphStyle("cell", parent=BODY, leading=11.5)
SIZE = ParagraphStyle(
    "size", parent=BODY, fontName=faces.STANDARD_BOLD, fontSize=11.5, leading=13.5
)
HEADING = ParagraphStyle(
    "heading", parent=BODY, fontName=faces.STANDARD_BOLD, fontSize=13, leading=15
)
TITLE = ParagraphStyle("title", parent=HEADING, fontSize=18, leading=22)
SMALL = ParagraphStyle("small", parent=BODY, fontSize=8.5, leading=10.5)
CENTRED = ParagraphStyle("centred", parent=SMALL, alignment=TA_CENTER)


class Marked(Paragraph):
    """A paragraph of text with marks, read and broken into lines once for each width.

    A table asks for its height again whenever it is asked for its own, and most words of a card
    are those of every card: what was broken before is kept, and only read from then on.
    """

    def __init__(self, text: str, style: ParagraphStyle) -> None:
        super().__init__(text, style, frags=_pieces(text, style.name))

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        # All that Paragraph.wrap leaves behind.
        self.width, self.height, self.blPara, self._wrapWidths = _broken(
            self.text, self.style.name, width
        )
        return self.width, self.height


class Laid(Table):
    """A table whose rows are measured once for each width, while all of them were."""

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        if getattr(self, "_measured_for", None) != width:
            super().wrap(width, height)
            # Where there was no room for all, the rest was left unmeasured.
            self._measured_for = width if None not in self._rowHeights else None
        return self._width, self._height


@lru_cache(maxsize=1000)
def _pieces(text: str, style: str) -> list[Any]:
    """The text by its marks, as a paragraph keeps and only reads it. style: name of one above."""
    frags: list[Any] = Paragraph(text, _STYLES[style]).frags
    return frags


@lru_cache(maxsize=2000)
def _broken(text: str, style: str, width: float) -> tuple[float, float, Any, Any]:
    """(width, height, lines, widths of them) of a text in a style by its name."""
    paragraph = Paragraph(text, _STYLES[style], frags=_pieces(text, style))
    wide, high = paragraph.wrap(width, 0)
    return wide, high, getattr(paragraph, "blPara", None), getattr(paragraph, "_wrapWidths", None)


_STYLES = {style.name: style for style in (BODY, CELL, SIZE, HEADING, TITLE, SMALL, CENTRED)}


def paragraph(text: str, style: ParagraphStyle = BODY) -> Marked:
    """Text in letters that this page has. text: as it is read, without marks."""
    return Marked(faces.marked(text, style.fontName == faces.STANDARD_BOLD), style)
