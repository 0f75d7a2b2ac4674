"""Two designs side by side: what was entered otherwise, and what comes of it."""


def _rows(page, title):
    """Label -> (this job's, the other's), of one of the tables."""
    table = page.get_by_role("region", name=title)
    table.wait_for()
    return {
        row.locator("th").inner_text(): tuple(row.locator("td").all_inner_texts())
        for row in table.locator("tbody tr").all()
    }


def test_a_copy_with_another_bore_stands_beside_the_first(sheet):
    page = sheet.page
    sheet.go("compare")
    page.get_by_text("There is no other job in the book").wait_for()
    page.get_by_role("button", name="Copy this job and change the copy").click()
    sheet.until("document.querySelector('.head-names b').textContent.endsWith(', copy')")
    gap = sheet.ready().figure("free_gap")
    sheet.enter("Bore", "6 in").ready().kept()
    wider = sheet.figure("free_gap")
    assert float(wider) > float(gap)

    sheet.go("compare")
    assert _rows(page, "Entered otherwise")["Bore"] == ("6 in", "3 1/8 in")
    # For a gloved finger, like every other.
    assert page.get_by_label("The other job").bounding_box()["height"] >= 48
    left, right = _rows(page, "Figures")["Free gap"]
    assert (left.split()[0], right.split()[0]) == (wider, gap)
    # Twice the ring is not twice everything: what stays the same is not in the way.
    alike = page.locator("summary", has_text="the same in both")
    alike.click()
    assert page.locator("details[open] li").count() > 0
    assert sheet.complaints == []


def test_a_change_of_one_design_is_seen_at_once(sheet):
    page = sheet.page
    sheet.go("compare")
    page.get_by_role("button", name="Copy this job and change the copy").click()
    sheet.until("document.querySelector('.head-names b').textContent.endsWith(', copy')")
    sheet.ready().kept().go("compare")
    page.get_by_text("Every figure is the same.").wait_for()
    sheet.go("ring").ready().enter("Steam pressure", "20 bar").ready().kept()
    sheet.go("compare")
    assert "Steam pressure" in _rows(page, "Entered otherwise")
    assert _rows(page, "Figures")


def test_a_job_that_cannot_be_worked_says_why(sheet):
    page = sheet.page
    sheet.go("book")
    page.get_by_role("button", name="New job").click()
    page.wait_for_selector(".plate-empty")
    sheet.until("document.querySelector('.head-names b').textContent.startsWith('Job of ')")
    sheet.go("compare")
    words = page.locator("main .status-fault")
    words.wait_for()
    assert "Bore is needed" in words.inner_text()
    assert page.get_by_role("region", name="Figures").count() == 0
