"""An address on its way out says so in headers, from when on and what comes in its place."""

import re
from datetime import UTC, date, datetime, timedelta
from email.utils import parsedate_to_datetime

import pytest

from ringwright.api import create_app
from ringwright.api.app import specification
from ringwright.api.deprecation import LEAVING, BadDeprecation, Leaving

GOING = Leaving(
    since=date(2023, 6, 30),
    until=date(2024, 11, 11),
    told="/notes.html#sizing",
    instead="/v2/sizing",
)
TABLE = {"/v1/sizing": GOING, "/v1/drawings/{part}.svg": GOING}


@pytest.fixture(scope="module")
def going():
    return create_app(leaving=TABLE)


@pytest.mark.parametrize(
    ("method", "path", "status"),
    [
        ("GET", "/v1/sizing?bore=80", 200),
        ("HEAD", "/v1/sizing?bore=80", 200),
        ("GET", "/v1/sizing?bore=x", 422),
        ("POST", "/v1/sizing", 415),
        ("GET", "/v1/drawings/blank.svg?bore=80", 200),
    ],
)
def test_it_says_so_with_every_answer(going, method, path, status):
    answer = going.test_client().open(path, method=method)
    assert answer.status_code == status
    # RFC 9745, 2.1: a Date of structured fields (RFC 9651, 3.3.7), here its own example's time
    # less the seconds of that day.
    assert answer.headers["Deprecation"] == "@1688083200"
    # RFC 8594, 3: an HTTP-date (RFC 9110, 5.6.7).
    sunset = answer.headers["Sunset"]
    assert re.fullmatch(r"[A-Z][a-z]{2}, \d{2} [A-Z][a-z]{2} \d{4} \d{2}:\d{2}:\d{2} GMT", sunset)
    assert parsedate_to_datetime(sunset) == datetime(2024, 11, 11, tzinfo=UTC)
    links = answer.headers.getlist("Link")
    assert '</notes.html#sizing>; rel="deprecation"; type="text/html"' in links
    assert '</notes.html#sizing>; rel="sunset"; type="text/html"' in links
    assert '</v2/sizing>; rel="successor-version"' in links
    exposed = answer.headers["Access-Control-Expose-Headers"]
    assert {"Deprecation", "Sunset", "Link"} <= set(exposed.split(", "))


@pytest.mark.parametrize(
    "path", ["/v1/job?bore=80", "/v1/sizings", "/v1/drawings/blank.dxf?bore=80"]
)
def test_other_addresses_do_not(going, path):
    answer = going.test_client().get(path)
    assert not {"Deprecation", "Sunset"} & set(answer.headers.keys())
    # A problem names the page that explains it.
    assert not re.search("deprecation|sunset|successor", answer.headers.get("Link", ""))


def test_an_answer_that_the_caller_holds_says_so_too(going):
    client = going.test_client()
    tag = client.get("/v1/sizing?bore=80").headers["ETag"]
    again = client.get("/v1/sizing?bore=80", headers={"If-None-Match": tag})
    assert again.status_code == 304
    assert again.headers["Deprecation"] == "@1688083200"


def test_the_specification_marks_just_these(going):
    marked = {
        (path, method)
        for path, operations in specification(going)["paths"].items()
        for method, operation in operations.items()
        if isinstance(operation, dict) and operation.get("deprecated")
    }
    assert marked == {
        ("/v1/sizing", "get"),
        ("/v1/sizing", "post"),
        ("/v1/drawings/{part}.svg", "get"),
        ("/v1/drawings/{part}.svg", "post"),
    }


def test_what_cannot_be_kept_is_not_declared():
    with pytest.raises(BadDeprecation, match="/v1/nothing is no address"):
        create_app(leaving={"/v1/nothing": GOING})
    soon = GOING._replace(until=GOING.since + timedelta(days=364))
    with pytest.raises(BadDeprecation, match="365 days"):
        create_app(leaving={"/v1/sizing": soon})


def test_what_is_declared_today_is_kept():
    """Whatever stands in the table: the application starts with it, and no date is over."""
    create_app()
    for entry in LEAVING.values():
        assert entry.until >= datetime.now(UTC).date()
