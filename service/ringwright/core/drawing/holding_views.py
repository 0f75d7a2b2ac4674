"""What holds a blank or a ring: soft jaws, slitting mandrel, closing band, outer clamp."""

import math

from . import rails, words
from .entities import ADJACENT, CENTRE, OUTLINE
from .shapes import box, centre_cross, mirrored_points, polar
from .turned_part import LEAST_WALL, WALL, axis_of, edges, size_of, turned
from .view import View


def blank_jaws(job):
    """(views, notes, about) of the soft jaws bored for the blank."""
    d, t = job.design, job.tooling
    bore = 0.5 * t.blank_jaws_bore
    depth = job.sizes["blank-jaws"]["blank_jaws_depth"].value
    wall = max(LEAST_WALL, 2.0 * WALL * bore)
    outer, hole = bore + wall, bore - 0.8 * d.blank.set_thickness
    view = View("blank-jaws", "Soft jaws, cut lengthways")
    upper = [(-wall, hole), (0.0, hole), (0.0, bore), (depth, bore), (depth, outer), (-wall, outer)]
    turned(view, upper, (), None)
    edges(view, ((-wall, hole), (0.0, hole), (0.0, bore), (depth, bore)))
    blank = box(0.0, 0.5 * d.blank.bored_inside, d.blank.length, bore)
    view.outline(ADJACENT, blank)
    view.outline(ADJACENT, mirrored_points(blank))
    axis_of(view, -wall, max(depth, d.blank.length))
    size_of(
        view, job, "blank-jaws", "blank_jaws_bore", rails.RIGHT, (depth, -bore), (depth, bore), True
    )
    size_of(view, job, "blank-jaws", "blank_jaws_depth", rails.TOP, (0.0, bore), (depth, outer))
    notes = [
        "Bore the jaws in place, closed on a plug, to the size of the turned outside; face the "
        "shoulder at the same setting.",
        "Grip lightly: the blank is a thin tube. It is not sawn yet and does not enter the pot.",
    ]
    return [view], notes, "Soft jaws bored for the blank, cut lengthways."


def slitting_mandrel(job):
    """(views, notes, about) of the mandrel on which the blank is slit."""
    d, t = job.design, job.tooling
    radius, length = 0.5 * t.slit_mandrel_diameter, t.slit_mandrel_length
    middle, half = 0.5 * length, 0.5 * t.slit_relief_width
    floor = radius - t.slit_relief_depth
    shoulder = max(LEAST_WALL, 0.3 * length)
    foot = radius + 0.8 * d.blank.set_thickness
    upper = [
        (-shoulder, 0.0),
        (length, 0.0),
        (length, radius),
        (middle + half, radius),
        (middle + half, floor),
        (middle - half, floor),
        (middle - half, radius),
        (0.0, radius),
        (0.0, foot),
        (-shoulder, foot),
    ]
    view = View("slitting-mandrel", "Slitting mandrel, cut lengthways")
    turned(view, upper, (), None)
    blank = box(0.0, radius, d.blank.length, 0.5 * d.blank.rough_outside)
    view.outline(ADJACENT, blank)
    view.outline(ADJACENT, mirrored_points(blank))
    axis_of(view, -shoulder, d.blank.length)
    size_of(
        view,
        job,
        "slitting-mandrel",
        "slit_mandrel_diameter",
        rails.RIGHT,
        (length, -radius),
        (length, radius),
        True,
    )
    size_of(
        view,
        job,
        "slitting-mandrel",
        "slit_relief_width",
        rails.TOP,
        (middle - half, radius),
        (middle + half, radius),
    )
    size_of(
        view,
        job,
        "slitting-mandrel",
        "slit_mandrel_length",
        rails.BOTTOM,
        (0.0, -radius),
        (length, -radius),
    )
    view.label(
        "right",
        (middle, floor),
        "Groove %s deep, for the saw to break through into"
        % words.length(t.slit_relief_depth, job.system),
        "slit_relief_depth",
        t.slit_relief_depth,
        "mm",
    )
    notes = [
        "A nut and a washer pinch the blank (double-chain line) by its sides; bolt the foot to the "
        "rotary table, its axis true with the table's.",
        "The middle of the groove stands at the middle of the blank.",
    ]
    return [view], notes, "The slitting mandrel cut lengthways, with the blank on it."


