"""What a survey advises, limit by limit.

From memory: a bore runs up to 0.002 of itself out of true, and is bored at 0.003; one group's
report bores at 1.524 mm (0.060 in) whatever the bore. Common practice, no source: a hone takes out
0.15 mm and cuts 0.02 beyond the largest place, a boring bar 0.25.
"""

from types import SimpleNamespace

import pytest

from core.test_bore_survey import bore, gauged, outcome, survey, two_point, value
from ringwright.core.measuring import survey_findings
from ringwright.core.records import STOP, WATCH

FOLLOWS, LEAKS = (0.32, 0.10), (0.20, 0.30)


def judged(out, bore_size=80.0, sealed_light=FOLLOWS, largest_bore=None, inch=False):
    """The Verdict of a bore that is so much out of true, about its size."""
    seen = SimpleNamespace(
        barrel=SimpleNamespace(diameter=bore_size),
        largest=bore_size + 0.5 * out,
        smallest=bore_size - 0.5 * out,
        size=bore_size,
    )
    sealed, light = sealed_light
    trial = SimpleNamespace(
        worst=SimpleNamespace(sealed_share=sealed, widest_light=light),
        in_round=SimpleNamespace(sealed_share=0.32, widest_light=0.10),
    )
    return seen, survey_findings.verdict(seen, trial, largest_bore, inch)


@pytest.mark.parametrize(
    ("out", "bore_size", "sealed_light", "word"),
    [
        # 0.002 of 80 mm is 0.16; of 300 mm 0.6.
        (0.159, 80.0, FOLLOWS, "run"),
        (0.161, 80.0, FOLLOWS, "bore-out"),
        (0.599, 300.0, FOLLOWS, "run"),
        (0.601, 300.0, FOLLOWS, "bore-out"),
        # 0.002 of 60 mm is 0.12: a little more than that a hone still takes out.
        (0.121, 60.0, FOLLOWS, "hone"),
        # A ring that does not follow: up to 0.15 mm a hone.
        (0.149, 80.0, LEAKS, "hone"),
        (0.151, 80.0, LEAKS, "bore-out"),
    ],
)
def test_run_hone_or_bore_out(out, bore_size, sealed_light, word):
    _, found = judged(out, bore_size, sealed_light)
    assert found.word == word
    assert found.follows is (sealed_light is FOLLOWS)
    assert found.out_of_true == pytest.approx(out)


def test_how_much_is_taken_out():
    """Honed to the largest place and 0.02; bored 0.25 beyond it, to the next tenth, or to the next
    five thousandths of an inch: 80.1 + 0.25 = 80.35 is 80.4, and 3.1634 in is 3.165."""
    _, hone = judged(0.14, sealed_light=LEAKS)
    assert (hone.clean_up, hone.ring_diameter) == pytest.approx((80.09, 80.09))
    _, metric = judged(0.2)
    assert (metric.clean_up, metric.ring_diameter) == pytest.approx((80.4, 80.4))
    _, inch = judged(0.2, inch=True)
    assert inch.clean_up == pytest.approx(3.165 * 25.4)
    _, runs = judged(0.1)
    assert (runs.clean_up, runs.ring_diameter) == (None, 80.0)


@pytest.mark.parametrize(
    ("out", "wall", "word"),
    [
        # Honed to 80.09: as far as the wall allows, else past it no boring does either.
        (0.14, 80.091, "hone"),
        (0.14, 80.089, "sleeve"),
        # Bored to 80.4.
        (0.2, 80.401, "bore-out"),
        (0.2, 80.399, "sleeve"),
    ],
)
def test_a_cylinder_is_sleeved_where_its_wall_leaves_nothing_to_bore(out, wall, word):
    _, found = judged(out, sealed_light=LEAKS, largest_bore=wall)
    assert found.word == word
    assert found.follows is False
    if word == "sleeve":
        assert found.clean_up is None
        assert found.ring_diameter == 80.0


@pytest.mark.parametrize(
    ("out", "bore_size", "grave"),
    [(0.239, 80.0, False), (0.241, 80.0, True), (1.52, 600.0, False), (1.53, 600.0, True)],
)
def test_beyond_three_thousandths_or_the_locomotives_limit_it_stops(out, bore_size, grave):
    seen, found = judged(out, bore_size)
    row = survey_findings._verdict_row(seen, found)
    assert found.word == "bore-out"
    assert row.outcome == (STOP if grave else WATCH)
    assert row.limit.value == pytest.approx(0.002 * bore_size)


def test_two_heights_are_enough_to_judge_how_the_gap_breathes():
    readings = gauged(bore(), heights=(0.0, 100.0), taper=0.1)
    assert outcome(survey(readings), "gap-breathes") is not None
    one = gauged(bore(), heights=(0.0,))
    assert outcome(survey(one), "gap-breathes") is None


@pytest.mark.parametrize(
    ("left", "said"),
    [(-0.002, "the ends butt"), (0.002, "only 0.002 mm"), (0.008, "only 0.008 mm")],
)
def test_ends_butt_where_nothing_is_left_and_not_before(left, said):
    """Ask for a gap, see what is left in the tightest place, ask for so much less."""
    readings = gauged(bore(), taper=0.1)
    first = survey(readings, closed_gap=0.6, ring_type="plain")
    row = next(row for row in first["findings"] if row["check"] == "gap-breathes")
    asked = 0.6 - row["value"]["value"] + left
    # A gap grows with the ring, by a few thousandths: twice is near enough.
    for _ in range(3):
        again = survey(readings, closed_gap=asked, ring_type="plain")
        row = next(row for row in again["findings"] if row["check"] == "gap-breathes")
        asked += left - row["value"]["value"]
    assert said in row["why"]


@pytest.mark.parametrize(("error", "said"), [(0.013, None), (0.016, "watch")])
def test_a_gauge_too_coarse_for_the_limit_is_said(error, said):
    """80 mm and 0.14 out of true: 0.02 below the limit, and two readings doubt it by sqrt 2 of
    one: 0.0184 for 0.013, 0.0226 for 0.016."""
    answer = survey(gauged(bore(oval=(0.035, 20.0))), gauge_uncertainty=error)
    assert value(answer, "largest_diameter") - value(answer, "smallest_diameter") == pytest.approx(
        0.14, abs=1e-9
    )
    assert answer["verdict"] in ("run", "hone")
    assert outcome(answer, "gauge-in-doubt") == said


@pytest.mark.parametrize(("step", "said"), [(0.014, None), (0.016, "watch")])
def test_readings_that_no_oval_explains_are_said(step, said):
    """Four directions at one height, one lobe of the fourth order: it reads up, down, up, down by
    as much, and is left whole. Said from one and a half times the gauge's error, 0.01."""
    r = bore(four=(0.5 * step, 0.0))
    assert two_point(r, 0.0) - 80.0 == pytest.approx(step)
    answer = survey(gauged(r, (10.0,)), gauge_uncertainty=0.01)
    assert value(answer, "misfit") == pytest.approx(step, rel=1e-9)
    assert outcome(answer, "readings-disagree") == said
