"""What the running engine's figures mean to its owner, in words."""

from ..catalogue.inputs_engine import MISSING_QUANTITY
from ..catalogue.inputs_ring import DOUBLE_TURN
from ..properties.materials import material
from ..records import GOOD, STOP, WATCH, Quantity, finding
from ..wording import KG_PER_LB, decimal, length, mass, percent, steam_pressure, temperature
from . import ring_at_hand, steam_cycle
from .wear import hours_to

WORN_GROOVE = 0.05  # [mm] out of flat: about the least that a feeler finds; common practice
SPRING_WATCH = 0.5  # share of the wall pressure left; common practice
FRICTION_WATCH = 0.10  # share of the indicated power


def findings(given, engine, losses, rubbing, left, grown, largest):
    """List of Finding.

    given: filled inputs. engine: running.Engine. losses: name -> running.Loss. rubbing: friction's
    usual share of the power [1]. left: spring left in the ring at hand [1] or None. grown:
    wear.Wear or None. largest: gap at which rings are due [mm] or None.
    """
    found = [_verdict(given, losses)]
    if given["ring_type"] == DOUBLE_TURN or losses["double-turn"].total[1] < losses["now"].total[1]:
        found.append(_round_the_back(losses["double-turn"]))
    found.extend(_steam(given, engine, losses))
    found.extend(on_the_piston(given))
    if rubbing > FRICTION_WATCH:
        found.append(
            finding(
                "friction",
                WATCH,
                "Ring friction takes about %s of the power." % percent(rubbing),
                "Fewer or narrower rings, less spring, or better oiling.",
                Quantity(rubbing, "1"),
                Quantity(FRICTION_WATCH, "1"),
            )
        )
    if left is not None and left < SPRING_WATCH:
        found.append(
            finding(
                "spring",
                WATCH,
                "Going by its gap, the ring at hand has %s of its spring left." % percent(left),
                "Measure how wide it stands free and make new rings if that is small too.",
                Quantity(left, "1"),
                Quantity(SPRING_WATCH, "1"),
            )
        )
    if grown is not None:
        found.append(_wear(grown, largest))
    return found


def steam_mass(kg):
    """Steam in words: "1.20 kg (2.6 lb)", or under a kilogram "150 g (5.3 oz)"."""
    if kg >= 1.0:
        return mass(kg)
    return "%s g (%s oz)" % (decimal(1000.0 * kg, 0), decimal(16.0 * kg / KG_PER_LB, 1))


def _amount(rates):
    """Usual figure and spread: "150 g (5.3 oz), between 40 g (1.4 oz) and 1.20 kg (2.6 lb)"."""
    return "%s, between %s and %s" % tuple([steam_mass(rates[level]) for level in (1, 0, 2)])


def _verdict(given, losses):
    now, new = losses["now"], losses[given["ring_type"]]
    why = (
        "The rings at hand lose %s of steam an hour, %s of what the engine uses. New plain rings "
        "would lose %s an hour; new double-turn rings %s."
        % (
            _amount(now.total),
            percent(now.share[1]),
            _amount(losses["plain"].total),
            _amount(losses["double-turn"].total),
        )
    )
    limit = given["largest_leak_share"]
    value, bound = Quantity(now.share[1], "1"), Quantity(limit, "1")
    if now.share[1] < limit:
        return finding("leak", GOOD, why, "", value, bound)
    saved = now.total[1] - new.total[1]
    if saved <= 0.5 * now.total[1]:
        remedy = (
            "New rings of this kind alone would not help much: look to the gap they are given, the "
            "piston's clearance and the sides of the grooves."
        )
    else:
        why += " New rings of this kind save about %s." % steam_mass(saved)
        remedy = "Make new rings."
    return finding("leak", WATCH, why, remedy, value, bound)


def _round_the_back(loss):
    return finding(
        "double-turn-leak",
        GOOD,
        "A double-turn ring leaves no straight way through. Steam that stands behind it can still "
        "leave by the gap of the turn on the low side. Nobody has measured how much. The trade "
        "claims nil; the most is what a plain ring's gap as wide would pass, %s an hour."
        % steam_mass(loss.total[2]),
    )


