"""The service under gunicorn: large bodies, slow senders, many at once, hostile bytes."""

import concurrent.futures
import json
import socket
import time
from urllib.parse import urlsplit

import pytest
import requests

LARGEST = 1_000_000


def exchange(address, message, wait=5):
    """Sends bytes and returns what comes back until the server is done or silent."""
    parts = urlsplit(address)
    received = b""
    with socket.create_connection((parts.hostname, parts.port), timeout=wait) as link:
        link.sendall(message)
        try:
            while piece := link.recv(65536):
                received += piece
        except (TimeoutError, ConnectionResetError):
            pass
    return received


def test_a_whole_ring_over_the_wire(server):
    response = requests.post(server + "/v1/sizing", json={"bore": "3 1/8 in"}, timeout=10)
    assert response.status_code == 200
    assert response.json()["figures"]["free_gap"]["unit"] == "mm"


@pytest.mark.parametrize("size", [2 * LARGEST, 10 * LARGEST])
@pytest.mark.parametrize("in_chunks", [False, True])
def test_a_body_too_large_is_told_so(server, size, in_chunks):
    body = b'{"bore": "' + b"8" * size + b'"}'

    def pieces():
        for start in range(0, len(body), 65536):
            yield body[start : start + 65536]

    response = requests.post(
        server + "/v1/sizing",
        data=pieces() if in_chunks else body,
        headers={"Content-Type": "application/json"},
        timeout=20,
    )
    assert response.status_code == 413
    assert response.json()["code"] == "body-too-large"


def test_a_small_body_in_chunks_is_read(server):
    response = requests.post(
        server + "/v1/sizing",
        data=iter([b'{"bo', b're": 8', b"0}"]),
        headers={"Content-Type": "application/json"},
        timeout=10,
    )
    assert response.status_code == 200


def test_one_connection_serves_again_after_each_refusal(server):
    session = requests.Session()
    for body in (b"{", b"[" * 90_000, b'{"bore": "' + b"9" * (2 * LARGEST) + b'"}', b"{}"):
        refused = session.post(
            server + "/v1/sizing",
            data=body,
            headers={"Content-Type": "application/json"},
            timeout=20,
        )
        assert 400 <= refused.status_code < 500
        assert session.get(server + "/v1/sizing?bore=80", timeout=10).status_code == 200


@pytest.mark.parametrize(
    "message",
    [
        b"\x00\x01\x02\x03\r\n\r\n",
        b"GET\r\n\r\n",
        b"GET /v1/sizing?bore=80 HTTP/9.9\r\nHost: x\r\n\r\n",
        b"GET /" + b"a" * 20_000 + b" HTTP/1.1\r\nHost: x\r\n\r\n",
        b"GET / HTTP/1.1\r\n" + b"X-Long: " + b"a" * 50_000 + b"\r\n\r\n",
        b"GET / HTTP/1.1\r\n" + b"X: y\r\n" * 5_000 + b"\r\n",
        b"POST /v1/sizing HTTP/1.1\r\nHost: x\r\nContent-Length: -5\r\n\r\n",
        b"POST /v1/sizing HTTP/1.1\r\nHost: x\r\nContent-Length: abc\r\n\r\n",
        b"POST /v1/sizing HTTP/1.1\r\nHost: x\r\nTransfer-Encoding: chunked\r\n\r\nzz\r\n",
    ],
)
def test_hostile_bytes_are_answered_or_dropped(server, message):
    received = exchange(server, message, wait=3)
    assert not received or received.startswith((b"HTTP/1.1 4", b"HTTP/1.0 4", b"HTTP/1.1 505"))
    assert requests.get(server + "/healthz", timeout=5).status_code == 200


def test_slow_senders_do_not_stop_the_others(server):
    parts = urlsplit(server)
    slow = []
    try:
        for _ in range(12):
            link = socket.create_connection((parts.hostname, parts.port), timeout=5)
            link.sendall(b"POST /v1/sizing HTTP/1.1\r\nHost: x\r\nContent-Type: applic")
            slow.append(link)
        start = time.perf_counter()
        assert requests.get(server + "/v1/sizing?bore=80", timeout=20).status_code == 200
        assert time.perf_counter() - start < 5
    finally:
        for link in slow:
            link.close()


def test_many_at_once_get_their_own_answers(server):
    bores = [40 + step for step in range(60)]

    def inside(bore):
        answer = requests.get("%s/v1/sizing?bore=%d" % (server, bore), timeout=20).json()
        figures = answer["figures"]
        return figures["inside_diameter"]["value"] + 2 * figures["radial_thickness"]["value"]

    with concurrent.futures.ThreadPoolExecutor(8) as pool:
        found = list(pool.map(inside, bores))
    assert found == pytest.approx(bores, rel=1e-12)


def test_the_specification_over_the_wire_is_the_committed_one(server, root):
    served = requests.get(server + "/openapi.json", timeout=10).json()
    assert served == json.loads((root / "openapi" / "openapi.json").read_text(encoding="utf-8"))
