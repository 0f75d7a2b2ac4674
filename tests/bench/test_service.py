"""How fast the service is: the core alone, then over HTTP beside an endpoint that does nothing.

Both servers run at once under the same gunicorn settings, one worker each, and are asked in turns,
so that a busy machine slows both alike. Processor time a request is the steadier figure.
The tests fail only far off their aims; the figures are printed.
"""

import json
import os
import statistics
import time
from pathlib import Path

import pytest

from bench.load import Connection, rate, request_bytes
from conftest import Server
from ringwright.core import calculations
from ringwright.core.fields import checked

ROUNDS = 5
SECONDS = 1.0
COUNTED = 300
# An empty endpoint as anybody would write it.
EMPTY = """
from flask import Flask

app = Flask(__name__)


@app.post("/empty")
def empty():
    return {"status": "ok"}


@app.get("/readyz")
@app.get("/healthz")
def healthz():
    return {"status": "ok"}
"""
JOB = {"bore": "3 1/8 in", "rings": 2, "steam_pressure": "120 psi"}


def worker_of(server):
    """The process id of the only worker of a server."""
    pid = server.process.pid
    return int(Path("/proc/%d/task/%d/children" % (pid, pid)).read_text().split()[0])


def processor_seconds(pid):
    """Processor time that a process has used so far [s]."""
    fields = Path("/proc/%d/stat" % pid).read_text().rpartition(")")[2].split()
    return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")


def processor_time(server, message, count=COUNTED):
    """Processor time of the worker for one request [s]."""
    connection = Connection(server.port)
    pid = worker_of(server)
    connection.exchange(message)
    start = processor_seconds(pid)
    for _ in range(count):
        status, _ = connection.exchange(message)
        assert status == 200
    connection.close()
    return (processor_seconds(pid) - start) / count


def memory(pid):
    """(resident, proportional) memory of a process [MB]; the latter shares out shared pages."""
    found = {}
    for line in Path("/proc/%d/smaps_rollup" % pid).read_text().splitlines()[1:]:
        name, _, size = line.partition(":")
        found[name] = int(size.split()[0]) / 1024
    return found["Rss"], found["Pss"]


@pytest.fixture(scope="module")
def both(tmp_path_factory):
    """(the empty server, ours), one worker each."""
    folder = tmp_path_factory.mktemp("empty")
    (folder / "empty_endpoint.py").write_text(EMPTY)
    empty = Server("empty_endpoint:app", folder=folder)
    ours = Server()
    yield empty, ours
    empty.stop()
    ours.stop()


@pytest.mark.bench
def test_one_sizing_in_the_core(capsys):
    calculation = calculations.CALCULATIONS["sizing"]
    request = {"bore": 79.375, "rings": 2, "steam_pressure": 0.827}
    best = min(_microseconds(lambda: calculation.run(checked(calculation.fields, request)), 20))
    with capsys.disabled():
        print("\nOne sizing in the core, CPython: %.0f microseconds (best of 20 x 50)" % best)
    assert best < 2000


def _microseconds(work, repeats, times=50):
    work()
    for _ in range(repeats):
        start = time.process_time()
        for _ in range(times):
            work()
        yield (time.process_time() - start) / times * 1e6


@pytest.mark.bench
@pytest.mark.parametrize(
    ("name", "aim"), [("sizing", 0.50), ("tooling", 0.25), ("route", 0.25), ("job", 0.25)]
)
def test_rate_against_an_empty_endpoint(both, capsys, name, aim):
    if name not in calculations.CALCULATIONS:
        pytest.skip("there is no %s" % name)
    empty, ours = both
    nothing = request_bytes("POST", "/empty", b"{}")
    asked = request_bytes("POST", "/v1/" + name, json.dumps(JOB).encode())
    rates = [
        (rate(empty.port, nothing, SECONDS), rate(ours.port, asked, SECONDS)) for _ in range(ROUNDS)
    ]
    times = [(processor_time(empty, nothing), processor_time(ours, asked)) for _ in range(ROUNDS)]
    share = statistics.median(our / their for their, our in rates)
    share_of_time = min(t for t, _ in times) / min(t for _, t in times)
    with capsys.disabled():
        print(
            "\n%s: %.0f a second beside %.0f of an empty endpoint (%.0f %%, aim %.0f %%); "
            "processor time %.2f ms beside %.2f ms (%.0f %%)"
            % (
                name,
                statistics.median(our for _, our in rates),
                statistics.median(their for their, _ in rates),
                share * 100,
                aim * 100,
                min(t for _, t in times) * 1e3,
                min(t for t, _ in times) * 1e3,
                share_of_time * 100,
            )
        )
    # Where system calls cost little, what is worked counts for more.
    assert max(share, share_of_time) > aim / 3


@pytest.mark.bench
def test_a_kept_answer_costs_little(both, capsys):
    _, ours = both
    connection = Connection(ours.port)
    fetched = request_bytes("GET", "/v1/sizing?bore=80")
    tag = connection.head_of(fetched)["etag"]
    again = request_bytes("GET", "/v1/sizing?bore=80", more={"If-None-Match": tag})
    whole, known = processor_time(ours, fetched), 0.0
    pid = worker_of(ours)
    start = processor_seconds(pid)
    for _ in range(COUNTED):
        status, body = connection.exchange(again)
        assert (status, body) == (304, b"")
    known = (processor_seconds(pid) - start) / COUNTED
    connection.close()
    with capsys.disabled():
        print(
            "\nGET sizing: %.2f ms of processor time, %.2f ms when the caller holds the answer"
            % (whole * 1e3, known * 1e3)
        )
    assert known < whole


@pytest.mark.bench
def test_memory_of_a_worker(both, capsys):
    empty, ours = both
    figures = []
    for server in (empty, ours):
        resident, share = memory(worker_of(server))
        figures += [resident, share]
    with capsys.disabled():
        print(
            "\nMemory of a worker: %.0f MB resident, %.0f MB by share; an empty one %.0f and %.0f"
            % (figures[2], figures[3], figures[0], figures[1])
        )
    assert figures[2] < 250
