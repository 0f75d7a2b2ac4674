"""Speeds, feeds and times against printed tables and a textbook's worked example."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ringwright.core.catalogue.inputs_blank import SAWS
from ringwright.core.catalogue.inputs_tools import MACHINES, TOOLS
from ringwright.core.making import machining
from ringwright.core.making.machining_table import (
    CUTS_AS,
    OPERATIONS,
)
from ringwright.core.problems import OutOfRange
from ringwright.core.properties.material_table import MATERIALS
from ringwright.core.ring import blank
from ringwright.core.sources import SOURCES

FOOT = 0.3048


@pytest.mark.parametrize(
    ("operation", "tool", "material", "low", "high"),
    [
        # A published reference table of cutting conditions, m/min (read).
        ("turn-rough", "hss", "grey-iron", 18, 25),
        ("turn-finish", "hss", "grey-iron", 30, 35),
        ("turn-rough", "carbide", "grey-iron", 60, 90),
        ("turn-finish", "carbide", "grey-iron", 90, 130),
        ("turn-rough", "hss", "steel", 35, 45),
        ("turn-finish", "hss", "steel", 50, 70),
        ("turn-rough", "carbide", "steel", 150, 200),
        ("turn-rough", "hss", "aluminium", 150, 200),
        # A college's tutorial table (read).
        ("drill", "hss", "grey-iron", 25, 35),
        ("drill", "hss", "steel", 30, 36),
        ("mill", "hss", "grey-iron", 15, 30),
        ("mill", "hss", "steel", 25, 35),
        ("turn-rough", "hss", "stainless-steel", 9, 18),
        # The same: slots 40 % slower.
        ("slit-saw", "hss", "steel", 15, 21),
        # The manual of a circular saw: grey iron 25 m/min in thin sections to 17 in thick (read).
        ("slit-saw", "hss", "grey-iron", 17, 25),
        # A table for bench lathes: bronze 200 to 250 ft/min (read).
        ("turn-rough", "hss", "gunmetal", 200 * FOOT, 250 * FOOT),
        # A workshop table: brass and bronze 250 to 500 ft/min, carbide twice as much (read).
        ("turn-finish", "hss", "phosphor-bronze", 250 * FOOT, 500 * FOOT),
        ("turn-finish", "carbide", "phosphor-bronze", 500 * FOOT, 1000 * FOOT),
    ],
)
def test_speeds_match_the_printed_tables(operation, tool, material, low, high):
    found = machining.cutting_speed(operation, tool, material)
    assert found.low == pytest.approx(low, abs=0.5)
    assert found.high == pytest.approx(high, abs=1.0)


@pytest.mark.parametrize(
    ("operation", "material", "low", "high"),
    [
        # A shop course's quick reference: high-speed steel on plastics (read).
        ("turn-rough", "filled-ptfe-carbon", 200, 400),
        ("turn-finish", "filled-ptfe-glass", 200, 400),
        # A table for drilling ferrous castings: ductile iron, 80-55-06 to 65-45-12 (read).
        ("drill", "ductile-iron", 70, 100),
        # A workshop table: hard cast iron 50 to 150 ft/min; here its slower half (read).
        ("turn-rough", "ductile-iron", 50, 100),
        ("turn-finish", "ductile-iron", 50, 100),
    ],
)
def test_speeds_lie_in_the_printed_ranges_in_feet(operation, material, low, high):
    found = machining.cutting_speed(operation, "hss", material)
    assert low * FOOT - 1.0 < found.low < found.high < high * FOOT + 1.0


@pytest.mark.parametrize(
    ("operation", "low", "high"),
    [
        # A shop course's quick reference: lathe finishing; end mills in steel, a tooth (read).
        ("turn-finish", 0.002, 0.005),
        ("bore", 0.002, 0.005),
        ("face", 0.002, 0.005),
        ("part", 0.001, 0.005),
        ("mill", 0.002, 0.005),
        # A chart of feeds for boring bars, cast iron (read).
        ("bore-rough", 0.0005, 0.010),
        # A cutter maker's table, sawing, a tooth (read).
        ("slit-saw", 0.0005, 0.001),
    ],
)
def test_feeds_lie_in_the_printed_ranges_in_inches(operation, low, high):
    found = machining.feed(operation, "grey-iron")
    assert low * 25.4 - 0.001 < found.low < found.high < high * 25.4 + 0.004


def test_drilling_of_iron_spans_what_another_table_gives_by_hardness():
    """160 to 200 HB 90 ft/min (read) lies in the college's range for cast iron."""
    found = machining.cutting_speed("drill", "hss", "grey-iron")
    assert found.low <= 90 * FOOT <= found.high


