"""The ring closed, free, in section and rolled out: every line, size and label, by hand."""

import math

import pytest
from shapely.geometry import LineString, Polygon

from drawing.by_hand import (
    across,
    broken,
    cross,
    cuts,
    figure,
    headed,
    labels,
    lean,
    length,
    lines,
    notes,
    of_work,
    plain,
    rectangle,
    ring_of,
    rounds,
    sizes,
)
from drawing.views import JOBS, ROUND, of_layer, settled_of, views
from ringwright.core.drawing.ring_views import broken_strip
from ringwright.core.drawing.view import View

# Ends that are square, a gap that is wide for its ring, a tongue as long as the picture; no gap,
# and one whose feeler is thinner than a hair.
MORE = {
    "square double": {
        "bore": 120.0,
        "end_cut": "square",
        "closed_gap": 2.6,
        "ring_width": 4.0,
        "dimensions": "inch",
    },
    "worn": {"bore": 120.0, "ring_type": "plain", "closed_gap": 1.5, "ring_width": 2.0},
    "tongue": {
        "bore": 151.3,
        "ring_type": "plain",
        "end_cut": "stepped",
        "tongue_length": 20.0,
        "dimensions": "inch",
    },
    "hair": {"bore": 79.375, "closed_gap": 0.0408},
    "no gap": {"bore": 79.375, "closed_gap": 0.0},
    "wide bridge": {"bore": 70.0, "bridge_length": 24.0, "ring_width": 3.0},
}
NAMES = [*JOBS, *MORE]


settled = settled_of(MORE)


DOUBLE = [name for name in NAMES if settled(name).design.duty.turns == 2]
PLAIN = [name for name in NAMES if name not in DOUBLE]


def at(radius, degrees):
    turn = math.radians(degrees)
    return radius * math.cos(turn), radius * math.sin(turn)


def shoulder(job):
    """Where the gap of the front turn begins, from the middle of the bridge [deg]: the bridge's
    half less what its end leans, laid on the outside of the blank that it was cut in."""
    d = job.design
    step = (d.section.width + d.allowances.slit) / 2
    run = job.tooling.bridge_length / 2 - lean(d, step)
    return math.degrees(run / (d.blank.rough_outside / 2))


@pytest.mark.parametrize("name", NAMES)
def test_the_ring_fills_its_bore_but_for_its_gap(name):
    job = settled(name)
    d, t = job.design, job.tooling
    view = views(job, "ring-closed")["end"]
    headed(view, "")
    outer, gap = d.duty.bore / 2, d.duty.closed_gap
    inner = outer - d.section.thickness
    middle = (outer + inner) / 2
    open_by = math.degrees(gap / middle)
    place = 90.0 if d.duty.turns == 1 else 90.0 - shoulder(job) - open_by / 2
    ends = (place + open_by / 2, place + 360.0 - open_by / 2)
    rounds(view, *[("outline", 0.0, 0.0, each, *ends) for each in (outer, inner)])
    layers = {
        "outline": [[at(inner, turn), at(outer, turn)] for turn in ends],
        "centre": cross(1.06 * outer),
    }
    if d.duty.turns == 2:
        # The turn behind has its gap as far on the other side of the bridge.
        layers["hidden"] = [[(-x, y) for x, y in each] for each in layers["outline"]]
    lines(view, **layers)
    cuts(view)
    sizes(
        view,
        ("bore", "bottom", (-outer, 0.0), (outer, 0.0), (ROUND, (figure(2 * outer, job, 3),))),
        (
            "inside_diameter",
            "bottom",
            (-inner, 0.0),
            (inner, 0.0),
            ("", ("(%s)" % across(2 * inner, job),)),
        ),
    )
    text = "Gap %s, on the neutral line" % length(gap, job)
    if t.feeler_gap > 0.0:
        text += "; a feeler at the outer edge reads " + length(t.feeler_gap, job)
    labels(view, ("right", at(middle, place), text, False, "closed_gap", gap))
    said = " ".join(notes(job, "ring-closed"))
    # Flat to a quarter of the side clearance, edges broken by 0.1 mm.
    assert "even within %s;" % length(max(d.side_clearance, 0.01) / 4, job) in said
    assert "broken by %s." % length(0.1, job) in said
    assert ("Two turns" in said) == (d.duty.turns == 2)


