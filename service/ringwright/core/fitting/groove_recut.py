"""Calculation "groove-recut": a worn groove trued up, its lands, and the ring that suits it."""

from collections import OrderedDict

from .. import clearances, shop_sizes
from ..catalogue import figures_of
from ..catalogue import inputs as declare
from ..catalogue.groove import ANSWER
from ..catalogue.inputs_blank import BLANK
from ..catalogue.inputs_groove import GROOVE
from ..catalogue.inputs_ring import DOUBLE_TURN, PLAIN, RING
from ..cautions import cautions
from ..problems import Fault, InputProblem
from ..properties import fits
from ..properties.materials import for_use
from ..records import GOOD, STOP, WATCH, Method, Quantity, finding
from ..ring import fit_findings, remedies, ring_findings
from ..ring.design import settle
from ..ring.judging import side_left
from ..ring.remedies import change
from ..wording import fine_length, in_a_sentence, length, percent, said_up, stress
from . import land

# A land is 0.75 to 1 times as wide as its ring is: Khurmi and Gupta, 32.9, for far more pressure.
LAND_SHARE = 0.75
# Of what still stands by itself in a groove [mm]; common practice, no source.
LEAST_INSERT = 1.0
# Share of the ring's width that may pass the end of the bore; common practice, no source.
OVERRUN = 0.5
# Depth of a groove beyond its ring, as a share of the ring's thickness; common practice, no source.
DEEP = 0.5

_RING = (
    "bore", "ring_type", "ring_width", "radial_thickness", "groove_depth", "piston_diameter",
    "ring_material", "piston_material", "cylinder_material", "steam_pressure", "steam_temperature",
    "shop_temperature", "wall_pressure", "inch_sizes",
)  # fmt: skip
FIELDS = tuple(GROOVE.values()) + declare.listed((RING,), *_RING)
# What sizing too would say of the ring in its new groove; the rest is sizing's to tell.
_OF_SIZING = ("width", "groove-depth", "piston-clearance", "piston-metal")
_ALL = dict(RING)
_ALL.update(BLANK)
_ALL.update(GROOVE)

METHODS = (
    Method(
        "groove-recut",
        "Width at which a worn groove cleans up",
        "W = widest + step + 2 cut; taper = widest - narrowest + step",
        "sides square to the axis; each side cut at its worst place",
        ("geometry", "practice"),
    ),
    Method(
        "groove-insert",
        "Width of an insert beside a ring",
        "i = W - h1 - c, c the clearance of a ring as wide as both",
        "one side clearance for ring and insert together",
        ("geometry", "practice"),
    ),
    Method(
        "land-left",
        "Land left beside a groove",
        "land - (groove - mouth)/2 at an end, land - (groove - mouth) between two grooves",
        "cut alike from both sides; least: all from the side of that land",
        ("geometry",),
    ),
    Method(
        "land-bending",
        "Bending and shear of a land at its root",
        "6 M/t^2 and 3 q (a^2 - b^2)/(4 b t), M at the root of a ring plate",
        "as least-land",
        ("land-plate",),
    ),
)


def clean_width(readings, step, cut):
    """(width at which both sides clean up, how far they are out of parallel) [mm].

    W = widest + step + 2 cut; widest - narrowest + step.

    readings: sequence of (mouth, bottom) [mm]. step: worn in beyond those [mm]. cut: off each side
    [mm].
    Source: geometry.
    """
    widths = [one for pair in readings for one in pair]
    return max(widths) + step + 2.0 * cut, max(widths) - min(widths) + step


def land_left(width, mouth, groove, grooves):
    """(least, usual, most) left of a land [mm].

    width: of the land before [mm]. mouth, groove: width of the groove before and after [mm].
    grooves: beside the land that are cut, 1 or 2.
    Source: geometry.
    """
    off = grooves * max(groove - mouth, 0.0)
    return width - off, width - 0.5 * off, width


