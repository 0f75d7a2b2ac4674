"""Sizes of a ring made without heat, by hand, and how it lies while it is held, by quadrature.

Bore 120 mm, 4 thick: r = 58. Its first turning has R = 60, so kappa0 = 1/58 - 1/60 and kappa0*r^2 =
58 - 58^2/60 = 1.93333 mm. Off a circle, held: w'' + w = f, worked here by Duhamel's integral.
"""

import math
from types import SimpleNamespace as Record

import numpy as np
import pytest
from scipy.integrate import quad
from scipy.optimize import brentq

from ringwright.core.catalogue.inputs_ring import BAND, CLOSING_RING, FORCED_ROUND
from ringwright.core.ring import without_heat

KAPPA = 1.0 / 58.0 - 1.0 / 60.0
SIZE = 58.0 - 58.0**2 / 60.0
S0 = brentq(lambda b: math.sin(b) - 0.25 * math.sin(2.0 * b) - 0.5 * b, 1.5, 2.5)


def in_a_closing_ring(psi):
    """Outwards: w'' + w = 1 - sin psi/sin psi0, what its moment lacks; at rest where it touches."""

    def part(s):
        return math.sin(s - psi) * (1.0 - math.sin(s) / math.sin(S0))

    return quad(part, psi, S0, epsabs=1e-13)[0] if psi < S0 else 0.0


def design(modulus=1e5):
    return Record(
        duty=Record(bore=120.0, closed_gap=0.5, modulus=modulus),
        section=Record(thickness=4.0),
        spring=Record(curvature_change=KAPPA),
    )


# --- how it lies ---


@pytest.mark.parametrize("psi", [0.0, 0.2, 0.565, 1.1, 1.7, 2.1, 2.139, 2.14, 2.6, math.pi])
def test_in_a_closing_ring_it_lies_in_behind_its_ends(psi):
    found = without_heat.lies_off(CLOSING_RING, psi)
    assert found == pytest.approx(in_a_closing_ring(psi), abs=1e-10)
    assert found <= 1e-12


def test_by_a_band_it_lies_oval():
    """(1 - phi sin phi)/3 from the back: a third out at back and ends, 0.19027 in at 90 degrees."""
    assert without_heat.lies_off(BAND, math.pi) == pytest.approx(1.0 / 3.0, rel=1e-12)
    assert without_heat.lies_off(BAND, 0.0) == pytest.approx(1.0 / 3.0, rel=1e-12)
    assert without_heat.lies_off(BAND, 0.5 * math.pi) == pytest.approx(-0.1902654, abs=1e-7)
    # w'' + w = 1/3 + 2/3 cos psi, by differences.
    for psi in (0.3, 0.9, 1.6, 2.4, 2.9):
        w = [without_heat.lies_off(BAND, psi + d) for d in (-1e-3, 0.0, 1e-3)]
        bend = (w[0] - 2.0 * w[1] + w[2]) / 1e-6
        assert bend + w[1] == pytest.approx((1.0 + 2.0 * math.cos(psi)) / 3.0, abs=1e-5)


def test_forced_round_it_lies_nowhere_off():
    assert [without_heat.lies_off(FORCED_ROUND, a) for a in (0.0, 0.6, 2.0, 3.0)] == [0.0] * 4
    assert without_heat.held(FORCED_ROUND) == (0.0, 0.0, 0.0)


def test_the_deepest_and_the_farthest_of_it():
    psi = np.linspace(0.0, math.pi, 20001)
    for finishing in (BAND, CLOSING_RING):
        off = [without_heat.lies_off(finishing, float(a)) for a in psi]
        held = without_heat.held(finishing)
        assert held.deepest == pytest.approx(-min(off), abs=1e-8)
        assert held.farthest == pytest.approx(max(max(off), 0.0), abs=1e-8)


def test_what_lies_in_takes_of_the_circumference():
    """An inextensible ring is as much shorter round as it lies in: -2*integral of w, 0.215."""
    taken = -2.0 * quad(in_a_closing_ring, 0.0, S0, epsabs=1e-12)[0]
    assert without_heat.held(CLOSING_RING).taken == pytest.approx(taken, rel=1e-9)
    assert taken == pytest.approx(0.215, abs=0.0005)
    assert without_heat.held(BAND).taken == 0.0


# --- sizes ---


def test_the_piece_to_cut_out():
    """2*pi*(60 - 58) + 0.5 = 13.0664; in a closing ring 0.2148*1.93333 more."""
    for finishing in (BAND, FORCED_ROUND):
        found = without_heat.piece_for(KAPPA, 58.0, 0.5, finishing)
        assert found == pytest.approx(4.0 * math.pi + 0.5, rel=1e-12)
        assert without_heat.curvature_for(found, 58.0, 0.5, finishing) == pytest.approx(KAPPA)
    taken = without_heat.held(CLOSING_RING).taken
    found = without_heat.piece_for(KAPPA, 58.0, 0.5, CLOSING_RING)
    assert found == pytest.approx(4.0 * math.pi + 0.5 + taken * SIZE, rel=1e-12)
    assert without_heat.curvature_for(found, 58.0, 0.5, CLOSING_RING) == pytest.approx(KAPPA)


