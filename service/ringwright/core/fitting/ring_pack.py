"""Calculation "ring-pack": how many rings, how they share the pressure, and where they stand."""

import math
from collections import OrderedDict

from ..catalogue import figures_of
from ..catalogue import inputs as declare
from ..catalogue.inputs_engine import ENGINE, RING_AT_HAND
from ..catalogue.inputs_groove import GROOVE, PACK
from ..catalogue.inputs_ring import DOUBLE_TURN, PLAIN, RING
from ..catalogue.ring_pack import ANSWER
from ..cautions import cautions
from ..records import GOOD, STOP, WATCH, Method, Quantity, finding
from ..ring import remedies
from ..ring.remedies import change
from ..running import friction, ring_spaces
from ..running.running_findings import steam_mass
from ..wording import decimal, length, percent, said_up
from . import land
from .groove_recut import LAND_SHARE
from .pack import FEWEST, MOST_SHOWN, USUAL, Pack

# So much of the steam used is not worth another ring; common practice, no source.
WORTH = 0.005

FIELDS = declare.listed(
    (RING, ENGINE, RING_AT_HAND, GROOVE, PACK),
    "bore", "stroke", "speed", "steam_pressure", "steam_temperature", "acting", "cut_off",
    "release", "compression", "clearance_volume", "back_pressure", "rings_on_piston", "ring_type",
    "end_cut", "end_land", "inner_land", "piston_length", "radial_thickness", "ring_width",
    "closed_gap", "piston_diameter", "side_clearance", "groove_depth", "ring_material",
    "piston_material", "cylinder_material", "shop_temperature", "wall_pressure",
    "expander_pressure", "friction_coefficient", "inch_sizes",
)  # fmt: skip
_NAMES = declare.names(FIELDS)
_ALL = dict([(entry.name, entry) for entry in FIELDS])

METHODS = (
    Method(
        "steam-cost",
        "Steam that leak and friction cost",
        "W_gap + P M/IP",
        "friction made good by as much more power; wear and broken rings left out",
        ("orifice", "ring-load", "practice"),
    ),
    Method(
        "pack-length",
        "Length of a piston for its rings",
        "n (h1 + c) + (n - 1) inner land + 2 end land",
        "grooves alike",
        ("geometry", "khurmi"),
    ),
    Method(
        "gap-spacing",
        "Gaps from ring to ring",
        "360/n up to three rings, 180 beyond",
        "neighbours as far apart as may be, for two Bourne has 90; free rings wander",
        ("bourne", "practice"),
    ),
)


def calculate(values):
    """How many rings and where: figures, findings, chosen, cautions, "rings" and "counts".

    values: checked values of FIELDS, a plain dict in core units. Raises InputProblem.
    """
    pack = Pack(values)
    given = pack.given
    count, ring_type = given["rings_on_piston"], given["ring_type"]
    _, parted = pack.split(count, ring_type)
    whole = _total(parted.differences)
    found = {
        "gap_leak": tuple([pack.split(count, ring_type, level)[0] for level in range(3)]),
        "friction_power": tuple([pack.friction(count, level) for level in range(3)]),
        "steam_cost": pack.cost(count),
        "pack_length": pack.length(count),
        "least_land": pack.least,
        "first_ring_share": parted.differences[0] / whole if whole else 1.0,
    }
    if count > 1:
        found["fillings"] = pack.fillings(*pack.opening(ring_type, USUAL))
        found["gap_spacing"] = 360.0 / count if count < 4 else 180.0
    shown = {
        "n": count, "h1": given["ring_width"], "c": given["side_clearance"], "d1": given["bore"],
        "d_p": given["piston_diameter"], "depth": pack.depth, "p_s": given["steam_pressure"],
        "inner": pack.between, "end": pack.end, "W_gap": found["gap_leak"][USUAL],
        "M": pack.engine.base[USUAL], "IP": pack.engine.power[USUAL],
        "P": found["friction_power"][USUAL], "dp": pack.engine.duty.mean_difference,
        "p": given["wall_pressure"], "mu": given["friction_spread"][USUAL],
    }  # fmt: skip
    rows, _ = _judged(values, pack)
    answer = OrderedDict()
    answer["figures"] = figures_of(ANSWER, found, shown, {"gap_leak": "ring-spaces"})
    answer["findings"] = remedies.tried(values, rows, _options(values, pack), _judged, _ALL, _words)
    answer["rings"] = _rings(pack, parted.differences, whole)
    answer["counts"] = _counts(pack, count)
    answer["chosen"] = [one for one in pack.chosen if one.input in _NAMES]
    answer["cautions"] = cautions("figures", "pressure-system", "isolate")
    return answer


