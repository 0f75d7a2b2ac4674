"""Charts of the sections that serve, read back through their own scales.

The shares of a section are those of the ring's own sums (held to their sources in tests of the
ring); where they are just whole is found by scipy.
"""

import math

import pytest
from scipy.optimize import brentq
from shapely.geometry import Polygon

from drawing.chart_reading import ALL, INCH, PSI, Chart, job_named, units
from ringwright.core.drawing import axes, charts
from ringwright.core.ring import section


def window_of(name):
    views, notes, about = charts.window(job_named(name))
    return {view.name: Chart(view) for view in views}, notes, about


def just_whole(share, low, high):
    """The size where a share is 1; the end where it comes nearest, if nowhere between them."""
    ends = [math.log(share(low)), math.log(share(high))]
    if ends[0] * ends[1] > 0.0:
        return (low, high)[int(abs(ends[1]) <= abs(ends[0]))]
    return brentq(lambda size: math.log(share(size)), low, high, xtol=1e-12)


def edges(task, low, high):
    """Thinnest and thickest section that serves."""
    return (
        just_whole(lambda size: section.closed_share(task, size), low, high),
        just_whole(lambda size: section.once_share(task, size), low, high),
    )


@pytest.mark.parametrize("name", ALL)
def test_shares_over_thickness_are_those_of_the_ring(name):
    job = job_named(name)
    d = job.design
    mm, _ = units(job)
    chart = window_of(name)[0]["stress"]
    own = d.section.thickness
    task = section.task_of(d, d.spring.wall_pressure, d.section.width)
    across, up = chart.corners()
    # From a little more than half to a little more than one and a half of the ring's own.
    assert across == pytest.approx((0.55 * own / mm, 1.6 * own / mm))
    assert up == pytest.approx((0.0, 200.0), abs=1e-9)
    assert chart.across == "radial thickness [%s]" % ("in" if mm == INCH else "mm")
    drawn = {}
    for layer, share in (("outline", section.closed_share), ("hidden", section.once_share)):
        drawn[layer] = chart.curves(layer)
        points = [pair for curve in drawn[layer] for pair in curve]
        for thick, percent in points:
            # Where it leaves the chart a straight piece of it ends: a 24th of the way lies between.
            edge = percent > 199.9
            wanted = 100.0 * share(task, thick * mm)
            assert percent == pytest.approx(wanted, rel=1e-2 if edge else 1e-6), layer
        # All of it that is on the chart is drawn.
        sizes = [0.55 * own + 1.05 * own * at / 24 for at in range(25)]
        inside = [one / mm for one in sizes if share(task, one) <= 2.0]
        xs = [thick for thick, _ in points]
        assert all(min(abs(x - one) for x in xs) < 1e-6 for one in inside)
    ((left, first), (right, last)) = chart.curves("limit")[0]
    assert (left, right) == pytest.approx(across)
    assert (first, last) == pytest.approx((100.0, 100.0))
    (mine,) = chart.curves("centre")
    assert [pair[0] for pair in mine] == pytest.approx([own / mm] * 2)
    assert [pair[1] for pair in mine] == pytest.approx([0.0, 200.0], abs=1e-9)
    percents = [100.0 * share(task, own) for share in (section.closed_share, section.once_share)]
    wanted = sorted(one for one in percents if one <= 200.0)
    assert [pair[1] for pair in chart.rings()] == pytest.approx(wanted)
    assert all(pair[0] == pytest.approx(own / mm) for pair in chart.rings())


@pytest.mark.parametrize("name", ALL)
def test_shaded_is_what_neither_tires_nor_breaks(name):
    job = job_named(name)
    d = job.design
    mm, _ = units(job)
    chart = window_of(name)[0]["stress"]
    task = section.task_of(d, d.spring.wall_pressure, d.section.width)
    low, high = edges(task, 0.55 * d.section.thickness, 1.6 * d.section.thickness)
    areas = chart.areas()
    if low >= high:
        assert areas == []
        return
    (area,) = areas
    # Good to a thousandth of the share.
    wanted = [(x / mm, y) for x in (low, high) for y in (0.0, 200.0)]
    for one, other in zip(sorted(area), wanted, strict=True):
        assert one == pytest.approx(other, rel=1e-3, abs=1e-6)
    assert Polygon(area).area == pytest.approx(200.0 * (high - low) / mm, rel=2e-3)


