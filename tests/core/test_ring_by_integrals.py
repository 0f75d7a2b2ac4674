"""Forces, moments and stresses of rings by integrals of the beam, done by scipy: no formula of the
core's is used on the other side."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad, solve_ivp
from scipy.optimize import brentq

from ringwright.core.ring import heat_set, spring, winding

bores = st.floats(10.0, 1500.0)
ratios = st.floats(12.0, 60.0)
moduli = st.floats(5e4, 2.1e5)
pressures = st.floats(0.005, 0.2)


def over(work, start=0.0, end=math.pi):
    return quad(work, start, end, epsabs=1e-13, epsrel=1e-13, limit=200)[0]


# --- a ring of uniform pressure ---


def test_two_thumbs_by_unit_loads():
    """Half the ring from tip (0) to back (pi): the pressure bends it by 1 - cos, the thumbs at a
    quarter turn by -cos from there on; what moves is the gap, or the diameter under the thumbs."""
    half = math.pi / 2.0
    gap_by_pressure = over(lambda a: (1.0 - math.cos(a)) ** 2)
    gap_by_thumbs = over(lambda a: -math.cos(a) * (1.0 - math.cos(a)), half)
    across_by_pressure = gap_by_thumbs
    across_by_thumbs = over(lambda a: math.cos(a) ** 2, half)
    found = spring.diametral_force(7.0)
    assert found.to_close_gap == pytest.approx(7.0 * gap_by_pressure / gap_by_thumbs, rel=1e-10)
    assert found.to_bore_size == pytest.approx(
        7.0 * across_by_pressure / across_by_thumbs, rel=1e-10
    )


@given(pressures, bores, ratios, st.floats(1.0, 40.0))
def test_the_band_pulls_by_what_the_pressure_parts(pressure, bore, ratio, width):
    """Cut across its diameter: both cuts of the band hold the pressure on half the ring."""
    parted = over(lambda a: pressure * width * 0.5 * bore * math.sin(a))
    assert spring.tangential_force(pressure, bore, width) == pytest.approx(0.5 * parted, rel=1e-10)


@given(pressures, bores, ratios)
def test_stress_at_the_back_by_moment_thrust_and_curvature(pressure, bore, ratio):
    """Moment of the pressure about the back, its thrust, and a/(3r) for the bar's curvature."""
    thickness = bore / ratio
    radius = 0.5 * (bore - thickness)
    force = pressure * 0.5 * bore
    moment = over(lambda a: force * radius * math.sin(a))
    thrust = over(lambda a: force * math.sin(a)) / thickness
    bent = 6.0 * moment / thickness**2
    curved = bent * thickness / (3.0 * radius)
    found = spring.closed_stress(pressure, bore, thickness)
    assert found == pytest.approx((bent, bent - curved - thrust, bent + curved + thrust), rel=1e-9)


@given(st.floats(5e-4, 0.05), bores, ratios, moduli)
def test_book_forms_by_unit_loads(share, bore, ratio, modulus):
    """To the first order: the gap by the pressure, and the stress of pulling the ends apart."""
    thickness = bore / ratio
    radius = 0.5 * (bore - thickness)
    inertia = thickness**3 / 12.0
    pressure = share * modulus / ratio**3
    flexible = 2.0 * radius**3 / (modulus * inertia) * over(lambda a: (1.0 - math.cos(a)) ** 2)
    gap = pressure * 0.5 * bore * flexible
    assert spring.first_order_gap_change(pressure, bore, thickness, modulus) == pytest.approx(gap)
    force = 0.01 * bore / flexible
    stress = 6.0 * force * radius * 2.0 / thickness**2
    found = spring.nominal_opening_stress(0.03 * bore, 0.02 * bore, bore, thickness, modulus)
    assert found == pytest.approx(stress, rel=1e-9)
    least = spring.opening_stress(1e-9, 0.0, bore, thickness, modulus)
    bare = spring.nominal_opening_stress(1e-9, 0.0, bore, thickness, modulus)
    # Without deflection only the bar's curvature is left, 5/6 of a/(d1 - a1).
    assert least / bare - 1.0 == pytest.approx(5.0 / (6.0 * (ratio - 1.0)), rel=2e-3)


