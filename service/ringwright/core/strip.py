"""A ring as one strip of equal steps from free end to free end: its bending, and the solving of it.

The unknown is w, the radial movement outwards. Bending follows w'' + w; on the grid

    (D w)_i = k*(w_(i-1) - t*w_i + w_(i+1))      t = 2*cos(step), k = 1/(2 - t)

which is exact for a circle that grows and for one that is shifted bodily, so forces found with it
balance to the last digits. D has a row for every inner node; the moment is zero at both free ends,
so the forces of a moment m are D'm, one for every node.
"""

import math
from collections import namedtuple

# Stiffness of a node that may not move. So stiff that its own movement is nil in doubles.
RIGID = 1e300

# nodes: how many. step: angle between two [rad]. k, t: see above. diagonal, beside: rows of D'D/k^2,
# on the diagonal and one beside it; two beside it every entry is 1.
Grid = namedtuple("Grid", ("nodes", "step", "k", "t", "diagonal", "beside"))

# Factor of a band matrix: L*diag*L' with two bands below the diagonal.
Factor = namedtuple("Factor", ("diag", "near", "far"))


def grid(turns, steps):
    """The Grid of a strip of `turns` whole turns cut into `steps` equal steps in all.

    turns: 1 or 2. steps: 8 or more.
    """
    step = 2.0 * math.pi * turns / steps
    half = math.sin(0.5 * step)
    t = 2.0 * math.cos(step)
    # 2 - 2 cos(step), without the loss of digits of the subtraction
    k = 1.0 / (4.0 * half * half)
    nodes = steps + 1
    diagonal = [t * t + 2.0] * nodes
    diagonal[0] = diagonal[-1] = 1.0
    diagonal[1] = diagonal[-2] = t * t + 1.0
    beside = [-2.0 * t] * nodes
    beside[0] = beside[-2] = -t
    return Grid(nodes, step, k, t, diagonal, beside)


def factor(place, springs):
    """The Factor of D'D/k^2 with a spring added at every node.

    place: Grid. springs: stiffness at each node over k^2, above 0; RIGID holds the node still.
    """
    diag = []
    near = []
    far = []
    diag_2 = diag_1 = RIGID
    near_1 = beside_1 = 0.0
    for own, spring, beside in zip(place.diagonal, springs, place.beside):
        b = 1.0 / diag_2
        a = (beside_1 - near_1) / diag_1
        d = own + spring - b - a * a * diag_1
        diag.append(d)
        near.append(a)
        far.append(b)
        diag_2 = diag_1
        diag_1 = d
        near_1 = a
        beside_1 = beside
    return Factor(diag, near, far)


def solve(found, right):
    """The solution of the factored system for one right-hand side, as a list.

    found: Factor. right: right-hand side over k^2, one number a node.
    """
    back = []
    x_1 = x_2 = 0.0
    for r, a, b in zip(right, found.near, found.far):
        x = r - a * x_1 - b * x_2
        back.append(x)
        x_2 = x_1
        x_1 = x
    back.reverse()
    result = []
    x_1 = x_2 = 0.0
    a = b_1 = b = 0.0
    for y, d, a_here, b_here in zip(back, reversed(found.diag), reversed(found.near), reversed(found.far)):
        x = y / d - a * x_1 - b * x_2
        result.append(x)
        x_2 = x_1
        x_1 = x
        a = a_here
        b = b_1
        b_1 = b_here
    result.reverse()
    return result


def moments(place, conforming, w):
    """Moment at every node for a movement w, in the units of `conforming`; nil at both ends.

    place: Grid. conforming: moment at every node when w is nil. w: a number a node.
    """
    k = place.k
    t = place.t
    m = [0.0]
    m.extend([f - k * (a - t * b + c) for f, a, b, c in zip(conforming[1:], w, w[1:], w[2:])])
    m.append(0.0)
    return m


def forces(place, load, moment):
    """What the wall must give at every node, in moment units per radian, for a moment along the strip.

    place: Grid. load: outward load per radian. moment: a number a node, nil at both ends.
    """
    k = place.k
    t = place.t
    f = [0.5 * load + k * moment[1]]
    f.extend([load + k * (a - t * b + c) for a, b, c in zip(moment, moment[1:], moment[2:])])
    f.append(0.5 * load + k * moment[-2])
    return f


def moments_of_forces(place, load, wall):
    """The moment at every node found from the forces alone, walking from the first free end.

    Independent of how w was found: at the far end both moment and shear must come out nil, which is
    the balance of force and moment of the whole strip. Returns a list one longer than the nodes:
    its last two entries are that far moment and one step beyond it.
    place: Grid. load: outward load per radian. wall: force of the wall at every node.
    """
    t = place.t
    over = 1.0 / place.k
    m = [0.0]
    before = here = 0.0
    last = len(wall) - 1
    for i, f in enumerate(wall):
        push = f - (0.5 * load if i == 0 or i == last else load)
        after = t * here - before + push * over
        m.append(after)
        before = here
        here = after
    return m
