"""The blank: as turned and bored, rolled out with its slit and end cuts, and turned through
itself.
"""

import math

from . import rails, words
from .entities import CENTRE, CUT, HIDDEN, OUTLINE, THIN
from .job import cut_angle, run_of, sized
from .paper import PAPERS
from .ring_views import broken_strip
from .shapes import box, wavy
from .view import View


def blank(job):
    """(views, notes, about) of the blank before it is slit and sawn."""
    d = job.design
    view = View(
        "blank", "Blank, cut through the bridge" if d.duty.turns == 2 else "Blank, cut lengthways"
    )
    outer, inner, length = 0.5 * d.blank.rough_outside, 0.5 * d.blank.bored_inside, d.blank.length
    upper = box(0.0, inner, length, outer)
    view.outline(OUTLINE, upper)
    view.hatch([upper])
    pieces = [(0.0, length)]
    if d.duty.turns == 2:
        pieces = [(0.0, d.blank.band_width), (d.blank.band_width + d.allowances.slit, length)]
    for left, right in pieces:
        lower = box(left, -outer, right, -inner)
        view.outline(OUTLINE, lower)
        view.hatch([lower])
    view.line(OUTLINE, 0.0, -inner, 0.0, inner)
    view.line(OUTLINE, length, -inner, length, inner)
    reach = 0.05 * outer + 0.2 * length
    view.line(CENTRE, -reach, 0.0, length + reach, 0.0)
    view.measure(
        "rough_outside_diameter",
        d.blank.rough_outside,
        rails.LEFT,
        (0.0, -outer),
        (0.0, outer),
        sized(job, "rough_outside_diameter", d.blank.rough_outside, True),
    )
    view.measure(
        "bored_inside_diameter",
        d.blank.bored_inside,
        rails.LEFT,
        (0.0, -inner),
        (0.0, inner),
        sized(job, "bored_inside_diameter", d.blank.bored_inside, True),
    )
    view.measure(
        "blank_length",
        length,
        rails.TOP,
        (0.0, outer),
        (length, outer),
        sized(job, "blank_length", length),
    )
    detail = slit_detail(job) if d.duty.turns == 2 else cut_detail(job)
    notes = [
        "Bore and turn in one setting, part off with both sides square; %s left on each side for "
        "facing." % words.length(d.allowances.facing, job.system)
    ]
    if d.duty.turns == 2:
        notes.append(
            "Saw each band through on its own side of the bridge, the saw on the side of the band "
            "and not of the bridge. Take the burrs off."
        )
    about = "The blank lengthways, with its end cuts rolled out."
    if d.duty.turns == 2:
        about = "The blank lengthways, with slit, bridge and end cuts rolled out."
    return [view, detail], notes, about


def slit_detail(job):
    """The bridge, the slit and both saw cuts on the outside of the blank, rolled out."""
    d, t = job.design, job.tooling
    view = View("slit", "Outside at the bridge, rolled out", 92.0)
    band, slit, length, kerf = (
        d.blank.band_width,
        d.allowances.slit,
        d.blank.length,
        d.allowances.gap_kerf,
    )
    half = 0.5 * t.bridge_length
    run = run_of(d, band)
    reach = half + max(0.6 * half, 0.8 * band, 1.5 * kerf)
    broken_strip(view, -reach, reach, 0.0, length)
    for sign in (-1.0, 1.0):
        view.line(OUTLINE, sign * half, band, sign * reach, band)
        view.line(OUTLINE, sign * half, band + slit, sign * reach, band + slit)
        view.line(OUTLINE, sign * half, band, sign * half, band + slit)
    cuts = saw_cuts(half, band, slit, length, run, kerf)
    for corners in cuts:
        view.outline(CUT, corners)
    view.measure(
        "bridge_length",
        t.bridge_length,
        rails.TOP,
        (-half, band + slit),
        (half, band + slit),
        words.size(t.bridge_length, job.system, places=1),
    )
    if run > 0.0:
        view.measure(
            "scarf_length",
            run,
            rails.BOTTOM,
            (-half, band),
            (-half + run, 0.0),
            words.size(run, job.system),
        )
    view.measure(
        "band_width", band, rails.LEFT, (-reach, 0.0), (-reach, band), words.size(band, job.system)
    )
    view.measure(
        "slit_width",
        slit,
        rails.LEFT,
        (-reach, band),
        (-reach, band + slit),
        words.size(slit, job.system),
    )
    middle = (half - 0.5 * run + 0.5 * kerf, 0.5 * (band + slit + length))
    text = "Saw %s thick at %s to the side" % (
        words.length(d.allowances.kerf, job.system, 1),
        words.angle(cut_angle(d), 0).lines[0],
    )
    view.label("right", middle, text, "end_kerf", d.allowances.kerf, "mm", dot=True)
    return view


