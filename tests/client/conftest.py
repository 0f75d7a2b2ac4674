"""Chromium on the built app, served by the service itself."""

import shutil
from pathlib import Path

import pytest
from playwright.sync_api import sync_playwright

from conftest import ROOT, Server

APP = ROOT / "service" / "ringwright" / "app"
PHONE = {"width": 360, "height": 740}
# Done when nothing is being worked or drawn, and nothing on the page has changed for so long [ms].
STILL = """quiet => new Promise(done => {
    let last = performance.now();
    const watch = new MutationObserver(() => { last = performance.now(); });
    watch.observe(document, {
        subtree: true, childList: true, attributes: true, characterData: true,
    });
    const look = setInterval(() => {
        const main = document.querySelector('main');
        if (document.querySelector('html[data-drawing], main .stale')
            || main?.textContent.includes('Working it out')) last = performance.now();
        if (performance.now() - last < quiet) return;
        clearInterval(look);
        watch.disconnect();
        done();
    }, 20);
})"""
DESK = {"width": 1280, "height": 800}
FLAGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]


def pytest_collection_modifyitems(items):
    here = Path(__file__).parent
    for item in items:
        if here in Path(item.path).parents:
            item.add_marker(pytest.mark.browser)


@pytest.fixture(scope="session")
def chromium_path():
    # Without a browser's own windows round the page it takes half the work.
    programs = ("chromium-headless-shell", "chromium", "chromium-browser")
    found = next(filter(None, map(shutil.which, programs)), None)
    if found is None:
        pytest.fail("Chromium is needed: tests/run installs it")
    if not (APP / "index.html").is_file():
        pytest.fail("the app is not built: run `npm ci && npm run build` in client_pwa")
    return found


@pytest.fixture(scope="session")
def playwright():
    with sync_playwright() as running:
        yield running


@pytest.fixture(scope="session")
def browser(playwright, chromium_path):
    running = playwright.chromium.launch(executable_path=chromium_path, args=FLAGS)
    yield running
    running.close()


@pytest.fixture(scope="session")
def served():
    """Address of the service with the app at its root."""
    running = Server(workers=1)
    yield running.address
    running.stop()


@pytest.fixture
def own_server():
    """A server of the test's own, to be stopped in its course."""
    running = Server(workers=1)
    yield running
    if running.process.poll() is None:
        running.stop()


class Sheet:
    """One page of the app, with the few moves that most tests make."""

    def __init__(self, page, address):
        self.page = page
        self.address = address
        self.complaints = []
        page.set_default_timeout(15_000)
        page.on("pageerror", lambda error: self.complaints.append(str(error)))
        page.on(
            "console",
            lambda message: (
                self.complaints.append(message.text) if message.type == "error" else None
            ),
        )

    def open(self, fragment=""):
        # The app as one file is its own page; elsewhere the page is the root's.
        page = self.address if self.address.endswith(".html") else self.address + "/"
        self.page.goto(page + fragment)
        self.page.wait_for_selector("main :is(.card, .plate, .jobs)")
        return self

    def go(self, screen):
        """Another stage of the open job, by the strip or by its address."""
        job = self.page.evaluate("location.hash.split('/')[2]")
        self.page.evaluate("hash => { location.hash = hash }", "#/%s/%s" % (screen, job))
        self.page.wait_for_selector('.app[data-screen="%s"]' % screen)
        return self

    def ready(self):
        """Waits until the figures belong to the entries, those below the plate with them."""
        self.page.wait_for_selector('html:not([data-drawing]) .plate[data-state="ready"]')
        return self

    def enter(self, label, text):
        box = self.page.get_by_label(label, exact=True).first
        box.fill(text)
        box.blur()
        return self

    def figure(self, name):
        """The number shown for a figure, as text without its unit."""
        return self.page.locator('[data-figure="%s"]' % name).first.locator("b").inner_text()

    def kept(self):
        """Waits until the job book has what is on the screen."""
        return self.until(
            "document.querySelector('.head-names small').textContent.includes('kept on')"
        )

    def still(self, quiet=150):
        """Waits until the screen stands as it will stay. quiet: for how long it must have [ms]."""
        self.page.evaluate(STILL, quiet)
        return self

    def until(self, condition):
        """Waits for a JavaScript condition, by the clock: a page behind another draws no frames."""
        self.page.wait_for_function("() => (%s)" % condition, polling=50)
        return self


@pytest.fixture
def context(browser):
    made = browser.new_context(viewport=PHONE, accept_downloads=True)
    yield made
    made.close()


@pytest.fixture
def sheet(context, served):
    """The app as on a first visit; a page that complains in its console fails the test."""
    opened = Sheet(context.new_page(), served)
    opened.open().ready()
    yield opened
    assert opened.complaints == []
