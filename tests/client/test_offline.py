"""With the network gone: a cold start from a deep link, new figures, no server asked."""

from client.conftest import FLAGS, PHONE, Sheet
from client.screens import SCREENS, stands


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
    for screen in SCREENS:
        sheet.go(screen)
        sheet.page.wait_for_selector(stands(screen))
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


def test_page_asks_no_other_host_for_anything(context, served):
    asked = set()
    page = context.new_page()
    page.on("request", lambda request: asked.add(request.url.split("/")[2]))
    Sheet(page, served).open().ready()
    assert asked == {served.split("/")[2]}
