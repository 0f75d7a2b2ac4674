"""Heat without a pyrometer: published melting points, colours, soaks; the ring by other roads."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ringwright.core import calculations
from ringwright.core.catalogue.inputs_soak import READ_OFF, TELL_TALES
from ringwright.core.measuring.tell_tales import Heat, heat_of, relief_of
from ringwright.core.ring.soak import expected_relief

# ITS-90, table 1, and an encyclopaedia of art materials and pages on salt: all read.
MELTS = {
    "tin-melts": 231.928,
    "zinc-melts": 419.527,
    "aluminium-melts": 660.323,
    "lead-melts": 327.5,
    "salt-melts": 801.0,
}
# A Book of Steam for Engineers (1905), p. 50, and Chapman, Workshop Technology part 1: both read as
# an encyclopaedia quotes them [degC].
GLOWS = {
    "first-red": (525.0, 426.0, 593.0),
    "low-red": (None, 594.0, 704.0),
    "dull-red": (700.0, 705.0, 814.0),
    "cherry-red": (800.0, 815.0, 870.0),
}


def asked(**more):
    return calculations.run("soak", {"bore": 80.0, **more})


def outcome(answer, check):
    return next((row for row in answer["findings"] if row["check"] == check), None)


@pytest.mark.parametrize("key", MELTS)
def test_a_metal_melts_where_the_scale_of_temperature_says(key):
    heat = heat_of(key)
    assert heat.coldest <= MELTS[key] <= heat.likely < heat.hottest
    assert MELTS[key] - heat.coldest < 2.0


@pytest.mark.parametrize("key", GLOWS)
def test_a_colour_holds_what_two_tables_print_of_it(key):
    seen, low, high = GLOWS[key]
    heat = heat_of(key)
    assert heat.coldest <= low + 1.0 and heat.hottest >= high
    assert seen is None or heat.coldest <= seen <= heat.hottest


def test_zinc_melted_and_aluminium_not_is_between_the_two():
    heat = heat_of("zinc-not-aluminium")
    assert heat.coldest == pytest.approx(419.527, abs=1.0)
    assert heat.hottest == pytest.approx(660.323, abs=1.0)


@pytest.mark.parametrize("key", TELL_TALES)
def test_only_instruments_go_by_what_is_read(key):
    moved = heat_of(key, 520.0) != heat_of(key, 300.0)
    assert moved is (key in READ_OFF)
    heat = heat_of(key, 880.0)
    assert 100.0 <= heat.coldest <= heat.likely <= heat.hottest <= 900.0


def test_rings_held_an_hour_at_1150_fahrenheit_set_fully():
    """A makers' forum: an hour at 1150 F, and 1100 F for 3 to 4 h (a metallurgist): both set fully;
    950 F for 1.5 h did not. Read. 6 to 8 h at 550 degC is a foundry's own practice."""
    for fahrenheit, hours in ((1150.0, 1.0), (1100.0, 3.5), (1022.0, 7.0)):
        heat = (fahrenheit - 32.0) / 1.8
        found = expected_relief("iron", heat, hours)
        assert found.likely > 0.9 and found.high > 0.97
    assert expected_relief("iron", (950.0 - 32.0) / 1.8, 1.5).likely < 0.85


def test_time_and_heat_change_places_as_larson_and_miller_have_it():
    """T (20 + log10 t) alike, relief alike: 5 minutes against an hour, solved for T here."""
    for likely in (520.0, 560.0, 600.0):
        hour = expected_relief("iron", likely, 1.0).likely
        kelvin = (likely + 273.15) * 20.0 / (20.0 + math.log10(5.0 / 60.0))
        short = expected_relief("iron", kelvin - 273.15, 5.0 / 60.0).likely
        assert short == pytest.approx(hour, rel=1e-9)


def test_five_minutes_at_a_low_red_against_an_hour_at_550():
    """What five minutes lack in time a low red has in heat; by the first glow nothing is sure."""
    hour = relief_of("iron", Heat(540.0, 550.0, 560.0), 1.0)
    low_red = relief_of("iron", heat_of("low-red"), 5.0 / 60.0)
    first = relief_of("iron", heat_of("first-red"), 5.0 / 60.0)
    assert low_red.likely > hour.likely > first.likely
    assert first.high - first.low > 0.8 > 3.0 * (hour.high - hour.low)


@pytest.mark.parametrize("ring_type", ["plain", "double-turn"])
@pytest.mark.parametrize("tell_tale", ["oven-dial", "zinc-not-aluminium", "low-red"])
def test_the_ring_is_that_which_inspection_finds(ring_type, tell_tale):
    """Its free gap given to inspection, made of the same tool, shows that very relief."""
    answer = asked(ring_type=ring_type, tell_tale=tell_tale)
    figures = answer["figures"]
    for end in ("low", "value", "high"):
        gap = {"measured_free_gap": figures["soak_gap"][end], "gap_measured_at": "neutral-line"}
        shown = calculations.run("inspection", {"bore": 80.0, "ring_type": ring_type, **gap})
        found = shown["figures"]
        relief = figures["relief_expected"][end]
        assert found["relief_given"]["value"] == pytest.approx(relief, abs=0.02)
        pressed = found["wall_pressure_by_free_gap"]["value"]
        assert pressed == pytest.approx(figures["soak_pressure"][end], rel=0.01)


