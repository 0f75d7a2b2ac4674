"""Choosing a bar: the smallest that serves, checked by trying every size."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ringwright.core import calculations
from ringwright.core.catalogue import inputs_stock
from ringwright.core.making import bar_choice, bars
from ringwright.core.problems import OutOfRange

METALS = st.sampled_from(inputs_stock.METALS)
SYSTEMS = st.sampled_from((None, "inch", "metric"))


@given(st.floats(5.0, 400.0), METALS, SYSTEMS)
def test_the_solid_bar_is_the_smallest_that_cleans_up(outside, metal, system):
    found = bars.bar_for(outside=outside, inside=1.0, system=system, metal=metal)
    listed = [
        size
        for one in (bars.SYSTEMS if system is None else (system,))
        for size, _ in bars.sizes(one)
        if size >= outside
    ]
    assert found.nominal == min(listed)
    assert found.as_cast > found.nominal
    assert found.as_cast_bore == 0.0


@given(st.floats(45.0, 300.0), st.floats(0.5, 0.97), METALS, SYSTEMS)
def test_a_cored_bar_bores_and_turns_clean(outside, share, metal, system):
    inside = outside * share
    found = bars.bar_for(outside=outside, inside=inside, form="cored", system=system, metal=metal)
    assert found.nominal >= outside - 1e-9
    assert 0.0 < found.bore <= inside + 1e-9
    assert found.as_cast_bore < found.bore
    wall = (found.as_cast - found.as_cast_bore) / 2
    if metal == "iron":
        assert wall >= bars.least_wall(outside=found.nominal) - 1e-9
    solid = bars.bar_for(outside=outside, inside=inside, system=system, metal=metal)
    assert found.as_cast**2 - found.as_cast_bore**2 < solid.as_cast**2


@given(st.floats(20.0, 390.0), st.floats(0.1, 20.0), METALS)
def test_more_bar_never_cleans_up_to_less(measured, more, metal):
    less = bars.cleans_up_to(measured=measured, metal=metal)
    assert bars.cleans_up_to(measured=measured + more, metal=metal) >= less
    assert less < measured


def test_too_large_or_too_thin_is_refused():
    with pytest.raises(OutOfRange):
        bars.bar_for(outside=500.0, inside=480.0)
    with pytest.raises(OutOfRange):
        bars.bar_for(outside=30.0, inside=10.0, form="cored")
    with pytest.raises(OutOfRange):
        bars.cleans_up_to(measured=600.0)


@pytest.mark.parametrize(
    ("inches", "label"),
    [(0.75, "3/4 in"), (1.125, "1 1/8 in"), (2.5, "2 1/2 in"), (3.0, "3 in"), (16.0, "16 in")],
)
def test_sizes_in_inches_are_named_as_they_are_asked_for(inches, label):
    assert bars.inch_label(inches) == label


def test_section_is_the_ring_of_metal():
    size = bars.bar_for(outside=84.0, inside=74.0, form="cored")
    ring = math.pi * ((size.as_cast / 2) ** 2 - (size.as_cast_bore / 2) ** 2)
    assert bars.section(size) == pytest.approx(ring)


def test_the_reference_list():
    everything = calculations.run("bars", {})
    assert len(everything["solid"]) > 60
    assert {"nominal_bore", "as_cast_bore"} <= set(everything["cored"][0])
    asked = calculations.run("bars", {"outside_diameter": 84.0, "inside_diameter": 74.0})
    assert asked["solid"][0]["label"] == "3 1/2 in"
    assert asked["solid"][0]["nominal_diameter"]["value"] == pytest.approx(88.9)
    assert all(size["nominal_diameter"]["value"] >= 84.0 for size in asked["solid"])
    assert all(size["nominal_bore"]["value"] <= 74.0 for size in asked["cored"])
    metric = calculations.run("bars", {"sizes": "metric", "metal": "bronze"})
    assert {size["sizes"] for size in metric["solid"]} == {"metric"}
    assert "caster" in metric["note"]


def test_a_stick_stands_out_by_one_and_a_half_diameters():
    """Common practice, no source: 120 mm of an 80 mm bar, so ten blanks of 11 mm and parting."""
    assert bar_choice.most_on_a_stick(80.0, 12.0) == 10
    assert bar_choice.most_on_a_stick(80.0, 12.01) == 9
    assert bar_choice.most_on_a_stick(20.0, 40.0) == 1


def test_the_bar_of_least_metal_is_taken():
    """For a blank of 60 and 54 mm: of both forms the one with the smaller section."""
    asked = {"outside": 60.0, "inside": 54.0, "family": "iron"}
    both = [bar_choice.best_bar(form=form, **asked) for form in inputs_stock.FORMS]
    areas = [math.pi / 4 * (one.as_cast**2 - max(one.as_cast_bore, 0.0) ** 2) for one in both]
    best = bar_choice.best_bar(**asked)
    assert best == both[areas.index(min(areas))]
    assert bar_choice.best_bar(outside=900.0, inside=800.0, family="iron") is None
