"""Bars at hand and on offer by hand: what they clean up to, weigh, cost and are called; which sets
they serve, and what the search for the cut list is told of them.

One producer's table of cast iron (read): to 4 in 0.125 in over the nominal size, 0.250 in under a
bore. Beyond the tables a sixteenth of the diameter, from memory.
"""

import math

import pytest

from core.test_stock_said import a_bar, a_plan, a_set
from ringwright.core.making import stock_bars
from ringwright.core.problems import InputProblem
from ringwright.core.properties.materials import material

IRON = {"material": "grey-iron"}


def at_hand(spindle=None, **given):
    values = {"bars": [{**IRON, **given}], "spindle_bore": spindle}
    return stock_bars.at_hand(values)[0]


def on_offer(**given):
    values = {key: given.pop(key) for key in ("bar_price", "metal_prices") if key in given}
    return stock_bars.on_offer([], {"bars_to_buy": [{**IRON, **given}], **values})[0]


def test_mass_of_a_bar():
    """7200 kg/m3, 6000 mm2, 250 mm: 10.8 kg."""
    assert stock_bars.mass_of(a_bar(area=6000.0, length=250.0)) == pytest.approx(10.8)


def test_of_two_prices_for_a_metal_the_later_holds_and_others_none():
    prices = [
        {"material": "grey-iron", "price": 3.0},
        {"material": "gunmetal", "price": 14.0},
        {"material": "grey-iron", "price": 4.0},
    ]
    iron, brass = material("grey-iron"), material("brass")
    assert stock_bars.rate_of(iron, {"metal_prices": prices, "bar_price": 2.0}) == 4.0
    assert stock_bars.rate_of(brass, {"metal_prices": prices, "bar_price": 2.0}) == 2.0
    assert stock_bars.rate_of(brass, {"metal_prices": prices}) is None
    assert stock_bars.rate_of(iron, {}) is None


@pytest.mark.parametrize(
    ("changed", "serves"),
    [
        ({"cleans_up": 81.0, "bores_out": 75.0}, True),
        # What was turned into inches and back is not refused for a rounding.
        ({"cleans_up": 81.0 - 5e-7, "bores_out": 75.0 + 5e-7}, True),
        ({"cleans_up": 81.0 - 2e-6}, False),
        ({"bores_out": 75.0 + 2e-6}, False),
        ({"material": material("gunmetal")}, False),
        ({"material": material("grey-iron-300")}, True),
    ],
)
def test_a_bar_serves_where_it_turns_and_bores_clean_and_is_of_that_metal(changed, serves):
    assert stock_bars.serves(a_bar(**changed), a_set()) is serves


@pytest.mark.parametrize(
    ("spindle", "fed"), [(38.0, True), (37.995, False), (37.0, False), (None, False), (90.0, True)]
)
def test_a_bar_passes_a_spindle_a_millimetre_larger(spindle, fed):
    """Common practice, no source: 37 mm over the skin through 38."""
    assert stock_bars.passes(37.0, {"spindle_bore": spindle}) is fed
    assert at_hand(spindle, diameter=37.0, length=300.0).fed is fed


def test_bars_without_a_name_are_called_by_their_place():
    rows = [{**IRON, "diameter": 60.0, "length": 90.0} for _ in range(3)]
    rows[1]["name"] = "short end"
    names = [bar.name for bar in stock_bars.at_hand({"bars": rows})]
    assert names == ["bar 1", "short end", "bar 3"]
    assert stock_bars.at_hand({}) == [] and stock_bars.on_offer([], {}) == []


def test_a_solid_bar_has_no_bore_whatever_is_given_of_one():
    bar = at_hand(diameter=60.0, length=90.0, bore=20.0, skin=False)
    assert bar.bores_out == 0.0 and bar.area == pytest.approx(math.pi / 4.0 * 3600.0)


def test_under_the_skin_of_a_tube_at_hand():
    """90 mm over the skin, up to 4 in: 0.125 - 0.038 in at the least on it, 2.2098 mm; in the bore
    the whole quarter of an inch."""
    bar = at_hand(diameter=90.0, length=300.0, form="cored", bore=60.0)
    assert bar.cleans_up == pytest.approx(90.0 - 0.087 * 25.4)
    assert bar.bores_out == pytest.approx(60.0 + 6.35)
    assert at_hand(diameter=90.0, length=300.0).bores_out == 0.0


@pytest.mark.parametrize(("form", "bore", "bores"), [("cored", 400.0, 437.5), ("solid", None, 0.0)])
def test_beyond_the_table_the_skin_is_a_sixteenth(form, bore, bores):
    """600 mm, over 20 in: 37.5 mm on the diameter."""
    bar = at_hand(diameter=600.0, length=300.0, form=form, bore=bore)
    assert (bar.cleans_up, bar.bores_out) == (pytest.approx(562.5), bores)


