"""/metrics counts what was asked, over all workers, and an independent reader reads it."""

import mmap
import os
import signal
import time

import pytest
import requests
from prometheus_client.parser import text_string_to_metric_families

from conftest import Server
from ringwright.api import create_app
from ringwright.api.app import specification
from ringwright.api.metrics import SETTING
from ringwright.api.shared_counts import ROWS, SharedCounts


@pytest.fixture
def counted(monkeypatch):
    monkeypatch.setenv(SETTING, "on")
    return create_app().test_client()


def read(text):
    """(name, labels as sorted pairs) -> number, by a reader that is not ours."""
    return {
        (sample.name, tuple(sorted(sample.labels.items()))): sample.value
        for family in text_string_to_metric_families(text)
        for sample in family.samples
    }


def of(samples, name, **labels):
    return samples.get((name, tuple(sorted(labels.items()))), 0.0)


def scraped(client):
    answer = client.get("/metrics")
    assert answer.status_code == 200
    assert answer.headers["Content-Type"] == "text/plain; version=0.0.4; charset=utf-8"
    assert answer.headers["Cache-Control"] == "no-store"
    text = answer.get_data(as_text=True)
    answer.close()
    return read(text)


def test_requests_are_counted_by_address_method_and_status(counted):
    for _ in range(3):
        counted.get("/v1/sizing?bore=80").close()
    counted.get("/v1/sizing?bore=x").close()
    counted.post("/v1/sizing", json={"bore": 80}).close()
    counted.get("/v1/drawings/blank.svg?bore=87.6543").close()
    samples = scraped(counted)
    name = "ringwright_requests_total"
    assert of(samples, name, path="/v1/sizing", method="GET", status="200") == 3
    assert of(samples, name, path="/v1/sizing", method="GET", status="422") == 1
    assert of(samples, name, path="/v1/sizing", method="POST", status="200") == 1
    assert of(samples, name, path="/v1/drawings/{part}.svg", method="GET", status="200") == 1
    assert of(samples, "ringwright_request_seconds_count", path="/v1/sizing") == 5
    assert of(samples, "ringwright_request_seconds_bucket", path="/v1/sizing", le="+Inf") == 5
    assert 0 < of(samples, "ringwright_request_seconds_sum", path="/v1/sizing") < 60
    assert of(samples, name, path="/metrics", method="GET", status="200") == 0
    assert of(scraped(counted), name, path="/metrics", method="GET", status="200") == 1


def test_bytes_are_those_of_the_answers(counted):
    sizes = 0
    for path in ("/v1/sizing?bore=80", "/v1/sizing?bore=90&units=inch"):
        answer = counted.get(path)
        sizes += len(answer.data)
        answer.close()
    assert of(scraped(counted), "ringwright_answer_bytes_total", path="/v1/sizing") == sizes


def test_classes_of_time_add_up():
    from flask import Flask

    from ringwright.api.metrics import Metrics
    from ringwright.api.watched import NONE, Done

    metrics = Metrics(Flask("none"))
    for seconds in (0.0005, 0.001, 0.0011, 0.03, 9.0, 11.0, 400.0):
        metrics.count(Done("", "GET", NONE, 200, seconds, 10))
    samples, name = read(metrics.text()), "ringwright_request_seconds_bucket"
    expected = {"0.001": 2, "0.0025": 3, "0.025": 3, "0.05": 4, "5.0": 4, "10.0": 5, "+Inf": 7}
    assert {le: of(samples, name, path=NONE, le=le) for le in expected} == expected
    assert of(samples, "ringwright_request_seconds_sum", path=NONE) == pytest.approx(420.0326)


def test_no_name_is_a_stranger_s(counted):
    """Whoever asks for addresses that are not there makes no new ones in the list."""
    for at in range(50):
        counted.get("/v1/%d/Zinnwald?bore=87.6543" % at).close()
        counted.open("/v1/sizing", method="ZINNWALD").close()
    text = counted.get("/metrics").get_data(as_text=True)
    assert "innwald" not in text.lower() and "87.6543" not in text
    name = "ringwright_requests_total"
    assert of(read(text), name, path="-", method="GET", status="404") == 50
    assert of(read(text), name, path="/v1/sizing", method="-", status="405") == 50


def test_the_app_s_files_are_one_address(monkeypatch, tmp_path):
    monkeypatch.setenv(SETTING, "on")
    (tmp_path / "assets").mkdir()
    (tmp_path / "index.html").write_text("<html></html>")
    (tmp_path / "assets" / "x-12345678.js").write_text("1")
    (tmp_path / "manifest.webmanifest").write_text("{}")
    client = create_app(app_folder=tmp_path).test_client()
    for path in ("/assets/x-12345678.js", "/manifest.webmanifest", "/index.html"):
        client.get(path).close()
    name = "ringwright_requests_total"
    assert of(scraped(client), name, path="(app)", method="GET", status="200") == 3


def test_it_is_off_until_asked_for_and_never_in_the_specification(monkeypatch):
    monkeypatch.delenv(SETTING, raising=False)
    off = create_app()
    assert off.test_client().get("/metrics").status_code == 404
    monkeypatch.setenv(SETTING, "on")
    assert specification(create_app()) == specification(off)


def told_over_the_wire(server, expected):
    """Sizings counted, read again until they are as many as expected: an answer is counted a moment
    after its caller has it."""
    end = time.monotonic() + 20
    while True:
        samples = read(requests.get(server.address + "/metrics", timeout=20).text)
        labels = {"path": "/v1/sizing", "method": "GET", "status": "200"}
        found = of(samples, "ringwright_requests_total", **labels)
        if found >= expected or time.monotonic() > end:
            return found
        time.sleep(0.1)


@pytest.mark.slow
def test_all_workers_are_counted_and_a_killed_one_s_count_stays(monkeypatch):
    monkeypatch.setenv(SETTING, "on")
    server = Server(workers=3)
    seen = set()
    try:
        for round_ in range(4):
            for _ in range(30):
                assert requests.get(server.address + "/v1/sizing?bore=80", timeout=20).ok
            assert told_over_the_wire(server, 30 * (round_ + 1)) == 30 * (round_ + 1)
            (worker, *_) = workers = server.workers()
            seen.update(workers)
            os.kill(worker, signal.SIGKILL)
            end = time.monotonic() + 20
            while worker in server.workers() or len(server.workers()) < 3:
                assert time.monotonic() < end
                time.sleep(0.1)
        assert told_over_the_wire(server, 120) == 120
    finally:
        server.stop()
    assert len(seen) > 3


def test_processes_count_in_rows_of_their_own_and_take_over_a_dead_one_s():
    counts = SharedCounts(3)
    counts.add(0)
    for _ in range(2 * ROWS):
        child = os.fork()
        if not child:
            counts.add(1, 2.0)
            os._exit(0)
        assert os.waitpid(child, 0)[1] == 0
    assert counts.totals() == [1.0, 4.0 * ROWS, 0.0]


def test_counts_lie_in_no_file_of_a_disk():
    counts = SharedCounts(3)
    assert os.readlink("/proc/self/fd/%d" % counts._file).startswith("/memfd:")
    assert isinstance(counts._numbers.obj, mmap.mmap)
