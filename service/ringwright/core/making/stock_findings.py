"""What to know before metal is ordered or cut, as findings in words."""

from ..records import GOOD, STOP, WATCH, Quantity, finding
from ..wording import decimal, length, percent
from .bars import LARGEST

# A stick that stands out further than this chatters [diameters].
LONGEST_OVERHANG = 2.5


def findings(sets, owned, plan, listing, values):
    """List of Finding. sets: stock.Set list. owned: stock.Owned list. plan: cutting.Plan.
    listing: (name, bar) of the plan's bars. values: checked inputs."""
    rows = []
    for one in sets:
        _bar(rows, one)
        _stick(rows, one)
    if owned:
        _rack(rows, sets, owned, plan)
    if plan.cuts:
        _proof(rows, plan)
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
    rows.append(
        finding(
            "bar",
            GOOD,
            "Ask for %s, which measures about %s over its skin and cleans up to %s."
            % (one.size.label, length(one.size.as_cast), length(one.size.nominal)),
            "",
            Quantity(one.size.nominal, "mm"),
            Quantity(one.outside, "mm"),
        )
    )


def _stick(rows, one):
    out = one.sticks[0] * one.part
    if out > LONGEST_OVERHANG * one.outside:
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


def _rack(rows, sets, owned, plan):
    short = 0
    for number in plan.missing:
        short += number
    if not short:
        rows.append(finding("rack", GOOD, "The bars at hand, and those bought, give every blank."))
        return
    largest = 0.0
    for bar in owned:
        largest = max(largest, bar.cleans_up)
    widest = 0.0
    for at, number in enumerate(plan.missing):
        if number:
            widest = max(widest, sets[at].outside)
    if largest < widest:
        why = "No bar at hand cleans up to %s: the largest does to %s." % (
            length(widest),
            length(largest),
        )
    else:
        why = "The bars at hand run out %d blanks short." % short
    rows.append(
        finding(
            "rack",
            WATCH,
            why,
            "Order what is listed as still to order, or give the length of bar you can buy.",
            Quantity(short, "1"),
        )
    )


def _proof(rows, plan):
    if plan.bought_proved and plan.begun_proved and plan.scrap_proved:
        rows.append(
            finding("cut-list", GOOD, "No way of cutting buys, begins or wastes less: proved.")
        )
        return
    if plan.bought_proved and plan.begun_proved:
        why = (
            "No way of cutting buys or begins less: proved. Scrap is %s; at least %s is proved."
            % (
                length(plan.scrap),
                length(plan.scrap_bound),
            )
        )
    else:
        gap = (
            plan.bought - plan.bought_bound
            if not plan.bought_proved
            else plan.begun - plan.begun_bound
        )
        base = plan.bought if not plan.bought_proved else plan.begun
        why = "The best plan found; a better one could save at most %s of what is %s." % (
            percent(gap / base if base else 0.0),
            "bought" if not plan.bought_proved else "begun",
        )
    rows.append(finding("cut-list", GOOD, why))
