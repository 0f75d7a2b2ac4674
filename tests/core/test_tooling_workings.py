"""What is put into the formulas of tooling, and how far a former may turn out otherwise, by hand.

On the former 1/R = 1/r_b + eta (1/r_m - 1/r_b), all on the neutral line: the free ring that the
pressure asks for is the same whatever the heat relieves, so each relief asks for its own former.
"""

import math

import pytest

from core.test_tools_hold import KINDS, settled
from ringwright.core import calculations
from ringwright.core.making import tooling

DOUBLE = {"bore": 79.375, "ring_width": 5.0}
SPACER = {"bore": 150.0, "ring_type": "plain", "end_cut": "angled-45"}


def put_in(request):
    """Symbol -> value of all that is put into any formula."""
    figures = calculations.run("tooling", request)["figures"]
    return {
        row["symbol"]: row["value"] for one in figures.values() for row in one.get("working", ())
    }, figures


@pytest.mark.parametrize(
    "request_", [kind for kind in KINDS if settled(kind)[1].former_diameter], ids=str
)
def test_each_end_of_the_relief_asks_for_its_own_former(request_):
    d, t = settled(request_)
    wall, set_wall = d.section.thickness, d.blank.set_thickness
    closed = 0.5 * (d.duty.bore - wall)
    free = 1.0 / (1.0 / closed - d.spring.curvature_change)
    # As it is set the ring has more metal outside than inside, or has it inside alone.
    outer = set_wall - wall - d.allowances.inside
    free += 0.5 * (outer - d.allowances.inside)
    row = calculations.run("tooling", request_)["figures"]["former_diameter"]
    relief = d.soak.relief
    for size, eta in ((row["low"], relief.high), (row["high"], relief.low)):
        hot = 0.5 * (size * d.former_growth + set_wall)
        bored = d.blank.bored_radius
        assert 1.0 / (1.0 / bored + eta * (1.0 / hot - 1.0 / bored)) == pytest.approx(
            free, rel=1e-9
        )
    assert row["value"] == pytest.approx(t.former_diameter)
    assert row["low"] < row["value"] < row["high"]


def test_radii_of_the_blank_and_the_ring_are_half_their_diameters():
    given, figures = put_in(DOUBLE)
    assert given["ri"] == pytest.approx(0.5 * figures["bored_inside_diameter"]["value"])
    assert given["ro"] == pytest.approx(0.5 * figures["rough_outside_diameter"]["value"])
    d, t = settled(DOUBLE)
    assert given["r"] == pytest.approx(0.5 * (79.375 - d.section.thickness))
    assert (given["e"], given["margin"]) == (0.5, 2.0)
    assert given["half angle"] == pytest.approx(t.slit.outside_half_angle)


def test_the_opening_of_a_spacer_is_what_it_holds_beyond_the_saw_cut():
    """Its faces open by that over the neutral radius as bored."""
    given, figures = put_in(SPACER)
    d, _ = settled(SPACER)
    opening = figures["spacer_width"]["value"] - d.allowances.kerf / math.sin(math.radians(45.0))
    assert given["opening"] == pytest.approx(opening)
    assert "opening" not in put_in(DOUBLE)[0]
    # Square across leaning faces by the sine.
    across = figures["spacer_width"]["value"] * math.sqrt(0.5)
    assert figures["spacer_across"]["value"] == pytest.approx(across)
    # Spread by a force at its ends, M = F r (1 - cos), they part by 3 pi F r^3/EI and turn by
    # 2 pi F r^2/EI: by two thirds of the opening over the radius.
    taper = math.degrees(2.0 * opening / (3.0 * d.blank.bored_radius))
    assert figures["spacer_taper"]["value"] == pytest.approx(taper)


def test_a_figure_is_told_by_the_way_it_was_worked():
    on_stick = {**DOUBLE, "slit_on_stick": True}
    methods = {}
    for name, request in (("double", DOUBLE), ("stick", on_stick), ("plain", SPACER)):
        figures = calculations.run("tooling", request)["figures"]
        methods[name] = {key: one["method"] for key, one in figures.items()}
    assert methods["double"]["former_length"] == methods["stick"]["former_length"] == "inside-out"
    assert methods["double"]["part_length"] == methods["plain"]["part_length"] == "blank-width"
    assert methods["stick"]["part_length"] == "sawn-off"
    bound = calculations.run("tooling", {**SPACER, "setting": "bound"})["figures"]
    assert bound["former_length"]["method"] == "tool-size"


