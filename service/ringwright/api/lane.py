"""A lane for heavy work, so that light calls never wait behind it.

Under gunicorn's gevent worker all requests of a worker share one thread: whoever works for a second
holds everybody else. So work whose cost, known beforehand, is more than HEAVY goes to threads of
its own, few at once, and the loop goes on answering light calls. Only so much work may wait; the
rest is told 503 with Retry-After before anything is spent on it. Where there is no such loop
(Flask's test client, a server of plain threads) the caller's own thread does the work, under the
same numbers.
"""

import contextvars
import math
import sys
import threading
from collections.abc import Callable
from typing import Any, TypeVar

from flask import current_app

from ..named_types import Environment
from .problems import Refused
from .settings import value_of

# What a piece of work gives.
_Done = TypeVar("_Done")

# What costs more [ms] goes to the lane: by as much a light call may be held.
HEAVY = 5.0
# Environment variables; settings.py says what each means.
AT_ONCE = "RINGWRIGHT_HEAVY_AT_ONCE"
QUEUE = "RINGWRIGHT_HEAVY_QUEUE"
PATIENCE = "RINGWRIGHT_HEAVY_PATIENCE"
# Python changes threads this often [s]; by default a light call would wait 5 ms each time it takes
# up its work again.
SWITCH_SECONDS = 0.0005


class Busy(Refused):
    """As much heavy work is waiting as the service takes on."""

    def __init__(self, seconds: int) -> None:
        super().__init__(
            "busy",
            "as much heavy work is waiting as this service takes on; "
            "about %d s of it are left" % seconds,
        )
        self.headers = {"Retry-After": str(seconds)}


def settings(environ: Environment | None = None) -> tuple[int, int, int]:
    """(at once, queue [ms], patience [s]) by the environment. Raises BadSetting."""
    return value_of(AT_ONCE, environ), value_of(QUEUE, environ), value_of(PATIENCE, environ)


class Lane:
    """Heavy work of one process, so much at once and so much waiting."""

    def __init__(self, at_once: int, queue: float, patience: float) -> None:
        """at_once: threads. queue: work that may wait [ms]. patience: longest wait [s]."""
        self._at_once = at_once
        self._queue = queue
        self._patience = patience
        self._places = threading.Semaphore(at_once)
        self._counting = threading.Lock()
        # Cost of all that was taken on and is not done [ms].
        self._taken = 0.0
        # gevent's ThreadPool, once there is one.
        self._threads: Any = None

    def run(self, cost: float, work: Callable[[], _Done]) -> _Done:
        """What work() gives, done here when it is light, else in its turn. Raises Busy.

        cost: of the work [ms].
        """
        if cost <= HEAVY:
            return work()
        self._take(cost)
        try:
            if not self._places.acquire(timeout=self._patience):
                raise self._busy()
            try:
                return self._done(work)
            finally:
                self._places.release()
        finally:
            with self._counting:
                self._taken -= cost

    def _take(self, cost: float) -> None:
        with self._counting:
            # Whoever finds nobody before him is always let in.
            if self._taken > 0.0 and self._taken + cost > self._queue:
                raise self._busy()
            self._taken += cost

    def _busy(self) -> Busy:
        return Busy(max(1, math.ceil(self._taken / 1000.0 / self._at_once)))

    def _done(self, work: Callable[[], _Done]) -> _Done:
        if not _has_loop():
            return work()
        if self._threads is None:
            # Made after the fork, in the worker whose loop it serves.
            from gevent.threadpool import ThreadPool

            sys.setswitchinterval(SWITCH_SECONDS)
            self._threads = ThreadPool(self._at_once)
        # The thread sees the request as its caller does.
        context = contextvars.copy_context()
        outcome: tuple[_Done, Exception | None]
        outcome = self._threads.apply(context.run, (_outcome, work))
        result, error = outcome
        if error is not None:
            raise error
        return result


def worked(cost: float, work: Callable[[], _Done]) -> _Done:
    """What work() gives, by the lane of the application at work. cost: of the work [ms]."""
    lane: Lane = current_app.extensions["ringwright"]["lane"]
    return lane.run(cost, work)


def _has_loop() -> bool:
    """True under gevent, where a thread that works would hold everybody."""
    monkey = sys.modules.get("gevent.monkey")
    return monkey is not None and monkey.is_module_patched("threading")


def _outcome(work: Callable[[], _Done]) -> tuple[_Done | None, Exception | None]:
    """(result, error): gevent would print what is raised in a thread, refusals too."""
    try:
        return work(), None
    except Exception as error:
        return None, error
