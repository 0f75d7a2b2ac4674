"""Sizes of the route card: what to make, its limits, and a box for what each ring measured."""

from collections.abc import Container, Iterable
from typing import Any

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, PageBreak, Spacer, TableStyle

from ..core.catalogue.inputs_rings import NAMES
from ..named_types import Document
from . import faces, values
from .card_style import CELL, HEADING, SIZE, SMALL, Laid, Marked, paragraph

# Operation and name of a size -> number of a ring -> that ring's own size.
OwnSizes = dict[tuple[str, str], dict[int, Document]]

# Up to here every ring has its box beside the size; beyond, a sheet at the end has them all.
MOST_ON_THE_CARD = 12
# Sizes that are not cut to but come out, and limits of them, over the size, that are wide.
_AIMED_AT = ("free_gap",)
_WIDE = 0.1
# Operations in which every size is measured.
_TO_MEASURE = ("survey", "soak", "inspect")
# Decimals of what was measured, of millimetres.
_MEASURED_PLACES = 3
# A box for a figure written with a pencil.
_BOX: float = 13 * mm
_MAKE: float = 30 * mm
_LABEL: float = 30 * mm
_RING = 12 * mm
_COLUMN = 22 * mm


def least_width() -> float:
    """The narrowest table of sizes that can be read and written in [pt]."""
    return _MAKE + _LABEL + 3 * _BOX


def own_sizes(rings: Iterable[Document]) -> OwnSizes:
    """Operation and name of a size -> number of a ring -> that ring's own size.

    rings: as "rings" of the route card is answered.
    """
    found: OwnSizes = {}
    for ring in rings:
        for size in ring["sizes"]:
            of_size = found.setdefault((size["operation"], size["name"]), {})
            of_size[ring["ring"]] = size
    return found


def _in_box(size: Document, own: Document | None, system: str) -> list[Flowable]:
    """What stands in a ring's box: its own size in small letters where it is to be made otherwise
    than the card says for all, and what was measured of it.
    """
    if own is None:
        return []
    found = []
    if _read(own, system) != _read(size, system):
        found.append(Marked("<br/>".join(_read(own, system)), SMALL))
    if "measured" in own:
        measured = own["measured"]
        shown = values.shown(measured["value"], measured["unit"], system, _MEASURED_PLACES)
        found.append(paragraph(shown.split(" ")[0], SIZE))
    elif found:
        # Room for the pencil under it.
        found.append(Spacer(1, 5 * mm))
    return found


def _read(size: Document, system: str) -> tuple[str, ...]:
    """Lines of a size as it is read: its limits one above the other, or the size alone."""
    if "limits" not in size:
        return (values.shown(size["value"], size["unit"], system).split(" ")[0],)
    low, high = size["limits"]["lower"]["value"], size["limits"]["upper"]["value"]
    return values.limits(low, high, system)[:2]