@pytest.mark.parametrize("name", ALL)
def test_words_at_the_shares_stand_at_their_curves(name):
    job = job_named(name)
    d, own = job.design, job.design.section.thickness
    mm, _ = units(job)
    chart = window_of(name)[0]["stress"]
    said = chart.said()
    one, two, three = said
    assert one == "In the bore"
    assert two == ("Fitting it" if d.duty.turns == 1 else "Fitting it, turning it through")
    # To a hundredth of a millimetre or a thou; below a millimetre to a thousandth.
    digits = "%.3f in" if mm == INCH else "%.2f mm" if own >= 1.0 else "%.3f mm"
    assert three == "This ring: " + digits % (own / mm)
    assert said[three] == pytest.approx((own / mm, 14.0))
    across, _ = chart.corners()
    for text, layer, share in ((one, "outline", 0.12), (two, "hidden", 0.88)):
        points = [pair for curve in chart.curves(layer) for pair in curve if pair[1] <= 195.0]
        if not points:
            assert said[text] == pytest.approx((across[0], 195.0))
            continue
        # At about that share of the way along what is seen of the curve.
        assert any(math.dist(pair, said[text]) < 1e-6 for pair in points)
        xs = [pair[0] for pair in points]
        way = (said[text][0] - xs[0]) / (xs[-1] - xs[0])
        assert way == pytest.approx(share, abs=1.0 / len(points))


def served(name, key):
    """(chart, pairs of value and edges) over pressure or width, at the places that are drawn."""
    job = job_named(name)
    d = job.design
    mm, mpa = units(job)
    chart = window_of(name)[0][key]
    if key == "pressure":
        top = max(0.1, 1.6 * d.spring.wall_pressure)
        values = [top * (0.04 + 0.96 * at / 24) for at in range(25)]
        tasks = [section.task_of(d, value, d.section.width) for value in values]
        unit, mine = mpa, d.spring.wall_pressure
    else:
        top = 2.2 * d.section.width
        values = [top * (0.12 + 0.88 * at / 24) for at in range(25)]
        tasks = [section.task_of(d, d.spring.wall_pressure, value) for value in values]
        unit, mine = mm, d.section.width
    # The thin-ring sums hold from a 50th to a 12th of the bore.
    found = [edges(task, d.duty.bore / 50.0, d.duty.bore / 12.0) for task in tasks]
    tallest = max(high for _, high in found)
    up = max(1.5 * d.section.thickness, min(1.15 * tallest, d.duty.bore / 12.0))
    across = (0.0, top / unit)
    rows = [
        (value / unit, min(low, up) / mm, min(high, up) / mm)
        for value, (low, high) in zip(values, found, strict=True)
    ]
    return chart, across, (0.0, up / mm), rows, (mine / unit, d.section.thickness / mm)


DRAWN = [(name, "pressure") for name in ALL]
DRAWN += [(name, "width") for name in ALL if job_named(name).design.duty.turns == 2]


@pytest.mark.parametrize(("name", "key"), DRAWN)
def test_thicknesses_that_serve_lie_between_their_two_curves(name, key):
    chart, across, up, rows, mine = served(name, key)
    found = chart.corners()
    # How far up it goes hangs on the thickest that serves, good to a thousandth.
    assert found[0] == pytest.approx(across, abs=1e-9)
    assert found[1] == pytest.approx(up, rel=2e-3, abs=1e-9)
    for layer, which in (("outline", 1), ("hidden", 2)):
        (curve,) = chart.curves(layer)
        assert len(curve) == len(rows)
        for pair, row in zip(curve, rows, strict=True):
            assert pair == pytest.approx((row[0], row[which]), rel=2e-3), layer
    between = [row for row in rows if row[2] > row[1] * 1.002]
    unsure = [row for row in rows if abs(row[2] / row[1] - 1.0) <= 0.002]
    if len(between) > 1:
        (area,) = chart.areas()
        outline = [row[:2] for row in between] + [(row[0], row[2]) for row in between[::-1]]
        if not unsure:
            assert len(area) == len(outline)
        wanted = Polygon(outline)
        # A band as thin as that of a high pressure is good to what its two edges are.
        slack = 4e-3 * (across[1] - across[0]) * up[1]
        assert Polygon(area).symmetric_difference(wanted).area < slack
        assert Polygon(area).is_valid
    elif not unsure:
        assert chart.areas() == []
    ((x, y),) = chart.rings()
    assert (x, y) == pytest.approx(mine)
    said = chart.said()
    assert said["This ring"] == pytest.approx(mine)
    if key == "pressure":
        assert said["Thicker breaks in fitting"] == pytest.approx((rows[-3][0], rows[-3][2]), 2e-3)
        assert said["Thinner tires in the bore"] == pytest.approx(rows[-3][:2], 2e-3)
        assert chart.across == "wall pressure [%s]" % (
            "psi" if settles_in_inches(name) else "N/mm2"
        )
    else:
        assert chart.across == "ring width [%s]" % ("in" if settles_in_inches(name) else "mm")


def settles_in_inches(name):
    return job_named(name).system == "inch"


def test_the_jobs_show_every_kind_of_window():
    """Ranges that clip at the tallest, at 1.5 times the ring's own, and areas of all kinds."""
    kinds = set()
    for name, key in DRAWN:
        _, across, up, rows, mine = served(name, key)
        mm, _ = units(job_named(name))
        bore = job_named(name).design.duty.bore
        kinds.add(
            "own" if up[1] == 1.5 * mine[1] else "bore" if up[1] * mm == bore / 12 else "kept"
        )
        kinds.add("crossed" if any(row[2] < row[1] for row in rows) else "open")
        kinds.add("least" if key == "pressure" and across[1] == 0.1 else "")
    assert {"own", "kept", "crossed", "open", "least"} <= kinds, kinds


