"""A worn groove cut true: against plane geometry, a handbook, sizing, and its own remedies."""

import json
import math
import random

import pytest
from shapely.geometry import Polygon, box

from ringwright.core import calculations, shop_sizes
from ringwright.core.fields import checked
from ringwright.core.fitting.groove_recut import LAND_SHARE, clean_width, land_left
from ringwright.core.problems import InputProblem

WORN = [{"mouth": 5.3, "bottom": 5.1}, {"mouth": 5.42, "bottom": 5.15}]
PLAIN = {"bore": 80.0, "ring_type": "plain", "groove_readings": WORN}


def asked(**more):
    return calculations.run("groove-recut", {"bore": 80.0, "groove_readings": WORN, **more})


def value(answer, name):
    return answer["figures"][name]["value"]


def outcome(answer, check):
    return next((row for row in answer["findings"] if row["check"] == check), None)


@pytest.mark.parametrize("seed", range(40))
def test_both_sides_of_any_worn_groove_clean_up_and_of_no_narrower_one(seed):
    """Shapely: worn groove, each side worn by a share of its own, lies within the cut one."""
    dice = random.Random(seed)
    depth, step = 4.0, dice.choice((0.0, 0.15))
    pairs, worn = [], []
    for _ in range(dice.randint(1, 6)):
        mouth, bottom = 5.0 + dice.uniform(0.0, 0.5), 5.0 + dice.uniform(0.0, 0.5)
        pairs.append((mouth, bottom))
        at = [0.5 * (one - 5.0) for one in (mouth, bottom)]  # worn alike from both sides
        corners = [(-at[0], 0.0), (-at[1], depth), (5.0 + at[1], depth), (5.0 + at[0], 0.0)]
        ledge = box(-at[0] - 0.5 * step, 0.4, 5.0 + at[0] + 0.5 * step, 1.0)
        worn.append(Polygon(corners).union(ledge))
    wide, _ = clean_width(pairs, step, 0.1)
    side = 0.5 * (wide - 5.0)
    for groove in worn:
        assert box(-side + 0.1 - 1e-9, 0.0, 5.0 + side - 0.1 + 1e-9, depth).covers(groove)
    # What is narrower by more than the step's own play leaves some of it.
    tight, least = side - 0.1 - 0.5 * step - 0.01, min(min(p) for p in pairs)
    if max(map(max, pairs)) - least > 1e-9 and step == 0.0:
        narrow = box(-tight, 0.0, 5.0 + tight, depth)
        assert not all(narrow.covers(groove) for groove in worn)


def test_out_of_parallel_is_what_the_widths_differ_by_and_the_step():
    assert clean_width([(5.3, 5.1), (5.42, 5.15)], 0.1, 0.2) == pytest.approx((5.92, 0.42))


def test_what_was_true_and_is_cut_once_more_comes_back():
    """Round trip: the groove that was cut, measured, is out of parallel by nothing."""
    first = value(asked(), "groove_width")
    again = asked(groove_readings=[{"mouth": first, "bottom": first}])
    assert value(again, "out_of_parallel") == 0.0
    assert value(again, "clean_width") - 0.2 == pytest.approx(first, rel=1e-12)
    assert outcome(again, "groove-taper")["outcome"] == "good"


@pytest.mark.parametrize("grooves", [1, 2])
def test_lands_lie_between_least_and_most_however_the_cut_falls(grooves):
    least, usual, most = land_left(6.0, 5.0, 5.6, grooves)
    for share in (0.0, 0.2, 0.5, 0.9, 1.0):
        assert least - 1e-12 <= 6.0 - grooves * 0.6 * share <= most + 1e-12
    assert usual == pytest.approx(6.0 - grooves * 0.3)
    assert (least, most) == (pytest.approx(6.0 - grooves * 0.6), 6.0)


def test_land_is_the_plate_of_the_handbook():
    """Young and Budynas, table 11.2: inner edge fixed, outer free, whole area pressed."""
    answer = asked(**PLAIN, end_land=2.0, groove_depth=6.0, piston_diameter=79.6)
    a, b, nu, q = 40.0, 39.8 - 6.0, 0.26, 0.7
    c, log = b / a, math.log(a / b)
    c8 = 0.5 * (1 + nu + (1 - nu) * c * c)
    c9 = c * ((1 + nu) / 2 * log + (1 - nu) / 4 * (1 - c * c))
    l17 = 0.25 * (1 - (1 - nu) / 4 * (1 - c**4) - c * c * (1 + (1 + nu) * log))
    moment = q * a * a / c8 * (c9 / (2 * a * b) * (a * a - b * b) - l17)
    width = value(answer, "end_land_left")
    assert value(answer, "land_stress") == pytest.approx(6 * moment / width**2, rel=1e-6)
    shear = 1.5 * q * (a * a - b * b) / (2 * b * width)
    assert value(answer, "land_shear") == pytest.approx(shear, rel=1e-6)