def test_sizes_of_a_ring_held_by_a_band_and_bored_again():
    """Clamped at 0.3, the outside is 120 - 0.2/pi = 119.93634.

    1.1 are left on its diameter and 0.9 inside; it lies in by 0.2732353*1.93333 = 0.528255.
    """
    found = without_heat.sizes(design(), BAND, 0.3, 1.1, 0.9)
    outside = 120.0 - 0.2 / math.pi
    wanted = {
        "free_radius": 60.0,
        "piece": 4.0 * math.pi + 0.5,
        "first_outside": 120.0 + 4.0 + 1.1,
        "first_inside": 120.0 - 4.0 - 1.8,
        "held_outside": outside + 1.1,
        "outside": outside,
        "inside": outside - 8.0,
        "thickness": 4.0 + 0.55 + 0.9,
        "spigot": outside - 8.0 - 1.8 - 2.0 * 0.528255 - 0.1,
        # Half of the thickness in on both sides.
        "plate": outside - 4.0,
    }
    assert found._asdict() == pytest.approx(wanted, abs=2e-6)


def test_sizes_of_a_ring_held_in_a_closing_ring_and_turned_outside_alone():
    """It lies in by 0.1047478*1.93333 = 0.202512."""
    found = without_heat.sizes(design(), CLOSING_RING, 0.5, 0.9, 0.0)
    assert found.outside == pytest.approx(120.0, rel=1e-12)
    assert found.first_inside == pytest.approx(116.0, rel=1e-12)
    assert found.thickness == pytest.approx(4.45, rel=1e-12)
    assert found.spigot == pytest.approx(112.0 - 0.405024 - 0.1, abs=2e-6)
    # Plates stay 0.3 of the thickness in.
    assert found.plate == pytest.approx(120.0 - 2.4, rel=1e-12)
    # Forced round it lies in nowhere.
    found = without_heat.sizes(design(), FORCED_ROUND, 0.5, 0.9, 0.0)
    assert found.spigot == pytest.approx(112.0 - 0.1, rel=1e-12)


def test_what_must_be_left_to_clean_it():
    """As deep as it lies and 0.2 mm: outside on the diameter, inside on the radius as far as it
    stands out, a third of 1.93333 = 0.644444."""
    needed = without_heat.needed_outside
    assert needed(KAPPA, 58.0, BAND) == pytest.approx(2.0 * 0.728255, abs=2e-6)
    assert needed(KAPPA, 58.0, CLOSING_RING) == pytest.approx(2.0 * 0.402512, abs=2e-6)
    assert needed(KAPPA, 58.0, FORCED_ROUND) == pytest.approx(0.4, rel=1e-12)
    needed = without_heat.needed_inside
    assert needed(KAPPA, 58.0, BAND) == pytest.approx(0.844444, abs=1e-6)
    assert needed(KAPPA, 58.0, CLOSING_RING) == pytest.approx(0.2, rel=1e-12)
    assert needed(KAPPA, 58.0, FORCED_ROUND) == pytest.approx(0.2, rel=1e-12)


@pytest.mark.parametrize("nodes", [9, 14])
def test_where_it_lay_in_it_stays_thicker(nodes):
    step = 2.0 * math.pi / (nodes - 1)
    found = without_heat.thicknesses(4.0, SIZE, CLOSING_RING, nodes)
    tips = [min(i, nodes - 1 - i) * step for i in range(nodes)]
    wanted = [4.0 - SIZE * in_a_closing_ring(psi) for psi in tips]
    assert found == pytest.approx(wanted, abs=1e-9)
    assert max(found) > 4.15
    assert without_heat.thicknesses(4.0, SIZE, FORCED_ROUND, nodes) == [4.0] * nodes


def test_where_it_lay_out_by_more_than_itself_a_tenth_is_left_to_reckon_with():
    """At back and ends 4 - 11.1/3 = 0.3, less than a tenth of 4; at 90 degrees 4 + 0.1902654*11.1.

    With 10.5 it is 0.5, which stays.
    """
    found = without_heat.thicknesses(4.0, 11.1, BAND, 5)
    side = 4.0 + 0.1902654 * 11.1
    assert found == pytest.approx([0.4, side, 0.4, side, 0.4], abs=1e-6)
    assert without_heat.thicknesses(4.0, 10.5, BAND, 5)[2] == pytest.approx(0.5, abs=1e-9)


@pytest.mark.parametrize(
    ("finishing", "peak"), [(BAND, 4.0 / 3.0), (CLOSING_RING, 1.187), (FORCED_ROUND, 1.0)]
)
def test_stress_when_the_blank_is_drawn_closed(finishing, peak):
    """Half of 102 000*5.45*5.7471e-4 = 159.739, times (120 - 10.9)/(120 - 5.45) = 0.952422.

    The moment of a closing ring is greatest at a quarter turn, 1/sin psi0; of a band at the back.
    """
    found = without_heat.closing_stress(design(102000.0), finishing, 5.45)
    assert found == pytest.approx(peak * 0.5 * 102000.0 * 5.45 * KAPPA * 109.1 / 114.55, rel=5e-4)
    if finishing == CLOSING_RING:
        peak = 1.0 / math.sin(S0)
        assert found == pytest.approx(peak * 159.739 * 0.952422, rel=2e-5)
