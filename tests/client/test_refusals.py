"""A number out of range is refused in the unit it was typed in; another is offered at a touch."""

import pytest

pytestmark = pytest.mark.browser


def said(sheet):
    words = sheet.page.locator(".entry-faulty .fault")
    words.wait_for()
    return words.inner_text()


def test_limits_are_told_in_the_unit_that_was_typed(sheet):
    sheet.enter("Bore", "99999 in")
    assert "Bore is 99999 in. Give 0.394 to 35.4 in." in said(sheet)
    assert sheet.page.locator(".fault-offer").count() == 0


def test_a_fraction_in_millimetres_is_asked_about_and_mended_at_a_touch(sheet):
    sheet.enter("Bore", "2 7/8 mm")
    assert "did you mean 2 7/8 in?" in said(sheet)
    button = sheet.page.get_by_role("button", name="Make it 2 7/8 in")
    assert button.bounding_box()["height"] >= 48
    button.click()
    sheet.page.locator(".fault").wait_for(state="detached")
    sheet.ready()
    assert sheet.page.get_by_label("Bore", exact=True).input_value() == "2 7/8"
    assert sheet.page.get_by_label("Unit of Bore", exact=True).input_value() == "in"


def test_a_number_beyond_measure_is_no_default(sheet):
    """1e308 in was sent as null, and the steam's default taken without a word."""
    sheet.enter("Steam pressure", "1e308 bar")
    sheet.page.locator(".fault").first.wait_for()
    sheet.enter("Bore", "1e308 in")
    sheet.page.locator(".entry-faulty", has_text="Bore").locator(".fault").wait_for()


def test_what_cannot_be_read_is_told_in_the_unit_of_its_entry(sheet):
    """It asked for millimetres beside a box in inches."""
    sheet.page.locator(".head-units").click()
    sheet.enter("Bore", "eighty")
    words = sheet.page.locator(".fault").first.inner_text()
    assert sheet.page.get_by_label("Unit of Bore").input_value() == "in"
    assert "Give a number in inches," in words, words
    sheet.page.locator(".head-units").click()
    sheet.page.get_by_text("Give a number in mm,").wait_for()
