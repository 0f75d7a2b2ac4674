"""What a ring being made will fail by, whether that stops it, and what brings it right: by hand."""

import math

import pytest

from core.follow_by_hand import MADE, PLAN, ring, settled
from ringwright.core.catalogue.inputs_rings import NAMES
from ringwright.core.ring.design import settle
from ringwright.core.walk import follow
from ringwright.core.walk.plan import walked

CUT = 1.5
EXACT = {"abs": 1e-9}
NOISE = 1e-9


def faults(relief=None, plan=PLAN, row=(), **made):
    one = ring(**dict(row))
    return one.faults(plan, MADE._replace(**made), relief)


@pytest.mark.parametrize(
    ("size", "value", "found"),
    [
        ("thickness", 2.905 - NOISE, []),
        ("thickness", 2.905 - 2e-8, ["thickness"]),
        ("thickness", 2.96, []),
        ("thickness", 2.96 + NOISE, []),
        ("thickness", 2.96 + 2e-8, ["thickness"]),
        ("closed_gap", 0.6 + NOISE, []),
        ("closed_gap", 0.6 + 2e-8, ["gap"]),
        # What no feeler tells is not short.
        ("closed_gap", 0.35 - 0.005, []),
        ("closed_gap", 0.35 - 0.00502, ["gap-short"]),
        ("wall_pressure", 0.04, []),
        ("wall_pressure", 0.04 - NOISE, []),
        ("wall_pressure", 0.04 - 2e-8, ["pressure"]),
        ("wall_pressure", 0.07, []),
        ("wall_pressure", 0.07 + NOISE, []),
        ("wall_pressure", 0.07 + 2e-8, ["pressure"]),
        # A tenth to turn away, of an allowance of 0.9.
        ("clean_up", 0.1, []),
        ("clean_up", 0.1 - NOISE, []),
        ("clean_up", 0.0998, ["clean-up"]),
    ],
)
def test_a_ring_fails_beyond_a_limit_and_not_at_it(size, value, found):
    assert faults(**{size: value}) == found


@pytest.mark.parametrize(
    ("width", "found"),
    [
        (3.61, []), (3.61 - NOISE, []), (3.61 - 2e-8, ["width"]),
        (3.74, []), (3.74 + NOISE, []), (3.74 + 2e-8, ["width"]),
    ],
)  # fmt: skip
def test_a_width_is_judged_once_it_was_measured(width, found):
    plan = PLAN._replace(width=width)
    assert faults(plan=plan, row={"ring_width": width}) == found
    assert faults(plan=plan) == []


@pytest.mark.parametrize(
    ("relief", "found"),
    [(None, []), (-0.001, ["relief"]), (0.0, []), (0.004, []), (1.02, []), (1.021, ["relief"])],
)
def test_no_heat_gives_less_than_nothing_or_more_than_all_but_what_a_reading_misses(relief, found):
    assert faults(relief) == found
    assert ring().faults(PLAN, None, relief) == ["no-ring"]


@pytest.mark.parametrize(("allowance", "least"), [(0.9, 0.1), (0.5, 0.1), (0.4, 0.08)])
def test_the_last_turning_must_find_a_tenth_or_a_fifth_of_a_small_allowance(allowance, least):
    d = settled()
    d = d._replace(allowances=d.allowances._replace(finishing=allowance))
    assert ring(d).least_clean_up() == pytest.approx(least, **EXACT)


# The iron ring grows by 1.17e-5 x 75 K more than the wall that it starts in, pi x 90 of it.
GROWS = math.pi * 90.0 * 1.17e-5 * 0.5 * (170.48 - 20.0)


@pytest.mark.parametrize(
    ("fault", "size", "value", "stops"),
    [
        # A tenth off the thickness of 2.93 is another ring.
        ("thickness", "thickness", 2.93 * 1.0995, False),
        ("thickness", "thickness", 2.93 * 1.1005, True),
        ("thickness", "thickness", 2.93 * 0.9005, False),
        ("thickness", "thickness", 2.93 * 0.8995, True),
        # Ends that butt, or a gap over 0.012 of the bore, hot.
        ("gap-short", "closed_gap", GROWS - 0.003, True),
        ("gap-short", "closed_gap", GROWS + 0.003, False),
        ("gap", "closed_gap", 1.08 + GROWS - 0.01, False),
        ("gap", "closed_gap", 1.08 + GROWS + 0.01, True),
        # 0.034 to 0.085 MPa with the expander's 0.01.
        ("pressure", "wall_pressure", 0.0245, False),
        ("pressure", "wall_pressure", 0.0235, True),
        ("pressure", "wall_pressure", 0.0745, False),
        ("pressure", "wall_pressure", 0.0755, True),
        ("clean-up", "clean_up", 0.01, True),
        ("width", "width", 3.2, True),
        ("relief", "width", 3.2, False),
    ],
)
def test_a_fault_stops_a_ring_as_inspection_would(fault, size, value, stops):
    d = settled(expander_pressure=0.01)
    made = MADE._replace(**{size: value})
    assert ring(d).grave(made, [fault]) is stops
    # The graver of two decides.
    assert ring(d).grave(made, ["relief", fault]) is stops
    assert ring(d).grave(None, ["no-ring"]) is True
    assert ring(d).grave(made, []) is False


