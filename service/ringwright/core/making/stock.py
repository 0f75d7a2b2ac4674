"""Calculation "stock": which bar, how long, what it weighs and costs, and how to cut it.

Blanks are turned from sticks: a length of bar held by its chucking piece, with as many blanks as
stand out safely. Sticks are sawn from bars the user has and, where those run out, from bars bought.
"""

import math
from collections import OrderedDict, namedtuple

from ..cautions import cautions
from ..fields import field
from ..problems import OutOfRange, unworkable
from ..properties.materials import material
from ..records import Choice, Method, Quantity, figure
from . import bars, cutting, stock_findings
from .stock_fields import MOST_SETS, SET_FIELDS, SHOP_FIELDS

FIELDS = (
    field(
        "sets",
        "records",
        "sets of rings to cut",
        lowest=1,
        highest=MOST_SETS,
        items=SET_FIELDS,
        required=True,
    ),
) + SHOP_FIELDS

OVERHANG = 1.5
SPARE_SHARE = 5
END_FACING = 1.5
SAW = 2.0
USABLE = 60.0

# One set, worked out. size: the bars.BarSize to buy, None where none is made. wanted: blanks with
# spares. part: length of one with its parting [mm]. extra: of a stick beyond its blanks [mm].
# sticks: list of blanks on each. length: of bar for all, sawn [mm]. Masses [kg].
Set = namedtuple(
    "Set",
    (
        "name", "material", "outside", "inside", "part_length", "count", "wanted", "part", "extra",
        "most", "sticks", "length", "size", "mass", "ring_mass",
    ),
)  # fmt: skip

# A bar the user has. cleans_up: largest diameter it turns to; bores_out: smallest bore, 0 if solid.
Owned = namedtuple(
    "Owned", ("name", "material", "length", "count", "cleans_up", "bores_out", "area", "form")
)


def sets_from(
    *, outside_diameter, inside_diameter, blank_length, facing_allowance, rings, material
):
    """The `sets` input of this calculation for the rings of one design, a list of one dict.

    outside_diameter, inside_diameter: of the blank, rough and bored [mm]. blank_length: faced
    [mm]. facing_allowance: to part off beyond that on each side [mm]. rings: how many.
    material: key of what the ring is made of.
    """
    return [
        {
            "name": None,
            "outside_diameter": outside_diameter,
            "inside_diameter": inside_diameter,
            "part_length": blank_length + 2.0 * facing_allowance,
            "count": rings,
            "material": material,
        }
    ]


def calculate(values):
    """Bars, masses, costs and the cut list of one or many sets of rings.

    values: checked values of FIELDS, a plain dict in core units. Raises InputProblem.
    """
    chosen = []
    sets = [_set(at, entry, values, chosen) for at, entry in enumerate(values["sets"])]
    owned = [_owned(at, entry) for at, entry in enumerate(values.get("bars") or [])]
    plan, listing = _cut(sets, owned, values)
    cuts, missing = _cut_list(plan, listing, sets, values)
    return OrderedDict(
        (
            ("figures", _figures(sets, values, plan, listing)),
            ("sets", [_set_tree(one, values) for one in sets]),
            ("cut_list", cuts),
            ("to_order", missing),
            ("findings", stock_findings.findings(sets, owned, plan, listing, values)),
            ("chosen", chosen),
            ("cautions", cautions("figures", "rotating-work", "iron-dust", "sharp-edges")),
        )
    )


