"""The manners of HTTP: methods, caching, calls from other pages, headers, and nothing kept."""

import sys
from urllib.parse import urlencode

import pytest

from ringwright.api.calculations import is_table
from ringwright.core import calculations

ADDRESS = "/v1/sizing?" + urlencode({"bore": "3 1/8 in", "steam_pressure": "120 psi"})


def test_get_and_post_give_the_same(client):
    request = {"bore": "3 1/8 in", "rings": 3, "relief": "90 %", "steam_temperature": "400 degF"}
    posted = client.post("/v1/sizing?units=inch&working=true", json=request)
    fetched = client.get("/v1/sizing", query_string={**request, "units": "inch", "working": "true"})
    assert posted.status_code == 200
    assert posted.data == fetched.data


def test_a_number_in_a_query_is_in_the_core_unit(client):
    number = client.get("/v1/sizing?bore=79.375&rings=3")
    assert number.status_code == 200
    assert number.data == client.get("/v1/sizing?bore=3+1/8+in&rings=3").data


def test_head_is_get_without_its_body(client):
    head, whole = client.head(ADDRESS), client.get(ADDRESS)
    assert head.status_code == 200
    assert head.data == b""
    assert dict(head.headers) == dict(whole.headers)


def test_an_answer_may_be_kept(client):
    response = client.get(ADDRESS)
    assert response.headers["Cache-Control"] == "public, max-age=3600"
    assert response.headers["Vary"] == "Accept"
    tag = response.headers["ETag"]
    for known in (tag, "W/" + tag, '"other", ' + tag):
        again = client.get(ADDRESS, headers={"If-None-Match": known})
        assert again.status_code == 304
        assert again.data == b""
        assert again.headers["ETag"] == tag
        assert again.headers["Cache-Control"] == response.headers["Cache-Control"]
    for other in ('"other"', "*", "", "nonsense"):
        assert client.get(ADDRESS, headers={"If-None-Match": other}).status_code == 200


def test_tags_differ_by_address_and_by_code(client, monkeypatch):
    from ringwright.api import version

    tags = {
        client.get(address).headers["ETag"]
        for address in (ADDRESS, ADDRESS + "&units=inch", "/v1/materials", "/v1/methods")
    }
    assert len(tags) == 4
    monkeypatch.setattr(version, "_BASE", version.hashlib.sha256(b"another release"))
    assert client.get(ADDRESS).headers["ETag"] not in tags


@pytest.mark.parametrize("path", ["/v1/sizing?bore=x", "/v1/nothing"])
def test_a_refusal_is_not_kept(client, path):
    assert client.get(path).headers["Cache-Control"] == "no-store"
    assert "ETag" not in client.get(path).headers


def test_a_posted_answer_is_not_kept(client):
    response = client.post("/v1/sizing", json={"bore": 80})
    assert response.headers["Cache-Control"] == "no-store"
    assert "ETag" not in response.headers


@pytest.mark.parametrize("path", ["/v1/sizing", "/v1/materials", "/openapi.json"])
def test_any_page_may_ask(client, path):
    response = client.options(
        path,
        headers={
            "Origin": "https://club.example",
            "Access-Control-Request-Method": "POST",
            "Access-Control-Request-Headers": "content-type",
        },
    )
    assert response.status_code == 200
    assert response.headers["Access-Control-Allow-Origin"] == "*"
    assert "POST" in response.headers["Access-Control-Allow-Methods"]
    assert "content-type" in response.headers["Access-Control-Allow-Headers"].lower()
    assert "Access-Control-Allow-Credentials" not in response.headers


@pytest.mark.parametrize(
    ("path", "status"),
    [(ADDRESS, 200), ("/v1/sizing?bore=x", 422), ("/nothing", 404), ("/healthz", 200), ("/", 200)],
)
def test_every_answer_carries_the_headers_of_all(client, path, status):
    response = client.get(path, headers={"Origin": "https://club.example"})
    assert response.status_code == status
    assert response.headers["Access-Control-Allow-Origin"] == "*"
    assert response.headers["X-Content-Type-Options"] == "nosniff"
    assert response.headers["Referrer-Policy"] == "no-referrer"
    assert "default-src 'none'" in response.headers["Content-Security-Policy"]
    assert "unsafe-inline" not in response.headers["Content-Security-Policy"]
    assert len(response.headers.getlist("Cache-Control")) == 1
    assert "Set-Cookie" not in response.headers


def test_health_and_readiness(client):
    from ringwright.api import create_app

    assert client.get("/healthz").get_json() == {"status": "ok"}
    assert client.get("/readyz").get_json() == {"status": "ready"}
    empty = create_app({}).test_client()
    assert empty.get("/healthz").status_code == 200
    assert empty.get("/readyz").status_code == 503
    assert empty.get("/readyz").get_json()["code"] == "not-ready"


def test_the_kinds_of_problem_are_listed(client):
    listed = {entry["code"]: entry for entry in client.get("/v1/problems").get_json()["problems"]}
    told = client.get("/v1/sizing?bore=x").get_json()
    assert listed[told["code"]]["status"] == told["status"]
    assert listed[told["code"]]["title"] == told["title"]


