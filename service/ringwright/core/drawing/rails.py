"""Linear dimensions outside a view: on parallel lines, short ones nearest, no words over one
another.

Worked in two coordinates whatever the side: u along the dimension line, v outwards from the view.
"""

from collections import namedtuple

from . import blocks, style
from .entities import DIMENSIONS, Dimension, Fill, Line

TOP = "top"
BOTTOM = "bottom"
LEFT = "left"
RIGHT = "right"

# What is to be measured: the two points (real mm of the part), the side where it is shown, its
# words.
Measure = namedtuple("Measure", ("name", "value", "side", "first", "second", "words"))
# A dimension on its rail. low, high: its ends; text_low, text_high: of its words; used_low,
# used_high: all it takes up along u. inside: arrows between the extension lines. from_low,
# from_high: v where the extension lines begin.
_Placed = namedtuple(
    "_Placed",
    (
        "measure",
        "block",
        "low",
        "high",
        "text_low",
        "text_high",
        "used_low",
        "used_high",
        "inside",
        "from_low",
        "from_high",
        "rail",
    ),
)

_TAIL = 2.0 * style.ARROW_LENGTH
_LEAST_INSIDE = 2.0 * style.ARROW_LENGTH + 1.5
# Between an extension line and the words of another dimension that break it.
_BREAK = 0.6


def _along(side, point):
    return point[0] if side in (TOP, BOTTOM) else point[1]


def _outwards(side, point):
    across = point[1] if side in (TOP, BOTTOM) else point[0]
    return across if side in (TOP, RIGHT) else -across


def _back(side, u, v):
    """From (u, v) to x and y."""
    if side == TOP:
        return u, v
    if side == BOTTOM:
        return u, -v
    return (v, u) if side == RIGHT else (-v, u)


def _words_outside(side):
    """True where words above their line stand away from the view: read from below or from the
    right.
    """
    return side in (TOP, LEFT)


def placed(measures, side, scale, edge, size):
    """(Dimensions, boxes) of the measures of one side, in mm of paper about the part's own origin.

    measures: list of Measure. scale: paper over part. edge: v beyond which the rails begin [mm of
    paper]. size: of letters [mm]. boxes: (left, bottom, right, top) of every text.
    """
    waiting = []
    for entry in measures:
        a, b = _along(side, entry.first) * scale, _along(side, entry.second) * scale
        va, vb = _outwards(side, entry.first) * scale, _outwards(side, entry.second) * scale
        if a > b:
            a, b, va, vb = b, a, vb, va
        waiting.append((b - a, a, len(waiting), b, va, vb, entry))
    waiting.sort(key=lambda item: (item[0], item[1], item[2]))
    rails = []
    done = []
    for span, low, _, high, from_low, from_high, entry in waiting:
        words = blocks.block(entry.words, size)
        least = 0
        for other in done:
            if low - 0.01 <= other.low and other.high <= high + 0.01:
                # Never nearer than one within it; on that one's own rail it has no room.
                least = max(least, other.rail)
        options = _options(span, low, high, words.width)
        rail = least
        while True:
            if rail == len(rails):
                rails.append([])
            choice = _free(options, rails[rail])
            if choice is not None:
                break
            rail += 1
        text_low, text_high, used_low, used_high, inside = choice
        item = _Placed(
            measure=entry,
            block=words,
            low=low,
            high=high,
            text_low=text_low,
            text_high=text_high,
            used_low=used_low,
            used_high=used_high,
            inside=inside,
            from_low=from_low,
            from_high=from_high,
            rail=rail,
        )
        rails[rail].append(item)
        done.append(item)
    levels = _levels(rails, side, edge)
    return _drawn(done, levels, side, scale)


def _options(span, low, high, wide):
    """Ways to set the words: between the extension lines, or beyond either end."""
    inside = span >= _LEAST_INSIDE
    if inside and wide + 1.0 <= span:
        middle = 0.5 * (low + high)
        return [(middle - 0.5 * wide, middle + 0.5 * wide, low, high, True)]
    tail = 0.0 if inside else _TAIL
    start = high + max(tail, 1.5)
    first = (start, start + wide, low - tail, start + wide, inside)
    end = low - max(tail, 1.5)
    second = (end - wide, end, end - wide, high + tail, inside)
    return [first, second]


def _free(options, rail):
    for option in options:
        clear = True
        for other in rail:
            gap = (
                0.0
                if option[4]
                and other.inside
                and _within(option)
                and _within((other.text_low, other.text_high, other.used_low, other.used_high))
                else style.CLEAR
            )
            if option[2] < other.used_high + gap - 0.01 and other.used_low < option[3] + gap - 0.01:
                clear = False
        if clear:
            return option
    return None


