"""Addresses on their way out: declared here with their dates; who asks one is told in headers.

`Deprecation` (RFC 9745) says since when, `Sunset` (RFC 8594) from when on it may be gone, `Link`
where it is explained and what comes in its place (relations deprecation and sunset of the same
RFCs, successor-version of RFC 5829). The specification marks the address as well.
"""

from collections.abc import Mapping
from datetime import UTC, date, datetime, timedelta
from typing import NamedTuple
from wsgiref.handlers import format_date_time

from flask import Flask, Response, request

from ..named_types import Document
from .watched import name_of


# since, until: taken at midnight UTC. told: address of the page that explains it. instead: address
# that comes in its place.
class Leaving(NamedTuple):
    since: date
    until: date
    told: str
    instead: str


# Address, such as /v1/drawings/{part}.svg -> Leaving.
LEAVING: Mapping[str, Leaving] = {}
# As the promise of stability in documents.py says.
LEAST_TIME = timedelta(days=365)


class BadDeprecation(Exception):
    """What is declared of an address on its way out cannot be kept."""


def headers_of(leaving: Leaving) -> list[tuple[str, str]]:
    """The headers that say so, a list of pairs."""
    links = [
        '<%s>; rel="deprecation"; type="text/html"' % leaving.told,
        '<%s>; rel="sunset"; type="text/html"' % leaving.told,
        '<%s>; rel="successor-version"' % leaving.instead,
    ]
    return [
        ("Deprecation", "@%d" % _seconds(leaving.since)),
        ("Sunset", format_date_time(_seconds(leaving.until))),
        *(("Link", link) for link in links),
    ]


def mark(specification: Document, leaving: Mapping[str, Leaving]) -> None:
    """Marks the operations of the addresses in the specification, a dict."""
    for address in leaving:
        for key, operation in specification["paths"].get(address, {}).items():
            # Beside its operations stands what they share.
            if key != "parameters":
                operation["deprecated"] = True


def add_to(app: Flask, leaving: Mapping[str, Leaving]) -> None:
    """Lets the application say so with each answer. Raises BadDeprecation.

    leaving: a table such as LEAVING.
    """
    names = {rule.rule: name_of(rule) for rule in app.url_map.iter_rules()}
    for address, entry in leaving.items():
        if address not in names.values():
            raise BadDeprecation("%s is no address of this service" % address)
        if entry.until - entry.since < LEAST_TIME:
            raise BadDeprecation("%s must stay for %d days" % (address, LEAST_TIME.days))
    told = {rule: headers_of(leaving[name]) for rule, name in names.items() if name in leaving}
    if not told:
        return

    def say(response: Response) -> Response:
        rule = request.url_rule
        for pair in told.get(rule.rule, ()) if rule is not None else ():
            response.headers.add(*pair)
        return response

    app.after_request(say)


def _seconds(day: date) -> int:
    return int(datetime(day.year, day.month, day.day, tzinfo=UTC).timestamp())
