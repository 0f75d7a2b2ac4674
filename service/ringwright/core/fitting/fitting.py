"""Calculation "fitting": the work from the finished rings to the laid-up engine, as a card."""

from collections import OrderedDict

from .. import clearances
from ..catalogue import figures_of
from ..catalogue.fitting import ANSWER
from ..cautions import cautions
from ..making.part_sizes import DEPTH, FEELER, FITTED, INSIDE, MICROMETER, bare, between
from ..making.route import tree
from ..making.route_ring import each
from ..making.route_rows import Operation
from ..making.route_text import TEXT as OF_ROUTE
from ..making.route_words import marks_of, sentences, told
from ..records import GOOD, Method
from ..ring import sizing
from ..ring.allowances import CUT_ANGLES
from ..ring.blank import feeler_reading
from ..ring.design import settle
from ..ring.judging import gap_left
from ..ring.soak import can_be_set
from ..running import wear
from ..walk.finished import groove_limits, side_limits
from . import land
from .fitting_text import SIGNS, TEXT

FIELDS = sizing.FIELDS
# Steam hotter than its pressure makes it by more than this is called superheated [K]; common
# practice, no source.
SUPERHEAT = 10.0
BARE = "contact thermometer on bare metal"
# Hours under steam until which the load is kept so low; common practice, no source.
RUNNING_IN = (
    ("no_load", "no load until", 1.0),
    ("quarter_load", "a quarter of full load until", 3.0),
    ("half_load", "half of full load until", 6.0),
    ("most_load", "three quarters of it until", 10.0),
)
METHODS = (
    Method(
        "wall-before-load",
        "Wall of the cylinder before load",
        "T_w at which ring and piston at steam heat keep the least that practice leaves",
        "not below the shop's temperature, not above the steam's",
        ("expansion", "practice"),
    ),
)


def wall_before_load(design):
    """Temperature of the cylinder wall that load waits for [degC].

    Ring and piston stand at steam heat; gap and piston clearance keep what practice leaves. Both
    grow in a straight line with the wall. design: a Design.
    """
    d = design
    shop, steam = d.duty.shop, d.duty.temperature

    def played(wall):
        return clearances.hot_piston_clearance(
            bore=d.duty.bore,
            piston_diameter=d.piston_diameter,
            piston_expansion=d.duty.piston.expansion,
            cylinder_expansion=d.duty.cylinder.expansion,
            piston_temperature=steam,
            cylinder_temperature=wall,
            shop_temperature=shop,
        )

    found = shop
    for left, margin in (
        (lambda wall: gap_left(d, d.duty.closed_gap, wall), clearances.running_gap(d.duty.bore)),
        (played, clearances.running_piston_clearance(d.duty.bore)),
    ):
        cold, hot = left(shop), left(steam)
        if hot > cold:
            found = max(found, shop + (steam - shop) * min((margin - cold) / (hot - cold), 1.0))
    return found


def calculate(values):
    """The fitting card: figures, operations, signs, findings, chosen and cautions.

    values: checked values of FIELDS, a plain dict in core units. Raises InputProblem.
    """
    design, chosen = settle(values)
    return answer(design, chosen, values)


def answer(design, chosen, values):
    """As `calculate`, for a Design already settled.

    design: a Design. chosen: list of Choice. values: the checked inputs that it was settled from.
    """
    d = design
    found = {"wall_before_load": wall_before_load(d)}
    # No land holds where a groove goes through the middle.
    if 2.0 * d.groove_depth < d.piston_diameter:
        found["least_land"] = land.least_of(d)
    if can_be_set(d.duty.ring_material.family):
        grown = wear.growth_to(0.5, d.spring.gap_change, d.section.thickness)
        found["half_spring_gap"] = d.duty.closed_gap + grown
    shown = {
        "d1": d.duty.bore, "a1": d.section.thickness, "m": d.spring.gap_change,
        "s1": d.duty.closed_gap,
        "d_p": d.piston_diameter, "T_0": d.duty.shop, "depth": d.groove_depth,
        "p_s": d.duty.steam_pressure,
    }  # fmt: skip
    marks = marks_of(d, None, ())
    if d.duty.temperature > d.duty.saturation + SUPERHEAT:
        marks.add("super")
    if found["wall_before_load"] > d.duty.shop + 1.0:
        marks.add("waits")
    listing = []
    keys = ["figures", "pressure-system"]
    for number, (key, sizes) in enumerate(_rows(d, found), 1):
        words = told(TEXT.get(key) or OF_ROUTE[key], marks, None)
        row = Operation(
            key=key, sizes=sizes, cut=None, minutes=None, together=None, each=key in _EACH
        )
        listing.append(tree(number, row, words))
        keys += [one for one in words.cautions if one not in keys]
    signs = []
    for key, wanted, text in SIGNS:
        if sentences(((wanted, text),), marks):
            signs.append(OrderedDict((("key", key), ("text", text))))
    whole = OrderedDict()
    whole["figures"] = figures_of(ANSWER, found, shown)
    whole["operations"] = listing
    whole["signs"] = signs
    rows = sizing.answer(d, [], values)["findings"]
    whole["findings"] = [row for row in rows if row.outcome != GOOD]
    whole["chosen"] = chosen
    whole["cautions"] = cautions(*keys)
    return whole


_EACH = ("clean-grooves", "try-ring", "fit", "fit-double", "look-again")


def _rows(d, found):
    """List of (key of the operation, its sizes), in the order of the work."""
    side = between("side_clearance", "side clearance", d.side_clearance, side_limits(d), FITTED)
    thickness = bare("radial_thickness", "thickness", d.section.thickness, reading=MICROMETER)
    gap = bare(
        "closed_gap_reading", each("gap when new", d), _felt(d, d.duty.closed_gap), reading=FEELER
    )
    look = [gap, side, thickness]
    if "half_spring_gap" in found:
        due = _felt(d, found["half_spring_gap"])
        look.append(bare("half_spring_reading", "rings are due at a gap of", due, reading=FEELER))
    limits = groove_limits(d)
    if limits[0] == limits[1]:
        limits = (None, None)
    groove = [
        between("groove_width", "groove width", d.groove_width, limits, "gauge blocks"),
        bare("groove_depth", "groove depth", d.groove_depth, reading=DEPTH),
    ]
    if "least_land" in found:
        groove.append(bare("least_land", "land beside it, at least", found["least_land"]))
    opened = []
    if d.duty.turns == 1:
        opened = [bare("sprung_on_opening", "ends apart to pass", sizing.behaviour(d).opening)]
    warm = bare("wall_before_load", "wall, by the cover", found["wall_before_load"], "degC", BARE)
    return [
        ("make-safe", []),
        ("look-over", [bare("bore", "bore", d.duty.bore, reading=INSIDE)]),
        ("clean-grooves", groove),
        ("try-ring", [side, gap]),
        ("oil", []),
        ("fit-double" if d.duty.turns == 2 else "fit", opened),
        ("enter", []),
        ("first-steam", [warm]),
        ("run-in", [bare(name, label, hours, "h", "clock") for name, label, hours in RUNNING_IN]),
        ("look-again", look),
        ("lay-up", []),
    ]


def _felt(d, gap):
    return feeler_reading(gap=gap, angle=CUT_ANGLES[d.duty.end_cut])
