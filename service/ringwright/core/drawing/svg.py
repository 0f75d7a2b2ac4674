"""SVG text of a sheet: millimetres as user units, one class for each kind of line, no inline style.

Colours are left to the page: everything is drawn in currentColor, and every layer has a class
"rw-<layer>" to dress it by. Printed or opened alone it is black on white. Each dimension is a group
with data-figure, data-value and data-unit, each view one with data-view and data-scale, so that a
program can read what a person sees.
"""

import math

from . import letters
from .entities import (
    ADJACENT,
    CENTRE,
    FRAME,
    HIDDEN,
    LAYERS,
    REGION,
    Arc,
    Circle,
    Dimension,
    Fill,
    Line,
    Polyline,
    Text,
)
from .shapes import hatch_lines, polar

FAMILY = "Helvetica, Arial, 'Liberation Sans', sans-serif"
_CAPPED = (HIDDEN, CENTRE, ADJACENT)


def svg(sheet):
    """The SVG of a Sheet, as text."""
    out = []
    key = sheet.part + ("-%d" % sheet.number if sheet.count > 1 else "")
    out.append(
        '<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="0 0 %s %s" '
        'class="rw-drawing" role="img" aria-labelledby="rw-title-%s rw-desc-%s" '
        'fill="none" stroke="currentColor" stroke-width="%s" stroke-linecap="round" '
        'stroke-linejoin="round" font-family="%s">'
        % (
            _number(sheet.width),
            _number(sheet.height),
            _number(sheet.width),
            _number(sheet.height),
            key,
            key,
            _number(LAYERS["thin"].width),
            FAMILY,
        )
    )
    out.append('<title id="rw-title-%s">%s</title>' % (key, escaped(sheet.title)))
    out.append('<desc id="rw-desc-%s">%s</desc>' % (key, escaped(sheet.about)))
    high = sheet.height
    for view in sheet.views:
        out.append(
            '<g class="rw-view" data-view="%s" data-scale="%s">' % (view.name, _fine(view.scale))
        )
        out += _entities(view.entities, high)
        out.append("</g>")
    out.append('<g class="rw-sheet">')
    out += _entities(sheet.frame, high)
    out.append("</g></svg>")
    return "\n".join(out) + "\n"


def escaped(text):
    """Text as XML may hold it: marked characters replaced, what XML forbids left out."""
    kept = []
    for letter in text:
        code = ord(letter)
        if letter == "&":
            kept.append("&amp;")
        elif letter == "<":
            kept.append("&lt;")
        elif letter == ">":
            kept.append("&gt;")
        elif letter == '"':
            kept.append("&quot;")
        elif (
            code >= 32
            and not 0x7F <= code < 0xA0
            and not 0xD800 <= code < 0xE000
            and code & 0xFFFE != 0xFFFE
        ):
            kept.append(letter)
        else:
            kept.append(" ")
    return "".join(kept)


