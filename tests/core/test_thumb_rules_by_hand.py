"""Thumb rules by hand: the multiples as they are printed, sizes put and worked, and how a rule is
judged where some of its sizes serve and some do not."""

import math

import pytest
from scipy.optimize import brentq

from ringwright.core import calculations
from ringwright.core.records import GOOD, STOP, WATCH, Figure
from ringwright.core.ring import spring, thumb_rules
from ringwright.core.ring.design import settle
from ringwright.core.ring.thumb_rule_table import TABLE
from ringwright.core.ring.thumb_rules import HOLDS, IN_PART, NOT_HERE

HELD = {
    "bore": 80.0, "ring_type": "plain", "radial_thickness": 2.7, "ring_width": 3.4,
    "closed_gap": 0.31, "piston_diameter": 79.6, "wall_pressure": 0.047, "groove_width": 3.46,
    "groove_depth": 3.3,
}  # fmt: skip
RULES = {rule.key: rule for rule in TABLE}
# As the sources that each rule names print them; former, opening and piston: practice, no source.
PRINTED = {
    "former": [1.022],
    "free-gap": [3.5, 3.75, 4.0],
    "section": [1 / 25, 1 / 26, 1 / 28, 1 / 30, 1 / 32],
    "section-and-gap": [1 / 25, 1 / 26, 1 / 28, 1 / 30, 1 / 32],
    "end-gap": [0.002, 0.0025, 0.003, 0.0035, 0.004],
    "width": [0.7, 0.85, 1.0],
    "opening": [8.0],
    "side-clearance": [1.0, 2.0, 3.0, 4.0],
    "piston-clearance": [0.001],
}


def ring_of(**more):
    return thumb_rules._ring(settle({**HELD, **more})[0])


RING = ring_of()


@pytest.mark.parametrize("key", PRINTED)
def test_the_multiples_are_those_printed_and_read_as_they_count(key):
    shares = RULES[key].shares
    assert [share for _, share in shares] == pytest.approx(PRINTED[key], rel=1e-12)
    for text, share in shares:
        if key == "side-clearance":
            assert text == "%.3f mm (0.00%d0 in)" % (0.0254 * share, share)
        elif "/" in text:
            assert 1.0 / float(text.split("/")[1]) == share and text.startswith("1/")
        else:
            assert float(text) == share


@pytest.mark.parametrize(
    ("key", "unit"),
    [
        ("former", 80.0 - 5.4), ("free-gap", 2.7), ("section", 80.0), ("section-and-gap", 80.0),
        ("end-gap", 80.0), ("width", 2.7), ("opening", 2.7), ("side-clearance", 0.0254),
        ("piston-clearance", 80.0),
    ],
)  # fmt: skip
def test_a_multiple_is_of_the_size_that_the_rule_says(key, unit):
    assert RULES[key].of(RING.design) == pytest.approx(unit, rel=1e-12)


@pytest.mark.parametrize(
    ("key", "size", "given"),
    [
        ("former", 76.5, {"former_ratio": 76.5 / 74.6}),
        ("free-gap", 9.3, {"free_gap": 9.3}),
        ("section", 2.9, {"radial_thickness": 2.9}),
        ("section-and-gap", 2.9, {"radial_thickness": 2.9, "free_gap": 11.6}),
        ("end-gap", 0.22, {"closed_gap": 0.22}),
        ("width", 2.5, {"ring_width": 2.5}),
        ("side-clearance", 0.07, {"groove_width": 3.47, "measured_groove_width": None}),
        ("piston-clearance", 0.09, {"piston_diameter": 79.91}),
    ],
)
def test_a_size_is_put_where_it_belongs(key, size, given):
    put = RULES[key].puts(size, RING.design)
    assert list(put) == list(given)
    for name, wanted in given.items():
        assert put[name] == (None if wanted is None else pytest.approx(wanted, rel=1e-12))


def test_each_turn_of_a_double_turn_ring_has_the_width():
    design = settle({**HELD, "ring_type": "double-turn", "ring_width": 5.2, "groove_width": None})[
        0
    ]
    assert RULES["width"].puts(2.5, design) == {"ring_width": 5.0}
    assert RULES["width"].worked(design, None) == pytest.approx(2.6)


