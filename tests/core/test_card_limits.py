"""Whoever keeps every limit of the card gets a ring within its own: at the worst, and sampled."""

import itertools
import math
import random

import pytest

from ringwright.core.problems import InputProblem
from ringwright.core.ring.design import settle
from ringwright.core.walk import finished, limits
from ringwright.core.walk import plan as planned


def jobs(count, seed):
    """Designs of rings of every kind, from 12 to 850 mm."""
    draw = random.Random(seed)
    found = []
    while len(found) < count:
        ring_type = draw.choice(["plain", "double-turn"])
        request = {
            "bore": math.exp(draw.uniform(math.log(12.0), math.log(850.0))),
            "ring_type": ring_type,
            "end_cut": draw.choice(["square", "angled-45", "angled-60", "stepped"]),
            "finishing": draw.choice(["closing-ring", "closing-ring", "forced-round", "band"]),
            "steam_pressure": draw.choice([0.2, 0.7, 1.4]),
            "ring_material": draw.choice(["grey-iron", "grey-iron", "grey-iron-250", "gunmetal"]),
        }
        setting = draw.choice([None, "bound", "sprung"])
        if setting:
            request["setting"] = setting
        if draw.random() < 0.3:
            request["steam_temperature"] = 260.0
        try:
            found.append((request, settle(request)[0]))
        except InputProblem:
            continue
    return found


JOBS = jobs(300, 20)


def made_by_hand(plan, sizes):
    """Thickness and gap of a ring made to sizes, in the cylinder: the two sentences they rest on.

    In a closing ring bored to suit the circle less the gap is the metal; a gap is only dressed
    wider. sizes: bored, rough, kerf, gap (along the circumference), finish, trial bore, feeler.
    """
    wall = (sizes["rough"] - sizes["bored"]) / 2
    metal = math.pi * (sizes["bored"] + wall) - sizes["kerf"] / plan.sine
    closed_neutral = (metal + sizes["gap"]) / math.pi
    inside = closed_neutral - wall
    if plan.bored_clamped is not None:
        inside = sizes["bored_clamped"]
    thickness = (sizes["finish"] - inside) / 2
    turned = math.pi * (sizes["finish"] - thickness) - sizes["gap"]
    tried = math.pi * (sizes["trial"] - thickness) - turned
    gap = max(tried, sizes["feeler"] / plan.sine)
    return thickness, gap + math.pi * (plan.bore - sizes["trial"]), tried


def within(value, low_high, slack=1e-9):
    return low_high[0] - slack <= value <= low_high[1] + slack


def drawn(plan, found, trial, at):
    """Sizes at places from 0 to 1 within every limit; `leans` is 1 where ends lean as sawn."""
    sizes = {}
    leaning = limits.lean(plan)
    for name, pair in (
        ("bored", found.bored),
        ("rough", found.rough),
        ("kerf", found.kerf),
        ("finish", found.finish),
        ("feeler", found.closed_gap),
        ("bored_clamped", found.bored_clamped),
        ("read", found.clamped_gap),
        ("trial", trial),
    ):
        if pair is not None:
            sizes[name] = pair[0] + at[name] * (pair[1] - pair[0])
    sizes["gap"] = sizes["read"] / plan.sine + at["leans"] * leaning
    return sizes


NAMES = (
    "bored", "rough", "kerf", "finish", "feeler", "bored_clamped", "read", "trial", "leans",
)  # fmt: skip


def trial_of(plan):
    from ringwright.core.making.tool_list import trial_limits

    return trial_limits(plan.bore)


def test_at_every_corner_of_the_limits_the_ring_is_within_its_own():
    for request, design in JOBS:
        plan = planned.plan_of(design)
        found = limits.card_limits(design)
        own = finished.finished_limits(design)
        trial = trial_of(plan)
        for corner in itertools.product((0.0, 1.0), repeat=len(NAMES)):
            sizes = drawn(plan, found, trial, dict(zip(NAMES, corner, strict=True)))
            thickness, gap, tried = made_by_hand(plan, sizes)
            assert within(thickness, own.thickness), (request, sizes)
            assert within(gap, own.closed_gap), (request, sizes)
            # What is tried in the trial bore is never over the card's own limit already.
            assert tried * plan.sine <= found.closed_gap[1] + 1e-9, (request, sizes)


def corners_by_walk(plan, found):
    """Every corner of the limits that the pressure depends on, walked."""
    leaning = limits.lean(plan)
    pairs = [found.bored, found.rough, found.kerf, found.finish]
    pairs.append(found.former if found.former is not None else found.spacer)
    pairs.append((found.clamped_gap[0] / plan.sine, found.clamped_gap[1] / plan.sine + leaning))
    pairs.append(found.bored_clamped or (None,))
    for bored, rough, kerf, finish, tool, gap, inside in itertools.product(*pairs):
        yield planned.walk(
            planned.changed(
                plan,
                bored=bored,
                rough=rough,
                kerf=kerf,
                finish=finish,
                clamped_gap=gap,
                bored_clamped=inside,
                **({"former": tool} if found.former is not None else {"spacer": tool}),
            )
        )


