"""A proved lower bound for cutting bars: the linear relaxation, by column generation.

Minimise the cost of bars begun, fractions of a bar allowed, so that every piece is covered, no sort
of bar is used more often than there are, and no more is spent than the budget. The columns are
fillings of one bar; the one that helps most is found by `best_filling`. The bound handed back is
Lagrange's, true for any prices of the pieces, so rounding in the simplex steps can weaken it but
never make it wrong.
"""

from collections import namedtuple

from .patterns import best_filling

# Relative to the dearest bar; the bound is pulled down by as much before anyone relies on it.
SLACK = 1e-7
# Cost of leaving a piece uncovered while the simplex starts, in dearest bars.
UNCOVERED = 1000.0

# bound: no plan costs less. prices: one for each piece; limits: one, at most 0, for each
# kind; thrift: at most 0, for each unit of money. For any demand r, stock n and budget b the sum
# prices*r + limits*n + thrift*b is a bound too. fills: the most that one bar of each kind can hold,
# by those prices. mix: (bars, kind index, pattern) of the relaxed optimum.
Relaxation = namedtuple("Relaxation", ("bound", "prices", "limits", "thrift", "fills", "mix"))


class _Tableau:
    """Revised simplex, the inverse of the basis written out: few rows, columns by the million."""

    def __init__(self, rights, start_costs):
        size = len(rights)
        self.size = size
        self.inverse = [[1.0 if r == c else 0.0 for c in range(size)] for r in range(size)]
        self.levels = [float(right) for right in rights]
        self.costs = list(start_costs)
        self.names = [None] * size

    def duals(self):
        """The price of each row: costs of the basis times its inverse."""
        prices = [0.0] * self.size
        for cost, row in zip(self.costs, self.inverse):
            if cost != 0.0:
                for at in range(self.size):
                    prices[at] += cost * row[at]
        return prices

    def enter(self, entries, cost, name):
        """Bring a column of (row, coefficient) into the basis; False when none can leave."""
        column = []
        for row in self.inverse:
            total = 0.0
            for at, coefficient in entries:
                total += row[at] * coefficient
            column.append(total)
        leaving = -1
        least = 0.0
        for at in range(self.size):
            if column[at] > 1e-9:
                ratio = self.levels[at] / column[at]
                if (
                    leaving < 0
                    or ratio < least - 1e-12
                    or (ratio <= least + 1e-12 and column[at] > column[leaving])
                ):
                    leaving = at
                    least = ratio
        if leaving < 0:
            return False
        pivot = column[leaving]
        pivot_row = [value / pivot for value in self.inverse[leaving]]
        self.inverse[leaving] = pivot_row
        self.levels[leaving] = least
        self.costs[leaving] = cost
        self.names[leaving] = name
        for at in range(self.size):
            factor = column[at]
            if at != leaving and factor != 0.0:
                row = self.inverse[at]
                self.inverse[at] = [a - factor * b for a, b in zip(row, pivot_row)]
                self.levels[at] = max(0.0, self.levels[at] - factor * least)
        return True


def relax(job, known):
    """Relaxation of the plan; cut short by `steps` it is a weaker bound, but a true one.

    job: Job. known: (kind index, pattern) columns to start from.
    """
    kinds, demand, steps = job.kinds, job.demand, job.steps
    programme = _Programme(kinds, demand, job.budget)
    for index, pattern in known:
        programme.offer(index, pattern)
    programme.settle()
    prices = programme.prices()
    ceilings = [0.0] * len(kinds)
    at = 0
    # Kinds in a row of which no filling helps: when it is all of them, the relaxation is solved.
    idle = 0
    while idle < len(kinds) and not steps.over():
        filling = best_filling(kinds[at], prices, demand, steps)
        ceilings[at] = filling[2]
        if programme.offer(at, filling[1]):
            programme.settle()
            prices = programme.prices()
            steps.done += programme.size * programme.size // 20
            idle = 0
        else:
            idle += 1
        at = (at + 1) % len(kinds)
    if idle < len(kinds):
        ceilings = [best_filling(kind, prices, demand, steps, job.allowance)[2] for kind in kinds]
    return programme.lagrange(prices, ceilings)


