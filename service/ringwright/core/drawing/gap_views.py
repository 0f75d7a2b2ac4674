"""Which gap is which: the ends of a turn seen from outside, free, closed cold, closed hot, and with
a feeler between them. The gaps are drawn wider than they are, so that they can be told apart.
"""

import math

from ..ring import blank
from ..ring.fit_findings import gap_left
from . import words
from .entities import OUTLINE, THIN, Polyline
from .job import cut_angle, run_of
from .operation_marks import arrow
from .shapes import wavy
from .view import View

_TARGET = 60.0
# Each gap as drawn, over the width of a turn.
_FREE, _COLD, _HOT = 1.1, 0.45, 0.18


def gaps(job):
    """(views, notes, about) of the gaps of one turn."""
    d = job.design
    free, cold = d.spring.gap_change + d.duty.closed_gap, d.duty.closed_gap
    hot = gap_left(d, cold, d.duty.wall_temperature)
    read = job.tooling.feeler_gap
    if read <= 0.0:
        read = blank.feeler_reading(gap=cold, angle=cut_angle(d))
    views = []
    for name, title, share, gap in (
        ("free", "Free gap: the ring lies on the bench", _FREE, free),
        ("cold", "Closed gap, cold: in the bore in the shop", _COLD, cold),
        ("hot", "Closed gap, hot: what the heat leaves", _HOT, hot),
    ):
        view = _ends(job, name, title, share)
        text = "%s along the ring" % words.length(max(gap, 0.0), job.system)
        view.label("right", (0.0, 0.5 * d.turn_width), text, dot=True)
        views.append(view)
    view = _ends(job, "feeler", "Feeler: square to the cut", _COLD)
    _feeler(view, d)
    text = "Feeler %s, at the outer edge" % words.length(read, job.system)
    view.label("right", (0.0, 0.5 * d.turn_width), text, dot=True)
    views.append(view)
    notes = ["The gaps are drawn wider than they are; the sizes are those of this ring."]
    if d.duty.turns == 2:
        notes.append("Each of the two turns has such a gap, on opposite sides of the bridge.")
    return views, notes, "Both ends of a turn from outside: free, closed cold, hot, and by feeler."


def _ends(job, name, title, share):
    """Both ends of a turn, `share` of its width apart along the ring."""
    d = job.design
    wide = d.turn_width
    half, lean = 0.5 * share * wide, 0.5 * run_of(d, wide)
    reach = lean + 1.6 * wide
    view = View(name, title, _TARGET)
    for sign in (-1.0, 1.0):
        corners = [
            (sign * reach, 0.0),
            (sign * half - lean, 0.0),
            (sign * half + lean, wide),
            (sign * reach, wide),
        ]
        view.outline(OUTLINE, corners, False)
        view.add(Polyline(THIN, wavy(sign * reach, 0.0, wide, 0.04 * wide), False))
    return view


def _feeler(view, design):
    """A blade between the ends, square to the cut, and the way it is measured."""
    wide = design.turn_width
    angle = math.radians(cut_angle(design))
    # Along the cut, and across it from one end to the other.
    along = (math.cos(angle), math.sin(angle))
    across = (math.sin(angle), -math.cos(angle))
    half = 0.5 * _COLD * wide * math.sin(angle)
    middle = 0.5 * wide
    for sign in (-1.0, 1.0):
        far = half + 0.55 * wide
        arrow(
            view,
            (sign * across[0] * far, middle + sign * across[1] * far),
            (sign * across[0] * half, middle + sign * across[1] * half),
        )
    long = 0.62 * wide / math.sin(angle)
    for sign in (-0.8, 0.8):
        x, y = sign * across[0] * half, middle + sign * across[1] * half
        view.line(
            THIN, x - along[0] * 0.3 * long, y - along[1] * 0.3 * long, x + along[0] * long,
            y + along[1] * long,
        )  # fmt: skip
