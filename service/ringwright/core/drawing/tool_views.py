"""The tools that have to be turned: each cut lengthways, with its limits and what it holds."""

import math

from ..ring import spring
from ..walk.plan import clamped_reading
from ..wording import in_a_sentence
from . import curve, rails, words
from .entities import ADJACENT, CENTRE, OUTLINE
from .job import run_of, sized
from .ring_views import cut_ring
from .shapes import box, centre_cross, mirrored_points, polar
from .turned_part import LEAST_WALL, WALL, axis_of, edges, size_of, turned
from .view import View

# Proportions that the figures leave to the maker, over the size that settles them.
_HOLE = 0.35


def former(job):
    """(views, notes, about) of the set former, or of the spacer where there is no former."""
    d, t = job.design, job.tooling
    if t.former_diameter is None:
        return spacer(job)
    radius, length = 0.5 * t.former_diameter, t.former_length
    hole = _HOLE * radius
    view = View("former", "Set former, cut lengthways")
    turned(view, box(0.0, hole, length, radius), (0.0, length), hole)
    axis_of(view, 0.0, length)
    size_of(view, job, "former", "former_diameter", rails.LEFT, (0.0, -radius), (0.0, radius), True)
    size_of(view, job, "former", "former_length", rails.TOP, (0.0, radius), (length, radius))
    view.label("right", (length, hole), "Hole or web to suit; break the edges")
    end = View("end", "Ring on the former")
    ring_on_former(job, end)
    notes = [
        "Material: %s. Turned cold to this size, it sets the ring hot: mind the heat's growth is "
        "in it already." % in_a_sentence(d.former_material.title),
        "Soak %s at %s \u00b0C; let it cool before the ring comes off. Hot work: clear the area, "
        "gloves, eye protection." % (words.hours(d.soak.hours), words.whole(d.soak.temperature)),
    ]
    if d.duty.setting == "bound":
        notes.append("Bind the ring down all round, so that it lies on the former everywhere.")
    return [view, end], notes, "The set former cut lengthways, and the ring on it."


def ring_on_former(job, view):
    """Adds the ring, held open on its former, seen along the axis."""
    d, t = job.design, job.tooling
    inner = 0.5 * t.former_diameter
    outer = inner + d.blank.set_thickness
    neutral = 0.5 * (inner + outer)
    gap = 2.0 * math.pi * (neutral - d.blank.bored_radius) + d.allowances.gap_kerf
    half = math.degrees(0.5 * gap / neutral)
    view.circle(ADJACENT, inner)
    cut_ring(view, outer, inner, 90.0, half)
    view.extend(centre_cross(CENTRE, 0.0, 0.0, outer * 1.06))
    view.label(
        "right",
        polar(neutral, 90.0),
        "Gap on the former %s%s"
        % (words.length(gap, job.system, 1), ", each turn" if d.duty.turns == 2 else ""),
        "former_gap",
        gap,
        "mm",
    )


def spacer(job):
    """(views, notes, about) of the spacer in the gap of a plain ring."""
    d, t = job.design, job.tooling
    width = t.spacer_width
    view = View("ring", "Ring with the spacer in its gap")
    radius = d.blank.bored_radius
    springy = spring.springiness_of_gap(width - d.allowances.gap_kerf, radius)
    # Pushed apart at its ends the ring bends as it does under even pressure.
    line = curve.plain_turn(
        radius, lambda psi: springy / radius * (1.0 - math.cos(psi)), d.allowances.gap_kerf
    )
    half = 0.5 * d.blank.set_thickness
    outer, inner = curve.beside(line, half), curve.beside(line, -half)
    view.outline(OUTLINE, outer + list(reversed(inner)))
    view.extend(centre_cross(CENTRE, 0.0, 0.0, radius * 1.15))
    y = 0.5 * (line[0][1] + line[-1][1])
    # Of its own width, not of the walked line's gap, which is true to a few micrometres only.
    edge, reach = 0.5 * width, 1.3 * d.blank.set_thickness
    lean = reach * math.tan(math.radians(0.5 * t.spacer_taper))
    block = [
        (-edge + lean, y - reach),
        (edge - lean, y - reach),
        (edge + lean, y + reach),
        (-edge - lean, y + reach),
    ]
    view.outline(OUTLINE, block)
    view.hatch([block], 135.0)
    notes = [
        "Material: %s. Its faces lie along the sawn ends and open outwards by %s; the cheeks keep "
        "the ends level."
        % (in_a_sentence(d.former_material.title), words.angle(t.spacer_taper).lines[0]),
        "Soak %s at %s \u00b0C with nothing else touching the ring. Hot work: clear the area, "
        "gloves, eye protection." % (words.hours(d.soak.hours), words.whole(d.soak.temperature)),
    ]
    about = "The plain ring held open by a spacer in its gap while it is heated."
    return [view, _seats(job)], notes, about


