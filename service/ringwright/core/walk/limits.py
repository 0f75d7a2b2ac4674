"""Limits of every operation, worked back from what the finished ring may be.

Whoever keeps every limit gets a ring within its own: the closing ring is bored to suit the sawn
ring, so its gap is held and not its bore; the outside is turned to the bore or a little over, so
that a ring never comes out with too wide a gap to dress; and what is left to the thickness is
shared out among bore, saw, closing gap and last cut by what each can hold.
"""

import math
from collections import namedtuple

from ..problems import OutOfRange, unworkable
from ..properties import fits
from ..records import Method
from ..wording import length
from .finished import finished_limits
from .plan import changed, lean, plan_of, walk

# What a lathe holds, IT grade by the kind of machine: bore, outside rough and last.
BORE_GRADE = {"light": 8, "rigid": 7}
LAST_GRADE = 7
ROUGH_GRADE = 10
FORMER_GRADE = 9
TRIAL_GRADE = 6
LENGTH_GRADE = 9
# How much wider a saw cuts than it is thick, of its thickness and at most; how far the gap in the
# closing ring may be off either way, by feeler, on a small ring, more for each mm of bore, and at
# most; how much wider a slit; of the facing allowance at most [mm]. Common practice, no source.
SAW_SHARE = 0.1
SAW_WOBBLE = 0.12
FEELER_FIT = 0.02
FEELER_FIT_GROWS = 0.0004
FEELER_FIT_MOST = 0.06
SLIT_WOBBLE = 0.10
SLIT_SHARE = 0.3
# How often the limits are made closer until the pressure keeps its own.
MOST_TRIES = 6
# Room that the gap in the closing ring has upwards at least [mm].
LEAST_ROOM = 0.01
# No limit is made wider than so many times what the machine holds, however much room there is.
EASE = 2.0
# Rough outside may take so much of the finishing allowance, each way.
ROUGH_SHARE = 0.2

# Each (lower, upper) [mm]: rough, bored, length, slit, kerf (across the cut), former, spacer,
# width, clamped_gap and closed_gap (as a feeler reads them), finish, bored_clamped; None where the
# ring has none. share: how much wider than what the machine holds the shared limits are; under 1
# they are closer. worst: a Worst.
CardLimits = namedtuple(
    "CardLimits",
    (
        "rough", "bored", "length", "slit", "kerf", "former", "spacer", "width", "clamped_gap",
        "finish", "bored_clamped", "closed_gap", "share", "worst",
    ),
)  # fmt: skip

# The finished ring at the worst of all limits, each (least, greatest): thickness [mm], wall
# pressure [MPa].
Worst = namedtuple("Worst", ("thickness", "wall_pressure"))

METHODS = (
    Method(
        "limits-worked-back",
        "Limits of the operations, from those of the finished ring",
        "a1 = (D - bored + (s - sc)/pi)/2 with the closing ring bored to the gap sc; "
        "gap = sc + pi (d1 - D), then dressed; ranges in proportion to what each operation holds",
        "every limit kept at once at its worst; modulus and relief as reckoned with",
        ("neutral-line", "iso286", "practice"),
    ),
)


def it(size, grade):
    """Standard tolerance of a size [mm], or of the nearest the standard has. grade: of ISO 286."""
    return fits.tolerance(min(max(size, fits.LOWEST_NOMINAL), fits.HIGHEST_NOMINAL), grade)


def card_limits(design, machine="light"):
    """The CardLimits of a ring.

    design: a Design. machine: light or rigid, as machining knows it. Raises InputProblem where the
    sizes leave no ring.
    """
    if not (_kept and _kept[0] is design):
        _kept[:] = [design, {}]
    known = _kept[1]
    if machine not in known:
        known[machine] = _worked(design, machine)
    return known[machine]


# The Design that was asked for last, and machine -> its CardLimits: tools, card and drawings of a
# job ask for the same.
_kept = []


def _worked(design, machine):
    """The CardLimits. Raises InputProblem as of card_limits."""
    try:
        return _limits(design, machine)
    except OutOfRange:
        # So large a gap, or so much to turn away, beside so small a ring.
        gap, left = design.duty.closed_gap, design.allowances.finishing
        name, size = ("closed_gap", gap) if gap > left else ("finishing_allowance", left)
        raise unworkable(
            name,
            "no ring is left of these sizes: it would come out as good as without metal, or far "
            "too thick",
            "give less than %s" % length(size),
            value=size,
        )


def _limits(design, machine):
    plan = plan_of(design)
    finished = finished_limits(design)
    share = _share_for_thickness(plan, finished, machine)
    found = _with_share(plan, finished, design, machine, share)
    low, high = finished.wall_pressure
    aim = design.spring.wall_pressure
    for _ in range(MOST_TRIES):
        least, most = found.worst.wall_pressure
        off = max((most - aim) / (high - aim), (aim - least) / (aim - low))
        if off <= 1.0:
            break
        # The spring falls off in proportion to the limits, near enough.
        share = min(share, 1.0) * 0.98 / off
        found = _with_share(plan, finished, design, machine, share)
    return found


def _holds(plan, machine):
    """What each operation that makes the thickness can hold [mm]: bore, last turning, saw (along
    the circumference), closing gap (along it, both ways together).
    """
    saw = min(SAW_SHARE * plan.kerf, SAW_WOBBLE) / plan.sine
    feeler = min(FEELER_FIT + FEELER_FIT_GROWS * plan.bore, FEELER_FIT_MOST)
    return (
        it(plan.bored, BORE_GRADE[machine]),
        it(plan.finish, LAST_GRADE),
        saw,
        2.0 * feeler / plan.sine,
    )


