"""Says once in the specification what it says often: inputs, enumerations and parameters.

flask-smorest writes every parameter out where it is used, and marshmallow every input. Here each
becomes a component under its own name, and where it stood a reference to it.
"""

import json
import re
from collections.abc import Mapping
from typing import Any

from ..named_types import Document
from .answer_schemas import ref, words


def hoisted(spec: Document) -> Document:
    """The specification, changed in place."""
    schemas = spec["components"]["schemas"]
    _share_rows(spec)
    inputs = _Shelf(schemas, "#/components/schemas/")
    for name in list(schemas):
        if schemas[name].get("additionalProperties") is False:
            schemas[name].setdefault("description", _about(name))
            for key, schema in schemas[name]["properties"].items():
                # Entries of lists have their own names for things; enumerations are worth sharing.
                if name.endswith("Request") or "enum" in schema:
                    schemas[name]["properties"][key] = inputs.put(key, schema, name)
    parameters = _Shelf(spec["components"].setdefault("parameters", {}), "#/components/parameters/")
    for path, item in spec["paths"].items():
        if "parameters" in item:
            item["parameters"] = [
                _parameter(one, parameters, inputs, path, path) for one in item["parameters"]
            ]
        for operation in item.values():
            if not isinstance(operation, dict):
                continue
            owner = operation["operationId"]
            operation["parameters"] = [
                _parameter(one, parameters, inputs, owner, path)
                for one in operation.get("parameters", ())
            ]
        _share_parameters(item)
    _share_responses(spec)
    return spec


def _share_rows(spec: Document) -> None:
    """Drops the rows of lists that another object is but for its description."""
    schemas = spec["components"]["schemas"]
    known: dict[str, str] = {}
    same: dict[str, str] = {}
    for name, schema in list(schemas.items()):
        if schema.get("type") == "object":
            told = {key: one for key, one in schema.items() if key != "description"}
            kept = known.setdefault(json.dumps(told, sort_keys=True), name)
            if kept != name and name.endswith("Row"):
                same[ref(name)["$ref"]] = ref(kept)["$ref"]
                del schemas[name]
    _refer(spec, same)


def _refer(node: Any, same: Mapping[str, str]) -> None:
    if isinstance(node, dict):
        if node.get("$ref") in same:
            node["$ref"] = same[node["$ref"]]
        node = list(node.values())
    if isinstance(node, list):
        for one in node:
            _refer(one, same)


def _share_parameters(item: Document) -> None:
    """Says at an address what all its methods take, and drops what is empty."""
    operations = [one for one in item.values() if isinstance(one, dict)]
    first, *rest = operations
    shared = [
        one for one in first["parameters"] if rest and all(one in o["parameters"] for o in rest)
    ]
    for operation in operations:
        operation["parameters"] = [one for one in operation["parameters"] if one not in shared]
        if not operation["parameters"]:
            del operation["parameters"]
    if shared:
        item["parameters"] = item.get("parameters", []) + shared


def _about(name: str) -> str:
    if name.endswith("Request"):
        return "What to give for a %s." % name.removesuffix("Request")
    return "Entry of an input."


def _share_responses(spec: Document) -> None:
    """Makes a component of every response that several operations give."""
    # Response as text -> where it is given: the responses of an operation, and the status.
    given: dict[str, list[tuple[Document, str]]] = {}
    for item in spec["paths"].values():
        for operation in item.values():
            if isinstance(operation, dict):
                for status, response in operation["responses"].items():
                    said = json.dumps(response, sort_keys=True)
                    given.setdefault(said, []).append((operation["responses"], status))
    for places in given.values():
        response = places[0][0][places[0][1]]
        if len(places) > 1 and "content" in response:
            (media, content), *_ = response["content"].items()
            # One of several shapes goes by the first.
            shape = content["schema"].get("anyOf", [content["schema"]])[0]
            name = shape.get("$ref", media).rpartition("/")[2]
            name = words(re.sub(r"[^A-Za-z]+", "_", name))
            spec["components"]["responses"][name] = response
            for responses, status in places:
                responses[status] = {"$ref": "#/components/responses/" + name}


def _parameter(
    one: Document, parameters: "_Shelf", inputs: "_Shelf", owner: str, path: str
) -> Document:
    if "$ref" in one:
        return one
    name = one["name"]
    # The schema says what it is, once for the address and the body.
    kept = {key: value for key, value in one.items() if key != "description"}
    if "description" in one:
        schema = {**one["schema"], "description": one["description"]}
        kept["schema"] = inputs.put(name, schema, owner)
    else:
        # A piece of the address, whose words are those of the input of that name.
        kept["description"] = "which one of %s" % path.rpartition("/")[0]
        kept["schema"] = inputs.alike(name, one["schema"], owner)
    if not kept.get("required"):
        kept.pop("required", None)
    return parameters.put(name, kept, owner)


class _Shelf:
    """Components of one kind; what is equal stands there once."""

    def __init__(self, held: dict[str, Document], prefix: str) -> None:
        self._held = held
        self._prefix = prefix
        self._known: dict[str, str] = {}

    def put(self, name: str, entry: Document, owner: str) -> Document:
        """A reference to the component that says what `entry` says."""
        if set(entry) <= {"$ref"}:
            return entry
        # An example is one caller's: whichever came first serves.
        said = json.dumps({k: v for k, v in entry.items() if k != "example"}, sort_keys=True)
        if said in self._known:
            return {"$ref": self._prefix + self._known[said]}
        if "enum" in entry:
            # The same words, said of something else: one enumeration, with what it is here.
            enumerated = json.dumps(entry["enum"])
            if enumerated in self._known:
                shared = self._prefix + self._known[enumerated]
                return {"$ref": shared, "description": entry["description"]}
            self._known[enumerated] = self._free(name, owner)
        self._known[said] = self._free(name, owner)
        self._held[self._known[said]] = entry
        return {"$ref": self._prefix + self._known[said]}

    def alike(self, name: str, entry: Document, owner: str) -> Document:
        """A reference to the component of that name if its words are those of `entry`."""
        held = self._held.get(words(name), {})
        if "enum" in held and held["enum"] == entry.get("enum"):
            return {"$ref": self._prefix + words(name)}
        return self.put(name, {**entry, "description": "which one"}, owner)

    def _free(self, name: str, owner: str) -> str:
        plain = words(name)
        for key in (plain, plain + "Input", words(owner) + plain):
            if key not in self._held:
                return key
        raise ValueError("three inputs called %s: %s" % (name, owner))
