"""My shop: said once for all jobs; several jobs out of the bars in the rack."""

import json

from client.conftest import PHONE, Sheet
from conftest import Server

SHOP = {
    "format": "ringwright-shop",
    "version": 1,
    "name": "Fernhollow Steam Club",
    "lathes": [
        {"name": "bench", "machine": "light", "spindle_speeds": ["70", "150", "320"]},
        {"name": "long bed", "machine": "rigid", "tool_material": "carbide"},
    ],
    "lathe": 1,
    "shelf": {"shelf_former": ["77 mm"]},
    "inputs": {
        "end_kerf": "0.7 mm",
        "bars": [
            {"name": "long end", "diameter": "110 mm", "length": "130 mm"},
            {"name": "stub", "diameter": "90 mm", "length": "160 mm"},
        ],
    },
}


def _bring_in(sheet, tmp_path, shop=SHOP):
    path = tmp_path / "shop.json"
    path.write_text(json.dumps(shop), encoding="utf-8")
    sheet.go("shop")
    sheet.page.get_by_label("Shop file to bring in").set_input_files(path)
    sheet.page.get_by_text("Taken over from the file.").wait_for()
    return sheet


def _jobs(sheet, tmp_path, *jobs):
    path = tmp_path / "jobs.json"
    listed = [{"name": name, "inputs": inputs} for name, inputs in jobs]
    path.write_text(json.dumps({"format": "ringwright-job", "version": 3, "jobs": listed}))
    sheet.go("book")
    sheet.page.get_by_label("Job file to bring in").set_input_files(path)
    sheet.page.locator("main .status").wait_for()
    return sheet


def test_price_of_the_metal_costs_the_bar(sheet, tmp_path):
    priced = {"material": "grey-iron", "price": "6"}
    shop = dict(SHOP, inputs={"metal_prices": [priced]})
    page = _bring_in(sheet, tmp_path, shop).page
    page.get_by_label("Price of each metal").first.wait_for()
    sheet.go("stock")
    page.locator("[data-figure=cost]").first.wait_for(state="attached")
    mass = float(page.locator("[data-figure=mass] b").first.inner_text())
    cost = float(page.locator("[data-figure=cost] b").first.text_content())
    # Both are rounded for the screen.
    assert abs(cost - 6 * mass) < 0.02 * cost


def test_what_the_shop_has_goes_into_every_job(sheet, tmp_path):
    page = _bring_in(sheet, tmp_path).page
    sheet.go("route")
    page.locator(".operation").first.wait_for()
    kerf = page.locator(".operation", has_text="Saw one end in each band")
    sheet.until(
        "[...document.querySelectorAll('.operation')].some(e => e.textContent.includes('Saw one')"
        " && e.textContent.includes('0.700'))"
    )
    assert "0.700" in kerf.inner_text()
    # It is said to come from the shop, and a job may say otherwise.
    page.locator(".choices > summary").first.click()
    machine = page.locator(".choice", has_text="Machine")
    assert "my shop" in machine.inner_text()
    assert "Rigid" in machine.inner_text()
    page.reload()
    page.locator(".operation").first.wait_for()
    sheet.until("document.querySelector('.choices').textContent.includes('my shop')")


def test_shop_goes_out_as_a_file_and_comes_back(sheet, tmp_path):
    page = _bring_in(sheet, tmp_path).page
    with page.expect_download() as waiting:
        page.get_by_role("button", name="Save my shop as a file").click()
    saved = json.loads(waiting.value.path().read_text(encoding="utf-8"))
    assert saved["lathes"] == SHOP["lathes"]
    assert saved["inputs"] == SHOP["inputs"]
    page.get_by_role("button", name="Take out bar 1").click()
    line = page.locator(".said-line")
    assert "Bar 1" in line.inner_text()
    line.get_by_role("button", name="Undo").click()
    sheet.until("document.querySelectorAll('[role=group][aria-label^=\"Bar\"]').length === 2")


