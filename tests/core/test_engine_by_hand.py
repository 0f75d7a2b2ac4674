"""A running engine from its inputs to its figures, each step by plain arithmetic."""

import math

import pytest
from scipy.optimize import brentq

from ringwright.core import calculations, fields
from ringwright.core.properties import steam_properties
from ringwright.core.ring import spring
from ringwright.core.running import (
    leak,
    ring_duty,
    ring_leak,
    running,
    running_figures,
    running_inputs,
    steam_cycle,
    wear,
)

LAUNCH = {
    "bore": 80.0,
    "stroke": 90.0,
    "speed": 250.0,
    "steam_pressure": 0.7,
    "ring_type": "plain",
    "closed_gap": 0.4,
    "worn_gap": 1.3,
    "groove_wear": 0.03,
    "light": 0.04,
    "light_length": 30.0,
    "steam_temperature": 200.0,
    "wall_pressure": 0.045,
    "radial_thickness": 2.7,
    "ring_width": 3.4,
    "piston_diameter": 79.5,
    "side_clearance": 0.06,
}


def filled(**more):
    return running_inputs.filled(fields.checked(running.FIELDS, {**LAUNCH, **more}))[0]


def run(**more):
    return calculations.run("running", {**LAUNCH, **more})


def triple(row):
    return [row[bound] for bound in ("low", "value", "high")]


@pytest.mark.parametrize(("acting", "strokes"), [("double", 500.0), ("single", 250.0)])
def test_an_engine_is_its_cycle_and_its_strokes(acting, strokes):
    given = filled(acting=acting)
    found = running.engine_of(given)
    drawn = steam_cycle.diagram(given["cycle"])
    assert found.diagram == drawn
    assert found.strokes == pytest.approx(60.0 * strokes, rel=1e-12)
    swept = math.pi / 4.0 * 0.08**2 * 0.09
    for level, factor in enumerate((0.6, 0.8, 0.9)):
        mean = factor * drawn.mean_pressure
        assert found.mean_pressure[level] == pytest.approx(mean, rel=1e-12)
        watts = mean * 1e6 * swept * strokes / 60.0
        assert found.power[level] == pytest.approx(watts, rel=1e-12)
    stated, state = given["cycle"], given["steam"]
    held = (stated.clearance + stated.cut_off) / state.volume
    kept = (stated.clearance + stated.compression) / given["back"].volume
    diagram_steam = (held - kept) * swept * 60.0 * strokes
    assert found.indicated == pytest.approx(diagram_steam, rel=1e-12)
    for level, missing in enumerate(given["missing_spread"]):
        assert found.base[level] == pytest.approx(diagram_steam / (1.0 - missing), rel=1e-12)
    duty = ring_duty.ring_duty(
        stated,
        double_acting=acting == "double",
        rings=2,
        k=leak.exponent(200.0 - steam_properties.saturation_temperature(0.801325)),
        pressure_volume=0.801325 * state.volume,
        atmosphere=0.101325,
    )
    assert tuple(found.duty) == pytest.approx(tuple(duty), rel=1e-9)


def ways(given, engine, ring, new_groove=True):
    """ring_leak.paths of one of the three rings: its gap, its groove, its light."""
    light = 2.0 / 3.0 * 0.04 * 30.0 if ring == "now" else 0.0
    kind = "double-turn" if ring == "double-turn" else "plain"
    gap = 1.3 if ring == "now" else 0.4
    worn = 0.03 if ring == "now" or not new_groove else 0.0
    return ring_leak.paths(given, engine.duty, kind, gap, worn, light)


@pytest.mark.parametrize("new_groove", [True, False])
def test_the_ring_at_hand_and_two_new_ones_leak_by_their_own_ways(new_groove):
    given = filled(new_groove=new_groove)
    engine = running.engine_of(given)
    good = ways(given, engine, "plain", new_groove).total
    for row in run(new_groove=new_groove)["comparison"]:
        found = ways(given, engine, row["ring"], new_groove)
        total = found.total
        assert triple(row["leak_rate"]) == pytest.approx(total, rel=1e-9)
        assert triple(row["gap_leak"]) == pytest.approx(found.gap, rel=1e-9)
        assert triple(row["side_face_leak"]) == pytest.approx(found.face, rel=1e-9)
        assert row["light_leak"]["value"] == pytest.approx(found.light[1], rel=1e-9)
        # Steam of an engine with good plain rings, and what this ring passes beyond those.
        use = [engine.base[level] + total[level] - good[level] for level in (0, 1, 2)]
        assert triple(row["steam_use"]) == pytest.approx(sorted(use), rel=1e-9)
        use.sort()
        shares = (total[0] / use[2], total[1] / use[1], total[2] / use[0])
        assert triple(row["leak_share"]) == pytest.approx(sorted(shares), rel=1e-9)


