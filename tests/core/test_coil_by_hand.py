"""The coil spring laid behind a ring, each figure and limit by hand."""

import math

import pytest

from ringwright.core import calculations
from ringwright.core.problems import InputProblem
from ringwright.core.running import coil_expander

# 5 mm of room and a fifth between piston and bore: 7.9 deep, less 3 of the ring, and 0.2.
RING = {
    "bore": 80.0,
    "ring_type": "plain",
    "ring_material": "phosphor-bronze",
    "radial_thickness": 3.0,
    "ring_width": 6.0,
    "wall_pressure": 0.02,
    "piston_diameter": 79.6,
    "groove_depth": 7.8,
    "expander_kind": "coil-spring",
}
ROOM = 5.0
E, BEARS = 185000.0, 500.0
SHEAR = E / 2.6


def asked(**more):
    return calculations.run("expander", {**RING, **more})


def outcome(answer, check):
    return next(row for row in answer["findings"] if row["check"] == check)


def taken(answer):
    return {one["input"]: one["value"] for one in answer["chosen"]}


def reckoned(outside, wire, turns, pressure, inside=74.0):
    """(force, stress, length, free, air): a straight spring bent round, as the books print it."""
    mean = outside - wire
    lies = inside - outside
    force = pressure * 6.0 * 80.0 / 2.0
    index = mean / wire
    wahl = (4.0 * index - 1.0) / (4.0 * index - 4.0) + 0.615 / index
    # A coil bends as one of wire whose turns each give way by E I and G J.
    moment = math.pi * E * SHEAR * wire**4 / (8.0 * turns * mean * (2.0 * SHEAR + E))
    twist = 16.0 * (force * mean / 2.0 + moment) / (math.pi * wire**3)
    length = math.pi * lies
    free = length + 8.0 * force * mean**3 * turns / (SHEAR * wire**4)
    air = math.pi * (lies - mean) / turns - wire
    return force, wahl * twist, length, free, air


def most(outside, wire, inside=74.0):
    """Turns round the inner side with a tenth of a wire of air to each."""
    return int(math.pi * (inside - outside - (outside - wire)) / (1.1 * wire))


@pytest.mark.parametrize(
    ("index", "factor"), [(3.0, 11.0 / 8.0 + 0.205), (5.0, 1.31050), (7.5, 1.19738)]
)
def test_wahls_factor(index, factor):
    """19/16 + 0.123 and 29/26 + 0.082 by hand."""
    assert coil_expander.wahl(index) == pytest.approx(factor, abs=6e-6)


def test_a_coil_by_hand():
    found = coil_expander.coil(80.0, 6.0, 0.03, 70.0, 4.0, 0.6, 210, E)
    assert tuple(found) == pytest.approx(reckoned(4.0, 0.6, 210, 0.03), rel=1e-12)
    # Force along it: half of what presses on the bore.
    assert found.force == pytest.approx(0.03 * 6.0 * 80.0 / 2.0, rel=1e-12)
    assert found.length == pytest.approx(math.pi * 70.0, rel=1e-12)


def test_turns_leave_a_tenth_of_the_wire_between_them():
    # Round 66.6 mm: 209.2 mm, of 0.66 each.
    assert coil_expander.most_turns(70.0, 4.0, 0.6) == int(math.pi * 66.6 / 0.66) == 317
    assert coil_expander.most_turns(70.0, 4.0, 0.5) == int(math.pi * 66.5 / 0.55) == 379


def test_wire_is_drawn_to_preferred_numbers():
    """ISO 497, series R''10 (from memory), but 1.6 for 1.5 as spring wire is sold."""
    tenfold = {1.0, 1.2, 1.6, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0}
    sold = {round(0.1 * size, 9) for size in tenfold} | tenfold
    assert sorted(coil_expander.WIRES) == sorted(one for one in sold if 0.2 <= one <= 3.0)
    # G is E/2.6 for steel, Poisson's ratio 0.3.
    found = coil_expander.SHEAR
    assert found == pytest.approx(1.0 / (2.0 * (1.0 + 0.3)), rel=1e-12)


