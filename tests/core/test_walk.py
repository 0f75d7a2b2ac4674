"""The ring walked through its operations: against an independent walk, a geometry library, and
what happens if an operation comes out otherwise."""

import math

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from core.test_design import RINGS
from core.test_design import walk as walk_by_hand
from ringwright.core.problems import InputProblem, OutOfRange
from ringwright.core.ring.design import settle
from ringwright.core.walk import plan as planned
from ringwright.core.walk import states

NEW = settings(derandomize=True, deadline=None, max_examples=150)
JOBS = st.fixed_dictionaries(
    {
        "bore": st.floats(12.0, 850.0),
        "ring_type": st.sampled_from(["plain", "double-turn"]),
        "setting": st.sampled_from([None, "bound", "sprung"]),
        "finishing": st.sampled_from(["closing-ring", "forced-round", "band"]),
        "end_cut": st.sampled_from(["square", "angled-45", "angled-60", "stepped"]),
    }
)


def settled(request):
    return settle({name: value for name, value in request.items() if value is not None})[0]


@pytest.mark.parametrize("ring", RINGS)
def test_it_walks_as_the_walk_by_hand(ring):
    design, _ = settle(ring)
    thickness, gap, metal = walk_by_hand(design)
    made = planned.walk(planned.plan_of(design))
    assert made.thickness == pytest.approx(thickness, rel=1e-9)
    assert made.closed_gap == pytest.approx(gap, rel=1e-9, abs=1e-9)
    assert made.state.metal == pytest.approx(metal, rel=1e-9)


def test_what_is_given_of_a_ring_is_what_it_is_worked_to():
    given = {"bore": 80.0, "ring_type": "double-turn", "ring_width": 5.0, "closed_gap": 0.31}
    more = {"slit_width": 0.9, "end_kerf": 7.7, "modulus": 101000.0, "end_cut": "angled-60"}
    design = settled({**given, **more})
    plan = planned.plan_of(design)
    assert (plan.bore, plan.turns, plan.width, plan.closed_gap) == (80.0, 2, 5.0, 0.31)
    assert (plan.slit, plan.kerf, plan.modulus) == (0.9, 7.7, 101000.0)
    assert plan.sine == pytest.approx(math.sqrt(0.75))
    # Two bands and the slit between them.
    assert plan.length == pytest.approx(2.0 * design.blank.band_width + 0.9)
    assert plan.bored < plan.finish < plan.rough


def test_ends_sawn_parallel_lean_towards_each_other():
    """By hand: closed from what was sawn out, each face turns by half of that over the radius."""
    given = {"bore": 80.0, "ring_type": "plain", "end_cut": "square", "radial_thickness": 3.0}
    plan = planned.plan_of(settled({**given, "end_kerf": 0.8, "clamped_gap": 0.3}))
    thickness = 0.5 * (plan.rough - plan.bored)
    by_hand = thickness * (0.8 - 0.3) / (80.0 - thickness)
    assert planned.lean(plan) == pytest.approx(by_hand, rel=1e-9)


@NEW
@given(JOBS)
def test_the_nominal_sizes_make_the_ring_that_was_asked_for(request):
    design = settled(request)
    made = planned.walk(planned.plan_of(design))
    assert made.thickness == pytest.approx(design.section.thickness, rel=1e-9)
    assert made.closed_gap == pytest.approx(design.duty.closed_gap, rel=1e-9, abs=1e-9)
    assert made.dressed == pytest.approx(0.0, abs=1e-9)
    assert made.wall_pressure == pytest.approx(design.spring.wall_pressure, rel=1e-7)
    assert made.free_gap == pytest.approx(
        design.spring.gap_change + design.duty.closed_gap, rel=1e-7
    )
    assert made.closing_bore == pytest.approx(
        design.blank.finish_outside + design.allowances.finishing
    )


