"""The cut list against trying everything: thousands of small lists, bars and bounds alike."""

import itertools
import random

import pytest

from core.test_cutting import check, own, plan, sawn, shop
from core.test_cutting_parts import every_filling
from ringwright.core.catalogue import inputs_stock
from ringwright.core.cutting import STEP_LIMIT, Piece
from ringwright.core.cutting.patterns import Job, Kind, Steps, length_of, used_by
from ringwright.core.cutting.scrap import arranged, offcut, scrap_bound, scrap_of

# --- what is bought and begun ---


def small_list(draw):
    """(pieces, bars, kerf): a few whole millimetres each."""
    pieces = []
    for _ in range(draw.randint(1, 3)):
        if draw.random() < 0.6:
            pieces.append(sawn(float(draw.randint(8, 60)), draw.randint(1, 3)))
        else:
            blank = float(draw.randint(5, 20))
            pieces.append(
                Piece(
                    "blank",
                    blank,
                    draw.randint(1, 4),
                    draw.randint(1, 3),
                    float(draw.choice((0, 9))),
                )
            )
    bars = []
    for _ in range(draw.randint(0, 3)):
        worth = draw.choice((None, None, float(draw.randint(1, 9))))
        bars.append(own(float(draw.randint(30, 130)), draw.randint(1, 2), worth=worth))
    for _ in range(draw.randint(0 if bars else 1, 2)):
        bars.append(
            shop(float(draw.randint(50, 130)), float(draw.randint(3, 12)), draw.randint(1, 2))
        )
    return pieces, bars, float(draw.choice((0, 2, 3)))


