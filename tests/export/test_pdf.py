"""PDF read back: the words by pypdf and pdftotext, the page as a picture by pdftoppm."""

import io
import json
import random
import shutil
import subprocess
import zlib
from base64 import urlsafe_b64decode

import pypdf
import pytest
import zxingcpp
from PIL import Image, ImageChops

JOB = {
    "bore": "3 1/8 in",
    "steam_pressure": "120 psi",
    "rings": "3",
    "job_name": "Launch engine Marigold",
    "owner": "Fernhollow Steam Club",
}
SIZES = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}
POINTS_PER_MM = 72 / 25.4
poppler = pytest.mark.skipif(not shutil.which("pdftoppm"), reason="poppler-utils is not installed")


def fetched(client, path, **query):
    answer = client.get("/v1/" + path, query_string={**JOB, **query})
    assert answer.status_code == 200, answer.data
    assert answer.mimetype == "application/pdf"
    return answer.data


def pages(data):
    return pypdf.PdfReader(io.BytesIO(data)).pages


def rendered(data, folder, resolution=72):
    """Every page as a grey picture, drawn by pdftoppm."""
    (folder / "page.pdf").write_bytes(data)
    subprocess.run(
        ["pdftoppm", "-r", str(resolution), "-gray", "page.pdf", "page"], cwd=folder, check=True
    )
    return [Image.open(path).convert("L") for path in sorted(folder.glob("page-*.pgm"))]


def words(data, folder):
    (folder / "words.pdf").write_bytes(data)
    found = subprocess.run(
        ["pdftotext", "-layout", "words.pdf", "-"], cwd=folder, check=True, capture_output=True
    )
    return " ".join(found.stdout.decode("utf-8").split())


def ink(picture):
    """Box of all that is not white, as shares of the page."""
    box = ImageChops.invert(picture).point(lambda value: 255 if value > 60 else 0).getbbox()
    wide, high = picture.size
    return box[0] / wide, box[1] / high, box[2] / wide, box[3] / high


@pytest.mark.parametrize("paper", SIZES)
@pytest.mark.parametrize("ring_type", ["double-turn", "plain"])
def test_route_card_has_every_operation_and_size(client, paper, ring_type):
    job = {"bore": JOB["bore"], "steam_pressure": JOB["steam_pressure"], "ring_type": ring_type}
    data = fetched(client, "route.pdf", paper=paper, ring_type=ring_type)
    found = pages(data)
    wide, high = SIZES[paper]
    for page in found:
        assert float(page.mediabox.width) == pytest.approx(wide * POINTS_PER_MM, abs=0.01)
        assert float(page.mediabox.height) == pytest.approx(high * POINTS_PER_MM, abs=0.01)
    text = " ".join(" ".join(page.extract_text().split()) for page in found)
    card = client.post("/v1/route", json=job).get_json()
    assert 3 <= len(found) <= 12
    for operation in card["operations"]:
        assert operation["title"] in text
        for size in operation["sizes"]:
            assert size["label"] in text
            if "limits" in size:
                assert "%.3f" % (int(size["limits"]["upper"]["value"] * 1000 + 1e-6) / 1000) in text
    for key in ("pressure-system", "hot-work", "stored-spring"):
        caution = next(one["text"] for one in card["cautions"] if one["key"] == key)
        assert caution.split(":")[0] in text
    assert JOB["job_name"] in text and JOB["owner"] in text
    assert "Measured" in text and "Ring 2" in text
    assert "page %d of %d" % (len(found), len(found)) in text


@poppler
def test_words_can_be_taken_from_the_page(client, tmp_path):
    text = words(fetched(client, "route.pdf"), tmp_path)
    assert "Route card" in text and "Launch engine Marigold" in text
    drawings = words(fetched(client, "drawings/former.pdf"), tmp_path)
    tools = client.post(
        "/v1/tooling", json={"bore": JOB["bore"], "steam_pressure": JOB["steam_pressure"]}
    ).get_json()["tools"]
    limits = next(one for one in tools if one["tool"] == "former")["sizes"][0]["limits"]
    assert "%.3f" % (int(limits["upper"]["value"] * 1000 + 1e-6) / 1000) in drawings


