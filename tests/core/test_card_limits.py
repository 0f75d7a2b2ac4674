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


def test_limits_of_a_large_ring_by_hand():
    """A plain ring for 300 mm, square ends, on a light lathe: it has room, so each operation gets
    twice what it holds (the most), the last cut what it holds.

    ISO 286-1, table 1: IT6 to IT10 of 250 to 315 mm are 0.032, 0.052, 0.081, 0.130, 0.210; IT9 of
    10 to 18 mm 0.043, of 30 to 50 mm 0.062; IT7 of 10 to 18 mm 0.018. Practice, no source: a saw
    cuts a tenth wider than it is thick and 0.12 mm at most; a feeler feels within 0.02 mm and
    0.0004 mm for each of bore, 0.06 mm at most; of what is left to turn 0.2, to face 0.3.
    """
    asked = {"bore": 300.0, "ring_type": "plain", "end_cut": "square", "end_kerf": 2.0}
    design = settle(asked)[0]
    plan, found = planned.plan_of(design), limits.card_limits(design)
    own = finished.finished_limits(design)
    leaning = limits.lean(plan)

    def off(name):
        low, high = getattr(found, name)
        nominal = getattr(plan, name)
        return [pytest.approx(low - nominal, abs=1e-9), pytest.approx(high - nominal, abs=1e-9)]

    assert found.share == pytest.approx(2.0)
    assert found.bored[1] - found.bored[0] == pytest.approx(2 * 0.081)
    assert off("rough") == [-0.105, 0.105]
    assert off("length") == [-0.043, 0.0]
    assert off("kerf") == [0.0, 2 * 0.12]
    assert off("spacer") == [-0.031, 0.031]
    assert off("width") == [-0.018, 0.0]
    assert off("finish") == [0.0, 0.052]
    most = own.closed_gap[1] - math.pi * 0.032
    assert off("closed_gap") == [0.0, pytest.approx(most - plan.closed_gap, abs=1e-9)]
    # Down by twice the feeler's, and by what the ends lean; up until the largest gap is met.
    assert found.clamped_gap[0] == pytest.approx(plan.clamped_gap - 2 * 0.06 - leaning)
    assert found.clamped_gap[1] == pytest.approx(most - 2.0 * leaning)
    assert found.slit is None and found.former is None and found.bored_clamped is None


@pytest.mark.parametrize(
    ("asked", "name", "low", "high"),
    [
        # A slit cuts wider by 0.1 mm at most, and by 0.3 of what is left to face.
        ({"facing_allowance": 0.25}, "slit", 0.0, 0.075),
        ({"facing_allowance": 0.4}, "slit", 0.0, 0.1),
        # A blank is shorter by IT9 (6 to 10 mm, 0.036) at most, likewise: 4 + 2 * 0.8 + facing.
        ({"ring_width": 4.0, "facing_allowance": 0.25}, "length", -0.036, 0.0),
        ({"ring_width": 4.0, "facing_allowance": 0.05}, "length", -0.015, 0.0),
        # Rough outside: IT10 of 80 to 120 mm, 0.140, both ways; 0.2 of a small allowance.
        ({"finishing_allowance": 0.8}, "rough", -0.070, 0.070),
        ({"finishing_allowance": 0.3}, "rough", -0.060, 0.060),
    ],
)
def test_limits_that_hang_on_what_is_left_to_cut(asked, name, low, high):
    """For 80 mm; ISO 286-1, table 1; the shares are practice, no source."""
    design = settle({"bore": 80.0, "slit_width": 0.8, **asked})[0]
    found = getattr(limits.card_limits(design), name)
    nominal = getattr(planned.plan_of(design), name)
    assert found == pytest.approx((nominal + low, nominal + high), abs=1e-9)


def test_what_a_feeler_feels_grows_with_the_bore():
    """80 mm: 0.02 + 0.0004 * 80 = 0.052 mm, of which each ring gets the share that its bore has of
    IT8 (0.054 mm above 80 up to 120, 0.046 up to 80)."""
    design = settle({"bore": 80.0, "end_cut": "square", "setting": "bound", "ring_type": "plain"})[
        0
    ]
    plan, found = planned.plan_of(design), limits.card_limits(design)
    share = (found.bored[1] - found.bored[0]) / 0.046
    assert 0.3 < share < 1.9
    assert found.share == pytest.approx(share)
    down = plan.clamped_gap - found.clamped_gap[0]
    assert down == pytest.approx(0.052 * share + limits.lean(plan))
    assert found.kerf[1] - plan.kerf == pytest.approx(0.1 * plan.kerf * share)


def test_one_share_for_all_and_no_larger_one_would_do():
    """Widened by a fiftieth all at once, the limits let a ring out of its own thickness or
    pressure, unless they are the machine's ease already."""
    strained = 0
    for request, design in JOBS:
        plan = planned.plan_of(design)
        found = limits.card_limits(design)
        own = finished.finished_limits(design)
        bore = found.bored[1] - found.bored[0]
        # it() is held to the standard by the tests of fits; IT8 is what a light lathe bores to.
        assert bore == pytest.approx(found.share * limits.it(plan.bored, 8)), request
        if found.share >= limits.EASE - 1e-9 or plan.bored_clamped is not None:
            continue
        saw = found.kerf[1] - found.kerf[0]
        feeler = min(0.02 + 0.0004 * plan.bore, 0.06) / plan.sine
        last = limits.it(plan.finish, 7)
        assert saw == pytest.approx(found.share * min(0.1 * plan.kerf, 0.12)), request
        assert found.finish[1] == pytest.approx(plan.finish + last * min(found.share, 1.0))
        # Thickness = (D - bored + (saw - gap)/pi)/2: its whole range, all limits at their worst,
        # and how far above the nominal it comes where the bore is nominal; the last cut counted as
        # if it widened too.
        wide = 1.02 * found.share
        leaning = limits.lean(plan)
        thicker = wide * last + (wide * (saw / found.share / plan.sine + feeler)) / math.pi
        whole = wide * limits.it(plan.bored, 8) + thicker + wide * feeler / math.pi
        thicker += leaning / math.pi
        whole += 2.0 * leaning / math.pi
        room = own.thickness[1] - design.section.thickness
        presses = found.worst.wall_pressure
        off = max(
            (presses[1] - design.spring.wall_pressure)
            / (own.wall_pressure[1] - design.spring.wall_pressure),
            (design.spring.wall_pressure - presses[0])
            / (design.spring.wall_pressure - own.wall_pressure[0]),
        )
        assert 0.5 * thicker > room or 0.5 * whole > 2.0 * room or off > 0.9, request
        strained += 1
    assert strained > 80


def test_worked_to_its_nominal_sizes_a_ring_is_as_thick_as_designed():
    for request, design in JOBS:
        found = limits.plan_thickness(planned.plan_of(design))
        assert found == pytest.approx(design.section.thickness, rel=1e-9), request
