"""The fitting card on a phone: the work in order, with sizes of this ring, and the signs."""

from client.conftest import PHONE

NO_WIDER = "document.documentElement.scrollWidth <= innerWidth"


def operation(sheet, title):
    return sheet.page.locator(
        ".operation", has=sheet.page.get_by_role("heading", name=title, exact=True)
    )


def test_the_card_stands_in_order_with_sizes_of_this_ring(sheet):
    assert PHONE["width"] == 360
    sheet.go("fitting").page.wait_for_selector(".operation")
    titles = sheet.page.locator(".operation h2").all_inner_texts()
    assert titles[0] == "Make the engine safe" and titles[-1] == "Lay up for the winter"
    assert titles.index("First steam") < titles.index("Run in")
    assert "key ring" in operation(sheet, "Wind on to the piston").inner_text()
    assert operation(sheet, "Run in").locator("tbody tr").count() == 4
    assert sheet.page.get_by_role("button", name="Print the fitting card").is_visible()
    assert sheet.page.get_by_label("Signs").locator("li").count() >= 9
    assert sheet.page.evaluate(NO_WIDER)
    # A card that is not ticked off has no box to tick.
    assert sheet.page.locator(".operation-tick").count() == 0


def test_another_kind_of_ring_goes_on_otherwise(sheet):
    sheet.go("fitting").page.wait_for_selector(".operation")
    sheet.page.get_by_label("Type of ring", exact=True).select_option("plain")
    operation(sheet, "Fit to the piston").wait_for()
    assert "ends apart to pass" in operation(sheet, "Fit to the piston").inner_text()
    assert operation(sheet, "Wind on to the piston").count() == 0
    measured = operation(sheet, "Try each ring in groove and bore").get_by_label(
        "Measured gap when new"
    )
    measured.fill("0.31")
    # It is kept with the job, at its own place.
    sheet.go("ring").go("fitting").page.wait_for_selector(".operation")
    assert measured.input_value() == "0.31"
    assert sheet.page.evaluate(NO_WIDER)
