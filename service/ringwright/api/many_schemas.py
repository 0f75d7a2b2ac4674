"""What the specification says of POST /v1/many."""

from collections.abc import Iterable

from marshmallow import Schema

from ..named_types import Document
from . import documents, limits
from .answer_schemas import described, ref


def schemas_of(names: Iterable[str]) -> dict[str, Document]:
    """Name and JSON Schema. names: of the calculations that may be asked for."""
    return {
        "ManyJob": {
            **_object(
                "One job.",
                {
                    "calculation": {"type": "string", "description": "one of: " + ", ".join(names)},
                    "inputs": described("Anything", "the body of its own POST"),
                },
                ("calculation", "inputs"),
            ),
            "additionalProperties": False,
        },
        "ManyAnswer": _object(
            "What a call of its own would answer; paths begin at inputs.",
            {
                "status": {"type": "integer", "description": "of HTTP"},
                "answer": described("Anything", "where there is one"),
                "problem": described("Problem", "in its place"),
            },
            ("status",),
        ),
    }


def operation(options: type[Schema]) -> Document:
    """What `Blueprint.doc` needs. options: schema of the query."""
    jobs: Document = {"type": "array", "items": ref("ManyJob")}
    jobs.update({"minItems": 1, "maxItems": limits.MOST_JOBS})
    answers = {"type": "array", "items": ref("ManyAnswer")}
    return {
        "summary": "Many calculations in one request",
        "operationId": "work_many",
        "parameters": [{"in": "query", "schema": options}],
        "requestBody": {"required": True, "content": {"application/json": {"schema": jobs}}},
        "responses": {**documents.told(answers), **documents.PROBLEMS},
    }


def _object(description: str, properties: Document, required: Iterable[str]) -> Document:
    return {
        "type": "object",
        "description": description,
        "properties": properties,
        "required": list(required),
    }
