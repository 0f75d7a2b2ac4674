"""Numbers as words: by exact decimal arithmetic (Python's decimal), and figures worked by hand.

An inch is 25.4 mm, a pound 0.45359237 kg and its force 4.4482216152605 N by definition
(international yard and pound, 1959; standard gravity 9.80665 m/s2).
"""

import math
import random
from decimal import ROUND_HALF_UP, Decimal

import pytest

from ringwright.core import wording

PSI = 0.45359237 * 9.80665 / 0.0254**2 / 1e6


def test_measures_are_those_defined():
    assert wording.MM_PER_INCH == 25.4
    assert wording.KG_PER_LB == 0.45359237
    assert pytest.approx(0.45359237 * 9.80665, rel=1e-14) == wording.N_PER_LBF
    assert pytest.approx(PSI, rel=1e-14) == wording.MPA_PER_PSI


@pytest.mark.parametrize("places", range(10))
def test_a_decimal_is_rounded_as_by_hand(places):
    draw = random.Random(places)
    for _ in range(60):
        value = round(draw.uniform(-1, 1) * 10.0 ** draw.randint(-3, 6), draw.randint(0, 9))
        unit = Decimal(1).scaleb(-places)
        exact = Decimal(repr(value)).quantize(unit, rounding=ROUND_HALF_UP)
        said = wording.decimal(value, places)
        assert Decimal(said.replace(" ", "")) == exact, value
        assert len(said.partition(".")[2]) == places
        assert ("-" in said) == (exact < 0)


def test_ties_go_away_from_nought_though_a_float_just_misses_them():
    assert wording.decimal(2.675, 2) == "2.68"
    assert wording.decimal(-2.675, 2) == "-2.68"
    assert wording.decimal(0.5, 0) == "1"
    assert wording.decimal(0.4999, 0) == "0"
    # One part in five thousand under a tie is none.
    assert wording.decimal(2.6749, 2) == "2.67"
    assert wording.decimal(0.004999, 2) == "0.00"
    assert wording.decimal(-0.004, 2) == "0.00"


def test_thousands_stand_apart_from_ten_thousand_on():
    assert wording.decimal(9999.0, 0) == "9999"
    assert wording.decimal(9999.4, 1) == "9999.4"
    assert wording.decimal(10000.0, 0) == "10 000"
    assert wording.decimal(12345.678, 2) == "12 345.68"
    assert wording.decimal(1234567.0, 0) == "1 234 567"
    assert wording.decimal(999999.5, 0) == "1 000 000"
    assert [wording.grouped(n) for n in (9999, 10000, 123456, 1000)] == [
        "9999",
        "10 000",
        "123 456",
        "1000",
    ]


@pytest.mark.parametrize(
    ("value", "figures", "said"),
    [
        (0.0, 3, "0"),
        (22045.0, 3, "22 000"),
        (22050.0, 3, "22 100"),
        (-22050.0, 3, "-22 100"),
        (0.012349, 3, "0.0123"),
        (0.01235, 3, "0.0124"),
        (9.87, 3, "9.87"),
        (98.75, 3, "98.8"),
        (987.4, 3, "987"),
        (9874.0, 3, "9870"),
        (1234.0, 1, "1000"),
        (1500.0, 1, "2000"),
        (4.5e-10, 3, "0.000000000"),
        (5.5e-10, 3, "0.000000001"),
        (0.0000123456, 4, "0.00001235"),
        (3.4567e10, 2, "35 000 000 000"),
        # No step is larger than a thousand million.
        (3.4567e11, 2, "346 000 000 000"),
        (3.4567e11, 1, "346 000 000 000"),
        (1.0, 2, "1.0"),
        (10.0, 2, "10"),
        (100.0, 2, "100"),
    ],
)
def test_so_many_figures_and_never_a_power_of_ten(value, figures, said):
    assert wording.significant(value, figures) == said


