"""The page "job by job" names every calculation, and its spreads are those that are answered."""

import json
import re

import pytest

from conftest import ROOT
from ringwright.core import calculations
from ringwright.core.catalogue import all_figures
from ringwright.core.problems import CoreProblem

PAGE = (ROOT / "client_pwa" / "docs" / "job-by-job.md").read_text(encoding="utf-8")
ROWS = [
    [cell.strip() for cell in line.strip("|").split("|")]
    for line in PAGE.splitlines()
    if line.startswith("| ") and "`" in line
]
# "leak rate 0 to 4.7 times"
SPREAD = re.compile(r"([a-z][a-z ]*?) ([\d.]+) to ([\d.]+) times")
# What is stated may be this much wider than what the common requests show, and no narrower.
WIDER = 0.08


def stated():
    """(calculation, label of a figure, least, most) of each spread of the page."""
    for _job, names, _answers, surely, _left in ROWS:
        for label, least, most in SPREAD.findall(surely):
            yield names.strip("`"), label, float(least), float(most)


def shares(calculation, name):
    """Least and most over the value of a figure, of every common request that has them."""
    found = []

    def walk(node, key):
        if isinstance(node, dict):
            if key == name and node.get("value") and "low" in node:
                found.append((node["low"] / node["value"], node["high"] / node["value"]))
            for inner, value in node.items():
                walk(value, inner)
        elif isinstance(node, list):
            for value in node:
                walk(value, key)

    rows = (ROOT / "tests" / "vectors" / "requests.json").read_text(encoding="utf-8")
    for row in json.loads(rows):
        if row["calculation"] == calculation:
            try:
                walk(calculations.run(calculation, row["request"]), "")
            except CoreProblem:
                continue
    return found


def test_every_calculation_is_named_in_a_row_of_its_own_and_nothing_else_is():
    named = [name for row in ROWS for name in re.findall("`([^`]+)`", row[1])]
    assert sorted(named) == sorted(calculations.CALCULATIONS), "add a row to job-by-job.md"
    for row in ROWS:
        assert len(row) == 5 and all(row), row


def test_the_page_is_linked_from_the_readme():
    assert "(client_pwa/docs/job-by-job.md)" in (ROOT / "README.md").read_text(encoding="utf-8")


@pytest.mark.parametrize(("calculation", "label", "least", "most"), list(stated()))
def test_a_spread_is_what_is_answered(calculation, label, least, most):
    figures = all_figures([calculations.CALCULATIONS[calculation].answer])
    names = [name for name, one in figures.items() if one.label.lower() == label]
    assert len(names) == 1, label
    found = shares(calculation, names[0])
    assert found
    lowest, highest = min(low for low, _ in found), max(high for _, high in found)
    assert lowest - WIDER <= least <= lowest + 0.005
    assert highest - 0.01 <= most <= highest * (1.0 + WIDER)


def test_the_spreads_are_read():
    assert {calculation for calculation, *_ in stated()} >= {
        "sizing", "tooling", "route", "inspection", "running", "piston-valve",
    }  # fmt: skip


def test_where_a_row_says_none_no_figure_has_a_spread():
    for _job, names, _answers, surely, _left in ROWS:
        if surely.startswith("none"):
            for calculation in re.findall("`([^`]+)`", names):
                figures = all_figures([calculations.CALCULATIONS[calculation].answer])
                assert [name for name in figures if shares(calculation, name)] == [], calculation
