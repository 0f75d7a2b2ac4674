"""Reads a chart as a person does: its numbers give the scales, its lines are read off by them."""

from functools import cache

import numpy

from drawing.views import JOBS, job_of, settled_job
from ringwright.core.drawing import style
from ringwright.core.drawing.entities import Circle, Fill, Line, Polyline, Text

# mm to an inch, N/mm2 to a pound on the square inch: exact, and 4.4482216152605 N / (25.4 mm)^2.
INCH = 25.4
PSI = 4.4482216152605 / 25.4**2
MORE = {
    "thick": {"bore": 80.0, "radial_thickness": 4.4},
    "thin": {"bore": 80.0, "radial_thickness": 1.9, "ring_type": "plain"},
    "faint": {"bore": 80.0, "wall_pressure": 0.02},
    "strong": {"bore": 80.0, "wall_pressure": 0.09},
}


@cache
def job_named(name):
    return settled_job(name) if name in JOBS else job_of("double", **MORE[name])


ALL = [*JOBS, *MORE]


def units(job):
    return (INCH, PSI) if job.system == "inch" else (1.0, 1.0)


def number(words):
    return float(words.replace("\u202f", "").replace(" ", ""))


class Chart:
    """A chart read off a View: what stands on it in the values of its own axes."""

    def __init__(self, view):
        self.view = view
        frame = next(one for one in view.shapes if type(one) is Polyline)
        (_, self.height), corner, (self.width, _) = frame.points
        assert corner == (0.0, 0.0)
        texts = [one for one in view.shapes if type(one) is Text]
        below = sorted((one for one in texts if one.align == "middle"), key=lambda one: one.y)
        # The title of the axis stands lowest, that of the other one above everything.
        self.across, self.up = below[0].text, max(texts, key=lambda one: one.y).text
        beside = [one for one in texts if one.align == "end"]
        self.marks_across = [(one.x, number(one.text)) for one in below[1:]]
        self.marks_up = [(one.y + style.LETTERS / 2, number(one.text)) for one in beside]
        self._across = numpy.polyfit(*zip(*self.marks_across, strict=True), 1)
        self._up = numpy.polyfit(*zip(*self.marks_up, strict=True), 1)

    def read(self, point):
        """The pair of values that a point of the paper stands for."""
        return numpy.polyval(self._across, point[0]), numpy.polyval(self._up, point[1])

    def corners(self):
        """Lowest and highest value of both axes."""
        low, high = self.read((0.0, 0.0)), self.read((self.width, self.height))
        return (low[0], high[0]), (low[1], high[1])

    def curves(self, layer):
        """All curves of a layer but the frame, each a list of pairs."""
        lines = [one for one in self.view.shapes if type(one) is Polyline][1:]
        return [[self.read(point) for point in one.points] for one in lines if one.layer == layer]

    def areas(self):
        fills = [one for one in self.view.shapes if type(one) is Fill]
        return [[self.read(point) for point in one.points] for one in fills]

    def rings(self):
        """Where a point is ringed."""
        circles = [one for one in self.view.shapes if type(one) is Circle]
        return sorted({self.read((one.x, one.y)) for one in circles})

    def said(self):
        """Words beside the chart -> the pair that they speak of."""
        assert {one.side for one in self.view.labels} <= {"right"}
        return {one.text: self.read(one.point) for one in self.view.labels}

    def scale_lines(self):
        """(x of lines up the chart, y of lines across it), on paper."""
        thin = [one for one in self.view.shapes if type(one) is Line and one.layer == "thin"]
        return (
            [one.x1 for one in thin if one.x1 == one.x2],
            [one.y1 for one in thin if one.y1 == one.y2],
        )
