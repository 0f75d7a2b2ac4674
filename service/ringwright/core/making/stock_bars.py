"""Bars for a stock list: at hand or on offer, which sets each serves, and the cut list."""

import math
from collections import OrderedDict, namedtuple

from .. import cutting
from ..catalogue.inputs_stock import BAR_ENTRY, OFFER_ENTRY, THOROUGH
from ..fields import with_usual
from ..problems import Fault, InputProblem, OutOfRange
from ..properties.materials import material
from ..records import Quantity
from . import bars

# Between a bar and the hole it is fed through; common practice, no source.
SPINDLE_CLEARANCE = 1.0
# How much longer a thorough search may take than a quick one.
THOROUGHLY = 10
# Beyond the tables of cast bars the skin is taken as this share of the diameter; from memory.
SKIN_SHARE = 1.0 / 16.0

# One bar at hand or on offer. cleans_up: largest diameter that it turns to; bores_out: smallest
# bore, 0 if solid [mm]. area: section over the skin [mm2]. count: None for no end of them. price
# [money]: of one on offer, None for one at hand or where no price is known. have: True at hand.
# fed: True when it passes through the spindle.
StockBar = namedtuple(
    "StockBar",
    (
        "name", "material", "length", "count", "cleans_up", "bores_out", "diameter", "area",
        "price", "have", "fed",
    ),
)  # fmt: skip

# plan: cutting.Plan, or None where no bar serves any set. bars: StockBar for each of the plan's.
# priced: True when the plan's money is the user's, False when it is kilograms for want of prices.
Cutting = namedtuple("Cutting", ("plan", "bars", "priced"))


def mass_of(bar):
    """Mass of one bar, skin and all: density*area*length [kg]. bar: a StockBar."""
    return bar.material.density * bar.area * bar.length * 1e-9


def rate_of(metal, values):
    """Price of a metal by mass [money/kg]: its own, else that of all metals, else None.

    metal: a Material. values: checked inputs. Of two prices for one metal the later holds.
    """
    rate = values.get("bar_price")
    for entry in values.get("metal_prices") or []:
        if entry["material"] == metal.key:
            rate = entry["price"]
    return rate


def serves(bar, one):
    """True when a bar can give the blanks of a set. bar: a StockBar. one: a stock.Set."""
    return (
        bar.material.family == one.material.family
        and bar.cleans_up >= one.outside - 1e-6
        and bar.bores_out <= one.inside + 1e-6
    )


def passes(diameter, values):
    """True when a bar is fed through the spindle. diameter: over its skin [mm]. values: inputs."""
    spindle = values.get("spindle_bore")
    return spindle is not None and diameter <= spindle - SPINDLE_CLEARANCE


def at_hand(values):
    """The bars the user has, a list of StockBar. values: checked inputs. Raises InputProblem."""
    found = []
    for at, given in enumerate(values.get("bars") or []):
        entry = with_usual(BAR_ENTRY, given)
        metal = material(entry["material"])
        form, bore = _form_and_bore("bars", at, entry)
        diameter = entry["diameter"]
        cleans, bores = diameter, bore
        if entry["skin"]:
            cleans, bores = _under_skin(diameter, bore, form, bars.metal_of(metal.family))
        name = entry.get("name") or "bar %d" % (at + 1)
        area = math.pi / 4.0 * (diameter * diameter - bore * bore)
        found.append(
            StockBar(
                name=name,
                material=metal,
                length=entry["length"],
                count=entry["count"],
                cleans_up=cleans,
                bores_out=bores,
                diameter=diameter,
                area=area,
                price=None,
                have=True,
                fed=passes(diameter, values),
            )
        )
    return found


