"""The ring itself: in its bore, free, and the sections and ends that go with both."""

import math

from ..making import finish
from ..ring import spring
from . import curve, rails, words
from .entities import ADJACENT, CENTRE, HIDDEN, OUTLINE, THIN, Arc, Line, Polyline
from .job import run_of, sized
from .shapes import box, centre_cross, polar, wavy
from .view import View

_DETAIL = 50.0


def shoulder_angle(design, tooling):
    """Where the gap of the front turn of a double-turn ring shows on its side: from the bridge's
    middle [deg].
    """
    run = 0.5 * tooling.bridge_length - run_of(
        design, 0.5 * (design.section.width + design.allowances.slit)
    )
    return math.degrees(run / (0.5 * design.blank.rough_outside))


def closed(job):
    """(views, notes, about) of the ring in its bore."""
    d, t = job.design, job.tooling
    view = View("end")
    outer, inner = 0.5 * d.duty.bore, 0.5 * d.inside_diameter
    radius = spring.neutral_radius(d.duty.bore, d.section.thickness)
    half = math.degrees(0.5 * d.duty.closed_gap / radius)
    middle = 90.0 if d.duty.turns == 1 else 90.0 - shoulder_angle(d, t) - half
    cut_ring(view, outer, inner, middle, half)
    if d.duty.turns == 2:
        for side in (-half, half):
            view.add(_radial(HIDDEN, inner, outer, 180.0 - middle + side))
    view.extend(centre_cross(CENTRE, 0.0, 0.0, outer * 1.06))
    size = words.size(d.duty.bore, job.system, True, words.GAUGED)
    _diameter(view, "bore", d.duty.bore, outer, size)
    _diameter(
        view,
        "inside_diameter",
        d.inside_diameter,
        inner,
        words.auxiliary(d.inside_diameter, job.system),
    )
    gap = polar(radius, middle)
    text = "Gap %s, on the neutral line" % words.length(d.duty.closed_gap, job.system)
    if t.feeler_gap > 0.0:
        text += "; a feeler at the outer edge reads %s" % words.length(t.feeler_gap, job.system)
    view.label("right", gap, text, "closed_gap", d.duty.closed_gap, "mm")
    views = [view, section(job)]
    views.append(
        bridge(job, d.duty.closed_gap) if d.duty.turns == 2 else ends(job, d.duty.closed_gap)
    )
    notes = [
        "Finished ring, cold, in a bore of its nominal size.",
        "Tangential force %s, wall pressure %s."
        % (
            words.force(job.acts.tangential, job.system),
            words.pressure(d.spring.wall_pressure, job.system),
        ),
    ]
    notes.append(
        "Sides Ra 0.8, flat and even within %s; outside Ra 1.6 at most; edges broken by %s."
        % (
            words.length(finish.out_of_flat(d), job.system),
            words.length(finish.EDGES, job.system),
        )
    )
    if d.duty.turns == 2:
        notes.append(
            "Two turns side by side in one piece: where one has its gap the other is solid. "
            "Dashed: the gap of the turn behind."
        )
    return views, notes, "The finished ring closed in its bore, with its section and its ends."


def free(job):
    """(views, notes, about) of the ring lying free on the bench."""
    d = job.design
    view = View("end")
    radius = spring.neutral_radius(d.duty.bore, d.section.thickness)
    line = free_line(job)
    half = 0.5 * d.section.thickness
    outer, inner = curve.beside(line, half), curve.beside(line, -half)
    view.outline(OUTLINE, outer + list(reversed(inner)))
    if d.duty.turns == 2:
        back = [(-x, y) for x, y in outer + list(reversed(inner))]
        if d.duty.bearing.uniform:
            view.outline(HIDDEN, back)
        else:
            view.outline(HIDDEN, [(-x, y) for x, y in (outer[-1], inner[-1])], False)
    view.circle(ADJACENT, 0.5 * d.duty.bore)
    view.extend(centre_cross(CENTRE, 0.0, 0.0, radius * 1.12))
    xs = [point[0] for point in outer]
    ys = [point[1] for point in outer]
    left, right, bottom, top = min(xs), max(xs), min(ys), max(ys)
    view.measure(
        "free_width",
        right - left,
        rails.BOTTOM,
        (left, 0.0),
        (right, 0.0),
        words.size(right - left, job.system, places=1),
    )
    view.measure(
        "free_height",
        top - bottom,
        rails.LEFT,
        (0.0, bottom),
        (0.0, top),
        words.size(top - bottom, job.system, places=1),
    )
    gap = d.spring.gap_change + d.duty.closed_gap
    first, last = line[0], line[-1]
    view.label(
        "right",
        (0.5 * (first[0] + last[0]), 0.5 * (first[1] + last[1])),
        "Free gap %s, along the neutral line%s"
        % (words.length(gap, job.system), ", each turn" if d.duty.turns == 2 else ""),
        "free_gap",
        gap,
        "mm",
    )
    corner = polar(0.5 * d.duty.bore, -40.0)
    view.label(
        "right",
        corner,
        "Bore %s" % words.diameter(d.duty.bore, job.system, words.GAUGED),
        "bore",
        d.duty.bore,
        "mm",
    )
    notes = [
        "Ring free on the bench; the double-chain circle is the bore it goes into.",
        "Measured over the outside: across is at right angles to the gap, upright is along it.",
    ]
    return [view], notes, "The free ring over the circle of its bore, with its free gap."


