"""The running engine as its owner meets it: balances, spreads, words, and refusals."""

import math
import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from ringwright.core import calculations, fields
from ringwright.core.problems import InputProblem
from ringwright.core.properties.materials import material
from ringwright.core.properties.steam import saturation_temperature
from ringwright.core.ring.design import settle
from ringwright.core.running import ring_at_hand, running, running_inputs, warming

STEADY = settings(derandomize=True, deadline=None, max_examples=25)
# The demonstration engine: the launch Marigold of the invented Fernhollow Steam Club.
MARIGOLD = {"bore": 80.0, "stroke": 90.0, "speed": 300.0, "steam_pressure": 0.7}


def run(**more):
    return calculations.run("running", {**MARIGOLD, **more})


def rows(answer):
    return {row["ring"]: row for row in answer["comparison"]}


def outcomes(answer):
    return {found["check"]: found["outcome"] for found in answer["findings"]}


def spreads(node):
    """Every figure with a low and a high, anywhere in an answer."""
    if isinstance(node, dict):
        if "low" in node and "high" in node and "value" in node:
            yield node
        for child in node.values():
            yield from spreads(child)
    elif isinstance(node, list):
        for child in node:
            yield from spreads(child)


def test_four_sizes_are_enough_and_every_other_input_is_said():
    answer = run()
    chosen = {entry["input"] for entry in answer["chosen"]}
    for name in (
        "acting",
        "cut_off",
        "clearance_volume",
        "back_pressure",
        "rings_on_piston",
        "ring_width",
        "worn_gap",
        "friction_coefficient",
        "missing_quantity",
        "wall_pressure",
    ):
        assert name in chosen
    assert set(rows(answer)) == {"now", "plain", "double-turn"}
    assert all(entry["why"] for entry in answer["chosen"])


@pytest.mark.parametrize(
    "more",
    [
        {},
        {"worn_gap": 2.0, "groove_wear": 0.1, "light": 0.05, "light_length": 40.0},
        {"acting": "single", "ring_type": "plain", "steam_temperature": 300.0},
        {"steam_measured": 70.0},
    ],
)
def test_every_figure_that_rests_on_a_coefficient_lies_between_its_low_and_high(more):
    answer = run(**more)
    found = list(spreads(answer))
    assert len(found) > 20
    for entry in found:
        assert entry["low"] <= entry["value"] <= entry["high"]
    for name in (
        "leak_rate",
        "leak_share",
        "indicated_power",
        "friction_power",
        "wall_pressure_with_steam",
    ):
        assert answer["figures"][name]["low"] < answer["figures"][name]["high"]


@STEADY
@given(st.floats(0.0, 8.0), st.floats(0.05, 4.0), st.sampled_from(["plain", "double-turn"]))
def test_more_gap_leaks_more(gap, more, ring_type):
    # A gap closes a little as it warms, so that a very small one may be shut already.
    less = run(worn_gap=gap, ring_type=ring_type)["figures"]["leak_rate"]
    larger = run(worn_gap=gap + more, ring_type=ring_type)["figures"]["leak_rate"]
    assert larger["value"] > less["value"]
    assert larger["high"] > less["high"]


@STEADY
@given(st.floats(0.1, 1.5), st.floats(1.1, 2.0))
def test_more_pressure_leaks_more(pressure, more):
    sizes = {"worn_gap": 1.0, "piston_diameter": 79.6, "closed_gap": 0.3, "side_clearance": 0.04}
    less = run(steam_pressure=pressure, **sizes)["figures"]["leak_rate"]
    larger = run(steam_pressure=pressure * more, **sizes)["figures"]["leak_rate"]
    assert larger["value"] > less["value"]


@pytest.mark.parametrize("ring_type", ["plain", "double-turn"])
def test_no_gap_leaks_nothing_through_the_gap(ring_type):
    figures = run(worn_gap=0.0, ring_type=ring_type)["figures"]
    for name in ("gap_leak", "gap_leak_napier"):
        assert figures[name]["value"] == figures[name]["high"] == 0.0
    # The side face is another way, and stays open.
    assert figures["leak_rate"]["value"] > 0.0


