"""The piece of metal that each tool is turned from, and its time on the lathe: from the sizes on
the tool's own card, by hand.

Common practice, no source: round a hole a wall of a tenth of it, 6 mm at least; 25 mm behind the
ring to be held by; on the piece 3 mm more across and 5 mm along. A hole over 60 mm is not drilled
out of the solid: the piece is a ring with 8 mm left in it.
"""

import math

import pytest

from core.test_tools_hold import KINDS, settled, sizes, tools_of
from ringwright.core.making import machining_table as tabled
from ringwright.core.making import tool_list
from ringwright.core.making.tool_work import Shape, piece, work
from ringwright.core.ring.allowances import CUT_ANGLES

TO_HOLD, OVER, ALONG = 25.0, 3.0, 5.0


def walled(hole):
    return hole + 2.0 * max(6.0, hole / 10.0)


def shapes(request):
    """Tool -> (outside, hole, length) as turned [mm], from the sizes that its card gives."""
    design, _ = settled(request)
    on_card = {tool: sizes(row) for tool, row in tools_of(request).items()}
    blank, width = design.blank.length, design.section.width
    wall = 0.5 * (design.blank.rough_outside - design.blank.bored_inside)

    def of(tool, name):
        return on_card[tool][name]

    made = {
        "blank-jaws": lambda: (walled(of("blank-jaws", "blank_jaws_bore")),
                               of("blank-jaws", "blank_jaws_bore"), blank),
        "slitting-mandrel": lambda: (of("slitting-mandrel", "slit_mandrel_diameter"), 0.0,
                                     of("slitting-mandrel", "slit_mandrel_length") + TO_HOLD),
        # A web is left, or a hole of about a third.
        "former": lambda: (of("former", "former_diameter"), 0.35 * of("former", "former_diameter"),
                           of("former", "former_length")),
        "spacer": lambda: (1.5 * of("spacer", "spacer_width") + 10.0, 0.0, blank + 10.0),
        # Its shoulder reaches under eight tenths of the wall.
        "pot": lambda: (walled(of("pot", "pot_bore")), of("pot", "pot_bore") - 1.6 * wall,
                        of("pot", "pot_depth") + TO_HOLD),
        "closing-ring": lambda: (walled(of("closing-ring", "closing_ring_bore")),
                                 of("closing-ring", "closing_ring_bore"),
                                 of("closing-ring", "closing_ring_width")),
        "closing-band": lambda: (20.0, 0.0, 20.0),
        "clamp-mandrel": lambda: (of("clamp-mandrel", "end_plate_diameter"), 0.0,
                                  of("clamp-mandrel", "spigot_length") + TO_HOLD),
        "end-plate": lambda: (of("end-plate", "end_plate_diameter"), 12.0, 8.0),
        "outer-clamp": lambda: (walled(of("outer-clamp", "outer_clamp_bore")) + 20.0,
                                of("outer-clamp", "clamp_ring_bore"), width + 20.0),
        "bore-gauge": lambda: (walled(request["bore"]), request["bore"], 2.0 * width),
    }  # fmt: skip
    return {tool: made[tool]() for tool in on_card}


@pytest.mark.parametrize("request_", KINDS, ids=str)
def test_the_piece_is_the_tool_and_what_is_turned_off(request_):
    made = tools_of(request_)
    for tool, (outside, hole, length) in shapes(request_).items():
        found = {name: size["value"] for name, size in made[tool]["piece"].items()}
        core = hole - 8.0 if hole > 60.0 else 0.0
        assert found["diameter"] == math.ceil(outside + OVER - 1e-9), tool
        assert found["hole"] == math.floor(core + 1e-9), tool
        assert found["length"] == math.ceil(length + ALONG - 1e-9), tool


def test_the_piece_in_inches_is_the_next_sixteenth():
    """80.3 mm is 3.161 in: 3 3/16; 63.7 mm is 2.508 in, downwards 2 1/2; 30 mm is 1.181: 1 3/16."""
    needed = work(Shape(77.3, 71.7, 25.0, 1, 0.0), "steel")
    found = {name: size.value / 25.4 for name, size in piece(needed, inch=True).items()}
    assert found == pytest.approx({"diameter": 3.1875, "hole": 2.5, "length": 1.1875})


