"""The rings of one piston together: openings, spaces, and what they cost by their number."""

import math

from .. import clearances
from ..catalogue import inputs as declare
from ..catalogue.inputs_engine import DOUBLE
from ..catalogue.inputs_groove import GROOVE, NEW_GROOVES, PACK
from ..catalogue.inputs_ring import DOUBLE_TURN, PLAIN, RING
from ..problems import Fault, InputProblem
from ..properties import steam
from ..properties.materials import material
from ..running import friction, leak, ring_spaces, running, warming
from ..running.running_inputs import filled
from ..wording import said_up
from . import land
from .groove_recut import through

# A piston with one plain ring has none when it breaks: two for small pistons, Bourne.
FEWEST = {PLAIN: 2, DOUBLE_TURN: 1}
MOST_SHOWN = 4
USUAL = 1


class Pack:
    """The rings of one request: openings, spaces, and what they cost by their number."""

    def __init__(self, values):
        asked = dict([(entry.name, values.get(entry.name)) for entry in running.FIELDS])
        self.given, filled_in = filled(asked)
        given = self.given
        choose = declare.Chooser(values, GROOVE, PACK, RING)
        turn = self.turn_width = given["ring_width"] / (1 if given["ring_type"] == PLAIN else 2)
        self.depth = choose("groove_depth", given["radial_thickness"] + clearances.DEPTH_ALLOWANCE)
        metal = material(given["piston_material"])
        inner = 0.5 * given["piston_diameter"] - self.depth
        if inner <= 0.0:
            raise through(given["radial_thickness"])
        self.least = land.least_width(
            pressure=given["steam_pressure"],
            outer=0.5 * given["bore"],
            inner=inner,
            poisson=metal.poisson,
            stress=land.FATIGUE * metal.tensile_low / land.CORNER_AND_KNOCK,
        )
        usual = max(turn, said_up(self.least))
        self.end = choose("end_land", usual, case=NEW_GROOVES)
        self.between = choose("inner_land", usual, case=NEW_GROOVES)
        self.chosen = filled_in + choose.chosen
        self.engine = running.engine_of(given)
        if self.engine.power[USUAL] <= 0.0:
            raise InputProblem([_no_power(given)])
        double = given["acting"] == DOUBLE
        self.sides = 2.0 if double else 1.0
        self.k = leak.exponent(given["steam"].superheat)
        self.root = math.sqrt(given["steam"].pressure * given["steam"].volume)
        self.pressures = ring_spaces.ends(given["cycle"], double, steam.ATMOSPHERE)
        self._known = {}

    def opening(self, ring_type, level):
        """(area open to steam [mm2], radial clearance of the land [mm]) of a new ring, warm."""
        given = self.given
        warm = given["running_temperature"]
        gap, _, clearance = warming.clearances_at(
            warming.cold_ring(given, given["new_gaps"][ring_type]),
            ring_temperature=warm,
            piston_temperature=warm,
            cylinder_temperature=warm,
        )
        side = 0.5 * max(clearance, 0.0)
        share = leak.gap_share(ring_type, given["end_cut"])[level] * leak.LAND_PLACE[level]
        return leak.gap_opening(gap, side) * share * leak.DISCHARGE[level], side

    def fillings(self, area, side):
        """How often the space between two rings fills in a turn [1]."""
        given = self.given
        thickness = given["radial_thickness"]
        around = side * self.between + (self.depth - thickness + side) * given["ring_width"]
        around += given["side_clearance"] * thickness
        space = math.pi * given["bore"] * max(around, 1e-3)
        return 1e6 * area / space * self.root * 60.0 / given["speed"]

    def split(self, rings, ring_type, level=USUAL):
        """(leak by the gaps [kg/h], Split) of so many new rings."""
        key = (rings, ring_type, level)
        if key not in self._known:
            area, side = self.opening(ring_type, level)
            found = ring_spaces.split(self.pressures, rings, self.k, self.fillings(area, side))
            lost = 3.6 * self.sides * found.flow * area / self.root
            self._known[key] = (lost, found)
        return self._known[key]

    def friction(self, rings, level=USUAL):
        """Power that so many rings take [W]."""
        given = self.given
        return friction.friction_power(
            coefficient=given["friction_spread"][level],
            wall_pressure=given["wall_pressure"] + (given["expander_pressure"] or 0.0),
            difference=self.engine.duty.mean_difference,
            rings=rings,
            share=friction.STEAM_SHARE[level],
            bore=given["bore"],
            width=given["ring_width"],
            piston_speed=friction.mean_piston_speed(given["stroke"], given["speed"]),
        )

    def cost(self, rings):
        """Steam that leak and friction of so many rings take [kg/h]."""
        each = self.engine.base[USUAL] / self.engine.power[USUAL]
        return self.split(rings, self.given["ring_type"])[0] + each * self.friction(rings)

    def length(self, rings):
        """Length of the piston for so many rings [mm]."""
        groove = self.given["ring_width"] + self.given["side_clearance"]
        return rings * groove + (rings - 1) * self.between + 2.0 * self.end

    def best(self):
        """The number of rings that costs least, of those that are shown."""
        fewest = FEWEST[self.given["ring_type"]]
        found = fewest
        for rings in range(fewest + 1, MOST_SHOWN + 1):
            if self.cost(rings) < self.cost(found):
                found = rings
        return found


def _no_power(given):
    return Fault(
        ("cut_off",),
        "power",
        "the cycle gives no power: the steam expands below the back pressure",
        "cut off later, or give more steam pressure",
        value=given["cut_off"],
        unit="1",
    )
