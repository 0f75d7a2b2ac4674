"""Every unit that may be written, and the inch unit in which an answer may be given: an allow-list.

Only names from this file ever reach pint. Capitals count, since with a prefix they change the
meaning (mPa, MPa): a spelling in other capitals is taken only where it stands here.
"""

from typing import NamedTuple

from ..core.fields import STEAM_PRESSURE


# name      as it is shown and stored beside a number; the first of a kind is the core's own unit
# in_pint   the same in pint's names
# also      other spellings
# offered   False where it is read when typed, but not shown in the app's list of units
class Unit(NamedTuple):
    name: str
    in_pint: str
    also: tuple[str, ...]
    offered: bool


def unit(name: str, in_pint: str, *also: str) -> Unit:
    return Unit(name=name, in_pint=in_pint, also=also, offered=True)


def rare(name: str, in_pint: str, *also: str) -> Unit:
    return Unit(name=name, in_pint=in_pint, also=also, offered=False)


# Signs that stand for inches: straight, typographic as phones make them, and double primes.
INCH_SIGNS = ('"', "\u201d", "\u2033", "''", "\u2019\u2019", "\u2032\u2032")
_PSI_NAMES = ("PSI", "Psi", "lbf/in2", "lbf/in\u00b2", "lb/in2", "lb/in\u00b2")
_MPA = unit("MPa", "megapascal", "MPA", "N/mm2", "N/mm\u00b2")
_PSI = unit("psi", "pound_force/inch**2", *_PSI_NAMES)
_BAR = unit("bar", "bar", "Bar", "BAR")
_KPA = unit("kPa", "kilopascal", "kpa", "Kpa", "KPa", "KPA")

