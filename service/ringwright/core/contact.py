"""Where a springy strip touches the wall, and how hard: minimise bending energy subject to w <= 0.

    minimise  1/2*w'*A*w - c'*w   subject to w <= 0        A = D'D, c = load + D'(conforming moment)

w is measured from the wall outwards, so -w is the light; the wall's force is c - A*w >= 0, and nil
wherever there is light. Two ways of solving it, both in passes of one band factorisation each:

* `_settled`: guess the nodes that touch, solve, release those that pull, add the crest of every
  stretch that has gone through the wall. Started from the answer on a grid half as fine it mostly
  ends in one to four passes, whatever the grid. It may run in circles, so its passes are few.
* `_interior`: Mehrotra's predictor-corrector interior-point method. Slower, but its passes (7 to 20)
  do not grow with the grid and it does not depend on guessing which nodes touch.

A slight foundation keeps the matrix definite where the ring may shift bodily at no cost (touching
at the ends of one diameter only); its reaction is taken out again afterwards.
"""

from collections import namedtuple

from .problems import NotConverged
from .strip import RIGID, factor, forces, grid, moments, solve

# Stiffness of the foundation; the ring's own softest bending, into an oval, is 9 in these units.
FOUNDATION = 1e-5
COARSEST = 24
SETTLE_FIRST = 30
SETTLE_FINER = 6
INTERIOR_PASSES = 60
# Interior-point accuracy: mean of light times force over their scale squared.
LOOSE = 1e-8
TIGHT = 1e-13
RESIDUAL = 1e-9
ROUNDING = 1.2e-14

# light: -w at every node. moment: at every node. wall: force on the wall per radian at every node,
# nil where there is light. touching: True at the nodes that touch. passes: band factorisations in
# all, as a fraction of one on this grid for those made on coarser ones.
Contact = namedtuple("Contact", ("light", "moment", "wall", "touching", "passes"))


