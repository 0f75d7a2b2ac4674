"""The figures of a running engine, from what running.py has reckoned."""

from collections import OrderedDict

from ..properties import steam_properties
from ..records import Quantity, Series, figure
from . import friction, steam_cycle, wear
from .ring_leak import LEVELS, spread

BOILER_SPREAD = (0.10, 0.15)  # boiler efficiency: so much below, so much above


def engine_figures(given, engine):
    """OrderedDict of the figures of power, steam and heat.

    given: filled inputs (running_inputs). engine: running.Engine.
    """
    state, stated = given["steam"], given["cycle"]
    working = (
        ("p1", stated.admission, "MPa"),
        ("p_b", stated.back, "MPa"),
        ("x", stated.cut_off, "1"),
        ("r", stated.release, "1"),
        ("k", stated.compression, "1"),
        ("c", stated.clearance, "1"),
    )
    out = OrderedDict()
    out["steam_temperature"] = figure(
        state.temperature,
        "degC",
        "T",
        "saturation-temperature",
        (("p", given["steam_pressure"], "MPa"),),
    )
    out["steam_volume"] = figure(
        state.volume, "m3/kg", "v1", "steam-properties", (("p1", stated.admission, "MPa"),)
    )
    out["mean_effective_pressure"] = spread(
        engine.mean_pressure, "MPa", "p_m", "mean-effective-pressure", working
    )
    out["indicated_power"] = spread(
        engine.power,
        "W",
        "IP",
        "indicated-power",
        (
            ("p_m", engine.mean_pressure[1], "MPa"),
            ("d1", given["bore"], "mm"),
            ("stroke", given["stroke"], "mm"),
            ("strokes", engine.strokes / 60.0, "1/min"),
        ),
    )
    out["indicated_steam"] = figure(
        engine.indicated,
        "kg/h",
        "m_i",
        "indicated-steam",
        working + (("v1", state.volume, "m3/kg"), ("v_b", given["back"].volume, "m3/kg")),
    )
    drain = steam_properties.water_enthalpy(given["back"].temperature)
    used = given["steam_measured"] or engine.base[1]
    heat = steam_cycle.heat_balance(used, state.enthalpy, drain, engine.power[1])
    out["heat_supplied"] = figure(
        heat.supplied,
        "W",
        "Q",
        "heat-balance",
        (("m", used, "kg/h"), ("h1", state.enthalpy, "kJ/kg"), ("h_f,b", drain, "kJ/kg")),
    )
    out["heat_carried_away"] = figure(heat.carried_away, "W", "Q - IP", "heat-balance")
    out["thermal_efficiency"] = figure(heat.efficiency, "1", "IP/Q", "heat-balance")
    if given["steam_measured"] is not None:
        out["missing_quantity"] = figure(
            1.0 - engine.indicated / given["steam_measured"],
            "1",
            "1 - m_i/m",
            "measured-missing-quantity",
            (("m_i", engine.indicated, "kg/h"), ("m", given["steam_measured"], "kg/h")),
        )
    return out


def leak_figures(out, given, engine, losses):
    """Adds to `out` the figures of the leak and of what new rings save.

    out: OrderedDict of Figure. given, engine: as in engine_figures. losses: name -> running.Loss.
    """
    now = losses["now"]
    new = losses[given["ring_type"]]
    out["steam_use"] = spread(
        now.use, "kg/h", "m", "steam-use", (("m_i", engine.indicated, "kg/h"),)
    )
    out["leak_rate"] = spread(now.total, "kg/h", "W", "leak-rate", _leak_working(now))
    out["leak_share"] = spread(
        now.share,
        "1",
        "W/m",
        "leak-share",
        (("W", now.total[1], "kg/h"), ("m", now.use[1], "kg/h")),
    )
    out["leak_per_stroke"] = spread(
        [rate / engine.strokes for rate in now.total], "kg", "W", "leak-rate"
    )
    out["gap_leak"] = spread(now.gap, "kg/h", "W", "choked-flow")
    out["gap_leak_napier"] = spread(now.napier, "kg/h", "W", "napier-flow")
    saved = [now.total[level] - new.total[level] for level in LEVELS]
    out["steam_saved"] = spread(sorted(saved), "kg/h", "W - W_new", "leak-rate")
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
    heat = (
        ("W - W_new", saved[1], "kg/h"),
        ("h1", given["steam"].enthalpy, "kJ/kg"),
        ("h_feed", feed, "kJ/kg"),
        ("efficiency", boiler, "1"),
    )
    out["fuel_saved"] = spread(fuel, "kg/h", "B", "fuel-saved", heat)
    if given["hours_per_season"]:
        out["fuel_saved_in_season"] = spread(
            [given["hours_per_season"] * rate for rate in fuel], "kg", "B", "fuel-saved", heat
        )


