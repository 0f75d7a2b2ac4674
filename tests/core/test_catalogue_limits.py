"""Limits, defaults and steps of inputs, each held to what shop, trade or nature says of it.

A limit that is refused is read out to a person: it is a round number, or one that follows from
another. Common practice, no source, where none is named.
"""

import importlib
import math

import pytest

from core.test_catalogue_declared import STORED
from core.test_catalogue_inputs import FILES, rules
from ringwright.core.catalogue import (
    inputs_blank,
    inputs_engine,
    inputs_expander,
    inputs_ring,
    inputs_soak,
    inputs_stock,
    inputs_tools,
)
from ringwright.core.catalogue.inputs import part_of, share
from ringwright.core.catalogue.inputs_measuring import GIVEN
from ringwright.core.fields import Field

# A groove is a millimetre wider than its ring; the thinnest wall of a bar or a blank is 5 mm.
WIDEST_RING, GROOVE_PLAY, TWO_WALLS = 150.0, 1.0, 10.0
# The widest bar that the lists of bars have: 16 in.
WIDEST_LISTED = 16.0 * 25.4

# How many a list or a count takes, with the reason.
MOST = {
    "bore_shape.harmonics": 20,
    "bore_shape.harmonics.order": 12,  # beyond twelve lobes no ring follows
    "bore_shape.readings": 360,  # one a degree
    "steps_per_turn": 720,  # two a degree
    "free_shape": 200,
    "readings": 200,
    "gap_readings": 50,
    "groove_readings": 24,  # one every fifteen degrees
    "strip_waves": 120,
    "coil_turns": 20000,
    "rings_on_piston": 8,  # none has more in one set of grooves
    "port_bars": 60,
    "sets": 40,
    "bars": 60,
    "bars_to_buy": 20,
    "metal_prices": 20,
    "spindle_speeds": 60,
    "sets.count": 500,
}
# All others that count rings, blanks and bars: a shop that works a few at a time.
MOST_OF_ALL = 200

# What is taken where nothing is said: value, and why.
TAKEN = {
    "facing_allowance": (
        0.25,
        "ten thousandths of an inch a side clean up what a parting tool left",
    ),
    "soak_time": (1.0, "stress relief of grey iron: an hour at heat"),
    "drawn_ring": (1, "the first"),
    "speed": (200.0, "a small stationary engine's turns a minute"),
    "steam_dryness": (1.0, "dry saturated steam"),
    "cut_off": (0.6, "a slide valve a notch linked up; full gear cuts off at 0.75"),
    "clearance_volume": (0.1, "textbooks give slide-valve cylinders 0.07 to 0.15"),
    "back_pressure": (0.01, "a tenth of a bar over the air in an exhaust pipe"),
    "rings_on_piston": (2, "two rings to a piston"),
    "rings": (2, "two rings to a piston"),
    "groove_wear": (0.0, "new"),
    "light": (0.0, "new"),
    "light_length": (0.0, "new"),
    "largest_leak_share": (0.05, "a twentieth of the steam"),
    "boiler_efficiency": (0.6, "a small boiler in fair order, textbooks 0.5 to 0.7"),
    "fuel_heat": (30.0, "steam coal, 28 to 32 MJ/kg"),
    "feed_temperature": (20.0, "water from the tap"),
    "groove_step": (0.0, "none worn"),
    "side_cut": (0.1, "cleans up a worn side"),
    "height": (0.0, "one height"),
    "direction": (0.0, "from where angles are counted"),
    "gauge_uncertainty": (0.01, "a hundredth: a dial bore gauge"),
    "thickness_spread": (0.03, "turning to a micrometer"),
    "kerf_spread": (0.05, "a saw that wobbles"),
    "bore_spread": (0.02, "gauging"),
    "outside_spread": (0.02, "finish-turning"),
    "tool_spread": (0.05, "turning of a tool"),
    "steam_pressure": (0.7, "about 100 lbf/in2"),
    "shop_temperature": (20.0, "ISO 1: sizes are those at 20 degC"),
    "end_facing": (1.5, "a sawn end"),
    "saw_width": (2.0, "a bandsaw or hacksaw with its set"),
    "usable_offcut": (60.0, "what a chuck holds and a ring needs"),
    "count": (1, "one bar"),
    "port_bars": (8, "bridges round a liner"),
    "edge_rounding": (0.2, "edges broken by hand"),
    "phase": (0.0, "from where angles are counted"),
    "pressure_behind": (0.0, "the spring alone"),
    "face_pressure": (0.0, "no steam between"),
    "gap_direction": (0.0, "from where angles are counted"),
    "steps_per_turn": (360, "one a degree"),
}


