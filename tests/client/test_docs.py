"""The pages for people at /docs, in Chromium on a phone and on a desk: they draw, ask nobody else,
and everybody can use them."""

import re
from urllib.parse import urlsplit

import pytest

from client.conftest import DESK, PHONE
from client.test_everyone import _faults
from ringwright.api.docs.frame import PAGES
from ringwright.core.calculations import CALCULATIONS

SIZES = {"phone": PHONE, "desk": DESK}
# Of the page of calls, what is ours: the rest is the renderer's.
DRAWN = ".swagger-ui .opblock-summary-path"


class Visit:
    """A page of its own, with all that it asked for and complained of."""

    def __init__(self, context, address):
        self.address = address
        self.asked = []
        self.complaints = []
        # The app's service worker would answer some of it out of sight.
        self.page = context.new_page()
        self.page.set_default_timeout(20_000)
        self.page.on("request", lambda request: self.asked.append(request.url))
        self.page.on("pageerror", lambda error: self.complaints.append(str(error)))
        self.page.on(
            "console",
            lambda message: (
                self.complaints.append(message.text)
                if message.type in ("error", "warning")
                else None
            ),
        )

    def open(self, path):
        self.page.goto(self.address + path, wait_until="networkidle")
        return self

    def strangers(self):
        """What was asked of another host."""
        own = urlsplit(self.address).netloc
        return [
            one
            for one in self.asked
            if urlsplit(one).scheme not in ("data", "blob") and urlsplit(one).netloc != own
        ]

    def is_wider_than_the_screen(self):
        return self.page.evaluate("document.documentElement.scrollWidth > innerWidth")


@pytest.fixture(params=SIZES)
def visit(request, browser, served):
    context = browser.new_context(viewport=SIZES[request.param])
    made = Visit(context, served)
    yield made
    context.close()
    assert made.complaints == []
    assert made.strangers() == []


def test_every_call_is_drawn_shows_a_real_answer_and_can_be_tried(visit):
    """One page for all of it: drawing the whole specification takes seconds."""
    visit.open("/docs").page.wait_for_selector(DRAWN)
    told = {text.replace("\u200b", "") for text in visit.page.locator(DRAWN).all_inner_texts()}
    assert {"/v1/" + name for name in CALCULATIONS} <= told
    shown = visit.page.locator("#reference").inner_text()
    for calculation in CALCULATIONS.values():
        assert calculation.summary in shown
    assert not visit.is_wider_than_the_screen()
    assert any(one.endswith("/docs/specification.json") for one in visit.asked)
    call = visit.page.locator('.opblock:has(.opblock-summary-path[data-path="/v1/sizing"])').first
    call.locator(".opblock-summary-control").click()
    _shows_a_real_answer(visit, call)
    call.get_by_role("button", name="Try it out").click()
    call.get_by_role("button", name="Execute").click()
    live = call.locator(".live-responses-table .response-col_status").nth(1)
    live.wait_for()
    assert live.inner_text().startswith("200")


def _shows_a_real_answer(visit, call):
    """Of the ring; the last figures of an answer, so all of it is there."""
    answer = call.locator(".responses-table .highlight-code, .responses-table .example").first
    answer.wait_for()
    text = answer.inner_text()
    told = visit.page.evaluate(
        "fetch('/v1/sizing', {method: 'POST', headers: {'Content-Type': 'application/json'},"
        "body: JSON.stringify({bore: '80 mm'})}).then(reply => reply.json())"
    )
    assert '"free_gap"' in text
    assert str(told["figures"]["free_gap"]["value"]) in text
    assert not visit.is_wider_than_the_screen()


@pytest.mark.parametrize("path", [path for path in PAGES if path != "/docs"])
def test_a_page_of_our_own_draws_within_the_screen(visit, path):
    visit.open(path)
    assert visit.page.locator("h1").count() == 1
    assert not visit.is_wider_than_the_screen()
    visit.page.locator("nav a[aria-current]").wait_for()


def test_what_is_copied_has_the_address_of_this_service(visit):
    visit.open("/docs/begin")
    code = "\n".join(visit.page.locator("pre").all_inner_texts())
    assert "export RINGWRIGHT=" + visit.address in code
    assert "127.0.0.1:8000" not in code


def test_the_type_of_a_problem_leads_to_its_place(visit):
    visit.open("/v1/problems#query-too-long")
    assert visit.page.url == visit.address + "/docs/problems#query-too-long"
    assert visit.page.locator("section:target h2").inner_text().startswith("query-too-long")


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("size", SIZES)
def test_axe_finds_nothing_on_our_own_pages(browser, served, size, scheme):
    context = browser.new_context(viewport=SIZES[size], bypass_csp=True, color_scheme=scheme)
    page = context.new_page()
    # What the renderer draws takes seconds and is its own; the plain list before it is ours.
    page.route("**/swagger-ui-bundle.js", lambda route: route.abort())
    found = {}
    for path in PAGES:
        page.goto(served + path, wait_until="networkidle")
        found[path] = _faults(page)
    context.close()
    assert found == {path: [] for path in PAGES}


def test_the_app_leads_there(sheet):
    sheet.go("settings")
    sheet.page.get_by_role("button", name="Open the pages for other tools").click()
    sheet.page.wait_for_url(re.compile("/docs$"))
    sheet.page.wait_for_selector(DRAWN)
    # Past the service worker: the pages are no part of what a phone keeps.
    kept = sheet.page.evaluate(
        "caches.keys().then(names => Promise.all(names.map(name => caches.open(name)"
        ".then(cache => cache.keys())))).then(all => all.flat().map(each => each.url))"
    )
    assert len(kept) > 5
    assert [one for one in kept if "/docs" in one or "swagger" in one] == []
