"""Soaks by hand: the curve of relief between its points, and what a soak is told at each limit.

The curve is from memory, anchored on the reports that the module names; its points are written here
once more, so that a slip of the pen in one place shows. Sums between them are plain proportion.
"""

import math

import pytest

from ringwright.core import calculations
from ringwright.core.measuring import tell_tales
from ringwright.core.measuring.tell_tales import Heat, Soaked, heat_of, relief_of
from ringwright.core.problems import OutOfRange
from ringwright.core.ring import soak
from ringwright.core.ring.design import settle
from ringwright.core.ring.soak import Relief, expected_relief

# Share relaxed in an hour [degC], from memory.
CURVES = {
    "iron": (
        (100, 0.0), (300, 0.03), (350, 0.08), (400, 0.18), (450, 0.37), (500, 0.66), (550, 0.90),
        (600, 0.96), (650, 0.99), (900, 0.99),
    ),
    "bronze": (
        (100, 0.05), (150, 0.15), (200, 0.35), (250, 0.60), (300, 0.82), (350, 0.93), (400, 0.97),
        (900, 0.97),
    ),
}  # fmt: skip


@pytest.mark.parametrize("family", CURVES)
def test_an_hour_relaxes_what_the_curve_has_at_and_between_its_points(family):
    points = CURVES[family]
    for (low, below), (high, above) in zip(points, points[1:], strict=False):
        for share in (0.0, 0.3, 0.5, 1.0):
            found = expected_relief(family, low + share * (high - low), 1.0)
            assert found.likely == pytest.approx(below + share * (above - below), abs=1e-9)


@pytest.mark.parametrize(
    ("heat", "low", "likely", "high"),
    [
        # 0.8 x 0.66 x 0.34 = 0.17952 either way.
        (500.0, 0.48048, 0.66, 0.83952),
        # 0.8 x 0.37 x 0.63 = 0.18648.
        (450.0, 0.18352, 0.37, 0.55648),
        # Near nothing and near all 0.05, and no share below nothing or above all.
        (300.0, 0.0, 0.03, 0.08),
        (650.0, 0.94, 0.99, 1.0),
        (600.0, 0.91, 0.96, 1.0),
        # 0.8 x 0.9 x 0.1 = 0.072.
        (550.0, 0.828, 0.90, 0.972),
    ],
)
def test_the_spread_is_four_fifths_of_relaxed_times_not(heat, low, likely, high):
    assert expected_relief("iron", heat, 1.0) == pytest.approx((low, likely, high), abs=1e-9)


def test_no_time_relaxes_nothing_and_less_than_a_minute_counts_as_one():
    assert expected_relief("iron", 550.0, 0.0) == (0.0, 0.0, 0.0)
    minute = expected_relief("iron", 550.0, 1.0 / 60.0)
    assert expected_relief("iron", 550.0, 0.005) == minute
    # T (20 + log10 t): 823.15 (20 - 1.77815)/20 = 749.97 K, 476.8 degC: 0.37 + 0.29 x 0.5363.
    same = 823.15 * (20.0 + math.log10(1.0 / 60.0)) / 20.0 - 273.15
    wanted = 0.37 + (0.66 - 0.37) * (same - 450.0) / 50.0
    assert minute.likely == pytest.approx(wanted, abs=1e-9)
    # Just over a minute is more than one.
    assert expected_relief("iron", 550.0, 1.008 / 60.0).likely > minute.likely


def test_the_curve_begins_at_100_and_ends_at_900():
    assert expected_relief("bronze", 100.0, 1.0).likely == 0.05
    # Ten hours at 900 are beyond the curve's end: its last point; a minute at 100 is before it.
    assert expected_relief("iron", 900.0, 10.0).likely == 0.99
    assert expected_relief("bronze", 100.0, 1.0 / 60.0).likely == 0.05
    for heat in (99.9, 900.1, 905.0):
        with pytest.raises(OutOfRange):
            expected_relief("iron", heat, 1.0)
    with pytest.raises(OutOfRange):
        expected_relief("plastic", 200.0, 1.0)


