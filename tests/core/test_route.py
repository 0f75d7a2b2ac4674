"""The route card: the right operations in the right order, with the sizes of the other answers."""

import math

import pytest

from ringwright.core import calculations

DOUBLE = [
    "survey",
    "face-bar",
    "turn-rough",
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


def test_operations_in_order():
    assert keys(route(bore=80.0)) == DOUBLE
    assert keys(route(bore=80.0, ring_type="plain")) == PLAIN
    assert "saw-step" in keys(route(bore=80.0, ring_type="plain", end_cut="stepped"))
    assert "put-on-former-bound" in keys(route(bore=80.0, setting="bound"))
    banded = keys(route(bore=80.0, finishing="band"))
    assert banded.index("clamp-band") < banded.index("turn-finish") < banded.index("bore-clamped")


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


def test_speeds_follow_the_definition_and_the_lathe():
    """n = 1000 v/(pi D); with speeds listed, the next below."""
    free = route(bore=80.0)
    for operation in free["operations"]:
        if operation["key"] == "turn-rough":
            diameter = operation["sizes"][0]["value"]
            speed = operation["surface_speed"]["value"] * 1000 / (math.pi * diameter)
            assert operation["speed"]["value"] == pytest.approx(speed)
            assert (
                18.0 <= operation["surface_speed"]["value"] <= 25.0
            )  # a reference table, HSS, read
    geared = route(bore=80.0, spindle_speeds=[30.0, 65.0, 130.0, 300.0])
    used = {
        operation["speed"]["value"]
        for operation in geared["operations"]
        if "speed" in operation and operation["key"] != "slit"
    }
    assert used <= {30.0, 65.0, 130.0, 300.0}


def test_a_lathe_that_cannot_go_slow_enough_is_said():
    found = route(bore=600.0, spindle_speeds=[200.0])["findings"]
    assert [(entry["check"], entry["outcome"]) for entry in found] == [("spindle-speed", "watch")]


def test_more_rings_take_longer_but_share_the_soak():
    two, four = route(bore=80.0, rings=2), route(bore=80.0, rings=4)
    first = two["figures"]["time_first_ring"]["value"]
    assert four["figures"]["time_first_ring"]["value"] == pytest.approx(first)
    extra = four["figures"]["time_all_rings"]["value"] - two["figures"]["time_all_rings"]["value"]
    assert 0.0 < extra < 2 * first


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
