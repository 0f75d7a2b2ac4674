"""The page of calls: the specification, shown by a renderer that the app's build brings along.

Until the renderer has drawn it, and where it was not built or the browser runs no scripts, a plain
list of the calculations stands in its place. The specification that it draws is that of
/openapi.json with answers put beside the requests that it shows: real ones, worked out once, which
would double what every other caller of /openapi.json has to read.
"""

from collections.abc import Mapping
from html import escape
from pathlib import Path
from typing import Any

import orjson
from flask import Flask, Response

from ...named_types import Document, Table
from .. import examples
from ..problems import KINDS, MEDIA_TYPE, problem
from ..static_app import Held
from .frame import hold, page

# What the app's build lays there: client_pwa/vite/renderer_plugin.ts.
FOLDER = Path(__file__).parents[2] / "renderer"
STYLE, SCRIPT = "swagger-ui.css", "swagger-ui-bundle.js"
_TYPES = {".css": "text/css", ".js": "text/javascript", ".txt": "text/plain"}
_PACKED = {"br": ".br", "gzip": ".gz"}


def renderer(folder: Path = FOLDER) -> dict[str, Held]:
    """Address below /docs -> Held, for every file of the renderer; empty where it is not built."""
    found = {}
    for path in sorted(folder.glob("*")):
        if path.suffix in _TYPES:
            packed = {
                encoding: path.with_name(path.name + suffix).read_bytes()
                for encoding, suffix in _PACKED.items()
                if path.with_name(path.name + suffix).is_file()
            }
            held = hold(path.read_bytes(), _TYPES[path.suffix], packed)
            found["renderer/" + path.name] = held
    return found if {"renderer/" + STYLE, "renderer/" + SCRIPT} <= set(found) else {}


def make_page(table: Table, there: Mapping[str, Held]) -> Held:
    """The page. table: the calculations. there: files of the renderer, as `renderer` gives them."""
    items = "".join(
        "<li><code>/v1/%s</code>: %s</li>\n" % (escape(name), escape(calculation.summary))
        for name, calculation in table.items()
    )
    body = (
        "<h1>Every call</h1>\n"
        '<p>New here? <a href="/docs/begin">How to begin</a> takes five minutes.</p>\n'
        '<div id="reference">\n<ul>\n%s</ul>\n'
        '<p>All of it for programs: <a href="/openapi.json">/openapi.json</a>.</p>\n</div>\n'
    ) % items
    if not there:
        return page("/docs", body, ["frame.css", "text.css"])
    scripts = ["renderer/" + SCRIPT, "reference.js"]
    return page("/docs", body, ["renderer/" + STYLE, "frame.css", "reference.css"], scripts)


def answered(app: Flask) -> Held:
    """The specification of an application with answers beside its examples, Held.

    Asks the application itself, past what stands in front of it: nobody called.
    """
    spec = orjson.loads(app.extensions["ringwright"]["specification"])
    for name, shown in examples.read_all().items():
        operation = spec["paths"].get("/v1/" + name, {}).get("post")
        if operation:
            content = _at(spec, operation["responses"]["200"])["content"]["application/json"]
            content["examples"] = _answers(app, "/v1/" + name, shown)
    for name, told in (("Refused", _refusal(app)), ("Failed", _failure())):
        spec["components"]["responses"][name]["content"][MEDIA_TYPE]["example"] = told
    return hold(orjson.dumps(spec), "application/json")


def _answers(app: Flask, path: str, shown: Document) -> dict[str, Document]:
    found = {}
    for key, example in shown.items():
        answer = _asked(app, path, example["value"])
        if answer.status_code == 200:
            found[key] = {"summary": example["summary"], "value": orjson.loads(answer.data)}
    return found


def _asked(app: Flask, path: str, body: Any) -> Response:
    with app.test_request_context(path, method="POST", json=body):
        return app.full_dispatch_request()


def _refusal(app: Flask) -> Any:
    """What a bore is refused with whose unit was forgotten."""
    return orjson.loads(_asked(app, "/v1/sizing", {"bore": 3.125}).data)


def _failure() -> Any:
    return orjson.loads(problem("busy", KINDS["busy"].title).data)


def _at(spec: Document, node: Document) -> Document:
    """What stands at a reference within the specification, or the node itself."""
    while "$ref" in node:
        place = spec
        for step in node["$ref"].removeprefix("#/").split("/"):
            place = place[step]
        node = place
    return node