def test_the_metal_keeps_its_length_in_every_shape():
    """The same arc of a circle of any size, its length measured by shapely."""
    state = states.saw(states.bore_and_turn(75.0, 80.5, 7.5), 1.2)
    for held in (states.close(state, 80.2), states.close_to_gap(state, 0.3), state):
        radius = 0.5 * (held.outside - held.thickness)
        half = math.pi - 0.5 * held.gap / radius
        points = [
            (
                radius * math.cos(-half + 2 * half * i / 20000),
                radius * math.sin(-half + 2 * half * i / 20000),
            )
            for i in range(20001)
        ]
        assert shapely.LineString(points).length == pytest.approx(state.metal, abs=1e-5)


def ring(**request):
    return planned.plan_of(settle(request)[0])


@pytest.mark.parametrize(
    ("request_", "wanted", "allowed", "lower"),
    [
        ({"bore": 79.375, "steam_pressure": 0.827}, 0.496, 0.64, 1.187),
        ({"bore": 150.0, "ring_type": "plain", "steam_pressure": 0.8}, 0.503, 0.648, 1.288),
    ],
)
def test_a_closing_ring_bored_beforehand_breaks_the_gap(request_, wanted, allowed, lower):
    """What was found: rough outside at the lower limit of h11, closing ring to the card, and the
    gap is past its limit. Bored to suit the sawn ring it is as wanted."""
    plan = ring(**request_)
    assert plan.closed_gap == pytest.approx(wanted, abs=0.003)
    assert 1.25 * plan.closed_gap + 0.02 == pytest.approx(allowed, abs=0.003)
    fixed = planned.walk(plan).closing_bore
    short = planned.changed(plan, rough=plan.rough - (0.22 if plan.bore < 80 else 0.25))
    left = states.close(planned.set_open(short), fixed).gap
    assert left == pytest.approx(lower, abs=0.003)
    assert planned.walk(short).closed_gap == pytest.approx(plan.closed_gap, abs=1e-9)


def test_a_saw_that_cuts_over_opens_a_gap_that_nothing_is_fitted_to():
    """0.2 over across a cut at 45 degrees is 0.28 of gap; in a fitted closing ring it is not gap
    but 0.2 root 2 over 2 pi of thickness."""
    plan = ring(bore=79.375)
    wide = planned.changed(plan, kerf=plan.kerf + 0.2)
    fixed = planned.walk(plan).closing_bore
    more = states.close(planned.set_open(wide), fixed).gap - plan.clamped_gap
    assert more == pytest.approx(0.2 * math.sqrt(2.0), rel=1e-9)
    thicker = planned.walk(wide).thickness - planned.walk(plan).thickness
    assert thicker == pytest.approx(0.2 * math.sqrt(2.0) / (2.0 * math.pi), rel=1e-9)


@NEW
@given(JOBS, st.floats(-0.2, 0.2), st.floats(-0.2, 0.2), st.floats(-0.1, 0.3))
def test_what_happens_if(request, bored, rough, kerf):
    """Walked by hand: in a closing ring bored to suit, thickness is (D - bored + (s - sc)/pi)/2,
    whatever the rough outside was; the gap as turned is sc + pi (bore - D)."""
    design = settled(request)
    if design.allowances.inside or design.duty.bore < 30.0:
        return
    plan = planned.plan_of(design)
    kerf = max(kerf, -0.5 * plan.kerf)
    other = planned.changed(
        plan, bored=plan.bored + bored, rough=plan.rough + rough, kerf=plan.kerf + kerf
    )
    made = planned.walk(other)
    cut = other.kerf / plan.sine
    by_hand = 0.5 * (plan.finish - other.bored + (cut - plan.clamped_gap) / math.pi)
    assert made.thickness == pytest.approx(by_hand, abs=1e-9)
    gap = plan.clamped_gap + math.pi * (plan.bore - plan.finish)
    assert made.before_dressing == pytest.approx(gap, abs=1e-9)