@pytest.mark.parametrize(
    ("depth", "width", "outside"),
    # What fits in the room with a tenth of play, in tenths; 0.9 of the width; 1 mm at the least.
    [(7.8, 6.0, 4.9), (6.98, 6.0, 4.0), (7.0, 6.0, 4.1), (7.8, 5.0, 4.5), (7.8, 5.3, 4.7),
     (3.5, 6.0, 1.0), (7.8, 1.0, 1.0)],
)  # fmt: skip
def test_the_largest_coil_that_fits_is_taken(depth, width, outside):
    answer = asked(groove_depth=depth, ring_width=width)
    assert taken(answer)["coil_diameter"] == pytest.approx(outside, rel=1e-9)
    assert answer["figures"]["expander_room"]["value"] == pytest.approx(depth - 2.8, rel=1e-9)


@pytest.mark.parametrize("pressure", [0.008, 0.028, 0.07])
def test_the_thinnest_wire_that_bears(pressure):
    answer = asked(expander_pressure=pressure)
    wires = [one for one in coil_expander.WIRES if one <= 4.9 / 4.0]
    assert wires[-1] == 1.2
    thinnest = next(
        one for one in wires if reckoned(4.9, one, most(4.9, one), pressure)[1] <= BEARS
    )
    chosen = taken(answer)
    assert chosen["wire_diameter"] == thinnest
    assert chosen["coil_turns"] == most(4.9, thinnest)
    force, stress, length, free, air = reckoned(4.9, thinnest, most(4.9, thinnest), pressure)
    figures = {name: row["value"] for name, row in answer["figures"].items()}
    for name, value in (
        ("coil_force", force),
        ("wire_stress", stress),
        ("coil_length", length),
        ("coil_free_length", free),
        ("total_wall_pressure", 0.02 + pressure),
    ):
        assert figures[name] == pytest.approx(value, rel=1e-9), name
    assert [row["outcome"] for row in answer["findings"]] == ["good"] * 4
    row = outcome(answer, "coil-bind")
    assert row["value"]["value"] == row["limit"]["value"] == most(4.9, thinnest)
    assert "has %.3f mm" % air in row["why"]
    put_in = {
        one["symbol"]: one["value"] for one in answer["figures"]["coil_free_length"]["working"]
    }
    assert (put_in["D"], put_in["d"]) == (pytest.approx(4.9 - thinnest), thinnest)
    put_in = {one["symbol"]: one["value"] for one in answer["figures"]["coil_length"]["working"]}
    assert put_in["r"] == pytest.approx((74.0 - 4.9) / 2.0)


def test_a_coil_that_just_fits_is_good():
    for outside, good in ((4.9, True), (4.901, False), (4.8, True)):
        row = outcome(asked(coil_diameter=outside), "strip-room")
        assert row["outcome"] == ("good" if good else "stop")
        assert row["limit"]["value"] == pytest.approx(outside + 0.1, rel=1e-12)
        assert row["value"]["value"] == pytest.approx(ROOM, rel=1e-12)
        assert "are 5.000 mm" in row["why"] and "need %.3f mm" % (outside + 0.1) in row["why"]
    # 0.31 more than there is, in hundredths.
    row = outcome(asked(coil_diameter=5.205), "strip-room")
    assert row["apply"][0]["value"] == pytest.approx(8.11, abs=1e-9)
    assert "8.110 mm" in row["remedy"]
    row = outcome(asked(coil_diameter=5.2), "strip-room")
    assert row["apply"][0]["value"] == pytest.approx(8.1, abs=1e-9)


def test_a_wire_that_just_bears_is_good():
    given = {"coil_diameter": 4.0, "wire_diameter": 0.6, "coil_turns": 200}
    # The stress is straight in the pressure, and something at none.
    none, some = (reckoned(4.0, 0.6, 200, one)[1] for one in (0.0, 0.03))
    pressure = 0.03 * (BEARS - none) / (some - none)
    for share, good in ((1.0 - 1e-6, True), (1.0 + 5e-10, True), (1.0 + 1e-6, False)):
        row = outcome(asked(expander_pressure=share * pressure, **given), "strip-stress")
        assert row["outcome"] == ("good" if good else "stop")
        assert row["value"]["value"] == pytest.approx(BEARS, rel=1e-5)
        assert row["limit"]["value"] == BEARS
    # Its remedy is a wire with its own number of turns.
    assert row["remedy"].startswith("Take wire of 0.")
    assert [one["input"] for one in row["apply"]] == ["wire_diameter", "coil_turns"]


