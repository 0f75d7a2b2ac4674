"""What is not a calculation: health, readiness, the specification, the kinds of problem, a page."""

import hashlib
from base64 import b64encode
from collections.abc import Callable
from html import escape

import orjson
from flask import Response, current_app, redirect, request
from flask_smorest import Blueprint
from werkzeug.wrappers import Response as BaseResponse

from ..named_types import Table
from . import documents, headers, version
from .answer_schemas import described, ref
from .problems import KINDS, PAGE, problem

blueprint = Blueprint("service", __name__, description="The service itself.")

_STATUS = described("Anything", "status: ok or ready")


@blueprint.route("/healthz")
@blueprint.doc(
    summary="Whether the process answers",
    operationId="health",
    responses={
        "200": {"description": "It does.", "content": {"application/json": {"schema": _STATUS}}}
    },
)
def healthz() -> Response:
    return Response(b'{"status":"ok"}', mimetype="application/json")


@blueprint.route("/readyz")
@blueprint.doc(
    summary="Whether the calculations can be called",
    operationId="readiness",
    responses={
        "200": {"description": "They can.", "content": {"application/json": {"schema": _STATUS}}},
        "5XX": documents.PROBLEMS["5XX"],
    },
)
def readyz() -> Response:
    flaw = current_app.extensions["ringwright"]["flaw"]
    if flaw:
        return problem("not-ready", flaw)
    return Response(b'{"status":"ready"}', mimetype="application/json")


@blueprint.route("/openapi.json")
@blueprint.doc(
    summary="This document",
    operationId="specification",
    responses=documents.kept(ref("Anything")),
)
def openapi_json() -> Response:
    return _kept(current_app.extensions["ringwright"]["specification"], "application/json")


@blueprint.route("/v1/problems")
@blueprint.doc(
    summary="Every kind of problem that an answer may name",
    operationId="list_problems",
    responses={**documents.kept(ref("ProblemList")), "303": documents.TO_A_PAGE},
)
def problem_kinds() -> BaseResponse:
    # Who follows the "type" of a problem in a browser comes to the same place on the page.
    if _is_for_people():
        response = redirect(PAGE, 303)
        response.headers["Cache-Control"] = "no-cache"
        response.vary.add("Accept")
        return response
    return _kept(_PROBLEM_KINDS, "application/json")


_PROBLEM_KINDS = orjson.dumps(
    {
        "problems": [
            {"code": code, "status": kind.status, "title": kind.title, "remedy": kind.remedy}
            for code, kind in KINDS.items()
        ]
    }
)


def _is_for_people() -> bool:
    """Whether a page is wanted rather than JSON, as browsers say it."""
    wanted = request.accept_mimetypes
    return wanted.best_match(("application/json", "text/html")) == "text/html"


def _kept(content: bytes, media_type: str) -> Response:
    tag = version.tag_of(request)
    if headers.is_known(tag):
        return headers.keepable(Response(status=304), tag)
    return headers.keepable(Response(content, mimetype=media_type), tag)


_STYLE = "body{font:1.1rem/1.5 sans-serif;max-width:42rem;margin:2rem auto;padding:0 1rem}"
_STYLE_HASH = b64encode(hashlib.sha256(_STYLE.encode()).digest()).decode()
_PAGE = """<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>Ringwright</title>
<meta name="viewport" content="width=device-width, initial-scale=1"><style>%s</style></head>
<body><main><h1>Ringwright</h1>
<p>Piston rings for steam engines that match no catalogue. This is the service; the phone app is
not built here yet.</p>
<p>A whole ring from a bore: <a href="/v1/sizing?bore=80%%20mm">/v1/sizing?bore=80 mm</a>.
Every call: <a href="/docs">/docs</a>, <a href="/openapi.json">/openapi.json</a>.</p>
<ul>%s</ul>
<p>Figures are design aids. They do not replace measuring the engine in front of you, and local
rules for pressure systems come first.</p></main></body></html>
"""


def front_page(table: Table) -> Callable[[], Response]:
    """A function that answers / with a short page about the calculations in `table`."""
    items = "".join(
        "<li><code>/v1/%s</code>: %s</li>" % (escape(name), escape(calculation.summary))
        for name, calculation in table.items()
    )
    content = _PAGE % (_STYLE, items)

    def view() -> Response:
        response = Response(content, mimetype="text/html")
        response.headers["Cache-Control"] = "no-cache"
        response.headers["Content-Security-Policy"] = (
            "default-src 'none'; style-src 'sha256-%s'; base-uri 'none'; form-action 'none'; "
            "frame-ancestors 'none'" % _STYLE_HASH
        )
        return response

    return view


def for_programs_too(page: Callable[[], Response], table: Table) -> Callable[[], Response]:
    """A function that answers / with a page for people, or for a program that asks for JSON and no
    page with where things are.

    page: function that gives the page. table: the calculations.
    """
    content = orjson.dumps(
        {
            "service": "Ringwright",
            "version": documents.VERSION,
            "specification": "/openapi.json",
            "calculations": ["/v1/" + name for name in table],
            "problems": "/v1/problems",
            "documentation": "/docs",
            "health": "/healthz",
            "readiness": "/readyz",
        }
    )

    def view() -> Response:
        wanted = request.accept_mimetypes.best_match(("text/html", "application/json"))
        if wanted == "application/json":
            response = Response(content, mimetype="application/json")
            response.headers["Cache-Control"] = "no-cache"
        else:
            response = page()
        response.vary.add("Accept")
        return response

    return view
