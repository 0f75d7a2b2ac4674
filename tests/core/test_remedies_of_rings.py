"""What is tried for a ring that is not good: to which size, in which order, and how it is said."""

import math
from collections import OrderedDict
from types import SimpleNamespace as Record

import pytest

from ringwright.core.problems import CoreProblem
from ringwright.core.records import finding
from ringwright.core.ring import judging, remedies, ring_remedies
from ringwright.core.ring.design import settle

FIELDS = ring_remedies.FIELDS
PLAIN = settle({"bore": 80.0, "ring_type": "plain", "radial_thickness": 2.6, "ring_width": 3.9})[0]
DOUBLE = settle({"bore": 80.0, "radial_thickness": 2.6, "ring_width": 5.0, "slit_width": 0.9})[0]


def row(check, outcome="watch", value=None):
    return finding(check, outcome, "why", "Mend it.", value and Record(value=value))


def tried(rows, options, judge, values=None):
    return remedies.tried(
        values or {"bore": 80.0},
        rows,
        options,
        judge,
        FIELDS,
        lambda name, value, settled: "%s to %s" % (name, value),
    )


def gap(size):
    return OrderedDict([("closed_gap", size)])


def test_the_first_change_that_clears_it_and_stops_nothing_more():
    asked = []

    def judge(values):
        asked.append(values["closed_gap"])
        if values["closed_gap"] < 0.2:
            raise CoreProblem("cannot be worked")
        left = {0.2: [row("end-gap")], 0.3: [row("other", "stop")], 0.4: [row("other")]}
        return left[values["closed_gap"]], None

    def options(each):
        return [gap(size) for size in (-0.1, 30.1, 0.1, 0.2, 0.3, 0.4, 0.5)]

    (told,) = tried([row("end-gap")], options, judge)
    # Beyond its bounds, 0 to 30 mm, nothing is tried; nor after one that clears.
    assert asked == [0.1, 0.2, 0.3, 0.4]
    assert told.remedy == "Closed_gap to 0.4."
    (choice,) = told.apply
    assert (choice.input, choice.value, choice.unit) == ("closed_gap", 0.4, "mm")
    assert choice.why == "clears it"
    # What stopped before may go on stopping; each change is tried once.
    asked.clear()
    rows = [row("end-gap"), row("other", "stop"), row("end-gap")]
    told = tried(rows, lambda each: options(each)[:5] if each.check == "end-gap" else None, judge)
    assert [each.remedy for each in told] == [
        "Closed_gap to 0.3.",
        "Mend it.",
        "Closed_gap to 0.3.",
    ]
    assert asked == [0.1, 0.2, 0.3]


def test_bounds_themselves_are_tried_and_what_is_given_is_not():
    asked = []

    def judge(values):
        asked.append(values.get("closed_gap"))
        return [row("end-gap")], None

    def options(each):
        return [gap(0.0), gap(30.0), gap(0.7), gap(None), OrderedDict([("stroke", 3.0)])]

    (told,) = tried([row("end-gap")], options, judge, {"closed_gap": 0.7})
    assert asked == [0.0, 30.0, None]
    assert told.remedy == remedies.NOT_CLEARED + "mend it."
    assert told.apply == ()
    good = finding("end-gap", "good", "why")
    assert tried([good], options, judge) == [good]
    assert len(asked) == 3
    # Left out already: no change.
    tried([row("end-gap")], lambda each: [gap(None)], judge, {"bore": 80.0})
    assert len(asked) == 3


def options(check, d=PLAIN, values=None, value=None):
    found = ring_remedies._options(row(check, value=value), values or {}, d)
    return found and [dict(each) for each in found]


def first(check, d=PLAIN, **more):
    """The changes of its own, before what was asked for is given up."""
    return options(check, d, **more)


def spring(d, pressure, expander=0.0):
    return d._replace(spring=d.spring._replace(wall_pressure=pressure), expander_pressure=expander)


