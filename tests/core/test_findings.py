"""What a careful machinist would ask: every check can be provoked, and says what to do about it.

Each row is a request that must bring up that check with that outcome. The last test holds the
table complete: a new check needs a row. Those of making/ stand in test_tooling, test_stock and
test_route.
"""

import ast
import math
from pathlib import Path

import pytest

import ringwright.core
from ringwright.core import calculations

CORE = Path(ringwright.core.__file__).parent

PLAIN = {"bore": 80.0, "ring_type": "plain"}
ENGINE = {"bore": 80.0, "stroke": 90.0, "speed": 300.0, "steam_pressure": 0.7}
VALVE = {"bore": 60.0, "steam_pressure": 0.7, "port_width": 12.0}
GROOVE = {"bore": 80.0, "groove_readings": [{"mouth": 5.4, "bottom": 5.1}]}
STIFF = {"radial_thickness": 6.0, "wall_pressure": 0.1}
LARGE = {"readings": [{"angle": 10.0 * i, "radius": 41.5} for i in range(36)]}
OVAL = {"harmonics": [{"order": 2, "amplitude": 0.5, "phase": 0.0}]}


def oval(lobe, heights=(5.0, 60.0, 115.0), taper=0.0, step=45.0, slip=0.0):
    """Readings of a two-point gauge in a bore of 80 mm: ovality four times `lobe`."""
    rows = []
    for i, height in enumerate(heights):
        for j in range(int(180.0 / step)):
            off = 2.0 * lobe * math.cos(2.0 * math.radians(step * j))
            rows.append(
                {
                    "height": height,
                    "direction": step * j,
                    "diameter": 80.0 + off + taper * i + (slip if (i, j) == (1, 1) else 0.0),
                }
            )
    return {"readings": rows}


def three_point(heights=(10.0, 60.0)):
    rows = [
        {"height": h, "direction": 30.0 * j, "diameter": 80.0, "gauge": "three-point"}
        for h in heights
        for j in range(4)
    ]
    return {"readings": rows}


def bound(**more):
    """A ring that shows light: set bound on its former and turned while forced round."""
    return {"setting": "bound", "finishing": "forced-round", **more}


