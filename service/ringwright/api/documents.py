"""The parts of the specification that are not made from the tables of inputs.

What comes back, what goes wrong, and the promise of stability. Kept beside the code that sends
them; the tests hold real answers against these shapes.
"""

import json

from .. import __version__
from ..core.records import GOOD, STOP, WATCH
from .problems import KINDS, MEDIA_TYPE
from .schemas import text_schemas

TITLE = "Ringwright"
DESCRIPTION = """Piston rings for steam engines that match no catalogue: size a ring, its groove and
its tooling, find the stock, print the route card, check what was made.

**Stability.** Everything under `/v1` keeps its meaning: no input, figure, code or unit is renamed,
removed or given another unit, and no optional input becomes required. Inputs, figures, findings,
codes and list entries may be added, so skip names that you do not know. A change that breaks this
gets a new prefix, and the old one stays for a year. Defaults and formulas may be corrected within a
version: openapi/CHANGELOG.md says each time what changed and why.

**Inputs.** A number is in the unit named with the input (mm, MPa, N, degC, deg, kg ...); text
carries its own unit: "80 mm", "3.125 in", "3 1/8 in", "4 thou", "120 psi", "350 degF". Steam
pressure is gauge pressure unless the text says abs: "135 psi abs". The decimal sign is a point.
What is not given is chosen, and `chosen` says what and why. Leave out what you do not know: null is
refused.

**Answers.** Every figure has its value, unit, symbol and the key of its method, which /v1/methods
explains with formula, range and source. With `units=inch` in the address, of a GET or a POST,
figures, tables, drawings and cards come back in inch units. An impossible design is an answer, not
an error: its findings say what to change. What cannot be worked at all is refused with
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


def _object(description, properties, required, more=True):
    return {
        "type": "object",
        "description": description,
        "properties": properties,
        "required": list(required),
        "additionalProperties": more,
    }


def _ref(name):
    return {"$ref": "#/components/schemas/" + name}


def _list_of(name, description):
    return {"type": "array", "items": _ref(name), "description": description}


_TEXT = {"type": "string"}
_NUMBER = {"type": "number"}

_PART = {
    "figures": {"type": "object", "additionalProperties": _ref("Figure")},
    "findings": _list_of("Finding", "every check, good ones too"),
}
_FOR_THE_WHOLE = {
    "chosen": _list_of("Choice", "every default taken"),
    "cautions": _list_of("Caution", "they defer to local rules"),
}
JOB_PARTS = ("sizing", "tooling", "stock", "route")

SCHEMAS = {
    "Quantity": _object(
        "A number with its unit.", {"value": _NUMBER, "unit": _UNIT}, ("value", "unit")
    ),
    "Working": _object(
        "A number put into a formula.",
        {"symbol": _TEXT, "value": _NUMBER_OR_LIST, "unit": _UNIT},
        ("symbol", "value", "unit"),
    ),
    "Figure": _object(
        "A result.",
        {
            "value": _NUMBER,
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
            "check": {"type": "string", "description": "which check, a fixed key"},
            "outcome": {"type": "string", "enum": [GOOD, WATCH, STOP]},
            "value": _ref("Quantity"),
            "limit": _ref("Quantity"),
            "why": _TEXT,
            "remedy": {"type": "string", "description": "what to change; empty when good"},
        },
        ("check", "outcome", "why", "remedy"),
    ),
    "Choice": _object(
        "An input that was not given: what was taken, and the rule that took it.",
        {"input": _TEXT, "value": _NUMBER_OR_LIST, "unit": _UNIT, "why": _TEXT},
        ("input", "value", "unit", "why"),
    ),
    "Caution": _object(
        "A caution to show where the work is shown.",
        {"key": _TEXT, "text": _TEXT},
        ("key", "text"),
    ),
    "Answer": _object(
        "Figures by name, with what was checked, chosen and to be careful of; some calculations "
        "add lists of their own (operations, tools, series ...).",
        {**_PART, **_FOR_THE_WHOLE},
        ("figures", "findings", "chosen", "cautions"),
    ),
    "Part": _object(
        "One part of a job: its figures, its checks and its own lists.",
        _PART,
        ("figures", "findings"),
    ),
    "JobAnswer": _object(
        "The parts of a job, each as the calculation of its name answers; the findings here are "
        "those of all parts that are not good, the gravest first.",
        {
            **{name: _ref("Part") for name in JOB_PARTS},
            "findings": _PART["findings"],
            **_FOR_THE_WHOLE,
        },
        (*JOB_PARTS, "findings", "chosen", "cautions"),
    ),
    "ReferenceList": {
        "type": "object",
        "description": "Lists by name; each number with its unit and the key of its source.",
        "additionalProperties": {"type": "array", "items": {"type": "object"}},
    },
    "ErrorEntry": _object(
        "One thing that is wrong.",
        {
            "path": {
                "type": "array",
                "items": {"anyOf": [{"type": "string"}, {"type": "integer"}]},
                "description": "names and indexes from the top; empty for the whole request",
            },
            "pointer": {"type": "string", "description": "the path as JSON Pointer (RFC 6901)"},
            "code": _TEXT,
            "message": {"type": "string", "description": "what is wrong"},
            "remedy": {"type": "string", "description": "what to do about it"},
            "value": _ref("Quantity"),
            "lowest": _ref("Quantity"),
            "highest": _ref("Quantity"),
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
            "type": {"type": "string", "format": "uri-reference"},
            "title": _TEXT,
            "status": {"type": "integer"},
            "detail": _TEXT,
            "code": {"type": "string", "enum": list(KINDS)},
            "errors": {**_list_of("ErrorEntry", "at least one"), "minItems": 1},
        },
        ("type", "title", "status", "detail", "code", "errors"),
    ),
    **text_schemas(),
}

PROBLEM_LIST = _object(
    "Every kind of problem.",
    {
        "problems": {
            "type": "array",
            "items": _object(
                "One kind of problem.",
                {"code": _TEXT, "status": {"type": "integer"}, "title": _TEXT, "remedy": _TEXT},
                ("code", "status", "title", "remedy"),
            ),
        }
    },
    ("problems",),
)
_PROBLEM_CONTENT = {MEDIA_TYPE: {"schema": _ref("Problem")}}
_ETAG_HEADERS = {
    "ETag": {"schema": _TEXT, "description": "changes only with the service's code"},
    "Cache-Control": {"schema": _TEXT},
}
RESPONSES = {
    "Problem%d" % status: {
        "description": "; or: ".join(k.title for k in KINDS.values() if k.status == status),
        "content": _PROBLEM_CONTENT,
    }
    for status in sorted({kind.status for kind in KINDS.values()})
}
RESPONSES["NotModified"] = {"description": "You hold this answer already."}


def problems_of(*statuses):
    """The responses of an operation that may be refused with those statuses."""
    return {
        str(status): {"$ref": "#/components/responses/Problem%d" % status} for status in statuses
    }


def kept(schema, description, media_type="application/json"):
    """The responses of a GET whose answer caches may keep."""
    return {
        "200": {
            "description": description,
            "content": {media_type: {"schema": schema}},
            "headers": _ETAG_HEADERS,
        },
        "304": {"$ref": "#/components/responses/NotModified"},
    }


def _answer(calculation):
    return _ref("JobAnswer" if calculation.name == "job" else "Answer")


def post_operation(calculation, options, body):
    """What `Blueprint.doc` needs for the POST of a calculation; options and body are schemas."""
    return {
        "summary": calculation.summary,
        "operationId": "work_" + calculation.name.replace("-", "_"),
        "parameters": [{"in": "query", "schema": options}],
        "requestBody": {"required": True, "content": {"application/json": {"schema": body}}},
        "responses": {
            "200": {
                "description": "The answer.",
                "content": {"application/json": {"schema": _answer(calculation)}},
            },
            **problems_of(400, 406, 413, 414, 415, 422, 500),
        },
    }


def get_operation(calculation, query):
    """What `Blueprint.doc` needs for the GET of a calculation; query is a schema."""
    return {
        "summary": calculation.summary + " (the same by address)",
        "operationId": "get_" + calculation.name.replace("-", "_"),
        "parameters": [{"in": "query", "schema": query}],
        "responses": {
            **kept(_answer(calculation), "The answer, which any cache may keep."),
            **problems_of(406, 414, 422, 500),
        },
    }


def list_operation(calculation, query):
    """What `Blueprint.doc` needs for a reference list."""
    return {
        "summary": calculation.summary,
        "operationId": "list_" + calculation.name.replace("-", "_"),
        "parameters": [{"in": "query", "schema": query}],
        "responses": {
            **kept(_ref("ReferenceList"), "The list, which any cache may keep."),
            **problems_of(406, 414, 422, 500),
        },
    }


def without_strays(spec):
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
    "info": {"description": DESCRIPTION},
    "servers": [{"url": "/", "description": "the service that gave you this document"}],
}
VERSION = __version__
