"""Numbers that all workers of a service count up and each of them can read, without a disk.

They lie in memory that is shared when the server forks. Each process has a row of its own, so that
none waits for another; the row is held by a lock of the operating system's that ends with the
process, however it ends. The next process counts on in that row, so no sum ever falls.
"""

import fcntl
import mmap
import os
import tempfile
import threading
import weakref

# Rows: more than any server here has workers. A process beyond that shares the last one.
ROWS = 64
_BYTES = 8


class SharedCounts:
    """`width` numbers, all 0.0 at first. To be made before the server forks."""

    def __init__(self, width: int) -> None:
        # The first number of a row says that the row was ever used.
        self._length = width + 1
        size = ROWS * self._length * _BYTES
        self._file = _memory_file()
        weakref.finalize(self, os.close, self._file)
        os.ftruncate(self._file, size)
        self._numbers = memoryview(mmap.mmap(self._file, size)).cast("d")
        self._process: int | None = None
        self._start = 0
        self._counting = threading.Lock()

    def add(self, at: int, by: float = 1.0) -> None:
        """Adds to the number at that index."""
        with self._counting:
            if self._process != os.getpid():
                self._take_row()
            self._numbers[self._start + 1 + at] += by

    def totals(self) -> list[float]:
        """The sums over all processes, a list."""
        numbers, length = self._numbers, self._length
        used = [row * length for row in range(ROWS) if numbers[row * length]]
        rows = [numbers[start + 1 : start + length].tolist() for start in used]
        return [sum(column) for column in zip(*rows, strict=True)] or [0.0] * (length - 1)

    def _take_row(self) -> None:
        for row in range(ROWS):
            try:
                fcntl.lockf(self._file, fcntl.LOCK_EX | fcntl.LOCK_NB, 1, row)
            except OSError:
                continue
            break
        self._start = row * self._length
        self._numbers[self._start] = 1.0
        self._process = os.getpid()


def _memory_file() -> int:
    """A file without a name, by its descriptor; in memory where the system can (Linux)."""
    if hasattr(os, "memfd_create"):
        return os.memfd_create("ringwright")
    with tempfile.TemporaryFile() as file:
        return os.dup(file.fileno())
