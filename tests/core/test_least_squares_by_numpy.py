"""Least squares beside numpy's own (by orthogonal factors, where ours squares the rows)."""

import math
import random

import numpy as np
import pytest

from ringwright.core.least_squares import fit
from ringwright.core.problems import OutOfRange


@pytest.mark.parametrize("unknowns", [1, 2, 3, 4, 6])
def test_unknowns_and_their_doubt_are_those_of_a_library(unknowns):
    draw = random.Random(unknowns)
    for readings in (unknowns, unknowns + 1, 3 * unknowns + 2):
        rows = [[draw.uniform(-3.0, 5.0) for _ in range(unknowns)] for _ in range(readings)]
        values = [draw.uniform(70.0, 90.0) for _ in rows]
        found, inverse = fit(rows, values)
        expected = np.linalg.lstsq(np.array(rows), np.array(values), rcond=None)[0]
        assert found == pytest.approx(list(expected), rel=1e-9, abs=1e-9)
        square = np.linalg.inv(np.array(rows).T @ np.array(rows))
        for mine, theirs in zip(inverse, square, strict=True):
            assert mine == pytest.approx(list(theirs), rel=1e-7, abs=1e-9)


def test_a_line_by_hand():
    """Through (0, 1), (1, 3), (2, 4): slope 3/2, height 7/6; rows'*rows is ((3, 3), (3, 5))."""
    found, inverse = fit([[1.0, 0.0], [1.0, 1.0], [1.0, 2.0]], [1.0, 3.0, 4.0])
    assert found == pytest.approx([7.0 / 6.0, 1.5], rel=1e-14)
    assert inverse[0] == pytest.approx([5.0 / 6.0, -0.5], rel=1e-13)
    assert inverse[1] == pytest.approx([-0.5, 0.5], rel=1e-13)


def test_one_step_more_takes_out_what_squaring_lost():
    """Two columns alike to five digits: squared, ten of sixteen digits are gone."""
    rows = [[1.0, 1.0 + 1e-5 * math.cos(at)] for at in range(12)]
    exact = [2.5, -1.25]
    values = [exact[0] * a + exact[1] * b for a, b in rows]
    found, _ = fit(rows, values)
    assert found == pytest.approx(exact, abs=2e-9)


@pytest.mark.parametrize(
    "rows",
    [
        [[1.0, 2.0], [2.0, 4.0], [3.0, 6.0]],
        [[1.0, 0.0], [3.0, 0.0]],
        [[0.0]],
        [[1.0, 2.0, 3.0], [4.0, 5.0, 6.0]],
    ],
)
def test_readings_that_settle_not_every_unknown_are_refused(rows):
    with pytest.raises(OutOfRange, match="readings"):
        fit(rows, [1.0] * len(rows))


def test_how_alike_two_columns_may_be():
    """Of the second, one part in a million square to the first is left: 1e-12 of its square."""
    for apart, settled in ((2.2e-6, True), (0.5e-6, False)):
        rows = [[1.0, 1.0 + apart], [1.0, 1.0 - apart]]
        if settled:
            assert fit(rows, [3.0, 3.0])[0] == pytest.approx([3.0, 0.0], abs=1e-3)
        else:
            with pytest.raises(OutOfRange):
                fit(rows, [3.0, 3.0])
