"""The table of materials, each property with the source it was taken from.

The figures are for bar or castings of ordinary quality: a maker's certificate for the bar in hand
is better, and may be given in their place.
"""

from collections import OrderedDict, namedtuple

# key: as in requests. title: in words. family: the row of the table of pairings it belongs to.
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

SOURCED = (
    "modulus",
    "poisson",
    "density",
    "expansion",
    "bending_strength",
    "tensile",
    "hottest",
)


def _from(usual, **others):
    """(property, source) pairs: `usual` for every property that `others` does not name."""
    return tuple([(name, others.get(name, usual)) for name in SOURCED])


def _row(
    key,
    title,
    family,
    uses,
    modulus,
    poisson,
    density,
    expansion,
    bending_strength,
    tensile,
    hottest,
    sources,
    note,
):
    """A Material from one row; modulus is (value, low, high) and tensile (low, high)."""
    return Material(
        key=key,
        title=title,
        family=family,
        uses=uses,
        modulus=modulus[0],
        modulus_low=modulus[1],
        modulus_high=modulus[2],
        poisson=poisson,
        density=density,
        expansion=expansion,
        bending_strength=bending_strength,
        tensile_low=tensile[0],
        tensile_high=tensile[1],
        hottest=hottest,
        sources=sources,
        note=note,
    )


_GRADED_IRON = _from("grey-iron-sheet", expansion="en1561", hottest="memory")
_PTFE = _from(
    "memory",
    poisson="callister",
    density="filled-ptfe-sheet",
    expansion="tribology-handbook",
    tensile="filled-ptfe-sheet",
    hottest="filled-ptfe-sheet",
)
_PTFE_NOTE = (
    "Soft and with little spring of its own: it needs an expander behind it. Expands several times "
    "as much as iron, so its gap and side clearance are large."
)

