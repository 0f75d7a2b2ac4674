"""Materials of rings, cylinders, pistons and tooling, and which may run on which.

Each property names the source it was taken from. The figures are for bar or castings of ordinary
quality: a maker's certificate for the bar in hand is better, and may be given in their place.
"""

from collections import OrderedDict, namedtuple

from .problems import OutOfRange
from .records import GOOD, STOP, WATCH, Method
from .sources import SOURCES

# key: as in requests. title: in words. family: the row of PAIRINGS it belongs to.
# uses: what it is put to here, of "ring", "cylinder", "piston", "former".
# modulus, modulus_low, modulus_high: Young's modulus and the spread to expect [MPa].
# poisson: Poisson's ratio [1]. density [kg/m3]. expansion: mean, from the shop to steam heat [1/K].
# bending_strength: stress at the skin, in bending, at which a brittle iron breaks (modulus of
#   rupture) or a ductile metal takes a set (proof stress) [MPa]. Not a working stress.
# tensile_low, tensile_high: tensile strength [MPa]. hottest: highest temperature of service [degC].
# sources: (property, key of the source) pairs; "modulus" covers its low and high, "tensile" both.
Material = namedtuple(
    "Material",
    (
        "key",
        "title",
        "family",
        "uses",
        "modulus",
        "modulus_low",
        "modulus_high",
        "poisson",
        "density",
        "expansion",
        "bending_strength",
        "tensile_low",
        "tensile_high",
        "hottest",
        "sources",
        "note",
    ),
)

PROPERTIES = (
    ("modulus", "MPa"),
    ("modulus_low", "MPa"),
    ("modulus_high", "MPa"),
    ("poisson", "1"),
    ("density", "kg/m3"),
    ("expansion", "1/K"),
    ("bending_strength", "MPa"),
    ("tensile_low", "MPa"),
    ("tensile_high", "MPa"),
    ("hottest", "degC"),
)

_GREY_IRON_SOURCES = (
    ("modulus", "en1561"),
    ("poisson", "grey-iron-sheet"),
    ("density", "en1561"),
    ("expansion", "en1561"),
    ("bending_strength", "en1561"),
    ("tensile", "en1561"),
    ("hottest", "memory"),
)

_PTFE_SOURCES = (
    ("modulus", "memory"),
    ("poisson", "memory"),
    ("density", "filled-ptfe-sheet"),
    ("expansion", "tribology-handbook"),
    ("bending_strength", "memory"),
    ("tensile", "filled-ptfe-sheet"),
    ("hottest", "memory"),
)

_PTFE_NOTE = (
    "Soft and with little spring of its own: it needs an expander behind it. Expands several times "
    "as much as iron, so its gap and side clearance are large."
)

