"""The blank: walked operation by operation, against a geometry library, and inside out."""

import math
import random

import pytest
import shapely
import shapely.affinity
from hypothesis import given
from hypothesis import strategies as st

from ringwright.core.problems import OutOfRange
from ringwright.core.ring import blank

SIZES = st.fixed_dictionaries(
    {
        "bore": st.floats(20.0, 600.0),
        "slimness": st.floats(12.0, 50.0),
        "closed_gap": st.floats(0.0, 2.0),
        "clamped_gap": st.floats(0.0, 0.5),
        "kerf": st.floats(0.5, 6.0),
        "finishing_allowance": st.floats(0.0, 2.0),
    }
)


@given(SIZES)
def test_walking_the_operations_gives_the_ring_asked_for(sizes):
    """Bore, saw, set, close, clamp, turn, put in: the neutral line keeps its metal."""
    thickness = sizes["bore"] / sizes.pop("slimness")
    found = blank.diameters(thickness=thickness, **sizes)
    # Bore and turn the blank, then saw the end out of it.
    wall = (found.rough_outside - found.bored_inside) / 2
    metal = math.pi * (found.rough_outside + found.bored_inside) / 2 - sizes["kerf"]
    # Set on a former of any size: nothing is taken off. Close and clamp.
    mean_diameter = (metal + sizes["clamped_gap"]) / math.pi
    inside = mean_diameter - wall
    # Turn the outside; the neutral line moves in, the gap left is as before.
    thickness_made = (found.finish_outside - inside) / 2
    metal = math.pi * (found.finish_outside + inside) / 2 - sizes["clamped_gap"]
    # Put it in the cylinder.
    closed_gap = math.pi * (sizes["bore"] - thickness_made) - metal
    assert thickness_made == pytest.approx(thickness, abs=1e-9)
    assert closed_gap == pytest.approx(sizes["closed_gap"], abs=1e-9)


def test_a_ring_without_a_hole_is_refused():
    with pytest.raises(OutOfRange):
        blank.diameters(
            bore=20, thickness=11, closed_gap=0, clamped_gap=0, kerf=1, finishing_allowance=0
        )


@pytest.mark.parametrize("seed", range(12))
def test_slit_against_a_geometry_library(seed):
    """A disc cut out of a wall and turned through the travel leaves the bridge at the outside."""
    draw = random.Random(seed)
    inside = draw.uniform(8.0, 200.0)
    wall = draw.uniform(2.0, 8.0)
    outside = inside + wall
    cutter = draw.uniform(30.0, 200.0)
    breakthrough = draw.uniform(0.3, 3.0)
    bridge = draw.uniform(8.0, 60.0)
    found = blank.slit(
        inside_radius=inside,
        outside_radius=outside,
        cutter_diameter=cutter,
        breakthrough=breakthrough,
        bridge_angle=bridge,
        collar_diameter=10.0,
    )
    disc = shapely.Point(found.centre_distance, 0.0).buffer(cutter / 2, quad_segs=1024)
    assert shapely.Point(0, 0).distance(disc) == pytest.approx(inside - breakthrough, abs=1e-3)

    def covered(radius):
        ring = shapely.Point(0, 0).buffer(radius, quad_segs=2048).exterior
        return math.degrees(ring.intersection(disc).length / radius)

    assert covered(outside) == pytest.approx(2 * found.outside_half_angle, abs=0.01)
    assert covered(inside) == pytest.approx(2 * found.inside_half_angle, abs=0.01)

    # The slit swept: the cutter turned round the work in steps well under its own width.
    steps = int(found.table_travel / (found.outside_half_angle / 2)) + 2
    swept = shapely.union_all(
        [
            shapely.affinity.rotate(disc, found.table_travel * at / steps, origin=(0, 0))
            for at in range(steps + 1)
        ]
    )
    for radius, left in ((outside, bridge), (inside, bridge + 2 * found.hand_wedge)):
        ring = shapely.Point(0, 0).buffer(radius, quad_segs=2048).exterior
        solid = math.degrees(ring.difference(swept).length / radius)
        # Scallops between the steps stand only near the inside, and never at the two ends.
        if radius == outside:
            assert solid == pytest.approx(left, abs=0.02)
        else:
            assert solid >= left - 0.02
    assert found.hand_wedge_length == pytest.approx(math.radians(found.hand_wedge) * inside)
    assert found.depth == pytest.approx(wall + breakthrough)


def test_reach_counts_the_collar_and_its_clearance():
    sizes = {
        "inside_radius": 40.0,
        "outside_radius": 44.0,
        "breakthrough": 1.0,
        "bridge_angle": 20.0,
        "cutter_diameter": 63.0,
    }
    assert blank.slit(collar_diameter=51.0, **sizes).reaches
    assert not blank.slit(collar_diameter=51.2, **sizes).reaches
    assert blank.slit(collar_diameter=51.2, collar_clearance=0.5, **sizes).reaches


def test_what_cannot_be_slit_is_refused():
    sizes = {
        "inside_radius": 5.0,
        "outside_radius": 9.0,
        "cutter_diameter": 63.0,
        "collar_diameter": 32.0,
    }
    with pytest.raises(OutOfRange, match="breakthrough"):
        blank.slit(breakthrough=5.0, bridge_angle=20.0, **sizes)
    with pytest.raises(OutOfRange, match="bridge_angle"):
        blank.slit(breakthrough=1.0, bridge_angle=250.0, **sizes)
    with pytest.raises(OutOfRange, match="radius"):
        blank.slit_half_angle(centre=50.0, radius=10.0, cutter_diameter=63.0)
    # A small cutter lies within a thick wall: its outside is what is out of reach.
    with pytest.raises(OutOfRange, match="radius = 80.0 "):
        blank.slit(
            inside_radius=5.0,
            outside_radius=80.0,
            cutter_diameter=20.0,
            collar_diameter=8.0,
            breakthrough=1.0,
            bridge_angle=20.0,
        )


