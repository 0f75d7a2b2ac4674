"""From what is asked of a ring's spring to its former or spacer, by the formulas as derived.

A ring of 80 mm bore, 2.6 mm thick, set by 0.83 of its moment on a former that grows 0.2 % more.
"""

import math
from types import SimpleNamespace as Record

import pytest

from ringwright.core.catalogue.inputs import Chooser
from ringwright.core.catalogue.inputs_blank import BLANK
from ringwright.core.catalogue.inputs_ring import RING
from ringwright.core.problems import InputProblem
from ringwright.core.ring import heat_set, spring_back

BORE, A, E = 80.0, 2.6, 101000.0
R = 0.5 * (BORE - A)
ETA, GROWTH, CLOSED, KERF = 0.83, 1.002, 0.4, 1.3


def ring(setting, turns=1, uniform=None, inside=0.0, relief=ETA, kerf=KERF):
    if uniform is None:
        uniform = setting == heat_set.SPREAD
    duty = Record(
        bore=BORE,
        modulus=E,
        turns=turns,
        setting=setting,
        closed_gap=CLOSED,
        bearing=heat_set.Bearing(uniform, False),
    )
    return spring_back.Ring(
        duty=duty,
        thickness=A,
        allowances=Record(gap_kerf=kerf, inside=inside),
        relief=relief,
        # 0.35 left on outside, and as much inside where a band holds it.
        set_thickness=A + 0.35 + inside,
        bored_radius=38.95,
        growth=GROWTH,
    )


def sprung(asked, usual=0.047, **values):
    take = Chooser(values, RING, BLANK)
    return spring_back.spring_of(asked, take, values, usual, "the usual"), take


def fault(asked, **values):
    with pytest.raises(InputProblem) as caught:
        sprung(asked, **values)
    (found,) = caught.value.faults
    return found


def gap_of(k):
    """3 pi r K (1 + 5 K/6 - 1.159 K^2), K = 6 p d1 r^2/(E a1^3): the derived series."""
    return 3.0 * math.pi * R * k * (1.0 + 5.0 * k / 6.0 - 1.159 * k * k)


def test_a_spread_ring_by_its_pressure_and_by_its_gap():
    """The heat adds to the cut what the gap asks: spacer = s + (m - (s - s1))/eta."""
    k = 6.0 * 0.047 * BORE * R * R / (E * A**3)
    found, take = sprung(ring(heat_set.SPREAD))
    assert found.gap_change == pytest.approx(gap_of(k), rel=1e-4)
    assert found.wall_pressure == found.contact_pressure == 0.047
    spacer = KERF + (found.gap_change - (KERF - CLOSED)) / ETA
    assert found.spacer_width == pytest.approx(spacer, rel=1e-12)
    (noted,) = take.chosen
    assert (noted.input, noted.value, noted.why) == ("wall_pressure", 0.047, "the usual")
    again, take = sprung(ring(heat_set.SPREAD), free_gap=found.gap_change + CLOSED)
    assert again.wall_pressure == pytest.approx(0.047, rel=1e-9)
    assert again.gap_change == pytest.approx(found.gap_change, rel=1e-12)
    assert take.chosen == []
    asked, take = sprung(ring(heat_set.SPREAD), wall_pressure=0.06)
    assert (asked.wall_pressure, take.chosen) == (0.06, [])


def test_a_gap_has_to_be_more_than_there_is_in_the_bore():
    for setting in (heat_set.SPREAD, heat_set.BOUND):
        for gap in (CLOSED, CLOSED - 0.1):
            found = fault(ring(setting, kerf=0.1), free_gap=gap)
            assert (found.path, found.value, found.lowest) == (("free_gap",), gap, CLOSED)
    for more in (0.5, 0.005):
        found, _ = sprung(ring(heat_set.SPREAD, kerf=0.1), free_gap=CLOSED + more)
        assert found.gap_change == pytest.approx(more)


def test_a_saw_may_not_take_what_the_gap_wants():
    """The spacer is just the cut where the gap wanted is the cut: 0.4 in the bore and 0.9 more."""
    gap = {"free_gap": 1.29}
    found = fault(ring(heat_set.SPREAD), **gap)
    assert found.path == ("free_gap",)
    assert "the free gap wanted is only 1.29 mm" in found.message
    # Across an angled cut it is thinner: 1.1 of 1.3 mm; at most 1.1 * 1.29/1.3.
    found = fault(ring(heat_set.SPREAD), end_kerf=1.1, **gap)
    assert (found.path, found.value) == (("end_kerf",), 1.1)
    assert found.highest == pytest.approx(1.1 * 1.29 / 1.3, rel=1e-9)
    assert sprung(ring(heat_set.SPREAD), free_gap=1.31)[0].spacer_width > KERF
    # Half a millimetre asked, half a millimetre sawn, none in the bore: nothing is held open.
    asked = ring(heat_set.SPREAD, kerf=0.5)
    asked.duty.closed_gap = 0.0
    assert fault(asked, free_gap=0.5).path == ("free_gap",)


