"""Sizes of the tools by hand from the blank and the ring, and what is said of tools on the shelf at
each limit, a hair on either side of it.

Common practice, no source, where a number stands here: the closing ring leaves the finishing
allowance; the spigot 0.1 mm of play; shoulder and end plate stay 0.3 of the wall inside the
outside, or a half; a pot opens the gap by 0.1 mm more than the closing ring.
"""

import math

import pytest

from core.test_tooling import answer, outcome, value
from core.test_tools_hold import KINDS, settled
from ringwright.core.ring import soak

HAIR = 0.001
PLAIN = {"bore": 80.0, "ring_type": "plain", "radial_thickness": 3.0}


@pytest.mark.parametrize("request_", KINDS, ids=str)
def test_sizes_of_the_tools(request_):
    d, t = settled(request_)
    finish, wall, width = d.blank.finish_outside, d.section.thickness, d.section.width
    closing = finish + d.allowances.finishing
    banded = request_.get("finishing") == "band"
    if banded:
        # 10 mm are left open between the lugs, on the closed ring.
        assert t.band_length == pytest.approx(math.pi * closing - 10.0)
        assert t.closing_ring_bore is None and t.closing_ring_width is None
    else:
        assert t.closing_ring_bore == pytest.approx(closing)
        assert t.closing_ring_width == pytest.approx(d.blank.length)
        assert t.clamp_mandrel_diameter == pytest.approx(finish - 2.0 * wall - 0.1)
        assert t.band_length is None
    assert t.pot_bore == pytest.approx(closing + 0.1 / math.pi)
    assert t.pot_depth == pytest.approx(0.75 * width)
    # Bored while clamped, the rest of its side is for the clamp that holds it by its outside.
    bored = d.allowances.inside > 0.0
    assert t.end_plate_diameter == pytest.approx(finish - (1.0 if bored else 0.6) * wall)
    assert t.clamp_ring_bore == (pytest.approx(t.end_plate_diameter + 0.2) if bored else None)
    # Shorter than the ring, so that the plate bears on it: by 0.3 mm, less for a narrow one.
    assert t.spigot_length == pytest.approx(width - min(0.3, 0.06 * width))
    assert t.part_length == pytest.approx(d.blank.length + 2.0 * d.allowances.facing)
    if t.former_diameter is None:
        assert t.spacer_seat == pytest.approx(d.blank.length + 0.1)
        assert t.former_length is None
    else:
        # A millimetre beyond the ring at each end; a double-turn ring lies there inside out.
        span = d.blank.length
        if d.duty.turns == 2:
            span = d.blank.length + 2.0 * d.blank.band_width
        assert t.former_length == pytest.approx(span + 2.0)
    if d.duty.turns == 2:
        assert t.step == d.allowances.slit
        assert t.slit_mandrel_diameter == pytest.approx(d.blank.bored_inside)
        assert t.slit_mandrel_length == pytest.approx(d.blank.length - 0.5)
        assert t.slit_relief_width == pytest.approx(d.allowances.slit + 1.0)
        assert t.slit_relief_depth == pytest.approx(1.0)


@pytest.mark.parametrize("ring", [PLAIN, {"bore": 80.0, "radial_thickness": 2.4}])
@pytest.mark.parametrize(("off", "said"), [(-HAIR, "stop"), (HAIR, None)])
def test_a_pot_in_which_the_ends_butt(ring, off, said):
    """Sawn, the neutral line is the circle less the cut: in a pot it closes where pi (rough - pot)
    is the cut."""
    d, _ = settled(ring)
    butts = d.blank.rough_outside - d.allowances.gap_kerf / math.pi
    assert outcome(answer(**ring, shelf_pot=butts + off), "pot") == said


