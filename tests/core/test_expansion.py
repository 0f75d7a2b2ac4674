"""Growth with heat: by a plain sum, and its limits from both sides."""

import pytest

from ringwright.core.problems import OutOfRange
from ringwright.core.properties.expansion import (
    growth,
    require_not_negative,
    require_positive,
)


def test_an_iron_bar_by_hand():
    """11.7e-6 over 170 - 20 = 150 K: 0.1755 of a per cent; in frost it is shorter."""
    assert growth(11.7e-6, 170.0, 20.0) == pytest.approx(1.001755, abs=1e-12)
    assert growth(23.6e-6, -10.0, 15.0) == pytest.approx(1.0 - 0.00059, abs=1e-12)


def test_growing_and_shrinking_back_undo_each_other_to_first_order():
    assert growth(2e-5, 120.0, 20.0) - 1.0 == pytest.approx(1.0 - growth(2e-5, 20.0, 120.0))


def test_every_heat_and_metal_within_the_limits_is_answered():
    assert growth(0.0, 500.0, 20.0) == 1.0
    assert growth(3e-4, 30.0, 20.0) == pytest.approx(1.003)
    assert growth(1e-5, 900.0, -40.0) == pytest.approx(1.0094)
    assert growth(1e-5, -40.0, 900.0) == pytest.approx(0.9906)


@pytest.mark.parametrize(
    ("expansion", "hot", "shop", "name"),
    [
        (-1e-7, 100.0, 20.0, "expansion"),
        (3.01e-4, 100.0, 20.0, "expansion"),
        (1e-5, 900.5, 20.0, "temperature"),
        (1e-5, -40.2, 20.0, "temperature"),
        (1e-5, 100.0, 900.5, "shop_temperature"),
        (1e-5, 100.0, -40.2, "shop_temperature"),
    ],
)
def test_what_is_beyond_is_refused_by_name(expansion, hot, shop, name):
    with pytest.raises(OutOfRange) as refused:
        growth(expansion, hot, shop)
    assert refused.value.name == name


def test_a_size_is_more_than_nothing_and_a_margin_no_less():
    for size in (1e-9, 0.005, 3.0):
        require_positive("bore", size)
        require_not_negative("margin", size)
    require_not_negative("margin", 0.0)
    for size in (0.0, -0.001, float("nan")):
        with pytest.raises(OutOfRange):
            require_positive("bore", size)
    for size in (-1e-9, float("nan")):
        with pytest.raises(OutOfRange):
            require_not_negative("margin", size)
