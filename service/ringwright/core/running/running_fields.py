"""The inputs of a running engine: engine, rings at hand, and what its owner wants to know."""

from collections import OrderedDict

from ..fields import field
from ..ring.ring_inputs import RING_FIELDS

DOUBLE = "double"
SINGLE = "single"

_SHARED = OrderedDict([(entry.name, entry) for entry in RING_FIELDS])


def _same(name):
    return _SHARED[name]


ENGINE_FIELDS = (
    _same("bore"),
    field("stroke", "length", "stroke of the piston", lowest=5.0, highest=3000.0, required=True),
    field("speed", "speed", "speed of the crankshaft", lowest=1.0, highest=3000.0, required=True),
    field(
        "steam_pressure",
        "pressure",
        "steam pressure in the chest as it runs, gauge",
        lowest=0.02,
        highest=6.0,
        required=True,
    ),
    field(
        "steam_temperature",
        "temperature",
        "steam temperature where it is superheated",
        "boiling point at the steam pressure",
        lowest=100.0,
        highest=500.0,
    ),
    field(
        "steam_dryness",
        "ratio",
        "share of the steam by weight that is not water",
        "1, dry",
        lowest=0.6,
        highest=1.0,
        symbol="x",
    ),
    field(
        "acting",
        "choice",
        "steam on both sides of the piston, or on one",
        "double",
        choices=(DOUBLE, SINGLE),
    ),
    field(
        "cut_off",
        "ratio",
        "share of the stroke at which the steam is cut off",
        "0.6",
        lowest=0.05,
        highest=0.95,
    ),
    field(
        "release",
        "ratio",
        "share of the stroke at which the exhaust opens",
        "half-way from cut-off to the end, 0.9 at the earliest",
        lowest=0.05,
        highest=1.0,
    ),
    field(
        "compression",
        "ratio",
        "share of the return stroke left when the exhaust closes",
        "0.1, or less where that would pass the steam pressure",
        lowest=0.0,
        highest=0.9,
    ),
    field(
        "clearance_volume",
        "ratio",
        "volume between piston and valve at the dead centre, as a share of the volume swept",
        "0.10",
        lowest=0.005,
        highest=0.5,
    ),
    field(
        "back_pressure",
        "pressure",
        "pressure in the exhaust, gauge; below nought with a condenser",
        "0.01 MPa (1.5 psi)",
        lowest=-0.095,
        highest=2.0,
    ),
    field(
        "missing_quantity",
        "ratio",
        "share of the steam that the indicator does not account for, with good rings",
        "0.30 for saturated steam (0.25 to 0.60), less with superheat",
        lowest=0.0,
        highest=0.8,
    ),
    field(
        "steam_measured",
        "mass",
        "feed water the cylinder really used in one hour's steady running",
        "reckoned from the cycle",
        lowest=0.01,
        highest=100000.0,
    ),
)
RING_AT_HAND_FIELDS = (
    _same("ring_type"),
    _same("end_cut"),
    field(
        "rings_on_piston",
        "count",
        "how many rings stand one behind another on the piston",
        "2",
        lowest=1,
        highest=8,
    ),
    field(
        "radial_thickness",
        "length",
        "radial thickness of the ring",
        "bore/28",
        lowest=0.3,
        highest=60.0,
        symbol="a1",
    ),
    field(
        "ring_width",
        "length",
        "width of one ring, both turns together",
        "plain 1.25 thicknesses, double-turn 2 thicknesses",
        lowest=0.5,
        highest=150.0,
        symbol="h1",
    ),
    field(
        "worn_gap",
        "length",
        "gap of the ring at hand, measured cold in the bore",
        "as new",
        lowest=0.0,
        highest=60.0,
    ),
    field(
        "closed_gap",
        "length",
        "gap of a new ring, cold in the bore",
        "expansion to steam heat, with the cylinder half warm for a plain ring and stone cold "
        "for a double-turn ring, and a margin",
        lowest=0.0,
        highest=30.0,
        symbol="s1",
    ),
    field(
        "piston_diameter",
        "length",
        "diameter of the piston at its lands",
        "bore less the clearance its material needs hot",
        lowest=4.0,
        highest=900.0,
    ),
    field(
        "side_clearance",
        "length",
        "clearance of the ring in its groove, cold",
        "from practice, by bore",
        lowest=0.0,
        highest=5.0,
    ),
    field(
        "groove_wear",
        "length",
        "how far the side of the groove is out of flat across the ring's seat",
        "0",
        lowest=0.0,
        highest=2.0,
    ),
    field("new_groove", "flag", "whether the groove is trued up when new rings are fitted", "true"),
    field("light", "length", "widest light between ring and bore", "0", lowest=0.0, highest=5.0),
    field(
        "light_length",
        "length",
        "how far round the bore that light reaches",
        "0",
        lowest=0.0,
        highest=3000.0,
    ),
    _same("ring_material"),
    _same("piston_material"),
    _same("cylinder_material"),
    _same("shop_temperature"),
    field(
        "wall_pressure",
        "pressure",
        "pressure of the ring's own spring on the wall",
        "0.048 MPa (7 psi), from practice",
        lowest=0.0,
        highest=1.0,
        symbol="p",
    ),
    field(
        "friction_coefficient",
        "ratio",
        "coefficient of friction between ring and bore",
        "0.10 oiled iron (0.05 to 0.15), 0.12 filled PTFE (0.06 to 0.20)",
        lowest=0.005,
        highest=1.0,
        symbol="mu",
    ),
)
OWNER_FIELDS = (
    field(
        "largest_leak_share",
        "ratio",
        "share of the steam that may leak before rings are renewed",
        "0.05",
        lowest=0.005,
        highest=0.5,
    ),
    field(
        "gap_readings",
        "records",
        "gaps measured at known running hours, cold in the bore",
        "none",
        lowest=2,
        highest=50,
        items=(
            field(
                "hours",
                "duration",
                "running hours when it was measured",
                lowest=0.0,
                highest=1000000.0,
                required=True,
            ),
            field(
                "gap",
                "length",
                "gap of the ring in the bore",
                lowest=0.0,
                highest=60.0,
                required=True,
            ),
        ),
    ),
    field(
        "hours_per_season",
        "duration",
        "running hours in a season",
        "not reckoned",
        lowest=0.0,
        highest=9000.0,
    ),
    field(
        "boiler_efficiency",
        "ratio",
        "share of the fuel's heat that reaches the steam",
        "0.6 (0.5 to 0.75)",
        lowest=0.1,
        highest=0.95,
    ),
    field(
        "fuel_heat",
        "number",
        "heat of the fuel in MJ to the kg: coal about 30, dry wood 15",
        "30, coal",
        lowest=5.0,
        highest=50.0,
    ),
    field(
        "feed_temperature",
        "temperature",
        "temperature of the feed water",
        "20 degC",
        lowest=1.0,
        highest=100.0,
    ),
)
FIELDS = ENGINE_FIELDS + RING_AT_HAND_FIELDS + OWNER_FIELDS
