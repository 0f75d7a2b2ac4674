"""The former and the spacer that a ring is set hot by: every line against the tooling."""

import math

import pytest
from scipy.optimize import brentq
from shapely.geometry import Polygon

from drawing.by_hand import (
    axis,
    cross,
    cuts,
    digits,
    halves,
    headed,
    labels,
    lean,
    length,
    lines,
    notes,
    of_tool,
    rectangle,
    ring_of,
    rounds,
    sizes,
    turned_over,
)
from drawing.views import JOBS, ROUND, of_layer, settled_of, views

# Spread by a spacer between ends that lean, on a narrow ring and a wide one.
MORE = {
    "leaning": {"bore": 151.3, "ring_type": "plain", "setting": "spread", "dimensions": "inch"},
    "steep": {
        "bore": 88.9,
        "ring_type": "plain",
        "setting": "spread",
        "end_cut": "angled-60",
        "ring_width": 9.0,
        "radial_thickness": 2.9,
    },
    "wide gap": {
        "bore": 300.0,
        "ring_type": "plain",
        "setting": "spread",
        "ring_width": 5.0,
        "end_cut": "square",
        "soak_time": 2.5,
        "radial_thickness": 9.5,
    },
    "double bound": {"bore": 120.0, "setting": "bound", "soak_time": 1.999},
}


settled = settled_of(MORE)


NAMES = [*JOBS, *MORE]
FORMED = [name for name in NAMES if "former" in settled(name).sizes]
SPREAD = [name for name in NAMES if "spacer" in settled(name).sizes]


def soaked(job):
    """How hot and how long, as the notes say it: minutes below two hours."""
    soak = job.design.soak
    hours = soak.hours
    time = "%s min" % digits(60 * hours, 0) if hours < 2.0 else "%s h" % digits(hours, 1)
    return "Soak %s at %s \u00b0C" % (time, digits(soak.temperature, 0))


@pytest.mark.parametrize("name", FORMED)
def test_the_former_is_a_round_bar_of_its_figures(name):
    job = settled(name)
    radius, long = job.tooling.former_diameter / 2, job.tooling.former_length
    view = views(job, "former")["former"]
    headed(view, "Set former, cut lengthways")
    # The hole is the maker's: about a third of the bar.
    upper = rectangle(0.0, 0.35 * radius, long, radius)
    hole = [[(x, -0.35 * radius), (x, 0.35 * radius)] for x in (0.0, long)]
    lines(
        view,
        outline=[ring_of(upper), ring_of(turned_over(upper)), *hole],
        centre=axis(0.0, long),
    )
    rounds(view)
    cuts(view, *halves(upper))
    size = "former_diameter"
    sizes(
        view,
        (size, "left", (0.0, -radius), (0.0, radius), of_tool(job, "former", size, ROUND)),
        (
            "former_length",
            "top",
            (0.0, radius),
            (long, radius),
            of_tool(job, "former", "former_length"),
        ),
    )
    labels(view, ("right", (long, 0.35 * radius), "Hole or web to suit; break the edges", False))
    said = notes(job, "former")
    assert said[1].startswith(soaked(job))
    assert any("Bind" in each for each in said) == (job.design.duty.setting == "bound")


@pytest.mark.parametrize("name", FORMED)
def test_the_ring_on_its_former_is_open_by_what_the_former_is_larger(name):
    """The sawn ring is as long as before: what it misses of a turn on the former is its gap."""
    job = settled(name)
    d, inner = job.design, job.tooling.former_diameter / 2
    view = views(job, "former")["end"]
    headed(view, "Ring on the former")
    outer = inner + d.blank.set_thickness
    middle = (inner + outer) / 2
    metal = 2.0 * math.pi * d.blank.bored_radius - d.allowances.gap_kerf
    turn = metal / middle
    gap = 2.0 * math.pi * middle - metal
    start = 450.0 - math.degrees(turn) / 2.0 - 180.0
    end = start + math.degrees(turn)
    rounds(
        view,
        ("adjacent", 0.0, 0.0, inner),
        ("outline", 0.0, 0.0, inner, start, end),
        ("outline", 0.0, 0.0, outer, start, end),
    )
    faces = [
        [
            (each * math.cos(math.radians(at)), each * math.sin(math.radians(at)))
            for each in (inner, outer)
        ]
        for at in (start, end)
    ]
    lines(view, outline=faces, centre=cross(1.06 * outer))
    cuts(view)
    sizes(view)
    text = "Gap on the former " + length(gap, job, 1)
    text += ", each turn" if d.duty.turns == 2 else ""
    labels(view, ("right", (0.0, middle), text, False, "former_gap", gap))


def opened(radius, kerf, wanted):
    """Springiness at which ends that were a kerf apart stand that far apart, by bending alone.

    A turn of radius r that loses k(1 - cos psi)/r of its curvature: added up in small steps.
    """

    def gap(k):
        steps = 4000
        half = math.pi * radius - kerf / 2.0
        turned, out = 0.0, 0.0
        for at in range(steps):
            psi = math.pi - (at + 0.5) / steps * (math.pi - kerf / 2.0 / radius)
            bend = (1.0 - k * (1.0 - math.cos(psi))) / radius * half / steps
            out += math.cos(turned + bend / 2.0) * half / steps
            turned += bend
        return 2.0 * out

    return brentq(lambda k: gap(k) - wanted, 0.0, 0.5, xtol=1e-7)


