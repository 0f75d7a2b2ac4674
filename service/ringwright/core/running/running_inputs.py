"""The rules that fill in what is not given of a running engine or a piston valve."""

from .. import clearances
from ..catalogue.inputs import Chooser
from ..catalogue.inputs_blank import BLANK
from ..catalogue.inputs_engine import ENGINE, MISSING_QUANTITY, OWNER, RING_AT_HAND, WITH_READINGS
from ..catalogue.inputs_ring import DOUBLE_TURN, PLAIN, RING
from ..catalogue.inputs_valve import VALVE
from ..problems import Fault, InputProblem
from ..properties import steam, steam_properties
from ..properties.materials import material
from ..ring.design import settle_section
from ..wording import decimal, length, temperature
from . import friction, leak, steam_cycle


def filled(values):
    """(a copy of `values` with every default taken, list of Choice): sizes cold, pressures gauge.

    Adds "steam" (SteamState), "back" (SteamState of dry steam at the back pressure), "cycle",
    "running_temperature", "friction_spread" and "missing_spread" (low, usual, high).
    Raises InputProblem where the inputs contradict one another.
    """
    given, take = filling(values)
    for name in ("acting", "steam_pressure", "back_pressure", "speed", "steam_dryness", "cut_off"):
        take(name)
    take("clearance_volume")
    faults = engine_faults(given)
    if given["release"] is not None and given["release"] < given["cut_off"]:
        faults.append(
            Fault(
                ("release",),
                "order",
                "the exhaust would open before the steam is cut off",
                "give a release later than the cut-off",
                value=given["release"],
                lowest=given["cut_off"],
                unit="1",
            )
        )
    if faults:
        raise InputProblem(faults)
    fill_steam(given)
    _fill_cycle(given, take)
    fill_ring(given, take, values)
    for name in ("rings_on_piston", "new_groove", "groove_wear", "light", "light_length"):
        take(name)
    if given["gap_readings"]:
        newest = max([(entry["hours"], entry["gap"]) for entry in given["gap_readings"]])
        take("worn_gap", newest[1], case=WITH_READINGS)
    fill_sizes(given, take)
    fill_friction(given, take)
    _fill_missing(given, take)
    for name in ("largest_leak_share", "boiler_efficiency", "fuel_heat", "feed_temperature"):
        take(name)
    return given, take.chosen


class Filling(Chooser):
    """A Chooser that puts what it takes where the calculation reads it."""

    def __call__(self, name, *worked, case="", of=""):
        self.values[name] = Chooser.__call__(self, name, *worked, case=case, of=of)


def filling(values):
    """(a copy of `values`, the Filling that completes it)."""
    given = dict(values)
    return given, Filling(given, RING, ENGINE, RING_AT_HAND, OWNER, VALVE)


def engine_faults(given):
    """List of Fault where ring, steam and exhaust contradict one another."""
    faults = []
    if given["radial_thickness"] is not None and given["radial_thickness"] > given["bore"] / 6.0:
        faults.append(
            Fault(
                ("radial_thickness",),
                "size",
                "a ring so thick for its bore does not spring",
                "give at most %s, a sixth of the bore" % length(given["bore"] / 6.0),
                value=given["radial_thickness"],
                highest=given["bore"] / 6.0,
                unit="mm",
            )
        )
    if given["back_pressure"] >= given["steam_pressure"]:
        faults.append(
            Fault(
                ("back_pressure",),
                "pressures",
                "the back pressure is not below the steam pressure",
                "give a back pressure below the steam pressure",
                value=given["back_pressure"],
                highest=given["steam_pressure"],
                unit="MPa",
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
                value=hot,
                lowest=boiling,
                unit="degC",
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
    take("release", steam_cycle.usual_release(given["cut_off"]))
    take("compression", steam_cycle.usual_compression(pressure, back, given["clearance_volume"]))
    given["cycle"] = steam_cycle.cycle(
        admission_pressure=pressure,
        back_pressure=back,
        cut_off=given["cut_off"],
        release=given["release"],
        compression=given["compression"],
        clearance=given["clearance_volume"],
    )


def fill_ring(given, take, values, place=""):
    """Takes the ring's metals, section, gap and spring as sizing settles them.

    given, take: as `filling` makes them. values: the checked inputs. place: as of ring.duty_of.
    Raises InputProblem.
    """
    settling = Chooser(values, RING, BLANK)
    duty, _, piston, section = settle_section(settling, place)
    if values.get("wall_pressure") is None:
        settling.note("wall_pressure", section.pressure, section.why)
    for name, value in (
        ("ring_type", duty.ring_type),
        ("end_cut", duty.end_cut),
        ("ring_material", duty.ring_material.key),
        ("cylinder_material", duty.cylinder.key),
        ("piston_material", duty.piston.key),
        ("modulus", duty.modulus),
        ("shop_temperature", duty.shop),
        ("radial_thickness", section.thickness),
        ("ring_width", section.width),
        ("piston_diameter", piston),
        ("closed_gap", duty.closed_gap),
        ("wall_pressure", section.pressure),
    ):
        if given.get(name) is None:
            given[name] = value
            # What the calculation does not ask for is no choice of its caller.
            told = [one for one in settling.chosen if one.input == name and name in values]
            take.chosen.extend(told)


def fill_sizes(given, take):
    """Takes gaps and clearances not given; adds "expansions" of the three parts and "new_gaps",
    the closed gap of a new ring by type.

    given, take: as `fill_ring` leaves them.
    """
    bore = given["bore"]
    ring, piston, cylinder = given["expansions"] = [
        material(given[name]).expansion
        for name in ("ring_material", "piston_material", "cylinder_material")
    ]
    hot, shop = given["steam_temperature"], given["shop_temperature"]
    asked = "closed_gap" not in [one.input for one in take.chosen]
    new_gaps = given["new_gaps"] = {}
    for ring_type, turns in ((PLAIN, 1), (DOUBLE_TURN, 2)):
        new_gaps[ring_type] = given["closed_gap"]
        if not asked and ring_type != given["ring_type"]:
            new_gaps[ring_type] = clearances.usual_closed_gap(
                turns=turns,
                bore=bore,
                ring_expansion=ring,
                cylinder_expansion=cylinder,
                ring_temperature=hot,
                shop_temperature=shop,
            )
    take("worn_gap", given["closed_gap"])
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
    take("friction_coefficient", spread[1], of=between)


def _fill_missing(given, take):
    # With superheat the missing quantity falls; by 50 K about half is left (estimate).
    dry = min(given["steam"].superheat / leak.FULL_SUPERHEAT, 1.0)
    spread = tuple([share * (1.0 - 0.5 * dry) for share in MISSING_QUANTITY])
    if given["missing_quantity"] is not None:
        spread = (given["missing_quantity"],) * 3
    given["missing_spread"] = spread
    between = "%s to %s" % (decimal(spread[0], 2), decimal(spread[2], 2))
    take("missing_quantity", spread[1], of=between)