def _number(value):
    """Millimetres to the micrometre, written short and alike in both Pythons."""
    units = int(math.floor(value * 1000.0 + 0.5))
    if units % 1000 == 0:
        return str(units // 1000)
    return _short(units, 3)


def _fine(value):
    """A number to six places."""
    return _short(int(math.floor(value * 1000000.0 + 0.5)), 6)


def _short(units, places):
    """A whole number of 1/10**places, without noughts at its end."""
    digits = str(abs(units))
    digits = "0" * (places + 1 - len(digits)) + digits
    text = (digits[:-places] + "." + digits[-places:]).rstrip("0")
    if text[-1] == ".":
        text = text[:-1]
    return "-" + text if units < 0 else text


def _entities(entities, high):
    out = []
    for entity in entities:
        if type(entity) is Dimension:
            out.append(_dimension_start(entity))
            for part in entity.parts:
                out.append(_entity(part, high))
            out.append("</g>")
        else:
            out.append(_entity(entity, high))
    return out


def _dimension_start(entity):
    text = '<g class="rw-dimension" data-kind="%s"' % entity.kind
    if entity.name:
        text += ' data-figure="%s"' % entity.name
    if entity.value is not None:
        text += ' data-value="%s" data-unit="%s"' % (_fine(entity.value), entity.unit)
    if entity.points:
        (x1, y1), (x2, y2) = entity.points
        text += ' data-scale="%s"' % (_fine(entity.scale))
        if entity.unit == "mm":
            text += ' data-length="%s"' % _number(
                math.sqrt((x2 - x1) * (x2 - x1) + (y2 - y1) * (y2 - y1))
            )
    return text + ">"


def _entity(entity, high):
    kind = type(entity)
    if kind is Text:
        return _text(entity, high)
    dress = _dress(entity.layer, kind)
    if kind is Line:
        return '<line%s x1="%s" y1="%s" x2="%s" y2="%s"/>' % (
            dress,
            _number(entity.x1),
            _number(high - entity.y1),
            _number(entity.x2),
            _number(high - entity.y2),
        )
    if kind is Circle:
        return '<circle%s cx="%s" cy="%s" r="%s"/>' % (
            dress,
            _number(entity.x),
            _number(high - entity.y),
            _number(entity.radius),
        )
    if kind is Arc:
        return '<path%s d="%s"/>' % (dress, _arc(entity, high))
    if kind is Polyline:
        return '<path%s d="%s"/>' % (dress, _path(entity.points, high, entity.closed))
    if kind is Fill:
        return '<path%s d="%s"/>' % (dress, _path(entity.points, high, True))
    steps = []
    for x1, y1, x2, y2 in hatch_lines(entity.loops, entity.angle, entity.spacing):
        steps.append(
            "M%s %sL%s %s" % (_number(x1), _number(high - y1), _number(x2), _number(high - y2))
        )
    return '<path%s d="%s"/>' % (dress, "".join(steps))


def _dress(layer, kind):
    line = LAYERS[layer]
    text = ' class="rw-%s"' % layer
    if kind is Fill:
        if layer == REGION:
            return text + ' fill="currentColor" fill-opacity="0.14" stroke="none"'
        return text + ' fill="currentColor" stroke="none"'
    if line.width != LAYERS["thin"].width:
        text += ' stroke-width="%s"' % _number(line.width)
    if line.dashes:
        text += ' stroke-dasharray="%s"' % " ".join([_number(dash) for dash in line.dashes])
        if layer in _CAPPED:
            text += ' stroke-linecap="butt"'
    if layer == FRAME:
        text += ' stroke-linejoin="miter"'
    return text


def _path(points, high, closed):
    steps = []
    for x, y in points:
        steps.append("%s %s" % (_number(x), _number(high - y)))
    return "M" + "L".join(steps) + ("Z" if closed else "")


def _arc(entity, high):
    x1, y1 = polar(entity.radius, entity.start, entity.x, entity.y)
    x2, y2 = polar(entity.radius, entity.end, entity.x, entity.y)
    large = 1 if entity.end - entity.start > 180.0 else 0
    # The sheet is turned upside down on the way to SVG, so counter-clockwise there is sweep 0.
    return "M%s %sA%s %s 0 %d 0 %s %s" % (
        _number(x1),
        _number(high - y1),
        _number(entity.radius),
        _number(entity.radius),
        large,
        _number(x2),
        _number(high - y2),
    )


def _text(entity, high):
    x, y = _number(entity.x), _number(high - entity.y)
    text = '<text class="rw-text" x="%s" y="%s" font-size="%s"' % (
        x,
        y,
        _number(entity.size / letters.CAPITAL),
    )
    text += ' fill="currentColor" stroke="none"'
    if entity.align != "start":
        text += ' text-anchor="%s"' % entity.align
    if entity.turn:
        text += ' transform="rotate(-%d %s %s)"' % (entity.turn, x, y)
    if entity.bold:
        text += ' font-weight="bold"'
    # Another face than the one measured fills the same width, so that words stay clear of each
    # other.
    wide = letters.width(entity.text, entity.size, entity.bold)
    text += ' textLength="%s" lengthAdjust="spacingAndGlyphs"' % _number(wide)
    return text + ">%s</text>" % escaped(entity.text)
