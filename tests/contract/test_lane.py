"""Heavy work has a lane: light calls are answered beside it, and what is too much is told so."""

import json
import sys
import threading
import time
from collections import OrderedDict
from concurrent.futures import ThreadPoolExecutor

import pytest
import requests

from bench.long_stock import LONG_STOCK
from conftest import Server
from contract.test_bad_inputs import check_problem
from ringwright.api import costs, create_app, lane, settings
from ringwright.core import calculations
from ringwright.core.calculations import CALCULATIONS, Calculation
from ringwright.core.catalogue import NOTHING
from ringwright.core.fields import checked


class Held:
    """An application whose heavy calculation ends when it is told to."""

    def __init__(self):
        self.begun, self.end = threading.Semaphore(0), threading.Event()
        empty = OrderedDict((("figures", OrderedDict()),))

        def hold(values):
            self.begun.release()
            assert self.end.wait(20)
            return empty

        heavy = Calculation("spread", "Held", (), hold, NOTHING)
        light = Calculation("sizing", "Light", (), lambda values: empty, NOTHING)
        self.app = create_app({"spread": heavy, "sizing": light})

    def ask(self, name):
        return self.app.test_client().get("/v1/" + name)

    def ask_apart(self, pool):
        """The heavy one asked in a thread of its own; returns when it is at work."""
        asked = pool.submit(self.ask, "spread")
        assert self.begun.acquire(timeout=10)
        return asked


def test_what_is_too_much_is_told_when_to_come_again(monkeypatch):
    # One spread is worth 12 ms here: one at work, one that waits, no more.
    monkeypatch.setenv(lane.QUEUE, "24")
    held = Held()
    with ThreadPoolExecutor(2) as pool:
        first = held.ask_apart(pool)
        second = pool.submit(held.ask, "spread")
        end = time.monotonic() + 10
        while held.app.extensions["ringwright"]["lane"]._taken < 24 and time.monotonic() < end:
            time.sleep(0.01)
        refused = held.ask("spread")
        problem = check_problem(refused, 503)
        assert problem["code"] == "busy"
        assert int(refused.headers["Retry-After"]) >= 1
        # Light work passes by, and one at once is one at once.
        assert held.ask("sizing").status_code == 200
        assert not held.begun.acquire(timeout=0.1)
        held.end.set()
        assert (first.result().status_code, second.result().status_code) == (200, 200)
    assert held.ask("spread").status_code == 200


def test_nobody_waits_for_ever(monkeypatch):
    monkeypatch.setenv(lane.PATIENCE, "1")
    held = Held()
    with ThreadPoolExecutor(1) as pool:
        first = held.ask_apart(pool)
        assert check_problem(held.ask("spread"), 503)["code"] == "busy"
        held.end.set()
        assert first.result().status_code == 200


def test_who_finds_nobody_before_him_is_let_in(monkeypatch):
    monkeypatch.setenv(lane.QUEUE, "0")
    held = Held()
    held.end.set()
    assert [held.ask("spread").status_code for _ in range(3)] == [200, 200, 200]


def test_work_that_fails_leaves_its_place(client):
    wrong = {"bore": 80, "lowest_pressure": 0.1, "highest_pressure": 0.05}
    for _ in range(3):
        check_problem(client.post("/v1/spread", json=wrong), 422)
    assert client.get("/v1/spread?bore=80").status_code == 200


@pytest.mark.parametrize("text", ["two", "-1", "0", "1.5", "9" * 9])
def test_a_setting_that_is_none_stops_the_start(text):
    with pytest.raises(settings.BadSetting, match=lane.AT_ONCE):
        lane.settings({lane.AT_ONCE: text})


def calls(work):
    """How many functions are called, which no busy machine changes."""
    count = 0

    def tell(frame, event, argument):
        nonlocal count
        count += event in ("call", "c_call")

    work()
    sys.setprofile(tell)
    try:
        work()
    finally:
        sys.setprofile(None)
    return count


def test_what_is_not_declared_heavy_is_light(root):
    """No example of a light calculation does more than a spread, the least that is always heavy."""
    spread = CALCULATIONS["spread"]
    most = calls(lambda: spread.run(checked(spread.fields, {"bore": 80.0})))
    seen = 0
    for name, calculation in CALCULATIONS.items():
        path = root / "openapi" / "examples" / (name + ".json")
        requests_ = json.loads(path.read_text(encoding="utf-8")) if path.exists() else {"": {}}
        for example in requests_.values():
            request = in_core_units(calculation.fields, example.get("value", {}))
            values = checked(calculation.fields, request)
            if costs.of(name, values) <= lane.HEAVY:
                seen += 1
                assert calls(lambda c=calculation, v=values: c.run(v)) < most, name
    assert seen > 15
    assert set(costs.COSTS) <= set(calculations.CALCULATIONS)


