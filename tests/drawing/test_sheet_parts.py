"""What a sheet says of itself stands where it belongs: title block, paper, place of each view.

Sheets of ISO 216 and ISO 5457 (margins 20 mm to bind, 10 mm else), Letter of ANSI Y14.1.
"""

import math

import pytest

from drawing import reading
from ringwright.core.calculations import run
from ringwright.core.drawing import catalogue, drawing, gap_views, rails
from ringwright.core.drawing.drawing import FIELDS
from ringwright.core.drawing.entities import Dimension, Line
from ringwright.core.drawing.paper import PAPERS
from ringwright.core.drawing.view import View
from ringwright.core.drawing.words import Words
from ringwright.core.fields import checked
from ringwright.core.making.tooling import settle_tooling
from ringwright.core.problems import InputProblem

RING = {"bore": 80.0, "steam_pressure": 0.8}
NAMED = {
    "bore": 80.0,
    "job_name": "Launch engine Marigold",
    "owner": "Fernhollow Steam Club",
    "date": "3 May",
}


def cells(part, **more):
    """Name of each cell of the title block -> what stands under it."""
    answer = run("drawing", {**NAMED, "part": part, "paper": "A4", **more})["sheets"][0]
    texts = []
    for element in reading.tree(answer["svg"]).iter(reading.SVG + "text"):
        size = float(element.get("font-size"))
        texts.append((float(element.get("x")), float(element.get("y")), size, element.text))
    found = {}
    smallest = min(size for _, _, size, _ in texts)
    for x, y, size, name in texts:
        if size == smallest:
            # Of an SVG y is downwards; a row is 9 or 11 mm high.
            under = [
                text
                for at, low, large, text in texts
                if at == pytest.approx(x) and 0.0 < low - y < 9.0 and large > smallest
            ]
            found[name] = under[0] if under else ""
    return answer, found


def test_each_cell_of_the_title_block_has_its_own():
    _, found = cells("former")
    former = next(one for one in run("tooling", {"bore": 80.0})["tools"] if one["tool"] == "former")
    assert found["Engine or job"] == NAMED["job_name"]
    assert found["Title"] == "Set former"
    assert found["Owner"] == NAMED["owner"]
    assert found["Date"] == NAMED["date"]
    assert former["material"].lower().startswith(found["Material"].lower()[:8])
    assert found["Sizes in"] == "mm"
    assert found["Scale"].startswith("1:") or found["Scale"].endswith(":1")
    assert found["Sheet"] == "1 of 1"
    assert found["Drawing"].startswith("80")
    assert found["Surface texture (ISO 21920-1)"].startswith("Ra ")
    assert found["Sizes without limits"].startswith("ISO 2768")
    _, inches = cells("former", dimensions="inch")
    assert inches["Sizes in"] == "inches"


def test_a_template_of_several_sheets_counts_them():
    answer = run("drawing", {"bore": 300.0, "part": "template", "paper": "A4"})
    sheets = answer["sheets"]
    assert len(sheets) > 1
    assert [one["sheet"] for one in sheets] == list(range(1, len(sheets) + 1))
    assert {one["sheets"] for one in sheets} == {len(sheets)}


def test_papers_are_those_of_the_standards():
    iso, ansi, screen, card = (PAPERS[name] for name in ("A4", "Letter", "screen", "card"))
    assert iso[:5] == ("A4", 210.0, 297.0, 20.0, 10.0)
    assert ansi[:5] == ("Letter", 215.9, 279.4, 20.0, 10.0)
    for paper in (iso, ansi):
        assert paper.framed is True
        # A shape and its words on one side still fit between the margins.
        assert paper.labels < 0.3 * paper.width
        assert 0.8 * paper.height < paper.tallest < paper.height - 2.0 * paper.others
    for paper, name in ((screen, "Screen"), (card, "Card")):
        assert paper.title == name
        assert paper.framed is False
        assert paper.width <= paper.height
        assert paper.left == paper.others < 5.0
        assert paper.labels < paper.tallest < paper.height


