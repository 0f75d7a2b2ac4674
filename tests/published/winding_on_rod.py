"""A double-turn ring wound on over the edge of its piston, as a rod (rod.py).

    PYTHONPATH=service:tests python -m published.winding_on_rod > \\
        tests/published/data/winding_on_rod.csv

writes the table of results, a few seconds to a row.

The ring is a strip from its first free end (angle 0) round to the bridge and round to the other. It
is on the piston up to the place where it passes the edge: there, and before, its inner corners stay
out of the cylinder; from there on its corners stay in front of the face. The first end is kept on
the piston, `lead` in from its edge. Hands hold the part beyond the crossing within a hoop of its
free size, concentric. The turns may not enter one another sideways. The ring is set round, its
curvature less by a share of what opening it evenly to the piston takes; the heat left each free end
to stand `held` beyond. Nothing rubs.
"""

import math
from collections import namedtuple

import numpy as np

from published import rod

BORE, MODULUS, POISSON = 100.0, 1e5, 0.26
STIFF = 500.0  # contact: E*I/r^3 to a node
# Share of the way on, rounding of contact over thickness, stiffness of contact over STIFF.
SOFT = ((0.5, 0.02, 1.0), (1.0, 0.02, 1.0), (1.0, 0.005, 6.0))
AGAIN = SOFT[1:]
FINE, COARSE = 4.0, 7.5  # degrees to an element, near the crossing and elsewhere

# ratio: d1/a1. shape: turn width over thickness. set: share of the even opening that the heat took.
# held: over the turn's width.
Section = namedtuple("Section", ("ratio", "shape", "set", "held"))
# Largest principal stress, its angle from the first end, and the parts there: bending in the plane
# at the inner edge, sideways, shear of twist; all over S, the stress of opening evenly.
Worst = namedtuple("Worst", ("stress", "angle", "plane", "sideways", "twist"))