@pytest.mark.parametrize("name", ALL)
def test_notes_say_what_whole_is(name):
    job = job_named(name)
    d = job.design
    _, mpa = units(job)
    found, (first, _), _ = window_of(name)
    assert len(found) == (3 if d.duty.turns == 2 else 2)
    strength = d.duty.ring_material.bending_strength
    said = [
        float(part.split("%s" % ("psi" if mpa == PSI else "N/mm2"))[0].strip(" ").replace(" ", "")
              .replace("\u202f", ""))
        for part in (first.split("for years ")[1], first.split("once in fitting ")[1])
    ]  # fmt: skip
    digits = 3e-3 if mpa == PSI else 0.51 / (0.45 * strength)
    assert said == pytest.approx([0.45 * strength / mpa, 0.75 * strength / mpa], rel=digits)


def test_where_a_share_is_whole_is_where_scipy_finds_it():
    """Powers and what is nearly one, rising and falling, whole between the ends or beyond them."""
    for power in (-2.0, -0.7, 1.0, 3.1):
        for bend in (0.0, 0.3, -0.3):
            for whole in (1.2, 2.0, 3.9):

                def share(size, power=power, bend=bend, whole=whole):
                    x = math.log(size / whole)
                    return math.exp(power * (x + bend * x * x))

                found = charts._where_whole(share, 1.0, 4.0)
                assert abs(math.log(share(found))) < 1e-3
                assert found == pytest.approx(brentq(lambda a: share(a) - 1.0, 1.0, 4.0), rel=2e-3)
        for slope in (power, 0.01 * power):
            for whole, nearest in ((0.5, 1.0), (0.99, 1.0), (4.01, 4.0), (9.0, 4.0)):

                def beyond(size, slope=slope, whole=whole):
                    return (size / whole) ** slope

                assert charts._where_whole(beyond, 1.0, 4.0) == nearest


def test_a_curve_that_bends_much_is_followed_to_where_it_is_whole():
    """Plain false position would creep: its one end would never move."""
    for whole in (1.001, 1.3, 3.0, 3.99):
        asked = []

        def share(size, whole=whole, asked=asked):
            asked.append(size)
            return math.exp(math.exp(4.0 * math.log(size / whole)) - 1.0)

        found = charts._where_whole(share, 1.0, 4.0)
        assert abs(math.log(share(found))) < 1e-3
        assert len(asked) <= 12
        assert all(1.0 - 1e-9 <= one <= 4.0 + 1e-9 for one in asked)


def test_words_at_a_curve_find_what_is_seen_of_it():
    pairs = [(1.0, 300.0), (2.0, 196.0), (3.0, 195.0), (4.0, 100.0), (5.0, 50.0), (6.0, 30.0)]
    # Four of six are seen: 3 to 6.
    assert charts._visible(pairs, 0.0) == pairs[2]
    assert charts._visible(pairs, 0.5) == pairs[4]
    assert charts._visible(pairs, 0.88) == pairs[5]
    assert charts._visible(pairs, 1.0) == pairs[5]
    assert charts._visible(pairs[:2], 0.5) == (1.0, 195.0)


@pytest.mark.parametrize(("percent", "ringed"), [(199.5, 1), (200.5, 0), (201.9, 0)])
def test_no_point_is_ringed_above_the_chart(percent, ringed):
    """Stress in the bore of a round-set ring goes with its pressure."""
    job = job_named("double")
    d = job.design
    task = section.task_of(d, d.spring.wall_pressure, d.section.width)
    more = percent / 100.0 / section.closed_share(task, d.section.thickness)
    spring = d.spring._replace(wall_pressure=more * d.spring.wall_pressure)
    raised = job._replace(design=d._replace(spring=spring))
    chart = Chart(charts.window(raised)[0][0])
    assert len([one for one in chart.rings() if one[1] > 199.0]) == ringed
    assert all(one[1] <= 200.0 for one in chart.rings())


def test_only_where_the_second_curve_is_the_higher_one_it_is_shaded():
    def shaded(lows, highs):
        one = axes.Axes("a", "A", 80.0, 40.0, (0.0, 80.0, ""), (0.0, 40.0, ""))
        one.view.shapes = []
        pairs = [[(10.0 * at, y) for at, y in enumerate(row)] for row in (lows, highs)]
        charts._between(one, *pairs)
        return [each.points for each in one.view.shapes]

    (area,) = shaded([5.0, 6.0, 7.0, 8.0, 30.0], [9.0, 9.0, 8.0, 8.0, 20.0])
    assert area == [(0, 5), (10, 6), (20, 7), (20, 8), (10, 9), (0, 9)]
    (area,) = shaded([5.0, 6.0], [9.0, 9.0])
    assert Polygon(area).area == pytest.approx(35.0)
    # One place alone has no area.
    assert shaded([5.0, 9.5], [9.0, 9.0]) == []
    assert shaded([9.0, 9.5], [9.0, 9.0]) == []
