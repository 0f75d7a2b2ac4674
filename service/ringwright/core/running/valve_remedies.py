"""What to try for each check of a piston valve's rings that is not good, and how it is said."""

import math

from .. import shop_sizes
from ..catalogue.inputs_ring import RING
from ..catalogue.inputs_valve import VALVE
from ..ring import remedies
from ..ring.remedies import change
from ..wording import length, wall_pressure

FIELDS = dict(VALVE)
FIELDS.update(RING)

# Beyond what is just needed, on a bar that carries the joint [mm]; common practice, no source.
BAR_BEYOND = 0.2


def told(values, given, rows, judge):
    """The findings of a piston valve with remedies that were tried.

    values: checked inputs. given: as they were filled. rows: list of Finding. judge: function of
    values to (list of Finding, the filled inputs).
    """

    def options(row):
        maker = _OPTIONS.get(row.check)
        return maker(given, row) if maker else None

    return remedies.tried(values, rows, options, judge, FIELDS, _words)


def bars_needed(given, span):
    """How many bars leave openings no longer than `span` round the liner [1].

    given: filled inputs. span: longest opening [mm].
    """
    return int(math.ceil(math.pi * given["bore"] / (span + given["port_bar_width"])))


def _wider(given):
    wide = shop_sizes.up(1.02 * given["port_width"], 0.5, 1 / 64, given.get("inch_sizes"))
    return change(("ring_width", wide))


def _bulge(given, row):
    """Half the rounding of the edges: the opening goes by the fourth root of what springs out."""
    span = math.pi * given["bore"] / given["port_bars"] - given["port_bar_width"]
    lower = span * (0.5 * row.limit.value / row.value.value) ** 0.25
    more = bars_needed(given, 0.98 * lower)
    return [change(("port_bars", more)), _wider(given)]


def _joint(given, row):
    needed = given["worn_gap"] + 2.0 * given["edge_rounding"] + BAR_BEYOND
    wide = ("port_bar_width", shop_sizes.up(needed, 0.1, 1 / 64, given.get("inch_sizes")))
    if given["joint_pinned"]:
        return [change(wide), _wider(given)]
    pinned = ("joint_pinned", True)
    return [change(pinned), change(pinned, wide), _wider(given)]


def _bars(given, row):
    least = row.limit.value * math.pi * given["bore"] / given["port_bars"]
    wide = shop_sizes.up(least, 0.1, 1 / 64, given.get("inch_sizes"))
    return [_wider(given), change(("port_bar_width", wide))]


def _spring(given, row):
    most = math.floor(1000.0 * row.limit.value) / 1000.0
    return [change(("radial_thickness", None)), change(("wall_pressure", most))]


_OPTIONS = {"bulge": _bulge, "joint": _joint, "bar-wear": _bars, "spring": _spring}


def _words(name, value, _):
    if name == "joint_pinned":
        return "pin the joint on a bar"
    if value is None:
        return remedies.plain_words(name, value)
    if name == "port_bars":
        return "use %d bars of this width" % value
    if name == "ring_width":
        return "make the ring %s wide, wider than the port" % length(value)
    if name == "port_bar_width":
        return "make the bars %s wide" % length(value)
    return "ask for " + wall_pressure(value)
