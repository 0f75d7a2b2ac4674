"""Spaces between rings, piece by piece: ends of a turn, one opening, one step, one space that
stands still; each against a reckoning of its own (numpy's solver, brentq, plain sums)."""

import math

import numpy as np
import pytest
from scipy.optimize import brentq

from ringwright.core.running import leak, ring_spaces, steam_cycle

K = 1.2
CRITICAL = (2 / (K + 1)) ** (K / (K - 1))


def nozzle(before, after, k=K):
    """Isentropic flow to the throat, as textbooks print it, either way."""
    if before < after:
        return -nozzle(after, before, k)
    x = max(after / before, (2 / (k + 1)) ** (k / (k - 1)))
    return before * math.sqrt(max(0.0, 2 * k / (k - 1) * (x ** (2 / k) - x ** ((k + 1) / k))))


LAW = (K, leak.critical_ratio(K), leak.flow_number(leak.critical_ratio(K), K))


@pytest.mark.parametrize(
    ("before", "after"),
    [(0.9, 0.2), (0.9, 0.51), (0.9, 0.7), (0.2, 0.9), (0.7, 0.9), (0.43, 0.43), (0.5, 0.4999)],
)
def test_one_opening_passes_what_a_nozzle_does_either_way(before, after):
    found = ring_spaces.pull(before, after, LAW)
    assert found == pytest.approx(nozzle(before, after), rel=1e-9, abs=1e-15)


def test_the_choke_sets_in_at_the_critical_ratio():
    choked = nozzle(0.9, 0.1)
    assert ring_spaces.pull(0.9, 0.9 * CRITICAL * 0.999, LAW) == pytest.approx(choked, rel=1e-12)
    assert ring_spaces.pull(0.9, 0.9 * 0.9, LAW) < 0.8 * choked


def test_both_ends_of_a_turn_are_those_of_the_cycle_at_the_middle_of_each_step():
    """Cut-off 0.4, release 0.85, compression 0.12, clearance 0.07, 0.9 and 0.13 MPa, blow-down a
    tenth of the stroke: each pressure by the law of its part of the stroke."""

    def outward(x):
        if x <= 0.4:
            return 0.9
        if x <= 0.85:
            return 0.9 * 0.47 / (0.07 + x)
        released = 0.9 * 0.47 / 0.92
        return max(released - (x - 0.85) / 0.1 * (released - 0.13), 0.13)

    def returning(x):
        left = 1.0 - x
        return 0.13 if left >= 0.12 else 0.13 * 0.19 / (0.07 + left)

    stated = steam_cycle.cycle(
        admission_pressure=0.9, back_pressure=0.13, cut_off=0.4, release=0.85, compression=0.12,
        clearance=0.07,
    )  # fmt: skip
    both = ring_spaces.ends(stated, True, 0.101325)
    one_sided = ring_spaces.ends(stated, False, 0.101325)
    assert len(both) == len(one_sided) == 36
    for at, (one, other) in enumerate(both):
        degrees = 10.0 * at + 5.0
        done = 0.5 * (1.0 - math.cos(math.radians(degrees)))
        wanted = (outward(done), returning(done))
        if degrees > 180.0:
            wanted = (returning(1.0 - done), outward(1.0 - done))
        assert (one, other) == pytest.approx(wanted, rel=1e-9), degrees
        assert one_sided[at] == (one, 0.101325)


@pytest.mark.parametrize(
    ("rings", "fillings", "both"),
    [(3, 10.0, False), (4, 10.0, False), (5, 10.0, False), (5, 50.0, False), (5, 2.0, True)],
)
def test_turns_are_followed_until_every_space_repeats(rings, fillings, both, monkeypatch):
    """Forty turns more tell the same, to a thousandth of the pressure; the first space may repeat
    itself long before the last."""
    stated = steam_cycle.cycle(
        admission_pressure=0.9, back_pressure=0.13, cut_off=0.4, release=0.85, compression=0.12,
        clearance=0.07,
    )  # fmt: skip
    turn = ring_spaces.ends(stated, both, 0.101325)
    found = ring_spaces.split(turn, rings, K, fillings)
    monkeypatch.setattr(ring_spaces, "SETTLED", 0.0)
    monkeypatch.setattr(ring_spaces, "TURNS", 40)
    longer = ring_spaces.split(turn, rings, K, fillings)
    assert found.differences == pytest.approx(longer.differences, abs=1e-3 * 0.9)
    assert found.flow == pytest.approx(longer.flow, abs=1e-3 * 0.9)


def uneven():
    """Pressures of a turn that no engine has: nothing in them is alike."""
    return [(0.4 + 0.011 * at, 0.9 - 0.013 * at) for at in range(36)]


