"""The blank, its slit and saw cuts, and the blank turned through itself: every line, by hand."""

import math

import pytest
from shapely.geometry import Polygon, box

from drawing.by_hand import (
    broken,
    cuts,
    digits,
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
    round_size,
    rounds,
    sizes,
)
from drawing.views import JOBS, ROUND, settled_of, views
from ringwright.core.drawing import catalogue
from ringwright.core.ring.allowances import CUT_ANGLES

# Ends that are square; a saw that is wide for its blank, and a bridge that is long for it.
MORE = {
    "square double": {"bore": 120.0, "end_cut": "square", "dimensions": "inch", "paper": "screen"},
    "wide saw": {"bore": 60.0, "ring_type": "plain", "ring_width": 1.6, "end_kerf": 1.9},
    "inch plain": {
        "bore": 90.0,
        "ring_type": "plain",
        "end_cut": "angled-60",
        "dimensions": "inch",
    },
    "broad": {"bore": 70.0, "bridge_length": 24.0, "ring_width": 3.0},
    "wide saw double": {"bore": 60.0, "ring_width": 2.6, "end_kerf": 1.9, "bridge_length": 6.5},
}
NAMES = [*JOBS, *MORE]


settled = settled_of(MORE)


DOUBLE = [name for name in NAMES if settled(name).design.duty.turns == 2]
PLAIN = [name for name in NAMES if name not in DOUBLE]


def saw(job):
    d = job.design
    angle = digits(CUT_ANGLES[d.duty.end_cut], 0)
    return "Saw %s thick at %s\u00b0 to the side" % (length(d.allowances.kerf, job, 1), angle)


@pytest.mark.parametrize("name", NAMES)
def test_the_blank_is_a_tube_cut_through_its_slit(name):
    job = settled(name)
    d = job.design
    view = views(job, "blank")["blank"]
    double = d.duty.turns == 2
    headed(view, "Blank, cut through the bridge" if double else "Blank, cut lengthways")
    outer, inner, long = d.blank.rough_outside / 2, d.blank.bored_inside / 2, d.blank.length
    upper = rectangle(0.0, inner, long, outer)
    # Above the bridge is whole; below, half-way round, the slit parts the two bands.
    bands = [(0.0, d.blank.band_width), (long - d.blank.band_width, long)]
    lower = [rectangle(a, -outer, b, -inner) for a, b in (bands if double else [(0.0, long)])]
    past = 0.05 * outer + 0.2 * long
    lines(
        view,
        outline=[*map(ring_of, [upper, *lower]), *[[(x, -inner), (x, inner)] for x in (0.0, long)]],
        centre=[[(-past, 0.0), (long + past, 0.0)]],
    )
    rounds(view)
    cuts(view, *[(each, 45.0, 2.5) for each in (upper, *lower)])
    outside, inside = "rough_outside_diameter", "bored_inside_diameter"
    sizes(
        view,
        (outside, "left", (0.0, -outer), (0.0, outer), of_work(job, outside, 2 * outer, ROUND)),
        (inside, "left", (0.0, -inner), (0.0, inner), of_work(job, inside, 2 * inner, ROUND)),
        ("blank_length", "top", (0.0, outer), (long, outer), of_work(job, "blank_length", long)),
    )
    labels(view)
    said = notes(job, "blank")
    assert "%s left on each side" % length(d.allowances.facing, job) in said[0]
    assert len(said) == d.duty.turns
    # What is told to somebody who cannot see it.
    about = catalogue.PARTS["blank"].draw(job)[2]
    assert ("slit, bridge and end cuts" in about) == double and "end cuts rolled out" in about


