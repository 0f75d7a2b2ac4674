"""A worn groove cut true, by hand: every size given, limits from both sides, remedies reckoned.

Bore 80 mm. By the table of side clearances (0.001 and 0.003 in to 50 mm, 0.002 and 0.005 in from
300 mm, in proportion between) a ring there has 0.0254 x 1.12 = 0.028448 to 0.0762 + 0.12 x 0.0508 =
0.082296 mm; a groove is cut a quarter of the way up, 0.028448 + 0.25 x 0.053848 = 0.04191.
"""

import math

import pytest

from ringwright.core import calculations
from ringwright.core.catalogue.inputs_ring import RING
from ringwright.core.fitting import groove_recut
from ringwright.core.fitting.groove_recut import land_left
from ringwright.core.problems import InputProblem
from ringwright.core.ring.design import settle

CLEARANCE, ROOM = 0.04191, 0.053848
# Widest 5.42, narrowest 5.1.
WORN = [{"mouth": 5.3, "bottom": 5.1}, {"mouth": 5.42, "bottom": 5.15}]
HELD = {
    "bore": 80.0, "ring_type": "plain", "ring_width": 5.7, "radial_thickness": 3.0,
    "groove_depth": 4.3, "piston_diameter": 79.6, "piston_material": "grey-iron-200",
    "steam_pressure": 0.7, "groove_readings": WORN, "groove_step": 0.06, "side_cut": 0.13,
}  # fmt: skip
GROOVE = 5.7 + CLEARANCE


def asked(**more):
    given = {**HELD, **more}
    given = {name: value for name, value in given.items() if value is not None}
    return calculations.run("groove-recut", given)


def value(answer, name):
    return answer["figures"][name]["value"]


def told(answer, check):
    return next((row for row in answer["findings"] if row["check"] == check), None)


def judged(check, **more):
    """(outcome, value, limit) of one check."""
    row = told(asked(**more), check)
    return row["outcome"], row["value"]["value"], row["limit"]["value"]


def true(width):
    return [{"mouth": width, "bottom": width}]


def test_sizes_of_a_held_ring_by_hand():
    answer = asked(end_land=5.0, inner_land=4.8, old_ring_width=4.2)
    for name, wanted in {
        "clean_width": 5.42 + 0.06 + 2 * 0.13,
        "out_of_parallel": 5.42 - 5.1 + 0.06,
        "groove_width": GROOVE,
        "side_clearance": CLEARANCE,
        # Ring and piston of irons that grow alike: the clearance grows with them.
        "side_clearance_hot": CLEARANCE,
        "insert_width": 5.74 - 4.2 - CLEARANCE,
        "end_land_left": 5.0 - 0.5 * (GROOVE - 5.42),
        "inner_land_left": 4.8 - (GROOVE - 5.42),
        "turn_width": 5.7,
    }.items():
        assert value(answer, name) == pytest.approx(wanted, rel=0.003, abs=1e-9), name
    for name, (low, high) in {
        "end_land_left": (5.0 - (GROOVE - 5.42), 5.0),
        "inner_land_left": (4.8 - 2.0 * (GROOVE - 5.42), 4.8),
    }.items():
        figure = answer["figures"][name]
        assert (figure["low"], figure["high"]) == pytest.approx((low, high), abs=1e-9)


def test_the_working_shows_what_was_measured():
    """Widest, step and cut stand in it as they were given, the narrower land as it was left."""
    figures = asked(inner_land=4.8, end_land=5.0)["figures"]
    working = {row["symbol"]: row["value"] for row in figures["clean_width"]["working"]}
    assert working == pytest.approx({"widest": 5.42, "step": 0.06, "cut": 0.13})
    working = {row["symbol"]: row["value"] for row in figures["land_stress"]["working"]}
    assert working == pytest.approx(
        {"d1": 80.0, "d_p": 79.6, "depth": 4.3, "p_s": 0.7, "t": 4.8 - (GROOVE - 5.42)}
    )


def test_a_groove_that_is_not_widened_takes_nothing_off_a_land():
    assert land_left(6.3, 5.4, 5.4, 2) == (6.3, 6.3, 6.3)
    assert land_left(6.3, 5.4, 5.1, 1) == (6.3, 6.3, 6.3)
    assert land_left(6.3, 5.1, 5.4, 1) == pytest.approx((6.0, 6.15, 6.3))
    assert land_left(6.3, 5.1, 5.4, 2) == pytest.approx((5.7, 6.0, 6.3))


