"""The specification: valid, committed as it is made, and true of what the service answers."""

import json
import re

import jsonschema
import pytest
from openapi_spec_validator import OpenAPIV31SpecValidator

from ringwright import units
from ringwright.api import examples, pick, schemas
from ringwright.api.app import specification
from ringwright.api.calculations import asked_fields, is_table
from ringwright.api.write_spec import text
from ringwright.core import calculations
from ringwright.core.catalogue import NOTHING
from ringwright.core.catalogue.checks import all_checks
from ringwright.core.catalogue.inputs_ring import RING
from ringwright.core.fields import checked


@pytest.fixture(scope="module")
def spec(app):
    return specification(app)


def operations(spec):
    """(path, method, operation) of everything in the specification."""
    for path, item in spec["paths"].items():
        for method, operation in item.items():
            if method in ("get", "post"):
                yield path, method, operation


def validator(spec, schema):
    """A JSON Schema 2020-12 validator for a schema of the specification."""
    return jsonschema.Draft202012Validator({**schema, "components": spec["components"]})


def _found(spec):
    """What follows references of the specification."""

    def follow(node):
        while "$ref" in node:
            _, _, group, name = node["$ref"].split("/")
            node = spec["components"][group][name]
        return node

    return follow


def answer_schema(spec, operation):
    """The schema of what an operation answers."""
    given = _found(spec)(operation["responses"]["200"])
    return given["content"]["application/json"]["schema"]


def test_it_is_valid(spec):
    OpenAPIV31SpecValidator(spec).validate()
    assert spec["openapi"].startswith("3.1")


def test_it_is_committed_as_it_is_made(root):
    committed = (root / "openapi" / "openapi.json").read_text(encoding="utf-8")
    assert committed == text(), (
        "openapi/openapi.json is stale: run "
        "PYTHONPATH=service python -m ringwright.api.write_spec openapi/openapi.json "
        "and say what changed in openapi/CHANGELOG.md"
    )


def test_it_is_served(client, spec):
    response = client.get("/openapi.json")
    assert response.get_json() == spec
    assert response.headers["ETag"]


def test_it_promises_stability(spec):
    assert "Stability" in spec["info"]["description"]
    assert "openapi/CHANGELOG.md" in spec["info"]["description"]


def test_every_operation_is_described(spec):
    names = []
    for path, method, operation in operations(spec):
        assert operation["summary"], path
        assert operation["responses"], path
        names.append(operation["operationId"])
        if path.startswith("/v1/") and path not in ("/v1/problems", "/v1/shop"):
            assert {"4XX", "5XX"} <= set(operation["responses"]), (path, method)
    assert len(set(names)) == len(names)


def test_every_route_is_in_it(app, spec):
    ours = {
        (rule.rule, method.lower())
        for rule in app.url_map.iter_rules()
        for method in rule.methods - {"HEAD", "OPTIONS"}
        # Pages and files of the app are for browsers; of no drawing there is but an error.
        if rule.endpoint != "front" and not rule.endpoint.startswith(("app-", "docs-", "no-"))
    }
    told = {(path, method) for path, method, _ in operations(spec)}
    # <any(a, b):part> and <part> are both {part} there.
    assert {(re.sub("<(?:[^<>]*:)?([a-z_]+)>", r"{\1}", rule), m) for rule, m in ours} == told


def test_every_calculation_has_an_example(spec):
    for name, calculation in calculations.CALCULATIONS.items():
        if is_table(calculation):
            continue
        operation = spec["paths"]["/v1/" + name]["post"]
        assert operation["requestBody"]["content"]["application/json"].get("examples"), (
            "openapi/examples/%s.json is missing" % name
        )
        get = spec["paths"]["/v1/" + name].get("get")
        if get:
            required = [one for one in map(_found(spec), get["parameters"]) if one.get("required")]
            assert all("example" in one for one in required), name


EXAMPLES = [
    pytest.param(name, shown["value"], id="%s: %s" % (name, title))
    for name, found in examples.read_all().items()
    for title, shown in found.items()
]


