"""The commands that people run, as they run them: on a fresh clone, in a fresh environment."""

import os
import signal
import subprocess
import time

import pytest
import requests

from conftest import free_port

pytestmark = pytest.mark.waits

# Packages from the net, the app's build and a start, on a slow machine.
LONGEST_START = 600


def run(root, *words):
    """A command of the project, run to its end."""
    return subprocess.run(words, cwd=root, capture_output=True, text=True, check=False)


@pytest.mark.parametrize(
    "script",
    [
        "service/start",
        "service/environment",
        "service/build_app",
        "service/find_python",
        "docker/parts",
        "tests/run",
        ".ci/run",
    ],
)
def test_scripts_are_sound_and_can_be_run(root, script):
    assert run(root, "bash", "-n", script).returncode == 0
    assert os.access(root / script, os.X_OK)


def test_start_explains_itself(root):
    told = run(root, "service/start", "--help")
    assert told.returncode == 0
    for word in ("--port", "--host", "--workers"):
        assert word in told.stdout


def test_start_refuses_what_it_does_not_know(root):
    told = run(root, "service/start", "--prot", "1")
    assert told.returncode == 2
    assert "--prot" in told.stderr
    assert "--help" in told.stderr


def test_the_python_that_is_found_will_do(root):
    found = run(root, "service/find_python").stdout.strip()
    done = run(root, found, "-c", "import sys; assert sys.version_info >= (3, 11)")
    assert done.returncode == 0


@pytest.mark.slow
def test_start_on_a_fresh_clone(root, tmp_path):
    if not (root / ".git").exists():
        pytest.skip("this is no clone")
    clone = tmp_path / "clone"
    subprocess.run(["git", "clone", "--quiet", "--no-hardlinks", root, clone], check=True)
    port = free_port()
    # A fresh environment: nothing of ours but what finds programs and packages.
    kept = ("HOME", "PIP_", "SSL_", "NODE_EXTRA", "LANG", "npm_config_")
    clean = {key: value for key, value in os.environ.items() if key.startswith(kept)}
    clean["PATH"] = "/usr/local/sbin:/usr/local/bin:/usr/sbin:/usr/bin:/sbin:/bin"
    log = tmp_path / "log"
    with log.open("w") as written:
        process = subprocess.Popen(
            ["service/start", "--port", str(port), "--workers", "1"],
            cwd=clone,
            env=clean,
            stdout=written,
            stderr=subprocess.STDOUT,
            start_new_session=True,
        )
    try:
        address = "http://127.0.0.1:%d" % port
        deadline = time.monotonic() + LONGEST_START
        while time.monotonic() < deadline and process.poll() is None:
            try:
                requests.get(address + "/readyz", timeout=2).raise_for_status()
                break
            except requests.RequestException:
                time.sleep(1)
        answer = requests.get(
            address + "/v1/job", params={"bore": "3 1/8 in", "units": "inch"}, timeout=10
        )
        assert answer.status_code == 200, log.read_text()[-2000:]
        assert answer.json()["sizing"]["figures"]["free_gap"]["unit"] == "in"
        page = requests.get(address + "/", timeout=10)
        assert "wasm-unsafe-eval" in page.headers["Content-Security-Policy"], "no app was built"
        assert address in log.read_text()
    finally:
        os.killpg(process.pid, signal.SIGTERM)
        process.wait(timeout=30)
    # Nothing that the start made is a change of the project.
    status = subprocess.run(
        ["git", "status", "--porcelain"], cwd=clone, capture_output=True, text=True, check=True
    )
    assert status.stdout == ""
