"""What a row of forces along the ring says: pressure, forces at a point, slack lengths, stress.

The rows are made by hand: where contact begins, a force F at the place e and the pressure p beyond
it are shared among two nodes so that force and moment over both are kept. A step of 0.1 rad.
"""

import math
from types import SimpleNamespace as Record

import pytest

from ringwright.core.problems import NotConverged
from ringwright.core.wall import strip, wall_contact
from ringwright.core.wall.wall_contact import Point, Ring, Stretch

STEP = 0.1
PLACE = Record(step=STEP)
P = 4.0


def told(wall):
    return wall_contact._told_apart(PLACE, wall)


def edge(force, reach, pressure=P):
    """Nodal forces of the outer and inner node where contact begins `reach` steps, 0 to 2, before
    the middle between the inner and the next: their sum F + p*reach, their moment about there
    F*reach + p*reach^2/2, of levers 1.5 and 0.5 steps. Force per step."""
    total = force + pressure * reach
    moment = force * reach + 0.5 * pressure * reach * reach
    outer = moment - 0.5 * total
    return outer, total - outer


def test_even_pressure_from_end_to_end_is_one_stretch():
    row = [0.5 * P] + [P] * 9 + [0.5 * P]
    spread, points, stretches = told(row)
    assert (spread, points) == (row, [])
    assert stretches == [Stretch(0.0, pytest.approx(1.0, rel=1e-12))]


def test_a_touch_of_one_node_or_of_two_is_a_force_at_a_point():
    """7 at one node; 3 and 5 a step apart act together at 5/8 of it."""
    spread, points, stretches = told([0.0, 0.0, 7.0, 0.0, 0.0, 3.0, 5.0, 0.0, 0.0])
    assert spread == [0.0] * 9 and stretches == []
    assert points[0] == pytest.approx((0.2, 0.7), rel=1e-12)
    assert points[1] == pytest.approx((0.5625, 0.8), rel=1e-12)
    assert len(points) == 2


def test_a_touch_of_the_ends_alone():
    spread, points, _ = told([2.0, 0.0, 0.0, 0.0, 0.0, 1.5])
    assert spread == [0.0] * 6
    assert points == [(0.0, pytest.approx(0.2)), (pytest.approx(0.5), pytest.approx(0.15))]


@pytest.mark.parametrize("count", [3, 4])
def test_three_nodes_or_four_press_for_their_length_and_tell_no_force(count):
    row = [0.0, 0.0] + [9.0, 1.0, 1.0, 9.0][:count] + [0.0, 0.0]
    spread, points, stretches = told(row)
    assert (spread, points) == (row, [])
    assert stretches == [pytest.approx((0.15, 0.15 + 0.1 * count), rel=1e-12)]


def test_five_nodes_tell_the_force_where_contact_begins():
    """9 and 1 before a pressure of 1: 10 together, their moment 1.5*9 + 0.5 = 14.

    It begins 10 - sqrt(100 - 28) = 1.5147 steps before the middle of the next, with 8.4853.
    """
    spread, points, stretches = told([0.0, 9.0, 1.0, 1.0, 1.0, 9.0, 0.0])
    reach = 10.0 - math.sqrt(72.0)
    first, last = 0.25 - 0.1 * reach, 0.35 + 0.1 * reach
    assert points[0] == pytest.approx((first, 0.1 * math.sqrt(72.0)), rel=1e-9)
    assert points[1] == pytest.approx((last, 0.1 * math.sqrt(72.0)), rel=1e-9)
    assert stretches == [pytest.approx((first, last), rel=1e-9)]


def test_three_nodes_at_an_end_begin_and_end_with_the_ring():
    assert told([9.0, 1.0, 2.0, 0.0, 0.0])[2] == [pytest.approx((0.0, 0.25), rel=1e-12)]
    assert told([0.0, 0.0, 2.0, 1.0, 9.0])[2] == [pytest.approx((0.15, 0.4), rel=1e-12)]


