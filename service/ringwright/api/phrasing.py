"""Refusals in the caller's own unit: "bore is 9999 in; give 0.394 to 35.4 in".

The core knows its own units only and says both measures. Where a text named a unit, limits are told
in that one, as words and as numbers, and another is offered in which the same number would do.
"""

from fractions import Fraction
from typing import Any

from .. import units
from ..core.fields import Field, bound_words
from ..core.problems import Fault
from ..named_types import Fields, Path


def in_own_unit(fault: Fault, fields: Fields, given: Any) -> Fault:
    """The Fault as the caller of `given` would say it.

    fault: of the core. fields: sequence of Field. given: the request as it came, units and all.
    """
    entry, text = _asked(fields, given, fault.path)
    if fault.code != "range" or entry is None or not isinstance(text, str) or fault.value is None:
        return fault
    kind = units.kind_of(entry) or entry.kind
    typed = unit_of(kind, text)
    if typed is None:
        return fault
    unit = units.SCALES[kind][typed].name
    value = _in_unit(kind, unit, fault.value)
    lowest, highest = (
        None if number is None else _in_unit(kind, unit, number)
        for number in (fault.lowest, fault.highest)
    )
    more = "more than " if fault.more_than else ""
    bounds = [
        bound_words(number, at == 0)
        for at, number in enumerate((lowest, highest))
        if number is not None
    ]
    remedy = "give %s%s %s" % (more, (" and at most " if more else " to ").join(bounds), unit)
    likely = _likely(kind, entry, value, unit)
    if likely:
        remedy += "; did you mean %s %s?" % (text.strip()[: -len(typed)].strip(), likely)
    name = ".".join(str(step) for step in fault.path)
    return Fault(
        fault.path,
        fault.code,
        "%s is %s" % (name, units.quoted(text.strip())[1:-1]),
        remedy,
        value,
        lowest,
        highest,
        unit,
        fault.more_than,
        likely,
    )


def unit_of(kind: str, text: str) -> str | None:
    """The name of the unit that a text ends in, None for none."""
    text = text.strip()
    for name in sorted(units.SCALES.get(kind) or (), key=len, reverse=True):
        if text.endswith(name):
            return name
    return None


def _asked(fields: Fields, given: Any, path: Path) -> tuple[Field | None, Any]:
    """(Field, what was given) at a path; None for what is not there."""
    entry = None
    for step in path:
        if isinstance(step, str):
            entry = next((one for one in fields if one.name == step), None)
            given = given.get(step) if isinstance(given, dict) else None
            fields = entry.items if entry else ()
        else:
            given = given[step] if isinstance(given, list) and step < len(given) else None
            if len(fields) == 1 and not fields[0].name:
                entry = fields[0]
    return entry, given


def _in_unit(kind: str, unit: str, value: float) -> float:
    """A number of the core's unit in another of its kind."""
    scale = units.SCALES[kind][unit]
    return float((Fraction(value) - scale.offset) * scale.denominator / scale.numerator)


# What is offered of each kind: names that people mix up.
_OFFERED = {
    "length": ("mm", "in", "thou"),
    "pressure": ("bar", "psi", "MPa"),
    units.STEAM_PRESSURE: ("bar", "psi", "MPa"),
    "modulus": ("GPa", "MPa", "psi"),
    "temperature": ("degC", "degF"),
    "force": ("N", "lbf"),
}


def _likely(kind: str, entry: Field, value: float, unit: str) -> str:
    for other in _OFFERED.get(kind, ()):
        if other == unit or not value > 0:
            continue
        scale = units.SCALES[kind][other]
        meant = float(Fraction(value) * scale.numerator / scale.denominator + scale.offset)
        if entry.lowest is not None and meant < entry.lowest:
            continue
        if entry.highest is not None and meant > entry.highest:
            continue
        return other
    return ""