@STEADY
@given(st.floats(0.3, 6.0), st.floats(78.5, 79.8), st.floats(0.0, 0.2))
def test_steam_balances(gap, piston, groove):
    answer = run(worn_gap=gap, piston_diameter=piston, groove_wear=groove, ring_type="plain")
    figures, side_by_side = answer["figures"], rows(answer)
    for row in side_by_side.values():
        whole = sum(row[way]["value"] for way in ("gap_leak", "side_face_leak", "light_leak"))
        assert row["leak_rate"]["value"] == pytest.approx(whole, rel=1e-12)
        assert row["leak_share"]["value"] * row["steam_use"]["value"] == pytest.approx(
            row["leak_rate"]["value"], rel=1e-12
        )
    saved = figures["steam_saved"]["value"]
    now, new = side_by_side["now"], side_by_side["plain"]
    assert now["leak_rate"]["value"] - new["leak_rate"]["value"] == pytest.approx(saved, abs=1e-12)
    # What new rings save is what the boiler need no longer make.
    assert now["steam_use"]["value"] - new["steam_use"]["value"] == pytest.approx(saved, abs=1e-9)


def test_heat_balances():
    figures = run(steam_measured=70.0)["figures"]
    assert figures["heat_supplied"]["value"] == pytest.approx(
        figures["indicated_power"]["value"] + figures["heat_carried_away"]["value"], rel=1e-12
    )


@STEADY
@given(
    st.floats(0.1, 2.0),
    st.floats(0.05, 0.95),
    st.floats(0.0, 0.3),
    st.floats(0.01, 0.3),
    st.floats(0.0, 200.0),
)
def test_no_engine_beats_carnot(pressure, cut_off, back, clearance, superheat):
    boiling = saturation_temperature(pressure)
    answer = run(
        steam_pressure=pressure,
        cut_off=cut_off,
        back_pressure=back * pressure,
        clearance_volume=clearance,
        steam_temperature=boiling + superheat,
    )
    cold = saturation_temperature(back * pressure) + 273.15
    carnot = 1.0 - cold / (boiling + superheat + 273.15)
    assert answer["figures"]["thermal_efficiency"]["value"] < carnot


def test_measured_feed_is_the_steam_used():
    figures = run(steam_measured=70.0, worn_gap=3.0)["figures"]
    for bound in ("low", "value", "high"):
        assert figures["steam_use"][bound] == pytest.approx(70.0)


def test_leak_of_one_stroke_makes_the_hour():
    figures = run(worn_gap=2.0)["figures"]
    strokes = 2.0 * 300.0 * 60.0
    assert figures["leak_per_stroke"]["value"] * strokes == pytest.approx(
        figures["leak_rate"]["value"], rel=1e-12
    )


def test_new_rings_leak_less_than_worn_ones_and_more_rings_less_than_one():
    # With gaps alike; a double-turn ring is filed wider where no gap is given.
    answer = rows(run(worn_gap=3.0, ring_type="plain", closed_gap=0.3))
    leaks = {name: row["leak_rate"]["value"] for name, row in answer.items()}
    assert leaks["now"] > leaks["plain"] > leaks["double-turn"]
    one = run(worn_gap=3.0, rings_on_piston=1)["figures"]["leak_rate"]["value"]
    assert one > run(worn_gap=3.0, rings_on_piston=3)["figures"]["leak_rate"]["value"]


def test_a_worn_groove_left_as_it_is_leaks_past_new_rings_too():
    trued = rows(run(groove_wear=0.2))["plain"]["side_face_leak"]["value"]
    left = rows(run(groove_wear=0.2, new_groove=False))["plain"]["side_face_leak"]["value"]
    assert left > 5.0 * trued
    assert outcomes(run(groove_wear=0.2))["groove"] == "watch"


def test_worn_rings_are_said_to_be_worth_renewing_and_good_ones_not():
    bad = run(worn_gap=8.0, piston_diameter=79.0, groove_wear=0.1, rings_on_piston=1)
    assert outcomes(bad)["leak"] == "watch"
    words = next(found for found in bad["findings"] if found["check"] == "leak")
    said = float(re.search(r"save about ([0-9.]+) kg", words["why"]).group(1))
    assert said == pytest.approx(bad["figures"]["steam_saved"]["value"], rel=0.02)
    assert words["remedy"].startswith("Make new rings")
    assert "New plain rings" in words["why"] and "double-turn" in words["why"]
    assert outcomes(run())["leak"] == "good"


def test_a_double_turn_ring_is_not_promised_to_be_tight():
    found = next(f for f in run()["findings"] if f["check"] == "double-turn-leak")
    assert "behind it" in found["why"]
    row = rows(run())["double-turn"]["gap_leak"]
    assert row["low"] == 0.0 < row["high"]


@pytest.mark.parametrize(
    ("measured", "outcome"), [(40.0, "watch"), (60.0, "good"), (150.0, "watch")]
)
def test_missing_quantity_is_judged_against_trials(measured, outcome):
    assert outcomes(run(steam_measured=measured))["missing-quantity"] == outcome