def calculate(values):
    """A worn groove cut true: figures, findings, chosen, cautions and "ways".

    values: checked values of FIELDS, a plain dict in core units. Raises InputProblem.
    """
    choose = declare.Chooser(values, GROOVE)
    worn = _worn(values, choose)
    design, ring_chosen = _ring(values, worn)
    lands = _lands(worn, design.groove_width)
    narrow = _narrow(lands)
    plate = _plate(design)
    found = {
        "clean_width": worn["clean"], "out_of_parallel": worn["taper"],
        "groove_width": design.groove_width, "groove_depth": design.groove_depth,
        "ring_width": design.section.width, "turn_width": design.turn_width,
        "radial_thickness": design.section.thickness, "side_clearance": design.side_clearance,
    }  # fmt: skip
    found["side_clearance_hot"] = side_left(design, design.section.width)
    found["least_land"] = land.least_of(design)
    found.update(lands)
    if narrow > 0.0:
        found["land_stress"], found["land_shear"] = land.root_stresses(width=narrow, **plate)
    if values.get("old_ring_width") is not None:
        found["insert_width"] = _insert_width(values, worn, design)
    shown = {
        "widest": worn["clean"] - worn["step"] - 2.0 * worn["cut"], "step": worn["step"],
        "cut": worn["cut"], "groove": design.groove_width, "c": design.side_clearance, "t": narrow,
        "d1": design.duty.bore, "d_p": design.piston_diameter, "depth": design.groove_depth,
        "p_s": design.duty.steam_pressure, "h1": design.section.width,
        "a1": design.section.thickness,
    }  # fmt: skip
    rows, _ = _judged(values)
    names = declare.names(FIELDS)
    whole = OrderedDict((("figures", figures_of(ANSWER, found, shown)),))
    whole["findings"] = remedies.tried(values, rows, _options(values), _judged, _ALL, _words)
    whole["ways"] = _ways(values, worn)
    whole["chosen"] = choose.chosen + [one for one in ring_chosen if one.input in names]
    whole["cautions"] = cautions("figures", "isolate", "rotating-work", "pressure-system")
    return whole


def _worn(values, choose):
    """The worn groove: mouth, step, cut, lands, what it cleans up at, how far out of parallel."""
    readings = [(one["mouth"], one["bottom"]) for one in values["groove_readings"]]
    mouth = max([one[0] for one in readings])
    worn = {"mouth": mouth, "step": choose("groove_step"), "cut": choose("side_cut")}
    worn["clean"], worn["taper"] = clean_width(readings, worn["step"], worn["cut"])
    worn["end_land"] = choose("end_land", mouth)
    worn["inner_land"] = values.get("inner_land")
    return worn


def _ring(values, worn, ring_type=None, own=False):
    """(Design, chosen) of the ring that suits the groove. own: as wide as sizing makes it."""
    asked = dict([(name, values.get(name)) for name in _RING])
    asked["ring_type"] = ring_type or asked["ring_type"]
    if own:
        asked["ring_width"] = None
    elif asked["ring_width"] is None or ring_type:
        asked["ring_width"] = None
        tight = settle(dict(asked, groove_width=worn["clean"]))[0].section.width
        asked["ring_width"] = shop_sizes.over(tight, asked["inch_sizes"])
    design, chosen = settle(asked)
    if 2.0 * design.groove_depth >= design.piston_diameter:
        raise through(design.section.thickness)
    return design, chosen


def through(thickness):
    """The InputProblem of a groove through the whole piston. thickness: of its ring [mm]."""
    return InputProblem(
        [
            Fault(
                ("groove_depth",),
                "size",
                "the groove goes through the middle of the piston",
                "give a groove less deep: the ring is %s thick" % length(thickness),
            )
        ]
    )


def _lands(worn, groove):
    found = {"end_land_left": land_left(worn["end_land"], worn["mouth"], groove, 1)}
    if worn["inner_land"] is not None:
        found["inner_land_left"] = land_left(worn["inner_land"], worn["mouth"], groove, 2)
    return found


def _narrow(lands):
    return min([left[1] for left in lands.values()])


def _plate(d):
    """The land of a Design as land.root_stresses takes it, but for its width."""
    return {
        "pressure": d.duty.steam_pressure,
        "outer": 0.5 * d.duty.bore,
        "inner": 0.5 * d.piston_diameter - d.groove_depth,
        "poisson": d.duty.piston.poisson,
    }


def _insert_width(values, worn, design):
    return worn["clean"] - values["old_ring_width"] - design.side_clearance