@pytest.mark.parametrize("ring", [PLAIN, {"bore": 80.0, "radial_thickness": 2.4}])
@pytest.mark.parametrize(("off", "said"), [(-HAIR, None), (HAIR, "stop")])
def test_a_pot_larger_than_the_free_ring(ring, off, said):
    """The free ring stands open by the cut and what the heat has set: pi (pot - rough) = m."""
    d, _ = settled(ring)
    free = d.blank.rough_outside + d.spring.gap_change / math.pi
    assert outcome(answer(**ring, shelf_pot=free + off), "pot") == said


@pytest.mark.parametrize(
    ("play", "said"),
    [(-HAIR, "stop"), (HAIR, None), (0.75 - HAIR, None), (0.75 + HAIR, "watch")],
)
def test_play_of_the_spigot(play, said):
    """A wall of 3 mm: up to a quarter of it, and never larger than the ring is inside."""
    d, _ = settled(PLAIN)
    inside = d.blank.finish_outside - 2.0 * 3.0
    found = answer(**PLAIN, shelf_clamp_mandrel=inside - play)
    assert outcome(found, "clamp-mandrel") == said
    if said:
        (row,) = [row for row in found["findings"] if row["check"] == "clamp-mandrel"]
        assert "%.2f mm" % (inside - 0.1) in row["remedy"]


def test_a_small_ring_s_usual_spigot_is_not_watched():
    """A quarter of 0.3 mm is less than the play that every spigot has."""
    small = {"bore": 10.5, "ring_type": "plain", "radial_thickness": 0.3, "wall_pressure": 0.02}
    assert outcome(answer(**small), "clamp-mandrel") is None


@pytest.mark.parametrize(("off", "said"), [(-HAIR, "watch"), (HAIR, None)])
def test_a_gap_that_a_feeler_cannot_be_trusted_with(off, said):
    """Ends sawn parallel lean when shut: their edges are a1 (s - gap)/(2 r) nearer. 0.03 is left
    where gap = (0.03 + a1 s/2r)/(1 + a1/2r)."""
    square = {**PLAIN, "end_cut": "square", "end_kerf": 0.8}
    lean = 3.0 / (80.0 - 3.0)
    gap = (0.03 + lean * 0.8) / (1.0 + lean)
    found = answer(**square, closed_gap=gap + off)
    assert outcome(found, "feeler-gap") == said
    assert value(found, "feeler_gap") == pytest.approx(0.03 + off * (1.0 + lean), rel=1e-9)


@pytest.mark.parametrize(("width", "said"), [(3.79, "watch"), (3.81, None)])
def test_a_tongue_under_one_and_a_half_millimetres(width, said):
    """(3.8 - 0.8)/2 = 1.5."""
    ring = {**PLAIN, "end_cut": "stepped", "end_kerf": 0.8, "ring_width": width}
    assert outcome(answer(**ring), "tongue") == said


@pytest.mark.parametrize(
    ("slit", "said"), [(1.99, None), (2.01, "watch"), (3.99, "watch"), (4.0, "stop")]
)
def test_a_slit_over_half_the_ring(slit, said):
    found = answer(bore=80.0, ring_width=4.0, slit_width=slit)
    assert outcome(found, "slit-width") == said


@pytest.mark.parametrize(
    ("cut", "bands"), [("angled-45", 2.0), ("angled-60", 2.0 / math.sqrt(3.0)), ("square", 1.5)]
)
@pytest.mark.parametrize(("off", "said"), [(-HAIR, "stop"), (HAIR, "good")])
def test_a_bridge_that_holds_both_end_cuts_and_twist(cut, bands, off, said):
    """Two cuts of b/tan A each; one and a half bands keep its twist below a turn's bending."""
    ring = {"bore": 80.0, "ring_width": 5.0, "end_cut": cut}
    d, t = settled(ring)
    shortest = max(bands, 1.5) * d.blank.band_width
    assert outcome(answer(**ring, bridge_length=shortest + off), "bridge") == said
    # By itself it leaves two millimetres more for the hand that saws.
    assert t.bridge_length == pytest.approx(shortest + 2.0)