def test_more_leak_than_is_missing_is_pointed_out():
    found = outcomes(
        run(steam_measured=47.0, worn_gap=10.0, piston_diameter=78.0, rings_on_piston=1)
    )
    assert found["leak-against-feed"] == "watch"


def test_compression_above_the_steam_pressure_is_pointed_out():
    assert outcomes(run(compression=0.5, clearance_volume=0.02))["compression"] == "watch"


def test_a_cycle_without_power_is_an_answer():
    found = outcomes(run(steam_pressure=0.03, back_pressure=0.02, cut_off=0.06))
    assert found["power"] == "stop"


def test_plastic_in_hot_steam_is_stopped():
    found = outcomes(run(ring_material="filled-ptfe-carbon", steam_temperature=280.0))
    assert found["ring-material-heat"] == "stop"


def test_a_light_leaks_as_a_gap_of_its_size_would():
    """Both are openings with the same discharge: two thirds of 0.05 by 40 mm, 1 by 0.2 mm."""
    sizes = {"worn_gap": 1.0, "piston_diameter": 79.6, "end_cut": "square", "ring_type": "plain"}
    now = rows(run(**sizes, light=0.05, light_length=40.0))["now"]
    area = (2.0 / 3.0 * 0.05 * 40.0) / (1.0 * 0.2)
    # Warm, the gap is some 0.3 % larger each way.
    assert now["light_leak"]["value"] == pytest.approx(area * now["gap_leak"]["value"], rel=0.01)


def test_indicated_power_by_hand_from_what_is_shown():
    """PLAN: pressure, length, area, number of working strokes; a double-acting engine has two."""
    figures = run()["figures"]
    row = figures["indicated_power"]
    put_in = {entry["symbol"]: entry["value"] for entry in row["working"]}
    assert put_in["strokes"] == pytest.approx(600.0)
    area = math.pi * 0.080**2 / 4.0
    by_hand = put_in["p_m"] * 1e6 * 0.090 * area * put_in["strokes"] / 60.0
    assert row["value"] == pytest.approx(by_hand, rel=1e-12)


def test_the_diagram_drawn_goes_round():
    """Out at the steam's pressure and back at the exhaust's, closing where compression ends."""
    drawn = run(cut_off=0.5, compression=0.1)["diagram"]
    out, back = drawn["pressure_outward"]["values"], drawn["pressure_returning"]["values"]
    assert drawn["travel"]["values"][0] == 0.0 and drawn["travel"]["values"][-1] == 1.0
    steam, air = 0.7 + 0.101325, 0.01 + 0.101325
    assert out[0] == out[20] == pytest.approx(steam)
    assert back[-1] == back[10] == pytest.approx(air)
    # Drawn against the same travel: at the dead centre the return has compressed what it kept,
    # clearance 0.1 and 0.1 of the stroke, to half the volume.
    assert back[0] == pytest.approx(2.0 * air)


def test_warming_says_what_touches_first():
    answer = run(piston_material="aluminium", piston_diameter=79.85)
    assert answer["warming"]["first_to_touch"] == "piston"
    touch = answer["warming"]["figures"]["first_touch_temperature"]["value"]
    # 80/79.85 - 1 over 23.6e-6, from 20 degC.
    assert touch == pytest.approx(20.0 + (80.0 / 79.85 - 1.0) / 23.6e-6, rel=1e-9)
    assert outcomes(answer)["cold-start"] == "watch"


def test_warming_series_run_from_cold_to_steam():
    series = run()["warming"]["series"]
    walls = series["cylinder_temperature"]["values"]
    assert walls[0] == 20.0 and walls[-1] == pytest.approx(170.5, abs=0.1)
    for name, line in series.items():
        assert len(line["values"]) == len(walls), name
    # Iron in iron: warmed together the gap hardly moves; in a hurry it is smaller until all is hot.
    assert series["gap_hurried"]["values"][0] < series["gap_together"]["values"][0]
    ends = [series[name]["values"][-1] for name in ("gap_hurried", "gap_together")]
    assert ends[0] == pytest.approx(ends[1])


def test_a_filled_ptfe_ring_without_room_is_stopped():
    answer = run(
        ring_material="filled-ptfe-bronze",
        side_clearance=0.02,
        closed_gap=0.1,
        worn_gap=0.1,
        ring_width=8.0,
    )
    found = outcomes(answer)
    assert found["gap-running"] == "stop"
    assert found["side-clearance-running"] == "stop"