@pytest.mark.parametrize("reach", [0.7, 1.1, 1.4])
@pytest.mark.parametrize("force", [3.0, 11.0])
def test_where_contact_begins_force_and_place_are_told(force, reach):
    outer, inner = edge(force, reach)
    # Within it may press otherwise: what counts is the pressure next to where it begins.
    row = [0.0] * 3 + [outer, inner] + [P, 5.0, 6.5, 5.0, P] + [inner, outer] + [0.0] * 4
    spread, points, stretches = told(row)
    first, last = 0.45 - STEP * reach, 0.95 + STEP * reach
    assert points[0] == pytest.approx((first, STEP * force), rel=1e-9)
    assert points[1] == pytest.approx((last, STEP * force), rel=1e-9)
    assert stretches == [pytest.approx((first, last), rel=1e-9)]
    # What is left is the pressure from where it begins, node by node.
    within = [P, P * (reach - 1.0)] if reach > 1.0 else [P * reach, 0.0]
    assert spread[3:5] == pytest.approx(within[::-1], abs=1e-9)
    assert spread[10:12] == pytest.approx(within, abs=1e-9)
    assert spread[5:10] == [P, 5.0, 6.5, 5.0, P]
    assert spread[:3] == [0.0] * 3 and spread[12:] == [0.0] * 4


@pytest.mark.parametrize(("force", "is_told"), [(0.995, False), (1.005, True)])
def test_a_quarter_of_a_node_at_the_edge_is_the_grids_own_blur(force, is_told):
    outer, inner = edge(force, 1.6)
    row = [0.0] * 3 + [outer, inner] + [P] * 5 + [0.5 * P]
    spread, points, stretches = told(row)
    assert bool(points) == is_told
    assert stretches == [pytest.approx((0.45 - 0.16, 1.0), rel=1e-9)]
    if not is_told:
        assert spread == row


def test_where_nothing_presses_beyond_a_force_it_stands_at_its_lever():
    """Nodes 6 and 2, then as good as nothing: their middle is 1.5*6 + 0.5*2 = 10 over 8 steps."""
    row = [0.0] * 2 + [6.0, 2.0] + [1e-12] * 6
    _, points, stretches = told(row)
    assert points[0] == pytest.approx((0.35 - 0.125, 0.8), rel=1e-9)
    assert stretches[0].start == pytest.approx(0.225, rel=1e-9)


def test_contact_begins_within_its_two_nodes_whatever_their_share():
    """Far more pressure behind than they carry between them: no root, so their lever is taken."""
    _, _, stretches = told([0.0, 0.0, 3.0, 1.0] + [90.0] * 6)
    # 1.5*3 + 0.5*1 = 5 over 4 steps.
    assert stretches[0].start == pytest.approx(0.35 - 0.125, rel=1e-9)
    # 8.5 together, with 9.02 as their lever: 2.125 - sqrt(72.25 - 72.16)/4 = 2.05 steps, too far.
    _, _, stretches = told([0.0, 0.0, 4.77, 3.73] + [P] * 6)
    assert stretches[0].start == pytest.approx(0.35 - 0.2, rel=1e-9)


def test_what_an_end_bears_beyond_its_half_step_is_its_own_force():
    """The pressure there from the two nodes beside it: 2*5 - 6 = 4, so that half of 4 is spread."""
    row = [9.0, 5.0, 6.0, 8.0, 7.0, 6.0, 5.0, 4.01]
    for times in (1.0, 1e-4):
        spread, points, stretches = told([times * each for each in row])
        assert points[0] == pytest.approx((0.0, 0.7 * times), rel=1e-12)
        # The far end: 4.01 - 2 = 2.01 is more than 2 of it again.
        assert points[1] == pytest.approx((0.7, 0.201 * times), rel=1e-12)
        wanted = [2.0 * times, *[times * each for each in row[1:-1]], 2.0 * times]
        assert spread == pytest.approx(wanted, rel=1e-12)
        assert stretches == [pytest.approx((0.0, 0.7), rel=1e-12)]
    # Up to twice its half step it may be pressure that rises towards the end.
    row = [3.9, 5.0, 6.0, 6.0, 6.0, 6.0, 5.0, 4.0]
    spread, points, _ = told(row)
    assert (spread, points) == (row, [])


