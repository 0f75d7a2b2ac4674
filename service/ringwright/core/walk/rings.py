"""The rings being made, as an answer tells them: each ring's card from here on, and in words."""

from collections import OrderedDict

from ..records import GOOD, STOP, WATCH, Quantity, finding, plain
from ..ring.allowances import SMALLEST_RELIEF
from ..wording import decimal, fine_length, percent, wall_pressure
from .follow import follow

# Name of a size on the card -> what it is called, and the operation at which it is made.
WORDS = OrderedDict(
    (
        ("bored_inside_diameter", ("bore", "bore")),
        ("rough_outside_diameter", ("rough outside", "turn-rough")),
        ("blank_length", ("blank length", "face-blank")),
        ("slit_width", ("slit", "slit")),
        ("cut_off_step", ("move the saw along by", "saw-off")),
        ("end_kerf", ("saw cut, square to it", "saw-ends")),
        ("former_diameter", ("former", "put-on-former")),
        ("spacer_width", ("spacer, along the ring", "spread")),
        ("free_gap", ("free gap", "measure-free-gap")),
        ("ring_width", ("width", "face-sides")),
        ("closing_ring_bore", ("closing ring, to suit", "clamp")),
        ("clamped_gap_reading", ("gap while closed, by feeler", "clamp")),
        ("finish_outside_diameter", ("outside, clamped", "turn-finish")),
        ("inside_diameter", ("inside, clamped", "bore-clamped")),
        ("closed_gap_reading", ("gap in the bore, by feeler", "dress-ends")),
        ("radial_thickness", ("thickness", "inspect")),
    )
)
# Where a double-turn ring's card, or a plain one's, has another operation for a size: with ends cut
# straight or at an angle, and with a step.
_OTHER = {
    (1, "end_kerf"): ("saw-end", "saw-step"),
    (2, "ring_width"): ("face-step", "face-step"),
}
# The same where the blank is slit and sawn off on its stick.
_ON_STICK = {"slit_width": "slit-stick", "blank_length": "saw-off"}
REMEDIES = {
    "bore": "Bore the blank out to %s before it is sawn.",
    "saw": "Take more off the ends before the ring is closed, until the cut is %s square to it.",
    "set": "Set it again with a former or spacer of %s.",
    "inside": "Bore its inside to %s, held by its turned outside.",
    "face": "Face it to %s.",
    "dress": "File the ends until a feeler square to the cut reads %s.",
}
FAULTS = {
    "no-ring": "no ring comes of these sizes",
    "relief": "its gap asks for a relief that no heat gives",
    "thickness": "it comes out %(thickness)s thick",
    "gap": "its gap comes out %(gap)s along the ring",
    "gap-short": "its gap is only %(gap)s along the ring",
    "pressure": "it presses with %(pressure)s",
    "clean-up": "only %(clean)s is left to turn on the outside",
    "width": "it is %(width)s wide",
}


def answer(design, values):
    """(list of OrderedDict, list of Finding): the rings measured, and what is to be said of them.

    One row a ring: ring, outcome, sizes, why and remedy. design: a Design. values: checked inputs,
    "measured" and "machine" among them.
    """
    listing = []
    said = []
    for followed in _followed(design, values):
        found = findings(design, followed)
        said.extend(found)
        sizes = [
            _size(design, followed, step, _on_stick(design, values)) for step in followed.steps
        ]
        outcome = found[-1].outcome
        if outcome == GOOD and len(found) > 1:
            outcome = WATCH
        listing.append(
            OrderedDict(
                (
                    ("ring", followed.ring),
                    ("outcome", outcome),
                    ("why", found[-1].why),
                    ("remedy", found[-1].remedy),
                    ("sizes", sizes),
                )
            )
        )
    return listing, said


def sizes_of(design, values, number):
    """Dict: name of a size -> follow.Step of the ring of that number; empty where it was not
    measured. design: a Design. values: as of `answer`.
    """
    for followed in _followed(design, values):
        if followed.ring == number:
            return dict([(step.name, step) for step in followed.steps])
    return {}


def _followed(design, values):
    machine = values.get("machine") or "light"
    return follow(design, values.get("measured"), machine, _on_stick(design, values))


def _on_stick(design, values):
    return design.duty.turns == 2 and values.get("slit_on_stick") is True


