"""Heat without a pyrometer on a phone: every tell-tale in a table, and the remedy at one touch."""

from client.conftest import PHONE

NO_WIDER = "document.documentElement.scrollWidth <= innerWidth"


def test_tell_tales_stand_in_tables_and_a_touch_makes_it_sure(sheet):
    assert PHONE["width"] == 360
    page = sheet.go("soak").page
    tables = {
        name: page.get_by_label(name, exact=True)
        for name in ("Short and long", "What a first ring tells", "Every tell-tale")
    }
    for table in tables.values():
        table.wait_for()
    told = tables["Every tell-tale"].inner_text()
    assert "very dark red in shade" in told and "593 to 704" in told
    assert tables["What a first ring tells"].locator("tbody tr").count() == 8
    assert page.evaluate(NO_WIDER)
    # Said once where findings in a row share it, with the first of them.
    hot = page.locator(".finding:has(a[href*='/check-soak-hot'])").first
    assert "as above" in hot.inner_text()
    page.locator(".finding-take").first.click()
    gone = "!document.querySelector(\".finding:not(.finding-good) a[href*='/check-soak-hot']\")"
    sheet.until(gone)
    assert page.locator("#in-tell_tale").input_value() == "thermocouple"