def test_an_end_beside_which_nothing_presses_bears_a_force_alone():
    """2*1 - 6 would be less than no pressure: all of the end's 3 is a force."""
    spread, points, _ = told([3.0, 1.0, 6.0, 6.0, 6.0, 6.0, 1.0, 2.0])
    assert points == [pytest.approx((0.0, 0.3)), pytest.approx((0.7, 0.2))]
    assert (spread[0], spread[-1]) == (0.0, 0.0)


def test_a_force_within_a_stretch_stands_out_from_its_neighbours():
    """14 and 10 among 4 and 2: pressure 3, so 11 and 7 are left, 18 at 7/18 of the step."""
    row = [0.5 * P] + [4.0] * 4 + [14.0, 10.0] + [2.0] * 4 + [1.0]
    spread, points, stretches = told(row)
    assert points == [pytest.approx((0.5 + 0.1 * 7.0 / 18.0, 1.8), rel=1e-9)]
    assert spread == pytest.approx([2.0] + [4.0] * 4 + [3.0, 3.0] + [2.0] * 4 + [1.0], rel=1e-12)
    assert len(stretches) == 1


@pytest.mark.parametrize(("size", "is_told"), [(9.99, False), (10.0, False), (10.02, True)])
def test_two_nodes_stand_out_with_five_times_what_is_beside_them(size, is_told):
    """Beside them 4 and 3: 20 is five times the larger."""
    row = [1.5] + [3.0] * 4 + [size, size] + [P] * 4 + [2.0]
    assert bool(told(row)[1]) == is_told
    assert bool(told(row[::-1])[1]) == is_told


def test_forces_next_to_where_contact_begins_are_told():
    """The first two nodes and the last two carry the edge: within begins at the third."""
    outer, inner = edge(0.0, 2.0)
    for at in (5, 6, 10, 11):
        row = [0.0] * 3 + [outer, inner] + [P] * 8 + [inner, outer] + [0.0] * 2
        row[at] += 30.0
        row[at + 1] += 20.0
        places = [point.place for point in told(row)[1]]
        assert pytest.approx(STEP * (at + 0.4), rel=1e-9) in places, at


def test_two_forces_close_together_are_two():
    row = [0.5 * P] + [P] * 12 + [0.5 * P]
    row[4] += 30.0
    row[5] += 20.0
    row[7] += 12.0
    row[8] += 28.0
    _, points, _ = told(row)
    assert points == [pytest.approx((0.44, 5.0)), pytest.approx((0.77, 4.0))]


# --- what is made of them ---


def test_slack_behind_the_ends():
    whole = 4.0 * math.pi
    pressing = [Stretch(1.3, 4.0), Stretch(5.0, 11.9)]
    assert wall_contact._slack(pressing, whole) == [1.3, pytest.approx(whole - 11.9)]
    assert wall_contact._slack([], whole) == [whole, whole]


def test_the_force_of_a_tip_is_what_stands_at_it():
    points = [Point(0.0, 1.2), Point(5e-10, 0.7), Point(2e-9, 3.0), Point(1.0, 9.0)]
    assert wall_contact._at_tip(points, 0.0) == pytest.approx(1.9, rel=1e-12)
    assert wall_contact._at_tip(points, 1.0) == 9.0
    assert wall_contact._at_tip(points, 2.0) == 0.0


TURN = 2.0 * math.pi


