"""The screens of a worn groove and of the number of rings: entries give the ways to go on."""

ROWS = "document.querySelectorAll('section[aria-label=\"%s\"] tbody').length === %d"

COLUMNS = (
    "document.querySelectorAll('section[aria-label=\"%s\"] tr:first-child th').length === 1 + %d"
)


def _fits(sheet):
    return sheet.page.evaluate(
        "document.documentElement.scrollWidth <= document.documentElement.clientWidth"
    )


def test_widths_of_a_worn_groove_give_ways_to_go_on(sheet):
    sheet.go("groove").page.get_by_role("button", name="Add row").click()
    sheet.enter("Mouth", "5.4 mm").enter("Bottom", "5.1 mm")
    sheet.until(ROWS % ("Ways to go on", 2))
    # 0.1 mm is cut off each side of 5.4.
    clean = float(sheet.page.locator("[data-figure=clean_width] b").first.inner_text())
    assert clean == 5.6
    words = sheet.page.locator("section[aria-label='Ways to go on']").inner_text()
    assert "A double-turn ring to suit" in words and "harder to bed in" in words
    assert _fits(sheet)


def test_stroke_gives_what_each_number_of_rings_costs(sheet):
    sheet.go("pack").enter("Stroke", "90 mm")
    sheet.until(COLUMNS % ("By their number", 4))
    sheet.until(COLUMNS % ("Ring by ring", 2))
    sheet.enter("Rings on one piston", "3")
    sheet.until(COLUMNS % ("Ring by ring", 3))
    leaks = sheet.page.locator("section[aria-label='By their number'] tr:has-text('Leak,') td")
    told = [float(each) for each in leaks.all_inner_texts()]
    assert told == sorted(told, reverse=True) and len(set(told)) > 1
    # No number is broken at the end of its line.
    lines = leaks.evaluate_all("cells => cells.map(cell => cell.getBoundingClientRect().height)")
    assert max(lines) < 48
    assert _fits(sheet)