def test_of_a_measured_feed_new_rings_save_what_they_leak_less():
    given = filled(steam_measured=70.0)
    engine = running.engine_of(given)
    now = ways(given, engine, "now").total
    for row in run(steam_measured=70.0)["comparison"]:
        total = ways(given, engine, row["ring"]).total
        use = sorted([70.0 - now[level] + total[level] for level in (0, 1, 2)])
        assert triple(row["steam_use"]) == pytest.approx(use, rel=1e-9)


def test_no_more_leaks_than_all_of_the_steam():
    """A gap like a door, and a feed that must have been read wrong."""
    rows = run(steam_measured=0.02, worn_gap=20.0, piston_diameter=76.0)["comparison"]
    now, new = rows[0], rows[1]
    assert triple(now["leak_share"]) == [1.0, 1.0, 1.0]
    assert triple(now["steam_use"]) == pytest.approx([0.02] * 3)
    # Never less than none, and all of it leak.
    assert triple(new["steam_use"]) == pytest.approx([1e-9] * 3, abs=1e-12)
    assert triple(new["leak_share"]) == [1.0, 1.0, 1.0]


def test_rings_are_due_at_the_lesser_of_leak_and_slack():
    given = filled()
    engine = running.engine_of(given)
    found = ways(given, engine, "now")
    good = ways(given, engine, "plain").total
    change = spring.gap_change(0.045, 80.0, 2.7, given["modulus"])
    growth = brentq(
        lambda g: (1.0 - g / change) * (1.0 - g / (2.0 * math.pi * 2.7)) ** 3 - 0.5, 0.0, change
    )
    slack = 0.4 + growth
    tight = engine.base[1] - good[1]
    others = found.face[1] + found.light[1]

    def leaky(allowed):
        """The whole leak L is allowed of tight + L; what the gap may pass of it, in proportion."""
        return 1.3 * (allowed * tight / (1.0 - allowed) - others) / found.gap[1]

    for allowed in (0.05, 0.06, 0.2, 0.5):
        largest = run(largest_leak_share=allowed)["figures"]["largest_gap"]["value"]
        assert largest == pytest.approx(min(leaky(allowed), slack), rel=1e-8)
    assert leaky(0.06) < slack < leaky(0.2)
    # What leaves already by light and sides is more than is allowed: any gap is too large.
    assert leaky(0.005) < 0.0
    assert run(largest_leak_share=0.005)["figures"]["largest_gap"]["value"] == 0.0
    # A gap that is shut tells nothing of its leak.
    for shut in ({"worn_gap": 0.0}, {"worn_gap": 0.0, "ring_type": "double-turn"}):
        figures = run(largest_leak_share=0.05, **shut)["figures"]
        assert figures["largest_gap"]["value"] == pytest.approx(slack, rel=1e-8)


def test_a_gap_that_leaks_next_to_nothing_still_tells_in_proportion():
    """0.004 mm in iron as warm as its bore; what it leaks is a few grams an hour."""
    small = {"worn_gap": 0.004, "light": 0.0, "groove_wear": 0.0, "largest_leak_share": 0.02}
    given = filled(**small)
    engine = running.engine_of(given)
    found = ring_leak.paths(given, engine.duty, "plain", 0.004, 0.0, 0.0)
    assert 0.0 < found.gap[1] < 0.01
    good = ring_leak.paths(given, engine.duty, "plain", 0.4, 0.0, 0.0).total[1]
    wanted = 0.02 / 0.98 * (engine.base[1] - good) - found.face[1]
    largest = run(**small)["figures"]["largest_gap"]["value"]
    assert largest == pytest.approx(0.004 * wanted / found.gap[1], rel=1e-8)


