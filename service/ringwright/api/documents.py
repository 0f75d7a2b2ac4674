"""The parts of the specification that are not made from the tables of inputs.

What comes back, what goes wrong, and the promise of stability. Kept beside the code that sends
them; the tests hold real answers against these shapes.
"""

import json
from collections.abc import Iterable

from marshmallow import Schema

from .. import __version__
from ..core.calculations import Calculation
from ..core.records import GOOD, STOP, WATCH
from ..named_types import Document, Table
from . import pick
from .answer_schemas import PICKED, AnswerSchemas, answer_name, described, ref
from .problems import KINDS, MEDIA_TYPE
from .schemas import text_schemas

TITLE = "Ringwright"
DESCRIPTION = """Piston rings for steam engines that match no catalogue: size a ring, its groove and
its tooling, find the stock, print the route card, check what was made.

**Stability.** From version 1.0.0 on everything under `/v1` keeps its meaning. No address, input,
choice, figure, list, check, code or unit that this document names is renamed, removed or given
another meaning, kind or unit; no bound is drawn in; no optional input becomes required; a figure
that is always there stays so. Names may be added, so skip those that you do not know. Words for
people may be put better, defaults and formulas corrected: openapi/CHANGELOG.md says each time what
changed and why. A change that breaks this gets a new prefix, and the old one stays for a year. The
header `Ringwright-Version` of every answer says which version gave it: first number breaks, second
additions, third corrections. A job file of any version is read by all later ones.

**Inputs.** A number is in the unit named with the input (mm, MPa, N, degC, deg, kg ...); text
carries its own unit: "80 mm", "3.125 in", "3 1/8 in", "4 thou", "120 psi", "350 degF". Steam
pressure is gauge pressure unless the text says abs: "135 psi abs". The decimal sign is a point.
What is not given is chosen, and `chosen` says what and why. Leave out what you do not know: null is
refused.

**Answers.** Every figure has its value, unit, symbol and the key of its method, which /v1/methods
explains with formula, range and source. With `units=inch` in the address, of a GET or a POST,
figures, tables, drawings and cards come back in inch units. With `figures=free_gap,closed_gap` an
answer holds just these `figures`, `findings` that are not good, and `cautions`: it is a
PickedAnswer, small, and told from a whole one by having no `chosen`. An impossible design is an
answer, not an error: its findings say what to change. What cannot be worked at all is refused with
application/problem+json (RFC 9457). The figures are design aids; they do not replace measuring the
engine in front of you, and local rules for pressure systems come first."""

_NUMBER_OR_LIST = {
    "anyOf": [
        {"type": "number"},
        {"type": "string"},
        {"type": "boolean"},
        {"type": "array", "items": {}},
        {"type": "null"},
    ]
}
_UNIT = {"type": "string", "description": "mm, MPa, N, degC, deg, kg ...; 1 for a pure number"}


def _object(description: str, properties: Document, required: Iterable[str]) -> Document:
    return {
        "type": "object",
        "description": description,
        "properties": properties,
        "required": list(required),
    }


def _list_of(name: str, description: str) -> Document:
    return {"type": "array", "items": ref(name), "description": description}


_TEXT = {"type": "string"}
_NUMBER = {"type": "number"}

