"""Which of the words of an operation hold for a ring: its kind, ends, metal, bar and tools.

A text is a tuple of sentences. One that holds for some rings only is a pair: the marks that must
all be there (one that begins with "-" must not be), and the sentence.
"""

from collections import namedtuple

from ..ring.allowances import CUT_ANGLES
from ..ring.soak import can_be_set

# title: of every ring alike. hold: how the work is held. tool, text, check: sentences as above.
# cautions: keys, DUST for that of the metal.
Text = namedtuple("Text", ("title", "hold", "tool", "text", "check", "cautions"))
# What is told of an operation: as Text, in plain words.
Told = namedtuple("Told", ("title", "hold", "tool", "text", "check", "cautions"))

DUST = "dust"
DRAWN_BRONZE = "phosphor-bronze-drawn"
# Marks of a ring.
DOUBLE = "double"
ANGLED = "angled"
FORMER = "former"
BANDED = "banded"
LIGHT = "light"
DRAWN = "drawn"
SET = "set"
SOLID = "solid"
CASTING = "casting"
STICK = "stick"


def marks_of(design, bar, keys):
    """Set of the marks of a ring; the family of its metal is one.

    design: a Design. bar: bars.BarSize, None for a casting. keys: of the operations.
    """
    d = design
    found = {d.duty.ring_material.family}
    for mark, there in (
        (DOUBLE, d.duty.turns == 2),
        (ANGLED, CUT_ANGLES[d.duty.end_cut] < 90.0),
        (FORMER, d.spring.former_diameter is not None),
        (BANDED, d.allowances.inside > 0.0),
        (LIGHT, d.duty.bearing.light),
        (DRAWN, d.duty.ring_material.key == DRAWN_BRONZE),
        (SET, can_be_set(d.duty.ring_material.family)),
        (SOLID, "drill" in keys),
        (CASTING, bar is None),
        (STICK, "hold-stick" in keys),
    ):
        if there:
            found.add(mark)
    return found


def told(text, marks, dust):
    """The Told of a Text. marks: as of marks_of. dust: key of the caution of the ring's dust."""
    return Told(
        title=text.title,
        hold=sentences(text.hold, marks),
        tool=sentences(text.tool, marks),
        text=sentences(text.text, marks),
        check=sentences(text.check, marks),
        cautions=[dust if key == DUST else key for key in text.cautions],
    )


def sentences(parts, marks):
    """Text of the sentences that hold. parts: text, or a tuple of sentences as above."""
    if isinstance(parts, str):
        return parts
    found = []
    for part in parts:
        if isinstance(part, str):
            found.append(part)
        elif _holds(part[0], marks):
            found.append(part[1])
    return " ".join(found)


def _holds(wanted, marks):
    for mark in wanted.split():
        if mark[:1] == "-":
            if mark[1:] in marks:
                return False
        elif mark not in marks:
            return False
    return True
