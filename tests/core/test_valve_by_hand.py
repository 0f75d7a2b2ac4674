"""Rings of a piston valve: crossing, pressing and rubbing by hand, each limit from both sides."""

import math

import pytest

from ringwright.core import calculations, fields
from ringwright.core.problems import InputProblem
from ringwright.core.properties import steam_properties
from ringwright.core.records import Quantity, finding
from ringwright.core.ring import spring
from ringwright.core.running import piston_valve, port_crossing, ring_duty, valve_remedies
from ringwright.core.running.leak import exponent

VALVE = {
    "bore": 100.0,
    "steam_pressure": 1.0,
    "back_pressure": 0.1,
    "port_width": 14.0,
    "ring_type": "plain",
    "ring_material": "grey-iron",
    "radial_thickness": 3.5,
    "ring_width": 5.0,
    "wall_pressure": 0.05,
    "port_bars": 10,
    "port_bar_width": 9.0,
    "modulus": 100000.0,
    "closed_gap": 0.35,
    "worn_gap": 0.8,
    "side_clearance": 0.05,
    "piston_diameter": 99.5,
    "speed": 240.0,
    "valve_travel": 35.0,
    "rings_on_piston": 3,
}
# pi 100/10 less the bar.
SPAN = 31.41592653589793 - 9.0


def asked(**more):
    given = {name: value for name, value in {**VALVE, **more}.items() if value is not None}
    return calculations.run("piston-valve", given)


def outcome(answer, check):
    return next((row for row in answer["findings"] if row["check"] == check), None)


def triple(row):
    return [row[bound] for bound in ("low", "value", "high")]


def test_how_far_it_springs_between_bars_and_at_its_ends():
    """w = q L^4/(32 E a1^3); an end that overhangs a like span 12 (1/8 + 5/(24 sqrt 3)) times."""
    figures = asked()["figures"]
    outward = [0.05 + share * 0.9 for share in (0.25, 0.5, 1.0)]
    assert triple(figures["outward_pressure"]) == pytest.approx(outward, rel=1e-9)
    put_in = {row["symbol"]: row["value"] for row in figures["outward_pressure"]["working"]}
    assert put_in["p1 - p2"] == pytest.approx(0.9, rel=1e-12)
    put_in = {row["symbol"]: row["value"] for row in figures["bulge"]["working"]}
    assert put_in["q"] == pytest.approx(0.5, rel=1e-12)
    assert figures["opening"]["value"] == pytest.approx(SPAN, rel=1e-9)
    flexure = SPAN**4 / (100000.0 * 3.5**3)
    assert triple(figures["bulge"]) == pytest.approx([q * flexure / 32.0 for q in outward])
    ends = 12.0 * (0.125 + 5.0 / (24.0 * math.sqrt(3.0)))
    assert triple(figures["free_end"]) == pytest.approx([ends * q * flexure for q in outward])
    # The bulge is half of the rounding, 0.1 mm: L^4 = 0.1 * 32 E a1^3/q.
    longest = sorted((3.2 * 100000.0 * 3.5**3 / q) ** 0.25 for q in outward)
    assert triple(figures["longest_opening"]) == pytest.approx(longest, rel=1e-9)
    # Narrower than its port: bars carry it alone, 90 of 314 mm.
    factor = math.pi * 100.0 / 90.0
    assert triple(figures["bar_pressure"]) == pytest.approx([factor * q for q in outward])
    wide = asked(ring_width=20.0)["figures"]
    factor = 20.0 / (20.0 - 14.0 * (1.0 - 90.0 / (math.pi * 100.0)))
    assert triple(wide["bar_pressure"]) == pytest.approx([factor * q for q in outward])


@pytest.mark.parametrize(("width", "held"), [(13.9, False), (14.0, False), (14.1, True)])
def test_a_ring_wider_than_its_port_is_held(width, held):
    answer = asked(ring_width=width)
    said = outcome(answer, "ring-over-port")
    assert said["outcome"] == "good"
    assert ("wider than the port" in said["why"]) == held
    assert (said["value"]["value"], said["limit"]["value"]) == (width, 14.0)
    for name in ("bulge", "free_end"):
        assert (answer["figures"][name]["high"] == 0.0) == held
    for check in ("bulge", "joint"):
        assert (outcome(answer, check) is None) == held