@pytest.mark.parametrize("worn", [0.5, 1.3])
def test_rings_are_due_at_one_gap_however_far_they_are_worn(worn):
    """A bronze ring in iron closes by 0.2 mm as it warms: what leaks goes by the gap as it runs.

    With the leak of the gap alone, new rings leak their share at the gap that was told.
    """
    sound = {"light": 0.0, "groove_wear": 0.0, "ring_material": "phosphor-bronze"}
    sound.update(largest_leak_share=0.02, wall_pressure=0.06)
    largest = run(worn_gap=worn, **sound)["figures"]["largest_gap"]["value"]
    there = run(worn_gap=largest, **sound)["figures"]
    assert there["leak_share"]["value"] == pytest.approx(0.02, rel=1e-6)
    assert there["largest_gap"]["value"] == pytest.approx(largest, rel=1e-6)


@pytest.mark.parametrize(
    ("metals", "gap"),
    [
        # The bore outgrows its ring: ends that meet cold stand apart hot, and the reverse.
        ({"ring_material": "grey-iron", "cylinder_material": "aluminium"}, 0.0),
        ({"ring_material": "phosphor-bronze", "cylinder_material": "grey-iron"}, 0.02),
    ],
)
def test_a_gap_that_opens_or_shuts_as_it_warms_tells_nothing(metals, gap):
    figures = run(worn_gap=gap, **metals)["figures"]
    assert (figures["gap_leak"]["value"] > 0.0) == (gap == 0.0)
    given = filled(**metals)
    change = spring.gap_change(0.045, 80.0, 2.7, given["modulus"])
    slack = 0.4 + wear.growth_to(0.5, change, 2.7)
    assert figures["largest_gap"]["value"] == pytest.approx(slack, rel=1e-8)


def test_a_thick_ring_that_hardly_presses_has_a_spring_all_the_same():
    stiff = {"radial_thickness": 9.0, "wall_pressure": 0.01}
    assert spring.springiness(0.01, 80.0, 9.0, 100000.0) < 0.01
    change = spring.gap_change(0.01, 80.0, 9.0, filled(**stiff)["modulus"])
    left = (1.0 - 0.9 / change) * (1.0 - 0.9 / (18.0 * math.pi)) ** 3
    found = run(**stiff)["figures"]["spring_left"]["value"]
    assert found == pytest.approx(max(left, 0.0), rel=1e-9)


@pytest.mark.parametrize(("wall_pressure", "told"), [(0.03, False), (0.2, False), (0.3, True)])
def test_friction_is_judged_by_its_usual_share(wall_pressure, told):
    """Four rings of 6.8 mm: a tenth of the power at the most with a weak spring already."""
    wide = {"radial_thickness": 4.0, "rings_on_piston": 4, "ring_width": 6.8}
    answer = run(wall_pressure=wall_pressure, **wide)
    share = answer["figures"]["friction_share"]
    assert (share["value"] > 0.1) == told and share["high"] > 0.1
    assert ("friction" in [row["check"] for row in answer["findings"]]) == told


def test_a_ring_without_a_spring_of_its_own_has_only_its_leak():
    """So slack a ring springs from no gap that a beam could have."""
    weak = {"radial_thickness": 0.6, "wall_pressure": 0.2, "largest_leak_share": 0.05}
    figures = run(**weak)["figures"]
    assert "spring_left" not in figures
    given = filled(**weak)
    engine = running.engine_of(given)
    found, good = ways(given, engine, "now"), ways(given, engine, "plain").total
    wanted = (engine.base[1] - good[1]) * 0.05 / 0.95 - found.face[1] - found.light[1]
    largest = max(0.0, 1.3 * wanted / found.gap[1])
    assert figures["largest_gap"]["value"] == pytest.approx(largest, rel=1e-8)


