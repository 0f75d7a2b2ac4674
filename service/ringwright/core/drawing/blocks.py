"""Words set as a block: one or two lines with a sign before them, measured and laid down at a
place.
"""

from collections import namedtuple

from . import letters, style
from .entities import Text

# width, height: of the block [mm]. prefix: width of the sign with its space [mm].
Block = namedtuple("Block", ("words", "size", "width", "height", "prefix"))

_SIGN_SPACE = 0.3


def block(words, size=style.LETTERS):
    """The Block of Words at a letter size."""
    wide = 0.0
    for line in words.lines:
        wide = max(wide, letters.width(line, size))
    prefix = letters.width(words.prefix, size) + _SIGN_SPACE if words.prefix else 0.0
    height = size * (1.0 + style.PITCH * (len(words.lines) - 1))
    return Block(words=words, size=size, width=prefix + wide, height=height, prefix=prefix)


def laid(entry, layer, left, bottom):
    """Texts of a Block whose lower left corner (base line of the last line) stands there."""
    texts = []
    size = entry.size
    if entry.words.prefix:
        raised = bottom + 0.5 * (entry.height - size)
        texts.append(Text(layer, left, raised, size, entry.words.prefix, "start", 0, False))
    count = len(entry.words.lines)
    for i, line in enumerate(entry.words.lines):
        y = bottom + size * style.PITCH * (count - 1 - i)
        texts.append(Text(layer, left + entry.prefix, y, size, line, "start", 0, False))
    return texts


def laid_upright(entry, layer, right, bottom):
    """The same turned a quarter left, to be read from the right; `right` is its base line's x."""
    return [
        Text(layer, right - text.y, bottom + text.x, text.size, text.text, "start", 90, False)
        for text in laid(entry, layer, 0.0, 0.0)
    ]
