"""Bars at the ends of their tables, and the bar of least metal by trying every size that is made.

One producer's table of iron (read): 20 in with 0.762 over it, 0.262 more or less; 16 in the largest
that is listed, in whole inches from 12. A caster's of bronze (read): 16 in with 0.166 at the most.
"""

import math

import pytest

from ringwright.core import calculations
from ringwright.core.making import bar_choice, bars
from ringwright.core.problems import OutOfRange

INCH = 25.4


@pytest.mark.parametrize(
    ("metal", "largest", "cleans"),
    # At its fattest; cleaned of the least stock of its band it is still no more than the band's.
    [("iron", 20.0 + 0.762 + 0.262, 20.0), ("bronze", 16.0 + 0.166, 16.0)],
)
def test_the_fattest_bar_of_the_table_is_in_it_and_one_larger_is_not(metal, largest, cleans):
    found = bars.cleans_up_to(measured=(largest - 0.0001) * INCH, metal=metal)
    assert found == pytest.approx(cleans * INCH)
    with pytest.raises(OutOfRange) as caught:
        bars.cleans_up_to(measured=(largest + 0.0001) * INCH, metal=metal)
    assert caught.value.name == "measured"


def test_a_bar_that_is_all_skin_cleans_up_to_nothing():
    """0.085 less 0.017 in at the least: 1.7272 mm."""
    assert bars.cleans_up_to(measured=1.0) == 0.0
    assert bars.cleans_up_to(measured=1.7322) == pytest.approx(0.005)


def test_a_bronze_tube_beyond_the_table_is_bored_as_its_largest():
    assert bars.bores_out_to(measured_bore=300.0, outside=500.0, metal="bronze") == pytest.approx(
        300.0 + 0.214 * INCH
    )
    assert bars.bores_out_to(measured_bore=30.0, outside=50.0, metal="bronze") == pytest.approx(
        30.0 + 0.064 * INCH
    )


@pytest.mark.parametrize(
    ("nominal", "bore"),
    # A quarter of an inch of wall leaves just three quarters; an eighth less leaves none.
    [(1.25, 0.75), (1.125, 0.0), (1.5, 1.0)],
)
def test_the_narrowest_bore_that_is_cored_is_three_quarters_of_an_inch(nominal, bore):
    found = bars.widest_bore(nominal=nominal * INCH, system="inch", metal="bronze")
    assert found == pytest.approx(bore * INCH)


@pytest.mark.parametrize("outside", [16.001, 20.5])
def test_walls_and_skins_are_known_up_to_the_last_of_the_table(outside):
    with pytest.raises(OutOfRange):
        bars.least_wall(outside=outside * INCH)
    assert bars.least_wall(outside=30.0 * INCH, metal="bronze") == pytest.approx(6.35)
    with pytest.raises(OutOfRange):
        bars.stock_over(nominal=(outside + 4.0) * INCH)


def listed(**asked):
    return calculations.run("bars", asked)


def test_the_list_goes_from_the_size_that_is_asked_for_to_sixteen_inches():
    """What measures just the size is listed; of tubes those that leave the bore to be bored."""
    found = listed(sizes="inch", outside_diameter=3.5 * INCH, inside_diameter=2.5 * INCH)
    solid = [row["nominal_diameter"]["value"] / INCH for row in found["solid"]]
    quarters = [3.5 + 0.25 * at for at in range(11)]
    halves = [6.5 + 0.5 * at for at in range(12)]
    assert solid == pytest.approx([*quarters, *halves, 13.0, 14.0, 15.0, 16.0])
    first = found["cored"][0]
    assert first["label"] == "3 1/2 in x 2 1/2 in cored"
    # Over it 0.125 in (to 4 in), in the bore a quarter less.
    assert first["as_cast_diameter"]["value"] == pytest.approx(3.625 * INCH)
    assert first["as_cast_bore"]["value"] == pytest.approx(2.25 * INCH)
    none = listed(sizes="inch", inside_diameter=0.74 * INCH)
    assert none["cored"] == []


def test_the_lists_of_both_systems_hold_every_size_that_is_kept():
    everything = listed()
    assert len(everything["solid"]) == 43 + 37
    assert everything["solid"][0]["label"] == "3/4 in"
    assert "nominal_bore" not in everything["solid"][0]
    lengths = [(row["length"]["value"], row["sizes"]) for row in everything["lengths"]]
    inches = [(at * INCH, "inch") for at in (6, 12, 24, 72)]
    metric = [(150.0, "metric"), (300.0, "metric"), (500.0, "metric"), (1000.0, "metric")]
    assert lengths == [(pytest.approx(long), system) for long, system in inches + metric]
    widest = listed(sizes="metric", metal="bronze")["cored"]
    # 60 mm with a quarter of an inch of wall each side: 47.3, so 45.
    (tube,) = [row for row in widest if row["nominal_diameter"]["value"] == 60.0]
    assert tube["nominal_bore"]["value"] == 45.0
    assert tube["label"] == "60 mm x 45 mm cored"


