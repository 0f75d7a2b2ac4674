"""PDF read back: the words by pypdf and pdftotext, the page as a picture by pdftoppm."""

import io
import json
import random
import re
import shutil
import subprocess
import zlib
from base64 import urlsafe_b64decode
from decimal import ROUND_HALF_UP, Decimal
from pathlib import Path

import pypdf
import pytest
import zxingcpp
from PIL import Image, ImageChops

from ringwright.export import page_text
from ringwright.export.page_pictures import Picture

JOB = {
    "bore": "3 1/8 in",
    "steam_pressure": "120 psi",
    "rings": "3",
    "job_name": "Launch engine Marigold",
    "owner": "Fernhollow Steam Club",
}
SIZES = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}
CARDS = {**SIZES, "A5": (148.0, 210.0), "half-letter": (139.7, 215.9)}
POINTS_PER_MM = 72 / 25.4
DROID = "/usr/share/fonts/truetype/droid/DroidSansFallbackFull.ttf"
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


def squeezed(text):
    """Without spaces: readers guess them where the face changes."""
    return "".join(text.split())


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
    assert "Measured" in text and "Ring 1" in text
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
    # 4 in is the longer of the two rules; lines are a quarter of a millimetre wide with round ends.
    assert best * 25.4 / 300 == pytest.approx(101.6 + 0.25, abs=0.2)


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


NAMES = ("Łódź 5", "Čapí hnízdo", "Локомобиль", "Ατμομηχανή", "Õ’Şçğ Ő")


def needs_signs():
    if not Path(DROID).is_file():
        pytest.skip("no face with the signs of East Asia on this machine")


@pytest.mark.parametrize("path", ["route.pdf", "drawings/former.pdf"])
@pytest.mark.parametrize("name", [*NAMES, "蒸気ポンプ", "汽机 7"])
def test_a_name_in_any_letters_is_that_name_on_paper(client, path, name, tmp_path):
    """Read back by two programs, as text and (poppler) through the embedded face's own table."""
    if name not in NAMES:
        needs_signs()
    data = fetched(client, path, job_name=name, owner=name)
    assert squeezed(name) in squeezed(pages(data)[0].extract_text())
    if shutil.which("pdftotext"):
        assert squeezed(words(data, tmp_path)).count(squeezed(name)) >= 2
    assert pypdf.PdfReader(io.BytesIO(data)).metadata.author == name
    for page in pages(data):
        for face in page["/Resources"]["/Font"].values():
            described = face.get_object()
            standard = described["/BaseFont"] in ("/Helvetica", "/Helvetica-Bold")
            assert standard or "/FontFile2" in described["/FontDescriptor"]


@poppler
def test_the_letters_on_the_page_are_those_of_the_name(client, tmp_path):
    """What is printed, not what the file says is printed: ink where the name stands, and other ink
    for another name of the same length."""
    seen = []
    for name in ("Łódź", "Lodz", "Ļõđž"):
        folder = tmp_path / name
        folder.mkdir()
        seen.append(rendered(fetched(client, "drawings/former.pdf", job_name=name), folder, 100)[0])
    assert ImageChops.difference(seen[0], seen[1]).getbbox()
    assert ImageChops.difference(seen[0], seen[2]).getbbox()


@pytest.mark.parametrize("name", ["مضخة", "משאבה", "ปั๊ม", "pump 🜨"])
@pytest.mark.parametrize("field", ["job_name", "owner", "date"])
def test_letters_that_cannot_be_set_are_refused_by_name(client, name, field):
    """A name set letter by letter in a script whose letters join would be another name."""
    for path in ("route.pdf", "drawings/former.pdf", "drawings.pdf"):
        answer = client.get("/v1/" + path, query_string={**JOB, field: name})
        assert answer.status_code == 422
        error = answer.get_json()["errors"][0]
        assert error["path"] == [field]
        assert "letters" in error["remedy"]
    # As a drawing to show it is the browser's letters that count.
    answer = client.get("/v1/drawings/former.svg", query_string={**JOB, field: name})
    assert answer.status_code == 200


def test_marks_in_a_name_are_only_letters(client):
    text = pages(fetched(client, "route.pdf", job_name="<b>&amp;</b>"))[0].extract_text()
    assert "<b>&amp;</b>" in text
    assert (
        "a b"
        in pages(fetched(client, "drawings/former.pdf", job_name="a\u202eb"))[0].extract_text()
    )


@pytest.mark.parametrize("ring_type", ["double-turn", "plain"])
def test_every_operation_has_its_picture_beside_it(client, monkeypatch, ring_type):
    drawn = []
    draw = Picture.draw

    def noted(picture, ink, *place):
        drawn.append((picture.sheet.title, ink.canvas.getPageNumber()))
        draw(picture, ink, *place)

    monkeypatch.setattr(Picture, "draw", noted)
    found = pages(fetched(client, "route.pdf", ring_type=ring_type, rings="3"))
    job = {"bore": JOB["bore"], "steam_pressure": JOB["steam_pressure"], "ring_type": ring_type}
    card = client.post("/v1/route", json={**job, "rings": 3}).get_json()
    assert [title for title, _ in drawn] == [one["title"] for one in card["operations"]]
    for title, page in drawn:
        assert title in " ".join(found[page - 1].extract_text().split())


