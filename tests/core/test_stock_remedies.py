"""What clears a finding of the stock, by hand: fewer blanks on a stick, a longer grip, no spares.

A stick stands out by two and a half diameters at the most, a chuck holds 0.15 of the diameter at
the least (common practice, no source).
"""

import pytest

from core.test_stock import ONE, SMALL, finding, stock
from core.test_stock_said import a_bar, a_set
from ringwright.core.making import stock_remedies
from ringwright.core.problems import OutOfRange
from ringwright.core.records import WATCH
from ringwright.core.records import finding as a_finding


def tried(check, sets, values):
    """The values that are tried for a check, likeliest first: none clears it."""
    asked = []

    def judge(given):
        asked.append({key: given[key] for key in given if given[key] != values.get(key)})
        raise OutOfRange("x", 0.0, "never", "nowhere")

    rows = [a_finding(check, WATCH, "Why.", "Do it.")]
    said = stock_remedies.told(values, sets, rows, judge, judge)
    return asked, said[0]


@pytest.mark.parametrize(
    ("sets", "most"),
    [
        # 2.5 times 84 hold 20 of 10.5; 2.5 times 40 hold 15 of 6.5, and 81 less of 12.
        ([a_set(outside=84.0)], 20),
        ([a_set(outside=83.9)], 19),
        ([a_set(outside=84.0), a_set(outside=40.0, part=6.5)], 15),
        ([a_set(outside=40.0, part=6.5), a_set(outside=84.0)], 15),
        ([a_set(outside=40.0, part=110.0)], 1),
        ([a_set(outside=40.0, part=50.0)], 2),
    ],
)
def test_the_most_blanks_that_no_stick_chatters_with(sets, most):
    asked, row = tried("stick", sets, {"rings_per_stick": 30})
    assert asked == [{"rings_per_stick": most}, {"rings_per_stick": None}]
    assert row.remedy.startswith("No one change clears this")


def test_the_grip_that_the_largest_needs_to_the_hundredth_above():
    """0.15 times 81.07 is 12.1605."""
    sets = [a_set(outside=50.0), a_set(outside=81.07), a_set(outside=60.0)]
    asked, _ = tried("chucking-piece", sets, {"chucking_piece": 5.0})
    assert asked == [{"chucking_piece": 12.17}]


@pytest.mark.parametrize(
    ("spares", "fewer"), [(5, [4, 3, 2, 0]), (4, [3, 2, 1, 0]), (3, [2, 1, 0]), (1, [0])]
)
def test_spares_are_tried_one_by_one_and_then_none(spares, fewer):
    sets = [a_set(count=20, wanted=21), a_set(count=20, wanted=20 + spares)]
    asked, _ = tried("spares", sets, {"spares": spares, "bars": [1], "bars_to_buy": None})
    assert [one["spares"] for one in asked] == fewer


@pytest.mark.parametrize(
    ("sets", "have", "offered", "looked"),
    [(3, 2, 2, True), (2, 6, 0, True), (2, 0, 6, True), (3, 4, 1, False), (1, 13, 0, False),
     (1, 0, 13, False), (13, 1, 0, False), (12, 1, 0, True)],
)  # fmt: skip
def test_fewer_spares_are_tried_where_sets_and_bars_are_few(sets, have, offered, looked):
    """Up to twelve pairs of a set and a bar."""
    values = {"spares": 2, "bars": [a_bar()] * have, "bars_to_buy": [a_bar()] * offered}
    asked, _ = tried("spares", [a_set(wanted=22)] * sets, values)
    assert bool(asked) is looked


def test_what_the_hand_mends_is_not_tried():
    asked, row = tried("rack", [a_set()], {"spares": 2})
    assert asked == [] and row.remedy == "Do it."


def applied(answer, check):
    row = finding(answer, check)
    return row["remedy"], [(one["input"], one["value"]) for one in row["apply"]]


def test_remedies_are_said_in_the_words_of_the_trade():
    one = dict(ONE, outside_diameter=84.0)
    remedy, given = applied(stock(sets=[one], rings_per_stick=30), "stick")
    assert given == [("rings_per_stick", 20)]
    assert remedy == "Turn at most 20 from one stick."
    remedy, given = applied(stock(sets=[ONE], chucking_piece=10.0), "chucking-piece")
    assert given == [("chucking_piece", pytest.approx(12.15))]
    assert remedy.startswith("Leave 12.15 mm")
    # 12 blanks of 6 mm, what is held and faced: the thirteenth wants a second bar.
    rack = [{"diameter": 36.0, "length": 93.5, "count": 2}]
    request = {"sets": [SMALL], "bars": rack, "spindle_bore": 38.0}
    assert applied(stock(spares=3, **request), "spares") == (
        "Cut 2 spares for each set.", [("spares", 2)]
    )  # fmt: skip
    ten = {**request, "bars": [{**rack[0], "length": 82.5}]}
    # The ten that are wanted fill the bar: 10 of 6 mm and 21.5.
    assert applied(stock(spares=1, **ten), "spares") == ("Cut no spares.", [("spares", 0)])