def test_what_to_aim_at_is_as_the_reports_have_it():
    """Iron 500 to 565 degC (1050 F), 550 usual; bronze 250 to 350, 300 usual: from memory."""
    assert soak.soak_range("iron") == (500.0, 550.0, 565.0)
    assert soak.soak_range("bronze") == (250.0, 300.0, 350.0)
    assert soak.soak_range("plastic") is None and not soak.can_be_set("plastic")
    assert soak.can_be_set("iron") and soak.can_be_set("bronze")


def test_instruments_are_read_and_kept_within_what_the_curve_has():
    assert heat_of("thermocouple", 520.0) == (510.0, 520.0, 530.0)
    assert heat_of("oven-dial", 520.0) == (480.0, 520.0, 560.0)
    assert heat_of("oven-dial", 120.0) == (100.0, 120.0, 160.0)
    assert heat_of("oven-dial", 880.0) == (840.0, 880.0, 900.0)
    assert heat_of("low-red") == heat_of("low-red", 300.0) == (593.0, 650.0, 704.0)
    # Nothing read: as cold as the curve goes.
    assert heat_of("crayon") == (100.0, 100.0, 100.0)


def test_the_coldest_end_gives_the_least_and_the_hottest_the_most():
    found = relief_of("iron", Heat(450.0, 500.0, 550.0), 1.0)
    assert found == pytest.approx((0.37 - 0.18648, 0.66, 0.9 + 0.072), abs=1e-9)


def design(**more):
    return settle({"bore": 80.0, "ring_type": "plain", **more})[0]


IRON = design()
BRONZE = design(ring_material="gunmetal")


def made(ring, heat, relief=(0.85, 0.9, 0.95), pressures=(0.05, 0.055, 0.06), moved=0.05):
    return Soaked(
        design=ring, heat=Heat(*heat), hours=1.0, relief=Relief(*relief), moved=moved,
        pressures=Relief(*pressures), gaps=Relief(1.0, 2.0, 3.0),
    )  # fmt: skip


def outcomes(rows):
    return {row.check: row.outcome for row in rows}


@pytest.mark.parametrize(
    ("ring", "heat", "relief", "said"),
    [
        (IRON, (490.0, 500.0, 565.0), 0.9, {"soak": "good"}),
        (IRON, (490.0, 499.5, 560.0), 0.66, {"soak-cold": "watch"}),
        (IRON, (380.0, 450.0, 560.0), 0.505, {"soak-cold": "watch"}),
        (IRON, (380.0, 450.0, 560.0), 0.5, {"soak-cold": "watch"}),
        (IRON, (380.0, 450.0, 560.0), 0.495, {"soak-cold": "stop"}),
        (IRON, (540.0, 550.0, 564.5), 0.9, {"soak": "good"}),
        (IRON, (540.0, 550.0, 565.5), 0.9, {"soak-hot": "watch"}),
        (IRON, (640.0, 700.0, 720.0), 0.9, {"soak-hot": "watch"}),
        (IRON, (640.0, 700.0, 720.5), 0.9, {"soak-hot": "stop"}),
        (IRON, (380.0, 450.0, 600.0), 0.4, {"soak-cold": "stop", "soak-hot": "watch"}),
        (BRONZE, (240.0, 250.5, 349.5), 0.6, {"soak": "good"}),
        (BRONZE, (240.0, 249.5, 349.5), 0.6, {"soak-cold": "watch"}),
        (BRONZE, (240.0, 300.0, 350.5), 0.8, {"soak-hot": "watch"}),
        (BRONZE, (240.0, 300.0, 499.5), 0.8, {"soak-hot": "watch"}),
        (BRONZE, (240.0, 300.0, 501.0), 0.8, {"soak-hot": "stop"}),
    ],
)
def test_a_soak_is_told_too_cold_or_too_hot_at_the_limits_of_its_metal(ring, heat, relief, said):
    """Iron sets from 500, suffers from 565, is spoilt from 720 (its critical point); bronze 250,
    350, 500. Half of the bending must go, or no two rings are alike."""
    rows = tell_tales._of_heat(made(ring, heat, (relief - 0.1, relief, relief + 0.05)))
    assert outcomes(rows) == said


