"""The piston in its bore, cold and hot, and what touches first as an engine is warmed."""

import math
from collections import namedtuple

from ..properties.expansion import (
    HIGHEST_TEMPERATURE,
    growth,
    require_not_negative,
    require_positive,
)
from ..records import Method

# Diametral clearance left between piston and bore when the piston is hot; common practice.
RUNNING_PISTON_SHARE = 0.001
LEAST_RUNNING_PISTON = 0.05  # [mm]
# Radial piston clearance stays under this share of the ring's thickness: a seal maker's rule.
PISTON_CLEARANCE_SHARE = 1.0 / 3.0

# What touches first as ring and piston are warmed ahead of the cylinder: "ring ends", "piston" or
# "nothing"; and the temperature [degC] at which it does, None for nothing.
Touch = namedtuple("Touch", ("part", "temperature"))

METHODS = (
    Method(
        "piston-clearance",
        "Diametral clearance of the piston, cold",
        "d1 - (d1 (1 + alpha_c (T_w - T_0)) - margin)/(1 + alpha_p (T_p - T_0)), "
        "not less than the margin",
        "piston at one temperature, cylinder at one temperature; margin from practice",
        ("expansion", "practice"),
    ),
    Method(
        "hot-piston-clearance",
        "Diametral clearance of the piston, hot",
        "piston d_p (1 + alpha_p (T_p - T_0)); clearance d1 (1 + alpha_c (T_w - T_0)) - "
        "d_p (1 + alpha_p (T_p - T_0))",
        "piston at one temperature, cylinder at one temperature; nought or less means it seizes",
        ("expansion",),
    ),
    Method(
        "piston-clearance-limit",
        "Most diametral clearance of the piston that still backs the ring",
        "2 a1/3",
        "cast iron rings",
        ("ring-groove-sheet",),
    ),
    Method(
        "first-touch",
        "Temperature at which ring ends or piston first touch",
        "T = T_0 + ((1 + alpha_c (T_c - T_0)) d1/d - 1)/alpha, d the cold diameter of the part: "
        "d1 - s1/pi for the ring, d_p for the piston",
        "cylinder held at one temperature while ring and piston are warmed",
        ("expansion",),
    ),
)


def running_piston_clearance(bore):
    """Diametral clearance to leave when the piston is hottest and the bore coolest [mm].

    The greater of 0.001 d1 and 0.05 mm.

    bore: d1 [mm], more than 0.
    Raises OutOfRange for a bore that is not more than 0.
    Source: common practice, no source.
    """
    require_positive("bore", bore)
    return max(RUNNING_PISTON_SHARE * bore, LEAST_RUNNING_PISTON)


def piston_clearance(
    *,
    bore,
    piston_expansion,
    cylinder_expansion,
    piston_temperature,
    cylinder_temperature,
    shop_temperature,
    margin,
):
    """Diametral clearance of the piston in the bore, cold, leaving `margin` hot [mm].

    d1 - (d1 g_c - margin)/g_p, with g = 1 + alpha (T - T_0), not less than the margin.

    bore: d1 [mm]. piston_expansion: alpha_p [1/K]. cylinder_expansion: alpha_c [1/K].
    piston_temperature: T_p [degC]. cylinder_temperature: T_c [degC]. shop_temperature: T_0 [degC].
    margin: diametral clearance left hot [mm], 0 or more: see `running_piston_clearance`.
    Raises OutOfRange for a bore not more than 0, a negative margin, or heat beyond `growth`.
    Source: thermal expansion.
    """
    require_positive("bore", bore)
    require_not_negative("margin", margin)
    piston = growth(piston_expansion, piston_temperature, shop_temperature)
    cylinder = growth(cylinder_expansion, cylinder_temperature, shop_temperature)
    return max(bore - (bore * cylinder - margin) / piston, margin)


def hot_piston_clearance(
    *,
    bore,
    piston_diameter,
    piston_expansion,
    cylinder_expansion,
    piston_temperature,
    cylinder_temperature,
    shop_temperature,
):
    """Diametral clearance of the piston when hot [mm]; nought or less: it seizes.

    d1 g_c - d_p g_p, with g = 1 + alpha (T - T_0).

    bore: d1, cold [mm]. piston_diameter: d_p, cold [mm]. piston_expansion: alpha_p [1/K].
    cylinder_expansion: alpha_c [1/K]. piston_temperature: T_p [degC]. cylinder_temperature: T_c
    [degC]. shop_temperature: T_0 [degC].
    Raises OutOfRange for a bore not more than 0, or heat beyond `growth`.
    Source: thermal expansion.
    """
    require_positive("bore", bore)
    piston = growth(piston_expansion, piston_temperature, shop_temperature)
    cylinder = growth(cylinder_expansion, cylinder_temperature, shop_temperature)
    return bore * cylinder - piston_diameter * piston


def piston_clearance_limit(radial_thickness):
    """Greatest diametral clearance of the piston at which its lands still back the ring [mm].

    2 a1/3.

    radial_thickness: a1 [mm], more than 0.
    Raises OutOfRange for a thickness that is not more than 0.
    Source: a seal maker's page on cast iron rings: radial clearance under a third of the wall.
    """
    require_positive("radial_thickness", radial_thickness)
    return 2.0 * PISTON_CLEARANCE_SHARE * radial_thickness


def first_touch(
    *,
    bore,
    gap,
    piston_diameter,
    ring_expansion,
    piston_expansion,
    cylinder_expansion,
    cylinder_temperature,
    shop_temperature,
):
    """What touches first as ring and piston are warmed while the cylinder stays put: a Touch.

    T = T_0 + (g_c d1/d - 1)/alpha, with d = d1 - s1/pi for the ring ends and d_p for the piston.

    bore: d1, cold [mm]. gap: closed gap s1, cold [mm]. piston_diameter: d_p, cold [mm].
    ring_expansion: alpha_r [1/K]. piston_expansion: alpha_p [1/K]. cylinder_expansion: alpha_c
    [1/K]. cylinder_temperature: T_c [degC]. shop_temperature: T_0 [degC].
    Returns the part, "ring ends", "piston" or "nothing" (when neither touches up to 900 degC), and
    the temperature of both [degC] at which it touches, None for nothing.
    Raises OutOfRange for a bore not more than 0, or heat beyond `growth`.
    Source: thermal expansion.
    """
    require_positive("bore", bore)
    cylinder = growth(cylinder_expansion, cylinder_temperature, shop_temperature)
    first = Touch("nothing", None)
    for part, diameter, expansion in (
        ("ring ends", bore - gap / math.pi, ring_expansion),
        ("piston", piston_diameter, piston_expansion),
    ):
        growth(expansion, shop_temperature, shop_temperature)
        if expansion > 0.0 and diameter > 0.0:
            temperature = shop_temperature + (cylinder * bore / diameter - 1.0) / expansion
            earlier = first.temperature is None or temperature < first.temperature
            if temperature <= HIGHEST_TEMPERATURE and earlier:
                first = Touch(part, temperature)
    return first