@pytest.mark.parametrize(("name", "value"), EXAMPLES)
def test_every_example_runs_and_fits_its_schema(client, spec, name, value):
    operation = spec["paths"]["/v1/" + name]["post"]
    body = operation["requestBody"]["content"]["application/json"]["schema"]
    validator(spec, body).validate(value)
    response = client.post("/v1/%s?working=true" % name, json=value)
    assert response.status_code == 200, response.get_data(as_text=True)[:500]
    answer = answer_schema(spec, operation)
    # A whole answer must fit the schema of one, not the lesser one of picked figures.
    validator(spec, answer.get("anyOf", [answer])[0]).validate(response.get_json())
    names = pick.names_of(calculations.CALCULATIONS[name].answer)
    if names:
        short = client.post("/v1/%s?figures=%s" % (name, ",".join(names[:3])), json=value)
        validator(spec, answer).validate(short.get_json())


def is_scalar(example):
    """True when every input of an example fits in a query."""
    return not any(isinstance(one, (list, dict)) for one in example.values[1].values())


@pytest.mark.parametrize(("name", "value"), [one for one in EXAMPLES if is_scalar(one)])
def test_every_scalar_example_has_an_address(client, name, value):
    query = {key: str(one).lower() if isinstance(one, bool) else one for key, one in value.items()}
    fetched = client.get("/v1/" + name, query_string=query)
    assert fetched.data == client.post("/v1/" + name, json=value).data


@pytest.mark.parametrize(
    "name", [name for name, one in calculations.CALCULATIONS.items() if is_table(one)]
)
def test_every_list_fits_its_schema(client, spec, name):
    operation = spec["paths"]["/v1/" + name]["get"]
    answer = answer_schema(spec, operation)
    response = client.get("/v1/" + name)
    assert response.status_code == 200
    validator(spec, answer).validate(response.get_json())
    assert all(response.get_json().values())


def test_a_problem_fits_its_schema(client, spec):
    schema = {"$ref": "#/components/schemas/Problem"}
    for path in ("/v1/sizing?bore=x", "/v1/nothing"):
        validator(spec, schema).validate(client.get(path).get_json())


def test_the_bounds_of_the_tables_are_told(spec):
    for name, calculation in calculations.CALCULATIONS.items():
        if is_table(calculation):
            continue
        body = spec["paths"]["/v1/" + name]["post"]["requestBody"]
        told = _resolved(spec, body["content"]["application/json"]["schema"])
        assert told["additionalProperties"] is False
        fields = asked_fields(calculation.fields)
        assert set(told["properties"]) == {entry.name for entry in fields}
        assert set(told.get("required", ())) == {entry.name for entry in fields if entry.required}
        for entry in fields:
            _check_bounds(spec, entry, told["properties"][entry.name])


def _check_bounds(spec, entry, told):
    if "$ref" in told:
        told = {**spec["components"]["schemas"][told["$ref"].rpartition("/")[2]], **told}
    assert entry.meaning in told["description"]
    if entry.kind == "choice":
        assert told["enum"] == list(entry.choices)
    if entry.kind in ("choice", "text", "flag", "records", "object"):
        return
    number = told["anyOf"][0] if "anyOf" in told else told
    assert number.get("maximum") == entry.highest
    if entry.above_lowest:
        assert number["exclusiveMinimum"] == told["x-more-than"] == entry.lowest
    else:
        assert number.get("minimum") == entry.lowest


def _resolved(spec, schema):
    return _found(spec)(schema)


