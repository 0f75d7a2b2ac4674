"""The one table of calculations: name to inputs and function. Both engines call only this module.

A calculation takes a dict in core units, checked against its fields, and returns an OrderedDict
with "figures", "findings", "chosen", "cautions" and whatever lists are its own.
"""

import json
from collections import OrderedDict, namedtuple

from . import fields as field_tools
from .problems import CoreProblem, InputProblem
from .records import plain

# name: as in the address. fields: sequence of Field. run: function of the checked values.
# answer: catalogue.Answer, the names of all that it answers with.
Calculation = namedtuple("Calculation", ("name", "summary", "fields", "run", "answer"))

# Name, what it is, its function, the module with its FIELDS, what it answers with.
_ROWS = (
    (
        "bore-survey",
        "What the bore is like, and what to do",
        "measuring.bore_survey.calculate",
        "measuring.bore_survey",
        "catalogue.measuring.BORE_SURVEY",
    ),
    (
        "sizing",
        "The ring, its groove and its piston",
        "ring.sizing.calculate",
        "ring.sizing",
        "catalogue.ring.SIZING",
    ),
    (
        "tooling",
        "The blank and the tools to make",
        "making.tooling.calculate",
        "making.tooling",
        "catalogue.making.TOOLING",
    ),
    (
        "stock",
        "The bar to buy, and how to cut it",
        "making.stock.calculate",
        "making.stock",
        "catalogue.making.STOCK",
    ),
    (
        "route",
        "The route card, operation by operation",
        "making.route.calculate",
        "making.route",
        "catalogue.making.ROUTE",
    ),
    (
        "job",
        "Ring, tooling, stock and route card at once",
        "job.calculate",
        "job",
        "catalogue.making.JOB",
    ),
    (
        "wall-pressure",
        "How the ring bears on its wall",
        "wall.wall_pressure.calculate",
        "wall.wall_pressure",
        "catalogue.wall.WALL_PRESSURE",
    ),
    (
        "ring-without-heat",
        "A plain ring made without heat",
        "wall.ring_without_heat.calculate",
        "wall.ring_without_heat",
        "catalogue.without_heat.ANSWER",
    ),
    (
        "inspection",
        "What the finished ring really is",
        "measuring.inspection.calculate",
        "measuring.inspection",
        "catalogue.measuring.INSPECTION",
    ),
    (
        "soak",
        "Heat without a pyrometer: what a soak sets",
        "measuring.tell_tales.calculate",
        "measuring.tell_tales",
        "catalogue.soak.ANSWER",
    ),
    (
        "spread",
        "What matters most, and how many come right",
        "measuring.spread.calculate",
        "measuring.spread",
        "catalogue.measuring.SPREAD",
    ),
    (
        "drawing",
        "Dimensioned drawings and charts",
        "drawing.drawing.calculate",
        "drawing.drawing",
        "catalogue.reference.DRAWING",
    ),
    (
        "running",
        "What the rings lose, now and new",
        "running.running.calculate",
        "running.running",
        "catalogue.running.RUNNING",
    ),
    (
        "fitting",
        "Fitting card: putting on, running in, looking again, laying up",
        "fitting.fitting.calculate",
        "fitting.fitting",
        "fitting.fitting.ANSWER",
    ),
    (
        "groove-recut",
        "A worn groove trued up, its lands and its ring",
        "fitting.groove_recut.calculate",
        "fitting.groove_recut",
        "catalogue.groove.ANSWER",
    ),
    (
        "ring-pack",
        "How many rings, and how they share the pressure",
        "fitting.ring_pack.calculate",
        "fitting.ring_pack",
        "catalogue.ring_pack.ANSWER",
    ),
    (
        "piston-valve",
        "Rings of a piston valve",
        "running.piston_valve.calculate",
        "running.piston_valve",
        "catalogue.running.PISTON_VALVE",
    ),
    (
        "expander",
        "A wavy strip or a coil that presses the ring outwards",
        "running.expander.calculate",
        "running.expander",
        "catalogue.expander.ANSWER",
    ),
    (
        "thumb-rules",
        "What the thumb rules would do",
        "ring.thumb_rules.calculate",
        "ring.thumb_rules",
        "catalogue.thumb_rules.ANSWER",
    ),
    (
        "materials",
        "Materials and their properties",
        "properties.material_list.calculate_materials",
        "",
        "catalogue.reference.MATERIAL_LIST",
    ),
    (
        "bars",
        "Bars that can be had",
        "making.bars.calculate_bars",
        "making.bars",
        "catalogue.reference.BAR_LIST",
    ),
    (
        "sealings",
        "Ways to seal a piston",
        "running.sealings.calculate_sealings",
        "",
        "catalogue.reference.SEALING_LIST",
    ),
    (
        "methods",
        "Formulas, ranges and sources",
        "reference.calculate_methods",
        "",
        "catalogue.reference.METHOD_LIST",
    ),
)


class Table:
    """Calculations by name, in order. A module is read when its calculation is first asked for: the
    phone has its first figures from a third of the files."""

    def __init__(self, rows):
        self._rows = OrderedDict([(row[0], row) for row in rows])
        self._read = {}

    def __getitem__(self, name):
        if name not in self._read:
            _, summary, function, fields, answer = self._rows[name]
            self._read[name] = Calculation(
                name=name,
                summary=summary,
                fields=_module(fields).FIELDS if fields else (),
                run=_named(function),
                answer=_named(answer),
            )
        return self._read[name]

    def __contains__(self, name):
        return name in self._rows

    def __iter__(self):
        return iter(self._rows)

    def __len__(self):
        return len(self._rows)

    def modules(self):
        """The module of every calculation, in order, each once."""
        found = []
        for row in self._rows.values():
            module = _module(row[2].rpartition(".")[0])
            if module not in found:
                found.append(module)
        return found

    def keys(self):
        """The names."""
        return self._rows.keys()

    def values(self):
        """Every Calculation."""
        return [self[name] for name in self._rows]

    def items(self):
        """Every (name, Calculation)."""
        return [(name, self[name]) for name in self._rows]


def _module(name):
    package = __name__[: __name__.rindex(".")]
    return __import__(package + "." + name, None, None, ("FIELDS",))


def _named(path):
    module, _, name = path.rpartition(".")
    return getattr(_module(module), name)


CALCULATIONS = Table(_ROWS)


def run(name, request, working=True):
    """The answer as a plain tree. Raises InputProblem, or another CoreProblem, never returns one.

    working: False leaves out the numbers put into each formula.
    """
    calculation = CALCULATIONS[name]
    return plain(calculation.run(field_tools.checked(calculation.fields, request)), working)


def run_json(name, text, working=True):
    """As `run`, JSON text in and out, problems included: what the phone's worker calls."""
    try:
        return json.dumps({"answer": run(name, json.loads(text), working)})
    except InputProblem as problem:
        faults = [fault.plain() for fault in problem.faults]
        return json.dumps({"problem": {"code": problem.code, "faults": faults}})
    except CoreProblem as problem:
        return json.dumps(
            {"problem": {"code": problem.code, "message": str(problem), "faults": []}}
        )
