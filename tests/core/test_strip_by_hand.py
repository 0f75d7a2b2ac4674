"""The bending of a strip against the same in plain matrices, solved by numpy.

    (D w)_i = k*(w_(i-1) - t*w_i + w_(i+1)), a row for every inner node

written out in full; a strip of so few nodes that every one of them counts, loads without a pattern.
"""

import math

import numpy as np
import pytest

from ringwright.core.wall import strip, uneven

TURNS, STEPS = 2, 11
PLACE = strip.grid(TURNS, STEPS)
NODES = STEPS + 1
STEP = 4.0 * math.pi / 11.0
T = 2.0 * math.cos(STEP)
K = 1.0 / (2.0 - T)
SPRING = 0.37
RIGHT = [0.9, -1.7, 2.3, 0.4, -0.8, 3.1, 1.3, -2.6, 0.7, 1.9, -1.1, 0.6]
MOVED = [-0.31, -0.12, 0.0, -0.54, -0.87, -0.23, -0.65, -0.02, -0.43, -0.71, -0.18, -0.94]
CONFORMING = [0.8, 1.4, 2.2, 1.9, 3.3, 2.7, 0.6, -0.5, 1.1, 2.9, 1.7, 0.9]
STIFF = [5.0, 0.7, 1.3, 2.1, 0.9, 1.6, 0.4, 1.1, 1.9, 0.6, 1.4, 7.0]
HELD = [(), (0, 11), (1, 5), (3, 4, 5), (0, 1, 10, 11), (2, 9), (6,), tuple(range(1, 12))]


def bending():
    rows = np.zeros((NODES - 2, NODES))
    for i in range(NODES - 2):
        rows[i, i : i + 3] = K, -T * K, K
    return rows


def settled(matrix, held):
    """Solved with the rows and columns of what is held struck out."""
    free = [i for i in range(NODES) if i not in held]
    moved = np.zeros(NODES)
    moved[free] = np.linalg.solve(matrix[np.ix_(free, free)], np.array(RIGHT)[free])
    return moved


def right_but(held):
    return [None if i in held else r for i, r in enumerate(RIGHT)]


def test_steps_of_thirty_degrees():
    """Two turns in 24 steps: 2 cos 30 = sqrt 3, and 1/(2 - sqrt 3) = 2 + sqrt 3."""
    place = strip.grid(2, 24)
    assert place.nodes == 25
    assert place.step == pytest.approx(math.pi / 6.0, rel=1e-15)
    assert place.t == pytest.approx(math.sqrt(3.0), rel=1e-15)
    assert place.k == pytest.approx(2.0 + math.sqrt(3.0), rel=1e-14)
    assert strip.grid(1, 24).step == pytest.approx(math.pi / 12.0, rel=1e-15)


@pytest.mark.parametrize("held", HELD)
def test_what_moves_under_a_spring_and_what_is_held_stays(held):
    whole = bending().T @ bending() / K**2 + SPRING * np.eye(NODES)
    found = strip.settle(PLACE, right_but(held), SPRING)
    assert found == pytest.approx(settled(whole, held).tolist(), rel=1e-11, abs=1e-13)
    assert all(abs(found[i]) < 1e-200 for i in held)


@pytest.mark.parametrize("held", HELD)
def test_a_strip_of_uneven_stiffness_moves_as_its_matrix_says(held):
    whole = bending().T @ np.diag(STIFF[1:-1]) @ bending() / K**2 + SPRING * np.eye(NODES)
    found = uneven.settle(PLACE, STIFF, right_but(held), SPRING)
    assert found == pytest.approx(settled(whole, held).tolist(), rel=1e-11, abs=1e-13)
    assert all(abs(found[i]) < 1e-200 for i in held)


def test_a_spring_of_its_own_at_every_node():
    springs = [0.3 + 0.11 * i * i for i in range(NODES)]
    whole = bending().T @ bending() / K**2 + np.diag(springs)
    found = strip.factor(PLACE, springs)
    for right in (RIGHT, [2.0 - 0.3 * r for r in RIGHT]):
        wanted = np.linalg.solve(whole, right)
        assert strip.solve(found, right) == pytest.approx(wanted.tolist(), rel=1e-11)


def loaded(moment, load):
    """The wall's forces: D'm and the load, of which the ends bear half a step's."""
    share = np.full(NODES, load)
    share[[0, -1]] *= 0.5
    return bending().T @ moment[1:-1] + share


@pytest.mark.parametrize("load", [0.0, 0.83])
def test_moment_and_force_of_a_movement(load):
    moment, wall = strip.respond(PLACE, CONFORMING, load, MOVED)
    wanted = np.zeros(NODES)
    wanted[1:-1] = np.array(CONFORMING[1:-1]) - bending() @ MOVED
    assert moment == pytest.approx(wanted.tolist(), rel=1e-12)
    assert wall == pytest.approx(loaded(wanted, load).tolist(), rel=1e-12)


def test_moment_and_force_of_uneven_stiffness():
    moment, wall = uneven.respond(PLACE, STIFF, CONFORMING, MOVED)
    wanted = np.zeros(NODES)
    wanted[1:-1] = np.array(CONFORMING[1:-1]) - np.array(STIFF[1:-1]) * (bending() @ MOVED)
    assert moment == pytest.approx(wanted.tolist(), rel=1e-12)
    assert wall == pytest.approx(loaded(wanted, 0.0).tolist(), rel=1e-12)


@pytest.mark.parametrize("load", [0.0, 0.83])
def test_the_moment_is_that_of_every_force_before_it(load):
    """A force f has the moment f*sin(angle from it); on the grid sin(step)*k is its unit."""
    found = strip.moments_of_forces(PLACE, load, RIGHT)
    assert len(found) == NODES + 1
    for at in range(NODES + 1):
        wanted = 0.0
        for i, force in enumerate(RIGHT[:at]):
            steam = 0.5 * load if i in (0, NODES - 1) else load
            wanted += (force - steam) * math.sin((at - i) * STEP) / (K * math.sin(STEP))
        assert found[at] == pytest.approx(wanted, rel=1e-12, abs=1e-12)


def test_forces_of_a_bent_strip_give_its_moment_back_and_none_at_its_end():
    moment, wall = strip.respond(PLACE, CONFORMING, 0.83, MOVED)
    back = strip.moments_of_forces(PLACE, 0.83, wall)
    assert back == pytest.approx([*moment, 0.0], abs=1e-12)
