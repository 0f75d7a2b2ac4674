"""Inputs are declared in the files beside this one, by subject: inputs_ring.py and its fellows.

A name stands once, with one meaning, one kind, one pair of bounds and one default, wherever it is
used. A calculation only lists names (`listed`), and asks for what was not given by name
(`Chooser`). Entries of lists have small tables of their own. Here is what the tables are made of.
"""

from collections import OrderedDict

from ..fields import UNIT_OF_KIND, Default, taken
from ..records import Choice
from ..shop_sizes import in_inches
from ..wording import decimal


def table(*fields):
    """An OrderedDict: name -> Field."""
    return OrderedDict([(entry.name, entry) for entry in fields])


def listed(tables, *names):
    """The Fields of those names, in that order, as a tuple. tables: sequence of tables."""
    return tuple([_find(tables, name) for name in names])


def names(fields):
    """The names of a sequence of Field, in order."""
    return [entry.name for entry in fields]


def _find(tables, name):
    for one in tables:
        if name in one:
            return one[name]
    raise KeyError(name)


# What a choice is counted or measured in: text and flags in nothing.
_UNIT = {"count": "1", "choice": "", "text": "", "flag": "", "records": "", "object": ""}
_UNIT.update(UNIT_OF_KIND)
_MADE = []


def _together(tables):
    """The tables as one dict, made once for each set of them that is asked for."""
    for asked, declared in _MADE:
        if len(asked) == len(tables) and all([a is b for a, b in zip(asked, tables)]):
            return declared
    declared = {}
    for one in reversed(tables):
        declared.update(one)
    _MADE.append((tables, declared))
    return declared


class Chooser:
    """Hands out given values, and notes each default with its reason.

    values: checked, None or absent where not given. tables: where their names are declared.
    """

    def __init__(self, values, *tables):
        self.values = values
        self.chosen = []
        self._declared = _together(tables)

    def __call__(self, name, *worked, case="", of=""):
        """The value of an input. worked: what its rule hangs on. case: which of its rules.

        of: what "%s" in the reason stands for.
        """
        given = self.values.get(name)
        if given is not None:
            return given
        value, why = taken(self._declared[name], case, worked)
        if self.values.get("inch_sizes"):
            value = in_inches(name, value)
        self.note(name, value, why % of if of else why)
        return value

    def note(self, name, value, why):
        """Notes that `value` was taken for an input."""
        self.chosen.append(Choice(name, value, _UNIT[self._declared[name].kind], why))

    def why(self, name, case=""):
        """The reason that belongs to a rule of an input."""
        default = self._declared[name].default
        return (default.cases[case] if default.cases else default).why


def fixed(value, why="", words=""):
    """A default that is a value; its words are made from it, unless a value has better ones."""
    return Default(words=words, value=value, rule=None, why=why, cases=None)


def rule(words, function, why=""):
    """A default that `function` works out of what it hangs on."""
    return Default(words=words, value=None, rule=function, why=why or words, cases=None)


def worked(words, why=""):
    """A default that a calculation works out; it hands the value over."""
    return Default(words=words, value=None, rule=_as_given, why=why or words, cases=None)


def nothing(words):
    """Nothing is taken; the words say what becomes of it."""
    return Default(words=words, value=None, rule=None, why="", cases=None)


def cases(*rows):
    """A default with a rule for each case: (name, Default) pairs, "" for the usual one."""
    return Default(words="", value=None, rule=None, why="", cases=OrderedDict(rows))


def share(of, part, why="", plus=0.0, unit="mm"):
    """A default that is a share of another input, with something added.

    of: what it is a share of, in words: "the bore". part [1]. plus: in `unit`.
    """
    words = "%s %% of %s" % (_short(100.0 * part), of)
    if part >= 1.0:
        words = "%s times %s" % (_short(part), of)
    if plus:
        words = "%s %s and %s" % (_short(plus), unit, words)
    return rule(words, lambda whole: plus + part * whole, why)


def part_of(of, over, why=""):
    """A default that is a whole-numbered part of another input: "the bore/12"."""
    return rule("%s/%d" % (of, over), lambda whole: whole * (1.0 / over), why)


def steps(of, rows, why):
    """A length that goes by another length, in steps: (below, length) pairs, None for all beyond.

    of: what it goes by, in words: "the diameter".
    """
    words = []
    for below, size in rows:
        reach = "beyond" if below is None else "below " + _short(below)
        words.append("%s %s" % (_short(size), reach))

    def size_of(whole):
        return next(size for below, size in rows if below is None or whole < below)

    return rule("mm by %s: %s" % (of, ", ".join(words)), size_of, why)


def _as_given(value):
    return value


def _short(number):
    """A number without zeros at its end."""
    text = decimal(number, 3).rstrip("0")
    return text[:-1] if text.endswith(".") else text
