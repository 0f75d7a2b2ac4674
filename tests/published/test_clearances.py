"""Gaps and clearances against printed rules, first-order formulas, and their own inverses."""

import math

import numpy
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import integrate

from ringwright.core import clearances
from ringwright.core.problems import OutOfRange
from ringwright.core.properties import expansion, materials, steam

INCH = 25.4
PSI = 6894.757293168361e-6
IRON = materials.material("grey-iron").expansion
BRONZE = materials.material("gunmetal").expansion
ALUMINIUM = materials.material("aluminium").expansion


def iron_gap(bore, gauge, share):
    hot = steam.saturation_temperature(gauge)
    return clearances.closed_gap(
        bore=bore,
        ring_expansion=IRON,
        cylinder_expansion=IRON,
        ring_temperature=hot,
        cylinder_temperature=clearances.starting_wall_temperature(hot, 20.0, share),
        shop_temperature=20.0,
        margin=clearances.running_gap(bore),
    )


@pytest.mark.parametrize("bore", [50.0, 100.0, 200.0, 450.0])
@pytest.mark.parametrize("psi", [60, 100, 150, 200])
def test_half_warm_gap_lies_in_the_range_of_the_book(bore, psi):
    """Khurmi and Gupta, 32.9: gap in the cylinder 0.002 to 0.004 of the bore (read)."""
    assert 0.002 * bore < iron_gap(bore, psi * PSI, 0.5) < 0.004 * bore


def test_room_behind_the_ring_when_hot_by_hand():
    """Iron ring and cylinder 11.7e-6, aluminium piston 23.6e-6; 170 degC, the wall 95, from 20.

    40 x 1.0008775 - 3 x 1.001755 - (39.85 - 3.5) x 1.00354 = 40.0351 - 3.005265 - 36.478679.
    """
    found = clearances.hot_back_clearance(
        bore=80.0,
        piston_diameter=79.7,
        radial_thickness=3.0,
        depth=3.5,
        ring_expansion=11.7e-6,
        piston_expansion=23.6e-6,
        cylinder_expansion=11.7e-6,
        ring_temperature=170.0,
        piston_temperature=170.0,
        cylinder_temperature=95.0,
        shop_temperature=20.0,
    )
    assert found == pytest.approx(40.0351 - 3.005265 - 36.478679, abs=1e-6)


@pytest.mark.parametrize(("share", "wall"), [(0.0, 20.0), (0.3, 65.0), (0.5, 95.0), (1.0, 170.0)])
def test_a_wall_part_warm_lies_between_shop_and_steam(share, wall):
    """So much of the way from 20 to 170 degC; a gap is filed for half, or none for two turns."""
    assert clearances.starting_wall_temperature(170.0, 20.0, share) == pytest.approx(wall)
    if share in (0.0, 0.5):
        turns = 1 if share else 2
        assert clearances.filing_wall_temperature(turns, 170.0, 20.0) == pytest.approx(wall)


@pytest.mark.parametrize(
    ("bore", "gap", "piston"), [(20.0, 0.025, 0.05), (50.0, 0.025, 0.05), (200.0, 0.1, 0.2)]
)
def test_margins_left_when_hot(bore, gap, piston):
    """Gap: half a thou per inch, at least a thou; piston: a thou per inch, at least two.

    Common practice, no source.
    """
    assert clearances.running_gap(bore) == pytest.approx(gap, rel=0.02)
    assert clearances.running_piston_clearance(bore) == pytest.approx(piston, rel=0.02)


def greatest_lag(film, ratio, thickness=3.2e-3, cells=30):
    """How far a wall is behind a ring at the worst moment, as a share of the whole rise.

    Conduction solved on a grid: both heated from one face by condensing steam, the other insulated;
    iron of 50 W/mK and 3.6 MJ/m3K. film: [W/m2K]. ratio: wall over ring thickness.
    """
    times = numpy.linspace(0.05, 30.0, 600)

    def mean_rise(size):
        cell = size / cells
        between = 50.0 / cell
        at_face = 1.0 / (1.0 / film + 0.5 * cell / 50.0)

        def slope(_time, rise):
            flow = numpy.zeros(cells + 1)
            flow[0] = at_face * (1.0 - rise[0])
            flow[1:-1] = between * (rise[:-1] - rise[1:])
            return (flow[:-1] - flow[1:]) / (3.6e6 * cell)

        start = numpy.zeros(cells)
        solved = integrate.solve_ivp(slope, (0.0, 30.0), start, "BDF", t_eval=times, rtol=1e-6)
        return solved.y.mean(axis=0)

    return float(max(mean_rise(thickness) - mean_rise(ratio * thickness)))


