"""Every input of every calculation at its limits, a hair beyond them, and of a kind that it is not.

What to send is read from the specification alone; the rest of a request is one of its examples. At
a limit: an answer, or a refusal of the job as a whole that the specification knows. Beyond it: a
refusal that names the input. Never a failure of ours, and never an answer unlike its schema.
"""

import jsonschema_rs
import pytest

from ringwright.api import create_app
from ringwright.api.app import specification

SPEC = specification(create_app())
POSTED = [
    path
    for path, item in SPEC["paths"].items()
    if "post" in item and "." not in path and not path.endswith("/many")
]
# Of a kind that no single input takes, lists and lone values apart; some are lists of their own.
NEVER = ({"value": 80}, [["80"]], "80 mm; drop", True)


def _followed(node):
    while "$ref" in node:
        _, _, group, name = node["$ref"].split("/")
        node = SPEC["components"][group][name]
    return node


def _validator(operation):
    """Of the answers of an operation. In a language that is fast: a sheet is a large answer."""
    schema = _followed(operation["responses"]["200"])["content"]["application/json"]["schema"]
    return jsonschema_rs.validator_for({**schema, "components": SPEC["components"]})


def _number(schema):
    """The bounds of an input that takes a number, or None."""
    for one in schema.get("anyOf", [schema]):
        one = _followed(one)
        if one.get("type") in ("number", "integer"):
            return one
    return None


def _steps(one):
    """(inside the limits, outside them) of a number's schema: two lists."""
    whole = one["type"] == "integer"
    inside, outside = [], []
    for end, sign in (("minimum", -1), ("maximum", 1)):
        for open_, key in ((False, end), (True, "exclusive" + end.capitalize())):
            if key not in one:
                continue
            limit = one[key]
            step = 1 if whole else 1e-6 * max(abs(limit), 1e-3)
            inside.append(limit - sign * step if open_ else limit)
            outside.append(limit if open_ else limit + sign * step)
    if whole and inside:
        outside.append(inside[0] + 0.5)
    return inside, outside


def _to_send(schema):
    """(taken, refused) of an input: lists of values."""
    number = _number(schema)
    if number is not None:
        inside, outside = _steps(number)
        return inside, [*outside, *NEVER]
    if "enum" in schema:
        return schema["enum"], ["no such choice", 1, *NEVER]
    if schema.get("type") == "boolean":
        return [True, False], [2, ["true"], {"value": True}]
    if schema.get("type") == "array":
        return [], [{"value": 80}, 3, [None] * (schema.get("maxItems", 1) + 1)]
    return [], [{"value": 80}, [["80"]]]


def _names(problem, name):
    return any(name in str(error["path"]) for error in problem["errors"])


@pytest.mark.slow
@pytest.mark.parametrize("path", POSTED)
def test_what_is_posted_at_every_limit(client, path):
    operation = SPEC["paths"][path]["post"]
    content = operation["requestBody"]["content"]["application/json"]
    fits = _validator(operation)
    example = next(iter(content["examples"].values()))["value"]
    for name, entry in _followed(content["schema"])["properties"].items():
        taken, refused = _to_send(_followed(entry))
        assert refused
        for value in taken:
            reply = client.post(path, json={**example, name: value})
            said = "%s %r: %s" % (name, value, reply.get_data(as_text=True)[:300])
            # In its range, but perhaps not together with the rest of the job.
            assert reply.status_code in (200, 422), said
            assert reply.status_code == 422 or fits.is_valid(reply.get_json()), said
        for value in refused:
            reply = client.post(path, json={**example, name: value})
            said = "%s %r: %s" % (name, value, reply.get_data(as_text=True)[:300])
            assert reply.status_code == 422, said
            assert any(name in str(error["path"]) for error in reply.get_json()["errors"]), said
