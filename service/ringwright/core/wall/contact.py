"""Where a springy strip touches the wall, and how hard: minimise bending energy subject to w <= 0.

    minimise  1/2*w'*A*w - c'*w   subject to w <= 0        A = D'D, c = load + D'(conforming moment)

w is measured from the wall outwards, so -w is the light; the wall's force is c - A*w >= 0, and nil
wherever there is light. Two ways of solving it, both in passes of one band factorisation each:

* `_settled`: guess the nodes that touch, solve, release those that pull, add the crest of every
  stretch that has gone through the wall. Started from the answer on a grid half as fine it mostly
  ends in one to four passes, whatever the grid. It may run in circles, so its passes are few.
* `_interior`: Mehrotra's predictor-corrector interior-point method. Slower, but its 7 to 20
passes do
  not grow with the grid either, and it guesses nothing.

A slight foundation keeps the matrix definite where the ring may shift bodily at no cost (touching
at the ends of one diameter only); where it carries anything that counts, that is given back.
"""

from collections import namedtuple

from ..problems import NotConverged
from . import uneven
from .strip import factor, grid, respond, settle, solve

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
# What the foundation may carry of the largest moment before it is given back to the ring.
CARRIED = 2e-6

# light: -w at every node. moment: at every node. wall: force on the wall per radian at every node,
# nil where there is light. touching: True at the nodes that touch. passes: band factorisations in
# all, as a fraction of one on this grid for those made on coarser ones.
Contact = namedtuple("Contact", ("light", "moment", "wall", "touching", "passes"))


# Sizes that movement and force are judged by: a ring that steam holds down moves far less than the
# steam's force would suggest.
Scale = namedtuple("Scale", ("move", "force"))


def press(turns, conforming, load, stiff=None):
    """The Contact of a strip that the moment `conforming` would press to the wall everywhere.

    turns: 1 or 2. conforming: r^2*(curvature of the wall - free curvature) at every node, so many
    nodes as wanted [mm]. load: steam behind the strip, q*h*r_o*r^3/(E*I) per radian [mm].
    stiff: bending stiffness at every node over E*I, of a strip whose thickness varies [1]; such a
    strip takes no load. Forces come back in the same units, force per radian * r^3/(E*I) [mm].
    Raises NotConverged if neither method settles.
    """
    steps = len(conforming) - 1
    bend = max(max(conforming), -min(conforming))
    scale = Scale(bend if bend > 0.0 else abs(load), max(bend, abs(load)))
    if scale.force == 0.0:
        nil = [0.0] * (steps + 1)
        return Contact(light=nil, moment=nil, wall=nil, touching=[False] * (steps + 1), passes=0.0)
    strides = [1]
    while steps % (strides[-1] * 2) == 0 and steps // (strides[-1] * 2) >= COARSEST * turns:
        strides.append(strides[-1] * 2)
    strides.reverse()
    passes = 0.0
    touching = wall = None
    for stride in strides:
        place = grid(turns, steps // stride)
        shape = conforming[::stride]
        if touching is None:
            touching = [True] * place.nodes
        else:
            touching = _finer(touching, wall)
        limit = SETTLE_FIRST if stiff or stride == strides[0] else SETTLE_FINER
        along = stiff and stiff[::stride]
        strip = (place, shape, load, along)
        w, moment, wall, touching, used = _settled(strip, scale, touching, limit)
        passes += used / stride
        if w is None and along:
            if stride > 1:
                continue
            raise NotConverged("contact with the wall", used, "%d passes" % limit, "contact")
        if w is None:
            w, moment, wall, touching, used = _interior(place, shape, load, scale)
            passes += used / stride
    return Contact(
        light=[-v if v < 0.0 else 0.0 for v in w],
        moment=moment,
        wall=[f if on and f > 0.0 else 0.0 for on, f in zip(touching, wall)],
        touching=touching,
        passes=passes,
    )


def _settled(strip, scale, touching, limit):
    """(w, moment, wall, touching, passes); w is None where the guesses did not settle."""
    place, conforming, load, stiff = strip
    nodes = place.nodes
    square = place.k * place.k
    soft = FOUNDATION / square

    def moved(right):
        w = uneven.settle(place, stiff, right, soft) if stiff else settle(place, right, soft)
        return (w,) + answered(w)

    def answered(w):
        if stiff:
            return uneven.respond(place, stiff, conforming, w)
        return respond(place, conforming, load, w)

    right = [f / square for f in answered([0.0] * nodes)[1]]
    through = 1e-9 * scale.move
    for used in range(1, limit + 1):
        w, moment, wall = moved([None if on else r for on, r in zip(touching, right)])
        highest, lowest = max(w), min(w)
        pull = -(1e-9 * scale.force + ROUNDING * square * max(highest, -lowest))
        release = [i for i in range(nodes) if wall[i] < pull and touching[i]]
        add = _crests(w, through) if highest > through else ()
        if not release and not add:
            if FOUNDATION * -lowest > CARRIED * scale.force:
                rest = [None if on else r + soft * v for on, r, v in zip(touching, right, w)]
                w, moment, wall = moved(rest)
                used += 1
            return w, moment, wall, touching, used
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

    A touch of two nodes stands for a point between them: it starts as the two about that point.
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
    gap = [scale.move] * nodes
    wall = [scale.force] * nodes
    # Force that bending and foundation ask of the wall at this gap.
    asked = respond(place, conforming, load, [-scale.move] * nodes)[1]
    asked = [f + FOUNDATION * scale.move for f in asked]
    unit = scale.move * scale.force
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
        moment, asked = respond(place, conforming, load, w)
        asked = [f + FOUNDATION * g for f, g in zip(asked, gap)]
        off = max([abs(f - g) for f, g in zip(asked, wall)])
        mean = _mean_product(gap, wall)
        if mean <= aim * unit and off <= RESIDUAL * scale.force + ROUNDING * square * max(gap):
            touching = [f > g for f, g in zip(wall, gap)]
            if aim == LOOSE:
                exact = _settled((place, conforming, load, None), scale, touching, 3)
                used += exact[4]
                if exact[0] is not None:
                    return exact[0], exact[1], exact[2], exact[3], used
                aim = TIGHT
            else:
                return w, moment, wall, touching, used
    raise NotConverged(
        "contact with the wall",
        _mean_product(gap, wall) / unit,
        "1e-13 within %d passes" % INTERIOR_PASSES,
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
