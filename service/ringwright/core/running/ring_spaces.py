"""Pressures between rings over a turn of the crank: each space fills and empties by the gaps.

Rings are openings in a row with small spaces between. Where a space fills many times in a turn, the
flow is steady at each moment and the last ring, whose outlet is choked, takes most of the drop.
Where it fills slowly its pressure stands still, and the rings at the two ends of a double-acting
piston take all of the swing by turns, however many stand between.
"""

import math
from collections import namedtuple

from ..records import Method
from . import leak, steam_cycle

STEPS = 36  # crank positions to a turn
TURNS = 12  # that are followed until the turn repeats itself
SETTLED = 1e-3  # change from turn to turn, as a share of the pressure

# differences: pressure across each ring, from the first on, mean over the distance slid [MPa].
# flow: mean of what goes in by the first ring, over its area and sqrt(1/(p v)) [MPa].
Split = namedtuple("Split", ("differences", "flow"))

METHODS = (
    Method(
        "ring-spaces",
        "Pressure drop from ring to ring",
        "dp_i/dt = sqrt(p v) A/V (q_in - q_out), q = p_high times the flow number, over a turn",
        "p v constant; rings alike; spaces one land and one groove each; gaps alone",
        ("orifice", "hyperbolic"),
    ),
)


def ends(stated, double_acting, atmosphere):
    """(pressure before the first ring, after the last) for each step of a turn [MPa].

    stated: steam_cycle.Cycle. double_acting: True or False. atmosphere: absolute [MPa].
    Source: the stated cycle, the piston in simple harmonic motion.
    """
    rows = []
    for step in range(STEPS):
        angle = 2.0 * math.pi * (step + 0.5) / STEPS
        travel = 0.5 * (1.0 - math.cos(angle))
        out, back = steam_cycle.pressure_outward, steam_cycle.pressure_returning
        if angle < math.pi:
            one = out(stated, travel)
            other = back(stated, travel)
        else:
            one = back(stated, 1.0 - travel)
            other = out(stated, 1.0 - travel)
        rows.append((one, other if double_acting else atmosphere))
    return rows


def pull(before, after, law):
    """q: flow through an opening over A and sqrt(1/(p v)), against the pressures' sense [MPa].

    before, after: absolute [MPa]. law: (exponent k, critical ratio, flow number there).
    """
    if before < after:
        return -pull(after, before, law)
    k, critical, choked = law
    ratio = after / before
    return before * (choked if ratio <= critical else leak.flow_number(ratio, k))


def split(pressures, rings, k, fillings):
    """How `rings` like rings share the pressures of a turn, and what passes them: a Split.

    Implicit in time, each opening as a conductance q/(p_i - p_(i+1)) found anew within the step.
    pressures: of `ends`. rings: 1 or more. k: exponent [1]. fillings: sqrt(p v) A T/V, how often
    a space fills in a turn [1].
    Source: mass balance of each space; scipy in tests/core/test_ring_pack.py.
    """
    spaces = rings - 1
    critical = leak.critical_ratio(k)
    law = (k, critical, leak.flow_number(critical, k))
    high = max([max(pair) for pair in pressures])
    mean = [sum_of([pair[side] for pair in pressures]) / STEPS for side in (0, 1)]
    # A space between like ends stands where it takes in what it gives off.
    low, top = min(mean), high
    for _ in range(9 if spaces else 0):
        middle = 0.5 * (low + top)
        taken = sum_of([pull(one, middle, law) - pull(middle, two, law) for one, two in pressures])
        low, top = (middle, top) if taken > 0.0 else (low, middle)
    held = [low] * spaces
    step = fillings / STEPS
    for _ in range(TURNS):
        began = list(held)
        across = [0.0] * rings
        flow = weight = 0.0
        for at, (one, two) in enumerate(pressures):
            held = _step(held, one, two, law, step)
            row = [one] + held + [two]
            slid = abs(math.sin(2.0 * math.pi * (at + 0.5) / STEPS))
            weight += slid
            for ring in range(rings):
                across[ring] += slid * abs(row[ring] - row[ring + 1])
            flow += max(pull(one, row[1], law), 0.0)
        moved = [abs(new - old) for new, old in zip(held, began)]
        if not moved or max(moved) < SETTLED * high:
            break
    return Split(differences=[one / weight for one in across], flow=flow / STEPS)


def _step(held, one, two, law, step):
    """Pressures of the spaces a step later: a row of equations, each with its neighbours alone."""
    now = held
    for _ in range(2):
        row = [one] + now + [two]
        leads = []
        for first, second in zip(row, row[1:]):
            off = first - second
            if abs(off) < 1e-4 * first:
                off = 1e-4 * first
                second = first - off
            leads.append(step * pull(first, second, law) / off)
        # Thomas: down, then up.
        upper, right = [], []
        for at, old in enumerate(held):
            left = leads[at]
            main = 1.0 + left + leads[at + 1]
            known = old + (left * one if at == 0 else left * right[at - 1])
            main -= left * upper[at - 1] if at else 0.0
            if at == len(held) - 1:
                known += leads[at + 1] * two
            upper.append(leads[at + 1] / main)
            right.append(known / main)
        now = list(right)
        for at in range(len(now) - 2, -1, -1):
            now[at] += upper[at] * now[at + 1]
    return now


def sum_of(numbers):
    """Sum in order, alike in both engines. numbers: a list."""
    total = 0.0
    for one in numbers:
        total += one
    return total
