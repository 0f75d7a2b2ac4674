"""What an entry takes for the unit, when it speaks up, and that everything can be taken back."""

import pytest

from client.conftest import Sheet


def _bore(sheet):
    """What the bore's entry says: number, unit, and what it comes to."""
    page = sheet.page
    return (
        page.get_by_label("Bore", exact=True).first.input_value(),
        page.get_by_label("Unit of Bore").input_value(),
    )


def _new_job(sheet):
    sheet.go("book")
    sheet.page.get_by_role("button", name="New job").click()
    sheet.page.wait_for_selector('.app[data-screen="ring"]')
    return sheet


def test_no_alarm_while_a_fraction_is_being_typed(sheet):
    """The 2 of "2 7/8" is too small a bore in millimetres; it is not what will be entered."""
    page = sheet.page
    _new_job(sheet)
    box = page.get_by_label("Bore", exact=True).first
    box.click()
    page.keyboard.type("2")
    page.wait_for_timeout(500)
    assert page.locator(".fault, .status-fault").count() == 0
    page.keyboard.type(" 7/8 in", delay=60)
    box.blur()
    sheet.ready()
    assert page.locator(".fault, .status-fault").count() == 0


def test_fault_is_said_when_the_entry_is_left_or_a_moment_has_passed(sheet):
    page = sheet.page
    box = page.get_by_label("Bore", exact=True).first
    box.click()
    page.keyboard.type("2 mm")
    page.wait_for_timeout(300)
    assert page.locator(".fault").count() == 0
    # Still in the entry: after a moment it is said all the same.
    page.locator(".fault").first.wait_for(timeout=4000)
    page.keyboard.press("Control+A")
    page.keyboard.type("80 mm")
    sheet.ready()
    page.keyboard.press("Control+A")
    page.keyboard.type("3 mm")
    box.blur()
    page.locator(".fault").first.wait_for(timeout=1000)


def test_unit_typed_once_is_not_taken_for_the_next_bare_number(sheet):
    _new_job(sheet)
    sheet.enter("Bore", "80 mm").ready()
    sheet.enter("Bore", "3 1/8 in").ready()
    assert _bore(sheet) == ("3 1/8", "in")
    sheet.enter("Bore", "82").ready()
    assert _bore(sheet) == ("82", "mm")
    # A number that can be no bore in that unit is taken in the one in which it can, and says so.
    sheet.enter("Bore", "3 1/4").ready()
    assert _bore(sheet) == ("3 1/4", "in")
    assert sheet.page.get_by_text("= 82.550 mm").count() == 1


def test_unit_chosen_from_the_list_stays(sheet):
    _new_job(sheet)
    sheet.page.get_by_label("Unit of Bore").select_option("in")
    sheet.enter("Bore", "3.25").ready()
    sheet.enter("Bore", "12").ready()
    assert _bore(sheet) == ("12", "in")


def test_new_job_begins_with_the_units_last_used(sheet):
    sheet.enter("Bore", "3 1/4 in")
    sheet.enter("Steam pressure", "90 psi").ready().kept()
    _new_job(sheet)
    page = sheet.page
    assert page.get_by_label("Unit of Bore").input_value() == "in"
    assert page.get_by_label("Unit of Steam pressure").input_value() == "psi"


def test_every_entry_can_be_taken_back(sheet):
    page = sheet.page
    undo = page.get_by_role("button", name="Undo", exact=True).first
    sheet.enter("Bore", "90 mm").ready()
    sheet.enter("Steam pressure", "6 bar").ready()
    undo.click()
    assert page.get_by_label("Steam pressure", exact=True).input_value() == "120"
    assert _bore(sheet) == ("90", "mm")
    undo.click()
    assert _bore(sheet) == ("3 1/8", "in")
    page.get_by_role("button", name="Redo", exact=True).click()
    assert _bore(sheet) == ("90", "mm")
    sheet.kept()


def test_deleted_bar_comes_back_by_undo(sheet):
    page = sheet.page
    sheet.go("stock")
    page.get_by_role("button", name="Add bar").click()
    row = page.get_by_role("group", name="Bar 1")
    row.get_by_label("Diameter", exact=True).fill("90 mm")
    row.get_by_label("Length", exact=True).fill("300 mm")
    row.get_by_label("Length", exact=True).blur()
    page.get_by_role("button", name="Take out bar 1").click()
    assert row.count() == 0
    line = page.locator(".said-line")
    assert "Bar 1" in line.inner_text()
    line.get_by_role("button", name="Undo").click()
    row.wait_for()
    assert row.get_by_label("Diameter", exact=True).input_value() == "90"
    assert row.get_by_label("Length", exact=True).input_value() == "300"


def test_bore_is_never_cut_in_its_box(browser, served):
    """A diameter of which the last digit is hidden is another diameter."""
    for theme in ("light", "sunlight"):
        for text in ("73.143 mm", "73.14325 mm", "12 63/64 in", "0.0031250000 in"):
            context = browser.new_context(viewport={"width": 360, "height": 740})
            context.add_init_script(
                "localStorage.setItem('ringwright-settings', JSON.stringify({theme: '%s'}))" % theme
            )
            sheet = Sheet(context.new_page(), served).open().ready()
            for size in (100, 200):
                sheet.page.evaluate(
                    "s => { document.documentElement.style.fontSize = s }", "%gpx" % (0.17 * size)
                )
                sheet.enter("Bore", text)
                sheet.page.wait_for_timeout(150)
                room = sheet.page.evaluate(
                    "(() => { const e = document.querySelector('#in-bore');"
                    " return [e.scrollWidth, e.clientWidth] })()"
                )
                assert room[0] <= room[1], (theme, text, size)
            context.close()


