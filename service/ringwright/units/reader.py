"""Text such as "3 1/8 in" to core units, by grammar.py; and what is wrong with other text."""

import re
from fractions import Fraction

from ..core.fields import STEAM_PRESSURE, UNIT_OF_KIND
from . import grammar
from .factors import SCALES


class UnitProblem(ValueError):
    """Text that is no measure of its kind; says what is wrong and what to write instead."""

    def __init__(self, code: str, message: str, remedy: str) -> None:
        super().__init__(message)
        self.code = code
        self.message = message
        self.remedy = remedy


def core_unit(kind: str) -> str:
    """The core's unit of a kind of measure."""
    return "MPa" if kind == STEAM_PRESSURE else str(UNIT_OF_KIND.get(kind, "1"))


_READERS = {kind: re.compile(grammar.pattern(kind)[1:-1]).fullmatch for kind in SCALES}
_TWO_READINGS = re.compile(grammar.TWO_READINGS)
_MORE_MARKS = re.compile(grammar.MORE_MARKS)
_LEADING = re.compile(grammar.LEADING)
_ANY_SPACE = re.compile(grammar.SPACE)
_UNPRINTABLE = re.compile(grammar.UNPRINTABLE)
_SPACES = grammar.SPACE[1:-1]
_PLAIN = {ord("\u2212"): "-", ord("\u202f"): None, ord("\u2009"): None, ord(","): "."}


def read(kind: str, text: str, unit: str | None = None) -> float:
    """The number in core units that `text` stands for, a double correctly rounded.

    kind: as `kind_of` gives it. text: str such as "3 1/8 in", "4 thou", "120 psi", "80,5".
    unit: in which a number is taken that names none; None is the core's own, and then a fraction
    must name its unit, for it is seldom one of the core's.
    Raises UnitProblem for anything else, with the remedy.
    """
    match = _READERS[kind](text) if len(text) <= grammar.LONGEST_MEASURE else None
    if match is None:
        raise _what_is_wrong(kind, text, unit)
    scales = SCALES[kind]
    written = next((name for name in match.groups()[7:] if name), None) or unit
    if written is None and match[6] is None and len(grammar.main_names(kind)) > 1:
        raise _what_is_wrong(kind, text, unit)
    over, under = _ratio(match)
    if written is None:
        return over / under
    scale = scales[written]
    over, under = over * scale.numerator, under * scale.denominator
    return float(Fraction(over, under) + scale.offset) if scale.offset else over / under


def _ratio(match: re.Match[str]) -> tuple[int, int]:
    """The matched number as whole numbers, one over the other; no rounding yet."""
    sign, whole, fraction, whole_before, vulgar, decimal, exponent = match.groups()[:7]
    if fraction is not None:
        over, under = map(int, fraction.replace("\u2044", "/").split("/"))
        over += int(whole or 0) * under
    elif vulgar is not None:
        over, under = grammar.VULGAR[vulgar]
        over += int(whole_before or 0) * under
    else:
        digits, _, decimals = decimal.translate(_PLAIN).partition(".")
        over, under = int(digits + decimals), 10 ** len(decimals)
        power = int((exponent or "0").translate(_PLAIN))
        over, under = over * 10 ** max(power, 0), under * 10 ** max(-power, 0)
    return (-over if sign in ("-", "\u2212") else over), under


def _what_is_wrong(kind: str, text: str, unit: str | None) -> UnitProblem:
    """The UnitProblem for text that is no measure of this kind."""
    parts = {
        "text": quoted(text),
        "length": str(len(text)),
        "how": grammar.how_to_write(kind).format(in_unit=_in_words(unit or core_unit(kind))),
    }
    code = _reason(kind, text, parts)
    message, remedy = grammar.REFUSALS[code]
    return UnitProblem(code, message.format(**parts), remedy.format(**parts))


def _in_words(unit: str) -> str:
    return "" if unit == "1" else " in " + unit


def _reason(kind: str, text: str, parts: dict[str, str]) -> str:
    """The code of what is wrong; puts what its words need into `parts`."""
    if len(text) > grammar.LONGEST_MEASURE:
        return "measure-long"
    two = _TWO_READINGS.match(text)
    if two is not None:
        rest = printable(text[two.end() :])
        parts["point"] = "%s%s.%s%s" % (two[1], two[2], two[3], rest)
        parts["plain"] = "%s%s%s%s" % (two[1], two[2], two[3], rest)
        return "decimal-comma"
    if _MORE_MARKS.search(text):
        return "decimal-marks"
    lead = _LEADING.match(text)
    if lead is None:
        return "measure"
    rest = text[lead.end() :].strip(_SPACES)
    parts["number"] = printable(lead[0].strip(_SPACES))
    names = grammar.main_names(kind)
    if not rest:
        parts["first"], parts["second"] = (*names, "", "")[:2]
        return "unit-missing"
    if rest[0] == "/" and "1" + rest in SCALES[kind]:
        parts["rest"] = rest
        return "unit-apart"
    if rest[0] in "0123456789":
        return "number-range" if text[lead.end()] == rest[0] else "measure-two"
    parts["rest"] = quoted(rest)
    if not names:
        return "unit-unwanted"
    meant = [name for name in SCALES[kind] if name.lower() == rest.lower() and name != rest]
    if meant:
        parts["meant"] = meant[0]
        return "unit-capitals"
    return "unit-unknown"


def printable(text: str) -> str:
    """Text as it may stand in a message."""
    return _UNPRINTABLE.sub("?", _ANY_SPACE.sub(" ", text))


def quoted(text: str) -> str:
    """A stranger's text as it may stand in a message: short, and nothing unprintable in it."""
    return "'%s'" % printable(text if len(text) <= 40 else text[:40] + "...")
