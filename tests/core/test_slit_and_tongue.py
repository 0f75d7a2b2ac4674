"""The saw, its collar and the bridge of a double-turn blank, and the tongues of a stepped end, by
hand from the standard saws: (saw - collar)/2 - 1 mm must reach wall and half a millimetre.
"""

import math

import pytest

from core.test_tools_hold import settled
from ringwright.core.making import slitting, stepped_end
from ringwright.core.problems import InputProblem

# ISO 2296 and collars by common practice, from memory: reach of 20, 25, 32, 40, 50 mm saws is
# (20-10)/2-1 = 4, (25-12)/2-1 = 5.5, (32-14)/2-1 = 8, 10, 11.5.
OUTSIDE = 84.0


def slit(wall=3.1, angle=90.0, band=2.9, **values):
    """(Slitting, list of Choice) of a blank with that wall [mm]."""
    design, _ = settled({"bore": 80.0, "ring_width": 5.0})
    blank = design.blank._replace(
        rough_outside=OUTSIDE, bored_inside=OUTSIDE - 2.0 * wall, band_width=band, length=6.7
    )
    chosen = []
    return slitting.settle(design._replace(blank=blank), values, angle, chosen), chosen


@pytest.mark.parametrize(
    ("wall", "saw", "collar"),
    [(3.5, 20.0, 10.0), (3.51, 25.0, 12.0), (5.0, 25.0, 12.0), (5.01, 32.0, 14.0)],
)
def test_the_smallest_saw_that_reaches_through(wall, saw, collar):
    found, _ = slit(wall)
    assert (found.cutter_diameter, found.cutter_collar) == (saw, collar)
    assert found.cut.reaches
    # Half a millimetre beyond the inside.
    assert found.cut.centre_distance == pytest.approx(42.0 - wall - 0.5 + saw / 2.0)
    assert found.cut.depth == pytest.approx(wall + 0.5)


def test_where_none_reaches_the_largest_is_taken_and_said_not_to():
    """A wall of 41 mm is beyond (125 - 40)/2 - 1 and beyond what 200 mm gives only past 67.5."""
    design, _ = settled({"bore": 400.0, "ring_width": 9.0})
    blank = design.blank._replace(rough_outside=400.0, bored_inside=400.0 - 2.0 * 68.0)
    found = slitting.settle(design._replace(blank=blank), {}, 90.0, [])
    assert (found.cutter_diameter, found.cutter_collar) == (200.0, 63.0)
    assert not found.cut.reaches


@pytest.mark.parametrize(
    ("saw", "collar"),
    # Of the next smaller standard saw; of one smaller than all, half.
    [(63.0, 32.0), (70.0, 32.0), (79.9, 32.0), (80.0, 36.0), (19.0, 9.5), (300.0, 63.0)],
)
def test_the_collar_of_a_saw_that_the_standard_has_not(saw, collar):
    assert slit(cutter_diameter=saw)[0].cutter_collar == collar


def test_an_inch_job_takes_an_inch_saw_and_a_bridge_in_sixty_fourths():
    """One and a half bands of 2.9 mm and 2 mm: 6.35 mm is a quarter of an inch; a band of 2.91 mm
    is 6.365, a 64th more. A wall of 3.1 mm: the 3/4 in saw reaches 3/16 in less 1 mm, 3.76."""
    found, _ = slit(inch_sizes=True)
    assert found.bridge_length == pytest.approx(6.35)
    assert slit(inch_sizes=True, band=2.91)[0].bridge_length == pytest.approx(6.35 + 25.4 / 64.0)
    assert slit(band=2.91)[0].bridge_length == pytest.approx(1.5 * 2.91 + 2.0)
    assert found.cutter_diameter == pytest.approx(19.05)
    assert slit(3.27, inch_sizes=True)[0].cutter_diameter == pytest.approx(25.4)


def test_the_bridge_s_angle_is_its_length_over_the_outside_radius():
    found, _ = slit(bridge_length=10.5)
    assert found.bridge_angle == pytest.approx(math.degrees(10.5 / 42.0))
    assert slit(bridge_length=10.5, angle=45.0)[0].bridge_length == 10.5


