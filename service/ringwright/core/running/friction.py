"""Friction of rings: spring and steam press them out, the piston drags them along."""

import math

from ..catalogue.inputs_engine import FILLED_PTFE, OILED_IRON
from ..records import Method

# Coefficient between ring and bore, oiled, and of filled PTFE against metal, wet or dry.
COEFFICIENT = OILED_IRON
PLASTIC_COEFFICIENT = FILLED_PTFE
# Share of the pressure across a ring that presses it on the wall. Full pressure stands behind it;
# on its face it falls from one side to the other, straight for a ring that bears all over.
STEAM_SHARE = (0.25, 0.50, 1.00)

METHODS = (
    Method(
        "wall-load",
        "Mean pressure on the wall with steam behind",
        "p + share * dp/n for each of n rings; share 0.25 to 1, 0.5 for a face that bears all over",
        "pressure across the rings shared alike",
        ("ring-load",),
    ),
    Method(
        "friction-power",
        "Power that ring friction takes",
        "mu (n p + share * dp) pi d1 h1 * mean piston speed",
        "mu 0.05 to 0.15, about 0.1",
        ("khurmi", "ring-load"),
    ),
    Method(
        "mean-piston-speed",
        "Mean piston speed",
        "v = 2 * stroke * speed",
        "any crank",
        ("geometry",),
    ),
    Method(
        "sliding-distance",
        "Distance slid in an hour",
        "120 * stroke * speed",
        "any crank",
        ("geometry",),
    ),
)


def mean_piston_speed(stroke, speed):
    """2 * stroke * speed [m/s]. stroke [mm]. speed [1/min]."""
    return 2.0 * stroke * speed / 60000.0


def sliding_distance(stroke, speed):
    """Distance a ring slides in an hour of running [m]. stroke [mm]. speed [1/min]."""
    return 0.12 * stroke * speed


def wall_load(wall_pressure, difference, rings, share):
    """Mean pressure of one ring on the wall with steam behind it [MPa].

    p + share * (p1 - p2)/n

    wall_pressure: of the ring's spring, p [MPa]. difference: mean pressure across all the rings
    [MPa]. rings: n. share: of that pressure that presses outward [1], 0 to 1.
    Source: balance of the pressures on the ring, derived.
    """
    return wall_pressure + share * difference / rings


def friction_power(
    *, coefficient, wall_pressure, difference, rings, share, bore, width, piston_speed
):
    """Power that ring friction takes [W].

    mu (n p + share * (p1 - p2)) pi d1 h1 v: the steam's part is the same
    however many rings share it.

    coefficient: mu [1]. wall_pressure: p [MPa]. difference: mean over the stroke of the pressure
    across all the rings [MPa]. rings: n. share [1]. bore, width of one ring [mm].
    piston_speed: mean [m/s].
    Source: Khurmi and Gupta give mu about 0.1.
    """
    pressed = rings * wall_pressure + share * difference
    return coefficient * pressed * math.pi * bore * width * piston_speed
