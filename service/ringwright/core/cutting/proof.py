"""The last word on a cutting plan: every plan that the bound still allows, looked at one by one."""

from .bound import SLACK
from .patterns import full_fillings, length_of

# Fillings looked at in one place of the search.
MOST_FILLINGS = 80


def search(job, relaxed, best_cost, bound):
    """Depth-first over bars: (a cheaper plan or None, whether everything was looked at).

    The piece that takes most of a bar must be on some bar: that bar is chosen next. A choice costs
    what its reduced cost says beyond the bound; whatever would end at or over the best is dropped.
    """
    kinds, demand, budget, steps = job.kinds, job.demand, job.budget, job.steps
    prices, limits, thrift = relaxed.prices, relaxed.limits, relaxed.thrift
    spans = [0] * len(demand)
    for kind in kinds:
        for piece, each, stick, extra in kind.takes:
            spans[piece] = max(spans[piece], length_of(1, each, stick, extra))
    order = [(-spans[piece], piece) for piece in range(len(demand))]
    order.sort()
    order = [piece for _, piece in order]
    best = None
    step = _common_divisor(kinds)
    target = best_cost - step
    margin = SLACK * max([kind.cost for kind in kinds])
    complete = True
    start_bound = 0.0
    for piece, number in enumerate(demand):
        start_bound += prices[piece] * number
    counts = [kind.count for kind in kinds]
    for index, kind in enumerate(kinds):
        if kind.count is not None:
            start_bound += limits[index] * kind.count
    if budget is not None:
        start_bound += thrift * budget

    def choices(wanted, counts, money, hope):
        """Bars that could come next, the likeliest first: (bound after it, kind index, pattern)."""
        lead = -1
        for piece in order:
            if wanted[piece]:
                lead = piece
                break
        rows = []
        whole = True
        for index, kind in enumerate(kinds):
            if counts[index] == 0 or (money is not None and kind.spend > money):
                continue
            fee = kind.cost - limits[index] - thrift * kind.spend
            spare = target + margin - hope
            found, all_found = full_fillings(
                kind, prices, wanted, lead, fee - spare, steps, MOST_FILLINGS
            )
            whole = whole and all_found
            for value, pattern in found:
                rows.append((hope + fee - value, index, pattern))
        rows.sort()
        # Taken from the end, so the most promising last.
        rows.reverse()
        return rows, whole

    first, whole = choices(demand, counts, budget, start_bound)
    complete = complete and whole
    stack = [(first, list(demand), counts, budget, 0)]
    trail = []
    while stack:
        rows, wanted, counts, money, cost = stack[-1]
        if not rows or steps.over():
            complete = complete and not rows
            stack.pop()
            if trail:
                trail.pop()
            continue
        hope, index, pattern = rows.pop()
        if hope > target + margin:
            continue
        kind = kinds[index]
        new_cost = cost + kind.cost
        left = [number - cut for number, cut in zip(wanted, pattern)]
        steps.done += len(left)
        if not any(left):
            if new_cost < best_cost:
                best = [(i, p, 1) for i, p in trail] + [(index, pattern, 1)]
                best_cost = new_cost
                if best_cost <= bound:
                    return best, True
                target = best_cost - step
            continue
        if new_cost > target:
            continue
        new_counts = list(counts)
        if new_counts[index] is not None:
            new_counts[index] -= 1
        new_money = money - kind.spend if money is not None else None
        rows, whole = choices(left, new_counts, new_money, hope)
        complete = complete and whole
        stack.append((rows, left, new_counts, new_money, new_cost))
        trail.append((index, pattern))
    return best, complete


def _common_divisor(kinds):
    """The greatest whole number that divides every cost; two totals differ by it at least."""
    divisor = 0
    for kind in kinds:
        other = kind.cost
        while other:
            divisor, other = other, divisor % other
    return divisor
