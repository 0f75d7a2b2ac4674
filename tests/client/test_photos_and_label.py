"""Photographs that stay with a job on its device, and the label for the ring's box."""

import io
import re

import pypdf
import pytest
import zxingcpp
from PIL import Image

from client.conftest import Sheet

STORED = """() => new Promise((resolve) => {
  const asked = indexedDB.open('ringwright-photos');
  asked.onsuccess = () => {
    const got = asked.result.transaction('photos').objectStore('photos').getAll();
    got.onsuccess = () => {
      asked.result.close();
      resolve(Promise.all(got.result.map((e) => e.picture.text())));
    };
  };
})"""


def picture(tmp_path, name, size=(2400, 1800), colour=(120, 80, 40)):
    path = tmp_path / name
    image = Image.new("RGB", size, colour)
    exif = image.getexif()
    exif[0x010E] = "Where the cylinder stands"
    image.save(path, exif=exif)
    return path


def take_in(sheet, *paths):
    sheet.go("book")
    sheet.page.get_by_label("Photographs to add").set_input_files(list(paths))


def shown(sheet, count):
    sheet.until("document.querySelectorAll('.photos img').length === %d" % count)
    sheet.until("[...document.querySelectorAll('.photos img')].every((e) => e.naturalWidth > 0)")


def test_photograph_is_kept_small_with_its_job_and_nowhere_else(sheet, tmp_path):
    page = sheet.page
    take_in(sheet, picture(tmp_path, "bore.jpg"))
    shown(sheet, 1)
    assert page.eval_on_selector(".photos img", "e => [e.naturalWidth, e.naturalHeight]") == [
        1600,
        1200,
    ]
    (kept,) = page.evaluate(STORED)
    assert "Where the cylinder stands" not in kept
    page.reload()
    sheet.page.wait_for_selector(".jobs")
    shown(sheet, 1)
    # Another job has none of it, nor has the link.
    page.get_by_role("button", name="Link or code for Launch engine Marigold").click()
    assert len(page.get_by_label("Link", exact=True).input_value()) < 3000
    page.get_by_role("button", name="Close", exact=True).click()
    page.get_by_role("button", name="New job").click()
    page.wait_for_selector('.app[data-screen="ring"]')
    sheet.go("book")
    page.get_by_role("button", name="Add a photograph").wait_for()
    shown(sheet, 0)


def test_photograph_is_looked_at_taken_out_and_put_back(sheet, tmp_path):
    page = sheet.page
    take_in(sheet, picture(tmp_path, "a.png", (300, 200)), picture(tmp_path, "b.png", (200, 300)))
    shown(sheet, 2)
    first = page.get_by_role("button", name=re.compile("^Photograph 1, of "))
    # Clear of the strip at the foot: what has the focus is scrolled out from behind it.
    first.evaluate("e => e.scrollIntoView({ block: 'center' })")
    first.click()
    page.locator(".photo-large").wait_for()
    page.get_by_role("button", name="Take it out").click()
    shown(sheet, 1)
    page.locator(".said-line").get_by_role("button", name="Undo").click()
    shown(sheet, 2)


def test_what_is_no_picture_or_too_much_is_left_and_said(sheet, tmp_path):
    page = sheet.page
    wrong = tmp_path / "notes.jpg"
    wrong.write_bytes(b"no picture at all")
    take_in(sheet, wrong)
    page.get_by_text("notes.jpg is no picture that this browser can read").wait_for()
    take_in(sheet, *[picture(tmp_path, "%d.png" % at, (40, 30)) for at in range(8)])
    page.get_by_text("A job has up to 6 photographs: the rest was left.").wait_for()
    shown(sheet, 6)
    assert page.get_by_role("button", name="Add a photograph").count() == 0


def test_full_device_is_said_and_the_book_is_whole(sheet, tmp_path):
    page = sheet.page
    page.evaluate(
        """() => {
          const put = IDBObjectStore.prototype.put;
          IDBObjectStore.prototype.put = function (...given) {
            if (this.name !== "photos") return put.apply(this, given);
            throw new DOMException("full", "QuotaExceededError");
          };
        }"""
    )
    take_in(sheet, picture(tmp_path, "bore.jpg"))
    page.get_by_text("has no room for a photograph").wait_for()
    page.reload()
    sheet.page.wait_for_selector(".jobs")
    assert page.get_by_text("Launch engine Marigold").count() > 0


def test_photographs_go_with_a_job_that_is_removed_for_good(sheet, tmp_path):
    page = sheet.page
    take_in(sheet, picture(tmp_path, "bore.jpg", (400, 300)))
    shown(sheet, 1)
    page.get_by_role("button", name="Delete Launch engine Marigold").click()
    page.locator("summary", has_text="Deleted (1)").click()
    assert len(page.evaluate(STORED)) == 1
    page.get_by_role("button", name="Remove these for good").click()
    page.wait_for_function("async () => (await (%s)()).length === 0" % STORED, polling=100)


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_label_prints_on_one_sheet_and_its_code_opens_the_job(sheet, context, served, paper):
    page = sheet.page
    sheet.go("book")
    page.get_by_role("link", name="Label for the box").click()
    label = page.get_by_role("region", name="Label")
    label.locator(".code").wait_for()
    said = label.inner_text()
    assert "Launch engine Marigold" in said
    assert "3 1/8 in" in said
    # Seen by a camera: four dots a millimetre.
    taken = Image.open(io.BytesIO(label.locator(".code").screenshot()))
    found = zxingcpp.read_barcodes(taken.resize([3 * side for side in taken.size]))
    assert len(found) == 1
    printed = pypdf.PdfReader(io.BytesIO(page.pdf(format=paper)))
    assert len(printed.pages) == 1
    text = printed.pages[0].extract_text()
    assert "Free gap" in text
    assert "It prints" not in text

    other = Sheet(context.new_page(), served)
    other.page.goto(served + "/" + found[0].text[found[0].text.index("#") :])
    other.ready()
    assert other.page.get_by_label("Bore", exact=True).first.input_value() == "3 1/8"
