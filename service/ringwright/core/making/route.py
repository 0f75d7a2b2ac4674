"""Calculation "route": the operations in order, with sizes, tool, speed, feed, time and check."""

from collections import OrderedDict

from ..cautions import CAUTIONS, cautions
from ..fields import field
from ..records import Quantity, figure
from ..ring.allowances import CUT_ANGLES
from ..ring.blank import feeler_reading
from . import machining, route_findings, route_tube
from .part_sizes import (
    ACROSS_CUT,
    ALONG,
    FEELER,
    INSIDE,
    MICROMETER,
    RULE,
    SET,
    Size,
    bare,
    limited,
)
from .part_sizes import tree as size_tree
from .route_rows import FACE_RUN_OUT, TURN_RUN_OUT, Bench
from .route_text import TEXT
from .stock_fields import SHOP_FIELDS
from .tool_list import NAMED_BY
from .tooling import FIELDS as TOOLING_FIELDS
from .tooling import settle_tooling

FIELDS = TOOLING_FIELDS + (
    field(
        "tool_material",
        "choice",
        "what the turning tools are made of",
        "hss",
        choices=machining.TOOLS,
    ),
    field(
        "machine",
        "choice",
        "a bench lathe with tools ground by hand, or a rigid lathe",
        "light",
        choices=machining.MACHINES,
    ),
    field(
        "spindle_speeds",
        "records",
        "the speeds your lathe has, if only certain ones",
        "any speed",
        lowest=1,
        highest=60,
        items=(field("", "speed", "a spindle speed", lowest=1.0, highest=20000.0),),
    ),
)
FIELDS += tuple([entry for entry in SHOP_FIELDS if entry.name in ("bar_form", "bar_sizes")])

# What the last two light cuts take together, on the radius [mm].
_LAST_CUTS = 0.15
HEAT_UP_HOURS = 0.5
# What the thickness of a ring may be out by, from ring to ring or round one ring [mm].
THICKNESS_TOLERANCE = 0.03


def calculate(values):
    """The route card of one set of rings: operations, figures, findings, cautions.

    values: checked values of FIELDS, a plain dict in core units. Raises InputProblem.
    """
    design, tooling, chosen = settle_tooling(values)
    return answer(design, tooling, chosen, values)


def answer(design, tooling, chosen, values):
    """As `calculate`, for a Design and Tooling already settled."""
    rows = operations(design, tooling, values)
    used = []
    listing = []
    for number, row in enumerate(rows, 1):
        listing.append(_tree(number, row))
        for key in TEXT[row.key].cautions:
            if key not in used:
                used.append(key)
    one = all_rings = 0.0
    for row in rows:
        if row.minutes is not None:
            one += row.minutes
            all_rings += row.together
    figures = OrderedDict()
    figures["time_first_ring"] = figure(one, "min", "t", "machining-time")
    figures["time_all_rings"] = figure(
        all_rings,
        "min",
        "t",
        "machining-time",
        (("rings", design.rings, "1"),),
        0.7 * all_rings,
        2.0 * all_rings,
    )
    return OrderedDict(
        (
            ("figures", figures),
            ("operations", listing),
            ("findings", route_findings.findings(design, tooling, rows)),
            ("chosen", chosen),
            ("cautions", cautions(*["figures", "pressure-system"] + used)),
        )
    )


def operations(design, tooling, values):
    """List of Operation for a Design and its Tooling, in the order of the work."""
    bench = Bench(design, values)
    work = _Work(design, tooling, bench)
    rows = route_tube.rows(bench, design, values)
    rows += work.sawing() if design.turns == 2 else work.plain_sawing()
    rows += work.setting()
    rows += work.finishing()
    return rows


