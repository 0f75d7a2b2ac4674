"""The contact of ring and wall against its closed forms, and how fast the grid closes on them.

The closed forms are worked here from the beam equation alone: behind a free end that stands clear
    w'' + w = f - F*sin(psi) + q*(1 - cos psi),   w(0) = 0,   w = w' = w'' = 0 where contact begins,
so that the start of contact is the root of one equation; scipy finds it.
"""

import math

import pytest
from scipy.integrate import quad
from scipy.optimize import brentq, minimize_scalar

from ringwright.core import calculations
from ringwright.core.problems import InputProblem
from ringwright.core.wall import free_shape, strip
from ringwright.core.wall.contact import press
from ringwright.core.wall.wall_contact import Ring, bear

BORE, THICKNESS, WIDTH, MODULUS = 100.0, 4.0, 4.0, 100000.0
RADIUS = 48.0
UNIT = MODULUS * WIDTH * THICKNESS**3 / 12.0 / RADIUS**3
FACE = 0.5 * BORE * WIDTH
CURVATURE = 0.02 / RADIUS


def exact(f, q):
    """Start of contact [rad], tip force and widest light of a round-set ring, strip units."""

    def tip(start):
        return (f + q * (1.0 - math.cos(start))) / math.sin(start)

    def right(s, start):
        return f - tip(start) * math.sin(s) + q * (1.0 - math.cos(s))

    def at_tip(start):
        return quad(lambda s: math.sin(s) * right(s, start), 0.0, start, epsabs=1e-13)[0]

    start = brentq(at_tip, 0.2, 3.0, xtol=1e-13)

    def w(psi):
        return -quad(lambda s: math.sin(psi - s) * right(s, start), psi, start, epsabs=1e-13)[0]

    found = minimize_scalar(w, bounds=(0.01, start - 0.01), method="bounded")
    return start, tip(start), -found.fun, found.x


def round_set(steps, turns=1, steam=0.0, tight=False):
    ring = Ring(BORE, THICKNESS, WIDTH, MODULUS, turns, steam, 0.0)
    if tight:
        step = 2.0 * math.pi * turns / steps
        moment = free_shape.light_tight(CURVATURE, RADIUS, steps + 1, step)
    else:
        moment = free_shape.round_arc(CURVATURE, RADIUS, steps + 1)
    return bear(ring, moment)


def test_the_round_set_ring_matches_the_published_ratios():
    """122.57 degrees, 0.1047, 1.187, 0.900 and 0.950: the closed form's figures to their digits."""
    f = CURVATURE * RADIUS * RADIUS
    start, tip, light, _ = exact(f, 0.0)
    assert math.degrees(start) == pytest.approx(122.57, abs=0.005)
    assert light / f == pytest.approx(0.1047, abs=0.00005)
    one, two = round_set(720), round_set(1440, turns=2)
    assert math.degrees(max(one.slack)) == pytest.approx(math.degrees(start), abs=0.01)
    assert one.widest_light == pytest.approx(light, rel=1e-4)
    assert math.degrees(one.light_place) == pytest.approx(32.4, abs=0.5)
    assert one.tip_forces == pytest.approx([tip * UNIT, tip * UNIT], rel=2e-5)
    contact = UNIT / FACE * f
    assert one.contact_pressure == pytest.approx(contact, rel=1e-9)
    assert one.mean_pressure / contact == pytest.approx(0.900, abs=0.0005)
    assert two.mean_pressure / contact == pytest.approx(0.950, abs=0.0005)
    assert (one.sealed_share, two.sealed_share) == pytest.approx((0.3191, 1.0), abs=1e-4)
    # Where contact begins the wall takes a line force of -F*cos(psi0).
    places = [point.place for point in one.points]
    assert places[1] == pytest.approx(start, abs=2e-4)
    assert one.points[1].force == pytest.approx(-tip * math.cos(start) * UNIT, rel=2e-4)


@pytest.mark.parametrize("steam", [0.01, 0.1, 0.5, 2.0])
def test_steam_behind_the_ring_shortens_the_clear_length(steam):
    f = CURVATURE * RADIUS * RADIUS
    q = steam * FACE / UNIT
    start, tip, light, place = exact(f, q)
    borne = round_set(1440, steam=steam)
    assert math.degrees(borne.slack[0]) == pytest.approx(math.degrees(start), abs=0.02)
    assert borne.tip_forces[0] == pytest.approx((tip) * UNIT, rel=2e-4)
    assert borne.widest_light == pytest.approx(light, rel=1e-3)
    assert math.degrees(borne.light_place) == pytest.approx(math.degrees(place), abs=0.5)
    assert borne.contact_pressure == pytest.approx((f + q) * UNIT / FACE, rel=1e-6)


def test_steam_on_the_face_takes_off_what_it_pushes_back():
    ring = Ring(BORE, THICKNESS, WIDTH, MODULUS, 1, 0.7, 0.3)
    both = bear(ring, free_shape.round_arc(CURVATURE, RADIUS, 361))
    assert both.mean_pressure == pytest.approx(round_set(360, steam=0.4).mean_pressure, rel=1e-9)


