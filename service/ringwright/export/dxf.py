"""A drawing as a DXF document: every view at full size in the model, the sheet as a layout.

In the model one unit is one millimetre (or one inch) of the part, so that distances can be taken
off and tool paths laid along the lines; views stand apart as on the sheet, details at full size
too, with small words. The layout holds border and title block and looks at each view at the scale
stated there.
"""

import io
import math
from collections.abc import Iterable, Sequence

import ezdxf
from ezdxf import bbox, units
from ezdxf.document import Drawing
from ezdxf.enums import TextEntityAlignment
from ezdxf.layouts import BaseLayout, Modelspace, Paperspace

from ..core.drawing.entities import (
    ADJACENT,
    CENTRE,
    DIMENSIONS,
    HIDDEN,
    LAYERS,
    LIMIT,
    REGION,
    Arc,
    Circle,
    Dimension,
    Fill,
    Hatch,
    Line,
    PlacedView,
    Polyline,
    Sheet,
    Text,
)
from ..core.drawing.letters import DEGREE, DIAMETER
from ..named_types import Document, Entity, Point

MM = "mm"
INCH = "inch"
UNITS = (MM, INCH)
MEDIA_TYPE = "image/vnd.dxf"
# The oldest release with Unicode text and line weights that readers of all kinds share.
RELEASE = "R2010"
DIMENSION_STYLE = "WORKSHOP"
LETTERS = "LETTERS"

_PER_UNIT = {MM: 1.0, INCH: 25.4}
_ALIGN = {
    "start": TextEntityAlignment.LEFT,
    "middle": TextEntityAlignment.CENTER,
    "end": TextEntityAlignment.RIGHT,
}
_DASHED = (HIDDEN, CENTRE, ADJACENT, LIMIT)
# Layers are named by what they hold, in capitals.
_GAP = 20.0
# The window a viewer opens with: as wide as most screens, with a little air round the drawing.
_WINDOW_RATIO = 1.6
_MARGIN = 1.05


def dxf(sheets: Sequence[Sheet], unit: str = MM) -> bytes:
    """The bytes of a DXF document of all sheets of a part.

    sheets: list of core Sheet. unit: "mm" or "inch" of the model.
    """
    # The same drawing gives the same bytes, so that it can be kept and compared.
    ezdxf.options.write_fixed_meta_data_for_testing = True
    per = _PER_UNIT[unit]
    document = ezdxf.new(RELEASE, setup=False)
    document.units = units.MM if unit == MM else units.IN
    document.header["$MEASUREMENT"] = 1 if unit == MM else 0
    scale = sheets[0].scale or 1.0
    document.header["$LTSCALE"] = 1.0 / scale
    _prepare(document, per, scale)
    shift = 0.0
    for sheet in sheets:
        # A view at less than the sheet's scale takes more room at full size than it has on paper.
        apart = min([scale, *(view.scale for view in sheet.views)])
        places = [_Place(view, scale, apart, per, shift) for view in sheet.views]
        model = document.modelspace()
        for view, place in zip(sheet.views, places, strict=True):
            for entity in view.entities:
                _add(document, model, entity, place)
        _layout(document, sheet, places, per)
        shift += (sheet.width + _GAP) / apart / per
    _open_on(document, document.modelspace())
    out = io.StringIO()
    document.write(out)
    return out.getvalue().encode("utf-8", "replace")


def _open_on(document: Drawing, space: Modelspace) -> None:
    """Says how far the drawing reaches, and points the first window at it: viewers open there."""
    reach = bbox.extents(space)
    if reach.has_data:
        space.reset_extents(reach.extmin, reach.extmax)
        document.header["$EXTMIN"] = tuple(reach.extmin)
        document.header["$EXTMAX"] = tuple(reach.extmax)
        size = reach.size
        height = _MARGIN * max(size.y, size.x / _WINDOW_RATIO)
        window = document.set_modelspace_vport(height, reach.center)
        window.dxf.aspect_ratio = _WINDOW_RATIO


