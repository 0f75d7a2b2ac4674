"""The one table of calculations: name to inputs and function. Both engines call only this module.

A calculation takes a dict in core units, checked against its fields, and returns an OrderedDict
with "figures", "findings", "chosen", "cautions" and whatever lists are its own.
"""

import json
from collections import OrderedDict, namedtuple

from . import (
    bars,
    bore_survey,
    inspection,
    inspection_fields,
    job,
    materials,
    piston_valve,
    reference,
    route,
    running,
    sealings,
    sizing,
    spread,
    spread_fields,
    stock,
    tooling,
    wall_pressure,
)
from . import fields as field_tools
from .drawing import drawing
from .problems import CoreProblem, InputProblem
from .records import plain

# name: as in the address. fields: sequence of Field. run: function of the checked values.
Calculation = namedtuple("Calculation", ("name", "summary", "fields", "run"))

_TABLE = (
    Calculation(
        "bore-survey",
        "What the bore is like, and what to do",
        bore_survey.FIELDS,
        bore_survey.calculate,
    ),
    Calculation("sizing", "The ring, its groove and its piston", sizing.FIELDS, sizing.calculate),
    Calculation("tooling", "The blank and the tools to make", tooling.FIELDS, tooling.calculate),
    Calculation("stock", "The bar to buy, and how to cut it", stock.FIELDS, stock.calculate),
    Calculation("route", "The route card, operation by operation", route.FIELDS, route.calculate),
    Calculation("job", "Ring, tooling, stock and route card at once", job.FIELDS, job.calculate),
    Calculation(
        "wall-pressure",
        "How the ring bears on its wall",
        wall_pressure.FIELDS,
        wall_pressure.calculate,
    ),
    Calculation(
        "inspection",
        "What the finished ring really is",
        inspection_fields.FIELDS,
        inspection.calculate,
    ),
    Calculation(
        "spread",
        "What matters most, and how many come right",
        spread_fields.FIELDS,
        spread.calculate,
    ),
    Calculation("drawing", "Dimensioned drawings and charts", drawing.FIELDS, drawing.calculate),
    Calculation("running", "What the rings lose, now and new", running.FIELDS, running.calculate),
    Calculation(
        "piston-valve", "Rings of a piston valve", piston_valve.FIELDS, piston_valve.calculate
    ),
    Calculation("materials", "Materials and their properties", (), materials.calculate_materials),
    Calculation("bars", "Bars that can be had", bars.FIELDS, bars.calculate_bars),
    Calculation("sealings", "Ways to seal a piston", (), sealings.calculate_sealings),
    Calculation("methods", "Formulas, ranges and sources", (), reference.calculate_methods),
)

CALCULATIONS = OrderedDict([(entry.name, entry) for entry in _TABLE])


def run(name, request, working=True):
    """The answer as a plain tree. Raises InputProblem, or another CoreProblem, never returns one.

    working: False leaves out the numbers put into each formula.
    """
    calculation = CALCULATIONS[name]
    return plain(calculation.run(field_tools.checked(calculation.fields, request)), working)


def run_json(name, text):
    """As `run`, JSON text in and out, problems included: what the phone's worker calls."""
    try:
        return json.dumps({"answer": run(name, json.loads(text))})
    except InputProblem as problem:
        faults = [
            {"path": list(f.path), "code": f.code, "message": f.message, "remedy": f.remedy}
            for f in problem.faults
        ]
        return json.dumps({"problem": {"code": problem.code, "faults": faults}})
    except CoreProblem as problem:
        return json.dumps(
            {"problem": {"code": problem.code, "message": str(problem), "faults": []}}
        )
