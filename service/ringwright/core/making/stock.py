"""Calculation "stock": which bar, how long, what it weighs and costs, and how to cut it.

Blanks are turned from sticks: a length of bar held by its chucking piece, with as many blanks as
stand out safely. Sticks are sawn from bars the user has and, where those run out, from bars bought.
A bar that passes through the spindle is not sawn: it is fed through, and held once.
"""

import math
from collections import OrderedDict, namedtuple

from .. import cutting
from ..catalogue import figures_of
from ..catalogue.inputs import Chooser, listed
from ..catalogue.inputs_ring import RING
from ..catalogue.inputs_stock import SET_ENTRY, SETS, SHOP
from ..catalogue.making import STOCK
from ..cautions import DUST_OF, cautions
from ..fields import with_usual
from ..problems import Fault, InputProblem
from ..properties.materials import material
from ..records import Method, Quantity
from . import bar_choice, bars, stock_bars, stock_findings, stock_remedies

FIELDS = tuple(SETS.values()) + tuple(SHOP.values()) + listed((RING,), "inch_sizes")

METHODS = (
    Method(
        "stock-length",
        "Length of bar for a set of rings",
        "L_bar = n (part + parting) + sticks (chucking + end facing + saw) - saw",
        "sticks that stand out by at most one and a half diameters; one stick when fed through",
        ("practice",),
    ),
    Method(
        "stock-mass",
        "Mass of the bar and share turned to swarf",
        "mass = rho pi/4 (D^2 - d^2) L_bar; swarf = 1 - m_r/mass, m_r the blanks wanted; "
        "cost = mass price",
        "bar as cast, spares counted as swarf",
        ("practice",),
    ),
)

# One set, worked out. size: the bars.BarSize to buy, None where none is made. wanted: blanks with
# spares. part: length of one with its parting [mm]. extra: of a stick beyond its blanks [mm].
# most: blanks on a stick at most. sticks: list of blanks on each. through: True when its bar passes
# the spindle. length: of bar for all, sawn [mm]. Masses [kg].
Set = namedtuple(
    "Set",
    (
        "name", "material", "outside", "inside", "part_length", "count", "wanted", "part", "extra",
        "most", "sticks", "through", "length", "size", "mass", "ring_mass", "chucking",
    ),
)  # fmt: skip


def sets_from(
    *, outside_diameter, inside_diameter, part_length, rings, material, cut_off_width, table_grip
):
    """The `sets` input of this calculation for the rings of one design, a list of one dict.

    outside_diameter, inside_diameter: of the blank, rough and bored [mm]. part_length: as it comes
    off the bar [mm]. rings: how many. material: key of what the ring is made of. cut_off_width,
    table_grip: of a blank sawn off on the rotary table [mm], else None.
    """
    return [
        {
            "name": None,
            "outside_diameter": outside_diameter,
            "inside_diameter": inside_diameter,
            "part_length": part_length,
            "cut_off_width": cut_off_width,
            "table_grip": table_grip,
            "count": rings,
            "material": material,
        }
    ]


def calculate(values):
    """Bars, masses, costs and the cut list of one or many sets of rings.

    values: checked values of FIELDS, a plain dict in core units. Raises InputProblem.
    """
    sets, chosen = _sets(values)
    take = Chooser(values, SHOP)
    saw, usable = take("saw_width"), take("usable_offcut")
    done, rows = _cut(sets, values, saw, usable)
    if done.plan.cuts:
        chosen.extend([one for one in take.chosen if one.input == "usable_offcut"])
    return OrderedDict(
        (
            ("figures", _figures(sets, values, done)),
            ("sets", [_set_tree(one, values) for one in sets]),
            ("cut_list", stock_bars.cut_list(sets, done)),
            ("to_order", stock_bars.to_order(sets, done, saw)),
            ("findings", stock_remedies.told(values, sets, rows, _judged_sets, _judged)),
            ("chosen", chosen),
            ("cautions", cautions(*["figures", "rotating-work", "sharp-edges"] + _dusts(sets))),
        )
    )


def _sets(values):
    """(list of Set, list of Choice)."""
    sets, chosen = [], []
    for at, entry in enumerate(values["sets"]):
        take = Chooser(values, SHOP)
        sets.append(_set(at, with_usual(SET_ENTRY, entry), take))
        # What was taken for one set stands for all of them.
        chosen = chosen or take.chosen
    return sets, chosen


def _cut(sets, values, saw, usable):
    """(stock_bars.Cutting, list of Finding). saw, usable: [mm]."""
    have = stock_bars.at_hand(values)
    offered = stock_bars.on_offer(sets, values)
    done = stock_bars.cut(sets, have + stock_bars.comparable(offered), values, saw, usable)
    return done, stock_findings.findings(sets, have, offered, done, values)


def _judged_sets(values):
    """(list of Finding of the sets alone, None): what a remedy is tried by, with nothing cut."""
    return stock_findings.of_sets(_sets(values)[0]), None


def _judged(values):
    """(list of Finding, None) with the bars cut, by the quick search."""
    quick = dict(values, cutting_effort=None)
    take = Chooser(quick, SHOP)
    return _cut(_sets(quick)[0], quick, take("saw_width"), take("usable_offcut"))[1], None


def _dusts(sets):
    """Keys of the cautions of the dust of every metal that is cut."""
    found = []
    for one in sets:
        key = DUST_OF[one.material.family]
        if key not in found:
            found.append(key)
    return found


