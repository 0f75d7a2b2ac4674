"""Clients that are slow, silent or half done, on this machine only, in numbers and for a time that
end by themselves."""

import socket
import ssl
import threading
import time
from contextlib import contextmanager

KINDS = ("silent", "headers", "body", "reader")
_HEAD = "POST /v1/sizing HTTP/1.1\r\nHost: %s\r\nContent-Type: application/json\r\n"


def _connected(port, name):
    plain = socket.create_connection(("127.0.0.1", port), timeout=5)
    if name is None:
        return plain
    context = ssl.create_default_context()
    context.check_hostname = False
    context.verify_mode = ssl.CERT_NONE
    return context.wrap_socket(plain, server_hostname=name)


def _began(link, kind, host):
    """The first bytes of one client of a kind."""
    if kind == "headers":
        link.sendall(b"G")
    elif kind == "body":
        link.sendall((_HEAD % host + "Content-Length: 5000\r\n\r\n{").encode())
    elif kind == "reader":
        link.setsockopt(socket.SOL_SOCKET, socket.SO_RCVBUF, 2048)
        link.sendall(("GET /openapi.json HTTP/1.1\r\nHost: %s\r\n\r\n" % host).encode())


@contextmanager
def under(port, kind, count, name=None, seconds=8.0):
    """While it lasts, `count` connections of a kind, a byte a second from those that send.

    port: on 127.0.0.1. kind: one of KINDS. name: of the server for https, None for http.
    """
    links = []
    for _ in range(count):
        try:
            # The silent ones say nothing at all, not even what https begins with.
            link = _connected(port, None if kind == "silent" else name)
            _began(link, kind, name or "127.0.0.1")
            links.append(link)
        except OSError:
            break
    ending = threading.Event()

    def drip():
        end = time.monotonic() + seconds
        while not ending.is_set() and time.monotonic() < end:
            for link in links:
                try:
                    if kind in ("headers", "body"):
                        link.sendall(b" ")
                except OSError:
                    pass
            ending.wait(1.0)

    thread = threading.Thread(target=drip, daemon=True)
    thread.start()
    yield len(links)
    ending.set()
    thread.join(timeout=5)
    for link in links:
        link.close()