def press(turns, conforming, load):
    """The Contact of a strip that the moment `conforming` would press to the wall everywhere.

    turns: 1 or 2. conforming: r^2*(curvature of the wall - free curvature) at every node, so many
    nodes as wanted [mm]. load: steam behind the strip, q*h*r_o*r^3/(E*I) per radian [mm].
    Forces come back in the same units, force per radian * r^3/(E*I) [mm].
    Raises NotConverged if neither method settles.
    """
    steps = len(conforming) - 1
    scale = max(max(conforming), -min(conforming), abs(load))
    if scale == 0.0:
        return Contact([0.0] * (steps + 1), [0.0] * (steps + 1), [0.0] * (steps + 1), [False] * (steps + 1), 0.0)
    strides = [1]
    while steps % (strides[-1] * 2) == 0 and steps // (strides[-1] * 2) >= COARSEST * turns:
        strides.append(strides[-1] * 2)
    strides.reverse()
    passes = 0.0
    touching = None
    for stride in strides:
        place = grid(turns, steps // stride)
        shape = conforming[::stride]
        if touching is None:
            touching = [True] * place.nodes
        else:
            touching = _finer(touching, wall)
        limit = SETTLE_FIRST if stride == strides[0] else SETTLE_FINER
        w, moment, wall, touching, used = _settled(place, shape, load, scale, touching, limit)
        passes += used / stride
        if w is None:
            w, moment, wall, touching, used = _interior(place, shape, load, scale)
            passes += used / stride
    return Contact(
        [-v if v < 0.0 else 0.0 for v in w],
        moment,
        [f if on and f > 0.0 else 0.0 for on, f in zip(touching, wall)],
        touching,
        passes,
    )


def _settled(place, conforming, load, scale, touching, limit):
    """(w, moment, wall, touching, passes); w is None where the guesses did not settle."""
    nodes = place.nodes
    square = place.k * place.k
    soft = FOUNDATION / square
    edge = [0.0] + conforming[1:-1] + [0.0]
    right = [f / square for f in forces(place, load, edge)]
    through = 1e-9 * scale
    for used in range(1, limit + 1):
        found = factor(place, [RIGID if on else soft for on in touching])
        w = solve(found, [0.0 if on else r for on, r in zip(touching, right)])
        w = [0.0 if on else v for on, v in zip(touching, w)]
        moment = moments(place, conforming, w)
        wall = forces(place, load, moment)
        pull = -(1e-9 * scale + ROUNDING * square * max(max(w), -min(w)))
        release = [i for i in range(nodes) if touching[i] and wall[i] < pull]
        add = _crests(w, through)
        if not release and not add:
            # What the foundation carried is given back to the ring.
            rest = [0.0 if on else r + soft * v for on, r, v in zip(touching, right, w)]
            w = solve(found, rest)
            w = [0.0 if on else v for on, v in zip(touching, w)]
            moment = moments(place, conforming, w)
            return w, moment, forces(place, load, moment), touching, used + 0.5
        touching = list(touching)
        for i in release:
            touching[i] = False
        for i in add:
            touching[i] = True
    return None, None, None, touching, limit


def _crests(w, through):
    """The highest node of every stretch that stands out beyond the wall."""
    crests = []
    best = None
    for i, v in enumerate(w):
        if v > through:
            if best is None or v > w[best]:
                best = i
        elif best is not None:
            crests.append(best)
            best = None
    if best is not None:
        crests.append(best)
    return crests


def _finer(touching, wall):
    """The nodes to start from on a grid of half the step.

    A touch of two nodes stands for a point between them: it starts as the two nodes about that point.
    """
    last = len(touching) - 1
    finer = [False] * (2 * last + 1)
    i = 0
    while i <= last:
        if not touching[i]:
            i += 1
            continue
        j = i
        while j < last and touching[j + 1]:
            j += 1
        if j - i == 1:
            both = wall[i] + wall[j]
            p = 2 * i + int(2.0 * wall[j] / both) if both > 0.0 else 2 * i
            finer[p] = True
            finer[min(p + 1, 2 * last)] = True
        else:
            for p in range(2 * i, 2 * j + 1):
                finer[p] = True
        i = j + 1
    return finer


def _interior(place, conforming, load, scale):
    """As _settled, by the interior-point method. Raises NotConverged.

    gap = -w and wall are both kept above nil; their products shrink together towards nil.
    """
    nodes = place.nodes
    square = place.k * place.k
    soft = FOUNDATION / square
    edge = [0.0] + conforming[1:-1] + [0.0]
    start = forces(place, load, edge)
    gap = [scale] * nodes
    wall = [scale] * nodes
    # Force that bending and foundation ask of the wall at this gap.
    asked = [f + FOUNDATION * scale for f in forces(place, load, moments(place, conforming, [-scale] * nodes))]
    unit = scale * scale
    aim = LOOSE
    for used in range(1, INTERIOR_PASSES + 1):
        ratio = [f / g for f, g in zip(wall, gap)]
        found = factor(place, [q / square + soft for q in ratio])
        move = solve(found, [-f / square for f in asked])
        push = [-f - q * d for f, q, d in zip(wall, ratio, move)]
        reach = min(_reach(gap, move), _reach(wall, push), 1.0)
        mean = _mean_product(gap, wall)
        ahead = _mean_product(
            [g + reach * d for g, d in zip(gap, move)], [f + reach * d for f, d in zip(wall, push)]
        )
        share = ahead / mean
        centre = share * share * share * mean
        correct = [(centre - d * e) / g for d, e, g in zip(move, push, gap)]
        move = solve(found, [(c - f) / square for c, f in zip(correct, asked)])
        push = [c - f - q * d for c, f, q, d in zip(correct, wall, ratio, move)]
        reach = min(0.9995 * min(_reach(gap, move), _reach(wall, push)), 1.0)
        gap = [g + reach * d for g, d in zip(gap, move)]
        wall = [f + reach * d for f, d in zip(wall, push)]
        w = [-g for g in gap]
        moment = moments(place, conforming, w)
        asked = [f + FOUNDATION * g for f, g in zip(forces(place, load, moment), gap)]
        off = max([abs(f - g) for f, g in zip(asked, wall)])
        mean = _mean_product(gap, wall)
        if mean <= aim * unit and off <= RESIDUAL * scale + ROUNDING * square * max(gap):
            touching = [f > g for f, g in zip(wall, gap)]
            if aim == LOOSE:
                exact = _settled(place, conforming, load, scale, touching, 3)
                used += exact[4]
                if exact[0] is not None:
                    return exact[0], exact[1], exact[2], exact[3], used
                aim = TIGHT
            else:
                return w, moment, wall, touching, used
    raise NotConverged(
        "contact with the wall",
        _mean_product(gap, wall) / unit,
        "below %g in %d passes" % (TIGHT, INTERIOR_PASSES),
        "contact",
    )


def _reach(values, change):
    """How much of the change leaves every value above nil."""
    worst = max([-d / v for v, d in zip(values, change)])
    return 1.0 / worst if worst > 0.0 else 1e30


def _mean_product(left, right):
    total = 0.0
    for a, b in zip(left, right):
        total += a * b
    return total / len(left)