ROWS = [
    # The ring: spring, strength, bearing, section.
    ("sizing", {"bore": 80.0, "wall_pressure": 0.1}, "too-stiff", "watch"),
    ("sizing", {"bore": 80.0, "wall_pressure": 0.3}, "too-stiff", "stop"),
    ("sizing", {"bore": 80.0, "wall_pressure": 0.025}, "too-slack", "watch"),
    ("sizing", {"bore": 80.0, "wall_pressure": 0.01}, "too-slack", "stop"),
    ("sizing", {"bore": 80.0, "end_kerf": 9.5}, "sawn-open", "stop"),
    ("sizing", {**PLAIN, "radial_thickness": 1.6}, "closed-stress", "stop"),
    ("sizing", {"bore": 80.0, "wall_pressure": 0.2}, "closed-stress", "watch"),
    ("sizing", {"bore": 80.0, "shelf_former": 88.0}, "forming", "stop"),
    ("sizing", {"bore": 80.0, "relief": 0.3}, "forming", "watch"),
    ("sizing", {**PLAIN, "radial_thickness": 2.9}, "sprung-on", "stop"),
    ("sizing", {**PLAIN, "wall_pressure": 0.1}, "sprung-on", "watch"),
    ("sizing", {"bore": 80.0, "radial_thickness": 3.6}, "sprung-on", "stop"),
    ("sizing", {"bore": 80.0, "radial_thickness": 3.6}, "wound-on", "stop"),
    ("sizing", {"bore": 80.0, "wall_pressure": 0.1}, "wound-on-in-haste", "watch"),
    ("sizing", {"bore": 30.0, "ring_width": 9.0}, "turning-through", "stop"),
    ("sizing", {"bore": 80.0, **bound(free_gap=14.0)}, "light", "watch"),
    ("sizing", {"bore": 300.0, **bound(radial_thickness=7.0)}, "light", "stop"),
    ("sizing", {**PLAIN, "setting": "sprung"}, "bearing", "watch"),
    ("sizing", {"bore": 80.0, "setting": "spread"}, "setting", "stop"),
    ("sizing", {"bore": 80.0, "relief": 0.3}, "grip", "watch"),
    ("sizing", {**PLAIN, "wall_pressure": 0.1}, "section", "watch"),
    ("sizing", {**PLAIN, "radial_thickness": 1.6}, "proportion", "watch"),
    ("sizing", {"bore": 80.0, "radial_thickness": 6.0}, "proportion", "watch"),
    ("sizing", {"bore": 80.0, "ring_width": 9.0}, "width", "watch"),
    ("sizing", {**PLAIN, "radial_thickness": 1.6}, "springy", "watch"),
    # Cylinder, groove, piston, steam.
    ("sizing", {"bore": 80.0, "cylinder_material": "aluminium"}, "pairing", "stop"),
    ("sizing", {"bore": 80.0, "cylinder_material": "steel"}, "pairing", "watch"),
    ("sizing", {"bore": 80.0, "piston_material": "aluminium"}, "piston-metal", "watch"),
    ("sizing", {"bore": 80.0, "steam_temperature": 480.0}, "ring-heat", "stop"),
    ("sizing", {"bore": 80.0, "steam_temperature": 120.0}, "steam", "watch"),
    ("sizing", {"bore": 80.0, "steam_pressure": 8.0}, "steam-pressure", "watch"),
    ("sizing", {"bore": 80.0, "modulus": 175000.0}, "modulus", "watch"),
    ("sizing", {"bore": 80.0, "closed_gap": 0.1}, "end-gap", "stop"),
    ("sizing", {"bore": 80.0, "closed_gap": 0.4}, "end-gap", "watch"),
    ("sizing", {**PLAIN, "closed_gap": 1.0}, "gap-wide", "watch"),
    ("sizing", PLAIN, "cold-start", "watch"),
    ("sizing", {"bore": 80.0, "ring_width": 5.0, "groove_width": 4.98}, "side-clearance", "stop"),
    ("sizing", {"bore": 80.0, "ring_width": 5.0, "groove_width": 5.01}, "side-clearance", "watch"),
    ("sizing", {"bore": 80.0, "ring_width": 5.0, "groove_width": 5.4}, "side-clearance", "watch"),
    ("sizing", {"bore": 80.0, "groove_depth": 1.0}, "groove-depth", "stop"),
    ("sizing", {"bore": 80.0, "groove_depth": 2.5}, "groove-depth", "watch"),
    ("sizing", {"bore": 80.0, "piston_diameter": 77.0}, "piston-clearance", "watch"),
    ("sizing", {"bore": 80.0, "piston_diameter": 79.97}, "piston-seizes", "stop"),
    # On the wall.
    ("ring-without-heat", {"bore": 80.0, "finishing_allowance": 0.1}, "cleans-up", "stop"),
    ("ring-without-heat", {"bore": 80.0, "free_gap": 18.0}, "even-thickness", "watch"),
    (
        "ring-without-heat",
        {"bore": 80.0, "finishing": "band", "bored_again": False},
        "even-thickness",
        "stop",
    ),
    ("ring-without-heat", {"bore": 80.0, "free_gap": 18.0}, "drawn-closed", "watch"),
    ("ring-without-heat", {"bore": 80.0, "free_gap": 24.0}, "drawn-closed", "stop"),
    ("fitting", PLAIN, "cold-start", "watch"),
    ("wall-pressure", {"bore": 80.0, "bore_shape": LARGE}, "no-contact", "stop"),
    ("wall-pressure", {**PLAIN, "setting": "bound"}, "seals", "watch"),
    ("wall-pressure", {**PLAIN, **STIFF, "bore_shape": OVAL}, "seals", "stop"),
    ("wall-pressure", {"bore": 80.0, **bound(free_gap=14.0)}, "light", "watch"),
    ("wall-pressure", {"bore": 300.0, **bound(radial_thickness=7.0)}, "light", "stop"),
    ("wall-pressure", {**PLAIN, "radial_thickness": 1.6}, "closed-stress", "stop"),
    ("wall-pressure", {"bore": 80.0, "wall_pressure": 0.2}, "closed-stress", "watch"),
    ("wall-pressure", {**PLAIN, "free_gap": 40.0}, "large-deflection", "watch"),
    # The bore.
    ("bore-survey", oval(0.05), "verdict", "watch"),
    ("bore-survey", {**oval(0.06), "largest_bore": 80.2}, "verdict", "stop"),
    (
        "bore-survey",
        {**oval(0.03), "ring_type": "plain", "radial_thickness": 6.0},
        "ring-follows",
        "watch",
    ),
    (
        "bore-survey",
        {**oval(0.8), "ring_type": "plain", "radial_thickness": 6.0},
        "ring-follows",
        "stop",
    ),
    ("bore-survey", {**oval(0.0, taper=0.06), "closed_gap": 0.2}, "gap-breathes", "stop"),
    ("bore-survey", {**oval(0.0, taper=0.06), "closed_gap": 0.6}, "gap-breathes", "watch"),
    (
        "bore-survey",
        {**oval(0.0, taper=0.06), "ring_type": "plain", "closed_gap": 0.8},
        "gap-breathes-wide",
        "watch",
    ),
    ("bore-survey", {**oval(0.04), "gauge_uncertainty": 0.05}, "gauge-in-doubt", "watch"),
    ("bore-survey", oval(0.0, slip=0.06), "readings-disagree", "watch"),
    ("bore-survey", three_point(), "ovality-unseen", "watch"),
    ("bore-survey", oval(0.01, step=90.0), "two-directions", "watch"),
    # The running engine.
    (
        "running",
        {**ENGINE, "worn_gap": 8.0, "piston_diameter": 79.0, "rings_on_piston": 1},
        "leak",
        "watch",
    ),
    ("running", {**ENGINE, "compression": 0.5, "clearance_volume": 0.02}, "compression", "watch"),
    (
        "running",
        {**ENGINE, "steam_pressure": 0.03, "back_pressure": 0.02, "cut_off": 0.06},
        "power",
        "stop",
    ),
    ("running", {**ENGINE, "steam_measured": 40.0}, "missing-quantity", "watch"),
    ("running", {**ENGINE, "steam_measured": 150.0}, "missing-quantity", "watch"),
    (
        "running",
        {**ENGINE, "steam_measured": 47.0, "worn_gap": 10.0, "piston_diameter": 78.0},
        "leak-against-feed",
        "watch",
    ),
    ("running", {**ENGINE, "worn_gap": 3.0}, "light", "watch"),
    ("running", {**ENGINE, "groove_wear": 0.2}, "groove", "watch"),
    (
        "running",
        {**ENGINE, "ring_material": "filled-ptfe-carbon", "steam_temperature": 280.0},
        "ring-material-heat",
        "stop",
    ),
    ("running", {**ENGINE, "cylinder_material": "aluminium"}, "pairing", "stop"),
    ("running", {**ENGINE, "friction_coefficient": 0.5, "rings_on_piston": 8}, "friction", "watch"),
    ("running", {**ENGINE, "worn_gap": 6.0, "ring_type": "plain"}, "spring", "watch"),
    (
        "running",
        {**ENGINE, "gap_readings": [{"hours": 0.0, "gap": 0.3}, {"hours": 250.0, "gap": 9.0}]},
        "wear",
        "watch",
    ),
    (
        "running",
        {**ENGINE, "ring_material": "filled-ptfe-bronze", "closed_gap": 0.1},
        "gap-running",
        "stop",
    ),
    (
        "running",
        {
            **ENGINE,
            "ring_material": "filled-ptfe-bronze",
            "ring_width": 8.0,
            "side_clearance": 0.02,
        },
        "side-clearance-running",
        "stop",
    ),
    (
        "running",
        {**ENGINE, "piston_material": "aluminium", "piston_diameter": 79.95},
        "piston-clearance-running",
        "stop",
    ),
    (
        "running",
        {**ENGINE, "ring_width": 12.0, "side_clearance": 0.02},
        "side-clearance-start",
        "stop",
    ),
    ("running", {**ENGINE, "closed_gap": 0.1}, "cold-start", "watch"),
    # The worn groove.
    ("groove-recut", GROOVE, "groove-taper", "watch"),
    ("groove-recut", {**GROOVE, "ring_width": 4.0}, "groove-cleans-up", "stop"),
    ("groove-recut", {**GROOVE, "groove_depth": 9.0}, "groove-deep", "watch"),
    ("groove-recut", {**GROOVE, "end_land": 0.3}, "land-strength", "stop"),
    ("groove-recut", {**GROOVE, "end_land": 0.8}, "land-strength", "watch"),
    ("groove-recut", {**GROOVE, "inner_land": 2.0}, "land-width", "watch"),
    ("groove-recut", {**GROOVE, "old_ring_width": 5.0}, "insert", "stop"),
    ("groove-recut", {**GROOVE, "passed_port": 8.0}, "ring-over-port", "watch"),
    ("groove-recut", {**GROOVE, "ring_overrun": 4.0}, "overrun", "watch"),
    ("groove-recut", {**GROOVE, "ring_overrun": 7.0}, "overrun", "stop"),
    ("groove-recut", {**GROOVE, "ring_type": "plain"}, "width", "watch"),
    # How many rings.
    ("ring-pack", {**ENGINE, "rings_on_piston": 8}, "ring-count", "watch"),
    (
        "ring-pack",
        {**ENGINE, "rings_on_piston": 1, "piston_diameter": 74.0},
        "double-for-two",
        "watch",
    ),
    ("ring-pack", {**ENGINE, "end_land": 0.3}, "land-short", "stop"),
    ("ring-pack", {**ENGINE, "end_land": 0.7}, "land-short", "watch"),
    ("ring-pack", {**ENGINE, "piston_length": 12.0}, "pack-length", "stop"),
    # The piston valve.
    ("piston-valve", {**VALVE, "wall_pressure": 1.0, "radial_thickness": 1.0}, "spring", "stop"),
    ("piston-valve", {**VALVE, "port_bars": 3}, "bulge", "stop"),
    ("piston-valve", {**VALVE, "port_bars": 3}, "joint", "stop"),
    ("piston-valve", {**VALVE, "port_bar_width": 1.0}, "bar-wear", "watch"),
    ("piston-valve", {**VALVE, "cylinder_material": "aluminium"}, "pairing", "stop"),
    # The finished ring, and how rings come out.
    ("inspection", {**PLAIN, "measured_width": 9.0}, "width", "stop"),
    ("inspection", {**PLAIN, "measured_width": 2.7}, "width-lost", "stop"),
    ("inspection", {**PLAIN, "measured_closed_gap": 0.01}, "closed-gap", "stop"),
    ("inspection", {**PLAIN, "measured_closed_gap": 0.165}, "closed-gap", "watch"),
    ("inspection", {**PLAIN, "measured_closed_gap": 1.2}, "closed-gap-wide", "stop"),
    ("inspection", {**PLAIN, "measured_light": 0.1}, "light", "watch"),
    ("inspection", {**PLAIN, "measured_light": 0.4}, "light", "stop"),
    (
        "inspection",
        {**PLAIN, "measured_free_gap": 0.1, "measured_closed_gap": 0.3},
        "pressure",
        "stop",
    ),
    ("inspection", {**PLAIN, "measured_thickness": 1.8}, "thickness", "stop"),
    ("inspection", {**PLAIN, "measured_free_gap": 7.0}, "relief", "watch"),
    (
        "inspection",
        {**PLAIN, "measured_free_gap": 9.0, "measured_force": 45.0},
        "agreement",
        "watch",
    ),
    (
        "inspection",
        {**PLAIN, "measured_across": 84.0, "measured_along": 84.0},
        "free-shape",
        "watch",
    ),
    ("soak", {"bore": 80.0}, "soak-hot", "watch"),
    ("soak", {"bore": 80.0, "tell_tale": "cherry-red"}, "soak-hot", "stop"),
    ("soak", {**PLAIN, "tell_tale": "crayon", "soak_temperature": 490.0}, "soak-cold", "watch"),
    ("soak", {"bore": 80.0, "tell_tale": "zinc-melts"}, "soak-cold", "stop"),
    ("soak", {"bore": 80.0}, "relief", "watch"),
    ("soak", {"bore": 80.0, "tell_tale": "oven-dial"}, "too-slack", "watch"),
    ("soak", {"bore": 80.0}, "too-slack", "stop"),
    ("soak", {"bore": 80.0, "relief": 0.5, "tell_tale": "low-red"}, "too-stiff", "watch"),
    ("soak", {**PLAIN, "ring_material": "filled-ptfe-carbon"}, "soak", "stop"),
    ("spread", {"bore": 80.0, "relief_spread": 0.3}, "yield", "watch"),
    ("spread", {"bore": 80.0, "relief_spread": 0.3, "thickness_spread": 0.5}, "yield", "stop"),
    # Habits of the trade, each where it does not hold.
    ("thumb-rules", {"bore": 25.0, "ring_type": "plain"}, "end-gap-thumb-rule", "watch"),
    ("thumb-rules", {"bore": 25.0, "ring_type": "plain"}, "piston-clearance-thumb-rule", "watch"),
    ("thumb-rules", {"bore": 40.0}, "side-clearance-thumb-rule", "watch"),
    ("thumb-rules", {"bore": 40.0, "ring_width": 3.0}, "width-thumb-rule", "watch"),
    ("thumb-rules", {"bore": 40.0}, "opening-thumb-rule", "watch"),
    ("thumb-rules", {"bore": 25.0, "ring_type": "plain"}, "former-thumb-rule", "watch"),
    ("thumb-rules", {"bore": 25.0, "ring_type": "plain"}, "free-gap-thumb-rule", "watch"),
    ("thumb-rules", {"bore": 25.0, "ring_type": "plain"}, "section-thumb-rule", "watch"),
    ("thumb-rules", {"bore": 25.0, "ring_type": "plain"}, "section-and-gap-thumb-rule", "watch"),
]
# Said in words alone, for there is nothing to measure.
WORDS_ALONE = {
    "pairing", "piston-metal", "section", "setting", "no-contact", "ovality-unseen",
    "two-directions", "joint", "agreement", "opening-thumb-rule", "soak",
}  # fmt: skip


