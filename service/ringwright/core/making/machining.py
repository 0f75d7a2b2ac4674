"""Spindle speeds, feeds and times for the lathe, the drill and the milling machine.

Speeds and feeds are ranges in the tables. A light machine (a bench lathe, tools ground by hand)
takes the low end of each, a rigid one the middle.
"""

import math
from collections import namedtuple

from .. import shop_sizes
from ..catalogue.inputs_tools import MACHINES, TOOLS
from ..problems import OutOfRange
from ..records import Method
from .machining_table import (
    CARBIDE_OVER_HSS,
    CARBIDE_SPEEDS,
    CUTS_AS,
    DEPTHS,
    DRILL_DIAMETERS,
    DRILL_FEEDS,
    FEEDS,
    FOLLOWS,
    HANDLING,
    HSS_SPEEDS,
    LIGHT_CARBIDE_CAP,
    LIGHT_ROUGHING_FEED,
    OPERATIONS,
    PER_TOOTH,
    SAW_PITCH,
)

# A figure from a table: what to use, the range it was taken from, and the key of its source.
Tabled = namedtuple("Tabled", ("value", "low", "high", "source"))

# One operation worked out. surface_speed: what the spindle speed really gives [m/min];
# wanted_speed: Tabled [m/min]; spindle_speed [1/min]; feed: Tabled [mm]; feed_per: "turn" or
# "tooth"; feed_rate [mm/min]; passes; cutting_time and time, handling included [min].
Cut = namedtuple(
    "Cut",
    (
        "operation",
        "tool",
        "surface_speed",
        "wanted_speed",
        "spindle_speed",
        "feed",
        "feed_per",
        "feed_rate",
        "passes",
        "cutting_time",
        "time",
    ),
)

METHODS = (
    Method(
        "cutting-speed",
        "Cutting speed",
        "from a published table by operation, tool and metal: the low end of its range for a light "
        "machine, the middle for a rigid one",
        "high-speed steel and cemented carbide, dry iron",
        (
            "turning-speeds",
            "teaching-speeds",
            "shop-speeds",
            "bench-lathe-speeds",
            "saw-speeds",
            "shop-reference",
            "iron-drilling",
        ),
    ),
    Method(
        "spindle-speed",
        "Spindle speed",
        "n = 1000 v/(pi D), then the machine's next speed below",
        "D the diameter cut, or of the cutter",
        ("definition",),
    ),
    Method(
        "feed",
        "Feed per turn or per tooth",
        "from a published table, drills by diameter; below the smallest diameter in proportion",
        "high-speed steel and cemented carbide",
        (
            "turning-speeds",
            "teaching-speeds",
            "bench-lathe-speeds",
            "lathe-manual",
            "shop-reference",
            "boring-bars",
            "cutter-feeds",
        ),
    ),
    Method(
        "machining-time",
        "Machining time",
        "t = passes (travel/(feed n z) + handling), z the teeth of a cutter, 1 for a lathe tool",
        "tool kept sharp; setting up not included",
        ("definition", "practice"),
    ),
)


def cutting_speed(operation, tool, material_key, machine="light"):
    """Cutting speed from the table, a Tabled [m/min].

    operation: one of turn-rough, turn-finish, bore-rough, bore, face, part, drill, mill, slit-saw.
    tool: hss or carbide. material_key: key of the material cut.
    machine: light (the low end, and at most 90 m/min with carbide) or rigid (the middle).
    Raises OutOfRange for an unknown name.
    Example: roughing grey iron with high-speed steel, 18 to 25.
    Source: see machining_table.py, entry by entry.
    """
    asked = (operation, tool, material_key, machine)
    found = _kept_speeds.get(asked)
    if found is None:
        found = _kept_speeds[asked] = _cutting_speed(operation, tool, material_key, machine)
    return found


# What was read from the tables before, by all that it goes by: a card asks fifty times.
_kept_speeds = {}
_kept_feeds = {}


def _cutting_speed(operation, tool, material_key, machine):
    _known("operation", operation, OPERATIONS)
    _known("tool", tool, TOOLS)
    _known("machine", machine, MACHINES)
    metal = _metal(material_key)
    follows = FOLLOWS.get(operation)
    row = operation if follows is None else follows[0]
    entry = CARBIDE_SPEEDS.get(row, {}).get(metal) if tool == "carbide" else None
    if entry is not None:
        low, high, source = entry
    else:
        low, high, source = HSS_SPEEDS[row][metal]
        if tool == "carbide":
            low, high = CARBIDE_OVER_HSS * low, CARBIDE_OVER_HSS * high
    if follows is not None:
        low, high = follows[1] * low, follows[2] * high
    value = low if machine == "light" else 0.5 * (low + high)
    if machine == "light" and tool == "carbide":
        value = min(value, LIGHT_CARBIDE_CAP)
    return Tabled(value=value, low=low, high=high, source=source)


