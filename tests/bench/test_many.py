"""A thousand rings in one request beside a thousand requests, over three kinds of wire.

The wires: one connection that is kept, on this machine; a connection for each request, as a shell
loop or a spreadsheet opens it; and one kept connection with a round trip of a local network behind
it, which a relay of this file adds. The sums themselves are the same in all of them, so the kept
connection on one machine has the least to gain. Last, in processor time, what a ring of many costs
beside its sum: what is left to save there brings a kept connection nowhere near the aim.
"""

import json
import selectors
import socket
import threading
import time

import pytest

from bench.load import Connection, request_bytes
from bench.test_service import processor_seconds, worker_of
from conftest import Server
from ringwright.core import calculations
from ringwright.core.fields import checked

RINGS = 1000
# Requests of the slow wire that are timed, for the time of RINGS [1].
TIMED = 200
# Round trip of a phone on a workshop's wireless network; common practice, no source [s].
ROUND_TRIP = 0.010
AIM = 0.1
FIGURES = "figures=free_gap,closed_gap"
# Most that a ring of many may cost, reading and writing with it, beside its sum alone [1].
BESIDE_SUM = 1.5
ROUNDS = 3


class Relay:
    """Hands on what comes to its port, each piece half a round trip later."""

    def __init__(self, port):
        self._port = port
        self._listener = socket.create_server(("127.0.0.1", 0))
        self.port = self._listener.getsockname()[1]
        threading.Thread(target=self._serve, daemon=True).start()

    def _serve(self):
        while True:
            try:
                near, _ = self._listener.accept()
            except OSError:
                return
            far = socket.create_connection(("127.0.0.1", self._port))
            threading.Thread(target=self._hand_on, args=(near, far), daemon=True).start()

    def _hand_on(self, near, far):
        other = {near: far, far: near}
        waiting = []
        with selectors.DefaultSelector() as ready:
            for end in other:
                end.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
                ready.register(end, selectors.EVENT_READ)
            while True:
                left = max(0.0, waiting[0][0] - time.monotonic()) if waiting else None
                for key, _ in ready.select(left):
                    piece = key.fileobj.recv(262144)
                    if not piece:
                        near.close()
                        far.close()
                        return
                    due = time.monotonic() + ROUND_TRIP / 2
                    waiting.append((due, other[key.fileobj], piece))
                while waiting and waiting[0][0] <= time.monotonic():
                    _, end, piece = waiting.pop(0)
                    end.sendall(piece)

    def close(self):
        self._listener.close()


def single(at):
    return request_bytes("GET", "/v1/sizing?bore=%.2f&%s" % (50 + 0.1 * at, FIGURES))


def together():
    jobs = [
        {"calculation": "sizing", "inputs": {"bore": round(50 + 0.1 * at, 2)}}
        for at in range(RINGS)
    ]
    body = json.dumps(jobs).encode()
    return request_bytes("POST", "/v1/many?" + FIGURES, body)


def time_of_singles(port, count, kept=True):
    """(seconds for RINGS of them, the answers)."""
    connection, answers = Connection(port), []
    start = time.perf_counter()
    for at in range(count):
        status, content = connection.exchange(single(at))
        assert status == 200
        answers.append(json.loads(content))
        if not kept:
            connection.close()
    seconds = time.perf_counter() - start
    connection.close()
    return seconds * RINGS / count, answers


def time_of_many(port):
    """(seconds, the answers)."""
    connection = Connection(port)
    start = time.perf_counter()
    status, content = connection.exchange(together())
    answers = json.loads(content)
    seconds = time.perf_counter() - start
    connection.close()
    assert status == 200
    return seconds, [one["answer"] for one in answers]


@pytest.mark.bench
def test_a_thousand_rings_in_one_request(capsys):
    server = Server()
    relay = Relay(server.port)
    try:
        time_of_singles(server.port, 50)
        time_of_many(server.port)
        shares = {}
        for wire, port, count, kept in (
            ("one kept connection on this machine", server.port, RINGS, True),
            ("a connection for each, on this machine", server.port, RINGS, False),
            ("a round trip of %.0f ms, kept" % (ROUND_TRIP * 1e3), relay.port, TIMED, True),
            (
                "a round trip of %.0f ms, one for each" % (ROUND_TRIP * 1e3),
                relay.port,
                TIMED,
                False,
            ),
        ):
            alone, expected = time_of_singles(port, count, kept)
            seconds, found = min((time_of_many(port) for _ in range(3)), key=lambda one: one[0])
            assert found[:count] == expected
            shares[wire] = seconds / alone
            with capsys.disabled():
                print(
                    "\n%d rings, %s: %.2f s in one request, %.2f s in as many (%.1f %%, aim %.0f)"
                    % (RINGS, wire, seconds, alone, 100 * seconds / alone, 100 * AIM)
                )
    finally:
        relay.close()
        server.stop()
    first, *_ = shares.values()
    # On this machine the sums are what is left; over a network it is the wire.
    assert first < 0.8
    assert max(list(shares.values())[2:]) < AIM


def processor_time_of_sums():
    """Processor time of the sums of RINGS alone, in this process [s]."""
    sizing = calculations.CALCULATIONS["sizing"]
    asked = [checked(sizing.fields, {"bore": round(50 + 0.1 * at, 2)}) for at in range(RINGS)]
    start = time.process_time()
    for values in asked:
        sizing.run(values)
    return time.process_time() - start


@pytest.mark.bench
def test_what_a_ring_of_many_costs_beside_its_sum(capsys):
    server = Server(workers=1)
    try:
        pid = worker_of(server)
        time_of_singles(server.port, 50)
        time_of_many(server.port)
        costs = []
        # In turns, so that a busy machine slows all alike; the least of each is the truest.
        for _ in range(ROUNDS):
            row = [processor_time_of_sums()]
            for asked in (time_of_many, lambda port: time_of_singles(port, RINGS)):
                before = processor_seconds(pid)
                asked(server.port)
                row.append(processor_seconds(pid) - before)
            costs.append(row)
    finally:
        server.stop()
    alone, many, singles = (min(column) for column in zip(*costs, strict=True))
    with capsys.disabled():
        print(
            "\nprocessor time of %d rings: sums alone %.2f s, in one request %.2f times that, in as"
            " many %.2f times; one request costs %.0f %% of as many"
            % (RINGS, alone, many / alone, singles / alone, 100 * many / singles)
        )
    assert many < BESIDE_SUM * alone
