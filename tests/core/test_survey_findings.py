"""What a survey says of a bore, at each of its limits and on either side, by hand figures.

Common practice, no source: a ring follows while the bore costs a hundredth of its seal, or 0.02 mm
of light; readings that no oval explains are said beyond one and a half times the gauge's error.
The gap: thermal expansion, iron in iron, ring and piston at 170 C and the wall half warm at 95.
"""

import math
from types import SimpleNamespace as Record

import pytest

from ringwright.core.measuring import survey_findings
from ringwright.core.measuring.survey_findings import Seen, Trial, Verdict

IRON = 11e-6
ALUMINIUM = 23e-6


def seen(**more):
    """Two heights of a bore, 0.06 mm smaller and 0.04 larger than what a ring is made to."""
    usual = {
        "sections": [Record(misfit=0.0), Record(misfit=0.0)],
        "barrel": Record(diameter=80.02),
        "worst": Record(ovality=0.03, aligned=False),
        "uncertainty": 0.004,
        "largest": 80.07,
        "smallest": 79.93,
        "tight": 79.95,
        "slack": 80.05,
        "size": 80.01,
    }
    return Seen(**{**usual, **more})


def trial(sealed=0.95, light=0.01, sealed_round=0.955, light_round=0.005):
    return Trial(
        worst=Record(sealed_share=sealed, widest_light=light),
        in_round=Record(sealed_share=sealed_round, widest_light=light_round),
        needed=0.031,
        direction=45.0,
    )


@pytest.mark.parametrize(
    ("sealed_round", "light", "follows"),
    [
        # A hundredth of the seal is lost, and whatever the light: it beds in.
        (0.0100, 0.3, True),
        (0.01005, 0.3, False),
        # 0.02 mm of light is gained, and whatever the seal.
        (0.5, 0.0200, True),
        (0.5, 0.0201, False),
    ],
)
def test_a_ring_follows_up_to_a_hundredth_of_seal_or_two_hundredths_of_light(
    sealed_round, light, follows
):
    found = survey_findings.verdict(seen(), trial(0.0, light, sealed_round, 0.0), None)
    assert found.follows is follows
    # 0.14 mm out of true, below 0.16: run, or else honed.
    assert found.word == ("run" if follows else "hone")


@pytest.mark.parametrize(
    ("sealed", "light", "sealed_round", "light_round", "follows"),
    [
        # 0.005 of the seal, 0.015 of light: what it loses in a round bore as well is not counted.
        (0.895, 0.300, 0.900, 0.010, True),
        (0.500, 0.035, 0.900, 0.020, True),
        (0.500, 0.300, 0.900, 0.270, False),
    ],
)
def test_what_a_ring_leaves_in_a_round_bore_is_not_held_against_this_one(
    sealed, light, sealed_round, light_round, follows
):
    tried = trial(sealed, light, sealed_round, light_round)
    assert survey_findings.verdict(seen(), tried, None).follows is follows


def test_boring_takes_a_quarter_of_a_millimetre_beyond_the_largest_place():
    """80.15 and 0.25 is 80.4 to the tenth, 80.16 and 0.25 the next."""
    for largest, bored in ((80.15, 80.4), (80.16, 80.5)):
        found = survey_findings.verdict(seen(largest=largest), trial(0.0, 0.3), None)
        assert (found.word, found.clean_up) == ("bore-out", pytest.approx(bored))


@pytest.mark.parametrize(
    ("out", "bore", "word"), [(0.16, 80.0, "run"), (0.15, 40.0, "hone"), (0.1501, 40.0, "bore-out")]
)
def test_at_its_very_limit_a_bore_is_within_it(out, bore, word):
    one = seen(barrel=Record(diameter=bore), largest=out, smallest=0.0)
    assert survey_findings.verdict(one, trial(), None).word == word


def test_a_wall_that_allows_just_that_size_allows_it():
    hone = survey_findings.verdict(seen(), trial(0.0, 0.3), None)
    assert (hone.word, hone.clean_up) == ("hone", pytest.approx(80.09))
    assert survey_findings.verdict(seen(), trial(0.0, 0.3), hone.clean_up) == hone
    wide = seen(largest=80.13)
    bored = survey_findings.verdict(wide, trial(0.0, 0.3), None)
    assert (bored.word, bored.clean_up) == ("bore-out", pytest.approx(80.4))
    assert survey_findings.verdict(wide, trial(0.0, 0.3), bored.clean_up) == bored
    assert survey_findings.verdict(wide, trial(0.0, 0.3), bored.clean_up - 1e-6).word == "sleeve"


@pytest.mark.parametrize(
    ("out", "bore", "outcome"),
    [(0.24, 80.0, "watch"), (0.2401, 80.0, "stop"), (1.524, 700.0, "watch"), (1.53, 700.0, "stop")],
)
def test_three_thousandths_and_the_locomotive_s_limit_may_be_reached(out, bore, outcome):
    judged = Verdict("bore-out", out, True, 80.6, 80.6)
    row = survey_findings._verdict_row(seen(barrel=Record(diameter=bore)), judged)
    assert row.outcome == outcome
    assert row.limit.value == pytest.approx(bore / 500.0)