def in_core_units(fields, request):
    from ringwright.api.schemas import Schemas, load

    return load(Schemas().schema("Any", fields)(), fields, request)


def test_a_longer_look_costs_more():
    bars = [{}] * 10
    values = {"sets": [{}] * 4, "bars": bars, "bars_to_buy": None, "cutting_effort": None}
    quick = costs.of("stock", values)
    assert quick > costs.of("stock", {**values, "bars": None})
    assert costs.of("stock", {**values, "cutting_effort": "thorough"}) > 2 * quick
    assert costs.of("stock", {**values, "sets": [{}] * 40, "bars": bars * 6}) <= 201


@pytest.fixture
def narrow(monkeypatch, capfd):
    """The address of a server of one worker under gevent that lets no heavy work wait."""
    monkeypatch.setenv(lane.QUEUE, "0")
    running = Server()
    yield running.address
    running.stop()
    assert "Traceback" not in capfd.readouterr().err


def test_light_calls_are_answered_beside_heavy_work(narrow):
    ended = threading.Event()
    found = []

    def heavy():
        while not ended.is_set():
            found.append(requests.post(narrow + "/v1/stock", json=LONG_STOCK, timeout=20))

    with ThreadPoolExecutor(4) as pool:
        running = [pool.submit(heavy) for _ in range(4)]
        session = requests.Session()
        waits = []
        while len(waits) < 40:
            before = time.monotonic()
            assert session.get(narrow + "/v1/sizing?bore=80", timeout=20).status_code == 200
            waits.append(time.monotonic() - before)
            time.sleep(0.02)
        ended.set()
        for each in running:
            each.result(timeout=20)
    statuses = {answer.status_code for answer in found}
    assert statuses == {200, 503}
    busy = next(answer for answer in found if answer.status_code == 503)
    assert busy.headers["Content-Type"] == "application/problem+json"
    assert busy.json()["code"] == "busy"
    assert int(busy.headers["Retry-After"]) >= 1
    assert "Retry-After" in busy.headers["Access-Control-Expose-Headers"]
    # One at work alone holds a worker without a lane for all the time that it takes.
    longest = min(answer.elapsed.total_seconds() for answer in found if answer.status_code == 200)
    assert sorted(waits)[len(waits) // 2] < longest / 2


def test_refusals_and_files_come_through_the_lane(narrow):
    wrong = {"bore": 80, "lowest_pressure": 0.1, "highest_pressure": 0.05}
    refused = requests.post(narrow + "/v1/spread", json=wrong, timeout=20)
    assert refused.status_code == 422
    assert refused.json()["errors"][0]["path"] == ["highest_pressure"]
    card = requests.get(narrow + "/v1/route.pdf?bore=80&job_name=Marigold", timeout=20)
    assert card.content.startswith(b"%PDF")
    letters = requests.get(narrow + "/v1/route.pdf?bore=80&job_name=%D8%A7", timeout=20)
    assert letters.status_code == 422
    table = requests.get(narrow + "/v1/spread.csv?bore=80", timeout=20)
    assert table.text.startswith("figure") or "," in table.text.splitlines()[0]


@pytest.mark.slow
def test_files_made_side_by_side_are_those_made_alone(monkeypatch):
    """Libraries that keep faces and styles for all who use them, in three threads at once."""
    monkeypatch.setenv(lane.AT_ONCE, "3")
    monkeypatch.setenv(lane.QUEUE, "60000")
    monkeypatch.setenv(lane.PATIENCE, "60")
    names = ["A", "\u0141\u00f3d\u017a", "\u03a9mega"]
    paths = ["route.pdf?bore=%d&job_name=%s" % (60 + at, names[at % 3]) for at in range(9)]
    paths += ["drawings/pot.dxf?bore=%d" % (60 + at) for at in range(6)]
    paths += ["drawings.pdf?bore=90", "spread?bore=80"]
    running = Server()

    def fetched(path):
        answer = requests.get("%s/v1/%s" % (running.address, path), timeout=60)
        assert answer.status_code == 200
        return answer.content

    try:
        alone = list(map(fetched, paths))
        with ThreadPoolExecutor(12) as pool:
            for _ in range(3):
                assert list(pool.map(fetched, paths)) == alone
    finally:
        running.stop()
