"""What a request may hold: one declaration of every input, and the check of a request against it.

The service makes its schemas and its specification from these tables, the app its forms, and both
engines check with `checked`, so a bad value is refused in the same words everywhere. Values reach
the core in core units (see records.py); reading "3 1/8 in" is the edge's work.
"""

import math
from collections import namedtuple

from . import wording
from .problems import Fault, InputProblem

# kind         a key of UNIT_OF_KIND, or "count", "choice", "text", "flag", "records", "object"
# lowest, highest   inclusive bounds in core units, None where there is none; of a list its entries,
#              of a text its letters
# choices      allowed words of a choice, in the order to show them
# default      a Default: what is taken when it is not given, None for an input that must be given
# items        for "records" (a list) and "object": the fields of one entry
# above_lowest True when `lowest` itself is not allowed
Field = namedtuple(
    "Field",
    (
        "name",
        "kind",
        "meaning",
        "default",
        "lowest",
        "highest",
        "choices",
        "items",
        "above_lowest",
        "symbol",
        "required",
    ),
)

# How an input is filled in that is not given. words: as a form and the specification say it. value:
# taken as it stands; else `rule`, a function of what the default hangs on; neither where nothing is
# taken. why: the reason told with an answer; "%s" stands for what the calculation adds. cases:
# OrderedDict of Default by name, where there is more than one rule.
Default = namedtuple("Default", ("words", "value", "rule", "why", "cases"))

UNIT_OF_KIND = {
    "length": "mm",
    "area": "mm2",
    "pressure": "MPa",
    "modulus": "MPa",
    "force": "N",
    "temperature": "degC",
    "angle": "deg",
    "mass": "kg",
    "density": "kg/m3",
    "expansion": "1/K",
    "speed": "1/min",
    "surface_speed": "m/min",
    "duration": "h",
    "power": "W",
    "price": "money/kg",
    "money": "money",
    "ratio": "1",
    "number": "1",
}
# Text of this kind may say gauge or absolute; a wall pressure has no such choice.
STEAM_PRESSURE = "steam_pressure"
LONGEST_LIST = 500
LONGEST_TEXT = 200
# No slip of a unit makes a number so large: it is said in one unit only.
LARGEST_SAID = 1e9


def field(
    name,
    kind,
    meaning,
    default=None,
    lowest=None,
    highest=None,
    choices=(),
    items=(),
    above_lowest=False,
    symbol="",
    required=False,
):
    """A Field with what is seldom needed left to its default.

    A default that takes a value says it in the unit of this kind.
    """
    if default is not None and not default.words:
        default = Default(
            words=_words_of(kind, default),
            value=default.value,
            rule=default.rule,
            why=default.why,
            cases=default.cases,
        )
    return Field(
        name,
        kind,
        meaning,
        default,
        lowest,
        highest,
        choices,
        items,
        above_lowest,
        symbol,
        required,
    )


def taken(entry, case, worked):
    """(value, why) of a Field that was not given.

    case: which of its rules, "" where there is one. worked: sequence of what the rule hangs on.
    """
    default = entry.default.cases[case] if entry.default.cases else entry.default
    return default.value if default.rule is None else default.rule(*worked), default.why


def with_usual(fields, values):
    """A dict with every value of an entry of a list; what is None takes its default, if that is one
    value. fields: sequence of Field. values: the checked entry."""
    filled = {}
    for entry in fields:
        value = values.get(entry.name)
        filled[entry.name] = entry.default.value if value is None and entry.default else value
    return filled


def _words_of(kind, default):
    """The words of a default from its values: "7.0 bar (102 psi)", "plain: spread"."""
    if not default.cases:
        return value_words(kind, default.value)
    said = []
    for case, one in default.cases.items():
        words = one.words or value_words(kind, one.value)
        said.append("%s: %s" % (case, words) if case else words)
    return "; ".join(said)


def value_words(kind, value):
    """A value of that kind as words, metric first."""
    if value is True or value is False:
        return "true" if value else "false"
    if isinstance(value, str):
        return value
    if kind in _WORDS:
        return _WORDS[kind](value)
    unit = UNIT_OF_KIND.get(kind, "1")
    return _number(value) + ("" if unit == "1" else " " + unit)


_WORDS = {
    "length": wording.length,
    "temperature": wording.temperature,
    "mass": wording.mass,
    "force": wording.force,
}


def read_as(entry):
    """The kind by which text for a Field is read: its own, or that of steam."""
    return STEAM_PRESSURE if entry.kind == "pressure" and "gauge" in entry.meaning else entry.kind


