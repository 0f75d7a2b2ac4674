"""Calculation "spread": what matters most to a ring's pressure, gap and former, and how many come
out right.

A ring is made to fixed tools, but its metal, its heat and its sizes are only known so well. Each
input has a spread (95 %, taken as normal and independent). How much each one moves the outcome
ranks them; a fixed sample of all of them together says what share of rings falls within the
limits.
"""

import math
from collections import OrderedDict, namedtuple

from ..catalogue import figures_of
from ..catalogue.inputs import Chooser
from ..catalogue.inputs_blank import BLANK
from ..catalogue.inputs_measuring import GIVEN, SPREADS
from ..catalogue.inputs_ring import RING
from ..catalogue.measuring import SPREAD
from ..cautions import cautions
from ..fields import UNIT_OF_KIND, value_words
from ..problems import InputProblem, unworkable
from ..records import GOOD, STOP, WATCH, Method, Quantity, finding
from ..ring.design import as_inputs, settle
from ..ring.judging import (
    SLACK_STOP,
    STIFF_STOP,
    judge_gap,
    judge_pressure,
    least_gap,
    pressing,
)
from ..ring.sizing import stops
from ..walk.finished import PRESSURE_SHARE
from ..wording import in_a_sentence, percent
from .ring_sample import Limits, outcome, sample

FIELDS = tuple(RING.values()) + tuple(BLANK.values()) + tuple(SPREADS.values())
YIELD_GOOD = 0.9
YIELD_WATCH = 0.6

WORDS = {
    "modulus": "the modulus of the metal",
    "relief": "the relief that the heat gives",
    "radial_thickness": "the radial thickness",
    "end_kerf": "the saw cut",
    "bore": "the bore as measured",
    "outside": "the outside as finish-turned",
    "tool": "the former or spacer",
}
REMEDIES = {
    "modulus": "Make one ring, inspect its gap and its closing force, and give the modulus they "
    "show.",
    "relief": "Make one ring, inspect its free gap, and give the relief it shows; hold the heat "
    "longer and more evenly.",
    "radial_thickness": "Hold the thickness closer: bore and turn at one chucking, and measure hot "
    "parts cold.",
    "end_kerf": "Saw with the same blade throughout and finish the gap by file to a feeler.",
    "bore": "Gauge the bore again with a finer gauge, in more places.",
    "outside": "Finish-turn to the gauge or the bore itself, cold.",
    "tool": "Turn the former or spacer closer to size.",
}


# One input's part in an outcome: name, spread in its own unit, what that spread makes of the
# outcome, share of the outcome's variance.
Part = namedtuple("Part", ("input", "spread", "effect", "share"))

_UNITS = {"wall_pressure": "MPa"}
_INPUT_UNITS = {"modulus": "MPa", "relief": "1"}


def calculate(values):
    """What matters most: figures with their spread, "rankings", findings, chosen, cautions.

    values: checked values of FIELDS, a plain dict in core units. "rankings" lists for each outcome
    the inputs, largest share of its variance first. Raises InputProblem.
    """
    design, chosen = settle(values)
    take = Chooser(values, SPREADS)
    spreads = _spreads(values, design, take)
    limits = _limits(design, take)
    rankings = OrderedDict()
    for place, name in enumerate(("wall_pressure", "closed_gap", "free_gap")):
        rankings[name] = ranked(spreads, lambda shifts, place=place: outcome(design, shifts)[place])
    tool = "spacer_width" if design.spring.former_diameter is None else "former_diameter"
    rankings[tool] = ranked(
        spreads, lambda shifts: _tool_for(values, design, shifts, tool), ("tool", "outside")
    )
    tried = sample(design, spreads, limits)
    return OrderedDict(
        (
            ("figures", _figures(design, rankings, tool, tried, limits)),
            ("findings", _findings(tried, rankings) + stops(design, values)),
            ("rankings", [_ranking_row(name, parts) for name, parts in rankings.items()]),
            ("chosen", chosen + take.chosen),
            ("cautions", cautions("figures")),
        )
    )


