"""Inputs, figures, lists and checks of every calculation as plain data: a form is built from the
table that checks it, and what is shown from the table that names it.

The app's build runs `described` and `vocabulary` under the phone's own Python and keeps the result;
nothing in the app repeats a limit, a choice, a default, a label or a group.
"""

from collections import OrderedDict

from .catalogue import all_figures
from .catalogue.checks import all_checks
from .catalogue.making import TOOL_SIZES
from .fields import UNIT_OF_KIND, read_as


def described(calculations):
    """An OrderedDict: calculation name -> {"summary", "fields": [...]}.

    calculations: mapping of name to Calculation, as in calculations.py. What a Field
    leaves empty is left out.
    """
    tables = OrderedDict()
    for name, calculation in calculations.items():
        tables[name] = OrderedDict(
            (("summary", calculation.summary), ("fields", described_fields(calculation.fields)))
        )
    return tables


def described_fields(fields):
    """A sequence of Field as a list of OrderedDict, entries of lists and objects included."""
    rows = []
    for entry in fields:
        row = OrderedDict(
            (("name", entry.name), ("kind", read_as(entry)), ("meaning", entry.meaning))
        )
        if entry.kind in UNIT_OF_KIND:
            row["unit"] = UNIT_OF_KIND[entry.kind]
        for key, value in (
            ("default", entry.default.words if entry.default else ""),
            ("usual", _usual_number(entry)),
            ("lowest", entry.lowest),
            ("highest", entry.highest),
            ("choices", list(entry.choices)),
            ("items", described_fields(entry.items)),
            ("above_lowest", entry.above_lowest),
            ("symbol", entry.symbol),
            ("required", entry.required),
        ):
            if value is not None and value is not False and value != "" and value != []:
                row[key] = value
        rows.append(row)
    return rows


def _usual_number(entry):
    """The number that an input takes where none is given, None where a rule works it out."""
    value = entry.default.value if entry.default else None
    return None if isinstance(value, (str, bool)) else value


def vocabulary(calculations):
    """The names that answers may hold: an OrderedDict with "figures", "lists", "checks" and
    "tool_sizes".

    calculations: mapping of name to Calculation. "figures" maps a name to its label, group and
    symbol; the others are sequences of names.
    """
    answers = [calculation.answer for calculation in calculations.values()]
    figures = OrderedDict()
    for name, declared in all_figures(answers).items():
        figures[name] = OrderedDict(
            (("label", declared.label), ("group", declared.group), ("symbol", declared.symbol))
        )
    lists = []
    for one in answers:
        for listed in _listed(one):
            if listed not in lists:
                lists.append(listed)
    return OrderedDict(
        (
            ("figures", figures),
            ("lists", lists),
            ("checks", list(all_checks(answers))),
            ("tool_sizes", list(TOOL_SIZES)),
        )
    )


def _listed(answered):
    names = [column.name for column in answered.lists]
    for name, part in answered.parts.items():
        names.append(name)
        names += _listed(part)
    return names