def test_what_is_worked_stands_beside_each_rule():
    """Sizes as they were given; free gap, former and opening as sizing says."""
    sized = calculations.run("sizing", HELD)["figures"]
    for key, wanted in {
        "free-gap": sized["free_gap"]["value"],
        "section": 2.7,
        "section-and-gap": 2.7,
        "end-gap": 0.31,
        "width": 3.4,
        "opening": sized["sprung_on_opening"]["value"],
        "side-clearance": 0.06,
        "piston-clearance": 0.4,
    }.items():
        assert RULES[key].worked(RING.design, RING.acts) == pytest.approx(wanted, rel=1e-9), key
    sprung = ring_of(setting="sprung")
    former = calculations.run("tooling", {**HELD, "setting": "sprung"})["figures"]
    told = former["former_diameter"]["value"]
    assert RULES["former"].worked(sprung.design, sprung.acts) == pytest.approx(told, rel=1e-9)


def opened(share, metal_strength, design):
    """Ends so far apart that the ring sees that share of its strength."""
    d = design
    return brentq(
        lambda size: (
            spring.opening_stress(size, d.spring.gap_change, 80.0, 2.7, d.duty.modulus)
            - share * metal_strength
        ),
        d.spring.gap_change,
        60.0,
    )


@pytest.mark.parametrize(
    ("share", "rank", "outcome"),
    [
        (0.745, 0, GOOD), (0.755, 0, WATCH), (0.945, 0, WATCH), (0.955, 0, STOP),
        # No worse than what is worked: nothing against it.
        (0.945, 1, GOOD), (0.955, 1, STOP), (0.955, 2, GOOD),
    ],
)  # fmt: skip
def test_ends_pulled_apart_are_watched_from_three_quarters_of_the_strength(share, rank, outcome):
    """And stopped from 0.95 of it; grey ring iron bends at 350 N/mm2."""
    size = opened(share, 350.0, RING.design)
    acts = RING.acts._replace(opening=0.5 * size)
    ring = RING._replace(acts=acts, ranks={**RING.ranks, "sprung-on": rank})
    tried = thumb_rules._opened("8", size, ring)
    assert tried.outcome == outcome
    assert tried.figures["sprung_on_stress"].value == pytest.approx(350.0 * share, rel=1e-6)
    assert (tried.value.value, tried.limit.value) == (size, 0.5 * size)
    assert "of its strength" in tried.why and "%d %%" % int(100.0 * share + 0.5) in tried.why


def test_ends_pulled_too_little_apart_to_pass_are_watched():
    """Nobody measures them closer than a twentieth: 19 for 20 passes, less does not."""
    for size, outcome in ((19.005, GOOD), (18.995, WATCH)):
        ring = RING._replace(
            acts=RING.acts._replace(opening=20.0), ranks={**RING.ranks, "sprung-on": 2}
        )
        assert thumb_rules._opened("8", size, ring).outcome == outcome


def test_ends_that_stand_further_apart_see_nothing():
    """Ring whose own free ends stand further apart than eight thicknesses need no pull."""
    ring = RING._replace(acts=RING.acts._replace(opening=1.0))
    tried = thumb_rules._opened("8", 0.5 * RING.design.spring.gap_change, ring)
    assert tried.figures["sprung_on_stress"].value == pytest.approx(0.0, abs=1e-9)


def test_next_to_nothing_round_the_hot_piston_is_told():
    """Less than 0.05 mm, unless what is worked leaves no more itself."""
    assert thumb_rules._tight_piston(RING.design, 0.051, RING) is None
    found = thumb_rules._tight_piston(RING.design, 0.049, RING)
    assert found.outcome == WATCH
    assert (found.value.value, found.limit.value) == (0.049, 0.05)
    # Piston of 79.9: hot in a half-warm bore (95.24 degC) it has 80 (1 + 11.7e-6 x 75.24) less
    # 79.9 (1 + 11.7e-6 x 150.48) of its own.
    left = 80.0 * (1.0 + 11.7e-6 * 75.241) - 79.9 * (1.0 + 11.7e-6 * 150.482)
    tight = ring_of(piston_diameter=79.9)
    assert 0.0 < left < 0.05
    assert thumb_rules._tight_piston(tight.design, left + 1e-4, tight) is None
    assert thumb_rules._tight_piston(tight.design, left - 1e-4, tight) is not None


def tried(*outcomes):
    return [
        thumb_rules._at("at %d" % at, 1.0 + at, {}, outcome, "why %d." % at)
        for at, outcome in enumerate(outcomes)
    ]


@pytest.mark.parametrize(
    ("outcomes", "part", "told"),
    [
        # Holds in part: of the worst; where nothing serves: of the least bad; of like ones the
        # first.
        ((GOOD, WATCH, STOP), IN_PART, 2),
        ((GOOD, STOP, WATCH), IN_PART, 1),
        ((WATCH, WATCH, GOOD), IN_PART, 0),
        ((STOP, WATCH, STOP), NOT_HERE, 1),
        ((WATCH, STOP, WATCH), NOT_HERE, 0),
        ((STOP, STOP), NOT_HERE, 0),
    ],
)
def test_of_sizes_that_do_not_serve_one_is_told(outcomes, part, told):
    assert thumb_rules._blamed(tried(*outcomes), part).text == "at %d" % told


