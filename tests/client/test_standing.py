"""What the app says of itself is so: by which way it came, and whether it opens without signal."""

import pytest

from client.conftest import FLAGS, PHONE, Sheet

NAME = "shed.example"
LOST = """async () => {
  const cache = await caches.open("ringwright-files");
  const held = await cache.keys();
  const lost = held.filter((request) => /\\.(wasm|bin)$/.test(new URL(request.url).pathname));
  await Promise.all(lost.map((request) => cache.delete(request)));
  return lost.length;
}"""
# The page itself is asked for past the browser's own cache, which may still have the others.
LOST_PAGE = """async () => {
  const cache = await caches.open("ringwright-files");
  const held = await cache.keys();
  const lost = held.filter((request) => new URL(request.url).pathname.endsWith("index.html"));
  await Promise.all(lost.map((request) => cache.delete(request)));
}"""
HELD = """async () => {
  const cache = await caches.open("ringwright-files");
  return (await cache.keys()).filter((r) => /\\.(wasm|bin)$/.test(new URL(r.url).pathname)).length;
}"""


@pytest.fixture
def elsewhere(playwright, chromium_path):
    """A browser that knows the service by a name that is not localhost."""
    running = playwright.chromium.launch(
        executable_path=chromium_path,
        args=[*FLAGS, "--host-resolver-rules=MAP %s 127.0.0.1" % NAME],
    )
    yield running
    running.close()


def test_plain_http_from_elsewhere_promises_nothing(elsewhere, served):
    """It said "leave this page open for a moment" for ever, at an address that keeps nothing."""
    page = elsewhere.new_page(viewport=PHONE)
    sheet = Sheet(page, served.replace("127.0.0.1", NAME)).open().ready()
    assert not page.evaluate("isSecureContext")
    page.get_by_text("This address cannot be kept for use without signal").wait_for()
    page.get_by_role("button", name="What to do").click()
    status = page.locator("[data-ready]")
    status.wait_for()
    assert status.get_attribute("data-ready") == "no"
    assert "secure address" in status.inner_text()
    assert "service/start --phone" in status.inner_text()
    assert "Leave this page open" not in page.inner_text("main")
    assert page.evaluate("document.documentElement.scrollWidth") <= PHONE["width"]
    sheet.go("ring").ready()
    page.get_by_role("button", name="Understood").click()
    assert page.get_by_text("This address cannot be kept").count() == 0


def test_this_machine_is_as_good_as_a_secure_address(sheet):
    sheet.go("settings")
    sheet.page.get_by_text("Ready for offline use").wait_for()
    assert sheet.page.locator("[data-ready]").get_attribute("data-ready") == "yes"
    assert sheet.page.get_by_text("cannot be kept").count() == 0


def test_files_lost_from_the_device_are_put_back(context, own_server):
    """It said that it was ready while the engine was gone, and fetched nothing again."""
    sheet = Sheet(context.new_page(), own_server.address).open().ready()
    sheet.go("settings")
    sheet.page.get_by_text("Ready for offline use").wait_for()
    held = sheet.page.evaluate(HELD)
    assert held >= 2
    assert sheet.page.evaluate(LOST) == held
    sheet.go("ring").ready()
    sheet.go("settings")
    sheet.until("document.querySelector('[data-ready]').dataset.ready === 'yes'")
    sheet.page.wait_for_function("async (count) => (await (%s)()) === count" % HELD, arg=held)
    # And with nobody to fetch it from it says what is so.
    sheet.page.evaluate(LOST_PAGE)
    own_server.stop()
    sheet.go("ring").ready()
    sheet.go("settings")
    sheet.page.get_by_text("Part of the app is missing on this device").wait_for()
    assert sheet.page.locator("[data-ready]").get_attribute("data-ready") == "no"


def test_the_browser_s_offer_to_install_is_handed_on(sheet):
    sheet.page.evaluate(
        """() => {
          const offer = new Event("beforeinstallprompt", { cancelable: true });
          offer.prompt = () => { window.asked = true; return Promise.resolve(); };
          dispatchEvent(offer);
        }"""
    )
    sheet.go("settings")
    sheet.page.get_by_role("button", name="Add to the home screen").click()
    assert sheet.page.evaluate("window.asked") is True
    assert sheet.page.get_by_role("button", name="Add to the home screen").count() == 0


def test_an_iphone_is_told_in_words(browser, served):
    context = browser.new_context(
        viewport=PHONE, user_agent="Mozilla/5.0 (iPhone; CPU iPhone OS 18_0 like Mac OS X) Safari"
    )
    sheet = Sheet(context.new_page(), served).open().ready()
    sheet.go("settings")
    sheet.page.get_by_text("then Add to Home Screen").wait_for()
    context.close()
