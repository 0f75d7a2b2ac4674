"""What "thumb-rules" answers with."""

from . import Check, answer, table
from .lists import column
from .ring import FIGURES

_HERE = "The rules on this ring"
_OWN = table(
    (
        ("rules_held", "count", "n1", "Rules that hold", "thumb-rules", "", _HERE),
        ("rules_held_in_part", "count", "n2", "Rules that hold in part", "thumb-rules", "", _HERE),
        ("rules_not_held", "count", "n3", "Rules that do not hold here", "thumb-rules", "", _HERE),
        ("thumb_size", "length", "x", "By the thumb rule", "thumb-rules", "", _HERE),
        ("worked_size", "length", "x0", "As worked", "thumb-rules", "", _HERE),
    ),
    {},
)
# What a rule changes, as sizing tells it.
GIVES = (
    "wall_pressure", "closed_stress", "sprung_on_stress", "tangential_force", "closed_gap_hot",
    "side_clearance_hot", "piston_clearance_hot",
)  # fmt: skip
THUMB_SIZE, WORKED_SIZE = _OWN["thumb_size"], _OWN["worked_size"]

# Rule -> the size it is about.
RULES = (
    ("former", "the former"),
    ("free-gap", "the free gap"),
    ("section", "the section"),
    ("section-and-gap", "section and free gap together"),
    ("end-gap", "the end gap"),
    ("width", "the width"),
    ("opening", "the opening to put it on"),
    ("side-clearance", "the side clearance"),
    ("piston-clearance", "the piston clearance"),
)

ANSWER = answer(
    "rules_held rules_held_in_part rules_not_held",
    (_OWN,),
    lists=(
        column(
            "rules",
            "records",
            "the thumb rules, each beside what is worked",
            (
                column("rule", "text", "which size it is about"),
                column("title", "text", "how the trade says it"),
                column("source", "text", "where it was read, or common practice"),
                column(
                    "thumb_size",
                    "figure",
                    "what it says on this ring; low and high, here and below, over its sizes",
                    THUMB_SIZE,
                ),
                column("worked_size?", "figure", "in its place", _OWN["worked_size"]),
            )
            + tuple(
                [
                    column(
                        name + "?",
                        "figure",
                        "with the rule",
                        FIGURES[name],
                    )
                    for name in GIVES
                ]
            )
            + (
                column("verdict", "text", "whether it holds here"),
                column("why", "text", "why, in a sentence"),
            ),
        ),
    ),
    checks=tuple(
        [Check(key + "-thumb-rule", "ring", "a thumb rule for " + of) for key, of in RULES]
    ),
)
