"""Nothing is asked or said twice, and all of it can be read.

One tool for all rings, one remedy for what it mends, what is to be watched before the verdict.
"""

import re

from client.book import packed
from client.conftest import Sheet

JOB = {"bore": "3.1263 in", "steam_pressure": "120 psi", "rings": "3", "inch_sizes": True}


def _opened(sheet, screen, inputs=JOB, measured=None):
    job = {"name": "Three rings", "inputs": inputs, "measured": measured or {}}
    link = packed({"format": "ringwright-job", "version": 3, "job": job})
    sheet.page.evaluate("hash => { location.hash = hash }", "#%s/s/%s" % (screen, link))
    sheet.page.get_by_text("Three rings").first.wait_for(state="attached")
    return sheet.page


def test_a_former_is_measured_once_for_all_rings(sheet):
    page = _opened(sheet, "work")
    title = page.locator(".work h2")
    skip = page.get_by_role("button", name="Skip")
    title.wait_for()
    while title.inner_text() != "Spring the ring on to the former":
        before = title.inner_text()
        skip.click()
        sheet.until("document.querySelector('.work h2').textContent !== '%s'" % before)
    box = page.get_by_role("textbox", name="Measured former")
    box.fill("76.7 mm")
    box.blur()
    page.locator(".work-size .work-verdict").wait_for()
    page.get_by_role("button", name="Ring 2").click()
    assert box.input_value() == ""
    assert box.get_attribute("placeholder") == "76.7 mm"
    assert "former" not in page.locator(".work-verdict.work-ring").inner_text().lower()
    assert page.locator(".work-size .work-verdict").count() == 1
    sheet.go("route")
    row = page.locator("#operation-put-on-former .sizes tbody th")
    row.first.wait_for()
    sheet.until("document.querySelector('.operations:not(.stale)')")
    assert row.all_inner_texts() == ["former"]


def test_a_remedy_is_said_once_for_all_sizes_that_it_mends(sheet):
    measured = {
        "route/bore/bored_inside_diameter": "75 mm",
        "route/turn-rough/rough_outside_diameter": "80.9 mm",
    }
    page = _opened(sheet, "route", measured=measured)
    out = page.locator(".finding", has_text="its limit")
    out.nth(1).wait_for()
    said = [re.sub(r"\s+", " ", each) for each in page.locator(".finding-remedy").all_inner_texts()]
    long = [each for each in said if each != "Do: as above."]
    assert out.count() == 2
    assert len(set(long)) == len(long) < len(said)


def test_what_is_to_be_watched_stands_before_the_verdict(sheet):
    page = _opened(sheet, "check", {**JOB, "measured_free_gap": "6.4 mm"})
    verdict = page.locator(".plate-words")
    verdict.wait_for()
    watch = page.locator(".finding-watch").first
    watch.wait_for()
    assert watch.bounding_box()["y"] < verdict.bounding_box()["y"]
    assert verdict.inner_text() == "Accept the ring: 1 to watch."


def test_a_gauged_bore_keeps_its_digits(sheet):
    """3.1263 in, by 25.4 mm to the inch 79.408 mm: on card and work screen and in its picture."""
    page = _opened(sheet, "work")
    assert page.locator(".work-value b").first.inner_text() == "79.408"
    page.locator(".work .drawn svg").wait_for()
    assert "79.408" in page.locator(".work .drawn svg").inner_html()
    sheet.go("route")
    assert page.locator("#operation-survey .sizes-value b").first.inner_text() == "79.408"


def test_what_a_size_is_called_has_the_room_that_its_figures_leave(context, served):
    """And no table runs out of its card, nor is what was measured cut, in the heaviest letters."""
    context.add_init_script(
        "localStorage.setItem('ringwright-settings', '{\"theme\": \"sunlight\"}')"
    )
    sheet = Sheet(context.new_page(), served).open().ready()
    page = _opened(sheet, "route", measured={"route/put-on-former/former_diameter": "76.7 mm"})
    page.locator(".sizes").first.wait_for()
    wrong = page.evaluate(
        """() => [...document.querySelectorAll('.sizes')].flatMap(table => {
            const cells = [...table.querySelectorAll('.sizes-value')];
            const range = document.createRange();
            const wide = Math.max(...cells.map(cell => {
                range.selectNodeContents(cell);
                return range.getBoundingClientRect().width;
            }));
            const spare = cells[0].clientWidth - wide;
            const over = table.scrollWidth - table.parentElement.clientWidth;
            const cut = [...table.querySelectorAll('input')]
                .filter(box => box.scrollWidth > box.clientWidth).map(box => box.value);
            const good = spare <= 24 && over <= 0 && cut.length === 0;
            return good ? [] : [[table.innerText, spare, over, cut]];
        })"""
    )
    assert wrong == []
