"""Gaps and clearances, cold as they are made and hot as they run.

Everything grows in proportion to its own size, expansion and rise above the shop. A cold clearance
is what leaves a stated margin when the part inside is hot and the part round it is cooler; a hot
clearance is what a given cold one becomes. Each pair is exact, so that one undoes the other.

The design case for the closed gap and the piston is the engine being started: ring and piston are
at steam temperature while the cylinder wall, thicker and heated from one side, is still on its way:
see `starting_wall_temperature`. Where a wide gap costs little, as in a double-turn ring, it is
filed for a stone-cold cylinder: see `filing_wall_temperature`, which every calculation asks.
"""

from ..properties.expansion import growth
from .groove import (
    DEPTH_ALLOWANCE,
    LEAST_DEPTH_ALLOWANCE,
    back_clearance,
    groove_depth,
    hot_back_clearance,
    hot_side_clearance,
    running_side_clearance,
    side_clearance,
)
from .piston import (
    Touch,
    first_touch,
    hot_piston_clearance,
    piston_clearance,
    piston_clearance_limit,
    running_piston_clearance,
)
from .ring_gap import (
    WALL_SHARE,
    closed_gap,
    filing_wall_temperature,
    hot_closed_gap,
    running_gap,
    starting_wall_temperature,
    thumb_rule_gap,
    usual_closed_gap,
)

# What the rest of the core uses: one name for the three files.
__all__ = (
    "DEPTH_ALLOWANCE",
    "LEAST_DEPTH_ALLOWANCE",
    "Touch",
    "WALL_SHARE",
    "back_clearance",
    "closed_gap",
    "filing_wall_temperature",
    "first_touch",
    "groove_depth",
    "growth",
    "hot_back_clearance",
    "hot_closed_gap",
    "hot_piston_clearance",
    "hot_side_clearance",
    "piston_clearance",
    "piston_clearance_limit",
    "running_gap",
    "running_piston_clearance",
    "running_side_clearance",
    "side_clearance",
    "starting_wall_temperature",
    "thumb_rule_gap",
    "usual_closed_gap",
)
