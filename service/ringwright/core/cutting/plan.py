"""Cutting pieces out of bars: which bars to begin, what to cut from each, and the proof that no
plan is better.

The aim, in this order:
1. buy least: the smallest sum of prices of bars bought;
2. begin least: the smallest sum of worths of the user's own bars cut into, so that whole bars stay
   whole. Since the pieces are given, this also makes all that is left over as small as it can be;
3. scrap least: of what is left over, as much as possible in offcuts long enough to keep.
The first two are proved by bounds; the third is arranged for, with a bound of its own.
"""

import math
from collections import namedtuple

from ..records import Method
from .patterns import Job, Kind, Steps, used_by
from .scrap import arranged, offcut, scrap_bound, scrap_of
from .search import cheapest

# name. length: of bar that one piece takes, its own parting included [mm]. count: how many.
# stick: most pieces in one stick, 1 when they are sawn singly from the bar. stick_extra: what each
# stick takes besides its pieces, such as the piece held in the chuck [mm].
Piece = namedtuple("Piece", ("name", "length", "count", "stick", "stick_extra"))

# name. length: of the bar that can be used [mm]. count: how many, None for as many as wanted.
# price: of one [money] to buy; None for the user's own. worth: of one to keep whole, such as its
# mass. fed: True when it goes through the spindle, so that pieces come off it one by one and no
# sticks are sawn. held: length lost once on a fed bar, in the chuck [mm]. accepts: indexes of the
# pieces it can give, None for all.
Bar = namedtuple("Bar", ("name", "length", "count", "price", "worth", "fed", "held", "accepts"))

# bar: index of the Bar. alike: how many are cut so. pieces: (piece index, number) pairs.
# used: up to the last cut, offcut: what is left [mm]. kept: True when the offcut is long enough to
# keep.
Cut = namedtuple("Cut", ("bar", "alike", "pieces", "used", "offcut", "kept"))

# cuts: list of Cut. missing: number of each piece that no bar is left for. bought, begun, scrap:
# what the plan comes to (money, worth, mm), and after each the proved least; *_proved: the two
# agree, and for what is bought also that no plan leaves fewer pieces out. begun_bound and
# scrap_bound hold for plans that buy, and begin, no more than this one.
# steps: work done, of the allowance.
Plan = namedtuple(
    "Plan",
    (
        "cuts",
        "missing",
        "bought",
        "bought_bound",
        "bought_proved",
        "begun",
        "begun_bound",
        "begun_proved",
        "scrap",
        "scrap_bound",
        "scrap_proved",
        "steps",
    ),
)

# Allowance of work for one plan; on a slow phone about a second.
STEP_LIMIT = 14000
# Lengths are reckoned in whole micrometres, money and worth in whole thousandths.
MICROMETRES = 1000.0
THOUSANDTHS = 1000.0

METHODS = (
    Method(
        "cutting-stock",
        "Cutting pieces out of bars",
        "sum over a bar of (number*length + ceil(number/stick)*(stick extra + kerf)) "
        "<= bar + kerf; least bought, then least begun, then least scrap",
        "lengths to the nearest micrometre; bounds by column generation, Gilmore and Gomory 1961",
        ("gilmore-gomory", "cutting-search"),
    ),
)


def plan_cuts(*, pieces, bars, kerf, usable_offcut, step_limit=STEP_LIMIT):
    """Plan: how to cut `pieces` out of `bars`; the aim is at the top of this module.

    pieces: sequence of Piece. bars: sequence of Bar. kerf: of the saw, after every stick or single
    piece that is sawn; the last may fall off the end of the bar [mm]. usable_offcut: an offcut this
    long or longer is kept, a shorter one is scrap [mm]. step_limit: allowance of work, a whole
    number; with more, a plan that was not proved best may be. The answer depends on the input
    alone, never on the clock. Result: Plan. Raises ValueError for a length, count or price that is
    not positive. Source: bounds after Gilmore and Gomory 1961; checked against mixed integer
    programming.
    """
    demand = _checked_demand(pieces)
    kinds = _kinds(pieces, bars, demand, kerf)
    if not any([kind.tag is not None for kind in kinds]):
        # Nothing is wanted, or no bar gives any of it.
        return Plan(
            cuts=[],
            missing=demand,
            bought=0.0,
            bought_bound=0.0,
            bought_proved=True,
            begun=0.0,
            begun_bound=0.0,
            begun_proved=True,
            scrap=0.0,
            scrap_bound=0.0,
            scrap_proved=True,
            steps=0,
        )
    steps = Steps(step_limit)
    buying = Job([_recost(kind, kind.spend) for kind in kinds], demand, None, steps)
    whole = steps.ration(0.5)
    bought = cheapest(buying, None)
    steps.limit = whole
    costs = [_worth(bars, kind) for kind in kinds]
    beginning = [_recost(kind, cost) for kind, cost in zip(kinds, costs)]
    job = Job(beginning, demand, bought.cost, steps)
    begun = cheapest(job, bought.bars)
    usable = _whole(usable_offcut, MICROMETRES)
    layout = arranged(job, begun.bars, usable)
    scrap = scrap_of(kinds, layout, usable)
    least_scrap = min(scrap, scrap_bound(job, layout, usable))
    missing, unpaid = _missing(job, layout)
    return Plan(
        cuts=_cuts(bars, kinds, layout, usable),
        missing=missing,
        bought=(bought.cost - unpaid) / THOUSANDTHS,
        bought_bound=max(0, bought.bound - unpaid) / THOUSANDTHS,
        bought_proved=bought.proved,
        begun=begun.cost / THOUSANDTHS,
        begun_bound=begun.bound / THOUSANDTHS,
        begun_proved=begun.proved,
        scrap=scrap / MICROMETRES,
        scrap_bound=least_scrap / MICROMETRES,
        scrap_proved=scrap <= least_scrap,
        steps=steps.done,
    )


