"""What matters most: against plain Monte Carlo by numpy, closed forms and the sum of the parts."""

import math

import numpy as np
import pytest
from scipy.stats import norm

from ringwright.core import calculations
from ringwright.core.measuring import ring_sample
from ringwright.core.problems import InputProblem
from ringwright.core.ring.design import settle


def asked(**request):
    return calculations.run("spread", request)


def value(answer, name):
    return answer["figures"][name]["value"]


def parts(answer, name):
    for row in answer["rankings"]:
        if row["outcome"] == name:
            return {entry["input"]: entry for entry in row["inputs"]}
    raise KeyError(name)


@pytest.mark.parametrize("ring_type", ["plain", "double-turn"])
@pytest.mark.parametrize("modulus", [None, 104000.0])
def test_the_yield_is_that_of_a_hundred_thousand_random_rings(ring_type, modulus):
    request = {"bore": 80.0, "ring_type": ring_type}
    if modulus:
        request["modulus"] = modulus
        request["lowest_closed_gap"] = 0.2
        request["highest_closed_gap"] = 0.5
    answer = asked(**request)
    design, _ = settle(request)
    limits = {row["symbol"]: row["value"] for row in answer["figures"]["yield_share"]["working"]}
    spreads = {name: row["plus_minus"]["value"] for name, row in parts(answer, "free_gap").items()}
    chance = np.random.default_rng(11)
    count = 20000
    draws = {name: chance.normal(0.0, size / 1.959964, count) for name, size in spreads.items()}
    within, pressures = 0, []
    for i in range(count):
        ring = ring_sample.outcome(design, {name: float(row[i]) for name, row in draws.items()})
        pressures.append(ring.wall_pressure)
        within += (
            limits["p low"] <= ring.wall_pressure <= limits["p high"]
            and limits["s1 low"] <= ring.closed_gap <= limits["s1 high"]
        )
    # Two standard errors of the random rings, and the hundredth promised.
    assert value(answer, "yield_share") == pytest.approx(within / count, abs=0.017)
    pressure = answer["figures"]["wall_pressure"]
    low, high = np.percentile(pressures, [2.5, 97.5])
    assert pressure["low"] == pytest.approx(low, rel=0.02)
    assert pressure["high"] == pytest.approx(high, rel=0.02)


def test_the_pressure_goes_with_modulus_and_cube_of_thickness():
    """p0 = E a^3 kappa0/(12 r r_o): known powers of each input, kappa0 fixed by the free radius."""
    design, _ = settle({"bore": 80.0})
    base = ring_sample.outcome(design, {}).wall_pressure
    assert base == pytest.approx(design.spring.wall_pressure, rel=1e-12)
    stiff = ring_sample.outcome(design, {"modulus": 0.1 * design.duty.modulus}).wall_pressure
    assert stiff == pytest.approx(1.1 * base, rel=1e-12)
    plain, _ = settle({"bore": 80.0, "ring_type": "plain"})
    thick = plain.section.thickness * 1.01
    ratio = (
        ring_sample.outcome(
            plain, {"radial_thickness": 0.01 * plain.section.thickness}
        ).wall_pressure
        / plain.spring.wall_pressure
    )
    r = 40.0 - 0.5 * plain.section.thickness
    radius = 40.0 - 0.5 * thick
    assert ratio == pytest.approx(1.01**3 * (r / radius) ** 3, rel=2e-3)


def test_gap_in_the_bore_is_pi_times_the_bore_and_the_saw_cut_as_it_leans():
    answer = asked(bore=80.0, bore_spread=0.03, kerf_spread=0.04, outside_spread=0.02)
    found = parts(answer, "closed_gap")
    assert found["bore"]["effect"]["value"] == pytest.approx(math.pi * 0.03, rel=1e-9)
    assert found["outside"]["effect"]["value"] == pytest.approx(-math.pi * 0.02, rel=1e-9)
    # At 45 degrees a saw takes its thickness times the root of two out of the ring.
    assert found["end_kerf"]["effect"]["value"] == pytest.approx(0.04 * 2**0.5, rel=1e-9)
    total = (math.pi * 0.03) ** 2 + (math.pi * 0.02) ** 2 + 2 * 0.04**2
    assert found["end_kerf"]["share"]["value"] == pytest.approx(2 * 0.04**2 / total, rel=1e-9)