def test_each_view_says_where_its_middle_stands():
    """The ring's ends run from its inside, 37.6 mm about the middle; the rule begins at its own."""
    job = {"bore": 80.0, "radial_thickness": 2.4, "paper": "A4", "geometry": True}
    view = run("drawing", {**job, "part": "ring-closed"})["sheets"][0]["views"][0]
    line = next(one for one in view["entities"] if one["kind"] == "line")
    away = math.hypot(line["from"][0] - view["x"], line["from"][1] - view["y"])
    assert away == pytest.approx(37.6 * view["scale"], abs=1e-6)
    rules = run("drawing", {**job, "part": "template"})["sheets"][0]["views"][0]
    assert rules["view"] == "rules"
    assert rules["entities"][0]["from"] == [rules["x"], rules["y"]]


def test_a_ring_s_own_size_takes_the_place_of_the_card_s():
    card = drawing.Size("gap", "the gap", 0.4, "mm", 0.3, 0.5, "feeler")
    step = type("Step", (), {"value": 0.41, "lower": 0.38, "upper": 0.44})
    assert drawing._own(card, {}) == card
    own = drawing._own(card, {"gap": step})
    assert own == ("gap", "the gap", 0.41, "mm", 0.38, 0.44, "feeler")


def job_of(**request):
    values = checked(FIELDS, request)
    design, tools, _ = settle_tooling(values)
    return drawing.job_of(design, tools, values)


def test_a_feeler_in_angled_ends_reads_the_gap_square_to_the_cut():
    """Where no card says what it reads: gap times sin 45."""
    job = job_of(bore=80.0, closed_gap=0.5, part="gaps")
    job = job._replace(tooling=job.tooling._replace(feeler_gap=0.0))
    views, _, _ = gap_views.gaps(job)
    text = next(view for view in views if view.name == "feeler").labels[0].text
    assert "0.354 mm" in text


@pytest.mark.parametrize("part", ["ring-closed", "pot", "closing-ring", "cylinder-section"])
def test_each_dimension_says_its_kind_and_the_scale_of_its_view(part):
    kinds = set()
    for view in catalogue.sheets(job_of(bore=80.0, part=part), part)[0].views:
        for entity in view.entities:
            if isinstance(entity, Dimension):
                assert isinstance(entity.kind, str)
                assert entity.scale == view.scale
                kinds.add(entity.kind)
    assert {"label"} < kinds


def test_each_extension_line_begins_at_its_own_end():
    """A slope from (0, 0) to (20, 5), measured above: the right one begins five higher."""
    view = View("slope", "")
    view.measure("run", 20.0, rails.TOP, (0.0, 0.0), (20.0, 5.0), Words("", ("20",)))
    dimensions, _ = rails.placed(view.measures, rails.TOP, 1.0, 10.0, 3.5)
    begins = {}
    for part in dimensions[0].parts:
        if isinstance(part, Line) and part.x1 == part.x2:
            begins[round(part.x1)] = min(part.y1, part.y2)
    assert set(begins) == {0, 20}
    assert begins[20] - begins[0] == pytest.approx(5.0)


@pytest.mark.parametrize("system", ["metric", "inch"])
def test_no_drawing_spells_out_a_unit_that_has_a_sign(system):
    job = {**RING, "paper": "A4", "dimensions": system}
    parts = [{"part": part} for part in catalogue.PARTS if part != "operation"]
    parts += [
        {"part": "operation", "operation": one["key"]} for one in run("route", RING)["operations"]
    ]
    signs = set()
    for part in parts:
        try:
            sheets = run("drawing", {**job, **part})["sheets"]
        except InputProblem:
            continue  # Not every ring has every part.
        text = " ".join(sheet["svg"] for sheet in sheets)
        assert "degC" not in text and "degF" not in text, part
        signs |= {sign for sign in ("\u00b0C", "\u00b0F") if sign in text}
    assert ("\u00b0F" if system == "inch" else "\u00b0C") in signs
