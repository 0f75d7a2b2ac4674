"""A remedy that was tried is one touch: its entries stand on the sheet, the finding is gone, and
undo brings all of it back."""

import json

import pytest

from client.conftest import PHONE, Sheet

# Iron at 170.4 degC in a stone-cold cylinder with 0.04 mm left wants a gap of
# pi d 11.7e-6 150.4 + 0.04: 0.482 mm in 80 mm, and 0.478 mm in 3 1/8 in, up to 0.0189 in.
HEIGHTS = ("10", "40", "70")
GAUGED = [("0", 80.0), ("90", 80.02)]


def _readings(unit, per_mm, places):
    return [
        {
            "height": "%.*f %s" % (places, float(height) * per_mm, unit),
            "direction": direction,
            "diameter": "%.*f %s" % (places, across * per_mm, unit),
        }
        for height in HEIGHTS
        for direction, across in GAUGED
    ]


SURVEY = {
    "metric": _readings("mm", 1.0, 2),
    "inch": _readings("in", 1 / 25.4, 4),
}
RUNNING = {"speed": "150", "stroke": "80 mm", "bore": "80 mm", "side_clearance": "0 mm"}
RUNNING_INCH = {"speed": "150", "stroke": "4 in", "bore": "3 1/8 in", "side_clearance": "0 in"}
SAWN = {"bore": "80 mm", "end_cut": "angled-45", "radial_thickness": "5 mm"}
# A bridge holds both end cuts: bands of (4.8 + 1.0)/2 + 0.25 mm, cut at 45 degrees, want 6.30 mm,
# and the button says a hundredth more.
# Screen, inputs, check, how the button's words end (None: an entry is left out).
CASES = {
    "metric": [
        ("ring", {"bore": "80 mm", "closed_gap": "0.1 mm"}, "end-gap", "gap to 0.482 mm"),
        ("ring", {"bore": "80 mm", "ring_width": "2 mm"}, "grip", None),
        ("ring", SAWN, "sawn-open", "ends cut to square"),
        ("tools", {"bore": "80 mm", "bridge_length": "2 mm"}, "bridge", "length to 6.31 mm"),
        ("survey", {"readings": SURVEY["metric"], "closed_gap": "0.1 mm"}, "gap-breathes", "mm"),
        ("run", RUNNING, "side-clearance", "mm"),
    ],
    "inch": [
        ("ring", {"bore": "3 1/8 in", "closed_gap": "0.004 in"}, "end-gap", "gap to 0.0189 in"),
        ("tools", {"bore": "3 1/8 in", "shelf_pot": "3.1 in"}, "pot", "pot to 3.1563 in"),
        ("survey", {"readings": SURVEY["inch"], "closed_gap": "4 thou"}, "gap-breathes", "thou"),
        ("run", RUNNING_INCH, "side-clearance", " in"),
    ],
}
FINDING = ".finding:has(a[href*='/check-%s'])"


def _words(case):
    return "Finding %s on %s, %s" % (case[2], case[0], case[3])


def _brought_in(browser, served, system, tmp_path):
    context = browser.new_context(viewport=PHONE)
    context.add_init_script(
        "localStorage.setItem('ringwright-settings', JSON.stringify({system: '%s'}))" % system
    )
    sheet = Sheet(context.new_page(), served).open().ready()
    jobs = [{"name": _words(case), "inputs": case[1]} for case in CASES[system]]
    path = tmp_path / "jobs.json"
    path.write_text(json.dumps({"format": "ringwright-job", "version": 3, "jobs": jobs}))
    sheet.go("book").page.get_by_label("Job file to bring in").set_input_files(path)
    sheet.page.get_by_role("button", name=_words(CASES[system][0])).first.wait_for()
    return context, sheet


@pytest.mark.parametrize("system", list(CASES))
def test_the_finding_is_gone_and_comes_back(browser, served, system, tmp_path):
    context, sheet = _brought_in(browser, served, system, tmp_path)
    page = sheet.page
    for case in CASES[system]:
        screen, _, check, said = case
        sheet.go("book")
        page.get_by_role("button", name=_words(case)).first.click()
        sheet.until("document.querySelector('.head-names b').textContent === '%s'" % _words(case))
        sheet.go(screen)
        finding = page.locator(FINDING % check).first
        button = finding.locator(".finding-take")
        button.wait_for()
        words = button.inner_text()
        if said is None:
            assert words.startswith("Let ") and words.endswith(" be chosen"), words
        else:
            assert words.startswith("Set ") and words.endswith(said), words
        assert "_" not in words
        assert button.bounding_box()["height"] >= 48
        before = page.locator(".findings-sum").first.inner_text()
        button.click()
        gone = "![...document.querySelectorAll('.finding:not(.finding-good) a')].some(e => "
        gone += "e.hash.endsWith('/check-%s')) && !document.querySelector('main .stale')" % check
        sheet.until(gone + " && document.querySelector('.findings-sum')")
        assert page.locator(".said", has_text="done").count() == 1
        # The eye stays with the checks, and one step brings back what was.
        assert page.evaluate("document.activeElement.tagName") == "H2"
        page.get_by_role("button", name="Undo", exact=True).first.click()
        button.wait_for()
        assert button.inner_text() == words
        assert page.locator(".findings-sum").first.inner_text() == before
    assert sheet.complaints == []
    context.close()


def test_what_the_shop_gave_has_no_button_that_leaves_it_out(browser, served):
    """The saw of the shop is 9.5 mm: leaving it out of the job changes nothing."""
    context = browser.new_context(viewport=PHONE)
    shop = {"format": "ringwright-shop", "version": 1, "inputs": {"end_kerf": "9.5 mm"}}
    context.add_init_script(
        "localStorage.setItem('ringwright-shop', %s)" % json.dumps(json.dumps(shop))
    )
    sheet = Sheet(context.new_page(), served).open().ready()
    finding = sheet.page.locator(FINDING % "sawn-open").first
    finding.wait_for()
    assert "out" in finding.locator(".finding-remedy").inner_text()
    assert finding.locator(".finding-take").count() == 0
    context.close()
