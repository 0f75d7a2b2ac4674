"""The application: blueprints, problems and headers put together."""

from collections.abc import Callable, Mapping
from pathlib import Path
from urllib.parse import quote

import orjson
from flask import Flask, current_app, redirect, request
from flask_smorest import Api, Blueprint
from werkzeug.exceptions import HTTPException, NotFound
from werkzeug.wrappers import Response

from ..core import calculations as core
from ..named_types import Document, Table
from . import (
    calculations,
    deprecation,
    docs,
    documents,
    drawing_files,
    examples,
    files,
    headers,
    hoist,
    lane,
    limits,
    many,
    many_schemas,
    metrics,
    own_address,
    pages,
    problems,
    rate_limit,
    reading,
    request_log,
    schemas,
    settings,
    shop,
    static_app,
    table_files,
    watched,
)

# Files that a calculation of that name brings with it: function of Files that adds their addresses.
FILES_OF = {
    "drawing": drawing_files.add_drawings,
    "route": drawing_files.add_route_card,
}


class DocumentedApi(Api):
    """flask-smorest's Api with our own problem documents."""

    # No "default" response of its shape: every operation names the problems it may answer with.
    DEFAULT_ERROR_RESPONSE_NAME = None

    def _register_error_handlers(self) -> None:
        self._app.register_error_handler(Exception, _refused)


def create_app(
    table: Table | None = None,
    app_folder: Path = static_app.FOLDER,
    leaving: Mapping[str, deprecation.Leaving] = deprecation.LEAVING,
) -> Flask:
    """The Flask application.

    table: name to core Calculation; the core's own when None. app_folder: where the built phone
    app lies; a short page stands at / while there is none. leaving: addresses on their way out.
    """
    table = core.CALCULATIONS if table is None else table
    app = Flask("ringwright", static_folder=None)
    app.config.update(
        API_TITLE=documents.TITLE,
        API_VERSION=documents.VERSION,
        OPENAPI_VERSION="3.1.0",
        API_SPEC_OPTIONS=documents.SPEC_OPTIONS,
        # A body in chunks is cut off here without a word: one byte over tells it from a whole one.
        MAX_CONTENT_LENGTH=limits.LARGEST_BODY + 1,
        PROPAGATE_EXCEPTIONS=False,
    )
    # An address with a doubled slash is another address, not one to be sent elsewhere.
    app.url_map.merge_slashes = False
    api = DocumentedApi(app)
    of_many = many_schemas.schemas_of(many.names_of(table))
    for name, schema in {**documents.schemas_of(table), **of_many}.items():
        api.spec.components.schema(name, schema)
    for name, response in documents.RESPONSES.items():
        api.spec.components.response(name, response)
    request_schemas = schemas.Schemas()
    for name, header in documents.HEADERS.items():
        api.spec.components.header(name, header)
    worked = calculations.make_blueprint(table, request_schemas)
    many.add_to(worked, table, request_schemas)
    api.register_blueprint(worked)
    api.register_blueprint(pages.blueprint)
    api.register_blueprint(shop.blueprint)
    api.register_blueprint(_files(table, request_schemas))
    # No address of its own but an error that helps, so it is not in the specification.
    for form in ("svg", "dxf", "pdf"):
        rule, view = "/v1/drawings/<part>." + form, drawing_files.no_such_drawing
        app.add_url_rule(rule, "no-" + form, view, methods=["GET", "POST"])
    specification = documents.without_strays(api.spec.to_dict())
    examples.put_into(specification, examples.read_all())
    hoist.hoisted(specification)
    deprecation.mark(specification, leaving)
    app.extensions["ringwright"] = {
        "specification": orjson.dumps(specification),
        "flaw": _flaw(table),
        "address": own_address.read_address(),
        "close_after": settings.value_of("RINGWRIGHT_CLOSE_AFTER"),
        "lane": lane.Lane(*lane.settings()),
        "shop": shop.read_profile(),
    }
    _register_front(app, table, app_folder)
    rate_limit.add_to(app)
    deprecation.add_to(app, leaving)
    docs.add_to(app, table)
    # Flask's own way to put a layer in front; its types say that this is a method like others.
    app.wsgi_app = headers.on_every_answer(app.wsgi_app)  # type: ignore[assignment, method-assign]
    listeners = _listeners(app)
    if listeners:
        app.wsgi_app = watched.watched(app, listeners)  # type: ignore[assignment, method-assign]
    return app


def _listeners(app: Flask) -> list[Callable[[watched.Done], None]]:
    """What is told of every request, by the settings; nothing where nobody asked."""
    told: list[Callable[[watched.Done], None]] = []
    told += [request_log.write] if settings.value_of(request_log.SETTING) else []
    if settings.value_of(metrics.SETTING):
        counted = metrics.Metrics(app)
        counted.add_to(app)
        told.append(counted.count)
    return told


def _files(table: Table, request_schemas: schemas.Schemas) -> Blueprint:
    """The blueprint of the files that the calculations of a table bring."""
    made = files.Files(request_schemas)
    for name, add in FILES_OF.items():
        if name in table:
            add(made)
    table_files.add_tables(made, table)
    return made.blueprint


def specification(app: Flask) -> Document:
    """The OpenAPI document of an application, as a dict."""
    document: Document = orjson.loads(app.extensions["ringwright"]["specification"])
    return document


def _register_front(app: Flask, table: Table, folder: Path) -> None:
    held = static_app.read_app(folder)
    if not held:
        app.add_url_rule("/", "front", pages.for_programs_too(pages.front_page(table), table))
        return
    view = static_app.make_view(held)
    app.add_url_rule("/", "front", pages.for_programs_too(view, table))
    # One rule for each file: a rule for every path would answer 404 where a GET of what is only
    # posted is 405, and 405 where a POST of nothing is 404.
    for name in held:
        app.add_url_rule("/" + name, "app-" + name, view, defaults={"name": name})


def _refused(error: Exception) -> Response:
    """The answer to whatever was raised."""
    response = _problem_of(error)
    reading.finish(request)
    return response


def _problem_of(error: Exception) -> Response:
    told = problems.of_error(error)
    if told is not None:
        return told
    if isinstance(error, NotFound) and (there := _without_slash()):
        return redirect(there, 308)
    if isinstance(error, HTTPException):
        carried = [(k, v) for k, v in error.get_headers() if k in ("Allow", "Retry-After")]
        return problems.of_status(error.code or 500, carried)
    return problems.failed(error, request.endpoint)


def _without_slash() -> str | None:
    """The address asked for less the slash at its end, None where there is nothing either."""
    path = request.path.rstrip("/")
    adapter = current_app.create_url_adapter(request)
    if path == request.path or not path or not adapter or not adapter.test(path, request.method):
        return None
    query = request.query_string.decode("latin-1")
    return request.script_root + quote(path) + ("?" + query if query else "")


def _flaw(table: Table) -> str | None:
    """What keeps the service from being ready, in words; None when nothing does."""
    if not table:
        return "there is no calculation to call"
    return None
