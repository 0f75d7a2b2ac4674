"""A slender bar that may bend and twist without limit, on rigid things that it must not enter.

Written apart from the core, for its closed forms of rings: a chain of nodes, each with a place and
a rotation of its own; strains as those of the geometrically exact rod (Simo, 1985), one point to an
element, the rotation between two nodes shared evenly. Contact by penalty. Newton's method.

Frames: the columns of a rotation are outward, along the bar and sideways.
"""

from collections import namedtuple

import numpy as np
from scipy import sparse
from scipy.sparse.linalg import splu

MOST, TIGHT = 80, 1e-4  # steps; forces left over, of the largest in an element
STEP = 1e-6  # of the differences that give the tangent, of a radius of about 50

# Per element: length, chord and turn unstrained (in the frame half way), stiffnesses to shear,
# stretch and shear, to sideways bending, twist and bending in its plane.
Elements = namedtuple("Elements", ("length", "chord", "turned", "forces", "moments"))
# Points of the section that meet something: nodes, places in their frames, stiffness, a function
# from the places of all points to their depths (above 0 inside) and directions out, and over what
# depth contact begins softly.
Contact = namedtuple("Contact", ("node", "place", "stiffness", "depth", "soft"))
# Two nodes, kept this far apart along z, the first above the second.
Stacked = namedtuple("Stacked", ("upper", "lower", "apart", "stiffness", "soft"))


def skew(v):
    """Matrices of the cross product with each of the vectors v."""
    out = np.zeros(v.shape[:-1] + (3, 3))
    x, y, z = v[..., 0], v[..., 1], v[..., 2]
    out[..., 0, 1], out[..., 0, 2], out[..., 1, 2] = -z, y, -x
    out[..., 1, 0], out[..., 2, 0], out[..., 2, 1] = z, -y, x
    return out


def _angle(v):
    """Angle of each rotation vector, kept off nil; the series of what follows hold there."""
    return np.maximum(np.sqrt((v * v).sum(axis=-1)), 1e-3)[..., None, None]


def _fourth(v):
    t = _angle(v)
    return 1.0 / t**2 - (1.0 + np.cos(t)) / (2.0 * t * np.sin(t))


def _half_way(turned):
    """(rotation by half of each vector, half of how its own vector spreads the turn)."""
    v = 0.5 * turned
    s, t = skew(v), _angle(v)
    square = s @ s
    two = (1.0 - np.cos(t)) / t**2
    half = np.eye(3) + np.sin(t) / t * s + two * square
    return half, 0.5 * (np.eye(3) - two * s + (t - np.sin(t)) / t**3 * square)


def rotation(v):
    """Rotations by the vectors v."""
    s = skew(v)
    t = np.maximum(np.sqrt((v * v).sum(axis=-1)), 1e-9)[..., None, None]
    return np.eye(3) + np.sin(t) / t * s + 2.0 * (np.sin(0.5 * t) / t) ** 2 * (s @ s)


def vector_of(turn):
    """The rotation vectors of rotations well below half a turn."""
    twice = np.stack(
        [
            turn[..., 2, 1] - turn[..., 1, 2],
            turn[..., 0, 2] - turn[..., 2, 0],
            turn[..., 1, 0] - turn[..., 0, 1],
        ],
        axis=-1,
    )
    sine = 0.5 * np.sqrt(np.einsum("...i,...i->...", twice, twice))
    safe = np.where(sine < 1e-9, 1.0, sine)
    return (
        twice
        * np.where(sine < 1e-9, 0.5, np.arcsin(np.minimum(sine, 1.0)) / (2.0 * safe))[..., None]
    )


