"""What is still to be made of one ring, size by size, and what a size outside its limits costs."""

from collections import OrderedDict, namedtuple

from ..ring import heat_set
from . import states
from .finished import free_gap_limits
from .plan import changed, lean, set_open, walked

EPS = 1e-9
# One size of a ring's card. value, lower, upper: what it is to be, now; None without limits.
# measured: None until it was. within: whether it was within the card's limits, None likewise.
Step = namedtuple("Step", ("name", "value", "lower", "upper", "measured", "within"))

_PLAN_OF_NAME = OrderedDict(
    (
        ("bored_inside_diameter", "bored"),
        ("rough_outside_diameter", "rough"),
        ("end_kerf", "kerf"),
        ("former_diameter", "former"),
        ("spacer_width", "spacer"),
        ("ring_width", "width"),
        ("clamped_gap_reading", "clamped_gap"),
        ("finish_outside_diameter", "finish"),
    )
)


def steps(ring, plan, ranges):
    """List of Step, in the order of the work.

    ring: a follow.Ring. plan: the Plan that it is walked by. ranges: name -> limits to keep.
    """
    d, held = ring.design, ring.held
    closing = closing_bore(plan)
    rows = [
        ("bored_inside_diameter", ring.nominal.bored, held.bored),
        ("rough_outside_diameter", ring.nominal.rough, held.rough),
        ("blank_length", ring.nominal.length, held.length),
        ("slit_width", ring.nominal.slit, held.slit),
        ("cut_off_step", _cut_off_step(ring, plan), None),
        ("end_kerf", ring.nominal.kerf, held.kerf),
        ("former_diameter",) + _tool_limits(ring, "former_diameter", plan.former, held.former),
        ("spacer_width",) + _tool_limits(ring, "spacer_width", plan.spacer, held.spacer),
        ("free_gap", d.spring.gap_change + d.duty.closed_gap, free_gap_limits(d)),
        ("ring_width", ring.nominal.width, held.width),
        ("closing_ring_bore", None if d.duty.finishing == heat_set.BAND else closing, None),
        (
            "clamped_gap_reading",
            max(plan.clamped_gap - lean(plan), 0.0) * plan.sine,
            ranges.get("clamped_gap_reading", held.clamped_gap),
        ),
        (
            "finish_outside_diameter",
            plan.finish,
            ranges.get("finish_outside_diameter", held.finish),
        ),
        ("inside_diameter", ring.nominal.bored_clamped, held.bored_clamped),
        ("closed_gap_reading", ring.nominal.closed_gap * plan.sine, held.closed_gap),
        ("radial_thickness", d.section.thickness, ring.own.thickness),
    ]
    found = []
    for name, value, limits in rows:
        if value is None or (name == "slit_width" and d.duty.turns == 1):
            continue
        measured = ring.row.get(name)
        low = high = within = None
        if limits:
            low, high = limits
            if measured is None and name == "clamped_gap_reading":
                value = min(max(value, low), high)
            if measured is not None:
                within = low - EPS <= measured <= high + EPS
        found.append(
            Step(name=name, value=value, lower=low, upper=high, measured=measured, within=within)
        )
    return found


def _cut_off_step(ring, plan):
    """How far the saw is moved along the stick from slit to cut, None off it [mm].

    Half of what the saw cuts too wide comes off the band before the slit, and all of it would come
    off the one behind: moved on by half, both are alike and the blank is as long as it should be.
    """
    if not ring.on_stick:
        return None
    d = ring.design
    return d.blank.band_width + d.allowances.slit + 0.5 * (plan.slit - d.allowances.slit)


def _tool_limits(ring, name, value, limits):
    """(value, limits) of former or spacer: as measured against the card, or for this ring."""
    if value is None or limits is None:
        return None, None
    if ring.row.get(name) is not None:
        return limits[1], limits
    return value, (value - (limits[1] - limits[0]), value)


def costs(ring):
    """OrderedDict: measured name -> Made of the nominal ring with that size alone as it is."""
    found = OrderedDict()
    nominal = ring.nominal
    for name, key in _PLAN_OF_NAME.items():
        value = ring.row.get(name)
        if value is None:
            continue
        if name == "clamped_gap_reading":
            value = value / nominal.sine + lean(nominal)
        made = walked(changed(nominal, **{key: value}))
        if made is not None:
            found[name] = made
    return found


def closing_bore(plan):
    """Bore of the closing ring that leaves a Plan's clamped gap [mm]. plan: a Plan."""
    return states.close_to_gap(set_open(plan), plan.clamped_gap).outside
