"""What to do with a worn bore: run it, hone it, bore it out, sleeve it, and why."""

import math
from collections import namedtuple

from .. import clearances
from ..records import GOOD, STOP, WATCH, Choice, Method, Quantity, finding
from ..ring.judging import WIDE_GAP, judge_gap, judge_light
from ..shop_sizes import up
from ..wording import angle, fine_length, length, percent, wall_pressure

RUN = "run"
HONE = "hone"
BORE_OUT = "bore-out"
SLEEVE = "sleeve"

# Out of true over the bore: judged, between 0.001 of it (a book on compressors, metal rings; 0.002
# for plastic ones) and what locomotives are run to.
RUN_SHARE = 0.002
BORE_SHARE = 0.003
# Whatever the bore: 0.060 in of taper or out of round on a full-size locomotive (one group's
# report).
BORE_ALWAYS = 1.524
# What a hone takes out on the diameter before it loses its way; common practice, no source.
MOST_HONED = 0.15
# Left for the last cut of boring, on the diameter; common practice, no source.
BORING_CUT = 0.25
HONING_CUT = 0.02
# A ring follows the bore while its shape costs no more than this share of the seal, or opens no
# more light than bedding-in soon takes out; common practice, no source.
SEAL_LOST = 0.01
LIGHT_GAINED = 0.02

# sections, barrel, worst (the worst Section), uncertainty [mm], largest and smallest diameter
# [mm]; tight, slack: smallest and largest mean diameter, where a ring's gap is least and most;
# size: half-way between the two [mm].
Seen = namedtuple(
    "Seen",
    ("sections", "barrel", "worst", "uncertainty", "largest", "smallest", "tight", "slack", "size"),
)
# worst, in_round: wall_contact.Bearing in the worst section and in a round bore. needed: first-
# order pressure to follow [MPa]. direction: of the gap when it is worst [deg].
Trial = namedtuple("Trial", ("worst", "in_round", "needed", "direction"))
# word: one of the four. out_of_true [mm]. follows: whether the ring does. clean_up: diameter after
# honing or boring [mm], None when run. ring_diameter: to make rings to [mm].
Verdict = namedtuple("Verdict", ("word", "out_of_true", "follows", "clean_up", "ring_diameter"))


def verdict(seen, trial, largest_bore, inch=False):
    """The Verdict on a bore.

    seen: Seen. trial: Trial. largest_bore: the largest that the cylinder's wall allows [mm], or
    None. inch: True to bore by 0.005 in, else by 0.1 mm. Run when no more out of true than 0.002 of
    the bore and the ring follows it; else hone when that is little enough to hone; else bore out;
    sleeve where there is no wall left to bore.
    """
    bore = seen.barrel.diameter
    off = seen.largest - seen.smallest
    lost = trial.in_round.sealed_share - trial.worst.sealed_share
    gained = trial.worst.widest_light - trial.in_round.widest_light
    follows = lost <= SEAL_LOST or gained <= LIGHT_GAINED
    if follows and off <= RUN_SHARE * bore:
        return Verdict(
            word=RUN, out_of_true=off, follows=True, clean_up=None, ring_diameter=seen.size
        )
    honed = seen.largest + HONING_CUT
    bored = up(seen.largest + BORING_CUT, 0.1, 0.005, inch)
    if off <= MOST_HONED and (largest_bore is None or honed <= largest_bore):
        return Verdict(
            word=HONE, out_of_true=off, follows=follows, clean_up=honed, ring_diameter=honed
        )
    if largest_bore is not None and bored > largest_bore:
        return Verdict(
            word=SLEEVE, out_of_true=off, follows=follows, clean_up=None, ring_diameter=seen.size
        )
    return Verdict(
        word=BORE_OUT, out_of_true=off, follows=follows, clean_up=bored, ring_diameter=bored
    )


def findings(seen, design, trial, judged, asked):
    """List of Finding: the verdict first, then what it rests on.

    seen: Seen. design: design.Design of the ring tried. trial: Trial. judged: Verdict. asked:
    whether the caller gave the closed gap.
    """
    rows = [_verdict_row(seen, judged)]
    _follow_row(rows, design, trial, judged)
    if judged.word == RUN:
        rows.extend(breathing(seen, design, asked))
    _gauge_rows(rows, seen, judged)
    return rows