def candidates(plan=PLAN, row=(), design=None, **made):
    one = ring(design, **dict(row))
    return {each[0]: each[1:] for each in one.candidates(plan, MADE._replace(**made))}


def spacer(plan):
    """Cut and free gap by hand: the gap in the bore is what it was closed to and pi (bore - D)."""
    free = 8.4 + plan.clamped_gap + math.pi * (plan.bore - plan.finish)
    return CUT + (free - CUT) / plan.relief


def test_a_gap_filed_short_is_filed_on_to_the_card_s_gap():
    other = PLAN._replace(closed_gap=0.3)
    value, plan, undone = candidates(other, closed_gap=0.344)["dress"]
    # 0.35 along the ring, read square to the cut.
    assert value == pytest.approx(0.28, **EXACT)
    assert (plan, undone) == (PLAN, "closed_gap_reading")
    assert "dress" not in candidates(other, closed_gap=0.345)
    assert "dress" in candidates(other, closed_gap=0.35 - 0.00502)
    assert "dress" not in candidates(other, closed_gap=0.354)


def test_a_ring_left_too_wide_is_faced_on_to_its_nominal_width():
    wide = PLAN._replace(width=3.76)
    value, plan, undone = candidates(wide, {"ring_width": 3.76})["face"]
    assert (value, plan.width, undone) == (3.7, 3.7, "")
    assert "face" not in candidates(PLAN._replace(width=3.74), {"ring_width": 3.74})
    assert "face" not in candidates(PLAN._replace(width=3.72), {"ring_width": 3.72})
    assert "face" not in candidates(wide)


def test_a_blank_that_comes_thick_is_bored_out_by_twice_that_before_it_is_sawn():
    value, plan, undone = candidates(thickness=2.934)["bore"]
    assert value == pytest.approx(84.608, **EXACT)
    assert plan.bored == value and undone == ""
    assert plan.spacer == pytest.approx(spacer(PLAN), **EXACT)
    assert "bore" not in candidates(row={"end_kerf": 1.2}, thickness=2.934)
    assert "bore" not in candidates(PLAN._replace(bored_clamped=84.2), thickness=2.934)
    assert "bore" not in candidates(thickness=2.93)
    assert "bore" not in candidates(thickness=2.926)


def test_a_ring_that_comes_thin_is_sawn_again_so_that_it_closes_further():
    """Along the ring 2 pi times what it is thin; across the cut 0.8 of that."""
    value, plan, undone = candidates(thickness=2.926)["saw"]
    assert value == pytest.approx(1.2 + 2.0 * math.pi * 0.004 * 0.8, **EXACT)
    assert plan.kerf == value and undone == ""
    # The spacer opens the ring that has the wider cut.
    cut = value / 0.8
    free = 8.4 + 0.42 - 0.1 * math.pi
    assert plan.spacer == pytest.approx(cut + (free - cut) / 0.85, **EXACT)
    assert "saw" not in candidates(row={"clamped_gap_reading": 0.3}, thickness=2.926)
    assert "saw" not in candidates(PLAN._replace(bored_clamped=84.2), thickness=2.926)
    assert "saw" not in candidates(thickness=2.93)
    assert "saw" not in candidates(thickness=2.934)


def test_a_tool_that_was_settled_already_is_not_sized_anew():
    for row in ({"free_gap": 8.6}, {"former_diameter": 87.0}):
        _, plan, _ = candidates(row=row, thickness=2.934)["bore"]
        assert plan.spacer == 9.3


