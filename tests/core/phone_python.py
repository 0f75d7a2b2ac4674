"""What the phone's Python has, read off the MicroPython build that the app ships.

test_micropython.py compares these lists with the build itself; test_language.py uses them to check
the source of the core without running it.
"""


def _words(text):
    return tuple(text.split())


MODULES = {
    "math": _words(
        """acos acosh asin asinh atan atan2 atanh ceil copysign cos cosh degrees e erf erfc exp
        expm1 fabs factorial floor fmod frexp gamma inf isclose isfinite isinf isnan ldexp lgamma
        log log10 log2 modf nan pi pow radians sin sinh sqrt tan tanh tau trunc"""
    ),
    "json": _words("dump dumps load loads"),
    "collections": _words("OrderedDict defaultdict deque namedtuple"),
    "itertools": _words("accumulate chain count cycle islice repeat starmap tee"),
    "functools": _words("partial reduce update_wrapper wraps"),
}

METHODS = {
    "str": _words(
        """center count encode endswith find format index isalpha isdigit islower isspace isupper
        join lower lstrip partition replace rfind rindex rpartition rsplit rstrip split splitlines
        startswith strip upper"""
    ),
    "list": _words("append clear copy count extend index insert pop remove reverse sort"),
    "tuple": _words("count index"),
    "dict": _words("clear copy fromkeys get items keys pop popitem setdefault update values"),
    "set": _words(
        """add clear copy difference difference_update discard intersection intersection_update
        isdisjoint issubset issuperset pop remove symmetric_difference symmetric_difference_update
        union update"""
    ),
    "int": _words("from_bytes to_bytes"),
    "float": (),
}

# Built-in names the core may use: what the phone has, less what a room without files, clock and
# guests must not touch, and less sum (which adds floats differently from Python 3.12 on).
BUILTINS = _words(
    """ArithmeticError AssertionError AttributeError Exception IndexError KeyError LookupError
    NotImplementedError OverflowError RuntimeError StopIteration TypeError ValueError
    ZeroDivisionError abs all any bool callable chr classmethod dict divmod enumerate filter float
    frozenset getattr hasattr int isinstance issubclass iter len list map max min next object ord
    pow property range repr reversed round set slice sorted staticmethod str super tuple type zip"""
)
CONSTANTS = ("True", "False", "None")
