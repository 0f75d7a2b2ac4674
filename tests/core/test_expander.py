"""The strip behind a ring: against a beam of elements, what is printed, and its own remedies."""

import math
import random

import numpy
import pytest

from ringwright.core import calculations
from ringwright.core.catalogue.inputs_expander import METALS
from ringwright.core.catalogue.inputs_expander import STRIP as STRIP_INPUTS
from ringwright.core.fields import checked
from ringwright.core.problems import InputProblem
from ringwright.core.running.expander import wave

STRIP = {
    "bore": 100.0,
    "ring_width": 6.0,
    "diameter": 88.0,
    "pressure": 0.04,
    "waves": 10,
    "width": 5.0,
    "thickness": 0.3,
    "modulus": 206000.0,
}


def beam(length, inertia, modulus, load, parts=16):
    """(deflection, greatest moment) of a beam built in at both ends, load in the middle."""
    size = length / parts
    stiff = numpy.zeros((2 * parts + 2, 2 * parts + 2))
    one = (modulus * inertia / size**3) * numpy.array(
        [
            [12, 6 * size, -12, 6 * size],
            [6 * size, 4 * size**2, -6 * size, 2 * size**2],
            [-12, -6 * size, 12, -6 * size],
            [6 * size, 2 * size**2, -6 * size, 4 * size**2],
        ]
    )
    for part in range(parts):
        stiff[2 * part : 2 * part + 4, 2 * part : 2 * part + 4] += one
    push = numpy.zeros(2 * parts + 2)
    push[parts] = load
    moved = numpy.zeros_like(push)
    moved[2:-2] = numpy.linalg.solve(stiff[2:-2, 2:-2], push[2:-2])
    return moved[parts], numpy.abs((one @ moved[:4])[[1, 3]]).max()


@pytest.mark.parametrize("waves", [4, 10, 30])
@pytest.mark.parametrize("thickness", [0.15, 0.6])
def test_a_wave_is_a_beam_built_in_at_both_ends(waves, thickness):
    strip = {**STRIP, "waves": waves, "thickness": thickness}
    force, bent, low = wave(**strip)
    inertia = 5.0 * thickness**3 / 12.0
    moved, moment = beam(math.pi * 88.0 / waves, inertia, 206000.0, force)
    assert low == pytest.approx(moved, rel=1e-6)
    assert bent == pytest.approx(moment * thickness / 2.0 / inertia, rel=1e-6)


def test_stress_is_that_printed_for_wave_springs():
    # A spring maker's page of formulas, read: S = 3 pi P D/(4 b t^2 N^2), P the whole load,
    # N waves, one turn.
    _, bent, _ = wave(**STRIP)
    whole = 0.04 * math.pi * 100.0 * 6.0
    assert bent == pytest.approx(3 * math.pi * whole * 88.0 / (4 * 5.0 * 0.3**2 * 10**2), rel=1e-9)


def asked(**more):
    request = {"bore": 80.0, "ring_type": "plain", "ring_material": "phosphor-bronze", **more}
    return calculations.run("expander", request)


def outcome(answer, check):
    return next(row for row in answer["findings"] if row["check"] == check)


def test_forces_of_all_waves_are_the_pressure_on_the_wall():
    answer = asked(expander_pressure=0.03, ring_width=5.0, strip_waves=12, groove_depth=6.0)
    total = 12 * answer["figures"]["wave_force"]["value"]
    assert total / (math.pi * 80.0 * 5.0) == pytest.approx(0.03, rel=1e-9)


@pytest.mark.parametrize("pressure", [0.01, 0.03, 0.08])
@pytest.mark.parametrize("metal", METALS)
def test_enough_waves_clear_the_stress(pressure, metal):
    given = {
        "expander_pressure": pressure,
        "strip_material": metal,
        "groove_depth": 7.0,
        "strip_thickness": 0.2,
    }
    bad = outcome(asked(strip_waves=3, **given), "strip-stress")
    assert bad["outcome"] == "stop"
    waves = int(bad["remedy"].split("at least ")[1].split()[0])
    assert outcome(asked(strip_waves=waves, **given), "strip-stress")["outcome"] == "good"
    assert outcome(asked(strip_waves=waves - 1, **given), "strip-stress")["outcome"] == "stop"


def test_no_more_waves_are_asked_than_may_be_entered():
    given = {"expander_pressure": 0.4, "strip_thickness": 0.05, "groove_depth": 7.0}
    bad = outcome(asked(**given), "strip-stress")
    assert bad["outcome"] == "stop"
    assert "waves" not in bad["remedy"] and "thicker" in bad["remedy"]


def test_a_deeper_groove_clears_the_room():
    given = {"strip_thickness": 0.8, "radial_thickness": 3.0}
    bad = outcome(asked(groove_depth=3.2, **given), "strip-room")
    assert bad["outcome"] == "stop"
    depth = float(bad["remedy"].split("at least ")[1].split()[0])
    assert outcome(asked(groove_depth=depth, **given), "strip-room")["outcome"] == "good"


def test_carbon_steel_slackens_in_hot_steam():
    hot = asked(strip_material="carbon-spring-steel", steam_pressure=1.0)
    assert outcome(hot, "strip-heat")["outcome"] == "stop"
    assert outcome(asked(steam_pressure=1.0), "strip-heat")["outcome"] == "good"


@pytest.mark.parametrize("depth", [3.5, 4.5, 6.0])
def test_the_strip_taken_loses_least_of_its_pressure_by_wear(depth):
    """Pressure falls as the deflection does: the one that gives way farthest keeps most."""
    answer = asked(groove_depth=depth)
    room = answer["figures"]["expander_room"]["value"]
    gives = {
        row["strip_thickness"]["value"]: row["wave_height"]["value"]
        - (room - row["strip_thickness"]["value"])
        for row in answer["strips"]
    }
    taken = next(c["value"] for c in answer["chosen"] if c["input"] == "strip_thickness")
    assert gives[taken] == pytest.approx(max(gives.values()), rel=1e-9)


