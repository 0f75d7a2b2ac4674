"""Callers of heavy work, in a process of their own.

usage, in tests/: python -m bench.heavy_callers PORT COUNT SECONDS MANNER

Each asks over one kept connection for route cards, cut lists that are looked for long, pressures
on harsh walls, spreads and DXF in turns, for a number of seconds. MANNER: "patient" waits as
Retry-After says, "rude" asks again at once. Prints, as JSON, how often each status was answered.
"""

import json
import sys
import threading
import time

from bench.load import Connection, request_bytes
from bench.long_stock import LONG_STOCK

OVAL = {
    "bore": 80,
    "bore_shape": {
        "harmonics": [{"order": 2, "amplitude": 0.5}, {"order": 7, "amplitude": 0.5, "phase": 11}]
    },
}
MESSAGES = [
    request_bytes("GET", "/v1/route.pdf?bore=80", more={"Accept": "*/*"}),
    request_bytes("POST", "/v1/stock", json.dumps(LONG_STOCK).encode()),
    request_bytes("POST", "/v1/wall-pressure", json.dumps(OVAL).encode()),
    request_bytes("GET", "/v1/spread?bore=80"),
    request_bytes("GET", "/v1/drawings/section-window.dxf?bore=80", more={"Accept": "*/*"}),
]


def call(port, seconds, manner, at, counts):
    """One caller until his time is over."""
    connection = Connection(port)
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        status, headers = connection.status_of(MESSAGES[at % len(MESSAGES)])
        counts[status] = counts.get(status, 0) + 1
        at += 1
        if status == 503 and manner == "patient":
            time.sleep(min(int(headers["retry-after"]), max(0.0, end - time.monotonic())))
    connection.close()


def main(port, count, seconds, manner):
    found = [{} for _ in range(count)]
    threads = [
        threading.Thread(target=call, args=(port, seconds, manner, at, found[at]))
        for at in range(count)
    ]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    total = {}
    for counts in found:
        for status, number in counts.items():
            total[status] = total.get(status, 0) + number
    print(json.dumps(total))


if __name__ == "__main__":
    main(int(sys.argv[1]), int(sys.argv[2]), float(sys.argv[3]), sys.argv[4])
