"""Bars against the tables they come from: what a size measures, what a bar cleans up to."""

import pytest

from ringwright.core.making import bars

INCH = 25.4
# One producer's table of continuous-cast grey iron, read: nominal [in], stock over it on the
# diameter, variation of any bar [in].
IRON = (
    (0.750, 0.085, 0.017),
    (1.250, 0.085, 0.017),
    (1.251, 0.090, 0.024),
    (2.000, 0.090, 0.024),
    (3.000, 0.110, 0.030),
    (3.250, 0.110, 0.038),
    (3.251, 0.125, 0.038),
    (4.000, 0.125, 0.038),
    (4.500, 0.140, 0.048),
    (5.000, 0.140, 0.048),
    (6.000, 0.155, 0.055),
    (7.000, 0.170, 0.062),
    (8.000, 0.190, 0.085),
    (9.000, 0.216, 0.108),
    (10.000, 0.254, 0.129),
    (11.000, 0.400, 0.150),
    (16.000, 0.582, 0.206),
    (20.000, 0.762, 0.262),
)
# One caster's table of leaded tin bronze tube and bar, read: nominal outside [in], stock on it
# from, to, stock in the bore from, to [in].
BRONZE = (
    (1.9999, 0.029, 0.039, 0.019, 0.064),
    (3.999, 0.034, 0.044, 0.019, 0.064),
    (5.0, 0.055, 0.071, 0.047, 0.109),
    (9.0, 0.078, 0.110, 0.062, 0.158),
    (12.0, 0.094, 0.134, 0.078, 0.182),
    (16.0, 0.118, 0.166, 0.102, 0.214),
)


@pytest.mark.parametrize(("nominal", "stock", "_variation"), IRON)
def test_stock_over_iron(nominal, stock, _variation):
    assert bars.stock_over(nominal=nominal * INCH) / INCH == pytest.approx(stock, abs=5e-7)


@pytest.mark.parametrize(("nominal", "stock", "variation"), IRON)
def test_the_leanest_bar_sold_still_cleans_up(nominal, stock, variation):
    """The producer warrants the nominal size of every bar within the variation."""
    leanest = (nominal + stock - variation) * INCH
    found = bars.cleans_up_to(measured=leanest) / INCH
    # Where the next band of the table has a tighter variation, that one warrants a few thou more.
    assert nominal - 1e-9 <= found <= nominal + 0.009
    fattest = (nominal + stock + variation) * INCH
    assert bars.cleans_up_to(measured=fattest) / INCH >= nominal - 1e-9


@pytest.mark.parametrize(("nominal", "least", "most", "bore_least", "bore_most"), BRONZE)
def test_stock_over_bronze(nominal, least, most, bore_least, bore_most):
    size = nominal * INCH
    stock = bars.stock_over(nominal=size, metal="bronze") / INCH
    assert least < stock < most
    bore = 0.5 * size
    cast_bore = bars.as_cast_bore(nominal=bore, outside=size, metal="bronze")
    assert bore_least < (bore - cast_bore) / INCH < bore_most
    assert bars.cleans_up_to(measured=size + least * INCH, metal="bronze") == pytest.approx(size)
    assert bars.bores_out_to(
        measured_bore=bore - bore_most * INCH, outside=size, metal="bronze"
    ) == pytest.approx(bore)


def test_the_producer_s_tube():
    """3.000 in by 2.000 in is sent as 3.110 in by 1.750 in; least wall 0.562 in to 3 in outside."""
    found = bars.bar_for(outside=3.0 * INCH, inside=2.0 * INCH, form="cored", system="inch")
    assert found.label == "3 in x 2 in cored"
    assert (found.as_cast / INCH, found.as_cast_bore / INCH) == pytest.approx((3.110, 1.750))
    assert (found.as_cast - found.as_cast_bore) / 2 / INCH >= 0.562
    for outside, wall in ((3.0, 0.562), (6.0, 0.625), (12.0, 0.687), (16.0, 0.750)):
        assert bars.least_wall(outside=outside * INCH) / INCH == pytest.approx(wall)
