"""A few figures of an answer, for a caller with little room: the option `figures`.

Such an answer has one shape for every calculation: the figures that were asked for, those of its
parts among them; each finding that is not good; and the cautions, for what can hurt stays said.
Lists, good findings and what was chosen are left out.
"""

from collections import OrderedDict
from collections.abc import Iterable, Mapping, Sequence
from difflib import get_close_matches
from typing import Any

from ..core.catalogue import Answer
from ..core.catalogue.inputs import nothing
from ..core.fields import field
from ..core.problems import Fault, InputProblem
from ..core.records import GOOD
from .limits import LONGEST_NAME

OPTION = field(
    "figures",
    "text",
    "figures to answer with: names, commas between. The answer then holds these, findings that are "
    "not good, and cautions; nothing else",
    nothing("the whole answer"),
    # All those of a sizing have 600 letters.
    highest=1000,
)


def names_of(answered: Answer) -> list[str]:
    """Every name of a figure, in order. answered: catalogue.Answer, whose parts count too."""
    found = [one.declared.name for one in answered.figures]
    for part in answered.parts.values():
        found += names_of(part)
    return found


def read(text: str, known: Sequence[str]) -> list[str]:
    """The names in a text, in order. Raises InputProblem naming those that are not in `known`.

    known: sequence of the names there are.
    """
    asked = list(OrderedDict.fromkeys(name.strip() for name in text.split(",")))
    faults = [_unknown(name, known) for name in asked if name not in known]
    if faults:
        raise InputProblem(faults)
    return asked


def _unknown(name: str, known: Sequence[str]) -> Fault:
    said = "there is no figure called %s here" % name if name else "a name is empty"
    return Fault((OPTION.name,), "choice", said, remedy_for(name, known))


def remedy_for(name: str, known: Sequence[str]) -> str:
    """What to do about a name that is not in `known`, a sequence of names."""
    if not known:
        return "leave it out"
    near = get_close_matches(name[:LONGEST_NAME], known, 3, 0.5)
    return "did you mean %s?" % " or ".join(near) if near else "use any of: " + ", ".join(known)


def picked(answer: Mapping[str, Any], names: Iterable[str]) -> OrderedDict[str, Any]:
    """The short answer. answer: tree of core records. names: of figures; one that this answer
    does not have is not there."""
    there = _figures(answer)
    return OrderedDict(
        (
            ("figures", OrderedDict((name, there[name]) for name in names if name in there)),
            ("findings", [one for one in answer["findings"] if one.outcome != GOOD]),
            ("cautions", answer["cautions"]),
        )
    )


def _figures(answer: Mapping[str, Any]) -> dict[str, Any]:
    found: dict[str, Any] = {}
    for name, entry in answer.items():
        if name == "figures":
            found.update(entry)
        elif isinstance(entry, OrderedDict) and "figures" in entry:
            found.update(entry["figures"])
    return found
