"""A plan of cuts, counted by hand: what fits, what is drawn, what is told."""

import pytest

from core.test_cutting import own, plan, sawn, shop
from ringwright.core.cutting import Piece, sticks


def cuts(found):
    return [(cut.bar, cut.alike, cut.pieces) for cut in found.cuts]


@pytest.mark.parametrize(
    ("piece", "bar", "kerf", "fits"),
    [
        (sawn(100.0, 1), own(100.0), 0.0, True),
        (sawn(100.001, 1), own(100.0), 0.0, False),
        # The saw cut may fall off the end.
        (sawn(100.0, 1), own(100.0), 3.0, True),
        # Held in the chuck once: 20 and 80.
        (Piece("blank", 80.0, 1, 5, 30.0), own(100.0, fed=True, held=20.0), 3.0, True),
        (Piece("blank", 80.001, 1, 5, 30.0), own(100.0, fed=True, held=20.0), 3.0, False),
        # A stick of one: 80 and its chucking piece of 20, either way that sticks are told.
        (Piece("blank", 80.0, 1, 5, 20.0), own(100.0), 3.0, True),
        (Piece("blank", 80.001, 1, 5, 20.0), own(100.0), 3.0, False),
        (Piece("blank", 80.0, 1, 1, 20.0), own(100.0), 3.0, True),
        (Piece("blank", 80.001, 1, 1, 20.0), own(100.0), 3.0, False),
    ],
)
def test_a_piece_goes_into_what_is_just_as_long(piece, bar, kerf, fits):
    found = plan([piece], [bar], kerf)
    assert found.missing == [0 if fits else 1]
    if fits:
        assert found.cuts[0].offcut == pytest.approx(20.0 if bar.fed else 0.0)


def test_lengths_count_to_the_nearest_micrometre():
    """Three of 33.333497 are 3 x 33 333; three of 33.3335 are 3 x 33 334, two more than 100 000."""
    assert plan([sawn(33.333497, 3)], [own(100.0)]).missing == [0]
    assert plan([sawn(33.3335, 3)], [own(100.0)]).missing == [1]


def test_one_stick_more_takes_its_chucking_piece():
    """Seven at 10 in sticks of three, 12 held and 2 sawn: 70 + 3 x 14 = 112, 2 off the end."""
    blanks = [Piece("blank", 10.0, 7, 3, 12.0)]
    assert plan(blanks, [own(110.0)], 2.0).missing == [0]
    assert plan(blanks, [own(109.999)], 2.0).missing == [1]
    assert sticks(7, 3) == [3, 2, 2]


def test_bars_alike_are_told_together_and_drawn_in_the_order_given():
    found = plan([sawn(90.0, 4)], [own(100.0, 2), own(100.0, 1), own(100.0, 3)])
    assert cuts(found) == [
        (0, 2, ((0, 1),)),
        (1, 1, ((0, 1),)),
        (2, 1, ((0, 1),)),
    ]
    assert found.begun == 400.0
    found = plan([sawn(90.0, 5)], [shop(100.0, 4.5)])
    assert cuts(found) == [(0, 5, ((0, 1),))]
    assert (found.bought, found.bought_bound, found.bought_proved) == (22.5, 22.5, True)
    # Of unlike fillings the fullest stands first: 60 and 35, then 60 alone.
    found = plan([sawn(60.0, 3), sawn(35.0, 2)], [own(100.0, 2), own(100.0, 2)], usable=200.0)
    assert cuts(found) == [
        (0, 2, ((0, 1), (1, 1))),
        (1, 1, ((0, 1),)),
    ]
    assert [cut.used for cut in found.cuts] == pytest.approx([95.0, 60.0])
    assert found.scrap == pytest.approx(2 * 5.0 + 40.0)


def test_what_is_left_of_bars_alike_is_drawn_before_the_next():
    """Two of three hold 60 and 35; of the two that hold 60 alone one is the third, one the next."""
    found = plan([sawn(60.0, 4), sawn(35.0, 2)], [own(100.0, 3), own(100.0, 2)], usable=200.0)
    assert cuts(found) == [
        (0, 2, ((0, 1), (1, 1))),
        (0, 1, ((0, 1),)),
        (1, 1, ((0, 1),)),
    ]


def test_no_bar_is_drawn_more_often_than_it_is_there():
    found = plan([sawn(90.0, 6)], [own(100.0, 2), own(100.0, 3)])
    assert cuts(found) == [(0, 2, ((0, 1),)), (1, 3, ((0, 1),))]
    assert found.missing == [1]
    # What is not there is no bar.
    assert plan([sawn(90.0, 1)], [own(100.0, 0), own(120.0, 1)]).cuts[0].bar == 1


