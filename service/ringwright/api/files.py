"""GET addresses that give a file: drawings as SVG, DXF and PDF, the route card, figures as CSV.

Thin as the other views: load the query, work the job in the core, hand the export what it draws.
"""

from flask import Response, request
from flask_smorest import Blueprint
from werkzeug.datastructures import MIMEAccept
from werkzeug.http import parse_accept_header

from ..core import calculations as core
from ..core.catalogue.inputs import fixed, nothing
from ..core.catalogue.inputs_drawing import DRAWING
from ..core.catalogue.inputs_ring import DOUBLE_TURN
from ..core.drawing import catalogue, drawing
from ..core.drawing.svg import svg
from ..core.fields import field
from ..core.making import route, tooling
from ..core.problems import Fault, InputProblem
from ..core.records import plain
from ..export import csv_text, dxf, faces, job_link, pdf_sheet, route_pdf
from . import answers, documents, headers, reading, version
from .calculations import UNITS_OF_DRAWING, asked_fields, body_of, has_address, scalar_fields
from .problems import Refused
from .schemas import Schemas, load

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
_UNITS = field(
    "units", "choice", "the units that come back", fixed(answers.METRIC), choices=answers.SYSTEMS
)
_OF_SHEET = (_UNITS,) + tuple(
    one for one in asked_fields(tuple(DRAWING.values())) if one.name not in ("part", "geometry")
)
_LIST = field(
    "list",
    "text",
    "which list of the answer: figures, findings, tools, stock.sets ...",
    nothing("the first"),
)
_TABLE_OPTIONS = (_UNITS, _LIST)
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
# Written whole by the export; its form is that of the media type.
_FILE = {"type": "string", "format": "binary"}
_JOB = scalar_fields(tooling.FIELDS)

blueprint = Blueprint(
    "files", __name__, url_prefix="/v1", description="Drawings, cards and tables as files."
)
_schemas = Schemas()


def _file(rule, name, fields, media_type, summary, view):
    """Adds one GET address.

    view: function of the checked values and the parts of the address, giving (bytes, file name).
    """
    query_class = _schemas.schema(name.title().replace("-", "") + "Query", fields)
    schema = query_class()

    def get(**address):
        _refuse_other_forms(media_type)
        tag = version.tag_of(request)
        if headers.is_known(tag):
            return headers.keepable(Response(status=304), tag)
        content, file_name = view(load(schema, fields, reading.query(request, fields)), **address)
        return headers.keepable(_response(content, file_name, media_type), tag)

    described = {
        "summary": summary,
        "operationId": "file_" + name.replace("-", "_"),
        "parameters": [{"in": "query", "schema": query_class}],
        "responses": {
            **documents.kept(
                _FILE, "The file, which any cache may keep.", media_type.split(";")[0]
            ),
            **documents.problems_of(404, 406, 414, 422, 500),
        },
    }
    blueprint.add_url_rule(rule, name, blueprint.doc(**described)(get), methods=["GET"])


def _response(content, file_name, media_type):
    response = Response(content, content_type=media_type)
    response.headers["Content-Disposition"] = 'inline; filename="%s"' % file_name
    return response


def _refuse_other_forms(media_type):
    accept = request.environ.get("HTTP_ACCEPT")
    plain_type = media_type.partition(";")[0]
    if accept and parse_accept_header(accept, MIMEAccept).quality(plain_type) <= 0:
        raise Refused("not-acceptable", "the answer is %s" % plain_type)


def _letters_for_paper(values):
    """Refuses names that the faces of this service cannot set."""
    faces.refuse_missing({name: values.get(name) for name in ("job_name", "owner", "date")})


def _job(values):
    asked = {**dict.fromkeys(one.name for one in tooling.FIELDS), **values}
    return drawing.settled({**asked, UNITS_OF_DRAWING: values["units"]})


def _sheets(values, part):
    return drawing.sheets_of(_job(values), part)


def _svg(values, part):
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


def _dxf(values, part):
    usual = dxf.INCH if values["units"] == answers.INCH else dxf.MM
    return dxf.dxf(_sheets(values, part), values["model_unit"] or usual), part + ".dxf"


def no_such_drawing(part):
    """A view for the address of a drawing that is none of catalogue.PARTS: says which there are."""
    raise Refused(
        "not-found",
        "there is no drawing called %s" % part[:40],
        remedy="use one of: " + ", ".join(catalogue.PARTS),
    )


def _pdf(values, part):
    _letters_for_paper(values)
    sheets = _sheets(values, part)
    return pdf_sheet.pdf(sheets, _named(sheets[0].title, values), values["owner"] or ""), (
        part + ".pdf"
    )


def _all_drawings(values):
    _letters_for_paper(values)
    job = _job(values)
    sheets = [
        sheet
        for part in catalogue.parts_of(job.design)
        if part.group != catalogue.CHART
        for sheet in catalogue.sheets(job, part.key)
    ]
    return pdf_sheet.pdf(sheets, _named("Drawings", values), values["owner"] or ""), "drawings.pdf"


def _named(title, values):
    return "%s: %s" % (title, values["job_name"]) if values["job_name"] else title


