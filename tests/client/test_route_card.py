"""The route card at the bench: ticks that stay with their work, cautions that do not drown it."""

import pytest

pytestmark = pytest.mark.browser


def _card(sheet):
    sheet.go("route")
    sheet.page.locator(".operation").first.wait_for()


def _tick(sheet, title):
    return sheet.page.get_by_role("checkbox", name=title)


def test_a_tick_stays_with_its_work_when_the_card_changes(sheet):
    """Taking off burrs is operation 12 of a double-turn ring and 9 of a plain one."""
    _card(sheet)
    _tick(sheet, "Take off every burr").check()
    sheet.page.get_by_text("22 of 23 operations to do.").wait_for()
    before = _tick(sheet, "Take off every burr").get_attribute("aria-label")
    sheet.go("ring")
    sheet.page.get_by_label("Plain", exact=True).check()
    sheet.ready()
    _card(sheet)
    sheet.page.get_by_text("18 of 19 operations to do.").wait_for()
    assert _tick(sheet, "Take off every burr").is_checked()
    assert _tick(sheet, "Take off every burr").get_attribute("aria-label") != before
    ticked = sheet.page.locator(".operation input:checked")
    assert ticked.count() == 1


def test_a_caution_is_said_in_full_once_and_named_after_that(sheet):
    _card(sheet)
    texts = sheet.page.locator(".operation > .operation-cautions li").all_inner_texts()
    assert len(texts) == len(set(texts)) > 5
    again = sheet.page.locator(".cautions-again").nth(1)
    named = again.locator("summary").inner_text()
    assert named.startswith("Take care as before: ")
    assert not again.locator("li").first.is_visible()
    again.locator("summary").click()
    assert again.locator("li").first.is_visible()
    # None is left out: each operation says or names as many as the engine gave it.
    whole = sheet.page.locator(".operation li").count()
    assert whole > len(texts)
