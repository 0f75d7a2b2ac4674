"""The closed gap of a ring: as filed, cold, and what it becomes hot."""

import math

from ..problems import OutOfRange
from ..properties.expansion import growth, require_not_negative, require_positive
from ..records import Method

# Closed gap as a share of the bore: 0.002 in per inch (a book on compressors).
THUMB_RULE_GAP = 0.002
# What is left between the ends when all is at its hottest; common practice.
RUNNING_GAP_SHARE = 0.0005
LEAST_RUNNING_GAP = 0.025  # [mm]

# Share of the way from the shop to steam that the wall has gone when ring and piston are hot.
# Estimated: with steam condensing on both, a wall three to four times as thick as the ring, heated
# from one side, is behind it by half of the whole rise at most (conduction solved in the tests); a
# thicker wall lags more. It puts the gap of an iron ring within the range of a published book.
WALL_SHARE = 0.5

METHODS = (
    Method(
        "closed-gap",
        "Closed gap, cold",
        "s1 = pi d1 (1 - (1 + alpha_c (T_c - T_0))/(1 + alpha_r (T_r - T_0))) "
        "+ margin/(1 + alpha_r (T_r - T_0)), not less than the margin",
        "ring at one temperature, cylinder at one temperature; mean expansions",
        ("expansion", "practice"),
    ),
    Method(
        "hot-closed-gap",
        "Closed gap, hot",
        "s_hot = pi d1 (1 + alpha_c (T_c - T_0)) - (pi d1 - s1)(1 + alpha_r (T_r - T_0))",
        "ring at one temperature, cylinder at one temperature; nought or less means the ends touch",
        ("expansion",),
    ),
    Method(
        "thumb-rule-gap",
        "Closed gap by the thumb rule",
        "s1 = 0.002 d1; a book gives 0.002 to 0.004",
        "iron rings in iron cylinders, saturated steam",
        ("compressor-book", "khurmi"),
    ),
    Method(
        "starting-wall",
        "Temperature of the cylinder wall as the ring gets hot",
        "T_w = T_0 + share (T_steam - T_0), share 0.5 unless given",
        "an estimate for walls three to four times as thick as the ring, warmed with drains open; "
        "0 is stone cold (the worst case), 1 is warmed through",
        ("warming-estimate",),
    ),
)


def starting_wall_temperature(steam_temperature, shop_temperature, share=WALL_SHARE):
    """Temperature of the cylinder wall when ring and piston have reached the steam's [degC].

    T_c = T_0 + share (T_steam - T_0).

    steam_temperature: of the steam [degC]. shop_temperature: T_0, of the cold engine [degC].
    share: how far the wall has warmed [1], 0 (stone cold, the worst case) to 1 (warmed through).
    Raises OutOfRange for a share outside 0 to 1.
    Source: estimate; 0.5 for a wall three to four times as thick as the ring (a wall of six times
    lags by 0.7, share 0.3); it gives gaps within the range of Khurmi and Gupta, section 32.9.
    """
    if not 0.0 <= share <= 1.0:
        raise OutOfRange("share", share, "0 to 1", "starting-wall estimate")
    return shop_temperature + share * (steam_temperature - shop_temperature)


def filing_wall_temperature(turns, steam_temperature, shop_temperature):
    """Temperature of the cylinder wall for which the gap of a new ring is filed [degC].

    Half warm for a plain ring, see starting_wall_temperature; stone cold for a double-turn ring,
    which a wide gap costs little.

    turns: 1 or 2. steam_temperature: of the steam [degC]. shop_temperature: T_0 [degC].
    """
    if turns == 2:
        return shop_temperature
    return starting_wall_temperature(steam_temperature, shop_temperature)