def fields(found, before=""):
    for one in found:
        if isinstance(one, Field):
            yield before + one.name, one
            yield from fields(one.items, before + one.name + ".")


def declared():
    """(where, Field) of all that stands in the files now, entries of lists under their list."""
    out = []
    for path in FILES:
        module = importlib.import_module("ringwright.core.catalogue." + path.stem)
        for name, table in vars(module).items():
            if name.isupper() and hasattr(table, "values"):
                out += fields(table.values())
    return out


def by_name():
    return dict(declared())


def digits(number):
    """How many digits a number has but for noughts before and behind."""
    return len(("%.10g" % abs(number)).replace(".", "").strip("0"))


def test_a_limit_of_a_size_is_a_round_number_or_follows_from_another():
    named = {
        WIDEST_RING + GROOVE_PLAY,
        1100.0 - TWO_WALLS,
        1200.0 - TWO_WALLS,
        WIDEST_LISTED,
    }
    seen = 0
    for where, one in declared():
        if one.kind in ("count", "records", "text"):
            continue
        for limit in (one.lowest, one.highest):
            if limit is not None and limit not in named:
                assert digits(limit) <= 2, (where, limit)
                seen += 1
    assert seen > 200


def test_a_list_or_a_count_ends_where_it_is_said():
    seen = set()
    for where, one in declared():
        if one.kind in ("count", "records") and one.highest is not None:
            name = where if where in MOST else one.name
            assert one.highest == MOST.get(name, MOST_OF_ALL), where
            seen.add(name)
    assert seen >= set(MOST)


def test_what_is_taken_without_a_word_is_what_the_trade_takes():
    seen = set()
    for where, one in declared():
        for default in rules(one) if one.default else []:
            if type(default.value) in (int, float) and len(rules(one)) == 1:
                assert default.value == TAKEN[one.name][0], where
                seen.add(one.name)
    assert seen == set(TAKEN)


# Flags: nothing out of the common is taken for granted; a bar has its skin until it is turned, and
# a worn groove is trued up when new rings are fitted.
SET = {"skin", "new_groove"}


def test_flags_stand_as_in_the_common_case():
    seen = set()
    for where, one in declared():
        if one.kind == "flag" and one.default and not one.default.cases:
            assert one.default.value is (one.name in SET), where
            seen.add(one.name)
    assert seen >= {"skin", "geometry", "inch_sizes", "slit_on_stick", "joint_pinned"}
    # A band leaves the inside oval too: it is turned again.
    again = by_name()["bored_again"].default.cases
    assert {case: one.value for case, one in again.items()} == {
        "": False,
        inputs_blank.BANDED: True,
    }


# The fewest of a list or a count: a span takes two readings, lobes begin at an oval, a strip stands
# round on three waves, a circle and its centre take more than five readings. All others begin at 1.
FEWEST = {
    "gap_readings": 2,
    "readings": 2,
    "bore_shape.harmonics.order": 2,
    "strip_waves": 3,
    "coil_turns": 4,
    "bore_shape.readings": 6,
    "free_shape": 9,
    "steps_per_turn": 90,
}


def test_a_list_or_a_count_begins_where_it_is_said():
    none = ("spares", "metal_prices", "bars", "bars_to_buy")
    for where, one in declared():
        if one.kind in ("count", "records") and one.lowest is not None:
            assert one.lowest == FEWEST.get(where, 0 if where in none else 1), where


def test_a_usual_value_that_hangs_on_a_case():
    found = by_name()
    # Grey iron is relieved at 500 to 600 degC, bronze below its recovery at 300; a plastic softens.
    usual = {"iron": 550.0, "bronze": 300.0, "plastic": 100.0}
    assert dict(inputs_blank.USUAL_SOAK) == usual
    cases = found["soak_temperature"].default.cases
    assert {family: one.value for family, one in cases.items()} == usual
    # A relief that was measured is known to three hundredths, a modulus that was given likewise.
    assert found["relief_spread"].default.cases[GIVEN].value == 0.03
    assert found["modulus_spread"].default.cases[GIVEN].rule(98765.0) == pytest.approx(2962.95)
    # Walshaw: 6 to 8 lbf/in2, the middle of it as 0.048 N/mm2.
    practice = inputs_ring.PRACTICE_PRESSURE
    assert practice == pytest.approx(7.0 * 0.00689476, abs=0.0003)
    assert found["wall_pressure"].default.cases[""].value == practice


