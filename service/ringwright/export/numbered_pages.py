"""The foot of each page of a card: its title, and which page of how many it is."""

from typing import Any

from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas

from ..named_types import Document
from . import faces, job_in_pdf

_TITLE_LETTERS = 60


def numbered(title: str, carried: Document, margin: float) -> type[Canvas]:
    """A canvas class that holds the job, and writes "page 2 of 7" when it knows how many.

    carried: as job_link.job_of gives it. margin: at the sides of the page [pt].
    """

    class Numbered(Canvas):
        def __init__(self, *given: Any, **named: Any) -> None:
            super().__init__(*given, **named)
            self._pages: list[dict[str, Any]] = []
            job_in_pdf.attach(self, carried)

        def showPage(self) -> None:  # noqa: N802 - the name that the library calls
            self._pages.append(dict(self.__dict__))
            self._startPage()

        def save(self) -> None:
            for number, page in enumerate(self._pages, 1):
                self.__dict__.update(page)
                faces.draw(self, margin, 9 * mm, title[:_TITLE_LETTERS], 8.5)
                self.setFont(faces.STANDARD, 8.5)
                self.drawRightString(
                    self._pagesize[0] - margin, 9 * mm, "page %d of %d" % (number, len(self._pages))
                )
                super().showPage()
            super().save()

    return Numbered