@pytest.mark.parametrize(
    ("diameter", "bore", "cast", "cast_bore"),
    [
        (100.0, None, 103.175, 0.0),
        (100.0, 50.0, 103.175, 43.65),
        # A core thinner than its skin is solid when it comes.
        (100.0, 5.0, 103.175, 0.0),
        (640.0, 500.0, 680.0, 460.0),
        (640.0, 30.0, 680.0, 0.0),
        (640.0, None, 680.0, 0.0),
    ],
)
def test_a_bar_on_offer_as_it_comes(diameter, bore, cast, cast_bore):
    form = "cored" if bore else "solid"
    bar = on_offer(diameter=diameter, bore=bore, form=form, length=200.0)
    assert bar.diameter == pytest.approx(cast)
    assert bar.area == pytest.approx(math.pi / 4.0 * (cast**2 - cast_bore**2), rel=1e-10)
    assert (bar.cleans_up, bar.bores_out) == (diameter, bore or 0.0)


@pytest.mark.parametrize(
    ("diameter", "label"),
    [
        (82.55, "3 1/4 in"),
        (25.4 * (3.25 + 0.9e-6 / 8.0), "3 1/4 in"),
        (25.4 * (3.25 - 0.9e-6 / 8.0), "3 1/4 in"),
        (25.4 * (3.25 + 1.2e-6 / 8.0), "82.6 mm"),
        (82.5, "82.5 mm"),
        (80.0, "80 mm"),
        (80.0496, "80 mm"),
        (80.0504, "80.1 mm"),
        (79.97, "80 mm"),
        (110.0, "110 mm"),
    ],
)
def test_a_bar_is_called_in_eighths_of_an_inch_or_tenths_of_a_millimetre(diameter, label):
    assert on_offer(diameter=diameter, length=200.0).name == label


def test_a_tube_is_called_by_both_its_sizes_unless_it_has_a_name():
    tube = {"diameter": 82.55, "bore": 50.8, "form": "cored", "length": 200.0}
    assert on_offer(**tube).name == "3 1/4 in x 2 in cored"
    assert on_offer(**tube, name="tube").name == "tube"


def test_a_price_of_its_own_goes_before_the_metal_s():
    """By the metal's: 7200 kg/m3 times pi/4 103.175 squared times 200 mm is 12.039 kg."""
    offer = {"diameter": 100.0, "length": 200.0}
    assert on_offer(**offer, price=9.0, bar_price=3.0).price == 9.0
    assert on_offer(**offer, price=9.0).price == 9.0
    assert on_offer(**offer).price is None
    assert on_offer(**offer, bar_price=3.0).price == pytest.approx(3.0 * 12.0393, rel=1e-4)


def test_bars_to_be_bought_by_length_are_offered_once_for_a_size():
    sets = [a_set(), a_set(name="second"), a_set(name="cast", size=None)]
    (bar,) = stock_bars.on_offer(sets, {"bar_length": 300.0})
    assert (bar.name, bar.length, bar.count, bar.have) == ("3 1/4 in", 300.0, None, False)
    assert stock_bars.on_offer(sets, {}) == []


@pytest.mark.parametrize("listed", ["bars", "bars_to_buy"])
@pytest.mark.parametrize(
    ("bore", "word"),
    [(None, "has a bore"), (0.0, "has a bore"), (60.0, "larger"), (61.0, "larger")],
)
def test_a_cored_bar_s_bore_is_there_and_smaller_than_the_bar(listed, bore, word):
    ask = stock_bars.at_hand if listed == "bars" else lambda given: stock_bars.on_offer([], given)
    row = {**IRON, "diameter": 60.0, "length": 90.0, "form": "cored", "bore": bore}
    with pytest.raises(InputProblem) as caught:
        ask({listed: [{**row, "form": "solid"}, row]})
    (fault,) = caught.value.faults
    assert fault.path == (listed, 1, "bore") and word in fault.message
    ask({listed: [{**row, "bore": 59.9}]})
    # A bore of 0.005 mm is one, though none would core it.
    ask({listed: [{**row, "bore": 0.005}]})


class Search:
    """Stands for the search: keeps what it was asked, and gives the plans it was handed."""

    def __init__(self, monkeypatch, *plans):
        self.asked, self.plans = [], list(plans) or [a_plan()]
        monkeypatch.setattr(stock_bars.cutting, "plan_cuts", self.plan_cuts)

    def plan_cuts(self, **asked):
        self.asked.append(asked)
        return self.plans[min(len(self.asked), len(self.plans)) - 1]