def _seats(job):
    """The spacer from outside, rolled out: faces along the ends, the ring between its cheeks."""
    d, t = job.design, job.tooling
    view = View("seats", "Spacer from outside, rolled out", 80.0)
    width, seat, run = t.spacer_width, t.spacer_seat, run_of(d, t.spacer_seat)
    cheek = max(2.0, 0.3 * seat)
    half = 0.5 * width
    reach = half + 0.5 * run + max(seat, 0.5 * width)
    low = [(-half - 0.5 * run, 0.0), (half - 0.5 * run, 0.0)]
    high = [(half + 0.5 * run, seat), (-half + 0.5 * run, seat)]
    view.outline(OUTLINE, low + high)
    view.hatch([low + high], 135.0)
    for base in (-cheek, seat):
        view.outline(OUTLINE, box(-reach, base, reach, base + cheek))
    play = 0.5 * (seat - d.blank.length)
    for sign in (-1.0, 1.0):
        bottom, top = sign * half - 0.5 * run, sign * half + 0.5 * run
        far = sign * 0.94 * reach
        view.outline(
            ADJACENT, [(bottom, play), (top, seat - play), (far, seat - play), (far, play)], False
        )
    size_of(view, job, "spacer", "spacer_width", rails.BOTTOM, low[0], low[1])
    size_of(view, job, "spacer", "spacer_seat", rails.LEFT, (-reach, 0.0), (-reach, seat))
    return view


def pot(job):
    """(views, notes, about) of the facing pot with the ring in it."""
    d, t = job.design, job.tooling
    bore, depth = 0.5 * t.pot_bore, t.pot_depth
    wall = max(LEAST_WALL, 2.0 * WALL * bore)
    back = max(LEAST_WALL, WALL * bore)
    hole = bore - 0.8 * d.blank.set_thickness
    outer = bore + wall
    upper = [(-back, hole), (0.0, hole), (0.0, bore), (depth, bore), (depth, outer), (-back, outer)]
    view = View("pot", "Facing pot, cut lengthways")
    turned(view, upper, (), None)
    edges(view, ((-back, hole), (0.0, hole), (0.0, bore), (depth, bore)))
    ring = box(0.0, bore - d.blank.set_thickness, d.blank.length, bore)
    view.outline(ADJACENT, ring)
    view.outline(ADJACENT, mirrored_points(ring))
    axis_of(view, -back, max(depth, d.blank.length))
    size_of(view, job, "pot", "pot_bore", rails.RIGHT, (depth, -bore), (depth, bore), True)
    size_of(view, job, "pot", "pot_depth", rails.TOP, (0.0, bore), (depth, outer))
    view.label("left", (0.0, 0.5 * (hole + bore)), "Shoulder true to the face; undercut the corner")
    view.label("left", (-0.5 * back, 0.5 * (bore + outer)), "Wall and back to suit", dot=True)
    notes = [
        "The ring (double-chain line) holds by its own spring; its gap in the pot is %s."
        % words.length(t.pot_gap, job.system),
        "Face lightly, from both sides, until the step is gone and the width is right.",
    ]
    return [view], notes, "The facing pot cut lengthways, with the ring in it."


