"""Rings set on a round former against a quadratic programme solved by HiGHS.

psi0, light, shares and peaks are pure numbers, so one programme in a circle of radius 1 checks them
for every size. Mechanics of the project, section 2.
"""

import math

import numpy as np
import pytest
from scipy import sparse
from scipy.sparse.linalg import spsolve

from published import strip_programme as strip
from ringwright.core.catalogue import inputs_ring
from ringwright.core.ring import heat_set, spring

NODES = 721


@pytest.fixture(scope="module", params=[1, 2])
def bound(request):
    """(turns, the round-set strip in its bore)."""
    return request.param, strip.in_bore(strip.even, request.param, 360 * request.param + 1)


def first_touch(held):
    """Where the wall begins to press, between two nodes [deg]."""
    touching = np.flatnonzero(held.force[2:] > 0.1 * held.psi[1]) + 2
    return math.degrees(held.psi[touching[0] - 1]), math.degrees(held.psi[touching[0]])


def test_nothing_bears_over_the_slack_angle(bound):
    _, held = bound
    before, after = first_touch(held)
    step = math.degrees(held.psi[1])
    assert before - step <= heat_set.SLACK_ANGLE <= after + step


def test_mean_pressure_over_the_contact_pressure(bound):
    turns, held = bound
    mean = held.force.sum() / (turns * math.pi)
    assert heat_set.mean_share(turns) == pytest.approx(mean, rel=1e-4)
    # The mechanics prints 0.900 and 0.950.
    assert round(mean, 3) == {1: 0.900, 2: 0.950}[turns]


def test_tip_force_and_peak_moment(bound):
    _, held = bound
    peak = held.moment.max()
    assert peak == pytest.approx(heat_set.PEAK_MOMENT, rel=1e-4)
    assert math.degrees(held.psi[held.moment.argmax()]) == pytest.approx(90.0, abs=0.5)
    # In a circle of radius 1 the contact pressure p0*h1*r_o is 1: the tip bears F = p0*h1*r_o/sin.
    assert heat_set.tip_force(1.0, 2.0, 1.0) == pytest.approx(held.force[0], rel=1e-4)
    assert np.allclose(held.moment[-60:], 1.0, atol=1e-6)


def test_widest_light_and_where_it_is(bound):
    _, held = bound
    widest = -held.w.min()
    # kappa0 = 1 in a bore of which the neutral radius is 1.
    assert heat_set.widest_light(1.0, 2.5, 0.5) == pytest.approx(widest, rel=3e-4)
    angle = math.degrees(held.psi[held.w.argmin()])
    assert angle == pytest.approx(heat_set.LIGHT_ANGLE, abs=math.degrees(held.psi[1]))


def test_slack_angle_solves_its_equation():
    b = heat_set.SLACK_RADIANS
    assert math.sin(b) - math.sin(2.0 * b) / 4.0 - b / 2.0 == pytest.approx(0.0, abs=1e-15)


@pytest.mark.parametrize("turns", [1, 2])
def test_ring_sprung_on_its_former_closes_light_tight_with_the_same_pressures(turns):
    nodes = 360 * turns + 1
    on_former = strip.in_bore(strip.even, turns, nodes)
    relieved = strip.in_bore(lambda psi: on_former.moment, turns, nodes)
    assert np.abs(relieved.w).max() < 1e-6
    assert np.allclose(relieved.force, on_former.force, atol=1e-5)
    lever = strip.trapezium(on_former.psi) * (1.0 - np.cos(on_former.psi))
    factor = (lever @ on_former.moment) / (turns * math.pi)
    assert heat_set.sprung_gap_factor(turns) == pytest.approx(factor, rel=1e-4)