@pytest.mark.parametrize(
    ("own", "adds"),
    # 0.048 of practice less its own, up to a thousandth; no spring adds less than that.
    [(0.0302, 0.018), (0.0298, 0.019), (0.0476, 0.001), (0.0102, 0.038)],
)
def test_a_slack_ring_is_backed_by_what_it_lacks(own, adds):
    found = first("too-slack", spring(PLAIN, own))
    assert found[0]["wall_pressure"] == pytest.approx(0.048)
    assert found[2] == {"expander_pressure": pytest.approx(adds, rel=1e-9)}


@pytest.mark.parametrize(
    ("own", "expander", "changed"),
    [(0.0302, 0.1, 0.018), (0.05, 0.1, None), (0.0472, 0.1, 0.001), (0.0102, 0.1, 0.038)],
)
def test_a_stiff_ring_gets_a_weaker_expander_or_none(own, expander, changed):
    found = first("too-stiff", spring(PLAIN, own, expander))
    expected = changed if changed is None else pytest.approx(changed, rel=1e-9)
    assert found[0] == {"expander_pressure": expected}
    assert "wall_pressure" in first("too-stiff", spring(PLAIN, own))[0]


def test_a_finer_saw_is_of_twice_the_gap_or_half_the_saw():
    allow = PLAIN.allowances._replace(kerf=1.6)
    for closed, saw in ((0.31, 0.8), (0.4603, 0.92)):
        d = PLAIN._replace(allowances=allow, duty=PLAIN.duty._replace(closed_gap=closed))
        assert first("sawn-open", d)[3] == {"end_kerf": saw}


def test_a_slit_half_as_wide_grips():
    assert first("grip", DOUBLE)[3] == {"slit_width": 0.45}


def test_a_turn_half_as_wide_again_as_thick():
    """1.5 * 2.6 is 3.9 mm, of two turns 7.8."""
    assert first("width", PLAIN)[0] == {"ring_width": pytest.approx(3.9, abs=0.011)}
    assert first("width", DOUBLE)[0] == {"ring_width": pytest.approx(7.8, abs=0.011)}


def test_metals_that_stand_the_heat():
    keys = [
        each["ring_material"]
        for each in first("ring-heat", PLAIN._replace(duty=PLAIN.duty._replace(temperature=260.0)))
    ]
    stands = ring_remedies.material
    assert all(stands(key).hottest >= 260.0 for key in keys)
    hottest = stands("phosphor-bronze").hottest
    d = PLAIN._replace(duty=PLAIN.duty._replace(temperature=hottest))
    assert "phosphor-bronze" in [each["ring_material"] for each in first("ring-heat", d)]
    d = PLAIN._replace(duty=PLAIN.duty._replace(temperature=hottest + 0.1))
    assert "phosphor-bronze" not in [each["ring_material"] for each in first("ring-heat", d)]
    # Each again with a spring behind it.
    found = first("pairing")
    half = len(found) // 2
    assert [each["ring_material"] for each in found[:half]] == [
        each["ring_material"] for each in found[half:]
    ]
    assert all(each["expander_pressure"] == pytest.approx(0.048) for each in found[half:])
    metals = [each["piston_material"] for each in first("piston-metal")]
    assert metals and "aluminium" not in metals


def test_gaps_and_pistons_to_the_size_that_clears_them():
    d = PLAIN._replace(duty=PLAIN.duty._replace(closed_gap=0.05))
    need = judging.judge_gap(d, 0.05).need
    assert first("end-gap", d)[0] == {"closed_gap": math.ceil(need * 1000.0) / 1000.0}
    cold = judging.gap_left(d, 0.05, d.duty.shop)
    found = first("cold-start", d._replace(duty=d.duty._replace(turns=2)))
    assert found == [{"closed_gap": math.ceil((0.05 - cold) * 1000.0) / 1000.0}]
    assert options("cold-start", d) is None
    small = 80.0 - judging.least_piston_clearance(d)
    assert first("piston-seizes", d)[0] == {"piston_diameter": math.floor(small * 100.0) / 100.0}
    # 2.6 mm and 0.4.
    assert first("groove-depth")[0] == {"groove_depth": 3.0}


