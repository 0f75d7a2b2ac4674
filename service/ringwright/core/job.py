"""Calculation "job": ring, tooling, stock and route card of one set of rings, settled once.

Each part is what the calculation of its name answers, less what was chosen and the cautions, which
stand once for all. "findings" repeats what is not good, the gravest first.
"""

from collections import OrderedDict

from .catalogue.inputs import names
from .cautions import cautions
from .making import route, stock, tooling
from .records import STOP, WATCH
from .ring import sizing

_OWN = names(route.FIELDS) + ["sets"]
FIELDS = route.FIELDS + tuple([entry for entry in stock.FIELDS if entry.name not in _OWN])


def calculate(values):
    """The whole job of one set of rings: parts, findings, what was chosen, cautions.

    values: checked values of FIELDS, a plain dict in core units. Raises InputProblem.
    """
    design, tools, chosen = tooling.settle_tooling(values)
    answers = OrderedDict()
    answers["sizing"] = sizing.answer(design, [], values)
    answers["tooling"] = tooling.answer(design, tools, [], values)
    answers["stock"] = stock.calculate(stock_request(design, tools, values))
    answers["route"] = route.answer(design, tools, [], values)
    chosen = chosen + answers["stock"]["chosen"]
    keys = []
    for part in answers.values():
        for entry in part["cautions"]:
            if entry["key"] not in keys:
                keys.append(entry["key"])
    found = []
    for outcome in (STOP, WATCH):
        for part in answers.values():
            found += [
                entry
                for entry in part["findings"]
                # What is said of the rings being made stands in two parts alike.
                if entry.outcome == outcome and entry not in found
            ]
    whole = OrderedDict()
    whole["findings"] = found
    for name, part in answers.items():
        kept = OrderedDict()
        for key, value in part.items():
            if key not in ("chosen", "cautions"):
                kept[key] = value
        whole[name] = kept
    whole["chosen"] = chosen
    whole["cautions"] = cautions(*keys)
    return whole


def stock_request(design, tools, values):
    """What the stock calculation is asked for the rings of a Design.

    design: a Design. tools: its Tooling. values: checked values of FIELDS.
    """
    request = {}
    for entry in stock.FIELDS:
        request[entry.name] = values.get(entry.name)
    request["sets"] = stock.sets_from(
        outside_diameter=design.blank.rough_outside,
        inside_diameter=design.blank.bored_inside,
        part_length=tools.part_length,
        rings=design.duty.rings,
        material=design.duty.ring_material.key,
        cut_off_width=None if tools.table_grip is None else design.allowances.slit,
        table_grip=tools.table_grip,
    )
    return request
