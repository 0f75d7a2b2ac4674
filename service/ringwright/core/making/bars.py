"""Bars that rings are cut from: sizes commonly kept, the cast skin over them, and the smallest that
serves.

A cast bar is sold by the size it is sure to clean up to; as it lies in the rack it is larger by the
stock on its outside and, if cored, smaller in its bore.
"""

import math
from collections import OrderedDict, namedtuple

from .. import wording
from ..catalogue.inputs_stock import BRONZE, CORED, INCH, IRON, METRIC, SIZES, SOLID, SYSTEMS
from ..problems import OutOfRange
from ..records import Method, Quantity

MM = 25.4

# A size one can buy [mm]. nominal, bore: what it is sure to clean up to (bore 0 when solid).
# as_cast, as_cast_bore: what it measures. label: as it is asked for.
BarSize = namedtuple("BarSize", ("form", "nominal", "bore", "as_cast", "as_cast_bore", "label"))

# Rows of (nominal up to, stock over nominal on the diameter, how much that varies up or down) [in].
# Grey iron: one producer's table, read. The variation is for all its grades.
_IRON_OUTSIDE = (
    (1.250, 0.085, 0.017),
    (2.000, 0.090, 0.024),
    (3.000, 0.110, 0.030),
    (3.250, 0.110, 0.038),
    (4.000, 0.125, 0.038),
    (5.000, 0.140, 0.048),
    (6.000, 0.155, 0.055),
    (7.000, 0.170, 0.062),
    (8.000, 0.190, 0.085),
    (9.000, 0.216, 0.108),
    (10.000, 0.254, 0.129),
    (11.000, 0.400, 0.150),
    (16.000, 0.582, 0.206),
    (20.000, 0.762, 0.262),
)
# Iron tube: stock under nominal in the bore [in], the same producer's example; least wall by
# nominal outside, of the bar as it is cast (nominal up to, wall) [in].
_IRON_BORE = 0.250
_IRON_WALL = ((3.000, 0.562), (6.000, 0.625), (12.000, 0.687), (16.000, 0.750))
# Leaded and other tin bronze: a caster's table, read. Rows of (nominal up to, least and most stock
# over the outside, least and most stock under the bore) [in].
_BRONZE = (
    (2.000, 0.029, 0.039, 0.019, 0.064),
    (4.000, 0.034, 0.044, 0.019, 0.064),
    (5.000, 0.055, 0.071, 0.047, 0.109),
    (9.000, 0.078, 0.110, 0.062, 0.158),
    (12.000, 0.094, 0.134, 0.078, 0.182),
    (16.000, 0.118, 0.166, 0.102, 0.214),
)
# Thinnest wall of a cored bronze bar, nominal [in]: from memory.
_BRONZE_WALL = 0.250
LARGEST = 16.0 * MM
# Smallest nominal bore of a cored bar, from memory.
LEAST_BORE = 0.75 * MM

# Sizes commonly kept, from memory: (first, last, step).
_INCH_SIZES = ((0.75, 2.0, 0.125), (2.25, 6.0, 0.25), (6.5, 12.0, 0.5), (13.0, 16.0, 1.0))
_METRIC_SIZES = ((20.0, 100.0, 5.0), (110.0, 200.0, 10.0), (220.0, 400.0, 20.0))
# The sizes of each system, written out when first asked for.
_kept = {}
# Lengths commonly sold cut to, from memory [mm].
LENGTHS = {INCH: (6.0 * MM, 12.0 * MM, 24.0 * MM, 72.0 * MM), METRIC: (150.0, 300.0, 500.0, 1000.0)}

METHODS = (
    Method(
        "cast-skin",
        "Stock on a cast bar over the size it is sold by",
        "as cast = nominal + stock(nominal); cored bore as cast = nominal - stock",
        "continuous-cast grey iron 0.75 to 20 in and tin bronze to 16 in diameter",
        ("iron-bar-table", "bronze-bar-table"),
    ),
    Method(
        "bar-size",
        "Smallest bar that cleans up",
        "nominal >= outside to be turned; nominal bore <= inside to be bored; least metal",
        "steps of size commonly kept, from memory; a supplier's list is better",
        ("memory", "iron-bar-table", "bronze-bar-table"),
    ),
)

FIELDS = tuple(SIZES.values())


def metal_of(family):
    """Which table a family of materials follows: bronze for bronze, iron for all else."""
    return BRONZE if family == BRONZE else IRON


def stock_over(*, nominal, metal=IRON):
    """Stock on the diameter of a cast bar over its nominal size, mean [mm].

    nominal: size that it cleans up to [mm]. metal: iron or bronze. Raises OutOfRange above the
    table. Source: for iron one producer's table, read; for bronze the middle of a caster's table,
    read.
    """
    row = _row(nominal, metal)
    return row[1] * MM if metal == IRON else (row[1] + row[2]) / 2.0 * MM