def test_sides_are_opened_or_filled_to_a_quarter_of_practice():
    """In an 80 mm bore 0.0284 to 0.0823 mm, a quarter up 0.0419."""
    least, most = 0.0254 * 1.12, 0.0762 + 0.12 * 0.0508
    aim = least + 0.25 * (most - least)
    d = PLAIN._replace(groove_width=3.91)
    short = first("side-clearance", d, value=0.01)
    opened = math.ceil((3.91 + aim - 0.01) * 100.0) / 100.0
    assert short[0] == {
        "groove_width": opened,
        "ring_width": 3.9,
        "measured_groove_width": None,
    }
    # A quarter and no more: 3.91 + 0.0419 - 0.0220 is 3.92995, and a hundredth up 3.93.
    just = first("side-clearance", d, value=aim - 0.02 + 5e-5)
    assert just[0]["groove_width"] == pytest.approx(3.93, abs=1e-9)
    narrowed = math.floor((3.9 - aim + 0.01) * 100.0) / 100.0
    assert short[2] == {"ring_width": narrowed}
    slack = first("side-clearance", d, value=0.3)
    assert slack[0] == {"ring_width": None}
    assert slack[2] == {"ring_width": math.floor((3.9 + 0.3 - aim) * 100.0) / 100.0}
    # Just the least of practice is not short.
    limits = ring_remedies.clearances.running_side_clearance(80.0)
    assert first("side-clearance", d, value=limits[1])[0] == {"ring_width": None}


def test_what_was_asked_for_is_given_up_bit_by_bit():
    values = {"radial_thickness": 2.6, "free_gap": 9.0, "ring_width": 4.0, "groove_width": 4.1}
    found = options("closed-stress", values=values)
    assert [sorted(each) for each in found[:7]] == [
        ["radial_thickness"],
        ["free_gap"],
        ["free_gap", "radial_thickness"],
        ["groove_width", "ring_width"],
        ["groove_width", "radial_thickness", "ring_width"],
        ["free_gap", "groove_width", "ring_width"],
        ["free_gap", "groove_width", "radial_thickness", "ring_width"],
    ]
    assert all(value is None for each in found[:7] for value in each.values())
    # Then four other metals, each alone and with all of that given up.
    assert [len(each) for each in found[7:]] == [1, 5] * 4
    assert len(options("closed-stress")) == 4
    assert options("nothing-of-this-name") is None
    assert options("wound-on-in-haste") is None


@pytest.mark.parametrize(
    ("name", "value", "said"),
    [
        ("closed_gap", 0.41, "give a closed gap of at least 0.410 mm (0.0161 in)"),
        ("wall_pressure", 0.048, "ask for a wall pressure of 0.048 N/mm2 (7.0 psi)"),
        ("ring_material", "phosphor-bronze", "make the ring of "),
        ("piston_material", "steel", "make the piston of mild steel"),
        ("radial_thickness", None, "leave the thickness out, so that 2.60 mm (0.102 in) is taken"),
        ("end_cut", "square", "take square as end cut"),
        ("relief", None, "leave the relief out"),
        ("slit_width", None, "leave the slit width out"),
    ],
)
def test_changes_in_words(name, value, said):
    found = ring_remedies._words(name, value, PLAIN)
    assert found.startswith(said)


@pytest.mark.parametrize(
    ("name", "value", "unit", "why"),
    [
        ("rings", 3, "1", "clears it"),
        ("ring_material", "gunmetal", "", "clears it"),
        ("closed_gap", None, "mm", remedies.LEFT_OUT),
    ],
)
def test_a_change_is_told_in_the_unit_of_its_input(name, value, unit, why):
    (found,) = remedies.applied(remedies.change((name, value)), FIELDS)
    assert tuple(found) == (name, value, unit, why)
