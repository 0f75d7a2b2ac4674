"""The blank on the rotary table with the slitting saw: the whole set-up, and the bridge it
leaves.
"""

import math

from ..making.slitting import BREAKTHROUGH
from . import rails, words
from .entities import ADJACENT, CENTRE, CUT, OUTLINE, THIN, Arc, Fill, Line
from .shapes import arc_points, centre_cross, polar
from .view import View


def rotary_table(job):
    """(views, notes, about) of the slitting on the rotary table, seen along the axis of the
    table.
    """
    d, t = job.design, job.tooling
    cut = t.slit
    view = View("table", "Plan at the height of the slit")
    outer, inner = 0.5 * d.blank.rough_outside, 0.5 * d.blank.bored_inside
    far, saw = cut.centre_distance, 0.5 * t.cutter_diameter
    start = cut.outside_half_angle
    end = start + t.bridge_angle
    middle = 0.5 * (start + end)
    view.circle(OUTLINE, outer)
    view.circle(OUTLINE, inner)
    view.circle(OUTLINE, saw, far, 0.0)
    view.circle(THIN, 0.5 * t.cutter_collar, far, 0.0)
    view.extend(centre_cross(CENTRE, 0.0, 0.0, outer * 1.08))
    view.extend(centre_cross(CENTRE, far, 0.0, saw * 1.1))
    last_x, last_y = polar(far, 2.0 * middle)
    view.circle(ADJACENT, saw, last_x, last_y)
    bridge = _bridge(job, middle)
    view.outline(OUTLINE, bridge)
    view.hatch([bridge], spacing=1.2)
    sweep = outer * 1.13
    view.add(Arc(THIN, 0.0, 0.0, sweep, 2.0 * middle + 20.0, 340.0))
    view.add(_arc_arrow(sweep, 340.0, 1.0, 0.07 * outer))
    view.measure(
        "cutter_centre_distance",
        far,
        rails.BOTTOM,
        (0.0, 0.0),
        (far, 0.0),
        words.size(far, job.system),
    )
    view.measure(
        "cutter_diameter",
        t.cutter_diameter,
        rails.RIGHT,
        (far, -saw),
        (far, saw),
        words.size(t.cutter_diameter, job.system, True, 1),
    )
    travel = words.angle(cut.table_travel).lines[0]
    view.label(
        "left",
        polar(sweep, 200.0),
        "Turn the table %s" % travel,
        "table_travel",
        cut.table_travel,
        "deg",
    )
    view.label(
        "left", polar(inner, 150.0), "Bored %s" % words.diameter(d.blank.bored_inside, job.system)
    )
    view.label(
        "left", polar(outer, 235.0), "Turned %s" % words.diameter(d.blank.rough_outside, job.system)
    )
    notes = [
        "Feed in along the line of centres until the cutter is %s through the wall, then turn "
        "the table." % words.length(BREAKTHROUGH, job.system),
        "Set the middle of the cutter's thickness to the middle of the blank's length. Guard the "
        "cutter; lock the slides that do not move.",
        "Double-chain line: the cutter at the end of its cut.",
    ]
    about = (
        "The blank on the rotary table, the slitting saw at its first and last place, and the "
        "bridge it leaves."
    )
    return [view, bridge_detail(job)], notes, about


def bridge_detail(job):
    """The bridge as the cutter leaves it, upright, with the corners left to the hand saw."""
    d, t = job.design, job.tooling
    cut = t.slit
    view = View("bridge", "The bridge, cut at the height of the slit", 78.0)
    outer, inner = 0.5 * d.blank.rough_outside, 0.5 * d.blank.bored_inside
    half = 0.5 * t.bridge_angle
    beyond = half + min(cut.hand_wedge + math.degrees(2.5 / inner), 60.0)
    for radius in (outer, inner):
        view.arc(OUTLINE, radius, 90.0 - beyond, 90.0 + beyond)
    bridge = _bridge(job, 90.0)
    view.outline(OUTLINE, bridge)
    view.hatch([bridge])
    for side in (-half, half):
        view.add(Line(CUT, *(polar(inner, 90.0 + side) + polar(outer, 90.0 + side))))
    left, right = polar(outer, 90.0 + half), polar(outer, 90.0 - half)
    chord = right[0] - left[0]
    view.measure("", chord, rails.TOP, left, right, words.size(chord, job.system, places=1))
    view.label(
        "right",
        polar(0.5 * (outer + inner), 90.0),
        "Bridge %s: %s along the outside"
        % (words.angle(t.bridge_angle).lines[0], words.length(t.bridge_length, job.system, 1)),
        "bridge_length",
        t.bridge_length,
        "mm",
        dot=True,
    )
    corner = polar(inner + 0.15 * (outer - inner), 90.0 - half - 0.4 * cut.hand_wedge)
    view.label(
        "right",
        corner,
        "To saw by hand at each end: %s along the bore"
        % words.length(cut.hand_wedge_length, job.system, 1),
        "hand_wedge_length",
        cut.hand_wedge_length,
        "mm",
        dot=True,
    )
    return view


def _bridge(job, middle):
    """Closed loop of the bridge whose middle stands at that angle; its ends are arcs of the
    cutter.
    """
    d, t = job.design, job.tooling
    cut = t.slit
    outer, inner = 0.5 * d.blank.rough_outside, 0.5 * d.blank.bored_inside
    start = middle - 0.5 * t.bridge_angle
    first = _cutter_arc(cut, 0.5 * t.cutter_diameter, outer, inner, start - cut.outside_half_angle)
    last = [_mirrored_at(point, middle) for point in first]
    reach = cut.hand_wedge
    return (
        arc_points(outer, start, start + t.bridge_angle)
        + last
        + arc_points(inner, start + t.bridge_angle + reach, start - reach)
        + list(reversed(first))
    )


def _cutter_arc(cut, saw, outer, inner, turn):
    """Points where the cutter's edge runs through the wall, outside to inside; cutter at angle
    `turn`.
    """
    far = cut.centre_distance

    def bearing(radius, half):
        x, y = polar(radius, half)
        return math.degrees(math.atan2(y, x - far))

    first = bearing(outer, cut.outside_half_angle)
    last = bearing(inner, cut.inside_half_angle)
    angle = math.radians(turn)
    cosine, sine = math.cos(angle), math.sin(angle)
    return [
        (x * cosine - y * sine, x * sine + y * cosine)
        for x, y in arc_points(saw, first, last, far, 0.0)
    ]


def _mirrored_at(point, degrees):
    """The point mirrored in the line through the centre at that angle."""
    double = math.radians(2.0 * degrees)
    x, y = point
    return x * math.cos(double) + y * math.sin(double), x * math.sin(double) - y * math.cos(double)


def _arc_arrow(radius, degrees, towards, length):
    """An arrow with its tip on the circle, pointing to growing angles for towards = 1."""
    back = degrees - towards * math.degrees(length / radius)
    return Fill(
        THIN,
        [
            polar(radius, degrees),
            polar(radius + 0.2 * length, back),
            polar(radius - 0.2 * length, back),
        ],
    )
