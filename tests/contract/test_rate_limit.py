"""One address may ask so much a minute and no more, and is told when it may ask again."""

import os

import pytest
import requests

from conftest import Server
from contract.test_bad_inputs import check_problem
from ringwright.api import create_app
from ringwright.api.rate_limit import PLACES, PROXIES, RATE, RateLimit, client_of


class Clock:
    """Seconds that pass when they are told to."""

    def __init__(self):
        self.now = 5000.0

    def __call__(self):
        return self.now


def allowed(limit, address, most=10_000):
    """How many are let through before one is not."""
    for count in range(most):
        if limit.wait(address):
            return count
    return most


def test_ten_seconds_worth_at_once_then_evenly():
    """60 a minute: ten at once, then one a second (by hand)."""
    clock = Clock()
    limit = RateLimit(60, clock)
    assert allowed(limit, "192.0.2.1") == 10
    assert limit.wait("192.0.2.1") == pytest.approx(1.0)
    clock.now += 0.5
    assert limit.wait("192.0.2.1") == pytest.approx(0.5)
    clock.now += 0.5
    assert allowed(limit, "192.0.2.1") == 1
    clock.now += 3600
    assert allowed(limit, "192.0.2.1") == 10


@pytest.mark.parametrize("rate", [1, 7, 60, 600])
def test_no_minute_brings_more_than_the_rate_and_a_burst(rate):
    clock = Clock()
    limit = RateLimit(rate, clock)
    passed = []
    for _ in range(3000):
        if not limit.wait("192.0.2.1"):
            passed.append(clock.now)
        clock.now += 0.1
    for at in range(0, len(passed), max(1, len(passed) // 50)):
        within = sum(1 for moment in passed if passed[at] <= moment < passed[at] + 60.0)
        assert within <= rate + max(1, rate // 6)
    assert len(passed) >= 5 * rate


def test_who_is_refused_is_not_made_to_wait_longer():
    clock = Clock()
    limit = RateLimit(60, clock)
    allowed(limit, "192.0.2.1")
    for _ in range(1000):
        assert 0 < limit.wait("192.0.2.1") <= 1.0 + 1e-9


def test_addresses_do_not_count_for_one_another():
    limit = RateLimit(60, Clock())
    assert allowed(limit, "192.0.2.1") == 10
    assert allowed(limit, "192.0.2.2") == 10


def test_no_number_of_addresses_takes_more_memory_or_fails():
    limit = RateLimit(60, Clock())
    for at in range(3 * PLACES):
        assert limit.wait("a%d" % at) == 0.0
    assert limit._hashes.nbytes + limit._moments.nbytes == 16 * PLACES


def test_no_address_is_kept():
    limit = RateLimit(60, Clock())
    limit.wait("192.0.2.77")
    assert b"192.0.2.77" not in bytes(limit._hashes) + bytes(limit._moments)
    other = RateLimit(60, Clock())
    other.wait("192.0.2.77")
    assert bytes(limit._hashes) != bytes(other._hashes)


def test_all_processes_count_together():
    limit = RateLimit(60, Clock())
    for _ in range(10):
        child = os.fork()
        if not child:
            os._exit(1 if limit.wait("192.0.2.1") else 0)
        assert os.waitpid(child, 0)[1] == 0
    assert limit.wait("192.0.2.1") > 0


FORWARDED = "203.0.113.9, 198.51.100.4"


@pytest.mark.parametrize(
    ("peer", "forwarded", "proxies", "client"),
    [
        ("192.0.2.1", None, 0, "192.0.2.1"),
        ("192.0.2.1", FORWARDED, 0, "192.0.2.1"),
        ("192.0.2.1", FORWARDED, 1, "198.51.100.4"),
        ("192.0.2.1", FORWARDED, 2, "203.0.113.9"),
        ("192.0.2.1", FORWARDED, 3, "192.0.2.1"),
        ("192.0.2.1", None, 1, "192.0.2.1"),
        ("192.0.2.1", "unknown", 1, "192.0.2.1"),
        ("192.0.2.1", "x" * 5000, 1, "192.0.2.1"),
        # A site of the longer addresses has 2^64 of them.
        ("2001:db8:1:2:3:4:5:6", None, 0, "2001:db8:1:2::/64"),
        ("2001:db8:1:2:ffff::1", None, 0, "2001:db8:1:2::/64"),
        ("::ffff:192.0.2.1", None, 0, "192.0.2.1"),
        # A socket of this machine has no address.
        ("", None, 0, ""),
    ],
)
def test_which_address_is_counted(peer, forwarded, proxies, client):
    environ = {"REMOTE_ADDR": peer}
    if forwarded is not None:
        environ["HTTP_X_FORWARDED_FOR"] = forwarded
    assert client_of(environ, proxies) == client


@pytest.fixture
def limited(monkeypatch):
    monkeypatch.setenv(RATE, "6")
    return create_app().test_client()


def test_what_is_too_much_is_told_in_a_problem_document(limited):
    assert limited.get("/v1/sizing?bore=80").status_code == 200
    for method, path in (("get", "/v1/sizing?bore=80"), ("post", "/v1/job"), ("get", "/v1/none")):
        answer = getattr(limited, method)(path)
        problem = check_problem(answer, 429)
        assert problem["code"] == "too-many-requests"
        assert 1 <= int(answer.headers["Retry-After"]) <= 10
        assert answer.headers["Cache-Control"] == "no-store"
        assert "Retry-After" in answer.headers["Access-Control-Expose-Headers"]
        assert len(answer.data) < 2000


def test_health_and_the_app_are_always_answered(limited):
    for _ in range(5):
        limited.get("/v1/sizing?bore=80")
        for path in ("/healthz", "/readyz", "/", "/openapi.json"):
            assert limited.get(path).status_code == 200


def test_it_is_off_until_asked_for(monkeypatch):
    monkeypatch.delenv(RATE, raising=False)
    client = create_app().test_client()
    assert {client.get("/v1/materials").status_code for _ in range(300)} == {200}


def test_over_the_wire_all_workers_count_together(monkeypatch):
    monkeypatch.setenv(RATE, "60")
    monkeypatch.delenv(PROXIES, raising=False)
    server = Server(workers=2)
    try:
        answers = [
            requests.get(
                server.address + "/v1/materials",
                headers={"X-Forwarded-For": "203.0.113.%d" % at},
                timeout=20,
            )
            for at in range(40)
        ]
        refused = [answer for answer in answers if answer.status_code == 429]
        # Ten at once and one more for each second that the forty took.
        taken = sum(answer.elapsed.total_seconds() for answer in answers)
        assert 40 - len(refused) <= 12 + 3 * taken
        assert refused and refused[0].json()["code"] == "too-many-requests"
        big = requests.post(
            server.address + "/v1/sizing",
            data=b" " * 500_000,
            headers={"Content-Type": "application/json"},
            timeout=20,
        )
        assert big.status_code in (400, 429)
    finally:
        server.stop()
