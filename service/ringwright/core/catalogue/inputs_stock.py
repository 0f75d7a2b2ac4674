"""Inputs of the stock: sets of rings, the shop's habits, bars at hand and on offer."""

import math

from ..fields import field
from ..properties.materials import for_use
from .inputs import fixed, nothing, rule, steps, table, worked
from .inputs_ring import GREY_IRON

SOLID = "solid"
CORED = "cored"
FORMS = (SOLID, CORED)
INCH = "inch"
METRIC = "metric"
SYSTEMS = (INCH, METRIC)
IRON = "iron"
BRONZE = "bronze"
METALS = (IRON, BRONZE)
QUICK = "quick"
THOROUGH = "thorough"
MOST_SETS = 40
MOST_BARS = 60
MOST_OFFERS = 20
# One spare blank for so many.
SPARE_SHARE = 5
# How far a stick stands out of the chuck, in diameters; common practice, no source.
OVERHANG = 1.5


def _spares(count):
    return max(1, count // SPARE_SHARE)


def _chucking(diameter):
    return max(20.0, math.floor(0.05 * diameter + 0.5) * 5.0)


SET_ENTRY = (
    field("name", "text", "what to call the set", nothing("its place in the list")),
    field(
        "outside_diameter",
        "length",
        "rough outside diameter of the blank",
        lowest=5.0,
        highest=1100.0,
        required=True,
    ),
    field(
        "inside_diameter",
        "length",
        "bored inside diameter of the blank",
        lowest=1.0,
        highest=1090.0,
        required=True,
    ),
    field(
        "part_length",
        "length",
        "length of one blank as it is parted off, with metal to face on both sides",
        lowest=0.5,
        highest=400.0,
        required=True,
    ),
    field("count", "count", "how many rings are wanted", lowest=1, highest=500, required=True),
    field(
        "cut_off_width",
        "length",
        "width of the saw that cuts its blanks off the stick on the rotary table",
        nothing("they are parted off in the lathe"),
        lowest=0.1,
        highest=12.0,
    ),
    field(
        "table_grip",
        "length",
        "held in the chuck of the rotary table, where it is slit on the stick",
        nothing("as much as the lathe's chuck holds"),
        lowest=5.0,
        highest=400.0,
    ),
    field(
        "material",
        "choice",
        "what the ring is made of",
        fixed(GREY_IRON),
        choices=tuple(for_use("ring")),
    ),
)

BAR_ENTRY = (
    field("name", "text", "what to call the bar", nothing("its place in the list")),
    field("form", "choice", "solid or cored", fixed(SOLID), choices=FORMS),
    field(
        "diameter",
        "length",
        "outside diameter as it measures",
        lowest=5.0,
        highest=1200.0,
        required=True,
    ),
    field(
        "bore",
        "length",
        "bore as it measures, of a cored bar",
        nothing("none"),
        lowest=0.0,
        highest=1190.0,
    ),
    field("length", "length", "length", lowest=5.0, highest=12000.0, required=True),
    field("count", "count", "how many of them", fixed(1), lowest=1, highest=200),
    field(
        "skin",
        "flag",
        "true while the cast skin is on it; false for a bar that was turned clean",
        fixed(True),
    ),
    field(
        "material", "choice", "what it is made of", fixed(GREY_IRON), choices=tuple(for_use("ring"))
    ),
)

OFFER_ENTRY = (
    field("name", "text", "what to call the bar", nothing("its size")),
    field("form", "choice", "solid or cored", fixed(SOLID), choices=FORMS),
    field(
        "diameter",
        "length",
        "outside diameter that it is sold by and cleans up to",
        lowest=5.0,
        highest=1200.0,
        required=True,
    ),
    field(
        "bore",
        "length",
        "bore that a cored bar is sold by and bores out to",
        nothing("none"),
        lowest=0.0,
        highest=1190.0,
    ),
    field("length", "length", "length", lowest=5.0, highest=12000.0, required=True),
    field(
        "count",
        "count",
        "how many can be had",
        nothing("as many as you want"),
        lowest=1,
        highest=200,
    ),
    field(
        "price",
        "money",
        "price of one bar",
        nothing("its mass at the price of the metal"),
        lowest=0.0,
        highest=1000000.0,
        above_lowest=True,
    ),
    field(
        "material", "choice", "what it is made of", fixed(GREY_IRON), choices=tuple(for_use("ring"))
    ),
)

PRICE_ENTRY = (
    field("material", "choice", "the metal", choices=tuple(for_use("ring")), required=True),
    field(
        "price",
        "price",
        "its price by mass",
        lowest=0.0,
        highest=100000.0,
        above_lowest=True,
        required=True,
    ),
)

SETS = table(
    field(
        "sets",
        "records",
        "sets of rings to cut",
        lowest=1,
        highest=MOST_SETS,
        items=SET_ENTRY,
        required=True,
    ),
)

SHOP = table(
    field(
        "spares",
        "count",
        "blanks to cut beyond those wanted, for each set",
        rule("one in %d, at least one" % SPARE_SHARE, _spares),
        lowest=0,
        highest=200,
    ),
    field(
        "parting_width",
        "length",
        "width of the parting tool",
        steps(
            "the diameter",
            ((40.0, 2.0), (120.0, 3.0), (None, 4.0)),
            "a tool stiff enough for the diameter",
        ),
        lowest=0.5,
        highest=12.0,
    ),
    field(
        "end_facing",
        "length",
        "taken off the end of each stick to clean it",
        fixed(1.5, "cleans the sawn end"),
        lowest=0.0,
        highest=20.0,
    ),
    field(
        "chucking_piece",
        "length",
        "left in the chuck at the end of each stick",
        rule("a quarter of the diameter, at least 20 mm", _chucking),
        lowest=0.0,
        highest=400.0,
    ),
    field(
        "rings_per_stick",
        "count",
        "most blanks turned from one stick",
        worked(
            "what stands out by at most %s diameters" % OVERHANG,
            "so that the stick stands out by at most %s diameters" % OVERHANG,
        ),
        lowest=1,
        highest=200,
    ),
    field(
        "saw_width",
        "length",
        "width of the saw that cuts the bar",
        fixed(2.0, "a usual saw"),
        lowest=0.0,
        highest=10.0,
    ),
    field(
        "usable_offcut",
        "length",
        "an offcut this long is kept, a shorter one is scrap",
        fixed(60.0, "long enough to hold and turn a ring"),
        lowest=0.0,
        highest=2000.0,
    ),
    field(
        "bar_sizes",
        "choice",
        "inch or metric bars",
        nothing("whichever wastes less"),
        choices=SYSTEMS,
    ),
    field(
        "bar_form", "choice", "solid or cored bar", nothing("whichever wastes less"), choices=FORMS
    ),
    field(
        "bar_length",
        "length",
        "length of the bars you can buy",
        nothing("cut to order"),
        lowest=20.0,
        highest=12000.0,
    ),
    field(
        "bar_price",
        "price",
        "price of the metal by mass",
        nothing("none: no cost is worked out"),
        lowest=0.0,
        highest=100000.0,
        above_lowest=True,
    ),
    field(
        "metal_prices",
        "records",
        "prices of single metals by mass; each goes before the price for all",
        nothing("the price for all metals"),
        lowest=0,
        highest=MOST_OFFERS,
        items=PRICE_ENTRY,
    ),
    field(
        "spindle_bore",
        "length",
        "hole through the lathe spindle: bars that pass are fed through it",
        nothing("bars are sawn into sticks"),
        lowest=5.0,
        highest=600.0,
    ),
    field(
        "bars",
        "records",
        "bars you have",
        nothing("none"),
        lowest=0,
        highest=MOST_BARS,
        items=BAR_ENTRY,
    ),
    field(
        "bars_to_buy",
        "records",
        "bars on offer, by size, length and price",
        nothing("bars as long as you can buy, in the size that each set asks for"),
        lowest=0,
        highest=MOST_OFFERS,
        items=OFFER_ENTRY,
    ),
    field(
        "cutting_effort",
        "choice",
        "how long to look for the best way to cut",
        fixed(QUICK, "", "quick, about a second on a slow phone; thorough takes ten times as long"),
        choices=(QUICK, THOROUGH),
    ),
)

SIZES = table(
    field(
        "outside_diameter",
        "length",
        "largest diameter that must clean up",
        nothing("every size is listed"),
        lowest=0.0,
        highest=406.4,
        above_lowest=True,
        symbol="D",
    ),
    field(
        "inside_diameter",
        "length",
        "smallest bore that must clean up",
        nothing("of each outside the widest bore made"),
        lowest=0.0,
        highest=400.0,
        above_lowest=True,
        symbol="d",
    ),
    field("metal", "choice", "metal of the bar", fixed(IRON), choices=METALS),
    field("sizes", "choice", "inch or metric sizes", nothing("both"), choices=SYSTEMS),
)
