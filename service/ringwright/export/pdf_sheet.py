"""A sheet of a drawing on a PDF page: the same lines as the SVG, with the same widths and
dashes.
"""

import io
from collections.abc import Iterable, Sequence

from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas
from reportlab.pdfgen.pathobject import PDFPathObject

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
    Polyline,
    Sheet,
    Text,
)
from ..core.drawing.shapes import hatch_lines
from ..named_types import Document, Entity, Point
from . import faces, job_in_pdf

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
    for sheet in sheets:
        canvas.setPageSize((sheet.width * mm, sheet.height * mm))
        canvas.bookmarkPage("%s-%d" % (sheet.part, sheet.number))
        if sheet.number == 1:
            canvas.addOutlineEntry(faces.clean(sheet.title), "%s-%d" % (sheet.part, sheet.number))
        canvas.saveState()
        canvas.scale(mm, mm)
        for view in sheet.views:
            draw(canvas, view.entities)
        draw(canvas, sheet.frame)
        canvas.restoreState()
        canvas.showPage()
    canvas.save()
    return out.getvalue()


def draw(canvas: Canvas, entities: Iterable[Entity]) -> None:
    """Draws entities on a canvas whose unit is already one millimetre of the sheet."""
    canvas.setLineJoin(1)
    for entity in entities:
        if type(entity) is Dimension:
            for part in entity.parts:
                _draw(canvas, part)
        else:
            _draw(canvas, entity)


def _draw(canvas: Canvas, entity: Entity) -> None:
    kind = type(entity)
    if kind is Text:
        _text(canvas, entity)
        return
    layer = LAYERS[entity.layer]
    canvas.setLineWidth(layer.width)
    canvas.setDash(list(layer.dashes) if layer.dashes else [])
    canvas.setLineCap(0 if layer.dashes else 1)
    if kind is Line:
        canvas.line(entity.x1, entity.y1, entity.x2, entity.y2)
    elif kind is Circle:
        canvas.circle(entity.x, entity.y, entity.radius, stroke=1, fill=0)
    elif kind is Arc:
        r = entity.radius
        canvas.arc(
            entity.x - r,
            entity.y - r,
            entity.x + r,
            entity.y + r,
            entity.start,
            entity.end - entity.start,
        )
    elif kind is Hatch:
        canvas.lines(hatch_lines(entity.loops, entity.angle, entity.spacing))
    elif kind is Fill:
        canvas.setFillGray(_REGION_GREY if entity.layer == REGION else 0.0)
        canvas.drawPath(_path(canvas, entity.points, True), stroke=0, fill=1)
        canvas.setFillGray(0.0)
    elif kind is Polyline:
        canvas.drawPath(_path(canvas, entity.points, entity.closed), stroke=1, fill=0)


def _path(canvas: Canvas, points: Sequence[Point], closed: bool) -> PDFPathObject:
    path = canvas.beginPath()
    path.moveTo(*points[0])
    for point in points[1:]:
        path.lineTo(*point)
    if closed:
        path.close()
    return path


def _text(canvas: Canvas, entity: Text) -> None:
    canvas.saveState()
    canvas.translate(entity.x, entity.y)
    if entity.turn:
        canvas.rotate(entity.turn)
    size = entity.size / letters.CAPITAL
    faces.draw(canvas, 0.0, 0.0, entity.text, size, entity.align, entity.bold)
    canvas.restoreState()