def spindle_speed(surface_speed, diameter):
    """Spindle speed that gives a surface speed [1/min].

    n = 1000 v/(pi D).

    surface_speed: v [m/min], more than 0. diameter: D, of what is cut or of the cutter [mm], more
    than 0.
    Raises OutOfRange for a speed or diameter that is not more than 0.
    Example: 20 m/min on 80 mm, 79.6.
    Source: definition.
    """
    _positive("surface_speed", surface_speed)
    _positive("diameter", diameter)
    return 1000.0 * surface_speed / (math.pi * diameter)


def surface_speed(spindle_speed, diameter):
    """Surface speed that a spindle speed gives [m/min].

    v = pi D n/1000.

    spindle_speed: n [1/min], more than 0. diameter: D [mm], more than 0.
    Raises OutOfRange for a speed or diameter that is not more than 0.
    Source: definition.
    """
    _positive("spindle_speed", spindle_speed)
    _positive("diameter", diameter)
    return math.pi * diameter * spindle_speed / 1000.0


def nearest_spindle_speed(wanted, available=()):
    """The machine's speed to use: the fastest not above that wanted, else its slowest [1/min].

    wanted: spindle speed worked out [1/min], more than 0. available: the machine's speeds, a
    sequence in any order [1/min]; empty for a machine with any speed, which gives the wanted one.
    Raises OutOfRange for a speed that is not more than 0.
    """
    _positive("wanted", wanted)
    best = None
    slowest = None
    for speed in available:
        _positive("available", speed)
        if slowest is None or speed < slowest:
            slowest = speed
        if speed <= wanted and (best is None or speed > best):
            best = speed
    if slowest is None:
        return wanted
    return slowest if best is None else best


def feed(operation, material_key, machine="light", diameter=None):
    """Feed from the table, a Tabled [mm]: per tooth for mill and slit-saw, else per turn.

    operation: as in `cutting_speed`. material_key: key of the material cut. machine: light (the
    low end) or rigid (the middle). diameter: of the drill [mm], more than 0; for drilling only.
    Raises OutOfRange for an unknown name, or drilling without a diameter.
    Example: a 12 mm drill in grey iron, 0.18 a turn.
    Source: see machining_table.py, entry by entry.
    """
    if operation == "drill":
        return _feed_of_drill(material_key, machine, diameter)
    asked = (operation, material_key, machine)
    found = _kept_feeds.get(asked)
    if found is None:
        found = _kept_feeds[asked] = _feed(operation, material_key, machine)
    return found


def _feed_of_drill(material_key, machine, diameter):
    _known("machine", machine, MACHINES)
    metal = _metal(material_key)
    if diameter is None:
        raise OutOfRange("diameter", diameter, "a drill's diameter", "feed of drills")
    value = _drill_feed(DRILL_FEEDS[metal], diameter)
    return Tabled(value=value, low=value, high=value, source="teaching-speeds")


def _feed(operation, material_key, machine):
    _known("operation", operation, OPERATIONS)
    _known("machine", machine, MACHINES)
    _metal(material_key)
    low, high, source = FEEDS[operation]
    if operation == "turn-rough" and machine == "light":
        low, high, source = LIGHT_ROUGHING_FEED
    return Tabled(
        value=low if machine == "light" else 0.5 * (low + high), low=low, high=high, source=source
    )


def passes(stock, operation, machine="light"):
    """How many passes take off that much [1].

    ceil(stock/depth), at least 1.

    stock: metal to take off, on the radius or the face [mm], 0 or more. operation: turn-rough,
    turn-finish, bore-rough, bore, face or mill. machine: light or rigid.
    Raises OutOfRange for an unknown name or a negative stock.
    Source: depths of cut, see machining_table.py.
    """
    _known("machine", machine, MACHINES)
    depths = DEPTHS.get(operation)
    if depths is None:
        raise OutOfRange("operation", operation, ", ".join(sorted(DEPTHS)), "depths of cut")
    if not stock >= 0.0:
        raise OutOfRange("stock", stock, "0 or more", "depths of cut")
    depth = depths[0] if machine == "light" else depths[1]
    # A hair over a whole number of passes is rounding, not metal.
    return max(1, int(math.ceil(stock / depth - 1e-9)))


