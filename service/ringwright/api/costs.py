"""What a calculation costs, known from the sizes of the request before any of it is spent.

In milliseconds of a processor of about the year 2020, read on the bench and rounded up: what
matters is which ones are heavy and how heavy beside one another (lane.py). A name that is not in
the table is light.
"""

from collections.abc import Callable

from ..core.catalogue.inputs_ring import PLAIN
from ..core.catalogue.inputs_stock import THOROUGH
from ..core.catalogue.inputs_wall import WALL
from ..named_types import Values

LIGHT = 1.0
# The cut list counts its steps and stops (cutting.STEP_LIMIT): so long at most, quick and thorough.
_QUICK_SEARCH = 200.0
_THOROUGH_SEARCH = 800.0
_STEPS_PER_TURN: int = WALL["steps_per_turn"].default.value


def of(name: str, values: Values) -> float:
    """Cost [ms] of the calculation of that name. values: the checked values of its fields."""
    cost = COSTS.get(name)
    return LIGHT if cost is None else cost(values)


def _search(sets: int, values: Values) -> float:
    """Cost [ms] of cutting a number of sets out of the bars of a request."""
    bars = len(values.get("bars") or ()) + len(values.get("bars_to_buy") or ())
    pairs = sets * bars
    if values.get("cutting_effort") == THOROUGH:
        return min(_THOROUGH_SEARCH, 1.0 * pairs)
    return min(_QUICK_SEARCH, 0.4 * pairs)


def _stock(values: Values) -> float:
    return LIGHT + _search(len(values["sets"]), values)


def _job(values: Values) -> float:
    return 3.0 + _search(1, values)


def _wall_pressure(values: Values) -> float:
    turns = 1 if values.get("ring_type") == PLAIN else 2
    nodes: int = turns * (values.get("steps_per_turn") or _STEPS_PER_TURN)
    # A wall that is not round, or a ring that was measured, may need the slower solver.
    harsh = values.get("bore_shape") or values.get("free_shape")
    return nodes / (20.0 if harsh else 200.0)


def _bore_survey(values: Values) -> float:
    return 2.0 + 0.3 * len(values["readings"])


def _spread(values: Values) -> float:
    return 12.0


COSTS: dict[str, Callable[[Values], float]] = {
    "bore-survey": _bore_survey,
    "job": _job,
    "spread": _spread,
    "stock": _stock,
    "wall-pressure": _wall_pressure,
}
