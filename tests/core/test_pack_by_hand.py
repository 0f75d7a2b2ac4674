"""Rings of one piston by hand: openings, spaces, what they cost; judgements at their limits.

Every size is given; ring, piston and cylinder are of irons that grow alike, so that each warm size
is the cold one times one factor. Warm is the middle of admission (170.482 degC, 0.801325 MPa
absolute) and exhaust (102.633 degC, 0.111325 MPa), as steam tables have them.
"""

import math
from types import SimpleNamespace

import pytest

from ringwright.core import calculations
from ringwright.core.fields import checked
from ringwright.core.fitting import ring_pack
from ringwright.core.fitting.pack import Pack
from ringwright.core.problems import InputProblem
from ringwright.core.running import ring_spaces, steam_cycle

HELD = {
    "bore": 80.0, "stroke": 90.0, "speed": 300.0, "steam_pressure": 0.7, "ring_type": "plain",
    "end_cut": "square", "ring_width": 4.0, "radial_thickness": 2.7, "groove_depth": 3.3,
    "piston_diameter": 79.6, "closed_gap": 0.31, "side_clearance": 0.05, "end_land": 5.0,
    "inner_land": 3.5, "rings_on_piston": 3, "wall_pressure": 0.05,
    "piston_material": "grey-iron-200",
}  # fmt: skip
WARM = 1.0 + 11.7e-6 * (0.5 * (170.4821 + 102.6329) - 20.0)
# Dry steam of 0.801325 MPa: 0.23995 m3/kg (steam tables print 0.2403 at 0.8).
ROOT = math.sqrt(0.801325 * 0.23995)


def request(**more):
    given = {**HELD, **more}
    return {name: one for name, one in given.items() if one is not None}


def pack(**more):
    return Pack(checked(calculations.CALCULATIONS["ring-pack"].fields, request(**more)))


def asked(**more):
    return calculations.run("ring-pack", request(**more))


def value(answer, name):
    return answer["figures"][name]["value"]


def told(answer, check):
    return next((row for row in answer["findings"] if row["check"] == check), None)


def judged(check, **more):
    row = told(asked(**more), check)
    return row["outcome"], row["value"]["value"], row["limit"]["value"]


@pytest.mark.parametrize(
    ("level", "place", "discharge"), [(0, 0.5, 0.60), (1, 1.0, 0.75), (2, 1.5, 0.90)]
)
def test_a_square_gap_is_open_by_gap_and_land(level, place, discharge):
    """Gap 0.31 and 0.2 round the piston, both warm; half of that below a resting piston, 1.5 times
    above; a rough opening lets 0.6 to 0.9 pass."""
    area, side = pack().opening("plain", level)
    assert side == pytest.approx(0.2 * WARM, rel=1e-6)
    assert area == pytest.approx(0.31 * 0.2 * WARM * WARM * place * discharge, rel=1e-5)


def test_a_double_turn_ring_is_open_by_the_way_round_its_back_alone():
    area, _ = pack(ring_type="double-turn").opening("double-turn", 1)
    assert area == pytest.approx(0.5 * 0.75 * 0.31 * 0.2 * WARM * WARM, rel=1e-5)


def test_a_space_fills_so_often_in_a_turn():
    """Round the bore: land 0.2 by 3.5, behind the ring (3.3 - 2.7 + 0.2) by 4, beside it 0.05 by
    2.7; a turn takes 0.2 s; sqrt(p v) in m/s."""
    space = math.pi * 80.0 * (0.2 * 3.5 + 0.8 * 4.0 + 0.05 * 2.7)  # [mm3]
    wanted = 0.04 * 1e-6 * (1000.0 * ROOT) * (60.0 / 300.0) / (space * 1e-9)
    assert pack().fillings(0.04, 0.2) == pytest.approx(wanted, rel=1e-4)
    # No space is nothing: a thousandth of a square millimetre, all round.
    flat = pack(side_clearance=0.0, groove_depth=2.7)
    least = math.pi * 80.0 * 1e-3
    wanted = 0.04 * 1e-6 * (1000.0 * ROOT) * (60.0 / 300.0) / (least * 1e-9)
    assert flat.fillings(0.04, 0.0) == pytest.approx(wanted, rel=1e-4)


