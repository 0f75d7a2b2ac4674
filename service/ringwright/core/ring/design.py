"""From what was asked to a whole ring: every default taken by a stated rule, every size settled.

`settle` is where sizing, tooling, the route card and the drawings all begin, so that they cannot
disagree. It only settles sizes; what they mean for the ring is sizing.py's work.
"""

import math
from collections import namedtuple

from .. import clearances
from ..fields import at_most_one
from ..problems import unworkable
from ..properties import steam
from ..properties.materials import material, mean_expansion
from ..records import Choice, Method
from ..wording import in_a_sentence, length
from . import blank, heat_set, section
from . import soak as soaking
from .ring_inputs import DOUBLE_TURN, PLAIN
from .spring_back import PRACTICE_PRESSURE, PRACTICE_WHY, TARGETS, Ring, spring_of

DEFAULT_STEAM = 0.7
DEFAULT_SHOP = 20.0
DEFAULT_SOAK_TIME = 1.0
PLAIN_WIDTH_RATIO = 1.25
DOUBLE_WIDTH_RATIO = 2.0
FACING = 0.25
# Of the pressure that a metal just carries: room for a thickness rounded to what is turned.
ROUNDING_SHARE = 0.97
# Below this share a former would have to be far larger than the ring; relief's field starts here.
SMALLEST_RELIEF = 0.1
# Angle of the cut to the side of the ring [deg]; a stepped joint is cut square.
CUT_ANGLES = {"angled-45": 45.0, "angled-60": 60.0, "square": 90.0, "stepped": 90.0}
# Saws to choose an end kerf from [mm]: ISO 2296 thicknesses.
SAWS = (0.3, 0.4, 0.5, 0.6, 0.8, 1.0, 1.2, 1.6, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0)

Design = namedtuple(
    "Design",
    (
        # what it is for
        "bore", "ring_type", "turns", "rings", "ring_material", "modulus", "cylinder_material",
        "piston_material", "steam_pressure", "steam_temperature", "saturation_temperature",
        "wall_temperature", "warming_wall_temperature", "shop_temperature", "end_cut",
        "setting", "finishing", "bearing",
        # the finished ring
        "radial_thickness", "ring_width", "turn_width", "inside_diameter", "closed_gap",
        "gap_change", "curvature_change", "wall_pressure", "contact_pressure", "window",
        # groove and piston
        "side_clearance", "groove_width", "groove_depth", "piston_diameter",
        # the blank and its setting
        "relief", "relief_low", "relief_high", "end_kerf", "gap_kerf", "slit_width",
        "facing_allowance", "finishing_allowance", "inside_allowance",
        "clamped_gap", "band_width", "blank_length", "finish_outside", "bored_inside",
        "rough_outside", "set_thickness", "bored_radius", "former_material", "soak_temperature",
        "soak_time", "former_growth", "former_radius", "former_diameter", "spacer_width",
    ),
)  # fmt: skip


class _Chooser:
    """Hands out given values, and notes each default with its rule."""

    def __init__(self, values):
        self.values = values
        self.chosen = []

    def __call__(self, name, default, unit, why):
        given = self.values.get(name)
        if given is not None:
            return given
        self.chosen.append(Choice(name, default, unit, why))
        return default