@pytest.mark.parametrize("film", [5e3, 1e4, 1.5e4])
@pytest.mark.parametrize("ratio", [3.0, 4.0])
def test_half_warm_is_how_far_a_wall_lags_behind_its_ring(film, ratio):
    """Film condensation of steam, 5 to 15 kW/m2K (general knowledge)."""
    assert greatest_lag(film, ratio) == pytest.approx(1.0 - clearances.WALL_SHARE, abs=0.1)


def test_a_thick_wall_lags_more_as_the_docstring_says():
    assert greatest_lag(1e4, 6.0) == pytest.approx(0.7, abs=0.03)


def test_thumb_rule_is_two_thou_an_inch():
    """0.002 in per inch of bore (Reciprocating Compressors: Operation and Maintenance, table 4-4,
    read): 3 1/8 in gives 0.00625 in."""
    assert clearances.thumb_rule_gap(3.125 * INCH) / INCH == pytest.approx(0.00625, abs=1e-12)


def test_stone_cold_gap_matches_the_sum_done_by_hand():
    """80 mm iron, 170 degC ring, 20 degC cylinder: pi 80 11.7e-6 150 = 0.4411, and 0.05."""
    found = clearances.closed_gap(
        bore=80.0,
        ring_expansion=11.7e-6,
        cylinder_expansion=11.7e-6,
        ring_temperature=170.0,
        cylinder_temperature=20.0,
        shop_temperature=20.0,
        margin=0.05,
    )
    assert found == pytest.approx(0.4411 + 0.05, rel=0.003)


@pytest.mark.parametrize("bore", [25.0, 80.0, 300.0])
def test_groove_is_as_deep_and_wide_as_the_printed_rules(bore):
    """Depth t + 0.4 mm (Khurmi and Gupta, 32.9) and at least 0.015 in over the ring, width at least
    0.001 in over it (a seal maker's page; all read)."""
    thickness = bore / 28
    depth = clearances.groove_depth(
        radial_thickness=thickness,
        ring_expansion=IRON,
        piston_expansion=IRON,
        ring_temperature=170.0,
        piston_temperature=170.0,
        shop_temperature=20.0,
    )
    assert depth == pytest.approx(thickness + 0.4, abs=0.0015)
    assert depth - thickness >= 0.015 * INCH
    aim, least, greatest = clearances.running_side_clearance(bore)
    assert 0.001 * INCH <= least < aim < greatest


def test_side_clearance_spans_the_rule_of_thumb():
    """A seal maker's page: 0.001 in and a groove 0.003 in wider at most. Reciprocating Compressors:
    Operation and Maintenance, table 4-4: 0.006 in to the inch of width, 0.002 in at least. Motors
    of 75 to 100 mm as built: 0.0012 to 0.0029 in, to 0.0039 in service. All read.
    """
    aim, least, greatest = clearances.running_side_clearance(30.0)
    assert (least / INCH, greatest / INCH) == pytest.approx((0.001, 0.003))
    aim, least, greatest = clearances.running_side_clearance(400.0)
    assert (least / INCH, greatest / INCH) == pytest.approx((0.002, 0.005))
    assert clearances.running_side_clearance(175.0)[1] == pytest.approx(0.0015 * INCH)
    assert greatest <= least + 0.003 * INCH + 1e-9
    # Rings of 5/8 in, as a large engine has them.
    assert least <= 0.006 * 0.625 * INCH <= greatest
    aim, least, greatest = clearances.running_side_clearance(87.5)
    assert least == pytest.approx(0.0012 * INCH, abs=0.002)
    assert 0.0029 * INCH < greatest < 0.0039 * INCH


def test_piston_backs_the_ring():
    """Radial piston clearance under a third of the ring's wall (a seal maker's page, read)."""
    assert clearances.piston_clearance_limit(3.0) == pytest.approx(2.0)


@pytest.mark.parametrize(
    ("piston", "by_hand"),
    [
        # First order, 100 mm bore, both at 170 degC over a 20 degC shop, margin 0.1:
        # 100 150 (alpha_p - 11.7e-6) + 0.1, done by hand.
        (IRON, 0.1),
        (BRONZE, 0.1 + 0.1215),
        (ALUMINIUM, 0.1 + 0.1785),
    ],
)
def test_piston_clearance_matches_the_sum_done_by_hand(piston, by_hand):
    found = clearances.piston_clearance(
        bore=100.0,
        piston_expansion=piston,
        cylinder_expansion=11.7e-6,
        piston_temperature=170.0,
        cylinder_temperature=170.0,
        shop_temperature=20.0,
        margin=0.1,
    )
    assert found == pytest.approx(by_hand, rel=0.005)


