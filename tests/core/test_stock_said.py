"""What is said of bars, sticks and the cut list, at each limit from both sides; figures by hand.

Common practice, no source: a stick that stands out over two and a half diameters chatters; under
0.15 of the diameter a chuck holds badly.
"""

from types import SimpleNamespace

import pytest

from ringwright.core.making import bars, stock, stock_bars, stock_findings
from ringwright.core.properties.materials import material

SOLID = bars.BarSize("solid", 82.55, 0.0, 85.344, 0.0, "3 1/4 in")
CORED = bars.BarSize("cored", 82.55, 57.15, 85.344, 50.8, "3 1/4 in x 2 1/4 in cored")


def a_set(**changed):
    usual = {
        "name": "first", "material": material("grey-iron"), "outside": 81.0, "inside": 75.0,
        "part_length": 7.5, "count": 20, "wanted": 24, "part": 10.5, "extra": 21.5, "most": 11,
        "sticks": [9, 8, 7], "through": False, "length": 320.5, "size": SOLID, "mass": 13.2,
        "ring_mass": 0.8, "chucking": 20.0,
    }  # fmt: skip
    return stock.Set(**{**usual, **changed})


def a_bar(**changed):
    usual = {
        "name": "end", "material": material("grey-iron"), "length": 130.0, "count": 1,
        "cleans_up": 86.0, "bores_out": 0.0, "diameter": 90.0, "area": 6361.7, "price": None,
        "have": True, "fed": False,
    }  # fmt: skip
    return stock_bars.StockBar(**{**usual, **changed})


def a_plan(**changed):
    usual = {
        "cuts": [], "missing": [], "bought": 0.0, "bought_bound": 0.0, "bought_proved": True,
        "begun": 0.0, "begun_bound": 0.0, "begun_proved": True, "scrap": 0.0, "scrap_bound": 0.0,
        "scrap_proved": True,
    }  # fmt: skip
    return SimpleNamespace(**{**usual, **changed})


def a_cut(pieces, bar=0, alike=1):
    return SimpleNamespace(bar=bar, alike=alike, pieces=pieces)


def said(sets, have=(), offered=(), stock_=(), values=None, **plan):
    """Check -> Finding."""
    plan.setdefault("missing", [0] * len(sets))
    done = SimpleNamespace(plan=a_plan(**plan), bars=list(stock_))
    rows = stock_findings.findings(sets, list(have), list(offered), done, values or {})
    return {row.check: row for row in rows}


def test_a_core_is_said_to_lie_untrue_and_a_solid_bar_has_none():
    assert "core" in said([a_set(size=CORED)])["bar"].why
    assert "core" not in said([a_set()])["bar"].why


@pytest.mark.parametrize(("outside", "through", "chatters"), [
    (36.0, False, False), (35.9, False, True), (35.9, True, False),
])  # fmt: skip
def test_a_stick_out_by_two_and_a_half_diameters_still_stands(outside, through, chatters):
    """Nine blanks of ten millimetres: 90 mm, two and a half times 36; a bar fed through the spindle
    stands out no further than it is fed."""
    one = a_set(outside=outside, part=10.0, sticks=[9, 8], through=through)
    row = said([one]).get("stick")
    assert (row is not None) is chatters
    if chatters:
        assert (row.value.value, row.limit.value) == (pytest.approx(90.0), pytest.approx(89.75))
        assert "stick of 9 blanks stands out by 90.00 mm" in row.why
        assert "2.5 diameters" in row.why


def test_diameters_of_a_stick_are_told_to_the_tenth():
    """120 mm of a 35.9 mm stick: 3.34 diameters."""
    row = said([a_set(outside=35.9, part=10.0, sticks=[12, 2])])["stick"]
    assert ", 3.3 diameters" in row.why


@pytest.mark.parametrize(("grip", "little"), [(6.0, False), (5.99, True)])
def test_a_grip_of_fifteen_hundredths_of_the_diameter_holds(grip, little):
    row = said([a_set(outside=40.0, part=4.0, chucking=grip)]).get("chucking-piece")
    assert (row is not None) is little
    if little:
        assert row.limit.value == pytest.approx(6.0)


def test_nothing_is_said_of_a_rack_where_there_is_none():
    assert not {"rack", "rack-unsuited", "metal"} & set(said([a_set()]))
    assert "rack" in said([a_set()], have=[a_bar()])
    assert "rack" in said([a_set()], offered=[a_bar(have=False)])


def test_blanks_short_are_counted_over_all_sets():
    """Two of the one and three of the other; of the third none."""
    sets = [a_set(), a_set(name="second"), a_set(name="third", outside=180.0)]
    row = said(sets, have=[a_bar()], missing=[2, 3, 0])["rack"]
    assert row.value.value == 5 and row.outcome == "watch"
    assert "bars at hand run out 5 blanks short" in row.why
    # No bar cleans up to the third, but of it none is short.
    assert "third" not in row.why
    offered = said(sets, offered=[a_bar(have=False)], missing=[2, 3, 0])["rack"]
    assert "at hand and on offer run out 5" in offered.why
    assert said(sets, have=[a_bar()], missing=[0, 0, 0])["rack"].outcome == "good"


def test_a_set_that_no_bar_suits_is_named_with_what_it_needs():
    sets = [a_set(), a_set(name="big", outside=180.0, inside=165.0)]
    why = said(sets, have=[a_bar()], offered=[a_bar(have=False)], missing=[0, 4])["rack"].why
    assert "None cleans up to 180.00 mm" in why and "bores out to 165.00 mm" in why
    assert "for big." in why


