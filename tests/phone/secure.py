"""What the tests of the phone's https share: the service as `service/start --phone` starts it, and
browsers that know a name which is not localhost."""

import os
import socket
import subprocess
import sys
import time
from pathlib import Path

import requests

from conftest import ROOT, free_port

NAME = "ringwright.local"


class Workshop:
    """`python -m ringwright.phone` on this machine, with keys of its own, until `stop`."""

    def __init__(self, keys, more=()):
        self.port, self.welcome_port = free_port(), free_port()
        self.keys = Path(keys)
        self.said = ""
        self.secure = "https://%s:%d" % (NAME, self.port)
        self.welcome = "http://%s:%d" % (NAME, self.welcome_port)
        self.process = subprocess.Popen(
            [
                sys.executable,
                *("-m", "ringwright.phone"),
                *("--config", str(ROOT / "docker" / "gunicorn.conf.py")),
                *("--port", str(self.port), "--welcome-port", str(self.welcome_port)),
                *("--workers", "1", "--address", "127.0.0.1", *more),
            ],
            env={
                **os.environ,
                "PYTHONPATH": str(ROOT / "service"),
                "RINGWRIGHT_KEYS": str(self.keys),
                "FORCE_CODE": "1",
            },
            stdout=subprocess.PIPE,
            text=True,
        )
        end = time.monotonic() + 60
        while time.monotonic() < end:
            try:
                for port in (self.port, self.welcome_port):
                    socket.create_connection(("127.0.0.1", port), timeout=1).close()
                requests.get(
                    "https://localhost:%d/healthz" % self.port,
                    verify=str(self.keys / "authority.pem"),
                    timeout=10,
                )
                self.said = self._words()
                return
            except OSError:
                if self.process.poll() is not None:
                    break
                time.sleep(0.1)
        self.stop()
        raise RuntimeError("it did not start")

    @property
    def authority(self):
        """Path of the authority's certificate."""
        return self.keys / "authority.pem"

    def stop(self):
        """Stops it and gives what it had said."""
        self.process.terminate()
        said, _ = self.process.communicate(timeout=40)
        return self.said + said

    def _words(self):
        """The terminal's words to their end: both servers may answer before they are said."""
        said = ""
        for line in self.process.stdout:
            said += line
            if line.startswith("Stop it"):
                break
        return said


def trust(home, certificate):
    """Makes Chromium with this home folder trust a certificate, as a person's own choice."""
    store = Path(home) / ".pki" / "nssdb"
    store.mkdir(parents=True)
    for arguments in (
        ["-N", "--empty-password"],
        ["-A", "-t", "C,,", "-n", "workshop", "-i", str(certificate)],
    ):
        subprocess.run(["certutil", "-d", "sql:%s" % store, *arguments], check=True, timeout=60)