def test_parting_runs_up_to_the_turning_speed():
    """A government manual on the lathe: parting speed comparable to turning, 0.002 in a turn."""
    turning = machining.cutting_speed("turn-rough", "hss", "grey-iron")
    parting = machining.cutting_speed("part", "hss", "grey-iron")
    assert parting.high == turning.high
    assert machining.feed("part", "grey-iron").high == pytest.approx(0.002 * 25.4, abs=0.001)


def test_a_light_machine_takes_the_low_end_and_a_rigid_one_the_middle():
    light = machining.cutting_speed("turn-rough", "hss", "steel", "light")
    rigid = machining.cutting_speed("turn-rough", "hss", "steel", "rigid")
    assert (light.value, rigid.value) == (35.0, 40.0)
    assert machining.cutting_speed("turn-rough", "carbide", "steel", "light").value == 90.0


@pytest.mark.parametrize(
    ("material", "diameter", "feed"),
    [
        # A college's tutorial table, mm a turn at 6, 12, 18 and 25 mm (read).
        ("grey-iron", 6, 0.13),
        ("grey-iron", 12, 0.18),
        ("grey-iron", 18, 0.25),
        ("grey-iron", 25, 0.31),
        ("steel", 12, 0.25),
        ("gunmetal", 18, 0.41),
        ("stainless-steel", 6, 0.13),
        ("aluminium", 25, 0.81),
        ("filled-ptfe-glass", 12, 0.15),
    ],
)
def test_drill_feeds_match_the_printed_table(material, diameter, feed):
    assert machining.feed("drill", material, diameter=diameter).value == pytest.approx(feed)


def test_drill_feeds_between_below_and_beyond_the_table():
    feeds = [machining.feed("drill", "steel", diameter=d).value for d in (1, 3, 6, 9, 12, 30)]
    assert feeds == pytest.approx([0.2 / 6, 0.1, 0.2, 0.225, 0.25, 0.51])


def test_spindle_speed_matches_the_inch_rule():
    """rpm = 3.8 ft/min over inches (a workshop table, read); 12/pi exactly."""
    found = machining.spindle_speed(100 * FOOT, 25.4)
    assert found == pytest.approx(3.8 * 100, rel=0.006)
    assert found == pytest.approx(100 * 12 / math.pi)


def test_turning_time_matches_a_textbook():
    """Groover, Fundamentals of Modern Manufacturing, problem on turning (from memory): 200 mm by
    700 mm long, 2.30 m/s, 0.32 mm a turn: 9.96 min."""
    turns = machining.spindle_speed(2.30 * 60, 200.0)
    assert machining.machining_time(700.0, 0.32 * turns) == pytest.approx(9.96, abs=0.005)


def test_a_whole_cut_adds_up():
    """A 63 mm saw of 48 teeth at 17 m/min turns 1000 17/(pi 63) = 85.9 times a minute."""
    found = machining.cut(
        operation="slit-saw",
        material_key="grey-iron",
        diameter=63.0,
        travel=230.0,
        teeth=48,
        handling=2.0,
    )
    assert found.spindle_speed == pytest.approx(85.9, abs=0.05)
    assert found.feed_per == "tooth"
    assert found.feed_rate == pytest.approx(85.9 * 48 * 0.013, rel=1e-3)
    assert found.time == pytest.approx(230.0 / found.feed_rate + 2.0)
    listed = machining.cut(
        operation="slit-saw",
        material_key="grey-iron",
        diameter=63.0,
        travel=230.0,
        teeth=48,
        spindle_speeds=(60.0, 100.0, 170.0),
    )
    assert listed.spindle_speed == 60.0
    assert listed.surface_speed == pytest.approx(math.pi * 63 * 60 / 1000)
    assert listed.time > found.time


def test_turning_in_passes_takes_its_time_as_often():
    once = machining.cut(
        operation="turn-rough", material_key="grey-iron", diameter=80.0, travel=40.0
    )
    thrice = machining.cut(
        operation="turn-rough", material_key="grey-iron", diameter=80.0, travel=40.0, times=3
    )
    assert thrice.time == pytest.approx(3 * once.time)
    assert thrice.cutting_time < thrice.time


@given(st.floats(5, 3000), st.lists(st.floats(10, 4000), max_size=12))
def test_the_machine_s_own_speed_is_the_best_it_has(wanted, available):
    found = machining.nearest_spindle_speed(wanted, available)
    if not available:
        assert found == wanted
    elif min(available) > wanted:
        assert found == min(available)
    else:
        assert found == max(speed for speed in available if speed <= wanted)