EXPANSIONS = st.floats(1e-6, 1.5e-4)
HEATS = st.floats(20.0, 350.0)
BORES = st.floats(10.0, 900.0)


@given(BORES, EXPANSIONS, EXPANSIONS, HEATS, HEATS, st.floats(0.0, 0.5))
def test_hot_gap_undoes_the_cold_gap(bore, ring, cylinder, ring_heat, cylinder_heat, margin):
    heat = {
        "bore": bore,
        "ring_expansion": ring,
        "cylinder_expansion": cylinder,
        "ring_temperature": ring_heat,
        "cylinder_temperature": cylinder_heat,
        "shop_temperature": 20.0,
    }
    cold = clearances.closed_gap(margin=margin, **heat)
    hot = clearances.hot_closed_gap(gap=cold, **heat)
    assert cold >= margin
    assert hot >= margin - 1e-9
    if cold > margin:
        assert hot == pytest.approx(margin, abs=1e-9)


@given(BORES, EXPANSIONS, EXPANSIONS, HEATS, HEATS, st.floats(0.0, 0.5))
def test_gap_follows_the_first_order_formula(bore, ring, cylinder, ring_heat, wall, margin):
    """pi d1 (alpha_r (T_r - T_0) - alpha_c (T_c - T_0)) + margin, to the square of a strain."""
    strain = ring * (ring_heat - 20.0)
    first = math.pi * bore * (strain - cylinder * (wall - 20.0)) + margin
    found = clearances.closed_gap(
        bore=bore,
        ring_expansion=ring,
        cylinder_expansion=cylinder,
        ring_temperature=ring_heat,
        cylinder_temperature=wall,
        shop_temperature=20.0,
        margin=margin,
    )
    slack = (strain + cylinder * (wall - 20.0)) * (abs(first) + 2 * margin) + 1e-12
    assert found == pytest.approx(max(first, margin), abs=slack)


@given(BORES, EXPANSIONS, EXPANSIONS, HEATS, HEATS, st.floats(0.0, 1.0))
def test_hot_piston_undoes_the_cold_piston(bore, piston, cylinder, piston_heat, wall, margin):
    heat = {
        "bore": bore,
        "piston_expansion": piston,
        "cylinder_expansion": cylinder,
        "piston_temperature": piston_heat,
        "cylinder_temperature": wall,
        "shop_temperature": 20.0,
    }
    cold = clearances.piston_clearance(margin=margin, **heat)
    hot = clearances.hot_piston_clearance(piston_diameter=bore - cold, **heat)
    assert cold >= margin
    assert hot >= margin - 1e-9
    if cold > margin:
        assert hot == pytest.approx(margin, abs=1e-9)


@given(st.floats(0.5, 100.0), EXPANSIONS, EXPANSIONS, HEATS, HEATS, st.floats(0.0, 0.5))
def test_hot_side_undoes_the_cold_side(width, ring, piston, ring_heat, piston_heat, margin):
    heat = {
        "ring_width": width,
        "ring_expansion": ring,
        "piston_expansion": piston,
        "ring_temperature": ring_heat,
        "piston_temperature": piston_heat,
        "shop_temperature": 20.0,
    }
    cold = clearances.side_clearance(margin=margin, **heat)
    hot = clearances.hot_side_clearance(clearance=cold, **heat)
    assert hot >= margin - 1e-9
    if cold > margin:
        assert hot == pytest.approx(margin, abs=1e-9)


@given(st.floats(0.5, 50.0), EXPANSIONS, EXPANSIONS, HEATS, HEATS)
def test_a_resting_piston_never_rides_on_its_ring(thickness, ring, piston, ring_heat, piston_heat):
    """Where the piston rests on the bore, what is behind the ring is depth less thickness."""
    depth = clearances.groove_depth(
        radial_thickness=thickness,
        ring_expansion=ring,
        piston_expansion=piston,
        ring_temperature=ring_heat,
        piston_temperature=piston_heat,
        shop_temperature=20.0,
    )
    hot_depth = depth * (1 + piston * (piston_heat - 20.0))
    hot_thickness = thickness * (1 + ring * (ring_heat - 20.0))
    assert hot_depth - hot_thickness >= 0.4 - 1e-9
    assert depth >= thickness + 0.4


