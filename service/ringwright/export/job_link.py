"""The link that carries a whole job into the app, and its QR code.

The job travels in the fragment of the address, which no server is sent. Its form is the app's own,
and openapi/job.schema.json describes it: JSON, deflated, in base64url.
"""

import base64
import json
import re
import zlib
from collections.abc import Iterable, Mapping
from typing import Any

import segno

from ..core.fields import UNIT_OF_KIND, Field
from ..named_types import Document, Values

FORMAT = "ringwright-job"
VERSION = 3
SCREEN = "ring"
# Units that the app reads as the service does; a measure in another goes in the core's unit.
_SHARED = (
    "mm",
    "in",
    "thou",
    "psi",
    "bar",
    "MPa",
    "degC",
    "degF",
    "N",
    "lbf",
    "deg",
    "kg",
    "lb",
    "h",
)
_ENDS_IN_SHARED = re.compile("[0-9] ?(?:%s)" % "|".join(_SHARED))


def job_of(
    name: str, fields: Iterable[Field], typed: Mapping[str, str], values: Values
) -> Document:
    """The job that the app reads: name and inputs as text, each with its unit.

    fields: sequence of core Field. typed: what the caller sent, name to text. values: the same
    checked, in core units; names that are None are left out.
    """
    inputs = {}
    for entry in fields:
        value = values.get(entry.name)
        if value is None or entry.kind in ("records", "object"):
            continue
        inputs[entry.name] = _as_text(entry, typed.get(entry.name, ""), value)
    return {"format": FORMAT, "version": VERSION, "job": {"name": name, "inputs": inputs}}


def measured_of(rings: Iterable[Document]) -> dict[str, str]:
    """What was measured of the rings, by the places where the app keeps it: text by place.

    rings: as "rings" of the route card is answered.
    """
    found = {}
    for ring in rings:
        for size in ring["sizes"]:
            if "measured" in size:
                place = "route/%s/%s" % (size["operation"], size["name"])
                if ring["ring"] != 1:
                    place += "/%d" % ring["ring"]
                found[place] = "%r %s" % (size["measured"]["value"], size["measured"]["unit"])
    return found


def _as_text(entry: Field, text: str, value: Any) -> str | bool:
    if entry.kind == "flag":
        return bool(value)
    if entry.kind not in UNIT_OF_KIND:
        return str(value)
    if _ENDS_IN_SHARED.search(text) and text.rstrip().endswith(_SHARED):
        return text.strip()
    unit = UNIT_OF_KIND[entry.kind]
    return repr(value) if unit == "1" else "%r %s" % (value, unit)


def packed(job: Document) -> str:
    """A job as the text that stands in the fragment."""
    text = json.dumps(job, separators=(",", ":"), ensure_ascii=False).encode("utf-8")
    deflate = zlib.compressobj(9, zlib.DEFLATED, -zlib.MAX_WBITS)
    return base64.urlsafe_b64encode(deflate.compress(text) + deflate.flush()).rstrip(b"=").decode()


def link(address: str, job: Document) -> str:
    """The address that opens a job. address: where the app is served, with a slash at its end."""
    return "%s#%s/s/%s" % (address, SCREEN, packed(job))


def modules(text: str) -> list[list[bool]]:
    """The QR code of a text: rows of True (dark) and False."""
    code = segno.make(text, error="l", micro=False, boost_error=False)
    return [[bool(cell) for cell in row] for row in code.matrix]
