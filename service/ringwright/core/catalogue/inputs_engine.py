"""Inputs of a running engine: engine, ring at hand, and what its owner wants to know."""

from ..fields import field
from ..wording import decimal, wall_pressure
from .inputs import cases, fixed, nothing, table, worked

DOUBLE = "double"
SINGLE = "single"
# A case of a default: the gap was measured as the engine ran.
WITH_READINGS = "with readings"
# Gauge pressure in an exhaust to the air [MPa].
USUAL_EXHAUST = 0.01
# Share of the steam supplied that the indicator does not account for, condensation and leakage:
# low, usual, high.
MISSING_QUANTITY = (0.25, 0.30, 0.60)
# Coefficients of friction: low, usual, high. The usual one of oiled iron is a textbook's; of
# PTFE with glass a maker's 0.12 moving, 0.2 at rest on steel.
OILED_IRON = (0.05, 0.10, 0.15)
FILLED_PTFE = (0.06, 0.12, 0.20)


def spread_words(spread):
    """A low, usual and high number as words: "0.10 (0.05 to 0.15)"."""
    return "%s (%s to %s)" % tuple([decimal(spread[at], 2) for at in (1, 0, 2)])


GAP_ENTRY = (
    field(
        "hours",
        "duration",
        "running hours when it was measured",
        lowest=0.0,
        highest=1000000.0,
        required=True,
    ),
    field("gap", "length", "gap of the ring in the bore", lowest=0.0, highest=60.0, required=True),
)

ENGINE = table(
    field("stroke", "length", "stroke of the piston", lowest=5.0, highest=3000.0, required=True),
    field(
        "speed",
        "speed",
        "speed of the crankshaft",
        fixed(200.0, "an engine of moderate speed"),
        lowest=1.0,
        highest=3000.0,
    ),
    field(
        "steam_dryness",
        "ratio",
        "share of the steam by weight that is not water",
        fixed(1.0, "dry steam"),
        lowest=0.6,
        highest=1.0,
        symbol="x",
    ),
    field(
        "acting",
        "choice",
        "steam on both sides of the piston, or on one",
        fixed(DOUBLE, "most cylinders take steam on both sides"),
        choices=(DOUBLE, SINGLE),
    ),
    field(
        "cut_off",
        "ratio",
        "share of the stroke at which the steam is cut off",
        fixed(0.6, "a slide valve a little linked up"),
        lowest=0.05,
        highest=0.95,
    ),
    field(
        "release",
        "ratio",
        "share of the stroke at which the exhaust opens",
        worked("half-way from cut-off to the end of the stroke, 0.9 at the earliest"),
        lowest=0.05,
        highest=1.0,
    ),
    field(
        "compression",
        "ratio",
        "share of the return stroke left when the exhaust closes",
        worked(
            "0.1, or less where that would pass the steam pressure",
            "the last tenth of the return, later where that would pass the steam pressure",
        ),
        lowest=0.0,
        highest=0.9,
    ),
    field(
        "clearance_volume",
        "ratio",
        "volume between piston and valve at the dead centre, as a share of the volume swept",
        fixed(0.1, "ports and piston clearance of a slide-valve cylinder"),
        lowest=0.005,
        highest=0.5,
    ),
    field(
        "back_pressure",
        "pressure",
        "pressure in the exhaust, gauge; below nought with a condenser",
        fixed(USUAL_EXHAUST, "an exhaust to the air through a pipe", wall_pressure(USUAL_EXHAUST)),
        lowest=-0.095,
        highest=2.0,
    ),
    field(
        "missing_quantity",
        "ratio",
        "share of the steam that the indicator does not account for, with good rings",
        worked(
            spread_words(MISSING_QUANTITY) + " for saturated steam, less with superheat",
            "%s in published trials",
        ),
        lowest=0.0,
        highest=0.8,
    ),
    field(
        "steam_measured",
        "mass",
        "feed water the cylinder really used in one hour's steady running",
        nothing("worked out from the cycle"),
        lowest=0.01,
        highest=100000.0,
    ),
)

RING_AT_HAND = table(
    field(
        "rings_on_piston",
        "count",
        "rings one behind another on the piston, or on one head of a piston valve",
        fixed(2, "two rings are usual"),
        lowest=1,
        highest=8,
    ),
    field(
        "worn_gap",
        "length",
        "gap of the ring at hand, measured cold in the bore",
        cases(
            ("", worked("as new", "as new: measure it cold in the bore")),
            (WITH_READINGS, worked("the last reading")),
        ),
        lowest=0.0,
        highest=60.0,
    ),
    field(
        "side_clearance",
        "length",
        "clearance of the ring in its groove, cold",
        worked("from practice, by bore"),
        lowest=0.0,
        highest=5.0,
    ),
    field(
        "groove_wear",
        "length",
        "how far the side of the groove is out of flat across the ring's seat",
        fixed(0.0, "as new"),
        lowest=0.0,
        highest=2.0,
    ),
    field(
        "new_groove",
        "flag",
        "whether the groove is trued up when new rings are fitted",
        fixed(True, "a worn groove is trued up for new rings"),
    ),
    field(
        "light",
        "length",
        "widest light between ring and bore",
        fixed(0.0, "as new"),
        lowest=0.0,
        highest=5.0,
    ),
    field(
        "light_length",
        "length",
        "how far round the bore that light reaches",
        fixed(0.0, "as new"),
        lowest=0.0,
        highest=3000.0,
    ),
    field(
        "friction_coefficient",
        "ratio",
        "coefficient of friction between ring and bore",
        worked(
            spread_words(OILED_IRON) + " oiled iron, " + spread_words(FILLED_PTFE) + " filled PTFE",
            "%s, from well oiled to short of oil",
        ),
        lowest=0.005,
        highest=1.0,
        symbol="mu",
    ),
)

OWNER = table(
    field(
        "largest_leak_share",
        "ratio",
        "share of the steam that may leak before rings are renewed",
        fixed(0.05, "a loss an owner notices"),
        lowest=0.005,
        highest=0.5,
    ),
    field(
        "gap_readings",
        "records",
        "gaps measured at known running hours, cold in the bore",
        nothing("none"),
        lowest=2,
        highest=50,
        items=GAP_ENTRY,
    ),
    field(
        "hours_per_season",
        "duration",
        "running hours in a season",
        nothing("not worked out"),
        lowest=0.0,
        highest=9000.0,
    ),
    field(
        "boiler_efficiency",
        "ratio",
        "share of the fuel's heat that reaches the steam",
        fixed(0.6, "a small boiler in fair order"),
        lowest=0.1,
        highest=0.95,
    ),
    field(
        "fuel_heat",
        "number",
        "heat of the fuel in MJ to the kg: coal about 30, dry wood 15",
        fixed(30.0, "steam coal, MJ to the kg"),
        lowest=5.0,
        highest=50.0,
    ),
    field(
        "feed_temperature",
        "temperature",
        "temperature of the feed water",
        fixed(20.0, "cold feed"),
        lowest=1.0,
        highest=100.0,
    ),
)