def _set(at, entry, values, chosen):
    outside, inside = entry["outside_diameter"], entry["inside_diameter"]
    if inside >= outside:
        raise unworkable_set(
            at, "inside_diameter", "the blank has no wall", "give less than the outside"
        )
    metal = material(entry.get("material") or "grey-iron")
    count = entry["count"]

    def take(name, default, unit, why):
        given = values.get(name)
        if given is not None:
            return given
        if at == 0:
            chosen.append(Choice(name, default, unit, why))
        return default

    spares = take("spares", max(1, count // SPARE_SHARE), "1", "one in five, at least one")
    parting = take(
        "parting_width",
        2.0 if outside < 40.0 else 3.0 if outside < 120.0 else 4.0,
        "mm",
        "a tool stiff enough for the diameter",
    )
    facing = take("end_facing", END_FACING, "mm", "cleans the sawn end")
    chucking = take(
        "chucking_piece",
        max(20.0, math.floor(0.05 * outside + 0.5) * 5.0),
        "mm",
        "a quarter of the diameter, at least 20 mm",
    )
    saw = take("saw_width", SAW, "mm", "a usual saw")
    part = entry["part_length"] + parting
    most = take(
        "rings_per_stick",
        max(1, int(OVERHANG * outside / part)),
        "1",
        "so that the stick stands out by at most one and a half diameters",
    )
    wanted = count + spares
    sticks = cutting.sticks(wanted, most)
    extra = chucking + facing
    length = wanted * part + len(sticks) * (extra + saw) - saw
    size = _bar(outside, inside, metal, values)
    mass = 0.0
    if size is not None:
        mass = metal.density * bars.section(size) * length * 1e-9
    ring = math.pi / 4.0 * (outside * outside - inside * inside) * entry["part_length"]
    return Set(
        entry.get("name") or "set %d" % (at + 1), metal, outside, inside, entry["part_length"],
        count, wanted, part, extra, most, sticks, length, size, mass,
        metal.density * ring * count * 1e-9,
    )  # fmt: skip


def unworkable_set(at, name, message, remedy):
    """The InputProblem of one input of one set. at: index. name, message, remedy: text."""
    problem = unworkable(name, message, remedy)
    fault = problem.faults[0]
    problem.faults = [fault.__class__(("sets", at, name), fault.code, message, remedy)]
    return problem


def _bar(outside, inside, metal, values):
    """The bar of least metal that serves, None when none is made."""
    best = None
    forms = (values["bar_form"],) if values.get("bar_form") else bars.FORMS
    for form in forms:
        try:
            size = bars.bar_for(
                outside=outside,
                inside=inside,
                form=form,
                system=values.get("bar_sizes"),
                metal=bars.metal_of(metal.family),
            )
        except OutOfRange:
            continue
        if best is None or bars.section(size) < bars.section(best):
            best = size
    return best


def _owned(at, entry):
    metal = material(entry.get("material") or "grey-iron")
    form = entry.get("form") or bars.SOLID
    diameter, bore = entry["diameter"], entry.get("bore") or 0.0
    if form == bars.SOLID:
        bore = 0.0
    if bore >= diameter:
        raise unworkable_bar(
            at, "bore", "the bore is larger than the bar", "give less than the diameter"
        )
    if form == bars.CORED and bore <= 0.0:
        raise unworkable_bar(at, "bore", "a cored bar has a bore", "give the bore as it measures")
    cleans, bores = diameter, bore
    if entry.get("skin") is not False:
        kind = bars.metal_of(metal.family)
        try:
            cleans = bars.cleans_up_to(measured=diameter, metal=kind)
            if form == bars.CORED:
                bores = bars.bores_out_to(measured_bore=bore, outside=diameter, metal=kind)
        except OutOfRange:
            # Beyond the tables: a sixteenth of the diameter has to serve.
            cleans = diameter * 15.0 / 16.0
            bores = bore + diameter / 16.0 if form == bars.CORED else 0.0
    area = math.pi / 4.0 * (diameter * diameter - bore * bore)
    name = entry.get("name") or "bar %d" % (at + 1)
    return Owned(name, metal, entry["length"], entry.get("count") or 1, cleans, bores, area, form)


def unworkable_bar(at, name, message, remedy):
    """The InputProblem of one input of one bar. at: index. name, message, remedy: text."""
    problem = unworkable(name, message, remedy)
    fault = problem.faults[0]
    problem.faults = [fault.__class__(("bars", at, name), fault.code, message, remedy)]
    return problem


def serves(bar, one):
    """True when an Owned bar can give the blanks of a Set. bar: an Owned. one: a Set."""
    return (
        bar.material.family == one.material.family
        and bar.cleans_up >= one.outside - 1e-6
        and bar.bores_out <= one.inside + 1e-6
    )


def _cut(sets, owned, values):
    """(cutting.Plan, list of (name, Owned or BarSize or None)) for the bars of that plan."""
    pieces = [cutting.Piece(one.name, one.part, one.wanted, one.most, one.extra) for one in sets]
    offered = []
    listing = []
    for bar in owned:
        accepts = [at for at, one in enumerate(sets) if serves(bar, one)]
        mass = bar.material.density * bar.area * bar.length * 1e-9
        offered.append(
            cutting.Bar(bar.name, bar.length, bar.count, None, mass, False, 0.0, accepts)
        )
        listing.append((bar.name, bar))
    if values.get("bar_length") is not None:
        _offer_bought(sets, values, offered, listing)
    saw = SAW if values.get("saw_width") is None else values["saw_width"]
    usable = USABLE if values.get("usable_offcut") is None else values["usable_offcut"]
    return (
        cutting.plan_cuts(pieces=pieces, bars=offered, kerf=saw, usable_offcut=usable),
        listing,
    )


def _offer_bought(sets, values, offered, listing):
    """Adds a bar to buy for each size that a set asks for; a larger one serves smaller sets too."""
    length = values["bar_length"]
    seen = []
    for one in sets:
        if one.size is None or one.size in seen:
            continue
        seen.append(one.size)
        size = one.size
        mass = one.material.density * bars.section(size) * length * 1e-9
        accepts = [
            at
            for at, other in enumerate(sets)
            if other.material.key == one.material.key
            and size.nominal >= other.outside - 1e-9
            and size.bore <= other.inside + 1e-9
        ]
        price = mass * (values.get("bar_price") or 1.0)
        offered.append(cutting.Bar(size.label, length, None, price, mass, False, 0.0, accepts))
        listing.append((size.label, size))


def _cut_list(plan, listing, sets, values):
    """The cut list, and what is left to order cut to length, as lists of OrderedDict."""
    rows = []
    for cut in plan.cuts:
        name, bar = listing[cut.bar]
        own = isinstance(bar, Owned)
        pieces = []
        for at, number in cut.pieces:
            one = sets[at]
            for blanks in cutting.sticks(number, one.most):
                pieces.append(
                    OrderedDict(
                        (
                            ("set", one.name),
                            ("blanks", blanks),
                            ("stick_length", Quantity(blanks * one.part + one.extra, "mm")),
                        )
                    )
                )
        rows.append(
            OrderedDict(
                (
                    ("bar", name),
                    ("have", own),
                    ("alike", cut.alike),
                    (
                        "bar_length",
                        Quantity(bar.length if own else values["bar_length"], "mm"),
                    ),
                    ("sticks", pieces),
                    ("used", Quantity(cut.used, "mm")),
                    ("offcut", Quantity(cut.offcut, "mm")),
                    ("offcut_kept", cut.kept),
                )
            )
        )
    missing = []
    for at, number in enumerate(plan.missing):
        if number and sets[at].size is not None:
            one = sets[at]
            parts = cutting.sticks(number, one.most)
            saw = SAW if values.get("saw_width") is None else values["saw_width"]
            length = number * one.part + len(parts) * (one.extra + saw) - saw
            missing.append(
                OrderedDict(
                    (
                        ("set", one.name),
                        ("bar", one.size.label),
                        ("blanks", number),
                        ("sticks", len(parts)),
                        ("length", Quantity(length, "mm")),
                    )
                )
            )
    return rows, missing


def _figures(sets, values, plan, listing):
    out = OrderedDict()
    first = sets[0]
    if len(sets) == 1 and first.size is not None:
        size = first.size
        sized = (("blank", first.outside, "mm"),)
        out["bar_diameter"] = figure(size.nominal, "mm", "nominal", "cast-skin", sized)
        out["bar_as_cast"] = figure(size.as_cast, "mm", "as cast", "cast-skin", sized)
        if size.form == bars.CORED:
            out["bar_bore"] = figure(size.bore, "mm", "nominal bore", "cast-skin", sized)
    length = mass = ring_mass = 0.0
    for one in sets:
        length += one.length
        mass += one.mass
        ring_mass += one.ring_mass
    out["blanks"] = figure(_blanks(sets), "1", "n", "stock-length")
    worked = ()
    if len(sets) == 1:
        worked = (
            ("part", first.part, "mm"),
            ("blanks", first.wanted, "1"),
            ("sticks", len(first.sticks), "1"),
            ("chuck and face", first.extra, "mm"),
        )
    out["bar_length"] = figure(length, "mm", "L", "stock-length", worked)
    if mass > 0.0:
        out["mass"] = figure(mass, "kg", "m", "stock-mass", (("L", length, "mm"),))
        out["swarf_share"] = figure(
            1.0 - ring_mass / mass, "1", "1 - m_r/m", "stock-mass", (("m_r", ring_mass, "kg"),)
        )
        if values.get("bar_price") is not None:
            out["cost"] = figure(
                mass * values["bar_price"],
                "money",
                "cost",
                "stock-mass",
                (("m", mass, "kg"), ("price", values["bar_price"], "money/kg")),
            )
    if plan.cuts:
        bought = 0.0
        for cut in plan.cuts:
            bar = listing[cut.bar][1]
            if not isinstance(bar, Owned):
                bought += cut.alike
        out["bars_bought"] = figure(bought, "1", "bars", "cutting-stock")
        out["scrap_length"] = figure(
            plan.scrap, "mm", "scrap", "cutting-stock", (("proved least", plan.scrap_bound, "mm"),)
        )
    return out


def _blanks(sets):
    total = 0
    for one in sets:
        total += one.wanted
    return total


def _set_tree(one, values):
    row = OrderedDict(
        (
            ("name", one.name),
            ("material", one.material.key),
            ("count", one.count),
            ("blanks", one.wanted),
            ("sticks", len(one.sticks)),
            ("blanks_per_stick", one.sticks[0]),
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
        if values.get("bar_price") is not None:
            row["cost"] = Quantity(one.mass * values["bar_price"], "money")
    return row


METHODS = (
    Method(
        "stock-length",
        "Length of bar for a set of rings",
        "L = n (part + parting) + sticks (chucking + end facing + saw) - saw",
        "sticks that stand out by at most one and a half diameters",
        ("practice",),
    ),
    Method(
        "stock-mass",
        "Mass of the bar and share turned to swarf",
        "m = rho pi/4 (D^2 - d^2) L; swarf = 1 - mass of the blanks wanted/m",
        "bar as cast, spares counted as swarf",
        ("practice",),
    ),
)