@pytest.mark.parametrize("name", DOUBLE)
def test_slit_and_saw_cuts_leave_the_bridge(name):
    job = settled(name)
    d = job.design
    view = views(job, "blank")["slit"]
    headed(view, "Outside at the bridge, rolled out", 92.0)
    half, band, long = job.tooling.bridge_length / 2, d.blank.band_width, d.blank.length
    kerf, out, high = d.allowances.gap_kerf, lean(d, d.blank.band_width), long - band
    reach = half + max(0.6 * half, 0.8 * band, 1.5 * kerf)
    low = [(-half - kerf, band), (-half, band), (out - half, 0.0), (out - half - kerf, 0.0)]
    saws = [low, [(-x, long - y) for x, y in low]]
    right = [[(reach, y), (half, y)] for y in (band, high)] + [[(half, band), (half, high)]]
    left = [[(-x, y) for x, y in each] for each in right]
    strip = [[(-reach, y), (reach, y)] for y in (0.0, long)]
    waves = [broken(x, 0.0, long, 0.04 * long) for x in (-reach, reach)]
    lines(view, outline=[*left, *right, *strip], cut=map(ring_of, saws), thin=waves)
    rounds(view)
    cuts(view)
    rows = [("bridge_length", "top", (-half, high), (half, high), plain(2 * half, job, 1))]
    if d.duty.end_cut.startswith("angled"):
        rows.append(("scarf_length", "bottom", (-half, band), (out - half, 0.0), plain(out, job)))
    rows += [
        ("band_width", "left", (-reach, 0.0), (-reach, band), plain(band, job)),
        ("slit_width", "left", (-reach, band), (-reach, high), plain(high - band, job)),
    ]
    sizes(view, *rows)
    # In the middle of the upper cut.
    middle = Polygon(saws[1]).centroid.coords[0]
    labels(view, ("right", middle, saw(job), True, "end_kerf", d.allowances.kerf))


@pytest.mark.parametrize("name", PLAIN)
def test_the_saw_cut_of_a_plain_blank_leans_with_its_ends(name):
    job = settled(name)
    d = job.design
    view = views(job, "blank")["cut"]
    headed(view, "Saw cut on the outside, rolled out", 80.0)
    long, kerf, out = d.blank.length, d.allowances.gap_kerf, lean(d, d.blank.length)
    reach = out / 2 + kerf + max(long, 2 * kerf)
    first = (-(out + kerf) / 2, 0.0)
    cut = [first, (first[0] + kerf, 0.0), ((out + kerf) / 2, long), ((out - kerf) / 2, long)]
    assert Polygon(cut).centroid.coords[0] == pytest.approx((0.0, long / 2))
    strip = [[(-reach, y), (reach, y)] for y in (0.0, long)]
    waves = [broken(x, 0.0, long, 0.04 * long) for x in (-reach, reach)]
    lines(view, outline=strip, cut=[ring_of(cut)], thin=waves)
    rounds(view)
    cuts(view)
    # As far along as one face leans; nothing where it is square.
    sizes(view, *([("", "bottom", first, cut[3], plain(out, job))] if out > 0.0 else []))
    text = saw(job)
    if d.duty.end_cut == "stepped":
        text += "; then file the step, each tongue half the width"
    point = (out / 4, 0.75 * long)
    labels(view, ("right", point, text, True, "end_kerf", d.allowances.kerf))
    assert Polygon(cut).contains(box(*point, *point).centroid)


def coil(job, level, first, last):
    """An edge of a turn wound round the outside by one blank's length, as it is seen: it begins
    at the right-hand end of the bridge, at that level. first, last: angles from the front."""
    d = job.design
    radius, half = d.blank.rough_outside / 2, job.tooling.bridge_length / 2
    theta = half / radius
    turn = math.tau - 2 * theta
    places = [first + (last - first) * at / 36.0 for at in range(37)]
    return [
        (radius * math.sin(place), level + d.blank.length * (place - theta) / turn)
        for place in places
    ]


