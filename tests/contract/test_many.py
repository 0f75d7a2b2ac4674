"""POST /v1/many: each job is answered, to the byte, as a call of its own; and all is bounded."""

import json
import logging
from collections import OrderedDict

import jsonschema
import pytest

from contract.test_bad_inputs import check_problem
from ringwright.api import create_app, lane, limits, many
from ringwright.api.pick import names_of
from ringwright.core.calculations import CALCULATIONS, Calculation
from ringwright.core.catalogue import NOTHING

SIZING = {"calculation": "sizing", "inputs": {"bore": 80}}


@pytest.fixture(scope="module")
def jobs(root):
    """Every request of tests/vectors/requests.json that can be posted, as jobs."""
    path = root / "tests" / "vectors" / "requests.json"
    names = many.names_of(CALCULATIONS)
    return [
        {"calculation": one["calculation"], "inputs": one["request"]}
        for one in json.loads(path.read_text(encoding="utf-8"))
        if one["calculation"] in names
    ]


def asked(client, jobs, query="", status=200):
    response = client.post("/v1/many" + query, json=jobs)
    assert response.status_code == status, response.get_data(as_text=True)[:500]
    return response


def batches(jobs, size=30):
    """So few at once that none is too much."""
    return [jobs[at : at + size] for at in range(0, len(jobs), size)]


def piece_of(single):
    """What stands in the place of a job that alone is answered so."""
    said = b"answer" if single.status_code == 200 else b"problem"
    return b'{"status":%d,"%s":%s}' % (single.status_code, said, single.data)


def joined(pieces):
    return b"[" + b",".join(pieces) + b"]"


@pytest.mark.parametrize("query", ["", "?units=inch&working=true"])
def test_each_is_answered_as_by_a_call_of_its_own(client, jobs, query):
    """Byte for byte, so that no figure differs in any digit."""
    assert len(jobs) > 80
    answered = 0
    for batch in batches(jobs):
        singles = [
            client.post("/v1/" + job["calculation"] + query, json=job["inputs"]) for job in batch
        ]
        answered += sum(one.status_code == 200 for one in singles)
        assert asked(client, batch, query).data == joined(map(piece_of, singles))
    assert answered > 60


def test_figures_are_picked_as_by_a_call_of_its_own(client, jobs):
    jobs = [job for job in jobs if names_of(CALCULATIONS[job["calculation"]].answer)]
    for batch in batches(jobs):
        names = list(
            OrderedDict.fromkeys(
                name
                for job in batch
                for name in names_of(CALCULATIONS[job["calculation"]].answer)[:2]
            )
        )
        pieces = []
        for job in batch:
            known = names_of(CALCULATIONS[job["calculation"]].answer)
            query = {"figures": ",".join(name for name in names if name in known)}
            single = client.post(
                "/v1/" + job["calculation"], json=job["inputs"], query_string=query
            )
            pieces.append(piece_of(single))
        assert asked(client, batch, "?figures=" + ",".join(names)).data == joined(pieces)


def test_answers_stand_in_order_and_problems_in_their_place(client):
    given = [
        SIZING,
        {"calculation": "sizing", "inputs": {"bore": "80 cubits"}},
        {"calculation": "sizingg", "inputs": {}},
        {"calculation": "materials", "inputs": {}},
        7,
        {"calculation": "sizing", "inputs": {"bore": 80}, "rings": 3},
        {"calculation": "sizing"},
        {"calculation": "sizing", "inputs": None},
        {"inputs": {"bore": 80}},
        {"calculation": ["sizing"], "inputs": {}},
        {"calculation": "sizing", "inputs": {"bore": 81}},
    ]
    answers = asked(client, given).get_json()
    assert [one["status"] for one in answers] == [200] + [422] * 9 + [200]
    single = client.post("/v1/sizing", json={"bore": "80 cubits"}).get_json()
    assert answers[1]["problem"] == single
    places = [one["problem"]["errors"][0]["path"] for one in answers[2:-1]]
    calculation = ["calculation"]
    assert places == [calculation, calculation, [], ["rings"], ["bore"], [], *[calculation] * 2]
    assert answers[2]["problem"]["errors"][0]["remedy"] == "did you mean sizing or fitting?"
    assert answers[0]["answer"]["figures"] != answers[-1]["answer"]["figures"]


def test_it_fits_its_schema(client, jobs):
    spec = client.get("/openapi.json").get_json()
    operation = spec["paths"]["/v1/many"]["post"]
    held = operation["requestBody"]["content"], operation["responses"]["200"]["content"]
    body, answer = (
        jsonschema.Draft202012Validator(
            {**one["application/json"]["schema"], "components": spec["components"]}
        )
        for one in held
    )
    given = [jobs[0], jobs[40], {"calculation": "sizing", "inputs": {"bore": 1}}]
    body.validate(given)
    for query in ("", "?working=true&figures=free_gap"):
        answer.validate(asked(client, given, query).get_json())
    for bad in ([], [SIZING] * (limits.MOST_JOBS + 1), [{"calculation": "sizing"}], {}):
        assert not body.is_valid(bad)


