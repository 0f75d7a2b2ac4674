"""Drawings to scale: what stands in the SVG, read by another library, against the figures."""

import math

import pytest
from shapely import affinity
from shapely.geometry import Point, Polygon

from drawing import reading
from ringwright.core.calculations import run

JOBS = {
    "small": {"bore": 20.0},
    "launch": {"bore": 79.375, "steam_pressure": 0.83},
    "large": {"bore": 600.0},
    "plain": {"bore": 79.375, "ring_type": "plain"},
    "plain large": {"bore": 600.0, "ring_type": "plain", "end_cut": "angled-60"},
    "stepped": {"bore": 120.0, "ring_type": "plain", "end_cut": "stepped"},
    "bound": {"bore": 120.0, "setting": "bound", "end_cut": "square"},
    "band": {"bore": 120.0, "finishing": "band"},
}
# part, view, layer -> figure whose value the drawn outline has along x or y.
OUTLINES = (
    ("ring-closed", "end", "x", "bore"),
    ("ring-closed", "section", "x", "ring_width"),
    ("ring-closed", "section", "y", "radial_thickness"),
    ("blank", "blank", "y", "rough_outside_diameter"),
    ("blank", "blank", "x", "blank_length"),
    ("former", "former", "y", "former_diameter"),
    ("former", "former", "x", "former_length"),
    ("end-plate", "end-plate", "y", "end_plate_diameter"),
    ("piston", "piston", "y", "piston_diameter"),
)


def sheets(job, part, **wanted):
    return [
        reading.tree(one["svg"])
        for one in run("drawing", {**job, **wanted, "part": part})["sheets"]
    ]


def figures(job):
    """Every figure of the job, in mm, from the calculations that own them."""
    found = {name: entry["value"] for name, entry in run("sizing", job)["figures"].items()}
    tooling = run("tooling", job)
    found.update({name: entry["value"] for name, entry in tooling["figures"].items()})
    for tool in tooling["tools"]:
        for size in tool["sizes"]:
            found.setdefault(size["name"], size["value"])
    found["bore"] = job["bore"]
    return found


def parts(job):
    return [entry["part"] for entry in run("drawing", job)["parts"]]


@pytest.mark.parametrize("job", JOBS.values(), ids=JOBS)
@pytest.mark.parametrize("paper", ["A4", "Letter", "screen"])
def test_every_dimension_is_as_long_as_it_says(job, paper):
    known = figures(job)
    checked = set()
    for part in parts(job):
        for root in sheets(job, part, paper=paper):
            for group in reading.dimensions(root):
                (x1, y1), (x2, y2) = reading.tips(group)
                drawn = math.hypot(x2 - x1, y2 - y1) / float(group.get("data-scale"))
                # Coordinates are written to 0.001 mm of paper.
                slack = 0.002 / float(group.get("data-scale"))
                value = float(group.get("data-value"))
                assert drawn == pytest.approx(value, abs=slack), (part, group.attrib)
                name = group.get("data-figure")
                if name in known:
                    assert value == pytest.approx(known[name], abs=1e-6), (part, name)
                    checked.add(name)
                printed = reading.numbers(group)
                assert printed
                if len(printed) == 1:
                    number, places = printed[0]
                    assert abs(number - value) <= 0.5001 * 10**-places
                else:
                    (upper, _), (lower, _) = printed
                    assert lower < upper
    closing = "band_length" if job.get("finishing") == "band" else "closing_ring_bore"
    assert {"bore", "blank_length", "pot_bore", "groove_width"} <= checked
    assert closing in checked or closing == "band_length"


def test_inches_are_printed_as_inches():
    seen = 0
    root = sheets(JOBS["launch"], "ring-closed", dimensions="inch")[0]
    for group in reading.dimensions(root):
        printed = reading.numbers(group)
        if len(printed) == 1:
            number, places = printed[0]
            inches = float(group.get("data-value")) / 25.4
            assert number == pytest.approx(inches, abs=0.51 * 10**-places)
            seen += 1
    assert seen >= 5


@pytest.mark.parametrize("name", ["small", "launch", "large", "plain"])
@pytest.mark.parametrize(("part", "view", "way", "figure"), OUTLINES)
def test_outlines_have_the_size_of_their_figure(name, part, view, way, figure):
    job = JOBS[name]
    if part not in parts(job):
        return
    group = reading.views(sheets(job, part)[0])[view]
    left, top, right, bottom = reading.extent(reading.shapes(group, "outline"))
    size = (right - left if way == "x" else bottom - top) / float(group.get("data-scale"))
    assert size == pytest.approx(figures(job)[figure], abs=0.01 / float(group.get("data-scale")))


@pytest.mark.parametrize("job", JOBS.values(), ids=JOBS)
def test_metal_of_the_free_ring_is_that_of_the_closed_one(job):
    """Area of a thin bent strip = length of its middle line * thickness, however it is bent."""
    known = figures(job)
    group = reading.views(sheets(job, "ring-free")[0])["end"]
    scale = float(group.get("data-scale"))
    front = max(reading.shapes(group, "outline"), key=lambda one: len(one.get("d")))
    area = reading.polygon(front).area / scale**2
    length = math.pi * (job["bore"] - known["radial_thickness"]) - known["closed_gap"]
    assert area == pytest.approx(length * known["radial_thickness"], rel=2e-3)


