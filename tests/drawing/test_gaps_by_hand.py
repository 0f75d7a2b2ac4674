"""Which gap is which: every line, arrow and size of the four pictures, worked by hand."""

import math

import pytest

from drawing.by_hand import (
    broken,
    cuts,
    headed,
    labels,
    lean,
    length,
    lines,
    notes,
    rounds,
    sizes,
)
from drawing.views import JOBS, of_layer, settled_of, views
from ringwright.core.drawing.entities import Fill
from ringwright.core.ring.allowances import CUT_ANGLES

# Too little gap for the heat, and none for a feeler; just enough for one.
MORE = {
    "tight": {"bore": 79.375, "closed_gap": 0.03},
    "none": {"bore": 61.7, "ring_type": "plain", "closed_gap": 0.0, "steam_pressure": 1.4},
    "hair": {"bore": 79.375, "closed_gap": 0.0408, "dimensions": "inch"},
    "sixty": {"bore": 90.0, "ring_type": "plain", "end_cut": "angled-60", "dimensions": "inch"},
}
NAMES = [*JOBS, *MORE]
# How far apart the ends are drawn, over the width of a turn: to be told apart, not to scale.
SHARES = {"free": 1.1, "cold": 0.45, "hot": 0.18, "feeler": 0.45}


settled = settled_of(MORE)


def said_gaps(job):
    """What each picture says, worked from the sizes of the job."""
    d = job.design
    duty, cold = d.duty, d.duty.closed_gap
    ring = 1.0 + duty.ring_material.expansion * (duty.temperature - duty.shop)
    wall = 1.0 + duty.cylinder.expansion * (duty.wall_temperature - duty.shop)
    # The bore grows with its wall, the metal round it with the ring.
    hot = math.pi * duty.bore * wall - (math.pi * duty.bore - cold) * ring
    read = job.tooling.feeler_gap
    if read <= 0.0:
        read = cold * math.sin(math.radians(CUT_ANGLES[duty.end_cut]))
    return {"free": d.spring.gap_change + cold, "cold": cold, "hot": max(hot, 0.0), "feeler": read}


@pytest.mark.parametrize("name", NAMES)
def test_each_gap_is_drawn_and_named(name):
    job = settled(name)
    d = job.design
    wide, out, gaps = d.turn_width, lean(d, d.turn_width), said_gaps(job)
    found = views(job, "gaps")
    assert list(found) == list(SHARES)
    titles = {
        "free": "Free gap: the ring lies on the bench",
        "cold": "Closed gap, cold: in the bore in the shop",
        "hot": "Closed gap, hot: what the heat leaves",
        "feeler": "Feeler: square to the cut",
    }
    for key, view in found.items():
        headed(view, titles[key], 60.0)
        gap, reach = SHARES[key] * wide, out / 2 + 1.6 * wide
        left = [(-reach, 0.0), (-(gap + out) / 2, 0.0), ((out - gap) / 2, wide), (-reach, wide)]
        waves = [broken(x, 0.0, wide, 0.04 * wide) for x in (-reach, reach)]
        blades = feeler(d, gap) if key == "feeler" else []
        # The right-hand end is the left-hand one turned round by half a turn.
        right = [(-x, wide - y) for x, y in left]
        lines(view, outline=[left, right], thin=[*waves, *blades])
        rounds(view)
        cuts(view)
        sizes(view)
        text = "%s along the ring" % length(gaps[key], job)
        if key == "feeler":
            text = "Feeler %s, at the outer edge" % length(gaps[key], job)
        labels(view, ("right", (0.0, wide / 2), text, True))
    assert ("Each of the two turns" in notes(job, "gaps")[-1]) == (d.duty.turns == 2)


def feeler(d, gap):
    """Two faces of the blade along the cut, and an arrow from either side to its end's face."""
    wide, turn = d.turn_width, math.radians(CUT_ANGLES[d.duty.end_cut])
    # The distance of two parallel lines that are `gap` apart along the ring.
    apart = gap * math.sin(turn)

    def point(along, aside):
        return (
            along * math.cos(turn) + aside * math.sin(turn),
            wide / 2 + along * math.sin(turn) - aside * math.cos(turn),
        )

    long = 0.62 * wide / math.sin(turn)
    rows = [[point(-0.3 * long, 0.4 * each), point(long, 0.4 * each)] for each in (-apart, apart)]
    for sign in (-1.0, 1.0):
        far = sign * (apart / 2 + 0.55 * wide)
        rows.append([point(0.0, far), point(0.0, sign * apart / 2)])
    return rows


@pytest.mark.parametrize("name", NAMES)
def test_arrows_of_the_feeler_point_at_each_other(name):
    job = settled(name)
    d = job.design
    view = views(job, "gaps")["feeler"]
    heads = [one.points for one in of_layer(view, "thin") if type(one) is Fill]
    shafts = feeler(d, 0.45 * d.turn_width)[2:]
    for head, (_, tip) in zip(heads, shafts, strict=True):
        assert head[0] == pytest.approx(tip)
    for key, other in views(job, "gaps").items():
        assert key == "feeler" or not [one for one in other.shapes if type(one) is Fill]