def test_dressing_opens_the_gap_and_leaves_the_spring():
    plan = ring(bore=150.0, ring_type="plain")
    shut = planned.walk(planned.changed(plan, clamped_gap=0.3))
    assert shut.before_dressing == pytest.approx(0.3)
    assert shut.dressed == pytest.approx(plan.closed_gap - 0.3)
    assert shut.closed_gap == pytest.approx(plan.closed_gap)


def test_a_ring_that_cannot_be_is_refused():
    plan = ring(bore=80.0)
    with pytest.raises(OutOfRange):
        planned.walk(planned.changed(plan, bored=plan.bored + 10.0))
    with pytest.raises(InputProblem):
        settle({"bore": 80.0, "clamped_gap": 5.0})


@pytest.mark.parametrize("ring_type", ["plain", "double-turn"])
@pytest.mark.parametrize(
    ("end_cut", "degrees"), [("square", 90.0), ("angled-60", 60.0), ("angled-45", 45.0)]
)
def test_what_a_feeler_reads_in_the_closing_ring(ring_type, end_cut, degrees):
    """Ends sawn parallel stand off the radius by s/2 r each, and keep that when the ring is bent
    shut: at its outer edge the gap is g + a (g/r' - s/r)/2, read square to the cut."""
    design, _ = settle({"bore": 80.0, "ring_type": ring_type, "end_cut": end_cut})
    plan = planned.plan_of(design)
    wall = 0.5 * (plan.rough - plan.bored)
    cut, gap = design.allowances.gap_kerf, design.allowances.clamped_gap
    sawn = 0.5 * (plan.bored + wall)
    closed = (2.0 * math.pi * sawn - cut + gap) / (2.0 * math.pi)
    edge = gap + 0.5 * wall * (gap / closed - cut / sawn)
    sine = math.sin(math.radians(degrees))
    # The radius is taken once, in the bore, not two of them: 2 % of what the ends lean.
    lean = gap - edge
    assert planned.clamped_reading(design) == pytest.approx(edge * sine, abs=0.03 * lean)
    assert planned.lean(plan) == pytest.approx(lean, rel=0.03)
    assert planned.feeler(plan, 0.4) == pytest.approx(0.4 * sine)


def test_ends_that_meet_at_their_edges_read_nothing():
    design, _ = settle({"bore": 80.0, "clamped_gap": 0.001})
    assert planned.clamped_reading(design) == 0.0


@pytest.mark.parametrize("ring_type", ["plain", "double-turn"])
@pytest.mark.parametrize("end_cut", ["square", "angled-45"])
def test_metal_left_for_the_last_turning(ring_type, end_cut):
    """As designed, the finishing allowance; a larger blank leaves as much more, and a wider cut
    less, by the circle that it closes to."""
    plan = ring(bore=80.0, ring_type=ring_type, end_cut=end_cut, finishing_allowance=0.8)
    assert planned.walk(plan).clean_up == pytest.approx(0.8)
    for rough, kerf in ((0.3, 0.0), (-0.2, 0.0), (0.0, 0.1)):
        made = planned.walk(planned.changed(plan, rough=plan.rough + rough, kerf=plan.kerf + kerf))
        less = kerf / plan.sine / math.pi
        assert made.clean_up == pytest.approx(0.8 + rough - less, abs=1e-9)


def test_a_ring_that_does_not_press_presses_with_nothing():
    """No relief: it lies in the bore as it was sawn, and closed further it has no spring of its
    own but the cut's."""
    plan = ring(bore=80.0, ring_type="plain")
    shut = planned.walk(planned.changed(plan, relief=0.0, kerf=plan.clamped_gap * plan.sine))
    assert shut.wall_pressure == pytest.approx(0.0, abs=1e-4)
    # Set the other way it would stand off the wall: never less than nothing.
    other = planned.walked(planned.changed(plan, spacer=0.5 * plan.kerf))
    assert other is None or other.wall_pressure >= 0.0