@pytest.mark.parametrize("name", ["plain", "plain large"])
def test_ends_of_a_free_plain_ring_stand_the_free_gap_apart(name):
    job = JOBS[name]
    group = reading.views(sheets(job, "ring-free")[0])["end"]
    scale = float(group.get("data-scale"))
    points = list(reading.polygon(reading.shapes(group, "outline")[0]).exterior.coords)[:-1]
    half = len(points) // 2
    # Outside from end to end, then inside back: the middle of each end face is on the neutral line.
    first = [(a + b) / 2 for a, b in zip(points[0], points[-1], strict=True)]
    last = [(a + b) / 2 for a, b in zip(points[half - 1], points[half], strict=True)]
    assert math.dist(first, last) / scale == pytest.approx(figures(job)["free_gap"], rel=2e-3)


@pytest.mark.parametrize("name", ["small", "launch", "large", "bound"])
def test_bridge_is_what_a_round_cutter_leaves(name):
    """The blank less every place of the cutter, cut out one by one with a geometry library."""
    job = JOBS[name]
    known = figures(job)
    group = reading.views(sheets(job, "rotary-table")[0])["bridge"]
    scale = float(group.get("data-scale"))
    closed = [one for one in reading.shapes(group, "outline") if one.get("d", "").endswith("Z")]
    drawn = reading.polygon(closed[0])

    inner, outer = known["bored_inside_diameter"] / 2, known["rough_outside_diameter"] / 2
    left = Point(0, 0).buffer(outer, 512).difference(Point(0, 0).buffer(inner, 512))
    cutter = Point(known["cutter_centre_distance"], 0).buffer(known["cutter_diameter"] / 2, 512)
    steps = 720
    for step in range(steps + 1):
        left = left.difference(
            affinity.rotate(cutter, known["table_travel"] * step / steps, origin=(0, 0))
        )
    # A coarse step leaves crumbs of the wall; the bridge is the piece that counts.
    pieces = [left] if isinstance(left, Polygon) else list(left.geoms)
    bridge = max(pieces, key=lambda one: one.area)
    assert drawn.area / scale**2 == pytest.approx(bridge.area, rel=2e-3)


def test_template_goes_round_the_blank_once():
    for job in (JOBS["small"], JOBS["launch"], JOBS["large"], JOBS["plain"]):
        known = figures(job)
        total = 0.0
        for root in sheets(job, "template"):
            for name, group in reading.views(root).items():
                if name == "rules":
                    continue
                assert float(group.get("data-scale")) == 1.0
                edges = reading.shapes(group, "edge")
                # One closed line a piece: a cutter follows it without a join.
                assert len(edges) == 1 and edges[0].get("d").endswith("Z")
                left, top, right, bottom = reading.extent(edges)
                assert bottom - top == pytest.approx(known["blank_length"], abs=0.002)
                # The tab beyond the join is pasted under the next piece.
                for join in reading.shapes(group, "thin"):
                    right = float(join.get("x1"))
                total += right - left
        assert total == pytest.approx(math.pi * known["rough_outside_diameter"], abs=0.01)


@pytest.mark.parametrize("bore", [12.0, 20.0, 40.0, 60.0, 79.375, 300.0])
@pytest.mark.parametrize("ring_type", ["double-turn", "plain"])
def test_every_template_has_its_saw_cuts(bore, ring_type):
    """However few pieces there are: on a small bore the one piece ended before the bridge."""
    found = 0
    for root in sheets({"bore": bore, "ring_type": ring_type}, "template"):
        for group in reading.views(root).values():
            found += len(reading.shapes(group, "cut"))
    assert found == (2 if ring_type == "double-turn" else 1)


def test_rules_of_the_template_are_100_mm_and_4_in():
    group = reading.views(sheets(JOBS["launch"], "template")[0])["rules"]
    lengths = sorted(
        reading.path(one).length()
        for one in reading.shapes(group, "rule")
        if one.get("y1") == one.get("y2")
    )
    assert lengths == pytest.approx([100.0, 4 * 25.4], abs=0.001)


@pytest.mark.parametrize("units", ["metric", "inch"])
def test_limits_are_printed_inside_the_tolerance(units):
    """What is printed must never let a part be made that the limits refuse."""
    step = 25.4 if units == "inch" else 1.0
    seen = set()
    for job in JOBS.values():
        wanted = {}
        for tool in run("tooling", job)["tools"]:
            sizes = [one for one in tool["sizes"] if "limits" in one]
            wanted[tool["tool"]] = {one["name"]: one["limits"] for one in sizes}
        worked = {
            one["name"]: one["limits"]
            for operation in reversed(run("route", job)["operations"])
            for one in operation["sizes"]
            if "limits" in one
        }
        for part in parts(job):
            for root in sheets(job, part, dimensions=units):
                for group in reading.dimensions(root):
                    printed = reading.numbers(group)
                    if len(printed) == 1:
                        continue
                    name = group.get("data-figure")
                    if name in ("groove_width", "piston_diameter"):
                        continue  # of ISO 286 itself: test_sheet_words.py
                    limits = wanted.get(part, worked).get(name) or worked[name]
                    (upper, places), (lower, _) = printed
                    assert limits["lower"]["value"] - 1e-6 <= lower * step
                    assert upper * step <= limits["upper"]["value"] + 1e-6
                    assert upper * step >= limits["upper"]["value"] - step * 10**-places
                    assert lower * step <= limits["lower"]["value"] + step * 10**-places
                    seen.add(name)
    limited = "former_diameter pot_bore blank_jaws_bore clamp_mandrel_diameter spacer_width"
    worked = "rough_outside_diameter bored_inside_diameter ring_width radial_thickness"
    assert seen >= {*limited.split(), *worked.split(), "trial_bore", "finish_outside_diameter"}