def test_a_page_for_people_until_the_app_is_built(tmp_path):
    from ringwright.api import create_app

    response = create_app(app_folder=tmp_path).test_client().get("/")
    assert response.mimetype == "text/html"
    for name in calculations.CALCULATIONS:
        assert "/v1/" + name in response.get_data(as_text=True)


def test_every_calculation_has_its_address(app):
    rules = {(rule.rule, method) for rule in app.url_map.iter_rules() for method in rule.methods}
    for name, calculation in calculations.CALCULATIONS.items():
        lists = [
            entry.name
            for entry in calculation.fields
            if entry.required and entry.kind in ("records", "object")
        ]
        assert (("/v1/" + name, "GET") in rules) == (not lists)
        assert (("/v1/" + name, "POST") in rules) == (not is_table(calculation))


_WATCHED = []


def _watch(event, arguments):
    if _WATCHED and event in ("open", "os.listdir", "os.scandir", "socket.connect", "os.putenv"):
        _WATCHED[-1].append((event, arguments))


sys.addaudithook(_watch)


def test_no_request_touches_a_file_or_another_host(client):
    requests = [
        ("GET", ADDRESS, None),
        ("POST", "/v1/sizing", {"bore": "80 mm"}),
        ("POST", "/v1/sizing", {"bore": "eighty"}),
        ("GET", "/openapi.json", None),
        ("GET", "/healthz", None),
        ("GET", "/readyz", None),
        ("GET", "/", None),
        ("GET", "/v1/problems", None),
        ("GET", "/v1/drawings/former.svg?bore=80", None),
        ("GET", "/v1/drawings/former.dxf?bore=80", None),
        ("GET", "/v1/drawings/former.pdf?bore=80", None),
        ("GET", "/nothing", None),
        *(
            ("GET", "/v1/" + name, None)
            for name, calculation in calculations.CALCULATIONS.items()
            if is_table(calculation)
        ),
    ]
    # The first time round, Python itself may still load a module.
    for method, path, body in requests:
        client.open(path, method=method, json=body)
    _WATCHED.append([])
    try:
        answers = [client.open(path, method=method, json=body) for method, path, body in requests]
        seen = _WATCHED[-1]
    finally:
        _WATCHED.pop()
    assert [answer.status_code for answer in answers][:3] == [200, 200, 422]
    assert seen == []


def test_the_watch_would_see_a_file(tmp_path):
    (tmp_path / "x").write_text("x")
    _WATCHED.append([])
    (tmp_path / "x").read_text()
    assert any(event == "open" for event, _ in _WATCHED.pop())


def test_requests_leave_no_trace_on_one_another(client):
    alone = client.get(ADDRESS).data
    for path in ("/v1/sizing?bore=200&ring_type=plain", "/v1/sizing?bore=x", "/nothing"):
        client.get(path)
    client.post("/v1/sizing", json={"bore": 500, "rings": 5})
    assert client.get(ADDRESS).data == alone


@pytest.mark.parametrize("method", ["get", "post"])
def test_a_slash_too_many_leads_to_the_address(client, method):
    """308 keeps method and body; nothing else is guessed."""
    response = client.open(
        "/v1/sizing/?bore=3%201/8%20in" if method == "get" else "/v1/sizing/",
        method=method.upper(),
        json={"bore": 80} if method == "post" else None,
    )
    assert response.status_code == 308
    assert response.headers["Location"].startswith("/v1/sizing")
    assert not response.headers["Location"].split("?")[0].endswith("/")
    assert response.headers["Access-Control-Allow-Origin"] == "*"
    followed = client.open(
        response.headers["Location"],
        method=method.upper(),
        json={"bore": 80} if method == "post" else None,
    )
    assert followed.status_code == 200
    assert client.get("/v1/nothing/").status_code == 404
    assert client.get("//v1/sizing").status_code == 404


def test_the_root_says_to_a_program_where_things_are(client):
    told = client.get("/", headers={"Accept": "application/json"})
    assert told.mimetype == "application/json" and "Accept" in told.headers["Vary"]
    there = told.get_json()
    assert there["version"] == told.headers["Ringwright-Version"]
    assert "/v1/sizing" in there["calculations"]
    for address in (there["specification"], there["problems"], there["health"]):
        assert client.get(address).status_code == 200
    for accept in ("text/html,application/xhtml+xml,*/*;q=0.8", "*/*", None):
        page = client.get("/", headers={"Accept": accept} if accept else {})
        assert page.mimetype == "text/html" and "Accept" in page.headers["Vary"]


def test_a_table_is_plain_text_as_well(client):
    response = client.get("/v1/sizing.csv?bore=80", headers={"Accept": "text/plain"})
    assert response.status_code == 200 and response.mimetype == "text/csv"
    refused = client.get("/v1/sizing.csv?bore=80", headers={"Accept": "image/png"})
    assert refused.status_code == 406


def test_another_origin_reads_the_name_of_a_file(client):
    exposed = client.get("/v1/sizing.csv?bore=80").headers["Access-Control-Expose-Headers"]
    assert {"ETag", "Content-Disposition", "Retry-After"} <= set(exposed.split(", "))
    allowed = client.options(
        "/v1/sizing",
        headers={"Origin": "https://club.example", "Access-Control-Request-Method": "POST"},
    ).headers["Access-Control-Allow-Headers"]
    assert {"*", "Accept", "X-Requested-With"} <= set(allowed.split(", "))