@pytest.mark.parametrize(("acting", "sides"), [("double", 2.0), ("single", 1.0)])
def test_one_ring_loses_by_its_gap_what_the_mean_of_the_turn_drives(acting, sides):
    """kg/s = area [m2] x mean flow [Pa] / sqrt(p v) [m/s]; both ends of a double-acting piston."""
    made = pack(rings_on_piston=1, acting=acting)
    stated = steam_cycle.cycle(
        admission_pressure=0.801325, back_pressure=0.111325, cut_off=0.6, release=0.9,
        compression=0.1, clearance=0.1,
    )  # fmt: skip
    air = 0.101325
    k = 1.135
    flow = 0.0
    for one, two in ring_spaces.ends(stated, acting == "double", air):
        if one > two:
            ratio = max(two / one, (2 / (k + 1)) ** (k / (k - 1)))
            whole = 2 * k / (k - 1) * (ratio ** (2 / k) - ratio ** ((k + 1) / k))
            flow += one * math.sqrt(whole) / 36
    area = 0.75 * 0.31 * 0.2 * WARM * WARM
    wanted = 3600.0 * sides * (area * 1e-6) * (flow * 1e6) / (1000.0 * ROOT)
    assert made.split(1, "plain")[0] == pytest.approx(wanted, rel=1e-3)


@pytest.mark.parametrize(("level", "mu", "share"), [(0, 0.05, 0.5), (1, 0.1, 0.5), (2, 0.15, 0.5)])
def test_friction_is_that_of_the_rings_and_of_the_steam_behind_them(level, mu, share):
    """mu (n p + share dp) pi d h v, v = 2 x 90 mm x 300/60 = 0.9 m/s; the spreads of share by what
    the running engine says of one ring more."""
    made = pack()
    each = mu * 0.05 * math.pi * 80.0 * 4.0 * 0.9
    assert made.friction(5, level) - made.friction(2, level) == pytest.approx(3 * each, rel=1e-9)
    whole = calculations.run(
        "running",
        {k: v for k, v in HELD.items() if k not in ("groove_depth", "end_land", "inner_land")},
    )["figures"]["friction_power"]
    end = ("low", "value", "high")[level]
    assert made.friction(3, level) == pytest.approx(whole[end], rel=1e-9)


def test_an_expander_rubs_as_the_ring_does():
    made, plain = pack(expander_pressure=0.02), pack()
    more = 0.1 * 4 * 0.02 * math.pi * 80.0 * 4.0 * 0.9
    assert made.friction(4) - plain.friction(4) == pytest.approx(more, rel=1e-9)
    first = asked(expander_pressure=0.02)["rings"][0]["wall_pressure_with_steam"]["value"]
    bare = asked()["rings"][0]["wall_pressure_with_steam"]["value"]
    assert first - bare == pytest.approx(0.02, abs=1e-9)


def test_friction_costs_the_steam_that_its_power_takes():
    """Steam of the engine over its power, as the running engine has them."""
    made = pack()
    for rings in (1, 4):
        power = made.friction(rings)
        each = made.engine.base[1] / made.engine.power[1]
        lost = made.split(rings, "plain")[0]
        assert made.cost(rings) == pytest.approx(lost + each * power, rel=1e-12)


def test_the_length_of_a_piston_by_hand():
    """Grooves of 4.05, lands of 3.5 between them and 5 at each end."""
    made = pack()
    assert made.length(1) == pytest.approx(4.05 + 10.0)
    assert made.length(3) == pytest.approx(3 * 4.05 + 2 * 3.5 + 10.0)


@pytest.mark.parametrize(("kind", "fewest"), [("plain", 2), ("double-turn", 1)])
def test_the_number_that_costs_least_is_found(kind, fewest):
    """Slow engines with wide gaps want many rings, quick ones few; never less than are safe."""
    seen = set()
    for gap, speed in ((0.31, 12.0), (0.31, 30.0), (0.31, 60.0), (0.6, 60.0)):
        made = pack(ring_type=kind, closed_gap=gap, speed=speed)
        assert made.best() == min(range(fewest, 5), key=made.cost)
        seen.add(made.best())
    assert seen >= {fewest, fewest + 1, fewest + 2}


def test_lands_that_nobody_gave_are_a_turn_of_the_ring():
    for kind, turn in (("plain", 4.0), ("double-turn", 2.0)):
        made = pack(ring_type=kind, end_land=None, inner_land=None)
        assert (made.end, made.between, made.turn_width) == (turn, turn, turn)


def test_a_groove_that_nobody_gave_is_four_tenths_deeper_than_its_ring():
    """Khurmi and Gupta, section 32.9."""
    assert pack(groove_depth=None).depth == pytest.approx(3.1)


