"""What the rings take by rubbing, and what rubbing takes off them: by hand and afresh."""

import math

import pytest
from scipy.optimize import brentq

from ringwright.core import calculations
from ringwright.core.ring import spring
from ringwright.core.running import friction, wear

# The demonstration engine: the launch Marigold of the invented Fernhollow Steam Club.
MARIGOLD = {"bore": 80.0, "stroke": 90.0, "speed": 300.0, "steam_pressure": 0.7}


def run(**more):
    return calculations.run("running", {**MARIGOLD, **more})


def outcomes(answer):
    return {found["check"]: found["outcome"] for found in answer["findings"]}


def test_friction_by_hand():
    # mu (n p + share dp) pi d1 h1 v, with the pressures of the answer's own working.
    answer = run(friction_coefficient=0.1, wall_pressure=0.05, ring_width=4.0)
    figure = answer["figures"]["friction_power"]
    given_in = {entry["symbol"]: entry["value"] for entry in figure["working"]}
    by_hand = 0.1 * (2 * 0.05 + 0.5 * given_in["dp"]) * 3.141592653589793 * 80.0 * 4.0 * 0.9
    assert figure["value"] == pytest.approx(by_hand, rel=1e-12)
    assert answer["figures"]["mean_piston_speed"]["value"] == pytest.approx(0.9)
    assert answer["figures"]["sliding_distance"]["value"] == pytest.approx(0.9 * 3600.0)
    # A textbook's coefficient is about 0.1.
    assert friction.COEFFICIENT[1] == 0.1


def test_friction_share_is_power_rubbed_away_over_power_made():
    figures = run(friction_coefficient=0.1)["figures"]
    rubbed, made, share = (
        figures[name] for name in ("friction_power", "indicated_power", "friction_share")
    )
    assert share["value"] == pytest.approx(rubbed["value"] / made["value"], rel=1e-12)
    # The least share is the least friction in the strongest engine.
    assert share["low"] == pytest.approx(rubbed["low"] / made["high"], rel=1e-12)
    assert share["high"] == pytest.approx(rubbed["high"] / made["low"], rel=1e-12)


def test_wall_load_by_hand():
    """p + share dp/n: a quarter, half and all of the steam's pressure behind the ring."""
    figure = run(wall_pressure=0.05, rings_on_piston=3)["figures"]["wall_pressure_with_steam"]
    across = {row["symbol"]: row["value"] for row in figure["working"]}["dp"]
    for bound, share in (("low", 0.25), ("value", 0.5), ("high", 1.0)):
        assert figure[bound] == pytest.approx(0.05 + share * across / 3.0, rel=1e-12)


def test_steam_load_does_not_depend_on_the_number_of_rings():
    def by_steam_alone(rings):
        """Friction goes straight up with the spring's pressure: what is left of it at none."""
        section = {"radial_thickness": 2.6, "ring_width": 5.0}
        low, high = [
            run(wall_pressure=p, rings_on_piston=rings, **section)["figures"]["friction_power"]
            for p in (0.01, 0.02)
        ]
        return 2.0 * low["value"] - high["value"]

    assert by_steam_alone(1) == pytest.approx(by_steam_alone(4), rel=1e-12)


def test_wear_from_two_readings():
    readings = [{"hours": 0.0, "gap": 0.3}, {"hours": 250.0, "gap": 0.8}]
    answer = run(gap_readings=readings, ring_type="plain")
    figures = answer["figures"]
    assert figures["gap_growth"]["value"] == pytest.approx(0.2)
    # Each reading may be 0.02 mm out.
    assert figures["gap_growth"]["high"] == pytest.approx(0.2 + 0.04 / 2.5)
    assert figures["ring_wear"]["value"] == pytest.approx(0.2 / 6.283185307179586)
    largest = figures["largest_gap"]["value"]
    assert figures["hours_left"]["value"] == pytest.approx((largest - 0.8) / 0.2 * 100.0)
    assert figures["next_look"]["value"] == pytest.approx(0.5 * figures["hours_left"]["low"])


def test_largest_gap_leaks_the_share_allowed():
    limit = {
        "ring_type": "plain",
        "end_cut": "square",
        "largest_leak_share": 0.005,
        "rings_on_piston": 1,
    }
    largest = run(worn_gap=1.0, **limit)["figures"]["largest_gap"]["value"]
    there = run(worn_gap=largest, **limit)["figures"]["leak_share"]["value"]
    assert there == pytest.approx(0.005, rel=0.02)


def test_largest_gap_leaves_half_the_spring_where_the_leak_allows_more():
    figures = run(worn_gap=1.0, largest_leak_share=0.5)["figures"]
    put_in = {entry["symbol"]: entry["value"] for entry in figures["spring_left"]["working"]}
    growth = brentq(
        lambda g: (1 - g / put_in["m"]) * (1 - g / (2 * math.pi * put_in["a1"])) ** 3 - 0.5,
        0.0,
        put_in["m"],
    )
    # The rest of the gap is that of the new ring.
    closed = 1.0 - put_in["g"]
    assert figures["largest_gap"]["value"] == pytest.approx(closed + growth, rel=1e-9)


def test_spring_left_agrees_with_the_ring_reckoned_afresh():
    # A worn ring of the same free gap, thinner by the wear, pressed by spring.py's own law.
    bore, thickness, modulus, wear_of_radius = 80.0, 3.0, 103500.0, 0.05
    change = spring.gap_change(0.048, bore, thickness, modulus)
    growth = 2.0 * math.pi * wear_of_radius
    worn_pressure = spring.pressure_from_gap(
        change - growth, bore, thickness - wear_of_radius, modulus
    )
    found = wear.spring_left(growth, change, thickness)
    assert found == pytest.approx(worn_pressure / 0.048, rel=0.02)


def test_a_ring_without_its_spring_is_due():
    assert outcomes(run(worn_gap=6.0, ring_type="plain"))["spring"] == "watch"
    assert "spring" not in outcomes(run(worn_gap=0.6))


def test_least_squares_through_three_readings():
    # Worked by hand: hours 0, 100, 300; gaps 0.30, 0.42, 0.60.
    found = wear.wear_from_readings([(300.0, 0.60), (0.0, 0.30), (100.0, 0.42)])
    slope = -400 / 3 * (0.30 - 0.44) - 100 / 3 * (0.42 - 0.44) + 500 / 3 * (0.60 - 0.44)
    slope /= (400 / 3) ** 2 + (100 / 3) ** 2 + (500 / 3) ** 2
    assert found.growth[1] == pytest.approx(100.0 * slope, rel=1e-12)
    assert (found.last_hours, found.last_gap) == (300.0, 0.60)
