"""Sizes of the blank by plain arithmetic, each with figures that no two of are alike."""

import math

import pytest

from ringwright.core.problems import OutOfRange
from ringwright.core.ring import blank


def test_the_three_diameters_of_a_blank():
    """The neutral line keeps its metal: each gap taken off or put in is over pi on the diameter."""
    found = blank.diameters(
        bore=80.0,
        thickness=2.6,
        closed_gap=0.9,
        clamped_gap=0.4,
        kerf=3.5,
        finishing_allowance=0.7,
    )
    assert found.finish_outside == pytest.approx(80.0 - 0.5 / math.pi, rel=1e-12)
    assert found.bored_inside == pytest.approx(80.0 - 5.2 + 2.6 / math.pi, rel=1e-12)
    assert found.rough_outside == pytest.approx(80.0 + 2.6 / math.pi + 0.7, rel=1e-12)


@pytest.mark.parametrize(
    ("thickness", "bored"), [(9.99, True), (9.998, True), (10.0, False), (10.004, False)]
)
def test_a_blank_wants_a_bore(thickness, bored):
    sizes = {"closed_gap": 0.0, "clamped_gap": 0.0, "kerf": 0.0, "finishing_allowance": 0.3}
    if bored:
        found = blank.diameters(bore=20.0, thickness=thickness, **sizes)
        assert found.bored_inside == pytest.approx(20.0 - 2.0 * thickness, abs=1e-9)
    else:
        with pytest.raises(OutOfRange, match="thickness"):
            blank.diameters(bore=20.0, thickness=thickness, **sizes)


def test_ends_lean_together_as_they_are_closed():
    """Closed by 2.9 mm on a mean radius of 36: each edge comes 2.6/72 of that nearer."""
    found = blank.gap_at_edge(gap=0.6, kerf=3.5, thickness=2.6, neutral_radius=36.0)
    assert found == pytest.approx(0.6 - 2.6 * 2.9 / 72.0, rel=1e-12)


@pytest.mark.parametrize(("angle", "sine"), [(30.0, 0.5), (90.0, 1.0), (45.0, math.sqrt(0.5))])
def test_angled_ends_are_read_square_to_the_cut(angle, sine):
    assert blank.end_kerf(saw_thickness=0.8, angle=angle) == pytest.approx(0.8 / sine, rel=1e-12)
    assert blank.feeler_reading(gap=0.3, angle=angle) == pytest.approx(0.3 * sine, rel=1e-12)
    assert blank.gap_of_reading(reading=0.3, angle=angle) == pytest.approx(0.3 / sine, rel=1e-12)


@pytest.mark.parametrize("angle", [-0.001, 0.0, 90.5])
def test_no_end_is_cut_flat_or_past_square(angle):
    with pytest.raises(OutOfRange, match="angle"):
        blank.feeler_reading(gap=0.3, angle=angle)
    # Half a degree is an angle yet, by half: sin(0.5 degrees) is 0.008727.
    assert blank.feeler_reading(gap=3.0, angle=0.005) == pytest.approx(0.00026180, abs=1e-8)


def test_lengths_of_a_blank():
    """Two bands and the slit between: (5 + 0.9)/2 + 0.35 = 3.3 each."""
    cut = {"ring_width": 5.0, "slit": 0.9, "facing_allowance": 0.35}
    assert blank.band_width(**cut) == pytest.approx(3.3, rel=1e-12)
    assert blank.blank_length(**cut) == pytest.approx(7.5, rel=1e-12)
    # Slit open as it is, the one band lies a blank's length above its place, the other below.
    assert blank.inside_out_length(blank_length=7.5, slit=0.9) == pytest.approx(14.1, rel=1e-12)
    assert blank.part_length(7.5, 0.35) == pytest.approx(8.2, rel=1e-12)
    assert blank.blank_length(ring_width=5.0, facing_allowance=0.35) == pytest.approx(5.7)