@pytest.mark.parametrize(
    ("pieces", "share"),
    [
        ([], 0.0),
        ([(0.0, TURN)], 1.0),
        ([(1.0, 3.0)], 2.0 / TURN),
        # Apart, one over the other, one within the other.
        ([(1.0, 3.0), (4.0, 4.5)], 2.5 / TURN),
        ([(1.0, 3.0), (2.5, 4.5)], 3.5 / TURN),
        ([(1.0, 5.0), (2.5, 4.5)], 4.0 / TURN),
        # The second turn over the first: 1.2 to 3.4, and 3.0 to 4.1 of the turn.
        ([(1.2, 3.4), (TURN + 3.0, TURN + 4.1)], 2.9 / TURN),
        # Through the bridge: the end of the first turn and the start of the second.
        ([(TURN - 1.5, TURN + 2.2)], 3.7 / TURN),
        ([(0.5, TURN - 1.0), (TURN - 0.4, TURN + 0.3)], (TURN - 0.8) / TURN),
        ([(2.0, 2.0 * TURN - 2.0)], 1.0),
        # A little way into the second turn, over what the first begins with.
        ([(0.0, 0.2), (TURN - 1.5, TURN + 0.05)], 1.7 / TURN),
    ],
)
def test_what_seals_is_where_one_turn_or_the_other_presses(pieces, share):
    found = wall_contact._sealed([Stretch(a, b) for a, b in pieces])
    assert found == pytest.approx(share, abs=1e-12)


def test_of_two_places_alike_the_light_is_told_at_the_first():
    assert wall_contact._first_widest([0.1, 0.5, 0.7 - 1e-9, 0.2, 0.7], 0.7) == 2
    assert wall_contact._first_widest([0.1, 0.5, 0.7 - 2e-6, 0.2, 0.7], 0.7) == 4
    assert wall_contact._first_widest([0.0, 0.0, 0.0], 0.0) == 0


def test_the_skin_of_a_bent_ring():
    """6 M/(h a^2)*(1 -/+ a/(3 r)) -/+ M/(r h a), and steam presses on all of it.

    h 3, a 5, r 47.5: 6/75 = 0.08, a third of a/r 5/142.5 = 0.0350877, thrust 1/712.5 = 0.0014035.
    Outside 0.08*0.9649123 - 0.0014035 = 0.0757895; inside 0.08*1.0350877 + 0.0014035 = 0.0842105.
    """
    ring = Ring(100.0, 5.0, 3.0, 1e5, 1, 0.0, 0.0)
    assert wall_contact._skin(ring, 47.5, 1000.0, -200.0) == (
        pytest.approx(75.7895, rel=1e-6),
        pytest.approx(84.2105, rel=1e-6),
    )
    # Bent the other way the inside is pulled.
    assert wall_contact._skin(ring, 47.5, 200.0, -1000.0) == (
        pytest.approx(84.2105, rel=1e-6),
        pytest.approx(75.7895, rel=1e-6),
    )
    # 1.7 MPa of steam behind it; what stands on the face does not bend it.
    steam = ring._replace(back_pressure=1.7, face_pressure=0.6)
    assert wall_contact._skin(steam, 47.5, 1000.0, -200.0) == (
        pytest.approx(74.0895, rel=1e-6),
        pytest.approx(85.9105, rel=1e-6),
    )
    assert wall_contact._skin(steam, 47.5, 10.0, -2.0)[0] == 0.0
    assert wall_contact._skin(steam, 47.5, 0.0, 0.0) == (0.0, 1.7)


# Bore 100, thickness 5, width 3, E 100 000: r = 47.5, and E I/r^3 = 1e5*31.25/47.5^3.
RING = Ring(100.0, 5.0, 3.0, 1e5, 1, 0.0, 0.0)
UNIT = 1e5 * 31.25 / 47.5**3
FACE = 150.0


def lobed(own=1.0, steps=96):
    angles = [2.0 * math.pi * i / steps for i in range(steps + 1)]
    return [own + 3.1 * math.cos(3.0 * (a - 0.4)) for a in angles]


@pytest.mark.parametrize(("turns", "slack_ends"), [(1, 2.0), (2, 1.0)])
def test_a_round_arc_in_forces_and_pressures(turns, slack_ends):
    """Over the back it presses with 1.2*UNIT a radian; each end bears nothing for 122.57 degrees.

    All of it is 0.9 or 0.95 of that all round.
    """
    borne = wall_contact.bear(RING._replace(turns=turns), [1.2] * (180 * turns + 1))
    even = 1.2 * UNIT / FACE
    assert borne.contact_pressure == pytest.approx(even, rel=1e-6)
    assert borne.mean_pressure == pytest.approx((1.0 - 0.05 * slack_ends) * even, rel=1e-3)
    assert borne.total == pytest.approx(borne.mean_pressure * FACE * TURN * turns, rel=1e-12)
    assert borne.contact_share == pytest.approx(1.0 - slack_ends * 122.57 / 360.0, abs=1e-3)
    assert max(borne.moment) == pytest.approx(1.1866 * 1.2 * UNIT * 47.5, rel=2e-3)
    assert (borne.tension, borne.compression) == pytest.approx(
        wall_contact._skin(RING, 47.5, max(borne.moment), min(borne.moment)), rel=1e-12
    )