def test_a_range_has_room_for_what_goes_into_it():
    found = by_name()
    ring = inputs_ring.RING
    assert (ring["bore"].lowest, ring["bore"].highest) == (10.0, 900.0)
    # A groove takes the widest ring, a former and a gauge the largest one.
    assert ring["groove_width"].highest == ring["ring_width"].highest + GROOVE_PLAY
    for name in ("shelf_former", "shelf_pot", "shelf_closing_ring", "shelf_clamp_mandrel"):
        assert found[name].lowest < 10.0 < 900.0 < found[name].highest
    # Blanks are larger than rings, bars than blanks, and a bore leaves a wall.
    assert found["bars.diameter"].highest > found["sets.outside_diameter"].highest > 900.0
    for outside, inside in (
        ("sets.outside_diameter", "sets.inside_diameter"),
        ("bars.diameter", "bars.bore"),
        ("bars_to_buy.diameter", "bars_to_buy.bore"),
    ):
        assert found[outside].highest - found[inside].highest == TWO_WALLS
    assert found["outside_diameter"].highest == WIDEST_LISTED
    # A turn of angles is 360 degrees; readings of a ring of two turns go to 720.
    phase = found["bore_shape.harmonics.phase"]
    assert phase.lowest == -phase.highest == -360.0
    assert found["free_shape.angle"].highest == 720.0
    # Below the air there is no more than one atmosphere; ends and cut-off leave some stroke.
    assert -0.1013 < found["back_pressure"].lowest < 0.0
    assert 0.0 < found["cut_off"].lowest < found["cut_off"].highest < found["release"].highest == 1


def test_friction_and_missing_steam_are_those_of_textbooks():
    # Oiled iron about 0.1; filled PTFE 0.12 moving, 0.2 at rest; initial condensation and leak a
    # quarter to more than half of the steam, less than a third usual.
    assert inputs_engine.OILED_IRON == (0.05, 0.1, 0.15)
    assert inputs_engine.FILLED_PTFE == (0.06, 0.12, 0.2)
    assert inputs_engine.MISSING_QUANTITY == (0.25, 0.3, 0.6)
    assert inputs_engine.spread_words((0.05, 0.1, 0.15)) == "0.10 (0.05 to 0.15)"


def test_metals_of_a_spring_are_those_of_their_standards():
    # EN 10270-1 and -3: 206 and 185 kN/mm2; relaxing from 120 and 250 degC. The stress is practice,
    # careful: well under the 1 kN/mm2 that drawn strip yields at.
    assert dict(inputs_expander.METALS) == {
        "carbon-spring-steel": (206e3, 600.0, 120.0),
        "stainless-spring": (185e3, 500.0, 250.0),
    }


# What melts at how many degrees: tin-lead solder, the elements and salt, by any handbook.
MELTS = {
    "solder-melts": 183.0,
    "tin-melts": 231.9,
    "lead-melts": 327.5,
    "zinc-melts": 419.5,
    "zinc-not-aluminium": 419.5,
    "aluminium-melts": 660.3,
    "salt-melts": 800.7,
}
# Edges of glow that published tables print in degF: 800, 1100, 1300 degF.
GLOW = (426.0, 593.0, 704.0)
# Dull red ends where a table in degC has it.
DULL = 814.0


def test_a_tell_tale_tells_the_heat_that_nature_sets():
    for name, (_, low, likely, high) in inputs_soak.TELL_TALES.items():
        assert low < likely < high, name
        if name in MELTS:
            # As printed, to the whole degree below.
            assert low == math.floor(MELTS[name]), name
        for heat in (low, likely, high):
            whole = heat / 5.0 == int(heat / 5.0)
            assert whole or heat in {math.floor(one) for one in MELTS.values()} or heat in (
                *GLOW, DULL, 661.0
            ), (name, heat)  # fmt: skip
    assert inputs_soak.TELL_TALES["zinc-not-aluminium"][3] == math.ceil(660.3)
    for celsius, fahrenheit in zip(GLOW, (800.0, 1100.0, 1300.0), strict=True):
        assert celsius == math.floor((fahrenheit - 32.0) / 1.8)
    for name in inputs_soak.READ_OFF:
        _, low, read, high = inputs_soak.TELL_TALES[name]
        assert (low, read) == (-high, 0.0)


# ISO 2296: thicknesses of metal slitting saws [mm].
ISO_SAWS = (0.3, 0.4, 0.5, 0.6, 0.8, 1.0, 1.2, 1.6, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0)


def test_the_saw_for_the_ends_is_the_thinnest_standard_one_that_serves():
    for at, saw in enumerate(ISO_SAWS):
        # Twice the closed gap, exactly: it serves.
        assert inputs_blank.standard_saw(saw / 2.0, 10.0) == saw
        if at + 1 < len(ISO_SAWS):
            assert inputs_blank.standard_saw(saw / 2.0 + 0.001, 10.0) == ISO_SAWS[at + 1]
    # A hundredth of the bore, up to a millimetre.
    assert inputs_blank.standard_saw(0.1, 80.0) == 0.8
    assert inputs_blank.standard_saw(0.1, 80.5) == 1.0
    assert inputs_blank.standard_saw(0.1, 250.0) == 1.0
    # Beyond the list: as much and a tenth, in tenths.
    assert inputs_blank.standard_saw(3.27, 800.0) == pytest.approx(6.6)
    assert inputs_blank.standard_saw(3.21, 800.0) == pytest.approx(6.5)


