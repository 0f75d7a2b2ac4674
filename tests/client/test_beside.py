"""What is no stage of the ring's job: the piston valve and the reference tables."""

import math
import re
import unicodedata

import pytest

from ringwright.core.properties.materials import PAIRINGS
from ringwright.core.reference import calculate_methods
from ringwright.core.running.sealings import calculate_sealings

VALVE = (("Liner bore", "60 mm"), ("Port width", "8 mm"), ("Bridge bars", "6"))


def letters_written(formula):
    """Letters and digits of a formula as the core writes it; a root and an integral are signs."""
    text = re.sub(r"(\d)e(-?\d)", r"\1 10 \2", re.sub(r"sqrt|integral", "", formula))
    return sorted(re.sub(r"[^A-Za-z0-9]", "", text))


def letters_set(shown):
    """The same of a formula as it is shown."""
    for letter in set(re.findall("[\u03b1-\u03c9]", shown)):
        shown = shown.replace(letter, unicodedata.name(letter).split()[-1].lower())
    return sorted(re.sub(r"[^A-Za-z0-9]", "", shown))


@pytest.fixture
def valve(sheet):
    """The screen of the valve with a liner of 60 mm, six bars of 5 mm and a port of 8 mm."""
    sheet.page.locator(".beside a", has_text="Piston valve").click()
    for label, text in (*VALVE, ("Bridge bar width", "5 mm")):
        sheet.enter(label, text)
    # Geometry: six openings share what six bars of 5 mm leave of the circumference.
    sheet.opening = "%.2f" % (math.pi * 60.0 / 6 - 5.0)
    sheet.until(
        "document.querySelector('[data-figure=opening] b')?.textContent === '%s'" % sheet.opening
    )
    return sheet


def test_bore_of_the_valve_is_not_the_bore_of_the_job(valve):
    valve.kept().page.reload()
    valve.until(
        "document.querySelector('[data-figure=opening] b')?.textContent === '%s'" % valve.opening
    )
    assert valve.page.get_by_label("Liner bore", exact=True).input_value() == "60"
    valve.go("ring").ready()
    assert valve.page.get_by_label("Bore", exact=True).input_value() == "3 1/8"
    # The steam is the engine's, whichever screen it is entered on.
    valve.go("valve").enter("Steam pressure", "90 psi").go("ring").ready()
    assert valve.page.get_by_label("Steam pressure", exact=True).input_value() == "90"


def test_valve_with_nothing_entered_asks_for_what_it_needs(sheet):
    sheet.page.get_by_role("button", name="New job").click()
    sheet.until("document.querySelector('.head-names b').textContent.startsWith('Job of ')")
    sheet.go("valve")
    words = sheet.page.locator("main .status")
    words.wait_for()
    assert "Enter the liner bore and the port width" in words.inner_text()


def test_wrong_entry_of_the_valve_is_said_at_its_place(valve):
    valve.enter("Bridge bar width", "32 mm")
    fault = valve.page.locator(".entry-faulty .fault")
    fault.wait_for()
    assert "leave no port" in fault.inner_text()
    assert valve.page.locator(".entry-faulty label").inner_text() == "Bridge bar width"


def test_pin_is_shown_where_it_holds_the_joint(valve):
    picture = valve.page.locator("figure", has_text="The liner laid flat")
    assert "Nothing keeps the joint on a bar" in picture.inner_text()
    valve.page.get_by_label("A pin keeps the joint on a bar").check()
    picture.get_by_text("The pin keeps the joint on a bar").wait_for()
    assert valve.opening + " mm" in picture.inner_text()


def test_tables_show_every_pairing_sealing_and_formula(sheet):
    page = sheet.page
    page.locator(".beside a", has_text="Reference tables").click()
    table = page.get_by_role("table", name="Outcome by metal of cylinder and ring")
    table.wait_for()
    rings = ["iron", "bronze", "plastic"]
    cells = table.locator("td").all_inner_texts()
    told = {
        (ring, cylinder): cells[3 * row + column].strip().lower()
        for row, cylinder in enumerate(["iron", "bronze", "steel", "aluminium"])
        for column, ring in enumerate(rings)
    }
    assert told == {pair: outcome for pair, (outcome, _, _) in PAIRINGS.items()}
    page.locator("summary", has_text="Other ways to seal a piston").click()
    titles = [each["title"] for each in calculate_sealings({})["sealings"]]
    page.get_by_text(titles[-1], exact=True).wait_for()
    assert page.locator(".sealings h3").all_inner_texts() == titles
    page.locator("summary", has_text="Formulas and sources").click()
    formulas = page.locator("details", has_text="Formulas and sources").locator(".formula")
    sheet.until("document.querySelectorAll('.formula').length > 0")
    # Each is set as a formula, with every letter and digit; their order the app's own tests read.
    worked = [each["formula"] for each in calculate_methods({})["methods"]]
    said = zip(formulas.all_text_contents(), worked, strict=True)
    assert [(letters_set(seen), one) for seen, one in said] == [
        (letters_written(one), one) for one in worked
    ]
    assert formulas.locator("math").count() >= len(worked)


def test_property_of_a_material_stands_with_its_source(sheet):
    page = sheet.go("tables").page
    page.locator("summary", has_text="Materials").click()
    page.locator("summary", has_text="Mild steel").click()
    row = page.get_by_role("table", name="Properties of Mild steel").locator(
        "tr", has_text="Expansion by heat"
    )
    assert "millionths per" in row.locator("td").inner_text()
    sheet.until(
        "/from memory|read in a copy/.test(document.querySelector('details small').textContent)"
    )
    assert row.locator("small").inner_text().strip()