def on_offer(sets, values):
    """The bars that can be bought, a list of StockBar.

    sets: list of stock.Set. values: checked inputs. Each set's own size in `bar_length` is offered,
    and what stands in `bars_to_buy`. Raises InputProblem for a bore that is none.
    """
    found = []
    for at, given in enumerate(values.get("bars_to_buy") or []):
        entry = with_usual(OFFER_ENTRY, given)
        metal = material(entry["material"])
        form, bore = _form_and_bore("bars_to_buy", at, entry)
        size = _as_cast(entry["diameter"], bore, form, bars.metal_of(metal.family))
        name = entry.get("name") or size.label
        price = entry.get("price")
        found.append(
            _offered(size, name, metal, entry["length"], entry.get("count"), price, values)
        )
    length = values.get("bar_length")
    sizes = []
    for one in sets:
        if length is not None and one.size is not None and one.size not in sizes:
            sizes.append(one.size)
            found.append(
                _offered(one.size, one.size.label, one.material, length, None, None, values)
            )
    return found


def comparable(offered):
    """Those on offer whose cost can be compared: all, or all with a price if any has one.

    offered: list of StockBar.
    """
    priced = [bar for bar in offered if bar.price is not None]
    return priced if priced else offered


def cut(sets, stock, values, saw, usable):
    """Cutting: the plan for all sets out of these bars.

    sets: list of stock.Set. stock: list of StockBar. values: checked inputs. saw: kerf [mm].
    usable: shortest offcut to keep [mm].
    """
    pieces = [
        cutting.Piece(
            name=one.name, length=one.part, count=one.wanted, stick=one.most, stick_extra=one.extra
        )
        for one in sets
    ]
    priced = any([bar.price is not None for bar in stock])
    offered = []
    for bar in stock:
        accepts = [at for at, one in enumerate(sets) if serves(bar, one)]
        held = max([0.0] + [sets[at].extra for at in accepts])
        price = None
        if not bar.have:
            price = bar.price if priced else mass_of(bar)
        offered.append(
            cutting.Bar(
                name=bar.name,
                length=bar.length,
                count=bar.count,
                price=price,
                worth=mass_of(bar),
                fed=bar.fed,
                held=held,
                accepts=accepts,
            )
        )
    plan = cutting.plan_cuts(pieces=pieces, bars=offered, kerf=saw, usable_offcut=usable)
    if values.get("cutting_effort") == THOROUGH and not (plan.bought_proved and plan.begun_proved):
        limit = THOROUGHLY * cutting.STEP_LIMIT
        longer = cutting.plan_cuts(
            pieces=pieces, bars=offered, kerf=saw, usable_offcut=usable, step_limit=limit
        )
        # A longer search takes another way, which once in a while ends no better.
        if _merit(longer) < _merit(plan):
            plan = longer
    return Cutting(plan, stock, priced)


def _merit(plan):
    """What makes a plan worse, the gravest first; of equal plans the closer proved is better."""
    short = 0
    for number in plan.missing:
        short += number
    return (
        short,
        plan.bought,
        plan.begun,
        plan.bought - plan.bought_bound,
        plan.begun - plan.begun_bound,
        plan.scrap,
    )


def cut_list(sets, cutting_):
    """The cut list as a list of OrderedDict. sets: list of stock.Set. cutting_: a Cutting."""
    rows = []
    for entry in cutting_.plan.cuts:
        bar = cutting_.bars[entry.bar]
        sticks = []
        for at, number in entry.pieces:
            one = sets[at]
            for blanks in [number] if bar.fed else cutting.sticks(number, one.most):
                length = blanks * one.part + (0.0 if bar.fed else one.extra)
                sticks.append(
                    OrderedDict(
                        (
                            ("set", one.name),
                            ("blanks", blanks),
                            ("stick_length", Quantity(length, "mm")),
                        )
                    )
                )
        rows.append(
            OrderedDict(
                (
                    ("bar", bar.name),
                    ("have", bar.have),
                    ("fed_through_spindle", bar.fed),
                    ("alike", entry.alike),
                    ("bar_length", Quantity(bar.length, "mm")),
                    ("sticks", sticks),
                    ("used", Quantity(entry.used, "mm")),
                    ("offcut", Quantity(entry.offcut, "mm")),
                    ("offcut_kept", entry.kept),
                )
            )
        )
    return rows


