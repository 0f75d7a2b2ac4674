"""Requests made up by chance for every address, from the inputs that a calculation declares:

    PYTHONPATH=service:tests python tests/fuzz/made_up.py --requests 20000

Half begin with an example of the specification. Inputs are put in, taken out and changed: numbers
within their limits, at them and beyond, texts of the grammar of quantities, such texts with a few
letters changed, and values of another kind; and one in ten is spoilt on its way, body or header.
Whatever comes, the answer is one that the specification tells of and has its shape, a refusal is
small and ours, and nothing fails. It ends at the first request that is answered otherwise.
"""

import argparse
import json
import random
import sys
from functools import cache

import jsonschema_rs

from contract import quantity_texts
from ringwright.api import create_app
from ringwright.api.app import specification
from ringwright.core.calculations import CALCULATIONS
from ringwright.core.fields import read_as

SPEC = specification(create_app())
OPERATIONS = [
    (method, path)
    for path, item in SPEC["paths"].items()
    for method in item
    if method in ("get", "post")
]
# No refusal is longer, whatever it refuses [bytes].
LARGEST_REFUSAL = 64_000
# What is wrong with a request as a whole, and with no input of it.
WHOLE = ("type", "list", "list-length")
# Heavy, or the same each time: asked for once where others are ten times.
SELDOM = ("pdf", "/openapi.json", "/v1/problems", "/v1/methods", "/v1/materials", "/v1/many")
METHODS = ("PUT", "DELETE", "PATCH", "OPTIONS", "HEAD", "TRACE")
HEADERS = (
    ("Accept", "text/html"),
    ("Accept", "application/json;q=0, */*;q=0.1"),
    ("Accept", "\u00e9, ;;q=x"),
    ("Accept-Encoding", "gzip;q=nought, br;q=-1"),
    ("Content-Encoding", "gzip"),
    ("Content-Length", "-1"),
    ("If-None-Match", '"x", W/"' + "y" * 300),
    ("Range", "bytes=5-2,-0"),
    ("Origin", "null"),
    ("Host", "[::1"),
    ("X-Forwarded-For", "'; drop"),
    ("X-Request-Id", "\x7f" * 40),
    ("Cookie", "a=" + "b" * 3000),
)


def _followed(node):
    while "$ref" in node:
        _, _, group, name = node["$ref"].split("/")
        node = SPEC["components"][group][name]
    return node


@cache
def _validator(text):
    """Of a schema as JSON text, which is hashable. In a language that is fast."""
    return jsonschema_rs.validator_for({**json.loads(text), "components": SPEC["components"]})


def fields_of(path):
    """The Fields that an address takes; none where it takes no job."""
    name = path.removeprefix("/v1/").partition(".")[0].partition("/")[0]
    return CALCULATIONS[{"drawings": "drawing"}.get(name, name)].fields if name in (
        *CALCULATIONS, "drawings",
    ) else ()  # fmt: skip


@cache
def examples_of(path):
    """Bodies that the specification gives for an address, or for the calculation behind it."""
    plain = "/v1/drawing" if path.startswith("/v1/drawings") else path.partition(".")[0]
    body = SPEC["paths"].get(plain, {}).get("post", {}).get("requestBody")
    if not body:
        return ()
    content = body["content"]["application/json"]
    return tuple(each["value"] for each in content.get("examples", {}).values())


def number(entry, dice):
    """A number for a Field: mostly within its limits, at one, a hair beyond, or of any size."""
    low = 1e-3 if entry.lowest is None else entry.lowest
    high = 1e4 if entry.highest is None else entry.highest
    way = dice.randrange(60)
    if way < 40:
        return low + (high - low) * dice.random() ** 3
    if way < 57:
        return dice.choice((low, high, 10.0 * max(low, high / 1000.0)))
    if way < 59:
        return dice.choice((low - abs(low) * 1e-9, high * (1.0 + 1e-9), -high, low / 2.0))
    return dice.choice((0, -0.0, 1e308, -1e308, 5e-324, 1e-30, 2**53 + 1, 10**40))


def odd(dice):
    """A value that hardly an input takes."""
    return dice.choice(
        (
            None, True, [], {}, "", " ", "x" * dice.choice((3, 300, 3000)), [[["80 mm"]]], [None],
            {"value": 80, "unit": "mm"}, "\u0000", "\ud83d\ude00", "80 mm\u202e", "NaN", -1,
            [{"ring": 1}], {"": {"": ""}}, "__class__", "%s %(x)s {0}", "../../etc/passwd",
        )
    )  # fmt: skip


