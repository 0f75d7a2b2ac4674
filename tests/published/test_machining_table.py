"""Every figure of the cutting tables a second time, as it was read from the printed tables.

Nothing is reckoned: a slip of the finger in one of the two tables is noticed by the other. Where a
table was printed in feet or inches its figures stand here in those; speeds of the core are rounded
to whole metres. What is common practice or from memory says so.
"""

import pytest

from ringwright.core.making import machining
from ringwright.core.making import machining_table as tabled

FOOT, INCH = 0.3048, 25.4

METALS = ("grey-iron", "ductile-iron", "gunmetal", "steel", "stainless-steel", "aluminium",
          "filled-ptfe-carbon")  # fmt: skip
# Metres a minute with high-speed steel, in the order of METALS (read).
SPEEDS = {
    "turn-rough": ((18, 25), (15, 22), (61, 76), (35, 45), (9, 18), (150, 200), (60, 120)),
    "turn-finish": ((30, 35), (25, 30), (76, 152), (50, 70), (18, 55), (200, 250), (60, 120)),
    "drill": ((25, 35), (21, 30), (60, 75), (30, 36), (6, 15), (60, 76), (20, 75)),
    "mill": ((15, 30), (15, 30), (60, 150), (25, 35), (9, 20), (60, 150), (20, 160)),
}
# Feet a minute of those that were printed so (read).
IN_FEET = [
    ("turn-rough", "gunmetal", 200, 250),
    ("turn-rough", "filled-ptfe-carbon", 200, 400),
    ("turn-finish", "gunmetal", 250, 500),
    ("turn-finish", "stainless-steel", 60, 180),
    ("turn-finish", "filled-ptfe-carbon", 200, 400),
    ("drill", "ductile-iron", 70, 100),
    ("drill", "aluminium", 200, 250),
    ("mill", "ductile-iron", 50, 100),
]
CARBIDE = [
    ("turn-rough", "grey-iron", 60, 90),
    ("turn-rough", "steel", 150, 200),
    ("turn-rough", "aluminium", 600, 800),
    ("turn-finish", "grey-iron", 90, 130),
    ("turn-finish", "steel", 220, 300),
]


@pytest.mark.parametrize("operation", list(SPEEDS))
def test_speeds_with_high_speed_steel_are_those_that_were_read(operation):
    for metal, printed in zip(METALS, SPEEDS[operation], strict=True):
        found = machining.cutting_speed(operation, "hss", metal)
        assert (found.low, found.high) == printed, metal


@pytest.mark.parametrize(("operation", "metal", "low", "high"), IN_FEET)
def test_speeds_printed_in_feet_are_rounded_to_the_metre(operation, metal, low, high):
    found = machining.cutting_speed(operation, "hss", metal)
    assert (found.low, found.high) == pytest.approx((low * FOOT, high * FOOT), abs=2.0)


def test_saws_cut_two_fifths_slower_than_mills_and_iron_by_a_table_of_its_own():
    """The milling table's word on slots, of metals and plastics alike; grey iron 17 to 25 by a saw
    maker (read); ductile iron 40 % under 15 to 30."""
    iron = machining.cutting_speed("slit-saw", "hss", "grey-iron")
    assert (iron.low, iron.high) == (17, 25)
    for metal, (low, high) in zip(METALS[1:], SPEEDS["mill"][1:], strict=True):
        found = machining.cutting_speed("slit-saw", "hss", metal)
        assert (found.low, found.high) == pytest.approx((0.6 * low, 0.6 * high)), metal


@pytest.mark.parametrize(("operation", "metal", "low", "high"), CARBIDE)
def test_speeds_with_carbide_are_those_that_were_read(operation, metal, low, high):
    found = machining.cutting_speed(operation, "carbide", metal)
    assert (found.low, found.high) == (low, high)


def test_without_a_table_carbide_runs_twice_as_fast():
    """A workshop table's rule (read)."""
    for metal in ("ductile-iron", "gunmetal", "stainless-steel"):
        hss = machining.cutting_speed("turn-rough", "hss", metal)
        carbide = machining.cutting_speed("turn-rough", "carbide", metal, "rigid")
        assert (carbide.low, carbide.high) == (2 * hss.low, 2 * hss.high)
        assert carbide.value == hss.low + hss.high


@pytest.mark.parametrize(
    ("operation", "low", "high"),
    [("bore-rough", 0.8, 1.0), ("bore", 0.8, 1.0), ("face", 1.0, 1.0), ("part", 0.5, 1.0)],
)
@pytest.mark.parametrize("tool", ["hss", "carbide"])
def test_boring_facing_and_parting_follow_roughing(operation, low, high, tool):
    """By these shares of it: common practice, no source."""
    for metal in METALS:
        rough = machining.cutting_speed("turn-rough", tool, metal)
        found = machining.cutting_speed(operation, tool, metal)
        assert (found.low, found.high) == pytest.approx((low * rough.low, high * rough.high))


