"""DXF read back by two readers: ezdxf's audit, and GDAL, written by others in C++."""

import collections
import io
import math

import ezdxf
import pyogrio
import pytest
import shapely
from ezdxf import bbox

from ringwright.core.calculations import run
from ringwright.core.drawing import drawing
from ringwright.core.fields import checked
from ringwright.export import dxf

JOBS = {
    "small": {"bore": 20.0},
    "launch": {"bore": 79.375, "steam_pressure": 0.83},
    "large plain": {"bore": 600.0, "ring_type": "plain"},
}


def made(job, part, unit="mm", **wanted):
    asked = drawing.settled(checked(drawing.FIELDS, {**job, **wanted}))
    return dxf.dxf(drawing.sheets_of(asked, part), unit)


def parts(job):
    return [entry["part"] for entry in run("drawing", job)["parts"]]


def document(data):
    return ezdxf.read(io.StringIO(data.decode("utf-8")))


def by_gdal(data, folder):
    """(layer, shapely geometry) of everything that GDAL finds."""
    path = folder / "drawing.dxf"
    path.write_bytes(data)
    meta, _, shapes, columns = pyogrio.raw.read(path)
    layers = columns[list(meta["fields"]).index("Layer")]
    return [(layer, shapely.from_wkb(shape)) for layer, shape in zip(layers, shapes, strict=True)]


def figures(job):
    found = {name: one["value"] for name, one in run("sizing", job)["figures"].items()}
    found.update({name: one["value"] for name, one in run("tooling", job)["figures"].items()})
    found["bore"] = job["bore"]
    return found


@pytest.mark.parametrize("job", JOBS.values(), ids=JOBS)
def test_every_part_opens_without_repair(job, tmp_path):
    for part in parts(job):
        data = made(job, part)
        opened = document(data)
        auditor = opened.audit()
        assert auditor.errors == [] and auditor.fixes == [], part
        found = by_gdal(data, tmp_path)
        layers = collections.Counter(layer for layer, _ in found)
        assert layers["OUTLINE"] + layers["EDGE"] >= 1 and layers["FRAME"] >= 1, part
        assert set(layers) <= {layer.dxf.name for layer in opened.layers}, part


@pytest.mark.parametrize("unit", ["mm", "inch"])
@pytest.mark.parametrize(
    ("part", "across", "up"),
    [
        ("former", "former_length", "former_diameter"),
        ("end-plate", None, "end_plate_diameter"),
        ("blank", "blank_length", "rough_outside_diameter"),
    ],
)
def test_cut_faces_are_full_size(part, across, up, unit, tmp_path):
    """Both cut halves of a turned part, as GDAL measures them in the model."""
    per = 25.4 if unit == "inch" else 1.0
    for job in (JOBS["small"], JOBS["launch"]):
        faces = [
            shape
            for layer, shape in by_gdal(made(job, part, unit), tmp_path)
            if layer == "OUTLINE" and len(getattr(shape, "coords", [])) == 5
        ]
        left, bottom, right, top = shapely.union_all(faces).bounds
        known = figures(job)
        assert (top - bottom) * per == pytest.approx(known[up], abs=1e-6)
        if across:
            assert (right - left) * per == pytest.approx(known[across], abs=1e-6)


@pytest.mark.parametrize(
    ("part", "name"),
    [("end-plate", "end_plate_diameter"), ("closing-ring", "closing_ring_bore")],
)
def test_a_face_to_cut_from_plate_is_closed_circles_about_one_middle(part, name, tmp_path):
    """What a profile cutter takes: full circles at full size, as GDAL strokes them."""
    for job in JOBS.values():
        outlines = [
            shape
            for layer, shape in by_gdal(made(job, part), tmp_path)
            if layer == "OUTLINE" and shape.geom_type == "LineString"
        ]
        rings = [shapely.Polygon(shape.coords) for shape in outlines if len(shape.coords) > 20]
        assert len(rings) >= 2
        # The other views stand beside it, whatever their scales on paper.
        reach = shapely.box(*shapely.union_all(rings).bounds)
        others = [shape for shape in outlines if len(shape.coords) <= 20]
        assert others and not any(reach.intersects(shape) for shape in others)
        assert all(ring.is_valid and ring.exterior.is_closed for ring in rings)
        assert max(rings[0].centroid.distance(ring.centroid) for ring in rings) < 1e-3
        across = [ring.bounds[2] - ring.bounds[0] for ring in rings]
        assert min(abs(one - figures(job)[name]) for one in across) < 1e-6


@pytest.mark.parametrize("unit", ["mm", "inch"])
def test_dimensions_measure_what_they_say(unit):
    per = 25.4 if unit == "inch" else 1.0
    seen = 0
    for job in JOBS.values():
        wanted = run("drawing", {**job, "part": "ring-closed", "geometry": True})["sheets"][0]
        values = sorted(
            one["measures"]
            for view in wanted["views"]
            for one in view["entities"]
            if one["kind"] == "dimension" and one["way"] == "linear"
        )
        found = document(made(job, "ring-closed", unit)).modelspace().query("DIMENSION")
        measured = []
        for one in found:
            across = one.dxf.defpoint3 - one.dxf.defpoint2
            turn = math.radians(one.dxf.angle)
            length = abs(across.x * math.cos(turn) + across.y * math.sin(turn))
            assert length == pytest.approx(one.dxf.actual_measurement, abs=1e-9)
            measured.append(length * per)
            seen += 1
        assert sorted(measured) == pytest.approx(values, abs=1e-6)
    assert seen >= 15


