"""From what is asked of a ring's spring to its gap, its pressure, and the former or spacer for it.

Four roads lead here: a wall pressure, a free gap, a former's proportion, a former on the shelf.
Each settles the rest.
"""

from collections import namedtuple

from ..problems import OutOfRange, unworkable
from ..wording import fine_length, length
from . import heat_set, spring

# What may be asked of it, one at a time.
TARGETS = ("wall_pressure", "free_gap", "former_ratio", "shelf_former")

# What the springing of a ring depends on, once its section is settled.
Ring = namedtuple(
    "Ring",
    (
        "duty", "thickness", "allowances", "relief", "set_thickness", "bored_radius", "growth",
    ),
)  # fmt: skip

SpringBack = namedtuple(
    "SpringBack",
    (
        "gap_change", "curvature_change", "wall_pressure", "contact_pressure", "former_radius",
        "former_diameter", "spacer_width",
    ),
)  # fmt: skip


def spring_of(ring, take, values, usual, why):
    """The SpringBack that the one given target, or else the usual wall pressure, asks of a Ring.

    ring: a Ring. take: an inputs.Chooser, which notes a default. values: the
    checked inputs; the target is wall_pressure, free_gap, former_ratio or shelf_former. usual: the
    wall pressure without a target [MPa]; why: the rule that chose it.
    Raises InputProblem, naming the target, where no ring springs so far or so little.
    """
    target = "wall_pressure"
    for name in ("free_gap", "former_ratio", "shelf_former"):
        if values.get(name) is not None:
            target = name
    if target == "wall_pressure":
        wanted = values.get("wall_pressure")
        if wanted is None:
            wanted = usual
            take.note("wall_pressure", usual, why)
    else:
        wanted = values[target]
    try:
        if ring.duty.setting == heat_set.SPREAD:
            found = _spread(ring, target, wanted)
            if found.spacer_width <= ring.allowances.gap_kerf:
                _refuse_wide_saw(ring, target, values.get("end_kerf"), found.gap_change)
            return found
        return _on_former(ring, target, wanted)
    except OutOfRange:
        raise past_straight(target)


def past_straight(target):
    """The InputProblem of a spring that no ring can have. target: name of the input that asks."""
    return unworkable(
        target,
        "a ring this thin would have to be opened past straight to spring so far",
        "give a smaller %s, or a larger radial_thickness" % target,
    )


def _spread(ring, target, wanted):
    if target == "former_ratio" or target == "shelf_former":
        raise unworkable(
            target,
            "a ring that is spread by a spacer has no former",
            "leave %s out, or set the ring bound or sprung" % target,
            "conflict",
        )
    bore, thickness, modulus = ring.duty.bore, ring.thickness, ring.duty.modulus
    if target == "free_gap":
        gap = _gap_left(ring, wanted)
        pressure = spring.pressure_from_gap(gap, bore, thickness, modulus)
    else:
        pressure = wanted
        gap = spring.gap_change(pressure, bore, thickness, modulus)
    spacer = heat_set.spacer_for(gap, ring.allowances.gap_kerf, ring.duty.closed_gap, ring.relief)
    return SpringBack(
        gap_change=gap,
        curvature_change=None,
        wall_pressure=pressure,
        contact_pressure=pressure,
        former_radius=None,
        former_diameter=None,
        spacer_width=spacer,
    )


def _refuse_wide_saw(ring, target, saw, gap):
    """A saw that takes out more than the free gap leaves a spacer nothing to hold open."""
    wanted = gap + ring.duty.closed_gap
    why = "the saw takes %s out of the ring, and the free gap wanted is only %s" % (
        length(ring.allowances.gap_kerf),
        length(wanted),
    )
    if saw is None:
        raise unworkable(target, why, "ask for more, or give a thinner end_kerf", "conflict")
    # Across the cut; along the ring it takes ring.allowances.gap_kerf.
    most = saw * wanted / ring.allowances.gap_kerf
    remedy = "give less than %s, the thickness of the saw" % length(most)
    raise unworkable("end_kerf", why, remedy, "conflict", value=saw, highest=most)


def _on_former(ring, target, wanted):
    bore, thickness, modulus = ring.duty.bore, ring.thickness, ring.duty.modulus
    radius = 0.5 * (bore - thickness)
    # Turning the outside moves the neutral line inwards, turning the inside outwards again.
    inwards = 0.5 * (ring.set_thickness - thickness) - ring.allowances.inside
    if target == "former_ratio" or target == "shelf_former":
        diameter = wanted
        if target == "former_ratio":
            diameter = wanted * (bore - 2.0 * thickness)
        former_radius = 0.5 * diameter * ring.growth + 0.5 * ring.set_thickness
        free = heat_set.set_radius(ring.bored_radius, former_radius, ring.relief) - inwards
        curvature = 1.0 / radius - 1.0 / free
        _check_curvature(target, curvature, radius)
    else:
        if target == "free_gap":
            gap = _gap_left(ring, wanted)
            curvature = heat_set.curvature_of_gap(
                gap, bore, thickness, ring.duty.setting, ring.duty.turns
            )
        else:
            contact = wanted / _mean_over_contact(ring)
            curvature = heat_set.curvature_for_contact(contact, bore, thickness, modulus)
        _check_curvature(target, curvature, radius)
        free = 1.0 / (1.0 / radius - curvature) + inwards
        former_radius = _former_radius(ring, free)
        diameter = 2.0 * (former_radius - 0.5 * ring.set_thickness) / ring.growth
    gap = heat_set.gap_of_curvature(curvature, bore, thickness, ring.duty.setting, ring.duty.turns)
    contact = heat_set.contact_pressure(curvature, bore, thickness, modulus)
    pressure = contact * _mean_over_contact(ring)
    if ring.duty.bearing.uniform:
        contact = pressure
    return SpringBack(
        gap_change=gap,
        curvature_change=curvature,
        wall_pressure=pressure,
        contact_pressure=contact,
        former_radius=former_radius,
        former_diameter=diameter,
        spacer_width=None,
    )


def _mean_over_contact(ring):
    """Mean wall pressure over the p0 of the round free shape [1]."""
    if ring.duty.bearing.uniform:
        return heat_set.band_share(ring.duty.setting, ring.duty.turns)
    return heat_set.mean_share(ring.duty.turns)


def _check_curvature(target, curvature, radius):
    if curvature * radius > spring.LARGEST_SPRINGINESS:
        raise OutOfRange("curvature", curvature, "less than 0.45 of the bore's", "contact")
    if curvature <= 0.0:
        raise unworkable(
            target,
            "a ring set on so small a former comes off smaller than the bore: it would "
            "not press at all",
            "give a larger %s, or more relief" % target,
        )


def _former_radius(ring, free):
    curvature = 1.0 / ring.bored_radius + (1.0 / free - 1.0 / ring.bored_radius) / ring.relief
    if curvature <= 0.5 / ring.bored_radius:
        raise unworkable(
            "relief",
            "with so little relief the former would have to be twice the ring's size",
            "soak hotter or longer, so that relief is larger, or ask for less wall pressure",
        )
    return 1.0 / curvature


def _gap_left(ring, free_gap):
    gap = free_gap - ring.duty.closed_gap
    if gap <= 0.0:
        raise unworkable(
            "free_gap",
            "the free gap is not larger than the gap in the bore, so the ring would not press",
            "give more than the closed gap of " + fine_length(ring.duty.closed_gap),
            value=free_gap,
            lowest=ring.duty.closed_gap,
        )
    return gap
