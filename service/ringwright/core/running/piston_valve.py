"""Calculation "piston-valve": rings of a piston valve, their ports, bars, leak and friction."""

import math
from collections import OrderedDict

from ..catalogue import figures_of
from ..catalogue.inputs import listed
from ..catalogue.inputs_engine import ENGINE, RING_AT_HAND
from ..catalogue.inputs_ring import RING
from ..catalogue.inputs_ring import VALVE as OF_A_VALVE
from ..catalogue.inputs_valve import VALVE
from ..catalogue.running import PISTON_VALVE
from ..cautions import cautions
from ..problems import Fault, InputProblem
from ..properties.materials import pairing
from ..records import GOOD, STOP, WATCH, Quantity, finding
from ..ring import spring
from ..wording import decimal, fine_length, length, percent, wall_pressure
from . import friction, leak, port_crossing, ring_duty, ring_leak, valve_remedies, warming
from .ring_leak import LEVELS, spread
from .running_inputs import (
    engine_faults,
    fill_friction,
    fill_ring,
    fill_sizes,
    fill_steam,
    filling,
)

__all__ = ("FIELDS", "calculate")

FIELDS = listed(
    (RING, ENGINE, RING_AT_HAND, VALVE),
    "bore", "steam_pressure", "port_width", "steam_temperature", "back_pressure", "ring_width",
    "radial_thickness", "rings_on_piston", "port_bars", "port_bar_width", "joint_pinned",
    "edge_rounding", "valve_travel", "speed", "piston_diameter", "closed_gap", "worn_gap",
    "side_clearance", "ring_type", "end_cut", "ring_material", "modulus", "piston_material",
    "cylinder_material", "shop_temperature", "wall_pressure", "friction_coefficient",
    "inch_sizes",
)  # fmt: skip

BAR_COVER = 0.2  # share of the circumference that bars should be; common practice


def calculate(values):
    """How valve rings cross their ports, press, leak and rub.

    values: checked values of FIELDS, a plain dict in core units. Raises InputProblem.
    """
    given, chosen = _filled(values)
    crossing = _crossing(given)
    told = _ring_values(given)
    told.update(crossing["told"])
    shown = {
        "d1": given["bore"],
        "a1": given["radial_thickness"],
        "E": given["modulus"],
        "p": given["wall_pressure"],
        "s1": given["closed_gap"],
        "T_r": given["steam_temperature"],
        "mu": given["friction_spread"][1],
        "p1 - p2": given["steam_pressure"] - given["back_pressure"],
        "n_b": given["port_bars"],
        "b": given["port_bar_width"],
        "L": crossing["span"],
        "q": crossing["told"]["outward_pressure"][1],
    }
    told.update(_running_values(given, shown))
    rows, warm = _judged(given, crossing)

    def judge(asked):
        other = _filled(asked)[0]
        return _judged(other, _crossing(other))[0], other

    return OrderedDict(
        (
            ("figures", figures_of(PISTON_VALVE, told, shown)),
            ("findings", valve_remedies.told(values, given, rows, judge)),
            ("chosen", chosen),
            (
                "warming",
                OrderedDict([(key, warm[key]) for key in ("figures", "first_to_touch", "series")]),
            ),
            ("cautions", cautions("figures", "pressure-system", "isolate", "steam-burns")),
        )
    )


def _judged(given, crossing):
    """(list of Finding, what warming.warming says) of filled inputs and their crossing."""
    ring = warming.cold_ring(given, given["worn_gap"])
    warm = warming.warming(ring, given["steam_temperature"], given["running_temperature"])
    return _findings(given, crossing) + warm["findings"], warm