def band_thickness(job):
    """Of the strip that a closing band is bent from, as it is drawn [mm]."""
    return max(0.3, 0.1 * job.design.blank.set_thickness)


def closing_band(job):
    """(views, notes, about) of the band that draws a ring shut."""
    d, t = job.design, job.tooling
    closed = 0.5 * (d.blank.finish_outside + d.allowances.finishing)
    thick = band_thickness(job)
    view = View("closing-band", "Band round the closed ring")
    view.circle(ADJACENT, closed)
    # Half of what is open between the lugs, along the ring.
    half = math.degrees(math.pi - 0.5 * t.band_length / closed)
    view.arc(OUTLINE, closed + thick, 90.0 + half, 450.0 - half)
    view.extend(centre_cross(CENTRE, 0.0, 0.0, closed * 1.12))
    lug = max(4.0, 0.12 * closed)
    for sign in (-1.0, 1.0):
        # A lug stands up from its end of the band, away from the other.
        angle = 90.0 + sign * half
        ears = []
        for high, along in ((0.0, 0.0), (lug, 0.0), (lug, 0.3 * lug), (0.0, 0.3 * lug)):
            ears.append(polar(along, angle + sign * 90.0, *polar(closed + high, angle)))
        view.outline(OUTLINE, ears)
    band = job.sizes["closing-band"]["closing_band_width"]
    view.label(
        "right",
        (0.7071 * (closed + thick), 0.7071 * (closed + thick)),
        "Strip %s wide, %s between its lugs along the ring"
        % (words.length(band.value, job.system), words.length(t.band_length, job.system)),
        "band_length",
        t.band_length,
        "mm",
    )
    notes = [
        "Thin enough to bend with the ring; a screw through the lugs draws it shut.",
        "A ring under tension flies when it slips: eye protection, face out of line.",
    ]
    return [view], notes, "The closing band round the ring."


def outer_clamp(job):
    """(views, notes, about) of the clamp that holds a ring by its outside while it is bored."""
    d, t = job.design, job.tooling
    bore, hole = 0.5 * t.outer_clamp_bore, 0.5 * t.clamp_ring_bore
    depth = job.sizes["outer-clamp"]["outer_clamp_depth"].value
    width = d.section.width
    outer = bore + max(LEAST_WALL, 2.0 * WALL * bore)
    back = max(4.0, 0.5 * width)
    upper = [(-back, hole), (0.0, hole), (0.0, bore), (depth, bore), (depth, outer), (-back, outer)]
    view = View("outer-clamp", "Cup, ring and clamp ring, cut lengthways")
    turned(view, upper, (), None)
    edges(view, ((-back, hole), (width + back, hole)))
    cover = box(width, hole, width + back, outer)
    for loop in (cover, mirrored_points(cover)):
        view.outline(OUTLINE, loop)
        view.hatch([loop], 135.0)
    ring = box(0.0, 0.5 * t.inside_clamped, width, bore)
    view.outline(ADJACENT, ring)
    view.outline(ADJACENT, mirrored_points(ring))
    axis_of(view, -back, width + back)
    size_of(
        view,
        job,
        "outer-clamp",
        "outer_clamp_bore",
        rails.RIGHT,
        (depth, -bore),
        (depth, bore),
        True,
    )
    size_of(
        view, job, "outer-clamp", "clamp_ring_bore", rails.LEFT, (-back, -hole), (-back, hole), True
    )
    size_of(view, job, "outer-clamp", "outer_clamp_depth", rails.TOP, (0.0, bore), (depth, outer))
    notes = [
        "Three screws draw the clamp ring against the ring's side, outside the end plate; only "
        "then take end plate and mandrel away.",
        "Set the cup true in the chuck by its bore before the ring is in it.",
    ]
    return [view], notes, "The outer clamp with the ring in it, cut lengthways."