def test_numbers_between_are_their_ends_and_the_middle_one_tried():
    assert thumb_rules._between([3.3]) == 3.3
    assert thumb_rules._between([3.2, 2.9, 2.5]) == (2.5, 2.9, 3.2)
    assert thumb_rules._between([3.2, 3.1, 2.9, 2.5]) == (2.5, 2.9, 3.2)


def figure(value):
    return Figure(value, "mm", "s", "method", (), None, None)


def test_what_sizes_give_is_told_from_least_to_greatest():
    """Of those that could be worked; one of no figures is left out."""
    rule = RULES["end-gap"]
    rows = [
        thumb_rules._at("a", 1.0, {"closed_gap_hot": figure(0.31)}),
        thumb_rules._at("b", 2.0),
        thumb_rules._at("c", 3.0, {"closed_gap_hot": figure(0.12)}),
        thumb_rules._at("d", 4.0, {"closed_gap_hot": figure(0.25)}),
    ]
    ((name, one),) = thumb_rules._gives(rule, rows)
    assert name == "closed_gap_hot" and (one.low, one.value, one.high) == (0.12, 0.12, 0.31)
    said = thumb_rules._says(rule, [(name, one)])
    assert said.startswith("Started hot, 0.120 mm") and " to 0.310 mm" in said
    alike = Figure(0.2, "mm", "s", "method", (), 0.2, 0.2001)
    assert " to " not in thumb_rules._says(rule, [(name, alike)])
    assert thumb_rules._gives(rule, [thumb_rules._at("b", 2.0)]) == []
    # Of two the second.
    ((_, one),) = thumb_rules._gives(rule, [rows[0], rows[3]])
    assert one.value == 0.25
    # One size alone has no ends.
    ((_, one),) = thumb_rules._gives(
        RULES["piston-clearance"],
        [thumb_rules._at("a", 1.0, {"piston_clearance_hot": figure(0.07)})],
    )
    assert (one.low, one.high) == (None, None)


def test_multiples_are_told_as_the_trade_says_them():
    rows = [thumb_rules._at(text, 1.0) for text in ("1/28", "1/30", "1/32")]
    assert thumb_rules._words(RULES["section"], rows) == "1/28 to 1/32 of the bore"
    assert thumb_rules._words(RULES["section"], rows[:1]) == "1/28 of the bore"
    assert thumb_rules._words(RULES["side-clearance"], rows[1:]) == "1/30 to 1/32"


def judged(key, **more):
    answer = calculations.run("thumb-rules", {**HELD, **more})
    return next(row for row in answer["rules"] if row["rule"] == key), answer


def test_one_size_is_told_without_its_multiple_and_several_with():
    """Former 1.022 on a spread ring: what is said begins with what it would have been."""
    row, answer = judged("former", groove_width=None)
    said = next(one for one in answer["findings"] if one["check"] == "former-thumb-rule")
    assert row["why"].startswith("Sprung on a former and not spread: ")
    assert "At " not in row["why"]
    if row["verdict"] != "holds":
        assert said["remedy"] == "Set it spread by a spacer, as it is worked."
    row, _ = judged("width", groove_width=3.46)
    assert row["why"].startswith("At ") and row["verdict"] == "not here"


def test_rules_are_counted_as_they_come_out():
    answer = calculations.run("thumb-rules", HELD)
    verdicts = [row["verdict"] for row in answer["rules"]]
    figures = answer["figures"]
    assert figures["rules_held"]["value"] == verdicts.count("holds")
    assert figures["rules_not_held"]["value"] == verdicts.count("not here")
    some = sum(one.endswith(" only") for one in verdicts)
    assert figures["rules_held_in_part"]["value"] == some
    assert (HOLDS, IN_PART, NOT_HERE) == (0, 1, 2)


@pytest.fixture(scope="module")
def told():
    answer = calculations.run("thumb-rules", HELD)
    return {
        row["rule"]: (row, said)
        for row, said in zip(answer["rules"], answer["findings"], strict=True)
    }


