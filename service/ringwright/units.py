"""Units at the edge: text such as "3 1/8 in" to core units, and core units to inch units.

The only import of pint. pint supplies the exact factors once, at import, from names written in
this file; a stranger's text never reaches its parser (text such as "mm^9^9^9" hangs it). What may
be written is an allow-list, one table per kind of field, and one bounded pattern.

Text in: an optional sign, a whole number, decimal or fraction ("80", "3.125", "3 1/8", "3-1/8",
"5/64", "1e-3"), an optional space, and a unit name. The decimal sign is a point: "0,5 mm" is
refused with that advice, since "1,250" is one number to some readers and another to others. (The
phone app, which knows its user, takes both.) Digits are 0 to 9 only. Numbers are carried as whole
numbers over whole numbers and rounded to a double once.
"""

import re
from collections import namedtuple
from fractions import Fraction

import pint

from .core.fields import UNIT_OF_KIND

# More than any measure needs; the bound keeps every pattern match and every number short.
LONGEST_MEASURE = 48

# core number = written number * numerator / denominator + offset, all whole or exact fractions.
Scale = namedtuple("Scale", ("numerator", "denominator", "offset"))

# shown number = core number * numerator / denominator + offset, in doubles.
Shown = namedtuple("Shown", ("unit", "numerator", "denominator", "offset"))


class UnitProblem(ValueError):
    """Text that is no measure of its kind; says what is wrong and what to write instead."""

    def __init__(self, code, message, remedy):
        super().__init__(message)
        self.code = code
        self.message = message
        self.remedy = remedy


_STRESSES = {
    "MPa": "megapascal",
    "N/mm2": "newton/millimeter**2",
    "N/mm\u00b2": "newton/millimeter**2",
    "kPa": "kilopascal",
    "bar": "bar",
    "psi": "pound_force/inch**2",
    "lbf/in2": "pound_force/inch**2",
}
# Kind of field -> name as it may be written -> the same in pint's names. Case counts: with unit
# prefixes it changes the meaning (mPa, MPa).
NAMES = {
    "length": {
        "mm": "millimeter",
        "cm": "centimeter",
        "m": "meter",
        "um": "micrometer",
        "\u00b5m": "micrometer",
        "\u03bcm": "micrometer",
        "in": "inch",
        "inch": "inch",
        "inches": "inch",
        '"': "inch",
        "thou": "thou",
        "mil": "thou",
        "ft": "foot",
    },
    "area": {
        "mm2": "millimeter**2",
        "mm\u00b2": "millimeter**2",
        "cm2": "centimeter**2",
        "in2": "inch**2",
        "in\u00b2": "inch**2",
        "sq in": "inch**2",
    },
    "pressure": _STRESSES,
    "modulus": {
        **_STRESSES,
        "GPa": "gigapascal",
        "GN/m2": "gigapascal",
        "kN/mm2": "gigapascal",
        "kN/mm\u00b2": "gigapascal",
        "ksi": "kip/inch**2",
        "Mpsi": "megapound_force/inch**2",
    },
    # A reading of a kitchen or spring scale is a force, whatever its dial says.
    "force": {
        "N": "newton",
        "lbf": "pound_force",
        "lb": "pound_force",
        "ozf": "ounce_force",
        "oz": "ounce_force",
        "kgf": "kilogram_force",
        "kg": "kilogram_force",
        "gf": "gram_force",
        "g": "gram_force",
    },
    "temperature": {
        "degC": "degree_Celsius",
        "C": "degree_Celsius",
        "\u00b0C": "degree_Celsius",
        "degF": "degree_Fahrenheit",
        "F": "degree_Fahrenheit",
        "\u00b0F": "degree_Fahrenheit",
        "K": "kelvin",
    },
    "angle": {
        "deg": "degree",
        "degree": "degree",
        "degrees": "degree",
        "\u00b0": "degree",
        "rad": "radian",
    },
    "mass": {
        "kg": "kilogram",
        "g": "gram",
        "lb": "pound",
        "lbs": "pound",
        "oz": "ounce",
    },
    "density": {
        "kg/m3": "kilogram/meter**3",
        "g/cm3": "gram/centimeter**3",
        "lb/in3": "pound/inch**3",
        "lb/ft3": "pound/foot**3",
    },
    "expansion": {
        "1/K": "1/kelvin",
        "1/degC": "1/kelvin",
        "um/m/K": "micrometer/meter/kelvin",
        "ppm/K": "micrometer/meter/kelvin",
        "1/degF": "1/delta_degree_Fahrenheit",
    },
    "speed": {
        "1/min": "1/minute",
        "rpm": "1/minute",
        "rev/min": "1/minute",
        "1/s": "1/second",
        "rev/s": "1/second",
    },
    "surface_speed": {
        "m/min": "meter/minute",
        "m/s": "meter/second",
        "ft/min": "foot/minute",
        "fpm": "foot/minute",
    },
    "duration": {
        "h": "hour",
        "hours": "hour",
        "min": "minute",
        "s": "second",
        "days": "day",
    },
    "power": {"W": "watt", "kW": "kilowatt", "hp": "horsepower"},
    # Money has no rate to anything; only the mass under it is converted.
    "price": {"money/kg": "1/kilogram", "money/lb": "1/pound"},
    "money": {"money": ""},
    "ratio": {"%": "percent"},
    "number": {},
}
# Steam is reckoned from the atmosphere (gauge); the words make either sense plain. A wall pressure
# has no such choice, so these names belong to a kind of their own.
STEAM_PRESSURE = "steam_pressure"
_GAUGE_NAMES = {"psi gauge": "psi", "psig": "psi", "bar gauge": "bar", "barg": "bar"}
_ABSOLUTE_NAMES = {
    "psi abs": "psi",
    "psia": "psi",
    "bar abs": "bar",
    "bara": "bar",
    "kPa abs": "kPa",
    "MPa abs": "MPa",
}
# Core unit -> (the unit of an inch answer, the core unit and that unit in pint's names).
_INCH_UNITS = {
    "mm": ("in", "millimeter", "inch"),
    "um": ("thou", "micrometer", "thou"),
    "mm2": ("in2", "millimeter**2", "inch**2"),
    "mm3": ("in3", "millimeter**3", "inch**3"),
    "1/mm": ("1/in", "1/millimeter", "1/inch"),
    "m": ("ft", "meter", "foot"),
    "m2": ("ft2", "meter**2", "foot**2"),
    "m3": ("ft3", "meter**3", "foot**3"),
    "N": ("lbf", "newton", "pound_force"),
    "N/mm": ("lbf/in", "newton/millimeter", "pound_force/inch"),
    "N mm": ("lbf in", "newton*millimeter", "pound_force*inch"),
    "MPa": ("psi", "megapascal", "pound_force/inch**2"),
    "degC": ("degF", "degree_Celsius", "degree_Fahrenheit"),
    "kg": ("lb", "kilogram", "pound"),
    "kg/h": ("lb/h", "kilogram/hour", "pound/hour"),
    "kg/m3": ("lb/in3", "kilogram/meter**3", "pound/inch**3"),
    "m3/kg": ("ft3/lb", "meter**3/kilogram", "foot**3/pound"),
    "kJ/kg": ("Btu/lb", "kilojoule/kilogram", "Btu_it/pound"),
    "J": ("ft lbf", "joule", "foot*pound_force"),
    "W": ("hp", "watt", "horsepower"),
    "1/K": ("1/degF", "1/kelvin", "1/delta_degree_Fahrenheit"),
    "m/min": ("ft/min", "meter/minute", "foot/minute"),
    "m/s": ("ft/s", "meter/second", "foot/second"),
    "mm/min": ("in/min", "millimeter/minute", "inch/minute"),
    "money/kg": ("money/lb", "1/kilogram", "1/pound"),
}


