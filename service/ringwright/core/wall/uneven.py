"""A strip whose thickness varies along it: what strip.py does for one that is alike all along.

Bending stiffness at each node is s times that of the strip's own; the moment of a movement w is
conforming - s*(D w), and a movement under a spring solves (D'sD + spring)*w = right.
"""

from .strip import RIGID


def settle(place, stiff, right, spring):
    """w with (D'sD/k^2 + spring)*w = right, nil at the nodes held still, as a list.

    place: strip.Grid. stiff: s at every node [1], above 0. right, spring: as strip.settle.
    """
    t = place.t
    last = len(right) - 1
    # A strip has no moment at its free ends, so their stiffness stands in no row.
    inner = [0.0, 0.0] + stiff[1:-1] + [0.0, 0.0]
    diag = []
    near = []
    back = []
    diag_2 = diag_1 = RIGID
    near_1 = x_1 = x_2 = 0.0
    for i, r in enumerate(right):
        before, here, after = inner[i], inner[i + 1], inner[i + 2]
        if r is None:
            d = RIGID
            a = x = 0.0
        else:
            a = (-t * (before + here) - before * near_1) / diag_1
            d = before + t * t * here + after + spring
            d -= before * before / diag_2 + a * a * diag_1
            x = r - a * x_1 - before * x_2 / diag_2
        diag.append(d)
        near.append(a)
        back.append(x)
        diag_2, diag_1 = diag_1, d
        near_1 = a
        x_2, x_1 = x_1, x
    moved = [0.0] * (last + 1)
    for i in range(last, -1, -1):
        x = back[i]
        if i + 2 <= last:
            x -= inner[i + 2] * moved[i + 2]
        x = x / diag[i]
        if i + 1 <= last:
            x -= near[i + 1] * moved[i + 1]
        moved[i] = x
    return moved


def respond(place, stiff, conforming, w):
    """(moment, wall) of a movement w at every node; as strip.respond, with no load behind it.

    place: strip.Grid. stiff: s at every node [1]. conforming: moment at every node when w is nil.
    """
    k, t = place.k, place.t
    last = len(w) - 1
    moment = [0.0] * (last + 1)
    for i in range(1, last):
        moment[i] = conforming[i] - stiff[i] * k * (w[i - 1] - t * w[i] + w[i + 1])
    wall = []
    for i in range(last + 1):
        beside = (moment[i - 1] if i else 0.0) + (moment[i + 1] if i < last else 0.0)
        wall.append(k * (beside - t * moment[i]))
    return moment, wall
