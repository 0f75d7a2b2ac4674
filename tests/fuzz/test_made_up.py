"""Requests made up by chance: a short run over every address, and faults that it must find."""

import random

import pytest
from flask import Response

from fuzz import made_up
from fuzz.made_up import OPERATIONS, SPEC, Run, made, wrong


def test_a_short_run_finds_nothing_wrong():
    """The long one is run by hand: tests/fuzz/made_up.py."""
    one = Run(5)
    assert one.run(600) is None
    # Neither all refused nor all taken.
    assert one.answered[200] > 150
    assert one.answered[422] > 150


def test_what_takes_no_job_answers_as_it_stands():
    """GET /v1/methods.csv failed: no test had asked for it without anything."""
    client = Run(0).client
    for method, path in OPERATIONS:
        if method == "get" and not made_up.fields_of(path):
            request = made_up.Request((method, path), "GET", path, {}, None, {})
            answer = request.send(client)
            # A service has a shop only where it was given one.
            status = 404 if path == "/v1/shop" else 200
            assert (answer.status_code, wrong(request, answer)) == (status, None), path


def test_every_address_is_asked():
    """By the weights as they are, and of a job's inputs all."""
    dice = random.Random(1)
    asked = {path for _, path in OPERATIONS}
    assert asked == set(SPEC["paths"])
    for operation in OPERATIONS:
        fields = made_up.fields_of(operation[1])
        sent = set()
        for _ in range(100 if fields else 0):
            sent |= set(made_up.job(operation[1], dice))
        assert {entry.name for entry in fields if entry.required} <= sent, operation


FAILED = [
    (500, "application/problem+json", b"{}"),
    (200, "text/html", b"<p>"),
    (200, "application/json", b'{"figures": 3}'),
    (201, "application/json", b"{}"),
    (422, "text/html", b"<p>no</p>"),
    (422, "application/problem+json", b'{"title": "no"}'),
    (404, "application/problem+json", b'{"title": "%s"}' % (b"x" * 100_000)),
]


@pytest.mark.parametrize(("status", "kind", "body"), FAILED)
def test_a_wrong_answer_is_seen(status, kind, body):
    request = made(("post", "/v1/sizing"), random.Random(2))
    assert wrong(request, Response(body, status, mimetype=kind)) is not None
