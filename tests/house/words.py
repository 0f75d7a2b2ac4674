"""Every word that a user reads, each once, with where it stands: the core's, and the app's own."""

import json
import re

from conftest import ROOT
from ringwright.core.calculations import CALCULATIONS, run_json
from ringwright.core.catalogue import all_figures
from ringwright.core.catalogue.checks import all_checks
from ringwright.core.cautions import CAUTIONS
from ringwright.core.describe import described

REQUESTS = ROOT / "tests" / "vectors" / "requests.json"
APP = ROOT / "client_pwa" / "src"
# What a reader of a screen never sees: code between the marks of an element.
CODE = re.compile(r"=>|\$\{|\bconst\b|\breturn\b|===|&&|\?\.|[;{}]")
NUMBERS = re.compile(r"\d[\d ,./x]*")


def gathered():
    """Place -> list of texts, in the order met; texts that differ in numbers alone count once."""
    found = {}
    seen = set()

    def add(place, text):
        text = " ".join(str(text).split())
        key = NUMBERS.sub("0", text)
        if re.search(r"[A-Za-z]{2}", text) and key not in seen:
            seen.add(key)
            found.setdefault(place, []).append(text)

    _declared(add)
    _answered(add)
    _of_app(add)
    return found


def _declared(add):
    answers = [calculation.answer for calculation in CALCULATIONS.values()]
    for caution in CAUTIONS.values():
        add("cautions", caution)
    for check in all_checks(answers).values():
        add("checks", check.key.replace("-", " "))
        add("checks", check.judges)
    for figure in all_figures(answers).values():
        add("figures", figure.label)
        add("figures", figure.meaning)
    for table in described(CALCULATIONS).values():
        add("calculations", table["summary"])
        _inputs(add, table["fields"])


def _inputs(add, fields):
    for field in fields:
        add("inputs", field["meaning"])
        add("inputs", field.get("default", ""))
        _inputs(add, field.get("items", ()))


def _answered(add):
    """Card, findings, choices, remedies and refusals: what the common requests are answered with,
    those that are wrong among them.
    """
    for each in json.loads(REQUESTS.read_text(encoding="utf-8")):
        if each["calculation"] == "methods":
            continue
        told = json.loads(run_json(each["calculation"], json.dumps(each["request"])))
        for fault in told.get("problem", {}).get("faults", ()):
            add("refusals", fault["message"])
            add("refusals", fault["remedy"])
        _walk(add, told.get("answer", {}))


SAID = {
    "why": "findings and choices",
    "remedy": "remedies",
    "title": "card",
    "tool": "card",
    "text": "card",
    "check": "card",
}


def _walk(add, node, name=""):
    if isinstance(node, dict):
        for key, value in node.items():
            if key in SAID and isinstance(value, str) and " " in value:
                add(SAID[key], value)
            elif key not in ("svg", "views", "methods", "sources"):
                _walk(add, value, key)
    elif isinstance(node, list):
        for value in node:
            _walk(add, value, name)


def _of_app(add):
    for path in sorted(APP.rglob("*.ts*")):
        if ".test." in path.name or path.name == "names.ts":
            continue
        text = re.sub(r"/\*.*?\*/|(?<!:)//[^\n]*", "", path.read_text(encoding="utf-8"), flags=re.S)
        place = "app: %s" % path.relative_to(APP).parts[0]
        for said in re.findall(r'"((?:[^"\\\n]|\\.)*)"', text):
            if re.match(r"[A-Z][a-z']* [a-z]", said) or re.search(r"[a-z] [a-z]+ [a-z]", said):
                add(place, said)
        if path.suffix == ".tsx":
            for said in re.findall(r">([^<>{}]*[A-Za-z]{2}[^<>{}]*)(?=[<{])", text):
                if not CODE.search(said):
                    add(place, said)
