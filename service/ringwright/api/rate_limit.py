"""So many requests a minute from one address, counted over all workers of a service.

For each address a moment is kept until which it has used up its share of time; a request pushes it
on by one share, and is refused where it would lie further ahead than a burst (the generic cell rate
algorithm of ITU-T I.371, annex A; from memory). The moments lie in shared memory of a fixed size,
under keyed hashes: no address is kept, and no number of addresses takes more memory. Two workers
that count one address at the same instant may let one request too many pass.
"""

import ipaddress
import math
import mmap
import secrets
import time
from collections.abc import Callable
from functools import lru_cache
from hashlib import blake2b
from wsgiref.types import WSGIEnvironment

from flask import Flask, request

from . import settings
from .problems import Refused

RATE = "RINGWRIGHT_RATE"
PROXIES = "RINGWRIGHT_PROXIES"
# What is counted; the app's files and the checks of health are always answered.
COUNTED = "/v1/"
# So much of a minute's requests may come at once.
_BURST = 1.0 / 6.0
# Addresses that are counted at a time, and places that one address may be at.
PLACES = 16_384
_TRIES = 8
_MINUTE = 60.0
# What one household or club has of the longer addresses (RFC 6177 gives a site no less).
_LONG_PREFIX = 64


class TooMany(Refused):
    """This address has asked more than its share."""

    def __init__(self, wait: float) -> None:
        super().__init__("too-many-requests", "this address asks more than its share")
        self.headers = {"Retry-After": str(max(1, math.ceil(wait)))}


class RateLimit:
    """To be made before the server forks."""

    def __init__(self, rate: float, clock: Callable[[], float] = time.monotonic) -> None:
        """rate: requests a minute. clock: seconds that all workers read alike."""
        self._share = _MINUTE / rate
        self._ahead = (max(1.0, rate * _BURST) - 1.0) * self._share
        self._clock = clock
        self._key = secrets.token_bytes(16)
        # Shared with every process that is forked from this one.
        self._hashes = memoryview(mmap.mmap(-1, PLACES * 8)).cast("Q")
        self._moments = memoryview(mmap.mmap(-1, PLACES * 8)).cast("d")

    def wait(self, address: str) -> float:
        """Seconds until this address may ask, 0.0 where it may now; counts it then.

        address: text, as client_of gives it.
        """
        now = self._clock()
        at = self._place(address, now)
        moment = max(self._moments[at], now)
        if moment - now > self._ahead + 1e-9:
            return moment - now - self._ahead
        self._moments[at] = moment + self._share
        return 0.0

    def _place(self, address: str, now: float) -> int:
        digest = blake2b(address.encode(), digest_size=8, key=self._key).digest()
        # 0 marks a place that was never used.
        number = int.from_bytes(digest, "little") or 1
        places = [(number + step) % PLACES for step in range(_TRIES)]
        for at in places:
            if self._hashes[at] == number:
                return at
        # A place whose address has used up nothing any more, else the one that soonest will.
        at = min(places, key=self._moments.__getitem__)
        self._hashes[at] = number
        self._moments[at] = now
        return at


def client_of(environ: WSGIEnvironment, proxies: int) -> str:
    """The network address that a request came from; of the longer ones what a site has.

    proxies: how many stand in front and are believed; what others write into X-Forwarded-For is
    not.
    """
    if proxies:
        told = environ.get("HTTP_X_FORWARDED_FOR", "").split(",")
        site = _site(told[-proxies].strip()) if len(told) >= proxies else None
        if site is not None:
            return site
    peer = environ.get("REMOTE_ADDR", "")
    return _site(peer) or peer


@lru_cache(maxsize=1024)
def _site(text: str) -> str | None:
    try:
        address = ipaddress.ip_address(text)
    except ValueError:
        return None
    if address.version == 4:
        return str(address)
    if address.ipv4_mapped:
        return str(address.ipv4_mapped)
    return str(ipaddress.ip_network((int(address), _LONG_PREFIX), strict=False))


def add_to(app: Flask) -> None:
    """Lets the application refuse, by the settings; nothing is done where no rate is set."""
    rate: int = settings.value_of(RATE)
    proxies: int = settings.value_of(PROXIES)
    if not rate:
        return
    limit = RateLimit(rate)

    def refuse() -> None:
        if request.path.startswith(COUNTED):
            wait = limit.wait(client_of(request.environ, proxies))
            if wait:
                raise TooMany(wait)

    app.before_request(refuse)
