"""The inputs of the stock calculation: sets of rings, the shop's habits, the bars at hand."""

from ..fields import field
from ..properties.materials import for_use
from .bars import FORMS, SYSTEMS

MOST_SETS = 40
MOST_BARS = 60
MOST_OFFERS = 20

SET_FIELDS = (
    field("name", "text", "what to call the set", "its place in the list"),
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
        "material",
        "choice",
        "what the ring is made of",
        "grey-iron",
        choices=tuple(for_use("ring")),
    ),
)

BAR_FIELDS = (
    field("name", "text", "what to call the bar", "its place in the list"),
    field("form", "choice", "solid or cored", "solid", choices=FORMS),
    field(
        "diameter",
        "length",
        "outside diameter as it measures",
        lowest=5.0,
        highest=1200.0,
        required=True,
    ),
    field(
        "bore", "length", "bore as it measures, of a cored bar", "none", lowest=0.0, highest=1190.0
    ),
    field("length", "length", "length", lowest=5.0, highest=12000.0, required=True),
    field("count", "count", "how many of them", "1", lowest=1, highest=200),
    field(
        "skin",
        "flag",
        "true while the cast skin is on it; false for a bar that was turned clean",
        "true",
    ),
    field("material", "choice", "what it is made of", "grey-iron", choices=tuple(for_use("ring"))),
)

OFFER_FIELDS = (
    field("name", "text", "what to call the bar", "its size"),
    field("form", "choice", "solid or cored", "solid", choices=FORMS),
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
        "none",
        lowest=0.0,
        highest=1190.0,
    ),
    field("length", "length", "length", lowest=5.0, highest=12000.0, required=True),
    field("count", "count", "how many can be had", "as many as you want", lowest=1, highest=200),
    field(
        "price",
        "money",
        "price of one bar",
        "its mass at the price of the metal",
        lowest=0.0,
        highest=1000000.0,
        above_lowest=True,
    ),
    field("material", "choice", "what it is made of", "grey-iron", choices=tuple(for_use("ring"))),
)

QUICK = "quick"
THOROUGH = "thorough"

SHOP_FIELDS = (
    field(
        "spares",
        "count",
        "blanks to cut beyond those wanted, for each set",
        "one in five, at least one",
        lowest=0,
        highest=200,
    ),
    field(
        "parting_width",
        "length",
        "width of the parting tool",
        "2 mm to 40 mm diameter, 3 mm to 120, 4 mm beyond",
        lowest=0.5,
        highest=12.0,
    ),
    field(
        "end_facing",
        "length",
        "taken off the end of each stick to clean it",
        "1.5 mm",
        lowest=0.0,
        highest=20.0,
    ),
    field(
        "chucking_piece",
        "length",
        "left in the chuck at the end of each stick",
        "a quarter of the diameter, at least 20 mm",
        lowest=0.0,
        highest=400.0,
    ),
    field(
        "rings_per_stick",
        "count",
        "most blanks turned from one stick",
        "what stands out by at most one and a half diameters",
        lowest=1,
        highest=200,
    ),
    field(
        "saw_width",
        "length",
        "width of the saw that cuts the bar",
        "2 mm",
        lowest=0.0,
        highest=10.0,
    ),
    field(
        "usable_offcut",
        "length",
        "an offcut this long is kept, a shorter one is scrap",
        "60 mm",
        lowest=0.0,
        highest=2000.0,
    ),
    field("bar_sizes", "choice", "inch or metric bars", "whichever wastes less", choices=SYSTEMS),
    field("bar_form", "choice", "solid or cored bar", "whichever wastes less", choices=FORMS),
    field(
        "bar_length",
        "length",
        "length of the bars you can buy",
        "cut to order",
        lowest=20.0,
        highest=12000.0,
    ),
    field(
        "bar_price",
        "price",
        "price of the metal by mass",
        "none: no cost is worked out",
        lowest=0.0,
        highest=100000.0,
        above_lowest=True,
    ),
    field(
        "spindle_bore",
        "length",
        "hole through the lathe spindle: bars that pass are fed through it",
        "bars are sawn into sticks",
        lowest=5.0,
        highest=600.0,
    ),
    field(
        "bars", "records", "bars you have", "none", lowest=0, highest=MOST_BARS, items=BAR_FIELDS
    ),
    field(
        "bars_to_buy",
        "records",
        "bars on offer, by size, length and price",
        "bars of bar_length in the size each set asks for, if that is given",
        lowest=0,
        highest=MOST_OFFERS,
        items=OFFER_FIELDS,
    ),
    field(
        "cutting_effort",
        "choice",
        "how long to look for the best way to cut",
        "quick, about a second on a slow phone; thorough takes ten times as long",
        choices=(QUICK, THOROUGH),
    ),
)
