"""The club's front door as docker/Caddyfile has it, by Debian's package, before services here."""

import os
import shutil
import socket
import subprocess
import time

import requests
from requests.adapters import HTTPAdapter

from conftest import ROOT, free_port

# A name for which the proxy asks its own authority, and which never leaves this machine.
NAME = "club.localhost"


class _ByName(HTTPAdapter):
    """Asks 127.0.0.1 as if it were the club's name: no name server here knows it."""

    def init_poolmanager(self, *given, **named):
        super().init_poolmanager(*given, **named, server_hostname=NAME, assert_hostname=NAME)


class Front:
    """The proxy before services on the given ports, until `stop`.

    more: settings besides. also: lines of a Caddyfile put before the services.
    """

    def __init__(self, folder, ports, more=(), also=""):
        told = (ROOT / "docker" / "Caddyfile").read_text(encoding="utf-8")
        written = folder / "Caddyfile"
        written.write_text(told.replace("\treverse_proxy", also + "\treverse_proxy", 1))
        self.port, self.plain_port = free_port(), free_port()
        self.address = "https://127.0.0.1:%d" % self.port
        self.authority = folder / "data" / "caddy" / "pki" / "authorities" / "local" / "root.crt"
        self.log = folder / "log"
        self._said = self.log.open("wb")
        self.process = subprocess.Popen(
            [shutil.which("caddy"), "run", "--adapter", "caddyfile"] + ["--config", str(written)],
            env={
                **os.environ,
                "HOME": str(folder),
                "XDG_DATA_HOME": str(folder / "data"),
                "XDG_CONFIG_HOME": str(folder / "config"),
                "RINGWRIGHT_DOMAIN": NAME,
                "RINGWRIGHT_SERVICES": " ".join("127.0.0.1:%d" % port for port in ports),
                "RINGWRIGHT_HTTP_PORT": str(self.plain_port),
                "RINGWRIGHT_HTTPS_PORT": str(self.port),
                **dict(more),
            },
            stdout=subprocess.DEVNULL,
            stderr=self._said,
        )
        end = time.monotonic() + 40
        while time.monotonic() < end:
            try:
                socket.create_connection(("127.0.0.1", self.port), timeout=1).close()
                if self.authority.is_file() and self.get("/healthz").ok:
                    return
            except (OSError, requests.RequestException):
                pass
            time.sleep(0.2)
        self.stop()
        raise RuntimeError("the proxy did not start: " + self.log.read_text()[-2000:])

    def get(self, path, **more):
        """A GET through the proxy, its certificate checked against its own authority."""
        return self.session().get(self.address + path, timeout=30, **more)

    def session(self):
        """A requests session that trusts the proxy's authority."""
        made = requests.Session()
        made.trust_env = False
        made.verify = str(self.authority)
        made.headers["Host"] = "%s:%d" % (NAME, self.port)
        made.mount("https://", _ByName())
        return made

    def stop(self):
        self.process.terminate()
        self.process.wait(timeout=20)
        self._said.close()