def _verdict_row(seen, judged):
    bore = seen.barrel.diameter
    off = fine_length(judged.out_of_true)
    value = Quantity(judged.out_of_true, "mm")
    limit = Quantity(RUN_SHARE * bore, "mm")
    source = "; the limit of 0.002 to 0.003 of the bore is judged"
    if judged.word == RUN:
        why = "The bore is %s out of true and the ring follows it: run it%s." % (off, source)
        return finding("verdict", GOOD, why, "", value, limit)
    if judged.word == HONE:
        beyond = "" if judged.follows else ", more than this ring follows"
        why = "The bore is %s out of true%s%s." % (off, beyond, source)
        remedy = "Hone it to %s, cross-hatched to about Ra 0.8, then make the rings to that size."
        remedy = remedy % length(judged.clean_up)
        return finding("verdict", WATCH, why, remedy, value, limit)
    grave = judged.out_of_true > min(BORE_SHARE * bore, BORE_ALWAYS)
    why = (
        "The bore is %s out of true, %s%s; full-size locomotives are rebored at 1.524 mm (0.060 "
        "in)."
        % (
            off,
            "more than a hone should take out",
            source,
        )
    )
    if judged.word == SLEEVE:
        remedy = (
            "There is no wall left to bore out: sleeve the cylinder to the size wanted, by a "
            "competent person."
        )
        return finding("verdict", STOP, why, remedy, value, limit)
    remedy = (
        "Bore it out to %s, which cleans up the largest place, then make the rings to that size."
    )
    return finding(
        "verdict", STOP if grave else WATCH, why, remedy % length(judged.clean_up), value, limit
    )


def _follow_row(rows, design, trial, judged):
    worst = trial.worst
    value, limit = Quantity(design.spring.wall_pressure, "MPa"), Quantity(trial.needed, "MPa")
    beside = "; by the first-order rule it needs %s and has %s" % (
        wall_pressure(trial.needed),
        wall_pressure(design.spring.wall_pressure),
    )
    if judged.follows:
        why = "A ring %s thick follows the worst place of the bore%s." % (
            length(design.section.thickness),
            beside,
        )
        rows.append(finding("ring-follows", GOOD, why, "", value, limit))
        return
    why = (
        "With its gap at %s a ring %s thick leaves light of %s and seals %s of the way round%s."
        % (
            angle(trial.direction),
            length(design.section.thickness),
            fine_length(worst.widest_light),
            percent(worst.sealed_share),
            beside,
        )
    )
    remedy = "True the bore, or make the ring thinner or press harder so that it follows."
    outcome = STOP if judge_light(worst.widest_light).outcome == STOP else WATCH
    rows.append(finding("ring-follows", outcome, why, remedy, value, limit))


def gap_for(seen, design):
    """Closed gap at the size half-way that leaves the usual one where the bore is tightest [mm].

    seen: Seen. design: a Design of the ring tried, for its heat and its turns.
    """
    usual = judge_gap(design, 0.0, seen.tight).need
    return max(usual, clearances.running_gap(seen.tight)) + math.pi * (seen.size - seen.tight)


