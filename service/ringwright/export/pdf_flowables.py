"""What stands between the text of a PDF page: a drawing, and the code that opens a job."""

from reportlab.lib.units import mm
from reportlab.platypus import Flowable

from . import job_link, pdf_sheet


class Picture(Flowable):
    """The views of a sheet, as large as they are drawn, without its title and notes."""

    def __init__(self, sheet):
        super().__init__()
        boxes = [view.box for view in sheet.views]
        self.left = min(box[0] for box in boxes)
        self.bottom = min(box[1] for box in boxes)
        self.width = (max(box[2] for box in boxes) - self.left) * mm
        self.height = (max(box[3] for box in boxes) - self.bottom) * mm
        self.sheet = sheet

    def wrap(self, *_):
        return self.width, self.height

    def draw(self):
        canvas = self.canv
        canvas.saveState()
        canvas.scale(mm, mm)
        canvas.translate(-self.left, -self.bottom)
        for view in self.sheet.views:
            pdf_sheet.draw(canvas, view.entities)
        canvas.restoreState()


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
