"""Fractions of bars: the simplex against numpy pivot by pivot, and what it comes to by hand."""

import random

import numpy as np
import pytest

from core.test_cutting_bounds import small_job
from core.test_cutting_parts import every_filling
from ringwright.core.cutting import bound
from ringwright.core.cutting.bound import SLACK, UNCOVERED, _Programme, _Tableau, relax
from ringwright.core.cutting.patterns import Job, Kind, Steps, best_filling


def bar(room, cost, *takes, count=None, spend=0):
    """Kind of bar; takes: (piece, length) of each."""
    return Kind(room, count, cost, spend, tuple((at, each, 1, 0) for at, each in takes), 0, [])


# --- pivots ---


@pytest.mark.parametrize("seed", range(40))
def test_after_every_pivot_the_inverse_is_that_of_the_basis(seed):
    """Levels too, none of which a pivot takes below nothing, and the prices of the rows."""
    draw = random.Random(seed)
    size = draw.randint(1, 5)
    rights = [float(draw.randint(0, 9)) for _ in range(size)]
    costs = [draw.choice((1000.0, 0.0, 0.01)) for _ in range(size)]
    tableau = _Tableau(rights, costs)
    basis = np.eye(size)
    for name in range(1, 9):
        # A hundredth is a coefficient and a cost like any other.
        sizes = (1.0, 2.0, 0.01, -1.0, 0.3, 7.0)
        entries = [(row, draw.choice(sizes)) for row in range(size) if draw.random() < 0.7]
        column, cost = np.zeros(size), draw.choice((0.0, 0.01, 0.4, 1.0))
        for row, coefficient in entries:
            column[row] = coefficient
        before = list(tableau.names)
        if not tableau.enter(entries, cost, name):
            # Nothing of what there is would grow less.
            assert max(np.linalg.solve(basis, column), default=0.0) <= 1e-8
            assert tableau.names == before
            continue
        (place,) = [at for at in range(size) if tableau.names[at] != before[at]]
        basis[:, place], costs[place] = column, cost
        inverse = np.linalg.inv(basis)
        near = 1e-7 * max(1.0, abs(inverse).max())
        assert np.array(tableau.inverse) == pytest.approx(inverse, abs=near)
        assert np.array(tableau.levels) == pytest.approx(inverse @ rights, abs=10.0 * near)
        assert min(tableau.levels) >= 0.0
        assert np.array(tableau.duals()) == pytest.approx(
            np.array(costs) @ inverse, abs=2000.0 * near
        )
        if abs(inverse).max() > 1e4:
            break


@pytest.mark.parametrize(
    ("rights", "column", "leaves"),
    [
        # Shares of 3, 2 and 4: the second is used up first.
        ([3.0, 4.0, 4.0], [1.0, 2.0, 1.0], 1),
        ([3.0, 4.0, 1.0], [1.0, 2.0, 1.0], 2),
        # All used up at once: where most is taken of, so that least is made of rounding.
        ([1.0, 2.0, 3.0], [1.0, 2.0, 3.0], 2),
        ([3.0, 2.0, 1.0], [3.0, 2.0, 1.0], 0),
        ([1.0, 3.0, 2.0], [1.0, 3.0, 2.0], 1),
        # As good as at once.
        ([1.0, 2.0 + 8e-13, 1.0], [1.0, 2.0, 0.5], 1),
        ([2.0 + 8e-13, 1.0, 1.0], [2.0, 1.0, 0.5], 0),
        # Alike in both: the first.
        ([2.0, 2.0, 3.0], [1.0, 1.0, 1.0], 0),
        # What is not taken of is never used up.
        ([0.0, 2.0, 0.0], [0.0, 1.0, -1.0], 1),
    ],
)
def test_what_is_used_up_first_leaves(rights, column, leaves):
    tableau = _Tableau(rights, [UNCOVERED] * 3)
    assert tableau.enter(list(enumerate(column)), 1.0, "it")
    assert tableau.names == ["it" if at == leaves else None for at in range(3)]
    share = rights[leaves] / column[leaves]
    wanted = [r - c * share for r, c in zip(rights, column, strict=True)]
    wanted[leaves] = share
    assert tableau.levels == pytest.approx(wanted, abs=1e-11)


def test_a_thousand_millionth_is_too_little_to_divide_by():
    for column in ([(0, 1e-9)], [(0, -1.0)], []):
        tableau = _Tableau([1.0], [UNCOVERED])
        assert not tableau.enter(column, 1.0, "it")
        assert (tableau.names, tableau.levels, tableau.duals()) == ([None], [1.0], [UNCOVERED])
    assert _Tableau([1.0], [UNCOVERED]).enter([(0, 1.005e-9)], 1.0, "it")


# --- rows, by hand ---


