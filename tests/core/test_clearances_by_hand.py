"""Piston, groove and what touches first, by pencil, with figures of no symmetry and at limits."""

import pytest

from ringwright.core.clearances import groove, piston

# A piston of 19.3e-6 at 210 degrees, a ring of 10.7e-6 at 190, a cylinder of 11.9e-6 at 160, of a
# shop of 18: what each grows by.
PISTON, RING, CYLINDER = 1.0037056, 1.0018404, 1.0016898
HOT = {
    "piston_expansion": 19.3e-6, "ring_expansion": 10.7e-6, "cylinder_expansion": 11.9e-6,
    "piston_temperature": 210.0, "ring_temperature": 190.0, "cylinder_temperature": 160.0,
    "shop_temperature": 18.0,
}  # fmt: skip
EXACT = {"abs": 1e-9}


def heat(*parts):
    return {name: value for name, value in HOT.items() if name.split("_")[0] in (*parts, "shop")}


def test_room_at_the_sides_of_a_ring():
    """Hot 0.031 is to be left of a groove for 5.7; the ring grows by less than the piston."""
    cold = (0.031 + 5.7 * RING) / PISTON - 5.7
    # Cut so, less than 0.031 would be there cold: no less than that is cut.
    assert cold < 0.031
    known = heat("ring", "piston")
    assert groove.side_clearance(ring_width=5.7, margin=0.031, **known) == 0.031
    # A hot ring in a cold piston: (0.031 + 5.7 x 1.0018404)/1.000386 - 5.7.
    known["piston_temperature"] = 38.0
    found = groove.side_clearance(ring_width=5.7, margin=0.031, **known)
    assert found == pytest.approx((0.031 + 5.7 * RING) / 1.000386 - 5.7, **EXACT)
    found = groove.hot_side_clearance(ring_width=5.7, clearance=0.043, **heat("ring", "piston"))
    assert found == pytest.approx(5.743 * PISTON - 5.7 * RING, **EXACT)


def test_depth_of_a_groove_and_room_behind_the_ring():
    # A seal maker's sheet: at least 0.015 in deeper than the ring.
    assert pytest.approx(15.0 * 0.0254, **EXACT) == groove.LEAST_DEPTH_ALLOWANCE
    known = heat("ring", "piston")
    assert groove.groove_depth(radial_thickness=3.4, **known) == pytest.approx(3.8, **EXACT)
    known["piston_temperature"] = 38.0
    found = groove.groove_depth(radial_thickness=3.4, allowance=0.37, **known)
    # Just over 3.77: hot ring, cold piston.
    assert found == pytest.approx((3.4 * RING + 0.37) / 1.000386, **EXACT)
    sizes = {"bore": 83.0, "piston_diameter": 82.7, "radial_thickness": 3.4, "depth": 3.9}
    # 3.9 - 3.4 + 0.3/2.
    assert groove.back_clearance(**sizes) == pytest.approx(0.65, **EXACT)
    found = groove.hot_back_clearance(**sizes, **HOT)
    # Bore's radius 41.5, bottom of the groove on 41.35 - 3.9.
    expected = 41.5 * CYLINDER - 3.4 * RING - 37.45 * PISTON
    assert found == pytest.approx(expected, **EXACT)


@pytest.mark.parametrize(
    ("bore", "thou"),
    [(37.0, (1.0, 3.0)), (50.0, (1.0, 3.0)), (175.0, (1.5, 4.0)), (300.0, (2.0, 5.0)),
     (411.0, (2.0, 5.0)), (100.0, (1.2, 3.4))],
)  # fmt: skip
def test_side_clearance_by_bore_in_thousandths_of_an_inch(bore, thou):
    """1 to 3 up to 50 mm, 2 to 5 from 300, in proportion between; the aim a quarter up."""
    least, most = 0.0254 * thou[0], 0.0254 * thou[1]
    aim = least + (most - least) / 4.0
    found = groove.running_side_clearance(bore)
    assert found == pytest.approx((aim, least, most), **EXACT)


def test_room_of_a_piston():
    known = heat("piston", "cylinder")
    found = piston.piston_clearance(bore=83.0, margin=0.083, **known)
    assert found == pytest.approx(83.0 - (83.0 * CYLINDER - 0.083) / PISTON, **EXACT)
    # A cylinder that grows by more: what is left hot is cut.
    known["cylinder_temperature"] = 380.0
    assert piston.piston_clearance(bore=83.0, margin=0.083, **known) == 0.083
    found = piston.hot_piston_clearance(
        bore=83.0, piston_diameter=82.7, **heat("piston", "cylinder")
    )
    assert found == pytest.approx(83.0 * CYLINDER - 82.7 * PISTON, **EXACT)
    # A thousandth, and 0.05 at least; a third of the wall on each side.
    assert piston.running_piston_clearance(83.0) == pytest.approx(0.083, **EXACT)
    assert piston.running_piston_clearance(49.0) == 0.05
    assert piston.piston_clearance_limit(3.4) == pytest.approx(6.8 / 3.0, **EXACT)


def touched(bore, **more):
    """A ring and a cylinder that do not grow; a piston of 64 that grows by 1/4096 a degree."""
    values = {
        "bore": bore, "gap": 0.3, "piston_diameter": 64.0, "ring_expansion": 0.0,
        "piston_expansion": 1.0 / 4096.0, "cylinder_expansion": 0.0,
        "cylinder_temperature": 20.0, "shop_temperature": 20.0,
    }  # fmt: skip
    return piston.first_touch(**{**values, **more})


def test_a_piston_that_touches_at_900_degrees_is_said_to_and_one_just_above_is_not():
    """20 + 4096 (77.75/64 - 1) is 900 to the last digit."""
    assert touched(77.75) == ("piston", 900.0)
    assert touched(77.751) == ("nothing", None)


def test_ring_s_ends_or_piston_whichever_comes_first():
    """Ends: d = 77 - 0.3/pi; 0.09549/76.90451 over 2e-5. Piston of 76.9: 0.1/76.9 over 2.1e-5."""
    ends = 20.0 + 0.0954930 / 76.9045070 / 2e-5
    found = touched(77.0, ring_expansion=2e-5)
    assert (found.part, found.temperature) == ("ring ends", pytest.approx(ends, abs=1e-3))
    both = {"ring_expansion": 2e-5, "piston_diameter": 76.9, "piston_expansion": 2.1e-5}
    found = touched(77.0, **both)
    first = 20.0 + 0.1 / 76.9 / 2.1e-5
    assert first < ends
    assert (found.part, found.temperature) == ("piston", pytest.approx(first, abs=1e-6))
    found = touched(77.0, **both | {"piston_diameter": 76.8})
    assert found.part == "ring ends"
    # The cylinder grown by 11.9e-6 x 142: bore 77.13.
    found = touched(77.0, cylinder_expansion=11.9e-6, cylinder_temperature=162.0, **both)
    first = 20.0 + (77.0 * 1.0016898 / 76.9 - 1.0) / 2.1e-5
    assert (found.part, found.temperature) == ("piston", pytest.approx(first, abs=1e-6))


def test_no_piston_and_parts_alike_are_no_trouble():
    assert touched(77.0, piston_diameter=0.0) == ("nothing", None)
    # Alike, the ring's ends are named: they are looked at first.
    alike = {"gap": 0.0, "ring_expansion": 2e-5, "piston_expansion": 2e-5}
    assert touched(77.0, piston_diameter=77.0, **alike) == ("ring ends", 20.0)
