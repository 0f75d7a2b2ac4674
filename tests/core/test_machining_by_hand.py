"""Speeds and cuts at their limits: what a machine takes of a range, teeth, sizes next to none."""

import itertools
import math

import pytest

from ringwright.core.making import machining
from ringwright.core.making.machining_table import CUTS_AS
from ringwright.core.problems import OutOfRange


def test_only_a_light_machine_with_carbide_is_held_to_less_than_its_range():
    """A rigid machine takes the middle of a range, a light one its low end; carbide on a light one
    no more than 90 m/min: common practice, no source."""
    held = 0
    for operation, tool, metal in itertools.product(machining.OPERATIONS, machining.TOOLS, CUTS_AS):
        rigid = machining.cutting_speed(operation, tool, metal, "rigid")
        assert rigid.value == pytest.approx(0.5 * (rigid.low + rigid.high))
        light = machining.cutting_speed(operation, tool, metal, "light")
        assert (light.low, light.high) == (rigid.low, rigid.high)
        wanted = min(light.low, 90.0) if tool == "carbide" else light.low
        assert light.value == wanted
        held += wanted < light.low
    assert held > 5


def test_a_cutter_has_one_tooth_where_none_are_counted():
    """Feed goes by the tooth: with six it is six times as fast."""
    sizes = {"material_key": "steel", "diameter": 50.0, "travel": 120.0}
    (operation, *_) = machining.PER_TOOTH
    one = machining.cut(operation=operation, **sizes)
    six = machining.cut(operation=operation, teeth=6, **sizes)
    assert one.feed_rate == pytest.approx(one.feed.value * one.spindle_speed)
    assert six.feed_rate == pytest.approx(6.0 * one.feed_rate)
    assert one.cutting_time == pytest.approx(120.0 / one.feed_rate)


@pytest.mark.parametrize(("diameter", "teeth"), [(11.45, 8), (11.5, 10), (63.0, 50), (100.0, 78)])
def test_teeth_of_a_saw_are_an_even_number_about_four_millimetres_apart(diameter, teeth):
    """pi D/8 is 4.496, 4.516, 24.74 and 39.27: twice the nearest whole number."""
    assert machining.saw_teeth(diameter) == teeth


def test_any_size_but_none_is_one():
    assert machining.spindle_speed(0.005, 10.0) == pytest.approx(5.0 / (math.pi * 10.0))
    for nothing in (0.0, -0.005):
        with pytest.raises(OutOfRange):
            machining.spindle_speed(nothing, 10.0)
