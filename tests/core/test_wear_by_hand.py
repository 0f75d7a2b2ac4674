"""Wear of a ring from its gap: straight lines, what is left of the spring, hours to the limit."""

import math

import pytest
from scipy.optimize import brentq

from ringwright.core.problems import InputProblem
from ringwright.core.running import wear


def test_the_line_of_least_squares_and_what_a_feeler_may_be_out():
    """Hours 10, 90, 260: 3 readings about 120 h and 0.46 mm.

    Slope (110 * 0.16 + 30 * 0.06 + 140 * 0.22)/(110^2 + 30^2 + 140^2) = 50.2/32600 mm in an hour.
    """
    found = wear.wear_from_readings([(260.0, 0.68), (10.0, 0.30), (90.0, 0.40)])
    likely = 100.0 * 50.2 / 32600.0
    doubt = 100.0 * 0.04 / 250.0
    assert found.growth == pytest.approx((likely - doubt, likely, likely + doubt), rel=1e-9)
    assert (found.last_hours, found.last_gap) == (260.0, 0.68)
    assert wear.READING_ERROR == 0.02


@pytest.mark.parametrize(
    "readings", [[(40.0, 0.3)], [(40.0, 0.3), (40.0, 0.5)], [(0.0, 0.3), (0.0, 0.3), (0.0, 0.4)]]
)
def test_readings_of_one_time_tell_no_growth(readings):
    with pytest.raises(InputProblem) as refused:
        wear.wear_from_readings(readings)
    (fault,) = refused.value.faults
    assert (fault.path, fault.code) == (("gap_readings",), "readings")
    assert "different running hours" in fault.remedy


def test_two_readings_an_hour_apart_are_enough():
    found = wear.wear_from_readings([(40.0, 0.30), (41.0, 0.31)])
    assert found.growth == pytest.approx((-3.0, 1.0, 5.0), rel=1e-9)
    # Two of them at one hour count as their mean: 0.31 to 0.36 in 100 hours.
    found = wear.wear_from_readings([(7.0, 0.30), (7.0, 0.32), (107.0, 0.36)])
    assert found.growth[1] == pytest.approx(0.05, rel=1e-9)


def test_the_outside_wears_by_the_gap_over_two_pi():
    assert wear.ring_wear(0.9) == pytest.approx(0.9 / 6.283185307179586, rel=1e-12)


@pytest.mark.parametrize(
    ("growth", "left"),
    [
        (0.0, 1.0),
        # A quarter of the spring gone, and 3 of 8 pi mm round the ring.
        (3.0, 0.75 * (1.0 - 3.0 / (8.0 * math.pi)) ** 3),
        (11.9, 0.1 / 12.0 * (1.0 - 11.9 / (8.0 * math.pi)) ** 3),
        (12.0, 0.0),
        (15.0, 0.0),
    ],
)
def test_spring_left_in_a_worn_ring(growth, left):
    assert wear.spring_left(growth, 12.0, 4.0) == pytest.approx(left, rel=1e-9, abs=1e-12)


def test_no_spring_is_left_of_no_ring():
    """Worn through before it is slack: 7 mm round a ring of 1 mm."""
    assert wear.spring_left(6.25, 20.0, 1.0) > 0.0
    assert wear.spring_left(6.29, 20.0, 1.0) == 0.0
    # Both gone at once is nothing either, not the product of two losses.
    assert wear.spring_left(25.0, 20.0, 1.0) == 0.0


@pytest.mark.parametrize("share", [0.1, 0.5, 0.93, 0.9999])
def test_growth_to_a_share_of_the_spring(share):
    growth = brentq(
        lambda g: (1.0 - g / 14.0) * (1.0 - g / (2.0 * math.pi * 2.6)) ** 3 - share, 0.0, 14.0
    )
    assert wear.growth_to(share, 14.0, 2.6) == pytest.approx(growth, abs=1e-9)


def test_hours_until_the_gap_is_too_large():
    # 0.7 mm at 0.2 mm in 100 hours.
    assert wear.hours_to(0.5, 1.2, 0.2) == pytest.approx(350.0, rel=1e-12)
    assert wear.hours_to(1.3, 1.2, 0.2) == 0.0
    assert wear.hours_to(0.5, 1.2, 0.0) is None
    assert wear.hours_to(0.5, 1.2, -0.1) is None
    # However slow it is, it comes to an end.
    assert wear.hours_to(0.5, 1.2, 0.007) == pytest.approx(10000.0, rel=1e-12)
