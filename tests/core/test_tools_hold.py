"""The tools can be made and used: long enough, small enough, staying where they are put, and all
that an operation takes up is there."""

import math

import pytest
import shapely
import shapely.affinity

from ringwright.core import calculations, fields
from ringwright.core.making import tool_list, tooling
from ringwright.core.properties.materials import material

KINDS = [
    {"bore": 79.375},
    {"bore": 150.0, "ring_type": "plain"},
    {"bore": 150.0, "ring_type": "plain", "setting": "sprung", "finishing": "band"},
    {"bore": 150.0, "finishing": "band"},
    {"bore": 120.0, "setting": "bound", "finishing": "forced-round", "end_cut": "square"},
    {"bore": 40.0, "ring_type": "plain", "end_cut": "stepped", "finishing": "band"},
    {"bore": 300.0, "ring_type": "plain", "end_cut": "angled-60", "ring_material": "gunmetal"},
]


def settled(request):
    return tooling.settle_tooling(fields.checked(tooling.FIELDS, request))[:2]


def tools_of(request):
    return {tool["tool"]: tool for tool in calculations.run("tooling", request)["tools"]}


def sizes(tool):
    return {size["name"]: size["value"] for size in tool["sizes"]}


def test_the_former_carries_the_ring_inside_out_from_tip_to_tip():
    """Move each band up or down by the blank, as boxes: from the one outer side to the other."""
    design, tools = settled({"bore": 79.375, "ring_width": 5.0})
    band, slit, length = design.blank.band_width, design.allowances.slit, design.blank.length
    upper = shapely.box(0.0, band + slit, 1.0, length)
    lower = shapely.box(0.0, 0.0, 1.0, band)
    through = shapely.union_all(
        [
            shapely.affinity.translate(upper, 0.0, -length),
            shapely.affinity.translate(lower, 0.0, length),
        ]
    )
    _, low, _, high = through.bounds
    assert high - low == pytest.approx(14.0)
    assert tools.former_length >= high - low


@pytest.mark.parametrize("setting", ["bound", "sprung"])
@pytest.mark.parametrize("ring_type", ["plain", "double-turn"])
def test_the_spigot_goes_into_a_banded_ring(ring_type, setting):
    """Its inside is the outside less twice the whole wall, and less what the band leaves oval."""
    request = {"bore": 150.0, "ring_type": ring_type, "finishing": "band", "setting": setting}
    design, tools = settled(request)
    wall = design.section.thickness + design.allowances.inside
    round_inside = design.blank.finish_outside - 2.0 * wall
    assert tools.clamp_mandrel_diameter < round_inside
    # Largest less smallest radius, max(phi sin phi)/3 of kappa0 r^2, one bound turn: 0.607.
    if (ring_type, setting) == ("plain", "bound"):
        radius = 0.5 * (design.duty.bore - design.section.thickness)
        oval = max(x * math.sin(x) for x in [i * math.pi / 5000 for i in range(5001)]) / 3.0
        short = oval * design.spring.curvature_change * radius * radius
        assert tools.clamp_mandrel_diameter == pytest.approx(
            round_inside - 2.0 * short - 0.1, abs=0.01
        )
    found = calculations.run("tooling", request)["findings"]
    assert "clamp-mandrel" not in {row["check"] for row in found}


def test_shoulder_and_outer_clamp_hold_the_ring_together_and_leave_the_tool_room():
    design, tools = settled({"bore": 150.0, "finishing": "band"})
    inner, outer = tools.inside_clamped, design.blank.finish_outside
    # While both hold: the end plate on the inner half of the side, the clamp ring on the outer.
    assert inner < tools.end_plate_diameter < tools.clamp_ring_bore < outer
    assert tools.clamp_ring_bore - inner > 0.4 * 2 * design.section.thickness
    assert tools.outer_clamp_bore == outer


