"""What calculations answer with, declared once: every figure, list and check by name.

A figure is declared with its kind (which settles its unit), symbol, label, meaning, methods, the
symbols its working shows and the group it stands in. From these tables come the answer itself, the
response schemas of the specification, the headings of CSV, the app's labels and groups and the
names that it may use. The figures of a room are in the file of its name; `checks.py` holds the
checks, `lists.py` the columns of lists. A calculation hands over values by name and the numbers
that stand for symbols: `figures_of` makes the rest.
"""

from collections import OrderedDict, namedtuple

from ..fields import UNIT_OF_KIND
from ..records import Figure

# Kinds that no input has, with their units.
UNIT = dict(UNIT_OF_KIND)
UNIT.update(
    {
        "count": "1",
        "curvature": "1/mm",
        "distance": "m",
        "enthalpy": "kJ/kg",
        "flow": "kg/h",
        "minutes": "min",
        "moment": "N mm",
        "specific_volume": "m3/kg",
        "velocity": "m/s",
    }
)

# A figure as declared. methods: keys, the first one taken where a calculation names none. shows: for
# each method the (symbol, unit) pairs of its working; one without a number is left out.
Declared = namedtuple(
    "Declared",
    ("name", "kind", "unit", "symbol", "label", "meaning", "methods", "shows", "group"),
)
# A figure in an answer: Declared, and whether it is always there.
Told = namedtuple("Told", ("declared", "always"))
# What one calculation answers with. figures: sequence of Told, in the order shown. lists: sequence
# of Column (lists.py). parts: name -> Answer, for what holds figures of its own. checks: sequence of
# Check that stand in no room of checks.py. rows: of
# each figure name, unit, symbol, first method and what that shows, Declared: for `figures_of`.
Answer = namedtuple("Answer", ("figures", "lists", "parts", "checks", "rows"))
# A column of a list, or a list itself. kind: of a Quantity as in UNIT, or text, count, plain (a
# bare number), flag, figure (its Declared in `items`), series (its kind in `items`), texts, object,
# records, map (`items` are those of each entry, whatever its name).
Column = namedtuple("Column", ("name", "kind", "meaning", "items", "always"))
NESTED = ("records", "object", "map")
# A check as declared: its key, the room that makes it and what it judges.
Check = namedtuple("Check", ("key", "room", "judges"))


def figure(name, kind, symbol, label, methods, shows="", group="", meaning="", symbols=None):
    """A Declared.

    methods: one key, or several with commas between. shows: symbols with commas between, each a key
    of `symbols` (symbol -> kind); parted by bars where each method shows its own. meaning: where
    the label does not say it all.
    """
    keys = _names(methods)
    pairs = []
    for part in shows.split("|"):
        pairs.append(tuple([(shown, UNIT[symbols[shown]]) for shown in _names(part)]))
    if len(pairs) == 1:
        pairs = pairs * len(keys)
    if len(pairs) != len(keys):
        raise ValueError(name)
    return Declared(
        name=name,
        kind=kind,
        unit=UNIT[kind],
        symbol=symbol,
        label=label,
        meaning=meaning,
        methods=keys,
        shows=tuple(pairs),
        group=group,
    )


def table(entries, symbols):
    """name -> Declared, in order. entries: sequence of the arguments of `figure`."""
    found = OrderedDict()
    for entry in entries:
        row = list(entry) + [""] * (8 - len(entry))
        found[entry[0]] = figure(*(row + [symbols]))
    return found


def answer(names, tables, lists=(), parts=None, checks=()):
    """An Answer.

    names: of its figures, with spaces between, in the order shown; one that is not always there
    ends in "?". tables: those the names are looked up in. lists: sequence of Column. parts: name ->
    Answer, or pairs of them. checks: sequence of Check.
    """
    told = []
    for name in names.split():
        always = not name.endswith("?")
        key = name.rstrip("?")
        for one in tables:
            if key in one:
                told.append(Told(one[key], always))
                break
        else:
            raise KeyError(key)
    rows = []
    for one, _ in told:
        rows.append((one.name, one.unit, one.symbol, one.methods[0], one.shows[0], one))
    return Answer(
        figures=tuple(told),
        lists=tuple(lists),
        parts=OrderedDict(parts or ()),
        checks=tuple(checks),
        rows=tuple(rows),
    )


NOTHING = answer("", ())


def figures_of(answered, values, given, methods=None):
    """OrderedDict of Figure, in the order declared.

    answered: Answer. values: name -> number in the unit declared, or (low, usual, high) of a figure
    that rests on a coefficient; None for what is not there. given: symbol -> number, for the
    workings. methods: name -> key, where the first one declared is not the one.
    """
    out = OrderedDict()
    get = values.get
    methods = methods or {}
    for name, unit, symbol, method, shown, declared in answered.rows:
        value = get(name)
        if value is None:
            continue
        if name in methods:
            method = methods[name]
            shown = declared.shows[declared.methods.index(method)]
        working = (shown, given) if shown else ()
        if type(value) is tuple:
            low, value, high = value
            out[name] = Figure(value, unit, symbol, method, working, low, high)
        else:
            out[name] = Figure(value, unit, symbol, method, working, None, None)
    return out


def all_figures(answers):
    """name -> Declared of every figure in a sequence of Answer, parts and rows of lists included."""
    found = OrderedDict()
    for one in answers:
        for declared, _ in one.figures:
            found[declared.name] = declared
        _figures_of_rows(found, one.lists)
        found.update(all_figures(one.parts.values()))
    return found


def _figures_of_rows(found, columns):
    for column in columns:
        if column.kind == "figure":
            found[column.items.name] = column.items
        elif column.kind in NESTED:
            _figures_of_rows(found, column.items)


def told(declared, value, given, method=None):
    """One Figure, of a list's row; value and given as in `figures_of`, method: a key or None."""
    at = 0 if method is None else declared.methods.index(method)
    low = high = None
    if type(value) is tuple:
        low, value, high = value
    unit, symbol, key = declared.unit, declared.symbol, declared.methods[at]
    return Figure(
        value=value,
        unit=unit,
        symbol=symbol,
        method=key,
        working=(declared.shows[at], given),
        low=low,
        high=high,
    )


def _names(text):
    return tuple([one.strip() for one in text.split(",") if one.strip()])
