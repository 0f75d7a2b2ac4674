"""Inputs of a plain ring made without heat, beside those of any ring and blank."""

from ..fields import field
from .inputs import cases, fixed, table
from .inputs_blank import BANDED

AGAIN = table(
    field(
        "bored_again",
        "flag",
        "whether the inside of the ring is turned again too while it is held closed",
        cases(
            ("", fixed(False, "the outside alone, as it was commonly done")),
            (BANDED, fixed(True, "a band leaves the ring oval, inside and outside")),
        ),
    ),
)
