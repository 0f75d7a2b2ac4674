"""Writes what the app reads quantities by, as data:

python -m ringwright.units.write client_pwa/src/units/quantity.json
"""

import json
import sys
from fractions import Fraction
from pathlib import Path
from typing import Any

from ..core.fields import STEAM_PRESSURE
from . import grammar
from .factors import SCALES, Scale
from .names import UNITS
from .reader import core_unit

# A kind with more names than that whose units the app lists for it.
NARROWER = {STEAM_PRESSURE: "pressure"}


def table() -> dict[str, Any]:
    """The grammar and every unit as plain data; factors are exact, "numerator/denominator"."""
    kinds: dict[str, dict[str, Any]] = {}
    for kind, spellings in SCALES.items():
        units: dict[str, dict[str, Any]] = {}
        offered = {unit.name for unit in UNITS[NARROWER.get(kind, kind)] if unit.offered}
        for spelling, scale in spellings.items():
            if scale.name not in units:
                one = units[scale.name] = {"name": scale.name}
                one["factor"] = _ratio(scale)
                if scale.offset:
                    one["offset"] = _ratio(scale.offset)
                if scale.name in offered:
                    one["offered"] = True
            if spelling != scale.name:
                units[scale.name].setdefault("also", []).append(spelling)
        kinds[kind] = {
            "unit": core_unit(kind),
            "how": grammar.how_to_write(kind),
            "units": list(units.values()),
        }
    return {
        "longest": grammar.LONGEST_MEASURE,
        "space": grammar.SPACE,
        "unprintable": grammar.UNPRINTABLE,
        "twoReadings": grammar.TWO_READINGS,
        "moreMarks": grammar.MORE_MARKS,
        "number": grammar.NUMBER,
        "vulgar": grammar.VULGAR,
        "refusals": grammar.REFUSALS,
        "kinds": kinds,
    }


def _ratio(number: Scale | Fraction) -> str:
    whole = "%d" % number.numerator
    return whole if number.denominator == 1 else "%s/%d" % (whole, number.denominator)


def text() -> str:
    return json.dumps(table(), ensure_ascii=False, indent=1) + "\n"


if __name__ == "__main__":
    Path(sys.argv[1]).write_text(text(), encoding="utf-8")