def test_a_flat_spacer_would_slide_so_its_ends_are_held_between_cheeks():
    """On faces at 45 degrees the ends slide unless friction passes cot 45 = 1; dry iron on steel
    has 0.23 sliding and 0.4 at rest (a college's table, read)."""
    spacer = tools_of({"bore": 150.0, "ring_type": "plain"})["spacer"]
    found = sizes(spacer)
    assert 1.0 / math.tan(math.radians(found["spacer_angle"])) > 0.4
    design, _ = settled({"bore": 150.0, "ring_type": "plain"})
    assert 0.0 < found["spacer_seat"] - design.blank.length <= 0.2
    # Along the ring and square to its faces: the sides of a parallelogram, measured as drawn.
    run = found["spacer_seat"] / math.tan(math.radians(found["spacer_angle"]))
    left = shapely.LineString([(0.0, 0.0), (run, found["spacer_seat"])])
    right = shapely.affinity.translate(left, found["spacer_width"], 0.0)
    far = shapely.affinity.scale(right, 9.0, 9.0)
    assert left.centroid.distance(far) == pytest.approx(found["spacer_across"], rel=1e-9)
    # So are its limits: at 45 degrees by the square root of a half.
    held = {size["name"]: size["limits"] for size in spacer["sizes"] if "limits" in size}
    for side in ("lower", "upper"):
        across = held["spacer_across"][side]["value"]
        assert across == pytest.approx(held["spacer_width"][side]["value"] * math.sqrt(0.5))
    readings = {size["name"]: size["reading"] for size in spacer["sizes"]}
    assert "along" in spacer["sizes"][0]["label"] and all(readings.values())


def test_the_faces_of_the_spacer_lean_as_the_ends_do():
    """Bend an open ring by two equal forces at its ends: Simpson's rule over M = F r (1 - cos)."""
    found = sizes(tools_of({"bore": 150.0, "ring_type": "plain"})["spacer"])
    design, _ = settled({"bore": 150.0, "ring_type": "plain"})
    steps, r = 2000, design.blank.bored_radius
    turn = opening = 0.0
    for i in range(steps + 1):
        psi = 2.0 * math.pi * i / steps
        weight = 1.0 if i in (0, steps) else 4.0 if i % 2 else 2.0
        moment = 1.0 - math.cos(psi)
        turn += weight * moment
        opening += weight * moment * moment * r
    opened = design.spring.spacer_width - design.allowances.gap_kerf
    assert found["spacer_taper"] == pytest.approx(math.degrees(turn / opening * opened), rel=1e-6)


def test_the_saw_starts_beside_the_bridge_and_breaks_through_into_air():
    """Lay the disc at the two ends of its travel: the metal between is the bridge, no less."""
    request = {"bore": 79.375, "radial_thickness": 2.4, "ring_width": 5.0}
    answer = calculations.run("tooling", request)
    figures = {name: row["value"] for name, row in answer["figures"].items()}
    design, tools = settled(request)
    disc = shapely.Point(figures["cutter_centre_distance"], 0.0).buffer(
        0.5 * figures["cutter_diameter"], quad_segs=2048
    )
    circle = shapely.Point(0, 0).buffer(0.5 * design.blank.rough_outside, quad_segs=4096).exterior
    # The bridge mark under the saw's middle, then away by the offset: the saw's edge at the mark.
    half = math.degrees(circle.intersection(disc).length / design.blank.rough_outside)
    assert figures["start_offset"] == pytest.approx(half, abs=0.01)
    assert figures["start_offset"] == pytest.approx(9.80, abs=0.005)
    bridge = math.degrees(2.0 * figures["bridge_length"] / design.blank.rough_outside)
    turned = 2.0 * figures["start_offset"] + figures["table_travel"] + bridge
    assert turned == pytest.approx(360.0, abs=1e-9)
    mandrel = sizes(tools_of(request)["slitting-mandrel"])
    floor = 0.5 * mandrel["slit_mandrel_diameter"] - mandrel["slit_relief_depth"]
    assert shapely.Point(0, 0).distance(disc) > floor
    # The saw clears both sides of its relief, and the nut bears on the blank, not on the mandrel.
    assert 0.0 < mandrel["slit_relief_width"] - design.allowances.slit < 3.0
    assert 0.0 < design.blank.length - mandrel["slit_mandrel_length"] < 2.0
    slit = next(
        row for row in calculations.run("route", request)["operations"] if row["key"] == "slit"
    )
    assert {"start_offset", "table_travel", "slit_mandrel_diameter"} <= {
        size["name"] for size in slit["sizes"]
    }


@pytest.mark.parametrize("request_", KINDS, ids=str)
def test_every_tool_that_an_operation_takes_up_is_there_and_the_reverse(request_):
    made = tools_of(request_)
    taken = {
        tool for row in calculations.run("route", request_)["operations"] for tool in row["tools"]
    }
    assert taken == set(made)
    for tool in made.values():
        assert tool["sizes"] and tool["material"] and tool["why"]
        assert all(size["reading"] for size in tool["sizes"])
        assert tool["piece"]["diameter"]["value"] > 0 and tool["piece"]["length"]["value"] > 0
        # From a quarter of an hour at the bench to two long days at a lathe.
        assert 15.0 <= tool["time"]["value"] <= 960.0, tool["tool"]