def given(entry, dice):
    """A value for a Field."""
    if dice.random() < 0.01:
        return odd(dice)
    if entry.kind == "choice":
        return dice.choice(entry.choices) if dice.random() < 0.98 else "no such"
    if entry.kind == "flag":
        return dice.choice((True, False, "true", 1) if dice.random() < 0.02 else (True, False))
    if entry.kind == "text":
        return "A" * (1 + dice.randrange(int(entry.highest or 40)))
    if entry.kind == "object":
        return filled(entry.items, dice)
    if entry.kind == "records":
        most = min(int(entry.highest or 8), 8)
        rows = [filled(entry.items, dice) for _ in range(dice.randrange(most + 1))]
        # A list of bare values has one entry without a name.
        return [row.get("", odd(dice)) for row in rows] if _bare(entry) else rows
    if entry.kind == "count":
        return dice.choice((int(number(entry, dice)), 1, 2, 3))
    if dice.random() < 0.5:
        return number(entry, dice)
    kind = read_as(entry)
    if not quantity_texts.FACTORS.get(kind):
        return str(number(entry, dice))
    if dice.random() < 0.05:
        return quantity_texts.altered(quantity_texts.drawn(kind, dice), dice)
    unit, factor = dice.choice(list(quantity_texts.FACTORS[kind].items()))
    return "%s %s" % (float("%.4g" % (number(entry, dice) / float(factor))), unit)


def _bare(entry):
    return len(entry.items) == 1 and not entry.items[0].name


def filled(fields, dice, most=6):
    """A dict of some of the fields, those that must be there nearly always."""
    some = dice.sample(fields, min(len(fields), dice.randrange(most + 1)))
    must = [entry for entry in fields if entry.required and dice.random() < 0.97]
    return {entry.name: given(entry, dice) for entry in [*must, *some]}


def job(path, dice):
    """A body for an address: an object, for many jobs a list mostly."""
    fields = fields_of(path)
    examples = examples_of(path)
    if examples and (dice.random() < 0.5 or not fields):
        found = json.loads(json.dumps(dice.choice(examples)))
        for name in [name for name in found if dice.random() < 0.1]:
            del found[name]
        found.update(filled(fields, dice, 3))
    else:
        found = filled(fields, dice)
    if path == "/v1/many" and dice.random() < 0.8:
        return [
            {"calculation": name, "inputs": filled(CALCULATIONS[name].fields, dice)}
            for name in dice.choices(list(CALCULATIONS), k=dice.randrange(5))
        ]
    if dice.random() < 0.03:
        found[dice.choice(("boer", "", "x" * 200, "__proto__", "figures"))] = odd(dice)
    return found


class Request:
    """What is sent: method, address, query, body as bytes or None, headers."""

    def __init__(self, operation, method, address, query, body, headers):
        self.operation = operation
        self.method, self.address = method, address
        self.query, self.body, self.headers = query, body, headers

    def __repr__(self):
        return repr((self.method, self.address, self.query, self.body, self.headers))

    def send(self, client):
        return client.open(
            self.address,
            method=self.method,
            query_string=self.query,
            data=self.body,
            headers=self.headers,
        )


def made(operation, dice):
    """A Request by chance to an operation. operation: (method, path)."""
    method, path = operation
    address = path.replace("{part}", dice.choice(_parts() + ("blank-", "..%2f", "\u00e9")))
    sent = job(path, dice)
    headers = {}
    body = query = None
    if method == "post":
        body = json.dumps(sent).encode()
        headers["Content-Type"] = "application/json"
    else:
        query = {
            name: value if isinstance(value, str) else json.dumps(value)
            for name, value in sent.items()
            if not isinstance(value, (list, dict)) or dice.random() < 0.3
        }
        if dice.random() < 0.1 and path.startswith("/v1/"):
            query["figures"] = dice.choice(("free_gap", "wall_pressure,bore", "", "x" * 500))
    if dice.random() < 0.1:
        method, body, query, headers = spoilt(method, body, query, headers, dice)
    return Request(operation, method.upper(), address, query, body, headers)


