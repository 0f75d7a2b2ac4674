"""What a text reaches of an expression: each part that it matched, and where it failed.

Coverage of lines says nothing of a reader whose grammar is one regular expression, for that is run
in C. This matches the same expression step by step, as Python's own parser of expressions takes it
apart, and notes every alternative, bound and letter class on the way.
"""

from functools import cache
from re import _constants as kinds
from re import _parser as parser

_parsed = cache(parser.parse)


def seen(expression, text):
    """(whether all of the text matches, set of what was seen)."""
    noted = set()

    def ends(nodes, at, path):
        """Places in the text where `nodes` may end when they begin at `at`, in the order tried."""
        if not nodes:
            yield at
            return
        for middle in step(nodes[0], at, (*path, len(nodes))):
            yield from ends(nodes[1:], middle, path)

    def step(node, at, path):
        operation, what = node
        if operation is kinds.LITERAL:
            if at < len(text) and ord(text[at]) == what:
                noted.add((path, "is"))
                yield at + 1
        elif operation is kinds.IN:
            place = among(what, text[at]) if at < len(text) else None
            noted.add((path, place))
            if place is not None:
                yield at + 1
        elif operation is kinds.BRANCH:
            for number, nodes in enumerate(what[1]):
                for end in ends(list(nodes), at, (*path, number)):
                    noted.add((path, "way", number))
                    yield end
        elif operation is kinds.SUBPATTERN:
            for end in ends(list(what[3]), at, path):
                noted.add((path, "group", end == at))
                yield end
        else:
            assert operation is kinds.MAX_REPEAT, operation
            yield from repeated(list(what[2]), what[:2], at, path, 0)

    def repeated(nodes, bounds, at, path, count):
        least, most = bounds
        if count < most:
            for end in ends(nodes, at, (*path, "more")):
                yield from repeated(nodes, bounds, end, path, count + 1)
        if count >= least:
            # Three digits may be a trap where two and four are none; further on halves will do.
            noted.add((path, "times", count if count < 5 else count.bit_length(), count == most))
            yield at

    whole = any(end == len(text) for end in ends(list(_parsed(expression)), 0, ()))
    return whole, noted


def among(choices, letter):
    """Which of the choices of a class a letter is: the two ends of a range apart from its midst."""
    for number, (operation, what) in enumerate(choices):
        if operation is kinds.LITERAL and ord(letter) == what:
            return number
        if operation is kinds.RANGE and what[0] <= ord(letter) <= what[1]:
            return number, ord(letter) in what
    return None
