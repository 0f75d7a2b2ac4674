"""The rotary table and the bridge that it leaves, by hand and by shapely."""

import math
from decimal import ROUND_HALF_UP, Decimal

import pytest
from shapely import affinity
from shapely.geometry import Point, Polygon

from drawing.views import JOBS, closed, cut_faces, of_layer, settled_job
from ringwright.core.drawing import table_views
from ringwright.core.drawing.entities import Arc, Circle, Fill, Hatch, Line

DOUBLE = [name for name in JOBS if JOBS[name].get("ring_type") != "plain"]
INCH = 25.4


def drawn(job):
    table, bridge = table_views.rotary_table(job)[0]
    return table, bridge


def radii(job):
    d = job.design
    return d.blank.rough_outside / 2, d.blank.bored_inside / 2


def bearing(point):
    return math.degrees(math.atan2(point[1], point[0])) % 360.0


def one_place(mm, job):
    """To a tenth of a millimetre or a thou, below a millimetre to a thousandth; a half goes up."""
    value = mm / INCH if job.system == "inch" else mm
    places = (4 if mm < 1.0 else 3) if job.system == "inch" else 3 if mm < 1.0 else 1
    return str(Decimal(repr(value)).quantize(Decimal(10) ** -places, ROUND_HALF_UP))


def measures(view):
    return {one.name: one for one in view.measures}


def labels(view):
    return {one.name or one.text.split()[0]: one for one in view.labels}


@pytest.mark.parametrize("name", DOUBLE)
def test_centre_lines_cross_in_the_middle_of_blank_and_cutter(name):
    job = settled_job(name)
    table, _ = drawn(job)
    outer, _ = radii(job)
    far, saw = job.tooling.slit.centre_distance, job.tooling.cutter_diameter / 2
    lines = [tuple(one[1:]) for one in of_layer(table, "centre")]
    assert len(lines) == 4
    for pair, x, radius in ((lines[:2], 0.0, outer), (lines[2:], far, saw)):
        (left, low, right, high), (x1, bottom, x2, top) = pair
        assert (low, high) == (0.0, 0.0) and (x1, x2) == (x, x)
        assert (left + right) / 2 == pytest.approx(x, abs=1e-9) and bottom == -top
        # As far beyond the circle one way as the other, and not far.
        assert (right - left) / 2 == pytest.approx(top)
        assert 1.05 * radius < top < 1.15 * radius
    collar = [one for one in of_layer(table, "thin") if type(one) is Circle]
    assert [(one.x, one.y) for one in collar] == [(far, 0.0)]
    assert collar[0].radius == pytest.approx(job.tooling.cutter_collar / 2)


@pytest.mark.parametrize("name", DOUBLE)
def test_the_table_turns_round_the_blank_from_the_last_place_to_the_first(name):
    """In the blank's own frame the cutter goes back from bearing 0 to its last one, so the table
    turns counter-clockwise; the arc stays clear of both places."""
    job = settled_job(name)
    table, _ = drawn(job)
    outer, inner = radii(job)
    (arc,) = [one for one in table.shapes if type(one) is Arc]
    (last,) = of_layer(table, "adjacent")
    assert (arc.x, arc.y) == (0.0, 0.0)
    assert 1.1 * outer < arc.radius < 1.2 * outer
    assert 19.0 < arc.start - bearing((last.x, last.y)) < 21.0
    assert 16.0 < 360.0 - arc.end < 21.0
    (head,) = [one for one in table.shapes if type(one) is Fill]
    tip, outside, inside = head.points
    assert math.hypot(*tip) == pytest.approx(arc.radius)
    assert bearing(tip) == pytest.approx(arc.end)
    # Its body lies behind the tip, a fifth of its length to either side of the arc.
    back = arc.end - bearing(outside)
    assert bearing(inside) == pytest.approx(bearing(outside))
    length = math.radians(back) * arc.radius
    assert 0.06 * outer < length < 0.08 * outer
    beyond, within = math.hypot(*outside) - arc.radius, arc.radius - math.hypot(*inside)
    assert (beyond, within) == pytest.approx((0.2 * length, 0.2 * length))


@pytest.mark.parametrize("name", DOUBLE)
def test_sizes_and_words_of_the_table_stand_at_what_they_speak_of(name):
    job = settled_job(name)
    table, _ = drawn(job)
    outer, inner = radii(job)
    far, saw = job.tooling.slit.centre_distance, job.tooling.cutter_diameter / 2
    found = measures(table)
    centre, cutter = found["cutter_centre_distance"], found["cutter_diameter"]
    assert (centre.first, centre.second, centre.value) == ((0.0, 0.0), (far, 0.0), far)
    assert (cutter.first, cutter.second) == ((far, -saw), (far, saw))
    assert cutter.value == 2 * saw
    assert cutter.words == ("\u00d8", (one_place(2 * saw, job),))
    said = labels(table)
    (arc,) = [one for one in table.shapes if type(one) is Arc]
    for key, radius in (("table_travel", arc.radius), ("Bored", inner), ("Turned", outer)):
        one = said[key]
        # On the left, where the cutter is not, at its own circle.
        assert one.side == "left" and one.point[0] < 0.0 and one.dot is False
        assert math.hypot(*one.point) == pytest.approx(radius)
        assert arc.start < bearing(one.point) < arc.end or key == "Bored"
    assert "%.1f\u00b0" % job.tooling.slit.table_travel in said["table_travel"].text
    (hatch,) = [one for one in table.shapes if type(one) is Hatch]
    # Closer than elsewhere: the bridge is small here.
    assert 1.0 < hatch.spacing < 1.5


