"""Sticks, drills and castings of a route card by hand: how many blanks to a stick, which drill goes
through first, what is left for the boring tool, and sizes that the standard has limits for.

Common practice, no source, where a number stands here.
"""

import pytest

from core.test_tools_hold import settled
from ringwright.core.catalogue.inputs import Chooser
from ringwright.core.catalogue.inputs_stock import SHOP
from ringwright.core.making import part_sizes, route_sawing, route_tube
from ringwright.core.making.route_rows import Bench
from ringwright.core.properties import fits
from ringwright.core.walk.limits import card_limits

SIXTEENTH, SIXTY_FOURTH = 25.4 / 16.0, 25.4 / 64.0


@pytest.mark.parametrize(
    ("inside", "drill"),
    [
        # 2 mm are left to bore, and 25 mm is the largest of a small lathe.
        (60.0, 25.0),
        (27.0, 25.0),
        (26.99, 24.0),
        (20.6, 18.0),
        (4.0, 2.0),
        # A very small bore: three quarters.
        (3.99, 2.9925),
        (2.0, 1.5),
    ],
)
def test_the_drill_for_a_bore_in_millimetres(inside, drill):
    assert route_tube.drill_for(inside) == pytest.approx(drill)


@pytest.mark.parametrize(
    ("inside", "drill"),
    [
        # An inch at the most; else a sixteenth, 2 mm under the bore.
        (60.0, 16 * SIXTEENTH),
        (27.41, 16 * SIXTEENTH),
        (27.39, 15 * SIXTEENTH),
        (20.0, 11 * SIXTEENTH),
        (2.0 + 4 * SIXTEENTH, 4 * SIXTEENTH),
        # Under a quarter of an inch 64ths.
        (1.99 + 4 * SIXTEENTH, 15 * SIXTY_FOURTH),
        (2.0 + 4 * SIXTY_FOURTH, 4 * SIXTY_FOURTH),
        # A very small bore: three quarters, to the 64th below, and one 64th at the least.
        (1.99 + 4 * SIXTY_FOURTH, 6 * SIXTY_FOURTH),
        (2.0, 3 * SIXTY_FOURTH),
        # 0.75 of 2.1 mm is 3.97 of them.
        (2.1, 3 * SIXTY_FOURTH),
        (0.5, SIXTY_FOURTH),
    ],
)
def test_the_drill_for_a_bore_in_inches(inside, drill):
    assert route_tube.drill_for(inside, True) == pytest.approx(drill)


def sticks(rings, parting=3.0, **request):
    design, tools = settled({"bore": 80.0, "ring_width": 5.0, "rings": rings, **request})
    design = design._replace(blank=design.blank._replace(rough_outside=81.0))
    tools = tools._replace(part_length=9.0)
    take = Chooser({"parting_width": parting}, SHOP)
    return (
        route_tube.stick_count(design, tools, take),
        route_tube.stick_length(design, tools, take),
    )


@pytest.mark.parametrize(
    ("rings", "count", "length"),
    # One and a half times 81 hold ten blanks of 12 mm.
    [(1, 1, 12.0), (10, 1, 120.0), (11, 2, 120.0), (20, 2, 120.0), (21, 3, 120.0)],
)
def test_sticks_for_so_many_rings(rings, count, length):
    assert sticks(rings) == (count, pytest.approx(length))


def test_sawn_off_on_the_table_a_blank_takes_the_slit_s_width_more():
    """9 mm and a saw of 0.8: 121.5 hold twelve of 9.8; the parting tool has no part in it."""
    on_stick = {"slit_on_stick": True, "slit_width": 0.8}
    assert sticks(12, **on_stick) == (1, pytest.approx(117.6))
    assert sticks(13, parting=50.0, **on_stick) == (2, pytest.approx(117.6))


def tube(values=None, machine="light", **request):
    design, tools = settled(request)
    asked = {"machine": machine, **(values or {})}
    bench = Bench(design, asked)
    rows = route_tube.rows(bench, design, tools, asked, card_limits(design, machine))
    return design, tools, {row.key: row for row in rows}


def size(row, name):
    return next(one.value for one in row.sizes if one.name == name)


