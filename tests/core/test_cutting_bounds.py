"""What is said of the best plan must be true, and at every effort: each bound of the cut list, and
each word that nothing better is left, against trying every filling of every bar of small lists."""

import itertools
import math
import random

import pytest

from core.test_cutting_brute import Watched
from core.test_cutting_parts import Test, every_filling, solved
from ringwright.core.cutting import proof, sets
from ringwright.core.cutting.bound import relax
from ringwright.core.cutting.patterns import (
    Job,
    Kind,
    Steps,
    best_filling,
    full_fillings,
    used_by,
)
from ringwright.core.cutting.proof import search
from ringwright.core.cutting.search import _Hunt, cheapest
from ringwright.core.cutting.sets import BarSets

# Work that one question may take: none, so little that each stage is cut short, and plenty.
EFFORTS = (0, 7, 30, 90, 300, 10**9)


def small_job(seed, effort=10**9):
    """A Job of few pieces: bars of one's own with a cost, with a budget bars to buy without one,
    and without end of them the lack of each piece, dearer than all bars together."""
    draw = random.Random(seed)
    sorts = draw.randint(1, 3)
    demand = [draw.randint(1, 4) for _ in range(sorts)]
    sizes = [
        (at, draw.randint(5, 40), draw.choice((1, 1, 2, 3)), draw.choice((0, 0, 4, 9)))
        for at in range(sorts)
    ]
    budget = draw.choice((None, draw.randint(0, 60)))
    # Costs are often multiples of one number: two plans then differ by that at the least.
    unit = draw.choice((1, 1, 5, 7))
    kinds = []
    for _ in range(draw.randint(1, 4)):
        takes = tuple(size for size in sizes if draw.random() < 0.85) or (sizes[0],)
        room = draw.randint(25, 110)
        count = draw.choice((1, 2, 3))
        if budget is not None and draw.random() < 0.5:
            kinds.append(
                Kind(room, draw.choice((count, None)), 0, draw.randint(5, 30), takes, 0, [])
            )
        else:
            cost = unit * draw.choice((0, draw.randint(1, 60), room))
            kinds.append(Kind(room, count, cost, 0, takes, 0, []))
    dearest = 1 + sum(kind.cost * (kind.count or 0) for kind in kinds)
    for piece, each, _, extra in sizes:
        lack = ((piece, each, 1, extra),)
        kinds.append(Kind(each + extra, None, unit * dearest, 0, lack, 0, None))
    return Job(kinds, demand, budget, Steps(effort))


# By seed: what is tried out for one test serves the others.
_LEAST = {}


def optimum(seed):
    """Least cost of all plans of a small job, within its budget."""
    if seed not in _LEAST:
        _LEAST[seed] = tried_out(small_job(seed))
    return _LEAST[seed]


def tried_out(job):
    """Least cost of all plans within the budget: bar after bar, every full filling of each."""
    reached = {tuple(job.demand): {0: 0}}
    for kind in job.kinds:
        ways = list(every_filling(kind, job.demand))
        most = [way for way in ways if not any(_within(way, other) for other in ways)]
        for _ in range(sum(job.demand) if kind.count is None else kind.count):
            found = {rest: dict(costs) for rest, costs in reached.items()}
            for rest, costs in reached.items():
                for way in most:
                    left = tuple(max(0, a - b) for a, b in zip(rest, way, strict=True))
                    if left == rest:
                        continue
                    here = found.setdefault(left, {})
                    for money, cost in costs.items():
                        spent = money + kind.spend
                        if job.budget is None or spent <= job.budget:
                            here[spent] = min(here.get(spent, cost + kind.cost), cost + kind.cost)
            if found == reached:
                break
            reached = found
    return min(reached[(0,) * len(job.demand)].values())


def _within(way, other):
    return way != other and all(a <= b for a, b in zip(way, other, strict=True))


