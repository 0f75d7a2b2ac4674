"""Sizes of a part with the limits of ISO 286 as printed, or bare where the standard has none."""

import pytest

from ringwright.core.making import part_sizes


@pytest.mark.parametrize(
    ("nominal", "tolerance", "upper"),
    # ISO 286-1, table 1: IT7 of 0 to 3 mm is 10 um, of 18 to 30 21, of 800 to 1000 90.
    [(1.0, "H7", 0.010), (1.005, "H7", 0.010), (25.0, "H7", 0.021), (1000.0, "H7", 0.090)],
)
def test_limits_are_those_of_the_standard(nominal, tolerance, upper):
    found = part_sizes.limited("hole", "Hole", nominal, tolerance)
    assert (found.name, found.label, found.value, found.unit) == (
        "hole", "Hole " + tolerance, nominal, "mm",
    )  # fmt: skip
    assert (found.lower, found.upper) == (nominal, pytest.approx(nominal + upper, abs=1e-9))
    assert found.reading == part_sizes.MICROMETER


@pytest.mark.parametrize("nominal", [0.995, 1000.5, 1005.0])
def test_what_the_standard_does_not_reach_has_no_limits(nominal):
    found = part_sizes.limited("hole", "Hole", nominal, "H7", part_sizes.INSIDE)
    assert found == part_sizes.bare("hole", "Hole", nominal, reading=part_sizes.INSIDE)
    assert (found.label, found.lower, found.upper) == ("Hole", None, None)


def test_between_two_limits_the_lower_is_the_lower():
    found = part_sizes.between("wall", "Wall", 2.5, (2.48, 2.53))
    assert (found.value, found.lower, found.upper, found.unit) == (2.5, 2.48, 2.53, "mm")
