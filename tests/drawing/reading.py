"""Reads the SVG of a drawing back with an independent library (svgelements) and real font metrics.

Nothing here imports the drawing code: only the text that it produced.
"""

import re
from collections import namedtuple
from xml.etree import ElementTree

import svgelements
from reportlab.pdfbase.pdfmetrics import stringWidth
from shapely.geometry import LineString, Polygon, box
from shapely.ops import unary_union

SVG = "{http://www.w3.org/2000/svg}"
# Ascent of capitals and digits, and depth of letters such as g, of the face as its metrics file
# gives them: /1000 of the letter size.
CAPITALS = 0.718
DEPTH = 0.207

Written = namedtuple("Written", ("text", "box"))


def tree(text):
    """The root element; raises ParseError where the SVG is not well formed XML."""
    return ElementTree.fromstring(text)


def views(root):
    """Name of each view -> its element."""
    return {
        group.get("data-view"): group for group in root.iter(SVG + "g") if group.get("data-view")
    }


def shapes(group, layer, dimensions=False):
    """Elements of a layer in a group; those of dimensions only when asked."""
    inside = {child for one in group.iter(SVG + "g") if _is_dimension(one) for child in one.iter()}
    return [
        element
        for element in group.iter()
        if element.get("class") == "rw-" + layer and (dimensions or element not in inside)
    ]


def _is_dimension(group):
    return group.get("class") == "rw-dimension"


def path(element):
    """The svgelements Path of a line, circle or path element."""
    tag = element.tag.replace(SVG, "")
    if tag == "line":
        return svgelements.Path(
            svgelements.Move((float(element.get("x1")), float(element.get("y1")))),
            svgelements.Line(
                (float(element.get("x1")), float(element.get("y1"))),
                (float(element.get("x2")), float(element.get("y2"))),
            ),
        )
    if tag == "circle":
        return svgelements.Path(
            svgelements.Circle(
                cx=float(element.get("cx")), cy=float(element.get("cy")), r=float(element.get("r"))
            )
        )
    return svgelements.Path(element.get("d"))


def extent(elements):
    """(left, top, right, bottom) of elements, mm."""
    boxes = [path(element).bbox() for element in elements]
    return (
        min(one[0] for one in boxes),
        min(one[1] for one in boxes),
        max(one[2] for one in boxes),
        max(one[3] for one in boxes),
    )


def polygon(element):
    """A closed path of straight edges as a shapely Polygon."""
    points = [
        (segment.end.x, segment.end.y) for segment in path(element) if segment.end is not None
    ]
    return Polygon(points)


def dimensions(root):
    """Groups of linear dimensions."""
    return [
        group
        for group in root.iter(SVG + "g")
        if _is_dimension(group) and group.get("data-kind") == "linear"
    ]


def tips(group):
    """The tips of the two arrows of a dimension: where each filled path begins."""
    found = []
    for element in group:
        if element.tag == SVG + "path" and element.get("fill") == "currentColor":
            start = path(element)[0].end
            found.append((start.x, start.y))
    return found


def numbers(group):
    """The numbers printed at a dimension, with how many decimals each has."""
    found = []
    for element in group.iter(SVG + "text"):
        text = "".join(element.itertext()).replace("\u00d8", "").replace(" ", "")
        # What follows from other sizes stands in brackets.
        text = re.sub(r"^\((.*)\)$", r"\1", text)
        if re.fullmatch(r"-?\d+(\.\d+)?", text):
            found.append((float(text), len(text.partition(".")[2])))
    return found


def written(root):
    """Every text with the box it fills in the face named first, from the metrics of that face."""
    found = []
    for element in root.iter(SVG + "text"):
        text = "".join(element.itertext())
        size = float(element.get("font-size"))
        face = "Helvetica-Bold" if element.get("font-weight") == "bold" else "Helvetica"
        # The width is told to the reader, whatever its face; it must be no less than is needed.
        wide = float(element.get("textLength"))
        assert wide >= 0.97 * stringWidth(text, face, size), text
        x, y = float(element.get("x")), float(element.get("y"))
        anchor = element.get("text-anchor", "start")
        left = x - {"start": 0.0, "middle": 0.5 * wide, "end": wide}[anchor]
        deep = DEPTH * size if re.search("[gjpqy,;()\u00d8]", text) else 0.0
        turned = element.get("transform")
        if turned:
            assert re.fullmatch(
                r"rotate\(-90 %s %s\)" % (element.get("x"), element.get("y")), turned
            )
            along = left - x
            shape = box(x - CAPITALS * size, y - along - wide, x + deep, y - along)
        else:
            shape = box(left, y - CAPITALS * size, left + wide, y + deep)
        found.append(Written(text, shape))
    return found


def outline_area(elements):
    """Union of closed paths as a shapely shape."""
    return unary_union([polygon(element) for element in elements])


def line(element):
    """A path of straight edges as a shapely LineString."""
    points = [
        (segment.end.x, segment.end.y) for segment in path(element) if segment.end is not None
    ]
    return LineString(points)
