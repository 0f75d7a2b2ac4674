"""The guide inside the app: nothing of the catalogue is left out, every link leads somewhere,
no network is needed."""

import pytest

from client.conftest import FLAGS, PHONE, Sheet
from ringwright.core.calculations import CALCULATIONS
from ringwright.core.catalogue import all_figures
from ringwright.core.catalogue.checks import all_checks
from ringwright.core.catalogue.inputs_drawing import OPERATIONS

OPEN_ALL = "document.querySelectorAll('.guide details').forEach(e => { e.open = true })"
IN_VIEW = """id => {
    const box = document.getElementById(id)?.getBoundingClientRect();
    return box && box.height > 0 && box.top > -1 && box.top < innerHeight;
}"""


def _guide(sheet, topic=""):
    sheet.page.evaluate(
        "topic => { location.hash = location.hash.replace(/^#.[a-z]+.([^/]+).*/, '#/guide/$1')"
        " + (topic && '/' + topic) }",
        topic,
    )
    sheet.page.locator(".guide[data-ready=yes]").wait_for()
    return sheet.page


def _ids(page):
    return set(page.evaluate("[...document.querySelectorAll('.guide [id]')].map(e => e.id)"))


def test_every_check_figure_and_operation_has_its_entry(sheet):
    page = _guide(sheet)
    page.evaluate(OPEN_ALL)
    page.locator(".guide #figure-free_gap").wait_for()
    answers = [calculation.answer for calculation in CALCULATIONS.values()]
    wanted = {"check-" + name for name in all_checks(answers)}
    wanted |= {"figure-" + name for name in all_figures(answers)}
    wanted |= {"operation-" + name for name in OPERATIONS}
    assert wanted - _ids(page) == set()
    # An entry says more than its name.
    short = page.evaluate(
        "[...document.querySelectorAll('.guide dd')].filter(e => e.textContent.trim().length < 15)"
        ".map(e => e.parentElement.id)"
    )
    assert short == []


def test_every_link_of_the_guide_leads_somewhere(sheet):
    page = _guide(sheet)
    page.evaluate(OPEN_ALL)
    page.locator(".guide #figure-free_gap a").wait_for()
    links = page.evaluate(
        "[...document.querySelectorAll('.guide a')].map(e => e.hash.split('/').slice(1))"
    )
    assert links
    assert {link[2] for link in links if link[0] == "guide"} - _ids(page) == set()
    assert {link[0] for link in links} == {"guide"}


def test_a_finding_and_a_figure_lead_to_their_entries(sheet):
    page = sheet.page
    page.locator(".finding a").first.wait_for(state="attached")
    page.evaluate("document.querySelectorAll('details').forEach(e => { e.open = true })")
    page.locator(".finding a").first.click()
    sheet.until("location.hash.includes('/check-')")
    topic = page.evaluate("location.hash.split('/')[3]")
    page.wait_for_function(IN_VIEW, arg=topic)
    assert "Judges" in page.locator("#%s dd" % topic).inner_text()
    sheet.go("ring")
    page.locator(".plate [data-figure]").first.click()
    page.locator("dialog[open] .guide-link").click()
    sheet.until("location.hash.includes('/figure-')")
    topic = page.evaluate("location.hash.split('/')[3]")
    page.wait_for_function(IN_VIEW, arg=topic)
    assert page.locator("dialog[open]").count() == 0


def test_words_find_their_entries_as_they_are_typed(sheet):
    page = _guide(sheet)
    box = page.get_by_label("Find in the guide")
    said = page.locator(".guide-find [role=status]")
    links = page.locator(".guide-find li a")
    assert said.inner_text() == ""
    box.fill("kerf")
    assert links.first.inner_text() == "Kerf"
    assert said.inner_text() == "One entry found." and links.count() == 1
    # Each says in which part it stands; the parts themselves make room.
    assert page.locator(".guide-find li small").first.inner_text() == "Words of the trade"
    assert not page.locator(".guide > div > details").first.is_visible()
    # Of every kind, by the beginnings of several words, whatever the hyphens and capitals.
    for words, topic in (
        ("SLIT the", "operation-slit"),
        ("end gap", "check-end-gap"),
        ("free gap", "figure-free_gap"),
        ("double turn", "word-double-turn-ring"),
        ("rock the gauge", "gauge"),
    ):
        box.fill(words)
        hrefs = links.evaluate_all("all => all.map(e => e.hash.split('/')[3])")
        assert topic in hrefs, (words, hrefs)
    box.fill("gap")
    assert links.count() > 9 and said.inner_text() == "%d entries found." % links.count()
    box.fill("zzz")
    assert said.inner_text().startswith("Nothing found")
    box.press("Escape")
    assert box.input_value() == "" and page.locator(".guide > div > details").first.is_visible()
    # By keys alone: to the first that was found, and to its entry.
    box.fill("scarf")
    box.press("Enter")
    assert page.evaluate("document.activeElement.textContent") == "Scarf"
    for _ in range(2):
        page.keyboard.press("Enter")
        page.wait_for_function(IN_VIEW, arg="word-scarf")
        assert page.evaluate("document.activeElement.id") == "word-scarf"
        # The same once more, whose address is the one that is open.
        box.fill("scarf")
        box.press("Enter")
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_an_operation_leads_to_its_entry_and_back(sheet):
    page = sheet.go("route").page
    title = page.locator("#operation-slit h2 a")
    title.click()
    page.wait_for_function(IN_VIEW, arg="operation-slit")
    assert page.evaluate("location.hash.split('/')[1]") == "guide"
    page.get_by_role("link", name="Back to where you were").click()
    page.wait_for_selector('.app[data-screen="route"]')
    page.wait_for_function(IN_VIEW, arg="operation-slit")
    sheet.until("document.activeElement.textContent === %r" % title.inner_text())
    # The same from the card that is worked through, which opens where it was left.
    sheet.go("work")
    page.get_by_role("button", name="Skip").click()
    words = page.locator(".work > h2").inner_text()
    page.locator(".work > h2 a").click()
    sheet.until("location.hash.includes('/operation-')")
    topic = page.evaluate("location.hash.split('/')[3]")
    page.wait_for_function(IN_VIEW, arg=topic)
    # What is out of sight is not drawn until it comes into sight, and has no words until then.
    sheet.until("document.querySelector('#%s summary').innerText === %r" % (topic, words))
    page.get_by_role("link", name="Back to where you were").click()
    sheet.until("document.querySelector('.work > h2')?.textContent === %r" % words)


@pytest.mark.parametrize("topic", ["gaps", "operation-slit", "word-taper"])
def test_without_network_from_a_deep_link(playwright, chromium_path, own_server, tmp_path, topic):
    context = playwright.chromium.launch_persistent_context(
        str(tmp_path), executable_path=chromium_path, args=FLAGS, viewport=PHONE
    )
    sheet = Sheet(context.new_page(), own_server.address).open().ready()
    sheet.page.wait_for_function("() => navigator.serviceWorker.controller !== null")
    sheet.go("settings")
    sheet.page.get_by_text("Ready for offline use").wait_for()
    sheet.page.close()
    own_server.stop()
    again = Sheet(context.new_page(), own_server.address).open("#/guide/x/" + topic)
    page = again.page
    page.locator(".guide[data-ready=yes]").wait_for()
    page.wait_for_function(IN_VIEW, arg=topic)
    if topic != "word-taper":
        page.locator("#%s .drawn svg" % topic).first.wait_for()
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    assert again.complaints == []
    context.close()
