"""The large keypad: it leaves its entry in sight, closes with it, and types into nothing gone."""

import pytest

from client.conftest import Sheet

HELD = {"upright": (360, 740), "on its side": (740, 360), "small": (320, 568)}


@pytest.fixture
def touched(browser, served):
    """A phone in the hand: opens the app at that size, with text of that size in per cent."""
    made = []

    def opened(size=(360, 740), text=100, fragment=""):
        context = browser.new_context(
            viewport={"width": size[0], "height": size[1]}, has_touch=True, is_mobile=True
        )
        made.append(context)
        page = context.new_page()
        sheet = Sheet(page, served).open(fragment).ready()
        if text != 100:
            page.evaluate(
                "s => { document.documentElement.style.fontSize = s }", "%gpx" % (0.17 * text)
            )
        return sheet

    yield opened
    for context in made:
        context.close()


IN_SIGHT = """() => {
    const entry = document.activeElement.getBoundingClientRect();
    const pad = document.querySelector('.pad').getBoundingClientRect();
    const apart = entry.bottom <= pad.top + 1 || entry.right <= pad.left + 1;
    const seen = entry.top >= 0 && entry.bottom <= innerHeight && entry.left >= 0;
    const label = document.activeElement.closest('.entry, td')?.getBoundingClientRect();
    return { apart, seen, pad: Math.round(pad.height), entry: Math.round(entry.top),
        whole: pad.top >= 0 && pad.bottom <= innerHeight + 1 && pad.right <= innerWidth + 1 };
}"""


@pytest.mark.parametrize("text", [100, 200], ids=["usual text", "twice the text"])
@pytest.mark.parametrize("held", list(HELD))
@pytest.mark.parametrize(
    "screen, entry",
    [("ring", "#in-bore"), ("run", "#in-worn_gap"), ("check", "#in-measured_light")],
)
def test_keypad_leaves_its_entry_in_sight(touched, held, text, screen, entry):
    sheet = touched(HELD[held], text)
    sheet.go(screen)
    page = sheet.page
    page.locator(entry).wait_for()
    page.locator(entry).scroll_into_view_if_needed()
    page.locator(entry).tap()
    page.locator(".pad").wait_for()
    page.wait_for_timeout(350)
    seen = page.evaluate(IN_SIGHT)
    assert seen["apart"] and seen["seen"] and seen["whole"], seen
    assert sheet.complaints == []


@pytest.mark.parametrize("way", ["back", "link", "strip"])
def test_keypad_closes_with_its_entry(touched, way):
    sheet = touched()
    page = sheet.page
    sheet.go("run")
    page.get_by_label("Stroke", exact=True).tap()
    page.locator(".pad").wait_for()
    if way == "back":
        page.go_back()
    elif way == "link":
        page.evaluate("location.hash = location.hash.replace('/run/', '/settings/')")
    else:
        page.evaluate("document.querySelector('.strip a').click()")
    page.locator('.app:not([data-screen="run"])').wait_for()
    page.wait_for_timeout(200)
    assert page.locator(".pad").count() == 0
    assert page.locator(".app-pad").count() == 0
