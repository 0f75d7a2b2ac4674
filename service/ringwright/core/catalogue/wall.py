"""Figures of a ring on its wall: what "wall-pressure" answers with, and of them "bore-survey"."""

from . import answer, lists, ring, table

SYMBOLS = dict(ring.SYMBOLS)
SYMBOLS.update({"q": "pressure", "h": "length"})
# Lobes of a bore out of round, by order.
LOBES = ["U_%d" % order for order in range(2, 13)]
for _lobe in LOBES:
    SYMBOLS[_lobe] = "length"

SHAPE = "The bore's shape"
_GIVEN = "d1, a1, E, q"

# name, kind, symbol, label, methods, symbols of its working, group, meaning
FIGURES = table(
    (
        ("mean_wall_pressure", "pressure", "p", "Mean wall pressure", "wall-contact", _GIVEN, ring.BEARING, "the force on the wall, shared out over all of it"),
        ("largest_pressure", "pressure", "p_max", "Largest pressure", "wall-contact", _GIVEN, ring.BEARING, "at any place"),
        ("wall_force", "force", "sum F", "Force on the wall", "wall-contact", _GIVEN, ring.BEARING, "all of it added up"),
        ("tip_force", "force", "F", "Force at a tip", "wall-contact", _GIVEN, ring.BEARING, "the larger of the two ends'"),
        ("light_angle", "angle", "psi", "Where the widest light is", "wall-contact", "", ring.BEARING, "counted from the gap"),
        ("contact_share", "ratio", "", "Share that bears", "wall-contact", _GIVEN, ring.BEARING, "of the way round, all turns"),
        ("sealed_share", "ratio", "", "Share that seals", "wall-contact", _GIVEN, ring.BEARING, "of the way round, where one turn or the other bears"),
        ("peak_stress", "pressure", "sigma_t", "Stress in this bore", "wall-stress", "d1, a1, E, h", ring.STRAIN, "greatest tension"),
        ("peak_compression", "pressure", "sigma_c", "Compression in this bore", "wall-stress", "d1, a1, E, h", ring.STRAIN),
        ("pressure_to_follow", "pressure", "p_f", "Pressure that would follow the bore", "pressure-to-follow", "d1, a1, E, " + ", ".join(LOBES), SHAPE, "away from the ends"),
        ("bore_misfit", "length", "", "Readings off the shape", "bore-harmonics", "", SHAPE, "how far readings stray from the shape, root mean square"),
    ),
    SYMBOLS,
)  # fmt: skip

WALL_PRESSURE = answer(
    "mean_wall_pressure contact_pressure largest_pressure wall_force tip_force widest_light"
    " light_angle slack_angle contact_share sealed_share peak_stress peak_compression"
    " pressure_to_follow? bore_misfit?",
    (FIGURES, ring.FIGURES),
    lists.WALL_PRESSURE,
)