@pytest.mark.parametrize(("off", "said"), [(-HAIR, "good"), (HAIR, "stop")])
def test_a_saw_reaches_through_the_wall_and_half_a_millimetre(off, said):
    d, _ = settled({"bore": 80.0})
    wall = 0.5 * (d.blank.rough_outside - d.blank.bored_inside)
    # The collar stays 1.0 mm clear of the work.
    collar = 32.0 - 2.0 * (wall + 0.5 + 1.0)
    found = answer(bore=80.0, cutter_diameter=32.0, cutter_collar=collar + 2.0 * off)
    assert outcome(found, "cutter-reach") == said


def test_soaks_at_the_ends_of_what_the_metal_stands():
    """Which those are, the tests of the soak hold to what was published."""
    window = soak.soak_range("iron")
    for temperature, said in (
        (window.coldest - 0.5, "soak-cold"),
        (window.coldest, "soak"),
        (window.hottest, "soak"),
        (window.hottest + 0.5, "soak-hot"),
    ):
        found = answer(bore=80.0, soak_temperature=temperature)["findings"]
        told = {row["check"] for row in found} & {"soak", "soak-cold", "soak-hot"}
        assert told == {said}, temperature


def test_relief_given_is_not_called_uncertain():
    asked = {"bore": 80.0, "soak_temperature": 500.0, "soak_time": 1.0}
    spread = settled(asked)[0].soak.relief
    assert spread.high - spread.low > soak.WIDE_RELIEF
    assert outcome(answer(**asked), "relief") == "watch"
    assert outcome(answer(**asked, relief=0.7), "relief") is None


def test_wall_left_for_a_ring_that_a_band_leaves_out_of_round():
    """One turn bound: largest less smallest radius max(phi sin phi)/3 of kappa0 r^2. The allowance
    at which the finding turns leaves just that."""
    ring = {"bore": 150.0, "ring_type": "plain", "setting": "bound", "finishing": "band"}
    low, high = 0.05, 3.0
    for _ in range(40):
        middle = 0.5 * (low + high)
        said = outcome(answer(**ring, finishing_allowance=middle), "band-allowance")
        low, high = (middle, high) if said == "stop" else (low, middle)
    d, _ = settled({**ring, "finishing_allowance": high})
    radius = 0.5 * (150.0 - d.section.thickness)
    oval = max(x * math.sin(x) for x in [i * math.pi / 5000 for i in range(5001)]) / 3.0
    left = d.blank.set_thickness - d.section.thickness
    # The form of the allowance carries three digits.
    assert left == pytest.approx(oval * d.spring.curvature_change * radius**2, rel=0.006)


def test_a_collar_that_leaves_the_saw_no_reach_is_said_to_leave_none():
    found = answer(bore=80.0, cutter_diameter=20.0, cutter_collar=19.0)["findings"]
    (row,) = [row for row in found if row["check"] == "cutter-reach"]
    assert row["outcome"] == "stop"
    assert "reaches only 0.00 mm" in row["why"]
    assert row["value"]["value"] == pytest.approx(0.5 - 1.0)


@pytest.mark.parametrize(
    ("end_cut", "slope"), [("angled-45", 1.0), ("angled-60", 1.0 / math.sqrt(3.0))]
)
def test_how_far_an_angled_end_runs(end_cut, slope):
    """Across one band of a double-turn blank, the whole of a plain ring; square not at all."""
    ring = {"bore": 80.0, "ring_width": 5.0, "end_cut": end_cut}
    d, t = settled(ring)
    assert t.scarf_length == pytest.approx(d.blank.band_width * slope)
    plain = settled({**ring, "ring_type": "plain"})[1]
    assert plain.scarf_length == pytest.approx(5.0 * slope)
    square = {**ring, "ring_type": "plain", "end_cut": "square"}
    assert settled(square)[1].scarf_length is None
