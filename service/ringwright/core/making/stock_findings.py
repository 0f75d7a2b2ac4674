"""What to know before metal is ordered or cut, as findings in words."""

from ..catalogue.inputs_stock import THOROUGH
from ..records import GOOD, STOP, WATCH, Quantity, finding
from ..wording import decimal, length, percent
from .bars import CORED, LARGEST
from .stock_bars import serves

# A stick that stands out further than this chatters [diameters]; common practice, no source.
LONGEST_OVERHANG = 2.5
# A chucking piece shorter than this share of the diameter holds badly; common practice, no source.
SHORTEST_HOLD = 0.15
# A plan within this share of the proved bound needs no second look.
CLOSE_ENOUGH = 0.02
# Bars named one by one in a finding.
MOST_NAMED = 3


def findings(sets, have, offered, done, values):
    """List of Finding. sets: stock.Set list. have, offered: stock_bars.StockBar lists.
    done: stock_bars.Cutting. values: checked inputs."""
    rows = of_sets(sets)
    if have or offered:
        _short(rows, sets, have, offered, done.plan)
        _left_alone(rows, sets, have)
        _other_metal(rows, sets, done)
        _unpriced(rows, offered)
        _for_spares(rows, sets, done)
    if done.plan.cuts:
        _proof(rows, done, values)
    return rows


def of_sets(sets):
    """List of Finding of the sets alone. sets: stock.Set list."""
    rows = []
    for one in sets:
        _bar(rows, one)
        _stick(rows, one)
        _hold(rows, one)
    return rows


def _bar(rows, one):
    if one.size is None:
        rows.append(
            finding(
                "bar",
                STOP,
                "No bar is made that cleans up to %s for %s." % (length(one.outside), one.name),
                "Have a short tube cast with metal to turn on both sides.",
                Quantity(one.outside, "mm"),
                Quantity(LARGEST, "mm"),
            )
        )
        return
    words = "Ask for %s, which measures about %s over its skin and cleans up to %s." % (
        one.size.label,
        length(one.size.as_cast),
        length(one.size.nominal),
    )
    if one.size.form == CORED:
        words += (
            " A core seldom lies true: set the bar by its outside, and see that the bore cleans "
            "up before you part anything off."
        )
    rows.append(
        finding(
            "bar",
            GOOD,
            words,
            "",
            Quantity(one.size.nominal, "mm"),
            Quantity(one.outside, "mm"),
        )
    )


def _stick(rows, one):
    out = one.sticks[0] * one.part
    if not one.through and out > LONGEST_OVERHANG * one.outside:
        rows.append(
            finding(
                "stick",
                WATCH,
                "A stick of %d blanks stands out by %s, %s diameters: it will chatter."
                % (one.sticks[0], length(out), decimal(out / one.outside, 1)),
                "Turn fewer blanks from one stick, or steady its end.",
                Quantity(out, "mm"),
                Quantity(LONGEST_OVERHANG * one.outside, "mm"),
            )
        )


def _hold(rows, one):
    least = SHORTEST_HOLD * one.outside
    if one.chucking < least:
        rows.append(
            finding(
                "chucking-piece",
                WATCH,
                "%s in the chuck is little to hold a bar of %s by."
                % (length(one.chucking), length(one.outside)),
                "Leave at least %s, or steady the end." % length(least),
                Quantity(one.chucking, "mm"),
                Quantity(least, "mm"),
            )
        )


def _short(rows, sets, have, offered, plan):
    """Whether the bars at hand and on offer give every blank."""
    short = 0
    for number in plan.missing:
        short += number
    if not short:
        rows.append(finding("rack", GOOD, "The bars at hand, and those bought, give every blank."))
        return
    why = "The bars at hand run out %d blanks short." % short
    if offered:
        why = "The bars at hand and on offer run out %d blanks short." % short
    for one, number in zip(sets, plan.missing):
        suited = [bar for bar in have + offered if serves(bar, one)]
        if number and not suited:
            why += " None cleans up to %s, bores out to %s and is of the right metal, for %s." % (
                length(one.outside),
                length(one.inside),
                one.name,
            )
        elif number and max([bar.length for bar in suited]) < one.part + one.extra:
            why += " Those that suit %s are shorter than a stick of one blank, %s." % (
                one.name,
                length(one.part + one.extra),
            )
    rows.append(
        finding(
            "rack",
            WATCH,
            why,
            "Order what is listed as still to order, or give the bars you can buy.",
            Quantity(short, "1"),
        )
    )


