"""Another version of the built app, as an update brings it: other files, none of the old."""

import hashlib
import re
import shutil
import threading

from werkzeug.serving import make_server

from client.conftest import APP
from ringwright.api import create_app

SCRIPTS = re.compile(r"(index|later_screens)-[\w-]{8}\.js")
BROKEN = "throw new Error('does not start');"


def another(folder, mark, begins=""):
    """The built app as a version of its own, in a new folder.

    mark: eight letters that stand in its files' names; begins: what its script does first.
    """
    shutil.copytree(APP, folder, ignore=shutil.ignore_patterns("*.br", "*.gz"))
    assets = folder / "assets"
    for script in (folder / "service_worker.js", folder / "index.html", *assets.glob("*.js")):
        _rename(script, mark)
    for script in list(assets.iterdir()):
        if SCRIPTS.fullmatch(script.name):
            new = assets / SCRIPTS.sub(r"\g<1>-%s.js" % mark, script.name)
            script.rename(new)
            if new.name.startswith("index"):
                told = "document.documentElement.dataset.version='%s';" % mark
                new.write_text(begins + told + new.read_text(encoding="utf-8"), encoding="utf-8")
    worker = folder / "service_worker.js"
    page = hashlib.sha256((folder / "index.html").read_bytes()).hexdigest()[:32]
    text, changed = re.subn(
        r'"revision":"\w{32}","url":"index.html"',
        '"revision":"%s","url":"index.html"' % page,
        worker.read_text(encoding="utf-8"),
    )
    assert changed == 1
    worker.write_text(text, encoding="utf-8")
    return folder


def _rename(path, mark):
    text = path.read_text(encoding="utf-8")
    path.write_text(SCRIPTS.sub(r"\g<1>-%s.js" % mark, text), encoding="utf-8")


class Swapped:
    """The service in this process, whose built app can be replaced while it runs."""

    def __init__(self, folder):
        self.use(folder)
        self.server = make_server("127.0.0.1", 0, lambda *call: self.app(*call), threaded=True)
        self.address = "http://127.0.0.1:%d" % self.server.port
        threading.Thread(target=self.server.serve_forever, daemon=True).start()

    def use(self, folder):
        """Serves the app in that folder from now on."""
        self.app = create_app(app_folder=folder)

    def stop(self):
        # A browser's spare connection was accepted already, and would get one more answer.
        self.app = _gone
        self.server.shutdown()
        self.server.server_close()


def _gone(environ, start_response):
    start_response("503 Service Unavailable", [("Content-Length", "0")])
    return [b""]
