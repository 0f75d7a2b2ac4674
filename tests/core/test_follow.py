"""The card that follows the ring: keep what it asks for from here on and the ring is right; do what
it says and the fault is gone."""

import itertools
import math
import random

import pytest

from core.test_card_limits import jobs, made_by_hand, trial_of, within
from ringwright.core import calculations
from ringwright.core.catalogue.inputs_rings import NAMES, RINGS
from ringwright.core.ring.design import settle
from ringwright.core.walk import finished, follow, limits
from ringwright.core.walk import plan as planned

JOBS = jobs(80, 31)
LAUNCH = {"bore": 79.375, "steam_pressure": 0.827}
PLAIN = {"bore": 150.0, "ring_type": "plain", "steam_pressure": 0.8}


def checked(row):
    return {name: row.get(name) for name in (*NAMES, "ring")}


def followed(design, *rows):
    return follow.follow(design, [checked(row) for row in rows])


def slips(draw, design, spread):
    """A blank that came out as far off as spread times its limits."""
    plan = planned.plan_of(design)
    held = limits.card_limits(design)
    found = {}
    for name, key in (
        ("bored_inside_diameter", "bored"),
        ("rough_outside_diameter", "rough"),
        ("end_kerf", "kerf"),
    ):
        low, high = getattr(held, key)
        reach = spread * (high - low)
        found[name] = max(draw.uniform(low - reach, high + reach), 0.5 * getattr(plan, key))
    return found


def test_what_is_still_to_be_made_brings_the_ring_right():
    """The blank slips past its limits; where its card says it comes right, it does for every size
    still to be made at either of its limits, reckoned by hand."""
    draw = random.Random(5)
    right = 0
    for request, design in JOBS:
        for spread in (0.0, 0.5, 2.0):
            row = slips(draw, design, spread)
            ring = followed(design, row)[0]
            steps = {step.name: step for step in ring.steps}
            own = finished.finished_limits(design)
            if ring.faults:
                assert spread > 0.0, request
                continue
            if design.allowances.inside:
                continue
            right += 1
            plan = planned.plan_of(design)
            read, turn = steps["clamped_gap_reading"], steps["finish_outside_diameter"]
            feeler = steps["closed_gap_reading"]
            assert read.lower - 1e-9 <= read.value <= read.upper + 1e-9
            leaning = limits.lean(ring.plan)
            for a, b, c, leans, trial in itertools.product((0, 1), repeat=5):
                sizes = {
                    "bored": row["bored_inside_diameter"],
                    "rough": row["rough_outside_diameter"],
                    "kerf": row["end_kerf"],
                    "gap": (read.lower, read.upper)[a] / plan.sine + leans * leaning,
                    "finish": (turn.lower, turn.upper)[b],
                    "feeler": (feeler.lower, feeler.upper)[c],
                    "trial": trial_of(plan)[trial],
                }
                thickness, gap, _ = made_by_hand(plan, sizes)
                assert within(thickness, own.thickness, 1e-6), (request, row, sizes)
                assert within(gap, own.closed_gap, 1e-6), (request, row, sizes)
    assert right >= 80


# What is entered as measured once a remedy was followed; the inside is measured as thickness.
ENTERED = {
    "bore": "bored_inside_diameter",
    "saw": "end_kerf",
    "face": "ring_width",
    "dress": "closed_gap_reading",
}


def test_follow_the_remedy_and_the_fault_is_gone():
    draw = random.Random(6)
    seen = set()
    for request, design in JOBS:
        plan = planned.plan_of(design)
        rows = [
            {"bored_inside_diameter": plan.bored + draw.uniform(-0.03, 0.03) * plan.bore**0.5},
            {"ring_width": design.section.width + draw.uniform(0.05, 0.3)},
            {"closed_gap_reading": plan.closed_gap * plan.sine * draw.uniform(0.1, 0.9)},
            {
                "radial_thickness": design.section.thickness * draw.uniform(1.0, 1.08),
            },
        ]
        for row in rows:
            ring = followed(design, row)[0]
            if ring.remedy is None:
                continue
            key, value, made, _ = ring.remedy
            seen.add(key)
            after = dict(row)
            if key == "inside":
                after["radial_thickness"] = made.thickness
            else:
                after[ENTERED[key]] = value
            again = followed(design, after)[0]
            assert again.faults == [], (request, row, key, again.faults)
            own = finished.finished_limits(design)
            assert within(again.made.thickness, own.thickness, 1e-6)
    assert seen >= {"bore", "saw", "face", "dress"}