def test_blanks_slit_on_the_stick_stand_a_band_and_a_saw_apart():
    d, _ = settled({**DOUBLE, "slit_on_stick": True, "slit_width": 0.9, "facing_allowance": 0.4})
    figures = calculations.run(
        "tooling", {**DOUBLE, "slit_on_stick": True, "slit_width": 0.9, "facing_allowance": 0.4}
    )["figures"]
    # Bands of (5 + 0.9)/2 + 0.4 = 3.35; the blank two of them and the slit, 7.6.
    assert figures["band_width"]["value"] == pytest.approx(3.35)
    assert figures["cut_off_step"]["value"] == pytest.approx(4.25)
    assert figures["cut_off_width"]["value"] == pytest.approx(0.9)
    assert figures["part_length"]["value"] == pytest.approx(7.6)
    assert figures["step"]["value"] == pytest.approx(0.9)
    assert d.blank.length == pytest.approx(7.6)
    assert "slit_mandrel_diameter" not in figures


@pytest.mark.parametrize(
    ("request_", "more"),
    [
        (DOUBLE, {"hot-work", "slitting-saw"}),
        (SPACER, {"hot-work"}),
        ({"bore": 80.0, "ring_type": "plain", "ring_material": "filled-ptfe-carbon",
          "wall_pressure": 0.005}, set()),
    ],
)  # fmt: skip
def test_cautions_are_of_the_work_that_is_done(request_, more):
    """Heat where a ring is set, the slitting saw where turns are parted; the rest always."""
    cautions = {row["key"] for row in calculations.run("tooling", request_)["cautions"]}
    always = {"figures", "sharp-edges", "stored-spring", "rotating-work"}
    assert cautions == always | more


@pytest.mark.parametrize(
    ("inside", "plate", "clamped", "ring_bore"),
    [
        # 3 mm of wall: shoulder and plate 0.3 of it in from 80 mm, or half of it and a clamp ring
        # with 0.2 mm of play round them.
        (0.0, 78.2, None, None),
        (0.005, 77.0, 80.0, 77.2),
    ],
)
def test_what_is_left_of_the_side_for_a_clamp(inside, plate, clamped, ring_bore):
    d, _ = settled({"bore": 80.0, "ring_type": "plain", "setting": "sprung", "end_cut": "square"})
    d = d._replace(
        section=d.section._replace(thickness=3.0, width=4.0),
        blank=d.blank._replace(finish_outside=80.0, rough_outside=80.9, length=4.5),
        allowances=d.allowances._replace(inside=inside, finishing=0.5, gap_kerf=0.8, facing=0.25),
    )
    t = tooling.measure(d, {}, [])
    assert t.end_plate_diameter == pytest.approx(plate)
    assert t.outer_clamp_bore == clamped
    assert t.clamp_ring_bore == (None if ring_bore is None else pytest.approx(ring_bore))
    assert t.inside_clamped == pytest.approx(74.0)
    assert (t.inside_at_clamp < 73.99) is (inside > 0.0)
    assert t.clamp_mandrel_diameter == pytest.approx(t.inside_at_clamp - 0.1)
    assert t.closing_ring_bore == pytest.approx(80.5) and t.closing_ring_width == 4.5
    # The pot stands open by a tenth of a millimetre more along the ring.
    assert t.pot_bore == pytest.approx(80.5 + 0.1 / math.pi)
    assert t.pot_gap == pytest.approx(0.8 - math.pi * 0.4 + 0.1)
    assert (t.pot_depth, t.part_length) == (pytest.approx(3.0), pytest.approx(5.0))
    # Three tenths of a fifth of the width shorter than the ring; of a wide one 0.3 mm.
    assert t.spigot_length == pytest.approx(3.76)
    wide = tooling.measure(d._replace(section=d.section._replace(width=7.0)), {}, [])
    assert wide.spigot_length == pytest.approx(6.7)
    assert t.scarf_length is None and t.step is None and t.table_grip is None
    shelf = tooling.measure(d, {"shelf_pot": 81.0, "shelf_clamp_mandrel": 70.0}, [])
    assert (shelf.pot_bore, shelf.clamp_mandrel_diameter) == (81.0, 70.0)
    assert shelf.pot_gap == pytest.approx(0.8 + math.pi * 0.1)


def test_a_spigot_clears_what_a_band_leaves_oval_on_both_sides():
    """Sprung, largest less smallest radius is 0.575 of kappa0 r^2: 0.0852 mm of 1e-4 and 38.5 mm;
    with 0.2 mm to bore on each side the least inside is 74 - 2 (0.2 + 0.0852)."""
    d, _ = settled({"bore": 80.0, "ring_type": "plain", "setting": "sprung", "end_cut": "square"})
    d = d._replace(
        section=d.section._replace(thickness=3.0),
        blank=d.blank._replace(finish_outside=80.0),
        allowances=d.allowances._replace(inside=0.2),
        spring=d.spring._replace(curvature_change=1e-4),
    )
    t = tooling.measure(d, {}, [])
    assert t.inside_at_clamp == pytest.approx(73.4295, abs=5e-4)
    assert t.clamp_mandrel_diameter == pytest.approx(73.3295, abs=5e-4)