def test_back_clearance_is_half_what_the_diameters_leave():
    """Bore 80, piston 79.8, ring 3.2 thick, groove 3.6 deep: (80 - 79.8)/2 + 3.6 - 3.2 = 0.5."""
    sizes = {"bore": 80.0, "piston_diameter": 79.8, "radial_thickness": 3.2, "depth": 3.6}
    assert clearances.back_clearance(**sizes) == pytest.approx(0.5)
    cold = {
        "ring_expansion": IRON,
        "piston_expansion": BRONZE,
        "cylinder_expansion": IRON,
        "ring_temperature": 20.0,
        "piston_temperature": 20.0,
        "cylinder_temperature": 20.0,
        "shop_temperature": 20.0,
    }
    assert clearances.hot_back_clearance(**sizes, **cold) == pytest.approx(0.5)
    cold["piston_temperature"] = 170.0
    # The bottom of the groove, at radius 36.3, moves out by 36.3 19.8e-6 150.
    assert clearances.hot_back_clearance(**sizes, **cold) == pytest.approx(0.5 - 0.10781, abs=1e-5)


def touch(gap, piston_diameter, piston_expansion=IRON, wall=20.0):
    return clearances.first_touch(
        bore=80.0,
        gap=gap,
        piston_diameter=piston_diameter,
        ring_expansion=IRON,
        piston_expansion=piston_expansion,
        cylinder_expansion=IRON,
        cylinder_temperature=wall,
        shop_temperature=20.0,
    )


def test_first_touch_is_where_the_hot_clearance_is_nought():
    part, temperature = touch(0.16, 79.7)
    assert part == "ring ends"
    # 0.16/(pi 80 11.7e-6) = 54.4 K over the shop, to first order.
    assert temperature == pytest.approx(20.0 + 54.4, abs=0.1)
    left = clearances.hot_closed_gap(
        bore=80.0,
        gap=0.16,
        ring_expansion=IRON,
        cylinder_expansion=IRON,
        ring_temperature=temperature,
        cylinder_temperature=20.0,
        shop_temperature=20.0,
    )
    assert left == pytest.approx(0.0, abs=1e-9)
    part, temperature = touch(0.8, 79.9, ALUMINIUM)
    assert part == "piston"
    left = clearances.hot_piston_clearance(
        bore=80.0,
        piston_diameter=79.9,
        piston_expansion=ALUMINIUM,
        cylinder_expansion=IRON,
        piston_temperature=temperature,
        cylinder_temperature=20.0,
        shop_temperature=20.0,
    )
    assert left == pytest.approx(0.0, abs=1e-9)


def test_nothing_touches_when_the_clearances_are_wide():
    assert touch(10.0, 75.0) == ("nothing", None)


def test_what_does_not_grow_touches_nothing():
    assert touch(10.0, 79.9, piston_expansion=0.0) == ("nothing", None)


def test_a_warm_cylinder_puts_the_touch_off():
    assert touch(0.16, 79.7, wall=120.0).temperature > touch(0.16, 79.7).temperature + 99.0


@pytest.mark.parametrize(
    ("call", "name"),
    [
        (lambda: clearances.running_gap(0.0), "bore"),
        (lambda: clearances.thumb_rule_gap(-1.0), "bore"),
        (lambda: clearances.running_side_clearance(float("nan")), "bore"),
        (lambda: clearances.running_piston_clearance(0.0), "bore"),
        (lambda: clearances.piston_clearance_limit(0.0), "radial_thickness"),
        (lambda: clearances.starting_wall_temperature(170.0, 20.0, 1.001), "share"),
        (lambda: clearances.starting_wall_temperature(170.0, 20.0, -0.001), "share"),
        (lambda: expansion.growth(-1e-6, 20.0, 20.0), "expansion"),
        (lambda: expansion.growth(1e-5, 901.0, 20.0), "temperature"),
        (lambda: expansion.growth(1e-5, 20.0, -41.0), "shop_temperature"),
        (lambda: iron_gap(-80.0, 0.7, 0.5), "bore"),
        (lambda: touch(0.1, 79.0, piston_expansion=1.0), "expansion"),
    ],
)
def test_impossible_inputs_are_refused_by_name(call, name):
    with pytest.raises(OutOfRange) as caught:
        call()
    assert caught.value.name == name


def test_a_negative_margin_is_refused():
    with pytest.raises(OutOfRange) as caught:
        clearances.closed_gap(
            bore=80.0,
            ring_expansion=IRON,
            cylinder_expansion=IRON,
            ring_temperature=170.0,
            cylinder_temperature=20.0,
            shop_temperature=20.0,
            margin=-0.01,
        )
    assert caught.value.name == "margin"
