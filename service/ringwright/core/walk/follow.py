"""The card that follows the ring: from what was measured, what is still to be made, and how.

A ring is walked from the sizes that were measured; where none was, from those its card now asks
for. Each size still to be made gets the value that brings the ring nearest to what it should be,
and the limits that keep it within its own whatever the others do within theirs.
"""

import math
from collections import OrderedDict, namedtuple

from ..records import GOOD, STOP
from ..ring.allowances import SMALLEST_RELIEF
from ..ring.judging import judge_gap, judge_pressure
from . import ring_card, states
from .finished import THICKNESS_STOP, finished_limits
from .limits import card_limits
from .plan import changed, lean, plan_of, set_open, walked
from .resetting import former_for, relief_shown, spacer_for
from .ring_card import EPS

# Metal that the last turning must find all round, on the diameter [mm], and of the finishing
# allowance. Common practice, no source.
LEAST_CLEAN_UP = 0.1
CLEAN_UP_SHARE = 0.2
# A relief that no heat gives.
MOST_RELIEF = 1.02

# What a feeler tells apart [mm].
FEELER_STEP = 0.005
_MADE = (
    "thickness", "width", "closed_gap", "before_dressing", "dressed", "free_gap",
    "wall_pressure", "closing_bore", "clean_up", "state",
)  # fmt: skip

# One ring. steps: list of ring_card.Step. plan: the Plan it is walked by. made: a plan.Made of
# that, None where no ring comes of it. relief: what its heat gave, None where it was not measured.
# faults: list of words, among thickness, gap, gap-short, pressure, clean-up, width, relief, that
# the finished ring will fail by; grave: whether one of them stops it, as inspection would. cost:
# OrderedDict name -> Made with that size alone as measured. remedy: a Remedy or None.
Followed = namedtuple(
    "Followed", ("ring", "steps", "plan", "made", "relief", "faults", "grave", "cost", "remedy")
)
# What brings a ring right. key: bore, saw, set, inside, face or dress; value: the size to work to
# [mm]; made: the Made that it leads to; aim: wall pressure wanted [MPa].
Remedy = namedtuple("Remedy", ("key", "value", "made", "aim"))


def follow(design, rows, machine="light", on_stick=False):
    """List of Followed, one a ring measured.

    design: a Design. rows: checked records of inputs_rings.RINGS, or None. machine: as of
    card_limits. on_stick: whether blanks are slit on their stick. What the heat gave to the rings
    set so far settles the former of the next.
    """
    found = []
    reliefs = []
    for place, row in enumerate(rows or (), 1):
        known = None
        if reliefs:
            known = sum_of(reliefs) / len(reliefs)
        ring = Ring(design, row, row.get("ring") or place, machine, known, on_stick).followed()
        if ring.relief is not None and SMALLEST_RELIEF <= ring.relief <= MOST_RELIEF:
            reliefs.append(min(ring.relief, 1.0))
        found.append(ring)
    return found


def sum_of(values):
    """Sum of numbers, in order. values: a sequence."""
    total = 0.0
    for value in values:
        total += value
    return total