@poppler
@pytest.mark.parametrize("paper", SIZES)
def test_every_page_has_ink_and_keeps_its_margins(client, paper, tmp_path):
    for path in ("drawings.pdf", "route.pdf"):
        folder = tmp_path / path
        folder.mkdir()
        pictures = rendered(fetched(client, path, paper=paper), folder)
        assert len(pictures) >= 5
        for picture in pictures:
            left, top, right, bottom = ink(picture)
            # Printers leave up to 5 mm white; centring marks reach to there.
            assert left >= 4.5 / 210 and right <= 1 - 4.5 / 216
            assert top >= 4.5 / 297 and bottom <= 1 - 4.5 / 297
            assert right - left > 0.5


@poppler
def test_full_size_is_full_size_on_paper(client, tmp_path):
    """The rule of the template, measured on the picture of the page at 300 points an inch."""
    picture = rendered(fetched(client, "drawings/template.pdf"), tmp_path, 300)[0]
    wide, high = picture.size
    dark = picture.point(lambda value: 255 if value < 128 else 0)
    best = 0
    for y in range(int(0.05 * high), int(0.12 * high)):
        row = dark.crop((int(0.11 * wide), y, int(0.9 * wide), y + 1))
        box = row.getbbox()
        if box and row.histogram()[255] == box[2] - box[0]:
            best = max(best, box[2] - box[0])
    # 4 in is the longer of the two rules; lines are half a millimetre wide with round ends.
    assert best * 25.4 / 300 == pytest.approx(101.6 + 0.5, abs=0.2)


@poppler
def test_the_code_opens_the_job_in_the_app(client, tmp_path):
    picture = rendered(fetched(client, "route.pdf"), tmp_path, 150)[0]
    codes = [code.text for code in zxingcpp.read_barcodes(picture)]
    assert len(codes) == 1
    address, _, fragment = codes[0].partition("#")
    assert address == "http://localhost/"
    screen, way, packed = fragment.split("/")
    assert (screen, way) == ("ring", "s")
    data = urlsafe_b64decode(packed + "=" * (-len(packed) % 4))
    job = json.loads(zlib.decompress(data, -zlib.MAX_WBITS))
    assert job["format"] == "ringwright-job"
    assert job["job"]["name"] == "Launch engine Marigold"
    assert job["job"]["inputs"] == {"bore": "3 1/8 in", "steam_pressure": "120 psi", "rings": "3"}


def test_a_bare_number_travels_with_its_unit(client):
    from ringwright.core.fields import checked
    from ringwright.core.making import tooling
    from ringwright.export import job_link

    values = checked(tooling.FIELDS, {"bore": 79.375, "steam_pressure": 0.8, "relief": 0.85})
    job = job_link.job_of(
        "x", tooling.FIELDS, {"bore": "79.375", "steam_pressure": "1 atm"}, values
    )
    assert job["job"]["inputs"] == {
        "bore": "79.375 mm",
        "steam_pressure": "0.8 MPa",
        "relief": "0.85",
    }


def test_all_drawings_stand_in_one_document(client):
    found = pages(fetched(client, "drawings.pdf"))
    text = [" ".join(page.extract_text().split()) for page in found]
    for title in ("Ring in its bore", "Blank", "Set former", "Clamp mandrel", "Piston and grooves"):
        assert any(title in one for one in text)


def test_names_in_other_letters_do_not_stop_the_press(client):
    for name in ("\u0141\u00f3d\u017a 5", "\u30dd\u30f3\u30d7", "a\u202eb"):
        text = pages(fetched(client, "drawings/former.pdf", job_name=name))[0].extract_text()
        assert "Set former" in text
    assert (
        "L\u00f3d\u017a 5".replace("\u017a", "z")
        in pages(fetched(client, "drawings/former.pdf", job_name="\u0141\u00f3d\u017a 5"))[
            0
        ].extract_text()
    )
    text = pages(fetched(client, "route.pdf", job_name="<b>&amp;</b>"))[0].extract_text()
    assert "<b>&amp;</b>" in text


def test_the_same_address_gives_the_same_bytes(client):
    for path in ("route.pdf", "drawings/pot.pdf"):
        assert fetched(client, path) == fetched(client, path)


def test_a_job_too_long_for_a_code_says_so(client):
    """A code on the card is 36 mm wide: a longer job would have cells that no telephone can see."""
    # What deflate cannot shorten: no letter follows from the one before.
    dice = random.Random(5)
    name = "".join(chr(dice.randrange(0x4E00, 0x9000)) for _ in range(200))
    text = pages(fetched(client, "route.pdf", job_name=name))[0].extract_text()
    assert "too long for a code" in " ".join(text.split())
    assert "too long" not in pages(fetched(client, "route.pdf"))[0].extract_text()