def test_nothing_measured_changes_nothing():
    for request, design in JOBS[:40]:
        ring = followed(design, {})[0]
        nominal = planned.plan_of(design)
        assert ring.faults == [], request
        assert ring.plan.finish == pytest.approx(nominal.finish)
        assert ring.made.wall_pressure == pytest.approx(design.spring.wall_pressure, rel=1e-6)


def test_the_closing_ring_suits_the_sawn_ring():
    """A tenth under on the outside: the closing ring is a tenth smaller, by the neutral line."""
    answer = calculations.run(
        "route", {**LAUNCH, "measured": [{}, {"rough_outside_diameter": 80.3}]}
    )
    first, second = ({size["name"]: size for size in ring["sizes"]} for ring in answer["rings"])
    shift = first["closing_ring_bore"]["value"] - second["closing_ring_bore"]["value"]
    wanted = first["rough_outside_diameter"]["value"] - 80.3
    read = first["clamped_gap_reading"]["value"] - second["clamped_gap_reading"]["value"]
    assert shift == pytest.approx(wanted + read * math.sqrt(2) / math.pi, abs=0.003)
    assert second["rough_outside_diameter"]["outcome"] == "watch"
    assert [ring["outcome"] for ring in answer["rings"]] == ["good", "watch"]


def test_what_one_ring_s_heat_gave_settles_the_former_of_the_next():
    """The first came out slack of its relief; the second's former is what sizing asks for then."""
    design = calculations.run("sizing", LAUNCH)["figures"]
    free = design["free_gap"]["value"]
    made = {"former_diameter": 76.72, "free_gap": 0.8 * free}
    answer = calculations.run("route", {**LAUNCH, "measured": [made, {}]})
    former = {s["name"]: s for s in answer["rings"][1]["sizes"]}["former_diameter"]["value"]
    assert former > 76.9
    ring = calculations.run(
        "inspection",
        {
            **LAUNCH,
            "measured_free_gap": 0.8 * free,
            "gap_measured_at": "neutral-line",
            "former_used": 76.72,
        },
    )
    assert former == pytest.approx(ring["figures"]["next_former_diameter"]["value"], abs=0.05)
    # One step: its inputs put into the request.
    request = dict(LAUNCH)
    for entry in ring["next_ring"]:
        request[entry["input"]] = entry["value"]
    assert {entry["input"] for entry in ring["next_ring"]} == {"relief"}
    corrected = calculations.run("tooling", request)["figures"]["former_diameter"]["value"]
    assert corrected == pytest.approx(ring["figures"]["next_former_diameter"]["value"], rel=1e-9)


@pytest.mark.parametrize("bore", [25.4, 79.375, 300.0])
def test_the_saw_is_moved_on_by_what_the_ring_s_own_slit_asks(bore):
    """Slit and cut laid out on the stick: two bands alike, and a blank as long as the card has."""
    asked = {"bore": bore, "slit_on_stick": True}
    nominal = calculations.run("tooling", asked)["figures"]
    wide = nominal["cut_off_width"]["value"] + 0.06
    card = calculations.run("route", {**asked, "measured": [{"slit_width": wide}]})
    sizes = {size["name"]: size for size in card["rings"][0]["sizes"]}
    assert sizes["cut_off_step"]["operation"] == "saw-off"
    assert {size["operation"] for size in sizes.values()} <= {
        row["key"] for row in card["operations"]
    }
    band, saw = nominal["band_width"]["value"], nominal["cut_off_width"]["value"]
    slit = band + saw / 2
    cut = slit + sizes["cut_off_step"]["value"]
    near, far = slit - wide / 2, (cut - wide / 2) - (slit + wide / 2)
    assert near == pytest.approx(far, abs=1e-9)
    assert cut - wide / 2 == pytest.approx(sizes["blank_length"]["value"], abs=1e-9)
    # Off the stick there is no such move.
    other = calculations.run("route", {"bore": bore, "measured": [{"slit_width": wide}]})["rings"][
        0
    ]
    assert "cut_off_step" not in {size["name"] for size in other["sizes"]}


def test_a_ring_past_mending_stops_and_one_that_can_run_does_not():
    rings = calculations.run(
        "route",
        {
            **PLAIN,
            "measured": [
                {"radial_thickness": 4.2},
                {"radial_thickness": 4.6},
                {"rough_outside_diameter": 149.9},
            ],
        },
    )["rings"]
    assert [ring["outcome"] for ring in rings] == ["stop", "watch", "stop"]
    assert "make it again" in rings[0]["remedy"]


