"""Figures of what was measured: "bore-survey", "inspection" and "spread"."""

from . import answer, lists, making, ring, table, wall

SYMBOLS = dict(wall.SYMBOLS)
SYMBOLS.update(
    {
        "U": "length",
        "D_0": "length",
        "D_max": "length",
        "D_tight": "length",
        "dD": "length",
        "p_wanted": "pressure",
        "p low": "pressure",
        "p high": "pressure",
        "s1 low": "length",
        "s1 high": "length",
    }
)
BORE = "The bore"
RING = "A ring in it"
SHOWN = "What the ring shows"
NEXT = "The next ring"
_MADE = "d1, a1, E"

# name, kind, symbol, label, methods, symbols of its working, group, meaning
FIGURES = table(
    (
        ("mean_diameter", "length", "D_0", "Mean diameter", "bore-barrel", "U", BORE, "half way along the bore"),
        ("largest_diameter", "length", "D_max", "Largest diameter", "bore-section", "U", BORE, "at any place"),
        ("smallest_diameter", "length", "D_min", "Smallest diameter", "bore-section", "U", BORE, "at any place"),
        ("taper", "length", "2 c_1", "Taper", "bore-barrel", "U", BORE, "from one end of the bore to the other"),
        ("bell_mouth", "length", "c_2", "Bell-mouth", "bore-barrel", "U", BORE, "ends wider than the middle"),
        ("ovality", "length", "4 U_2", "Ovality", "bore-section", "U", BORE, "largest less smallest diameter, at the height where that is most"),
        ("oval_direction", "angle", "phase", "Direction of the ovality", "bore-section", "", BORE, "of the largest diameter"),
        ("misfit", "length", "", "Readings that do not fit", "bore-section", "", BORE, "how far readings stray from the best shape, root mean square, at the worst height"),
        ("ring_diameter", "length", "d1 to make", "Ring diameter", "survey-verdict", "D_0", RING, "nominal diameter of the ring to make"),
        ("clean_up_diameter", "length", "D", "Cleans up at", "survey-verdict", "D_max", BORE, "diameter to hone or bore to"),
        ("gap_breathing", "length", "pi dD", "Gap opens and closes by", "gap-breathing", "dD", RING, "over a stroke, as the bore widens"),
        ("gap_direction", "angle", "", "Gap where it is worst", "wall-contact", "", RING, "direction of the gap in the trial of the ring"),
        ("wall_pressure_by_free_gap", "pressure", "p_gap", "Pressure by the free gap", "pressure-by-gap", _MADE, SHOWN),
        ("wall_pressure_by_closing_force", "pressure", "p_force", "Pressure by the closing force", "pressure-by-force", _MADE, SHOWN),
        ("wall_pressure_by_light", "pressure", "p_light", "Pressure by the light", "pressure-by-light", _MADE, SHOWN),
        ("wall_pressure_intended", "pressure", "p_wanted", "Pressure intended", "pressure-together", "", SHOWN),
        ("gap_change", "length", "m", "Gap by which it springs", "gap-on-neutral-line", _MADE, SHOWN, "free less closed, along the neutral line"),
        ("free_gap_intended", "length", "m + s1 wanted", "Free gap intended", "gap-on-neutral-line", _MADE, SHOWN),
        ("modulus_shown", "modulus", "E shown", "Modulus the ring shows", "modulus-shown", _MADE, SHOWN, "at which its gap and its closing force agree"),
        ("relief_given", "ratio", "eta", "Stress the soak took out", "relief-given", _MADE, SHOWN),
        ("free_ovality", "length", "", "Ovality lying free", "free-ovality", _MADE, SHOWN, "across the gap less along it"),
        ("free_ovality_due", "length", "", "Ovality due", "free-ovality", _MADE, SHOWN, "as it was set"),
        ("next_former_diameter", "length", "Df", "Next former", "next-former", "eta, p_wanted", NEXT),
        ("next_spacer_width", "length", "spacer", "Next spacer", "next-former", "eta, p_wanted", NEXT),
        ("yield_share", "ratio", "", "Rings within limits", "spread-sample", "p low, p high, s1 low, s1 high", SHOWN, "share of those made"),
    ),
    SYMBOLS,
)  # fmt: skip

BORE_SURVEY = answer(
    "mean_diameter largest_diameter smallest_diameter taper? bell_mouth? ovality? oval_direction?"
    " misfit ring_diameter clean_up_diameter? closed_gap gap_breathing wall_pressure"
    " pressure_to_follow sealed_share widest_light gap_direction",
    (FIGURES, wall.FIGURES, ring.FIGURES),
    lists.BORE_SURVEY,
)
INSPECTION = answer(
    "wall_pressure? wall_pressure_by_free_gap? wall_pressure_by_closing_force?"
    " wall_pressure_by_light? wall_pressure_intended gap_change? free_gap_intended? modulus_shown?"
    " relief_given? free_ovality? free_ovality_due? next_former_diameter? next_spacer_width?",
    (FIGURES, ring.FIGURES),
    lists.INSPECTION,
)
SPREAD = answer(
    "wall_pressure closed_gap free_gap former_diameter? spacer_width? yield_share",
    (FIGURES, ring.FIGURES, making.TOOLING_FIGURES),
    lists.SPREAD,
)
