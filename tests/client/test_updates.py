"""An old app and a new service, a new app and an old one, and a version that does not start."""

import pytest

from client.app_versions import BROKEN, Swapped, another
from client.conftest import APP, FLAGS, PHONE, Sheet

LOOK = "navigator.serviceWorker.getRegistration().then(r => r.update())"
VERSION = "document.documentElement.dataset.version"
# Files of the app by name, on this device.
HELD = """async () => (await (await caches.open("ringwright-files")).keys())
  .map((request) => new URL(request.url).pathname.split("/").pop())"""
# Drops the page's own script from what is kept; how many files went.
LOSE_SCRIPT = """async () => {
  const own = document.querySelector("script[src*='index-']").src;
  return Number(await (await caches.open("ringwright-files")).delete(own));
}"""
STARTED = """async () => {
  const cache = await caches.open("ringwright-files");
  const held = await cache.match(new URL("starts.json", location.href.split("#")[0]));
  return held ? Object.keys((await held.json()).good).some((each) => each.includes("%s")) : false;
}"""


@pytest.fixture
def context(playwright, chromium_path, tmp_path):
    made = playwright.chromium.launch_persistent_context(
        str(tmp_path / "profile"), executable_path=chromium_path, args=FLAGS, viewport=PHONE
    )
    yield made
    made.close()


@pytest.fixture
def swapped():
    running = Swapped(APP)
    yield running
    running.stop()


@pytest.fixture
def sheet(context, swapped):
    """The app as it is, kept on the device and known to start there."""
    opened = Sheet(context.new_page(), swapped.address).open().ready()
    opened.page.wait_for_function("() => navigator.serviceWorker.controller !== null")
    proved(opened, "index-")
    return opened


def proved(sheet, name):
    sheet.page.wait_for_function("async () => await (%s)()" % (STARTED % name), polling=100)


def take(sheet):
    """Looks for the newer version and takes it into use."""
    sheet.page.evaluate(LOOK)
    offer = sheet.page.get_by_role("button", name="Use it now")
    offer.wait_for()
    with sheet.page.expect_navigation():
        offer.click()


def version(page):
    return page.evaluate(VERSION)


def test_a_newer_version_is_offered_and_never_forced(sheet, swapped, tmp_path):
    sheet.enter("Bore", "77 mm").ready().kept()
    swapped.use(another(tmp_path / "newer", "newer123"))
    sheet.page.evaluate(LOOK)
    sheet.page.get_by_role("button", name="Use it now").wait_for()
    assert version(sheet.page) is None
    # Typed while the newer one waits, and taken into use in the same breath.
    sheet.page.get_by_label("Bore", exact=True).fill("78 mm")
    with sheet.page.expect_navigation():
        sheet.page.get_by_role("button", name="Use it now").click()
    sheet.ready()
    assert version(sheet.page) == "newer123"
    assert sheet.page.get_by_label("Bore", exact=True).input_value() == "78"
    assert sheet.page.get_by_role("button", name="Use it now").count() == 0
    assert sheet.complaints == []


def test_an_old_app_goes_on_before_a_new_service_and_with_none(sheet, swapped, tmp_path):
    """The new service has none of the old app's files, and the old app needs none of them."""
    swapped.use(another(tmp_path / "newer", "newer123"))
    sheet.page.evaluate(LOOK)
    sheet.page.get_by_role("button", name="Later").click()
    sheet.page.reload()
    sheet.ready()
    assert version(sheet.page) is None
    # The screens that come later are a file of their own.
    sheet.go("book").page.wait_for_selector(".jobs")
    sheet.go("settings")
    sheet.page.get_by_text("Ready for offline use").wait_for()
    swapped.stop()
    sheet.page.reload()
    sheet.go("ring").ready()
    assert version(sheet.page) is None


def test_a_new_app_goes_back_with_a_service_that_did(sheet, swapped, tmp_path):
    """Who keeps the service may go back to an older version: to a phone it is the newest again."""
    swapped.use(another(tmp_path / "newer", "newer123"))
    take(sheet)
    sheet.ready().enter("Bore", "77 mm").ready().kept()
    proved(sheet, "newer123")
    swapped.use(APP)
    sheet.page.reload()
    sheet.ready()
    assert version(sheet.page) == "newer123"
    take(sheet)
    sheet.ready()
    assert version(sheet.page) is None
    assert sheet.page.get_by_label("Bore", exact=True).input_value() == "77"


