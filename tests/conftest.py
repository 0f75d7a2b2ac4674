"""What all tests share: a steady hypothesis, the application, and a server that really runs."""

import os
import signal
import socket
import subprocess
import sys
import time
from pathlib import Path

import hypothesis
import pytest
import requests

import times

ROOT = Path(__file__).parents[1]

# The same examples every time: a red run can be repeated, and a green one means the same tomorrow.
# hypothesis also draws on numbers in the modules that are loaded, so a whole run and one file alone
# see different examples.
hypothesis.settings.register_profile(
    "steady",
    derandomize=True,
    deadline=None,
    database=None,
    suppress_health_check=[hypothesis.HealthCheck.too_slow],
)
# By hand: --hypothesis-profile long tests/contract/test_schemathesis.py
hypothesis.settings.register_profile("long", hypothesis.settings.get_profile("steady"))
hypothesis.settings.load_profile("steady")


def pytest_addoption(parser):
    """What is asked for by hand: a longer watch of tests/bench/test_soak.py, and times noted."""
    told = "minutes of tests/bench/test_soak.py, from 1.5 on; memory is watched after the first"
    parser.addoption("--soak-minutes", type=float, default=2.0, help=told)
    told = "writes what the tests took into tests/times.txt"
    parser.addoption("--note-times", action="store_true", help=told)


def pytest_configure(config):
    """Notes what the tests take where it is asked for; the workers' reports all come here."""
    if config.getoption("--note-times") and not hasattr(config, "workerinput"):
        config.pluginmanager.register(times.Notes())


@pytest.fixture(scope="session")
def root():
    """The folder of the project."""
    return ROOT


@pytest.fixture(scope="session")
def app():
    """The application with the core's own table of calculations."""
    from ringwright.api import create_app

    return create_app()


@pytest.fixture
def client(app):
    """Flask's test client on that application."""
    return app.test_client()


def free_port():
    """A port on 127.0.0.1 that nothing listens on."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return probe.getsockname()[1]


class Server:
    """A gunicorn that serves `application` on 127.0.0.1 until `stop`.

    service: the folder of the package, the project's own when None. front: a command that the
    server is started by. before: function called in the new process before it starts.
    """

    def __init__(
        self,
        application="ringwright.wsgi:app",
        workers=1,
        folder=None,
        more=(),
        service=None,
        front=(),
        before=None,
        stdout=None,
        stderr=None,
    ):
        self.started = {"preexec_fn": before, "stdout": stdout, "stderr": stderr}
        self.port = free_port()
        self.address = "http://127.0.0.1:%d" % self.port
        paths = [str(service or ROOT / "service"), *([str(folder)] if folder else [])]
        self.environment = {**os.environ, "PYTHONPATH": os.pathsep.join(paths)}
        self.command = [
            *front,
            sys.executable,
            *("-m", "gunicorn"),
            *("--config", str(ROOT / "docker" / "gunicorn.conf.py")),
            *("--bind", "127.0.0.1:%d" % self.port),
            *("--workers", str(workers)),
            *("--log-level", "warning"),
            *more,
            application,
        ]
        self.start_again()

    def start_again(self):
        """Starts it, the first time or once it has ended, on the same port."""
        self.process = subprocess.Popen(self.command, env=self.environment, **self.started)
        # A machine that does much else takes its time.
        for _ in range(900):
            try:
                socket.create_connection(("127.0.0.1", self.port), timeout=1).close()
                requests.get(self.address + "/healthz", timeout=5)
                return
            except OSError:
                if self.process.poll() is not None:
                    break
                time.sleep(0.1)
        self.stop()
        raise RuntimeError("the server did not start")

    def stop(self):
        # As Ctrl-C does, at once: told to end (SIGTERM) it answers what is under way.
        self.process.send_signal(signal.SIGINT)
        self.process.wait(timeout=20)

    def kill(self):
        """Ends it at once with its workers, as a power cut does.

        A worker left alone answers on for a second, and would be taken for a server started again.
        """
        for each in (self.process.pid, *self.workers()):
            os.kill(each, signal.SIGKILL)
        self.process.wait(timeout=20)

    def workers(self):
        """The process ids of its workers."""
        number = self.process.pid
        told = Path("/proc/%d/task/%d/children" % (number, number)).read_text(encoding="ascii")
        return [int(each) for each in told.split()]


@pytest.fixture(scope="session")
def server():
    """The address of the service under gunicorn, with two workers."""
    running = Server(workers=2)
    yield running.address
    running.stop()


@pytest.hookimpl(tryfirst=True)
def pytest_collection_modifyitems(items):
    """Puts the longest files first and marks what is lengthy, as times.txt has it.

    What drives a browser ends sooner, and is tried twice more: Chromium may start too late.
    """
    seconds = times.noted()
    times.order(items, seconds)
    times.mark_lengthy(items, seconds)
    for item in items:
        if item.get_closest_marker("browser"):
            item.add_marker(pytest.mark.flaky(reruns=2, reruns_delay=2))
            if not item.get_closest_marker("timeout"):
                item.add_marker(pytest.mark.timeout(240))


def pytest_ignore_collect(collection_path, config):
    """Leaves out what is not asked for as a whole, before it is read.

    schemathesis makes its requests up while tests are collected, and takes minutes for it.
    """
    asked = config.option.markexpr
    if "not lengthy" in asked and times.all_lengthy(collection_path):
        return True
    unasked = "not slow" in asked or asked.startswith("browser")
    if collection_path.name == "test_schemathesis.py" and unasked:
        return True
    return None
