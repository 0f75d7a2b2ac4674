"""Every error answer: one shape (RFC 9457, Problem Details for HTTP APIs), one builder.

A problem carries "type" (a link into /v1/problems), "title", "status", "detail", "code" and
"errors": at least one entry {path, pointer, code, message, remedy}. `path` lists the names and
indexes from the top of the request to the value at fault, `pointer` is the same as a JSON Pointer
(RFC 6901); both are empty where the request as a whole is at fault. Where a number is at fault,
`value`, `lowest` and `highest` say it with its unit, the caller's own where a text named one.
"""

import logging
import traceback
from collections import OrderedDict
from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple

import orjson
from flask import Response

from ..core.problems import CoreProblem, Fault, InputProblem
from ..named_types import Document, Path
from . import limits

MEDIA_TYPE = "application/problem+json"
_LOG = logging.getLogger("ringwright")
# The same for people; every problem has a link to its place there (RFC 8288).
PAGE = "/docs/problems"

_Headers = Mapping[str, str] | list[tuple[str, str]]


class Kind(NamedTuple):
    status: int
    title: str
    remedy: str


KINDS = OrderedDict(
    (
        (
            "bad-request",
            Kind(400, "The request is not well formed", "send an ordinary HTTP request"),
        ),
        (
            "malformed-json",
            Kind(400, "The body is not JSON", 'send one JSON object, such as {"bore": "80 mm"}'),
        ),
        (
            "not-found",
            Kind(
                404,
                "There is nothing at this address",
                "open /docs, or ask for / with Accept: application/json, to see what there is",
            ),
        ),
        (
            "method-not-allowed",
            Kind(405, "This address does not take that method", "use a method of the Allow header"),
        ),
        (
            "not-acceptable",
            Kind(
                406,
                "The answer is not to be had in that form",
                "accept application/json, or send no Accept header",
            ),
        ),
        (
            "body-too-large",
            Kind(
                413,
                "The body is too large",
                "send at most %d bytes; split the job" % limits.LARGEST_BODY,
            ),
        ),
        (
            "query-too-long",
            Kind(
                414,
                "The query is too long",
                "send at most %d characters, or POST the same as JSON" % limits.LONGEST_QUERY,
            ),
        ),
        (
            "unsupported-media-type",
            Kind(
                415,
                "The body is not of a kind that is read here",
                "send Content-Type: application/json, in UTF-8, not compressed",
            ),
        ),
        (
            "too-many-requests",
            Kind(
                429,
                "There are too many requests from this address",
                "try again after the seconds that Retry-After names",
            ),
        ),
        (
            "headers-too-large",
            Kind(
                431,
                "The headers are too large",
                "send fewer and shorter headers; no call here needs one of your own",
            ),
        ),
        (
            "invalid-input",
            Kind(422, "Some inputs cannot be worked with", "mend the inputs listed in errors"),
        ),
        (
            "out-of-range",
            Kind(
                422,
                "A formula was asked for more than it covers",
                "bring the inputs back into the range named",
            ),
        ),
        (
            "not-converged",
            Kind(
                422,
                "No answer was found for these inputs",
                "change the inputs a little, or give one value fewer",
            ),
        ),
        (
            "too-much",
            Kind(
                422,
                "The request asks for more than one request may",
                "send fewer jobs at once, or ask for fewer figures",
            ),
        ),
        (
            "internal-error",
            Kind(
                500,
                "The service failed",
                "not your mistake: report the request that brought this about",
            ),
        ),
        (
            "unreachable",
            Kind(
                502,
                "The service behind the proxy could not be reached",
                "try again in a moment",
            ),
        ),
        ("not-ready", Kind(503, "The service is not ready", "try again in a minute")),
        (
            "busy",
            Kind(
                503,
                "The service has no time for heavy work just now",
                "try again after the seconds that Retry-After names",
            ),
        ),
    )
)
_CODE_OF_STATUS = {
    400: "bad-request",
    404: "not-found",
    405: "method-not-allowed",
    406: "not-acceptable",
    413: "body-too-large",
    414: "query-too-long",
    415: "unsupported-media-type",
    422: "invalid-input",
    429: "too-many-requests",
    431: "headers-too-large",
    502: "unreachable",
    503: "not-ready",
    504: "unreachable",
}