def _leak_working(loss):
    return (
        ("gap", loss.gap[1], "kg/h"),
        ("side face", loss.face[1], "kg/h"),
        ("light", loss.light[1], "kg/h"),
    )


def friction_figures(out, given, engine):
    """Adds to `out` the figures of friction; returns its usual share of the power [1].

    out: OrderedDict of Figure. given, engine: as in engine_figures.
    """
    speed = friction.mean_piston_speed(given["stroke"], given["speed"])
    difference = engine.duty.mean_difference
    power = [
        friction.friction_power(
            coefficient=given["friction_spread"][level],
            wall_pressure=given["wall_pressure"],
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
        friction.wall_load(given["wall_pressure"], difference, given["rings_on_piston"], share)
        for share in friction.STEAM_SHARE
    ]
    pressed = (
        ("p", given["wall_pressure"], "MPa"),
        ("p1 - p2", difference, "MPa"),
        ("n", given["rings_on_piston"], "1"),
    )
    share = [power[level] / engine.power[2 - level] for level in LEVELS]
    out["mean_piston_speed"] = figure(speed, "m/s", "v", "mean-piston-speed")
    out["sliding_distance"] = figure(
        friction.sliding_distance(given["stroke"], given["speed"]), "m", "L", "sliding-distance"
    )
    out["wall_pressure_with_steam"] = spread(wall, "MPa", "p + p_s", "wall-load", pressed)
    out["friction_power"] = spread(
        power, "W", "P", "friction-power", pressed + (("mu", given["friction_spread"][1], "1"),)
    )
    out["friction_share"] = spread(share, "1", "P/IP", "friction-power")
    return power[1] / engine.power[1]


def wear_figures(out, given, grown, largest, change):
    """Adds to `out` the figures of wear; returns the spring left in the ring at hand [1] or None.

    out: OrderedDict of Figure. given: as in engine_figures. grown: wear.Wear or None. largest: gap
    at which rings are due [mm] or None. change: gap from bore to free when new [mm] or None.
    """
    left = None
    if change is not None:
        growth = max(0.0, given["worn_gap"] - given["closed_gap"])
        left = wear.spring_left(growth, change, given["radial_thickness"])
        out["spring_left"] = figure(
            left,
            "1",
            "p/p_new",
            "spring-left",
            (
                ("g", growth, "mm"),
                ("m", change, "mm"),
                ("a1", given["radial_thickness"], "mm"),
            ),
        )
    if largest is not None:
        out["largest_gap"] = figure(
            largest, "mm", "s", "largest-gap", (("share", given["largest_leak_share"], "1"),)
        )
    if grown is None:
        return left
    out["gap_growth"] = spread(grown.growth, "mm", "s per 100 h", "gap-growth")
    out["ring_wear"] = spread(
        [wear.ring_wear(rate) for rate in grown.growth], "mm", "per 100 h", "ring-wear"
    )
    if largest is None:
        return left
    hours = [wear.hours_to(grown.last_gap, largest, rate) for rate in grown.growth]
    if hours[1] is not None:
        out["hours_left"] = figure(
            hours[1], "h", "t", "next-look", (("s", largest, "mm"),), low=hours[2], high=hours[0]
        )
    if hours[2] is not None:
        out["next_look"] = figure(0.5 * hours[2], "h", "t/2", "next-look")
    return left


def comparison(losses):
    """The three rings side by side, for the screen a driver reads.

    losses: name -> running.Loss.
    """
    rows = []
    for name in ("now", "plain", "double-turn"):
        loss = losses[name]
        rows.append(
            OrderedDict(
                (
                    ("ring", name),
                    (
                        "leak_rate",
                        spread(loss.total, "kg/h", "W", "leak-rate", _leak_working(loss)),
                    ),
                    ("leak_share", spread(loss.share, "1", "W/m", "leak-share")),
                    ("gap_leak", spread(loss.gap, "kg/h", "W", "choked-flow")),
                    ("side_face_leak", spread(loss.face, "kg/h", "W", "side-face-leak")),
                    ("light_leak", Quantity(loss.light[1], "kg/h")),
                    ("steam_use", spread(loss.use, "kg/h", "m", "steam-use")),
                )
            )
        )
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