def _size(design, followed, step, on_stick):
    label, operation = WORDS[step.name]
    other = _OTHER.get((design.duty.turns, step.name))
    if other is not None:
        operation = other[1] if design.duty.end_cut == "stepped" else other[0]
    if on_stick:
        operation = _ON_STICK.get(step.name, operation)
    if design.duty.setting == "bound" and operation == "put-on-former":
        operation = "put-on-former-bound"
    if operation == "clamp" and design.duty.finishing != "closing-ring":
        operation = "clamp-band" if design.duty.finishing == "band" else "clamp-forced"
    row = OrderedDict(
        (
            ("operation", operation),
            ("name", step.name),
            ("label", label),
            ("value", plain(step.value)),
            ("unit", "mm"),
        )
    )
    if step.lower is not None:
        row["limits"] = OrderedDict(
            (("lower", Quantity(step.lower, "mm")), ("upper", Quantity(step.upper, "mm")))
        )
    if step.measured is not None:
        row["measured"] = Quantity(step.measured, "mm")
    if step.within is not None:
        row["outcome"] = GOOD if step.within else WATCH
    cost = _cost(followed, step)
    if cost:
        row["cost"] = cost
    return row


def _cost(followed, step):
    """What a size outside its limits makes of the ring by itself, in words; empty within them."""
    made = followed.cost.get(step.name)
    if step.within is not False or made is None:
        return ""
    return "By itself it makes the ring %s thick, its gap %s along the ring, pressing %s." % (
        fine_length(made.thickness),
        fine_length(made.closed_gap),
        wall_pressure(made.wall_pressure),
    )


def findings(design, followed):
    """List of Finding for one ring: each size outside its limits, then the ring itself.

    design: a Design. followed: a follow.Followed.
    """
    rows = []
    for step in followed.steps:
        if step.within is False:
            rows.append(_out(design, followed, step))
    rows.append(_ring(design, followed))
    return rows


def _out(design, followed, step):
    """A size outside its limits, and what it alone would cost."""
    over = step.measured > step.upper
    limit = step.upper if over else step.lower
    label = WORDS[step.name][0]
    why = "Ring %s: %s %s, %s %s its limit." % (
        decimal(followed.ring, 0),
        label,
        fine_length(step.measured),
        fine_length(abs(step.measured - limit)),
        "over" if over else "under",
    )
    cost = _cost(followed, step)
    if cost:
        why += " " + cost
    remedy = "Work on to the sizes that this ring's card now gives."
    if followed.faults:
        remedy = _remedy(followed)
    return finding(
        "size-out",
        WATCH,
        why,
        remedy,
        Quantity(step.measured, "mm"),
        Quantity(limit, "mm"),
    )


def _ring(design, followed):
    number = decimal(followed.ring, 0)
    made = followed.made
    if not followed.faults:
        out = any([step.within is False for step in followed.steps])
        why = "Ring %s comes right%s: %s thick, its gap %s along the ring, pressing %s." % (
            number,
            " all the same" if out else "",
            fine_length(made.thickness),
            fine_length(made.closed_gap),
            wall_pressure(made.wall_pressure),
        )
        return finding("ring-made", GOOD, why)
    words = {}
    if made is not None:
        words = {
            "thickness": fine_length(made.thickness),
            "gap": fine_length(max(made.closed_gap, 0.0)),
            "pressure": wall_pressure(made.wall_pressure),
            "clean": fine_length(max(made.clean_up, 0.0)),
            "width": fine_length(followed.plan.width),
        }
    said = " and ".join([FAULTS[fault] % words for fault in followed.faults])
    why = "Ring %s as it stands: %s." % (number, said)
    outcome = WATCH if followed.remedy is not None or not followed.grave else STOP
    return finding("ring-made", outcome, why, _remedy(followed))


def _remedy(followed):
    if followed.remedy is None:
        if "relief" in followed.faults:
            return "Check former or spacer, saw cut and free gap: one of them is not as measured."
        if followed.relief is not None and followed.relief < SMALLEST_RELIEF:
            return "Set it again, hotter or longer: the heat gave it next to nothing."
        if not followed.grave:
            return "It may run so; nothing that is left to do brings it nearer."
        return "Nothing that is left to do brings it right: make it again."
    said = REMEDIES[followed.remedy.key] % fine_length(followed.remedy.value)
    if "pressure" in followed.faults:
        said += " Then it presses %s, %s of the aim." % (
            wall_pressure(followed.remedy.made.wall_pressure),
            percent(followed.remedy.made.wall_pressure / followed.remedy.aim),
        )
    return said
