"""Sizes of the route card: what to make, its limits, and a box for what each ring measured."""

from collections.abc import Container, Iterable, Sequence

from reportlab.lib.units import mm

from ..core.catalogue.inputs_rings import NAMES
from ..core.drawing import words
from ..named_types import Document
from . import values
from .page_layout import ALL, Block, Cell, NewPage, Pad, Row, Rule, Space, Stack, Table
from .page_text import CELL, HEADING, SIZE, SMALL, UNDER_SIZE, Bold, Text, fitted

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
# Least height of a box, to write in.
_PENCIL = 8 * mm
_MAKE: float = 30 * mm
_LABEL: float = 30 * mm
_RING = 12 * mm
_COLUMN = 22 * mm
_PAD = Pad(right=0.6 * mm, above=0.6 * mm, below=0.6 * mm)
_BOX_PAD = _PAD._replace(left=0.6 * mm)
_GRID = Rule(ALL, 0.8)
_UNDER = Rule("b", 0.4, 0.5)


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


def _in_box(size: Document, own: Document | None, system: str, room: float) -> list[Block]:
    """What stands in a ring's box: its own size in small letters where it is to be made otherwise
    than the card says for all, and what was measured of it. room: width of the box [pt].
    """
    if own is None:
        return []
    found: list[Block] = []
    if _read(own, system) != _read(size, system):
        found += [Text(line, SMALL) for line in _read(own, system)]
    if "measured" in own:
        measured = own["measured"]
        shown = values.shown(measured["value"], measured["unit"], system, _MEASURED_PLACES)
        found.append(fitted(shown.split(" ")[0], SIZE, room - _BOX_PAD.left - _BOX_PAD.right))
    elif found:
        # Room for the pencil under it.
        found.append(Space(5 * mm))
    return found


def _read(size: Document, system: str) -> tuple[str, ...]:
    """Lines of a size as it is read: its limits one above the other, or the size alone."""
    if "limits" not in size:
        return (alone(size, system).split(" ")[0],)
    low, high = size["limits"]["lower"]["value"], size["limits"]["upper"]["value"]
    return values.limits(low, high, system)[:2]


def sizes(
    operation: str, rows: Iterable[Document], own: OwnSizes, rings: int, system: str, room: float
) -> Stack:
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
    label = room - _MAKE - box * per_line
    first = "Measured" if rings == 1 else "Ring 1"
    heads = [_head("Size", _PAD), _head("Make it", _PAD), _head(first, _BOX_PAD)]
    heads += [_head(str(number), _BOX_PAD) for number in range(2, per_line + 1)]
    table = [Row([label, _MAKE] + [box] * per_line, heads)]
    for size in rows:
        of_size = own.get((operation, size["name"]), {})
        cells = []
        for ring in range(1, boxes + 1):
            # The ring's number stands within its box where the heading no longer tells it.
            number = [Text(str(ring), SMALL)] if ring > per_line else []
            held = number + _in_box(size, of_size.get(ring), system, box)
            cells.append(Cell(blocks=held, pad=_BOX_PAD, rules=(_GRID,)))
        left = [
            _beside([Text(size["label"], CELL)]),
            _beside(make(size, system)),
        ]
        if lines == 1:
            table.append(Row([label, _MAKE] + [box] * boxes, left + cells))
            continue
        parts = [cells[at : at + per_line] for at in range(0, boxes, per_line)]
        within = Cell(blocks=[Row([box] * len(part), part, _PENCIL) for part in parts])
        table.append(Row([label, _MAKE, box * per_line], [*left, within]))
    return Stack(table)


def _head(word: str, pad: Pad) -> Cell:
    return Cell(blocks=[Text(word, SMALL)], pad=pad)


def _beside(blocks: Sequence[Block]) -> Cell:
    """What a size is and is made to, beside its boxes."""
    return Cell(blocks=blocks, pad=_PAD, middle=True, rules=(_UNDER,))


def make(size: Document, system: str) -> list[Block]:
    """What to make a size to: its limits one above the other, or the size alone."""
    if "limits" not in size:
        return [Text(alone(size, system), SIZE)]
    low, high = size["limits"]["lower"]["value"], size["limits"]["upper"]["value"]
    upper, lower, unit = values.limits(low, high, system)
    if has_aim(size):
        aim = values.shown(size["value"], size["unit"], system)
        return [Text(aim, SIZE), Text("%s to %s" % (lower, upper), UNDER_SIZE)]
    return [Text("%s %s" % (upper, unit), SIZE), Text(lower, SIZE)]


def alone(size: Document, system: str) -> str:
    """A size without its limits; a bore as fine as its gauge reads."""
    places = words.GAUGED if size["name"] == "bore" else None
    return values.shown(size["value"], size["unit"], system, places)


def has_aim(size: Document) -> bool:
    """Whether limits are so far apart that the size to aim at must stand with them."""
    low, high = size["limits"]["lower"]["value"], size["limits"]["upper"]["value"]
    return high - low > _WIDE * size["value"] and size["name"] in _AIMED_AT


def in_line(size: Document, system: str) -> list[str]:
    """A size in a line, as parts of a text: its label, and its limits or itself."""
    said = alone(size, system)
    if "limits" in size:
        low, high = size["limits"]["lower"]["value"], size["limits"]["upper"]["value"]
        upper, lower, unit = values.limits(low, high, system)
        said = "%s to %s %s" % (lower, upper, unit)
    return [size["label"] + " ", Bold(said)]


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
) -> list[Block]:
    """Blocks of a sheet with a row for every ring and a column for every size that each has.

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
    story: list[Block] = []
    for first in range(0, len(columns), per_sheet):
        here = columns[first : first + per_sheet]
        widths = [_RING] + [(wide - _RING) / len(here)] * len(here)
        head: list[Sequence[Block]] = [[Text("Ring", SMALL)]]
        for operation, size in here:
            label = "%d %s" % (operation["number"], size["label"])
            head.append([Text(label, SMALL), *make(size, system)])
        of_rings = [own.get((operation["key"], size["name"]), {}) for operation, size in here]
        rows: list[Block] = []
        for ring in range(1, rings + 1):
            held: list[Sequence[Block]] = [[Text(str(ring), CELL)]]
            for (_, size), of_size in zip(here, of_rings, strict=True):
                held.append(_in_box(size, of_size.get(ring), system, widths[1]))
            rows.append(_of_sheet(widths, held))
        title = Text("Every ring as it was measured", HEADING)
        story += [NewPage(), title, Space(2 * mm), Table(_of_sheet(widths, head), rows)]
    return story


def _of_sheet(widths: Sequence[float], held: Sequence[Sequence[Block]]) -> Row:
    pad = Pad(left=1 * mm, right=0.6 * mm, above=1 * mm, below=1 * mm)
    rules = (Rule(ALL, 0.6),)
    cells = [Cell(blocks=blocks, pad=pad, middle=True, rules=rules) for blocks in held]
    return Row(widths, cells)
