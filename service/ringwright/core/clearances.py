"""Gaps and clearances, cold as they are made and hot as they run.

Everything grows in proportion to its own size, expansion and rise above the shop. A cold clearance
is what leaves a stated margin when the part inside is hot and the part round it is cooler; a hot
clearance is what a given cold one becomes. Each pair is exact, so that one undoes the other.

The design case for the closed gap and the piston is the engine being started: ring and piston are
at steam temperature while the cylinder wall, thicker and heated from one side, is still on its way:
see `starting_wall_temperature`. Where a wide gap costs nothing (a double-turn ring leaks
nothing through it, a piston is sealed by its rings) design for a stone cold cylinder.
"""

import math
from collections import namedtuple

from .expansion import HIGHEST_TEMPERATURE, growth
from .problems import OutOfRange
from .records import Method

MM_PER_INCH = 25.4

# Closed gap as a share of the bore.
THUMB_RULE_GAP = 0.002  # 0.002 in per inch of bore; from memory
BOOK_GAP_LOW = 0.002  # Khurmi and Gupta, section 32.9
BOOK_GAP_HIGH = 0.004
# What is left between the ends when all is at its hottest; common practice.
RUNNING_GAP_SHARE = 0.0005
LEAST_RUNNING_GAP = 0.025  # [mm]

# Share of the way from the shop to steam that the wall has gone when ring and piston are hot.
# Estimated: with steam condensing on both, a wall three to four times as thick as the ring, heated
# from one side, is behind it by half of the whole rise at most (conduction solved in the tests); a
# thicker wall lags more. It puts the gap of an iron ring within the range of a published book.
WALL_SHARE = 0.5

LEAST_SIDE_CLEARANCE = 0.0254  # 0.001 in: a seal maker's rule for cast iron rings
# Side clearance [mm], least and greatest, for small and large bores [mm]; from memory.
SMALL_BORE = 50.0
LARGE_BORE = 300.0
SMALL_SIDE = (0.001 * MM_PER_INCH, 0.003 * MM_PER_INCH)
LARGE_SIDE = (0.002 * MM_PER_INCH, 0.005 * MM_PER_INCH)
SIDE_AIM = 0.25  # how far from least to greatest to aim: a new groove only wears wider