def test_a_land_that_nobody_measured_is_as_wide_as_the_groove():
    off = 0.5 * (GROOVE - 5.42)
    assert value(asked(), "end_land_left") == pytest.approx(5.42 - off, abs=1e-9)


def test_a_ring_has_room_for_so_much_taper_and_no_more():
    for taper, outcome in ((0.0535, "good"), (0.0542, "watch")):
        readings = [{"mouth": 5.4 + taper, "bottom": 5.4}]
        found = judged("groove-taper", groove_readings=readings, groove_step=None)
        assert found == (outcome, pytest.approx(taper), pytest.approx(ROOM))


def test_a_tapered_groove_is_cut_to_the_wider_of_what_ring_and_wear_ask():
    """H8 over 3 to 6 mm is 0.018 (ISO 286); below 1 mm the standard's tables end."""
    assert told(asked(), "groove-taper")["remedy"].startswith("Cut it to 5.74 mm (0.226 in)")
    narrow = told(asked(ring_width=5.0), "groove-taper")
    assert narrow["remedy"].startswith("Cut it to 5.74 mm (0.226 in)")
    wide = told(asked(ring_width=6.5), "groove-taper")
    assert wide["remedy"].startswith("Cut it to 6.54 mm")
    assert wide["remedy"].endswith("at most 0.022 mm (0.0009 in) more.")
    slim = {"ring_width": 0.9, "groove_step": 0.1, "side_cut": 0.05, "end_land": 3.0}
    slim = told(asked(groove_readings=true(0.7), **slim), "groove-taper")
    assert slim["remedy"] == "Cut it to 0.942 mm (0.0371 in) with sides square to the axis."


def test_a_ring_too_narrow_for_the_wear_is_told_by_how_much():
    """5.4 and its clearance make 5.44191, the wear is out at 5.74: 0.29809 are wanting."""
    row = told(asked(ring_width=5.4), "groove-cleans-up")
    assert row["outcome"] == "stop"
    assert row["value"]["value"] == pytest.approx(5.44191)
    assert row["limit"]["value"] == pytest.approx(5.74)
    bare = told(asked(ring_width=5.4, bore=80.0), "groove-cleans-up")
    assert bare["remedy"] == "Make the ring 5.70 mm (0.224 in) wide."
    wanting = 5.74 - CLEARANCE
    for width, outcome in ((wanting - 0.001, "stop"), (wanting, "good")):
        assert told(asked(ring_width=width), "groove-cleans-up")["outcome"] == outcome


@pytest.mark.parametrize(
    ("thick", "depth", "outcome", "most"),
    [
        # Half as deep again as the ring is thick, but not less than twice 0.4 mm.
        (3.0, 4.5, "good", 1.5),
        (3.0, 4.51, "watch", 1.5),
        (1.3, 2.09, "good", 0.8),
        (1.3, 2.11, "watch", 0.8),
    ],
)
def test_a_groove_is_too_deep_from_half_its_ring_on(thick, depth, outcome, most):
    found = judged("groove-deep", radial_thickness=thick, groove_depth=depth)
    assert found == (outcome, pytest.approx(depth - thick), pytest.approx(most))


def test_a_deep_groove_takes_a_ring_of_two_thirds_its_depth():
    """Depth 6.4: 6.4/1.5 = 4.2667, said as 4.27 and no less, lest it be too deep again."""
    row = told(asked(radial_thickness=3.0, groove_depth=6.4), "groove-deep")
    assert {one["input"]: one["value"] for one in row["apply"]} == {"radial_thickness": 4.27}
    assert row["remedy"] == "Make the ring 4.27 mm (0.168 in) thick."


def handbook(pressure, a, b, poisson):
    """Moment at the root: Young and Budynas, table 11.2, inner edge fixed, outer edge free."""
    c, log = b / a, math.log(a / b)
    c8 = 0.5 * (1 + poisson + (1 - poisson) * c * c)
    c9 = c * ((1 + poisson) / 2 * log + (1 - poisson) / 4 * (1 - c * c))
    l17 = 0.25 * (1 - (1 - poisson) / 4 * (1 - c**4) - c * c * (1 + (1 + poisson) * log))
    return pressure * a * a / c8 * (c9 / (2 * a * b) * (a * a - b * b) - l17)


