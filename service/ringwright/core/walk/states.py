"""A ring between two operations, and what each operation makes of it: state in, state out.

What is carried from one operation to the next is the metal: its length along the neutral line, its
thickness and width, and the round shape the heat left it in. Whatever the ring is held in, circle
less gap is that length. Of a double-turn ring the length is of one turn, and its gap that of each
turn. All mm; gaps along the circumference.
"""

import math
from collections import namedtuple

from ..ring import heat_set

# thickness, width, metal: as above. outside, gap: of the ring as it lies now, round; gap 0 is a
# tube. free_radius: of the neutral line when nothing holds it, None for a tube and a ring that a
# spacer set; free_gap: of a sawn ring when nothing holds it, None for a tube or where free_radius
# tells.
State = namedtuple(
    "State",
    ("thickness", "width", "metal", "outside", "gap", "free_radius", "free_gap"),
)


def _changed(state, **changes):
    values = [changes.get(name, value) for name, value in zip(_NAMES, state)]
    return State(*values)


_NAMES = ("thickness", "width", "metal", "outside", "gap", "free_radius", "free_gap")


def bore_and_turn(inside_diameter, outside_diameter, length):
    """The State of a tube, bored, turned and parted off [mm]."""
    thickness = 0.5 * (outside_diameter - inside_diameter)
    metal = math.pi * (outside_diameter - thickness)
    return State(
        thickness=thickness,
        width=length,
        metal=metal,
        outside=outside_diameter,
        gap=0.0,
        free_radius=None,
        free_gap=None,
    )


def saw(state, taken):
    """A tube, or each turn of a slit one, sawn through; it keeps its shape. taken [mm]."""
    neutral = 0.5 * (state.outside - state.thickness)
    return _changed(
        state, metal=state.metal - taken, gap=taken, free_radius=neutral, free_gap=taken
    )


def set_on_former(state, former_diameter, growth, relief):
    """The sawn ring heat-set open on a round former, cold again and off it.

    former_diameter: cold [mm]. growth: heat_set.hot_growth. relief: 0 to 1.
    """
    former = 0.5 * former_diameter * growth + 0.5 * state.thickness
    free = heat_set.set_radius(state.free_radius, former, relief)
    return _changed(state, free_radius=free, free_gap=None)


def set_with_spacer(state, spacer, relief):
    """The sawn ring heat-set, its gap held open. spacer: along the ring [mm]. relief: 0 to 1."""
    gap = state.free_gap + relief * (spacer - state.free_gap)
    return _changed(state, free_radius=None, free_gap=gap)


def face(state, width):
    """Both sides faced to the finished width [mm]; the step at a bridge goes with it."""
    return _changed(state, width=width)


def close(state, diameter):
    """The ring pushed into a round hole of that diameter [mm]: a closing ring, a pot, the bore."""
    gap = math.pi * (diameter - state.thickness) - state.metal
    return _changed(state, outside=diameter, gap=gap)


def close_to_gap(state, gap):
    """The ring closed round until so much gap is left [mm]: in a closing ring bored to suit."""
    return _changed(state, outside=(state.metal + gap) / math.pi + state.thickness, gap=gap)


def turn(state, diameter):
    """The outside turned to a diameter while the ring is clamped as it lies [mm]."""
    thickness = state.thickness - 0.5 * (state.outside - diameter)
    return _thinned(state, thickness, diameter, -0.5)


def bore(state, diameter):
    """The inside bored to a diameter while the ring is clamped as it lies [mm]."""
    return _thinned(state, 0.5 * (state.outside - diameter), state.outside, 0.5)


def _thinned(state, thickness, outside, way):
    """Metal taken off the outside (way -0.5) or inside (0.5) moves the neutral line that way."""
    free = state.free_radius
    if free is not None:
        free += way * (state.thickness - thickness)
    metal = math.pi * (outside - thickness) - state.gap
    return _changed(state, thickness=thickness, outside=outside, metal=metal, free_radius=free)


def dress(state, taken):
    """So much taken off both ends together [mm]."""
    free_gap = None if state.free_gap is None else state.free_gap + taken
    return _changed(state, metal=state.metal - taken, gap=state.gap + taken, free_gap=free_gap)


def curvature_change(state):
    """kappa0 of a ring set on a former, where it lies now [1/mm]; None for one spread."""
    if state.free_radius is None:
        return None
    return 2.0 / (state.outside - state.thickness) - 1.0 / state.free_radius


def gap_change(state, setting, turns):
    """How much the gap opens from where the ring lies now to free, along the neutral line [mm].

    setting: bound, sprung or spread. turns: 1 or 2.
    """
    if state.free_radius is None:
        return state.free_gap - state.gap
    change = curvature_change(state)
    return heat_set.gap_of_curvature(change, state.outside, state.thickness, setting, turns)
