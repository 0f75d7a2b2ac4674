"""What to try for each check of a running engine that is not good, and how it is said."""

import math

from .. import clearances
from ..catalogue.inputs_engine import ENGINE, OWNER, RING_AT_HAND
from ..catalogue.inputs_ring import DOUBLE_TURN, PRACTICE_PRESSURE, RING
from ..properties.materials import for_use, material
from ..ring import remedies
from ..ring.judging import judge_gap, least_piston_clearance
from ..ring.remedies import change
from ..wording import fine_length, in_a_sentence, length, said_down, said_up, wall_pressure
from .ring_at_hand import standing

FIELDS = {}
for _table in (OWNER, RING_AT_HAND, ENGINE, RING):
    FIELDS.update(_table)


def told(values, given, rows, judge, judge_whole):
    """The findings of a running engine with remedies that were tried.

    values: checked inputs. given: as they were filled. rows: list of Finding. judge: function of
    values to (list of Finding of the ring on the piston, the filled inputs). judge_whole: the same
    with those of the engine, which costs more.
    """

    def options(row):
        maker = _OPTIONS.get(row.check)
        return maker(standing(given), row) if maker else None

    def of_the_engine(row):
        maker = _OF_THE_ENGINE.get(row.check)
        return maker(given) if maker else None

    rows = remedies.tried(values, rows, options, judge, FIELDS, _words)
    return remedies.tried(values, rows, of_the_engine, judge_whole, FIELDS, _words)


def _less_leak(given):
    """New rings; with them, one by one, all else that steam passes by."""
    asked = [("worn_gap", None), ("gap_readings", None)]
    found = [change(*asked)]
    for pair in (
        ("groove_wear", None),
        ("light", None),
        ("closed_gap", None),
        ("piston_diameter", None),
        ("ring_type", DOUBLE_TURN),
    ):
        asked.append(pair)
        found.append(change(*asked))
    return found


def _less_friction(given):
    found = [
        change(("expander_pressure", None)),
        change(("wall_pressure", PRACTICE_PRESSURE)),
        change(("wall_pressure", PRACTICE_PRESSURE), ("expander_pressure", None)),
        change(("ring_width", None)),
        change(("friction_coefficient", None)),
    ]
    most = given["rings_on_piston"]
    for rings in (most - 1, most // 2, 1):
        if rings >= 1:
            found.append(change(("rings_on_piston", rings)))
    return found + [change(("friction_coefficient", None), ("rings_on_piston", 1))]


def _gap(ring, row):
    need = said_up(judge_gap(ring, ring.duty.closed_gap).need)
    return [change(("worn_gap", need)), change(("worn_gap", need), ("closed_gap", need))]


def _new_ring(ring, row):
    return [change(("worn_gap", None)), change(("worn_gap", None), ("closed_gap", None))]


def _side(ring, row):
    """Side clearance as practice leaves it."""
    play = clearances.side_clearance(
        ring_width=ring.section.width,
        ring_expansion=ring.duty.ring_material.expansion,
        piston_expansion=ring.duty.piston.expansion,
        ring_temperature=ring.duty.temperature,
        piston_temperature=ring.duty.temperature,
        shop_temperature=ring.duty.shop,
        margin=clearances.running_side_clearance(ring.duty.bore)[0],
    )
    grown = ring.section.width * (
        clearances.growth(ring.duty.ring_material.expansion, ring.duty.temperature, ring.duty.shop)
        - 1.0
    )
    found = [change(("side_clearance", math.ceil(1000.0 * play) / 1000.0))]
    found.append(change(("side_clearance", math.ceil(1000.0 * (grown + 0.025)) / 1000.0)))
    return found


def _piston(ring, row):
    small = ring.duty.bore - least_piston_clearance(ring)
    found = [
        said_down(small),
        said_down(small - clearances.running_piston_clearance(ring.duty.bore)),
    ]
    return [change(("piston_diameter", one)) for one in found] + [change(("piston_diameter", None))]


def _metal(ring, row):
    found = []
    for key in for_use("ring"):
        if material(key).hottest >= ring.duty.temperature:
            found.append(change(("ring_material", key)))
    return found + [
        change(("ring_material", one["ring_material"]), ("expander_pressure", PRACTICE_PRESSURE))
        for one in found
    ]


def _slack(ring, row):
    lacking = max(
        math.ceil(1000.0 * (PRACTICE_PRESSURE - ring.spring.wall_pressure)) / 1000.0, 0.001
    )
    return [change(("expander_pressure", lacking)), change(("wall_pressure", PRACTICE_PRESSURE))]


def _stiff(ring, row):
    return [
        change(("expander_pressure", None)),
        change(("wall_pressure", PRACTICE_PRESSURE)),
        change(("wall_pressure", PRACTICE_PRESSURE), ("expander_pressure", None)),
    ]


def _piston_metal(ring, row):
    return [
        change(("piston_material", key))
        for key in for_use("piston")
        if material(key).family != "aluminium"
    ]


_OPTIONS = {
    "end-gap": _gap,
    "gap-running": _gap,
    "gap-wide": _new_ring,
    "side-clearance": _side,
    "side-clearance-running": _side,
    "side-clearance-start": _side,
    "piston-seizes": _piston,
    "piston-clearance": lambda ring, row: [change(("piston_diameter", None))],
    "piston-clearance-running": _piston,
    "pairing": _metal,
    "ring-material-heat": _metal,
    "piston-metal": _piston_metal,
    "groove": lambda ring, row: [change(("groove_wear", None))],
    "too-slack": _slack,
    "too-stiff": _stiff,
}


_OF_THE_ENGINE = {"leak": _less_leak, "friction": _less_friction}
# What is left out, in the words of who does it.
_DONE = {
    "gap_readings": "begin its readings anew",
    "groove_wear": "true up the groove and make the ring wider to suit",
    "light": "see that they bear all round",
    "expander_pressure": "run it without an expander",
    "ring_width": "make the rings no wider than is usual",
    "friction_coefficient": "oil it until it rubs no more than is usual",
}


def _words(name, value, given):
    if value is None and name in _DONE:
        return _DONE[name]
    if name == "rings_on_piston":
        return "run it with %d on a piston" % value
    if name == "ring_type":
        return "make them double-turn rings"
    if name == "worn_gap":
        if value is None:
            return "make new rings, with a closed gap of %s" % length(given["closed_gap"])
        return "file the gap to %s" % length(value)
    if name == "closed_gap" and value is None:
        return "leave the closed gap out"
    if name == "closed_gap":
        return "give new rings the same"
    if name == "side_clearance":
        return "give the ring %s at its sides: face it, or open or true its groove" % fine_length(
            value
        )
    if name == "piston_diameter":
        size = given["piston_diameter"] if value is None else value
        return "make the piston %s in diameter" % length(size)
    if name == "expander_pressure" and value is not None:
        return (
            "fit a spring expander behind it, sized by the calculation of that name, that adds %s"
            % wall_pressure(value)
        )
    if name == "wall_pressure":
        return "make rings that press with %s" % wall_pressure(value)
    if name in ("ring_material", "piston_material"):
        called = "rings" if name == "ring_material" else "a piston"
        return "make %s of %s" % (called, in_a_sentence(material(value).title))
    return remedies.plain_words(name, value)