def test_spring_and_free_gap_by_hand():
    figures = asked()["figures"]
    change = spring.gap_change(0.05, 100.0, 3.5, 100000.0)
    assert figures["free_gap"]["value"] == pytest.approx(change + 0.35, rel=1e-9)
    # As thin as presses just so by its spring, and a little harder.
    most = spring.LARGEST_SPRINGINESS / spring.springiness(0.05, 100.0, 1.6, 100000.0) * 0.05
    for share, good in ((0.999, True), (1.001, False)):
        answer = asked(radial_thickness=1.6, wall_pressure=share * most)
        assert ("free_gap" in answer["figures"]) == good
        row = outcome(answer, "spring")
        assert (row is None) == good
    assert row["outcome"] == "stop"
    assert row["value"]["value"] == pytest.approx(1.001 * most, rel=1e-9)
    assert row["limit"]["value"] == pytest.approx(most, rel=1e-9)


def test_friction_by_hand():
    """mu (n p + share dp) pi d1 h1; 2 * 35 mm at 240 turns is 0.28 m/s."""
    figures = asked()["figures"]
    area = math.pi * 100.0 * 5.0
    force = [
        mu * (3 * 0.05 + share * 0.9) * area
        for mu, share in ((0.05, 0.25), (0.1, 0.5), (0.15, 1.0))
    ]
    assert triple(figures["friction_force"]) == pytest.approx(force, rel=1e-9)
    assert triple(figures["friction_power"]) == pytest.approx([0.28 * one for one in force])
    put_in = {row["symbol"]: row["value"] for row in figures["friction_force"]["working"]}
    assert (put_in["dp"], put_in["mu"]) == (pytest.approx(0.9, rel=1e-9), 0.1)


def test_leak_between_two_steady_pressures():
    """Three rings in a row; nothing by light, groove as new."""
    figures = asked()["figures"]
    given = piston_valve._filled(fields.checked(piston_valve.FIELDS, VALVE))[0]
    state = given["steam"]
    # Dry, saturated.
    assert state.volume == pytest.approx(steam_properties.steam_state(1.101325).volume, rel=1e-12)
    duty = ring_duty.steady_duty(1.101325, 0.201325, 3, exponent(0.0), 1.101325 * state.volume)
    paths = piston_valve.ring_leak.paths(given, duty, "plain", 0.8, 0.0, 0.0)
    assert triple(figures["leak_rate"]) == pytest.approx(paths.total, rel=1e-9)
    assert triple(figures["gap_leak_napier"]) == pytest.approx(paths.napier, rel=1e-9)
    put_in = {row["symbol"]: row["value"] for row in figures["leak_rate"]["working"]}
    assert put_in["W_gap"] == pytest.approx(paths.gap[1], rel=1e-9)
    assert put_in["W_side"] == pytest.approx(paths.face[1], rel=1e-9)


def test_bars_leave_some_port_between_them():
    """Four bars of 78.54 mm go round 100 mm: then there is none."""
    quarter = math.pi * 100.0 / 4.0
    for width, holds in ((quarter, False), (quarter + 0.01, False), (quarter - 0.01, True)):
        if holds:
            found = asked(port_bars=4, port_bar_width=width)["figures"]["opening"]["value"]
            assert found == pytest.approx(0.01, abs=1e-9)
            continue
        with pytest.raises(InputProblem) as refused:
            asked(port_bars=4, port_bar_width=width)
        assert [fault.path for fault in refused.value.faults] == [("port_bar_width",)]


@pytest.mark.parametrize(("share", "told"), [(0.1999, True), (0.2001, False)])
def test_bars_of_less_than_a_fifth_wear_first(share, told):
    row = outcome(asked(port_bars=10, port_bar_width=share * math.pi * 10.0), "bar-wear")
    assert (row is not None) == told
    if told:
        assert row["outcome"] == "watch"
        assert row["value"]["value"] == pytest.approx(share, rel=1e-9)
        assert row["limit"]["value"] == 0.2
        # 0.05 and half of 0.9 N/mm2 over a fifth of the way round.
        assert "about %.3f N/mm2" % (0.5 / share) in row["why"]
    # A fifth is enough.
    given = piston_valve._filled(fields.checked(piston_valve.FIELDS, VALVE))[0]
    crossed = {**piston_valve._crossing(given), "covered": 0.2}
    assert "bar-wear" not in {one.check for one in piston_valve._findings(given, crossed)}
    # One wider than its port is carried all the way round at its edges.
    assert outcome(asked(port_bar_width=2.0, ring_width=15.0), "bar-wear") is None


