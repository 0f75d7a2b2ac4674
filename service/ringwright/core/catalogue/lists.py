"""Lists of answers: the columns of their rows, by name."""

from . import Column


def column(name, kind, meaning, items=()):
    """A Column; a name that ends in "?" is not always there."""
    return Column(
        name=name.rstrip("?"),
        kind=kind,
        meaning=meaning,
        items=items,
        always=not name.endswith("?"),
    )


CAUTION_ROWS = (column("key", "text", "which caution"), column("text", "text", "what it says"))
_LIMITS = (column("lower", "length", "the least"), column("upper", "length", "the most"))
_SIZES = (
    column("name", "text", "which size"),
    column("label", "text", "what it is called on the card"),
    column("value", "plain", "the size itself"),
    column("unit", "text", "its unit"),
    column("limits?", "object", "between which it is right", _LIMITS),
    column("reading", "text", "how it is taken"),
)
_PIECE = (
    column("diameter", "length", "to begin with"),
    column("hole", "length", "it may have; 0 is solid"),
    column("length", "length", "to begin with"),
)
_RINGS = column(
    "rings?",
    "records",
    "the rings measured so far",
    (
        column("ring", "count", "its number"),
        column("outcome", "text", "good: it comes right; watch: it can; stop: it cannot"),
        column("why", "text", "what it comes to"),
        column("remedy", "text", "what brings it right"),
        column(
            "sizes",
            "records",
            "its card from here on",
            (
                column("operation", "text", "at which operation"),
                column("name", "text", "which size"),
                column("label", "text", "what it is called"),
                column("value", "plain", "what it is to be now"),
                column("unit", "text", "its unit"),
                column("limits?", "object", "between which it is right", _LIMITS),
                column("measured?", "length", "what was measured"),
                column("outcome?", "text", "good or watch: whether that is within the limits"),
                column("cost?", "text", "what that alone makes of the ring"),
            ),
        ),
    ),
)
TOOLING = (
    _RINGS,
    column(
        "tools",
        "records",
        "the tools to make",
        (
            column("tool", "text", "which tool"),
            column("title", "text", "what it is called"),
            column("material", "text", "what to make it of"),
            column("why", "text", "what it is for"),
            column("sizes", "records", "its sizes", _SIZES),
            column("piece", "object", "what to make it from", _PIECE),
            column("time", "minutes", "to make it"),
        ),
    ),
)
OPERATIONS = column(
    "operations",
    "records",
    "the operations in order",
    (
        column("number", "count", "place in the order"),
        column("key", "text", "which operation"),
        column("title", "text", "what it is called"),
        column("hold", "text", "how the work is held"),
        column("tool", "text", "with which tool"),
        column("tools", "texts", "which of those to make"),
        column("text", "text", "how it is done"),
        column("sizes", "records", "sizes to work to", _SIZES),
        column("speed?", "speed", "of the spindle"),
        column("surface_speed?", "surface_speed", "at the cut"),
        column("feed?", "length", "for each turn, tooth or stroke"),
        column("feed_per?", "text", "turn, tooth or stroke"),
        column("passes?", "count", "how many cuts"),
        column("time?", "minutes", "for one ring"),
        column("time_all?", "minutes", "for all rings"),
        column("each_ring", "flag", "whether it is done for each ring"),
        column("check", "text", "what to look at when it is done"),
        column("cautions", "records", "what to be careful of", CAUTION_ROWS),
    ),
)
ROUTE = (_RINGS, OPERATIONS)
STOCK = (
    column(
        "sets",
        "records",
        "the sets of rings, each with its bar",
        (
            column("name", "text", "of the set"),
            column("material", "text", "of its rings"),
            column("count", "count", "rings wanted"),
            column("blanks", "count", "with spares"),
            column("sticks", "count", "lengths to chuck"),
            column("blanks_per_stick", "count", "out of the first of them"),
            column("fed_through_spindle", "flag", "whether the bar is fed through the spindle"),
            column("stick_length", "length", "of the first"),
            column("bar_length", "length", "of bar for all of them"),
            column("bar?", "text", "its size as it is asked for"),
            column("form?", "text", "solid or cored"),
            column("bar_diameter?", "length", "nominal"),
            column("bar_as_cast?", "length", "over its skin"),
            column("bar_bore?", "length", "of a core, nominal"),
            column("mass?", "mass", "of the bar"),
            column("swarf_share?", "ratio", "turned to swarf"),
            column("cost?", "money", "of the bar"),
        ),
    ),
    column(
        "cut_list?",
        "records",
        "the bars, and what is cut from each",
        (
            column("bar", "text", "which bar"),
            column("have", "flag", "whether it is the shop's own"),
            column("fed_through_spindle", "flag", "whether the bar is fed through the spindle"),
            column("alike", "count", "bars cut in this way"),
            column("bar_length", "length", "before"),
            column(
                "sticks",
                "records",
                "the pieces in the order cut",
                (
                    column("set", "text", "of which set"),
                    column("blanks", "count", "it gives"),
                    column("stick_length", "length", "to saw it to"),
                ),
            ),
            column("used", "length", "with saw cuts"),
            column("offcut", "length", "what is left"),
            column("offcut_kept", "flag", "whether it is long enough to keep"),
        ),
    ),
    column(
        "to_order?",
        "records",
        "what to ask a producer for where no bar was offered",
        (
            column("set", "text", "for which set"),
            column("bar", "text", "its size"),
            column("blanks", "count", "it gives"),
            column("sticks", "count", "lengths to chuck"),
            column("length", "length", "of all of it"),
        ),
    ),
)
WALL_PRESSURE = (
    column(
        "turns",
        "records",
        "what a turn does, along it",
        (
            column("turn", "count", "which turn"),
            column("angle", "series", "counted from the gap", "angle"),
            column("pressure", "series", "on the wall", "pressure"),
            column("light", "series", "between ring and wall", "length"),
            column("moment", "series", "that bends the ring", "moment"),
        ),
    ),
    column(
        "point_forces",
        "records",
        "where the ring presses at a point",
        (
            column("turn", "count", "which turn"),
            column("angle", "angle", "counted from the gap"),
            column("force", "force", "there"),
        ),
    ),
)
_VERDICT = "what to do, in a word"
BORE_SURVEY = (
    column("verdict", "text", _VERDICT),
    column(
        "sections",
        "records",
        "the bore height by height",
        (
            column("height", "length", "along the bore"),
            column("readings", "count", "taken there"),
            column("mean_diameter", "length", "there"),
            column("ovality?", "length", "largest less smallest diameter"),
            column("oval_direction?", "angle", "of the largest diameter"),
            column("misfit", "length", "root mean square left over"),
        ),
    ),
    column(
        "bore_shape",
        "object",
        "the worst section, as wall-pressure takes it",
        (
            column(
                "harmonics",
                "records",
                "its lobes",
                (
                    column("order", "count", "lobes all round"),
                    column("amplitude", "length", "of the radius"),
                    column("phase", "angle", "of a lobe"),
                ),
            ),
        ),
    ),
)
INSPECTION = (
    column("verdict", "text", _VERDICT),
    column(
        "next_ring",
        "records",
        "inputs that make the next ring's card what this ring has shown",
        (
            column("input", "text", "which input"),
            column("value", "plain", "what to give for it"),
            column("unit", "text", "its unit"),
            column("why", "text", "what showed it"),
        ),
    ),
    _RINGS,
)
SPREAD = (
    column(
        "rankings",
        "records",
        "for each outcome, what moves it most",
        (
            column("outcome", "text", "which figure"),
            column(
                "inputs",
                "records",
                "the largest share first",
                (
                    column("input", "text", "which input"),
                    column("plus_minus", "any_quantity", "its spread"),
                    column("effect", "any_quantity", "what that makes of the outcome"),
                    column("share", "ratio", "of the outcome's variance"),
                ),
            ),
        ),
    ),
)
WARMING = (
    column("first_to_touch", "text", "which part, in a stone-cold cylinder"),
    column(
        "series",
        "object",
        "clearances against the temperature of the cylinder wall",
        (column("cylinder_temperature", "series", "of the wall", "temperature"),)
        + tuple(
            [
                column(part + way, "series", what + how, "length")
                for way, how in (
                    ("_together", ", all parts at the wall's temperature"),
                    ("_hurried", ", ring and piston at steam heat"),
                )
                for part, what in (
                    ("gap", "gap of the ring"),
                    ("side_clearance", "side clearance"),
                    ("piston_clearance", "piston clearance"),
                )
            ]
        ),
    ),
)


def running(figures):
    """Lists of "running". figures: name -> Declared, for what stands in their rows."""
    names = ("leak_rate", "leak_share", "gap_leak", "side_face_leak", "steam_use")
    told = dict(
        [(name, column(name, "figure", figures[name].label, figures[name])) for name in names]
    )
    return (
        column(
            "comparison",
            "records",
            "the rings side by side",
            (
                column("ring", "text", "now, plain or double-turn"),
                told["leak_rate"],
                told["leak_share"],
                told["gap_leak"],
                told["side_face_leak"],
                column("light_leak", "flow", "past a light"),
                told["steam_use"],
            ),
        ),
        column(
            "diagram",
            "object",
            "the stated cycle, pressures absolute",
            (
                column("travel", "series", "share of the stroke", "ratio"),
                column("pressure_outward", "series", "on the way out", "pressure"),
                column("pressure_returning", "series", "on the way back", "pressure"),
            ),
        ),
    )
