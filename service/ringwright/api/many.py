"""POST /v1/many: many jobs in one request, each answered as a call of its own would be.

What a call over the wire costs beside its sums is spent once. The jobs are answered one by one, in
order, each with an answer or a problem document of its own. Bounded are their number, what they
cost by costs.py, and the size of all answers together (limits.py).
"""

from collections.abc import Callable, Iterable, Mapping
from functools import partial
from typing import Any, NamedTuple, TypeVar

from flask import Response, request
from flask_smorest import Blueprint
from marshmallow import Schema

from ..core.calculations import Calculation
from ..core.problems import Fault, InputProblem
from ..named_types import Table, Values
from . import costs, limits, many_schemas, pick, problems, reading
from .calculations import (
    OPTIONS,
    asked_fields,
    content_of,
    is_table,
    names_asked,
    request_schema,
)
from .lane import worked
from .problems import Refused
from .schemas import Schemas, load

# What a piece of work gives.
_Done = TypeVar("_Done")
# Calculations that may be asked for, by name, each with the schema of its body.
Known = Mapping[str, tuple[Calculation, Schema]]

_OPTIONS = (*OPTIONS, pick.OPTION)
_NO_OPTIONS = {entry.name: None for entry in _OPTIONS}
# What reading one job costs [ms], as in costs.py.
_READING = 0.2


# A job that can be worked, with the checked values of its fields. One that cannot is the Response
# of its problem.
class _Job(NamedTuple):
    calculation: Calculation
    values: Values


def names_of(table: Table) -> list[str]:
    """Names of the calculations that may be asked for. table: name to core Calculation."""
    return [name for name, calculation in table.items() if not is_table(calculation)]


def add_to(blueprint: Blueprint, table: Table, schemas: Schemas) -> None:
    """Adds the address to a blueprint. table: name to core Calculation. schemas: the Schemas of the
    whole service."""
    known = {
        name: (table[name], request_schema(schemas, table[name])()) for name in names_of(table)
    }
    option_class = schemas.schema("Options", _OPTIONS)
    option_schema = option_class()

    @blueprint.route("/many", methods=["POST"])
    @blueprint.doc(**many_schemas.operation(option_class))
    def many() -> Response:
        reading.refuse_other_forms(request)
        options = _NO_OPTIONS
        if request.query_string:
            options = load(option_schema, _OPTIONS, reading.query(request, _OPTIONS))
        content = _answered(_checked_list(reading.body(request)), known, options)
        return Response(content, mimetype="application/json")


def _answered(jobs: list[Any], known: Known, options: Values) -> bytes:
    """The JSON of all answers, bytes. jobs: what the body held. options: checked values."""
    names = names_asked(options, _figures_of(jobs, known))
    read = worked(
        _READING * len(jobs), lambda: [_tried(partial(_read, job, known)) for job in jobs]
    )
    cost = sum(costs.of(one.calculation.name, one.values) for one in read if type(one) is _Job)
    if cost > limits.MOST_WORK:
        raise Refused("too-much", "these jobs are worth %d ms of work" % cost)
    return worked(cost, lambda: _all_answers(read, options, names))


def _all_answers(read: list[_Job | Response], options: Values, names: list[str] | None) -> bytes:
    pieces: list[bytes] = []
    size = 0
    for job in read:
        answer = _tried(partial(_worked, job, options, names)) if isinstance(job, _Job) else job
        if isinstance(answer, Response):
            answer = b'{"status":%d,"problem":%s}' % (answer.status_code, answer.get_data())
        pieces.append(answer)
        size += len(answer)
        if size > limits.LARGEST_ANSWER:
            said = "the answers to these jobs have more than %d bytes" % limits.LARGEST_ANSWER
            raise Refused("too-much", said)
    return b"[" + b",".join(pieces) + b"]"


def _worked(job: _Job, options: Values, names: list[str] | None) -> bytes:
    return b'{"status":200,"answer":%s}' % content_of(job.calculation, job.values, options, names)


def _tried(work: Callable[[], _Done]) -> _Done | Response:
    """What work() gives, or the Response that says why it gives nothing."""
    try:
        return work()
    except Exception as error:
        told = problems.of_error(error)
        return problems.failed(error, "a job of many") if told is None else told


def _read(job: Any, known: Known) -> _Job:
    """The _Job of an entry. Raises InputProblem."""
    faults = []
    if not isinstance(job, dict):
        faults.append(Fault((), "type", "this must be an object with named values", "send {...}"))
        raise InputProblem(faults)
    for name in sorted(set(job) - {"calculation", "inputs"}):
        remedy = "put it into inputs" if name else "leave it out"
        faults.append(Fault((name,), "unknown-field", "there is no such entry of a job", remedy))
    name = job.get("calculation")
    if not isinstance(name, str) or name not in known:
        faults.append(_no_such_calculation(name, known))
    if faults:
        raise InputProblem(faults)
    calculation, schema = known[name]
    given = job.get("inputs", {})
    return _Job(calculation, load(schema, asked_fields(calculation.fields), given))


def _no_such_calculation(name: Any, known: Known) -> Fault:
    if name is None:
        said = "calculation is needed"
    else:
        said = "there is no calculation called %s here" % str(name)[: limits.LONGEST_NAME]
    return Fault(("calculation",), "choice", said, pick.remedy_for(str(name), list(known)))


def _figures_of(jobs: Iterable[Any], known: Known) -> list[str]:
    """Every name of a figure of the calculations that are asked for, in order."""
    asked = dict.fromkeys(
        job["calculation"]
        for job in jobs
        if isinstance(job, dict) and isinstance(job.get("calculation"), str)
    )
    found = {}
    for name in asked:
        if name in known:
            found.update(dict.fromkeys(pick.names_of(known[name][0].answer)))
    return list(found)


def _checked_list(jobs: Any) -> list[Any]:
    """The jobs that a body held. Raises InputProblem."""
    remedy = 'send a list of 1 to %d jobs: [{"calculation": "sizing", "inputs": {...}}]'
    remedy = remedy % limits.MOST_JOBS
    if not isinstance(jobs, list):
        raise InputProblem([Fault((), "list", "the body is no list of jobs", remedy)])
    if not 1 <= len(jobs) <= limits.MOST_JOBS:
        said = "the body has %d jobs" % len(jobs)
        raise InputProblem([Fault((), "list-length", said, remedy)])
    return jobs
