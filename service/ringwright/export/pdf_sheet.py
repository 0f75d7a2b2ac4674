"""A sheet of a drawing on a PDF page: the same lines as the SVG, with the same widths and
dashes.
"""

import io
from collections.abc import Iterable

from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas

from ..core.drawing import letters
from ..core.drawing.entities import (
    LAYERS,
    REGION,
    Arc,
    Circle,
    Dimension,
    Fill,
    Hatch,
    Line,
    LineType,
    Sheet,
    Text,
)
from ..core.drawing.shapes import hatch_lines
from ..named_types import Document, Entity
from . import faces, job_in_pdf, page_ink
from .page_ink import Ink

MEDIA_TYPE = "application/pdf"
_REGION_GREY = 0.86


def pdf(sheets: Iterable[Sheet], title: str, author: str, carried: Document) -> bytes:
    """The bytes of a PDF with one page for each sheet.

    sheets: list of core Sheet on paper. title, author: of the document. carried: the job that
    goes with it, as job_link.job_of gives it.
    """
    out = io.BytesIO()
    # invariant: no clock and no chance in the file, so that the same job gives the same bytes.
    canvas = Canvas(out, invariant=True, pageCompression=1)
    canvas.setTitle(faces.clean(title))
    canvas.setAuthor(faces.clean(author))
    canvas.setCreator("Ringwright")
    job_in_pdf.attach(canvas, carried)
    ink = Ink(canvas)
    for sheet in sheets:
        canvas.setPageSize((sheet.width * mm, sheet.height * mm))
        canvas.bookmarkPage("%s-%d" % (sheet.part, sheet.number))
        if sheet.number == 1:
            canvas.addOutlineEntry(faces.clean(sheet.title), "%s-%d" % (sheet.part, sheet.number))
        ink.add("q %.5f 0 0 %.5f 0 0 cm" % (mm, mm))
        for view in sheet.views:
            draw(ink, view.entities)
        draw(ink, sheet.frame)
        ink.add("Q")
        canvas.showPage()
    canvas.save()
    return out.getvalue()


def draw(ink: Ink, entities: Iterable[Entity]) -> None:
    """Draws entities where a unit is already one millimetre of the sheet."""
    found = ["1 j"]
    layer = None
    for entity in entities:
        for part in entity.parts if type(entity) is Dimension else (entity,):
            if type(part) is Text:
                found.append(_text(ink, part))
            else:
                if part.layer != layer:
                    layer = part.layer
                    found.append(_PENS[layer])
                found.append(_drawn(part))
    ink.add("\n".join(found))


def _pen(line: LineType) -> str:
    dashes = " ".join(["%g" % length for length in line.dashes])
    return "%g w [%s] 0 d %d J" % (line.width, dashes, 0 if dashes else 1)


_PENS = {name: _pen(line) for name, line in LAYERS.items()}


def _drawn(entity: Entity) -> str:
    kind = type(entity)
    if kind is Line:
        return page_ink.line(entity.x1, entity.y1, entity.x2, entity.y2) + " S"
    if kind is Circle:
        return page_ink.arc(entity.x, entity.y, entity.radius, 0.0, 360.0) + " s"
    if kind is Arc:
        r = entity.radius
        return page_ink.arc(entity.x, entity.y, r, entity.start, entity.end) + " S"
    if kind is Hatch:
        lines = hatch_lines(entity.loops, entity.angle, entity.spacing)
        return " ".join([page_ink.line(*line) for line in lines] + ["S"]) if lines else ""
    if kind is Fill:
        grey = _REGION_GREY if entity.layer == REGION else 0.0
        return "%g g %s f 0 g" % (grey, page_ink.path(entity.points))
    return page_ink.path(entity.points) + (" s" if entity.closed else " S")


def _text(ink: Ink, entity: Text) -> str:
    size = entity.size / letters.CAPITAL
    turned = bool(entity.turn)
    return ink.text(entity.x, entity.y, entity.text, size, entity.align, entity.bold, turned)