def test_turns_that_just_have_air():
    given = {"coil_diameter": 4.0, "wire_diameter": 0.6}
    turns = most(4.0, 0.6)
    for more, good in ((0, True), (1, False), (-1, True)):
        row = outcome(asked(coil_turns=turns + more, **given), "coil-bind")
        assert row["outcome"] == ("good" if good else "stop")
        assert row["limit"]["value"] == turns
    assert (
        "at most %d turns" % turns
        in outcome(asked(coil_turns=turns + 1, **given), "coil-bind")["remedy"]
    )
    # Coil against coil: no air, and not less than none.
    shut = outcome(asked(coil_turns=2 * turns, **given), "coil-bind")
    assert "has 0.000 mm" in shut["why"]


@pytest.mark.parametrize(("wire", "holds"), [(1.0, True), (1.001, False), (0.99, True)])
def test_a_wire_is_at_most_a_third_of_its_coil(wire, holds):
    given = {"coil_diameter": 3.0, "wire_diameter": wire}
    if holds:
        assert outcome(asked(**given), "strip-room")["outcome"] == "good"
        return
    with pytest.raises(InputProblem) as refused:
        asked(**given)
    (fault,) = refused.value.faults
    assert (fault.path, fault.value, fault.highest) == (("wire_diameter",), wire, 1.0)
    assert "1.00 mm" in fault.remedy and "3.00 mm" in fault.message


def test_so_small_a_coil_is_wound_of_the_wire_it_can_take():
    """0.6 mm over all: a fourth of it, thinner than any that is kept, and four turns at least."""
    answer = asked(coil_diameter=0.6)
    assert taken(answer)["wire_diameter"] == pytest.approx(0.15, rel=1e-12)
    # As deep as the piston nearly: what is left is too short for more than the fewest turns.
    deep = {"groove_depth": 39.0, "coil_diameter": 35.0, "wire_diameter": 3.0, "ring_width": 30.0}
    answer = asked(**deep)
    round_inside = math.pi * (74.0 - 35.0 - 32.0)
    assert taken(answer)["coil_turns"] == int(round_inside / 3.3) == 6
    answer = asked(**{**deep, "wire_diameter": 6.0})
    assert int(math.pi * (74.0 - 35.0 - 29.0) / 6.6) == taken(answer)["coil_turns"] == 4
    answer = asked(**{**deep, "wire_diameter": 7.0})
    assert int(math.pi * (74.0 - 35.0 - 28.0) / 7.7) == 4
    answer = asked(**{**deep, "coil_diameter": 36.5, "wire_diameter": 6.0})
    assert int(math.pi * (74.0 - 36.5 - 30.5) / 6.6) == 3
    assert taken(answer)["coil_turns"] == 4


@pytest.mark.parametrize(
    ("depth", "width", "helps"), [(5.03, 6.0, "groove deeper"), (5.0, 6.0, "groove deeper"),
                                  (9.03, 1.9, "ring wider"), (3.4, 6.0, "groove deeper"),
     # 0.9 of 1.9 is 1.71 mm: 1.72 of room is more, 1.62 is not.
     (4.62, 1.9, "ring wider"), (4.52, 1.9, "groove deeper")]
)  # fmt: skip
def test_where_no_wire_bears_what_holds_the_coil_small_is_told(depth, width, helps):
    """2.23 mm of room takes a coil of 2.1: a deeper groove a larger one, a wider ring none."""
    answer = asked(groove_depth=depth, ring_width=width, expander_pressure=0.5)
    row = outcome(answer, "strip-stress")
    assert row["outcome"] == "stop" and "apply" not in row
    assert row["remedy"] == "Ask less of it, or make the %s." % helps
    # The thickest wire that winds to it, for it bears most.
    outside = taken(answer)["coil_diameter"]
    thickest = [one for one in coil_expander.WIRES if one <= outside / 4.0] or [outside / 4.0]
    assert taken(answer)["wire_diameter"] == thickest[-1]
    # A coil that was asked for smaller than there is room for: neither helps it.
    answer = asked(coil_diameter=2.0, expander_pressure=0.5)
    assert outcome(answer, "strip-stress")["remedy"] == "Ask less of it, or take a larger coil."
