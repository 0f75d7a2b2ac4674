"""Addresses that give a file, made from the table of calculations that the service is given.

Thin as the other views: load the query, work the job in the core, hand the export what it draws.
"""

from flask import Response, request
from flask_smorest import Blueprint
from werkzeug.datastructures import MIMEAccept
from werkzeug.http import parse_accept_header

from . import documents, headers, reading, version
from .lane import worked
from .problems import Refused
from .schemas import load


class Files:
    """The blueprint of files, and what adds an address to it."""

    def __init__(self, schemas):
        """schemas: the Schemas of the whole service, so that equal tables of inputs share one."""
        self.schemas = schemas
        self.blueprint = Blueprint(
            "files", __name__, url_prefix="/v1", description="Drawings, cards and tables as files."
        )

    def add(self, rule, name, fields, media_type, summary, view, cost):
        """Adds one GET address.

        view: function of the checked values and the parts of the address, giving
        (bytes, file name). cost: function of the checked values giving what that costs [ms].
        """
        query_class = self.schemas.schema(name.title().replace("-", "") + "Query", fields)
        schema = query_class()

        def get(**address):
            refuse_other_forms(media_type)
            tag = version.tag_of(request)
            if headers.is_known(tag):
                return headers.keepable(Response(status=304), tag)
            given = load(schema, fields, reading.query(request, fields))
            content, file_name = worked(cost(given), lambda: view(given, **address))
            return headers.keepable(file_response(content, file_name, media_type), tag)

        plain_type = media_type.split(";")[0]
        described = {
            "summary": summary,
            "operationId": "file_" + name.replace("-", "_"),
            "parameters": [{"in": "query", "schema": query_class}],
            "responses": {
                **documents.kept(documents.file_schema(plain_type), plain_type),
                **documents.PROBLEMS,
            },
        }
        self.blueprint.add_url_rule(
            rule, name, self.blueprint.doc(**described)(get), methods=["GET"]
        )


def file_response(content, file_name, media_type):
    """A response that a browser shows or keeps under that name."""
    response = Response(content, content_type=media_type)
    response.headers["Content-Disposition"] = 'inline; filename="%s"' % file_name
    return response


def refuse_other_forms(media_type):
    """Raises Refused where the caller accepts no such file."""
    accept = request.environ.get("HTTP_ACCEPT")
    plain_type = media_type.partition(";")[0]
    accepted = parse_accept_header(accept, MIMEAccept)
    # A table is plain text to whoever knows no name for it.
    also = "text/plain" if plain_type == "text/csv" else plain_type
    if accept and max(accepted.quality(plain_type), accepted.quality(also)) <= 0:
        raise Refused("not-acceptable", "the answer is %s" % plain_type)
