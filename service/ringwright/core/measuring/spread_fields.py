"""The inputs of "spread": the ring, how far each measure may be off, and what will do."""

from ..fields import field
from ..ring.ring_inputs import BLANK_FIELDS, RING_FIELDS

FIELDS = (
    RING_FIELDS
    + BLANK_FIELDS
    + (
        field(
            "modulus_spread",
            "modulus",
            "by how much the modulus may be off, 95 %",
            "as published for the material; 3 % where a modulus is given",
            lowest=0.0,
            highest=100000.0,
        ),
        field(
            "relief_spread",
            "ratio",
            "by how much the relief may be off, 95 %",
            "as expected of the soak; 0.03 where a relief is given",
            lowest=0.0,
            highest=0.5,
        ),
        field(
            "thickness_spread",
            "length",
            "by how much the radial thickness may be off, 95 %",
            "0.03 mm",
            lowest=0.0,
            highest=5.0,
        ),
        field(
            "kerf_spread",
            "length",
            "by how much the saw cut may be off, 95 %",
            "0.05 mm",
            lowest=0.0,
            highest=5.0,
        ),
        field(
            "bore_spread",
            "length",
            "by how much the bore may be off what was measured, 95 %",
            "0.02 mm",
            lowest=0.0,
            highest=5.0,
        ),
        field(
            "outside_spread",
            "length",
            "by how much the finish-turned outside may be off, 95 %",
            "0.02 mm",
            lowest=0.0,
            highest=5.0,
        ),
        field(
            "tool_spread",
            "length",
            "by how much the former's diameter or the spacer's width may be off, 95 %",
            "0.05 mm",
            lowest=0.0,
            highest=5.0,
        ),
        field(
            "lowest_pressure",
            "pressure",
            "least wall pressure that will do",
            "three quarters of the pressure aimed at",
            lowest=0.0,
            highest=2.0,
        ),
        field(
            "highest_pressure",
            "pressure",
            "greatest wall pressure that will do",
            "one and a quarter times the pressure aimed at",
            lowest=0.0,
            highest=2.0,
        ),
        field(
            "lowest_closed_gap",
            "length",
            "least gap in the cold bore that will do",
            "what is used up when the engine is started hot",
            lowest=0.0,
            highest=50.0,
        ),
        field(
            "highest_closed_gap",
            "length",
            "greatest gap in the cold bore that will do",
            "twice the gap aimed at and 0.1 mm",
            lowest=0.0,
            highest=50.0,
        ),
    )
)
