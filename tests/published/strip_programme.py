"""A bent strip as a quadratic programme for HiGHS, a general solver that knows nothing of rings.

Written apart from the core, to check its closed forms: the strip runs from a free end (psi = 0) to
where it mirrors itself, the back of a plain ring (pi) or the bridge of a double-turn one (2*pi).
w is measured outward from the circle it is held to; E*I, the radius and the curvature that is to
be given up are 1, so `need` is the moment that would hold it to the circle everywhere.
"""

import math
from collections import namedtuple

import highspy
import numpy as np
from scipy import optimize, sparse

SLACK = 2.139182173773113  # where a round-set ring begins to touch; found again in the tests

# w, moment: at every node. force: on whatever limits w, per node. duals: of the extra rows.
Held = namedtuple("Held", ("psi", "w", "moment", "force", "duals"))


def minimum(quadratic, linear, lower, upper, rows=None, row_lower=(), row_upper=()):
    """x and row duals of: min 1/2 x'Qx + c'x, lower <= x <= upper, row_lower <= Rx <= row_upper."""
    size = quadratic.shape[0]
    rows = sparse.csc_matrix((0, size)) if rows is None else rows.tocsc()
    model = highspy.HighsModel()
    lp = model.lp_
    lp.num_col_, lp.num_row_ = size, rows.shape[0]
    lp.col_cost_, lp.col_lower_, lp.col_upper_ = linear, lower, upper
    lp.row_lower_, lp.row_upper_ = np.asarray(row_lower, float), np.asarray(row_upper, float)
    lp.a_matrix_.format_ = highspy.MatrixFormat.kColwise
    lp.a_matrix_.start_, lp.a_matrix_.index_ = rows.indptr, rows.indices
    lp.a_matrix_.value_ = rows.data
    half = sparse.tril(quadratic).tocsc()
    model.hessian_.dim_ = size
    model.hessian_.format_ = highspy.HessianFormat.kTriangular
    model.hessian_.start_, model.hessian_.index_ = half.indptr, half.indices
    model.hessian_.value_ = half.data
    solver = highspy.Highs()
    solver.setOptionValue("output_flag", False)
    solver.passModel(model)
    solver.run()
    assert solver.getModelStatus() == highspy.HighsModelStatus.kOptimal
    found = solver.getSolution()
    return np.array(found.col_value), np.array(found.row_dual)


def bending(nodes, turns):
    """(psi, B, weights): B maps w to w'' + w at all but the free end, mirrored at the last."""
    psi = np.linspace(0.0, turns * math.pi, nodes)
    h = psi[1]
    side = np.full(nodes - 1, 1.0 / h**2)
    whole = sparse.diags([side, np.full(nodes, 1.0 - 2.0 / h**2), side], [-1, 0, 1]).tolil()
    whole[nodes - 1, nodes - 2] = 2.0 / h**2
    weights = np.full(nodes - 1, h)
    weights[-1] = 0.5 * h
    return psi, whole.tocsr()[1:], weights


def energy(nodes, turns, need):
    """(psi, B, wanted, Q, c) of 1/2 * integral of (w'' + w - need)^2."""
    psi, rows, weights = bending(nodes, turns)
    wanted = need(psi)[1:]
    quadratic = rows.T @ sparse.diags(weights) @ rows
    return psi, rows, wanted, quadratic, -(rows.T @ (weights * wanted))


def in_bore(need, turns=1, nodes=361, wall=None):
    """The strip inside a wall that it cannot pass: w <= wall. A plug is the same, inside out."""
    psi, rows, wanted, quadratic, linear = energy(nodes, turns, need)
    limit = np.zeros(nodes) if wall is None else wall(psi)
    w, duals = minimum(quadratic, linear, np.full(nodes, -highspy.kHighsInf), limit)
    moment = np.concatenate([[0.0], wanted - rows @ w])
    return Held(psi, w, moment, -(quadratic @ w + linear), duals)


def even(psi):
    """A ring of round free shape."""
    return np.ones_like(psi)


def as_sprung(psi):
    """A ring relieved while it lay sprung on a round former: the moment it carried there."""
    return np.where(psi < SLACK, np.sin(psi) / math.sin(SLACK), 1.0)


def trapezium(psi):
    """Weights of the trapezium rule over the nodes."""
    weights = np.full(len(psi), psi[1])
    weights[0] = weights[-1] = 0.5 * psi[1]
    return weights


def across(need, turns, nodes=361):
    """Forces of two plates at 90 degrees to the gap that close it, at psi = 90 and 270 degrees."""
    psi, _, _, quadratic, linear = energy(nodes, turns, need)
    places = [round(quarter * 0.5 * math.pi / psi[1]) for quarter in (1, 3)][:turns]
    weights = trapezium(psi)

    def pressed(plate):
        upper = np.full(nodes, highspy.kHighsInf)
        upper[places] = plate
        upper[-1] = 0.0  # the ring may lie anywhere along its line of symmetry
        lower = np.full(nodes, -highspy.kHighsInf)
        lower[-1] = 0.0
        w, _ = minimum(quadratic, linear, lower, upper)
        return weights @ w, -(quadratic @ w + linear)[places]

    plate = optimize.brentq(lambda x: pressed(x)[0], -2.0, 2.0, xtol=1e-8)
    return pressed(plate)[1]


def under_one_band(need, nodes=361):
    """A double-turn strip with one flexible band round both turns, drawn until its gaps close.

    The turn of psi lies beside the turn of 2*pi - psi; the band lies on the higher of the two, and
    so many nodes more carry its place. Its tension is a constraint on its length.
    """
    psi, rows, wanted, quadratic, linear = energy(nodes, 2, need)
    half = (nodes + 1) // 2
    size = nodes + half
    table = sparse.lil_matrix((2 * half + 2, size))
    for j in range(half):
        table[2 * j, j] = table[2 * j + 1, nodes - 1 - j] = 1.0
        table[2 * j, nodes + j] = table[2 * j + 1, nodes + j] = -1.0
    table[2 * half, nodes:] = trapezium(psi[:half])
    table[2 * half + 1, nodes], table[2 * half + 1, size - 1] = 1.0, -1.0  # where it lies is free
    whole = sparse.block_diag([quadratic, sparse.csc_matrix((half, half))]).tocsc()
    loads = np.concatenate([linear, np.zeros(half)])
    free = np.full(size, highspy.kHighsInf)
    weights = trapezium(psi)

    def drawn(length):
        lower = np.full(2 * half + 2, -highspy.kHighsInf)
        upper = np.zeros(2 * half + 2)
        lower[2 * half] = upper[2 * half] = length
        lower[2 * half + 1] = 0.0
        return minimum(whole, loads, -free, free, table, lower, upper)[0][:nodes]

    length = optimize.brentq(lambda x: weights @ drawn(x), -0.2, 0.3, xtol=1e-6)
    w = drawn(length)
    moment = np.concatenate([[0.0], wanted - rows @ w])
    return Held(psi, w, moment, -(quadratic @ w + linear), None)
