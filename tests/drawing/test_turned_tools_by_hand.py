"""Pot, closing ring, clamp mandrel, end plate and trial bore: every line against the tooling."""

import math

import pytest
from shapely.geometry import box
from shapely.ops import unary_union

from drawing.by_hand import (
    across,
    axis,
    cross,
    cuts,
    halves,
    headed,
    labels,
    length,
    lines,
    notes,
    of_tool,
    of_work,
    plain,
    rectangle,
    ring_of,
    rounds,
    sizes,
    turned_over,
)
from drawing.views import JOBS, ROUND, settled_of, views
from ringwright.core.drawing import tool_views

# A closing ring wide enough for the whole of its mouth; a spigot large enough for its screw.
MORE = {
    "wide": {"bore": 300.0, "ring_width": 14.0},
    "inch wide": {"bore": 430.0, "ring_type": "plain", "dimensions": "inch", "rings": 1},
}
NAMES = [*JOBS, *MORE]


settled = settled_of(MORE)


def wall(bore):
    """A tenth of the bore, at least 6 mm: common practice, no source."""
    return max(6.0, 0.1 * bore)


def half_up(mm):
    """To the nearest half millimetre."""
    return math.floor(mm / 0.5 + 0.5) / 2.0


def spans(*edges):
    """Edges that are seen behind the cut, from (x, radius) to its mirror."""
    return [[(x, -radius), (x, radius)] for x, radius in edges]


@pytest.mark.parametrize("name", NAMES)
def test_the_pot_is_bored_to_its_figures_with_a_shoulder_behind_the_ring(name):
    job = settled(name)
    d, t = job.design, job.tooling
    (view,) = views(job, "pot").values()
    headed(view, "Facing pot, cut lengthways")
    bore, deep, thick = t.pot_bore / 2, t.pot_depth, d.blank.set_thickness
    back, hole, outer = max(6.0, 0.05 * t.pot_bore), bore - 0.8 * thick, bore + wall(t.pot_bore)
    metal = box(-back, hole, deep, outer).difference(box(0.0, 0.0, 1e4, bore))
    upper = list(metal.exterior.coords)
    ring = rectangle(0.0, bore - thick, d.blank.length, bore)
    lines(
        view,
        outline=[
            upper,
            turned_over(upper),
            *spans((-back, hole), (0, hole), (0, bore), (deep, bore)),
        ],
        adjacent=[ring_of(ring), ring_of(turned_over(ring))],
        centre=axis(-back, max(deep, d.blank.length)),
    )
    rounds(view)
    cuts(view, *halves(upper))
    sizes(
        view,
        ("pot_bore", "right", (deep, -bore), (deep, bore), of_tool(job, "pot", "pot_bore", ROUND)),
        ("pot_depth", "top", (0.0, bore), (deep, outer), of_tool(job, "pot", "pot_depth")),
    )
    shoulder = "Shoulder true to the face; undercut the corner"
    labels(
        view,
        ("left", (0.0, (hole + bore) / 2), shoulder, False),
        ("left", (-back / 2, (bore + outer) / 2), "Wall and back to suit", True),
    )
    assert notes(job, "pot")[0].endswith("its gap in the pot is %s." % length(t.pot_gap, job))


@pytest.mark.parametrize("name", [one for one in NAMES if "closing-ring" in settled(one).sizes])
def test_the_closing_ring_opens_at_its_mouth_by_fifteen_degrees(name):
    job = settled(name)
    t = job.tooling
    view, face = views(job, "closing-ring").values()
    headed(view, "Closing ring, cut lengthways")
    headed(face, "From its mouth", None, True)
    bore, wide = t.closing_ring_bore / 2, t.closing_ring_width
    outer = bore + wall(t.closing_ring_bore)
    # The last quarter of the bore, 3 mm at the most, is opened.
    mouth = min(wide / 4, 3.0)
    rise = max(one.radius for one in face.shapes if one.layer == "outline" and one.radius < outer)
    rise -= bore
    assert math.degrees(math.atan(rise / mouth)) == pytest.approx(15.0, abs=0.12)
    upper = [(0.0, bore), (wide - mouth, bore), (wide, bore + rise), (wide, outer), (0.0, outer)]
    lines(
        view,
        outline=[
            ring_of(upper),
            ring_of(turned_over(upper)),
            *spans((0.0, bore), (wide - mouth, bore), (wide, bore + rise)),
        ],
        centre=axis(0.0, wide),
    )
    rounds(view)
    cuts(view, *halves(upper))
    size = "closing_ring_bore"
    sizes(
        view,
        (size, "left", (0.0, -bore), (0.0, bore), of_tool(job, "closing-ring", size, ROUND)),
        (
            "closing_ring_width",
            "top",
            (0.0, outer),
            (wide, outer),
            of_tool(job, "closing-ring", "closing_ring_width"),
        ),
    )
    labels(
        view,
        (
            "right",
            (wide, bore + rise / 2),
            "Mouth opened 15\u00b0, polished, so that the ring slides in",
            False,
        ),
        (
            "right",
            (wide, (bore + outer) / 2),
            "Outside to suit, drawn " + across(2 * outer, job, 1),
            False,
        ),
    )
    lines(face, centre=cross(1.06 * outer))
    rounds(face, *[("outline", 0.0, 0.0, each) for each in (outer, bore + rise, bore)])
    sizes(face)
    labels(face)