def test_no_digit_is_cut_at_any_key(sheet):
    """Few digits have room unmeasured; one more may not, nor may larger letters."""
    page = sheet.page
    room = "(() => { const e = document.querySelector('#in-bore');"
    room += " return [e.value, e.scrollWidth, e.clientWidth] })()"
    box = page.get_by_label("Bore", exact=True).first
    for size in ("17px", "21px"):
        page.evaluate("s => { document.documentElement.style.fontSize = s }", size)
        box.focus()
        box.press("Backspace")
        for at, key in enumerate("88.888888 mm"):
            box.press(key)
            page.wait_for_timeout(60)
            text, wide, within = page.evaluate(room)
            assert text == "88.888888 mm"[: at + 1]
            assert wide <= within, (text, size)
        box.blur()


@pytest.mark.parametrize("theme", ["light", "sunlight"])
def test_nothing_moves_while_figures_are_worked(browser, served, theme):
    """The broken edge of old figures takes no room: at each key the page below would jump."""
    context = browser.new_context(viewport={"width": 360, "height": 740})
    context.add_init_script(
        "localStorage.setItem('ringwright-settings', JSON.stringify({theme: '%s'}))" % theme
    )
    sheet = Sheet(context.new_page(), served).open().ready()
    old, new, edge = sheet.page.evaluate(
        "(() => { const plate = document.querySelector('.plate');"
        " const below = document.querySelector('#findings');"
        " const top = () => [below, plate.lastElementChild].map("
        "e => e.getBoundingClientRect().top);"
        " const before = top(); plate.classList.add('stale');"
        " return [before, top(), getComputedStyle(plate).outlineStyle] })()"
    )
    assert old == new
    assert edge == "dashed"
    context.close()


def test_stock_names_the_bar_that_the_cut_list_cuts(sheet):
    page = sheet.page
    sheet.go("stock")
    page.get_by_role("button", name="Add bar").click()
    row = page.get_by_role("group", name="Bar 1")
    row.get_by_label("Name", exact=True).fill("long end")
    for label, text in (("Diameter", "90 mm"), ("Length", "400 mm")):
        row.get_by_label(label, exact=True).fill(text)
        row.get_by_label(label, exact=True).blur()
    page.locator(".cuts li", has_text="long end").first.wait_for()
    assert "in the rack" in page.locator(".cuts > li").first.inner_text()
    head = page.get_by_role("region", name="The bar", exact=True).inner_text()
    assert "From the rack: long end" in head
    assert "3 1/4 in" not in head


def test_a_number_that_is_mended_keeps_its_unit(sheet):
    """In a job in inches 80 mm with a digit put to it was 80.1 in, refused while it was typed."""
    page = sheet.page
    assert _bore(sheet)[1] == "in"
    sheet.enter("Bore", "80 mm").ready()
    page.get_by_label("Bore", exact=True).click()
    page.keyboard.press("End")
    page.keyboard.type(".25")
    sheet.ready()
    assert _bore(sheet) == ("80.25", "mm")
    for _ in range(5):
        page.keyboard.press("Backspace")
    # Emptied, it is another number, and taken in the unit in which it can be a bore.
    page.keyboard.type("3 1/4")
    page.keyboard.press("Enter")
    sheet.ready()
    assert _bore(sheet) == ("3 1/4", "in")


def test_what_is_taken_stands_in_the_unit_of_its_entry(sheet):
    """0.005 N/mm2 stood in an empty entry of bar: a tenth of what is taken.

    What stands there, typed in, must change no figure by more than its own digits allow.
    """
    page = sheet.go("expander").page
    sheet.until("document.querySelector('.plate[data-state=ready], .plate:not([data-state])')")
    pressure = page.locator("[data-figure=total_wall_pressure] b").first
    pressure.wait_for()
    before = float(pressure.inner_text())
    for label, units in (
        ("Expander pressure", ("bar", "psi", "MPa")),
        ("Radial thickness", ("in",)),
    ):
        box = page.get_by_label(label, exact=True)
        for unit in units:
            page.get_by_label("Unit of " + label).select_option(unit)
            sheet.enter(label, box.get_attribute("placeholder")).kept()
            page.wait_for_timeout(400)
            assert float(pressure.inner_text()) == pytest.approx(before, rel=0.04), (label, unit)
            sheet.enter(label, "").kept()


def test_job_entered_in_inches_gets_inch_sizes_however_it_is_shown(sheet):
    """3/32 x 3/16 in for 3 1/8 in; the same bore in millimetres gets a width in millimetres."""
    _new_job(sheet)
    sheet.enter("Bore", "3 1/8 in").ready()
    assert sheet.figure("ring_width") == "4.76"
    sheet.page.get_by_role("button", name="press for inch").click()
    sheet.ready()
    assert float(sheet.figure("ring_width")) == pytest.approx(3 / 16, abs=6e-4)
    assert float(sheet.figure("radial_thickness")) == pytest.approx(3 / 32, abs=6e-4)
    sheet.enter("Bore", "79.375 mm").ready()
    sheet.page.get_by_role("button", name="press for metric").click()
    sheet.ready()
    assert sheet.figure("ring_width") == "4.75"
