"""With the network gone: a cold start from a deep link, new figures, no server asked."""

import shutil
import threading

from werkzeug.serving import make_server

from client.conftest import APP, FLAGS, PHONE, Sheet
from ringwright.api import create_app


def _browser_with(playwright, chromium_path, profile):
    return playwright.chromium.launch_persistent_context(
        str(profile), executable_path=chromium_path, args=FLAGS, viewport=PHONE
    )


def test_cold_start_without_network_from_a_deep_link(
    playwright, chromium_path, own_server, tmp_path
):
    first = _browser_with(playwright, chromium_path, tmp_path)
    sheet = Sheet(first.new_page(), own_server.address).open().ready()
    sheet.page.wait_for_function("() => navigator.serviceWorker.controller !== null")
    sheet.go("settings")
    sheet.page.get_by_text("Ready for offline use").wait_for()
    sheet.go("ring").ready()
    link = sheet.page.evaluate("location.hash")
    former_before = sheet.figure("former_diameter")
    first.close()
    # Not only this page's network: there is nobody at the other end any more.
    own_server.stop()

    again = _browser_with(playwright, chromium_path, tmp_path)
    sheet = Sheet(again.new_page(), own_server.address).open(link).ready()
    assert sheet.figure("former_diameter") == former_before
    sheet.enter("Bore", "4 1/4 in").ready()
    sheet.page.wait_for_function(
        "before =>"
        " document.querySelector('[data-figure=former_diameter] b').textContent !== before",
        arg=former_before,
    )
    # A former for a 4 1/4 in (107.95 mm) ring lies between its bore and the cylinder's.
    inside = float(sheet.figure("inside_diameter"))
    assert inside < float(sheet.figure("former_diameter")) < 115.0
    assert 95.0 < inside < 107.95
    assert sheet.complaints == []

    # Every other screen stands too.
    stages = ("tools", "stock", "route", "check", "run", "survey")
    for screen in (*stages, "valve", "tables", "shop", "cut", "work", "book", "settings"):
        sheet.go(screen)
        sheet.page.wait_for_selector("main :is(.card, .jobs, .operation, .work)")
    _reference_tables_answer(sheet)
    again.close()


def _reference_tables_answer(sheet):
    page = sheet.go("tables").page
    page.get_by_role("table", name="Outcome by metal of cylinder and ring").wait_for()
    for title, inside in (
        ("Other ways to seal a piston", "Soft packing"),
        ("Materials", "Gunmetal"),
        ("Bars of iron", "Measures, skin on"),
        ("Formulas and sources", "Where it holds"),
    ):
        page.locator("summary", has_text=title).click()
        page.get_by_text(inside, exact=True).first.wait_for(state="attached")
    assert sheet.complaints == []


class Swapped:
    """The service in this process, whose built app can be replaced while it runs."""

    def __init__(self, folder):
        self.use(folder)
        self.server = make_server("127.0.0.1", 0, lambda *call: self.app(*call), threaded=True)
        self.address = "http://127.0.0.1:%d" % self.server.port
        threading.Thread(target=self.server.serve_forever, daemon=True).start()

    def use(self, folder):
        self.app = create_app(app_folder=folder)


def test_newer_version_is_offered_and_never_forced(playwright, chromium_path, tmp_path):
    swapped = Swapped(APP)
    context = _browser_with(playwright, chromium_path, tmp_path / "profile")
    sheet = Sheet(context.new_page(), swapped.address).open().ready()
    sheet.page.wait_for_function("() => navigator.serviceWorker.controller !== null")
    sheet.enter("Bore", "77 mm").ready().kept()

    newer = tmp_path / "app"
    shutil.copytree(APP, newer)
    for packed in newer.glob("service_worker.js.*"):
        packed.unlink()
    # To the browser a worker with one more line is a new version.
    with (newer / "service_worker.js").open("a", encoding="utf-8") as worker:
        worker.write("\n// newer\n")
    swapped.use(newer)
    sheet.page.evaluate("navigator.serviceWorker.getRegistration().then(r => r.update())")
    offer = sheet.page.get_by_role("button", name="Use it now")
    offer.wait_for()
    assert sheet.page.get_by_label("Bore", exact=True).input_value() == "77"
    with sheet.page.expect_navigation():
        offer.click()
    sheet.ready()
    assert sheet.page.get_by_label("Bore", exact=True).input_value() == "77"
    assert sheet.page.get_by_role("button", name="Use it now").count() == 0
    context.close()
    swapped.server.shutdown()


def test_page_asks_no_other_host_for_anything(context, served):
    asked = set()
    page = context.new_page()
    page.on("request", lambda request: asked.add(request.url.split("/")[2]))
    Sheet(page, served).open().ready()
    assert asked == {served.split("/")[2]}