@pytest.mark.parametrize("name", NAMES)
def test_the_clamp_mandrel_grips_the_ring_with_plate_and_screw(name):
    job = settled(name)
    d, t = job.design, job.tooling
    (view,) = views(job, "clamp-mandrel").values()
    headed(view, "Mandrel, ring and end plate, cut lengthways")
    spigot, long, plate = t.clamp_mandrel_diameter / 2, t.spigot_length, t.end_plate_diameter / 2
    wide, outer = d.section.width, d.blank.finish_outside / 2
    # It may be bored afterwards.
    inner = t.inside_clamped / 2 - d.allowances.inside
    shoulder, hub = max(6.0, 0.12 * spigot), half_up(max(12.0, 0.3 * spigot))
    hole, thick = half_up(max(2.0, 0.14 * spigot)), half_up(max(4.0, 0.1 * spigot))
    shank = shoulder + hub
    body = unary_union(
        [
            box(-shank, hole, -shoulder, 0.6 * spigot),
            box(-shoulder, hole, 0.0, plate),
            box(0.0, hole, long, spigot),
        ]
    )
    body = list(body.exterior.coords)
    cover = rectangle(wide, hole, wide + thick, plate)
    ring = rectangle(0.0, inner, wide, outer)
    head = max(4.0, hole)
    right = wide + thick
    screw = rectangle(right, -1.7 * hole, right + head, 1.7 * hole)
    loops = [body, ring_of(cover), ring_of(ring)]
    both = [each for one in loops for each in (one, turned_over(one))]
    lines(
        view,
        outline=[*both, ring_of(screw), *spans((long, hole))],
        centre=axis(-shank, right + head),
    )
    rounds(view)
    cuts(view, *halves(body), *halves(cover, 135.0), *halves(ring, 135.0, 1.2))
    tool, words = "clamp-mandrel", "clamp_mandrel_diameter"
    sizes(
        view,
        (words, "left", (0.0, -spigot), (0.0, spigot), of_tool(job, tool, words, ROUND)),
        (
            "end_plate_diameter",
            "left",
            (-shoulder, -plate),
            (-shoulder, plate),
            of_tool(job, tool, "end_plate_diameter", ROUND),
        ),
        (
            "spigot_length",
            "bottom",
            (0.0, -plate),
            (long, -spigot),
            of_tool(job, tool, "spigot_length"),
        ),
        (
            "finish_outside_diameter",
            "right",
            (wide / 2, -outer),
            (wide / 2, outer),
            of_work(job, "finish_outside_diameter", 2 * outer, ROUND),
        ),
        ("ring_width", "top", (0.0, outer), (wide, outer), plain(wide, job)),
    )
    labels(view)
    said = "drawn: hub %s, %s long; hole %s." % (
        across(1.2 * spigot, job, 1),
        length(hub, job, 1),
        across(2 * hole, job, 1),
    )
    assert notes(job, "clamp-mandrel")[-1].endswith(said)


@pytest.mark.parametrize("name", NAMES)
def test_the_end_plate_alone_is_that_of_the_clamp(name):
    job = settled(name)
    t = job.tooling
    view, face = views(job, "end-plate").values()
    headed(view, "End plate, cut lengthways")
    headed(face, "From the screw", None, True)
    radius, spigot = t.end_plate_diameter / 2, t.clamp_mandrel_diameter / 2
    hole, thick = half_up(max(2.0, 0.14 * spigot)), half_up(max(4.0, 0.1 * spigot))
    upper = rectangle(0.0, hole, thick, radius)
    lines(
        view,
        outline=[ring_of(upper), ring_of(turned_over(upper)), *spans((0.0, hole), (thick, hole))],
        centre=axis(0.0, thick),
    )
    cuts(view, *halves(upper))
    words = of_tool(job, "end-plate", "end_plate_diameter", ROUND)
    sizes(view, ("end_plate_diameter", "left", (0.0, -radius), (0.0, radius), words))
    labels(
        view,
        ("right", (thick, (radius + hole) / 2), "This face flat, bears on the ring", False),
        (
            "right",
            (thick, -hole),
            "Hole to clear the screw, drawn " + across(2 * hole, job, 1),
            False,
        ),
    )
    lines(face, centre=cross(1.06 * radius))
    rounds(face, ("outline", 0.0, 0.0, radius), ("outline", 0.0, 0.0, hole))
    assert notes(job, "end-plate") == ["Thickness to suit, drawn %s." % length(thick, job, 1)]


@pytest.mark.parametrize("name", NAMES)
def test_the_trial_bore_is_a_ring_of_the_bore_two_rings_wide(name):
    job = settled(name)
    bore, wide = job.design.duty.bore / 2, 2 * job.design.section.width
    outer = bore + wall(2 * bore)
    (view,) = views(job, "bore-gauge").values()
    headed(view, "Trial bore, cut lengthways")
    upper = rectangle(0.0, bore, wide, outer)
    lines(
        view,
        outline=[ring_of(upper), ring_of(turned_over(upper)), *spans((0.0, bore), (wide, bore))],
        centre=axis(0.0, wide),
    )
    cuts(view, *halves(upper))
    words = of_tool(job, "bore-gauge", "trial_bore", ROUND)
    sizes(view, ("trial_bore", "left", (0.0, -bore), (0.0, bore), words))
    labels(view, ("right", (wide, (bore + outer) / 2), "Wall and width to suit", False))


def test_what_the_maker_is_free_in_is_said_to_the_nearest_half_millimetre():
    for wanted in (2.0, 2.5, 7.0, 12.5):
        for off in (-0.25, -0.2, 0.0, 0.2, 0.249):
            assert tool_views._half(wanted + off) == wanted