def test_what_is_too_cold_or_too_hot_is_told_with_its_limit():
    cold, hot = tell_tales._of_heat(made(IRON, (380.0, 450.0, 600.0), (0.3, 0.4, 0.5)))
    assert (cold.value.value, cold.limit.value) == (450.0, 500.0)
    assert (hot.value.value, hot.limit.value) == (600.0, 565.0)
    assert "550 C" in cold.remedy and "grows, scales" in hot.why
    (spoilt,) = tell_tales._of_heat(made(IRON, (640.0, 700.0, 730.0)))
    assert (spoilt.value.value, spoilt.limit.value) == (730.0, 720.0)
    assert "is spoilt" in spoilt.why


def test_a_relief_that_spreads_by_more_than_a_quarter_is_told():
    steady = (540.0, 550.0, 560.0)
    for low, high, wide in ((0.5, 0.75, False), (0.655, 0.9, False), (0.645, 0.9, True)):
        rows = tell_tales._findings(made(IRON, steady, (low, 0.7, high)))
        found = [row for row in rows if row.check == "relief"]
        assert bool(found) is wide
    assert found[0].value.value == pytest.approx(0.255) and found[0].limit.value == 0.25
    assert "65 % to 90 %" in found[0].why and "by 5 %" in found[0].why


@pytest.mark.parametrize(
    ("low", "high", "said"),
    [
        # Practice: 0.034 to 0.085 N/mm2; below 0.015 and above 0.2 stop.
        (0.0345, 0.0845, {"wall-pressure": "good"}),
        (0.0335, 0.0845, {"too-slack": "watch"}),
        (0.0145, 0.0845, {"too-slack": "stop"}),
        (0.0345, 0.0855, {"too-stiff": "watch"}),
        (0.0345, 0.2005, {"too-stiff": "stop"}),
        (0.0145, 0.0855, {"too-slack": "stop", "too-stiff": "watch"}),
        # All of it too stiff, or all too slack, is told once.
        (0.09, 0.12, {"too-stiff": "watch"}),
        (0.02, 0.03, {"too-slack": "watch"}),
    ],
)
def test_what_the_ring_presses_with_is_told_at_the_limits_of_practice(low, high, said):
    rows = tell_tales._findings(made(IRON, (540.0, 550.0, 560.0), pressures=(low, 0.05, high)))
    assert outcomes(rows) == {"soak": "good", **said}
    for row in rows[1:]:
        assert row.value.value == (low if row.check == "too-slack" else high)


def test_an_expander_counts_with_the_ring_and_is_told():
    ring = design(expander_pressure=0.02)
    for low, high, said in (
        (0.0145, 0.064, {"wall-pressure": "good"}),
        (0.0135, 0.064, {"too-slack": "watch"}),
        (0.0145, 0.066, {"too-stiff": "watch"}),
    ):
        rows = tell_tales._findings(made(ring, (540.0, 550.0, 560.0), pressures=(low, 0.05, high)))
        assert outcomes(rows) == {"soak": "good", **said}
        assert "The expander behind it adds 0.020 N/mm2" in rows[1].why
    assert "expander" not in tell_tales._findings(made(IRON, (540.0, 550.0, 560.0)))[1].why


def test_a_pressure_asked_for_outside_practice_sends_to_sizing_first():
    stiff = design(wall_pressure=0.1)
    for ring, words in ((stiff, "under sizing first"), (IRON, "Make one ring first")):
        own = made(ring, (540.0, 550.0, 560.0), pressures=(0.09, 0.1, 0.12))
        rows = tell_tales._findings(own)
        (row,) = [row for row in rows if row.check == "too-stiff"]
        assert words in row.remedy