def test_exclusive_bounds_and_texts_are_told_of_any_table():
    """Not every table has an exclusive bound or a nested list: one that has them all."""
    from ringwright.api import create_app
    from ringwright.core.calculations import Calculation
    from ringwright.core.fields import field

    fields = (
        field("bore", "length", "m", required=True, lowest=0.0, highest=5.0, above_lowest=True),
        field("flag", "flag", "m"),
        field("name", "text", "m"),
        field("where", "object", "m", items=(field("angle", "angle", "m"),)),
        field("radii", "records", "m", highest=3, items=(field("", "length", "m", lowest=1.0),)),
        field("bars", "records", "m", items=(field("count", "count", "m", required=True),)),
    )
    app = create_app(
        {"x": Calculation("x", "s", fields, lambda values: {"given": values}, NOTHING)}
    )
    spec = specification(app)
    OpenAPIV31SpecValidator(spec).validate()
    schema = {"$ref": "#/components/schemas/XRequest"}
    check = validator(spec, schema).is_valid
    client = app.test_client()
    good = {
        "bore": "4 mm",
        "flag": True,
        "name": "Marigold",
        "where": {"angle": "45 deg"},
        "radii": [1, "2 mm"],
        "bars": [{"count": 2}, {"count": 1}],
    }
    assert check(good)
    assert client.post("/v1/x", json=good).get_json()["given"] == {
        **good,
        "bore": 4.0,
        "where": {"angle": 45.0},
        "radii": [1.0, 2.0],
    }
    for bad, path in [
        ({"bore": 0}, ["bore"]),
        ({"bore": 5.1}, ["bore"]),
        ({"bore": "4 kg"}, ["bore"]),
        ({**good, "flag": 1}, ["flag"]),
        ({**good, "name": 3}, ["name"]),
        ({**good, "name": "x" * 201}, ["name"]),
        ({**good, "where": []}, ["where"]),
        ({**good, "where": {"angel": 1}}, ["where", "angel"]),
        ({**good, "where": {"angle": "45 mm"}}, ["where", "angle"]),
        ({**good, "radii": {}}, ["radii"]),
        ({**good, "radii": [1, 2, 3, 4]}, ["radii"]),
        ({**good, "radii": [1, "0.5 kg"]}, ["radii", 1]),
        ({**good, "radii": [1, 0.5]}, ["radii", 1]),
        ({**good, "radii": [1, None]}, ["radii", 1]),
        ({**good, "bars": [{"count": 2}, {}]}, ["bars", 1, "count"]),
        ({**good, "bars": [{"count": 2}, 7]}, ["bars", 1]),
        ({**good, "bars": "x"}, ["bars"]),
    ]:
        assert not check(bad), bad
        response = client.post("/v1/x", json=bad)
        assert response.status_code == 422
        assert path in [error["path"] for error in response.get_json()["errors"]], bad
    assert client.get("/v1/x?bore=4+mm&flag=true&name=5").get_json()["given"] == {
        **dict.fromkeys(good),
        "bore": 4.0,
        "flag": True,
        "name": "5",
    }
    assert client.get("/v1/x?bore=4&radii=1").status_code == 422


def test_the_examples_are_of_calculations_that_exist():
    assert set(examples.read_all()) <= set(calculations.CALCULATIONS)
    assert json.dumps(examples.read_all())


# Tools read it whole, and so do people: it was 728 kB when each operation said all of it again. A
# calculation costs 7 to 9 kB, most of it the names of its inputs at its addresses; what all share
# is the rest. Room is left for the one that tests/client/test_add_a_calculation.py adds.
LARGEST_EACH = 15_200


def test_it_says_a_thing_once(spec):
    """Inputs, enumerations and parameters are components; what refers to them says no more."""
    assert len(text().encode()) < LARGEST_EACH * len(calculations.CALCULATIONS)
    for path, method, operation in operations(spec):
        assert all(set(one) == {"$ref"} for one in operation.get("parameters", ())), (path, method)
    enumerations = []

    def walk(node, where):
        if isinstance(node, dict):
            if "enum" in node:
                enumerations.append((tuple(node["enum"]), where))
            for key, value in node.items():
                walk(value, where + (key,))
        elif isinstance(node, list):
            for place, value in enumerate(node):
                walk(value, where + (place,))

    walk(spec, ())
    assert all(
        where[:2] == ("components", "schemas") and len(where) == 3 for _, where in enumerations
    )
    said = [names for names, _ in enumerations]
    # A few inputs that mean different things take the same words (iron, bronze ...).
    assert len(said) - len(set(said)) <= 6


def test_everything_is_described(spec):
    found = spec["components"]
    missing = []
    for name, schema in found["schemas"].items():
        if not schema.get("description"):
            missing.append(name)
        for key, one in schema.get("properties", {}).items():
            if not (one.get("description") or _found(spec)(one).get("description")):
                missing.append("%s.%s" % (name, key))
    for name, one in found["parameters"].items():
        if not (one.get("description") or _found(spec)(one["schema"]).get("description")):
            missing.append(name)
    for group in ("responses", "headers"):
        missing += [name for name, one in found[group].items() if not one.get("description")]
    assert missing == []
    assert spec["security"] == []


def test_text_is_text_and_bodies_are_what_is_asked(spec):
    for path, method, operation in operations(spec):
        content = _found(spec)(operation["responses"]["200"])["content"]
        for media_type, one in content.items():
            if media_type in ("text/csv", "image/svg+xml", "image/vnd.dxf"):
                assert one["schema"] == {"type": "string"}, path
        if method == "post":
            body = operation["requestBody"]["content"]["application/json"]["schema"]
            # Drawings are of what the tools are made for.
            name = re.sub(r"^drawings.*", "tooling", path.removeprefix("/v1/").partition(".")[0])
            assert (
                body
                == spec["paths"]["/v1/" + name]["post"]["requestBody"]["content"][
                    "application/json"
                ]["schema"]
            )


