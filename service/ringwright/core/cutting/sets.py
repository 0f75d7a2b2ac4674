"""Which sets of bars could hold everything, cheapest first, by what one bar of each kind can hold.

A test gives every piece a value. A set of bars whose fullest fillings together are worth less than
the pieces cannot hold them; so the cheapest set that passes all tests bounds the cost of every
plan, whatever the values are.
"""

from collections import namedtuple

# values: of each piece. fills: the most that one bar of each kind can be worth.
Test = namedtuple("Test", ("values", "fills"))

# Steps that one list of sets may take, and the part of those left: beyond it the bound falls back
# on fractions of bars.
MOST_WORK = 2000
MOST_SHARE = 0.25
# Choices of bars for one budget, each extended on its own.
MOST_PURCHASES = 6
# Values are floats: a set is let pass when it falls short by this share only.
SHORTFALL = 1e-9


class BarSets:
    """Sets of bars that pass every test. `least`: proved least cost of any plan."""

    def __init__(self, job, tests, ceiling):
        """job: Job. tests: sequence of Test, the one for all pieces last.

        ceiling: sets that cost as much or more are of no interest.
        """
        self.job = job
        self.kinds = job.kinds
        self.steps = job.steps
        self.ceiling = ceiling
        self.pieces = sum(job.demand)  # whole numbers
        self.tests = tests
        self.needs = []
        for test in tests:
            need = 0.0
            for value, number in zip(test.values, job.demand):
                need += value * number
            self.needs.append(need * (1.0 - SHORTFALL))
        self.dear = [index for index, kind in enumerate(job.kinds) if kind.cost]
        self.sets = []
        self.least = None
        for counts, rest in self._starts():
            self._extend(counts, rest)
        if self.least is None:
            self.least = ceiling
        self.sets.sort()

    def candidates(self):
        """Lists of how many of each kind, the cheapest sets first."""
        return [list(counts) for _, counts in self.sets]

    def could_hold(self, counts):
        """False when a set, a number of each kind, certainly cannot hold everything."""
        for test, need in zip(self.tests, self.needs):
            value = 0.0
            for fill, number in zip(test.fills, counts):
                value += fill * number
            if value < need:
                return False
        return True

    def _extend(self, counts, rest):
        """Add the sets that begin with `counts` and still need the value `rest` for each test."""
        tests, room = self.tests, rest
        rows, whole = self._frontier(self.dear, tests, room, self.ceiling, False)
        least = 0
        if not whole:
            # Too many to list for all tests at once: each bounds alone, by fractions of bars.
            for test, need in zip(tests, rest):
                least = max(least, self._fractions(self.dear, test.fills, need))
            tests, room = tests[-1:], rest[-1:]
            rows, whole = self._frontier(self.dear, tests, room, self.ceiling, False)
        passing = [row for row in rows if _enough(row[1], room)]
        if whole:
            least = max(least, passing[0][0] if passing else self.ceiling)
        if self.least is None or least < self.least:
            self.least = least
        for row in passing:
            self.sets.append((row[0], tuple(_grown(counts, row))))

    def _starts(self):
        """What costs nothing, with each choice of bars for the budget: (counts, value needed)."""
        counts = [0] * len(self.kinds)
        bought = []
        for index, kind in enumerate(self.kinds):
            if kind.cost == 0 and self.job.buys(kind):
                bought.append(index)
            elif kind.cost == 0:
                counts[index] = self.pieces if kind.count is None else min(kind.count, self.pieces)
        rest = self._rest(self.needs, counts)
        if not bought:
            return [(counts, rest)]
        most = list(counts)
        for index in self.dear:
            count = self.kinds[index].count
            most[index] = self.pieces if count is None else count
        lacking = self._rest(self.needs, most)
        rows, whole = self._frontier(bought, self.tests, rest, self.job.budget + 1, True)
        rows = [row for row in rows if _enough(row[1], lacking)]
        if whole and len(rows) <= MOST_PURCHASES:
            starts = []
            for row in rows:
                left = [need - value for need, value in zip(rest, row[1])]
                starts.append((_grown(counts, row), left))
            return starts
        left = []
        for test, need in zip(self.tests, rest):
            rates = [test.fills[index] / self.kinds[index].spend for index in bought]
            left.append(need - self.job.budget * max(rates))
        return [(counts, left)]

    def _rest(self, needs, counts):
        rest = []
        for test, need in zip(self.tests, needs):
            for fill, number in zip(test.fills, counts):
                need -= fill * number
            rest.append(need)
        return rest

    def _frontier(self, indexes, tests, room, ceiling, by_money):
        """Sets that no other beats in cost and in all tests: (rows, whether none was left out).

        A row is (cost, values, kind index, number, row it grew from), in order of cost, under
        `ceiling`; by_money: cost is what is spent. Value beyond what is needed counts for nothing,
        and a set that passes all tests is not grown.
        """
        rows = [(0, tuple([0.0] * len(tests)), 0, 0, None)]
        left = max(0, self.steps.limit - self.steps.done)
        last = self.steps.done + min(MOST_WORK, int(left * MOST_SHARE))
        for index in indexes:
            kind = self.kinds[index]
            each = kind.spend if by_money else kind.cost
            count = self.pieces if kind.count is None else min(kind.count, self.pieces)
            fills = [test.fills[index] for test in tests]
            grown = []
            for at, row in enumerate(rows):
                cost, values = row[0], row[1]
                grown.append((cost, [-value for value in values], at, 0))
                for number in range(1, count + 1):
                    cost += each
                    if _enough(values, room) or cost >= ceiling:
                        break
                    values = tuple([min(n, v + f) for v, f, n in zip(values, fills, room)])
                    grown.append((cost, [-value for value in values], at, number))
                if self.steps.done + len(grown) > last:
                    return rows, False
            self.steps.done += len(grown)
            grown.sort()
            kept = []
            for cost, minus, at, number in grown:
                values = tuple([-value for value in minus])
                if not self._beaten(values, kept):
                    kept.append((cost, values, index, number, rows[at]) if number else rows[at])
                if self.steps.done > last:
                    return rows, False
            rows = kept
        return rows, True

    def _beaten(self, values, kept):
        """True when a cheaper set already kept is worth as much in every test."""
        if len(values) == 1:
            # In order of cost only the last kept, the most worth so far, can beat it.
            return bool(kept) and kept[-1][1][0] >= values[0]
        self.steps.done += len(kept) // 3
        for row in kept:
            if _enough(row[1], values):
                return True
        return False

    def _fractions(self, indexes, fills, need):
        """Least cost were fractions of a bar allowed, rounded up to a whole number."""
        rates = [(self.kinds[i].cost / fills[i], i) for i in indexes if fills[i] > 0.0]
        rates.sort()
        total = 0.0
        if need <= 0.0:
            return 0
        for rate, index in rates:
            count = self.kinds[index].count
            value = (self.pieces if count is None else count) * fills[index]
            if value >= need:
                total += need * rate
                break
            total += value * rate
            need -= value
        total *= 1.0 - SHORTFALL
        whole = int(total)
        return whole if whole >= total else whole + 1


def _grown(counts, row):
    """The numbers of each kind with those of a row of the frontier added."""
    counts = list(counts)
    while row[4] is not None:
        counts[row[2]] += row[3]
        row = row[4]
    return counts


def _enough(values, needs):
    for value, need in zip(values, needs):
        if value < need:
            return False
    return True
