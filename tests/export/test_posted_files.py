"""Every file can be had by POST: the same bytes as by GET, and lists that no address carries."""

import io

import pypdf
import pytest

from contract.test_bad_inputs import check_problem
from export.test_job_in_pdf import attached

INPUTS = {"bore": "3 1/8 in", "steam_pressure": "120 psi", "rings": 3}
SHEET = {"units": "inch", "job_name": "Marigold", "date": "2 May"}
PATHS = (
    "route.pdf",
    "drawings.pdf",
    "drawings/former.pdf",
    "drawings/former.svg",
    "drawings/former.dxf",
    "sizing.csv",
)
# CSV is about the answer and not a sheet with names.
OPTIONS = {"sizing.csv": {"units": "inch", "list": "findings"}}


def letters(response):
    """The text of a PDF."""
    assert response.status_code == 200, response.get_data(as_text=True)[:500]
    pages = pypdf.PdfReader(io.BytesIO(response.data), strict=True).pages
    return "\n".join(page.extract_text() for page in pages)


@pytest.mark.parametrize("path", PATHS)
def test_post_gives_the_bytes_of_get(client, path):
    options = OPTIONS.get(path, SHEET)
    fetched = client.get("/v1/" + path, query_string={**INPUTS, **options})
    posted = client.post("/v1/" + path, json=INPUTS, query_string=options)
    assert posted.status_code == 200, posted.get_data(as_text=True)[:500]
    assert posted.data == fetched.data
    for name in ("Content-Type", "Content-Disposition"):
        assert posted.headers[name] == fetched.headers[name]
    # What was posted is nobody's to keep.
    assert posted.headers["Cache-Control"] == "no-store"


def test_the_lathes_own_speeds_reach_the_card(client):
    """One speed is all this lathe has, so every turning operation is told to run at it."""
    inputs = {**INPUTS, "spindle_speeds": [37]}
    assert "37" not in letters(client.post("/v1/route.pdf", json=INPUTS)).split()
    assert "37" in letters(client.post("/v1/route.pdf", json=inputs)).split()


def test_a_posted_card_holds_its_job_in_the_words_it_was_given(client):
    posted = client.post("/v1/route.pdf", json=INPUTS, query_string=SHEET)
    [job] = attached(posted.data)["jobs"]
    assert job["name"] == "Marigold"
    assert job["inputs"]["bore"] == "3 1/8 in"
    assert job["inputs"]["rings"] == "3"


def test_a_list_in_the_address_is_sent_to_the_body(client):
    response = client.get("/v1/route.pdf?bore=80&spindle_speeds=37")
    entry = check_problem(response, 422)["errors"][0]
    assert entry["path"] == ["spindle_speeds"]
    assert "POST" in entry["remedy"]


def test_what_is_about_the_sheet_is_sent_to_the_address(client):
    response = client.post("/v1/route.pdf", json={**INPUTS, "paper": "A4"})
    entry = check_problem(response, 422)["errors"][0]
    assert entry["path"] == ["paper"]
    assert "/v1/route.pdf?paper=" in entry["remedy"]


def test_bad_inputs_are_refused_as_everywhere(client):
    response = client.post("/v1/drawings/former.svg", json={"bore": "80 cubits"})
    assert check_problem(response, 422)["errors"][0]["path"] == ["bore"]
    response = client.post("/v1/drawings/former.svg", json={})
    assert check_problem(response, 422)["errors"][0]["code"] == "required"
    response = client.post("/v1/drawings/boiler.svg", json=INPUTS)
    assert "ring-closed" in check_problem(response, 404)["errors"][0]["remedy"]


def test_every_file_takes_post(client):
    paths = client.get("/openapi.json").get_json()["paths"]
    files = [path for path, item in paths.items() if "/v1/" in path and "." in path]
    # What rests on no inputs is read and not worked.
    lists = {"/v1/%s.csv" % name for name in ("materials", "sealings", "methods")}
    assert {path for path in files if "post" not in paths[path]} == lists
