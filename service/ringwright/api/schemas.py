"""marshmallow schemas made from the core's tables of inputs: one declaration, both jobs.

Loading turns text with a unit into a number in core units; bounds, choices, required inputs and
unknown names are then the core's to check (core.fields.checked), so that the phone refuses the
same things in the same words. The specification is made from the same schemas.
"""

from collections.abc import Iterable, Iterator, Mapping
from typing import Any, NamedTuple

import marshmallow as ma

from .. import units
from ..core.fields import LONGEST_LIST, LONGEST_TEXT, UNIT_OF_KIND, Field, checked
from ..core.problems import Fault, InputProblem
from ..named_types import Document, Fields, Path, Values
from . import limits
from .phrasing import in_own_unit


# What a field has to say against a value; the path is added where the errors are gathered.
class Refusal(NamedTuple):
    code: str
    message: str
    remedy: str


# What marshmallow says of a value: refusals of its own, or by name or index those of its entries.
_Messages = Any


class CheckedByCore:
    """Keeps marshmallow's own words for missing and null values out: the core's words are used."""

    def _validate_missing(self, value: Any) -> None:
        if value is None:
            refusal = Refusal("null", "this is null", "leave it out, or give a value")
            raise ma.ValidationError([refusal])


class EdgeField(CheckedByCore, ma.fields.Field[Any]):
    """A field that hands its value on as it came."""


class Choice(EdgeField):
    """One word of a list."""


class Text(EdgeField):
    """Free text."""


class Flag(EdgeField):
    """True or false."""


class Number(EdgeField):
    """A plain or a whole number."""

    def _deserialize(
        self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any
    ) -> Any:
        if type(value) is int and abs(value) > limits.LARGEST_WHOLE_NUMBER:
            raise ma.ValidationError(
                [Refusal("number", "this number is too large to be a size", "give a smaller one")]
            )
        if type(value) is float and 0 < abs(value) < limits.SMALLEST_NUMBER:
            raise ma.ValidationError(
                [Refusal("number", "this number is too small to be a size", "give 0 or more")]
            )
        return value


class Measure(Number):
    """A number in the core's unit, or text with a unit."""

    def __init__(self, kind: str, **options: Any) -> None:
        super().__init__(**options)
        self.kind = kind

    def _deserialize(
        self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any
    ) -> Any:
        if type(value) is str:
            try:
                value = units.read(self.kind, value)
            except units.UnitProblem as problem:
                raise ma.ValidationError(
                    [Refusal(problem.code, problem.message, problem.remedy)]
                ) from None
        return super()._deserialize(value, attr, data, **kwargs)


class ListOf(CheckedByCore, ma.fields.List[Any]):
    """A list whose entries are loaded one by one; anything else is the core's to refuse."""

    def __init__(self, inner: ma.fields.Field[Any], longest: int, **options: Any) -> None:
        super().__init__(inner, **options)
        self.longest = longest

    def _deserialize(
        self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any
    ) -> Any:
        if not isinstance(value, list) or len(value) > self.longest:
            return value
        return super()._deserialize(value, attr, data, **kwargs)


class ObjectOf(CheckedByCore, ma.fields.Nested):
    """An object with its own fields; anything else is the core's to refuse."""

    def __init__(self, schema: type[ma.Schema], **options: Any) -> None:
        super().__init__(schema, unknown=ma.INCLUDE, **options)

    def _deserialize(
        self,
        value: Any,
        attr: str | None,
        data: Mapping[str, Any] | None,
        partial: Any = None,
        **kwargs: Any,
    ) -> Any:
        if not isinstance(value, dict):
            return value
        return super()._deserialize(value, attr, data, partial=partial, **kwargs)


class Strict(ma.Schema):
    """Base of every request schema: the specification says that unknown names are refused."""

    class Meta:
        unknown = ma.RAISE


class Schemas:
    """Makes and keeps the schema of each table of fields; equal tables share one schema."""

    def __init__(self) -> None:
        self._made: list[tuple[str, Fields, type[ma.Schema]]] = []

    def schema(self, name: str, fields: Iterable[Field]) -> type[ma.Schema]:
        """The schema class of `fields`, named `name` unless the same was made before."""
        fields = tuple(fields)
        taken = set()
        for made_name, made_fields, made in self._made:
            if made_fields == fields:
                return made
            taken.add(made_name)
        while name in taken:
            name += "Too"
        made = Strict.from_dict({entry.name: self._field(entry) for entry in fields}, name=name)
        self._made.append((name, fields, made))
        return made

    def _field(self, entry: Field) -> ma.fields.Field[Any]:
        """The marshmallow field of a core Field."""
        options = {
            "required": entry.required,
            "metadata": {"description": description(entry), **_metadata(entry)},
        }
        if entry.kind == "object":
            return ObjectOf(self.schema(_entry_name(entry), entry.items), **options)
        if entry.kind == "records":
            if len(entry.items) == 1 and entry.items[0].name == "":
                inner = self._field(entry.items[0])
            else:
                inner = ObjectOf(self.schema(_entry_name(entry), entry.items))
            return ListOf(inner, entry.highest or LONGEST_LIST, **options)
        measure = units.kind_of(entry)
        if measure is not None:
            return Measure(measure, **options)
        return _PLAIN_FIELDS[entry.kind](**options)


_PLAIN_FIELDS = {"choice": Choice, "text": Text, "flag": Flag}


def _entry_name(entry: Field) -> str:
    return "".join(word.capitalize() for word in entry.name.split("_")) + "Entry"


