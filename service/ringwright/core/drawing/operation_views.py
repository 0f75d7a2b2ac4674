"""A picture of every operation of the route card: what is held, in what, which tool goes where.

The work and the tools that are turned for it are to scale, with the sizes of that operation; chuck,
turning tools, files and the bar beyond the blank are there to be recognised and follow the work's
size.
"""

from . import (
    blank_views,
    holding_views,
    lathe_views,
    piston_views,
    rails,
    ring_views,
    table_views,
    tool_views,
    words,
)
from .entities import ADJACENT, OUTLINE
from .operation_marks import arrow, cut_part, cutting_tool, measured, size_in
from .shapes import box, mirrored_points
from .turned_part import LEAST_WALL, WALL, axis_of
from .view import View


def picture(job, key):
    """(views, notes, about) of the operation with that key. job: a Job that has it."""
    return _VIEWS[key](job, job.operations[key])


def _face_blank(job, row):
    d, t = job.design, job.tooling
    view = holding_views.blank_jaws(job)[0][0]
    view.measures = []
    view.title = "In soft jaws: one side, then the other"
    bore, length = 0.5 * t.blank_jaws_bore, d.blank.length
    inner = 0.5 * d.blank.bored_inside
    reach = cutting_tool(view, (length, inner + 0.7 * (bore - inner)), "face", bore)
    arrow(view, (length + 2.0 * reach, bore), (length + 2.0 * reach, 0.7 * bore))
    size = size_in(row, "blank_length")
    measured(view, job, size, rails.BOTTOM, (0.0, -bore), (length, -bore))
    return [view], [], "The blank in soft jaws by its outside; the tool faces one side."


# Sawing, setting, fitting: the drawings of the parts show them.


def _of(draw, about, first=None):
    """A picture that is the drawing of a part, or the first views of it."""

    def views(job, row):
        drawn = draw(job)[0]
        return drawn[:first], [], about

    return views


def _detail(draw, about):
    """A picture that is one enlarged view."""

    def views(job, row):
        view = draw(job)
        view.target = None
        return [view], [], about

    return views


def _deburr(job, row):
    d = job.design
    wide = d.blank.band_width if d.duty.turns == 2 else d.blank.length
    thick = 0.5 * (d.blank.rough_outside - d.blank.bored_inside)
    edge = 0.08 * min(wide, thick)
    view = View("edges", "One turn, cut across: every edge broken")
    loop = [(edge, 0.0), (wide - edge, 0.0), (wide, edge), (wide, thick - edge)]
    loop += [(wide - edge, thick), (edge, thick), (0.0, thick - edge), (0.0, edge)]
    view.outline(OUTLINE, loop)
    view.hatch([loop])
    for x, y, across, up in (
        (0.0, 0.0, -1, -1), (wide, 0.0, 1, -1), (wide, thick, 1, 1), (0.0, thick, -1, 1)
    ):  # fmt: skip
        reach = 0.35 * min(wide, thick)
        arrow(view, (x + across * reach, y + up * reach), (x, y))
    return [view], [], "One turn of the ring cut across, with all four edges broken."


def _on_former(job, row):
    t = job.tooling
    end = View("end", "Ring on the former")
    tool_views.ring_on_former(job, end)
    radius = 0.5 * t.former_diameter
    size = size_in(row, "former_diameter")
    measured(end, job, size, rails.BOTTOM, (-radius, 0.0), (radius, 0.0), True)
    return [end], [], "The ring sprung on to its former, seen along the axis."


