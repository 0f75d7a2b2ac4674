"""All that a part is drawn from: the Design, its Tooling, and how the drawing is wanted."""

import math
from collections import namedtuple

from ..ring.allowances import CUT_ANGLES
from . import words

# design, tooling: as settled. acts: Behaviour of the ring. system: metric or inch. paper: key of
# paper.PAPERS. title: a paper.Title without its part. sizes: OrderedDict tool -> OrderedDict name
# -> Size. materials: OrderedDict tool -> what it is made of. worked: dict name -> Size with the
# limits that the route card asks for. operations: OrderedDict key -> Operation of the route card.
# operation: key of the one to be drawn. bar: the bars.BarSize of the card, None for a casting.
Job = namedtuple(
    "Job",
    (
        "design", "tooling", "acts", "system", "paper", "title", "sizes", "materials", "worked",
        "operations", "operation", "bar",
    ),
)  # fmt: skip


def sized(job, name, value, diameter=False):
    """Words of a size of ring or blank: with the limits of the route card where it has any."""
    size = job.worked.get(name)
    if size is None:
        return words.size(value, job.system, diameter)
    return words.limits(size.lower, size.upper, job.system, diameter)


def cut_angle(design):
    """Angle of the end cut to the side of the ring [deg]."""
    return CUT_ANGLES[design.duty.end_cut]


def run_of(design, band):
    """How far a cut through that width runs along the ring [mm]."""
    angle = cut_angle(design)
    return 0.0 if angle == 90.0 else band / math.tan(math.radians(angle))
