"""Least squares for a handful of unknowns: the fits of the bore survey and of measured shapes."""

import math

from .problems import OutOfRange


def fit(rows, values):
    """The unknowns x that make the sum of (row.x - value)^2 least, and its curvature.

    rows: list of lists, one number an unknown. values: one number a row.
    Returns (x, inverse): `inverse` is that of rows'*rows as a list of lists, whose diagonal times
    the variance of one value is the variance of each unknown.
    Raises OutOfRange where the rows do not settle every unknown.
    Householder would be needed for badly scaled rows; here all are cosines and their like.
    """
    count = len(rows[0])
    normal = [[0.0] * count for _ in range(count)]
    right = [0.0] * count
    for row, value in zip(rows, values):
        for i in range(count):
            a = row[i]
            right[i] += a * value
            line = normal[i]
            for j in range(i + 1):
                line[j] += a * row[j]
    lower = _cholesky(normal, count)
    inverse = []
    for i in range(count):
        inverse.append(_substitute(lower, [1.0 if j == i else 0.0 for j in range(count)]))
    x = _substitute(lower, right)
    # One step of refinement takes the rounding of the squared rows out again.
    left = [0.0] * count
    for row, value in zip(rows, values):
        rest = value
        for a, b in zip(row, x):
            rest -= a * b
        for i in range(count):
            left[i] += row[i] * rest
    return [a + b for a, b in zip(x, _substitute(lower, left))], inverse


def _cholesky(normal, count):
    lower = [[0.0] * count for _ in range(count)]
    for i in range(count):
        for j in range(i + 1):
            total = normal[i][j]
            for k in range(j):
                total -= lower[i][k] * lower[j][k]
            if i == j:
                if total <= 1e-12 * normal[i][i] or normal[i][i] == 0.0:
                    raise OutOfRange("readings", i, "enough of them, well spread", "least squares")
                lower[i][i] = math.sqrt(total)
            else:
                lower[i][j] = total / lower[j][j]
    return lower


def _substitute(lower, right):
    count = len(right)
    y = []
    for i in range(count):
        total = right[i]
        for k in range(i):
            total -= lower[i][k] * y[k]
        y.append(total / lower[i][i])
    x = [0.0] * count
    for i in range(count - 1, -1, -1):
        total = y[i]
        for k in range(i + 1, count):
            total -= lower[k][i] * x[k]
        x[i] = total / lower[i][i]
    return x
