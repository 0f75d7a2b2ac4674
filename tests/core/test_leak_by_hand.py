"""Openings and flows past a ring, each by plain arithmetic from its definition."""

import math

import pytest
from scipy.optimize import brentq

from ringwright.core.problems import OutOfRange
from ringwright.core.running import leak


def test_exponent_rises_straight_to_that_of_superheat():
    """Zeuner: 1.135 dry, 1.30 superheated; a line between over the first 50 K."""
    assert leak.exponent(-3.0) == leak.exponent(0.0) == 1.135
    assert leak.exponent(20.0) == pytest.approx(1.135 + 20.0 / 50.0 * 0.165, rel=1e-12)
    assert leak.exponent(50.0) == pytest.approx(1.30, rel=1e-12)
    assert leak.exponent(80.0) == pytest.approx(1.30, rel=1e-12)


# lb/s through 1 in2: p1/70 up to three fifths; p2/42 sqrt(3 (p1 - p2)/(2 p2)) above. At 0.603 the
# first would be 0.13 % more than the second.
@pytest.mark.parametrize(
    ("back", "pounds"),
    [
        (0.0, 100.0 / 70.0),
        (59.9, 100.0 / 70.0),
        (60.3, 60.3 / 42.0 * math.sqrt(3.0 * 39.7 / (2.0 * 60.3))),
        (85.0, 85.0 / 42.0 * math.sqrt(3.0 * 15.0 / (2.0 * 85.0))),
        (99.0, 99.0 / 42.0 * math.sqrt(3.0 * 1.0 / (2.0 * 99.0))),
        (100.0, 0.0),
        (101.0, 0.0),
    ],
)
def test_napiers_rule_in_its_own_units(back, pounds):
    """2 in2 at 100 psi absolute: a square inch is 645.16 mm2, a psi 6894.757 Pa."""
    psi = 6894.757293168361e-6
    found = leak.napier_flow(2.0 * 645.16, 100.0 * psi, back * psi)
    assert found == pytest.approx(2.0 * pounds * 0.45359237, rel=1e-12)


def nozzle(x, k):
    """Flow of unit area at pressure 1, p v = 1, against the ratio at the throat."""
    x = max(x, (2.0 / (k + 1.0)) ** (k / (k - 1.0)))
    return math.sqrt(2.0 * k / (k - 1.0) * (x ** (2.0 / k) - x ** ((k + 1.0) / k)))


@pytest.mark.parametrize("ratio", [0.0, 0.3, 0.58, 0.8, 1.0])
def test_flow_number_is_the_nozzles(ratio):
    assert leak.flow_number(ratio, 1.2) == pytest.approx(nozzle(ratio, 1.2), rel=1e-12, abs=1e-9)


@pytest.mark.parametrize("k", [1.135, 1.24])
@pytest.mark.parametrize("number", [1, 2, 3, 12])
def test_every_row_of_the_table_is_a_chain_of_nozzles(number, k):
    """From a row's flow the pressures are found forwards, one opening after another."""
    critical = (2.0 / (k + 1.0)) ** (k / (k - 1.0))
    ratios, flows = leak.throttles_in_series(number, k)
    # A dozen rows, and the end where nothing flows.
    assert len(ratios) == len(flows) == 13
    assert (ratios[-1], flows[-1]) == (1.0, 0.0)
    assert ratios == sorted(ratios) and flows == sorted(flows, reverse=True)
    for ratio, flow in zip(ratios[:-1], flows, strict=False):
        pressure = 1.0
        for opening in range(number):
            share = flow / pressure
            last = opening == number - 1
            # The last opening of the first row is choked.
            if last and share == pytest.approx(nozzle(critical, k), rel=1e-9):
                pressure *= critical
                continue
            pressure *= brentq(lambda x, s=share: nozzle(x, k) - s, critical, 1.0, xtol=1e-15)
        assert pressure == pytest.approx(ratio, rel=1e-9)
    # The first row is choked at its last opening: less behind it passes no more.
    assert flows[0] / ratios[0] == pytest.approx(nozzle(critical, k) / critical, rel=1e-9)
    # Pressure after the last opening over the flow goes by 12/12, 12/11, ... 12/1.
    for row, (ratio, flow) in enumerate(zip(ratios[:-1], flows, strict=False)):
        steps = ratio / flow / (ratios[0] / flows[0])
        assert steps == pytest.approx(12.0 / (12 - row), rel=1e-9)