def test_the_smallest_cutter_that_reaches():
    found = blank.smallest_cutter(wall=4.0, breakthrough=1.0)
    reaches = [
        saw for saw in blank.SAWS if (saw.diameter - saw.collar) / 2 - blank.COLLAR_CLEARANCE >= 5.0
    ]
    assert found in reaches
    assert found.diameter == min(saw.diameter for saw in reaches)
    with pytest.raises(OutOfRange):
        blank.smallest_cutter(wall=90.0, breakthrough=1.0)


@given(st.floats(2.0, 40.0), st.floats(0.2, 3.0), st.floats(0.0, 2.0))
def test_the_common_part_of_two_stepped_turns_is_the_width(width, slit, allowance):
    """Lay the two turns together as they lie beside the bridge, and face off what is not common."""
    band = blank.band_width(ring_width=width, slit=slit, facing_allowance=allowance)
    length = blank.blank_length(ring_width=width, slit=slit, facing_allowance=allowance)
    assert length == pytest.approx(2 * band + slit)
    # One side of the bridge: the first band free, pushed up by the slit; the other: the second
    # pushed down.
    one_side = (slit, 2 * band + slit)
    other_side = (0.0, 2 * band)
    low = max(one_side[0], other_side[0]) + allowance
    high = min(one_side[1], other_side[1]) - allowance
    assert high - low == pytest.approx(width)


def test_a_plain_ring_needs_only_its_facings():
    assert blank.blank_length(ring_width=6.0, facing_allowance=0.5) == 7.0


@given(st.floats(20.0, 300.0), st.floats(15.0, 40.0), st.floats(0.5, 5.0), st.floats(0.0, 1.0))
def test_outer_edges_of_closed_ends(mean_diameter, slimness, kerf, gap):
    """Carry the two end faces round as rigid lines while the ring is bent to its closed radius."""
    closed_radius = mean_diameter / 2
    thickness = mean_diameter / slimness
    bored_radius = closed_radius + (kerf - gap) / (2 * math.pi)
    # Bored: faces parallel, kerf apart. Where the neutral line meets a face:
    tilt = math.asin(kerf / (2 * bored_radius))
    metal = 2 * bored_radius * (math.pi - tilt)
    # Closed: the neutral point at this angle from the middle of the gap; the face keeps its tilt to
    # the radius.
    half_gap = math.pi - metal / (2 * closed_radius)
    point = (closed_radius * math.sin(half_gap), closed_radius * math.cos(half_gap))
    face = half_gap - tilt
    edge = 2 * (point[0] + thickness / 2 * math.sin(face))
    on_neutral = 2 * point[0]
    expected = blank.gap_at_edge(
        gap=on_neutral, kerf=kerf, thickness=thickness, neutral_radius=closed_radius
    )
    # The formula is first order in kerf over circumference.
    scale = thickness * kerf / mean_diameter
    assert edge == pytest.approx(expected, abs=scale * (kerf + thickness) / mean_diameter + 1e-9)


@pytest.mark.parametrize("angle", [30.0, 45.0, 60.0, 90.0])
def test_scarf_against_a_geometry_library(angle):
    """A saw cut laid across a band: its run and its kerf along the circumference, measured."""
    band, thickness = 4.0, 0.8
    blade = shapely.affinity.rotate(
        shapely.box(-100.0, -thickness / 2, 100.0, thickness / 2), angle, origin=(0, 0)
    )
    cut = blade.intersection(shapely.box(-50.0, 0.0, 50.0, band))
    at_side = cut.intersection(shapely.LineString([(-50.0, 0.0), (50.0, 0.0)]))
    at_slit = cut.intersection(shapely.LineString([(-50.0, band), (50.0, band)]))
    run = at_slit.centroid.x - at_side.centroid.x
    assert blank.scarf_length(band=band, angle=angle) == pytest.approx(run, abs=1e-9)
    assert blank.end_kerf(saw_thickness=thickness, angle=angle) == pytest.approx(at_side.length)


@pytest.mark.parametrize("angle", [0.0, -5.0, 91.0])
def test_angles_that_no_end_has_are_refused(angle):
    with pytest.raises(OutOfRange):
        blank.scarf_length(band=4.0, angle=angle)
    with pytest.raises(OutOfRange):
        blank.end_kerf(saw_thickness=1.0, angle=angle)


def test_both_scarfs_stand_on_the_shortest_bridge():
    for angle in (30.0, 45.0, 60.0):
        bridge = blank.shortest_bridge(band=4.0, angle=angle)
        assert bridge >= 2 * blank.scarf_length(band=4.0, angle=angle)
    assert blank.shortest_bridge(band=4.0, angle=90.0, margin=1.0) == 7.0
    assert blank.bridge_angle(bridge_length=math.pi, outside_radius=36.0) == pytest.approx(5.0)


def test_stepped_joint():
    joint = blank.stepped_joint(
        ring_width=6.0, tongue_length=8.0, closed_gap=0.3, side_clearance=0.1
    )
    assert joint.tongue_width == pytest.approx(2.95)
    assert joint.overlap == pytest.approx(7.7)
    assert joint.opening == 8.0
    with pytest.raises(OutOfRange):
        blank.stepped_joint(ring_width=6.0, tongue_length=0.2, closed_gap=0.3, side_clearance=0.1)
