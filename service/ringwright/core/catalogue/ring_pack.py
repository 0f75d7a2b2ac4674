"""What "ring-pack" answers with."""

from . import Check, answer, fitting, ring, running, table
from .lists import column

_PACK = "The rings together"
FIGURES = table(
    (
        ("steam_cost", "flow", "W + P M/IP", "Leak and friction cost", "steam-cost", "W_gap, P, M, IP", _PACK, "as steam"),
        ("pack_length", "length", "L_p", "Piston length for the rings", "pack-length", "n, h1, c, inner, end", _PACK, "grooves and lands"),
        ("fillings", "ratio", "f", "Fillings of a space in a turn", "ring-spaces", "d1, d_p, n", _PACK, "far below one: the rings between stand idle"),
        ("first_ring_share", "ratio", "dp_1/dp", "Share of the first ring", "ring-spaces", "n", _PACK, "of the pressure, over the stroke"),
        ("gap_spacing", "angle", "360/n", "Gaps from ring to ring", "gap-spacing", "n", _PACK, "when they are put on"),
    ),
    dict(running.SYMBOLS, P="power", inner="length", end="length", h1="length", c="length",
         d_p="length"),
)  # fmt: skip
ANSWER = answer(
    "gap_leak friction_power steam_cost first_ring_share fillings? pack_length least_land"
    " gap_spacing?",
    (FIGURES, fitting.FIGURES, running.FIGURES, ring.FIGURES),
    lists=(
        column(
            "rings",
            "records",
            "ring by ring, from one end",
            (
                column("ring", "count", "from the end that steam enters first"),
                column("pressure_difference", "pressure", "across it, mean over the stroke"),
                column("share", "ratio", "of the whole pressure"),
                column("wall_pressure_with_steam", "pressure", "on the wall, mean"),
                column("wear", "ratio", "against the mean of all rings"),
            ),
        ),
        column(
            "counts",
            "records",
            "so many rings, side by side",
            (
                column("rings", "count", "on the piston"),
                column("leak", "flow", "by their gaps"),
                column("friction_power", "power", "that they take"),
                column("steam_cost", "flow", "leak and friction together, as steam"),
                column("pack_length", "length", "of piston that they need"),
            ),
        ),
    ),
    checks=(
        Check("ring-count", "fitting", "number of rings by leak and friction"),
        Check("ring-shares", "fitting", "how the rings share the pressure"),
        Check("double-for-two", "fitting", "one double-turn ring against two plain ones"),
        Check("gap-places", "fitting", "where the gaps stand"),
        Check("land-short", "fitting", "lands against strength"),
        Check("pack-length", "fitting", "whether rings and lands fit the piston"),
    ),
)
