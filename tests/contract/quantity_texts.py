"""Texts made from openapi/quantity.lark, and what each stands for by the grammar alone.

Neither reader has a part in it: Lark parses, whole numbers are kept as Python's fractions, units
are taken from the published definitions below, and what the grammar does not know is no quantity.

    python tests/contract/quantity_texts.py     writes tests/vectors/quantities.json again
"""

import json
import random
import re
import unicodedata
from fractions import Fraction
from functools import cache
from pathlib import Path
from re import _constants as re_constants
from re import _parser as re_parser

import lark

ROOT = Path(__file__).parents[2]
GRAMMAR = ROOT / "openapi" / "quantity.lark"
TABLE = ROOT / "tests" / "vectors" / "quantities.json"
SPELLINGS = ROOT / "client_pwa" / "src" / "units" / "quantity.json"
LONGEST = 48
# Stands for the units of a kind that has none of that sort.
NOWHERE = "\x00"

# NIST SP 811 (2008), appendix B: inch, foot, pound, standard gravity and standard atmosphere exact
# by definition; horsepower is 550 ft lbf/s; the degree Fahrenheit is 5/9 of a kelvin.
INCH, FOOT, POUND, GRAVITY = map(Fraction, ("25.4", "304.8", "0.45359237", "9.80665"))
PSI = POUND * GRAVITY / INCH**2
ATMOSPHERE = Fraction("0.101325")
STRESS = {
    "MPa": 1,
    "psi": PSI,
    "bar": Fraction(1, 10),
    "kPa": Fraction(1, 1000),
    "GPa": 1000,
    "ksi": 1000 * PSI,
    "Mpsi": 10**6 * PSI,
}
# Kind -> unit -> what one of it is in the core's unit.
FACTORS = {
    "length": {
        "mm": 1,
        "in": INCH,
        "thou": INCH / 1000,
        "cm": 10,
        "m": 1000,
        "um": Fraction(1, 1000),
        "ft": FOOT,
    },
    "area": {"mm2": 1, "cm2": 100, "in2": INCH**2},
    "pressure": STRESS,
    "modulus": STRESS,
    "steam_pressure": STRESS,
    "force": {
        "N": 1,
        "lbf": POUND * GRAVITY,
        "ozf": POUND * GRAVITY / 16,
        "kgf": GRAVITY,
        "gf": GRAVITY / 1000,
    },
    "temperature": {"degC": 1, "degF": Fraction(5, 9), "K": 1},
    "mass": {"kg": 1, "lb": POUND, "g": Fraction(1, 1000), "oz": POUND / 16},
    "density": {
        "kg/m3": 1,
        "g/cm3": 1000,
        "lb/in3": POUND / (INCH / 1000) ** 3,
        "lb/ft3": POUND / (FOOT / 1000) ** 3,
    },
    "expansion": {"1/K": 1, "ppm/K": Fraction(1, 10**6), "1/degF": Fraction(9, 5)},
    "speed": {"1/min": 1, "1/s": 60},
    "surface_speed": {"m/min": 1, "m/s": 60, "ft/min": FOOT / 1000},
    "duration": {"h": 1, "min": Fraction(1, 60), "s": Fraction(1, 3600), "days": 24},
    "power": {"W": 1, "kW": 1000, "hp": 550 * FOOT / 1000 * POUND * GRAVITY},
    "price": {"money/kg": 1, "money/lb": 1 / POUND},
    "money": {"money": 1},
    "ratio": {"%": Fraction(1, 100)},
    "angle": {"deg": 1},
    "number": {},
    "count": {},
}
OFFSETS = {"degF": Fraction(-160, 9), "K": Fraction("-273.15")}
# No fraction: left to a test of its own.
LEFT_OUT = {"rad"}
DECIMALS = ("POINT", "COMMA", "COMMA_NOT_AFTER_THOUSANDS", "GROUPED")


@cache
def listed(kind):
    """The units of a kind: the one thing taken from the service, which lists them."""
    return json.loads(SPELLINGS.read_text(encoding="utf-8"))["kinds"][kind]["units"]


@cache
def spellings(kind):
    """Spelling -> unit of a kind."""
    return {
        spelling: unit["name"]
        for unit in listed(kind)
        if unit["name"] not in LEFT_OUT
        for spelling in (unit["name"], *unit.get("also", ()))
    }


def factor(kind, unit):
    """(what one is in the core's unit, where its nought lies)."""
    base = unit.removesuffix(" abs")
    offset = -ATMOSPHERE if base != unit else OFFSETS.get(unit, Fraction(0))
    return Fraction(FACTORS[kind][base]), offset


