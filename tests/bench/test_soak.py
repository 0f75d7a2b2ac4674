"""Memory of the workers under everything at once for minutes: after the first it stays as it is.

tests/run -m bench --soak-minutes 5 tests/bench/test_soak.py
"""

import json
import random
import statistics
import subprocess
import time

import pytest

from bench.callers import begun
from bench.heavy_callers import MESSAGES as HEAVY
from bench.load import request_bytes
from bench.test_service import EMPTY, memory
from conftest import Server

CALLERS = 6
FIRST_MINUTE = 60.0
# What one PDF more or less in the making takes [MB].
SLACK = 6.0


def everything():
    """Requests of all kinds in an order that looks like none, the same each time."""
    chance = random.Random(1)
    messages = [
        request_bytes("GET", "/v1/sizing?bore=%.3f&rings=%d" % (40 + at * 0.311, 1 + at % 4))
        for at in range(600)
    ]
    for at in range(60):
        job = {"bore": 45 + at * 1.7, "rings": 1 + at % 4, "batch": 1 + at % 6}
        messages.append(request_bytes("POST", "/v1/job", json.dumps(job).encode()))
        messages.append(request_bytes("POST", "/v1/wall-pressure", b'{"bore": %d}' % (50 + at)))
        messages.append(request_bytes("GET", "/v1/sizing?bore=%d-x" % at))
        messages.append(request_bytes("GET", "/nothing/%d" % at))
        messages.append(request_bytes("POST", "/v1/job", b'{"bore": [%s]}' % (b"1," * 9000)))
    files = {"Accept": "*/*"}
    for at in range(8):
        for form in ("route.pdf", "drawings.pdf", "tooling.csv", "drawings/blank.dxf"):
            path = "/v1/%s?bore=%d" % (form, 60 + 7 * at)
            messages.append(request_bytes("GET", path, more=files))
    messages += HEAVY
    messages += [
        request_bytes("GET", "/openapi.json"),
        request_bytes("GET", "/metrics", more=files),
    ]
    chance.shuffle(messages)
    return messages


@pytest.mark.bench
@pytest.mark.timeout(3600)
def test_memory_is_flat_after_the_first_minute(monkeypatch, tmp_path, capsys, request):
    minutes = request.config.getoption("--soak-minutes")
    monkeypatch.setenv("RINGWRIGHT_REQUEST_LOG", "on")
    monkeypatch.setenv("RINGWRIGHT_METRICS", "on")
    monkeypatch.setenv("RINGWRIGHT_RATE", "1000000")
    (tmp_path / "empty_endpoint.py").write_text(EMPTY)
    empty = Server("empty_endpoint:app", workers=2, folder=tmp_path)
    server = Server(workers=2, stdout=subprocess.DEVNULL)
    try:
        first = _both(server)
        nothing = sum(memory(pid)[0] for pid in _both(empty))
        told = begun(server.port, CALLERS, FIRST_MINUTE * minutes, everything())
        found = _watched(server, FIRST_MINUTE * minutes)
        said = told()
        assert sorted(server.workers()) == sorted(first)
    finally:
        server.stop()
        empty.stop()
    at_first = [mb for at, mb in found if FIRST_MINUTE * 0.75 <= at <= FIRST_MINUTE * 1.25]
    at_last = [mb for at, mb in found if at >= FIRST_MINUTE * (minutes - 0.5)]
    before, after = statistics.median(at_first), statistics.median(at_last)
    with capsys.disabled():
        print(
            "\nSoak of %g minutes, two workers: %.0f MB after the first, %.0f at the end "
            "(%+.1f MB; empty %.0f); %.0f a second, 99 %% in %.0f ms, answers by status %s"
            % (
                minutes, before, after, after - before, nothing, said["a_second"], said["most"],
                said["statuses"],
            )
        )  # fmt: skip
    assert set(said["statuses"]) <= {"200", "400", "404", "422", "503"}
    assert said["statuses"]["200"] > 100 * minutes
    assert after < before + SLACK


def _both(server):
    """The two workers of a server, once both are there."""
    end = time.monotonic() + 60
    while len(server.workers()) < 2 and time.monotonic() < end:
        time.sleep(0.1)
    return server.workers()


def _watched(server, seconds):
    """(second, memory of all workers [MB]) twice a second until a little before the end."""
    found, began = [], time.monotonic()
    while (passed := time.monotonic() - began) < seconds - 1.0:
        found.append((passed, sum(memory(pid)[0] for pid in server.workers())))
        time.sleep(0.5)
    return found
