"""JSON Schemas of answers, made from what the core declares: figures, lists and checks by name."""

from collections.abc import Iterable, Mapping

from ..core.catalogue import Answer, Column, Declared
from ..core.catalogue.checks import all_checks
from ..named_types import Document, Table

# Properties of an object, and the names of those that are always there.
_Holds = tuple[Document, list[str]]

# The schema of what is answered where a caller picks figures, of any calculation.
PICKED = "PickedAnswer"

_PLAIN: dict[str, Document] = {
    "text": {"type": "string"},
    "flag": {"type": "boolean"},
    "count": {"type": "integer"},
    "plain": {"type": "number"},
    "plain_or_none": {"type": ["number", "null"]},
    "texts": {"type": "array", "items": {"type": "string"}},
    "anything": {},
}


def ref(name: str) -> Document:
    """A reference to a schema of the specification."""
    return {"$ref": "#/components/schemas/" + name}


def described(name: str, description: str) -> Document:
    """The same, with what it is here."""
    return {**ref(name), "description": description}


def words(name: str) -> str:
    """A name as a schema's: "cut_list" or "cut-list" is CutList."""
    return "".join(word[:1].upper() + word[1:] for word in name.replace("-", "_").split("_"))


def answer_name(name: str) -> str:
    """The name of the schema of what a calculation answers."""
    return words(name) + "Answer"


class AnswerSchemas:
    """The schemas of the answers of a table of calculations; equal rows of lists share one."""

    def __init__(self, table: Table, others: Mapping[str, Document]) -> None:
        self.made: dict[str, Document] = {}
        self._table = table
        self._said: dict[str, str] = {}
        self._others = others
        self.made.update((words(name), schema) for name, schema in _FOR_EVERY_ANSWER.items())
        checks = all_checks([calculation.answer for calculation in table.values()])
        self.made["CheckName"] = {
            "type": "string",
            "description": "Which check, a fixed key; /v1/methods says what each one judges.",
            "enum": list(checks) or ["none"],
        }
        self._add(
            PICKED,
            "Where `figures` is asked: just these, what is not good, and cautions.",
            *_PICKED,
        )
        for name, calculation in table.items():
            if calculation.fields:
                self._answer(name, calculation.answer)
            else:
                self._list(name, calculation.answer)

    def _answer(self, name: str, answer: Answer) -> None:
        properties, required = self._holds(name, answer)
        # What a calculation of parts finds and chooses stands once, for the whole.
        for entry in ("findings", "chosen", "cautions"):
            properties[entry] = ref(words(entry))
            required.append(entry)
        self._add(answer_name(name), "What %s answers." % name, properties, required)

    def _list(self, name: str, answer: Answer) -> None:
        properties, required = self._columns(name, answer.lists)
        self._add(answer_name(name), "What %s lists." % name, properties, required)

    def _holds(self, name: str, answer: Answer) -> _Holds:
        """(properties, required) of figures, lists and parts."""
        properties: Document = {}
        required: list[str] = []
        if answer.figures or not answer.parts:
            properties["figures"] = self._figures(name, answer)
            required.append("figures")
        columns, always = self._columns(name, answer.lists)
        properties.update(columns)
        required += always
        for part, inner in answer.parts.items():
            properties[part] = described(self._part(part, inner), "what %s answers" % part)
            required.append(part)
        return properties, required

    def _figures(self, name: str, answer: Answer) -> Document:
        if not answer.figures:
            return described("Anything", "no figures: drawings and lists")
        key = words(name) + "Figures"
        figures = {one.declared.name: self._figure(one.declared, key) for one in answer.figures}
        always = [one.declared.name for one in answer.figures if one.always]
        self._add(key, "Figures of %s." % name, figures, always)
        return ref(key)

    def _figure(self, declared: Declared, owner: str) -> Document:
        """What a figure is stands where it is first given: it is the same wherever it is."""
        if self._said.setdefault(declared.name, owner) == owner:
            return described("Figure", _about(declared))
        return ref("Figure")

    def _part(self, name: str, answer: Answer) -> str:
        key = words(name) + "Part"
        if key not in self.made:
            properties, required = self._holds(name, answer)
            if name in self._table:
                properties["findings"] = ref("Findings")
                required.append("findings")
            self._add(key, "The part %s of an answer." % name, properties, required)
        return key

    def _columns(self, owner: str, columns: Iterable[Column]) -> _Holds:
        properties = {column.name: self._column(owner, column) for column in columns}
        return properties, [column.name for column in columns if column.always]

    def _column(self, owner: str, column: Column) -> Document:
        kind = column.kind
        if kind in _PLAIN:
            return {**_PLAIN[kind], "description": column.meaning}
        if kind == "series":
            return described("Series", column.meaning)
        if kind == "figure":
            return described("Figure", column.meaning)
        if kind == "records":
            return {
                "type": "array",
                "items": ref(self._row(owner, column)),
                "description": column.meaning,
            }
        if kind == "object":
            return described(self._row(owner, column), column.meaning)
        if kind == "map":
            return {
                "type": "object",
                "additionalProperties": ref(self._row(owner, column)),
                "description": column.meaning,
            }
        return described("Quantity", column.meaning)

    def _row(self, owner: str, column: Column) -> str:
        """The name of the schema of one row of a list."""
        properties, required = self._columns(words(owner) + words(column.name), column.items)
        schema = _object("One of %s." % column.name, properties, required)
        for name, made in {**self._others, **self.made}.items():
            if _same_rows(made, schema):
                return name
        for name in (words(column.name) + "Row", words(owner) + words(column.name) + "Row"):
            if self.made.setdefault(name, schema) == schema:
                return name
        raise ValueError("two lists called %s in %s" % (column.name, owner))

    def _add(
        self, name: str, description: str, properties: Document, required: Iterable[str]
    ) -> None:
        schema = _object(description, properties, required)
        if self.made.setdefault(name, schema) != schema:
            raise ValueError("two schemas called " + name)


def _same_rows(one: Document, other: Document) -> bool:
    """Whether two schemas hold the same, whatever each calls itself."""
    return all(one.get(key) == other[key] for key in ("type", "properties", "required"))


def _object(description: str, properties: Document, required: Iterable[str]) -> Document:
    return {
        "type": "object",
        "description": description,
        "properties": properties,
        "required": list(required),
    }


def _about(declared: Declared) -> str:
    text: str = declared.label
    if declared.meaning:
        text += ": " + declared.meaning
    return text if declared.unit == "1" else "%s [%s]" % (text, declared.unit)


_FOR_EVERY_ANSWER = {
    "findings": {
        "type": "array",
        "items": ref("Finding"),
        "description": "every check, good ones too; of a whole job those that are not good",
    },
    "chosen": {
        "type": "array",
        "items": ref("Choice"),
        "description": "every default taken",
    },
    "cautions": {
        "type": "array",
        "items": ref("Caution"),
        "description": "they defer to local rules",
    },
}

_PICKED: _Holds = (
    {
        "figures": {
            "type": "object",
            "additionalProperties": ref("Figure"),
            "description": "by name; one that this answer does not have is not there",
        },
        "findings": ref("Findings"),
        "cautions": ref("Cautions"),
    },
    ["figures", "findings", "cautions"],
)
