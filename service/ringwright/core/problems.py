"""What can go wrong, as exceptions that say which input, why, and what to do.

InputProblem is the caller's to mend: one or more Fault entries, each naming a field by its path.
OutOfRange and NotConverged come from inside a formula; a calculation turns them into a finding or
an InputProblem where it can say something more useful, and otherwise lets them through.
"""

from .records import Quantity, plain


class Fault:
    """One input at fault: which, why, what to do, and the numbers behind the words.

    path: tuple of keys and indexes from the top of the request, such as ("bars", 0, "length").
    code: machine-readable kind. message: what is wrong. remedy: what to do about it. value: what
    was given, lowest and highest: what will do, all in `unit`, None where there is none.
    more_than: True where `lowest` itself will not do. likely: the unit in which the same number
    would do, "" for none.
    """

    def __init__(
        self,
        path,
        code,
        message,
        remedy,
        value=None,
        lowest=None,
        highest=None,
        unit="",
        more_than=False,
        likely="",
    ):
        self.path = path
        self.code = code
        self.message = message
        self.remedy = remedy
        self.value = value
        self.lowest = lowest
        self.highest = highest
        self.unit = unit
        self.more_than = more_than
        self.likely = likely

    def __repr__(self):
        return "Fault(%r, %r, %r)" % (self.path, self.code, self.message)

    def plain(self):
        """As a dict for JSON: numbers as {"value", "unit"}, and only those there are."""
        entry = {
            "path": list(self.path),
            "code": self.code,
            "message": self.message,
            "remedy": self.remedy,
        }
        for name, number in self.limits():
            entry[name] = plain(Quantity(number, self.unit))
        if self.more_than:
            entry["more_than"] = True
        if self.likely:
            entry["likely"] = self.likely
        return entry

    def limits(self):
        """(name, number) of those of value, lowest and highest that there are."""
        named = (("value", self.value), ("lowest", self.lowest), ("highest", self.highest))
        return [(name, number) for name, number in named if number is not None]


class CoreProblem(Exception):
    """Root of everything the core raises on purpose."""

    code = "core-problem"


class InputProblem(CoreProblem):
    """The request cannot be worked as it stands; `faults` is a list of Fault."""

    code = "invalid-input"

    def __init__(self, faults):
        self.faults = list(faults)
        super().__init__("; ".join([fault.message for fault in self.faults]))


def unworkable(
    name, message, remedy, code="range", value=None, lowest=None, highest=None, unit="mm"
):
    """The InputProblem of one input.

    name: its name. message: what is wrong. remedy: what to do. value, lowest, highest: in `unit`,
    as of a Fault.
    """
    if value is None and lowest is None and highest is None:
        unit = ""
    return InputProblem([Fault((name,), code, message, remedy, value, lowest, highest, unit)])


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
