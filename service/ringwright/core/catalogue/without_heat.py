"""What "ring-without-heat" answers with."""

from . import Check, answer, lists, making, ring, table, wall
from .lists import column

FIRST = "First turning"
SECOND = "Second turning"
_GIVEN = "d1, a1, E, c, s1"
SYMBOLS = dict(making.SYMBOLS)
SYMBOLS.update({"c": "length", "R": "length", "i": "length", "q": "pressure", "h": "length"})

FIGURES = table(
    (
        ("piece_cut_out", "length", "c", "Piece to cut out", "without-heat", "d1, a1, kappa0, s1", FIRST, "along the neutral line; lying free the ring has this gap"),
        ("first_outside_diameter", "length", "2 R + a1 + f", "First turning, outside", "without-heat", "R, a1, f", FIRST),
        ("first_inside_diameter", "length", "2 R - a1 - 2 i", "First turning, inside", "without-heat", "R, a1, i", FIRST),
        ("outside_allowance", "length", "f", "Left on the outside", "held-closed", "d1, a1, kappa0", SECOND, "on the diameter, for the second turning"),
        ("inside_allowance", "length", "i", "Left inside", "held-closed", "d1, a1, kappa0", SECOND, "on the radius, for the second turning"),
        ("second_inside_diameter", "length", "D - 2 a1", "Second turning, inside", "without-heat", "D, a1", SECOND, "clamped; of a ring not turned inside again, where it lay true"),
        ("thinnest", "length", "a_min", "Thinnest place", "held-closed", "d1, a1, kappa0", SECOND, "radial thickness as finished"),
        ("thickest", "length", "a_max", "Thickest place", "held-closed", "d1, a1, kappa0", SECOND, "radial thickness as finished"),
        ("closing_stress", "pressure", "sigma_h", "Stress when drawn closed", "closing-stress", "d1, a, E, kappa0", ring.STRAIN, "greatest tension, before the second turning"),
        ("lowest_pressure", "pressure", "p_min", "Lowest pressure", "wall-contact", _GIVEN, ring.BEARING, "at any place"),
    ),
    SYMBOLS,
)  # fmt: skip

_WAY = (
    column("way", "text", "how the ring is made"),
    column("mean_wall_pressure", "pressure", "all the force on the wall over all the wall"),
    column("lowest_pressure", "pressure", "at any place"),
    column("largest_pressure", "pressure", "at any place, forces at a point apart"),
    column("tip_force", "force", "of each tip at a point"),
    column("widest_light", "length", "between ring and wall"),
)
ANSWER = answer(
    "radial_thickness ring_width first_outside_diameter first_inside_diameter piece_cut_out"
    " outside_allowance inside_allowance closing_ring_bore? band_length?"
    " clamp_mandrel_diameter end_plate_diameter outer_clamp_bore? clamped_gap"
    " finish_outside_diameter second_inside_diameter thinnest thickest closed_gap closed_gap_hot"
    " mean_wall_pressure lowest_pressure largest_pressure tip_force widest_light light_angle"
    " contact_share closing_stress peak_stress peak_compression sprung_on_opening"
    " sprung_on_stress",
    (FIGURES, making.TOOLING_FIGURES, wall.FIGURES, ring.FIGURES),
    lists=lists.WALL_PRESSURE
    + (
        column("ways", "records", "the same section and free gap, made in other ways", _WAY),
        column("steps", "texts", "how it is made, in order: what is done, how, and to what size"),
    ),
    checks=(
        Check("drawn-closed", "wall", "stress when the ring is drawn closed for turning"),
        Check("cleans-up", "wall", "whether the second turning leaves any of the first skin"),
        Check("even-thickness", "wall", "how far the thickness varies round the ring"),
    ),
)