@pytest.mark.parametrize(
    ("more", "path"),
    [
        ({"back_pressure": 0.8}, ("back_pressure",)),
        ({"steam_temperature": 120.0}, ("steam_temperature",)),
        ({"release": 0.3, "cut_off": 0.5}, ("release",)),
        ({"piston_diameter": 80.0}, ("piston_diameter",)),
        (
            {"gap_readings": [{"hours": 5.0, "gap": 0.3}, {"hours": 5.0, "gap": 0.4}]},
            ("gap_readings",),
        ),
        ({"stroke": None}, ("stroke",)),
        ({"cut_off": 1.2}, ("cut_off",)),
    ],
)
def test_inputs_that_contradict_one_another_are_refused_by_name(more, path):
    with pytest.raises(InputProblem) as refused:
        run(**more)
    assert [fault.path for fault in refused.value.faults] == [path]
    assert refused.value.faults[0].remedy


def test_other_sealings_say_what_cannot_be_said_of_them():
    listed = calculations.run("sealings", {})["sealings"]
    keys = [entry["key"] for entry in listed]
    for key in ("soft-packing", "filled-ptfe-ring", "o-ring-slipper", "double-turn-ring"):
        assert key in keys
    for entry in listed:
        assert entry["reckoned"] and entry["not_reckoned"]
    hottest = {entry["key"]: entry["hottest"]["value"] for entry in listed if "hottest" in entry}
    # A supplier's page on O-rings in steam, read: EPDM to 150 degC. Packing from memory.
    assert hottest == {
        "soft-packing": 200.0,
        "filled-ptfe-ring": material("filled-ptfe-carbon").hottest,
        "o-ring-slipper": 150.0,
    }


@pytest.mark.parametrize("ring_type", ["plain", "double-turn"])
def test_the_ring_on_the_piston_is_the_ring_that_sizing_would_judge(ring_type):
    """Every size and temperature that the checks read is in its own place."""
    ring = {
        "bore": 100.0,
        "ring_type": ring_type,
        "steam_pressure": 0.9,
        "steam_temperature": 240.0,
        "shop_temperature": 12.0,
        "piston_material": "aluminium",
        "radial_thickness": 3.1,
        "ring_width": 6.4,
        "piston_diameter": 99.3,
        "wall_pressure": 0.04,
        "expander_pressure": 0.013,
    }
    asked = {**ring, "stroke": 90.0, "speed": 300.0, "worn_gap": 0.7, "side_clearance": 0.06}
    filled, _ = running_inputs.filled(fields.checked(running.FIELDS, asked))
    there = ring_at_hand.standing(filled)
    drawn, _ = settle({**ring, "closed_gap": 0.7, "groove_width": 6.46})
    for name in (
        *("bore", "ring_type", "turns", "ring_material", "cylinder", "piston", "modulus"),
        *("steam_pressure", "saturation", "temperature", "shop", "closed_gap"),
        *("warming_wall_temperature", "wall_temperature"),
    ):
        assert getattr(there.duty, name) == getattr(drawn.duty, name), name
    assert there.duty.rings is None
    assert there.section[:2] == drawn.section[:2] == (3.1, 6.4)
    assert there.spring.wall_pressure == drawn.spring.wall_pressure == 0.04
    for name in ("expander_pressure", "side_clearance", "groove_width", "piston_diameter"):
        assert getattr(there, name) == pytest.approx(getattr(drawn, name), abs=1e-9), name


# What is given, what it is in, and between what it should have lain: by hand, from the rule that
# refuses it. Steam of 0.801 MPa absolute boils at 170.5 degC (steam tables).
REFUSED = [
    ({"release": 0.3, "cut_off": 0.5}, "release", "1", "lowest", 0.5),
    ({"radial_thickness": 14.0}, "radial_thickness", "mm", "highest", 80.0 / 6.0),
    ({"back_pressure": 0.8}, "back_pressure", "MPa", "highest", 0.7),
    ({"steam_temperature": 120.0}, "steam_temperature", "degC", "lowest", 170.5),
]


@pytest.mark.parametrize(("more", "name", "unit", "side", "limit"), REFUSED)
def test_a_refusal_tells_what_was_given_and_its_limit(more, name, unit, side, limit):
    with pytest.raises(InputProblem) as caught:
        run(**more)
    (fault,) = caught.value.faults
    assert (fault.path, fault.value, fault.unit) == ((name,), more[name], unit)
    assert getattr(fault, side) == pytest.approx(limit, rel=1e-3)
    assert getattr(fault, "highest" if side == "lowest" else "lowest") is None


