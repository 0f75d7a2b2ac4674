"""The server's worker, which lets go of idle connections when it is told to end (SIGTERM).

gunicorn's own waits for whoever keeps a connection open as long as for a request under way: the
whole of its graceful time. Here a connection on which nothing is asked is closed after LINGER. Who
asks until then is answered and told that the connection closes (RFC 9112, 9.6), so that a caller
who asks without pause loses nothing; a request under way is answered whole.

New connections are taken for RINGWRIGHT_CLOSE_AFTER seconds more, and /readyz says that it is not
ready: a proxy that looks there turns away before the door closes, and no request meets it.
"""

import select
import time
from functools import partial
from typing import Any

import gevent
from gevent.event import Event
from gevent.pool import Pool
from gevent.server import StreamServer
from gunicorn.sock import ssl_context
from gunicorn.workers.ggevent import GeventWorker

# How long a worker that ends waits for the next request of an open connection [s].
LINGER = 0.5
# How often a worker tells that it lives, and one that ends looks whether all is answered [s].
_BEAT = 1.0
_LOOK = 0.1


class _Waiting(gevent.Timeout):
    """While a connection waits for its next request, and how long at most."""

    def __init__(self, worker: "Worker") -> None:
        super().__init__(worker.cfg.keepalive if worker.alive else LINGER, False)
        self.worker = worker

    def __enter__(self) -> "_Waiting":
        self.waiter = gevent.getcurrent()
        self.worker.waiting.add(self)
        entered: _Waiting = super().__enter__()
        return entered

    def __exit__(self, *raised: Any) -> bool | None:
        self.worker.waiting.discard(self)
        ended: bool | None = super().__exit__(*raised)
        return ended

    def asked(self) -> bool:
        """Whether something came that was not read yet."""
        client = self.worker.clients.get(self.waiter)
        return client is not None and bool(select.select([client], [], [], 0)[0])

    def run_out(self) -> None:
        """Ends the wait, as if its time were over. To be called by the loop."""
        if self in self.worker.waiting:
            self.waiter.throw(self)


class Worker(GeventWorker):
    """gunicorn's gevent worker, but for its end."""

    def __init__(self, *given: Any, **named: Any) -> None:
        super().__init__(*given, **named)
        self.waiting: set[_Waiting] = set()
        # From the greenlet of a connection its socket.
        self.clients: dict[Any, Any] = {}
        self._told_to_end = Event()

    def timeout_ctx(self) -> _Waiting:
        return _Waiting(self)

    def handle(self, listener: Any, client: Any, addr: Any) -> None:
        waiter = gevent.getcurrent()
        self.clients[waiter] = client
        try:
            super().handle(listener, client, addr)
        finally:
            del self.clients[waiter]

    def run(self) -> None:
        servers = [self._listening(each) for each in self.sockets]
        while self.alive:
            self.notify()
            self._told_to_end.wait(_BEAT)
        end = time.monotonic() + self.cfg.graceful_timeout
        closes = min(end, time.monotonic() + self._turned_away())
        while time.monotonic() < closes:
            self.notify()
            gevent.sleep(_LOOK)
        for server in servers:
            server.close()
        while self.clients and time.monotonic() < end:
            self.notify()
            gevent.sleep(_LOOK)
        if self.clients:
            self.log.warning("%d requests were not answered in time", len(self.clients))
            for server in servers:
                server.stop(timeout=1)

    def _turned_away(self) -> float:
        """Says at /readyz that this service ends; how long it takes new connections yet [s]."""
        told = getattr(self.wsgi, "extensions", {}).get("ringwright", {})
        told["flaw"] = "it is told to end"
        return float(told.get("close_after", 0.0))

    def _listening(self, listener: Any) -> StreamServer:
        listener.setblocking(1)
        secure = {"ssl_context": ssl_context(self.cfg)} if self.cfg.is_ssl else {}
        pool = Pool(self.worker_connections)
        server = StreamServer(listener, partial(self.handle, listener), spawn=pool, **secure)
        if self.cfg.workers > 1:
            # One at a time, so that the others get theirs.
            server.max_accept = 1
        server.start()
        return server

    def handle_exit(self, sig: Any, frame: Any) -> None:
        super().handle_exit(sig, frame)
        gevent.spawn(self._let_go)

    def _let_go(self) -> None:
        """Closes what is idle, again and again: a head that comes by halves is nothing asked."""
        self._told_to_end.set()
        loop = gevent.get_hub().loop
        while True:
            gevent.sleep(LINGER)
            for each in list(self.waiting):
                if not each.asked():
                    loop.run_callback(each.run_out)