def test_one_ring_takes_the_difference_weighted_by_what_it_slides():
    found = ring_spaces.split(uneven(), 1, K, 3.0)
    angles = (np.arange(36) + 0.5) * 2 * np.pi / 36
    weight = np.abs(np.sin(angles))
    across = np.array([abs(one - two) for one, two in uneven()])
    assert found.differences == [pytest.approx(float((weight * across).sum() / weight.sum()))]
    flow = sum(max(nozzle(one, two), 0.0) for one, two in uneven()) / 36
    assert found.flow == pytest.approx(flow, rel=1e-9)


def balance(pressures):
    """Where a space that cannot fill stands: it takes in what it gives off."""
    return brentq(
        lambda p: sum(nozzle(one, p) - nozzle(p, two) for one, two in pressures), 0.1, 1.2
    )


@pytest.mark.parametrize("rings", [2, 4])
def test_a_space_that_hardly_fills_stands_where_it_takes_in_what_it_gives_off(rings):
    """Rings between then see nothing, the first and the last the swing against that pressure."""
    pressures = uneven()
    still = balance(pressures)
    found = ring_spaces.split(pressures, rings, K, 1e-7)
    angles = (np.arange(36) + 0.5) * 2 * np.pi / 36
    weight = np.abs(np.sin(angles))
    for at, end in ((0, 0), (-1, 1)):
        across = np.array([abs(pair[end] - still) for pair in pressures])
        wanted = float((weight * across).sum() / weight.sum())
        assert found.differences[at] == pytest.approx(wanted, abs=0.002)
    assert found.differences[1:-1] == pytest.approx([0.0] * (rings - 2), abs=1e-6)
    flow = sum(max(nozzle(one, still), 0.0) for one, _ in pressures) / 36
    assert found.flow == pytest.approx(flow, rel=0.01)


def stepped(held, one, two, step):
    """The same step by numpy: conductances found twice, the whole matrix solved at once."""
    now = list(held)
    for _ in range(2):
        row = [one, *now, two]
        leads = []
        for first, second in zip(row, row[1:], strict=False):
            off = first - second
            if abs(off) < 1e-4 * first:
                off = 1e-4 * first
            leads.append(step * nozzle(first, first - off) / off)
        size = len(held)
        matrix, known = np.eye(size), np.array(held)
        for at in range(size):
            matrix[at, at] += leads[at] + leads[at + 1]
            if at:
                matrix[at, at - 1] -= leads[at]
            if at < size - 1:
                matrix[at, at + 1] -= leads[at + 1]
        known[0] += leads[0] * one
        known[-1] += leads[-1] * two
        now = list(np.linalg.solve(matrix, known))
    return now


@pytest.mark.parametrize("step", [0.02, 0.7, 30.0])
@pytest.mark.parametrize(
    "held", [[0.33], [0.62, 0.35], [0.7, 0.41, 0.29], [0.5, 0.5, 0.2, 0.61, 0.61]]
)
@pytest.mark.parametrize(("one", "two"), [(0.83, 0.14), (0.14, 0.83), (0.5, 0.5)])
def test_a_step_in_time_is_what_a_whole_matrix_gives(one, two, held, step):
    found = ring_spaces._step(held, one, two, LAW, step)
    assert found == pytest.approx(stepped(held, one, two, step), rel=1e-8)


@pytest.mark.parametrize("rings", [2, 3, 5])
def test_a_turn_that_repeats_itself_is_that_of_the_matrix(rings):
    """A space that fills about twice a turn, its turns followed by numpy until they repeat."""
    pressures, fillings = uneven(), 2.3
    held = [0.6] * (rings - 1)
    angles = (np.arange(36) + 0.5) * 2 * np.pi / 36
    weight = np.abs(np.sin(angles))
    for _ in range(25):
        across, flow = np.zeros(rings), 0.0
        for at, (one, two) in enumerate(pressures):
            held = stepped(held, one, two, fillings / 36)
            row = np.array([one, *held, two])
            across += weight[at] * np.abs(np.diff(row))
            flow += max(nozzle(one, row[1]), 0.0) / 36
    found = ring_spaces.split(pressures, rings, K, fillings)
    assert found.differences == pytest.approx(across / weight.sum(), abs=0.0015)
    assert found.flow == pytest.approx(flow, rel=0.005)


@pytest.mark.parametrize("rings", [3, 4])
def test_spaces_that_fill_slowly_are_followed_until_all_of_them_stand(rings):
    """They begin at the balance of the ends, where of three the middle one stays nearly still from
    the first turn on, and the outer two do not."""
    pressures = [(0.9, 0.2)] * 36
    slow = ring_spaces.split(pressures, rings, K, 1.3)
    held = [balance(pressures)] * (rings - 1)
    for _ in range(12 * 36):
        held = stepped(held, 0.9, 0.2, 1.3 / 36)
    across = [one - two for one, two in zip([0.9, *held], [*held, 0.2], strict=True)]
    assert slow.differences == pytest.approx(across, abs=0.006)


def test_a_sum_is_taken_in_order():
    assert ring_spaces.sum_of([0.25, -1.5, 4.0]) == 2.75
    assert ring_spaces.sum_of([]) == 0.0
