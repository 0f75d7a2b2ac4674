"""Pictures of the first operations: the bore surveyed, and what is done to the bar in the chuck."""

from ..making.route_tube import CASTING_STOCK, DRILL_POINT
from . import rails, words
from .entities import OUTLINE, THIN, Fill
from .operation_marks import JAW, arrow, chuck, cut_part, cutting_tool, measured, size_in
from .shapes import box
from .turned_part import axis_of
from .view import View

# How far the bar is shown to stand out of the chuck, over its radius.
_STICK = 0.9
# From where on, over that length, it is shown as the tool leaves it.
_MADE = 0.45


def _bar(job):
    """(radius over the skin, radius of its bore, 0 for a solid bar, length shown) [mm]."""
    d, bar = job.design, job.bar
    if bar is None:
        skin = 0.5 * d.blank.rough_outside + CASTING_STOCK
        hole = max(0.5 * d.blank.bored_inside - CASTING_STOCK, 0.0)
    else:
        skin, hole = 0.5 * bar.as_cast, max(0.5 * bar.as_cast_bore, 0.0)
    return skin, hole, max(_STICK * skin, 1.6 * (d.blank.length + 2.0 * d.allowances.facing))


def _hole(job):
    """Radius of the hole that the bar has once it is drilled, where it is [mm]."""
    row = job.operations.get("drill")
    return _bar(job)[1] if row is None else 0.5 * size_in(row, "drill_diameter").value


def _on_stick(name, job, outer, hole, turned=None, bored=None, point=0.0):
    """A View of the bar in the chuck, and how long it stands out [mm].

    outer, hole: radius of the bar outside and in. turned, bored: radius of what is already made of
    its right half, None where nothing is. point: how far what bored it goes in beyond that.
    """
    _, _, length = _bar(job)
    half = _MADE * length
    view = View(name)
    top = outer if turned is None else turned
    low = hole if bored is None else bored
    loop = [(0.0, hole), (half - point, hole), (half, low), (length, low)]
    loop += [(length, top), (half, top), (half, outer), (0.0, outer)]
    cut_part(view, loop)
    # An edge stands in the hole only where it steps.
    for x, radius in ((length, low), (half, low), (0.0, hole)):
        if radius > 0.0 and (x != half or low != hole):
            view.line(OUTLINE, x, -radius, x, radius)
    chuck(view, outer, 0.25 * length)
    axis_of(view, -JAW * outer, length)
    return view, length


def survey(job, row):
    d = job.design
    bore = 0.5 * d.duty.bore
    length = 1.6 * d.duty.bore
    view = View("cylinder", "Gauge at three heights, and across")
    cut_part(view, box(0.0, bore, length, bore + max(6.0, 0.22 * bore)))
    for x in (0.0, length):
        view.line(OUTLINE, x, -bore, x, bore)
    axis_of(view, 0.0, length)
    for share in (0.15, 0.5, 0.85):
        x = share * length
        arrow(view, (x, 0.1 * bore), (x, bore))
        arrow(view, (x, -0.1 * bore), (x, -bore))
    view.measure(
        "bore",
        d.duty.bore,
        rails.LEFT,
        (0.0, -bore),
        (0.0, bore),
        words.size(d.duty.bore, job.system, True, words.GAUGED),
    )
    return [view], [], "A cylinder cut lengthways, with the gauge across it at three heights."


def face_bar(job, row):
    skin, hole, _ = _bar(job)
    view, length = _on_stick("bar", job, skin, hole)
    # In the metal, not in the hole of a cored bar.
    wall = skin - hole
    size = cutting_tool(view, (length, hole + 0.72 * wall), "face", skin)
    arrow(view, (length + size, hole + 0.6 * wall), (length + size, hole + 0.2 * wall))
    return [view], [], "The bar in the chuck; the tool faces its end from the outside inwards."


def drill(job, row):
    skin, hole, _ = _bar(job)
    size = size_in(row, "drill_diameter")
    radius, point = 0.5 * size.value, DRILL_POINT * size.value
    view, length = _on_stick("bar", job, skin, hole, bored=radius, point=point)
    half, reach = _MADE * length, length + 1.2 * skin
    body = [(half - point, 0.0), (half, radius), (reach, radius), (reach, -radius), (half, -radius)]
    view.outline(OUTLINE, body)
    arrow(view, (reach, 1.8 * radius), (length, 1.8 * radius))
    measured(view, job, size, rails.RIGHT, (reach, -radius), (reach, radius), True)
    return [view], [], "The bar in the chuck, drilled through from the tailstock."


