"""One word, `units`, for what comes back, whatever form it comes back in."""

import io
import re

import ezdxf
import pypdf
import pytest

JOB = {"bore": "3 1/8 in", "steam_pressure": "120 psi"}
# An inch is 25.4 mm: the bore of the job in both, as a drawing or card writes it.
BORE = {"metric": "79.375", "inch": "3.125"}


def words(path, data):
    if path.endswith(".pdf"):
        return " ".join(page.extract_text() for page in pypdf.PdfReader(io.BytesIO(data)).pages)
    return data.decode("utf-8")


@pytest.mark.parametrize(
    "path",
    ["drawings/ring-closed.svg", "drawings/ring-closed.dxf", "drawings/ring-closed.pdf"]
    + ["drawings.pdf", "route.pdf", "drawing?part=ring-closed"],
)
@pytest.mark.parametrize("units", list(BORE))
def test_every_file_takes_units(client, path, units):
    path, _, part = path.partition("?part=")
    query = {**JOB, "units": units} | ({"part": part} if part else {})
    answer = client.get("/v1/" + path, query_string=query)
    assert answer.status_code == 200, answer.data
    text = words(path, answer.data)
    if path.endswith(".svg"):
        text = " ".join(re.findall(">([^<]+)<", text))
    if part:
        text = " ".join(re.findall(">([^<]+)<", answer.get_json()["sheets"][0]["svg"]))
    other = next(name for name in BORE if name != units)
    assert BORE[units] in text
    assert BORE[other] not in text


@pytest.mark.parametrize(
    ("query", "code"),
    # $INSUNITS of the DXF reference: 1 inches, 4 millimetres.
    [
        ({}, 4),
        ({"units": "inch"}, 1),
        ({"units": "inch", "model_unit": "mm"}, 4),
        ({"model_unit": "inch"}, 1),
    ],
)
def test_a_model_is_in_the_units_that_come_back_unless_told(client, query, code):
    answer = client.get("/v1/drawings/former.dxf", query_string={**JOB, **query})
    model = ezdxf.read(io.StringIO(answer.data.decode("utf-8")))
    assert model.header["$INSUNITS"] == code


def test_no_address_has_another_word_for_it(client):
    spec = client.get("/openapi.json").get_json()
    paths, told = spec["paths"], spec["components"]["parameters"]
    seen = 0
    for path, entry in paths.items():
        for method in ("get", "post"):
            if (
                method not in entry
                or not path.startswith("/v1/")
                or path in ("/v1/problems", "/v1/shop")
            ):
                continue
            both = entry.get("parameters", []) + entry[method].get("parameters", [])
            references = [one["$ref"] for one in both]
            names = [told[one.rpartition("/")[2]]["name"] for one in references]
            assert "units" in names, path
            assert "dimensions" not in names, path
            seen += 1
    assert seen > 40


def test_a_part_that_is_not_drawn_is_answered_with_those_that_are(client):
    answer = client.get("/v1/drawings/boiler.pdf?bore=80")
    assert answer.status_code == 404
    assert "ring-closed" in answer.get_json()["errors"][0]["remedy"]


def test_a_method_that_is_not_taken_is_answered_with_those_that_are(client):
    answer = client.get("/v1/stock?bore=80")
    assert set(answer.headers["Allow"].split(", ")) == {"OPTIONS", "POST"}
    assert answer.get_json()["errors"][0]["remedy"] == "use one of: OPTIONS, POST"