def follow_row(follows, light, sealed=0.8):
    design = Record(spring=Record(wall_pressure=0.047), section=Record(thickness=2.6))
    rows = []
    judged = Verdict("hone", 0.14, follows, 80.1, 80.1)
    survey_findings._follow_row(rows, design, trial(sealed, light), judged)
    (row,) = rows
    return row


@pytest.mark.parametrize(("light", "outcome"), [(0.25, "watch"), (0.2501, "stop"), (0.03, "watch")])
def test_a_ring_that_does_not_follow_is_stopped_past_a_quarter_of_a_millimetre(light, outcome):
    row = follow_row(False, light)
    assert row.outcome == outcome
    assert "gap at 45 degrees" in row.why
    assert "light of %.3f mm" % light in row.why
    assert "seals 80 % of the way round" in row.why


def test_what_it_presses_with_and_what_it_needs_is_told_either_way():
    for follows in (True, False):
        row = follow_row(follows, 0.1)
        assert (row.value.value, row.limit.value) == (0.047, 0.031)
        assert "needs 0.031 N/mm2 (4.5 psi) and has 0.047 N/mm2" in row.why
    assert follow_row(True, 0.1).outcome == "good"


def ring(closed_gap, turns=1, cylinder=IRON, wall=95.0):
    """A Design as far as a gap goes, drawn for a bore of 80.01 mm."""
    duty = Record(
        bore=80.01,
        closed_gap=closed_gap,
        turns=turns,
        ring_material=Record(expansion=IRON),
        cylinder=Record(expansion=cylinder),
        temperature=170.0,
        shop=20.0,
        wall_temperature=wall,
        warming_wall_temperature=95.0,
    )
    return Record(duty=duty)


RING_GROWS = 1.0 + IRON * 150.0


def hot(gap, bore, wall=95.0, cylinder=IRON):
    """Circumference of the wall, hot, less the metal of the ring, hot."""
    return math.pi * bore * (1.0 + cylinder * (wall - 20.0)) - (math.pi * bore - gap) * RING_GROWS


def cold(left, bore, wall=95.0):
    """The cold gap of which so much is left."""
    return math.pi * bore - (math.pi * bore * (1.0 + IRON * (wall - 20.0)) - left) / RING_GROWS


def test_the_gap_for_a_bore_leaves_the_usual_one_where_it_is_tightest():
    """0.0005 of 79.95 mm is left there, hot; at 80.01 it is pi 0.06 mm more."""
    usual = cold(0.0005 * 79.95, 79.95)
    found = survey_findings.gap_for(seen(), ring(0.5))
    assert found == pytest.approx(usual + math.pi * 0.06, rel=1e-9)
    # An aluminium cylinder outgrows the ring: the ends still have to clear in the shop.
    other = survey_findings.gap_for(seen(), ring(0.5, cylinder=ALUMINIUM))
    assert other == pytest.approx(0.0005 * 79.95 + math.pi * 0.06, rel=1e-9)


def breathes(closed_gap, asked=True, turns=1, wall=95.0, **more):
    found = survey_findings.breathing(seen(**more), ring(closed_gap, turns, wall=wall), asked)
    return {row.check: row for row in found}


@pytest.mark.parametrize("turns", [1, 2])
def test_a_gap_that_serves_along_the_whole_stroke(turns):
    """0.6 mm at 80.01 is 0.6 - 0.06 pi at 79.95."""
    row = breathes(0.6, turns=turns)["gap-breathes"]
    assert row.outcome == "good"
    assert not row.remedy
    assert row.value.value == pytest.approx(hot(0.6 - 0.06 * math.pi, 79.95), abs=1e-9)
    assert row.limit.value == pytest.approx(0.0005 * 79.95)
    # pi times 0.1 mm of taper.
    assert "by 0.314 mm" in row.why
    assert "closed gap of 0.600 mm" in row.why
    assert "%.3f mm" % row.value.value in row.why


@pytest.mark.parametrize(
    ("left", "outcome", "words"),
    [
        (-0.001, "stop", "the ends butt"),
        (0.001, "watch", "only 0.001 mm"),
        # Short of 0.0005 of the bore, 0.0400, by 0.005 mm no feeler tells.
        (0.0349, "watch", "only 0.035 mm"),
        (0.0351, "good", "is left in the tightest place"),
    ],
)
def test_the_tight_end_is_judged_by_what_is_left_there(left, outcome, words):
    gap = cold(left, 79.95) + 0.06 * math.pi
    row = breathes(gap)["gap-breathes"]
    assert row.outcome == outcome
    assert row.value.value == pytest.approx(left, abs=1e-9)
    assert words in row.why
    if outcome != "good":
        (given,) = row.apply
        least = cold(0.0005 * 79.95, 79.95) + 0.06 * math.pi
        assert least <= given.value < least + 0.001
        assert "closed gap of %.3f mm" % given.value in row.remedy


