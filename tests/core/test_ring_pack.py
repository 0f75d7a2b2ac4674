"""Rings in a row: against scipy, throttles in series, the running engine, their own remedies."""

import json
import math
import random

import numpy as np
import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

from ringwright.core import calculations
from ringwright.core.fields import checked
from ringwright.core.problems import InputProblem
from ringwright.core.running import leak, ring_spaces, steam_cycle

AIR = 0.101325
K = 1.135
ENGINE = {"bore": 80.0, "stroke": 90.0, "speed": 300.0, "steam_pressure": 0.7}
CYCLE = steam_cycle.cycle(admission_pressure=0.8, back_pressure=0.111, cut_off=0.6, clearance=0.1)


def asked(**more):
    return calculations.run("ring-pack", {**ENGINE, **more})


def value(answer, name):
    return answer["figures"][name]["value"]


def outcome(answer, check):
    return next((row for row in answer["findings"] if row["check"] == check), None)


def nozzle(before, after, k=K):
    """Isentropic flow to the throat, as textbooks print it, either way."""
    if before < after:
        return -nozzle(after, before, k)
    x = max(after / before, (2 / (k + 1)) ** (k / (k - 1)))
    return before * math.sqrt(max(0.0, 2 * k / (k - 1) * (x ** (2 / k) - x ** ((k + 1) / k))))


def solved(rings, double, fillings, turns=40):
    """(mean difference across each ring, mean flow into the first), by LSODA, turn after turn."""

    def ends(angle):
        angle %= 2 * math.pi
        travel = 0.5 * (1 - math.cos(angle))
        out, back = steam_cycle.pressure_outward, steam_cycle.pressure_returning
        if angle < math.pi:
            one, other = out(CYCLE, travel), back(CYCLE, travel)
        else:
            one, other = back(CYCLE, 1 - travel), out(CYCLE, 1 - travel)
        return one, other if double else AIR

    def change(angle, held):
        one, two = ends(angle)
        flows = [nozzle(a, b) for a, b in zip([one, *held], [*held, two], strict=True)]
        return [fillings / (2 * math.pi) * (a - b) for a, b in zip(flows, flows[1:], strict=False)]

    held = np.full(rings - 1, 0.35)
    for _ in range(turns):
        found = solve_ivp(
            change, (0, 2 * math.pi), held, "LSODA", max_step=0.05, rtol=1e-5, dense_output=True
        )
        moved, held = np.abs(found.y[:, -1] - held).max(), found.y[:, -1]
        if moved < 1e-4:
            break
    across, weight, flow = np.zeros(rings), 0.0, 0.0
    angles = (np.arange(720) + 0.5) * 2 * math.pi / 720
    for angle in angles:
        one, two = ends(angle)
        row = [one, *found.sol(angle), two]
        across += abs(math.sin(angle)) * np.abs(np.diff(row))
        weight += abs(math.sin(angle))
        flow += max(nozzle(row[0], row[1]), 0.0)
    return across / weight, flow / 720


@pytest.mark.parametrize("double", [True, False])
@pytest.mark.parametrize(("rings", "fillings"), [(2, 0.5), (2, 20.0), (3, 5.0), (4, 1.0), (4, 50)])
def test_pressures_between_rings_are_those_of_scipy(rings, double, fillings):
    """Within 2 % of the steam pressure, and 4 % of the flow, all turns followed to the end."""
    across, flow = solved(rings, double, fillings)
    pressures = ring_spaces.ends(CYCLE, double, AIR)
    found = ring_spaces.split(pressures, rings, K, fillings)
    assert found.differences == pytest.approx(across, abs=0.02 * 0.8)
    assert found.flow == pytest.approx(flow, rel=0.04)