@pytest.mark.parametrize(
    ("machine", "wanted"), [("light", 90.0), ("rigid", 0.5 * (0.8 * 150.0 + 200.0))]
)
def test_a_light_lathe_stands_ninety_metres_with_carbide_and_no_more(machine, wanted):
    """Common practice, no source: boring steel with carbide would be 120 at its slowest."""
    assert machining.cutting_speed("bore", "carbide", "steel", machine).value == wanted
    # Iron stays under it.
    assert machining.cutting_speed("bore", "carbide", "grey-iron").value == pytest.approx(48.0)


@pytest.mark.parametrize(
    ("operation", "low", "high"),
    [
        # A turning table, mm a turn (read).
        ("turn-finish", 0.05, 0.1),
        ("bore", 0.05, 0.1),
        ("face", 0.05, 0.1),
        # Boring bars, iron; parting, 0.001 to 0.002 in; end mills, 0.002 to 0.005 in a tooth;
        # slitting saws, 0.0005 to 0.001 in a tooth (read).
        ("bore-rough", 0.1, 0.2),
        ("part", 0.03, 0.05),
        ("mill", 0.05, 0.13),
        ("slit-saw", 0.013, 0.025),
    ],
)
def test_feeds_are_those_that_were_read(operation, low, high):
    light = machining.feed(operation, "grey-iron")
    rigid = machining.feed(operation, "grey-iron", "rigid")
    assert (light.value, light.low, light.high) == (low, low, high)
    assert rigid.value == pytest.approx(0.5 * (low + high))


def test_roughing_feeds():
    """0.2 to 0.3 mm (read); a bench lathe 0.004 in, a tenth of a millimetre (read)."""
    light = machining.feed("turn-rough", "grey-iron")
    assert (light.value, light.low, light.high) == (0.1, 0.1, 0.1)
    assert light.value == pytest.approx(0.004 * INCH, abs=0.002)
    rigid = machining.feed("turn-rough", "grey-iron", "rigid")
    assert (rigid.value, rigid.low, rigid.high) == (0.25, 0.2, 0.3)


# A college's table: mm a turn at 6, 12, 18 and 25 mm (read).
DRILLS = {
    "grey-iron": (0.13, 0.18, 0.25, 0.31),
    "ductile-iron": (0.13, 0.18, 0.25, 0.31),
    "gunmetal": (0.20, 0.25, 0.41, 0.51),
    "steel": (0.20, 0.25, 0.41, 0.51),
    "stainless-steel": (0.13, 0.18, 0.25, 0.31),
    "aluminium": (0.30, 0.40, 0.61, 0.81),
    "filled-ptfe-carbon": (0.10, 0.15, 0.20, 0.25),
}


@pytest.mark.parametrize("metal", METALS)
def test_feeds_of_drills_are_those_that_were_read(metal):
    for size, printed in zip((6.0, 12.0, 18.0, 25.0), DRILLS[metal], strict=True):
        found = machining.feed("drill", metal, diameter=size)
        assert (found.value, found.low, found.high) == pytest.approx((printed,) * 3)
    # Between two of them in proportion, and beyond the last no more.
    between = machining.feed("drill", metal, diameter=20.0).value
    third, last = DRILLS[metal][2:]
    assert between == pytest.approx(third + 2.0 / 7.0 * (last - third))
    assert machining.feed("drill", metal, diameter=40.0).value == last


@pytest.mark.parametrize(
    ("operation", "light", "rigid"),
    [
        # Roughing iron 2 to 3 mm, finishing 0.025 to 0.075 (read); a bench lathe 0.03 in (read);
        # the rest common practice, no source.
        ("turn-rough", 0.75, 2.0),
        ("turn-finish", 0.075, 0.075),
        ("bore-rough", 0.5, 1.5),
        ("bore", 0.5, 1.0),
        ("face", 0.5, 1.0),
        ("mill", 0.5, 1.5),
    ],
)
@pytest.mark.parametrize("times", [1, 3])
def test_depths_of_cut_at_the_limit_of_a_pass(operation, light, rigid, times):
    """So many whole depths are so many passes; a micrometre more is one more."""
    for machine, depth in (("light", light), ("rigid", rigid)):
        assert machining.passes(times * depth, operation, machine) == times
        assert machining.passes(times * depth + 0.001, operation, machine) == times + 1