class _Place:
    """Where a view lies in the model: paper to full size, about the view's own origin."""

    def __init__(
        self, view: PlacedView, scale: float, apart: float, per: float, shift: float
    ) -> None:
        self.view = view
        self.factor = 1.0 / (view.scale * per)
        self.x = view.x / (apart * per) + shift
        self.y = view.y / (apart * per)
        # Dashes as long on paper whatever the scale of the view.
        self.dashes = scale / view.scale

    def point(self, x: float, y: float) -> Point:
        return (
            (x - self.view.x) * self.factor + self.x,
            (y - self.view.y) * self.factor + self.y,
        )

    def points(self, points: Iterable[Point]) -> list[Point]:
        return [self.point(x, y) for x, y in points]


class _Paper:
    """The layout itself: paper as it is."""

    dashes = 1.0

    def __init__(self, per: float) -> None:
        self.factor = 1.0 / per

    def point(self, x: float, y: float) -> Point:
        return x * self.factor, y * self.factor

    def points(self, points: Iterable[Point]) -> list[Point]:
        return [self.point(x, y) for x, y in points]


def line_type_name(layer: str) -> str:
    """Name of the line type of a layer: its number in ISO 128-2."""
    kind = LAYERS[layer]
    return "ISO128-%s" % kind.number if kind.dashes else "CONTINUOUS"


def _prepare(document: Drawing, per: float, scale: float) -> None:
    for layer, kind in LAYERS.items():
        name = line_type_name(layer)
        if kind.dashes and name not in document.linetypes:
            # Drawn lengths positive, blanks negative, the whole first.
            lengths = [
                length / per * (1.0 if i % 2 == 0 else -1.0) for i, length in enumerate(kind.dashes)
            ]
            pattern = [sum(abs(length) for length in lengths), *lengths]
            document.linetypes.add(name, pattern, description=kind.use)
        document.layers.add(
            layer.upper(), linetype=name, lineweight=int(round(kind.width * 100)), color=7
        ).description = kind.use
    document.styles.add(LETTERS, font="LiberationSans-Regular.ttf")
    style = document.dimstyles.add(DIMENSION_STYLE)
    style.dxf.dimtxt = 3.5 / per
    style.dxf.dimasz = 3.5 / per
    style.dxf.dimexe = 2.0 / per
    style.dxf.dimexo = 1.0 / per
    style.dxf.dimscale = 1.0 / scale
    style.dxf.dimtad = 1
    style.dxf.dimdec = 2 if per == 1.0 else 3
    style.dxf.dimtxsty = LETTERS


def _add(document: Drawing, space: BaseLayout, entity: Entity, place: _Place | _Paper) -> None:
    kind = type(entity)
    if kind is Dimension:
        _add_dimension(document, space, entity, place)
        return
    dress = {"layer": entity.layer.upper()}
    if entity.layer in _DASHED and place.dashes != 1.0:
        dress["ltscale"] = place.dashes
    if kind is Line:
        start, end = place.point(entity.x1, entity.y1), place.point(entity.x2, entity.y2)
        space.add_line(start, end, dress)
    elif kind is Circle:
        space.add_circle(place.point(entity.x, entity.y), entity.radius * place.factor, dress)
    elif kind is Arc:
        space.add_arc(
            place.point(entity.x, entity.y),
            entity.radius * place.factor,
            entity.start,
            entity.end,
            dxfattribs=dress,
        )
    elif kind is Polyline:
        space.add_lwpolyline(place.points(entity.points), close=entity.closed, dxfattribs=dress)
    elif kind is Fill:
        _add_fill(space, entity, place, dress)
    elif kind is Hatch:
        _add_hatch(space, entity, place, dress)
    else:
        _add_text(space, entity, place, dress)


def _add_fill(space: BaseLayout, entity: Fill, place: _Place | _Paper, dress: Document) -> None:
    points = place.points(entity.points)
    if len(points) == 3:
        space.add_solid(points, dress)
        return
    hatch = space.add_hatch(color=256, dxfattribs=dress)
    hatch.paths.add_polyline_path(points, is_closed=True)
    if entity.layer == REGION:
        hatch.transparency = 0.8


