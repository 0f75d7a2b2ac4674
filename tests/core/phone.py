"""Asks the core under MicroPython in Node, as the app's worker runs it."""

import json
import os
import shutil
import subprocess
from pathlib import Path

import ringwright.core

ROOT = Path(__file__).resolve().parents[2]
CORE = Path(ringwright.core.__file__).parent
PACKAGE = Path("@micropython", "micropython-webassembly-pyscript")
RUNNER = ROOT / "tests" / "micropython.mjs"


def engine():
    """The folder of the MicroPython package: from NODE_PATH, or where the app's build put it."""
    places = [
        *os.environ.get("NODE_PATH", "").split(os.pathsep),
        str(ROOT / "client_pwa" / "node_modules"),
    ]
    for place in places:
        folder = Path(place) / PACKAGE
        if place and (folder / "micropython.mjs").exists():
            return folder
    raise FileNotFoundError("%s: run npm ci in client_pwa first" % PACKAGE)


def asked(lines):
    """The answers to several lines (see micropython.mjs), as text, one for each."""
    node = shutil.which("node")
    if node is None:
        raise FileNotFoundError("node: install Node 20 or newer")
    done = subprocess.run(
        [node, str(RUNNER), str(CORE), str(engine())],
        input="".join(json.dumps(line) + "\n" for line in lines),
        capture_output=True,
        text=True,
        timeout=300,
    )
    assert done.returncode == 0, done.stderr[-3000:]
    answers = done.stdout.splitlines()
    assert len(answers) == len(lines), done.stderr[-3000:]
    return answers
