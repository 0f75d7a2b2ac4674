"""Serves the app over https to phones on the local network: service/start --phone.

usage: python -m ringwright.phone --config FILE [--port 8443] [--welcome-port 8000] [--workers N]
       [--address ADDRESS ...]

Two servers: the service itself under the certificate of this machine's own authority, and the
plain-http page that leads a phone there. Both stop with this process.
"""

import argparse
import json
import os
import signal
import subprocess
import sys
import time
from collections.abc import Mapping, Sequence
from pathlib import Path

import segno

from . import addresses, authority, welcome
from .announce import Announcement

# How often addresses and certificate are looked at again [s].
LOOK_SECONDS = 60
_STOP_SECONDS = 15
Server = subprocess.Popen[bytes]


def main(arguments: Sequence[str] | None = None) -> int:
    """Runs until told to stop. Returns the exit code."""
    asked = _arguments(arguments)
    # Stopped like Ctrl-C: by whatever runs it, the two servers go with it.
    signal.signal(signal.SIGTERM, signal.default_int_handler)
    reached = asked.address or addresses.found()
    if not reached:
        print(
            "No network here: join the workshop's, or switch on a phone's hotspot and join that, "
            "then start again.",
            file=sys.stderr,
        )
        return 1
    keys = authority.folder()
    own = _identity(keys, reached)
    servers: list[Server] = []
    announced = None
    try:
        servers += [_https(asked, own), _welcome(asked, own)]
        announced = _announced(reached, asked.port)
        print(words(reached, asked, own, announced is not None, keys), flush=True)
        return _watch(servers, keys, reached, bool(asked.address))
    except KeyboardInterrupt:
        return 0
    finally:
        if announced:
            announced.close()
        _stop(servers)


def _stop(servers: Sequence[Server]) -> None:
    for server in servers:
        server.terminate()
    for server in servers:
        try:
            server.wait(_STOP_SECONDS)
        except subprocess.TimeoutExpired:
            server.kill()


def _arguments(arguments: Sequence[str] | None) -> argparse.Namespace:
    parser = argparse.ArgumentParser(prog="service/start --phone")
    parser.add_argument("--config", required=True, help="gunicorn's settings")
    parser.add_argument("--port", type=int, default=8443, help="of https")
    parser.add_argument("--welcome-port", type=int, default=8000, help="of the page for new phones")
    parser.add_argument("--workers", type=int, default=0)
    parser.add_argument(
        "--address",
        action="append",
        type=_private_address,
        help="private address by which phones reach this machine, where it has several",
    )
    return parser.parse_args(arguments)


def _private_address(text: str) -> str:
    try:
        if authority.is_private(text):
            return text
    except ValueError:
        pass
    raise argparse.ArgumentTypeError("%r is no address of a private network" % text)


def _identity(keys: Path, reached: list[str]) -> authority.Identity:
    return authority.identity(keys, addresses.names(), addresses.in_certificate(reached))


def _https(asked: argparse.Namespace, own: authority.Identity) -> Server:
    command = ["--bind", "0.0.0.0:%d" % asked.port]
    command += ["--certfile", str(own.certificate), "--keyfile", str(own.key)]
    if asked.workers:
        command += ["--workers", str(asked.workers)]
    return _gunicorn(asked, [*command, "ringwright.wsgi:app"])


def _welcome(asked: argparse.Namespace, own: authority.Identity) -> Server:
    settings = {
        "authority": str(own.authority),
        "port": asked.port,
        "welcome_port": asked.welcome_port,
        "addresses": asked.address,
    }
    return _gunicorn(
        asked,
        [
            "--bind",
            "0.0.0.0:%d" % asked.welcome_port,
            "--workers",
            "1",
            "ringwright.phone.welcome:app_from_environment()",
        ],
        {welcome.SETTING: json.dumps(settings)},
    )


def _gunicorn(
    asked: argparse.Namespace, command: Sequence[str], more: Mapping[str, str] | None = None
) -> Server:
    return subprocess.Popen(
        [
            sys.executable,
            *("-m", "gunicorn", "--config", asked.config, "--log-level", "warning"),
            *command,
        ],
        env={**os.environ, **(more or {})},
    )


def _announced(reached: list[str], port: int) -> Announcement | None:
    try:
        return Announcement(reached, port)
    except OSError as error:
        print("The name is not announced on this network: %s" % error, file=sys.stderr)
        return None


def words(
    reached: Sequence[str],
    asked: argparse.Namespace,
    own: authority.Identity,
    named: bool,
    keys: Path,
) -> str:
    """What the terminal says. named: whether ringwright.local is answered for."""
    welcome_address = "http://%s:%d/" % (reached[0], asked.welcome_port)
    lines = ["", "Ringwright for phones on this network", ""]
    if sys.stdout.isatty() or os.environ.get("FORCE_CODE"):
        lines.append(code(welcome_address))
    lines.append("  On a phone, open   %s   (the page leads through the rest)" % welcome_address)
    for address in reached:
        lines.append("  The app itself     https://%s:%d/" % (address, asked.port))
    if named:
        lines.append("                     https://%s:%d/" % (addresses.OWN_NAME, asked.port))
    lines += [
        "",
        "  Certificate, to compare with what the phone shows (SHA-256):",
        "  %s" % own.fingerprint,
        "  Keys are in %s; to withdraw them all, delete that folder." % keys,
        "Stop it with Ctrl-C.",
        "",
    ]
    return "\n".join(lines)


def code(text: str) -> str:
    """A QR code for a terminal, two rows of cells a line."""
    rows = [list(row) for row in segno.make(text, error="l").matrix_iter(border=2)]
    if len(rows) % 2:
        rows.append([0] * len(rows[0]))
    # Dark letters on light paper whatever the terminal's colours: light cells are drawn.
    block = {(0, 0): "\u2588", (0, 1): "\u2580", (1, 0): "\u2584", (1, 1): " "}
    lines = []
    for above, below in zip(rows[::2], rows[1::2], strict=True):
        lines.append(
            "  " + "".join(block[bool(a), bool(b)] for a, b in zip(above, below, strict=True))
        )
    return "\n".join(lines)


def _watch(servers: Sequence[Server], keys: Path, reached: list[str], fixed: bool) -> int:
    """Renews the certificate as it ages and as addresses change, while both servers run.

    fixed: True where the addresses were given.
    """
    looked = time.monotonic()
    while all(server.poll() is None for server in servers):
        time.sleep(1.0)
        if time.monotonic() - looked >= LOOK_SECONDS:
            looked = time.monotonic()
            now = reached if fixed else addresses.found() or reached
            # Each caller is shown the file as it is then: no server need start again.
            _identity(keys, now)
            if now != reached:
                reached = now
                print("New address: %s" % ", ".join(reached), flush=True)
    return 1


if __name__ == "__main__":
    sys.exit(main())