def test_a_cutter_by_the_triangle_of_three_and_four():
    """Axes 5 apart, the work's radius 4 and the cutter's 3: a right angle between the two radii."""
    found = blank.slit_half_angle(centre=5.0, radius=4.0, cutter_diameter=6.0)
    assert found == pytest.approx(math.degrees(math.atan2(3.0, 4.0)), rel=1e-12)
    # It just touches from outside, or lies just round the work: nothing, or all of it.
    assert blank.slit_half_angle(centre=7.0, radius=4.0, cutter_diameter=6.0) == 0.0
    assert blank.slit_half_angle(centre=1.0, radius=4.0, cutter_diameter=10.0) == 180.0
    for centre, cutter in ((7.01, 6.0), (0.995, 10.0)):
        with pytest.raises(OutOfRange, match="radius"):
            blank.slit_half_angle(centre=centre, radius=4.0, cutter_diameter=cutter)


SLIT = {
    "inside_radius": 36.0,
    "outside_radius": 40.0,
    "cutter_diameter": 50.0,
    "breakthrough": 1.5,
    "bridge_angle": 24.0,
    "collar_diameter": 25.0,
}


def cosine(a, b, c):
    """Of the angle between the sides a and b of a triangle: the law of cosines."""
    return (a * a + b * b - c * c) / (2.0 * a * b)


def test_setting_a_cutter_to_slit_a_blank():
    """Axes 36 - 1.5 + 25 = 59.5 apart; the cutter's own reach at each surface by its triangle."""
    found = blank.slit(**SLIT)
    outside = math.degrees(math.acos(cosine(59.5, 40.0, 25.0)))
    inside = math.degrees(math.acos(cosine(59.5, 36.0, 25.0)))
    assert found.centre_distance == pytest.approx(59.5, rel=1e-12)
    assert found.outside_half_angle == pytest.approx(outside, rel=1e-12)
    assert found.inside_half_angle == pytest.approx(inside, rel=1e-12)
    assert found.table_travel == pytest.approx(360.0 - 24.0 - 2.0 * outside, rel=1e-12)
    assert found.hand_wedge == pytest.approx(outside - inside, rel=1e-12)
    assert found.hand_wedge_length == pytest.approx(
        (outside - inside) * math.pi / 180.0 * 36.0, rel=1e-12
    )
    # 12.5 past the collar, less 1 mm; 4 of wall and 1.5 beyond.
    assert (found.depth, found.reach, found.reaches) == (5.5, 11.5, True)


@pytest.mark.parametrize(("collar", "reaches"), [(37.0, True), (37.002, False)])
def test_a_cutter_reaches_to_just_the_depth(collar, reaches):
    found = blank.slit(**{**SLIT, "collar_diameter": collar})
    assert found.reach == pytest.approx(0.5 * (50.0 - collar) - 1.0, rel=1e-12)
    assert found.reaches is reaches


@pytest.mark.parametrize("breakthrough", [-0.1, 0.0, 36.0, 36.1])
def test_a_cutter_breaks_through_but_not_past_the_axis(breakthrough):
    with pytest.raises(OutOfRange, match="breakthrough"):
        blank.slit(**{**SLIT, "breakthrough": breakthrough})
    assert blank.slit(**{**SLIT, "breakthrough": 0.005}).depth == pytest.approx(4.005)


def test_the_table_may_turn_by_nothing_but_not_back():
    outside = blank.slit(**SLIT).outside_half_angle
    left = 360.0 - 2.0 * outside
    assert blank.slit(**{**SLIT, "bridge_angle": left}).table_travel == pytest.approx(0.0, abs=1e-9)
    assert blank.slit(**{**SLIT, "bridge_angle": left - 0.005}).table_travel == pytest.approx(0.005)
    with pytest.raises(OutOfRange, match="bridge_angle"):
        blank.slit(**{**SLIT, "bridge_angle": left + 0.001})


def test_a_bridge_that_leaves_the_table_just_nothing_is_allowed():
    """So wide a cutter covers over 64 degrees either side: what is left of 360 is then exact."""
    sizes = {**SLIT, "inside_radius": 3.0, "outside_radius": 5.0, "cutter_diameter": 100.0}
    outside = blank.slit(**sizes).outside_half_angle
    # Axes 3 - 1.5 + 50 apart: (51.5^2 + 25 - 2500)/515.
    assert outside == pytest.approx(math.degrees(math.acos(177.25 / 515.0)), rel=1e-12)
    found = blank.slit(**{**sizes, "bridge_angle": 360.0 - 2.0 * outside})
    assert found.table_travel == 0.0


