"""What stands between the text of a printed card: a drawing, and the code that opens a job."""

from collections.abc import Sequence

from reportlab.lib.units import mm

from ..core.drawing.entities import PlacedView, Sheet
from . import job_link, pdf_sheet
from .page_ink import Ink


class Picture:
    """The views of a sheet without its title and notes.

    scale: of what is drawn. columns: how many views stand beside one another.
    """

    GAP: float = 3 * mm

    def __init__(self, sheet: Sheet, scale: float = 1.0, columns: int = 1) -> None:
        self.sheet = sheet
        self.scale: float = scale * mm
        views = sheet.views
        self.rows = [views[i : i + columns] for i in range(0, len(views), columns)]
        self.wide = max(map(self._wide, self.rows))
        self.high = sum(map(self._high, self.rows)) + self.GAP * (len(self.rows) - 1)

    def _wide(self, row: Sequence[PlacedView]) -> float:
        boxes = [view.box for view in row]
        wide: float = sum(box[2] - box[0] for box in boxes) * self.scale
        return wide + self.GAP * (len(row) - 1)

    def _high(self, row: Sequence[PlacedView]) -> float:
        high: float = max(view.box[3] - view.box[1] for view in row)
        return high * self.scale

    def height(self, wide: float) -> float:
        return self.high

    def draw(self, ink: Ink, x: float, top: float, wide: float) -> None:
        for row in self.rows:
            left = x + self.wide - self._wide(row)
            for view in row:
                x1, _, x2, y2 = view.box
                at = (self.scale, self.scale, left - x1 * self.scale, top - y2 * self.scale)
                ink.add("q %.5f 0 0 %.5f %.3f %.3f cm" % at)
                pdf_sheet.draw(ink, view.entities)
                ink.add("Q")
                left += (x2 - x1) * self.scale + self.GAP
            top -= self._high(row) + self.GAP


class QrCode:
    """A QR code with the quiet zone that readers need round it."""

    QUIET = 4

    def __init__(self, text: str, size: float) -> None:
        self.rows = job_link.modules(text)
        self.size = size

    def height(self, wide: float) -> float:
        return self.size

    def draw(self, ink: Ink, x: float, top: float, wide: float) -> None:
        cell = self.size / (len(self.rows) + 2 * self.QUIET)
        found = []
        for i, row in enumerate(self.rows):
            y = top - (i + 1 + self.QUIET) * cell
            start = None
            for j, dark in enumerate([*row, False]):
                if dark and start is None:
                    start = j
                elif not dark and start is not None:
                    left = x + (start + self.QUIET) * cell
                    # A hair wider, so that neighbouring cells leave no seam.
                    box = (left, y, (j - start) * cell, cell * 1.02)
                    found.append("%.3f %.3f %.3f %.3f re" % box)
                    start = None
        ink.add(" ".join([*found, "f"]))
