"""A server that is told to end (SIGTERM): idle connections close, what is under way is answered."""

import json
import signal
import socket
import threading
import time

import pytest
import requests

from bench.load import Connection, request_bytes
from conftest import Server

SIZING = request_bytes("GET", "/v1/sizing?bore=80")
# Within this it has ended when nobody asks it anything [s]: 1.5 s on a machine with eight others
# at work; with gunicorn's own worker the whole graceful time of 10 s.
SOON = 4.0


@pytest.fixture
def ending():
    """A server with two workers, which a test ends."""
    started = Server(workers=2)
    yield started
    if started.process.poll() is None:
        started.stop()


def ended(server):
    """Tells a server to end; seconds until it has."""
    before = time.monotonic()
    server.process.send_signal(signal.SIGTERM)
    server.process.wait(timeout=30)
    return time.monotonic() - before


def test_idle_connections_do_not_hold_it(ending):
    """Kept after an answer, opened and never used, and left in the midst of a head."""
    kept = [Connection(ending.port) for _ in range(8)]
    for each in kept:
        assert each.exchange(SIZING)[0] == 200
    silent = [socket.create_connection(("127.0.0.1", ending.port)) for _ in range(8)]
    halves = [socket.create_connection(("127.0.0.1", ending.port)) for _ in range(8)]
    for each in halves:
        each.sendall(SIZING[:20])
    time.sleep(0.5)
    assert ended(ending) < SOON
    opened = [*silent, *halves, *(one.socket for one in kept)]
    for each in opened:
        each.settimeout(1.0)
    last = [each.recv(1) for each in opened]
    for each in opened:
        each.close()
    assert set(last) == {b""}


def test_what_is_under_way_is_answered_whole(ending):
    """A body that is still coming, and a heavy piece of work, beside an idle connection."""
    idle = Connection(ending.port)
    assert idle.exchange(SIZING)[0] == 200
    body = json.dumps({"bore": 80}).encode()
    slow = socket.create_connection(("127.0.0.1", ending.port))
    message = request_bytes("POST", "/v1/sizing", body)
    slow.sendall(message[:-4])
    cards = []

    def print_card():
        cards.append(requests.get(ending.address + "/v1/route.pdf?bore=81", timeout=30))

    threads = [threading.Thread(target=print_card) for _ in range(4)]
    for each in threads:
        each.start()
    time.sleep(0.1)
    ending.process.send_signal(signal.SIGTERM)
    time.sleep(1.5)
    slow.sendall(message[-4:])
    slow.settimeout(10)
    answer = b""
    while piece := slow.recv(65536):
        answer += piece
    slow.close()
    idle.close()
    head, _, content = answer.partition(b"\r\n\r\n")
    assert head.startswith(b"HTTP/1.1 200")
    assert json.loads(content)["figures"]["radial_thickness"]
    for each in threads:
        each.join()
    for card in cards:
        assert card.status_code == 200
        assert card.content.startswith(b"%PDF") and card.content.rstrip().endswith(b"%%EOF")
    assert len(cards) == 4
    ending.process.wait(timeout=10)


def test_who_asks_without_pause_over_a_kept_connection_loses_nothing(ending):
    """Each is told that the connection closes, and comes back to a server that is there again."""
    failed, answered, closed, over = [], [], [], threading.Event()

    def ask():
        connection = Connection(ending.port)
        while not over.is_set():
            try:
                opened = connection.socket is None
                status, _ = connection.exchange(SIZING)
                answered.append(status)
                if connection.socket is None:
                    closed.append(status)
            except ConnectionRefusedError:
                # Nobody there: what was never asked is not lost.
                connection.close()
                time.sleep(0.05)
            except OSError as error:
                # Only a request on a connection that was open already is lost with it; one that
                # never got through its opening is asked again by every client.
                connection.close()
                if not opened:
                    failed.append(repr(error))
            time.sleep(0.02)
        connection.close()

    callers = [threading.Thread(target=ask) for _ in range(4)]
    for each in callers:
        each.start()
    time.sleep(1.0)
    assert ended(ending) < SOON
    ending.start_again()
    time.sleep(0.5)
    over.set()
    for each in callers:
        each.join()
    assert failed == []
    assert set(answered) == {200} and len(answered) > 20
    assert len(closed) >= 4


@pytest.fixture
def closing_later(monkeypatch):
    """A server whose door stays open for three seconds once it is told to end."""
    monkeypatch.setenv("RINGWRIGHT_CLOSE_AFTER", "3")
    started = Server(workers=1)
    yield started
    if started.process.poll() is None:
        started.stop()


def test_a_door_that_closes_later_says_so_first(closing_later):
    """Before a proxy: who looks whether it is ready hears no, and who comes yet is answered."""
    address = closing_later.address
    assert requests.get(address + "/readyz", timeout=10).status_code == 200
    before = time.monotonic()
    closing_later.process.send_signal(signal.SIGTERM)
    time.sleep(0.5)
    told = requests.get(address + "/readyz", timeout=10)
    assert told.status_code == 503 and told.json()["code"] == "not-ready"
    assert "told to end" in told.json()["detail"]
    asked = requests.post(address + "/v1/sizing", json={"bore": 80}, timeout=10)
    assert asked.status_code == 200
    closing_later.process.wait(timeout=20)
    assert 3.0 <= time.monotonic() - before < 3.0 + SOON