@pytest.mark.parametrize("name", SPREAD)
def test_the_ring_is_held_open_by_the_spacer_between_its_ends(name):
    job = settled(name)
    d, t = job.design, job.tooling
    view = views(job, "spacer")["ring"]
    headed(view, "Ring with the spacer in its gap")
    thick, radius, wide = d.blank.set_thickness, d.blank.bored_radius, t.spacer_width
    ring, block = [one.points for one in of_layer(view, "outline")]
    count = len(ring) // 2
    outside, inside = ring[:count], ring[: count - 1 : -1]
    middle = [((a + c) / 2, (b + e) / 2) for (a, b), (c, e) in zip(outside, inside, strict=True)]
    # Of its own thickness everywhere, its middle as long as it was sawn.
    for one, other in zip(outside, inside, strict=True):
        assert math.dist(one, other) == pytest.approx(thick)
    long = sum(math.dist(*pair) for pair in zip(middle, middle[1:], strict=False))
    assert long == pytest.approx(2.0 * math.pi * radius - d.allowances.gap_kerf, rel=1e-4)
    assert Polygon(outside).area > Polygon(inside).area
    (x1, y1), (x2, y2) = middle[0], middle[-1]
    assert y1 == pytest.approx(y2) and x1 == pytest.approx(-x2)
    assert math.dist(middle[0], middle[-1]) == pytest.approx(wide, rel=1e-3)
    # Bent as under even pressure: the widest place across stands where a sum of small bends has it.
    k = opened(radius, d.allowances.gap_kerf, wide)
    steps, turned, x, y, widest, lowest = 4000, 0.0, 0.0, 0.0, 0.0, 0.0
    for at in range(steps):
        psi = math.pi - (at + 0.5) / steps * (math.pi - d.allowances.gap_kerf / 2.0 / radius)
        part = (math.pi * radius - d.allowances.gap_kerf / 2.0) / steps
        bend = (1.0 - k * (1.0 - math.cos(psi))) / radius * part
        x += math.cos(turned + bend / 2.0) * part
        y += math.sin(turned + bend / 2.0) * part
        turned += bend
        widest, lowest = max(widest, x), max(lowest, y)
    xs, ys = [x for x, _ in middle], [y for _, y in middle]
    assert max(xs) - min(xs) == pytest.approx(2.0 * widest, rel=1e-4)
    assert max(ys) - min(ys) == pytest.approx(lowest, rel=1e-4)
    # The block is as wide as the gap half-way through the ring, wider outside by its taper.
    reach = 1.3 * thick
    out = 2.0 * reach * math.tan(math.radians(t.spacer_taper / 2.0))
    wanted = [
        (-(wide - out) / 2, y1 - reach),
        ((wide - out) / 2, y1 - reach),
        ((wide + out) / 2, y1 + reach),
        (-(wide + out) / 2, y1 + reach),
    ]
    assert out > 0.0
    lines(view, outline=[ring_of(ring), ring_of(wanted)], centre=cross(1.15 * radius))
    cuts(view, (wanted, 135.0, 2.5))
    rounds(view)
    sizes(view)
    labels(view)
    said = notes(job, "spacer")
    assert "open outwards by %s\u00b0" % digits(t.spacer_taper, 1) in said[0]
    assert said[1].startswith(soaked(job))


@pytest.mark.parametrize("name", SPREAD)
def test_the_spacer_rolled_out_lies_along_the_ends_and_the_ring_in_its_seat(name):
    job = settled(name)
    d, t = job.design, job.tooling
    view = views(job, "spacer")["seats"]
    headed(view, "Spacer from outside, rolled out", 80.0)
    wide, seat = t.spacer_width, t.spacer_seat
    # Both faces lean as the ends do; half of it either way from the middle.
    out = lean(d, seat)
    block = [
        (-(wide + out) / 2, 0.0),
        ((wide - out) / 2, 0.0),
        ((wide + out) / 2, seat),
        ((out - wide) / 2, seat),
    ]
    assert Polygon(block).area == pytest.approx(wide * seat)
    reach = (wide + out) / 2 + max(seat, wide / 2)
    cheek = max(2.0, 0.3 * seat)
    cheeks = [ring_of(rectangle(-reach, y, reach, y + cheek)) for y in (-cheek, seat)]
    low = (seat - d.blank.length) / 2
    high = low + d.blank.length
    assert low > 0.0
    left, right = (-(wide + out) / 2, (out - wide) / 2), ((wide - out) / 2, (wide + out) / 2)
    ends = [
        [(bottom, low), (top, high), (far, high), (far, low)]
        for (bottom, top), far in ((left, -0.94 * reach), (right, 0.94 * reach))
    ]
    lines(view, outline=[ring_of(block), *cheeks], adjacent=ends)
    cuts(view, (block, 135.0, 2.5))
    rounds(view)
    sizes(
        view,
        ("spacer_width", "bottom", block[0], block[1], of_tool(job, "spacer", "spacer_width")),
        (
            "spacer_seat",
            "left",
            (-reach, 0.0),
            (-reach, seat),
            of_tool(job, "spacer", "spacer_seat"),
        ),
    )
    labels(view)