def _add_hatch(space: BaseLayout, entity: Hatch, place: _Place | _Paper, dress: Document) -> None:
    spacing = entity.spacing * place.factor
    turn = math.radians(entity.angle)
    offset = (-spacing * math.sin(turn), spacing * math.cos(turn))
    hatch = space.add_hatch(color=256, dxfattribs=dress)
    hatch.set_pattern_fill(
        "ISO128-HATCHING", color=256, definition=[[entity.angle, (0.0, 0.0), offset, []]]
    )
    for loop in entity.loops:
        hatch.paths.add_polyline_path(place.points(loop), is_closed=True)


def _add_text(space: BaseLayout, entity: Text, place: _Place | _Paper, dress: Document) -> None:
    words = plain_text(entity.text)
    if not words:
        return
    text = space.add_text(
        words,
        height=entity.size * place.factor,
        rotation=entity.turn,
        dxfattribs={**dress, "style": LETTERS},
    )
    text.set_placement(place.point(entity.x, entity.y), align=_ALIGN[entity.align])


def plain_text(text: str) -> str:
    """Text as a DXF text entity may hold it: one line, its own signs for degree and diameter."""
    clean = "".join(letter if letter.isprintable() else " " for letter in text)
    clean = clean.replace("%%", "% %").replace("^", "^ ")
    return clean.replace(DIAMETER, "%%c").replace(DEGREE, "%%d").strip()


def _add_dimension(
    document: Drawing, space: BaseLayout, entity: Dimension, place: _Place | _Paper
) -> None:
    """A true dimension where two points are measured, drawn as the sheet shows it; else its
    lines.
    """
    if entity.kind != "linear":
        for part in entity.parts:
            _add(document, space, part, place)
        return
    block = document.blocks.new_anonymous_block(type_char="D")
    for part in entity.parts:
        _add(document, block, part, place)
    first, second = place.points(entity.points)
    upright = abs(first[0] - second[0]) < abs(first[1] - second[1])
    middle = (0.5 * (first[0] + second[0]), 0.5 * (first[1] + second[1]))
    words = [plain_text(entity.words.prefix + line) for line in entity.words.lines]
    space.new_entity(
        "DIMENSION",
        {
            "layer": DIMENSIONS.upper(),
            "dimstyle": DIMENSION_STYLE,
            # Linear, its block used by nothing else, words where they were put.
            "dimtype": 0 | 32 | 128,
            "geometry": block.name,
            "defpoint": (*second, 0.0),
            "defpoint2": (*first, 0.0),
            "defpoint3": (*second, 0.0),
            "text_midpoint": (*middle, 0.0),
            "angle": 90.0 if upright else 0.0,
            "text": "\\P".join(words),
            "actual_measurement": math.dist(first, second),
        },
    )


def _layout(document: Drawing, sheet: Sheet, places: Iterable[_Place], per: float) -> None:
    """The sheet as a layout: border, title block, and a window on each view."""
    name = "SHEET %d" % sheet.number
    layout: Paperspace
    if sheet.number == 1:
        document.layouts.rename("Layout1", name)
        layout = document.paperspace(name)
    else:
        layout = document.layouts.new(name)
    layout.page_setup(
        size=(sheet.width / per, sheet.height / per),
        margins=(0, 0, 0, 0),
        units="mm" if per == 1.0 else "inch",
    )
    paper = _Paper(per)
    for entity in sheet.frame:
        _add(document, layout, entity, paper)
    for view, place in zip(sheet.views, places, strict=True):
        left, bottom, right, top = view.box
        wide, high = right - left, top - bottom
        if wide <= 0.0 or high <= 0.0:
            continue
        middle = (0.5 * (left + right), 0.5 * (bottom + top))
        layout.add_viewport(
            center=paper.point(*middle),
            size=((wide + 2.0) / per, (high + 2.0) / per),
            view_center_point=place.point(*middle),
            view_height=(high + 2.0) * place.factor,
            # The window's own edge is not part of the drawing.
            dxfattribs={"layer": "WINDOWS"},
        )