@pytest.mark.parametrize("tell_tale", ["oven-dial", "first-red", "low-red"])
def test_the_pressure_is_that_of_the_same_former_with_that_relief(tell_tale):
    """Sizing round a former on the shelf goes another way: from former and relief to pressure."""
    figures = asked(tell_tale=tell_tale)["figures"]
    tool = calculations.run("tooling", {"bore": 80.0})["figures"]["former_diameter"]["value"]
    section = calculations.run("sizing", {"bore": 80.0})["figures"]
    held = {"radial_thickness": section["radial_thickness"]["value"], "shelf_former": tool}
    for end in ("low", "value", "high"):
        relief = max(figures["relief_expected"][end], 0.1)
        sized = calculations.run("sizing", {"bore": 80.0, "relief": relief, **held})["figures"]
        pressed = figures["soak_pressure"][end]
        assert pressed == pytest.approx(sized["wall_pressure"]["value"], rel=1e-6)
        assert figures["soak_gap"][end] == pytest.approx(sized["free_gap"]["value"], rel=1e-6)


def test_a_spread_ring_by_hand():
    """Spacer and sawing alone: m = (kerf - s1) + eta (spacer - kerf), pressure as the gap."""
    answer = asked(ring_type="plain", tell_tale="zinc-melts")
    figures, sized = answer["figures"], calculations.run("sizing", {**PLAIN})["figures"]
    spacer = calculations.run("tooling", PLAIN)["figures"]["spacer_width"]["value"]
    closed = sized["closed_gap"]["value"]
    eta = figures["relief_expected"]["value"]
    full = sized["free_gap"]["value"] - closed
    # Of the tool, made for 0.9: the kerf follows from two reliefs.
    kerf = (closed + full - 0.9 * spacer) / 0.1
    gap = kerf + eta * (spacer - kerf)
    assert figures["soak_gap"]["value"] == pytest.approx(gap, rel=1e-6)


PLAIN = {"bore": 80.0, "ring_type": "plain"}


@given(st.sampled_from(sorted(TELL_TALES)), st.floats(0.02, 40.0), st.floats(200.0, 800.0))
def test_longer_and_hotter_never_sets_less(key, hours, read):
    heat = heat_of(key, read)
    here = relief_of("iron", heat, hours)
    assert 0.0 <= here.low <= here.likely <= here.high <= 1.0
    longer = relief_of("iron", heat, 1.5 * hours)
    hotter = (
        relief_of("iron", Heat(*[part + 10.0 for part in heat]), hours)
        if (heat.hottest <= 890.0)
        else here
    )
    for end in range(3):
        assert longer[end] >= here[end] - 1e-12
    assert hotter.likely >= here.likely


def test_a_first_ring_tells_its_relief_by_its_gap():
    """Rows rise together; the row of the relief designed for has the pressure designed."""
    rows = asked(wall_pressure=0.05)["first_ring"]
    for name in ("soak_gap", "soak_pressure", "relief"):
        column = [row[name]["value"] for row in rows]
        assert column == sorted(column) and len(set(column)) == len(column)
    designed = next(row for row in rows if abs(row["relief"]["value"] - 0.9) < 1e-9)
    assert designed["soak_pressure"]["value"] == pytest.approx(0.05, rel=1e-6)


CASES = [
    {"tell_tale": key, **more}
    for key in TELL_TALES
    for more in (
        {},
        {"soak_time": 0.1, "ring_type": "plain"},
        {"relief": 0.5},
        {"ring_material": "gunmetal", "ring_type": "plain", "soak_temperature": 280.0},
        {"ring_material": "phosphor-bronze", "wall_pressure": 0.03},
        {"soak_temperature": 620.0, "soak_time": 3.0},
    )
]


def test_every_remedy_with_inputs_clears_its_finding():
    applied = 0
    for case in CASES:
        for row in asked(**case)["findings"]:
            if "apply" not in row:
                assert row["outcome"] == "good" or row["remedy"].startswith("No one change"), case
                continue
            mended = {**case, **{one["input"]: one["value"] for one in row["apply"]}}
            again = outcome(asked(**mended), row["check"])
            assert again is None or again["outcome"] == "good", (case, row)
            applied += 1
    assert applied > 140


def test_a_glow_spoils_bronze_and_no_heat_sets_plastic():
    glow = asked(ring_type="plain", ring_material="phosphor-bronze")
    assert outcome(glow, "soak-hot")["outcome"] == "stop"
    plastic = asked(ring_material="filled-ptfe-bronze")
    assert outcome(plastic, "soak")["outcome"] == "stop"
    assert list(plastic["figures"]) == ["ring_temperature"]
    assert plastic["soaks"] == plastic["tell_tales"] == plastic["first_ring"] == []


def test_hot_work_and_the_quench_are_warned_of():
    keys = {one["key"] for one in asked()["cautions"]}
    assert {"hot-work", "molten", "stored-spring"} <= keys
