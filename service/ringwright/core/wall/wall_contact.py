"""How a ring bears on the wall of its cylinder: pressure, light, moment and stress along its strip.

contact.py solves in the strip's own units; here they become N, MPa and mm, the concentrated
forces at tips and where contact begins are told apart from the spread pressure, and every answer
is checked for balance of force and moment before it is let out.

The bending is that of a thin ring whose place is nearly a circle. How far that holds: the closed
ring *is* nearly a circle however far it springs, so it is the hoop thrust, left out of the
bending, that limits it, in proportion to kappa0*r (see LARGEST_CHECKED).
"""

import math
from collections import namedtuple

from ..problems import NotConverged
from ..records import Method
from .contact import press
from .strip import grid, moments_of_forces

# Share of its curvature that a ring gives up in the bore, up to which a strip that bends without
# limit agrees within 1 % (light 2 %; tests/published/test_large_deflection.py).
LARGEST_CHECKED = 0.15
# Imbalance let through, over the largest moment there is.
BALANCE = 1e-5
# Pressure over the mean below which the ring counts as not pressing.
PRESSING = 1e-4
# A force stands out as concentrated when it is so many times what its neighbours carry.
CONCENTRATED = 3.0
# Where contact begins any force beyond the pressure is concentrated; this much is the grid's own
# blur.
EDGE_FORCE = 0.25

# Ring to be borne: turn_width is that of one turn. pressures: steam behind and on the face, gauge
# [MPa].
Ring = namedtuple(
    "Ring",
    ("bore", "thickness", "turn_width", "modulus", "turns", "back_pressure", "face_pressure"),
)

# A concentrated force of the ring on the wall: place along the strip [rad], size [N].
Point = namedtuple("Point", ("place", "force"))
# A length of the strip that presses [rad].
Stretch = namedtuple("Stretch", ("start", "end"))

# pressure, light, moment: lists along the strip [MPa, mm, N mm], concentrated forces left out of
# the pressure. tension, compression: the largest of the skin [MPa]. points: list of Point.
# stretches: list of Stretch. total: all the outward force, N. mean_pressure, contact_pressure,
# widest_light, light_place [rad], slack: list of two, behind each free end [rad]; contact_share,
# sealed_share.
Bearing = namedtuple(
    "Bearing",
    (
        "step", "pressure", "light", "moment", "tension", "compression", "points", "stretches",
        "total", "mean_pressure", "contact_pressure", "largest_pressure", "widest_light",
        "light_place", "slack", "tip_forces", "contact_share", "sealed_share", "passes",
    ),
)  # fmt: skip


def bear(ring, conforming, thicknesses=None):
    """The Bearing of a Ring.

    ring: Ring. conforming: moment that would press it to the wall everywhere, at every node of its
    strip from free end to free end [mm]: r^2*(curvature of the wall - free curvature).
    thicknesses: at every node, of a ring of uneven thickness without steam behind it [mm].
    Raises NotConverged where the contact does not settle or does not balance.
    """
    r = 0.5 * (ring.bore - ring.thickness)
    steps = len(conforming) - 1
    place = grid(ring.turns, steps)
    inertia = ring.turn_width * ring.thickness * ring.thickness * ring.thickness / 12.0
    bending = ring.modulus * inertia
    force_unit = bending / (r * r * r)
    face = 0.5 * ring.bore * ring.turn_width
    load = (ring.back_pressure - ring.face_pressure) * face / force_unit
    shares = thicknesses and [a / ring.thickness for a in thicknesses]
    if shares:
        conforming = [s * s * s * f for s, f in zip(shares, conforming)]
    found = press(ring.turns, conforming, load, shares and [s * s * s for s in shares])
    _check_balance(place, conforming, load, found)

    total = 0.0
    for f in found.wall:
        total += f
    total = total * place.step
    mean = total / (steps * place.step)
    wall = [f if f > PRESSING * mean else 0.0 for f in found.wall]
    spread, points, stretches = _told_apart(place, wall)
    moment_unit = bending / (r * r)
    moment = [m * moment_unit for m in found.moment]
    skin = [m / (s * s) for m, s in zip(moment, shares)] if shares else moment
    tension, compression = _skin(ring, r, max(skin), min(skin))
    pressure = [f * force_unit / face for f in spread]
    light = found.light
    widest = max(light)
    points = [Point(at, f * force_unit) for at, f in points]
    whole = steps * place.step
    pressing = 0.0
    carried = 0.0
    for a, b in stretches:
        pressing += b - a
    for f in spread:
        carried += f
    contact_pressure = carried * place.step * force_unit / (face * pressing) if pressing else 0.0
    return Bearing(
        step=place.step,
        pressure=pressure,
        light=light,
        moment=moment,
        tension=tension,
        compression=compression,
        points=points,
        stretches=stretches,
        total=total * force_unit,
        mean_pressure=mean * force_unit / face,
        contact_pressure=contact_pressure,
        largest_pressure=max(pressure),
        widest_light=widest,
        light_place=_first_widest(light, widest) * place.step,
        slack=_slack(stretches, whole),
        tip_forces=[_at_tip(points, 0.0), _at_tip(points, whole)],
        contact_share=pressing / whole,
        sealed_share=_sealed(stretches),
        passes=found.passes,
    )