def test_heat_and_fuel_by_hand():
    measured = {"steam_measured": 70.0, "boiler_efficiency": 0.65, "fuel_heat": 28.0}
    figures = run(feed_temperature=40.0, hours_per_season=120.0, **measured)["figures"]
    given = filled(**measured)
    engine = running.engine_of(given)
    state = given["steam"]
    # Over water boiling at the exhaust's pressure.
    drain = steam_properties.water_enthalpy(steam_properties.saturation_temperature(0.111325))
    supplied = 70.0 / 3600.0 * 1e3 * (state.enthalpy - drain)
    assert figures["heat_supplied"]["value"] == pytest.approx(supplied, rel=1e-9)
    assert figures["heat_carried_away"]["value"] == pytest.approx(supplied - engine.power[1])
    assert figures["thermal_efficiency"]["value"] == pytest.approx(engine.power[1] / supplied)
    assert figures["missing_quantity"]["value"] == pytest.approx(1.0 - engine.indicated / 70.0)
    assert figures["steam_temperature"]["value"] == 200.0
    now, new = ways(given, engine, "now").total, ways(given, engine, "plain").total
    saved = [now[level] - new[level] for level in (0, 1, 2)]
    assert triple(figures["steam_saved"]) == pytest.approx(saved, rel=1e-9)
    # Water of 40 C holds 167.5 kJ/kg (steam tables); coal of 28 MJ/kg, 0.55 to 0.8 of it used.
    per_kg = (state.enthalpy - 167.5) / 28000.0
    fuel = [saved[0] * per_kg / 0.8, saved[1] * per_kg / 0.65, saved[2] * per_kg / 0.55]
    assert triple(figures["fuel_saved"]) == pytest.approx(fuel, rel=3e-4)
    assert triple(figures["fuel_saved_in_season"]) == pytest.approx(
        [120.0 * rate for rate in triple(figures["fuel_saved"])], rel=1e-9
    )
    assert triple(figures["leak_per_stroke"]) == pytest.approx(
        [rate / 30000.0 for rate in now], rel=1e-9
    )
    plain = run()["figures"]
    assert "fuel_saved_in_season" not in plain and "missing_quantity" not in plain
    # Without a feed that was measured, the heat is that of the steam reckoned.
    base = running.engine_of(filled()).base[1]
    reckoned = base / 3600.0 * 1e3 * (state.enthalpy - drain)
    assert plain["heat_supplied"]["value"] == pytest.approx(reckoned, rel=1e-9)


def test_each_working_shows_the_usual_figure_of_what_it_names():
    """By the symbols of its formula: what is put in is what the engine has, in the middle."""
    figures = run()["figures"]
    engine = running.engine_of(filled())
    now = ways(filled(), engine, "now")
    saved = now.total[1] - ways(filled(), engine, "plain").total[1]
    use = engine.base[1] + saved
    for name, expected in (
        ("indicated_power", {"p_m": engine.mean_pressure[1], "d1": 80.0, "stroke": 90.0}),
        ("heat_carried_away", {"Q": figures["heat_supplied"]["value"], "IP": engine.power[1]}),
        ("heat_supplied", {"M_f": engine.base[1]}),
        ("steam_use", {"M_i": engine.indicated}),
        ("leak_rate", {"W_gap": now.gap[1], "W_side": now.face[1], "W_light": now.light[1]}),
        ("leak_share", {"W": now.total[1], "M": use}),
        ("fuel_saved", {"W - W_new": saved, "efficiency": 0.6}),
        ("wall_pressure_with_steam", {"p": 0.045, "n": 2, "dp": engine.duty.mean_difference}),
        ("spring_left", {"g": 0.9, "a1": 2.7}),
        ("largest_gap", {"share": 0.05}),
    ):
        put_in = {row["symbol"]: row["value"] for row in figures[name]["working"]}
        for symbol, value in expected.items():
            assert put_in[symbol] == pytest.approx(value, rel=1e-9), (name, symbol)


@pytest.mark.parametrize(
    ("efficiency", "least", "most"), [(0.9, 0.8, 1.0), (0.12, 0.05, 0.27), (0.4, 0.3, 0.55)]
)
def test_a_boiler_gives_no_more_than_all_and_no_less_than_a_twentieth(efficiency, least, most):
    figures = run(boiler_efficiency=efficiency, fuel_heat=28.0)["figures"]
    given = filled()
    feed = steam_properties.water_enthalpy(20.0, 0.5)
    per_kg = (given["steam"].enthalpy - feed) / 28000.0
    saved = triple(figures["steam_saved"])
    fuel = [saved[0] * per_kg / most, saved[1] * per_kg / efficiency, saved[2] * per_kg / least]
    assert triple(figures["fuel_saved"]) == pytest.approx(sorted(fuel), rel=1e-9)