def _within(option):
    """True where the words stand between the arrows, so that chains may touch end to end."""
    return option[0] > option[2] and option[1] < option[3]


def _levels(rails, side, edge):
    """v of each rail's line."""
    levels = []
    at = edge + style.FIRST_RAIL
    for i, rail in enumerate(rails):
        tallest = 0.0
        for item in rail:
            tallest = max(tallest, item.block.height)
        room = tallest + style.ABOVE_LINE + style.RAIL_GAP
        if _words_outside(side):
            levels.append(at)
            at += room
        else:
            line = at + room if i else max(at, edge + room)
            levels.append(line)
            at = line
    return levels


def _drawn(items, levels, side, scale):
    dimensions = []
    boxes = []
    spans = []
    for item in items:
        level = levels[item.rail]
        if _words_outside(side):
            v_low = level + style.ABOVE_LINE
        else:
            v_low = level - style.ABOVE_LINE - item.block.height
        spans.append((item, v_low, v_low + item.block.height))
    for item in items:
        level = levels[item.rail]
        parts = _lines(item, level, side)
        for u, start in ((item.low, item.from_low), (item.high, item.from_high)):
            parts += _extension(u, start, level, item, spans, side)
        v_low = level + style.ABOVE_LINE
        if not _words_outside(side):
            v_low = level - style.ABOVE_LINE - item.block.height
        texts, corner = _words(item, v_low, side)
        parts += texts
        boxes.append(corner)
        first = _back(side, item.low, level)
        second = _back(side, item.high, level)
        measure = item.measure
        dimensions.append(
            Dimension(
                name=measure.name,
                value=measure.value,
                unit="mm",
                kind="linear",
                scale=scale,
                points=[first, second],
                words=measure.words,
                parts=parts,
            )
        )
    return dimensions, boxes


def _lines(item, level, side):
    """The dimension line and its arrows."""
    arrow = style.ARROW_LENGTH
    if item.inside:
        parts = [_line(side, item.used_low, level, item.used_high, level)]
        parts.append(_arrow(side, item.low, level, 1.0))
        parts.append(_arrow(side, item.high, level, -1.0))
        return parts
    parts = [
        _line(side, item.used_low, level, item.low - arrow, level),
        _line(side, item.low, level, item.high, level),
        _line(side, item.high + arrow, level, item.used_high, level),
    ]
    parts.append(_arrow(side, item.low, level, -1.0))
    parts.append(_arrow(side, item.high, level, 1.0))
    return parts


def _extension(u, start, level, item, spans, side):
    """An extension line, interrupted where it would run through the words of another dimension."""
    begin = start + style.EXTENSION_CLEAR
    end = level + style.EXTENSION_PAST
    if begin >= end:
        return []
    pieces = [(begin, end)]
    for other, v_low, v_high in spans:
        if other is item or not other.text_low - _BREAK < u < other.text_high + _BREAK:
            continue
        kept = []
        for a, b in pieces:
            below, above = min(b, v_low - _BREAK), max(a, v_high + _BREAK)
            if below > a:
                kept.append((a, below))
            if b > above:
                kept.append((above, b))
        pieces = kept
    return [_line(side, u, a, u, b) for a, b in pieces]


def _words(item, v_low, side):
    """(texts, box) of the words whose inner edge lies at v_low."""
    entry = item.block
    wide = item.text_high - item.text_low
    if side in (TOP, BOTTOM):
        y = v_low if side == TOP else -v_low - entry.height
        box = (item.text_low, y, item.text_low + wide, y + entry.height)
        return blocks.laid(entry, DIMENSIONS, item.text_low, y), box
    left = v_low if side == RIGHT else -v_low - entry.height
    box = (left, item.text_low, left + entry.height, item.text_low + wide)
    return blocks.laid_upright(entry, DIMENSIONS, left + entry.height, item.text_low), box


def _line(side, u1, v1, u2, v2):
    x1, y1 = _back(side, u1, v1)
    x2, y2 = _back(side, u2, v2)
    return Line(DIMENSIONS, x1, y1, x2, y2)


def _arrow(side, u, v, inwards):
    """A filled arrow with its tip at (u, v) and its body towards u + inwards."""
    length = style.ARROW_LENGTH * inwards
    half = style.ARROW_HALF_WIDTH
    corners = [(u, v), (u + length, v + half), (u + length, v - half)]
    return Fill(DIMENSIONS, [_back(side, a, b) for a, b in corners])