@cache
def parser(kind):
    names = spellings(kind)
    apart = [name for name in names if name[0].isdigit()]
    close = [name for name in names if not name[0].isdigit()]
    # A kind without units gets a spelling that no text has.
    lines = [
        "%s: %s" % (terminal, " | ".join(json.dumps(name) for name in names or [NOWHERE]))
        for terminal, names in (("CLOSE", close), ("APART", apart))
    ]
    text = GRAMMAR.read_text(encoding="utf-8") + "\n" + "\n".join(lines) + "\n"
    return lark.Lark(text, parser="earley", lexer="dynamic_complete", keep_all_tokens=True)


def value(kind, text):
    """The double that `text` stands for, or None where the grammar knows no such text."""
    if len(text) > LONGEST:
        return None
    try:
        tree = parser(kind).parse(text)
    except lark.exceptions.LarkError:
        return None
    found = {token.type: str(token) for token in tree.scan_values(lambda _: True)}
    unit = found.get("CLOSE", found.get("APART"))
    if unit is not None and unit not in spellings(kind):
        return None
    number = Fraction(int(found.get("WHOLE", 0)))
    decimal = next((found[name] for name in DECIMALS if name in found), None)
    if decimal is not None:
        plain = re.sub("[\u202f\u2009]", "", decimal).replace(",", ".")
        exponent = found.get("EXPONENT", "0").replace("\u2212", "-")
        number = Fraction(plain.rstrip(".")) * Fraction(10) ** int(exponent)
    elif "OVER" in found:
        number += Fraction(int(found["OVER"]), int(found["UNDER"]))
    else:
        # Unicode's own table says what the sign stands for: "1\u20448".
        sign = unicodedata.normalize("NFKC", found["VULGAR"])
        number += Fraction(*map(int, sign.split("\u2044")))
    if unit is None and decimal is None and len(listed(kind)) > 1:
        return None
    if found.get("SIGN", "+") != "+":
        number = -number
    if unit is not None:
        scale, offset = factor(kind, spellings(kind)[unit])
        number = number * scale + offset
    return float(number)


def drawn(kind, dice):
    """A text by chance from the rules of the grammar."""
    made = parser(kind)
    rules = {}
    for rule in made.rules:
        rules.setdefault(rule.origin.name, []).append(rule.expansion)
    patterns = {terminal.name: terminal.pattern.to_regexp() for terminal in made.terminals}

    def letters(symbol):
        if symbol.is_term:
            return matching(re_parser.parse(patterns[symbol.name]), dice)
        return "".join(map(letters, dice.choice(rules[symbol.name])))

    start = next(rule.origin for rule in made.rules if rule.origin.name == "start")
    text = NOWHERE
    while NOWHERE in text:
        text = letters(start)
    return text


def matching(parsed, dice):
    """A text by chance that an expression matches; it holds no more than grammars of letters do."""
    text = ""
    for operation, what in parsed:
        if operation is re_constants.LITERAL:
            text += chr(what)
        elif operation is re_constants.IN:
            operation, what = dice.choice(what)
            text += chr(what if operation is re_constants.LITERAL else dice.randint(*what))
        elif operation is re_constants.MAX_REPEAT:
            least, most, inner = what
            # Short ones more often than long ones: those are what people write.
            times = min(dice.randint(least, most), dice.randint(least, most))
            text += "".join(matching(inner, dice) for _ in range(times))
        elif operation is re_constants.BRANCH:
            text += matching(dice.choice(what[1]), dice)
        else:
            assert operation is re_constants.SUBPATTERN, operation
            text += matching(what[-1], dice)
    return text


OTHER_LETTERS = (
    "0123456789.,/- +eE\u2212\u202f\u00a0\u2044\u00bd'\"\u2033\u00b0\u00b5mMinptPak%gKC\t\u0663x"
)


def altered(text, dice):
    """The text with a letter or two put in, taken out, doubled or exchanged."""
    letters = list(text)
    for _ in range(dice.choice((1, 1, 2))):
        at = dice.randrange(len(letters) + 1)
        way = dice.randrange(3)
        if way == 0:
            letters.insert(at, dice.choice(OTHER_LETTERS))
        elif at < len(letters) and way == 1:
            del letters[at]
        elif at < len(letters):
            letters[at] = dice.choice(OTHER_LETTERS)
    return "".join(letters)


def table():
    """Rows of kind, text and value (null for what is no quantity); the same ones every time."""
    dice = random.Random("quantities")
    rows = {}
    for kind in FACTORS:
        for _ in range(75):
            text = drawn(kind, dice)
            for each in (text, altered(text, dice)):
                rows[kind, each] = value(kind, each)
        for unit in spellings(kind):
            # Each spelling with a number before it, near and apart, and in other capitals.
            for each in ("7%s" % unit, "2,5 %s" % unit, "7 %s" % unit.swapcase()):
                rows[kind, each] = value(kind, each)
    return [[kind, text, value] for (kind, text), value in rows.items()]


def written():
    rows = ",\n".join(json.dumps(row, ensure_ascii=True) for row in table())
    return "[\n%s\n]\n" % rows


if __name__ == "__main__":
    TABLE.write_text(written(), encoding="utf-8")
