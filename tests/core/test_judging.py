"""What a ring is judged by: the value that was measured, and the limit that it was held against."""

import math

import pytest

from ringwright.core.properties.materials import material
from ringwright.core.ring import judging
from ringwright.core.ring.design import settle

# Four metals of different growth, steam at 170 degC in a cylinder that is half warm.
ENGINE = {
    "bore": 80.0,
    "ring_type": "plain",
    "steam_pressure": 0.7,
    "shop_temperature": 15.0,
    "ring_material": "phosphor-bronze",
    "cylinder_material": "grey-iron",
    "piston_material": "aluminium",
}


def test_a_ring_of_the_least_gap_just_meets_its_ends():
    """By hand: the ring's metal grows to the whole circumference of the half-warm bore."""
    design, _ = settle(ENGINE)
    duty = design.duty
    ring, wall = material("phosphor-bronze").expansion, material("grey-iron").expansion
    grown = 1.0 + ring * (duty.temperature - 15.0)
    bore = 1.0 + wall * (duty.warming_wall_temperature - 15.0)
    gap = judging.least_gap(design)
    assert gap == pytest.approx(math.pi * 80.0 * (1.0 - bore / grown), rel=1e-9)
    left = judging.gap_left(design, gap, duty.warming_wall_temperature)
    assert left == pytest.approx(0.0, abs=1e-9)


def test_sides_are_judged_by_what_is_left_of_them():
    """Ring and piston of one metal: cold they are nearest, and 0.05 mm of groove is left."""
    design, _ = settle({**ENGINE, "piston_material": "phosphor-bronze"})
    least, greatest = judging.clearances.running_side_clearance(80.0)[1:]
    for width, limit in ((design.groove_width - 0.5 * least, least), (0.1, greatest)):
        judged = judging.judge_side(design, width)
        assert judged.value == pytest.approx(design.groove_width - width)
        assert judged.limit == limit


@pytest.mark.parametrize(
    ("pressure", "outcome", "limit"),
    [
        (0.010, "stop", 0.015),
        (0.020, "watch", 0.034),
        (0.048, "good", 0.085),
        (0.100, "watch", 0.085),
        (0.250, "stop", 0.200),
    ],
)
def test_pressure_is_judged_by_practice(pressure, outcome, limit):
    """0.041 to 0.055 MPa is practice (Walshaw); the rest is common practice, no source."""
    assert judging.judge_pressure(pressure) == (outcome, pressure, limit)


@pytest.mark.parametrize(("light", "outcome"), [(0.02, "good"), (0.1, "watch"), (0.3, "stop")])
def test_light_is_judged_by_what_bedding_in_takes_out(light, outcome):
    assert judging.judge_light(light) == (outcome, light, 0.05)