def _judged(values):
    """(list of Finding, Design): what a remedy is tried by."""
    worn = _worn(values, declare.Chooser(values, GROOVE))
    d, _ = _ring(values, worn)
    rows = _groove_rows(d, worn) + _land_rows(d, _lands(worn, d.groove_width)) + _of_sizing(d)
    if values.get("old_ring_width") is not None:
        rows.append(_insert(_insert_width(values, worn, d)))
    port, out = values.get("passed_port"), values.get("ring_overrun")
    if port is not None:
        said = "The ring, %s wide, passes a port of %s." % (length(d.section.width), length(port))
        remedy = "Make the ring wider than the port, or peg its joint clear of the port."
        good = d.section.width > port
        rows.append(_row("ring-over-port", good, d.section.width, port, "mm", said, remedy))
    if out is not None:
        out += 0.5 * (d.groove_width - worn["mouth"])
        most = OVERRUN * d.section.width
        said = "At the dead centre %s of the ring pass the end of the bore; half of it may." % (
            length(out)
        )
        remedy = "Put an insert on that side of a narrower ring, or lengthen the bore."
        outcome = GOOD if out <= most else WATCH if out < d.section.width else STOP
        rows.append(_row("overrun", outcome, out, most, "mm", said, remedy))
    return rows, d


def _of_sizing(d):
    rows = []
    ring_findings.section_findings(rows, d)
    rows += fit_findings.findings(d)
    return [row for row in rows if row.check in _OF_SIZING and row.outcome != GOOD]


def _row(check, outcome, value, limit, unit, said, remedy):
    if outcome in (True, False):
        outcome = GOOD if outcome else WATCH
    told = (Quantity(value, unit), Quantity(limit, unit))
    return finding(check, outcome, said, "" if outcome == GOOD else remedy, *told)


def _groove_rows(d, worn):
    _, least, greatest = clearances.running_side_clearance(d.duty.bore)
    room, groove, clean = greatest - least, d.groove_width, worn["clean"]
    said = "The worn groove is %s out of parallel; a ring has room for %s." % (
        fine_length(worn["taper"]),
        fine_length(room),
    )
    remedy = "Cut it to %s with sides square to the axis" % length(max(groove, clean))
    if groove >= fits.LOWEST_NOMINAL:
        remedy += ", at most %s more" % fine_length(fits.tolerance(groove, 8))
    rows = [
        _row("groove-taper", worn["taper"] <= room, worn["taper"], room, "mm", said, remedy + ".")
    ]
    said = "The ring asked for takes a groove of %s; the wear is out at %s." % (
        length(groove),
        length(clean),
    )
    outcome = GOOD if groove >= clean - 1e-9 else STOP
    remedy = "Make the ring at least %s wider." % fine_length(clean - groove)
    rows.append(_row("groove-cleans-up", outcome, groove, clean, "mm", said, remedy))
    deep, most = d.groove_depth - d.section.thickness, DEEP * d.section.thickness
    most = max(most, 2.0 * clearances.DEPTH_ALLOWANCE)
    said = "Behind the ring the groove is %s deeper than the ring is thick." % length(deep)
    remedy = "Make the ring thicker, or shrink a hoop on the bottom of the groove."
    return rows + [_row("groove-deep", deep <= most, deep, most, "mm", said, remedy)]


def _land_rows(d, lands, width=None):
    """Rows of the narrowest land. width: of its ring [mm], None for that of the Design."""
    turn = (width or d.section.width) / d.duty.turns
    narrow, plate = _narrow(lands), _plate(d)
    breaks = land.FATIGUE * d.duty.piston.tensile_low
    careful = breaks / land.CORNER_AND_KNOCK
    need = length(said_up(land.least_of(d)))
    if narrow <= 0.0:
        said = "Nothing is left of a land; strength asks for %s." % need
        remedy = "Make a piston with new lands."
        return [_row("land-strength", STOP, narrow, land.least_of(d), "mm", said, remedy)]
    seen = land.telling(*land.root_stresses(width=narrow, **plate))
    outcome = GOOD if seen <= careful else WATCH if seen <= breaks else STOP
    said = "The narrower land, %s, sees %s at its root; it bears %s for ever." % (
        length(narrow),
        stress(seen),
        stress(careful),
    )
    remedy = "Leave a land of %s, or make a piston with new lands." % need
    rows = [_row("land-strength", outcome, seen, careful, "MPa", said, remedy)]
    wanted = LAND_SHARE * turn
    said = "The narrower land is %s as wide as %s; practice leaves %s." % (
        percent(narrow / turn),
        "its ring" if d.duty.turns == 1 else "a turn of its ring",
        percent(LAND_SHARE),
    )
    remedy = "Cut less off, or make a piston with new lands."
    return rows + [_row("land-width", narrow >= wanted - 1e-9, narrow, wanted, "mm", said, remedy)]


