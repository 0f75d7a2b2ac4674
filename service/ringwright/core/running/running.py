"""Calculation "running": what the rings lose now, and what new ones would lose."""

from collections import OrderedDict, namedtuple

from .. import clearances
from ..catalogue import figures_of
from ..catalogue.inputs import listed
from ..catalogue.inputs_engine import DOUBLE, ENGINE, OWNER, RING_AT_HAND
from ..catalogue.inputs_ring import DOUBLE_TURN, PLAIN, RING
from ..catalogue.running import RUNNING
from ..cautions import cautions
from ..properties import steam
from ..properties.materials import material
from ..records import Method
from ..ring import spring
from . import leak, ring_duty, ring_leak, running_remedies, steam_cycle, warming, wear
from .ring_leak import LEVELS
from .running_figures import (
    comparison,
    diagram_series,
    engine_values,
    friction_values,
    leak_values,
    wear_values,
)
from .running_findings import findings, on_the_piston
from .running_inputs import filled

__all__ = ("FIELDS", "METHODS", "calculate")

# Steam is taken as hot as its pressure makes it unless a temperature is given.
BY_PRESSURE = {"steam_temperature": "saturation-temperature"}

FIELDS = listed(
    (RING, ENGINE, RING_AT_HAND, OWNER),
    "bore", "stroke", "speed", "steam_pressure", "steam_temperature", "steam_dryness", "acting",
    "cut_off", "release", "compression", "clearance_volume", "back_pressure", "missing_quantity",
    "steam_measured", "ring_type", "end_cut", "rings_on_piston", "radial_thickness", "ring_width",
    "worn_gap", "closed_gap", "piston_diameter", "side_clearance", "groove_wear", "new_groove",
    "light", "light_length", "ring_material", "piston_material", "cylinder_material",
    "shop_temperature", "wall_pressure", "expander_pressure", "friction_coefficient",
    "largest_leak_share",
    "gap_readings", "hours_per_season", "boiler_efficiency", "fuel_heat", "feed_temperature",
    "inch_sizes",
)  # fmt: skip


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
        "(W - W_new)(H1 - H_feed)/(boiler efficiency * heat of the fuel)",
        "steady steaming",
        ("practice",),
    ),
    Method(
        "largest-gap",
        "Gap at which rings are due",
        "the lesser of the gap that leaks the largest share allowed of the steam, and the gap of a "
        "ring with half its spring worn away",
        "all else as it is",
        ("orifice", "wear", "practice"),
    ),
)


def calculate(values):
    """Power, steam, leak, friction, wear and clearances of a running engine.

    values: checked values of FIELDS, a plain dict in core units. Raises InputProblem.
    """
    given, chosen = filled(values)
    shown = {}
    engine, losses, rows, warm, found = _worked(given, shown)
    return OrderedDict(
        (
            ("figures", figures_of(RUNNING, found, shown, BY_PRESSURE)),
            ("comparison", comparison(losses)),
            ("findings", running_remedies.told(values, given, rows, _judged, _judged_whole)),
            ("chosen", chosen),
            (
                "warming",
                OrderedDict([(key, warm[key]) for key in ("figures", "first_to_touch", "series")]),
            ),
            ("diagram", diagram_series(given["cycle"])),
            ("cautions", cautions("figures", "pressure-system", "isolate", "steam-burns")),
        )
    )


def _worked(given, shown):
    """(Engine, its losses, list of Finding, warming, name -> figure). given: filled inputs.

    shown: dict that takes what is put into each formula.
    """
    ring = warming.cold_ring(given, given["worn_gap"])
    engine = engine_of(given)
    losses = _losses(given, engine)
    grown = None
    if given["gap_readings"]:
        grown = wear.wear_from_readings(
            [(entry["hours"], entry["gap"]) for entry in given["gap_readings"]]
        )
    change = _gap_change(given)
    largest = _largest_gap(given, losses["now"], change)
    warm = warming.warming(ring, given["steam_temperature"], given["running_temperature"])
    found = engine_values(given, engine, shown)
    found.update(leak_values(given, engine, losses, shown))
    found.update(friction_values(given, engine, shown))
    found.update(wear_values(given, grown, largest, change, shown))
    rubbing, left = found["friction_share"][1], found.get("spring_left")
    rows = findings(given, engine, losses, rubbing, left, grown, largest) + warm["findings"]
    return engine, losses, rows, warm, found


def _judged(values):
    """(list of Finding of the ring on the piston, the filled inputs): what a remedy is tried by."""
    given, _ = filled(values)
    ring = warming.cold_ring(given, given["worn_gap"])
    warm = warming.warming(ring, given["steam_temperature"], given["running_temperature"])
    return on_the_piston(given) + warm["findings"], given


def _judged_whole(values):
    """The same with the engine: its leak and friction too."""
    given, _ = filled(values)
    return _worked(given, {})[2], given


def engine_of(given):
    """The Engine: its stated cycle with the spreads of diagram factor and missing quantity.

    given: filled inputs, see running_inputs.
    """
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
        rings=given["rings_on_piston"],
        k=leak.exponent(state.superheat),
        pressure_volume=state.pressure * state.volume,
        atmosphere=steam.ATMOSPHERE,
    )
    return Engine(
        diagram=drawn,
        mean_pressure=mean,
        power=power,
        strokes=strokes,
        indicated=indicated,
        base=base,
        duty=duty,
    )


def _losses(given, engine):
    """name -> Loss for the ring at hand, a new plain ring and a new double-turn ring."""
    fresh = 0.0 if given["new_groove"] else given["groove_wear"]
    arch = leak.light_opening(given["light"], given["light_length"])
    paths = OrderedDict()
    for name, ring_type, gap, worn, light in (
        ("plain", PLAIN, given["new_gaps"][PLAIN], fresh, 0.0),
        ("double-turn", DOUBLE_TURN, given["new_gaps"][DOUBLE_TURN], fresh, 0.0),
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


def _largest_gap(given, now, change):
    """Cold gap at which rings are due [mm], None when nothing tells.

    The lesser of the gap that leaks the largest share allowed and the gap of a ring with half its
    spring gone. change: gap from bore to free of the new ring [mm], None when it has no spring.
    """
    slack = None
    if change is not None:
        slack = given["closed_gap"] + wear.growth_to(0.5, change, given["radial_thickness"])
    if now.gap[1] <= 0.0 or given["worn_gap"] <= 0.0:
        return slack
    allowed = given["largest_leak_share"]
    other = now.face[1] + now.light[1]
    tight = now.use[1] - now.total[1]
    wanted = allowed * tight / (1.0 - allowed) - other
    # What passes goes by the gap as it runs warm.
    hot, _, _ = warming.clearances_running(given, given["worn_gap"])
    grown = clearances.growth(
        given["expansions"][0], given["running_temperature"], given["shop_temperature"]
    )
    leaky = max(0.0, given["worn_gap"] + hot * (wanted / now.gap[1] - 1.0) / grown)
    return leaky if slack is None else min(leaky, slack)


def _gap_change(given):
    """Gap from bore to free of the new ring [mm], None where it has not the spring for it."""
    modulus = material(given["ring_material"]).modulus
    section = (given["bore"], given["radial_thickness"], modulus)
    pressure = given["wall_pressure"]
    if not 0.0 < spring.springiness(pressure, *section) <= spring.LARGEST_SPRINGINESS:
        return None
    return spring.gap_change(pressure, *section)
