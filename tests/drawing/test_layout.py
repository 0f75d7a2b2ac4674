"""Sheets that can be read: no words over one another, nothing off the sheet, lines by ISO 128.

Boxes of text come from the metrics of the face itself, and are compared as shapes with shapely.
"""

import random

import pytest
from reportlab.lib import pagesizes
from reportlab.pdfbase.pdfmetrics import stringWidth
from shapely.geometry import box
from shapely.strtree import STRtree

from drawing import reading
from ringwright.core.calculations import run
from ringwright.core.drawing import letters, tool_views
from ringwright.core.drawing.drawing import settled, sheets_of
from ringwright.core.drawing.entities import Text
from ringwright.core.drawing.setting import composed
from ringwright.core.problems import InputProblem

JOBS = 130
# Texts may touch by the width of a hair: 0.02 mm2.
TOUCH = 0.02
# ISO 128-2 as two open files of line types have it (read): lengths as multiples of the width of the
# line, drawn and blank in turn; line groups of an open drawing programme: narrow is half as wide.
DASHED = (12, 3)
CHAIN = (24, 3, 0.5, 3)
DOUBLE_CHAIN = (24, 3, 0.5, 3, 0.5, 3)
WIDE, NARROW = 0.5, 0.25
SHEETS = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}
# ISO 5455: 50:1 to 1:1000 by 1, 2, 5, as two open lists have it (read).
SCALES = {factor * 10**power for factor in (1, 2, 5) for power in (-2, -1, 0, 1)}


def random_jobs(count):
    """Jobs from 20 to 600 mm bore, both types, made in every way; the same ones each time."""
    chance = random.Random(128)
    for _ in range(count):
        job = {
            "bore": round(20.0 * 30.0 ** chance.random(), 2),
            "ring_type": chance.choice(["plain", "double-turn"]),
            "end_cut": chance.choice(["angled-45", "angled-60", "square", "stepped"]),
            "rings": chance.randint(1, 6),
            "paper": chance.choice(["A4", "Letter", "screen"]),
            "dimensions": chance.choice(["metric", "inch"]),
            "job_name": chance.choice(["", "Launch engine Marigold", "W" * 60]),
            "owner": "Fernhollow Steam Club",
        }
        if chance.random() < 0.5:
            job["steam_pressure"] = round(chance.uniform(0.2, 1.6), 3)
        if chance.random() < 0.3:
            job["setting"] = chance.choice(["bound", "sprung"])
        if chance.random() < 0.3:
            job["finishing"] = "band"
        if chance.random() < 0.3:
            job["ring_width"] = round(job["bore"] * chance.uniform(0.02, 0.12), 2)
        if chance.random() < 0.3:
            job["radial_thickness"] = round(job["bore"] / chance.uniform(22, 38), 2)
        yield job


def drawings(job):
    """(part, sheet, root) of every sheet of every part of a job."""
    for part in [entry["part"] for entry in run("drawing", job)["parts"]]:
        for sheet in run("drawing", {**job, "part": part})["sheets"]:
            yield part, sheet, reading.tree(sheet["svg"])


def overlaps(texts):
    """Pairs of texts that lie over one another."""
    index = STRtree([one.box for one in texts])
    for first, second in index.query([one.box for one in texts], predicate="intersects").T:
        if first < second and texts[first].box.intersection(texts[second].box).area > TOUCH:
            yield texts[first].text, texts[second].text


@pytest.mark.parametrize("count", [8, pytest.param(JOBS, marks=pytest.mark.slow)])
def test_no_words_overlap_and_none_leave_the_sheet(count):
    jobs = sheets = 0
    parts = set()
    for job in random_jobs(count):
        try:
            listing = list(drawings(job))
        except InputProblem:
            continue
        jobs += 1
        for part, sheet, root in listing:
            sheets += 1
            parts.add(part)
            texts = reading.written(root)
            assert list(overlaps(texts)) == [], (part, job)
            page = box(1.0, 1.0, sheet["width"] - 1.0, sheet["height"] - 1.0)
            outside = [one.text for one in texts if not page.covers(one.box)]
            assert outside == [], (part, job)
    # A few of the jobs cannot be worked at all, by intent: not one in ten.
    assert jobs >= 0.9 * count
    assert sheets >= 14 * jobs
    assert len(parts) >= 17


