"""How a quantity may be written: openapi/quantity.lark as regular expressions and words of refusal.

What stands here is data. The app gets the same data as a file (`python -m ringwright.units.write`),
so that both read alike and refuse in the same words; the tests run texts made from the grammar
through both. The expressions mean the same in Python and in ECMAScript, and none can run away:
every part is bounded, and no two ways lead to one text.
"""

from collections.abc import Iterable

from .factors import SCALES
from .names import EXAMPLES

# More than any measure needs; the bound keeps every match and every number short.
LONGEST_MEASURE = 48

# An ordinary space, a no-break one, a narrow no-break one, a thin one.
SPACE = "[ \u00a0\u202f\u2009]"
# These two may also stand between thousands: they are no word space.
THIN = "[\u202f\u2009]"
SIGN = "[+\u2212-]"
SLASH = "[/\u2044]"
VULGAR = {
    "\u00bd": (1, 2),
    "\u2153": (1, 3),
    "\u2154": (2, 3),
    "\u00bc": (1, 4),
    "\u00be": (3, 4),
    "\u2155": (1, 5),
    "\u2156": (2, 5),
    "\u2157": (3, 5),
    "\u2158": (4, 5),
    "\u2159": (1, 6),
    "\u215a": (5, 6),
    "\u2150": (1, 7),
    "\u215b": (1, 8),
    "\u215c": (3, 8),
    "\u215d": (5, 8),
    "\u215e": (7, 8),
    "\u2151": (1, 9),
    "\u2152": (1, 10),
}
_WHOLE = "[0-9]{1,6}"
_FRACTION = "[0-9]{1,5}%s[1-9][0-9]{0,4}" % SLASH
_GROUPED = "[1-9][0-9]{0,2}(?:%s[0-9]{3}){1,5}" % THIN
# "1,250" is one and a quarter to some and twelve hundred and fifty to others: after up to three
# digits, not beginning with 0, a comma must not be followed by just three.
_COMMA = "(?:0[0-9]{0,17}|[0-9]{4,18})?,[0-9]{1,20}|[1-9][0-9]{0,2},(?:[0-9]{4,20}|[0-9]{1,2})"
# Longest first, so that what begins with a number gives all of it.
_DECIMAL = "%s(?:[.,][0-9]{1,20})?|%s|[0-9]{1,18}(?:[.][0-9]{0,20})?|[.][0-9]{1,20}" % (
    _GROUPED,
    _COMMA,
)


# Its parts, in order: sign; whole and fraction; whole and vulgar sign; decimal and exponent.
NUMBER = "(%s?)%s?(?:%s|%s|%s)" % (
    SIGN,
    SPACE,
    "(?:(%s)(?:%s{1,2}|-))?(%s)" % (_WHOLE, SPACE, _FRACTION),
    "(?:(%s)(?:%s|-)?)?([%s])" % (_WHOLE, SPACE, "".join(VULGAR)),
    "(%s)(?:[eE](%s?[0-9]{1,2}))?" % (_DECIMAL, SIGN),
)


def _any_of(spellings: Iterable[str]) -> str:
    # Longest first, or "in" would hide "inch".
    return "|".join(sorted(spellings, key=lambda name: (-len(name), name)))


def pattern(kind: str) -> str:
    """The regular expression (ECMAScript and Python alike) of every text of a kind that is read.

    Its last two groups are the unit: one that begins like a number stands apart from the number,
    or "121/min" could be 12 per minute.
    """
    spellings = SCALES[kind]
    apart = [name for name in spellings if name[0].isdigit()]
    close = [name for name in spellings if not name[0].isdigit()]
    units = ["%s{0,2}(%s)" % (SPACE, _any_of(close))] if close else []
    units += ["%s{1,2}(%s)" % (SPACE, _any_of(apart))] if apart else []
    unit = "(?:%s)?" % "|".join(units) if units else ""
    return "^%s{0,4}%s%s%s{0,4}$" % (SPACE, NUMBER, unit, SPACE)


# All but letters and signs that every screen shows: a list of what is shown, since what is not
# changes with each edition of Unicode.
UNPRINTABLE = (
    "[^ -~\u00a1-\u00ac\u00ae-\u024f\u0391-\u03a1\u03a3-\u03ff\u0400-\u04ff\u2010-\u2027"
    "\u2030-\u205e\u2074-\u208e\u20a0-\u20bf\u2100-\u218b\u2190-\u22ff\u3041-\u3096\u30a1-\u30fa\u4e00-\u9fa5"
    "\uac00-\ud7a3]"
)
# Tried in this order on a text that cannot be read: what is wrong with its number.
TWO_READINGS = "^%s*(%s?)%s?([1-9][0-9]{0,2}),([0-9]{3})(?![0-9.,])" % (SPACE, SIGN, SPACE)
MORE_MARKS = "[0-9][.,][0-9]+[.,]"
LEADING = "^%s*%s" % (SPACE, NUMBER)
# Code -> message and remedy. {text} is what was written, {number} and {rest} its two parts,
# {how} what to write, {names} the units of the kind.
REFUSALS = {
    "measure-long": ("text of {length} characters is no measure", "{how}"),
    "decimal-comma": (
        "{text} can be read in two ways: its comma may be a decimal sign or a thousands mark",
        'write "{point}" or "{plain}"',
    ),
    "decimal-marks": (
        "{text} has more than one decimal sign",
        "write one decimal sign, and nothing between thousands",
    ),
    "measure": ("{text} is no measure", "{how}"),
    "number-range": (
        "{text} is beyond any measure",
        "write at most 18 digits, and an exponent of at most two",
    ),
    "measure-two": (
        "{text} holds more than one number",
        'write one number, such as "3.125" or "3 1/8"',
    ),
    "unit-apart": ("{text} can be read in two ways", 'write "{number} 1{rest}", with the space'),
    "unit-missing": (
        "{text} is a fraction without a unit",
        'name its unit, such as "{number} {first}" or "{number} {second}"',
    ),
    "unit-unwanted": ("{rest} is no unit that is taken here", "give the number alone"),
    "unit-capitals": (
        "{rest} is no unit that is taken here: capitals count",
        'write "{number} {meant}" if that is meant',
    ),
    "unit-unknown": ("{rest} in {text} is no unit that is taken here", "{how}"),
}


def main_names(kind: str) -> list[str]:
    """Each unit of a kind once, by its own name, the core's first."""
    return list(dict.fromkeys(scale.name for scale in SCALES[kind].values()))


def how_to_write(kind: str) -> str:
    """What to write for a kind, as words; {in_unit} is where a number's unit is to be named."""
    texts = ['"%s"' % text for text in EXAMPLES[kind]]
    listed = ", ".join(texts[:-1]) + " or " + texts[-1] if texts[1:] else texts[0]
    names = main_names(kind)
    if len(names) < 2:
        return "give a number{in_unit}, such as %s" % listed
    return "give a number{in_unit}, or text such as %s (units: %s)" % (listed, ", ".join(names))