@pytest.mark.parametrize("name", NAMES)
def test_the_section_of_the_ring_is_that_of_its_turns(name):
    job = settled(name)
    d = job.design
    view = views(job, "ring-closed")["section"]
    headed(view, "Section of the ring", 50.0)
    wide, thick, count = d.section.width, d.section.thickness, d.duty.turns
    places = [wide * each / count for each in range(count + 1)]
    turns = [rectangle(a, 0.0, b, thick) for a, b in zip(places, places[1:], strict=False)]
    lines(view, outline=[ring_of(each) for each in turns])
    rounds(view)
    cuts(view, *[(each, 45.0, 2.5) for each in turns])
    rows = [
        ("ring_width", "top", (0.0, thick), (wide, thick), of_work(job, "ring_width", wide)),
        (
            "radial_thickness",
            "left",
            (0.0, 0.0),
            (0.0, thick),
            of_work(job, "radial_thickness", thick),
        ),
    ]
    if count == 2:
        words = ("", ("(%s)" % figure(wide / 2, job),))
        rows.insert(0, ("turn_width", "bottom", (wide / 2, 0.0), (wide, 0.0), words))
    sizes(view, *rows)
    labels(view)


@pytest.mark.parametrize("name", DOUBLE)
def test_the_bridge_rolled_out_has_a_gap_beside_each_end(name):
    job = settled(name)
    d = job.design
    view = views(job, "ring-closed")["bridge"]
    headed(view, "Bridge, rolled out", 62.0)
    wide, gap, half = d.section.width, d.duty.closed_gap, job.tooling.bridge_length / 2
    low, high = (wide - d.allowances.slit) / 2, (wide + d.allowances.slit) / 2
    out = lean(d, high)
    reach = half + max(0.4 * half, wide / 2, 1.5 * gap)
    # The front turn's end and the bridge's, a gap apart; the back turn's are these turned round.
    front = [[(half + x, low), (half - out + x, wide)] for x in (0.0, gap)]
    front.append([(half, low), (reach, low)])
    back = [[(-x, wide - y) for x, y in each] for each in front]
    strip = [[(-reach, y), (reach, y)] for y in (0.0, wide)]
    waves = [broken(x, 0.0, wide, 0.04 * wide) for x in (-reach, reach)]
    lines(view, outline=[*front, *back, *strip], thin=waves)
    rounds(view)
    cuts(view)
    sizes(
        view,
        ("bridge_length", "bottom", (-half, high), (half, low), plain(2 * half, job, 1)),
        ("", "right", (reach, low), (reach, wide), plain(high, job)),
        ("", "right", (reach, 0.0), (reach, low), plain(low, job)),
    )
    labels(view)


@pytest.mark.parametrize("name", PLAIN)
def test_the_ends_rolled_out_stand_their_gap_apart(name):
    job = settled(name)
    d, joint = job.design, job.tooling.joint
    view = views(job, "ring-closed")["ends"]
    headed(view, "Ends, seen from outside", 50.0)
    wide, gap, out = d.section.width, d.duty.closed_gap, lean(d, d.section.width)
    tongue = joint.opening if joint else 0.0
    reach = max(1.2 * wide, out, 2.0 * gap, tongue)
    left, right = -reach - out / 2, reach + out / 2 + gap
    strip = [[(left, y), (right, y)] for y in (0.0, wide)]
    waves = [broken(x, 0.0, wide, 0.04 * wide) for x in (left, right)]
    rows = []
    if joint:
        # Each end keeps a tongue: the left one above, the right one below, with room between.
        tall = joint.tongue_width
        ends = [
            [
                (x - tongue / 2, 0.0),
                (x - tongue / 2, y),
                (x + tongue / 2, y),
                (x + tongue / 2, wide),
            ]
            for x, y in ((0.0, wide - tall), (gap, tall))
        ]
        corner = gap + tongue / 2
        rows = [
            ("tongue_length", "bottom", (gap - tongue / 2, 0.0), (corner, 0.0), plain(tongue, job)),
            ("tongue_width", "right", (corner, 0.0), (corner, tall), plain(tall, job)),
        ]
        metal = [
            Polygon([(left, 0.0), *ends[0], (left, wide)]),
            Polygon([(right, 0.0), *ends[1], (right, wide)]),
        ]
    else:
        ends = [[(x - out / 2, 0.0), (x + out / 2, wide)] for x in (0.0, gap)]
        metal = [
            Polygon([(left, 0.0), *ends[0], (left, wide)]),
            Polygon([(right, 0.0), *ends[1], (right, wide)]),
        ]
    assert metal[0].intersection(metal[1]).area < 1e-9
    lines(view, outline=[*strip, *ends], thin=waves)
    rounds(view)
    cuts(view)
    x = max(out, tongue) / 2
    sizes(view, *rows, ("closed_gap", "top", (x, wide), (x + gap, wide), plain(gap, job)))
    labels(view)


