"""A sheet brings its job back: the PDF's attachment, read by programs that are not ours."""

import io
import json
import shutil
import subprocess

import jsonschema
import pypdf
import pytest

from ringwright.export import job_in_pdf

JOB = {
    "bore": "3 1/8 in",
    "steam_pressure": "120 psi",
    "rings": "3",
    "end_cut": "square",
    "job_name": "Marigold é (endstream) \\",
}
PATHS = ("route.pdf", "drawings.pdf", "drawings/former.pdf")


def fetched(client, path, **query):
    answer = client.get("/v1/" + path, query_string={**JOB, **query})
    assert answer.status_code == 200, answer.data
    return answer.data


def attached(data):
    reader = pypdf.PdfReader(io.BytesIO(data), strict=True)
    [(name, [content])] = reader.attachments.items()
    assert name == job_in_pdf.FILE_NAME
    return json.loads(content)


@pytest.mark.parametrize("path", PATHS)
def test_a_pdf_holds_the_job_by_the_published_schema(client, root, path):
    schema = json.loads((root / "openapi" / "job.schema.json").read_text(encoding="utf-8"))
    held = attached(fetched(client, path))
    jsonschema.Draft202012Validator(schema).validate(held)
    [job] = held["jobs"]
    assert job["name"] == JOB["job_name"]
    assert job["inputs"]["bore"] == "3 1/8 in"
    assert job["inputs"]["steam_pressure"] == "120 psi"


@pytest.mark.parametrize("path", PATHS)
def test_a_sheet_made_of_the_job_within_is_the_same_sheet(client, path):
    first = fetched(client, path)
    [job] = attached(first)["jobs"]
    again = client.get("/v1/" + path, query_string={**job["inputs"], "job_name": job["name"]})
    assert again.data == first


@pytest.mark.parametrize("path", PATHS)
def test_it_is_the_source_of_the_document(client, path):
    """ISO 32000-2, 14.13 (from memory): AF of the catalogue, AFRelationship of the file."""
    root = pypdf.PdfReader(io.BytesIO(fetched(client, path)), strict=True).trailer["/Root"]
    [described] = root["/AF"]
    assert described.get_object()["/AFRelationship"] == "/Source"
    stream = described.get_object()["/EF"]["/F"].get_object()
    assert stream["/Subtype"] == "/application/json"
    assert stream["/Params"]["/Size"] == len(stream.get_data())


@pytest.mark.parametrize("name", [JOB["job_name"], 'stream {"format":"ringwright-job",', "é"])
@pytest.mark.parametrize("path", PATHS)
def test_whoever_has_no_pdf_library_finds_it_by_its_lead(client, path, name):
    data = fetched(client, path, job_name=name)
    lead = job_in_pdf.LEAD.encode()
    assert data.count(lead) == 1
    line = data[data.index(lead) + len("stream\n") :].split(b"\n", 1)[0]
    assert json.loads(line) == attached(data)


@pytest.mark.skipif(not shutil.which("pdfdetach"), reason="poppler-utils is not installed")
@pytest.mark.parametrize("path", PATHS)
def test_poppler_takes_it_out(client, path, tmp_path):
    data = fetched(client, path)
    (tmp_path / "sheet.pdf").write_bytes(data)
    told = subprocess.run(
        ["pdfdetach", "-save", "1", "-o", "job.json", "sheet.pdf"],
        cwd=tmp_path,
        check=True,
        capture_output=True,
    )
    assert not told.stderr
    assert json.loads((tmp_path / "job.json").read_bytes()) == attached(data)
