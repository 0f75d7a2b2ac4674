"""The inputs of a piston valve: liner, ports, bars and rings."""

from collections import OrderedDict

from ..fields import field
from ..ring.ring_inputs import RING_FIELDS
from .running_fields import ENGINE_FIELDS, RING_AT_HAND_FIELDS

_SHARED = OrderedDict(
    [(entry.name, entry) for entry in RING_FIELDS + ENGINE_FIELDS + RING_AT_HAND_FIELDS]
)


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
    _same("steam_pressure"),
    field(
        "port_width",
        "length",
        "width of the port along the valve's axis",
        lowest=0.5,
        highest=300.0,
        required=True,
    ),
    _same("steam_temperature"),
    _same("back_pressure"),
    field(
        "ring_width",
        "length",
        "width of one ring",
        "1.25 thicknesses",
        lowest=0.5,
        highest=150.0,
        symbol="h1",
    ),
    _same("radial_thickness"),
    field("rings_on_piston", "count", "rings between steam and exhaust", "2", lowest=1, highest=8),
    field("port_bars", "count", "bridge bars across the port", "8", lowest=1, highest=60),
    field(
        "port_bar_width",
        "length",
        "width of a bar round the bore",
        "bore/12",
        lowest=0.5,
        highest=200.0,
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
    _same("closed_gap"),
    _same("worn_gap"),
    _same("side_clearance"),
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
    _same("friction_coefficient"),
)
