"""The stepped end of a plain ring: two tongues, sawn out of one blank, that lie side by side."""

from ..fields import field
from ..problems import OutOfRange, unworkable
from ..records import Choice
from ..ring import blank
from ..wording import length

# A tongue is as long as the ring is wide, and no less than so many closed gaps; common practice, no
# source.
GAPS_IN_A_TONGUE = 3.0

FIELD = field(
    "tongue_length",
    "length",
    "length of each tongue of a stepped end, along the ring",
    "as long as the ring is wide",
    lowest=0.2,
    highest=200.0,
    symbol="lt",
)


def joint_of(design, values, chosen):
    """The blank.SteppedJoint of a Design, None where its ends are cut otherwise.

    The saw that parts the tongues leaves its own thickness between them. design: a Design. values:
    checked inputs. chosen: list of Choice, added to. Raises InputProblem.
    """
    d = design
    if d.turns == 2 or d.end_cut != "stepped":
        return None
    tongue = values.get("tongue_length")
    if tongue is None:
        tongue = max(d.ring_width, GAPS_IN_A_TONGUE * d.closed_gap)
        chosen.append(Choice("tongue_length", tongue, "mm", "as long as the ring is wide"))
    if d.end_kerf >= d.ring_width:
        raise unworkable(
            "end_kerf",
            "the saw is as thick as the ring is wide: no tongue would be left",
            "give the thickness of a thinner saw",
        )
    try:
        return blank.stepped_joint(
            ring_width=d.ring_width,
            tongue_length=tongue,
            closed_gap=d.closed_gap,
            side_clearance=d.end_kerf,
        )
    except OutOfRange:
        raise unworkable(
            "tongue_length",
            "the tongues do not reach past one another when the ring is in the bore",
            "give more than the closed gap of " + length(d.closed_gap),
        )
