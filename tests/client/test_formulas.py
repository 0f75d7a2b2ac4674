"""Formulas are set as formulas, wherever a figure's working or the list of methods shows them."""


def test_every_formula_of_the_list_is_set_and_fits_a_phone(sheet):
    sheet.go("tables")
    sheet.page.get_by_text("Formulas and sources").click()
    sheet.page.wait_for_selector(".formula", state="attached")
    wide = sheet.page.evaluate(
        """() => {
        document.querySelectorAll('.tables details').forEach(e => { e.open = true })
        return [...document.querySelectorAll('.formula')]
            .filter(e => e.scrollWidth > e.clientWidth + 1).map(e => e.textContent)
    }"""
    )
    assert sheet.page.locator(".formula").count() >= 100
    assert sheet.page.evaluate("document.body.scrollWidth <= innerWidth")
    # What is wider than the screen is scrolled in its own frame; few are.
    assert len(wide) <= 12, wide


def test_the_working_of_a_figure_shows_its_fraction(sheet):
    force = sheet.page.locator("[data-figure=tangential_force]").first
    force.evaluate("e => { e.closest('details').open = true }")
    force.click()
    fraction = sheet.page.locator("dialog[open] .formula math mfrac")
    fraction.first.wait_for()
    assert fraction.first.evaluate("e => e.namespaceURI") == "http://www.w3.org/1998/Math/MathML"
    # Ft = p h1 d1/2: the two lies below the line.
    top, below = fraction.first.evaluate(
        "e => [...e.children].map(part => part.getBoundingClientRect().top)"
    )
    assert below > top


def test_the_working_of_a_figure_ends_with_the_numbers_put_in(sheet):
    """Ft = p_c h1 d1/2: three numbers and a two make the force."""
    for system in ("metric", "inch"):
        force = sheet.page.locator("[data-figure=tangential_force]").first
        force.evaluate("e => { e.closest('details').open = true }")
        force.click()
        lines = sheet.page.locator("dialog[open] .put-in .formula")
        lines.first.wait_for()
        numbers = [float(one) for one in lines.nth(1).locator("mn").all_text_contents()]
        assert len(numbers) == 4 and numbers[3] == 2.0
        result, unit = lines.nth(2).inner_text().lstrip("= ").split()
        assert unit == {"metric": "N", "inch": "lbf"}[system]
        assert abs(numbers[0] * numbers[1] * numbers[2] / 2.0 / float(result) - 1.0) < 1e-3
        sheet.page.keyboard.press("Escape")
        sheet.page.locator(".head-units").click()


def test_what_was_put_in_comes_when_a_figure_is_opened_with_no_network(sheet, context):
    """Answers come without it; of the bar's figures, too, which lie deeper in the job's answer."""
    sheet.page.evaluate("navigator.serviceWorker.ready")
    context.set_offline(True)
    for name in ("free_gap", "former_diameter", "bar_diameter"):
        sheet.enter("Bore", "82 mm" if name == "free_gap" else "81 mm").ready()
        sheet.until("document.querySelector('[data-figure=%s] b')" % name)
        shown = sheet.figure(name)
        sheet.page.locator("[data-figure=%s]" % name).first.click()
        dialog = sheet.page.locator("dialog[open]")
        dialog.get_by_role("heading", name="Put in", exact=True).wait_for()
        assert dialog.locator(".working-figure b").inner_text() == shown
        assert dialog.locator("table").last.locator("tr").count() >= 1
        sheet.page.keyboard.press("Escape")
    context.set_offline(False)