def test_every_strip_offered_serves():
    answer = asked(groove_depth=6.0)
    assert answer["strips"]
    for row in answer["strips"]:
        chosen = {name: row[name]["value"] for name in ("strip_thickness",)}
        tried = asked(groove_depth=6.0, strip_waves=row["strip_waves"], **chosen)
        assert outcome(tried, "strip-stress")["outcome"] == "good"
        assert outcome(tried, "strip-room")["outcome"] == "good"


def test_the_row_of_the_strip_taken_is_the_strip_as_it_is_worked():
    answer = asked(groove_depth=6.0)
    taken = {one["input"]: one["value"] for one in answer["chosen"]}
    row = next(
        one
        for one in answer["strips"]
        if one["strip_thickness"]["value"] == pytest.approx(taken["strip_thickness"])
    )
    assert row["strip_waves"] == taken["strip_waves"]
    for name in ("strip_stress", "wave_height"):
        assert row[name]["value"] == pytest.approx(answer["figures"][name]["value"], rel=1e-6)


def test_room_behind_the_ring_by_hand():
    """4 mm deep, a ring of 3 mm, half of half a millimetre between piston and bore: 1.25 mm."""
    answer = asked(groove_depth=4.0, radial_thickness=3.0, piston_diameter=79.5)
    assert answer["figures"]["expander_room"]["value"] == pytest.approx(1.25)


def ring_of(**more):
    return {"bore": 80.0, "ring_type": "plain", "ring_material": "filled-ptfe-carbon", **more}


def test_an_expander_clears_what_the_ring_lacks():
    """The strip that the expander's calculation sizes, behind the ring that sizing stops."""
    bare = calculations.run("sizing", ring_of())
    slack = outcome(bare, "too-slack")
    assert slack["outcome"] == "stop" and "expander" in slack["remedy"]
    strip = calculations.run("expander", ring_of())
    added = next(c["value"] for c in strip["chosen"] if c["input"] == "expander_pressure")
    fitted = calculations.run("sizing", ring_of(expander_pressure=added))
    pressed = outcome(fitted, "wall-pressure")
    # 6 to 8 lbf/in2 is practice (Walshaw): 0.041 to 0.055 N/mm2.
    assert pressed["outcome"] == "good" and 0.041 <= pressed["value"]["value"] <= 0.055
    own = fitted["figures"]["wall_pressure"]["value"]
    assert own == bare["figures"]["wall_pressure"]["value"]
    total = fitted["figures"]["total_wall_pressure"]["value"]
    assert total == pytest.approx(own + added, rel=1e-12)
    assert total == strip["figures"]["total_wall_pressure"]["value"]
    assert "total_wall_pressure" not in bare["figures"]
    strong = calculations.run("sizing", ring_of(expander_pressure=0.25))
    assert outcome(strong, "too-stiff")["outcome"] == "stop"


def test_the_expander_rubs_as_well():
    """mu (n p + share dp) pi d1 h1 v: by p_x more each ring takes mu pi d1 h1 v p_x more."""
    engine = ring_of(stroke=90.0, speed=300.0, ring_width=4.0, rings_on_piston=2)
    engine["friction_coefficient"] = 0.1
    power = [
        calculations.run("running", {**engine, **more})["figures"]["friction_power"]["value"]
        for more in ({}, {"expander_pressure": 0.04})
    ]
    speed = 2.0 * 90.0 * 300.0 / 60000.0
    assert power[1] - power[0] == pytest.approx(
        0.1 * 2 * 0.04 * math.pi * 80.0 * 4.0 * speed, rel=1e-9
    )


def test_waves_have_one_pair_of_bounds():
    """As many waves as may be entered may be taken, and no others."""
    field = STRIP_INPUTS["strip_waves"]
    thin = {"strip_thickness": 0.05, "groove_depth": 7.0}
    taken = set()
    for pressure in (0.001, 0.005, 0.01, 0.02, 0.03, 0.05, 0.08, 0.12):
        answer = asked(expander_pressure=pressure, **thin)
        taken.add(next(c["value"] for c in answer["chosen"] if c["input"] == "strip_waves"))
        for row in answer["strips"]:
            assert field.lowest <= row["strip_waves"] <= field.highest
    assert min(taken) < 60 < max(taken) <= field.highest


def worked(given):
    calculation = calculations.CALCULATIONS["expander"]
    return calculation.run(checked(calculation.fields, given))


@pytest.mark.parametrize("depth", [40.0, 45.0, 60.0])
def test_a_groove_through_the_middle_is_refused_with_its_remedy(depth):
    """It was an error of the service's own: the root of a length below nought."""
    with pytest.raises(InputProblem) as refused:
        worked({"bore": 80.0, "groove_depth": depth})
    (fault,) = refused.value.faults
    assert fault.path == ("groove_depth",)
    assert "through the middle" in fault.message
    assert "ring is" in fault.remedy


def test_every_groove_that_the_inputs_allow_is_answered_or_refused():
    dice = random.Random(5)
    for _ in range(300):
        given = {"bore": dice.uniform(10.0, 900.0), "groove_depth": dice.uniform(0.3, 100.0)}
        given["ring_type"] = dice.choice(("plain", "double-turn"))
        try:
            answer = worked(given)
        except InputProblem:
            continue
        assert all(math.isfinite(figure.value) for figure in answer["figures"].values())
