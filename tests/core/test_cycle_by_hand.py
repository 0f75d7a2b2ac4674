"""The stated cycle and what a ring sees of it, by hand figures at the corners of the diagram."""

import math

import pytest

from ringwright.core.problems import OutOfRange
from ringwright.core.running import leak, ring_duty, steam_cycle

# 0.9 MPa to 0.12 MPa absolute, cut off at 0.4, released at 0.8, closed with 0.15 left; clearance
# 0.1: volumes 0.1 + 0.4 = 0.5 at cut-off, 0.9 at release, 0.25 at closing, 0.1 at the dead centre.
GIVEN = {
    "admission_pressure": 0.9,
    "back_pressure": 0.12,
    "cut_off": 0.4,
    "release": 0.8,
    "compression": 0.15,
    "clearance": 0.1,
}
STATED = steam_cycle.cycle(**GIVEN)
AT_RELEASE = 0.9 * 0.5 / 0.9


@pytest.mark.parametrize(
    ("travel", "pressure"),
    [
        (0.0, 0.9),
        (0.4, 0.9),
        (0.65, 0.9 * 0.5 / 0.75),
        (0.8, AT_RELEASE),
        # A tenth of the stroke, straight, to the exhaust's.
        (0.825, 0.75 * AT_RELEASE + 0.25 * 0.12),
        (0.9, 0.12),
        (1.0, 0.12),
    ],
)
def test_pressure_going_out(travel, pressure):
    assert steam_cycle.pressure_outward(STATED, travel) == pytest.approx(pressure, rel=1e-9)


@pytest.mark.parametrize(
    ("travel", "pressure"),
    [(0.0, 0.12), (0.85, 0.12), (0.95, 0.12 * 0.25 / 0.15), (1.0, 0.12 * 0.25 / 0.1)],
)
def test_pressure_coming_back(travel, pressure):
    assert steam_cycle.pressure_returning(STATED, travel) == pytest.approx(pressure, rel=1e-9)


def test_a_cycle_of_the_books_has_a_pressure_at_both_ends():
    """Released at the dead centre, nothing kept, no clearance: no length to blow down in."""
    stated = steam_cycle.cycle(
        admission_pressure=0.9, back_pressure=0.12, cut_off=0.4, release=1.0, compression=0.0
    )
    assert steam_cycle.pressure_outward(stated, 1.0) == pytest.approx(0.36, rel=1e-12)
    assert steam_cycle.pressure_returning(stated, 1.0) == 0.12
    drawn = steam_cycle.diagram(stated)
    assert drawn.compression_pressure == 0.12
    assert drawn.mean_pressure == pytest.approx(0.36 * (1.0 - math.log(0.4)) - 0.12, rel=1e-12)
    # What little is left of the stroke is what it blows down in.
    late = steam_cycle.cycle(**{**GIVEN, "release": 0.96})
    at_release = 0.9 * 0.5 / 1.06
    assert steam_cycle.pressure_outward(late, 0.97) == pytest.approx(
        0.75 * at_release + 0.25 * 0.12, rel=1e-9
    )


def test_the_areas_of_the_diagram():
    drawn = steam_cycle.diagram(STATED)
    out = 0.36 + 0.45 * math.log(0.9 / 0.5) + 0.1 * 0.5 * (AT_RELEASE + 0.12) + 0.1 * 0.12
    back = 0.12 * 0.85 + 0.12 * 0.25 * math.log(2.5)
    assert drawn.outward == pytest.approx(out, rel=1e-12)
    assert drawn.returning == pytest.approx(back, rel=1e-12)
    assert drawn.mean_pressure == pytest.approx(out - back, rel=1e-12)
    assert drawn.release_pressure == pytest.approx(AT_RELEASE, rel=1e-12)
    assert drawn.compression_pressure == pytest.approx(0.3, rel=1e-12)
    # However little is kept, it is pressed: 0.105 into 0.1.
    little = steam_cycle.diagram(steam_cycle.cycle(**{**GIVEN, "compression": 0.005}))
    assert little.compression_pressure == pytest.approx(0.126, rel=1e-12)
    back = 0.12 * 0.995 + 0.12 * 0.105 * math.log(1.05)
    assert little.returning == pytest.approx(back, rel=1e-12)


@pytest.mark.parametrize(("cut_off", "release"), [(0.3, 0.9), (0.8, 0.9), (0.84, 0.92)])
def test_release_is_half_way_to_the_end_at_nine_tenths_at_the_earliest(cut_off, release):
    assert steam_cycle.usual_release(cut_off) == pytest.approx(release, rel=1e-12)


