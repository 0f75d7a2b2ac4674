"""What is left of the bars of a plan, laid out so that as much as may be is worth keeping."""

from .patterns import best_filling, length_of, used_by

# Steps for one bar while the plan is laid out anew.
ALLOWANCE = 1000


def offcut(kind, pattern):
    """Length left of one bar [um], the piece in the chuck of a fed bar included."""
    return max(0, kind.room - kind.trim - used_by(kind, pattern))


def scrap_of(kinds, plan, usable):
    """Length of all offcuts shorter than `usable` [um]."""
    total = 0
    for index, pattern, times in plan:
        if kinds[index].tag is not None:
            left = offcut(kinds[index], pattern)
            if left < usable:
                total += left * times
    return total


def arranged(job, plan, usable):
    """The same bars filled anew, one sort left to the last, where that makes less scrap."""
    best = plan
    least = scrap_of(job.kinds, plan, usable)
    held = []
    for index, _, times in plan:
        held += [index] * times
    for last in sorted(set(held)):
        if least == 0 or job.steps.over():
            break
        order = [(job.kinds[index].room, index) for index in held]
        order.sort()
        order = [index for _, index in order]
        order.remove(last)
        order.append(last)
        wanted = list(job.demand)
        trial = []
        for index in order:
            kind = job.kinds[index]
            _, pattern, _ = best_filling(kind, job.lengths, wanted, job.steps, ALLOWANCE)
            wanted = [number - cut for number, cut in zip(wanted, pattern)]
            trial.append((index, pattern, 1))
        if not any(wanted):
            scrap = scrap_of(job.kinds, trial, usable)
            if scrap < least:
                best, least = trial, scrap
    return best


def scrap_bound(job, plan, usable):
    """Least scrap of these very bars [um]: only so many can leave enough to keep.

    Every other bar wastes at least what its fullest filling leaves; when none can leave enough, all
    that is left is scrap.
    """
    if usable <= 0:
        return 0
    least = []
    left = 0.0
    clip = 0
    single = True
    for index, _, times in plan:
        kind = job.kinds[index]
        if kind.tag is None:
            continue
        values = [0.0] * len(job.demand)
        for piece, each, stick, extra in kind.takes:
            values[piece] = float(length_of(1, each, stick, extra))
            single = single and stick == 1
        # With no work left a quick look will do: its ceiling is true all the same.
        allowance = job.allowance if job.steps.over() else ALLOWANCE
        _, _, fullest = best_filling(kind, values, job.demand, job.steps, allowance)
        whole = kind.room - kind.trim
        least += [max(0, whole - int(fullest + 0.5))] * times
        left += whole * times
        clip += max(0, kind.trim) * times
    placed = list(job.demand)
    for index, pattern, times in plan:
        if job.kinds[index].tag is None:
            placed = [number - less * times for number, less in zip(placed, pattern)]
    for number, length in zip(placed, job.lengths):
        left -= number * length
    # The last saw cut of a bar may fall off its end, which leaves so much more.
    keepable = int(max(0.0, left + clip) / usable)
    least.sort()
    bound = 0
    for waste in least[: max(0, len(least) - keepable)]:
        bound += waste
    if keepable == 0 and single:
        bound = max(bound, int(left))
    return bound
