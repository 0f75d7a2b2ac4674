"""The image of the engine that a device makes for itself: used at the next start, dropped at any
doubt."""

import time

from client.conftest import Sheet

STORED = """() => new Promise((found) => {
  const asked = indexedDB.open("ringwright-engine", 1);
  asked.onupgradeneeded = () => asked.result.createObjectStore("images");
  asked.onsuccess = () => {
    const all = asked.result.transaction("images").objectStore("images").getAll();
    all.onsuccess = () => {
      asked.result.close();
      found(all.result.map((one) => [one.size, one.content.length]));
    };
  };
})"""
DAMAGED = """() => new Promise((done) => {
  const asked = indexedDB.open("ringwright-engine", 1);
  asked.onsuccess = () => {
    const table = asked.result.transaction("images", "readwrite").objectStore("images");
    table.openCursor().onsuccess = (event) => {
      const cursor = event.target.result;
      if (!cursor) return;
      // A disk that loses what it was given: nought where the engine's memory was.
      cursor.value.content.fill(0);
      cursor.update(cursor.value).onsuccess = () => { asked.result.close(); done(true); };
    };
  };
})"""
# The second question's figure stands.
ANSWERED = "/[0-9]/.test(document.querySelector('[data-figure=former_diameter] b')?.textContent)"
ENGINE = "document.documentElement.dataset.engine"


def stored(page):
    """Sizes of the image that is kept, once there is one."""
    end = time.monotonic() + 40
    while time.monotonic() < end:
        found = page.evaluate(STORED)
        if found:
            return found[0]
        time.sleep(0.2)
    raise AssertionError("no image was made")


def _again(context, address):
    return Sheet(context.new_page(), address).open().ready()


def test_the_next_start_takes_the_image_and_drops_a_damaged_one(context, own_server):
    first = Sheet(context.new_page(), own_server.address).open().ready()
    assert first.page.evaluate(ENGINE) == "files"
    first.until(ANSWERED)
    gap, former = first.figure("free_gap"), first.figure("former_diameter")
    size, kept = stored(first.page)
    # Most of the memory is empty and is not kept.
    assert kept < 6_000_000 < size
    first.go("settings")
    first.page.get_by_text("Ready for offline use").wait_for()
    own_server.stop()

    second = _again(context, own_server.address)
    assert second.page.evaluate(ENGINE) == "image"
    assert second.figure("free_gap") == gap
    second.until(ANSWERED)
    assert second.figure("former_diameter") == former
    for screen in ("tools", "route", "check", "run", "survey", "valve", "tables"):
        second.go(screen)
        second.page.wait_for_selector("main :is(.card, .operation)")
    assert second.complaints == []
    assert second.page.evaluate(DAMAGED)

    third = _again(context, own_server.address)
    assert third.page.evaluate(ENGINE) == "files"
    assert third.figure("free_gap") == gap
    # And another is made in its place.
    stored(third.page)
    fourth = _again(context, own_server.address)
    assert fourth.page.evaluate(ENGINE) == "image"
    assert fourth.figure("free_gap") == gap


def test_every_start_from_the_image_answers_on(context, own_server):
    """Nine of ten broke at the second question: the loader's leavings were freed in the image."""
    first = Sheet(context.new_page(), own_server.address).open().ready()
    first.until(ANSWERED)
    former = first.figure("former_diameter")
    stored(first.page)
    for _ in range(8):
        first.page.reload()
        first.ready().until(ANSWERED)
        assert first.page.evaluate(ENGINE) == "image"
        assert first.figure("former_diameter") == former
    # Had one broken, the image would have been forgotten with it.
    assert first.page.evaluate(STORED)
    assert first.complaints == []


def test_the_image_is_made_when_the_hand_rests(context, own_server):
    """To make it takes a phone some seconds of work, in which each key would wait."""
    first = Sheet(context.new_page(), own_server.address).open().ready()
    first.until(ANSWERED)
    box = first.page.get_by_label("Bore", exact=True).first
    box.fill("80 mm")
    # It would be there about five seconds after the start.
    end = time.monotonic() + 9
    while time.monotonic() < end:
        box.fill("81 mm" if box.input_value() == "80 mm" else "80 mm")
        first.page.wait_for_timeout(700)
    assert first.page.evaluate(STORED) == []
    assert stored(first.page)