def test_the_search_is_told_what_a_bar_costs_weighs_and_holds(monkeypatch):
    """Of a bar at hand no price; of one bought its price, or its mass where nobody gave any. What
    is held once is the most of any set that it serves."""
    found = Search(monkeypatch)
    sets = [a_set(), a_set(name="second", outside=50.0, inside=44.0, extra=26.5)]
    large, small = a_bar(), a_bar(name="small", cleans_up=55.0, area=3000.0, length=100.0)
    other = a_bar(name="none", cleans_up=40.0)
    stock_bars.cut(sets, [large, small, other], {}, 2.0, 60.0)
    bars = found.asked[0]["bars"]
    assert [bar.accepts for bar in bars] == [[0, 1], [1], []]
    assert [bar.held for bar in bars] == [26.5, 26.5, 0.0]
    assert [bar.price for bar in bars] == [None] * 3
    # 7200 kg/m3, 3000 mm2, 100 mm.
    assert bars[1].worth == pytest.approx(2.16)
    offered = [a_bar(have=False, area=3000.0, length=100.0), a_bar(have=False, price=7.5)]
    assert not stock_bars.cut(sets, offered[:1], {}, 2.0, 60.0).priced
    assert found.asked[1]["bars"][0].price == pytest.approx(2.16)
    assert stock_bars.cut(sets, [large, offered[1]], {}, 2.0, 60.0).priced
    assert [bar.price for bar in found.asked[2]["bars"]] == [None, 7.5]


WORSE, BETTER = {"bought": 9.0, "bought_bound": 5.0}, {"bought": 8.0, "bought_bound": 5.0}
LONGER = {"cutting_effort": "thorough"}


@pytest.mark.parametrize(
    ("proved", "values", "times"),
    [
        ({"bought_proved": False}, LONGER, 2),
        ({"begun_proved": False}, LONGER, 2),
        ({}, LONGER, 1),
        ({"bought_proved": False}, {}, 1),
        ({"bought_proved": False}, {"cutting_effort": "quick"}, 1),
    ],
)
def test_only_a_thorough_search_that_proved_too_little_goes_on(monkeypatch, proved, values, times):
    found = Search(monkeypatch, a_plan(**proved))
    stock_bars.cut([a_set()], [a_bar()], values, 2.0, 60.0)
    assert len(found.asked) == times
    if times == 2:
        assert found.asked[1]["step_limit"] == 10 * stock_bars.cutting.STEP_LIMIT


@pytest.mark.parametrize(
    ("first", "second"),
    [
        # The gravest first: blanks left out, over all sets; bought; begun; what is proved; scrap.
        ({"missing": [1, 2], "bought": 9.0}, {"missing": [2, 0], "bought": 20.0}),
        ({"bought": 9.0, "begun": 3.0}, {"bought": 8.0, "begun": 9.0}),
        ({"begun": 9.0, "scrap": 3.0}, {"begun": 8.0, "scrap": 9.0}),
        ({"bought": 9.0, "bought_bound": 4.0}, {"bought": 9.0, "bought_bound": 5.0}),
        ({"begun": 9.0, "begun_bound": 4.0}, {"begun": 9.0, "begun_bound": 5.0}),
        ({"scrap": 9.0}, {"scrap": 8.0}),
    ],
)
@pytest.mark.parametrize("turned", [False, True])
def test_of_two_plans_the_better_is_kept_whichever_was_found_first(
    monkeypatch, first, second, turned
):
    worse, better = a_plan(bought_proved=False, **first), a_plan(bought_proved=False, **second)
    Search(monkeypatch, *((better, worse) if turned else (worse, better)))
    assert stock_bars.cut([a_set()], [a_bar()], LONGER, 2.0, 60.0).plan is better


def test_of_two_plans_alike_the_first_is_kept(monkeypatch):
    first, second = (a_plan(bought_proved=False) for _ in range(2))
    Search(monkeypatch, first, second)
    assert stock_bars.cut([a_set()], [a_bar()], LONGER, 2.0, 60.0).plan is first


def test_what_is_to_order_leaves_out_what_is_there_and_what_is_cast():
    """Fourteen blanks of 10.5 on two sticks: 147 + 2 (21.5 + 2) - 2."""
    sets = [a_set(), a_set(name="there"), a_set(name="cast", size=None)]
    plan = stock_bars.Cutting(a_plan(missing=[14, 0, 5]), [], False)
    (row,) = stock_bars.to_order(sets, plan, 2.0)
    assert (row["set"], row["bar"], row["blanks"], row["sticks"]) == ("first", "3 1/4 in", 14, 2)
    assert row["length"].value == pytest.approx(192.0)
