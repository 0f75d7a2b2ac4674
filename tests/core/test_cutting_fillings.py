"""Fillings of one bar: by a dynamic programme over its length, and by trying all; at every effort.

Steps and shares of work by plain counting.
"""

import itertools
import random

import pytest

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

PLENTY = 10**9


def long_bar(seed):
    """(kind, values, limits): up to five sorts, some in sticks, several of each to a bar."""
    draw = random.Random(seed)
    sorts = draw.randint(2, 5)
    takes = tuple(
        (at, draw.randint(4, 33), draw.choice((1, 1, 2, 3, 5)), draw.choice((0, 0, 3, 11)))
        for at in range(sorts)
    )
    kind = Kind(draw.randint(60, 150), None, 1, 0, takes, 0, [])
    values = [
        draw.choice((1.0, 1.0, draw.uniform(0.2, 3.0))) * (each + 0.1 * draw.random())
        for _, each, _, _ in takes
    ]
    if draw.random() < 0.3:
        values[draw.randrange(sorts)] = 0.0
    return kind, values, [draw.randint(0, 9) for _ in range(sorts)]


def greatest(kind, values, limits):
    """Most that a bar can be worth: sort by sort, for every length up to its room."""
    best = [0.0] * (kind.room + 1)
    for piece, each, stick, extra in kind.takes:
        row = list(best)
        for number in range(1, limits[piece] + 1):
            # So many pieces in sticks, each stick with its extra.
            long = number * each + -(-number // stick) * extra
            for room in range(long, kind.room + 1):
                row[room] = max(row[room], best[room - long] + number * values[piece])
        best = row
    return best[kind.room]


def worth(values, pattern):
    return sum(value * number for value, number in zip(values, pattern, strict=True))


_GREATEST = {}


@pytest.mark.parametrize("seed", range(60))
def test_the_best_filling_at_every_effort(seed):
    kind, values, limits = long_bar(seed)
    if seed not in _GREATEST:
        _GREATEST[seed] = greatest(kind, values, limits)
    best = _GREATEST[seed]
    steps = Steps(PLENTY)
    value, pattern, ceiling = best_filling(kind, values, limits, steps)
    assert value == ceiling == pytest.approx(best, abs=1e-8)
    assert value == pytest.approx(worth(values, pattern), abs=1e-9)
    whole = steps.done
    assert whole > 0 or best == 0.0
    # No step for a piece is counted twice, none left out: cut short at what it took, it is whole.
    assert best_filling(kind, values, limits, Steps(PLENTY), whole)[2] == ceiling
    for allowance in (0, 1, 2, 5, 11, 23, 60, 200):
        steps = Steps(PLENTY)
        value, pattern, ceiling = best_filling(kind, values, limits, steps, allowance)
        assert value <= best + 1e-8
        assert best <= ceiling + 1e-8
        assert value == pytest.approx(worth(values, pattern), abs=1e-9)
        assert all(0 <= n <= limit for n, limit in zip(pattern, limits, strict=True))
        assert used_by(kind, pattern) <= kind.room
        assert 0 < steps.done <= allowance + 1 + len(limits) or steps.done == whole
        assert allowance < whole or ceiling == pytest.approx(best, abs=1e-8)
    # What is good enough ends the search; the ceiling stays above all.
    for share in (0.5, 0.9, 1.0):
        steps = Steps(PLENTY)
        value, pattern, ceiling = best_filling(kind, values, limits, steps, 4000, share * best)
        assert share * best - 1e-8 <= value <= best + 1e-8 <= ceiling + 2e-8
        assert steps.done <= whole
    # Cut short, the ceiling is that of a bar as dense as its densest piece.
    spans = [(each + extra / stick, at) for at, each, stick, extra in kind.takes]
    held = [
        values[at] / span
        for span, at in spans
        if limits[at] and values[at] > 0.0 and most(kind.room, *kind.takes[at][1:])
    ]
    cut = best_filling(kind, values, limits, Steps(PLENTY), 0)
    if cut[2] > cut[0] + 1e-9 and held:
        assert cut[2] == pytest.approx(kind.room * max(held), rel=1e-12)


@pytest.mark.parametrize("seed", range(40))
def test_every_full_filling_with_the_lead_is_found_once(seed):
    kind, values, limits = long_bar(seed)
    limits = [min(3, limit) for limit in limits]
    spans = [each[1:] for each in kind.takes]
    draw = random.Random(seed)
    lead = draw.randrange(len(limits))
    fits = {
        numbers
        for numbers in itertools.product(*[range(limit + 1) for limit in limits])
        if sum(length_of(n, *span) for n, span in zip(numbers, spans, strict=True)) <= kind.room
    }
    full = [
        n
        for n in fits
        if n[lead] and not any(n[:i] + (n[i] + 1,) + n[i + 1 :] in fits for i in range(len(n)))
    ]
    top = max([worth(values, n) for n in full] or [0.0])
    for least in (0.0, 0.6 * top, 0.9 * top, top - 1e-8, top + 1e-8):
        wanted = sorted(n for n in full if worth(values, n) >= least)
        steps = Steps(PLENTY)
        found, complete = full_fillings(kind, values, limits, lead, least, steps, len(wanted))
        assert complete
        # A step at the least for each that is found.
        assert steps.done >= len(found)
        assert sorted(pattern for _, pattern in found) == wanted
        assert all(abs(value - worth(values, pattern)) < 1e-9 for value, pattern in found)
        for many in {len(wanted) - 1, len(wanted) // 2} - {-1}:
            spent = Steps(PLENTY)
            some, complete = full_fillings(kind, values, limits, lead, least, spent, many)
            assert len(some) == many
            assert many <= spent.done <= steps.done
            assert complete == (many == len(wanted))
        # Cut short by work it says so, and what it found is right.
        for effort in (0, 1, 3, steps.done // 2):
            little = Steps(effort)
            some, complete = full_fillings(kind, values, limits, lead, least, little, 10**6)
            assert {pattern for _, pattern in some} <= set(wanted)
            assert not complete or sorted(pattern for _, pattern in some) == wanted
            assert 0 <= little.done <= effort + 1 + 2 * len(limits)


def test_most_by_hand():
    """Sticks of three at 10 and 4 more: 34 each. Of 100, two sticks are 68; 28 more hold two."""
    assert most(100, 10, 3, 4) == 8
    assert most(91, 10, 3, 4) == 7
    assert (most(14, 10, 3, 4), most(13, 10, 3, 4)) == (1, 0)
    assert (most(34, 10, 3, 4), most(33, 10, 3, 4), most(47, 10, 3, 4), most(48, 10, 3, 4)) == (
        3,
        2,
        3,
        4,
    )
    assert length_of(7, 10, 3, 4) == 82
    kind = Kind(100, 1, 1, 0, ((0, 10, 3, 4), (1, 5, 1, 0), (2, 9, 2, 1)), 0, [])
    assert used_by(kind, (7, 0, 1)) == 82 + 10


# --- work ---


def test_work_is_rationed_out_of_what_is_left():
    steps = Steps(1000)
    assert not steps.over()
    steps.done = 200
    # A quarter of the 800 left.
    assert steps.ration(0.25) == 1000
    assert (steps.limit, steps.over()) == (400, False)
    steps.done = 399
    assert not steps.over()
    steps.done = 400
    assert steps.over()
    steps.done = 450
    assert steps.over()
    # Past the limit nothing is left to ration.
    assert steps.ration(0.5) == 400
    assert (steps.limit, steps.over()) == (450, True)


@pytest.mark.parametrize(
    ("limit", "kinds", "allowance"),
    # A sixth of it for each kind, from 30 to 300.
    [(6000, 4, 250), (6000, 3, 300), (60000, 2, 300), (720, 3, 40), (700, 5, 30), (1260, 0, 210)],
)
def test_work_for_one_filling_is_shared_by_the_kinds(limit, kinds, allowance):
    some = [Kind(50, 1, 1, 0, ((0, 10, 1, 0),), 0, [])] * kinds
    assert Job(some, [1], None, Steps(limit)).allowance == allowance


def test_a_piece_counts_for_the_least_it_takes_of_any_bar():
    """15 on its own; in sticks of four with 20 more, 10 and 5; none gives the third."""
    kinds = [
        Kind(50, 1, 1, 0, ((0, 16, 1, 0), (1, 10, 4, 20)), 0, []),
        Kind(50, 1, 1, 7, ((0, 10, 4, 20),), 0, []),
        Kind(50, 1, 1, 1, ((0, 18, 1, 0), (1, 17, 2, 0)), 0, []),
    ]
    job = Job(kinds, [2, 3, 0], 30, Steps(100))
    assert job.lengths == [15.0, 15.0, 0.0]
    assert [job.buys(kind) for kind in kinds] == [False, True, True]
    free = Job(kinds, [2, 3, 0], None, Steps(100))
    assert [free.buys(kind) for kind in kinds] == [False, False, False]
