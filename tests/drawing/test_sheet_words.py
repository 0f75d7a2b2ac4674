"""What a sheet must say beside its shapes: number, general tolerances, texture, limits; no size
twice."""

import collections
import re

import pytest

from drawing import reading
from ringwright.core.calculations import run

JOBS = (
    {"bore": 79.375},
    {"bore": 150.0, "ring_type": "plain", "dimensions": "inch", "paper": "Letter"},
    {"bore": 50.0, "ring_type": "plain", "setting": "spread"},
    {"bore": 40.0, "finishing": "band"},
)
# Nobody makes a part from these.
TO_LOOK_AT = {"ring-free", "ring-turned-through", "gaps", "template", "rotary-table"}
TO_LOOK_AT |= {"cylinder-section", "section-window", "free-shape", "steam-temperature"}
# ISO 286-2, as tests/published/test_fits.py has it read [mm]: H8 above nought, h8 below.
GRADE_8 = {(3, 6): 0.018, (50, 80): 0.046}


def sheets(job, **more):
    for part in [entry["part"] for entry in run("drawing", job)["parts"]]:
        for sheet in run("drawing", {**job, "part": part, **more})["sheets"]:
            yield part, sheet


def said(sheet):
    return [one.text for one in reading.written(reading.tree(sheet["svg"]))]


@pytest.mark.parametrize("job", JOBS)
def test_what_is_made_from_a_sheet_has_tolerances_and_texture(job):
    """ISO 2768-1 (m is medium, by an open summary) for sizes without limits; ISO 21920-1,
    for the surfaces, by its name alone."""
    numbers = []
    for part, sheet in sheets(job):
        words = said(sheet)
        made = part not in TO_LOOK_AT
        assert ("ISO 2768-m" in words) == made, part
        assert any(one.startswith("Ra ") for one in words) == made, part
        assert "Surface texture (ISO 21920-1)" in words
        assert "%d of %d" % (sheet["sheet"], sheet["sheets"]) in words
        numbers += {one for one in words if re.fullmatch(r"\d+\.\d+-\d+", one)}
    # A number for each part, the same on all its sheets.
    assert len(set(numbers)) == len(run("drawing", job)["parts"])


def dimensions(sheet):
    for view in sheet["views"]:
        for one in view["entities"]:
            if one["kind"] == "dimension":
                yield one


@pytest.mark.parametrize("job", JOBS)
def test_no_size_stands_twice_on_a_sheet(job):
    """ISO 129-1: each size once; what follows from others stands in brackets."""
    for part, sheet in sheets(job, geometry=True):
        named = collections.Counter(
            one["figure"] for one in dimensions(sheet) if one["figure"] and one["way"] == "linear"
        )
        assert [name for name, count in named.items() if count > 1] == [], part


def test_groove_and_piston_have_limits():
    sheet = run("drawing", {"bore": 79.375, "part": "piston", "geometry": True})["sheets"][0]
    found = {one["figure"]: one for one in dimensions(sheet)}
    for name, above in (("groove_width", True), ("piston_diameter", False)):
        one = found[name]
        upper, lower = [float(re.sub(r"[^\d.]", "", words)) for words in one["words"]]
        size = one["measures"]
        width = next(wide for (more, most), wide in GRADE_8.items() if more < size <= most)
        low, high = (size, size + width) if above else (size - width, size)
        # Printed limits are rounded into the tolerance, to 0.001 mm.
        assert low <= lower <= low + 0.001 and high - 0.001 <= upper <= high
    # What follows from both is in brackets.
    (floor,) = [one for one in dimensions(sheet) if not one["figure"]]
    assert floor["words"][0].startswith("(") and floor["words"][0].endswith(")")


def test_a_groove_that_is_there_is_drawn_as_it_is():
    job = {"bore": 79.375, "groove_width": 5.2, "piston_diameter": 79.0, "part": "piston"}
    sheet = run("drawing", {**job, "geometry": True})["sheets"][0]
    words = {one["figure"]: one["words"] for one in dimensions(sheet)}
    assert words["groove_width"] == ["5.20"]
    assert len(words["piston_diameter"]) == 1


@pytest.mark.parametrize("part", ["end-plate", "closing-ring"])
def test_a_plate_has_its_face(part):
    """Circles about one middle, each seen in the cut too."""
    sheet = run("drawing", {"bore": 79.375, "part": part, "geometry": True})["sheets"][0]
    views = {view["view"]: view for view in sheet["views"]}
    rings = [one for one in views["face"]["entities"] if one["kind"] == "circle"]
    assert len(rings) >= 2
    assert len({tuple(one["at"]) for one in rings}) == 1
    cut = max(one["measures"] for one in dimensions(sheet) if one["way"] == "linear")
    scale = views["face"]["scale"]
    assert min(abs(2 * one["radius"] / scale - cut) for one in rings) < 1e-9
