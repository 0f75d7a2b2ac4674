"""A view of a part: its shape in real millimetres and what is to be said of it, drawn at any
scale.
"""

from collections import namedtuple

from . import leaders, letters, rails, style
from .entities import TEXT, Arc, Circle, Hatch, Line, Polyline, Text, moved
from .shapes import extent

# At a scale, about the part's own origin: entities, box of all [mm of paper], boxes of its texts.
Drawn = namedtuple("Drawn", ("scale", "entities", "box", "texts"))

SIDES = (rails.TOP, rails.BOTTOM, rails.LEFT, rails.RIGHT)


class View:
    """Collects shapes, measures and labels; `drawn` lays them out.

    name: key of the view. title: shown under it, "" for none. target: None for a view at the scale
    of the sheet; for an enlarged detail the largest size its shape may take on paper [mm]. second:
    True for one that takes a smaller scale of its own rather than have the others made smaller.
    """

    def __init__(self, name, title="", target=None, second=False):
        self.name = name
        self.title = title
        self.target = target
        self.second = second
        self.shapes = []
        self.measures = []
        self.labels = []
        self._extent = None
        self._beside = None

    def add(self, *entities):
        """Adds entities, real mm."""
        self.shapes += entities

    def extend(self, entities):
        """Adds a list of entities, real mm."""
        self.shapes += entities

    def line(self, layer, x1, y1, x2, y2):
        self.shapes.append(Line(layer, x1, y1, x2, y2))

    def circle(self, layer, radius, x=0.0, y=0.0):
        self.shapes.append(Circle(layer, x, y, radius))

    def arc(self, layer, radius, start, end, x=0.0, y=0.0):
        self.shapes.append(Arc(layer, x, y, radius, start, end))

    def outline(self, layer, points, closed=True):
        self.shapes.append(Polyline(layer, points, closed))

    def hatch(self, loops, angle=45.0, spacing=style.HATCH_SPACING):
        self.shapes.append(Hatch("hatching", loops, angle, spacing))

    def measure(self, name, value, side, first, second, words):
        """A linear dimension on `side` between two points (x, y) of the part."""
        self.measures.append(
            rails.Measure(
                name=name, value=value, side=side, first=first, second=second, words=words
            )
        )

    def label(self, side, point, text, name="", value=None, unit="", dot=False):
        """Words in the column on the left or right, with a leader to `point`."""
        self.labels.append(
            leaders.Label(
                name=name, value=value, unit=unit, side=side, point=point, text=text, dot=dot
            )
        )

    def extent(self):
        """(left, bottom, right, top) of the shape, real mm; to be asked once it is complete."""
        if self._extent is None:
            self._extent = extent(self.shapes)
        return self._extent

    def size(self):
        """(width, height) of the shape, real mm."""
        left, bottom, right, top = self.extent()
        return right - left, top - bottom

    def beside(self, room):
        """Width that the columns of labels and their leaders take [mm]. room: of a column."""
        if self._beside is None:
            self._beside = 0.0
            for side in (rails.LEFT, rails.RIGHT):
                widest = 0.0
                for label in self.labels:
                    if label.side == side:
                        for line in letters.wrapped(label.text, style.LETTERS, room):
                            widest = max(widest, letters.width(line, style.LETTERS))
                if widest:
                    self._beside += style.LEADER_REACH + widest
        return self._beside

    def drawn(self, scale, room, title_room, stated):
        """Drawn at a scale (paper over part).

        room: of a column of labels, title_room [mm]. stated: whether it states its scale.
        """
        left, bottom, right, top = [edge * scale for edge in self.extent()]
        entities = [moved(shape, scale, 0.0, 0.0) for shape in self.shapes]
        box = [left, bottom, right, top]
        texts = [text_box(entity) for entity in entities if type(entity) is Text]
        for one in texts:
            _join(box, one)
        edges = {rails.TOP: top, rails.BOTTOM: -bottom, rails.LEFT: -left, rails.RIGHT: right}
        for side in SIDES:
            mine = [entry for entry in self.measures if entry.side == side]
            if not mine:
                continue
            edge = edges[side]
            dimensions, boxes = rails.placed(mine, side, scale, edge, style.LETTERS)
            for _ in range(4):
                if not _any_overlap(boxes, texts):
                    break
                # Words that stick out beyond a corner: begin farther out.
                edge += 2.0 * style.FIRST_RAIL
                dimensions, boxes = rails.placed(mine, side, scale, edge, style.LETTERS)
            entities += dimensions
            texts += boxes
            _grow(box, dimensions, boxes)
        for side in (rails.LEFT, rails.RIGHT):
            mine = [entry for entry in self.labels if entry.side == side]
            if mine:
                edge = box[2] if side == rails.RIGHT else box[0]
                dimensions, boxes = leaders.placed(mine, side, scale, edge, style.LETTERS, room)
                entities += dimensions
                texts += boxes
                _grow(box, dimensions, boxes)
        if self.title:
            words = self.title
            if stated:
                words = "%s  %s" % (self.title, scale_words(scale))
            middle = 0.5 * (box[0] + box[2])
            base = box[1] - style.CLEAR - 2.0 * style.LETTERS
            for line in letters.wrapped(words, style.LETTERS * letters.BOLD, title_room):
                entities.append(Text(TEXT, middle, base, style.LETTERS, line, "middle", 0, True))
                texts.append(text_box(entities[-1]))
                _join(box, texts[-1])
                base -= style.LETTERS * style.PITCH
        return Drawn(scale=scale, entities=entities, box=tuple(box), texts=texts)


def scale_words(scale):
    """A scale as ISO 5455 writes it: 1:2, 1:1, 5:1."""
    if scale >= 1.0:
        return "%s:1" % _short(scale)
    return "1:%s" % _short(1.0 / scale)


def _short(number):
    tenths = int(number * 100.0 + 0.5)
    whole, part = divmod(tenths, 100)
    if not part:
        return str(whole)
    text = "%d.%02d" % (whole, part)
    return text[:-1] if text.endswith("0") else text


def text_box(text):
    """(left, bottom, right, top) that a Text takes up, letters below the line included."""
    wide = letters.width(text.text, text.size, text.bold)
    start = -0.5 * wide if text.align == "middle" else -wide if text.align == "end" else 0.0
    low, high = -text.size * letters.DESCENT, text.size
    if text.turn:
        return text.x - high, text.y + start, text.x - low, text.y + start + wide
    return text.x + start, text.y + low, text.x + start + wide, text.y + high


def _any_overlap(boxes, others):
    for a in boxes:
        for b in others:
            if a[0] < b[2] + 0.5 and b[0] < a[2] + 0.5 and a[1] < b[3] + 0.5 and b[1] < a[3] + 0.5:
                return True
    return False


def _grow(box, dimensions, boxes):
    for dimension in dimensions:
        for part in dimension.parts:
            if type(part) is Line:
                _join(
                    box,
                    (
                        min(part.x1, part.x2),
                        min(part.y1, part.y2),
                        max(part.x1, part.x2),
                        max(part.y1, part.y2),
                    ),
                )
    for one in boxes:
        _join(box, one)


def _join(box, other):
    box[0] = min(box[0], other[0])
    box[1] = min(box[1], other[1])
    box[2] = max(box[2], other[2])
    box[3] = max(box[3], other[3])