def test_a_gap_is_told_finer_than_a_size():
    """A hundredth of a millimetre from one up, a micrometre below; inches take one digit more."""
    assert wording.length(1.0) == "1.00 mm (0.039 in)"
    assert wording.length(0.999) == "0.999 mm (0.0393 in)"
    assert wording.length(-0.25) == "-0.250 mm (-0.0098 in)"
    assert wording.length(-1.25) == "-1.25 mm (-0.049 in)"
    assert wording.length(0.0) == "0.00 mm (0.000 in)"
    assert wording.length(0.005) == "0.005 mm (0.0002 in)"
    assert wording.length(79.375) == "79.38 mm (3.125 in)"
    assert wording.fine_length(0.0456) == "0.046 mm (0.0018 in)"
    assert wording.fine_length(3.175) == "3.175 mm (0.1250 in)"


def test_a_limit_is_told_on_its_safe_side():
    assert wording.said_up(3.2011) == pytest.approx(3.21)
    assert wording.said_down(3.2089) == pytest.approx(3.20)
    assert wording.said_up(0.2011) == pytest.approx(0.202)
    assert wording.said_down(0.2089) == pytest.approx(0.208)
    assert wording.said_up(0.25) == 0.25
    assert wording.said_down(2.25) == 2.25


def test_each_measure_with_the_other_beside_it():
    # 151.7 / 0.00689476 = 22 002; 0.0552 / 0.00689476 = 8.006; 0.83 / 0.00689476 = 120.4.
    assert wording.stress(151.7) == "152 N/mm2 (22 000 psi)"
    assert wording.stress(0.61) == "1 N/mm2 (88.5 psi)"
    assert wording.wall_pressure(0.0552) == "0.055 N/mm2 (8.0 psi)"
    assert wording.steam_pressure(0.834) == "8.3 bar (121 psi)"
    assert wording.temperature(176.7) == "177 C (350 F)"
    assert wording.temperature(-40.0) == "-40 C (-40 F)"
    assert wording.temperature(20.4) == "20 C (69 F)"
    assert wording.temperature(20.2) == "20 C (68 F)"
    # 18.41 / 4.4482 = 4.139; 2.354 / 0.45359 = 5.190.
    assert wording.force(18.41) == "18.4 N (4.1 lbf)"
    assert wording.mass(2.354) == "2.35 kg (5.2 lb)"
    assert wording.angle(57.4) == "57 degrees"
    assert wording.ratio(1.02196) == "1.022"


@pytest.mark.parametrize(
    ("share", "said"),
    [
        (0.0, "0 %"),
        (1.0, "100 %"),
        (0.42, "42 %"),
        (0.054, "5.4 %"),
        (0.05, "5 %"),
        (0.0507, "5.1 %"),
        (0.0457, "4.6 %"),
        (0.0994, "9.9 %"),
        (0.1, "10 %"),
        (0.1004, "10 %"),
        (0.104, "10 %"),
        (0.996, "99.6 %"),
        (0.994, "99 %"),
        (0.995, "99.5 %"),
        (0.99996, "99.996 %"),
        (0.0004, "0.04 %"),
        (0.0005, "0.05 %"),
        (0.00049, "0.05 %"),
        (0.000004, "0.0004 %"),
        (1.004, "100.4 %"),
        (1.006, "101 %"),
        (1.25, "125 %"),
        (-0.054, "-5.4 %"),
        (-0.42, "-42 %"),
        (1e-12, "0 %"),
        (3e-11, "0.000000003 %"),
    ],
)
def test_what_is_a_little_off_nothing_or_all_does_not_read_so(share, said):
    assert wording.percent(share) == said


def test_percent_never_says_nothing_or_all_of_what_is_not():
    for exponent in range(1, 9):
        for lead in (1.0, 3.7, 4.9, 5.1, 9.9):
            share = lead * 10.0**-exponent
            assert float(wording.percent(share)[:-2]) > 0.0
            assert float(wording.percent(1.0 - 0.1 * share)[:-2]) < 100.0
            said = float(wording.percent(share)[:-2])
            assert math.isclose(said, 100.0 * share, rel_tol=0.5)


def test_a_title_in_a_sentence_keeps_its_initials():
    assert wording.in_a_sentence("Grey iron") == "grey iron"
    assert wording.in_a_sentence("PTFE") == "PTFE"
    assert wording.in_a_sentence("A") == "a"
    assert wording.in_a_sentence("ABc") == "ABc"
    assert wording.in_a_sentence("AbCd") == "abCd"
    assert wording.in_a_sentence("PT fe") == "PT fe"
    assert wording.in_a_sentence("aB") == "aB"
    assert wording.in_a_sentence("") == ""
