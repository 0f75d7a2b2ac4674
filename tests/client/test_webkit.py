"""The same app in WebKit, which every iPhone runs: each screen, offline, from its image."""

import shutil

import pytest

from client import webkit
from client.conftest import APP
from client.driven import FORMER, KEPT, READY, there
from client.screens import SCREENS, stands

# Half a pixel is lost in the scale that makes the window as narrow as a phone.
NO_WIDER = "document.documentElement.scrollWidth <= innerWidth + 1"
BORE = "#in-bore"


@pytest.fixture(scope="module")
def program():
    return there(webkit.program(), "webkit2gtk-driver xvfb")


@pytest.fixture
def page(program, tmp_path):
    made = webkit.WebKit(program, tmp_path)
    yield made
    made.close()


def go(page, screen):
    page.run("location.hash = '#/%s/' + location.hash.split('/')[2]" % screen)
    return page.until("document.querySelector('%s')" % stands(screen))


def test_first_visit_every_screen_then_without_network(page, own_server):
    page.open(own_server.address + "/").until(READY)
    assert 355 <= page.run("innerWidth") <= 365
    page.until("/[0-9]/.test(%s)" % FORMER)
    before = page.run(FORMER)
    for screen in SCREENS:
        go(page, screen)
        assert page.run(NO_WIDER), screen
    page.until("navigator.serviceWorker.controller")
    go(page, "settings").until("document.querySelector('[data-ready]').dataset.ready === 'yes'")
    own_server.stop()

    go(page, "ring")
    page.reload().until(READY)
    page.until("%s === '%s'" % (FORMER, before))
    page.type(BORE, "4 1/4 in")
    page.until("%s !== '%s' && %s" % (FORMER, before, READY)).until("/[0-9]/.test(%s)" % FORMER)
    # A former for a 4 1/4 in (107.95 mm) ring lies between its bore and the cylinder's.
    assert 95.0 < float(page.run(FORMER)) < 115.0
    page.until(KEPT)
    after = page.run(FORMER)
    for _ in range(3):
        page.reload().until(READY).until("%s === '%s'" % (FORMER, after))
    for screen in SCREENS:
        go(page, screen)


def test_starts_from_the_image_answer_on(page, own_server):
    page.open(own_server.address + "/").until(READY).until("/[0-9]/.test(%s)" % FORMER)
    before = page.run(FORMER)
    stored = (
        "new Promise((tell) => { const asked = indexedDB.open('ringwright-engine', 1);"
        " asked.onupgradeneeded = () => asked.result.createObjectStore('images');"
        " asked.onsuccess = () => { const all = asked.result.transaction('images')"
        ".objectStore('images').getAll(); all.onsuccess = () => { asked.result.close();"
        " tell(all.result.length > 0); }; }; })"
    )
    # It is made some seconds after the first figures.
    page.until("await %s" % stored)
    for _ in range(5):
        page.reload().until(READY).until("%s === '%s'" % (FORMER, before))
        assert page.run("document.documentElement.dataset.engine") == "image"


def test_the_single_file_opens_from_the_disk(page, tmp_path):
    """On a desk; an iPhone shows such a file without running it, as the page on it says."""
    shutil.copy(APP / "ringwright.html", tmp_path / "ringwright.html")
    page.open((tmp_path / "ringwright.html").as_uri()).until(READY)
    page.until("/[0-9]/.test(%s)" % FORMER)
    page.type(BORE, "4 1/4 in").until(READY).until(KEPT)
    page.reload().until(READY)
    assert page.run("document.querySelector('%s').value" % BORE) == "4 1/4"
    go(page, "route")
    go(page, "settings").until("document.querySelector('[data-ready]').dataset.ready === 'yes'")