class _Work:
    """The rows after the blank: sawing, setting, finishing."""

    def __init__(self, design, tooling, bench):
        self.d = design
        self.t = tooling
        self.bench = bench

    def last_turning(self, sizes):
        """The clamped outside: most of the metal as in roughing, then two light cuts."""
        d, bench = self.d, self.bench
        stock = 0.5 * (d.rough_outside - d.finish_outside)
        times = bench.passes(max(stock - _LAST_CUTS, 0.0), "turn-rough") + 2
        made = bench.cut("turn-finish", d.rough_outside, d.ring_width + TURN_RUN_OUT, times)
        return bench.turned("turn-finish", sizes, made)

    def sawing(self):
        d, t = self.d, self.t
        mark = [
            bare("bridge_length", "bridge along the outside", t.bridge_length, reading=RULE),
            bare("band_width", "band", d.band_width),
            bare("scarf_length", "run of each angled end", t.scarf_length, reading=RULE),
        ]
        saw = [
            limited("slit_mandrel_diameter", "mandrel", t.slit_mandrel_diameter, "g6"),
            bare("cutter_diameter", "saw diameter", t.cutter_diameter),
            bare("slit_width", "saw thickness", d.slit_width, reading=MICROMETER),
            bare(
                "cutter_centre_distance",
                "centre of work to centre of saw, at full depth",
                t.slit.centre_distance,
                reading=SET,
            ),
            bare(
                "start_offset",
                "first turn the bridge mark past the saw's centre by",
                t.slit.outside_half_angle,
                "deg",
                SET,
            ),
            bare("table_travel", "then turn of the table", t.slit.table_travel, "deg", SET),
        ]
        travel = 3.1416 * d.rough_outside * t.slit.table_travel / 360.0 + t.slit.depth
        made = machining.cut(
            operation="slit-saw",
            material_key=d.ring_material.key,
            diameter=t.cutter_diameter,
            travel=travel,
            tool="hss",
            machine=self.bench.machine,
            teeth=machining.saw_teeth(t.cutter_diameter),
        )
        wedge = [
            bare("hand_wedge", "left at each end", t.slit.hand_wedge, "deg", SET),
            bare("hand_wedge_length", "along the inside", t.slit.hand_wedge_length, reading=RULE),
        ]
        return [
            self.bench.hand("mark-out", mark),
            self.bench.turned("slit", saw, made),
            self.bench.hand("saw-wedges", wedge),
            self.bench.hand(
                "saw-ends", [bare("end_kerf", "saw thickness", d.end_kerf, reading=ACROSS_CUT)]
            ),
            self.bench.hand("deburr", []),
        ]

    def plain_sawing(self):
        d = self.d
        key = "saw-end"
        saw = [bare("end_kerf", "saw thickness", d.end_kerf, reading=ACROSS_CUT)]
        if self.t.joint is not None:
            key = "saw-step"
            saw.append(bare("tongue_length", "length of each tongue", self.t.joint.opening))
            # Half of what the saw leaves of the blank; facing takes the same off both tongues.
            wide = self.t.joint.tongue_width + d.facing_allowance
            saw.append(bare("sawn_tongue_width", "tongue, before facing", wide))
        return [
            self.bench.hand(key, saw, "saw-ends"),
            self.bench.hand("deburr", []),
        ]

    def setting(self):
        d, t = self.d, self.t
        rows = []
        if d.turns == 2:
            rows.append(
                self.bench.hand(
                    "turn-through",
                    [bare("blank_length", "each free end moves", d.blank_length, reading=RULE)],
                )
            )
        if t.former_diameter is not None:
            former = [limited("former_diameter", "former", t.former_diameter, "h9")]
            key = "put-on-former-bound" if d.setting == "bound" else "put-on-former"
            rows.append(self.bench.hand(key, former, "put-on-former"))
        else:
            spacer = [
                limited("spacer_width", "opening, along the ring", t.spacer_width, "js9"),
                limited("spacer_across", "spacer, square to its faces", t.spacer_across, "js9"),
            ]
            rows.append(self.bench.hand("spread", spacer))
        soak = [
            bare(
                "soak_temperature", "ring at", d.soak_temperature, "degC", "pyrometer at the ring"
            ),
            bare("soak_time", "held", d.soak_time, "h", "clock, from when the ring is at heat"),
        ]
        heat = 60.0 * (d.soak_time + HEAT_UP_HOURS)
        rows.append(self.bench.waited("soak", soak, heat))
        off = "turn-back" if d.turns == 2 else "take-off"
        rows.append(self.bench.hand(off, [], "take-off"))
        # The gap on the bench before turning is along the neutral line of the rough ring.
        free = d.gap_change + d.closed_gap
        rows.append(
            self.bench.hand("measure-free-gap", [bare("free_gap", "free gap", free, reading=ALONG)])
        )
        return rows

    def finishing(self):
        d, t = self.d, self.t
        # Two sides; the step that the slit leaves is shared between them.
        stock = d.facing_allowance + (0.0 if d.turns == 1 else 0.5 * d.slit_width)
        run = 0.5 * (d.rough_outside - d.bored_inside) + FACE_RUN_OUT
        times = 2 * self.bench.passes(stock, "face")
        faced = self.bench.cut("face", d.rough_outside, run, times)
        width = [
            limited("pot_bore", "pot", t.pot_bore, "H8", INSIDE),
            limited("ring_width", "finished width", d.ring_width, "h7"),
        ]
        outside = [
            limited("finish_outside_diameter", "outside, clamped", d.finish_outside, "h7"),
            bare(
                "clamped_gap_reading",
                "gap while clamped",
                feeler_reading(gap=d.clamped_gap, angle=CUT_ANGLES[d.end_cut]),
                reading=FEELER,
            ),
        ]
        clamp = [
            bare("band_length", "band between its lugs", t.band_length, reading=RULE)
            if t.band_length is not None
            else bare(
                "closing_ring_bore", "closing ring, to suit", t.closing_ring_bore, reading=INSIDE
            ),
            limited("clamp_mandrel_diameter", "spigot", t.clamp_mandrel_diameter, "g6"),
            bare("end_plate_diameter", "end plate", t.end_plate_diameter),
        ]
        gap = [
            Size(
                "closed_gap_reading",
                "gap in the bore",
                feeler_reading(gap=d.closed_gap, angle=CUT_ANGLES[d.end_cut]),
                "mm",
                feeler_reading(gap=d.closed_gap, angle=CUT_ANGLES[d.end_cut]),
                feeler_reading(gap=1.25 * d.closed_gap + 0.02, angle=CUT_ANGLES[d.end_cut]),
                FEELER,
            ),
            bare("feeler_gap", "at the outer edge, before dressing", t.feeler_gap, reading=FEELER),
        ]
        thick = d.radial_thickness
        inspect = [
            bare("free_gap", "free gap", d.gap_change + d.closed_gap, reading=ALONG),
            Size(
                "radial_thickness",
                "thickness",
                thick,
                "mm",
                thick - THICKNESS_TOLERANCE,
                thick + THICKNESS_TOLERANCE,
                MICROMETER,
            ),
            limited("ring_width", "width", d.ring_width, "h7"),
            gap[0],
        ]
        groove = [
            bare("side_clearance", "side clearance", d.side_clearance),
            bare("groove_depth", "groove depth", d.groove_depth),
        ]
        clamp_key = {"closing-ring": "clamp", "forced-round": "clamp-forced", "band": "clamp-band"}[
            d.finishing
        ]
        facing = "face-step" if d.turns == 2 else "face-sides"
        rows = [
            self.bench.turned(facing, width, faced),
            self.bench.hand(clamp_key, clamp, "clamp"),
            self.last_turning(outside),
            self.bench.hand("dress-ends", gap),
            self.bench.hand("inspect", inspect),
            self.bench.hand("fit-double" if d.turns == 2 else "fit", groove),
        ]
        if d.inside_allowance > 0.0:
            inside = limited("inside_diameter", "inside, clamped", t.inside_clamped, "H9", INSIDE)
            run = d.ring_width + TURN_RUN_OUT
            times = self.bench.passes(max(d.inside_allowance, _LAST_CUTS), "bore")
            bored = self.bench.cut("bore", t.inside_clamped, run, times)
            cup = limited("outer_clamp_bore", "outer clamp", t.outer_clamp_bore, "H7", INSIDE)
            rows.insert(3, self.bench.turned("bore-clamped", [cup, inside], bored))
        return rows


def _tree(number, row):
    text = TEXT[row.key]
    entry = OrderedDict(
        (
            ("number", number),
            ("key", row.key),
            ("title", text.title),
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