SCHEMAS: dict[str, Document] = {
    "Quantity": _object(
        "A number with its unit.",
        {"value": {"type": "number", "description": "in that unit"}, "unit": _UNIT},
        ("value", "unit"),
    ),
    "Working": _object(
        "A number put into a formula.",
        {
            "symbol": {"type": "string", "description": "as the formula prints it"},
            "value": {**_NUMBER_OR_LIST, "description": "what was put in"},
            "unit": _UNIT,
        },
        ("symbol", "value", "unit"),
    ),
    "Figure": _object(
        "A result.",
        {
            "value": {"type": "number", "description": "in that unit"},
            "unit": _UNIT,
            "symbol": {"type": "string", "description": "as the formula prints it"},
            "method": {"type": "string", "description": "key into /v1/methods"},
            "low": {"type": "number", "description": "the least it may be"},
            "high": {"type": "number", "description": "the most it may be"},
            "working": _list_of("Working", "what was put in, with working=true"),
        },
        ("value", "unit", "symbol", "method"),
    ),
    "Finding": _object(
        "One check of the design.",
        {
            "check": described("CheckName", "which check"),
            "outcome": described("Outcome", "how it came out"),
            "value": described("Quantity", "what was found"),
            "limit": described("Quantity", "what it is judged by"),
            "why": {"type": "string", "description": "what was found, in words"},
            "remedy": {"type": "string", "description": "what to change; empty when good"},
            "apply": _list_of("Choice", "inputs that clear it, as tried; null: leave it out"),
        },
        ("check", "outcome", "why", "remedy"),
    ),
    "Choice": _object(
        "An input that was not given: what was taken, and the rule that took it.",
        {
            "input": {"type": "string", "description": "which input"},
            "value": {**_NUMBER_OR_LIST, "description": "what was taken"},
            "unit": _UNIT,
            "why": {"type": "string", "description": "the rule that took it"},
        },
        ("input", "value", "unit", "why"),
    ),
    "Outcome": {
        "type": "string",
        "description": "good, watch (know of it) or stop (change the design)",
        "enum": [GOOD, WATCH, STOP],
    },
    "ProblemCode": {
        "type": "string",
        "description": "which kind of problem, a fixed key; /v1/problems lists them",
        "enum": list(KINDS),
    },
    "Series": _object(
        "Numbers along a line or round a circle.",
        {
            "values": {
                "type": "array",
                "items": {"type": "number"},
                "description": "in order; as many as of its neighbours",
            },
            "unit": _UNIT,
            "symbol": {"type": "string", "description": "as formulas print it"},
        },
        ("values", "unit", "symbol"),
    ),
    "Caution": _object(
        "A caution to show where the work is shown.",
        {
            "key": {"type": "string", "description": "which caution"},
            "text": {"type": "string", "description": "what it says"},
        },
        ("key", "text"),
    ),
    "ErrorEntry": _object(
        "One thing that is wrong.",
        {
            "path": {
                "type": "array",
                "items": {"anyOf": [{"type": "string"}, {"type": "integer"}]},
                "description": "names and indexes from the top; empty for the whole request",
            },
            "pointer": {"type": "string", "description": "the path as JSON Pointer (RFC 6901)"},
            "code": {"type": "string", "description": "what kind of fault, a fixed key"},
            "message": {"type": "string", "description": "what is wrong"},
            "remedy": {"type": "string", "description": "what to do about it"},
            "value": described("Quantity", "what was given"),
            "lowest": described("Quantity", "the least that will do"),
            "highest": described("Quantity", "the most that will do"),
            "more_than": {"type": "boolean", "description": "true when lowest itself will not do"},
            "likely": {
                "type": "string",
                "description": "the unit in which the same number would do",
            },
        },
        ("path", "pointer", "code", "message", "remedy"),
    ),
    "Problem": _object(
        "What went wrong (RFC 9457).",
        {
            "type": {
                "type": "string",
                "format": "uri-reference",
                "description": "the same key as an address",
            },
            "title": {"type": "string", "description": "the kind of problem in words"},
            "status": {"type": "integer", "description": "of HTTP, once more"},
            "detail": {"type": "string", "description": "what went wrong this time"},
            "code": described("ProblemCode", "which kind of problem"),
            "errors": {**_list_of("ErrorEntry", "at least one"), "minItems": 1},
        },
        ("type", "title", "status", "detail", "code", "errors"),
    ),
    **text_schemas(),
}

SCHEMAS["ProblemList"] = _object(
    "Every kind of problem.",
    {
        "problems": {
            "type": "array",
            "description": "each with its status",
            "items": _object(
                "One kind of problem.",
                {
                    "code": described("ProblemCode", "its key"),
                    "status": {"type": "integer", "description": "of HTTP"},
                    "title": {"type": "string", "description": "in words"},
                    "remedy": {"type": "string", "description": "what to do about it"},
                },
                ("code", "status", "title", "remedy"),
            ),
        }
    },
    ("problems",),
)
SCHEMAS["Anything"] = {
    "type": "object",
    "additionalProperties": True,
    "description": "An object that this document says no more of.",
}
_PROBLEM_CONTENT = {MEDIA_TYPE: {"schema": ref("Problem")}}
HEADERS = {
    "ETag": {
        "schema": _TEXT,
        "description": "of every GET's answer; changes only with the service's code",
    },
    "Retry-After": {
        "schema": {"type": "integer", "minimum": 1},
        "description": "with 429, and 503 for heavy work: seconds after which to ask again",
    },
}
_RETRY_HEADERS = {"Retry-After": {"$ref": "#/components/headers/Retry-After"}}


