"""Sets of bars, groups of pieces and the last look by hand: what is tried, and in which order."""

import random
from collections import namedtuple

import pytest

from core.test_cutting_bounds import bars_of, by_worth_and_length, optimum, small_job
from core.test_cutting_parts import Test
from ringwright.core.cutting import fill, proof, search, sets
from ringwright.core.cutting.bound import relax
from ringwright.core.cutting.patterns import Job, Kind, Steps, full_fillings
from ringwright.core.cutting.search import _Hunt, _length_tests
from ringwright.core.cutting.sets import BarSets

# What try_sets asks of BarSets: lists of how many of each kind.
Few = namedtuple("Few", "candidates")


def listed(rows, pieces, steps=10**9, tests=1):
    """(BarSets of pieces worth 5 each, work that it took); rows as in bars_of.

    steps: left of the work, of which some was done before. tests: how often that test is made.
    """
    kinds, fills = bars_of(*rows)
    job = Job(kinds, [pieces], None, Steps(steps + 50))
    job.steps.done = 50
    found = BarSets(job, [Test([5.0], fills)] * tests, 10**6)
    return found, job.steps.done - 50


# --- sets of bars ---


@pytest.mark.parametrize("seed", range(20))
def test_the_cheapest_sets_come_first(seed):
    job = small_job(seed)
    found = BarSets(job, by_worth_and_length(job, random.Random(seed), 4000), 10**9)
    costs = [
        sum(kind.cost * n for kind, n in zip(job.kinds, counts, strict=True))
        for counts in found.candidates()
    ]
    assert costs == sorted(costs)


@pytest.mark.parametrize("seed", range(20))
@pytest.mark.parametrize("times", [1e-5, 1e5])
def test_worth_may_be_told_in_any_unit(seed, times, monkeypatch):
    """Listed or by fractions of bars."""
    for work in (2000, 0):
        monkeypatch.setattr(sets, "MOST_WORK", work)
        job = small_job(seed)
        tests = by_worth_and_length(job, random.Random(seed), 4000)
        scaled = [Test([times * v for v in t.values], [times * f for f in t.fills]) for t in tests]
        one, other = BarSets(job, tests, 10**9), BarSets(job, scaled, 10**9)
        assert (one.least, one.candidates()) == (other.least, other.candidates())
        for counts in one.candidates():
            fewer = [max(0, n - 1) for n in counts]
            assert one.could_hold(fewer) is other.could_hold(fewer)


def test_what_falls_short_by_a_thousandth_falls_short():
    """Four pieces of 5, or of 5.001: two bars of 10, or three."""
    kinds, fills = bars_of((7, None, 10.0))
    job = Job(kinds, [4], None, Steps(10**9))
    exact = BarSets(job, [Test([5.0], fills)], 10**6)
    assert (exact.least, exact.candidates()) == (14, [[2]])
    short = BarSets(job, [Test([5.001], fills)], 10**6)
    assert (short.least, short.candidates()) == (21, [[3]])
    assert exact.could_hold([2]) and not short.could_hold([2])


@pytest.mark.parametrize(
    ("pieces", "work", "steps", "least"),
    [
        # Of five pieces worth 25: none, one, two and three bars of 10 are four sets; three, 21.
        (5, 4, 10**9, 21),
        # One short of that: two and a half bars, 17.5.
        (5, 3, 10**9, 18),
        # A quarter of the work that is left: 99 bars for 197 pieces are a hundred sets.
        (197, None, 400, 693),
        (197, None, 399, 690),
        # Two thousand are listed at the most: 98 bars and a half, 1999 and 1999 and a half.
        (3997, None, 10**9, 13993),
        (3999, None, 10**9, 13997),
    ],
)
def test_so_many_sets_are_listed_as_there_is_work_for(pieces, work, steps, least, monkeypatch):
    if work is not None:
        monkeypatch.setattr(sets, "MOST_WORK", work)
    assert listed([(7, None, 10.0)], pieces, steps)[0].least == least


