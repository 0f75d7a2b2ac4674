"""The route card: the right operations in the right order, with the sizes of the other answers."""

import math

import numpy as np
import pytest
from scipy.spatial.transform import Rotation

from ringwright.core import calculations
from ringwright.core.making import route_rows, route_sawing

DOUBLE = [
    "survey",
    "face-bar",
    "turn-rough",
    "bore-rough",
    "bore",
    "part-off",
    "face-blank",
    "mark-out",
    "slit",
    "saw-wedges",
    "saw-ends",
    "deburr",
    "turn-through",
    "put-on-former",
    "soak",
    "turn-back",
    "measure-free-gap",
    "face-step",
    "clamp",
    "turn-finish",
    "dress-ends",
    "inspect",
    "fit-double",
]
PLAIN = [
    "survey",
    "face-bar",
    "turn-rough",
    "bore-rough",
    "bore",
    "part-off",
    "face-blank",
    "saw-end",
    "deburr",
    "spread",
    "soak",
    "take-off",
    "measure-free-gap",
    "face-sides",
    "clamp",
    "turn-finish",
    "dress-ends",
    "inspect",
    "fit",
]


def route(**request):
    return calculations.run("route", request)


def keys(answer):
    return [operation["key"] for operation in answer["operations"]]


@pytest.mark.parametrize("ring_type", ["plain", "double-turn"])
def test_every_size_says_what_it_is_in_and_how_it_is_taken(ring_type):
    sizes = [
        size for row in route(bore=80.0, ring_type=ring_type)["operations"] for size in row["sizes"]
    ]
    assert len(sizes) > 30
    for size in sizes:
        assert " " not in size["name"] and "_" not in size["label"]
        assert type(size["reading"]) is str and len(size["reading"]) > 2, size["name"]
        assert size["unit"] in ("mm", "degC", "h", "deg", "kg", "N", "1", "min"), size["name"]
        if "limits" in size:
            low, high = (size["limits"][side]["value"] for side in ("lower", "upper"))
            assert low < high and {one["unit"] for one in size["limits"].values()} == {"mm"}


def test_a_row_with_other_sizes_is_else_the_same_row():
    row = route_rows.Operation("clamp", ["bore"], "cut", 5.0, 15.0, True)
    assert route_rows.changed(row, []) == ("clamp", [], "cut", 5.0, 15.0, True)


@pytest.mark.parametrize("more", [{"ring_type": "plain"}, {"slit_on_stick": True}])
def test_times_are_of_one_ring_and_of_all(more):
    """What goes ring by ring takes as long for each; a soak, or a stick set up, is for all."""
    card = route(bore=80.0, rings=3, soak_time=2.0, setting="sprung", **more)
    told = {True: 0, False: 0}
    for one in card["operations"]:
        assert type(one["each_ring"]) is bool
        if "time" in one:
            told[one["each_ring"]] += 1
            share = one["time_all"]["value"] / one["time"]["value"]
            assert 1.0 - 1e-9 <= share <= 3.0 + 1e-9, one["key"]
            if one["key"] in ("deburr", "dress-ends", "inspect", "turn-finish"):
                assert share == pytest.approx(3.0) and one["each_ring"]
            if one["key"] in ("soak", "hold-stick"):
                assert share == pytest.approx(1.0) and not one["each_ring"]
    assert min(told.values()) >= 1


def test_a_stick_may_lean_by_half_of_what_is_left_to_face():
    """By hand: a lean of run over travel takes run * outside / travel off the side of the ring."""
    given = {"bore": 80.0, "slit_on_stick": True, "facing_allowance": 0.3}
    held = {size["name"]: size["value"] for size in row(route(**given), "hold-stick")["sizes"]}
    outside = calculations.run("tooling", given)["figures"]["rough_outside_diameter"]["value"]
    assert held["stick_run"] * outside / held["dial_travel"] == pytest.approx(0.15)


def test_the_saw_cuts_at_its_own_rim():
    made = row(route(bore=80.0), "slit")
    saw = next(size["value"] for size in made["sizes"] if size["name"] == "cutter_diameter")
    rim = math.pi * saw * made["speed"]["value"] / 1000.0
    assert made["surface_speed"]["value"] == pytest.approx(rim)


