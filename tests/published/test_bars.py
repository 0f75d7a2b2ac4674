"""Bars against the tables they come from: what a size measures, what a bar cleans up to."""

import bisect

import pytest

from ringwright.core import calculations
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
    assert stock == pytest.approx((least + most) / 2.0)
    bore = 0.5 * size
    cast_bore = bars.as_cast_bore(nominal=bore, outside=size, metal="bronze")
    assert (bore - cast_bore) / INCH == pytest.approx((bore_least + bore_most) / 2.0)
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


def least_over(nominal, metal):
    """The smallest that a bar of that nominal size measures [in], by its band of the table."""
    table = IRON if metal == "iron" else BRONZE
    row = table[bisect.bisect_left([row[0] for row in table], nominal - 1e-9)]
    return nominal + (row[1] - row[2] if metal == "iron" else row[1])


@pytest.mark.parametrize("metal", ["iron", "bronze"])
def test_a_bar_in_the_rack_cleans_up_to_the_largest_nominal_it_may_be_sold_by(metal):
    """Every nominal size is tried, in thousandths of an inch, against what the bar measures."""
    last = (IRON if metal == "iron" else BRONZE)[-1][0]
    nominals = [at / 1000.0 for at in range(1, round(last * 1000) + 1)]
    leanest = [least_over(nominal, metal) for nominal in nominals]
    largest = {}
    best = 0.0
    for size, nominal in sorted(zip(leanest, nominals, strict=True)):
        best = max(best, nominal)
        largest[size] = best
    steps = sorted(largest)
    # Round every place where a band ends, and between them.
    measured = [0.85 + 0.0637 * at for at in range(int((last - 0.9) / 0.0637))]
    measured += [row[0] + row[1] + 0.004 * at for row in (IRON, BRONZE)[metal == "bronze"][:-1]
                 for at in range(-14, 15)]  # fmt: skip
    for size in measured:
        expected = largest[steps[bisect.bisect_right(steps, size + 1e-9) - 1]]
        found = bars.cleans_up_to(measured=size * INCH, metal=metal) / INCH
        assert expected - 1e-9 <= found <= expected + 0.00101, size


def test_sizes_and_lengths_commonly_kept():
    """From memory: eighths to 2 in, quarters to 6, halves to 12, whole inches to 16; steps of 5 mm
    to 100, of 10 to 200, of 20 to 400. Cut to half a foot, a foot, two, six; 150 mm to a metre."""
    eighths = [6 + at for at in range(11)]
    eighths += [18 + 2 * at for at in range(16)] + [52 + 4 * at for at in range(12)]
    eighths += [104, 112, 120, 128]
    found = [size for size, _ in bars.sizes("inch")]
    assert found == pytest.approx([at * INCH / 8 for at in eighths])
    metric = [*range(20, 101, 5), *range(110, 201, 10), *range(220, 401, 20)]
    assert [size for size, _ in bars.sizes("metric")] == metric
    assert [label for _, label in bars.sizes("metric")] == ["%d mm" % size for size in metric]
    assert bars.LENGTHS["inch"] == pytest.approx([6 * INCH, 12 * INCH, 24 * INCH, 72 * INCH])
    assert bars.LENGTHS["metric"] == (150.0, 300.0, 500.0, 1000.0)


@pytest.mark.parametrize(
    ("nominal", "system", "metal", "bore"),
    [
        # Iron as cast 5.140 in with 0.625 in of wall leaves 3.890 as cast, 4.140 sold: 4 in.
        (5.0 * INCH, "inch", "iron", 4.0 * INCH),
        # 50 mm: 52.286 as cast less 2 * 14.275 of wall leaves 23.7; with 6.35 of skin 30.1: 30 mm.
        (50.0, "metric", "iron", 30.0),
        # Bronze: a quarter of an inch of wall each side of 60 mm leaves 47.3: 45 mm.
        (60.0, "metric", "bronze", 45.0),
        (3.0 * INCH, "inch", "bronze", 2.5 * INCH),
        # No bar is cored with less than three quarters of an inch.
        (30.0, "metric", "bronze", 0.0),
        (1.5 * INCH, "inch", "iron", 0.0),
    ],
)
def test_the_widest_bore_that_a_bar_is_cored_with(nominal, system, metal, bore):
    found = bars.widest_bore(nominal=nominal, system=system, metal=metal)
    assert found == pytest.approx(bore, abs=1e-6)


def test_the_list_has_the_producer_s_tube():
    """Up to 3 in outside the wall is at least 0.562 in as cast, with 0.25 in of stock in the bore:
    2 in is the widest bore in quarters of an inch, for 2 1/4 in would leave 0.555 in."""
    cored = calculations.run("bars", {"sizes": "inch", "metal": "iron"})["cored"]
    tube = [one for one in cored if one["nominal_diameter"]["value"] == pytest.approx(3.0 * INCH)]
    assert [one["label"] for one in tube] == ["3 in x 2 in cored"]
    assert tube[0]["nominal_bore"]["value"] == pytest.approx(2.0 * INCH)
