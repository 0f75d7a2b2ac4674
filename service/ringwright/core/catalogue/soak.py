"""What "soak" answers with."""

from . import answer, table
from .lists import column

_HEAT = "The heat"
_MADE = "What becomes of the ring"
FIGURES = table(
    (
        ("ring_temperature", "temperature", "T", "Heat of the ring", "tell-tales", "", _HEAT),
        ("relief_expected", "ratio", "eta", "Stress the soak takes out", "expected-relief", "T, t", _HEAT),
        ("relief_by_heat", "ratio", "d eta", "Relief moved by the heat alone", "tell-tales", "T, t", _HEAT, "from the coldest it may be to the hottest"),
        ("soak_pressure", "pressure", "p", "Wall pressure after this soak", "soaked-ring", "eta, eta_0, p_0", _MADE),
        ("soak_gap", "length", "m + s1", "Free gap after this soak", "soaked-ring", "eta, eta_0, s1", _MADE, "along the neutral line"),
    ),
    {"T": "temperature", "t": "duration", "eta": "ratio", "eta_0": "ratio", "p_0": "pressure", "s1": "length"},
)  # fmt: skip
# Of one soak, low and high as the heat and its effect may be.
_ROW = (
    column("soak", "text", "what tells the heat"),
    column("soak_time", "duration", "held at it"),
    column("ring_temperature", "figure", "of the ring", FIGURES["ring_temperature"]),
    column("relief_expected", "figure", "of the bending", FIGURES["relief_expected"]),
    column("soak_pressure", "figure", "of a ring made on the same tool", FIGURES["soak_pressure"]),
    column("outcome", "text", "good; watch: next to useless or harmful; stop: useless or harmful"),
)
ANSWER = answer(
    "ring_temperature relief_expected? relief_by_heat? soak_pressure? soak_gap?",
    (FIGURES,),
    lists=(
        column("soaks", "records", "short and long, by eye and by thermocouple", _ROW),
        column("tell_tales", "records", "every tell-tale, for the same time", _ROW),
        column(
            "first_ring",
            "records",
            "what a first ring made on the same tool tells by its free gap",
            (
                column("soak_gap", "figure", "as it comes out", FIGURES["soak_gap"]),
                column("relief", "ratio", "that its heat gave: for the next ring"),
                column("soak_pressure", "figure", "on the wall", FIGURES["soak_pressure"]),
            ),
        ),
    ),
)
