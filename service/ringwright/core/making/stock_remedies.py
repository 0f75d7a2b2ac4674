"""What to try for each finding of the stock that an input clears, and how it is said."""

from ..catalogue.inputs_stock import SHOP
from ..ring import remedies
from ..ring.remedies import change
from ..wording import length, said_up
from .stock_findings import LONGEST_OVERHANG, SHORTEST_HOLD

# Each trial of fewer spares is another cut list: only tried where one takes a few milliseconds.
MOST_PAIRS = 12


def told(values, sets, rows, judge_sets, judge):
    """The findings with remedies that were tried.

    values: checked inputs. sets: stock.Set list. rows: list of Finding. judge_sets: function of
    values to (list of Finding of the sets alone, None). judge: the same of all, with the bars cut.
    """

    bars = len(values.get("bars") or ()) + len(values.get("bars_to_buy") or ())

    def of_sets(row):
        if row.check == "stick":
            most = [int(LONGEST_OVERHANG * one.outside / one.part) for one in sets]
            return [
                change(("rings_per_stick", max(min(most), 1))),
                change(("rings_per_stick", None)),
            ]
        if row.check == "chucking-piece":
            least = max([SHORTEST_HOLD * one.outside for one in sets])
            return [change(("chucking_piece", said_up(least)))]
        return None

    def of_all(row):
        if row.check != "spares" or len(sets) * bars > MOST_PAIRS:
            return None
        spare = max([one.wanted - one.count for one in sets])
        fewer = [spare - less for less in (1, 2, 3) if spare - less > 0]
        return [change(("spares", number)) for number in fewer + [0]]

    rows = remedies.tried(values, rows, of_sets, judge_sets, SHOP, _words)
    return remedies.tried(values, rows, of_all, judge, SHOP, _words)


def _words(name, value, _):
    if name == "chucking_piece":
        return "leave %s in the chuck" % length(value)
    if name == "rings_per_stick" and value is not None:
        return "turn at most %d from one stick" % value
    if name == "spares":
        return "cut %d spares for each set" % value if value else "cut no spares"
    return remedies.plain_words(name, value)
