"""A picture of every operation of the route card: none is missing, its sizes are the card's, and
its words can be read."""

import math

import pytest

from drawing import reading
from drawing.test_layout import overlaps
from ringwright.core.calculations import run
from ringwright.core.making.route_text import TEXT
from ringwright.core.problems import InputProblem

JOBS = {
    "double-turn": {"bore": 80.0, "steam_pressure": 0.8},
    "bound on its former": {"bore": 30.0, "setting": "bound"},
    "plain": {"bore": 150.0, "ring_type": "plain", "groove_width": 6.0},
    "forced round": {"bore": 80.0, "ring_type": "plain", "finishing": "forced-round"},
    "stepped ends in a band": {
        "bore": 80.0,
        "ring_type": "plain",
        "end_cut": "stepped",
        "finishing": "band",
        "setting": "sprung",
    },
    "plain in a band": {"bore": 80.0, "ring_type": "plain", "finishing": "band"},
    "small, of bronze": {"bore": 24.0, "ring_material": "phosphor-bronze-drawn"},
    "large": {"bore": 450.0, "ring_type": "plain"},
    "slit on the stick": {"bore": 79.375, "slit_on_stick": True, "rings": 4},
}


def _operations(job):
    return run("route", job)["operations"]


def _picture(job, key, **more):
    return run("drawing", {**job, "part": "operation", "operation": key, **more})["sheets"][0]


def test_no_operation_of_any_card_is_without_its_picture():
    seen = {entry["key"] for job in JOBS.values() for entry in _operations(job)}
    assert seen == set(TEXT)


@pytest.mark.parametrize("paper", ["screen", "A4"])
@pytest.mark.parametrize("job", list(JOBS.values()), ids=list(JOBS))
def test_pictures_are_named_by_the_operation_and_can_be_read(job, paper):
    for system in ("metric", "inch"):
        for entry in _operations(job):
            sheet = _picture(job, entry["key"], paper=paper, dimensions=system)
            assert sheet["title"] == entry["title"]
            assert sheet["about"].endswith(".")
            texts = reading.written(reading.tree(sheet["svg"]))
            assert list(overlaps(texts)) == [], (entry["key"], system)


@pytest.mark.parametrize("job", list(JOBS.values()), ids=list(JOBS))
def test_what_a_picture_measures_is_what_the_card_says(job):
    """A size that stands at a picture under a name of the card has the card's own value."""
    found = 0
    for entry in _operations(job):
        sizes = {size["name"]: size["value"] for size in entry["sizes"]}
        sheet = _picture(job, entry["key"], paper="screen", geometry=True)
        for view in sheet["views"]:
            for entity in view["entities"]:
                if entity["kind"] == "dimension" and entity["figure"] in sizes:
                    found += 1
                    assert entity["measures"] == pytest.approx(sizes[entity["figure"]], abs=1e-9)
    assert found >= 10


def test_a_picture_has_the_sizes_of_the_ring_that_was_measured():
    """Two rings sawn differently: each picture's dimensions are those of that ring's own card."""
    job = {
        "bore": 80.0,
        "machine": "rigid",
        "measured": [
            {"ring": 1, "end_kerf": 1.2},
            {"ring": 2, "end_kerf": 1.05, "bored_inside_diameter": 75.5},
        ],
    }
    card = run("route", job)
    shown = {}
    for ring in card["rings"]:
        own = {(size["operation"], size["name"]): size["value"] for size in ring["sizes"]}
        for key in ("put-on-former", "face-step", "clamp", "turn-finish"):
            sheet = _picture(job, key, paper="screen", geometry=True, drawn_ring=ring["ring"])
            for view in sheet["views"]:
                for entity in view["entities"]:
                    if entity["kind"] == "dimension" and (key, entity["figure"]) in own:
                        wanted = own[key, entity["figure"]]
                        assert entity["measures"] == pytest.approx(wanted, abs=1e-9)
                        shown[ring["ring"], entity["figure"]] = wanted
    assert shown[1, "closing_ring_bore"] != shown[2, "closing_ring_bore"]
    # A ring that was not measured has the card's own sizes.
    plain = _picture({"bore": 80.0, "machine": "rigid"}, "clamp")
    assert _picture(job, "clamp", drawn_ring=3)["svg"] == plain["svg"]


def test_limits_at_a_picture_are_those_of_the_card_for_that_lathe():
    job = {"bore": 80.0, "machine": "rigid"}
    size = next(row for row in _operations(job) if row["key"] == "bore")["sizes"][0]
    svg = _picture(job, "bore")["svg"]
    assert "%.3f" % (math.floor(size["limits"]["upper"]["value"] * 1000 + 1e-6) / 1000) in svg


def test_operation_that_the_card_does_not_have_is_refused_by_name():
    with pytest.raises(InputProblem) as caught:
        _picture(JOBS["plain"], "turn-through")
    fault = caught.value.faults[0]
    assert fault.path == ("operation",)
    assert "face-blank" in fault.remedy
