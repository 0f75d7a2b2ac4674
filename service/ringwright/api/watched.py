"""A layer round the application that measures every request and tells those who listen.

Nothing that a caller wrote is told on: an address is told as it is declared, such as
/v1/drawings/{part}.svg, and what is declared nowhere as NONE, so that no figure of anybody's gets
into a log or a name of a metric.
"""

import re
import secrets
import time
from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import Any, NamedTuple
from wsgiref.types import StartResponse, WSGIApplication, WSGIEnvironment

from flask import Flask
from werkzeug.routing import Rule

# Told instead of an address, or a method, that a stranger made up.
NONE = "-"
METHODS = ("GET", "HEAD", "POST", "OPTIONS")
# By which a caller can name the line of the log that is his; never taken from a caller.
ID_HEADER = "X-Request-Id"

_OPEN_PLACE = re.compile(r"<(?:[^<>]*:)?(\w+)>")


# seconds: from the request's headers to the answer's end. size: of the answer's body [bytes].
class Done(NamedTuple):
    id: str
    method: str
    address: str
    status: int
    seconds: float
    size: int


def watched(
    app: Flask,
    listeners: Iterable[Callable[[Done], None]],
    clock: Callable[[], float] = time.perf_counter,
) -> WSGIApplication:
    """The WSGI application of a Flask application with the layer round it.

    listeners: functions, each called with the Done of every request.
    """
    inner = app.wsgi_app
    names = {rule.rule: name_of(rule) for rule in app.url_map.iter_rules()}

    def layer(environ: WSGIEnvironment, start_response: StartResponse) -> Iterable[bytes]:
        began = clock()
        number = secrets.token_hex(8)
        found = []

        def start(
            status: str, headers: list[tuple[str, str]], exc_info: Any = None
        ) -> Callable[[bytes], object]:
            # Now, while Flask's request still lies in the environment.
            found[:] = _address_of(environ, names), int(status[:3])
            headers.append((ID_HEADER, number))
            return start_response(status, headers, exc_info)

        def told(size: int) -> None:
            method = environ["REQUEST_METHOD"]
            address, status = found
            done = Done(
                id=number,
                method=method if method in METHODS else NONE,
                address=address,
                status=status,
                seconds=clock() - began,
                size=size,
            )
            for listener in listeners:
                listener(done)

        return _Measured(inner(environ, start), told)

    return layer


def name_of(rule: Rule) -> str:
    """An address of the application as it is told: what may stand in a place of it left open."""
    return _OPEN_PLACE.sub(r"{\1}", rule.rule)


def _address_of(environ: WSGIEnvironment, names: Mapping[str, str]) -> str:
    rule = getattr(environ.get("werkzeug.request"), "url_rule", None)
    # An address asked by a method that it does not take has no rule.
    return names.get(rule.rule if rule is not None else environ.get("PATH_INFO", ""), NONE)


class _Measured:
    """The parts of an answer, and its size told once it was handed on or broken off."""

    def __init__(self, parts: Iterable[bytes], told: Callable[[int], None]) -> None:
        self._parts = parts
        self._told = told
        self._size = 0

    def __iter__(self) -> Iterator[bytes]:
        for part in self._parts:
            self._size += len(part)
            yield part

    def close(self) -> None:
        try:
            close = getattr(self._parts, "close", None)
            if close is not None:
                close()
        finally:
            self._told(self._size)