def check_plan(job, plan):
    """Every piece covered, no bar over-full, none used too often, no more spent than there is."""
    cut, used, spent = [0] * len(job.demand), [0] * len(job.kinds), 0
    for index, pattern, times in plan:
        kind = job.kinds[index]
        assert used_by(kind, pattern) <= kind.room
        spans = [piece for piece, _, _, _ in kind.takes]
        assert all(at in spans for at, number in enumerate(pattern) if number)
        cut = [a + b * times for a, b in zip(cut, pattern, strict=True)]
        used[index] += times
        spent += kind.spend * times
    assert all(a >= b for a, b in zip(cut, job.demand, strict=True))
    for kind, number in zip(job.kinds, used, strict=True):
        assert kind.count is None or number <= kind.count
    assert job.budget is None or spent <= job.budget
    return sum(kind.cost * number for kind, number in zip(job.kinds, used, strict=True))


# --- fractions of bars ---


@pytest.mark.parametrize("seed", range(24))
def test_no_filling_is_worth_more_than_its_bar_costs_by_the_prices(seed):
    """What makes the bound true whatever the prices are, and what the last look at all plans rests
    on: by them no bar holds more than its cost, less what its scarcity and the budget add."""
    least = optimum(seed)
    for effort in EFFORTS:
        job = small_job(seed, effort)
        found = relax(job, [])
        scale = max(kind.cost for kind in job.kinds)
        near = 1e-9 * scale
        assert found.bound <= least + near
        assert all(price >= 0.0 for price in found.prices)
        assert found.thrift <= 0.0
        whole = sum(p * n for p, n in zip(found.prices, job.demand, strict=True))
        whole += found.thrift * (job.budget or 0)
        for kind, limit, fill in zip(job.kinds, found.limits, found.fills, strict=True):
            greatest = max(
                sum(p * n for p, n in zip(found.prices, way, strict=True))
                for way in every_filling(kind, job.demand)
            )
            assert greatest <= fill + near
            assert greatest <= kind.cost - limit - found.thrift * kind.spend + near
            assert limit <= 0.0
            assert limit == 0.0 or kind.count is not None
            whole += limit * (kind.count or 0)
        # Pulled down by a ten-millionth of the dearest, that no rounding makes it a lie.
        assert found.bound == pytest.approx(whole - 1e-7 * scale, abs=near)
        assert job.steps.done >= min(effort, 1)
    # With time for it, it is what a linear solver finds with every filling a column.
    assert found.bound == pytest.approx(solved(job), abs=2e-7 * scale)


# --- sets of bars ---


def by_worth_and_length(job, draw, allowance):
    """Two tests by random worth of the pieces and one by their lengths."""
    found = []
    some = [[draw.random() for _ in job.demand] for _ in range(2)]
    for values in (*some, job.lengths):
        fills = [
            best_filling(kind, values, job.demand, Steps(10**9), allowance)[2] for kind in job.kinds
        ]
        found.append(Test(values, fills))
    return found


def cheapest_set(job, tests):
    """Least cost of a set of bars within the budget that passes all tests: every set tried."""
    most = sum(job.demand)
    best = None
    ranges = [range((most if k.count is None else min(k.count, most)) + 1) for k in job.kinds]
    needs = [sum(v * n for v, n in zip(t.values, job.demand, strict=True)) for t in tests]
    for counts in itertools.product(*ranges):
        cost = sum(k.cost * n for k, n in zip(job.kinds, counts, strict=True))
        spent = sum(k.spend * n for k, n in zip(job.kinds, counts, strict=True))
        if (best is None or cost < best) and (job.budget is None or spent <= job.budget):
            held = [sum(f * n for f, n in zip(t.fills, counts, strict=True)) for t in tests]
            if all(a >= b * (1.0 - 1e-9) for a, b in zip(held, needs, strict=True)):
                best = cost
    return best


