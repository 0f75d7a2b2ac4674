"""What "expander" answers with."""

from . import Check, answer, table
from .lists import column
from .ring import FIGURES

_BEHIND = "Behind the ring"
_SYMBOLS = {"p_x": "pressure", "h1": "length", "D": "length", "N": "ratio", "b": "length",
            "t": "length", "E": "modulus"}  # fmt: skip
_ALL = "p_x, h1, D, N, b, t"
ANSWER = answer(
    "expander_room total_wall_pressure wave_force strip_stress wave_height strip_length",
    (
        table(
            (
                ("expander_room", "length", "R", "Room behind the ring", "expander", "", _BEHIND),
                ("wave_force", "force", "F", "Force of a wave", "expander", "p_x, h1, D, N", _BEHIND),
                ("strip_stress", "pressure", "sigma", "Stress in the strip", "expander", _ALL, _BEHIND),
                ("wave_height", "length", "H", "Height of the waves, free", "expander", _ALL + ", E", _BEHIND, "over the strip's thickness"),
                ("strip_length", "length", "L", "Strip to cut", "expander", "D", _BEHIND),
            ),
            _SYMBOLS,
        ),
        FIGURES,
    ),
    lists=(
        column(
            "strips",
            "records",
            "strips that fit and bear, with the fewest waves for each",
            (
                column("strip_thickness", "length", "of the strip"),
                column("strip_waves", "count", "all the way round"),
                column("strip_stress", "pressure", "in the strip"),
                column("wave_height", "length", "of the waves, free"),
            ),
        ),
    ),
    checks=(
        Check("strip-room", "running", "whether the expander fits behind the ring"),
        Check("strip-stress", "running", "stress in the expander"),
        Check("strip-heat", "running", "the expander's metal against the steam's heat"),
    ),
)  # fmt: skip
