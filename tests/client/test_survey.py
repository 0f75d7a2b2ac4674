"""The survey of the bore as it is done: gauge in one hand, phone in the other."""

import pytest

from client.conftest import Sheet
from client.fingers import Fingers

# A worn bore as a bore gauge would read it, in inches: three heights, four directions.
INCHES = [
    ["2.8755", "2.8760", "2.8765", "2.8760"],
    ["2.8770", "2.8775", "2.8785", "2.8775"],
    ["2.8760", "2.8760", "2.8770", "2.8765"],
]


def _new_job(sheet):
    sheet.go("book")
    sheet.page.get_by_role("button", name="New job").click()
    sheet.page.wait_for_selector('.app[data-screen="ring"]')
    return sheet


def _cells(sheet):
    return sheet.page.locator(".grid-cell")


def _readings(sheet):
    """What the job holds, as saved."""
    sheet.kept()
    return sheet.page.evaluate(
        """() => new Promise(resolve => {
            const asked = indexedDB.open('ringwright-book');
            asked.onsuccess = () => {
                const got = asked.result.transaction('jobs').objectStore('jobs').getAll();
                got.onsuccess = () => { asked.result.close(); resolve(got.result.map(e => e.job)
                    .sort((a, b) => b.changed - a.changed)[0].inputs.readings) };
            };
        })"""
    )


def test_survey_comes_first_and_needs_no_bore(sheet):
    """A new job whose bore nobody knows yet: the readings alone give figures."""
    _new_job(sheet).go("survey")
    page = sheet.page
    _cells(sheet).first.click()
    for text in ("80.00", "80.01", "80.02", "80.01", "80.02", "80.03"):
        page.keyboard.type(text)
        page.keyboard.press("Enter")
    page.keyboard.press("Escape")
    page.locator("main .plate").wait_for()
    mean = page.locator("main .plate [data-figure=mean_diameter] b").inner_text()
    assert 80.0 < float(mean) < 80.03
    page.get_by_role("button", name="Use this size").click()
    sheet.go("ring").ready()
    assert page.get_by_label("Bore", exact=True).input_value().startswith("80.0")
    assert page.get_by_label("Unit of Bore").input_value() == "mm"


def test_size_of_a_bore_gauged_in_inches_stays_in_inches(sheet):
    page = sheet.go("survey").page
    page.locator("main .plate").wait_for()
    page.get_by_role("button", name="Use this size").click()
    sheet.go("ring").ready()
    assert page.get_by_label("Unit of Bore").input_value() == "in"
    assert page.get_by_label("Bore", exact=True).input_value().startswith("3.12")


def test_grid_is_as_fast_on_a_keyboard(sheet):
    page = _new_job(sheet).go("survey").page
    _cells(sheet).first.focus()
    for row in INCHES:
        for text in row:
            page.keyboard.type(text)
            page.keyboard.press("Enter")
    kept = _readings(sheet)
    assert [each["diameter"] for each in kept] == [text + " in" for row in INCHES for text in row]
    assert len({each["height"] for each in kept}) == 3
    assert [each["direction"] for each in kept[:4]] == ["0", "45", "90", "135"]
    assert page.locator(".fault").count() == 0


@pytest.mark.parametrize("mark", [".", ","])
def test_block_from_a_spreadsheet_is_pasted_into_the_grid(sheet, mark):
    page = _new_job(sheet).go("survey").page
    block = "\n".join("\t".join(row) for row in INCHES).replace(".", mark)
    page.evaluate(
        """text => {
            const data = new DataTransfer();
            data.setData('text/plain', text);
            const cell = document.querySelector('.grid-cell');
            cell.focus();
            cell.dispatchEvent(new ClipboardEvent('paste',
                { clipboardData: data, bubbles: true, cancelable: true }));
        }""",
        block,
    )
    page.get_by_text("12 readings were pasted.").wait_for()
    kept = _readings(sheet)
    assert [each["diameter"].replace(",", ".") for each in kept] == [
        text + " in" for row in INCHES for text in row
    ]
    page.locator(".said-line").get_by_role("button", name="Undo").click()
    sheet.until("[...document.querySelectorAll('.grid-cell')].every(e => e.value === '')")


def test_height_taken_out_comes_back_by_undo(sheet):
    page = sheet.go("survey").page
    assert _cells(sheet).count() == 6
    page.get_by_role("button", name="Take out height 2").click()
    assert _cells(sheet).count() == 4
    page.locator(".said-line").get_by_role("button", name="Undo").click()
    sheet.until("document.querySelectorAll('.grid-cell').length === 6")
    values = page.eval_on_selector_all(".grid-cell", "all => all.map(e => e.value)")
    assert sorted(values) == sorted(["3.1255", "3.1265", "3.1260", "3.1275", "3.1255", "3.1260"])


@pytest.mark.parametrize("most", [60])
def test_twelve_readings_in_at_most_sixty_taps(browser, served, most):
    """From the open survey to twelve readings kept; the old list took 196 taps."""
    context = browser.new_context(
        viewport={"width": 360, "height": 740}, has_touch=True, is_mobile=True
    )
    sheet = Sheet(context.new_page(), served).open().ready()
    page = _new_job(sheet).go("survey").page
    fingers = Fingers(page)
    fingers.readings(INCHES)
    kept = _readings(sheet)
    assert [each["diameter"] for each in kept] == [text + " in" for row in INCHES for text in row]
    print("taps", fingers.taps)
    assert fingers.taps <= most
    assert sheet.complaints == []
    context.close()