def test_a_ring_in_a_bore_too_large_for_it_is_said_to_lie_loose():
    """A bore 3 mm over the ring's: more than its 2.2 mm of spring on the diameter can reach."""
    rows = [{"angle": 10.0 * i, "radius": 41.5} for i in range(36)]
    answer = calculations.run("wall-pressure", {"bore": 80.0, "bore_shape": {"readings": rows}})
    assert answer["figures"]["wall_force"]["value"] == pytest.approx(0.0, abs=1e-6)
    assert [(row["check"], row["outcome"]) for row in answer["findings"]] == [
        ("no-contact", "stop")
    ]
    rows = [{"angle": 10.0 * i, "radius": 40.5} for i in range(36)]
    answer = calculations.run("wall-pressure", {"bore": 80.0, "bore_shape": {"readings": rows}})
    assert 0.0 < answer["figures"]["mean_wall_pressure"]["value"] < 0.048


def test_more_steam_on_the_face_than_behind_is_refused():
    with pytest.raises(InputProblem) as refused:
        calculations.run("wall-pressure", {"bore": 80.0, "face_pressure": 0.3})
    assert refused.value.faults[0].path == ("face_pressure",)


def test_a_light_tight_ring_presses_as_the_bound_one_without_light():
    bound, tight = round_set(720), round_set(720, tight=True)
    assert tight.widest_light < 1e-6
    assert tight.mean_pressure == pytest.approx(bound.mean_pressure, rel=1e-5)
    assert tight.tip_forces == pytest.approx(bound.tip_forces, rel=1e-5)
    assert tight.slack == pytest.approx(bound.slack, abs=1e-4)


def test_a_ring_set_for_uniform_pressure_presses_uniformly():
    springiness = 0.06 * FACE / (UNIT * RADIUS)
    for turns in (1, 2):
        steps = 360 * turns
        moment = free_shape.uniform(springiness, RADIUS, steps + 1, 2.0 * math.pi / 360)
        borne = bear(Ring(BORE, THICKNESS, WIDTH, MODULUS, turns, 0.0, 0.0), moment)
        assert borne.mean_pressure == pytest.approx(0.06, rel=1e-9)
        assert borne.largest_pressure == pytest.approx(0.06, rel=1e-9)
        assert borne.points == []
        # Thin curved bar: 3 p (d/a)(d/a - 2) and 3 p (d/a)^2.
        assert borne.tension == pytest.approx(3 * 0.06 * 25 * 23, rel=1e-9)
        assert borne.compression == pytest.approx(3 * 0.06 * 25 * 25, rel=1e-9)


def test_a_loose_ring_bears_on_nothing():
    borne = bear(
        Ring(BORE, THICKNESS, WIDTH, MODULUS, 1, 0.0, 0.0),
        free_shape.round_arc(-0.01 / RADIUS, RADIUS, 361),
    )
    assert borne.total == pytest.approx(0.0, abs=1e-9)
    assert borne.contact_share == borne.sealed_share == 0.0


ORDERS = {"slack angle": 2.0, "widest light": 2.0, "tip force": 2.0, "mean pressure": 2.0}


def test_a_strip_that_nothing_bends_touches_nowhere():
    found = press(1, [0.0] * 65, 0.0)
    assert found.touching == [False] * 65
    assert found.light == found.moment == found.wall == [0.0] * 65
    assert found.passes == 0.0
    assert {type(one) for one in found.touching} == {bool}
    assert {type(one) for one in found.wall} == {float} == {type(found.passes)}


def errors(steps):
    f = CURVATURE * RADIUS * RADIUS
    start, tip, light, _ = exact(f, 0.0)
    mean = ((math.pi - start) + (1.0 - math.cos(start)) / math.sin(start)) / math.pi
    borne = round_set(steps)
    return {
        "slack angle": abs(borne.slack[0] / start - 1.0),
        "widest light": abs(borne.widest_light / light - 1.0),
        "tip force": abs(borne.tip_forces[0] / (tip * UNIT) - 1.0),
        "mean pressure": abs(borne.mean_pressure / (mean * f * UNIT / FACE) - 1.0),
    }


def test_the_grid_closes_on_the_closed_form_with_second_order():
    """Errors against steps on a log-log plot: slope 2. Shown with `pytest -s`."""
    grids = (48, 96, 192, 384, 768)
    table = {steps: errors(steps) for steps in grids}
    for name, order in ORDERS.items():
        row = [table[steps][name] for steps in grids]
        slope = math.log(row[0] / row[-1]) / math.log(grids[-1] / grids[0])
        print("\n%-13s slope %.2f" % (name, slope))
        for steps, error in zip(grids, row, strict=True):
            print("%5d %9.2e |%s*" % (steps, error, " " * int(8 * (8 + math.log10(error)))))
        assert slope > order - 0.35, name


def test_the_passes_do_not_grow_with_the_grid():
    passes = [press(1, [1.0] * (steps + 1), 0.0).passes for steps in (96, 384, 1536)]
    assert max(passes) < 8.0
    assert passes[2] <= passes[0] + 1.0


def test_the_strip_bends_as_beam_theory_says():
    """w = sin and cos cost nothing, w = 1 costs 1, w = psi*sin(psi) costs 2*cos(psi)."""
    place = strip.grid(1, 720)
    angles = [i * place.step for i in range(place.nodes)]
    nil = [0.0] * place.nodes
    for shape, bend in (
        (math.sin, lambda a: 0.0),
        (math.cos, lambda a: 0.0),
        (lambda a: 1.0, lambda a: 1.0),
        (lambda a: a * math.sin(a), lambda a: 2.0 * math.cos(a)),
        (lambda a: math.cos(3 * a), lambda a: -8.0 * math.cos(3 * a)),
    ):
        moment, _ = strip.respond(place, nil, 0.0, [shape(a) for a in angles])
        for a, m in list(zip(angles, moment, strict=True))[1:-1]:
            assert -m == pytest.approx(bend(a), abs=1e-3)