@pytest.mark.parametrize("ring_type", ["plain", "double-turn"])
@pytest.mark.parametrize("material", ["filled-ptfe-carbon", "filled-ptfe-bronze"])
def test_room_for_heat_is_not_taken_for_wear(ring_type, material):
    """Filled PTFE grows 55e-6 to 118e-6 a degree (Tribology Handbook, table 17.5), iron 11.7e-6.

    Room for that is neither a slack groove nor a wide gap, in the sizing or once it is measured.
    """
    ring = {"bore": 150.0, "ring_type": ring_type, "ring_material": material, "ring_width": 16.0}
    ring["expander_pressure"] = 0.043
    sized = calculations.run("sizing", ring)
    outcomes = {row["check"]: row["outcome"] for row in sized["findings"]}
    assert sized["figures"]["side_clearance"]["value"] > 0.145
    assert outcomes["side-clearance"] == outcomes["end-gap"] == "good"
    assert "gap-wide" not in outcomes
    made = {
        "measured_width": sized["figures"]["ring_width"]["value"],
        # Read by a feeler square to a cut at 45 degrees.
        "measured_closed_gap": sized["figures"]["closed_gap"]["value"] * 0.5**0.5,
    }
    answer = calculations.run("inspection", {**ring, **made})
    outcomes = {row["check"]: row["outcome"] for row in answer["findings"]}
    assert outcomes["width"] == outcomes["closed-gap"] == "good"
    assert answer["verdict"] == "accept"