def torsion(longer, shorter):
    """(J, shear at the middle of a longer side, of a shorter, of torque 1): Saint-Venant's sums."""
    n = np.arange(1, 60, 2)
    turn = n * math.pi * longer / (2.0 * shorter)
    eight = 8.0 / math.pi**2
    constant = longer * shorter**3
    constant *= 1.0 / 3.0 - 64.0 / math.pi**5 * shorter / longer * (np.tanh(turn) / n**5).sum()
    long_side = shorter * (1.0 - eight * (1.0 / (n**2 * np.cosh(np.minimum(turn, 300.0)))).sum())
    signs = (-1.0) ** ((n - 1) // 2)
    short_side = shorter * eight * (signs * np.tanh(turn) / n**2).sum()
    return constant, long_side / constant, short_side / constant


def angles(first=185.0, last=289.0, fine=FINE, coarse=COARSE):
    """Of the nodes of one turn [rad]: close together where the ring passes the edge and crosses."""
    steps = []
    for begin, end, step in ((0.0, first, coarse), (first, last, fine), (last, 360.0, coarse)):
        count = round((end - begin) / step)
        steps += [(end - begin) / count] * count
    return np.radians(np.concatenate([[0.0], np.cumsum(steps)]))


class Ring:
    """The strip, its nodes where they are, and what it is pressed on."""

    def __init__(self, section, grid):
        self.section = section
        self.thickness = a = BORE / section.ratio
        self.width = h = section.shape * a
        self.even = 2.0 * MODULUS * a * a / (BORE * BORE - a * a)
        self.radius = r = 0.5 * (BORE - a)
        self.free = 1.0 / (1.0 / r - section.set * (1.0 / r - 2.0 / (BORE + a)))
        self.last = len(grid) - 1  # of the first turn; the next begins the second
        shear = 0.5 * MODULUS / (1.0 + POISSON)
        constant, *shears = torsion(max(a, h), min(a, h))
        self.outward_twist, self.sideways_twist = shears if h >= a else shears[::-1]
        forces = np.array([shear * a * h / 1.2, MODULUS * a * h, shear * a * h / 1.2])
        bends = np.array([MODULUS * a * h**3 / 12.0, shear * constant, MODULUS * h * a**3 / 12.0])
        self.axial = 1.0 / (math.pi * r**3 * (1.0 / bends[0] + 3.0 / bends[1]))
        length = r * np.diff(grid)
        place = 0.5 * (grid[1:] + grid[:-1])
        left = section.held * h * self.axial * r
        turned = np.zeros((len(length), 3))
        turned[:, 0] = -left * np.sin(place) / bends[0] * length
        turned[:, 1] = left * (1.0 - np.cos(place)) / bends[1] * length
        turned[:, 2] = length / self.free
        chord = np.zeros_like(turned)
        chord[:, 1] = 2.0 * self.free * np.sin(0.5 * turned[:, 2])
        # The second turn is the first from behind, end for end: the same sines and cosines again.
        # A stiff link is the bridge.
        count = 2 * len(length) + 1
        self.stress_places = np.arange(count) != self.last
        scale = np.where(self.stress_places, 1.0, 1000.0)[:, None]
        self.elements = rod.Elements(
            np.concatenate([length, [length.mean()], length]),
            np.vstack([chord, [[0.0, 0.0, -h]], chord]),
            np.vstack([turned, np.zeros((1, 3)), turned]),
            forces * scale,
            bends * scale,
        )
        self.strip = np.concatenate([grid, 2.0 * math.pi + grid])
        at = (self.strip - 2.0 * math.pi) * r / self.free
        self.x = np.stack([self.free * np.cos(at), self.free * np.sin(at), 0.5 * h + 0.0 * at], 1)
        self.x[self.last + 1 :, 2] = -0.5 * h
        self.frames = np.zeros((len(at), 3, 3))
        self.frames[:, 0, 0] = self.frames[:, 1, 1] = np.cos(at)
        self.frames[:, 1, 0], self.frames[:, 0, 1] = np.sin(at), -np.sin(at)
        self.frames[:, 2, 2] = 1.0
        self.start = self.x.copy()
        self.stiff = STIFF * bends[2] / r**3

    def wind(self, on, crossing, lead=0.0, steps=SOFT):
        """Moves the ring to rest with `on` degrees on, crossing within `crossing` degrees.

        lead: how far in from the edge the first end lies, over the turn's width.
        """
        h = self.width
        before = np.flatnonzero(self.strip <= math.radians(on) + 1e-9)
        after = np.flatnonzero(self.strip >= math.radians(on) - 1e-9)
        beyond = np.flatnonzero(self.strip >= math.radians(on + crossing) - 1e-9)
        below = np.arange(self.last + 1)
        for share, soft, hard in steps:
            inner = self.free - 0.5 * self.thickness
            cylinder = inner + share * (0.5 * BORE - inner)
            hoop = self.free + 0.5 * self.thickness * (2.0 - share)
            self.contact = 0.5 * hard * self.stiff
            contacts = [
                self._met(before, -0.5, 0.5, soft, _outside(cylinder)),
                self._met(before, -0.5, -0.5, soft, _outside(cylinder)),
                self._met(after, -0.5, 0.5, soft, _beyond(1.0, (share - 1.0) * h)),
                self._met(after, 0.5, 0.5, soft, _beyond(1.0, (share - 1.0) * h)),
                self._met(beyond, 0.5, 0.0, soft, _inside(hoop)),
                self._met(before[:1], -0.5, -0.5, soft, _beyond(-1.0, share * lead * h)),
            ]
            stack = rod.Stacked(
                below, below + self.last + 1, h, 2.0 * self.contact, soft * self.thickness
            )
            self.x, self.frames = rod.settled(
                self.elements, self.x, self.frames, contacts, [stack],
                held=[6 * self.last + 1], ground=(1e-3 * self.axial, self.start),
            )  # fmt: skip
        return self

    def turn_through(self, steps=((0.5, 0.02), (1.0, 0.02), (1.0, 0.005))):
        """Moves the second turn past the first, to lie beside it on its other side."""
        first = np.arange(self.last + 1)
        bridge = range(6 * self.last, 6 * self.last + 12)
        for share, soft in steps:
            apart, soft = (2.0 * share - 1.0) * self.width, soft * self.thickness
            stack = rod.Stacked(first + self.last + 1, first, apart, self.stiff, soft)
            self.x, self.frames = rod.settled(
                self.elements, self.x, self.frames, stacks=[stack], held=bridge
            )
        return self

    def moments(self):
        """Bending sideways, twist and bending in the plane of every element but the bridge."""
        _, curved, _ = rod.strains(
            self.elements, self.x[1:] - self.x[:-1], self.frames[:-1], self.frames[1:]
        )
        return (self.elements.moments * curved)[self.stress_places]

    def _met(self, nodes, outward, sideways, soft, depth):
        place = np.zeros((len(nodes), 3))
        place[:, 0], place[:, 2] = outward * self.thickness, sideways * self.width
        return rod.Contact(nodes, place, self.contact, depth, soft * self.thickness)

    def worst(self):
        """The Worst of all elements: along both faces, from their middles to the corner."""
        a, h = self.thickness, self.width
        bent, curved, _ = rod.strains(
            self.elements, self.x[1:] - self.x[:-1], self.frames[:-1], self.frames[1:]
        )
        moments = self.elements.moments * curved
        pull = self.elements.forces[:, 1] * bent[:, 1] / (a * h)
        curvature = 2.0 / (3.0 * (self.section.ratio - 1.0))
        plane = -6.0 * moments[:, 2] / (h * a * a) * (1.0 + curvature)
        outer = 6.0 * moments[:, 2] / (h * a * a) * (1.0 - curvature)
        sideways = 6.0 * np.abs(moments[:, 0]) / (a * h * h)
        twist = np.abs(moments[:, 1])
        largest = np.zeros(len(pull))
        for bending in (plane, outer):
            for t in np.linspace(0.0, 1.0, 11):
                for normal, shear in (
                    (bending + t * sideways, self.outward_twist),
                    (t * bending + sideways, self.sideways_twist),
                ):
                    s, tau = 0.5 * (pull + normal), shear * (1.0 - t * t) * twist
                    largest = np.maximum(largest, s + np.sqrt(s * s + tau * tau))
        i = np.where(self.stress_places, largest, 0.0).argmax()
        found = largest[i], plane[i], sideways[i], self.outward_twist * twist[i]
        found = [float(part / self.even) for part in found]
        middle = 0.5 * math.degrees(self.strip[i] + self.strip[i + 1])
        return Worst(found[0], float(middle), *found[1:])


# Degrees on, and crossing: where each crossing is worst, as the programme of the strip has it.
PATH = ((205.0, 90.0), (205.0, 60.0), (225.0, 40.0), (245.0, 20.0), (257.0, 20.0))
# ratio, shape, set, held, lead.
SECTIONS = (
    (20.0, 0.75, 0.4, 3.0, 0.0),
    (20.0, 1.0, 0.2, 1.0, 0.0),
    (25.0, 1.0, 0.0, 0.0, 0.0),
    (25.0, 2.0, 0.0, 0.0, 0.0),
    (28.0, 1.4, 0.2, 1.5, 0.0),
    (30.0, 0.5, 0.4, 2.5, 0.0),
    (30.0, 0.6, 0.4, 2.5, 0.0),
    (33.0, 1.0, 0.0, 2.2, 0.0),
    (33.0, 1.0, 0.4, 2.2, 0.0),
    (33.0, 2.0, 0.4, 2.0, 0.0),
    (40.0, 1.0, 0.3, 2.0, 0.0),
    (40.0, 1.5, 0.4, 1.0, 0.0),
    (20.0, 1.0, 0.2, 1.0, 1.0),
    (33.0, 2.0, 0.4, 2.0, 1.0),
    (20.0, 1.0, 0.2, 1.0, 2.0),
    (25.0, 1.0, 0.0, 0.0, 2.0),
    (25.0, 2.0, 0.0, 0.0, 2.0),
    (28.0, 1.4, 0.2, 1.5, 2.0),
    (30.0, 0.6, 0.4, 2.5, 2.0),
    (33.0, 1.0, 0.4, 2.2, 2.0),
    (33.0, 2.0, 0.4, 2.0, 2.0),
    (40.0, 1.0, 0.3, 2.0, 2.0),
    (40.0, 1.5, 0.4, 1.0, 2.0),
    (33.0, 1.0, 0.0, 2.2, 3.0),
    (33.0, 2.0, 0.4, 2.0, 3.0),
)


def rows(section, lead=0.0, path=PATH):
    """(on, crossing, Worst) along the path, each begun from the one before."""
    ring = Ring(section, angles())
    steps = SOFT
    for on, crossing in path:
        ring.wind(on, crossing, lead, steps)
        yield on, crossing, ring.worst()
        steps = AGAIN


def _outside(radius):
    def depth(points):
        away = np.hypot(points[:, 0], points[:, 1])
        out = np.zeros_like(points)
        out[:, :2] = points[:, :2] / away[:, None]
        return radius - away, out

    return depth


def _inside(radius):
    def depth(points):
        short, out = _outside(radius)(points)
        return -short, -out

    return depth


def _beyond(sign, place):
    """sign*z not above -sign*place: 1 before the face, -1 in from it."""

    def depth(points):
        out = np.zeros_like(points)
        out[:, 2] = -sign
        return sign * points[:, 2] + place, out

    return depth


def write():
    """Prints the table."""
    print("ratio,shape,set,held,lead,on,crossing,stress,angle,plane,sideways,twist")
    for *section, lead in SECTIONS:
        for on, crossing, worst in rows(Section(*section), lead):
            numbers = [*section, lead, on, crossing, *(round(part, 4) for part in worst)]
            print(",".join("%g" % number for number in numbers), flush=True)


if __name__ == "__main__":
    write()