def test_at_every_corner_it_presses_within_its_limits_and_the_worst_is_stated():
    for request, design in JOBS[::3]:
        plan = planned.plan_of(design)
        found = limits.card_limits(design)
        own = finished.finished_limits(design)
        rings = list(corners_by_walk(plan, found))
        pressures = [ring.wall_pressure for ring in rings]
        assert within(min(pressures), own.wall_pressure, 0.01 * design.spring.wall_pressure), (
            request
        )
        assert within(max(pressures), own.wall_pressure, 0.01 * design.spring.wall_pressure), (
            request
        )
        low, high = found.worst.wall_pressure
        assert low == pytest.approx(min(pressures), rel=0.02)
        assert high == pytest.approx(max(pressures), rel=0.02)
        thin, thick = found.worst.thickness
        assert thin == pytest.approx(min(ring.thickness for ring in rings), abs=1e-9)
        assert thick == pytest.approx(max(ring.thickness for ring in rings), abs=1e-9)
        # Metal is left to turn all round, wherever the ring lies within its limits.
        assert min(ring.clean_up for ring in rings) >= 0.4 * design.allowances.finishing


def test_limits_are_not_uselessly_tight():
    """Either most of the ring's own tolerance is used, or the machine's ease is the limit; a ring
    2.4 mm thick asks for little more than a light lathe holds by itself."""
    for request, design in JOBS:
        plan = planned.plan_of(design)
        found = limits.card_limits(design)
        own = finished.finished_limits(design)
        used = (found.worst.thickness[1] - found.worst.thickness[0]) / (
            own.thickness[1] - own.thickness[0]
        )
        pressed = (found.worst.wall_pressure[1] - found.worst.wall_pressure[0]) / (
            own.wall_pressure[1] - own.wall_pressure[0]
        )
        assert found.share >= limits.EASE - 1e-9 or used >= 0.55 or pressed >= 0.6, request
        if design.section.thickness >= 2.4:
            assert found.share >= 0.55, request
        if design.section.thickness >= 1.2:
            # No closer than IT6: what a boring bar and an inside micrometer can be made to hold.
            assert found.bored[1] - found.bored[0] >= 0.8 * limits.it(plan.bored, 6)
        for pair in (found.bored, found.rough, found.kerf, found.finish, found.clamped_gap):
            assert pair[1] - pair[0] >= 0.004, request


def test_every_nominal_is_within_its_limits():
    for request, design in JOBS:
        plan = planned.plan_of(design)
        found = limits.card_limits(design)
        for name in ("bored", "rough", "kerf", "finish", "length", "width"):
            assert within(getattr(plan, name), getattr(found, name)), (request, name)
        read = (plan.clamped_gap - limits.lean(plan)) * plan.sine
        assert within(read, found.clamped_gap), request
        assert within(plan.closed_gap * plan.sine, found.closed_gap), request


@pytest.mark.slow
def test_ten_thousand_rings_within_the_card_are_within_their_own():
    draw = random.Random(7)
    for request, design in JOBS[::2]:
        plan = planned.plan_of(design)
        found = limits.card_limits(design)
        own = finished.finished_limits(design)
        trial = trial_of(plan)
        for _ in range(10000 // 150 + 1):
            at = {name: draw.random() for name in NAMES}
            at["leans"] = float(draw.random() < 0.5)
            sizes = drawn(plan, found, trial, at)
            thickness, gap, _ = made_by_hand(plan, sizes)
            assert within(thickness, own.thickness), (request, sizes)
            assert within(gap, own.closed_gap), (request, sizes)
            made = planned.walk(
                planned.changed(
                    plan,
                    bored=sizes["bored"],
                    rough=sizes["rough"],
                    kerf=sizes["kerf"],
                    finish=sizes["finish"],
                    clamped_gap=sizes["gap"],
                    bored_clamped=sizes.get("bored_clamped"),
                )
            )
            assert made.thickness == pytest.approx(thickness, abs=1e-9)
            assert within(made.wall_pressure, own.wall_pressure)


def test_the_light_lathe_holds_what_its_grade_says():
    """IT8 for bores on a light lathe and IT7 on a rigid one (common practice, no source)."""
    design = settle({"bore": 300.0, "ring_type": "plain"})[0]
    light, rigid = (limits.card_limits(design, machine) for machine in ("light", "rigid"))
    # 270 to 315 mm: IT8 0.081, IT7 0.052 (the standard's table 1), twice that for ease.
    assert light.bored[1] - light.bored[0] == pytest.approx(2 * 0.081, abs=1e-9)
    assert rigid.bored[1] - rigid.bored[0] == pytest.approx(2 * 0.052, abs=1e-9)