@pytest.mark.parametrize(
    ("clearance", "share"),
    # Eight times the pressure in the clearance's own volume: seven times the clearance is kept.
    [(0.01, 0.07), (0.0142, 0.0994), (0.015, 0.1), (0.2, 0.1), (0.0, 0.0)],
)
def test_compression_ends_at_the_steams_pressure_at_most(clearance, share):
    assert steam_cycle.usual_compression(0.88, 0.11, clearance) == pytest.approx(share, rel=1e-9)


@pytest.mark.parametrize(
    ("change", "name", "limit"),
    [
        ({"back_pressure": -0.01}, "back_pressure", "0 to 0.9000"),
        ({"back_pressure": 0.901}, "back_pressure", "0 to 0.9000"),
        ({"cut_off": 0.0199}, "cut_off", "0.02000 to 1.000"),
        ({"cut_off": 1.001, "release": 1.0}, "cut_off", "0.02000 to 1.000"),
        ({"clearance": -0.001}, "clearance", "0 to 0.5000"),
        ({"clearance": 0.501}, "clearance", "0 to 0.5000"),
        ({"release": 0.399}, "release", "0.4000 to 1.000"),
        ({"release": 1.001}, "release", "0.4000 to 1.000"),
        ({"compression": -0.001}, "compression", "0 to 0.9500"),
        ({"compression": 0.951}, "compression", "0 to 0.9500"),
        ({"clearance": 0.0, "compression": 0.001}, "compression", "0 to 0"),
    ],
)
def test_a_cycle_just_beyond_its_range_is_refused_and_told_its_limits(change, name, limit):
    with pytest.raises(OutOfRange) as refused:
        steam_cycle.cycle(**{**GIVEN, **change})
    assert (refused.value.name, refused.value.limit) == (name, limit)
    assert refused.value.value == change[name]


@pytest.mark.parametrize(
    "change",
    [
        {"back_pressure": 0.0},
        {"back_pressure": 0.9},
        {"cut_off": 0.02},
        {"cut_off": 1.0, "release": 1.0},
        {"clearance": 0.5},
        {"clearance": 0.0, "compression": 0.0},
        {"clearance": 0.005, "compression": 0.03},
        {"release": 0.4},
        {"release": 1.0},
        {"compression": 0.95},
    ],
)
def test_a_cycle_just_within_its_range_is_taken(change):
    names = {"admission_pressure": "admission", "back_pressure": "back"}
    for name, value in {**GIVEN, **change}.items():
        assert getattr(steam_cycle.cycle(**{**GIVEN, **change}), names.get(name, name)) == value


@pytest.mark.parametrize(("missing", "holds"), [(0.0, True), (0.9, True), (-0.01, False)])
def test_missing_quantity_of_nought_to_nine_tenths(missing, holds):
    if holds:
        assert steam_cycle.steam_used(10.0, missing) == pytest.approx(10.0 / (1.0 - missing))
        return
    with pytest.raises(OutOfRange) as refused:
        steam_cycle.steam_used(10.0, missing)
    assert refused.value.name == "missing_quantity"
    with pytest.raises(OutOfRange):
        steam_cycle.steam_used(10.0, 0.901)


def test_power_steam_and_heat_by_hand():
    """80 by 90 mm: 0.4524 litre; at 600 working strokes a minute ten a second."""
    swept = math.pi / 4.0 * 0.08**2 * 0.09
    assert steam_cycle.swept_volume(80.0, 90.0) == pytest.approx(swept, rel=1e-12)
    power = steam_cycle.indicated_power(0.35, 80.0, 90.0, 600.0)
    assert power == pytest.approx(0.35e6 * swept * 10.0, rel=1e-12)
    # (0.1 + 0.4)/0.21 held, (0.1 + 0.15)/1.43 kept.
    found = steam_cycle.steam_per_stroke(STATED, 0.21, 1.43)
    assert tuple(found) == pytest.approx((0.5 / 0.21, 0.25 / 1.43, 0.5 / 0.21 - 0.25 / 1.43))
    # Nothing stays where there is no room to stay in.
    bare = steam_cycle.cycle(
        admission_pressure=0.9, back_pressure=0.12, cut_off=0.4, release=1.0, compression=0.0
    )
    assert steam_cycle.steam_per_stroke(bare, 0.21, 1.43).kept == 0.0
    # 36 kg/h is 10 g/s, of 2351 kJ/kg: 23.51 kW.
    heat = steam_cycle.heat_balance(36.0, 2768.0, 417.0, 1500.0)
    assert tuple(heat) == pytest.approx((23510.0, 1500.0, 22010.0, 1500.0 / 23510.0), rel=1e-12)


