"""Materials of rings, cylinders, pistons and tooling: look-up, heat, and which may run on which."""

from ..problems import OutOfRange
from ..records import GOOD, STOP, WATCH, Method
from .material_table import MATERIALS, PREFERENCE

# (family of ring, family of cylinder) -> (outcome, why, remedy). Common practice, no source.
PAIRINGS = {
    ("iron", "iron"): (
        GOOD,
        "Iron on iron is the pairing the trade trusts: both glaze and hold oil.",
        "",
    ),
    ("iron", "bronze"): (
        WATCH,
        "An iron ring in a bronze bore runs, but wears the bore rather than itself, and rusts to "
        "it when the engine stands wet.",
        "Prefer a bronze ring in a bronze or gunmetal cylinder; if iron is kept, keep the wall "
        "pressure low and oil the bore before the engine is laid up.",
    ),
    ("iron", "steel"): (
        WATCH,
        "An iron ring in a steel bore runs if the bore is honed and never short of oil; steel "
        "holds oil less well than iron.",
        "Hone the bore to a fine cross-hatch and see that the lubricator reaches it, or line it "
        "with iron.",
    ),
    ("iron", "aluminium"): (
        STOP,
        "An iron ring cuts a soft aluminium bore.",
        "Line the cylinder with iron, or use a ring of filled PTFE.",
    ),
    ("bronze", "iron"): (
        STOP,
        "Bronze rings are for bronze or gunmetal cylinders only: in iron the ring is the softer "
        "part, wears away, and closes its gap as it expands.",
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

# Mean expansion from the shop to a soak, by family, as the (a, b, c) of (a + b T + c T^2) [1/K];
# the others are taken as constant. Iron: through EN 1561's 20-200 and 20-400 degC, carried on.
# Carbon and austenitic steel: EN 1993-1-2, 3.4.1.1 and annex C, elongation over (T - 20).
HOT_EXPANSION = {
    "grey-iron": (10.4e-6, 6.5e-9, 0.0),
    "grey-iron-200": (10.4e-6, 6.5e-9, 0.0),
    "grey-iron-250": (10.4e-6, 6.5e-9, 0.0),
    "grey-iron-300": (10.4e-6, 6.5e-9, 0.0),
    "steel": (12.08e-6, 4.0e-9, 0.0),
    "stainless-steel": (16.0e-6, 4.79e-9, -1.243e-12),
}
HOTTEST_SOAK = 900.0  # [degC]
HOTTEST_FORMULA = 750.0  # [degC]: where steel begins to change and its formula ends

METHODS = (
    Method(
        "material-property",
        "Property of a material",
        "taken from the table of materials",
        "ordinary quality, at shop to steam temperature",
        ("tribology-handbook", "grey-iron-sheet", "iso6621-3-sheet", "callister", "memory"),
    ),
    Method(
        "mean-expansion",
        "Mean expansion up to a soak temperature",
        "steel 12.08e-6 + 4.0e-9 T; stainless 16e-6 + 4.79e-9 T - 1.243e-12 T^2; "
        "grey iron 10.4e-6 + 6.5e-9 T [1/K]; others the table's one figure",
        "20 to 900 degC; grey iron from 400 degC by a straight line, all from 750 degC as at 750",
        ("en1993-1-2", "en1561"),
    ),
    Method(
        "pairing",
        "Which ring may run in which cylinder",
        "a table by family: iron, bronze, plastic rings; iron, bronze, steel, aluminium bores",
        "oiled, saturated or mildly superheated steam",
        ("practice",),
    ),
)


def material(key):
    """The Material of that key.

    key: one of MATERIALS, such as "grey-iron".
    Raises OutOfRange when there is none of that name.
    """
    found = MATERIALS.get(key)
    if found is None:
        raise OutOfRange("material", key, ", ".join(MATERIALS), "table of materials")
    return found


def mean_expansion(key, temperature):
    """Mean expansion from 20 degC to a temperature, for what is heated far beyond steam [1/K].

    a + b T + c T^2 by material, beyond 750 degC as at 750, where steel and iron begin to
    change; the table's one figure where no law is known.

    key: one of MATERIALS. temperature: of the soak T [degC], 20 to 900.
    Raises OutOfRange for an unknown material or another temperature.
    Example: mild steel at 550 degC, 14.28e-6; grey iron at 400 degC, 13.0e-6.
    Source: EN 1993-1-2, 3.4.1.1 and annex C (read); EN 1561 (memory) for grey iron.
    """
    entry = material(key)
    if not 20.0 <= temperature <= HOTTEST_SOAK:
        raise OutOfRange("temperature", temperature, "20 to 900 degC", "EN 1993-1-2")
    terms = HOT_EXPANSION.get(key)
    if terms is None:
        return entry.expansion
    hot = min(temperature, HOTTEST_FORMULA)
    return terms[0] + terms[1] * hot + terms[2] * hot * hot


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
