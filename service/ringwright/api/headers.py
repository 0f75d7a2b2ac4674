"""What every answer carries beside its content: who may read it, keep it and do what with it.

The service holds nothing private and knows nobody, so any page may call it: CORS is open to all
and takes no credentials.
"""

from collections.abc import Callable, Iterable
from typing import Any
from wsgiref.types import StartResponse, WSGIApplication, WSGIEnvironment

from flask import Response, request

from .. import __version__
from . import limits

# Says which version gave an answer; see the promise of stability in documents.py.
VERSION_HEADER = "Ringwright-Version"

# An answer that sets none of its own is data: it may load, run and be framed by nothing.
POLICY = ("Content-Security-Policy", "default-src 'none'; frame-ancestors 'none'")
ON_EVERY_ANSWER = [
    ("X-Content-Type-Options", "nosniff"),
    ("Referrer-Policy", "no-referrer"),
    ("Access-Control-Allow-Origin", "*"),
    (
        "Access-Control-Expose-Headers",
        "ETag, Retry-After, Content-Disposition, Allow, Deprecation, Sunset, Link, X-Request-Id, "
        + VERSION_HEADER,
    ),
    (VERSION_HEADER, __version__),
    ("Cross-Origin-Resource-Policy", "cross-origin"),
]
_ON_PREFLIGHT = [
    ("Access-Control-Allow-Methods", "GET, HEAD, POST, OPTIONS"),
    # Nothing is read from any other, so none is refused; older browsers know no star.
    (
        "Access-Control-Allow-Headers",
        "*, Content-Type, If-None-Match, Accept, Cache-Control, X-Requested-With",
    ),
    ("Access-Control-Max-Age", str(limits.PREFLIGHT_SECONDS)),
]


def on_every_answer(wsgi_app: WSGIApplication) -> WSGIApplication:
    """The WSGI application with the headers that all its answers share.

    Round the application rather than in Flask's after_request: it costs a tenth, and no answer
    gets past it.
    """

    def wrapped(environ: WSGIEnvironment, start_response: StartResponse) -> Iterable[bytes]:
        def start(
            status: str, headers: list[tuple[str, str]], exc_info: Any = None
        ) -> Callable[[bytes], object]:
            headers.extend(ON_EVERY_ANSWER)
            names = [name for name, _ in headers]
            if "Content-Security-Policy" not in names:
                headers.append(POLICY)
            if "Cache-Control" not in names:
                headers.append(("Cache-Control", "no-store"))
            if "HTTP_ACCESS_CONTROL_REQUEST_METHOD" in environ:
                headers.extend(_ON_PREFLIGHT)
            return start_response(status, headers, exc_info)

        return wsgi_app(environ, start)

    return wrapped


def keepable(response: Response, tag: str, seconds: int = limits.ANSWER_SECONDS) -> Response:
    """The response marked as one that every cache may keep, under an entity tag."""
    response.headers["ETag"] = '"%s"' % tag
    response.headers["Cache-Control"] = "public, max-age=%d" % seconds
    # Whether there is an answer at all depends on what the caller accepts.
    response.headers["Vary"] = "Accept"
    return response


def is_known(tag: str) -> bool:
    """True when the caller says that it already holds the answer with this tag.

    A star is not taken: it would call an answer unchanged that was never worked out.
    """
    if "HTTP_IF_NONE_MATCH" not in request.environ:
        return False
    known = request.if_none_match
    return not known.star_tag and known.contains_weak(tag)
