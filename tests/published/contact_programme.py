"""The contact of ring and wall as a quadratic programme, given to a library that knows nothing of
rings.

Written separately from the core's solver: cubic Hermite elements instead of differences, the wall's
shape in the constraint instead of in the load, Clarabel's interior-point method as the solver.
"""

import math

import clarabel
import numpy as np
from scipy import sparse

POINTS, WEIGHTS = np.polynomial.legendre.leggauss(4)


def wall_contact(turns, elements, curving, load, wall, stiff=np.ones_like):
    """(light, forces) at the nodes of: min 1/2 int (w'' + w - curving)^2 - int load*w, w <= wall.

    turns: 1 or 2. elements: of equal length. curving, wall: functions of the angle (arrays).
    stiff: by which the square is weighted, a function of the angle as well.
    """
    span = 2.0 * math.pi * turns / elements
    size = 2 * (elements + 1)
    first = 2 * np.arange(elements)
    rows, columns, entries = [], [], []
    linear = np.zeros(size)
    for point, weight in zip(0.5 + 0.5 * POINTS, 0.5 * WEIGHTS * span, strict=True):
        shape, bend = _hermite(point, span)
        measure = shape + bend
        at = (np.arange(elements) + point) * span
        free, bears = curving(at), stiff(at)
        for a in range(4):
            pull = -(bears * free * measure[a] + load * shape[a]) * weight
            linear += np.bincount(first + a, weights=pull, minlength=size)
            for b in range(4):
                rows.append(first + a)
                columns.append(first + b)
                entries.append(bears * (measure[a] * measure[b] * weight))
    joined = [np.concatenate(part) for part in (entries, rows, columns)]
    quadratic = sparse.csc_matrix((joined[0], (joined[1], joined[2])), shape=(size, size))
    nodes = np.arange(elements + 1)
    reach = sparse.csc_matrix((np.ones(elements + 1), (nodes, 2 * nodes)), (elements + 1, size))
    limit = wall(nodes * span)
    settings = clarabel.DefaultSettings()
    settings.verbose = False
    settings.tol_gap_abs = settings.tol_gap_rel = settings.tol_feas = 1e-12
    cone = [clarabel.NonnegativeConeT(elements + 1)]
    upper = sparse.triu(quadratic).tocsc()
    found = clarabel.DefaultSolver(upper, linear, reach, limit, cone, settings).solve()
    return limit - np.array(found.x)[::2], np.array(found.z)


def _hermite(x, h):
    shape = np.array(
        [1 - 3 * x**2 + 2 * x**3, h * (x - 2 * x**2 + x**3), 3 * x**2 - 2 * x**3, h * (x**3 - x**2)]
    )
    bend = np.array([-6 + 12 * x, h * (-4 + 6 * x), 6 - 12 * x, h * (6 * x - 2)]) / h**2
    return shape, bend
