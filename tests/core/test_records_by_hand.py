"""What answers are made of: numbers rounded as exact fractions are, and records as dicts."""

import math
import random
from collections import OrderedDict
from fractions import Fraction

import pytest

from ringwright.core import records
from ringwright.core.records import (
    Choice,
    Figure,
    Finding,
    Method,
    Quantity,
    Series,
    finding,
    plain,
    short,
)


def decimals_of(exponent):
    """Decimals that leave 13 digits where 2^exponent is, or the next ten: by whole numbers."""
    tens = -40
    while Fraction(10) ** tens < Fraction(2) ** exponent:
        tens += 1
    return min(22, 13 - tens)


def rounded(number, decimals):
    """The nearest so many decimals, as a float."""
    return float(Fraction(round(Fraction(number) * 10**decimals), 10**decimals))


def tied(number, decimals):
    """Whether it lies so near the middle of two that a float's product cannot tell which."""
    return abs(Fraction(number) * 10**decimals % 1 - Fraction(1, 2)) < Fraction(1, 500)


@pytest.mark.parametrize("exponent", range(-40, 44))
def test_a_number_is_rounded_where_its_binary_size_says(exponent):
    draw = random.Random(exponent)
    for _ in range(25):
        number = draw.choice((-1, 1)) * math.ldexp(draw.uniform(0.5, 1.0), exponent)
        decimals = decimals_of(exponent)
        if 1.0 <= number < 1000.0 or tied(number, decimals):
            continue
        expected = number if exponent > 40 else rounded(number, decimals)
        assert short(number) == expected


@pytest.mark.parametrize(("low", "decimals"), [(1.0, 12), (10.0, 11), (100.0, 10)])
def test_usual_sizes_are_given_to_thirteen_digits(low, decimals):
    draw = random.Random(decimals)
    numbers = [low * draw.uniform(1.0, 10.0) for _ in range(60)]
    # Just at each ten and just under it.
    numbers += [low + 3.7e-13 * low, 10.0 * low * (1.0 - 3.3e-14), low, math.nextafter(low, 0.0)]
    for number in numbers[:-1]:
        assert tied(number, decimals) or short(number) == rounded(number, decimals)
    assert short(numbers[-1]) == low


def test_sizes_just_past_where_they_are_rounded_otherwise():
    for number, decimals in (
        (1000.0, 9),
        (1000.00000000037, 9),
        (10.0 + 4.4e-12, 11),
        (100.0 + 4.4e-11, 10),
        (1.0 + 4.4e-13, 12),
        (1.0 - 4.4e-13, 13),
        (9.9999999999996, 12),
        (99.999999999996, 11),
        (999.99999999996, 10),
    ):
        assert short(number) == rounded(number, decimals), number
    # From 2^40 on a float has no digits to spare.
    assert short(2.0**40 + 2.0**-12) == 2.0**40 + 2.0**-12
    assert short(2.0**40 - 2.0**-13) == 2.0**40


def test_a_warning_needs_a_remedy():
    assert finding("gap", records.GOOD, "it is well") == Finding(
        check="gap",
        outcome="good",
        value=None,
        limit=None,
        why="it is well",
        remedy="",
        apply=(),
    )
    assert finding("gap", records.WATCH, "tight", "open it").remedy == "open it"
    assert finding("gap", records.GOOD, "it is well", "all the same").remedy == "all the same"
    for outcome in (records.WATCH, records.STOP):
        with pytest.raises(ValueError, match="gap"):
            finding("gap", outcome, "tight")


NOISE = 0.047999999999999994


def figure(**more):
    usual = {
        "value": NOISE,
        "unit": "mm",
        "symbol": "s1",
        "method": "gap",
        "working": (),
        "low": None,
        "high": None,
    }
    return Figure(**{**usual, **more})


def test_a_figure_says_what_it_has():
    assert plain(figure()) == {"value": 0.048, "unit": "mm", "symbol": "s1", "method": "gap"}
    assert plain(figure(low=NOISE))["low"] == 0.048
    assert "high" not in plain(figure(low=NOISE))
    assert plain(figure(high=0.0))["high"] == 0.0
    assert "low" not in plain(figure(high=0.0))
    whole = plain(figure(value=3))
    assert whole["value"] == 3
    assert type(whole["value"]) is int


def test_a_figure_shows_what_was_put_in():
    given = {"a": NOISE, "b": 4, "c": None, "d": [NOISE]}
    shows = (("a", "mm"), ("b", "1"), ("c", "N"), ("d", "mm"), ("e", "deg"))
    shown = [
        {"symbol": "a", "value": 0.048, "unit": "mm"},
        {"symbol": "b", "value": 4, "unit": "1"},
        {"symbol": "d", "value": [0.048], "unit": "mm"},
    ]
    assert plain(figure(working=(shows, given)))["working"] == shown
    assert "working" not in plain(figure(working=(shows, given)), working=False)
    assert "working" not in plain(figure(), working=True)
    # So it is however deep the figure lies.
    deep = OrderedDict((("parts", [{"gap": figure(working=(shows, given))}]),))
    assert plain(deep)["parts"][0]["gap"]["working"] == shown
    assert "working" not in plain(deep, working=False)["parts"][0]["gap"]


def test_every_record_as_a_dict():
    quantity = Quantity(NOISE, "mm")
    assert plain(quantity) == {"value": 0.048, "unit": "mm"}
    choice = Choice("bore", NOISE, "mm", "so")
    said = {"input": "bore", "value": 0.048, "unit": "mm", "why": "so"}
    assert plain(choice) == said
    bare = {"check": "gap", "outcome": "stop", "why": "tight", "remedy": "open"}
    assert plain(finding("gap", "stop", "tight", "open")) == bare
    full = finding("gap", "stop", "tight", "open", quantity, Quantity(2.5, "mm"), (choice,))
    assert plain(full) == {
        **bare,
        "value": {"value": 0.048, "unit": "mm"},
        "limit": {"value": 2.5, "unit": "mm"},
        "apply": [said],
    }
    half = plain(finding("gap", "stop", "tight", "open", limit=quantity))
    assert "value" not in half
    assert half["limit"]["value"] == 0.048
    assert plain(Series((NOISE, 2.0), "mm", "w")) == {
        "values": [0.048, 2.0],
        "unit": "mm",
        "symbol": "w",
    }
    assert plain(Method("k", "t", "f", "v", ("a", "b"))) == {
        "key": "k",
        "title": "t",
        "formula": "f",
        "validity": "v",
        "sources": ["a", "b"],
    }
    assert plain({"a": "text", "b": (NOISE, None, True)}) == {"a": "text", "b": [0.048, None, True]}
