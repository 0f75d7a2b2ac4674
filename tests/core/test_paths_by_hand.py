"""Ways past the rings of one piston, and what they rub: each opening by hand."""

import math

import pytest

from ringwright.core.properties import steam_properties
from ringwright.core.running import friction, ring_leak
from ringwright.core.running.ring_duty import Duty

# A bronze ring in an aluminium piston and an iron cylinder; 15 degC in the shop, 135 running.
GIVEN = {
    "expansions": (18.0e-6, 23.6e-6, 11.7e-6),
    "bore": 80.0,
    "ring_width": 3.2,
    "side_clearance": 0.05,
    "piston_diameter": 79.4,
    "shop_temperature": 15.0,
    "running_temperature": 135.0,
    "end_cut": "square",
    "radial_thickness": 2.9,
    "rings_on_piston": 3,
    "steam": steam_properties.steam_state(0.8),
}
DUTY = Duty(gap_flow=0.7e-3, napier_flow=0.6e-3, squares=0.34, mean_difference=0.5)
GROWN = {"ring": 1.0 + 120.0 * 18.0e-6, "piston": 1.0 + 120.0 * 23.6e-6}
BORE_HOT = 80.0 * (1.0 + 120.0 * 11.7e-6)
LAND = 0.5 * (BORE_HOT - 79.4 * GROWN["piston"])


def opening(gap):
    """Hot gap times hot land, gap as long as bore and ring leave it [mm2]."""
    return (math.pi * BORE_HOT - (math.pi * 80.0 - gap) * GROWN["ring"]) * LAND


def found(**more):
    asked = {"ring_type": "plain", "cold_gap": 0.9, "groove_wear": 0.03, "light": 0.4, **more}
    given = {**GIVEN, **{name: asked.pop(name) for name in GIVEN if name in asked}}
    return ring_leak.paths(given, DUTY, *asked.values())


# Low, usual, high: discharge times place of the land.
AT_THE_LAND = (0.6 * 0.5, 0.75 * 1.0, 0.9 * 1.5)


def test_the_gap_leaks_by_its_hot_opening():
    came = found()
    for level, share in enumerate(AT_THE_LAND):
        area = opening(0.9) * share
        assert came.gap[level] == pytest.approx(3600.0 * 0.7e-3 * area, rel=1e-9)
        assert came.napier[level] == pytest.approx(3600.0 * 0.6e-3 * area, rel=1e-9)
        assert came.light[level] == pytest.approx(
            3600.0 * 0.7e-3 * 0.4 * (0.6, 0.75, 0.9)[level], rel=1e-12
        )
        whole = came.gap[level] + came.face[level] + came.light[level]
        assert came.total[level] == pytest.approx(whole, rel=1e-12)


def test_a_cut_and_a_second_turn_close_what_they_close():
    sine = 0.5**0.5
    angled = found(end_cut="angled-45").gap
    for level, share in enumerate((sine, 0.5 * (1.0 + sine), 1.0)):
        area = opening(0.9) * AT_THE_LAND[level] * share
        assert angled[level] == pytest.approx(2.52 * area, rel=1e-9)
    twice = found(ring_type="double-turn").gap
    assert twice[0] == 0.0
    assert twice[1:] == pytest.approx(
        [2.52 * opening(0.9) * AT_THE_LAND[level] * share for level, share in ((1, 0.5), (2, 1.0))]
    )


def sides(wear, seat, rings=3):
    """Films of 1, 2 and 4 um that open to the wear [kg/h]; pv and viscosity of the steam."""
    state = steam_properties.steam_state(0.8)
    rates = []
    for film in (0.001, 0.002, 0.004):
        wide = film + wear
        cube = 2.0 * film**2 * wide**2 / (film + wide)
        flow = math.pi * 80.0 * cube * 0.34 / seat / rings * 1e-3 / 24.0
        flow /= steam_properties.viscosity(135.0) * state.pressure * state.volume
        rates.append(3600.0 * flow)
    return rates


def test_the_sides_leak_by_their_films():
    """What bears is the ring's thickness less what stands out of its groove."""
    assert found().face == pytest.approx(sides(0.03, 2.9 - LAND), rel=1e-9)
    # A piston far too small leaves a fifth of the thickness on the groove.
    assert found(piston_diameter=74.0).face == pytest.approx(sides(0.03, 0.2 * 2.9), rel=1e-9)
    # A piston that binds leaves nothing for the gap, and the whole thickness bears.
    tight = found(piston_diameter=80.0)
    assert tight.gap == [0.0, 0.0, 0.0]
    assert tight.face == pytest.approx(sides(0.03, 2.9), rel=1e-9)


def test_a_film_passes_no_more_than_its_mouth_would():
    """A ring so narrow on its seat: all the way round, film and wear high, as an opening."""
    came = found(radial_thickness=0.003, rings_on_piston=1, groove_wear=0.01)
    for level, film in enumerate((0.001, 0.002, 0.004)):
        mouth = 3600.0 * 0.7e-3 * math.pi * 80.0 * (film + 0.01)
        laminar = sides(0.01, 0.2 * 0.003, 1)[level]
        assert came.face[level] == pytest.approx(min(mouth, laminar), rel=1e-9)
    assert laminar > mouth


def test_rubbing_by_hand():
    """90 mm at 250 turns: 0.75 m/s, 2700 m in the hour."""
    assert friction.mean_piston_speed(90.0, 250.0) == pytest.approx(0.75, rel=1e-12)
    assert friction.sliding_distance(90.0, 250.0) == pytest.approx(2700.0, rel=1e-12)
    assert friction.wall_load(0.05, 0.42, 3, 0.5) == pytest.approx(0.05 + 0.07, rel=1e-12)
    # Three rings of 0.05 and half of 0.42 N/mm2, on 80 pi by 3.2 mm, a tenth of it at 0.75 m/s.
    power = friction.friction_power(
        coefficient=0.1,
        wall_pressure=0.05,
        difference=0.42,
        rings=3,
        share=0.5,
        bore=80.0,
        width=3.2,
        piston_speed=0.75,
    )
    assert power == pytest.approx(0.1 * 0.36 * math.pi * 80.0 * 3.2 * 0.75, rel=1e-12)
    # Full pressure behind; on the face from all to none of it: half presses, at most all.
    assert friction.STEAM_SHARE == (0.25, 0.50, 1.00)
    # Well oiled to short of oil, about 0.1 (Khurmi and Gupta); filled PTFE about 0.12.
    assert friction.COEFFICIENT == (0.05, 0.10, 0.15)
    assert friction.PLASTIC_COEFFICIENT == (0.06, 0.12, 0.20)


@pytest.mark.parametrize("triple", [(3.0, 1.0, 2.0), [1.0, 2.0, 3.0], (2.0, 3.0, 1.0)])
def test_a_spread_goes_from_low_to_high(triple):
    assert ring_leak.spread(triple) == (1.0, 2.0, 3.0)