def _spreads(values, design, take):
    """OrderedDict: input -> its spread, 95 %, in its own unit. take: a Chooser."""
    metal = design.duty.ring_material
    spreads = OrderedDict()
    if values.get("modulus") is not None:
        spreads["modulus"] = take("modulus_spread", design.duty.modulus, case=GIVEN)
    else:
        published = 0.5 * (metal.modulus_high - metal.modulus_low)
        spreads["modulus"] = take("modulus_spread", published, of=in_a_sentence(metal.title))
    if values.get("relief") is not None:
        spreads["relief"] = take("relief_spread", case=GIVEN)
    else:
        spreads["relief"] = take(
            "relief_spread", 0.5 * (design.soak.relief.high - design.soak.relief.low)
        )
    for name, given in (
        ("radial_thickness", "thickness_spread"),
        ("end_kerf", "kerf_spread"),
        ("bore", "bore_spread"),
        ("outside", "outside_spread"),
        ("tool", "tool_spread"),
    ):
        spreads[name] = take(given)
    _keep_below(values, design, spreads)
    return spreads


def _keep_below(values, design, spreads):
    """Raises InputProblem for a spread that was given and is no less than what it is of."""
    for name, given, size, kind in (
        ("modulus", "modulus_spread", design.duty.modulus, "modulus"),
        ("radial_thickness", "thickness_spread", design.section.thickness, "length"),
        ("end_kerf", "kerf_spread", design.allowances.kerf, "length"),
        ("bore", "bore_spread", design.duty.bore, "length"),
    ):
        if values.get(given) is not None and spreads[name] >= size:
            raise unworkable(
                given,
                "nothing can be off by as much as it is: %s" % value_words(kind, size),
                "give less, and look at its unit",
                value=spreads[name],
                highest=size,
                unit=UNIT_OF_KIND[kind],
            )


def _limits(design, take):
    aim, added = design.spring.wall_pressure, design.expander_pressure
    low, high = (1.0 - PRESSURE_SHARE) * aim, (1.0 + PRESSURE_SHARE) * aim
    if judge_pressure(pressing(design)).outcome != STOP:
        low, high = max(low, SLACK_STOP - added), min(high, STIFF_STOP - added)
    widest = 2.0 * design.duty.closed_gap + 0.1
    wide = judge_gap(design, design.duty.closed_gap).most
    if wide is not None:
        widest = min(widest, wide)
    limits = Limits(
        lowest_pressure=take("lowest_pressure", low),
        highest_pressure=take("highest_pressure", high),
        lowest_closed_gap=take("lowest_closed_gap", least_gap(design)),
        highest_closed_gap=take("highest_closed_gap", widest),
    )
    for low, high in (
        ("lowest_pressure", "highest_pressure"),
        ("lowest_closed_gap", "highest_closed_gap"),
    ):
        if getattr(limits, low) >= getattr(limits, high):
            raise unworkable(high, "%s is not above %s" % (high, low), "give a larger " + high)
    return limits


def _tool_for(values, design, shifts, tool):
    """The former or spacer that the aim would ask for if the inputs were off by `shifts`."""
    asked = dict(values)
    for name in ("free_gap", "former_ratio", "shelf_former", "groove_width"):
        asked[name] = None
    asked["wall_pressure"] = design.spring.wall_pressure
    asked["ring_width"] = design.section.width
    asked["radial_thickness"] = design.section.thickness + shifts.get("radial_thickness", 0.0)
    asked["bore"] = design.duty.bore + shifts.get("bore", 0.0)
    asked["closed_gap"] = design.duty.closed_gap
    asked["clamped_gap"] = design.allowances.clamped_gap
    asked["piston_diameter"] = design.piston_diameter
    asked["end_kerf"] = design.allowances.kerf + shifts.get("end_kerf", 0.0)
    asked["finishing_allowance"] = design.allowances.finishing
    asked["modulus"] = design.duty.modulus + shifts.get("modulus", 0.0)
    asked["relief"] = min(max(design.soak.relief.likely + shifts.get("relief", 0.0), 0.1), 1.0)
    return as_inputs(settle(asked)[0])[tool]