def turn_rough(job, row):
    skin, _, _ = _bar(job)
    size = size_in(row, "rough_outside_diameter")
    radius = 0.5 * size.value
    view, length = _on_stick("bar", job, skin, _hole(job), turned=radius)
    half = _MADE * length
    reach = cutting_tool(view, (half, radius), "turn", skin)
    arrow(view, (half + 2.6 * reach, skin + reach), (half + reach, skin + reach))
    measured(view, job, size, rails.RIGHT, (length, -radius), (length, radius), True)
    return [view], [], "The bar in the chuck; the tool turns its outside towards the chuck."


def _bored(job, row, name):
    d = job.design
    size = size_in(row, name)
    radius = 0.5 * size.value
    start = min(_hole(job), 0.8 * radius)
    view, length = _on_stick("bar", job, 0.5 * d.blank.rough_outside, start, bored=radius)
    reach = cutting_tool(view, (_MADE * length, radius), "bore", radius)
    arrow(view, (length + 3.0 * reach, 0.5 * radius), (length + reach, 0.5 * radius))
    measured(view, job, size, rails.LEFT, (0.0, -radius), (0.0, radius), True)
    return [view], [], "The bar in the chuck; the boring tool opens it from the end."


def bore_rough(job, row):
    return _bored(job, row, "roughed_bore")


def bore(job, row):
    return _bored(job, row, "bored_inside_diameter")


def part_off(job, row):
    d = job.design
    outer, inner = 0.5 * d.blank.rough_outside, 0.5 * d.blank.bored_inside
    view, length = _on_stick("bar", job, outer, inner)
    size = size_in(row, "part_length")
    left = length - size.value
    wide = max(2.0, 0.03 * outer)
    tip = inner + 0.3 * (outer - inner)
    view.add(Fill(THIN, box(left - wide, tip, left, outer + 3.0 * wide)))
    view.add(Fill(THIN, box(left - 3.0 * wide, outer + 3.0 * wide, left, outer + 9.0 * wide)))
    arrow(view, (left + 2.0 * wide, outer + 9.0 * wide), (left + 2.0 * wide, outer + 3.0 * wide))
    measured(view, job, size, rails.BOTTOM, (left, -outer), (length, -outer))
    return [view], [], "The bar in the chuck; the parting tool goes in behind the blank."


def hold_stick(job, row):
    d = job.design
    outer = 0.5 * d.blank.rough_outside
    view, length = _on_stick("bar", job, outer, 0.5 * d.blank.bored_inside)
    view.title = "The stick in the chuck of the rotary table"
    for x in (0.3 * length, 0.9 * length):
        arrow(view, (x, 1.5 * outer), (x, outer))
    arrow(view, (0.45 * length, 1.5 * outer), (0.75 * length, 1.5 * outer))
    return [view], [], "The stick in the chuck of the rotary table; a dial moves along its outside."


def saw_off(job, row):
    d, t = job.design, job.tooling
    outer = 0.5 * d.blank.rough_outside
    view, length = _on_stick("bar", job, outer, 0.5 * d.blank.bored_inside)
    view.title = "Slit, moved along, sawn off"
    half = 0.5 * d.allowances.slit
    slit = length - d.blank.band_width - half
    step, sawn = size_in(row, "cut_off_step"), size_in(row, "blank_length")
    cut = slit - step.value
    bottom = t.slit.centre_distance - 0.5 * t.cutter_diameter
    for at in (slit, cut):
        view.add(Fill(THIN, box(at - half, bottom, at + half, 1.5 * outer)))
    arrow(view, (slit, 1.7 * outer), (cut, 1.7 * outer))
    measured(view, job, step, rails.TOP, (cut, 1.7 * outer), (slit, 1.7 * outer))
    measured(view, job, sawn, rails.BOTTOM, (cut + half, -outer), (length, -outer))
    return [view], [], "The stick on the table; the saw moves from the slit to the cut behind it."
