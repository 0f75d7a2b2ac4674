"""What every view promises: sizes that end at what they measure, metal that is nowhere twice, work
that lies in what holds it. In real millimetres, by shapely."""

import math

import pytest
from shapely.geometry import LineString, Polygon, box
from shapely.ops import unary_union

from drawing.views import JOBS, closed, cut_faces, drawn, edges_along, of_layer, settled_job, views
from ringwright.core.calculations import run
from ringwright.core.drawing.entities import Fill, Line, Polyline, Text

TURNED = ("blank", "blank-jaws", "slitting-mandrel", "former", "pot", "closing-ring",
          "clamp-mandrel", "end-plate", "outer-clamp", "bore-gauge")  # fmt: skip


@pytest.mark.parametrize("name", JOBS)
def test_a_size_ends_at_what_it_measures(name):
    seen = 0
    for key, view in drawn(settled_job(name)):
        for one in view.measures:
            axis = 0 if one.side in ("top", "bottom") else 1
            places = edges_along(view, axis)
            for point in (one.first, one.second):
                off = min(abs(point[axis] - place) for place in places)
                assert off < 1e-6, (key, view.name, one.name)
            size = abs(one.first[axis] - one.second[axis])
            assert size == pytest.approx(one.value, abs=1e-6), (key, view.name, one.name)
            assert one.words.lines[0] and one.value > 0.0
            seen += 1
    assert seen > 50


@pytest.mark.parametrize("name", JOBS)
def test_no_metal_lies_in_other_metal(name):
    for key, view in drawn(settled_job(name)):
        faces = cut_faces(view)
        for at, one in enumerate(faces):
            assert one.is_valid and one.area > 0.0, (key, view.name)
            for other in faces[:at]:
                assert one.intersection(other).area < 1e-6, (key, view.name)


@pytest.mark.parametrize("name", JOBS)
def test_a_turned_part_is_alike_on_both_sides_of_its_axis(name):
    job = settled_job(name)
    seen = 0
    for part in TURNED:
        if part not in [key for key, _ in drawn(job)]:
            continue
        view = next(iter(views(job, part).values()))
        whole = unary_union(cut_faces(view))
        left, low, right, high = whole.bounds
        assert -low == pytest.approx(high), part
        if part != "blank":
            mirrored = Polygon() if whole.is_empty else unary_union(
                [Polygon([(x, -y) for x, y in one.exterior.coords]) for one in cut_faces(view)]
            )  # fmt: skip
            assert whole.symmetric_difference(mirrored).area < 1e-6, part
        # The axis goes past the part on both sides, and not far.
        (axis,) = [one for one in of_layer(view, "centre") if one.y1 == one.y2 == 0.0]
        ends = [one for one in closed(view, "outline") if one.is_valid]
        left = min(left, *(one.bounds[0] for one in ends))
        right = max(right, *(one.bounds[2] for one in ends))
        long = right - left
        assert axis.x1 <= left - 1.0 and axis.x2 >= right + 1.0, part
        assert axis.x2 - axis.x1 <= 1.5 * long + 0.2 * high + 8.0, part
        # Every edge seen behind the cut is as high as the metal there.
        for line in of_layer(view, "outline"):
            if type(line) is Line and line.x1 == line.x2 and line.y1 == -line.y2:
                corner = LineString([(line.x1, line.y1), (line.x1, line.y2)])
                assert whole.boundary.distance(corner.boundary) < 1e-6, part
        seen += 1
    assert seen >= 6


def held(job, part):
    """(metal that holds, what is held) of a drawing."""
    view = next(iter(views(job, part).values()))
    return unary_union(cut_faces(view)), unary_union(closed(view, "adjacent")), view


@pytest.mark.parametrize("name", JOBS)
@pytest.mark.parametrize("part", ["blank-jaws", "slitting-mandrel", "pot", "outer-clamp"])
def test_what_is_held_touches_what_holds_it_and_is_not_in_it(name, part):
    job = settled_job(name)
    if part not in [key for key, _ in drawn(job)]:
        return
    metal, work, _ = held(job, part)
    d, t = job.design, job.tooling
    assert metal.intersection(work).area < 1e-6
    assert metal.boundary.intersection(work.boundary).length > 0.5
    inner, outer, wide = {
        "blank-jaws": (d.blank.bored_inside, t.blank_jaws_bore, d.blank.length),
        "slitting-mandrel": (t.slit_mandrel_diameter, d.blank.rough_outside, d.blank.length),
        "pot": (t.pot_bore - 2.0 * d.blank.set_thickness, t.pot_bore, d.blank.length),
        "outer-clamp": (t.inside_clamped, t.outer_clamp_bore, d.section.width),
    }[part]
    inner, outer = inner / 2, outer / 2
    wanted = unary_union([box(0.0, inner, wide, outer), box(0.0, -outer, wide, -inner)])
    assert work.symmetric_difference(wanted).area < 1e-6


