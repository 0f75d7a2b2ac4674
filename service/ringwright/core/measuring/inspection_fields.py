"""The inputs of "inspection": the ring as designed, and what was measured of the ring as made."""

from ..fields import field
from ..ring.ring_inputs import BLANK_FIELDS, RING_FIELDS

OUTER_EDGE = "outer-edge"
NEUTRAL_LINE = "neutral-line"
INNER_EDGE = "inner-edge"
GAP_PLACES = (OUTER_EDGE, NEUTRAL_LINE, INNER_EDGE)

BAND = "band"
ACROSS_TO_CLOSE = "across-to-close"
ACROSS_TO_BORE = "across-to-bore"
LOADINGS = (ACROSS_TO_CLOSE, BAND, ACROSS_TO_BORE)


MEASURED_FIELDS = (
    field(
        "measured_free_gap",
        "length",
        "gap of the free ring on the bench",
        "not measured",
        lowest=0.0,
        highest=1000.0,
    ),
    field(
        "gap_measured_at",
        "choice",
        "where across its thickness the free gap was measured",
        "outer-edge",
        choices=GAP_PLACES,
    ),
    field(
        "measured_thickness",
        "length",
        "radial thickness as made",
        "as designed",
        lowest=0.3,
        highest=60.0,
    ),
    field(
        "measured_width",
        "length",
        "width as made, both turns together",
        "as designed",
        lowest=0.5,
        highest=150.0,
    ),
    field(
        "measured_closed_gap",
        "length",
        "gap in the bore or in a gauge of its size, by feeler square to the cut",
        "as designed",
        lowest=0.0,
        highest=50.0,
    ),
    field(
        "measured_force",
        "force",
        "scale reading when the ring is closed, less the reading before",
        "not measured",
        lowest=0.01,
        highest=5000.0,
    ),
    field(
        "force_applied",
        "choice",
        "how the ring was closed on the scale: pressed across at 90 degrees to its gap until the "
        "gap is closed, drawn in by a flexible band round it, or pressed across until that "
        "diameter is the bore",
        "across-to-close",
        choices=LOADINGS,
    ),
    field(
        "measured_light",
        "length",
        "widest light between ring and bore or gauge, by feeler; 0 for none",
        "not looked for",
        lowest=0.0,
        highest=10.0,
    ),
    field(
        "measured_across",
        "length",
        "outside diameter of the free ring at 90 degrees to its gap",
        "not measured",
        lowest=8.0,
        highest=1200.0,
    ),
    field(
        "measured_along",
        "length",
        "outside diameter of the free ring from its back to its gap",
        "not measured",
        lowest=8.0,
        highest=1200.0,
    ),
    field(
        "former_used",
        "length",
        "diameter of the former the ring was set on",
        "as designed",
        lowest=8.0,
        highest=1500.0,
    ),
    field(
        "spacer_used",
        "length",
        "width of the spacer that held its gap open",
        "as designed",
        lowest=0.1,
        highest=1000.0,
    ),
)


FIELDS = RING_FIELDS + BLANK_FIELDS + MEASURED_FIELDS
EVIDENCE = (
    "measured_free_gap",
    "measured_thickness",
    "measured_width",
    "measured_closed_gap",
    "measured_force",
    "measured_light",
    "measured_across",
)