def checked(fields, request):
    """A plain dict with every field's value, None where it was not given.

    fields: sequence of Field. request: dict in core units, as JSON gives it.
    Raises InputProblem listing every fault at once, in the order of `fields`.
    """
    faults = []
    values = _checked_object(fields, request, (), faults)
    if faults:
        raise InputProblem(faults)
    return values


def at_most_one(values, names):
    """Raises InputProblem when more than one of `names` is given: they answer the same question."""
    given = [name for name in names if values.get(name) is not None]
    if len(given) > 1:
        raise InputProblem(
            [
                Fault(
                    (name,),
                    "one-of",
                    "%s cannot be given together: each settles the same thing"
                    % " and ".join(given),
                    "keep one of %s and leave the rest out" % ", ".join(names),
                )
                for name in given[1:]
            ]
        )


def _checked_object(fields, request, path, faults):
    values = {}
    if not isinstance(request, dict):
        faults.append(Fault(path, "type", "this must be an object with named values", "send {...}"))
        return values
    for entry in fields:
        values[entry.name] = None
    strays = [name for name in request if name not in values]
    for name in sorted(strays):
        faults.append(
            Fault(
                path + (name,),
                "unknown-field",
                "there is no input called %s here" % shortened(name),
                "leave it out, or use one of: " + ", ".join([entry.name for entry in fields]),
            )
        )
    given = request.get
    for entry in fields:
        name = entry.name
        value = given(name)
        if value is not None:
            values[name] = _checked_value(entry, value, path + (name,), faults)
        elif entry.required:
            faults.append(
                Fault(path + (name,), "required", "%s is needed" % name, "give " + entry.meaning)
            )
    return values


def _checked_value(entry, value, path, faults):
    kind = entry.kind
    if kind == "choice":
        if value not in entry.choices:
            _refuse(faults, path, "choice", value, "use one of: " + ", ".join(entry.choices))
        return value
    if kind == "text":
        longest = entry.highest or LONGEST_TEXT
        if not isinstance(value, str) or len(value) > longest:
            _refuse(faults, path, "text", value, "give text of at most %d letters" % longest)
        return value
    if kind == "flag":
        if value is not True and value is not False:
            _refuse(faults, path, "flag", value, "give true or false")
        return value
    if kind == "object":
        return _checked_object(entry.items, value, path, faults)
    if kind == "records":
        return _checked_list(entry, value, path, faults)
    return _checked_number(entry, value, path, faults)


def _checked_list(entry, value, path, faults):
    if not isinstance(value, list):
        _refuse(faults, path, "list", value, "give a list: " + entry.meaning)
        return []
    if len(value) > (entry.highest or LONGEST_LIST) or len(value) < (entry.lowest or 0):
        faults.append(
            Fault(
                path,
                "list-length",
                "%s has %d %s"
                % (entry.name, len(value), "entry" if len(value) == 1 else "entries"),
                "give %d to %d entries" % (entry.lowest or 0, entry.highest or LONGEST_LIST),
            )
        )
        return []
    if len(entry.items) == 1 and entry.items[0].name == "":
        item = entry.items[0]
        return [_checked_value(item, one, path + (i,), faults) for i, one in enumerate(value)]
    return [_checked_object(entry.items, one, path + (i,), faults) for i, one in enumerate(value)]


def _checked_number(entry, value, path, faults):
    if value is True or value is False or not isinstance(value, (int, float)):
        _refuse(faults, path, "number", value, "give a number in " + unit_words(entry))
        return 0.0
    if not isinstance(value, int) and not math.isfinite(value):
        _refuse(faults, path, "number", value, "give an ordinary number")
        return 0.0
    if entry.kind == "count":
        if value != int(value):
            _refuse(faults, path, "whole-number", value, "give a whole number")
            return 0
        value = int(value)
    else:
        value = float(value)
    low, high = entry.lowest, entry.highest
    too_low = low is not None and (value < low or (entry.above_lowest and value == low))
    if too_low or (high is not None and value > high):
        faults.append(out_of_range(entry, path, value))
    return value


def out_of_range(entry, path, value):
    """The Fault of a number beyond the bounds of its Field, with both measures in its words."""
    if abs(value) >= LARGEST_SAID:
        # A whole number of three hundred digits is none that JSON carries.
        value = float(value)
    likely = likely_unit(entry, value)
    remedy = "give " + range_words(entry)
    if likely:
        remedy += "; did you mean %s %s?" % (_number(value), likely)
    unit = UNIT_OF_KIND.get(entry.kind, "1")
    return Fault(
        path,
        "range",
        "%s is %s" % (_last_name(path), quantity_words(entry.kind, value)),
        remedy,
        value,
        entry.lowest,
        entry.highest,
        unit,
        entry.above_lowest,
        likely,
    )


