"""The pages for people at /docs: made from what the service holds, linked from where they help."""

import gzip
import json
import re
from html import unescape

import pytest

from ringwright.api import create_app, docs, limits, problems, settings
from ringwright.api.docs import frame, reference, written
from ringwright.core import calculations


def text_of(client, path):
    """The text of a page, without its tags."""
    response = client.get(path)
    assert response.status_code == 200, path
    assert response.mimetype == "text/html"
    plain = re.sub("<[^>]+>", " ", response.get_data(as_text=True))
    return " ".join(unescape(plain).split())


@pytest.mark.parametrize("path", frame.PAGES)
def test_a_page_comes_from_memory_compressed_and_is_asked_for_again(client, path):
    plain = client.get(path)
    packed = client.get(path, headers={"Accept-Encoding": "gzip"})
    assert packed.headers["Content-Encoding"] == "gzip"
    assert gzip.decompress(packed.data) == plain.data
    assert packed.headers["Cache-Control"] == "no-cache"
    known = {"Accept-Encoding": "gzip", "If-None-Match": packed.headers["ETag"]}
    assert client.get(path, headers=known).status_code == 304


@pytest.mark.parametrize("path", frame.PAGES)
def test_a_page_may_load_from_this_host_alone(client, path):
    response = client.get(path)
    policy = response.headers["Content-Security-Policy"]
    assert policy.startswith("default-src 'none'; script-src 'self'; style-src 'self'; ")
    assert "unsafe" not in policy and "http" not in policy
    # Nor does it try to: whatever it loads is an address of this host.
    loaded = re.findall(r'(?:src|<link [^>]*href)="([^"]+)"', response.get_data(as_text=True))
    assert loaded
    assert [one for one in loaded if not one.startswith(("/docs/", "data:"))] == []
    for one in loaded:
        assert one == "data:," or client.get(one).status_code == 200, one


def test_every_page_leads_to_every_other(client):
    for path in frame.PAGES:
        page = client.get(path).get_data(as_text=True)
        assert {'<a href="%s"' % other in page for other in frame.PAGES} == {True}
        assert page.count('aria-current="page"') == 1
        assert '<a href="%s" aria-current="page">' % path in page


def test_a_slash_too_many_leads_to_the_page(client):
    assert client.get("/docs/").headers["Location"] == "/docs"


def test_every_calculation_stands_on_the_page_before_anything_is_drawn(client):
    told = text_of(client, "/docs")
    for name, calculation in calculations.CALCULATIONS.items():
        assert "/v1/%s : %s" % (name, calculation.summary) in told


def test_the_answers_shown_are_what_the_service_answers(client, root):
    spec = client.get("/docs/specification.json").get_json()
    shown = 0
    for path in sorted((root / "openapi" / "examples").glob("*.json")):
        requests = json.loads(path.read_text(encoding="utf-8"))
        response = spec["paths"]["/v1/" + path.stem]["post"]["responses"]["200"]
        if "$ref" in response:
            response = spec["components"]["responses"][response["$ref"].rpartition("/")[2]]
        answers = response["content"]["application/json"]["examples"]
        assert set(answers) == set(requests), path.stem
        for key, example in requests.items():
            assert answers[key]["summary"] == example["summary"]
            told = client.post("/v1/" + path.stem, json=example["value"]).get_json()
            assert answers[key]["value"] == told, (path.stem, key)
            shown += 1
    assert shown > 20


def test_the_refusal_shown_is_what_the_service_answers(client):
    shown = client.get("/docs/specification.json").get_json()["components"]["responses"]
    refused, failed = (
        shown[name]["content"]["application/problem+json"]["example"]
        for name in ("Refused", "Failed")
    )
    assert refused == client.post("/v1/sizing", json={"bore": 3.125}).get_json()
    assert "3.125" in refused["errors"][0]["message"]
    assert (failed["code"], failed["status"]) == ("busy", 503)


def test_what_programs_read_has_no_answers_in_it(client, app):
    docs.prepared(app)
    spec = client.get("/openapi.json").get_json()
    with_answers = client.get("/docs/specification.json").get_json()
    assert spec["paths"].keys() == with_answers["paths"].keys()
    assert len(json.dumps(spec)) < 0.6 * len(json.dumps(with_answers))
    assert client.get("/openapi.json").data == create_app().test_client().get("/openapi.json").data


def test_every_kind_of_problem_has_its_place(client):
    page = client.get("/docs/problems").get_data(as_text=True)
    told = text_of(client, "/docs/problems")
    assert re.findall('<section id="([^"]+)">', page) == list(problems.KINDS)
    for code, kind in problems.KINDS.items():
        assert "%s %d %s." % (code, kind.status, kind.title) in told
        assert "What to do: %s." % kind.remedy in told


