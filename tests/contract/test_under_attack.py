"""What the README starts answers honest callers while hundreds of others stall."""

import time

import pytest
import requests

from conftest import Server
from contract.attack import KINDS, under

PROBES = 8


@pytest.fixture(scope="module")
def started():
    running = Server(workers=2)
    yield running
    running.stop()


def slowest(address, verify=True):
    """Seconds of the slowest of several sizings, each on a connection of its own."""
    worst = 0.0
    for _ in range(PROBES):
        before = time.monotonic()
        answer = requests.get(address + "/v1/sizing?bore=80", timeout=20, verify=verify)
        worst = max(worst, time.monotonic() - before)
        assert answer.status_code == 200
    return worst


@pytest.mark.slow
@pytest.mark.parametrize("kind", KINDS)
def test_the_next_honest_request_is_answered_within_a_second(started, kind):
    """40 connections that had sent one byte made it time out for half a minute."""
    with under(started.port, kind, 500 if kind == "silent" else 200) as there:
        assert there >= 200
        time.sleep(1.0)
        assert slowest(started.address) < 1.0


@pytest.mark.slow
def test_all_kinds_together(started):
    with (
        under(started.port, "silent", 200),
        under(started.port, "headers", 100),
        under(started.port, "body", 100),
        under(started.port, "reader", 100),
    ):
        time.sleep(1.0)
        assert slowest(started.address) < 1.0
