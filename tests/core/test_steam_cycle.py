"""The stated cycle: closed forms against numerical integration; balances of mass and heat."""

import math

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.integrate import quad

from ringwright.core.problems import OutOfRange
from ringwright.core.properties import steam_properties
from ringwright.core.running import leak, ring_duty, steam_cycle

STEADY = settings(derandomize=True, deadline=None, max_examples=60)


@st.composite
def cycles(draw):
    admission = draw(st.floats(0.2, 2.0))
    back = draw(st.floats(0.02, 0.6)) * admission
    cut_off = draw(st.floats(0.05, 0.9))
    release = cut_off + draw(st.floats(0.0, 1.0)) * (1.0 - cut_off)
    clearance = draw(st.floats(0.01, 0.3))
    limit = min(0.5, clearance * (admission / back - 1.0))
    return steam_cycle.cycle(
        admission_pressure=admission,
        back_pressure=back,
        cut_off=cut_off,
        release=release,
        compression=draw(st.floats(0.0, 1.0)) * limit,
        clearance=clearance,
    )


@STEADY
@given(cycles())
def test_mean_pressure_is_the_area_of_the_diagram(stated):
    corners = sorted({stated.cut_off, stated.release, min(1.0, stated.release + 0.1)})
    edges = [0.0, *corners, 1.0]
    outward = sum(
        quad(lambda x: steam_cycle.pressure_outward(stated, x), a, b)[0]
        for a, b in zip(edges, edges[1:], strict=False)
    )
    closes = 1.0 - stated.compression
    returning = sum(
        quad(lambda x: steam_cycle.pressure_returning(stated, x), a, b)[0]
        for a, b in ((0.0, closes), (closes, 1.0))
    )
    found = steam_cycle.diagram(stated)
    assert found.outward == pytest.approx(outward, rel=1e-7)
    assert found.returning == pytest.approx(returning, rel=1e-7)
    assert found.mean_pressure == pytest.approx(outward - returning, rel=1e-6, abs=1e-8)


@STEADY
@given(cycles())
def test_pressures_stay_between_exhaust_and_admission(stated):
    for step in range(101):
        for pressure in (
            steam_cycle.pressure_outward(stated, step / 100.0),
            steam_cycle.pressure_returning(stated, step / 100.0),
        ):
            assert pressure <= stated.admission * (1.0 + 1e-9)
            assert pressure > 0.0


@STEADY
@given(cycles())
def test_steam_in_is_steam_out(stated):
    # What is admitted, with what compression kept, is what expands; all but that leaves again.
    state = steam_properties.steam_state(stated.admission)
    back = steam_properties.steam_state(stated.back)
    per = steam_cycle.steam_per_stroke(stated, state.volume, back.volume)
    held = (stated.clearance + stated.cut_off) / state.volume
    exhausted = held - (stated.clearance + stated.compression) / back.volume
    assert per.used == pytest.approx(exhausted, rel=1e-12)
    assert per.at_cut_off == pytest.approx(per.kept + per.used, rel=1e-12)


@STEADY
@given(cycles())
def test_heat_supplied_is_work_and_what_is_carried_away(stated):
    # Hyperbolic expansion asks the walls for a little heat that this does not count, so that the
    # bare diagram may pass the Carnot limit; test_running holds the engine's own figure to it.
    state = steam_properties.steam_state(stated.admission)
    back = steam_properties.steam_state(stated.back)
    per = steam_cycle.steam_per_stroke(stated, state.volume, back.volume)
    work = steam_cycle.diagram(stated).mean_pressure * 1e6
    assume(work > 0.0)
    drain = steam_properties.water_enthalpy(back.temperature)
    heat = steam_cycle.heat_balance(3600.0 * per.used, state.enthalpy, drain, work)
    assert heat.supplied == pytest.approx(heat.work + heat.carried_away, rel=1e-12)
    carnot = 1.0 - (back.temperature + 273.15) / (state.temperature + 273.15)
    assert heat.efficiency < 1.15 * carnot


@STEADY
@given(cycles(), st.floats(1.01, 2.0))
def test_more_steam_pressure_gives_more_work(stated, more):
    stronger = stated._replace(admission=stated.admission * more)
    assert steam_cycle.diagram(stronger).mean_pressure > steam_cycle.diagram(stated).mean_pressure