def _insert(width):
    said = "Beside the old ring an insert of %s fills the groove." % length(width)
    if width <= 0.0:
        said = "The old ring fills the groove and leaves no room for an insert."
    remedy = "Cut the groove wider, so that the insert has %s." % length(LEAST_INSERT)
    outcome = GOOD if width >= LEAST_INSERT - 1e-9 else STOP
    return _row("insert", outcome, width, LEAST_INSERT, "mm", said, remedy)


def _ways(values, worn):
    """Rows of "ways": either ring to suit, a double-turn one of its own width, an insert."""
    rows = []
    old = values.get("old_ring_width")
    for way, ring_type, own, kept in (
        ("A plain ring to suit", PLAIN, False, None),
        ("A double-turn ring to suit", DOUBLE_TURN, False, None),
        ("A double-turn ring as wide as sizing makes it", DOUBLE_TURN, True, None),
        ("The old ring, and an insert beside it", None, False, old),
    ):
        if old is None and ring_type is None:
            continue
        d, _ = _ring(values, worn, ring_type, own)
        groove, width = d.groove_width, d.section.width
        if kept is not None:
            groove, width = worn["clean"], kept
        elif own and groove <= worn["clean"]:
            continue
        lands = _lands(worn, groove)
        found = _land_rows(d, lands, width)
        row = OrderedDict((("way", way), ("groove_width", Quantity(groove, "mm"))))
        row["ring_width"] = Quantity(width, "mm")
        if kept is not None:
            beside = _insert_width(values, worn, d)
            found.append(_insert(beside))
            row["insert_width"] = Quantity(beside, "mm")
        else:
            found += _of_sizing(d)
        for name, left in lands.items():
            row[name] = Quantity(left[1], "mm")
        worst = found[0]
        for one in found:
            if one.outcome == STOP != worst.outcome or one.outcome != GOOD == worst.outcome:
                worst = one
        row["outcome"], row["why"] = worst.outcome, worst.why
        rows.append(row)
    return rows


def _options(values):
    """What to try for each finding: a function of a Finding to changes, or None for the hand."""
    less = [change(("side_cut", cut)) for cut in (0.05, 0.02, GROOVE["side_cut"].lowest)]
    as_chosen = [change(("ring_width", None))]
    thick = [change(("radial_thickness", None))]
    depth = values.get("groove_depth")
    turns = [change(("ring_type", DOUBLE_TURN), ("radial_thickness", None))]

    def options(row):
        check = row.check
        if check == "land-strength":
            metals = [change(("piston_material", key)) for key in for_use("piston")]
            return as_chosen + less + metals
        if check == "ring-over-port":
            wide = shop_sizes.over(1.02 * row.limit.value, values.get("inch_sizes"))
            return [change(("ring_width", wide))]
        if check == "insert":
            cut = GROOVE["side_cut"].default.value
            cut = values.get("side_cut") or cut
            return [change(("side_cut", said_up(cut + 0.51 * (LEAST_INSERT - row.value.value))))]
        if check == "groove-deep":
            return thick + [change(("radial_thickness", said_up(depth / (1.0 + DEEP))))]
        if check == "groove-depth":
            deeper = depth + clearances.DEPTH_ALLOWANCE - row.value.value
            return thick + [change(("groove_depth", said_up(deeper)))]
        return {
            "groove-cleans-up": as_chosen,
            "land-width": as_chosen + less + turns,
            "width": as_chosen + turns,
        }.get(check)

    return options


def _words(name, value, design):
    if name == "side_cut":
        return "cut %s off each side of the groove" % fine_length(value)
    if name == "piston_material":
        return "make the piston of %s" % in_a_sentence(design.duty.piston.title)
    if name == "ring_type":
        return "make a double-turn ring"
    if name == "ring_width":
        return "make the ring %s wide" % length(design.section.width)
    if name == "groove_depth":
        return "deepen the groove to %s" % length(value)
    if name == "radial_thickness":
        return "make the ring %s thick" % length(design.section.thickness)
    return remedies.plain_words(name, value)