def free_line(job):
    """Neutral line of the free ring: (x, y, heading) from one end of its (front) turn to the
    other.
    """
    d = job.design
    radius = spring.neutral_radius(d.duty.bore, d.section.thickness)
    change = curve.free_change(d)
    if d.duty.turns == 1:
        return curve.plain_turn(radius, change, d.duty.closed_gap)
    return curve.double_turn(radius, change, d.duty.closed_gap, shoulder_angle(d, job.tooling))


def section(job):
    """Cross section of the finished ring, the outside upwards."""
    d = job.design
    view = View("section", "Section of the ring", _DETAIL)
    width, thick = d.section.width, d.section.thickness
    each = width / d.duty.turns
    for i in range(d.duty.turns):
        corners = box(i * each, 0.0, (i + 1) * each, thick)
        view.outline(OUTLINE, corners)
        view.hatch([corners])
        if i == 1:
            view.measure(
                "turn_width",
                each,
                rails.BOTTOM,
                (i * each, 0.0),
                ((i + 1) * each, 0.0),
                words.auxiliary(each, job.system, False),
            )
    view.measure(
        "ring_width",
        width,
        rails.TOP,
        (0.0, thick),
        (width, thick),
        sized(job, "ring_width", width),
    )
    view.measure(
        "radial_thickness",
        thick,
        rails.LEFT,
        (0.0, 0.0),
        (0.0, thick),
        sized(job, "radial_thickness", thick),
    )
    return view


def bridge(job, gap):
    """The bridge and both end cuts of a finished double-turn ring, rolled out, seen from
    outside.
    """
    d, t = job.design, job.tooling
    view = View("bridge", "Bridge, rolled out", 62.0)
    width, step = d.section.width, d.allowances.slit
    half = 0.5 * t.bridge_length
    low, high = 0.5 * (width - step), 0.5 * (width + step)
    run = run_of(d, high)
    reach = half + max(0.4 * half, 0.5 * width, gap * 1.5)
    broken_strip(view, -reach, reach, 0.0, width)
    # The front turn is cut at the right-hand end of the bridge, the back turn at the left-hand one.
    view.line(OUTLINE, half, low, reach, low)
    view.line(OUTLINE, -half, high, -reach, high)
    for shift in (0.0, gap):
        view.line(OUTLINE, half + shift, low, half - run + shift, width)
        view.line(OUTLINE, -half - shift, high, -half + run - shift, 0.0)
    view.measure(
        "bridge_length",
        t.bridge_length,
        rails.BOTTOM,
        (-half, high),
        (half, low),
        words.size(t.bridge_length, job.system, places=1),
    )
    view.measure("", high, rails.RIGHT, (reach, low), (reach, width), words.size(high, job.system))
    view.measure("", low, rails.RIGHT, (reach, 0.0), (reach, low), words.size(low, job.system))
    return view


def ends(job, gap):
    """The ends of a plain ring, seen from outside, rolled out."""
    d = job.design
    view = View("ends", "Ends, seen from outside", 50.0)
    width = d.section.width
    run = run_of(d, width)
    joint = job.tooling.joint
    tongue = 0.0 if joint is None else joint.opening
    reach = max(1.2 * width, run, 2.0 * gap, tongue)
    left, right = -reach - 0.5 * run, reach + 0.5 * run + gap
    broken_strip(view, left, right, 0.0, width)
    if joint is not None:
        half, wide = 0.5 * tongue, joint.tongue_width
        for shift, middle in ((0.0, width - wide), (gap, wide)):
            points = [
                (-half + shift, 0.0),
                (-half + shift, middle),
                (half + shift, middle),
                (half + shift, width),
            ]
            view.outline(OUTLINE, points, False)
        view.measure(
            "tongue_length",
            tongue,
            rails.BOTTOM,
            (-half + gap, 0.0),
            (half + gap, 0.0),
            words.size(tongue, job.system),
        )
        view.measure(
            "tongue_width",
            wide,
            rails.RIGHT,
            (half + gap, 0.0),
            (half + gap, wide),
            words.size(wide, job.system),
        )
    else:
        for shift in (0.0, gap):
            view.line(OUTLINE, -0.5 * run + shift, 0.0, 0.5 * run + shift, width)
    x = 0.5 * max(run, tongue)
    view.measure(
        "closed_gap", gap, rails.TOP, (x, width), (x + gap, width), words.size(gap, job.system)
    )
    return view


def cut_ring(view, outer, inner, middle, half):
    """A flat ring seen along its axis, with a gap of `half` degrees either side of `middle`."""
    start, end = middle + half, middle + 360.0 - half
    view.add(Arc(OUTLINE, 0.0, 0.0, outer, start, end), Arc(OUTLINE, 0.0, 0.0, inner, start, end))
    view.add(_radial(OUTLINE, inner, outer, start), _radial(OUTLINE, inner, outer, end))


def _radial(layer, inner, outer, degrees):
    x1, y1 = polar(inner, degrees)
    x2, y2 = polar(outer, degrees)
    return Line(layer, x1, y1, x2, y2)


def broken_strip(view, left, right, bottom, top):
    """A strip whose two ends go on beyond the picture."""
    view.line(OUTLINE, left, bottom, right, bottom)
    view.line(OUTLINE, left, top, right, top)
    depth = 0.04 * (top - bottom)
    view.add(Polyline(THIN, wavy(left, bottom, top, depth), False))
    view.add(Polyline(THIN, wavy(right, bottom, top, depth), False))


def _diameter(view, name, value, radius, text):
    view.measure(name, value, rails.BOTTOM, (-radius, 0.0), (radius, 0.0), text)
