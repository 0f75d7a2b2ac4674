"""The log of requests says what was asked of which address, and no figure of anybody's."""

import json
import re
from datetime import datetime

import pytest

from ringwright.api import create_app, settings
from ringwright.api.request_log import SETTING
from ringwright.core.calculations import CALCULATIONS

# Values that stand nowhere else, put wherever a caller can put anything.
FIGURE, NAME = 87.6543, "Zinnwald"
ASKED = (
    ("GET", "/v1/sizing?bore=%s&steam_pressure=0.8765" % FIGURE, None, 200),
    ("GET", "/v1/sizing?bore=%s-%s" % (FIGURE, NAME), None, 422),
    ("POST", "/v1/sizing", {"bore": FIGURE}, 200),
    ("POST", "/v1/sizing", {"bore": "%s %s" % (FIGURE, NAME)}, 422),
    ("POST", "/v1/job", {"bore": FIGURE, NAME: FIGURE}, 422),
    ("GET", "/v1/route.pdf?bore=%s" % FIGURE, None, 200),
    ("GET", "/v1/drawings/blank.svg?bore=%s" % FIGURE, None, 200),
    ("GET", "/v1/drawings/%s-%s.svg?bore=80" % (NAME, FIGURE), None, 404),
    ("GET", "/v1/sizing/bore=%s/%s" % (FIGURE, NAME), None, 404),
    ("GET", "/%s/%s" % (NAME, FIGURE), None, 404),
    ("PUT", "/v1/sizing?bore=%s" % FIGURE, None, 405),
    ("87.6543", "/v1/sizing", None, 405),
    (NAME.upper(), "/%s" % NAME, None, 404),
    ("HEAD", "/v1/sizing?bore=%s" % FIGURE, None, 200),
    ("OPTIONS", "/v1/sizing?bore=%s" % FIGURE, None, 200),
)
HEADERS = {"User-Agent": NAME, "Referer": "https://%s/?%s" % (NAME, FIGURE), "X-Request-Id": NAME}


@pytest.fixture
def logging_client(monkeypatch):
    monkeypatch.setenv(SETTING, "on")
    return create_app().test_client()


def lines_of(capfd):
    return [json.loads(line) for line in capfd.readouterr().out.splitlines()]


def test_no_value_of_a_query_or_a_body_is_logged(logging_client, capfd):
    for method, path, body, status in ASKED:
        answer = logging_client.open(path, method=method, json=body, headers=HEADERS)
        assert answer.status_code == status, (method, path)
        answer.close()
    written = capfd.readouterr().out
    assert len(written.splitlines()) == len(ASKED)
    assert "/v1/sizing" in written
    for word in (str(FIGURE), "8765", NAME, NAME.upper(), NAME.lower(), "bore", "?"):
        assert word not in written


def test_a_line_says_what_was_asked_and_how_it_went(logging_client, capfd):
    answer = logging_client.get("/v1/sizing?bore=80")
    answer.close()
    (line,) = lines_of(capfd)
    assert set(line) == {"time", "id", "method", "path", "status", "ms", "bytes"}
    assert (line["method"], line["path"], line["status"]) == ("GET", "/v1/sizing", 200)
    assert line["bytes"] == len(answer.data)
    assert 0 < line["ms"] < 60_000
    assert datetime.fromisoformat(line["time"]).utcoffset().total_seconds() == 0
    assert re.fullmatch("[0-9a-f]{16}", line["id"])


def test_an_answer_names_its_line(logging_client, capfd):
    numbers = []
    for path in ("/v1/sizing?bore=80", "/v1/sizing?bore=x", "/nothing", "/"):
        answer = logging_client.get(path, headers={"X-Request-Id": "mine"})
        numbers.append(answer.headers["X-Request-Id"])
        answer.close()
    assert numbers == [line["id"] for line in lines_of(capfd)]
    assert len(set(numbers)) == 4 and "mine" not in numbers


def test_every_calculation_is_told_by_its_address(logging_client, capfd):
    for name in CALCULATIONS:
        logging_client.post("/v1/" + name, json={"bore": FIGURE}).close()
    logging_client.get("/v1/drawings/blank.dxf?bore=80").close()
    expected = ["/v1/" + name for name in CALCULATIONS] + ["/v1/drawings/{part}.dxf"]
    assert [line["path"] for line in lines_of(capfd)] == expected


def test_an_answer_without_a_body_has_no_bytes(logging_client, capfd):
    logging_client.head("/v1/sizing?bore=80").close()
    (line,) = lines_of(capfd)
    assert line["bytes"] == 0


def test_a_failure_is_logged_without_figures(monkeypatch, capfd, caplog):
    from ringwright.core.calculations import Calculation
    from ringwright.core.catalogue import NOTHING

    def broken(values):
        return float("%s %s" % (FIGURE, NAME))

    monkeypatch.setenv(SETTING, "on")
    app = create_app({"sizing": Calculation("sizing", "Broken", (), broken, NOTHING)})
    app.test_client().get("/v1/sizing?x=%s" % FIGURE).close()
    app.test_client().get("/v1/sizing").close()
    assert "in broken" in caplog.text
    assert str(FIGURE) not in caplog.text and NAME not in caplog.text
    assert [line["status"] for line in lines_of(capfd)] == [422, 500]


def test_it_is_off_until_asked_for(monkeypatch, capfd):
    monkeypatch.delenv(SETTING, raising=False)
    answer = create_app().test_client().get("/v1/sizing?bore=80")
    assert "X-Request-Id" not in answer.headers
    answer.close()
    assert capfd.readouterr().out == ""


def test_a_switch_that_is_neither_on_nor_off_stops_the_start(monkeypatch):
    monkeypatch.setenv(SETTING, "yes")
    with pytest.raises(settings.BadSetting, match=SETTING):
        create_app()


def test_every_variable_that_the_service_reads_is_declared(root):
    """By its name in the code; the phone's room is started by a command of its own."""
    named = set()
    for room in ("api", "core", "export", "units"):
        for path in (root / "service" / "ringwright" / room).rglob("*.py"):
            if path.name != "settings.py":
                named |= set(re.findall('"(RINGWRIGHT_[A-Z_]+)"', path.read_text(encoding="utf-8")))
    assert named == set(settings.SETTINGS)