def breathing(seen, design, asked):
    """List of Finding: what becomes of the gap along the stroke, by the checks of sizing at both
    its ends.

    seen: Seen. design: a Design of the ring tried. asked: whether the caller gave the gap; else it
    is gap_for's, and is to be watched only where the gap that sizing takes by itself would butt.
    """
    rows = []
    if len(seen.sections) < 2:
        return rows
    breathing = math.pi * (seen.slack - seen.tight)
    least = design.duty.closed_gap - math.pi * (design.duty.bore - seen.tight)
    most = design.duty.closed_gap + math.pi * (seen.slack - design.duty.bore)
    tight = judge_gap(design, least, seen.tight)
    slack = judge_gap(design, most, seen.slack)
    said = "The gap opens and closes by %s along the stroke" % fine_length(breathing)
    value, limit = Quantity(tight.hot, "mm"), Quantity(tight.margin, "mm")
    serves = math.ceil(1000.0 * gap_for(seen, design)) / 1000.0
    wanted = "Give the rings a closed gap of %s." % fine_length(serves)
    given = (Choice("closed_gap", serves, "mm", "clears it"),)
    if tight.short:
        left = "the ends butt" if tight.hot <= 0.0 else "only %s is left" % fine_length(tight.hot)
        why = "%s: started hot in the tightest place, %s." % (said, left)
        rows.append(finding("gap-breathes", tight.outcome, why, wanted, value, limit, given))
    if slack.wide:
        why = "%s: in the widest place %s is left hot, and a plain ring leaks through it." % (
            said,
            fine_length(slack.hot),
        )
        there = serves + math.pi * (seen.slack - design.duty.bore)
        clears = not judge_gap(design, there, seen.slack).wide
        rows.append(
            finding(
                "gap-breathes-wide",
                slack.outcome,
                why,
                wanted if clears else "True the bore, or make a double-turn ring.",
                Quantity(slack.hot, "mm"),
                Quantity(WIDE_GAP * seen.slack, "mm"),
                given if clears else (),
            )
        )
    if tight.short or slack.wide:
        return rows
    usual = least + judge_gap(design, design.duty.closed_gap).need - design.duty.closed_gap
    usual = judge_gap(design, usual, seen.tight)
    why = "%s: with a closed gap of %s, %s is left in the tightest place, started hot." % (
        said,
        fine_length(design.duty.closed_gap),
        fine_length(tight.hot),
    )
    if usual.outcome == STOP and not asked:
        why += " The usual gap for a bore this size would butt there."
        rows.append(finding("gap-breathes", WATCH, why, wanted, value, limit, given))
    else:
        rows.append(finding("gap-breathes", GOOD, why, "", value, limit))
    return rows


def _gauge_rows(rows, seen, judged):
    error = seen.uncertainty
    bore = seen.barrel.diameter
    # Largest and smallest each carry the random error of a reading.
    doubt = math.sqrt(2.0) * error
    if abs(judged.out_of_true - RUN_SHARE * bore) < doubt and judged.word in (RUN, HONE):
        rows.append(
            finding(
                "gauge-in-doubt",
                WATCH,
                "The gauge is good to %s, too coarse to tell on which side of the limit the bore "
                "lies." % fine_length(error),
                "Gauge again with a finer gauge, or in more directions.",
                Quantity(doubt, "mm"),
                Quantity(abs(judged.out_of_true - RUN_SHARE * bore), "mm"),
            )
        )
    misfit = max([s.misfit for s in seen.sections])
    if error > 0.0 and misfit > 1.5 * error:
        rows.append(
            finding(
                "readings-disagree",
                WATCH,
                "The readings leave %s that no oval explains, more than the gauge's own %s."
                % (fine_length(misfit), fine_length(error)),
                "Look for a score, a ridge or a slip in the readings, and gauge in more "
                "directions.",
                Quantity(misfit, "mm"),
                Quantity(error, "mm"),
            )
        )
    if seen.worst.ovality is None:
        rows.append(
            finding(
                "ovality-unseen",
                WATCH,
                "These readings cannot show whether the bore is oval.",
                "Gauge with a two-point gauge in two directions at least: along the crankshaft "
                "and across.",
            )
        )
    elif seen.worst.aligned:
        rows.append(
            finding(
                "two-directions",
                WATCH,
                "Two directions square to each other show an oval that lies along one of them; "
                "one that lies between them stays unseen.",
                "Gauge in four directions, 45 degrees apart.",
            )
        )


METHODS = (
    Method(
        "survey-verdict",
        "Run, hone, bore out or sleeve",
        "run up to 0.002 D out of true if the ring follows; hone up to 0.15 mm; else bore out to "
        "the largest place and 0.25 mm; sleeve where the wall does not allow it",
        "0.002 to 0.003 of the bore judged: compressors are rebored at 0.001 of it, locomotives at "
        "1.524 mm (0.060 in)",
        ("compressor-book", "rebore-report", "practice"),
    ),
    Method(
        "gap-breathing",
        "How the gap opens and closes along a tapered bore",
        "pi (largest - smallest mean diameter); closed gap = usual gap at the smallest + "
        "pi (size - smallest)",
        "any ring that follows the wall",
        ("definition",),
    ),
)