def test_a_bar_that_may_be_bought_without_end_but_holds_no_stick_gives_none():
    """A stick of one is 80 and 30 held: 110 of a bar of 100."""
    blanks = [Piece("blank", 80.0, 1, 5, 30.0), sawn(50.0, 2)]
    found = plan(blanks, [shop(100.0, 6.0)])
    assert (found.missing, found.bought, found.bought_proved) == ([1, 0], 6.0, True)


def test_what_is_left_out_costs_nothing_and_what_is_bought_is_proved():
    """Three of 90 out of one bar at 6 and one of the shop's own: one is left out."""
    found = plan([sawn(90.0, 3)], [own(100.0), shop(100.0, 6.0, 1)])
    assert found.missing == [1]
    assert (found.bought, found.bought_bound, found.bought_proved) == (6.0, 6.0, True)
    assert (found.begun, found.begun_bound, found.begun_proved) == (100.0, 100.0, True)
    # Though the lack of two counts for more than all bars, money is that of one.
    found = plan([sawn(90.0, 2), sawn(40.0, 1)], [shop(95.0, 6.0, 1), shop(45.0, 2.5, 1)])
    assert found.missing == [1, 0]
    assert (found.bought, found.bought_bound, found.bought_proved) == (8.5, 8.5, True)


@pytest.mark.parametrize(("usable", "kept", "scrap"), [(10.0, True, 0.0), (10.001, False, 10.0)])
def test_an_offcut_just_long_enough_is_kept(usable, kept, scrap):
    found = plan([sawn(90.0, 1)], [own(100.0)], usable=usable)
    assert (found.cuts[0].kept, found.scrap) == (kept, pytest.approx(scrap))
    assert (found.scrap_bound, found.scrap_proved) == (pytest.approx(scrap), True)
    # Nothing left over is nothing kept.
    assert not plan([sawn(100.0, 1)], [own(100.0)], usable=0.0).cuts[0].kept


def test_an_offcut_of_a_micrometre_is_one():
    assert plan([sawn(100.0, 1)], [own(100.001)], usable=0.001).cuts[0].kept


@pytest.mark.parametrize("fed", [False, True])
def test_all_that_is_left_is_scrap_where_no_offcut_can_be_long_enough(fed):
    """Two of 60 and one of 35 out of two bars of 100: 45 are left, however they are cut, though
    either bar alone could be filled to 95."""
    found = plan([sawn(60.0, 2), sawn(35.0, 1)], [own(100.0, 2, fed=fed)], usable=50.0)
    assert (found.scrap, found.scrap_bound, found.scrap_proved) == (45.0, 45.0, True)


def test_money_counts_to_the_thousandth_and_no_bar_is_free():
    """Two at 3.0004 are 6.000, one at 6.0004 is 6: the longer is not dearer; but at 6.001 it is."""
    found = plan([sawn(90.0, 2)], [shop(100.0, 3.001), shop(200.0, 6.001)])
    assert found.bought == pytest.approx(6.001)
    found = plan([sawn(90.0, 2)], [shop(100.0, 3.0004), shop(200.0, 6.001)])
    assert found.bought == pytest.approx(6.0)
    assert plan([sawn(90.0, 1)], [shop(100.0, 0.0001)]).bought == 0.001


def test_own_bars_go_by_what_they_are_worth():
    found = plan([sawn(90.0, 1)], [own(100.0, worth=7.0), own(300.0, worth=6.5)])
    assert cuts(found) == [(1, 1, ((0, 1),))]
    assert (found.begun, found.begun_bound) == (6.5, 6.5)
    # Two alike but for their worth are two sorts.
    found = plan([sawn(90.0, 2)], [own(100.0, worth=7.0), own(100.0, worth=6.5)])
    assert found.begun == 13.5


def test_where_nothing_can_be_cut_all_is_nought():
    found = plan([sawn(90.0, 2)], [own(80.0)])
    assert found.missing == [2]
    nought = (found.bought, found.bought_bound, found.begun, found.begun_bound)
    assert nought == (0.0, 0.0, 0.0, 0.0)
    assert (found.scrap, found.scrap_bound, found.steps) == (0.0, 0.0, 0)


@pytest.mark.parametrize(
    "piece",
    [
        Piece("it", 10.0, 1, 0, 0.0),
        Piece("it", 10.0, 1, 1, -0.001),
        Piece("it", 0.0, 1, 1, 0.0),
        Piece("it", 10.0, -1, 1, 0.0),
    ],
)
def test_what_is_no_piece_is_refused_by_its_name(piece):
    with pytest.raises(ValueError, match="it"):
        plan([piece], [own(100.0)])
    assert plan([sawn(0.001, 0)], [own(0.001)]).missing == [0]
    for bar in (own(-1.0), shop(100.0, -0.1), shop(100.0, 0.0)):
        with pytest.raises(ValueError, match="bar"):
            plan([sawn(5.0, 1)], [bar])
