"""What can go wrong, as exceptions that say which input, why, and what to do.

InputProblem is the caller's to mend: one or more Fault entries, each naming a field by its path.
OutOfRange and NotConverged come from inside a formula; a calculation turns them into a finding or
an InputProblem where it can say something more useful, and otherwise lets them through.
"""

from collections import namedtuple

# path: tuple of keys and indexes from the top of the request, such as ("bars", 0, "length").
# code: machine-readable kind. message: what is wrong. remedy: what to do about it.
Fault = namedtuple("Fault", ("path", "code", "message", "remedy"))


class CoreProblem(Exception):
    """Root of everything the core raises on purpose."""

    code = "core-problem"


class InputProblem(CoreProblem):
    """The request cannot be worked as it stands; `faults` is a list of Fault."""

    code = "invalid-input"

    def __init__(self, faults):
        self.faults = list(faults)
        super().__init__("; ".join([fault.message for fault in self.faults]))


def unworkable(name, message, remedy, code="range"):
    """The InputProblem of one input. name: its name. message: what is wrong. remedy: what to do."""
    return InputProblem([Fault((name,), code, message, remedy)])


class OutOfRange(CoreProblem):
    """A formula was asked for something outside the range in which it holds."""

    code = "out-of-range"

    def __init__(self, name, value, limit, source):
        self.name = name
        self.value = value
        self.limit = limit
        self.source = source
        super().__init__("%s = %r is outside %s (%s)" % (name, value, limit, source))


class NotConverged(CoreProblem):
    """A search stopped before it reached its tolerance."""

    code = "not-converged"

    def __init__(self, name, value, limit, source):
        self.name = name
        self.value = value
        self.limit = limit
        self.source = source
        super().__init__("%s stopped at %r, wanted %s (%s)" % (name, value, limit, source))
