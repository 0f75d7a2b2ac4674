"""Which radial thickness: the window where a ring neither breaks nor presses too little.

Thicker, and it breaks when it is opened or turned through; thinner, and the stress in the bore that
the wanted pressure asks for grows. Both are very nearly powers of the thickness, so a secant on
their logarithms settles in a few steps.
"""

import math
from collections import namedtuple

from ..records import Method
from . import heat_set, spring, winding

# Shares of the bending strength: carried for years in the bore, and carried once on the bench.
PERMANENT_WATCH = 0.45
PERMANENT_STOP = 0.65
ONCE_WATCH = 0.75
ONCE_STOP = 0.95

# What the heat takes out, for the grip that winding on works against; about that of a good soak.
_RELIEF = 0.9

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

# Place of `pressure` in a Task: the phone's named tuples cannot tell it.
_PRESSURE = 5

# lowest and highest are None where no thickness serves.
Window = namedtuple("Window", ("lowest", "best", "highest"))


def task_of(design, pressure, width):
    """The Task of a Design at another wall pressure or width, its width held.

    design: a Design. pressure: wall pressure [MPa]. width: of the ring [mm].
    """
    d = design
    return Task(
        bore=d.duty.bore,
        modulus=d.duty.modulus,
        poisson=d.duty.ring_material.poisson,
        strength=d.duty.ring_material.bending_strength,
        brittle=d.duty.ring_material.family == "iron",
        pressure=pressure,
        turns=d.duty.turns,
        setting=d.duty.setting,
        uniform=d.duty.bearing.uniform,
        width=width,
        width_ratio=width / d.section.thickness,
        slit=d.allowances.slit,
        facing=d.allowances.facing,
        finishing=d.allowances.finishing,
        piston_clearance=0.5 * (d.duty.bore - d.piston_diameter),
    )


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


def once_share(task, thickness, sideways=True):
    """Worst stress of fitting the ring, or turning it through, over what it may see once [1].

    task: a Task. thickness [mm]. sideways: whether winding on counts what bends the turns sideways;
    the balance of the two stresses is struck without, at 1.1 times the plug's.
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
        plug = winding.plug_stress(task.pressure, bore, thickness, modulus)
        wound = 1.1 * plug
        if sideways:
            if task.setting != heat_set.SPREAD:
                share, _ = round_set_factors(task.setting, task.turns, task.uniform)
                ratio = bore / thickness
                spring_of = 3.0 * task.pressure / share * ratio * (ratio - 1.0)
                plug = winding.plug_stress_round(
                    spring_of / (modulus * thickness), bore, thickness, modulus
                )
            held = _RELIEF * blank - task.slit
            wound = winding.wound_on_stress(
                plug, bore, thickness, 0.5 * width, held, modulus, task.poisson
            ).spread_out
        stress = max(through.equivalent, wound)
    return stress / (ONCE_WATCH * task.strength)


def window(task):
    """The Window of thicknesses [mm], and the one that is equally safe on both counts.

    task: a Task. best is not rounded. Good to a thousandth of the thickness.
    Source: derived; the balance of the two stresses is the old rule that makes closed and opening
    stress alike.
    """
    # The share in the bore goes as ratio*(ratio - 2), so the thinnest is exact.
    ratio = 30.0
    unit = closed_share(task, task.bore / ratio) / (ratio * (ratio - 2.0))
    thinnest = task.bore / (1.0 + math.sqrt(1.0 + 1.0 / unit))
    lowest = _kept(task, thinnest)
    fitting = _fitting(task)

    def balance(thickness):
        return math.log(once_share(task, thickness, False) / closed_share(task, thickness))

    ends = (task.bore / 30.0, task.bore / 34.0)
    best = _root(task, balance, ends, [balance(thickness) for thickness in ends])
    highest = _root(task, fitting, ends, [fitting(thickness) for thickness in ends])
    breaks = highest == task.bore / THINNEST_RATIO and once_share(task, highest) > 1.0
    if lowest > highest or thinnest > task.bore / THICKEST_RATIO or breaks:
        lowest = highest = None
    elif best > highest:
        best = highest
    return Window(lowest, best, highest)


def bearable_pressure(task):
    """The largest wall pressure at which some thickness still serves with full margins [MPa].

    There the thickest ring that may be fitted is also the thinnest that lasts in the bore. Stress
    in the bore goes with the pressure, so p/closed_share at that thickness; again, because a ring
    of less spring has further to be opened. task: a Task. Source: derived, as window.
    """
    for _ in range(4):
        ends = (task.bore / 30.0, task.bore / 34.0)
        highest = _root(task, _fitting(task), ends, [_fitting(task)(end) for end in ends])
        task = at_pressure(task, task.pressure / closed_share(task, highest))
    return task.pressure


def at_pressure(task, pressure):
    """The same Task at another wall pressure [MPa]. task: a Task."""
    before, after = tuple(task[:_PRESSURE]), tuple(task[_PRESSURE + 1 :])
    return Task(*(before + (pressure,) + after))


def _fitting(task):
    """A function of the thickness: logarithm of the share that fitting the ring takes up."""

    def fitting(thickness):
        return math.log(once_share(task, thickness))

    return fitting


def _root(task, function, ends, values):
    """The thickness where a nearly straight function of its logarithm is 0, by secants [mm].

    ends: two thicknesses to start from, values: of the function there. A step under a hundredth
    leaves far less than a thousandth to the next one, so it is the last.
    """
    before, here = math.log(ends[0]), math.log(ends[1])
    value_before, value = values
    for _ in range(8):
        if value == value_before:
            break
        step = -value * (here - before) / (value - value_before)
        before, value_before = here, value
        here = math.log(_kept(task, math.exp(here + step)))
        if abs(here - before) < 0.01:
            break
        value = function(math.exp(here))
    return math.exp(here)


def _kept(task, thickness):
    return min(max(thickness, task.bore / THINNEST_RATIO), task.bore / THICKEST_RATIO)


METHODS = (
    Method(
        "section-window",
        "Radial thickness from the window of sections",
        "a1 where stress in the bore over 0.45 of the strength equals the worst stress of fitting "
        "over 0.75 of it; winding on goes in by its bending in the plane",
        "d1/a1 from 12 to 50; strength is the modulus of rupture of the iron",
        ("beam", "blake", "practice"),
    ),
)
