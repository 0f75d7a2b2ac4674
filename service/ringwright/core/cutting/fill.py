"""Plans for a list of pieces made quickly: bars filled one after the other, and bars left out
again.

A plan is a list of (kind index, pattern, how many bars are cut alike). Nothing here is proved.
"""

from .patterns import best_filling

# Kinds of bar compared for one place in a plan, the cheapest by length first.
MOST_LOOKED = 12
# A filling that leaves less of the bar than this share is as good as full.
NEARLY_FULL = 0.998
# How much more, by its length, the longest piece is worth: a little, much, not at all.
FAVOURS = (0.02, 0.3, 0.0)


def cost_of(kinds, plan):
    """Cost of the bars of a plan."""
    total = 0
    for index, _, times in plan:
        total += kinds[index].cost * times
    return total


def greedy(job, fixed):
    """A plan that covers the demand, `fixed` bars first, or None.

    Next comes the bar that costs least for what it holds; at every stage the plan that would finish
    with one bar more is remembered too.
    """
    kinds = job.kinds
    plan = list(fixed)
    wanted = list(job.demand)
    money = job.budget
    for index, pattern, times in fixed:
        for piece in range(len(wanted)):
            wanted[piece] = max(0, wanted[piece] - pattern[piece] * times)
        if money is not None:
            money -= kinds[index].spend * times
    counts = _left(kinds, plan)
    order = [(kind.cost / kind.room, -kind.room, index) for index, kind in enumerate(kinds)]
    order.sort()
    order = [index for _, _, index in order]
    best = None
    best_cost = 0
    cost = cost_of(kinds, plan)
    while True:
        if not any(wanted):
            if best is None or cost < best_cost:
                best = plan
            return best
        choice = None
        looked = 0
        for index in order:
            kind = kinds[index]
            if counts[index] == 0 or (money is not None and kind.spend > money):
                continue
            if looked >= MOST_LOOKED:
                break
            pattern = _good_filling(job, kind, wanted, FAVOURS[0])
            held = 0.0
            for number, length in zip(pattern, job.lengths):
                held += number * length
            if held == 0.0:
                continue
            looked += 1
            if list(pattern) == wanted and (best is None or cost + kind.cost < best_cost):
                best = plan + [(index, pattern, 1)]
                best_cost = cost + kind.cost
            rank = (kind.cost / held, (kind.room - held) / kind.room, index)
            if choice is None or rank < choice[0]:
                choice = (rank, index, pattern)
        if choice is None:
            return best
        _, index, pattern = choice
        kind = kinds[index]
        times = min([wanted[p] // pattern[p] for p in range(len(wanted)) if pattern[p]])
        if counts[index] is not None:
            times = min(times, counts[index])
        if money is not None and kind.spend:
            times = min(times, money // kind.spend)
            money -= times * kind.spend
        if counts[index] is not None:
            counts[index] -= times
        plan = plan + [(index, pattern, times)]
        cost += kind.cost * times
        for piece in range(len(wanted)):
            wanted[piece] -= pattern[piece] * times
        if best is not None and cost >= best_cost:
            return best


def packed(job, counts, favour):
    """A plan that fills a set of bars one after the other and finishes as cheaply as it can.

    First the bars that suit the fewest pieces, then the smallest.
    """
    order = []
    for index, number in enumerate(counts):
        if number:
            kind = job.kinds[index]
            order.append((len(kind.takes), kind.room, index, number))
    order.sort()
    wanted = list(job.demand)
    plan = []
    for _, _, index, number in order:
        while number and any(wanted):
            pattern = _good_filling(job, job.kinds[index], wanted, favour)
            times = min([number] + [wanted[p] // n for p, n in enumerate(pattern) if n])
            if not any(pattern):
                break
            plan.append((index, pattern, times))
            wanted = [w - n * times for w, n in zip(wanted, pattern)]
            number -= times
    return greedy(job, plan)


def lessened(job, plan, sets):
    """The plan with bars left out or changed for cheaper ones, as long as the pieces go in."""
    kinds = job.kinds
    improved = True
    while improved and not job.steps.over():
        improved = False
        cost = cost_of(kinds, plan)
        counts = [0] * len(kinds)
        for index, _, times in plan:
            counts[index] += times
        for index, kind in enumerate(kinds):
            if kind.cost == 0 and kind.count is not None and not job.buys(kind):
                counts[index] = kind.count
        moves = []
        for out, kind in enumerate(kinds):
            if counts[out] and kind.cost:
                moves.append((-kind.cost, out, -1))
                for into, other in enumerate(kinds):
                    if other.cost >= kind.cost or job.buys(other):
                        continue
                    if other.count is None or counts[into] < other.count:
                        moves.append((other.cost - kind.cost, out, into))
        moves.sort()
        for _, out, into in moves:
            if job.steps.over():
                break
            trial = list(counts)
            trial[out] -= 1
            if into >= 0:
                trial[into] += 1
            job.steps.done += 3
            if not sets.could_hold(trial):
                continue
            new = packed(job, trial, FAVOURS[0])
            if new is not None:
                new = trimmed(job, new)
                if cost_of(kinds, new) < cost:
                    plan = new
                    improved = True
                    break
    return plan


def rounded(job, mix):
    """Plans from the relaxed mix: whole parts kept, then more and more of the largest fractions."""
    floors = []
    rest = []
    for level, index, pattern in mix:
        whole = int(level + 1e-6)
        if whole:
            floors.append((index, pattern, whole))
        if level - whole > 1e-6:
            rest.append((-(level - whole), index, pattern))
    rest.sort()
    for extra in range(len(rest) + 1):
        fixed = floors + [(index, pattern, 1) for _, index, pattern in rest[:extra]]
        counts = _left(job.kinds, fixed)
        spent = 0
        for index, _, times in fixed:
            spent += job.kinds[index].spend * times
        short = any([count is not None and count < 0 for count in counts])
        if short or (job.budget is not None and spent > job.budget):
            return
        plan = greedy(job, fixed)
        if plan is not None:
            yield plan
        if job.steps.over():
            return


def trimmed(job, plan):
    """The plan without what it cuts beyond the demand, and without bars that then hold nothing."""
    surplus = [-number for number in job.demand]
    for _, pattern, times in plan:
        for piece, number in enumerate(pattern):
            surplus[piece] += number * times
    if not any([number > 0 for number in surplus]):
        return plan
    bars = []
    for index, pattern, times in plan:
        for _ in range(times):
            kept = list(pattern)
            for piece in range(len(kept)):
                less = min(kept[piece], max(0, surplus[piece]))
                kept[piece] -= less
                surplus[piece] -= less
            if any(kept):
                bars.append((index, tuple(kept), 1))
    return bars


def _good_filling(job, kind, wanted, favour):
    """A nearly full bar, long pieces a little preferred: they are the hardest to place later.

    A piece counts for the least that it takes of any bar, so that it seeks the bars which waste
    least on it.
    """
    longest = max(job.lengths)
    values = [value * (1.0 + favour * value / longest) for value in job.lengths]
    return best_filling(kind, values, wanted, job.steps, job.allowance, NEARLY_FULL * kind.room)[1]


def _left(kinds, plan):
    """How many of each kind a plan leaves; None where there is no end of them."""
    counts = [kind.count for kind in kinds]
    for index, _, times in plan:
        if counts[index] is not None:
            counts[index] -= times
    return counts
