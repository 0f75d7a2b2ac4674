"""Text of a printed card: black on white, to be read at arm's length, broken into lines."""

from collections.abc import Callable, Iterable
from functools import lru_cache, partial
from typing import NamedTuple

from . import faces, page_ink
from .page_ink import Ink

# Width of a space in both standard faces, over their size, and by how much of it spaces may be
# narrower where the next word then stands in the line.
_SPACE = 0.278
_NARROWER = 0.05


class Style(NamedTuple):
    """bold: whether all of it is. size, leading: of letters and from line to line [pt]. base: from
    the top of the first line to its base line [pt].
    """

    bold: bool
    size: float
    leading: float
    base: float
    centred: bool = False


# 10 point letters have capitals of 2.5 mm, the least of ISO 3098 for a shop.
BODY = Style(bold=False, size=10.0, leading=12.0, base=10.0)
CELL = BODY._replace(leading=11.5)
SIZE = Style(bold=True, size=11.5, leading=13.5, base=11.5)
# What stands under a size, in its place of a second line.
UNDER_SIZE = SIZE._replace(size=8.5)
HEADING = Style(bold=True, size=13.0, leading=15.0, base=13.0)
TITLE = Style(bold=True, size=18.0, leading=22.0, base=18.0)
SMALL = Style(bold=False, size=8.5, leading=10.5, base=8.5)
CENTRED = SMALL._replace(centred=True)


_runs = lru_cache(maxsize=8192)(faces.runs)


class Bold(str):
    """A part of a text in bold letters."""

    __slots__ = ()


# Letters of one face: (face, letters, width of them at a size of 1).
_Run = tuple[str, str, float]
# Runs, width of them all and how much is taken from each space [pt].
_Line = tuple[list[_Run], float, float]
# Text and whether it is bold, in turn.
_Parts = tuple[tuple[str, bool], ...]


class Text:
    """A paragraph. Most words of a card are those of every card: broken once, they are kept.

    parts: text, some of it Bold; a space between two of them is a part's own.
    """

    def __init__(self, parts: str | Iterable[str], style: Style = BODY) -> None:
        given = (parts,) if isinstance(parts, str) else parts
        self.parts = tuple((str(part), style.bold or type(part) is Bold) for part in given)
        self.style = style

    def height(self, wide: float) -> float:
        """Height of its lines in a width [pt]."""
        return len(_broken(self.parts, self.style.size, wide)) * self.style.leading

    def draw(self, ink: Ink, x: float, top: float, wide: float) -> None:
        """Writes it from the top downwards, its left edge at x."""
        lines = _kept(self.parts, self.style, wide, ink.names)
        if lines is None:
            broken = _broken(self.parts, self.style.size, wide)
            lines = _operators(ink.shown, broken, self.style, wide)
        ink.add("BT 1 0 0 1 %.3f %.3f Tm %s ET" % (x, top - self.style.base, lines))


def fitted(letters: str, style: Style, room: float) -> Text:
    """One word in a style, its letters smaller where they would not stand in one line."""
    long = sum([faces.width(run, face) for face, run in _runs(faces.clean(letters), style.bold)])
    size = min(style.size, room / long) if long else style.size
    return Text(letters, style._replace(size=size))


@lru_cache(maxsize=4000)
def _kept(parts: _Parts, style: Style, wide: float, names: page_ink.Names) -> str | None:
    """Operators of a text all in standard faces, None where it has others: those are the file's."""
    lines = _broken(parts, style.size, wide)
    if all(face in faces.OF_EVERY_READER for runs, _, _ in lines for face, _, _ in runs):
        return _operators(partial(page_ink.standard, names), lines, style, wide)
    return None


def _operators(
    shown: Callable[[str, str, float], str], lines: list[_Line], style: Style, wide: float
) -> str:
    found = []
    at = 0.0
    for number, (runs, length, less) in enumerate(lines):
        start = 0.5 * (wide - length) if style.centred else 0.0
        if number or start:
            found.append("%.3f %.3f Td" % (start - at, -style.leading if number else 0.0))
        at = start
        shown_runs = [shown(letters, face, style.size) for face, letters, _ in runs]
        found += ["%.4f Tw" % -less, *shown_runs, "0 Tw"] if less else shown_runs
    return " ".join(found)


@lru_cache(maxsize=4000)
def _broken(parts: _Parts, size: float, wide: float) -> list[_Line]:
    """Lines of a text of one size."""
    room = wide / size + 1e-9
    lines: list[_Line] = []
    line: list[_Run] = []
    length, spaces = 0.0, 0

    def end() -> None:
        less = max(0.0, length - room) / spaces if spaces else 0.0
        lines.append((line, min(length, room) * size, less * size))

    for word in _words(parts):
        long = sum([run[2] for run in word])
        if line and length + _SPACE + long <= room + _NARROWER * _SPACE * (spaces + 1):
            _append(line, word, True)
            length += _SPACE + long
            spaces += 1
            continue
        for piece in [word] if long <= room else _cut(word, room):
            if line:
                end()
            line, length, spaces = [], sum([run[2] for run in piece]), 0
            _append(line, piece, False)
    if line:
        end()
    return lines


def _append(line: list[_Run], word: list[_Run], spaced: bool) -> None:
    """Puts a word at the end of a line, in the run that stands there where the face is the same."""
    for face, letters, long in word:
        if spaced:
            before, said, wide = line[-1]
            line[-1] = (before, said + " ", wide + _SPACE)
            spaced = False
        if line and line[-1][0] == face:
            line[-1] = (face, line[-1][1] + letters, line[-1][2] + long)
        else:
            line.append((face, letters, long))


def _words(parts: _Parts) -> list[list[_Run]]:
    """The words of a text, each in runs of one face."""
    words: list[list[_Run]] = []
    joined = False
    for text, bold in parts:
        for place, letters in enumerate(faces.clean(text).split(" ")):
            if place:
                joined = False
            if letters:
                runs = [(face, run, faces.width(run, face)) for face, run in _runs(letters, bold)]
                if joined:
                    words[-1] += runs
                else:
                    words.append(runs)
                joined = True
    return words


def _cut(word: list[_Run], room: float) -> list[list[_Run]]:
    """A word longer than a line, in pieces that fill lines."""
    pieces: list[list[_Run]] = [[]]
    length = 0.0
    for face, letters, _ in word:
        for letter in letters:
            long = faces.width(letter, face)
            if length + long > room and pieces[-1]:
                pieces.append([])
                length = 0.0
            _append(pieces[-1], [(face, letter, long)], False)
            length += long
    return pieces