@pytest.mark.parametrize("name", DOUBLE)
def test_turned_through_the_turns_wind_round_past_the_bridge(name):
    job = settled(name)
    d = job.design
    view = views(job, "ring-turned-through")["through"]
    headed(view, "Seen from outside, the bridge in front")
    radius, half = d.blank.rough_outside / 2, job.tooling.bridge_length / 2
    long, band = d.blank.length, d.blank.band_width
    theta = half / radius
    x, right = radius * math.sin(theta), math.pi / 2
    end = math.tau - theta
    outline = []
    for level in (-band, 0.0, band):
        # In front, on both sides of the bridge.
        outline += [coil(job, level, theta, right), coil(job, level, 3 * right, end)]
    # Behind, the upper edge on the right and the lower on the left stand out of what is in front.
    outline.append(coil(job, band, right, math.pi - theta))
    outline.append(coil(job, -band, math.pi + theta, 3 * right))
    back = [coil(job, level, math.pi - theta, math.pi + theta) for level in (-band, band)]
    for place, side in ((right, radius), (3 * right, -radius)):
        rise = long * (place - theta) / (math.tau - 2 * theta)
        outline.append([(side, rise - band), (side, rise + band)])
    # As wide as it looks from the front: less than along the outside.
    shown = x / half
    out, kerf = lean(d, band) * shown, d.allowances.gap_kerf * shown
    outline.append(
        ring_of(
            [(x, 0.0), (x, long - band), (x - out, long), (-x, long), (-x, band), (out - x, 0.0)]
        )
    )
    outline.append([(x + kerf, -band), (x - out + kerf, 0.0)])
    outline.append([(-x - kerf, long + band), (out - x - kerf, long)])
    lines(view, outline=outline, hidden=back)
    rounds(view)
    cuts(view)
    sizes(
        view,
        (
            "rough_outside_diameter",
            "bottom",
            (-radius, 0.0),
            (radius, 0.0),
            round_size(2 * radius, job),
        ),
    )
    labels(view)
    # A coil that begins at one end of the bridge ends at the other, a blank's length on.
    assert coil(job, 0.0, theta, end)[-1] == pytest.approx((-x, long))


@pytest.mark.parametrize("name", DOUBLE)
def test_turned_through_both_free_ends_stand_beyond_the_bridge(name):
    job = settled(name)
    d = job.design
    view = views(job, "ring-turned-through")["ends"]
    headed(view, "At the bridge, rolled out", 92.0)
    half, band, long = job.tooling.bridge_length / 2, d.blank.band_width, d.blank.length
    kerf, out = d.allowances.gap_kerf, lean(d, band)
    reach = half + max(0.8 * half, 1.2 * band)
    rise = long * (reach - half) / (math.pi * d.blank.rough_outside - 2 * half)
    bridge = [
        (half, 0.0),
        (half, long - band),
        (half - out, long),
        (-half, long),
        (-half, band),
        (out - half, 0.0),
    ]
    right = [[(half, y), (reach, y + rise)] for y in (-band, 0.0, band)]
    left = [[(-x, long - y) for x, y in each] for each in right]
    below = [(half + kerf, -band), (half - out + kerf, 0.0), (half, 0.0)]
    above = [(-x, long - y) for x, y in below]
    waves = [
        broken(reach, rise - band, rise + band, 0.04 * long),
        broken(-reach, long - band - rise, long + band - rise, 0.04 * long),
    ]
    lines(view, outline=[ring_of(bridge), *right, *left, below, above], thin=waves)
    rounds(view)
    cuts(view)
    sizes(view, ("blank_length", "left", (-half, 0.0), (-half, long), plain(long, job)))
    # A narrow sheet has one column of labels.
    aside = "right" if job.paper == "screen" else "left"
    place = (half - out + kerf + 0.3 * band, -0.4 * band)
    labels(
        view,
        ("right", place, "Free end of the upper turn, now below", True),
        (aside, (-place[0], long - place[1]), "Free end of the lower turn, now above", True),
    )
    said = notes(job, "ring-turned-through")[1]
    force, stress = job.acts.through.force, job.acts.through.equivalent
    told = (
        "%s lbf" % digits(force / 4.4482216, 1)
        if job.system == "inch"
        else "%s N" % digits(force, 1)
    )
    assert "free end %s, stress " % told in said and stress > 0.0
