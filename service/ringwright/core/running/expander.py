"""Calculation "expander": a wavy strip or a coil spring in the groove that presses the ring."""

import math
from collections import OrderedDict

from ..catalogue import figures_of
from ..catalogue import inputs as declare
from ..catalogue.expander import ANSWER
from ..catalogue.inputs_expander import COIL, METALS, STRIP
from ..catalogue.inputs_ring import EXPANDER, PRACTICE_PRESSURE, RING
from ..cautions import cautions
from ..clearances.groove import back_clearance
from ..problems import Fault, InputProblem
from ..records import GOOD, STOP, Method, Quantity, finding
from ..ring.design import settle
from ..wording import fine_length, length, stress, temperature, wall_pressure
from . import coil_expander

# Thicknesses strip is rolled to, metric and thou [mm]; common practice, no source.
THICKNESSES = tuple(
    sorted(
        [0.1, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.8, 1.0, 1.2, 1.5]
        + [25.4e-3 * thou for thou in (4, 6, 8, 10, 12, 15, 20, 25, 32)]
    )
)
# Room left beside the strip pressed flat, and the gap at its ends [mm]; common practice.
PLAY = 0.1
ENDS = 2.0
# Waves that may be entered are those that may be taken.
FEWEST, MOST = int(STRIP["strip_waves"].lowest), int(STRIP["strip_waves"].highest)
LEAST_ADDED = 0.005

_RING = (
    "bore", "ring_type", "radial_thickness", "ring_width", "ring_material", "wall_pressure",
    "expander_pressure", "groove_depth", "piston_diameter", "steam_pressure", "steam_temperature",
    "inch_sizes",
)  # fmt: skip
FIELDS = declare.listed((RING,), *_RING) + tuple(STRIP.values())

METHODS = (
    Method(
        "expander",
        "Wavy strip behind a ring",
        "F = pi d1 h1 p_x/N, sigma = 3 pi F D/(4 N b t^2), delta = F (pi D/N)^3/(16 E b t^3)",
        "waves low against their length, touching floor and ring by turns",
        ("beam", "spring-metals", "practice"),
    ),
)


def wave(*, bore, ring_width, diameter, pressure, waves, width, thickness, modulus):
    """(force of a wave [N], stress [N/mm2], deflection [mm]) of a wavy strip.

    A half wave is a beam held level at both ends: F = pi d1 h1 p/N, sigma = 3 F L/(4 b t^2),
    delta = F L^3/(16 E b t^3), L = pi D/N.

    bore, ring_width, diameter (the strip's mean), width, thickness [mm]; pressure, modulus
    [N/mm2]; waves [1].
    Source: beam theory, worked out here.
    """
    force = math.pi * bore * ring_width * pressure / waves
    pitch = math.pi * diameter / waves
    bent = 3.0 * force * pitch / (4.0 * width * thickness * thickness)
    return force, bent, force * pitch**3 / (16.0 * modulus * width * thickness**3)


def fewest_waves(sizes, limit):
    """Fewest waves with which the stress is at most `limit` [N/mm2]; it falls as their square.

    sizes: those of `wave` but waves.
    """
    one = wave(waves=1, **sizes)[1]
    return max(FEWEST, int(math.ceil(math.sqrt(one / limit) - 1e-9)))


def _through(design):
    """The Fault of a groove that leaves nothing of the piston to lie a strip on."""
    return Fault(
        ("groove_depth",),
        "size",
        "the groove is %s deep, and the piston %s across: it goes through the middle"
        % (length(design.groove_depth), length(design.piston_diameter)),
        "give a groove less deep: the ring is %s thick" % length(design.section.thickness),
    )