def test_the_names_of_an_answer_are_told(spec):
    """Figures, lists and checks of each calculation stand in the schema of its answer."""
    checks = all_checks([one.answer for one in calculations.CALCULATIONS.values()])
    assert spec["components"]["schemas"]["CheckName"]["enum"] == list(checks)
    for name, calculation in calculations.CALCULATIONS.items():
        method = "post" if calculation.fields else "get"
        answer = answer_schema(spec, spec["paths"]["/v1/" + name][method])
        if calculation.fields and pick.names_of(calculation.answer):
            answer, picked = answer["anyOf"]
            assert picked == {"$ref": "#/components/schemas/PickedAnswer"}
        answer = _resolved(spec, answer)
        _check_told(spec, calculation.answer, answer)


def _check_told(spec, declared, told):
    if declared.figures:
        figures = _resolved(spec, told["properties"]["figures"])
        assert list(figures["properties"]) == [one.declared.name for one in declared.figures]
        always = [one.declared.name for one in declared.figures if one.always]
        assert figures["required"] == always
        assert "additionalProperties" not in figures, "a name that is none would pass for a figure"
    for column in declared.lists:
        assert column.name in told["properties"]
        assert (column.name in told["required"]) == column.always
    for name, part in declared.parts.items():
        _check_told(spec, part, _resolved(spec, told["properties"][name]))


def test_the_table_governs_every_address():
    """A service of one calculation of its own has that one's addresses and no drawing's."""
    from ringwright.api import create_app
    from ringwright.core.calculations import Calculation
    from ringwright.core.fields import field

    fields = (field("bore", "length", "m", required=True, lowest=0.0, highest=5.0),)
    one = Calculation("x", "s", fields, lambda values: {"figures": {}}, NOTHING)
    told = set(specification(create_app({"x": one}))["paths"])
    own = {path for path in told if path.startswith("/v1/")} - {"/v1/problems"}
    assert own == {"/v1/x", "/v1/x.csv", "/v1/shop", "/v1/many"}


def test_every_example_of_an_input_is_taken_by_it(spec):
    """The specification offered "4 thou" for a bore."""
    texts = spec["components"]["schemas"]
    seen = 0
    for calculation in calculations.CALCULATIONS.values():
        for entry in asked_fields(calculation.fields):
            kind = units.kind_of(entry)
            if kind is None or entry.kind == "count":
                continue
            told = schemas._metadata(entry).get("examples")
            for example in told or texts[schemas.text_schema_name(kind)]["examples"]:
                value = units.read(kind, example) if isinstance(example, str) else example
                checked((entry,), {entry.name: value})
                seen += 1
    assert seen > 300
    # One that has examples of its own, since those of its kind are beyond its bounds.
    assert "80 mm" not in schemas._metadata(RING["closed_gap"])["examples"]


def shown_with(specification, schema):
    """The examples of a schema: its own, else those of the forms that it may take."""
    if "$ref" in schema:
        schema = specification["components"]["schemas"][schema["$ref"].rpartition("/")[2]]
    own = [*schema.get("examples", ()), *([schema["example"]] if "example" in schema else ())]
    if own:
        return own
    return [one for form in schema.get("anyOf", ()) for one in shown_with(specification, form)]


def test_what_is_shown_for_an_input_is_taken_by_it(app, client):
    """A length of 80 mm is no kerf, and 2.5 no number of rings: each input shows what it takes."""
    from ringwright.api.app import specification as specification_of

    specification = specification_of(app)
    tried = 0
    for path, item in specification["paths"].items():
        for parameter in item.get("get", {}).get("parameters", ()):
            if "$ref" in parameter:
                name = parameter["$ref"].rpartition("/")[2]
                parameter = specification["components"]["parameters"][name]
            for one in shown_with(specification, parameter["schema"]):
                if "{" in path or isinstance(one, bool):
                    continue
                tried += 1
                answer = client.get(path, query_string={parameter["name"]: one})
                for error in answer.get_json()["errors"] if answer.status_code == 422 else ():
                    # By itself it may lack company; of its own kind and size it must be.
                    assert error["path"] != [parameter["name"]] or error["code"] in (
                        "conflict",
                        "required",
                        "unworkable",
                    ), (path, parameter["name"], one, error["message"])
    assert tried > 800