def crossing(**more):
    return {
        "held": False,
        "bulge": [0.01, 0.02, 0.1],
        "ends": [0.01, 0.02, 0.1],
        "longest": [20.0, 26.0, 31.0],
        "covered": 0.5,
        "bar_pressure": 1.0,
        **more,
    }


GIVEN = {"bore": 100.0, "port_bar_width": 9.0, "joint_pinned": False, "worn_gap": 0.8}


@pytest.mark.parametrize(
    ("high", "result"),
    [(0.0999, "good"), (0.1, "good"), (0.1001, "watch"), (0.2, "watch"), (0.2001, "stop")],
)
def test_a_bulge_within_half_the_rounding_is_good_and_beyond_all_of_it_stops(high, result):
    row = piston_valve._bulge(GIVEN, crossing(bulge=[0.01, 0.02, high]), 0.2)
    assert (row.outcome, row.value.value, row.limit.value) == (result, high, 0.2)
    if result != "good":
        # Openings of 20 mm and bars of 9: pi 100/29 is 10.8.
        assert row.remedy.startswith("Use 11 bars of this width or more")


@pytest.mark.parametrize(
    ("end", "result"),
    [(0.0999, "good"), (0.1, "good"), (0.1001, "watch"), (0.2, "watch"), (0.2001, "stop")],
)
def test_free_ends_within_half_the_rounding_are_good_and_beyond_all_of_it_stop(end, result):
    row = piston_valve._joint(GIVEN, crossing(ends=[0.0, 0.05, end]), 0.2)
    assert (row.outcome, row.value.value, row.limit.value) == (result, end, 0.2)


@pytest.mark.parametrize(("bar", "good"), [(1.24, False), (1.25, False), (1.26, True)])
def test_a_pinned_joint_wants_a_bar_wider_than_its_gap_and_both_roundings(bar, good):
    """0.75 mm and twice 0.25."""
    given = {**GIVEN, "joint_pinned": True, "port_bar_width": bar, "worn_gap": 0.75}
    row = piston_valve._joint(given, crossing(ends=[0.0, 0.05, 5.0]), 0.25)
    assert row.outcome == ("good" if good else "stop")
    if not good:
        assert (row.value.value, row.limit.value) == (bar, 1.25)
        assert "1.25 mm" in row.remedy


def test_a_metal_that_does_not_go_with_the_liner_is_told():
    assert outcome(asked(), "pairing") is None
    # Bronze on iron wears itself away, an iron ring a steel liner; common practice.
    assert outcome(asked(cylinder_material="steel"), "pairing")["outcome"] == "watch"
    bronze = asked(ring_material="phosphor-bronze", cylinder_material="grey-iron")
    assert outcome(bronze, "pairing")["outcome"] == "stop"


def test_deflections_over_their_load():
    """Held straight at both ends, 1/384; a free end over a whole opening 1/8 + 5/(24 sqrt 3)."""
    flexure = 12.0 * 0.4 * 25.0**4 / (103000.0 * 3.2**3)
    assert port_crossing.bulge(0.4, 25.0, 3.2, 103000.0) == pytest.approx(flexure / 384.0)
    end = (0.125 + 5.0 / (24.0 * math.sqrt(3.0))) * flexure
    assert port_crossing.free_end(0.4, 25.0, 3.2, 103000.0) == pytest.approx(end, rel=1e-12)
    back = port_crossing.longest_opening(0.4, flexure / 384.0, 3.2, 103000.0)
    assert back == pytest.approx(25.0, rel=1e-12)
    assert port_crossing.opening(100.0, 7, 9.0) == pytest.approx(math.pi * 100.0 / 7.0 - 9.0)


def tried(check, clears=None, value=0.3, limit=0.2, unit="mm", **more):
    """(what was tried, as dicts of what it changed; the Finding)."""
    values = fields.checked(piston_valve.FIELDS, {**VALVE, "port_width": 13.5, **more})
    given = piston_valve._filled(values)[0]
    seen = []
    row = finding(check, "stop", "why", "Mend it.", Quantity(value, unit), Quantity(limit, unit))

    def judge(changed):
        seen.append({name: changed[name] for name in changed if changed[name] != values.get(name)})
        return [] if len(seen) - 1 == clears else [row], given

    (came,) = valve_remedies.told(values, given, [row], judge)
    return seen, came