@pytest.mark.parametrize(
    ("stress", "outcome"),
    [(27.8, "good"), (28.2, "watch"), (69.5, "watch"), (70.5, "stop")],
)
@pytest.mark.parametrize("which", ["end_land", "inner_land"])
def test_a_land_is_watched_from_28_and_stopped_from_70(which, stress, outcome):
    """Grey iron of 200 N/mm2: fatigue at 0.35 of that, 70; over 2.5 for corner and knock, 28."""
    b = 0.5 * 79.6 - 4.3
    width = math.sqrt(6.0 * handbook(0.7, 40.0, b, 0.26) / stress)
    shear = 3.0 * 0.7 * (40.0**2 - b * b) / (4.0 * b * width)
    assert math.sqrt(3.0) * shear < stress
    off = (GROOVE - 5.42) * (0.5 if which == "end_land" else 1.0)
    found = judged("land-strength", **{"end_land": 9.0, which: width + off})
    assert found == (outcome, pytest.approx(stress, rel=1e-6), pytest.approx(28.0))


def test_a_wide_land_goes_by_its_shear():
    """Standing out 4.5 and twice as wide: bending falls by the square of the width, shear by it."""
    width = 9.0 - 0.5 * (GROOVE - 5.42)
    b = 39.8 - 4.3
    shear = 3.0 * 0.7 * (1600.0 - b * b) / (4.0 * b * width)
    assert math.sqrt(3.0) * shear > 6.0 * handbook(0.7, 40.0, b, 0.26) / width**2
    _, seen, _ = judged("land-strength", end_land=9.0)
    assert seen == pytest.approx(math.sqrt(3.0) * shear, rel=1e-6)


@pytest.mark.parametrize(("kind", "ring"), [("plain", 5.7), ("double-turn", 2.85)])
def test_three_quarters_of_a_ring_or_of_a_turn_is_land_enough(kind, ring):
    wanted = 0.75 * ring
    for more, outcome in ((-0.002, "watch"), (0.0, "good")):
        land = wanted + more + 0.5 * (GROOVE - 5.42)
        said = told(asked(ring_type=kind, end_land=land), "land-width")["why"]
        assert "%d %% as wide as" % int(100.0 * (wanted + more) / ring + 0.5) in said
        found = judged("land-width", ring_type=kind, end_land=land)
        assert found == (outcome, pytest.approx(wanted + more), pytest.approx(wanted))


def test_a_land_of_nothing_stops_and_says_what_strength_asks():
    """Cut alike from both sides the end land loses 0.160955; 0.16 leave less than nothing."""
    row = told(asked(end_land=0.2, groove_readings=true(5.3)), "land-strength")
    assert row["outcome"] == "stop"
    assert row["value"]["value"] == pytest.approx(0.2 - 0.5 * (GROOVE - 5.3))
    b = 39.8 - 4.3
    least = math.sqrt(6.0 * handbook(0.7, 40.0, b, 0.26) / 28.0)
    assert row["limit"]["value"] == pytest.approx(least, rel=1e-6)
    assert "land_stress" not in asked(end_land=0.2, groove_readings=true(5.3))["figures"]
    # A hair of land is a land, if one that breaks.
    hair = asked(end_land=0.226, groove_readings=true(5.3))
    assert "land_stress" in hair["figures"]
    assert told(hair, "land-strength")["limit"]["unit"] == "MPa"


def test_an_insert_of_a_millimetre_stands_by_itself():
    full = 5.74 - CLEARANCE
    for beside, outcome in ((0.998, "stop"), (1.0, "good")):
        found = judged("insert", old_ring_width=full - beside)
        assert found == (outcome, pytest.approx(beside), 1.0)
    said = told(asked(old_ring_width=full - 0.3), "insert")["why"]
    assert said == "Beside the old ring an insert of 0.300 mm (0.0118 in) fills the groove."
    assert "an insert of 0.005 mm" in told(asked(old_ring_width=full - 0.005), "insert")["why"]
    for old in (full, full + 0.2):
        assert "leaves no room" in told(asked(old_ring_width=old + 1e-6), "insert")["why"]


def test_a_thin_insert_is_cured_by_half_of_what_it_lacks_off_each_side():
    """0.4 lacks: 0.13 + 0.51 x 0.4 = 0.334 off each side, a hair over half."""
    row = told(asked(ring_width=None, old_ring_width=5.74 - CLEARANCE - 0.6), "insert")
    (one,) = row["apply"]
    assert one["input"] == "side_cut"
    assert one["value"] == pytest.approx(0.334, abs=0.0011) and one["value"] >= 0.33
    usual = told(asked(ring_width=None, side_cut=None, old_ring_width=5.2), "insert")
    # A cut that nobody gave is 0.1: W = 5.68, and 5.68 - 5.2 - c lacks 1 - 0.438.
    assert usual["apply"][0]["value"] == pytest.approx(0.1 + 0.51 * 0.562, abs=0.0011)


