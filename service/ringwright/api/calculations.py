"""POST and GET /v1/<calculation>, one pair for each entry of the core's table: load, work, send."""

from collections.abc import Callable, Iterable, Sequence
from typing import Any

from flask import Response, request
from flask_smorest import Blueprint
from marshmallow import Schema

from ..core.calculations import Calculation
from ..core.catalogue.inputs import fixed
from ..core.fields import Field, field
from ..core.problems import Fault, InputProblem
from ..named_types import Document, Fields, Table, Values
from . import answers, costs, documents, headers, pick, reading, version
from .answer_schemas import words
from .lane import worked
from .schemas import Schemas, load

# Asked of the service and not of the calculation: in the query for POST as well as for GET.
OPTIONS = (
    field(
        "units",
        "choice",
        "the units that come back",
        fixed(answers.METRIC, words="metric: mm, N, MPa, degC, kg"),
        choices=answers.SYSTEMS,
    ),
    field(
        "working",
        "flag",
        "whether the numbers put into each formula come back with each figure",
        fixed(False),
    ),
)
_NO_OPTIONS = {entry.name: None for entry in (*OPTIONS, pick.OPTION)}
_LISTS = ("records", "object")
# The core's own word, of a drawing, for what the option `units` says: a caller is asked once.
UNITS_OF_DRAWING = "dimensions"


def options_of(calculation: Calculation) -> Fields:
    """The options of a calculation: one without figures has none to pick from."""
    return (*OPTIONS, pick.OPTION) if pick.names_of(calculation.answer) else OPTIONS


def is_table(calculation: Calculation) -> bool:
    """True for what takes no inputs: it is read and not worked, so it is only ever fetched."""
    return not calculation.fields


def asked_fields(fields: Iterable[Field]) -> Fields:
    """Those of the fields that a caller gives: not what the option `units` settles."""
    return tuple(entry for entry in fields if entry.name != UNITS_OF_DRAWING)


def scalar_fields(fields: Iterable[Field]) -> Fields:
    """Those of the fields that a query can carry."""
    return tuple(entry for entry in asked_fields(fields) if entry.kind not in _LISTS)


def query_of(fields: Iterable[Field], lists: Iterable[str]) -> Document:
    """The query of a GET. Raises InputProblem for one of `lists`, which only a body carries."""
    strays = [name for name in lists if name in request.args]
    if strays:
        remedy = "send it in the JSON body of a POST to this address"
        raise InputProblem(
            [
                Fault((name,), "unknown-field", "%s does not fit into an address" % name, remedy)
                for name in strays
            ]
        )
    return reading.query(request, fields)


def body_of(options: Iterable[Field]) -> Any:
    """The body of a POST. Raises InputProblem when it holds one of the `options` of the query."""
    given = reading.body(request)
    if isinstance(given, dict):
        strays = [entry.name for entry in options if entry.name in given]
        if strays:
            raise InputProblem(
                [
                    Fault(
                        (name,),
                        "unknown-field",
                        "%s is an option and no input" % name,
                        "put it into the address: %s?%s=..." % (request.path, name),
                    )
                    for name in strays
                ]
            )
    return given


def has_address(fields: Iterable[Field]) -> bool:
    """True when every input that must be given fits in a query, so that GET can be offered."""
    return not any(entry.required and entry.kind in _LISTS for entry in fields)


def request_schema(schemas: Schemas, calculation: Calculation) -> type[Schema]:
    """The schema class of what a calculation is asked with, from the service's Schemas."""
    fields = asked_fields(calculation.fields)
    return schemas.schema(words(calculation.name) + "Request", fields)


def make_blueprint(table: Table, schemas: Schemas) -> Blueprint:
    """The blueprint of every calculation in `table` (name to core Calculation).

    schemas: the Schemas of the whole service.
    """
    blueprint = Blueprint(
        "calculations",
        __name__,
        url_prefix="/v1",
        description="The sums: each takes what is known and says what it chose for the rest.",
    )
    for calculation in table.values():
        _add(blueprint, schemas, calculation)
    return blueprint


def _add(blueprint: Blueprint, schemas: Schemas, calculation: Calculation) -> None:
    fields = tuple(calculation.fields)
    clash = {entry.name for entry in fields} & set(_NO_OPTIONS)
    if clash:
        raise ValueError("%s has inputs named like options: %s" % (calculation.name, clash))
    if is_table(calculation):
        _add_get(blueprint, schemas, calculation, documents.list_operation)
        return
    _add_post(blueprint, schemas, calculation)
    if has_address(fields):
        _add_get(blueprint, schemas, calculation, documents.get_operation)


def _add_post(blueprint: Blueprint, schemas: Schemas, calculation: Calculation) -> None:
    fields, option_fields = asked_fields(calculation.fields), options_of(calculation)
    body_class = request_schema(schemas, calculation)
    option_class = schemas.schema("Options", option_fields)
    body_schema, option_schema = body_class(), option_class()

    def view() -> Response:
        reading.refuse_other_forms(request)
        options = _NO_OPTIONS
        if request.query_string:
            options = load(option_schema, option_fields, reading.query(request, option_fields))
        return _answer(calculation, load(body_schema, fields, body_of(option_fields)), options)

    view = blueprint.doc(**documents.post_operation(calculation, option_class, body_class))(view)
    blueprint.add_url_rule(
        "/" + calculation.name, "post-" + calculation.name, view, methods=["POST"]
    )


def _add_get(
    blueprint: Blueprint,
    schemas: Schemas,
    calculation: Calculation,
    described: Callable[[Calculation, type[Schema]], Document],
) -> None:
    option_fields = options_of(calculation)
    fields = option_fields + scalar_fields(calculation.fields)
    left_out = [entry.name for entry in calculation.fields if entry.kind in _LISTS]
    query_class = schemas.schema(words(calculation.name) + "Query", fields)
    query_schema = query_class()

    def view() -> Response:
        reading.refuse_other_forms(request)
        tag = version.tag_of(request)
        if headers.is_known(tag):
            return headers.keepable(Response(status=304), tag)
        values = load(query_schema, fields, query_of(fields, left_out))
        options = {entry.name: values.pop(entry.name) for entry in option_fields}
        values.update(dict.fromkeys(left_out))
        return headers.keepable(_answer(calculation, values, options), tag)

    view = blueprint.doc(**described(calculation, query_class))(view)
    blueprint.add_url_rule("/" + calculation.name, "get-" + calculation.name, view, methods=["GET"])


def _answer(calculation: Calculation, values: Values, options: Values) -> Response:
    names = names_asked(options, pick.names_of(calculation.answer))
    content = worked(
        costs.of(calculation.name, values), lambda: content_of(calculation, values, options, names)
    )
    return Response(content, mimetype="application/json")


def names_asked(options: Values, known: Sequence[str]) -> list[str] | None:
    """The names of the figures that a caller asks for, None for the whole answer.

    options: checked values of the options. known: names that there are. Raises InputProblem.
    """
    text = options.get(pick.OPTION.name)
    return None if text is None else pick.read(text, known)


def content_of(
    calculation: Calculation, values: Values, options: Values, names: list[str] | None
) -> bytes:
    """The JSON of an answer, bytes.

    values: checked values of the calculation's fields. options: checked values of the options.
    names: of figures, None for the whole answer.
    """
    system = options["units"] or answers.METRIC
    if any(entry.name == UNITS_OF_DRAWING for entry in calculation.fields):
        values[UNITS_OF_DRAWING] = system
    answer = calculation.run(values)
    if names is not None:
        answer = pick.picked(answer, names)
    return answers.to_json(answer, system, options["working"] or False)