UNITS: dict[str, tuple[Unit, ...]] = {
    "length": (
        unit("mm", "millimeter", "MM", "millimetre", "millimetres", "millimeter", "millimeters"),
        unit("in", "inch", "In", "IN", "inch", "Inch", "INCH", "inches", "Inches", *INCH_SIGNS),
        unit("thou", "thou", "Thou", "THOU", "mil", "mils"),
        rare("cm", "centimeter"),
        rare("m", "meter"),
        rare("um", "micrometer", "\u00b5m", "\u03bcm", "micron", "microns"),
        rare("ft", "foot", "Ft", "FT", "foot", "feet"),
    ),
    "area": (
        unit("mm2", "millimeter**2", "mm\u00b2", "sq mm"),
        unit("in2", "inch**2", "in\u00b2", "sq in"),
        rare("cm2", "centimeter**2", "cm\u00b2"),
    ),
    "pressure": (_MPA, _PSI, _BAR, _KPA),
    "modulus": (
        _MPA,
        unit("GPa", "gigapascal", "GPA", "GN/m2", "GN/m\u00b2", "kN/mm2", "kN/mm\u00b2"),
        _PSI,
        rare("ksi", "kip/inch**2"),
        rare("Mpsi", "megapound_force/inch**2"),
        rare("kPa", "kilopascal"),
        rare("bar", "bar"),
    ),
    # A reading of a kitchen or spring scale is a force, whatever its dial says.
    "force": (
        unit("N", "newton", "newton", "newtons"),
        unit("lbf", "pound_force", "lb", "lbs", "Lb", "LB"),
        unit("kgf", "kilogram_force", "kg", "Kg", "KG", "kp"),
        rare("ozf", "ounce_force", "oz"),
        rare("gf", "gram_force", "g"),
    ),
    "temperature": (
        unit("degC", "degree_Celsius", "C", "\u00b0C", "\u00baC", "deg C"),
        unit("degF", "degree_Fahrenheit", "F", "\u00b0F", "\u00baF", "deg F"),
        rare("K", "kelvin"),
    ),
    "angle": (
        unit("deg", "degree", "\u00b0", "\u00ba", "degree", "degrees"),
        rare("rad", "radian"),
    ),
    "mass": (
        unit("kg", "kilogram", "Kg", "KG"),
        unit("lb", "pound", "lbs", "Lb", "LB"),
        rare("g", "gram"),
        rare("oz", "ounce"),
    ),
    "density": (
        unit("kg/m3", "kilogram/meter**3", "kg/m\u00b3"),
        unit("lb/in3", "pound/inch**3", "lb/in\u00b3"),
        rare("g/cm3", "gram/centimeter**3", "g/cm\u00b3"),
        rare("lb/ft3", "pound/foot**3", "lb/ft\u00b3"),
    ),
    "expansion": (
        unit("1/K", "1/kelvin", "1/degC", "1/\u00b0C"),
        unit("ppm/K", "micrometer/meter/kelvin", "um/m/K", "\u00b5m/m/K", "\u03bcm/m/K"),
        unit("1/degF", "1/delta_degree_Fahrenheit", "1/\u00b0F"),
    ),
    "speed": (
        unit("1/min", "1/minute", "rpm", "RPM", "Rpm", "rev/min", "r/min"),
        rare("1/s", "1/second", "rev/s"),
    ),
    "surface_speed": (
        unit("m/min", "meter/minute"),
        unit("ft/min", "foot/minute", "fpm", "sfm"),
        rare("m/s", "meter/second"),
    ),
    "duration": (
        unit("h", "hour", "hour", "hours", "hr"),
        unit("min", "minute", "minute", "minutes"),
        rare("s", "second"),
        rare("days", "day", "day"),
    ),
    "power": (
        unit("W", "watt"),
        unit("kW", "kilowatt", "kw", "KW"),
        unit("hp", "horsepower", "HP", "Hp"),
    ),
    # Money has no rate to anything; only the mass under it is converted.
    "price": (unit("money/kg", "1/kilogram"), unit("money/lb", "1/pound")),
    "money": (unit("money", ""),),
    "ratio": (rare("%", "percent"),),
    "number": (),
    "count": (),
}
# Steam is reckoned from the atmosphere (gauge); the words make either sense plain. A wall pressure
# has no such choice, so these names belong to a kind of their own.
GAUGE_NAMES: dict[str, tuple[str, ...]] = {
    "psi": ("psi gauge", "psig"),
    "bar": ("bar gauge", "barg"),
}
ABSOLUTE_NAMES: dict[str, tuple[str, ...]] = {
    "psi": ("psi abs", "psia"),
    "bar": ("bar abs", "bara"),
    "kPa": ("kPa abs",),
    "MPa": ("MPa abs",),
}
# Texts of each kind that may serve as examples: within the bounds of every input of that kind
# that is large enough to matter to a newcomer.
EXAMPLES: dict[str, tuple[str, ...]] = {
    "length": ("80 mm", "3 1/8 in", "3,5 in"),
    "area": ("12 mm2", "0.5 in2"),
    "pressure": ("0.05 MPa", "7 psi"),
    STEAM_PRESSURE: ("8 bar", "120 psi", "135 psi abs"),
    "modulus": ("110 GPa", "16e6 psi"),
    "force": ("12 N", "2.5 lbf", "850 g"),
    "temperature": ("180 degC", "350 degF"),
    "angle": ("45 deg",),
    "mass": ("2.5 kg", "5 lb"),
    "density": ("7250 kg/m3", "0.26 lb/in3"),
    "expansion": ("11.7 um/m/K",),
    "speed": ("250 rpm",),
    "surface_speed": ("20 m/min", "65 ft/min"),
    "duration": ("90 min", "2 h"),
    "power": ("750 W", "1 hp"),
    "price": ("4.5 money/kg", "2 money/lb"),
    "money": ("12.5 money",),
    "ratio": ("0.42", "42 %"),
    "number": ("2.5",),
    "count": ("3",),
}

# Core unit -> (the unit of an inch answer, the core unit and that unit in pint's names).
INCH_UNITS = {
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
