"""How far small movement carries: a strip that bends without limit, on the same wall.

The elastica: a thin strip that does not stretch, of round free shape, in a round frictionless bore,
with steam behind it that stays square to it. From where contact begins to the tip it is integrated
exactly as it lies (scipy), and start of contact, and force there, are found so that the tip
carries no moment, touches the wall and is pushed square to the wall. Radius of the bore 1, E*I 1.
"""

import math

import numpy as np
import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import fsolve

from ringwright.core.wall import free_shape
from ringwright.core.wall.wall_contact import LARGEST_CHECKED, Ring, bear

STEPS = 720


def elastica(given_up, steam):
    """(slack angle, tip force, widest light, contact, mean pressure) of a round-set ring."""

    def along(_, state):
        x, y, slope, moment, pull_x, pull_y = state
        c, s = math.cos(slope), math.sin(slope)
        bent = 1.0 - given_up + moment
        return [c, s, bent, s * pull_x - c * pull_y, -steam * s, steam * c]

    def walk(guess, dense=False):
        length, pull_x, pull_y = guess
        start = [1.0, 0.0, math.pi / 2.0, given_up, pull_x, pull_y]
        return solve_ivp(along, (0.0, length), start, rtol=1e-10, atol=1e-12, dense_output=dense)

    def missed(guess):
        x, y, _, moment, pull_x, pull_y = walk(guess).y[:, -1]
        return [moment, x * x + y * y - 1.0, pull_x * y - pull_y * x]

    first = linear(given_up, steam)
    slack = first[0]
    radial = first[1] * math.cos(slack) + steam * math.sin(slack)
    found = fsolve(missed, [slack, -radial, -given_up], xtol=1e-12)
    assert max(abs(rest) for rest in missed(found)) < 1e-8
    path = walk(found, dense=True)
    x, y = path.sol(np.linspace(0.0, found[0], 1001))[:2]
    tip = math.hypot(*path.y[4:, -1])
    contact = steam - found[2]
    mean = (contact * (math.pi - found[0]) + tip + found[1]) / math.pi
    return found[0], tip, 1.0 - np.sqrt(x * x + y * y).min(), contact, mean


def linear(given_up, steam):
    """The same five of the core: thickness so small that only the strip counts."""
    bore, thickness = 2.0 + 1e-6, 1e-6
    modulus = 12.0 / thickness**3
    ring = Ring(bore, thickness, 1.0, modulus, 1, steam, 0.0)
    borne = bear(ring, free_shape.round_arc(given_up, 1.0, STEPS + 1))
    return (
        borne.slack[0],
        borne.tip_forces[0],
        borne.widest_light,
        borne.contact_pressure,
        borne.mean_pressure,
    )


@pytest.mark.parametrize("given_up", [0.01, 0.03, 0.06, 0.1, LARGEST_CHECKED])
@pytest.mark.parametrize("steam_ratio", [0.0, 1.0, 5.0])
def test_small_movement_holds_to_one_per_cent(given_up, steam_ratio):
    """given_up: share of curvature the ring loses in the bore. steam over contact pressure."""
    steam = steam_ratio * given_up
    exact, small = elastica(given_up, steam), linear(given_up, steam)
    print(
        "\n%.2f %4.1f" % (given_up, steam_ratio),
        ["%.5f %.5f" % p for p in zip(exact, small, strict=True)],
    )
    slack, tip, light, contact, mean = zip(exact, small, strict=True)
    assert slack[1] == pytest.approx(slack[0], rel=0.01)
    assert tip[1] == pytest.approx(tip[0], rel=0.01)
    assert contact[1] == pytest.approx(contact[0], rel=0.01)
    assert mean[1] == pytest.approx(mean[0], rel=0.01)
    assert light[1] == pytest.approx(light[0], rel=0.02)