def test_every_size_with_limits_that_a_ring_has_can_be_measured_and_the_reverse():
    entries = {entry.name for entry in RINGS["measured"].items} - {"ring"}
    assert entries == set(NAMES)
    tools = {"pot_bore", "clamp_mandrel_diameter", "slit_mandrel_diameter", "blank_jaws_bore"}
    seen = set()
    for more in (LAUNCH, PLAIN, {"bore": 150.0, "finishing": "band"}):
        rows = calculations.run("route", {**more, "measured": [{}]})
        on_card = (
            {
                size["name"]
                for row in rows["operations"]
                for size in row["sizes"]
                if "limits" in size
            }
            - tools
            - {"outer_clamp_bore"}
            # The groove's, and the spacer's opening once more.
            - {"side_clearance", "spacer_across"}
        )
        followed_sizes = {size["name"] for size in rows["rings"][0]["sizes"]}
        assert on_card <= followed_sizes, on_card - followed_sizes
        seen |= followed_sizes
        operations = {row["key"] for row in rows["operations"]}
        assert {size["operation"] for size in rows["rings"][0]["sizes"]} <= operations
    assert seen == entries


def test_a_size_of_the_ring_is_measured_where_it_is_made_or_inspected_alone():
    """The app takes what is written down by the name of the size, wherever it stands."""
    for more in (LAUNCH, PLAIN, {**LAUNCH, "slit_on_stick": True}, {"bore": 150.0}):
        rows = calculations.run("route", {**more, "measured": [{}]})
        made = {(size["name"], size["operation"]) for size in rows["rings"][0]["sizes"]}
        names = {name for name, _ in made}
        for row in rows["operations"]:
            for size in row["sizes"]:
                if size["name"] in names and size["reading"] != "set, not measured":
                    assert (size["name"], row["key"]) in made or row["key"] == "inspect", size


def test_a_ring_that_comes_right_though_a_size_is_out_says_so():
    """A rough outside above its limits has more to turn off, and no more is wrong with it."""
    card = calculations.run("route", {**LAUNCH, "measured": [{}]})["operations"]
    sizes = {size["name"]: size for row in card for size in row["sizes"] if "limits" in size}
    limits = sizes["rough_outside_diameter"]["limits"]
    low, high = (limits[side]["value"] for side in ("lower", "upper"))
    for rough, said, outcome in (
        (0.5 * (low + high), "Ring 1 comes right:", "good"),
        (high + 0.2, "Ring 1 comes right all the same:", "watch"),
    ):
        row = {"ring": 1, "rough_outside_diameter": rough}
        ring = calculations.run("route", {**LAUNCH, "measured": [row]})["rings"][0]
        assert ring["why"].startswith(said) and ring["outcome"] == outcome


@pytest.mark.parametrize("calculation", ["route", "tooling", "inspection"])
def test_the_rings_stand_in_every_answer_that_takes_them(calculation):
    request = {**LAUNCH, "measured": [{"ring": 3, "bored_inside_diameter": 75.05}]}
    if calculation == "inspection":
        request["measured_thickness"] = 2.4
    answer = calculations.run(calculation, request)
    assert [ring["ring"] for ring in answer["rings"]] == [3]
    said = {row["check"]: row for row in answer["findings"]}
    assert said["size-out"]["outcome"] == "watch" and said["ring-made"]["outcome"] == "watch"
    assert "Take more off the ends" in said["ring-made"]["remedy"]


def test_what_a_size_outside_its_limits_costs_stands_at_that_size():
    """Only there: not at sizes within their limits, nor at those still to be made."""
    measured = [{"ring": 2, "end_kerf": 1.3, "ring_width": 4.99, "bored_inside_diameter": 74.9}]
    launch = {**LAUNCH, "radial_thickness": 2.4, "ring_width": 5.0}
    ring = calculations.run("route", {**launch, "measured": measured})["rings"][0]
    found = {size["name"]: size.get("cost") for size in ring["sizes"]}
    assert [name for name, cost in found.items() if cost] == ["end_kerf"]
    nominal = planned.plan_of(settle(launch)[0])
    alone = planned.walk(planned.changed(nominal, kerf=1.3))
    assert "ring %.3f mm" % alone.thickness in found["end_kerf"]
    assert "gap %.3f mm" % alone.closed_gap in found["end_kerf"]