def test_sets_count_as_work_and_what_they_are_compared_with_a_third():
    """A hundred sets of 0 to 99 bars; with two tests each is compared with all before it, of which
    every third whole counts: three of each number from 0 to 32, and 33 once."""
    assert listed([(7, None, 10.0)], 197)[1] == 100
    found, work = listed([(7, None, 10.0)], 197, tests=2)
    assert (found.least, work) == (693, 100 + 3 * 32 * 33 // 2 + 33)


def test_where_all_tests_are_too_many_the_last_is_listed_alone(monkeypatch):
    """The four sets of none to three bars are compared once: work for that as well there is none.
    By the last test alone it is three bars, 21; by fractions of bars 17.5."""
    monkeypatch.setattr(sets, "MOST_WORK", 4)
    kinds, fills = bars_of((7, None, 10.0))
    tests = [Test([worth], fills) for worth in (1.0, 2.0, 5.0)]
    found = BarSets(Job(kinds, [5], None, Steps(10**9)), tests, 10**6)
    assert (found.least, found.candidates()) == (21, [[3]])


def test_of_sets_as_cheap_and_worth_as_much_one_is_kept():
    """None, one and two of the first, 3; with each as many of the next as are needed, 3 + 2 + 1, of
    which again three are kept; and so of the last."""
    found, work = listed([(7, 2, 10.0)] * 3, 4)
    assert (found.least, work) == (14, 3 + 6 + 6)


def test_the_cheapest_of_the_sets_that_begin_otherwise_comes_first():
    """Ten are wanted of each of two pieces. For the budget of 10 there is a bar with eight of the
    one or a bar with eight of the other; one's own hold two at 1 and two at 100. The first leaves 2
    and 10 to go, 1 + 500; the second 10 and 2, 5 + 100."""
    takes = ((0, 10, 1, 0), (1, 10, 1, 0))
    kinds = [Kind(100, 1, 0, 10, takes, 0, []) for _ in range(2)]
    kinds += [Kind(100, None, cost, 0, takes, 0, []) for cost in (1, 100)]
    tests = [Test([1.0, 0.0], [8.0, 0.0, 2.0, 0.0]), Test([0.0, 1.0], [0.0, 8.0, 0.0, 2.0])]
    found = BarSets(Job(kinds, [10, 10], 10, Steps(10**9)), tests, 10**6)
    assert found.candidates()[:2] == [[0, 1, 5, 1], [1, 0, 1, 5]]
    assert found.least == 105


@pytest.mark.parametrize(
    ("most", "least"),
    # Four choices for a budget of 10: nothing, a bar at 6 worth 15, one at 5 worth 8 or two such.
    # Of the 40 that is 16 at the most; the other 24 are three bars of one's own at 7. Not looked at
    # one by one, each unit of money is worth 2.5 at the most: 15 to go, two of one's own.
    [(4, 21), (3, 14)],
)
def test_each_choice_of_bars_for_a_budget_is_looked_at_while_they_are_few(most, least, monkeypatch):
    monkeypatch.setattr(sets, "MOST_PURCHASES", most)
    takes = ((0, 10, 1, 0),)
    kinds = [
        Kind(100, 1, 0, 6, takes, 0, []),
        Kind(100, 2, 0, 5, takes, 0, []),
        Kind(100, None, 7, 0, takes, 0, []),
    ]
    job = Job(kinds, [8], 10, Steps(10**9))
    found = BarSets(job, [Test([5.0], [15.0, 8.0, 10.0])], 10**6)
    assert found.least == least


# --- what is tried ---


def hunted(monkeypatch, found=None, steps=1000):
    """(_Hunt of four bars at 7, begun at 28; what was tried: (favour, numbers of each kind))."""
    takes = ((0, 10, 1, 0),)
    kinds = [Kind(20, None, 7, 0, takes, 0, []), Kind(20, None, 1, 0, takes, 0, [])]
    hunt = _Hunt(Job(kinds, [8], None, Steps(steps)), [(0, (2,), 4)])
    tried = []

    def packed(job, counts, favour):
        assert job is hunt.job
        tried.append((favour, counts))
        return found

    monkeypatch.setattr(search, "packed", packed)
    return hunt, tried


def test_in_every_order_of_favour_the_first_dozen_of_sets_are_filled(monkeypatch):
    hunt, tried = hunted(monkeypatch)
    hunt.try_sets(Few(lambda: [[0, at] for at in range(20)]), 0.5)
    assert tried == [(favour, [0, at]) for favour in fill.FAVOURS for at in range(12)]
    assert hunt.job.steps.limit == 1000


def test_only_sets_that_are_cheaper_are_filled(monkeypatch):
    """Three at 7 and six at 1 are 27; one more is as dear as what there is, and the rest dearer."""
    hunt, tried = hunted(monkeypatch)
    hunt.try_sets(Few(lambda: [[1, 0], [3, 6], [3, 7], [4, 0]]), 0.5)
    assert tried == [(favour, each) for favour in fill.FAVOURS for each in ([1, 0], [3, 6])]


def test_no_set_is_filled_when_nothing_can_be_cheaper_or_no_work_is_left(monkeypatch):
    few = Few(lambda: [[1, 0], [2, 0]])
    hunt, tried = hunted(monkeypatch)
    hunt.bound = 28
    hunt.try_sets(few, 0.5)
    hunt, _ = hunted(monkeypatch, steps=0)
    hunt.try_sets(few, 0.5)
    assert tried == []
    # A plan as cheap as what is proved ends it.
    hunt, tried = hunted(monkeypatch, found=[(0, (2,), 3), (1, (2,), 1)])
    hunt.bound = 22
    hunt.try_sets(few, 0.5)
    assert tried == [(fill.FAVOURS[0], [1, 0])]
    assert hunt.settled()
    # Of two as cheap the first is kept.
    before = hunt.plan
    hunt.found([(1, (2,), 1), (0, (2,), 3)])
    assert hunt.plan is before


# --- groups of pieces ---


def grouped(more=0):
    """Job of seven pieces, 10 to 16 long, one of each; each kind gives fewer of them."""
    kinds = []
    for given in (7, 6, 5, 3, 2, *[2] * more):
        takes = tuple((at, 10 + at, 1, 0) for at in range(given))
        kinds.append(Kind(200, 1, 5, 0, takes, 0, []))
    # The lack of the last is no bar.
    kinds.append(Kind(16, None, 90, 0, ((6, 16, 1, 0),), 0, None))
    return Job(kinds, [1] * 7, None, Steps(10**6))


# The third is given by four kinds, which alone give it and the next four; the fourth and fifth by
# three; the sixth by two. Three groups at the most, then all.
GROUPS = ([2, 3, 4, 5, 6], [3, 4, 5, 6], [5, 6], [0, 1, 2, 3, 4, 5, 6])


def held(kind, group):
    """All of a group that a kind gives goes into one bar of it."""
    return float(sum(each for at, each, _, _ in kind.takes if at in group))


def test_pieces_that_only_some_bars_give_are_a_test_of_their_own():
    job = grouped()
    tests, columns = _length_tests(job)
    assert [test.values for test in tests] == [
        [10.0 + at if at in group else 0.0 for at in range(7)] for group in GROUPS
    ]
    for test, group in zip(tests, GROUPS, strict=True):
        assert test.fills == [held(kind, group) for kind in job.kinds]
    given = [tuple(int(at < most) for at in range(7)) for most in (7, 6, 5, 3, 2)]
    assert columns == [*enumerate(given), (5, (0, 0, 0, 0, 0, 0, 1))]


@pytest.mark.parametrize(("kinds", "filled"), [(30, True), (31, False)])
def test_of_more_than_thirty_sorts_of_bar_none_is_filled_for_a_group(kinds, filled):
    """Then it counts in its whole length, if it gives any of the group."""
    job = grouped(kinds - 6)
    tests, _ = _length_tests(job)
    assert len(job.kinds) == kinds
    for test, group in zip(tests, GROUPS, strict=True):
        fills = [held(kind, group) for kind in job.kinds]
        if not filled and len(group) < 7:
            fills = [
                float(kind.room) if fill else 0.0
                for kind, fill in zip(job.kinds, fills, strict=True)
            ]
        assert test.fills == fills


# --- the last look ---


@pytest.mark.parametrize(
    ("first", "second", "third", "lead"),
    # Each: (length, stick, extra) in either kind of bar. The longest of one piece, wherever it is.
    [
        (((10, 1, 0), (40, 1, 0)), ((30, 1, 0), (30, 1, 0)), ((20, 1, 0), (20, 1, 0)), 0),
        (((10, 2, 25), (10, 2, 25)), ((30, 1, 0), (30, 1, 0)), ((20, 1, 0), (20, 1, 0)), 0),
        (((10, 1, 0), (10, 1, 0)), ((15, 1, 5), (20, 1, 0)), ((21, 1, 0), (19, 1, 0)), 2),
        (((10, 1, 0), (10, 1, 0)), ((20, 1, 0), (20, 1, 0)), ((20, 1, 0), (20, 1, 0)), 1),
    ],
)
def test_the_piece_that_takes_most_of_a_bar_is_placed_first(
    first, second, third, lead, monkeypatch
):
    kinds = [
        Kind(
            100,
            None,
            5,
            0,
            tuple((at, *each[of]) for at, each in enumerate((first, second, third))),
            0,
            [],
        )
        for of in range(2)
    ]
    job = Job(kinds, [1, 1, 1], None, Steps(10**6))
    asked = []

    def noted(kind, prices, wanted, lead, least, steps, most):
        asked.append((lead, most))
        return full_fillings(kind, prices, wanted, lead, least, steps, most)

    monkeypatch.setattr(proof, "full_fillings", noted)
    proof.search(job, relax(job, []), 11, -1)
    # In both kinds, and no more than eighty ways of each.
    assert asked[:2] == [(lead, 80)] * 2


def test_who_is_told_what_is_proved_looks_no_further():
    """No plan is cheaper than the first as cheap as that; without it the rest is gone through."""
    sooner = 0
    for seed in range(24):
        spent = []
        for bound in (-1, optimum(seed)):
            job = small_job(seed)
            relaxed = relax(small_job(seed), [])
            assert proof.search(job, relaxed, optimum(seed) + 100, bound)[1]
            spent.append(job.steps.done)
        assert spent[1] <= spent[0]
        sooner += spent[1] < spent[0]
    assert sooner > 3
