"""Charts of the free shape and of steam read back through their own scales.

The free ring's outside is shapely's, temperatures of steam are another library's.
"""

import math

import numpy
import pytest
from iapws import IAPWS97
from shapely.geometry import LineString, Point

from drawing.chart_reading import ALL, INCH, PSI, Chart, job_named, units
from drawing.views import job_of
from ringwright.core.drawing import charts
from ringwright.core.drawing.ring_views import free_line


@pytest.mark.parametrize("name", ["double", "plain", "screen"])
def test_charts_of_one_sheet_stand_one_below_another(name):
    job = job_named(name)
    alone = Chart(charts.steam_temperature(job)[0][0])
    assert Chart(charts.free_shape(job)[0][0]).height == alone.height
    found = [Chart(view) for view in charts.window(job)[0]]
    if name == "screen":
        sizes = {(one.width, one.height) for one in [*found, alone]}
        assert sizes == {(66.0, 56.0)}
        return
    assert (alone.width, alone.height) == (108.0, 110.0)
    assert {(one.width, one.height) for one in found} == {
        (108.0, 58.0 if len(found) == 2 else 32.0)
    }


@pytest.mark.parametrize("name", ALL)
def test_the_free_ring_stands_off_the_bore_as_its_outside_does(name):
    """Every point read off the chart lies on the outside of the free ring, by shapely."""
    job = job_named(name)
    d = job.design
    mm, _ = units(job)
    views, _, _ = charts.free_shape(job)
    chart = Chart(views[0])
    line = LineString([point[:2] for point in free_line(job)])
    (curve,) = chart.curves("outline")
    assert len(curve) == len(line.coords)
    angles = [angle for angle, _ in curve]
    assert angles == sorted(angles) and angles[0] >= 0.0 and angles[-1] < 360.0
    worst = 0.0
    for angle, off in curve:
        turn, radius = math.radians(angle), d.duty.bore / 2 + off * mm
        # Clockwise from the top.
        there = Point(radius * math.sin(turn), radius * math.cos(turn))
        worst = max(worst, abs(there.distance(line) - d.section.thickness / 2))
        nearest = line.interpolate(line.project(there))
        assert math.hypot(there.x, there.y) > math.hypot(nearest.x, nearest.y)
    assert worst < 2e-3 * d.section.thickness
    across, up = chart.corners()
    offs = [off for _, off in curve]
    assert across == pytest.approx((0.0, 360.0), abs=1e-9)
    assert up == pytest.approx((1.15 * min(0.0, *offs), 1.2 * max(offs)), abs=1e-9)
    (bore,) = chart.curves("adjacent")
    assert numpy.array(bore) == pytest.approx(numpy.array([(0.0, 0.0), (360.0, 0.0)]), abs=1e-9)
    said = chart.said()
    assert said["Bore"] == pytest.approx((180.0, 0.0), abs=1e-9)
    text = "Free ring" if d.duty.turns == 1 else "Free ring, front turn"
    # Three quarters of the way along.
    assert said[text] == pytest.approx(curve[math.floor(0.75 * len(curve))])
    framed = "angle from the top of the ring, its gap there [deg]"
    assert chart.across == ("angle from the gap [deg]" if job.paper == "screen" else framed)
    assert chart.up == "outside, beyond the bore [%s]" % ("in" if mm == INCH else "mm")


@pytest.mark.parametrize("flat", [0.94, 0.99, 1.01])
def test_a_ring_that_stands_within_its_bore_somewhere_has_room_below(flat, monkeypatch):
    """An oval of the bore's own circle, 1.1 of it across and so much of it up and down."""
    job = job_named("double")
    d = job.design
    radius = d.duty.bore / 2
    turns = [2.0 * math.pi * at / 400 for at in range(400)]
    oval = [
        (1.1 * radius * math.cos(turn), flat * radius * math.sin(turn),
         math.atan2(flat * math.cos(turn), -1.1 * math.sin(turn)))
        for turn in turns
    ]  # fmt: skip
    monkeypatch.setattr(charts, "free_line", lambda job: oval)
    chart = Chart(charts.free_shape(job)[0][0])
    half = d.section.thickness / 2
    _, up = chart.corners()
    assert up[0] == pytest.approx(1.15 * min(0.0, (flat - 1.0) * radius + half), abs=1e-6)
    assert up[1] == pytest.approx(1.2 * (0.1 * radius + half))
    angle, off = min(chart.curves("outline")[0], key=lambda pair: pair[1])
    assert min(abs(angle), abs(angle - 180.0), abs(angle - 360.0)) < 1.0
    assert off == pytest.approx((flat - 1.0) * radius + half, abs=1e-6)


STEAM = [
    ("double", {}), ("stick", {"steam_pressure": 0.69}), ("double", {"steam_pressure": 1.6}),
    ("screen", {}), ("double", {"steam_temperature": 260.0}),
    ("stick", {"steam_temperature": 300.0}),
]  # fmt: skip


@pytest.mark.parametrize(("name", "more"), STEAM)
def test_steam_is_as_hot_as_another_library_says(name, more):
    job = job_of(name, **more)
    duty = job.design.duty
    inch = job.system == "inch"
    per = PSI if inch else 0.1

    def shown(celsius):
        return celsius * 9.0 / 5.0 + 32.0 if inch else celsius

    chart = Chart(charts.steam_temperature(job)[0][0])
    top = max(1.0, 1.35 * duty.steam_pressure)
    (curve,) = chart.curves("outline")
    assert len(curve) == 25
    for at, (pressure, temperature) in enumerate(curve):
        # Closer where it is steep: as squares.
        assert pressure * per == pytest.approx(top * (at / 24) ** 2, abs=1e-9)
        boils = IAPWS97(P=pressure * per + 0.101325, x=0).T - 273.15
        assert temperature == pytest.approx(shown(boils), abs=1e-3)
    across, up = chart.corners()
    assert across == pytest.approx((0.0, top / per), abs=1e-9)
    highest = max(curve[-1][1], shown(duty.temperature))
    # A little room above the highest, a sixteenth or so of all.
    assert up == pytest.approx((shown(80.0), highest + 0.06 * (highest - shown(80.0))))
    here = duty.steam_pressure / per
    (mine,) = chart.curves("centre")
    assert numpy.array(mine) == pytest.approx(numpy.array([(here, shown(80.0)), (here, highest)]))
    ((x, y),) = chart.rings()
    assert (x, y) == pytest.approx((here, shown(duty.temperature)))
    unit, sign = ("psi", "\u00b0F") if inch else ("bar", "\u00b0C")
    assert (chart.across, chart.up) == ("gauge pressure [%s]" % unit, "temperature [%s]" % sign)
    said = chart.said()
    digits = "%.0f" if inch else "%.1f"
    own = "This engine: " + digits % here + " %s, %.0f %s" % (unit, shown(duty.temperature), sign)
    assert said.pop(own) == pytest.approx((here, shown(duty.temperature)))
    if "steam_temperature" not in more:
        assert said == {}
        return
    boils = IAPWS97(P=duty.steam_pressure + 0.101325, x=0).T - 273.15
    ((text, place),) = said.items()
    assert text == "Saturated: %.0f %s" % (shown(boils), sign)
    assert place == pytest.approx((here, shown(boils)), abs=1e-3)


def test_saturation_is_told_apart_from_half_a_degree():
    boils = job_of("double").design.duty.saturation
    for more, told in ((0.498, 1), (0.502, 2)):
        job = job_of("double", steam_temperature=boils + more)
        assert len(charts.steam_temperature(job)[0][0].labels) == told
