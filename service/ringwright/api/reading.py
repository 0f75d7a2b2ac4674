"""From an HTTP request to plain values: strict JSON, strict queries, and nothing guessed."""

import json
import re
from collections.abc import Iterable
from functools import lru_cache
from typing import Any, NoReturn

import orjson
from flask import Request
from werkzeug.datastructures import MIMEAccept
from werkzeug.exceptions import HTTPException
from werkzeug.http import parse_accept_header

from ..core.fields import UNIT_OF_KIND, Field
from ..core.problems import Fault
from ..named_types import Document, Path
from . import limits
from .problems import Refused

# A number as JSON writes it, not longer than any double needs.
_NUMBER = re.compile("-?(?:0|[1-9][0-9]{0,17})(?:\\.[0-9]{1,24})?(?:[eE][+-]?[0-9]{1,3})?")
_SURROGATE = re.compile(rb"\\u[dD][89a-fA-F]")
JSON = "application/json"
_FLAGS = {"true": True, "false": False}


class _Flaw(ValueError):
    """Something that json.loads lets through and a strict reader does not."""

    def __init__(self, message: str, path: Path = ()) -> None:
        super().__init__(message)
        self.path = path


def refuse_other_forms(request: Request) -> None:
    """406 before any work for a caller who could not read the answer."""
    accept = request.environ.get("HTTP_ACCEPT")
    if accept is not None and not _takes_json(accept):
        raise Refused("not-acceptable", "the answer is %s" % JSON)


# Callers come in few kinds, and every kind sends the same words each time.
@lru_cache(maxsize=256)
def _takes_json(accept: str) -> bool:
    return parse_accept_header(accept, MIMEAccept).quality(JSON) > 0


def body(request: Request) -> Any:
    """The JSON value in the body of a POST.

    Raises Refused: 415 for another content type, 413 for too large a body, 400 for what is not
    strict JSON (NaN, Infinity, a name given twice, nesting without end, not UTF-8).
    """
    if request.environ.get("CONTENT_TYPE") != JSON or request.content_encoding:
        _refuse_other_content(request)
    try:
        data = request.get_data(cache=False)
    except HTTPException:
        raise
    except Exception:
        # Every server has its own kinds for chunks that are none and for a sender who is gone.
        raise Refused("bad-request", "the body broke off or came in broken chunks") from None
    if len(data) > limits.LARGEST_BODY:
        # Sent in chunks, so that its length was not known beforehand.
        raise Refused("body-too-large", "the body has more than %d bytes" % limits.LARGEST_BODY)
    if not data:
        raise Refused("malformed-json", "the body is empty")
    try:
        text = data.decode("utf-8")
        value = _decode(text)
        if _SURROGATE.search(data):
            # Half a surrogate pair is no letter: JSON's grammar allows it, UTF-8 cannot send it.
            orjson.dumps(value)
    except UnicodeDecodeError as error:
        raise Refused("malformed-json", "byte %d is not UTF-8" % error.start) from None
    except RecursionError:
        raise Refused("malformed-json", "the JSON is nested too deeply") from None
    except _Flaw as flaw:
        raise Refused("malformed-json", str(flaw), path=flaw.path) from None
    except json.JSONDecodeError as error:
        raise Refused("malformed-json", str(error)) from None
    except orjson.JSONEncodeError:
        raise Refused("malformed-json", "a text holds half of a surrogate pair") from None
    except ValueError:
        # The one thing left: more digits in a whole number than Python will read.
        raise Refused("malformed-json", "a number has too many digits") from None
    return value


def _refuse_other_content(request: Request) -> None:
    if request.content_encoding:
        sent = "the body is compressed (%s)" % str(request.content_encoding)[:40]
    elif not request.mimetype:
        sent = "the body has no Content-Type"
    elif request.mimetype != JSON:
        sent = "the body is %s" % request.mimetype[:60]
    else:
        charset = request.mimetype_params.get("charset", "utf-8")
        if charset.lower() in ("utf-8", "utf8", "us-ascii"):
            return
        sent = "the body is in %s" % charset[:40]
    raise Refused("unsupported-media-type", sent, path=("Content-Type",))


def _object(pairs: list[tuple[str, Any]]) -> Document:
    value = dict(pairs)
    if len(value) != len(pairs):
        seen: set[str] = set()
        for name, _ in pairs:
            if name in seen:
                raise _Flaw("the name '%s' is given twice in one object" % name[:40], (name,))
            seen.add(name)
    return value


def _no_constant(word: str) -> NoReturn:
    raise _Flaw("%s is not a number in JSON" % word)


# Made once: json.loads would make a new one for every request that asks for more than it does.
_decode = json.JSONDecoder(object_pairs_hook=_object, parse_constant=_no_constant).decode


def finish(request: Request) -> None:
    """Reads what is left of a refused body, and throws it away."""
    stream = request.environ["wsgi.input"]
    left = limits.LARGEST_DRAIN
    while left > 0:
        try:
            piece = stream.read(65536)
        except Exception:
            # Broken chunks, or nobody there any more: the server closes the connection itself.
            return
        if not piece:
            return
        left -= len(piece)


def query(request: Request, fields: Iterable[Field]) -> Document:
    """The query as a dict of what JSON would have held: numbers, flags and texts.

    fields: sequence of Field. A number without a unit becomes a number in the core's unit.
    Raises Refused: 414 for too long a query, 422 for a name given twice.
    """
    if len(request.query_string) > limits.LONGEST_QUERY:
        raise Refused("query-too-long", "the query has %d characters" % len(request.query_string))
    given: Document = {}
    faults: list[Fault] = []
    kinds = {entry.name: entry.kind for entry in fields}
    for name, texts in request.args.lists():
        if len(texts) > 1:
            faults.append(
                Fault(
                    (name,),
                    "given-twice",
                    "%s is given %d times" % (name[:40], len(texts)),
                    "give it once",
                )
            )
        given[name] = _value(kinds.get(name), texts[0])
    if faults:
        raise Refused("invalid-input", faults[0].message, faults)
    return given


def _value(kind: str | None, text: str) -> bool | int | float | str:
    if kind == "flag":
        return _FLAGS.get(text, text)
    if (kind in UNIT_OF_KIND or kind == "count") and _NUMBER.fullmatch(text):
        return int(text) if text.lstrip("-").isdigit() else float(text)
    return text
