"""What it takes to make a tool: the piece of metal, and the time on the lathe."""

from collections import OrderedDict, namedtuple

from ..records import Quantity
from ..shop_sizes import up
from . import machining

# On the outside diameter, and on the length, of the piece a tool is turned from [mm]; to chuck it,
# true it and deburr it, and to turn each size that has limits to them [min]. Common practice, no
# source.
OVER_OUTSIDE = 3.0
OVER_LENGTH = 5.0
SETTING_UP = 15.0
TO_A_LIMIT = 5.0
FIRST_DRILL = 25.0
LAST_CUTS = 2

# A larger hole than this is not bored out of the solid: the piece is a ring, cast or cut out, with
# so much left in its hole on the diameter [mm].
LARGEST_SOLID = 60.0
LEFT_IN_RING = 8.0

# A tool as it is turned: outside, hole (0 for none), length [mm]; fitted: how many of its sizes
# have limits; beside: minutes of milling, drilling and filing beside the lathe.
Shape = namedtuple("Shape", ("outside", "hole", "length", "fitted", "beside"))
# The piece to start from: diameter, hole (0 for a solid one) and length [mm]; and the minutes.
Work = namedtuple("Work", ("diameter", "hole", "length", "minutes"))


def work(shape, metal, machine="light", tool="hss"):
    """The Work of a Shape turned from a bar, or from a ring where its hole is large.

    metal: key of its material. machine, tool: as machining.cut takes them. The outside is turned
    down, the middle drilled out to 25 mm at most and bored, both ends faced, the piece parted off.
    """
    diameter = shape.outside + OVER_OUTSIDE
    length = shape.length + OVER_LENGTH
    made = {"material_key": metal, "tool": tool, "machine": machine}

    def minutes(operation, size, travel, stock=None):
        if size <= 0.0 or travel <= 0.0:
            return 0.0
        times = 1 if stock is None else machining.passes(stock, operation, machine)
        return machining.cut(
            operation=operation, diameter=size, travel=travel, times=times, **made
        ).time

    total = SETTING_UP + TO_A_LIMIT * shape.fitted + shape.beside
    total += minutes("turn-rough", diameter, length, 0.5 * OVER_OUTSIDE)
    total += 2.0 * minutes("face", diameter, 0.5 * (diameter - shape.hole))
    total += minutes("part", shape.outside, 0.5 * (shape.outside - shape.hole))
    core = shape.hole - LEFT_IN_RING if shape.hole > LARGEST_SOLID else 0.0
    if shape.hole > 0.0 and core == 0.0:
        core = min(shape.hole, FIRST_DRILL)
        drilling = dict(made)
        drilling["tool"] = "hss"
        total += machining.cut(operation="drill", diameter=core, travel=length, **drilling).time
    if shape.hole > core:
        total += minutes("bore-rough", shape.hole, length, 0.5 * (shape.hole - core))
    for size in (shape.outside, shape.hole):
        if size > 0.0 and shape.fitted:
            total += LAST_CUTS * minutes("turn-finish", size, length)
    return Work(
        diameter=diameter,
        hole=core if shape.hole > LARGEST_SOLID else 0.0,
        length=length,
        minutes=total,
    )


def piece(needed, inch=False):
    """The piece to start from as an OrderedDict, to the next whole millimetre or 16th of an inch.

    needed: a Work. inch: True for sizes in inches.
    """
    found = OrderedDict()
    for name, way in (("diameter", 1), ("hole", -1), ("length", 1)):
        size = way * up(way * getattr(needed, name), 1.0, 0.0625, inch)
        found[name] = Quantity(size or 0.0, "mm")
    return found
