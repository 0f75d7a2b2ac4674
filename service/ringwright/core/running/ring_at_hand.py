"""The ring on the piston, judged by the checks of sizing: its gap as it is now, its own groove."""

from collections import namedtuple

from .. import clearances
from ..catalogue.inputs_ring import PLAIN
from ..properties import steam
from ..properties.materials import material
from ..records import GOOD
from ..ring import fit_findings, ring_findings
from ..ring.chosen_section import Section
from ..ring.duty import Duty
from ..ring.spring_back import SpringBack

# What those checks read of a Design. groove_depth is None, for it is not asked for here, and so is
# of the other records what only a ring that is made has.
Standing = namedtuple(
    "Standing",
    (
        "duty", "section", "spring", "expander_pressure", "side_clearance", "groove_width",
        "groove_depth", "piston_diameter",
    ),
)  # fmt: skip
# Said by the running engine in its own words.
_SAID = ("cold-start", "ring-heat")


def standing(given):
    """The Standing of the ring on the piston. given: filled inputs, see running_inputs."""
    hot, shop = given["steam_temperature"], given["shop_temperature"]
    turns = 1 if given["ring_type"] == PLAIN else 2
    metal = material(given["ring_material"])
    width = given["ring_width"]
    return Standing(
        duty=Duty(
            bore=given["bore"],
            ring_type=given["ring_type"],
            turns=turns,
            rings=None,
            ring_material=metal,
            cylinder=material(given["cylinder_material"]),
            piston=material(given["piston_material"]),
            modulus=metal.modulus,
            steam_pressure=given["steam_pressure"],
            saturation=steam.saturation_temperature(given["steam_pressure"]),
            temperature=hot,
            shop=shop,
            end_cut=None,
            setting=None,
            finishing=None,
            bearing=None,
            warming_wall_temperature=clearances.starting_wall_temperature(hot, shop),
            wall_temperature=clearances.filing_wall_temperature(turns, hot, shop),
            heat=None,
            closed_gap=given["worn_gap"],
        ),
        section=Section(
            thickness=given["radial_thickness"], width=width, window=None, pressure=None, why=None
        ),
        spring=SpringBack(
            gap_change=None,
            curvature_change=None,
            wall_pressure=given["wall_pressure"],
            contact_pressure=None,
            former_radius=None,
            former_diameter=None,
            spacer_width=None,
        ),
        expander_pressure=given["expander_pressure"] or 0.0,
        side_clearance=given["side_clearance"],
        groove_width=width + given["side_clearance"],
        groove_depth=None,
        piston_diameter=given["piston_diameter"],
    )


def findings(given):
    """List of Finding: what sizing would not find good of the ring on the piston.

    given: filled inputs, see running_inputs.
    """
    ring = standing(given)
    rows = ring_findings.pressure(ring) + fit_findings.findings(ring)
    return [row for row in rows if row.outcome != GOOD and row.check not in _SAID]
