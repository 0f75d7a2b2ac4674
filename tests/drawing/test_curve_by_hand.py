"""The free line of a ring and small shapes, against scipy, numpy and shapely."""

import math

import numpy
import pytest
from scipy.integrate import solve_ivp
from shapely.geometry import LineString, MultiLineString, Polygon
from shapely.geometry import box as rectangle

from drawing.views import JOBS, settled_job
from ringwright.core.drawing import curve, shapes
from ringwright.core.drawing.entities import Arc, Circle, Line, Text

# Where the moment of a round-set ring is level from: the root of sin b - sin(2b)/4 - b/2 = 0.
SLACK = 2.139182173773113


def test_a_line_is_what_scipy_walks():
    """Heading grows by 1/r less what is given up; psi from 0.7 to 2.9 as the line goes on."""
    radius, length = 30.0, 55.0

    def change(psi):
        return 0.01 * psi * psi - 0.02 * math.sin(3.0 * psi)

    def slopes(s, state):
        psi = 0.7 + (2.9 - 0.7) * s / length
        return [math.cos(state[2]), math.sin(state[2]), 1.0 / radius - change(psi)]

    at = numpy.linspace(0.0, length, curve.STEPS + 1)
    wanted = solve_ivp(slopes, (0.0, length), [0.0] * 3, t_eval=at, rtol=1e-10, atol=1e-10).y.T
    found = numpy.array(curve.walked(radius, change, length, 0.7, 2.9))
    assert found.shape == wanted.shape
    assert numpy.abs(found - wanted).max() < 5e-4


def test_psi_is_taken_in_the_middle_of_each_step():
    """What is given up in proportion to psi makes a heading of its mean: 2 of 1 to 3, any steps."""
    for steps in (1, 7):
        line = curve.walked(20.0, lambda psi: 0.02 * psi, 30.0, 1.0, 3.0, steps)
        assert line[-1][2] == pytest.approx(30.0 * (1.0 / 20.0 - 0.02 * 2.0))
        assert len(line) == steps + 1


def test_chords_of_a_few_long_steps_stay_on_the_circle():
    """Twelve to a turn: the chord is 2 r sin(15 deg), to the second term of its series."""
    line = curve.walked(10.0, lambda psi: 0.0, 20.0 * math.pi, 0.0, 1.0, 12)
    for (x1, y1, _), (x2, y2, _) in zip(line, line[1:], strict=False):
        assert math.dist((x1, y1), (x2, y2)) == pytest.approx(20.0 * math.sin(math.pi / 12), 6e-5)


def noted():
    asked = []

    def change(psi):
        asked.append(psi)
        return 0.004 * psi

    return asked, change


def test_a_plain_ring_is_two_halves_from_its_back_to_its_tips():
    """Radius 40, gap 9: psi from pi at the back to that of the tip, 4.5/40."""
    asked, change = noted()
    line = curve.plain_turn(40.0, change, 9.0)
    step = (math.pi - 4.5 / 40.0) / curve.STEPS
    wanted = math.pi - step * (numpy.arange(curve.STEPS) + 0.5)
    assert asked == pytest.approx(list(wanted))
    points = [point[:2] for point in line]
    assert len(line) == 2 * curve.STEPS + 1
    steps = [math.dist(one, other) for one, other in zip(points, points[1:], strict=False)]
    assert max(steps) - min(steps) < 1e-4
    assert sum(steps) == pytest.approx(80.0 * math.pi - 9.0, rel=5e-5)
    # Its left half is its right one in a mirror; it runs round without a turn of its heading.
    for (x, y, heading), (x2, y2, heading2) in zip(line, reversed(line), strict=True):
        assert (x, y) == pytest.approx((-x2, y2), abs=1e-9)
        assert heading == pytest.approx(-heading2)
    for (x1, y1, one), (x2, y2, two) in zip(line, line[1:], strict=False):
        assert math.atan2(y2 - y1, x2 - x1) % (2 * math.pi) == pytest.approx(
            (one + two) / 2 % (2 * math.pi), abs=1e-6
        )
    low = min(points, key=lambda point: point[1])
    assert low[0] == pytest.approx(0.0, abs=1e-9) and line[0][0] < 0.0 < line[-1][0]


def test_a_turn_of_a_double_turn_ring_goes_from_its_shoulder_to_its_tip():
    """Radius 33, gap 8: psi from where the shoulder is to nothing at the tip."""
    asked, change = noted()
    line = curve.double_turn(33.0, change, 8.0, 12.0)
    length = 66.0 * math.pi - 8.0
    wanted = length / 33.0 * (1.0 - (numpy.arange(curve.STEPS) + 0.5) / curve.STEPS)
    assert asked == pytest.approx(list(wanted))
    assert LineString([point[:2] for point in line]).length == pytest.approx(length, rel=5e-5)
    assert line[0][2] == pytest.approx(math.radians(168.0))
    bounds = LineString([point[:2] for point in line]).bounds
    assert bounds[0] == pytest.approx(-bounds[2]) and bounds[1] == pytest.approx(-bounds[3])


