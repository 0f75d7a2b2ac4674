"""A home page of another origin asks the service: the page that /docs/begin shows, as it stands."""

import re
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from threading import Thread

import pytest

from conftest import ROOT

USUAL = "http://127.0.0.1:8000"


class _Quiet(SimpleHTTPRequestHandler):
    def log_message(self, *_):
        pass


@pytest.fixture
def home(tmp_path):
    """Address of another server, and its folder."""
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(_Quiet, directory=tmp_path))
    Thread(target=server.serve_forever, daemon=True).start()
    # By another name too, so that nothing of the origin is the service's.
    yield "http://localhost:%d" % server.server_port, tmp_path
    server.shutdown()
    server.server_close()


def page_for(address):
    text = (ROOT / "openapi" / "begin.md").read_text(encoding="utf-8")
    (page,) = re.findall("(?ms)^```html\n(.*?)^```$", text)
    assert page.count(USUAL) == 1
    return page.replace(USUAL, address)


def test_the_button_asks_the_service(browser, served, home):
    address, folder = home
    (folder / "index.html").write_text(page_for(served), encoding="utf-8")
    page = browser.new_page()
    page.goto(address)
    told = page.evaluate(
        "address => fetch(address).then(reply => reply.json())",
        served + "/v1/sizing?bore=3+1/8+in",
    )
    wanted = "Free gap %.2f mm" % told["figures"]["free_gap"]["value"]
    page.get_by_role("button").click()
    page.get_by_role("status").get_by_text(wanted).wait_for()
    # What cannot be worked is told in words, not as a broken page.
    page.get_by_label("Bore").fill("8 mm")
    page.get_by_role("button").click()
    page.get_by_role("status").get_by_text("give 10 to 900 mm").wait_for()
    page.close()


def test_the_button_says_when_nobody_answers(browser, home):
    address, folder = home
    (folder / "index.html").write_text(page_for("http://127.0.0.1:9"), encoding="utf-8")
    page = browser.new_page()
    page.goto(address)
    page.get_by_role("button").click()
    page.get_by_role("status").get_by_text("does not answer").wait_for()
    page.close()