def test_ovality_by_the_free_shape():
    """The exact strip: K bends it by K*(1 + cos) on the closed arc; how wide it then lies."""

    def shape(k):
        def walk(a, place):
            turned = a - k * (a + math.sin(a))
            return (math.sin(turned), math.cos(turned))

        return solve_ivp(
            walk, (0.0, math.pi), (0.0, 0.0), rtol=1e-10, atol=1e-12, dense_output=True
        )

    for k in (0.003, 0.03, 0.08):
        path = shape(k).sol(np.linspace(0.0, math.pi, 20001))
        # From the back round to a tip: across is twice the widest, along from the back to the tip.
        across = 2.0 * path[1].max()
        along = path[0].max() - path[0].min()
        gap = spring.gap_of_springiness(k, 1.0)
        thin = 1e-6
        found = spring.free_ovality(gap, 2.0 + thin, thin)
        assert abs(across - along) == pytest.approx(found, rel=0.02)


# --- a ring set round ---


def test_how_a_round_set_ring_lies_in_its_bore():
    """w'' + w = sin a/sin a0 - 1 over the slack length, by a solver: neither light nor slope at
    a0."""
    end = heat_set.SLACK_RADIANS

    def lies(slope):
        return solve_ivp(
            lambda a, w: (w[1], math.sin(a) / math.sin(end) - 1.0 - w[0]),
            (0.0, end), (0.0, slope), rtol=1e-12, atol=1e-13, dense_output=True,
        )  # fmt: skip

    slope = brentq(lambda s: lies(s).y[0][-1], -5.0, 5.0, xtol=1e-14)
    found = lies(slope)
    assert found.y[1][-1] == pytest.approx(0.0, abs=1e-8)
    places = np.linspace(0.0, end, 200001)
    light = np.abs(found.sol(places)[0])
    assert pytest.approx(light.max(), rel=1e-8) == heat_set.LIGHT_FACTOR
    assert pytest.approx(math.degrees(places[light.argmax()]), abs=2e-3) == heat_set.LIGHT_ANGLE
    assert pytest.approx(122.566, abs=1e-3) == heat_set.SLACK_ANGLE
    assert heat_set.widest_light(2e-4, 80.0, 3.2) == pytest.approx(
        light.max() * 2e-4 * 38.4**2, rel=1e-8
    )


@pytest.mark.parametrize("turns", [1, 2])
def test_gap_of_a_ring_set_sprung_by_its_moment(turns):
    end = heat_set.SLACK_RADIANS
    whole = turns * math.pi
    slack = over(lambda a: math.sin(a) / math.sin(end) * (1.0 - math.cos(a)), 0.0, end)
    back = over(lambda a: 1.0 - math.cos(a), end, whole)
    assert heat_set.sprung_gap_factor(turns) == pytest.approx((slack + back) / whole, rel=1e-10)


@given(st.floats(1e-4, 0.3), bores, ratios, moduli, st.floats(1.0, 30.0))
def test_contact_pressure_by_the_moment_that_closes_it(share, bore, ratio, modulus, width):
    """On the back the moment E*I*kappa0 is that of a hoop force p0*h*r_o with the lever r."""
    thickness = bore / ratio
    radius = 0.5 * (bore - thickness)
    curvature = share / radius
    moment = modulus * width * thickness**3 / 12.0 * curvature
    pressure = moment / (width * 0.5 * bore * radius)
    found = heat_set.contact_pressure(curvature, bore, thickness, modulus)
    assert found == pytest.approx(pressure, rel=1e-12)
    # An arc of unchanged length: what it opens by is what the larger circle is longer.
    free = 1.0 / (1.0 / radius - curvature)
    length = 2.0 * math.pi * radius
    assert heat_set.gap_of_curvature(
        curvature, bore, thickness, heat_set.BOUND, 1
    ) == pytest.approx(2.0 * math.pi * free - length, rel=1e-9)