def least_land(pressure, a, b, poisson, tensile):
    """Young and Budynas, table 11.2: the plate's moment, 0.14 of the strength."""
    c, log = b / a, math.log(a / b)
    c8 = 0.5 * (1 + poisson + (1 - poisson) * c * c)
    c9 = c * ((1 + poisson) / 2 * log + (1 - poisson) / 4 * (1 - c * c))
    l17 = 0.25 * (1 - (1 - poisson) / 4 * (1 - c**4) - c * c * (1 + (1 + poisson) * log))
    moment = pressure * a * a / c8 * (c9 / (2 * a * b) * (a * a - b * b) - l17)
    return math.sqrt(6.0 * moment / (0.14 * tensile))


def test_a_high_pressure_asks_for_more_land_than_a_turn():
    """6 N/mm2 on a groove of 3.3 in iron of 200 N/mm2: more than 2 mm, rounded up to 0.01."""
    least = least_land(6.0, 40.0, 39.8 - 3.3, 0.26, 200.0)
    made = pack(ring_type="double-turn", steam_pressure=6.0, end_land=None, inner_land=None)
    assert made.least == pytest.approx(least, rel=1e-6) and least > 2.0
    assert made.end == made.between == pytest.approx(math.ceil(100.0 * least) / 100.0)


@pytest.mark.parametrize("which", ["end_land", "inner_land"])
def test_a_land_too_narrow_is_watched_and_stopped_where_it_breaks(which):
    """Bending goes by the square of the width: what bears 2.5 times too much is 1.5811 times too
    narrow."""
    least = least_land(0.7, 40.0, 36.5, 0.26, 200.0)
    for land, outcome in (
        (1.002 * least, "good"),
        (0.998 * least, "watch"),
        (1.002 * least / math.sqrt(2.5), "watch"),
        (0.998 * least / math.sqrt(2.5), "stop"),
    ):
        found = judged("land-short", **{which: land})
        assert found == (outcome, pytest.approx(land), pytest.approx(least, rel=1e-6))


def test_one_ring_has_no_land_between():
    """An inner land that is not there is not the narrowest."""
    found = judged("land-short", rings_on_piston=1, inner_land=0.3)
    assert found[:2] == ("good", 5.0)
    assert told(asked(rings_on_piston=1), "gap-places") is None
    two = judged("land-short", rings_on_piston=2, inner_land=0.3)
    assert two[:2] == ("stop", 0.3)
    assert told(asked(rings_on_piston=2), "gap-places") is not None
    # Just what strength asks for bears.
    assert judged("land-short", end_land=pack().least)[0] == "good"


def test_a_short_land_is_made_as_wide_as_it_must_be_and_the_other_left():
    least = least_land(0.7, 40.0, 36.5, 0.26, 200.0)
    up = math.ceil(1000.0 * least) / 1000.0
    row = told(asked(end_land=0.5), "land-short")
    assert {one["input"]: one["value"] for one in row["apply"]} == {"end_land": pytest.approx(up)}
    row = told(asked(end_land=0.5, inner_land=0.6), "land-short")
    assert [one["input"] for one in row["apply"]] == ["end_land", "inner_land"]


def test_rings_and_lands_fit_the_piston_or_do_not():
    need = 3 * 4.05 + 2 * 3.5 + 10.0
    for room, outcome in ((need, "good"), (need - 0.001, "stop")):
        found = judged("pack-length", piston_length=room)
        assert found == (outcome, pytest.approx(need), pytest.approx(room))


def test_a_piston_too_short_takes_narrower_lands_before_fewer_rings():
    """Lands of three quarters of a ring, 3: 3 x 4.05 + 2 x 3 + 2 x 3 = 24.15."""
    row = told(asked(piston_length=24.2), "pack-length")
    assert {one["input"]: one["value"] for one in row["apply"]} == {
        "inner_land": 3.0, "end_land": 3.0,
    }  # fmt: skip
    # 24.1 is too short for those: two rings with their lands as they are, 2 x 4.05 + 3.5 + 10.
    row = told(asked(piston_length=24.1), "pack-length")
    assert {one["input"]: one["value"] for one in row["apply"]} == {"rings_on_piston": 2}
    # One ring alone, 4.05 + 10.
    row = told(asked(piston_length=14.1), "pack-length")
    assert {one["input"]: one["value"] for one in row["apply"]} == {"rings_on_piston": 1}
    # 21.5: two rings with narrow lands, 2 x 4.05 + 3 + 6 = 17.1.
    row = told(asked(piston_length=21.5), "pack-length")
    assert {one["input"]: one["value"] for one in row["apply"]} == {
        "rings_on_piston": 2, "inner_land": 3.0, "end_land": 3.0,
    }  # fmt: skip


