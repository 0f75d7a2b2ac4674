"""The ring of a survey is judged where it stands: tightest, widest, and as drawn, each check once.

A made ring keeps its metal. Carried into another bore its gap opens or closes by pi times the
difference of the diameters, while the gap of the free ring stays what it is.
"""

import pytest

from core.test_bore_survey import bore, gauged, survey
from ringwright.core.measuring import survey_places
from ringwright.core.ring.design import settle

PLAIN = {"bore": 80.0, "ring_type": "plain", "closed_gap": 0.5}


def stands(where, **request):
    design, _ = settle(request)
    return design, survey_places.standing(design, where, request)


@pytest.mark.parametrize("ring_type", ["plain", "double-turn"])
@pytest.mark.parametrize(
    ("where", "gap"),
    # 0.5 - 0.1 pi, 0.5 + 0.1 pi; 0.2 mm tighter its ends would have to overlap: they butt.
    [(79.9, 0.1858407), (80.1, 0.8141593), (79.8, 0.0)],
)
def test_in_another_bore_the_gap_follows_and_the_free_gap_stays(ring_type, where, gap):
    as_drawn, there = stands(where, **{**PLAIN, "ring_type": ring_type})
    assert there.duty.bore == where
    assert there.duty.closed_gap == pytest.approx(gap, abs=1e-6)
    free = 0.5 + as_drawn.spring.gap_change
    assert there.duty.closed_gap + there.spring.gap_change == pytest.approx(free, rel=1e-9)
    # It is still closed from free: the pressure goes very nearly with that change of gap.
    part = there.spring.gap_change / as_drawn.spring.gap_change
    ratio = there.spring.wall_pressure / as_drawn.spring.wall_pressure
    assert ratio == pytest.approx(part, rel=0.02)
    assert (ratio < 1.0) is (where > 80.0)


def test_its_sections_go_with_it():
    """In a bore of 100 mm a ring would be drawn thicker and wider: this one is made."""
    as_drawn, there = stands(80.15, **PLAIN)
    for name in ("groove_width", "groove_depth", "section.thickness", "section.width"):
        one, other = as_drawn, there
        for part in name.split("."):
            one, other = getattr(one, part), getattr(other, part)
        assert one == other, name
    assert there.allowances.kerf == as_drawn.allowances.kerf
    assert there.allowances.clamped_gap == 0.0


def test_the_piston_goes_along_and_never_fills_more_than_the_bore():
    as_drawn, there = stands(79.95, **PLAIN)
    assert there.piston_diameter == as_drawn.piston_diameter < 79.95
    _, there = stands(79.9, **PLAIN, piston_diameter=79.96)
    assert 79.8999 < there.piston_diameter < 79.9


def checks(taper, heights=(0.0, 100.0), **request):
    """(check, outcome, why) of a round bore's survey that is to be run as it is."""
    answer = survey(gauged(bore(), heights=heights, taper=taper), ring_type="plain", **request)
    assert answer["verdict"] == "run"
    return [(row["check"], row["outcome"], row["why"]) for row in answer["findings"]]


def stopped(rows):
    return [check for check, outcome, _ in rows if outcome == "stop"]


@pytest.mark.parametrize(
    ("heights", "said"),
    [
        ((0.0,), ["end-gap"]),
        ((0.0, 100.0), ["gap-breathes"]),
        ((0.0, 60.0, 100.0), ["gap-breathes"]),
    ],
)
def test_ends_that_butt_are_told_once_along_the_bore_or_at_the_one_height(heights, said):
    assert stopped(checks(0.1, heights, closed_gap=0.05)) == said


def test_a_gap_too_wide_is_told_of_the_one_height_too():
    """Hot, over 0.012 of 80 mm is 0.96: 1.3 mm in the cold is past that."""
    assert stopped(checks(0.1, (0.0,), closed_gap=1.3)) == ["gap-wide"]
    assert stopped(checks(0.1, closed_gap=1.3)) == ["gap-breathes-wide"]


def test_a_piston_that_seizes_in_the_tightest_place_alone_is_told_of_that_place():
    """Iron in iron at steam heat with a half-warm wall: about 0.06 mm on 80. A piston 0.08 small
    at the middle of a taper of 0.14 is 0.01 small where it is tightest."""
    rows = checks(0.14, piston_diameter=79.92)
    assert stopped(rows) == ["piston-seizes"]
    (why,) = [why for check, _, why in rows if check == "piston-seizes"]
    assert why.startswith("In the tightest place, 79.93 mm")
    assert stopped(checks(0.14, piston_diameter=79.8)) == []


def test_a_ring_that_goes_slack_in_the_widest_place_alone_is_told_of_that_place():
    """Below 0.015 N/mm2 a ring lifts off. Drawn for 0.0152, it has a gap of some 6 mm free; in a
    place 0.07 mm wider 0.22 mm of that are gone, a thirtieth: 0.0147."""
    rows = checks(0.14, wall_pressure=0.0152)
    assert stopped(rows) == ["too-slack"]
    (why,) = [why for check, _, why in rows if check == "too-slack"]
    assert why.startswith("In the widest place, 80.07 mm")


def test_what_stops_it_as_drawn_is_not_told_again_of_each_place():
    rows = checks(0.14, wall_pressure=0.01)
    assert stopped(rows) == ["too-slack"]
    (why,) = [why for check, _, why in rows if check == "too-slack"]
    assert why.startswith("The ring presses with only 0.010")
    assert stopped(checks(0.0, wall_pressure=0.01)) == ["too-slack"]


def test_a_bore_that_will_be_true_has_no_tightest_place():
    """Out of true by 0.5 mm it is bored out: the piston then has the room that sizing gives it."""
    answer = survey(
        gauged(bore(), heights=(0.0, 100.0), taper=0.5), ring_type="plain", piston_diameter=79.9
    )
    assert answer["verdict"] == "bore-out"
    assert "piston-seizes" not in [row["check"] for row in answer["findings"]]


def test_a_ring_whose_spring_the_taper_takes_up_is_told_so():
    """9 pi/4 p d (d - a)^3/(E a^3) is 0.18 mm of spring for 0.002 N/mm2 and 3 mm; the widest place,
    0.07 mm over the middle, takes pi 0.07, 0.22 mm. As drawn it is slack as well, told once."""
    rows = checks(0.14, wall_pressure=0.002, radial_thickness=3.0)
    (why,) = [why for check, _, why in rows if check == "too-slack"]
    assert why.startswith("The ring presses with only 0.002")
    # Slack nowhere but in the widest place: a ring of 20 mm in a bore of 300 that wears to 0.6 mm.
    # Its spring is 0.91 mm, pi 0.297 are 0.93.
    rows = survey(
        [
            {"height": height, "direction": angle, "diameter": 300.0 + size}
            for height, size in ((0.0, -0.297), (200.0, 0.297))
            for angle in (0.0, 45.0, 90.0)
        ],
        ring_type="plain",
        radial_thickness=20.0,
        wall_pressure=0.0153,
    )["findings"]
    (row,) = [row for row in rows if row["check"] == "too-slack"]
    assert row["outcome"] == "stop"
    assert row["why"].endswith("it does not press there.")
    assert row["why"].startswith("In the widest place, 300.30 mm")
    assert (row["value"]["value"], row["limit"]["value"]) == (0.0, 0.015)
