"""Calculation "running": what the rings lose now, and what new ones would lose."""

from collections import OrderedDict, namedtuple

from . import (
    friction,
    leak,
    ring_duty,
    ring_leak,
    steam,
    steam_cycle,
    steam_properties,
    warming,
    wear,
)
from .cautions import cautions
from .records import Method, Quantity, Series, figure
from .ring_inputs import DOUBLE_TURN, PLAIN
from .ring_leak import LEVELS, spread
from .running_fields import DOUBLE, FIELDS
from .running_findings import findings
from .running_inputs import filled

__all__ = ("FIELDS", "METHODS", "calculate")

BOILER_SPREAD = (0.10, 0.15)  # boiler efficiency: so much below, so much above

# ring_leak.Paths and what follows from them: leak as a share of all the steam used [1], the steam
# used with these rings [kg/h]; each low, usual, high.
Loss = namedtuple("Loss", ("gap", "napier", "face", "light", "total", "share", "use"))

# mean_pressure [MPa] and power [W], low, usual, high; strokes [1/h]; steam of the diagram [kg/h];
# base: steam used with good plain rings, low, usual, high [kg/h].
Engine = namedtuple(
    "Engine", ("diagram", "mean_pressure", "power", "strokes", "indicated", "base", "duty")
)

METHODS = (
    Method(
        "leak-share",
        "Share of the steam that passes the rings",
        "leak/(steam use with good rings + leak - leak of good rings)",
        "as steam-use",
        ("lineham",),
    ),
    Method(
        "fuel-saved",
        "Fuel that the lost steam costs",
        "saved steam (h1 - h_feed)/(boiler efficiency * heat of the fuel)",
        "steady steaming",
        ("practice",),
    ),
    Method(
        "largest-gap",
        "Gap at which rings are due",
        "gap at which the leak is the largest share allowed of the steam",
        "all else as it is",
        ("orifice",),
    ),
)


def calculate(values):
    """Power, steam, leak, friction, wear and clearances of a running engine.

    values: checked values of FIELDS, a plain dict in core units. Raises InputProblem.
    """
    given, chosen = filled(values)
    ring = warming.cold_ring(given, given["worn_gap"])
    engine = _engine(given)
    losses = _losses(given, engine)
    grown = None
    if given["gap_readings"]:
        grown = wear.wear_from_readings(
            [(entry["hours"], entry["gap"]) for entry in given["gap_readings"]]
        )
    largest = _largest_gap(given, losses["now"])
    warm = warming.warming(ring, given["steam_temperature"], given["running_temperature"])
    figures = _engine_figures(given, engine)
    _leak_figures(figures, given, engine, losses)
    rubbing = _friction_figures(figures, given, engine)
    _wear_figures(figures, given, grown, largest)
    return OrderedDict(
        (
            ("figures", figures),
            ("comparison", _comparison(losses)),
            (
                "findings",
                findings(given, engine, losses, rubbing, grown, largest) + warm["findings"],
            ),
            ("chosen", chosen),
            (
                "warming",
                OrderedDict([(key, warm[key]) for key in ("figures", "first_to_touch", "series")]),
            ),
            ("diagram", _diagram_series(given["cycle"])),
            ("cautions", cautions("figures", "pressure-system", "isolate", "steam-burns")),
        )
    )


def _engine(given):
    """The Engine: its stated cycle with the spreads of diagram factor and missing quantity."""
    stated, double = given["cycle"], given["acting"] == DOUBLE
    state, back = given["steam"], given["back"]
    drawn = steam_cycle.diagram(stated)
    a_minute = given["speed"] * (2.0 if double else 1.0)
    mean = [factor * drawn.mean_pressure for factor in steam_cycle.DIAGRAM_FACTOR]
    power = [
        steam_cycle.indicated_power(pressure, given["bore"], given["stroke"], a_minute)
        for pressure in mean
    ]
    strokes = 60.0 * a_minute
    per_stroke = steam_cycle.steam_per_stroke(stated, state.volume, back.volume)
    swept = steam_cycle.swept_volume(given["bore"], given["stroke"])
    indicated = per_stroke.used * swept * strokes
    base = [steam_cycle.steam_used(indicated, share) for share in given["missing_spread"]]
    duty = ring_duty.ring_duty(
        stated,
        double_acting=double,
        rings=given["rings"],
        k=leak.exponent(state.superheat),
        pressure_volume=state.pressure * state.volume,
        atmosphere=steam.ATMOSPHERE,
    )
    return Engine(drawn, mean, power, strokes, indicated, base, duty)


