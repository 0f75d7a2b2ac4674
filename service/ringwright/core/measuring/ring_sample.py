"""One ring made with some inputs off, and a fixed sample of many with all of them off at once."""

import math
from collections import namedtuple

from ..problems import OutOfRange
from ..ring import blank, heat_set, spring
from ..ring.allowances import CUT_ANGLES

# Normal deviate that holds 95 % between plus and minus.
WITHIN_95 = 1.959964
# Rings tried: a fixed sample of evenly scattered points, not chance.
SAMPLE = 1200

# What came of one ring: mean wall pressure [MPa], gap in the bore and free [mm].
Outcome = namedtuple("Outcome", ("wall_pressure", "closed_gap", "free_gap"))
# Limits that a ring must keep [MPa, mm].
Limits = namedtuple(
    "Limits", ("lowest_pressure", "highest_pressure", "lowest_closed_gap", "highest_closed_gap")
)


def outcome(design, shifts):
    """The Outcome of one ring made to a Design's tools, some inputs off by so much.

    design: design.Design. shifts: dict of input -> how far it is off, in its own unit; absent 0.
    The tools stay as designed: a thicker ring is one bored smaller; a wider saw cut, a larger
    bore and an outside turned small all open the gap; the metal springs by its own modulus and
    relief.
    """
    d = design
    bore = d.duty.bore + shifts.get("bore", 0.0)
    extra = shifts.get("radial_thickness", 0.0)
    turned = shifts.get("outside", 0.0)
    thickness = max(d.section.thickness + extra + 0.5 * turned, 0.2 * d.section.thickness)
    modulus = max(d.duty.modulus + shifts.get("modulus", 0.0), 0.2 * d.duty.modulus)
    relief = min(max(d.soak.relief.likely + shifts.get("relief", 0.0), 0.01), 1.0)
    # A saw that cuts wider takes that over sin A out of the ring, along the circumference.
    kerf = blank.end_kerf(
        saw_thickness=shifts.get("end_kerf", 0.0), angle=CUT_ANGLES[d.duty.end_cut]
    )
    closed = d.duty.closed_gap + kerf + math.pi * (shifts.get("bore", 0.0) - turned)
    tool = shifts.get("tool", 0.0)
    if d.spring.former_diameter is None:
        gap = heat_set.gap_from_spacer(
            d.spring.spacer_width + tool, d.allowances.gap_kerf + kerf, closed, relief
        )
        if gap <= 0.0:
            return Outcome(0.0, closed, closed + gap)
        try:
            pressure = spring.pressure_from_gap(gap, bore, thickness, modulus)
        except OutOfRange:
            # Past straight at the back: no such ring, and stiffer than any limit.
            pressure = modulus
        return Outcome(pressure, closed, closed + gap)
    set_thickness = d.blank.set_thickness + extra
    bored = d.blank.bored_radius - 0.5 * extra
    former = 0.5 * (d.spring.former_diameter + tool) * d.former_growth + 0.5 * set_thickness
    inwards = (
        0.5 * (d.blank.set_thickness - d.section.thickness - 0.5 * turned) - d.allowances.inside
    )
    free = heat_set.set_radius(bored, former, relief) - inwards
    change = 2.0 / (bore - thickness) - 1.0 / free
    share = d.spring.wall_pressure / heat_set.contact_pressure(
        d.spring.curvature_change, d.duty.bore, d.section.thickness, d.duty.modulus
    )
    pressure = share * heat_set.contact_pressure(change, bore, thickness, modulus)
    gap = heat_set.gap_of_curvature(change, bore, thickness, d.duty.setting, d.duty.turns)
    return Outcome(max(pressure, 0.0), closed, closed + gap)


# share: of rings within all limits. pressure_lost, gap_lost: shares outside either. low, high:
# Outcome, 2.5 % of rings lie below and above.
Sampled = namedtuple("Sampled", ("share", "pressure_lost", "gap_lost", "low", "high"))


def sample(design, spreads, limits):
    """The Sampled of SAMPLE rings with all inputs off at once.

    design: design.Design. spreads: OrderedDict of input -> spread, 95 %. limits: Limits.
    The points are a Kronecker sequence on the generalised golden ratio of as many dimensions as
    there are inputs: the same for every request, and evener than chance.
    """
    names = list(spreads)
    steps = _golden_steps(len(names))
    within = pressure_lost = gap_lost = 0
    columns = ([], [], [])
    for i in range(1, SAMPLE + 1):
        shifts = {}
        for name, step in zip(names, steps):
            place = 0.5 + i * step
            shifts[name] = spreads[name] / WITHIN_95 * normal_deviate(place - math.floor(place))
        ring = outcome(design, shifts)
        for column, value in zip(columns, ring):
            column.append(value)
        presses = limits.lowest_pressure <= ring.wall_pressure <= limits.highest_pressure
        fits = limits.lowest_closed_gap <= ring.closed_gap <= limits.highest_closed_gap
        within += 1 if presses and fits else 0
        pressure_lost += 0 if presses else 1
        gap_lost += 0 if fits else 1
    low = []
    high = []
    for column in columns:
        column.sort()
        low.append(column[SAMPLE // 40])
        high.append(column[SAMPLE - 1 - SAMPLE // 40])
    return Sampled(
        share=within / SAMPLE,
        pressure_lost=pressure_lost / SAMPLE,
        gap_lost=gap_lost / SAMPLE,
        low=Outcome(low[0], low[1], low[2]),
        high=Outcome(high[0], high[1], high[2]),
    )


def _golden_steps(count):
    """1/g, 1/g^2, ... with g the root of g^(count + 1) = g + 1."""
    g = 1.5
    for _ in range(60):
        g = math.exp(math.log(1.0 + g) / (count + 1))
    steps = []
    step = 1.0
    for _ in range(count):
        step = step / g
        steps.append(step)
    return steps


def normal_deviate(share):
    """The normal deviate below which `share` of a normal distribution lies, within 4.5e-4.

    t - (2.515517 + 0.802853 t + 0.010328 t^2)/(1 + 1.432788 t + 0.189269 t^2 + 0.001308 t^3),
    t = sqrt(-2 ln p); share: above 0 to below 1; nearer either end it stays at 5.
    Source: Abramowitz and Stegun, 26.2.23.
    """
    tail = min(share, 1.0 - share)
    if tail < 3e-7:
        return 5.0 if share > 0.5 else -5.0
    t = math.sqrt(-2.0 * math.log(tail))
    top = 2.515517 + t * (0.802853 + t * 0.010328)
    deviate = t - top / (1.0 + t * (1.432788 + t * (0.189269 + t * 0.001308)))
    return deviate if share > 0.5 else -deviate