@pytest.mark.parametrize("seed", range(24))
def test_the_cheapest_set_that_could_hold_all_bounds_every_plan(seed, monkeypatch):
    """Cut short it is lower, never above the best plan; with time for it just the cheapest set."""
    job = small_job(seed)
    least = optimum(seed)
    tests = by_worth_and_length(job, random.Random(seed), 4000)
    monkeypatch.setattr(sets, "MOST_PURCHASES", 10**6)
    monkeypatch.setattr(sets, "MOST_WORK", 10**6)
    if sum(job.demand) <= 6:
        whole = BarSets(job, tests, 10**9)
        assert whole.least == cheapest_set(job, tests)
    for ceiling in (10**9, least + 1, max(1, least)):
        for work, purchases in ((0, 6), (3, 6), (10, 1), (40, 0), (2000, 1), (2000, 6)):
            monkeypatch.setattr(sets, "MOST_WORK", work)
            monkeypatch.setattr(sets, "MOST_PURCHASES", purchases)
            found = BarSets(job, tests, ceiling)
            assert found.least <= least
            for counts in found.candidates():
                assert sum(k.cost * n for k, n in zip(job.kinds, counts, strict=True)) < ceiling
        # With no work left at all.
        spent = small_job(seed, 0)
        assert BarSets(spent, tests, ceiling).least <= least


def bars_of(*rows):
    """Job of pieces worth 5 each, and its test: rows of (cost, count, what a bar can be worth)."""
    kinds = [Kind(100, count, cost, 0, ((0, 10, 1, 0),), 0, []) for cost, count, _ in rows]
    return kinds, [fill for _, _, fill in rows]


@pytest.mark.parametrize(
    ("rows", "pieces", "least"),
    [
        # Four pieces are worth 20: two bars of 10 at 7.
        ([(7, None, 10.0)], 4, 14),
        # 25: two and a half, 17.5, and no plan costs half a thousandth.
        ([(7, None, 10.0)], 5, 18),
        # The only one at 3 first, then one at 7; then one and a half, 13.5 in all.
        ([(7, None, 10.0), (3, 1, 10.0)], 4, 10),
        ([(7, None, 10.0), (3, 1, 10.0)], 5, 14),
        # 0.3 a unit of worth is less than 0.35: two at 6, then half of one at 7.
        ([(7, 9, 20.0), (6, 2, 20.0)], 10, 16),
        # What holds nothing is no bar, however cheap.
        ([(1, 9, 0.0), (7, None, 10.0)], 2, 7),
    ],
)
@pytest.mark.parametrize("listed", [True, False])
def test_sets_and_fractions_of_bars_by_hand(rows, pieces, least, listed, monkeypatch):
    monkeypatch.setattr(sets, "MOST_WORK", 2000 if listed else 0)
    kinds, fills = bars_of(*rows)
    job = Job(kinds, [pieces], None, Steps(10**9))
    found = BarSets(job, [Test([5.0], fills)], 10**6)
    if not listed:
        assert found.least == least
        return
    # In whole bars: the cheapest set that is worth it, by trying up to nine of each.
    whole = [
        sum(n * cost for n, (cost, _, _) in zip(counts, rows, strict=True))
        for counts in itertools.product(*[range(1 + (count or 9)) for _, count, _ in rows])
        if sum(n * fill for n, fill in zip(counts, fills, strict=True)) >= 5.0 * pieces
    ]
    assert found.least == min(whole)
    assert found.could_hold(found.candidates()[0])
    assert not found.could_hold([0] * len(rows))