def _total(numbers):
    return ring_spaces.sum_of(numbers)


def _pressed(pack, differences):
    """Mean pressure of each ring on the wall, its spring and the steam behind it [MPa]."""
    own = pack.given["wall_pressure"] + (pack.given["expander_pressure"] or 0.0)
    return [own + friction.STEAM_SHARE[USUAL] * one for one in differences]


def _rings(pack, differences, whole):
    pressed = _pressed(pack, differences)
    mean = _total(pressed) / len(pressed)
    rows = []
    for at, across in enumerate(differences):
        row = OrderedDict((("ring", at + 1),))
        row["pressure_difference"] = Quantity(across, "MPa")
        row["share"] = Quantity(across / whole if whole else 1.0, "1")
        row["wall_pressure_with_steam"] = Quantity(pressed[at], "MPa")
        row["wear"] = Quantity(pressed[at] / mean, "1")
        rows.append(row)
    return rows


def _counts(pack, count):
    rows = []
    for rings in list(range(1, MOST_SHOWN + 1)) + ([count] if count > MOST_SHOWN else []):
        row = OrderedDict((("rings", rings),))
        row["leak"] = Quantity(pack.split(rings, pack.given["ring_type"])[0], "kg/h")
        row["friction_power"] = Quantity(pack.friction(rings), "W")
        row["steam_cost"] = Quantity(pack.cost(rings), "kg/h")
        row["pack_length"] = Quantity(pack.length(rings), "mm")
        rows.append(row)
    return rows


def _judged(values, pack=None):
    """(list of Finding, Pack): what a remedy is tried by."""
    pack = pack or Pack(values)
    count = pack.given["rings_on_piston"]
    rows = [_number(pack, count), _shares(pack, count), _double(pack, count)]
    if count > 1:
        rows.append(_places(pack, count))
    narrow = min(pack.end, pack.between) if count > 1 else pack.end
    # Bending goes by the square of the width.
    breaks = pack.least / math.sqrt(land.CORNER_AND_KNOCK)
    said = "The narrowest land is %s wide; strength asks for %s." % (
        length(narrow),
        length(pack.least),
    )
    good = narrow >= pack.least - 1e-9
    outcome = GOOD if good else WATCH if narrow > breaks else STOP
    remedy = "Make the lands wider."
    rows.append(_row("land-short", outcome, narrow, pack.least, "mm", said, remedy))
    room = values.get("piston_length")
    if room is not None:
        need = pack.length(count)
        said = "Rings and lands need %s; the piston has %s." % (length(need), length(room))
        outcome = GOOD if need <= room + 1e-9 else STOP
        remedy = "Take fewer rings, or narrower lands."
        rows.append(_row("pack-length", outcome, need, room, "mm", said, remedy))
    return rows, pack


def _row(check, outcome, value, limit, unit, said, remedy):
    told = (Quantity(value, unit), Quantity(limit, unit))
    return finding(check, outcome, said, "" if outcome == GOOD else remedy, *told)


def _number(pack, count):
    best = pack.best()
    now, then = pack.cost(count), pack.cost(best)
    single = count < FEWEST[pack.given["ring_type"]]
    worth = single or now - then > WORTH * pack.engine.base[USUAL]
    said = "Leak and friction of %s take the worth of %s of steam an hour" % (
        _so_many(count),
        steam_mass(now),
    )
    if best != count:
        said += "; with %s it is %s" % (_so_many(best), steam_mass(then))
    if single:
        said += ". One plain ring alone leaves none when it breaks"
    outcome = WATCH if worth else GOOD
    remedy = "Give the piston %s." % _so_many(best)
    return _row("ring-count", outcome, count, best, "1", said + ".", remedy)


