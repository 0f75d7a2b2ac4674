"""Firefox driven by WebDriver BiDi (W3C), which it speaks itself: no driver between."""

import itertools
import json
import subprocess
import time

from websocket import create_connection

from client.conftest import PHONE
from client.driven import SHOWN, WAIT, Driven

# One page's script must never hold a test for ever.
ANSWER = 60
PREFERENCES = {
    "app.update.enabled": False,
    "app.normandy.enabled": False,
    "browser.shell.checkDefaultBrowser": False,
    "browser.startup.page": 0,
    "datareporting.policy.dataSubmissionEnabled": False,
    "extensions.update.enabled": False,
    "network.captive-portal-service.enabled": False,
    "network.connectivity-service.enabled": False,
    "toolkit.telemetry.enabled": False,
}
# Keys without a letter of their own have one from the private use area (WebDriver, 17.4.2).
KEYS = {"End": "\ue010", "Backspace": "\ue003", "Enter": "\ue007"}


class Firefox(Driven):
    """One Firefox with one page, on a profile that outlives it."""

    def __init__(self, program, profile, preferences=None):
        profile.mkdir(exist_ok=True)
        lines = [json.dumps(each)[1:-1] for each in {**PREFERENCES, **(preferences or {})}.items()]
        (profile / "user.js").write_text("\n".join("user_pref(%s);" % each for each in lines))
        told = profile / "WebDriverBiDiServer.json"
        told.unlink(missing_ok=True)
        self.process = subprocess.Popen(
            [program, "--headless", "--no-remote", "--profile", str(profile)]
            + ["--remote-debugging-port", "0"],
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        )
        self.numbers = itertools.count(1)
        self.complaints = []
        self.socket = None
        try:
            self.socket = create_connection(
                _address(told) + "/session", timeout=ANSWER, suppress_origin=True
            )
            self.ask("session.new", capabilities={})
            self.ask("session.subscribe", events=["log.entryAdded"])
            # In the first tab the address bar has the focus, in one of its own the page has.
            self.page = self.ask("browsingContext.create", type="tab")["context"]
            self.ask("browsingContext.setViewport", context=self.page, viewport=PHONE)
        except BaseException:
            self.close()
            raise

    def ask(self, method, **params):
        """The result of one command; what the page's console complains of meanwhile is kept."""
        number = next(self.numbers)
        self.socket.send(json.dumps({"id": number, "method": method, "params": params}))
        while True:
            said = json.loads(self.socket.recv())
            if said.get("method") == "log.entryAdded" and said["params"]["level"] == "error":
                self.complaints.append(said["params"]["text"])
            if said.get("id") == number:
                assert said["type"] == "success", said
                return said["result"]

    def open(self, address):
        self.ask("browsingContext.navigate", context=self.page, url=address, wait="complete")
        return self.until(SHOWN)

    def run(self, expression):
        """What a JavaScript expression, or the promise that it is, comes to."""
        result = self.ask(
            "script.evaluate",
            expression="(async () => JSON.stringify(await (%s)) ?? 'null')()" % expression,
            target={"context": self.page},
            awaitPromise=True,
        )
        assert result["type"] == "success", result
        return json.loads(result["result"]["value"])

    def type(self, selector, *keys):
        """Presses keys, each a letter or a name of `KEYS`, in the entry that is found."""
        self.run("document.querySelector(%s).focus()" % json.dumps(selector))
        presses = [
            {"type": kind, "value": KEYS.get(key, key)}
            for key in keys
            for kind in ("keyDown", "keyUp")
        ]
        source = {"type": "key", "id": "keys", "actions": presses}
        self.ask("input.performActions", context=self.page, actions=[source])
        return self

    def close(self):
        """Ends it as a person would, so that its profile is whole."""
        if self.socket:
            self.socket.close()
        self.process.terminate()
        try:
            self.process.wait(timeout=WAIT)
        except subprocess.TimeoutExpired:
            self.process.kill()
            self.process.wait()


def _address(told):
    """Where it listens, from the file that it lays in its profile."""
    end = time.monotonic() + ANSWER
    while time.monotonic() < end:
        try:
            found = json.loads(told.read_text())
            return "ws://%s:%d" % (found["ws_host"], found["ws_port"])
        except (FileNotFoundError, ValueError):
            time.sleep(0.05)
    raise RuntimeError("Firefox did not start")
