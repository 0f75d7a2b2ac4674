"""Force and moment balance of every answer of wall-pressure, over the whole range of its inputs.

The forces are taken as a user gets them, pressure row and concentrated forces, and put on the strip
afresh: their resultant must be nil, and their moment about every section must be the moment shown.
The pressure is a row of steps, so the tolerance goes with the square of the step.
"""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as any_of

from ringwright.core import calculations
from ringwright.core.problems import InputProblem

TURN = 2.0 * math.pi


def numbers(low, high):
    return any_of.floats(low, high, allow_nan=False, allow_infinity=False)


def spread_over_decades(low, high):
    return numbers(math.log(low), math.log(high)).map(math.exp)


LOBES = any_of.lists(
    any_of.fixed_dictionaries(
        {
            "order": any_of.integers(2, 12),
            "amplitude": spread_over_decades(1e-4, 1.0),
            "phase": numbers(-180.0, 180.0),
        }
    ),
    max_size=3,
)


@any_of.composite
def requests(draw):
    bore = draw(spread_over_decades(10.0, 900.0))
    plain = draw(any_of.booleans())
    request = {
        "bore": bore,
        "ring_type": "plain" if plain else "double-turn",
        "radial_thickness": min(max(0.3, bore / draw(numbers(8.0, 80.0))), 60.0),
        "ring_width": draw(spread_over_decades(1.0, 60.0)),
        "setting": draw(any_of.sampled_from(["bound", "sprung", "spread"])),
        "finishing": draw(any_of.sampled_from(["closing-ring", "forced-round", "band"])),
        "wall_pressure": draw(spread_over_decades(0.002, 0.3)),
        "modulus": draw(spread_over_decades(5000.0, 210000.0)),
        "pressure_behind": draw(any_of.sampled_from([0.0, 0.01, 0.1, 1.0, 10.0])),
        "gap_direction": draw(numbers(0.0, 360.0)),
        "steps_per_turn": draw(any_of.sampled_from([90, 120, 200, 360])),
    }
    lobes = draw(LOBES)
    if lobes:
        request["bore_shape"] = {"harmonics": lobes}
    return request


@settings(max_examples=200, deadline=None, derandomize=True, database=None)
@given(requests())
def test_every_answer_balances(request):
    try:
        answer = calculations.run("wall-pressure", request)
    except InputProblem as problem:
        # A ring too springy to be made, or lobes larger than a twentieth of the bore.
        assert all(fault.remedy for fault in problem.faults)
        return
    check_balance(request, answer)


def check_balance(request, answer):
    turns = answer["turns"]
    angles = turns[0]["angle"]["values"]
    step = math.radians(angles[1] - angles[0])
    width = request["ring_width"] / len(turns)
    face = 0.5 * request["bore"] * width
    pushed = pressed(answer, step, face)
    steam = request["pressure_behind"] * face
    total = sum(force for _, force in pushed)
    assert total == pytest.approx(answer["figures"]["wall_force"]["value"], rel=1e-6, abs=1e-9)
    size = total + steam * TURN
    coarse = step * step / math.radians(1.0) ** 2
    assert abs(sum(f * math.cos(a) for a, f in pushed)) <= 1e-4 * coarse * size
    assert abs(sum(f * math.sin(a) for a, f in pushed)) <= 1e-4 * coarse * size

    radius = 0.5 * (request["bore"] - request["radial_thickness"])
    shown = moments(turns)
    biggest = max(max(abs(m) for m in shown), steam * radius)
    length = TURN * len(turns)
    for part in (0.11, 0.25, 0.4, 0.5, 0.63, 0.9, 1.0):
        at = round(part * (len(shown) - 1))
        angle = length * at / (len(shown) - 1)
        moment = sum(f * math.sin(angle - a) for a, f in pushed if a < angle)
        moment -= steam * (1.0 - math.cos(angle))
        assert moment * radius == pytest.approx(shown[at], abs=1e-3 * coarse * biggest)


def pressed(answer, step, face):
    """(angle along the strip, force) of everything that pushes the ring inwards."""
    pushed = []
    for index, turn in enumerate(answer["turns"]):
        last = index == len(answer["turns"]) - 1
        row = turn["pressure"]["values"]
        for i, pressure in enumerate(row if last else row[:-1]):
            pushed.append((index * TURN + i * step, pressure * face * step))
    for point in answer["point_forces"]:
        place = (point["turn"] - 1) * TURN + math.radians(point["angle"]["value"])
        pushed.append((place, point["force"]["value"]))
    return pushed


def moments(turns):
    row = list(turns[0]["moment"]["values"])
    for turn in turns[1:]:
        row.extend(turn["moment"]["values"][1:])
    return row