def as_cast_bore(*, nominal, outside, metal=IRON):
    """Bore of a cored bar as it is cast [mm]: smaller than the nominal bore by the stock in it.

    nominal: bore that it cleans up to; outside: nominal outside [mm]. metal: iron or bronze.
    Raises OutOfRange above the table. Source: as stock_over; for iron one printed example.
    """
    if metal == IRON:
        return nominal - _IRON_BORE * MM
    row = _row(outside, metal)
    return nominal - (row[3] + row[4]) / 2.0 * MM


def cleans_up_to(*, measured, metal=IRON):
    """Largest diameter that a bar with its cast skin on is sure to clean up to [mm].

    The largest nominal with nominal + least stock <= measured, as the producers warrant it.
    measured: over the skin [mm]. metal: iron or bronze. 0 for a bar too small for the table.
    Raises OutOfRange above the table. Source: as stock_over, its variation taken off.
    """
    best = 0.0
    lower = 0.0
    most = 0.0
    for row in _IRON_OUTSIDE if metal == IRON else _BRONZE:
        least = (row[1] - row[2]) if metal == IRON else row[1]
        most = (row[0] + row[2] + (row[1] if metal == IRON else 0.0)) * MM
        clean = min(measured - least * MM, row[0] * MM)
        if clean > lower:
            best = clean
        lower = row[0] * MM
    if measured > most:
        raise OutOfRange("measured", measured, "the table's largest bar", "bar tables")
    return best


def bores_out_to(*, measured_bore, outside, metal=IRON):
    """Smallest bore that a cored bar with its skin on is sure to clean up to [mm].

    measured_bore: in the skin, outside: over it [mm]. metal: iron or bronze. For iron the whole
    stock of the printed example is allowed, for bronze the most in the table.
    Raises OutOfRange above the table. Source: as stock_over.
    """
    if metal == IRON:
        return measured_bore + _IRON_BORE * MM
    return measured_bore + _row(min(outside, _BRONZE[-1][0] * MM), metal)[4] * MM


def least_wall(*, outside, metal=IRON):
    """Thinnest wall in which a cored bar is made [mm]: as cast for iron, nominal for bronze.

    outside: nominal [mm]. metal: iron or bronze. Raises OutOfRange above the table.
    Source: for iron one producer's table, read; for bronze from memory.
    """
    if metal == BRONZE:
        return _BRONZE_WALL * MM
    for upper, wall in _IRON_WALL:
        if outside <= upper * MM + 1e-9:
            return wall * MM
    raise OutOfRange("outside", outside, "up to 16 in", "iron-bar-table")


def sizes(system):
    """Nominal diameters commonly kept, as (size [mm], label), smallest first.

    system: inch or metric. Source: common practice from memory; a supplier's list is better.
    """
    found = _kept.get(system)
    if found is not None:
        return found
    found = _kept[system] = []
    for first, last, step in _INCH_SIZES if system == INCH else _METRIC_SIZES:
        for at in range(int((last - first) / step + 1.5)):
            size = first + at * step
            if system == INCH:
                found.append((size * MM, inch_label(size)))
            else:
                found.append((size, "%d mm" % size))
    return found


def inch_label(inches):
    """A size in inches as it is asked for: "3 1/8 in"."""
    eighths = int(inches * 8.0 + 0.5)
    whole, part = divmod(eighths, 8)
    if part == 0:
        return "%d in" % whole
    under = 8
    while part % 2 == 0:
        part //= 2
        under //= 2
    return ("%d %d/%d in" % (whole, part, under)) if whole else "%d/%d in" % (part, under)


def bar_for(*, outside, inside, form=SOLID, system=None, metal=IRON):
    """BarSize: the bar of least metal that cleans up to `outside` and, if cored, bores out to
    `inside`.

    outside: largest diameter to be turned; inside: bore of the blank [mm]. form: solid or cored.
    system: inch, metric, or None for either. metal: iron or bronze.
    Raises OutOfRange when no such bar is made: too large, or too thin in the wall to be cored.
    Source: sizes commonly kept, from memory; skin as stock_over.
    """
    best = None
    for one in SYSTEMS if system is None else (system,):
        for size in _serving(one, metal, form, outside, inside):
            if best is None or _metal(size) < _metal(best) - 1e-9:
                best = size
    if best is None:
        raise OutOfRange("outside", outside, "a bar that is made", "bar tables")
    return best


def widest_bore(*, nominal, system, metal=IRON):
    """Largest bore, nominal, in which a bar of that nominal outside is commonly cored [mm]; 0 for
    none.

    nominal [mm]. system: inch or metric, for the step of size. metal: iron or bronze.
    Raises OutOfRange above the table. Source: walls as least_wall; steps of size from memory.
    """
    step = _bore_step(system)
    if metal == IRON:
        cast = nominal + stock_over(nominal=nominal, metal=metal)
        widest = cast - 2.0 * least_wall(outside=nominal, metal=metal) + _IRON_BORE * MM
    else:
        widest = nominal - 2.0 * least_wall(outside=nominal, metal=metal)
    bore = int(widest / step + 1e-9) * step
    return bore if bore >= LEAST_BORE else 0.0


