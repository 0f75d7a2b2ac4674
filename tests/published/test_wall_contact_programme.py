"""Rings on walls against a quadratic programme solved by Clarabel, case by random case.

Both ring types, bound, spread and arbitrary free shapes, steam behind, oval to five-lobed bores.
The seed is fixed, so that the cases are the same at every run.
"""

import math
import random

import numpy as np

from published.contact_programme import wall_contact
from ringwright.core.wall.wall_contact import Ring, bear

CASES = 240
STEPS = 480
ELEMENTS = 240


def cases(count):
    """(ring, curving, wall, extra): the ring, its free shape and the bore, as numbers to call."""
    chance = random.Random(1904)
    for _ in range(count):
        bore = chance.choice([20.0, 50.0, 80.0, 127.0, 254.0, 450.0])
        thickness = bore / chance.uniform(18.0, 40.0)
        turns = chance.choice([1, 2])
        steam = chance.choice([0.0, 0.0, chance.uniform(0.01, 1.2)])
        radius = 0.5 * (bore - thickness)
        sprung = chance.uniform(0.005, 0.05) * radius
        kind = chance.choice(["bound", "spread", "wavy"])
        wave, size = chance.uniform(0.5, 2.5), chance.uniform(-0.4, 0.4)
        lobes = [
            (n, bore * 10.0 ** chance.uniform(-5.0, -3.3) / (n - 1), chance.uniform(0.0, 6.28))
            for n in chance.sample([2, 3, 4, 5], chance.choice([0, 1, 2]))
        ]
        ring = Ring(bore, thickness, 2.0, chance.uniform(8e4, 1.2e5), turns, steam, 0.0)

        def curving(psi, kind=kind, sprung=sprung, wave=wave, size=size):
            if kind == "bound":
                return sprung + 0.0 * psi
            if kind == "spread":
                return sprung * (1.0 - np.cos(psi))
            return sprung * (1.0 + size * np.cos(wave * psi))

        def wall(psi, lobes=lobes):
            return sum((u * np.cos(n * psi - at) for n, u, at in lobes), 0.0 * psi)

        def extra(psi, lobes=lobes):
            return sum(((n * n - 1) * u * np.cos(n * psi - at) for n, u, at in lobes), 0.0 * psi)

        yield ring, curving, wall, extra


def test_rings_match_the_programme():
    worst_force = worst_light = 0.0
    for number, (ring, curving, wall, extra) in enumerate(cases(CASES)):
        steps = STEPS * ring.turns
        psi = np.arange(steps + 1) * 2.0 * math.pi * ring.turns / steps
        borne = bear(ring, [float(v) for v in curving(psi) + extra(psi)])
        radius = 0.5 * (ring.bore - ring.thickness)
        unit = ring.modulus * ring.turn_width * ring.thickness**3 / 12.0 / radius**3
        load = ring.back_pressure * 0.5 * ring.bore * ring.turn_width / unit
        light, forces = wall_contact(ring.turns, ELEMENTS * ring.turns, curving, load, wall)
        force = abs(borne.total / (forces.sum() * unit) - 1.0)
        off = abs(borne.widest_light - light.max())
        assert force < 0.002, (number, ring, force)
        assert off < 0.001, (number, ring, off, light.max())
        worst_force, worst_light = max(worst_force, force), max(worst_light, off)
    report = (CASES, 100 * worst_force, 1000 * worst_light)
    print("\n%d cases: force within %.3f %%, light within %.2f micrometres" % report)