def _filled(values):
    """(values with defaults taken, list of Choice). Raises InputProblem."""
    given, take = filling(values)
    bore = given["bore"]
    for name in ("steam_pressure", "back_pressure", "speed", "rings_on_piston", "port_bars"):
        take(name)
    for name in ("joint_pinned", "edge_rounding"):
        take(name)
    take("port_bar_width", bore)
    take("valve_travel", bore)
    faults = engine_faults(given)
    if given["port_bars"] * given["port_bar_width"] >= math.pi * bore:
        faults.append(
            Fault(
                ("port_bar_width",),
                "size",
                "the bars leave no port between them",
                "give fewer or narrower port_bars",
            )
        )
    if faults:
        raise InputProblem(faults)
    fill_steam(given)
    fill_ring(given, take, values, OF_A_VALVE)
    fill_sizes(given, take)
    fill_friction(given, take)
    return given, take.chosen


def _crossing(given):
    """The crossing of a port: "told", the figures by name, and what the findings need."""
    bore, width, port = given["bore"], given["ring_width"], given["port_width"]
    thickness, modulus = given["radial_thickness"], given["modulus"]
    span = port_crossing.opening(bore, given["port_bars"], given["port_bar_width"])
    covered = given["port_bars"] * given["port_bar_width"] / (math.pi * bore)
    difference = given["steam_pressure"] - given["back_pressure"]
    outward = [given["wall_pressure"] + share * difference for share in friction.STEAM_SHARE]
    held = width > port
    sprung = [0.0 if held else port_crossing.bulge(q, span, thickness, modulus) for q in outward]
    ends = [0.0 if held else port_crossing.free_end(q, span, thickness, modulus) for q in outward]
    longest = [
        port_crossing.longest_opening(q, 0.5 * given["edge_rounding"], thickness, modulus)
        for q in outward
    ]
    factor = port_crossing.crossing_factor(width, port, covered)
    told = {
        "opening": span,
        "outward_pressure": spread(outward),
        "bulge": spread(sprung),
        "free_end": spread(ends),
        "longest_opening": spread(longest),
        "bar_pressure": spread([factor * q for q in outward]),
    }
    longest.reverse()
    return {
        "told": told,
        "span": span,
        "held": held,
        "bulge": sprung,
        "ends": ends,
        "longest": longest,
        "bar_pressure": factor * outward[1],
        "covered": covered,
    }


def _ring_values(given):
    bore, thickness, modulus = given["bore"], given["radial_thickness"], given["modulus"]
    pressure = given["wall_pressure"]
    values = {
        "closed_gap": given["closed_gap"],
        "closed_stress": spring.closed_stress(pressure, bore, thickness).tension,
    }
    if _springiness(given) <= spring.LARGEST_SPRINGINESS:
        change = spring.gap_change(pressure, bore, thickness, modulus)
        values["free_gap"] = change + given["closed_gap"]
    return values


def _springiness(given):
    """What its wall pressure asks of a ring of this section [1]."""
    return spring.springiness(
        given["wall_pressure"], given["bore"], given["radial_thickness"], given["modulus"]
    )


def _running_values(given, shown):
    """Leak and friction by name; puts what their workings show into `shown`, symbol -> number."""
    state, back = given["steam"], given["back"]
    duty = ring_duty.steady_duty(
        state.pressure,
        back.pressure,
        given["rings_on_piston"],
        leak.exponent(state.superheat),
        state.pressure * state.volume,
    )
    passed = ring_leak.paths(given, duty, given["ring_type"], given["worn_gap"], 0.0, 0.0)
    speed = friction.mean_piston_speed(given["valve_travel"], given["speed"])
    force = [
        friction.friction_power(
            coefficient=given["friction_spread"][level],
            wall_pressure=given["wall_pressure"],
            difference=duty.mean_difference,
            rings=given["rings_on_piston"],
            share=friction.STEAM_SHARE[level],
            bore=given["bore"],
            width=given["ring_width"],
            piston_speed=1.0,
        )
        for level in LEVELS
    ]
    shown["W_gap"] = passed.gap[1]
    shown["W_side"] = passed.face[1]
    shown["dp"] = duty.mean_difference
    return {
        "leak_rate": spread(passed.total),
        "gap_leak_napier": spread(passed.napier),
        "friction_force": spread(force),
        "friction_power": spread([f * speed for f in force]),
    }