def test_force_across_a_round_set_ring_by_unit_loads():
    """The thumbs' gap by unit loads against that of an even moment."""
    by_thumbs = over(lambda a: -math.cos(a) * (1.0 - math.cos(a)), math.pi / 2.0)
    by_moment = over(lambda a: 1.0 - math.cos(a))
    found = heat_set.closing_force(0.05, 80.0, 4.0, heat_set.BOUND, 1)
    assert found == pytest.approx(by_moment / by_thumbs * 0.05 * 4.0 * 40.0, rel=1e-5)
    for turns in (1, 2):
        bound = heat_set.closing_force(0.05, 80.0, 4.0, heat_set.BOUND, turns)
        sprung = heat_set.closing_force(0.05, 80.0, 4.0, heat_set.SPRUNG, turns)
        # 3.4 and 1.6 % more: what the gap is larger by, to a fifth of a per cent.
        assert sprung / bound == pytest.approx(heat_set.sprung_gap_factor(turns), rel=2e-3)


def test_a_band_round_a_ring_set_bound():
    """One turn: pressure of the gap's own, 2/3 of p0, and the largest of a*sin(a)/3."""
    by_band = over(lambda a: (1.0 - math.cos(a)) ** 2)
    by_moment = over(lambda a: 1.0 - math.cos(a))
    assert heat_set.band_share(heat_set.BOUND, 1) == pytest.approx(by_moment / by_band, rel=1e-10)
    angle = np.linspace(0.0, math.pi, 200001)
    lies = (angle * np.sin(angle)).max() / 3.0
    found = heat_set.band_allowance(1e-4, 80.0, 3.2, heat_set.BOUND, 1)
    assert found == pytest.approx(lies * 1e-4 * 38.4**2, rel=1e-4)
    sprung = heat_set.band_share(heat_set.SPRUNG, 1)
    assert sprung == pytest.approx(heat_set.sprung_gap_factor(1) * by_moment / by_band, rel=1e-4)


def test_seats_of_a_spacer_by_the_turn_of_the_ends():
    """Pushed apart at the tips: what both ends turn by while the gap opens."""
    turned = 2.0 * over(lambda a: 1.0 - math.cos(a))
    opened = 2.0 * over(lambda a: (1.0 - math.cos(a)) ** 2)
    found = heat_set.spacer_taper(9.0, 38.0)
    assert found == pytest.approx(math.degrees(9.0 / 38.0 * turned / opened), rel=1e-10)


@given(st.floats(20.0, 500.0), ratios, st.floats(1.001, 1.1))
def test_forming_by_the_peak_of_the_moment(radius, ratio, larger):
    """The former is a plug: sin/sin(a0) of the even moment, largest at a quarter turn, on the
    inside of a bar whose own curvature adds half its thickness over the former's radius."""
    thickness = 2.0 * radius / ratio
    former = radius * larger
    even = 1e5 * 0.5 * thickness * (1.0 / radius - 1.0 / former)
    peak = 1.0 / math.sin(heat_set.SLACK_RADIANS)
    found = heat_set.forming_stress(radius, former, thickness, 1e5)
    assert found == pytest.approx(even * peak * (former + 0.5 * thickness) / former, rel=1e-9)


# --- twisted, turned through, over a plug ---