# 1.02 of 13.5 mm, up to half a millimetre; or 34.7 up to 35 64ths.
WIDER = {False: 14.0, True: 35.0 * 25.4 / 64.0}


@pytest.mark.parametrize("inch", [False, True])
@pytest.mark.parametrize(("high", "bars"), [(0.3, 13), (0.4395, 13), (0.441, 14)])
def test_a_ring_that_catches_gets_more_bars_or_is_wider_than_its_port(inch, high, bars):
    """Half of 0.2 over 0.3 mm: an opening shorter by the fourth root of a third, and 2 % more.

    That is 16.69 mm, and 9 of bar: 12.2, so 13 bars. 0.4402 mm would be 15.17 and 9: 13 of them.
    """
    seen, _ = tried("bulge", value=high, inch_sizes=inch)
    assert seen == [{"port_bars": bars}, {"ring_width": pytest.approx(WIDER[inch], rel=1e-12)}]
    _, row = tried("bulge", clears=0, value=high)
    assert row.remedy == "Use %d bars of this width." % bars
    _, row = tried("bulge", clears=1, value=high)
    assert row.remedy.startswith("Make the ring 14.00 mm")
    assert row.remedy.endswith("wide, wider than the port.")


@pytest.mark.parametrize(("span", "bars"), [(22.0, 11), (22.4159, 11), (22.416, 10), (90.0, 4)])
def test_bars_to_leave_no_longer_an_opening(span, bars):
    """pi 100 over opening and bar, up: 31.416 mm to each of ten."""
    assert valve_remedies.bars_needed(GIVEN, span) == bars


@pytest.mark.parametrize("inch", [False, True])
def test_a_joint_is_pinned_on_a_bar_that_carries_both_ends(inch):
    """0.8 of gap, twice 0.3 of rounding and 0.2 beyond: 1.6 mm, or 4.03 up to 5 64ths."""
    wide = pytest.approx(5.0 * 25.4 / 64.0 if inch else 1.6, rel=1e-12)
    wider = {"ring_width": pytest.approx(WIDER[inch], rel=1e-12)}
    seen, _ = tried("joint", edge_rounding=0.3, inch_sizes=inch)
    assert seen == [{"joint_pinned": True}, {"joint_pinned": True, "port_bar_width": wide}, wider]
    seen, _ = tried("joint", edge_rounding=0.3, joint_pinned=True, inch_sizes=inch)
    assert seen == [{"port_bar_width": wide}, wider]
    _, row = tried("joint", clears=1, edge_rounding=0.3)
    assert row.remedy.startswith("Pin the joint on a bar and make the bars 1.60 mm")


@pytest.mark.parametrize("inch", [False, True])
def test_bars_that_wear_are_made_as_wide_as_they_should_be(inch):
    """0.21 pi 100/10: 6.597 mm, or 16.6 up to 17 64ths."""
    given = {"port_bar_width": 3.0, "inch_sizes": inch}
    seen, _ = tried("bar-wear", value=0.1, limit=0.21, unit="1", **given)
    wide = 17.0 * 25.4 / 64.0 if inch else 6.6
    assert seen == [
        {"ring_width": pytest.approx(WIDER[inch], rel=1e-12)},
        {"port_bar_width": pytest.approx(wide, rel=1e-12)},
    ]


def test_a_ring_asked_too_much_is_thicker_or_asked_less():
    seen, _ = tried("spring", value=0.05, limit=0.0347, unit="MPa")
    assert seen == [{"radial_thickness": None}, {"wall_pressure": pytest.approx(0.034)}]
    _, row = tried("spring", clears=0, value=0.05, limit=0.0347, unit="MPa")
    assert row.remedy == "Leave the radial thickness out."
    _, row = tried("spring", clears=1, value=0.05, limit=0.0347, unit="MPa")
    assert row.remedy.startswith("Ask for 0.034 N/mm2")
    seen, row = tried("pairing")
    assert seen == [] and row.remedy == "Mend it."