def test_operations_in_order():
    assert keys(route(bore=80.0)) == DOUBLE
    assert keys(route(bore=80.0, ring_type="plain")) == PLAIN
    assert "saw-step" in keys(route(bore=80.0, ring_type="plain", end_cut="stepped"))
    assert "put-on-former-bound" in keys(route(bore=80.0, setting="bound"))
    banded = keys(route(bore=80.0, finishing="band"))
    assert banded.index("clamp-band") < banded.index("turn-finish") < banded.index("bore-clamped")


def test_a_blank_slit_on_the_stick_is_sawn_off_last():
    """Turned, bored, slit and sawn off in that order; no parting, no facing of a blank."""
    one = keys(route(bore=80.0, slit_on_stick=True))
    begun = ["survey", "face-bar", "turn-rough", "bore-rough", "bore"]
    sawn = ["hold-stick", "mark-out", "slit-stick", "saw-off", "saw-wedges", "saw-ends"]
    assert one[: one.index("deburr")] == begun + sawn
    assert one[one.index("deburr") :] == DOUBLE[DOUBLE.index("deburr") :]
    assert keys(route(bore=80.0, ring_type="plain", slit_on_stick=True)) == PLAIN


@pytest.mark.parametrize("bore", [25.4, 79.375, 300.0])
def test_the_saw_walks_along_the_stick_by_one_step(bore):
    """Slits and cuts laid out along a stick: each blank as long as it says, its slit midway."""
    tools = calculations.run("tooling", {"bore": bore, "slit_on_stick": True})["figures"]
    value = {name: figure["value"] for name, figure in tools.items()}
    saw, step = value["cut_off_width"], value["cut_off_step"]
    at = value["band_width"] + saw / 2  # the first slit, from the faced end
    face = 0.0
    for _ in range(5):
        cut = at + step
        assert cut - saw / 2 - face == pytest.approx(value["blank_length"], abs=1e-9)
        assert (at - saw / 2) - face == pytest.approx(cut - saw / 2 - (at + saw / 2), abs=1e-9)
        face, at = cut + saw / 2, cut + step
    assert value["part_length"] == value["blank_length"]


@pytest.mark.parametrize("bore", [25.4, 79.375, 300.0])
def test_a_saw_that_cuts_wide_keeps_the_blank_in_its_limits(bore):
    """Slits and cuts laid out with the widest saw of the card, moved along as its words have it."""
    card = route(bore=bore, slit_on_stick=True)
    off = row(card, "saw-off")
    assert "wider than the saw, move it further by half the difference" in off["text"]
    slit = next(one for one in row(card, "slit-stick")["sizes"] if one["name"] == "slit_width")
    step, blank = (
        next(one for one in off["sizes"] if one["name"] == name)
        for name in ("cut_off_step", "blank_length")
    )
    low, high = (blank["limits"][end]["value"] for end in ("lower", "upper"))
    band = next(one for one in row(card, "mark-out")["sizes"] if one["name"] == "band_width")
    for wide in (slit["value"], slit["limits"]["upper"]["value"]):
        move = step["value"] + 0.5 * (wide - slit["value"])
        at, face = band["value"] + 0.5 * slit["value"], 0.0
        for _ in range(5):
            cut = at + move
            length = cut - 0.5 * wide - face
            assert low - 1e-9 <= length <= high + 1e-9
            assert at - 0.5 * wide - face == pytest.approx(0.5 * (length - wide), abs=1e-9)
            face, at = cut + 0.5 * wide, cut + move


@pytest.mark.parametrize("lean", [0.0005, 0.003, 0.01])
def test_a_stick_that_leans_as_far_as_the_dial_may_read_still_cleans_up(lean):
    """The sawn side of a stick that leans, by rotation of its rim; half the allowance is left."""
    along, outside = 60.0, 83.0
    rim = np.array([[outside / 2 * math.cos(a), outside / 2 * math.sin(a), 0.0]
                    for a in np.linspace(0, 2 * math.pi, 721)])  # fmt: skip
    turn = Rotation.from_euler("y", math.atan(lean)).as_matrix()
    runs_out = np.ptp((rim @ turn.T)[:, 2])
    # The allowance of which half is just run out by that lean.
    allowance = runs_out / route_sawing.RUN_SHARE
    reads = route_sawing.squareness(along=along, outside=outside, allowance=allowance)
    assert reads == pytest.approx(along * lean, rel=1e-4)


