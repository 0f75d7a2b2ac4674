"""Whole errands on a phone, with every touch counted: as many as client_pwa/README.md tells."""

import json
import re

import pytest

from client.conftest import PHONE, Sheet
from client.fingers import Fingers
from client.test_survey import INCHES
from conftest import ROOT

README = (ROOT / "client_pwa" / "README.md").read_text(encoding="utf-8")
TOLD = {name: int(now) for name, now in re.findall(r"`(test_\w+)` \| (\d+)\b", README)}
PRINTED = "window.printed = 0; window.print = () => { window.printed += 1 }"


@pytest.fixture
def phone(browser):
    """Makes phones: (Sheet, Fingers) of a touch screen of its own, on a server's address."""
    contexts = []

    def made(address):
        contexts.append(browser.new_context(viewport=PHONE, has_touch=True, is_mobile=True))
        contexts[-1].add_init_script(PRINTED)
        sheet = Sheet(contexts[-1].new_page(), address).open().ready()
        return sheet, Fingers(sheet.page)

    yield made
    for each in contexts:
        each.close()


def _stage(sheet, fingers, name):
    fingers.tap(sheet.page.get_by_role("link", name=name, exact=True).first)


def _ended(request, sheet, fingers):
    assert fingers.taps == TOLD[request.node.name]
    assert sheet.complaints == []


def test_plain_rings_for_six_millimetre_grooves_to_the_print(request, phone, served):
    sheet, fingers = phone(served)
    page = sheet.page
    fingers.tap(page.get_by_role("button", name="New job"))
    page.wait_for_selector(".plate-empty")
    fingers.enter(page.get_by_label("Bore", exact=True).first, "150")
    fingers.enter(page.get_by_label("Steam pressure", exact=True).first, "10")
    fingers.tap(page.get_by_label("Plain", exact=True))
    sheet.ready()
    row = page.locator(".choice-row", has_text="Groove width").first
    if not row.is_visible():
        fingers.tap(row.locator("xpath=ancestor::details[1]/summary"))
    fingers.tap(row)
    fingers.enter(page.get_by_label("Groove width", exact=True).first, "6")
    sheet.ready()
    # The ring fits its groove with the play that practice leaves.
    assert 5.85 < float(sheet.figure("ring_width")) < 6.0
    _stage(sheet, fingers, "Route")
    page.locator(".operation").first.wait_for()
    fingers.tap(page.get_by_role("button", name="Print the route card"))
    sheet.until("window.printed === 1")
    _ended(request, sheet, fingers)


def test_launch_engine_from_twelve_readings_to_the_bar_in_the_rack(request, phone, served):
    """A worn bore of 2 7/8 in; a bar of 3 1/2 in, a foot long, lies in the rack."""
    sheet, fingers = phone(served)
    page = sheet.page
    fingers.tap(page.get_by_role("button", name="New job"))
    page.wait_for_selector(".plate-empty")
    _stage(sheet, fingers, "Survey")
    fingers.readings(INCHES)
    page.locator("main .plate").wait_for()
    fingers.tap(page.get_by_role("button", name="Use this size"))
    _stage(sheet, fingers, "Ring")
    fingers.enter(page.get_by_label("Steam pressure", exact=True).first, "7")
    sheet.ready()
    _stage(sheet, fingers, "Stock")
    fingers.tap(page.get_by_role("button", name="Add bar"))
    bar = page.get_by_role("group", name="Bar 1")
    fingers.enter(bar.get_by_label("Diameter", exact=True), "90")
    fingers.enter(bar.get_by_label("Length", exact=True), "300")
    page.locator(".plate-words", has_text="rack").wait_for()
    # Twelve readings about 2.877 in: its ring is for no other bore.
    _stage(sheet, fingers, "Ring")
    sheet.ready()
    bore = page.get_by_label("Bore", exact=True).first.input_value()
    assert page.get_by_label("Unit of Bore").input_value() == "in"
    assert 2.8755 <= float(bore) <= 2.8785
    _ended(request, sheet, fingers)