def saw_cuts(half, band, slit, length, run, kerf):
    """Corners of the two saw cuts of a double-turn blank, rolled out: (of the upper band, of the
    lower band).

    The middle of the bridge is x = 0. half: of the bridge. run: of a cut along the circumference.
    kerf: along it. All mm. Each cut takes its metal from the band beside the bridge, never from the
    bridge.
    """
    upper = [
        (half, band + slit),
        (half + kerf, band + slit),
        (half - run + kerf, length),
        (half - run, length),
    ]
    lower = [(-half, band), (-half - kerf, band), (-half + run - kerf, 0.0), (-half + run, 0.0)]
    return upper, lower


def cut_detail(job):
    """The saw cut of a plain blank, rolled out."""
    d = job.design
    view = View("cut", "Saw cut on the outside, rolled out", 80.0)
    width, kerf = d.blank.length, d.allowances.gap_kerf
    run = run_of(d, width)
    reach = 0.5 * run + kerf + max(width, 2.0 * kerf)
    broken_strip(view, -reach, reach, 0.0, width)
    corners = [
        (-0.5 * run - 0.5 * kerf, 0.0),
        (-0.5 * run + 0.5 * kerf, 0.0),
        (0.5 * run + 0.5 * kerf, width),
        (0.5 * run - 0.5 * kerf, width),
    ]
    view.outline(CUT, corners)
    if run > 0.0:
        view.measure("", run, rails.BOTTOM, corners[0], corners[3], words.size(run, job.system))
    text = "Saw %s thick at %s to the side" % (
        words.length(d.allowances.kerf, job.system, 1),
        words.angle(cut_angle(d), 0).lines[0],
    )
    if d.duty.end_cut == "stepped":
        text += "; then file the step, each tongue half the width"
    view.label(
        "right", (0.25 * run, 0.75 * width), text, "end_kerf", d.allowances.kerf, "mm", dot=True
    )
    return view


