"""What paper costs beside a sizing: processor time of one worker, each job asked for once.

Whatever the service keeps of a job it printed before would make the second copy cheaper, and nobody
prints a card twice in a row: every card and every set of drawings here is of another bore.
"""

import json
import statistics

import pytest

from bench.load import Connection, request_bytes
from bench.test_service import JOB, processor_seconds, processor_time, worker_of
from conftest import Server

ROUNDS, CARDS, SIZINGS = 5, 12, 300
# Sizings that a route card may cost, and a set of drawings.
AIMS = {"route": 60.0, "drawings": 60.0}


def seconds_each(server, path, first):
    """Processor time of the worker for one file, a number of bores from `first` on [s]."""
    connection = Connection(server.port)
    bodies = [json.dumps({**JOB, "bore": first + 0.37 * i}).encode() for i in range(CARDS)]
    asked = [request_bytes("POST", path, body, {"Accept": "application/pdf"}) for body in bodies]
    pid = worker_of(server)
    start = processor_seconds(pid)
    for message in asked:
        status, body = connection.exchange(message)
        assert status == 200 and body.startswith(b"%PDF")
    connection.close()
    return (processor_seconds(pid) - start) / CARDS


@pytest.mark.bench
@pytest.mark.parametrize("name", AIMS)
def test_paper_beside_a_sizing(capsys, name):
    sizing = request_bytes("POST", "/v1/sizing", json.dumps(JOB).encode())
    server = Server()
    found = []
    try:
        # Faces are read, and the words of every card broken into lines, once a process.
        seconds_each(server, "/v1/%s.pdf" % name, 62.0)
        for turn in range(ROUNDS):
            light = processor_time(server, sizing, SIZINGS)
            found.append((seconds_each(server, "/v1/%s.pdf" % name, 70.0 + 5.0 * turn), light))
    finally:
        server.stop()
    shares = [heavy / light for heavy, light in found]
    with capsys.disabled():
        print(
            "\n%s.pdf: %.0f sizings (%.0f to %.0f in %d turns, aim %.0f); %.1f and %.2f ms"
            % (
                name, statistics.median(shares), min(shares), max(shares), ROUNDS, AIMS[name],
                1e3 * min(heavy for heavy, _ in found), 1e3 * min(light for _, light in found),
            )
        )  # fmt: skip
    assert statistics.median(shares) < 2 * AIMS[name]
