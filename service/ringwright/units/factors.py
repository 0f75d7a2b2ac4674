"""What each unit is in the core's own: exact factors from pint, the only import of it.

pint supplies them once, at import, from the names in names.py; a stranger's text never reaches
its parser (text such as "mm^9^9^9" hangs it).
"""

from fractions import Fraction
from typing import Any, NamedTuple

import pint

from ..core.fields import STEAM_PRESSURE, UNIT_OF_KIND
from .names import ABSOLUTE_NAMES, GAUGE_NAMES, INCH_UNITS, UNITS


# core number = written number * numerator / denominator + offset: whole numbers, an exact fraction.
# name is the unit's own, by whichever of its spellings it was found.
class Scale(NamedTuple):
    name: str
    numerator: int
    denominator: int
    offset: Fraction


# shown number = core number * numerator / denominator + offset, in doubles.
class Shown(NamedTuple):
    unit: str
    numerator: float
    denominator: float
    offset: float


def _tables() -> tuple[dict[str, dict[str, Scale]], dict[str, Shown]]:
    """Every factor, exact, from pint's definitions, for both directions."""
    # Fractions throughout, so that an inch is 127/5 mm and not the double next to it.
    registry: Any = pint.UnitRegistry(non_int_type=Fraction, autoconvert_offset_to_baseunit=True)

    def line(source: str, target: str) -> tuple[Fraction, Fraction]:
        """(factor, offset) with: number in target = number in source * factor + offset."""
        zero = Fraction(registry.Quantity(Fraction(0), source).to(target).magnitude)
        one = Fraction(registry.Quantity(Fraction(1), source).to(target).magnitude)
        return one - zero, zero

    scales: dict[str, dict[str, Scale]] = {}
    for kind, units in UNITS.items():
        core = "" if UNIT_OF_KIND.get(kind, "1") == "1" or not units else units[0].in_pint
        table = scales[kind] = {}
        for unit in units:
            factor, offset = line(unit.in_pint, core)
            for spelling in (unit.name, *unit.also):
                table[spelling] = Scale(
                    name=unit.name,
                    numerator=factor.numerator,
                    denominator=factor.denominator,
                    offset=offset,
                )
    atmosphere = line("atm", "megapascal")[0]
    steam = scales[STEAM_PRESSURE] = dict(scales["pressure"])
    for base, names in GAUGE_NAMES.items():
        steam.update(dict.fromkeys(names, steam[base]))
    for base, names in ABSOLUTE_NAMES.items():
        absolute = steam[base]._replace(name=names[0], offset=-atmosphere)
        steam.update(dict.fromkeys(names, absolute))
    shown = {}
    for core_unit, (name, source, target) in INCH_UNITS.items():
        factor, offset = line(source, target)
        shown[core_unit] = Shown(
            unit=name,
            numerator=float(factor.numerator),
            denominator=float(factor.denominator),
            offset=float(offset),
        )
    return scales, shown


# Kind -> spelling -> Scale; core unit -> Shown.
SCALES, SHOWN_IN_INCHES = _tables()