def test_a_stick_that_is_slit_is_held_by_as_much_as_the_table_needs():
    """The end in the lathe's chuck is the one the table holds: as long as the longer of the two."""
    card = route(bore=80.0, slit_on_stick=True, table_grip=47.0)
    assert row(card, "face-bar")["sizes"][0]["value"] == 47.0
    assert row(card, "hold-stick")["sizes"][0]["value"] == 47.0
    card = route(bore=80.0, slit_on_stick=True, table_grip=10.0, chucking_piece=33.0)
    assert row(card, "face-bar")["sizes"][0]["value"] == 33.0


def test_the_stick_is_set_up_once_and_slit_ring_by_ring():
    one, many = route(bore=80.0, slit_on_stick=True), route(bore=80.0, slit_on_stick=True, rings=30)
    held = row(many, "hold-stick")
    # Blanks and the cuts between them stand out by one and a half diameters at most.
    sizes = {size["name"]: size["value"] for size in held["sizes"]}
    outside = calculations.run("tooling", {"bore": 80.0})["figures"]["rough_outside_diameter"]
    assert sizes["dial_travel"] <= 1.5 * outside["value"]
    assert not held["each_ring"]
    sticks = held["time_all"]["value"] / held["time"]["value"]
    assert sticks == math.ceil(30 / (sizes["dial_travel"] / (sizes_of(many, "saw-off") + 1.0)))
    for key in ("slit-stick", "saw-off"):
        ring = row(one, key)["time"]["value"]
        assert row(many, key)["time_all"]["value"] == pytest.approx(30 * ring, rel=1e-9)


def sizes_of(card, key):
    return next(size["value"] for size in row(card, key)["sizes"] if size["name"] == "blank_length")


@pytest.mark.parametrize("ring_type", ["plain", "double-turn"])
@pytest.mark.parametrize("bore", [15.0, 80.0, 600.0])
def test_sizes_on_the_card_are_those_of_sizing_and_tooling(bore, ring_type):
    request = {"bore": bore, "ring_type": ring_type}
    figures = dict(calculations.run("sizing", request)["figures"])
    figures.update(calculations.run("tooling", request)["figures"])
    compared = 0
    for operation in route(**request)["operations"]:
        assert operation["title"] and operation["text"] and operation["check"]
        for size in operation["sizes"]:
            if size["name"] in figures:
                compared += 1
                assert size["value"] == figures[size["name"]]["value"], size["name"]
            if "limits" in size:
                assert size["limits"]["lower"]["value"] < size["limits"]["upper"]["value"]
    assert compared >= 12


def row(answer, key):
    return next(one for one in answer["operations"] if one["key"] == key)


def test_a_solid_bar_is_drilled_first():
    """A 24 mm ring of a solid bar: the largest whole drill at least 2 mm under the bore."""
    solid = route(bore=24.0, bar_form="solid")
    assert keys(solid)[1:5] == ["face-bar", "drill", "turn-rough", "bore-rough"]
    bore = row(solid, "bore")["sizes"][0]["value"]
    drill = row(solid, "drill")["sizes"][0]["value"]
    assert drill == math.floor(bore - 2.0)
    # Drilling grey iron with high-speed steel, 25 to 35 m/min (teaching-speeds, read).
    assert 25.0 <= row(solid, "drill")["surface_speed"]["value"] <= 35.0
    carbide = route(bore=24.0, bar_form="solid", tool_material="carbide")
    assert row(carbide, "drill")["speed"] == row(solid, "drill")["speed"]
    assert "drill" not in keys(route(bore=80.0, bar_form="cored"))
    # No larger drill than a small lathe holds.
    assert row(route(bore=80.0, bar_form="solid"), "drill")["sizes"][0]["value"] == 25.0


def test_metal_from_skin_and_core_is_counted_in_passes():
    """On a light lathe 0.75 mm a cut outside and 0.5 mm inside, 0.25 mm left to size the bore."""
    request = {"bore": 79.375, "bar_sizes": "inch", "bar_form": "cored"}
    bar = calculations.run("job", request)["stock"]["figures"]
    # One producer's table (read): a 3 1/4 in bar measures 0.110 in more, its bore 0.250 in less.
    assert bar["bar_diameter"]["value"] == pytest.approx(3.25 * 25.4)
    skin, core = 3.36 * 25.4, bar["bar_bore"]["value"] - 0.25 * 25.4
    card = route(**request)
    outside = row(card, "turn-rough")["sizes"][0]["value"]
    inside = row(card, "bore")["sizes"][0]["value"]
    turned = math.ceil((skin - outside) / 2 / 0.75)
    bored = math.ceil(((inside - core) / 2 - 0.25) / 0.5)
    assert row(card, "turn-rough")["passes"] == turned
    assert row(card, "bore-rough")["passes"] == bored
    assert row(card, "bore")["passes"] == 2