class Refused(Exception):
    """A request refused before any calculation: the code of a KINDS entry and what was wrong.

    faults: list of core Fault; without any, one is made from `detail` and the kind's remedy.
    headers: of the answer, beyond those that every problem has.
    """

    headers: dict[str, str] | None = None

    def __init__(
        self,
        code: str,
        detail: str,
        faults: Iterable[Fault] = (),
        remedy: str = "",
        path: Path = (),
    ) -> None:
        super().__init__(detail)
        self.code = code
        self.detail = detail
        self.faults = list(faults) or [Fault(path, code, detail, remedy or KINDS[code].remedy)]


def problem(
    code: str, detail: str, faults: Iterable[Fault] = (), headers: _Headers | None = None
) -> Response:
    """The Response for a problem; `faults` as in Refused."""
    kind = KINDS[code]
    faults = list(faults) or [Fault((), code, detail, kind.remedy)]
    if len(faults) > limits.MOST_ERRORS:
        detail = "%s (and %d more)" % (detail, len(faults) - limits.MOST_ERRORS)
    content = {
        "type": "/v1/problems#" + code,
        "title": kind.title,
        "status": kind.status,
        "detail": sendable(_bounded(detail, limits.LONGEST_WORDS)),
        "code": code,
        "errors": [_entry(fault) for fault in faults[: limits.MOST_ERRORS]],
    }
    response = Response(orjson.dumps(content), kind.status, mimetype=MEDIA_TYPE)
    response.headers["Cache-Control"] = "no-store"
    response.headers["Link"] = '<%s#%s>; rel="help"; type="text/html"' % (PAGE, code)
    response.headers.extend(headers or {})
    return response


def code_of(status: int) -> str:
    """The code of a KINDS entry for a status of HTTP."""
    # What is asked for and not offered (501) is the caller's to change.
    usual = "bad-request" if status < 500 or status == 501 else "internal-error"
    return _CODE_OF_STATUS.get(status, usual)


def of_status(status: int, headers: list[tuple[str, str]] | None = None) -> Response:
    """The Response for an HTTP error that the framework found."""
    code = code_of(status)
    title, remedy = KINDS[code].title, KINDS[code].remedy
    allowed = dict(headers or ()).get("Allow")
    if allowed:
        remedy = "use one of: " + ", ".join(sorted(allowed.split(", ")))
    return problem(code, title, [Fault((), code, title, remedy)], headers)


def of_error(error: Exception) -> Response | None:
    """The Response for what a caller can mend, None for any other exception."""
    if isinstance(error, Refused):
        return problem(error.code, error.detail, error.faults, error.headers)
    if isinstance(error, InputProblem):
        return problem("invalid-input", detail_of(error.faults), error.faults)
    if isinstance(error, CoreProblem):
        return problem(error.code, str(error))
    return None


def failed(error: Exception, where: str | None) -> Response:
    """The Response where the fault is the service's, which is logged. where: what failed."""
    # Where and what kind, but no word of the error's: it may hold somebody's figures.
    frames = "".join(traceback.format_tb(error.__traceback__))
    _LOG.error("%s failed: %s\n%s", where, type(error).__name__, frames)
    return problem("internal-error", "the service failed on this request")


def detail_of(faults: Sequence[Fault]) -> str:
    """One sentence for a list of faults."""
    first: str = faults[0].message
    rest = len(faults) - 1
    return first if not rest else "%s; and %d more" % (first, rest)


def _entry(fault: Fault) -> Document:
    path = [sendable(_bounded(step)) if isinstance(step, str) else step for step in fault.path]
    entry: Document = fault.plain()
    entry["path"] = path
    entry["pointer"] = "".join("/" + _escaped(str(step)) for step in path)
    for name in ("message", "remedy"):
        entry[name] = sendable(_bounded(entry[name], limits.LONGEST_WORDS))
    return entry


def _bounded(text: str, most: int = limits.LONGEST_NAME) -> str:
    """A stranger's text no longer than a refusal bears: what is cut off ends in dots."""
    return text if len(text) <= most else text[:most] + "..."


def _escaped(step: str) -> str:
    return step.replace("~", "~0").replace("/", "~1")


def sendable(text: str) -> str:
    """Text that UTF-8 can carry and a terminal can show, whatever a stranger put in it."""
    clean = text.encode("utf-8", "replace").decode("utf-8")
    if clean.isprintable():
        return clean
    return "".join(letter if letter.isprintable() else "?" for letter in clean)