@pytest.mark.parametrize("rings", [1, 2, 7, 12, 13, 40])
def test_every_ring_of_the_batch_has_its_box(client, rings):
    """Up to twelve beside each size; beyond, a row each on a sheet at the end."""
    text = [
        " ".join(page.extract_text().split())
        for page in pages(fetched(client, "route.pdf", rings=str(rings)))
    ]
    if rings <= 12:
        card = " ".join(text)
        assert "Every ring as it was measured" not in card
        for ring in range(2, rings + 1):
            assert str(ring) in re.findall("[0-9]+", card)
    else:
        sheets = [one for one in text if "Every ring as it was measured" in one]
        assert sheets
        rows = re.findall("[0-9]+", " ".join(sheets))
        assert all(str(ring) in rows for ring in range(1, rings + 1))


@pytest.mark.parametrize("rings", [1, 3, 12])
def test_a_double_turn_card_takes_few_pages(client, rings):
    """Nine of them, half empty, are four too many to carry to the lathe."""
    assert len(pages(fetched(client, "route.pdf", rings=str(rings)))) <= (8 if rings > 3 else 6)


@pytest.mark.parametrize("paper", CARDS)
def test_the_card_fits_its_paper(client, paper, tmp_path):
    data = fetched(client, "route.pdf", paper=paper, rings="4")
    wide, high = CARDS[paper]
    for page in pages(data):
        assert float(page.mediabox.width) == pytest.approx(wide * POINTS_PER_MM, abs=0.01)
        assert float(page.mediabox.height) == pytest.approx(high * POINTS_PER_MM, abs=0.01)
    if shutil.which("pdftoppm"):
        for picture in rendered(data, tmp_path):
            left, top, right, bottom = ink(picture)
            assert left >= 5 / wide and right <= 1 - 5 / wide
            assert top >= 5 / high and bottom <= 1 - 5 / high


def test_no_operation_is_torn(client):
    """Title, words and sizes of each operation stand on one page."""
    for rings in ("1", "12"):
        text = [
            " ".join(page.extract_text().split())
            for page in pages(fetched(client, "route.pdf", rings=rings))
        ]
        card = client.post(
            "/v1/route",
            json={
                "bore": JOB["bore"],
                "steam_pressure": JOB["steam_pressure"],
                "rings": int(rings),
            },
        ).get_json()
        for operation in card["operations"]:
            page = next(
                one for one in text if "%d %s" % (operation["number"], operation["title"]) in one
            )
            assert operation["text"] in page
            assert operation["check"] in page
            for size in operation["sizes"]:
                assert size["label"] in page


def test_clearances_are_printed_with_the_digits_they_need(client):
    """0.0016 in must not come as 0.002: that is a fifth too much. What the answer says, to the
    nearest 0.0001 in or 0.001 mm, on the card and on the drawing alike."""
    for units, factor, places in (("inch", 1 / 25.4, 4), ("metric", 1.0, 3)):
        job = {"bore": JOB["bore"], "steam_pressure": JOB["steam_pressure"]}
        figures = client.post("/v1/sizing", json=job).get_json()["figures"]
        clearance = figures["side_clearance"]["value"] * factor
        gap = figures["closed_gap"]["value"] * factor
        card = " ".join(
            page.extract_text() for page in pages(fetched(client, "route.pdf", units=units))
        )
        drawn = pages(fetched(client, "drawings/cylinder-section.pdf", units=units))[
            0
        ].extract_text()
        for value in (clearance, gap):
            digits = Decimal(repr(value)).quantize(Decimal(1).scaleb(-places), ROUND_HALF_UP)
            assert str(digits) in card
        digits = Decimal(repr(clearance)).quantize(Decimal(1).scaleb(-places), ROUND_HALF_UP)
        assert str(digits) in drawn


def test_the_same_address_gives_the_same_bytes(client):
    for path in ("route.pdf", "drawings/pot.pdf"):
        assert fetched(client, path) == fetched(client, path)


def test_a_card_does_not_mind_what_was_printed_before_it(client):
    """Texts broken into lines are kept: for another paper they are broken anew."""
    first = fetched(client, "route.pdf", paper="A4")
    for paper in ("A5", "Letter", "half-letter"):
        other = fetched(client, "route.pdf", paper=paper, rings=3)
        assert other != first
    for kept in (page_text._broken, page_text._kept):
        kept.cache_clear()
    assert fetched(client, "route.pdf", paper="A4") == first


def test_a_job_too_long_for_a_code_says_so(client):
    """A code on the card is 36 mm wide: a longer job would have cells that no telephone can see."""
    needs_signs()
    # What deflate cannot shorten: no letter follows from the one before.
    dice = random.Random(5)
    name = "".join(chr(dice.randrange(0x4E00, 0x9000)) for _ in range(200))
    text = pages(fetched(client, "route.pdf", job_name=name))[0].extract_text()
    assert "too long for a code" in " ".join(text.split())
    assert "too long" not in pages(fetched(client, "route.pdf"))[0].extract_text()


