"""Inputs of a spring behind a ring, and the metals it may be of."""

from collections import OrderedDict

from ..fields import field
from .inputs import fixed, share, table, worked

# Metal of the strip: E [N/mm2], bending stress it bears for good [N/mm2], hottest [degC]; E and
# hottest by spring makers' tables, the stress practice, on the careful side: carbon steel; 302.
METALS = OrderedDict(
    (
        ("carbon-spring-steel", (206000.0, 600.0, 120.0)),
        ("stainless-spring", (185000.0, 500.0, 250.0)),
    )
)

COIL = "coil-spring"
STRIP = table(
    field(
        "expander_kind",
        "choice",
        "wavy-strip: a wavy strip of spring steel; coil-spring: a coil lying in a ring behind it",
        fixed("wavy-strip", "needs least room"),
        choices=("wavy-strip", COIL),
    ),
    field(
        "coil_diameter",
        "length",
        "diameter over all of the expander's coil",
        worked("what fits behind the ring", "the largest that fits bears most"),
        lowest=0.6,
        highest=60.0,
    ),
    field(
        "wire_diameter",
        "length",
        "wire of the expander's coil",
        worked("the thinnest that bears", "gives way farthest, so that wear takes least"),
        lowest=0.1,
        highest=10.0,
        symbol="d",
    ),
    field(
        "coil_turns",
        "count",
        "turns of the expander's coil",
        worked("as many as keep air between them"),
        lowest=4,
        highest=20000,
        symbol="n",
    ),
    field(
        "strip_material",
        "choice",
        "metal of the expander's strip",
        fixed("stainless-spring", "carbon steel slackens in the heat of steam"),
        choices=tuple(METALS),
    ),
    field(
        "strip_width",
        "length",
        "width of the expander's strip",
        share("the ring's width", 0.9, "free in its groove"),
        lowest=0.3,
        highest=150.0,
        symbol="b",
    ),
    field(
        "strip_thickness",
        "length",
        "thickness of the expander's strip",
        worked(
            "the one that gives way farthest",
            "of those that fit it gives way farthest, so that wear takes least of its pressure",
        ),
        lowest=0.05,
        highest=5.0,
        symbol="t",
    ),
    field(
        "strip_waves",
        "count",
        "waves of the expander's strip, all the way round",
        worked("fewest that bear", "the fewest whose stress the metal bears"),
        lowest=3,
        highest=120,
        symbol="N",
    ),
)
