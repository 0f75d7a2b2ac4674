"""Turning through, grip, plug and winding on by pencil and by scipy, with figures of no symmetry.

Turns of radius 39.8, 3.4 thick, of 107 000 N/mm2 and 0.24: as wide as thick, wider, narrower.
"""

import math

import numpy as np
import pytest
from scipy.integrate import quad
from scipy.special import zeta

from ringwright.core.ring import winding

BORE, WALL, IRON, LATERAL, RADIUS = 83.0, 3.4, 107000.0, 0.24, 39.8
WIDTHS = (3.4, 5.9, 1.7, 3.0, 4.1)
CATALAN = quad(lambda x: math.atan(x) / x, 0.0, 1.0, epsabs=1e-13, epsrel=1e-13)[0]


def twisted(longer, shorter):
    """(J, shear for a torque of 1 on the longer sides, on the shorter): Saint-Venant's series."""
    n = np.arange(1.0, 400.0, 2.0)
    bent = 0.5 * math.pi * longer / shorter * n
    # tanh is 1 less what exp says; what falls slowly is summed by zeta and by Catalan's constant.
    short_of_one = 2.0 / (np.exp(np.minimum(2.0 * bent, 600.0)) + 1.0)
    fifth = 31.0 / 32.0 * zeta(5.0) - (short_of_one / n**5).sum()
    constant = longer * shorter**3 * (1.0 / 3.0 - 64.0 / math.pi**5 * shorter / longer * fifth)
    across = (1.0 / (n**2 * np.cosh(np.minimum(bent, 600.0)))).sum()
    signs = np.where(n % 4.0 == 1.0, 1.0, -1.0)
    along = CATALAN - (signs * short_of_one / n**2).sum()
    eight = 8.0 / math.pi**2
    rate = shorter / constant
    return constant, rate * (1.0 - eight * across), rate * eight * along


def faces(thickness, width):
    """(J, shear on the faces that look sideways, shear on the inner face) for a torque of 1."""
    constant, long_side, short_side = twisted(max(thickness, width), min(thickness, width))
    return (constant, long_side, short_side) if thickness >= width else (
        constant, short_side, long_side
    )  # fmt: skip


def passed(moved, thickness, width):
    """Forces at the end and half way round that move those by `moved` and half of it, by energy."""
    bending = IRON * thickness * width**3 / 12.0
    twisting = IRON / (2.0 * (1.0 + LATERAL)) * faces(thickness, width)[0]

    def work(one, other):
        def each(a):
            return (
                math.sin(a - one) * math.sin(a - other) / bending
                + (1.0 - math.cos(a - one)) * (1.0 - math.cos(a - other)) / twisting
            )

        return RADIUS**3 * quad(each, max(one, other), 2.0 * math.pi, epsrel=1e-13)[0]

    moves = [[work(one, other) for other in (0.0, math.pi)] for one in (0.0, math.pi)]
    return np.linalg.solve(moves, [moved, 0.5 * moved])


@pytest.mark.parametrize(("one", "other"), [(3.4, 3.4), (5.9, 3.4), (2.1, 3.4), (9.7, 2.3)])
def test_torsion_of_a_rectangle_by_its_series(one, other):
    constant, long_side, short_side = twisted(max(one, other), min(one, other))
    # The fifth term of the constant, 2 exp(-5 pi)/3125, is left out of it.
    assert winding.torsion_constant(one, other) == pytest.approx(constant, rel=3e-10)
    found = winding.torsion_stress(870.0, one, other)
    assert found == pytest.approx((870.0 * long_side, 870.0 * short_side), rel=3e-10)
    stresses = winding._edge_stress(870.0 / constant, one, other)
    assert stresses == pytest.approx((870.0 * long_side, 870.0 * short_side), rel=3e-11)


@pytest.mark.parametrize("width", WIDTHS)
def test_an_end_s_stiffness_sideways(width):
    """1/(r^3 (pi/(E I) + 3 pi/(G J)))."""
    bending = IRON * WALL * width**3 / 12.0
    twisting = IRON / 2.48 * faces(WALL, width)[0]
    expected = 1.0 / (RADIUS**3 * (math.pi / bending + 3.0 * math.pi / twisting))
    found = winding.axial_stiffness(RADIUS, WALL, width, IRON, LATERAL)
    assert found == pytest.approx(expected, rel=1e-9)