def _steam(given, engine, losses):
    found = []
    ends = engine.diagram.compression_pressure
    if ends > given["cycle"].admission:
        found.append(
            finding(
                "compression",
                WATCH,
                "Compression ends above the steam pressure, at %s: the valve would lift or the "
                "engine knock." % steam_pressure(ends - 0.101325),
                "Close the exhaust later, or give more clearance volume.",
                Quantity(ends, "MPa"),
                Quantity(given["cycle"].admission, "MPa"),
            )
        )
    if engine.mean_pressure[1] <= 0.0:
        found.append(
            finding(
                "power",
                STOP,
                "The cycle gives no power: the steam expands below the back pressure.",
                "Cut off later, or run with more steam pressure.",
                Quantity(engine.mean_pressure[1], "MPa"),
                Quantity(0.0, "MPa"),
            )
        )
    measured = given["steam_measured"]
    if measured is None:
        return found
    missing = 1.0 - engine.indicated / measured
    low, _, high = MISSING_QUANTITY
    value, limit = Quantity(missing, "1"), Quantity(high, "1")
    most = steam_cycle.LEAKAGE_OF_MISSING
    if missing < 0.0:
        found.append(
            finding(
                "missing-quantity",
                WATCH,
                "The feed measured is less than the steam the cycle holds.",
                "Check the cut-off and the pressure in the chest: an earlier cut-off or a "
                "throttled steam pipe would explain it.",
                value,
                Quantity(0.0, "1"),
            )
        )
    elif missing > high:
        found.append(
            finding(
                "missing-quantity",
                WATCH,
                "%s of the feed does not show in the cycle; published trials of single cylinders "
                "range from %s to %s." % (percent(missing), percent(low), percent(high)),
                "Look for leaks at the valve, the drains and the rings, for priming, and for bare "
                "metal that wants lagging.",
                value,
                limit,
            )
        )
    else:
        found.append(
            finding(
                "missing-quantity",
                GOOD,
                "%s of the feed does not show in the cycle, as published trials of single "
                "cylinders lead one to expect. Up to about %s of that may be leaks, valves "
                "included." % (percent(missing), percent(most)),
                "",
                value,
                limit,
            )
        )
    if losses["now"].total[1] > missing * measured > 0.0:
        found.append(
            finding(
                "leak-against-feed",
                WATCH,
                "The leak worked out is more than all the steam that is missing from the feed "
                "measured.",
                "Measure the gap, the piston and the light again, and the feed over a longer run.",
                Quantity(losses["now"].total[1], "kg/h"),
                Quantity(missing * measured, "kg/h"),
            )
        )
    return found


def on_the_piston(given):
    """List of Finding of the ring on the piston, its leak apart. given: filled inputs."""
    found = []
    wide = 1.5 * given["closed_gap"]
    if given["worn_gap"] > wide and given["light"] == 0.0:
        found.append(
            finding(
                "light",
                WATCH,
                "The leak is worked out for a ring that bears all round. In a worn bore a light "
                "between ring and bore may pass more than the gap.",
                "Try the ring in the bore with a lamp behind it, at both ends and the middle, "
                "and give the widest light and its length.",
                Quantity(given["worn_gap"], "mm"),
                Quantity(wide, "mm"),
            )
        )
    if given["light"] > 0.0 and given["light_length"] <= 0.0:
        found.append(
            finding(
                "light",
                WATCH,
                "The light has no length: what passes it is not in the leak.",
                "Give how far round the bore it reaches.",
                Quantity(given["light_length"], "mm"),
            )
        )
    if given["groove_wear"] > WORN_GROOVE:
        found.append(
            finding(
                "groove",
                WATCH,
                "The side of the groove is %s out of flat: a new ring would bear on its edge and "
                "leak there as the old one does." % length(given["groove_wear"]),
                "True up the groove and make the ring wider to suit.",
                Quantity(given["groove_wear"], "mm"),
                Quantity(WORN_GROOVE, "mm"),
            )
        )
    entry = material(given["ring_material"])
    if given["steam_temperature"] > entry.hottest:
        found.append(
            finding(
                "ring-material-heat",
                STOP,
                "%s is not for steam at %s."
                % (entry.title, temperature(given["steam_temperature"])),
                "Use grey iron, or keep the steam below %s." % temperature(entry.hottest),
                Quantity(given["steam_temperature"], "degC"),
                Quantity(entry.hottest, "degC"),
            )
        )
    return found + ring_at_hand.findings(given)


def _wear(grown, largest):
    value = Quantity(grown.last_gap, "mm")
    if largest is None or grown.growth[2] <= 0.0:
        return finding("wear", GOOD, "The gap readings show no growth that matters.", "", value)
    left = hours_to(grown.last_gap, largest, grown.growth[2])
    why = "The gap grows by %s in 100 hours (%s to %s)." % (
        length(grown.growth[1]),
        length(max(0.0, grown.growth[0])),
        length(grown.growth[2]),
    )
    if left <= 0.0:
        return finding(
            "wear",
            WATCH,
            why + " It has reached the size at which rings are due.",
            "Make new rings.",
            value,
            Quantity(largest, "mm"),
        )
    return finding(
        "wear",
        GOOD,
        why + " Look again within %s running hours." % decimal(0.5 * left, 0),
        "",
        value,
        Quantity(largest, "mm"),
    )
