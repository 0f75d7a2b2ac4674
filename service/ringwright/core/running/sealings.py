"""Reference list "sealings": ways to seal a piston, and what can be said of each here."""

from collections import OrderedDict, namedtuple

from ..properties.materials import material
from ..records import Quantity

# key, title, what it is; suits; against: its drawbacks; hottest: steam it stands [degC], None where
# the metal sets the limit; reckoned: what the calculations say of it; not_reckoned: what not.
Sealing = namedtuple(
    "Sealing",
    ("key", "title", "what", "suits", "against", "hottest", "basis", "reckoned", "not_reckoned"),
)

_ALL = (
    Sealing(
        "plain-ring",
        "Plain split ring of iron or bronze",
        "One turn, one gap, sprung outward by its own shape.",
        "Any size; superheat with iron; quick to make; stays in service for years.",
        "Steam passes the gap, the more as ring, bore and piston wear.",
        None,
        "practice",
        "Section, stresses, forming, wall pressure, leak, friction, wear and clearances.",
        "What scored or dry bores do to it.",
    ),
    Sealing(
        "double-turn-ring",
        "Double-turn ring",
        "Two turns in one piece side by side in one groove, each covering the other's gap.",
        "Where the straight way through a gap is to be shut; small bores, slow engines, hand "
        "pumps.",
        "Twice the work; iron may break when it is turned through itself or wound on; steam behind "
        "the ring can still find the gap of the turn on the low side.",
        None,
        "practice",
        "All that is worked out of a plain ring, and the turning inside out.",
        "How much passes round the back: the figure runs from nil to all.",
    ),
    Sealing(
        "soft-packing",
        "Soft packing",
        "Square plaited yarn, graphited or with PTFE, in a wide groove, swelling when wet and hot.",
        "Small and old engines, oval or scored bores, bronze cylinders, saturated steam.",
        "Drags more than a ring, dries out and shrinks in store, wants renewing; not for "
        "superheat.",
        200.0,
        "memory",
        "Nothing of the packing itself; the cylinder's power and steam use as for any piston.",
        "Its leak and its friction: both hang on how hard it was packed.",
    ),
    Sealing(
        "filled-ptfe-ring",
        "Ring of filled PTFE, with an expander or by steam alone",
        "A split ring of PTFE with carbon, bronze or glass, pressed out by a spring behind it.",
        "Dry or little-oiled cylinders, bores of any metal, aluminium bores hard-anodised.",
        "Expands five to ten times as much as iron: large gap and side clearance cold; soft; "
        "hardly any spring of its own.",
        material("filled-ptfe-carbon").hottest,
        "filled-ptfe-sheet",
        "Gap, side clearance and what touches first; leak through the gap; friction with its own "
        "coefficient.",
        "The expander's force, creep, and wear in dry steam.",
    ),
    Sealing(
        "o-ring-slipper",
        "O-ring with a slipper",
        "An elastic O-ring in the groove pressing out a thin uncut ring of filled PTFE.",
        "Small bores with a fine finish, moderate saturated steam, engines that must not drip.",
        "The O-ring sets and hardens with heat and oil; the slipper has to be stretched on; a worn "
        "or tapered bore defeats it.",
        150.0,
        "steam-o-rings",
        "The heat against its limit; the cylinder's power and steam use.",
        "Squeeze, friction and life: follow the maker of the O-ring. Which rubber stands steam: "
        "many that stand the heat dry do not stand it wet.",
    ),
    Sealing(
        "grooved-piston",
        "Long fitted piston with grooves and no ring",
        "A close piston whose grooves hold water and break up the flow.",
        "Very small or fast engines and piston valves with oil and clean steam.",
        "Leaks all round from the first day; seizes when piston and bore do not expand together.",
        None,
        "practice",
        "Clearance of the piston cold and hot, and what touches first.",
        "The leak: film and eddies between moving walls are not worked out here.",
    ),
)


def calculate_sealings(values):
    """The sealings, in the order to consider them, each with what can and cannot be said of it.

    values: a dict, not read: the list takes no inputs.
    """
    rows = []
    for entry in _ALL:
        row = OrderedDict(
            (
                ("key", entry.key),
                ("title", entry.title),
                ("what", entry.what),
                ("suits", entry.suits),
                ("against", entry.against),
                ("reckoned", entry.reckoned),
                ("not_reckoned", entry.not_reckoned),
                ("basis", entry.basis),
            )
        )
        if entry.hottest is not None:
            row["hottest"] = Quantity(entry.hottest, "degC")
        rows.append(row)
    return OrderedDict((("sealings", rows),))