# For each kind the units that people write a number in without saying so: (unit, core units in
# one, what is added first), the likeliest first.
_OTHER_UNITS = {
    "length": (("in", wording.MM_PER_INCH, 0.0), ("thou", 0.001 * wording.MM_PER_INCH, 0.0)),
    "pressure": (("bar", 0.1, 0.0), ("psi", wording.MPA_PER_PSI, 0.0)),
    "modulus": (("GPa", 1000.0, 0.0), ("psi", wording.MPA_PER_PSI, 0.0)),
    "temperature": (("degF", 1.0 / 1.8, -32.0),),
    "force": (("lbf", wording.N_PER_LBF, 0.0),),
}


def likely_unit(entry, value):
    """The unit in which that number would be within the bounds of a Field, "" for none."""
    if not value > 0.0:
        return ""
    for unit, factor, before in _OTHER_UNITS.get(entry.kind, ()):
        meant = (value + before) * factor
        if (entry.lowest is None or meant >= entry.lowest) and (
            entry.highest is None or meant <= entry.highest
        ):
            return unit
    return ""


def unit_words(entry):
    """The unit of a field as words for a message."""
    unit = UNIT_OF_KIND.get(entry.kind, "1")
    return "whole numbers" if entry.kind == "count" else "plain numbers" if unit == "1" else unit


def range_words(entry):
    """The bounds of a field as words: "10 to 900 mm (0.394 to 35.4 in)"."""
    unit, factor, before = _BESIDE.get(entry.kind, ("", 1.0, 0.0))
    own = UNIT_OF_KIND.get(entry.kind, "1")
    words = _range(entry, entry.lowest, entry.highest, "" if own == "1" else " " + own)
    if not unit:
        return words
    bounds = [
        None if bound is None else bound / factor - before
        for bound in (entry.lowest, entry.highest)
    ]
    return "%s (%s)" % (words, _range(entry, bounds[0], bounds[1], " " + unit))


def _range(entry, low, high, tail):
    more = "more than " if entry.above_lowest else ""
    if low is None and high is None:
        return "any number" + tail
    if high is None:
        return "%s%s%s%s" % (more, bound_words(low, True), tail, "" if more else " or more")
    if low is None:
        return "at most %s%s" % (bound_words(high, False), tail)
    joint = " and at most " if more else " to "
    return more + bound_words(low, True) + joint + bound_words(high, False) + tail


# The other measure that stands beside a kind's own, as in _OTHER_UNITS.
_BESIDE = {
    "length": ("in", wording.MM_PER_INCH, 0.0),
    "pressure": ("psi", wording.MPA_PER_PSI, 0.0),
    "temperature": ("degF", 1.0 / 1.8, -32.0),
    "force": ("lbf", wording.N_PER_LBF, 0.0),
    "mass": ("lb", wording.KG_PER_LB, 0.0),
}


def quantity_words(kind, value):
    """A number as it was given, in the core's unit, the other measure beside it."""
    own = UNIT_OF_KIND.get(kind, "1")
    words = _number(value) + ("" if own == "1" else " " + own)
    if kind not in _BESIDE or abs(value) >= LARGEST_SAID:
        return words
    unit, factor, before = _BESIDE[kind]
    return "%s (%s %s)" % (words, wording.significant(value / factor - before, 4), unit)


def bound_words(value, lowest):
    """A bound as short text, three figures, rounded to its inner side: what is said will do."""
    if value == int(value) and abs(value) < 1e6:
        return str(int(value))
    step = 10.0 ** (math.floor(math.log10(abs(value))) - 2)
    steps = math.ceil(value / step - 1e-9) if lowest else math.floor(value / step + 1e-9)
    return wording.significant(steps * step, 3).rstrip(".")


def _number(value):
    """A bound or a value as short text that both Pythons print alike."""
    if value is None:
        return "none"
    if value == int(value) and abs(value) < 1e15:
        return str(int(value))
    return "%.6g" % value


def shortened(text):
    """A stranger's text at a length that a message bears."""
    return text if len(text) <= 40 else text[:40] + "..."


def _last_name(path):
    names = [shortened(str(step)) for step in path]
    return ".".join(names)


def _refuse(faults, path, code, value, remedy):
    shown = shortened(value) if isinstance(value, str) else "that"
    faults.append(
        Fault(
            path,
            code,
            "%s cannot be %s" % (_last_name(path), shown),
            remedy[:1].lower() + remedy[1:],
        )
    )
