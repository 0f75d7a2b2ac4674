"""ISO 286 limits against the library `pressfit`, printed figures and the standard's formulas."""

import math

import pressfit
import pressfit.tables
import pytest

from ringwright.core.problems import OutOfRange
from ringwright.core.properties import fits

SHAFTS = ("d", "e", "f", "g", "h", "js", "k", "n", "p")
SIZES = (
    1,
    2.9,
    3,
    3.1,
    6,
    10,
    12,
    18,
    25,
    30,
    42,
    50,
    65,
    80,
    80.001,
    100,
    120,
    150,
    180,
    220,
    250,
)
SIZES += (300, 315, 360, 400, 450, 500)

# Read in published tables (micrometre), bands 3-6 6-10 10-18 18-30 30-50 50-80 80-120 120-180
# 180-250 250-315, a nominal inside each.
NOMINALS = (5, 8, 15, 25, 40, 65, 100, 150, 220, 300)
PRINTED_TOLERANCES = {
    6: (8, 9, 11, 13, 16, 19, 22, 25, 29, 32),
    7: (12, 15, 18, 21, 25, 30, 35, 40, 46, 52),
    8: (18, 22, 27, 33, 39, 46, 54, 63, 72, 81),
    9: (30, 36, 43, 52, 62, 74, 87, 100, 115, 130),
}
PRINTED_G_UPPER = (-4, -5, -6, -7, -9, -10, -12, -14, -15, -17)
PRINTED_F_UPPER = (-10, -13, -16, -20, -25, -30, -36, -43, -50, -56)


# The same over 500 mm, bands 500-630, 630-800, 800-1000, as three open tables print them from ISO
# 286-2:2010, table 17, from IS 919-2 and from ISO 4156-1 (d, e and f). All read.
OVER_500 = (600, 700, 900)
PRINTED_OVER_500 = {
    6: (44, 50, 56),
    7: (70, 80, 90),
    8: (110, 125, 140),
    9: (175, 200, 230),
    10: (280, 320, 360),
    11: (440, 500, 560),
}
PRINTED_BELOW = {"d": (260, 290, 320), "e": (145, 160, 170), "f": (76, 80, 86), "g": (22, 24, 26)}
PRINTED_ABOVE = {"k": (0, 0, 0), "n": (44, 50, 56), "p": (78, 88, 100)}


def micrometres(mm):
    return round(mm * 1000, 6)


@pytest.mark.parametrize("grade", sorted(PRINTED_TOLERANCES))
def test_standard_tolerances_match_the_printed_table(grade):
    found = [micrometres(fits.tolerance(nominal, grade)) for nominal in NOMINALS]
    assert found == list(PRINTED_TOLERANCES[grade])


@pytest.mark.parametrize(
    ("tolerance_class", "printed"), [("g6", PRINTED_G_UPPER), ("f7", PRINTED_F_UPPER)]
)
def test_shaft_deviations_match_the_printed_table(tolerance_class, printed):
    found = [
        micrometres(fits.limits(nominal, tolerance_class).upper_deviation) for nominal in NOMINALS
    ]
    assert found == list(printed)


@pytest.mark.parametrize("grade", sorted(PRINTED_OVER_500))
def test_tolerances_over_500_match_the_printed_tables(grade):
    found = [micrometres(fits.tolerance(nominal, grade)) for nominal in OVER_500]
    assert found == list(PRINTED_OVER_500[grade])


@pytest.mark.parametrize("letter", [*PRINTED_BELOW, *PRINTED_ABOVE])
def test_deviations_over_500_match_the_printed_tables(letter):
    limits = [fits.limits(nominal, letter + "7") for nominal in OVER_500]
    if letter in PRINTED_BELOW:
        found = [-micrometres(one.upper_deviation) for one in limits]
        assert found == list(PRINTED_BELOW[letter])
    else:
        found = [micrometres(one.lower_deviation) for one in limits]
        assert found == list(PRINTED_ABOVE[letter])


def test_the_textbook_fit():
    """25 H7/g6: hole 25.000 to 25.021, shaft 24.980 to 24.993, clearance 7 to 41 micrometre."""
    found = fits.fit(25, "H7/g6")
    assert (found.hole.lower, found.hole.upper) == pytest.approx((25.000, 25.021), abs=1e-9)
    assert (found.shaft.lower, found.shaft.upper) == pytest.approx((24.980, 24.993), abs=1e-9)
    assert micrometres(found.least_clearance) == 7
    assert micrometres(found.greatest_clearance) == 41


@pytest.mark.parametrize("shaft", SHAFTS)
@pytest.mark.parametrize("grade", sorted(fits.GRADES))
def test_every_fit_up_to_500_agrees_with_the_library(shaft, grade):
    for size in SIZES:
        name = f"H{grade}/{shaft}{grade}"
        ours = fits.fit(size, name)
        theirs = pressfit.fit(name, size)
        assert (micrometres(ours.least_clearance), micrometres(ours.greatest_clearance)) == (
            theirs.clearance_um
        ), (size, name)
        assert micrometres(ours.shaft.lower_deviation) == theirs.shaft_ei_um
        assert micrometres(ours.hole.upper_deviation) == theirs.hole_es_um


