"""Cuts of the sawn ring at the limit of a pass, by hand: sides, the clamped outside, the inside.

On a light lathe 0.5 mm a cut facing and boring, 0.75 mm roughing; a rigid one takes 1 mm and 2 mm
(read, see published/test_machining_table.py). The last 0.15 mm of the outside are two light cuts:
common practice, no source.
"""

import math

import pytest

from core.test_tools_hold import settled
from ringwright.core.making.route_ring import Work
from ringwright.core.making.route_rows import Bench
from ringwright.core.walk.limits import card_limits

PLAIN = {"bore": 80.0, "ring_type": "plain", "ring_width": 4.0}
DOUBLE = {"bore": 80.0, "ring_width": 5.0}


def worked(request, machine="light", blank=None, **allowances):
    """The Work of a job with some of its blank and allowances put in the place of its own."""
    design, tools = settled(request)
    held = card_limits(design, machine)
    design = design._replace(
        blank=design.blank._replace(**(blank or {})),
        allowances=design.allowances._replace(**allowances),
    )
    return Work(design, tools, Bench(design, {"machine": machine}), held)


def rows(work):
    return {row.key: row for row in work.finishing()}


@pytest.mark.parametrize(
    ("over", "light", "rigid"),
    [
        # On the diameter: twice 0.15 and as many roughing cuts; at least one.
        (0.2, 3, 3),
        (0.3, 3, 3),
        (1.8, 3, 3),
        (1.802, 4, 3),
        (3.3, 4, 3),
        (3.302, 5, 3),
        (4.3, 5, 3),
        (4.302, 5, 4),
    ],
)
def test_the_outside_is_roughed_and_finished_in_two_light_cuts(over, light, rigid):
    sized = {"finish_outside": 80.0, "rough_outside": 80.0 + over}
    for machine, passes in (("light", light), ("rigid", rigid)):
        made = worked(PLAIN, machine, sized).last_turning([]).cut
        assert made.passes == passes
        # Turned at the rough outside, 3 mm beyond the ring.
        assert made.cutting_time * made.feed_rate == pytest.approx(passes * (4.0 + 3.0))
        turned = math.pi * (80.0 + over) * made.spindle_speed / 1000.0
        assert made.surface_speed == pytest.approx(turned)


@pytest.mark.parametrize(("facing", "passes"), [(0.3, 2), (0.5, 2), (0.505, 4), (1.0, 4)])
def test_both_sides_of_a_plain_ring_are_faced(facing, passes):
    made = rows(worked(PLAIN, facing=facing))["face-sides"].cut
    assert made.passes == passes
    d = worked(PLAIN).d
    wall = 0.5 * (d.blank.rough_outside - d.blank.bored_inside)
    assert made.cutting_time * made.feed_rate == pytest.approx(passes * (wall + 1.0))


@pytest.mark.parametrize(("slit", "passes"), [(0.75, 4), (0.76, 6), (0.2, 2), (0.3, 4)])
def test_both_sides_of_a_double_turn_ring_are_faced_to_the_bottom_of_the_step(slit, passes):
    """A quarter of a millimetre and the slit."""
    work = worked(DOUBLE, facing=0.25, slit=slit)
    row = rows(work)["face-step"]
    assert row.cut.passes == passes
    strips = {size.name: size.value for size in row.sizes}
    assert (strips["thick_strip"], strips["thin_strip"]) == (slit, pytest.approx(0.5 * slit))


@pytest.mark.parametrize(
    ("inside", "passes"), [(0.0, None), (0.005, 1), (0.5, 1), (0.505, 2), (1.2, 3)]
)
def test_a_banded_ring_is_bored_while_its_outside_is_clamped(inside, passes):
    banded = {"bore": 150.0, "ring_type": "plain", "finishing": "band", "setting": "sprung"}
    found = worked(banded, inside=inside).finishing()
    keys = [row.key for row in found]
    if passes is None:
        assert "bore-clamped" not in keys
        return
    # After the outside, before the ends are dressed.
    assert keys[2:5] == ["turn-finish", "bore-clamped", "dress-ends"]
    assert found[3].cut.passes == passes


@pytest.mark.parametrize(("turns", "said"), [(PLAIN, False), (DOUBLE, True)])
def test_each_turn_has_its_own_gap(turns, said):
    gaps = ("closed_gap_reading", "clamped_gap_reading", "free_gap")
    sizes = [size for row in worked(turns).finishing() for size in row.sizes]
    labels = [size.label for size in sizes if size.name in gaps]
    assert len(labels) >= 3
    assert {label.endswith("of each turn") for label in labels} == {said}


def test_a_tongue_is_sawn_wider_by_what_is_faced_off_it():
    """Two tongues of (4 - 0.8)/2 = 1.6 mm; of the blank a quarter of a millimetre each side."""
    stepped = {**PLAIN, "end_cut": "stepped", "end_kerf": 0.8, "facing_allowance": 0.25}
    saw, deburr = worked(stepped).plain_sawing()
    sizes = {size.name: size.value for size in saw.sizes}
    assert sizes["sawn_tongue_width"] == pytest.approx(1.85)
    assert (saw.key, saw.minutes, deburr.minutes) == ("saw-step", 4.0, 3.0)
    assert worked(PLAIN).plain_sawing()[0].key == "saw-end"
