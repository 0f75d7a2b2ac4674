"""What "expander" answers with."""

from . import Check, answer, table
from .lists import column
from .ring import FIGURES

_BEHIND = "Behind the ring"
_SYMBOLS = {"p_x": "pressure", "h1": "length", "D": "length", "N": "ratio", "b": "length",
            "t": "length", "E": "modulus", "d1": "length", "d": "length", "n": "ratio",
            "r": "length"}  # fmt: skip
_COIL = "p_x, h1, d1, D, d, n, E"
_ALL = "p_x, h1, D, N, b, t"
ANSWER = answer(
    "expander_room total_wall_pressure wave_force? strip_stress? wave_height? strip_length?"
    " coil_force? wire_stress? coil_length? coil_free_length?",
    (
        table(
            (
                ("expander_room", "length", "R", "Room behind the ring", "expander", "", _BEHIND),
                ("wave_force", "force", "F", "Force of a wave", "expander", "p_x, h1, D, N", _BEHIND),
                ("strip_stress", "pressure", "sigma", "Stress in the strip", "expander", _ALL, _BEHIND),
                ("wave_height", "length", "H", "Height of the waves, free", "expander", _ALL + ", E", _BEHIND, "over the strip's thickness"),
                ("strip_length", "length", "L", "Strip to cut", "expander", "D", _BEHIND),
                ("coil_force", "force", "P", "Force along the coil", "coil-expander", "p_x, h1, d1", _BEHIND),
                ("wire_stress", "pressure", "tau", "Twist in the wire", "coil-expander", _COIL, _BEHIND),
                ("coil_length", "length", "L", "Coil, closed to its ring", "coil-expander", "r", _BEHIND, "round its middle, ends butting"),
                ("coil_free_length", "length", "L0", "Coil, free", "coil-expander", _COIL, _BEHIND, "lying straight"),
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
        Check("coil-bind", "running", "whether the turns of a coil behind the ring touch"),
        Check("strip-heat", "running", "the expander's metal against the steam's heat"),
    ),
)  # fmt: skip