_ALL = (
    Material(
        "grey-iron",
        "Grey cast iron, ring quality",
        "iron",
        ("ring", "cylinder", "piston", "former"),
        103500.0,
        83000.0,
        124000.0,
        0.26,
        7200.0,
        11.7e-6,
        350.0,
        230.0,
        310.0,
        400.0,
        (
            ("modulus", "tribology-handbook"),
            ("poisson", "grey-iron-sheet"),
            ("density", "en1561"),
            ("expansion", "en1561"),
            ("bending_strength", "iso6621-3-sheet"),
            ("tensile", "tribology-handbook"),
            ("hottest", "memory"),
        ),
        "For bar of unknown grade. The modulus is the middle of the range published for grey ring "
        "irons. Iron breaks in bending at a stress well above its tensile strength: the figure here "
        "is the least modulus of rupture asked of plain grey ring iron.",
    ),
    Material(
        "grey-iron-250",
        "Grey cast iron, grade 250",
        "iron",
        ("ring", "cylinder", "piston", "former"),
        110500.0,
        103000.0,
        118000.0,
        0.26,
        7200.0,
        11.7e-6,
        340.0,
        250.0,
        350.0,
        400.0,
        _GREY_IRON_SOURCES,
        "The usual continuous-cast bar. The modulus is the middle of the grade's range.",
    ),
    Material(
        "grey-iron-300",
        "Grey cast iron, grade 300",
        "iron",
        ("ring", "cylinder", "piston"),
        122500.0,
        108000.0,
        137000.0,
        0.26,
        7250.0,
        11.7e-6,
        390.0,
        300.0,
        400.0,
        400.0,
        _GREY_IRON_SOURCES,
        "Stronger and stiffer than ring iron, and harder on a soft bore.",
    ),
    Material(
        "grey-iron-200",
        "Grey cast iron, grade 200",
        "iron",
        ("ring", "cylinder", "piston", "former"),
        100500.0,
        88000.0,
        113000.0,
        0.26,
        7150.0,
        11.7e-6,
        290.0,
        200.0,
        300.0,
        400.0,
        (
            ("modulus", "grey-iron-sheet"),
            ("poisson", "grey-iron-sheet"),
            ("density", "en1561"),
            ("expansion", "en1561"),
            ("bending_strength", "grey-iron-sheet"),
            ("tensile", "grey-iron-sheet"),
            ("hottest", "memory"),
        ),
        "The common iron of old cylinders and pistons, and the weakest that makes a fair ring.",
    ),
    Material(
        "ductile-iron",
        "Ductile (nodular) cast iron",
        "iron",
        ("ring", "piston", "cylinder"),
        160000.0,
        155000.0,
        165000.0,
        0.28,
        7100.0,
        11.2e-6,
        320.0,
        540.0,
        820.0,
        400.0,
        (
            ("modulus", "tribology-handbook"),
            ("poisson", "ductile-iron-sheet"),
            ("density", "memory"),
            ("expansion", "callister"),
            ("bending_strength", "ductile-iron-sheet"),
            ("tensile", "tribology-handbook"),
            ("hottest", "memory"),
        ),
        "Bends before it breaks: the bending figure is the proof stress, beyond which a ring takes a "
        "set. Half as stiff again as grey iron. Slides less well than grey iron when oil is short.",
    ),
    Material(
        "phosphor-bronze",
        "Phosphor bronze (tin bronze)",
        "bronze",
        ("ring", "piston", "cylinder"),
        117000.0,
        103000.0,
        120000.0,
        0.34,
        8770.0,
        18.0e-6,
        150.0,
        276.0,
        305.0,
        230.0,
        (
            ("modulus", "tin-bronze-sheet"),
            ("poisson", "tin-bronze-sheet"),
            ("density", "tin-bronze-sheet"),
            ("expansion", "tin-bronze-sheet"),
            ("bending_strength", "tin-bronze-sheet"),
            ("tensile", "tin-bronze-sheet"),
            ("hottest", "memory"),
        ),
        "Cast bar. It takes a set where iron would break, so it stands little opening. Saturated "
        "steam only.",
    ),
    Material(
        "gunmetal",
        "Gunmetal",
        "bronze",
        ("ring", "cylinder", "piston"),
        103000.0,
        96000.0,
        110000.0,
        0.34,
        8720.0,
        19.8e-6,
        150.0,
        276.0,
        310.0,
        200.0,
        (
            ("modulus", "gunmetal-sheet"),
            ("poisson", "tin-bronze-sheet"),
            ("density", "gunmetal-sheet"),
            ("expansion", "gunmetal-sheet"),
            ("bending_strength", "gunmetal-sheet"),
            ("tensile", "gunmetal-sheet"),
            ("hottest", "memory"),
        ),
        "The metal of many small cylinders. It expands far more than iron. Saturated steam only.",
    ),
    Material(
        "filled-ptfe-carbon",
        "PTFE filled with carbon",
        "plastic",
        ("ring",),
        1000.0,
        600.0,
        1500.0,
        0.46,
        2100.0,
        55.0e-6,
        10.0,
        12.0,
        20.0,
        200.0,
        _PTFE_SOURCES,
        _PTFE_NOTE,
    ),
    Material(
        "filled-ptfe-bronze",
        "PTFE filled with bronze",
        "plastic",
        ("ring",),
        1300.0,
        800.0,
        1800.0,
        0.46,
        3900.0,
        118.0e-6,
        10.0,
        10.0,
        20.0,
        200.0,
        _PTFE_SOURCES,
        _PTFE_NOTE,
    ),
    Material(
        "filled-ptfe-glass",
        "PTFE filled with glass",
        "plastic",
        ("ring",),
        1000.0,
        600.0,
        1500.0,
        0.46,
        2230.0,
        80.0e-6,
        10.0,
        12.0,
        20.0,
        200.0,
        _PTFE_SOURCES,
        _PTFE_NOTE + " The glass scratches soft bores.",
    ),
    Material(
        "steel",
        "Mild steel",
        "steel",
        ("piston", "former", "cylinder"),
        207000.0,
        200000.0,
        210000.0,
        0.29,
        7850.0,
        11.7e-6,
        250.0,
        400.0,
        550.0,
        400.0,
        (
            ("modulus", "callister"),
            ("poisson", "memory"),
            ("density", "memory"),
            ("expansion", "callister"),
            ("bending_strength", "memory"),
            ("tensile", "memory"),
            ("hottest", "memory"),
        ),
        "For tooling, pistons and liners. As a former it may be heated red many times, but it scales.",
    ),
    Material(
        "stainless-steel",
        "Austenitic stainless steel",
        "steel",
        ("piston", "former", "cylinder"),
        193000.0,
        190000.0,
        200000.0,
        0.30,
        7900.0,
        17.2e-6,
        210.0,
        500.0,
        700.0,
        600.0,
        (
            ("modulus", "callister"),
            ("poisson", "memory"),
            ("density", "memory"),
            ("expansion", "callister"),
            ("bending_strength", "memory"),
            ("tensile", "memory"),
            ("hottest", "memory"),
        ),
        "Expands half as much again as iron: a former of it grows inside the ring as both get hot. "
        "Picks up on iron when dry.",
    ),
    Material(
        "aluminium",
        "Aluminium alloy",
        "aluminium",
        ("piston", "cylinder"),
        69000.0,
        68000.0,
        72000.0,
        0.33,
        2700.0,
        23.6e-6,
        240.0,
        260.0,
        310.0,
        200.0,
        (
            ("modulus", "memory"),
            ("poisson", "memory"),
            ("density", "memory"),
            ("expansion", "callister"),
            ("bending_strength", "memory"),
            ("tensile", "memory"),
            ("hottest", "memory"),
        ),
        "Expands twice as much as iron and softens early. A piston of it needs much more clearance.",
    ),
    Material(
        "brass",
        "Free-cutting brass",
        "bronze",
        ("cylinder", "piston"),
        97000.0,
        93000.0,
        105000.0,
        0.34,
        8500.0,
        20.5e-6,
        140.0,
        330.0,
        400.0,
        200.0,
        (
            ("modulus", "memory"),
            ("poisson", "memory"),
            ("density", "memory"),
            ("expansion", "callister"),
            ("bending_strength", "memory"),
            ("tensile", "memory"),
            ("hottest", "memory"),
        ),
        "For small cylinders and liners. Loses its zinc in wet steam; gunmetal lasts longer.",
    ),
)

