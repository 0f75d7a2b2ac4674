"""Calculation "route": the operations in order, with sizes, tool, speed, feed, time and check."""

from collections import OrderedDict

from ..catalogue import figures_of
from ..catalogue.inputs import listed
from ..catalogue.inputs_ring import AS_CUT
from ..catalogue.inputs_stock import SHOP
from ..catalogue.inputs_tools import LATHE
from ..catalogue.making import ROUTE
from ..cautions import CAUTIONS, DUST_OF, cautions
from ..records import Quantity
from ..ring.remedies import plain_words, tried
from ..ring.soak import can_be_set
from ..walk import rings
from ..walk.limits import card_limits
from . import route_findings, route_tube
from . import route_sawing as sawing
from .part_sizes import tree as size_tree
from .route_ring import Work
from .route_rows import Bench
from .route_text import TEXT
from .route_words import marks_of, told
from .tool_list import NAMED_BY
from .tooling import FIELDS as TOOLING_FIELDS
from .tooling import settle_tooling

FIELDS = (
    TOOLING_FIELDS
    + tuple(LATHE.values())
    + listed((SHOP,), "bar_form", "bar_sizes", "chucking_piece", "parting_width")
    + tuple(AS_CUT.values())
)


def calculate(values):
    """The route card of one set of rings: operations, figures, findings, cautions.

    values: checked values of FIELDS, a plain dict in core units. Raises InputProblem.
    """
    design, tooling, chosen = settle_tooling(values)
    return answer(design, tooling, chosen, values)


def answer(design, tooling, chosen, values):
    """As `calculate`, for a Design and Tooling already settled."""
    rows = operations(design, tooling, values)
    bar = route_tube.bar_of(design, values)
    marks = marks_of(design, bar, [row.key for row in rows])
    dust = DUST_OF[design.duty.ring_material.family]
    used = []
    listing = []
    for number, row in enumerate(rows, 1):
        words = told(TEXT[row.key], marks, dust)
        listing.append(tree(number, row, words))
        for key in words.cautions:
            if key not in used:
                used.append(key)
    one = all_rings = 0.0
    for row in rows:
        if row.minutes is not None:
            one += row.minutes
            all_rings += row.together
    times = {
        "time_first_ring": one,
        "time_all_rings": (0.7 * all_rings, all_rings, 2.0 * all_rings),
    }
    found = OrderedDict(
        (
            ("figures", figures_of(ROUTE, times, {"n": design.duty.rings})),
            ("operations", listing),
        )
    )
    made, of_rings = rings.answer(design, values)
    if made:
        found["rings"] = made
    found["findings"] = _told(design, tooling, rows, values) + of_rings
    found["chosen"] = chosen
    found["cautions"] = cautions(*["figures", "pressure-system"] + used)
    return found


def _told(design, tooling, rows, values):
    """The card's findings, with remedies that were tried on it."""

    def judged(asked):
        other = operations(design, tooling, asked)
        return route_findings.findings(design, tooling, other, asked), None

    def words(name, value, _):
        return plain_words(name, value)

    found = route_findings.findings(design, tooling, rows, values)
    return tried(values, found, route_findings.options, judged, LATHE, words)


def operations(design, tooling, values):
    """List of Operation for a Design and its Tooling, in the order of the work."""
    bench = Bench(design, values)
    held = card_limits(design, bench.machine)
    work = Work(design, tooling, bench, held)
    rows = route_tube.rows(bench, design, tooling, values, held)
    rows += sawing.rows(work, values) if design.duty.turns == 2 else work.plain_sawing()
    if can_be_set(design.duty.ring_material.family):
        rows += work.setting()
    rows += work.finishing()
    return rows


def tree(number, row, text):
    """One operation of a card, plain. row: an Operation. text: its Told."""
    entry = OrderedDict(
        (
            ("number", number),
            ("key", row.key),
            ("title", text.title),
            ("hold", text.hold),
            ("tool", text.tool),
            ("tools", list(NAMED_BY.get(row.key, ()))),
            ("text", text.text),
            ("sizes", [size_tree(size) for size in row.sizes]),
        )
    )
    if row.cut is not None:
        entry["speed"] = Quantity(row.cut.spindle_speed, "1/min")
        entry["surface_speed"] = Quantity(row.cut.surface_speed, "m/min")
        entry["feed"] = Quantity(row.cut.feed.value, "mm")
        entry["feed_per"] = row.cut.feed_per
        entry["passes"] = row.cut.passes
    if row.minutes is not None:
        entry["time"] = Quantity(row.minutes, "min")
        entry["time_all"] = Quantity(row.together, "min")
    entry["each_ring"] = row.each
    entry["check"] = text.check
    entry["cautions"] = [
        OrderedDict((("key", key), ("text", CAUTIONS[key]))) for key in text.cautions
    ]
    return entry