@pytest.mark.parametrize(("likely", "asked"), [(0.83496, 0.83), (0.8351, 0.84), (0.04, 0.1)])
def test_a_tool_is_made_for_the_relief_that_the_soak_likely_gives(likely, asked):
    """To a hundredth, and for no less than a tenth."""
    own = made(IRON, (540.0, 550.0, 560.0), (0.0, likely, 0.9), (0.01, 0.05, 0.06))
    (row,) = [row for row in tell_tales._findings(own) if row.check == "too-slack"]
    changes = [dict(one) for one in tell_tales._options(own, row)]
    assert changes[1] == {"relief": pytest.approx(asked)}
    steady = {"tell_tale": "thermocouple", "soak_temperature": None, "soak_time": None}
    assert changes[0] == steady and changes[2] == {**steady, "relief": None}
    (cold,) = tell_tales._of_heat(made(IRON, (400.0, 450.0, 500.0)))
    assert [dict(one) for one in tell_tales._options(own, cold)] == [steady]


def test_a_change_is_said_as_what_is_done():
    own = made(IRON, (540.0, 550.0, 560.0))
    assert tell_tales._words("tell_tale", "thermocouple", own).startswith("hold the ring at 550 C")
    assert tell_tales._words("relief", 0.834, own).startswith("make the tool for a relief of 0.83,")
    assert tell_tales._words("relief", None, own) == "leave the relief out"
    assert tell_tales._words("soak_time", None, own) == "leave the soak time out"


def test_soaks_to_compare_are_five_and_first_rings_from_three_tenths_on():
    answer = calculations.run("soak", {"bore": 80.0, "ring_type": "plain"})
    hours = [row["soak_time"]["value"] for row in answer["soaks"]]
    assert hours == pytest.approx([5.0 / 60.0, 1.0, 4.0, 5.0 / 60.0, 1.0])
    tenths = [row["relief"]["value"] for row in answer["first_ring"]]
    assert tenths == pytest.approx([0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0])
    # A low red and a thermocouple are taken as they are, the others by what the request sees.
    heats = [row["ring_temperature"]["value"] for row in answer["soaks"]]
    assert heats == [525.0, 525.0, 525.0, 650.0, 550.0]
    at = answer["soaks"][1]["relief_expected"]["value"]
    assert at == pytest.approx(0.66 + 0.24 * 0.5, abs=1e-9)


def test_what_the_heat_alone_moves_is_from_its_coldest_to_its_hottest():
    """First red: 426 gives 0.18 + 0.19 x 0.52, 593 gives 0.90 + 0.06 x 0.86, in an hour."""
    answer = calculations.run("soak", {"bore": 80.0, "soak_time": 1.0})
    moved = answer["figures"]["relief_by_heat"]["value"]
    assert moved == pytest.approx(0.9516 - 0.2788, abs=1e-9)


def test_a_soak_that_relaxes_what_the_tool_is_made_for_gives_the_ring_that_was_designed():
    """An hour at 550 degC relaxes 0.90, which is what the tool is made for."""
    own = tell_tales.soaked(IRON, Heat(550.0, 550.0, 550.0), 1.0)
    assert own.relief.likely == pytest.approx(0.9) and own.moved == 0.0
    assert own.pressures.likely == pytest.approx(IRON.spring.wall_pressure, rel=1e-6)
    free = IRON.spring.gap_change + IRON.duty.closed_gap
    assert own.gaps.likely == pytest.approx(free, rel=1e-6)
    assert own.pressures.low < own.pressures.likely < own.pressures.high


def test_each_soak_is_named_by_what_is_seen():
    answer = calculations.run("soak", {"bore": 80.0, "ring_type": "plain"})
    named = [row["soak"] for row in answer["tell_tales"]]
    assert named[0] == "a thermocouple bound to the ring" and "cherry red" in named
    assert answer["soaks"][3]["soak"] == "very dark red in shade"