def test_usual_compression_never_passes_admission():
    for clearance in (0.005, 0.02, 0.1, 0.3):
        share = steam_cycle.usual_compression(0.3, 0.11, clearance)
        stated = steam_cycle.cycle(
            admission_pressure=0.3, back_pressure=0.11, cut_off=0.5, clearance=clearance
        )
        assert stated.compression == share <= 0.1
        assert steam_cycle.diagram(stated).compression_pressure <= 0.3 * (1.0 + 1e-12)


@pytest.mark.parametrize(
    ("change", "name"),
    [
        ({"back_pressure": 0.9}, "back_pressure"),
        ({"cut_off": 0.01}, "cut_off"),
        ({"release": 0.4}, "release"),
        ({"clearance": 0.6}, "clearance"),
        ({"clearance": 0.0, "compression": 0.1}, "compression"),
    ],
)
def test_a_cycle_that_cannot_be_is_refused_by_name(change, name):
    arguments = {"admission_pressure": 0.8, "back_pressure": 0.11, "cut_off": 0.5, "clearance": 0.1}
    arguments.update(change)
    with pytest.raises(OutOfRange) as refused:
        steam_cycle.cycle(**arguments)
    assert refused.value.name == name


def test_missing_quantity_beyond_reason_is_refused():
    with pytest.raises(OutOfRange):
        steam_cycle.steam_used(10.0, 0.95)


def nozzle(pressure, volume, back_pressure, k):
    """A perfect gas through 1 mm2 [kg/s], any textbook; pressures absolute [MPa]."""
    if back_pressure >= pressure:
        return 0.0
    ratio = max(back_pressure / pressure, (2.0 / (k + 1.0)) ** (k / (k - 1.0)))
    head = 2.0 * k / (k - 1.0) * 1e6 * pressure / volume
    return 1e-6 * math.sqrt(head * (ratio ** (2.0 / k) - ratio ** ((k + 1.0) / k)))


@pytest.mark.parametrize("double_acting", [True, False])
def test_means_over_a_turn_agree_with_a_fine_integration(double_acting):
    stated = steam_cycle.cycle(
        admission_pressure=0.8, back_pressure=0.11, cut_off=0.5, clearance=0.1
    )
    air = 0.101325
    found = ring_duty.ring_duty(
        stated,
        double_acting=double_acting,
        rings=1,
        k=1.135,
        pressure_volume=0.19,
        atmosphere=air,
    )
    flow = napier = squares = difference = slid = 0.0
    fine = 4000
    for step in range(fine if double_acting else 2 * fine):
        angle = (step + 0.5) * math.pi / fine
        forth = angle < math.pi
        travel = 0.5 * (1.0 - math.cos(angle)) if forth else 0.5 * (1.0 + math.cos(angle))
        if double_acting:
            ends = (
                steam_cycle.pressure_outward(stated, travel),
                steam_cycle.pressure_returning(stated, travel),
            )
        else:
            ends = (
                steam_cycle.pressure_outward(stated, travel)
                if forth
                else steam_cycle.pressure_returning(stated, travel),
                air,
            )
        flow += nozzle(max(ends), 0.19 / max(ends), min(ends), 1.135)
        napier += leak.napier_flow(1.0, max(ends), min(ends))
        squares += max(ends) ** 2 - min(ends) ** 2
        difference += abs(math.sin(angle)) * abs(ends[0] - ends[1])
        slid += abs(math.sin(angle))
    count = fine if double_acting else 2 * fine
    assert found.gap_flow == pytest.approx(flow / count, rel=0.01)
    assert found.napier_flow == pytest.approx(napier / count, rel=0.01)
    assert found.squares == pytest.approx(squares / count, rel=0.01)
    assert found.mean_difference == pytest.approx(difference / slid, rel=0.01)


def test_steady_pressures_are_a_duty_without_a_crank():
    found = ring_duty.steady_duty(0.8, 0.11, 1, 1.135, 0.19)
    assert found.gap_flow == pytest.approx(nozzle(0.8, 0.19 / 0.8, 0.11, 1.135), rel=1e-9)
    assert found.napier_flow == pytest.approx(leak.napier_flow(1.0, 0.8, 0.11), rel=1e-9)
    assert found.squares == pytest.approx(0.8**2 - 0.11**2, rel=1e-12)
    assert found.mean_difference == pytest.approx(0.69, rel=1e-12)
