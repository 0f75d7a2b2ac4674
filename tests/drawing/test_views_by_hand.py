"""Views of ring, blank, bar and piston against the figures they show, worked here by hand."""

import math

import pytest
from shapely.geometry import LineString, Point, Polygon, box
from shapely.ops import unary_union

from drawing.views import JOBS, closed, cut_faces, of_layer, settled_job, views
from ringwright.core.drawing.entities import Arc, Circle, Fill, Line, Polyline
from ringwright.core.ring.allowances import CUT_ANGLES

DOUBLE = [name for name in JOBS if JOBS[name].get("ring_type") != "plain"]
PLAIN = [name for name in JOBS if name not in DOUBLE]


def run(d, height):
    """How far a cut at the angle of the ends runs along the ring."""
    angle = CUT_ANGLES[d.duty.end_cut]
    return 0.0 if angle == 90.0 else height / math.tan(math.radians(angle))


def same(one, other):
    return one.symmetric_difference(other).area < 1e-6


def straight(view, layer):
    return {
        tuple(round(each, 6) for each in one[1:])
        for one in of_layer(view, layer)
        if type(one) is Line
    }


def has(lines, *ends):
    """Whether a line runs between those ends, either way."""
    x1, y1, x2, y2 = ends
    return any(
        math.dist(one, (x1, y1, x2, y2)) < 1e-5 or math.dist(one, (x2, y2, x1, y1)) < 1e-5
        for one in lines
    )


@pytest.mark.parametrize("name", DOUBLE)
def test_bands_are_sawn_on_their_own_sides_of_the_bridge(name):
    """The saw stands beside the bridge, leaning with its ends, and takes its thickness along."""
    job = settled_job(name)
    d, t = job.design, job.tooling
    view = views(job, "blank")["slit"]
    half, band, slit = t.bridge_length / 2, d.blank.band_width, d.allowances.slit
    length, kerf, lean = d.blank.length, d.allowances.gap_kerf, run(d, d.blank.band_width)
    low, high = sorted(closed(view, "cut"), key=lambda one: one.bounds[1])
    # The lower band to the left of the bridge, the upper one to its right, turned by half a turn.
    wanted = Polygon(
        [(-half - kerf, band), (-half, band), (-half + lean, 0), (-half + lean - kerf, 0)]
    )
    assert same(low, wanted)
    assert same(high, Polygon([(-x, length - y) for x, y in wanted.exterior.coords]))
    lines = straight(view, "outline")
    reach = half + max(0.6 * half, 0.8 * band, 1.5 * kerf)
    for side in (-1, 1):
        for level in (band, band + slit):
            assert has(lines, side * half, level, side * reach, level)
        assert has(lines, side * half, band, side * half, band + slit)
    for level in (0.0, length):
        assert has(lines, -reach, level, reach, level)


@pytest.mark.parametrize("name", DOUBLE)
def test_the_bridge_as_finished_has_its_gaps_beside_it(name):
    job = settled_job(name)
    d, t = job.design, job.tooling
    view = views(job, "ring-closed")["bridge"]
    width, slit, gap = d.section.width, d.allowances.slit, d.duty.closed_gap
    half, low, high = t.bridge_length / 2, (width - slit) / 2, (width + slit) / 2
    lean = run(d, high)
    lines = straight(view, "outline")
    reach = half + max(0.4 * half, 0.5 * width, 1.5 * gap)
    assert has(lines, half, low, reach, low) and has(lines, -half, high, -reach, high)
    for shift in (0.0, gap):
        assert has(lines, half + shift, low, half - lean + shift, width)
        assert has(lines, -half - shift, high, -half + lean - shift, 0.0)
    for one in of_layer(view, "thin"):
        xs = [x for x, _ in one.points]
        assert abs(abs(sum(xs) / len(xs)) - reach) < 0.01 * width
        assert max(xs) - min(xs) == pytest.approx(0.08 * width)