@pytest.mark.parametrize("target", ["former_ratio", "shelf_former"])
def test_a_spacer_is_no_former(target):
    found = fault(ring(heat_set.SPREAD), **{target: 1.1})
    assert (found.path, found.code) == ((target,), "conflict")


CASES = [
    # setting, turns, held by a band, mean over p0, gap over 2 pi (R - r).
    (heat_set.BOUND, 1, False, heat_set.mean_share(1), 1.0),
    (heat_set.BOUND, 2, False, heat_set.mean_share(2), 1.0),
    (heat_set.SPRUNG, 1, False, heat_set.mean_share(1), heat_set.sprung_gap_factor(1)),
    (heat_set.BOUND, 1, True, 2.0 / 3.0, 1.0),
    (heat_set.SPRUNG, 2, True, 0.8936, heat_set.sprung_gap_factor(2)),
]


def by_former(former, inside):
    """(kappa0, former's neutral radius) of a former [mm]: hot, the ring on it, eased, turned."""
    on = 0.5 * former * GROWTH + 0.5 * (A + 0.35 + inside)
    free = 1.0 / (1.0 / 38.95 + ETA * (1.0 / on - 1.0 / 38.95))
    # Half of what is turned off outside moves the neutral line in, half of the inside's out again.
    free -= 0.5 * 0.35 - 0.5 * inside
    return 1.0 / R - 1.0 / free, on


@pytest.mark.parametrize(("setting", "turns", "banded", "mean", "wider"), CASES)
def test_a_former_on_the_shelf_gives_its_pressure_and_gap(setting, turns, banded, mean, wider):
    inside = 0.35 if banded else 0.0
    asked = ring(setting, turns, banded, inside)
    found, _ = sprung(asked, shelf_former=77.5)
    kappa, on = by_former(77.5, inside)
    contact = E * A**3 * kappa / (3.0 * (BORE - A) * BORE)
    assert found.former_radius == pytest.approx(on, rel=1e-12)
    assert found.former_diameter == 77.5
    assert found.curvature_change == pytest.approx(kappa, rel=1e-9)
    assert found.wall_pressure == pytest.approx(mean * contact, rel=1e-9)
    # Held by a band it presses evenly; else where it touches.
    assert found.contact_pressure == pytest.approx((mean if banded else 1.0) * contact, rel=1e-9)
    gap = wider * 2.0 * math.pi * (1.0 / (1.0 / R - kappa) - R)
    assert found.gap_change == pytest.approx(gap, rel=1e-9)
    assert found.spacer_width is None
    # The other roads lead to the same former.
    for road in (
        {"former_ratio": 77.5 / (BORE - 2.0 * A)},
        {"free_gap": gap + CLOSED},
        {"wall_pressure": found.wall_pressure},
    ):
        again, _ = sprung(asked, **road)
        assert again.former_diameter == pytest.approx(77.5, rel=1e-9)
        assert again.curvature_change == pytest.approx(kappa, rel=1e-9)
        assert again.former_radius == pytest.approx(on, rel=1e-9)


def free_gap_of(kappa):
    return 2.0 * math.pi * (1.0 / (1.0 / R - kappa) - R) + CLOSED


def test_a_ring_set_too_far_or_not_at_all():
    asked = ring(heat_set.BOUND, relief=1.0)
    # 0.45 of the curvature of the bore, and just past it.
    assert sprung(asked, free_gap=free_gap_of(0.4499 / R))[0].former_diameter > 0.0
    assert fault(asked, free_gap=free_gap_of(0.452 / R)).path == ("free_gap",)
    # A former of 70 mm: it comes off smaller than the bore. Just as large: it would not press.
    small = fault(asked, shelf_former=70.0)
    assert (small.path, "larger shelf_former" in small.remedy) == (("shelf_former",), True)
    least = (2.0 * (R + 0.5 * 0.35) - (A + 0.35)) / GROWTH
    assert fault(asked, shelf_former=least - 1e-4).path == ("shelf_former",)
    assert sprung(asked, shelf_former=least + 1e-4)[0].wall_pressure < 1e-4


def test_a_former_is_less_than_twice_the_ring():
    """Its curvature over half of the bored ring's: relief at least (1/r_b - 1/R)/(0.5/r_b)."""
    kappa = 0.2 / R
    free = 1.0 / (1.0 / R - kappa) + 0.175
    least = (1.0 / 38.95 - 1.0 / free) / (0.5 / 38.95)
    assert fault(ring(heat_set.BOUND, relief=0.9999 * least), free_gap=free_gap_of(kappa)).path == (
        "relief",
    )
    found, _ = sprung(ring(heat_set.BOUND, relief=1.0001 * least), free_gap=free_gap_of(kappa))
    assert found.former_radius == pytest.approx(2.0 * 38.95, rel=1e-3)


def test_nothing_is_set_where_no_curvature_is_left(monkeypatch):
    """At the limits themselves: 0.45 of the bore's curvature will do, none will not."""
    spring_back._check_curvature("free_gap", 0.225, 2.0)
    with pytest.raises(InputProblem):
        spring_back._check_curvature("free_gap", 0.0, 2.0)
