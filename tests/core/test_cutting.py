"""Cutting bars: hand cases, invariants, and an independent solver of integer programmes."""

import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core import cutting_milp
from ringwright.core.cutting import Bar, Piece, plan_cuts, sticks


def own(length, count=1, **more):
    return bar(length, count, None, **more)


def shop(length, price, count=None, **more):
    return bar(length, count, price, **more)


def bar(length, count, price, fed=False, held=0.0, accepts=None, worth=None):
    return Bar("bar", length, count, price, length if worth is None else worth, fed, held, accepts)


def sawn(length, count):
    return Piece("piece", length, count, 1, 0.0)


def plan(pieces, bars, kerf=0.0, usable=50.0, **more):
    return plan_cuts(pieces=pieces, bars=bars, kerf=kerf, usable_offcut=usable, **more)


def taken(pieces, a_bar, held, kerf):
    """Length used, by the words of the docstrings: what the pieces, sticks and saw cuts take."""
    used = 0.0
    for at, number in held:
        piece = pieces[at]
        used += number * piece.length
        if not a_bar.fed:
            used += len(sticks(number, piece.stick)) * (piece.stick_extra + kerf)
    return used + (a_bar.held if a_bar.fed else 0.0)


def check(found, pieces, bars, kerf, usable):
    """Every piece once, no bar over-full or used too often, sums as they are said to be."""
    cut = [0] * len(pieces)
    drawn = [0] * len(bars)
    scrap = 0.0
    for entry in found.cuts:
        a_bar = bars[entry.bar]
        drawn[entry.bar] += entry.alike
        for at, number in entry.pieces:
            assert number > 0
            assert a_bar.accepts is None or at in a_bar.accepts
            cut[at] += number * entry.alike
        used = taken(pieces, a_bar, entry.pieces, kerf)
        # Lengths are reckoned to the nearest micrometre, each piece and stick on its own.
        play = 0.0005 * (2 + 2 * sum(number for _, number in entry.pieces))
        assert used <= a_bar.length + (0.0 if a_bar.fed else kerf) + play
        # What a fed bar leaves in the chuck belongs to its offcut.
        left = a_bar.length - used + (a_bar.held if a_bar.fed else 0.0)
        assert entry.offcut == pytest.approx(max(0.0, left), abs=play)
        assert entry.used + entry.offcut == pytest.approx(a_bar.length)
        assert entry.kept == (entry.offcut > 0 and entry.offcut >= usable)
        if not entry.kept:
            scrap += entry.offcut * entry.alike
    for piece, number, less in zip(pieces, cut, found.missing, strict=True):
        assert number + less == piece.count
    for a_bar, number in zip(bars, drawn, strict=True):
        assert a_bar.count is None or number <= a_bar.count
    money = sum(n * b.price for n, b in zip(drawn, bars, strict=True) if b.price is not None)
    begun = sum(n * b.worth for n, b in zip(drawn, bars, strict=True) if b.price is None)
    assert found.bought == pytest.approx(money, abs=0.001 * (1 + sum(drawn)))
    assert found.begun == pytest.approx(begun, abs=0.001 * (1 + sum(drawn)))
    assert found.scrap == pytest.approx(scrap, abs=1e-6)
    assert found.bought_bound <= found.bought
    assert found.begun_bound <= found.begun
    assert found.scrap_bound <= found.scrap
    # With pieces left out, proved means besides that no plan leaves out fewer.
    if found.bought_proved or not any(found.missing):
        assert found.bought_proved == (found.bought_bound == found.bought)
    assert found.begun_proved == (found.begun_bound == found.begun)


# --- by hand ---


def test_one_bar_cut_to_the_last_millimetre():
    """Four pieces of 24 and three saw cuts of 2 make 102: the last needs no cut after it."""
    found = plan([sawn(24.0, 4)], [own(102.0)], kerf=2.0)
    assert found.missing == [0]
    assert found.cuts[0].offcut == 0.0
    assert plan([sawn(24.0, 4)], [own(101.0)], kerf=2.0).missing == [1]


@pytest.mark.parametrize("step_limit", [300, 1000, 3000, 14000])
def test_the_fewest_pieces_are_left_out(step_limit):
    """33 hold two pieces of 8, or one of 8 on a stick of 25: 21 of 23 are left out, not 22.

    And a little work suffices to prove it: no stage may use up what the others need.
    """
    pieces = [Piece("short", 8.0, 2, 1, 0.0), Piece("on a stick", 8.0, 21, 1, 25.0)]
    found = plan(pieces, [own(33.0)], step_limit=step_limit)
    assert (found.missing, found.bought_proved) == ([0, 21], True)


def test_a_piece_left_over_needs_its_cut():
    """Three of 30 with cuts of 2 leave 100 - 96 = 4 of the bar."""
    found = plan([sawn(30.0, 3)], [own(100.0)], kerf=2.0)
    assert found.cuts[0].offcut == pytest.approx(4.0)