def _route(values):
    _letters_for_paper(values)
    lists = dict.fromkeys(one.name for one in route.FIELDS)
    asked = {**lists, **{one.name: values[one.name] for one in scalar_fields(route.FIELDS)}}
    design, tools, _ = tooling.settle_tooling(asked)
    job = drawing.job_of(
        design, tools, {**values, "paper": "card", UNITS_OF_DRAWING: values["units"]}
    )

    def drawn(part):
        if not catalogue.PARTS[part].serves(design):
            return None
        return catalogue.sheets(job, part)[0]

    heading = {
        "job": values["job_name"] or "",
        "owner": values["owner"] or "",
        "date": values["date"] or "",
        "kind": "Double-turn ring" if design.ring_type == DOUBLE_TURN else "Plain ring",
        "material": design.ring_material.title,
        "bore": design.bore,
        "rings": design.rings,
    }
    typed = {name: texts[0] for name, texts in request.args.lists()}
    carried = job_link.job_of(
        heading["job"] or heading["kind"], scalar_fields(route.FIELDS), typed, values
    )
    link = job_link.link(request.url_root, carried)
    content = route_pdf.route_pdf(
        {
            name: plain(core.CALCULATIONS[name].run(asked))
            for name in ("sizing", "tooling", "route")
        },
        drawn,
        heading,
        values["paper"] or PAGES[0],
        job.system,
        link if len(link) <= LONGEST_LINK else None,
    )
    return content, "route.pdf"


def _csv(calculation):
    def view(values):
        options = {entry.name: values.pop(entry.name) for entry in _TABLE_OPTIONS}
        asked = {**dict.fromkeys(one.name for one in calculation.fields), **values}
        return _table(calculation, asked, options)

    return view


def _table(calculation, values, options):
    """(CSV of the list that was asked for, name of the file)."""
    answer = answers.shown(calculation.run(values), options["units"] or answers.METRIC, False)
    found = csv_text.tables(answer)
    name = options["list"] or next(iter(found), csv_text.FIGURES)
    if name not in found:
        raise InputProblem(
            [
                Fault(
                    ("list",),
                    "choice",
                    "%s has no such list" % calculation.name,
                    "use one of: " + ", ".join(found),
                )
            ]
        )
    return csv_text.csv_text(found[name]), "%s-%s.csv" % (calculation.name, name)


def _posted_csv(calculation):
    """POST of the same table, for requests that hold lists."""
    fields = tuple(calculation.fields)
    body_schema = _schemas.schema(calculation.name + "-table", fields)()
    option_class = _schemas.schema("TableOptions", _TABLE_OPTIONS)
    option_schema = option_class()

    def post():
        _refuse_other_forms(csv_text.MEDIA_TYPE)
        given = reading.query(request, _TABLE_OPTIONS)
        options = load(option_schema, _TABLE_OPTIONS, given)
        values = load(body_schema, fields, body_of(_TABLE_OPTIONS))
        content, file_name = _table(calculation, values, options)
        return _response(content, file_name, csv_text.MEDIA_TYPE)

    described = {
        "summary": calculation.summary + " (a table for a spreadsheet)",
        "operationId": "table_of_" + calculation.name.replace("-", "_"),
        "parameters": [{"in": "query", "schema": option_class}],
        "requestBody": {
            "required": True,
            "description": "the same as for /v1/" + calculation.name,
            "content": {"application/json": {"schema": {"type": "object"}}},
        },
        "responses": {
            "200": {
                "description": "The table.",
                "content": {csv_text.PLAIN_TYPE: {"schema": _FILE}},
            },
            **documents.problems_of(400, 406, 413, 414, 415, 422, 500),
        },
    }
    blueprint.add_url_rule(
        "/%s.csv" % calculation.name,
        calculation.name + "-posted-csv",
        blueprint.doc(**described)(post),
        methods=["POST"],
    )


_PART = "/drawings/<any(%s):part>" % ", ".join('"%s"' % key for key in catalogue.PARTS)
_file(
    _PART + ".svg",
    "drawing-svg",
    _JOB + _OF_SHEET + (_SHEET,),
    SVG_TYPE,
    "A part of the job as a drawing to show or print",
    _svg,
)
_file(
    _PART + ".dxf",
    "drawing-dxf",
    _JOB + _OF_SHEET + (_MODEL_UNIT,),
    dxf.MEDIA_TYPE,
    "A part of the job at full size, on named layers, for other programs",
    _dxf,
)
_file(
    _PART + ".pdf",
    "drawing-pdf",
    _JOB + _ON_PAPER,
    pdf_sheet.MEDIA_TYPE,
    "A part of the job on paper",
    _pdf,
)
_file(
    "/drawings.pdf",
    "drawings-pdf",
    _JOB + _ON_PAPER,
    pdf_sheet.MEDIA_TYPE,
    "Every drawing of the job, one to a page",
    _all_drawings,
)
_file(
    "/route.pdf",
    "route-pdf",
    scalar_fields(route.FIELDS) + _ON_CARD,
    pdf_sheet.MEDIA_TYPE,
    "The route card on paper, with a place for measured sizes",
    _route,
)
for _calculation in core.CALCULATIONS.values():
    if _calculation.name == "drawing":
        continue
    if has_address(_calculation.fields):
        _file(
            "/%s.csv" % _calculation.name,
            _calculation.name + "-csv",
            _TABLE_OPTIONS + scalar_fields(_calculation.fields),
            csv_text.MEDIA_TYPE,
            _calculation.summary + " (a table for a spreadsheet)",
            _csv(_calculation),
        )
    if any(one.required for one in _calculation.fields):
        _posted_csv(_calculation)