def fillings(pieces, a_bar, kerf):
    """Every way to fill one bar: tuples of numbers, by the words of the docstrings."""
    for numbers in itertools.product(*[range(piece.count + 1) for piece in pieces]):
        used = 0.0
        for piece, number in zip(pieces, numbers, strict=True):
            sticks = -(-number // piece.stick)
            used += number * piece.length + sticks * (piece.stick_extra + kerf)
        if used <= a_bar.length + kerf:
            yield numbers


def least(pieces, bars, kerf):
    """(pieces left out, money, worth) of the best plan, by trying every filling of every bar."""
    reached = {tuple(piece.count for piece in pieces): (0.0, 0.0)}
    for a_bar in bars:
        ways = list(fillings(pieces, a_bar, kerf))
        price = (a_bar.price, 0.0) if a_bar.price is not None else (0.0, a_bar.worth)
        for _ in range(a_bar.count):
            found = dict(reached)
            for rest, cost in reached.items():
                for way in ways:
                    left = tuple(max(0, a - b) for a, b in zip(rest, way, strict=True))
                    if left != rest:
                        sum_ = (cost[0] + price[0], cost[1] + price[1])
                        found[left] = min(found.get(left, sum_), sum_)
            reached = found
    return min((sum(rest), *cost) for rest, cost in reached.items())


@pytest.mark.parametrize("batch", range(12))
def test_what_is_bought_and_begun_against_trying_everything(batch):
    """Of lists so small every one is bought for least and, but for one in fifty, begun for least;
    what is called proved is, always."""
    begun = []
    for at in range(100):
        pieces, bars, kerf = small_list(random.Random(100 * batch + at))
        found = plan(pieces, bars, kerf, usable=25.0)
        check(found, pieces, bars, kerf, 25.0)
        missing, money, worth = least(pieces, bars, kerf)
        assert (sum(found.missing), found.bought) == (missing, pytest.approx(money))
        assert found.bought_bound <= money + 1e-9
        assert found.begun >= worth - 1e-9
        assert found.begun_bound <= worth + 1e-9
        begun.append(found.begun <= worth + 1e-9)
        if found.begun_proved:
            assert begun[-1]
    assert sum(begun) >= 98


# --- what is left over ---


def laid_out(draw):
    """(job, plan, usable): bars with something in each, drawn, in whole lengths."""
    sorts = draw.randint(1, 3)
    takes = tuple(
        (at, draw.randint(3, 25), draw.choice((1, 1, 2, 3)), draw.choice((0, 0, 2, 5)))
        for at in range(sorts)
    )
    kinds, layout, demand = [], [], [0] * sorts
    for index in range(draw.randint(1, 3)):
        trim = draw.choice((0, 0, 2, -4))
        kinds.append(Kind(draw.randint(25, 60), 2, 1, 0, takes, trim, []))
        ways = [each for each in every_filling(kinds[-1], (2,) * sorts) if any(each)]
        if not ways:
            continue
        pattern, times = draw.choice(ways), draw.randint(1, 2)
        layout.append((index, pattern, times))
        demand = [a + times * b for a, b in zip(demand, pattern, strict=True)]
    if draw.random() < 0.3:
        # One piece, or two alike, find no bar: a kind without a tag stands for their lack.
        piece, each, _, extra = draw.choice(takes)
        lack = tuple(int(at == piece) for at in range(sorts))
        kinds.append(Kind(each + extra, None, 1, 0, ((piece, each, 1, extra),), 0, None))
        times = draw.randint(1, 2)
        layout.append((len(kinds) - 1, lack, times))
        demand = [a + times * b for a, b in zip(demand, lack, strict=True)]
    return Job(kinds, demand, None, Steps(10**9)), layout, draw.choice((0, 4, 9, 15, 30))


def least_scrap(job, layout, usable):
    """Least scrap of the very bars of a layout that hold what it holds, every filling tried."""
    bars, rest = [], [0] * len(job.demand)
    for index, pattern, times in layout:
        if job.kinds[index].tag is not None:
            bars += [job.kinds[index]] * times
            rest = [a + times * b for a, b in zip(rest, pattern, strict=True)]
    reached = {tuple(rest): 0}
    for kind in bars:
        found = {}
        for rest, scrap in reached.items():
            for way in every_filling(kind, rest):
                left = tuple(a - b for a, b in zip(rest, way, strict=True))
                over = max(0, kind.room - kind.trim - length_in(kind, way))
                total = scrap + (over if over < usable else 0)
                found[left] = min(found.get(left, total), total)
        reached = found
    return reached[(0,) * len(job.demand)]


def length_in(kind, numbers):
    return sum(
        length_of(numbers[piece], each, stick, extra)
        for piece, each, stick, extra in kind.takes
        if numbers[piece]
    )


@pytest.mark.parametrize("batch", range(15))
def test_the_bound_of_scrap_against_trying_everything(batch):
    """Never above the least there is; reached often enough to be of use."""
    proved = drawn = gained = 0
    for at in range(100):
        job, layout, usable = laid_out(random.Random(7000 + 100 * batch + at))
        if not any(job.kinds[index].tag is not None for index, _, _ in layout):
            continue
        optimum = least_scrap(job, layout, usable)
        bound = scrap_bound(job, layout, usable)
        assert bound <= optimum, (batch, at)
        drawn += 1
        proved += bound == optimum
        # Laid out anew: the same bars, the same pieces, and no more scrap than before.
        better = arranged(job, layout, usable)
        scrap = scrap_of(job.kinds, better, usable)
        before = scrap_of(job.kinds, layout, usable)
        assert scrap <= before
        gained += scrap < before
        if all(job.kinds[index].tag is not None for index, _, _ in layout):
            assert optimum <= scrap
            assert held(job, better) == held(job, layout)
    assert proved > 0.3 * drawn
    assert gained > 0.1 * drawn


def held(job, layout):
    """(bars, pieces) of a layout."""
    bars, pieces = {}, [0] * len(job.demand)
    for index, pattern, times in layout:
        assert used_by(job.kinds[index], pattern) <= job.kinds[index].room
        bars[index] = bars.get(index, 0) + times
        pieces = [a + times * b for a, b in zip(pieces, pattern, strict=True)]
    return bars, pieces


def test_scrap_by_hand():
    """Two bars of 100, 40 taken of each: 60 is kept where 50 is worth keeping, scrap from 61 on."""
    kind = Kind(100, 2, 1, 0, ((0, 40, 1, 0),), 0, [])
    job = Job([kind], [2], None, Steps(10**9))
    layout = [(0, (1,), 2)]
    assert offcut(kind, (1,)) == 60
    assert scrap_of([kind], layout, 60) == 0
    assert scrap_of([kind], layout, 61) == 120
    # Of 120 left over in all, in two bars, no offcut of 130 can be; one of 110 can.
    assert scrap_bound(job, layout, 130) == 120
    # One bar holds both, 20 left, the other is left whole: 20 is the least.
    assert scrap_bound(job, layout, 110) == 20
    assert scrap_bound(job, layout, 0) == 0
    # A last saw cut of 3 may fall off the end; what a chuck holds of 5 is left as well.
    assert offcut(Kind(103, 2, 1, 0, ((0, 43, 1, 0),), 3, []), (2,)) == 14
    assert offcut(Kind(95, 2, 1, 0, ((0, 40, 1, 0),), -5, []), (2,)) == 20
    assert offcut(Kind(103, 2, 1, 0, ((0, 51, 1, 0),), 3, []), (2,)) == 0


def test_laid_out_anew_by_hand():
    """One bar holds both and 20 is left of it, the other is left whole; where nothing is scrap, or
    no work is left, it stays as it is, and nothing is looked at."""
    kind = Kind(100, 2, 1, 0, ((0, 40, 1, 0),), 0, [])
    layout = [(0, (1,), 2)]
    job = Job([kind], [2], None, Steps(10**9))
    assert arranged(job, layout, 70) == [(0, (2,), 1), (0, (0,), 1)]
    for limit, usable in ((10**9, 60), (0, 70)):
        job = Job([kind], [2], None, Steps(limit))
        assert arranged(job, layout, usable) is layout
        assert job.steps.done == 0


def test_what_cannot_be_laid_out_better_stays_as_it_is():
    """Two of 60 never share a bar of 100. And of one bar, of which 60 can be kept, none need be
    scrap, though its fullest filling leaves as much."""
    job = Job([Kind(100, 2, 1, 0, ((0, 60, 1, 0),), 0, [])], [2], None, Steps(10**9))
    layout = [(0, (1,), 2)]
    assert arranged(job, layout, 50) is layout
    job = Job([Kind(100, 1, 1, 0, ((0, 40, 1, 0),), 0, [])], [1], None, Steps(10**9))
    assert scrap_bound(job, [(0, (1,), 1)], 50) == 0


def test_what_finds_no_bar_takes_no_length():
    """Of four pieces two lie in bars of 100: 120 is left, and no offcut of 130 can be."""
    kinds = [
        Kind(100, 2, 1, 0, ((0, 40, 1, 0),), 0, []),
        Kind(40, None, 1, 0, ((0, 40, 1, 0),), 0, None),
    ]
    job = Job(kinds, [4], None, Steps(10**9))
    assert scrap_bound(job, [(0, (1,), 2), (1, (1,), 2)], 130) == 120


def test_pieces_in_sticks_may_take_more_than_their_least():
    """Two in a stick take 20 each and 10 for both; each alone 30. With one of 30 besides, each of
    two bars of 100 has 40 left, though by the least lengths 90 were left of both. What is sure is
    10 of each, when it holds three, at 30 each."""
    kind = Kind(100, 2, 1, 0, ((0, 20, 2, 10), (1, 30, 1, 0)), 0, [])
    job = Job([kind], [2, 2], None, Steps(10**9))
    layout = [(0, (1, 1), 2)]
    assert scrap_of([kind], layout, 95) == 80
    assert scrap_bound(job, layout, 95) == 20
    assert least_scrap(job, layout, 95) == 80


def test_every_bar_may_lose_its_last_saw_cut():
    """Three bars of 100: two give one piece of 100 each, the third one of 10 and its cut of 3. The
    87 left of it are kept, though 300 less all pieces and cuts is but 81."""
    kind = Kind(103, 3, 1, 0, ((0, 103, 1, 0), (1, 13, 1, 0)), 3, [])
    job = Job([kind], [2, 1], None, Steps(10**9))
    layout = [(0, (1, 0), 2), (0, (0, 1), 1)]
    assert scrap_of([kind], layout, 87) == scrap_bound(job, layout, 87) == 0


# --- how long it may look ---


@pytest.mark.parametrize(("effort", "most"), [(1, 6.0), (10, 3.0)])
def test_the_longest_lists_that_may_be_asked_come_to_an_end(effort, most):
    """Work is counted and never timed: of the most sets, bars and offers, a list ends within a few
    times its allowance, with the best plan so far and what is proved of it."""
    draw = random.Random(15)
    pieces = []
    for _ in range(inputs_stock.MOST_SETS):
        length, stick = round(draw.uniform(5.0, 60.0), 1), draw.choice((1, 4))
        pieces.append(Piece("set", length, draw.randint(1, 60), stick, 25.0))
    bars = [own(float(draw.randint(60, 900)), 2) for _ in range(inputs_stock.MOST_BARS)]
    bars += [
        shop(float(draw.randint(200, 3000)), float(draw.randint(5, 90)))
        for _ in range(inputs_stock.MOST_OFFERS)
    ]
    found = plan(pieces, bars, 2.0, step_limit=effort * STEP_LIMIT)
    assert found.steps < most * effort * STEP_LIMIT
    assert not found.bought_proved
    assert 0.0 < found.bought_bound <= found.bought
    check(found, pieces, bars, 2.0, 50.0)


class Watched(Steps):
    """Steps that are never taken back."""

    __slots__ = ("_so_far",)

    @property
    def done(self):
        return self._so_far

    @done.setter
    def done(self, value):
        assert value >= getattr(self, "_so_far", 0)
        self._so_far = value


@pytest.mark.parametrize("seed", range(20))
def test_work_is_counted_and_never_taken_back(seed, monkeypatch):
    monkeypatch.setattr("ringwright.core.cutting.plan.Steps", Watched)
    draw = random.Random(seed)
    pieces = [sawn(round(draw.uniform(20.0, 90.0), 1), draw.randint(3, 12)) for _ in range(6)]
    bars = [own(float(draw.randint(90, 400)), 2) for _ in range(6)]
    bars += [shop(float(draw.randint(200, 500)), float(draw.randint(5, 20))) for _ in range(3)]
    found = plan(pieces, bars, 2.0, step_limit=3000)
    assert found.steps > 100
    # The same question costs the same work.
    assert plan(pieces, bars, 2.0, step_limit=3000).steps == found.steps
