"""What a ring sees over one turn of the crank: pressures across it, and the flow they would drive.

The piston is taken to move in simple harmonic motion. In a double-acting cylinder one end works
while the other exhausts, so that half a turn tells all; in a single-acting one the other side is
open to the air.
"""

import math
from collections import namedtuple

from ..records import Method
from . import leak, steam_cycle

STEPS = 24  # crank positions to half a turn
LEAST_DIFFERENCE = 1e-9  # share of the pressure below which nothing flows

# gap_flow, napier_flow: mean over time through one square millimetre of each of the rings in series
#   [kg/s per mm2]; squares: mean of p1^2 - p2^2 over time [MPa2];
# mean_difference: over the distance slid [MPa].
Duty = namedtuple("Duty", ("gap_flow", "napier_flow", "squares", "mean_difference"))

METHODS = (
    Method(
        "ring-duty",
        "Pressure across the ring over one turn",
        "means over the crank angle, for flow, and over the distance slid, for friction, of the "
        "stated cycle's pressures on the two sides of the piston",
        "simple harmonic motion; single-acting: the other side at the air's pressure",
        ("hyperbolic", "orifice"),
    ),
)


def ring_duty(stated, *, double_acting, rings, k, pressure_volume, atmosphere):
    """Means over a turn of the crank for `rings` like rings in series: a Duty.

    stated: steam_cycle.Cycle. double_acting: True or False. rings: 1 to 12. k: exponent of the
    steam [1]. pressure_volume: p v of the steam admitted [MPa m3/kg]. atmosphere [MPa].
    Napier's rule knows one opening only: its figure is brought down as the formula's is.
    Source: the stated cycle; flow through openings.
    """
    series = leak.throttles_in_series(rings, k)
    speed = 1e-3 / math.sqrt(pressure_volume)
    flow = napier = squares = difference = weight = 0.0
    turns = 1 if double_acting else 2
    for half in range(turns):
        for step in range(STEPS):
            angle = (step + 0.5) * math.pi / STEPS
            travel = 0.5 * (1.0 - math.cos(angle))
            slid = math.sin(angle)
            weight += slid
            one = steam_cycle.pressure_outward(stated, travel)
            other = steam_cycle.pressure_returning(stated, travel)
            if not double_acting:
                one, other = other if half else one, atmosphere
            high, low = max(one, other), min(one, other)
            across = high - low
            difference += slid * across
            # Air above the steam presses a ring as well, but no steam leaks.
            if across <= LEAST_DIFFERENCE * high or not double_acting and one < other:
                continue
            number = leak.series_flow(series, low / high)
            flow += speed * high * number
            one_opening = leak.napier_flow(1.0, high, low)
            if rings > 1:
                one_opening *= number / leak.flow_number(low / high, k)
            napier += one_opening
            squares += across * (high + low)
    count = turns * STEPS
    return Duty(
        gap_flow=flow / count,
        napier_flow=napier / count,
        squares=squares / count,
        mean_difference=difference / weight,
    )


def steady_duty(pressure, back_pressure, rings, k, pressure_volume):
    """The same for rings between two steady pressures, as in a piston valve: a Duty.

    pressure, back_pressure: absolute [MPa], the first the higher. rings: 1 to 12. k: exponent [1].
    pressure_volume: p v of the steam [MPa m3/kg].
    """
    ratio = back_pressure / pressure
    number = leak.series_flow(leak.throttles_in_series(rings, k), ratio)
    across = pressure - back_pressure
    one_opening = leak.napier_flow(1.0, pressure, back_pressure)
    return Duty(
        gap_flow=1e-3 * pressure * number / math.sqrt(pressure_volume),
        napier_flow=one_opening * number / leak.flow_number(ratio, k),
        squares=across * (pressure + back_pressure),
        mean_difference=across,
    )
