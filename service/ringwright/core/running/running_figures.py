"""The figures of a running engine, from what running.py has reckoned."""

from collections import OrderedDict

from ..catalogue import told
from ..catalogue.running import FIGURES
from ..properties import steam_properties
from ..records import Quantity, Series
from . import friction, steam_cycle, wear
from .ring_leak import LEVELS, spread

BOILER_SPREAD = (0.10, 0.15)  # boiler efficiency: so much below, so much above


def engine_values(given, engine, shown):
    """name -> value of the figures of power, steam and heat.

    given: filled inputs (running_inputs). engine: running.Engine. shown: symbol -> number for the
    workings, added to.
    """
    state, stated = given["steam"], given["cycle"]
    drain = steam_properties.water_enthalpy(given["back"].temperature)
    used = given["steam_measured"] or engine.base[1]
    heat = steam_cycle.heat_balance(used, state.enthalpy, drain, engine.power[1])
    shown.update(
        {
            "p_s": given["steam_pressure"],
            "p1": stated.admission,
            "p_b": stated.back,
            "x": stated.cut_off,
            "r": stated.release,
            "k": stated.compression,
            "c": stated.clearance,
            "v1": state.volume,
            "v_b": given["back"].volume,
            "p_m": engine.mean_pressure[1],
            "d1": given["bore"],
            "stroke": given["stroke"],
            "strokes": engine.strokes / 60.0,
            "M_i": engine.indicated,
            "M_f": used,
            "H1": state.enthalpy,
            "H_fb": drain,
        }
    )
    values = {
        "steam_temperature": state.temperature,
        "steam_volume": state.volume,
        "mean_effective_pressure": spread(engine.mean_pressure),
        "indicated_power": spread(engine.power),
        "indicated_steam": engine.indicated,
        "heat_supplied": heat.supplied,
        "heat_carried_away": heat.carried_away,
        "thermal_efficiency": heat.efficiency,
    }
    shown["Q"] = heat.supplied
    shown["IP"] = engine.power[1]
    if given["steam_measured"] is not None:
        values["missing_quantity"] = 1.0 - engine.indicated / given["steam_measured"]
    return values


def leak_values(given, engine, losses, shown):
    """name -> value of the figures of the leak and of what new rings save.

    given, engine, shown: as in engine_values. losses: name -> running.Loss.
    """
    now = losses["now"]
    new = losses[given["ring_type"]]
    saved = [now.total[level] - new.total[level] for level in LEVELS]
    feed = steam_properties.water_enthalpy(given["feed_temperature"], 0.5)
    boiler = given["boiler_efficiency"]
    per_kg = (given["steam"].enthalpy - feed) / (1000.0 * given["fuel_heat"])
    fuel = sorted(
        [
            saved[0] * per_kg / min(boiler + BOILER_SPREAD[1], 1.0),
            saved[1] * per_kg / boiler,
            saved[2] * per_kg / max(boiler - BOILER_SPREAD[0], 0.05),
        ]
    )
    shown.update(_leak_shown(now))
    shown["W - W_new"] = saved[1]
    shown["H_feed"] = feed
    shown["efficiency"] = boiler
    values = {
        "steam_use": spread(now.use),
        "leak_rate": spread(now.total),
        "leak_share": spread(now.share),
        "leak_per_stroke": spread([rate / engine.strokes for rate in now.total]),
        "gap_leak": spread(now.gap),
        "gap_leak_napier": spread(now.napier),
        "steam_saved": spread(saved),
        "fuel_saved": spread(fuel),
    }
    if given["hours_per_season"]:
        values["fuel_saved_in_season"] = spread([given["hours_per_season"] * rate for rate in fuel])
    return values


def _leak_shown(loss):
    return {
        "W": loss.total[1],
        "M": loss.use[1],
        "W_gap": loss.gap[1],
        "W_side": loss.face[1],
        "W_light": loss.light[1],
    }


