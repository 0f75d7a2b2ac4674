"""Calculation "route": the operations in order, with sizes, tool, speed, feed, time and check."""

from collections import OrderedDict, namedtuple

from ..cautions import CAUTIONS, cautions
from ..fields import field
from ..records import Quantity, figure
from . import machining, route_findings
from .part_sizes import Size, bare, limited
from .part_sizes import tree as size_tree
from .route_text import TEXT
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
        "the speeds your lathe has, if it is not free to choose",
        "any speed",
        lowest=1,
        highest=60,
        items=(field("", "speed", "a spindle speed", lowest=1.0, highest=20000.0),),
    ),
)

# A row of the card before it is numbered. key: into route_text.TEXT. sizes: list of
# part_sizes.Size. cut: a machining.Cut or None. minutes: for one ring, handling included, or
# None. each: done per ring.
Operation = namedtuple("Operation", ("key", "sizes", "cut", "minutes", "each"))

# Hand work and waiting [min a ring]; common practice, no source.
HAND_MINUTES = {
    "mark-out": 5.0,
    "saw-wedges": 4.0,
    "saw-ends": 4.0,
    "deburr": 3.0,
    "turn-through": 3.0,
    "put-on-former": 2.0,
    "spread": 2.0,
    "take-off": 2.0,
    "measure-free-gap": 2.0,
    "clamp": 5.0,
    "dress-ends": 6.0,
    "inspect": 10.0,
    "fit": 10.0,
    "fit-double": 12.0,
}
# Metal taken from each face while it is trued; the parting tool's width is the stock list's affair.
_FACE_RUN_OUT = 1.0
_TURN_RUN_OUT = 3.0
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
        listing.append(_tree(number, row, design))
        for key in TEXT[row.key].cautions:
            if key not in used:
                used.append(key)
    one = all_rings = 0.0
    for row in rows:
        if row.minutes is not None:
            one += row.minutes
            all_rings += row.minutes * (design.rings if row.each else 1)
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
            ("findings", route_findings.findings(design, tooling, values, rows)),
            ("chosen", chosen),
            ("cautions", cautions(*["figures", "pressure-system"] + used)),
        )
    )


def operations(design, tooling, values):
    """List of Operation for a Design and its Tooling, in the order of the work."""
    work = _Work(design, tooling, values)
    rows = work.tube()
    rows += work.sawing() if design.turns == 2 else work.plain_sawing()
    rows += work.setting()
    rows += work.finishing()
    return rows


