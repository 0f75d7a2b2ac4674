"""All that a part is drawn from: the Design, its Tooling, and how the drawing is wanted."""

import math
from collections import namedtuple

from ..design import CUT_ANGLES

# design, tooling: as settled. acts: Behaviour of the ring. system: metric or inch. paper: key of
# paper.PAPERS. title: a paper.Title without its part. sizes: OrderedDict tool -> OrderedDict name
# -> Size. materials: OrderedDict tool -> what it is made of.
Job = namedtuple(
    "Job", ("design", "tooling", "acts", "system", "paper", "title", "sizes", "materials")
)


def cut_angle(design):
    """Angle of the end cut to the side of the ring [deg]."""
    return CUT_ANGLES[design.end_cut]


def run_of(design, band):
    """How far a cut through that width runs along the ring [mm]."""
    angle = cut_angle(design)
    return 0.0 if angle == 90.0 else band / math.tan(math.radians(angle))
