"""Plans made quickly, by hand: which bar comes next, which is left out, what is cut too many."""

from collections import namedtuple

import pytest

from ringwright.core.cutting import fill
from ringwright.core.cutting.fill import greedy, lessened, rounded, trimmed
from ringwright.core.cutting.patterns import Job, Kind, Steps

# What `lessened` asks of BarSets.
Sets = namedtuple("Sets", "could_hold")


def bar(room, cost, count=None, spend=0, each=10):
    """Kind of bar that gives one sort of piece."""
    return Kind(room, count, cost, spend, ((0, each, 1, 0),), 0, [])


def job_of(kinds, wanted, budget=None):
    return Job(kinds, [wanted], budget, Steps(10**6))


def test_bars_alike_are_dearer_or_cheaper_than_one_that_holds_all():
    """Two of two at 4 are 8: less than one of four at 10, more than one at 7."""
    small = bar(20, 4)
    assert greedy(job_of([small, bar(50, 10)], 4), []) == [(0, (2,), 2)]
    assert greedy(job_of([small, bar(50, 8)], 4), []) == [(1, (4,), 1)]
    assert greedy(job_of([small, bar(50, 7)], 4), []) == [(1, (4,), 1)]
    # What is begun already counts as well.
    assert greedy(job_of([small, bar(50, 7)], 6), [(0, (2,), 1)]) == [(0, (2,), 1), (1, (4,), 1)]


@pytest.mark.parametrize(("others", "chosen"), [(11, 11), (12, 0)])
def test_of_a_dozen_sorts_of_bar_the_one_that_costs_least_for_what_it_holds(others, chosen):
    """Bars of 15 at 100 and more hold one piece each, 10 for each of its length; one of 20 at 160
    holds two, 8. By its own length it is the dearest, so that after twelve others none sees it."""
    kinds = [bar(15, 100 + at) for at in range(others)] + [bar(20, 160)]
    assert greedy(job_of(kinds, 4), [])[0][0] == chosen


@pytest.mark.parametrize(
    ("budget", "count", "bars"),
    [
        # Six wanted, two to a bar: three, of which the money pays all, two, or one.
        (15, 9, [(0, (2,), 3)]),
        (14, 9, [(0, (2,), 2), (1, (2,), 1)]),
        (9, 9, [(0, (2,), 1), (1, (2,), 2)]),
        (4, 9, [(1, (2,), 3)]),
        # Or of which there are no more than two.
        (15, 2, [(0, (2,), 2), (1, (2,), 1)]),
    ],
)
def test_so_many_alike_as_there_are_and_as_are_paid_for(budget, count, bars):
    kinds = [bar(20, 0, count, spend=5), bar(20, 3)]
    assert greedy(job_of(kinds, 6, budget), []) == bars


def noted(monkeypatch):
    """The sets that `lessened` asks to be filled, none of which can be."""
    asked = []
    monkeypatch.setattr(fill, "packed", lambda job, counts, favour: asked.append(counts))
    return asked


def test_what_costs_nothing_is_there_to_be_used_in_full(monkeypatch):
    """Two at 5 are begun. Left out or changed for one at 1, of which there are four and one is
    begun: with all three of those that cost nothing, whether they were begun or not."""
    asked = noted(monkeypatch)
    kinds = [bar(20, 5), bar(20, 0, 3), bar(20, 1, 4), bar(20, 0, 2, spend=8)]
    job = job_of(kinds, 6, budget=9)
    plan = [(0, (2,), 2), (2, (2,), 1)]
    assert lessened(job, plan, Sets(lambda counts: True)) == plan
    # What saves most first; a bar that is paid for is not brought in.
    assert asked == [[1, 3, 1, 0], [1, 3, 2, 0], [2, 3, 0, 0]]


def test_a_bar_is_changed_for_a_cheaper_one_while_there_is_one(monkeypatch):
    """One of the two at 1 is free yet; of those at 2 all are begun."""
    asked = noted(monkeypatch)
    kinds = [bar(20, 5), bar(20, 1, 2), bar(20, 2, 1)]
    job = job_of(kinds, 6)
    plan = [(0, (2,), 1), (1, (2,), 1), (2, (2,), 1)]
    # What certainly holds too little is not filled, but asked about, which counts three each.
    lessened(job, plan, Sets(lambda counts: counts != [0, 2, 1]))
    assert asked == [[0, 1, 1], [1, 1, 0], [1, 0, 1], [1, 2, 0]]
    assert job.steps.done == 5 * 3


@pytest.mark.parametrize("count", [4, 3])
def test_rounded_from_the_largest_share_on(count):
    """Of 2.1 and 0.6 bars two are whole. Nothing more, then the sixth tenths as one, then the tenth
    too, of which there must be a third."""
    kinds = [bar(20, 5, count), bar(30, 6, 3)]
    job = job_of(kinds, 6)
    plans = list(rounded(job, [(2.1, 0, (2,)), (0.6, 1, (3,))]))
    # Two more are wanted than two bars hold: the cheapest for two, or what was rounded up.
    assert plans[0][:1] == [(0, (2,), 2)]
    assert plans[1] == [(0, (2,), 2), (1, (3,), 1)]
    assert plans[2] == [(0, (2,), 2), (1, (3,), 1), (0, (2,), 1)]
    # With but two of the first there is no third.
    kinds[0].count = 2
    assert len(list(rounded(job_of(kinds, 6), [(2.1, 0, (2,)), (0.6, 1, (3,))]))) == 2


def test_what_is_whole_is_not_rounded_up():
    """Two bars hold all; and two but for a rounding."""
    kinds = [bar(20, 5), bar(30, 6)]
    for level in (2.0, 2.0000005, 1.9999995):
        assert list(rounded(job_of(kinds, 4), [(level, 0, (2,))])) == [[(0, (2,), 2)]]


@pytest.mark.parametrize(("budget", "plans"), [(14, 1), (15, 2), (19, 2), (20, 3)])
def test_rounded_only_as_far_as_is_paid_for(budget, plans):
    """Two at 5 are whole, the next share another 5, the last one at 5 too."""
    kinds = [bar(20, 0, 9, spend=5), bar(30, 0, 9, spend=5), bar(40, 1)]
    mix = [(2.1, 0, (2,)), (0.6, 1, (3,))]
    assert len(list(rounded(job_of(kinds, 6, budget), mix))) == plans


def test_one_cut_too_many_is_not_cut():
    """Three in each of two bars where five are wanted; and where three are, one bar is left."""
    assert trimmed(job_of([bar(30, 5)], 5), [(0, (3,), 2)]) == [(0, (2,), 1), (0, (3,), 1)]
    assert trimmed(job_of([bar(30, 5)], 3), [(0, (3,), 2)]) == [(0, (3,), 1)]
    plan = [(0, (3,), 2)]
    assert trimmed(job_of([bar(30, 5)], 6), plan) is plan
