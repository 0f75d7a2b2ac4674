"""How parts grow with heat: the one factor that every hot and cold size is worked from."""

from ..problems import OutOfRange
from ..records import Method

LOWEST_TEMPERATURE = -40.0  # [degC]
HIGHEST_TEMPERATURE = 900.0
HIGHEST_EXPANSION = 3.0e-4  # [1/K]: beyond any solid this is meant for

METHODS = (
    Method(
        "growth",
        "Growth of a part with heat",
        "g = 1 + alpha (T - T_0)",
        "mean expansion up to 3e-4 1/K, -40 to 900 degC",
        ("expansion",),
    ),
)


def growth(expansion, temperature, shop_temperature):
    """Size when hot over size in the shop [1].

    g = 1 + alpha (T - T_0).

    expansion: mean expansion alpha [1/K], 0 to 3e-4.
    temperature: T, of the part [degC], -40 to 900.
    shop_temperature: T_0, at which it was measured [degC], -40 to 900.
    Raises OutOfRange outside those ranges.
    Source: linear thermal expansion.
    """
    if not 0.0 <= expansion <= HIGHEST_EXPANSION:
        raise OutOfRange("expansion", expansion, "0 to 3e-4 1/K", "thermal expansion of solids")
    if not LOWEST_TEMPERATURE <= temperature <= HIGHEST_TEMPERATURE:
        raise OutOfRange("temperature", temperature, "-40 to 900 degC", "mean expansions")
    if not LOWEST_TEMPERATURE <= shop_temperature <= HIGHEST_TEMPERATURE:
        raise OutOfRange("shop_temperature", shop_temperature, "-40 to 900 degC", "mean expansions")
    return 1.0 + expansion * (temperature - shop_temperature)


def require_positive(name, value):
    """Raises OutOfRange naming a size that is not more than 0.

    name: of the size. value: the size.
    """
    if not value > 0.0:
        raise OutOfRange(name, value, "more than 0", "geometry")


def require_not_negative(name, value):
    """Raises OutOfRange naming a size that is below 0.

    name: of the size. value: the size.
    """
    if not value >= 0.0:
        raise OutOfRange(name, value, "0 or more", "geometry")