def test_the_mandrel_clears_saw_and_nut():
    """The groove half a millimetre wider than the saw each side, and as much below its teeth; half
    a millimetre shorter than the blank. On the stick there is none, and the table grips it."""
    found, _ = slit()
    kerf = settled({"bore": 80.0, "ring_width": 5.0})[0].allowances.slit
    assert found.mandrel_diameter == pytest.approx(OUTSIDE - 6.2)
    assert found.mandrel_length == pytest.approx(6.2)
    assert found.relief_width == pytest.approx(kerf + 1.0)
    assert found.relief_depth == pytest.approx(1.0)
    assert found.table_grip is None
    held, chosen = slit(slit_on_stick=True)
    # A third of 84 mm, up to the next 5 mm.
    assert held.table_grip == 30.0 and held.mandrel_diameter is held.relief_depth is None
    assert "table_grip" in [one.input for one in chosen]
    assert "table_grip" not in [one.input for one in slit()[1]]


@pytest.mark.parametrize(("collar", "refused"), [(20.0, True), (21.0, True), (19.9, False)])
def test_a_collar_is_smaller_than_its_saw(collar, refused):
    asked = {"cutter_diameter": 20.0, "cutter_collar": collar}
    if not refused:
        assert slit(**asked)[0].cutter_collar == collar
        return
    with pytest.raises(InputProblem) as caught:
        slit(**asked)
    assert caught.value.faults[0].path == ("cutter_collar",)


def test_a_bridge_all_round_and_a_saw_that_crosses_nothing_are_told_apart():
    """Round 84 mm the whole is 264 mm; a bore of 0.8 mm is no room for a saw half a mm through."""
    with pytest.raises(InputProblem) as caught:
        slit(bridge_length=250.0)
    assert caught.value.faults[0].path == ("bridge_length",)
    with pytest.raises(InputProblem) as caught:
        slit(wall=41.6)
    assert caught.value.faults[0].path == ("cutter_diameter",)


def tongue(**changed):
    request = {"bore": 80.0, "ring_type": "plain", "end_cut": "stepped", "ring_width": 3.4,
               "end_kerf": 0.8, "closed_gap": 0.3}  # fmt: skip
    values = {key: changed.pop(key) for key in ("tongue_length",) if key in changed}
    design, _ = settled({**request, **changed})
    chosen = []
    return stepped_end.joint_of(design, values, chosen), [one.input for one in chosen]


def test_a_tongue_is_as_long_as_the_ring_is_wide_or_three_gaps():
    """3.4 mm; with a gap of 1.4 mm 4.2. Between the tongues lies the saw's own cut."""
    found, chosen = tongue()
    assert (found.opening, found.overlap) == (pytest.approx(3.4), pytest.approx(3.1))
    assert found.tongue_width == pytest.approx(1.3)
    assert chosen == ["tongue_length"]
    assert tongue(closed_gap=1.4, end_kerf=1.9)[0].opening == pytest.approx(4.2)
    assert tongue(tongue_length=5.0)[0].overlap == pytest.approx(4.7)


def test_only_a_plain_ring_with_stepped_ends_has_tongues():
    assert tongue(end_cut="angled-45") == (None, [])
    assert tongue(ring_type="double-turn", end_kerf=0.5) == (None, [])


@pytest.mark.parametrize(("kerf", "refused"), [(3.39, False), (3.4, True), (3.5, True)])
def test_a_saw_as_thick_as_the_ring_is_wide_leaves_no_tongue(kerf, refused):
    design, _ = settled({"bore": 80.0, "ring_type": "plain", "end_cut": "stepped",
                         "ring_width": 3.4, "closed_gap": 0.3, "end_kerf": 0.8})  # fmt: skip
    design = design._replace(allowances=design.allowances._replace(kerf=kerf))
    if not refused:
        joint = stepped_end.joint_of(design, {}, [])
        assert joint.tongue_width == pytest.approx(0.005)
        return
    with pytest.raises(InputProblem) as caught:
        stepped_end.joint_of(design, {}, [])
    assert caught.value.faults[0].path == ("end_kerf",)


@pytest.mark.parametrize(("long", "refused"), [(0.3, True), (0.2, True), (0.31, False)])
def test_tongues_reach_past_one_another_in_the_bore(long, refused):
    """With a gap of 0.3 mm."""
    if not refused:
        assert tongue(tongue_length=long)[0].overlap == pytest.approx(0.01)
        return
    with pytest.raises(InputProblem) as caught:
        tongue(tongue_length=long)
    (fault,) = caught.value.faults
    assert fault.path == ("tongue_length",) and "0.300 mm" in fault.remedy
    assert (fault.value, fault.lowest) == (long, 0.3)
