"""The inputs of a running engine, and the rules that fill in what is not given."""

from collections import OrderedDict

from . import clearances, friction, leak, steam, steam_cycle, steam_properties
from .fields import field
from .materials import material
from .problems import Fault, InputProblem
from .records import Choice
from .ring_inputs import DOUBLE_TURN, RING_FIELDS
from .wording import decimal, temperature

DOUBLE = "double"
SINGLE = "single"
WALL_PRESSURE = 0.048  # [MPa], 7 psi; Walshaw gives 6 to 8
SECTION = 28.0  # bore over radial thickness: D/25 to D/30, Chaddock's design
BACK_PRESSURE = 0.01  # [MPa] gauge in an exhaust to the air
CUT_OFF = 0.6
CLEARANCE = 0.10
LARGEST_LEAK_SHARE = 0.05
BOILER_EFFICIENCY = 0.6
FUEL_HEAT = 30.0  # [MJ/kg], steam coal
FEED_TEMPERATURE = 20.0

_SHARED = OrderedDict([(entry.name, entry) for entry in RING_FIELDS])


def _same(name):
    return _SHARED[name]


# fmt: off
ENGINE_FIELDS = (
    _same("bore"),
    field("stroke", "length", "stroke of the piston", lowest=5.0, highest=3000.0, required=True),
    field("speed", "speed", "speed of the crankshaft", lowest=1.0, highest=3000.0, required=True),
    field("steam_pressure", "pressure", "steam pressure in the chest as it runs, gauge", lowest=0.02, highest=6.0, required=True),
    field("steam_temperature", "temperature", "steam temperature where it is superheated", "boiling point at the steam pressure", lowest=100.0, highest=500.0),
    field("steam_dryness", "ratio", "share of the steam by weight that is not water", "1, dry", lowest=0.6, highest=1.0, symbol="x"),
    field("acting", "choice", "steam on both sides of the piston, or on one", "double", choices=(DOUBLE, SINGLE)),
    field("cut_off", "ratio", "share of the stroke at which the steam is cut off", "0.6", lowest=0.05, highest=0.95),
    field("release", "ratio", "share of the stroke at which the exhaust opens", "half-way from cut-off to the end, 0.9 at the earliest", lowest=0.05, highest=1.0),
    field("compression", "ratio", "share of the return stroke left when the exhaust closes", "0.1, or less where that would pass the steam pressure", lowest=0.0, highest=0.9),
    field("clearance_volume", "ratio", "volume between piston and valve at the dead centre, as a share of the volume swept", "0.10", lowest=0.005, highest=0.5),
    field("back_pressure", "pressure", "pressure in the exhaust, gauge; below nought with a condenser", "0.01 MPa (1.5 psi)", lowest=-0.095, highest=2.0),
    field("missing_quantity", "ratio", "share of the steam that the indicator does not account for, with good rings", "0.30 for saturated steam (0.25 to 0.60), less with superheat", lowest=0.0, highest=0.8),
    field("steam_measured", "mass", "feed water the cylinder really used in one hour's steady running", "reckoned from the cycle", lowest=0.01, highest=100000.0),
)
RING_AT_HAND_FIELDS = (
    _same("ring_type"),
    _same("end_cut"),
    field("rings", "count", "how many rings stand one behind another on the piston", "2", lowest=1, highest=8),
    field("radial_thickness", "length", "radial thickness of the ring", "bore/28", lowest=0.3, highest=60.0, symbol="a1"),
    field("ring_width", "length", "width of one ring, both turns together", "plain 1.25 thicknesses, double-turn 2 thicknesses", lowest=0.5, highest=150.0, symbol="h1"),
    field("worn_gap", "length", "gap of the ring at hand, measured cold in the bore", "as new", lowest=0.0, highest=60.0),
    field("closed_gap", "length", "gap of a new ring, cold in the bore", "expansion from shop to steam with the cylinder half warm, and a margin", lowest=0.0, highest=30.0, symbol="s1"),
    field("piston_diameter", "length", "diameter of the piston at its lands", "bore less the clearance its material needs hot", lowest=4.0, highest=900.0),
    field("side_clearance", "length", "clearance of the ring in its groove, cold", "from practice, by bore", lowest=0.0, highest=5.0),
    field("groove_wear", "length", "how far the side of the groove is out of flat across the ring's seat", "0", lowest=0.0, highest=2.0),
    field("new_groove", "flag", "whether the groove is trued up when new rings are fitted", "true"),
    field("light", "length", "widest light between ring and bore", "0", lowest=0.0, highest=5.0),
    field("light_length", "length", "how far round the bore that light reaches", "0", lowest=0.0, highest=3000.0),
    _same("ring_material"),
    _same("piston_material"),
    _same("cylinder_material"),
    _same("shop_temperature"),
    field("wall_pressure", "pressure", "pressure of the ring's own spring on the wall", "0.048 MPa (7 psi), from practice", lowest=0.0, highest=1.0, symbol="p"),
    field("friction_coefficient", "ratio", "coefficient of friction between ring and bore", "0.10 oiled iron (0.05 to 0.15), 0.12 filled PTFE (0.06 to 0.20)", lowest=0.005, highest=1.0, symbol="mu"),
)
OWNER_FIELDS = (
    field("largest_leak_share", "ratio", "share of the steam that may leak before rings are renewed", "0.05", lowest=0.005, highest=0.5),
    field("gap_readings", "records", "gaps measured at known running hours, cold in the bore", "none", lowest=2, highest=50, items=(
        field("hours", "duration", "running hours when it was measured", lowest=0.0, highest=1000000.0, required=True),
        field("gap", "length", "gap of the ring in the bore", lowest=0.0, highest=60.0, required=True),
    )),
    field("hours_per_season", "duration", "running hours in a season", "not reckoned", lowest=0.0, highest=9000.0),
    field("boiler_efficiency", "ratio", "share of the fuel's heat that reaches the steam", "0.6 (0.5 to 0.75)", lowest=0.1, highest=0.95),
    field("fuel_heat", "number", "heat of the fuel in MJ to the kg: coal about 30, dry wood 15", "30, coal", lowest=5.0, highest=50.0),
    field("feed_temperature", "temperature", "temperature of the feed water", "20 degC", lowest=1.0, highest=100.0),
)
# fmt: on
FIELDS = ENGINE_FIELDS + RING_AT_HAND_FIELDS + OWNER_FIELDS