# What takes place beside the lathe [min], and how many sizes have limits: estimates of the trade.
BESIDE = {
    "slitting-mandrel": 15.0, "spacer": 30.0, "closing-band": 30.0, "clamp-mandrel": 10.0,
    "outer-clamp": 30.0,
}  # fmt: skip
NO_LIMITS = ("closing-band", "end-plate")
IRONS = {"bore-gauge": "grey-iron"}


def minutes(metal, outside, hole, length, fitted, beside):
    """Set up 15, 5 a size with limits; outside turned down, both ends faced, drilled 25 mm at most
    and bored, parted, two light cuts on each fitted size: at n = 1000 v/(pi D), by the tables."""
    speeds, feeds = tabled.HSS_SPEEDS, tabled.FEEDS
    rough = speeds["turn-rough"][metal][0]

    def one(operation, v, size, travel, feed, times):
        turns = 1000.0 * v / (math.pi * size)
        return times * (travel / (feed * turns) + tabled.HANDLING[operation])

    def cuts(stock, operation):
        return math.ceil(stock / tabled.DEPTHS[operation][0] - 1e-9)

    across, along = outside + OVER, length + ALONG
    total = 15.0 + 5.0 * fitted + beside
    total += one("turn-rough", rough, across, along, tabled.LIGHT_ROUGHING_FEED[0],
                 cuts(OVER / 2.0, "turn-rough"))  # fmt: skip
    total += 2.0 * one("face", rough, across, (across - hole) / 2.0, feeds["face"][0], 1)
    total += one("part", rough / 2.0, outside, (outside - hole) / 2.0, feeds["part"][0], 1)
    core = hole - 8.0
    if hole <= 60.0:
        core = min(hole, 25.0)
        if hole:
            feed = drill_feed(metal, core)
            total += one("drill", speeds["drill"][metal][0], core, along, feed, 1)
    if hole > core:
        inner = cuts((hole - core) / 2.0, "bore-rough")
        total += one("bore-rough", 0.8 * rough, hole, along, feeds["bore-rough"][0], inner)
    if fitted:
        finish = speeds["turn-finish"][metal][0]
        for size in (outside, hole):
            if size:
                total += one("turn-finish", finish, size, along, feeds["turn-finish"][0], 2)
    return total


def drill_feed(metal, size):
    sizes_, feeds = tabled.DRILL_DIAMETERS, tabled.DRILL_FEEDS[metal]
    if size <= sizes_[0]:
        return feeds[0] * size / sizes_[0]
    at = max(place for place, one in enumerate(sizes_[:-1]) if size >= one)
    share = (size - sizes_[at]) / (sizes_[at + 1] - sizes_[at])
    return feeds[at] + share * (feeds[at + 1] - feeds[at])


@pytest.mark.parametrize("request_", KINDS, ids=str)
def test_the_time_of_a_tool_adds_up(request_):
    made = tools_of(request_)
    design, _ = settled(request_)
    metals = {**IRONS, "former": design.former_material.key, "spacer": design.former_material.key}
    for tool, shape in shapes(request_).items():
        fitted = 0 if tool in NO_LIMITS else 1
        metal = tabled.CUTS_AS[metals.get(tool, "steel")]
        due = minutes(metal, *shape, fitted, BESIDE.get(tool, 0.0))
        assert made[tool]["time"]["value"] == pytest.approx(due, rel=1e-9), tool