@pytest.mark.parametrize("paper", SHEETS)
def test_nothing_drawn_leaves_the_border(paper):
    for bore in (20.0, 79.375, 600.0):
        for kind in ("plain", "double-turn"):
            for part, sheet, root in drawings({"bore": bore, "ring_type": kind, "paper": paper}):
                wide, high = SHEETS[paper]
                assert (sheet["width"], sheet["height"]) == (wide, high)
                # ISO 5457: 20 mm at the left for filing, 10 mm elsewhere.
                border = box(20.0, 10.0, wide - 10.0, high - 10.0)
                for name, group in reading.views(root).items():
                    for element in group.iter():
                        if element.tag.replace(reading.SVG, "") in ("line", "circle", "path"):
                            bounds = reading.path(element).bbox()
                            if bounds:
                                assert border.covers(box(*bounds)), (part, name)


@pytest.mark.parametrize("paper", SHEETS)
def test_scales_are_those_of_the_standard_and_are_stated(paper):
    for bore in (20.0, 79.375, 250.0, 600.0):
        for part, sheet, root in drawings({"bore": bore, "paper": paper}):
            for group in reading.views(root).values():
                assert min(abs(float(group.get("data-scale")) - one) for one in SCALES) < 1e-6, part
            if sheet["scale"] is not None:
                scale = sheet["scale"]
                words = "%d:1" % scale if scale >= 1 else "1:%d" % round(1 / scale)
                assert words in [one.text for one in reading.written(root)], part


def test_kinds_of_line():
    """Widths 2:1 and dashes in multiples of the width, each kind with a class of its own."""
    kinds = {
        "outline": (WIDE, ()),
        "thin": (NARROW, ()),
        "hatching": (NARROW, ()),
        "dimensions": (NARROW, ()),
        "hidden": (NARROW, DASHED),
        "centre": (NARROW, CHAIN),
        "adjacent": (NARROW, DOUBLE_CHAIN),
        "limit": (WIDE, DASHED),
        "cut": (WIDE, ()),
        "frame": (WIDE, ()),
    }
    seen = set()
    for _part, _sheet, root in drawings({"bore": 79.375, "setting": "bound"}):
        usual = float(root.get("stroke-width"))
        for element in root.iter():
            layer = (element.get("class") or "")[3:]
            if layer not in kinds or element.get("stroke") == "none":
                continue
            width, dashes = kinds[layer]
            assert float(element.get("stroke-width", usual)) == width
            drawn = [float(one) for one in (element.get("stroke-dasharray") or "").split()]
            assert drawn == pytest.approx([one * width for one in dashes], abs=0.0006)
            seen.add(layer)
    assert seen == set(kinds)


def test_sheets_are_those_of_a_library():
    for name, points in (("A4", pagesizes.A4), ("Letter", pagesizes.LETTER)):
        assert SHEETS[name] == pytest.approx([one / pagesizes.mm for one in points], abs=0.01)


def test_widths_of_letters_are_those_of_the_metrics_file():
    """Helvetica as published for PDF, by a library; bold is 1.06 of it, letter by letter."""
    shares = []
    for code in (*range(32, 127), 0xB0, 0xB1, 0xD7, 0xD8, 0x2013, 0x2026):
        printed = stringWidth(chr(code), "Helvetica", 1000.0)
        assert letters.width(chr(code), 1.0) == pytest.approx(printed / 716.0)
        shares.append(stringWidth(chr(code), "Helvetica-Bold", 1000.0) / printed)
    assert sum(shares) / len(shares) == pytest.approx(1.06, abs=0.005)
    assert letters.BOLD > 1.06