@pytest.mark.parametrize("inch", [False, True])
@pytest.mark.parametrize("ring_type", ["plain", "double-turn"])
def test_the_ring_fits_its_groove_by_sizings_own_word(ring_type, inch):
    dice = random.Random(9)
    for _ in range(60):
        wide = dice.uniform(1.0, 12.0)
        given = {"bore": dice.uniform(40.0, 300.0), "ring_type": ring_type, "inch_sizes": inch}
        answer = asked(groove_readings=[{"mouth": wide, "bottom": wide}], **given)
        ring, groove = value(answer, "ring_width"), value(answer, "groove_width")
        assert groove >= value(answer, "clean_width") - 1e-9
        assert groove <= 1.025 * value(answer, "clean_width") + 0.01
        steps = (25.4 / 64, 25.4e-4) if inch else (0.001,)
        assert min(abs(ring / step - round(ring / step)) for step in steps) < 1e-6
        sized = calculations.run("sizing", {**given, "ring_width": ring, "groove_width": groove})
        assert outcome(sized, "side-clearance")["outcome"] == "good"


@pytest.mark.parametrize("value_", [0.51, 1.0, 3.003, 4.76, 5.588, 12.01, 149.0])
def test_a_width_is_rounded_up_by_two_per_cent_at_most(value_):
    for inch in (False, True):
        assert value_ - 1e-6 <= shop_sizes.over(value_, inch) <= 1.02 * value_
    assert shop_sizes.over(5.93, False) == pytest.approx(6.0)
    assert shop_sizes.over(4.70, True) == pytest.approx(25.4 * 3 / 16)


def test_old_ring_insert_and_their_play_fill_the_groove():
    answer = asked(**PLAIN, old_ring_width=4.0)
    filled = 4.0 + value(answer, "insert_width") + value(answer, "side_clearance")
    assert filled == pytest.approx(value(answer, "clean_width"), rel=1e-12)
    assert outcome(answer, "insert")["outcome"] == "good"


def test_ways_come_out_as_they_do_when_asked_for():
    given = {"end_land": 1.6, "inner_land": 2.4, "old_ring_width": 4.0}
    rows = {row["way"]: row for row in asked(**given)["ways"]}
    for way, ring_type in (
        ("A plain ring to suit", "plain"),
        ("A double-turn ring to suit", "double-turn"),
    ):
        alone = asked(ring_type=ring_type, **given)
        for name in ("groove_width", "ring_width", "end_land_left", "inner_land_left"):
            assert rows[way][name]["value"] == value(alone, name)
        worst = {
            row["outcome"]
            for row in alone["findings"]
            if row["check"] in ("land-strength", "land-width", "width")
        }
        assert rows[way]["outcome"] == next(o for o in ("stop", "watch", "good") if o in worst)
        assert rows[way]["why"] in [row["why"] for row in alone["findings"]]
    assert rows["The old ring, and an insert beside it"]["insert_width"]["value"] > 1.0


def test_a_double_turn_ring_of_its_own_width_in_a_narrow_groove():
    narrow = asked(groove_readings=[{"mouth": 3.1, "bottom": 3.0}], end_land=4.0)
    way = next(row for row in narrow["ways"] if "sizing makes" in row["way"])
    own = calculations.run("sizing", {"bore": 80.0})
    assert way["groove_width"]["value"] == value(own, "groove_width")
    off = 0.5 * (value(own, "groove_width") - 3.1)
    assert way["end_land_left"]["value"] == pytest.approx(4.0 - off)
    assert not [row for row in asked()["ways"] if "sizing makes" in row["way"]]