def test_rubbing_of_ring_and_expander():
    figures = run(expander_pressure=0.02, rings_on_piston=3, speed=250.0)["figures"]
    given = filled(expander_pressure=0.02, rings_on_piston=3)
    engine = running.engine_of(given)
    across = engine.duty.mean_difference
    # 0.75 m/s; 3 rings of 0.065, and the steam's part once; 0.05 to 0.15.
    area = math.pi * 80.0 * 3.4
    power = [
        mu * (3 * 0.065 + share * across) * area * 0.75
        for mu, share in ((0.05, 0.25), (0.1, 0.5), (0.15, 1.0))
    ]
    assert triple(figures["friction_power"]) == pytest.approx(power, rel=1e-9)
    wall = [0.065 + share * across / 3.0 for share in (0.25, 0.5, 1.0)]
    assert triple(figures["wall_pressure_with_steam"]) == pytest.approx(wall, rel=1e-9)
    shares = [power[0] / engine.power[2], power[1] / engine.power[1], power[2] / engine.power[0]]
    assert triple(figures["friction_share"]) == pytest.approx(shares, rel=1e-9)
    assert figures["sliding_distance"]["value"] == pytest.approx(2700.0, rel=1e-9)
    put_in = {row["symbol"]: row["value"] for row in figures["friction_power"]["working"]}
    assert (put_in["p"], put_in["n"], put_in["mu"]) == (pytest.approx(0.065), 3, 0.1)
    put_in = {row["symbol"]: row["value"] for row in figures["indicated_power"]["working"]}
    assert put_in["strokes"] == pytest.approx(500.0, rel=1e-12)


def test_wear_as_told():
    """From 0.9 to 1.3 mm in 200 hours: 0.2 mm in a hundred, 0.02 either way; a new ring had 0.4."""
    readings = [{"hours": 50.0, "gap": 0.9}, {"hours": 250.0, "gap": 1.3}]
    given = {"largest_leak_share": 0.2, "gap_readings": readings, "worn_gap": None}
    figures = run(**given)["figures"]
    assert triple(figures["gap_growth"]) == pytest.approx([0.18, 0.2, 0.22], rel=1e-9)
    assert triple(figures["ring_wear"]) == pytest.approx(
        [rate / (2.0 * math.pi) for rate in (0.18, 0.2, 0.22)], rel=1e-9
    )
    to_go = 100.0 * (figures["largest_gap"]["value"] - 1.3)
    hours = [to_go / 0.22, to_go / 0.2, to_go / 0.18]
    assert triple(figures["hours_left"]) == pytest.approx(hours, rel=1e-9)
    assert figures["next_look"]["value"] == pytest.approx(0.5 * hours[0], rel=1e-9)
    change = spring.gap_change(0.045, 80.0, 2.7, filled()["modulus"])
    left = (1.0 - 0.9 / change) * (1.0 - 0.9 / (2.0 * math.pi * 2.7)) ** 3
    assert figures["spring_left"]["value"] == pytest.approx(left, rel=1e-9)
    # A gap that is smaller than a new one has all its spring.
    assert run(worn_gap=0.3)["figures"]["spring_left"]["value"] == 1.0


def test_a_gap_that_may_not_grow_has_no_likely_end():
    shrinks = wear.Wear((-0.05, -0.01, 0.02), 250.0, 1.3)
    found = running_figures.wear_values(filled(), shrinks, 1.5, 9.0, {})
    assert "hours_left" not in found
    assert found["next_look"] == pytest.approx(0.5 * 0.2 / 0.02 * 100.0, rel=1e-9)
    none = wear.Wear((-0.05, -0.03, -0.01), 250.0, 1.3)
    found = running_figures.wear_values(filled(), none, 1.5, None, {})
    assert "hours_left" not in found and "next_look" not in found and "spring_left" not in found
    # Where nothing tells how large it may be, there is its growth alone.
    found = running_figures.wear_values(filled(), shrinks, None, None, {})
    assert set(found) == {"largest_gap", "gap_growth", "ring_wear"}


def test_the_diagram_has_a_point_at_every_fortieth_of_the_stroke():
    stated = filled()["cycle"]
    drawn = running_figures.diagram_series(stated)
    assert drawn["travel"].values == pytest.approx([at / 40.0 for at in range(41)], rel=1e-12)
    assert drawn["pressure_outward"].values[27] == steam_cycle.pressure_outward(stated, 0.675)
    # On its return the piston has come back by what is left of the stroke.
    assert drawn["pressure_returning"].values[2] == steam_cycle.pressure_returning(stated, 0.95)