def ranked(spreads, worked, without=()):
    """List of Part, largest share first, by central differences over the spreads.

    spreads: OrderedDict of input -> spread, 95 %. worked: function of a dict of shifts to the
    outcome. without: inputs that do not enter.
    """
    parts = []
    total = 0.0
    for name, spread in spreads.items():
        if name in without:
            continue
        effect = _effect(worked, name, spread)
        parts.append([name, spread, effect])
        total += effect * effect
    rows = []
    for place, (name, spread, effect) in enumerate(parts):
        share = effect * effect / total if total else 0.0
        # Shares alike to nine digits keep the order of the inputs, in either engine.
        rows.append(
            (
                -int(share * 1e9 + 0.5),
                place,
                Part(input=name, spread=spread, effect=effect, share=share),
            )
        )
    rows.sort()
    return [row[2] for row in rows]


def _effect(worked, name, spread):
    """Half of what the outcome gains from one end of a spread to the other.

    Where no tool would serve at one end, twice the other end's part.
    """
    ends = []
    for shift in (spread, -spread):
        try:
            ends.append(worked({name: shift}))
        except InputProblem:
            ends.append(None)
    above, below = ends
    if above is None and below is None:
        return 0.0
    if above is None:
        return worked({}) - below
    if below is None:
        return above - worked({})
    return 0.5 * (above - below)


def _figures(design, rankings, tool, tried, limits):
    nominal = outcome(design, {})
    values, methods = {}, {tool: "spread-rank"}
    for place, name in enumerate(("wall_pressure", "closed_gap", "free_gap")):
        values[name] = (tried.low[place], nominal[place], tried.high[place])
        methods[name] = "spread-sample"
    reach = 0.0
    for part in rankings[tool]:
        reach += part.effect * part.effect
    reach = math.sqrt(reach)
    size = as_inputs(design)[tool]
    values[tool] = (size - reach, size, size + reach)
    values["yield_share"] = tried.share
    given = {
        "p low": limits.lowest_pressure,
        "p high": limits.highest_pressure,
        "s1 low": limits.lowest_closed_gap,
        "s1 high": limits.highest_closed_gap,
    }
    return figures_of(SPREAD, values, given, methods)


def _ranking_row(name, parts):
    rows = []
    for part in parts:
        rows.append(
            OrderedDict(
                (
                    ("input", part.input),
                    ("plus_minus", Quantity(part.spread, _INPUT_UNITS.get(part.input, "mm"))),
                    ("effect", Quantity(part.effect, _UNITS.get(name, "mm"))),
                    ("share", Quantity(part.share, "1")),
                )
            )
        )
    return OrderedDict((("outcome", name), ("inputs", rows)))


def _findings(tried, rankings):
    rows = []
    value, limit = Quantity(tried.share, "1"), Quantity(YIELD_GOOD, "1")
    said = "About %s of rings made so come within the limits" % percent(tried.share)
    first = rankings["wall_pressure"][0]
    if tried.share >= YIELD_GOOD:
        rows.append(finding("yield", GOOD, said + ".", "", value, limit))
    else:
        by_gap = tried.gap_lost > tried.pressure_lost
        worst = rankings["closed_gap"][0] if by_gap else first
        why = said + "; most of the rest miss on %s." % (
            "the gap in the bore" if by_gap else "the wall pressure"
        )
        outcome_word = WATCH if tried.share >= YIELD_WATCH else STOP
        rows.append(finding("yield", outcome_word, why, REMEDIES[worst.input], value, limit))
    if first.share > 0.0:
        why = "What matters most to the wall pressure is %s: %s of its variance." % (
            WORDS[first.input],
            percent(first.share),
        )
        rows.append(finding("matters-most", GOOD, why, "", Quantity(first.share, "1")))
    return rows


METHODS = (
    Method(
        "spread-rank",
        "What matters most",
        "effect = (y(x + spread) - y(x - spread))/2, share = effect^2/(sum of effect^2)",
        "independent inputs, each alone over its 95 % spread",
        ("definition",),
    ),
    Method(
        "spread-sample",
        "Share of rings within limits",
        "1200 rings, all inputs off at once as normal deviates on a Kronecker sequence "
        "(generalised golden ratio)",
        "independent normal inputs; the share within 0.01 of a hundred thousand random rings",
        ("abramowitz-stegun", "definition"),
    ),
)
