"""CSV of an answer, for a spreadsheet: the figures, or any list that the answer holds.

RFC 4180: commas, quotes doubled, lines ended by CRLF; UTF-8 with a byte order mark, so that
spreadsheets take degrees and accents as they are. A text that a spreadsheet would take for a
formula gets an apostrophe.
"""

import csv
import io

MEDIA_TYPE = "text/csv; charset=utf-8"
FIGURES = "figures"
_FIGURE_COLUMNS = ("name", "value", "unit", "low", "high", "symbol", "method")
_FORMULA = ("=", "+", "-", "@", "\t", "\r")


def lists(answer):
    """Names of what an answer can give as a table: its figures and its lists of rows."""
    return [
        name
        for name, entry in answer.items()
        if name == FIGURES or (isinstance(entry, list) and entry and isinstance(entry[0], dict))
    ]


def csv_text(answer, name=FIGURES):
    """The bytes of one list of an answer.

    answer: plain tree, as records.plain gives. name: one of lists(answer).
    """
    if name == FIGURES:
        columns = _FIGURE_COLUMNS
        rows = [{"name": key, **entry} for key, entry in answer[FIGURES].items()]
    else:
        rows = [row for entry in answer[name] for row in _flat(entry)]
        columns = list(dict.fromkeys(column for row in rows for column in row))
    out = io.StringIO(newline="")
    writer = csv.writer(out)
    writer.writerow(columns)
    for row in rows:
        writer.writerow([_cell(row.get(column, "")) for column in columns])
    return b"\xef\xbb\xbf" + out.getvalue().encode("utf-8")


def _flat(entry, before=""):
    """One row, or one for each entry of the first list of objects inside."""
    row = {}
    inner = []
    for name, value in entry.items():
        column = before + name
        if isinstance(value, dict):
            row.update(_quantity(value, column))
        elif isinstance(value, list) and value and isinstance(value[0], dict):
            inner.append((column, value))
        elif isinstance(value, list):
            row[column] = "; ".join(str(one) for one in value)
        else:
            row[column] = value
    if not inner:
        return [row]
    column, entries = inner[0]
    return [{**row, **more} for one in entries for more in _flat(one, column + " ")]


def _quantity(value, column):
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


def _cell(value):
    if isinstance(value, bool):
        return "yes" if value else "no"
    if value is None:
        return ""
    if isinstance(value, str) and value.startswith(_FORMULA):
        return "'" + value
    return value
