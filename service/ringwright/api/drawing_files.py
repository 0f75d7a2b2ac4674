"""Drawings as SVG, DXF and PDF, and the route card on paper."""

from collections.abc import Sequence
from typing import NoReturn

from flask import current_app, request

from ..core.calculations import CALCULATIONS
from ..core.catalogue.inputs import fixed, nothing
from ..core.catalogue.inputs_drawing import DRAWING
from ..core.catalogue.inputs_ring import DOUBLE_TURN
from ..core.drawing import catalogue, drawing
from ..core.drawing.entities import Sheet
from ..core.drawing.job import Job
from ..core.drawing.svg import svg
from ..core.fields import field
from ..core.fitting import fitting
from ..core.making import route, tooling
from ..core.problems import Fault, InputProblem
from ..core.records import plain
from ..core.ring import sizing
from ..export import dxf, faces, job_link, pdf_sheet, route_pdf
from ..named_types import Values
from . import answers, costs
from .calculations import OPTIONS, UNITS_OF_DRAWING, asked_fields
from .files import File, Files, Typed
from .own_address import address_of
from .problems import Refused

SVG_TYPE = "image/svg+xml"
PAGES = ("A4", "Letter")
# A QR code of this many letters has about 90 cells a side: 0.4 mm each on the card.
LONGEST_LINK = 600

_SHEET = field(
    "sheet", "count", "which sheet, of a drawing that has several", fixed(1), lowest=1, highest=99
)
_MODEL_UNIT = field(
    "model_unit",
    "choice",
    "what one unit of the model is",
    nothing("mm, or inch with units=inch"),
    choices=dxf.UNITS,
)
_UNITS = next(one for one in OPTIONS if one.name == "units")
_OF_SHEET = (_UNITS,) + tuple(
    one
    for one in asked_fields(tuple(DRAWING.values()))
    if one.name not in ("part", "geometry", "drawn_ring")
)
_ON_PAPER = tuple(
    field("paper", "choice", one.meaning, fixed(PAGES[0]), choices=PAGES)
    if one.name == "paper"
    else one
    for one in _OF_SHEET
)
_ON_CARD = tuple(
    field("paper", "choice", one.meaning, fixed(PAGES[0]), choices=tuple(route_pdf.CARDS))
    if one.name == "paper"
    else one
    for one in _OF_SHEET
)
_FITTING_CARD = field(
    "fitting_card",
    "flag",
    "the fitting card in place of the route card",
    fixed(False),
)
_JOB = CALCULATIONS["tooling"]
_CARD = CALCULATIONS["route"]


# What each form costs [ms], as in costs.py. A drawing on paper is light work, but the libraries of
# PDF and DXF keep faces and styles for all who use them: all their work goes through the lane.
def _light(values: Values) -> float:
    return costs.LIGHT


def _of_dxf(values: Values) -> float:
    return 25.0


def _of_sheet(values: Values) -> float:
    return 6.0


def _of_drawings(values: Values) -> float:
    return 40.0


def _of_card(values: Values) -> float:
    # A sheet of sizes for each of many rings.
    rings: int = values.get("rings") or 1
    return 60.0 + 0.6 * rings


def add_drawings(files: Files) -> None:
    """Adds the addresses of drawings to `files` (Files)."""
    part = "/drawings/<any(%s):part>" % ", ".join('"%s"' % key for key in catalogue.PARTS)
    files.add(
        part + ".svg",
        "drawing-svg",
        _JOB,
        _OF_SHEET + (_SHEET,),
        SVG_TYPE,
        "A part of the job as a drawing to show or print",
        _svg,
        _light,
    )
    files.add(
        part + ".dxf",
        "drawing-dxf",
        _JOB,
        _OF_SHEET + (_MODEL_UNIT,),
        dxf.MEDIA_TYPE,
        "A part of the job at full size, on named layers, for other programs",
        _dxf,
        _of_dxf,
    )
    files.add(
        part + ".pdf",
        "drawing-pdf",
        _JOB,
        _ON_PAPER,
        pdf_sheet.MEDIA_TYPE,
        "A part of the job on paper",
        _pdf,
        _of_sheet,
    )
    files.add(
        "/drawings.pdf",
        "drawings-pdf",
        _JOB,
        _ON_PAPER,
        pdf_sheet.MEDIA_TYPE,
        "Every drawing of the job, one to a page",
        _all_drawings,
        _of_drawings,
    )


def add_route_card(files: Files) -> None:
    """Adds the address of the route card to `files` (Files)."""
    files.add(
        "/route.pdf",
        "route-pdf",
        _CARD,
        _ON_CARD + (_FITTING_CARD,),
        pdf_sheet.MEDIA_TYPE,
        "The route card on paper, with a place for measured sizes",
        _route,
        _of_card,
    )