@pytest.mark.parametrize("request_", KINDS, ids=str)
def test_depths_and_widths_that_a_tool_has_of_its_ring(request_):
    """Soft jaws take six tenths of the blank, the outer clamp nine of the ring, a band eight: none
    stands in the tool's way. Angled faces of a spacer lie at the angle of the ends."""
    design, _ = settled(request_)
    made = {tool: sizes(row) for tool, row in tools_of(request_).items()}
    width = design.section.width
    assert made["blank-jaws"]["blank_jaws_depth"] == pytest.approx(0.6 * design.blank.length)
    if "outer-clamp" in made:
        assert made["outer-clamp"]["outer_clamp_depth"] == pytest.approx(0.9 * width)
    if "closing-band" in made:
        assert made["closing-band"]["closing_band_width"] == pytest.approx(0.8 * width)
    if "spacer" in made:
        angle = CUT_ANGLES[design.duty.end_cut]
        assert made["spacer"].get("spacer_angle", 90.0) == angle


@pytest.mark.parametrize(
    ("end_cut", "across"), [("square", False), ("angled-60", True), ("angled-45", True)]
)
def test_sizes_of_a_spacer_in_the_order_they_are_worked(end_cut, across):
    """Square faces are taken with a micrometer along the ring; leaning ones square to themselves,
    and their angle stands before the taper."""
    spacer = tools_of({"bore": 150.0, "ring_type": "plain", "end_cut": end_cut})["spacer"]
    names = [size["name"] for size in spacer["sizes"]]
    leaning = ["spacer_across", "spacer_angle"] if across else []
    assert names == ["spacer_width", *leaning, "spacer_taper", "spacer_seat"]
    along = spacer["sizes"][0]["reading"]
    assert along.startswith("caliper" if across else "micrometer")


@pytest.mark.parametrize(("bore", "grade_6"), [(80.0, 0.019), (150.0, 0.025), (300.0, 0.032)])
def test_a_trial_bore_is_never_over_the_cylinder(bore, grade_6):
    """IT6 under it (ISO 286-1, table 1): a ring filed in it has no less gap in the cylinder."""
    (size,) = tools_of({"bore": bore, "ring_type": "plain"})["bore-gauge"]["sizes"]
    ends = (size["limits"]["lower"]["value"], size["limits"]["upper"]["value"])
    assert ends == pytest.approx((bore - grade_6, bore), abs=1e-9)


@pytest.mark.parametrize(
    ("bore", "under"),
    # IT6 of ISO 286-1, table 1: 6 micrometres to 3 mm, 56 over 800 to 1000 mm; none beyond.
    [(0.99, 0.0), (1.0, 0.006), (1.005, 0.006), (1000.0, 0.056), (1000.1, 0.0), (1005.0, 0.0)],
)
def test_a_trial_bore_is_within_grade_6_where_the_standard_has_one(bore, under):
    assert tool_list.trial_limits(bore) == pytest.approx((bore - under, bore), abs=1e-9)


@pytest.mark.parametrize(
    ("hole", "outside"), [(40.0, 52.0), (59.9, 71.9), (60.1, 72.12), (120.0, 144.0)]
)
def test_a_wall_round_a_hole_is_a_tenth_of_it_and_six_millimetres_at_least(hole, outside):
    design, tools = settled({"bore": 79.375})
    made = tool_list.tools(design, tools._replace(closing_ring_bore=hole))
    (ring,) = [one for one in made if one.tool == "closing-ring"]
    assert ring.shape.outside == pytest.approx(outside)


@pytest.mark.parametrize(
    ("request_", "through"),
    [({"bore": 80.0}, True), ({"bore": 80.0, "ring_type": "plain", "setting": "bound"}, False)],
)
def test_only_a_double_turn_ring_lies_inside_out_on_its_former(request_, through):
    former = tools_of(request_)["former"]
    assert ("Inside out" in former["why"]) is through


def test_a_piece_is_in_millimetres_unless_inches_are_asked_for():
    design, tools = settled({"bore": 80.0})
    plate = next(one for one in tool_list.tools(design, tools) if one.tool == "end-plate")
    sizes_ = {name: size.value for name, size in tool_list.tree(plate)["piece"].items()}
    # Eight millimetres thick and 5 more; in inches 33/64 is not a sixteenth, 9/16 is.
    assert sizes_["length"] == 13.0
    inches = tool_list.tree(plate, True)["piece"]
    assert inches["length"].value == pytest.approx(9.0 * 25.4 / 16.0)
