"""The ring of a survey, judged by the checks of sizing: as drawn, and where the bore is tightest
and slackest."""

import math

from ..problems import InputProblem
from ..records import STOP, Quantity, finding
from ..ring import ring_remedies
from ..ring.design import as_inputs, settle
from ..ring.judging import SLACK_STOP
from ..ring.sizing import stops
from ..wording import length
from .survey_findings import breathing

# Said by gap-breathes of every place along the bore.
OF_THE_GAP = ("end-gap", "gap-wide")
# Of the blank, wherever the ring is to stand.
_OF_THE_BLANK = ("sawn-open", "forming", "turning-through", "grip")
_SETTLED = ("radial_thickness", "ring_width", "groove_width", "groove_depth", "end_kerf")
# The piston goes into the bore, if only just [mm].
_BARELY = 1e-6


def stopped(seen, design, values, fields, running, asked, again):
    """List of Finding: what sizing stops of the ring, with remedies that clear it all along the
    bore.

    seen: survey_findings.Seen. design: a Design. values: checked values it was settled from.
    fields: name -> Field of the survey's inputs. running: True where the ring is to run in the bore
    as it is, all along it. asked: whether the caller gave the gap. again: function of such values
    to the Design that the survey then makes of them.
    """
    rows = _rows(seen, design, values, running)
    if not rows:
        return rows

    def judge(changed):
        settled = again(changed)
        found = _rows(seen, settled, changed, running)
        return found + (breathing(seen, settled, asked) if running else []), settled

    tightest = standing(design, seen.tight, values) if running else design
    beside = breathing(seen, design, asked) if running else []
    told = ring_remedies.told(values, tightest, rows + beside, judge, fields)
    return told[: len(rows)]


def _rows(seen, design, values, running):
    """The same in words alone, each check where it first stops."""
    rows = stops(design)
    if not running:
        return rows
    found = [row for row in rows if len(seen.sections) < 2 or row.check not in OF_THE_GAP]
    known = [row.check for row in rows]
    for place, bore in (("tightest", seen.tight), ("widest", seen.slack)):
        if bore == design.duty.bore:
            continue
        try:
            there = stops(standing(design, bore, values))
        except InputProblem as problem:
            if problem.faults[0].path != ("free_gap",):
                raise
            why = "The gap takes up all the ring's spring: it does not press there."
            remedy = "Ask for more wall pressure or a larger free gap."
            limit = Quantity(SLACK_STOP, "MPa")
            there = [finding("too-slack", STOP, why, remedy, Quantity(0.0, "MPa"), limit)]
        for row in there:
            if row.check in known or row.check in OF_THE_GAP or row.check in _OF_THE_BLANK:
                continue
            known.append(row.check)
            why = "In the %s place, %s: %s" % (place, length(bore), row.why)
            found.append(finding(row.check, STOP, why, row.remedy, row.value, row.limit))
    return found


def standing(design, bore, values):
    """The Design of a made ring that stands in another bore: its sections and free gap stay.

    design: a Design. bore: where it stands [mm]. values: checked values it was settled from.
    Raises InputProblem where it would not press there at all.
    """
    asked = dict(values)
    for name in ("wall_pressure", "former_ratio", "shelf_former"):
        asked[name] = None
    made = as_inputs(design)
    for name in _SETTLED:
        asked[name] = made[name]
    asked["clamped_gap"] = 0.0
    asked["bore"] = bore
    asked["closed_gap"] = max(design.duty.closed_gap + math.pi * (bore - design.duty.bore), 0.0)
    asked["free_gap"] = design.duty.closed_gap + design.spring.gap_change
    asked["piston_diameter"] = min(design.piston_diameter, bore - _BARELY)
    return settle(asked)[0]
