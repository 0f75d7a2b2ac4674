"""What an entry moved is said in a quiet line: which figures, from what to what."""

MOVED = "section[aria-label='What the last entry moved']"


def _shown(sheet):
    return sheet.page.locator(MOVED)


def test_nothing_moved_before_the_first_entry_and_the_pressure_moves_with_its_old_value(sheet):
    assert _shown(sheet).count() == 0
    before = sheet.figure("closed_gap")
    sheet.enter("Bore", "90 mm").ready()
    _shown(sheet).wait_for()
    after = sheet.figure("closed_gap")
    assert before != after
    words = _shown(sheet).evaluate("e => e.textContent")
    assert "%s → %s" % (before, after) in words.replace("\u202f", " "), words
    # Laid on the bore alone it says more than the eye takes in: the rest lies folded.
    assert _shown(sheet).locator("> ul > li").count() == 3
    assert _shown(sheet).locator("details:not([open]) > summary").count() == 1


def test_all_that_is_typed_in_one_entry_is_one_step(sheet):
    before = sheet.figure("closed_gap")
    box = sheet.page.get_by_label("Bore", exact=True).first
    box.fill("")
    box.press_sequentially("91.5 mm", delay=150)
    box.blur()
    sheet.ready()
    sheet.until("document.querySelector('.moved')")
    words = _shown(sheet).evaluate("e => e.textContent")
    assert "%s → %s" % (before, sheet.figure("closed_gap")) in words, words


def test_another_job_begins_with_none(sheet):
    sheet.enter("Bore", "90 mm").ready()
    _shown(sheet).wait_for()
    sheet.kept()
    sheet.page.get_by_role("button", name="New job").click()
    sheet.page.wait_for_selector(".plate-empty")
    assert _shown(sheet).count() == 0