def description(entry: Field) -> str:
    """The meaning of a field, its unit and what is taken when it is not given, as a sentence."""
    text: str = entry.meaning + "."
    unit = UNIT_OF_KIND.get(entry.kind, "1")
    if unit != "1":
        text = "%s [%s]." % (entry.meaning, unit)
    if entry.default:
        text += " Default: %s." % entry.default.words.rstrip(".")
    return text


def bounds(entry: Field) -> Document:
    """The bounds of a number as JSON Schema keywords."""
    found: Document = {}
    if entry.lowest is not None:
        found["exclusiveMinimum" if entry.above_lowest else "minimum"] = entry.lowest
    if entry.highest is not None:
        found["maximum"] = entry.highest
    return found


def _metadata(entry: Field) -> Document:
    """What the specification says of a field, in JSON Schema's words."""
    if entry.kind == "choice":
        return {"type": "string", "enum": list(entry.choices)}
    if entry.kind == "text":
        return {"type": "string", "maxLength": entry.highest or LONGEST_TEXT}
    if entry.kind == "flag":
        return {"type": "boolean"}
    if entry.kind == "records":
        return {"minItems": entry.lowest or 0, "maxItems": entry.highest or LONGEST_LIST}
    if entry.kind == "object":
        return {}
    found: Document = {"x-symbol": entry.symbol} if entry.symbol else {}
    if entry.above_lowest:
        # Said again for readers of the specification that drop exclusive bounds.
        found["x-more-than"] = entry.lowest
    number = {"type": "integer" if entry.kind == "count" else "number", **bounds(entry)}
    measure = units.kind_of(entry) or entry.kind
    forms = [number, {"$ref": "#/components/schemas/" + text_schema_name(measure)}]
    texts = units.EXAMPLES[measure]
    allowed = [text for text in texts if _is_taken(entry, measure, text)]
    # The texts of a count are those of numbers, which show "2.5": no count of rings.
    if len(allowed) < len(texts) or entry.kind == "count":
        # Those of the kind, less what this input refuses: "4 thou" is no bore.
        found["examples"] = allowed[:1] or [_middle(entry)]
    unit = UNIT_OF_KIND.get(entry.kind, "1")
    return {"anyOf": forms, **({} if unit == "1" else {"x-unit": unit}), **found}


def _is_taken(entry: Field, measure: str, text: str) -> bool:
    try:
        checked((entry,), {entry.name: units.read(measure, text)})
    except InputProblem:
        return False
    return True


def _middle(entry: Field) -> float:
    """A number that an input with bounds on both sides takes."""
    number = float("%.2g" % (0.5 * (entry.lowest + entry.highest)))
    return int(number) if number == int(number) or entry.kind == "count" else number


def text_schema_name(kind: str) -> str:
    """The name in the specification of the texts that a kind of measure may be given as."""
    kind = "number" if kind == "count" else kind
    return "".join(word.capitalize() for word in kind.split("_")) + "Text"


def text_schemas() -> dict[str, Document]:
    """Name and JSON Schema of the texts of every kind of measure."""
    return {
        text_schema_name(kind): {
            "type": "string",
            "description": _text_words(kind),
            "pattern": units.pattern(kind),
            "maxLength": units.LONGEST_MEASURE,
            "examples": list(units.EXAMPLES[kind]),
        }
        for kind in units.SCALES
        if kind != "count"
    }


def _text_words(kind: str) -> str:
    names = units.main_names(kind)
    return (
        "A number and a unit (%s where none): %s." % (names[0], ", ".join(names))
        if names[1:]
        else "A number."
    )


def load(schema: ma.Schema, fields: Fields, given: Any) -> Values:
    """Checked values in core units, every field's name present.

    schema: schema instance made from `fields`. given: what the request held. Raises InputProblem
    with every fault, those of units and those of the core, in the order of the fields.
    """
    values: Values
    if not isinstance(given, dict):
        values = checked(fields, given)
        return values
    loaded, messages = _loaded(schema, given)
    try:
        if messages:
            raise InputProblem(_all_faults(fields, loaded, messages))
        values = checked(fields, loaded)
        return values
    except InputProblem as problem:
        faults = [in_own_unit(fault, fields, given) for fault in problem.faults]
        raise InputProblem(faults) from None


def _loaded(schema: ma.Schema, given: Document) -> tuple[Document, dict[str, _Messages]]:
    """What could be loaded, and marshmallow's messages on what could not.

    Schema.load would visit every field of the table; a request gives a few of them.
    """
    declared = schema.load_fields
    loaded: Document = {}
    messages: dict[str, _Messages] = {}
    for name, value in given.items():
        one = declared.get(name)
        if one is None:
            loaded[name] = value
            continue
        try:
            loaded[name] = one.deserialize(value, name, given, partial=True)
        except ma.ValidationError as error:
            messages[name] = error.messages
    return loaded, messages


def _all_faults(fields: Fields, loaded: Document, messages: dict[str, _Messages]) -> list[Fault]:
    """The faults of units, then those the core finds in the inputs that had none."""
    faults = list(_gathered((), messages))
    try:
        checked(fields, loaded)
    except InputProblem as problem:
        # An input at fault was left out of this look, so "it is needed" would be said in vain.
        faults += [fault for fault in problem.faults if fault.path[0] not in messages]
    order = {entry.name: place for place, entry in enumerate(fields)}
    return sorted(faults, key=lambda fault: order.get(fault.path[0], -1))


def _gathered(path: Path, messages: _Messages) -> Iterator[Fault]:
    if isinstance(messages, dict):
        for step, inner in messages.items():
            yield from _gathered((*path, step), inner)
        return
    for refusal in messages:
        yield Fault(
            path,
            refusal.code,
            "%s: %s" % (".".join(str(step) for step in path), refusal.message),
            refusal.remedy,
        )
