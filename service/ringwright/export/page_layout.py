"""How a printed card is laid out: blocks one above the other, in rows of cells, on pages."""

from collections.abc import Iterable, Sequence
from typing import NamedTuple, Protocol

from . import page_ink
from .page_ink import Ink

# Heights that differ by less are the same: sums of many [pt].
_HAIR = 1e-6


class Block(Protocol):
    """What has a height in a width, and can be drawn in it from the top downwards [pt]."""

    def height(self, wide: float) -> float: ...

    def draw(self, ink: Ink, x: float, top: float, wide: float) -> None: ...


class Space:
    """Nothing, of a height [pt]."""

    def __init__(self, high: float) -> None:
        self.high = high

    def height(self, wide: float) -> float:
        return self.high

    def draw(self, ink: Ink, x: float, top: float, wide: float) -> None:
        pass


class Stack:
    """Blocks one above the other, on one page where that has room for all."""

    def __init__(self, blocks: Sequence[Block]) -> None:
        self.blocks = blocks

    def height(self, wide: float) -> float:
        return sum([block.height(wide) for block in self.blocks])

    def draw(self, ink: Ink, x: float, top: float, wide: float) -> None:
        for block in self.blocks:
            block.draw(ink, x, top, wide)
            top -= block.height(wide)


ALL = "all"


class Rule(NamedTuple):
    """A line along the top ("t") or foot ("b") of a cell, or all round it. width [pt]. grey: 0 is
    black.
    """

    edges: str
    width: float
    grey: float = 0.0


class Pad(NamedTuple):
    """Room left blank within a cell [pt]."""

    left: float = 0.0
    right: float = 0.0
    above: float = 0.0
    below: float = 0.0


class Cell(NamedTuple):
    """Blocks within a row. middle: half way up, else at the top."""

    blocks: Sequence[Block]
    pad: Pad = Pad()
    middle: bool = False
    rules: Sequence[Rule] = ()


class Row:
    """Cells side by side, each of its own width, all as high as the highest.

    least: height of the row at least [pt].
    """

    def __init__(self, widths: Sequence[float], cells: Sequence[Cell], least: float = 0.0) -> None:
        self.cells = list(zip(widths, cells, strict=True))
        self._inner = [
            Stack(cell.blocks).height(wide - cell.pad.left - cell.pad.right)
            for wide, cell in self.cells
        ]
        highs = [
            high + cell.pad.above + cell.pad.below
            for high, cell in zip(self._inner, cells, strict=True)
        ]
        self._high = max(least, *highs)

    def height(self, wide: float) -> float:
        return self._high

    def draw(self, ink: Ink, x: float, top: float, wide: float) -> None:
        for (own, cell), inner in zip(self.cells, self._inner, strict=True):
            for rule in cell.rules:
                _rule(ink, rule, x, top, own, self._high)
            down = cell.pad.above
            if cell.middle:
                down += 0.5 * (self._high - inner - cell.pad.above - cell.pad.below)
            room = own - cell.pad.left - cell.pad.right
            Stack(cell.blocks).draw(ink, x + cell.pad.left, top - down, room)
            x += own


def _rule(ink: Ink, rule: Rule, x: float, top: float, wide: float, high: float) -> None:
    right, foot = x + wide, top - high
    if rule.edges == ALL:
        drawn = "%.3f %.3f %.3f %.3f re" % (x, foot, wide, high)
    else:
        ends = {"t": (x, top, right, top), "b": (x, foot, right, foot)}
        drawn = page_ink.line(*ends[rule.edges])
    ink.add("%g w %g G 1 J 0 j %s S" % (rule.width, rule.grey, drawn))


class Table:
    """Rows below a head that stands again on each page that they come to."""

    def __init__(self, head: Block, rows: Sequence[Block]) -> None:
        self.head = head
        self.rows = rows

    def height(self, wide: float) -> float:
        return Stack([self.head, *self.rows]).height(wide)

    def draw(self, ink: Ink, x: float, top: float, wide: float) -> None:
        Stack([self.head, *self.rows]).draw(ink, x, top, wide)


class NewPage(Space):
    """Where a page ends though it has room."""

    def __init__(self) -> None:
        super().__init__(0.0)


class Pages:
    """Blocks placed on pages of a width and height [pt].

    Each page is a list of (block, how far its top lies below that of the page).
    """

    def __init__(self, blocks: Iterable[Block], wide: float, high: float) -> None:
        self.wide = wide
        self.high = high
        self.pages: list[list[tuple[Block, float]]] = [[]]
        self._used = 0.0
        for block in blocks:
            self._place(block)

    def _place(self, block: Block, head: Block | None = None) -> None:
        """head: what stands above the block where that begins a page."""
        tall = block.height(self.wide)
        fits = self._used + tall <= self.high + _HAIR
        if type(block) is Table and not fits:
            self._place(Stack([block.head, *block.rows[:1]]))
            for row in block.rows[1:]:
                self._place(row, block.head)
            return
        if type(block) is NewPage or (not fits and self._used):
            self.pages.append([])
            self._used = 0.0
            if head is not None:
                self._put(head)
        if type(block) is Stack and tall > self.high + _HAIR:
            for part in block.blocks:
                self._place(part)
        else:
            self._put(block)

    def _put(self, block: Block) -> None:
        self.pages[-1].append((block, self._used))
        self._used += block.height(self.wide)
