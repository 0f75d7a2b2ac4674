"""The groove of a ring: room at its sides and behind it, cold and hot."""

from ..properties.expansion import growth, require_not_negative, require_positive
from ..records import Method

MM_PER_INCH = 25.4

# Side clearance [mm], least and greatest, for small and large bores [mm]. Least: 0.001 in by a seal
# maker's page on cast iron rings, 0.002 by a book on compressors. Greatest: that page's groove is
# up to 0.003 wider, here 0.002 at a small bore.
SMALL_BORE = 50.0
LARGE_BORE = 300.0
SMALL_SIDE = (0.001 * MM_PER_INCH, 0.003 * MM_PER_INCH)
LARGE_SIDE = (0.002 * MM_PER_INCH, 0.005 * MM_PER_INCH)
SIDE_AIM = 0.25  # how far from least to greatest to aim: a new groove only wears wider

LEAST_DEPTH_ALLOWANCE = 0.381  # 0.015 in: a seal maker's rule
DEPTH_ALLOWANCE = 0.4  # Khurmi and Gupta, section 32.9: groove deeper than the ring by 0.4 mm

METHODS = (
    Method(
        "side-clearance",
        "Side clearance of the ring in its groove, cold",
        "c = ((c_hot + h1 (1 + alpha_r (T_r - T_0)))/(1 + alpha_p (T_p - T_0))) - h1, "
        "not less than c_hot",
        "c_hot from practice by bore, at least 0.001 in",
        ("expansion", "ring-groove-sheet", "compressor-book"),
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
        "not less than a1 + allowance; allowance = 0.4 mm",
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
)


def running_side_clearance(bore):
    """Side clearance to aim at, with its least and greatest: (aim, least, greatest) [mm].

    least 0.001 in and greatest 0.003 in up to 50 mm bore, 0.002 and 0.005 in from 300 mm, in
    proportion between; the aim a quarter of the way up, for grooves only wear wider.

    bore: d1 [mm], more than 0.
    Raises OutOfRange for a bore that is not more than 0.
    Source: a seal maker's sheet on cast iron rings, a book on compressors, table 4-4.
    """
    require_positive("bore", bore)
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
    require_positive("ring_width", ring_width)
    require_not_negative("margin", margin)
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
    require_positive("ring_width", ring_width)
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
    require_positive("radial_thickness", radial_thickness)
    require_not_negative("allowance", allowance)
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
    require_positive("bore", bore)
    require_positive("radial_thickness", radial_thickness)
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
    require_positive("bore", bore)
    require_positive("radial_thickness", radial_thickness)
    ring = growth(ring_expansion, ring_temperature, shop_temperature)
    piston = growth(piston_expansion, piston_temperature, shop_temperature)
    cylinder = growth(cylinder_expansion, cylinder_temperature, shop_temperature)
    return (
        0.5 * bore * cylinder - radial_thickness * ring - (0.5 * piston_diameter - depth) * piston
    )
