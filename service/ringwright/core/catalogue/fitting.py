"""What "fitting" answers with."""

from . import answer, lists, ring, table
from .lists import column

FIGURES = table(
    (
        ("wall_before_load", "temperature", "T_w", "Cylinder wall before load", "wall-before-load", "d1, s1, d_p, T_0", ring.HEAT),
        ("least_land", "length", "t_min", "Land asked for by strength", "least-land", "d1, d_p, depth, p_s", ring.GROOVE, "beside a groove, after it is trued up"),
        ("half_spring_gap", "length", "s", "Gap at half the spring", "spring-left", "m, a1, s1", ring.HEAT, "cold, by the spring alone; a leak may ask for less"),
    ),
    ring.SYMBOLS,
)  # fmt: skip
ANSWER = answer(
    "wall_before_load least_land? half_spring_gap?",
    (FIGURES,),
    lists=(
        lists.OPERATIONS,
        column("signs", "records", "what is seen in use, and what it means", lists.CAUTION_ROWS),
    ),
)