@pytest.mark.parametrize("name", NAMES)
def test_the_free_ring_lies_open_over_its_bore(name):
    job = settled(name)
    d = job.design
    (view,) = views(job, "ring-free").values()
    headed(view, "")
    thick = d.section.thickness
    radius = (d.duty.bore - thick) / 2
    (front,) = [one.points for one in of_layer(view, "outline")]
    count = len(front) // 2
    outside, inside = front[:count], front[: count - 1 : -1]
    pairs = list(zip(outside, inside, strict=True))
    middle = [((a + c) / 2, (b + e) / 2) for (a, b), (c, e) in pairs]
    assert all(math.dist(*each) == pytest.approx(thick) for each in pairs)
    long = sum(math.dist(*each) for each in zip(middle, middle[1:], strict=False))
    assert long == pytest.approx(math.tau * radius - d.duty.closed_gap, rel=2e-4)
    assert Polygon(outside).area > Polygon(inside).area
    gap = d.spring.gap_change + d.duty.closed_gap
    if d.duty.turns == 1:
        assert math.dist(middle[0], middle[-1]) == pytest.approx(gap, rel=4e-3)
    else:
        # The face at the bridge still stands at the shoulder, clockwise from the bridge's middle.
        (a, b), (c, e) = pairs[0]
        assert math.degrees(math.atan2(b - e, a - c)) == pytest.approx(90.0 - shoulder(job))
        assert math.dist(middle[0], middle[-1]) == pytest.approx(gap, rel=0.02)
    layers = {"outline": [ring_of(front)], "centre": cross(1.12 * radius)}
    if d.duty.turns == 2:
        # The turn behind, mirrored; only its end where the ring has a tail that hugs the front's.
        behind = ring_of(front) if d.duty.bearing.uniform else pairs[-1]
        layers["hidden"] = [[(-x, y) for x, y in behind]]
    lines(view, **layers)
    rounds(view, ("adjacent", 0.0, 0.0, d.duty.bore / 2))
    cuts(view)
    left, low, right, high = LineString(outside).bounds
    sizes(
        view,
        ("free_width", "bottom", (left, 0.0), (right, 0.0), plain(right - left, job, 1)),
        ("free_height", "left", (0.0, low), (0.0, high), plain(high - low, job, 1)),
    )
    text = "Free gap %s, along the neutral line" % length(gap, job)
    text += ", each turn" if d.duty.turns == 2 else ""
    (x1, y1), (x2, y2) = middle[0], middle[-1]
    labels(
        view,
        ("right", ((x1 + x2) / 2, (y1 + y2) / 2), text, False, "free_gap", gap),
        (
            "right",
            at(d.duty.bore / 2, -40.0),
            "Bore " + across(d.duty.bore, job, 3),
            False,
            "bore",
            d.duty.bore,
        ),
    )


def test_a_strip_is_broken_off_at_both_ends():
    view = View("strip")
    broken_strip(view, -3.0, 5.0, 1.0, 7.0)
    waves = [broken(x, 1.0, 7.0, 0.04 * 6.0) for x in (-3.0, 5.0)]
    lines(view, outline=[[(-3.0, y), (5.0, y)] for y in (1.0, 7.0)], thin=waves)