def settle(values):
    """(Design, list of Choice) for checked values of ring_inputs.RING_FIELDS and BLANK_FIELDS.

    values: a plain dict in core units; names that are absent or None take their default.
    Raises InputProblem where the values cannot be worked together.
    """
    at_most_one(values, TARGETS)
    take = _Chooser(values)
    bore = values["bore"]
    ring_type = take("ring_type", DOUBLE_TURN, "", "each of its turns closes the gap of the other")
    turns = 1 if ring_type == PLAIN else 2
    rings = take("rings", 2, "1", "two to a piston")
    ring_material = material(take("ring_material", "grey-iron", "", "the usual ring iron"))
    cylinder = material(take("cylinder_material", "grey-iron", "", "the usual cylinder"))
    piston = material(take("piston_material", "grey-iron", "", "the usual piston"))
    modulus = take(
        "modulus", ring_material.modulus, "MPa", "of " + in_a_sentence(ring_material.title)
    )
    pressure = take("steam_pressure", DEFAULT_STEAM, "MPa", "a usual working pressure")
    saturation = steam.saturation_temperature(pressure)
    temperature = take("steam_temperature", saturation, "degC", "saturated steam")
    shop = take("shop_temperature", DEFAULT_SHOP, "degC", "a usual shop")
    end_cut = take("end_cut", "angled-45", "", "common practice")
    setting = take(
        "setting",
        heat_set.SPREAD if turns == 1 else heat_set.SPRUNG,
        "",
        "plain rings bear evenly when spread" if turns == 1 else "the usual way with a former",
    )
    finishing = take("finishing", heat_set.CLOSING_RING, "", "the usual tool; light-tight")
    bearing = heat_set.bearing(setting, finishing)
    warming = clearances.starting_wall_temperature(temperature, shop)
    wall = clearances.filing_wall_temperature(turns, temperature, shop)

    heat = {
        "ring_temperature": temperature,
        "shop_temperature": shop,
        "ring_expansion": ring_material.expansion,
    }
    closed_gap = take(
        "closed_gap",
        clearances.usual_closed_gap(
            turns=turns, bore=bore, cylinder_expansion=cylinder.expansion, **heat
        ),
        "mm",
        clearances.USUAL_GAP_WHY[turns],
    )
    soak, soak_time, relief = _soak(take, ring_material.family)
    kerf = take(
        "end_kerf",
        _saw(2.0 * closed_gap, bore),
        "mm",
        "a standard saw, a hundredth of the bore up to 1 mm, not less than twice the closed gap",
    )
    gap_kerf = blank.end_kerf(saw_thickness=kerf, angle=CUT_ANGLES[end_cut])
    slit = (
        take("slit_width", _slit(bore), "mm", "a saw stiff enough for the bore")
        if turns == 2
        else 0.0
    )
    facing = take("facing_allowance", FACING, "mm", "cleans up each side")
    banded = finishing == heat_set.BAND and setting != heat_set.SPREAD
    finishing_allowance = take(
        "finishing_allowance",
        _tenths(0.5 + (0.012 if banded else 0.004) * bore),
        "mm",
        "0.5 mm and 1.2 % of the bore: a banded ring is far from round"
        if banded
        else "0.5 mm and 0.4 % of the bore, for a ring that is not quite round yet",
    )
    # A ring held by a band is turned inside as well, and needs metal there too.
    inside_allowance = 0.5 * finishing_allowance if banded else 0.0
    clamped_gap = take(
        "clamped_gap", closed_gap, "mm", "the closed gap, so it is turned to the bore"
    )
    if clamped_gap >= gap_kerf:
        raise unworkable(
            "clamped_gap",
            "the gap when clamped is not less than the saw cut, so nothing would be closed",
            "give less than the end kerf, or a wider end_kerf",
        )
    former_material = material(take("former_material", "steel", "", "holds its size when hot"))
    piston_diameter = _piston_diameter(take, bore, piston, cylinder, temperature, warming, shop)
    width = values.get("ring_width")
    if width is None and values.get("groove_width") is not None:
        width = _width_in_groove(values["groove_width"], bore, piston, temperature, heat)
        take.chosen.append(
            Choice("ring_width", width, "mm", "the groove's width less the side clearance")
        )
    ratio = PLAIN_WIDTH_RATIO if turns == 1 else DOUBLE_WIDTH_RATIO
    task = section.Task(
        bore,
        modulus,
        ring_material.poisson,
        ring_material.bending_strength,
        ring_material.family == "iron",
        values.get("wall_pressure") or PRACTICE_PRESSURE,
        turns,
        setting,
        bearing.uniform,
        width,
        ratio,
        slit,
        facing,
        finishing_allowance,
        0.5 * (bore - piston_diameter),
    )
    usual, usual_why, found = _usual_pressure(task, ring_material, values)
    thickness = take(
        "radial_thickness",
        _rounded_thickness(found.best),
        "mm",
        "as safe in the bore as on its way there",
    )
    if thickness > bore / 6.0:
        raise unworkable(
            "radial_thickness",
            "the ring is thicker than a sixth of its bore, and would not spring at all",
            "give at most " + length(bore / 6.0),
        )
    if width is None:
        width = _halves(ratio * thickness) if ratio * thickness >= 1.0 else ratio * thickness
        take.chosen.append(
            Choice(
                "ring_width",
                width,
                "mm",
                "1.25 thicknesses" if turns == 1 else "2 thicknesses: each turn as wide as thick",
            )
        )

    band = width + 2.0 * facing
    blank_length = band
    if turns == 2:
        band = blank.band_width(ring_width=width, slit=slit, facing_allowance=facing)
        blank_length = blank.blank_length(ring_width=width, slit=slit, facing_allowance=facing)
    sizes = blank.diameters(
        bore=bore,
        thickness=thickness,
        closed_gap=closed_gap,
        clamped_gap=clamped_gap,
        kerf=gap_kerf,
        finishing_allowance=finishing_allowance,
    )
    bored_inside = sizes.bored_inside - 2.0 * inside_allowance
    set_thickness = thickness + 0.5 * finishing_allowance + inside_allowance
    bored_radius = 0.5 * (bored_inside + set_thickness)
    growth = heat_set.hot_growth(
        mean_expansion(former_material.key, soak),
        mean_expansion(ring_material.key, soak),
        soak - shop,
    )
    ring = Ring(
        bore, thickness, modulus, turns, setting, bearing, closed_gap, gap_kerf, relief.likely,
        set_thickness, inside_allowance, bored_radius, growth,
    )  # fmt: skip
    spring_back = spring_of(ring, take, values, usual, usual_why)

    side = _side_clearance(bore, width, piston, temperature, heat)
    groove_width = take("groove_width", width + side, "mm", "ring width and side clearance")
    groove_depth = take(
        "groove_depth",
        clearances.groove_depth(
            radial_thickness=thickness,
            piston_expansion=piston.expansion,
            piston_temperature=temperature,
            **heat,
        ),
        "mm",
        "thickness and 0.4 mm, so that the piston never rides on its ring",
    )
    return (
        Design(
            bore, ring_type, turns, rings, ring_material, modulus, cylinder,
            piston, pressure, temperature, saturation,
            wall, warming, shop, end_cut, setting, finishing, bearing,
            thickness, width, width / turns, bore - 2.0 * thickness, closed_gap,
            spring_back.gap_change, spring_back.curvature_change, spring_back.wall_pressure,
            spring_back.contact_pressure, found,
            groove_width - width, groove_width, groove_depth, piston_diameter,
            relief.likely, relief.low, relief.high, kerf, gap_kerf, slit,
            facing, finishing_allowance, inside_allowance,
            clamped_gap, band, blank_length, sizes.finish_outside, bored_inside,
            sizes.rough_outside, set_thickness, bored_radius, former_material, soak,
            soak_time, growth, spring_back.former_radius, spring_back.former_diameter,
            spring_back.spacer_width,
        ),
        take.chosen,
    )  # fmt: skip


