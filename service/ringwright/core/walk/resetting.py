"""Former or spacer for a ring as it was really bored and sawn, and what its heat then gave."""

from ..problems import OutOfRange
from ..ring import heat_set
from . import states
from .plan import changed, set_open, turned


def former_for(design, plan, relief, start):
    """The former that gives the wanted pressure, cold [mm]; the plan's where none does.

    design: a Design. plan: a Plan. relief: 0 to 1. start: neutral radius of the free ring that goes
    on to it, None for one just sawn [mm].
    """
    try:
        made = turned(plan)
        sawn_ring = set_open(changed(plan, relief=0.0))
        if start is None:
            start = sawn_ring.free_radius
        r = 0.5 * (plan.bore - made.thickness)
        contact = design.spring.wall_pressure / plan.mean_share
        curvature = heat_set.curvature_for_contact(contact, plan.bore, made.thickness, plan.modulus)
        free = 1.0 / (1.0 / r - curvature)
        # Turning the outside moves the neutral line in, boring the inside out again.
        free -= made.free_radius - set_open(plan).free_radius
        radius = heat_set.former_radius_for(start, free, relief)
    except (OutOfRange, ZeroDivisionError):
        return plan.former
    if radius <= 0.0:
        return plan.former
    return 2.0 * (radius - 0.5 * sawn_ring.thickness) / plan.growth


def spacer_for(design, plan):
    """The spacer that gives the wanted pressure [mm]. design: a Design. plan: a Plan."""
    wanted = design.spring.gap_change
    made = states.close(turned(plan), plan.bore)
    free = wanted + made.gap
    cut = plan.kerf / plan.sine
    return cut + (free - cut) / plan.relief


def relief_shown(plan, free):
    """What the heat gave [1], None where no former or spacer tells.

    plan: a Plan. free: gap after it [mm].
    """
    cut = plan.kerf / plan.sine
    if plan.former is None:
        # A spacer as wide as the cut has opened nothing.
        return None if plan.spacer == cut else (free - cut) / (plan.spacer - cut)
    ring = states.close_to_gap(set_open(plan), plan.clamped_gap)
    try:
        change = heat_set.curvature_of_gap(
            free - plan.clamped_gap, ring.outside, ring.thickness, plan.setting, plan.turns
        )
        r = 0.5 * (ring.outside - ring.thickness)
        sawn_ring = set_open(changed(plan, relief=0.0))
        former = 0.5 * plan.former * plan.growth + 0.5 * ring.thickness
        return heat_set.relief_given(sawn_ring.free_radius, former, 1.0 / (1.0 / r - change))
    except ZeroDivisionError:
        return None