def test_a_reason_is_the_reason_of_its_case_and_whole():
    readings = [{"hours": 5.0, "gap": 0.3}, {"hours": 90.0, "gap": 0.6}]
    answer = run(gap_readings=readings)
    why = {one["input"]: one["why"] for one in answer["chosen"]}
    assert "reading" in why["worn_gap"]
    assert not any("%" + "s" in one for one in why.values())
    # Between the least and the most of the coefficient of oiled iron.
    figure = re.findall(r"0\.\d\d", why["friction_coefficient"])
    assert len(figure) == 2 and figure[0] < figure[1]


# A bronze ring in an aluminium piston and an iron cylinder, 15 degC in the shop.
THREE_METALS = {
    "bore": 80.0,
    "gap": 0.4,
    "ring_width": 3.0,
    "side_clearance": 0.05,
    "piston_diameter": 79.6,
    "ring_expansion": 18.0e-6,
    "piston_expansion": 23.6e-6,
    "cylinder_expansion": 11.7e-6,
    "shop_temperature": 15.0,
}


def grown(part, temperature):
    return 1.0 + THREE_METALS[part + "_expansion"] * (temperature - 15.0)


def by_hand(ring, piston, cylinder):
    """(gap, side clearance, piston clearance) with each part as warm as that [degC]."""
    around = math.pi * 80.0
    return (
        around * grown("cylinder", cylinder) - (around - 0.4) * grown("ring", ring),
        3.05 * grown("piston", piston) - 3.0 * grown("ring", ring),
        80.0 * grown("cylinder", cylinder) - 79.6 * grown("piston", piston),
    )


def test_what_is_left_while_it_warms_is_what_each_metal_grows():
    found = warming.warming(THREE_METALS, 170.0, 100.0)
    figures = {name: figure.value for name, figure in found["figures"].items()}
    steady, started = by_hand(100.0, 100.0, 100.0), by_hand(170.0, 170.0, 15.0)
    # The ring is through before its groove is warm.
    started = (started[0], by_hand(170.0, 15.0, 15.0)[1], started[2])
    for at, name in enumerate(("gap", "side_clearance", "piston_clearance")):
        assert figures[name + "_steady"] == pytest.approx(steady[at], rel=1e-6), name
        assert figures[name + "_cold_start"] == pytest.approx(started[at], rel=1e-6), name
        series = found["series"]
        walls = series["cylinder_temperature"].values
        hurried = by_hand(170.0, 170.0, walls[5])[at]
        assert series[name + "_hurried"].values[5] == pytest.approx(hurried, rel=1e-6), name
    safe = math.pi * 80.0 * (1.0 - 1.0 / grown("ring", 170.0))
    assert figures["smallest_safe_gap"] == pytest.approx(safe, rel=1e-6)


@pytest.mark.parametrize(("gap", "part"), [(0.4, "ring"), (2.0, "piston")])
def test_what_touches_first_in_a_cold_cylinder(gap, part):
    """The ring when it has grown by its gap, the piston by what it has less than the bore."""
    found = warming.warming({**THREE_METALS, "gap": gap}, 170.0, 100.0)
    room = gap / (math.pi * 80.0 - gap) if part == "ring" else 80.0 / 79.6 - 1.0
    rise = room / THREE_METALS[part + "_expansion"]
    touch = found["figures"]["first_touch_temperature"].value
    assert touch == pytest.approx(15.0 + rise, rel=1e-6)


def test_play_at_the_sides_is_what_ring_and_groove_grow():
    """A bronze ring in a steel piston grows more than its groove: so much more play cold."""
    metals = {"ring_material": "phosphor-bronze", "piston_material": "steel"}
    answer = run(ring_width=3.0, shop_temperature=15.0, **metals)
    taken = {one["input"]: one["value"] for one in answer["chosen"]}
    rise = saturation_temperature(0.7) - 15.0
    ring, piston = (1.0 + material(metals[one + "_material"]).expansion * rise
                    for one in ("ring", "piston"))  # fmt: skip
    margin = running_inputs.clearances.running_side_clearance(80.0)[0]
    cold = (margin + 3.0 * ring) / piston - 3.0
    assert cold > margin
    assert taken["side_clearance"] == pytest.approx(cold, rel=1e-6)
    tight = run(ring_width=3.0, shop_temperature=15.0, side_clearance=0.001, **metals)
    said = [one for row in tight["findings"] for one in row.get("apply", ())]
    given = [one["value"] for one in said if one["input"] == "side_clearance"]
    assert given and given[0] == pytest.approx(cold, abs=0.0011)