def _so_many(count):
    return "one ring" if count == 1 else "%d rings" % count


def _shares(pack, count):
    _, parted = pack.split(count, pack.given["ring_type"])
    pressed = _pressed(pack, parted.differences)
    hardest, easiest = max(pressed), min(pressed)
    if count == 1:
        said = "The one ring takes the whole of the pressure."
    else:
        said = "Of the pressure the first ring takes %s." % percent(
            parted.differences[0] / _total(parted.differences)
        )
        times = decimal(hardest / easiest, 1)
        if times == "1.0":
            said += " All press alike, and wear alike."
        else:
            at = pressed.index(hardest)
            both = pack.sides == 2.0
            said += " %s hardest, %s times as hard as the least, and wear%s so much faster." % (
                "The rings at the ends press"
                if both
                else "It presses"
                if at == 0
                else "The last one presses",
                times,
                "" if both else "s",
            )
    return finding("ring-shares", GOOD, said, "", Quantity(hardest, "MPa"))


def _double(pack, count):
    """One double-turn ring against two plain ones."""
    one = [pack.split(1, DOUBLE_TURN, level)[0] for level in range(3)]
    two = pack.split(2, PLAIN)[0]
    said = "One double-turn ring loses %s of steam an hour by its gaps, between %s and %s." % (
        tuple([steam_mass(one[level]) for level in (1, 0, 2)])
    )
    said += " Two plain rings lose %s." % steam_mass(two)
    most = two + WORTH * pack.engine.base[USUAL]
    serves = one[USUAL] <= most
    said += " So one serves for two, within %s %% of the steam used." % decimal(100.0 * WORTH, 1)
    if not serves:
        said = said.replace("one serves", "one does not serve")
    asked = pack.given["ring_type"] == DOUBLE_TURN and count == 1
    outcome = WATCH if asked and not serves else GOOD
    remedy = "Fit two double-turn rings, or a piston with less clearance."
    return _row("double-for-two", outcome, one[USUAL], most, "kg/h", said, remedy)


def _places(pack, count):
    given = pack.given
    room = 2.0 * pack.between / max(given["new_gaps"][given["ring_type"]], 1e-3)
    said = "From gap to gap steam has %s times the room of a gap." % decimal(room, 0)
    said += " So gaps need only stand out of line. Leave rings free: they turn and wear evenly."
    said += " Peg a ring only where its joint would pass a port."
    return finding("gap-places", GOOD, said, "", Quantity(room, "1"))


def _options(values, pack):
    """What to try for each finding: a function of a Finding to changes, or None for the hand."""
    count = pack.given["rings_on_piston"]
    wide = said_up(pack.least)

    def options(row):
        if row.check == "ring-count":
            return [change(("rings_on_piston", pack.best()))]
        if row.check == "double-for-two":
            return [change(("rings_on_piston", 2)), change(("piston_diameter", None))]
        if row.check == "land-short":
            lands = (("end_land", pack.end), ("inner_land", pack.between))
            return [change(*[(name, wide) for name, is_now in lands if is_now < pack.least])]
        if row.check == "pack-length":
            usual = said_up(max(LAND_SHARE * pack.turn_width, pack.least))
            lands = (("inner_land", usual), ("end_land", usual))
            found = [change(*lands)]
            for rings in range(count - 1, 0, -1):
                fewer = ("rings_on_piston", rings)
                found += [change(fewer), change(fewer, *lands)]
            return found
        return None

    return options


def _words(name, value, pack):
    if name == "rings_on_piston":
        return "give the piston %s" % _so_many(value)
    if name == "piston_diameter":
        return "make the piston %s in diameter" % length(pack.given["piston_diameter"])
    called = {"end_land": "end lands", "inner_land": "lands between grooves"}
    return "make the %s %s wide" % (called[name], length(value))