def test_a_ring_is_wider_than_the_port_it_passes():
    for width, outcome in ((5.69, "watch"), (5.7, "watch"), (5.71, "good")):
        found = judged("ring-over-port", ring_width=width, passed_port=5.7)
        assert found == (outcome, width, 5.7)


def test_a_ring_over_a_port_is_made_two_hundredths_wider_in_a_shop_s_size():
    """Port 8: 8.16 is 8.2 in tenths; 8.5 in halves would be more than 2 % over."""
    row = told(asked(passed_port=8.0, end_land=9.0), "ring-over-port")
    assert {one["input"]: one["value"] for one in row["apply"]} == {
        "ring_width": pytest.approx(8.2)
    }


@pytest.mark.parametrize(
    ("edge", "outcome"), [(2.68, "good"), (2.70, "watch"), (5.53, "watch"), (5.55, "stop")]
)
def test_half_a_ring_may_pass_the_end_of_its_bore(edge, outcome):
    """Half of 5.7 is 2.85; the wider groove moves the edge out by (5.74191 - 5.42)/2 = 0.160955."""
    found = judged("overrun", ring_overrun=edge)
    assert found == (outcome, pytest.approx(edge + 0.160955), pytest.approx(2.85))


def test_a_groove_may_reach_the_middle_but_not_pass_it():
    """Piston 79.6: to 39.8 deep there is a piston left in the middle."""
    asked(groove_depth=39.79)
    for depth in (39.8, 39.9):
        with pytest.raises(InputProblem) as refused:
            asked(groove_depth=depth)
        assert refused.value.faults[0].path == ("groove_depth",)
        assert "3.00 mm" in refused.value.faults[0].remedy


def test_the_old_ring_and_its_insert_are_judged_by_the_old_ring():
    """Old ring 4.2: its land needs 3.15, not the 4.28 of a ring of 5.7 that is not made. From 3.9
    half of 0.32 comes off, 3.74: 89 % of the old ring."""
    for kind, land, outcome in (
        ("plain", 3.9, "good"), ("plain", 3.3, "watch"), ("double-turn", 1.85, "good"),
        ("double-turn", 1.7, "watch"),
    ):  # fmt: skip
        rows = asked(ring_type=kind, end_land=land, old_ring_width=4.2)["ways"]
        row = next(one for one in rows if one["way"].startswith("The old ring"))
        assert row["ring_width"]["value"] == 4.2
        assert row["groove_width"]["value"] == pytest.approx(5.74)
        assert row["end_land_left"]["value"] == pytest.approx(land - 0.5 * (5.74 - 5.42))
        assert row["outcome"] == outcome, (kind, land, row)


def test_the_worst_that_is_said_of_a_way_decides_it():
    """Old ring 5.2: no room for an insert stops what its lands alone would let pass."""
    rows = asked(old_ring_width=5.2, end_land=9.0)["ways"]
    row = next(one for one in rows if one["way"].startswith("The old ring"))
    assert row["outcome"] == "stop" and "an insert of 0.498 mm" in row["why"]
    rows = asked(end_land=3.7)["ways"]
    plain = next(one for one in rows if one["way"] == "A plain ring to suit")
    assert plain["outcome"] == "watch" and "as wide as its ring" in plain["why"]


def test_a_double_turn_ring_of_its_own_width_is_offered_where_the_groove_is_cut_wider_for_it():
    """Sizing makes it as wide as it will; a groove worn wider than that is no place for it."""
    own = calculations.run(
        "sizing", {name: HELD[name] for name in ("bore", "radial_thickness", "piston_material")}
    )["figures"]["groove_width"]["value"]
    for clean, offered in ((own - 0.02, True), (own + 0.02, False)):
        rows = asked(groove_readings=true(clean - 0.32))["ways"]
        assert bool([row for row in rows if "sizing makes" in row["way"]]) is offered


@pytest.mark.parametrize(("cut", "step"), [(0.05, 0.06), (0.02, 0.06), (0.01, 0.095)])
def test_a_narrow_land_is_saved_by_the_largest_lighter_cut_that_does(cut, step):
    """The land is a hair over what it needs at that cut; the next coarser one makes a ring of the
    next size of the shop, and leaves too little."""
    given = {"ring_width": None, "groove_step": step}
    ring = asked(side_cut=cut, end_land=9.0, **given)["figures"]
    assert ring["clean_width"]["value"] == pytest.approx(5.42 + step + 2.0 * cut)
    off = 0.5 * (ring["groove_width"]["value"] - 5.42)
    land = 0.75 * ring["ring_width"]["value"] + off + 0.001
    row = told(asked(side_cut=0.3, end_land=land, **given), "land-width")
    assert row["outcome"] == "watch"
    assert {one["input"]: one["value"] for one in row["apply"]} == {"side_cut": cut}


