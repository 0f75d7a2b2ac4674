"""What cannot be worked is refused: right status, one shape, the field named, a remedy given."""

import json
import time

import pytest

from contract.bad_inputs import CASES
from ringwright.api.problems import KINDS, MEDIA_TYPE

# Far above what a refusal takes, far below what a hang takes.
LONGEST_REFUSAL = 2.0


def send(client, request):
    """The response to one of the requests in bad_inputs."""
    body = request.get("body")
    if body is not None and not isinstance(body, bytes):
        body = json.dumps(body).encode()
    headers = {}
    if "accept" in request:
        headers["Accept"] = request["accept"]
    if "encoding" in request:
        headers["Content-Encoding"] = request["encoding"]
    return client.open(
        request["path"],
        method=request["method"],
        query_string=request.get("query", ""),
        data=body,
        content_type=request.get("content_type", "application/json"),
        headers=headers,
    )


def check_problem(response, status):
    """The problem document of a response, once it is known to be one."""
    assert response.status_code == status, response.get_data(as_text=True)[:300]
    assert response.mimetype == MEDIA_TYPE
    assert response.headers["Cache-Control"] == "no-store"
    problem = response.get_json()
    assert sorted(problem) == ["code", "detail", "errors", "status", "title", "type"]
    assert problem["status"] == status
    assert problem["title"] == KINDS[problem["code"]].title
    assert problem["type"] == "/v1/problems#" + problem["code"]
    assert problem["errors"]
    for error in problem["errors"]:
        assert {"code", "message", "path", "pointer", "remedy"} <= set(error)
        assert error["message"]
        assert error["remedy"]
        assert (error["message"] + error["remedy"]).isprintable()
        assert len(error["message"]) < 500
    return problem


@pytest.mark.parametrize(
    ("request_", "status", "code", "path"),
    [pytest.param(*case, id=name) for name, *case in CASES],
)
def test_refused(client, request_, status, code, path):
    start = time.perf_counter()
    response = send(client, request_)
    assert time.perf_counter() - start < LONGEST_REFUSAL
    problem = check_problem(response, status)
    assert (code, path) in [(error["code"], error["path"]) for error in problem["errors"]]


def test_there_are_enough_of_them():
    assert len(CASES) >= 150
    assert len({name for name, *_ in CASES}) == len(CASES)


def test_every_fault_is_told_at_once_in_the_order_of_the_fields(client):
    response = client.post(
        "/v1/sizing",
        json={"steam_pressure": "120", "rings": 0, "bore": "80 cubits", "nothing": 1, "relief": 2},
    )
    problem = check_problem(response, 422)
    assert [error["path"] for error in problem["errors"]] == [
        ["nothing"],
        ["bore"],
        ["rings"],
        ["steam_pressure"],
        ["relief"],
    ]


def test_a_pointer_escapes_as_its_standard_says(client):
    problem = check_problem(client.post("/v1/sizing", json={"bore": 80, "a/b~c": 1}), 422)
    assert problem["errors"][0]["pointer"] == "/a~1b~0c"  # RFC 6901, section 3


def test_the_method_not_allowed_says_which_are(client):
    response = client.delete("/v1/sizing")
    assert {"GET", "POST", "HEAD", "OPTIONS"} == set(response.headers["Allow"].split(", "))


def test_a_failure_of_ours_is_told_without_its_inside(caplog):
    from ringwright.api import create_app
    from ringwright.core.calculations import Calculation
    from ringwright.core.catalogue import NOTHING

    def broken(values):
        words = "secret" + " inside"
        raise ZeroDivisionError(words)

    app = create_app({"sizing": Calculation("sizing", "Broken", (), broken, NOTHING)})
    response = app.test_client().get("/v1/sizing")
    problem = check_problem(response, 500)
    assert "secret" not in json.dumps(problem)
    assert "ZeroDivisionError" in caplog.text and "in broken" in caplog.text
    # The words of an error may hold somebody's figures.
    assert "secret" not in caplog.text


def test_a_calculation_that_gives_no_number_is_a_failure_and_not_an_answer():
    from ringwright.api import create_app
    from ringwright.core.calculations import Calculation
    from ringwright.core.catalogue import NOTHING

    app = create_app(
        {"sizing": Calculation("sizing", "s", (), lambda v: {"a": float("nan")}, NOTHING)}
    )
    check_problem(app.test_client().get("/v1/sizing"), 500)