def calculate(values):
    """A spring behind the ring: figures, findings, chosen, cautions and "strips".

    values: checked values of FIELDS, a plain dict in core units. Raises InputProblem.
    """
    design, ring_chosen = settle(values)
    choose = declare.Chooser(values, STRIP, RING)
    room = back_clearance(
        bore=design.duty.bore,
        piston_diameter=design.piston_diameter,
        radial_thickness=design.section.thickness,
        depth=design.groove_depth,
    )
    if 2.0 * design.groove_depth >= design.piston_diameter:
        raise InputProblem([_through(design)])
    lacking = max(LEAST_ADDED, PRACTICE_PRESSURE - design.spring.wall_pressure)
    added = choose("expander_pressure", lacking, case=EXPANDER)
    metal = METALS[choose("strip_material")]
    rows = []
    if choose("expander_kind") == COIL:
        figures, given, findings = coil_expander.sized(choose, metal, design, added, room, PLAY)
    else:
        figures, given, findings = _strip(choose, metal, design, added, room, rows)
    hottest = metal[2]
    findings.append(
        _judged(
            "strip-heat",
            design.duty.temperature,
            hottest,
            design.duty.temperature <= hottest,
            "degC",
            "The steam has %s; the spring keeps its force to about %s."
            % (temperature(design.duty.temperature), temperature(hottest)),
            "Take stainless-spring up to 250 C (482 F); beyond that ask the maker of the spring "
            "for a heat-resisting alloy.",
        )
    )
    return OrderedDict(
        (
            ("figures", figures_of(ANSWER, figures, given)),
            ("findings", findings),
            ("strips", rows),
            ("chosen", [one for one in ring_chosen if one.input in _RING] + choose.chosen),
            ("cautions", cautions("figures", "isolate", "stored-spring")),
        )
    )


def _strip(choose, metal, design, added, room, rows):
    """(figures, their symbols, list of Finding) of a wavy strip; `rows` gets those that fit."""
    modulus, bears, _ = metal
    sizes = {
        "bore": design.duty.bore,
        "ring_width": design.section.width,
        "diameter": design.inside_diameter - max(room, 0.0),
        "pressure": added,
        "width": choose("strip_width", design.section.width),
        "modulus": modulus,
    }
    fits, farthest = THICKNESSES[0], 0.0
    for thickness in THICKNESSES:
        if thickness + PLAY > room:
            break
        waves = fewest_waves(dict(sizes, thickness=thickness), bears)
        if waves > MOST:
            continue
        _, bent, low = wave(waves=waves, thickness=thickness, **sizes)
        if low > farthest:
            fits, farthest = thickness, low
        rows.append(
            OrderedDict(
                (
                    ("strip_thickness", Quantity(thickness, "mm")),
                    ("strip_waves", waves),
                    ("strip_stress", Quantity(bent, "MPa")),
                    ("wave_height", Quantity(room - thickness + low, "mm")),
                )
            )
        )
    sizes["thickness"] = choose("strip_thickness", fits)
    least = fewest_waves(sizes, bears)
    waves = choose("strip_waves", min(least, MOST))
    force, bent, low = wave(waves=waves, **sizes)
    needed = sizes["thickness"] + PLAY
    figures = {
        "expander_room": room,
        "total_wall_pressure": design.spring.wall_pressure + added,
        "wave_force": force,
        "strip_stress": bent,
        "wave_height": max(room - sizes["thickness"], 0.0) + low,
        "strip_length": math.pi * sizes["diameter"] - ENDS,
    }
    given = {"p": design.spring.wall_pressure, "p_x": added, "h1": design.section.width, "N": waves,
             "D": sizes["diameter"], "b": sizes["width"], "t": sizes["thickness"],
             "E": modulus}  # fmt: skip
    findings = [
        _judged(
            "strip-room",
            room,
            needed,
            room >= needed - 1e-9,
            "mm",
            "Behind the ring are %s; the strip and its play need %s."
            % (fine_length(room), fine_length(needed)),
            "Turn the groove to a depth of at least %s, or take a thinner strip."
            % fine_length(math.ceil(1000.0 * (design.groove_depth + needed - room)) / 1000.0),
        ),
        _judged(
            "strip-stress",
            bent,
            bears,
            bent <= bears * (1.0 + 1e-9),
            "MPa",
            "Pressing with %s, the strip sees %s; it bears %s."
            % (wall_pressure(added), stress(bent), stress(bears)),
            "Give it at least %d waves, or ask less of it." % least
            if least <= MOST
            else "Take a thicker or a wider strip, or ask less of it.",
        ),
    ]
    return figures, given, findings


def _judged(check, value, limit, good, unit, said, remedy):
    outcome = GOOD if good else STOP
    told = (Quantity(value, unit), Quantity(limit, unit))
    return finding(check, outcome, said, "" if good else remedy, *told)