LEAST_DEPTH_ALLOWANCE = 0.381  # 0.015 in: a seal maker's rule
DEPTH_ALLOWANCE = 0.4  # Khurmi and Gupta, section 32.9: groove deeper than the ring by 0.4 mm

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
        "s1 = 0.002 d1 (a book gives 0.002 to 0.004)",
        "iron rings in iron cylinders, saturated steam",
        ("memory", "khurmi"),
    ),
    Method(
        "starting-wall",
        "Temperature of the cylinder wall as the ring gets hot",
        "T_c = T_0 + share (T_steam - T_0), share 0.5 unless given",
        "an estimate for walls three to four times as thick as the ring, warmed with drains open; "
        "0 is stone cold (the worst case), 1 is warmed through",
        ("warming-estimate",),
    ),
    Method(
        "side-clearance",
        "Side clearance of the ring in its groove, cold",
        "c = ((c_hot + h1 (1 + alpha_r (T_r - T_0)))/(1 + alpha_p (T_p - T_0))) - h1, "
        "not less than c_hot",
        "c_hot from practice by bore, at least 0.001 in",
        ("expansion", "ring-groove-sheet", "memory"),
    ),
    Method(
        "hot-side-clearance",
        "Side clearance of the ring in its groove, hot",
        "c_hot = (h1 + c)(1 + alpha_p (T_p - T_0)) - h1 (1 + alpha_r (T_r - T_0))",
        "ring at one temperature, piston at one temperature",
        ("expansion",),
    ),
    Method(
        "groove-depth",
        "Depth of the groove below the piston's surface",
        "depth = (a1 (1 + alpha_r (T_r - T_0)) + allowance)/(1 + alpha_p (T_p - T_0)), "
        "not less than a1 + allowance; allowance 0.4 mm",
        "so that a piston resting on the bore never rides on its ring",
        ("khurmi", "ring-groove-sheet", "expansion"),
    ),
    Method(
        "back-clearance",
        "Clearance behind the ring",
        "depth - a1 + (d1 - d_p)/2, each at its own temperature",
        "ring and piston concentric in the bore",
        ("expansion",),
    ),
    Method(
        "piston-clearance",
        "Diametral clearance of the piston, cold",
        "d1 - (d1 (1 + alpha_c (T_c - T_0)) - margin)/(1 + alpha_p (T_p - T_0)), "
        "not less than the margin",
        "piston at one temperature, cylinder at one temperature; margin from practice",
        ("expansion", "practice"),
    ),
    Method(
        "hot-piston-clearance",
        "Diametral clearance of the piston, hot",
        "d1 (1 + alpha_c (T_c - T_0)) - d_p (1 + alpha_p (T_p - T_0))",
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


def running_gap(bore):
    """Gap to leave between the ends when ring is hottest and bore coolest [mm].

    The greater of 0.0005 d1 and 0.025 mm.

    bore: d1 [mm], more than 0.
    Raises OutOfRange for a bore that is not more than 0.
    Source: common practice, no source.
    """
    _positive("bore", bore)
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
    _positive("bore", bore)
    _not_negative("margin", margin)
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
    _positive("bore", bore)
    ring = growth(ring_expansion, ring_temperature, shop_temperature)
    cylinder = growth(cylinder_expansion, cylinder_temperature, shop_temperature)
    return math.pi * bore * (cylinder - ring) + gap * ring


def thumb_rule_gap(bore):
    """Closed gap by the thumb rule of 0.002 in per inch of bore [mm].

    s1 = 0.002 d1.

    bore: d1 [mm], more than 0.
    Raises OutOfRange for a bore that is not more than 0.
    Source: from memory; Khurmi and Gupta, section 32.9, give 0.002 to 0.004 of the bore.
    """
    _positive("bore", bore)
    return THUMB_RULE_GAP * bore


def running_side_clearance(bore):
    """Side clearance to aim at, with its least and greatest: (aim, least, greatest) [mm].

    least 0.001 in and greatest 0.003 in up to 50 mm bore, 0.002 and 0.005 in from 300 mm, in
    proportion between; the aim a quarter of the way up, for grooves only wear wider.

    bore: d1 [mm], more than 0.
    Raises OutOfRange for a bore that is not more than 0.
    Source: 0.001 in at least, a seal maker's sheet on cast iron rings; the rest from memory.
    """
    _positive("bore", bore)
    share = min(max((bore - SMALL_BORE) / (LARGE_BORE - SMALL_BORE), 0.0), 1.0)
    least = SMALL_SIDE[0] + share * (LARGE_SIDE[0] - SMALL_SIDE[0])
    greatest = SMALL_SIDE[1] + share * (LARGE_SIDE[1] - SMALL_SIDE[1])
    return least + SIDE_AIM * (greatest - least), least, greatest


def side_clearance(
    *,
    ring_width,
    ring_expansion,
    piston_expansion,
    ring_temperature,
    piston_temperature,
    shop_temperature,
    margin,
):
    """Side clearance to cut, cold, so that `margin` is left when ring and piston are hot [mm].

    c = (margin + h1 g_r)/g_p - h1, with g = 1 + alpha (T - T_0), not less than the margin.

    ring_width: h1 [mm]. ring_expansion: alpha_r [1/K]. piston_expansion: alpha_p [1/K].
    ring_temperature: T_r [degC]. piston_temperature: T_p [degC]. shop_temperature: T_0 [degC].
    margin: clearance left hot [mm], 0 or more: see `running_side_clearance`.
    Raises OutOfRange for a width not more than 0, a negative margin, or heat beyond `growth`.
    Source: thermal expansion.
    """
    _positive("ring_width", ring_width)
    _not_negative("margin", margin)
    ring = growth(ring_expansion, ring_temperature, shop_temperature)
    piston = growth(piston_expansion, piston_temperature, shop_temperature)
    return max((margin + ring_width * ring) / piston - ring_width, margin)


def hot_side_clearance(
    *,
    ring_width,
    clearance,
    ring_expansion,
    piston_expansion,
    ring_temperature,
    piston_temperature,
    shop_temperature,
):
    """What a cold side clearance becomes when ring and piston are hot [mm]; nought or less: stuck.

    c_hot = (h1 + c) g_p - h1 g_r, with g = 1 + alpha (T - T_0).

    ring_width: h1 [mm]. clearance: c, cold [mm]. ring_expansion: alpha_r [1/K]. piston_expansion:
    alpha_p [1/K]. ring_temperature: T_r [degC]. piston_temperature: T_p [degC].
    shop_temperature: T_0 [degC].
    Raises OutOfRange for a width not more than 0, or heat beyond `growth`.
    Source: thermal expansion.
    """
    _positive("ring_width", ring_width)
    ring = growth(ring_expansion, ring_temperature, shop_temperature)
    piston = growth(piston_expansion, piston_temperature, shop_temperature)
    return ring_width * (piston - ring) + clearance * piston


def groove_depth(
    *,
    radial_thickness,
    ring_expansion,
    piston_expansion,
    ring_temperature,
    piston_temperature,
    shop_temperature,
    allowance=DEPTH_ALLOWANCE,
):
    """Depth of the groove below the piston's surface, cold [mm].

    depth = (a1 g_r + allowance)/g_p, with g = 1 + alpha (T - T_0), not less than a1 + allowance: a
    piston resting on the bore then never rides on its ring.

    radial_thickness: a1 [mm]. ring_expansion: alpha_r [1/K]. piston_expansion: alpha_p [1/K].
    ring_temperature: T_r [degC]. piston_temperature: T_p [degC]. shop_temperature: T_0 [degC].
    allowance: depth beyond the ring, hot [mm], 0 or more.
    Raises OutOfRange for a thickness not over 0, a negative allowance, or heat beyond `growth`.
    Source: Khurmi and Gupta, section 32.9, t + 0.4 mm; a seal maker's sheet, at least 0.015 in.
    """
    _positive("radial_thickness", radial_thickness)
    _not_negative("allowance", allowance)
    ring = growth(ring_expansion, ring_temperature, shop_temperature)
    piston = growth(piston_expansion, piston_temperature, shop_temperature)
    return max((radial_thickness * ring + allowance) / piston, radial_thickness + allowance)


def back_clearance(*, bore, piston_diameter, radial_thickness, depth):
    """Clearance between the back of the ring and the bottom of its groove, concentric [mm].

    depth - a1 + (d1 - d_p)/2.

    bore: d1 [mm]. piston_diameter: d_p [mm]. radial_thickness: a1 [mm]. depth: of the groove [mm].
    All at one temperature. Nought or less: the ring bottoms.
    Raises OutOfRange for a bore or thickness that is not more than 0.
    Source: geometry.
    """
    _positive("bore", bore)
    _positive("radial_thickness", radial_thickness)
    return depth - radial_thickness + 0.5 * (bore - piston_diameter)


def hot_back_clearance(
    *,
    bore,
    piston_diameter,
    radial_thickness,
    depth,
    ring_expansion,
    piston_expansion,
    cylinder_expansion,
    ring_temperature,
    piston_temperature,
    cylinder_temperature,
    shop_temperature,
):
    """What the clearance behind the ring becomes when all are hot, concentric [mm].

    d1 g_c/2 - a1 g_r - (d_p/2 - depth) g_p, with g = 1 + alpha (T - T_0).

    bore: d1, cold [mm]. piston_diameter: d_p, cold [mm]. radial_thickness: a1, cold [mm].
    depth: of the groove, cold [mm]. ring_expansion: alpha_r [1/K]. piston_expansion: alpha_p [1/K].
    cylinder_expansion: alpha_c [1/K]. ring_temperature: T_r [degC]. piston_temperature: T_p [degC].
    cylinder_temperature: T_c [degC]. shop_temperature: T_0 [degC].
    Raises OutOfRange for a bore or thickness not more than 0, or heat beyond `growth`.
    Source: thermal expansion.
    """
    _positive("bore", bore)
    _positive("radial_thickness", radial_thickness)
    ring = growth(ring_expansion, ring_temperature, shop_temperature)
    piston = growth(piston_expansion, piston_temperature, shop_temperature)
    cylinder = growth(cylinder_expansion, cylinder_temperature, shop_temperature)
    return (
        0.5 * bore * cylinder - radial_thickness * ring - (0.5 * piston_diameter - depth) * piston
    )


def running_piston_clearance(bore):
    """Diametral clearance to leave when the piston is hottest and the bore coolest [mm].

    The greater of 0.001 d1 and 0.05 mm.

    bore: d1 [mm], more than 0.
    Raises OutOfRange for a bore that is not more than 0.
    Source: common practice, no source.
    """
    _positive("bore", bore)
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
    _positive("bore", bore)
    _not_negative("margin", margin)
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
    _positive("bore", bore)
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
    _positive("radial_thickness", radial_thickness)
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
    _positive("bore", bore)
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


def _positive(name, value):
    if not value > 0.0:
        raise OutOfRange(name, value, "more than 0", "geometry")


def _not_negative(name, value):
    if not value >= 0.0:
        raise OutOfRange(name, value, "0 or more", "geometry")
