"""The full-size template that is wrapped round the blank to mark slit, bridge and saw cuts.

The strip is as long as the outside of the blank is round; the bridge stands in the middle of its
first piece, so that no join runs through it. Pieces stand below one another, on as many sheets as
they need.
"""

import math

from . import letters, style, words
from .blank_views import saw_cuts
from .entities import CUT, EDGE, OUTLINE, RULE, TEXT, THIN, Line, PlacedView, Polyline, Text, moved
from .job import run_of
from .paper import PAPERS
from .setting import room, sheet_of
from .shapes import box

_TAB = 9.0
_ABOVE = 6.0
_BELOW = 8.5
_RULER = 28.0
_MARK = 10


def sheets(job, title):
    """The list of Sheets of the template."""
    d = job.design
    around, length = math.pi * d.blank.rough_outside, d.blank.length
    notes = _notes(job, around)
    left, bottom, wide, high = room(job.paper, notes)
    # A strip that goes round in one piece has the bridge in its middle too.
    piece = min(math.floor(wide - _TAB - 8.0), around)
    starts = []
    at = -0.5 * piece
    while at < around - 0.5 * piece - 0.01:
        starts.append(at)
        at += piece
    step = length + _ABOVE + _BELOW + 3.0
    framed = PAPERS[job.paper].framed
    each = max(1, int((high - _RULER) // step)) if framed else len(starts)
    count = (len(starts) + each - 1) // each
    pages = []
    about = (
        "A strip at full size to wrap round the blank, with slit, bridge and saw cuts, and rules "
        "to check the print."
    )
    for number in range(1, count + 1):
        mine = starts[(number - 1) * each : number * each]
        used = _RULER + step * len(mine) if not framed else high
        top = bottom + used
        views = [_ruler_view(left + 6.0, top - 10.0)]
        y = top - _RULER - _ABOVE - length
        for start in mine:
            views.append(_piece(job, start, piece, around, starts, left + 4.0, y))
            y -= step
        pages.append(
            sheet_of("template", title, about, views, notes, job.paper, 1.0, used, number, count)
        )
    return pages


def _notes(job, around):
    d = job.design
    notes = [
        "Print at actual size, not fitted to the page; if either rule measures wrong, do not use "
        "it.",
        "Cut along the outer edges, join the pieces tab under letter, and wrap round %s: it is %s "
        "long and the ends butt. Paper 0.1 mm thick leaves them 0.3 mm apart."
        % (words.diameter(d.blank.rough_outside, job.system), words.length(around, job.system, 1)),
    ]
    if d.duty.turns == 2:
        notes.append(
            "Degrees are counted from the middle of the bridge, as the rotary table turns."
        )
    return notes


def _ruler_view(x, y):
    """Rules of 100 mm and 4 in, to be measured on the print."""
    parts = []
    for length, steps, name, low in ((100.0, 10, "100 mm", 0.0), (101.6, 4, "4 in", -11.0)):
        parts.append(Line(RULE, 0.0, low, length, low))
        for i in range(steps + 1):
            at = length * i / steps
            tall = 3.0 if i in (0, steps) else 1.8
            parts.append(Line(RULE, at, low, at, low + tall))
        # Above the rule: a narrow sheet has no room beyond it.
        parts.append(Text(TEXT, 0.5 * length, low + 3.5, style.LETTERS, name, "middle", 0, True))
    return _placed("rules", parts, x, y)


def _placed(name, parts, x, y):
    moved_parts = [moved(part, 1.0, x, y) for part in parts]
    return PlacedView(
        name=name, title="", scale=1.0, x=x, y=y, entities=moved_parts, box=(x, y, x, y)
    )


def _piece(job, start, piece, around, starts, x, y):
    """One piece of the strip, from `start` mm beyond the middle of the bridge."""
    d, t = job.design, job.tooling
    number = starts.index(start)
    last = number == len(starts) - 1
    end = min(start + piece, around - 0.5 * piece)
    length = d.blank.length
    # What is cut out is one closed line, its tab included, so that a cutter can follow it.
    parts = [Polyline(EDGE, box(start, 0.0, end if last else end + _TAB, length), True)]
    if not last:
        parts.append(Line(THIN, end, 0.0, end, length))
        parts.append(_letter(end + 0.5 * _TAB, length, _join(number)))
    if number:
        parts.append(_letter(start + 4.0, length, _join(number - 1)))
    if d.duty.turns == 2:
        half = 0.5 * t.bridge_length
        for low, high in ((start, -half), (max(start, half), end)):
            if high > low and low < end:
                for level in (d.blank.band_width, d.blank.band_width + d.allowances.slit):
                    parts.append(Line(OUTLINE, max(low, start), level, min(high, end), level))
        for side in (-half, half):
            if start <= side <= end:
                parts.append(
                    Line(
                        OUTLINE,
                        side,
                        d.blank.band_width,
                        side,
                        d.blank.band_width + d.allowances.slit,
                    )
                )
        cuts = saw_cuts(
            half,
            d.blank.band_width,
            d.allowances.slit,
            length,
            run_of(d, d.blank.band_width),
            d.allowances.gap_kerf,
        )
    else:
        run, kerf = run_of(d, length), d.allowances.gap_kerf
        left = -0.5 * run - 0.5 * kerf
        cuts = [
            [(left, 0.0), (left + kerf, 0.0), (left + run + kerf, length), (left + run, length)]
        ]
    for corners in cuts:
        inside = _between(corners, start, end)
        if inside:
            parts.append(Polyline(CUT, inside, True))
    if number == 0:
        name = "bridge" if d.duty.turns == 2 else "saw cut"
        parts.append(Text(TEXT, 0.0, length + 1.5, style.SMALL, name, "middle", 0, True))
    parts += _degrees(start, end, around)
    return _placed("strip-%d" % (number + 1), parts, x - start, y)


def _join(number):
    """The letter of a join: A, B, ... Z, AA ..."""
    first = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
    return first[number] if number < 26 else first[number // 26 - 1] + first[number % 26]


def _letter(x, length, name):
    return Text(TEXT, x, length + 1.5, style.LETTERS, name, "middle", 0, True)


def _between(corners, left, right):
    """The part of a convex outline between two x, as the corners of a closed line; [] if none.

    corners: list of (x, y) in order round the outline.
    """
    for limit, side in ((left, 1.0), (right, -1.0)):
        kept = []
        for i, (x2, y2) in enumerate(corners):
            x1, y1 = corners[i - 1]
            before, after = side * (x1 - limit), side * (x2 - limit)
            if before * after < 0.0:
                kept.append((limit, y1 + (y2 - y1) * before / (before - after)))
            if after >= 0.0:
                kept.append((x2, y2))
        corners = kept
    return corners if len(corners) > 2 else []


def _degrees(start, end, around):
    """Marks every ten degrees below the strip, some with their number."""
    parts = []
    room_for = letters.width("330" + letters.DEGREE, style.SMALL) + 1.5
    shown = 90
    for step in (60, 30):
        if around * step / 360.0 > room_for:
            shown = step
    first = int(math.ceil(start * 360.0 / around / _MARK))
    for mark in range(first, first + 37):
        at = mark * _MARK * around / 360.0
        if at > end + 1e-9:
            break
        angle = mark * _MARK % 360
        long = angle % shown == 0
        parts.append(Line(RULE, at, 0.0, at, -2.2 if long else -1.2))
        if long and start + 3.0 <= at <= end - 3.0:
            text = "%d%s" % (angle, letters.DEGREE)
            parts.append(
                Text(TEXT, at, -2.2 - 1.0 - style.SMALL, style.SMALL, text, "middle", 0, False)
            )
    return parts