def test_a_ring_bent_both_ways_is_stressed_by_the_worse():
    """Steam presses it into every lobe: 1 + 3.1 and 1 - 3.1 of the strip's units."""
    ring = RING._replace(back_pressure=3.0)
    borne = wall_contact.bear(ring, lobed())
    assert 3.5 < max(borne.moment) / (UNIT * 47.5) < 4.1
    assert min(borne.moment) == pytest.approx(-2.1 * UNIT * 47.5, rel=0.02)
    one = wall_contact._skin(ring, 47.5, max(borne.moment), min(borne.moment))
    other = wall_contact._skin(ring, 47.5, -min(borne.moment), -max(borne.moment))
    assert (borne.tension, borne.compression) == pytest.approx(one, rel=1e-12)
    assert one != pytest.approx(other, rel=0.01)
    # Larger than the ring by more than it springs: most of it is bent the other way.
    borne = wall_contact.bear(ring, lobed(-1.5))
    assert -min(borne.moment) > 1.5 * max(borne.moment)
    wanted = wall_contact._skin(ring, 47.5, max(borne.moment), min(borne.moment))
    assert (borne.tension, borne.compression) == pytest.approx(wanted, rel=1e-12)


def test_a_ring_a_tenth_thicker_all_round_presses_a_third_harder():
    """Stiffness by the cube, 1.331; stress of the same bending by the first power."""
    even = wall_contact.bear(RING, lobed())
    thick = wall_contact.bear(RING, lobed(), [5.5] * 97)
    assert thick.total == pytest.approx(1.331 * even.total, rel=1e-5)
    assert thick.widest_light == pytest.approx(even.widest_light, rel=1e-4)
    assert thick.tension == pytest.approx(1.1 * even.tension, rel=1e-4)
    assert thick.compression == pytest.approx(1.1 * even.compression, rel=1e-4)


def test_forces_that_do_not_balance_are_never_shown():
    """Even pressure, K r (1 - cos psi), and then a ten-thousandth of it more at one node."""
    place = strip.grid(1, 48)
    moment = [2.5 * (1.0 - math.cos(i * place.step)) for i in range(49)]
    bent, wall = strip.respond(place, moment, 0.3, [0.0] * 49)
    found = Record(wall=wall, moment=bent)
    wall_contact._check_balance(place, moment, 0.3, found)
    # On this grid a force has up to sin/(sin(step)*k), 0.131 of it, as its moment.
    for more, is_shown in ((3.7e-4, True), (3.9e-4, False)):
        off = list(wall)
        off[20] += more
        found = Record(wall=off, moment=bent)
        if is_shown:
            wall_contact._check_balance(place, moment, 0.3, found)
            continue
        with pytest.raises(NotConverged) as refused:
            wall_contact._check_balance(place, moment, 0.3, found)
        assert refused.value.name == "balance of the ring"
        # 0.131 of it, over the largest moment, 5.
        assert refused.value.value == pytest.approx(0.131 * more / 5.0, rel=0.01)
    # At the very end a force bends nothing any more, and still has to be borne.
    off = list(wall)
    off[-1] += 4e-3
    with pytest.raises(NotConverged):
        wall_contact._check_balance(place, moment, 0.3, Record(wall=off, moment=bent))


def test_a_ring_too_small_for_its_bore_presses_with_nothing():
    borne = wall_contact.bear(RING, [-0.3] * 97)
    assert (borne.total, borne.contact_pressure, borne.contact_share) == (0.0, 0.0, 0.0)
    assert borne.slack == [pytest.approx(TURN)] * 2
