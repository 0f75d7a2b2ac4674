"""Texture and form: the sum as printed and by a drawn profile; what card and drawing ask for."""

import math
import re
from types import SimpleNamespace

import numpy
import pytest

from ringwright.core import calculations
from ringwright.core.making import finish
from ringwright.core.making.machining_table import FEEDS
from ringwright.core.making.part_sizes import bare
from ringwright.core.ring.design import settle

# ISO 1302, grades N1 to N12 as three pages print them (read) [micrometres].
GRADES = (0.025, 0.05, 0.1, 0.2, 0.4, 0.8, 1.6, 3.2, 6.3, 12.5, 25.0, 50.0)


def test_textures_asked_for_are_grades_of_the_standard():
    at = GRADES.index(finish.STEPS[0])
    assert GRADES[at : at + len(finish.STEPS)] == finish.STEPS


def test_texture_as_printed():
    """Feed 0.2 mm, nose 0.8 mm: Ra 1.6 by f^2/(31.2 r), read; four times it at twice the feed."""
    assert finish.turned_ra(0.2, 0.8) == pytest.approx(1.60, rel=0.03)
    assert finish.turned_ra(0.4, 0.8) == pytest.approx(4.0 * finish.turned_ra(0.2, 0.8))
    assert finish.turned_ra(0.2, 0.4) == pytest.approx(2.0 * finish.turned_ra(0.2, 0.8))


@pytest.mark.parametrize("feed", [0.03, 0.08, 0.15])
@pytest.mark.parametrize("nose", [0.4, 0.8])
def test_texture_of_a_drawn_profile(feed, nose):
    """Arcs of the nose side by side: mean departure from their middle line, by numbers alone."""
    x = (numpy.arange(20000) + 0.5) / 20000.0 * feed - 0.5 * feed
    high = nose - numpy.sqrt(nose * nose - x * x)
    mean = 1000.0 * numpy.abs(high - high.mean()).mean()
    assert finish.turned_ra(feed, nose) == pytest.approx(mean, rel=0.04)


def test_the_texture_asked_for_is_what_the_cut_leaves_in_the_shop():
    """No less than 1.5 times the sum (read: measured is 1.5 to 3 times), never twice too much."""
    for feed in numpy.linspace(0.04, 0.3, 60):
        left, asked = finish.turned_ra(feed), finish.texture(feed)
        assert 1.5 * left < asked <= max(0.8, 4.0 * left + 1e-9)
    values = [finish.texture(feed) for feed in numpy.linspace(0.01, 0.5, 200)]
    assert values == sorted(values)
    # Finishing feeds of the card keep to what the drawings ask where limits stand.
    assert all(finish.texture(feed) <= 1.6 for feed in FEEDS["turn-finish"][:2])


@pytest.mark.parametrize(
    ("feed", "asked"),
    [
        # Twice f^2/(32 x 0.4 mm): 0.1 mm leaves 1.5625, which is asked as 1.6; a grade's own edge
        # is at f^2 = 6.4 mm times the grade in micrometres, 0.0064 x 0.8 = 0.0716^2 and so on.
        (0.0714, 0.8), (0.0717, 1.6), (0.1, 1.6), (0.1009, 1.6), (0.1014, 3.2), (0.1428, 3.2),
        (0.1433, 6.3), (0.2005, 6.3), (0.2010, 12.5), (0.2825, 12.5), (0.2832, 25.0),
        (0.3996, 25.0), (0.6, 25.0),
    ],
)  # fmt: skip
def test_a_feed_ends_in_the_next_grade(feed, asked):
    assert finish.texture(feed) == asked


def test_a_grade_is_asked_up_to_its_own_figure():
    """0.16 x 0.16/(32 x 0.4) = 0.002: twice that is 4 micrometres, 6.3; at 1.6 the edge itself."""
    assert finish.turned_ra(0.16) == pytest.approx(2.0)
    assert finish.texture(0.16) == 6.3