def _tables():
    """Every factor, exact, from pint's definitions, for both directions."""
    # Fractions throughout, so that an inch is 127/5 mm and not the double next to it.
    registry = pint.UnitRegistry(non_int_type=Fraction, autoconvert_offset_to_baseunit=True)

    def line(source, target):
        """(factor, offset) with: number in target = number in source * factor + offset."""
        zero = Fraction(registry.Quantity(Fraction(0), source).to(target).magnitude)
        one = Fraction(registry.Quantity(Fraction(1), source).to(target).magnitude)
        return one - zero, zero

    scales = {}
    for kind, unit in UNIT_OF_KIND.items():
        names = NAMES[kind]
        table = scales[kind] = {}
        for name, source in names.items():
            factor, offset = line(source, names.get(unit, ""))
            table[name] = Scale(factor.numerator, factor.denominator, offset)
    atmosphere = line("atm", "megapascal")[0]
    steam = scales[STEAM_PRESSURE] = dict(scales["pressure"])
    for name, base in _GAUGE_NAMES.items():
        steam[name] = steam[base]
    for name, base in _ABSOLUTE_NAMES.items():
        steam[name] = steam[base]._replace(offset=-atmosphere)
    shown = {}
    for unit, (name, source, target) in _INCH_UNITS.items():
        factor, offset = line(source, target)
        shown[unit] = Shown(name, *map(float, (factor.numerator, factor.denominator, offset)))
    return scales, shown


SCALES, SHOWN_IN_INCHES = _tables()

_DECIMAL = "(?:[0-9]{1,18}(?:\\.[0-9]{0,20})?|\\.[0-9]{1,20})(?:[eE][+-]?[0-9]{1,2})?"
_WHOLE, _OVER, _UNDER = "[0-9]{1,6}", "[0-9]{1,5}", "[1-9][0-9]{0,4}"
_NUMBER = "[+-]?(?:(?:%s[ -])?%s/%s|%s)" % (_WHOLE, _OVER, _UNDER, _DECIMAL)
# The same with names on its parts, for reading.
_PARTS = "(?P<sign>[+-]?)(?:(?:(?P<whole>%s)[ -])?(?P<over>%s)/(?P<under>%s)|(?P<decimal>%s))" % (
    _WHOLE,
    _OVER,
    _UNDER,
    _DECIMAL,
)
_LEADING_NUMBER = re.compile(_NUMBER)
_COMMA = re.compile("[0-9],[0-9]")


