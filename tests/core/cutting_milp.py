"""Cutting bars as a mixed integer programme, bar by bar, for an independent solver (HiGHS).

One variable for each bar that may be begun, one for each number of a piece on a bar, one for each
number of sticks: nothing here enumerates fillings, as the core's own search does.
"""

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import lil_matrix


def best(pieces, bars, kerf):
    """(pieces missing, money, worth begun) of an optimal plan, the first first."""
    # No plan needs more of a bar without end than there are pieces.
    most_bought = sum(piece.count for piece in pieces)
    copies = []
    for at, bar in enumerate(bars):
        copies += [at] * (most_bought if bar.count is None else bar.count)
    size, kinds = len(copies), len(pieces)
    # Begun, number of each piece on it, its sticks, and pieces that no bar is left for.
    width = size + 2 * size * kinds + kinds
    rows, lows, highs = [], [], []
    uppers = np.full(width, np.inf)
    uppers[:size] = 1

    def number(copy, piece):
        return size + copy * kinds + piece

    def sticks(copy, piece):
        return size + size * kinds + copy * kinds + piece

    def missing(piece):
        return size + 2 * size * kinds + piece

    def row(entries, low, high):
        rows.append(entries)
        lows.append(low)
        highs.append(high)

    for piece in range(kinds):
        whole = {number(copy, piece): 1 for copy in range(size)}
        whole[missing(piece)] = 1
        row(whole, pieces[piece].count, np.inf)
    for copy, at in enumerate(copies):
        bar = bars[at]
        length = {copy: -(bar.length - bar.held if bar.fed else bar.length + kerf)}
        for piece, what in enumerate(pieces):
            if bar.accepts is not None and piece not in bar.accepts:
                uppers[number(copy, piece)] = 0
            length[number(copy, piece)] = what.length
            if not bar.fed:
                length[sticks(copy, piece)] = what.stick_extra + kerf
                held = {number(copy, piece): 1, sticks(copy, piece): -what.stick}
                row(held, -np.inf, 0)
        row(length, -np.inf, 1e-7)
        if copy and copies[copy - 1] == at:
            row({copy - 1: 1, copy: -1}, 0, np.inf)
    matrix = lil_matrix((len(rows), width))
    for at, entries in enumerate(rows):
        for column, value in entries.items():
            matrix[at, column] = value
    held = [LinearConstraint(matrix.tocsr(), lows, highs)]
    answers = []
    costs = np.zeros((3, width))
    costs[0, size + 2 * size * kinds :] = 1
    for copy, at in enumerate(copies):
        costs[1, copy] = bars[at].price or 0
        costs[2, copy] = 0 if bars[at].price is not None else bars[at].worth
    for cost in costs:
        found = milp(
            cost,
            constraints=held,
            integrality=np.ones(width),
            bounds=Bounds(0, uppers),
            options={"mip_rel_gap": 0},
        )
        assert found.status == 0, found.message
        answers.append(found.fun)
        held.append(LinearConstraint(cost[None, :], -np.inf, found.fun + 1e-6))
    return round(answers[0]), answers[1], answers[2]