@pytest.mark.parametrize("width", WIDTHS)
@pytest.mark.parametrize("brittle", [True, False])
def test_turning_through_by_energy_and_a_search_along_the_turn(width, brittle):
    blank = 2.0 * width + 0.9
    end, middle = passed(blank, WALL, width)
    constant, sideways, radial = faces(WALL, width)
    found = winding.passing_forces(blank, RADIUS, WALL, width, IRON, LATERAL, constant)
    assert found == pytest.approx((end, middle), rel=1e-9)
    acts = winding.turning_through(blank, RADIUS, WALL, width, IRON, LATERAL, brittle)
    assert acts.force == pytest.approx(end, rel=1e-9)
    section = WALL * width * width / 6.0
    assert acts.bending == pytest.approx(end * RADIUS / section, rel=1e-9)
    inner = radial * (1.0 + (0.9 + 0.32 * WALL / width) * WALL / (2.0 * RADIUS))
    twist = 2.0 * max(end, middle) * RADIUS * max(sideways, inner)
    assert acts.twist == pytest.approx(twist, rel=1e-9)
    # Tip (0) to bridge (2 pi), the force half way round besides.
    psi = np.linspace(0.0, 2.0 * math.pi, 40001)
    late = np.where(psi > math.pi, middle, 0.0)
    bent = RADIUS * np.abs((end - late) * np.sin(psi)) / section
    torque = RADIUS * (end * (1.0 - np.cos(psi)) + late * (1.0 + np.cos(psi)))
    worst = 0.0
    for stress, shear in ((bent, sideways * torque), (0.0 * bent, inner * torque)):
        if brittle:
            worst = max(worst, (0.5 * stress + np.sqrt(0.25 * stress**2 + shear**2)).max())
        else:
            worst = max(worst, np.sqrt(stress**2 + 3.0 * shear**2).max())
    assert acts.equivalent == pytest.approx(worst, rel=1e-7)


def test_worst_of_bending_and_twist_where_bending_leads():
    """s sin with t (1 - cos): principal stress, by a fine search; tough, at the far end."""
    psi = np.linspace(0.0, math.pi, 200001)
    for bending, shear in ((61.0, 43.0), (70.0, 37.0), (35.0, 52.0)):
        s, t = bending * np.sin(psi), shear * (1.0 - np.cos(psi))
        worst = (0.5 * s + np.sqrt(0.25 * s * s + t * t)).max()
        assert winding._worst_together(bending, shear, True) == pytest.approx(worst, rel=1e-9)
        worst = np.sqrt(s * s + 3.0 * t * t).max()
        assert winding._worst_together(bending, shear, False) == pytest.approx(worst, rel=1e-9)


def test_grip_is_what_the_heat_kept_of_the_way_less_the_slit():
    """Blank 9.3, relief 0.83, slit 0.7: 7.719 - 0.7 held back. No heat, no grip."""
    end = passed(7.019, WALL, 4.1)[0]
    found = winding.grip_force(9.3, 0.7, 0.83, RADIUS, WALL, 4.1, IRON, LATERAL)
    assert found == pytest.approx(end, rel=1e-9)
    assert winding.grip_force(9.3, 0.7, 0.07, RADIUS, WALL, 4.1, IRON, LATERAL) == 0.0
    # 0.744 - 0.7: the little that is held.
    little = winding.grip_force(9.3, 0.7, 0.08, RADIUS, WALL, 4.1, IRON, LATERAL)
    assert little == pytest.approx(end * 0.044 / 7.019, rel=1e-9)
    # Half a hundredth is held too.
    little = winding.grip_force(9.3, 0.739, 0.08, RADIUS, WALL, 4.1, IRON, LATERAL)
    assert little == pytest.approx(end * 0.005 / 7.019, rel=1e-9)


