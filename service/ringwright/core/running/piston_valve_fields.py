"""The inputs of a piston valve: liner, ports, bars and rings."""

from collections import OrderedDict

from ..fields import field
from ..ring.ring_inputs import RING_FIELDS

_SHARED = OrderedDict([(entry.name, entry) for entry in RING_FIELDS])


def _same(name):
    return _SHARED[name]


FIELDS = (
    field(
        "bore",
        "length",
        "bore of the valve liner, which is the closed outside diameter of the ring",
        lowest=10.0,
        highest=900.0,
        symbol="d1",
        required=True,
    ),
    field(
        "steam_pressure",
        "pressure",
        "steam pressure in the chest, gauge",
        lowest=0.02,
        highest=6.0,
        required=True,
    ),
    field(
        "port_width",
        "length",
        "width of the port along the valve's axis",
        lowest=0.5,
        highest=300.0,
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
        "back_pressure",
        "pressure",
        "pressure in the exhaust, gauge",
        "0.01 MPa (1.5 psi)",
        lowest=-0.095,
        highest=2.0,
    ),
    field(
        "ring_width",
        "length",
        "width of one ring",
        "1.25 thicknesses",
        lowest=0.5,
        highest=150.0,
        symbol="h1",
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
    field("rings", "count", "rings between steam and exhaust", "2", lowest=1, highest=8),
    field("bars", "count", "bridge bars across the port", "8", lowest=1, highest=60),
    field(
        "bar_width", "length", "width of a bar round the bore", "bore/12", lowest=0.5, highest=200.0
    ),
    field("joint_pinned", "flag", "whether a pin keeps the ring's joint on a bar", "false"),
    field(
        "edge_rounding",
        "length",
        "rounding of the edges of ring and port",
        "0.2 mm",
        lowest=0.01,
        highest=3.0,
    ),
    field(
        "valve_travel",
        "length",
        "full travel of the valve",
        "0.4 of the bore",
        lowest=1.0,
        highest=500.0,
    ),
    field("speed", "speed", "speed of the crankshaft", "200 1/min", lowest=1.0, highest=3000.0),
    field(
        "piston_diameter",
        "length",
        "diameter of the valve across its lands",
        "bore less the clearance its material needs hot",
        lowest=4.0,
        highest=900.0,
    ),
    field(
        "closed_gap",
        "length",
        "gap of a new ring, cold in the liner",
        "expansion to steam heat, with the liner half warm for a plain ring and stone cold "
        "for a double-turn ring, and a margin",
        lowest=0.0,
        highest=30.0,
        symbol="s1",
    ),
    field(
        "worn_gap",
        "length",
        "gap of the ring at hand, measured cold in the liner",
        "as new",
        lowest=0.0,
        highest=60.0,
    ),
    field(
        "side_clearance",
        "length",
        "clearance of the ring in its groove, cold",
        "from practice, by bore",
        lowest=0.0,
        highest=5.0,
    ),
    _same("ring_type"),
    _same("end_cut"),
    _same("ring_material"),
    _same("modulus"),
    _same("piston_material"),
    _same("cylinder_material"),
    _same("shop_temperature"),
    field(
        "wall_pressure",
        "pressure",
        "pressure of the ring's own spring on the liner",
        "0.048 MPa (7 psi), from practice",
        lowest=0.002,
        highest=1.0,
        symbol="p",
    ),
    field(
        "friction_coefficient",
        "ratio",
        "coefficient of friction between ring and liner",
        "0.10 oiled iron (0.05 to 0.15), 0.12 filled PTFE (0.06 to 0.20)",
        lowest=0.005,
        highest=1.0,
        symbol="mu",
    ),
)