@pytest.mark.parametrize("name", PLAIN)
def test_ends_of_a_plain_ring_stand_its_gap_apart(name):
    job = settled_job(name)
    d = job.design
    view = views(job, "ring-closed")["ends"]
    width, gap, lean = d.section.width, d.duty.closed_gap, run(d, d.section.width)
    joint = job.tooling.joint
    if joint is None:
        lines = straight(view, "outline")
        for shift in (0.0, gap):
            assert has(lines, -lean / 2 + shift, 0.0, lean / 2 + shift, width)
        return
    left, right = [one.points for one in of_layer(view, "outline") if type(one) is Polyline]
    half = joint.opening / 2
    for points, shift, level in (
        (left, 0, width - joint.tongue_width),
        (right, gap, joint.tongue_width),
    ):
        wanted = [(-half, 0.0), (-half, level), (half, level), (half, width)]
        assert points == [pytest.approx((x + shift, y)) for x, y in wanted]


@pytest.mark.parametrize("name", JOBS)
def test_the_ring_in_its_bore(name):
    job = settled_job(name)
    d, t = job.design, job.tooling
    view = views(job, "ring-closed")["end"]
    outer, inner = d.duty.bore / 2, d.duty.bore / 2 - d.section.thickness
    big, small = sorted(
        (one for one in view.shapes if type(one) is Arc), key=lambda one: -one.radius
    )
    assert (big.radius, small.radius) == pytest.approx((outer, inner))
    assert (big.start, big.end) == (small.start, small.end)
    # What is missing of the turn is the gap along the neutral line.
    gap = math.radians(360.0 - (big.end - big.start)) * (outer + inner) / 2
    assert gap == pytest.approx(d.duty.closed_gap)
    middle = (big.start + big.end) / 2 - 180.0
    ends = [one for one in of_layer(view, "outline") if type(one) is Line]
    for one, angle in zip(ends, (big.start, big.end), strict=True):
        turn = math.radians(angle)
        first, last = (one.x1, one.y1), (one.x2, one.y2)
        assert first == pytest.approx((inner * math.cos(turn), inner * math.sin(turn)))
        assert last == pytest.approx((outer * math.cos(turn), outer * math.sin(turn)))
    if d.duty.turns == 1:
        assert middle == pytest.approx(90.0)
    else:
        # Half the bridge less the scarf, on the outside as bored, then half the gap.
        lean = run(d, (d.section.width + d.allowances.slit) / 2)
        shoulder = math.degrees((t.bridge_length / 2 - lean) / (d.blank.rough_outside / 2))
        half = math.degrees(d.duty.closed_gap / (outer + inner))
        assert middle == pytest.approx(90.0 - shoulder - half)
        hidden = of_layer(view, "hidden")
        found = sorted(math.degrees(math.atan2(one.y2, one.x2)) for one in hidden)
        assert found == pytest.approx([180.0 - middle - half, 180.0 - middle + half])
    for one in of_layer(view, "centre"):
        assert max(abs(value) for value in one[1:]) == pytest.approx(1.06 * outer)


@pytest.mark.parametrize("name", JOBS)
def test_the_section_is_its_turns_side_by_side(name):
    d = settled_job(name).design
    faces = cut_faces(views(settled_job(name), "ring-closed")["section"])
    assert len(faces) == d.duty.turns
    assert same(unary_union(faces), box(0.0, 0.0, d.section.width, d.section.thickness))
    assert {round(one.area, 9) for one in faces} == {
        round(d.section.width * d.section.thickness / d.duty.turns, 9)
    }


@pytest.mark.parametrize("name", JOBS)
def test_the_blank_is_a_tube_and_its_lower_half_slit(name):
    d = settled_job(name).design
    view = views(settled_job(name), "blank")["blank"]
    outer, inner, length = d.blank.rough_outside / 2, d.blank.bored_inside / 2, d.blank.length
    upper = box(0.0, inner, length, outer)
    lower = box(0.0, -outer, length, -inner)
    if d.duty.turns == 2:
        band = d.blank.band_width
        assert 2.0 * band + d.allowances.slit == pytest.approx(length)
        lower = lower.difference(box(band, -1e4, band + d.allowances.slit, 1e4))
    assert same(unary_union(cut_faces(view)), unary_union([upper, lower]))
    lines = straight(view, "outline")
    assert has(lines, 0.0, -inner, 0.0, inner) and has(lines, length, -inner, length, inner)


