"""Every calculation means the same closed gap: sizing, running, piston valve and inspection."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from ringwright.core import calculations

JOBS = {
    "bore": st.floats(15.0, 800.0),
    "steam_pressure": st.floats(0.05, 3.0),
    "superheat": st.floats(0.0, 120.0),
    "shop_temperature": st.floats(-5.0, 35.0),
    "ring_type": st.sampled_from(["plain", "double-turn"]),
    "ring_material": st.sampled_from(["grey-iron", "phosphor-bronze"]),
    "cylinder_material": st.sampled_from(["grey-iron", "aluminium"]),
    "gap_share": st.one_of(st.none(), st.floats(0.0005, 0.008)),
}
NEW = settings(derandomize=True, deadline=None, max_examples=120)


def _of(answer, name):
    return answer["figures"][name]["value"]


def _chosen(answer, name):
    return [entry["value"] for entry in answer["chosen"] if entry["input"] == name]


def _by_hand(job, sized, gap, hot, wall):
    """The gap left between the ends [mm]: both circumferences at their own heat.

    The expansions are those of the working shown; tests/published/test_materials.py checks them.
    """
    put_in = {
        entry["symbol"]: entry["value"] for entry in sized["figures"]["closed_gap"]["working"]
    }
    ring = 1.0 + put_in["alpha_r"] * (hot - job["shop_temperature"])
    cylinder = 1.0 + put_in["alpha_c"] * (wall - job["shop_temperature"])
    return math.pi * job["bore"] * cylinder - (math.pi * job["bore"] - gap) * ring


@NEW
@given(**JOBS)
def test_sizing_and_running_agree_on_the_gap_and_what_is_left_of_it(superheat, gap_share, **job):
    boiling = calculations.run("sizing", job)["figures"]["saturation_temperature"]["value"]
    hot = job["steam_temperature"] = max(boiling + superheat, 100.0)
    asked = {} if gap_share is None else {"closed_gap": gap_share * job["bore"]}
    sized = calculations.run("sizing", {**job, **asked, "end_kerf": min(0.03 * job["bore"], 10.0)})
    engine = {"stroke": job["bore"], "speed": 200.0}
    runs = calculations.run("running", {**job, **asked, **engine})
    valve = calculations.run("piston-valve", {**job, **asked, "port_width": 10.0})

    gap = _of(sized, "closed_gap")
    if gap_share is None:
        assert _chosen(runs, "closed_gap") == pytest.approx([gap], rel=1e-12)
        why = [entry["why"] for entry in sized["chosen"] if entry["input"] == "closed_gap"]
        assert [e["why"] for e in runs["chosen"] if e["input"] == "closed_gap"] == why
    assert _chosen(runs, "worn_gap") == pytest.approx([gap], rel=1e-12)
    assert _of(valve, "closed_gap") == pytest.approx(gap, rel=1e-12)
    assert _chosen(runs, "piston_diameter") == pytest.approx(_chosen(sized, "piston_diameter"))

    # A double-turn ring starts in a stone-cold cylinder, a plain one in a wall half warm: the
    # middle of the seven points from cold to steam.
    cold, warm = runs["warming"], valve["warming"]
    middle = job["shop_temperature"] + 0.5 * (hot - job["shop_temperature"])
    left = _of(sized, "closed_gap_hot")
    if job["ring_type"] == "double-turn":
        shop = job["shop_temperature"]
        assert _of(cold, "gap_cold_start") == pytest.approx(left, abs=1e-9)
        assert _of(warm, "gap_cold_start") == pytest.approx(left, abs=1e-9)
        assert left == pytest.approx(_by_hand(job, sized, gap, hot, shop), abs=1e-9)
    else:
        assert cold["series"]["gap_hurried"]["values"][3] == pytest.approx(left, abs=1e-9)
        assert left == pytest.approx(_by_hand(job, sized, gap, hot, middle), abs=1e-9)
    found = {entry["check"]: entry for entry in sized["findings"]}
    assert found["end-gap"]["value"]["value"] == pytest.approx(left, abs=1e-9)
    if gap_share is None:
        assert found["end-gap"]["outcome"] == "good"
    if "cold-start" in found:
        assert found["cold-start"]["value"]["value"] == pytest.approx(
            _of(cold, "gap_cold_start"), abs=1e-9
        )


@pytest.mark.parametrize(
    ("ring_type", "gap", "outcome", "says"),
    [
        # 80 mm of iron at 170.5 degC grow pi*80*11.7e-6*150.5 = 0.4425 mm, half of it 0.2213.
        ("double-turn", 0.50, "good", "stone-cold cylinder, 0.058"),
        ("double-turn", 0.46, "watch", "less than practice leaves"),
        ("double-turn", 0.40, "watch", "butt and the ring may seize"),
        ("double-turn", 0.20, "stop", "butt and the ring seizes"),
        ("plain", 0.30, "good", "half-warm cylinder, 0.079"),
        ("plain", 0.24, "watch", "less than practice leaves"),
        ("plain", 0.20, "stop", "butt and the ring seizes"),
    ],
)
def test_end_gap_is_judged_where_it_is_filed(ring_type, gap, outcome, says):
    answer = calculations.run("sizing", {"bore": 80.0, "ring_type": ring_type, "closed_gap": gap})
    found = {entry["check"]: entry for entry in answer["findings"]}["end-gap"]
    assert found["outcome"] == outcome
    assert says in found["why"]
    if outcome != "good":
        assert found["remedy"].startswith("Give a closed gap of at least")


@pytest.mark.parametrize("metal", ["grey-iron", "phosphor-bronze"])
def test_each_new_ring_of_the_comparison_has_its_own_gap(metal):
    """What a plain ring would leak does not depend on the ring that is on the piston now."""
    engine = {"bore": 80.0, "stroke": 90.0, "speed": 300.0, "steam_pressure": 0.7}
    sizes = {"radial_thickness": 3.0, "ring_width": 6.0, "worn_gap": 1.0, "ring_material": metal}
    rows = []
    for ring_type in ("plain", "double-turn"):
        answer = calculations.run("running", {**engine, **sizes, "ring_type": ring_type})
        rows.append({row["ring"]: row["gap_leak"]["high"] for row in answer["comparison"]})
    assert rows[0]["plain"] == pytest.approx(rows[1]["plain"], rel=1e-12)
    assert rows[0]["double-turn"] == pytest.approx(rows[1]["double-turn"], rel=1e-12)
