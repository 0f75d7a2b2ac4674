"""A layer round the application that measures every request and tells those who listen.

Nothing that a caller wrote is told on: an address is told as it is declared, such as
/v1/drawings/<part>.svg, and what is declared nowhere as NONE, so that no figure of anybody's gets
into a log or a name of a metric.
"""

import secrets
import time
from collections import namedtuple

# Told instead of an address, or a method, that a stranger made up.
NONE = "-"
METHODS = ("GET", "HEAD", "POST", "OPTIONS")
# By which a caller can name the line of the log that is his; never taken from a caller.
ID_HEADER = "X-Request-Id"

# seconds: from the request's headers to the answer's end. size: of the answer's body [bytes].
Done = namedtuple("Done", ("id", "method", "address", "status", "seconds", "size"))


def watched(app, listeners, clock=time.perf_counter):
    """The WSGI application of a Flask application with the layer round it.

    listeners: functions, each called with the Done of every request.
    """
    inner = app.wsgi_app
    declared = frozenset(rule.rule for rule in app.url_map.iter_rules() if not rule.arguments)

    def layer(environ, start_response):
        began = clock()
        number = secrets.token_hex(8)
        statuses = []

        def start(status, headers, exc_info=None):
            statuses.append(int(status[:3]))
            headers.append((ID_HEADER, number))
            return start_response(status, headers, exc_info)

        def told(size):
            method = environ["REQUEST_METHOD"]
            done = Done(
                number,
                method if method in METHODS else NONE,
                _address_of(environ, declared),
                statuses[-1],
                clock() - began,
                size,
            )
            for listener in listeners:
                listener(done)

        return _Measured(inner(environ, start), told)

    return layer


def _address_of(environ, declared):
    # Flask's request lies in the environment once there is one, its rule once it was found.
    rule = getattr(environ.get("werkzeug.request"), "url_rule", None)
    if rule is not None:
        return rule.rule
    # An address asked by a method that it does not take has no rule.
    path = environ.get("PATH_INFO", "")
    return path if path in declared else NONE


class _Measured:
    """The parts of an answer, and its size told once it was handed on or broken off."""

    def __init__(self, parts, told):
        self._parts = parts
        self._told = told
        self._size = 0

    def __iter__(self):
        for part in self._parts:
            self._size += len(part)
            yield part

    def close(self):
        try:
            close = getattr(self._parts, "close", None)
            if close is not None:
                close()
        finally:
            self._told(self._size)