def saint_venant(longer, shorter):
    """(J/(b t^3), stress factors of the longer and shorter side) by the series itself."""
    n = np.arange(1, 4001, 2, dtype=float)
    aspect = longer / shorter
    tanh = np.tanh(0.5 * n * math.pi * aspect)
    constant = 1.0 / 3.0 - 64.0 / math.pi**5 / aspect * (tanh / n**5).sum()
    with np.errstate(over="ignore"):
        across = (1.0 / (n**2 * np.cosh(0.5 * n * math.pi * aspect))).sum()
    signs = np.where((n.astype(int) - 1) // 2 % 2 == 0, 1.0, -1.0)
    # Catalan's constant takes the part of the series that falls only as 1/n^2.
    along = 0.915965594177219015 - (signs * (1.0 - tanh) / n**2).sum()
    eight = 8.0 / math.pi**2
    return constant, (1.0 - eight * across) / constant, eight * along / constant


@given(st.floats(0.5, 20.0), st.floats(1.0, 8.0))
def test_torsion_by_its_series(shorter, aspect):
    longer = shorter * aspect
    constant, at_long, at_short = saint_venant(longer, shorter)
    cube = longer * shorter**3
    assert winding.torsion_constant(longer, shorter) == pytest.approx(cube * constant, rel=1e-9)
    found = winding.torsion_stress(100.0, longer, shorter)
    expected = np.array((at_long, at_short)) * 100.0 / (longer * shorter**2)
    assert found == pytest.approx(expected, rel=1e-9)


@pytest.mark.parametrize(
    ("aspect", "stiff", "strong"),
    [(1.0, 0.1406, 0.208), (1.5, 0.196, 0.231), (2.0, 0.229, 0.246), (3.0, 0.263, 0.267),
     (5.0, 0.291, 0.291), (10.0, 0.312, 0.312)],
)  # fmt: skip
def test_torsion_by_the_table(aspect, stiff, strong):
    """Timoshenko and Goodier, torsion of rectangular bars, the table of k1 and k2 (read)."""
    found = winding.torsion_constant(aspect, 1.0) / aspect
    assert found == pytest.approx(stiff, abs=6e-4)
    assert aspect / winding.torsion_stress(1.0, aspect, 1.0)[0] / aspect**2 == pytest.approx(
        strong, abs=6e-4
    )


@given(st.floats(10.0, 300.0), st.floats(0.5, 8.0), st.floats(0.5, 8.0))
def test_axial_stiffness_by_its_energy(radius, thickness, width):
    """The strain energy of bending P r sin and twist P r (1 - cos) round a whole turn."""
    modulus, poisson = 1.1e5, 0.26
    bending = modulus * thickness * width**3 / 12.0
    twisting = modulus / (2.0 * (1.0 + poisson)) * winding.torsion_constant(width, thickness)
    turn = 2.0 * math.pi
    moved = radius**3 * (
        over(lambda a: math.sin(a) ** 2, 0.0, turn) / bending
        + over(lambda a: (1.0 - math.cos(a)) ** 2, 0.0, turn) / twisting
    )
    found = winding.axial_stiffness(radius, thickness, width, modulus, poisson)
    assert found == pytest.approx(1.0 / moved, rel=1e-9)


@given(st.floats(10.0, 300.0), st.floats(0.5, 8.0), st.floats(0.5, 8.0))
def test_turns_passed_by_one_another_by_their_energy(radius, thickness, width):
    """The end moved by 9 and the middle of the turn by half of it, by the work of unit forces."""
    modulus, poisson, turn = 1.1e5, 0.26, 2.0 * math.pi
    bending = modulus * thickness * width**3 / 12.0
    constant = winding.torsion_constant(width, thickness)
    twisting = modulus / (2.0 * (1.0 + poisson)) * constant

    def work(one, other):
        bent = over(lambda a: math.sin(a - one) * math.sin(a - other), max(one, other), turn)
        twisted = over(
            lambda a: (1.0 - math.cos(a - one)) * (1.0 - math.cos(a - other)),
            max(one, other),
            turn,
        )
        return radius**3 * (bent / bending + twisted / twisting)

    moves = [[work(one, other) for other in (0.0, math.pi)] for one in (0.0, math.pi)]
    end, middle = np.linalg.solve(moves, [9.0, 4.5])
    found = winding.passing_forces(9.0, radius, thickness, width, modulus, poisson, constant)
    assert found == pytest.approx((end, middle), rel=1e-6)
    acts = winding.turning_through(9.0, radius, thickness, width, modulus, poisson, True)
    assert acts.force == pytest.approx(end, rel=1e-6)
    # Twice the shear of one radius's lever stands where the lever is twice that.
    long_side, _ = winding.torsion_stress(max(end, middle) * radius, thickness, width)
    assert 2.0 * long_side <= acts.twist * (1.0 + 1e-6)
    assert acts.bending == pytest.approx(end * radius / (thickness * width**2 / 6.0), rel=1e-6)


@given(bores, ratios, moduli)
def test_opened_evenly_by_the_change_of_curvature(bore, ratio, modulus):
    thickness = bore / ratio
    inside, outside = 0.5 * (bore - thickness), 0.5 * (bore + thickness)
    even = modulus * 0.5 * thickness * (1.0 / inside - 1.0 / outside)
    assert winding.even_opening_stress(bore, thickness, modulus) == pytest.approx(even, rel=1e-9)
    bar = 1.0 + 1.0 / (ratio - 1.0)
    # No spring of its own: the peak of a round ring on a plug, that of the bore turned inside out.
    peak = 1.0 / math.sin(heat_set.SLACK_RADIANS)
    assert winding.plug_stress(0.0, bore, thickness, modulus) == pytest.approx(
        peak * even * bar, rel=2e-3
    )
    assert winding.plug_stress(0.0, bore, thickness, modulus) == pytest.approx(
        winding.plug_stress_round(0.0, bore, thickness, modulus), rel=1e-12
    )
    # As much spring as drops over the plug: nothing is left.
    pressure = even / (1.5 * ratio * (ratio - 1.0))
    for factor in (1.0 + 1e-9, 1.5):
        assert winding.plug_stress(factor * pressure, bore, thickness, modulus) == 0.0
    change = even / (0.5 * modulus * thickness)
    assert winding.plug_stress_round(1.01 * change, bore, thickness, modulus) == 0.0
    left = winding.plug_stress_round(0.25 * change, bore, thickness, modulus)
    assert left == pytest.approx(
        0.75 * winding.plug_stress_round(0.0, bore, thickness, modulus), rel=1e-9
    )
    # Where its back touches along one line: Roark's ring pulled apart, 4/pi of the even moment.
    for share in (0.51, 0.7, 0.99):
        found = winding.plug_stress(share * pressure, bore, thickness, modulus)
        assert found == pytest.approx(4.0 / math.pi * (1.0 - share) * even * bar, rel=1e-6)


# As the method of winding on states them.
OVER_PLUG, CROSSED, FALLS, LIFTED, GRIPPED, LEVER = 1.037, 2.21, 16.5, 0.95, 0.9, 1.76


def test_winding_on_by_how_long_the_crossing_is():
    bore, thickness, modulus, poisson = 80.0, 3.2, 1e5, 0.26
    plug = winding.plug_stress(0.02, bore, thickness, modulus)
    # So narrow a turn bends in its plane alone.
    narrow = winding.wound_on_stress(plug, bore, thickness, 1e-6, 0.0, modulus, poisson)
    for stress, crossing in zip(narrow, (120.0, 40.0, 20.0), strict=True):
        share = OVER_PLUG + CROSSED * math.exp(-crossing / FALLS)
        assert stress == pytest.approx(share * plug, rel=1e-6)
    # No stress in its plane: sideways it is bent and twisted by the force that moves its end.
    for width in (2.0, 3.2, 6.0):
        moved = LIFTED * width + GRIPPED * 5.0
        force = moved * winding.axial_stiffness(38.4, thickness, width, modulus, poisson)
        bending = force * 38.4 / (thickness * width * width / 6.0)
        shears = saint_venant(max(width, thickness), min(width, thickness))[1:]
        inner = shears[0 if width >= thickness else 1] / (
            max(width, thickness) * min(width, thickness) ** 2
        )
        flat = winding.wound_on_stress(0.0, bore, thickness, width, 5.0, modulus, poisson)
        expected = max(bending, LEVER * force * 38.4 * inner)
        assert flat == pytest.approx((expected,) * 3, rel=1e-6)
