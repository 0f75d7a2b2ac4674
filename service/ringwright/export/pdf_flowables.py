"""What stands between the text of a PDF page: a drawing, and the code that opens a job."""

from reportlab.lib.units import mm
from reportlab.platypus import Flowable

from . import job_link, pdf_sheet


class Picture(Flowable):
    """The views of a sheet without its title and notes.

    scale: of what is drawn. columns: how many views stand beside one another.
    """

    GAP = 3 * mm

    def __init__(self, sheet, scale=1.0, columns=1):
        super().__init__()
        self.scale = scale * mm
        views = sheet.views
        self.rows = [views[i : i + columns] for i in range(0, len(views), columns)]
        self.width = max(self._wide(row) for row in self.rows)
        self.height = sum(map(self._high, self.rows)) + self.GAP * (len(self.rows) - 1)

    def _wide(self, row):
        boxes = [view.box for view in row]
        return sum(box[2] - box[0] for box in boxes) * self.scale + self.GAP * (len(row) - 1)

    def _high(self, row):
        return max(view.box[3] - view.box[1] for view in row) * self.scale

    def wrap(self, *_):
        return self.width, self.height

    def draw(self):
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

    def __init__(self, text, size):
        super().__init__()
        self.rows = job_link.modules(text)
        self.width = self.height = size

    def wrap(self, *_):
        return self.width, self.height

    def draw(self):
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