def test_a_stepped_end_is_sawn_to_its_tongues():
    """A 6 mm ring, 0.25 mm to face on each side, a 0.8 mm saw: (6.5 - 0.8)/2 before facing."""
    sizes = row(
        route(bore=80.0, ring_type="plain", end_cut="stepped", ring_width=6.0, end_kerf=0.8),
        "saw-step",
    )["sizes"]
    found = {size["name"]: size["value"] for size in sizes}
    assert found["tongue_length"] == 6.0
    assert found["sawn_tongue_width"] == pytest.approx(2.85)


def test_a_casting_serves_where_no_bar_is_made():
    """3 mm on the radius outside and in, so four cuts of 0.75 mm."""
    card = route(bore=600.0)
    assert row(card, "turn-rough")["passes"] == 4
    assert "drill" not in keys(card)


@pytest.mark.parametrize("ring_type", ["plain", "double-turn"])
def test_both_sides_are_faced(ring_type):
    card = route(bore=80.0, ring_type=ring_type)
    for key in ("face-blank", "face-step" if ring_type == "double-turn" else "face-sides"):
        assert row(card, key)["passes"] % 2 == 0, key


def test_blanks_on_one_stick_share_the_setting_of_the_tool():
    """Four rings on one stick: four times the cutting, once the half minute to set each cut."""
    one, four = route(bore=80.0, rings=1), route(bore=80.0, rings=4)
    single, together = row(one, "turn-rough"), row(four, "turn-rough")
    cutting = single["time"]["value"] - 0.5 * single["passes"]
    assert together["time_all"]["value"] == pytest.approx(4 * cutting + 0.5 * single["passes"])
    alone = row(one, "part-off")["time"]["value"]
    assert row(four, "part-off")["time_all"]["value"] == pytest.approx(4 * alone, rel=1e-11)


def test_speeds_follow_the_definition_and_the_lathe():
    """n = 1000 v/(pi D), D over the skin; with speeds listed, the next below."""
    free = route(bore=80.0)
    diameter = calculations.run("job", {"bore": 80.0})["stock"]["figures"]["bar_as_cast"]["value"]
    roughing = row(free, "turn-rough")
    speed = roughing["surface_speed"]["value"] * 1000 / (math.pi * diameter)
    assert roughing["speed"]["value"] == pytest.approx(speed)
    assert 18.0 <= roughing["surface_speed"]["value"] <= 25.0  # a reference table, HSS, read
    geared = route(bore=80.0, spindle_speeds=[30.0, 65.0, 130.0, 300.0])
    used = {
        operation["speed"]["value"]
        for operation in geared["operations"]
        if "speed" in operation and operation["key"] != "slit"
    }
    assert used <= {30.0, 65.0, 130.0, 300.0}


def test_a_lathe_that_cannot_go_slow_enough_is_said():
    found = route(bore=600.0, spindle_speeds=[200.0])["findings"]
    said = [(entry["check"], entry["outcome"]) for entry in found]
    assert said == [("limits", "good"), ("spindle-speed", "watch")]


def test_limits_closer_than_the_lathe_holds_are_said():
    """A tenth of a millimetre of wall to five hundredths: bore and outside share 0.02 each way."""
    small = {"bore": 10.5, "ring_type": "plain", "radial_thickness": 0.3, "wall_pressure": 0.02}
    found = {row["check"]: row for row in route(**small)["findings"]}
    assert found["limits"]["outcome"] == "watch"
    assert found["limits"]["value"]["value"] < found["limits"]["limit"]["value"]


def test_more_rings_take_longer_but_share_the_soak():
    two, four = route(bore=80.0, rings=2), route(bore=80.0, rings=4)
    first = two["figures"]["time_first_ring"]["value"]
    assert four["figures"]["time_first_ring"]["value"] == pytest.approx(first)
    extra = four["figures"]["time_all_rings"]["value"] - two["figures"]["time_all_rings"]["value"]
    assert 0.0 < extra < 2 * first