def test_the_note_gives_the_producer_s_three_inch_bar():
    """3.110 in: 78.99 mm."""
    assert "78.99 mm (3.110 in)" in listed()["note"]


def least_of_all(outside, inside, metal, systems, cored):
    """(metal section over pi/4, nominal) of the least bar, every size and every bore tried."""
    found = []
    for system in systems:
        step = 0.25 * INCH if system == "inch" else 5.0
        for nominal, _ in bars.sizes(system):
            if nominal < outside - 1e-6:
                continue
            cast = nominal + bars.stock_over(nominal=nominal, metal=metal)
            if not cored:
                found.append((cast**2, nominal))
                continue
            widest = bars.widest_bore(nominal=nominal, system=system, metal=metal)
            for at in range(1, 80):
                bore = at * step
                if 0.75 * INCH - 1e-6 <= bore <= min(widest, inside) + 1e-6:
                    hollow = bars.as_cast_bore(nominal=bore, outside=nominal, metal=metal)
                    found.append((cast**2 - hollow**2, nominal))
    return min(found) if found else None


SYSTEMS = {None: ("inch", "metric"), "inch": ("inch",), "metric": ("metric",)}
BLANKS = [
    (76.2, 50.8), (81.0, 74.6), (101.6, 95.25), (40.0, 33.0), (152.4, 140.0), (150.0, 125.0),
    (210.0, 199.0), (299.0, 260.0), (31.75, 19.05), (60.0, 45.0), (400.0, 380.0), (406.4, 371.0),
    (33.0, 18.0),
]  # fmt: skip


@pytest.mark.parametrize(("outside", "inside"), BLANKS)
@pytest.mark.parametrize("metal", ["iron", "bronze"])
def test_the_bar_of_least_metal_is_found_among_all_that_are_made(outside, inside, metal):
    for system, systems in SYSTEMS.items():
        for form in ("solid", "cored"):
            due = least_of_all(outside, inside, metal, systems, form == "cored")
            asked = {"outside": outside, "inside": inside, "form": form, "system": system}
            if due is None:
                with pytest.raises(OutOfRange):
                    bars.bar_for(metal=metal, **asked)
                continue
            found = bars.bar_for(metal=metal, **asked)
            assert found.as_cast**2 - found.as_cast_bore**2 == pytest.approx(due[0])
            assert found.nominal == due[1] and found.form == form
            assert bars.section(found) == pytest.approx(math.pi / 4.0 * due[0])


def test_bars_in_the_system_asked_for_else_of_a_job_in_inches_else_any():
    assert bar_choice.system_of({"bar_sizes": "metric", "inch_sizes": True}) == "metric"
    assert bar_choice.system_of({"bar_sizes": "metric"}) == "metric"
    assert bar_choice.system_of({"inch_sizes": True}) == "inch"
    assert bar_choice.system_of({}) is None


def test_sizes_are_written_out_alike_when_first_asked_for():
    """Eighths to 2 in, quarters to 6, halves to 12, whole inches to 16; 5, 10 and 20 mm."""
    bars._kept.clear()
    inches = [0.75 + at / 8.0 for at in range(11)] + [2.25 + at / 4.0 for at in range(16)]
    inches += [6.5 + at / 2.0 for at in range(12)] + [13.0, 14.0, 15.0, 16.0]
    found = bars.sizes("inch")
    assert [size for size, _ in found] == pytest.approx([each * INCH for each in inches])
    assert [found[at][1] for at in (0, 1, 2, -1)] == ["3/4 in", "7/8 in", "1 in", "16 in"]
    metric = bars.sizes("metric")
    assert [size for size, _ in metric] == [
        *range(20, 101, 5), *range(110, 201, 10), *range(220, 401, 20)
    ]  # fmt: skip
    assert (metric[0][1], metric[-1][1]) == ("20 mm", "400 mm")


def test_a_solid_bar_has_no_bore():
    found = bars.bar_for(outside=84.0, inside=74.0)
    assert (found.form, found.bore, found.as_cast_bore) == ("solid", 0.0, 0.0)


def test_bronzes_follow_the_caster_s_table_and_all_else_the_iron_s():
    """One producer's tube of iron (read): a quarter of an inch in the bore, whatever its size."""
    assert bars.metal_of("bronze") == "bronze"
    assert bars.metal_of("iron") == bars.metal_of("plastic") == "iron"
    assert bars.bores_out_to(measured_bore=60.0, outside=90.0) == pytest.approx(66.35)
    assert bars.as_cast_bore(nominal=66.35, outside=90.0) == pytest.approx(60.0)