def strains(elements, chords, first, last):
    """(shear and stretch, curvature, B): B maps the 12 movements of each element to both.

    chords: from the first node of each to its last; first, last: rotations of these.
    """
    turned = vector_of(np.swapaxes(first, 1, 2) @ last)
    half, spread = _half_way(turned)
    middle = np.swapaxes(first @ half, 1, 2)
    per = 1.0 / elements.length[:, None, None]
    along = (middle @ chords[:, :, None])[:, :, 0] * per[:, :, 0]
    s = skew(turned)
    fourth = np.eye(3) + _fourth(turned) * (s @ s)
    left, right = fourth - 0.5 * s, fourth + 0.5 * s
    b = np.zeros((len(turned), 6, 12))
    b[:, :3, :3], b[:, :3, 6:9] = -middle * per, middle * per
    b[:, 3:, 3:6], b[:, 3:, 9:] = -left * per, right * per
    cross = skew(along)
    b[:, :3, 3:6] = cross @ (np.swapaxes(half, 1, 2) - spread @ left)
    b[:, :3, 9:] = cross @ spread @ right
    strained = along - elements.chord * per[:, :, 0]
    return strained, (turned - elements.turned) * per[:, :, 0], b


def _pulls(elements, chords, first, last):
    bent, curved, b = strains(elements, chords, first, last)
    acts = np.hstack([elements.forces * bent, elements.moments * curved]) * elements.length[:, None]
    return (acts[:, None, :] @ b)[:, 0, :]


def _stiffness(elements, chords, first, last):
    """(pulls on the 12 movements of each element, their slopes by differences)."""
    pulls = _pulls(elements, chords, first, last)
    blocks = np.zeros((len(pulls), 12, 12))
    for column in range(3):
        step = np.zeros(3)
        step[column] = STEP
        slope = (_pulls(elements, chords + step, first, last) - pulls) / STEP
        blocks[:, :, column], blocks[:, :, 6 + column] = -slope, slope
        turn = rotation(step)
        blocks[:, :, 3 + column] = (_pulls(elements, chords, first @ turn, last) - pulls) / STEP
        blocks[:, :, 9 + column] = (_pulls(elements, chords, first, last @ turn) - pulls) / STEP
    return pulls, blocks


def _pushes(contact, x, frames):
    """Force and moment (in the node's frame) that each point brings to its node."""
    turn = frames[contact.node]
    arm = np.einsum("nij,nj->ni", turn, contact.place)
    depth, out = contact.depth(x[contact.node] + arm)
    force = (contact.stiffness * soft(depth, contact.soft)[0])[:, None] * out
    inside = np.einsum("nji,nj->ni", turn, force)
    return np.hstack([force, np.cross(contact.place, inside)])


def soft(depth, width):
    """(depth above 0, slope), rounded where contact begins over about `width`."""
    within = np.clip(depth + width, 0.0, 2.0 * width)
    return within * within / (4.0 * width) + np.maximum(depth - width, 0.0), within / (2.0 * width)


def _moved(x, frames, column):
    """Places and frames after the smallest step of every node in one of its six movements."""
    step = np.zeros(3)
    step[column % 3] = STEP
    return (x + step, frames) if column < 3 else (x, frames @ rotation(step))


def system(elements, contacts, stacks, loads, x, frames, ground=None):
    """(residual, tangent, largest force or moment) of all that acts on the nodes, six to a node.

    ground: stiffness of weak springs, and where they would have the nodes.
    """
    size = len(x)
    residual = -loads.copy()
    rows, columns, entries = [], [], []
    pulls, blocks = _stiffness(elements, x[1:] - x[:-1], frames[:-1], frames[1:])
    residual[:-1] += pulls[:, :6]
    residual[1:] += pulls[:, 6:]
    base = 6 * np.arange(size - 1)[:, None] + np.arange(12)
    rows.append(np.repeat(base, 12, axis=1).ravel())
    columns.append(np.tile(base, (1, 12)).ravel())
    entries.append(blocks.ravel())
    if ground is not None:
        residual[:, :3] += ground[0] * (x - ground[1])
        places = (6 * np.arange(size)[:, None] + np.arange(3)).ravel()
        rows.append(places)
        columns.append(places)
        entries.append(np.full(3 * size, ground[0]))
    for contact in contacts:
        pushes = _pushes(contact, x, frames)
        np.add.at(residual, contact.node, -pushes)
        there = np.zeros((len(pushes), 6, 6))
        for column in range(6):
            more = _pushes(contact, *_moved(x, frames, column))
            there[:, :, column] = -(more - pushes) / STEP
        base = 6 * contact.node[:, None] + np.arange(6)
        rows.append(np.repeat(base, 6, axis=1).ravel())
        columns.append(np.tile(base, (1, 6)).ravel())
        entries.append(there.ravel())
    for stack in stacks:
        depth = stack.apart - (x[stack.upper, 2] - x[stack.lower, 2])
        push, slope = (stack.stiffness * part for part in soft(depth, stack.soft))
        np.add.at(residual[:, 2], stack.upper, -push)
        np.add.at(residual[:, 2], stack.lower, push)
        up, low = 6 * stack.upper + 2, 6 * stack.lower + 2
        rows += [up, low, up, low]
        columns += [up, low, low, up]
        entries += [slope, slope, -slope, -slope]
    tangent = sparse.csc_matrix(
        (np.concatenate(entries), (np.concatenate(rows), np.concatenate(columns))),
        shape=(6 * size, 6 * size),
    )
    return residual, tangent, np.abs(pulls).max()