@pytest.mark.parametrize(
    ("share", "outcome"), [(0.0079, None), (0.0081, "watch"), (0.0119, "watch"), (0.0121, "stop")]
)
def test_the_slack_end_is_judged_by_what_is_left_there(share, outcome):
    """Of a plain ring, hot, 0.008 of the bore is wide and 0.012 past use; the gap in the widest
    place is pi 0.04 mm more than at 80.01."""
    gap = cold(share * 80.05, 80.05) - 0.04 * math.pi
    row = breathes(gap).get("gap-breathes-wide")
    assert (row and row.outcome) == outcome
    assert "gap-breathes-wide" not in breathes(gap, turns=2)
    if row:
        assert row.value.value == pytest.approx(share * 80.05, abs=1e-9)
        assert row.limit.value == pytest.approx(0.008 * 80.05)
        assert "%.3f mm" % row.value.value in row.why
        assert "gap-breathes" not in breathes(gap)
        (given,) = row.apply
        assert given.value == pytest.approx(cold(0.0005 * 79.95, 79.95) + 0.06 * math.pi, abs=1e-3)


@pytest.mark.parametrize(("beyond", "clears"), [(-0.002, True), (0.002, False)])
def test_a_gap_is_offered_where_it_clears_the_other_end_as_well(beyond, clears):
    """The gap that serves at the tight end is pi taper wider at the slack one: up to 0.008 of that
    bore, hot."""
    tight = 79.95
    serves = cold(0.0005 * tight, tight)
    slack = tight
    for _ in range(50):
        slack = tight + (cold(0.008 * slack, slack) - serves) / math.pi
    slack += beyond
    found = survey_findings.breathing(seen(slack=slack), ring(2.0), True)
    row = {one.check: one for one in found}["gap-breathes-wide"]
    assert bool(row.apply) is clears
    assert ("True the bore" in row.remedy) is not clears


@pytest.mark.parametrize(("tight", "butts"), [(79.9974, False), (79.9971, True)])
@pytest.mark.parametrize("asked", [True, False])
def test_that_the_usual_gap_would_butt_is_told_unless_a_gap_was_asked_for(tight, butts, asked):
    """The usual gap leaves 0.040005 mm at 80.01, hot. Where the bore is x smaller, pi x times the
    wall's growth, 1.000825, is gone: all from x = 0.01272 on, at 79.99728."""
    row = breathes(0.6, asked, tight=tight)["gap-breathes"]
    told = butts and not asked
    assert row.outcome == ("watch" if told else "good")
    assert ("usual gap for a bore this size would butt" in row.why) is told
    assert bool(row.apply) is told


def test_one_height_breathes_nothing():
    assert breathes(0.6, sections=[Record(misfit=0.0)]) == {}
    assert breathes(0.6, sections=[Record(misfit=0.0)] * 2) != {}


def gauge_rows(judged=None, **more):
    rows = []
    judged = judged or Verdict("run", 0.05, True, None, 80.0)
    survey_findings._gauge_rows(rows, seen(**more), judged)
    return {row.check: row for row in rows}


@pytest.mark.parametrize(("word", "said"), [("run", True), ("hone", True), ("bore-out", False)])
@pytest.mark.parametrize("out", [0.155, 0.165])
def test_a_gauge_s_doubt_counts_both_sides_of_the_limit_where_it_can_change_the_word(
    word, said, out
):
    """80 mm: 0.16 allowed. Two readings of 0.004 mm doubt it by 0.00566; 0.0034 each by 0.0048."""
    judged = Verdict(word, out, True, None, 80.0)
    bore = Record(diameter=80.0)
    row = gauge_rows(judged, barrel=bore).get("gauge-in-doubt")
    assert (row is not None) is said
    if row:
        assert row.value.value == pytest.approx(0.004 * 2**0.5)
        assert row.limit.value == pytest.approx(0.005)
    assert "gauge-in-doubt" not in gauge_rows(judged, barrel=bore, uncertainty=0.0034)


@pytest.mark.parametrize(
    ("error", "misfit", "said"),
    [(0.004, 0.00603, True), (0.004, 0.006, False), (0.0, 0.003, False), (0.008, 0.0125, True)],
)
def test_readings_that_disagree_by_half_as_much_again_as_the_gauge_s_error(error, misfit, said):
    """The worst of the heights counts; a gauge said to be without error is not argued with."""
    sections = [Record(misfit=0.001), Record(misfit=misfit), Record(misfit=0.002)]
    row = gauge_rows(sections=sections, uncertainty=error).get("readings-disagree")
    assert (row is not None) is said
    if row:
        assert (row.value.value, row.limit.value) == (misfit, error)


def test_what_the_readings_cannot_show_is_said():
    assert set(gauge_rows()) == set()
    unseen = gauge_rows(worst=Record(ovality=None, aligned=False))
    assert set(unseen) == {"ovality-unseen"}
    assert set(gauge_rows(worst=Record(ovality=0.02, aligned=True))) == {"two-directions"}