@pytest.mark.parametrize("rings", [2, 3, 5])
def test_spaces_that_fill_at_once_hold_what_throttles_in_series_hold(rings):
    """Steady ends: brentq finds the one flow that a chain of nozzles passes."""

    def last(flow):
        pressure = 0.8
        for _ in range(rings - 1):
            lowest = pressure * (2 / (K + 1)) ** (K / (K - 1))
            if nozzle(pressure, lowest) <= flow:
                return -1.0
            pressure = brentq(lambda p, before=pressure: nozzle(before, p) - flow, lowest, pressure)
        return nozzle(pressure, 0.111) - flow

    low, high = 1e-6, nozzle(0.8, 0.111)
    for _ in range(60):
        middle = 0.5 * (low + high)
        low, high = (middle, high) if last(middle) > 0.0 else (low, middle)
    steady = [(0.8, 0.111)] * ring_spaces.STEPS
    found = ring_spaces.split(steady, rings, K, 500.0)
    assert found.flow == pytest.approx(low, rel=0.01)
    series = leak.throttles_in_series(rings, K)
    assert found.flow == pytest.approx(0.8 * leak.series_flow(series, 0.111 / 0.8), rel=0.01)
    # Martin's labyrinth: squares of pressure fall in even steps, but for the last, which is choked.
    row = [0.8]
    for one in found.differences:
        row.append(row[-1] - one)
    steps = [a * a - b * b for a, b in zip(row, row[1:], strict=False)]
    assert max(steps[:-1]) <= 1.25 * min(steps[:-1])
    assert found.differences == sorted(found.differences)


def test_one_ring_takes_all_and_leaks_as_the_running_engine_says():
    for more in ({}, {"acting": "single"}, {"ring_type": "plain"}):
        answer = asked(rings_on_piston=1, **more)
        whole = calculations.run("running", {**ENGINE, "rings_on_piston": 1, **more})
        one = answer["figures"]["gap_leak"]
        for key in ("value", "low", "high"):
            there = whole["figures"]["gap_leak"][key]
            assert one[key] == pytest.approx(there, rel=0.02, abs=1e-12), (more, key)
        (row,) = answer["rings"]
        assert row["share"]["value"] == 1.0 and row["wear"]["value"] == 1.0


def test_shares_are_of_one_whole_and_both_ends_are_alike():
    for count in range(1, 9):
        rows = asked(rings_on_piston=count, ring_type="plain")["rings"]
        shares = [row["share"]["value"] for row in rows]
        assert sum(shares) == pytest.approx(1.0) and len(rows) == count
        assert sum(row["wear"]["value"] for row in rows) == pytest.approx(count)
        # Double-acting: the piston has no first end.
        assert shares == pytest.approx(shares[::-1], abs=0.01)


def test_rings_between_stand_idle_where_their_spaces_fill_slowly():
    slow = asked(rings_on_piston=4, speed=1500.0, ring_type="plain")
    assert value(slow, "fillings") < 3.0
    shares = [row["share"]["value"] for row in slow["rings"]]
    assert min(shares[0], shares[3]) > 3.0 * max(shares[1], shares[2])
    quick = asked(rings_on_piston=4, speed=5.0, ring_type="plain", acting="single")
    shares = [row["share"]["value"] for row in quick["rings"]]
    assert value(quick, "fillings") > 50.0
    assert shares == sorted(shares) and shares[-1] > 0.4


def test_more_rings_leak_less_rub_more_and_want_a_longer_piston():
    answer = asked(ring_type="plain", rings_on_piston=6)
    rows = answer["counts"]
    assert [row["rings"] for row in rows] == [1, 2, 3, 4, 6]
    for name, sign in (("leak", -1), ("friction_power", 1), ("pack_length", 1)):
        values = [sign * row[name]["value"] for row in rows]
        assert values == sorted(values), name
    for name in ("friction_power", "steam_cost", "pack_length"):
        assert rows[-1][name]["value"] == value(answer, name)
    whole = calculations.run("running", {**ENGINE, "ring_type": "plain", "rings_on_piston": 6})
    friction = whole["figures"]["friction_power"]["value"]
    assert value(answer, "friction_power") == pytest.approx(friction)
    use = whole["figures"]["steam_use"]["value"] - whole["figures"]["leak_rate"]["value"]
    each = use / whole["figures"]["indicated_power"]["value"]
    cost = value(answer, "gap_leak") + each * friction
    assert value(answer, "steam_cost") == pytest.approx(cost, rel=0.01)


