"""Addresses that give a file, made from the table of calculations that the service is given.

Thin as the other views: load the query, work the job in the core, hand the export what it draws.
"""

from collections.abc import Callable, Mapping, Sequence

from flask import Response, request
from flask_smorest import Blueprint
from marshmallow import Schema
from werkzeug.datastructures import MIMEAccept
from werkzeug.http import parse_accept_header

from ..core.calculations import Calculation
from ..named_types import Document, Fields, Values
from . import documents, headers, reading, version
from .calculations import (
    asked_fields,
    body_of,
    has_address,
    query_of,
    request_schema,
    scalar_fields,
)
from .lane import worked
from .problems import Refused
from .schemas import Schemas, load

# What the caller wrote, by the name of the input.
Typed = Mapping[str, str]
# What is in a file, and its name.
File = tuple[bytes, str]
# From checked values, what the caller wrote, and by name the parts of the address.
FileView = Callable[..., File]
# From checked values what the file costs [ms].
Cost = Callable[[Values], float]


class Files:
    """The blueprint of files, and what adds an address to it."""

    def __init__(self, schemas: Schemas) -> None:
        """schemas: the Schemas of the whole service, so that equal tables of inputs share one."""
        self.schemas = schemas
        self.blueprint = Blueprint(
            "files", __name__, url_prefix="/v1", description="Drawings, cards and tables as files."
        )

    def add(
        self,
        rule: str,
        name: str,
        calculation: Calculation,
        options: Fields,
        media_type: str,
        summary: str,
        view: FileView,
        cost: Cost,
        posted: str = "",
    ) -> None:
        """Adds one address: GET where the inputs fit into it, POST where there are any.

        calculation: core Calculation whose inputs it takes. options: sequence of Field, of the
        query for both. view: function of the checked values, of what the caller wrote (name to
        text) and of the parts of the address, giving (bytes, file name). cost: function of the
        checked values giving what that costs [ms]. posted: operation id of the POST.
        """
        if has_address(calculation.fields):
            fields = tuple(options) + scalar_fields(calculation.fields)
            query_class = self.schemas.schema(name.title().replace("-", "") + "Query", fields)
            lists = [one.name for one in asked_fields(calculation.fields) if one not in fields]
            get = _getter(query_class(), fields, lists, media_type, view, cost)
            described = _described(summary, "file_" + name, query_class, media_type, documents.kept)
            self._add_rule(rule, name, get, described, "GET")
        if calculation.fields:
            option_class = self.schemas.schema(name.title().replace("-", "") + "Options", options)
            body_class = request_schema(self.schemas, calculation)
            fields = asked_fields(calculation.fields)
            post = _poster(option_class(), options, body_class(), fields, media_type, view, cost)
            operation = posted or "work_" + name
            described = _described(summary, operation, option_class, media_type, documents.told)
            content = {"application/json": {"schema": body_class}}
            described["requestBody"] = {"required": True, "content": content}
            self._add_rule(rule, name + "-posted", post, described, "POST")

    def _add_rule(
        self, rule: str, name: str, view: Callable[..., Response], described: Document, method: str
    ) -> None:
        view = self.blueprint.doc(**described)(view)
        self.blueprint.add_url_rule(rule, name, view, methods=[method])


def _getter(
    schema: Schema,
    fields: Fields,
    lists: Sequence[str],
    media_type: str,
    view: FileView,
    cost: Cost,
) -> Callable[..., Response]:
    def get(**address: str) -> Response:
        refuse_other_forms(media_type)
        tag = version.tag_of(request)
        if headers.is_known(tag):
            return headers.keepable(Response(status=304), tag)
        values = load(schema, fields, query_of(fields, lists))
        typed = {name: texts[0] for name, texts in request.args.lists()}
        content, file_name = worked(cost(values), lambda: view(values, typed, **address))
        return headers.keepable(_file_response(content, file_name, media_type), tag)

    return get


def _poster(
    option_schema: Schema,
    options: Fields,
    body_schema: Schema,
    fields: Fields,
    media_type: str,
    view: FileView,
    cost: Cost,
) -> Callable[..., Response]:
    def post(**address: str) -> Response:
        refuse_other_forms(media_type)
        values = load(option_schema, options, reading.query(request, options))
        given = body_of(options)
        values.update(load(body_schema, fields, given))
        typed = {name: text for name, text in given.items() if isinstance(text, str)}
        content, file_name = worked(cost(values), lambda: view(values, typed, **address))
        return _file_response(content, file_name, media_type)

    return post


def _described(
    summary: str,
    operation: str,
    query_class: type[Schema],
    media_type: str,
    responses: Callable[[Document, str], Document],
) -> Document:
    plain_type = media_type.split(";")[0]
    return {
        "summary": summary,
        "operationId": operation.replace("-", "_"),
        "parameters": [{"in": "query", "schema": query_class}],
        "responses": {
            **responses(documents.file_schema(plain_type), plain_type),
            **documents.PROBLEMS,
        },
    }


def _file_response(content: bytes, file_name: str, media_type: str) -> Response:
    """A response that a browser shows or keeps under that name."""
    response = Response(content, content_type=media_type)
    response.headers["Content-Disposition"] = 'inline; filename="%s"' % file_name
    return response


def refuse_other_forms(media_type: str) -> None:
    """Raises Refused where the caller accepts no such file."""
    accept = request.environ.get("HTTP_ACCEPT")
    plain_type = media_type.partition(";")[0]
    accepted = parse_accept_header(accept, MIMEAccept)
    # A table is plain text to whoever knows no name for it.
    also = "text/plain" if plain_type == "text/csv" else plain_type
    if accept and max(accepted.quality(plain_type), accepted.quality(also)) <= 0:
        raise Refused("not-acceptable", "the answer is %s" % plain_type)
