"""How one ring is to be made: every size it is worked to, from a settled Design; and the walk."""

import math
from collections import namedtuple

from ..problems import OutOfRange
from ..ring import blank, heat_set, spring
from ..ring.allowances import CUT_ANGLES
from . import states

# What a ring is worked to. bored, rough: diameters of the blank; length: faced; kerf: across the
# cut; former, spacer: one of them None; width; clamped_gap: along the circumference, in the closing
# ring or band; bored_clamped: inside when it is bored clamped, else None; finish: outside, clamped;
# closed_gap: dressed to, along the circumference [mm]. sine: of the angle of the ends. relief,
# growth, modulus: of the heat and the metal. mean_share: mean pressure over contact pressure.
Plan = namedtuple(
    "Plan",
    (
        "bore", "turns", "setting", "sine", "relief", "growth", "modulus", "mean_share", "bored",
        "rough", "length", "slit", "kerf", "former", "spacer", "width", "clamped_gap",
        "bored_clamped", "finish", "closed_gap",
    ),
)  # fmt: skip

# The finished ring. before_dressing: gap in the bore as turned; dressed: what came off the ends;
# closing_bore: of the closing ring that leaves the clamped gap [mm]; clean_up: metal that was left
# on the outside diameter to turn away [mm]. state: the State in the bore. wall_pressure [MPa].
Made = namedtuple(
    "Made",
    (
        "thickness", "width", "closed_gap", "before_dressing", "dressed", "free_gap",
        "wall_pressure", "closing_bore", "clean_up", "state",
    ),
)  # fmt: skip


def plan_of(design):
    """The Plan of a Design."""
    d = design
    share = 1.0
    if d.spring.curvature_change is not None:
        share = d.spring.wall_pressure / heat_set.contact_pressure(
            d.spring.curvature_change, d.duty.bore, d.section.thickness, d.duty.modulus
        )
    return Plan(
        bore=d.duty.bore,
        turns=d.duty.turns,
        setting=d.duty.setting,
        sine=math.sin(math.radians(CUT_ANGLES[d.duty.end_cut])),
        relief=d.soak.relief.likely,
        growth=d.former_growth,
        modulus=d.duty.modulus,
        mean_share=share,
        bored=d.blank.bored_inside,
        rough=d.blank.rough_outside,
        length=d.blank.length,
        slit=d.allowances.slit,
        kerf=d.allowances.kerf,
        former=d.spring.former_diameter,
        spacer=d.spring.spacer_width,
        width=d.section.width,
        clamped_gap=d.allowances.clamped_gap,
        bored_clamped=d.blank.finish_outside - 2.0 * d.section.thickness
        if d.allowances.inside
        else None,
        finish=d.blank.finish_outside,
        closed_gap=d.duty.closed_gap,
    )


_NAMES = (
    "bore", "turns", "setting", "sine", "relief", "growth", "modulus", "mean_share", "bored",
    "rough", "length", "slit", "kerf", "former", "spacer", "width", "clamped_gap",
    "bored_clamped", "finish", "closed_gap",
)  # fmt: skip


def changed(plan, **changes):
    """A Plan with some sizes changed."""
    return Plan(*[changes.get(name, value) for name, value in zip(_NAMES, plan)])


def sawn(plan):
    """The State of the ring sawn and not yet set."""
    state = states.bore_and_turn(plan.bored, plan.rough, plan.length)
    return states.saw(state, plan.kerf / plan.sine)


def set_open(plan):
    """The State of the ring as it comes off its former or spacer, cold."""
    state = sawn(plan)
    if plan.former is None:
        return states.set_with_spacer(state, plan.spacer, plan.relief)
    return states.set_on_former(state, plan.former, plan.growth, plan.relief)


def turned(plan):
    """The State of the ring clamped, its outside turned (and its inside bored, if it is)."""
    state = states.close_to_gap(states.face(set_open(plan), plan.width), plan.clamped_gap)
    state = states.turn(state, plan.finish)
    if plan.bored_clamped is not None:
        state = states.bore(state, plan.bored_clamped)
    return state


def walk(plan):
    """The ring that a Plan makes, a Made: every operation in order, the ends dressed to the gap.

    Ends are dressed, never lengthened: a gap that is wider already stays as it is. Raises
    OutOfRange where no such ring can be.
    """
    held = states.close_to_gap(states.face(set_open(plan), plan.width), plan.clamped_gap)
    state = turned(plan)
    if not 0.0 < state.thickness < 0.25 * plan.bore:
        raise OutOfRange("thickness", state.thickness, "a ring's", "walk")
    state = states.close(state, plan.bore)
    before = state.gap
    taken = max(plan.closed_gap - before, 0.0)
    state = states.dress(state, taken)
    change = states.gap_change(state, plan.setting, plan.turns)
    return Made(
        thickness=state.thickness,
        width=state.width,
        closed_gap=state.gap,
        before_dressing=before,
        dressed=taken,
        free_gap=change + state.gap,
        wall_pressure=_pressure(plan, state, change),
        closing_bore=held.outside,
        clean_up=held.outside - plan.finish,
        state=state,
    )


def walked(plan):
    """As `walk`, None where no such ring can be."""
    try:
        return walk(plan)
    except (OutOfRange, ZeroDivisionError):
        return None


def _pressure(plan, state, change):
    """Mean wall pressure of a State in the bore [MPa], 0 for a ring that does not press."""
    if change <= 0.0:
        return 0.0
    curvature = states.curvature_change(state)
    if curvature is None:
        try:
            return spring.pressure_from_gap(change, plan.bore, state.thickness, plan.modulus)
        except OutOfRange:
            # Past straight at the back: no such ring, and stiffer than any limit.
            return plan.modulus
    contact = heat_set.contact_pressure(curvature, plan.bore, state.thickness, plan.modulus)
    return plan.mean_share * contact


def feeler(plan, gap):
    """What a feeler reads square to the cut in a gap along the circumference [mm]."""
    return gap * plan.sine


def lean(plan):
    """How much less a feeler reads than the gap on the neutral line, in a ring closed before its
    ends are dressed: they were sawn parallel and lean towards each other then [mm, along the
    circumference].
    """
    kerf, gap = plan.kerf / plan.sine, plan.clamped_gap
    thickness = 0.5 * (plan.rough - plan.bored)
    radius = 0.5 * (plan.bore - thickness)
    edge = blank.gap_at_edge(gap=gap, kerf=kerf, thickness=thickness, neutral_radius=radius)
    return gap - edge


def clamped_reading(design):
    """What a feeler should read in the ends of a ring in its closing ring or band, as sawn [mm].

    design: a Design.
    """
    plan = plan_of(design)
    return max(plan.clamped_gap - lean(plan), 0.0) * plan.sine