@cache
def _parts():
    for entry in SPEC["paths"]["/v1/drawings/{part}.svg"]["parameters"]:
        entry = _followed(entry)
        if entry["name"] == "part":
            return tuple(_followed(entry["schema"])["enum"])
    raise LookupError("no list of parts in the specification")


def spoilt(method, body, query, headers, dice):
    """(method, body, query, headers) damaged on the way."""
    way = dice.randrange(8)
    headers = dict(headers)
    if way == 0 and body:
        body = body[: dice.randrange(len(body) + 1)]
    elif way == 1 and body:
        at = dice.randrange(len(body))
        body = body[:at] + bytes([dice.randrange(256)]) + body[at + 1 :]
    elif way == 2:
        headers["Content-Type"] = dice.choice(("text/plain", "", "application/json; charset=x"))
    elif way == 3:
        nested = b"[" * 5000
        body = dice.choice((b"", b"null", b"[]", b'{"bore":NaN}', nested, b'{"bore":1e999}'))
    elif way == 4:
        method = dice.choice(METHODS)
    elif way == 5:
        query = dice.choice(("%", "bore=80&bore=90", "bore=%ff%00", "&" * 4000, "bore"))
    elif way == 6 and body:
        body = body.replace(b"{", b'{"bore": "1 mm", "bore": 2, ', 1)
    else:
        name, value = dice.choice(HEADERS)
        headers[name] = value
    return method, body, query, headers


def wrong(request, answer):
    """What is wrong with an answer, None where nothing is."""
    status = answer.status_code
    told = SPEC["paths"][request.operation[1]][request.operation[0]]["responses"]
    kind = answer.mimetype
    if status >= 500:
        return "failed: %d" % status
    if request.method not in ("GET", "POST"):
        # Of these the specification has none: refused, or answered without a body.
        return None if status in (200, 204, 304) or _is_problem(request, answer) else "no refusal"
    if status >= 400:
        if not _is_problem(request, answer):
            return "a refusal that is not ours"
        errors = answer.json["errors"]
        named = all(error["path"] or error["code"] in WHOLE for error in errors)
        if status == 422 and not named:
            return "a refusal that names no input"
        return None
    if str(status) not in told and str(status) != "308":
        return "a status that is not told: %d" % status
    content = _followed(told[str(status)]).get("content", {})
    if content and kind not in content:
        return "not of a kind that is told: %s" % kind
    if kind == "application/json" and "schema" in content.get(kind, {}):
        fault = next(_validator(json.dumps(content[kind]["schema"])).iter_errors(answer.json), None)
        return None if fault is None else "unlike its schema: %s" % str(fault)[:400]
    return None


def _is_problem(request, answer):
    body = answer.get_data()
    if len(body) > LARGEST_REFUSAL:
        return False
    if request.method == "HEAD":
        return True
    if answer.mimetype != "application/problem+json":
        return False
    content = _followed(SPEC["components"]["responses"]["Refused"])["content"]
    schema = json.dumps(content["application/problem+json"]["schema"])
    return _validator(schema).is_valid(answer.json)


class Run:
    """So many requests, the same for the same seed."""

    def __init__(self, seed, operations=OPERATIONS):
        self.dice = random.Random(seed)
        self.client = create_app().test_client()
        self.operations = operations
        self.weights = [1 if any(each in path for each in SELDOM) else 10 for _, path in operations]
        self.answered = {}

    def run(self, requests, wrong=wrong):
        """(Request, what is wrong) of the first that is answered wrongly, None where none is."""
        for _ in range(requests):
            operation = self.dice.choices(self.operations, self.weights)[0]
            request = made(operation, self.dice)
            try:
                answer = request.send(self.client)
            except UnicodeError:
                # Cannot be sent by anybody.
                continue
            status = answer.status_code
            self.answered[status] = self.answered.get(status, 0) + 1
            found = wrong(request, answer)
            if found:
                return request, "%s: %s" % (found, answer.get_data(as_text=True)[:600])
        return None


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--requests", type=int, default=20_000)
    parser.add_argument("--seed", type=int, default=1)
    asked = parser.parse_args()
    one = Run(asked.seed)
    found = one.run(asked.requests)
    print("answered: %s" % dict(sorted(one.answered.items())))
    if found:
        sys.exit("%r\n%s" % found)


if __name__ == "__main__":
    main()