def test_a_short_bar_in_the_rack_goes_before_a_long_one():
    found = plan([sawn(100.0, 1)], [own(1000.0), own(120.0)])
    assert [entry.bar for entry in found.cuts] == [1]
    assert found.begun == 120.0 and found.begun_proved


def test_the_rack_goes_before_the_shop():
    found = plan([sawn(100.0, 3)], [own(250.0), shop(500.0, 20.0), shop(120.0, 6.0)])
    assert found.bought == 6.0 and found.bought_proved
    assert found.begun == 250.0


def test_two_short_bars_may_be_dearer_than_one_long():
    found = plan([sawn(90.0, 4)], [shop(100.0, 5.0), shop(400.0, 16.0)])
    assert (found.bought, found.bought_proved) == (16.0, True)
    found = plan([sawn(90.0, 4)], [shop(100.0, 3.0), shop(400.0, 16.0)])
    assert (found.bought, found.bought_proved) == (12.0, True)


def test_the_textbook_trap_of_filling_the_first_bar_best():
    """60 60 40 40 into bars of 100: a first bar of 40 40 would end in three."""
    pieces = [sawn(60.0, 2), sawn(40.0, 2)]
    found = plan(pieces, [shop(100.0, 1.0)])
    assert (found.bought, found.bought_proved) == (2.0, True)


def test_what_is_left_is_gathered_where_it_can_be_kept():
    """Two bars begun either way; 40 + 40 left is scrap, 80 in one is kept."""
    found = plan([sawn(40.0, 3)], [own(100.0), own(100.0)], usable=55.0)
    assert found.scrap == pytest.approx(20.0)
    assert [entry.kept for entry in found.cuts] == [False, True]


def test_whoever_keeps_everything_scraps_nothing():
    found = plan([sawn(40.0, 2)], [own(100.0)], usable=0.0)
    assert found.scrap == 0.0 and found.scrap_proved
    assert found.cuts[0].kept


def test_sticks_take_their_chucking_pieces():
    """Ten blanks of 10, at most five to a stick, 20 held of each, saw 2: 2*(50 + 20) + 2 = 142."""
    blanks = [Piece("blank", 10.0, 10, 5, 20.0)]
    assert plan(blanks, [own(142.0)], kerf=2.0).missing == [0]
    assert plan(blanks, [own(141.0)], kerf=2.0).missing == [1]


def test_a_bar_through_the_spindle_is_held_once():
    blanks = [Piece("blank", 10.0, 10, 5, 20.0)]
    found = plan(blanks, [own(120.0, fed=True, held=20.0)], kerf=2.0)
    assert found.missing == [0]
    assert found.cuts[0].offcut == pytest.approx(20.0)


def test_a_fractional_inch_comes_out_even():
    """A foot of bar holds 32 pieces of 3/8 in, sawn without loss."""
    assert plan([sawn(9.525, 32)], [own(304.8)]).missing == [0]


def test_a_thin_bar_gives_only_thin_pieces():
    pieces = [sawn(100.0, 1), sawn(100.0, 1)]
    found = plan(pieces, [own(220.0, accepts=(0,)), own(150.0, accepts=(0, 1))])
    assert found.missing == [0, 0]
    assert found.begun == 370.0 and found.begun_proved


def test_nothing_asked_for():
    found = plan([sawn(10.0, 0)], [own(100.0)])
    assert found.cuts == [] and found.bought_proved and found.begun_proved


@pytest.mark.parametrize("pieces", [[], [sawn(40.0, 3)]])
def test_where_no_bar_gives_anything_that_is_proved_without_a_search(pieces):
    found = plan(pieces, [own(30.0)])
    assert found.cuts == [] and found.missing == [one.count for one in pieces]
    assert found.bought_proved is found.begun_proved is found.scrap_proved is True
    assert found.steps == 0


@pytest.mark.parametrize(
    ("pieces", "bars"),
    [
        ([sawn(0.0, 1)], [own(100.0)]),
        ([sawn(-5.0, 1)], [own(100.0)]),
        ([sawn(5.0, -1)], [own(100.0)]),
        ([sawn(5.0, 1)], [own(0.0)]),
        ([sawn(5.0, 1)], [shop(100.0, 0.0)]),
    ],
)
def test_what_is_no_length_is_refused(pieces, bars):
    with pytest.raises(ValueError, match="needs"):
        plan(pieces, bars)


def test_sticks_are_shared_evenly():
    assert sticks(11, 6) == [6, 5]
    assert sticks(12, 6) == [6, 6]
    assert sticks(13, 6) == [5, 4, 4]
    assert sticks(1, 6) == [1]


# --- invariants ---

LENGTHS = st.integers(80, 6000).map(lambda tenths: tenths / 10)


