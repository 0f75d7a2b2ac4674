"""What "groove-recut" answers with."""

from . import Check, answer, fitting, ring, table
from .lists import column

_LAND = "The lands"
_PLATE = "d1, d_p, depth, p_s"
FIGURES = table(
    (
        ("out_of_parallel", "length", "taper", "Out of parallel", "groove-recut", "widest, step", ring.GROOVE, "the worn groove, step and all"),
        ("clean_width", "length", "W", "Cleans up at", "groove-recut", "widest, step, cut", ring.GROOVE, "least width with both sides true"),
        ("insert_width", "length", "i", "Insert beside the old ring", "groove-insert", "c", ring.GROOVE),
        ("end_land_left", "length", "t_e", "End land left", "land-left", "groove", _LAND, "cut alike from both sides; least: all from its side"),
        ("inner_land_left", "length", "t_i", "Inner land left", "land-left", "groove", _LAND, "between two grooves cut alike"),
        ("land_stress", "pressure", "sigma_l", "Bending of the land", "land-bending", _PLATE + ", t", _LAND, "of the narrower one, at its root"),
        ("land_shear", "pressure", "tau_l", "Shear of the land", "land-bending", _PLATE + ", t", _LAND),
    ),
    dict(ring.SYMBOLS, widest="length", step="length", cut="length", groove="length", t="length"),
)  # fmt: skip
ANSWER = answer(
    "out_of_parallel clean_width groove_width groove_depth ring_width turn_width radial_thickness"
    " side_clearance side_clearance_hot insert_width? end_land_left inner_land_left? land_stress?"
    " land_shear? least_land",
    (FIGURES, fitting.FIGURES, ring.FIGURES),
    lists=(
        column(
            "ways",
            "records",
            "ways to go on, side by side",
            (
                column("way", "text", "what is done"),
                column("groove_width", "length", "to cut"),
                column("ring_width", "length", "of the ring"),
                column("insert_width?", "length", "of the insert beside it"),
                column("end_land_left", "length", "to the end of the piston"),
                column("inner_land_left?", "length", "between two grooves"),
                column("outcome", "text", "good, watch or stop"),
                column("why", "text", "what decides that"),
            ),
        ),
    ),
    checks=(
        Check("groove-taper", "fitting", "how far the worn groove is out of parallel"),
        Check("groove-cleans-up", "fitting", "whether the new width takes out all wear"),
        Check("groove-deep", "fitting", "whether the groove is too deep for its ring"),
        Check("land-strength", "fitting", "stress in the land that is left"),
        Check("land-width", "fitting", "land that is left against practice"),
        Check("insert", "fitting", "width of the insert"),
        Check("overrun", "fitting", "how far the ring passes the end of the bore"),
    ),
)