def energy(elements, contacts, stacks, loads, x, frames, ground=None):
    """Of everything whose forces `system` adds up; loads are forces alone."""
    bent, curved, _ = strains(elements, x[1:] - x[:-1], frames[:-1], frames[1:])
    held = elements.forces * bent**2 + elements.moments * curved**2
    total = 0.5 * (elements.length @ held).sum() - (loads[:, :3] * x).sum()
    for contact in contacts:
        arm = np.einsum("nij,nj->ni", frames[contact.node], contact.place)
        depth = contact.depth(x[contact.node] + arm)[0]
        total += (contact.stiffness * _stored(depth, contact.soft)).sum()
    for stack in stacks:
        depth = stack.apart - (x[stack.upper, 2] - x[stack.lower, 2])
        total += (stack.stiffness * _stored(depth, stack.soft)).sum()
    if ground is not None:
        total += 0.5 * ground[0] * ((x - ground[1]) ** 2).sum()
    return total


def _stored(depth, width):
    within = np.clip(depth + width, 0.0, 2.0 * width)
    whole = np.maximum(depth, width)
    return within**3 / (12.0 * width) + 0.5 * (whole * whole - width * width)


def settled(elements, x, frames, contacts=(), stacks=(), loads=None, held=(), ground=None):
    """(x, frames) at rest. held: numbers of the movements that stay as they are, six to a node.

    Newton's step, shortened until the energy falls. Raises ArithmeticError.
    """
    loads = np.zeros((len(x), 6)) if loads is None else loads
    free = np.setdiff1d(np.arange(6 * len(x)), np.asarray(held, dtype=int))
    acts = (elements, contacts, stacks, loads)
    before = energy(*acts, x, frames, ground)
    stiffer = 0.0
    for _ in range(MOST):
        residual, tangent, acting = system(*acts, x, frames, ground)
        left = residual.ravel()[free]
        inner = tangent[free][:, free].tocsc()
        if stiffer:
            inner = inner + stiffer * sparse.diags(np.abs(inner.diagonal()))
        move = np.zeros(6 * len(x))
        move[free] = splu(inner.tocsc()).solve(-left)
        if move[free] @ left > 0.0:
            stiffer = max(4.0 * stiffer, 1e-4)
            continue
        move = move.reshape(-1, 6)
        largest = max(np.abs(move[:, 3:]).max() / 0.2, np.abs(move[:, :3]).max() / 4.0)
        share = 1.0 / max(1.0, largest)
        for _ in range(8):
            there = x + share * move[:, :3], frames @ rotation(share * move[:, 3:])
            after = energy(*acts, *there, ground)
            if after <= before + 1e-9 * abs(before):
                break
            share *= 0.5
        else:
            stiffer = max(10.0 * stiffer, 1e-4)
            if stiffer < 1e3:
                continue
        stiffer *= 0.2 if share > 0.4 else 1.0
        stiffer = stiffer if stiffer > 1e-6 else 0.0
        (x, frames), before = there, after
        if largest < 1e-7 or np.abs(left).max() <= TIGHT * acting and largest < 1e-1:
            return x, frames
    raise ArithmeticError("not at rest: %.3g" % (np.abs(left).max() / acting))
