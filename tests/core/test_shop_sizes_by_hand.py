"""Sizes that a shop measures by, each worked by hand; an inch is 25.4 mm."""

import pytest

from ringwright.core import shop_sizes

INCH = 25.4


def near(value):
    return pytest.approx(value, rel=1e-12)


def test_the_steps_are_those_of_rule_and_micrometer():
    """Halves, tenths, hundredths of a millimetre and so on; halving from a quarter of an inch to a
    sixty-fourth, then five thousandths, one, and a tenth of one."""
    assert shop_sizes.METRIC == (0.5, 0.1, 0.05, 0.01, 0.005, 0.001)
    rule = [INCH / 2**at for at in range(2, 7)]
    thou = [INCH * many / 10000 for many in (50, 10, 1)]
    assert list(shop_sizes.INCH) == [near(step) for step in rule + thou]
    assert list(shop_sizes.INCH_FEEDS) == [near(INCH * n / 10000) for n in (10, 5, 1)]


@pytest.mark.parametrize(
    ("value", "share", "found"),
    [
        # Half a millimetre off 100.6 is 0.6 %, a tenth of one is none.
        (100.6, 0.005, 100.5),
        (10.26, 0.005, 10.3),
        (10.24, 0.005, 10.2),
        (10.02, 0.005, 10.0),
        # 3.02 is 0.02 off 3.0, 0.66 %, and off 3.05 by 0.98 %: hundredths.
        (3.02, 0.005, 3.02),
        (3.014, 0.005, 3.0),
        # At the very share: 0.25 off 12.5 is 2 %.
        (12.25, 0.0625, 12.5),
        # 20.4956 halves are twenty.
        (10.2478, 0.0625, 10.0),
        (8.0, 0.0, 8.0),
        (7.25, 0.0, 7.25),
        # None is near enough: the last step, and no less than one of it.
        (0.00149, 0.005, 0.001),
        (0.0023, 0.005, 0.002),
        (0.0002, 0.005, 0.001),
    ],
)
def test_the_roundest_that_is_near_enough(value, share, found):
    assert shop_sizes.roundest(value, shop_sizes.METRIC, share) == near(found)


def test_near_is_half_a_per_cent_from_either_side():
    for value, found in ((10.55, 10.5), (10.5531, 10.6), (10.448, 10.5), (10.4471, 10.4)):
        # 10.5 * 1.005 = 10.5525 and 10.5 / 1.005 = 10.4478: past those it is a tenth.
        assert shop_sizes.roundest(value, (0.5, 0.1)) == near(found)
    # Just at the share is near enough: 3 is a quarter of 4 off it.
    assert shop_sizes.roundest(4.0, (3.0, 0.1), 0.25) == 3.0
    assert shop_sizes.roundest(1.0625, (0.125, 0.001), 0.0588) == near(1.063)
    # 1.0625 lies 0.0625 off 1.125: 5.882 %, just within 6.
    assert shop_sizes.roundest(1.0625, (0.125, 0.001), shop_sizes.ABOUT) == near(1.125)
    # 1.177 lies 0.052 off 1.125, 4.4 %; 1.0 off 1.065 by 6.1 %.
    assert shop_sizes.roundest(1.065, (1.0, 0.001), shop_sizes.ABOUT) == near(1.065)
    assert shop_sizes.roundest(1.0637, (1.0, 0.001), shop_sizes.ABOUT) == near(1.0)


def test_what_an_inch_job_takes_is_rounded_as_loosely_as_it_may_be():
    for name in (
        "end_kerf",
        "slit_width",
        "facing_allowance",
        "table_grip",
        "parting_width",
        "end_facing",
        "chucking_piece",
        "saw_width",
        "usable_offcut",
    ):
        # 2 mm are 0.0787 in: 5/64 is 0.0781, but 1/16 is 21 % off.
        assert shop_sizes.in_inches(name, 2.0) == near(5 / 64 * INCH)
        # 0.265 in lies 5.66 % off a quarter, 0.266 in 6.02 %: there 0.266 is 17/64.
        assert shop_sizes.in_inches(name, 0.265 * INCH) == near(0.25 * INCH)
        assert shop_sizes.in_inches(name, 0.2661 * INCH) != near(0.25 * INCH)
    # To turn off at the last: 2 %. 0.255 in is 1.96 % off a quarter, 0.25512 in 2.007 %.
    assert shop_sizes.in_inches("finishing_allowance", 0.255 * INCH) == near(0.25 * INCH)
    assert shop_sizes.in_inches("finishing_allowance", 0.25512 * INCH) != near(0.25 * INCH)
    assert shop_sizes.in_inches("bore", 79.3) == 79.3
    assert shop_sizes.in_inches("table_grip", None) is None
    assert shop_sizes.in_inches("end_kerf", 0.0) == 0.0


