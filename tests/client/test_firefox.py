"""The same app in Firefox, whose page, worker and WebAssembly are another engine's."""

import shutil

import pytest

from client.driven import FORMER, KEPT, READY, there
from client.firefox import Firefox
from client.screens import SCREENS, stands


@pytest.fixture(scope="module")
def program():
    return there(shutil.which("firefox-esr") or shutil.which("firefox"), "firefox-esr")


@pytest.fixture
def firefox(program, tmp_path):
    """Starts a Firefox on the test's profile, as often as it is called; each ends with the test."""
    started = []

    def start():
        started.append(Firefox(program, tmp_path / "profile"))
        return started[-1]

    yield start
    for each in started:
        each.close()
        assert each.complaints == []


def _go(page, screen):
    """Another stage by a press of its link, or by its address where the strip has none."""
    page.run(
        "(() => { const job = location.hash.split('/')[2], to = `#/%s/${job}`;"
        " const link = document.querySelector(`a[href='${to}']`);"
        " if (link) link.click(); else location.hash = to })()" % screen
    )
    page.until("document.querySelector('%s')" % stands(screen))


def _other_than(before):
    return "![undefined, %r].includes(%s)" % (before, FORMER)


def test_first_visit_then_without_network(firefox, own_server):
    page = firefox().open(own_server.address + "/").until(READY).until(FORMER)
    first = page.run(FORMER)
    assert page.run("document.querySelectorAll('.rows [data-figure]').length") > 10
    # The demonstration's bore is 3 1/8 in; what is typed keeps the unit.
    page.type("#in-bore", "4", "Enter").until(READY)
    page.until(_other_than(first)).until(KEPT)
    changed = page.run(FORMER)
    assert float(changed) > float(first)
    page.run("navigator.serviceWorker.ready.then(() => null)")
    page.until("navigator.serviceWorker.controller")
    link = page.run("location.hash")
    page.close()
    own_server.stop()

    # A cold start with nobody at the other end: the job as it was left, and new figures.
    again = firefox().open(own_server.address + "/" + link).until(READY).until(FORMER)
    assert again.run("document.querySelector('#in-bore').value") == "4"
    assert again.run(FORMER) == changed
    again.type("#in-bore", "End", ".", "5").until(_other_than(changed)).until(KEPT)
    for screen in SCREENS:
        _go(again, screen)
    _go(again, "ring")
    again.until(READY)
    # A drawing, which the engine makes and the page reads as SVG.
    again.run("document.querySelector('.drawing summary').click()")
    again.until("document.querySelector('.drawn svg path')")


def test_job_in_a_link_opens_with_its_figures(firefox, own_server):
    page = firefox().open(own_server.address + "/").until(READY)
    page.type("#in-bore", "6", "Enter").until(READY).until(KEPT)
    _go(page, "book")
    page.run("document.querySelector('.jobs button[aria-label^=Link]').click()")
    page.until("document.querySelector('.share-link textarea[readonly]')")
    link = page.run("document.querySelector('.share-link textarea[readonly]').value")
    page.close()

    other = firefox().open(link).until(READY)
    assert other.run("document.querySelector('#in-bore').value") == "6"
    assert other.run("document.querySelector('.banners').textContent.includes('came in a link')")
