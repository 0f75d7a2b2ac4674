"""CSV of an answer, for a spreadsheet: the figures, or any list that the answer holds.

RFC 4180: commas, quotes doubled, lines ended by CRLF; UTF-8 with a byte order mark, so that
spreadsheets take degrees and accents as they are. A text that a spreadsheet would take for a
formula gets an apostrophe.
"""

import csv
import io
from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from ..core.catalogue import Answer, Column
from ..named_types import Document

# A row of a table: column -> what stands in its cell.
Row = dict[str, Any]

PLAIN_TYPE = "text/csv"
MEDIA_TYPE = PLAIN_TYPE + "; charset=utf-8"
FIGURES = "figures"
CAUTIONS = "cautions"
_FIGURE_COLUMNS = ("name", "value", "unit", "low", "high", "symbol", "method", "label")
# Kinds of column without a unit.
_BARE = ("text", "flag", "count", "plain", "plain_or_none", "texts", "anything")
_FORMULA = ("=", "+", "-", "@", "\t", "\r")


def tables(answer: Document, labels: Mapping[str, str] | None = None) -> dict[str, list[Row]]:
    """Every table of an answer, by name: "figures", "tools", and of a whole job "stock.sets".

    answer: plain tree, as records.plain gives. labels: name of a figure -> what it is called.
    Result: dict of name to list of rows, none empty.
    A job's "figures" are those of all its parts, each with the name of its part before its own.
    """
    found = {}
    labels = labels or {}
    # What tells of figures has a list of that name, a table like any other.
    worked = answer.get(FIGURES, {})
    figures = _figures(worked, labels) if isinstance(worked, dict) else []
    for name, entry in answer.items():
        if name != FIGURES and isinstance(entry, dict) and FIGURES in entry:
            part = tables(entry, labels)
            figures += [
                {**row, "name": "%s.%s" % (name, row["name"])} for row in part.get(FIGURES, [])
            ]
            found.update(("%s.%s" % (name, inner), rows) for inner, rows in part.items())
        elif name != FIGURES and isinstance(entry, dict) and entry:
            found[name] = _flat(entry)
        elif isinstance(entry, list) and entry and isinstance(entry[0], dict):
            found[name] = [row for one in entry for row in _flat(one)]
    return {FIGURES: figures, **found} if figures else found


def headings(answered: Answer, name: str) -> list[str]:
    """The columns of a table as its calculation declares them, whichever of them are filled.

    answered: core catalogue.Answer. name: as in `tables`. Empty for what no calculation declares.
    """
    part, dot, inner = name.partition(".")
    if dot and part in answered.parts:
        return headings(answered.parts[part], inner)
    for column in answered.lists:
        if column.name == name and column.kind in ("records", "object"):
            return _headings(column.items, "")
    return list(_FIGURE_COLUMNS) if name == FIGURES else []


def _headings(columns: Iterable[Column], before: str) -> list[str]:
    """As `_flat` names them: what the rows of a list inside add stands last."""
    own, inner = [], None
    for column in columns:
        name = before + column.name
        if column.kind == "records" and column.name != CAUTIONS:
            inner = inner or _headings(column.items, name + " ")
        elif column.kind == "object":
            own += _headings(column.items, name + " ")
        elif column.kind in _BARE or column.name == CAUTIONS:
            own.append(name)
        elif column.kind != "map":
            own += [name, name + " unit"]
    return own + (inner or [])


def csv_text(rows: Sequence[Row], columns: Iterable[str] = ()) -> bytes:
    """The bytes of a table: one of those that `tables` gives.

    columns: those to begin with, filled or not, as `headings` gives them.
    """
    columns = list(dict.fromkeys((*columns, *(column for row in rows for column in row))))
    out = io.StringIO(newline="")
    writer = csv.writer(out)
    writer.writerow(columns)
    for row in rows:
        writer.writerow([_cell(row.get(column, "")) for column in columns])
    return b"\xef\xbb\xbf" + out.getvalue().encode("utf-8")


def _figures(figures: Mapping[str, Document], labels: Mapping[str, str]) -> list[Row]:
    return [
        {column: figure.get(column, "") for column in _FIGURE_COLUMNS}
        | {"name": name, "label": labels.get(name, "")}
        for name, figure in figures.items()
    ]


def _flat(entry: Document, before: str = "") -> list[Row]:
    """The rows of an entry: one, or one for each point of the series or each entry of the first
    list of objects inside. Cautions stand in one cell, so that none is lost and none makes a row.
    """
    row = {}
    inner = []
    points = []
    for name, value in entry.items():
        column = before + name
        if isinstance(value, dict) and "values" in value:
            points.append(
                [{column: one, column + " unit": value["unit"]} for one in value["values"]]
            )
        elif isinstance(value, dict):
            row.update(_quantity(value, column))
        elif name == CAUTIONS:
            row[column] = " ".join(one["text"] for one in value)
        elif isinstance(value, list) and value and isinstance(value[0], dict):
            inner.append((column, value))
        elif isinstance(value, list):
            row.update({column: "; ".join(str(one) for one in value)} if value else {})
        else:
            row[column] = value
    if points:
        return [
            row | {name: cell for pair in at for name, cell in pair.items()}
            for at in zip(*points, strict=True)
        ]
    if not inner:
        return [row]
    column, entries = inner[0]
    return [{**row, **more} for one in entries for more in _flat(one, column + " ")]


def _quantity(value: Document, column: str) -> Row:
    """A value with its unit in two columns, anything else name by name."""
    if set(value) >= {"value", "unit"}:
        return {column: value["value"], column + " unit": value["unit"]}
    found = {}
    for name, one in value.items():
        if isinstance(one, dict):
            found.update(_quantity(one, "%s %s" % (column, name)))
        else:
            found["%s %s" % (column, name)] = one
    return found


def _cell(value: Any) -> Any:
    if isinstance(value, bool):
        return "yes" if value else "no"
    if value is None:
        return ""
    if isinstance(value, str) and value.startswith(_FORMULA):
        return "'" + value
    return value