@pytest.mark.parametrize(
    ("body", "code"),
    [
        ({}, "list"),
        ({"jobs": [SIZING]}, "list"),
        ("sizing", "list"),
        ([], "list-length"),
        ([SIZING] * (limits.MOST_JOBS + 1), "list-length"),
    ],
)
def test_a_body_that_is_none_is_refused_whole(client, body, code):
    entry = check_problem(client.post("/v1/many", json=body), 422)["errors"][0]
    assert (entry["path"], entry["code"]) == ([], code)
    assert "calculation" in entry["remedy"]


def test_a_name_of_no_calculation_that_is_asked_is_refused(client):
    entry = check_problem(asked(client, [SIZING], "?figures=free_gapp", 422), 422)["errors"][0]
    assert entry["path"] == ["figures"]
    assert "free_gap" in entry["remedy"]
    # It is a figure of stock, which nobody asks for here.
    asked(client, [SIZING], "?figures=bar_length", 422)
    bars = {"calculation": "bars", "inputs": {}}
    entry = check_problem(asked(client, [bars], "?figures=free_gap", 422), 422)["errors"][0]
    assert entry["remedy"] == "leave it out"
    both = asked(client, [SIZING, bars], "?figures=free_gap").get_json()
    assert list(both[0]["answer"]["figures"]) == ["free_gap"]
    assert both[1]["answer"]["figures"] == {}


def test_what_costs_too_much_is_refused_before_it_is_spent(client, monkeypatch):
    def never(*given):
        raise AssertionError("it was worked")

    monkeypatch.setattr(many, "content_of", never)
    heavy = {
        "sets": [{"outside_diameter": 60, "inside_diameter": 45, "part_length": 3.1, "count": 3}]
        * 20,
        "bars": [{"diameter": 130, "length": 71 + at} for at in range(20)],
        "cutting_effort": "thorough",
    }
    few = limits.MOST_WORK // 400
    assert few < limits.MOST_JOBS
    given = [{"calculation": "stock", "inputs": heavy}] * int(few + 1)
    problem = check_problem(asked(client, given, "", 422), 422)
    assert problem["code"] == "too-much"


def test_answers_that_are_too_large_are_refused(client, monkeypatch):
    monkeypatch.setattr(limits, "LARGEST_ANSWER", 25_000)
    assert len(asked(client, [SIZING] * 2).data) > 15_000
    problem = check_problem(asked(client, [SIZING] * 3, "", 422), 422)
    assert problem["code"] == "too-much"
    assert len(asked(client, [SIZING] * 3, "?figures=free_gap").data) < 5_000


def test_a_thousand_go_into_one_request(client):
    given = [
        {"calculation": "sizing", "inputs": {"bore": 40 + 0.1 * at}}
        for at in range(limits.MOST_JOBS)
    ]
    answers = asked(client, given, "?figures=closed_gap").get_json()
    assert {one["status"] for one in answers} == {200}
    gaps = [one["answer"]["figures"]["closed_gap"]["value"] for one in answers]
    assert len(gaps) == limits.MOST_JOBS and gaps == sorted(gaps)


def test_a_failure_of_one_is_no_failure_of_the_others(caplog):
    def work(values):
        if not calls.pop():
            raise ZeroDivisionError
        return OrderedDict((("figures", OrderedDict()), ("findings", []), ("cautions", [])))

    calls = [1, 0, 1]
    app = create_app({"bars": Calculation("bars", "s", CALCULATIONS["bars"].fields, work, NOTHING)})
    with caplog.at_level(logging.CRITICAL, "ringwright"):
        response = asked(app.test_client(), [{"calculation": "bars", "inputs": {}}] * 3)
    answers = response.get_json()
    assert [one["status"] for one in answers] == [200, 500, 200]
    assert answers[1]["problem"]["code"] == "internal-error"


def test_heavy_ones_go_by_the_lane(monkeypatch):
    """Few light jobs are worked at once; many are a piece of heavy work, by their sum."""
    seen = []
    app = create_app()
    held = app.extensions["ringwright"]["lane"]
    run = held.run
    monkeypatch.setattr(held, "run", lambda cost, work: seen.append(cost) or run(cost, work))
    asked(app.test_client(), [SIZING] * 3)
    assert max(seen) <= lane.HEAVY
    seen.clear()
    asked(app.test_client(), [SIZING] * 100)
    assert seen[-1] == 100 > lane.HEAVY
