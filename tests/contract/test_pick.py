"""The option `figures`: the same figures, what is not good and the cautions, in under 4 kB."""

import json

import pytest

from contract.test_bad_inputs import check_problem
from ringwright.api.pick import names_of
from ringwright.core.calculations import CALCULATIONS

# What a small device can hold of an answer, its headers among it [bytes].
ROOM = 4096
WITH_FIGURES = [name for name, one in CALCULATIONS.items() if names_of(one.answer)]


@pytest.fixture(scope="module")
def requests(root):
    """(calculation, request) of tests/vectors/requests.json that have figures."""
    path = root / "tests" / "vectors" / "requests.json"
    found = json.loads(path.read_text(encoding="utf-8"))
    return [(o["calculation"], o["request"]) for o in found if o["calculation"] in WITH_FIGURES]


def all_figures(answer):
    """Name to figure, parts included."""
    found = dict(answer.get("figures", {}))
    for part in answer.values():
        if isinstance(part, dict) and "figures" in part:
            found.update(part["figures"])
    return found


def room_of(response):
    """Bytes that an answer takes with its headers."""
    return len(str(response.headers).encode()) + len(response.data)


def test_they_are_those_of_the_whole_answer(client, requests):
    asked = set()
    for name, request in requests:
        whole = client.post("/v1/%s?working=true" % name, json=request)
        if whole.status_code != 200:
            continue
        content = whole.get_json()
        figures = all_figures(content)
        for some in (list(figures)[:1], list(figures)[-3:]):
            query = {"figures": ",".join(some), "working": "true"}
            short = client.post("/v1/" + name, json=request, query_string=query).get_json()
            assert short["figures"] == {one: figures[one] for one in some}
            assert list(short["figures"]) == some
            expected = [one for one in content["findings"] if one["outcome"] != "good"]
            assert short["findings"] == expected
            assert short["cautions"] == content["cautions"]
            assert set(short) == {"figures", "findings", "cautions"}
        asked.add(name)
    assert asked == set(WITH_FIGURES)


def test_a_small_device_can_hold_them(client, requests):
    sizes = []
    for name, request in requests:
        names = names_of(CALCULATIONS[name].answer)
        query = {"figures": ",".join(names[:2])}
        response = client.post("/v1/" + name, json=request, query_string=query)
        if response.status_code == 200:
            sizes.append(room_of(response))
    assert len(sizes) > 60
    assert max(sizes) < ROOM


def test_get_and_post_and_units(client):
    asked = "units=inch&figures=closed_gap,free_gap"
    fetched = client.get("/v1/sizing?bore=80&" + asked)
    assert fetched.data == client.post("/v1/sizing?" + asked, json={"bore": 80}).data
    figures = fetched.get_json()["figures"]
    assert list(figures) == ["closed_gap", "free_gap"]
    assert figures["free_gap"]["unit"] == "in"
    whole = client.get("/v1/sizing?bore=80&units=inch").get_json()["figures"]
    assert figures["free_gap"] == whole["free_gap"]
    other = client.get("/v1/sizing?bore=80&units=inch")
    assert fetched.headers["ETag"] != other.headers["ETag"]


def test_a_figure_of_other_cases_is_not_there(client):
    """A plain ring that is spread has no former: the name is known, the figure is not."""
    query = "bore=80&ring_type=plain&figures=former_ratio,free_gap"
    response = client.get("/v1/sizing?" + query)
    whole = client.get("/v1/sizing?bore=80&ring_type=plain").get_json()
    assert "former_ratio" not in whole["figures"]
    assert list(response.get_json()["figures"]) == ["free_gap"]


@pytest.mark.parametrize(
    ("asked", "remedy"),
    [
        ("free_gapp", "did you mean free_gap"),
        ("gap_free,free_gap", "free_gap"),
        ("freegap", "free_gap"),
        ("zzzz", "use any of: radial_thickness"),
        ("", "use any of: radial_thickness"),
        ("free_gap,,closed_gap", "use any of: radial_thickness"),
        ("x" * 150, "use any of: radial_thickness"),
    ],
)
def test_a_name_that_is_none_is_answered_with_those_near_it(client, asked, remedy):
    for response in (
        client.get("/v1/sizing", query_string={"bore": "80", "figures": asked}),
        client.post("/v1/sizing", json={"bore": 80}, query_string={"figures": asked}),
    ):
        problem = check_problem(response, 422)
        entry = problem["errors"][0]
        assert entry["path"] == ["figures"]
        assert remedy in entry["remedy"], entry


def test_every_name_at_fault_is_told(client):
    response = client.get("/v1/sizing?bore=80&figures=free_gap,free_gop,closed_gop")
    assert len(check_problem(response, 422)["errors"]) == 2


def test_what_has_no_figures_has_no_such_option(client):
    for path in ("/v1/materials?figures=a", "/v1/drawing?bore=80&part=former&figures=a"):
        entry = check_problem(client.get(path), 422)["errors"][0]
        assert (entry["path"], entry["code"]) == (["figures"], "unknown-field")


def test_in_a_body_it_is_sent_to_the_address(client):
    response = client.post("/v1/sizing", json={"bore": 80, "figures": "free_gap"})
    entry = check_problem(response, 422)["errors"][0]
    assert entry["path"] == ["figures"]
    assert "/v1/sizing?figures=" in entry["remedy"]


def test_a_name_means_one_figure_in_an_answer():
    """Parts are laid together, so no two may have a figure of one name."""
    for name in WITH_FIGURES:
        names = names_of(CALCULATIONS[name].answer)
        assert len(set(names)) == len(names), name


def test_the_specification_says_it_once(client):
    spec = client.get("/openapi.json").get_json()
    held = spec["components"]["parameters"]
    assert [key for key, one in held.items() if one["name"] == "figures"] == ["Figures"]
    for name in WITH_FIGURES:
        item = spec["paths"]["/v1/" + name]
        where = item["parameters"] if "get" in item else item["post"]["parameters"]
        assert {"$ref": "#/components/parameters/Figures"} in where, name
    assert "figures=" in spec["info"]["description"]