def closing_ring(job):
    """(views, notes, about) of the closing ring."""
    d, t = job.design, job.tooling
    bore, width = 0.5 * t.closing_ring_bore, t.closing_ring_width
    outer = bore + max(LEAST_WALL, 2.0 * WALL * bore)
    mouth = min(0.25 * width, 3.0)
    rise = 0.27 * mouth
    upper = [
        (0.0, bore),
        (width - mouth, bore),
        (width, bore + rise),
        (width, outer),
        (0.0, outer),
    ]
    view = View("closing-ring", "Closing ring, cut lengthways")
    turned(view, upper, (), None)
    edges(view, ((0.0, bore), (width - mouth, bore), (width, bore + rise)))
    axis_of(view, 0.0, width)
    size_of(
        view, job, "closing-ring", "closing_ring_bore", rails.LEFT, (0.0, -bore), (0.0, bore), True
    )
    size_of(
        view, job, "closing-ring", "closing_ring_width", rails.TOP, (0.0, outer), (width, outer)
    )
    view.label(
        "right",
        (width, bore + 0.5 * rise),
        "Mouth opened 15\u00b0, polished, so that the ring slides in",
    )
    _about(view, job, (width, 0.5 * (bore + outer)), "Outside to suit, drawn ", outer)
    face = View("face", "From its mouth", second=True)
    for radius in (outer, bore + rise, bore):
        face.circle(OUTLINE, radius)
    face.extend(centre_cross(CENTRE, 0.0, 0.0, outer * 1.06))
    notes = [
        "Bore it last, to suit the sawn ring: until a feeler square to the cut reads %s in its gap."
        % words.length(clamped_reading(d), job.system),
        "A ring under tension flies when it slips: eye protection, face out of line.",
    ]
    return [view, face], notes, "The closing ring cut lengthways, and its face."


def clamp_mandrel(job, outer=None):
    """(views, notes, about) of the clamp mandrel with the ring and the end plate on it.

    outer: radius of the ring [mm], None for one that is turned. Its inside is not bored yet.
    """
    d, t = job.design, job.tooling
    spigot, length = 0.5 * t.clamp_mandrel_diameter, t.spigot_length
    plate, width = 0.5 * t.end_plate_diameter, d.section.width
    inner = 0.5 * t.inside_clamped - d.allowances.inside
    outer = outer or 0.5 * d.blank.finish_outside
    shoulder = max(LEAST_WALL, 0.12 * spigot)
    shank = shoulder + _half(max(12.0, 0.3 * spigot))
    bolt, thick = _screw(spigot)
    body = [
        (-shank, bolt),
        (length, bolt),
        (length, spigot),
        (0.0, spigot),
        (0.0, plate),
        (-shoulder, plate),
        (-shoulder, 0.6 * spigot),
        (-shank, 0.6 * spigot),
    ]
    view = View("clamp-mandrel", "Mandrel, ring and end plate, cut lengthways")
    turned(view, body, (), None)
    cover = box(width, bolt, width + thick, plate)
    ring = box(0.0, inner, width, outer)
    for corners, angle, spacing in ((cover, 135.0, 2.5), (ring, 135.0, 1.2)):
        for loop in (corners, mirrored_points(corners)):
            view.outline(OUTLINE, loop)
            view.hatch([loop], angle, spacing)
    head = max(4.0, bolt)
    right = width + thick
    # The screw is not cut: it is shown whole, as screws are.
    view.outline(OUTLINE, box(right, -1.7 * bolt, right + head, 1.7 * bolt))
    view.line(OUTLINE, length, -bolt, length, bolt)
    axis_of(view, -shank, right + head)
    size_of(
        view,
        job,
        "clamp-mandrel",
        "clamp_mandrel_diameter",
        rails.LEFT,
        (0.0, -spigot),
        (0.0, spigot),
        True,
    )
    size_of(
        view,
        job,
        "clamp-mandrel",
        "end_plate_diameter",
        rails.LEFT,
        (-shoulder, -plate),
        (-shoulder, plate),
        True,
    )
    size_of(
        view, job, "clamp-mandrel", "spigot_length", rails.BOTTOM, (0.0, -plate), (length, -spigot)
    )
    view.measure(
        "finish_outside_diameter",
        d.blank.finish_outside,
        rails.RIGHT,
        (0.5 * width, -outer),
        (0.5 * width, outer),
        sized(job, "finish_outside_diameter", d.blank.finish_outside, True),
    )
    view.measure(
        "ring_width", width, rails.TOP, (0.0, outer), (width, outer), words.size(width, job.system)
    )
    notes = [
        "Turn the spigot and face the shoulder in place, and do not take the mandrel out of the "
        "chuck until the rings are done.",
        "The end plate bears on the ring alone: the spigot is shorter than the ring.",
        "To suit chuck and screw; drawn: hub %s, %s long; hole %s."
        % (
            words.diameter(1.2 * spigot, job.system, 1),
            words.length(shank - shoulder, job.system, 1),
            words.diameter(2.0 * bolt, job.system, 1),
        ),
    ]
    return (
        [view],
        notes,
        "The clamp mandrel cut lengthways, with the ring gripped by the end plate.",
    )


