"""Sizes of an operation stand in the order in which they are worked; rows say for whom they are.

The order is the work's: what is held, what is set, what is cut.
"""

import pytest

from core.test_last_cuts import DOUBLE, PLAIN, worked
from ringwright.core import calculations
from ringwright.core.making import route_sawing
from ringwright.core.ring.soak import soak_range

PLASTIC = {**PLAIN, "ring_material": "filled-ptfe-carbon", "wall_pressure": 0.005}


def names(row):
    return [size.name for size in row.sizes]


def test_operations_are_numbered_from_one():
    card = calculations.run("route", {"bore": 80.0})["operations"]
    assert [row["number"] for row in card] == list(range(1, len(card) + 1))


def test_the_angle_of_the_ends_is_set_before_the_saw_cuts():
    assert names(worked(PLAIN).plain_sawing()[0]) == ["end_angle", "end_kerf"]
    stepped = worked({**PLAIN, "end_cut": "stepped", "end_kerf": 0.8}).plain_sawing()[0]
    assert names(stepped) == ["end_kerf", "tongue_length", "sawn_tongue_width"]


@pytest.mark.parametrize(
    ("request_", "keys"),
    [
        (DOUBLE, ["turn-through", "put-on-former", "soak", "turn-back", "measure-free-gap"]),
        (PLAIN, ["spread", "soak", "take-off", "measure-free-gap"]),
        ({**PLAIN, "setting": "bound"},
         ["put-on-former-bound", "soak", "take-off", "measure-free-gap"]),
    ],
)  # fmt: skip
def test_a_ring_is_set_in_the_order_of_the_work(request_, keys):
    assert [row.key for row in worked(request_).setting()] == keys


def test_the_heat_never_to_pass_is_told_up_to_itself():
    hottest = soak_range("iron").hottest
    for asked, told in ((hottest - 1.0, True), (hottest, True), (hottest + 1.0, False)):
        soak = next(
            row
            for row in worked({**PLAIN, "soak_temperature": asked}).setting()
            if row.key == "soak"
        )
        assert ("soak_hottest" in names(soak)) is told
        # An hour held, and half an hour to come to heat.
        assert soak.minutes == soak.together == 90.0


def finishing(request):
    return {row.key: row for row in worked(request).finishing()}


def test_a_ring_with_a_step_lies_on_its_strips_before_its_width_is_faced():
    step = finishing(DOUBLE)["face-step"]
    assert names(step) == ["pot_bore", "thick_strip", "thin_strip", "ring_width", "side_flatness"]
    assert names(finishing(PLAIN)["face-sides"]) == ["pot_bore", "ring_width", "side_flatness"]


@pytest.mark.parametrize(("request_", "ra"), [(PLAIN, "Ra 0.8"), (PLASTIC, "Ra 1.6")])
def test_sides_of_metal_are_rubbed_and_those_of_plastic_turned_alone(request_, ra):
    """Common practice, no source."""
    (width,) = [s for s in finishing(request_)["face-sides"].sizes if s.name == "ring_width"]
    assert width.label.endswith(ra)


def test_a_ring_is_inspected_free_first_and_closed_last():
    found = names(finishing(PLAIN)["inspect"])
    sized = ["radial_thickness", "ring_width", "closed_gap_reading"]
    assert found == ["free_gap", *sized, "scale_reading"]
    assert names(finishing(PLASTIC)["inspect"]) == sized


def sawing(request, scarf=None):
    work = worked(request)
    if scarf is not None:
        work.t = work.t._replace(scarf_length=scarf)
    return {row.key: row for row in route_sawing.rows(work, {})}


@pytest.mark.parametrize(
    ("end_cut", "scarf", "marked"),
    [("square", None, False), ("angled-60", None, True), ("square", 0.005, True)],
)
def test_the_run_of_an_end_is_marked_out_where_it_runs(end_cut, scarf, marked):
    found = names(sawing({**DOUBLE, "end_cut": end_cut}, scarf)["mark-out"])
    runs = ["scarf_length"] if marked else []
    assert found == ["bridge_length", "band_width", "end_angle", *runs]


def test_the_saw_is_set_from_what_holds_the_blank_to_how_far_the_table_turns():
    cut = ["cutter_diameter", "slit_width", "cutter_centre_distance", "start_offset",
           "table_travel"]  # fmt: skip
    assert names(sawing(DOUBLE)["slit"]) == ["slit_mandrel_diameter", *cut]
    on_stick = sawing({**DOUBLE, "slit_on_stick": True})
    assert names(on_stick["slit-stick"]) == cut
    assert names(on_stick["saw-off"]) == [
        "cut_off_step", "blank_length", "cutter_diameter", "cutter_centre_distance"
    ]  # fmt: skip


def test_a_drill_is_of_high_speed_steel_and_a_turning_tool_as_it_was_asked_for():
    bench = worked(PLAIN).bench
    bench.tool = "carbide"
    assert bench.cut("drill", 20.0, 30.0).tool == "hss"
    assert bench.cut("bore", 60.0, 30.0).tool == "carbide"


def test_rows_say_whether_they_are_for_each_ring_and_how_long_all_take():
    """Three rings on two sticks; a cut of 2 min with 0.5 to set; a hand's 10."""
    bench = worked({**PLAIN, "rings": 3}).bench
    made = bench.cut("face", 80.0, 20.0)._replace(time=2.5, cutting_time=2.0)
    for row, each, together in (
        (bench.turned("face-blank", [], made), True, 7.5),
        (bench.on_sticks("turn-rough", [], made, 2), True, 7.0),
        (bench.once("face-bar", [], made, 2), False, 5.0),
        (bench.hand("inspect", []), True, 30.0),
        (bench.set_up("hold-stick", [], 2), False, 20.0),
        (bench.waited("soak", [], 90.0), False, 90.0),
    ):
        assert (row.each, row.together) == (each, pytest.approx(together)), row.key