def test_a_version_that_does_not_start_falls_back_to_the_one_that_did(sheet, swapped, tmp_path):
    sheet.enter("Bore", "77 mm").ready().kept()
    swapped.use(another(tmp_path / "broken", "broken12", BROKEN))
    take(sheet)
    assert sheet.page.locator("main").count() == 0
    # The person opens it again, and the service may be out of reach by now.
    swapped.stop()
    sheet.page.reload()
    assert sheet.page.locator("main").count() == 0
    sheet.page.reload()
    sheet.ready()
    sheet.page.get_by_text("did not start on this device").wait_for()
    assert sheet.page.get_by_label("Bore", exact=True).input_value() == "77"
    # So it stays, at every start and on every screen.
    sheet.page.reload()
    sheet.ready()
    sheet.go("book").page.wait_for_selector(".jobs")
    assert version(sheet.page) is None


def test_files_of_the_version_fallen_back_to_are_looked_for(sheet, context, swapped, tmp_path):
    """With its script lost, it was still called ready for use without network."""
    swapped.use(another(tmp_path / "broken", "broken12", BROKEN))
    take(sheet)
    swapped.stop()
    sheet.page.reload()
    sheet.page.reload()
    sheet.ready()
    sheet.go("settings").page.get_by_text("Ready for offline use").wait_for()
    sheet.go("ring")
    assert sheet.page.evaluate(LOSE_SCRIPT) == 1
    # The browser's own cache would give it back.
    context.new_cdp_session(sheet.page).send("Network.clearBrowserCache")
    sheet.go("settings").page.get_by_text("Part of the app is missing on this device").wait_for()


def test_the_newest_can_be_tried_again_and_the_next_mends_it(sheet, swapped, tmp_path):
    swapped.use(another(tmp_path / "broken", "broken12", BROKEN))
    take(sheet)
    sheet.page.reload()
    sheet.page.reload()
    sheet.ready()
    again = sheet.page.get_by_role("button", name="Try the newest again")
    again.wait_for()
    with sheet.page.expect_navigation():
        again.click()
    assert sheet.page.locator("main").count() == 0
    sheet.page.reload()
    sheet.page.reload()
    sheet.ready()
    swapped.use(another(tmp_path / "mended", "mended12"))
    take(sheet)
    sheet.ready()
    assert version(sheet.page) == "mended12"
    proved(sheet, "mended12")
    assert sheet.page.get_by_text("did not start on this device").count() == 0


def test_files_of_versions_long_past_are_dropped(sheet, swapped, tmp_path):
    for mark in ("second12", "third123"):
        swapped.use(another(tmp_path / mark, mark))
        take(sheet)
        sheet.ready()
        proved(sheet, mark)
    held = sheet.page.evaluate(HELD)
    scripts = sorted(name for name in held if name.startswith("index-"))
    assert scripts == ["index-second12.js", "index-third123.js"]


def test_another_page_is_not_loaded_anew_under_somebody_s_hands(sheet, context, swapped, tmp_path):
    """It was, without being saved first."""
    other = Sheet(context.new_page(), swapped.address).open().ready()
    swapped.use(another(tmp_path / "newer", "newer123"))
    other.page.evaluate("addEventListener('beforeunload', () => localStorage.setItem('left', '1'))")
    other.page.get_by_label("Bore", exact=True).fill("79 mm")
    take(sheet)
    sheet.ready()
    # Playwright's pages are all in sight.
    use = other.page.get_by_role("button", name="Use it here too")
    use.wait_for()
    assert other.page.evaluate("localStorage.getItem('left')") is None
    assert other.page.get_by_label("Bore", exact=True).input_value() == "79 mm"
    # The old page still has its own files.
    other.go("shop").page.wait_for_selector("main :is(.card, .jobs)")
    other.go("ring").ready()
    with other.page.expect_navigation():
        use.click()
    other.ready()
    assert version(other.page) == "newer123"
    assert other.page.get_by_label("Bore", exact=True).input_value() == "79"


def test_what_cannot_be_kept_is_not_loaded_away(sheet, swapped, tmp_path):
    """On a full device the notice stays and says so; the newer version waits."""
    sheet.page.evaluate(
        """() => {
          const put = IDBObjectStore.prototype.put;
          IDBObjectStore.prototype.put = function (...given) {
            if (this.name !== "jobs") return put.apply(this, given);
            throw new DOMException("full", "QuotaExceededError");
          };
        }"""
    )
    swapped.use(another(tmp_path / "newer", "newer123"))
    sheet.page.evaluate(LOOK)
    sheet.page.get_by_role("button", name="Use it now").wait_for()
    sheet.page.get_by_label("Bore", exact=True).fill("78 mm")
    sheet.page.get_by_role("button", name="Use it now").click()
    sheet.page.get_by_text("The storage of this device is full").wait_for()
    assert version(sheet.page) is None
    assert sheet.page.get_by_label("Bore", exact=True).input_value() == "78"