ROWS = (
    _row(
        "grey-iron",
        "Grey cast iron, ring quality",
        "iron",
        ("ring", "cylinder", "piston", "former"),
        (103500.0, 83000.0, 124000.0),
        0.26,
        7200.0,
        1.17e-05,
        350.0,
        (230.0, 310.0),
        400.0,
        _from(
            "tribology-handbook",
            poisson="grey-iron-sheet",
            density="grey-iron-sheet",
            expansion="en1561",
            bending_strength="iso6621-3-sheet",
            hottest="memory",
        ),
        "Cast for rings and bought as such; for bar of unknown grade choose grade 200. The modulus "
        "is the middle of the range published for grey ring irons. Iron breaks in bending at a "
        "stress well above its tensile strength: the figure here is the least modulus of rupture "
        "asked of plain grey ring iron.",
    ),
    _row(
        "grey-iron-250",
        "Grey cast iron, grade 250",
        "iron",
        ("ring", "cylinder", "piston", "former"),
        (110500.0, 103000.0, 118000.0),
        0.26,
        7200.0,
        1.17e-05,
        340.0,
        (250.0, 350.0),
        400.0,
        _GRADED_IRON,
        "The usual continuous-cast bar. The modulus is the middle of the grade's range.",
    ),
    _row(
        "grey-iron-300",
        "Grey cast iron, grade 300",
        "iron",
        ("ring", "cylinder", "piston"),
        (122500.0, 108000.0, 137000.0),
        0.26,
        7250.0,
        1.17e-05,
        390.0,
        (300.0, 400.0),
        400.0,
        _GRADED_IRON,
        "Stronger and stiffer than ring iron, and harder on a soft bore.",
    ),
    _row(
        "grey-iron-200",
        "Grey cast iron, grade 200",
        "iron",
        ("ring", "cylinder", "piston", "former"),
        (100500.0, 88000.0, 113000.0),
        0.26,
        7150.0,
        1.17e-05,
        290.0,
        (200.0, 300.0),
        400.0,
        _GRADED_IRON,
        "The common iron of old cylinders and pistons, and the weakest that makes a fair ring.",
    ),
    _row(
        "ductile-iron",
        "Ductile (nodular) cast iron",
        "iron",
        ("ring", "piston", "cylinder"),
        (160000.0, 155000.0, 165000.0),
        0.28,
        7100.0,
        1.12e-05,
        320.0,
        (540.0, 820.0),
        400.0,
        _from(
            "tribology-handbook",
            poisson="ductile-iron-sheet",
            density="callister",
            expansion="callister",
            bending_strength="ductile-iron-sheet",
            hottest="memory",
        ),
        "Bends before it breaks: the bending figure is the proof stress, beyond which a ring "
        "takes a set. Half as stiff again as grey iron. Slides less well than grey iron when oil "
        "is short.",
    ),
    _row(
        "phosphor-bronze",
        "Phosphor bronze (tin bronze)",
        "bronze",
        ("ring", "piston", "cylinder"),
        (117000.0, 103000.0, 120000.0),
        0.34,
        8770.0,
        1.8e-05,
        150.0,
        (276.0, 305.0),
        230.0,
        _from("tin-bronze-sheet", hottest="valve-metals"),
        "Cast bar. It takes a set where iron would break, so it stands little opening. Saturated "
        "steam only.",
    ),
    _row(
        "phosphor-bronze-drawn",
        "Drawn phosphor bronze (CW451K)",
        "bronze",
        ("ring",),
        (110000.0, 105000.0, 121000.0),
        0.34,
        8850.0,
        1.78e-05,
        380.0,
        (460.0, 560.0),
        180.0,
        _from("drawn-bronze-sheet"),
        "Drawn rod of 18 to 40 mm; thicker rod is weaker. Above 350 degC it goes soft. Saturated "
        "steam only.",
    ),
    _row(
        "gunmetal",
        "Gunmetal",
        "bronze",
        ("ring", "cylinder", "piston"),
        (103000.0, 96000.0, 110000.0),
        0.34,
        8720.0,
        1.98e-05,
        150.0,
        (276.0, 310.0),
        200.0,
        _from("gunmetal-sheet", poisson="tin-bronze-sheet", hottest="valve-metals"),
        "The metal of many small cylinders. It expands far more than iron. Saturated steam only.",
    ),
    _row(
        "filled-ptfe-carbon",
        "PTFE filled with carbon",
        "plastic",
        ("ring",),
        (1000.0, 600.0, 1500.0),
        0.46,
        2100.0,
        5.5e-05,
        10.0,
        (12.0, 20.0),
        200.0,
        _PTFE,
        _PTFE_NOTE,
    ),
    _row(
        "filled-ptfe-bronze",
        "PTFE filled with bronze",
        "plastic",
        ("ring",),
        (1300.0, 800.0, 1800.0),
        0.46,
        3900.0,
        0.000118,
        10.0,
        (10.0, 20.0),
        200.0,
        _PTFE,
        _PTFE_NOTE,
    ),
    _row(
        "filled-ptfe-glass",
        "PTFE filled with glass",
        "plastic",
        ("ring",),
        (1000.0, 760.0, 1310.0),
        0.46,
        2230.0,
        8e-05,
        10.0,
        (12.0, 20.0),
        200.0,
        (("modulus", "filled-ptfe-sheet"),) + _PTFE[1:],
        _PTFE_NOTE + " The glass scratches soft bores.",
    ),
    _row(
        "steel",
        "Mild steel",
        "steel",
        ("piston", "former", "cylinder"),
        (207000.0, 200000.0, 210000.0),
        0.29,
        7850.0,
        1.17e-05,
        250.0,
        (400.0, 500.0),
        400.0,
        _from("callister", poisson="materials-course", hottest="valve-metals"),
        "For tooling, pistons and liners. As a former it may be heated red many times, but it "
        "scales.",
    ),
    _row(
        "stainless-steel",
        "Austenitic stainless steel",
        "steel",
        ("piston", "former", "cylinder"),
        (193000.0, 190000.0, 200000.0),
        0.3,
        8000.0,
        1.72e-05,
        205.0,
        (515.0, 600.0),
        600.0,
        _from(
            "callister",
            poisson="materials-course",
            bending_strength="stainless-sheet",
            tensile="stainless-sheet",
            hottest="memory",
        ),
        "Expands half as much again as iron: a former of it grows inside the ring as both get "
        "hot. Picks up on iron when dry.",
    ),
    _row(
        "aluminium",
        "Aluminium alloy",
        "aluminium",
        ("piston", "cylinder"),
        (69000.0, 68000.0, 72000.0),
        0.33,
        2700.0,
        2.36e-05,
        240.0,
        (290.0, 310.0),
        200.0,
        _from(
            "callister",
            poisson="materials-course",
            bending_strength="aluminium-sheet",
            tensile="aluminium-sheet",
            hottest="memory",
        ),
        "Expands twice as much as iron and softens early. A piston of it needs much more "
        "clearance.",
    ),
    _row(
        "brass",
        "Free-cutting brass",
        "bronze",
        ("cylinder", "piston"),
        (97000.0, 96500.0, 103000.0),
        0.34,
        8500.0,
        2.05e-05,
        140.0,
        (338.0, 469.0),
        200.0,
        _from("brass-sheet", poisson="materials-course", expansion="callister", hottest="memory"),
        "For small cylinders and liners. Loses its zinc in wet steam; gunmetal lasts longer.",
    ),
)

MATERIALS = OrderedDict([(entry.key, entry) for entry in ROWS])

# Which comes first when the caller does not say.
PREFERENCE = {
    "ring": (
        "grey-iron",
        "grey-iron-250",
        "grey-iron-200",
        "grey-iron-300",
        "ductile-iron",
        "phosphor-bronze-drawn",
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
