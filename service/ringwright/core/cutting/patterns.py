"""Ways of filling one bar: the best by value, and every full way worth trying.

Lengths here are whole micrometres, so that what fits is exact. A `Kind` is a sort of bar; for each
piece it knows `each`, the length one takes, and that pieces go in sticks of at most `stick`, each
stick taking `extra` more (its chucking piece and saw cut). All searches are loops counted in Steps,
never timed: the same question gets the same answer on every machine.
"""

# Room for rounding when values, which are floats, are compared.
TINY = 1e-9


class Steps:
    """Work done so far and the most allowed; shared by everything that one question sets going."""

    __slots__ = ("done", "limit")

    def __init__(self, limit):
        self.done = 0
        self.limit = limit

    def over(self):
        """True when the allowance is used up."""
        return self.done >= self.limit

    def ration(self, share):
        """Narrow the allowance to that share of what is left; returns the limit to put back."""
        whole = self.limit
        self.limit = self.done + int(max(0, whole - self.done) * share)
        return whole


class Kind:
    """One sort of bar: room [um], count (None: no end of them), cost of beginning one, its price.

    takes: tuple of (piece, each, stick, extra), one for each piece that may be cut from it.
    trim: by how much room exceeds the length of the bar [um]: a last saw cut that may fall off its
    end, less what the chuck holds.
    tag: whatever the caller ties to it; None for the lack of a piece, which is no bar at all.
    """

    __slots__ = ("room", "count", "cost", "spend", "takes", "trim", "tag")

    def __init__(self, room, count, cost, spend, takes, trim, tag):
        self.room = room
        self.count = count
        self.cost = cost
        self.spend = spend
        self.takes = takes
        self.trim = trim
        self.tag = tag