def test_a_turned_ring_that_is_thick_is_bored_inside_to_its_thickness():
    value, plan, undone = candidates(thickness=2.934)["inside"]
    assert value == pytest.approx(90.1 - 5.86, **EXACT)
    assert (plan.bored_clamped, undone) == (value, "radial_thickness")
    assert "inside" not in candidates(PLAN._replace(bored_clamped=84.2), thickness=2.934)
    assert "inside" not in candidates(thickness=2.93)
    assert "inside" not in candidates(thickness=2.926)


def test_a_ring_spread_too_little_is_spread_on_from_where_it_stands():
    """It stands open already; the spacer is wider than that by what the first one fell short."""
    stands = CUT + 0.85 * (9.3 - CUT)
    value, plan, undone = candidates(row={"free_gap": 8.1})["set"]
    assert value == pytest.approx(stands + spacer(PLAN) - 9.3, **EXACT)
    assert plan.spacer == pytest.approx(spacer(PLAN), **EXACT)
    assert undone == ""
    assert "set" not in candidates()
    # The heat gave next to nothing, or just enough to go by.
    assert "set" not in candidates(PLAN._replace(relief=0.0999), {"free_gap": 8.1})
    assert "set" in candidates(PLAN._replace(relief=0.1), {"free_gap": 8.1})


FORMED = PLAN._replace(former=86.2, spacer=None, setting="bound", mean_share=0.9)


def former(start, plan=FORMED, pressure=0.055):
    """The former by hand: from the pressure wanted to the curvature, the free radius and back."""
    a = 0.5 * (plan.finish - plan.bored + (CUT - plan.clamped_gap) / math.pi)
    curvature = 3.0 * (pressure / plan.mean_share) * (90.0 - a) * 90.0 / (plan.modulus * a**3)
    free = 1.0 / (2.0 / (90.0 - a) - curvature)
    # The wall of 3.3 is turned outside to a; its neutral line lay half of that further out.
    free += 0.5 * (3.3 - a)
    on_former = 1.0 / (1.0 / start + (1.0 / free - 1.0 / start) / plan.relief)
    return (2.0 * on_former - 3.3) / plan.growth


def test_a_ring_set_too_little_is_set_on_from_the_shape_it_has():
    """Its own free radius is what the former then starts from; the walk is a first set's."""
    sawn = 0.5 * (84.6 + 3.3)
    stands = 1.0 / (1.0 / sawn + 0.85 * (1.0 / (0.5 * 86.2 + 1.65) - 1.0 / sawn))
    # Bored at 42.3, the wall's middle lies 1.65 further out.
    sawn = 42.3 + 1.65
    value, plan, undone = candidates(FORMED, {"free_gap": 8.1})["set"]
    assert value == pytest.approx(former(stands), abs=1e-6)
    assert plan.former == pytest.approx(former(sawn), abs=1e-6)
    assert undone == ""
    assert "set" not in candidates(FORMED)
    assert "set" not in candidates(FORMED._replace(relief=0.05), {"free_gap": 8.1})


def test_a_former_for_this_very_ring_where_none_was_measured():
    assert ring().tool(FORMED).former == pytest.approx(former(43.95), abs=1e-6)
    assert ring().tool(PLAN).spacer == pytest.approx(spacer(PLAN), **EXACT)


def test_no_remedy_is_told_where_there_is_no_ring_or_its_figures_cannot_be():
    one = ring(free_gap=8.1)
    assert one.remedy(PLAN, None, ["no-ring"], None) is None
    assert one.remedy(PLAN, MADE, ["relief", "pressure"], None) is None


@pytest.mark.parametrize(("row", "key"), [({}, "bore"), ({"end_kerf": 1.0}, "inside")])
def test_the_first_remedy_that_leaves_no_fault_is_told_with_what_it_leads_to(row, key):
    """Too thick: the blank is bored out before the saw, the ring is bored inside after it."""
    d = settle({"bore": 90.0, "ring_type": "plain", "end_cut": "square", "wall_pressure": 0.05})[0]
    one = follow.Ring(d, {**dict.fromkeys((*NAMES, "ring")), **row}, 1, "light", None)
    wanted = d.section.thickness
    # As much over its limit as the limit allows, twice that on the diameter.
    plan = one.nominal._replace(bored=one.nominal.bored - 4.0 * (one.own.thickness[1] - wanted))
    made = walked(plan)
    said = one.faults(plan, made, None)
    assert "thickness" in said
    found = one.remedy(plan, made, said, None)
    assert (found.key, found.aim) == (key, 0.05)
    assert found.made.thickness == pytest.approx(wanted, abs=1e-6)
