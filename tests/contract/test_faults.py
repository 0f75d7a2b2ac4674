"""What the service bears: a disk that is full, cannot be written or is not there, descriptors used
up, a log that nobody takes."""

import os
import resource
import shutil
import socket
import subprocess
import time

import pytest
import requests

from conftest import Server

pytestmark = pytest.mark.slow
ASKED = (
    ("GET", "/", None),
    ("GET", "/openapi.json", None),
    ("GET", "/v1/sizing?bore=80", None),
    ("GET", "/v1/route.pdf?bore=80", None),
    ("GET", "/v1/drawings.pdf?bore=80", None),
    ("GET", "/v1/drawings/blank.dxf?bore=80", None),
    ("GET", "/v1/sizing.csv?bore=80", None),
    ("POST", "/v1/job", {"bore": 80, "rings": 3}),
    ("POST", "/v1/wall-pressure", {"bore": 80}),
)


def answered(server):
    """Asks for one of everything; all of it is to be had."""
    for method, path, body in ASKED:
        answer = requests.request(method, server.address + path, json=body, timeout=30)
        assert answer.status_code == 200, path
    large = requests.post(
        server.address + "/v1/sizing",
        data=b" " * 3_000_000,
        headers={"Content-Type": "application/json"},
        timeout=30,
    )
    assert large.status_code == 413


def no_file_grows():
    """Every write to a file fails, as on a full disk; what is no file may be written."""
    resource.setrlimit(resource.RLIMIT_FSIZE, (0, 0))


def test_a_full_disk_stops_nothing(monkeypatch, tmp_path):
    monkeypatch.setenv("RINGWRIGHT_REQUEST_LOG", "on")
    with (tmp_path / "log").open("wb") as log:
        server = Server(workers=2, before=no_file_grows, stdout=log, stderr=log)
        try:
            answered(server)
            assert (tmp_path / "log").stat().st_size == 0
        finally:
            server.stop()


def test_the_limit_is_one():
    """What the test above rests on: under it a file cannot be written."""
    tried = subprocess.run(
        ["sh", "-c", 'echo x > "$0"', "/tmp/ringwright-limit-%d" % os.getpid()],
        preexec_fn=no_file_grows,
        capture_output=True,
        check=False,
    )
    os.unlink("/tmp/ringwright-limit-%d" % os.getpid())
    assert tried.returncode != 0


def test_a_disk_that_cannot_be_written_stops_nothing(monkeypatch):
    """All of it made read-only for the service alone, temporary folders too; what is memory (the
    heartbeats of gunicorn's workers in /dev/shm) stays."""
    if os.geteuid() or not shutil.which("unshare"):
        pytest.skip("only root can mount")
    shut = (
        "mount --make-rprivate / && for at in / /tmp /var/tmp /root /run; do "
        'mount --bind "$at" "$at" && mount -o remount,bind,ro "$at" || exit 77; done; '
        '! touch /tmp/x 2> /dev/null && ! touch "$PWD/x" 2> /dev/null || exit 77; exec "$@"'
    )
    front = ["unshare", "--mount", "sh", "-c", shut, "sh"]
    may = subprocess.run([*front, "true"], capture_output=True, text=True, check=False)
    if may.returncode:
        pytest.skip("nothing can be mounted here: " + may.stderr[:200])
    monkeypatch.setenv("RINGWRIGHT_REQUEST_LOG", "on")
    monkeypatch.setenv("RINGWRIGHT_METRICS", "on")
    monkeypatch.setenv("RINGWRIGHT_RATE", "6000")
    server = Server(workers=2, front=front, stdout=subprocess.DEVNULL)
    try:
        answered(server)
        told = requests.get(server.address + "/metrics", timeout=20).text
        assert "ringwright_requests_total" in told
    finally:
        server.stop()


def test_a_log_that_nobody_takes_stops_nothing(monkeypatch):
    monkeypatch.setenv("RINGWRIGHT_REQUEST_LOG", "on")
    with open("/dev/full", "wb") as full:
        server = Server(stdout=full)
        try:
            answered(server)
        finally:
            server.stop()
    reading, writing = os.pipe()
    server = Server(stdout=writing)
    os.close(writing)
    os.close(reading)
    try:
        answered(server)
    finally:
        server.stop()


FEW = 64


def few_descriptors():
    resource.setrlimit(resource.RLIMIT_NOFILE, (FEW, FEW))


def test_descriptors_used_up_are_given_back(tmp_path):
    """More callers than a worker has descriptors: they wait, and once they are gone it answers."""
    with (tmp_path / "log").open("wb") as log:
        server = Server(before=few_descriptors, stderr=log)
        links = []
        try:
            for _ in range(3 * FEW):
                links.append(socket.create_connection(("127.0.0.1", server.port), timeout=5))
            time.sleep(3.0)
            (worker,) = server.workers()
            assert len(os.listdir("/proc/%d/fd" % worker)) >= FEW - 4
            for link in links:
                link.close()
            links.clear()
            end, answer = time.monotonic() + 20, None
            while answer is None:
                try:
                    answer = requests.get(server.address + "/v1/sizing?bore=80", timeout=5)
                except requests.RequestException:
                    assert time.monotonic() < end
            assert answer.status_code == 200
            answered(server)
            assert server.workers() == [worker]
        finally:
            for link in links:
                link.close()
            server.stop()
    # Whoever keeps it so for long fills no disk with complaints.
    assert (tmp_path / "log").stat().st_size < 200_000
