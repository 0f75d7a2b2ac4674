"""Letters for paper: which face has each letter of a name, and text in runs of one face.

Western Europe's letters are those that every PDF reader has. Other Latin letters, Greek and
Cyrillic come from Noto Sans, which a package carries; the signs of East Asia are in too many
megabytes to carry and come from a face of the machine where it has one. Only the letters used go
into the file. A letter that no face has is refused: a card never shows a wrong name.
"""

import io
import os
import unicodedata
from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path

import pymupdf_fonts
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFError, TTFont

from ..core.problems import unworkable

STANDARD = "Helvetica"
STANDARD_BOLD = "Helvetica-Bold"
OF_EVERY_READER = (STANDARD, STANDARD_BOLD)
ENCODING = "cp1252"
# Further TrueType faces: a folder of the service's own, then what Debian's packages bring.
FOLDER_SETTING = "RINGWRIGHT_FONTS"
_OF_THE_MACHINE = (
    "/usr/share/fonts/truetype/droid/DroidSansFallbackFull.ttf",
    "/usr/share/fonts/truetype/wqy/wqy-microhei.ttc",
    "/usr/share/fonts/opentype/ipaexfont-gothic/ipaexg.ttf",
)
# Scripts whose letters change shape or order beside one another: setting them letter by letter
# would give a wrong name. First and last code point of each block.
_SHAPED = (
    (0x0590, 0x08FF),  # Hebrew, Arabic and others that run from right to left
    (0x0900, 0x0FFF),  # India, Thailand, Laos, Tibet
    (0x1000, 0x109F),  # Myanmar
    (0x1780, 0x18AF),  # Khmer, Mongolian
    (0xFB1D, 0xFEFC),  # forms of Hebrew and Arabic
)


def clean(text: str) -> str:
    """The text composed, with a space for what no press shows."""
    composed = unicodedata.normalize("NFC", text)
    if composed.isprintable():
        return composed
    return "".join(letter if letter.isprintable() else " " for letter in composed)


def runs(text: str, bold: bool = False) -> list[tuple[str, str]]:
    """The text as a list of (face, letters), in order. text: printable. bold: heavier letters."""
    standard = STANDARD_BOLD if bold else STANDARD
    if _is_standard(text):
        return [(standard, text)]
    found: list[tuple[str, str]] = []
    for letter in text:
        face = standard if _is_standard(letter) else _face_of(letter, bold) or standard
        # A space stays in the run it stands in.
        if found and (found[-1][0] == face or letter == " "):
            found[-1] = (found[-1][0], found[-1][1] + letter)
        else:
            found.append((face, letter))
    return found


@lru_cache(maxsize=20000)
def width(letters: str, face: str) -> float:
    """Width of letters of one face, over their size."""
    wide: float = pdfmetrics.stringWidth(letters, face, 1.0)
    return wide


def refuse_missing(texts: Mapping[str, str | None]) -> None:
    """Raises InputProblem for the first text with letters that cannot be set.

    texts: mapping of input name to text or None.
    """
    for name, text in texts.items():
        missing = missing_letters(text or "")
        if missing:
            raise unworkable(
                name,
                "no letters here for %s of %s" % (" ".join(missing), name),
                "write it in letters that this service can print, or use the app, whose own paper "
                "has every letter of the phone; who keeps the service may add faces (%s)"
                % FOLDER_SETTING,
                "letters",
            )


def missing_letters(text: str) -> list[str]:
    """The letters of a text, each once, that no face can set."""
    found = []
    for letter in clean(text):
        if not _is_standard(letter) and letter not in found and _face_of(letter, False) is None:
            found.append(letter)
    return found


def _is_standard(text: str) -> bool:
    try:
        text.encode(ENCODING)
    except UnicodeEncodeError:
        return False
    return True


@lru_cache(maxsize=4096)
def _face_of(letter: str, bold: bool) -> str | None:
    """The registered face that has a letter, None where none has."""
    point = ord(letter)
    if any(first <= point <= last for first, last in _SHAPED):
        return None
    for face in _faces(bold):
        if point in face.face.charToGlyph:
            return str(face.fontName)
    return None


@lru_cache(maxsize=2)
def _faces(bold: bool) -> list[TTFont]:
    """Every face beyond the standard one, those that the package carries first."""
    carried = "notosbo" if bold else "notos"
    name = "Paper-Bold" if bold else "Paper"
    return [_registered(name, io.BytesIO(pymupdf_fonts.myfont(carried))), *_machine_faces()]


@lru_cache(maxsize=1)
def _machine_faces() -> list[TTFont]:
    folder = os.environ.get(FOLDER_SETTING)
    own = sorted(Path(folder).glob("*.tt[fc]")) if folder else []
    found = []
    for path in [*own, *map(Path, _OF_THE_MACHINE)]:
        if path.is_file():
            try:
                found.append(_registered("Machine-%d" % len(found), str(path)))
            except TTFError:
                # A face with outlines of another kind: as good as none.
                continue
    return found


def _registered(name: str, source: str | io.BytesIO) -> TTFont:
    face = TTFont(name, source)
    pdfmetrics.registerFont(face)
    return face
