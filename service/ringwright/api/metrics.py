"""/metrics: how many requests, how they ended and how long they took, for a program that watches.

Text exposition format 0.0.4, as Prometheus and others read it. Off until RINGWRIGHT_METRICS is on;
the numbers are those of all workers of this service. Addresses are told as watched.py tells them.
"""

import time
from bisect import bisect_left
from collections.abc import Callable, Iterator, Mapping, Sequence

from flask import Flask, Response

from .. import __version__
from .problems import KINDS
from .shared_counts import SharedCounts
from .watched import METHODS, NONE, Done, name_of

SETTING = "RINGWRIGHT_METRICS"
ADDRESS = "/metrics"
MEDIA_TYPE = "text/plain; version=0.0.4; charset=utf-8"
# Upper ends of the classes of time [s]; the last class has none.
BOUNDS = (0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1.0, 2.5, 5.0, 10.0)
# The files of the app are one address: nobody watches them one by one.
APP = "(app)"
_METHODS = (*METHODS, NONE)
_STATUSES = (200, 304, 308, *sorted({kind.status for kind in KINDS.values()}), NONE)


class Metrics:
    """Counts of the requests of an application. To be made before the server forks."""

    def __init__(self, app: Flask, clock: Callable[[], float] = time.time) -> None:
        rules = [
            (name_of(rule), rule.endpoint.startswith("app-")) for rule in app.url_map.iter_rules()
        ]
        own = {rule for rule, of_app in rules if not of_app}
        self._addresses = [*sorted(own | {ADDRESS}), APP, NONE]
        self._place = {address: at for at, address in enumerate(self._addresses)}
        self._place.update((rule, self._place[APP]) for rule, of_app in rules if of_app)
        self._method = {method: at for at, method in enumerate(_METHODS)}
        self._status = {status: at for at, status in enumerate(_STATUSES)}
        self._kinds = len(_METHODS) * len(_STATUSES)
        # Of an address: requests by method and status, by class of time, then seconds and bytes.
        self._width = self._kinds + len(BOUNDS) + 1 + 2
        self._counts = SharedCounts(self._width * len(self._addresses))
        self._since = clock()

    def count(self, done: Done) -> None:
        """Counts a Done of watched.py."""
        start = self._place[done.address] * self._width
        status = self._status.get(done.status, len(_STATUSES) - 1)
        add = self._counts.add
        add(start + self._method[done.method] * len(_STATUSES) + status)
        add(start + self._kinds + bisect_left(BOUNDS, done.seconds))
        add(start + self._width - 2, done.seconds)
        add(start + self._width - 1, float(done.size))

    def text(self) -> str:
        """Everything counted so far, in the exposition format."""
        totals = self._counts.totals()
        used = []
        for at, address in enumerate(self._addresses):
            numbers = totals[at * self._width : (at + 1) * self._width]
            if any(numbers):
                used.append((address, numbers))
        lines = [
            *_head("ringwright_info", "gauge", "The version of the service."),
            _line("ringwright_info", {"version": __version__}, 1.0),
            *_head("ringwright_start_time_seconds", "gauge", "When it was started, since 1970."),
            _line("ringwright_start_time_seconds", {}, self._since),
            *_head("ringwright_requests_total", "counter", "Requests by how they ended."),
        ]
        for address, numbers in used:
            lines += self._requests(address, numbers)
        lines += _head("ringwright_request_seconds", "histogram", "Seconds until answers ended.")
        for address, numbers in used:
            lines += self._times(address, numbers)
        lines += _head("ringwright_answer_bytes_total", "counter", "Bytes of answers' bodies.")
        for address, numbers in used:
            lines.append(_line("ringwright_answer_bytes_total", {"path": address}, numbers[-1]))
        return "\n".join(lines) + "\n"

    def _requests(self, address: str, numbers: Sequence[float]) -> Iterator[str]:
        for method in _METHODS:
            for status in _STATUSES:
                at = self._method[method] * len(_STATUSES) + self._status[status]
                if numbers[at]:
                    labels = {"method": method, "path": address, "status": str(status)}
                    yield _line("ringwright_requests_total", labels, numbers[at])

    def _times(self, address: str, numbers: Sequence[float]) -> Iterator[str]:
        name, total = "ringwright_request_seconds", 0.0
        classes = numbers[self._kinds : self._kinds + len(BOUNDS) + 1]
        for bound, number in zip((*map(str, BOUNDS), "+Inf"), classes, strict=True):
            total += number
            yield _line(name + "_bucket", {"path": address, "le": bound}, total)
        yield _line(name + "_sum", {"path": address}, numbers[-2])
        yield _line(name + "_count", {"path": address}, total)

    def add_to(self, app: Flask) -> None:
        """Gives the application the address of the counts."""
        app.add_url_rule(ADDRESS, "metrics", lambda: Response(self.text(), content_type=MEDIA_TYPE))


def _head(name: str, kind: str, told: str) -> list[str]:
    return ["# HELP %s %s" % (name, told), "# TYPE %s %s" % (name, kind)]


def _line(name: str, labels: Mapping[str, str], number: float) -> str:
    # Labels are names of ours: nothing in them needs to be escaped.
    told = ",".join('%s="%s"' % pair for pair in labels.items())
    return "%s%s %r" % (name, "{%s}" % told if told else "", number)