def sticks(number, stick):
    """How `number` pieces share the fewest sticks of at most `stick`, as evenly as may be.

    number, stick: whole numbers over 0. Result: list of whole numbers, larger first.
    """
    count = (number + stick - 1) // stick
    return [number // count + (1 if at < number % count else 0) for at in range(count)]


def _checked_demand(pieces):
    for piece in pieces:
        if not piece.length > 0.0 or piece.count < 0 or piece.stick < 1 or piece.stick_extra < 0.0:
            raise ValueError("a piece needs a length over 0 and a count from 0: %s" % piece.name)
    return [int(piece.count) for piece in pieces]


def _kinds(pieces, bars, demand, kerf):
    """Kinds of bar, like bars together; and of each piece that could run short, the lack as a kind.

    A kind's tag is a list of (bar index, count); that of a lack is None, its price above all bars.
    """
    kinds = []
    found = {}
    endless = [False] * len(pieces)
    dearest = 1
    most = sum(demand)  # whole numbers
    for at, bar in enumerate(bars):
        if not bar.length > 0.0 or (bar.price is not None and not bar.price > 0.0):
            raise ValueError("a bar needs a length and a price over 0: %s" % bar.name)
        trim = _whole(-bar.held if bar.fed else kerf, MICROMETRES)
        room = _whole(bar.length, MICROMETRES) + trim
        takes = []
        for piece in range(len(pieces)) if bar.accepts is None else bar.accepts:
            each, stick, extra = _span(pieces[piece], bar.fed, kerf)
            if demand[piece] and each + extra <= room:
                takes.append((piece, each, stick, extra))
                endless[piece] = endless[piece] or bar.count is None
        if not takes or bar.count == 0:
            continue
        spend = 0 if bar.price is None else max(1, _whole(bar.price, THOUSANDTHS))
        key = (room, trim, spend, bar.count is None, bar.worth, tuple(takes))
        if key not in found:
            found[key] = Kind(room, bar.count, 0, spend, tuple(takes), trim, [(at, bar.count)])
            kinds.append(found[key])
        elif bar.count is not None:
            found[key].count += bar.count
            found[key].tag.append((at, bar.count))
        dearest += spend * (most if bar.count is None else min(bar.count, most))
    for piece, number in enumerate(demand):
        if number and not endless[piece]:
            each, stick, extra = _span(pieces[piece], False, kerf)
            takes = ((piece, each, stick, extra),)
            kinds.append(Kind(each + extra, None, 0, dearest, takes, 0, None))
    return kinds


def _span(piece, fed, kerf):
    """(each, stick, extra) of a piece on a bar [um]."""
    if fed:
        return _whole(piece.length, MICROMETRES), 1, 0
    if piece.stick == 1:
        return _whole(piece.length + piece.stick_extra + kerf, MICROMETRES), 1, 0
    return (
        _whole(piece.length, MICROMETRES),
        piece.stick,
        _whole(piece.stick_extra + kerf, MICROMETRES),
    )


def _whole(value, scale):
    """The nearest whole number of the smaller unit."""
    return int(math.floor(value * scale + 0.5))


def _recost(kind, cost):
    return Kind(kind.room, kind.count, cost, kind.spend, kind.takes, kind.trim, kind.tag)


def _worth(bars, kind):
    """Cost of beginning one of the user's own bars; a bought one is paid for already."""
    if kind.tag is None or bars[kind.tag[0][0]].price is not None:
        return 0
    return _whole(bars[kind.tag[0][0]].worth, THOUSANDTHS)


def _missing(job, plan):
    """(number of each piece that no bar is left for, what those lacks count for in the cost)."""
    missing = [0] * len(job.demand)
    unpaid = 0
    for index, pattern, times in plan:
        if job.kinds[index].tag is None:
            missing = [number + less * times for number, less in zip(missing, pattern)]
            unpaid += job.kinds[index].spend * times
    return missing, unpaid


def _cuts(bars, kinds, plan, usable):
    """The plan as a list of Cut: bars in the order given, the fullest first, like together."""
    rows = []
    for index, pattern, times in plan:
        rows.append((-used_by(kinds[index], pattern), index, pattern, times))
    rows.sort()
    taken = [0] * len(kinds)
    loose = []
    for _, index, pattern, times in rows:
        if kinds[index].tag is not None:
            for bar, alike in _drawn(kinds[index], taken[index], times):
                loose.append((bar, offcut(kinds[index], pattern), pattern, alike))
            taken[index] += times
    loose.sort()
    cuts = []
    for bar, left, pattern, alike in loose:
        held = tuple([(piece, number) for piece, number in enumerate(pattern) if number])
        if cuts and cuts[-1].bar == bar and cuts[-1].pieces == held:
            alike += cuts.pop().alike
        rest = left / MICROMETRES
        kept = left > 0 and left >= usable
        cuts.append(
            Cut(
                bar=bar,
                alike=alike,
                pieces=held,
                used=bars[bar].length - rest,
                offcut=rest,
                kept=kept,
            )
        )
    return cuts


def _drawn(kind, already, times):
    """Which bars of a kind the next `times` are: (bar index, how many), in the order given."""
    drawn = []
    for at, count in kind.tag:
        if count is None:
            drawn.append((at, times))
            return drawn
        if already >= count:
            already -= count
            continue
        number = min(times, count - already)
        already = 0
        if number:
            drawn.append((at, number))
            times -= number
        if times == 0:
            break
    return drawn