def machining_time(travel, feed_rate, times=1, handling=0.0):
    """Time of an operation [min].

    t = times (travel/feed_rate + handling).

    travel: of the tool in one pass [mm], 0 or more. feed_rate: [mm/min], more than 0.
    times: passes, 0 or more. handling: minutes a pass to set, measure and withdraw, 0 or more.
    Raises OutOfRange outside those ranges.
    Source: definition.
    """
    _positive("feed_rate", feed_rate)
    for name, value in (("travel", travel), ("times", times), ("handling", handling)):
        if not value >= 0.0:
            raise OutOfRange(name, value, "0 or more", "machining time")
    return times * (travel / feed_rate + handling)


def cut(
    *,
    operation,
    material_key,
    diameter,
    travel,
    tool="hss",
    machine="light",
    times=1,
    teeth=1,
    spindle_speeds=(),
    handling=None,
    inch=False,
):
    """One operation worked out, a Cut.

    n = 1000 v/(pi D) and the machine's next speed below; feed rate = feed n z;
    t = times (travel/feed rate + handling).

    operation: as in `cutting_speed`. material_key: key of the material cut. diameter: D, the
    largest cut by a lathe tool, or the cutter's or drill's own [mm]. travel: in one pass [mm].
    tool: hss or carbide. machine: light or rigid. times: passes. teeth: z, of a mill or saw.
    spindle_speeds: the machine's own [1/min], empty for any. handling: minutes a pass, None for the
    table's. inch: True for feeds in thousandths of an inch.
    Raises OutOfRange for an unknown name or a size that is not more than 0.
    Source: see `cutting_speed` and `feed`.
    """
    wanted = cutting_speed(operation, tool, material_key, machine)
    turns = nearest_spindle_speed(spindle_speed(wanted.value, diameter), spindle_speeds)
    feeding = feed(operation, material_key, machine, diameter)
    if inch:
        value = shop_sizes.roundest(feeding.value, shop_sizes.INCH_FEEDS, shop_sizes.ABOUT)
        feeding = Tabled(value=value, low=feeding.low, high=feeding.high, source=feeding.source)
    per_tooth = operation in PER_TOOTH
    if per_tooth:
        _positive("teeth", teeth)
    rate = feeding.value * turns * (teeth if per_tooth else 1)
    minutes = HANDLING[operation] if handling is None else handling
    return Cut(
        operation=operation,
        tool=tool,
        surface_speed=surface_speed(turns, diameter),
        wanted_speed=wanted,
        spindle_speed=turns,
        feed=feeding,
        feed_per="tooth" if per_tooth else "turn",
        feed_rate=rate,
        passes=times,
        cutting_time=machining_time(travel, rate, times),
        time=machining_time(travel, rate, times, minutes),
    )


def saw_teeth(diameter):
    """About how many teeth a coarse slitting saw has, an even number [1]: count yours.

    2 round(pi D/(2 pitch)), the pitch about 4 mm.

    diameter: of the saw [mm], more than 0.
    Raises OutOfRange for a diameter that is not more than 0.
    Source: from memory.
    """
    _positive("diameter", diameter)
    return 2 * int(math.floor(math.pi * diameter / (2.0 * SAW_PITCH) + 0.5))


def _drill_feed(feeds, diameter):
    """Feed at a drill diameter: in proportion below the table, linear in it, level above."""
    _positive("diameter", diameter)
    if diameter <= DRILL_DIAMETERS[0]:
        return feeds[0] * diameter / DRILL_DIAMETERS[0]
    for i in range(1, len(DRILL_DIAMETERS)):
        if diameter <= DRILL_DIAMETERS[i]:
            span = DRILL_DIAMETERS[i] - DRILL_DIAMETERS[i - 1]
            share = (diameter - DRILL_DIAMETERS[i - 1]) / span
            return feeds[i - 1] + share * (feeds[i] - feeds[i - 1])
    return feeds[-1]


def _metal(material_key):
    metal = CUTS_AS.get(material_key)
    if metal is None:
        raise OutOfRange("material_key", material_key, ", ".join(sorted(CUTS_AS)), "cutting speeds")
    return metal


def _known(name, value, allowed):
    if value not in allowed:
        raise OutOfRange(name, value, ", ".join(allowed), "table of cutting speeds")


def _positive(name, value):
    if not value > 0.0:
        raise OutOfRange(name, value, "more than 0", "machining")
