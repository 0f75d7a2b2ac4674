"""The published form of a job: a valid schema, which what the service writes keeps to."""

import json

import jsonschema
import pytest

from ringwright.core.calculations import CALCULATIONS
from ringwright.core.fields import checked
from ringwright.core.making import tooling
from ringwright.export import job_link


@pytest.fixture(scope="module")
def schema(root):
    return json.loads((root / "openapi" / "job.schema.json").read_text(encoding="utf-8"))


@pytest.fixture(scope="module")
def validator(schema):
    return jsonschema.Draft202012Validator(schema)


def test_the_schema_is_one(schema):
    jsonschema.Draft202012Validator.check_schema(schema)


def test_its_examples_keep_to_it(schema, validator):
    assert len(schema["examples"]) == 2
    for example in schema["examples"]:
        validator.validate(example)


def test_the_stored_job_keeps_to_it_and_every_name_is_an_input(root, validator):
    stored = json.loads((root / "tests/vectors/jobs/version_3.json").read_text(encoding="utf-8"))
    validator.validate(stored)
    known = set()
    for calculation in CALCULATIONS.values():
        known.update(entry.name for entry in calculation.fields)
    valve = {entry.name for entry in CALCULATIONS["piston-valve"].fields}
    for job in stored["jobs"]:
        assert set(job["inputs"]) <= known | {"piston_valve"}
        assert set(job["inputs"].get("piston_valve", {})) <= valve


def test_the_links_of_the_service_keep_to_it(validator):
    asked = {
        "bore": 79.375,
        "ring_type": "plain",
        "rings": 3,
        "relief": 0.85,
        "soak_temperature": 550.0,
    }
    values = checked(tooling.FIELDS, asked)
    job = job_link.job_of("Launch engine Marigold", tooling.FIELDS, {"bore": "3 1/8 in"}, values)
    validator.validate(job)
    assert job["job"]["inputs"]["soak_temperature"] == "550.0 degC"


@pytest.mark.parametrize(
    "change",
    [
        {"format": "something"},
        {"version": 2},
        {"version": "3"},
        {"job": {"name": "x", "inputs": {}}, "jobs": []},
        {"job": {"inputs": {}}},
        {"job": {"name": "x"}},
        {"job": {"name": "x", "inputs": {"Bore": "80 mm"}}},
        {"job": {"name": "x", "inputs": {"__proto__": "80 mm"}}},
        {"job": {"name": "x", "inputs": {"bore": None}}},
        {"job": {"name": "x" * 121, "inputs": {}}},
        {"job": {"name": "x", "inputs": {}, "done": [1]}},
        {"job": {"name": "x", "inputs": {}, "measured": {"a": 1}}},
    ],
)
def test_what_is_no_job_is_refused(validator, change):
    job = {"format": "ringwright-job", "version": 3, "job": {"name": "x", "inputs": {}}}
    validator.validate(job)
    job.update(change)
    assert not validator.is_valid(job)
