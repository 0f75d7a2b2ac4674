"""The ring on the piston, judged by the checks of sizing: its gap as it is now, its own groove."""

from collections import namedtuple

from .. import clearances
from ..catalogue.inputs_ring import PLAIN
from ..properties import steam
from ..properties.materials import material
from ..records import GOOD
from ..ring import fit_findings, ring_findings

# What those checks read of a Design; groove_depth is None, for it is not asked for here.
Standing = namedtuple(
    "Standing",
    (
        "bore", "turns", "ring_type", "ring_material", "cylinder_material", "piston_material",
        "modulus", "steam_pressure", "steam_temperature", "saturation_temperature",
        "shop_temperature", "wall_temperature", "warming_wall_temperature", "closed_gap",
        "radial_thickness", "ring_width", "groove_width", "side_clearance", "groove_depth",
        "piston_diameter", "wall_pressure", "expander_pressure",
    ),
)  # fmt: skip
# Said by the running engine in its own words.
_SAID = ("cold-start", "ring-heat")


def standing(given):
    """The Standing of the ring on the piston. given: filled inputs, see running_inputs."""
    hot, shop = given["steam_temperature"], given["shop_temperature"]
    turns = 1 if given["ring_type"] == PLAIN else 2
    metal = material(given["ring_material"])
    return Standing(
        bore=given["bore"],
        turns=turns,
        ring_type=given["ring_type"],
        ring_material=metal,
        cylinder_material=material(given["cylinder_material"]),
        piston_material=material(given["piston_material"]),
        modulus=metal.modulus,
        steam_pressure=given["steam_pressure"],
        steam_temperature=hot,
        saturation_temperature=steam.saturation_temperature(given["steam_pressure"]),
        shop_temperature=shop,
        wall_temperature=clearances.filing_wall_temperature(turns, hot, shop),
        warming_wall_temperature=clearances.starting_wall_temperature(hot, shop),
        closed_gap=given["worn_gap"],
        radial_thickness=given["radial_thickness"],
        ring_width=given["ring_width"],
        groove_width=given["ring_width"] + given["side_clearance"],
        side_clearance=given["side_clearance"],
        groove_depth=None,
        piston_diameter=given["piston_diameter"],
        wall_pressure=given["wall_pressure"],
        expander_pressure=given["expander_pressure"] or 0.0,
    )


def findings(given):
    """List of Finding: what sizing would not find good of the ring on the piston.

    given: filled inputs, see running_inputs.
    """
    ring = standing(given)
    rows = ring_findings.pressure(ring) + fit_findings.findings(ring)
    return [row for row in rows if row.outcome != GOOD and row.check not in _SAID]
