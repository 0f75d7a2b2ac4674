"""Writes on the page of a PDF by its own operators (ISO 32000-2, annex A), one text a drawing.

A call of the library for each line and letter is most of what a page costs; the library still
keeps pages, faces and the file.
"""

import math
from collections.abc import Sequence
from typing import Any

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from ..named_types import Point
from . import faces

# Names within a file of the standard faces, in the order of faces.OF_EVERY_READER.
Names = tuple[str, ...]

# The longest piece of a circle that one curve follows, to 3e-4 of its radius [deg].
_QUARTER = 90.0


def _codes() -> dict[int, str]:
    codes = {ord(mark): "\\" + mark for mark in "()\\"}
    for code in range(128, 256):
        letter = bytes([code]).decode(faces.ENCODING, "ignore")
        if letter:
            codes[ord(letter)] = "\\%03o" % code
    return codes


_CODES = _codes()


class Ink:
    """What is written on the page at which a canvas stands, from its lower left corner."""

    def __init__(self, canvas: Canvas) -> None:
        self.canvas = canvas
        self.add = canvas.addLiteral
        named = canvas._doc.getInternalFontName
        self.names: Names = tuple([named(face) for face in faces.OF_EVERY_READER])

    def shown(self, letters: str, face: str, size: float) -> str:
        """Operators that write letters of one face where the text stands."""
        if face in faces.OF_EVERY_READER:
            return standard(self.names, letters, face, size)
        font: Any = pdfmetrics.getFont(face)
        document = self.canvas._doc
        return " ".join(
            "%s %g Tf (%s) Tj"
            % (font.getSubsetInternalName(part, document), size, self.canvas._escape(code))
            for part, code in font.splitString(letters, document)
        )

    def text(
        self,
        x: float,
        y: float,
        letters: str,
        size: float,
        align: str = "start",
        bold: bool = False,
        turned: bool = False,
    ) -> str:
        """Operators of one line. align: "start", "middle" or "end". turned: it runs upwards."""
        line = faces.runs(faces.clean(letters), bold)
        if align != "start":
            wide = sum(faces.width(run, face) for face, run in line) * size
            back = 0.5 * wide if align == "middle" else wide
            x, y = (x, y - back) if turned else (x - back, y)
        matrix = "0 1 -1 0" if turned else "1 0 0 1"
        shown = " ".join([self.shown(run, face, size) for face, run in line])
        return "BT %s %.3f %.3f Tm %s ET" % (matrix, x, y, shown)


def standard(names: Names, letters: str, face: str, size: float) -> str:
    """Operators that write letters of a standard face where the text stands."""
    name = names[faces.OF_EVERY_READER.index(face)]
    return "%s %g Tf (%s) Tj" % (name, size, letters.translate(_CODES))


def line(x1: float, y1: float, x2: float, y2: float) -> str:
    """A path from one point to another."""
    return "%.3f %.3f m %.3f %.3f l" % (x1, y1, x2, y2)


def path(points: Sequence[Point]) -> str:
    """A path through points, left open."""
    return "%.3f %.3f m " % points[0] + " ".join(["%.3f %.3f l" % point for point in points[1:]])


def arc(x: float, y: float, radius: float, start: float, end: float) -> str:
    """A path along a circle. start, end: counter-clockwise from the right [deg]."""
    count = max(1, math.ceil((end - start) / _QUARTER))
    step = math.radians(end - start) / count
    reach = radius * 4.0 / 3.0 * math.tan(0.25 * step)
    angle = math.radians(start)
    along, up = math.cos(angle), math.sin(angle)
    pieces = ["%.3f %.3f m" % (x + radius * along, y + radius * up)]
    for i in range(1, count + 1):
        x1, y1 = x + radius * along - reach * up, y + radius * up + reach * along
        along, up = math.cos(angle + i * step), math.sin(angle + i * step)
        x3, y3 = x + radius * along, y + radius * up
        pieces.append(
            "%.3f %.3f %.3f %.3f %.3f %.3f c"
            % (x1, y1, x3 + reach * up, y3 - reach * along, x3, y3)
        )
    return " ".join(pieces)