def friction_values(given, engine, shown):
    """name -> value of the figures of friction; friction_share is of the power [1].

    given, engine, shown: as in engine_values.
    """
    speed = friction.mean_piston_speed(given["stroke"], given["speed"])
    pressed = given["wall_pressure"] + (given["expander_pressure"] or 0.0)
    difference = engine.duty.mean_difference
    power = [
        friction.friction_power(
            coefficient=given["friction_spread"][level],
            wall_pressure=pressed,
            difference=difference,
            rings=given["rings_on_piston"],
            share=friction.STEAM_SHARE[level],
            bore=given["bore"],
            width=given["ring_width"],
            piston_speed=speed,
        )
        for level in LEVELS
    ]
    wall = [
        friction.wall_load(pressed, difference, given["rings_on_piston"], share)
        for share in friction.STEAM_SHARE
    ]
    shown["p"] = pressed
    shown["dp"] = difference
    shown["n"] = given["rings_on_piston"]
    shown["mu"] = given["friction_spread"][1]
    return {
        "mean_piston_speed": speed,
        "sliding_distance": friction.sliding_distance(given["stroke"], given["speed"]),
        "wall_pressure_with_steam": spread(wall),
        "friction_power": spread(power),
        "friction_share": spread([power[level] / engine.power[2 - level] for level in LEVELS]),
    }


def wear_values(given, grown, largest, change, shown):
    """name -> value of the figures of wear; spring_left is that of the ring at hand [1].

    given, shown: as in engine_values. grown: wear.Wear or None. largest: gap at which rings are due
    [mm] or None. change: gap from bore to free when new [mm] or None.
    """
    values = {"largest_gap": largest}
    shown["s"] = largest
    shown["share"] = given["largest_leak_share"]
    if change is not None:
        growth = max(0.0, given["worn_gap"] - given["closed_gap"])
        values["spring_left"] = wear.spring_left(growth, change, given["radial_thickness"])
        shown["g"] = growth
        shown["m"] = change
        shown["a1"] = given["radial_thickness"]
    if grown is None:
        return values
    values["gap_growth"] = spread(grown.growth)
    values["ring_wear"] = spread([wear.ring_wear(rate) for rate in grown.growth])
    if largest is None:
        return values
    hours = [wear.hours_to(grown.last_gap, largest, rate) for rate in grown.growth]
    if hours[1] is not None:
        values["hours_left"] = (hours[2], hours[1], hours[0])
    if hours[2] is not None:
        values["next_look"] = 0.5 * hours[2]
    return values


def comparison(losses):
    """The three rings side by side, for the screen a driver reads.

    losses: name -> running.Loss.
    """
    rows = []
    for name in ("now", "plain", "double-turn"):
        loss = losses[name]
        shown = _leak_shown(loss)
        row = OrderedDict((("ring", name),))
        for figure, triple in (
            ("leak_rate", loss.total),
            ("leak_share", loss.share),
            ("gap_leak", loss.gap),
            ("side_face_leak", loss.face),
        ):
            row[figure] = told(FIGURES[figure], spread(triple), shown)
        row["light_leak"] = Quantity(loss.light[1], "kg/h")
        row["steam_use"] = told(FIGURES["steam_use"], spread(loss.use), shown)
        rows.append(row)
    return rows


def diagram_series(stated):
    """The stated cycle's diagram, pressures absolute, for a drawing.

    stated: steam_cycle.Cycle.
    """
    travel = [point / 40.0 for point in range(41)]
    outward = [steam_cycle.pressure_outward(stated, at) for at in travel]
    returning = [steam_cycle.pressure_returning(stated, 1.0 - at) for at in travel]
    return OrderedDict(
        (
            ("travel", Series(travel, "1", "x")),
            ("pressure_outward", Series(outward, "MPa", "p")),
            ("pressure_returning", Series(returning, "MPa", "p")),
        )
    )