@pytest.mark.parametrize("name", JOBS)
def test_gaps_are_told_apart_by_their_width(name):
    """Drawn 1.1, 0.45 and 0.18 of a turn's width; a feeler fills the cold one, square to it."""
    d = settled_job(name).design
    wide = d.turn_width
    lean = run(d, wide)
    found = views(settled_job(name), "gaps")
    for key, share in (("free", 1.1), ("cold", 0.45), ("hot", 0.18), ("feeler", 0.45)):
        left, right = [one.points for one in of_layer(found[key], "outline")]
        for y, points in ((0.0, (left[1], right[1])), (wide, (left[2], right[2]))):
            assert [point[1] for point in points] == [y, y]
            assert points[1][0] - points[0][0] == pytest.approx(share * wide)
        assert left[2][0] - left[1][0] == pytest.approx(lean)
        assert left[0][0] == pytest.approx(-lean / 2 - 1.6 * wide) == -right[0][0]
        assert left[1][0] + right[2][0] == pytest.approx(0.0)
    view = found["feeler"]
    heads = [one.points[0] for one in view.shapes if type(one) is Fill]
    turn = math.radians(CUT_ANGLES[d.duty.end_cut])
    faces = [LineString(one.points[1:3]) for one in of_layer(view, "outline")]
    # Their arrows meet both ends in the middle of the width, square to the cut.
    assert math.dist(*heads) == pytest.approx(0.45 * wide * math.sin(turn))
    for head in heads:
        assert min(face.distance(Point(head)) for face in faces) < 1e-9
    blades = [one for one in of_layer(view, "thin") if type(one) is Line][-2:]
    for one in blades:
        assert math.atan2(one.y2 - one.y1, one.x2 - one.x1) % math.pi == pytest.approx(turn)
        long = math.dist((one.x1, one.y1), (one.x2, one.y2))
        assert long == pytest.approx(1.3 * 0.62 * wide / math.sin(turn))
        blade = LineString([(one.x1, one.y1), (one.x2, one.y2)])
        assert all(not blade.intersects(face) for face in faces)


@pytest.mark.parametrize("name", DOUBLE)
def test_the_saw_begins_at_the_bridge_and_ends_at_its_other_side(name):
    job = settled_job(name)
    d, t = job.design, job.tooling
    view = views(job, "rotary-table")["table"]
    outer, inner = d.blank.rough_outside / 2, d.blank.bored_inside / 2
    circles = [one for one in of_layer(view, "outline") if type(one) is Circle]
    assert [(one.x, one.y) for one in circles] == [(0, 0), (0, 0), (t.slit.centre_distance, 0.0)]
    assert [one.radius for one in circles] == pytest.approx([outer, inner, t.cutter_diameter / 2])
    (last,) = of_layer(view, "adjacent")
    assert math.dist((last.x, last.y), (0, 0)) == pytest.approx(t.slit.centre_distance)
    # It has gone round by the travel, the other way about.
    turned = math.degrees(math.atan2(last.y, last.x)) % 360.0
    assert turned == pytest.approx(360.0 - t.slit.table_travel)
    (bridge,) = cut_faces(view)
    for one in (circles[2], last):
        saw = Point(one.x, one.y).buffer(one.radius, 512)
        assert bridge.intersection(saw).area < 2e-3 * bridge.area
        assert bridge.distance(saw) < 1e-2
    bounds = [math.hypot(x, y) for x, y in bridge.exterior.coords]
    assert max(bounds) == pytest.approx(outer) and min(bounds) == pytest.approx(inner, rel=1e-4)