@pytest.mark.parametrize("name", DOUBLE)
def test_the_bridge_stands_upright_between_two_places_of_the_cutter(name):
    """What shapely leaves of the wall beside them."""
    job = settled_job(name)
    t = job.tooling
    _, view = drawn(job)
    outer, inner = radii(job)
    far, saw = t.slit.centre_distance, t.cutter_diameter / 2
    (face,) = cut_faces(view)
    (line,) = closed(view, "outline")
    assert face.symmetric_difference(line).area < 1e-9
    mirrored = affinity.scale(face, -1.0, 1.0, origin=(0, 0))
    assert mirrored.symmetric_difference(face).area < 1e-6 * face.area
    half = t.bridge_angle / 2
    wall = Point(0, 0).buffer(outer, 512).difference(Point(0, 0).buffer(inner, 512))
    for side in (1, -1):
        # Where the cutter meets the outside at the bridge's own end.
        turn = math.radians(90.0 + side * (half + t.slit.outside_half_angle))
        cutter = Point(far * math.cos(turn), far * math.sin(turn)).buffer(saw, 512)
        assert face.intersection(cutter).area < 2e-3 * face.area
        wall = wall.difference(cutter)
    wanted = max(getattr(wall, "geoms", [wall]), key=lambda one: one.intersection(face).area)
    sector = [(0.0, 0.0)]
    for at in range(51):
        turn = math.radians(90.0 - half - t.slit.hand_wedge + (
            2.0 * half + 2.0 * t.slit.hand_wedge) * at / 50)  # fmt: skip
        sector.append((9 * outer * math.cos(turn), 9 * outer * math.sin(turn)))
    wanted = wanted.intersection(Polygon(sector))
    assert face.symmetric_difference(wanted).area < 5e-3 * face.area
    # Where the hand saw goes: through the wall at both ends of the bridge.
    cuts = [one for one in of_layer(view, "cut") if type(one) is Line]
    for one, side in zip(cuts, (-1, 1), strict=True):
        for x, y, radius in ((one.x1, one.y1, inner), (one.x2, one.y2, outer)):
            assert math.hypot(x, y) == pytest.approx(radius)
            assert bearing((x, y)) == pytest.approx(90.0 + side * half)


@pytest.mark.parametrize("name", DOUBLE)
@pytest.mark.parametrize("wedge", [None, 10.0, 70.0])
def test_the_wall_is_shown_a_little_beyond_what_is_sawn_by_hand(name, wedge):
    """2.5 mm along the bore, in all no more than 60 degrees."""
    job = settled_job(name)
    t = job.tooling
    wedge = t.slit.hand_wedge if wedge is None else wedge
    job = job._replace(tooling=t._replace(slit=t.slit._replace(hand_wedge=wedge)))
    outer, inner = radii(job)
    arcs = [one for one in table_views.bridge_detail(job).shapes if type(one) is Arc]
    assert [one.radius for one in arcs] == [outer, inner]
    beyond = min(math.radians(wedge) * inner + 2.5, math.pi / 3 * inner) / inner
    for one in arcs:
        assert (one.start + one.end) / 2 == pytest.approx(90.0)
        assert (one.end - one.start) / 2 - t.bridge_angle / 2 == pytest.approx(math.degrees(beyond))


@pytest.mark.parametrize("name", DOUBLE)
def test_sizes_and_words_of_the_bridge_stand_at_what_they_speak_of(name):
    job = settled_job(name)
    t = job.tooling
    _, view = drawn(job)
    outer, inner = radii(job)
    half = math.radians(t.bridge_angle / 2)
    (chord,) = view.measures
    # From corner to corner along a straight line.
    assert chord.value == pytest.approx(2.0 * outer * math.sin(half))
    assert chord.first == pytest.approx((-outer * math.sin(half), outer * math.cos(half)))
    assert chord.second == pytest.approx((outer * math.sin(half), outer * math.cos(half)))
    assert chord.words.lines == (one_place(chord.value, job),)
    said = labels(view)
    whole, wedge = said["bridge_length"], said["hand_wedge_length"]
    assert whole.point == pytest.approx((0.0, (outer + inner) / 2), abs=1e-9)
    assert whole.dot is True and wedge.dot is True
    unit = " in" if job.system == "inch" else " mm"
    assert whole.text == "Bridge %.1f\u00b0: %s along the outside" % (
        t.bridge_angle, one_place(t.bridge_length, job) + unit,
    )  # fmt: skip
    assert one_place(t.slit.hand_wedge_length, job) + unit in wedge.text
    # In the metal, between the hand saw's line and the cutter, near the bore.
    (face,) = cut_faces(view)
    assert face.covers(Point(wedge.point))
    turn = 90.0 - t.bridge_angle / 2 - bearing(wedge.point)
    assert 0.3 * t.slit.hand_wedge < turn < 0.5 * t.slit.hand_wedge
    off = math.hypot(*wedge.point) - inner
    assert 0.1 * (outer - inner) < off < 0.2 * (outer - inner)
