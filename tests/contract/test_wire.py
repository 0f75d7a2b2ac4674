"""What is no HTTP request, and what breaks off, under gunicorn as service/start starts it."""

import contextlib
import json
import re
import socket
import ssl
from urllib.parse import urlsplit

import pytest
import requests

from contract.test_server import exchange
from phone.secure import Workshop

REFUSED = {
    "no-words": (b"GET\r\n\r\n", 400),
    "version": (b"GET / HTTP/9.9\r\nHost: x\r\n\r\n", 400),
    "line": (b"GET /" + b"a" * 20_000 + b" HTTP/1.1\r\nHost: x\r\n\r\n", 414),
    "field": (b"GET / HTTP/1.1\r\nX-Long: " + b"a" * 50_000 + b"\r\n\r\n", 431),
    "fields": (b"GET / HTTP/1.1\r\n" + b"X: y\r\n" * 5_000 + b"\r\n", 431),
    "name": (b"GET / HTTP/1.1\r\nHost: x\r\nX Y: z\r\n\r\n", 400),
    "length": (b"POST /v1/sizing HTTP/1.1\r\nHost: x\r\nContent-Length: abc\r\n\r\n", 400),
    "coding": (b"POST /v1/sizing HTTP/1.1\r\nHost: x\r\nTransfer-Encoding: zip\r\n\r\n", 400),
    "expects": (b"POST /v1/sizing HTTP/1.1\r\nHost: x\r\nExpect: tea\r\n\r\n", 400),
    "letters": (b"G\xc3\x84T\x07 / HTTP/1.1\r\nHost: x\r\n\r\n", 400),
}


@pytest.mark.parametrize(("message", "status"), REFUSED.values(), ids=REFUSED)
def test_what_is_no_request_is_told_so_in_a_problem_document(server, message, status):
    head, _, body = exchange(server, message, wait=3).partition(b"\r\n\r\n")
    assert re.match(rb"HTTP/1\.1 %d [A-Z]" % status, head), head[:200]
    assert b"Content-Type: application/problem+json" in head
    assert b"Ringwright-Version: " in head
    problem = json.loads(body)
    assert problem["status"] == status
    assert problem["errors"][0]["remedy"]
    assert problem["detail"].isprintable()
    # A stranger's words are not given back at length.
    assert len(head) + len(body) < 2000
    known = requests.get(server + "/v1/problems", timeout=10).json()["problems"]
    assert (problem["code"], status) in {(kind["code"], kind["status"]) for kind in known}


@pytest.mark.parametrize("name", ["SCRIPT_NAME", "PATH_INFO", "Script-Name", "X-Script-Name"])
def test_a_header_moves_no_address(server, name):
    parts = urlsplit(server)
    message = "GET /v1/sizing?bore=80 HTTP/1.1\r\nHost: %s\r\n%s: /x\r\nConnection: close\r\n\r\n"
    received = exchange(server, (message % (parts.netloc, name)).encode(), wait=5)
    assert received.startswith(b"HTTP/1.1 200"), received[:300]


def _hung_up(port):
    """Connects and goes before the handshake is done."""
    with socket.create_connection(("127.0.0.1", port), timeout=5) as link:
        link.sendall(b"\x16\x03\x01\x02\x00\x01")


def _mistrusts(port):
    """As a phone does that has not the authority yet: an alert in the midst of the handshake."""
    context = ssl.create_default_context()
    with (
        socket.create_connection(("127.0.0.1", port), timeout=5) as link,
        pytest.raises(ssl.SSLError),
    ):
        context.wrap_socket(link, server_hostname="localhost")


def _speaks_plain(port):
    with socket.create_connection(("127.0.0.1", port), timeout=5) as link:
        link.sendall(b"GET / HTTP/1.1\r\nHost: x\r\n\r\n")
        with contextlib.suppress(ConnectionError):
            link.recv(1000)


def test_who_breaks_off_a_handshake_leaves_no_page_in_the_terminal(tmp_path, capfd):
    running = Workshop(tmp_path / "keys")
    try:
        for broken_off in (_hung_up, _mistrusts, _speaks_plain):
            for _ in range(3):
                broken_off(running.port)
        answer = requests.get(
            "https://localhost:%d/healthz" % running.port,
            verify=str(running.authority),
            timeout=20,
        )
        assert answer.ok
    finally:
        running.stop()
    said = capfd.readouterr()
    assert "Traceback" not in said.err + said.out
    assert "SSLError" not in said.err + said.out
