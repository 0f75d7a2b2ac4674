"""The wall pressure where none is asked for: what practice uses, or what the metal carries."""

import pytest

from ringwright.core import calculations
from ringwright.core.properties.material_table import PREFERENCE

BREAKING = {"closed-stress", "forming", "sprung-on", "turning-through", "wound-on"}
# Margins of the design: shares of the strength carried for years, and once on the bench.
FOR_YEARS, ONCE = 0.45, 0.75


def sizing(**request):
    return calculations.run("sizing", request)


def chosen(answer, name):
    return next(one for one in answer["chosen"] if one["input"] == name)


@pytest.mark.parametrize("material", PREFERENCE["ring"])
@pytest.mark.parametrize("ring_type", ["plain", "double-turn"])
@pytest.mark.parametrize("bore", [25.0, 80.0, 300.0])
def test_no_ring_that_nobody_asked_to_press_harder_breaks(material, ring_type, bore):
    answer = sizing(bore=bore, ring_type=ring_type, ring_material=material)
    stops = {one["check"] for one in answer["findings"] if one["outcome"] == "stop"}
    assert not stops & BREAKING


@pytest.mark.parametrize("material", ["grey-iron", "grey-iron-250", "grey-iron-300"])
def test_iron_is_asked_for_what_practice_uses(material):
    """6 to 8 lbf/in2 (Walshaw, read)."""
    taken = chosen(sizing(bore=80.0, ring_material=material), "wall_pressure")
    assert 0.0414 <= taken["value"] <= 0.0552
    assert taken["why"] == "6 to 8 lbf/in2 is usual"


def worst_share(bore, material, ring_type, width, thickness, pressure):
    """The larger share of a margin that is used up, by the stresses that sizing reports [1]."""
    answer = sizing(
        # A fine saw: thick rings spring open by less than the usual one takes.
        end_kerf=0.2,
        clamped_gap=0.1,
        bore=bore,
        ring_material=material,
        ring_type=ring_type,
        ring_width=width,
        radial_thickness=thickness,
        wall_pressure=pressure,
    )
    stress = {name: figure["value"] for name, figure in answer["figures"].items()}
    limits = {one["check"]: one["limit"]["value"] for one in answer["findings"] if "limit" in one}
    strength = 0.0
    for one in answer["findings"]:
        if one["check"] == "closed-stress":
            share = 0.65 if one["outcome"] == "stop" else FOR_YEARS
            strength = limits["closed-stress"] / share
    fitting = [stress["sprung_on_stress"]]
    if ring_type == "double-turn":
        fitting = [stress["turning_through_stress"], stress["wound_on_stress"]]
    return max(stress["closed_stress"] / FOR_YEARS, max(fitting) / ONCE) / strength


@pytest.mark.parametrize(
    ("material", "ring_type"),
    [("phosphor-bronze", "plain"), ("phosphor-bronze", "double-turn"), ("ductile-iron", "plain")],
)
def test_a_weaker_metal_is_asked_for_the_most_it_carries(material, ring_type):
    """By trying every thickness: one serves at that pressure, none at a twentieth more."""
    bore, width = 80.0, 4.0
    answer = sizing(bore=bore, ring_material=material, ring_type=ring_type, ring_width=width)
    taken = chosen(answer, "wall_pressure")
    assert taken["value"] < 0.048
    assert taken["why"].startswith("the most that ")

    def best(pressure):
        thicknesses = [bore / (20.0 + 0.25 * step) for step in range(121)]
        return min(
            worst_share(bore, material, ring_type, width, thickness, pressure)
            for thickness in thicknesses
        )

    # Rounded down to a thousandth after 3 % is held back, hence the step allowed for it.
    step = 0.001
    assert best(taken["value"]) <= 1.0
    assert best((taken["value"] + step) / 0.97 * 1.05) > 1.0


def test_a_thickness_or_a_target_of_ones_own_is_left_alone():
    bronze = {"bore": 80.0, "ring_material": "phosphor-bronze"}
    assert chosen(sizing(radial_thickness=2.5, **bronze), "wall_pressure")["value"] == 0.048
    for target in ({"wall_pressure": 0.04}, {"free_gap": 8.0}, {"former_ratio": 1.02}):
        names = [one["input"] for one in sizing(**target, **bronze)["chosen"]]
        assert "wall_pressure" not in names


def test_the_remedy_for_a_slack_ring_is_one_that_its_metal_allows():
    def remedy(**more):
        found = sizing(bore=80.0, wall_pressure=0.02, **more)["findings"]
        return next(one["remedy"] for one in found if one["check"] == "too-slack")

    assert "Ask for a wall pressure of" in remedy()
    assert "expander" in remedy(ring_material="phosphor-bronze")