def _units_pattern(kind):
    # Longest first, or "in" would hide "inch".
    names = sorted(SCALES[kind], key=lambda name: (-len(name), name))
    return "|".join(names)


def pattern(kind):
    """The regular expression (ECMA and Python alike) of every text that `read` takes of a kind."""
    return "^ *%s ?(?:%s) *$" % (_NUMBER, _units_pattern(kind))


_READERS = {
    kind: re.compile(" *%s ?(?P<unit>%s) *" % (_PARTS, _units_pattern(kind))).fullmatch
    for kind in SCALES
    if SCALES[kind]
}


def read(kind, text):
    """The number in core units that `text` stands for, a double correctly rounded.

    kind: as `kind_of` gives it. text: str such as "3 1/8 in", "4 thou", "120 psi".
    Raises UnitProblem for anything else, with the remedy.
    """
    match = _READERS[kind](text) if len(text) <= LONGEST_MEASURE else None
    if match is None:
        raise _what_is_wrong(kind, text)
    return _in_core_units(match, SCALES[kind][match["unit"]])


def _what_is_wrong(kind, text):
    """The UnitProblem for text that is no measure of this kind."""
    remedy = _how_to_write(kind)
    if len(text) > LONGEST_MEASURE:
        return UnitProblem("measure", "text of %d characters is no measure" % len(text), remedy)
    if _COMMA.search(text):
        return UnitProblem(
            "decimal-comma",
            "%s has a comma, which may be a decimal sign or a thousands mark" % quoted(text),
            "write the number with a decimal point and nothing between thousands",
        )
    number = _LEADING_NUMBER.match(text.strip(" "))
    if number is None:
        return UnitProblem("measure", "%s is no measure" % quoted(text), remedy)
    rest = text.strip(" ")[number.end() :].strip(" ")
    if not rest:
        return UnitProblem("unit-missing", "%s has no unit" % quoted(text), remedy)
    return UnitProblem(
        "unit-unknown",
        "%s in %s is no unit that is taken here" % (quoted(rest), quoted(text)),
        remedy,
    )


def _in_core_units(match, scale):
    """The matched number times its scale: whole numbers all through, one rounding at the end."""
    sign, whole, over, under, decimal, _ = match.groups()
    if decimal is None:
        under = int(under)
        over = int(whole or 0) * under + int(over)
    else:
        mantissa, _, exponent = decimal.lower().partition("e")
        digits, _, decimals = mantissa.partition(".")
        over, under = int(digits + decimals), 10 ** len(decimals)
        if exponent:
            power = int(exponent)
            over, under = over * 10 ** max(power, 0), under * 10 ** max(-power, 0)
    over, under = over * scale.numerator, under * scale.denominator
    if sign == "-":
        over = -over
    if scale.offset:
        return float(Fraction(over, under) + scale.offset)
    return over / under


def quoted(text):
    """A stranger's text as it may stand in a message: short, and nothing unprintable in it."""
    short = text if len(text) <= 40 else text[:40] + "..."
    return "'%s'" % "".join(letter if letter.isprintable() else "?" for letter in short)


_EXAMPLES = {
    "length": '"80 mm", "3 1/8 in" or "4 thou"',
    "area": '"12 mm2" or "0.5 in2"',
    "pressure": '"0.05 MPa" or "7 psi"',
    STEAM_PRESSURE: '"8 bar", "120 psi" or "135 psi abs"',
    "modulus": '"110 GPa" or "16e6 psi"',
    "force": '"12 N", "2.5 lbf" or "850 g"',
    "temperature": '"180 degC" or "350 degF"',
    "angle": '"45 deg"',
    "mass": '"2.5 kg" or "5 lb"',
    "density": '"7250 kg/m3" or "0.26 lb/in3"',
    "expansion": '"11.7 um/m/K"',
    "speed": '"250 rpm"',
    "surface_speed": '"20 m/min" or "65 ft/min"',
    "duration": '"90 min" or "2 h"',
    "power": '"750 W" or "1 hp"',
    "price": '"4.5 money/kg" or "2 money/lb"',
    "ratio": '"42 %"',
}


def kind_of(entry):
    """The kind of measure that a core Field reads text as; None where it takes no text."""
    if entry.kind == "pressure" and "gauge" in entry.meaning:
        return STEAM_PRESSURE
    return entry.kind if entry.kind in _READERS else None


def core_unit(kind):
    """The core's unit of a kind of measure."""
    return "MPa" if kind == STEAM_PRESSURE else UNIT_OF_KIND[kind]


def example_texts(kind):
    """Texts of a kind that can be read, for documentation."""
    return re.findall('"([^"]+)"', _EXAMPLES.get(kind, ""))


def _how_to_write(kind):
    unit = core_unit(kind)
    number = "a number" if unit == "1" else "a number in " + unit
    units = ", ".join(SCALES[kind])
    if kind not in _EXAMPLES:
        return 'give %s, or text such as "5 %s"' % (number, unit)
    return "give %s, or text with a unit such as %s (units: %s)" % (number, _EXAMPLES[kind], units)