def test_before_a_bar_is_begun_all_is_uncovered_and_nothing_scarce():
    """A thousand of the dearest bars for a piece; no price of what there is enough of."""
    kinds = [bar(50, 8, (0, 20), count=2), bar(50, 5, (1, 20), spend=4)]
    programme = _Programme(kinds, [3, 5], 12)
    assert programme.duals == [1000.0, 1000.0, 0.0, 0.0]
    assert programme.tableau.levels == [3.0, 5.0, 2.0, 3.0]
    assert not programme._enter([(0, -1.0)], 0.0, None)
    assert not programme.offer(0, (0, 0))


def test_what_is_cut_over_is_counted_in_pieces():
    """One and four are wanted, one of each to a bar: four bars, and three of the first over."""
    programme = _Programme([bar(50, 5, (0, 20), (1, 20))], [1, 4], None)
    assert programme.offer(0, (1, 1))
    assert programme.duals == pytest.approx([1.0 - 1000.0, 1000.0])
    programme.settle()
    assert programme.tableau.levels == pytest.approx([4.0, 3.0], rel=1e-12)
    assert programme.duals == pytest.approx([0.0, 1.0], abs=1e-12)
    assert programme.prices() == pytest.approx([0.0, 1.0], abs=1e-12)


def test_what_is_left_of_a_scarce_bar_is_counted_in_bars():
    """Two wanted, one to a bar: the only one at 5 is left where there are bars at 3."""
    kinds = [bar(20, 5, (0, 20), count=1), bar(20, 3, (0, 20))]
    programme = _Programme(kinds, [2], None)
    assert programme.offer(0, (1,))
    assert programme.offer(1, (1,))
    # By these prices the scarce one would be worth 2 of the dearest's 5 to be without.
    assert programme.duals == pytest.approx([0.6, 0.4])
    programme.settle()
    assert programme.tableau.levels == pytest.approx([2.0, 1.0], rel=1e-12)
    assert programme.duals == pytest.approx([0.6, 0.0], abs=1e-12)


def test_what_goes_round_in_circles_is_mended_twice_a_row_and_no_more():
    """Prices clipped at nothing are prices too: the bound is true, if weaker, where it gives up."""
    programme = _Programme([bar(50, 5, (0, 20), count=3)], [4], None)
    programme.duals = [-0.5, 0.2]
    rows = []
    programme._enter = lambda entries, cost, name: rows.append((entries, cost, name)) or True
    programme.settle()
    assert rows == [([(0, -1.0)], 0.0, None)] * 4
    assert programme.prices() == [0.0]
    # The worst first: here what is scarce.
    programme.duals = [-0.5, 0.7]
    programme._enter = lambda *given: rows.append(given[0])
    programme.settle()
    assert rows[4:] == [[(1, 1.0)]]


def test_a_price_to_pay_is_no_row_where_there_is_no_budget():
    """Two to a bar, four wanted: two bars, whatever one costs to buy."""
    programme = _Programme([bar(50, 5, (0, 20), spend=70)], [4], None)
    assert programme.offer(0, (2,))
    assert programme.tableau.levels == [2.0]


def test_what_is_no_more_than_a_thousand_millionth_is_rounding():
    """A gain, a wrong price, a share of a bar; of two prices as wrong the first is mended."""
    free = bar(50, 0, (0, 20), (1, 20))
    for size, counts in ((1e-9, False), (1.005e-9, True)):
        programme = _Programme([free, bar(50, 5, (0, 20))], [1, 1], None)
        programme.duals = [size, 0.0]
        assert programme.offer(0, (1, 0)) is counts
        programme = _Programme([free], [1, 1], None)
        rows = []
        programme._enter = lambda entries, *_, rows=rows: rows.append(entries)
        programme.duals = [-size, -size]
        programme.settle()
        assert rows == ([[(0, -1.0)]] if counts else [])
        programme.tableau.names = [(0, (1, 0)), None]
        programme.tableau.levels = [size, 1.0]
        assert bool(programme.lagrange([0.0, 0.0], [0.0]).mix) is counts


# --- the whole, by hand ---


def test_one_sort_of_bar_is_looked_at_until_nothing_helps(monkeypatch):
    """Three of 30 to a bar of 100 at 6, seven wanted: two bars and a third, 14, two for each."""
    looks = []
    monkeypatch.setattr(bound, "best_filling", lambda *g: looks.append(1) or best_filling(*g))
    found = relax(Job([bar(100, 6, (0, 30))], [7], None, Steps(10**6)), [])
    assert found.bound == pytest.approx(14.0 - 6.0 * SLACK, rel=1e-12)
    assert (found.prices, found.fills) == (pytest.approx([2.0]), pytest.approx([6.0]))
    assert (found.limits, found.thrift) == ([0.0], 0.0)
    assert found.mix == [(pytest.approx(7.0 / 3.0), 0, (3,))]
    # Once with use and once in vain.
    assert len(looks) == 2


