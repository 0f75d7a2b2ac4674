"""How long a sizing takes while 32 others ask one worker for heavy work, beside a quiet hour."""

import json
import subprocess
import sys
import time
from pathlib import Path

import pytest

from bench.load import Connection, request_bytes
from conftest import Server

SIZING = request_bytes("GET", "/v1/sizing?bore=80")
MOST, CALLERS, SECONDS = 2000, 32, 12.0
# Between two sizings, so that they are asked at all stages of the heavy work [s].
PAUSE = 0.01
AIM = 10.0


def times(port, count, seconds=60.0):
    """Sorted seconds of sizings, one after another over one connection."""
    connection = Connection(port)
    found = []
    end = time.monotonic() + seconds
    while len(found) < count and time.monotonic() < end:
        before = time.perf_counter()
        status, _ = connection.exchange(SIZING)
        found.append(time.perf_counter() - before)
        assert status == 200
        time.sleep(PAUSE)
    connection.close()
    return sorted(found)


def percentile(found, share):
    return found[min(len(found) - 1, int(len(found) * share))]


@pytest.mark.bench
@pytest.mark.parametrize("manner", ["patient", "rude"])
def test_a_sizing_beside_heavy_callers(capsys, manner):
    server = Server()
    try:
        times(server.port, 50)
        quiet = percentile(times(server.port, 500), 0.99)
        command = [sys.executable, "-m", "bench.heavy_callers"]
        command += [str(server.port), str(CALLERS), str(SECONDS), manner]
        folder = Path(__file__).parents[1]
        with subprocess.Popen(command, stdout=subprocess.PIPE, text=True, cwd=folder) as callers:
            time.sleep(2.0)
            found = times(server.port, MOST, SECONDS - 4.0)
            answered = json.loads(callers.communicate(timeout=60)[0])
    finally:
        server.stop()
    beside = percentile(found, 0.99)
    with capsys.disabled():
        print(
            "\n%s: 99th percentile of %d sizings %.1f ms beside %d heavy callers, %.1f ms without "
            "(%.1f times, aim %.0f); median %.1f ms; heavy answers by status %s"
            % (
                manner, len(found), beside * 1e3, CALLERS, quiet * 1e3, beside / quiet, AIM,
                percentile(found, 0.5) * 1e3, answered,
            )
        )  # fmt: skip
    assert set(answered) <= {"200", "503"}
    assert answered["200"] > 10
    assert beside < 3 * AIM * quiet