# IT grades in units of i (to 500 mm) or I (beyond): ISO 286-1.
UNITS = {6: 10, 7: 16, 8: 25, 9: 40, 10: 64, 11: 100}


@pytest.mark.parametrize("grade", sorted(UNITS))
def test_tolerances_follow_the_formula_of_the_standard(grade):
    """i = 0.45 D^(1/3) + 0.001 D up to 500 mm, I = 0.004 D + 2.1 beyond, D the geometric mean of
    the band; the standard rounds what they give, by less than 1 micrometre or 3 %."""
    low = 3
    for upper in fits.BANDS[1:]:
        mean = math.sqrt(low * upper)
        unit = 0.45 * mean ** (1 / 3) + 0.001 * mean if upper <= 500 else 0.004 * mean + 2.1
        printed = micrometres(fits.tolerance(upper, grade))
        assert printed == pytest.approx(UNITS[grade] * unit, rel=0.03, abs=1.0)
        low = upper


@pytest.mark.parametrize(
    ("letter", "formula"),
    [
        ("d", lambda size: 16 * size**0.44),
        ("e", lambda size: 11 * size**0.41),
        ("f", lambda size: 5.5 * size**0.41),
    ],
)
def test_clearance_deviations_follow_the_formula_of_the_standard(letter, formula):
    """ISO 286-1: d 16 D^0.44, e 11 D^0.41, f 5.5 D^0.41, D the geometric mean of the band."""
    low = 3
    for upper in fits.BANDS[1:]:
        printed = -micrometres(fits.limits(upper, letter + "7").upper_deviation)
        assert printed == pytest.approx(formula(math.sqrt(low * upper)), rel=0.06)
        low = upper


def test_bands_meet_without_a_gap():
    for upper in fits.BANDS[:-1]:
        below = fits.tolerance(upper, 7)
        above = fits.tolerance(upper + 1e-6, 7)
        assert above > below


# ISO 286-1, table 1: a band runs from over one of these to and including the next [mm]; tolerances
# of grade 7 on either side as printed [micrometre].
EDGES = (
    (3, 10, 12), (6, 12, 15), (10, 15, 18), (18, 18, 21), (30, 21, 25), (50, 25, 30),
    (80, 30, 35), (120, 35, 40), (180, 40, 46), (250, 46, 52), (315, 52, 57), (400, 57, 63),
    (500, 63, 70), (630, 70, 80), (800, 80, 90),
)  # fmt: skip


@pytest.mark.parametrize(("edge", "to", "over"), EDGES)
def test_a_band_ends_with_its_printed_size_and_not_beyond(edge, to, over):
    assert micrometres(fits.tolerance(edge, 7)) == to
    assert micrometres(fits.tolerance(edge + 0.01, 7)) == over


def test_the_least_and_the_greatest_size_of_the_tables_are_in_them():
    assert micrometres(fits.tolerance(1.0, 6)) == 6
    assert micrometres(fits.tolerance(1000.0, 6)) == 56
    assert fits.limits(1.0, "h6").lower == pytest.approx(0.994)
    for beyond in (0.999, 1000.001):
        with pytest.raises(OutOfRange):
            fits.tolerance(beyond, 6)


def test_k_is_above_nought_in_grades_6_and_7_alone():
    """ISO 286-1: k from grade 8 on begins at nought, over 18 to 30 mm at 2 in grade 7."""
    assert micrometres(fits.limits(25.0, "k7").lower_deviation) == 2
    assert micrometres(fits.limits(25.0, "k8").lower_deviation) == 0


@pytest.mark.parametrize("nominal", [0.0, 0.99, 1000.1, -5.0, float("nan")])
def test_a_size_outside_the_tables_is_refused(nominal):
    with pytest.raises(OutOfRange) as caught:
        fits.limits(nominal, "H7")
    assert caught.value.name == "nominal"


@pytest.mark.parametrize(
    "wrong", ["", "H", "7", "H5", "H12", "G7", "m6", "a9", "H7x", "h07", "jS7"]
)
def test_an_unknown_class_is_refused(wrong):
    with pytest.raises(OutOfRange) as caught:
        fits.limits(50, wrong)
    assert caught.value.name == "tolerance_class"


@pytest.mark.parametrize("wrong", ["H7", "g6/H7", "H7/g6/h6", "H7/H7", "h7/g6", ""])
def test_what_is_not_hole_and_shaft_is_refused(wrong):
    with pytest.raises(OutOfRange):
        fits.fit(50, wrong)


def test_limits_say_of_what_size_and_class_they_are():
    found = fits.limits(80.0, "H7")
    assert (found.nominal, found.tolerance_class) == (80.0, "H7")
