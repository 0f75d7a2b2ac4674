"""The piston, its groove, and the ring in it: every line, size and label against the sizes."""

import pytest
from shapely.geometry import box

from drawing.by_hand import (
    across,
    broken,
    cuts,
    digits,
    headed,
    labels,
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
from drawing.views import JOBS, settled_of, views

# One groove, three of five, a piston of its own metal; a narrow sheet for a plain ring;
# clearances of more than a millimetre.
MORE = {
    "worn": {
        "bore": 90.0,
        "ring_type": "plain",
        "ring_width": 3.0,
        "groove_width": 4.2,
        "groove_depth": 6.0,
        "piston_diameter": 87.0,
    },
    "one": {
        "bore": 65.0,
        "rings": 1,
        "ring_type": "plain",
        "piston_material": "aluminium",
        "paper": "screen",
    },
    "five": {"bore": 150.0, "rings": 5, "dimensions": "inch", "cylinder_material": "steel"},
    "three": {
        "bore": 38.1,
        "rings": 3,
        "groove_width": 2.45,
        "piston_diameter": 38.0,
        "ring_width": 2.4,
    },
}
NAMES = [*JOBS, *MORE]


settled = settled_of(MORE)


@pytest.mark.parametrize("name", NAMES)
def test_the_piston_is_half_cut_and_half_seen(name):
    job = settled(name)
    d = job.design
    view = views(job, "piston")["piston"]
    headed(view, "Piston, upper half cut")
    count = min(d.duty.rings, 3)
    wide, land = d.groove_width, max(1.5 * d.groove_width, 3.0)
    long = land + count * (wide + land)
    radius, floor = d.piston_diameter / 2, d.piston_diameter / 2 - d.groove_depth
    metal = box(0.0, 0.0, long, radius)
    sides = []
    for at in range(count):
        x = land + at * (wide + land)
        metal = metal.difference(box(x, floor, x + wide, 1e4))
        sides += [x, x + wide]
    assert long - sides[-1] == pytest.approx(land)
    upper = list(metal.exterior.coords)
    # Seen from outside, an edge of a land is a circle on edge: it runs from rim to axis.
    seen = [[(x, -radius), (x, 0.0)] for x in [0.0, *sides, long]]
    outside = [
        [(a, -radius), (b, -radius)]
        for a, b in zip([0.0, *sides[1::2]], [*sides[::2], long], strict=True)
    ]
    floors = [
        [(a, -radius), (a, -floor), (b, -floor), (b, -radius)]
        for a, b in zip(sides[::2], sides[1::2], strict=True)
    ]
    past = 0.1 * long + 2.0
    lines(
        view,
        outline=[upper, *seen, *outside, *floors],
        centre=[[(-past, 0.0), (long + past, 0.0)]],
    )
    rounds(view)
    cuts(view, (metal, 45.0, 2.5))
    words = of_work(job, "piston_diameter", 2 * radius, "\u00d8")
    sizes(
        view,
        ("piston_diameter", "left", (0.0, -radius), (0.0, radius), words),
        (
            "",
            "right",
            (long - land, -floor),
            (long - land, floor),
            ("", ("(%s)" % across(2 * floor, job),)),
        ),
    )
    labels(view)
    assert "%d of the grooves shown" % count in notes(job, "piston")[0]


@pytest.mark.parametrize("name", NAMES)
def test_the_groove_is_enlarged_as_it_is(name):
    job = settled(name)
    d = job.design
    view = views(job, "piston")["groove"]
    headed(view, "Groove", 60.0)
    wide, deep = d.groove_width, d.groove_depth
    beside, floor = 0.8 * wide, -1.6 * deep
    left, right = -beside, wide + beside
    metal = box(left, floor, right, 0.0).difference(box(0.0, -deep, wide, 1.0))
    top = [(left, 0.0), (0.0, 0.0), (0.0, -deep), (wide, -deep), (wide, 0.0), (right, 0.0)]
    lines(
        view,
        outline=[top],
        thin=[
            *[broken(x, floor, 0.0, 0.03 * deep) for x in (left, right)],
            [(left, floor), (right, floor)],
        ],
    )
    rounds(view)
    cuts(view, (metal, 45.0, 2.5))
    sizes(
        view,
        ("groove_width", "top", (0.0, 0.0), (wide, 0.0), of_work(job, "groove_width", wide)),
        ("groove_depth", "right", (wide, -deep), (right, 0.0), plain(deep, job)),
    )
    labels(view)


def grown(metal, to, cold):
    return 1.0 + metal.expansion * (to - cold)


@pytest.mark.parametrize("name", NAMES)
def test_the_ring_in_its_groove_is_pressed_to_the_right_and_outwards(name):
    job = settled(name)
    d = job.design
    (view,) = views(job, "cylinder-section").values()
    headed(view, "Ring, groove and wall")
    wide, thick, groove = d.section.width, d.section.thickness, d.groove_width
    play = groove - wide
    rim = -(d.duty.bore - d.piston_diameter) / 2
    floor = rim - d.groove_depth
    left, right = -0.9 * wide, groove + 0.9 * wide
    low, high = floor - thick / 2, 0.8 * thick
    piston = box(left, low, right, rim).difference(box(0.0, floor, groove, 1.0))
    wall = rectangle(left, 0.0, right, high)
    count = d.duty.turns
    edges = [play + at * wide / count for at in range(count + 1)]
    turns = [rectangle(a, -thick, b, 0.0) for a, b in zip(edges, edges[1:], strict=False)]
    top = [(left, rim), (0.0, rim), (0.0, floor), (groove, floor), (groove, rim), (right, rim)]
    lines(
        view,
        outline=[[(left, 0.0), (right, 0.0)], top, *[ring_of(each) for each in turns]],
        thin=[
            broken(x, *ends, 0.03 * wide)
            for x in (left, right)
            for ends in ((0.0, high), (low, rim))
        ],
    )
    rounds(view)
    cuts(view, (wall, 135.0, 2.5), (piston, 45.0, 2.5), *[(each, 135.0, 1.3) for each in turns])
    sizes(
        view,
        ("ring_width", "top", (play, high), (groove, high), plain(wide, job)),
        ("groove_width", "bottom", (0.0, floor), (groove, floor), plain(groove, job)),
    )
    duty = d.duty
    ring = grown(duty.ring_material, duty.temperature, duty.shop)
    metal = grown(duty.piston, duty.temperature, duty.shop)
    cylinder = grown(duty.cylinder, duty.warming_wall_temperature, duty.shop)
    back = floor + thick
    hot_rim = (duty.bore * cylinder - d.piston_diameter * metal) / 2
    hot_back = duty.bore / 2 * cylinder - thick * ring - (duty.bore / 2 + floor) * metal
    # A narrow sheet has one column of labels, on the right.
    aside = "right" if JOBS.get(name, MORE.get(name)).get("paper") == "screen" else "left"

    def both(words, cold, hot):
        return "%s %s cold, %s hot" % (words, length(cold, job, 3), length(hot, job, 3))

    gauged = across(duty.bore, job, 3)
    labels(
        view,
        (
            aside,
            (play / 2, -0.6 * thick),
            both("Side clearance", play, groove * metal - wide * ring),
            False,
            "side_clearance",
            play,
        ),
        (
            "right",
            (play + 0.7 * wide, (floor - thick) / 2),
            both("Back clearance", -back, hot_back),
            False,
            "back_clearance",
            -back,
        ),
        (aside, (0.6 * left, rim / 2), both("Piston, radial:", -rim, hot_rim), False),
        ("right", (groove + 0.54 * wide, high / 2), "Cylinder wall, " + gauged, True),
        (
            "right",
            (groove + 0.54 * wide, low + 0.2 * thick),
            "Piston, " + across(d.piston_diameter, job),
            True,
        ),
    )
    for point, shape in (
        (view.labels[3].point, box(left, 0.0, right, high)),
        (view.labels[4].point, piston),
    ):
        assert shape.contains(box(*point, *point).centroid)
    heats = (duty.shop, duty.temperature, duty.warming_wall_temperature)
    told = "Cold: all at %s \u00b0C. Hot: ring and piston at %s \u00b0C, "
    told += "cylinder half-warm at %s \u00b0C."
    assert notes(job, "cylinder-section")[1] == told % tuple(digits(each, 0) for each in heats)
