"""Inputs of a ring on its wall: steam round it, the shape of the bore, the ring as it lies free."""

from ..fields import field
from .inputs import fixed, nothing, table

# Highest order of a lobe: beyond it no ring follows.
LARGEST_ORDER = 12

HARMONIC_ENTRY = (
    field(
        "order",
        "count",
        "how many lobes: 2 for oval, 3 for three-lobed",
        lowest=2,
        highest=12,
        symbol="n",
        required=True,
    ),
    field(
        "amplitude",
        "length",
        "how far the lobes stand out from the mean radius",
        lowest=-5.0,
        highest=5.0,
        symbol="U_n",
        required=True,
    ),
    field("phase", "angle", "direction of one lobe", fixed(0.0), lowest=-360.0, highest=360.0),
)

BORE_RADIUS_ENTRY = (
    field(
        "angle", "angle", "direction of the reading", lowest=-360.0, highest=720.0, required=True
    ),
    field(
        "radius",
        "length",
        "radius of the bore in that direction, from any centre near its middle",
        lowest=4.0,
        highest=500.0,
        required=True,
    ),
)

SHAPE_ENTRY = (
    field(
        "harmonics",
        "records",
        "the bore as lobes about its mean circle",
        highest=20,
        items=HARMONIC_ENTRY,
    ),
    field(
        "readings",
        "records",
        "radii of the bore all the way round",
        lowest=6,
        highest=360,
        items=BORE_RADIUS_ENTRY,
    ),
)

RADIUS_ENTRY = (
    field(
        "angle",
        "angle",
        "direction of the reading, rising from one free end to the other, over both turns of a "
        "double-turn ring",
        lowest=0.0,
        highest=720.0,
        required=True,
    ),
    field(
        "radius",
        "length",
        "radius of the free ring's outside in that direction, from any centre near its middle",
        lowest=4.0,
        highest=700.0,
        required=True,
    ),
)

WALL = table(
    field(
        "pressure_behind",
        "pressure",
        "steam behind the ring, gauge",
        fixed(0.0, "the ring's spring alone", "none: the ring's spring alone"),
        lowest=0.0,
        highest=10.0,
        symbol="q",
    ),
    field(
        "face_pressure",
        "pressure",
        "steam between the face and the wall that pushes the ring back, gauge; about half of the "
        "steam behind where the ring is narrow",
        fixed(0.0, "no steam on the face", "none"),
        lowest=0.0,
        highest=10.0,
    ),
    field(
        "bore_shape",
        "object",
        "how the bore departs from a circle, as lobes or as readings",
        nothing("round"),
        items=SHAPE_ENTRY,
    ),
    field(
        "gap_direction",
        "angle",
        "direction in the bore of the ring's gap, or of the bridge of a double-turn ring",
        fixed(0.0, "the direction angles are counted from"),
        lowest=-360.0,
        highest=360.0,
    ),
    field(
        "free_shape",
        "records",
        "radii of the free ring's outside from one free end to the other, to use in place of a "
        "way of setting",
        nothing("from the setting"),
        lowest=9,
        highest=200,
        items=RADIUS_ENTRY,
    ),
    field(
        "steps_per_turn",
        "count",
        "how finely each turn is divided",
        fixed(360, "a step a degree"),
        lowest=90,
        highest=720,
    ),
)
