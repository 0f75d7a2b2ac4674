"""Requests a second and how long they take, with several workers and through the proxy.

Eight callers at once, beside an endpoint that does nothing under the same server in the same run.
The callers work on the same processors, so the rates are a floor; processor time is the steadier.
"""

import json
import shutil
import statistics

import pytest

from bench.callers import called
from bench.load import Connection, request_bytes
from bench.test_service import EMPTY, JOB, processor_seconds
from conftest import Server
from contract.front import NAME, Front

CALLERS, SECONDS, ROUNDS = 8, 2.0, 3
# Share of an empty endpoint's rate that is aimed at, where there is an aim.
AIMS = {"sizing": 0.50, "job": 0.25, "wall-pressure": None}


def posted(name):
    body = {"bore": JOB["bore"]} if name == "wall-pressure" else JOB
    return request_bytes("POST", "/v1/" + name, json.dumps(body).encode())


def measured(server, message):
    """What the callers tell of one run, and "processor": the workers' seconds for an answer."""
    before = sum(processor_seconds(pid) for pid in server.workers())
    told = called(server.port, CALLERS, SECONDS, [message])
    used = sum(processor_seconds(pid) for pid in server.workers()) - before
    return {**told, "processor": used / sum(told["statuses"].values())}


def middle(runs, key):
    return statistics.median(run[key] for run in runs)


def line_of(name, runs, beside):
    """A line to print; runs, beside: what the callers told of ours and of the empty endpoint."""
    return "%-24s %5.0f a second (%2.0f %% of empty), half in %.1f ms, 99 of 100 in %.1f ms" % (
        name,
        middle(runs, "a_second"),
        100.0 * middle(runs, "a_second") / middle(beside, "a_second"),
        middle(runs, "median"),
        middle(runs, "most"),
    )


@pytest.mark.bench
@pytest.mark.parametrize("workers", [1, 2, 4])
def test_rates_and_times_by_workers(tmp_path, capsys, workers):
    (tmp_path / "empty_endpoint.py").write_text(EMPTY)
    empty = Server("empty_endpoint:app", workers=workers, folder=tmp_path)
    ours = Server(workers=workers)
    nothing = request_bytes("POST", "/empty", b"{}")
    lines, shares = [], {}
    try:
        for name in AIMS:
            runs, beside = [], []
            for _ in range(ROUNDS):
                beside.append(measured(empty, nothing))
                runs.append(measured(ours, posted(name)))
                assert set(runs[-1]["statuses"]) == {"200"}
            of_time = middle(beside, "processor") / middle(runs, "processor")
            of_rate = middle(runs, "a_second") / middle(beside, "a_second")
            shares[name] = max(of_time, of_rate)
            line = line_of("%d workers, %s" % (workers, name), runs, beside)
            lines.append(line + ", processor time %.0f %%" % (100.0 / of_time))
    finally:
        empty.stop()
        ours.stop()
    with capsys.disabled():
        print("\n" + "\n".join(lines))
    for name, aim in AIMS.items():
        assert aim is None or shares[name] > aim / 4


@pytest.mark.bench
def test_rates_and_times_through_the_proxy(tmp_path, capsys):
    """An answer that is worked out, and one that the caller holds already."""
    if not shutil.which("caddy"):
        pytest.skip("there is no proxy here")
    (tmp_path / "empty_endpoint.py").write_text(EMPTY)
    services = [Server() for _ in range(2)]
    empty = Server("empty_endpoint:app", workers=2, folder=tmp_path)
    folders = [tmp_path / "ours", tmp_path / "empty"]
    for folder in folders:
        folder.mkdir()
    fronts = []
    try:
        fronts.append(Front(folders[0], [each.port for each in services]))
        fronts.append(Front(folders[1], [empty.port, empty.port]))
        lines = list(_through(*fronts, services[0].port))
    finally:
        for each in (*fronts, *services, empty):
            each.stop()
    with capsys.disabled():
        print("\n" + "\n".join(lines))


def _through(front, before_empty, service_port):
    address = "/v1/sizing?bore=80"
    connection = Connection(service_port)
    tag = connection.head_of(request_bytes("GET", address))["etag"]
    connection.close()
    asked = {"proxy, worked out": ({}, "200"), "proxy, held": ({"If-None-Match": tag}, "304")}
    for name, (more, status) in asked.items():
        runs, beside = [], []
        for _ in range(ROUNDS):
            for each, path, told in ((before_empty, "/healthz", beside), (front, address, runs)):
                host = "%s:%d" % (NAME, each.port)
                message = request_bytes("GET", path, more=more, host=host)
                secure = {"authority": str(each.authority), "name": NAME}
                told.append(called(each.port, CALLERS, SECONDS, [message], **secure))
            assert set(runs[-1]["statuses"]) == {status}
        yield line_of(name, runs, beside)