def _check_balance(place, conforming, load, found):
    """Raises NotConverged unless the wall's forces alone give the moments that bending gives."""
    along = moments_of_forces(place, load, found.wall)
    worst = max([abs(a - b) for a, b in zip(along, found.moment)])
    worst = max(worst, abs(along[-1]), abs(along[-2]))
    size = max(max(conforming), -min(conforming), abs(load), 1e-300)
    if not worst <= BALANCE * size:
        raise NotConverged(
            "balance of the ring", worst / size, "1e-5 of the largest moment", "contact"
        )


def _told_apart(place, wall):
    """(spread, points, stretches): concentrated forces taken out of a row of nodal forces.

    The grid shares a force that falls between two nodes among them, so force and its moment over
    the two nodes of an edge tell the size of the force and where contact begins.
    """
    nodes = len(wall)
    step = place.step
    spread = list(wall)
    points = []
    edges = []
    i = 0
    while i < nodes:
        if wall[i] == 0.0:
            i += 1
            continue
        j = i
        while j + 1 < nodes and wall[j + 1] > 0.0:
            j += 1
        _one_run(wall, spread, points, edges, i, j, step, nodes - 1)
        i = j + 1
    return spread, points, edges


def _one_run(wall, spread, points, stretches, i, j, step, last):
    """Takes apart the pressing nodes i..j; appends to spread, points, stretches.

    One or two nodes are a touch of a point; three or four are too few to tell pressure from force.
    """
    if j - i < 2:
        total = wall[i] + (wall[j] if j > i else 0.0)
        share = wall[j] / total if j > i else 0.0
        spread[i] = spread[j] = 0.0
        points.append(Point((i + share) * step, total * step))
        return
    if j - i < 4:
        start = max(i - 0.5, 0.0) * step
        stretches.append(Stretch(start, min(j + 0.5, float(last)) * step))
        return
    start = i * step
    end = j * step
    if i == 0:
        _take_end(wall, spread, points, 0, 1, 2, step, start)
    else:
        start = _take_edge(wall, spread, points, i, 1, step)
    _take_inner(wall, spread, points, i + 2, j - 2, step)
    if j == last:
        _take_end(wall, spread, points, last, last - 1, last - 2, step, end)
    else:
        end = _take_edge(wall, spread, points, j, -1, step)
    stretches.append(Stretch(start, end))


def _take_end(wall, spread, points, tip, next_in, further, step, at):
    """At a free end the node stands for half a step; what is beyond that is the tip's own force."""
    pressure = 2.0 * wall[next_in] - wall[further]
    pressure = pressure if pressure > 0.0 else 0.0
    excess = wall[tip] - 0.5 * pressure
    if excess > 0.5 * pressure:
        points.append(Point(at, excess * step))
        spread[tip] = 0.5 * pressure