@pytest.mark.parametrize(
    ("operation", "minutes"),
    [
        ("turn-rough", 0.5), ("turn-finish", 1.5), ("bore-rough", 0.5), ("bore", 1.0),
        ("face", 0.5), ("part", 1.0), ("drill", 0.5), ("mill", 1.0), ("slit-saw", 2.0),
    ],
)  # fmt: skip
def test_setting_a_tool_takes_its_minutes_once_a_pass(operation, minutes):
    """Estimates of the trade; three passes of no length are setting alone."""
    made = machining.cut(
        operation=operation, material_key="steel", diameter=16.0, travel=0.0, times=3
    )
    assert (made.time, made.cutting_time) == (pytest.approx(3 * minutes), 0.0)


def test_every_ring_material_cuts_as_its_metal():
    same = {
        "grey-iron": ("grey-iron-200", "grey-iron-250", "grey-iron-300"),
        "gunmetal": ("phosphor-bronze", "phosphor-bronze-drawn", "brass"),
        "filled-ptfe-carbon": ("filled-ptfe-bronze", "filled-ptfe-glass"),
    }
    for metal, others in same.items():
        assert {tabled.CUTS_AS[other] for other in others} == {tabled.CUTS_AS[metal]}
    assert len(set(tabled.CUTS_AS.values())) == len(METALS)


@pytest.mark.parametrize(
    ("diameter", "teeth"),
    # Teeth 4 mm apart (from memory): round 63 mm go 49.5, so 50; round 31.82 mm 24.991, round
    # 31.84 mm 25.007, which is nearer to 26; round 100 mm 78.5.
    [(63.0, 50), (31.82, 24), (31.84, 26), (100.0, 78)],
)
def test_a_slitting_saw_has_an_even_number_of_teeth_about_four_millimetres_apart(diameter, teeth):
    assert machining.saw_teeth(diameter) == teeth


def test_what_is_not_said_of_a_cut_is_one_pass_with_one_tooth_in_millimetres():
    """By hand: 18 m/min on 45 mm is 127.3 turns; 0.1 mm a turn; 20 mm take 1.571 min and half a
    minute to set. A mill of one tooth at 25 m/min and 0.05 mm."""
    rough = machining.cut(
        operation="turn-rough", material_key="grey-iron", diameter=45.0, travel=20.0
    )
    assert rough.spindle_speed == pytest.approx(127.324, abs=0.001)
    assert (rough.passes, rough.feed.value, rough.feed_per) == (1, 0.1, "turn")
    assert rough.cutting_time == pytest.approx(1.5708, abs=1e-4)
    assert rough.time == pytest.approx(2.0708, abs=1e-4)
    assert rough.surface_speed == pytest.approx(18.0)
    mill = machining.cut(operation="mill", material_key="steel", diameter=10.0, travel=30.0)
    assert mill.feed_rate == pytest.approx(0.05 * 25000.0 / (3.14159265 * 10.0))
    assert machining.machining_time(12.0, 5.0) == pytest.approx(2.4)
    assert machining.machining_time(12.0, 5.0, 3, 0.25) == pytest.approx(7.95)


def test_a_speed_that_the_lathe_has_is_taken_as_it_is():
    assert machining.nearest_spindle_speed(130.0, (60.0, 130.0, 131.0)) == 130.0
    assert machining.nearest_spindle_speed(129.9, (131.0, 130.0, 60.0)) == 60.0
    assert machining.nearest_spindle_speed(59.9, (131.0, 130.0, 60.0)) == 60.0


@pytest.mark.parametrize(("handling", "minutes"), [(0.0, 0.0), (0.7, 1.4)])
def test_minutes_to_set_may_be_given_and_may_be_none(handling, minutes):
    made = machining.cut(operation="face", material_key="steel", diameter=30.0, travel=0.0,
                         times=2, handling=handling)  # fmt: skip
    assert made.time == pytest.approx(minutes)


def test_a_drill_of_the_smallest_feeds_by_its_size():
    """In proportion below the table: a 3 mm drill in grey iron half of a 6 mm one's 0.13."""
    made = machining.cut(operation="drill", material_key="grey-iron", diameter=3.0, travel=15.0)
    assert made.feed.value == pytest.approx(0.065)
    turns = 25000.0 / (3.14159265 * 3.0)
    assert made.cutting_time == pytest.approx(15.0 / (0.065 * turns), rel=1e-6)


def test_speeds_and_feeds_of_next_to_nothing_are_still_some():
    """0.005 m/min on 5 mm: a third of a turn a minute; 1 mm at 0.005 mm a minute: 200 minutes."""
    assert machining.spindle_speed(0.005, 5.0) == pytest.approx(1.0 / 3.14159265)
    assert machining.machining_time(1.0, 0.005) == pytest.approx(200.0)