def _losses(given, engine):
    """name -> Loss for the ring at hand, a new plain ring and a new double-turn ring."""
    fresh = 0.0 if given["new_groove"] else given["groove_wear"]
    arch = leak.light_opening(given["light"], given["light_length"])
    paths = OrderedDict()
    for name, ring_type, gap, worn, light in (
        ("plain", PLAIN, given["closed_gap"], fresh, 0.0),
        ("double-turn", DOUBLE_TURN, given["closed_gap"], fresh, 0.0),
        ("now", given["ring_type"], given["worn_gap"], given["groove_wear"], arch),
    ):
        paths[name] = ring_leak.paths(given, engine.duty, ring_type, gap, worn, light)
    good = paths["plain"].total
    losses = OrderedDict()
    for name in ("now", "plain", "double-turn"):
        total = paths[name].total
        use = _use(given, engine, paths["now"].total, good, total)
        # The least share is the least leak in the most steam.
        share = [total[level] / max(use[2 - level], total[level]) for level in LEVELS]
        losses[name] = Loss(*(paths[name] + (share, use)))
    return losses


def _use(given, engine, now, good, total):
    """Steam used with a ring that leaks `total`, low, usual, high [kg/h].

    From the feed that was measured with the rings at hand, where there is one; otherwise from the
    steam an engine with good plain rings uses.
    """
    if given["steam_measured"] is not None:
        measured = given["steam_measured"]
        return sorted([max(measured - now[level] + total[level], 1e-9) for level in LEVELS])
    return sorted([engine.base[level] + total[level] - good[level] for level in LEVELS])


def _largest_gap(given, now):
    """Cold gap at which the leak reaches the largest share allowed [mm], None when it cannot."""
    if now.gap[1] <= 0.0 or given["worn_gap"] <= 0.0:
        return None
    allowed = given["largest_leak_share"]
    other = now.face[1] + now.light[1]
    tight = now.use[1] - now.total[1]
    wanted = allowed * tight / (1.0 - allowed) - other
    return max(0.0, given["worn_gap"] * wanted / now.gap[1])


def _engine_figures(given, engine):
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


def _leak_figures(out, given, engine, losses):
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


def _friction_figures(out, given, engine):
    """Adds the figures of friction; returns its usual share of the power [1]."""
    speed = friction.mean_piston_speed(given["stroke"], given["speed"])
    difference = engine.duty.mean_difference
    power = [
        friction.friction_power(
            coefficient=given["friction_spread"][level],
            wall_pressure=given["wall_pressure"],
            difference=difference,
            rings=given["rings"],
            share=friction.STEAM_SHARE[level],
            bore=given["bore"],
            width=given["ring_width"],
            piston_speed=speed,
        )
        for level in LEVELS
    ]
    wall = [
        friction.wall_load(given["wall_pressure"], difference, given["rings"], share)
        for share in friction.STEAM_SHARE
    ]
    pressed = (
        ("p", given["wall_pressure"], "MPa"),
        ("p1 - p2", difference, "MPa"),
        ("n", given["rings"], "1"),
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


def _wear_figures(out, given, grown, largest):
    if largest is not None:
        out["largest_gap"] = figure(
            largest, "mm", "s", "largest-gap", (("share", given["largest_leak_share"], "1"),)
        )
    if grown is None:
        return
    out["gap_growth"] = spread(grown.growth, "mm", "s per 100 h", "gap-growth")
    out["ring_wear"] = spread(
        [wear.ring_wear(rate) for rate in grown.growth], "mm", "per 100 h", "ring-wear"
    )
    if largest is None:
        return
    hours = [wear.hours_to(grown.last_gap, largest, rate) for rate in grown.growth]
    if hours[1] is not None:
        out["hours_left"] = figure(
            hours[1], "h", "t", "next-look", (("s", largest, "mm"),), low=hours[2], high=hours[0]
        )
    if hours[2] is not None:
        out["next_look"] = figure(0.5 * hours[2], "h", "t/2", "next-look")


def _comparison(losses):
    """The three rings side by side, for the screen a driver reads."""
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


def _diagram_series(stated):
    """The stated cycle's diagram, pressures absolute, for a drawing."""
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
