"""What the reference lists and drawings answer with: rows, and no figures."""

from . import answer
from .lists import column

_BAR = (
    column("label", "text", "as it is asked for"),
    column("sizes", "text", "inch or metric"),
    column("form", "text", "solid or cored"),
    column("nominal_diameter", "length", "that it cleans up to"),
    column("as_cast_diameter", "length", "over its skin"),
)
_CORE = (
    column("nominal_bore", "length", "that it cleans up to"),
    column("as_cast_bore", "length", "before"),
)
BAR_LIST = answer(
    "",
    (),
    (
        column("metal", "text", "of which it is cast"),
        column("solid", "records", "solid bars", _BAR),
        column("cored", "records", "cored bars", _BAR + _CORE),
        column(
            "lengths",
            "records",
            "lengths in stock",
            (column("length", "length", "of a bar"), column("sizes", "text", "inch or metric")),
        ),
        column("note", "text", "what to know of it"),
    ),
)
_SOURCE = (
    column("key", "text", "which source"),
    column("title", "text", "author and title"),
    column("basis", "text", "read, run, memory, practice or derived"),
)
METHOD_LIST = answer(
    "",
    (),
    (
        column(
            "methods",
            "records",
            "how figures are worked",
            (
                column("key", "text", "which method"),
                column("title", "text", "what it gives"),
                column("formula", "text", "as its source prints it"),
                column("validity", "text", "where it holds"),
                column("basis", "texts", "how far its sources were checked"),
                column("figures", "texts", "the figures that it gives"),
                column("sources", "records", "who says so", _SOURCE),
            ),
        ),
        column(
            "figures",
            "records",
            "every figure that an answer may hold",
            (
                column("name", "text", "as it stands in an answer"),
                column("label", "text", "what it is called"),
                column("meaning", "text", "what it is, where the label does not say it all"),
                column("symbol", "text", "as formulas print it"),
                column("unit", "text", "in metric answers"),
                column("methods", "texts", "how it is worked"),
            ),
        ),
        column(
            "checks",
            "records",
            "every check that an answer may hold",
            (
                column("check", "text", "as it stands in a finding"),
                column("judges", "text", "what it judges"),
            ),
        ),
        column(
            "sources",
            "records",
            "what the figures rest on",
            (
                column("key", "text", "which source"),
                column("title", "text", "author and title"),
                column("where", "text", "in it"),
                column("basis", "text", "read, run, memory, practice or derived"),
            ),
        ),
    ),
)
_PROPERTY = (
    column("value", "plain", "the property"),
    column("unit", "text", "its unit"),
    column("source", "text", "key of its source"),
    column("basis", "text", "how far that was checked"),
)
MATERIAL_LIST = answer(
    "",
    (),
    (
        column(
            "materials",
            "records",
            "metals and plastics",
            (
                column("key", "text", "as an input names it"),
                column("title", "text", "what it is called"),
                column("family", "text", "iron, bronze, steel, aluminium or plastic"),
                column("uses", "texts", "parts made of it"),
                column("note", "text", "what to know of it"),
                column("properties", "map", "each with its source", _PROPERTY),
            ),
        ),
        column(
            "pairings",
            "records",
            "what may run on what",
            (
                column("ring", "text", "family of the ring"),
                column("cylinder", "text", "family of the cylinder"),
                column("outcome", "text", "good, watch or stop"),
                column("why", "text", "the reason"),
                column("remedy", "text", "what to take instead; empty when good"),
            ),
        ),
    ),
)
SEALING_LIST = answer(
    "",
    (),
    (
        column(
            "sealings",
            "records",
            "other ways to keep steam in",
            tuple(
                [
                    column(name, "text", meaning)
                    for name, meaning in (
                        ("key", "which sealing"),
                        ("title", "what it is called"),
                        ("what", "what it is"),
                        ("suits", "where it serves"),
                        ("against", "what speaks against it"),
                        ("reckoned", "what is reckoned here"),
                        ("not_reckoned", "what is not"),
                        ("basis", "where that is from"),
                    )
                ]
            )
            + (column("hottest?", "temperature", "that it stands"),),
        ),
    ),
)
DRAWING = answer(
    "",
    (),
    (
        column("part", "text", "what is drawn"),
        column(
            "sheets",
            "records",
            "its sheets",
            (
                column("sheet", "count", "which"),
                column("sheets", "count", "of how many"),
                column("title", "text", "of the sheet"),
                column("about", "text", "what it shows, in words"),
                column("paper", "text", "for which it is laid out"),
                column("width", "plain", "mm"),
                column("height", "plain", "mm"),
                column("scale", "plain_or_none", "mm on paper for one of the part, if to scale"),
                column("svg", "text", "the drawing itself"),
                column("views?", "anything", "its geometry, when asked for"),
            ),
        ),
        column(
            "parts",
            "records",
            "what else can be drawn of this job",
            (
                column("part", "text", "as the input names it"),
                column("title", "text", "what it is called"),
                column("group", "text", "ring, tools, charts ..."),
            ),
        ),
    ),
)