RESPONSES = {
    "Refused": {
        "description": "The request cannot be answered, and why; /v1/problems lists all kinds.",
        "content": _PROBLEM_CONTENT,
        "headers": _RETRY_HEADERS,
    },
    "Failed": {
        "description": "The service is at fault, or has no time now.",
        "content": _PROBLEM_CONTENT,
        "headers": _RETRY_HEADERS,
    },
    "NotModified": {
        "description": "You hold this answer already.",
        "headers": {"ETag": {"$ref": "#/components/headers/ETag"}},
    },
}
# Where a page is wanted rather than JSON, as browsers say it.
TO_A_PAGE = {
    "description": "The page for people, where that is asked for rather than JSON.",
    "headers": {"Location": {"description": "its address", "schema": {"type": "string"}}},
}
# What every operation may answer instead.
PROBLEMS = {
    "4XX": {"$ref": "#/components/responses/Refused"},
    "5XX": {"$ref": "#/components/responses/Failed"},
}


def told(schema: Document, media_type: str = "application/json") -> Document:
    """The response of what was asked for."""
    return {
        "200": {
            "description": "The answer.",
            "content": {media_type: {"schema": schema}},
        }
    }


def kept(schema: Document, media_type: str = "application/json") -> Document:
    """The responses of a GET whose answer caches may keep."""
    return {
        **told(schema, media_type),
        "304": {"$ref": "#/components/responses/NotModified"},
    }


def _answer(calculation: Calculation) -> Document:
    whole = ref(answer_name(calculation.name))
    return {"anyOf": [whole, ref(PICKED)]} if pick.names_of(calculation.answer) else whole


def schemas_of(table: Table) -> dict[str, Document]:
    """Name and JSON Schema of what the calculations of a table answer, and of problems."""
    return {**SCHEMAS, **AnswerSchemas(table, SCHEMAS).made}


def file_schema(media_type: str) -> Document:
    """The schema of a file: letters, or bytes where its form is not text."""
    if media_type == "application/pdf":
        return {"type": "string", "format": "binary"}
    return {"type": "string"}


def post_operation(calculation: Calculation, options: type[Schema], body: type[Schema]) -> Document:
    """What `Blueprint.doc` needs for the POST of a calculation; options and body are schemas."""
    return {
        "summary": calculation.summary,
        "operationId": "work_" + calculation.name.replace("-", "_"),
        "parameters": [{"in": "query", "schema": options}],
        "requestBody": {"required": True, "content": {"application/json": {"schema": body}}},
        "responses": {**told(_answer(calculation)), **PROBLEMS},
    }


def get_operation(calculation: Calculation, query: type[Schema]) -> Document:
    """What `Blueprint.doc` needs for the GET of a calculation; query is a schema."""
    return {
        "summary": calculation.summary + " (by address)",
        "operationId": "get_" + calculation.name.replace("-", "_"),
        "parameters": [{"in": "query", "schema": query}],
        "responses": {
            **kept(_answer(calculation)),
            **PROBLEMS,
        },
    }


def list_operation(calculation: Calculation, query: type[Schema]) -> Document:
    """What `Blueprint.doc` needs for a reference list."""
    return {
        "summary": calculation.summary,
        "operationId": "list_" + calculation.name.replace("-", "_"),
        "parameters": [{"in": "query", "schema": query}],
        "responses": {
            **kept(_answer(calculation)),
            **PROBLEMS,
        },
    }


def without_strays(spec: Document) -> Document:
    """The specification less the schemas nothing in it refers to (the library adds its own)."""
    schemas = spec["components"]["schemas"]
    while True:
        text = json.dumps(spec)
        strays = [name for name in schemas if '"#/components/schemas/%s"' % name not in text]
        if not strays:
            return spec
        for name in strays:
            del schemas[name]


SPEC_OPTIONS = {
    # Nobody has to say who they are.
    "security": [],
    "info": {"description": DESCRIPTION},
    "servers": [{"url": "/", "description": "the service that gave you this document"}],
}
VERSION = __version__