def filled(values):
    """(a copy of `values` with every default taken, list of Choice): sizes cold, pressures gauge.

    Adds "steam" (SteamState), "back" (SteamState of dry steam at the back pressure), "cycle",
    "running_temperature", "friction_spread" and "missing_spread" (low, usual, high).
    Raises InputProblem where the inputs contradict one another.
    """
    given = dict(values)
    chosen = []

    def take(name, value, unit, why):
        if given.get(name) is None:
            given[name] = value
            chosen.append(Choice(name, value, unit, why))

    take("acting", DOUBLE, "", "most cylinders take steam on both sides")
    take("back_pressure", BACK_PRESSURE, "MPa", "an exhaust to the air through a pipe")
    take("steam_dryness", 1.0, "1", "dry steam")
    take("cut_off", CUT_OFF, "1", "a slide valve a little linked up")
    take("clearance_volume", CLEARANCE, "1", "ports and piston clearance of a slide-valve cylinder")
    faults = steam_faults(given)
    if given["release"] is not None and given["release"] < given["cut_off"]:
        faults.append(
            Fault(
                ("release",),
                "order",
                "the exhaust would open before the steam is cut off",
                "give a release later than the cut-off",
            )
        )
    if faults:
        raise InputProblem(faults)
    fill_steam(given)
    _fill_cycle(given, take)
    _fill_ring(given, take)
    fill_sizes(given, take)
    fill_friction(given, take)
    _fill_missing(given, take)
    take("largest_leak_share", LARGEST_LEAK_SHARE, "1", "a loss an owner notices")
    take("boiler_efficiency", BOILER_EFFICIENCY, "1", "a small boiler in fair order")
    take("fuel_heat", FUEL_HEAT, "1", "steam coal, MJ to the kg")
    take("feed_temperature", FEED_TEMPERATURE, "degC", "cold feed")
    return given, chosen


def steam_faults(given):
    """List of Fault where steam and exhaust contradict one another."""
    faults = []
    if given["back_pressure"] >= given["steam_pressure"]:
        faults.append(
            Fault(
                ("back_pressure",),
                "pressures",
                "the back pressure is not below the steam pressure",
                "give a back pressure below the steam pressure",
            )
        )
    boiling = steam.saturation_temperature(given["steam_pressure"])
    hot = given["steam_temperature"]
    if hot is not None and hot < boiling - steam_properties.SATURATION_TOLERANCE:
        faults.append(
            Fault(
                ("steam_temperature",),
                "below-boiling",
                "at this pressure steam is never cooler than %s" % temperature(boiling),
                "leave the steam temperature out for saturated steam, or give that of superheated "
                "steam",
            )
        )
    return faults


def fill_steam(given):
    """Adds "steam", "back" (SteamState) and "running_temperature" [degC] to the inputs."""
    given["steam"] = steam_properties.steam_state(
        given["steam_pressure"] + steam.ATMOSPHERE,
        given["steam_temperature"],
        given.get("steam_dryness") or 1.0,
    )
    given["steam_temperature"] = given["steam"].temperature
    given["back"] = steam_properties.steam_state(given["back_pressure"] + steam.ATMOSPHERE)
    # Inside, the metal settles near the mean of the steam that comes and the steam that goes.
    given["running_temperature"] = 0.5 * (given["steam"].temperature + given["back"].temperature)


