"""What to know before the card is followed, as findings in words."""

from ..catalogue.inputs_tools import CARBIDE
from ..records import GOOD, WATCH, Quantity, finding
from ..ring.remedies import change
from ..ring.soak import can_be_set
from ..walk.limits import card_limits
from ..wording import decimal, fine_length, percent

# Limits under this share of what the machine holds are said to be close.
CLOSE_SHARE = 0.5
# A spindle speed that is off its wanted surface speed by more than this is said [share].
SPEED_SHARE = 0.3


def options(row):
    """List of changes to try for a Finding of the route card, None where the hand mends it."""
    if row.check == "spindle-speed":
        return [change(("tool_material", CARBIDE))]
    return None


def findings(design, tooling, rows, values):
    """List of Finding for the route_rows.Operation rows of a Design and its Tooling.

    values: checked inputs.
    """
    found = [_limits(design, values.get("machine") or "light")]
    fast = slow = None
    for row in rows:
        if row.cut is None:
            continue
        share = row.cut.surface_speed / row.cut.wanted_speed.high
        if share > 1.0 + 1e-9 and (fast is None or share > fast[1]):
            fast = (row, share)
        if row.cut.surface_speed < (1.0 - SPEED_SHARE) * row.cut.wanted_speed.low:
            slow = row
    if fast is not None:
        found.append(
            finding(
                "spindle-speed",
                WATCH,
                "The lathe's slowest speed is still %s times the most the tool stands."
                % decimal(fast[1], 1),
                "Use back gear or a carbide tool, or turn it by hand.",
                Quantity(fast[0].cut.surface_speed, "m/min"),
                Quantity(fast[0].cut.wanted_speed.high, "m/min"),
            )
        )
    elif slow is not None:
        found.append(
            finding(
                "spindle-speed",
                GOOD,
                "At the lathe's own speeds some cuts run slower than they could: no harm, only "
                "time.",
            )
        )
    spread = tooling.former_diameter is None and can_be_set(design.duty.ring_material.family)
    if spread and design.duty.rings > 4:
        found.append(
            finding(
                "batch",
                GOOD,
                "Rings on spacers can be soaked together in one box; lay them flat and apart.",
            )
        )
    return found


def _limits(d, machine):
    """What keeping every limit of the card comes to."""
    held = card_limits(d, machine)
    thin, thick = held.worst.thickness
    least, most = held.worst.wall_pressure
    off = max(most / d.spring.wall_pressure - 1.0, 1.0 - least / d.spring.wall_pressure)
    said = (
        "Whoever keeps every limit gets a ring %s to %s thick with its gap right. Its sizes leave "
        "the pressure within %s of the aim" % (fine_length(thin), fine_length(thick), percent(off))
    )
    if not can_be_set(d.duty.ring_material.family):
        said = "Whoever keeps every limit gets a ring %s to %s thick, its gap right" % (
            fine_length(thin),
            fine_length(thick),
        )
    value, limit = Quantity(held.share, "1"), Quantity(CLOSE_SHARE, "1")
    if held.share >= CLOSE_SHARE:
        return finding("limits", GOOD, said + ".", "", value, limit)
    return finding(
        "limits",
        WATCH,
        said
        + "; some of them are closer than %s lathe usually holds: %s of it."
        % ("a bench" if machine == "light" else "a rigid", percent(held.share)),
        "Enter each size as you measure it, and work the next to what the card then says.",
        value,
        limit,
    )
