"""Every kind of line and shape as SVG, parsed back with another library, upside down as SVG is."""

import math
import random
from xml.etree import ElementTree

import pytest
from shapely.geometry import MultiLineString, Polygon
from svgelements import Path

from ringwright.core.drawing import entities, svg
from ringwright.core.drawing.entities import (
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

HIGH = 100.0
# ISO 128-2 as two open files of line types have it (read): drawn and blank in turn, as multiples of
# the width of the line; wide lines twice as wide as narrow ones.
DASHED, CHAIN = (12, 3), (24, 3, 0.5, 3)
KINDS = {
    "outline": (0.5, ()), "thin": (0.25, ()), "hidden": (0.25, DASHED), "centre": (0.25, CHAIN),
    "adjacent": (0.25, (*CHAIN, 0.5, 3)), "hatching": (0.25, ()), "dimensions": (0.25, ()),
    "text": (0.25, ()), "frame": (0.5, ()), "cut": (0.5, ()), "limit": (0.5, DASHED),
    "region": (0.25, ()), "edge": (0.5, ()), "rule": (0.25, ()),
}  # fmt: skip


def element(entity):
    return ElementTree.fromstring(svg._entity(entity, HIGH))


def points(found):
    """Places of a path of straight lines, and whether it is closed."""
    path = Path(found.get("d"))
    ends = [(one.end.x, one.end.y) for one in path if one.end is not None]
    return ends, found.get("d").endswith("Z")


def sheet(**given):
    usual = {
        "part": "plate", "title": "Plate", "about": "A plate.", "paper": "A4", "width": 210.0,
        "height": HIGH, "scale": 0.5, "number": 1, "count": 1, "views": [], "frame": [],
    }  # fmt: skip
    return Sheet(**{**usual, **given})


def test_layers_are_the_lines_of_the_standard():
    assert set(entities.LAYERS) == set(KINDS)
    for name, (width, dashes) in KINDS.items():
        line = entities.LAYERS[name]
        assert line.width == width, name
        assert line.dashes == pytest.approx([one * width for one in dashes]), name


@pytest.mark.parametrize("layer", KINDS)
def test_a_layer_is_dressed_as_its_line(layer):
    """What is not said is as the whole sheet says it: 0.25 wide, drawn through, round ends."""
    width, dashes = KINDS[layer]
    found = element(Line(layer, 1.0, 2.0, 3.0, 4.0))
    assert found.get("class") == "rw-" + layer
    assert float(found.get("stroke-width", 0.25)) == width
    drawn = [float(one) for one in (found.get("stroke-dasharray") or "").split()]
    # To the micrometre.
    assert drawn == pytest.approx([one * width for one in dashes], abs=6e-4)
    # Dots and dashes of thin lines end square, or they would run into their gaps.
    assert found.get("stroke-linecap") == (
        "butt" if layer in ("hidden", "centre", "adjacent") else None
    )
    assert found.get("stroke-linejoin") == ("miter" if layer == "frame" else None)
    face = element(Fill(layer, [(0.0, 0.0), (1.0, 0.0), (0.0, 1.0)]))
    assert face.get("fill") == "currentColor" and face.get("stroke") == "none"
    assert face.get("fill-opacity") == ("0.14" if layer == "region" else None)


@pytest.mark.parametrize("extent", [1.0, 89.0, 179.0, 180.0, 181.0, 183.0, 270.0, 359.0])
@pytest.mark.parametrize("start", [0.0, -75.0, 140.0])
def test_an_arc_keeps_its_ends_its_way_and_its_longer_side(start, extent):
    found = Path(element(Arc("thin", 30.0, 40.0, 12.0, start, start + extent)).get("d"))
    # Ends are written to the micrometre.
    assert found.length() == pytest.approx(math.radians(extent) * 12.0, rel=5e-3)
    for share in (0.0, 0.5, 1.0):
        turn = math.radians(start + share * extent)
        there = found.point(share)
        assert (there.x, there.y) == pytest.approx(
            (30.0 + 12.0 * math.cos(turn), HIGH - 40.0 - 12.0 * math.sin(turn)), abs=0.06
        )


def test_lines_and_faces_are_turned_upside_down():
    corners = [(1.0, 2.0), (8.5, 3.25), (4.125, 9.0)]
    turned = [(x, HIGH - y) for x, y in corners]
    ends, closed = points(element(Polyline("thin", corners, False)))
    assert ends == turned and not closed
    ends, closed = points(element(Polyline("thin", corners, True)))
    assert ends[:3] == turned and closed
    ends, closed = points(element(Fill("thin", corners)))
    assert ends[:3] == turned and closed
    circle = element(Circle("thin", 5.5, 6.25, 3.0))
    assert [float(circle.get(name)) for name in ("cx", "cy", "r")] == [5.5, 93.75, 3.0]
    line = element(Line("thin", 1.0, 2.0, 3.0, 5.0))
    assert [float(line.get(name)) for name in ("x1", "y1", "x2", "y2")] == [1.0, 98.0, 3.0, 95.0]


def test_hatching_lies_in_its_face_upside_down():
    outer = [(3.0, 4.0), (40.0, 6.0), (33.0, 31.0), (5.0, 22.0)]
    hole = [(14.0, 10.0), (22.0, 11.0), (18.0, 18.0)]
    found = element(Hatch("hatching", [outer, hole], 45.0, 2.5))
    pieces = []
    for one in found.get("d").split("M")[1:]:
        first, last = [tuple(map(float, end.split())) for end in one.split("L")]
        pieces.append((first, last))
    face = Polygon([(x, HIGH - y) for x, y in outer], [[(x, HIGH - y) for x, y in hole]])
    lines = MultiLineString(pieces)
    assert face.buffer(2e-3).covers(lines)
    # As much of it as lines 2.5 mm apart have.
    assert lines.length == pytest.approx(face.area / 2.5, rel=0.03)
    for one in lines.geoms:
        (x1, y1), (x2, y2) = one.coords
        # Up to the right: in SVG y grows downwards.
        assert (y2 - y1) == pytest.approx(-(x2 - x1), abs=2.1e-3)


def test_a_dimension_says_its_figure_and_how_long_it_is_drawn():
    ends = [(10.0, 20.0), (13.0, 24.0)]
    parts = [Line("dimensions", *ends[0], *ends[1]), Text("text", 1.0, 2.0, 3.5, "5", "start", 0,
                                                          False)]  # fmt: skip
    whole = Dimension("width", 10.0, "mm", "linear", 0.5, ends, ("10",), parts)
    root = ElementTree.fromstring("".join(svg._entities([whole], HIGH)))
    assert root.get("class") == "rw-dimension" and root.get("data-kind") == "linear"
    assert (root.get("data-figure"), root.get("data-value"), root.get("data-unit")) == (
        "width", "10", "mm",
    )  # fmt: skip
    # 3 and 4 make 5.
    assert (root.get("data-length"), root.get("data-scale")) == ("5", "0.5")
    assert [one.tag for one in root] == ["line", "text"]
    angle = whole._replace(unit="deg", kind="angular", name="")
    root = ElementTree.fromstring("".join(svg._entities([angle], HIGH)))
    assert root.get("data-length") is None and root.get("data-scale") == "0.5"
    assert root.get("data-figure") is None
    bare = whole._replace(points=[], value=None, kind="label")
    root = ElementTree.fromstring("".join(svg._entities([bare], HIGH)))
    assert root.get("data-scale") is root.get("data-length") is root.get("data-value") is None


@pytest.mark.parametrize("count", [1, 2, 3])
def test_sheets_of_several_are_named_apart(count):
    """An id stands once in a page, so that each title is found by its own."""
    keys = []
    for number in range(1, count + 1):
        text = svg.svg(sheet(number=number, count=count))
        root = ElementTree.fromstring(text)
        keys += [one.get("id") for one in root if one.get("id")]
        assert root.get("aria-labelledby").split() == keys[-2:]
        assert (root.get("width"), root.get("height")) == ("210mm", "100mm")
        assert root.get("viewBox") == "0 0 210 100" and root.get("stroke-width") == "0.25"
    assert len(set(keys)) == 2 * count
    if count == 1:
        assert keys == ["rw-title-plate", "rw-desc-plate"]


def test_views_come_before_the_frame_with_their_scale():
    line = Line("outline", 1.0, 2.0, 3.0, 4.0)
    view = PlacedView(name="face", title="", scale=1.0 / 3.0, x=0.0, y=0.0, entities=[line],
                      box=(0.0, 0.0, 0.0, 0.0))  # fmt: skip
    root = ElementTree.fromstring(svg.svg(sheet(views=[view], frame=[line, line])))
    groups = [one for one in root if one.tag.endswith("}g")]
    assert [one.get("class") for one in groups] == ["rw-view", "rw-sheet"]
    assert (groups[0].get("data-view"), groups[0].get("data-scale")) == ("face", "0.333333")
    assert [len(one) for one in groups] == [1, 2]
    assert [float(groups[0][0].get(name)) for name in ("y1", "y2")] == [98.0, 96.0]


def test_numbers_are_rounded_to_the_micrometre_at_the_half():
    chance = random.Random(3)
    for _ in range(300):
        value = chance.uniform(-3000.0, 3000.0) * 10.0 ** chance.randint(-4, 0)
        assert abs(float(svg._number(value)) - value) <= 5.01e-4
        assert abs(float(svg._fine(value)) - value) <= 5.01e-7
        for text in (svg._number(value), svg._fine(value)):
            assert text not in ("-0", "") and not text.endswith(".")
            assert "." not in text or not text.endswith("0")
    assert (svg._number(4.96e-4), svg._number(5.0e-4)) == ("0", "0.001")
    assert (svg._fine(4.96e-7), svg._fine(0.0), svg._fine(-1e-6)) == ("0", "0", "-0.000001")
    assert svg._fine(-2.0) == "-2" and svg._fine(1000.0) == "1000"


@pytest.mark.parametrize("bold", [False, True])
def test_words_are_dressed_by_what_they_are(bold):
    found = element(Text("text", 10.0, 20.0, 3.58, "ab & c", "start", 0, bold))
    assert "".join(found.itertext()) == "ab & c"
    assert found.get("text-anchor") is None and found.get("transform") is None
    assert found.get("font-weight") == ("bold" if bold else None)
    # Capitals are 0.716 of the letters: 5 mm. a, b, c: 0.556, 0.556, 0.5; &: 0.667; two blanks
    # of 0.278. Bold is 1.08 as wide.
    assert float(found.get("font-size")) == pytest.approx(5.0)
    wide = 5.0 * (0.556 + 0.556 + 0.5 + 0.667 + 2 * 0.278) * (1.08 if bold else 1.0)
    assert float(found.get("textLength")) == pytest.approx(wide, abs=6e-4)