def _left_alone(rows, sets, have):
    """Names the bars at hand that suit no set, and why."""
    reasons = []
    for bar in have:
        if any([serves(bar, one) for one in sets]):
            continue
        alike = [one for one in sets if one.material.family == bar.material.family]
        if not alike:
            reasons.append("%s is of another metal" % bar.name)
        elif bar.cleans_up < min([one.outside for one in alike]):
            reasons.append("%s cleans up to %s only" % (bar.name, length(bar.cleans_up)))
        else:
            reasons.append("%s needs boring to %s" % (bar.name, length(bar.bores_out)))
    if reasons:
        more = len(reasons) - MOST_NAMED
        words = "; ".join(reasons[:MOST_NAMED])
        if more > 0:
            words += "; and %d more" % more
        rows.append(finding("rack-unsuited", GOOD, "Left alone: %s." % words))


def _other_metal(rows, sets, done):
    """Warns of bars in the cut list that are near the metal that a set asks for, not it."""
    named = []
    for entry in done.plan.cuts:
        bar = done.bars[entry.bar]
        for at, _ in entry.pieces:
            wanted = sets[at].material
            if wanted.key != bar.material.key:
                words = "%s is %s, %s asks for %s" % (
                    bar.name,
                    bar.material.title,
                    sets[at].name,
                    wanted.title,
                )
                if words not in named:
                    named.append(words)
    if named:
        rows.append(
            finding(
                "metal",
                WATCH,
                "Near metals stand in for one another: %s." % "; ".join(named[:MOST_NAMED]),
                "See that its stiffness and strength will do for the ring, or take the bar off "
                "the list.",
            )
        )


def _unpriced(rows, offered):
    """Names the bars on offer that were left out for want of a price."""
    left = [bar.name for bar in offered if bar.price is None]
    if left and len(left) < len(offered):
        rows.append(
            finding(
                "offer-price",
                WATCH,
                "Left out for want of a price: %s." % ", ".join(left[:MOST_NAMED]),
                "Give the price of every bar on offer, or the price of the metal.",
            )
        )


def _for_spares(rows, sets, done):
    """Points out a bar that is bought, or begun, for nothing but spares."""
    for entry in done.plan.cuts:
        spares = entry.alike == 1
        words = []
        for at, number in entry.pieces:
            one = sets[at]
            spares = spares and number <= one.wanted - one.count
            words.append("%d of %s" % (number, one.name))
        if spares:
            bar = done.bars[entry.bar]
            rows.append(
                finding(
                    "spares",
                    WATCH,
                    "%s is %s for spares alone: %s."
                    % (bar.name, "begun" if bar.have else "bought", ", ".join(words)),
                    "With so many fewer spares it is not needed.",
                )
            )
            return


def _proof(rows, done, values):
    """Says how good the cut list is, as far as it was proved."""
    plan = done.plan
    if plan.bought_proved and plan.begun_proved:
        if plan.scrap_proved:
            why = "No way of cutting buys, begins or wastes less: proved."
        else:
            why = (
                "No way of cutting buys or begins less: proved. Scrap is %s; at least %s cannot be "
                "helped." % (length(plan.scrap), length(plan.scrap_bound))
                if plan.scrap_bound > 0.0
                else "No way of cutting buys or begins less: proved. Scrap is %s."
                % length(plan.scrap)
            )
        rows.append(finding("cut-list", GOOD, why))
        return
    if plan.bought_proved:
        found, bound, what = plan.begun, plan.begun_bound, "begun"
    else:
        found, bound, what = plan.bought, plan.bought_bound, "bought"
    gap = (found - bound) / found if found else 0.0
    why = "The best plan found; a better one could save at most %s of what is %s." % (
        percent(gap),
        what,
    )
    if gap <= CLOSE_ENOUGH:
        rows.append(finding("cut-list", GOOD, why))
        return
    remedy = "Set cutting_effort to thorough, or plan the sets one at a time."
    if values.get("cutting_effort") == THOROUGH:
        remedy = "Plan the sets one at a time, and compare."
    rows.append(
        finding("cut-list", WATCH, why, remedy, Quantity(gap, "1"), Quantity(CLOSE_ENOUGH, "1"))
    )