class _Programme:
    """The relaxed plan as rows of a tableau: pieces, kinds of which there is an end, money."""

    def __init__(self, kinds, demand, budget):
        self.kinds = kinds
        self.demand = demand
        self.budget = budget
        self.pieces = len(demand)
        self.scale = max([1e-30] + [float(kind.cost) for kind in kinds])
        self.money_scale = max([1e-30] + [float(kind.spend) for kind in kinds])
        self.limit_row = {}
        rights = [float(number) for number in demand]
        starts = [UNCOVERED] * self.pieces
        for index, kind in enumerate(kinds):
            if kind.count is not None:
                self.limit_row[index] = len(rights)
                rights.append(float(kind.count))
                starts.append(0.0)
        self.money_row = -1
        if budget is not None:
            self.money_row = len(rights)
            rights.append(budget / self.money_scale)
            starts.append(0.0)
        self.size = len(rights)
        self.tableau = _Tableau(rights, starts)
        self.duals = self.tableau.duals()

    def offer(self, index, pattern):
        """Bring in that filling of that kind if it would lower the cost; True when it was."""
        kind = self.kinds[index]
        entries = [(piece, float(number)) for piece, number in enumerate(pattern) if number]
        if not entries:
            return False
        if index in self.limit_row:
            entries.append((self.limit_row[index], 1.0))
        if self.money_row >= 0 and kind.spend:
            entries.append((self.money_row, kind.spend / self.money_scale))
        gain = -kind.cost / self.scale
        for row, coefficient in entries:
            gain += self.duals[row] * coefficient
        return gain > 1e-9 and self._enter(entries, kind.cost / self.scale, (index, pattern))

    def settle(self):
        """Let the slack of a row in again wherever its price has the wrong sign."""
        for _ in range(2 * self.size):
            wrong = -1
            worst = 1e-9
            for row, dual in enumerate(self.duals):
                miss = -dual if row < self.pieces else dual
                if miss > worst:
                    wrong = row
                    worst = miss
            if wrong < 0:
                return
            if not self._enter([(wrong, -1.0 if wrong < self.pieces else 1.0)], 0.0, None):
                return

    def prices(self):
        """Of the pieces, in dearest bars."""
        return [max(0.0, dual) for dual in self.duals[: self.pieces]]

    def lagrange(self, prices, ceilings):
        """Relaxation from prices of pieces and the most that a bar of each kind holds by them."""
        thrift = 0.0
        if self.money_row >= 0:
            thrift = min(0.0, self.duals[self.money_row]) / self.money_scale
        shrink = 1.0
        for index, kind in enumerate(self.kinds):
            fee = kind.cost / self.scale - thrift * kind.spend
            if index not in self.limit_row and ceilings[index] > fee:
                shrink = min(shrink, fee / ceilings[index])
        bound = thrift * self.budget if self.money_row >= 0 else 0.0
        for price, number in zip(prices, self.demand):
            bound += shrink * price * number
        limits = [0.0] * len(self.kinds)
        for index in self.limit_row:
            kind = self.kinds[index]
            fee = kind.cost / self.scale - thrift * kind.spend
            limits[index] = min(0.0, fee - shrink * ceilings[index])
            bound += limits[index] * kind.count
        scale = self.scale
        mix = []
        for name, level in zip(self.tableau.names, self.tableau.levels):
            if name is not None and level > 1e-9:
                mix.append((level, name[0], name[1]))
        mix.sort()
        mix.reverse()
        return Relaxation(
            bound=(bound - SLACK) * scale,
            prices=[shrink * price * scale for price in prices],
            limits=[limit * scale for limit in limits],
            thrift=thrift * scale,
            fills=[shrink * ceiling * scale for ceiling in ceilings],
            mix=mix,
        )

    def _enter(self, entries, cost, name):
        if not self.tableau.enter(entries, cost, name):
            return False
        self.duals = self.tableau.duals()
        return True