def test_details_are_full_size_too(tmp_path):
    """The section of the ring, enlarged on the sheet, has the ring's own size in the model."""
    job = JOBS["launch"]
    boxes = [
        shape.bounds
        for layer, shape in by_gdal(made(job, "ring-closed"), tmp_path)
        if layer == "OUTLINE" and len(getattr(shape, "coords", [])) == 5
    ]
    known = figures(job)
    for left, bottom, right, top in boxes:
        assert right - left == pytest.approx(known["turn_width"], abs=1e-6)
        assert top - bottom == pytest.approx(known["radial_thickness"], abs=1e-6)
    assert len(boxes) == 2


def test_layers_and_kinds_of_line():
    """ISO 128-2, by open files (read): 02.1 dashed, 04.1 chain, 05.1 double chain; wide is twice
    narrow."""
    opened = document(made(JOBS["launch"], "rotary-table"))
    kinds = {
        "OUTLINE": ("CONTINUOUS", 50),
        "DIMENSIONS": ("CONTINUOUS", 25),
        "HATCHING": ("CONTINUOUS", 25),
        "HIDDEN": ("ISO128-02.1", 25),
        "CENTRE": ("ISO128-04.1", 25),
        "ADJACENT": ("ISO128-05.1", 25),
    }
    for name, (line_type, weight) in kinds.items():
        layer = opened.layers.get(name)
        assert layer.dxf.linetype.upper() == line_type
        assert layer.dxf.lineweight == weight
    pattern = opened.linetypes.get("ISO128-04.1").simplified_line_pattern()
    assert list(pattern) == pytest.approx([24 * 0.25, 3 * 0.25, 0.5 * 0.25, 3 * 0.25])
    for entity in opened.modelspace():
        assert entity.dxf.layer in opened.layers
        # Everything is drawn as its layer says.
        assert entity.dxf.get("linetype", "BYLAYER") == "BYLAYER"


@pytest.mark.parametrize(("unit", "code"), [("mm", 4), ("inch", 1)])
def test_units_are_declared(unit, code):
    opened = document(made(JOBS["launch"], "former", unit))
    assert opened.header["$INSUNITS"] == code
    assert opened.header["$MEASUREMENT"] == (1 if unit == "mm" else 0)


def test_layout_shows_the_sheet_at_its_scale():
    job = JOBS["large plain"]
    sheet = run("drawing", {**job, "part": "piston"})["sheets"][0]
    opened = document(made(job, "piston"))
    windows = [
        one for one in opened.layouts.get("SHEET 1").query("VIEWPORT") if one.dxf.status != 1
    ]
    scales = {round(one.dxf.height / one.dxf.view_height, 6) for one in windows}
    assert sheet["scale"] in scales


def test_hostile_names_stay_words(tmp_path):
    job = {"bore": 80.0, "job_name": "%%U a\nb {\\C1;} \ud800 ^J", "owner": "\u0141\u00f3d\u017a"}
    data = made(job, "former")
    assert document(data).audit().errors == []
    assert by_gdal(data, tmp_path)
    words = [one.dxf.text for one in document(data).layouts.get("SHEET 1").query("TEXT")]
    assert "\u0141\u00f3d\u017a" in words
    assert not any("%%U" in one or "\n" in one for one in words)


@pytest.mark.parametrize("unit", ["mm", "inch"])
@pytest.mark.parametrize("job", JOBS.values(), ids=JOBS)
def test_viewers_open_on_the_drawing(job, unit):
    """The extents in the head and the first window hold all that is drawn, and little more."""
    for part in parts(job):
        opened = document(made(job, part, unit))
        drawn = bbox.extents(opened.modelspace())
        for name, corner in (("$EXTMIN", drawn.extmin), ("$EXTMAX", drawn.extmax)):
            assert list(opened.header[name])[:2] == pytest.approx(list(corner)[:2], abs=1e-6), part
        window = opened.viewports.get("*Active")[0]
        assert window.dxf.height >= 0.999 * drawn.size.y
        wide = window.dxf.height * window.dxf.aspect_ratio
        assert wide >= 0.999 * drawn.size.x
        assert window.dxf.height <= 1.6 * max(drawn.size.y, drawn.size.x)
        assert drawn.extmin.x <= window.dxf.center.x <= drawn.extmax.x
        assert drawn.extmin.y <= window.dxf.center.y <= drawn.extmax.y


@pytest.mark.parametrize("unit", ["mm", "inch"])
@pytest.mark.parametrize("job", JOBS.values(), ids=JOBS)
def test_a_cutter_finds_closed_contours(job, unit, tmp_path):
    """GDAL reads edges and cuts of the template as rings; the rules lie on a layer of their own."""
    per = 25.4 if unit == "inch" else 1.0
    found = by_gdal(made(job, "template", unit), tmp_path)
    edges = [shape for layer, shape in found if layer == "EDGE"]
    cuts = [shape for layer, shape in found if layer == "CUT"]
    assert edges and cuts
    for shape in edges + cuts:
        assert shape.is_ring
        assert shapely.Polygon(shape.coords).is_valid
    # Pieces lie apart, so that one does not cut into another.
    for i, one in enumerate(edges):
        for other in edges[i + 1 :]:
            assert not shapely.Polygon(one.coords).intersects(shapely.Polygon(other.coords))
    around = math.pi * figures(job)["rough_outside_diameter"]
    length = figures(job)["blank_length"]
    area = sum(shapely.Polygon(shape.coords).area for shape in edges) * per * per
    tabs = 9.0 * length * (len(edges) - 1)
    assert area == pytest.approx(around * length + tabs, rel=1e-6)
    rules = [shape for layer, shape in found if layer == "RULE"]
    assert max(shape.length for shape in rules) * per == pytest.approx(101.6, abs=1e-6)


def test_the_same_job_gives_the_same_bytes():
    assert made(JOBS["launch"], "pot") == made(JOBS["launch"], "pot")
