"""The log of requests: a line of JSON for each, none with a figure of anybody's.

{"time": "2026-05-01T08:00:00.123Z", "id": "6f0c...", "method": "GET", "path": "/v1/sizing",
"status": 200, "ms": 1.94, "bytes": 4711}. What watched.py tells is all that is written.
"""

import os
from datetime import UTC, datetime

import orjson

from .watched import Done

SETTING = "RINGWRIGHT_REQUEST_LOG"
_STANDARD_OUTPUT = 1


def line_of(done: Done, now: datetime) -> bytes:
    """The line for a Done, bytes; now: datetime in UTC at which it was done."""
    entry = {
        "time": now.isoformat(timespec="milliseconds").replace("+00:00", "Z"),
        "id": done.id,
        "method": done.method,
        "path": done.address,
        "status": done.status,
        "ms": round(done.seconds * 1000.0, 2),
        "bytes": done.size,
    }
    return orjson.dumps(entry) + b"\n"


def write(done: Done) -> None:
    """Writes the line of a Done to standard output, in one piece: workers do not mix theirs."""
    try:
        os.write(_STANDARD_OUTPUT, line_of(done, datetime.now(UTC)))
    except OSError:
        # A full disk, or nobody who reads on: the answer matters more than its line.
        return
