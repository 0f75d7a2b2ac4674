"""Units at the edge: text such as "3 1/8 in" to core units, and core units to inch units.

`openapi/quantity.lark` says what may be written; `grammar` carries it, `reader` reads by it, and so
does the app. `names` is the allow-list of units, `factors` what each is, from pint.
"""

from ..core.fields import STEAM_PRESSURE, Field, read_as
from .factors import SCALES, SHOWN_IN_INCHES
from .grammar import LONGEST_MEASURE, main_names, pattern
from .names import EXAMPLES
from .reader import UnitProblem, core_unit, quoted, read

__all__ = [
    "EXAMPLES",
    "LONGEST_MEASURE",
    "SCALES",
    "SHOWN_IN_INCHES",
    "STEAM_PRESSURE",
    "UnitProblem",
    "core_unit",
    "kind_of",
    "main_names",
    "pattern",
    "quoted",
    "read",
]


def kind_of(entry: Field) -> str | None:
    """The kind of measure that a core Field reads text as; None where it takes no number."""
    kind = read_as(entry)
    return kind if kind in SCALES else None