def _take_edge(wall, spread, points, first, way, step):
    """Where contact begins; the first two nodes carry its force and the pressure up to it."""
    pressure = wall[first + 2 * way]
    outer, inner = wall[first] * step, wall[first + way] * step
    total = outer + inner
    lever = (1.5 * outer + 0.5 * inner) * step
    root = total * total - 2.0 * pressure * lever
    if pressure * step > 1e-9 * total and root > 0.0:
        reach = (total - math.sqrt(root)) / pressure
    else:
        reach = lever / total
    reach = min(max(reach, 0.0), 2.0 * step)
    force = total - pressure * reach
    edge = (first + 1.5 * way) * step - way * reach
    if force > EDGE_FORCE * pressure * step:
        points.append(Point(edge, force))
        left = pressure * reach / step
        spread[first + way] = min(left, pressure)
        spread[first] = max(left - pressure, 0.0)
    return edge


def _take_inner(wall, spread, points, first, last, step):
    """A force within a stretch: where a light-tight ring changes from slack to pressing."""
    p = first
    while p < last:
        both = wall[p] + wall[p + 1]
        beside = max(wall[p - 1], wall[p + 2])
        if both > (CONCENTRATED + 2.0) * beside:
            pressure = 0.5 * (wall[p - 1] + wall[p + 2])
            force = both - 2.0 * pressure
            at = (p * (wall[p] - pressure) + (p + 1) * (wall[p + 1] - pressure)) / force
            points.append(Point(at * step, force * step))
            spread[p] = spread[p + 1] = pressure
            p += 1
        p += 1


def _skin(ring, r, largest, least):
    """(tension, compression) of the skin at their greatest; curvature, thrust and steam in."""
    a = ring.thickness
    bent = 6.0 / (ring.turn_width * a * a)
    thrust = 1.0 / (r * ring.turn_width * a)
    outside = bent * (1.0 - a / (3.0 * r)) - thrust
    inside = bent * (1.0 + a / (3.0 * r)) + thrust
    steam = ring.back_pressure
    tension = max(largest * outside, -least * inside) - steam
    return max(tension, 0.0), max(largest * inside, -least * outside) + steam


def _first_widest(light, widest):
    """The node nearest the first tip where the light is widest; a symmetrical ring has two."""
    for i, w in enumerate(light):
        if w >= widest * (1.0 - 1e-6):
            return i
    return 0


def _slack(stretches, whole):
    """Length behind each free end that does not press (a touch of the tip itself apart) [rad]."""
    if not stretches:
        return [whole, whole]
    return [stretches[0].start, whole - stretches[-1].end]


def _at_tip(points, place):
    force = 0.0
    for point in points:
        if abs(point.place - place) < 1e-9:
            force += point.force
    return force


def _sealed(stretches):
    """Share of the circumference where at least one turn presses."""
    turn = 2.0 * math.pi
    pieces = []
    for start, end in stretches:
        while end > turn * (1.0 + 1e-12):
            if start < turn:
                pieces.append((start, turn))
                start = turn
            start -= turn
            end -= turn
        pieces.append((start, end))
    pieces.sort()
    covered = 0.0
    reach = 0.0
    for start, end in pieces:
        if end > reach:
            covered += end - max(start, reach)
            reach = end
    return covered / turn


METHODS = (
    Method(
        "wall-contact",
        "How the ring bears on the wall",
        "minimise E I/(2 r^3) integral (w'' + w - r^2 kappa0(psi))^2 dpsi - load, w within the "
        "wall",
        "thin ring, no friction; kappa0 r up to 0.15 within 1 % of a strip that bends without "
        "limit",
        ("contact", "mehrotra"),
    ),
    Method(
        "wall-stress",
        "Stress along the ring in the bore",
        "6 M/(h a^2) (1 -/+ a/(3 r)) - M/(r h a) - q",
        "d1/a1 from 15 to 40, within 1.3 % of solid finite elements",
        ("beam",),
    ),
)
