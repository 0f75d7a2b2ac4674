"""The pages made from tables of the code: the kinds of problem, the limits and the settings."""

from collections.abc import Iterable
from html import escape

from .. import limits
from ..problems import KINDS, MEDIA_TYPE
from ..settings import BESIDE, SETTINGS, Setting

# Cells of HTML.
_Row = tuple[str, str, str]

_PROBLEMS = """<h1>Problems</h1>
<p>What cannot be answered comes back as <code>%s</code> (RFC 9457). Its <code>code</code> is one of
those below and keeps its meaning; programs go by that. <code>errors</code> names each value at
fault by its <code>path</code>, says what is wrong with it and what to do, in the unit that was
given. The same list for programs: <a href="/v1/problems">/v1/problems</a>.</p>
<p>An impossible design is no problem but an answer: its <code>findings</code> say what to
change.</p>
"""
_LIMITS = """<h1>Limits and settings</h1>
<p>The bounds of each input stand beside it under <a href="/docs">every call</a>. Beyond those the
service itself takes and gives:</p>
"""
_SETTINGS = """<h2 id="settings">Settings</h2>
<p>Whoever runs the service sets these in its environment. A setting that is none of its kind stops
the start.</p>
"""
_BESIDE = """<h2 id="beside">Settings of what runs it</h2>
<p>Read by the server, by the commands that start it and by the proxy in front.</p>
"""


def problems() -> str:
    """The HTML of /docs/problems: a section for each code, under its name."""
    parts = [_PROBLEMS % MEDIA_TYPE]
    for code, kind in KINDS.items():
        parts.append(
            '<section id="%s"><h2><code>%s</code> <span class="status">%d</span></h2>\n'
            "<p>%s.</p>\n<p><b>What to do:</b> %s.</p></section>\n"
            % (code, code, kind.status, escape(kind.title), escape(kind.remedy))
        )
    return "".join(parts)


def limits_and_settings() -> str:
    """The HTML of /docs/limits."""
    return "".join(
        (
            _LIMITS,
            _table(("What", "At most", "Beyond it"), _rows_of_limits()),
            _SETTINGS,
            _table(("Variable", "Default", "Meaning"), map(_row, SETTINGS.items())),
            _BESIDE,
            _table(("Variable", "Default", "Meaning"), map(_row, BESIDE.items())),
        )
    )


def _rows_of_limits() -> tuple[_Row, ...]:
    return (
        ("a body", _number(limits.LARGEST_BODY, "bytes"), _link("body-too-large")),
        ("a query", _number(limits.LONGEST_QUERY, "characters"), _link("query-too-long")),
        ("whole numbers", _number(limits.LARGEST_WHOLE_NUMBER, ""), _link("invalid-input")),
        (
            "entries of <code>errors</code>",
            _number(limits.MOST_ERRORS, ""),
            "<code>detail</code> says how many more there are",
        ),
        (
            "heavy work that waits (cards and drawings as files, thorough cut lists, spreads)",
            "as the settings below say",
            _link("busy") + ", with <code>Retry-After</code>",
        ),
        (
            "how long caches may keep an answer to a GET",
            _number(limits.ANSWER_SECONDS, "seconds"),
            "it is asked for again, and costs nothing where it is unchanged (<code>ETag</code>)",
        ),
        (
            "requests a minute from one network address",
            "as <code>RINGWRIGHT_RATE</code> says; no bound where it is not set",
            _link("too-many-requests") + ", with <code>Retry-After</code>",
        ),
        ("who may ask", "everybody: no key, no account, any page of any origin", ""),
    )


def _number(value: int, unit: str) -> str:
    return "{:,} {}".format(value, unit).replace(",", " ").strip()


def _link(code: str) -> str:
    return '%d <a href="/docs/problems#%s"><code>%s</code></a>' % (KINDS[code].status, code, code)


def _row(entry: tuple[str, Setting]) -> _Row:
    name, setting = entry
    usual = "<code>%s</code>" % escape(setting.usual) if setting.usual else "none"
    return "<code>%s</code>" % name, usual, escape(setting.meaning)


def _table(head: Iterable[str], rows: Iterable[_Row]) -> str:
    """A table of HTML cells."""
    lines = ["<tr>%s</tr>" % "".join('<th scope="col">%s</th>' % escape(cell) for cell in head)]
    lines += ["<tr>%s</tr>" % "".join("<td>%s</td>" % cell for cell in row) for row in rows]
    return "<table>\n%s\n</table>\n" % "\n".join(lines)