def test_a_thickness_goes_by_tenths_from_five_on_and_by_hundredths_below():
    """5.02 is a tenth's 5.0; 4.98 is 0.4 % off 5.0, but below five no tenth is asked for."""
    assert shop_sizes.thickness(5.02, False) == near(5.0)
    assert shop_sizes.thickness(5.0, False) == near(5.0)
    # 6.27 is 0.48 % off 6.3, though 6.25 is nearer; 5.0251 is 0.4995 % off 5.0, though 5.05 is.
    assert shop_sizes.thickness(6.27, False) == near(6.3)
    assert shop_sizes.thickness(5.0251, False) == near(5.0)
    assert shop_sizes.thickness(5.48, False) == near(5.5)
    assert shop_sizes.thickness(5.53, False) == near(5.55)
    # A half is no step of a thickness: 30.4 stays.
    assert shop_sizes.thickness(30.4, False) == near(30.4)
    # 4.98 is near 5.0 by twentieths, 4.93 near 4.95.
    assert shop_sizes.thickness(4.98, False) == near(5.0)
    assert shop_sizes.thickness(4.93, False) == near(4.95)
    # 4.912 lies 0.24 % off 4.9 and 0.77 % off 4.95.
    assert shop_sizes.thickness(4.912, False) == near(4.9)
    # 2.31 is 0.43 % off 2.3; by twentieths; 2.33 is 0.86 % off 2.35: hundredths.
    assert shop_sizes.thickness(2.31, False) == near(2.3)
    assert shop_sizes.thickness(2.33, False) == near(2.33)
    assert shop_sizes.thickness(2.4, True) == near(0.0945 * INCH)
    assert shop_sizes.thickness(0.126 * INCH, True) == near(0.126 * INCH)
    assert shop_sizes.thickness(0.1255 * INCH, True) == near(0.125 * INCH)


def test_a_width_goes_by_halves():
    assert shop_sizes.width(5.02, False) == near(5.0)
    assert shop_sizes.width(30.4, False) == near(30.5)
    assert shop_sizes.width(0.1882 * INCH, True) == near(0.1875 * INCH)


@pytest.mark.parametrize(
    ("value", "inch", "found"),
    [
        # 4.91 to 5.0 is 1.83 %; 4.9 to 5.0 is 2.04 %, and 4.9 is a tenth itself.
        (4.91, False, 5.0),
        (4.9, False, 4.9),
        (4.5, False, 4.5),
        (4.4001, False, 4.45),
        # 4.42: 4.5 is 1.81 % above it.
        (4.42, False, 4.5),
        (0.0004, False, 0.001),
        (0.1852 * INCH, True, 0.1875 * INCH),
        (0.246 * INCH, True, 0.25 * INCH),
        (0.25 * INCH, True, 0.25 * INCH),
        # 0.2505: by sixty-fourths 0.2656, 6 % more; by five thousandths 0.255, 1.8 % more.
        (0.2505 * INCH, True, 0.255 * INCH),
    ],
)
def test_a_width_over_what_is_needed_is_at_most_two_per_cent_over(value, inch, found):
    assert shop_sizes.over(value, inch) == near(found)


def test_two_per_cent_over_is_allowed_and_no_more():
    # 25.5 is 1.96 % over 25.01, 25.0 2 % over 24.51.
    assert shop_sizes.over(25.01, False) == near(25.5)
    assert shop_sizes.over(24.51, False) == near(25.0)
    # 9.8 to 10 is 2.04 %, 9.81 to 10 is 1.94 %.
    assert shop_sizes.over(9.805, False) == near(10.0)
    assert shop_sizes.over(9.8, False) == near(9.8)
    assert shop_sizes.over(9.801, False) == near(9.9)


def test_up_to_the_next_of_one_step():
    assert shop_sizes.up(7.01, 0.5, 0.125, False) == near(7.5)
    assert shop_sizes.up(7.5, 0.5, 0.125, False) == near(7.5)
    assert shop_sizes.up(7.51, 0.5, 0.125, True) == near(0.375 * INCH)
    # 0.375 in are 9.525 mm.
    assert shop_sizes.up(9.525, 0.5, 0.125, True) == near(9.525)
    assert shop_sizes.up(9.53, 0.5, 0.125, True) == near(0.5 * INCH)
    # The noise of a float is no step more.
    assert shop_sizes.up(3 * 0.1, 0.1, 0.125, False) == near(0.3)