class Ring:
    """One ring being made: what was measured of it, and what follows."""

    def __init__(self, design, row, number, machine, relief, on_stick=False):
        """design: a Design. row: a checked record. number: of the ring. machine, on_stick: as of
        follow. relief: what the rings before it showed, or None.
        """
        self.design = design
        self.on_stick = on_stick
        self.row = row
        self.number = number
        self.held = card_limits(design, machine)
        self.own = finished_limits(design)
        self.nominal = plan_of(design)
        self.known_relief = relief
        self.largest = self.held.closed_gap[1] / self.nominal.sine
        self.last = self.held.finish[1] - self.held.finish[0]

    def followed(self):
        """The Followed of this ring."""
        plan, relief, ranges = self.worked(self.nominal)
        made = walked(plan)
        made = self.as_measured(plan, made)
        faults = self.faults(plan, made, relief)
        remedy = self.remedy(plan, made, faults, relief) if faults else None
        return Followed(
            ring=self.number,
            steps=ring_card.steps(self, plan, ranges),
            plan=plan,
            made=made,
            relief=relief,
            faults=faults,
            grave=self.grave(made, faults),
            cost=ring_card.costs(self),
            remedy=remedy,
        )

    def worked(self, plan):
        """(Plan with all that was measured and the best of the rest, relief shown or None, dict of
        name -> limits still to keep).
        """
        get = self.row.get
        if self.known_relief is not None:
            plan = changed(plan, relief=self.known_relief)
        taken = {}
        for name, key in (
            ("bored_inside_diameter", "bored"),
            ("rough_outside_diameter", "rough"),
            ("blank_length", "length"),
            ("slit_width", "slit"),
            ("end_kerf", "kerf"),
            ("ring_width", "width"),
        ):
            if get(name) is not None:
                taken[key] = get(name)
        plan = changed(plan, **taken)
        ranges = {}
        plan = self.closed(plan, ranges)
        plan = self.last_cut(plan, ranges)
        plan = self.tool(plan)
        relief = None
        if get("free_gap") is not None:
            relief = relief_shown(plan, get("free_gap"))
        if relief is not None:
            plan = changed(plan, relief=min(max(relief, 0.0), 1.5))
        return plan, relief, ranges

    def closed(self, plan, ranges):
        """The gap in the closing ring: measured, left by a ring of known bore, or the best."""
        held, sine = self.held.clamped_gap, plan.sine
        read = self.row.get("clamped_gap_reading")
        bore = self.row.get("closing_ring_bore")
        if read is not None:
            leaning = lean(changed(plan, clamped_gap=read / sine))
            return changed(plan, clamped_gap=read / sine + leaning)
        if bore is not None:
            return changed(plan, clamped_gap=states.close(set_open(plan), bore).gap)
        # The ends lean most where the gap is least.
        leaning = lean(changed(plan, clamped_gap=held[0] / sine))
        low, high = held[0] / sine, held[1] / sine + leaning
        cut = plan.kerf / sine
        finish = self.row.get("finish_outside_diameter")
        first, last = (plan.finish, plan.finish + self.last) if finish is None else (finish, finish)
        if plan.bored_clamped is None:
            # Thickness (D - bored + (s - sc)/pi)/2 within its limits for any outside turned to.
            low = max(low, cut + math.pi * (last - plan.bored - 2.0 * self.own.thickness[1]))
            high = min(high, cut + math.pi * (first - plan.bored - 2.0 * self.own.thickness[0]))
        if low <= high - leaning:
            ranges["clamped_gap_reading"] = (low * sine, (high - leaning) * sine)
            best = cut + math.pi * (plan.finish - plan.bored - 2.0 * self.design.section.thickness)
            if plan.bored_clamped is not None:
                best = plan.clamped_gap
            gap = max(min(best, high), low + leaning)
        else:
            gap = min(max(plan.clamped_gap, held[0] / sine), held[1] / sine)
        return changed(plan, clamped_gap=gap)

    def last_cut(self, plan, ranges):
        """The outside turned to: measured, or so large that the gap does not come out too wide."""
        finish = self.row.get("finish_outside_diameter")
        inside = self.row.get("inside_diameter")
        if plan.bored_clamped is not None and inside is not None:
            plan = changed(plan, bored_clamped=inside)
        if finish is not None:
            return changed(plan, finish=finish)
        least = max(plan.finish, plan.bore + (plan.clamped_gap - self.largest) / math.pi)
        most = least + self.last
        if plan.bored_clamped is None and self.row.get("clamped_gap_reading") is not None:
            cut = plan.kerf / plan.sine
            thickest = 2.0 * self.own.thickness[1] + plan.bored - (cut - plan.clamped_gap) / math.pi
            most = min(most, max(thickest, least))
        ranges["finish_outside_diameter"] = (least, most)
        return changed(plan, finish=least)

    def tool(self, plan):
        """The former or spacer: as measured, or for this very ring."""
        former, spacer = self.row.get("former_diameter"), self.row.get("spacer_width")
        if plan.former is None:
            if spacer is None:
                spacer = spacer_for(self.design, plan)
            return changed(plan, spacer=spacer)
        if former is None:
            former = former_for(self.design, plan, plan.relief, None)
        return changed(plan, former=former)

    def as_measured(self, plan, made, undone=""):
        """The Made, with thickness and gap as they were measured of the finished ring.

        undone: the name of a measured size that is worked anew.
        """
        if made is None:
            return None
        values = OrderedDict(zip(_MADE, made))
        if undone != "radial_thickness" and self.row.get("radial_thickness") is not None:
            values["thickness"] = self.row["radial_thickness"]
        if undone != "closed_gap_reading" and self.row.get("closed_gap_reading") is not None:
            values["closed_gap"] = self.row["closed_gap_reading"] / plan.sine
        return type(made)(*[values[name] for name in _MADE])

    def faults(self, plan, made, relief):
        """List of what the finished ring will fail by."""
        if made is None:
            return ["no-ring"]
        own = self.own
        found = []
        if relief is not None and not 0.0 <= relief <= MOST_RELIEF:
            found.append("relief")
        if not own.thickness[0] - EPS <= made.thickness <= own.thickness[1] + EPS:
            found.append("thickness")
        if made.closed_gap > own.closed_gap[1] + EPS:
            found.append("gap")
        elif made.closed_gap < own.closed_gap[0] - FEELER_STEP:
            found.append("gap-short")
        if not own.wall_pressure[0] - EPS <= made.wall_pressure <= own.wall_pressure[1] + EPS:
            found.append("pressure")
        if made.clean_up < self.least_clean_up() - EPS:
            found.append("clean-up")
        if self.row.get("ring_width") is not None:
            if not own.width[0] - EPS <= plan.width <= own.width[1] + EPS:
                found.append("width")
        return found

    def grave(self, made, faults):
        """Whether a fault stops the ring, by the rules of inspection.

        made: a Made, or None. faults: as `faults` lists them.
        """
        for fault in faults:
            if fault == "thickness":
                off = abs(made.thickness / self.design.section.thickness - 1.0)
                stops = off > THICKNESS_STOP
            elif fault in ("gap", "gap-short"):
                stops = judge_gap(self.design, made.closed_gap).outcome == STOP
            elif fault == "pressure":
                pressed = made.wall_pressure + self.design.expander_pressure
                stops = judge_pressure(pressed).outcome != GOOD
            else:
                stops = fault != "relief"
            if stops:
                return True
        return False

    def least_clean_up(self):
        """Metal that the last turning must find, on the diameter [mm]."""
        return min(LEAST_CLEAN_UP, CLEAN_UP_SHARE * self.design.allowances.finishing)

    def remedy(self, plan, made, faults, relief):
        """The first Remedy that, walked, leaves no fault; None where nothing does."""
        if made is None or "relief" in faults:
            return None
        for key, value, other, again in self.candidates(plan, made):
            tried = walked(other)
            if tried is None:
                continue
            tried = self.as_measured(other, tried, again)
            if not self.faults(other, tried, None):
                return Remedy(
                    key=key, value=value, made=tried, aim=self.design.spring.wall_pressure
                )
        return None

    def candidates(self, plan, made):
        """(key, value, Plan, the measured size that it undoes) of what might be done, in order."""
        get = self.row.get
        wanted = self.design.section.thickness
        if made.closed_gap < self.own.closed_gap[0] - FEELER_STEP:
            again = changed(plan, closed_gap=self.nominal.closed_gap)
            yield "dress", again.closed_gap * plan.sine, again, "closed_gap_reading"
        if get("ring_width") is not None and plan.width > self.own.width[1]:
            yield "face", self.nominal.width, changed(plan, width=self.nominal.width), ""
        off = made.thickness - wanted
        if off > 0.0 and get("end_kerf") is None and plan.bored_clamped is None:
            # Not sawn yet: the blank, or its stick, can be bored again.
            bored = plan.bored + 2.0 * off
            yield "bore", bored, self.again(changed(plan, bored=bored)), ""
        if off < 0.0 and get("clamped_gap_reading") is None and plan.bored_clamped is None:
            # Closed further round, the ring keeps more of its thickness when it is turned.
            more = -2.0 * math.pi * off
            sawn = changed(plan, kerf=plan.kerf + more * plan.sine)
            yield "saw", sawn.kerf, self.again(sawn), ""
        if off > 0.0 and plan.bored_clamped is None:
            inside = plan.finish - 2.0 * wanted
            yield "inside", inside, changed(plan, bored_clamped=inside), "radial_thickness"
        if get("free_gap") is None or plan.relief < SMALLEST_RELIEF:
            return
        if plan.former is not None:
            free = set_open(plan).free_radius
            former = former_for(self.design, plan, plan.relief, free)
            if former is not None:
                yield (
                    "set",
                    former,
                    changed(plan, former=former_for(self.design, plan, plan.relief, None)),
                    "",
                )
        else:
            cut = plan.kerf / plan.sine
            opened = cut + plan.relief * (plan.spacer - cut)
            spacer = spacer_for(self.design, plan)
            free = cut + plan.relief * (spacer - cut)
            again = opened + (free - opened) / plan.relief
            yield "set", again, changed(plan, spacer=spacer), ""

    def again(self, plan):
        """A Plan with former or spacer for it, where that is not settled yet."""
        if self.row.get("former_diameter") is None and self.row.get("free_gap") is None:
            return self.tool(plan)
        return plan