@given(st.floats(1, 300), st.floats(1, 600))
def test_spindle_and_surface_speed_undo_each_other(speed, diameter):
    turns = machining.spindle_speed(speed, diameter)
    assert machining.surface_speed(turns, diameter) == pytest.approx(speed)


@pytest.mark.parametrize(
    ("stock", "operation", "machine", "count"),
    [
        (0.0, "turn-rough", "light", 1),
        (1.5, "turn-rough", "light", 2),
        (1.51, "turn-rough", "light", 3),
        (4.0, "turn-rough", "rigid", 2),
        (0.15, "turn-finish", "light", 2),
        (3.0, "bore", "light", 6),
    ],
)
def test_passes_by_depth_of_cut(stock, operation, machine, count):
    assert machining.passes(stock, operation, machine) == count


def test_saws_are_those_of_the_standard():
    """ISO 2296 and DIN 1837: diameter and hole [mm] (memory)."""
    assert [(saw.diameter, saw.hole) for saw in blank.SAWS] == [
        (20, 5), (25, 8), (32, 8), (40, 10), (50, 13), (63, 16), (80, 22), (100, 22), (125, 22),
        (160, 32), (200, 32),
    ]  # fmt: skip


def test_saw_thicknesses_are_mostly_preferred_numbers():
    """ISO 3, R10: 1 1.25 1.6 2 2.5 3.15 4 5 6.3 8, rounded as the trade does to 1.2, 3 and 6."""
    rounded = {1, 1.2, 1.6, 2, 2.5, 3, 4, 5, 6, 8}
    for size in SAWS:
        decade = size if size >= 1 else size * 10
        assert round(decade, 6) in rounded


def test_every_operation_tool_metal_and_machine_has_a_speed_and_a_feed_with_a_source():
    known = {source.key for source in SOURCES}
    assert set(CUTS_AS) == set(MATERIALS)
    for operation in OPERATIONS:
        for material in MATERIALS:
            for machine in MACHINES:
                feed = machining.feed(operation, material, machine, diameter=10.0)
                assert 0 < feed.low <= feed.value <= feed.high
                assert feed.source in known
                for tool in TOOLS:
                    speed = machining.cutting_speed(operation, tool, material, machine)
                    assert 0 < speed.low <= speed.high
                    assert speed.value <= speed.high
                    assert speed.source in known


@pytest.mark.parametrize(
    ("call", "name"),
    [
        (lambda: machining.cutting_speed("hew", "hss", "steel"), "operation"),
        (lambda: machining.cutting_speed("part", "flint", "steel"), "tool"),
        (lambda: machining.cutting_speed("part", "hss", "wood"), "material_key"),
        (lambda: machining.cutting_speed("part", "hss", "steel", "shaky"), "machine"),
        (lambda: machining.feed("drill", "steel"), "diameter"),
        (lambda: machining.feed("drill", "steel", diameter=0.0), "diameter"),
        (lambda: machining.spindle_speed(0.0, 10.0), "surface_speed"),
        (lambda: machining.spindle_speed(10.0, -1.0), "diameter"),
        (lambda: machining.surface_speed(float("nan"), 10.0), "spindle_speed"),
        (lambda: machining.nearest_spindle_speed(0.0), "wanted"),
        (lambda: machining.nearest_spindle_speed(10.0, (0.0,)), "available"),
        (lambda: machining.machining_time(-1.0, 10.0), "travel"),
        (lambda: machining.machining_time(1.0, 0.0), "feed_rate"),
        (lambda: machining.passes(1.0, "drill"), "operation"),
        (lambda: machining.passes(-1.0, "bore"), "stock"),
        (lambda: machining.saw_teeth(0.0), "diameter"),
    ],
)
def test_impossible_inputs_are_refused_by_name(call, name):
    with pytest.raises(OutOfRange) as caught:
        call()
    assert caught.value.name == name


@pytest.mark.parametrize("operation", ["turn-rough", "turn-finish", "part"])
def test_a_feed_in_thousandths_is_the_table_s_to_the_next_thousandth(operation):
    asked = {"operation": operation, "material_key": "grey-iron", "diameter": 80.0, "travel": 10.0}
    table = machining.cut(**asked).feed
    inch = machining.cut(inch=True, **asked).feed
    assert (inch.low, inch.high, inch.source) == (table.low, table.high, table.source)
    # Whole tenths of a thousandth, as near as a lathe's feeds lie.
    tenths = inch.value / 0.00254
    assert tenths == pytest.approx(round(tenths), abs=1e-9)
    assert inch.value == pytest.approx(table.value, rel=0.06)