def test_what_is_left_to_turn_is_in_tenths_of_large_rings_and_fiftieths_of_small():
    cases = inputs_blank.BLANK["finishing_allowance"].default.cases
    usual, banded = cases[""].rule, cases[inputs_blank.BANDED].rule
    # 0.5 mm and 0.4 %: 0.740 at 60 mm is 0.7, just below it 0.7396 is 0.74 in fiftieths.
    assert usual(60.0) == pytest.approx(0.7)
    assert usual(59.9) == pytest.approx(0.74)
    assert usual(57.0) == pytest.approx(0.72)
    assert usual(13.7) == pytest.approx(0.56)
    assert usual(111.0) == pytest.approx(0.9)
    assert usual(113.0) == pytest.approx(1.0)
    # Just below the half: 9.497 tenths, 36.497 fiftieths.
    assert usual(112.425) == pytest.approx(0.9)
    assert usual(57.485) == pytest.approx(0.72)
    # 1.2 % where a band holds it: 0.5 + 1.332.
    assert banded(111.0) == pytest.approx(1.8)
    assert banded(13.7) == pytest.approx(0.66)


def stepped(rule, rows):
    """rows: size and the bore or diameter from which it is taken."""
    for (size, start), (_, end) in zip(rows, [*rows[1:], (None, None)], strict=True):
        assert rule(start) == size
        assert rule((end or 2000.0) - 0.01) == size


def test_a_stiffer_tool_is_taken_for_a_larger_ring():
    slit = inputs_blank.BLANK["slit_width"].default.rule
    rows = ((0.4, 0), (0.5, 30), (0.6, 40), (0.8, 50), (1.0, 60), (1.2, 150), (1.6, 200))
    stepped(slit, rows)
    assert {size for size, _ in rows} <= set(ISO_SAWS)
    parting = inputs_stock.SHOP["parting_width"].default.rule
    stepped(parting, ((2.0, 0), (3.0, 40), (4.0, 120)))


def test_the_stock_leaves_spares_and_something_to_hold():
    spares = inputs_stock.SHOP["spares"].default.rule
    # One in five whole, at least one.
    assert [spares(count) for count in (1, 5, 9, 10, 14, 15)] == [1, 1, 1, 2, 2, 3]
    held = inputs_stock.SHOP["chucking_piece"].default.rule
    # A quarter of the diameter in fives: 22.25 is 20, 22.5 and 25 are 25.
    assert [held(size) for size in (31.0, 89.94, 90.0, 200.0)] == [20.0, 20.0, 25.0, 50.0]
    assert inputs_stock.OVERHANG == 1.5
    grip = inputs_tools.TOOLING["table_grip"].default.rule
    # A third, up to the next five: 25.33 is 30.
    assert [grip(size) for size in (40.0, 75.0, 76.0, 200.0)] == [25.0, 25.0, 30.0, 70.0]
    tongue = inputs_tools.TOOLING["tongue_length"].default.rule
    assert tongue(5.0, 0.3) == 5.0
    assert tongue(2.0, 0.9) == pytest.approx(2.7)


def test_shares_of_another_size():
    found = by_name()
    assert found["port_bar_width"].default.rule(78.0) == pytest.approx(6.5)
    assert found["valve_travel"].default.rule(78.0) == pytest.approx(31.2)
    assert found["strip_width"].default.rule(5.4) == pytest.approx(4.86)
    width = found["ring_width"].default.cases
    assert width[inputs_ring.PLAIN].rule(2.8) == pytest.approx(3.5)
    assert width[inputs_ring.DOUBLE_TURN].rule(2.8) == pytest.approx(5.6)
    assert part_of("the bore", 12).words == "the bore/12"
    assert part_of("the bore", 12).rule(78.0) == pytest.approx(6.5)
    assert share("the bore", 0.0123454).words == "1.235 % of the bore"
    assert share("the thickness", 1.25).words == "1.25 times the thickness"
    assert share("the thickness", 1.0).words == "1 times the thickness"
    assert share("the bore", 0.4).words == "40 % of the bore"


def test_no_limit_stands_closer_than_it_was_promised():
    found = by_name()
    seen = 0
    for where, one in STORED.items():
        if where in found and found[where].lowest is not None:
            assert found[where].lowest <= one["lowest"], where
            assert found[where].required <= one["required"], where
            seen += 1
    assert seen > 100