# Checks whose value is less than the limit when they stop or warn; all others pass it.
FALLS_SHORT = {
    "cleans-up", "groove-cleans-up", "land-short", "land-width", "insert", "ring-over-port",
    "too-slack", "grip", "steam", "end-gap", "cold-start", "groove-depth", "piston-seizes", "seals",
    "ring-follows", "gap-breathes", "power", "gap-running", "side-clearance-running",
    "piston-clearance-running", "side-clearance-start", "bar-wear", "closed-gap", "yield",
    ("inspection", "width"), ("running", "spring"), "soak-cold",
}  # fmt: skip
EITHER_WAY = {
    "side-clearance", "proportion", "missing-quantity", "modulus", "thickness", "relief",
    "pressure", "free-shape", "end-gap-thumb-rule", "piston-clearance-thumb-rule",
    "side-clearance-thumb-rule", "width-thumb-rule",
}  # fmt: skip


def found(calculation, request):
    return calculations.run(calculation, request)["findings"]


@pytest.mark.parametrize(("calculation", "request_", "check", "outcome"), ROWS)
def test_every_check_can_be_provoked_and_says_why_and_what_to_do(
    calculation, request_, check, outcome
):
    rows = found(calculation, request_)
    hits = [row for row in rows if row["check"] == check and row["outcome"] == outcome]
    assert hits, [(row["check"], row["outcome"]) for row in rows]
    for row in hits:
        assert row["why"].endswith(".") and row["remedy"].endswith(".")
        assert len(row["why"]) > 20 and len(row["remedy"]) > 10
        assert row["why"] != row["remedy"]
        if check not in WORDS_ALONE:
            assert math.isfinite(row["value"]["value"]) and math.isfinite(row["limit"]["value"])
            assert row["value"]["unit"] == row["limit"]["unit"]
            short = check in FALLS_SHORT or (calculation, check) in FALLS_SHORT
            if check not in EITHER_WAY:
                assert (row["value"]["value"] < row["limit"]["value"]) is short


def checks_of(path):
    """The checks that a file can return as watch or stop, read from its syntax tree."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if not isinstance(node, ast.Call):
            continue
        name = getattr(node.func, "id", "")
        words = [a.value for a in node.args if isinstance(a, ast.Constant)]
        words = [word for word in words if isinstance(word, str)]
        good = len(node.args) > 1 and getattr(node.args[1], "id", "") == "GOOD"
        place = 1 if name == "in_bending" else 0
        if name in ("finding", "once", "in_bending") and words and not good:
            if not isinstance(node.args[place], ast.Constant):
                continue
            yield words[0]


def test_the_table_leaves_no_check_out():
    provoked = {check for _, _, check, _ in ROWS}
    for room in ("ring", "wall", "measuring", "running", "fitting"):
        for path in sorted((CORE / room).glob("*.py")):
            missing = set(checks_of(path)) - provoked
            assert not missing, (path.name, missing)
