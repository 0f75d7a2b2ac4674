"""What stands between the text of a PDF page: a drawing, and the code that opens a job."""

from collections.abc import Sequence

from reportlab.lib.units import mm
from reportlab.platypus import Flowable

from ..core.drawing.entities import PlacedView, Sheet
from . import job_link, pdf_sheet


class Picture(Flowable):
    """The views of a sheet without its title and notes.

    scale: of what is drawn. columns: how many views stand beside one another.
    """

    GAP: float = 3 * mm

    def __init__(self, sheet: Sheet, scale: float = 1.0, columns: int = 1) -> None:
        super().__init__()
        self.sheet = sheet
        self.scale: float = scale * mm
        views = sheet.views
        self.rows = [views[i : i + columns] for i in range(0, len(views), columns)]
        self.width = max(self._wide(row) for row in self.rows)
        self.height = sum(map(self._high, self.rows)) + self.GAP * (len(self.rows) - 1)

    def _wide(self, row: Sequence[PlacedView]) -> float:
        boxes = [view.box for view in row]
        wide: float = sum(box[2] - box[0] for box in boxes) * self.scale
        return wide + self.GAP * (len(row) - 1)

    def _high(self, row: Sequence[PlacedView]) -> float:
        high: float = max(view.box[3] - view.box[1] for view in row)
        return high * self.scale

    def wrap(self, *_: float) -> tuple[float, float]:
        return self.width, self.height

    def draw(self) -> None:
        top = self.height
        for row in self.rows:
            left = self.width - self._wide(row)
            for view in row:
                x1, _, x2, y2 = view.box
                self.canv.saveState()
                self.canv.translate(left, top)
                self.canv.scale(self.scale, self.scale)
                self.canv.translate(-x1, -y2)
                pdf_sheet.draw(self.canv, view.entities)
                self.canv.restoreState()
                left += (x2 - x1) * self.scale + self.GAP
            top -= self._high(row) + self.GAP


class QrCode(Flowable):
    """A QR code with the quiet zone that readers need round it."""

    QUIET = 4

    def __init__(self, text: str, size: float) -> None:
        super().__init__()
        self.rows = job_link.modules(text)
        self.width = self.height = size

    def wrap(self, *_: float) -> tuple[float, float]:
        return self.width, self.height

    def draw(self) -> None:
        count = len(self.rows) + 2 * self.QUIET
        cell = self.width / count
        for i, row in enumerate(self.rows):
            y = self.height - (i + 1 + self.QUIET) * cell
            start = None
            for j, dark in enumerate([*row, False]):
                if dark and start is None:
                    start = j
                elif not dark and start is not None:
                    x = (start + self.QUIET) * cell
                    # A hair wider, so that neighbouring cells leave no seam.
                    self.canv.rect(x, y, (j - start) * cell, cell * 1.02, stroke=0, fill=1)
                    start = None