@pytest.mark.parametrize("turns", [1, 2])
def test_bound_ring_turned_in_a_closing_ring_becomes_light_tight(turns):
    nodes = 360 * turns + 1
    closed = strip.in_bore(strip.even, turns, nodes)
    assert closed.w.min() < -0.1
    # Clamped as it lies and turned round, it keeps its strains: that moment is what it now needs.
    turned = strip.in_bore(lambda psi: closed.moment, turns, nodes)
    assert np.abs(turned.w).max() < 1e-6
    assert turned.force.sum() == pytest.approx(closed.force.sum(), rel=1e-6)
    assert heat_set.bearing(heat_set.BOUND, inputs_ring.CLOSING_RING) == (False, False)
    assert heat_set.bearing(heat_set.BOUND, heat_set.FORCED_ROUND) == (False, True)
    assert heat_set.bearing(heat_set.SPRUNG, heat_set.FORCED_ROUND) == (False, False)


@pytest.mark.parametrize(
    ("setting", "need"), [(heat_set.BOUND, strip.even), (heat_set.SPRUNG, strip.as_sprung)]
)
def test_plain_ring_turned_while_a_band_holds_it(setting, need):
    """A flexible band presses evenly: M = p*(1 - cos psi), p such that the gap closes."""
    psi, rows, _ = strip.bending(NODES, 1)
    lever = strip.trapezium(psi) * (1.0 - np.cos(psi))
    even = (lever @ need(psi)) / (lever @ (1.0 - np.cos(psi)))
    assert heat_set.band_share(setting, 1) == pytest.approx(even, rel=2e-4)
    # Its shape under the band: w'' + w = need - M; it may lie anywhere along its line of symmetry.
    left = need(psi) - even * (1.0 - np.cos(psi))
    pinned = sparse.vstack([rows, sparse.csr_matrix(([1.0], ([0], [NODES - 1])), (1, NODES))])
    inside = spsolve(pinned.tocsc(), np.append(left[1:], 0.0))
    shifts = np.linspace(-1.0, 1.0, 4001)
    spans = [np.ptp(inside + shift * np.cos(psi)) for shift in shifts]
    assert heat_set.band_allowance(1.0, 2.5, 0.5, setting, 1) == pytest.approx(min(spans), rel=1e-3)
    assert heat_set.bearing(setting, heat_set.BAND).uniform


def test_ring_turned_under_a_band_then_bears_evenly():
    held = strip.in_bore(lambda psi: 2.0 / 3.0 * (1.0 - np.cos(psi)))
    density = held.force[1:-1] / held.psi[1]
    assert np.abs(held.w).max() < 1e-6
    assert np.allclose(density, 2.0 / 3.0, rtol=1e-3)
    # One turn set round presses 1.35 times as hard, all told, as the uniform ring of its gap.
    assert heat_set.mean_share(1) / (2.0 / 3.0) == pytest.approx(1.35, abs=0.005)


@pytest.mark.parametrize(
    ("setting", "need"), [(heat_set.BOUND, strip.even), (heat_set.SPRUNG, strip.as_sprung)]
)
def test_double_turn_ring_under_one_band(setting, need):
    held = strip.under_one_band(need)
    mean = held.force.sum() / (2.0 * math.pi)
    assert heat_set.band_share(setting, 2) == pytest.approx(mean, rel=2e-3)
    together = (held.force + held.force[::-1])[2:-2] / held.psi[1]
    assert np.allclose(together, 2.0 * mean, rtol=2e-3)
    span = np.ptp(held.w)
    assert heat_set.band_allowance(1.0, 2.5, 0.5, setting, 2) == pytest.approx(span, rel=5e-3)


@pytest.mark.parametrize("turns", [1, 2])
@pytest.mark.parametrize(
    ("setting", "need"), [(heat_set.BOUND, strip.even), (heat_set.SPRUNG, strip.as_sprung)]
)
def test_force_between_two_plates_that_closes_the_gap(setting, need, turns):
    forces = strip.across(need, turns, 240 * turns + 1)
    # p0*h1*r_o = 1 for one turn; the whole ring is `turns` of them wide.
    whole = heat_set.closing_force(1.0, 2.0, float(turns), setting, turns)
    # A plate presses one turn at 90 degrees and, of a double-turn ring, the other at 270.
    assert whole == pytest.approx(forces.sum(), rel=3e-4)
    if turns == 1:
        banded = heat_set.band_share(setting, 1)
        assert whole == pytest.approx(spring.diametral_force(banded).to_close_gap, rel=1e-3)