def _soak(job, row):
    d, t = job.design, job.tooling
    temperature, time = size_in(row, "soak_temperature"), size_in(row, "soak_time")
    length = d.blank.length
    inside = 0.5 * d.blank.bored_inside
    view = View("box", "Boxed in, heated together, cooled in the box")
    if t.former_diameter is not None:
        inside = 0.5 * t.former_diameter
        cut_part(view, box(0.0, 0.35 * inside, length, inside))
    outer = inside + d.blank.set_thickness
    cut_part(view, box(0.0, inside, length, outer), 135.0)
    room, wall = 0.35 * outer, max(4.0, 0.08 * outer)
    shell = box(-room, -outer - room, length + room, outer + room)
    hull = box(-room - wall, -outer - room - wall, length + room + wall, outer + room + wall)
    view.outline(OUTLINE, shell)
    view.outline(OUTLINE, hull)
    axis_of(view, -room, length + room)
    for share in (0.2, 0.5, 0.8):
        x = -room + share * (length + 2.0 * room)
        foot = -outer - room - 3.0 * wall
        arrow(view, (x, foot - 2.0 * wall), (x, foot + wall))
    degrees = temperature.value
    heat = "%s \u00b0C" % words.whole(degrees)
    if job.system == words.INCH:
        heat = "%s \u00b0F" % words.whole(1.8 * degrees + 32.0)
    text = "Ring at %s, held %s" % (heat, words.hours(time.value))
    view.label("right", (0.5 * length, outer), text, dot=True)
    return [view], [], "The ring with what holds it, boxed in and heated from below."


# Facing, closing, finish-turning.


def _pot(job, row):
    d, t = job.design, job.tooling
    views, _, _ = tool_views.pot(job)
    view = views[0]
    view.measures = []
    view.labels = []
    view.title = "Ring in the pot, cut lengthways"
    bore = 0.5 * t.pot_bore
    reach = cutting_tool(view, (d.section.width, bore - 0.5 * d.blank.set_thickness), "face", bore)
    arrow(view, (d.section.width + 2.0 * reach, bore), (d.section.width + 2.0 * reach, 0.7 * bore))
    width = size_in(row, "ring_width")
    measured(view, job, width, rails.BOTTOM, (0.0, -bore), (width.value, -bore))
    measured(view, job, size_in(row, "pot_bore"), rails.LEFT, (0.0, -bore), (0.0, bore), True)
    return [view], [], "The ring held by its outside in the pot; the tool faces its side."


def _on_mandrel(job, outer):
    """The View of the ring on the clamp mandrel. outer: radius of the ring [mm]."""
    view = tool_views.clamp_mandrel(job, outer)[0][0]
    view.measures = []
    return view


def _clamp(job, row):
    d, t = job.design, job.tooling
    spigot, plate = 0.5 * t.clamp_mandrel_diameter, 0.5 * t.end_plate_diameter
    closer = 0.5 * (d.blank.finish_outside + d.allowances.finishing)
    if t.closing_ring_bore is not None:
        closer = 0.5 * t.closing_ring_bore
        wide, wall = t.closing_ring_width, max(LEAST_WALL, 2.0 * WALL * closer)
    else:
        wide = job.sizes["closing-band"]["closing_band_width"].value
        wall = holding_views.band_thickness(job)
    view = _on_mandrel(job, closer)
    view.title = "Closed, then gripped by the end plate"
    if t.closing_ring_bore is not None:
        size = size_in(row, "closing_ring_bore")
        measured(view, job, size, rails.LEFT, (0.0, -closer), (0.0, closer), True)
    middle = 0.5 * d.section.width
    loop = box(middle - 0.5 * wide, closer, middle + 0.5 * wide, closer + wall)
    view.outline(ADJACENT, loop)
    view.outline(ADJACENT, mirrored_points(loop))
    size = size_in(row, "clamp_mandrel_diameter")
    measured(view, job, size, rails.LEFT, (0.0, -spigot), (0.0, spigot), True)
    size = size_in(row, "end_plate_diameter")
    right = d.section.width
    measured(view, job, size, rails.RIGHT, (right, -plate), (right, plate), True)
    return [view], [], "The ring closed round the mandrel's spigot, under its end plate."


def _close_by_band(job, row):
    views = holding_views.closing_band(job)[0] + _clamp(job, row)[0]
    return views, [], "The band round the closed ring; the ring gripped on the mandrel."


