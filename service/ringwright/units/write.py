"""Writes what the app reads quantities by, as data:

python -m ringwright.units.write client_pwa/src/units/quantity.json
"""

import json
import sys
from pathlib import Path

from ..core.fields import STEAM_PRESSURE
from . import grammar
from .factors import SCALES
from .names import UNITS
from .reader import core_unit

# A kind with more names than that whose units the app lists for it.
NARROWER = {STEAM_PRESSURE: "pressure"}


def table():
    """The grammar and every unit as plain data; factors are exact, "numerator/denominator"."""
    kinds = {}
    for kind, spellings in SCALES.items():
        units = {}
        offered = {unit.name for unit in UNITS[NARROWER.get(kind, kind)] if unit.offered}
        for spelling, scale in spellings.items():
            if scale.name not in units:
                one = units[scale.name] = {"name": scale.name}
                one["factor"] = "%d/%d" % (scale.numerator, scale.denominator)
                if scale.offset:
                    one["offset"] = "%d/%d" % scale.offset.as_integer_ratio()
                if scale.name in offered:
                    one["offered"] = True
            if spelling != scale.name:
                units[scale.name].setdefault("also", []).append(spelling)
        kinds[kind] = {
            "unit": core_unit(kind),
            "pattern": grammar.pattern(kind),
            "how": grammar.how_to_write(kind),
            "units": list(units.values()),
        }
    return {
        "longest": grammar.LONGEST_MEASURE,
        "space": grammar.SPACE,
        "unprintable": grammar.UNPRINTABLE,
        "twoReadings": grammar.TWO_READINGS,
        "moreMarks": grammar.MORE_MARKS,
        "leading": grammar.LEADING,
        "vulgar": grammar.VULGAR,
        "refusals": grammar.REFUSALS,
        "kinds": kinds,
    }


def text():
    return json.dumps(table(), ensure_ascii=False, indent=1) + "\n"


if __name__ == "__main__":
    Path(sys.argv[1]).write_text(text(), encoding="utf-8")