def test_each_sort_is_looked_at_in_vain_once_after_the_last_that_helped(monkeypatch):
    """Pieces of which each goes into one sort: three that help, and all three again."""
    looks = []
    monkeypatch.setattr(bound, "best_filling", lambda *g: looks.append(g[0]) or best_filling(*g))
    kinds = [bar(100, cost, (at, 50)) for at, cost in enumerate((7, 5, 3))]
    job = Job(kinds, [4, 2, 6], None, Steps(10**6))
    # 3.5, 2.5 and 1.5 a piece.
    assert relax(job, []).bound == pytest.approx(28.0, abs=1e-5)
    assert looks == kinds * 2


def test_a_bar_of_a_hundredth_of_the_dearest_counts():
    kinds = [bar(20, 1, (0, 20)), bar(20, 100, (1, 20))]
    found = relax(Job(kinds, [1, 1], None, Steps(10**6)), [])
    assert found.bound == pytest.approx(101.0, abs=1e-4)
    assert found.prices == pytest.approx([1.0, 100.0])


def test_without_a_budget_money_is_no_matter():
    """The same bars, priced or not."""
    for spend in (0, 50):
        kinds = [bar(40, 50, (0, 20), spend=spend), bar(20, 20, (0, 20), count=1, spend=spend)]
        found = relax(Job(kinds, [5], None, Steps(10**6)), [])
        # One at 20, the other four of two to a bar at 50.
        assert found.bound == pytest.approx(120.0, abs=1e-4)
        assert found.thrift == 0.0
        assert found.limits == pytest.approx([0.0, -5.0])


def test_a_pivot_counts_a_twentieth_of_the_square_of_its_rows(monkeypatch):
    """Besides what is looked at in the fillings: nine rows, four a pivot."""
    draw = random.Random(3)
    kinds = [
        bar(draw.randint(60, 90), draw.randint(5, 9), *[(at, 9 + 3 * at) for at in range(9)])
        for _ in range(4)
    ]
    job = Job(kinds, [draw.randint(1, 6) for _ in range(9)], None, Steps(10**6))
    spent, entered = [], []

    def looked(*given):
        before = job.steps.done
        found = best_filling(*given)
        spent.append(job.steps.done - before)
        return found

    offer = _Programme.offer
    monkeypatch.setattr(bound, "best_filling", looked)
    monkeypatch.setattr(_Programme, "offer", lambda *g: entered.append(offer(*g)) or entered[-1])
    relax(job, [])
    assert sum(entered) > 9
    assert job.steps.done == sum(spent) + 4 * sum(entered)


# --- true for any prices ---


@pytest.mark.parametrize("seed", range(30))
def test_by_any_prices_no_filling_is_worth_more_than_its_bar(seed):
    """Then the sum over all pieces, less what is scarce, is a bound whatever the simplex did."""
    draw = random.Random(seed)
    job = small_job(seed)
    programme = _Programme(job.kinds, job.demand, job.budget)
    ways = [list(every_filling(kind, job.demand)) for kind in job.kinds]
    for times in (0.01, 0.3, 2.0):
        prices = [times * draw.choice((0.0, draw.random())) for _ in job.demand]
        programme.duals = [*prices, *[draw.uniform(-0.4, 0.4) for _ in job.kinds], 0.0]
        if job.budget is not None:
            # What another unit of money were worth: less than nothing, or wrongly more.
            programme.duals[programme.money_row] = draw.choice((-0.3, 0.004, 0.3))
        worths = [
            [sum(p * n for p, n in zip(prices, way, strict=True)) for way in of] for of in ways
        ]
        found = programme.lagrange(prices, [max(of) for of in worths])
        near = 1e-9 * programme.scale
        assert found.thrift <= 0.0
        whole = found.thrift * (job.budget or 0) - SLACK * programme.scale
        whole += sum(p * n for p, n in zip(found.prices, job.demand, strict=True))
        for kind, of, limit, fill in zip(job.kinds, ways, found.limits, found.fills, strict=True):
            most = max(sum(p * n for p, n in zip(found.prices, way, strict=True)) for way in of)
            assert most == pytest.approx(fill, abs=near)
            room = kind.cost - found.thrift * kind.spend
            assert most <= room - limit + near
            # No more is taken off for what is scarce than has to be.
            wanted = min(0.0, room - most) if kind.count is not None else 0.0
            assert limit == pytest.approx(wanted, abs=near)
            whole += limit * (kind.count or 0)
        assert found.bound == pytest.approx(whole, abs=near)
        # No more is taken off the prices than one sort of bar asks for.
        shrunk = [f / p / programme.scale for f, p in zip(found.prices, prices, strict=True) if p]
        if shrunk and shrunk[0] < 1.0 - 1e-9:
            tight = [
                fill - kind.cost + found.thrift * kind.spend
                for kind, fill in zip(job.kinds, found.fills, strict=True)
                if kind.count is None
            ]
            assert max(tight) == pytest.approx(0.0, abs=near)