def test_length_of_the_piston_is_grooves_and_lands():
    answer = asked(
        ring_type="plain", rings_on_piston=3, ring_width=4.0, side_clearance=0.05, end_land=6.0,
        inner_land=3.0,
    )  # fmt: skip
    assert value(answer, "pack_length") == pytest.approx(3 * 4.05 + 2 * 3.0 + 2 * 6.0)


def test_lands_taken_are_those_of_practice_and_bear():
    """Khurmi and Gupta, section 32.9: other ring lands 0.75 to 1 times the ring's width."""
    dice = random.Random(4)
    for _ in range(25):
        given = {**ENGINE, "bore": dice.uniform(20.0, 400.0)}
        given["steam_pressure"] = dice.uniform(0.1, 2.0)
        given["ring_type"] = "plain"
        answer = calculations.run("ring-pack", given)
        chosen = {one["input"]: one["value"] for one in answer["chosen"]}
        least = max(0.75 * chosen["ring_width"], value(answer, "least_land"))
        assert chosen["inner_land"] >= least - 1e-9
        assert outcome(answer, "land-short")["outcome"] == "good"


CLEARED = [
    ({"rings_on_piston": 8}, "ring-count"),
    ({"ring_type": "plain", "rings_on_piston": 1}, "ring-count"),
    ({"rings_on_piston": 1, "piston_diameter": 74.0}, "double-for-two"),
    ({"end_land": 0.3}, "land-short"),
    ({"inner_land": 0.5, "end_land": 0.5}, "land-short"),
    ({"piston_length": 20.0, "rings_on_piston": 3}, "pack-length"),
    ({"piston_length": 9.0, "ring_type": "plain"}, "pack-length"),
]


@pytest.mark.parametrize(("more", "check"), CLEARED)
def test_what_is_told_to_be_given_clears_it(more, check):
    found = outcome(asked(**more), check)
    assert found["outcome"] != "good" and found["apply"], found
    given = {**ENGINE, **more}
    for one in found["apply"]:
        given.pop(one["input"], None)
        if one["value"] is not None:
            given[one["input"]] = one["value"]
    assert outcome(calculations.run("ring-pack", given), check)["outcome"] == "good"


def test_a_cycle_without_power_is_refused():
    with pytest.raises(InputProblem) as refused:
        asked(steam_pressure=0.03, back_pressure=0.02, cut_off=0.06)
    fault = refused.value.faults[0]
    assert (fault.path, fault.value, fault.unit) == (("cut_off",), 0.06, "1")
    with pytest.raises(InputProblem) as refused:
        asked(groove_depth=45.0)
    assert refused.value.faults[0].path == ("groove_depth",)


def test_every_engine_that_the_inputs_allow_is_answered_or_refused():
    dice = random.Random(8)
    calculation = calculations.CALCULATIONS["ring-pack"]
    told = 0
    for _ in range(60):
        given = {"bore": dice.uniform(10.0, 900.0), "stroke": dice.uniform(10.0, 1500.0)}
        given["speed"] = dice.choice((1.0, 100.0, 3000.0))
        given["steam_pressure"] = dice.choice((0.05, 0.7, 3.0, 9.0))
        given["rings_on_piston"] = dice.randint(1, 8)
        given["acting"] = dice.choice(("double", "single"))
        given["ring_type"] = dice.choice(("plain", "double-turn"))
        given["closed_gap"] = dice.choice((None, 0.0, 5.0))
        try:
            answer = calculation.run(checked(calculation.fields, given))
        except InputProblem as problem:
            assert all(fault.remedy for fault in problem.faults)
            continue
        told += 1
        assert all(math.isfinite(figure.value) for figure in answer["figures"].values())
        for row in answer["rings"]:
            assert math.isfinite(row["wear"].value)
    assert told > 40


def test_an_answer_is_small():
    assert len(json.dumps(asked(rings_on_piston=8))) < 16000