def _letters_for_paper(values: Values) -> None:
    """Refuses names that the faces of this service cannot set."""
    faces.refuse_missing({name: values.get(name) for name in ("job_name", "owner", "date")})


def _job(values: Values) -> Job:
    asked = {**dict.fromkeys(one.name for one in _JOB.fields), **values}
    job: Job = drawing.settled({**asked, UNITS_OF_DRAWING: values["units"]})
    return job


def _sheets(values: Values, part: str) -> Sequence[Sheet]:
    sheets: Sequence[Sheet] = drawing.sheets_of(_job(values), part)
    return sheets


def _svg(values: Values, typed: Typed, part: str) -> File:
    sheets = _sheets(values, part)
    number = values.get("sheet") or 1
    if number > len(sheets):
        raise InputProblem(
            [
                Fault(
                    ("sheet",),
                    "range",
                    "this drawing has %d sheets" % len(sheets),
                    "ask for a sheet from 1 to %d" % len(sheets),
                )
            ]
        )
    return svg(sheets[number - 1]).encode("utf-8", "replace"), part + ".svg"


def _dxf(values: Values, typed: Typed, part: str) -> File:
    usual = dxf.INCH if values["units"] == answers.INCH else dxf.MM
    return dxf.dxf(_sheets(values, part), values["model_unit"] or usual), part + ".dxf"


def no_such_drawing(part: str) -> NoReturn:
    """A view for the address of a drawing that is none of catalogue.PARTS: says which there are."""
    raise Refused(
        "not-found",
        "there is no drawing called %s" % part[:40],
        remedy="use one of: " + ", ".join(catalogue.PARTS),
    )


def _pdf(values: Values, typed: Typed, part: str) -> File:
    _letters_for_paper(values)
    sheets = _sheets(values, part)
    return _on_paper(sheets, sheets[0].title, values, typed), part + ".pdf"


def _all_drawings(values: Values, typed: Typed) -> File:
    _letters_for_paper(values)
    job = _job(values)
    sheets = [
        sheet
        for part in catalogue.parts_of(job)
        if part.group != catalogue.CHART
        for sheet in catalogue.sheets(job, part.key)
    ]
    return _on_paper(sheets, "Drawings", values, typed), "drawings.pdf"


def _on_paper(sheets: Sequence[Sheet], title: str, values: Values, typed: Typed) -> bytes:
    name = values["job_name"] or "Ring"
    carried = job_link.job_of(name, _JOB.fields, typed, values)
    return pdf_sheet.pdf(sheets, _named(title, values), values["owner"] or "", carried)


def _named(title: str, values: Values) -> str:
    return "%s: %s" % (title, values["job_name"]) if values["job_name"] else title


def _route(values: Values, typed: Typed) -> File:
    _letters_for_paper(values)
    asked = {one.name: values.get(one.name) for one in _CARD.fields}
    design, tools, _ = tooling.settle_tooling(asked)
    job = drawing.job_of(
        design, tools, {**values, "paper": "card", UNITS_OF_DRAWING: values["units"]}
    )

    def drawn(operation: str) -> Sheet | None:
        if operation not in job.operations:
            return None
        sheets: Sequence[Sheet] = catalogue.sheets(
            job._replace(operation=operation), catalogue.OPERATION
        )
        return sheets[0]

    heading = {
        "job": values["job_name"] or "",
        "owner": values["owner"] or "",
        "date": values["date"] or "",
        "kind": "Double-turn ring" if design.duty.ring_type == DOUBLE_TURN else "Plain ring",
        "material": design.duty.ring_material.title,
        "bore": design.duty.bore,
        "rings": design.duty.rings,
    }
    carried = job_link.job_of(heading["job"] or heading["kind"], _CARD.fields, typed, values)
    card = plain(route.answer(design, tools, [], asked))
    if card.get("rings"):
        carried["job"]["measured"] = job_link.measured_of(card["rings"])
    worked = {
        "sizing": plain(sizing.answer(design, [], asked)),
        "tooling": plain(tooling.answer(design, tools, [], asked)),
        "route": card,
    }
    name = "route"
    if values["fitting_card"]:
        name = "fitting"
        worked["tooling"] = {"tools": [], "findings": []}
        worked["route"] = plain(fitting.answer(design, [], asked))
    address = address_of(request, current_app.extensions["ringwright"]["address"])
    link = job_link.link(address, carried)
    content = route_pdf.route_pdf(
        worked,
        drawn,
        heading,
        values["paper"] or PAGES[0],
        job.system,
        link if len(link) <= LONGEST_LINK else None,
        carried,
        "%s card" % name.capitalize(),
    )
    return content, name + ".pdf"
