"""The club's server as its compose file has it, without the containers: the same proxy with the
same settings before two services."""

import gzip
import re
import shutil
import signal
import threading
import time

import pytest
import requests

from conftest import ROOT, Server
from contract.attack import KINDS, under
from contract.front import NAME, Front
from contract.test_under_attack import PROBES
from ringwright.api.problems import KINDS as KINDS_OF_PROBLEM

pytestmark = pytest.mark.slow
# What the proxy can fail by, and the code that its document then has.
STATUSES = {
    404: "not-found",
    413: "body-too-large",
    414: "query-too-long",
    429: "too-many-requests",
    500: "unreachable",
    502: "unreachable",
    503: "not-ready",
    504: "unreachable",
}


def as_composed(name):
    """What compose.yaml gives the services for a variable."""
    text = (ROOT / "docker" / "compose.yaml").read_text(encoding="utf-8")
    return re.search(name + ': "(.*)"', text)[1]


@pytest.fixture(scope="module")
def services():
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("RINGWRIGHT_CLOSE_AFTER", as_composed("RINGWRIGHT_CLOSE_AFTER"))
        patch.setenv("RINGWRIGHT_METRICS", "on")
        yield from _two_services()


def _two_services():
    running = [Server(workers=1, more=("--forwarded-allow-ips", "127.0.0.1")) for _ in range(2)]
    yield running
    for each in running:
        if each.process.poll() is None:
            each.stop()


@pytest.fixture(scope="module")
def front(services, tmp_path_factory):
    if not shutil.which("caddy"):
        pytest.fail("caddy is needed: tests/run installs it")
    running = Front(tmp_path_factory.mktemp("front"), [each.port for each in services])
    yield running
    running.stop()


def test_https_with_a_certificate_for_the_name(front):
    answer = front.get("/v1/sizing?bore=80")
    assert answer.json()["figures"]["free_gap"]["value"] > 0
    assert "max-age" in answer.headers["Strict-Transport-Security"]
    with pytest.raises(requests.exceptions.SSLError):
        requests.get(front.address + "/healthz", timeout=20)


def test_plain_http_is_sent_on_to_https(front):
    answer = requests.get(
        "http://127.0.0.1:%d/v1/sizing?bore=80" % front.plain_port,
        headers={"Host": NAME},
        allow_redirects=False,
        timeout=20,
    )
    assert answer.status_code in (301, 308)
    assert answer.headers["Location"].startswith("https://" + NAME)


def test_the_app_comes_in_brotli_and_answers_compressed(front):
    page = front.get("/", headers={"Accept-Encoding": "br"}, stream=True)
    assert page.headers["Content-Encoding"] == "br"
    answer = front.get("/v1/methods", headers={"Accept-Encoding": "gzip"}, stream=True)
    assert answer.headers["Content-Encoding"] == "gzip"
    assert gzip.decompress(answer.raw.read())[:1] == b"{"


def test_the_card_s_code_says_the_address_the_caller_came_by(front):
    """Behind the proxy the service must believe it on name and https, port included."""
    answer = front.get("/v1/route.pdf?bore=80")
    assert answer.headers["Content-Type"] == "application/pdf"
    assert answer.content.startswith(b"%PDF")


def test_what_is_too_large_is_a_problem_document(front):
    body = b'{"bore": "' + b"8" * 3_000_000 + b'"}'
    answer = front.session().post(
        front.address + "/v1/sizing",
        data=body,
        headers={"Content-Type": "application/json"},
        timeout=30,
    )
    assert answer.status_code == 413
    assert answer.headers["Content-Type"] == "application/problem+json"
    known(answer, "body-too-large")


@pytest.mark.parametrize(("length", "by"), [(7000, "service"), (8500, "proxy")])
def test_a_query_too_long_is_a_problem_document(front, length, by):
    answer = front.get("/v1/sizing?bore=" + "8" * length)
    assert answer.status_code == 414
    assert answer.headers["Content-Type"] == "application/problem+json"
    assert ("Ringwright-Version" in answer.headers) == (by == "service")
    known(answer, "query-too-long")


def test_headers_too_large_are_a_problem_document_of_the_service(front):
    answer = front.get("/v1/sizing?bore=80", headers={"X-Long": "a" * 40_000})
    assert answer.status_code == 431
    known(answer, "headers-too-large")


def test_headers_beyond_all_measure_are_refused_in_few_words(front):
    """By the proxy's own web server, before any line of its file: no document can be given."""
    answer = front.get("/v1/sizing?bore=80", headers={"X-Long": "a" * 100_000})
    assert answer.status_code == 431
    assert len(answer.content) < 2000


def test_every_error_of_the_proxy_is_a_problem_document(services, tmp_path):
    """Whatever it fails by: what it can know of that is said in the words of the services."""
    given = "\t@given path_regexp given ^/given/([0-9]+)$\n\terror @given told {re.given.1}\n"
    front = Front(tmp_path, [each.port for each in services], also=given)
    try:
        for status, code in STATUSES.items():
            answer = front.get("/given/%d" % status)
            assert answer.status_code == status
            assert answer.headers["Content-Type"] == "application/problem+json"
            assert answer.headers["Cache-Control"] == "no-store"
            known(answer, code)
    finally:
        front.stop()