MATERIALS = OrderedDict([(entry.key, entry) for entry in _ALL])

# Which comes first when the caller does not say.
PREFERENCE = {
    "ring": (
        "grey-iron",
        "grey-iron-250",
        "grey-iron-200",
        "grey-iron-300",
        "ductile-iron",
        "phosphor-bronze",
        "gunmetal",
        "filled-ptfe-carbon",
        "filled-ptfe-bronze",
        "filled-ptfe-glass",
    ),
    "cylinder": (
        "grey-iron",
        "grey-iron-200",
        "grey-iron-250",
        "grey-iron-300",
        "ductile-iron",
        "gunmetal",
        "phosphor-bronze",
        "brass",
        "steel",
        "stainless-steel",
        "aluminium",
    ),
    "piston": (
        "grey-iron",
        "grey-iron-200",
        "grey-iron-250",
        "grey-iron-300",
        "steel",
        "gunmetal",
        "phosphor-bronze",
        "ductile-iron",
        "aluminium",
        "stainless-steel",
        "brass",
    ),
    "former": ("steel", "grey-iron", "grey-iron-250", "grey-iron-200", "stainless-steel"),
}

# (family of the ring, family of the cylinder) -> (outcome, why, remedy). Common practice, no source.
PAIRINGS = {
    ("iron", "iron"): (GOOD, "Iron on iron is the pairing the trade trusts: both glaze and hold oil.", ""),
    ("iron", "bronze"): (
        WATCH,
        "An iron ring in a bronze bore runs, but wears the bore rather than itself, and rusts to it "
        "when the engine stands wet.",
        "Prefer a bronze ring in a bronze or gunmetal cylinder; if iron is kept, keep the wall "
        "pressure low and oil the bore before the engine is laid up.",
    ),
    ("iron", "steel"): (
        WATCH,
        "An iron ring in a steel bore runs if the bore is honed and never short of oil; steel holds "
        "oil less well than iron.",
        "Hone the bore to a fine cross-hatch and see that the lubricator reaches it, or line it with "
        "iron.",
    ),
    ("iron", "aluminium"): (
        STOP,
        "An iron ring cuts a soft aluminium bore.",
        "Line the cylinder with iron, or use a ring of filled PTFE.",
    ),
    ("bronze", "iron"): (
        STOP,
        "Bronze rings are for bronze or gunmetal cylinders only: in iron the ring is the softer part, "
        "wears away and closes its gap as it expands.",
        "Make the ring of grey iron.",
    ),
    ("bronze", "bronze"): (GOOD, "Bronze rings belong in bronze or gunmetal cylinders.", ""),
    ("bronze", "steel"): (
        STOP,
        "Bronze rings are for bronze or gunmetal cylinders only.",
        "Make the ring of grey iron.",
    ),
    ("bronze", "aluminium"): (
        STOP,
        "A bronze ring picks up on a soft aluminium bore.",
        "Line the cylinder, or use a ring of filled PTFE.",
    ),
    ("plastic", "iron"): (GOOD, "Filled PTFE runs well on a finely honed iron bore.", ""),
    ("plastic", "steel"): (GOOD, "Filled PTFE runs well on a finely honed steel bore.", ""),
    ("plastic", "bronze"): (
        WATCH,
        "The filler of the plastic wears a bronze bore.",
        "Use the carbon-filled kind and look at the bore early.",
    ),
    ("plastic", "aluminium"): (
        WATCH,
        "The filler of the plastic wears a soft aluminium bore unless it is hard-anodised.",
        "Use the carbon-filled kind in a hard-anodised bore, or line the cylinder.",
    ),
}