def even():
    """E a/2 (1/r - 1/R) from the bore's neutral radius to the piston's."""
    return IRON * WALL / 2.0 * (1.0 / 39.8 - 1.0 / 43.2)


def test_opened_evenly():
    assert winding.even_opening_stress(BORE, WALL, IRON) == pytest.approx(even(), rel=1e-10)


@pytest.mark.parametrize(
    ("own", "share"),
    [
        (0.0, 1.1866),
        (0.3, 1.1866 - 0.273 - 0.0342),
        (0.499, 1.1866 - 0.91 * 0.499 - 0.38 * 0.249001),
        (0.501, 0.499 * 4.0 / math.pi),
        (0.87, 0.13 * 4.0 / math.pi),
        (0.999, 0.001 * 4.0 / math.pi),
    ],
)
def test_over_the_plug_as_its_method_prints_it(own, share):
    """u is half the ring's own stress in the bore over S; the bar's curvature adds a/(d - a)."""
    ratio = BORE / WALL
    pressure = own * even() / (1.5 * ratio * (ratio - 1.0))
    found = winding.plug_stress(pressure, BORE, WALL, IRON)
    assert found == pytest.approx(share * even() * (1.0 + 3.4 / 79.6), rel=1e-9)


def test_a_ring_that_drops_over_the_plug_sees_nothing():
    ratio = BORE / WALL
    pressure = even() / (1.5 * ratio * (ratio - 1.0))
    assert winding.plug_stress(1.005 * pressure, BORE, WALL, IRON) == 0.0
    change = even() / (IRON * WALL / 2.0)
    assert winding.plug_stress_round(1.005 * change, BORE, WALL, IRON) == 0.0
    nearly = winding.plug_stress_round(0.9999 * change, BORE, WALL, IRON)
    assert nearly == pytest.approx(1.1866 * 1e-4 * even() * (1.0 + 3.4 / 79.6), rel=1e-7)


def test_a_round_set_ring_over_the_plug():
    """Its own E a kappa/2 less, kappa 4.1e-4."""
    left = even() - IRON * 3.4 * 4.1e-4 / 2.0
    found = winding.plug_stress_round(4.1e-4, BORE, WALL, IRON)
    assert found == pytest.approx(1.1866 * left * (1.0 + 3.4 / 79.6), rel=1e-9)


@pytest.mark.parametrize("width", WIDTHS)
@pytest.mark.parametrize(
    ("plug", "held", "down"), [(131.0, 2.7, 0.0), (23.0, 5.1, 4.3), (0.7, 6.3, 7.9)]
)
def test_wound_on_as_its_method_prints_it(width, plug, held, down):
    """Bending at the corner, or bending and twist on the inner face, for 120, 40 and 20 degrees."""
    bending = IRON * WALL * width**3 / 12.0
    constant, _, inner = faces(WALL, width)
    twisting = IRON / 2.48 * constant
    stiff = 1.0 / (RADIUS**3 * (math.pi / bending + 3.0 * math.pi / twisting))
    force = stiff * (0.95 * width + 0.9 * held + 1.5 * down)
    sideways = force * RADIUS / (WALL * width * width / 6.0)
    twist = 1.76 * force * RADIUS * inner
    expected = []
    for crossing in (120.0, 40.0, 20.0):
        plane = plug * (1.037 + 2.21 * math.exp(-crossing / 16.5))
        both = plane / 2.0 + math.sqrt(plane**2 / 4.0 + twist**2)
        expected.append(max(plane + sideways, both))
    found = winding.wound_on_stress(plug, BORE, WALL, width, held, IRON, LATERAL, let_down=down)
    assert found == pytest.approx(tuple(expected), rel=1e-9)
    assert (found.spread_out, found.hurried_low, found.hurried_high) == tuple(found)


def test_not_let_down_unless_said():
    at_edge = winding.wound_on_stress(61.0, BORE, WALL, 4.1, 2.7, IRON, LATERAL)
    said = winding.wound_on_stress(61.0, BORE, WALL, 4.1, 2.7, IRON, LATERAL, let_down=0.0)
    assert at_edge == said