CLEARED = [
    ({"ring_width": 4.0}, "groove-cleans-up"),
    ({**PLAIN, "end_land": 0.87}, "land-strength"),
    ({"end_land": 2.2}, "land-width"),
    ({**PLAIN, "end_land": 4.2}, "land-width"),
    ({**PLAIN, "old_ring_width": 5.0}, "insert"),
    ({**PLAIN}, "width"),
    ({"passed_port": 8.0}, "ring-over-port"),
    ({"radial_thickness": 2.4, "groove_depth": 2.5}, "groove-depth"),
    ({"radial_thickness": 2.0, "groove_depth": 3.2}, "groove-deep"),
]


@pytest.mark.parametrize(("more", "check"), CLEARED)
def test_what_is_told_to_be_given_clears_it(more, check):
    given = {"bore": 80.0, "groove_readings": WORN, **more}
    found = outcome(calculations.run("groove-recut", given), check)
    assert found["outcome"] != "good" and found["apply"], found
    stops = {
        row["check"]
        for row in calculations.run("groove-recut", given)["findings"]
        if row["outcome"] == "stop"
    }
    for one in found["apply"]:
        given.pop(one["input"], None)
        if one["value"] is not None:
            given[one["input"]] = one["value"]
    after = calculations.run("groove-recut", given)
    cleared = outcome(after, check)
    assert cleared is None or cleared["outcome"] == "good"
    assert {row["check"] for row in after["findings"] if row["outcome"] == "stop"} <= stops


def test_a_land_is_at_least_three_quarters_of_its_ring():
    """Khurmi and Gupta, section 32.9: other ring lands 0.75 to 1 times the ring's width."""
    assert LAND_SHARE == 0.75
    ring = value(asked(**PLAIN), "ring_width")
    off = 0.5 * (value(asked(**PLAIN), "groove_width") - 5.42)
    for land, said in ((0.76, "good"), (0.74, "watch")):
        answer = asked(**PLAIN, end_land=land * ring + off)
        assert outcome(answer, "land-width")["outcome"] == said


def test_a_land_that_is_cut_away_stops():
    gone = outcome(asked(inner_land=0.2), "land-strength")
    assert gone["outcome"] == "stop" and gone["value"]["value"] < 0.0 < gone["limit"]["value"]
    assert "new lands" in gone["remedy"]
    assert "land_stress" not in asked(inner_land=0.2)["figures"]


def test_a_groove_through_the_middle_is_refused():
    with pytest.raises(InputProblem) as refused:
        asked(groove_depth=45.0)
    assert refused.value.faults[0].path == ("groove_depth",)


def test_every_groove_that_the_inputs_allow_is_answered_or_refused():
    dice = random.Random(3)
    calculation = calculations.CALCULATIONS["groove-recut"]
    told = 0
    for _ in range(300):
        reading = {"mouth": dice.uniform(0.5, 40.0), "bottom": dice.uniform(0.5, 40.0)}
        given = {"bore": dice.uniform(10.0, 900.0), "groove_readings": [reading]}
        given["end_land"] = dice.uniform(0.2, 40.0)
        given["ring_type"] = dice.choice(("plain", "double-turn"))
        given["groove_step"], given["side_cut"] = dice.uniform(0.0, 1.0), dice.uniform(0.01, 1.0)
        if dice.random() < 0.5:
            given["groove_depth"] = dice.uniform(0.3, 80.0)
            given["old_ring_width"] = dice.uniform(0.5, 40.0)
        try:
            answer = calculation.run(checked(calculation.fields, given))
        except InputProblem as problem:
            assert all(fault.remedy for fault in problem.faults)
            continue
        told += 1
        assert all(math.isfinite(figure.value) for figure in answer["figures"].values())
        for row in answer["findings"]:
            assert row.outcome == "good" or row.remedy
    assert told > 200


def test_the_drawing_of_the_piston_has_the_groove_with_its_limits():
    """ISO 286: H8 over 3 to 6 mm is 0 to +0.018."""
    answer = asked()
    given = {"part": "piston", "bore": 80.0, "ring_width": value(answer, "ring_width")}
    (sheet,) = calculations.run("drawing", given)["sheets"]
    groove = value(answer, "groove_width")
    for limit in (math.ceil(1000.0 * groove), math.floor(1000.0 * (groove + 0.018))):
        assert ">%.3f<" % (limit / 1000.0) in sheet["svg"]
    assert "at most 0.018 mm" in outcome(answer, "groove-taper")["remedy"]


def test_an_answer_is_small():
    assert len(json.dumps(asked(end_land=3.0, inner_land=3.0, old_ring_width=4.0))) < 12000