def test_a_set_could_hold_all_when_its_fullest_fillings_are_worth_it():
    kinds, fills = bars_of((7, None, 10.0), (3, 2, 4.0))
    job = Job(kinds, [4], None, Steps(10**9))
    found = BarSets(job, [Test([5.0], fills), Test([2.0], [8.0, 0.0])], 10**6)
    # 20 and 8 are wanted; 10 and 8 of the first, 4 and nothing of the second.
    assert found.could_hold([2, 0])
    assert not found.could_hold([1, 2])
    assert not found.could_hold([0, 5])
    assert found.could_hold([2, 2])
    assert not found.could_hold([1, 9 // 4])


# --- every plan that the bound still allows ---


# With the last of them a plan as cheap as the bound is missed but for the room left for rounding.
@pytest.mark.parametrize("seed", [*range(24), 141])
def test_when_all_was_looked_at_there_is_no_cheaper_plan(seed, monkeypatch):
    job = small_job(seed)
    least = optimum(seed)
    # Two plans differ by this at the least.
    apart = math.gcd(*[kind.cost for kind in job.kinds])
    looked = 0
    for effort, fillings in ((10**9, 80), (10**9, 0), (10**9, 1), (25, 80), (60, 80), (200, 2)):
        monkeypatch.setattr(proof, "MOST_FILLINGS", fillings)
        for relaxing in (10**9, 12):
            relaxed = relax(small_job(seed, relaxing), [])
            for above in (0, apart, 2 * apart, 35 * apart):
                job = small_job(seed, effort)
                plan, complete = search(job, relaxed, least + above, -1)
                if plan is not None:
                    cost = check_plan(job, plan)
                    assert least <= cost < least + above
                if complete:
                    assert (plan is None) == (above == 0)
                    assert plan is None or cost == least
                looked += complete
    # Plenty of them end.
    assert looked >= 6


@pytest.mark.parametrize("seed", range(24))
def test_what_is_left_out_further_down_is_not_forgotten(seed, monkeypatch):
    """Nothing but the first bar is looked at: then nothing is called looked at, but where no first
    bar could lead to a cheaper plan."""
    job = small_job(seed)
    least = optimum(seed)
    apart = math.gcd(*[kind.cost for kind in job.kinds])

    def first_only(kind, values, limits, lead, *rest):
        whole = list(limits) == list(job.demand)
        return full_fillings(kind, values, limits, lead, *rest) if whole else ([], False)

    relaxed = relax(small_job(seed), [])
    monkeypatch.setattr(proof, "full_fillings", first_only)
    plan, complete = search(job, relaxed, least + apart, -1)
    assert not complete or (plan is not None and check_plan(job, plan) == least)
    monkeypatch.undo()
    # A plan as cheap as what is proved ends it.
    plan, complete = search(job, relaxed, least + 3 * apart, least)
    assert complete
    assert check_plan(job, plan) == least


@pytest.mark.parametrize(
    ("costs", "apart"), [((12, 18, 30), 6), ((0, 35, 14), 7), ((5,), 5), ((0, 0), 0), ((9, 4), 1)]
)
def test_two_plans_differ_by_the_common_divisor_of_all_costs(costs, apart):
    kinds = [Kind(50, 1, cost, 0, ((0, 10, 1, 0),), 0, []) for cost in costs]
    assert proof._common_divisor(kinds) == apart


def test_the_last_look_passes_over_what_cannot_be_cheaper():
    """A yardstick of work, measured once: of these lists where nothing cheaper is left, and where
    one step cheaper is; and work is never taken back."""
    steps = 0
    for seed in range(24):
        least = optimum(seed)
        relaxed = relax(small_job(seed), [])
        for above in (0, math.gcd(*[kind.cost for kind in small_job(seed).kinds])):
            job = small_job(seed)
            job.steps = Watched(10**9)
            job.steps.done = 0
            assert search(job, relaxed, least + above, -1)[1]
            steps += job.steps.done
    assert steps <= 2092


# --- the whole search ---


def test_before_anything_is_proved_the_bound_is_nothing():
    """A bar that costs nothing would do; the plan begun with is the dear one."""
    takes = ((0, 10, 1, 0),)
    kinds = [Kind(50, 1, 0, 0, takes, 0, []), Kind(50, 1, 9, 0, takes, 0, [])]
    hunt = _Hunt(Job(kinds, [1], None, Steps(100)), [(1, (1,), 1)])
    assert (hunt.outcome().bound, hunt.outcome().cost, hunt.outcome().proved) == (0, 9, False)
    hunt.bound = 8
    assert not hunt.settled()
    hunt.bound = 9
    assert hunt.outcome().proved
    hunt.found([(0, (1,), 1)])
    # A bound above a plan that was found is that plan's cost.
    assert (hunt.outcome().bound, hunt.outcome().cost) == (0, 0)


@pytest.mark.parametrize("seed", range(100, 140))
def test_what_is_called_proved_is_the_best_at_every_effort(seed):
    job = small_job(seed)
    least = optimum(seed)
    for effort in EFFORTS[1:] + (1500,):
        job = small_job(seed, effort)
        found = cheapest(job, None)
        assert found.bound <= least <= found.cost
        assert found.cost == check_plan(job, found.bars)
        assert found.proved == (found.cost == found.bound)
        # Of plans so small nearly all are proved with time for it.
        assert effort < 10**9 or found.proved
