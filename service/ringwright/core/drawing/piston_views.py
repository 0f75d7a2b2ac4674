"""The piston with its grooves, and the ring in its groove in the cylinder."""

from ..ring import sizing
from ..wording import in_a_sentence
from . import rails, words
from .entities import CENTRE, OUTLINE, THIN
from .job import sized
from .paper import PAPERS
from .shapes import box, mirrored_points, wavy
from .view import View

_MOST_GROOVES = 3


def piston(job):
    """(views, notes, about) of the rim of the piston, cut lengthways, and one groove enlarged."""
    d = job.design
    grooves = min(max(d.duty.rings, 1), _MOST_GROOVES)
    land = max(1.5 * d.groove_width, 3.0)
    radius, bottom = 0.5 * d.piston_diameter, 0.5 * d.piston_diameter - d.groove_depth
    length = land + grooves * (d.groove_width + land)
    upper, sides = [(0.0, 0.0), (0.0, radius)], []
    x = land
    for _ in range(grooves):
        upper += [
            (x, radius),
            (x, bottom),
            (x + d.groove_width, bottom),
            (x + d.groove_width, radius),
        ]
        sides += [x, x + d.groove_width]
        x += d.groove_width + land
    upper += [(length, radius), (length, 0.0)]
    view = View("piston", "Piston, upper half cut")
    view.outline(OUTLINE, upper)
    view.hatch([upper])
    lower = mirrored_points(upper)
    view.outline(OUTLINE, lower, False)
    # The lower half is seen from outside: the edges of its lands run across to the axis.
    for x in sides:
        view.line(OUTLINE, x, -radius, x, 0.0)
    view.line(CENTRE, -0.1 * length - 2.0, 0.0, 1.1 * length + 2.0, 0.0)
    view.measure(
        "piston_diameter",
        d.piston_diameter,
        rails.LEFT,
        (0.0, -radius),
        (0.0, radius),
        sized(job, "piston_diameter", d.piston_diameter, True),
    )
    under = 2.0 * bottom
    view.measure(
        "",
        under,
        rails.RIGHT,
        (length - land, -bottom),
        (length - land, bottom),
        words.auxiliary(under, job.system),
    )
    detail = View("groove", "Groove", 60.0)
    w, depth = d.groove_width, d.groove_depth
    side = 0.8 * w
    floor = -depth - 0.6 * depth
    corners = [
        (-side, floor),
        (-side, 0.0),
        (0.0, 0.0),
        (0.0, -depth),
        (w, -depth),
        (w, 0.0),
        (w + side, 0.0),
        (w + side, floor),
    ]
    detail.outline(OUTLINE, corners[1:-1], False)
    detail.hatch([corners])
    for x in (-side, w + side):
        detail.outline(THIN, wavy(x, floor, 0.0, 0.03 * depth), False)
    detail.outline(THIN, [(-side, floor), (w + side, floor)], False)
    detail.measure(
        "groove_width", w, rails.TOP, (0.0, 0.0), (w, 0.0), sized(job, "groove_width", w)
    )
    detail.measure(
        "groove_depth",
        depth,
        rails.RIGHT,
        (w, -depth),
        (w + side, 0.0),
        words.size(depth, job.system),
    )
    notes = [
        "Lands and length as the piston stands; %d of the grooves shown." % grooves,
        "Groove sides square to the axis, without taper or ridge; break the edges 0.1 to 0.2 mm "
        "(4 to 8 thou).",
        "Piston of %s, sized cold for a ring and steam at %s \u00b0C."
        % (in_a_sentence(d.duty.piston.title), words.whole(d.duty.temperature)),
    ]
    return (
        [view, detail],
        notes,
        "The piston with its ring grooves, half cut, and a groove enlarged.",
    )


def in_cylinder(job):
    """(views, notes, about) of the ring in its groove, pressed by steam from the left."""
    d = job.design
    figures = sizing.figures(d, job.acts)
    radial = 0.5 * (d.duty.bore - d.piston_diameter)
    width, thick = d.section.width, d.section.thickness
    groove, floor = d.groove_width, -radial - d.groove_depth
    side = 0.9 * width
    low = floor - 0.5 * thick
    high = 0.8 * thick
    view = View("section", "Ring, groove and wall")
    wall = box(-side, 0.0, groove + side, high)
    view.hatch([wall], 135.0)
    view.line(OUTLINE, -side, 0.0, groove + side, 0.0)
    metal = [
        (-side, low),
        (-side, -radial),
        (0.0, -radial),
        (0.0, floor),
        (groove, floor),
        (groove, -radial),
        (groove + side, -radial),
        (groove + side, low),
    ]
    view.hatch([metal])
    view.outline(OUTLINE, metal[1:-1], False)
    play = d.side_clearance
    each = width / d.duty.turns
    for i in range(d.duty.turns):
        turn = box(play + i * each, -thick, play + (i + 1) * each, 0.0)
        view.outline(OUTLINE, turn)
        view.hatch([turn], 135.0, 1.3)
    for x in (-side, groove + side):
        view.outline(THIN, wavy(x, 0.0, high, 0.03 * width), False)
        view.outline(THIN, wavy(x, low, -radial, 0.03 * width), False)
    view.measure(
        "ring_width",
        width,
        rails.TOP,
        (play, high),
        (play + width, high),
        words.size(width, job.system),
    )
    view.measure(
        "groove_width",
        groove,
        rails.BOTTOM,
        (0.0, floor),
        (groove, floor),
        words.size(groove, job.system),
    )
    back = figures["back_clearance"].value
    # A narrow sheet has room for one column of labels only.
    left = "left" if PAPERS[job.paper].framed else "right"
    _clearance(
        view, job, figures, left, "side_clearance", (0.5 * play, -0.6 * thick), "Side clearance"
    )
    _clearance(
        view,
        job,
        figures,
        "right",
        "back_clearance",
        (play + 0.7 * width, -thick - 0.5 * back),
        "Back clearance",
    )
    hot = 0.5 * figures["piston_clearance_hot"].value
    view.label(
        left,
        (-0.6 * side, -0.5 * radial),
        "Piston, radial: %s cold, %s hot"
        % (words.length(radial, job.system, 3), words.length(hot, job.system, 3)),
    )
    view.label(
        "right",
        (groove + 0.6 * side, 0.5 * high),
        "Cylinder wall, %s" % words.diameter(d.duty.bore, job.system, words.GAUGED),
        dot=True,
    )
    view.label(
        "right",
        (groove + 0.6 * side, low + 0.2 * thick),
        "Piston, %s" % words.diameter(d.piston_diameter, job.system),
        dot=True,
    )
    notes = [
        "Steam from the left holds the ring against the right-hand side of its groove and "
        "presses it outwards.",
        "Cold: all at %s \u00b0C. Hot: ring and piston at %s \u00b0C, cylinder half-warm at "
        "%s \u00b0C."
        % (
            words.whole(d.duty.shop),
            words.whole(d.duty.temperature),
            words.whole(d.duty.warming_wall_temperature),
        ),
        "Drain and isolate the cylinder before you open it; its examination belongs to a "
        "competent person under local rules.",
    ]
    return (
        [view],
        notes,
        "The ring in its groove against the cylinder wall, with the clearances cold and hot.",
    )


def _clearance(view, job, figures, side, name, point, title):
    cold, hot = figures[name].value, figures[name + "_hot"].value
    text = "%s %s cold, %s hot" % (
        title,
        words.length(cold, job.system, 3),
        words.length(hot, job.system, 3),
    )
    view.label(side, point, text, name, cold, "mm")