@pytest.mark.parametrize("name", JOBS)
def test_what_the_wall_takes_is_that_of_the_moment(name):
    """Evenly pressed: 1 - cos psi from the gap. Round set: even over the back, a sine to the tip.

    A ring set bound is one arc, whatever wall it meets.
    """
    d = settled_job(name).design
    change = curve.free_change(d)
    psis = numpy.linspace(0.05, 6.0, 40)
    found = numpy.array([change(psi) for psi in psis])
    if d.duty.bearing.uniform:
        assert found / found[-1] == pytest.approx((1 - numpy.cos(psis)) / (1 - math.cos(6.0)))
        # Cut at 0.5 gap / r from the tip, let go it has the gap that the figures say.
        radius = d.duty.bore / 2 - d.section.thickness / 2
        if d.duty.turns == 1:
            line = curve.plain_turn(radius, change, d.duty.closed_gap)
            gap = math.dist(line[0][:2], line[-1][:2])
            assert gap == pytest.approx(d.duty.closed_gap + d.spring.gap_change, rel=0.02)
        return
    kappa = d.spring.curvature_change
    if d.duty.setting == "bound":
        assert found == pytest.approx(numpy.full(40, kappa))
        return
    wanted = numpy.where(psis >= SLACK, 1.0, numpy.sin(psis) / math.sin(SLACK))
    assert found == pytest.approx(kappa * wanted)
    assert change(math.pi / 2) > 1.18 * kappa


def test_arcs_have_a_step_for_every_two_degrees_begun():
    for degrees, steps in ((74.0, 37), (76.5, 39), (2.0, 2), (359.0, 180), (-76.5, 39)):
        assert len(shapes.arc_points(7.0, 20.0, 20.0 + degrees)) == steps + 1


def test_arcs_have_their_middle_at_the_origin_where_none_is_given():
    assert shapes.polar(5.0, 90.0) == pytest.approx((0.0, 5.0))
    first, *_, last = shapes.arc_points(5.0, 0.0, 90.0)
    assert first == (5.0, 0.0) and last == pytest.approx((0.0, 5.0))


def hatched(loops, angle, spacing):
    return [((a, b), (c, d)) for a, b, c, d in shapes.hatch_lines(loops, angle, spacing)]


@pytest.mark.parametrize("away", [(0.0, 0.0), (700.0, 300.0), (-410.0, -90.0)])
@pytest.mark.parametrize("angle", [0.0, 45.0, 135.0])
def test_hatching_is_all_of_the_lines_of_its_grid_that_shapely_leaves_in_the_face(away, angle):
    dx, dy = away
    outer = [(dx + x, dy + y) for x, y in ((0.3, 0.2), (20.1, 1.7), (26.4, 14.9), (3.3, 11.8))]
    hole = [(dx + x, dy + y) for x, y in ((8.0, 4.0), (14.0, 5.0), (11.0, 9.0))]
    face = Polygon(outer, [hole])
    turn = math.radians(angle)
    along, square = (math.cos(turn), math.sin(turn)), (-math.sin(turn), math.cos(turn))
    vs = [x * square[0] + y * square[1] for x, y in outer]
    wanted = []
    for at in range(math.ceil(min(vs) / 2.3), math.floor(max(vs) / 2.3) + 1):
        foot = (2.3 * at * square[0], 2.3 * at * square[1])
        far = 2000.0
        line = LineString([
            (foot[0] - far * along[0], foot[1] - far * along[1]),
            (foot[0] + far * along[0], foot[1] + far * along[1]),
        ])  # fmt: skip
        inside = face.intersection(line)
        wanted += [one for one in getattr(inside, "geoms", [inside]) if one.length > 0.05]
    found = MultiLineString(hatched([outer, hole], angle, 2.3))
    assert len(found.geoms) == len(wanted) > 5
    assert found.length == pytest.approx(sum(one.length for one in wanted))
    assert face.buffer(1e-6).covers(found)


def test_hatching_through_corners_is_whole():
    """A diamond whose corners lie on the line: from corner to corner once."""
    diamond = [(0.0, 2.0), (3.0, 0.5), (6.0, 2.0), (3.0, 3.5)]
    assert hatched([diamond], 0.0, 2.0) == [((0.0, 2.0), (6.0, 2.0))]
    # Corners above and below in turn, the line along them all.
    comb = [(0.0, 0.0), (9.0, 0.0), (9.0, 4.0), (6.0, 2.0), (3.0, 4.0), (0.0, 4.0)]
    lines = MultiLineString(hatched([comb], 0.0, 2.0))
    assert lines.length == pytest.approx(9.0) and {
        y for one in lines.geoms for _, y in one.coords
    } == {2.0}
    # A line on the lower edge or the upper one of a face is no hatching.
    assert hatched([shapes.box(0.0, 2.0, 5.0, 4.0)], 0.0, 2.0) == []


def test_a_circle_alone_reaches_its_radius_every_way():
    found = shapes.extent([Circle("thin", 5.0, -6.0, 2.5)])
    assert found == (2.5, -8.5, 7.5, -3.5)
    words = Text("text", 50.0, 60.0, 3.5, "words", "start", 0, False)
    assert shapes.extent([Line("thin", 3.0, 1.0, 2.0, 4.0), words]) == (2.0, 1.0, 3.0, 4.0)
    arc = shapes.extent([Arc("thin", 1.0, 2.0, 10.0, -90.0, 90.0)])
    assert rectangle(*arc).bounds == pytest.approx((1.0, -8.0, 11.0, 12.0))