@pytest.mark.parametrize("ring_type", ["plain", "double-turn"])
@pytest.mark.parametrize(
    "end_cut, degrees", [("angled-45", 45.0), ("angled-60", 60.0), ("square", 90.0)]
)
def test_whoever_saws_the_ends_is_told_their_angle(ring_type, end_cut, degrees):
    card = route(bore=80.0, ring_type=ring_type, end_cut=end_cut)["operations"]
    told = {
        row["key"]: size["value"]
        for row in card
        for size in row["sizes"]
        if size["name"] == "end_angle"
    }
    sawn = {"saw-end"} if ring_type == "plain" else {"mark-out", "saw-ends"}
    assert told == dict.fromkeys(sawn, degrees)


def test_several_cuts_are_not_called_one():
    for ring_type in ("plain", "double-turn"):
        for row in route(bore=80.0, ring_type=ring_type)["operations"]:
            assert row.get("passes", 1) == 1 or "one cut" not in row["text"], row["key"]


def test_cautions_stand_where_the_work_is():
    by_key = {operation["key"]: operation for operation in route(bore=80.0)["operations"]}

    def cautions(key):
        return {caution["key"] for caution in by_key[key]["cautions"]}

    assert "hot-work" in cautions("soak")
    assert "slitting-saw" in cautions("slit")
    assert "stored-spring" in cautions("turn-through")
    assert "pressure-system" in cautions("fit-double")
    assert "rotating-work" in cautions("turn-finish")
    listed = {caution["key"] for caution in route(bore=80.0)["cautions"]}
    assert {"figures", "pressure-system", "hot-work"} <= listed


def test_the_shops_own_parting_tool_settles_how_many_stand_on_a_stick():
    """A wider tool, fewer blanks on what stands out by one and a half diameters: more sticks."""
    asked = {"bore": 80.0, "rings": 30, "ring_type": "plain"}
    part = calculations.run("tooling", asked)["figures"]["part_length"]["value"]
    outside = calculations.run("tooling", asked)["figures"]["rough_outside_diameter"]["value"]
    faced = {}
    for width in (3.0, 12.0):
        rows = {one["key"]: one for one in route(**asked, parting_width=width)["operations"]}
        sticks = math.ceil(30 / int(1.5 * outside / (part + width)))
        faced[sticks] = rows["face-bar"]["time_all"]["value"] / rows["face-bar"]["time"]["value"]
    assert len(faced) == 2
    for sticks, times in faced.items():
        assert times == pytest.approx(sticks, rel=1e-9)
    usual = row(route(**asked), "face-bar")
    given = row(route(**asked, parting_width=3.0), "face-bar")
    assert usual == given


@pytest.mark.parametrize("bore", [150.0, 260.0, 400.0, 700.0])
def test_a_lathe_too_fast_is_told_a_tool_that_stands_it_or_that_none_does(bore):
    """Follow the remedy and the finding is gone; where nothing clears it, the words say so."""
    asked = {"bore": bore, "ring_type": "plain", "spindle_speeds": [60.0, 200.0]}
    spoken = {one["check"]: one for one in route(**asked)["findings"]}
    told = spoken["spindle-speed"]
    assert told["outcome"] == "watch"
    carbide = route(**asked, tool_material="carbide")["findings"]
    cleared = not [
        one for one in carbide if one["check"] == "spindle-speed" and one["outcome"] == "watch"
    ]
    given = {one["input"]: one["value"] for one in told.get("apply", ())}
    assert given == ({"tool_material": "carbide"} if cleared else {})
    assert told["remedy"].startswith("No one change") is not cleared


@pytest.mark.parametrize("bore", [30.0, 80.0, 250.0])
def test_a_ring_is_wound_on_as_its_stress_is_judged(bore):
    """Its first end stays at the piston's edge: let down by its width it is worse, and is told."""
    text = next(one for one in route(bore=bore)["operations"] if one["key"] == "fit-double")
    steps = text["text"].split(". ")
    on = next(step for step in steps if "like a key ring" in step)
    assert "at its very edge" in on
    assert "groove" not in on
    assert next(step for step in steps if "groove" in step).startswith("Only when all of it is on")
    wide = calculations.run("sizing", {"bore": bore, "ring_width": 0.09 * bore})
    findings = {one["check"]: one for one in wide["findings"]}
    assert findings["wound-on"]["outcome"] == "good"
    told = findings["wound-on-in-haste"]
    assert "let down" in told["why"]
    assert "at the piston's edge" in told["remedy"]