def _share_for_thickness(plan, finished, machine):
    """How many times what the machine holds the thickness allows, at most EASE."""
    bored, last, saw, gap = _holds(plan, machine)
    room = finished.thickness[1] - finished.thickness[0]
    if plan.bored_clamped is not None:
        return min(2.0 * room / (bored + last), EASE)
    leaning = lean(plan) / math.pi
    needed = bored + last + (saw + gap) / math.pi
    # The nominal bore is always within its limits: with it, all that thickens must have its room.
    thicker = last + (saw + 0.5 * gap) / math.pi
    return min((2.0 * room - 2.0 * leaning) / needed, (room - leaning) / thicker, EASE)


def _with_share(plan, finished, design, machine, share):
    bore_hold, last_hold, saw_hold, gap_hold = _holds(plan, machine)
    last = last_hold * min(share, 1.0)
    finish = (plan.finish, plan.finish + last)
    saw = saw_hold * share
    kerf = (plan.kerf, plan.kerf + saw * plan.sine)
    # Read in a trial bore under size, and between ends that still lean towards each other.
    leaning = lean(plan)
    largest = finished.closed_gap[1] - math.pi * it(plan.bore, TRIAL_GRADE)
    room = largest - leaning - plan.closed_gap
    up = min(0.5 * gap_hold * share + leaning, max(room, LEAST_ROOM))
    down = min(0.5 * gap_hold * share + leaning, 0.7 * plan.clamped_gap)
    gap_low, gap_high = plan.clamped_gap - down, plan.clamped_gap + up
    bore_range = bore_hold * share
    wall_room = finished.thickness[1] - plan_thickness(plan)
    bored_clamped = None
    if plan.bored_clamped is None:
        bored = _bored(plan, bore_range, last, saw, down, up, wall_room)
    else:
        bored = (plan.bored - 0.5 * bore_range, plan.bored + 0.5 * bore_range)
        low = plan.bored_clamped + 0.5 * (last - bore_range)
        bored_clamped = (min(low, plan.bored_clamped), min(low, plan.bored_clamped) + bore_range)
    rough_off = min(0.5 * it(plan.rough, ROUGH_GRADE), ROUGH_SHARE * design.allowances.finishing)
    slit = None
    length = (
        plan.length - min(it(plan.length, LENGTH_GRADE), 0.3 * design.allowances.facing),
        plan.length,
    )
    if plan.turns == 2:
        slit = (plan.slit, plan.slit + min(SLIT_WOBBLE, SLIT_SHARE * design.allowances.facing))
    former = spacer = None
    if plan.former is not None:
        former = (plan.former - it(plan.former, FORMER_GRADE) * min(share, 1.0), plan.former)
    else:
        half = 0.5 * it(plan.spacer, FORMER_GRADE) * min(share, 1.0)
        spacer = (plan.spacer - half, plan.spacer + half)
    width = (
        max(plan.width - it(plan.width, LAST_GRADE), finished.width[0]),
        plan.width,
    )
    found = CardLimits(
        rough=(plan.rough - rough_off, plan.rough + rough_off),
        bored=bored,
        length=length,
        slit=slit,
        kerf=kerf,
        former=former,
        spacer=spacer,
        width=width,
        clamped_gap=(gap_low * plan.sine, (gap_high - leaning) * plan.sine),
        finish=finish,
        bored_clamped=bored_clamped,
        closed_gap=(plan.closed_gap * plan.sine, largest * plan.sine),
        share=share,
        worst=None,
    )
    values = list(found)
    values[-1] = worst_of(plan, found)
    return CardLimits(*values)


def plan_thickness(plan):
    """Thickness of the ring when its closing ring is bored to suit [mm]. plan: a Plan."""
    if plan.bored_clamped is not None:
        return 0.5 * (plan.finish - plan.bored_clamped)
    cut = plan.kerf / plan.sine
    return 0.5 * (plan.finish - plan.bored + (cut - plan.clamped_gap) / math.pi)


def _bored(plan, wide, last, saw, down, up, room):
    """Limits of the bore that put the thickness, at its worst, about the middle of its own; the
    nominal bore is always within them [mm].
    """
    # With the bore from b to b + wide the thickness runs from t - (b + wide + up/pi)/2 to
    # t + (last - b + (saw + down)/pi)/2.
    centred = 0.5 * (last - wide + (saw + down - up) / math.pi)
    lowest = last + (saw + down) / math.pi - 2.0 * room
    low = min(max(centred, lowest), 0.0)
    high = min(low + wide, 2.0 * room - up / math.pi)
    return plan.bored + low, plan.bored + max(high, low)


def corners(plan, limits):
    """(thin, thick): Plans at the two ends of all limits at once.

    plan: a Plan. limits: its CardLimits. thin: bore large, saw narrow, gap in the closing ring
    wide, tool small; thick the reverse.
    """
    found = []
    leaning = lean(plan)
    for end in (0, 1):
        other = 1 - end
        gap = limits.clamped_gap[other] / plan.sine + (leaning if other else 0.0)
        found.append(
            changed(
                plan,
                rough=limits.rough[end],
                bored=limits.bored[other],
                kerf=limits.kerf[end],
                former=None if limits.former is None else limits.former[end],
                spacer=None if limits.spacer is None else limits.spacer[end],
                clamped_gap=gap,
                finish=limits.finish[end],
                bored_clamped=None if limits.bored_clamped is None else limits.bored_clamped[other],
                width=limits.width[end],
            )
        )
    return found


def worst_of(plan, limits):
    """The Worst of a ring kept within its limits. plan: a Plan. limits: its CardLimits."""
    thin, thick = [walk(corner) for corner in corners(plan, limits)]
    return Worst(
        thickness=(thin.thickness, thick.thickness),
        wall_pressure=(thin.wall_pressure, thick.wall_pressure),
    )