def test_coefficients_are_those_of_the_books():
    """Two textbooks' worked examples run from 0.6 to 0.85, 0.9 the best to be expected."""
    assert steam_cycle.DIAGRAM_FACTOR == (0.60, 0.80, 0.90)
    # Blown down over a tenth of the stroke; common practice, no source.
    assert steam_cycle.BLOW_DOWN == 0.1


def nozzle(high, low, k):
    """Flow of unit area, p v = 1."""
    x = max(low / high, (2.0 / (k + 1.0)) ** (k / (k - 1.0)))
    return high * math.sqrt(2.0 * k / (k - 1.0) * (x ** (2.0 / k) - x ** ((k + 1.0) / k)))


def turn(stated, double_acting, air):
    """(high, low, slid) at 24 crank positions to half a turn, in the middle of each step."""
    for half in range(1 if double_acting else 2):
        for step in range(24):
            angle = (step + 0.5) * math.pi / 24.0
            travel = (1.0 - math.cos(angle)) / 2.0
            out = steam_cycle.pressure_outward(stated, travel)
            back = steam_cycle.pressure_returning(stated, travel)
            if double_acting:
                yield max(out, back), min(out, back), math.sin(angle)
            else:
                yield (back if half else out), air, math.sin(angle)


@pytest.mark.parametrize("double_acting", [True, False])
@pytest.mark.parametrize("back", [0.12, 0.05])
def test_means_over_a_turn(double_acting, back):
    """With a condenser the air stands above the steam on the return: it presses, nothing leaks."""
    stated = steam_cycle.cycle(**{**GIVEN, "back_pressure": back})
    found = ring_duty.ring_duty(
        stated, double_acting=double_acting, rings=1, k=1.135, pressure_volume=0.19, atmosphere=0.1
    )
    rows = list(turn(stated, double_acting, 0.1))
    driven = [row for row in rows if row[0] > row[1]]
    slid = sum(row[2] for row in rows)
    squares = sum(high**2 - low**2 for high, low, _ in driven) / len(rows)
    assert found.squares == pytest.approx(squares, rel=1e-9)
    across = sum(weight * abs(high - low) for high, low, weight in rows) / slid
    assert found.mean_difference == pytest.approx(across, rel=1e-9)
    napier = sum(leak.napier_flow(1.0, high, low) for high, low, _ in driven) / len(rows)
    assert found.napier_flow == pytest.approx(napier, rel=1e-9)
    # kg/s through 1 mm2: 1e6 Pa over the root of 0.19e6 J/kg. The table is right to 0.6 %.
    flow = 1e-6 * 1e6 / math.sqrt(0.19e6)
    flow *= sum(nozzle(high, low, 1.135) for high, low, _ in driven) / len(rows)
    assert found.gap_flow == pytest.approx(flow, rel=6e-3)


def test_napier_of_more_rings_is_brought_down_as_the_formula_is():
    """Steady 0.8 to 0.4 MPa: two rings pass what the chain of two does, over what one would."""
    series = leak.throttles_in_series(2, 1.135)
    down = leak.series_flow(series, 0.5) / nozzle(1.0, 0.5, 1.135)
    found = ring_duty.steady_duty(0.8, 0.4, 2, 1.135, 0.19)
    assert found.napier_flow == pytest.approx(down * leak.napier_flow(1.0, 0.8, 0.4), rel=1e-9)
    flow = 0.8e-3 * leak.series_flow(series, 0.5) / math.sqrt(0.19)
    assert found.gap_flow == pytest.approx(flow, rel=1e-9)
    # Held at one pressure all the way out and back, a turn is as steady; choked or not.
    for rings, back in ((1, 0.4), (2, 0.4), (2, 0.7), (3, 0.7)):
        still = steam_cycle.Cycle(0.8, back, 1.0, 1.0, 0.0, 0.1)
        turned = ring_duty.ring_duty(
            still, double_acting=True, rings=rings, k=1.135, pressure_volume=0.19, atmosphere=0.1
        )
        steady = ring_duty.steady_duty(0.8, back, rings, 1.135, 0.19)
        for duty in (turned, steady):
            assert duty.squares == pytest.approx(0.64 - back**2, rel=1e-12)
        for name in ("gap_flow", "napier_flow", "mean_difference"):
            assert getattr(turned, name) == pytest.approx(getattr(steady, name), rel=2e-3), name


def test_nothing_passes_between_like_pressures():
    """Steam no higher than its exhaust: no flow, and no error."""
    still = steam_cycle.Cycle(0.4, 0.4, 1.0, 1.0, 0.0, 0.1)
    for double_acting in (True, False):
        found = ring_duty.ring_duty(
            still, double_acting=double_acting, rings=2, k=1.2, pressure_volume=0.19, atmosphere=0.4
        )
        assert tuple(found) == (0.0, 0.0, 0.0, 0.0)