def turned_through(job):
    """(views, notes, about) of the sawn blank with its turns passed through one another."""
    d, t = job.design, job.tooling
    view = View("through", "Seen from outside, the bridge in front")
    outer, length, band = 0.5 * d.blank.rough_outside, d.blank.length, d.blank.band_width
    half = 0.5 * t.bridge_length
    run, kerf, slit = run_of(d, band), d.allowances.gap_kerf, d.allowances.slit
    theta = half / outer
    turn = (2.0 * math.pi - 2.0 * theta) * outer

    def edge(height, first, last, steps=36):
        """An edge of the coil from one angle behind the right-hand bridge end to another,
        projected.
        """
        points = []
        for i in range(steps + 1):
            angle = first + (last - first) * i / steps
            points.append(
                (outer * math.sin(angle), height + length * (angle - theta) * outer / turn)
            )
        return points

    quarter, full = 0.5 * math.pi, 2.0 * math.pi - theta
    x = outer * math.sin(theta)
    scale = x / half
    for height in (-band, 0.0, band):
        view.outline(OUTLINE, edge(height, theta, quarter), False)
        view.outline(OUTLINE, edge(height, 3.0 * quarter, full), False)
    view.outline(OUTLINE, edge(band, quarter, math.pi - theta), False)
    view.outline(OUTLINE, edge(-band, math.pi + theta, 3.0 * quarter), False)
    view.outline(HIDDEN, edge(band, math.pi - theta, math.pi + theta), False)
    view.outline(HIDDEN, edge(-band, math.pi - theta, math.pi + theta), False)
    for angle, sign in ((quarter, 1.0), (3.0 * quarter, -1.0)):
        rise = length * (angle - theta) * outer / turn
        view.line(OUTLINE, sign * outer, rise - band, sign * outer, rise + band)
    # The bridge with both scarfs, then the two free ends beyond it.
    corners = [
        (x, 0.0),
        (x, band),
        (x, band + slit),
        (x - run * scale, length),
        (-x, length),
        (-x, length - band),
        (-x, band),
        (-x + run * scale, 0.0),
    ]
    view.outline(OUTLINE, corners)
    gap = kerf * scale
    view.line(OUTLINE, x + gap, -band, x - run * scale + gap, 0.0)
    view.line(OUTLINE, -x - gap, length + band, -x + run * scale - gap, length)
    view.measure(
        "rough_outside_diameter",
        d.blank.rough_outside,
        rails.BOTTOM,
        (-outer, 0.0),
        (outer, 0.0),
        words.size(d.blank.rough_outside, job.system, True),
    )
    force, stress = job.acts.through.force, job.acts.through.equivalent
    notes = [
        "Each free end has passed by the whole width of the blank and lies on the other side of "
        "its neighbour.",
        "Force at a free end %s, stress %s where the turn is twisted most."
        % (words.force(force, job.system), words.stress(stress, job.system)),
        "Spread the passing over the whole turn; eye protection, face out of line.",
    ]
    about = "The sawn double-turn blank turned inside out: two turns wound past one another."
    return [view, _passed(job, turn)], notes, about


def _passed(job, turn):
    """The bridge and both free ends after turning through, rolled out. turn: length of a turn
    [mm].
    """
    d, t = job.design, job.tooling
    view = View("ends", "At the bridge, rolled out", 92.0)
    length, band, slit, kerf = (
        d.blank.length,
        d.blank.band_width,
        d.allowances.slit,
        d.allowances.gap_kerf,
    )
    half, run = 0.5 * t.bridge_length, run_of(d, band)
    reach = half + max(0.8 * half, 1.2 * band)
    rise = length * (reach - half) / turn
    view.outline(
        OUTLINE,
        [
            (half, 0.0),
            (half, band),
            (half, band + slit),
            (half - run, length),
            (-half, length),
            (-half, length - band),
            (-half, band),
            (-half + run, 0.0),
        ],
    )
    for sign, low in ((1.0, -band), (-1.0, length - band)):
        for i in range(3):
            y = low + i * band
            view.line(OUTLINE, sign * half, y, sign * reach, y + sign * rise)
    view.outline(OUTLINE, [(half + kerf, -band), (half - run + kerf, 0.0), (half, 0.0)], False)
    view.line(OUTLINE, -half - kerf, length + band, -half + run - kerf, length)
    view.line(OUTLINE, -half, length, -half + run - kerf, length)
    for sign, low, high in ((1.0, -band, band), (-1.0, length - band, length + band)):
        x = sign * reach
        view.outline(THIN, wavy(x, low + sign * rise, high + sign * rise, 0.04 * length), False)
    view.measure(
        "blank_length",
        length,
        rails.LEFT,
        (-half, 0.0),
        (-half, length),
        words.size(length, job.system),
    )
    view.label(
        "right",
        (half - run + kerf + 0.3 * band, -0.4 * band),
        "Free end of the upper turn, now below",
        dot=True,
    )
    view.label(
        # A narrow sheet has room for one column of labels only.
        "left" if PAPERS[job.paper].framed else "right",
        (-half + run - kerf - 0.3 * band, length + 0.4 * band),
        "Free end of the lower turn, now above",
        dot=True,
    )
    return view
