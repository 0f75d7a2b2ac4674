"""What sizing shows of a ring: figures with the sizes they are worked from, and what stops it."""

import pytest

from ringwright.core.ring.sizing import behaviour, figures, stops

from .test_design_by_hand import ring


def shown(d):
    acts = behaviour(d)
    return figures(d, acts), acts


def test_a_figure_is_shown_with_the_sizes_it_is_worked_from():
    d = ring(setting="bound", finishing="forced-round")
    found, acts = shown(d)
    given = found["contact_pressure"].working[1]
    # r = (80 - 2.6)/2, r_o = 80/2; the band's own pressure pulls as 0.5 p_c h1 d1.
    assert (given["r"], given["r_o"]) == (pytest.approx(38.7, rel=1e-12), 40.0)
    assert 0.5 * given["p_c"] * 5.0 * 80.0 == pytest.approx(acts.tangential, rel=1e-9)
    assert (given["r_b"], given["L"]) == (d.blank.bored_radius, d.blank.length)


def test_winding_on_is_shown_from_a_twentieth_less_to_what_haste_does():
    found, acts = shown(ring(setting="bound", finishing="forced-round"))
    on = found["wound_on_stress"]
    assert on.value == acts.wound_on.spread_out
    assert on.low == pytest.approx(0.95 * acts.wound_on.spread_out, rel=1e-9)
    assert on.high == acts.let_down.hurried_high
    assert found["turning_through_stress"].value == acts.through.equivalent
    assert found["turning_through_force"].value == acts.through.force
    assert found["grip_force"].value == acts.grip


def test_a_ring_is_opened_by_its_ends_or_over_a_plug():
    plain = shown(ring("plain", setting="spread"))[0]
    assert plain["sprung_on_stress"].method == "opening-stress"
    assert "grip_force" not in plain
    assert shown(ring())[0]["sprung_on_stress"].method == "round-set-plug"
    spread = shown(ring(setting="spread"))[0]
    assert spread["sprung_on_stress"].method == "plug-stress"


def test_only_what_stops_a_ring_stops_it():
    # 0.25 N/mm2 stops; what is good or watched of it is not told.
    stiff = {"wall_pressure": 0.25, "radial_thickness": 4.2, "free_gap": None}
    d = ring("plain", setting="spread", **stiff)
    found = stops(d)
    assert "too-stiff" in [row.check for row in found]
    assert all(row.outcome == "stop" for row in found)
    assert all(row.apply == () for row in found)
    assert [row.check for row in stops(d, {"bore": 80.0})] == [row.check for row in found]
    assert stops(ring("plain", setting="spread", groove_depth=3.2)) == []