@pytest.mark.parametrize(
    ("lengths", "short"), [((20.0, 31.9), True), ((20.0, 32.0), False), ((40.0, 20.0), False)]
)
def test_bars_that_suit_are_short_where_the_longest_holds_no_blank(lengths, short):
    """One blank of 10.5 with 21.5 held and faced: 32 mm."""
    have = [a_bar(length=one) for one in lengths]
    why = said([a_set()], have=have, missing=[3])["rack"].why
    assert ("shorter than a stick of one blank, 32.00 mm" in why) is short


def test_a_bar_left_alone_is_too_thin_for_the_smallest_of_its_metal_or_too_narrow():
    sets = [a_set(), a_set(name="small", outside=50.0, inside=44.0)]
    for cleans, words in (
        (49.9, "cleans up to 49.90 mm"), (50.0, "needs boring to 90.00 mm"),
        (60.0, "needs boring to 90.00 mm"),
    ):  # fmt: skip
        bar = a_bar(cleans_up=cleans, bores_out=90.0)
        assert words in said(sets, have=[bar])["rack-unsuited"].why
    bronze = a_bar(name="yellow", material=material("gunmetal"))
    assert "yellow is of another metal" in said(sets, have=[bronze])["rack-unsuited"].why
    assert "rack-unsuited" not in said(sets, have=[a_bar()])


@pytest.mark.parametrize(("count", "more"), [(3, None), (4, "and 1 more"), (6, "and 3 more")])
def test_three_bars_left_alone_are_named_and_the_rest_counted(count, more):
    have = [a_bar(name="b%d" % at, cleans_up=40.0) for at in range(count)]
    why = said([a_set()], have=have)["rack-unsuited"].why
    assert "b2" in why and "b3" not in why
    assert (more in why) if more else ("more" not in why)


def test_only_a_bar_of_another_grade_than_the_set_asks_for_is_pointed_out():
    near = a_bar(name="near", material=material("grey-iron-250"))
    found = said([a_set()], have=[near], stock_=[near], cuts=[a_cut([(0, 20)])])
    assert "near is " in found["metal"].why
    same = said([a_set()], have=[a_bar()], stock_=[a_bar()], cuts=[a_cut([(0, 20)])])
    assert "metal" not in same


@pytest.mark.parametrize(
    ("prices", "named"), [((9.0, None), True), ((None, None), False), ((9.0, 8.0), False)]
)
def test_an_offer_is_left_out_only_beside_others_that_have_a_price(prices, named):
    offered = [a_bar(name="o%d" % at, have=False, price=price) for at, price in enumerate(prices)]
    found = said([a_set()], offered=offered)
    assert ("offer-price" in found) is named


@pytest.mark.parametrize(
    ("pieces", "alike", "spare"),
    [
        ([(0, 4)], 1, True),
        ([(0, 3)], 1, True),
        ([(0, 5)], 1, False),
        ([(0, 4)], 2, False),
        ([(0, 4), (1, 2)], 1, True),
        ([(0, 4), (1, 3)], 1, False),
        ([(0, 5), (1, 2)], 1, False),
    ],
)
def test_a_bar_is_for_spares_where_no_more_than_the_spares_come_of_it(pieces, alike, spare):
    """Four spares of the first set, two of the second."""
    sets = [a_set(), a_set(name="second", count=10, wanted=12)]
    for have, word in ((True, "begun"), (False, "bought")):
        bar = a_bar(have=have)
        row = said(sets, have=[bar], stock_=[bar], cuts=[a_cut(pieces, alike=alike)]).get("spares")
        assert (row is not None) is spare
        if spare:
            assert word in row.why and "%d of first" % pieces[0][1] in row.why


def proof(**plan):
    values = plan.pop("values", {})
    return said([a_set()], stock_=[a_bar()], values=values, cuts=[a_cut([(0, 20)])], **plan)[
        "cut-list"
    ]


def test_a_cut_list_proved_says_what_is_proved():
    assert proof().why == "No way of cutting buys, begins or wastes less: proved."
    left = proof(scrap_proved=False, scrap=31.0, scrap_bound=0.005).why
    assert "Scrap is 31.00 mm" in left and "at least 0.005 mm" in left
    none = proof(scrap_proved=False, scrap=31.0).why
    assert "Scrap is 31.00 mm" in none and "at least" not in none
    for plan in ({"bought_proved": False}, {"begun_proved": False}):
        assert "The best plan found" in proof(**plan).why


@pytest.mark.parametrize(
    ("bound", "outcome", "said_"),
    [(98.0, "good", "2 %"), (97.99, "watch", "2.0 %"), (88.0, "watch", "12 %")],
)
def test_a_plan_within_two_hundredths_of_its_bound_needs_no_second_look(bound, outcome, said_):
    bought = proof(bought=100.0, bought_bound=bound, bought_proved=False)
    assert bought.outcome == outcome and "at most %s of what is bought" % said_ in bought.why
    begun = proof(
        begun=100.0, begun_bound=bound, begun_proved=False, bought=50.0, bought_bound=50.0
    )
    assert begun.outcome == outcome and "at most %s of what is begun" % said_ in begun.why
    if outcome == "watch":
        assert bought.value.value == pytest.approx(1.0 - bound / 100.0)


def test_where_nothing_is_bought_nothing_can_be_saved():
    assert "at most 0 %" in proof(bought_proved=False).why


def test_who_searched_thoroughly_is_not_told_to():
    plan = {"bought": 100.0, "bought_bound": 70.0, "bought_proved": False}
    assert "thorough" in proof(**plan).remedy
    assert "thorough" not in proof(**plan, values={"cutting_effort": "thorough"}).remedy