@pytest.mark.parametrize("request_", KINDS, ids=str)
def test_what_the_words_of_an_operation_take_up_is_named(request_):
    """A tool called by its title in an operation's words is in that operation's list."""
    made = tools_of(request_)
    titles = {"clamp mandrel", "end plate", "closing ring", "closing band", "outer clamp"}
    titles |= {"slitting mandrel", "facing pot", "set former", "spacer", "soft jaws"}
    keys = {
        tool["tool"]: next(title for title in titles if title in tool["title"].lower())
        for tool in made.values()
        if tool["tool"] != "bore-gauge"
    }
    for row in calculations.run("route", request_)["operations"]:
        for key, title in keys.items():
            assert title not in row["tool"].lower() or key in row["tools"], (row["key"], title)


@pytest.mark.parametrize("request_", KINDS, ids=str)
def test_both_facings_have_something_that_the_ring_goes_into(request_):
    """The blank is larger than the pot until it is sawn; sawn and shut it fits."""
    design, tools = settled(request_)
    jaws = sizes(tools_of(request_)["blank-jaws"])
    assert jaws["blank_jaws_bore"] == pytest.approx(design.blank.rough_outside, rel=1e-12)
    assert design.blank.rough_outside > tools.pot_bore
    assert 0.0 < tools.pot_gap < design.allowances.gap_kerf + design.spring.gap_change


@pytest.mark.parametrize("angle", [("angled-45", 45.0), ("angled-60", 60.0), ("square", 90.0)])
@pytest.mark.parametrize("ring_type", ["plain", "double-turn"])
def test_the_feeler_reads_the_gap_square_to_the_cut(ring_type, angle):
    """Two parallel faces laid across the ring at its angle, the distance measured by shapely."""
    cut, degrees = angle
    request = {"bore": 80.0, "ring_type": ring_type, "end_cut": cut}
    gap = calculations.run("sizing", request)["figures"]["closed_gap"]["value"]
    figures = calculations.run("tooling", request)["figures"]
    blade = math.radians(degrees)
    x, y = 9.0 * math.cos(blade), 9.0 * math.sin(blade)
    face = shapely.LineString([(-x, -y), (x, y)])
    read = shapely.Point(gap, 0.0).distance(face)
    assert figures["closed_gap_reading"]["value"] == pytest.approx(read, rel=1e-9)
    rows = calculations.run("route", request)["operations"]
    for row in rows:
        for size in row["sizes"]:
            if "closed_gap" in size["name"] or "clamped_gap" in size["name"]:
                assert size["reading"] == "feeler between the ends, square to the cut"
            if size["name"] == "closed_gap_reading":
                assert size["limits"]["lower"]["value"] == pytest.approx(read, rel=1e-9)
    # Sawn ends lean towards each other when the ring is shut: a feeler meets their outer edges.
    assert figures["feeler_gap"]["value"] < read


def test_a_right_ring_read_by_a_feeler_is_accepted():
    """Its gap of 0.5 along the ring reads 0.354 between ends at 45 degrees."""
    ring = {"bore": 80.0, "closed_gap": 0.5}
    made = calculations.run("inspection", {**ring, "measured_closed_gap": 0.5 * math.sqrt(0.5)})
    found = {row["check"]: row["outcome"] for row in made["findings"]}
    assert found["closed-gap"] == "good"
    square = calculations.run(
        "inspection", {**ring, "end_cut": "square", "measured_closed_gap": 0.354}
    )
    found = {row["check"]: row["outcome"] for row in square["findings"]}
    assert found["closed-gap"] != "good"


# What else than turning a tool takes, in minutes, and how many of its sizes are fitted; common
# practice, no source.
BESIDE = {
    "slitting-mandrel": 15.0,
    "spacer": 30.0,
    "closing-band": 30.0,
    "clamp-mandrel": 10.0,
    "outer-clamp": 30.0,
}
NOT_FITTED = ("closing-band", "end-plate")


