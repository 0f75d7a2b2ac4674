"""The cheapest bars for a list of pieces: a good plan quickly, then proof or the gap that remains.

In turn, each only if the one before has not settled it: fill bars greedily; try the cheapest sets
of bars that could hold everything; leave bars out; tighten the bound by column generation, round
its mix and try again; look through all the plans that the bound still allows.
"""

from collections import namedtuple

from .bound import relax
from .fill import FAVOURS, NEARLY_FULL, cost_of, greedy, lessened, packed, rounded, trimmed
from .patterns import best_filling
from .proof import search
from .sets import BarSets, Test

# Sets of bars tried one after the other in one go.
MOST_SETS = 12
# Groups of pieces that only some of the bars can give, each made a test of its own.
MOST_GROUPS = 3
# With more kinds of bar than this, bars count for groups as if they could be filled to the end.
MOST_KINDS_FILLED = 30

# bars: list of (kind index, pattern, how many cut alike). cost: of them. bound: proved least cost.
# proved: True when the two meet.
Outcome = namedtuple("Outcome", ("bars", "cost", "bound", "proved"))


def cheapest(job, start):
    """Outcome: the cheapest plan found that covers the demand, and its proved bound.

    job: Job, its kinds with whole costs and together able to cover the demand. start: a plan known
    already (list as Outcome.bars) or None. Raises ValueError when no plan covers the demand.
    """
    if start is None:
        start = greedy(job, [])
        if start is None:
            raise ValueError("these bars cannot give these pieces")
    hunt = _Hunt(job, start)
    if hunt.cost == 0:
        return hunt.outcome()
    tests, columns = _length_tests(job)
    sets = hunt.bounded_by(tests)
    hunt.try_sets(sets, 0.35)
    if not hunt.settled():
        whole = job.steps.ration(0.35)
        hunt.found(lessened(job, hunt.plan, sets))
        job.steps.limit = whole
    if hunt.settled():
        return hunt.outcome()

    whole = job.steps.ration(0.6)
    relaxed = relax(job, [(index, pattern) for index, pattern, _ in hunt.plan] + columns)
    job.steps.limit = whole
    sets = hunt.bounded_by(tests + [Test(relaxed.prices, relaxed.fills)])
    whole = job.steps.ration(0.5)
    for plan in rounded(job, relaxed.mix):
        hunt.found(plan)
        if hunt.settled():
            break
    job.steps.limit = whole
    hunt.try_sets(sets, 0.5)
    if not hunt.settled():
        plan, complete = search(job, relaxed, hunt.cost, hunt.bound)
        if plan is not None:
            hunt.found(plan)
        if complete:
            hunt.bound = hunt.cost
    return hunt.outcome()


class _Hunt:
    """The best plan so far and the proved bound under it."""

    def __init__(self, job, start):
        self.job = job
        self.plan = trimmed(job, start)
        self.cost = cost_of(job.kinds, self.plan)
        self.bound = 0

    def found(self, plan):
        """Keep a plan if it is the cheapest yet."""
        plan = trimmed(self.job, plan)
        cost = cost_of(self.job.kinds, plan)
        if cost < self.cost:
            self.plan = plan
            self.cost = cost

    def settled(self):
        """True when no plan can be cheaper."""
        return self.cost <= self.bound

    def outcome(self):
        """What there is to report."""
        return Outcome(
            bars=self.plan, cost=self.cost, bound=min(self.bound, self.cost), proved=self.settled()
        )

    def bounded_by(self, tests):
        """BarSets by those tests, cheaper than the best plan; the bound is raised to theirs."""
        sets = BarSets(self.job, tests, self.cost)
        self.bound = max(self.bound, sets.least)
        return sets

    def try_sets(self, sets, share):
        """Fill the cheapest sets, in every order of favour, within that share of the steps left."""
        whole = self.job.steps.ration(share)
        for favour in FAVOURS:
            for tried, counts in enumerate(sets.candidates()):
                cost = 0
                for kind, number in zip(self.job.kinds, counts):
                    cost += kind.cost * number
                over = tried >= MOST_SETS or self.job.steps.over()
                if over or cost >= self.cost or self.settled():
                    break
                plan = packed(self.job, counts, favour)
                if plan is not None:
                    self.found(plan)
        self.job.steps.limit = whole


def _length_tests(job):
    """(tests by length, a good filling of each kind): for groups of pieces, and last for all."""
    demand = job.demand
    givers = [[] for _ in demand]
    for index, kind in enumerate(job.kinds):
        for piece, _, _, _ in kind.takes:
            if kind.tag is not None:
                givers[piece].append(index)
    groups = []
    for who in givers:
        group = [piece for piece, kin in enumerate(givers) if all([k in who for k in kin])]
        if len(group) < len(demand) and group not in groups:
            groups.append(group)
    groups = groups[:MOST_GROUPS] + [list(range(len(demand)))]
    tests = []
    for group in groups:
        values = [length if piece in group else 0.0 for piece, length in enumerate(job.lengths)]
        fillings = []
        if len(group) < len(demand) and len(job.kinds) > MOST_KINDS_FILLED:
            tests.append(Test(values, [_room_for(kind, group) for kind in job.kinds]))
            continue
        for kind in job.kinds:
            enough = NEARLY_FULL * kind.room
            fillings.append(best_filling(kind, values, demand, job.steps, job.allowance, enough))
        tests.append(Test(values, [filling[2] for filling in fillings]))
    return tests, [(index, filling[1]) for index, filling in enumerate(fillings)]


def _room_for(kind, group):
    """Length of a bar if it can give any piece of a group, else nothing."""
    for piece, _, _, _ in kind.takes:
        if piece in group:
            return float(kind.room)
    return 0.0
