"""Callers in a process of their own, each with one kept connection, asking one thing after another.

usage, in tests/: python -m bench.callers PORT COUNT SECONDS < WHAT
WHAT: JSON with "messages", the requests that each caller goes through from a place of his own, and
for https "authority" (path of its certificate) and "name". Prints, as JSON, the answers "a_second",
milliseconds until half of them ("median") and all but a hundredth ("most") were there, and how
often each of the "statuses" was answered.
"""

import json
import ssl
import subprocess
import sys
import threading
import time
from pathlib import Path

from bench.load import Connection


def call(connection, messages, at, seconds, found):
    """One caller until his time is over; found: list of (status, seconds)."""
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        before = time.perf_counter()
        status, _ = connection.exchange(messages[at % len(messages)])
        found.append((status, time.perf_counter() - before))
        at += 1
    connection.close()


def main(port, count, seconds, what):
    messages = [message.encode("latin-1") for message in what["messages"]]
    secure = None
    if what.get("name"):
        secure = (ssl.create_default_context(cafile=what["authority"]), what["name"])
    found = [[] for _ in range(count)]
    threads = [
        threading.Thread(
            target=call,
            args=(Connection(port, secure), messages, each * 101, seconds, found[each]),
        )
        for each in range(count)
    ]
    began = time.perf_counter()
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    took = time.perf_counter() - began
    if min(map(len, found)) == 0:
        raise SystemExit("a caller was never answered")
    times = sorted(passed for each in found for _, passed in each)
    statuses = {}
    for each in found:
        for status, _ in each:
            statuses[status] = statuses.get(status, 0) + 1
    told = {
        "a_second": len(times) / took,
        "median": times[len(times) // 2] * 1e3,
        "most": times[int(len(times) * 0.99)] * 1e3,
        "statuses": statuses,
    }
    print(json.dumps(told))


def called(port, count, seconds, messages, **secure):
    """What main prints, run in a process of its own and waited for."""
    return begun(port, count, seconds, messages, **secure)()


def begun(port, count, seconds, messages, **secure):
    """Starts the callers, and returns a function that waits for what main prints."""
    command = [sys.executable, "-m", "bench.callers", str(port), str(count), str(seconds)]
    process = subprocess.Popen(
        command,
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
        cwd=Path(__file__).parents[1],
    )
    what = {"messages": [message.decode("latin-1") for message in messages], **secure}
    process.stdin.write(json.dumps(what))
    process.stdin.close()

    def waited():
        with process:
            said = process.stdout.read()
        assert process.returncode == 0
        return json.loads(said)

    return waited


if __name__ == "__main__":
    main(int(sys.argv[1]), int(sys.argv[2]), float(sys.argv[3]), json.load(sys.stdin))