def test_a_ring_that_came_out_weak_teaches_the_next(request, phone, served):
    sheet, fingers = phone(served)
    page = sheet.page
    _stage(sheet, fingers, "Check")
    box = page.get_by_label("Free gap", exact=True).first
    box.wait_for()
    fingers.enter(box, "5.9")
    page.locator("[data-figure=next_former_diameter] b").first.wait_for()
    sheet.until("document.querySelectorAll('main .stale').length === 0")
    next_former = sheet.figure("next_former_diameter")
    fingers.tap(page.get_by_role("button", name="Work the next ring with this relief"))
    _stage(sheet, fingers, "Tools")
    # The former of the tools is the one that the inspection named, to one digit less.
    size = "(each.textContent.match(/[\\d.]+(?= mm)/) ?? [])[0]"
    sheet.until(
        "[...document.querySelectorAll('.tool')].some(each => each.textContent.includes("
        "'Set former') && Number(%s).toFixed(2) === '%s')" % (size, next_former)
    )
    # What was measured is not lost, and one touch takes it all back.
    sheet.kept()
    _stage(sheet, fingers, "Check")
    assert page.get_by_label("Free gap", exact=True).first.input_value() == ""
    fingers.tap(page.get_by_role("button", name="Undo", exact=True).first)
    sheet.until("document.querySelector('#in-measured_free_gap').value.startsWith('5.9')")
    _ended(request, sheet, fingers)


def test_a_job_is_handed_over_with_no_network(request, phone, own_server):
    mine, fingers = phone(own_server.address)
    theirs, their_fingers = phone(own_server.address)
    for each in (mine, theirs):
        each.page.wait_for_function("() => navigator.serviceWorker.controller !== null")
        each.kept()
    own_server.stop()
    fingers.enter(mine.page.get_by_label("Bore", exact=True).first, "4 1/4")
    mine.ready().kept()
    gap = mine.figure("free_gap")
    fingers.tap(mine.page.locator(".head-job"))
    fingers.tap(mine.page.get_by_role("button", name="Link or code for Launch engine Marigold"))
    link = mine.page.get_by_label("Link", exact=True).input_value()

    # Sent by whatever carries text between two telephones; pasted is one touch.
    page = theirs.page
    their_fingers.tap(page.locator(".head-job"))
    their_fingers.tap(page.get_by_text("Take in a job from somebody"))
    page.get_by_label("Link or text").fill(link)
    their_fingers.taps += 1
    their_fingers.tap(page.get_by_role("button", name="Take it in"))
    page.get_by_text("is in the book, and open.").wait_for()
    theirs.go("ring").ready()
    assert page.get_by_label("Bore", exact=True).first.input_value() == "4 1/4"
    assert theirs.figure("free_gap") == gap
    _ended(request, theirs, their_fingers)
    assert mine.complaints == []


def test_three_engines_out_of_two_bars(request, phone, served, tmp_path):
    sheet, fingers = phone(served)
    page = sheet.page
    bars = [("long end", "110 mm", "130 mm"), ("stub", "90 mm", "160 mm")]
    rack = [{"name": name, "diameter": across, "length": long} for name, across, long in bars]
    shop = {"format": "ringwright-shop", "version": 1, "inputs": {"bars": rack}}
    page.evaluate("text => localStorage.setItem('ringwright-shop', text)", json.dumps(shop))
    jobs = [
        {"name": "Mill engine", "inputs": {"bore": "80 mm", "rings": "2", "spares": "0"}},
        {"name": "Pump engine", "inputs": {"bore": "100 mm", "ring_type": "plain", "rings": "3"}},
        {"name": "Donkey engine", "inputs": {"bore": "2 3/4 in", "rings": "2"}},
    ]
    path = tmp_path / "jobs.json"
    path.write_text(json.dumps({"format": "ringwright-job", "version": 3, "jobs": jobs}))
    page.reload()
    sheet.ready().go("book")
    page.get_by_label("Job file to bring in").set_input_files(path)
    page.locator("main .status").wait_for()
    sheet.go("stock")
    fingers.tap(page.get_by_role("link", name="Several jobs, one bar").first)
    for job in jobs:
        fingers.tap(page.get_by_label(job["name"]))
    sheet.until(
        "['Mill', 'Pump', 'Donkey'].every(n => "
        "document.querySelector('.cuts')?.textContent.includes(n + ' engine'))"
    )
    fingers.tap(page.get_by_role("button", name="Mark as cut: change the rack"))
    page.get_by_text("The rack is as it is after cutting.").wait_for()
    left = page.evaluate("JSON.parse(localStorage.getItem('ringwright-shop')).inputs.bars")
    # Both were cut into.
    assert all(float(bar["length"].split()[0]) < 130.0 for bar in left)
    _ended(request, sheet, fingers)


def test_every_errand_that_is_told_is_counted_here():
    assert set(TOLD) == {name for name in globals() if name.startswith("test_")} - {
        "test_every_errand_that_is_told_is_counted_here"
    }
