"""The screen of a ring made without heat, at the width of a phone."""

import re


def test_sizes_steps_and_the_same_ring_made_otherwise(sheet):
    page = sheet.enter("Bore", "200 mm").go("unheated").page
    page.wait_for_selector(".wall path")
    sheet.until("document.querySelector('.plate:not(.stale) [data-figure=piece_cut_out]')")
    piece = page.locator('[data-figure="piece_cut_out"]').first.text_content()
    steps = page.locator(".steps li")
    assert steps.count() == 6
    assert "closing ring" in steps.nth(2).text_content()
    # What is to be sawn stands in the step as on the plate.
    digits = re.search(r"\d+\.\d+", piece).group()
    assert digits + " mm" in steps.nth(1).text_content()
    assert page.locator("tbody th[scope=rowgroup]").count() == 7

    page.get_by_label("Held for finish-turning", exact=True).select_option("band")
    sheet.until("document.querySelectorAll('.steps li').length === 7")
    assert "band" in steps.nth(2).text_content()
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    assert sheet.complaints == []
