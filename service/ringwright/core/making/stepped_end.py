"""The stepped end of a plain ring: two tongues, sawn out of one blank, that lie side by side."""

from ..catalogue.inputs import Chooser
from ..catalogue.inputs_tools import TOOLING
from ..problems import OutOfRange, unworkable
from ..ring import blank
from ..wording import length


def joint_of(design, values, chosen):
    """The blank.SteppedJoint of a Design, None where its ends are cut otherwise.

    The saw that parts the tongues leaves its own thickness between them. design: a Design. values:
    checked inputs. chosen: list of Choice, added to. Raises InputProblem.
    """
    d = design
    if d.duty.turns == 2 or d.duty.end_cut != "stepped":
        return None
    take = Chooser(values, TOOLING)
    tongue = take("tongue_length", d.section.width, d.duty.closed_gap)
    chosen.extend(take.chosen)
    if d.allowances.kerf >= d.section.width:
        raise unworkable(
            "end_kerf",
            "the saw is as thick as the ring is wide: no tongue would be left",
            "give the thickness of a thinner saw",
        )
    try:
        return blank.stepped_joint(
            ring_width=d.section.width,
            tongue_length=tongue,
            closed_gap=d.duty.closed_gap,
            side_clearance=d.allowances.kerf,
        )
    except OutOfRange:
        raise unworkable(
            "tongue_length",
            "the tongues do not reach past one another when the ring is in the bore",
            "give more than the closed gap of " + length(d.duty.closed_gap),
            value=tongue,
            lowest=d.duty.closed_gap,
        )