@pytest.mark.parametrize(
    ("key", "low", "usual", "high"),
    [
        ("free-gap", 3.5 * 2.7, 3.75 * 2.7, 4 * 2.7),
        ("section", 80 / 32, 80 / 28, 80 / 25),
        ("end-gap", 0.16, 0.24, 0.32),
        ("width", 0.7 * 2.7, 0.85 * 2.7, 2.7),
        ("side-clearance", 0.0254, 0.0762, 0.1016),
    ],
)
def test_sizes_of_a_rule_on_this_ring(told, key, low, usual, high):
    size = told[key][0]["thumb_size"]
    assert (size["low"], size["value"], size["high"]) == pytest.approx((low, usual, high))


@pytest.mark.parametrize(
    ("key", "size"), [("former", 1.022 * 74.6), ("opening", 21.6), ("piston-clearance", 0.08)]
)
def test_a_rule_of_one_multiple_has_one_size(told, key, size):
    assert told[key][0]["thumb_size"]["value"] == pytest.approx(size)
    assert "low" not in told[key][0]["thumb_size"]


@pytest.mark.parametrize(
    ("key", "remedy"),
    [
        ("former", "Set it spread by a spacer, as it is worked."),
        ("free-gap", "Take what is worked, %(free)s."),
        ("section", "Take what is worked, 2.70 mm (0.106 in)."),
        ("section-and-gap", "Take what is worked, 2.70 mm (0.106 in) thick with a free gap of "
         "%(free)s."),
        ("end-gap", "Take what is worked, 0.310 mm (0.0122 in)."),
        ("width", "Take what is worked, 3.40 mm (0.134 in)."),
        ("side-clearance", "Take what is worked, 0.060 mm (0.0024 in)."),
        ("piston-clearance", "Take what is worked, 0.400 mm (0.0157 in)."),
    ],
)  # fmt: skip
def test_instead_of_a_rule_what_is_worked_is_taken(told, key, remedy):
    free = calculations.run("sizing", HELD)["figures"]["free_gap"]["value"]
    said = {"free": "%.2f mm (%.3f in)" % (free, free / 25.4)}
    assert told[key][1]["remedy"] == remedy % said


def test_only_the_former_is_judged_as_if_it_were_not_spread(told):
    assert [key for key in told if "not spread" in told[key][0]["why"]] == ["former"]
    several = ["free-gap", "section", "section-and-gap", "end-gap", "width", "side-clearance"]
    assert [key for key in told if told[key][0]["why"].startswith("At ")] == several


def test_what_is_told_of_heat_is_what_the_metals_leave(told):
    """Half warm the cylinder has 95.24 degC. A gap of 0.16 closes by pi 80 11.7e-6 x 75.24; a
    piston of 79.92 has 80 (1 + 11.7e-6 x 75.24) less 79.92 (1 + 11.7e-6 x 150.48) round it."""
    wall, steam = 11.7e-6 * 75.241, 11.7e-6 * 150.482
    row, said = told["end-gap"]
    assert "the ends butt" in row["why"] and row["why"].startswith("At 0.002 of the bore: ")
    left = math.pi * 80 * (1 + wall) - (math.pi * 80 - 0.16) * (1 + steam)
    assert said["value"]["value"] == pytest.approx(left, abs=1e-4)
    said = told["piston-clearance"][1]
    assert said["value"]["value"] == pytest.approx(80 * (1 + wall) - 79.92 * (1 + steam), abs=1e-4)
    assert "only 0.010 mm (0.0004 in) is left round the piston" in said["why"]
    # What is worked leaves enough: gap 0.31 and piston 79.6 are good.
    sized = calculations.run("sizing", HELD)["findings"]
    assert {row["check"]: row["outcome"] for row in sized}["end-gap"] == "good"


def test_the_first_of_the_worst_checks_decides_a_size():
    """Thickness 3.2: it breaks put on (stop), which comes before all that is but to be watched."""
    held = thumb_rules._held(HELD, RING.design)
    tried = thumb_rules._tried(RULES["section"], "1/25", 3.2, held, RING)
    assert tried.outcome == STOP and "break" in tried.why
    # Judged against a ring that is as bad in everything, nothing is the worse for it.
    bad = RING._replace(ranks=dict.fromkeys((*RING.ranks, "width", "groove-depth"), 2))
    again = thumb_rules._tried(RULES["section"], "1/25", 3.2, held, bad)
    assert again.outcome == GOOD and again.why == ""
    # A check that sizing did not make before counts as one that was good.
    bare = RING._replace(ranks={})
    assert thumb_rules._tried(RULES["section"], "a", 2.7, held, bare).outcome == WATCH
    assert thumb_rules._tried(RULES["section"], "a", 2.7, held, RING).outcome == GOOD
    # What cannot be made at all stops, in its own words.
    none = thumb_rules._tried(RULES["section"], "1/9000", 0.009, held, RING)
    assert none.outcome == STOP and none.why.endswith(".") and not none.figures
