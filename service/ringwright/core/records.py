"""The few shapes that every calculation returns.

Named tuples, because the phone's Python has no dataclasses. `plain` turns any tree of them into
dicts and lists that JSON can carry; key order survives only in an OrderedDict (the phone's plain
dict has none), so whatever a person reads in order is an OrderedDict or a list.

Units used everywhere in the core, as text: mm, mm2, N, MPa (= N/mm2), degC, deg, kg, kg/m3, min,
1/min, m/min, m/s, mm/min, kg/h, W, 1 (a pure number), 1/K, money (the user's own currency).
Pressure of steam is gauge pressure unless a name says absolute.
"""

import math
from collections import OrderedDict, namedtuple

GOOD = "good"
WATCH = "watch"
STOP = "stop"

# A number with its unit and nothing else.
Quantity = namedtuple("Quantity", ("value", "unit"))

# A named result. `working` is what was put into the formula: () or a pair of what to show, as
# (symbol, unit) pairs, and a dict of symbol -> value, read when it is asked for; what has no value
# is left out.
# `low` and `high` bound the figure where it rests on a coefficient, else None.
Figure = namedtuple("Figure", ("value", "unit", "symbol", "method", "working", "low", "high"))

# One check of the design. `value` and `limit` are Quantity or None. `apply`: Choices that clear it,
# as inputs to give, a value of None one to leave out; () where the hand mends it.
Finding = namedtuple("Finding", ("check", "outcome", "value", "limit", "why", "remedy", "apply"))

# Something the caller did not give: which input, what was taken, and the rule that took it.
Choice = namedtuple("Choice", ("input", "value", "unit", "why"))

# How a figure is worked: the formula as its source prints it, where it holds, and the keys of
# the sources it rests on (see sources.py).
Method = namedtuple("Method", ("key", "title", "formula", "validity", "sources"))

# What a figure rests on; basis: see sources.py.
Source = namedtuple("Source", ("key", "title", "where", "basis"))

# A row of numbers along a line or round a circle.
Series = namedtuple("Series", ("values", "unit", "symbol"))


_TENS = [1.0]
for _ in range(22):  # the powers of ten that a double holds without a rounding
    _TENS.append(_TENS[-1] * 10.0)
# By the exponent of two, 0 to 40 and then -33 to -1: what leaves 12 or 13 digits before the point.
_STEPS = [
    _TENS[min(22, 13 - math.ceil(e * 0.30103))] for e in list(range(0, 41)) + list(range(-33, 0))
]


def short(number):
    """A float as answers give it: to 12 or 13 significant digits, so that it is written short.

    0.047999999999999994 is 0.048. Sums and a division by a power of ten alone, which every machine
    rounds alike: the phone's Python and the service's give the same digits. Below 1e-9 digits end
    at the 22nd place; from 1e12 on all stay.
    """
    # Adding 1.5 times 2^52 and taking it off rounds to a whole number. Most numbers of an answer
    # are of these sizes, and a busy service makes many.
    if 1.0 <= number < 1000.0:
        if number < 10.0:
            return (number * 1e12 + 6755399441055744.0 - 6755399441055744.0) / 1e12
        if number < 100.0:
            return (number * 1e11 + 6755399441055744.0 - 6755399441055744.0) / 1e11
        return (number * 1e10 + 6755399441055744.0 - 6755399441055744.0) / 1e10
    exponent = math.frexp(number)[1]
    if exponent > 40:
        return number
    step = _STEPS[exponent] if exponent > -34 else 1e22
    return (number * step + 6755399441055744.0 - 6755399441055744.0) / step


def finding(check, outcome, why, remedy="", value=None, limit=None, apply=()):
    """A Finding; a remedy is required unless the outcome is good."""
    if outcome != GOOD and not remedy:
        raise ValueError("a finding that is not good needs a remedy: " + check)
    return Finding(
        check=check,
        outcome=outcome,
        value=value,
        limit=limit,
        why=why,
        remedy=remedy,
        apply=apply,
    )


def plain(node, working=True):
    """The same tree in dicts, lists, text and short numbers; None inside a record is left out.

    working: False leaves out the numbers put into each formula.
    """
    kind = type(node)
    if kind is float:
        return short(node)
    if kind is str or kind is int:
        return node
    if kind is Figure:
        value = node.value
        entry = {
            "value": short(value) if type(value) is float else value,
            "unit": node.unit,
            "symbol": node.symbol,
            "method": node.method,
        }
        if working and node.working:
            shows, given = node.working
            entry["working"] = steps = []
            for symbol, unit in shows:
                value = given.get(symbol)
                if value is not None:
                    value = short(value) if type(value) is float else plain(value)
                    steps.append({"symbol": symbol, "value": value, "unit": unit})
        if node.low is not None:
            entry["low"] = plain(node.low)
        if node.high is not None:
            entry["high"] = plain(node.high)
        return entry
    if kind is Quantity:
        return {"value": plain(node.value), "unit": node.unit}
    if kind is Choice:
        return {
            "input": node.input,
            "value": plain(node.value),
            "unit": node.unit,
            "why": node.why,
        }
    if kind is Finding:
        entry = {
            "check": node.check,
            "outcome": node.outcome,
            "why": node.why,
            "remedy": node.remedy,
        }
        if node.value is not None:
            entry["value"] = plain(node.value)
        if node.limit is not None:
            entry["limit"] = plain(node.limit)
        if node.apply:
            entry["apply"] = [plain(one) for one in node.apply]
        return entry
    if kind is Series:
        return {"values": plain(node.values), "unit": node.unit, "symbol": node.symbol}
    if kind is Method:
        return {
            "key": node.key,
            "title": node.title,
            "formula": node.formula,
            "validity": node.validity,
            "sources": list(node.sources),
        }
    if isinstance(node, dict):
        tree = OrderedDict()
        for key, value in node.items():
            tree[key] = value if type(value) is str else plain(value, working)
        return tree
    if isinstance(node, (list, tuple)):
        return [plain(entry, working) for entry in node]
    return node
