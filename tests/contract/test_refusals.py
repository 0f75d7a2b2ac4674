"""A refusal names the field, says the limits in the caller's own unit, and stays small."""

import json

import pytest

from ringwright.core import calculations
from ringwright.core.fields import bound_words, field, likely_unit
from ringwright.core.problems import InputProblem


def refused(client, address, body):
    response = client.post(address, json=body)
    assert response.status_code == 422, response.data
    return response.get_json()["errors"][0]


# What was asked, what is said of it, the unit of the numbers, the unit offered.
CASES = [
    ({"bore": "9999 in"}, "bore is 9999 in", "give 0.394 to 35.4 in", "in", "thou"),
    ({"bore": "80 in"}, "bore is 80 in", "did you mean 80 mm?", "in", "mm"),
    ({"bore": 3.125}, "bore is 3.125 mm (0.1230 in)", "did you mean 3.125 in?", "mm", "in"),
    ({"bore": "2 7/8 mm"}, "bore is 2 7/8 mm", "did you mean 2 7/8 in?", "mm", "in"),
    (
        {"bore": 9999},
        "bore is 9999 mm (393.7 in)",
        "give 10 to 900 mm (0.394 to 35.4 in)",
        "mm",
        "thou",
    ),
    ({"bore": 80, "steam_pressure": 120}, "steam_pressure is 120 MPa", "120 psi?", "MPa", "psi"),
    (
        {"bore": 80, "steam_pressure": "900 bar"},
        "steam_pressure is 900 bar",
        "900 psi?",
        "bar",
        "psi",
    ),
    ({"bore": 80, "steam_temperature": 700}, "700 degC (1292 degF)", "700 degF?", "degC", "degF"),
    ({"bore": 80, "modulus": 110}, "modulus is 110 MPa", "110 GPa?", "MPa", "GPa"),
    ({"bore": 80, "rings": 0}, "rings is 0", "give 1 to 200", "1", None),
]


@pytest.mark.parametrize(("body", "message", "remedy", "unit", "likely"), CASES)
def test_it_speaks_in_the_unit_that_was_given(client, body, message, remedy, unit, likely):
    error = refused(client, "/v1/sizing", body)
    assert message in error["message"]
    assert remedy in error["remedy"]
    for name in ("value", "lowest", "highest"):
        assert error[name]["unit"] == unit
    assert error.get("likely") == likely
    # One thing once: what is wrong is not said again by the remedy.
    assert "outside what" not in error["message"]


def test_the_limits_as_numbers_are_those_of_the_specification(client):
    error = refused(client, "/v1/sizing", {"bore": "40 in"})
    assert error["value"] == {"value": 40.0, "unit": "in"}
    assert error["lowest"]["value"] * 25.4 == pytest.approx(10.0, rel=1e-12)
    assert error["highest"]["value"] * 25.4 == pytest.approx(900.0, rel=1e-12)


@pytest.mark.parametrize("text", ["0.394 in", "35.4 in"])
def test_a_limit_that_is_told_will_do(client, text):
    assert client.post("/v1/sizing", json={"bore": text}).status_code == 200


def test_bounds_are_rounded_to_their_inner_side():
    assert bound_words(-13.778549, True) == "-13.7"
    assert bound_words(290.0754, False) == "290"
    assert bound_words(0.39370, True) == "0.394"
    assert bound_words(900.0, False) == "900"


@pytest.mark.parametrize("value", [1e9, 1e307, -1e307, 1.7e308, 1e-300])
@pytest.mark.parametrize("name", ["bore", "steam_pressure", "modulus"])
def test_a_number_beyond_measure_is_an_error_and_no_failure(name, value):
    with pytest.raises(InputProblem) as caught:
        calculations.run("sizing", {"bore": 80.0, name: value})
    assert caught.value.faults[0].code == "range"


def test_a_unit_is_offered_only_where_the_number_would_do():
    size = field("x", "length", "m", lowest=10.0, highest=900.0)
    assert likely_unit(size, 3.125) == "in"
    assert likely_unit(size, 5000.0) == "thou"
    assert likely_unit(size, 1e9) == ""
    assert likely_unit(size, -3.0) == ""


def test_inner_entries_are_told_in_their_unit_too(client):
    body = {"readings": [{"diameter": "80 mm"}, {"diameter": "99 in", "direction": 90}]}
    error = refused(client, "/v1/bore-survey", body)
    assert error["path"] == ["readings", 1, "diameter"]
    assert "99 in" in error["message"] and error["highest"]["unit"] == "in"


@pytest.mark.parametrize(
    ("calculation", "request_", "name", "limit"),
    [
        ("sizing", {"bore": 60.0, "radial_thickness": 20.0}, "radial_thickness", 10.0),
        (
            "running",
            {"bore": 60.0, "stroke": 80.0, "radial_thickness": 20.0},
            "radial_thickness",
            10.0,
        ),
        ("sizing", {"bore": 80.0, "piston_diameter": 90.0}, "piston_diameter", 80.0),
        ("running", {"bore": 80.0, "stroke": 80.0, "back_pressure": 0.9}, "back_pressure", 0.7),
    ],
)
def test_what_does_not_go_together_carries_its_limit(calculation, request_, name, limit):
    with pytest.raises(InputProblem) as caught:
        calculations.run(calculation, request_)
    fault = caught.value.faults[0]
    assert fault.path == (name,)
    assert fault.value == request_[name]
    assert fault.highest == pytest.approx(limit)


@pytest.mark.parametrize(
    "body",
    [
        {"bore": 80, "k" * 900_000: 1},
        {"bore": 80, "a": {"k" * 900_000: 1}},
        {"bore": 80, "ring_type": "k" * 900_000},
        {"bore": "k" * 900_000},
        {"bore": 80, **{"k%d" % at: 1 for at in range(9000)}},
        {"bore": 80, "\x07" * 90_000: 1},
    ],
)
def test_a_refusal_stays_small(client, body):
    """A name of 990 kB came back in five megabytes."""
    response = client.post("/v1/sizing", data=json.dumps(body), content_type="application/json")
    assert response.status_code == 422
    assert len(response.data) < 80_000


def test_a_saw_wider_than_the_gap_is_refused_by_name_everywhere(client):
    """route.pdf and the spacer's drawing gave a 422 that named no field; the rest answered."""
    asked = "bore=80&ring_type=plain&end_kerf=8"
    for address in ("sizing", "tooling", "route", "job", "route.pdf", "drawings/spacer.svg"):
        response = client.get("/v1/%s?%s" % (address, asked))
        assert response.status_code == 422, address
        (error,) = response.get_json()["errors"]
        assert error["path"] == ["end_kerf"]
        most = error["highest"]["value"]
    for saw, status in ((0.99 * most, 200), (1.01 * most, 422)):
        address = "/v1/drawings/spacer.svg?bore=80&ring_type=plain&end_kerf=%r" % saw
        assert client.get(address).status_code == status


@pytest.mark.parametrize("value", [1e307, -1e307])
def test_a_count_beyond_measure_is_refused_and_no_failure(client, value):
    error = refused(client, "/v1/sizing", {"bore": 80, "rings": value})
    assert error["value"] == {"value": value, "unit": "1"}
