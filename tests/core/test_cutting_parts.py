"""The parts of the cutting search: fillings by brute force, the relaxation by a linear solver."""

import itertools
import random

import numpy as np
import pytest
from scipy.optimize import linprog

from ringwright.core.cutting.bound import relax
from ringwright.core.cutting.patterns import (
    Job,
    Kind,
    Steps,
    best_filling,
    full_fillings,
    length_of,
    most,
    used_by,
)
from ringwright.core.cutting.sets import BarSets, Test

Test.__test__ = False


def drawn_kind(draw, sorts):
    takes = tuple(
        (at, draw.randint(3, 40), draw.randint(1, 4), draw.choice((0, 0, 5, 9)))
        for at in range(sorts)
        if draw.random() < 0.9
    )
    return Kind(draw.randint(5, 120), None, 1, 0, takes, 0, [])


def every_filling(kind, limits):
    """All that goes into one bar, tried one by one."""
    spans = {piece: (each, stick, extra) for piece, each, stick, extra in kind.takes}
    for numbers in itertools.product(*[range(limit + 1) for limit in limits]):
        if all(not n or at in spans for at, n in enumerate(numbers)):
            used = sum(length_of(n, *spans[at]) for at, n in enumerate(numbers) if n)
            if used <= kind.room:
                yield numbers


@pytest.mark.parametrize("seed", range(150))
def test_fillings_against_trying_everything(seed):
    draw = random.Random(seed)
    sorts = draw.randint(1, 4)
    kind = drawn_kind(draw, sorts)
    limits = [draw.randint(0, 4) for _ in range(sorts)]
    values = [draw.choice((0.0, draw.random() * 10)) for _ in range(sorts)]

    def worth(numbers):
        return sum(value * number for value, number in zip(values, numbers, strict=True))

    fillings = list(every_filling(kind, limits))
    greatest = max(worth(numbers) for numbers in fillings)
    value, pattern, ceiling = best_filling(kind, values, limits, Steps(10**9))
    assert value == ceiling == pytest.approx(greatest)
    assert pattern in fillings
    assert used_by(kind, pattern) <= kind.room
    # Cut short, the ceiling still stands above everything.
    value, _, ceiling = best_filling(kind, values, limits, Steps(10**9), 0)
    assert value <= greatest + 1e-9 <= ceiling + 2e-9

    lead = draw.randrange(sorts)
    least = draw.random() * greatest
    found, complete = full_fillings(kind, values, limits, lead, least, Steps(10**9), 10**6)
    whole = set(fillings)

    def full(numbers):
        more = (numbers[:at] + (numbers[at] + 1,) + numbers[at + 1 :] for at in range(sorts))
        return not any(bigger in whole for bigger in more)

    wanted = {n for n in fillings if worth(n) >= least and n[lead] and full(n)}
    assert complete
    assert sorted(pattern for _, pattern in found) == sorted(wanted)


@pytest.mark.parametrize("seed", range(40))
def test_most_is_the_most_that_fits(seed):
    draw = random.Random(seed)
    room, each, stick, extra = [draw.randint(1, top) for top in (500, 30, 6, 20)]
    number = most(room, each, stick, extra)
    assert length_of(number, each, stick, extra) <= room
    assert length_of(number + 1, each, stick, extra) > room


def drawn_job(seed):
    """A job with bars to buy without end, so that it can always be done."""
    draw = random.Random(seed)
    sorts = draw.randint(1, 3)
    demand = [draw.randint(1, 5) for _ in range(sorts)]
    kinds = []
    for _ in range(draw.randint(1, 4)):
        kind = drawn_kind(draw, sorts)
        kind.count = draw.randint(1, 3)
        kind.cost = draw.randint(0, 500)
        kind.spend = draw.choice((0, draw.randint(1, 50)))
        kinds.append(kind)
    takes = tuple((at, draw.randint(3, 40), 2, 5) for at in range(sorts))
    kinds.append(Kind(120, None, 300, draw.randint(1, 50), takes, 0, []))
    budget = draw.choice((None, draw.randint(100, 500)))
    return Job(kinds, demand, budget, Steps(10**9))


def solved(job):
    """Least cost with fractions of bars, every filling a column, by a linear solver, or None."""
    columns, costs, rows = [], [], []
    for index, kind in enumerate(job.kinds):
        for numbers in every_filling(kind, job.demand):
            columns.append(numbers)
            costs.append(kind.cost)
            rows.append(index)
    matrix = [-np.array(columns).T]
    rights = [-number for number in job.demand]
    for index, kind in enumerate(job.kinds):
        if kind.count is not None:
            matrix.append(np.array([[float(row == index) for row in rows]]))
            rights.append(kind.count)
    if job.budget is not None:
        matrix.append(np.array([[float(job.kinds[row].spend) for row in rows]]))
        rights.append(job.budget)
    found = linprog(costs, A_ub=np.vstack(matrix), b_ub=rights)
    return found.fun if found.status == 0 else None


@pytest.mark.parametrize("seed", range(60))
def test_the_relaxation_is_the_linear_optimum(seed):
    job = drawn_job(seed)
    optimum = solved(job)
    relaxed = relax(job, [])
    dearest = max(kind.cost for kind in job.kinds)
    if optimum is None:
        # No plan keeps to the budget; nothing can be said of a bound.
        return
    assert relaxed.bound <= optimum + 1e-6
    assert relaxed.bound == pytest.approx(optimum, abs=1e-6 * dearest + 1e-6)
    # Cut short it is weaker, never wrong.
    job.steps.limit = job.steps.done + 20
    assert relax(job, []).bound <= optimum + 1e-6


@pytest.mark.parametrize("seed", range(60))
def test_sets_of_bars_bound_every_plan(seed):
    """By any values, no set of bars cheaper than the bound could hold everything."""
    job = drawn_job(seed)
    job.budget = None
    draw = random.Random(seed)
    tests = []
    for values in (job.lengths, [draw.random() for _ in job.demand]):
        fills = [best_filling(kind, values, job.demand, job.steps)[2] for kind in job.kinds]
        tests.append(Test(values, fills))
    dear = 10**9
    sets = BarSets(job, tests, dear)
    least = min(
        sum(n * kind.cost for n, kind in zip(counts, job.kinds, strict=True))
        for counts in itertools.product(
            *[range((6 if kind.count is None else kind.count) + 1) for kind in job.kinds]
        )
        if sets.could_hold(counts)
    )
    assert sets.least == least
    assert sets.could_hold(sets.candidates()[0])