@pytest.mark.parametrize("name", JOBS)
def test_the_bar_stands_out_of_the_chuck_and_is_turned_where_it_says(name):
    job = settled_job(name)
    d = job.design
    for key, outside, inside in (
        ("turn-rough", d.blank.rough_outside, None),
        ("bore", d.blank.rough_outside, d.blank.bored_inside),
        ("part-off", d.blank.rough_outside, d.blank.bored_inside),
    ):
        if key not in job.operations:
            continue
        (view,) = views(job, "operation " + key).values()
        metal = unary_union(cut_faces(view))
        right = metal.bounds[2]
        end = metal.intersection(box(0.95 * right, 0.0, right, 1e4)).bounds
        assert end[3] == pytest.approx(outside / 2), key
        if inside is not None:
            assert end[1] == pytest.approx(inside / 2), key
        # Jaws hold the bar by its outside and leave at least half of it free.
        jaws = [one for one in closed(view, "outline") if one.bounds[0] < 0.0 < one.bounds[2]]
        upper = [one for one in jaws if one.bounds[1] > 0.0]
        assert len(upper) == 1 and len(jaws) == 2
        top = metal.intersection(box(0.0, 0.0, 0.1 * right, 1e4)).bounds[3]
        assert upper[0].bounds[1] == pytest.approx(top) and upper[0].bounds[2] == 0.25 * right
        assert upper[0].bounds[3] == pytest.approx(1.32 * top)
    if "part-off" not in job.operations:
        return
    (view,) = views(job, "operation part-off").values()
    tip = min(
        (Polygon(one.points) for one in view.shapes if type(one) is Fill and len(one.points) > 3),
        key=lambda one: one.bounds[1],
    )
    size = next(one for one in job.operations["part-off"].sizes if one.name == "part_length")
    # The tool goes in behind the blank: its right side a blank's length from the end.
    assert tip.bounds[2] == pytest.approx(right - size.value)
    assert d.blank.bored_inside / 2 < tip.bounds[1] < d.blank.rough_outside / 2 < tip.bounds[3]


@pytest.mark.parametrize("name", JOBS)
def test_grooves_of_the_piston_are_as_wide_and_deep_as_they_are_cut(name):
    job = settled_job(name)
    d = job.design
    found = views(job, "piston")
    (metal,) = cut_faces(found["piston"])
    land = max(1.5 * d.groove_width, 3.0)
    count = min(d.duty.rings, 3)
    long = land + count * (d.groove_width + land)
    whole = box(0.0, 0.0, long, d.piston_diameter / 2)
    for at in range(count):
        x = land + at * (d.groove_width + land)
        floor = d.piston_diameter / 2 - d.groove_depth
        whole = whole.difference(box(x, floor, x + d.groove_width, 1e4))
    assert same(metal, whole)
    (groove,) = cut_faces(found["groove"])
    side, depth = 0.8 * d.groove_width, d.groove_depth
    wanted = box(-side, -1.6 * depth, d.groove_width + side, 0.0)
    assert same(groove, wanted.difference(box(0.0, -depth, d.groove_width, 1.0)))


@pytest.mark.parametrize("name", JOBS)
def test_the_ring_stands_at_the_wall_and_at_the_far_side_of_its_groove(name):
    job = settled_job(name)
    d = job.design
    faces = cut_faces(views(job, "cylinder-section")["section"])
    wall, piston, *turns = faces
    ring = unary_union(turns)
    width, thick, play = d.section.width, d.section.thickness, d.side_clearance
    assert same(ring, box(play, -thick, play + width, 0.0))
    assert wall.bounds[1] == 0.0 and ring.bounds[3] == 0.0
    radial = (d.duty.bore - d.piston_diameter) / 2
    assert piston.bounds[3] == pytest.approx(-radial)
    cut = box(0.0, -radial - d.groove_depth, d.groove_width, 1.0)
    assert piston.intersection(cut).area < 1e-9
    # All the play on the side of the steam, the left; behind the ring its back clearance.
    assert ring.distance(piston) < 1e-6 and ring.bounds[2] == pytest.approx(d.groove_width)
    back = cut.intersection(box(play, -1e4, play + width, -thick)).bounds
    assert back[3] - back[1] == pytest.approx(radial + d.groove_depth - thick)


