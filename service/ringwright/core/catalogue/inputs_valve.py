"""Inputs of a piston valve: liner, ports and bars."""

from ..fields import field
from .inputs import fixed, part_of, share, table

VALVE = table(
    field(
        "port_width",
        "length",
        "width of the port along the valve's axis",
        lowest=0.5,
        highest=300.0,
        required=True,
    ),
    field(
        "port_bars",
        "count",
        "bridge bars across the port",
        fixed(8, "common practice"),
        lowest=1,
        highest=60,
    ),
    field(
        "port_bar_width",
        "length",
        "width of a bar round the bore",
        part_of("the bore", 12),
        lowest=0.5,
        highest=200.0,
    ),
    field(
        "joint_pinned",
        "flag",
        "whether a pin keeps the ring's joint on a bar",
        fixed(False, "say so if a pin holds the joint on a bar"),
    ),
    field(
        "edge_rounding",
        "length",
        "rounding of the edges of ring and port",
        fixed(0.2, "edges broken by hand"),
        lowest=0.01,
        highest=3.0,
    ),
    field(
        "valve_travel",
        "length",
        "full travel of the valve",
        share("the bore", 0.4),
        lowest=1.0,
        highest=500.0,
    ),
)