@pytest.mark.parametrize("name", JOBS)
def test_walls_left_to_the_maker_are_stout(name):
    """A tenth of the bore each, at least 6 mm: common practice, no source."""
    job = settled_job(name)
    t = job.tooling
    bores = {
        "blank-jaws": t.blank_jaws_bore,
        "pot": t.pot_bore,
        "closing-ring": t.closing_ring_bore,
        "outer-clamp": t.outer_clamp_bore,
        "bore-gauge": job.design.duty.bore,
    }
    parts = [key for key, _ in drawn(job)]
    for part, bore in bores.items():
        if part in parts:
            metal, _, view = held(job, part)
            wall = metal.bounds[3] - bore / 2
            assert wall == pytest.approx(max(6.0, 0.1 * bore)), part
    metal, _, _ = held(job, "pot")
    back = -metal.bounds[0]
    assert back == pytest.approx(max(6.0, 0.05 * t.pot_bore))
    assert metal.bounds[2] == pytest.approx(t.pot_depth)
    # Through the shoulder one sees in: it holds four fifths of the wall.
    assert metal.intersection(box(-1.0, 0.0, -0.5, 1e4)).bounds[1] == pytest.approx(
        t.pot_bore / 2 - 0.8 * job.design.blank.set_thickness
    )


@pytest.mark.parametrize("name", JOBS)
def test_the_ring_is_gripped_by_its_sides_alone(name):
    job = settled_job(name)
    d, t = job.design, job.tooling
    view = views(job, "clamp-mandrel")["clamp-mandrel"]
    faces = cut_faces(view)
    # What is taken out of its inside afterwards is still there.
    inner = t.inside_clamped / 2 - d.allowances.inside
    ring = box(0.0, inner, d.section.width, d.blank.finish_outside / 2)
    (mine,) = [one for one in faces if one.symmetric_difference(ring).area < 1e-6]
    others = unary_union([one for one in faces if one is not mine and one.bounds[3] > 0.0])
    left, right = mine.bounds[0], mine.bounds[2]
    for side in (left, right):
        face = LineString([(side, mine.bounds[1]), (side, mine.bounds[3])])
        touched = others.buffer(1e-9).intersection(face)
        # As far out as the end plate goes, and not beyond the outside that is turned.
        assert touched.bounds[3] == pytest.approx(t.end_plate_diameter / 2)
        assert t.end_plate_diameter < d.blank.finish_outside
    # The spigot is shorter than the ring, and not larger than its inside.
    spigot = others.intersection(box(1e-3, 0.0, right - 1e-3, 1e4))
    assert spigot.bounds[2] == pytest.approx(t.spigot_length) and t.spigot_length < right
    assert spigot.bounds[3] == pytest.approx(t.clamp_mandrel_diameter / 2)
    # One hole for the screw runs through spigot and plate: 0.14 of the spigot to the half.
    hole = max(0.5 * math.floor(2.0 * 0.14 * t.clamp_mandrel_diameter / 2 + 0.5), 2.0)
    assert others.bounds[1] == pytest.approx(hole)
    plate = others.intersection(box(right + 1e-3, 0.0, 1e4, 1e4))
    thick = max(0.5 * math.floor(0.1 * t.clamp_mandrel_diameter + 0.5), 4.0)
    assert (plate.bounds[1], plate.bounds[2]) == pytest.approx((hole, right + thick))
    # Its head bears on the plate.
    heads = closed(view, "outline")
    (screw,) = [one for one in heads if one.bounds[0] == pytest.approx(right + thick)]
    assert screw.bounds[3] == pytest.approx(1.7 * hole) == -screw.bounds[1]
    (alone,) = [one for key, one in drawn(job) if key == "end-plate" and one.name == "end-plate"]
    assert unary_union(cut_faces(alone)).bounds == pytest.approx(
        (0.0, -t.end_plate_diameter / 2, thick, t.end_plate_diameter / 2)
    )


def fills(view):
    """Solid shapes that are tools: arrows are triangles."""
    return [Polygon(one.points) for one in view.shapes if type(one) is Fill and len(one.points) > 3]


CUTTING = ("face-bar", "turn-rough", "bore-rough", "bore", "face-blank", "face-step", "face-sides",
           "turn-finish", "bore-clamped")  # fmt: skip


