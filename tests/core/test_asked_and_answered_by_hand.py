"""How inputs are described, faults told and a job put together, each by hand."""

import json
from types import SimpleNamespace as Record

from ringwright.core import calculations, describe, job
from ringwright.core.fields import Default, field
from ringwright.core.problems import Fault, unworkable
from ringwright.core.records import STOP, WATCH


def default(value, words):
    return Default(words=words, value=value, rule=None, why="", cases=None)


def test_an_input_is_described_by_what_it_has_and_nothing_else():
    bare = field("gap", "length", "the gap")
    said = {"name": "gap", "kind": "length", "meaning": "the gap", "unit": "mm"}
    assert describe.described_fields((bare,)) == [said]
    full = field(
        "gap",
        "length",
        "the gap",
        default=default(0.5, "half"),
        lowest=0.0,
        highest=3.0,
        above_lowest=True,
        symbol="s1",
        required=True,
        choices=("a", "b"),
        items=(bare,),
    )
    assert describe.described_fields((full,)) == [
        {
            **said,
            "default": "half",
            "usual": 0.5,
            # Nought is a limit as any other.
            "lowest": 0.0,
            "highest": 3.0,
            "choices": ["a", "b"],
            "items": [said],
            "above_lowest": True,
            "symbol": "s1",
            "required": True,
        }
    ]
    for kind, value in (("flag", True), ("choice", "a")):
        (row,) = describe.described_fields((field("x", kind, "it", default=default(value, "w")),))
        assert "usual" not in row
        assert "unit" not in row
        assert row["default"] == "w"


def answered(lists=(), **parts):
    return Record(lists=[Record(name=name) for name in lists], parts=parts)


def test_lists_of_parts_within_parts_have_their_names():
    deep = answered(("bars",), cuts=answered(("rest", "kept")))
    whole = answered(("tools",), stock=deep, ring=answered())
    assert describe._listed(whole) == ["tools", "stock", "bars", "cuts", "rest", "kept", "ring"]


def test_a_fault_says_the_numbers_that_there_are():
    bare = Fault(("bars", 0), "range", "it is", "give")
    said = {"path": ["bars", 0], "code": "range", "message": "it is", "remedy": "give"}
    assert bare.plain() == said
    full = Fault(("a",), "range", "it is", "give", 2.5, 0.0, 9.0, "mm", True, "in")
    assert full.plain() == {
        **said,
        "path": ["a"],
        "value": {"value": 2.5, "unit": "mm"},
        "lowest": {"value": 0.0, "unit": "mm"},
        "highest": {"value": 9.0, "unit": "mm"},
        "more_than": True,
        "likely": "in",
    }


def test_what_cannot_be_worked_has_a_unit_where_it_has_a_number():
    (fault,) = unworkable("bore", "too small", "bore out").faults
    assert (fault.path, fault.unit) == (("bore",), "")
    for numbers in ({"value": 0.0}, {"lowest": 0.0}, {"highest": 0.0}):
        (fault,) = unworkable("bore", "too small", "bore out", **numbers).faults
        assert fault.unit == "mm"


def test_a_job_repeats_what_is_not_good_once_the_gravest_first():
    """A thick ring with a tight gap, whose parts say many things of it."""
    request = {"bore": 80.0, "ring_type": "plain", "radial_thickness": 4.6, "closed_gap": 0.05}
    fields = calculations.CALCULATIONS["job"].fields
    found = job.calculate(calculations.field_tools.checked(fields, request))
    parts = [found[name]["findings"] for name in ("sizing", "tooling", "stock", "route")]
    said = [one for part in parts for one in part]
    outcomes = [one.outcome for one in found["findings"]]
    assert STOP in outcomes
    assert WATCH in outcomes
    assert outcomes == sorted(outcomes, key=(STOP, WATCH).index)
    assert {(one.check, one.why) for one in found["findings"]} == {
        (one.check, one.why) for one in said if one.outcome in (STOP, WATCH)
    }
    assert len(found["findings"]) == len({(one.check, one.why) for one in found["findings"]})
    for name in ("sizing", "tooling", "stock", "route"):
        assert "chosen" not in found[name]
        assert "cautions" not in found[name]
    keys = [one["key"] for one in found["cautions"]]
    assert len(keys) == len(set(keys)) > 0


def test_numbers_put_in_are_told_unless_they_are_not_wanted():
    request = {"bore": 80.0, "ring_type": "plain"}
    told = calculations.run("sizing", request)
    short = calculations.run("sizing", request, working=False)
    assert "working" in told["figures"]["wall_pressure"]
    assert not any("working" in one for one in short["figures"].values())
    text = json.dumps(request)
    assert json.loads(calculations.run_json("sizing", text))["answer"] == json.loads(
        json.dumps(told)
    )
    assert json.loads(calculations.run_json("sizing", text, False))["answer"] == json.loads(
        json.dumps(short)
    )