def test_of_sizing_only_what_the_groove_decides_is_told_again():
    """A ring in a sound groove: what is asked of groove and lands, and nothing good of sizing."""
    sound = asked(groove_readings=true(5.4), groove_step=None, ring_width=5.6, end_land=9.0)
    assert [row["check"] for row in sound["findings"]] == [
        "groove-taper", "groove-cleans-up", "groove-deep", "land-strength", "land-width", "width",
    ]  # fmt: skip
    narrow = {"ring_width": 3.4, "end_land": 9.0, "groove_step": None}
    checks = [row["check"] for row in asked(groove_readings=true(3.2), **narrow)["findings"]]
    assert "width" not in checks and "section" not in checks and "pairing" not in checks
    shallow = asked(groove_depth=3.1)
    assert told(shallow, "groove-depth")["outcome"] != "good"


def test_a_remedy_is_said_as_what_is_done():
    design = settle({name: HELD[name] for name in HELD if name in RING})[0]
    for name, given, words in (
        ("side_cut", 0.05, "cut 0.050 mm (0.0020 in) off each side of the groove"),
        ("piston_material", "steel", "make the piston of grey cast iron, grade 200"),
        ("ring_type", "double-turn", "make a double-turn ring"),
        ("ring_width", None, "make the ring 5.70 mm (0.224 in) wide"),
        ("groove_depth", 3.5, "deepen the groove to 3.50 mm (0.138 in)"),
        ("radial_thickness", None, "make the ring 3.00 mm (0.118 in) thick"),
        ("shop_temperature", None, "leave the shop temperature out"),
    ):
        assert groove_recut._words(name, given, design) == words


def test_a_ring_that_cannot_be_made_wider_is_told_what_is_wanting():
    """5.44191 of 5.74."""
    design = settle({name: HELD[name] for name in HELD if name in RING} | {"ring_width": 5.4})[0]
    rows = groove_recut._groove_rows(design, {"clean": 5.74, "taper": 0.38})
    (row,) = [row for row in rows if row.check == "groove-cleans-up"]
    assert row.remedy == "Make the ring at least 0.298 mm (0.0117 in) wider."


def test_either_ring_to_suit_fills_a_wide_groove():
    """A groove worn to 9 mm, wider than sizing would make either ring."""
    rows = {row["way"]: row for row in asked(groove_readings=true(9.0), end_land=20.0)["ways"]}
    for way in ("A plain ring to suit", "A double-turn ring to suit"):
        assert 9.32 <= rows[way]["groove_width"]["value"] <= 1.025 * 9.32
    assert len(rows) == 2


def test_the_insert_of_the_ways_is_that_of_the_figures():
    """A bronze ring in an iron piston: its side clearance goes by how wide it is asked for."""
    answer = asked(ring_material="gunmetal", ring_width=14.0, old_ring_width=3.0, end_land=30.0)
    row = next(one for one in answer["ways"] if one["way"].startswith("The old ring"))
    assert row["insert_width"]["value"] == value(answer, "insert_width")
    assert value(answer, "side_clearance") > CLEARANCE + 0.005


def test_a_groove_too_shallow_is_deepened_to_its_ring_and_four_tenths():
    """Khurmi and Gupta, section 32.9: the groove 0.4 mm deeper than the ring. Where nobody asked
    for a thickness there is none to leave out."""
    thin = asked(radial_thickness=None, groove_depth=2.0)
    row = told(thin, "groove-depth")
    assert row["outcome"] != "good"
    (one,) = row["apply"]
    assert one["input"] == "groove_depth"
    assert one["value"] == pytest.approx(value(thin, "radial_thickness") + 0.4, abs=0.021)


def test_just_half_a_ring_may_pass_and_all_of_it_may_not():
    """A groove that is cut no wider moves no edge: 2.85 of 5.7 are good, 5.7 stop."""
    same = true(value(asked(), "groove_width"))
    for out, outcome in ((2.85, "good"), (5.7, "stop")):
        assert judged("overrun", groove_readings=same, ring_overrun=out) == (outcome, out, 2.85)
