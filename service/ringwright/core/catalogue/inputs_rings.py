"""What may be measured of the rings as they are made: one record a ring, by the card's own names."""

from ..fields import field
from .inputs import nothing, table, worked

# Name on the card -> what it is, least and greatest [mm].
SIZES = (
    ("bored_inside_diameter", "bore of the blank", 3.0, 1000.0),
    ("rough_outside_diameter", "rough outside of the blank", 5.0, 1000.0),
    ("blank_length", "length of the faced blank", 0.5, 200.0),
    ("slit_width", "width of the slit", 0.1, 10.0),
    ("end_kerf", "saw cut through the ends, square to it", 0.1, 15.0),
    ("former_diameter", "former that the ring was set on", 5.0, 1500.0),
    ("spacer_width", "opening of the spacer, along the ring", 0.1, 1000.0),
    ("free_gap", "free gap after setting, half-way through the thickness", 0.0, 1000.0),
    ("ring_width", "width after facing", 0.3, 150.0),
    ("closing_ring_bore", "bore of the closing ring that the ring goes into", 5.0, 1000.0),
    (
        "clamped_gap_reading",
        "gap in the closing ring or band, by feeler square to the cut",
        0.0,
        30.0,
    ),
    ("finish_outside_diameter", "finish-turned outside, clamped", 5.0, 1000.0),
    ("inside_diameter", "inside bored while clamped, of a ring turned in a band", 3.0, 1000.0),
    ("closed_gap_reading", "gap in the bore, by feeler square to the cut", 0.0, 50.0),
    ("radial_thickness", "radial thickness", 0.2, 60.0),
)
NAMES = tuple([row[0] for row in SIZES])

RINGS = table(
    field(
        "measured",
        "records",
        "what was measured of the rings, one record a ring: the rest of its card follows it",
        nothing("nothing measured yet"),
        lowest=1,
        highest=200,
        items=(
            field(
                "ring",
                "count",
                "number of the ring",
                worked("its place in the list"),
                lowest=1,
                highest=200,
            ),
        )
        + tuple(
            [
                field(
                    name, "length", meaning, nothing("not measured yet"), lowest=low, highest=high
                )
                for name, meaning, low, high in SIZES
            ]
        ),
    ),
)