@pytest.mark.parametrize("speed", [100.0, 300.0])
def test_another_ring_is_worth_it_from_half_a_per_cent_of_the_steam(speed):
    """What the number on hand costs over the best, against 0.005 of the steam used."""
    made, seen = pack(speed=speed), set()
    for count in range(1, 7):
        row = ring_pack._number(made, count)
        spare = made.cost(count) - made.cost(made.best())
        worth = count < 2 or spare > 0.005 * made.engine.base[1]
        assert row.outcome == ("watch" if worth else "good"), count
        assert (row.value.value, row.limit.value) == (count, made.best())
        assert ("; with" in row.why) is (count != made.best())
        assert ("One plain ring alone" in row.why) is (count == 1)
        seen.add(row.outcome)
    assert seen == {"good", "watch"}


def test_the_first_ring_s_share_and_the_wear_of_each():
    """Half of the steam's pressure presses behind a ring: shares and wear from the differences."""
    answer = asked(rings_on_piston=4)
    across = [row["pressure_difference"]["value"] for row in answer["rings"]]
    pressed = [0.05 + 0.5 * one for one in across]
    for row, one, hard in zip(answer["rings"], across, pressed, strict=True):
        assert row["share"]["value"] == pytest.approx(one / sum(across), rel=1e-9)
        assert row["wall_pressure_with_steam"]["value"] == pytest.approx(hard, rel=1e-9)
        assert row["wear"]["value"] == pytest.approx(4 * hard / sum(pressed), rel=1e-9)
    assert [row["ring"] for row in answer["rings"]] == [1, 2, 3, 4]
    assert value(answer, "first_ring_share") == pytest.approx(across[0] / sum(across))
    row = told(answer, "ring-shares")
    assert row["value"]["value"] == pytest.approx(max(pressed))
    times = max(pressed) / min(pressed)
    assert "%.1f times as hard as the least" % times in row["why"]
    assert "ends press hardest" in row["why"]


def test_the_one_that_presses_hardest_is_named():
    """Single-acting: steady choked flow leaves most to the last ring; slow filling to the first."""
    quick = told(asked(acting="single", speed=5.0, rings_on_piston=4), "ring-shares")["why"]
    assert "The last one presses hardest" in quick and "wears so much faster" in quick
    alone = told(asked(rings_on_piston=1), "ring-shares")["why"]
    assert alone == "The one ring takes the whole of the pressure."


@pytest.mark.parametrize(("count", "spaced"), [(2, 180.0), (3, 120.0), (4, 180.0), (5, 180.0)])
def test_gaps_stand_as_far_apart_as_may_be(count, spaced):
    assert value(asked(rings_on_piston=count), "gap_spacing") == spaced


def test_one_ring_has_no_spacing_and_no_space():
    figures = asked(rings_on_piston=1)["figures"]
    assert "gap_spacing" not in figures and "fillings" not in figures


def test_steam_has_the_room_of_so_many_gaps_from_gap_to_gap():
    """Two ways round, each a land of 3.5 wide, against a gap of 0.31: 22.6."""
    row = told(asked(), "gap-places")
    assert row["value"]["value"] == pytest.approx(2.0 * 3.5 / 0.31)
    assert "23 times" in row["why"]


def test_one_double_turn_ring_serves_for_two_within_half_a_per_cent():
    made = pack(ring_type="double-turn", rings_on_piston=1)
    two, one = made.split(2, "plain")[0], made.split(1, "double-turn")[0]
    row = told(asked(ring_type="double-turn", rings_on_piston=1), "double-for-two")
    assert row["value"]["value"] == pytest.approx(one, rel=1e-9)
    assert row["limit"]["value"] == pytest.approx(two + 0.005 * made.engine.base[1], rel=1e-9)
    assert "So one serves for two, within 0.5 %" in row["why"] and row["outcome"] == "good"
    loose = {"ring_type": "double-turn", "piston_diameter": 74.0}
    loose.update(closed_gap=None, end_cut=None)
    bad = told(asked(rings_on_piston=1, **loose), "double-for-two")
    assert bad["outcome"] == "watch" and "does not serve" in bad["why"]
    assert {one["input"]: one["value"] for one in bad["apply"]} == {"rings_on_piston": 2}
    # Nobody who fits two asks for one.
    assert told(asked(rings_on_piston=2, **loose), "double-for-two")["outcome"] == "good"
    assert (
        told(asked(rings_on_piston=1, **{**loose, "ring_type": "plain"}), "double-for-two")[
            "outcome"
        ]
        == "good"
    )


