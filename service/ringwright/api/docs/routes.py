"""The addresses of the pages at /docs, each held in memory with what it is once compressed."""

from pathlib import Path

from flask import Flask, Response, current_app

from ...named_types import Table
from .. import static_app
from . import notebook, reference, tables, written
from .frame import hold, page

_STYLES, _SCRIPTS = ("frame.css", "text.css"), ("own_address.js",)
_TYPES = {".css": "text/css", ".js": "text/javascript"}
_OWN = Path(__file__).parent


def add_to(app: Flask, table: Table) -> None:
    """Adds the pages to an application. table: its calculations."""
    there = reference.renderer()
    held = {"/docs/" + name: found for name, found in there.items()}
    held["/docs"] = reference.make_page(table, there)
    held["/docs/problems"] = page("/docs/problems", tables.problems(), _STYLES)
    held["/docs/limits"] = page("/docs/limits", tables.limits_and_settings(), _STYLES)
    for address in written.FILES:
        held[address] = page(address, written.body_of(address), _STYLES, _SCRIPTS)
    begin = written.source_of("/docs/begin")
    if begin is not None:
        held["/docs/begin.ipynb"] = hold(notebook.notebook(begin), notebook.MEDIA_TYPE)
    for path in sorted(_OWN.iterdir()):
        if path.suffix in _TYPES:
            held["/docs/" + path.name] = hold(path.read_bytes(), _TYPES[path.suffix])
    view = static_app.make_view(held)
    for address in held:
        app.add_url_rule(address, "docs-" + address, view, defaults={"name": address})
    app.add_url_rule("/docs/specification.json", "docs-specification", _specification)


def _specification() -> Response:
    return static_app.send(prepared(current_app))


def prepared(app: Flask) -> static_app.Held:
    """The specification with answers, worked out when first asked for. app: the application."""
    own = app.extensions["ringwright"]
    if "answered" not in own:
        own["answered"] = reference.answered(app)
    held: static_app.Held = own["answered"]
    return held