def turned_to(tool, design, t):
    """(what it is turned round at least, its hole, its length) by what the tool is for."""
    held = 25.0
    return {
        "blank-jaws": (t.blank_jaws_bore, t.blank_jaws_bore, design.blank.length),
        "slitting-mandrel": (t.slit_mandrel_diameter, 0.0, held + (t.slit_mandrel_length or 0.0)),
        "former": (t.former_diameter, 0.35 * (t.former_diameter or 0.0), t.former_length),
        "spacer": (t.spacer_width, 0.0, design.blank.length + 10.0),
        "pot": (t.pot_bore, t.pot_bore - 1.6 * design.blank.set_thickness, t.pot_depth + held),
        "closing-ring": (t.closing_ring_bore, t.closing_ring_bore, t.closing_ring_width),
        "closing-band": (10.0, 0.0, 20.0),
        "clamp-mandrel": (t.end_plate_diameter, 0.0, t.spigot_length + held),
        "end-plate": (t.end_plate_diameter, 12.0, 8.0),
        "outer-clamp": (t.outer_clamp_bore, t.clamp_ring_bore, design.section.width + 20.0),
        "bore-gauge": (design.duty.bore, design.duty.bore, 2.0 * design.section.width),
    }[tool]


@pytest.mark.parametrize("request_", KINDS, ids=str)
def test_every_tool_is_named_reckoned_and_explained(request_):
    design, t = settled(request_)
    made = tool_list.tools(design, t)
    assert len(made) >= 7
    for tool in made:
        shape = tool.shape
        round_, hole, length = turned_to(tool.tool, design, t)
        assert shape.outside >= round_ and shape.outside > shape.hole
        assert shape.outside < 1.5 * round_ + 40.0
        assert (shape.hole, shape.length) == (pytest.approx(hole), pytest.approx(length))
        assert shape.fitted == (tool.tool not in NOT_FITTED), tool.tool
        assert shape.beside == BESIDE.get(tool.tool, 0.0), tool.tool
        # A title is two or three words, a material names a metal, and the reason is a sentence.
        assert len(tool.title.split()) < 6 and not tool.title.endswith(".")
        assert any(word in tool.material.lower() for word in ("steel", "iron", "bronze", "metal"))
        assert not tool.material.endswith(".") and len(tool.material) < 70
        assert tool.why.endswith(".") and len(tool.why) > 60
        assert material(tool.metal).family in ("steel", "iron")
        for size in tool.sizes:
            assert size.label and "_" not in size.label and " " not in size.name, size.name


@pytest.mark.parametrize(
    "request_",
    [
        # Where limits are shared out otherwise on a rigid lathe: the clamp was a micrometre small
        # for what its card allows, the former so much too small.
        {
            "bore": 20.0,
            "ring_type": "plain",
            "finishing": "band",
            "setting": "bound",
            "wall_pressure": 0.03,
        },
        {"bore": 25.0, "ring_type": "double-turn", "finishing": "band", "wall_pressure": 0.03},
        {"bore": 79.375},
        # The rigid lathe's blank may be bored 6 micrometres smaller.
        {
            "bore": 45.0,
            "finishing": "band",
            "wall_pressure": 0.05,
            "end_kerf": 2.0,
            "closed_gap": 0.3,
        },
    ],
)
@pytest.mark.parametrize("machine", ["light", "rigid"])
def test_tools_serve_the_card_of_every_lathe(request_, machine):
    tools = tools_of(request_)
    route = calculations.run("route", {**request_, "machine": machine})["operations"]
    card = {size["name"]: size.get("limits") for row in route for size in row["sizes"]}

    def limits(tool, name):
        (size,) = [one for one in tools[tool]["sizes"] if one["name"] == name]
        return size["limits"]["lower"]["value"], size["limits"]["upper"]["value"]

    lower, upper = limits("former", "former_diameter")
    assert card["former_diameter"]["lower"]["value"] <= lower < upper
    assert upper <= card["former_diameter"]["upper"]["value"]
    if "outer-clamp" in tools:
        largest = card["finish_outside_diameter"]["upper"]["value"]
        assert limits("outer-clamp", "outer_clamp_bore")[0] >= largest
    if "slitting-mandrel" in tools:
        # g6 begins so much under its size, as published/test_fits.py has ISO 286 printed.
        least = card["bored_inside_diameter"]["lower"]["value"]
        under = 0.007 if least < 30.0 else 0.009 if least < 50.0 else 0.010
        assert limits("slitting-mandrel", "slit_mandrel_diameter")[1] <= least - under + 1e-9