def test_counts_from_one_to_four_and_the_number_asked_for():
    assert [row["rings"] for row in asked(rings_on_piston=3)["counts"]] == [1, 2, 3, 4]
    assert [row["rings"] for row in asked(rings_on_piston=4)["counts"]] == [1, 2, 3, 4]
    made, rows = pack(rings_on_piston=5), asked(rings_on_piston=5)["counts"]
    for rings, row in enumerate(rows, 1):
        assert row["rings"] == rings
        assert row["leak"]["value"] == pytest.approx(made.split(rings, "plain")[0], rel=1e-9)
        assert row["friction_power"]["value"] == pytest.approx(made.friction(rings), rel=1e-9)
        assert row["steam_cost"]["value"] == pytest.approx(made.cost(rings), rel=1e-9)
        assert row["pack_length"]["value"] == pytest.approx(made.length(rings), rel=1e-9)


def test_one_ring_s_leak_spreads_as_its_opening_does():
    """Half to one and a half times the land, 0.6 to 0.9 of what flows, about 1 and 0.75."""
    leak_ = asked(rings_on_piston=1)["figures"]["gap_leak"]
    assert leak_["low"] == pytest.approx(0.5 * 0.6 / 0.75 * leak_["value"], rel=1e-6)
    assert leak_["high"] == pytest.approx(1.5 * 0.9 / 0.75 * leak_["value"], rel=1e-6)


def test_a_groove_to_the_middle_is_refused_and_one_short_of_it_is_not():
    pack(groove_depth=39.79)
    for depth in (39.8, 39.9):
        with pytest.raises(InputProblem):
            pack(groove_depth=depth)


def test_a_remedy_is_said_as_what_is_done():
    made = pack()
    for name, given, words in (
        ("rings_on_piston", 1, "give the piston one ring"),
        ("rings_on_piston", 3, "give the piston 3 rings"),
        ("piston_diameter", None, "make the piston 79.60 mm (3.134 in) in diameter"),
        ("end_land", 2.5, "make the end lands 2.50 mm (0.098 in) wide"),
        ("inner_land", 2.5, "make the lands between grooves 2.50 mm (0.098 in) wide"),
    ):
        assert ring_pack._words(name, given, made) == words


@pytest.mark.parametrize(
    ("differences", "sides", "words"),
    [
        # 0.05 and half of each: 0.3, 0.2, 0.1.
        ([0.5, 0.3, 0.1], 1.0, "It presses hardest, 3.0 times as hard as the least, and wears so"),
        ([0.1, 0.3, 0.5], 1.0, "The last one presses hardest, 3.0 times as hard as the least"),
        ([0.5, 0.1, 0.5], 2.0, "The rings at the ends press hardest, 3.0 times as hard as the least"
         ", and wear so"),
        ([0.3, 0.3, 0.3], 1.0, "All press alike, and wear alike."),
    ],
)  # fmt: skip
def test_of_rings_in_a_row_the_hardest_is_named_and_what_the_first_takes(differences, sides, words):
    shared = SimpleNamespace(differences=differences)
    rings = SimpleNamespace(
        given={"ring_type": "plain", "wall_pressure": 0.05, "expander_pressure": None},
        split=lambda count, ring_type: (0.0, shared),
        sides=sides,
    )
    row = ring_pack._shares(rings, 3)
    first = 100.0 * differences[0] / sum(differences)
    assert row.why.startswith("Of the pressure the first ring takes %d %%. " % int(first + 0.5))
    assert words in row.why
    assert row.value.value == pytest.approx(0.05 + 0.5 * max(differences))


def test_a_double_turn_ring_s_leak_is_told_with_its_spread():
    """Usual first, then nothing at the least (a joint that seals) to the most."""
    made = pack(ring_type="double-turn", rings_on_piston=1)
    usual, most = (1000.0 * made.split(1, "double-turn", level)[0] for level in (1, 2))
    why = told(asked(ring_type="double-turn", rings_on_piston=1), "double-for-two")["why"]
    assert "loses %d g" % int(usual + 0.5) in why
    assert "between 0 g (0.0 oz) and %d g" % int(most + 0.5) in why
