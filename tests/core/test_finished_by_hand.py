"""What the finished ring may be, by hand: thickness, width, gap and pressure at their limits."""

import pytest

from ringwright.core.ring.design import settle
from ringwright.core.walk import finished


def ring(turns="plain", *, bore=60.0, gap=0.45, thickness=2.7, width=6.4, groove=6.45, there=False):
    """A ring of those sizes [mm], as cold in work as in the shop: what is cut is what is left."""
    d = settle({"bore": bore, "ring_type": turns, "closed_gap": 0.3, "end_kerf": 2.0})[0]
    cold = d.duty.shop
    return d._replace(
        duty=d.duty._replace(
            closed_gap=gap, temperature=cold, wall_temperature=cold, warming_wall_temperature=cold
        ),
        section=d.section._replace(thickness=thickness, width=width),
        spring=d.spring._replace(gap_change=11.3, wall_pressure=0.052),
        groove_width=groove,
        groove_there=there,
    )


def limits(*args, **sizes):
    return finished.finished_limits(ring(*args, **sizes))


@pytest.mark.parametrize("turns", ["plain", "double-turn"])
@pytest.mark.parametrize(
    ("thickness", "off"), [(2.7, 0.054), (1.05, 0.021), (1.0, 0.02), (0.8, 0.02)]
)
def test_a_ring_may_be_two_hundredths_of_its_thickness_out_but_never_less_than_a_lathe_holds(
    turns, thickness, off
):
    low, high = limits(turns, thickness=thickness).thickness
    assert (low, high) == pytest.approx((thickness - off, thickness + off), abs=1e-9)


@pytest.mark.parametrize(
    ("gap", "largest"),
    [
        # A quarter more and 0.02: 0.45 + 0.1125 + 0.02.
        (0.45, 0.5825),
        (0.38, 0.495),
        # 0.30 / 4 + 0.02 is 0.095 only.
        (0.30, 0.40),
        (0.13, 0.23),
    ],
)
def test_a_double_turn_ring_s_gap_may_be_a_quarter_larger_but_a_tenth_at_least(gap, largest):
    found = limits("double-turn", gap=gap).closed_gap
    assert found == pytest.approx((gap, largest), abs=1e-9)


@pytest.mark.parametrize(
    ("gap", "largest"),
    [
        # Not wide yet: 0.30 + 0.10.
        (0.30, 0.40),
        # 0.37 + 0.0925 + 0.02 is 0.4825, over the 0.008 of 60 mm at which a gap is wide.
        (0.37, 0.48),
        # Wide 0.08 on; a tenth is left to work in.
        (0.40, 0.50),
        (0.55, 0.65),
    ],
)
def test_a_plain_ring_s_gap_stays_under_what_is_wide_while_a_tenth_is_left(gap, largest):
    found = limits(gap=gap).closed_gap
    assert found == pytest.approx((gap, largest), abs=1e-9)


# Sides at 60 mm bore, a twenty-fifth of the way from 50 to 300 mm.
LEAST = 0.0254 + 0.04 * (0.0508 - 0.0254)
SLACK = 1.5 * (0.0762 + 0.04 * (0.1270 - 0.0762))


@pytest.mark.parametrize(
    ("groove", "below", "above"),
    [
        # IT8 of over 6 to 10 mm is 0.022: the widest groove leaves 0.05 + 0.022.
        (6.45, SLACK - 0.072, 0.05 - LEAST),
        # Never wider than asked for where practice's least is not left already, nor narrower
        # where the widest groove is slack.
        (6.42, SLACK - 0.042, 0.0),
        (6.50, 0.0, 0.1 - LEAST),
    ],
)
def test_the_narrowest_ring_suits_the_widest_groove_and_the_widest_the_narrowest(
    groove, below, above
):
    found = limits(groove=groove).width
    assert found == pytest.approx((6.4 - below, 6.4 + above), abs=1e-9)


def test_a_groove_that_is_there_gives_all_its_room_to_the_ring():
    d = ring(groove=6.45, there=True)
    assert finished.groove_limits(d) == (6.45, 6.45)
    narrow, wide = finished.finished_limits(d).width
    assert (narrow, wide) == pytest.approx((6.4 - SLACK + 0.05, 6.45 - LEAST), abs=1e-9)


def test_sides_run_from_the_widest_ring_in_the_narrowest_groove_to_the_reverse():
    least, greatest = finished.side_limits(ring(groove=6.45))
    assert least == pytest.approx(LEAST, abs=1e-9)
    assert greatest == pytest.approx(0.05 + 0.022 + SLACK - 0.072, abs=1e-9)


@pytest.mark.parametrize(
    ("groove", "greatest"),
    # H8 by ISO 286-2: 14 micrometres from 1 to 3 mm, 18 to 6 mm; the standard begins at 1 mm.
    [(0.97, 0.97), (1.0, 1.014), (3.0, 3.014), (3.3, 3.318)],
)
def test_a_groove_to_be_cut_has_h8_from_one_millimetre_on(groove, greatest):
    found = finished.groove_limits(ring(groove=groove, width=groove - 0.04))
    assert found == pytest.approx((groove, greatest), abs=1e-9)


@pytest.mark.parametrize("turns", ["plain", "double-turn"])
def test_a_ring_may_press_a_quarter_less_or_more_and_its_free_gap_says_so(turns):
    """0.052 MPa: 0.039 to 0.065. The spring goes with the gap: 0.45 + 0.75 and 1.25 x 11.3."""
    d = ring(turns)
    assert finished.finished_limits(d).wall_pressure == pytest.approx((0.039, 0.065), abs=1e-9)
    assert finished.free_gap_limits(d) == pytest.approx((8.925, 14.575), abs=1e-9)