def test_bad_shop_file_changes_nothing(sheet, tmp_path):
    page = _bring_in(sheet, tmp_path).page
    path = tmp_path / "bad.json"
    path.write_text('{"format": "ringwright-shop", "version": 1, "inputs": {"bad name": {}}}')
    page.get_by_label("Shop file to bring in").set_input_files(path)
    page.locator("main .status").wait_for()
    assert "Your shop is as it was" in page.locator("main .status").inner_text()
    assert page.get_by_label("Workshop or club").input_value() == "Fernhollow Steam Club"


def test_phone_takes_over_the_clubs_shop_when_asked(browser, tmp_path, monkeypatch):
    path = tmp_path / "club.json"
    path.write_text(json.dumps(SHOP), encoding="utf-8")
    monkeypatch.setenv("RINGWRIGHT_SHOP_PROFILE", str(path))
    running = Server(workers=1)
    context = browser.new_context(viewport=PHONE)
    try:
        sheet = Sheet(context.new_page(), running.address).open().ready()
        page = sheet.go("shop").page
        assert page.get_by_label("Workshop or club").input_value() == ""
        page.get_by_role("button", name="Take over the club's shop").click()
        page.get_by_text("Taken over from the service.").wait_for()
        assert page.get_by_label("Workshop or club").input_value() == "Fernhollow Steam Club"
    finally:
        context.close()
        running.stop()


def test_service_without_a_shop_says_so(context, served):
    sheet = Sheet(context.new_page(), served).open().ready()
    sheet.go("shop").page.get_by_role("button", name="Take over the club's shop").click()
    sheet.page.get_by_text("offers no shop of a club").wait_for()


def test_three_engines_out_of_two_bars(sheet, tmp_path):
    """Pick the jobs, see the cut list, mark it as cut: the rack is what is left."""
    page = _bring_in(sheet, tmp_path).page
    _jobs(
        sheet,
        tmp_path,
        ("Mill engine", {"bore": "80 mm", "rings": "2", "spares": "0"}),
        ("Pump engine", {"bore": "100 mm", "ring_type": "plain", "rings": "3"}),
        ("Donkey engine", {"bore": "2 3/4 in", "rings": "2"}),
        ("Unfinished", {"stroke": "90 mm"}),
    )
    sheet.go("cut")
    taps = 0
    for name in ("Mill engine", "Pump engine", "Donkey engine"):
        page.get_by_label(name).check()
        taps += 1
    sheet.until("document.querySelectorAll('.cuts > li').length >= 2")
    sheet.until(
        "['Mill', 'Pump', 'Donkey'].every(n => "
        "document.querySelector('.cuts').textContent.includes(n + ' engine'))"
    )
    text = page.locator(".cuts").inner_text()
    assert "long end: in the rack" in text
    assert "stub: in the rack" in text
    page.get_by_role("button", name="Mark as cut: change the rack").click()
    taps += 1
    assert taps <= 5
    page.get_by_text("The rack is as it is after cutting.").wait_for()
    sheet.go("shop")
    lengths = page.eval_on_selector_all(
        "[id^=in-bars-][id$=-length]", "all => all.map(e => parseFloat(e.value))"
    )
    # Both are cut into: what is left of each is shorter.
    assert 1 <= len(lengths) <= 2
    assert all(length < 130 for length in lengths)
    page.locator(".said-line").get_by_role("button", name="Undo").click()
    sheet.until(
        "[...document.querySelectorAll('[id^=in-bars-][id$=-length]')]"
        ".map(e => e.value).join() === '130,160'"
    )


def test_a_count_is_told_in_its_sentence_and_not_by_itself(sheet, tmp_path):
    """It said "Now 3" below a sentence that says how many blanks the bars run short."""
    _bring_in(sheet, tmp_path)
    _jobs(sheet, tmp_path, ("Tall engine", {"bore": "6 in", "rings": "3", "spares": "0"}))
    page = sheet.go("cut").page
    page.get_by_label("Tall engine").check()
    words = page.locator(".finding-watch", has_text="The bars at hand run out")
    words.wait_for()
    assert words.locator(".finding-numbers").count() == 0