@pytest.mark.parametrize(
    ("path", "code"),
    [
        ("/v1/sizing?bore=x", "invalid-input"),
        ("/nothing", "not-found"),
        ("/v1/job", "invalid-input"),
    ],
)
def test_a_problem_leads_to_its_place_on_the_page(client, path, code):
    response = client.get(path)
    assert response.get_json()["code"] == code
    assert response.headers["Link"] == '</docs/problems#%s>; rel="help"; type="text/html"' % code
    assert "Link" in response.headers["Access-Control-Expose-Headers"]
    assert '<section id="%s">' % code in client.get("/docs/problems").get_data(as_text=True)


def test_the_type_of_a_problem_opens_the_page_in_a_browser(client):
    browser = {"Accept": "text/html,application/xhtml+xml,application/xml;q=0.9,*/*;q=0.8"}
    # The browser carries the part behind the # over to where it is sent (RFC 9110, 10.2.2).
    sent = client.get("/v1/problems", headers=browser)
    assert (sent.status_code, sent.headers["Location"]) == (303, "/docs/problems")
    for accept in ("*/*", "application/json", "application/json, text/html;q=0.9", ""):
        assert client.get("/v1/problems", headers={"Accept": accept}).mimetype == "application/json"
    assert client.get("/v1/problems").headers["Vary"] == sent.headers["Vary"] == "Accept"


def test_programs_are_told_of_the_pages(client):
    told = client.get("/", headers={"Accept": "application/json"}).get_json()
    assert told["documentation"] == "/docs"
    assert client.get(told["documentation"]).mimetype == "text/html"


def test_the_limits_are_those_of_the_service(client):
    told = text_of(client, "/docs/limits")
    for number in (limits.LARGEST_BODY, limits.LONGEST_QUERY, limits.MOST_ERRORS):
        assert "{:,}".format(number).replace(",", " ") in told
    body = b'{"bore": "' + b"8" * limits.LARGEST_BODY + b'"}'
    refused = client.post("/v1/sizing", data=body, content_type="application/json")
    assert (refused.status_code, refused.get_json()["code"]) == (413, "body-too-large")
    assert "413 body-too-large" in told


def test_the_settings_stand_with_default_and_meaning(client):
    told = text_of(client, "/docs/limits")
    for name, setting in {**settings.SETTINGS, **settings.BESIDE}.items():
        assert "%s %s %s" % (name, setting.usual or "none", setting.meaning) in told


def test_what_is_written_in_markdown_stands_there_whole(client, root):
    for path, name in written.FILES.items():
        source = (root / "openapi" / name).read_text(encoding="utf-8")
        told = text_of(client, path)
        headings = re.findall("^#+ (.+)$", re.sub("(?ms)^```.*?^```$", "", source), re.M)
        assert headings
        for heading in headings:
            assert " ".join(heading.split()) in told
        # Letters that mean something to HTML come out as they were written.
        for code in re.findall("(?ms)^```[a-z]+\n(.*?)^```$", source):
            assert " ".join(code.split()) in " ".join(
                unescape(client.get(path).get_data(as_text=True)).split()
            )


def test_a_renderer_that_is_not_built_leaves_a_plain_page(tmp_path):
    assert reference.renderer(tmp_path) == {}
    page = reference.make_page(calculations.CALCULATIONS, {}).content["identity"].decode()
    assert "<script" not in page
    assert "/v1/sizing" in page and 'href="/openapi.json"' in page


def test_a_renderer_that_is_built_is_sent_as_it_was_packed(tmp_path):
    script = b"const drawn = true;\n" * 50
    (tmp_path / reference.SCRIPT).write_bytes(script)
    (tmp_path / reference.STYLE).write_text("p { margin: 0 }")
    (tmp_path / (reference.SCRIPT + ".br")).write_bytes(b"packed by the build")
    (tmp_path / "LICENSE.txt").write_text("free")
    there = reference.renderer(tmp_path)
    assert set(there) == {
        "renderer/" + name for name in (reference.SCRIPT, reference.STYLE, "LICENSE.txt")
    }
    held = there["renderer/" + reference.SCRIPT]
    assert held.content["identity"] == script
    assert held.content["br"] == b"packed by the build"
    page = reference.make_page(calculations.CALCULATIONS, there).content["identity"].decode()
    scripts = re.findall('<script defer src="([^"]+)">', page)
    assert scripts == ["/docs/renderer/" + reference.SCRIPT, "/docs/reference.js"]


def test_examples_are_answered_past_the_log(monkeypatch, capfd):
    """Nobody asked: neither log nor counts tell of it."""
    monkeypatch.setenv("RINGWRIGHT_REQUEST_LOG", "on")
    assert docs.prepared(create_app()).content["gzip"]
    assert capfd.readouterr().out == ""