def test_metrics_stay_inside_until_asked_for(tmp_path, monkeypatch):
    monkeypatch.setenv("RINGWRIGHT_METRICS", "on")
    service = Server(workers=1)
    assert requests.get(service.address + "/metrics", timeout=20).ok
    shut, opened = tmp_path / "shut", tmp_path / "opened"
    shut.mkdir()
    opened.mkdir()
    fronts = [Front(shut, [service.port])]
    try:
        for path in ("/metrics", "/METRICS", "/%6detrics", "/./metrics", "/v1/../metrics"):
            answer = fronts[0].get(path)
            assert answer.status_code == 404, path
            assert "ringwright_" not in answer.text
        known(fronts[0].get("/metrics"), "not-found")
        fronts.append(Front(opened, [service.port], more={"RINGWRIGHT_METRICS_OUTSIDE": "on"}))
        assert "ringwright_requests_total" in fronts[1].get("/metrics").text
    finally:
        for each in fronts:
            each.stop()
        service.stop()


def test_requests_are_counted_by_who_came_to_the_proxy(tmp_path, monkeypatch):
    """Whatever he writes into X-Forwarded-For, and never all callers as one."""
    monkeypatch.setenv("RINGWRIGHT_RATE", "60")
    monkeypatch.setenv("RINGWRIGHT_PROXIES", "1")
    service = Server(workers=1)
    front = Front(tmp_path, [service.port])
    try:
        session = front.session()
        for at in range(60):
            session.headers["X-Forwarded-For"] = "203.0.113.%d" % at
            answer = session.get(front.address + "/v1/materials", timeout=30)
            if answer.status_code != 200:
                break
        assert answer.status_code == 429
        assert int(answer.headers["Retry-After"]) >= 1
        known(answer, "too-many-requests")
        # Another caller, as the proxy would tell him, still has his own share.
        other = {"X-Forwarded-For": "203.0.113.200"}
        assert requests.get(service.address + "/v1/materials", headers=other, timeout=20).ok
    finally:
        front.stop()
        service.stop()


def known(answer, code):
    """Holds a problem document of the proxy against what the services say of its kind."""
    problem = answer.json()
    assert problem["code"] == code
    assert problem["title"] == KINDS_OF_PROBLEM[code].title
    assert problem["type"] == "/v1/problems#" + code
    assert problem["status"] == answer.status_code
    assert answer.headers["Link"] == '</docs/problems#%s>; rel="help"; type="text/html"' % code
    assert problem["errors"][0]["remedy"] == KINDS_OF_PROBLEM[code].remedy
    assert len(answer.content) < 2000


@pytest.mark.parametrize("kind", KINDS)
def test_slow_clients_do_not_hold_it_up(front, kind):
    with under(front.port, kind, 500 if kind == "silent" else 200, NAME) as there:
        assert there >= 150
        time.sleep(1.0)
        session = front.session()
        for _ in range(PROBES):
            before = time.monotonic()
            assert session.get(front.address + "/v1/sizing?bore=80", timeout=20).ok
            assert time.monotonic() - before < 1.0


def test_no_figure_of_anybody_s_is_logged(front):
    front.get("/v1/sizing?bore=87.6543")
    assert "87.6543" not in front.log.read_text()


def test_services_are_restarted_one_by_one_and_no_question_fails(front, services):
    """What an update does: each stops as it is told and another takes its place. The proxy hears
    that it ends before its door closes, so that nothing is lost that could not be asked again.
    """
    failed, done, ending = [], [], threading.Event()
    how = {"GET": {"params": {"bore": "80"}}, "POST": {"json": {"bore": 80}}}

    def ask(method):
        session = front.session()
        while not ending.is_set():
            try:
                address = front.address + "/v1/sizing"
                answer = session.request(method, address, timeout=30, **how[method])
                (done if answer.status_code == 200 else failed).append(answer.status_code)
            except requests.RequestException as error:
                failed.append(repr(error))

    callers = [threading.Thread(target=ask, args=(method,)) for method in 4 * list(how)]
    for each in callers:
        each.start()
    for each in services:
        time.sleep(0.5)
        each.process.send_signal(signal.SIGTERM)
        each.process.wait(timeout=20)
        each.start_again()
        # As a roll does: the next only when the proxy sends to this one again.
        end = time.monotonic() + 30
        while 'path="/v1/sizing"' not in requests.get(each.address + "/metrics", timeout=20).text:
            assert time.monotonic() < end, "the proxy does not know that it is back"
            time.sleep(0.1)
    ending.set()
    for each in callers:
        each.join()
    assert failed == []
    assert len(done) > 50


def test_a_service_that_is_killed_gives_no_wrong_answer(front, services):
    services[0].kill()
    figures = {
        front.get("/v1/sizing?bore=80").json()["figures"]["free_gap"]["value"] for _ in range(10)
    }
    assert len(figures) == 1
    services[0].start_again()


def test_with_no_service_left_it_says_so(front, services):
    for each in services:
        each.stop()
    answer = front.get("/v1/sizing?bore=80")
    assert answer.status_code in (502, 503)
    assert answer.headers["Content-Type"] == "application/problem+json"
    known(answer, STATUSES[answer.status_code])
    for each in services:
        each.start_again()