@pytest.mark.parametrize("name", DOUBLE)
def test_turned_through_each_free_end_has_passed_the_whole_blank(name):
    """At the bridge, rolled out: the lower band's end stands above, the upper one's below."""
    job = settled_job(name)
    d, t = job.design, job.tooling
    found = views(job, "ring-turned-through")
    view = found["ends"]
    half, band, length = t.bridge_length / 2, d.blank.band_width, d.blank.length
    slit, kerf, lean = d.allowances.slit, d.allowances.gap_kerf, run(d, d.blank.band_width)
    (bridge,) = closed(view, "outline")
    corners = [(half, 0.0), (half, band + slit), (half - lean, length), (-half, length),
               (-half, band), (-half + lean, 0.0)]  # fmt: skip
    assert same(bridge, Polygon(corners))
    lines = straight(view, "outline")
    # The sawn faces of both free ends, a kerf beyond the bridge's own, a blank's width farther on.
    assert has(lines, -half - kerf, length + band, -half + lean - kerf, length)
    below = [one.points for one in of_layer(view, "outline") if type(one) is Polyline][-1]
    assert below[:2] == [
        pytest.approx((half + kerf, -band)), pytest.approx((half - lean + kerf, 0.0))
    ]  # fmt: skip
    # Three edges each side climb as the coil does: a blank's width in a turn.
    turn = math.pi * d.blank.rough_outside - t.bridge_length
    reach = half + max(0.8 * half, 1.2 * band)
    rise = length * (reach - half) / turn
    for sign, low in ((1.0, -band), (-1.0, length - band)):
        for at in range(3):
            level = low + at * band
            assert has(lines, sign * half, level, sign * reach, level + sign * rise)
    # Seen from outside: nothing stands beyond the outside as bored.
    outside = d.blank.rough_outside / 2
    curves = [one.points for one in found["through"].shapes if type(one) is Polyline]
    points = [point for one in curves for point in one]
    assert max(abs(x) for x, _ in points) == pytest.approx(outside)
    assert min(y for _, y in points) == pytest.approx(-band, abs=0.3 * length)


@pytest.mark.parametrize("name", JOBS)
def test_every_edge_is_broken_alike(name):
    job = settled_job(name)
    d = job.design
    (view,) = views(job, "operation deburr").values()
    wide = d.blank.band_width if d.duty.turns == 2 else d.blank.length
    thick = (d.blank.rough_outside - d.blank.bored_inside) / 2
    edge = 0.08 * min(wide, thick)
    (face,) = cut_faces(view)
    ways = [(x, sx, y, sy) for x, sx in ((0.0, 1), (wide, -1)) for y, sy in ((0.0, 1), (thick, -1))]
    corners = [Polygon([(x, y), (x + sx * edge, y), (x, y + sy * edge)]) for x, sx, y, sy in ways]
    assert same(face, box(0.0, 0.0, wide, thick).difference(unary_union(corners)))
    heads = {one.points[0] for one in view.shapes if type(one) is Fill}
    assert heads == {(0.0, 0.0), (wide, 0.0), (wide, thick), (0.0, thick)}
    # From outside, halfway between across and up, each to its own corner.
    reach = 0.35 * min(wide, thick)
    shafts = [one for one in of_layer(view, "thin") if type(one) is Line]
    assert len(shafts) == 4
    for one in shafts:
        across, up = (-1 if one.x2 == 0.0 else 1), (-1 if one.y2 == 0.0 else 1)
        assert (one.x1, one.y1) == pytest.approx((one.x2 + across * reach, one.y2 + up * reach))
