"""A small load generator on 127.0.0.1: one kept connection, as many requests as it will answer.

Bounded in time and count; used only against servers that the benchmark itself started.
"""

import socket
import time


def request_bytes(method, path, body=b"", more=(), host="127.0.0.1"):
    """An HTTP/1.1 request as bytes; more: mapping of further headers."""
    head = "%s %s HTTP/1.1\r\nHost: %s\r\nAccept: application/json\r\n" % (method, path, host)
    for name, value in dict(more).items():
        head += "%s: %s\r\n" % (name, value)
    if body:
        head += "Content-Type: application/json\r\nContent-Length: %d\r\n" % len(body)
    return head.encode() + b"\r\n" + body


class Connection:
    """One connection, opened again when the server closes it.

    secure: for https (SSLContext, name of the server).
    """

    def __init__(self, port, secure=None):
        self.port = port
        self.secure = secure
        self.socket = None

    def exchange(self, message):
        """Sends a request and returns (status, body)."""
        status, _, body = self._exchange(message)
        return status, body

    def head_of(self, message):
        """Sends a request and returns the headers of the answer, names in lower case."""
        return self.status_of(message)[1]

    def status_of(self, message):
        """Sends a request and returns (status, headers, names in lower case)."""
        status, lines, _ = self._exchange(message)
        pairs = (line.partition(":") for line in lines)
        return status, {name.lower(): value.strip() for name, _, value in pairs}

    def _exchange(self, message):
        if self.socket is None:
            self.socket = socket.create_connection(("127.0.0.1", self.port), timeout=60)
            self.socket.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
            if self.secure is not None:
                context, name = self.secure
                self.socket = context.wrap_socket(self.socket, server_hostname=name)
        self.socket.sendall(message)
        received = b""
        while b"\r\n\r\n" not in received:
            received += self._more()
        head, _, body = received.partition(b"\r\n\r\n")
        first, *lines = head.decode("latin-1").split("\r\n")
        fields = {line.partition(":")[0].lower(): line.partition(":")[2].strip() for line in lines}
        status = int(first.split()[1])
        length = 0 if status == 304 else int(fields["content-length"])
        while len(body) < length:
            body += self._more()
        if fields.get("connection", "").lower() == "close":
            self.close()
        return status, lines, body

    def _more(self):
        piece = self.socket.recv(262144)
        if not piece:
            raise ConnectionError("the server closed the connection in mid-answer")
        return piece

    def close(self):
        if self.socket is not None:
            self.socket.close()
            self.socket = None


def rate(port, message, seconds, most=100_000):
    """Requests answered per second over one connection; every answer must be a 200."""
    connection = Connection(port)
    count = 0
    try:
        start = time.perf_counter()
        while count < most and time.perf_counter() - start < seconds:
            status, _ = connection.exchange(message)
            assert status == 200, status
            count += 1
        return count / (time.perf_counter() - start)
    finally:
        connection.close()