def test_what_is_known_better_spreads_less():
    """Half of the published range of the modulus, 83 to 124 GPa (Tribology Handbook, table 17.2),
    or 3 % of one that is given; a relief that was measured is good to 0.03 (common practice)."""
    found = parts(asked(bore=80.0), "wall_pressure")
    assert found["modulus"]["plus_minus"]["value"] == pytest.approx(20500.0)
    found = parts(asked(bore=80.0, modulus=100000.0, relief=0.8), "wall_pressure")
    assert found["modulus"]["plus_minus"]["value"] == pytest.approx(3000.0)
    assert found["relief"]["plus_minus"]["value"] == pytest.approx(0.03)


def test_shares_fall_and_add_up_to_one():
    for ring_type in ("plain", "double-turn"):
        for row in asked(bore=80.0, ring_type=ring_type)["rankings"]:
            shares = [entry["share"]["value"] for entry in row["inputs"]]
            assert all(one >= two - 1e-8 for one, two in zip(shares, shares[1:], strict=False))
            assert sum(shares) == pytest.approx(1.0, rel=1e-12)


def test_the_tool_asked_for_moves_as_sizing_says():
    """A ring of 5 % stiffer iron needs the former that sizing gives for that modulus."""
    request = {"bore": 80.0}
    design, _ = settle(request)
    swing = 0.05 * design.duty.modulus
    effect = parts(asked(**request, modulus_spread=swing), "former_diameter")["modulus"]["effect"]
    fixed = {"radial_thickness": design.section.thickness, "ring_width": design.section.width}
    formers = [
        settle(dict(request, modulus=design.duty.modulus + shift, **fixed))[
            0
        ].spring.former_diameter
        for shift in (swing, -swing)
    ]
    assert effect["value"] == pytest.approx(0.5 * (formers[0] - formers[1]), rel=1e-9)


def test_nothing_uncertain_makes_every_ring_right():
    names = ("modulus", "relief", "thickness", "kerf", "bore", "outside", "tool")
    still = {name + "_spread": 0.0 for name in names}
    answer = asked(bore=80.0, **still)
    assert value(answer, "yield_share") == 1.0
    pressure = answer["figures"]["wall_pressure"]
    assert pressure["low"] == pressure["high"] == pytest.approx(pressure["value"], rel=1e-12)


def test_the_same_request_gives_the_same_answer():
    assert asked(bore=63.5) == asked(bore=63.5)


def test_normal_deviates_are_those_of_scipy():
    for share in np.concatenate([np.linspace(0.001, 0.999, 199), [1e-5, 1 - 1e-5]]):
        assert ring_sample.normal_deviate(float(share)) == pytest.approx(
            norm.ppf(share), abs=4.6e-4
        )


def test_limits_the_wrong_way_round_are_refused():
    with pytest.raises(InputProblem) as refused:
        asked(bore=80.0, lowest_pressure=0.06, highest_pressure=0.05)
    assert refused.value.faults[0].path == ("highest_pressure",)


def test_rings_that_miss_on_the_gap_are_counted_as_such():
    """No gap is within limits that no ring comes near, and every pressure within wide ones."""
    design, _ = settle({"bore": 80.0})
    spreads = {"modulus": 0.05 * design.duty.modulus}
    found = ring_sample.sample(design, spreads, ring_sample.Limits(0.0, 9.0, 50.0, 60.0))
    assert (found.share, found.pressure_lost, found.gap_lost) == (0.0, 0.0, 1.0)
    found = ring_sample.sample(design, spreads, ring_sample.Limits(8.0, 9.0, 0.0, 60.0))
    assert (found.share, found.pressure_lost, found.gap_lost) == (0.0, 1.0, 0.0)