def test_the_smallest_saw_that_just_reaches():
    """(63 - 32)/2 - 1 = 14.5 past the collar; a hundredth more wants the next but one."""
    assert blank.smallest_cutter(wall=13.0, breakthrough=1.5).diameter == 63.0
    # (80 - 36)/2 - 1 = 21.
    assert blank.smallest_cutter(wall=13.01, breakthrough=1.5).diameter == 80.0
    # With 2.3 mm left to the collar: 13.2 past it.
    near = {"wall": 11.7, "collar_clearance": 2.3}
    assert blank.smallest_cutter(breakthrough=1.5, **near).diameter == 63.0
    assert blank.smallest_cutter(breakthrough=1.51, **near).diameter == 80.0
    # In inches: (2.25 - 1)/2 in less 1 mm is 14.875 mm, of 2.5 in the same, of 3 in 0.8125 in.
    inches = {"breakthrough": 1.5, "saws": blank.INCH_SAWS}
    assert blank.smallest_cutter(wall=13.374, **inches).diameter == pytest.approx(2.25 * 25.4)
    assert blank.smallest_cutter(wall=13.376, **inches).diameter == pytest.approx(3.0 * 25.4)


def test_saws_as_they_are_sold():
    """ISO 2296 and inch saws, from memory; collars by common practice, no source."""
    assert [tuple(saw) for saw in blank.SAWS] == [
        (20.0, 5.0, 10.0),
        (25.0, 8.0, 12.0),
        (32.0, 8.0, 14.0),
        (40.0, 10.0, 18.0),
        (50.0, 13.0, 25.0),
        (63.0, 16.0, 32.0),
        (80.0, 22.0, 36.0),
        (100.0, 22.0, 40.0),
        (125.0, 22.0, 40.0),
        (160.0, 32.0, 63.0),
        (200.0, 32.0, 63.0),
    ]
    # In sixteenths of an inch: diameter, hole, collar.
    sixteenths = [[round(size / 25.4 * 16.0, 9) for size in saw] for saw in blank.INCH_SAWS]
    assert sixteenths == [
        [12, 4, 6],
        [16, 4, 8],
        [20, 6, 9],
        [28, 10, 14],
        [36, 10, 16],
        [40, 14, 20],
        [48, 16, 22],
        [64, 16, 24],
        [80, 16, 26],
        [96, 20, 32],
        [128, 20, 32],
    ]


def test_a_bridge_holds_both_scarfs_or_one_and_a_half_bands():
    """At 45 degrees a scarf runs as far as the band is wide; at 60 by one over root three."""
    assert blank.scarf_length(band=3.3, angle=45.0) == pytest.approx(3.3, rel=1e-12)
    assert blank.scarf_length(band=3.3, angle=60.0) == pytest.approx(3.3 / math.sqrt(3.0))
    assert blank.scarf_length(band=3.3, angle=90.0) == 0.0
    assert blank.shortest_bridge(band=3.3, angle=45.0) == pytest.approx(6.6, rel=1e-12)
    assert blank.shortest_bridge(band=3.3, angle=45.0, margin=0.7) == pytest.approx(7.3)
    # At 60 degrees two scarfs are 1.155 bands: the twist of the bridge asks for more.
    assert blank.shortest_bridge(band=3.3, angle=60.0, margin=0.7) == pytest.approx(5.65)
    assert blank.shortest_bridge(band=3.3, angle=90.0) == pytest.approx(4.95, rel=1e-12)
    degrees = blank.bridge_angle(bridge_length=6.6, outside_radius=40.0)
    assert degrees == pytest.approx(6.6 / 40.0 * 180.0 / math.pi, rel=1e-12)


@pytest.mark.parametrize("tongue", [0.35, 0.34, 0.0])
def test_tongues_of_a_step_overlap_in_the_bore(tongue):
    sizes = {"ring_width": 5.0, "closed_gap": 0.35, "side_clearance": 0.12}
    with pytest.raises(OutOfRange, match="tongue_length"):
        blank.stepped_joint(tongue_length=tongue, **sizes)
    joint = blank.stepped_joint(tongue_length=0.355, **sizes)
    assert joint.overlap == pytest.approx(0.005, abs=1e-12)
    assert (joint.tongue_width, joint.opening) == (pytest.approx(2.44, rel=1e-12), 0.355)
