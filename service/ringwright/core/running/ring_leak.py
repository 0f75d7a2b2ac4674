"""All that passes the rings of one piston or valve, with the spread of every coefficient."""

import math
from collections import namedtuple

from ..properties import steam_properties
from ..records import Method
from . import leak, warming

LEVELS = (0, 1, 2)  # every coefficient low, usual, high

# Low, usual, high [kg/h]: through the gap by the flow formula and by Napier's rule, past the side
# face, past a light; all together.
Paths = namedtuple("Paths", ("gap", "napier", "face", "light", "total"))

METHODS = (
    Method(
        "leak-rate",
        "Steam that passes the rings",
        "W = W_gap + W_side + W_light, each the mean over a turn of the crank",
        "rings alike; one path beside another",
        ("orifice", "film", "leak-paths"),
    ),
)


def spread(triple):
    """(low, usual, high), as catalogue.figures_of takes it. triple: those, in either direction."""
    return tuple(sorted(triple))


def paths(given, duty, ring_type, cold_gap, groove_wear, light):
    """What passes the rings as the engine runs warm: Paths.

    given: filled inputs (running_inputs). duty: ring_duty.Duty. ring_type: plain or double-turn.
    cold_gap, groove_wear: of that ring [mm]. light: area of a light between ring and bore [mm2].
    Source: openings of leak.py, pressures of ring_duty.py.
    """
    warm = given["running_temperature"]
    hot_gap, _, clearance = warming.clearances_running(given, cold_gap)
    land = 0.5 * max(clearance, 0.0)
    opening = leak.gap_opening(hot_gap, land)
    shares = leak.gap_share(ring_type, given["end_cut"])
    seat = max(given["radial_thickness"] - land, 0.2 * given["radial_thickness"])
    viscosity = steam_properties.viscosity(warm)
    found = Paths(gap=[], napier=[], face=[], light=[], total=[])
    for level in LEVELS:
        discharge = leak.DISCHARGE[level]
        area = opening * shares[level] * discharge * leak.LAND_PLACE[level]
        film = leak.FACE_FILM[level]
        laminar = leak.face_flow(
            bore=given["bore"],
            cube=leak.film_cubed(film, groove_wear),
            seat=seat,
            squares=duty.squares,
            pressure_volume=given["steam"].pressure * given["steam"].volume,
            viscosity=viscosity,
            number=given["rings_on_piston"],
        )
        # No film passes more than its own wide mouth would as an opening.
        mouth = duty.gap_flow * math.pi * given["bore"] * (film + groove_wear)
        found.gap.append(3600.0 * duty.gap_flow * area)
        found.napier.append(3600.0 * duty.napier_flow * area)
        found.face.append(3600.0 * min(laminar, mouth))
        found.light.append(3600.0 * duty.gap_flow * light * discharge)
        found.total.append(found.gap[level] + found.face[level] + found.light[level])
    return found