def test_job_that_cannot_be_cut_says_why(sheet, tmp_path):
    page = _bring_in(sheet, tmp_path).page
    _jobs(sheet, tmp_path, ("Unfinished", {"stroke": "90 mm"}))
    sheet.go("cut").page.get_by_label("Unfinished").check()
    words = page.locator("main .status")
    words.wait_for()
    assert "Unfinished cannot be cut yet" in words.inner_text()
    assert "_" not in words.inner_text()


def test_tool_on_the_shelf_that_comes_near_is_offered(sheet, tmp_path):
    page = _bring_in(sheet, tmp_path).page
    sheet.go("tools")
    former = page.locator(".tool", has_text="former").first
    former.locator(".shelf").wait_for()
    assert "one of 77 mm comes near" in former.inner_text()
    former.get_by_role("button", name="Use it for this job").click()
    sheet.until("document.querySelector('.shelf').textContent.includes('Worked for the one of 77')")
    sheet.until(
        "[...document.querySelectorAll('.tool .sizes-value')]"
        ".some(e => e.textContent.includes('77.0'))"
    )
    # It is this job's: the next one is worked afresh.
    page.locator(".head-undo").click()
    sheet.until("document.querySelector('.shelf').textContent.includes('comes near')")


# 3/16 and 3/32 in for 3 1/8 in, by the rule of inch sizes (tests/core/test_shop_sizes.py) [mm].
INCH_WIDTH = 25.4 * 3 / 16
IN_INCHES = dict(SHOP, inputs={"inch_sizes": True})


def _sizes(sheet):
    page = sheet.go("ring").ready().page
    page.locator("[data-figure=ring_width]").first.wait_for()
    return float(sheet.figure("ring_width"))


def test_shop_in_inches_begins_every_new_job_so_and_leaves_the_others(sheet, tmp_path):
    """A bore written in millimetres too; a job that was kept before keeps its sizes."""
    page = sheet.page
    metric = {"bore": "79.375 mm", "steam_pressure": "120 psi"}
    _jobs(sheet, tmp_path, ("Before", metric))
    _bring_in(sheet, tmp_path, IN_INCHES)
    assert page.get_by_label("Inch sizes", exact=True).is_checked()
    sheet.go("book")
    page.locator(".job-open-button", has_text="Before").click()
    sheet.until("document.querySelector('.head-names b').textContent === 'Before'")
    kept = _sizes(sheet)
    assert abs(kept - INCH_WIDTH) > 0.005
    sheet.go("book").page.get_by_role("button", name="New job").first.click()
    sheet.until("document.querySelector('.head-names b').textContent !== 'Before'")
    sheet.go("ring").enter("Bore", metric["bore"]).ready()
    sheet.enter("Steam pressure", metric["steam_pressure"]).ready()
    assert abs(_sizes(sheet) - INCH_WIDTH) < 0.006


def test_job_in_inches_from_before_is_offered_inch_sizes(sheet, tmp_path):
    page = sheet.page
    _jobs(sheet, tmp_path, ("Taken", {"bore": "3 1/8 in"}), ("Left", {"bore": "3 1/8 in"}))
    offer = page.get_by_text("This job is in inches, its sizes are in millimetres.")
    for name, button, inch in (("Taken", "Take inch sizes", True), ("Left", "Keep them", False)):
        sheet.go("book").page.locator(".job-open-button", has_text=name).click()
        sheet.until("document.querySelector('.head-names b').textContent === '%s'" % name)
        before = _sizes(sheet)
        assert abs(before - INCH_WIDTH) > 0.005
        offer.wait_for()
        page.get_by_role("button", name=button).click()
        offer.wait_for(state="hidden")
        sheet.until(
            "(Math.abs(%s - parseFloat(document.querySelector('[data-figure=ring_width] b')"
            ".textContent)) < 0.006) === %s" % (INCH_WIDTH, str(inch).lower())
        )
    # What was answered once is not asked again.
    sheet.kept()
    page.reload()
    _sizes(sheet)
    assert not offer.is_visible()