def _usual_pressure(task, ring_material, values):
    """(wall pressure where none is asked for [MPa], why, Window): what the metal can carry."""
    found = section.window(task)
    for name in TARGETS + ("radial_thickness",):
        if values.get(name) is not None:
            return task.pressure, PRACTICE_WHY, found
    if found.lowest is not None:
        return task.pressure, PRACTICE_WHY, found
    most = ROUNDING_SHARE * section.bearable_pressure(task)
    usual = math.floor(1000.0 * most) / 1000.0 or most
    why = "the most that %s carries with full margins; %s" % (
        in_a_sentence(ring_material.title),
        PRACTICE_WHY,
    )
    return usual, why, section.window(section.at_pressure(task, usual))


def _soak(take, family):
    """(soak temperature, soak time, Relief) of the heat set; a given relief is taken as known."""
    window = soaking.soak_range(family)
    usual = window.usual if window is not None else 100.0
    temperature = take("soak_temperature", usual, "degC", "relieves the metal without spoiling it")
    hours = take("soak_time", DEFAULT_SOAK_TIME, "h", "the first hour does most")
    given = take.values.get("relief")
    if given is not None:
        return temperature, hours, soaking.Relief(given, given, given)
    if window is None:
        expected = soaking.Relief(1.0, 1.0, 1.0)
    else:
        expected = soaking.expected_relief(family, temperature, hours)
    if expected.likely < SMALLEST_RELIEF:
        raise unworkable(
            "soak_temperature",
            "so cold or short a soak relaxes next to nothing: the ring would spring shut again",
            "soak at %s degC for an hour, or give the relief your last ring showed" % int(usual),
        )
    take("relief", expected.likely, "1", "what that soak relaxes; from memory of published figures")
    return temperature, hours, expected