def test_between_rows_the_square_of_the_flow_runs_straight():
    series = leak.Series([0.5, 0.6, 0.72, 0.9, 0.96, 1.0], [0.7, 0.65, 0.5, 0.3, 0.2, 0.0])
    for ratio, square in (
        (0.1, 0.49),
        (0.5, 0.49),
        (0.55, 0.5 * (0.49 + 0.4225)),
        (0.6, 0.4225),
        (0.63, 0.75 * 0.4225 + 0.25 * 0.25),
        (0.8, 0.25 + 8.0 / 18.0 * (0.09 - 0.25)),
        (0.92, 2.0 / 3.0 * 0.09 + 1.0 / 3.0 * 0.04),
        (0.99, 0.25 * 0.04),
        (1.0, 0.0),
    ):
        assert leak.series_flow(series, ratio) == pytest.approx(math.sqrt(square), abs=1e-9)


@pytest.mark.parametrize(("number", "holds"), [(0, False), (1, True), (12, True), (13, False)])
def test_one_to_twelve_rings_and_no_others(number, holds):
    if holds:
        assert leak.throttles_in_series(number, 1.135).flows[0] > 0.0
        return
    with pytest.raises(OutOfRange) as refused:
        leak.throttles_in_series(number, 1.135)
    assert (refused.value.name, refused.value.value) == ("number", number)


@pytest.mark.parametrize(("ratio", "holds"), [(-1e-6, False), (0.0, True), (1.000001, False)])
def test_a_ratio_of_nought_to_one_and_no_other(ratio, holds):
    if holds:
        assert leak.flow_number(ratio, 1.3) > 0.6
        return
    with pytest.raises(OutOfRange):
        leak.flow_number(ratio, 1.3)


@pytest.mark.parametrize(("cut", "sine"), [("angled-45", 0.5**0.5), ("angled-60", 0.75**0.5)])
def test_an_angled_cut_is_between_its_sine_and_its_whole_gap(cut, sine):
    """The passage between the faces is sin A of the gap wide; its mouth is the whole gap."""
    low, usual, high = leak.gap_share("plain", cut)
    assert (low, high) == (pytest.approx(sine, rel=1e-12), 1.0)
    assert usual == pytest.approx(0.5 * (sine + 1.0), rel=1e-12)


@pytest.mark.parametrize(
    ("ring_type", "cut"),
    [("plain", "stepped"), ("double-turn", "square"), ("double-turn", "angled-45")],
)
def test_a_joint_without_a_straight_way_leaks_nil_to_all_round_the_back(ring_type, cut):
    assert leak.gap_share(ring_type, cut) == (0.0, 0.5, 1.0)


@pytest.mark.parametrize(
    ("gap", "land", "area"),
    [(0.8, 0.15, 0.12), (0.8, -0.1, 0.0), (-0.1, 0.15, 0.0), (-0.1, -0.1, 0.0)],
)
def test_steam_leaves_by_gap_times_land(gap, land, area):
    assert leak.gap_opening(gap, land) == pytest.approx(area, rel=1e-12)


def test_coefficients_are_those_of_the_trade():
    """A sharp orifice 0.6 (textbooks), a nozzle near 1; a piston that rests on the bore has no
    land clearance below and twice the mean above; faces lapped to a micrometre or a few."""
    assert leak.DISCHARGE == (0.60, 0.75, 0.90)
    assert leak.LAND_PLACE == (0.5, 1.0, 1.5)
    assert leak.FACE_FILM == (0.001, 0.002, 0.004)


def test_a_film_by_hand():
    # h1 = 2, h2 = 5 um: 2 * 4 * 25/7 um3.
    assert leak.film_cubed(0.002, 0.003) == pytest.approx(200.0 / 7.0 * 1e-9, rel=1e-12)
    assert leak.film_cubed(0.0, 0.0) == 0.0
    assert leak.film_cubed(0.0, 0.004) == 0.0


def test_rings_share_the_resistance_of_their_sides():
    given = {
        "bore": 80.0,
        "cube": 30e-9,
        "seat": 2.5,
        "squares": 0.6,
        "pressure_volume": 0.19,
        "viscosity": 14e-6,
    }
    # pi d1 h^3 dp2/(24 mu L pv n): 80 * 30e-9 * 0.6/(24 * 14e-6 * 2.5 * 0.19), mm and MPa made m
    # and Pa.
    one = 1e-3 * math.pi * 80.0 * 30e-9 * 0.6 / (24.0 * 14e-6 * 2.5 * 0.19)
    assert leak.face_flow(**given) == pytest.approx(one, rel=1e-12)
    assert leak.face_flow(number=3, **given) == pytest.approx(one / 3.0, rel=1e-12)