class _Work:
    """Makes the rows; keeps what every cut shares."""

    def __init__(self, design, tooling, values):
        self.d = design
        self.t = tooling
        self.tool = values.get("tool_material") or "hss"
        self.machine = values.get("machine") or "light"
        self.speeds = tuple(values.get("spindle_speeds") or ())

    def cut(self, operation, diameter, travel, stock=None, times=1):
        if stock is not None:
            times = machining.passes(stock, operation, self.machine)
        return machining.cut(
            operation=operation,
            material_key=self.d.ring_material.key,
            diameter=diameter,
            travel=travel,
            tool=self.tool,
            machine=self.machine,
            times=times,
            spindle_speeds=self.speeds,
        )

    def turned(self, key, sizes, operation, diameter, travel, stock=None, each=True):
        made = self.cut(operation, diameter, travel, stock)
        return Operation(key, sizes, made, made.time, each)

    def last_turning(self, sizes):
        """The clamped outside: most of the metal as in roughing, then two light cuts."""
        d = self.d
        stock = 0.5 * (d.rough_outside - d.finish_outside)
        times = machining.passes(max(stock - _LAST_CUTS, 0.0), "turn-rough", self.machine) + 2
        made = self.cut("turn-finish", d.rough_outside, d.ring_width + _TURN_RUN_OUT, times=times)
        return Operation("turn-finish", sizes, made, made.time, True)

    def hand(self, key, sizes, each=True):
        return Operation(key, sizes, None, HAND_MINUTES.get(key), each)

    def tube(self):
        d = self.d
        wall = 0.5 * (d.rough_outside - d.bored_inside)
        length = d.blank_length
        rough = limited("rough_outside_diameter", "rough outside", d.rough_outside, "h11")
        bored = limited("bored_inside_diameter", "bore", d.bored_inside, "H9")
        part_length = bare("part_length", "length off the bar", length + 2.0 * d.facing_allowance)
        faced = limited("blank_length", "blank length", length, "h9")
        run = length + _TURN_RUN_OUT
        return [
            self.hand("survey", [bare("bore", "bore", d.bore)], each=False),
            self.turned("face-bar", [], "face", d.rough_outside, wall + _TURN_RUN_OUT, each=False),
            self.turned("turn-rough", [rough], "turn-rough", d.rough_outside, run, 2.0),
            self.turned("bore", [bored], "bore", d.bored_inside, run, 2.0),
            self.turned("part-off", [part_length], "part", d.rough_outside, wall + _FACE_RUN_OUT),
            self.turned(
                "face-blank",
                [faced],
                "face",
                d.rough_outside,
                wall + _FACE_RUN_OUT,
                2.0 * d.facing_allowance,
            ),
        ]

    def sawing(self):
        d, t = self.d, self.t
        mark = [
            bare("bridge_length", "bridge along the outside", t.bridge_length),
            bare("band_width", "band", d.band_width),
            bare("scarf_length", "run of each angled end", t.scarf_length),
        ]
        saw = [
            bare("cutter_diameter", "saw diameter", t.cutter_diameter),
            bare("slit_width", "saw thickness", d.slit_width),
            bare(
                "cutter_centre_distance",
                "centre of work to centre of saw, at full depth",
                t.slit.centre_distance,
            ),
            bare("table_travel", "turn of the table", t.slit.table_travel, "deg"),
        ]
        travel = 3.1416 * d.rough_outside * t.slit.table_travel / 360.0 + t.slit.depth
        made = machining.cut(
            operation="slit-saw",
            material_key=d.ring_material.key,
            diameter=t.cutter_diameter,
            travel=travel,
            tool="hss",
            machine=self.machine,
            teeth=machining.saw_teeth(t.cutter_diameter),
        )
        wedge = [
            bare("hand_wedge", "left at each end", t.slit.hand_wedge, "deg"),
            bare("hand_wedge_length", "along the inside", t.slit.hand_wedge_length),
        ]
        return [
            self.hand("mark-out", mark),
            Operation("slit", saw, made, made.time, True),
            self.hand("saw-wedges", wedge),
            self.hand("saw-ends", [bare("end_kerf", "saw thickness", d.end_kerf)]),
            self.hand("deburr", []),
        ]

    def plain_sawing(self):
        d = self.d
        key = "saw-step" if d.end_cut == "stepped" else "saw-end"
        saw = [bare("end_kerf", "saw thickness", d.end_kerf)]
        return [
            Operation(key, saw, None, HAND_MINUTES["saw-ends"], True),
            self.hand("deburr", []),
        ]

    def setting(self):
        d, t = self.d, self.t
        rows = []
        if d.turns == 2:
            rows.append(
                self.hand(
                    "turn-through", [bare("blank_length", "each free end moves", d.blank_length)]
                )
            )
        if t.former_diameter is not None:
            former = [limited("former_diameter", "former", t.former_diameter, "h9")]
            key = "put-on-former-bound" if d.setting == "bound" else "put-on-former"
            rows.append(Operation(key, former, None, HAND_MINUTES["put-on-former"], True))
        else:
            rows.append(
                self.hand("spread", [limited("spacer_width", "spacer", t.spacer_width, "js9")])
            )
        soak = [
            bare("soak_temperature", "ring at", d.soak_temperature, "degC"),
            bare("soak_time", "held", d.soak_time, "h"),
        ]
        heat = 60.0 * (d.soak_time + HEAT_UP_HOURS)
        rows.append(Operation("soak", soak, None, heat, False))
        rows.append(
            Operation(
                "turn-back" if d.turns == 2 else "take-off",
                [],
                None,
                HAND_MINUTES["take-off"],
                True,
            )
        )
        # The gap on the bench before turning is along the neutral line of the rough ring.
        free = d.gap_change + d.closed_gap
        rows.append(self.hand("measure-free-gap", [bare("free_gap", "free gap", free)]))
        return rows

    def finishing(self):
        d, t = self.d, self.t
        stock = 2.0 * d.facing_allowance + (0.0 if d.turns == 1 else d.slit_width)
        run = 0.5 * (d.rough_outside - d.bored_inside) + _FACE_RUN_OUT
        width = [
            limited("pot_bore", "pot", t.pot_bore, "H8"),
            limited("ring_width", "finished width", d.ring_width, "h7"),
        ]
        outside = [
            limited("finish_outside_diameter", "outside, clamped", d.finish_outside, "h7"),
            bare("clamped_gap", "gap while clamped", d.clamped_gap),
        ]
        clamp = [
            limited("closing_ring_bore", "closing ring", t.closing_ring_bore, "H7"),
            limited("clamp_mandrel_diameter", "spigot", t.clamp_mandrel_diameter, "g6"),
            bare("end_plate_diameter", "end plate", t.end_plate_diameter),
        ]
        gap = [
            Size(
                "closed_gap",
                "gap in the bore",
                d.closed_gap,
                "mm",
                d.closed_gap,
                1.25 * d.closed_gap + 0.02,
            ),
            bare("feeler_gap", "at the outer edge, before dressing", t.feeler_gap),
        ]
        thick = d.radial_thickness
        inspect = [
            bare("free_gap", "free gap", d.gap_change + d.closed_gap),
            Size(
                "radial_thickness",
                "thickness",
                thick,
                "mm",
                thick - THICKNESS_TOLERANCE,
                thick + THICKNESS_TOLERANCE,
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
            self.turned(facing, width, "face", d.rough_outside, run, stock),
            Operation(clamp_key, clamp, None, HAND_MINUTES["clamp"], True),
            self.last_turning(outside),
            self.hand("dress-ends", gap),
            self.hand("inspect", inspect),
            self.hand("fit-double" if d.turns == 2 else "fit", groove),
        ]
        if d.finishing == "band":
            inside = limited("inside_diameter", "inside, clamped", t.inside_clamped, "H9")
            rows.insert(
                3,
                self.turned(
                    "bore-clamped",
                    [inside],
                    "bore",
                    t.inside_clamped,
                    d.ring_width + _TURN_RUN_OUT,
                    max(d.inside_allowance, _LAST_CUTS),
                ),
            )
        return rows


def _tree(number, row, design):
    text = TEXT[row.key]
    entry = OrderedDict(
        (
            ("number", number),
            ("key", row.key),
            ("title", text.title),
            ("tool", text.tool),
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
        entry["time_all"] = Quantity(row.minutes * (design.rings if row.each else 1), "min")
    entry["each_ring"] = row.each
    entry["check"] = text.check
    entry["cautions"] = [
        OrderedDict((("key", key), ("text", CAUTIONS[key]))) for key in text.cautions
    ]
    return entry