def sizes(
    operation: str, rows: Iterable[Document], own: OwnSizes, rings: int, system: str, room: float
) -> Laid:
    """A table of the sizes of one operation.

    operation: its key. rows: sizes as the route answers them. own: as of own_sizes. rings: how many
    are measured one by one, 1 for what is measured once. system: metric or inch. room: width there
    is [pt].
    """
    boxes = rings if rings <= MOST_ON_THE_CARD else 1
    per_line = max(1, min(boxes, int((room - _MAKE - _LABEL) / _BOX)))
    # Lines of equal length look like one table, a last line of one box like a mistake.
    lines = -(-boxes // per_line)
    per_line = -(-boxes // lines)
    box = min(24 * mm, (room - _MAKE - _LABEL) / per_line)
    table: list[list[Any]]
    heads = [paragraph("Size", SMALL), paragraph("Make it", SMALL)]
    if boxes == 1:
        word = "Measured" if rings == 1 else "Ring 1"
        table = [heads + [paragraph(word, SMALL)]]
    else:
        words = ["Ring 1"] + [str(number) for number in range(2, per_line + 1)]
        table = [heads + [paragraph(word, SMALL) for word in words]]
    marks: list[tuple[Any, ...]] = []
    for size in rows:
        first = len(table)
        for line in range(lines):
            here = min(per_line, boxes - line * per_line)
            left: list[Any] = ["", ""]
            if line == 0:
                left = [paragraph(size["label"], CELL), make(size, system)]
            of_size = own.get((operation, size["name"]), {})
            table.append(
                left
                + [
                    _small_number(line, i, per_line)
                    + _in_box(size, of_size.get(line * per_line + i + 1), system)
                    for i in range(here)
                ]
            )
            table[-1] += [""] * (per_line - here)
            marks.append(("GRID", (2, first + line), (1 + here, first + line), 0.8, "black"))
        if lines > 1:
            marks += [("SPAN", (k, first), (k, first + lines - 1)) for k in (0, 1)]
        marks.append(("LINEBELOW", (0, first + lines - 1), (1, first + lines - 1), 0.4, "grey"))
    style = TableStyle(
        [
            ("VALIGN", (0, 0), (-1, -1), "MIDDLE"),
            ("VALIGN", (2, 1), (-1, -1), "TOP"),
            ("LEFTPADDING", (0, 0), (1, -1), 0),
            ("LEFTPADDING", (2, 0), (-1, -1), 0.6 * mm),
            ("RIGHTPADDING", (0, 0), (-1, -1), 0.6 * mm),
            ("TOPPADDING", (0, 0), (-1, -1), 0.6 * mm),
            ("BOTTOMPADDING", (0, 0), (-1, -1), 0.6 * mm),
            *marks,
        ]
    )
    widths = [room - _MAKE - box * per_line, _MAKE] + [box] * per_line
    # An empty box has the height of a pencil's figure; one with a ring's own size what that takes.
    bare = 8 * mm if lines > 1 and not own else None
    heights = [None] + [bare] * (len(table) - 1)
    return Laid(table, colWidths=widths, rowHeights=heights, style=style)


def _small_number(line: int, place: int, per_line: int) -> list[Flowable]:
    """The ring's number within its box, where the heading no longer tells it."""
    return [paragraph(str(line * per_line + place + 1), SMALL)] if line else []


def make(size: Document, system: str) -> Marked:
    """What to make a size to: its limits one above the other, or the size alone."""
    if "limits" not in size:
        return paragraph(values.shown(size["value"], size["unit"], system), SIZE)
    low, high = size["limits"]["lower"]["value"], size["limits"]["upper"]["value"]
    upper, lower, unit = values.limits(low, high, system)
    if has_aim(size):
        aim = values.shown(size["value"], size["unit"], system)
        return Marked('%s<br/><font size="8.5">%s to %s</font>' % (aim, lower, upper), SIZE)
    return Marked("%s %s<br/>%s" % (upper, unit, lower), SIZE)


def has_aim(size: Document) -> bool:
    """Whether limits are so far apart that the size to aim at must stand with them."""
    low, high = size["limits"]["lower"]["value"], size["limits"]["upper"]["value"]
    return high - low > _WIDE * size["value"] and size["name"] in _AIMED_AT


def in_line(size: Document, system: str) -> str:
    """A size in a line of text with marks: its label, and its limits or itself."""
    label = faces.marked(size["label"])
    if "limits" not in size:
        return "%s <b>%s</b>" % (label, values.shown(size["value"], size["unit"], system))
    low, high = size["limits"]["lower"]["value"], size["limits"]["upper"]["value"]
    upper, lower, unit = values.limits(low, high, system)
    return "%s <b>%s to %s %s</b>" % (label, lower, upper, unit)


def has_box(operation: Document, size: Document, tools: Container[str]) -> bool:
    """Whether there is a box for what is measured: for sizes of the ring that have limits, and for
    all of an operation that is there to measure; not for what is only set or marked, nor for tools.

    operation, size: as the route answers them. tools: names of the sizes of the tools.
    """
    if size["name"] in NAMES or operation["key"] in _TO_MEASURE:
        return True
    return "limits" in size and size["name"] not in tools


def sheet_of_rings(
    operations: Iterable[Document],
    tools: Container[str],
    own: OwnSizes,
    rings: int,
    system: str,
    wide: float,
) -> list[Flowable]:
    """Flowables of a sheet with a row for every ring and a column for every size that each has.

    operations: as the route answers them. tools: names of the sizes of tools. own: as of
    own_sizes. rings: how many. system: metric or inch. wide: width of the page [pt].
    """
    columns = [
        (operation, size)
        for operation in operations
        if operation["each_ring"]
        for size in operation["sizes"]
        if has_box(operation, size, tools)
    ]
    per_sheet = max(1, int((wide - _RING) / _COLUMN))
    story = []
    for first in range(0, len(columns), per_sheet):
        here = columns[first : first + per_sheet]
        head: list[Any] = [paragraph("Ring", SMALL)]
        for operation, size in here:
            label = "%d %s" % (operation["number"], size["label"])
            head.append([paragraph(label, SMALL), make(size, system)])
        of_rings = [own.get((operation["key"], size["name"]), {}) for operation, size in here]
        width = (wide - _RING) / len(here)
        table = Laid(
            [head]
            + [
                [paragraph(str(ring), CELL)]
                + [
                    _in_box(size, of_size.get(ring), system)
                    for (_, size), of_size in zip(here, of_rings, strict=True)
                ]
                for ring in range(1, rings + 1)
            ],
            colWidths=[_RING] + [width] * len(here),
            repeatRows=1,
            style=TableStyle(
                [
                    ("GRID", (0, 0), (-1, -1), 0.6, "black"),
                    ("VALIGN", (0, 0), (-1, -1), "MIDDLE"),
                    ("LEFTPADDING", (0, 0), (-1, -1), 1 * mm),
                    ("RIGHTPADDING", (0, 0), (-1, -1), 0.6 * mm),
                    ("TOPPADDING", (0, 0), (-1, -1), 1 * mm),
                    ("BOTTOMPADDING", (0, 0), (-1, -1), 1 * mm),
                ]
            ),
        )
        title = "Every ring as it was measured"
        story += [PageBreak(), paragraph(title, HEADING), Spacer(1, 2 * mm), table]
    return story