def section(size):
    """Area of metal of a bar as it is cast: pi/4*(as_cast^2 - as_cast_bore^2) [mm2].

    size: a BarSize. Source: geometry.
    """
    return math.pi / 4.0 * _metal(size)


def calculate_bars(values):
    """The reference list: what can be had, and what it cleans up to.

    values: checked values of FIELDS. Result: OrderedDict with "solid" and "cored", lists of sizes,
    and "lengths".
    """
    metal = values["metal"] or SIZES["metal"].default.value
    systems = (values["sizes"],) if values["sizes"] else SYSTEMS
    outside = values["outside_diameter"]
    inside = values["inside_diameter"]
    solid = []
    cored = []
    for system in systems:
        for nominal, label in sizes(system):
            if nominal > LARGEST + 1e-6 or (outside is not None and nominal < outside - 1e-9):
                continue
            solid.append(_entry(_solid(nominal, label, metal), system))
            widest = widest_bore(nominal=nominal, system=system, metal=metal)
            bore = _serving_bore(widest, system, inside)
            if bore:
                cored.append(_entry(_cored(nominal, bore, label, system, metal), system))
    lengths = []
    for system in systems:
        for length in LENGTHS[system]:
            lengths.append(OrderedDict((("length", Quantity(length, "mm")), ("sizes", system))))
    return OrderedDict(
        (
            ("figures", OrderedDict()),
            ("findings", []),
            ("chosen", []),
            ("cautions", []),
            ("metal", metal),
            ("solid", solid),
            ("cored", cored),
            ("lengths", lengths),
            ("note", _note(metal)),
        )
    )


def _note(metal):
    kept = " Sizes and lengths kept are common practice, from memory: ask your supplier."
    if metal == BRONZE:
        return "Skin from one caster's table, read." + kept
    return (
        "Skin from one producer's table of continuous-cast iron, read: a 3 in bar measures about "
        + wording.length(3.0 * MM + stock_over(nominal=3.0 * MM))
        + " and is sure to clean up to 3 in."
        + kept
    )


def _entry(size, system):
    entry = OrderedDict(
        (
            ("label", size.label),
            ("sizes", system),
            ("form", size.form),
            ("nominal_diameter", Quantity(size.nominal, "mm")),
            ("as_cast_diameter", Quantity(size.as_cast, "mm")),
        )
    )
    if size.form == CORED:
        entry["nominal_bore"] = Quantity(size.bore, "mm")
        entry["as_cast_bore"] = Quantity(size.as_cast_bore, "mm")
    return entry


def _row(nominal, metal):
    for row in _IRON_OUTSIDE if metal == IRON else _BRONZE:
        if nominal <= row[0] * MM + 1e-9:
            return row
    raise OutOfRange("nominal", nominal, "the table of cast bars", "bar tables")


def _metal(size):
    return size.as_cast * size.as_cast - size.as_cast_bore * size.as_cast_bore


def _bore_step(system):
    return 0.25 * MM if system == INCH else 5.0


def _serving_bore(widest, system, inside):
    """The bore that is made, at most `widest`, and leaves `inside`, when given, to bore; or 0."""
    if inside is None:
        return widest
    step = _bore_step(system)
    bore = min(widest, int(inside / step + 1e-9) * step)
    return bore if bore >= LEAST_BORE else 0.0


def _solid(nominal, label, metal):
    cast = nominal + stock_over(nominal=nominal, metal=metal)
    return BarSize(
        form=SOLID, nominal=nominal, bore=0.0, as_cast=cast, as_cast_bore=0.0, label=label
    )


def _cored(nominal, bore, label, system, metal):
    cast = nominal + stock_over(nominal=nominal, metal=metal)
    cast_bore = as_cast_bore(nominal=bore, outside=nominal, metal=metal)
    across = inch_label(bore / MM) if system == INCH else "%d mm" % bore
    return BarSize(
        form=CORED,
        nominal=nominal,
        bore=bore,
        as_cast=cast,
        as_cast_bore=cast_bore,
        label="%s x %s cored" % (label, across),
    )


def _serving(system, metal, form, outside, inside):
    """The sizes of one system that serve; cored, the largest bore that will do in each outside."""
    found = []
    for nominal, label in sizes(system):
        if nominal < outside - 1e-9 or nominal > LARGEST + 1e-6:
            continue
        if form == SOLID:
            return [_solid(nominal, label, metal)]
        widest = widest_bore(nominal=nominal, system=system, metal=metal)
        bore = _serving_bore(widest, system, inside)
        if bore:
            found.append(_cored(nominal, bore, label, system, metal))
            if bore < widest:
                # The ring's own bore is the limit now: a larger outside only adds metal.
                break
    return found
