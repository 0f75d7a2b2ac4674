"""The inputs of every calculation as plain data: a form is built from the table that checks it.

The app's build runs `described` under the phone's own Python and keeps the result; nothing in the
app repeats a limit, a choice or a default.
"""

from collections import OrderedDict

from .fields import UNIT_OF_KIND


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
        row = OrderedDict((("name", entry.name), ("kind", entry.kind), ("meaning", entry.meaning)))
        if entry.kind in UNIT_OF_KIND:
            row["unit"] = UNIT_OF_KIND[entry.kind]
        for key, value in (
            ("default", entry.default),
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