def end_plate(job):
    """(views, notes, about) of the end plate alone."""
    t = job.tooling
    radius = 0.5 * t.end_plate_diameter
    spigot = 0.5 * t.clamp_mandrel_diameter
    bolt, thick = _screw(spigot)
    view = View("end-plate", "End plate, cut lengthways")
    turned(view, box(0.0, bolt, thick, radius), (0.0, thick), bolt)
    axis_of(view, 0.0, thick)
    size_of(
        view,
        job,
        "end-plate",
        "end_plate_diameter",
        rails.LEFT,
        (0.0, -radius),
        (0.0, radius),
        True,
    )
    view.label("right", (thick, 0.5 * (radius + bolt)), "This face flat, bears on the ring")
    _about(view, job, (thick, -bolt), "Hole to clear the screw, drawn ", bolt)
    face = View("face", "From the screw", second=True)
    face.circle(OUTLINE, radius)
    face.circle(OUTLINE, bolt)
    face.extend(centre_cross(CENTRE, 0.0, 0.0, radius * 1.06))
    notes = ["Thickness to suit, drawn %s." % words.length(thick, job.system, 1)]
    return [view, face], notes, "The end plate cut lengthways, and its face."


def _half(mm):
    """To the half millimetre [mm]: what the figures leave to the maker."""
    return 0.5 * math.floor(2.0 * mm + 0.5)


def _screw(spigot):
    """(radius of the hole for the screw of the clamp, thickness of the end plate) [mm]."""
    return _half(max(2.0, 0.14 * spigot)), _half(max(4.0, 0.1 * spigot))


def _about(view, job, point, text, radius):
    """A label on the right with a diameter that the figures leave to the maker."""
    view.label("right", point, text + words.diameter(2.0 * radius, job.system, 1))


def trial_bore(job):
    """(views, notes, about) of the ring gauge that stands for the cylinder."""
    d = job.design
    bore, width = 0.5 * d.duty.bore, 2.0 * d.section.width
    outer = bore + max(LEAST_WALL, 2.0 * WALL * bore)
    view = View("bore-gauge", "Trial bore, cut lengthways")
    turned(view, box(0.0, bore, width, outer), (), None)
    edges(view, ((0.0, bore), (width, bore)))
    axis_of(view, 0.0, width)
    size_of(view, job, "bore-gauge", "trial_bore", rails.LEFT, (0.0, -bore), (0.0, bore), True)
    view.label("right", (width, 0.5 * (bore + outer)), "Wall and width to suit")
    notes = [
        "Hold it against a lamp to see the light; feel the gap in it. Where the cylinder is at "
        "hand, use that."
    ]
    return [view], notes, "A ring gauge bored to the cylinder's size, cut lengthways."
