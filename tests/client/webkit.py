"""WebKit, the engine of every iPhone, driven by WebDriver (W3C) in WebKitGTK's small browser."""

import contextlib
import glob
import json
import os
import shutil
import subprocess
import time

import requests

from client.driven import SHOWN, WAIT, Driven
from conftest import free_port

WINDOW = {"x": 0, "y": 0, "width": 447, "height": 900}
# Its window gets no narrower than 447: drawn so much larger, the page has 360 of its own pixels.
LARGER = "1.24"
# Keys without a letter of their own have one from the private use area (WebDriver, 17.4.2).
KEYS = {"Control": "\ue009", "Enter": "\ue007", "Tab": "\ue004"}


def program():
    """Path of WebKitGTK's browser; None where it, its driver or Xvfb is missing."""
    found = glob.glob("/usr/lib/*/webkit2gtk-4.*/MiniBrowser")
    drives = shutil.which("WebKitWebDriver") and shutil.which("Xvfb")
    return found[0] if found and drives else None


class WebKit(Driven):
    """One window with one page; what it keeps ends with it."""

    def __init__(self, browser, home):
        self.parts = contextlib.ExitStack()
        try:
            self._start(browser, home)
        except BaseException:
            self.close()
            raise

    def _start(self, browser, home):
        screen = self._run(
            ["Xvfb", "-displayfd", "1", "-screen", "0", "800x1000x24", "-nolisten", "tcp"],
            stdout=subprocess.PIPE,
        )
        with screen.stdout as said:
            display = ":" + said.readline().decode().strip()
        port = free_port()
        own = {"DISPLAY": display, "HOME": str(home), "GDK_DPI_SCALE": LARGER}
        self._run(["WebKitWebDriver", "--port=%d" % port], env={**os.environ, **own})
        driver = "http://127.0.0.1:%d/session" % port
        options = {"binary": browser, "args": ["--automation"]}
        wanted = {"alwaysMatch": {"webkitgtk:browserOptions": options}}
        end = time.monotonic() + WAIT
        while True:
            try:
                answer = requests.post(driver, json={"capabilities": wanted}, timeout=WAIT)
                break
            except requests.ConnectionError:
                assert time.monotonic() < end, "the driver did not start"
                time.sleep(0.05)
        self.session = "%s/%s" % (driver, answer.json()["value"]["sessionId"])
        self.parts.callback(requests.delete, self.session, timeout=WAIT)
        self.ask("/window/rect", **WINDOW)

    def _run(self, command, **how):
        how = {"stdout": subprocess.DEVNULL, "stderr": subprocess.DEVNULL, **how}
        running = subprocess.Popen(command, **how)
        self.parts.callback(running.wait, timeout=WAIT)
        self.parts.callback(running.terminate)
        return running

    def ask(self, path, **what):
        """The value of one command."""
        answer = requests.post(self.session + path, json=what, timeout=2 * WAIT)
        value = answer.json()["value"]
        assert answer.status_code == 200, value
        return value

    def open(self, address):
        self.ask("/url", url=address)
        return self.until(SHOWN)

    def reload(self):
        self.ask("/refresh")
        return self.until(SHOWN)

    def run(self, expression):
        """What a JavaScript expression, or the promise that it is, comes to."""
        script = (
            "const tell = arguments[0]; (async () => JSON.stringify(await (%s)) ?? 'null')()"
            ".then((text) => tell([text]), (error) => tell([null, String(error)]))" % expression
        )
        text, *error = self.ask("/execute/async", script=script, args=[])
        assert not error, error
        return json.loads(text)

    def type(self, selector, text):
        """Types a text, key by key, over what an entry holds."""
        found = self.ask("/element", using="css selector", value=selector)
        element = "/element/%s" % next(iter(found.values()))
        self.ask(element + "/click")
        self.ask(element + "/value", text="".join((KEYS["Control"], "a")))
        self.ask(element + "/value", text=text + KEYS["Tab"])
        return self

    def close(self):
        self.parts.close()
