"""Which radial thickness: the window where a ring neither breaks nor presses too little.

Thicker, and it breaks when it is opened or turned through; thinner, and the stress in the bore that
the wanted pressure asks for grows. Both are very nearly powers of the thickness, so a secant on
their logarithms settles in a few steps.
"""

import math
from collections import namedtuple

from . import heat_set, spring, winding
from .records import Method

# Shares of the bending strength: carried for years in the bore, and carried once on the bench.
PERMANENT_WATCH = 0.45
PERMANENT_STOP = 0.65
ONCE_WATCH = 0.75
ONCE_STOP = 0.95

# Range of d1/a1 searched: beyond it the thin-ring sums or the lathe give out.
THICKEST_RATIO = 12.0
THINNEST_RATIO = 50.0

# What the search needs to know of a ring before its thickness is known. `width` is None where the
# width follows the thickness; `width_ratio` says how.
Task = namedtuple(
    "Task",
    (
        "bore",
        "modulus",
        "poisson",
        "strength",
        "brittle",
        "pressure",
        "turns",
        "setting",
        "uniform",
        "width",
        "width_ratio",
        "slit",
        "facing",
        "finishing",
        "piston_clearance",
    ),
)

# lowest and highest are None where no thickness serves.
Window = namedtuple("Window", ("lowest", "best", "highest", "closed_share", "once_share"))


def closed_share(task, thickness):
    """Tension in the bore over what may be carried for years [1]. task: a Task. thickness [mm]."""
    ratio = task.bore / thickness
    if task.setting == heat_set.SPREAD:
        stress = spring.closed_stress(task.pressure, task.bore, thickness).tension
    else:
        share, peak = round_set_factors(task.setting, task.turns, task.uniform)
        stress = 1.5 * peak * task.pressure / share * ratio * (ratio - 2.0)
    return stress / (PERMANENT_WATCH * task.strength)


def round_set_factors(setting, turns, banded):
    """(mean pressure over p0, peak moment over M0) of a round-set ring [1].

    setting: bound or sprung. turns: 1 or 2. banded: True when a band held it for turning; then the
    back carries twice the moment of its mean pressure in one turn, 4/3 M0, and so it is taken here
    for two turns too.
    """
    if banded:
        return heat_set.band_share(setting, turns), 2.0 * heat_set.band_share(setting, 1)
    return heat_set.mean_share(turns), heat_set.PEAK_MOMENT


def once_share(task, thickness):
    """Worst stress of fitting the ring, or turning it through, over what it may see once [1].

    task: a Task. thickness [mm].
    """
    bore, modulus = task.bore, task.modulus
    if task.turns == 1:
        gap = spring.first_order_gap_change(task.pressure, bore, thickness, modulus)
        gap = min(gap, bore)
        opening = spring.opening_to_clear(thickness, bore, gap, task.piston_clearance)
        stress = max(
            spring.opening_stress(opening, gap, bore, thickness, modulus),
            winding.even_opening_stress(bore, thickness, modulus),
        )
    else:
        width = task.width if task.width is not None else task.width_ratio * thickness
        blank = width + 2.0 * task.slit + 2.0 * task.facing
        band = 0.5 * (width + task.slit) + task.facing
        rough = thickness + 0.5 * task.finishing
        through = winding.turning_through(
            blank, 0.5 * (bore - thickness), rough, band, modulus, task.poisson, task.brittle
        )
        stress = max(
            through.equivalent,
            winding.plug_stress(task.pressure, bore, thickness, modulus),
            winding.wound_on_stress(bore, thickness, modulus, task.pressure).spread_out,
        )
    return stress / (ONCE_WATCH * task.strength)


def window(task):
    """The Window of thicknesses [mm], and the one that is equally safe on both counts.

    task: a Task.
    best is not rounded; shares are at best. Source: derived; the balance of the two stresses is the
    old rule that makes closed and opening stress alike.
    """
    thick = task.bore / 26.0
    thin = task.bore / 34.0
    thick_once, thin_once = once_share(task, thick), once_share(task, thin)
    thick_closed, thin_closed = closed_share(task, thick), closed_share(task, thin)
    run = math.log(thick / thin)
    once_slope = math.log(thick_once / thin_once) / run
    closed_slope = math.log(thick_closed / thin_closed) / run

    best = _meeting(task, thin, thin_once, once_slope, thin_closed, closed_slope)
    lowest = _reach(lambda a: closed_share(task, a), thin, thin_closed, closed_slope, task.bore)
    highest = _reach(lambda a: once_share(task, a), thin, thin_once, once_slope, task.bore)
    if lowest > highest:
        lowest = highest = None
    return Window(lowest, best, highest, closed_share(task, best), once_share(task, best))


def _meeting(task, at, once, once_slope, closed, closed_slope):
    """The thickness where both shares are equal, by Newton with the power laws' slopes."""
    slope = once_slope - closed_slope
    thickness = at
    for _ in range(6):
        moved = math.log(closed / once) / slope
        thickness = _kept(thickness * math.exp(moved), task.bore)
        if abs(moved) < 2e-3:
            break
        once, closed = once_share(task, thickness), closed_share(task, thickness)
    return thickness


def _reach(share, at, value, slope, bore):
    """The thickness where `share` is 1, by the same steps."""
    thickness = at
    for _ in range(6):
        moved = -math.log(value) / slope
        thickness = _kept(thickness * math.exp(moved), bore)
        if abs(moved) < 2e-3:
            break
        value = share(thickness)
    return thickness


def _kept(thickness, bore):
    return min(max(thickness, bore / THINNEST_RATIO), bore / THICKEST_RATIO)


METHODS = (
    Method(
        "section-window",
        "Radial thickness from the window of sections",
        "a1 where stress in the bore over 0.45 of the strength equals the worst stress of fitting "
        "over 0.75 of it",
        "d1/a1 from 12 to 50; strength is the modulus of rupture of the iron",
        ("beam", "blake", "practice"),
    ),
)