def _set(at, entry, take):
    values = take.values
    outside, inside = entry["outside_diameter"], entry["inside_diameter"]
    if inside >= outside:
        raise InputProblem(
            [
                Fault(
                    ("sets", at, "inside_diameter"),
                    "unworkable",
                    "the blank has no wall",
                    "give less than the outside",
                )
            ]
        )
    metal = material(entry["material"])
    count = entry["count"]

    spares = take("spares", count)
    sawn = entry.get("cut_off_width")
    parting = take("parting_width", outside) if sawn is None else sawn
    facing = take("end_facing")
    chucking = max(take("chucking_piece", outside), entry.get("table_grip") or 0.0)
    saw = take("saw_width")
    part = entry["part_length"] + parting
    most = take("rings_per_stick", bar_choice.most_on_a_stick(outside, part))
    wanted = count + spares
    size = bar_choice.best_bar(
        outside=outside,
        inside=inside,
        family=metal.family,
        form=values.get("bar_form"),
        system=bar_choice.system_of(values),
    )
    # What is slit on the stick leaves the lathe before its blanks are off.
    through = sawn is None and size is not None and stock_bars.passes(size.as_cast, values)
    sticks = [wanted] if through else cutting.sticks(wanted, most)
    extra = chucking + facing
    length = wanted * part + len(sticks) * (extra + saw) - saw
    mass = 0.0
    if size is not None:
        mass = metal.density * bars.section(size) * length * 1e-9
    ring = math.pi / 4.0 * (outside * outside - inside * inside) * entry["part_length"]
    return Set(
        name=entry.get("name") or "set %d" % (at + 1),
        material=metal,
        outside=outside,
        inside=inside,
        part_length=entry["part_length"],
        count=count,
        wanted=wanted,
        part=part,
        extra=extra,
        most=most,
        sticks=sticks,
        through=through,
        length=length,
        size=size,
        mass=mass,
        ring_mass=metal.density * ring * count * 1e-9,
        chucking=chucking,
    )


def _figures(sets, values, done):
    first = sets[0]
    length = mass = ring_mass = 0.0
    blanks = 0
    for one in sets:
        length += one.length
        mass += one.mass
        if one.size is not None:
            # A set that no bar is made for is cast: it leaves no swarf of a bar.
            ring_mass += one.ring_mass
        blanks += one.wanted
    told = {"blanks": blanks, "bar_length": length}
    given = {"n": blanks, "L_bar": length, "m_r": ring_mass, "mass": mass}
    if len(sets) == 1:
        given["part"] = first.part
        given["sticks"] = len(first.sticks)
        given["chuck and face"] = first.extra
        if first.size is not None:
            given["blank"] = first.outside
            told["bar_diameter"] = first.size.nominal
            told["bar_as_cast"] = first.size.as_cast
            if first.size.form == bars.CORED:
                told["bar_bore"] = first.size.bore
    if mass > 0.0:
        told["mass"] = mass
        told["swarf_share"] = 1.0 - ring_mass / mass
        rates = [stock_bars.rate_of(one.material, values) for one in sets]
        if None not in rates:
            if len(set(rates)) == 1:
                given["price"] = rates[0]
            cost = 0.0
            for one, rate in zip(sets, rates):
                cost += one.mass * rate
            told["cost"] = cost
    if done.plan.cuts:
        _add_cutting(told, given, done)
    return figures_of(STOCK, told, given)


def _add_cutting(told, given, done):
    """Adds what the cut list comes to, and the bounds that prove it."""
    plan = done.plan
    bought = begun = 0
    bought_mass = begun_mass = kept = 0.0
    for entry in plan.cuts:
        bar = done.bars[entry.bar]
        mass = entry.alike * stock_bars.mass_of(bar)
        if bar.have:
            begun += entry.alike
            begun_mass += mass
        else:
            bought += entry.alike
            bought_mass += mass
        if entry.kept:
            kept += entry.alike * entry.offcut
    told["bars_bought"] = bought
    told["bars_begun"] = begun
    if bought:
        told["bought_mass"] = bought_mass
        if done.priced:
            told["bought_cost"] = plan.bought
            given["least cost_b"] = plan.bought_bound
    if begun:
        told["begun_mass"] = begun_mass
        given["least mass_g"] = plan.begun_bound
    told["scrap_length"] = plan.scrap
    told["kept_length"] = kept
    given["least scrap"] = plan.scrap_bound


def _set_tree(one, values):
    row = OrderedDict(
        (
            ("name", one.name),
            ("material", one.material.key),
            ("count", one.count),
            ("blanks", one.wanted),
            ("sticks", len(one.sticks)),
            ("blanks_per_stick", one.sticks[0]),
            ("fed_through_spindle", one.through),
            ("stick_length", Quantity(one.sticks[0] * one.part + one.extra, "mm")),
            ("bar_length", Quantity(one.length, "mm")),
        )
    )
    if one.size is not None:
        row["bar"] = one.size.label
        row["form"] = one.size.form
        row["bar_diameter"] = Quantity(one.size.nominal, "mm")
        row["bar_as_cast"] = Quantity(one.size.as_cast, "mm")
        if one.size.form == bars.CORED:
            row["bar_bore"] = Quantity(one.size.bore, "mm")
        row["mass"] = Quantity(one.mass, "kg")
        row["swarf_share"] = Quantity(1.0 - one.ring_mass / one.mass, "1")
        rate = stock_bars.rate_of(one.material, values)
        if rate is not None:
            row["cost"] = Quantity(one.mass * rate, "money")
    return row