@pytest.mark.parametrize(
    ("chucking", "grip", "held"), [(33.0, 27.0, 33.0), (22.0, 41.0, 41.0), (22.0, None, 30.0)]
)
def test_the_stick_is_held_by_the_larger_of_what_both_chucks_need(chucking, grip, held):
    """By itself the table's takes a third of the diameter, to the next 5 mm: 30 of 81."""
    request = {"bore": 80.0, "slit_on_stick": True}
    if grip:
        request["table_grip"] = grip
    _, _, rows = tube({"chucking_piece": chucking}, **request)
    assert size(rows["face-bar"], "chucking_piece") == pytest.approx(held)
    assert "part-off" not in rows and "face-blank" not in rows


def test_a_solid_bar_is_faced_to_its_middle_and_drilled_through_with_the_drill_s_point():
    """The point of a drill is as long as three tenths of it; a tool runs 1 mm past the middle."""
    design, tools, rows = tube({"bar_form": "solid", "bar_sizes": "metric"}, bore=46.0)
    inside = design.blank.bored_inside
    assert inside > 27.0 and size(rows["drill"], "drill_diameter") == 25.0
    bored = rows["bore-rough"].cut
    # Half a millimetre on the diameter is left to measure by and to size.
    assert size(rows["bore-rough"], "roughed_bore") == pytest.approx(inside - 0.5)
    half = 0.5 * (inside - 0.5 - 25.0)
    assert bored.passes == -(-half // 0.5)
    drilled = rows["drill"].cut
    travel = drilled.cutting_time * drilled.feed_rate
    assert travel == pytest.approx(tools.part_length + 7.5)
    # 48 or 47 mm clean up from the 50 mm bar, 2.286 over it to 2 in (one producer's table, read).
    faced = rows["face-bar"].cut
    assert faced.cutting_time * faced.feed_rate == pytest.approx(0.5 * (50.0 + 2.286) + 1.0)


def test_a_bore_smaller_than_what_a_casting_would_leave_is_cast_solid():
    """3 mm to take off all round leave no core in 5 mm."""
    design, tools = settled({"bore": 620.0, "ring_type": "plain"})
    held = card_limits(design)
    design = design._replace(blank=design.blank._replace(bored_inside=5.0))
    rows = route_tube.rows(Bench(design, {}), design, tools, {}, held)
    rows = {row.key: row for row in rows}
    assert size(rows["drill"], "drill_diameter") == 3.0
    faced = rows["face-bar"].cut
    skin = design.blank.rough_outside + 6.0
    assert faced.cutting_time * faced.feed_rate == pytest.approx(0.5 * skin + 1.0)


@pytest.mark.parametrize(
    ("value", "limited"),
    [(0.999, False), (1.0, True), (1.005, True), (1000.0, True), (1000.1, False), (1005.0, False)],
)
def test_limits_stand_where_the_standard_has_some(value, limited):
    """ISO 286 tables begin over 0 to 3 mm, here at 1 mm, and are used to 1000 mm."""
    found = part_sizes.limited("bore", "bore", value, "H8")
    assert (found.lower is not None) is limited
    assert found.label == ("bore H8" if limited else "bore")
    if limited:
        held = fits.limits(value, "H8")
        assert (found.lower, found.upper) == (held.lower, held.upper)


def test_a_tool_has_the_limits_of_the_part_at_its_worst_and_its_own_size():
    found = part_sizes.suited("bore", "bore", 80.0, 80.05, "H7")
    held = fits.limits(80.05, "H7")
    assert (found.value, found.lower, found.upper) == (80.0, held.lower, held.upper)
    assert found.label == "bore H7"


def test_a_stick_may_lean_so_that_half_of_what_is_left_to_face_is_used_up():
    """0.4 mm to face and 84 mm across: sides out by 0.2; along 105 mm that is 0.25."""
    assert route_sawing.squareness(along=105.0, outside=84.0, allowance=0.4) == pytest.approx(0.25)


@pytest.mark.parametrize(("facing", "passes"), [(0.5, 2), (0.51, 4), (1.2, 6)])
def test_both_sides_of_a_blank_are_faced_in_half_millimetres(facing, passes):
    _, _, rows = tube(bore=80.0, facing_allowance=facing)
    assert rows["face-blank"].cut.passes == passes


def test_whoever_holds_a_bar_by_nothing_finds_nothing_on_the_card():
    _, _, rows = tube({"chucking_piece": 0.0}, bore=80.0)
    assert size(rows["face-bar"], "chucking_piece") == 0.0