def _fill_cycle(given, take):
    pressure, back = given["steam"].pressure, given["back"].pressure
    take(
        "release",
        steam_cycle.usual_release(given["cut_off"]),
        "1",
        "half-way from cut-off to the end of the stroke, 0.9 at the earliest",
    )
    take(
        "compression",
        steam_cycle.usual_compression(pressure, back, given["clearance_volume"]),
        "1",
        "the last tenth of the return, later where that would pass the steam pressure",
    )
    given["cycle"] = steam_cycle.cycle(
        admission_pressure=pressure,
        back_pressure=back,
        cut_off=given["cut_off"],
        release=given["release"],
        compression=given["compression"],
        clearance=given["clearance_volume"],
    )


def _fill_ring(given, take):
    take("ring_type", DOUBLE_TURN, "", "the ring this tool is made for")
    take("end_cut", "angled-45", "", "common practice")
    take("rings", 2, "1", "two rings are usual")
    take("radial_thickness", given["bore"] / SECTION, "mm", "bore/28, between D/25 and D/30")
    ratio = 2.0 if given["ring_type"] == DOUBLE_TURN else 1.25
    why = decimal(ratio, 2) + " thicknesses"
    take("ring_width", ratio * given["radial_thickness"], "mm", why)
    take("new_groove", True, "", "a worn groove is trued up for new rings")
    for name in ("groove_wear", "light", "light_length"):
        take(name, 0.0, "mm", "as new")
    if given["gap_readings"]:
        newest = max([(entry["hours"], entry["gap"]) for entry in given["gap_readings"]])
        take("worn_gap", newest[1], "mm", "the last reading")


def fill_sizes(given, take):
    """Materials, gaps and clearances that are not given; adds "expansions" of ring, piston, cylinder.

    given: inputs with bore, ring_width and steam. take: as in `filled`. Raises InputProblem.
    """
    bore = given["bore"]
    for name in ("ring_material", "piston_material", "cylinder_material"):
        take(name, "grey-iron", "", "iron runs on iron")
    take("shop_temperature", 20.0, "degC", "an ordinary workshop")
    take("wall_pressure", WALL_PRESSURE, "MPa", "7 psi, from practice")
    ring, piston, cylinder = given["expansions"] = [
        material(given[name]).expansion
        for name in ("ring_material", "piston_material", "cylinder_material")
    ]
    hot, shop = given["steam_temperature"], given["shop_temperature"]
    wall = clearances.starting_wall_temperature(hot, shop)
    take(
        "closed_gap",
        clearances.closed_gap(
            bore=bore,
            ring_expansion=ring,
            cylinder_expansion=cylinder,
            ring_temperature=hot,
            cylinder_temperature=wall,
            shop_temperature=shop,
            margin=clearances.running_gap(bore),
        ),
        "mm",
        "expansion with the cylinder half warm, and a margin",
    )
    take("worn_gap", given["closed_gap"], "mm", "as new: measure it cold in the bore")
    take(
        "piston_diameter",
        bore
        - clearances.piston_clearance(
            bore=bore,
            piston_expansion=piston,
            cylinder_expansion=cylinder,
            piston_temperature=hot,
            cylinder_temperature=wall,
            shop_temperature=shop,
            margin=clearances.running_piston_clearance(bore),
        ),
        "mm",
        "bore less the clearance its material needs hot",
    )
    if given["piston_diameter"] >= bore:
        raise InputProblem(
            [
                Fault(
                    ("piston_diameter",),
                    "size",
                    "the lands are not smaller than the bore",
                    "measure across the lands and give a size below the bore",
                )
            ]
        )
    take(
        "side_clearance",
        clearances.side_clearance(
            ring_width=given["ring_width"],
            ring_expansion=ring,
            piston_expansion=piston,
            ring_temperature=hot,
            piston_temperature=hot,
            shop_temperature=shop,
            margin=clearances.running_side_clearance(bore)[0],
        ),
        "mm",
        "from practice, by bore",
    )


def fill_friction(given, take):
    """Adds "friction_spread" (low, usual, high) and the coefficient that is not given."""
    spread = friction.COEFFICIENT
    if material(given["ring_material"]).family == "plastic":
        spread = friction.PLASTIC_COEFFICIENT
    if given["friction_coefficient"] is not None:
        spread = (given["friction_coefficient"],) * 3
    given["friction_spread"] = spread
    between = "%s to %s" % (decimal(spread[0], 2), decimal(spread[2], 2))
    take("friction_coefficient", spread[1], "1", between + ", from well oiled to short of oil")


def _fill_missing(given, take):
    # With superheat the missing quantity falls; by 50 K about half is left (estimate).
    dry = min(given["steam"].superheat / leak.FULL_SUPERHEAT, 1.0)
    spread = tuple([share * (1.0 - 0.5 * dry) for share in steam_cycle.MISSING_QUANTITY])
    if given["missing_quantity"] is not None:
        spread = (given["missing_quantity"],) * 3
    given["missing_spread"] = spread
    between = "%s to %s" % (decimal(spread[0], 2), decimal(spread[2], 2))
    take("missing_quantity", spread[1], "1", between + " in published trials")
