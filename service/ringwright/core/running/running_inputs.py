"""The rules that fill in what is not given of a running engine or a piston valve."""

from .. import clearances
from ..problems import Fault, InputProblem
from ..properties import steam, steam_properties
from ..properties.materials import material
from ..records import Choice
from ..ring.ring_inputs import DOUBLE_TURN, PLAIN
from ..wording import decimal, temperature
from . import friction, leak, steam_cycle
from .running_fields import DOUBLE

WALL_PRESSURE = 0.048  # [MPa], 7 psi; Walshaw gives 6 to 8
SECTION = 28.0  # bore over radial thickness: D/25 to D/30, Chaddock's design
BACK_PRESSURE = 0.01  # [MPa] gauge in an exhaust to the air
CUT_OFF = 0.6
CLEARANCE = 0.10
LARGEST_LEAK_SHARE = 0.05
BOILER_EFFICIENCY = 0.6
FUEL_HEAT = 30.0  # [MJ/kg], steam coal
FEED_TEMPERATURE = 20.0


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
    faults = engine_faults(given)
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


def engine_faults(given):
    """List of Fault where ring, steam and exhaust contradict one another."""
    faults = []
    if given["radial_thickness"] is not None and given["radial_thickness"] > given["bore"] / 6.0:
        faults.append(
            Fault(
                ("radial_thickness",),
                "size",
                "a ring so thick for its bore does not spring",
                "give a radial thickness below a sixth of the bore",
            )
        )
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
    take("rings_on_piston", 2, "1", "two rings are usual")
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
    """Takes materials, gaps and clearances not given; adds "expansions" of the three parts and
    "new_gaps", the closed gap of a new ring by type.

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
    new_gaps = given["new_gaps"] = {}
    for ring_type, turns in ((PLAIN, 1), (DOUBLE_TURN, 2)):
        new_gaps[ring_type] = given["closed_gap"]
        if given["closed_gap"] is None:
            new_gaps[ring_type] = clearances.usual_closed_gap(
                turns=turns,
                bore=bore,
                ring_expansion=ring,
                cylinder_expansion=cylinder,
                ring_temperature=hot,
                shop_temperature=shop,
            )
    ring_type = given["ring_type"]
    why = clearances.USUAL_GAP_WHY[1 if ring_type == PLAIN else 2]
    take("closed_gap", new_gaps[ring_type], "mm", why)
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
