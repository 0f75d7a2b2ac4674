"""Inputs of what is measured: bore, finished ring, and how far each size may be off."""

from ..fields import field
from .inputs import cases, fixed, nothing, share, table, worked
from .inputs_ring import SMALLEST_BORE

TWO_POINT = "two-point"
THREE_POINT = "three-point"
GAUGES = (TWO_POINT, THREE_POINT)
OUTER_EDGE = "outer-edge"
NEUTRAL_LINE = "neutral-line"
INNER_EDGE = "inner-edge"
GAP_PLACES = (OUTER_EDGE, NEUTRAL_LINE, INNER_EDGE)
BAND = "band"
ACROSS_TO_CLOSE = "across-to-close"
ACROSS_TO_BORE = "across-to-bore"
LOADINGS = (ACROSS_TO_CLOSE, BAND, ACROSS_TO_BORE)
# A case of a default: what the spread is of was given, not worked out.
GIVEN = "where it is given"

READING_ENTRY = (
    field(
        "height",
        "length",
        "how far along the bore, from any end",
        fixed(0.0),
        lowest=0.0,
        highest=5000.0,
    ),
    field(
        "direction",
        "angle",
        "direction of the gauge, from any mark; along the crankshaft 0, across it 90",
        fixed(0.0),
        lowest=-360.0,
        highest=720.0,
    ),
    field("diameter", "length", "what the gauge reads", lowest=8.0, highest=1000.0, required=True),
    field("gauge", "choice", "how many feet the gauge has", fixed(TWO_POINT), choices=GAUGES),
)

SURVEY = table(
    field(
        "readings",
        "records",
        "diameters of the bore, two or more, best at three heights and in four directions",
        lowest=2,
        highest=200,
        items=READING_ENTRY,
        required=True,
    ),
    field(
        "gauge_uncertainty",
        "length",
        "uncertainty of one reading, 95 %, setting of the gauge included",
        fixed(0.01, "a dial bore gauge in use"),
        lowest=0.0,
        highest=1.0,
        symbol="U",
    ),
    field(
        "largest_bore",
        "length",
        "the largest bore that the cylinder's wall allows",
        nothing("not known"),
        lowest=SMALLEST_BORE,
        highest=1000.0,
    ),
)

MEASURED = table(
    field(
        "measured_free_gap",
        "length",
        "gap of the free ring on the bench",
        nothing("not measured"),
        lowest=0.0,
        highest=1000.0,
    ),
    field(
        "gap_measured_at",
        "choice",
        "where across its thickness the free gap was measured",
        fixed(OUTER_EDGE, "the usual way"),
        choices=GAP_PLACES,
    ),
    field(
        "measured_thickness",
        "length",
        "radial thickness as made",
        nothing("as designed"),
        lowest=0.3,
        highest=60.0,
    ),
    field(
        "measured_width",
        "length",
        "width as made, both turns together",
        nothing("as designed"),
        lowest=0.5,
        highest=150.0,
    ),
    field(
        "measured_closed_gap",
        "length",
        "gap in the bore or in a gauge of its size, by feeler square to the cut",
        nothing("as designed"),
        lowest=0.0,
        highest=50.0,
    ),
    field(
        "measured_force",
        "force",
        "scale reading when the ring is closed, less the reading before",
        nothing("not measured"),
        lowest=0.01,
        highest=5000.0,
    ),
    field(
        "force_applied",
        "choice",
        "how the ring was closed on the scale: pressed across, at 90 degrees to its gap, until the "
        "gap is closed; drawn in by a flexible band; or pressed across to the size of the bore",
        fixed(ACROSS_TO_CLOSE, "the usual way"),
        choices=LOADINGS,
    ),
    field(
        "measured_light",
        "length",
        "widest light between ring and bore or gauge, by feeler; 0 for none",
        nothing("not looked for"),
        lowest=0.0,
        highest=10.0,
    ),
    field(
        "measured_across",
        "length",
        "outside diameter of the free ring at 90 degrees to its gap",
        nothing("not measured"),
        lowest=8.0,
        highest=1200.0,
    ),
    field(
        "measured_along",
        "length",
        "outside diameter of the free ring from its back to its gap",
        nothing("not measured"),
        lowest=8.0,
        highest=1200.0,
    ),
    field(
        "former_used",
        "length",
        "diameter of the former the ring was set on",
        nothing("as designed"),
        lowest=8.0,
        highest=1500.0,
    ),
    field(
        "spacer_used",
        "length",
        "width of the spacer that held its gap open",
        nothing("as designed"),
        lowest=0.1,
        highest=1000.0,
    ),
)

SPREADS = table(
    field(
        "modulus_spread",
        "modulus",
        "by how much the modulus may be off, 95 %",
        cases(
            ("", worked("as published for the material", "as published for %s")),
            (GIVEN, share("it", 0.03, "3 % of the modulus given")),
        ),
        lowest=0.0,
        highest=100000.0,
    ),
    field(
        "relief_spread",
        "ratio",
        "by how much the relief may be off, 95 %",
        cases(
            ("", worked("as expected of the soak")),
            (GIVEN, fixed(0.03, "a relief that was measured")),
        ),
        lowest=0.0,
        highest=0.5,
    ),
    field(
        "thickness_spread",
        "length",
        "by how much the radial thickness may be off, 95 %",
        fixed(0.03, "usual turning"),
        lowest=0.0,
        highest=5.0,
    ),
    field(
        "kerf_spread",
        "length",
        "by how much the saw cut may be off, 95 %",
        fixed(0.05, "usual sawing"),
        lowest=0.0,
        highest=5.0,
    ),
    field(
        "bore_spread",
        "length",
        "by how much the bore may be off what was measured, 95 %",
        fixed(0.02, "usual gauging"),
        lowest=0.0,
        highest=5.0,
    ),
    field(
        "outside_spread",
        "length",
        "by how much the finish-turned outside may be off, 95 %",
        fixed(0.02, "usual finish-turning"),
        lowest=0.0,
        highest=5.0,
    ),
    field(
        "tool_spread",
        "length",
        "by how much the former's diameter or the spacer's width may be off, 95 %",
        fixed(0.05, "usual turning"),
        lowest=0.0,
        highest=5.0,
    ),
    field(
        "lowest_pressure",
        "pressure",
        "least wall pressure that will do",
        worked("three quarters of the aim, and what sizing does not stop"),
        lowest=0.0,
        highest=2.0,
    ),
    field(
        "highest_pressure",
        "pressure",
        "greatest wall pressure that will do",
        worked("one and a quarter times the aim, and what sizing does not stop"),
        lowest=0.0,
        highest=2.0,
    ),
    field(
        "lowest_closed_gap",
        "length",
        "least gap in the cold bore that will do",
        worked("what is used up when the engine is started hot", "used up when started hot"),
        lowest=0.0,
        highest=50.0,
    ),
    field(
        "highest_closed_gap",
        "length",
        "greatest gap in the cold bore that will do",
        worked("twice the aim and 0.1 mm, and not so wide that a plain ring leaks"),
        lowest=0.0,
        highest=50.0,
    ),
)