def _turn_finish(job, row):
    size = size_in(row, "finish_outside_diameter")
    radius = 0.5 * size.value
    wide = job.design.section.width
    view = _on_mandrel(job, radius)
    view.title = "Clamped, turned to the bore"
    reach = cutting_tool(view, (wide, radius), "turn", radius)
    arrow(view, (wide + 2.6 * reach, radius + 1.4 * reach), (wide + reach, radius + 1.4 * reach))
    measured(view, job, size, rails.RIGHT, (0.5 * wide, -radius), (0.5 * wide, radius), True)
    return [view], [], "The ring clamped closed on the mandrel; the tool turns its outside."


def _bore_clamped(job, row):
    view = holding_views.outer_clamp(job)[0][0]
    view.measures = []
    view.title = "Held by its outside, bored"
    size = size_in(row, "inside_diameter")
    inner, wide = 0.5 * size.value, job.design.section.width
    reach = cutting_tool(view, (0.5 * wide, inner), "bore", inner)
    arrow(view, (wide + 3.0 * reach, 0.5 * inner), (wide + reach, 0.5 * inner))
    measured(view, job, size, rails.LEFT, (0.0, -inner), (0.0, inner), True)
    return [view], [], "The ring in the outer clamp; the boring tool takes its inside."


def _in_bore(job, row):
    d = job.design
    views, _, _ = ring_views.closed(job)
    view = views[0]
    # The gap is where its label points.
    point = view.labels[0].point
    view.measures = []
    view.labels = []
    view.title = "The ring in the bore: feel the gap"
    view.circle(ADJACENT, 0.5 * d.duty.bore + max(4.0, 0.1 * d.duty.bore))
    size = size_in(row, "closed_gap_reading")
    text = words.length(size.value, job.system)
    if size.lower is not None:
        low, high = size.lower, size.upper
        text = "%s to %s" % (words.number(low, job.system), words.length(high, job.system))
    view.label("right", point, "Feeler " + text, size.name, size.value, "mm")
    return [view], [], "The ring closed in its bore, with its gap."


_FREE = _of(ring_views.free, "The free ring over the circle of its bore.")
_FIT = _of(piston_views.in_cylinder, "The ring in its groove in the piston, in the cylinder.")
_ROLLED = "The outside of the blank rolled out, with the cuts to make."

_VIEWS = {
    "survey": lathe_views.survey,
    "face-bar": lathe_views.face_bar,
    "drill": lathe_views.drill,
    "turn-rough": lathe_views.turn_rough,
    "bore-rough": lathe_views.bore_rough,
    "bore": lathe_views.bore,
    "part-off": lathe_views.part_off,
    "face-blank": _face_blank,
    "hold-stick": lathe_views.hold_stick,
    "mark-out": _detail(blank_views.slit_detail, _ROLLED),
    "slit": _of(table_views.rotary_table, "The blank on the table, the saw in the slit.", 1),
    "slit-stick": _of(table_views.rotary_table, "The stick on the table, the saw in the slit.", 1),
    "saw-off": lathe_views.saw_off,
    "saw-wedges": _detail(table_views.bridge_detail, "The bridge as the saw leaves it."),
    "saw-ends": _detail(blank_views.slit_detail, _ROLLED),
    "saw-end": _detail(blank_views.cut_detail, _ROLLED),
    "saw-step": _detail(blank_views.cut_detail, _ROLLED),
    "deburr": _deburr,
    "turn-through": _of(blank_views.turned_through, "The ring turned inside out.", 1),
    "put-on-former": _on_former,
    "put-on-former-bound": _on_former,
    "spread": _of(tool_views.spacer, "The ring held open by the spacer in its gap."),
    "soak": _soak,
    "take-off": _FREE,
    "turn-back": _FREE,
    "measure-free-gap": _FREE,
    "face-step": _pot,
    "face-sides": _pot,
    "clamp": _clamp,
    "clamp-forced": _clamp,
    "clamp-band": _close_by_band,
    "turn-finish": _turn_finish,
    "bore-clamped": _bore_clamped,
    "dress-ends": _in_bore,
    "inspect": _detail(ring_views.section, "The ring cut across: its thickness and width."),
    "fit": _FIT,
    "fit-double": _FIT,
}
