"""What a drawing is made of, and the kinds of line it is drawn with.

Line types follow ISO 128-2 as open drawing programmes have it (widths in the ratio 2:1; dashes and
gaps as multiples of the line's own width). Lengths mm of the sheet, angles degrees
counter-clockwise from the x axis.
"""

from collections import OrderedDict, namedtuple

# number: of the line type in ISO 128-2 and its use. width [mm]. dashes: drawn and blank lengths in
# turn [mm], empty for a continuous line.
LineType = namedtuple("LineType", ("number", "use", "width", "dashes"))

WIDE = 0.5
NARROW = 0.25

OUTLINE = "outline"
THIN = "thin"
HIDDEN = "hidden"
CENTRE = "centre"
ADJACENT = "adjacent"
HATCHING = "hatching"
DIMENSIONS = "dimensions"
TEXT = "text"
FRAME = "frame"
CUT = "cut"
LIMIT = "limit"
REGION = "region"
EDGE = "edge"
RULE = "rule"

_CHAIN = (24.0 * NARROW, 3.0 * NARROW, 0.5 * NARROW, 3.0 * NARROW)
_DOUBLE_CHAIN = _CHAIN + (0.5 * NARROW, 3.0 * NARROW)

LAYERS = OrderedDict(
    (
        (OUTLINE, LineType("01.2", "visible edges", WIDE, ())),
        (THIN, LineType("01.1", "slight edges, marks, scales of charts", NARROW, ())),
        (HIDDEN, LineType("02.1", "hidden edges", NARROW, (12.0 * NARROW, 3.0 * NARROW))),
        (CENTRE, LineType("04.1", "centre lines", NARROW, _CHAIN)),
        (ADJACENT, LineType("05.1", "neighbouring parts, other positions", NARROW, _DOUBLE_CHAIN)),
        (HATCHING, LineType("01.1", "hatching of cut material", NARROW, ())),
        (DIMENSIONS, LineType("01.1", "dimension, extension and leader lines", NARROW, ())),
        (TEXT, LineType("01.1", "titles and notes", NARROW, ())),
        (FRAME, LineType("01.2", "border and title block", WIDE, ())),
        (CUT, LineType("01.2", "lines to saw along", WIDE, ())),
        (LIMIT, LineType("02.2", "limits in charts", WIDE, (12.0 * WIDE, 3.0 * WIDE))),
        (REGION, LineType("01.1", "area of a chart that serves", NARROW, ())),
        (EDGE, LineType("01.2", "outer edge of a template, one closed line a piece", WIDE, ())),
        (RULE, LineType("01.1", "rules and degrees of a template, not to be cut", NARROW, ())),
    )
)

Line = namedtuple("Line", ("layer", "x1", "y1", "x2", "y2"))
Circle = namedtuple("Circle", ("layer", "x", "y", "radius"))
# Counter-clockwise from `start` to `end` [deg]; end is the larger number.
Arc = namedtuple("Arc", ("layer", "x", "y", "radius", "start", "end"))
# points: list of (x, y).
Polyline = namedtuple("Polyline", ("layer", "points", "closed"))
# Area between closed loops (lists of points), inside by the even-odd rule; lines `spacing` mm
# apart.
Hatch = namedtuple("Hatch", ("layer", "loops", "angle", "spacing"))
Fill = namedtuple("Fill", ("layer", "points"))
# size: height of capitals [mm]. align: start, middle or end, at (x, y) on the base line. turn: 0 or
# 90.
Text = namedtuple("Text", ("layer", "x", "y", "size", "text", "align", "turn", "bold"))
# A dimension: what it measures and how it is drawn. name: of the figure, "" where there is none.
# value: in unit (mm or deg). scale: of its view. kind: linear, angular or label. points: the
# two points measured, on the sheet; empty for a label. parts: list of the entities above.
Dimension = namedtuple(
    "Dimension", ("name", "value", "unit", "kind", "scale", "points", "words", "parts")
)
# One view on the sheet. x, y: where the origin of the part lies [mm]. scale: sheet over part.
PlacedView = namedtuple("PlacedView", ("name", "title", "scale", "x", "y", "entities", "box"))
# number, count: which sheet of how many. scale: of the main views, None on a screen.
Sheet = namedtuple(
    "Sheet",
    (
        "part",
        "title",
        "about",
        "paper",
        "width",
        "height",
        "scale",
        "number",
        "count",
        "views",
        "frame",
    ),
)


def moved(entity, scale, dx, dy):
    """The entity scaled about the origin, then shifted by (dx, dy). Text keeps its size."""
    kind = type(entity)
    if kind is Line:
        return Line(
            entity.layer,
            entity.x1 * scale + dx,
            entity.y1 * scale + dy,
            entity.x2 * scale + dx,
            entity.y2 * scale + dy,
        )
    if kind is Circle:
        return Circle(
            entity.layer, entity.x * scale + dx, entity.y * scale + dy, entity.radius * scale
        )
    if kind is Arc:
        return Arc(
            entity.layer,
            entity.x * scale + dx,
            entity.y * scale + dy,
            entity.radius * scale,
            entity.start,
            entity.end,
        )
    if kind is Polyline:
        return Polyline(entity.layer, moved_points(entity.points, scale, dx, dy), entity.closed)
    if kind is Hatch:
        loops = [moved_points(loop, scale, dx, dy) for loop in entity.loops]
        return Hatch(entity.layer, loops, entity.angle, entity.spacing)
    if kind is Fill:
        return Fill(entity.layer, moved_points(entity.points, scale, dx, dy))
    if kind is Text:
        return Text(
            entity.layer,
            entity.x * scale + dx,
            entity.y * scale + dy,
            entity.size,
            entity.text,
            entity.align,
            entity.turn,
            entity.bold,
        )
    return Dimension(
        name=entity.name,
        value=entity.value,
        unit=entity.unit,
        kind=entity.kind,
        scale=entity.scale,
        points=moved_points(entity.points, scale, dx, dy),
        words=entity.words,
        parts=[moved(part, scale, dx, dy) for part in entity.parts],
    )


def moved_points(points, scale, dx, dy):
    """A list of (x, y), scaled about the origin and shifted."""
    return [(x * scale + dx, y * scale + dy) for x, y in points]
