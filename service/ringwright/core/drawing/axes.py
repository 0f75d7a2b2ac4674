"""A chart as a view: axes with round numbers, curves cut off at the edges, words beside them."""

import math

from ..wording import decimal
from . import letters, style
from .entities import REGION, TEXT, THIN, Circle, Fill, Line, Polyline, Text
from .view import View


class Axes:
    """Axes of `width` by `height` mm of paper over ranges of two quantities.

    across, up: (lowest, highest, title) of each quantity.
    """

    def __init__(self, name, title, width, height, across, up):
        self.view = View(name, title)
        self.width = width
        self.height = height
        self.across = across
        self.up = up
        self._scales()

    def place(self, x, y):
        """Where a pair of values stands, mm."""
        return (
            (x - self.across[0]) / (self.across[1] - self.across[0]) * self.width,
            (y - self.up[0]) / (self.up[1] - self.up[0]) * self.height,
        )

    def curve(self, layer, pairs):
        """A curve through pairs of values, cut off where it leaves the chart."""
        piece = []
        last = None
        for pair in pairs:
            point = self.place(*pair)
            inside = self._inside(point)
            if last is not None and inside != self._inside(last):
                piece.append(self._edge(last, point))
            if inside:
                piece.append(point)
            elif piece:
                self._draw(layer, piece)
                piece = []
            last = point
        self._draw(layer, piece)

    def region(self, pairs):
        """A shaded area between pairs of values, which must lie within the chart."""
        self.view.add(Fill(REGION, [self.place(*pair) for pair in pairs]))

    def point(self, x, y):
        """A point to be noticed."""
        px, py = self.place(x, y)
        self.view.add(Circle("outline", px, py, 1.6), Circle("outline", px, py, 0.3))

    def label(self, x, y, text):
        """Words beside the chart, with a leader to a pair of values."""
        self.view.label("right", self.place(x, y), text)

    def _draw(self, layer, points):
        if len(points) > 1:
            self.view.add(Polyline(layer, points, False))

    def _inside(self, point):
        return -1e-9 <= point[0] <= self.width + 1e-9 and -1e-9 <= point[1] <= self.height + 1e-9

    def _edge(self, first, second):
        """Where the way from one point to another crosses the border, by halving."""
        inside, outside = (first, second) if self._inside(first) else (second, first)
        for _ in range(24):
            middle = (0.5 * (inside[0] + outside[0]), 0.5 * (inside[1] + outside[1]))
            if self._inside(middle):
                inside = middle
            else:
                outside = middle
        return inside

    def _scales(self):
        view = self.view
        view.outline("outline", [(0.0, self.height), (0.0, 0.0), (self.width, 0.0)], False)
        low, high, title = self.across
        for value, words in marks(low, high, self.width, 22.0):
            x = self.place(value, self.up[0])[0]
            view.add(Line(THIN, x, 0.0, x, self.height), Line("outline", x, 0.0, x, -1.5))
            view.add(Text(TEXT, x, -3.0 - style.LETTERS, style.LETTERS, words, "middle", 0, False))
        base = -4.5 - style.LETTERS * 2.6
        view.add(Text(TEXT, 0.5 * self.width, base, style.LETTERS, title, "middle", 0, False))
        low, high, title = self.up
        for value, words in marks(low, high, self.height, 12.0):
            y = self.place(self.across[0], value)[1]
            view.add(Line(THIN, 0.0, y, self.width, y), Line("outline", 0.0, y, -1.5, y))
            view.add(
                Text(TEXT, -2.5, y - 0.5 * style.LETTERS, style.LETTERS, words, "end", 0, False)
            )
        start = min(0.0, self.width - letters.width(title, style.LETTERS))
        view.add(Text(TEXT, start, self.height + 3.5, style.LETTERS, title, "start", 0, False))


def marks(low, high, length, room):
    """(value, words) at round numbers from low to high, at least `room` mm apart on `length` mm."""
    least = (high - low) * room / length
    step = 1.0
    while step > least:
        step = step / 10.0
    while step < least:
        for factor in (2.0, 2.5, 2.0):
            step = step * factor
            if step >= least:
                break
    places = max(0, -int(math.floor(math.log10(step) + 1e-9)))
    found = []
    count = int(math.ceil(low / step - 1e-9))
    while count * step <= high + 1e-9 * step:
        found.append((count * step, decimal(count * step, places)))
        count += 1
    return found