MEASURED = [
    {"ring": 1, "end_kerf": "1.2 mm", "bored_inside_diameter": "74.9 mm"},
    {"ring": 2, "end_kerf": "1.05 mm", "free_gap": "6.2 mm"},
    {"ring": 3},
]


def posted(client, rings, **query):
    job = {"bore": JOB["bore"], "steam_pressure": JOB["steam_pressure"]}
    body = {**job, "rings": rings, "measured": MEASURED}
    answer = client.post("/v1/route.pdf", json=body, query_string=query)
    assert answer.status_code == 200, answer.data
    assert answer.mimetype == "application/pdf"
    return answer.data, client.post("/v1/route", json=body).get_json()


@pytest.mark.parametrize("rings, paper", [(3, "A4"), (3, "half-letter"), (9, "A5"), (14, "A4")])
def test_every_ring_s_own_sizes_stand_on_the_card(client, rings, paper):
    """What a ring is to be made to where it is not as for all, and what was measured of it."""
    data, card = posted(client, rings, paper=paper)
    text = " ".join(" ".join(page.extract_text().split()) for page in pages(data))
    nominal = {
        (row["key"], size["name"]): size for row in card["operations"] for size in row["sizes"]
    }
    shown = set()
    for ring in card["rings"]:
        for size in ring["sizes"]:
            if "measured" in size:
                assert "%.3f" % size["measured"]["value"] in text, size["name"]
            other = nominal[size["operation"], size["name"]]
            for end in ("lower", "upper") if "limits" in size else ():
                # Printed to 0.001 mm, rounded into the limits: within one step of each.
                limit = size["limits"][end]["value"]
                if abs(limit - other["limits"][end]["value"]) > 0.002:
                    digits = [round(limit * 1000 + step) / 1000 for step in (-1, 0, 1)]
                    assert any("%.3f" % digit in text for digit in digits), (ring["ring"], size)
                    shown.add((ring["ring"], size["name"]))
    assert {ring for ring, _ in shown} >= {1, 2, 3}
    assert "In the box of a ring" in text
    assert "In the box of a ring" not in pages(fetched(client, "route.pdf"))[0].extract_text()


@pytest.mark.parametrize("paper", CARDS)
def test_no_operation_is_torn_when_rings_have_sizes_of_their_own(client, paper):
    """The head of an operation stands on the page on which its last size does."""
    data, card = posted(client, 3, paper=paper)
    texts = ["".join(page.extract_text().split()) for page in pages(data)]
    for row in card["operations"]:
        head = "".join(("%d%s" % (row["number"], row["title"])).split())
        here = [text for text in texts if head in text]
        assert here, row["title"]
        for size in row["sizes"]:
            label = "".join(size["label"].split())
            assert any(label in text for text in here), (row["key"], label)


def test_the_job_in_the_card_brings_what_was_measured_back(client):
    data, _ = posted(client, 3)
    reader = pypdf.PdfReader(io.BytesIO(data))
    (held,) = [json.loads(part[0]) for part in reader.attachments.values()]
    measured = held["jobs"][0]["measured"]
    assert measured["route/saw-ends/end_kerf"] == "1.2 mm"
    assert measured["route/saw-ends/end_kerf/2"] == "1.05 mm"
    assert measured["route/measure-free-gap/free_gap/2"] == "6.2 mm"


def test_a_card_that_is_posted_without_measures_is_the_one_that_is_fetched(client):
    job = {"bore": "80 mm", "rings": 2}
    sent = client.post("/v1/route.pdf", json=job)
    got = client.get("/v1/route.pdf", query_string=job)
    texts = [[page.extract_text() for page in pages(one.data)] for one in (sent, got)]
    assert texts[0] == texts[1]
    wrong = client.post("/v1/route.pdf", json={"bore": "80 mm", "paper": "A4"})
    assert wrong.status_code == 422
    assert wrong.get_json()["errors"][0]["path"] == ["paper"]


@pytest.mark.parametrize("paper", ["A4", "Letter"])
@pytest.mark.parametrize("ring_type", ["plain", "double-turn"])
def test_the_fitting_card_is_a_card_of_its_own(client, tmp_path, paper, ring_type):
    query = {"paper": paper, "ring_type": ring_type, "fitting_card": "true"}
    card = fetched(client, "route.pdf", **query)
    assert len(pages(card)) <= 4
    text = words(card, tmp_path)
    job = {"bore": JOB["bore"], "steam_pressure": JOB["steam_pressure"], "ring_type": ring_type}
    told = client.post("/v1/fitting", json=job).get_json()
    for row in told["operations"]:
        assert row["title"] in text, row["key"]
    for one in told["signs"]:
        assert one["text"] in text, one["key"]
    assert "Fitting card" in text and "Route card" not in text
