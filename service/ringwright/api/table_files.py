"""Answers as CSV, for spreadsheets: one address for each calculation of the table."""

from flask import request

from ..core.catalogue import all_figures
from ..core.catalogue.inputs import nothing
from ..core.fields import field
from ..core.problems import Fault, InputProblem
from ..export import csv_text
from . import answers, costs, documents, reading
from .calculations import (
    OPTIONS,
    UNITS_OF_DRAWING,
    body_of,
    has_address,
    request_schema,
    scalar_fields,
)
from .files import file_response, refuse_other_forms
from .lane import worked
from .schemas import load

_UNITS = next(one for one in OPTIONS if one.name == "units")
_LIST = field(
    "list",
    "text",
    "which list of the answer: figures, findings, tools, stock.sets ...",
    nothing("the first"),
)
_TABLE_OPTIONS = (_UNITS, _LIST)


def add_tables(files, table):
    """Adds to `files` (Files) the addresses of every calculation that answers with more than
    drawings."""
    for calculation in table.values():
        if any(entry.name == UNITS_OF_DRAWING for entry in calculation.fields):
            continue
        if has_address(calculation.fields):
            files.add(
                "/%s.csv" % calculation.name,
                calculation.name + "-csv",
                _TABLE_OPTIONS + scalar_fields(calculation.fields),
                csv_text.MEDIA_TYPE,
                calculation.summary + " (CSV)",
                _csv(calculation),
                lambda values, name=calculation.name: costs.of(name, values),
            )
        if calculation.fields:
            _posted_csv(files, calculation)


def _csv(calculation):
    def view(values):
        options = {entry.name: values.pop(entry.name) for entry in _TABLE_OPTIONS}
        asked = {**dict.fromkeys(one.name for one in calculation.fields), **values}
        return _table(calculation, asked, options)

    return view


def _table(calculation, values, options):
    """(CSV of the list that was asked for, name of the file)."""
    answer = answers.shown(calculation.run(values), options["units"] or answers.METRIC, False)
    labels = {name: one.label for name, one in all_figures([calculation.answer]).items()}
    found = csv_text.tables(answer, labels)
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
    return csv_text.csv_text(
        found[name], csv_text.headings(calculation.answer, name)
    ), "%s-%s.csv" % (calculation.name, name)


def _posted_csv(files, calculation):
    """POST of the same table, for requests that hold lists."""
    fields = tuple(calculation.fields)
    body_class = request_schema(files.schemas, calculation)
    body_schema = body_class()
    option_class = files.schemas.schema("TableOptions", _TABLE_OPTIONS)
    option_schema = option_class()

    def post():
        refuse_other_forms(csv_text.MEDIA_TYPE)
        given = reading.query(request, _TABLE_OPTIONS)
        options = load(option_schema, _TABLE_OPTIONS, given)
        values = load(body_schema, fields, body_of(_TABLE_OPTIONS))
        content, file_name = worked(
            costs.of(calculation.name, values), lambda: _table(calculation, values, options)
        )
        return file_response(content, file_name, csv_text.MEDIA_TYPE)

    described = {
        "summary": calculation.summary + " (CSV)",
        "operationId": "table_of_" + calculation.name.replace("-", "_"),
        "parameters": [{"in": "query", "schema": option_class}],
        "requestBody": {
            "required": True,
            "content": {"application/json": {"schema": body_class}},
        },
        "responses": {
            **documents.told(documents.file_schema(csv_text.PLAIN_TYPE), csv_text.PLAIN_TYPE),
            **documents.PROBLEMS,
        },
    }
    files.blueprint.add_url_rule(
        "/%s.csv" % calculation.name,
        calculation.name + "-posted-csv",
        files.blueprint.doc(**described)(post),
        methods=["POST"],
    )