@pytest.mark.parametrize("name", JOBS)
def test_the_tool_touches_the_work_and_does_not_stand_in_it(name):
    job = settled_job(name)
    seen = 0
    for key in job.operations:
        if key not in CUTTING:
            continue
        (view,) = views(job, "operation " + key).values()
        (tool,) = fills(view)
        work = unary_union(cut_faces(view) + closed(view, "adjacent"))
        if key in ("face-step", "face-sides"):
            # What lies beyond the finished width is cut away.
            work = work.intersection(box(-1e4, -1e4, job.design.section.width, 1e4))
        assert work.intersection(tool).area < 1e-6, key
        assert work.distance(tool) < 1e-6, key
        seen += 1
    assert seen >= 5


@pytest.mark.parametrize("name", JOBS)
def test_arrows_point_at_something_drawn_or_along_it(name):
    """Each head stands at the end of a line of its own, a third of its length."""
    for key, view in drawn(settled_job(name)):
        lines = [one for one in of_layer(view, "thin") if type(one) is Line]
        for one in view.shapes:
            if type(one) is not Fill or len(one.points) != 3 or key.endswith("table"):
                continue
            if key in ("operation slit", "operation slit-stick"):
                continue
            tip, left, right = one.points
            shafts = [each for each in lines if math.dist((each.x2, each.y2), tip) < 1e-9]
            assert shafts, (key, view.name)
            shaft = shafts[0]
            far = math.dist((shaft.x1, shaft.y1), tip)
            back = ((left[0] + right[0]) / 2, (left[1] + right[1]) / 2)
            assert math.dist(back, tip) == pytest.approx(0.3 * far)
            assert math.dist(left, right) == pytest.approx(0.7 * 0.3 * far)
            on = LineString([(shaft.x1, shaft.y1), tip])
            assert on.distance(LineString([back, tip])) < 1e-9
            assert LineString([tip, back]).distance(LineString([(shaft.x1, shaft.y1)] * 2)) > 0.0


@pytest.mark.parametrize("name", JOBS)
def test_every_part_that_is_listed_can_be_drawn(name):
    """Jaws and mandrel were listed where blanks are slit on their stick, and could not be drawn."""
    request = JOBS[name]
    ring = {key: one for key, one in request.items() if key not in ("paper", "dimensions")}
    listed = [one["part"] for one in run("drawing", request)["parts"]]
    tools = {one["tool"] for one in run("tooling", ring)["tools"]}
    drawn_tools = {"blank-jaws", "slitting-mandrel", "former", "spacer", "pot", "closing-ring",
                   "closing-band", "clamp-mandrel", "end-plate", "outer-clamp"}  # fmt: skip
    assert {part for part in listed if part in drawn_tools} == tools & drawn_tools
    assert ("rotary-table" in listed) == (JOBS[name].get("ring_type") != "plain")
    if name == "stick":
        for part in listed:
            assert run("drawing", {**request, "part": part})["sheets"]


@pytest.mark.parametrize("name", JOBS)
def test_the_box_of_the_soak_stands_round_the_ring_and_the_heat_below_it(name):
    job = settled_job(name)
    (view,) = views(job, "operation soak").values()
    ring = unary_union(cut_faces(view))
    room, hull = sorted(closed(view, "outline"), key=lambda one: one.area)[-2:]
    assert hull.contains(room) and room.contains(ring)
    d, t = job.design, job.tooling
    inner = (t.former_diameter or d.blank.bored_inside) / 2
    outer = inner + d.blank.set_thickness
    assert ring.bounds == pytest.approx((0.0, -outer, d.blank.length, outer))
    assert ring.bounds[0] - room.bounds[0] == pytest.approx(0.35 * outer)
    assert room.bounds[1] == pytest.approx(-1.35 * outer)
    for at, sign in ((0, -1), (1, -1), (2, 1), (3, 1)):
        wall = sign * (hull.bounds[at] - room.bounds[at])
        assert wall == pytest.approx(max(4.0, 0.08 * outer))
    heads = [one.points[0] for one in view.shapes if type(one) is Fill]
    assert len(heads) == 3
    wide = room.bounds[2] - room.bounds[0]
    assert [x for x, _ in heads] == pytest.approx(
        [room.bounds[0] + share * wide for share in (0.2, 0.5, 0.8)]
    )
    assert all(y < hull.bounds[1] for _, y in heads)


@pytest.mark.parametrize("name", JOBS)
def test_no_words_stand_in_a_view_before_it_is_set_out(name):
    for _, view in drawn(settled_job(name)):
        assert not [one for one in view.shapes if type(one) is Text]
        assert all(len(one.points) > 1 for one in view.shapes if type(one) is Polyline)