@st.composite
def questions(draw):
    pieces = draw(
        st.lists(
            st.builds(
                Piece,
                st.just("piece"),
                LENGTHS,
                st.integers(0, 30),
                st.sampled_from((1, 3, 6)),
                st.sampled_from((0.0, 25.0)),
            ),
            min_size=1,
            max_size=6,
        )
    )
    accepted = st.none() | st.sets(st.integers(0, len(pieces) - 1)).map(lambda s: tuple(sorted(s)))
    bars = draw(
        st.lists(
            st.builds(
                bar,
                LENGTHS,
                st.none() | st.integers(0, 5),
                st.none() | st.floats(0.5, 90.0),
                st.booleans(),
                st.sampled_from((0.0, 30.0)),
                accepted,
            ),
            max_size=6,
        )
    )
    return pieces, bars, draw(st.sampled_from((0.0, 1.5, 3.0)))


@given(questions())
def test_every_piece_once_and_no_bar_over_full(question):
    pieces, bars, kerf = question
    found = plan(pieces, bars, kerf, step_limit=3000)
    check(found, pieces, bars, kerf, 50.0)
    assert found == plan(pieces, bars, kerf, step_limit=3000)


@given(questions(), st.integers(0, 5))
def test_one_more_bar_of_the_same_never_costs_more_by_the_bound(question, more):
    """The proved bounds of a rack with more in it are never above what was found with less."""
    pieces, bars, kerf = question
    found = plan(pieces, bars, kerf, step_limit=3000)
    richer = plan(pieces, bars + [own(300.0 + more)], kerf, step_limit=3000)
    if sum(richer.missing) == sum(found.missing):
        assert richer.bought_bound <= found.bought + 1e-9
    assert sum(richer.missing) <= sum(found.missing) or not richer.bought_proved


# --- an independent solver ---


def drawn_question(draw, most_sorts, most_count, most_bars):
    pieces = []
    for _ in range(draw.randint(1, most_sorts)):
        if draw.random() < 0.5:
            pieces.append(sawn(round(draw.uniform(30.0, 200.0), 1), draw.randint(1, most_count)))
        else:
            pieces.append(
                Piece(
                    "blank",
                    round(draw.uniform(10.0, 30.0), 1),
                    draw.randint(1, most_count),
                    draw.randint(1, 5),
                    draw.choice((0.0, 25.0)),
                )
            )
    bars = []
    for _ in range(draw.randint(0, most_bars)):
        accepts = None
        if draw.random() < 0.3:
            accepts = tuple(at for at in range(len(pieces)) if draw.random() < 0.7)
        bars.append(
            own(
                float(draw.randint(80, 500)),
                draw.randint(1, 2),
                fed=draw.random() < 0.15,
                held=30.0,
                accepts=accepts,
            )
        )
    for _ in range(draw.randint(0 if bars else 1, 2)):
        length = draw.choice((250.0, 300.0, 500.0))
        price = round(length * draw.uniform(0.03, 0.05), 2)
        bars.append(shop(length, price, draw.choice((None, None, 2))))
    return pieces, bars, draw.choice((0.0, 2.0, 3.0))


def compare(seed, most_sorts, most_count, most_bars):
    """Bounds never above the optimum, plans never below it, and equal where they claim to be."""
    pieces, bars, kerf = drawn_question(random.Random(seed), most_sorts, most_count, most_bars)
    found = plan(pieces, bars, kerf)
    check(found, pieces, bars, kerf, 50.0)
    missing, money, worth = cutting_milp.best(pieces, bars, kerf)
    assert sum(found.missing) >= missing
    if sum(found.missing) == missing:
        assert found.bought_bound <= money + 2e-3
        assert found.bought >= money - 2e-3
    if found.bought_proved:
        assert (sum(found.missing), found.bought) == (missing, pytest.approx(money, abs=2e-3))
    same = sum(found.missing) == missing and abs(found.bought - money) < 2e-3
    if same:
        assert found.begun_bound <= worth + 2e-3
        assert found.begun >= worth - 2e-3
        if found.begun_proved:
            assert found.begun == pytest.approx(worth, abs=2e-3)
    return same, same and abs(found.begun - worth) < 2e-3


@pytest.mark.parametrize("batch", range(14))
def test_small_questions_against_an_integer_programme(batch):
    """Of these, all are bought for least, and at most one in fifteen begins more than the least."""
    found = [compare(1000 + 15 * batch + at, 3, 5, 3) for at in range(15)]
    assert all(bought for bought, _ in found)
    assert sum(begun for _, begun in found) >= 14


@pytest.mark.slow
@pytest.mark.parametrize("batch", range(10))
def test_larger_questions_against_an_integer_programme(batch):
    found = [compare(5000 + 20 * batch + at, 4, 8, 4) for at in range(20)]
    assert sum(bought for bought, _ in found) >= 19
    assert sum(begun for _, begun in found) >= 17
