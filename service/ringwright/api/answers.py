"""From the core's records to the JSON that goes out, in metric or inch units.

Written out here rather than through records.plain and marshmallow dumping: it is the busiest
code of the service, and the answers are plain already. Tests hold the metric answer with its
working equal to records.plain, and the quick way of `to_json` equal to `shown`.
"""

from collections import OrderedDict
from collections.abc import Callable, Mapping, Sequence
from typing import Any

import orjson

from ..core.records import Choice, Figure, Finding, Method, Quantity, Series, plain, short
from ..named_types import Document
from ..units import SHOWN_IN_INCHES
from ..units.factors import Shown

# Unit of the core -> how it is shown.
_Table = Mapping[str, Shown]

METRIC = "metric"
INCH = "inch"
SYSTEMS = (METRIC, INCH)
# Keys whose numbers are in the unit that a plain {"value": ..., "unit": ...} entry names.
LEAF_KEYS = frozenset(("value", "values", "low", "high", "lower", "upper", "limit", "limits"))
_NO_TABLE: _Table = {}


class NotFinite(ArithmeticError):
    """A calculation gave infinity or no number: a fault of ours, never shown as a figure."""


def to_json(answer: Any, system: str = METRIC, working: bool = True) -> bytes:
    """The bytes of an answer.

    answer: tree of core records as a calculation returns it. system: "metric" for the core's own
    units or "inch". working: False leaves out the numbers put into each formula.
    Raises NotFinite.
    """
    if system == METRIC:
        # Dicts and lists stay in the library's compiled walk; it hands us the records only.
        try:
            content = orjson.dumps(answer, default=_worked_record if working else _record)
        except orjson.JSONEncodeError:
            content = b"null"
        # A number that is none, outside a record, would have become null; look again, slowly, and
        # with our own words for what is wrong.
        if b"null" not in content:
            return content
    return orjson.dumps(shown(answer, system, working))


def _record(node: Any) -> Any:
    return _HANDLERS[type(node)](node, _NO_TABLE, False)


def _worked_record(node: Any) -> Any:
    return _HANDLERS[type(node)](node, _NO_TABLE, True)


def shown(answer: Any, system: str = METRIC, working: bool = True) -> Any:
    """The same as a tree of dicts, lists, text and numbers."""
    return _shown(answer, SHOWN_IN_INCHES if system == INCH else _NO_TABLE, working)


def _shown(node: Any, table: _Table, working: bool) -> Any:
    handler = _HANDLERS.get(type(node))
    if handler is not None:
        return handler(node, table, working)
    if isinstance(node, dict):
        return _mapping(node, table, working)
    return plain(node)


def _number(value: Any, scale: Shown | None) -> Any:
    """A number, or list of numbers, on the scale shown; anything else as it is."""
    if isinstance(value, (list, tuple)):
        return [_number(one, scale) for one in value]
    if value is None or isinstance(value, (str, bool)):
        return value
    if value - value != 0:
        raise NotFinite("a figure is %r" % value)
    if scale is not None:
        value = value * scale.numerator / scale.denominator + scale.offset
    return short(value) if type(value) is float else value


def _float(value: float, table: _Table, working: bool) -> Any:
    if value - value != 0:
        raise NotFinite("a number is %r" % value)
    return short(value)


def _as_it_is(value: Any, table: _Table, working: bool) -> Any:
    return value


def _figure(node: Figure, table: _Table, working: bool) -> Document:
    value, unit, symbol, method, steps, low, high = node
    scale = table.get(unit)
    if scale is None and type(value) is float and value - value == 0:
        # Nearly every figure of a metric answer: spared the call of _number.
        entry = {"value": short(value), "unit": unit, "symbol": symbol, "method": method}
    else:
        entry = {
            "value": _number(value, scale),
            "unit": unit if scale is None else scale.unit,
            "symbol": symbol,
            "method": method,
        }
    if working and steps:
        shows, given = steps
        entry["working"] = [
            _step(symbol, given[symbol], unit, table)
            for symbol, unit in shows
            if given.get(symbol) is not None
        ]
    if low is not None:
        entry["low"] = _number(low, scale)
    if high is not None:
        entry["high"] = _number(high, scale)
    return entry


def _step(symbol: str, value: Any, unit: str, table: _Table) -> Document:
    scale = table.get(unit)
    return {
        "symbol": symbol,
        "value": _number(value, scale),
        "unit": unit if scale is None else scale.unit,
    }


def _quantity(node: Quantity, table: _Table, working: bool) -> Document:
    value, unit = node
    scale = table.get(unit)
    if scale is None and type(value) is float and value - value == 0:
        return {"value": short(value), "unit": unit}
    return {"value": _number(value, scale), "unit": unit if scale is None else scale.unit}


def _finding(node: Finding, table: _Table, working: bool) -> Document:
    check, outcome, value, limit, why, remedy, apply = node
    entry = {"check": check, "outcome": outcome, "why": why, "remedy": remedy}
    if value is not None:
        entry["value"] = _shown(value, table, working)
    if limit is not None:
        entry["limit"] = _shown(limit, table, working)
    if apply:
        entry["apply"] = [_choice(one, table, working) for one in apply]
    return entry


def _choice(node: Choice, table: _Table, working: bool) -> Document:
    name, value, unit, why = node
    scale = table.get(unit)
    if type(value) is not str:
        value = _number(value, scale)
    return {
        "input": name,
        "value": value,
        "unit": unit if scale is None else scale.unit,
        "why": why,
    }


def _series(node: Series, table: _Table, working: bool) -> Document:
    values, unit, symbol = node
    scale = table.get(unit)
    return {
        "values": _number(values, scale),
        "unit": unit if scale is None else scale.unit,
        "symbol": symbol,
    }


def _mapping(node: Mapping[str, Any], table: _Table, working: bool) -> Document:
    unit = node.get("unit")
    if isinstance(unit, str):
        return _leaf(node, table, working)
    find = _HANDLERS.get
    shown_node = {}
    for key, value in node.items():
        handler = find(type(value), _shown)
        shown_node[key] = handler(value, table, working)
    return shown_node


def _leaf(node: Mapping[str, Any], table: _Table, working: bool) -> Document:
    """A plain {"value": ..., "unit": ...} entry, with whatever else it holds."""
    scale = table.get(node["unit"])
    entry = {}
    for key, value in node.items():
        if key in LEAF_KEYS and _is_bare(value):
            entry[key] = _number(value, scale)
        elif key == "unit" and scale is not None:
            entry[key] = scale.unit
        else:
            entry[key] = _shown(value, table, working)
    return entry


def _is_bare(value: Any) -> bool:
    """True for a number or a list of numbers; false for what names a unit of its own."""
    if isinstance(value, (list, tuple)):
        return all(_is_bare(one) for one in value)
    return type(value) in (int, float)


def _sequence(node: Sequence[Any], table: _Table, working: bool) -> list[Any]:
    find = _HANDLERS.get
    return [find(type(entry), _shown)(entry, table, working) for entry in node]


_HANDLERS: dict[type, Callable[[Any, _Table, bool], Any]] = {
    Figure: _figure,
    Quantity: _quantity,
    Finding: _finding,
    Choice: _choice,
    Series: _series,
    Method: lambda node, table, working: plain(node),
    OrderedDict: _mapping,
    dict: _mapping,
    list: _sequence,
    tuple: _sequence,
    float: _float,
    str: _as_it_is,
    int: _as_it_is,
    bool: _as_it_is,
    type(None): _as_it_is,
}
