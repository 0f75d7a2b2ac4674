"""Inputs of a drawing. Its parts and operations stand here by name; a test holds them to the tables
that draw them."""

from ..fields import field
from .inputs import fixed, nothing, table

PARTS = (
    "ring-closed",
    "ring-free",
    "gaps",
    "ring-turned-through",
    "blank",
    "template",
    "rotary-table",
    "blank-jaws",
    "slitting-mandrel",
    "former",
    "spacer",
    "pot",
    "closing-ring",
    "closing-band",
    "clamp-mandrel",
    "end-plate",
    "outer-clamp",
    "bore-gauge",
    "piston",
    "cylinder-section",
    "section-window",
    "free-shape",
    "steam-temperature",
    "operation",
)
OPERATIONS = (
    "survey",
    "face-bar",
    "drill",
    "turn-rough",
    "bore-rough",
    "bore",
    "part-off",
    "face-blank",
    "hold-stick",
    "mark-out",
    "slit",
    "slit-stick",
    "saw-off",
    "saw-wedges",
    "saw-ends",
    "saw-end",
    "saw-step",
    "deburr",
    "turn-through",
    "put-on-former",
    "put-on-former-bound",
    "spread",
    "soak",
    "take-off",
    "turn-back",
    "measure-free-gap",
    "face-step",
    "face-sides",
    "clamp",
    "clamp-forced",
    "clamp-band",
    "turn-finish",
    "bore-clamped",
    "dress-ends",
    "inspect",
    "fit",
    "fit-double",
)
# A card is for the pages that are made here, not to be asked for.
PAPERS = ("A4", "Letter", "screen")
METRIC = "metric"
INCH = "inch"
SYSTEMS = (METRIC, INCH)

DRAWING = table(
    field("part", "choice", "what to draw", fixed("ring-closed"), choices=PARTS),
    field(
        "operation",
        "choice",
        "which operation of the route card, for the part of that name",
        fixed("survey"),
        choices=OPERATIONS,
    ),
    field(
        "drawn_ring",
        "count",
        "whose sizes the picture of an operation shows",
        fixed(1),
        lowest=1,
        highest=200,
    ),
    field(
        "paper",
        "choice",
        "paper with border and title block, or a narrow screen",
        fixed("A4"),
        choices=PAPERS,
    ),
    field(
        "dimensions",
        "choice",
        "what the sizes on the drawing are in",
        fixed(METRIC),
        choices=SYSTEMS,
    ),
    field(
        "job_name", "text", "engine or job, for the title block", nothing("left to be filled in")
    ),
    field(
        "owner", "text", "workshop or club, for the title block", nothing("left to be filled in")
    ),
    field("date", "text", "date, for the title block", nothing("left to be filled in")),
    field(
        "geometry",
        "flag",
        "whether the lines of the drawing come back as numbers too",
        fixed(False),
    ),
)