METHODS = (
    Method(
        "material-property",
        "Property of a material",
        "taken from the table of materials",
        "ordinary quality, at shop to steam temperature",
        ("tribology-handbook", "en1561", "iso6621-3-sheet", "callister", "memory"),
    ),
    Method(
        "pairing",
        "Which ring may run in which cylinder",
        "a table by family: iron, bronze, plastic rings; iron, bronze, steel, aluminium bores",
        "oiled, saturated or mildly superheated steam",
        ("practice",),
    ),
)

_BASIS = {}
for _source in SOURCES:
    _BASIS[_source.key] = _source.basis


def material(key):
    """The Material of that key.

    key: one of MATERIALS, such as "grey-iron".
    Raises OutOfRange when there is none of that name.
    """
    found = MATERIALS.get(key)
    if found is None:
        raise OutOfRange("material", key, ", ".join(MATERIALS), "table of materials")
    return found


def for_use(use):
    """The keys of the materials put to that use, the one to prefer first.

    use: "ring", "cylinder", "piston" or "former".
    Raises OutOfRange for another use.
    """
    found = PREFERENCE.get(use)
    if found is None:
        raise OutOfRange("use", use, "ring, cylinder, piston, former", "table of materials")
    return found


def pairing(ring_key, cylinder_key):
    """Whether a ring of one material may run in a cylinder of another: (outcome, why, remedy).

    ring_key: key of the ring's material. cylinder_key: key of the cylinder's material.
    The outcome is good, watch or stop; the remedy is empty when it is good.
    Raises OutOfRange for an unknown key, or a ring material nobody makes rings of.
    Source: common practice, no source.
    """
    ring = material(ring_key)
    cylinder = material(cylinder_key)
    verdict = PAIRINGS.get((ring.family, cylinder.family))
    if verdict is None:
        raise OutOfRange("ring_key", ring_key, ", ".join(PREFERENCE["ring"]), "table of materials")
    return verdict


def source_of(entry, name):
    """The key of the source of one property of a Material.

    entry: a Material. name: a property, such as "modulus_low".
    """
    wanted = "modulus" if name[:7] == "modulus" else "tensile" if name[:7] == "tensile" else name
    for known, key in entry.sources:
        if known == wanted:
            return key
    raise OutOfRange("name", name, "the properties of a material", "table of materials")


def calculate_materials(values):
    """Every material with its properties, each with unit, source and how far that was checked.

    values: a dict, not read: the list takes no inputs.
    """
    listing = []
    for entry in _ALL:
        properties = OrderedDict()
        for name, unit in PROPERTIES:
            source = source_of(entry, name)
            properties[name] = OrderedDict(
                (
                    ("value", getattr(entry, name)),
                    ("unit", unit),
                    ("source", source),
                    ("basis", _BASIS[source]),
                )
            )
        listing.append(
            OrderedDict(
                (
                    ("key", entry.key),
                    ("title", entry.title),
                    ("family", entry.family),
                    ("uses", list(entry.uses)),
                    ("note", entry.note),
                    ("properties", properties),
                )
            )
        )
    return OrderedDict((("materials", listing), ("pairings", _pairing_list())))


def _pairing_list():
    rows = []
    for ring_family in ("iron", "bronze", "plastic"):
        for cylinder_family in ("iron", "bronze", "steel", "aluminium"):
            outcome, why, remedy = PAIRINGS[(ring_family, cylinder_family)]
            rows.append(
                OrderedDict(
                    (
                        ("ring", ring_family),
                        ("cylinder", cylinder_family),
                        ("outcome", outcome),
                        ("why", why),
                        ("remedy", remedy),
                    )
                )
            )
    return rows
