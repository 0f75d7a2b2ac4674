"""What the promise of stability covers, as data: names, kinds, units, bounds and addresses.

    PYTHONPATH=service:tests python -m contract.promise tests/vectors/promised_1.0.0.json

writes it. Until 1.0.0 is released it is written anew whenever a name changes; from then on never
again: what it holds must stay.
"""

import json
import sys

from ringwright.api.app import create_app, specification
from ringwright.api.problems import KINDS
from ringwright.core.calculations import CALCULATIONS
from ringwright.core.catalogue.checks import all_checks
from ringwright.core.fields import UNIT_OF_KIND


def promised():
    """The names of today, as plain data."""
    calculations = {}
    inputs = {}
    for name, calculation in CALCULATIONS.items():
        inputs.update(_inputs(calculation.fields))
        calculations[name] = {
            "inputs": sorted(entry.name for entry in calculation.fields),
            "required": sorted(entry.name for entry in calculation.fields if entry.required),
            **_answer(calculation.answer),
        }
    return {
        "inputs": inputs,
        "calculations": calculations,
        "checks": sorted(all_checks([one.answer for one in CALCULATIONS.values()])),
        "problems": {code: kind.status for code, kind in KINDS.items()},
        "addresses": sorted(
            "%s %s" % (method.upper(), path)
            for path, methods in specification(create_app())["paths"].items()
            for method in methods
            if path.startswith("/v1/") and method in ("get", "post")
        ),
    }


def _inputs(fields):
    found = {}
    for entry in fields:
        found[entry.name] = {
            "kind": entry.kind,
            "unit": UNIT_OF_KIND.get(entry.kind, ""),
            "lowest": entry.lowest,
            "highest": entry.highest,
            "choices": list(entry.choices),
            "required": entry.required,
            "items": _inputs(entry.items),
        }
    return found


def _answer(answered):
    return {
        "figures": {one.declared.name: one.declared.unit for one in answered.figures},
        "always": sorted(one.declared.name for one in answered.figures if one.always),
        "lists": sorted(column.name for column in answered.lists),
        "parts": {name: _answer(part) for name, part in answered.parts.items()},
    }


if __name__ == "__main__":
    with open(sys.argv[1], "w", encoding="utf-8") as file:
        json.dump(promised(), file, indent=1, sort_keys=True)
        file.write("\n")