def test_letters_are_large_enough():
    """On paper capitals of 3.5 mm for sizes, 2.5 mm for notes (ISO 3098, by open templates)."""
    for _part, _sheet, root in drawings({"bore": 600.0}):
        for group in reading.views(root).values():
            for element in group.iter(reading.SVG + "text"):
                assert float(element.get("font-size")) * reading.CAPITALS >= 2.49


def test_each_drawing_says_what_it_is():
    for _part, _sheet, root in drawings({"bore": 79.375}):
        assert root.get("role") == "img"
        named = {one.get("id"): "".join(one.itertext()) for one in root if one.get("id")}
        for name in root.get("aria-labelledby").split():
            assert len(named[name]) > 3


def test_a_strict_content_policy_lets_it_stand():
    for _part, _sheet, root in drawings(
        {"bore": 79.375, "job_name": '"><script>alert(1)</script>&'}
    ):
        for element in root.iter():
            assert element.tag.replace(reading.SVG, "") in (
                "svg", "title", "desc", "g", "line", "circle", "path", "text",
            )  # fmt: skip
            for name in element.attrib:
                assert name != "style" and not name.startswith("on") and "href" not in name


def test_text_that_xml_cannot_hold_is_left_out():
    hostile = "Mari\x00gold \x1b\ufffe\ud800 & <b> \u0141\u00f3d\u017a"
    root = reading.tree(run("drawing", {"bore": 80.0, "job_name": hostile})["sheets"][0]["svg"])
    assert "& <b> \u0141\u00f3d\u017a" in "".join(root.itertext())


def test_a_part_that_the_ring_has_not_is_refused_by_name():
    with pytest.raises(InputProblem) as caught:
        run("drawing", {"bore": 80.0, "ring_type": "plain", "part": "rotary-table"})
    assert caught.value.faults[0].path == ("part",)
    assert "ring-closed" in caught.value.faults[0].remedy


def test_geometry_comes_back_as_numbers_when_asked_for():
    answer = run("drawing", {"bore": 80.0, "part": "former", "geometry": True})
    kinds = {one["kind"] for view in answer["sheets"][0]["views"] for one in view["entities"]}
    assert {"line", "polyline", "hatch", "dimension"} <= kinds
    assert "views" not in run("drawing", {"bore": 80.0})["sheets"][0]


@pytest.mark.parametrize("paper", ["A4", "Letter"])
@pytest.mark.parametrize("bore", [20.0, 40.0, 80.0, 150.0, 300.0, 600.0])
@pytest.mark.parametrize("part", ["closing-ring", "end-plate"])
def test_a_face_view_takes_a_scale_of_its_own_and_leaves_the_side_view_its_own(part, bore, paper):
    """As large as it would stand alone; the other's scale is stated under it (ISO 5455)."""
    job = settled({"bore": bore, "part": part, "paper": paper})
    draw = {"closing-ring": tool_views.closing_ring, "end-plate": tool_views.end_plate}[part]
    views, notes, about = draw(job)
    alone = composed(part, job.title, about, views[:1], notes, paper)
    (sheet,) = sheets_of(job, part)
    side, face = sheet.views
    assert sheet.scale == side.scale
    # A plate of 20 mm at 10:1 leaves no room even for the words under its face.
    assert side.scale == alone.scale or (bore == 20.0 and side.scale == 0.5 * alone.scale)
    assert face.scale <= side.scale and any(abs(face.scale - one) < 1e-9 for one in SCALES)
    words = [one.text for one in face.entities if type(one) is Text and one.text.startswith("From")]
    stated = "%d:1" % face.scale if face.scale >= 1 else "1:%d" % round(1 / face.scale)
    assert [one.endswith("  " + stated) for one in words] == [face.scale != side.scale]