def to_order(sets, cutting_, saw):
    """What no bar is left for, to be ordered cut to length, as a list of OrderedDict.

    sets: list of stock.Set. cutting_: a Cutting. saw: kerf [mm].
    """
    rows = []
    for one, number in zip(sets, cutting_.plan.missing):
        if number and one.size is not None:
            sticks = cutting.sticks(number, one.most)
            length = number * one.part + len(sticks) * (one.extra + saw) - saw
            rows.append(
                OrderedDict(
                    (
                        ("set", one.name),
                        ("bar", one.size.label),
                        ("blanks", number),
                        ("sticks", len(sticks)),
                        ("length", Quantity(length, "mm")),
                    )
                )
            )
    return rows


def _form_and_bore(listed, at, entry):
    """(form, bore) of an entry, checked. listed: the input it stands in. at: its index."""
    form = entry["form"]
    bore = entry.get("bore") or 0.0
    if form == bars.SOLID:
        return form, 0.0
    message = remedy = None
    if bore <= 0.0:
        message, remedy = "a cored bar has a bore", "give its bore, or make it solid"
    elif bore >= entry["diameter"]:
        message, remedy = "the bore is larger than the bar", "give less than the diameter"
    if message is not None:
        raise InputProblem([Fault((listed, at, "bore"), "unworkable", message, remedy)])
    return form, bore


def _under_skin(diameter, bore, form, metal):
    """(largest diameter that a bar with its skin on cleans up to, smallest bore)."""
    try:
        cleans = bars.cleans_up_to(measured=diameter, metal=metal)
        bores = 0.0
        if form == bars.CORED:
            bores = bars.bores_out_to(measured_bore=bore, outside=diameter, metal=metal)
        return cleans, bores
    except OutOfRange:
        skin = SKIN_SHARE * diameter
        return diameter - skin, bore + skin if form == bars.CORED else 0.0


def _as_cast(nominal, bore, form, metal):
    """The bars.BarSize of a bar sold by that size."""
    label = "%s%s" % (_size_label(nominal), " x %s cored" % _size_label(bore) if bore else "")
    try:
        cast = nominal + bars.stock_over(nominal=nominal, metal=metal)
        cast_bore = bars.as_cast_bore(nominal=bore, outside=nominal, metal=metal) if bore else 0.0
    except OutOfRange:
        skin = SKIN_SHARE * nominal
        cast, cast_bore = nominal + skin, max(0.0, bore - skin) if bore else 0.0
    return bars.BarSize(
        form=form,
        nominal=nominal,
        bore=bore,
        as_cast=cast,
        as_cast_bore=max(0.0, cast_bore),
        label=label,
    )


def _size_label(size):
    """A size as it would be asked for: in eighths of an inch where it is one, else in mm."""
    eighths = size / bars.MM * 8.0
    if abs(eighths - int(eighths + 0.5)) < 1e-6:
        return bars.inch_label(size / bars.MM)
    tenths = int(size * 10.0 + 0.5)
    return "%d mm" % (tenths // 10) if tenths % 10 == 0 else "%d.%d mm" % divmod(tenths, 10)


def _offered(size, name, metal, length, count, price, values):
    """A StockBar on offer; its price from the metal's where it has none of its own."""
    area = bars.section(size)
    rate = rate_of(metal, values)
    if price is None and rate is not None:
        price = metal.density * area * length * 1e-9 * rate
    return StockBar(
        name=name,
        material=metal,
        length=length,
        count=count,
        cleans_up=size.nominal,
        bores_out=size.bore,
        diameter=size.as_cast,
        area=area,
        price=price,
        have=False,
        fed=passes(size.as_cast, values),
    )
