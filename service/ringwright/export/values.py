"""Figures as a person reads them on paper, in metric or inch units."""

from ..core.drawing import words
from ..core.wording import decimal, significant
from ..units import SHOWN_IN_INCHES

# Units of the core as they are printed; those that are not here are printed as they are.
_PRINTED = {
    "degC": "\u00b0C",
    "degF": "\u00b0F",
    "deg": "\u00b0",
    "MPa": "N/mm\u00b2",
    "1/min": "rev/min",
}
# Decimals of those that have a custom of their own.
_PLACES = {"deg": 1, "1/min": 0, "degC": 0, "degF": 0}
_FIGURES = 3


def shown(value: float, unit: str, system: str, places: int | None = None) -> str:
    """A value with its unit: "80.00 mm", "3.150 in", "550 \u00b0C".

    value: number in the core's unit. system: "metric" or "inch". places: decimals, for a length
    those of its metric form; None for the custom of its unit (for a length wording.length_places).
    """
    if unit == "mm":
        return str(words.length(value, system, places))
    if system == words.INCH and unit in SHOWN_IN_INCHES:
        scale = SHOWN_IN_INCHES[unit]
        value = value * scale.numerator / scale.denominator + scale.offset
        unit = scale.unit
    if places is None:
        places = _PLACES.get(unit)
    if places is not None:
        digits: str = decimal(value, places)
    elif abs(value) >= 100.0 or value == int(value):
        digits = decimal(value, 0)
    else:
        digits = significant(value, _FIGURES)
    name = _PRINTED.get(unit, unit)
    return digits + name if name == "\u00b0" else "%s %s" % (digits, name)


def limits(lower: float, upper: float, system: str) -> tuple[str, str, str]:
    """The limits of a length, the upper first, and its unit: ["80.467", "80.247", "mm"]."""
    upper_text, lower_text = words.limits(lower, upper, system).lines
    return upper_text, lower_text, "in" if system == words.INCH else "mm"