def test_edges_and_sides_by_practice():
    """Common practice, no source: edges broken by a tenth; sides rubbed to 0.8, turned 1.6."""
    assert (finish.EDGES, finish.SIDES, finish.TURNED_SIDES) == (0.1, 0.8, 1.6)
    assert finish.broken_edges().value == 0.1


@pytest.mark.parametrize(("play", "flat"), [(0.048, 0.012), (0.011, 0.00275), (0.004, 0.0025)])
def test_sides_are_out_by_a_quarter_of_their_play_and_no_closer_than_can_be_felt(play, flat):
    """A play of less than a hundredth counts as a hundredth."""
    design = settle({"bore": 80.0, "ring_width": 3.2, "groove_width": 3.2 + play})[0]
    assert finish.out_of_flat(design) == pytest.approx(flat, abs=1e-9)
    assert finish.flat_sides(design).value == pytest.approx(flat, abs=1e-9)


def test_the_last_size_of_a_finishing_cut_says_its_texture_and_no_other():
    """Feed 0.15 mm: twice 0.0225/12.8 is 3.5 micrometres, asked as 6.3."""
    sizes = [bare("outside", "turned outside", 81.0), bare("bored", "bored", 74.6)]
    made = SimpleNamespace(operation="bore", feed=SimpleNamespace(value=0.15))
    first, last = finish.textured(sizes, made)
    assert first == sizes[0] and last.label == "bored, Ra 6.3"
    assert (last.name, last.value, last.reading) == (sizes[1].name, 74.6, sizes[1].reading)
    roughing = SimpleNamespace(operation="turn-rough", feed=made.feed)
    assert finish.textured(sizes, roughing) == sizes
    assert finish.textured([], made) == []


def card(**more):
    return calculations.run("route", {"bore": 80.0, **more})["operations"]


def row(rows, key):
    return next(one for one in rows if one["key"] == key)


def size(operation, name):
    return next(one for one in operation["sizes"] if one["name"] == name)


@pytest.mark.parametrize("machine", ["light", "rigid"])
@pytest.mark.parametrize("ring_type", ["plain", "double-turn"])
def test_the_card_ends_each_surface_in_its_texture(ring_type, machine):
    rows = card(ring_type=ring_type, machine=machine)
    for key, name in (
        ("turn-finish", "finish_outside_diameter"),
        ("bore", "bored_inside_diameter"),
    ):
        operation = row(rows, key)
        said = size(operation, name)["label"]
        ra = float(re.search(r"Ra (\d+\.\d)$", said)[1])
        assert ra == finish.texture(operation["feed"]["value"]) <= 1.6
    facing = row(rows, "face-step" if ring_type == "double-turn" else "face-sides")
    assert size(facing, "ring_width")["label"].endswith("Ra 0.8")
    assert "emery" in facing["text"]
    assert size(row(rows, "dress-ends"), "edge_break")["value"] == finish.EDGES


def test_sides_lie_flat_within_a_part_of_their_play():
    for bore in (20.0, 80.0, 400.0):
        rows = card(bore=bore, ring_type="plain")
        sized = calculations.run("sizing", {"bore": bore, "ring_type": "plain"})["figures"]
        flat = size(row(rows, "face-sides"), "side_flatness")["value"]
        assert flat == pytest.approx(0.25 * sized["side_clearance"]["value"])
        assert math.isfinite(flat) and flat > 0.0


def test_plastic_is_not_rubbed_on_emery():
    rows = card(ring_type="plain", ring_material="filled-ptfe-carbon")
    facing = row(rows, "face-sides")
    assert "emery" not in facing["text"]
    assert size(facing, "ring_width")["label"].endswith("Ra 1.6")


def test_the_drawing_of_the_ring_says_the_same():
    drawn = calculations.run("drawing", {"part": "ring-closed", "bore": 80.0})
    said = str(drawn)
    assert "Sides Ra 0.8" in said and "edges broken" in said
