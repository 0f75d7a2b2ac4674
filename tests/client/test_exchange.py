"""What app and service hand each other: job files by the published schema, links either way."""

import base64
import json
import subprocess
import zlib

import jsonschema
import pytest
import requests
import zxingcpp
from PIL import Image

from client.conftest import Sheet


@pytest.fixture(scope="module")
def schema(root):
    return json.loads((root / "openapi" / "job.schema.json").read_text(encoding="utf-8"))


def test_the_demo_as_a_file_keeps_to_the_schema(sheet, schema):
    sheet.ready().kept().go("book")
    with sheet.page.expect_download() as waiting:
        sheet.page.get_by_role("button", name="File of Launch engine Marigold").click()
    saved = json.loads(waiting.value.path().read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator(schema).validate(saved)
    described = set(schema["$defs"]["job"]["properties"])
    for job in saved["jobs"]:
        assert set(job) <= described, "openapi/job.schema.json does not describe all of a job"


def test_a_job_in_a_link_keeps_to_the_schema(sheet, schema):
    sheet.enter("Bore", "63 mm").ready().kept().go("book")
    sheet.page.get_by_role("button", name="Link or code for Launch engine Marigold").click()
    packed = sheet.page.get_by_label("Link", exact=True).input_value().rpartition("/")[2]
    data = base64.urlsafe_b64decode(packed + "=" * (-len(packed) % 4))
    job = json.loads(zlib.decompress(data, -zlib.MAX_WBITS))
    jsonschema.Draft202012Validator(schema).validate(job)
    assert job["job"]["inputs"]["bore"] == "63 mm"


def test_the_code_on_the_route_card_opens_its_job(context, served, tmp_path):
    card = requests.get(
        served + "/v1/route.pdf",
        params={"bore": "2 1/2 in", "steam_pressure": "0.9", "job_name": "Pump, port side"},
        timeout=60,
    )
    assert card.status_code == 200
    (tmp_path / "card.pdf").write_bytes(card.content)
    subprocess.run(
        ["pdftoppm", "-r", "150", "-gray", "-l", "1", "card.pdf", "card"], cwd=tmp_path, check=True
    )
    picture = Image.open(next(tmp_path.glob("card-*.pgm"))).convert("L")
    link = zxingcpp.read_barcodes(picture)[0].text
    assert link.startswith(served + "/#")
    page = context.new_page()
    opened = Sheet(page, served)
    page.goto(link)
    opened.ready()
    assert page.get_by_label("Bore", exact=True).input_value() == "2 1/2"
    assert "Pump, port side" in page.locator(".head-names").inner_text()
    assert opened.complaints == []
