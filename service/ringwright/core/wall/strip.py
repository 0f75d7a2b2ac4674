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

# nodes: how many. step: angle between two [rad]. k, t: see above.
Grid = namedtuple("Grid", ("nodes", "step", "k", "t"))

# Factor of a band matrix: L*diag*L' with two bands below the diagonal, the further one 1/diag.
Factor = namedtuple("Factor", ("diag", "near"))


def grid(turns, steps):
    """The Grid of a strip of `turns` whole turns cut into `steps` equal steps in all.

    turns: 1 or 2. steps: 8 or more.
    """
    step = 2.0 * math.pi * turns / steps
    half = math.sin(0.5 * step)
    # 2 - 2 cos(step), without the loss of digits of the subtraction
    return Grid(nodes=steps + 1, step=step, k=1.0 / (4.0 * half * half), t=2.0 * math.cos(step))


def _rows(t, values):
    """The rows of D'D/k^2 in groups: (values of those rows, diagonal, entry beside it).

    Two beside the diagonal every entry is 1.
    """
    square = t * t
    return (
        (values[:1], 1.0, -t),
        (values[1:2], square + 1.0, -2.0 * t),
        (values[2:-2], square + 2.0, -2.0 * t),
        (values[-2:-1], square + 1.0, -t),
        (values[-1:], 1.0, 0.0),
    )


def settle(place, right, spring):
    """w with (D'D/k^2 + spring)*w = right, nil at the nodes held still, as a list.

    place: Grid. right: right-hand side over k^2, one entry a node, None where the node is held
    still. spring: stiffness at every other node over k^2, above 0.
    """
    diag = []
    near = []
    back = []
    add_diag, add_near, add_back = diag.append, near.append, back.append
    diag_2 = diag_1 = RIGID
    near_1 = beside_1 = x_1 = x_2 = 0.0
    for rows, own, beside in _rows(place.t, right):
        own += spring
        for r in rows:
            if r is None:
                d = RIGID
                a = x = 0.0
            else:
                a = (beside_1 - near_1) / diag_1
                d = own - 1.0 / diag_2 - a * a * diag_1
                x = r - a * x_1 - x_2 / diag_2
            add_diag(d)
            add_near(a)
            add_back(x)
            diag_2 = diag_1
            diag_1 = d
            near_1 = a
            x_2 = x_1
            x_1 = x
            beside_1 = beside
    return _backwards(diag, near, back)


def _backwards(diag, near, back):
    diag = diag[:]
    diag.reverse()
    near = near[:]
    near.reverse()
    back.reverse()
    result = []
    add = result.append
    x_1 = x_2 = a_1 = 0.0
    for d, a, y in zip(diag, near, back):
        x = (y - x_2) / d - a_1 * x_1
        add(x)
        x_2 = x_1
        x_1 = x
        a_1 = a
    result.reverse()
    return result


def factor(place, springs):
    """The Factor of D'D/k^2 with a spring added at every node.

    place: Grid. springs: stiffness at each node over k^2, above 0.
    """
    diag = []
    near = []
    add_diag, add_near = diag.append, near.append
    diag_2 = diag_1 = RIGID
    near_1 = beside_1 = 0.0
    for rows, own, beside in _rows(place.t, springs):
        for spring in rows:
            a = (beside_1 - near_1) / diag_1
            d = own + spring - 1.0 / diag_2 - a * a * diag_1
            add_diag(d)
            add_near(a)
            diag_2 = diag_1
            diag_1 = d
            near_1 = a
            beside_1 = beside
    return Factor(diag, near)


def solve(found, right):
    """The solution of the factored system for one right-hand side, as a list.

    found: Factor. right: right-hand side over k^2, one number a node.
    """
    back = []
    add = back.append
    diag_2 = diag_1 = RIGID
    x_1 = x_2 = 0.0
    for r, d, a in zip(right, found.diag, found.near):
        x = r - a * x_1 - x_2 / diag_2
        add(x)
        x_2 = x_1
        x_1 = x
        diag_2 = diag_1
        diag_1 = d
    return _backwards(found.diag, found.near, back)


def respond(place, conforming, load, w):
    """(moment, wall) of a movement w at every node: bending moment, nil at both ends, and wall
    force.

    place: Grid. conforming: moment at every node when w is nil. load: outward load per radian. w: a
    number a node. moment is in the units of `conforming`, wall in the same per radian.
    """
    k = place.k
    t = place.t
    moment = [0.0]
    wall = []
    add_moment, add_wall = moment.append, wall.append
    w_2, w_1 = w[0], w[1]
    m_2 = m_1 = 0.0
    # The first node's share of the load is half a step; put right below, with the last.
    for f, w_0 in zip(conforming[1:-1], w[2:]):
        m = f - k * (w_2 - t * w_1 + w_0)
        add_moment(m)
        add_wall(load + k * (m_2 - t * m_1 + m))
        w_2 = w_1
        w_1 = w_0
        m_2 = m_1
        m_1 = m
    moment.append(0.0)
    wall.append(load + k * (m_2 - t * m_1))
    wall.append(0.5 * load + k * m_1)
    wall[0] -= 0.5 * load
    return moment, wall


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
