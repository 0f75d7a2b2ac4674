"""What browsers driven without a library have in common, and what of a page they wait for."""

import time

import pytest

from client.conftest import APP

WAIT = 30
READY = "document.querySelector('html:not([data-drawing]) .plate[data-state=\"ready\"]')"
FORMER = "document.querySelector('.plate [data-figure=former_diameter] b')?.textContent"
KEPT = "document.querySelector('.head-names small').textContent.includes('kept on')"
SHOWN = "document.querySelector('main :is(.card, .plate, .jobs)')"


class Driven:
    """A page of a browser; `run` is the browser's own."""

    def until(self, condition):
        """Waits for a JavaScript condition."""
        end = time.monotonic() + WAIT
        while not self.run("Boolean(%s)" % condition):
            assert time.monotonic() < end, "never came true: %s" % condition
            time.sleep(0.05)
        return self


def there(program, packages):
    """The program, where it is installed and the app is built; else the test ends and says so."""
    if program is None:
        pytest.skip("not installed (Debian: apt-get install %s)" % packages)
    if not (APP / "index.html").is_file():
        pytest.fail("the app is not built: run `npm ci && npm run build` in client_pwa")
    return program
