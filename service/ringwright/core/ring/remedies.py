"""Remedies that were tried before they are said: which input to what value clears a finding.

A finding that is not good has changes to try, likeliest first. The first that clears it, and stops
nothing that was not stopped already, is its remedy: in words, and as inputs (`apply`). Where none
does, the words say so. What the hand mends, or only a measure tells, is not tried.
"""

from collections import OrderedDict, namedtuple

from ..fields import UNIT_OF_KIND
from ..problems import CoreProblem
from ..records import GOOD, STOP, Choice, Finding
from ..wording import in_a_sentence

NOT_CLEARED = "No one change clears this without another stop. What helps: "
LEFT_OUT = "left out, so that it is chosen"

# What came of changed inputs: checks not good, checks that stop, what was settled.
_Outcome = namedtuple("_Outcome", ("open", "stops", "settled"))


def tried(values, rows, options, judge, fields, words):
    """List of Finding, each that is not good with the remedy that clears it, or the word that none
    does.

    values: checked inputs, a dict. rows: list of Finding that came of them. options: function of a
    Finding to a list of OrderedDict (input -> value, None to leave it out), or None where the hand
    mends it. judge: function of values to (list of Finding, what was settled). fields: name ->
    Field. words: function of (input, value, what was settled) to text.
    """
    stops = [row.check for row in rows if row.outcome == STOP]
    known = {}
    told = []
    for row in rows:
        changes = None if row.outcome == GOOD else options(row)
        if changes is None:
            told.append(row)
            continue
        for asked in changes:
            change = _given(values, asked)
            if not _may_be_given(values, change, fields):
                continue
            key = repr(list(change.items()))
            if key not in known:
                known[key] = _outcome(values, change, judge)
            came = known[key]
            if came is None or row.check in came.open:
                continue
            if all([check in stops for check in came.stops]):
                said = [words(name, change[name], came.settled) for name in change]
                told.append(_with(row, _sentence(said), applied(change, fields)))
                break
        else:
            helps = row.remedy[:1].lower() + row.remedy[1:]
            told.append(_with(row, NOT_CLEARED + helps, ()))
    return told


def applied(change, fields):
    """Tuple of Choice: a change as inputs to give, None to leave out.

    change: OrderedDict of input -> value. fields: name -> Field.
    """
    listing = []
    for name, value in change.items():
        kind = fields[name].kind
        unit = UNIT_OF_KIND.get(kind, "1" if kind == "count" else "")
        why = LEFT_OUT if value is None else "clears it"
        listing.append(Choice(name, value, unit, why))
    return tuple(listing)


def of(row, *pairs):
    """The Choices of a remedy that was worked out, not tried. pairs: (input, value, unit)."""
    return _with(row, row.remedy, tuple([Choice(n, v, u, "clears it") for n, v, u in pairs]))


def plain_words(name, value):
    """A change in words: "leave the end kerf out", "take grey iron as ring material"."""
    called = name.replace("_", " ")
    if value is None:
        return "leave the %s out" % called
    return "take %s as %s" % (in_a_sentence(str(value)), called)


def _with(row, remedy, apply):
    return Finding(
        check=row.check,
        outcome=row.outcome,
        value=row.value,
        limit=row.limit,
        why=row.why,
        remedy=remedy,
        apply=apply,
    )


def _sentence(said):
    text = " and ".join(said)
    return text[:1].upper() + text[1:] + "."


def _given(values, change):
    """A change without what is left out already."""
    pairs = [pair for pair in change.items() if not (pair[1] is values.get(pair[0]) is None)]
    return OrderedDict(pairs)


def _may_be_given(values, change, fields):
    """Whether a change changes anything, and keeps the bounds of its inputs."""
    other = False
    for name, value in change.items():
        if name not in fields:
            return False
        entry = fields[name]
        if value is not None and entry.highest is not None:
            if not entry.lowest <= value <= entry.highest:
                return False
        other = other or values.get(name) != value
    return other


def _outcome(values, change, judge):
    asked = dict(values)
    asked.update(change)
    try:
        rows, settled = judge(asked)
    except CoreProblem:
        return None
    return _Outcome(
        open=[row.check for row in rows if row.outcome != GOOD],
        stops=[row.check for row in rows if row.outcome == STOP],
        settled=settled,
    )


def change(*pairs):
    """An OrderedDict of (input, value) pairs."""
    return OrderedDict(pairs)