def _piston_diameter(take, bore, piston, cylinder, temperature, wall, shop):
    clearance = clearances.piston_clearance(
        bore=bore,
        piston_expansion=piston.expansion,
        cylinder_expansion=cylinder.expansion,
        piston_temperature=temperature,
        cylinder_temperature=wall,
        shop_temperature=shop,
        margin=clearances.running_piston_clearance(bore),
    )
    diameter = take("piston_diameter", bore - clearance, "mm", "does not seize on a half-warm bore")
    if not 0.8 * bore < diameter < bore:
        raise unworkable(
            "piston_diameter",
            "the piston does not belong to this bore",
            "give a diameter a little less than the bore of " + length(bore),
        )
    return diameter


def _side_clearance(bore, width, piston, temperature, heat):
    return clearances.side_clearance(
        ring_width=width,
        piston_expansion=piston.expansion,
        piston_temperature=temperature,
        margin=clearances.running_side_clearance(bore)[0],
        **heat,
    )


def _width_in_groove(groove, bore, piston, temperature, heat):
    """The ring width whose side clearance fills the groove."""
    width = groove - _side_clearance(bore, groove, piston, temperature, heat)
    if width <= 0.0:
        raise unworkable(
            "groove_width",
            "the groove is narrower than the clearance a ring needs in it",
            "give the width of the groove itself, measured with slips or a ground blade",
        )
    return groove - _side_clearance(bore, width, piston, temperature, heat)


def _saw(least, bore):
    wanted = max(least, min(0.01 * bore, 1.0))
    for saw in SAWS:
        if saw >= wanted:
            return saw
    return _tenths(wanted + 0.1)


def _slit(bore):
    return 0.4 if bore < 30.0 else 0.8 if bore < 60.0 else 1.0 if bore < 150.0 else 1.6


def _tenths(value):
    return math.floor(value * 10.0 + 0.5) / 10.0


def _halves(value):
    return math.floor(value * 2.0 + 0.5) / 2.0


def _rounded_thickness(value):
    """To 0.05 mm, and to 0.1 mm from 5 mm up: what a lathe holds and a micrometer shows."""
    if value < 5.0:
        return math.floor(value * 20.0 + 0.5) / 20.0
    return math.floor(value * 10.0 + 0.5) / 10.0


METHODS = (
    Method(
        "ring-width",
        "Width of the ring and of a turn",
        "plain 1.25 a1; double-turn 2 a1, each turn as wide as thick",
        "width of a turn at most 1.5 thicknesses (Blake)",
        ("practice", "blake"),
    ),
    Method(
        "geometry", "Plain geometry", "inside diameter = d1 - 2 a1", "always", ("neutral-line",)
    ),
    Method(
        "steam-temperature",
        "Steam temperature",
        "saturation at the steam pressure unless a temperature is given",
        "saturated or superheated steam",
        ("iapws-if97",),
    ),
)