def usual_closed_gap(
    *, turns, bore, ring_expansion, cylinder_expansion, ring_temperature, shop_temperature
):
    """Closed gap to file where none is asked for, half warm or stone cold by its turns [mm].

    turns: 1 or 2. bore, ring_expansion, cylinder_expansion, ring_temperature, shop_temperature: as
    of closed_gap, with running_gap for its margin. Raises OutOfRange as closed_gap does.
    """
    return closed_gap(
        bore=bore,
        ring_expansion=ring_expansion,
        cylinder_expansion=cylinder_expansion,
        ring_temperature=ring_temperature,
        cylinder_temperature=filing_wall_temperature(turns, ring_temperature, shop_temperature),
        shop_temperature=shop_temperature,
        margin=running_gap(bore),
    )


def running_gap(bore):
    """Gap to leave between the ends when ring is hottest and bore coolest [mm].

    The greater of 0.0005 d1 and 0.025 mm.

    bore: d1 [mm], more than 0.
    Raises OutOfRange for a bore that is not more than 0.
    Source: common practice, no source.
    """
    require_positive("bore", bore)
    return max(RUNNING_GAP_SHARE * bore, LEAST_RUNNING_GAP)


def closed_gap(
    *,
    bore,
    ring_expansion,
    cylinder_expansion,
    ring_temperature,
    cylinder_temperature,
    shop_temperature,
    margin,
):
    """Closed gap to file, cold, so that `margin` is left when ring and cylinder are hot [mm].

    s1 = pi d1 (1 - g_c/g_r) + margin/g_r, with g = 1 + alpha (T - T_0); not less than the margin,
    so that the ends clear in the shop too. To first order
    pi d1 (alpha_r (T_r - T_0) - alpha_c (T_c - T_0)) + margin.

    bore: d1 [mm]. ring_expansion: alpha_r [1/K]. cylinder_expansion: alpha_c [1/K].
    ring_temperature: T_r [degC]. cylinder_temperature: T_c [degC]. shop_temperature: T_0 [degC].
    margin: gap left hot [mm], 0 or more.
    Raises OutOfRange for a bore not more than 0, a negative margin, or heat beyond `growth`.
    Source: thermal expansion.
    """
    require_positive("bore", bore)
    require_not_negative("margin", margin)
    ring = growth(ring_expansion, ring_temperature, shop_temperature)
    cylinder = growth(cylinder_expansion, cylinder_temperature, shop_temperature)
    return max(math.pi * bore * (1.0 - cylinder / ring) + margin / ring, margin)


def hot_closed_gap(
    *,
    bore,
    gap,
    ring_expansion,
    cylinder_expansion,
    ring_temperature,
    cylinder_temperature,
    shop_temperature,
):
    """What a cold closed gap becomes when ring and cylinder are hot [mm]; up to nought: ends touch.

    s_hot = pi d1 g_c - (pi d1 - s1) g_r, with g = 1 + alpha (T - T_0).

    bore: d1, cold [mm]. gap: s1, cold [mm]. ring_expansion: alpha_r [1/K]. cylinder_expansion:
    alpha_c [1/K]. ring_temperature: T_r [degC]. cylinder_temperature: T_c [degC].
    shop_temperature: T_0 [degC].
    Raises OutOfRange for a bore not more than 0, or heat beyond `growth`.
    Source: thermal expansion.
    """
    require_positive("bore", bore)
    ring = growth(ring_expansion, ring_temperature, shop_temperature)
    cylinder = growth(cylinder_expansion, cylinder_temperature, shop_temperature)
    return math.pi * bore * (cylinder - ring) + gap * ring


def thumb_rule_gap(bore):
    """Closed gap by the thumb rule of 0.002 in per inch of bore [mm].

    s1 = 0.002 d1.

    bore: d1 [mm], more than 0.
    Raises OutOfRange for a bore that is not more than 0.
    Source: a book on compressors, table 4-4; Khurmi and Gupta, section 32.9, give 0.002 to 0.004.
    """
    require_positive("bore", bore)
    return THUMB_RULE_GAP * bore