def _findings(given, crossing):
    found = [_width(given, crossing)]
    edge = given["edge_rounding"]
    most = spring.LARGEST_SPRINGINESS / _springiness(given) * given["wall_pressure"]
    if given["wall_pressure"] > most:
        found.append(
            finding(
                "spring",
                STOP,
                "A ring of this section cannot press so hard by its own spring.",
                "Make it thicker, ask less wall pressure, or put an expander behind it.",
                Quantity(given["wall_pressure"], "MPa"),
                Quantity(most, "MPa"),
            )
        )
    if not crossing["held"]:
        found.append(_bulge(given, crossing, edge))
        found.append(_joint(given, crossing, edge))
    if not crossing["held"] and crossing["covered"] < BAR_COVER:
        found.append(
            finding(
                "bar-wear",
                WATCH,
                "While it crosses a port the ring bears on the bars alone, %s of the way round, at "
                "about %s: the bars wear first."
                % (percent(crossing["covered"]), wall_pressure(crossing["bar_pressure"])),
                "Wider or slanted bars, a wider ring, or less spring.",
                Quantity(crossing["covered"], "1"),
                Quantity(BAR_COVER, "1"),
            )
        )
    outcome, why, remedy = pairing(given["ring_material"], given["cylinder_material"])
    if outcome != GOOD:
        found.append(finding("pairing", outcome, why, remedy))
    return found


def _width(given, crossing):
    value, limit = Quantity(given["ring_width"], "mm"), Quantity(given["port_width"], "mm")
    if crossing["held"]:
        return finding(
            "ring-over-port",
            GOOD,
            "The ring is wider than the port: both edges of the port carry it and it cannot "
            "spring in.",
            "",
            value,
            limit,
        )
    return finding(
        "ring-over-port",
        GOOD,
        "The ring is narrower than the port: for part of the travel only the bars carry it.",
        "",
        value,
        limit,
    )


def _bulge(given, crossing, edge):
    high = crossing["bulge"][2]
    value, limit = Quantity(high, "mm"), Quantity(edge, "mm")
    if high <= 0.5 * edge:
        return finding(
            "bulge",
            GOOD,
            "Between bars the ring springs out by %s at most, well within the rounding of the "
            "edges." % fine_length(high),
            "",
            value,
            limit,
        )
    pitch = crossing["longest"][0] + given["port_bar_width"]
    needed = int(math.ceil(math.pi * given["bore"] / pitch))
    return finding(
        "bulge",
        STOP if high > edge else WATCH,
        "Between bars the ring may spring out by %s; the edges are rounded by %s: it can catch."
        % (fine_length(high), fine_length(edge)),
        "Use %s bars of this width or more, a thicker ring, or a ring wider than the port."
        % decimal(needed, 0),
        value,
        limit,
    )


def _joint(given, crossing, edge):
    value, limit = Quantity(crossing["ends"][2], "mm"), Quantity(edge, "mm")
    if given["joint_pinned"]:
        needed = given["worn_gap"] + 2.0 * edge
        if given["port_bar_width"] > needed:
            return finding(
                "joint",
                GOOD,
                "The pin keeps the joint on a bar wide enough to carry both ends.",
            )
        return finding(
            "joint",
            STOP,
            "The bar that carries the joint is narrower than the gap and the rounding of both "
            "ends.",
            "Pin the joint on a bar of at least %s." % length(needed),
            Quantity(given["port_bar_width"], "mm"),
            Quantity(needed, "mm"),
        )
    if crossing["ends"][2] <= 0.5 * edge:
        return finding(
            "joint",
            GOOD,
            "Even over an opening the free ends spring out by %s at most."
            % fine_length(value.value),
            "",
            value,
            limit,
        )
    return finding(
        "joint",
        STOP if crossing["ends"][2] > edge else WATCH,
        "The joint is not pinned: an end that comes over an opening may spring in by %s and catch."
        % fine_length(value.value),
        "Pin the joint on a bar, or make the ring wider than the port.",
        value,
        limit,
    )
