"""Inputs of a worn groove and of what stands beside it."""

from ..fields import field
from .inputs import cases, fixed, nothing, table, worked

# A case of a default: grooves that are still to be cut.
NEW_GROOVES = "for new grooves"

READING = (
    field("mouth", "length", "width at the mouth", lowest=0.5, highest=150.0, required=True),
    field("bottom", "length", "width at the bottom", lowest=0.5, highest=150.0, required=True),
)

_LAND = "as wide as a turn of the ring, more where strength asks for it"
PACK = table(
    field(
        "piston_length",
        "length",
        "length of the piston over its rim, for rings and lands",
        nothing("as long as rings and lands need"),
        lowest=1.0,
        highest=2000.0,
    ),
)
GROOVE = table(
    field(
        "groove_readings",
        "records",
        "width of the worn groove at several places round it, by slips or gauge blocks",
        lowest=1,
        highest=24,
        items=READING,
        required=True,
    ),
    field(
        "groove_step",
        "length",
        "depth of a step worn into the sides beyond those widths, both sides together",
        fixed(0.0, "no step"),
        lowest=0.0,
        highest=10.0,
    ),
    field(
        "side_cut",
        "length",
        "cut off each side of the groove so that it cleans up",
        fixed(0.1, "cleans up a worn side; common practice"),
        lowest=0.01,
        highest=5.0,
    ),
    field(
        "end_land",
        "length",
        "land between a groove and the end of the piston",
        cases(
            (
                "",
                worked("as wide as the groove", "as wide as the groove, as is common: measure it"),
            ),
            (NEW_GROOVES, worked("as wide as a turn", _LAND)),
        ),
        lowest=0.2,
        highest=500.0,
    ),
    field(
        "inner_land",
        "length",
        "land between two grooves",
        cases(("", nothing("no second groove")), (NEW_GROOVES, worked("as wide as a turn", _LAND))),
        lowest=0.2,
        highest=500.0,
    ),
    field(
        "old_ring_width",
        "length",
        "width of the ring that the groove was made for",
        nothing("no insert beside it is looked at"),
        lowest=0.5,
        highest=150.0,
    ),
    field(
        "passed_port",
        "length",
        "width, along the bore, of a port that the ring passes",
        nothing("it passes none"),
        lowest=0.5,
        highest=300.0,
    ),
    field(
        "ring_overrun",
        "length",
        "how far the edge of the present ring passes the end of the bore, or the ledge there",
        nothing("it stays in the bore"),
        lowest=0.0,
        highest=100.0,
    ),
)