class Job:
    """What is asked: kinds of bar, number of each piece, and the most that may be spent, or None.

    lengths: the least that each piece takes of any bar [um]. steps: Steps, shared by the whole
    search. allowance: steps for one filling, so that each kind can have a few.
    """

    __slots__ = ("kinds", "demand", "budget", "lengths", "steps", "allowance")

    def __init__(self, kinds, demand, budget, steps):
        self.kinds = kinds
        self.demand = demand
        self.budget = budget
        self.steps = steps
        self.allowance = max(30, min(300, steps.limit // (6 * max(1, len(kinds)))))
        self.lengths = [0.0] * len(demand)
        for kind in kinds:
            for piece, each, stick, extra in kind.takes:
                span = each + extra / stick
                if self.lengths[piece] == 0.0 or span < self.lengths[piece]:
                    self.lengths[piece] = span

    def buys(self, kind):
        """True when a bar of that kind is paid for out of the budget."""
        return self.budget is not None and kind.spend > 0


def length_of(number, each, stick, extra):
    """Length [um] that `number` pieces take: number*each + ceil(number/stick)*extra."""
    return number * each + ((number + stick - 1) // stick) * extra


def most(room, each, stick, extra):
    """The most pieces that fit in `room` [um]."""
    if room < each + extra:
        return 0
    full = stick * each + extra
    sticks = room // full
    rest = room - sticks * full - extra
    return sticks * stick + (rest // each if rest >= each else 0)


def used_by(kind, pattern):
    """Length [um] that a pattern, a tuple of numbers by piece, takes from that kind of bar."""
    used = 0
    for piece, each, stick, extra in kind.takes:
        if pattern[piece]:
            used += length_of(pattern[piece], each, stick, extra)
    return used


def _rows(kind, values, limits):
    """What can be put in, densest first: (-density, piece, each, stick, extra, value, limit, span).

    span is the least a piece can cost in length, its share of a full stick's extra counted, and
    density is value over span, so no real filling is denser.
    """
    rows = []
    for piece, each, stick, extra in kind.takes:
        limit = min(limits[piece], most(kind.room, each, stick, extra))
        if limit > 0:
            span = each + extra / stick
            value = values[piece]
            rows.append((-value / span, piece, each, stick, extra, value, limit, span))
    rows.sort()
    return rows


def best_filling(kind, values, limits, steps, allowance=4000, enough=None):
    """The most valuable filling of one bar: (value, pattern, ceiling).

    values: worth of each piece; limits: most of each. ceiling: no filling is worth more; it equals
    value unless the search was cut short after `allowance` steps or by a filling worth `enough`.
    Branch and bound, densest first.
    """
    rows = [row for row in _rows(kind, values, limits) if row[5] > TINY]
    size = len(rows)
    best_value = 0.0
    best = [0] * size
    numbers = [0] * size
    rooms = [kind.room] * (size + 1)
    worths = [0.0] * (size + 1)
    count = 0
    at = 0
    cut_short = False
    while at >= 0 and size:
        # Forward: of each piece from `at` on as many as fit, while the rest could beat the best.
        while at < size:
            thin, _, each, stick, extra, value, limit, _ = rows[at]
            room = rooms[at]
            if worths[at] - room * thin <= best_value + TINY:
                break
            number = min(limit, most(room, each, stick, extra))
            numbers[at] = number
            rooms[at + 1] = room - length_of(number, each, stick, extra)
            worths[at + 1] = worths[at] + number * value
            at += 1
            count += 1
        if at == size:
            if worths[size] > best_value + TINY:
                best_value = worths[size]
                best = numbers[:]
            # Fewer of the last piece alone gains nothing.
            at -= 1
        if count > allowance or (enough is not None and best_value >= enough):
            cut_short = True
            break
        # Back to the last piece of which one less could lead to more. Were the rest of the bar as
        # dense as the next piece, worth would only fall with the number, so the first failure
        # settles it.
        at -= 1
        while at >= 0:
            number = numbers[at] - 1
            if number >= 0:
                _, _, each, stick, extra, value, limit, span = rows[at]
                hope = worths[at] + number * value - (rooms[at] - number * span) * rows[at + 1][0]
                if hope > best_value + TINY:
                    numbers[at] = number
                    rooms[at + 1] = rooms[at] - length_of(number, each, stick, extra)
                    worths[at + 1] = worths[at] + number * value
                    count += 1
                    break
            at -= 1
        if at >= 0:
            at += 1
    steps.done += count
    pattern = [0] * len(limits)
    for row, number in zip(rows, best):
        pattern[row[1]] = number
    ceiling = best_value
    if cut_short:
        ceiling = max(best_value, -kind.room * rows[0][0])
    return best_value, tuple(pattern), ceiling


def full_fillings(kind, values, limits, lead, least, steps, most_wanted):
    """Every filling with at least one of `lead` that leaves no room for any other wanted piece.

    Returns (list of (value, pattern), complete). Only fillings worth `least` or more; complete is
    False when there were more than `most_wanted` of them, or the steps ran out.
    """
    rows = _rows(kind, values, limits)
    found = []
    heads = [row for row in rows if row[1] == lead]
    if not heads:
        return found, True
    rows = heads + [row for row in rows if row[1] != lead]
    size = len(rows)
    numbers = [0] * size
    rooms = [kind.room] * (size + 1)
    worths = [0.0] * (size + 1)
    count = 0
    at = 0
    while at >= 0:
        while at < size:
            thin, _, each, stick, extra, value, limit, _ = rows[at]
            room = rooms[at]
            if at and worths[at] - room * thin < least - TINY:
                break
            number = min(limit, most(room, each, stick, extra))
            numbers[at] = number
            rooms[at + 1] = room - length_of(number, each, stick, extra)
            worths[at + 1] = worths[at] + number * value
            at += 1
            count += 1
        if at == size:
            if worths[size] >= least - TINY and _is_full(rows, numbers, rooms[size]):
                if len(found) >= most_wanted:
                    steps.done += count
                    return found, False
                pattern = [0] * len(limits)
                for row, number in zip(rows, numbers):
                    pattern[row[1]] = number
                found.append((worths[size], tuple(pattern)))
            at -= 1
        if steps.done + count >= steps.limit:
            steps.done += count
            return found, False
        at -= 1
        while at >= 0:
            number = numbers[at] - 1
            # The lead piece need not be the densest: no failure of its settles the smaller numbers.
            while number >= (0 if at else 1):
                _, _, each, stick, extra, value, limit, span = rows[at]
                hope = worths[at] + number * value - (rooms[at] - number * span) * rows[at + 1][0]
                count += 1
                if hope >= least - TINY:
                    break
                number = number - 1 if at == 0 else -1
            if number >= (0 if at else 1):
                numbers[at] = number
                rooms[at + 1] = rooms[at] - length_of(number, each, stick, extra)
                worths[at + 1] = worths[at] + number * value
                break
            at -= 1
        if at >= 0:
            at += 1
    steps.done += count
    return found, True


def _is_full(rows, numbers, room):
    """True when none of the pieces still wanted would go into what is left."""
    for row, number in zip(rows, numbers):
        _, _, each, stick, extra, _, limit, _ = row
        if number < limit:
            more = length_of(number + 1, each, stick, extra) - length_of(number, each, stick, extra)
            if more <= room:
                return False
    return True
