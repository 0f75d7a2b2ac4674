"""Answers as CSV, for spreadsheets: one address for each calculation of the table."""

from functools import partial

from ..core.calculations import Calculation
from ..core.catalogue import all_figures
from ..core.catalogue.inputs import nothing
from ..core.fields import field
from ..core.problems import Fault, InputProblem
from ..export import csv_text
from ..named_types import Table, Values
from . import answers, costs
from .calculations import OPTIONS, UNITS_OF_DRAWING
from .files import File, Files, FileView, Typed

_UNITS = next(one for one in OPTIONS if one.name == "units")
_LIST = field(
    "list",
    "text",
    "which list of the answer: figures, findings, tools, stock.sets ...",
    nothing("the first"),
)
_TABLE_OPTIONS = (_UNITS, _LIST)


def add_tables(files: Files, table: Table) -> None:
    """Adds to `files` (Files) the addresses of every calculation that answers with more than
    drawings."""
    for calculation in table.values():
        if any(entry.name == UNITS_OF_DRAWING for entry in calculation.fields):
            continue
        files.add(
            "/%s.csv" % calculation.name,
            calculation.name + "-csv",
            calculation,
            _TABLE_OPTIONS,
            csv_text.MEDIA_TYPE,
            calculation.summary + " (CSV)",
            _csv(calculation),
            partial(costs.of, calculation.name),
            "table_of_" + calculation.name,
        )


def _csv(calculation: Calculation) -> FileView:
    def view(values: Values, typed: Typed) -> File:
        options = {entry.name: values.pop(entry.name) for entry in _TABLE_OPTIONS}
        asked = {**dict.fromkeys(one.name for one in calculation.fields), **values}
        return _table(calculation, asked, options)

    return view


def _table(calculation: Calculation, values: Values, options: Values) -> File:
    """(CSV of the list that was asked for, name of the file)."""
    answer = answers.shown(calculation.run(values), options["units"] or answers.METRIC, False)
    labels = {name: one.label for name, one in all_figures([calculation.answer]).items()}
    found = csv_text.tables(answer, labels)
    name = options["list"] or next(iter(found), csv_text.FIGURES)
    if name not in found:
        raise InputProblem(
            [
                Fault(
                    ("list",),
                    "choice",
                    "%s has no such list" % calculation.name,
                    "use one of: " + ", ".join(found),
                )
            ]
        )
    return csv_text.csv_text(
        found[name], csv_text.headings(calculation.answer, name)
    ), "%s-%s.csv" % (calculation.name, name)
